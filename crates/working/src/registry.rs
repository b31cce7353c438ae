//! What is a formula called, what goes in and out, within which limits does it hold, and who published it?

use groundhold_quantity::trim;

use crate::{Line, Number, Sheet, Shown, Unit};

/// Where a formula or a figure comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Source {
    /// Title, author, edition, year: enough to find it in a library. Or "common practice, no source", or "from memory: …".
    pub work: &'static str,
    /// Page, clause, equation or table in it.
    pub place: &'static str,
}

/// Who set a limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whose {
    /// The published source states it.
    Author,
    /// We state it, because the author states none.
    Ours,
}

/// The range in which an input is valid, both ends included, in the input's unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Least valid value.
    pub least: f64,
    /// Most valid value.
    pub most: f64,
    /// Who says so.
    pub whose: Whose,
}

impl Limits {
    /// Limits that the source states.
    pub const fn author(least: f64, most: f64) -> Limits {
        Limits { least, most, whose: Whose::Author }
    }
    /// Limits that we set.
    pub const fn ours(least: f64, most: f64) -> Limits {
        Limits { least, most, whose: Whose::Ours }
    }
}

/// One input of a working: the row from which check, message, form and schema follow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Input {
    /// What it is called on the command line and in a reference case: `phi`, `height`.
    pub key: &'static str,
    /// Its symbol in the formula.
    pub symbol: &'static str,
    /// Words for people.
    pub words: &'static str,
    /// Its unit.
    pub unit: Unit,
    /// Valid range of it, or of each value of a list.
    pub limits: Limits,
    /// The value taken when none is given; `None` means it must be given.
    pub default: Option<f64>,
}

impl Input {
    /// An input that must be given.
    pub const fn new(
        key: &'static str,
        symbol: &'static str,
        words: &'static str,
        unit: Unit,
        limits: Limits,
    ) -> Input {
        Input { key, symbol, words, unit, limits, default: None }
    }
    /// The same with a default.
    pub const fn or(mut self, default: f64) -> Input {
        self.default = Some(default);
        self
    }
}

/// One output of a working.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Output {
    /// What it is called in a reference case.
    pub key: &'static str,
    /// Words for people.
    pub words: &'static str,
    /// Its unit.
    pub unit: Unit,
}

/// What goes into or comes out of a working, in the unit of its row.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// One number.
    One(f64),
    /// A list of numbers.
    Many(Vec<f64>),
    /// A choice between words ("sand", "clay").
    Word(String),
}

impl From<f64> for Value {
    fn from(v: f64) -> Value {
        Value::One(v)
    }
}
impl From<&[f64]> for Value {
    fn from(v: &[f64]) -> Value {
        Value::Many(v.to_vec())
    }
}
impl From<Vec<f64>> for Value {
    fn from(v: Vec<f64>) -> Value {
        Value::Many(v)
    }
}
impl From<&str> for Value {
    fn from(v: &str) -> Value {
        Value::Word(v.into())
    }
}

/// Why a working gives no figure.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Refused {
    /// An input is missing.
    #[error("{working}: `{key}` ({words}) is missing")]
    Missing {
        /// The working.
        working: &'static str,
        /// The input.
        key: &'static str,
        /// Words for it.
        words: &'static str,
    },
    /// An input is outside the range in which the formula holds.
    #[error("{working}: {words} `{key}` is {value}, valid from {least} to {most} ({whose})")]
    OutOfRange {
        /// The working.
        working: &'static str,
        /// The input.
        key: &'static str,
        /// Words for it.
        words: &'static str,
        /// What was put in.
        value: String,
        /// Least valid value.
        least: String,
        /// Most valid value.
        most: String,
        /// Whose limits.
        whose: &'static str,
    },
    /// A name that this working does not know.
    #[error("{working}: there is no input `{key}`; it takes {known}")]
    Unknown {
        /// The working.
        working: &'static str,
        /// What was written.
        key: String,
        /// What it takes.
        known: String,
    },
    /// A list where one number is wanted, or the other way round.
    #[error("{working}: `{key}` should be {expected}")]
    Shape {
        /// The working.
        working: &'static str,
        /// The input.
        key: &'static str,
        /// What was expected.
        expected: &'static str,
    },
    /// The inputs are each in range, but together the formula has no answer.
    #[error("{working}: {why}")]
    NoAnswer {
        /// The working.
        working: &'static str,
        /// Why.
        why: String,
    },
}

/// Result of a working.
pub type Result<T> = std::result::Result<T, Refused>;

