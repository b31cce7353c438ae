//! What does a dry stone wall take: face stones, hearting, throughs, cope, time?

use groundhold_quantity::{Density, Length, Mass, Share, Volume, trim};

use super::DryStoneSpec;
use crate::gravity::Gravity;
use crate::{Amount, Bulk, Layout, Lift, WallCase, Work, WorkStep};

/// Part of the solid stone that is packed into the heart. Common practice, no source: a quarter to a third.
const HEARTING: f64 = 0.28;
/// Throughs stand a metre apart. Common practice, no source.
const APART: Length = Length::m(1.0);
/// A through is as thick as this and twice as broad. Common practice, no source.
const THROUGH: Length = Length::mm(120.0);

struct Amounts {
    body: Volume,
    cope: Volume,
    throughs: f64,
    through_length: Length,
}

fn amounts(spec: &DryStoneSpec, layout: &Layout) -> Amounts {
    let mut a = Amounts { body: Volume::ZERO, cope: Volume::ZERO, throughs: 0.0, through_length: Length::ZERO };
    for s in &layout.strips {
        let body = spec.body(s);
        let long = s.length();
        let cope = spec.cope.min(s.top - s.foot);
        let under_cope = Volume::m3(body.area(|_| true) * long.to_m()) - spec.top_width * cope * long;
        a.body += under_cope.max(Volume::ZERO);
        a.cope += spec.top_width * cope * long;
        let mut z = spec.throughs;
        while z < s.top - s.base - spec.cope - THROUGH {
            a.throughs += (long / APART).ceil().max(1.0);
            let (front, back) = body.at(z.to_m());
            a.through_length = a.through_length.max(Length::m(front - back));
            z += spec.throughs;
        }
    }
    a
}

pub(crate) fn fill(case: &WallCase, spec: &DryStoneSpec, layout: &mut Layout) {
    let a = amounts(spec, layout);
    let solid = spec.stone.to_kn_per_m3() * 1000.0 / 9.81;
    let share = 1.0 - spec.voids.to_fraction();
    let mass = |v: Volume, part: f64| Mass::kg(v.to_m3() * share * part * solid);
    let bulk = |item: &str, amount, what: &str, waste| Bulk {
        item: item.into(),
        amount,
        what: what.into(),
        density: Some(Density::kg_per_m3(solid * 0.6)),
        waste: Share::percent(waste),
    };
    layout.bulk = vec![
        bulk("walling stone", Amount::Mass(mass(a.body, 1.0 - HEARTING)), "face stones", 10.0),
        bulk("hearting stone", Amount::Mass(mass(a.body, HEARTING)), "hearting, packed by hand", 5.0),
        bulk("cope stone", Amount::Mass(mass(a.cope, 1.0)), "cope", 5.0),
    ];
    if a.throughs > 0.0 {
        let long = trim((a.through_length.to_m() * 10.0 - 1e-6).ceil() / 10.0, 1);
        layout.bulk.push(bulk(&format!("through stone {long} m"), Amount::Count(a.throughs), "throughs", 5.0));
        let one = Mass::kg(a.through_length.to_m() * THROUGH.to_m() * THROUGH.to_m() * 2.0 * solid);
        layout.lifts.push(Lift { what: format!("through stone {long} m"), mass: one, count: a.throughs });
    }
    // The largest foundation stones: two of them make the width.
    let widest = layout.strips.iter().map(|s| s.width).reduce(Length::max).unwrap_or_default();
    let side = widest.to_m() * 0.5;
    let foundation = Mass::kg(side * side * 0.8 * 0.2 * solid);
    layout.lifts.push(Lift {
        what: "foundation stone".into(),
        mass: foundation,
        count: (layout.length.to_m() * 2.0).ceil(),
    });
    layout.works = works(a.body + a.cope, layout);
    let u = case.units;
    layout.made_of = format!("{} of dry stone", u.volume(a.body + a.cope));
    layout.headline = format!("{} of dry stone, base {} wide", u.volume(a.body + a.cope), u.length(widest));
    layout.facts = vec![
        (
            "Stone".into(),
            format!(
                "{} as built, {} kN/m³ in place",
                u.volume(a.body + a.cope),
                trim(spec.in_place().to_kn_per_m3(), 1)
            ),
        ),
        (
            "Base".into(),
            format!("{} wide at most, {} below the ground in front", u.length(widest), u.length(layout.dig.depth)),
        ),
        ("Face and top".into(), format!("face {}, {} under the cope", u.slope(spec.batter), u.length(spec.top_width))),
        ("Throughs".into(), format!("{} pieces, rows {} apart", trim(a.throughs, 0), u.length(spec.throughs))),
    ];
}

fn works(stone: Volume, layout: &Layout) -> Vec<Work> {
    const OURS: &str = "our estimate from common practice, no source: two people lay 2 to 4 m² of face a day; put your own figure from the last job";
    let long = layout.length.to_m();
    vec![
        Work {
            step: WorkStep::Base,
            name: "Lay the foundation stones".into(),
            amount: long,
            unit: "m",
            hours: [0.6, 1.0, 2.0],
            people_most: 3,
            source: OURS,
            how: "The largest stones, length into the wall, bedded firm and without a rock on the subsoil.".into(),
            checks: vec![
                "Bottom firm, level across or falling into the bank, stepped as drawn; what was found is written down.".into(),
                "Batter frames and strings stand.".into(),
            ],
            sets_days: 0.0,
        },
        Work {
            step: WorkStep::Courses,
            name: "Lay the stones and the cope".into(),
            amount: stone.to_m3(),
            unit: "m³",
            hours: [7.0, 11.0, 18.0],
            people_most: 4,
            source: OURS,
            how: "One stone on two and two on one, length into the wall; heart packed tight with each course; drain stone behind raised with it.".into(),
            checks: vec![],
            sets_days: 0.0,
        },
    ]
}
