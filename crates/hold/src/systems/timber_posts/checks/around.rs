//! What near the wall or on it speaks against posts and boards?

use groundhold_earth::Method as Theory;
use groundhold_finding::Finding;
use groundhold_quantity::Length;

use crate::posted::loads::{self, UNFACTORED};
use crate::posted::said;
use crate::stand::Stand;
use crate::systems::timber_posts::TimberPostSpec;
use crate::{Layout, Line, LoadCase, WallCase, nearby};

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
    all.extend(said::fence(case, highest));
    all.extend(said::holes_close(case, &spec.posted(), layout));
    all.extend(nearby::higher_than_guides(case, layout.retained, GUIDE_LIMIT, "timber posts and boards"));
    all
}
