//! The thing that is chosen: its figures, its fields, its checks; or, with none chosen, all things and new ones.

use std::sync::Arc;

use groundhold_hold::Check;
use groundhold_plan::{Plan, WallPlan};
use leptos::prelude::*;

use super::form::Form;
use super::views::Views;
use super::{App, Tab, marks};
use crate::entry::kind_of;
use crate::job::remove_element;
use crate::live::grips;
use crate::page::add::Add;

/// What is beside the drawing under "Ground".
#[component]
pub fn Things() -> impl IntoView {
    let app = App::get();
    // The element without the place on it: the form stays while one touches post after post.
    let element = Memo::new(move |_| app.lit.get().split(' ').next().unwrap_or_default().to_string());
    let kind = Memo::new(move |_| {
        let e = element.get();
        let e = run_of(&app, &e);
        app.settled.with(|s| s.job.as_ref().and_then(|j| kind_of(j, &e).map(|k| (e.clone(), k))))
    });
    view! {
        <div class="stack">
            {move || match kind.get() {
                Some((e, k)) => view! { <One element=e kind=k/> }.into_any(),
                None => view! { <All/> }.into_any(),
            }}
        </div>
    }
}

/// The wall of the job that a second run belongs to.
fn run_of(app: &App, element: &str) -> String {
    let of = app.plan().and_then(|p| p.walls.iter().find(|w| w.id == element).map(|w| w.of.clone()));
    of.unwrap_or_else(|| element.to_string())
}

/// All things, to be chosen without a finger on the drawing.
#[component]
fn All() -> impl IntoView {
    let app = App::get();
    let picks = move || {
        let Some(job) = app.shown.with(|s| s.job.clone()) else { return ().into_any() };
        let mut all: Vec<(String, String)> = vec![];
        all.extend(job.pads.iter().map(|e| (e.id.clone(), e.name.clone())));
        all.extend(job.walls.iter().map(|e| (e.id.clone(), e.name.clone())));
        all.extend(job.flights.iter().map(|e| (e.id.clone(), "steps".into())));
        all.extend(job.ramps.iter().map(|e| (e.id.clone(), "ramp".into())));
        all.extend(job.near.iter().map(|e| (e.id.clone(), String::new())));
        all.push(("ground".into(), "soil".into()));
        all.push(("drain".into(), "water".into()));
        all.into_iter()
            .map(|(id, name)| {
                let words = format!("{id} {name}");
                let to = id.clone();
                view! { <button class="pick" data-test=format!("pick-{id}") on:click=move |_| app.choose(&to)>{words}</button> }
            })
            .collect_view()
            .into_any()
    };
    view! {
        <h2>"What is on this ground"</h2>
        <div class="picks">{picks}</div>
        <Add/>
        <h3>"Dragged points keep to"</h3>
        <div class="picks">{[(0.01, "1 cm"), (0.05, "5 cm"), (0.1, "10 cm"), (0.0, "nothing")].map(|(step, words)| view! {
            <button class="pick" aria-pressed=move || (app.snap.get() == step).to_string() on:click=move |_| app.snap.set(step)>{words}</button>
        }).into_iter().collect_view()}</div>
        <Views/>
    }
}

