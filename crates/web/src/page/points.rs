//! Points: tapped on the drawing, by offset from the base line, by tape from two pegs, or from a file.

use leptos::prelude::*;

use super::App;
use super::form::typed;
use super::take_file::take_text_file;
use crate::entry::{PointEntry, next_name};

/// The form of a point.
#[component]
pub fn Points() -> impl IntoView {
    let app = App::get();
    let entry = RwSignal::new(PointEntry::default());
    let wrong = RwSignal::new(String::new());
    let pegs = move || {
        app.shown
            .with(|s| s.job.as_ref().map(|j| j.measure.pegs.iter().map(|p| p.id.clone()).collect::<Vec<_>>()))
            .unwrap_or_default()
    };
    // A tap on the drawing fills in where it is.
    Effect::new(move |_| {
        let Some(at) = app.tapped.get() else { return };
        let Some(job) = app.settled.with_untracked(|s| s.job.clone()) else { return };
        let level = entry.with_untracked(|e| e.level.clone());
        let name = entry.with_untracked(|e| e.name.clone());
        let name = if name.is_empty() { next_name(&job) } else { name };
        entry.set(PointEntry { level, ..PointEntry::tapped(&job, at, name) });
    });
    let put = move |_| {
        let Some(job) = app.settled.with_untracked(|s| s.job.clone()) else { return };
        let e = entry.get_untracked();
        match e.put_in(&app.files(), &job) {
            Ok(after) => {
                wrong.set(String::new());
                app.change(format!("point {} put in", e.name), &after);
                app.say(format!("Point {} is in.", e.name));
                entry.set(PointEntry::default());
                app.tapped.set(None);
            }
            Err(why) => wrong.set(why),
        }
    };
    let field = move |label: &'static str,
                      test: &'static str,
                      get: fn(&PointEntry) -> String,
                      set: fn(&mut PointEntry, String)| {
        view! {
            <div class="field"><label>{label}
                <input autocomplete="off" data-test=test prop:value=move || entry.with(get) on:input=move |e| entry.update(|p| set(p, typed(&e)))/></label></div>
        }
    };
    let ties = move || {
        pegs().into_iter().map(|peg| {
            let (p1, p2) = (peg.clone(), peg.clone());
            let value = move || entry.with(|e| e.ties.iter().find(|t| t.0 == p1).map(|t| t.1.clone())).unwrap_or_default();
            let set = move |e: web_sys::Event| {
                let t = typed(&e);
                entry.update(|x| {
                    x.ties.retain(|y| y.0 != p2);
                    x.ties.push((p2.clone(), t));
                });
            };
            view! { <div class="field"><label>{format!("Tape from {peg}")}<input autocomplete="off" prop:value=value on:input=set/></label></div> }
        }).collect_view()
    };
    let import = move |e: web_sys::Event| take_text_file(&e, move |name, text| import(app, &name, &text));
    view! {
        <section class="card" aria-label="Points" data-test="points">
            <h2>"Points"</h2>
            <div class="row">
                <button class="btn" data-test="tap-point" aria-pressed=move || app.tapping.get().to_string() on:click=move |_| { app.tapping.update(|t| *t = !*t); app.share.set("both"); }>
                    {move || if app.tapping.get() { "Tap the place on the drawing …" } else { "Tap a point" }}</button>
                <label class="btn">"Take in a table (CSV)"<input class="unseen" type="file" accept=".csv,text/csv,text/plain" data-test="import-table" on:change=import/></label>
            </div>
            <div class="grid2">
                {field("Name", "point-name", |p| p.name.clone(), |p, t| p.name = t)}
                {field("Level, if not in the book", "point-level", |p| p.level.clone(), |p, t| p.level = t)}
                {field("Along the base line", "point-along", |p| p.along.clone(), |p, t| p.along = t)}
                {field("Off it (left is +)", "point-off", |p| p.off.clone(), |p, t| p.off = t)}
                {ties}
            </div>
            <span class="field"><span class="wrong" role="alert">{move || wrong.get()}</span></span>
            <button class="btn main" data-test="point-in" on:click=put>"Put the point in"</button>
        </section>
    }
}

/// A table goes where its columns say; the old one is kept by undo.
fn import(app: App, name: &str, text: &str) {
    let head =
        text.trim_start_matches('\u{feff}').lines().find(|l| !l.trim().is_empty() && !l.starts_with('#')).unwrap_or("");
    let has = |c: &str| head.split(',').any(|h| h.trim().trim_matches('"') == c);
    let (field, file) = if has("backsight") {
        ("book", "levels.csv")
    } else if has("east") && has("north") {
        ("spots", "spots.csv")
    } else if has("point") {
        ("positions", "positions.csv")
    } else if has("item") && has("price") {
        ("prices", "prices.csv")
    } else {
        let short: String = head.chars().take(60).collect();
        return app.say_bad(format!("{name}: the first line is `{short}`, expected the columns station, backsight, intermediate, foresight; or point, along, off; or point, east, north, level; or item, unit, price"));
    };
    let section = if field == "prices" { "order" } else { "measure" };
    let before = app.files();
    let file = crate::job::field_text(&before, section, field).filter(|f| !f.is_empty()).unwrap_or_else(|| file.into());
    let after = crate::job::set_field(&before.with(&file, text), section, field, &file);
    match after {
        Ok(after) => {
            let known: Vec<String> = before.read().problems.iter().map(ToString::to_string).collect();
            let fresh = after.read().problems.into_iter().find(|p| !known.contains(&p.to_string()));
            app.change(format!("{name} taken in"), &after);
            match fresh {
                Some(p) => app.say_bad(format!("{name} was taken in, but: {p} — Undo brings the old one back.")),
                None => app.say(format!("{name} was taken in as {file}.")),
            }
        }
        Err(why) => app.say_bad(why),
    }
}
