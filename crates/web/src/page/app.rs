//! What the page knows: the job with its history, what is shown of it, what is chosen.

use std::sync::Arc;

use groundhold_plan::Plan;
use groundhold_quantity::Point;
use groundhold_working::Trace;
use leptos::prelude::*;

use super::keeping::{self, Listed};
use crate::browser;
use crate::job::{Change, Deed, Entry, Files, History, demo};
use crate::live::Window;
use crate::shown::{Cost, Pace, Shown};

/// What is beside the drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Tab {
    /// The thing chosen, and the linked views.
    #[default]
    Ground,
    /// Levels and points.
    Measure,
    /// What speaks against it.
    Findings,
    /// What is bought and cut.
    Order,
    /// Jobs, versions, files, paper.
    Job,
}

/// A short word to the person.
#[derive(Debug, Clone, PartialEq)]
pub struct Toast {
    /// What it says.
    pub says: String,
    /// True where something went wrong.
    pub bad: bool,
}

/// Signals of the page.
#[derive(Clone, Copy)]
pub struct App {
    /// Under which id the job is stored.
    pub job_id: RwSignal<String>,
    /// The job's history, as far as it is stored and shown.
    pub history: RwSignal<History>,
    /// The same with deeds that are still being stored.
    pub ahead: StoredValue<History>,
    /// Jobs in this browser.
    pub jobs: RwSignal<Vec<Listed>>,
    /// True when another tab writes to this job.
    pub reader: RwSignal<bool>,
    /// Why the last entry could not be stored.
    pub unkept: RwSignal<Option<String>>,
    /// The plan of another version, shown over this one.
    pub other: RwSignal<Option<Arc<Plan>>>,
    /// True while a tap on the drawing means a point.
    pub tapping: RwSignal<bool>,
    /// The point that was tapped.
    pub tapped: RwSignal<Option<Point>>,
    /// What is shown now, while a finger drags too.
    pub shown: RwSignal<Arc<Shown>>,
    /// What was shown before the finger came down; figures are compared with it.
    pub settled: RwSignal<Arc<Shown>>,
    /// The element that is lit in every view; empty for none.
    pub lit: RwSignal<String>,
    /// What is beside the drawing.
    pub tab: RwSignal<Tab>,
    /// Only findings of this element are listed; empty for all.
    pub only: RwSignal<String>,
    /// The part of the ground in sight.
    pub window: RwSignal<Window>,
    /// A word to the person.
    pub toast: RwSignal<Option<Toast>>,
    /// Workings that are open, the first in front.
    pub workings: RwSignal<Vec<Trace>>,
    /// `both`, `board` or `panel`: what has the room on a small screen.
    pub share: RwSignal<&'static str>,
    /// Metres to which a dragged point is rounded.
    pub snap: RwSignal<f64>,
    /// Lines along which a dragged point is in line with others.
    pub in_line: RwSignal<Vec<(Point, Point)>>,
    /// How the phone lies, degrees forwards and sideways, once it tells.
    pub tilt: RwSignal<Option<(f64, f64)>>,
    /// True for the ground as it was.
    pub before: RwSignal<bool>,
    /// True for the ground in three dimensions.
    pub relief: RwSignal<bool>,
    /// True while a finger drags something.
    pub dragging: RwSignal<bool>,
    /// True for site mode.
    pub site: RwSignal<bool>,
    /// What remedies cost; `None` while it is being found out.
    pub costs: RwSignal<Option<Vec<Cost>>>,
}

impl App {
    /// With the demo job.
    pub fn new() -> App {
        let files = demo();
        let shown = Arc::new(Shown::of(&files, Pace::Whole, None));
        App {
            job_id: RwSignal::new(String::from("demo")),
            history: RwSignal::new(History::new(files.clone())),
            ahead: StoredValue::new(History::new(files)),
            jobs: RwSignal::new(vec![]),
            reader: RwSignal::new(false),
            unkept: RwSignal::new(None),
            other: RwSignal::new(None),
            tapping: RwSignal::new(false),
            tapped: RwSignal::new(None),
            shown: RwSignal::new(shown.clone()),
            settled: RwSignal::new(shown),
            lit: RwSignal::new(String::new()),
            tab: RwSignal::new(Tab::Ground),
            only: RwSignal::new(String::new()),
            window: RwSignal::new(Window::default()),
            toast: RwSignal::new(None),
            workings: RwSignal::new(vec![]),
            share: RwSignal::new("both"),
            snap: RwSignal::new(0.05),
            in_line: RwSignal::new(vec![]),
            tilt: RwSignal::new(None),
            before: RwSignal::new(false),
            relief: RwSignal::new(false),
            dragging: RwSignal::new(false),
            site: RwSignal::new(false),
            costs: RwSignal::new(None),
        }
    }

