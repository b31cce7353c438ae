//! What is done first at a wall that is out of line, before anybody mends it?

use groundhold_quantity::Length;

use super::{AsFound, BackAnalysis, Cause, Verdict};

/// Where the first steps are from.
pub const FIRST_SOURCE: &str = "common practice, no source; local codes and a competent person decide";

/// Ground to keep people, vehicles and loads off, in front and behind: one and a half to two times the height.
/// Common practice, no source.
pub fn keep_clear(wall: &AsFound) -> (Length, Length) {
    (wall.seen.height * 1.5, wall.seen.height * 2.0)
}

/// What to do first, in order.
pub fn first_steps(wall: &AsFound, back: &BackAnalysis) -> Vec<String> {
    let u = wall.units;
    let (least, most) = keep_clear(wall);
    let fits = |c: Cause| back.hypotheses.iter().any(|h| h.cause == c && h.verdict != Verdict::DoesNotFit);
    let mut all = vec![
        format!(
            "Keep people, children and vehicles {} to {} away from it, in front and behind; fence that off.",
            u.run(least),
            u.run(most)
        ),
        "Put marks on it and measure lean and bulge every week, and after every heavy rain; leave at once when it moves.".into(),
        "Have it propped by a competent person if people must pass below it; a prop that slips is worse than none.".into(),
    ];
    if fits(Cause::Water) {
        all.push(
            "Relieve the water from the bottom up: open or drill weep holes in the lowest course from the side, a few at a \
             time, and lead roof and surface water away from behind it. Let it drain for days before anything is dug."
                .into(),
        );
    }
    if fits(Cause::Load) {
        all.push("Take the load off behind it, from the far edge, and keep vehicles off.".into());
    }
    all.push("Do not dig at its toe. Put back what was dug away there, rammed in thin layers, from the side.".into());
    all.push("Do not add load, and do not raise the ground or a fence on it.".into());
    all
}
