//! A field with its unit: what is wrong with it stands beside it, and what was typed is never lost.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::App;
use crate::entry::{FormField, fields_of, tried};

/// Text of an input an event came from.
pub fn typed(e: &web_sys::Event) -> String {
    let target = e.target();
    let input = target.clone().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok()).map(|i| i.value());
    let select = target.clone().and_then(|t| t.dyn_into::<web_sys::HtmlSelectElement>().ok()).map(|i| i.value());
    let area = target.and_then(|t| t.dyn_into::<web_sys::HtmlTextAreaElement>().ok()).map(|i| i.value());
    input.or(select).or(area).unwrap_or_default()
}

/// The form of an element: all its fields that are typed.
#[component]
pub fn Form(#[prop(into)] element: String, kind: &'static str) -> impl IntoView {
    let app = App::get();
    let fields = app.settled.with_untracked(|s| fields_of(&s.files, kind, &element));
    let each = fields.into_iter().map(|f| view! { <Field element=element.clone() field=f/> }).collect_view();
    view! { <div class="grid2">{each}</div> }
}

#[component]
fn Field(element: String, field: FormField) -> impl IntoView {
    let app = App::get();
    let key = format!("{element} {}", field.path);
    let id = format!("f-{}", key.replace([' ', '.'], "-"));
    let (wrong_id, hint_id) = (format!("{id}-wrong"), format!("{id}-hint"));
    let draft = app.draft(&key);
    let (e1, path) = (element.clone(), field.path);
    // What stands in the job now, kept apart so that a drag or an undo is followed.
    let stands =
        Memo::new(move |_| app.shown.with(|s| crate::job::field_text(&s.files, &e1, path)).unwrap_or_default());
    let text = RwSignal::new(draft.clone().unwrap_or_else(|| field.value.clone()));
    let wrong = RwSignal::new(String::new());
    let current = {
        let field = field.clone();
        move || FormField { value: stands.get_untracked(), ..field.clone() }
    };
    Effect::new({
        let key = key.clone();
        move |_| {
            let now = stands.get();
            if app.draft(&key).is_none() {
                text.set(now);
                wrong.set(String::new());
            }
        }
    });
    let check = {
        let (element, current) = (element.clone(), current.clone());
        move |t: &str| wrong.set(tried(&app.files(), &element, &current(), t).err().unwrap_or_default())
    };
    if let Some(d) = &draft {
        check(d);
    }
    let input = {
        let (key, check) = (key.clone(), check.clone());
        move |e: web_sys::Event| {
            let t = typed(&e);
            app.keep_draft(&key, Some(&t));
            check(&t);
            text.set(t);
        }
    };
    let commit = {
        let (key, element, words) = (key.clone(), element.clone(), field.words);
        let current = current.clone();
        move || {
            let t = text.get_untracked();
            if t == stands.get_untracked() {
                app.keep_draft(&key, None);
                wrong.set(String::new());
                return;
            }
            match tried(&app.files(), &element, &current(), &t) {
                Ok(after) => {
                    app.keep_draft(&key, None);
                    app.change(format!("{element} {words}: {t}"), &after);
                }
                Err(why) => wrong.set(why),
            }
        }
    };
    let describe = format!("{wrong_id} {hint_id}");
    let control = if field.one_of.is_empty() {
        let on_enter = commit.clone();
        view! {
            <input id=id.clone() type="text" autocomplete="off" spellcheck="false" enterkeyhint="done" aria-describedby=describe
                aria-invalid=move || wrong.with(|w| (!w.is_empty()).to_string()) prop:value=move || text.get() data-test=format!("field-{}", key.replace(' ', "-"))
                on:input=input on:change={ let c = commit.clone(); move |_| c() }
                on:keydown=move |e| if e.key() == "Enter" { on_enter() }/>
        }
        .into_any()
    } else {
        let options = field
            .one_of
            .iter()
            .map(|w| view! { <option value=*w selected=move || text.get() == *w>{*w}</option> })
            .collect_view();
        let none = field.value.is_empty().then(|| view! { <option value="" selected=true>"as usual"</option> });
        view! {
            <select id=id.clone() aria-describedby=describe on:change=move |e| { text.set(typed(&e)); commit(); }>{none}{options}</select>
        }
        .into_any()
    };
    view! {
        <div class="field">
            <label for=id>{field.words}</label>
            {control}
            <span class="wrong" id=wrong_id>{move || wrong.get()}</span>
            <span class="hint unseen" id=hint_id>{field.expects.clone()}</span>
        </div>
    }
}
