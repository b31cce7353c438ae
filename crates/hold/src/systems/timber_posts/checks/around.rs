//! What near the wall or on it speaks against posts and boards?

use groundhold_earth::Method as Theory;
use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Length, trim};

use super::loads::{self, UNFACTORED};
use crate::stand::Stand;
use crate::systems::timber_posts::TimberPostSpec;
use crate::{Layout, Line, LoadCase, Post, WallCase, findings, nearby};

/// Retained height above which guides for posts and boards stop.
const GUIDE_LIMIT: Length = Length::m(1.0);

/// Everything that follows from the surroundings.
pub(crate) fn findings(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Vec<Finding> {
    let more = |s: &Stand| {
        let slope = Line::new(&case.stations).at(s.chainage).slope_behind;
        let with =
            loads::active(case, &UNFACTORED, LoadCase::Drained, Theory::Rankine, s.retained, slope).ok().flatten()?;
        let added = with.permanent.horizontal + with.variable.horizontal;
        Some((added / with.soil.horizontal, with.trace))
    };
    let mut all = nearby::findings(case, "The posts stand", &Stand::all(layout), more);
    let Some(highest) = layout.posts.iter().reduce(|a, b| if b.retained > a.retained { b } else { a }) else {
        return all;
    };
    all.extend(fence(case, highest));
    all.extend(holes_close(case, spec, layout));
    all.extend(nearby::higher_than_guides(case, layout.retained, GUIDE_LIMIT, "timber posts and boards"));
    all
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
