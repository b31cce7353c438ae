//! The drawing one works on: pan, zoom, tap, drag, and the same by keyboard.

use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;

use groundhold_quantity::{Point, Vector};
use leptos::ev;
use leptos::prelude::*;
use leptos::{html, svg};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;

use super::patch::OnScreen;
use super::relief::ReliefView;
use super::staff::Staff;
use super::{App, Tab, over};
use crate::browser::{attribute_up, light, number_of, rect_of};
use crate::job::Files;
use crate::live::{Drawing, Grip, Holds, Snapped, Window, bounds, draw, grips, moved, outlines, snapped};
use crate::shown::Shown;

/// What the fingers are doing.
#[derive(Default)]
enum Doing {
    #[default]
    Nothing,
    /// One finger pushes the ground, or will turn out to have tapped.
    Push { x: f64, y: f64, far: bool, tapped: String },
    /// Two fingers.
    Pinch,
    /// A grip is dragged; from these texts.
    Drag { grip: Grip, files: Files, from: Arc<Shown>, off: Vector },
}

#[derive(Default)]
struct Hand {
    doing: Doing,
    fingers: Vec<(i32, f64, f64)>,
    /// Where the dragged thing should go at the next frame.
    wanted: Option<Point>,
    asked: bool,
}

/// Beyond this many pixels a tap is a push.
const SLACK: f64 = 7.0;

/// The drawing with its staff.
#[component]
pub fn Board() -> impl IntoView {
    let app = App::get();
    let sight = NodeRef::<html::Div>::new();
    let layers = NodeRef::<svg::G>::new();
    let held = RwSignal::new(None::<usize>);
    let drawing = Memo::new(move |_| app.plan().map(|p| Arc::new(draw(&p))).unwrap_or_default());
    let handles = Memo::new(move |_| {
        let lit = app.lit.get();
        app.shown.with(|s| s.job.as_ref().map(|j| grips(j, lit.split(' ').next().unwrap_or("")))).unwrap_or_default()
    });
    keep_layers(app, layers, drawing);
    keep_size(app, sight);
    let hand = Rc::new(RefCell::new(Hand::default()));
    let signs = Memo::new(move |_| app.plan().map(|p| over::signs(&p)).unwrap_or_default());
    let names = move || {
        let lit = app.lit.get();
        handles.with(|g| app.window.with(|w| drawing.with(|d| signs.with(|s| over::names(d, w, &lit, s, g)))))
    };
    let signs = move || app.window.with(|w| signs.with(|s| over::signs_svg(s, w)));
    let knobs = move || app.window.with(|w| handles.with(|g| over::grips_svg(g, held.get(), w)));
    let unit = move || app.window.with(|w| format!("scale({:.6})", 1.0 / w.scale));
    let bar = move || app.window.with(over::bar);
    let (h1, h2, h3, h4) = (hand.clone(), hand.clone(), hand.clone(), hand.clone());
    view! {
        <section class="board" aria-label="Drawing">
            <div class="sight" node_ref=sight data-test="sight"
                on:pointerdown=move |e| down(app, &h1, &sight, handles, held, &e)
                on:pointermove=move |e| go(app, &h2, &sight, &e)
                on:pointerup=move |e| up(app, &h3, held, &e)
                on:pointercancel=move |e| up(app, &h4, held, &e)
                on:wheel=move |e| wheel(app, &sight, &e)>
                <svg class="ground" class:before=move || app.before.get() viewBox=move || app.window.with(Window::view_box)
                    tabindex="0" role="application" aria-roledescription="drawing" data-test="drawing"
                    aria-label="Plan of the ground. Arrow keys move it, plus and minus zoom, 0 shows all. With a thing chosen, N takes hold of its next corner and the arrow keys move that."
                    on:keydown=move |e| key(app, handles, held, &e)>
                    <defs>
                        <pattern id="hatch-cut" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform=unit>
                            <line class="hatch-cut" x1="-1" y1="-1" x2="10" y2="10"/>
                            <line class="hatch-cut" x1="-1" y1="8" x2="1" y2="10"/>
                            <line class="hatch-cut" x1="8" y1="-1" x2="10" y2="1"/>
                        </pattern>
                        <pattern id="hatch-fill" width="10" height="10" patternUnits="userSpaceOnUse" patternTransform=unit>
                            <rect class="hatch-fill" x="1" y="1" width="2.6" height="2.6"/>
                            <rect class="hatch-fill" x="6" y="6" width="2.6" height="2.6"/>
                        </pattern>
                    </defs>
                    <g node_ref=layers/>
                    <g class="other-version" inner_html=move || app.other.get().map(|p| outlines(&p)).unwrap_or_default()></g>
                </svg>
                <svg class="over" aria-hidden="true">
                    <g inner_html=move || app.window.with(|w| app.in_line.with(|l| over::lines(l, w)))/>
                    <g inner_html=names/>
                    <g inner_html=signs/>
                    <g inner_html=knobs/>
                </svg>
                <div class="bar" aria-hidden="true">
                    <svg width=move || bar().0 height="12"><path class="scale-bar" fill="none" stroke="currentColor" stroke-width="2" d=move || bar().1/></svg>
                    <span>{move || bar().2}</span>
                </div>
                <Show when=move || app.relief.get()><ReliefView/></Show>
                <Tools held/>
            </div>
            <Staff/>
            <Wrong/>
        </section>
    }
}

