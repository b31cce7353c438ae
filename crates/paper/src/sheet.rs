//! What stands round every sheet: border, title block, number, and what the sheet is not.

use groundhold_draw::{Align, Scene};
use groundhold_plan::Plan;

use crate::leaf::{BLACK, GREY, Leaf, RED, RULE, Style};
use crate::paper_size::{Paper, TITLE_BLOCK};
use crate::typeface::cut_to;

/// A finished sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Counted from 1.
    pub number: usize,
    /// How many there are.
    pub of: usize,
    /// The part of the set it belongs to.
    pub part: &'static str,
    /// Its title.
    pub title: String,
    /// What is on it, at true size.
    pub scene: Scene,
}

/// What stands on every sheet.
pub(crate) struct TitleBlock {
    pub job: String,
    pub place: String,
    pub client: String,
    pub date: String,
    pub demo: bool,
}

/// What the sheets are not. On every one of them.
pub(crate) const NOT_A_PERMIT: &str =
    "Not a permit. Check it by the local code, and by a licensed person where the law asks.";

impl TitleBlock {
    pub fn of(plan: &Plan, date: &str) -> TitleBlock {
        let about = &plan.job.about;
        let said =
            |t: &str, without: &str| if t.trim().is_empty() { without.to_string() } else { t.trim().to_string() };
        TitleBlock {
            job: said(&about.name, "Unnamed job"),
            place: said(&about.place, "place not given"),
            client: said(&about.client, "client not given"),
            date: said(date, "undated"),
            demo: about.demo,
        }
    }
}

/// Puts border and title block round a page.
pub(crate) fn framed(leaf: Leaf, number: usize, of: usize, block: &TitleBlock) -> (Sheet, Leaf) {
    let mut leaf = leaf;
    let b = leaf.paper.border();
    let top = b.bottom - TITLE_BLOCK;
    for (from, to) in [
        ((b.left, b.top), (b.right, b.top)),
        ((b.right, b.top), (b.right, b.bottom)),
        ((b.right, b.bottom), (b.left, b.bottom)),
        ((b.left, b.bottom), (b.left, b.top)),
        ((b.left, top), (b.right, top)),
    ] {
        leaf.rule(from, to, 0.5, BLACK);
    }
    let lower = b.bottom - 5.4;
    leaf.rule((b.left, lower), (b.right, lower), 0.18, RULE);
    cells(&mut leaf, number, of, block, top, lower);
    foot(&mut leaf, block, lower);
    let (width, height) = leaf.paper.size();
    let mut scene = Scene::new(width, height, format!("{}: {}", block.job, leaf.title));
    scene.scale = leaf.scale.clone();
    scene.items = leaf.items.clone();
    (Sheet { number, of, part: leaf.part, title: leaf.title.clone(), scene }, leaf)
}

/// Width of the cells for scale and number.
const NARROW: f64 = 26.0;

fn cells(leaf: &mut Leaf, number: usize, of: usize, block: &TitleBlock, top: f64, lower: f64) {
    let b = leaf.paper.border();
    let sheet = b.right - NARROW;
    let scale = sheet - NARROW;
    let title = b.left + (scale - b.left) * 0.5;
    for x in [title, scale, sheet] {
        leaf.rule((x, top), (x, lower), 0.18, RULE);
    }
    let whom = format!("{} · for {}", block.place, block.client);
    let fits = Style::BODY.sized(2.5).width(&whom) <= title - b.left - 3.6;
    let whom = if fits { whom } else { block.place.clone() };
    cell(leaf, (b.left, title), top, ["Job", &block.job, &whom]);
    let (name, part) = (leaf.title.clone(), leaf.part);
    cell(leaf, (title, scale), top, ["Sheet", &name, if part == name { "" } else { part }]);
    let drawn_to = if leaf.scale.is_empty() { "–".to_string() } else { leaf.scale.clone() };
    let size = match leaf.paper {
        Paper::A3 => "on A3",
        Paper::A4 => "on A4",
    };
    cell(leaf, (scale, sheet), top, ["Scale", &drawn_to, size]);
    cell(leaf, (sheet, b.right), top, ["Number", &format!("{number} of {of}"), &block.date]);
}

/// A cell between two edges: what it is, what it says, and a line under it.
fn cell(leaf: &mut Leaf, (left, right): (f64, f64), top: f64, says: [&str; 3]) {
    let styles = [Style::BODY.sized(2.1).ink(GREY), Style::BODY.sized(3.6).bold(), Style::BODY.sized(2.5)];
    for ((text, style), down) in says.iter().zip(styles).zip([0.9, 4.0, 9.2]) {
        let cut = cut_to(text, right - left - 3.6, style.size, style.weight);
        leaf.text(&cut, left + 1.8, top + down, Align::Start, &style);
    }
}

fn foot(leaf: &mut Leaf, block: &TitleBlock, lower: f64) {
    let b = leaf.paper.border();
    let style = Style::BODY.sized(2.3);
    leaf.text(NOT_A_PERMIT, b.left + 1.8, lower + 1.0, Align::Start, &style);
    let drawn = "Drawn by Groundhold from the job file";
    leaf.text(drawn, b.right - 1.8, lower + 1.0, Align::End, &style.ink(GREY));
    if block.demo {
        let x = b.right - 1.8 - style.width(drawn) - 4.0;
        leaf.text("Invented demo data", x, lower + 1.0, Align::End, &style.bold().ink(RED));
    }
}
