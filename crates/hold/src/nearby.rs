//! What near the wall, on it or under it speaks against it?

use groundhold_earth::soil::Bears;
use groundhold_finding::{Finding, Place, Remedy, Severity};
use groundhold_quantity::{Length, math, trim};
use groundhold_working::Trace;

use crate::loads;
use crate::stand::Stand;
use crate::{Line, Neighbour, NeighbourKind, Side, WallCase, findings};

/// Everything that follows from the surroundings, whatever the wall is made of. `stands` says in what it stands:
/// `The posts stand`; `more` is the part that all loads behind add to the push, with its working.
pub(crate) fn findings(
    case: &WallCase,
    stands: &str,
    places: &[Stand],
    more: impl Fn(&Stand) -> Option<(f64, Trace)>,
) -> Vec<Finding> {
    let mut all = soils(case, stands);
    all.extend(steep(case));
    let Some(highest) = places.iter().reduce(|a, b| if b.retained > a.retained { b } else { a }) else {
        return all;
    };
    all.extend(loads_near(case, highest, more));
    all.extend(case.neighbours.iter().filter_map(|n| neighbour(case, places, n)));
    if !case.water.drained && highest.retained > loads::NOTHING {
        let says =
            "No drain is planned behind the wall: water standing behind it is taken as the rule, not as an accident.";
        let remedy = Remedy::theirs("A drainage zone of clean stone with a pipe to an outlet below the wall's foot.");
        all.push(Finding::new(&findings::NO_DRAIN, Place::of(&case.id), says).with_remedy(remedy));
    }
    all
}

/// Said where a wall is higher than guides for its kind go.
pub(crate) fn higher_than_guides(case: &WallCase, retained: Length, limit: Length, kind: &str) -> Option<Finding> {
    if retained <= limit {
        return None;
    }
    let says = format!(
        "The wall retains {}; guides for {kind} stop at {}.",
        case.units.length(retained),
        case.units.length(limit)
    );
    let remedy = Remedy::theirs("A licensed engineer designs the wall, or two lower walls take its place.");
    let finding = Finding::new(&findings::RETAINS_MUCH, Place::of(&case.id), says);
    Some(finding.with_utilisation(retained / limit).with_remedy(remedy))
}

fn soils(case: &WallCase, stands: &str) -> Vec<Finding> {
    let Bears::No(why) = case.founding_soil.bears else { return vec![] };
    let says = format!("{stands} in {}: {why}.", case.founding_soil.name);
    let remedy = Remedy::theirs(
        "Count the depth from the firmer ground below, found with a trial hole, and name that soil in the job.",
    );
    vec![Finding::new(&findings::SOIL_POOR, Place::of(&case.id), says).with_remedy(remedy)]
}

fn steep(case: &WallCase) -> Option<Finding> {
    let phi = case.retained_soil.phi;
    let steepest = case.stations.iter().max_by(|a, b| a.slope_behind.si().total_cmp(&b.slope_behind.si()))?;
    let beta = steepest.slope_behind.to_angle();
    if beta < phi {
        return None;
    }
    let says = format!(
        "The ground behind rises at {}°, its soil ({}) stands at no more than {}°.",
        trim(beta.to_deg(), 1),
        case.retained_soil.name,
        trim(phi.to_deg(), 1)
    );
    let place = Place::on(&case.id, format!("chainage {}", case.chainage(steepest.chainage)));
    let flatter = Remedy::theirs(format!(
        "A bank behind the wall no steeper than {}°, or a second wall.",
        trim(phi.to_deg() / 1.5, 0)
    ));
    Some(Finding::new(&findings::SLOPE_STEEP, place, says).with_utilisation(beta / phi).with_remedy(flatter))
}

/// How far back the active wedge of a level backfill reaches, Rankine: H tan(45° − φ/2); taken no nearer than the 45° line.
fn reach(case: &WallCase, height: Length) -> Length {
    let phi = case.retained_soil.phi.to_rad();
    height * math::tan(std::f64::consts::FRAC_PI_4 - phi / 2.0).max(1.0)
}

fn loads_near(case: &WallCase, highest: &Stand, more: impl Fn(&Stand) -> Option<(f64, Trace)>) -> Vec<Finding> {
    let near: Vec<_> =
        case.loads.iter().filter(|l| l.value.si() > 0.0 && l.from < reach(case, highest.retained)).collect();
    if near.is_empty() {
        return vec![];
    }
    let Some((added, trace)) = more(highest) else { return vec![] };
    let one = |l: &&crate::Load| {
        let says = format!(
            "{} ({}) stands {} behind the wall. All loads behind add {} % to the push of the soil at its highest place.",
            l.what,
            case.units.pressure(l.value),
            case.units.length(l.from),
            trim(100.0 * added, 0)
        );
        let away = reach(case, highest.retained);
        let remedy = Remedy::theirs(format!("{} at least {} behind the wall.", l.what, case.units.run(away)));
        Finding::new(&findings::LOAD_NEAR, Place::of(&case.id), says).with_trace(trace.clone()).with_remedy(remedy)
    };
    near.iter().map(one).collect()
}