/// One thing.
#[component]
fn One(element: String, kind: &'static str) -> impl IntoView {
    let app = App::get();
    let (e1, e2, e3, e4) = (element.clone(), element.clone(), element.clone(), element.clone());
    let title = move || app.plan().map_or(e1.clone(), |p| title_of(&p, &e1));
    let facts = move || app.plan().map(|p| facts_of(&p, &e2)).unwrap_or_default();
    let findings = move || {
        let found = app
            .plan()
            .map(|p| p.findings.iter().filter(|f| f.place.element == e3).map(|f| f.severity).collect::<Vec<_>>())
            .unwrap_or_default();
        let gravest = found.iter().max().copied()?;
        let e = e3.clone();
        Some(view! {
            <button class="btn" data-test="findings-of" on:click=move |_| { app.only.set(e.clone()); app.go(Tab::Findings); }>
                <span inner_html=marks::mark(gravest)></span>{found.len()}" findings"
            </button>
        })
    };
    let remove = move |_| match remove_element(&app.files(), &e4) {
        Ok(after) => {
            app.choose("");
            app.change(format!("{e4} taken away"), &after);
            app.say(format!("{e4} was taken away. Undo brings it back."));
        }
        Err(why) => app.say_bad(why),
    };
    let removable = !matches!(kind, "drain" | "ground" | "job");
    let wall = element.clone();
    let corners = element.clone();
    view! {
        <section class="stack" aria-label="The thing chosen" data-test="thing">
            <div class="row apart">
                <h2>{title}</h2>
                <button class="btn plain" data-test="all-things" on:click=move |_| app.choose("")>"All things"</button>
            </div>
            <dl class="grid2">{move || facts().into_iter().map(|(what, value)| view! { <div><dt class="small soft">{what}</dt><dd><strong>{value}</strong></dd></div> }).collect_view()}</dl>
            <div class="row">{findings}</div>
            <Views/>
            <Form element=element.clone() kind/>
            <Corners element=corners/>
            {(kind == "wall").then(|| view! { <Checks wall/> })}
            {removable.then(|| view! { <div class="row"><button class="btn bad" on:click=remove>"Take it away"</button></div> })}
        </section>
    }
}

fn title_of(plan: &Plan, id: &str) -> String {
    let job = &plan.job;
    let pad = job.pads.iter().find(|e| e.id == id).map(|e| e.name.clone());
    let wall = job.walls.iter().find(|e| e.id == id).map(|e| e.name.clone());
    let word = match id {
        "drain" | "outlet" => return "Water".into(),
        "ground" => return "Ground".into(),
        _ if job.flights.iter().any(|e| e.id == id) => Some("steps".into()),
        _ if job.ramps.iter().any(|e| e.id == id) => Some("ramp".into()),
        _ => None,
    };
    format!("{id} {}", pad.or(wall).or(word).unwrap_or_default())
}

fn facts_of(plan: &Arc<Plan>, id: &str) -> Vec<(&'static str, String)> {
    let units = plan.job.about.units;
    let mut out = vec![];
    for w in plan.walls.iter().filter(|w| w.of == id) {
        out.push(("holds at most", units.length(w.layout.retained)));
        out.push(("shows at most", units.length(w.layout.exposed)));
        out.push(("from underside of posts", units.length(w.layout.total)));
        out.push(("long", units.run(w.layout.length)));
        out.push(("posts", w.layout.posts.len().to_string()));
        let deep = w.layout.posts.iter().map(|p| p.depth);
        if let Some(d) = deep.reduce(groundhold_quantity::Length::max) {
            out.push(("holes deep", units.length(d)));
        }
    }
    for p in plan.shaped.pads.iter().filter(|p| p.id == id) {
        out.push(("level", units.level(p.plane.level_at(p.polygon.centroid()))));
        out.push(("area", units.area(p.area)));
    }
    for f in plan.shaped.flights.iter().filter(|f| f.id == id) {
        out.push(("risers", format!("{} of {}", f.risers, units.length(f.riser))));
        out.push(("going", units.length(f.going)));
        out.push(("rises", units.length(f.rise)));
    }
    for r in plan.shaped.ramps.iter().filter(|r| r.id == id) {
        out.push(("gradient", units.slope(r.gradient)));
        out.push(("rises", units.length(r.rise)));
        out.push(("long", units.run(r.length)));
    }
    for part in plan.quote.parts.iter().filter(|p| p.element == id) {
        out.push(("price with tax", crate::shown::money(plan, part.total)));
    }
    out
}

