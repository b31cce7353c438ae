//! Levels and points: a level book that reduces while one types, with one thumb; points by tapping, offset or tape.

use groundhold_plan::job::Job;
use leptos::prelude::*;

use super::App;
use super::form::{Form, typed};
use super::points::Points;
use crate::entry::{Book, Kind, Reckoned};

/// What is beside the drawing under "Measure".
#[component]
pub fn Measure() -> impl IntoView {
    let app = App::get();
    let quick = move || app.shown.with(|s| s.job.as_ref().is_some_and(|j| j.measure.quick.is_some()));
    view! {
        <div class="stack" data-test="measure">
            <h2>"Measure"</h2>
            <Show when=quick><p class="small">"This ground is a slope in two numbers. A level book and points take its place as soon as they are there."</p></Show>
            <LevelBook/>
            <Points/>
            <details class="card"><summary><strong>"Soil, told by hand"</strong></summary><Form element="ground" kind="ground"/></details>
        </div>
    }
}

fn job_now(app: App) -> Option<std::sync::Arc<Job>> {
    app.settled.with_untracked(|s| s.job.clone())
}

/// The level book with its keys.
#[component]
fn LevelBook() -> impl IntoView {
    let app = App::get();
    let book = Memo::new(move |_| app.shown.with(|s| Book::of(&s.files)));
    let reckoned = Memo::new(move |_| app.shown.with(|s| book.with(|b| b.reckon(s.job.as_deref()))));
    let first = app.draft("book station").unwrap_or_default();
    let station = RwSignal::new(first);
    let reading = RwSignal::new(app.draft("book reading").unwrap_or_default());
    let kind = RwSignal::new(book.with_untracked(Book::next_kind));
    let wrong = RwSignal::new(String::new());
    // The latest rows are those in sight.
    let pages = NodeRef::<leptos::html::Div>::new();
    Effect::new(move |_| {
        book.track();
        if let Some(div) = pages.get() {
            request_animation_frame(move || div.set_scroll_top(div.scroll_height()));
        }
    });
    let put = move |t: String| {
        app.keep_draft("book reading", Some(&t));
        wrong.set(String::new());
        reading.set(t);
    };
    let gives = move || {
        let mut b = book.get();
        b.read(&named(station), kind.get(), &reading.get(), "").ok()?;
        let r = app.shown.with(|s| b.reckon(s.job.as_deref()));
        let last = r.levels.iter().rev().flatten().next().copied()?;
        Some(app.shown.with(|s| s.job.as_ref().map(|j| j.about.units.level(last))).unwrap_or_default())
    };
    let enter = move |()| {
        let mut b = book.get_untracked();
        let result = b.read(&station.get_untracked(), kind.get_untracked(), &reading.get_untracked(), "");
        match result.and_then(|()| b.put_in(&app.files())) {
            Ok(after) => {
                let name = station.get_untracked();
                app.keep_draft("book reading", None);
                app.keep_draft("book station", None);
                reading.set(String::new());
                app.change(format!("{name} read {}", kind.get_untracked().word().to_lowercase()), &after);
                kind.set(b.next_kind());
                let turned = b.next_kind() == Kind::Back;
                station.set(if turned { name } else { next(&name) });
            }
            Err(why) => wrong.set(why),
        }
    };
    let key = move |k: &'static str| {
        view! {
            <button type="button" aria-label=if k == "⌫" { "delete" } else { k } on:click=move |_| {
                let mut t = reading.get_untracked();
                if k == "⌫" { t.pop(); } else { t.push_str(k); }
                put(t);
            }>{k}</button>
        }
    };
    let kind_key = move |k: Kind| {
        view! { <button type="button" class="kind" aria-pressed=move || (kind.get() == k).to_string() on:click=move |_| kind.set(k)>{k.word()}</button> }
    };
    view! {
        <section class="stack" aria-label="Level book" data-test="level-book">
            <div class="book" node_ref=pages tabindex="0" role="region" aria-label="Rows of the level book">{move || table(app, &book.get(), &reckoned.get())}</div>
            {move || reckoned.with(|r| r.misclose).map(|(m, a, fine)| {
                let word = if fine { "within" } else { "beyond" };
                view! { <p class="small">{format!("Closes with {:.1} mm, {word} the {:.1} mm allowed.", m.to_mm(), a.to_mm())}</p> }
            })}
            <div class="grid2">
                <div class="field"><label for="book-station">"Staff on"</label>
                    <input id="book-station" autocomplete="off" data-test="book-station" prop:value=move || station.get() placeholder="name of the point"
                        on:input=move |e| { let t = typed(&e); app.keep_draft("book station", Some(&t)); station.set(t); }/>
                    <span class="wrong"></span></div>
                <div class="field"><label for="book-reading">"Reading (m, or with unit)"</label>
                    <input id="book-reading" inputmode="decimal" autocomplete="off" enterkeyhint="next" data-test="book-reading" prop:value=move || reading.get()
                        aria-invalid=move || (!wrong.get().is_empty()).to_string() aria-describedby="book-wrong"
                        on:input=move |e| put(typed(&e)) on:keydown=move |e| if e.key() == "Enter" { enter(()) }/>
                    <span class="wrong" id="book-wrong" role="alert">{move || wrong.get()}</span></div>
            </div>
            <p class="reading" aria-live="polite"><span>{move || kind.get().word()}" "{move || reading.get()}</span>
                <span class="gives">{move || gives().map(|g| format!("▽ {g}")).unwrap_or_default()}</span></p>
            <div class="keys" role="group" aria-label="Keys">
                {key("7")}{key("8")}{key("9")}{kind_key(Kind::Back)}
                {key("4")}{key("5")}{key("6")}{kind_key(Kind::Between)}
                {key("1")}{key("2")}{key("3")}{kind_key(Kind::Fore)}
                {key(".")}{key("0")}{key("⌫")}
                <button type="button" class="deed" data-test="book-enter" on:click=move |_| enter(())>"Book it"</button>
            </div>
        </section>
    }
}

