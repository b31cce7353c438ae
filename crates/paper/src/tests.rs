//! Is everything on paper, once, inside the margins, and nothing over anything else? Asked of the demo job.

use std::sync::LazyLock;

use groundhold_draw::{At, Item};
use groundhold_plan::{Plan, plan, plan_priced};
use groundhold_quantity::{Length, Level, Units};

use crate::leaf::Leaf;
use crate::paper_size::{Frame, Paper};
use crate::sheet::Sheet;

const DATE: &str = "2026-11-25";

fn demo_job() -> groundhold_plan::job::Job {
    let open = |name: &str| match name {
        "levels.csv" => Ok(include_str!("../../../demo/levels.csv").to_string()),
        "positions.csv" => Ok(include_str!("../../../demo/positions.csv").to_string()),
        "prices.csv" => Ok(include_str!("../../../demo/prices.csv").to_string()),
        other => Err(format!("no table {other}")),
    };
    groundhold_exchange::read_job("job.toml", include_str!("../../../demo/job.toml"), &open).whole().unwrap()
}

static DEMO: LazyLock<Plan> = LazyLock::new(|| plan_priced(&demo_job()).unwrap());
static SET: LazyLock<Vec<(Sheet, Leaf)>> = LazyLock::new(|| crate::set::leaves(&DEMO, DATE));

/// Every text inside the border, and no two on one another.
pub(crate) fn nothing_collides(leaf: &Leaf) {
    let border = leaf.paper.border();
    for b in &leaf.blocks {
        assert!(border.holds(&b.frame), "{}: `{}` at {:?} leaves the sheet", leaf.title, b.text, b.frame);
    }
    for (i, a) in leaf.blocks.iter().enumerate() {
        for b in &leaf.blocks[i + 1..] {
            assert!(
                !a.frame.overlaps(&b.frame),
                "{}: `{}` is printed over `{}` at {:?}",
                leaf.title,
                a.text,
                b.text,
                b.frame
            );
        }
    }
}

/// Every point of every line and area inside the border.
fn nothing_is_drawn_outside(leaf: &Leaf) {
    fn check(leaf: &Leaf, item: &Item) {
        let b = leaf.paper.border();
        let inside = |p: &At| b.holds(&Frame { left: p.x, right: p.x, top: p.y, bottom: p.y });
        match item {
            Item::Line { points, .. } | Item::Area { points, .. } => {
                let out = points.iter().find(|p| !inside(p));
                assert_eq!(out, None, "{}: {item:?}", leaf.title);
            }
            Item::Circle { at, .. } => assert!(inside(at), "{}: {item:?}", leaf.title),
            Item::Text(l) => assert!(inside(&l.at), "{}: {l:?}", leaf.title),
            Item::Group { items, .. } => items.iter().for_each(|i| check(leaf, i)),
        }
    }
    leaf.items.iter().for_each(|i| check(leaf, i));
}

fn all_text() -> String {
    let blocks = SET.iter().flat_map(|(_, l)| l.blocks.iter().map(|b| b.text.as_str()));
    squeezed(&blocks.collect::<Vec<_>>().join(" "))
}

/// Without blanks, so that a break between lines does not matter.
fn squeezed(t: &str) -> String {
    crate::typeface::in_our_letters(t).chars().filter(|c| !c.is_whitespace()).collect()
}

fn blocks_of(title: &str) -> Vec<&'static str> {
    SET.iter().filter(|(s, _)| s.title == title).flat_map(|(_, l)| l.blocks.iter().map(|b| b.text.as_str())).collect()
}

#[test]
fn nothing_leaves_a_sheet_and_nothing_is_printed_over_anything() {
    assert!(SET.len() > 15);
    SET.iter().for_each(|(_, leaf)| nothing_collides(leaf));
    SET.iter().for_each(|(_, leaf)| nothing_is_drawn_outside(leaf));
}

