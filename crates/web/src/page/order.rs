//! What is bought, how it is cut, and what it costs, with the working behind each figure.

use groundhold_order::{CuttingPlan, Line};
use groundhold_plan::Plan;
use leptos::prelude::*;

use super::App;
use crate::shown::money;

/// What is beside the drawing under "Order".
#[component]
pub fn Order() -> impl IntoView {
    let app = App::get();
    let body = move || app.plan().map(|p| view! { {quote(app, &p)}{cutting(&p)} });
    let table = move |_| {
        let Some(plan) = app.plan() else { return };
        for (name, text) in groundhold_exchange::tables_out(&plan) {
            if name.contains("order") || name.contains("cut") {
                super::take_file::hand_over(&name, "text/csv", &text);
            }
        }
    };
    view! {
        <div class="stack" data-test="order">
            <div class="row apart"><h2>"Order"</h2><button class="btn" on:click=table>"Tables as CSV"</button></div>
            {body}
        </div>
    }
}

fn line(app: App, plan: &Plan, l: &Line) -> impl IntoView + use<> {
    let stock = l.stock_length.map(|s| format!(", {} long", plan.job.about.units.run(s))).unwrap_or_default();
    let amount = l.amount.map_or("no price".into(), |a| a.shown());
    let traces: Vec<_> = l.trace.iter().cloned().chain(l.why.iter().cloned()).collect();
    let has = !traces.is_empty();
    let what = format!("{}{stock}", l.item);
    let quantity = format!("{} {}", groundhold_quantity::trim(l.bought, 2), l.unit.word());
    view! {
        <tr>
            <td>{what}<br/><span class="small soft">{l.what.clone()}</span></td>
            <td class="num">{quantity}</td>
            <td class="num">{if has { view! { <button class="btn plain" on:click=move |_| app.workings.set(traces.clone())>{amount}</button> }.into_any() } else { amount.into_any() }}</td>
        </tr>
    }
}

fn quote(app: App, plan: &Plan) -> impl IntoView + use<> {
    let rows = plan.take_off.lines.iter().map(|l| line(app, plan, l)).collect_view();
    let q = &plan.quote;
    let sum = |what: &'static str, m: groundhold_quantity::Money, strong: bool| {
        let shown = money(plan, m);
        view! { <tr class:sum=strong><td colspan="2">{what}</td><td class="num">{shown}</td></tr> }
    };
    let missing = (!q.missing.is_empty()).then(|| {
        let all = q.missing.join(", ");
        view! { <p class="wrong-one">"No price for: "{all}". The sum is without these."</p> }
    });
    let demo = plan.job.about.demo.then(|| view! { <p class="small">"The prices are invented demo data."</p> });
    view! {
        {demo}{missing}
        <div class="scroll-x" tabindex="0" role="region" aria-label="The order">
            <table data-test="quote">
                <thead><tr><th>"What"</th><th class="num">"How much"</th><th class="num">"Amount"</th></tr></thead>
                <tbody>{rows}
                    {sum("Net", q.net, true)}{sum("Margin", q.margin, false)}{sum("Tax", q.tax, false)}{sum("Total", q.total, true)}
                </tbody>
            </table>
        </div>
    }
}

fn cutting(plan: &Plan) -> impl IntoView + use<> {
    let lists = plan.take_off.cutting.iter().map(|c| list(plan, c)).collect_view();
    view! { <h2 data-test="cutting-list">"Cutting list"</h2>{lists} }
}

fn list(plan: &Plan, c: &CuttingPlan) -> impl IntoView + use<> {
    let units = plan.job.about.units;
    let proof = if c.proven {
        "proven to be the cheapest".to_string()
    } else {
        format!("at most {} above the least possible", c.gap().shown())
    };
    let bars = c
        .patterns()
        .iter()
        .map(|b| {
            let stock = b.stock.to_m().max(0.001);
            let mut x = 0.0;
            let mut parts = String::new();
            for l in &b.lengths {
                let w = l.to_m() / stock * 300.0;
                parts.push_str(&format!("<rect class=\"piece\" x=\"{x:.1}\" y=\"1\" width=\"{:.1}\" height=\"20\" rx=\"1.5\"/>", (w - 1.5).max(0.5)));
                x += w;
            }
            let words = b.lengths.iter().map(|l| units.length(*l)).collect::<Vec<_>>().join(" + ");
            let head = format!("{} × {}", b.count, units.run(b.stock));
            let left = format!("left over {}", units.length(b.offcut));
            view! {
                <li class="cut-bar"><strong>{head}</strong>
                    <svg viewBox="0 0 300 22" preserveAspectRatio="none" aria-hidden="true"><rect class="bar-stock" x=".5" y=".5" width="299" height="21"/><g inner_html=parts></g></svg>
                    <span>{words}", "{left}</span></li>
            }
        })
        .collect_view();
    let (title, label) = (c.material.clone(), c.material.clone());
    view! { <section class="card" aria-label=label><h3>{title}</h3><p class="small soft">{proof}</p><ul class="stack">{bars}</ul></section> }
}
