//! All checks of a wall that stands by its weight, and what is said of those that fail.

use std::collections::BTreeMap;

use groundhold_earth::Method as Theory;
use groundhold_earth::soil::Frost;
use groundhold_finding::{Finding, Kind, Place, Remedy};
use groundhold_quantity::{Length, Level, trim};
use groundhold_working::Refused;

use super::remedies::{self, mend};
use super::{Gravity, base, joints, loads, seen};
use crate::loads::{NOTHING, UNFACTORED, beside, combinations, governs, in_state, is_accident, states};
use crate::said::failing;
use crate::stand::Stand;
use crate::{
    Check, CheckKind, Layout, LoadCase, PressurePoint, Push, Strip, Verdict, WallCase, findings, nearby, slip,
};

/// Ground that heaves lifts a base that lies less deep than this. Common practice, no source; local depth decides.
const FROST: Length = Length::mm(450.0);

/// Which checks make which finding.
const ROWS: [(CheckKind, &Kind); 8] = [
    (CheckKind::Sliding, &findings::WALL_SLIDES),
    (CheckKind::Overturning, &findings::WALL_OVERTURNS),
    (CheckKind::Eccentricity, &findings::OUT_OF_MIDDLE),
    (CheckKind::Bearing, &findings::GROUND_PRESSED),
    (CheckKind::JointSliding, &findings::JOINT_SLIDES),
    (CheckKind::JointEccentricity, &findings::JOINT_OPENS),
    (CheckKind::Crushing, &findings::CRUSHED),
    (CheckKind::Slip, &findings::SLIP),
];

/// Base and joints of one strip in one state, each at its worst place.
fn of_strip(case: &WallCase, wall: &dyn Gravity, strip: &Strip, state: LoadCase) -> Result<Vec<Check>, Refused> {
    let body = wall.body(strip);
    let case = &*in_state(case, state);
    let spots = loads::spots(case, strip);
    let mut all = vec![];
    for c in combinations(case, state) {
        let mut worst: Vec<Check> = vec![];
        for spot in &spots {
            let base = base::checks(case, wall, spot, &body, state, c)?;
            let joints = joints::checks(case, wall, spot, &body, state, c)?;
            for check in base.into_iter().chain(joints).chain(wall.own_checks(case, spot, state, c)?) {
                match worst.iter_mut().find(|w| w.kind == check.kind) {
                    Some(w) if w.utilisation < check.utilisation => *w = check,
                    Some(_) => {}
                    None => worst.push(check),
                }
            }
        }
        all.extend(worst);
    }
    Ok(all)
}

/// True where a strip passes every check of its own in every state that must be met. The case is one that was
/// [`seen`].
pub(crate) fn stands(case: &WallCase, wall: &dyn Gravity, strip: &Strip) -> bool {
    let ordinary = states(case).into_iter().filter(|s| governs(case, *s));
    ordinary.into_iter().all(|s| of_strip(case, wall, strip, s).is_ok_and(|all| !all.iter().any(Check::fails)))
}

/// How many kinds of check a strip fails in the states that must be met; all of them where one cannot be made.
/// The case is one that was [`seen`].
pub(crate) fn fails(case: &WallCase, wall: &dyn Gravity, strip: &Strip) -> usize {
    let mut kinds: Vec<CheckKind> = vec![];
    for state in states(case).into_iter().filter(|s| governs(case, *s)) {
        let Ok(all) = of_strip(case, wall, strip, state) else { return usize::MAX };
        kinds.extend(all.iter().filter(|c| c.fails()).map(|c| c.kind));
    }
    kinds.sort_unstable();
    kinds.dedup();
    kinds.len()
}

/// The first of `n` + 1 steps of a size that fails no check, given how many each fails. More of it mostly stands better, so
/// that the steps can be halved; where rising ground turns that round, they are gone through. Where none stands, the first
/// that fails no more than the last.
pub(crate) fn first(n: usize, fails: impl Fn(usize) -> usize) -> usize {
    let most = fails(n);
    let (mut low, mut high) = (0, n);
    while low < high {
        let middle = (low + high) / 2;
        if fails(middle) <= most { high = middle } else { low = middle + 1 }
    }
    if most == 0 || fails(low) == 0 {
        return low;
    }
    let stands = |i: &usize| fails(*i) == 0;
    let Some(near) = (0..=n).step_by(4).find(stands) else { return low };
    (near.saturating_sub(3)..near).find(stands).unwrap_or(near)
}

/// The checks of every strip, those that cannot be made left out.
pub(crate) fn all(case: &WallCase, wall: &dyn Gravity, layout: &Layout) -> Vec<Check> {
    let each = |s| layout.strips.iter().filter_map(move |strip| of_strip(case, wall, strip, s).ok());
    states(case).into_iter().flat_map(each).flatten().collect()
}

