//! What is written of a job reads back as the same job; what is written of a plan holds what the plan holds.

use groundhold_exchange::{
    apply_adjust, difference_json, job_tables, job_text, plan_json, read_job, tables_out, verify_json, worked_json,
};
use groundhold_finding::Adjust;
use groundhold_plan::job::Job;
use groundhold_plan::{Plan, compare, plan, workings};
use proptest::prelude::*;
use serde_json::Value;

const JOB: &str = include_str!("../../../demo/job.toml");

fn table(name: &str) -> Result<String, String> {
    match name {
        "levels.csv" => Ok(include_str!("../../../demo/levels.csv").into()),
        "positions.csv" => Ok(include_str!("../../../demo/positions.csv").into()),
        "prices.csv" => Ok(include_str!("../../../demo/prices.csv").into()),
        other => Err(format!("there is no `{other}`")),
    }
}

fn read(text: &str) -> Job {
    read_job("job.toml", text, &table).whole().expect("the text has no problem")
}

fn demo_plan() -> Plan {
    plan(&read(JOB)).expect("the demo can be planned")
}

/// Writes a job with its tables and reads it again.
fn again(job: &Job) -> Job {
    let tables = job_tables(job);
    let open = |name: &str| {
        let found = tables.iter().find(|(n, _)| n == name);
        found.map(|(_, text)| text.clone()).ok_or_else(|| format!("`{name}` was not written"))
    };
    let text = job_text(job);
    read_job("job.toml", &text, &open).whole().unwrap_or_else(|problems| panic!("{text}\n{problems:#?}"))
}

#[test]
fn the_demo_written_and_read_again_is_the_same_job() {
    let job = read(JOB);
    assert_eq!(again(&job), job);
}

/// Fields that the demo does not use, each put beside or in place of one that it does.
const MORE_FIELDS: &[(&str, &str)] = &[
    ("units    = \"metric\"", "units    = \"feet\""),
    (
        "[shape]",
        "[ground.measured]\nunit_weight = \"18.3 kN/m3\"\nfriction = \"27.5 deg\"\nsource = \"a lab\"\n[shape]",
    ),
    (
        "turf    = \"40 mm\"",
        "turf    = \"40 mm\"\nwater   = \"1.4 m\"\nmoisture = \"22 %\"\n\
         sieves  = [[\"0.002 mm\", \"12 %\"], [\"0.075 mm\", \"60 %\"], [\"0.6 mm\", \"90 %\"], [\"4.75 mm\", \"99 %\"]]\n\
         rock    = [{ at = [\"4 m\", \"8 m\"], depth = \"1.1 m\" }, { at = [\"9 m\", \"8 m\"], depth = \"900 mm\" }]",
    ),
    (
        "surface = \"lawn heavy steep\"",
        "surface = \"lawn heavy steep\"\n\
         outlets = [{ at = [\"14 m\", \"1 m\"], level = \"99.8 m\" }]\n\
         swale   = [{ above = \"W1\", bed = \"200 mm\", sides = \"1:2\", fall = \"1:80\", lining = \"gravel 25\" }]\n\
         weeps   = { diameter = \"50 mm\", spacing = \"1.2 m\" }\n\
         soakaway = { at = [\"1 m\", \"-1 m\"], level = \"99.5 m\", width = \"1 m\", depth = \"1.2 m\", rate = \"36 mm/h\", source = \"a pit\" }",
    ),
    (
        "intensity = \"60 mm/h\",",
        "intensity = \"60 mm/h\", durations = [[\"5 min\", \"110 mm/h\"], [\"1 h\", \"30 mm/h\"]],",
    ),
    (
        "level   = \"101.080 m\"",
        "level   = \"cheapest\"\nbetween = [\"100.9 m\", \"101.2 m\"]\nfall    = \"1:80 toward south\"",
    ),
    ("ends    = [\"fade\", \"fade\"]", "ends    = [\"at\", \"fade\"]"),
    (
        "[wall.spec]",
        "fence = { height = \"0.9 m\", wind = \"600 Pa\", solid = \"50 %\", source = \"x\" }\n\
         change = [{ chainage = \"2.4 m\", hole_depth = \"1100 mm\" }, { chainage = \"3.0 m\", extra = true }, { chainage = \"6.0 m\", left_out = true }]\n\
         beside = \"play area\"\n\
         [wall.spec]\ncapping = \"150x38 UC4 C24\"\nlean = \"1:20\"\nhole_depth = \"900 mm\"\nfit = \"from top\"\n\
         stock = [\"2.4 m\", \"4.8 m\"]",
    ),
    ("fill    = \"10-20\"", "fill    = \"10-20\"\nnone    = true\npipe    = \"80 mm\""),
    (
        "[[load]]",
        "[[near]]\nid = \"N7\"\nkind = \"old block wall\"\nline = [[\"20 m\", \"0 m\"], [\"20 m\", \"5 m\"]]\nretained = \"0.9 m\"\n\
         drained = false\n[[near]]\nid = \"N8\"\nkind = \"driveway\"\nat = [\"20 m\", \"9 m\"]\nlevel = \"101.2 m\"\n[[load]]",
    ),
    (
        "tax    = \"21 %\"",
        "tax    = \"21 %\"\nbought = { \"concrete bag 20 kg\" = 30, geotextile = 50.5, \"board 200x50 UC4 C24 at 4.8 m\" = 8 }",
    ),
];

