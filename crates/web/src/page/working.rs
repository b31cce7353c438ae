//! The working behind a figure: what was put in, each line as written by hand, where the formula is published.

use groundhold_working::{Trace, Value};
use leptos::html;
use leptos::prelude::*;

use super::App;

/// The dialog; open while there is a working to show.
#[component]
pub fn Working() -> impl IntoView {
    let app = App::get();
    let dialog = NodeRef::<html::Dialog>::new();
    Effect::new(move |_| {
        let Some(d) = dialog.get() else { return };
        let open = app.workings.with(|w| !w.is_empty());
        if open && !d.open() {
            // Refused only for a dialog that is open already.
            let _ = d.show_modal();
        } else if !open && d.open() {
            d.close();
        }
    });
    let sheets = move || app.workings.get().into_iter().map(sheet).collect_view();
    view! {
        <dialog node_ref=dialog aria-labelledby="working-title" data-test="working" on:close=move |_| app.workings.set(vec![])>
            <div class="inside">
                <div class="row apart">
                    <h2 id="working-title">"The working"</h2>
                    <button class="btn" on:click=move |_| app.workings.set(vec![])>"Close"</button>
                </div>
                {sheets}
            </div>
        </dialog>
    }
}

/// A number in its unit.
fn said(v: &Value, unit: &str) -> String {
    match v {
        Value::One(x) => format!("{} {unit}", groundhold_quantity::trim(*x, 4)),
        other => format!("{other:?}"),
    }
}

fn sheet(trace: Trace) -> impl IntoView {
    let w = trace.working;
    let worked = trace.sheet();
    let given = w
        .inputs
        .iter()
        .zip(&trace.given)
        .map(|(input, v)| {
            let text = said(v, input.unit.0);
            view! { <tr><td>{input.symbol}</td><td>{input.words}</td><td class="num">{text}</td></tr> }
        })
        .collect_view();
    let lines = match worked {
        Ok(worked) => worked
            .lines
            .iter()
            .map(|l| view! { <li class="working-line">{l.to_string()}</li> })
            .collect_view()
            .into_any(),
        Err(refused) => view! { <li class="wrong-one">{refused.to_string()}</li> }.into_any(),
    };
    view! {
        <article class="stack">
            <h3>{w.title}</h3>
            <p class="small soft">{w.name}</p>
            <ol>{lines}</ol>
            <p class="source"><strong>"Source: "</strong>{w.source.work}", "{w.source.place}</p>
            <p class="small"><strong>"Not for: "</strong>{w.not_for}</p>
            <details>
                <summary>"What was put in"</summary>
                <div class="scroll-x"><table><tbody>{given}</tbody></table></div>
            </details>
        </article>
    }
}