fn neighbour(case: &WallCase, places: &[Stand], n: &Neighbour) -> Option<Finding> {
    let post = places.iter().min_by(|a, b| {
        let away = |p: &Stand| (p.chainage - n.chainage).abs().to_m();
        away(a).total_cmp(&away(b))
    })?;
    match n.kind {
        NeighbourKind::Wall { retained } => walls_close(case, post, n, retained),
        NeighbourKind::Cut { depth } => cut_near(case, post, n, depth),
        NeighbourKind::Footing { depth, .. } => footing_near(case, post, n, depth),
    }
}

fn walls_close(case: &WallCase, post: &Stand, n: &Neighbour, retained: Length) -> Option<Finding> {
    let (lower, upper_is) = match n.side {
        Side::Behind => (post.retained, n.what.as_str()),
        Side::InFront => (retained, case.id.as_str()),
    };
    let apart = lower * 2.0;
    if apart <= n.distance || lower < loads::NOTHING {
        return None;
    }
    let says = format!(
        "{upper_is} stands {} behind the lower wall of {}, less than twice its height ({}): the two act together.",
        case.units.length(n.distance),
        case.units.length(lower),
        case.units.length(apart)
    );
    let remedy =
        Remedy::theirs(format!("The walls at least {} apart, or one engineer for both.", case.units.run(apart)));
    let place = Place::on(&case.id, format!("chainage {}", case.chainage(n.chainage)));
    let finding = Finding::new(&findings::WALLS_CLOSE, place, says);
    Some(finding.with_utilisation(apart / n.distance.max(Length::mm(1.0))).with_remedy(remedy))
}

/// A cut in front, against the passive wedge from the underside of the post: 45° + φ/2 from the vertical.
fn cut_near(case: &WallCase, post: &Stand, n: &Neighbour, depth: Length) -> Option<Finding> {
    let place = Place::on(&case.id, post.on.clone());
    if n.side == Side::Behind {
        let away = reach(case, post.retained);
        let near = n.distance < away && depth > Length::ZERO;
        let says = format!(
            "{} is cut {} deep, {} behind the wall, in the ground the wall holds.",
            n.what,
            case.units.length(depth),
            case.units.length(n.distance)
        );
        return near.then(|| Finding::new(&findings::CUT_NEAR, place, says).weighing(Severity::Watch));
    }
    let phi = case.founding_soil.phi.to_rad();
    let away = post.depth * math::tan(std::f64::consts::FRAC_PI_4 + phi / 2.0);
    if away <= n.distance || depth <= Length::ZERO {
        return None;
    }
    let says = format!(
        "{} is cut {} deep, {} in front of the wall: within the {} of ground that hold {}.",
        n.what,
        case.units.length(depth),
        case.units.length(n.distance),
        case.units.length(away),
        post.on
    );
    let remedy = Remedy::theirs(format!(
        "The cut at least {} from the wall, or dug in short lengths and filled and rammed the same day, or before the wall.",
        case.units.run(away)
    ));
    let finding = Finding::new(&findings::CUT_NEAR, place, says);
    Some(finding.with_utilisation(away / n.distance.max(Length::mm(1.0))).with_remedy(remedy))
}

/// A footing against the line at 45° down from its underside to the bottom of the post hole.
fn footing_near(case: &WallCase, post: &Stand, n: &Neighbour, depth: Length) -> Option<Finding> {
    let (what_is_dug, bottom) = post.dug.as_ref()?;
    // The footing's depth counts from the ground beside it, not from that at the end of a wall that fades.
    let beside = Line::new(&case.stations).at(n.chainage);
    let surface = match n.side {
        Side::Behind => beside.behind,
        Side::InFront => beside.front,
    };
    let allowed = depth + n.distance;
    let dug = surface - *bottom;
    if dug <= allowed {
        return None;
    }
    let face = if n.side == Side::Behind && post.retained > allowed {
        " Even the open face behind the wall goes below that line."
    } else {
        ""
    };
    let says = format!(
        "The {what_is_dug} goes {} below the ground beside {}; the line at 45° from its footing allows {}.{face}",
        case.units.length(dug),
        n.what,
        case.units.length(allowed)
    );
    let remedy = Remedy::theirs(format!(
        "The wall {} further from {}, or dug and filled in short lengths, one at a time, by an engineer's method.",
        case.units.run(dug - allowed),
        n.what
    ));
    let place = Place::on(&case.id, post.on.clone());
    let finding = Finding::new(&findings::FOOTING_NEAR, place, says);
    Some(finding.with_utilisation(dug / allowed.max(Length::mm(1.0))).with_remedy(remedy))
}
