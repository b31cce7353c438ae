//! Which drawings does a plan have, and by which names are they asked for?

use groundhold_plan::Plan;

use crate::Scene;

/// Every drawing of a plan with its name: `plan`, `elevation-W1`, `section-W1`, `steps-S1`, `ramp-R1`, `site-section`,
/// `cutting` (with `-2`, `-3` for further sheets), `programme`.
pub fn drawings(plan: &Plan) -> Vec<(String, Scene)> {
    let _ = plan;
    vec![]
}

/// The site seen from above, to scale, within a frame in millimetres of paper.
pub fn plan_view(plan: &Plan, width: f64, height: f64) -> Scene {
    let _ = plan;
    Scene::new(width, height, "Plan")
}

/// A wall seen from the front, developed along its chainage; an empty sheet for an unknown wall.
pub fn elevation(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    let _ = (plan, wall);
    Scene::new(width, height, "Elevation")
}

/// The governing cross-section of a wall with what presses on it; an empty sheet for an unknown wall.
pub fn section(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    let _ = (plan, wall);
    Scene::new(width, height, "Section")
}

/// A flight of steps cut along its middle; an empty sheet for an unknown flight.
pub fn steps_detail(plan: &Plan, flight: &str, width: f64, height: f64) -> Scene {
    let _ = (plan, flight);
    Scene::new(width, height, "Steps")
}

/// A ramp cut along its middle; an empty sheet for an unknown ramp.
pub fn ramp_section(plan: &Plan, ramp: &str, width: f64, height: f64) -> Scene {
    let _ = (plan, ramp);
    Scene::new(width, height, "Ramp")
}

/// The cutting lists as bars, on as many sheets as they need.
pub fn cutting_bars(plan: &Plan, width: f64, height: f64) -> Vec<Scene> {
    let _ = plan;
    vec![Scene::new(width, height, "Cutting list")]
}

/// The order of work as bars, with the dependencies that decide and the hold points.
pub fn programme_bars(plan: &Plan, width: f64, height: f64) -> Scene {
    let _ = plan;
    Scene::new(width, height, "Order of work")
}

/// Existing and finished ground along a line up the slope, with cut and fill told apart.
pub fn site_section(plan: &Plan, width: f64, height: f64) -> Scene {
    let _ = plan;
    Scene::new(width, height, "Site section")
}

/// Plan and section together, for the first page.
pub fn picture(plan: &Plan) -> Scene {
    let _ = plan;
    Scene::new(320.0, 213.0, "Groundhold")
}
