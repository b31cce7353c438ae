//! What would mend it? Every change of a size is tried on a copy of the case and offered only where it passes.

use groundhold_finding::{Adjust, Remedy};
use groundhold_quantity::Length;

use super::{Gravity, KINDS};
use crate::{CheckKind, Layout, WallCase, lay_out};

/// A size that may be changed.
#[derive(Debug, Clone)]
pub(crate) struct Way {
    /// Its key.
    pub key: &'static str,
    /// Values as a job file spells them, with the words of the remedy; the least change first.
    pub tries: Vec<(String, String)>,
}

impl Way {
    /// Lengths from one on, in equal steps.
    pub fn lengths(
        key: &'static str,
        from: Length,
        step: Length,
        most: Length,
        says: impl Fn(Length) -> String,
    ) -> Way {
        let n = ((most - from) / step + 1e-9).floor().clamp(0.0, 60.0) as usize;
        let each = (1..=n).map(|i| from + step * i as f64);
        Way { key, tries: each.map(|l| (format!("{} mm", l.to_mm().round()), says(l))).collect() }
    }
}

/// The first value of each way with which the failing kinds pass and nothing else of its own fails that passed before.
pub(crate) fn mend(case: &WallCase, wall: &dyn Gravity, layout: &Layout, kinds: &[CheckKind]) -> Vec<Remedy> {
    let own = wall.own_kinds().iter().flat_map(|k| k.0.iter().copied());
    let own: Vec<CheckKind> = KINDS.iter().copied().chain(own).collect();
    mend_by(case, wall.ways(layout), layout, kinds, &own)
}

/// The same by ways of its own; nothing of `own` fails that passed before.
pub(crate) fn mend_by(
    case: &WallCase,
    ways: Vec<Way>,
    layout: &Layout,
    kinds: &[CheckKind],
    own: &[CheckKind],
) -> Vec<Remedy> {
    let mut case = case.clone();
    case.search_slip = false;
    let now = case.spec.system().checks(&case, layout);
    let holds = |k: &CheckKind| !kinds.contains(k) && !now.iter().any(|c| c.kind == *k && c.fails());
    let before: Vec<CheckKind> = own.iter().copied().filter(holds).collect();
    let wanted: Vec<CheckKind> = kinds.iter().copied().chain(before).collect();
    let mut all = vec![];
    for way in ways {
        let found = way.tries.iter().find(|(value, _)| {
            let mut trial = case.clone();
            trial.spec.change(way.key, value).is_ok() && passes(&trial, &wanted)
        });
        if let Some((value, says)) = found {
            let change = Adjust { element: case.id.clone(), field: format!("spec.{}", way.key), value: value.clone() };
            all.push(Remedy::ours(says.clone(), vec![change]));
        }
    }
    all.extend(lower(&case, &wanted));
    if all.is_empty() {
        all.push(Remedy::theirs(
            "A lower wall, two walls one above the other, or another kind of wall by an engineer.",
        ));
    }
    all
}

/// True where the wall as the case has it fails none of these checks.
fn passes(case: &WallCase, kinds: &[CheckKind]) -> bool {
    let Ok(layout) = lay_out(case) else { return false };
    let checks = case.spec.system().checks(case, &layout);
    !checks.iter().any(|c| kinds.contains(&c.kind) && c.fails())
}

/// By how much lower the wall and the ground behind would pass: not ours to decide.
fn lower(case: &WallCase, kinds: &[CheckKind]) -> Option<Remedy> {
    let by = (1..=8).map(|i| Length::mm(100.0) * f64::from(i)).find(|by| {
        let mut trial = case.clone();
        for s in &mut trial.stations {
            let down = (s.behind - s.front).max(Length::ZERO).min(*by);
            s.behind = s.behind - down;
            s.wanted_top = s.wanted_top - *by;
        }
        trial.stations.iter().all(|s| s.wanted_top > s.front) && passes(&trial, kinds)
    })?;
    Some(Remedy::theirs(format!("The wall and the ground behind lower by {}.", case.units.length(by))))
}

/// A deeper base where frost reaches: ours to offer only as words, since the local depth decides.
pub(crate) fn deeper_by_hand(case: &WallCase, depth: Length) -> Remedy {
    Remedy::theirs(format!(
        "Ask for the local frost depth; {} of cover, or clean stone that holds no water down to that depth.",
        case.units.length(depth)
    ))
}
