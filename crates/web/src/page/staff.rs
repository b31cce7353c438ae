//! The staff beside the drawing: every level that can be chosen hangs on it like a bead and is slid up and down.

use std::sync::Arc;

use groundhold_quantity::{Length, Level};
use leptos::ev;
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;

use super::App;
use crate::browser::{attribute_up, number_of, rect_of};
use crate::job::Files;
use crate::live::{Bead, beads};

/// Step of a bead that is slid, in metres.
const STEP: f64 = 0.01;

/// From levels to pixels of the staff.
#[derive(Clone, Copy, PartialEq)]
struct Rule {
    low: f64,
    high: f64,
    tall: f64,
}

impl Rule {
    fn y(&self, level: Level) -> f64 {
        (self.high - level.to_m()) / (self.high - self.low) * self.tall
    }
    fn metres(&self, pixels: f64) -> f64 {
        pixels / self.tall * (self.high - self.low)
    }
}

struct Slide {
    bead: Bead,
    from_y: f64,
    files: Files,
    rule: Rule,
    wanted: Option<f64>,
    asked: bool,
}

/// The staff.
#[component]
pub fn Staff() -> impl IntoView {
    let app = App::get();
    let place = NodeRef::<html::Div>::new();
    let size = RwSignal::new((58.0_f64, 300.0_f64));
    watch_size(place, size);
    let held = RwSignal::new(None::<usize>);
    // While a bead is slid the staff itself keeps still.
    let rule = Memo::new(move |old: Option<&Rule>| {
        let (_, tall) = size.get();
        match (old, held.get()) {
            (Some(old), Some(_)) => Rule { tall, ..*old },
            _ => rule_of(app, tall),
        }
    });
    let all = Memo::new(move |_| app.plan().map(|p| BeadList(beads(&p))).unwrap_or_default());
    let slide = StoredValue::new_local(None::<Slide>);
    let svg = move || {
        let rule = rule.get();
        let (wide, _) = size.get();
        all.with(|b| staff_svg(&b.0, &rule, wide, &app.lit.get(), held.get()))
    };
    let down = move |e: ev::PointerEvent| {
        let Some(i) = number_of(attribute_up(e.target(), "data-bead")) else { return };
        let Some(bead) = all.with_untracked(|b| b.0.get(i).cloned()) else { return };
        if let Some(div) = place.get_untracked() {
            let element: &web_sys::Element = div.as_ref();
            // Without capture a drag ends at the edge; no harm otherwise.
            let _ = element.set_pointer_capture(e.pointer_id());
        }
        app.choose(&bead.element);
        held.set(Some(i));
        app.dragging.set(true);
        let start = Slide {
            bead,
            from_y: f64::from(e.client_y()),
            files: app.files(),
            rule: rule.get_untracked(),
            wanted: None,
            asked: false,
        };
        slide.set_value(Some(start));
        e.prevent_default();
    };
    let go = move |e: ev::PointerEvent| {
        let ask = slide.try_update_value(|s| {
            let s = s.as_mut()?;
            s.wanted = Some(f64::from(e.client_y()));
            Some(!std::mem::replace(&mut s.asked, true))
        });
        if ask.flatten() == Some(true) {
            request_animation_frame(move || {
                let after = slide.try_update_value(|s| {
                    let s = s.as_mut()?;
                    s.asked = false;
                    slid(s, s.wanted?)
                });
                if let Some(Some(files)) = after {
                    app.preview(&files);
                }
            });
        }
    };
    let up = move |e: ev::PointerEvent| {
        let Some(s) = slide.try_update_value(Option::take).flatten() else { return };
        held.set(None);
        app.dragging.set(false);
        match s.wanted.and_then(|y| slid(&s, y)) {
            Some(files) if e.type_() == "pointerup" => app.change(format!("{} slid", s.bead.words), &files),
            _ => app.settle(),
        }
    };
    let key = move |e: ev::KeyboardEvent| {
        let Some(i) = number_of(attribute_up(e.target(), "data-bead")) else { return };
        let Some(bead) = all.with_untracked(|b| b.0.get(i).cloned()) else { return };
        let step = if e.shift_key() { 0.1 } else { STEP };
        let by = match e.key().as_str() {
            "ArrowUp" => step,
            "ArrowDown" => -step,
            "Enter" | " " => {
                app.choose(&bead.element);
                return;
            }
            _ => return,
        };
        e.prevent_default();
        match bead.slid(&app.files(), bead.level + Length::m(by), STEP) {
            Ok(files) => app.change(format!("{} slid", bead.words), &files),
            Err(why) => app.say_bad(why),
        }
        refocus(i);
    };
    view! {
        <div class="staff" node_ref=place role="group" aria-label="Levels" data-test="staff"
            on:pointerdown=down on:pointermove=go on:pointerup=up on:pointercancel=up on:keydown=key>
            <svg inner_html=svg/>
        </div>
    }
}

#[derive(Clone, PartialEq, Default)]
struct BeadList(Vec<Bead>);

/// The staff is drawn anew after a key: the bead keeps the keyboard.
fn refocus(i: usize) {
    request_animation_frame(move || {
        let found =
            crate::browser::document().and_then(|d| d.query_selector(&format!("[data-bead=\"{i}\"]")).ok().flatten());
        if let Some(svg) = found.and_then(|e| e.dyn_into::<web_sys::SvgElement>().ok()) {
            // Losing the focus loses nothing that was entered.
            let _ = svg.focus();
        }
    });
}

