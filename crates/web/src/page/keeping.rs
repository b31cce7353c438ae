//! Where are jobs kept, and what happens when the storage is full or another tab has the job open?
//!
//! An entry is written to the browser's database before what it does is shown. Where the browser refuses, the work goes on
//! in the page, the person is told to hand the job out as a file, and every later entry tries again.

use std::cell::RefCell;

use futures_channel::mpsc;
use futures_util::StreamExt;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};

use super::App;
use crate::browser::{self, BASES, Database, Held, JOBS, JOURNAL, Word};
use crate::job::{Entry, Files, History, demo, pack, unpack};

/// A job in the list.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Listed {
    /// Its id.
    #[serde(default)]
    pub id: String,
    /// What it is called.
    pub title: String,
    /// When it was last written to.
    pub at: String,
}

thread_local! {
    static DATABASE: RefCell<Option<Database>> = const { RefCell::new(None) };
    static HELD: RefCell<Option<Held>> = const { RefCell::new(None) };
    static WORD: RefCell<Option<Word>> = const { RefCell::new(None) };
    static QUEUE: RefCell<Option<mpsc::UnboundedSender<Entry>>> = const { RefCell::new(None) };
}

fn database() -> Option<Database> {
    DATABASE.with_borrow(Clone::clone)
}

fn key(job: &str, n: u32) -> String {
    format!("{job}|{n:010}")
}

/// Opens the storage and the job that was open last.
pub fn begin(app: App) {
    let (send, mut receive) = mpsc::unbounded::<Entry>();
    QUEUE.set(Some(send));
    WORD.set(Some(Word::new(move |job| {
        if app.reader.get_untracked() && job == app.job_id.get_untracked() {
            leptos::task::spawn_local(follow(app));
        }
    })));
    leptos::task::spawn_local(async move {
        match browser::open().await {
            Ok(db) => DATABASE.set(Some(db)),
            Err(why) => app.unkept.set(Some(why)),
        }
        let last = browser::kept("last job").unwrap_or_else(|| "demo".into());
        open_job(app, &last).await;
        list(app).await;
        super::served::begin(app);
        let mut lost: Vec<Entry> = vec![];
        while let Some(entry) = receive.next().await {
            lost.push(entry.clone());
            match store(app, &lost).await {
                Ok(()) => {
                    lost.clear();
                    app.unkept.set(None);
                }
                Err(why) => app.unkept.set(Some(why)),
            }
            show(app, &entry);
        }
    });
}

/// Gives an entry to be stored, then shown.
pub fn enqueue(app: App, entry: Entry) {
    let sent = QUEUE.with_borrow(|q| q.as_ref().is_some_and(|q| q.unbounded_send(entry.clone()).is_ok()));
    if !sent {
        show(app, &entry);
    }
}

fn show(app: App, entry: &Entry) {
    let taken = app.history.try_update(|h| h.take(entry)).unwrap_or(Ok(()));
    if let Err(misfit) = taken {
        app.say_bad(misfit.to_string());
    }
    // While more entries wait, only the last is planned.
    if app.ahead.with_value(History::next) == app.history.with_untracked(History::next) {
        app.settle();
    }
}

async fn store(app: App, entries: &[Entry]) -> Result<(), String> {
    let Some(db) = database() else { return Err("this browser keeps nothing here".into()) };
    let id = app.job_id.get_untracked();
    let mut rows = vec![];
    for e in entries {
        let text = serde_json::to_string(e).map_err(|e| e.to_string())?;
        rows.push((JOURNAL, key(&id, e.n), text));
    }
    let title = app.ahead.with_value(|h| h.files().title());
    let at = browser::now();
    let listed = Listed { id: String::new(), title, at };
    rows.push((JOBS, id.clone(), serde_json::to_string(&listed).map_err(|e| e.to_string())?));
    db.put(&rows).await?;
    if entries.iter().any(|e| e.n == 1) {
        browser::ask_to_keep();
    }
    WORD.with_borrow(|w| {
        if let Some(w) = w {
            w.say(&id);
        }
    });
    Ok(())
}

