//! What does a plan have to say against itself, where, how badly, and what would mend it?

use groundhold_quantity::Money;
use groundhold_working::Trace;

/// How much a finding weighs. Ordered: the last is the gravest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Good to know.
    Note,
    /// Will need care.
    Watch,
    /// Needs a licensed person or an authority.
    Ask,
    /// Do not build this.
    Stop,
}

impl Severity {
    /// The word on screen and paper.
    pub fn word(self) -> &'static str {
        match self {
            Severity::Note => "note",
            Severity::Watch => "watch",
            Severity::Ask => "ask",
            Severity::Stop => "stop",
        }
    }
}

/// A kind of finding: one static per code, never renumbered, never reused. Its page in the manual is made from it.
#[derive(Debug, PartialEq, Eq)]
pub struct Kind {
    /// Stable code: a letter for the stage and three figures, `H-012`.
    pub code: &'static str,
    /// Readable name; reads well after "accepted:" — *accepted: embedment too shallow*.
    pub name: &'static str,
    /// How much it usually weighs.
    pub severity: Severity,
    /// What happens on the ground if nobody listens.
    pub why: &'static str,
    /// Where that is known from; or "common practice, no source".
    pub source: &'static str,
    /// Known false alarms; or "none known".
    pub when_wrong: &'static str,
}

/// Where a finding bites: the element by its spoken id, and the place on it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Place {
    /// `W1`, `S1`, `P1`; empty for the whole job.
    pub element: String,
    /// `post 3`, `chainage 4.20 m`; empty for all of it.
    pub on: String,
}

impl Place {
    /// The whole job.
    pub fn job() -> Place {
        Place::default()
    }
    /// A whole element.
    pub fn of(element: &str) -> Place {
        Place { element: element.into(), on: String::new() }
    }
    /// A place on an element.
    pub fn on(element: &str, on: impl Into<String>) -> Place {
        Place { element: element.into(), on: on.into() }
    }
}

impl std::fmt::Display for Place {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match (self.element.as_str(), self.on.as_str()) {
            ("", "") => write!(f, "the whole job"),
            (e, "") => write!(f, "{e}"),
            ("", o) => write!(f, "{o}"),
            (e, o) => write!(f, "{e} {o}"),
        }
    }
}

/// A change to the job in its own words: set one field of one element.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Adjust {
    /// The element's id, or a section's name (`drain`, `order`).
    pub element: String,
    /// The field as the job file spells it: `spec.hole_depth`.
    pub field: String,
    /// The new value as the job file spells it: `900 mm`.
    pub value: String,
}

/// Whether a remedy is ours to apply.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whose {
    /// The tool can apply it to the job.
    Ours,
    /// A person decides: a neighbour, an engineer, an authority.
    Theirs,
}

/// Something that would mend it, solved for.
#[derive(Debug, Clone, PartialEq)]
pub struct Remedy {
    /// In a sentence: "Holes 900 mm deep instead of 600 mm."
    pub says: String,
    /// The change that does it, where it is ours.
    pub change: Vec<Adjust>,
    /// Who applies it.
    pub whose: Whose,
    /// What it costs more (or saves, negative); filled in by re-planning.
    pub cost: Option<Money>,
    /// True when a re-plan with the change showed that the finding is gone.
    pub proven: bool,
}

impl Remedy {
    /// One that the tool can apply.
    pub fn ours(says: impl Into<String>, change: Vec<Adjust>) -> Remedy {
        Remedy { says: says.into(), change, whose: Whose::Ours, cost: None, proven: false }
    }
    /// One that a person decides.
    pub fn theirs(says: impl Into<String>) -> Remedy {
        Remedy { says: says.into(), change: vec![], whose: Whose::Theirs, cost: None, proven: false }
    }
}

/// One finding in a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// Its kind, with code and name.
    pub kind: &'static Kind,
    /// How much it weighs here (usually the kind's).
    pub severity: Severity,
    /// Where it bites.
    pub place: Place,
    /// What it says, in one sentence with the figures.
    pub says: String,
    /// Demand over capacity where there is one; above 1 is too much.
    pub utilisation: Option<f64>,
    /// The working behind its figures.
    pub trace: Option<Trace>,
    /// What would mend it.
    pub remedies: Vec<Remedy>,
}

impl Finding {
    /// A finding of this kind with its usual weight.
    pub fn new(kind: &'static Kind, place: Place, says: impl Into<String>) -> Finding {
        Finding {
            kind,
            severity: kind.severity,
            place,
            says: says.into(),
            utilisation: None,
            trace: None,
            remedies: vec![],
        }
    }
    /// With demand over capacity.
    pub fn with_utilisation(mut self, u: f64) -> Finding {
        self.utilisation = Some(u);
        self
    }
    /// With its working.
    pub fn with_trace(mut self, t: Trace) -> Finding {
        self.trace = Some(t);
        self
    }
    /// With a remedy more.
    pub fn with_remedy(mut self, r: Remedy) -> Finding {
        self.remedies.push(r);
        self
    }
    /// With another weight than usual.
    pub fn weighing(mut self, s: Severity) -> Finding {
        self.severity = s;
        self
    }
}
