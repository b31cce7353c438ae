//! The sheets: the same PDF as the terminal makes, made in the page by a module of its own in a worker.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{MessageEvent, Worker, WorkerOptions, WorkerType};

use super::App;
use super::take_file::hand_over_bytes;
use crate::browser;

fn get(o: &JsValue, key: &str) -> JsValue {
    js_sys::Reflect::get(o, &key.into()).unwrap_or(JsValue::UNDEFINED)
}

/// The button that makes the set.
#[component]
pub fn Paper() -> impl IntoView {
    let app = App::get();
    let busy = RwSignal::new(false);
    let make = move |_| {
        busy.set(true);
        let options = WorkerOptions::new();
        options.set_type(WorkerType::Module);
        let Ok(worker) = Worker::new_with_options("paper-worker.js", &options) else {
            busy.set(false);
            return app.say_bad("The browser has no worker for the sheets.");
        };
        let own = worker.clone();
        let answered = Closure::<dyn FnMut(MessageEvent)>::new(move |e: MessageEvent| {
            busy.set(false);
            own.terminate();
            match get(&e.data(), "pdf").dyn_into::<js_sys::Uint8Array>() {
                Ok(bytes) => {
                    hand_over_bytes("groundhold-sheets.pdf", "application/pdf", &bytes);
                    app.say("The sheets are made.");
                }
                Err(_) => {
                    let why = get(&e.data(), "error").as_string().unwrap_or_else(|| "no answer".into());
                    app.say_bad(format!("The sheets could not be made: {why}"));
                }
            }
        });
        let failed = Closure::<dyn FnMut()>::new(move || {
            busy.set(false);
            app.say_bad("The module for the sheets could not be loaded. It is fetched when first asked for; without a network it must have been fetched before.");
        });
        worker.set_onmessage(Some(answered.as_ref().unchecked_ref()));
        worker.set_onerror(Some(failed.as_ref().unchecked_ref()));
        answered.forget();
        failed.forget();
        let message = js_sys::Object::new();
        let date: String = browser::now().chars().take(10).collect();
        // A plain object takes any key.
        let all = js_sys::Array::new();
        for (name, text) in app.files().all() {
            all.push(&js_sys::Array::of2(&name.into(), &text.into()));
        }
        let _ = js_sys::Reflect::set(&message, &"files".into(), &all);
        let _ = js_sys::Reflect::set(&message, &"date".into(), &date.into());
        if worker.post_message(&message).is_err() {
            busy.set(false);
        }
    };
    view! {
        <section class="card" aria-label="Sheets">
            <h2>"Sheets"</h2>
            <p class="small soft">"Drawings to scale, schedules, cutting list, set-out, calculation sheets, method and record, as one PDF. Made here; nothing leaves the device."</p>
            <button class="btn main" data-test="make-pdf" disabled=move || busy.get() on:click=make>{move || if busy.get() { "Making the sheets …" } else { "Make the PDF" }}</button>
        </section>
    }
}
