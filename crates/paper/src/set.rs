//! Which sheets make the set, and in what order?

use groundhold_plan::Plan;

use crate::leaf::Leaf;
use crate::pdf::{PaperError, pdf};
use crate::sheet::{Sheet, TitleBlock, framed};
use crate::{
    calculation_sheets, caution_sheets, cover, drain_schedule, drawings, earthwork_schedule, finding_sheets,
    order_list, programme_sheets, record_sheets, set_out_sheets, survey_sheets, wall_schedule,
};

/// The whole set: every sheet with its border and title block. `date` is printed as it is given.
pub fn sheets(plan: &Plan, date: &str) -> Vec<Sheet> {
    leaves(plan, date).into_iter().map(|(sheet, _)| sheet).collect()
}

/// The whole set as one PDF.
///
/// # Errors
/// [`PaperError`] where the PDF cannot be written.
pub fn pdf_set(plan: &Plan, date: &str) -> Result<Vec<u8>, PaperError> {
    pdf(&sheets(plan, date), &TitleBlock::of(plan, date).job)
}

/// The sheets with the rectangles of their texts.
pub(crate) fn leaves(plan: &Plan, date: &str) -> Vec<(Sheet, Leaf)> {
    let rest: Vec<Leaf> = [
        finding_sheets::leaves(plan),
        drawings::leaves(plan),
        wall_schedule::leaves(plan),
        drain_schedule::leaves(plan),
        earthwork_schedule::leaves(plan),
        order_list::leaves(plan),
        set_out_sheets::leaves(plan),
        programme_sheets::leaves(plan),
        caution_sheets::leaves(plan),
        survey_sheets::leaves(plan),
        calculation_sheets::leaves(plan),
        record_sheets::leaves(plan),
    ]
    .concat();
    let list: Vec<(&'static str, String, usize)> =
        rest.iter().enumerate().map(|(i, l)| (l.part, l.title.clone(), i + 2)).collect();
    let of = rest.len() + 1;
    let block = TitleBlock::of(plan, date);
    let all = std::iter::once(cover::leaf(plan, &list)).chain(rest);
    all.enumerate().map(|(i, l)| framed(l, i + 1, of, &block)).collect()
}
