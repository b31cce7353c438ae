//! What would mend ties, timbers and screws? Every size is tried and offered only where the wall then passes.

use groundhold_finding::Remedy;
use groundhold_member::timber::{Section, grade};
use groundhold_quantity::{Length, trim};

use super::StackedTimberSpec;
use crate::gravity::{KINDS, Way, mend_by};
use crate::{CheckKind, Layout, WallCase, timber_text};

/// Sizes in which sleepers are kept, height and thickness. Common practice, no source.
const SIZES: [(f64, f64); 4] = [(125.0, 125.0), (150.0, 150.0), (200.0, 150.0), (200.0, 200.0)];

/// The checks that must not fail where they held before.
const OWN: [CheckKind; 11] = [
    CheckKind::DeadmanPull,
    CheckKind::DeadmanPlace,
    CheckKind::TieTension,
    CheckKind::TieFixing,
    CheckKind::CrossBending,
    CheckKind::CrossShear,
    CheckKind::CourseShear,
    CheckKind::CourseOpening,
    CheckKind::TimberBending,
    CheckKind::TimberShear,
    CheckKind::TimberBow,
];

fn closer(spec: &StackedTimberSpec) -> Way {
    let tries = [2.0, 1.8, 1.5, 1.2, 1.0, 0.8, 0.6].map(Length::m).into_iter().filter(|l| *l < spec.ties.spacing);
    let says = |l: Length| {
        format!("Ties at {} m at most instead of {} m.", trim(l.to_m(), 2), trim(spec.ties.spacing.to_m(), 2))
    };
    Way { key: "tie_spacing", tries: tries.map(|l| (format!("{} mm", trim(l.to_mm(), 0)), says(l))).collect() }
}

fn more_rows(spec: &StackedTimberSpec) -> Way {
    let tries = (1..spec.ties.every).rev();
    let says = |n: u32| format!("A row of ties every {n} course(s) instead of every {}.", spec.ties.every);
    Way { key: "tie_every", tries: tries.map(|n| (n.to_string(), says(n))).collect() }
}

fn more_screws(spec: &StackedTimberSpec) -> Way {
    let tries = spec.ties.screws + 1..=12;
    let says = |n: u32| format!("{n} screws through each end of a tie instead of {}.", spec.ties.screws);
    Way { key: "tie_screws", tries: tries.map(|n| (n.to_string(), says(n))).collect() }
}

fn closer_screws(spec: &StackedTimberSpec) -> Way {
    let tries = [400.0, 300.0, 250.0, 200.0, 150.0, 100.0].map(Length::mm);
    let now = spec.screws.spacing;
    let says = |l: Length| {
        format!(
            "Screws along the courses every {} mm instead of every {} mm.",
            trim(l.to_mm(), 0),
            trim(now.to_mm(), 0)
        )
    };
    let tries = tries.into_iter().filter(|l| *l < now);
    Way { key: "screw_spacing", tries: tries.map(|l| (format!("{} mm", trim(l.to_mm(), 0)), says(l))).collect() }
}

fn larger(spec: &StackedTimberSpec) -> Way {
    let t = &spec.timber;
    let fits = |(h, d): &(f64, f64)| {
        *h * *d > t.height.to_mm() * t.thickness.to_mm() + 1.0
            && grade(t.grade.name, &Section::rectangle(Length::mm(*h), Length::mm(*d))).is_ok()
    };
    let say = |(h, d): (f64, f64)| {
        let size = timber_text::spelled(Length::mm(h), Length::mm(d));
        let value =
            [size.as_str(), &t.treatment, t.grade.name].into_iter().filter(|w| !w.is_empty()).collect::<Vec<_>>();
        (value.join(" "), format!("Timbers of {} mm.", size.replace('x', " by ")))
    };
    Way { key: "timber", tries: SIZES.into_iter().filter(fits).map(say).collect() }
}

/// The first value of each way that mends failing checks of these kinds.
pub(crate) fn mend(case: &WallCase, spec: &StackedTimberSpec, layout: &Layout, kinds: &[CheckKind]) -> Vec<Remedy> {
    let now = layout.strips.iter().map(|x| x.width).reduce(Length::max).unwrap_or(Length::m(1.0));
    let longer = || {
        Way::lengths("tie_length", now, Length::mm(100.0), Length::m(4.0), |l| {
            format!("Ties {} m long.", trim(l.to_m(), 1))
        })
    };
    let ways = match kinds.first() {
        Some(CheckKind::DeadmanPull) => {
            let cross = Way::lengths("cross_length", spec.ties.cross, Length::mm(300.0), Length::m(2.4), |l| {
                format!("Cross pieces {} m long instead of {} m.", trim(l.to_m(), 1), trim(spec.ties.cross.to_m(), 1))
            });
            vec![cross, closer(spec), longer(), more_rows(spec)]
        }
        Some(CheckKind::DeadmanPlace) => vec![longer()],
        Some(CheckKind::TieTension) => vec![more_screws(spec), closer(spec), more_rows(spec), larger(spec)],
        Some(CheckKind::CourseShear) => vec![closer_screws(spec), more_rows(spec)],
        _ => vec![closer(spec), more_rows(spec), larger(spec)],
    };
    let own: Vec<CheckKind> = KINDS.into_iter().chain(OWN).collect();
    mend_by(case, ways, layout, kinds, &own)
}