/// Buttons on the drawing.
#[component]
fn Tools(held: RwSignal<Option<usize>>) -> impl IntoView {
    let app = App::get();
    let zoom = move |by: f64| {
        held.set(None);
        app.window.update(|w| *w = w.zoomed(by, w.width / 2.0, w.height / 2.0));
    };
    view! {
        <div class="tools" on:pointerdown=|e| e.stop_propagation()>
            <button class="btn round" aria-label="Larger" on:click=move |_| zoom(1.5)>"+"</button>
            <button class="btn round" aria-label="Smaller" on:click=move |_| zoom(1.0 / 1.5)>"−"</button>
            <button class="btn" data-test="relief-key" aria-pressed=move || app.relief.get().to_string() on:click=move |_| app.relief.update(|r| *r = !*r)>"3-D"</button>
            <button class="btn" data-test="fit" on:click=move |_| fit(app)>"All"</button>
            <button class="btn" aria-pressed=move || app.before.get().to_string()
                on:click=move |_| app.before.update(|b| *b = !*b)>
                {move || if app.before.get() { "After" } else { "Before" }}
            </button>
        </div>
    }
}

/// What stops the plan, over the drawing.
#[component]
fn Wrong() -> impl IntoView {
    let app = App::get();
    let first = move || app.shown.with(|s| s.wrong.first().map(|w| format!("{}: {}", w.place, w.says)));
    view! {
        <Show when=move || first().is_some()>
            <div class="banner" role="alert" data-test="wrong">
                <strong>"The drawing shows the last state that could be planned. "</strong>{first}
            </div>
        </Show>
    }
}

/// Shows all of the works.
pub fn fit(app: App) {
    if let Some(plan) = app.shown.with_untracked(|s| s.plan.clone()) {
        let (lo, hi) = bounds(&plan);
        app.window.update(|w| *w = w.fit(lo, hi));
    }
}

fn keep_layers(app: App, layers: NodeRef<svg::G>, drawing: Memo<Arc<Drawing>>) {
    let screen = Rc::new(RefCell::new(OnScreen::default()));
    Effect::new(move |_| {
        let Some(g) = layers.get() else { return };
        let element: &web_sys::Element = g.as_ref();
        let touched = drawing.with(|d| screen.borrow_mut().update(element, &d.layers));
        if touched {
            app.lit.with_untracked(|l| light(l));
        }
        if let Some(root) = crate::browser::document().and_then(|d| d.document_element()) {
            // Tests wait for this; it is never refused.
            let _ = root.set_attribute("data-ready", "true");
        }
    });
    Effect::new(move |_| app.lit.with(|l| light(l)));
}

/// The window follows the size of its place on the screen.
fn keep_size(app: App, sight: NodeRef<html::Div>) {
    Effect::new(move |_| {
        let Some(div) = sight.get() else { return };
        let element: web_sys::Element = div.unchecked_into();
        let watched = element.clone();
        let first = std::cell::Cell::new(true);
        let measure = Closure::<dyn FnMut()>::new(move || {
            let (_, _, width, height) = rect_of(&watched);
            if width > 1.0 && height > 1.0 {
                app.window.update(|w| *w = Window { width, height, ..*w });
                if first.replace(false) {
                    fit(app);
                }
            }
        });
        if let Ok(observer) = web_sys::ResizeObserver::new(measure.as_ref().unchecked_ref()) {
            observer.observe(&element);
        }
        // The drawing stays as long as the page.
        measure.forget();
    });
}

fn inside(sight: &NodeRef<html::Div>, e: &ev::PointerEvent) -> (f64, f64) {
    let Some(div) = sight.get_untracked() else { return (0.0, 0.0) };
    let (left, top, ..) = rect_of(div.as_ref());
    (f64::from(e.client_x()) - left, f64::from(e.client_y()) - top)
}

