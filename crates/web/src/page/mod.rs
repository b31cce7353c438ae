//! The page itself, built of signals and views.

mod app;
mod board;
mod costing;
mod findings;
mod frame;
mod marks;
mod over;
mod patch;
mod staff;
mod strip;
mod working;

pub use app::{App, Tab, Toast};

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