/// Corners and other points as numbers: the drawing without a finger.
#[component]
fn Corners(element: String) -> impl IntoView {
    let app = App::get();
    let all = move || {
        let job = app.settled.with(|s| s.job.clone());
        let found = job.map(|j| grips(&j, &element)).unwrap_or_default();
        found
            .into_iter()
            .filter(|g| matches!(g.holds, crate::live::Holds::Point(_)) || g.field == "from" || g.field == "at")
            .map(|g| {
                let words = g.words.clone();
                let value = format!("{:.2} m, {:.2} m", g.at.x, g.at.y);
                let label = words.clone();
                let set = move |e: web_sys::Event| {
                    let t = super::form::typed(&e);
                    let to = point(&t);
                    let job = app.settled.with_untracked(|s| s.job.clone());
                    match (to, job) {
                        (Ok(to), Some(job)) => match crate::live::moved(&app.files(), &job, &g, to, 0.0) {
                            Ok(after) => app.change(format!("{words} moved"), &after),
                            Err(why) => app.say_bad(why),
                        },
                        (Err(why), _) => app.say_bad(why),
                        _ => {}
                    }
                };
                view! { <div class="field"><label>{label.clone()}<input type="text" autocomplete="off" value=value on:change=set/></label></div> }
            })
            .collect_view()
    };
    view! { <details><summary>"Corners as numbers (east, north)"</summary><div class="grid2">{all}</div></details> }
}

/// "3.2 m, 4.1 m"; bare numbers are metres.
fn point(t: &str) -> Result<groundhold_quantity::Point, String> {
    let (x, y) = t.split_once([',', ';']).ok_or(format!("found `{t}`, expected east and north: 3.2 m, 4.1 m"))?;
    let one = |s: &str| match s.trim().parse::<f64>() {
        Ok(v) if v.is_finite() => Ok(v),
        _ => groundhold_quantity::parse::<groundhold_quantity::Length>(s).map(|l| l.to_m()).map_err(|e| e.to_string()),
    };
    Ok(groundhold_quantity::Point::m(one(x)?, one(y)?))
}

/// The checks that decide over a wall, the hardest pressed first; each opens its working.
#[component]
fn Checks(wall: String) -> impl IntoView {
    let app = App::get();
    let rows = move || {
        let plan = app.plan();
        let walls: Vec<WallPlan> = plan.iter().flat_map(|p| p.walls.iter().filter(|w| w.of == wall).cloned()).collect();
        walls.iter().flat_map(worst).map(|c| check_row(app, c)).collect_view()
    };
    view! {
        <details class="card" open>
            <summary><strong>"Checks: demand over capacity"</strong></summary>
            <p class="small soft">"Above 1 asks more than is there. Touch one for its working and source."</p>
            <div class="remedies">{rows}</div>
        </details>
    }
}

fn worst(w: &WallPlan) -> Vec<Check> {
    let mut kinds: Vec<_> = w.verdict.checks.iter().filter(|c| c.governs).map(|c| c.kind).collect();
    kinds.sort_unstable();
    kinds.dedup();
    let mut all: Vec<Check> = kinds.into_iter().filter_map(|k| w.verdict.worst(k).cloned()).collect();
    all.sort_by(|a, b| b.utilisation.total_cmp(&a.utilisation));
    all
}

fn check_row(app: App, c: Check) -> impl IntoView {
    let u = c.utilisation;
    let share = (u * 50.0).clamp(0.0, 100.0);
    let class = if u > 1.0 { "sev-stop" } else { "sev-note" };
    let words = format!(
        "{}, {}{}",
        c.kind.words(),
        c.case.words(),
        if c.on.is_empty() { String::new() } else { format!(", {}", c.on) }
    );
    let figure = if u.is_finite() { groundhold_quantity::trim(u, 2) } else { "∞".into() };
    let traces = c.traces.clone();
    view! {
        <button class="btn remedy" data-test="check" on:click=move |_| app.workings.set(traces.clone())>
            <span class="stack"><span>{words}</span>
                <span class="util"><svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true"><rect width=share.to_string() height="8" class=class/><path d="M50 0V8" stroke="currentColor"/></svg></span>
            </span>
            <span class="cost">{figure}</span>
        </button>
    }
}
