//! How much concrete goes around a post, and how many bags is that?

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Area, Length, Mass, Share, Volume};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working, check_range};

use crate::{findings::READY_MIX, packs::up};

/// A round hole with a post in it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Hole {
    /// Across.
    pub diameter: Length,
    /// From where the concrete ends at the top to the bottom of the hole.
    pub depth: Length,
    /// Cross-section of the post standing in it; nothing for a hole filled all over.
    pub post: Area,
    /// Gravel under the post at the bottom, without concrete.
    pub gravel: Length,
}

const LITRE: Unit = Unit("l");

/// Concrete in a round hole around a post.
///
/// # Source
/// Volume of a cylinder less the post: geometry.
/// # Symbols
/// | d | diameter of the hole | 0.1–1.5 m (ours) |
/// | h | depth of the hole | 0–4 m (ours) |
/// | g | gravel at the bottom | 0–1 m (ours) |
/// | A | cross-section of the post | 0–1 m² (ours) |
/// # Gives
/// Volume in m³, not below 0.
/// # Not for
/// Holes belled out at the foot, or square ones.
/// # Errors
/// A post that fills the hole, gravel deeper than the hole.
/// # By hand
/// 300 mm across and 700 mm deep: 0.7854 · 0.3² · 0.7 = 0.0495 m³.
fn hole<N: Number>(diameter: N, depth: N, gravel: N, post: N) -> N {
    let area = (diameter.squared() * (std::f64::consts::PI / 4.0)).named("A_h", Unit::M2);
    ((area - post) * (depth - gravel)).named("V", Unit::M3)
}

/// `order/hole-concrete`: concrete in a round hole around a post.
pub static HOLE: Working = Working {
    name: "order/hole-concrete",
    title: "Concrete in a round hole around a post.",
    source: Source { work: "Geometry", place: "cylinder less the post" },
    not_for: "Holes belled out at the foot, or square ones.",
    inputs: &[
        Input::new("diameter", "d", "diameter of the hole", Unit::M, Limits::ours(0.1, 1.5)),
        Input::new("depth", "h", "depth of the hole", Unit::M, Limits::ours(0.0, 4.0)),
        Input::new("gravel", "g", "gravel at the bottom", Unit::M, Limits::ours(0.0, 1.0)).or(0.0),
        Input::new("post", "A", "cross-section of the post", Unit::M2, Limits::ours(0.0, 1.0)).or(0.0),
    ],
    outputs: &[Output { key: "volume", words: "concrete", unit: Unit::M3 }],
    run: |g| {
        let (d, h, b, a) = (g.one("diameter")?, g.one("depth")?, g.one("gravel")?, g.one("post")?);
        refuse_overfull(d.value(), h.value(), b.value(), a.value()).map_err(|why| g.no_answer(why))?;
        Ok(vec![Found::One(hole(d, h, b, a))])
    },
};

fn refuse_overfull(d: f64, h: f64, gravel: f64, post: f64) -> std::result::Result<(), &'static str> {
    if post >= d * d * std::f64::consts::FRAC_PI_4 {
        return Err("the post fills the hole: give a wider hole");
    }
    if gravel > h {
        return Err("the gravel is deeper than the hole");
    }
    Ok(())
}

/// Concrete in one hole, with its working.
///
/// # Errors
/// [`groundhold_working::Refused`] outside the limits of [`HOLE`], or where the post fills the hole.
pub fn concrete_in_hole(h: &Hole) -> Result<(Volume, Trace)> {
    let given = [h.diameter.to_m(), h.depth.to_m(), h.gravel.to_m(), h.post.to_m2()];
    HOLE.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(HOLE.name, row, v))?;
    let [d, z, g, a] = given;
    refuse_overfull(d, z, g, a)
        .map_err(|why| groundhold_working::Refused::NoAnswer { working: HOLE.name, why: why.into() })?;
    Ok((Volume::m3(hole(d, z, g, a)), Trace::new(&HOLE, given.iter().map(|v| (*v).into()).collect())))
}