/// The station as typed; a question mark while it is empty, so that the level is shown all the same.
fn named(station: RwSignal<String>) -> String {
    let t = station.get();
    if t.trim().is_empty() { "?".into() } else { t }
}

/// The name after this one: the next number, or the same with a number after it.
fn next(name: &str) -> String {
    let digits = name.len() - name.chars().rev().take_while(char::is_ascii_digit).count();
    let (head, tail) = name.split_at(digits);
    match tail.parse::<u64>() {
        Ok(n) => format!("{head}{}", n + 1),
        Err(_) => String::new(),
    }
}

fn table(app: App, book: &Book, r: &Reckoned) -> impl IntoView + use<> {
    let n = book.rows.rows.len();
    let cell = |i: usize, column: &'static str| {
        let value = book.rows.cell(i, column).to_string();
        let name = book.rows.cell(i, "station").to_string();
        let label = format!("{column} of {name}");
        let change = move |e: web_sys::Event| {
            let t = typed(&e);
            let mut b = Book::of(&app.files());
            b.rows.set(i, column, t.trim());
            let job = job_now(app);
            match b.put_in(&app.files()) {
                Ok(after) => {
                    let bad = b.reckon(job.as_deref()).wrong.iter().find(|w| w.0 == Some(i)).map(|w| w.1.clone());
                    app.change(format!("level book, {name}: {t}"), &after);
                    if let Some(bad) = bad {
                        app.say_bad(bad);
                    }
                }
                Err(why) => app.say_bad(why),
            }
        };
        view! { <td><input aria-label=label value=value autocomplete="off" on:change=change/></td> }
    };
    let rows = (0..n)
        .map(|i| {
            let level = r.levels.get(i).copied().flatten().map(|l| format!("{:.3}", l.to_m())).unwrap_or_default();
            let wrong = r.wrong.iter().find(|w| w.0 == Some(i)).map(|w| w.1.clone());
            let now = i + 1 == n;
            view! {
                <tr class:now=now>{cell(i, "station")}{cell(i, "backsight")}{cell(i, "intermediate")}{cell(i, "foresight")}<td class="level">{level}</td></tr>
                {wrong.map(|w| view! { <tr><td colspan="5" class="wrong-one">{w}</td></tr> })}
            }
        })
        .collect_view();
    let whole = r
        .wrong
        .iter()
        .filter(|w| w.0.is_none() && n > 0)
        .map(|w| view! { <tr><td colspan="5" class="wrong-one">{w.1.clone()}</td></tr> })
        .collect_view();
    view! {
        <table>
            <thead><tr><th>"Staff on"</th><th>"Back"</th><th>"Between"</th><th>"Fore"</th><th>"Level"</th></tr></thead>
            <tbody>{whole}{rows}</tbody>
        </table>
    }
}
