//! How long will a chain of tasks take on average, and how much may it scatter?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

const DAYS: Unit = Unit("days");

/// Mean and standard deviation of a chain of tasks by three points each.
///
/// # Source
/// D. G. Malcolm, J. H. Roseboom, C. E. Clark and W. Fazar, "Application of a technique for research and development program
/// evaluation", Operations Research 7 (1959), 646–669, from memory.
/// # Symbols
/// | a | when all goes well | ≥ 0 | · | m | likely | ≥ 0 | · | b | when it does not | ≥ 0 |
/// # Gives
/// Mean Σ(a + 4m + b)/6 and standard deviation √Σ((b − a)/6)².
/// # Not for
/// Tasks that go wrong together (wet weeks), and a second chain nearly as long: then it takes longer than this says.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case BU-02: mean 44, variance 9.
pub(crate) fn three_point<N: Number>(low: &[N], likely: &[N], high: &[N]) -> (N, N) {
    let (mut means, mut variances) = (vec![], vec![]);
    for ((a, m), b) in low.iter().zip(likely).zip(high) {
        means.push(((*a + *m * 4.0 + *b) / 6.0).named("t", DAYS));
        variances.push(((*b - *a) / 6.0).squared().named("v", Unit("days²")));
    }
    let sum = |all: Vec<N>| all.into_iter().reduce(|x, y| x + y).unwrap_or(N::constant(0.0));
    let (mean, variance) = (sum(means), sum(variances));
    (mean.named("μ", DAYS), variance.sqrt().named("σ", DAYS))
}

/// `build/three-point`: mean and standard deviation of a chain of tasks.
pub static THREE_POINT: Working = Working {
    name: "build/three-point",
    title: "Mean and standard deviation of a chain of tasks, three points each.",
    source: Source {
        work: "Malcolm, Roseboom, Clark and Fazar, Application of a technique for research and development program evaluation, Operations Research 7 (1959)",
        place: "pp. 646-669; from memory",
    },
    not_for: "Tasks that go wrong together, and a second chain nearly as long.",
    inputs: &[
        Input::new("low", "a", "durations when all goes well", DAYS, Limits::ours(0.0, 1e5)),
        Input::new("likely", "m", "likely durations", DAYS, Limits::ours(0.0, 1e5)),
        Input::new("high", "b", "durations when it does not", DAYS, Limits::ours(0.0, 1e5)),
    ],
    outputs: &[
        Output { key: "mean", words: "mean", unit: DAYS },
        Output { key: "deviation", words: "standard deviation", unit: DAYS },
    ],
    run: |g| {
        let (low, likely, high) = (g.many("low")?, g.many("likely")?, g.many("high")?);
        if low.len() != likely.len() || high.len() != likely.len() {
            return Err(g.no_answer("the three lists must be equally long"));
        }
        let (mean, deviation) = three_point(&low, &likely, &high);
        Ok(vec![Found::One(mean), Found::One(deviation)])
    },
};