/// Wet concrete from a bag of dry mix.
///
/// # Source
/// Common practice, no source: makers print 9.3 l for 20 kg, 11.6–11.8 l for 25 kg, 13.9–14.2 l for 30 kg,
/// 18.6 l for 40 kg, 0.30 to 0.675 ft³ for 40 to 90 lb. All lie within 2 % of 0.465 l per kg.
/// # Symbols
/// | m | mass of the bag | 5–60 kg (ours) |
/// # Gives
/// Litres of placed concrete.
/// # Not for
/// Mortar, rapid post mix, lightweight mixes: read the bag.
/// # Errors
/// None of its own; [`BAG_YIELD`] checks the limits.
/// # By hand
/// 20 kg · 0.465 = 9.3 l.
fn yield_of<N: Number>(mass: N) -> N {
    (mass * 0.465).named("Y", LITRE)
}

/// `order/bag-yield`: wet concrete from a bag.
pub static BAG_YIELD: Working = Working {
    name: "order/bag-yield",
    title: "Wet concrete from a bag of dry mix.",
    source: Source { work: "Common practice, no source", place: "yields printed on bags, 0.465 l per kg within 2 %" },
    not_for: "Mortar, rapid post mix, lightweight mixes: read the bag.",
    inputs: &[Input::new("mass", "m", "mass of the bag", Unit::KG, Limits::ours(5.0, 60.0))],
    outputs: &[Output { key: "yield", words: "placed concrete", unit: LITRE }],
    run: |g| Ok(vec![Found::One(yield_of(g.one("mass")?))]),
};

/// Wet concrete from a bag of dry mix of that mass.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] for a bag outside 5–60 kg.
pub fn bag_yield(mass: Mass) -> Result<Volume> {
    check_range(BAG_YIELD.name, &BAG_YIELD.inputs[0], mass.to_kg())?;
    Ok(Volume::litre(yield_of(mass.to_kg())))
}

/// Bags for holes.
///
/// # Source
/// Division. At least a bag per hole and the shares for over-dig (10 %, rough hand-dug holes 25 %): common practice,
/// no source.
/// # Symbols
/// | V | concrete in all holes, as drawn | ≥ 0 |
/// | N | holes | ≥ 0 |
/// | o | over-dig | 0–100 % (ours) |
/// | Y | yield of a bag | 1–60 l (ours) |
/// # Gives
/// Bags as a fraction, and whole bags: no fewer than holes.
/// # Not for
/// Ready-mixed concrete.
/// # Errors
/// None of its own; [`BAGS`] checks the limits.
/// # By hand
/// One hole of 49.5 l and bags of 9.3 l: 5.32, so 6 bags; 7 such holes 37.26, so 38.
fn bags<N: Number>(volume: N, holes: N, over_dig: N, bag: N) -> (N, N) {
    let exact = (volume * (over_dig / 100.0 + 1.0) * 1000.0 / bag).named("n₀", Unit::NONE);
    let whole = up(exact).named("n₁", Unit::NONE).max(holes).named("n", Unit::NONE);
    (exact, whole)
}

/// `order/bags`: bags of concrete for holes.
pub static BAGS: Working = Working {
    name: "order/bags",
    title: "Bags of concrete for post holes, at least one each.",
    source: Source { work: "Common practice, no source", place: "a bag per hole at least; over-dig 10 %, rough 25 %" },
    not_for: "Ready-mixed concrete.",
    inputs: &[
        Input::new("volume", "V", "concrete in all holes", Unit::M3, Limits::ours(0.0, 100.0)),
        Input::new("holes", "N", "holes", Unit::NONE, Limits::ours(0.0, 1e4)).or(1.0),
        Input::new("over_dig", "o", "over-dig", Unit::PERCENT, Limits::ours(0.0, 100.0)).or(0.0),
        Input::new("bag", "Y", "yield of a bag", LITRE, Limits::ours(1.0, 60.0)).or(9.3),
    ],
    outputs: &[
        Output { key: "exact", words: "bags as a fraction", unit: Unit::NONE },
        Output { key: "bags", words: "whole bags", unit: Unit::NONE },
    ],
    run: |g| {
        let (a, b) = bags(g.one("volume")?, g.one("holes")?, g.one("over_dig")?, g.one("bag")?);
        Ok(vec![Found::One(a), Found::One(b)])
    },
};

