//! What was measured? The level book as reduced, with its sums, and every point of the ground.

use groundhold_plan::Plan;
use groundhold_quantity::{Length, Units, trim};

use crate::flow::Flow;
use crate::leaf::Leaf;
use crate::paper_size::Paper;
use crate::table::{Table, figures, words};
use crate::wall_schedule::{m, metres};

pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let u = plan.job.about.units;
    let s = &plan.survey;
    let mut flow = Flow::new(Paper::A4, "Survey", "Survey");
    flow.title("Survey");
    if s.quick {
        flow.paragraph("The ground was not surveyed: it is taken as a plane from a fall over a run. Measure before anything is ordered or dug.");
        return flow.finish();
    }
    if let Some(d) = &plan.job.measure.datum {
        flow.paragraph(&format!("Datum: peg {} at {}, {}.", d.peg, u.level(d.level), d.note));
    }
    if let Some(r) = &s.reduced {
        let misclose = match (r.misclose, r.allowed) {
            (Some(found), Some(allowed)) => format!(
                "{} set-ups; misclose {} mm, allowed ± {} mm: {}.",
                r.set_ups,
                trim(found.to_mm(), 1),
                trim(allowed.to_mm(), 1),
                if r.accepted { "accepted and shared out" } else { "not accepted, nothing was shared out" }
            ),
            _ => "The book does not close, so a wrong reading would not show.".into(),
        };
        flow.paragraph(&misclose);
        flow.heading("Level book, reduced");
        flow.table(&book(r, u));
        let c = &r.checks;
        flow.small(&format!(
            "Backsights − foresights = {} − {} = {} m. Rises − falls = {} − {} = {} m. Last − first level = {} m.",
            trim(c.sum_backsights.to_m(), 3),
            trim(c.sum_foresights.to_m(), 3),
            trim((c.sum_backsights - c.sum_foresights).to_m(), 3),
            trim(c.sum_rises.to_m(), 3),
            trim(c.sum_falls.to_m(), 3),
            trim((c.sum_rises - c.sum_falls).to_m(), 3),
            trim(c.last_minus_first.to_m(), 3),
        ));
    }
    flow.heading("Points of the ground");
    flow.table(&points(plan, u));
    flow.finish()
}

fn book(r: &groundhold_measure::level_book::Reduced, u: Units) -> Table {
    let mut t = Table::new(vec![
        figures("Row"),
        words("Station"),
        figures("Set-up"),
        figures("Height of collimation"),
        figures(&format!("Rise (+) or fall (−){}", m(u))),
        figures("Level before"),
        figures("Correction mm"),
        figures("Level"),
        figures("± mm"),
    ]);
    for row in &r.rows {
        t.row([
            row.row.to_string(),
            row.station.clone(),
            row.set_up.to_string(),
            row.collimation.map_or(String::new(), |l| u.level(l)),
            row.rise_fall.map_or(String::new(), |l| metres(l, u)),
            u.level(row.level_raw),
            trim(row.correction.to_mm(), 1),
            u.level(row.level),
            trim(row.sigma.to_mm(), 1),
        ]);
    }
    t
}

/// In two columns side by side, so that a survey of fifty points is half a page.
fn points(plan: &Plan, u: Units) -> Table {
    let head = || {
        [
            words("Point"),
            figures(&format!("East{}", m(u))),
            figures(&format!("North{}", m(u))),
            figures("Level"),
            figures("± mm in plan"),
            figures("± mm in level"),
        ]
    };
    let mut t = Table::new(head().into_iter().chain([words("")]).chain(head()).collect());
    let all = &plan.survey.points;
    let half = all.len().div_ceil(2);
    let cells = |i: usize| -> Vec<String> {
        let Some(p) = all.get(i) else { return vec![String::new(); 6] };
        let sigma = |l: Length| if l == Length::ZERO { "–".into() } else { trim(l.to_mm(), 1) };
        vec![
            p.id.clone(),
            metres(Length::m(p.at.x), u),
            metres(Length::m(p.at.y), u),
            u.level(p.level),
            sigma(p.sigma_position),
            sigma(p.sigma_level),
        ]
    };
    for i in 0..half {
        let row: Vec<String> = cells(i)
            .into_iter()
            .chain([String::new()])
            .chain(if half + i < all.len() { cells(half + i) } else { vec![String::new(); 6] })
            .collect();
        t.rows.push(crate::table::Row::Cells(row));
    }
    t
}