#[test]
fn long_names_and_feet_and_inches_stay_inside_the_sheets_too() {
    let mut job = demo_job();
    job.about.units = Units::Feet;
    job.about.name = "A very long name of a job that nobody would put on a sheet, ".repeat(6);
    job.about.client = "w".repeat(300);
    job.about.place = "somewhere far up the hill, ".repeat(12);
    for w in &mut job.walls {
        w.name = "the wall behind everything else that stands there ".repeat(4);
    }
    for (_, leaf) in
        crate::set::leaves(&plan(&job).unwrap(), "the day after the day before yesterday, in the afternoon")
    {
        nothing_collides(&leaf);
    }
}

#[test]
fn a_wall_that_stands_has_its_causes_its_workings_and_what_is_done_first_on_its_sheet() {
    use groundhold_hold::standing::{AboveIt, Made, Seen, Weeps};
    let mut job = demo_job();
    let mut seen = Seen::bare(Made::Block, Length::m(1.37));
    seen.thickness = Some(Length::mm(800.0));
    seen.lean = Length::mm(40.0);
    seen.weeps = Some(Weeps::Absent);
    seen.above = vec![AboveIt::Vehicle];
    let line = job.walls[0].line.iter().map(|p| groundhold_quantity::Point::m(p.x, p.y + 1.5)).collect();
    job.standing = vec![groundhold_plan::job::OldWall {
        id: "E1".into(),
        name: "drive".into(),
        line,
        retains_left: true,
        looked_at: "2026-05-11".into(),
        note: "after the wet winter".into(),
        seen,
        replaced_by: String::new(),
    }];
    let set = crate::set::leaves(&plan(&job).unwrap(), DATE);
    let sheet = |part: &str| {
        let of = set.iter().filter(|(s, _)| s.part == part);
        let blocks: Vec<&str> = of.flat_map(|(_, l)| l.blocks.iter().map(|b| b.text.as_str())).collect();
        squeezed(&blocks.join(" "))
    };
    let found = sheet("Walls as found");
    for words in ["water behind it", "no weep holes", "Do not dig at its toe", "after the wet winter", "drained and"] {
        assert!(found.contains(&squeezed(words)), "{words}: {found}");
    }
    assert!(sheet("Calculations").contains(&squeezed("How does a wall that stands by its weight stand")));
    set.iter().for_each(|(_, leaf)| nothing_collides(leaf));
    set.iter().for_each(|(_, leaf)| nothing_is_drawn_outside(leaf));
}

#[test]
fn a_job_of_two_numbers_has_a_set_without_walls() {
    let mut job = demo_job();
    job.measure = groundhold_plan::job::Measure {
        quick: Some(groundhold_plan::job::QuickSlope {
            fall: Length::mm(600.0),
            over: Length::m(7.0),
            width: Length::m(10.0),
            foot: Level::m(100.0),
        }),
        ..Default::default()
    };
    job.walls.clear();
    job.flights.clear();
    job.ramps.clear();
    job.near.clear();
    let set = crate::set::leaves(&plan(&job).unwrap(), DATE);
    assert!(set.iter().any(|(s, _)| s.title == "Summary") && !set.iter().any(|(s, _)| s.title.contains("boards")));
    for (_, leaf) in &set {
        nothing_collides(leaf);
    }
}

#[test]
fn every_sheet_says_its_number_the_date_that_it_is_demo_data_and_that_it_is_no_permit() {
    let of = SET.len();
    for (i, (sheet, leaf)) in SET.iter().enumerate() {
        let says = |t: &str| leaf.blocks.iter().any(|b| b.text == t);
        assert_eq!((sheet.number, sheet.of), (i + 1, of));
        assert!(says(&format!("{} of {of}", i + 1)), "{}", sheet.title);
        assert!(says(DATE) && says("Invented demo data") && says(crate::sheet::NOT_A_PERMIT), "{}", sheet.title);
    }
}

#[test]
fn every_post_and_every_board_stands_in_a_schedule() {
    let schedule = blocks_of("Posts, holes and boards");
    let post_table = squeezed(&blocks_of("Setting out").join(" "));
    for w in &DEMO.walls {
        for p in &w.layout.posts {
            assert!(post_table.contains(&squeezed(&format!("{} post {}", w.id, p.number))));
        }
        for b in &w.layout.boards {
            assert!(schedule.contains(&b.mark.as_str()), "{} {}", w.id, b.mark);
        }
    }
    let boards: usize = DEMO.walls.iter().map(|w| w.layout.boards.len()).sum();
    let marks: Vec<&str> = DEMO.walls.iter().flat_map(|w| w.layout.boards.iter().map(|b| b.mark.as_str())).collect();
    let printed = schedule.iter().filter(|t| marks.contains(t)).count();
    assert_eq!(printed, boards, "each board has one row");
}