/// What comes out of a run, in the order of the working's outputs.
pub enum Found<'s> {
    /// One number (angles in radians inside).
    One(Shown<'s>),
    /// A list of numbers.
    Many(Vec<Shown<'s>>),
    /// A word.
    Word(String),
}

/// The numbers put into one run, each with its symbol on the sheet. Angles are in radians inside.
pub struct Given<'s> {
    working: &'static Working,
    sheet: &'s Sheet,
    values: Vec<Value>,
}

impl<'s> Given<'s> {
    fn index(&self, key: &str) -> usize {
        self.working.inputs.iter().position(|i| i.key == key).unwrap_or_else(|| {
            unreachable!("{}: the formula asks for `{key}`, which is not among its inputs", self.working.name)
        })
    }
    /// One number by the key of its row.
    ///
    /// # Errors
    /// [`Refused::Shape`] where a list or a word was given.
    pub fn one(&self, key: &str) -> Result<Shown<'s>> {
        let i = self.index(key);
        let row = &self.working.inputs[i];
        match self.values[i] {
            Value::One(v) => Ok(self.sheet.put(row.symbol, v, row.unit)),
            _ => Err(self.shape(row, "one number")),
        }
    }
    /// A list by the key of its row. One number is a list of one.
    ///
    /// # Errors
    /// [`Refused::Shape`] where a word was given.
    pub fn many(&self, key: &str) -> Result<Vec<Shown<'s>>> {
        let i = self.index(key);
        let row = &self.working.inputs[i];
        match &self.values[i] {
            Value::One(v) => Ok(vec![self.sheet.put(row.symbol, *v, row.unit)]),
            Value::Many(vs) => Ok(vs.iter().map(|v| self.sheet.put(row.symbol, *v, row.unit)).collect()),
            Value::Word(_) => Err(self.shape(row, "a list of numbers")),
        }
    }
    /// A word by the key of its row.
    ///
    /// # Errors
    /// [`Refused::Shape`] where a number was given.
    pub fn word(&self, key: &str) -> Result<&str> {
        let i = self.index(key);
        match &self.values[i] {
            Value::Word(w) => Ok(w),
            _ => Err(self.shape(&self.working.inputs[i], "a word")),
        }
    }
    /// The sheet, for remarks.
    pub fn sheet(&self) -> &'s Sheet {
        self.sheet
    }
    /// A refusal in the name of this working.
    pub fn no_answer(&self, why: impl Into<String>) -> Refused {
        Refused::NoAnswer { working: self.working.name, why: why.into() }
    }
    fn shape(&self, row: &Input, expected: &'static str) -> Refused {
        Refused::Shape { working: self.working.name, key: row.key, expected }
    }
}

/// A formula with its name, its inputs and outputs, and its source.
pub struct Working {
    /// `topic/method`, as it is called on the command line.
    pub name: &'static str,
    /// One line for people: the question it answers.
    pub title: &'static str,
    /// Who published it.
    pub source: Source,
    /// Cases it is not for, and what to use there; or "none known".
    pub not_for: &'static str,
    /// What goes in.
    pub inputs: &'static [Input],
    /// What comes out.
    pub outputs: &'static [Output],
    /// Runs it on a sheet.
    pub run: for<'s> fn(&Given<'s>) -> Result<Vec<Found<'s>>>,
}

impl std::fmt::Debug for Working {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Working({})", self.name)
    }
}

/// A finished run.
#[derive(Debug, Clone, PartialEq)]
pub struct Worked {
    /// What came out, in the order and units of the working's outputs.
    pub values: Vec<Value>,
    /// The lines of the hand calculation.
    pub lines: Vec<Line>,
}

impl Working {
    /// Runs it with values by key, in the units of the rows.
    ///
    /// # Errors
    /// [`Refused`] names the input and what was expected.
    pub fn work(&'static self, given: &[(&str, Value)]) -> Result<Worked> {
        for (key, _) in given {
            if !self.inputs.iter().any(|i| i.key == *key) {
                let known = self.inputs.iter().map(|i| i.key).collect::<Vec<_>>().join(", ");
                return Err(Refused::Unknown { working: self.name, key: (*key).into(), known });
            }
        }
        let values = self
            .inputs
            .iter()
            .map(|row| match given.iter().find(|(k, _)| *k == row.key) {
                Some((_, v)) => Ok(v.clone()),
                None => row.default.map(Value::One).ok_or(Refused::Missing {
                    working: self.name,
                    key: row.key,
                    words: row.words,
                }),
            })
            .collect::<Result<Vec<_>>>()?;
        self.work_in_order(values)
    }

