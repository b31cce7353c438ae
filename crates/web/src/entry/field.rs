//! The fields of an element as a form: words, hint, what stands there, and what is wrong with what was typed.

use groundhold_exchange::fields::{Holds, row};

use crate::job::{Files, clear_field, field_text, set_field};

/// One field of a form.
#[derive(Debug, Clone, PartialEq)]
pub struct FormField {
    /// As the job file spells it: `spec.hole_depth`.
    pub path: &'static str,
    /// In words.
    pub words: &'static str,
    /// What stands there; empty where it is left out.
    pub value: String,
    /// The words it may be, where only some are known.
    pub one_of: &'static [&'static str],
    /// What is expected.
    pub expects: String,
    /// True where it must not be left empty.
    pub must: bool,
}

const PAD: &[&str] = &["name", "level", "apron", "build_up", "fall"];
const WALL: &[&str] = &[
    "name",
    "top.above",
    "top.by",
    "top.at",
    "spec.post",
    "spec.board",
    "spec.spacing",
    "spec.boards",
    "spec.hole_depth",
    "spec.hole_diameter",
    "spec.hole_fill",
    "spec.bury",
    "spec.fit",
    "spec.screws",
    "spec.capping",
];
const STEPS: &[&str] = &["to", "width", "going"];
const RAMP: &[&str] = &["to", "width", "steepest"];
const NEAR: &[&str] = &["kind", "depth", "clear", "trunk", "source"];
const DRAIN: &[&str] = &["outlet.level", "rain.intensity", "rain.source", "surface", "uphill", "fill", "pipe"];
const JOB: &[&str] = &["name", "place", "client", "region", "basis", "currency", "units"];
const GROUND: &[&str] = &["turf", "topsoil", "soil", "water", "note"];

/// The kind of table an element stands in; `None` for what has no form.
pub fn kind_of(job: &groundhold_plan::job::Job, element: &str) -> Option<&'static str> {
    let is = |found: bool, kind: &'static str| found.then_some(kind);
    is(job.pads.iter().any(|e| e.id == element), "pad")
        .or_else(|| is(job.walls.iter().any(|e| e.id == element), "wall"))
        .or_else(|| is(job.flights.iter().any(|e| e.id == element), "steps"))
        .or_else(|| is(job.ramps.iter().any(|e| e.id == element), "ramp"))
        .or_else(|| is(job.near.iter().any(|e| e.id == element), "near"))
        .or_else(|| is(element == "drain" || element == "outlet", "drain"))
        .or_else(|| is(element == "job", "job"))
        .or_else(|| is(element == "ground", "ground"))
}

/// The form of an element.
pub fn fields_of(files: &Files, kind: &str, element: &str) -> Vec<FormField> {
    let paths = match kind {
        "pad" => PAD,
        "wall" => WALL,
        "steps" => STEPS,
        "ramp" => RAMP,
        "near" => NEAR,
        "drain" => DRAIN,
        "job" => JOB,
        "ground" => GROUND,
        _ => &[],
    };
    let one = |path: &&'static str| {
        let path: &'static str = path;
        let value = field_text(files, element, path);
        let (table, key) = path.split_once('.').unwrap_or((kind, path));
        // What a wall's top is measured from is chosen once; only the part that is there can be typed.
        if table == "top" && value.is_none() {
            return None;
        }
        let top = [("above", "top above the ground it holds"), ("by", "top above the pad"), ("at", "level of the top")];
        let words = top.iter().find(|(k, _)| table == "top" && *k == key).map(|t| t.1);
        let known = row(table, key);
        let (one_of, expects): (&'static [&'static str], String) = match known.map(|r| r.holds) {
            Some(Holds::OneOf(all)) => (all, String::new()),
            Some(Holds::Quantity(q)) => (&[], format!("a {q} with its unit")),
            Some(Holds::Own(own)) => (&[], own.to_string()),
            _ if table == "top" => (&[], "a length with its unit".into()),
            _ => (&[], String::new()),
        };
        let words = words.or(known.map(|r| r.words)).unwrap_or(path);
        Some(FormField {
            path,
            words,
            value: value.unwrap_or_default(),
            one_of,
            expects,
            must: known.is_some_and(|r| r.must),
        })
    };
    paths.iter().filter_map(one).collect()
}