/// Brings the list of jobs up to date.
pub async fn list(app: App) {
    let Some(db) = database() else { return };
    let Ok(rows) = db.all(JOBS, "").await else { return };
    let one = |(id, text): (String, String)| serde_json::from_str::<Listed>(&text).ok().map(|l| Listed { id, ..l });
    let mut all: Vec<Listed> = rows.into_iter().filter_map(one).collect();
    all.sort_by(|a, b| b.at.cmp(&a.at));
    app.jobs.set(all);
}

/// The texts a job began with, and its journal.
async fn load(id: &str) -> Result<Option<(Files, Vec<Entry>)>, String> {
    let Some(db) = database() else { return Ok(None) };
    let base = match db.get(BASES, id).await? {
        Some(text) => unpack(&text).map_err(|e| e.to_string())?,
        None if id == "demo" => demo(),
        None => return Ok(None),
    };
    let rows = db.all(JOURNAL, &format!("{id}|")).await?;
    let mut entries = vec![];
    for (key, text) in rows {
        entries.push(serde_json::from_str(&text).map_err(|e| format!("entry {key}: {e}"))?);
    }
    Ok(Some((base, entries)))
}

/// Opens a job.
pub async fn open_job(app: App, id: &str) {
    let loaded = load(id).await;
    let (id, base, entries) = match loaded {
        Ok(Some((base, entries))) => (id.to_string(), base, entries),
        Ok(None) => ("demo".to_string(), demo(), vec![]),
        Err(why) => {
            app.say_bad(format!("The job could not be read: {why}. Nothing was changed in the storage."));
            return;
        }
    };
    let (history, misfit) = History::replay(base, &entries);
    if let Some(m) = misfit {
        app.say_bad(format!("The journal stops fitting: {m}. What stood before that is shown."));
    }
    take_up(app, &id, history);
}

fn take_up(app: App, id: &str, history: History) {
    if let Some(held) = HELD.take() {
        held.free();
    }
    browser::keep("last job", Some(id));
    app.job_id.set(id.to_string());
    app.ahead.set_value(history.clone());
    app.history.set(history);
    app.choose("");
    app.settle();
    super::board::fit(app);
    hold(app, false);
}

/// Asks to be the tab that writes.
pub fn hold(app: App, take_over: bool) {
    let id = app.job_id.get_untracked();
    let asked = id.clone();
    let held = browser::lock(&id, take_over, move |mine| {
        if app.job_id.get_untracked() == asked {
            let before = app.reader.get_untracked();
            app.reader.set(!mine);
            if mine && before {
                leptos::task::spawn_local(follow(app));
            }
        }
    });
    HELD.set(held);
}

/// Takes up what another tab has written.
async fn follow(app: App) {
    let id = app.job_id.get_untracked();
    if let Ok(Some((base, entries))) = load(&id).await {
        let (history, _) = History::replay(base, &entries);
        app.ahead.set_value(history.clone());
        app.history.set(history);
        app.settle();
    }
}

/// Keeps texts as a new job and opens it. Gives up nothing: the job that was open stays in the list.
pub async fn begin_job(app: App, files: Files) {
    let id = format!("job-{}", js_sys::Date::now() as u64);
    let title = files.title();
    let listed = Listed { id: String::new(), title, at: browser::now() };
    let stored = match (database(), serde_json::to_string(&listed)) {
        (Some(db), Ok(text)) => db.put(&[(BASES, id.clone(), pack(&files)), (JOBS, id.clone(), text)]).await,
        _ => Err("this browser keeps nothing here".into()),
    };
    if let Err(why) = stored {
        app.unkept.set(Some(why));
    }
    take_up(app, &id, History::new(files));
    list(app).await;
}

/// Takes a job out of the storage, with its journal.
pub async fn forget(app: App, id: &str) {
    let Some(db) = database() else { return };
    for (store, prefix) in [(JOURNAL, format!("{id}|")), (BASES, id.to_string()), (JOBS, id.to_string())] {
        if let Err(why) = db.remove(store, &prefix).await {
            app.say_bad(why);
            return;
        }
    }
    if app.job_id.get_untracked() == id {
        open_job(app, "demo").await;
    }
    list(app).await;
}