/// Everything there is to say about it.
pub(crate) fn judge(case: &WallCase, wall: &dyn Gravity, layout: &Layout) -> Verdict {
    judged(case, wall, layout, true)
}

/// The same while a finger drags: without looking for what would mend it.
pub(crate) fn judge_quick(case: &WallCase, wall: &dyn Gravity, layout: &Layout) -> Verdict {
    judged(case, wall, layout, false)
}

fn judged(case: &WallCase, wall: &dyn Gravity, layout: &Layout, mends: bool) -> Verdict {
    let given = case;
    let case = &seen(case, wall);
    let mut verdict = Verdict {
        wall: case.id.clone(),
        checks: vec![],
        margins: vec![],
        pushes: vec![],
        pressures: vec![],
        slip: None,
        findings: vec![],
    };
    let mut refused: BTreeMap<String, String> = BTreeMap::new();
    for strip in &layout.strips {
        for state in states(case) {
            match of_strip(case, wall, strip, state) {
                Ok(c) => verdict.checks.extend(c),
                // In an accident a wall may float or slide by theory: that is a figure, not a check left out.
                Err(_) if !governs(case, state) => {}
                Err(why) => {
                    refused.entry(why.to_string()).or_insert(strip.on.clone());
                }
            }
        }
    }
    let stands = Stand::all(layout);
    let highest = stands.iter().reduce(|a, b| if b.retained > a.retained { b } else { a });
    match slip::checks(case, highest) {
        Ok((checks, circle)) => {
            verdict.checks.extend(checks);
            verdict.slip = circle;
        }
        Err(why) => {
            refused.entry(why.to_string()).or_insert("the bank".into());
        }
    }
    let strip = layout.strips.iter().reduce(|a, b| if b.retained > a.retained { b } else { a });
    if let Some(strip) = strip {
        // A theory may refuse a situation that need not be met; then there is no figure to show.
        if mends {
            let others = beside(case).into_iter().filter_map(|s| of_strip(case, wall, strip, s).ok());
            verdict.checks.extend(others.flatten());
        }
        show_pushes(case, wall, strip, &mut verdict);
    }
    verdict.findings = said((given, case), wall, layout, &verdict, mends);
    verdict.findings.extend(wall.own_findings(case, layout, &verdict));
    verdict.findings.extend(around(given, case, wall, layout, &stands));
    verdict.findings.extend(refused.into_iter().map(|(why, place)| {
        Finding::new(&findings::CANNOT_CHECK, Place::on(&case.id, place), format!("A check could not be made: {why}."))
    }));
    verdict.findings.sort_by(|a, b| b.severity.cmp(&a.severity).then(a.kind.code.cmp(b.kind.code)));
    verdict
}

fn said(
    (given, case): (&WallCase, &WallCase),
    wall: &dyn Gravity,
    layout: &Layout,
    verdict: &Verdict,
    mends: bool,
) -> Vec<Finding> {
    let mut all = vec![];
    let shared = ROWS.iter().map(|(kind, finding)| (std::slice::from_ref(kind), *finding));
    for (kinds, finding) in shared.chain(wall.own_kinds().iter().copied()) {
        let Some(f) = failing(case, verdict, kinds, finding, |_| true) else { continue };
        let remedies = match () {
            () if kinds == [CheckKind::Slip] => slip::remedies(),
            () if mends => mend(given, wall, layout, kinds),
            () => vec![],
        };
        all.push(remedies.into_iter().fold(f, Finding::with_remedy));
    }
    all.extend(drain_relied_on(case, wall, verdict));
    all.extend(crate::said::situations(case, verdict));
    all.extend(soil_over_top(case, layout));
    all.extend(frost(case, wall, layout));
    all
}

/// Where the wall would fail with its drain blocked, though it holds with a drain that works.
fn drain_relied_on(case: &WallCase, wall: &dyn Gravity, verdict: &Verdict) -> Option<Finding> {
    if !is_accident(case, LoadCase::DrainBlocked) {
        return None;
    }
    let blocked = verdict.checks.iter().filter(|c| c.case == LoadCase::DrainBlocked && c.utilisation > 1.0);
    let worst = blocked.reduce(|a, b| if b.utilisation > a.utilisation { b } else { a })?;
    let with = if wall.drains_itself() {
        "With the back of the wall clogged and water to the ground behind"
    } else {
        "With the drain blocked and water to the ground behind"
    };
    let times = match worst.utilisation {
        u if u.is_finite() => format!("is asked {} times what it has", trim(u, 1)),
        _ => "has nothing left".into(),
    };
    let says = format!("{with}, {} ({}) {times} ({}).", worst.on, worst.kind.words(), worst.method);
    let mut f = Finding::new(&findings::DRAIN_BLOCKED, Place::of(&case.id), says);
    f.utilisation = Some(worst.utilisation);
    f.trace = worst.traces.first().cloned();
    let keep = if wall.drains_itself() {
        "Geotextile or graded stone between the soil and the wall, so that fines do not wash into it; an open foot."
    } else {
        "Rodding points and an outlet that is seen, cleaned each autumn and after the first storm; weep holes in the face."
    };
    Some(f.with_remedy(Remedy::theirs(keep)))
}

