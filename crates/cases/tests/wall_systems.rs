//! Does every wall system go through the whole thread: read, planned, checked, drawn, printed, written and read again?
#![allow(clippy::unwrap_used, missing_docs)]

use groundhold_cases::{job, planned, said};
use groundhold_exchange::{job_tables, job_text};
use groundhold_finding::Severity;
use groundhold_hold::{SYSTEM_KEYS, SYSTEMS};
use groundhold_plan::job::Job;
use groundhold_plan::{Plan, check};
use groundhold_quantity::Volume;

macro_rules! demo {
    ($key:literal) => {
        (
            $key,
            include_str!(concat!("../../../demo/walls/", $key, "/job.toml")),
            include_str!(concat!("../../../demo/walls/", $key, "/prices.csv")),
        )
    };
}

/// Key of the system, job file, price list.
const DEMOS: &[(&str, &str, &str)] =
    &[demo!("gabion"), demo!("dry-stone"), demo!("mass-wall"), demo!("steel-post-and-panel"), demo!("stacked-timbers")];

fn each(test: impl Fn(&str, &Job, &Plan)) {
    for (key, text, prices) in DEMOS {
        let job = job(text, &[("prices.csv", prices)]);
        test(key, &job, &planned(&job));
    }
}

#[test]
fn every_system_but_the_one_of_the_large_demo_has_a_small_one() {
    for key in SYSTEM_KEYS.iter().filter(|k| **k != SYSTEMS[0].key) {
        assert!(DEMOS.iter().any(|d| d.0 == *key), "{key} has no demo");
    }
}

#[test]
fn each_demo_stands_and_its_plan_holds_together() {
    each(|key, job, plan| {
        assert_eq!(job.walls[0].spec.system().key(), key);
        assert_eq!(check(plan), vec![], "{key}");
        assert!(plan.walls[0].layout.retained.to_mm() > 500.0, "{key}");
        let stops: Vec<_> = plan.findings.iter().filter(|f| f.severity == Severity::Stop).collect();
        assert!(stops.is_empty(), "{key}:\n{}", said(plan));
        assert!(plan.quote.is_complete(), "{key}: no price for {:?}", plan.quote.missing);
        let u = plan.walls[0].verdict.utilisation();
        assert!(0.2 < u && u <= 1.0, "{key}: {u}");
    });
}

#[test]
fn each_wall_is_dug_laid_drained_and_set_out() {
    each(|key, _, plan| {
        let row = |what: &str| {
            plan.dug.rows.iter().any(|r| r.element == "W1" && r.what.contains(what) && r.dug > Volume::ZERO)
        };
        assert!(row("dug for the wall") || row("hole"), "{key}: {:?}", plan.dug.rows);
        // Walls on posts have holes and posts where the others have a base and courses.
        let on_posts = !plan.walls[0].layout.posts.is_empty();
        let (tasks, marks) = match on_posts {
            true => (["W1/holes", "W1/posts", "W1/concrete", "W1/boards"], ["W1-a", "W1-a", "W1-b"]),
            false => (["W1/footing", "W1/base", "W1/courses", "W1/pipe"], ["W1-a", "W1-1a-base", "W1-1a-top"]),
        };
        for task in tasks {
            assert!(plan.programme.tasks.iter().any(|t| t.id == task), "{key} {task}");
        }
        let order = |a: &str, b: &str| {
            let at = |id: &str| plan.programme.tasks.iter().find(|t| t.id == id).unwrap().start;
            assert!(at(a) <= at(b), "{key}: {a} before {b}");
        };
        order(tasks[0], tasks[1]);
        order(tasks[1], tasks[2]);
        for mark in marks {
            assert!(plan.setout.rows.iter().any(|r| r.mark.id == mark), "{key} {mark}");
        }
        assert_eq!(plan.setout.posts.len(), plan.walls[0].layout.posts.len(), "{key}");
        let zone = plan.drained.walls[0].zone.as_ref();
        assert!(zone.is_some_and(|z| z.stone > Volume::ZERO), "{key}");
    });
}

#[test]
fn each_demo_is_drawn_without_text_on_text_and_printed() {
    each(|key, _, plan| {
        // Nothing of such a wall is cut from stock, so the sheet of cutting lists is empty.
        for (name, scene) in groundhold_draw::drawings(plan).into_iter().filter(|d| d.0 != "cutting") {
            let svg = groundhold_draw::to_svg(&scene);
            assert!(svg.len() > 500, "{key} {name}");
        }
        let section = groundhold_draw::to_svg(&groundhold_draw::section(plan, "W1", 200.0, 152.0));
        let under = if plan.walls[0].layout.posts.is_empty() { "base " } else { "⌀" };
        assert!(section.contains("retained") && section.contains(under), "{key}");
        let pdf = groundhold_paper::pdf_set(plan, "2026-11-25").unwrap();
        assert!(pdf.starts_with(b"%PDF"), "{key}");
    });
}

#[test]
fn each_demo_is_written_and_read_back_as_the_same_job() {
    each(|key, given, _| {
        let tables = job_tables(given);
        let tables: Vec<(&str, &str)> = tables.iter().map(|(n, t)| (n.as_str(), t.as_str())).collect();
        assert_eq!(&job(&job_text(given), &tables), given, "{key}");
    });
}

#[test]
fn a_size_that_another_system_has_is_refused_with_those_that_are_known() {
    let (_, text, prices) = DEMOS[0];
    let text = text.replace("basket    =", "hole_diameter = \"450 mm\"\nbasket    =");
    let problems = groundhold_cases::read(&text, &[("prices.csv", prices)]).unwrap_err();
    let said = problems.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n");
    assert!(said.contains("there is no `hole_diameter`; known here are course, basket"), "{said}");
}
