//! The page itself, built of signals and views.

mod add;
mod app;
mod board;
mod compared;
mod costing;
mod findings;
mod form;
mod frame;
mod jobs;
mod keeping;
mod marks;
mod measure;
mod order;
mod over;
mod paper;
mod patch;
mod points;
mod probe;
mod relief;
mod served;
mod site;
mod site_find;
mod staff;
mod strip;
mod take_file;
mod things;
mod views;
mod working;

pub use app::{App, Tab};

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::wasm_bindgen;

/// Begins the page inside an element.
#[wasm_bindgen]
pub fn begin(inside: web_sys::Element) {
    let Ok(inside) = inside.dyn_into::<web_sys::HtmlElement>() else { return };
    leptos::mount::mount_to(inside, || view! { <frame::Frame/> }).forget();
}

/// What each remedy of a job costs, for the worker: one line `finding remedy cents proven` each; the job comes packed.
#[wasm_bindgen]
pub fn cost_of_remedies(pack: &str) -> String {
    crate::shown::costs(pack)
}
