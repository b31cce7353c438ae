//! Whatever is wrong with a job or its tables is said with its place and what was expected, and nothing panics.

use groundhold_exchange::{Problem, read_job};
use groundhold_plan::job::Job;
use groundhold_plan::{Trouble, check, plan};
use proptest::prelude::*;

const JOB: &str = include_str!("../../../demo/job.toml");
const LEVELS: &str = include_str!("../../../demo/levels.csv");
const POSITIONS: &str = include_str!("../../../demo/positions.csv");
const PRICES: &str = include_str!("../../../demo/prices.csv");

/// Reads the demo with one of its files replaced.
fn with(file: &str, text: &str) -> Result<Job, Vec<Problem>> {
    let open = |name: &str| {
        let own = match name {
            "levels.csv" => LEVELS,
            "positions.csv" => POSITIONS,
            "prices.csv" => PRICES,
            other => return Err(format!("there is no `{other}`")),
        };
        Ok(if name == file { text } else { own }.to_string())
    };
    read_job("job.toml", if file == "job.toml" { text } else { JOB }, &open).whole()
}

/// Changes one piece of a file of the demo and gives the first lines of the problems of reading it.
fn said(file: &str, from: &str, to: &str) -> Vec<String> {
    let problems = with(file, &edited(file, from, to)).err().unwrap_or_default();
    problems.iter().map(|p| p.to_string().lines().next().unwrap_or_default().to_string()).collect()
}

/// The same for what stops the plan of a job that could be read.
fn stopped(file: &str, from: &str, to: &str) -> Vec<Trouble> {
    let job = with(file, &edited(file, from, to)).unwrap_or_else(|p| panic!("not read: {p:#?}"));
    plan(&job).err().unwrap_or_default()
}

fn edited(file: &str, from: &str, to: &str) -> String {
    let text = match file {
        "levels.csv" => LEVELS,
        "positions.csv" => POSITIONS,
        "prices.csv" => PRICES,
        _ => JOB,
    };
    assert!(text.contains(from), "{file} has no {from}");
    text.replacen(from, to, 1)
}

#[test]
fn what_is_wrong_with_a_table_is_said_with_its_line_and_column() {
    let cases = [
        (
            "levels.csv",
            "station,backsigt,intermediate,foresight\nA,1.4,,\n",
            "levels.csv:1:2: there is no column `backsigt`; did you mean `backsight`?",
        ),
        (
            "levels.csv",
            "station,backsight,intermediate,foresight\nA,1.4,,\n1,,1.695,,,9\n",
            "levels.csv:3:1: found 6 fields, expected 4",
        ),
        (
            "levels.csv",
            "station,backsight,intermediate,foresight\nA,1.4,,\n1,,16.95,\n",
            "levels.csv:3:4: intermediate: found 16.95, expected from -8 m to 8 m",
        ),
        (
            "levels.csv",
            "station,backsight,intermediate,foresight\nA,l.4,,\n",
            "levels.csv:2:3: backsight: found `l.4`, expected a number of metres",
        ),
        ("positions.csv", "point,along,off\n1,-2.080,\n", "positions.csv:2:10: off: along and off belong together"),
        (
            "positions.csv",
            "point,along,off,from A,from B\n33,,,6.500,\n",
            "positions.csv:2:1: point: 33 needs along and off, or at least two tapes",
        ),
        ("positions.csv", "point,along,off,from C,colour\n", "positions.csv:1:5: there is no column `colour`"),
        ("prices.csv", "item,unit,price\npost,each,-16.20\n", "prices.csv:2:11: price: found -16.20, expected from 0"),
        ("prices.csv", "item,unit,price\npost,each,\n", "prices.csv:2:11: price: `post` has no price"),
        (
            "prices.csv",
            "item,unit,price\npost,plank,16.20\n",
            "prices.csv:2:6: unit: found `plank`, expected one of each, bag",
        ),
        ("prices.csv", "item,unit,price,mass\nbag,each,5.20,20 stone\n", "prices.csv:2:15: mass: found `20 stone`"),
        ("prices.csv", "item,unit,cost\nbag,each,5.20\n", "the column `price` is missing"),
        ("prices.csv", "", "prices.csv: the table is empty"),
    ];
    for (file, text, part) in cases {
        let problems = with(file, text).err().unwrap_or_default();
        let all: Vec<String> = problems.iter().map(ToString::to_string).collect();
        assert!(
            all.iter().any(|s| s.starts_with(file) && s.contains(part)),
            "{text}: expected `{part}`, found {all:#?}"
        );
    }
}

