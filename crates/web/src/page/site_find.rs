//! "It is not so": what was found instead, in as few touches as can be, and what it changes.

use leptos::prelude::*;

use super::App;
use super::form::typed;
use crate::browser;
use crate::job::append;
use crate::shown::{Pace, Shown, money};
use crate::site::{FindEntry, FindKind};
use groundhold_plan::compare;

/// The form.
#[component]
pub fn Find(element: String, back: impl Fn() + Copy + Send + Sync + 'static) -> impl IntoView {
    let app = App::get();
    let kind = if element.contains(" post ") { FindKind::Rock } else { FindKind::Pipe };
    let find = RwSignal::new(FindEntry { kind, element, ..FindEntry::default() });
    let wrong = RwSignal::new(String::new());
    let would = RwSignal::new(Vec::<String>::new());
    let entry = move || {
        app.plan().ok_or("there is no plan".to_string()).and_then(|p| find.get_untracked().entry(&p, &browser::now()))
    };
    let look = move |_| match entry() {
        Ok(e) => {
            wrong.set(String::new());
            would.set(changes(app, &append(&app.files(), &e)));
        }
        Err(why) => wrong.set(why),
    };
    let write = move |_| match entry() {
        Ok(e) => {
            let says = find.with_untracked(|f| format!("found: {} at {}", f.kind.word().to_lowercase(), f.element));
            app.change(says, &append(&app.files(), &e));
            app.say("Written into the record and planned anew.");
            back();
        }
        Err(why) => wrong.set(why),
    };
    let kind_key = move |k: FindKind| {
        view! { <button class="pick" data-test=format!("find-{}", k.word().to_lowercase().replace(' ', "-")) aria-pressed=move || find.with(|f| (f.kind == k).to_string())
        on:click=move |_| find.update(|f| f.kind = k)>{k.word()}</button> }
    };
    let is = move |kinds: &'static [FindKind]| find.with(|f| kinds.contains(&f.kind));
    view! {
        <div class="one" data-test="find">
            <h2>"What is there instead?"</h2>
            <div class="picks">{FindKind::ALL.map(kind_key).into_iter().collect_view()}</div>
            <div class="grid2">
                <Show when=move || !is(&[FindKind::Level, FindKind::Note])>
                    <div class="field"><label>"At"<input autocomplete="off" data-test="find-element" prop:value=move || find.with(|f| f.element.clone()) on:input=move |e| find.update(|f| f.element = typed(&e))/></label></div>
                    <div class="field"><label>"How deep below the ground (with its unit)"<input autocomplete="off" data-test="find-depth" placeholder="450 mm" prop:value=move || find.with(|f| f.depth.clone()) on:input=move |e| find.update(|f| f.depth = typed(&e))/></label></div>
                </Show>
                <Show when=move || is(&[FindKind::Level])>
                    <div class="field"><label>"Point"<input autocomplete="off" data-test="find-point" prop:value=move || find.with(|f| f.point.clone()) on:input=move |e| find.update(|f| f.point = typed(&e))/></label></div>
                    <div class="field"><label>"Its level really is"<input autocomplete="off" data-test="find-level" placeholder="100.95 m" prop:value=move || find.with(|f| f.level.clone()) on:input=move |e| find.update(|f| f.level = typed(&e))/></label></div>
                </Show>
                <div class="field"><label>"In your words"<input autocomplete="off" data-test="find-note" prop:value=move || find.with(|f| f.note.clone()) on:input=move |e| find.update(|f| f.note = typed(&e))/></label></div>
            </div>
            <span class="field"><span class="wrong" role="alert" data-test="find-wrong">{move || wrong.get()}</span></span>
            <ul class="stack" aria-live="polite">{move || would.get().into_iter().map(|w| view! { <li>{w}</li> }).collect_view()}</ul>
            <div class="row">
                <button class="btn big" data-test="find-look" on:click=look>"What would change?"</button>
                <button class="btn big main" data-test="find-write" on:click=write>"Write it down"</button>
                <button class="btn big" on:click=move |_| back()>"Back"</button>
            </div>
        </div>
    }
}

/// What a change of the texts would do, in a few lines.
fn changes(app: App, after: &crate::job::Files) -> Vec<String> {
    let Some(before) = app.plan() else { return vec![] };
    let shown = Shown::of(after, Pace::Whole, None);
    let Some(now) = shown.plan.filter(|_| shown.wrong.is_empty()) else {
        return shown.wrong.iter().map(|w| format!("{}: {}", w.place, w.says)).collect();
    };
    let d = compare(&before, &now);
    let units = now.job.about.units;
    let mut out: Vec<String> = vec![];
    for p in d.posts.iter().take(6) {
        if let (Some(b), Some(a)) = (&p.before, &p.after) {
            out.push(format!(
                "{} post {}: hole {} instead of {}, {} wide",
                p.wall,
                a.number,
                units.length(a.depth),
                units.length(b.depth),
                units.length(a.diameter)
            ));
        }
    }
    if let Some(p) = &d.price {
        out.push(format!("price {} instead of {}", money(&now, p.after), money(&before, p.before)));
    }
    out.extend(d.findings_new.iter().take(4).map(|(_, place, says)| format!("{place}: {says}")));
    if out.is_empty() {
        out.push("Nothing changes in the plan; it is written into the record.".into());
    }
    out
}
