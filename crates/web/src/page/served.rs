//! When the page comes from a server that serves a job folder: the job is taken from there, and each change goes back.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Headers, RequestInit, Response};

use super::App;
use super::keeping::begin_job;
use crate::browser;
use crate::job::Files;

const AT: &str = "api/job";

/// What the server said.
struct Said {
    status: u16,
    tag: String,
    files: Option<Files>,
}

async fn ask(method: &str, tag: &str, body: Option<&str>) -> Option<Said> {
    let window = browser::window()?;
    let headers = Headers::new().ok()?;
    headers.set("Content-Type", "application/json").ok()?;
    if !tag.is_empty() {
        headers.set("If-Match", tag).ok()?;
    }
    let init = RequestInit::new();
    init.set_method(method);
    init.set_headers(&headers.into());
    if let Some(b) = body {
        init.set_body(&b.into());
    }
    let answer = wasm_bindgen_futures::JsFuture::from(window.fetch_with_str_and_init(AT, &init)).await.ok()?;
    let answer: Response = answer.dyn_into().ok()?;
    let tag = answer.headers().get("ETag").ok().flatten().unwrap_or_default();
    let text = wasm_bindgen_futures::JsFuture::from(answer.text().ok()?).await.ok()?.as_string()?;
    Some(Said { status: answer.status(), tag, files: read(&text) })
}

#[derive(serde::Deserialize, serde::Serialize)]
struct Body {
    files: std::collections::BTreeMap<String, String>,
}

fn read(text: &str) -> Option<Files> {
    let body: Body = serde_json::from_str(text).ok()?;
    let files = body.files.iter().fold(Files::default(), |f, (name, text)| f.with(name, text));
    (!files.job().is_empty()).then_some(files)
}

fn body(files: &Files) -> Option<String> {
    let files = files.all().map(|(n, t)| (n.to_string(), t.to_string())).collect();
    serde_json::to_string(&Body { files }).ok()
}

/// Takes the served job, if there is one, and sends changes back from then on.
pub fn begin(app: App) {
    leptos::task::spawn_local(async move {
        let Some(said) = ask("GET", "", None).await.filter(|s| s.status == 200) else { return };
        let Some(files) = said.files else { return };
        if app.files() != files {
            let known =
                browser::kept("served job").filter(|id| app.jobs.with_untracked(|j| j.iter().any(|l| l.id == *id)));
            if let Some(id) = known {
                super::keeping::open_job(app, &id).await;
                if app.files() != files {
                    app.change("as the server has it", &files);
                }
            } else {
                begin_job(app, files).await;
            }
            browser::keep("served job", Some(&app.job_id.get_untracked()));
        }
        send_back(app, app.job_id.get_untracked(), said.tag);
    });
}

/// After each change the texts go to the server; one at a time, the latest last.
fn send_back(app: App, job: String, tag: String) {
    let tag = StoredValue::new(tag);
    let busy = StoredValue::new(false);
    let sent = StoredValue::new(app.files());
    Effect::new(move |_| {
        app.history.track();
        if app.job_id.get_untracked() != job || busy.get_value() || sent.get_value() == app.files() {
            return;
        }
        busy.set_value(true);
        let job = job.clone();
        leptos::task::spawn_local(async move {
            while app.job_id.get_untracked() == job && sent.get_value() != app.files() {
                let files = app.files();
                let Some(body) = body(&files) else { break };
                match ask("PUT", &tag.get_value(), Some(&body)).await {
                    Some(s) if s.status == 200 => {
                        tag.set_value(s.tag);
                        sent.set_value(files);
                    }
                    Some(s) if s.status == 412 => {
                        tag.set_value(s.tag);
                        app.say_bad("Somebody else wrote to this job on the server meanwhile. What is there is taken in as a change: Undo brings yours back and sends it.");
                        if let Some(theirs) = s.files {
                            sent.set_value(theirs.clone());
                            app.change("as the server has it", &theirs);
                        }
                        break;
                    }
                    Some(s) => {
                        app.say_bad(format!(
                            "The server did not take the change (answer {}). It is kept here.",
                            s.status
                        ));
                        break;
                    }
                    // No network: kept here; the next change tries again.
                    None => break,
                }
            }
            busy.set_value(false);
        });
    });
}
