//! What the plan has to say against itself, beside the thing, with what would mend it and what that costs.

use std::sync::Arc;

use groundhold_finding::{Finding, Whose};
use groundhold_plan::Plan;
use leptos::prelude::*;

use super::{App, marks};
use crate::job::{Files, set_field};
use crate::live::place_of;
use crate::shown::Cost;

/// The list of findings.
#[component]
pub fn Findings() -> impl IntoView {
    let app = App::get();
    let list = move || {
        let Some(plan) = app.plan() else { return ().into_any() };
        let only = app.only.get();
        let of = |f: &Finding| only.is_empty() || f.place.element == only;
        let shown: Vec<(usize, Finding)> = plan.findings.iter().cloned().enumerate().filter(|(_, f)| of(f)).collect();
        let none = shown.is_empty();
        view! {
            <Show when=move || none><p>"Nothing is said against it by what is checked here. What is not checked is not thereby in order."</p></Show>
            {shown.into_iter().map(|(i, f)| card(app, plan.clone(), i, f)).collect_view()}
        }
        .into_any()
    };
    view! {
        <div class="stack" data-test="findings">
            <div class="row apart">
                <h2>{move || if app.only.get().is_empty() { "Findings".to_string() } else { format!("Findings of {}", app.only.get()) }}</h2>
                <Show when=move || !app.only.get().is_empty()>
                    <button class="btn" on:click=move |_| app.only.set(String::new())>"All findings"</button>
                </Show>
            </div>
            <p class="small soft">"Local rules and licensed practice come first. What stands here is what this computation found; a place it does not know it does not judge."</p>
            {list}
        </div>
    }
}

fn card(app: App, plan: Arc<Plan>, index: usize, f: Finding) -> impl IntoView {
    let place = f.place.to_string();
    let at = place_of(&plan, &f.place.element, &f.place.on);
    let whole = if f.place.on.starts_with("post ") {
        format!("{} {}", f.place.element, f.place.on)
    } else {
        f.place.element.clone()
    };
    let go = move |_| {
        app.choose(&whole);
        app.share.set("both");
        if let Some(p) = at {
            app.window.update(|w| w.centre = p);
        }
    };
    let trace = f.trace.clone();
    let kind = f.kind;
    let class = format!("card finding {}", marks::class(f.severity));
    let util = f.utilisation.map(|u| {
        let share = (u * 50.0).clamp(0.0, 100.0);
        let words = format!("demand over capacity {}", groundhold_quantity::trim(u, 2));
        view! {
            <p class="small">{words.clone()}</p>
            <div class="util" role="img" aria-label=words>
                <svg viewBox="0 0 100 8" preserveAspectRatio="none"><rect width=share.to_string() height="8" class=marks::class(f.severity)/><path d="M50 0V8" stroke="currentColor"/></svg>
            </div>
        }
    });
    let remedies =
        f.remedies.iter().cloned().enumerate().map(|(k, r)| remedy(app, plan.clone(), index, k, r)).collect_view();
    view! {
        <article class=class data-test=format!("finding-{}", f.kind.code)>
            <p class="head"><span inner_html=marks::mark(f.severity)></span><span>{f.severity.word()}" · "{place}</span><span class="code">{f.kind.code}</span></p>
            <p>{f.says.clone()}</p>
            {util}
            <div class="remedies">{remedies}</div>
            <div class="row">
                <button class="btn plain" on:click=go>"Show the place"</button>
                {trace.map(|t| view! { <button class="btn plain" data-test="open-working" on:click=move |_| app.workings.set(vec![t.clone()])>"The working"</button> })}
            </div>
            <details class="small">
                <summary>"Why it matters"</summary>
                <p>{kind.why}</p>
                <p class="soft">"Known from: "{kind.source}</p>
                <p class="soft">"A false alarm when: "{kind.when_wrong}</p>
            </details>
        </article>
    }
}

fn remedy(app: App, plan: Arc<Plan>, finding: usize, k: usize, r: groundhold_finding::Remedy) -> impl IntoView {
    let currency = plan.job.about.currency.0.clone();
    if r.whose == Whose::Theirs || r.change.is_empty() {
        return view! { <p class="small">"→ "{r.says}</p> }.into_any();
    }
    let cost = move || {
        app.costs.with(|c| match c {
            None => "costing …".to_string(),
            Some(all) => all
                .iter()
                .find(|c| c.finding == finding && c.remedy == k)
                .map_or("not to be planned".into(), |c| price(c, &currency)),
        })
    };
    let (says, changes) = (r.says.clone(), r.change.clone());
    let take = move |_| {
        let made = changes.iter().try_fold(app.files(), |f: Files, a| set_field(&f, &a.element, &a.field, &a.value));
        match made {
            Ok(files) => {
                app.change(says.clone(), &files);
                app.say(format!("Done: {says}"));
            }
            Err(why) => app.say_bad(why),
        }
    };
    view! {
        <button class="btn remedy" data-test="remedy" on:click=take>
            <span>{r.says.clone()}</span><span class="cost">{cost}</span>
        </button>
    }
    .into_any()
}

fn price(c: &Cost, currency: &str) -> String {
    let a = c.cost.amount();
    let sign = if a < 0.0 { "saves " } else { "+" };
    let mends = if c.proven { "" } else { " · does not mend it alone" };
    format!("{sign}{:.2} {currency}{mends}", a.abs())
}
