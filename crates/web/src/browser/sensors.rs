//! The phone's own level, and a screen that stays awake.

use std::cell::{Cell, RefCell};

use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::DeviceOrientationEvent;

use super::{document, window};

thread_local! {
    static LISTENING: Cell<bool> = const { Cell::new(false) };
    static AWAKE: RefCell<Option<JsValue>> = const { RefCell::new(None) };
    static WANTED: Cell<bool> = const { Cell::new(false) };
    static WATCHED: Cell<bool> = const { Cell::new(false) };
}

fn get(o: &JsValue, key: &str) -> JsValue {
    js_sys::Reflect::get(o, &key.into()).unwrap_or(JsValue::UNDEFINED)
}

/// Listens to how the phone lies: degrees it is tipped forwards and sideways. Some phones ask the person first. Once is
/// enough for as long as the page is open.
pub fn listen_to_tilt(tell: impl Fn(f64, f64) + 'static) {
    if LISTENING.replace(true) {
        return;
    }
    let Some(w) = window() else { return };
    let heard = Closure::<dyn FnMut(DeviceOrientationEvent)>::new(move |e: DeviceOrientationEvent| {
        if let (Some(forwards), Some(sideways)) = (e.beta(), e.gamma()) {
            tell(forwards, sideways);
        }
    });
    let ask =
        get(&get(&w.clone().into(), "DeviceOrientationEvent"), "requestPermission").dyn_into::<js_sys::Function>();
    if let Ok(ask) = ask {
        // The answer decides whether events come; none is needed here.
        let _ = ask.call0(&JsValue::NULL);
    }
    // A browser without the event calls nothing.
    let _ = w.add_event_listener_with_callback("deviceorientation", heard.as_ref().unchecked_ref());
    heard.forget();
}

/// Keeps the screen awake until [`let_sleep`], also after the page was out of sight; where the browser cannot, it does
/// nothing.
pub fn stay_awake() {
    WANTED.set(true);
    let first = !WATCHED.replace(true);
    ask_to_stay_awake();
    let Some(d) = document().filter(|_| first) else { return };
    let back = Closure::<dyn FnMut()>::new(|| {
        if WANTED.get() {
            ask_to_stay_awake();
        }
    });
    // A browser without the event calls nothing.
    let _ = d.add_event_listener_with_callback("visibilitychange", back.as_ref().unchecked_ref());
    back.forget();
}

fn ask_to_stay_awake() {
    let Some(w) = window() else { return };
    let navigator: JsValue = w.navigator().into();
    let lock = get(&navigator, "wakeLock");
    let Ok(request) = get(&lock, "request").dyn_into::<js_sys::Function>() else { return };
    if let Some(promise) =
        request.call1(&lock, &"screen".into()).ok().and_then(|p| p.dyn_into::<js_sys::Promise>().ok())
    {
        wasm_bindgen_futures::spawn_local(async move {
            // A refusal, such as on a low battery, leaves the screen as it is.
            if let Ok(held) = wasm_bindgen_futures::JsFuture::from(promise).await {
                AWAKE.set(Some(held));
            }
        });
    }
}

/// Lets the screen sleep again.
pub fn let_sleep() {
    WANTED.set(false);
    let Some(held) = AWAKE.take() else { return };
    if let Ok(release) = get(&held, "release").dyn_into::<js_sys::Function>() {
        // It was let go by the browser already.
        let _ = release.call0(&held);
    }
}

/// Asks the browser not to clear the storage when room gets short.
pub fn ask_to_keep() {
    let Some(w) = window() else { return };
    let navigator: JsValue = w.navigator().into();
    let storage = get(&navigator, "storage");
    if let Ok(persist) = get(&storage, "persist").dyn_into::<js_sys::Function>() {
        // A refusal leaves the storage as it is: kept until room gets short.
        let _ = persist.call0(&storage);
    }
}
