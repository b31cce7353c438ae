//! What in a job cannot be understood or planned at all, and where it stands.

/// Which part of the job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Part {
    /// A row of the level book.
    LevelBook,
    /// A row of the position book.
    Positions,
    /// The survey as a whole.
    Survey,
    /// An element, by id.
    Element(String),
    /// A choice in the job's head, by the name of its field.
    Choice(&'static str),
}

/// One thing that stops the plan. Findings speak against a plan; a trouble says that there is none.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{says}")]
pub struct Trouble {
    /// The part of the job.
    pub of: Part,
    /// The row in its table, where it has one.
    pub row: Option<usize>,
    /// What was found and what was expected.
    pub says: String,
}

impl Trouble {
    /// Somewhere in a part.
    pub fn new(of: Part, says: impl ToString) -> Trouble {
        Trouble { of, row: None, says: says.to_string() }
    }
    /// In a row of a part.
    pub fn in_row(of: Part, row: usize, says: impl ToString) -> Trouble {
        Trouble { of, row: Some(row), says: says.to_string() }
    }
}