fn slid(s: &Slide, y: f64) -> Option<Files> {
    let by = s.rule.metres(s.from_y - y);
    s.bead.slid(&s.files, s.bead.level + Length::m(by), STEP).ok()
}

fn rule_of(app: App, tall: f64) -> Rule {
    let range = app.settled.with(|s| s.plan.as_ref().map(level_range));
    let (low, high) = range.unwrap_or((99.0, 101.0));
    Rule { low, high, tall }
}

fn level_range(plan: &Arc<groundhold_plan::Plan>) -> (f64, f64) {
    let mut levels: Vec<f64> = beads(plan).iter().map(|b| b.level.to_m()).collect();
    levels.extend(plan.walls.iter().flat_map(|w| w.layout.posts.iter().flat_map(|p| [p.front.to_m(), p.top.to_m()])));
    if levels.is_empty() {
        levels.extend(plan.survey.ground.points().iter().map(|p| p.level.to_m()));
    }
    let (lo, hi) = levels.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), v| (a.min(*v), b.max(*v)));
    if lo > hi { (99.0, 101.0) } else { (lo - 0.25, hi + 0.25) }
}

fn watch_size(place: NodeRef<html::Div>, size: RwSignal<(f64, f64)>) {
    Effect::new(move |_| {
        let Some(div) = place.get() else { return };
        let element: web_sys::Element = div.unchecked_into();
        let watched = element.clone();
        let measure = Closure::<dyn FnMut()>::new(move || {
            let (_, _, wide, tall) = rect_of(&watched);
            if tall > 1.0 {
                size.set((wide, tall));
            }
        });
        if let Ok(observer) = web_sys::ResizeObserver::new(measure.as_ref().unchecked_ref()) {
            observer.observe(&element);
        }
        // The staff stays as long as the page.
        measure.forget();
    });
}

/// Blocks of a tenth of a metre (or of what fits), figures, and the beads, pushed apart where they would cover each other.
fn staff_svg(beads: &[Bead], rule: &Rule, wide: f64, lit: &str, held: Option<usize>) -> String {
    let steps = [0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0];
    let step = steps.into_iter().find(|s| s / (rule.high - rule.low) * rule.tall >= 9.0).unwrap_or(20.0);
    let mut out = String::new();
    let first = (rule.low / step).floor() as i64;
    let last = (rule.high / step).ceil() as i64;
    for k in first..=last.min(first + 400) {
        let level = k as f64 * step;
        let (top, bottom) = (rule.y(Level::m(level + step)), rule.y(Level::m(level)));
        if k.rem_euclid(2) == 0 {
            out.push_str(&format!(
                "<rect class=\"block\" x=\"0\" y=\"{top:.1}\" width=\"9\" height=\"{:.1}\"/>",
                bottom - top
            ));
        }
        let every = if step < 0.09 { 10 } else { 5 };
        if k.rem_euclid(every) == 0 {
            out.push_str(&format!("<text x=\"13\" y=\"{:.1}\">{level:.1}</text>", bottom + 4.0));
        }
    }
    out.push_str(&format!("<path class=\"edge\" d=\"M9.5 0V{:.0}\"/>", rule.tall));
    let tall = 26.0;
    let mut ys: Vec<f64> = beads.iter().map(|b| rule.y(b.level)).collect();
    let mut last_y = f64::NEG_INFINITY;
    for y in &mut ys {
        *y = y.max(last_y + tall + 2.0);
        last_y = *y;
    }
    let mut below = rule.tall - tall / 2.0;
    for y in ys.iter_mut().rev() {
        *y = y.min(below);
        below = *y - tall - 2.0;
    }
    for (i, (b, y)) in beads.iter().zip(&ys).enumerate() {
        let class = match (held == Some(i), b.element == lit) {
            (true, _) => " held",
            (false, true) => " lit",
            _ => "",
        };
        let name = if b.element == "outlet" { "Out" } else { b.element.as_str() };
        let name: String = name.chars().take(4).collect();
        let real = rule.y(b.level);
        let (x, w) = (15.0, (wide - 18.0).max(28.0));
        let name = name.replace('&', "&amp;").replace('<', "&lt;");
        let words = b.words.replace('&', "&amp;").replace('<', "&lt;").replace('"', "&quot;");
        out.push_str(&format!(
            "<path class=\"lead\" d=\"M9 {real:.1}L{x} {y:.1}\"/><g class=\"bead{class}\" data-bead=\"{i}\" data-test=\"bead-{name}\" tabindex=\"0\" role=\"slider\" aria-orientation=\"vertical\" aria-label=\"{words}\" aria-valuenow=\"{level:.3}\" aria-valuemin=\"{low:.2}\" aria-valuemax=\"{high:.2}\" aria-valuetext=\"{level:.3} m\"><rect x=\"0\" y=\"{top0:.1}\" width=\"{wide:.1}\" height=\"44\" fill=\"transparent\"/><rect class=\"body\" x=\"{x}\" y=\"{top:.1}\" width=\"{w:.1}\" height=\"{tall}\" rx=\"5\"/><text x=\"{mid:.1}\" y=\"{base:.1}\">{name}</text></g>",
            level = b.level.to_m(),
            low = rule.low,
            high = rule.high,
            top0 = y - 22.0,
            top = y - tall / 2.0,
            mid = x + w / 2.0,
            base = y + 4.5,
        ));
    }
    out
}
