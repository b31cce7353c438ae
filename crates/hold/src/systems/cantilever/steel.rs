//! Which bars go into stem, toe and heel: the least steel with which every section holds?

use groundhold_earth::Combination;
use groundhold_member::concrete::{CastAgainst, Exposure, Rules as Concrete, Strip as Slab, check_strip, least_cover};
use groundhold_member::masonry::{ReinforcedMasonry, Rules as Masonry, check_reinforced_masonry};
use groundhold_quantity::{Area, Force, Length, Moment, Pressure};
use groundhold_working::{Refused, Trace};

use super::effects::{self, Effect};
use super::{CantileverSpec, Made};
use crate::gravity::spots;
use crate::loads::{combinations, governs, states};
use crate::{Strip, WallCase};

/// Bars of one section: diameter and distance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Bars {
    pub bar: Length,
    pub every: Length,
}

/// The steel of a wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Steel {
    pub stem: Bars,
    pub toe: Bars,
    pub heel: Bars,
}

/// Diameters to choose from. Common practice, no source.
pub(crate) const BARS: [Length; 3] = [Length::mm(10.0), Length::mm(12.0), Length::mm(16.0)];
/// Distances to choose from, the furthest first; in blocks one cell, two or three. Common practice, no source.
const IN_CONCRETE: [Length; 7] = [
    Length::mm(250.0),
    Length::mm(225.0),
    Length::mm(200.0),
    Length::mm(175.0),
    Length::mm(150.0),
    Length::mm(125.0),
    Length::mm(100.0),
];
const IN_BLOCKS: [Length; 3] = [Length::mm(600.0), Length::mm(400.0), Length::mm(200.0)];
/// Cover of bars in the cells of blocks, shell and fill together. Common practice, no source.
const IN_CELL: Length = Length::mm(50.0);

/// Distances to choose from.
pub(crate) fn distances(made: Made) -> &'static [Length] {
    if made == Made::Concrete { &IN_CONCRETE } else { &IN_BLOCKS }
}

/// Which part of the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Part {
    Stem,
    Toe,
    Heel,
}

/// A section judged: demand and capacity of bending, shear and least steel, with their workings.
pub(crate) struct Judged {
    pub bending: (f64, f64),
    pub shear: (f64, f64),
    pub least: (f64, f64),
    pub traces: Vec<Trace>,
}

impl Bars {
    /// Steel per metre.
    pub fn per_m(self) -> Area {
        let one = std::f64::consts::FRAC_PI_4 * self.bar.to_mm() * self.bar.to_mm();
        Area::mm2(one * 1000.0 / self.every.to_mm())
    }
}

/// Least cover of a part by the rules.
pub(crate) fn cover(spec: &CantileverSpec, case: &WallCase, part: Part) -> Length {
    let rules = concrete_rules(spec, case);
    match (part, spec.made) {
        (Part::Stem, Made::Block) => IN_CELL,
        (Part::Stem, Made::Concrete) => least_cover(rules, Exposure::Turns, CastAgainst::Form),
        (Part::Heel, _) => least_cover(rules, Exposure::Wet, CastAgainst::Form),
        (Part::Toe, _) => {
            let against = if spec.blinding > Length::ZERO { CastAgainst::Blinding } else { CastAgainst::Soil };
            least_cover(rules, Exposure::Wet, against)
        }
    }
}

pub(crate) fn concrete_rules(spec: &CantileverSpec, case: &WallCase) -> Concrete {
    if spec.by_eurocode(case) { Concrete::En1992 } else { Concrete::Aci318 }
}

/// Thickness of a part and its depth to the steel.
fn depths(spec: &CantileverSpec, case: &WallCase, part: Part, bars: Bars) -> (Length, Length) {
    let least = cover(spec, case, part);
    let (thick, cover) = match part {
        Part::Stem => (spec.stem, spec.cover.unwrap_or(least)),
        Part::Toe | Part::Heel => (spec.footing, least),
    };
    (thick, thick - cover - bars.bar / 2.0)
}

