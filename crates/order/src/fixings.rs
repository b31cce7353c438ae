//! How many screws do the joints take?

use groundhold_quantity::Share;
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working, check_range};

use crate::packs::up;

/// Screws for so many joints.
///
/// # Source
/// Common practice, no source: two per board at each post, a tenth on top for those that break or fall.
/// # Symbols
/// | j | joints (board ends and crossings on posts) | ≥ 0 |
/// | k | screws in each | 1–20 (ours) |
/// | s | spare | 0–100 % (ours) |
/// # Gives
/// Screws, a whole number.
/// # Not for
/// Boards in front of the posts, whose screws are computed in withdrawal.
/// # Errors
/// None of its own; [`SCREWS`] checks the limits.
/// # By hand
/// 3 courses on 6 posts, 2 each, 10 %: 18 · 2 · 1.1 = 39.6, so 40.
fn count<N: Number>(joints: N, each: N, spare: N) -> N {
    up((joints * each * (spare / 100.0 + 1.0)).named("n₀", Unit::NONE)).named("n", Unit::NONE)
}

/// `order/screws`: screws for so many joints.
pub static SCREWS: Working = Working {
    name: "order/screws",
    title: "Screws for so many joints, with spares.",
    source: Source { work: "Common practice, no source", place: "two per board per post, 10 % spare" },
    not_for: "Boards in front of the posts, whose screws are computed in withdrawal.",
    inputs: &[
        Input::new("joints", "j", "joints", Unit::NONE, Limits::ours(0.0, 1e6)),
        Input::new("each", "k", "screws in each joint", Unit::NONE, Limits::ours(1.0, 20.0)).or(2.0),
        Input::new("spare", "s", "spare", Unit::PERCENT, Limits::ours(0.0, 100.0)).or(10.0),
    ],
    outputs: &[Output { key: "screws", words: "screws", unit: Unit::NONE }],
    run: |g| Ok(vec![Found::One(count(g.one("joints")?, g.one("each")?, g.one("spare")?))]),
};

/// Screws for `joints` joints with `each` in a joint and `spare` on top, and the working.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] outside the limits of [`SCREWS`].
pub fn screws(joints: f64, each: f64, spare: Share) -> Result<(f64, Trace)> {
    let given = [joints, each, spare.to_percent()];
    SCREWS.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(SCREWS.name, row, v))?;
    let n = count(given[0], given[1], given[2]);
    Ok((n, Trace::new(&SCREWS, given.iter().map(|v| (*v).into()).collect())))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spares_round_up_to_whole_screws() {
        assert_eq!(screws(18.0, 2.0, Share::percent(10.0)).unwrap().0, 40.0);
        assert_eq!(screws(10.0, 2.0, Share::percent(10.0)).unwrap().0, 22.0);
        assert_eq!(screws(0.0, 2.0, Share::percent(10.0)).unwrap().0, 0.0);
        assert!(screws(1.0, 0.0, Share::ZERO).is_err());
    }
}