fn down(
    app: App,
    hand: &Rc<RefCell<Hand>>,
    sight: &NodeRef<html::Div>,
    handles: Memo<Vec<Grip>>,
    held: RwSignal<Option<usize>>,
    e: &ev::PointerEvent,
) {
    if e.button() != 0 {
        return;
    }
    let (x, y) = inside(sight, e);
    if let Some(div) = sight.get_untracked() {
        let element: &web_sys::Element = div.as_ref();
        // Without capture a drag ends at the edge; no harm otherwise.
        let _ = element.set_pointer_capture(e.pointer_id());
    }
    let mut hand = hand.borrow_mut();
    hand.fingers.push((e.pointer_id(), x, y));
    if hand.fingers.len() > 1 {
        if matches!(hand.doing, Doing::Drag { .. }) {
            return;
        }
        hand.doing = Doing::Pinch;
        return;
    }
    if let Some(element) = attribute_up(e.target(), "data-sign") {
        app.only.set(element.clone());
        app.choose(&element);
        app.go(Tab::Findings);
        return;
    }
    let grip = number_of(attribute_up(e.target(), "data-grip"));
    let grip = grip.and_then(|i| Some((i, handles.with_untracked(|g| g.get(i).cloned())?)));
    if let Some((i, grip)) = grip {
        let off = grip.at - app.window.with_untracked(|w| w.ground(x, y));
        let from = app.settled.get_untracked();
        held.set(Some(i));
        app.dragging.set(true);
        hand.doing = Doing::Drag { grip, files: app.files(), from, off };
        e.prevent_default();
        return;
    }
    let tapped = attribute_up(e.target(), "data-element").unwrap_or_default();
    hand.doing = Doing::Push { x, y, far: false, tapped };
}

fn go(app: App, hand: &Rc<RefCell<Hand>>, sight: &NodeRef<html::Div>, e: &ev::PointerEvent) {
    let (x, y) = inside(sight, e);
    let mut h = hand.borrow_mut();
    let id = e.pointer_id();
    let Some(i) = h.fingers.iter().position(|f| f.0 == id) else { return };
    let (ox, oy) = (h.fingers[i].1, h.fingers[i].2);
    let other = h.fingers.iter().find(|f| f.0 != id).copied();
    h.fingers[i] = (id, x, y);
    match &mut h.doing {
        Doing::Nothing => {}
        Doing::Push { x: sx, y: sy, far, .. } => {
            if !*far && (x - *sx).abs() < SLACK && (y - *sy).abs() < SLACK {
                return;
            }
            let (dx, dy) = if *far { (x - ox, y - oy) } else { (x - *sx, y - *sy) };
            *far = true;
            app.window.update(|w| *w = w.pushed(dx, dy));
        }
        Doing::Pinch => {
            let Some((_, bx, by)) = other else { return };
            let apart = |x: f64, y: f64| Vector::m(x - bx, y - by).length().max(8.0);
            let (mx, my) = ((x + bx) / 2.0, (y + by) / 2.0);
            let by_factor = apart(x, y) / apart(ox, oy);
            let push = ((x - ox) / 2.0, (y - oy) / 2.0);
            app.window.update(|w| *w = w.pushed(push.0, push.1).zoomed(by_factor, mx, my));
        }
        Doing::Drag { off, .. } => {
            let to = app.window.with_untracked(|w| w.ground(x, y)) + *off;
            h.wanted = Some(to);
            if !h.asked {
                h.asked = true;
                let hand = hand.clone();
                drop(h);
                request_animation_frame(move || drag_frame(app, &hand));
            }
        }
    }
}

/// Within so many pixels a dragged point falls on another, or into line with it.
const NEAR: f64 = 7.0;

/// Where a dragged grip comes to lie. A side only keeps to round measures: it moves square to itself.
fn place_of_drag(app: App, job: &groundhold_plan::job::Job, grip: &Grip, to: Point) -> Snapped {
    let step = app.snap.get_untracked();
    if step <= 0.0 {
        return Snapped { at: to, with: vec![] };
    }
    if matches!(grip.holds, Holds::Side(_)) {
        let by = to - grip.at;
        let round = |v: f64| groundhold_quantity::round_to(v, step);
        return Snapped { at: grip.at + Vector::m(round(by.x), round(by.y)), with: vec![] };
    }
    let reach = NEAR / app.window.with_untracked(|w| w.scale);
    snapped(job, grip, to, reach, step)
}

/// One frame of a drag: the job with the grip where the finger is, planned and drawn.
fn drag_frame(app: App, hand: &Rc<RefCell<Hand>>) {
    let mut h = hand.borrow_mut();
    h.asked = false;
    let Some(to) = h.wanted.take() else { return };
    let Doing::Drag { grip, files, from, .. } = &h.doing else { return };
    let Some(job) = &from.job else { return };
    let place = place_of_drag(app, job, grip, to);
    let result = moved(files, job, grip, place.at, 0.0);
    drop(h);
    app.in_line.set(place.with.iter().map(|p| (*p, place.at)).collect());
    match result {
        Ok(after) => app.preview(&after),
        Err(why) => app.say_bad(why),
    }
}