fn soil_over_top(case: &WallCase, layout: &Layout) -> Option<Finding> {
    let over = |s: &Strip| s.behind - s.top;
    let worst = layout.strips.iter().reduce(|a, b| if over(b) > over(a) { b } else { a })?;
    if over(worst) < Length::mm(5.0) {
        return None;
    }
    let says = format!("The ground behind stands {} above the top of {}.", case.units.length(over(worst)), worst.on);
    let higher = format!("The wall's top {} higher, or the ground behind lower.", case.units.length(over(worst)));
    let place = Place::on(&case.id, worst.on.clone());
    Some(Finding::new(&findings::SOIL_OVER_TOP, place, says).with_remedy(Remedy::theirs(higher)))
}

fn frost(case: &WallCase, wall: &dyn Gravity, layout: &Layout) -> Option<Finding> {
    let heaves = matches!(case.founding_soil.frost, Some(Frost::Medium | Frost::High));
    let depth = |s: &Strip| s.front - s.base;
    let shallow = layout.strips.iter().reduce(|a, b| if depth(b) < depth(a) { b } else { a })?;
    if !heaves || wall.drains_itself() || depth(shallow) >= FROST {
        return None;
    }
    let says = format!(
        "The base lies {} below the ground in front in soil that heaves in frost; {} is usual where nothing local is known.",
        case.units.length(depth(shallow)),
        case.units.length(FROST)
    );
    let place = Place::on(&case.id, shallow.on.clone());
    let finding = Finding::new(&findings::BASE_ABOVE_FROST, place, says)
        .with_utilisation(FROST / depth(shallow).max(Length::mm(1.0)));
    Some(finding.with_remedy(remedies::deeper_by_hand(case, FROST)))
}

/// What lies near it.
fn around(given: &WallCase, case: &WallCase, wall: &dyn Gravity, layout: &Layout, stands: &[Stand]) -> Vec<Finding> {
    let more = |s: &Stand| {
        let strip = layout.strips.iter().find(|p| p.on == s.on)?;
        let body = wall.body(strip);
        let spot = loads::spots(case, strip).into_iter().next()?;
        let a =
            loads::active(case, &UNFACTORED, LoadCase::Drained, Theory::Rankine, &spot, &body, 0.0).ok().flatten()?;
        Some(((a.permanent.horizontal + a.variable.horizontal) / a.soil.horizontal, a.trace))
    };
    let mut all = nearby::findings(given, "The base stands", stands, more);
    let (limit, kind) = wall.guide();
    all.extend(nearby::higher_than_guides(case, layout.retained, limit, kind));
    if let Some(f) = case.fence.as_ref().filter(|f| f.height > Length::ZERO) {
        let says = format!(
            "Wind of {} on the fence of {} pushes the wall at its top; it is checked with it.",
            case.units.pressure(f.wind),
            case.units.length(f.height)
        );
        let remedy = Remedy::theirs("A fence on posts of its own, behind the wall and clear of its wedge.");
        all.push(Finding::new(&findings::FENCE_ON_TOP, Place::of(&case.id), says).with_remedy(remedy));
    }
    all
}

/// Pressures and pushes at the strip that holds most, by both theories, loads and soil as they are.
fn show_pushes(case: &WallCase, wall: &dyn Gravity, strip: &Strip, verdict: &mut Verdict) {
    let body = wall.body(strip);
    let Some(spot) = loads::spots(case, strip).into_iter().next().filter(|s| s.strip.retained >= NOTHING) else {
        return;
    };
    for state in states(case) {
        for theory in [Theory::Rankine, Theory::Coulomb] {
            let Ok(Some(a)) = loads::active(case, &UNFACTORED, state, theory, &spot, &body, 0.0) else { continue };
            let height = a.diagram.last().map_or(Length::ZERO, |o| o.depth);
            if theory == Theory::Rankine && state != LoadCase::Wind {
                let points = a.diagram.iter().map(|o| PressurePoint {
                    depth: o.depth,
                    soil: o.soil,
                    load: o.surcharge,
                    water: o.water,
                });
                verdict.pressures.push((state, points.collect()));
            }
            let foot: Level = strip.base;
            verdict.pushes.push(Push {
                case: state,
                method: theory.name(),
                horizontal: a.horizontal,
                vertical: a.vertical,
                arm: a.arm,
                head: foot + height,
                foot,
                on: strip.on.clone(),
                chainage: strip.middle(),
                force: None,
                moment: None,
                governs: theory == Theory::Rankine,
                trace: a.trace,
            });
        }
    }
}
