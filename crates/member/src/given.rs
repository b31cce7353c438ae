//! How do the numbers of a formula come from a typed call, from a sheet and from a trace alike?

use groundhold_working::{Input, Result, Unit, Value, Working, check_range};

/// Declares the inputs of one formula as a struct generic over the number: its fields are the keys of the working's rows.
macro_rules! given {
    ($(#[$doc:meta])* $name:ident { $($(#[$field_doc:meta])* $field:ident,)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub struct $name<N> { $($(#[$field_doc])* pub $field: N,)* }

        impl<'s> $name<groundhold_working::Shown<'s>> {
            /// Puts the inputs of a run on its sheet.
            fn put(g: &groundhold_working::Given<'s>) -> groundhold_working::Result<Self> {
                Ok($name { $($field: g.one(stringify!($field))?,)* })
            }
        }
        impl<N: groundhold_working::Number> $name<N> {
            /// The same as bare numbers, for a search.
            #[allow(dead_code)]
            fn values(&self) -> $name<f64> {
                $name { $($field: self.$field.value(),)* }
            }
        }
        impl $name<f64> {
            /// From values in the units of the rows (degrees for an angle): checked, ready for the formula, with their trace.
            ///
            /// # Errors
            /// Where a value lies outside the limits of its row.
            pub fn traced(
                self,
                working: &'static groundhold_working::Working,
            ) -> groundhold_working::Result<(Self, groundhold_working::Trace)> {
                self.traced_with(working, &[])
            }
            /// The same, with inputs that the working takes beside those of the formula.
            ///
            /// # Errors
            /// Where a value lies outside the limits of its row.
            pub fn traced_with(
                self,
                working: &'static groundhold_working::Working,
                beside: &[(&str, f64)],
            ) -> groundhold_working::Result<(Self, groundhold_working::Trace)> {
                let mut values = Vec::with_capacity(working.inputs.len());
                let mut of = $crate::given::Rows { working, next: 0 };
                let inside = $name { $($field: of.inside(stringify!($field), self.$field),)* };
                let named = [$((stringify!($field), self.$field),)*];
                $crate::given::lay_down(working, &named, beside, &mut values)?;
                Ok((inside, groundhold_working::Trace::new(working, values)))
            }
            /// The same without a trace, where a search asks many times: checked, ready for the formula.
            ///
            /// # Errors
            /// Where a value lies outside the limits of its row.
            #[allow(dead_code)]
            pub(crate) fn checked(
                self,
                working: &'static groundhold_working::Working,
            ) -> groundhold_working::Result<Self> {
                let mut of = $crate::given::Rows { working, next: 0 };
                Ok($name { $($field: of.within(stringify!($field), self.$field)?,)* })
            }
        }
    };
}
pub(crate) use given;

/// Declares the inputs of one formula with their rows: `field: symbol, words, unit, limits, default;`.
macro_rules! takes {
    ($(#[$doc:meta])* $name:ident {
        $($field:ident: $symbol:literal, $words:literal, $unit:ident, $limits:expr $(, $default:expr)?;)*
    }) => {
        $crate::given::given! { $(#[$doc])* $name { $(#[doc = $words] $field,)* } }
        impl $name<f64> {
            /// The rows of these inputs, in their order.
            pub const INPUTS: &'static [groundhold_working::Input] = &[$(
                groundhold_working::Input::new(
                    stringify!($field), $symbol, $words, groundhold_working::Unit::$unit, $limits,
                )$(.or($default))?,
            )*];
        }
    };
}
pub(crate) use takes;

/// Declares what one formula gives, with its rows: `field: unit, words;`.
macro_rules! gives {
    ($(#[$doc:meta])* $name:ident { $($field:ident: $unit:ident, $words:literal;)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub struct $name<N> { $(#[doc = $words] pub $field: N,)* }
        impl $name<f64> {
            /// The rows of these figures, in their order.
            pub const OUTPUTS: &'static [groundhold_working::Output] = &[$(
                groundhold_working::Output {
                    key: stringify!($field), words: $words, unit: groundhold_working::Unit::$unit,
                },
            )*];
        }
        impl<'s> $name<groundhold_working::Shown<'s>> {
            /// As a run of a working gives them.
            fn found(self) -> groundhold_working::Result<Vec<groundhold_working::Found<'s>>> {
                Ok(vec![$(groundhold_working::Found::One(self.$field),)*])
            }
        }
    };
}
pub(crate) use gives;

/// Checks every value against its row and lays them down in the order of the rows.
pub(crate) fn lay_down(
    working: &'static Working,
    named: &[(&'static str, f64)],
    beside: &[(&str, f64)],
    values: &mut Vec<Value>,
) -> Result<()> {
    for (k, row) in working.inputs.iter().enumerate() {
        // The fields of most formulas stand in the order of the rows.
        let in_place = named.get(k).filter(|(key, _)| *key == row.key);
        let found = in_place.or_else(|| named.iter().find(|(key, _)| *key == row.key)).map(|(_, v)| *v);
        let found = found.or_else(|| beside.iter().find(|(key, _)| *key == row.key).map(|(_, v)| *v));
        let value = found.or(row.default).unwrap_or(f64::NAN);
        check_range(working.name, row, value)?;
        values.push(Value::One(value));
    }
    Ok(())
}

/// The rows of a working, asked for by key and mostly in their order.
pub(crate) struct Rows {
    pub working: &'static Working,
    pub next: usize,
}

impl Rows {
    fn row(&mut self, key: &str) -> Option<&'static Input> {
        let rows = self.working.inputs;
        let at = match rows.get(self.next) {
            Some(row) if row.key == key => self.next,
            _ => rows.iter().position(|row| row.key == key)?,
        };
        self.next = at + 1;
        Some(&rows[at])
    }
    /// Turns degrees into radians where the row is an angle, exactly as a sheet does.
    pub fn inside(&mut self, key: &str, value: f64) -> f64 {
        match self.row(key) {
            Some(row) if row.unit == Unit::DEG => value.to_radians(),
            _ => value,
        }
    }
    /// The same, refused where the value lies outside the limits of its row.
    pub fn within(&mut self, key: &str, value: f64) -> Result<f64> {
        let Some(row) = self.row(key) else { return Ok(value) };
        check_range(self.working.name, row, value)?;
        Ok(if row.unit == Unit::DEG { value.to_radians() } else { value })
    }
}
