//! Which sizes does a wall system take, each written down once? From a row follow reading, writing, one changed field,
//! the schema for editors and the words of an error.

use groundhold_quantity::{Angle, Density, Length, Pressure, Quantity, Share, Slope, UnitWeight, parse, trim};

/// What a field of a system holds.
#[derive(Debug, Clone, Copy)]
pub enum Holds {
    /// A length.
    Length,
    /// A slope, rise over run, or a lean, run over rise.
    Slope,
    /// An angle.
    Angle,
    /// A share.
    Share,
    /// A pressure or a strength.
    Pressure,
    /// A unit weight.
    UnitWeight,
    /// A density.
    Density,
    /// A whole number.
    Whole,
    /// true or false.
    Flag,
    /// One of these words.
    OneOf(&'static [&'static str]),
    /// A list of lengths.
    Lengths,
    /// Text that its system explains and reads itself.
    Own {
        /// What is expected, with an example.
        like: &'static str,
        /// Whether a text is complete by itself, as in a file.
        whole: fn(&str) -> Result<(), String>,
    },
}

/// One field of a system.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// Its key in a job file.
    pub key: &'static str,
    /// Words for people.
    pub words: &'static str,
    /// What it holds.
    pub holds: Holds,
    /// Whether it must be there.
    pub must: bool,
    /// Least value in SI units.
    pub least: f64,
    /// Most value in SI units.
    pub most: f64,
}

/// A value of a field.
#[derive(Debug, Clone, PartialEq)]
pub enum Given {
    /// A length.
    Length(Length),
    /// A slope.
    Slope(Slope),
    /// An angle.
    Angle(Angle),
    /// A share.
    Share(Share),
    /// A pressure.
    Pressure(Pressure),
    /// A unit weight.
    UnitWeight(UnitWeight),
    /// A density.
    Density(Density),
    /// A whole number.
    Whole(u32),
    /// true or false.
    Flag(bool),
    /// A word or text.
    Text(String),
    /// A list of lengths.
    Lengths(Vec<Length>),
}

/// A field with the way into and out of the sizes of its system.
pub struct Row<S: 'static> {
    /// The field.
    pub field: Field,
    /// Its value; `None` where it is solved, or left out.
    pub get: fn(&S) -> Option<Given>,
    /// Sets it. A value of another kind than the field holds is refused in words.
    pub set: fn(&mut S, &Given) -> Result<(), String>,
}

