//! What differs between a named version and the job as it is: in measures, in money, in findings.

use std::sync::Arc;

use groundhold_plan::{Difference, Plan, compare};
use leptos::prelude::*;

use super::App;
use crate::shown::{Pace, Shown, money};

/// The comparison with a version, counted from 0.
#[component]
pub fn Compared(version: usize) -> impl IntoView {
    let app = App::get();
    let before = Memo::new(move |_| {
        let files = app.history.with(|h| h.versions().get(version).map(|v| v.files.clone()));
        files.and_then(|f| Shown::of(&f, Pace::Whole, None).plan).map(PlanOf)
    });
    Effect::new(move |_| app.other.set(before.get().map(|p| p.0)));
    on_cleanup(move || app.other.set(None));
    let body = move || {
        let (before, now) = (before.get().map(|p| p.0), app.settled.with(|s| s.plan.clone()));
        match (before, now) {
            (Some(b), Some(n)) => rows(&b, &n, &compare(&b, &n)).into_any(),
            _ => view! { <p>"That version cannot be planned."</p> }.into_any(),
        }
    };
    view! { <div class="scroll-x" data-test="compared" tabindex="0" role="region" aria-label="Comparison">{body}</div> }
}

#[derive(Clone)]
struct PlanOf(Arc<Plan>);

impl PartialEq for PlanOf {
    fn eq(&self, other: &PlanOf) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

fn rows(before: &Plan, now: &Plan, d: &Difference) -> impl IntoView + use<> {
    let units = now.job.about.units;
    let mut all: Vec<(String, String, String)> = vec![];
    if let Some(p) = &d.price {
        all.push((p.what.clone(), money(before, p.before), money(now, p.after)));
    }
    all.extend(d.volumes.iter().map(|v| (v.what.clone(), units.volume(v.before), units.volume(v.after))));
    all.extend(d.levels.iter().map(|v| (v.what.clone(), units.level(v.before), units.level(v.after))));
    all.extend(d.lengths.iter().map(|v| (v.what.clone(), units.length(v.before), units.length(v.after))));
    for c in &d.order {
        let side = |s: &Option<groundhold_order::Side>| {
            s.as_ref().map_or("–".to_string(), |s| {
                format!("{} {}", groundhold_quantity::trim(s.quantity, 2), s.unit.word())
            })
        };
        all.push((c.item.clone(), side(&c.before), side(&c.after)));
    }
    let said = |list: &[(String, String, String)], sign: &'static str| {
        list.iter()
            .map(|(code, place, says)| {
                let text = format!("{sign} {code} {place}: {says}");
                view! { <li>{text}</li> }
            })
            .collect_view()
    };
    let same = d.is_empty();
    view! {
        <p class="small">"On the drawing the other version is shown as a thin line in the colour of the string."</p>
        {same.then(|| view! { <p>"Nothing differs."</p> })}
        <table><thead><tr><th>"What"</th><th class="num">"That version"</th><th class="num">"Now"</th></tr></thead>
            <tbody>{all.into_iter().map(|(w, b, a)| view! { <tr><td>{w}</td><td class="num">{b}</td><td class="num">{a}</td></tr> }).collect_view()}</tbody></table>
        <ul class="small">{said(&d.findings_new, "new:")}{said(&d.findings_gone, "gone:")}</ul>
    }
}
