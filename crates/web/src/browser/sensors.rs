//! The phone's own level, and a screen that stays awake.

use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::DeviceOrientationEvent;

use super::window;

fn get(o: &JsValue, key: &str) -> JsValue {
    js_sys::Reflect::get(o, &key.into()).unwrap_or(JsValue::UNDEFINED)
}

/// Listens to how the phone lies: degrees it is tipped forwards and sideways. Some phones ask the person first.
pub fn listen_to_tilt(tell: impl Fn(f64, f64) + 'static) {
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

/// Keeps the screen awake until the page is left or hidden; where the browser cannot, it does nothing.
pub fn stay_awake() {
    let Some(w) = window() else { return };
    let navigator: JsValue = w.navigator().into();
    let lock = get(&navigator, "wakeLock");
    let Ok(request) = get(&lock, "request").dyn_into::<js_sys::Function>() else { return };
    if let Some(promise) =
        request.call1(&lock, &"screen".into()).ok().and_then(|p| p.dyn_into::<js_sys::Promise>().ok())
    {
        wasm_bindgen_futures::spawn_local(async move {
            // A refusal, such as on a low battery, leaves the screen as it is.
            let _ = wasm_bindgen_futures::JsFuture::from(promise).await;
        });
    }
}
