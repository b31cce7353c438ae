//! What is always in sight: the job, undo and redo, the figures that matter, and how many findings there are.

use leptos::prelude::*;

use super::{App, Tab, marks};
use crate::shown::{Figure, figures, severities};

/// The strip at the top.
#[component]
pub fn Strip() -> impl IntoView {
    let app = App::get();
    let name = move || {
        let named = app.shown.with(|s| s.job.as_ref().map(|j| j.about.name.clone())).unwrap_or_default();
        if named.is_empty() { "Job without a name".to_string() } else { named }
    };
    let to_undo = move || app.history.with(|h| h.to_undo().map(String::from));
    let to_redo = move || app.history.with(|h| h.to_redo().map(String::from));
    view! {
        <header class="strip">
            <div class="head">
                <h1 class="job-name" data-test="job-name">{name}</h1>
                <Counts/>
                <button class="btn round" data-test="undo" disabled=move || to_undo().is_none()
                    aria-label=move || to_undo().map_or("Undo: nothing to take back".into(), |u| format!("Undo: {u}"))
                    title=move || to_undo().unwrap_or_default() on:click=move |_| app.undo()>"↶"</button>
                <button class="btn round" data-test="redo" disabled=move || to_redo().is_none()
                    aria-label=move || to_redo().map_or("Redo: nothing to make again".into(), |u| format!("Redo: {u}"))
                    title=move || to_redo().unwrap_or_default() on:click=move |_| app.redo()>"↷"</button>
            </div>
            <Figures/>
        </header>
    }
}

/// How many findings of each weight.
#[component]
fn Counts() -> impl IntoView {
    let app = App::get();
    let counts = Memo::new(move |_| {
        app.plan().map(|p| severities(&p)).map(|s| s.map(|(w, n)| (w, n)).to_vec()).unwrap_or_default()
    });
    let shown = move || {
        counts
            .get()
            .into_iter()
            .filter(|(s, n)| *n > 0 && *s != groundhold_finding::Severity::Note)
            .map(|(s, n)| {
                let words = format!("{n} findings: {}", marks::asks(s));
                view! {
                    <button class="count" aria-label=words data-test=format!("count-{}", s.word())
                        on:click=move |_| { app.only.set(String::new()); app.go(Tab::Findings);  }>
                        <span inner_html=marks::mark(s)></span>{n}
                    </button>
                }
            })
            .collect_view()
    };
    view! { <div class="counts">{shown}</div> }
}

/// The figures; while something moves, each says by how much it has changed.
#[component]
fn Figures() -> impl IntoView {
    let app = App::get();
    let now = Memo::new(move |_| app.plan().map(|p| figures(&p)).unwrap_or_default());
    let was = Memo::new(move |_| app.settled.with(|s| s.plan.as_ref().map(|p| figures(p))).unwrap_or_default());
    let one = move |i: usize| {
        let f = move || now.with(|n| n.get(i).cloned());
        let moved = move || {
            app.dragging
                .get()
                .then(|| f().zip(was.with(|w| w.get(i).cloned())).and_then(|(n, w)| change(&n, &w)))
                .flatten()
        };
        view! {
            <button class="figure" data-test=move || f().map(|x| format!("figure-{}", x.key)) on:click=move |_| open(app, f())>
                <span class="what">{move || f().map_or("", |x| x.label)}</span>
                <span class="value">{move || f().map(|x| x.value)}</span>
                <span class="beside" class:moved=move || moved().is_some()>{move || moved().or_else(|| f().map(|x| x.beside))}</span>
            </button>
        }
    };
    view! { <div class="figures">{(0..4).map(one).collect_view()}</div> }
}

/// By how much a figure has changed, in words; `None` where it has not.
fn change(now: &Figure, was: &Figure) -> Option<String> {
    let by = now.number - was.number;
    let sign = if by > 0.0 { "+" } else { "−" };
    let size = by.abs();
    let text = match now.key {
        "price" if size >= 0.005 => format!("{sign}{size:.2}"),
        "spoil" if size >= 0.005 => format!("{sign}{size:.2} m³"),
        "held" if size >= 0.0005 => format!("{sign}{:.0} mm", size * 1000.0),
        "days" if size >= 0.05 => format!("{sign}{size:.1}"),
        _ => return None,
    };
    Some(text)
}

fn open(app: App, figure: Option<Figure>) {
    match figure.map(|f| f.key) {
        Some("price") => app.go(Tab::Order),
        Some("spoil") => {
            let traces = app.plan().map(|p| p.dug.streams().iter().flat_map(|s| s.traces.clone()).collect::<Vec<_>>());
            app.workings.set(traces.unwrap_or_default());
        }
        Some("held") => {
            let highest = app.plan().and_then(|p| {
                p.walls
                    .iter()
                    .max_by(|a, b| a.layout.retained.si().total_cmp(&b.layout.retained.si()))
                    .map(|w| w.of.clone())
            });
            app.choose(&highest.unwrap_or_default());
            app.go(Tab::Ground);
        }
        Some("days") => {
            let trace = app.plan().map(|p| vec![p.programme.expected_trace.clone()]);
            app.workings.set(trace.unwrap_or_default());
        }
        _ => {}
    }
}
