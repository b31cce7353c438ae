//! How heavy is a piece, and who lifts it?

use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Density, Length, Mass, Units, trim};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working, check_range};

use crate::findings::HEAVY_PIECE;

/// Mass of a straight piece of one section.
///
/// # Source
/// Geometry. Densities are common practice, no source: treated pine 550–800 kg/m³, the upper end fresh from treatment;
/// hardwood 900–1100; reinforced concrete 2500.
/// # Symbols
/// | b, t | width and thickness | 5–1000 mm (ours) |
/// | l | length | 0–12 m (ours) |
/// | ρ | density as carried, wet | 100–9000 kg/m³ (ours) |
/// # Gives
/// Mass in kg.
/// # Not for
/// Round or hollow sections.
/// # Errors
/// None of its own; [`BOARD_MASS`] checks the limits.
/// # By hand
/// 200 × 100 mm, 2.4 m at 800 kg/m³: 0.02 · 2.4 · 800 = 38.4 kg.
fn mass_of<N: Number>(width: N, thickness: N, length: N, density: N) -> N {
    let volume = (width * thickness * length / 1e6).named("V", Unit::M3);
    (volume * density).named("m", Unit::KG)
}

/// `order/board-mass`: mass of a board or post.
pub static BOARD_MASS: Working = Working {
    name: "order/board-mass",
    title: "Mass of a board, post or panel of one section.",
    source: Source {
        work: "Geometry; densities are common practice, no source", place: "treated pine 550–800 kg/m³"
    },
    not_for: "Round or hollow sections.",
    inputs: &[
        Input::new("width", "b", "width", Unit::MM, Limits::ours(5.0, 1000.0)),
        Input::new("thickness", "t", "thickness", Unit::MM, Limits::ours(5.0, 1000.0)),
        Input::new("length", "l", "length", Unit::M, Limits::ours(0.0, 12.0)),
        Input::new("density", "ρ", "density as carried", Unit::KG_M3, Limits::ours(100.0, 9000.0)).or(800.0),
    ],
    outputs: &[Output { key: "mass", words: "mass", unit: Unit::KG }],
    run: |g| Ok(vec![Found::One(mass_of(g.one("width")?, g.one("thickness")?, g.one("length")?, g.one("density")?))]),
};

/// Mass of a straight piece, with its working.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] outside the limits of [`BOARD_MASS`].
pub fn piece_mass(width: Length, thickness: Length, length: Length, density: Density) -> Result<(Mass, Trace)> {
    let given = [width.to_mm(), thickness.to_mm(), length.to_m(), density.to_kg_per_m3()];
    BOARD_MASS.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(BOARD_MASS.name, row, v))?;
    let [b, t, l, r] = given;
    Ok((Mass::kg(mass_of(b, t, l, r)), Trace::new(&BOARD_MASS, given.iter().map(|v| (*v).into()).collect())))
}

/// Recommended weight limit of a lift.
///
/// # Source
/// From memory: Waters, Putz-Anderson and Garg, Applications Manual for the Revised NIOSH Lifting Equation, DHHS
/// (NIOSH) 94-110 (1994), section 1.3, metric multipliers.
/// # Symbols
/// | H | hands in front of the ankles | 25–63 cm (author) |
/// | V | hands above the floor | 0–175 cm (author) |
/// | D | travel of the lift | 25–175 cm (author) |
/// | A | twist | 0–135° (author) |
/// | F, C | frequency and grip multipliers, from the manual's tables | 0–1 |
/// # Gives
/// Mass in kg that nearly all healthy workers may lift in that way; 23 kg at best.
/// # Not for
/// One-handed lifts, kneeling, shovelling, carrying, slippery or sloping footing.
/// # Errors
/// None of its own; [`LIFT`] checks the limits.
/// # By hand
/// H 40, V 30, D 50 cm, no twist: 23 · 25/40 · (1 − 0.003·45) · (0.82 + 4.5/50) = 11.3 kg.
fn recommended<N: Number>(h: N, v: N, d: N, a: N, f: N, c: N) -> N {
    let hm = (N::constant(25.0) / h).named("HM", Unit::NONE);
    let vm = (N::constant(1.0) - (v - 75.0).abs() * 0.003).named("VM", Unit::NONE);
    let dm = (N::constant(4.5) / d + 0.82).named("DM", Unit::NONE);
    let am = (N::constant(1.0) - a * 0.0032).named("AM", Unit::NONE);
    (N::constant(LOAD_CONSTANT.to_kg()) * hm * vm * dm * am * f * c).named("RWL", Unit::KG)
}

/// The load constant of the equation, 23 kg: the most that it recommends. From memory, NIOSH 94-110 (1994).
pub const LOAD_CONSTANT: Mass = Mass::kg(23.0);
const CM: Unit = Unit("cm");

