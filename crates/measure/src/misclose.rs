//! How far may a level book miss its closing level?

use groundhold_quantity::Length;
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

/// What a rule counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Per {
    /// The square root of the number of set-ups.
    SetUp,
    /// The square root of the length of the run in kilometres.
    Kilometre,
}

/// A rule for the largest misclose: `k` times a square root.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MiscloseRule {
    /// As a job file names it: `construction`.
    pub key: &'static str,
    /// In words.
    pub words: &'static str,
    /// The factor.
    pub k: Length,
    /// What is counted.
    pub per: Per,
    /// Who says so.
    pub source: Source,
}

/// The rules that are known by name. The first is the usual one on a building site.
pub static RULES: &[MiscloseRule] = &[
    MiscloseRule {
        key: "construction",
        words: "5 mm times the square root of the number of set-ups",
        k: Length::mm(5.0),
        per: Per::SetUp,
        source: Source {
            work: "from memory: Uren and Price, Surveying for Engineers",
            place: "levelling, precision of levelling on construction sites",
        },
    },
    MiscloseRule {
        key: "ordinary",
        words: "20 mm times the square root of the kilometres run",
        k: Length::mm(20.0),
        per: Per::Kilometre,
        source: Source { work: "from memory: ordinary engineering levelling", place: "no clause known" },
    },
    MiscloseRule {
        key: "third-order",
        words: "12 mm times the square root of the kilometres run",
        k: Length::mm(12.0),
        per: Per::Kilometre,
        source: Source {
            work: "from memory: FGCS, Standards and Specifications for Geodetic Control Networks, 1984",
            place: "third-order vertical control, loop misclosure",
        },
    },
];

impl Default for MiscloseRule {
    fn default() -> Self {
        RULES[0]
    }
}

/// The rule of this name.
pub fn rule(key: &str) -> Option<&'static MiscloseRule> {
    RULES.iter().find(|r| r.key == key)
}

impl MiscloseRule {
    /// The largest misclose allowed, with its working. `None` where nothing was run, or where the rule counts kilometres
    /// and the length of the run is not known.
    pub fn allowed(&self, set_ups: usize, run: Option<Length>) -> Option<(Length, Trace)> {
        let extent = match self.per {
            Per::SetUp => set_ups as f64,
            Per::Kilometre => run?.to_m() / 1000.0,
        };
        let given = [self.k.to_mm(), extent];
        let in_range = MISCLOSE_TOLERANCE.inputs.iter().zip(given).all(|(row, v)| {
            let Limits { least, most, .. } = row.limits;
            least <= v && v <= most
        });
        in_range.then(|| {
            let allowed = Length::mm(tolerance(given[0], given[1]));
            (allowed, Trace::new(&MISCLOSE_TOLERANCE, given.map(Into::into).to_vec()))
        })
    }
}

/// Largest misclose of a level run.
///
/// # Source
/// The rules differ in factor and count only; each names its own source in [`RULES`].
/// # Symbols
/// | k | factor of the rule | mm | 0.1 to 100 (ours) |
/// | N | set-ups, or kilometres run, as the rule counts | – | 0.001 to 10 000 (ours) |
/// # Gives
/// Largest misclose in mm. Grows with the square root: four times the run, twice the misclose.
/// # Not for
/// Judging a single difference between two rows of one set-up.
/// # Errors
/// A value outside its limits.
/// # By hand
/// Reference cases LV-07a to LV-07c.
pub fn tolerance<N: Number>(k: N, extent: N) -> N {
    (k * extent.sqrt()).named("E", Unit::MM)
}

/// Largest misclose of a level run by `k` times a square root.
pub static MISCLOSE_TOLERANCE: Working = Working {
    name: "level/misclose-tolerance",
    title: "How far may a level book miss its closing level?",
    source: Source {
        work: "from memory: 5 mm √N set-ups and 20 mm √km in site levelling; 12 mm √km: FGCS, Standards and Specifications for Geodetic Control Networks, 1984",
        place: "third-order loop misclosure for the latter",
    },
    not_for: "a difference between two rows of one set-up",
    inputs: &[
        Input::new("k", "k", "factor of the rule", Unit::MM, Limits::ours(0.1, 100.0)),
        Input::new("extent", "N", "set-ups, or kilometres run", Unit::NONE, Limits::ours(0.001, 10_000.0)),
    ],
    outputs: &[Output { key: "allowed", words: "largest misclose", unit: Unit::MM }],
    run: |g| Ok(vec![Found::One(tolerance(g.one("k")?, g.one("extent")?))]),
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_rule_counts_set_ups_and_four_of_them_allow_ten_millimetres() {
        let (allowed, trace) = MiscloseRule::default().allowed(4, None).unwrap();
        assert!((allowed.to_mm() - 10.0).abs() < 1e-12);
        assert_eq!(trace.sheet().unwrap().values, [10.0.into()]);
    }

    #[test]
    fn a_rule_by_kilometres_says_nothing_without_a_run() {
        let third = rule("third-order").unwrap();
        assert!(third.allowed(4, None).is_none());
        assert!((third.allowed(4, Some(Length::m(400.0))).unwrap().0.to_mm() - 7.589_466).abs() < 1e-5);
        assert!(rule("best").is_none());
    }
}
