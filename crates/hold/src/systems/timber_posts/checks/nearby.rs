//! What near the wall, on it or under it speaks against it?

use groundhold_earth::Method as Theory;
use groundhold_earth::soil::Bears;
use groundhold_finding::{Finding, Place, Remedy, Severity};
use groundhold_quantity::{Length, math, trim};

use super::loads::{self, UNFACTORED};
use crate::systems::timber_posts::TimberPostSpec;
use crate::{Layout, Line, LoadCase, Neighbour, NeighbourKind, Post, Side, WallCase, findings};

/// Retained height above which guides for posts and boards stop.
const GUIDE_LIMIT: Length = Length::m(1.0);

/// Everything that follows from the surroundings.
pub(crate) fn findings(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Vec<Finding> {
    let mut all = soils(case);
    all.extend(steep(case));
    let Some(highest) = layout.posts.iter().reduce(|a, b| if b.retained > a.retained { b } else { a }) else {
        return all;
    };
    all.extend(loads_near(case, highest));
    all.extend(fence(case, highest));
    all.extend(case.neighbours.iter().filter_map(|n| neighbour(case, layout, n)));
    all.extend(holes_close(case, spec, layout));
    if !case.water.drained && layout.retained > loads::NOTHING {
        let says =
            "No drain is planned behind the wall: water standing behind it is taken as the rule, not as an accident.";
        let remedy = Remedy::theirs("A drainage zone of clean stone with a pipe to an outlet below the wall's foot.");
        all.push(Finding::new(&findings::NO_DRAIN, Place::of(&case.id), says).with_remedy(remedy));
    }
    if layout.retained > GUIDE_LIMIT {
        let says = format!(
            "The wall retains {}; guides for timber posts and boards stop at {}.",
            case.units.length(layout.retained),
            case.units.length(GUIDE_LIMIT)
        );
        let remedy = Remedy::theirs("A licensed engineer designs the wall, or two lower walls take its place.");
        let finding = Finding::new(&findings::RETAINS_MUCH, Place::of(&case.id), says);
        all.push(finding.with_utilisation(layout.retained / GUIDE_LIMIT).with_remedy(remedy));
    }
    all
}

fn soils(case: &WallCase) -> Vec<Finding> {
    let Bears::No(why) = case.founding_soil.bears else { return vec![] };
    let says = format!("The posts stand in {}: {why}.", case.founding_soil.name);
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

fn loads_near(case: &WallCase, highest: &Post) -> Vec<Finding> {
    let slope = Line::new(&case.stations).at(highest.chainage).slope_behind;
    let Ok(Some(with)) = loads::active(case, &UNFACTORED, LoadCase::Drained, Theory::Rankine, highest.retained, slope)
    else {
        return vec![];
    };
    let near = case.loads.iter().filter(|l| l.value.si() > 0.0 && l.from < reach(case, highest.retained));
    let added = with.permanent.horizontal + with.variable.horizontal;
    near.map(|l| {
        let says = format!(
            "{} ({}) stands {} behind the wall. All loads behind add {} % to the push of the soil at its highest place.",
            l.what,
            case.units.pressure(l.value),
            case.units.length(l.from),
            trim(100.0 * (added / with.soil.horizontal), 0)
        );
        let away = reach(case, highest.retained);
        let remedy = Remedy::theirs(format!("{} at least {} behind the wall.", l.what, case.units.run(away)));
        Finding::new(&findings::LOAD_NEAR, Place::of(&case.id), says)
            .with_trace(with.trace.clone())
            .with_remedy(remedy)
    })
    .collect()
}

fn fence(case: &WallCase, highest: &Post) -> Option<Finding> {
    let f = case.fence.as_ref()?;
    let of = |state| loads::on_post(case, &UNFACTORED, state, Theory::Rankine, highest).ok();
    let (still, windy) = (of(LoadCase::Drained)?, of(LoadCase::Wind)?);
    let ratio = (windy.moment - still.moment) / still.moment;
    let compared = if ratio.is_finite() {
        format!("{} times the moment of the soil at post {}", trim(ratio, 1), highest.number)
    } else {
        format!("the only moment at post {}", highest.number)
    };
    let says = format!(
        "Wind of {} on the fence of {} gives {compared}; the wall is checked with it.",
        case.units.pressure(f.wind),
        case.units.length(f.height)
    );
    let remedy = Remedy::theirs("A fence on posts of its own, behind the wall and clear of its wedge.");
    let mut finding = Finding::new(&findings::FENCE_ON_TOP, Place::of(&case.id), says).with_remedy(remedy);
    finding.trace = windy.traces.into_iter().next();
    Some(finding)
}

fn neighbour(case: &WallCase, layout: &Layout, n: &Neighbour) -> Option<Finding> {
    let post = layout.posts.iter().min_by(|a, b| {
        let away = |p: &Post| (p.chainage - n.chainage).abs().to_m();
        away(a).total_cmp(&away(b))
    })?;
    match n.kind {
        NeighbourKind::Wall { retained } => walls_close(case, post, n, retained),
        NeighbourKind::Cut { depth } => cut_near(case, post, n, depth),
        NeighbourKind::Footing { depth, .. } => footing_near(case, layout, post, n, depth),
    }
}

fn walls_close(case: &WallCase, post: &Post, n: &Neighbour, retained: Length) -> Option<Finding> {
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
fn cut_near(case: &WallCase, post: &Post, n: &Neighbour, depth: Length) -> Option<Finding> {
    let place = Place::on(&case.id, format!("post {}", post.number));
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
        "{} is cut {} deep, {} in front of the wall: within the {} of ground that hold post {}.",
        n.what,
        case.units.length(depth),
        case.units.length(n.distance),
        case.units.length(away),
        post.number
    );
    let remedy = Remedy::theirs(format!(
        "The cut at least {} from the wall, or dug in short lengths and filled and rammed the same day, or before the wall.",
        case.units.run(away)
    ));
    let finding = Finding::new(&findings::CUT_NEAR, place, says);
    Some(finding.with_utilisation(away / n.distance.max(Length::mm(1.0))).with_remedy(remedy))
}

/// A footing against the line at 45° down from its underside to the bottom of the post hole.
fn footing_near(case: &WallCase, layout: &Layout, post: &Post, n: &Neighbour, depth: Length) -> Option<Finding> {
    let hole = layout.holes.get(post.number - 1)?;
    // The footing's depth counts from the ground beside it, not from that at the end of a wall that fades.
    let beside = Line::new(&case.stations).at(n.chainage);
    let surface = match n.side {
        Side::Behind => beside.behind,
        Side::InFront => beside.front,
    };
    let allowed = depth + n.distance;
    let dug = surface - hole.bottom;
    if dug <= allowed {
        return None;
    }
    let face = if n.side == Side::Behind && post.retained > allowed {
        " Even the open face behind the boards goes below that line."
    } else {
        ""
    };
    let says = format!(
        "The hole of post {} goes {} below the ground beside {}; the line at 45° from its footing allows {}.{face}",
        post.number,
        case.units.length(dug),
        n.what,
        case.units.length(allowed)
    );
    let remedy = Remedy::theirs(format!(
        "The wall {} further from {}, or holes dug and filled one at a time by an engineer's method.",
        case.units.run(dug - allowed),
        n.what
    ));
    let place = Place::on(&case.id, format!("post {}", post.number));
    let finding = Finding::new(&findings::FOOTING_NEAR, place, says);
    Some(finding.with_utilisation(dug / allowed.max(Length::mm(1.0))).with_remedy(remedy))
}

/// Posts nearer than three bearing widths, said once, at the closest pair.
fn holes_close(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Option<Finding> {
    let pairs = layout.posts.windows(2).map(|w| {
        let width = loads::bearing_width(spec, &w[0]).max(loads::bearing_width(spec, &w[1]));
        ((w[1].chainage - w[0].chainage) / width, w[0].number, w[1].chainage - w[0].chainage, width)
    });
    let closest = pairs.min_by(|a, b| a.0.total_cmp(&b.0))?;
    let (ratio, number, apart, width) = closest;
    if 3.0 <= ratio {
        return None;
    }
    let says = format!(
        "Posts {number} and {} stand {} apart, {} times the width of {} that presses on the ground; each is counted in full.",
        number + 1,
        case.units.length(apart),
        trim(ratio, 1),
        case.units.length(width)
    );
    let place = Place::on(&case.id, format!("posts {number} and {}", number + 1));
    Some(Finding::new(&findings::HOLES_CLOSE, place, says).with_utilisation(3.0 / ratio.max(1e-3)))
}
