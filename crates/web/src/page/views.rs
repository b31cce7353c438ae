//! Elevations and sections beside the plan, to scale and linked: what is touched in one is lit in all.

use std::sync::Arc;
use std::time::Duration;

use groundhold_draw::{Scene, elevation, ramp_section, section, site_section, steps_detail, to_svg};
use groundhold_plan::Plan;
use leptos::prelude::*;

use super::App;
use crate::browser::{attribute_up, light};
use crate::shown::Shown;

/// While a finger drags, the views follow this much later at most.
const LATER: Duration = Duration::from_millis(120);

/// The views of what is chosen; of the whole site where nothing is.
#[component]
pub fn Views() -> impl IntoView {
    let app = App::get();
    let slow = RwSignal::new(app.shown.get_untracked());
    let waiting = StoredValue::new(false);
    Effect::new(move |_| {
        let now: Arc<Shown> = app.shown.get();
        if !app.dragging.get_untracked() {
            slow.set(now);
        } else if !waiting.get_value() {
            waiting.set_value(true);
            set_timeout(
                move || {
                    waiting.set_value(false);
                    slow.set(app.shown.get_untracked());
                },
                LATER,
            );
        }
    });
    let element = Memo::new(move |_| app.lit.get().split(' ').next().unwrap_or_default().to_string());
    let drawn =
        Memo::new(move |_| slow.with(|s| s.plan.clone()).map(|p| views_of(&p, &element.get())).unwrap_or_default());
    // What is lit stays lit in drawings that are made anew.
    Effect::new(move |_| {
        drawn.track();
        request_animation_frame(move || app.lit.with_untracked(|l| light(l)));
    });
    let touch = move |e: web_sys::MouseEvent| {
        if let Some(element) = attribute_up(e.target(), "data-element") {
            let element = element.split(" post ").count() > 1 || app.plan().is_some_and(|p| p.wall(&element).is_some());
            let name = attribute_up(e.target(), "data-element").filter(|_| element);
            if let Some(name) = name {
                app.choose(&name);
            }
        }
    };
    view! {
        <div class="views" data-test="views" on:click=touch>
            {move || drawn.get().into_iter().map(|(words, svg)| view! {
                <figure class="view" aria-label=words.clone()>
                    <figcaption>{words.clone()}</figcaption>
                    <div class="sheet" tabindex="0" role="region" aria-label=words.clone() inner_html=svg></div>
                </figure>
            }).collect_view()}
        </div>
    }
}

fn views_of(plan: &Plan, element: &str) -> Vec<(String, String)> {
    let svg = |words: String, s: Scene| {
        let words = if s.scale.is_empty() { words } else { format!("{words}, {}", s.scale) };
        (words, to_svg(&s))
    };
    if let Some(w) = plan.walls.iter().find(|w| w.id == element) {
        let wide = (w.layout.length.to_m() * 1000.0 / 50.0 + 60.0).clamp(150.0, 420.0);
        return vec![
            svg(format!("Elevation of {}", w.id), elevation(plan, &w.id, wide, 92.0)),
            svg(format!("Section of {}", w.id), section(plan, &w.id, 150.0, 120.0)),
        ];
    }
    if plan.shaped.flights.iter().any(|f| f.id == element) {
        return vec![svg(format!("Steps {element}"), steps_detail(plan, element, 150.0, 105.0))];
    }
    if plan.shaped.ramps.iter().any(|r| r.id == element) {
        return vec![svg(format!("Ramp {element}"), ramp_section(plan, element, 200.0, 80.0))];
    }
    vec![svg("Section through the site".into(), site_section(plan, 140.0, 58.0))]
}