fn up(app: App, hand: &Rc<RefCell<Hand>>, held: RwSignal<Option<usize>>, e: &ev::PointerEvent) {
    let mut h = hand.borrow_mut();
    h.fingers.retain(|f| f.0 != e.pointer_id());
    if matches!(h.doing, Doing::Pinch) && h.fingers.len() == 1 {
        let (_, x, y) = h.fingers[0];
        h.doing = Doing::Push { x, y, far: true, tapped: String::new() };
        return;
    }
    if !h.fingers.is_empty() {
        return;
    }
    let doing = std::mem::take(&mut h.doing);
    let wanted = h.wanted.take();
    drop(h);
    match doing {
        Doing::Push { x, y, far: false, tapped } if e.type_() == "pointerup" => {
            held.set(None);
            if app.tapping.get_untracked() {
                app.tapping.set(false);
                app.tapped.set(Some(app.window.with_untracked(|w| w.ground(x, y))));
                return;
            }
            app.choose(&tapped);
            if !tapped.is_empty() && app.tab.get_untracked() != Tab::Ground {
                app.go(Tab::Ground);
            }
        }
        Doing::Drag { grip, files, from, .. } => {
            held.set(None);
            app.dragging.set(false);
            app.in_line.set(vec![]);
            let after = match (wanted, &from.job) {
                (Some(to), Some(job)) => moved(&files, job, &grip, place_of_drag(app, job, &grip, to).at, 0.0).ok(),
                _ => None,
            };
            let after = after.unwrap_or_else(|| app.shown.with_untracked(|s| s.files.clone()));
            if e.type_() == "pointerup" {
                app.change(format!("{} moved", grip.words), &after);
            } else {
                app.settle();
            }
        }
        _ => {}
    }
}

fn wheel(app: App, sight: &NodeRef<html::Div>, e: &ev::WheelEvent) {
    e.prevent_default();
    let Some(div) = sight.get_untracked() else { return };
    let (left, top, ..) = rect_of(div.as_ref());
    let (x, y) = (f64::from(e.client_x()) - left, f64::from(e.client_y()) - top);
    let step = if e.delta_mode() == 0 { e.delta_y() } else { e.delta_y() * 30.0 };
    let by = groundhold_quantity::math::exp(-step.clamp(-240.0, 240.0) * 0.0022);
    app.window.update(|w| *w = w.zoomed(by, x, y));
}

fn key(app: App, handles: Memo<Vec<Grip>>, held: RwSignal<Option<usize>>, e: &ev::KeyboardEvent) {
    let step = if e.shift_key() { 10.0 } else { 1.0 };
    let arrow = match e.key().as_str() {
        "ArrowLeft" => Some((-1.0, 0.0)),
        "ArrowRight" => Some((1.0, 0.0)),
        "ArrowUp" => Some((0.0, 1.0)),
        "ArrowDown" => Some((0.0, -1.0)),
        _ => None,
    };
    let grip = held.get_untracked().and_then(|i| handles.with_untracked(|g| g.get(i).cloned()));
    match (arrow, grip) {
        (Some((dx, dy)), Some(grip)) => {
            let snap = app.snap.get_untracked();
            let by = Vector::m(dx, dy) * (snap.max(0.01) * step);
            let settled = app.settled.get_untracked();
            let Some(job) = &settled.job else { return };
            match moved(&app.files(), job, &grip, grip.at + by, snap) {
                Ok(after) => app.change(format!("{} moved", grip.words), &after),
                Err(why) => app.say_bad(why),
            }
        }
        (Some((dx, dy)), None) => app.window.update(|w| *w = w.pushed(-dx * 40.0 * step, dy * 40.0 * step)),
        (None, _) => match e.key().as_str() {
            "+" | "=" => app.window.update(|w| *w = w.zoomed(1.25, w.width / 2.0, w.height / 2.0)),
            "-" => app.window.update(|w| *w = w.zoomed(0.8, w.width / 2.0, w.height / 2.0)),
            "0" => fit(app),
            "n" | "N" => {
                let n = handles.with_untracked(Vec::len);
                let next = held.get_untracked().map_or(0, |i| i + 1);
                held.set((n > 0).then(|| next % n.max(1)));
                let words =
                    held.get_untracked().and_then(|i| handles.with_untracked(|g| g.get(i).map(|g| g.words.clone())));
                app.say(
                    words.map_or("Nothing is chosen.".into(), |w| format!("{w}: arrow keys move it, Escape lets go.")),
                );
            }
            "Escape" => {
                if held.get_untracked().is_some() {
                    held.set(None);
                } else {
                    app.choose("");
                }
            }
            _ => return,
        },
    }
    e.prevent_default();
}