    /// The page's own, from anywhere in it.
    pub fn get() -> App {
        expect_context::<App>()
    }

    /// The plan in sight.
    pub fn plan(&self) -> Option<Arc<Plan>> {
        self.shown.with(|s| s.plan.clone())
    }

    /// The texts as they stand, without what a finger is dragging.
    pub fn files(&self) -> Files {
        self.ahead.with_value(|h| h.files().clone())
    }

    /// Shows texts while a finger drags; nothing is kept of them.
    pub fn preview(&self, files: &Files) {
        let last = self.shown.with_untracked(|s| s.plan.clone());
        self.shown.set(Arc::new(Shown::of(files, Pace::Quick, last.as_ref())));
    }

    /// Shows the texts as they stand, planned in full.
    pub fn settle(&self) {
        let files = self.files();
        let last = self.shown.with_untracked(|s| s.plan.clone());
        let shown = Arc::new(Shown::of(&files, Pace::Whole, last.as_ref()));
        self.shown.set(shown.clone());
        self.settled.set(shown);
    }

    /// Makes a change that leads to these texts.
    pub fn change(&self, says: impl Into<String>, after: &Files) {
        let change = self.ahead.with_value(|h| Change::between(says, h.files(), after));
        match change {
            Some(change) => self.deed(Deed::Did(change)),
            None => self.settle(),
        }
    }

    /// Writes a deed down; what comes of it is shown as soon as it is written.
    pub fn deed(&self, deed: Deed) {
        if self.reader.get_untracked() {
            self.say_bad("Another tab is working on this job. Choose \"Work here\" first.");
            self.settle();
            return;
        }
        let n = self.ahead.with_value(History::next);
        let entry = Entry { n, at: browser::now(), deed };
        let taken = self.ahead.try_update_value(|h| h.take(&entry)).unwrap_or(Ok(()));
        match taken {
            Ok(()) => keeping::enqueue(*self, entry),
            Err(misfit) => self.say_bad(misfit.to_string()),
        }
    }

    /// Takes the last change back.
    pub fn undo(&self) {
        if self.ahead.with_value(|h| h.to_undo().is_some()) {
            self.deed(Deed::Undid);
        }
    }

    /// Makes the last change taken back again.
    pub fn redo(&self) {
        if self.ahead.with_value(|h| h.to_redo().is_some()) {
            self.deed(Deed::Redid);
        }
    }

    /// What was typed into a field and not yet taken, if anything.
    pub fn draft(&self, field: &str) -> Option<String> {
        browser::kept(&format!("draft {} {field}", self.job_id.get_untracked()))
    }

    /// Keeps what is being typed, at every keystroke, so that a closed tab loses none of it; nothing takes it out.
    pub fn keep_draft(&self, field: &str, text: Option<&str>) {
        browser::keep(&format!("draft {} {field}", self.job_id.get_untracked()), text);
    }

    /// Goes to a tab; on a small screen it gets the room it needs.
    pub fn go(&self, tab: Tab) {
        self.tab.set(tab);
        self.share.set(if matches!(tab, Tab::Ground | Tab::Findings) { "both" } else { "panel" });
        if let Some(panel) = browser::document().and_then(|d| d.query_selector(".panel").ok().flatten()) {
            panel.set_scroll_top(0);
        }
    }

    /// Says something.
    pub fn say(&self, says: impl Into<String>) {
        self.toast.set(Some(Toast { says: says.into(), bad: false }));
    }

    /// Says that something went wrong.
    pub fn say_bad(&self, says: impl Into<String>) {
        self.toast.set(Some(Toast { says: says.into(), bad: true }));
    }

    /// Chooses an element in every view.
    pub fn choose(&self, element: &str) {
        self.lit.set(element.to_string());
    }
}
