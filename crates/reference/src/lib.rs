//! Do the workings still give the published figures? Reads check cases written as TOML and runs them.
//!
//! ```toml
//! schema = 1
//! [[case]]
//! id = "EP-01"
//! working = "earth-pressure/rankine"
//! about = "active force, dry sand"
//! status = "C"             # C seen in print · P partly · M from memory, recomputed · M0 from memory · K constructed · CP common practice
//! source = "Das, Principles of Geotechnical Engineering, 7th ed., Ex. 13.2"
//! tolerance = 0.005        # relative; or `tolerance_abs`
//! [case.inputs]            # by the keys of the working; text with a unit, or a bare number in the working's unit
//! height = "6 m"
//! phi = "36 deg"
//! [case.expect]            # by the keys of the working's outputs, in their units
//! ka = 0.2596
//! # miss = "why the engine differs": a known miss, which breaks the run when it passes
//! ```

use groundhold_quantity::{self as q, parse};
use groundhold_working::{Unit, Value, Working};

/// One published case.
#[derive(Debug, Clone)]
pub struct Case {
    /// Its stable id.
    pub id: String,
    /// The working it checks.
    pub working: String,
    /// What it is about.
    pub about: String,
    /// How far its figures are confirmed.
    pub status: String,
    /// Title, edition, place.
    pub source: String,
    /// Relative or absolute tolerance.
    pub tolerance: Tolerance,
    /// Inputs by key.
    pub inputs: Vec<(String, toml::Value)>,
    /// Expected outputs by key.
    pub expect: Vec<(String, toml::Value)>,
    /// The reason of a known miss.
    pub miss: Option<String>,
}

/// How near is near enough.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tolerance {
    /// A share of the expected value.
    Relative(f64),
    /// In the output's unit.
    Absolute(f64),
}

/// A case file that cannot be understood.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CaseError {
    /// Not TOML.
    #[error("not readable as TOML: {0}")]
    Toml(String),
    /// A case lacks something.
    #[error("case {case}: {what}")]
    Incomplete {
        /// Its id, or its number in the file.
        case: String,
        /// What is missing or wrong.
        what: String,
    },
}

/// Reads a file of cases.
///
/// # Errors
/// [`CaseError`] names the case and what is missing.
pub fn read(text: &str) -> Result<Vec<Case>, CaseError> {
    let table: toml::Table = text.parse().map_err(|e: toml::de::Error| CaseError::Toml(e.to_string()))?;
    let Some(toml::Value::Array(cases)) = table.get("case") else { return Ok(vec![]) };
    cases.iter().enumerate().map(|(i, c)| read_case(i, c)).collect()
}

fn read_case(number: usize, value: &toml::Value) -> Result<Case, CaseError> {
    let id = value.get("id").and_then(|v| v.as_str()).map_or(format!("number {}", number + 1), String::from);
    let wrong = |what: &str| CaseError::Incomplete { case: id.clone(), what: what.into() };
    let text = |key: &str| {
        value.get(key).and_then(|v| v.as_str()).map(String::from).ok_or_else(|| wrong(&format!("`{key}` is missing")))
    };
    let pairs = |key: &str| match value.get(key) {
        Some(toml::Value::Table(t)) => Ok(t.iter().map(|(k, v)| (k.clone(), v.clone())).collect()),
        _ => Err(wrong(&format!("a table `{key}` is missing"))),
    };
    let tolerance = match (number_of(value.get("tolerance")), number_of(value.get("tolerance_abs"))) {
        (_, Some(a)) => Tolerance::Absolute(a),
        (Some(r), None) => Tolerance::Relative(r),
        (None, None) => return Err(wrong("`tolerance` (relative) or `tolerance_abs` is missing")),
    };
    Ok(Case {
        working: text("working")?,
        about: text("about")?,
        status: text("status")?,
        source: text("source")?,
        tolerance,
        inputs: pairs("inputs")?,
        expect: pairs("expect")?,
        miss: value.get("miss").and_then(|v| v.as_str()).map(String::from),
        id,
    })
}

fn number_of(v: Option<&toml::Value>) -> Option<f64> {
    match v? {
        toml::Value::Float(f) => Some(*f),
        toml::Value::Integer(i) => Some(*i as f64),
        _ => None,
    }
}

