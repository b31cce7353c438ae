//! How hard is the post that holds most pushed, by each theory, as a drawing and a sheet show it?

use groundhold_earth::Method as Theory;

use super::loads::{self, UNFACTORED};
use crate::{Line, LoadCase, Post, PressurePoint, Push, Verdict, WallCase};

/// Pressures and pushes at the highest place, by both theories, loads and soil as they are.
pub(crate) fn pushes(case: &WallCase, post: &Post, verdict: &mut Verdict) {
    let slope = Line::new(&case.stations).at(post.chainage).slope_behind;
    for state in loads::states(case) {
        for theory in [Theory::Rankine, Theory::Coulomb] {
            let Ok(Some(a)) = loads::active(case, &UNFACTORED, state, theory, post.retained, slope) else { continue };
            if theory == Theory::Rankine && state != LoadCase::Wind {
                let points = a.diagram.iter().map(|o| PressurePoint {
                    depth: o.depth,
                    soil: o.soil,
                    load: o.surcharge,
                    water: o.water,
                });
                verdict.pressures.push((state, points.collect()));
            }
            let Ok(on_post) = loads::on_post(case, &UNFACTORED, state, theory, post) else { continue };
            verdict.pushes.push(Push {
                case: state,
                method: theory.name(),
                horizontal: a.horizontal,
                vertical: a.vertical,
                arm: a.arm,
                head: post.behind,
                foot: post.front,
                on: format!("post {}", post.number),
                chainage: post.chainage,
                force: Some(on_post.force),
                moment: Some(on_post.moment),
                governs: theory == Theory::Rankine,
                trace: a.trace,
            });
        }
    }
}
