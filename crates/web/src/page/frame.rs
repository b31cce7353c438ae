//! Where does everything stand? The strip on top, the drawing, what is beside it, and the way from one to the other.

use leptos::prelude::*;

use super::board::Board;
use super::findings::Findings;
use super::jobs::Jobs;
use super::measure::Measure;
use super::order::Order;
use super::site::Site;
use super::strip::Strip;
use super::things::Things;
use super::working::Working;
use super::{App, Tab, marks};

/// The whole page.
#[component]
pub fn Frame() -> impl IntoView {
    let app = App::new();
    provide_context(app);
    super::costing::keep_costs(app);
    super::keeping::begin(app);
    view! {
        <div class="frame">
            <Strip/>
            <main class="middle" data-share=move || app.share.get()>
                <Board/>
                <section class="panel" aria-label="Details" tabindex="-1">
                    <button class="grab" aria-label="More or less room for the drawing" data-test="share"
                        on:click=move |_| app.share.update(|s| *s = if *s == "both" { "panel" } else { "both" })><span></span></button>
                    <Kept/>
                    {move || match app.tab.get() {
                        Tab::Ground => view! { <Things/> }.into_any(),
                        Tab::Measure => view! { <Measure/> }.into_any(),
                        Tab::Findings => view! { <Findings/> }.into_any(),
                        Tab::Order => view! { <Order/> }.into_any(),
                        Tab::Job => view! { <Jobs/> }.into_any(),
                    }}
                </section>
            </main>
            <Tabs/>
        </div>
        <Working/>
        <Show when=move || app.site.get()><Site/></Show>
        <Word/>
    }
}

/// The tabs.
#[component]
fn Tabs() -> impl IntoView {
    let app = App::get();
    let tab = move |t: Tab, name: &'static str| {
        let picture = marks::tab_picture(name);
        view! {
            <button aria-current=move || (app.tab.get() == t).then_some("page") data-test=format!("tab-{}", name.to_lowercase())
                on:click=move |_| app.go(t)>
                <svg viewBox="0 0 24 24" aria-hidden="true" inner_html=picture></svg>{name}
            </button>
        }
    };
    let site = marks::tab_picture("Site");
    view! {
        <nav class="nav" aria-label="Parts of the job">
            {tab(Tab::Ground, "Ground")}
            {tab(Tab::Measure, "Measure")}
            {tab(Tab::Findings, "Findings")}
            {tab(Tab::Order, "Order")}
            <button data-test="tab-site" on:click=move |_| app.site.set(true)>
                <svg viewBox="0 0 24 24" aria-hidden="true" inner_html=site></svg>"Site"
            </button>
            {tab(Tab::Job, "Job")}
        </nav>
    }
}

/// What stands against keeping: another tab, or a storage that refuses.
#[component]
fn Kept() -> impl IntoView {
    let app = App::get();
    view! {
        <Show when=move || app.reader.get()>
            <div class="card" role="status" data-test="reader">
                <p>"Another tab is working on this job; this one follows it."</p>
                <button class="btn" on:click=move |_| super::keeping::hold(app, true)>"Work here"</button>
            </div>
        </Show>
        <Show when=move || app.unkept.get().is_some()>
            <div class="card wrong-one" role="alert" data-test="unkept">
                <p><strong>"Not stored: "</strong>{move || app.unkept.get()}". What you do goes on in this page, but is lost when it is closed. Hand the job out as a file now."</p>
                <button class="btn main" on:click=move |_| super::jobs::hand_out(app)>"Job as a file"</button>
            </div>
        </Show>
    }
}

/// A word to the person, read out as well.
#[component]
fn Word() -> impl IntoView {
    let app = App::get();
    view! {
        <div aria-live="polite" role="status">
            {move || app.toast.get().map(|t| view! {
                <div class="toast" class:bad=t.bad data-test="toast">
                    <span>{t.says}</span>
                    <button class="btn" on:click=move |_| app.toast.set(None)>"Close"</button>
                </div>
            })}
        </div>
    }
}
