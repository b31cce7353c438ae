//! Jobs of this browser, versions of this one, files in and out, sheets, and how the page looks.

use leptos::prelude::*;

use super::App;
use super::compared::Compared;
use super::form::{Form, typed};
use super::keeping::{begin_job, forget, open_job};
use super::paper::Paper;
use super::take_file::{hand_over, take_text_file};
use crate::browser;
use crate::job::{Deed, Slope, fresh, fresh_from, pack, unpack};
use groundhold_quantity::{Length, parse};

/// What is beside the drawing under "Job".
#[component]
pub fn Jobs() -> impl IntoView {
    view! {
        <div class="stack" data-test="jobs">
            <NewJob/>
            <Versions/>
            <Paper/>
            <InAndOut/>
            <details class="card"><summary><strong>"About this job"</strong></summary><Form element="job" kind="job"/></details>
            <Kept/>
            <Look/>
        </div>
    }
}

/// Hands the job out as one file.
pub fn hand_out(app: App) {
    let files = app.files();
    let name: String =
        files.title().chars().map(|c| if c.is_alphanumeric() { c.to_ascii_lowercase() } else { '-' }).collect();
    if !hand_over(&format!("{name}.groundhold.txt"), "text/plain", &pack(&files)) {
        app.say_bad("The browser did not take the file.");
    }
}

/// A new job: two numbers, or empty.
#[component]
fn NewJob() -> impl IntoView {
    let app = App::get();
    let (name, fall, over, width) = (
        RwSignal::new("My slope".to_string()),
        RwSignal::new("600 mm".to_string()),
        RwSignal::new("7 m".to_string()),
        RwSignal::new("6 m".to_string()),
    );
    let tiers = RwSignal::new("2".to_string());
    let length = |what: &str, t: &str| {
        parse::<Length>(t)
            .ok()
            .filter(|l| *l > Length::ZERO)
            .ok_or(format!("{what}: found `{t}`, expected a length with its unit, such as 7 m"))
    };
    let wrong = RwSignal::new(String::new());
    let begin = move |_| {
        let made = (|| {
            let n: u32 = tiers
                .get_untracked()
                .trim()
                .parse()
                .ok()
                .filter(|n| (1..=12).contains(n))
                .ok_or("level areas: expected 1 to 12")?;
            Ok::<_, String>(Slope {
                name: name.get_untracked(),
                fall: length("falls", &fall.get_untracked())?,
                over: length("over", &over.get_untracked())?,
                width: length("wide", &width.get_untracked())?,
                tiers: n,
                soil: "silty-clay".into(),
            })
        })();
        match made {
            Ok(slope) => leptos::task::spawn_local(begin_job(app, fresh_from(&slope))),
            Err(why) => wrong.set(why),
        }
    };
    let empty = move |_| leptos::task::spawn_local(begin_job(app, fresh(&name.get_untracked(), Length::m(10.0))));
    let field = move |label: &'static str, test: &'static str, s: RwSignal<String>| {
        view! { <div class="field"><label>{label}<input autocomplete="off" data-test=test prop:value=move || s.get() on:input=move |e| s.set(typed(&e))/></label></div> }
    };
    view! {
        <section class="card" aria-label="A new job">
            <h2>"A new job"</h2>
            <p class="small soft">"Two numbers are enough to begin with; the rest is asked when it is needed."</p>
            <div class="grid2">
                {field("Called", "new-name", name)}{field("The ground falls", "new-fall", fall)}{field("over", "new-over", over)}{field("and is wide", "new-width", width)}{field("Level areas", "new-tiers", tiers)}
            </div>
            <span class="field"><span class="wrong" role="alert">{move || wrong.get()}</span></span>
            <div class="row">
                <button class="btn main" data-test="new-slope" on:click=begin>"Begin with this slope"</button>
                <button class="btn" data-test="new-empty" on:click=empty>"Begin with a level book"</button>
            </div>
        </section>
    }
}

/// Named states, and what differs between two of them.
#[component]
fn Versions() -> impl IntoView {
    let app = App::get();
    let name = RwSignal::new(String::new());
    let against = RwSignal::new(None::<usize>);
    let keep = move |_| {
        let n = name.get_untracked();
        let n = if n.trim().is_empty() { format!("version of {}", browser::now().replace('T', " ")) } else { n };
        app.deed(Deed::Named(n));
        name.set(String::new());
    };
    let list = move || {
        app.history.with(|h| h.versions().to_vec()).into_iter().enumerate().map(|(i, v)| {
            let files = v.files.clone();
            let (label, back) = (v.name.clone(), v.name.clone());
            let go_back = move |_| {
                app.change(format!("back to {back}"), &files);
                app.say(format!("Back to {back}. Undo brings the other back."));
            };
            view! {
                <li class="row apart">
                    <span><strong>{label}</strong><br/><span class="small soft">{v.at.replace('T', " ")}</span></span>
                    <span class="row">
                        <button class="btn" data-test="compare" aria-pressed=move || (against.get() == Some(i)).to_string()
                            on:click=move |_| against.update(|a| *a = if *a == Some(i) { None } else { Some(i) })>"Compare"</button>
                        <button class="btn" on:click=go_back>"Go back to it"</button>
                    </span>
                </li>
            }
        }).collect_view()
    };
    let standing = move || app.history.with(|h| h.standing().take(12).map(String::from).collect::<Vec<_>>());
    view! {
        <section class="card" aria-label="Versions">
            <h2>"Versions"</h2>
            <div class="row">
                <div class="field"><label>"Name for the state as it is now"<input autocomplete="off" data-test="version-name" prop:value=move || name.get() on:input=move |e| name.set(typed(&e))/></label></div>
                <button class="btn main" data-test="keep-version" on:click=keep>"Keep it"</button>
            </div>
            <ul class="stack">{list}</ul>
            {move || against.get().map(|i| view! { <Compared version=i/> })}
            <details><summary>"What was done, latest first"</summary>
                <ol class="small">{move || standing().into_iter().map(|s| view! { <li>{s}</li> }).collect_view()}</ol>
            </details>
        </section>
    }
}

