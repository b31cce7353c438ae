//! Does the tool answer the twelve questions of people with sloping gardens, each as a job of its own?
//!
//! Figures were worked out by hand from the question, not by this program; each is met within 5 %, and every flag that
//! the question asks for is a finding with its code. Unless a case says otherwise: 18 kN/m³, 30°, level ground behind.
#![allow(clippy::unwrap_used, missing_docs)]

mod holes_and_water;
mod numbers;
mod old_walls;
mod tiers_and_blocks;
mod timbers;

use groundhold_cases::{assert_has, found, has, job, near, plan, planned, said, work};
use groundhold_finding::{Severity, Whose};
use groundhold_hold::{CheckKind, LoadCase};
use groundhold_plan::{Plan, check};
use groundhold_quantity::Length;

/// Soil of the cases, on ground without turf.
const SAND: &str = "\n[ground]\nsoil = \"medium-sand\"\nmeasured = { unit_weight = \"18 kN/m3\", friction = \"30 deg\", source = \"assumed by the question\" }\n";

/// Sizes without anything left to chance: nothing buried, nothing neglected.
const PLAIN: &str = "spacing = \"1.2 m\"\nboards = \"behind\"\nhole_diameter = \"300 mm\"\nbury = \"0 mm\"\nneglect = \"0 mm\"\ngravel = \"0 mm\"\nstock = [\"2.4 m\"]\n";

/// Level ground at 100 m plus `retained`, a pad cut into it at 100 m, and a wall of this length that holds the cut.
fn bench(head: &str, ground: &str, retained: f64, length: f64, spec: &str, rest: &str) -> String {
    format!(
        "schema = 1\n[job]\n{head}\n[measure]\nslope = {{ fall = \"1 mm\", over = \"6 m\", width = \"{length} m\", foot = \"{} m\" }}\n{ground}
[[pad]]\nid = \"P1\"\nlevel = \"100 m\"\ncorners = [[\"0 m\", \"0 m\"], [\"{length} m\", \"0 m\"], [\"{length} m\", \"3 m\"], [\"0 m\", \"3 m\"]]
[[wall]]\nid = \"W1\"\nline = [[\"0 m\", \"3 m\"], [\"{length} m\", \"3 m\"]]\nends = [\"at\", \"at\"]\nretains = \"left\"\ntop = {{ follow = \"ground\", above = \"0 mm\" }}\n[wall.spec]\n{spec}\n{rest}",
        100.0 + retained
    )
}

/// The same bench with a wall of solid block that stands on the ground in front, without a footing or a buried course.
fn block_bench(head: &str, retained: f64, length: f64, thick: f64, weight: f64, rest: &str) -> String {
    let mm = thick * 1000.0;
    let spec = format!(
        "made = \"block\"\ntop_width = \"{mm} mm\"\nbase_width = \"{mm} mm\"\nfooting = \"0 mm\"\ntoe = \"0 mm\"\nheel = \"0 mm\"\nbury = \"0 mm\"\nweight = \"{weight} kN/m3\"\n"
    );
    bench(head, SAND, retained, length, &spec, rest)
        .replace("retains = \"left\"", "retains = \"left\"\nsystem = \"mass-wall\"")
}

/// The least factor of a check in a state, with the wanted one taken out again.
fn factor_of(p: &Plan, kind: CheckKind, state: LoadCase, wanted: f64) -> f64 {
    let of = p.walls[0].verdict.checks.iter().filter(|c| c.kind == kind && c.case == state);
    of.map(|c| c.capacity / c.demand * wanted).fold(f64::INFINITY, f64::min)
}

/// Cut and fill of an element, without its batters.
fn moved(p: &Plan, element: &str) -> (f64, f64) {
    let m = p.moves.iter().find(|m| m.element == element && m.kind == groundhold_shape::GroundKind::Pad).unwrap();
    (m.volumes.cut.to_m3(), m.volumes.fill.to_m3())
}

/// Says in words what a remedy or a finding says, for a search.
fn texts(p: &Plan, code: &str) -> String {
    let f = found(p, code);
    let remedies = f.iter().flat_map(|f| f.remedies.iter().map(|r| r.says.clone()));
    f.iter().map(|f| f.says.clone()).chain(remedies).collect::<Vec<_>>().join(" ")
}

/// Inches in metres.
fn inch(v: f64) -> f64 {
    Length::inch(v).to_m()
}