/// Bags for a row of holes.
#[derive(Debug, Clone, PartialEq)]
pub struct Bags {
    /// Concrete as drawn, all holes.
    pub volume: Volume,
    /// Bags as a fraction.
    pub exact: f64,
    /// Whole bags, no fewer than holes.
    pub bags: f64,
    /// The working.
    pub trace: Trace,
    /// Said where so much is better ordered ready mixed.
    pub finding: Option<Finding>,
}

/// Bags for holes with so much concrete each, as drawn; `over_dig` on top; `bag` is the yield of one bag.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] outside the limits of [`BAGS`].
pub fn concrete_bags(holes: &[Volume], over_dig: Share, bag: Volume) -> Result<Bags> {
    let volume: Volume = holes.iter().copied().sum();
    let given = [volume.to_m3(), holes.len() as f64, over_dig.to_percent(), bag.to_litre()];
    BAGS.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(BAGS.name, row, v))?;
    let (exact, whole) = bags(given[0], given[1], given[2], given[3]);
    let trace = Trace::new(&BAGS, given.iter().map(|v| (*v).into()).collect());
    let finding = (volume > MUCH).then(|| {
        let says = format!(
            "{:.2} m³ of concrete is {whole:.0} bags; above {:.0} m³ ask the price of ready-mixed.",
            volume.to_m3(),
            MUCH.to_m3()
        );
        Finding::new(&READY_MIX, Place::job(), says).with_trace(trace.clone())
    });
    Ok(Bags { volume, exact, bags: whole, trace, finding })
}

/// Above this, ready-mixed is worth asking for. Common practice, no source.
const MUCH: Volume = Volume::m3(1.0);

#[cfg(test)]
mod tests {
    use super::*;

    fn t2_hole() -> Hole {
        Hole { diameter: Length::mm(300.0), depth: Length::mm(700.0), ..Hole::default() }
    }

    #[test]
    fn seven_holes_of_300_by_700_take_38_bags() {
        let (v, trace) = concrete_in_hole(&t2_hole()).unwrap();
        assert!((v.to_litre() - 49.48).abs() < 0.01);
        assert_eq!(trace.sheet().unwrap().values[0], groundhold_working::Value::One(v.to_m3()));
        let b = concrete_bags(&[v; 7], Share::ZERO, Volume::litre(9.3)).unwrap();
        assert_eq!(b.bags, 38.0);
        assert!(b.finding.is_none());
    }

    #[test]
    fn a_small_hole_still_gets_a_bag_and_no_hole_gets_none() {
        let b = concrete_bags(&[Volume::litre(2.0); 5], Share::ZERO, Volume::litre(9.3)).unwrap();
        assert_eq!(b.bags, 5.0);
        assert_eq!(concrete_bags(&[], Share::ZERO, Volume::litre(9.3)).unwrap().bags, 0.0);
    }

    #[test]
    fn above_a_cubic_metre_ready_mixed_is_mentioned_and_at_it_not() {
        let at = |m3: f64| concrete_bags(&[Volume::m3(m3)], Share::ZERO, Volume::litre(9.3)).unwrap().finding.is_some();
        assert!(!at(1.0));
        assert!(at(1.01));
    }

    #[test]
    fn a_post_wider_than_its_hole_is_refused() {
        let h = Hole { post: Area::m2(0.08), ..t2_hole() };
        assert!(concrete_in_hole(&h).unwrap_err().to_string().contains("wider hole"));
        let h = Hole { gravel: Length::mm(701.0), ..t2_hole() };
        assert!(concrete_in_hole(&h).unwrap_err().to_string().contains("gravel"));
    }
}