/// One entry of each kind, with a quote in a word.
const DIARY: &str = r#"
[[record]]
at = 2026-05-11T10:20:00
find = { kind = "rock", wall = "W1", post = 3, at = ["2.4 m", "8.5 m"], depth = "450 mm" }
note = "rings"

[[record]]
at = 2026-05-12T10:20:00
built.element = "W2"
built.posts = [{ number = 1, chainage = "0 m", depth = "0.6 m", diameter = "450 mm", top = "101.08 m" }, { number = 2, chainage = "1.2 m", depth = "0.6 m", diameter = "450 mm", top = "101.08 m", length = "1.4 m" }]

[[record]]
at = 2026-05-13T10:20:00
find = { kind = "cable", what = "a \"cable\"", line = [["0 m", "0 m"], ["1 m", "2 m"]], depth = "0.4 m" }
"#;

#[test]
fn a_job_with_more_fields_than_the_demo_is_the_same_after_writing_and_reading() {
    let replaced = MORE_FIELDS.iter().fold(JOB.to_string(), |text, (from, to)| {
        assert!(text.contains(from), "the demo has no {from}");
        text.replacen(from, to, 1)
    });
    let text = replaced + DIARY;
    let job = read(&text);
    assert_eq!(job.record.len(), 3);
    assert_eq!(again(&job), job);
}

#[test]
fn spots_and_tapes_with_a_side_are_the_same_after_writing_and_reading() {
    let open = |name: &str| match name {
        "a.csv" => Ok("point,east,north,level\n1,0,0,100\n2,4.1234567,0,100.2 m\n3,0,12 ft,99.95\n".to_string()),
        _ => Ok("point,from A,from B,side\n7,3.2,4.1,left\n8,3.2,4.15,right\n".to_string()),
    };
    let text = "schema = 1\n[measure]\nspots = \"a.csv\"\npositions = \"b.csv\"\nboundary = [\"1\", \"2\", \"3\"]\n";
    let job = read_job("job.toml", text, &open).whole().unwrap();
    assert_eq!((job.measure.spots.len(), job.measure.positions.len()), (3, 2));
    assert_eq!(again(&job), job);
}

#[test]
fn a_slope_in_two_numbers_needs_no_tables() {
    let job = read("schema = 1\n[measure]\nslope = { fall = \"600 mm\", over = \"7 m\" }\n");
    assert_eq!(job_tables(&job), []);
    assert_eq!(again(&job), job);
}

/// Fields of the demo and values that each may have.
const FIELDS: &[(&str, &str, &str)] = &[
    ("W1", "spec.spacing", "m"),
    ("W2", "spec.hole_diameter", "mm"),
    ("W1", "spec.screws", "screws"),
    ("P1", "level", "level"),
    ("P1", "apron", "mm"),
    ("P1", "build_up", "mm"),
    ("S1", "going", "mm"),
    ("S1", "width", "m"),
    ("R1", "width", "m"),
    ("R1", "steepest", "slope"),
    ("drain", "outlet.level", "level"),
    ("drain", "uphill", "m"),
];

