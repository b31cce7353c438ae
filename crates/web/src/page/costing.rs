//! Who finds out what remedies cost while the page goes on answering? A second engine in a worker.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{MessageEvent, Worker, WorkerOptions, WorkerType};

use super::App;
use crate::job::pack;
use crate::shown::read_costs;

fn set(o: &js_sys::Object, key: &str, value: &JsValue) {
    // A plain object takes any key.
    let _ = js_sys::Reflect::set(o, &key.into(), value);
}

fn get(o: &JsValue, key: &str) -> JsValue {
    js_sys::Reflect::get(o, &key.into()).unwrap_or(JsValue::UNDEFINED)
}

/// Asks anew whenever the job has settled, and takes the answer if it is still the one asked for.
pub fn keep_costs(app: App) {
    let options = WorkerOptions::new();
    options.set_type(WorkerType::Module);
    let Ok(worker) = Worker::new_with_options("worker.js", &options) else { return };
    let asked = StoredValue::new(0_u32);
    let answered = Closure::<dyn FnMut(MessageEvent)>::new(move |e: MessageEvent| {
        let data = e.data();
        let same = get(&data, "ask").as_f64() == Some(f64::from(asked.get_value()));
        if same {
            app.costs.set(Some(read_costs(&get(&data, "answer").as_string().unwrap_or_default())));
        }
    });
    worker.set_onmessage(Some(answered.as_ref().unchecked_ref()));
    // The worker stays as long as the page.
    answered.forget();
    Effect::new(move |_| {
        let ours =
            app.settled.with(|s| s.plan.as_ref().is_some_and(|p| p.findings.iter().any(|f| !f.remedies.is_empty())));
        let text = app.settled.with(|s| if s.is_current() { pack(&s.files) } else { String::new() });
        app.costs.set(None);
        if !ours || text.is_empty() {
            return;
        }
        asked.update_value(|n| *n += 1);
        let message = js_sys::Object::new();
        set(&message, "ask", &f64::from(asked.get_value()).into());
        set(&message, "pack", &text.into());
        // A worker that is gone costs the prices of remedies, nothing else.
        let _ = worker.post_message(&message);
    });
}