/// One figure compared.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// The output's key.
    pub key: String,
    /// What the source says.
    pub expected: Value,
    /// What the working gives.
    pub found: Option<Value>,
    /// Within tolerance.
    pub agrees: bool,
}

/// What became of a case.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// Its id.
    pub id: String,
    /// Each expected figure.
    pub compared: Vec<Compared>,
    /// Why it could not be run, if so.
    pub refused: Option<String>,
    /// The reason of a known miss.
    pub miss: Option<String>,
}

impl Outcome {
    /// True when every figure agrees.
    pub fn agrees(&self) -> bool {
        self.refused.is_none() && self.compared.iter().all(|c| c.agrees)
    }
    /// True when it is as it should be: it agrees, or it is a known miss and still misses.
    pub fn is_fine(&self) -> bool {
        self.agrees() == self.miss.is_none()
    }
}

/// Runs a case against the workings.
pub fn run(case: &Case, workings: &[&'static Working]) -> Outcome {
    let mut outcome = Outcome { id: case.id.clone(), compared: vec![], refused: None, miss: case.miss.clone() };
    match compare(case, workings) {
        Ok(c) => outcome.compared = c,
        Err(why) => outcome.refused = Some(why),
    }
    outcome
}

fn compare(case: &Case, workings: &[&'static Working]) -> Result<Vec<Compared>, String> {
    let working = workings
        .iter()
        .find(|w| w.name == case.working)
        .ok_or_else(|| format!("there is no working `{}`", case.working))?;
    let inputs = case
        .inputs
        .iter()
        .map(|(key, v)| {
            let unit = working.inputs.iter().find(|i| i.key == key).map_or(Unit::NONE, |i| i.unit);
            to_value(v, unit).map(|v| (key.as_str(), v)).map_err(|e| format!("`{key}`: {e}"))
        })
        .collect::<Result<Vec<_>, _>>()?;
    let worked = working.work(&inputs).map_err(|e| e.to_string())?;
    case.expect
        .iter()
        .map(|(key, v)| {
            let at = working
                .outputs
                .iter()
                .position(|o| o.key == key)
                .ok_or_else(|| format!("{} has no output `{key}`", working.name))?;
            let expected = to_value(v, working.outputs[at].unit)?;
            let found = worked.values.get(at).cloned();
            let agrees = found.as_ref().is_some_and(|f| agree(&expected, f, case.tolerance));
            Ok(Compared { key: key.clone(), expected, found, agrees })
        })
        .collect()
}

fn agree(expected: &Value, found: &Value, tolerance: Tolerance) -> bool {
    let near = |e: f64, f: f64| match tolerance {
        Tolerance::Relative(r) => (e - f).abs() <= r * e.abs().max(1e-12),
        Tolerance::Absolute(a) => (e - f).abs() <= a,
    };
    match (expected, found) {
        (Value::One(e), Value::One(f)) => near(*e, *f),
        (Value::Many(e), Value::Many(f)) => e.len() == f.len() && e.iter().zip(f).all(|(e, f)| near(*e, *f)),
        (Value::Word(e), Value::Word(f)) => e == f,
        _ => false,
    }
}

fn to_value(v: &toml::Value, unit: Unit) -> Result<Value, String> {
    match v {
        toml::Value::Float(f) => Ok(Value::One(*f)),
        toml::Value::Integer(i) => Ok(Value::One(*i as f64)),
        toml::Value::Boolean(b) => Ok(Value::Word(b.to_string())),
        toml::Value::String(s) => read_text(s, unit),
        toml::Value::Array(a) => a
            .iter()
            .map(|x| match to_value(x, unit)? {
                Value::One(v) => Ok(v),
                _ => Err("a list holds numbers only".to_string()),
            })
            .collect::<Result<Vec<_>, _>>()
            .map(Value::Many),
        _ => Err("expected a number, a text with a unit, or a list of them".into()),
    }
}

/// Reads what a person typed for an input: `36 deg`, `6 m`, `0.4`, a list `1.2, 1.5` or a word.
///
/// # Errors
/// What was expected, in words.
pub fn read_text(text: &str, unit: Unit) -> Result<Value, String> {
    if let Ok(v) = text.trim().parse::<f64>() {
        return Ok(Value::One(v));
    }
    if text.contains(',') {
        let parts = text.split(',').map(|t| match read_text(t, unit)? {
            Value::One(v) => Ok(v),
            _ => Err(format!("`{}` is not a number", t.trim())),
        });
        return parts.collect::<Result<Vec<_>, String>>().map(Value::Many);
    }
    if text.starts_with(|c: char| c.is_ascii_alphabetic()) {
        return Ok(Value::Word(text.trim().into()));
    }
    in_unit(text, unit).map(Value::One)
}

fn in_unit(t: &str, unit: Unit) -> Result<f64, String> {
    fn said<Q: q::Quantity>(t: &str) -> Result<Q, String> {
        parse::<Q>(t).map_err(|e| e.to_string())
    }
    Ok(match unit.0 {
        "°" => said::<q::Angle>(t)?.to_deg(),
        "m" => said::<q::Length>(t)?.to_m(),
        "mm" => said::<q::Length>(t)?.to_mm(),
        "ft" => said::<q::Length>(t)?.to_ft(),
        "in" => said::<q::Length>(t)?.to_inch(),
        "m²" => said::<q::Area>(t)?.to_m2(),
        "mm²" => said::<q::Area>(t)?.to_mm2(),
        "m³" => said::<q::Volume>(t)?.to_m3(),
        "kN" => said::<q::Force>(t)?.to_kn(),
        "N" => said::<q::Force>(t)?.to_n(),
        "lb" => said::<q::Force>(&t.replace("lb", "lbf").replace("lbff", "lbf"))?.to_lbf(),
        "kN/m" => said::<q::LineForce>(t)?.to_kn_per_m(),
        "kNm" => said::<q::Moment>(t)?.to_knm(),
        "kPa" => said::<q::Pressure>(t)?.to_kpa(),
        "MPa" => said::<q::Pressure>(t)?.to_mpa(),
        "psf" => said::<q::Pressure>(t)?.to_psf(),
        "kN/m³" => said::<q::UnitWeight>(t)?.to_kn_per_m3(),
        "kg" => said::<q::Mass>(t)?.to_kg(),
        "kg/m³" => said::<q::Density>(t)?.to_kg_per_m3(),
        "l/s" => said::<q::Flow>(t)?.to_l_per_s(),
        "m³/s" => said::<q::Flow>(t)?.to_m3_per_s(),
        "mm/h" => said::<q::RainIntensity>(t)?.to_mm_per_h(),
        "h" => said::<q::Time>(t)?.to_h(),
        "" => {
            said::<q::Slope>(t).map(q::Slope::to_ratio).map_err(|_| format!("found `{t}`, expected a bare number"))?
        }
        "%" => said::<q::Slope>(t)?.to_percent(),
        other => return Err(format!("found `{t}`, expected a bare number in {other}")),
    })
}

/// Runs every case of a file and says in text what is not as it should be; empty when all is fine. For tests.
pub fn complaints(text: &str, workings: &[&'static Working]) -> Vec<String> {
    let cases = match read(text) {
        Ok(c) => c,
        Err(e) => return vec![e.to_string()],
    };
    let mut said = vec![];
    for case in &cases {
        let outcome = run(case, workings);
        if outcome.is_fine() {
            continue;
        }
        if outcome.agrees() {
            said.push(format!("{}: a known miss that now agrees; remove its `miss`", case.id));
            continue;
        }
        if let Some(why) = &outcome.refused {
            said.push(format!("{}: {why}", case.id));
        }
        for c in outcome.compared.iter().filter(|c| !c.agrees) {
            said.push(format!("{}: {} expected {:?}, found {:?}", case.id, c.key, c.expected, c.found));
        }
    }
    said
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_case_without_a_tolerance_is_refused_by_its_id() {
        let said =
            read("[[case]]\nid = \"X\"\nworking = \"a/b\"\nabout = \"\"\nstatus = \"C\"\nsource = \"\"\n").unwrap_err();
        assert_eq!(said.to_string(), "case X: `tolerance` (relative) or `tolerance_abs` is missing");
    }

    #[test]
    fn typed_inputs_are_read_in_the_unit_of_their_row() {
        assert_eq!(read_text("10 ft", Unit::M), Ok(Value::One(3.048)));
        assert_eq!(read_text("1.2, 1.5", Unit::M), Ok(Value::Many(vec![1.2, 1.5])));
        assert_eq!(read_text("sand", Unit::NONE), Ok(Value::Word("sand".into())));
        assert!(read_text("6 kg", Unit::M).unwrap_err().contains("a length"));
    }
}