#[test]
fn everything_that_is_wrong_is_said_at_once_and_in_the_order_of_the_file() {
    let text = JOB
        .replace("apron   =", "aprn    =")
        .replace("kerf   = \"4 mm\"", "kerf   = \"4\"")
        .replace("tax    = \"21 %\"", "tax    = \"210 %\"");
    let problems = with("job.toml", &text).unwrap_err();
    let said: Vec<&str> = problems.iter().map(|p| p.says.as_str()).collect();
    assert_eq!(problems.len(), 3, "{said:#?}");
    assert!(
        said[0].contains("did you mean `apron`?")
            && said[1].contains("unit is missing")
            && said[2].contains("from 0 to 1"),
        "{said:#?}"
    );
    assert!(problems.windows(2).all(|w| w[0].line < w[1].line));
}

#[test]
fn the_job_file_speaks_before_its_tables() {
    let open = |_: &str| Ok("item,unit,cost\n".to_string());
    let problems = read_job("job.toml", "schema = 1\n[order]\nprices = \"a.csv\"\n\nkerf = \"4\"\n", &open).problems;
    let files: Vec<&str> = problems.iter().map(|p| p.file.as_str()).collect();
    assert!(files.contains(&"a.csv") && files.contains(&"job.toml"), "{problems:#?}");
    assert!(files.windows(2).all(|w| w[0] == w[1] || w[0] == "job.toml"), "{files:?}");
}

#[test]
fn a_file_without_a_version_or_with_a_newer_one_is_refused() {
    assert!(
        said("job.toml", "schema = 1", "")
            .iter()
            .any(|s| s.contains("`schema` (version of the file's form) is missing"))
    );
    assert!(
        said("job.toml", "schema = 1", "schema = 9")
            .iter()
            .any(|s| s.starts_with("job.toml:3:10") && s.contains("found 9"))
    );
}

#[test]
fn what_only_the_plan_can_see_stops_it_and_says_where() {
    let cases = [
        // A set-up that begins without a backsight.
        ("levels.csv", "A,1.415,,,", "A,,1.415,,", "backsight"),
        ("levels.csv", "CP1,1.932,,0.712", "CP1,,,0.712", "backsight"),
        // A break line that crosses another.
        ("job.toml", "break_lines = [", "break_lines = [\n  [\"10\", \"60\"],", "cross"),
    ];
    for (file, from, to, part) in cases {
        let all = stopped(file, from, to);
        assert!(all.iter().any(|t| t.says.contains(part)), "{to}: expected `{part}`, found {all:#?}");
    }
}

#[test]
fn a_pad_outside_the_surveyed_ground_is_refused_or_found() {
    let moved = "[[\"30.0 m\", \"4.2 m\"], [\"36.0 m\", \"4.2 m\"], [\"36.0 m\", \"8.7 m\"], [\"30.0 m\", \"8.7 m\"]]";
    let demo = "[[\"3.0 m\", \"4.2 m\"], [\"9.0 m\", \"4.2 m\"], [\"9.0 m\", \"8.7 m\"], [\"3.0 m\", \"8.7 m\"]]";
    let job = with("job.toml", &edited("job.toml", demo, moved)).unwrap();
    match plan(&job) {
        Err(troubles) => assert!(troubles.iter().any(|t| t.says.contains("survey")), "{troubles:#?}"),
        Ok(plan) => {
            let found: Vec<&str> =
                plan.findings.iter().filter(|f| f.place.element == "P1").map(|f| f.says.as_str()).collect();
            assert!(found.iter().any(|s| s.contains("survey")), "{found:#?}");
        }
    }
}

/// The places of all numbers in the demo job.
fn numbers() -> Vec<(usize, usize)> {
    let mut found = vec![];
    let bytes = JOB.as_bytes();
    let digit = |c: u8| c.is_ascii_digit() || c == b'.';
    let mut i = 0;
    while i < bytes.len() {
        let end = (i..bytes.len()).find(|k| !digit(bytes[*k])).unwrap_or(bytes.len());
        if end > i {
            found.push((i, end));
        }
        i = end.max(i + 1);
    }
    found
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn a_demo_with_another_number_in_it_is_refused_or_planned_and_its_balances_hold(which in 0usize..1000, v in 0.0f64..1.0, size in 0usize..3) {
        let places = numbers();
        let (start, end) = places[which % places.len()];
        let was: f64 = JOB[start..end].parse().unwrap_or(1.0);
        let now = [was * (0.5 + v), was + 4.0 * v - 2.0, 1000.0 * v][size];
        let text = format!("{}{now:.3}{}", &JOB[..start], &JOB[end..]);
        if let Ok(job) = with("job.toml", &text)
            && let Ok(plan) = plan(&job)
        {
            prop_assert_eq!(check(&plan), vec![], "{} instead of {}", now, was);
        }
    }
}