impl Field {
    /// A field without limits that may be left out.
    pub const fn new(key: &'static str, words: &'static str, holds: Holds) -> Field {
        Field { key, words, holds, must: false, least: f64::NEG_INFINITY, most: f64::INFINITY }
    }
    /// The same within limits, in SI units.
    pub const fn within(mut self, least: f64, most: f64) -> Field {
        self.least = least;
        self.most = most;
        self
    }
    /// The same, and it must be there.
    pub const fn must(mut self) -> Field {
        self.must = true;
        self
    }
    /// Reads a text as it stands in a job file or behind a command.
    ///
    /// # Errors
    /// What was found and what was expected.
    pub fn read(&self, text: &str) -> Result<Given, String> {
        match self.holds {
            Holds::Length => self.quantity(text, Given::Length),
            Holds::Slope => self.quantity(text, Given::Slope),
            Holds::Angle => self.quantity(text, Given::Angle),
            Holds::Share => self.quantity(text, Given::Share),
            Holds::Pressure => self.quantity(text, Given::Pressure),
            Holds::UnitWeight => self.quantity(text, Given::UnitWeight),
            Holds::Density => self.quantity(text, Given::Density),
            Holds::Whole => {
                let n = text.trim().parse::<u32>().map_err(|_| format!("found `{text}`, expected a whole number"))?;
                self.inside(text, f64::from(n)).map(|()| Given::Whole(n))
            }
            Holds::Flag => match text.trim() {
                "true" => Ok(Given::Flag(true)),
                "false" => Ok(Given::Flag(false)),
                _ => Err(format!("found `{text}`, expected true or false")),
            },
            Holds::OneOf(words) if words.contains(&text) => Ok(Given::Text(text.into())),
            Holds::OneOf(words) => Err(format!("found `{text}`, expected {}", words.join(" or "))),
            Holds::Own { .. } => Ok(Given::Text(text.into())),
            Holds::Lengths => {
                let each: Result<Vec<Length>, String> = text
                    .split(',')
                    .map(|t| {
                        let l = parse::<Length>(t).map_err(|e| e.to_string())?;
                        self.inside(t, l.to_m()).map(|()| l)
                    })
                    .collect();
                each.map(Given::Lengths)
            }
        }
    }
    fn quantity<Q: Quantity>(&self, text: &str, of: fn(Q) -> Given) -> Result<Given, String> {
        let q = parse::<Q>(text).map_err(|e| e.to_string())?;
        self.inside(text, q.in_si()).map(|()| of(q))
    }
    fn inside(&self, text: &str, v: f64) -> Result<(), String> {
        if self.least <= v && v <= self.most {
            return Ok(());
        }
        let (least, most) = (trim(self.least, 4), trim(self.most, 4));
        Err(format!("found `{text}`, expected {} from {least} to {most}{}", self.words, self.si_unit()))
    }
    /// The SI unit in which least and most are counted, with a blank before it.
    pub fn si_unit(&self) -> &'static str {
        match self.holds {
            Holds::Length | Holds::Lengths => " m",
            Holds::Slope => " (rise over run)",
            Holds::Angle => " rad",
            Holds::Pressure => " Pa",
            Holds::UnitWeight => " N/m³",
            Holds::Density => " kg/m³",
            _ => "",
        }
    }
}

/// What is said where a value of another kind is handed in.
pub fn other_kind() -> String {
    "found a value of another kind than this field holds".into()
}

/// A row that reads and writes one field of a struct: `row!(Spec, FIELD, path.to.it, Length)`; with `Some` for one that
/// may be left out; `row!(Spec, FIELD, [path.to.it], one of "word" => Value, …)` for a choice.
#[macro_export]
macro_rules! row {
    ($spec:ty, $field:expr, $($path:ident).+, Some $kind:ident) => {
        $crate::Row::<$spec> {
            field: $field,
            get: |s| s.$($path).+.clone().map($crate::Given::$kind),
            set: |s, given| match given {
                $crate::Given::$kind(v) => {
                    s.$($path).+ = Some(v.clone());
                    Ok(())
                }
                _ => Err($crate::other_kind()),
            },
        }
    };
    ($spec:ty, $field:expr, $($path:ident).+, $kind:ident) => {
        $crate::Row::<$spec> {
            field: $field,
            get: |s| Some($crate::Given::$kind(s.$($path).+.clone())),
            set: |s, given| match given {
                $crate::Given::$kind(v) => {
                    s.$($path).+ = v.clone();
                    Ok(())
                }
                _ => Err($crate::other_kind()),
            },
        }
    };
    ($spec:ty, $field:expr, $place:tt, one of $($word:literal => $value:expr),+) => {
        $crate::Row::<$spec> {
            field: $field,
            get: |s| {
                $(if $crate::place!(s $place) == $value {
                    return Some($crate::Given::Text($word.into()));
                })+
                None
            },
            set: |s, given| match given {
                $($crate::Given::Text(t) if t == $word => {
                    $crate::place!(s $place) = $value;
                    Ok(())
                })+
                $crate::Given::Text(t) => Err(format!("found `{t}`, expected {}", [$($word),+].join(" or "))),
                _ => Err($crate::other_kind()),
            },
        }
    };
}

/// A place in a struct: `place!(s [hole.fill])`; for [`row!`].
#[doc(hidden)]
#[macro_export]
macro_rules! place {
    ($s:ident [$($path:ident).+]) => {
        $s.$($path).+
    };
}