fn adjust(field: usize, value: u32) -> Adjust {
    let (element, field, kind) = FIELDS[field];
    let value = match kind {
        "m" => format!("{}.{} m", 1 + value % 2, value % 10),
        "mm" => format!("{} mm", 300 + value % 200),
        "level" => format!("{}.{:03} m", 100 + value % 2, value % 1000),
        "slope" => format!("1:{}", 8 + value % 12),
        _ => format!("8x{}", 80 + value % 100),
    };
    Adjust { element: element.into(), field: field.into(), value }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_change_and_its_inverse_leave_the_text_as_it_was(field in 0..FIELDS.len(), value in 0u32..100_000) {
        let (changed, inverse) = apply_adjust(JOB, &adjust(field, value)).unwrap();
        let inverse = inverse.expect("every field of the list stands in the demo");
        let (back, redo) = apply_adjust(&changed, &inverse).unwrap();
        prop_assert_eq!(back, JOB);
        prop_assert_eq!(redo, Some(adjust(field, value)));
    }

    #[test]
    fn a_change_of_the_text_and_a_change_of_the_job_are_the_same_change(field in 0..FIELDS.len(), value in 0u32..100_000) {
        let adjust = adjust(field, value);
        let (changed, _) = apply_adjust(JOB, &adjust).unwrap();
        prop_assert_eq!(read(&changed), groundhold_plan::apply(&read(JOB), &adjust).unwrap());
    }
}

fn csv_rows(text: &str) -> Vec<Vec<String>> {
    let reader = csv::ReaderBuilder::new().has_headers(false).from_reader(text.as_bytes());
    reader
        .into_records()
        .map(|r| r.expect("every row is as long as the first").iter().map(String::from).collect())
        .collect()
}

#[test]
fn every_table_is_rectangular_and_has_a_row_for_each_thing_of_the_plan() {
    let plan = demo_plan();
    let tables = tables_out(&plan);
    let rows = |name: &str| csv_rows(&tables.iter().find(|(n, _)| n == name).unwrap().1).len() - 1;
    for (name, text) in &tables {
        // The reader refuses a row that is longer or shorter than the first.
        assert!(csv_rows(text).len() > 1, "{name} is empty");
    }
    let pieces: usize = plan.take_off.cutting.iter().flat_map(|c| &c.bars).map(|b| b.pieces.len()).sum();
    assert_eq!(rows("cutting-list.csv"), pieces);
    assert_eq!(rows("posts.csv"), plan.setout.posts.len());
    assert_eq!(rows("set-out.csv"), plan.setout.rows.len());
    assert_eq!(rows("boards.csv"), plan.walls.iter().map(|w| w.layout.boards.len()).sum::<usize>());
    assert_eq!(rows("order.csv"), plan.take_off.lines.len());
    assert_eq!(rows("quote.csv"), plan.quote.lines.len() + 6);
    assert_eq!(rows("findings.csv"), plan.findings.len());
    assert_eq!(rows("programme.csv"), plan.programme.tasks.len());
}

#[test]
fn the_amounts_in_the_quote_table_add_up_to_its_net_sum_to_the_cent() {
    let plan = demo_plan();
    let tables = tables_out(&plan);
    let rows = csv_rows(&tables.iter().find(|(n, _)| n == "quote.csv").unwrap().1);
    assert_eq!(rows[0].last().unwrap(), "amount_eur");
    let cents = |r: &Vec<String>| (r.last().unwrap().parse::<f64>().unwrap_or(0.0) * 100.0).round() as i64;
    let net = rows.iter().find(|r| r[1] == "net").map(cents).unwrap();
    assert_eq!(rows[1..].iter().filter(|r| r[0] != "Sum").map(cents).sum::<i64>(), net);
}

#[test]
fn a_column_that_holds_a_length_says_its_unit() {
    let plan = demo_plan();
    for (name, text) in tables_out(&plan) {
        let rows = csv_rows(&text);
        let units = ["_m", "_m3", "_ratio", "_l_per_s", "_m_per_s", "_deg", "_kg", "_eur", "_days", "_hours"];
        let counts = [
            "post",
            "course",
            "from_post",
            "to_post",
            "bar",
            "cut",
            "packs",
            "loads",
            "people",
            "first_day",
            "last_day",
            "hold_point",
        ];
        let of_unit = ["net", "waste", "gross", "on_hand", "bought", "quantity", "utilisation", "mark", "what"];
        for (i, head) in rows[0].iter().enumerate() {
            let numbers = rows[1..].iter().any(|r| r[i].contains('.') && r[i].parse::<f64>().is_ok());
            let known = units.iter().any(|u| head.ends_with(u))
                || counts.contains(&head.as_str())
                || of_unit.contains(&head.as_str());
            assert!(!numbers || known, "{name}: the column {head} holds numbers and names no unit");
        }
    }
}

