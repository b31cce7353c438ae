//! A file that a person hands to the page, and one that the page hands to the person.

use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::JsValue;
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, HtmlInputElement, Url};

use crate::browser::document;

/// Reads the file that was chosen in an input, as text, and empties the input, so that the same file can be chosen again.
pub fn take_text_file(e: &web_sys::Event, then: impl Fn(String, String) + 'static) {
    let input = e.target().and_then(|t| t.dyn_into::<HtmlInputElement>().ok());
    let Some(input) = input else { return };
    let Some(file) = input.files().and_then(|f| f.get(0)) else { return };
    let name = file.name();
    wasm_bindgen_futures::spawn_local(async move {
        let text = wasm_bindgen_futures::JsFuture::from(file.text()).await;
        then(name, text.ok().and_then(|t| t.as_string()).unwrap_or_default());
        input.set_value("");
    });
}

/// Hands a text over as a file.
pub fn hand_over(name: &str, kind: &str, text: &str) -> bool {
    hand_over_parts(name, kind, &js_sys::Array::of1(&text.into()))
}

/// Hands bytes over as a file.
pub fn hand_over_bytes(name: &str, kind: &str, bytes: &js_sys::Uint8Array) -> bool {
    hand_over_parts(name, kind, &js_sys::Array::of1(bytes))
}

fn hand_over_parts(name: &str, kind: &str, parts: &JsValue) -> bool {
    let options = BlobPropertyBag::new();
    options.set_type(kind);
    let made = Blob::new_with_u8_array_sequence_and_options(parts, &options)
        .or_else(|_| Blob::new_with_str_sequence_and_options(parts, &options));
    let Some((blob, document)) = made.ok().zip(document()) else { return false };
    let Ok(url) = Url::create_object_url_with_blob(&blob) else { return false };
    let link = document.create_element("a").ok().and_then(|a| a.dyn_into::<HtmlAnchorElement>().ok());
    let Some(link) = link else { return false };
    link.set_href(&url);
    link.set_download(name);
    link.click();
    // The browser takes the file before the address is given up, a minute later.
    leptos::prelude::set_timeout(
        move || {
            let _ = Url::revoke_object_url(&url);
        },
        std::time::Duration::from_secs(60),
    );
    true
}
