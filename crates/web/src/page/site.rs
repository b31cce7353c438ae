//! Site mode: one thing per screen, for gloves and sun, readable at arm's length.

use leptos::prelude::*;

use super::App;
use super::site_find::Find;
use crate::browser;
use crate::site::{Round, Step, steps, tick, ticks};

/// The screen.
#[component]
pub fn Site() -> impl IntoView {
    let app = App::get();
    browser::stay_awake();
    on_cleanup(browser::let_sleep);
    let screen = NodeRef::<leptos::html::Div>::new();
    Effect::new(move |_| {
        if let Some(div) = screen.get() {
            // Without the focus a keyboard has to find its own way in; nothing else is lost.
            let _ = div.focus();
        }
    });
    let key = move |e: leptos::ev::KeyboardEvent| {
        if e.key() == "Escape" {
            app.site.set(false);
        }
    };
    let round = RwSignal::new(Round::Pegs);
    let at = RwSignal::new(None::<usize>);
    let finding = RwSignal::new(None::<String>);
    let dial = RwSignal::new(false);
    let all = Memo::new(move |_| {
        let ticked = app.settled.with(|s| ticks(&s.files));
        app.settled.with(|s| s.plan.as_ref().map(|p| steps(p, round.get(), &ticked))).unwrap_or_default()
    });
    // The first thing that is not done, unless the person looks at another.
    let now = move || all.with(|a| at.get().filter(|i| *i < a.len()).or_else(|| a.iter().position(|s| !s.done)));
    let step = move || now().and_then(|i| all.with(|a| a.get(i).cloned()));
    let round_key = move |r: Round| {
        view! { <button class="pick" data-test=format!("round-{}", r.word().to_lowercase()) aria-pressed=move || (round.get() == r && !dial.get()).to_string()
        on:click=move |_| { round.set(r); at.set(None); dial.set(false); finding.set(None); }>{r.word()}</button> }
    };
    let done = move |_| {
        let (Some(s), Some(plan)) = (step(), app.plan()) else { return };
        let after = tick(&app.files(), &plan, &s.key, &browser::now());
        at.set(None);
        app.change(format!("{} done", s.title), &after);
    };
    let go = move |by: isize| {
        let n = all.with_untracked(Vec::len);
        let i = now().unwrap_or(n.saturating_sub(1));
        at.set(Some(i.saturating_add_signed(by).min(n.saturating_sub(1))));
    };
    view! {
        <div class="site" role="dialog" aria-modal="true" aria-label="On site" data-test="site" tabindex="-1" node_ref=screen on:keydown=key>
            <header>
                <div class="picks">{Round::ALL.map(round_key).into_iter().collect_view()}
                    <button class="pick" data-test="round-slope" aria-pressed=move || dial.get().to_string() on:click=move |_| dial.update(|d| *d = !*d)>"Slope"</button></div>
                <button class="btn" aria-label="Undo" disabled=move || app.history.with(|h| h.to_undo().is_none()) on:click=move |_| app.undo()>"↶"</button>
                <button class="btn" data-test="leave-site" on:click=move |_| app.site.set(false)>"Leave"</button>
            </header>
            {move || match (dial.get(), finding.get(), step()) {
                (true, ..) => view! { <Dial/> }.into_any(),
                (_, Some(element), _) => view! { <Find element back=move || finding.set(None)/> }.into_any(),
                (_, _, Some(s)) => one(&s, now().unwrap_or(0), all.with(Vec::len)).into_any(),
                _ => view! { <div class="one"><h2>"All done here."</h2><p>"What was ticked off stands in the record."</p></div> }.into_any(),
            }}
            <footer>
                <Show when=move || !dial.get() && finding.get().is_none() && step().is_some()>
                    <button class="btn main" data-test="tick" disabled=move || step().is_none_or(|s| s.done) on:click=done>"✓ Done"</button>
                    <button class="btn" data-test="not-so" on:click=move |_| finding.set(step().map(|s| s.element))>"It is not so"</button>
                    <button class="btn" data-test="site-back" on:click=move |_| go(-1)>"‹ Back"</button>
                    <button class="btn" data-test="site-next" on:click=move |_| go(1)>"Next ›"</button>
                </Show>
            </footer>
        </div>
    }
}

fn one(s: &Step, i: usize, n: usize) -> impl IntoView + use<> {
    let facts = s
        .facts
        .iter()
        .map(|(what, value)| {
            let (what, value) = (what.clone(), value.clone());
            // A figure stays with its unit; words may go on in the next line.
            let short = value.chars().count() <= 12;
            view! { <div class="fact"><div class="what">{what}</div><div class="value" class:short=short>{value}</div></div> }
        })
        .collect_view();
    let count = format!("{} of {n}", i + 1);
    view! {
        <div class="one" tabindex="0" role="region" aria-label="What to do" data-test="step">
            <p class="soft">{count}</p>
            <h2>{s.title.clone()}</h2>
            {s.done.then(|| view! { <span class="done">"✓ done"</span> })}
            <div class="facts">{facts}</div>
            <p>{s.note.clone()}</p>
        </div>
    }
}

/// The slope under the phone, laid on a straight edge: in degrees, as a ratio and per cent.
#[component]
fn Dial() -> impl IntoView {
    let tilt = App::get().tilt;
    browser::listen_to_tilt(move |f, s| tilt.set(Some((f, s))));
    let slope = move || {
        tilt.get().map(|(f, s)| {
            let (a, b) = (f.to_radians(), s.to_radians());
            let rise =
                groundhold_quantity::math::hypot(groundhold_quantity::math::tan(a), groundhold_quantity::math::tan(b));
            rise.min(99.0)
        })
    };
    let degrees = move || slope().map(|s| format!("{:.1}°", groundhold_quantity::math::atan2(s, 1.0).to_degrees()));
    let ratio = move || slope().map(|s| if s < 0.002 { "level".to_string() } else { format!("1:{:.1}", 1.0 / s) });
    let percent = move || slope().map(|s| format!("{:.1} %", s * 100.0));
    let bubble = move || {
        tilt.get().map_or("translate(50 50)".to_string(), |(f, s)| {
            format!("translate({:.1} {:.1})", 50.0 - s.clamp(-20.0, 20.0) * 1.8, 50.0 - f.clamp(-20.0, 20.0) * 1.8)
        })
    };
    view! {
        <div class="one" data-test="slope-dial">
            <svg class="level-dial" viewBox="0 0 100 100" role="img" aria-label="Spirit level">
                <circle cx="50" cy="50" r="46" fill="none" stroke="currentColor" stroke-width="2"/>
                <circle cx="50" cy="50" r="12" fill="none" stroke="currentColor" stroke-width="1"/>
                <path d="M4 50H96M50 4V96" stroke="currentColor" stroke-width=".6"/>
                <circle class="bubble" r="10" transform=bubble/>
            </svg>
            <Show when=move || tilt.get().is_some() fallback=|| view! { <p>"This device tells nothing about how it lies. On a phone, allow motion sensors for this page."</p> }>
                <div class="facts" aria-live="off">
                    <div class="fact"><div class="what">"degrees"</div><div class="value">{degrees}</div></div>
                    <div class="fact"><div class="what">"one in"</div><div class="value">{ratio}</div></div>
                    <div class="fact"><div class="what">"per cent"</div><div class="value">{percent}</div></div>
                </div>
            </Show>
            <p class="small">"A phone is good to about half a degree; lay it on a straight edge, turn it round and take the mean."</p>
        </div>
    }
}