/// A section with its bars under an effect.
///
/// # Errors
/// As the rules refuse: too thin for its moment, too much steel.
pub(crate) fn judge(
    spec: &CantileverSpec,
    case: &WallCase,
    part: Part,
    bars: Bars,
    effect: &Effect,
) -> Result<Judged, Refused> {
    let (moment, shear) = (Moment::knm(effect.moment.max(0.0)), Force::kn(effect.shear.max(0.0)));
    let (thickness, effective) = depths(spec, case, part, bars);
    let steel = bars.per_m();
    if part == Part::Stem && spec.made == Made::Block {
        let eurocode = spec.by_eurocode(case);
        // Low ends, from memory: EN 1996-1-1 3.6.1 for filled dense blocks; TMS 602 2000 psi.
        let usual = if eurocode { Pressure::mpa(8.0) } else { Pressure::mpa(13.79) };
        let strength = spec.masonry.unwrap_or(usual);
        let wall = ReinforcedMasonry {
            effective,
            steel_per_m: steel,
            strength,
            yield_stress: spec.yield_stress,
            modular_ratio: 200_000.0 / (900.0 * strength.to_mpa()),
        };
        let rules = if eurocode { Masonry::En1996 { gamma_m: 2.5 } } else { Masonry::Tms402 };
        let m = check_reinforced_masonry(&wall, rules, (moment, shear))?;
        // EN 1996-1-1:2005 8.2.3(1), from memory: 0.05 % of b d; taken under the other rules too.
        let least = 0.0005 * 1000.0 * effective.to_mm();
        return Ok(Judged {
            bending: (m.bending.demand.to_knm(), m.bending.capacity.to_knm()),
            shear: (m.shear.demand.to_kn(), m.shear.capacity.to_kn()),
            least: (least, steel.to_mm2()),
            traces: vec![m.bending.trace, m.shear.trace],
        });
    }
    let slab =
        Slab { thickness, effective, steel_per_m: steel, strength: spec.strength, yield_stress: spec.yield_stress };
    let s = check_strip(&slab, concrete_rules(spec, case), (moment, shear))?;
    Ok(Judged {
        bending: (s.bending.demand.to_knm(), s.bending.capacity.to_knm()),
        shear: (s.shear.demand.to_kn(), s.shear.capacity.to_kn()),
        least: (s.least_steel.demand.to_mm2(), s.least_steel.capacity.to_mm2()),
        traces: vec![s.bending.trace, s.shear.trace],
    })
}

/// The least steel with which every section of every strip holds in every state that is not an accident; the most where
/// none does.
pub(crate) fn choose(case: &WallCase, spec: &CantileverSpec, strips: &[Strip]) -> Steel {
    let laid = super::body::Laid { spec, steel: None };
    let mut all: [Vec<Effect>; 3] = [vec![], vec![], vec![]];
    for spot in strips.iter().flat_map(|s| spots(case, s)) {
        for state in states(case).into_iter().filter(|s| governs(case, *s)) {
            for c in combinations(case, state) {
                let found: &'static Combination = c;
                let Ok(e) = effects::of(case, &laid, &spot, state, found) else { continue };
                for (list, effect) in all.iter_mut().zip([e.stem, e.toe, e.heel]) {
                    list.push(effect);
                }
            }
        }
    }
    let [stem, toe, heel] = all.map(|list| worst(&list));
    let given = |b: &Bars| spec.bar.is_none_or(|d| b.bar == d) && spec.every.is_none_or(|e| b.every == e);
    let of_stem: Vec<Bars> = match (spec.bar, spec.every) {
        (Some(bar), Some(every)) => vec![Bars { bar, every }],
        (Some(bar), None) => distances(spec.made).iter().map(|e| Bars { bar, every: *e }).collect(),
        (None, Some(every)) => BARS.iter().map(|b| Bars { bar: *b, every }).collect(),
        (None, None) => pairs(distances(spec.made)).into_iter().filter(given).collect(),
    };
    let footing = pairs(&IN_CONCRETE);
    Steel {
        stem: least(case, spec, Part::Stem, &of_stem, &stem),
        toe: least(case, spec, Part::Toe, &footing, &toe),
        heel: least(case, spec, Part::Heel, &footing, &heel),
    }
}

/// The greatest moment and the greatest shear, taken together.
fn worst(list: &[Effect]) -> Effect {
    let most = |of: fn(&Effect) -> f64| list.iter().map(of).fold(0.0, f64::max);
    Effect { moment: most(|e| e.moment), shear: most(|e| e.shear), traces: vec![] }
}

fn pairs(distances: &[Length]) -> Vec<Bars> {
    BARS.iter().flat_map(|b| distances.iter().map(|e| Bars { bar: *b, every: *e })).collect()
}

/// The lightest that holds; of two alike, the one with fewer bars.
fn least(case: &WallCase, spec: &CantileverSpec, part: Part, tries: &[Bars], effect: &Effect) -> Bars {
    let mut tries = tries.to_vec();
    tries.sort_by(|a, b| {
        let (x, y) = (a.per_m().to_mm2(), b.per_m().to_mm2());
        x.total_cmp(&y).then(b.every.to_m().total_cmp(&a.every.to_m()))
    });
    let holds = |b: &Bars| {
        judge(spec, case, part, *b, effect).is_ok_and(|j| [j.bending, j.shear, j.least].iter().all(|(d, c)| d <= c))
    };
    let most = tries.last().copied().unwrap_or(Bars { bar: BARS[0], every: IN_CONCRETE[0] });
    tries.iter().copied().find(holds).unwrap_or(most)
}
