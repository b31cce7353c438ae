//! What the page knows: the job with its history, what is shown of it, what is chosen.

use std::sync::Arc;

use groundhold_plan::Plan;
use groundhold_working::Trace;
use leptos::prelude::*;

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
    /// The job's history.
    pub history: RwSignal<History>,
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
    /// True for the ground as it was.
    pub before: RwSignal<bool>,
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
            history: RwSignal::new(History::new(files)),
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
            before: RwSignal::new(false),
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
        self.history.with_untracked(|h| h.files().clone())
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
        let change = self.history.with_untracked(|h| Change::between(says, h.files(), after));
        match change {
            Some(change) => self.deed(Deed::Did(change)),
            None => self.settle(),
        }
    }

    /// Writes a deed down and shows what came of it.
    pub fn deed(&self, deed: Deed) {
        let n = self.history.with_untracked(History::next);
        let entry = Entry { n, at: browser::now(), deed };
        let taken = self.history.try_update(|h| h.take(&entry)).unwrap_or(Ok(()));
        if let Err(misfit) = taken {
            self.say_bad(misfit.to_string());
            return;
        }
        self.settle();
    }

    /// Takes the last change back.
    pub fn undo(&self) {
        if self.history.with_untracked(|h| h.to_undo().is_some()) {
            self.deed(Deed::Undid);
        }
    }

    /// Makes the last change taken back again.
    pub fn redo(&self) {
        if self.history.with_untracked(|h| h.to_redo().is_some()) {
            self.deed(Deed::Redid);
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
