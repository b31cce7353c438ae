//! A task before it has its place in time, and the book in which tasks find what they need.

use groundhold_working::Trace;

use crate::rates::{Rate, hours_of};
use crate::{Need, PersonHours, Works};

/// Kinds of task, in the order in which one element goes through them. The word is the last part of a task's id.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Kind {
    Survey,
    Approvals,
    Services,
    Protect,
    Strip,
    Cut,
    Outlet,
    Trench,
    Sump,
    Holes,
    Footing,
    Posts,
    Base,
    Concrete,
    Courses,
    Boards,
    Pipe,
    Stone,
    Backfill,
    Fill,
    Steps,
    Ramp,
    Capping,
    Guard,
    Pave,
    Topsoil,
    Turf,
    Clean,
    Record,
}

impl Kind {
    pub(crate) fn word(self) -> &'static str {
        match self {
            Kind::Survey => "survey",
            Kind::Approvals => "approvals",
            Kind::Services => "services",
            Kind::Protect => "protect",
            Kind::Strip => "strip",
            Kind::Cut => "cut",
            Kind::Outlet => "outlet",
            Kind::Trench => "trench",
            Kind::Sump => "sump",
            Kind::Holes => "holes",
            Kind::Footing => "footing",
            Kind::Posts => "posts",
            Kind::Base => "base",
            Kind::Concrete => "concrete",
            Kind::Courses => "courses",
            Kind::Boards => "boards",
            Kind::Pipe => "pipe",
            Kind::Stone => "stone",
            Kind::Backfill => "backfill",
            Kind::Fill => "fill",
            Kind::Steps => "steps",
            Kind::Ramp => "ramp",
            Kind::Capping => "capping",
            Kind::Guard => "guard",
            Kind::Pave => "pave",
            Kind::Topsoil => "topsoil",
            Kind::Turf => "turf",
            Kind::Clean => "clean",
            Kind::Record => "record",
        }
    }
}

/// Something to be looked at before a task.
pub(crate) struct Hold {
    pub(crate) name: &'static str,
    pub(crate) checks: Vec<String>,
}

pub(crate) struct Draft {
    pub(crate) kind: Kind,
    pub(crate) id: String,
    pub(crate) element: String,
    pub(crate) name: String,
    pub(crate) how: String,
    pub(crate) quantity: f64,
    pub(crate) unit: &'static str,
    pub(crate) hours: PersonHours,
    pub(crate) source: &'static str,
    pub(crate) people_most: u32,
    pub(crate) needs: Vec<Need>,
    pub(crate) hold: Option<Hold>,
    pub(crate) trace: Trace,
}

impl Draft {
    /// A task of an element; empty for the whole job.
    pub(crate) fn new(kind: Kind, element: &str, name: impl Into<String>, quantity: f64, rate: &Rate) -> Draft {
        let (hours, trace) = hours_of(quantity, rate);
        Draft {
            kind,
            id: id(element, kind),
            element: element.into(),
            name: name.into(),
            how: String::new(),
            quantity,
            unit: rate.unit,
            hours,
            source: rate.source,
            people_most: rate.people_most,
            needs: vec![],
            hold: None,
            trace,
        }
    }
    pub(crate) fn how(mut self, how: impl Into<String>) -> Draft {
        self.how = how.into();
        self
    }
    /// Needs a task if there is one.
    pub(crate) fn after(self, task: Option<String>) -> Draft {
        self.after_wait(task, 0.0)
    }
    /// Needs a task if there is one, and a wait after it. Of two needs of one task the longer wait counts.
    pub(crate) fn after_wait(mut self, task: Option<String>, wait_days: f64) -> Draft {
        let Some(task) = task.filter(|t| *t != self.id) else { return self };
        match self.needs.iter_mut().find(|n| n.task == task) {
            Some(n) if n.wait_days < wait_days => n.wait_days = wait_days,
            Some(_) => {}
            None => self.needs.push(Need { task, wait_days }),
        }
        self
    }
    pub(crate) fn hold(mut self, name: &'static str, checks: Vec<String>) -> Draft {
        self.hold = Some(Hold { name, checks });
        self
    }
}

/// `W1/posts`; `job/strip` for the whole job.
pub(crate) fn id(element: &str, kind: Kind) -> String {
    let element = if element.is_empty() { "job" } else { element };
    format!("{element}/{}", kind.word())
}

/// The tasks so far.
pub(crate) struct Book<'w> {
    pub(crate) works: &'w Works,
    pub(crate) drafts: Vec<Draft>,
}

impl Book<'_> {
    pub(crate) fn put(&mut self, draft: Draft) {
        self.drafts.push(draft);
    }
    /// The task of this kind, if there is one.
    pub(crate) fn exactly(&self, element: &str, kind: Kind) -> Option<String> {
        self.drafts.iter().find(|d| d.element == element && d.kind == kind).map(|d| d.id.clone())
    }
    /// The furthest task of an element up to a kind: what that element must have done to be so far.
    pub(crate) fn up_to(&self, element: &str, kind: Kind) -> Option<String> {
        let so_far = self.drafts.iter().filter(|d| d.element == element && d.kind <= kind);
        so_far.max_by_key(|d| d.kind).map(|d| d.id.clone())
    }
    /// What must be done before anybody digs: nothing but the stripping, or what it would have needed.
    pub(crate) fn site_ready(&self, mut draft: Draft) -> Draft {
        if let Some(strip) = self.exactly("", Kind::Strip) {
            return draft.after(Some(strip));
        }
        for kind in [Kind::Survey, Kind::Approvals, Kind::Services, Kind::Protect] {
            draft = draft.after(self.exactly("", kind));
        }
        draft
    }
    /// Ids of every task that nothing needs yet.
    pub(crate) fn loose_ends(&self) -> Vec<String> {
        let needed = |id: &str| self.drafts.iter().any(|d| d.needs.iter().any(|n| n.task == id));
        self.drafts.iter().filter(|d| !needed(&d.id)).map(|d| d.id.clone()).collect()
    }
}
