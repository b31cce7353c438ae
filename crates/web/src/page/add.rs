//! New things: a pad, a wall, steps, a ramp, a service, a tree, put in the middle of what is in sight.

use groundhold_plan::job::Job;
use groundhold_quantity::{Length, Point};
use leptos::prelude::*;

use super::App;
use crate::job::{add_element, level_text, metres};

/// Buttons for new things.
#[component]
pub fn Add() -> impl IntoView {
    let app = App::get();
    let one = move |what: &'static str, words: &'static str| {
        view! { <button class="btn" data-test=format!("add-{what}") on:click=move |_| add(app, what)>"+ "{words}</button> }
    };
    view! {
        <h3>"Add"</h3>
        <div class="row">
            {one("pad", "Pad")}{one("wall", "Wall")}{one("steps", "Steps")}{one("ramp", "Ramp")}{one("service", "Service")}{one("tree", "Tree")}{one("boundary", "Boundary")}
        </div>
    }
}

fn free(job: &Job, letter: &str) -> String {
    let ids = job.ids();
    (1..).map(|n| format!("{letter}{n}")).find(|id| !ids.contains(&id.as_str())).unwrap_or_default()
}

fn pair(p: Point) -> String {
    format!("[\"{}\", \"{}\"]", metres(Length::m(p.x)), metres(Length::m(p.y)))
}

fn add(app: App, what: &str) {
    let shown = app.settled.get_untracked();
    let Some(job) = &shown.job else { return app.say_bad("The job cannot be read yet.") };
    let c = app.window.with_untracked(|w| w.centre);
    let c = Point::m((c.x * 10.0).round() / 10.0, (c.y * 10.0).round() / 10.0);
    let at = |x: f64, y: f64| pair(Point::m(c.x + x, c.y + y));
    let pad = job.pads.first().map(|p| p.id.clone());
    let level = shown.plan.as_ref().and_then(|p| p.shaped.level_at(&p.survey.ground, c));
    let made = match (what, pad) {
        ("pad", _) => {
            let id = free(job, "P");
            let level = level.map_or("100.000 m".to_string(), level_text);
            let ring = [at(-1.5, -1.0), at(1.5, -1.0), at(1.5, 1.0), at(-1.5, 1.0)].join(", ");
            (
                id.clone(),
                format!("[[pad]]\nid = \"{id}\"\ncorners = [{ring}]\nlevel = \"{level}\"\napron = \"0.3 m\"\n"),
            )
        }
        ("wall", _) => {
            let id = free(job, "W");
            (
                id.clone(),
                format!(
                    "[[wall]]\nid = \"{id}\"\nsystem = \"timber-post-and-board\"\nline = [{}, {}]\nends = [\"at\", \"at\"]\nretains = \"left\"\ntop = {{ follow = \"ground\", above = \"50 mm\" }}\n\n[wall.spec]\npost = \"125x125 UC4 C24\"\nboard = \"200x50 UC4 C24\"\nspacing = \"1.2 m\"\n",
                    at(-1.8, 0.0),
                    at(1.8, 0.0)
                ),
            )
        }
        ("steps", Some(pad)) => {
            let id = free(job, "S");
            (
                id.clone(),
                format!("[[steps]]\nid = \"{id}\"\nfrom = {}\nto = \"{pad}\"\nwidth = \"0.9 m\"\n", at(0.0, -2.0)),
            )
        }
        ("ramp", Some(pad)) => {
            let id = free(job, "R");
            (
                id.clone(),
                format!(
                    "[[ramp]]\nid = \"{id}\"\npath = [{}, {}]\nto = \"{pad}\"\nwidth = \"1.0 m\"\nsteepest = \"1:8\"\n",
                    at(3.0, -3.0),
                    at(0.0, 0.0)
                ),
            )
        }
        ("steps" | "ramp", None) => return app.say_bad("Steps and ramps lead to a pad: add a pad first."),
        ("service", _) => {
            let id = free(job, "N");
            (
                id.clone(),
                format!(
                    "[[near]]\nid = \"{id}\"\nkind = \"water main\"\nline = [{}, {}]\ndepth = \"0.75 m\"\nclear = \"1.0 m\"\nsource = \"not yet asked\"\n",
                    at(-3.0, 0.0),
                    at(3.0, 0.0)
                ),
            )
        }
        ("boundary", _) => {
            let id = free(job, "N");
            (
                id.clone(),
                format!("[[near]]\nid = \"{id}\"\nkind = \"boundary\"\nline = [{}, {}]\n", at(0.0, -3.0), at(0.0, 3.0)),
            )
        }
        _ => {
            let id = free(job, "N");
            (
                id.clone(),
                format!("[[near]]\nid = \"{id}\"\nkind = \"tree\"\nat = {}\ntrunk = \"200 mm\"\n", at(0.0, 0.0)),
            )
        }
    };
    match add_element(&app.files(), &made.1) {
        Ok(after) => {
            app.change(format!("{} added", made.0), &after);
            app.choose(&made.0);
        }
        Err(why) => app.say_bad(why),
    }
}