/// `order/lift`: recommended weight limit of a lift.
pub static LIFT: Working = Working {
    name: "order/lift",
    title: "Recommended weight limit of a two-handed lift.",
    source: Source {
        work: "From memory: Waters, Putz-Anderson, Garg, Applications Manual for the Revised NIOSH Lifting Equation, \
               DHHS (NIOSH) 94-110, 1994",
        place: "section 1.3",
    },
    not_for: "One-handed lifts, kneeling, shovelling, carrying, slippery or sloping footing.",
    inputs: &[
        Input::new("reach", "H", "hands in front of the ankles", CM, Limits::author(25.0, 63.0)),
        Input::new("height", "V", "hands above the floor", CM, Limits::author(0.0, 175.0)),
        Input::new("travel", "D", "travel of the lift", CM, Limits::author(25.0, 175.0)),
        Input::new("twist", "A", "twist in degrees", Unit::NONE, Limits::author(0.0, 135.0)).or(0.0),
        Input::new("frequency", "F", "frequency multiplier", Unit::NONE, Limits::author(0.0, 1.0)).or(1.0),
        Input::new("grip", "C", "grip multiplier", Unit::NONE, Limits::author(0.9, 1.0)).or(1.0),
    ],
    outputs: &[Output { key: "limit", words: "recommended weight limit", unit: Unit::KG }],
    run: |g| {
        let (h, v, d) = (g.one("reach")?, g.one("height")?, g.one("travel")?);
        Ok(vec![Found::One(recommended(h, v, d, g.one("twist")?, g.one("frequency")?, g.one("grip")?))])
    },
};

/// What is lifted by how many.
#[derive(Debug, Clone, PartialEq)]
pub struct LiftLimits {
    /// Above this, two persons.
    pub one_person: Mass,
    /// Above this, mechanical help.
    pub two_persons: Mass,
    /// Where the limits are known from.
    pub source: String,
    /// In which units its sentences speak.
    pub units: Units,
}

impl Default for LiftLimits {
    /// 25 kg and 50 kg.
    fn default() -> LiftLimits {
        LiftLimits {
            one_person: Mass::kg(25.0),
            two_persons: Mass::kg(50.0),
            source: "from memory: HSE INDG143, 25 kg close at waist height; two persons 50 kg: common practice".into(),
            units: Units::Metric,
        }
    }
}

/// Something that is lifted.
#[derive(Debug, Clone, PartialEq)]
pub struct Lifted {
    /// What it is: "board 200×75, 3.0 m".
    pub what: String,
    /// The element it is for.
    pub element: String,
    /// Mass of one.
    pub mass: Mass,
    /// Its length, where it could be cut before it is carried.
    pub length: Option<Length>,
    /// How many.
    pub count: f64,
    /// The working of its mass.
    pub trace: Option<Trace>,
}

/// Findings for everything above the limit of one person: one per thing and element, the heaviest first.
pub fn lifting(things: &[Lifted], limits: &LiftLimits) -> Vec<Finding> {
    let mut heavy: Vec<&Lifted> = things.iter().filter(|t| t.mass > limits.one_person && t.count > 0.0).collect();
    heavy.sort_by(|a, b| {
        b.mass.to_kg().total_cmp(&a.mass.to_kg()).then(a.element.cmp(&b.element)).then(a.what.cmp(&b.what))
    });
    heavy.into_iter().map(|t| heavy_piece(t, limits)).collect()
}

fn heavy_piece(t: &Lifted, limits: &LiftLimits) -> Finding {
    let u = limits.units;
    let by_two = t.mass <= limits.two_persons;
    let who = if by_two { "two persons" } else { "a hoist, a sack truck or a machine" };
    let says = format!(
        "{}: {} each, {} of them; above {} it takes {who}.",
        t.what,
        u.mass(t.mass),
        trim(t.count, 0),
        u.mass(if by_two { limits.one_person } else { limits.two_persons })
    );
    let mut f = Finding::new(&HEAVY_PIECE, Place::of(&t.element), says).with_utilisation(t.mass / limits.one_person);
    f.trace = t.trace.clone();
    if let Some(length) = t.length {
        let most = Length::mm((length * (limits.one_person / t.mass)).to_mm().floor());
        let says = format!("Cut before carrying: {} of it is {}.", u.length(most), u.mass(limits.one_person));
        f = f.with_remedy(Remedy::theirs(says));
    }
    f.with_remedy(Remedy::theirs(format!("Plan the lift for {who}.")))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn board(length: f64) -> Lifted {
        let l = Length::m(length);
        let (mass, trace) = piece_mass(Length::mm(200.0), Length::mm(100.0), l, Density::kg_per_m3(800.0)).unwrap();
        Lifted { what: "board".into(), element: "W1".into(), mass, length: Some(l), count: 3.0, trace: Some(trace) }
    }

    #[test]
    fn a_board_over_25_kg_takes_two_and_one_over_50_kg_a_machine() {
        let of = |l: f64| lifting(&[board(l)], &LiftLimits::default());
        assert!(of(1.5625).is_empty(), "25 kg exactly is still one person's");
        let two = of(2.4);
        assert!(two[0].says.contains("38 kg") && two[0].says.contains("two persons"), "{}", two[0].says);
        assert!(two[0].remedies[0].says.contains("1562 mm"), "{}", two[0].remedies[0].says);
        assert!(of(3.6)[0].says.contains("machine"));
    }

    #[test]
    fn the_ideal_lift_is_23_kg() {
        assert!((recommended(25.0, 75.0, 25.0, 0.0, 1.0, 1.0) - 23.0).abs() < 1e-12);
    }
}
