//! What does the engine in the page say of a job, for tests that hold it against the native one.

use wasm_bindgen::prelude::wasm_bindgen;

use crate::job::unpack;

fn planned(pack: &str) -> Option<groundhold_plan::Plan> {
    let job = unpack(pack).ok()?.read().whole().ok()?;
    groundhold_plan::plan(&job).ok()
}

/// The plan of a packed job as JSON; empty where it cannot be planned.
#[wasm_bindgen]
pub fn plan_view(pack: &str) -> String {
    planned(pack).map(|p| groundhold_exchange::plan_json(&p)).unwrap_or_default()
}

/// How many findings the plan of a packed job has; for its time only.
#[wasm_bindgen]
pub fn plan_size(pack: &str) -> usize {
    planned(pack).map_or(0, |p| p.findings.len())
}
