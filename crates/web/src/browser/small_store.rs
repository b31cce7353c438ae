//! Small texts that must be kept at every keystroke, before the next one: the browser's local storage.

use super::window;

/// What is kept under a name.
pub fn kept(name: &str) -> Option<String> {
    let store = window()?.local_storage().ok().flatten()?;
    store.get_item(&format!("groundhold {name}")).ok().flatten()
}

/// Keeps a text under a name, or takes it out. False where the browser refuses.
pub fn keep(name: &str, text: Option<&str>) -> bool {
    let Some(store) = window().and_then(|w| w.local_storage().ok().flatten()) else { return false };
    let name = format!("groundhold {name}");
    match text {
        Some(t) => store.set_item(&name, t).is_ok(),
        None => store.remove_item(&name).is_ok(),
    }
}
