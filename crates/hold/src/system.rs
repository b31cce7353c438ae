//! Which wall systems are there? One folder in `systems`, one variant and one line in each list here.

use crate::systems::timber_posts::TimberPostSpec;
use crate::{CaseError, Layout, Verdict, WallCase};

/// What every wall system can do.
pub trait System {
    /// Its key in a job file: `timber-post-and-board`.
    fn key(&self) -> &'static str;
    /// Lays the wall out in whole pieces.
    ///
    /// # Errors
    /// [`CaseError`] says which value of the case cannot be built.
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError>;
    /// Checks it.
    fn judge(&self, case: &WallCase, layout: &Layout) -> Verdict;
    /// Checks it while a finger drags: the checks that decide, without remedies and without other methods beside them,
    /// where the system can tell them apart.
    fn judge_quick(&self, case: &WallCase, layout: &Layout) -> Verdict {
        self.judge(case, layout)
    }
}

/// A wall system with its sizes.
#[derive(Debug, Clone, PartialEq)]
pub enum Spec {
    /// Timber posts in holes, boards between or behind them.
    TimberPosts(TimberPostSpec),
}

/// The keys of all systems, for messages and forms.
pub const SYSTEMS: &[(&str, &str)] =
    &[("timber-post-and-board", "timber posts in holes with boards behind or before them")];

impl Spec {
    /// The system that builds it.
    pub fn system(&self) -> &dyn System {
        match self {
            Spec::TimberPosts(s) => s,
        }
    }
}

/// Lays a wall out in whole pieces, with every hole's depth solved where none is given.
///
/// # Errors
/// [`CaseError`] says which value of the case cannot be built.
pub fn lay_out(case: &WallCase) -> Result<Layout, CaseError> {
    case.check()?;
    case.spec.system().lay_out(case)
}

/// Checks a wall that was laid out from the same case.
pub fn judge(case: &WallCase, layout: &Layout) -> Verdict {
    case.spec.system().judge(case, layout)
}

/// Lays a wall out and checks it while a finger drags: see [`System::judge_quick`].
///
/// # Errors
/// [`CaseError`] says which value of the case cannot be built.
pub fn hold_quick(case: &WallCase) -> Result<(Layout, Verdict), CaseError> {
    let layout = lay_out(case)?;
    let verdict = case.spec.system().judge_quick(case, &layout);
    Ok((layout, verdict))
}

/// Lays a wall out and checks it.
///
/// # Errors
/// [`CaseError`] says which value of the case cannot be built.
pub fn hold(case: &WallCase) -> Result<(Layout, Verdict), CaseError> {
    let layout = lay_out(case)?;
    let verdict = judge(case, &layout);
    Ok((layout, verdict))
}