    /// Runs it with one value per input row, in their order.
    ///
    /// # Errors
    /// [`Refused`] names the input and what was expected.
    pub fn work_in_order(&'static self, values: Vec<Value>) -> Result<Worked> {
        for (row, value) in self.inputs.iter().zip(&values) {
            match value {
                Value::One(v) => check_range(self.name, row, *v)?,
                Value::Many(vs) => vs.iter().try_for_each(|v| check_range(self.name, row, *v))?,
                Value::Word(_) => {}
            }
        }
        let sheet = Sheet::new();
        let found = (self.run)(&Given { working: self, sheet: &sheet, values })?;
        let read = |unit: Unit, v: Shown<'_>| if unit == Unit::DEG { v.value().to_degrees() } else { v.value() };
        let values = self
            .outputs
            .iter()
            .zip(found)
            .map(|(o, f)| match f {
                Found::One(v) => Value::One(read(o.unit, v)),
                Found::Many(vs) => Value::Many(vs.into_iter().map(|v| read(o.unit, v)).collect()),
                Found::Word(w) => Value::Word(w),
            })
            .collect();
        Ok(Worked { values, lines: sheet.lines() })
    }
}

/// Refuses a value outside the row's limits, naming them and whose they are.
///
/// # Errors
/// [`Refused::OutOfRange`].
pub fn check_range(working: &'static str, row: &Input, value: f64) -> Result<()> {
    let Limits { least, most, whose } = row.limits;
    if least <= value && value <= most {
        return Ok(());
    }
    let with_unit = |v: f64| {
        if v.is_finite() { format!("{} {}", trim(v, 4), row.unit.0).trim_end().to_string() } else { format!("{v}") }
    };
    Err(Refused::OutOfRange {
        working,
        key: row.key,
        words: row.words,
        value: with_unit(value),
        least: with_unit(least),
        most: with_unit(most),
        whose: match whose {
            Whose::Author => "the source's limits",
            Whose::Ours => "our limits; the source states none",
        },
    })
}

/// A working and the numbers that were put into it: the origin of a figure in a plan.
#[derive(Debug, Clone)]
pub struct Trace {
    /// The working.
    pub working: &'static Working,
    /// One value per input row, in their order and units.
    pub given: Vec<Value>,
}

impl Trace {
    /// From one value per input row, in their order and units (angles in degrees).
    pub fn new(working: &'static Working, given: Vec<Value>) -> Trace {
        debug_assert_eq!(working.inputs.len(), given.len(), "{}", working.name);
        Trace { working, given }
    }
    /// The hand calculation, made again.
    ///
    /// # Errors
    /// As the working refuses.
    pub fn sheet(&self) -> Result<Worked> {
        self.working.work_in_order(self.given.clone())
    }
}
impl PartialEq for Trace {
    fn eq(&self, o: &Trace) -> bool {
        self.working.name == o.working.name && self.given == o.given
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    static HALF: Working = Working {
        name: "test/half",
        title: "Half of a height.",
        source: Source { work: "arithmetic", place: "" },
        not_for: "none known",
        inputs: &[Input::new("height", "H", "height", Unit::M, Limits::ours(0.0, 10.0))],
        outputs: &[Output { key: "half", words: "half of it", unit: Unit::M }],
        run: |g| Ok(vec![Found::One((g.one("height")? / 2.0).named("h", Unit::M))]),
    };

    #[test]
    fn a_working_shows_its_line_and_its_value() {
        let w = HALF.work(&[("height", 3.0.into())]).unwrap();
        assert_eq!(w.values, [Value::One(1.5)]);
        assert_eq!(w.lines[0].to_string(), "h = H/2 = 3/2 = 1.5 m");
    }

    #[test]
    fn the_last_valid_value_is_taken_and_the_first_invalid_refused() {
        assert!(HALF.work(&[("height", 10.0.into())]).is_ok());
        let no = HALF.work(&[("height", 10.001.into())]).unwrap_err().to_string();
        assert_eq!(
            no,
            "test/half: height `height` is 10.001 m, valid from 0 m to 10 m (our limits; the source states none)"
        );
        assert!(HALF.work(&[("height", f64::NAN.into())]).is_err());
        assert!(HALF.work(&[]).unwrap_err().to_string().contains("missing"));
        assert!(HALF.work(&[("h", 1.0.into())]).unwrap_err().to_string().contains("it takes height"));
    }
}
