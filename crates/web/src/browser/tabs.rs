//! One job, one tab that writes: a lock held as long as the job is open, and word to the other tabs after each entry.

use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{BroadcastChannel, MessageEvent};

use super::window;

const CHANNEL: &str = "groundhold";

fn get(o: &JsValue, key: &str) -> JsValue {
    js_sys::Reflect::get(o, &key.into()).unwrap_or(JsValue::UNDEFINED)
}

/// A lock that is held, or asked for.
pub struct Held {
    free: js_sys::Function,
}

impl Held {
    /// Lets it go.
    pub fn free(&self) {
        // The function takes nothing and gives nothing.
        let _ = self.free.call0(&JsValue::NULL);
    }
}

/// Asks for the lock of a job. `answer(true)` when it is held, `answer(false)` when another tab has it, now or later
/// because that tab took it over. A browser without locks answers true: there is nothing better to go by.
pub fn lock(job: &str, take_over: bool, answer: impl Fn(bool) + Clone + 'static) -> Option<Held> {
    let navigator: JsValue = window()?.navigator().into();
    let locks = get(&navigator, "locks");
    let Ok(request) = get(&locks, "request").dyn_into::<js_sys::Function>() else {
        answer(true);
        return None;
    };
    let mut free = None;
    let holding = js_sys::Promise::new(&mut |resolve, _| free = Some(resolve));
    let options = js_sys::Object::new();
    let key = if take_over { "steal" } else { "ifAvailable" };
    // A plain object takes any key.
    let _ = js_sys::Reflect::set(&options, &key.into(), &JsValue::TRUE);
    let told = answer.clone();
    let granted = Closure::once_into_js(move |lock: JsValue| -> JsValue {
        let held = !lock.is_null() && !lock.is_undefined();
        told(held);
        if held { holding.into() } else { JsValue::UNDEFINED }
    });
    let name: JsValue = format!("groundhold {job}").into();
    let asked =
        request.call3(&locks, &name, &options, &granted).ok().and_then(|p| p.dyn_into::<js_sys::Promise>().ok());
    if let Some(promise) = asked {
        wasm_bindgen_futures::spawn_local(async move {
            // Refused when another tab takes the lock over.
            if wasm_bindgen_futures::JsFuture::from(promise).await.is_err() {
                answer(false);
            }
        });
    }
    free.map(|free| Held { free })
}

/// Word between tabs.
#[derive(Clone)]
pub struct Word(Option<BroadcastChannel>);

impl Word {
    /// Listens: `heard` is given the id of the job that was written to.
    pub fn new(heard: impl Fn(String) + 'static) -> Word {
        let channel = BroadcastChannel::new(CHANNEL).ok();
        if let Some(c) = &channel {
            let f = Closure::<dyn FnMut(MessageEvent)>::new(move |e: MessageEvent| {
                if let Some(job) = e.data().as_string() {
                    heard(job);
                }
            });
            c.set_onmessage(Some(f.as_ref().unchecked_ref()));
            // The page listens as long as it is open.
            f.forget();
        }
        Word(channel)
    }
    /// Says that a job was written to.
    pub fn say(&self, job: &str) {
        if let Some(c) = &self.0 {
            // Other tabs read it later from the storage.
            let _ = c.post_message(&job.into());
        }
    }
}