/// The job as one file, in and out.
#[component]
fn InAndOut() -> impl IntoView {
    let app = App::get();
    let take = move |e: web_sys::Event| {
        take_text_file(&e, move |name, text| match unpack(&text) {
            Ok(files) => {
                leptos::task::spawn_local(begin_job(app, files));
                app.say(format!("{name} was taken in as a job of its own."));
            }
            Err(why) => app.say_bad(format!("{name}: {why}")),
        });
    };
    view! {
        <section class="card" aria-label="Files">
            <h2>"Files"</h2>
            <div class="row">
                <button class="btn" data-test="export" on:click=move |_| hand_out(app)>"Job as a file"</button>
                <label class="btn">"Take a job in"<input class="unseen" type="file" accept=".txt,.toml,text/plain" data-test="import" on:change=take/></label>
            </div>
            <TextOfJob/>
        </section>
    }
}

/// The job file itself, for those who write it by hand; what is wrong stands under it, and nothing typed is lost.
#[component]
fn TextOfJob() -> impl IntoView {
    let app = App::get();
    let text = RwSignal::new(app.draft("job text").unwrap_or_else(|| app.files().job().to_string()));
    let typed_in = move |e: web_sys::Event| {
        let t = typed(&e);
        app.keep_draft("job text", Some(&t));
        text.set(t);
    };
    let wrong = move || {
        let files = app.files().with(crate::job::JOB, &text.get());
        files.read().problems.iter().take(5).map(ToString::to_string).collect::<Vec<_>>()
    };
    let take = move |_| {
        app.change("job file written by hand", &app.files().with(crate::job::JOB, &text.get_untracked()));
        app.keep_draft("job text", None);
    };
    Effect::new(move |_| {
        app.history.track();
        if app.draft("job text").is_none() {
            text.set(app.files().job().to_string());
        }
    });
    view! {
        <details>
            <summary>"The job file itself"</summary>
            <div class="stack">
                <div class="field"><label>"job.toml"<textarea rows="14" spellcheck="false" wrap="off" data-test="job-text" prop:value=move || text.get() on:input=typed_in></textarea></label></div>
                <div class="wrong-list">{move || wrong().into_iter().map(|w| view! { <div class="wrong-one"><code>{w}</code></div> }).collect_view()}</div>
                <button class="btn" data-test="take-text" on:click=take>"Take it"</button>
            </div>
        </details>
    }
}

/// Jobs kept in this browser.
#[component]
fn Kept() -> impl IntoView {
    let app = App::get();
    let list = move || {
        app.jobs.get().into_iter().map(|j| {
            let (open, gone, title) = (j.id.clone(), j.id.clone(), j.title.clone());
            let here = j.id == app.job_id.get();
            let forget_it = move |_| {
                let sure = browser::window().and_then(|w| w.confirm_with_message(&format!("Take \"{title}\" out of this browser, with everything that was done to it?")).ok());
                if sure == Some(true) {
                    let id = gone.clone();
                    leptos::task::spawn_local(async move { forget(app, &id).await });
                }
            };
            view! {
                <li class="row apart">
                    <span><strong>{j.title.clone()}</strong>{here.then_some(" (open)")}<br/><span class="small soft">{j.at.replace('T', " ")}</span></span>
                    <span class="row">
                        <button class="btn" on:click=move |_| { let id = open.clone(); leptos::task::spawn_local(async move { open_job(app, &id).await }); }>"Open"</button>
                        <button class="btn bad" on:click=forget_it>"Forget"</button>
                    </span>
                </li>
            }
        }).collect_view()
    };
    view! {
        <section class="card" aria-label="Jobs in this browser">
            <h2>"Jobs in this browser"</h2>
            <ul class="stack" data-test="job-list">{list}</ul>
            <button class="btn" data-test="open-demo" on:click=move |_| leptos::task::spawn_local(async move { open_job(app, "demo").await })>"Open the demo (invented)"</button>
        </section>
    }
}

/// Light, dark, high contrast.
#[component]
fn Look() -> impl IntoView {
    let look = RwSignal::new(browser::kept("look").unwrap_or_else(|| "auto".into()));
    Effect::new(move |_| {
        let l = look.get();
        browser::keep("look", Some(&l));
        if let Some(root) = browser::document().and_then(|d| d.document_element()) {
            // An attribute of the root is never refused.
            let _ = root.set_attribute("data-look", &l);
        }
    });
    let one = move |key: &'static str, words: &'static str| {
        view! { <button class="pick" data-test=format!("look-{key}") aria-pressed=move || (look.get() == key).to_string() on:click=move |_| look.set(key.into())>{words}</button> }
    };
    view! {
        <section class="card" aria-label="How the page looks">
            <h2>"Look"</h2>
            <div class="picks">{one("auto", "As the device")}{one("light", "Light")}{one("dark", "Dark")}{one("contrast", "High contrast")}</div>
        </section>
    }
}
