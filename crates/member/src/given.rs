//! How do the numbers of a formula come from a typed call, from a sheet and from a trace alike?

use groundhold_working::{Result, Trace, Unit, Value, Working, check_range};

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
                let named = [$((stringify!($field), self.$field),)*];
                let trace = $crate::given::trace_of(working, &[&named, beside].concat())?;
                let plain = |key: &str, value: f64| $crate::given::inside(working, key, value);
                Ok(($name { $($field: plain(stringify!($field), self.$field),)* }, trace))
            }
        }
    };
}
pub(crate) use given;

/// Checks every value against its row and lays them down in the order of the rows.
pub(crate) fn trace_of(working: &'static Working, named: &[(&str, f64)]) -> Result<Trace> {
    let mut values = Vec::with_capacity(working.inputs.len());
    for row in working.inputs {
        let found = named.iter().find(|(key, _)| *key == row.key).map(|(_, v)| *v).or(row.default);
        let value = found.unwrap_or(f64::NAN);
        check_range(working.name, row, value)?;
        values.push(Value::One(value));
    }
    Ok(Trace::new(working, values))
}

/// Turns degrees into radians where the row is an angle, exactly as a sheet does.
pub(crate) fn inside(working: &'static Working, key: &str, value: f64) -> f64 {
    let angle = working.inputs.iter().any(|row| row.key == key && row.unit == Unit::DEG);
    if angle { value.to_radians() } else { value }
}
