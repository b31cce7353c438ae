//! What have the years left of posts and boards, and in which year is the highest post used up?

use groundhold_finding::{Finding, Place};
use groundhold_member::timber::{Climate, Durability, Section, after_years, rot_of};
use groundhold_quantity::Length;
use groundhold_working::{Refused, Trace};

use super::TimberPostSpec;
use super::checks::strength;
use crate::posted::highest;
use crate::{CheckKind, Layout, LoadCase, WallCase, findings};

/// How long the timber lasts, and the year in which it is looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ageing {
    /// Durability in the ground; `None` where nobody has said.
    pub durability: Option<Durability>,
    /// How well fungi live at the place.
    pub climate: Climate,
    /// Years of service for which it is judged; 0 is new.
    pub years: u32,
}

impl Ageing {
    /// New, and not known how long it lasts.
    pub const NEW: Ageing = Ageing { durability: None, climate: Climate::Temperate, years: 0 };
}

/// No year after this is looked for.
const LAST_YEAR: u32 = 60;

fn left(a: Ageing, section: Section, years: u32) -> Result<(Section, Trace), Refused> {
    let Some(durability) = a.durability else {
        return after_years(&section, Length::ZERO, f64::from(years), 0.0);
    };
    let (rate, lag, _) = rot_of(durability, a.climate)?;
    after_years(&section, rate, f64::from(years), lag)
}

/// The wall with what the years have left of its sections, every face of a post and of a board losing alike. Taken as in the
/// ground: cautious for what stands above it.
///
/// # Errors
/// Where nothing is left of a section.
pub(crate) fn in_its_year(spec: &TimberPostSpec) -> Result<TimberPostSpec, Refused> {
    in_year(spec, spec.ageing.years)
}

fn in_year(spec: &TimberPostSpec, years: u32) -> Result<TimberPostSpec, Refused> {
    if years == 0 || spec.ageing.durability.is_none() {
        return Ok(spec.clone());
    }
    let mut then = with_posts_of(spec, years)?;
    let board = left(spec.ageing, Section::rectangle(spec.board.height, spec.board.thickness), years)?.0;
    then.board.thickness = board.depth();
    Ok(then)
}

/// Posts as they are in a year, boards as they were.
fn with_posts_of(spec: &TimberPostSpec, years: u32) -> Result<TimberPostSpec, Refused> {
    let post = left(spec.ageing, Section::rectangle(spec.post.breadth, spec.post.depth), years)?.0;
    let mut then = spec.clone();
    (then.post.breadth, then.post.depth) = (post.breadth(), post.depth());
    Ok(then)
}

/// The first year in which the highest post is asked more than it carries, drained; `None` where that is not within sixty.
fn used_up_in(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Option<u32> {
    let post = highest(layout)?;
    let carries = |years: u32| {
        let Ok(then) = with_posts_of(spec, years) else { return false };
        let bends = |c: &crate::Check| matches!(c.kind, CheckKind::PostBending | CheckKind::PostShear) && c.fails();
        strength::in_state(case, &then, layout, post, LoadCase::Drained).is_ok_and(|all| !all.iter().any(bends))
    };
    if carries(LAST_YEAR) || !carries(0) {
        return None;
    }
    // Rot only ever takes, so halving finds the year.
    let (mut holds, mut fails) = (0, LAST_YEAR);
    while fails - holds > 1 {
        let middle = (holds + fails) / 2;
        if carries(middle) { holds = middle } else { fails = middle }
    }
    Some(fails)
}

/// What is said of its years.
pub(crate) fn findings(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Vec<Finding> {
    let a = spec.ageing;
    let mut all = vec![];
    if a.years > 0 && a.durability.is_none() {
        let says = format!(
            "How long the timber of {} lasts is not said, so it is judged as new and not as in year {}.",
            case.id, a.years
        );
        all.push(Finding::new(&findings::AGE_UNKNOWN, Place::of(&case.id), says));
    }
    if a.durability.is_some()
        && let Some(year) = used_up_in(case, spec, layout)
    {
        let says = format!(
            "By the rates of rot that the job's timber is taken to have, the highest post is asked more than it carries from \
             about year {year} on. Look at the ground line from year {} on.",
            year / 2
        );
        let mut f = Finding::new(&findings::USED_UP, Place::of(&case.id), says);
        f.trace = left(a, Section::rectangle(spec.post.breadth, spec.post.depth), year).ok().map(|l| l.1);
        all.push(f);
    }
    all
}