#[test]
fn every_line_of_the_order_and_of_the_quote_is_printed_with_its_amount() {
    let (order, quote) = (squeezed(&blocks_of("Order list").join(" ")), squeezed(&blocks_of("Quote").join(" ")));
    for l in &DEMO.take_off.lines {
        let name = squeezed(&l.item);
        assert!(order.contains(&name) && quote.contains(&name), "{}", l.item);
        if let Some(a) = l.amount {
            let amount = squeezed(&a.shown());
            assert!(order.contains(&amount) && quote.contains(&amount), "{} {amount}", l.item);
        }
    }
    assert!(quote.contains(&squeezed(&DEMO.quote.total.shown())));
}

#[test]
fn every_finding_is_printed_with_its_sentence_and_its_remedies() {
    let text = squeezed(&blocks_of("Findings").join(" "));
    for f in &DEMO.findings {
        assert!(text.contains(&squeezed(f.kind.code)) && text.contains(&squeezed(&f.says)), "{}", f.says);
        for r in &f.remedies {
            assert!(text.contains(&squeezed(&crate::finding_sheets::remedy(r, &DEMO))), "{}", r.says);
        }
    }
}

#[test]
fn every_task_hold_point_caution_and_point_to_set_out_is_printed() {
    let text = all_text();
    let has = |t: &str| assert!(text.contains(&squeezed(t)), "{t}");
    for t in &DEMO.programme.tasks {
        has(&t.name);
    }
    for h in &DEMO.programme.hold_points {
        h.checks.iter().for_each(|c| has(c));
    }
    for c in &DEMO.programme.cautions {
        has(c.caution.title);
        has(c.caution.says);
        has(&c.here);
    }
    for r in &DEMO.setout.rows {
        has(&r.mark.id);
    }
    for r in &DEMO.dug.rows {
        has(r.what);
    }
}

#[test]
fn every_governing_check_of_the_worst_place_leads_to_a_working_with_its_source() {
    let text = squeezed(&blocks_of("Workings").join(" "));
    for w in &DEMO.walls {
        for kind in w.verdict.checks.iter().map(|c| c.kind) {
            for t in w.verdict.worst(kind).iter().flat_map(|c| &c.traces) {
                assert!(text.contains(&squeezed(t.working.name)), "{}", t.working.name);
                assert!(text.contains(&squeezed(t.working.source.work)), "{}", t.working.source.work);
            }
        }
    }
}

#[test]
fn what_the_engine_wrote_is_all_in_letters_that_the_fonts_have() {
    for (sheet, leaf) in SET.iter() {
        let odd = leaf.blocks.iter().find(|b| b.text.contains(crate::typeface::MISSING));
        assert_eq!(odd.map(|b| b.text.as_str()), None, "{}", sheet.title);
    }
}

#[test]
fn the_same_plan_and_date_give_the_same_bytes_and_another_date_gives_others() {
    let (a, b) = (crate::pdf_set(&DEMO, DATE).unwrap(), crate::pdf_set(&DEMO, DATE).unwrap());
    assert!(a == b && a.starts_with(b"%PDF-"));
    assert!(a != crate::pdf_set(&DEMO, "2026-11-26").unwrap());
}

#[test]
fn a_sheet_is_a3_or_a4_and_its_scene_says_so() {
    for (sheet, leaf) in SET.iter() {
        assert_eq!((sheet.scene.width, sheet.scene.height), leaf.paper.size());
        assert!(matches!(leaf.paper, Paper::A3 | Paper::A4));
    }
}

#[test]
fn a_sheet_without_a_size_is_refused_in_words() {
    let mut sheet = SET[0].0.clone();
    sheet.scene.width = 0.0;
    let says = crate::pdf(&[sheet], "t").unwrap_err().to_string();
    assert!(says.contains("sheet 1") && says.contains("above 0 mm"), "{says}");
}
