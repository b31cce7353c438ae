//! Which jobs must the engine get right from end to end? Reading them and asking plans, for the tests of this crate.

use groundhold_exchange::{Problem, append_entry, read_job};
use groundhold_finding::Finding;
use groundhold_plan::job::{BuiltPost, Entry, Event, Job};
use groundhold_plan::{Plan, Trouble};
use groundhold_working::Value;

/// The demo's job file.
pub const DEMO: &str = include_str!("../../../demo/job.toml");

/// Files beside a job: name and text.
pub type Tables<'a> = &'a [(&'a str, &'a str)];

/// The demo's tables.
pub const DEMO_TABLES: Tables<'static> = &[
    ("levels.csv", include_str!("../../../demo/levels.csv")),
    ("positions.csv", include_str!("../../../demo/positions.csv")),
    ("prices.csv", include_str!("../../../demo/prices.csv")),
];

/// Reads a job from its text and the tables it names.
///
/// # Errors
/// Everything that is wrong with the files.
pub fn read(text: &str, tables: Tables) -> Result<Job, Vec<Problem>> {
    let open = |name: &str| {
        let found = tables.iter().find(|(n, _)| *n == name);
        found.map(|(_, t)| (*t).to_string()).ok_or_else(|| format!("there is no `{name}`"))
    };
    read_job("job.toml", text, &open).whole()
}

/// Reads a job that must be read.
///
/// # Panics
/// With every problem, if it is not.
pub fn job(text: &str, tables: Tables) -> Job {
    read(text, tables).unwrap_or_else(|problems| {
        let all: Vec<String> = problems.iter().map(ToString::to_string).collect();
        panic!("the job is not read:\n{}\n{text}", all.join("\n"))
    })
}

/// The demo job.
///
/// # Panics
/// If it is not read.
pub fn demo() -> Job {
    job(DEMO, DEMO_TABLES)
}

/// Plans a job that must be planned.
///
/// # Panics
/// With every trouble, if it is not.
pub fn planned(job: &Job) -> Plan {
    groundhold_plan::plan(job).unwrap_or_else(|troubles| panic!("the job is not planned: {}", all_said(&troubles)))
}

/// Reads and plans a job without tables.
///
/// # Panics
/// As [`job`] and [`planned`].
pub fn plan(text: &str) -> Plan {
    planned(&job(text, &[]))
}

/// What the troubles say, in one line.
pub fn all_said(troubles: &[Trouble]) -> String {
    troubles.iter().map(|t| format!("{:?}: {}", t.of, t.says)).collect::<Vec<_>>().join("; ")
}

/// The findings of a kind.
pub fn found<'p>(plan: &'p Plan, code: &str) -> Vec<&'p Finding> {
    plan.findings.iter().filter(|f| f.kind.code == code).collect()
}

/// True where the plan has a finding of this kind.
pub fn has(plan: &Plan, code: &str) -> bool {
    plan.findings.iter().any(|f| f.kind.code == code)
}

/// Asserts that a plan has findings of all these kinds.
///
/// # Panics
/// Where one is missing, with all that were found.
pub fn assert_has(plan: &Plan, codes: &[&str]) {
    let missing: Vec<&&str> = codes.iter().filter(|c| !has(plan, c)).collect();
    assert!(missing.is_empty(), "missing {missing:?}; the plan says:\n{}", said(plan));
}

/// Every finding of a plan, one a line.
pub fn said(plan: &Plan) -> String {
    plan.findings
        .iter()
        .map(|f| format!("{} {:?} {}: {}", f.kind.code, f.severity, f.place, f.says))
        .collect::<Vec<_>>()
        .join("\n")
}

/// Runs a working with inputs in the units of its rows and gives one number of what comes out, in the unit of its row.
///
/// # Panics
/// Where the working or the output is not there, is not one number, or the working refuses.
pub fn work(name: &str, inputs: &[(&str, Value)], output: &str) -> f64 {
    let working = groundhold_plan::working(name).unwrap_or_else(|| panic!("there is no working {name}"));
    let worked = working.work(inputs).unwrap_or_else(|refused| panic!("{refused}"));
    let at = working.outputs.iter().position(|o| o.key == output);
    let at = at.unwrap_or_else(|| panic!("{name} does not give {output}"));
    match &worked.values[at] {
        Value::One(v) => *v,
        other => panic!("{name} gives {other:?} for {output}"),
    }
}

/// Asserts that a figure lies within 5 % of what was reckoned by hand.
///
/// # Panics
/// Where it does not.
pub fn near(what: &str, found: f64, by_hand: f64) {
    assert!((found - by_hand).abs() <= 0.05 * by_hand.abs(), "{what}: found {found}, by hand {by_hand}");
}

/// A post as it stands in a plan, written down as built.
pub fn as_built(post: &groundhold_hold::Post) -> BuiltPost {
    BuiltPost {
        number: post.number,
        chainage: post.chainage,
        at: Some(post.face),
        depth: post.depth,
        diameter: post.hole_diameter,
        top: post.top,
        length: Some(post.length),
    }
}

/// Writes an entry of the diary into a job file's text, as the command line does, and reads the job again.
///
/// # Panics
/// If it is not read.
pub fn demo_with(events: &[Event]) -> Job {
    let entry = |event: &Event| Entry { at: "2026-05-11T10:20:00".into(), event: event.clone(), note: String::new() };
    let text = events.iter().fold(DEMO.to_string(), |text, e| append_entry(&text, &entry(e)));
    job(&text, DEMO_TABLES)
}