/// What was typed, with the unit that stood there before where only a number was typed.
fn completed(typed: &str, before: &str) -> String {
    let typed = typed.trim();
    let bare = typed.replace(',', ".");
    if bare.parse::<f64>().is_err() {
        return typed.into();
    }
    let unit = before.trim_start_matches(|c: char| c.is_ascii_digit() || matches!(c, '.' | '-' | '+' | '−' | ' '));
    let plain = !before.is_empty() && !unit.is_empty() && !unit.contains(|c: char| c.is_ascii_digit());
    if plain { format!("{bare} {unit}") } else { typed.into() }
}

/// The texts with a field as it was typed; an empty one is taken out where it may be.
///
/// # Errors
/// What was found and what was expected, in words.
pub fn tried(files: &Files, element: &str, field: &FormField, typed: &str) -> Result<Files, String> {
    let at = if element == "outlet" { "drain" } else { element };
    let after = if typed.trim().is_empty() {
        if field.must {
            return Err(format!("{} must not be empty; expected {}", field.words, field.expects));
        }
        clear_field(files, at, field.path)?
    } else {
        set_field(files, at, field.path, &completed(typed, &field.value))?
    };
    let before: Vec<String> = files.read().problems.iter().map(|p| p.says.clone()).collect();
    match after.read().problems.into_iter().find(|p| !before.contains(&p.says)) {
        Some(p) => Err(p.says),
        None => Ok(after),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn field(files: &Files, element: &str, path: &str) -> FormField {
        let kind = kind_of(&files.read().job.unwrap(), element).unwrap();
        fields_of(files, kind, element).into_iter().find(|f| f.path == path).unwrap()
    }

    #[test]
    fn a_bare_number_takes_the_unit_that_stood_there_and_any_unit_is_taken() {
        let files = crate::job::demo();
        let f = field(&files, "P1", "level");
        assert_eq!(f.value, "101.080 m");
        for (typed, level) in [("101.2", 101.2), ("332 ft", 332.0 * 0.3048), ("101,15", 101.15)] {
            let after = tried(&files, "P1", &f, typed).unwrap().read().whole().unwrap();
            let groundhold_plan::job::PadLevel::At(l) = after.pads[0].level else { panic!("no level") };
            assert!((l.to_m() - level).abs() < 1e-9, "{typed}");
        }
        assert!(tried(&files, "P1", &f, "balance").is_ok());
        assert!(tried(&files, "P1", &f, "abc").unwrap_err().contains("abc"));
        assert!(tried(&files, "P1", &f, "").is_err());
    }

    #[test]
    fn an_optional_field_can_be_emptied_and_filled_again() {
        let files = crate::job::demo();
        let f = field(&files, "W1", "spec.hole_depth");
        assert_eq!(f.value, "");
        let with = tried(&files, "W1", &f, "900 mm").unwrap();
        let f = field(&with, "W1", "spec.hole_depth");
        assert_eq!(f.value, "900 mm");
        assert_eq!(field(&tried(&with, "W1", &f, "").unwrap(), "W1", "spec.hole_depth").value, "");
        assert!(tried(&with, "W1", &f, "9 km").is_err());
    }

    #[test]
    fn every_element_of_the_demo_has_a_form() {
        let files = crate::job::demo();
        let job = files.read().job.unwrap();
        for id in job.ids().into_iter().chain(["drain", "job", "ground"]) {
            let kind = kind_of(&job, id).unwrap();
            assert!(fields_of(&files, kind, id).iter().any(|f| !f.value.is_empty()), "{id}");
        }
    }
}