#[test]
fn the_view_of_a_plan_is_json_and_says_what_the_plan_says() {
    let plan = demo_plan();
    let view: Value = serde_json::from_str(&plan_json(&plan)).unwrap();
    assert_eq!(view["schema"], 1);
    assert_eq!(view["quote"]["total"], plan.quote.total.amount());
    assert_eq!(view["findings"].as_array().unwrap().len(), plan.findings.len());
    for (wall, shown) in plan.walls.iter().zip(view["walls"].as_array().unwrap()) {
        assert_eq!(shown["wall"], wall.id.as_str());
        assert_eq!(shown["posts"].as_array().unwrap().len(), wall.layout.posts.len());
        assert!((shown["retained_most_m"].as_f64().unwrap() - wall.layout.retained.to_m()).abs() < 1e-6);
        assert!(!shown["stations"].as_array().unwrap().is_empty());
    }
    assert_eq!(view["pads"][0]["level_m"], 101.08);
    assert_eq!(plan_json(&demo_plan()), plan_json(&plan));
}

#[test]
fn the_working_behind_a_finding_can_be_run_again_from_the_view() {
    let plan = demo_plan();
    let view: Value = serde_json::from_str(&plan_json(&plan)).unwrap();
    let mut run = 0;
    for (finding, shown) in plan.findings.iter().zip(view["findings"].as_array().unwrap()) {
        let Some(trace) = &finding.trace else { continue };
        assert_eq!(shown["working"]["name"], trace.working.name);
        assert_eq!(shown["working"]["given"].as_array().unwrap().len(), trace.given.len());
        run += 1;
    }
    assert!(run > 0, "no finding of the demo has a working");
}

#[test]
fn a_difference_says_what_came_what_went_and_what_it_costs() {
    let before = demo_plan();
    let after = plan(&read(&JOB.replacen("spacing = \"1.2 m\"", "spacing = \"0.9 m\"", 1))).unwrap();
    let view: Value = serde_json::from_str(&difference_json(&compare(&before, &after))).unwrap();
    assert_eq!(view["changes_nothing"], false);
    let more = view["price"]["more"].as_f64().unwrap();
    assert!((more - (after.quote.total - before.quote.total).amount()).abs() < 1e-9);
    let lines: f64 = view["order"].as_array().unwrap().iter().map(|l| l["amount_more"].as_f64().unwrap()).sum();
    assert!((lines - more).abs() < 0.005, "lines {lines}, price {more}");
    let none: Value = serde_json::from_str(&difference_json(&compare(&before, &before))).unwrap();
    assert_eq!((&none["changes_nothing"], &none["price"]), (&Value::Bool(true), &Value::Null));
}

#[test]
fn a_working_and_its_cases_are_json_with_their_counts() {
    // 3-4-5, known since the rope stretchers.
    let w = workings().into_iter().find(|w| w.name == groundhold_setout::DIAGONAL.name).unwrap();
    let sides: Vec<(&str, groundhold_working::Value)> =
        w.inputs.iter().zip([3.0, 4.0]).map(|(i, v)| (i.key, v.into())).collect();
    let view: Value = serde_json::from_str(&worked_json(w, &w.work(&sides).unwrap())).unwrap();
    assert_eq!(view["working"], w.name);
    assert!((view["outputs"][0]["value"].as_f64().unwrap() - 5.0).abs() < 1e-12);
    assert!(view["lines"].as_array().unwrap().iter().any(|l| l["text"].as_str().unwrap().contains('5')));
    let cases = groundhold_reference::read(include_str!("../../../reference/earthworks.toml")).unwrap();
    let outcomes: Vec<_> = cases.iter().map(|c| groundhold_reference::run(c, &workings())).collect();
    let count = outcomes.len();
    let view: Value = serde_json::from_str(&verify_json(&[("earthworks".into(), outcomes)])).unwrap();
    assert_eq!((&view["cases"], &view["unexpected"]), (&count.into(), &0.into()));
    assert_eq!(view["topics"][0]["outcomes"].as_array().unwrap().len(), count);
}

#[cfg(feature = "spreadsheet")]
#[test]
fn the_workbook_has_no_date_but_the_one_given_and_the_same_bytes_each_time() {
    let plan = demo_plan();
    let bytes = groundhold_exchange::spreadsheet(&plan, "2026-05-11").unwrap();
    assert_eq!(bytes, groundhold_exchange::spreadsheet(&plan, "2026-05-11").unwrap());
    // Date and time of each member stand at byte 10 of its local header (PKWARE APPNOTE 4.3.7): 1 January 1980, 0:00.
    let headers: Vec<_> = bytes.windows(14).filter(|w| w.starts_with(b"PK\x03\x04")).collect();
    assert!(headers.len() > 12);
    headers.iter().for_each(|h| assert_eq!(h[10..14], [0, 0, 0x21, 0]));
    let said = groundhold_exchange::spreadsheet(&plan, "11 May").unwrap_err().to_string();
    assert!(said.contains("found `11 May`") && said.contains("2026-05-11"), "{said}");
}
