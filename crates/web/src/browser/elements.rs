//! Elements of the page: where they are, what they belong to, which of them are lit.

use wasm_bindgen::JsCast;
use web_sys::{Document, Element, EventTarget, Window};

/// The window. `None` only in a worker.
pub fn window() -> Option<Window> {
    web_sys::window()
}

/// The document. `None` only in a worker.
pub fn document() -> Option<Document> {
    window().and_then(|w| w.document())
}

/// An attribute of the element an event came from, or of the nearest one around it that has it.
pub fn attribute_up(target: Option<EventTarget>, name: &str) -> Option<String> {
    let element: Element = target?.dyn_into().ok()?;
    element.closest(&format!("[{name}]")).ok().flatten()?.get_attribute(name)
}

/// Left, top, width and height of an element in pixels of the screen.
pub fn rect_of(element: &Element) -> (f64, f64, f64, f64) {
    let r = element.get_bounding_client_rect();
    (r.left(), r.top(), r.width(), r.height())
}

/// A text inside the quotes of a selector.
pub fn selector_text(t: &str) -> String {
    t.replace('\\', "\\\\").replace('"', "\\\"")
}

/// Lights everything in the page that belongs to an element, and nothing else.
pub fn light(element: &str) {
    let Some(document) = document() else { return };
    let each = |selector: &str, on: bool| {
        let Ok(found) = document.query_selector_all(selector) else { return };
        for i in 0..found.length() {
            if let Some(e) = found.get(i).and_then(|n| n.dyn_into::<Element>().ok()) {
                let list = e.class_list();
                // A class without blanks is never refused.
                let _ = if on { list.add_1("lit") } else { list.remove_1("lit") };
            }
        }
    };
    each(".lit[data-element]", false);
    if !element.is_empty() {
        each(&format!("[data-element=\"{}\"]", selector_text(element)), true);
    }
}

/// A number from an attribute.
pub fn number_of(text: Option<String>) -> Option<usize> {
    text.and_then(|t| t.parse().ok())
}
