//! Is the instrument true, and what do long or lopsided sights do to a level?

use groundhold_quantity::Length;
use groundhold_working::{
    Found, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working, check_range,
};

/// What a two-peg test found.
#[derive(Debug, Clone, PartialEq)]
pub struct TwoPeg {
    /// Level of B above A.
    pub rise: Length,
    /// How much the staff reads too much for each metre of sight; negative for a line of sight that dips.
    pub per_metre: f64,
    /// What staff A should read from the second set-up.
    pub true_a: Length,
    /// What staff B should read from the second set-up.
    pub true_b: Length,
    /// How it was worked out.
    pub trace: Trace,
}

/// Staff readings on A and B from one set-up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pair {
    /// On A.
    pub a: Length,
    /// On B.
    pub b: Length,
}

/// Two-peg test: once from midway between A and B, once on their line, `beyond` A on the side away from B.
///
/// # Errors
/// [`Refused`] for values out of range.
pub fn two_peg(mid: Pair, end: Pair, apart: Length, beyond: Length) -> Result<TwoPeg> {
    let given = [mid.a, mid.b, end.a, end.b, apart, beyond].map(Length::to_m);
    in_range(&TWO_PEG, &given)?;
    lopsided(given[4], given[5])?;
    let t = two_peg_formula(given);
    Ok(TwoPeg {
        rise: Length::m(t.rise),
        per_metre: t.error / given[4],
        true_a: end.a - Length::m(t.too_much_a),
        true_b: end.b - Length::m(t.too_much_b),
        trace: Trace::new(&TWO_PEG, given.map(Into::into).to_vec()),
    })
}

/// Fall from A to B, read once from near A and once from near B; collimation, curvature and refraction cancel.
///
/// # Errors
/// [`Refused`] for values out of range.
pub fn reciprocal(near_a: Pair, near_b: Pair) -> Result<(Length, Trace)> {
    let given = [near_a.a, near_a.b, near_b.a, near_b.b, Length::ZERO].map(Length::to_m);
    in_range(&RECIPROCAL, &given)?;
    let (fall, _, _) = reciprocal_formula(given);
    Ok((Length::m(fall), Trace::new(&RECIPROCAL, given.map(Into::into).to_vec())))
}

/// How much a staff reads too much at this distance because the earth is round and the air bends the sight.
///
/// # Errors
/// [`Refused`] beyond 10 km.
pub fn curvature_and_refraction(distance: Length) -> Result<Length> {
    in_range(&CURVATURE_REFRACTION, &[distance.to_m()])?;
    Ok(Length::m(curvature_formula(distance.to_m())))
}

fn in_range(working: &'static Working, given: &[f64]) -> std::result::Result<(), Refused> {
    working.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(working.name, row, *v))
}

/// Results of the two-peg formula, metres.
struct TwoPegFound<N> {
    rise: N,
    error: N,
    too_much_a: N,
    too_much_b: N,
}

/// Collimation error from two set-ups on the line of two pegs.
///
/// # Source
/// Basak, Surveying and Levelling, ch. 5, p. 187.
/// # Symbols
/// | a₁, b₁ | readings from midway | m | −5 to 5 (ours) |
/// | a₂, b₂ | readings from beyond A | m | −5 to 5 (ours) |
/// | AB | distance of the pegs | m | 5 to 300 (ours) |
/// | s | second set-up beyond A, away from B; negative between the pegs | m | −300 to 300 (ours) |
/// # Gives
/// Level of B above A, the error over AB (positive for a line of sight that climbs), and how much each staff reads too
/// much from the second set-up.
/// # Not for
/// Sights so long that curvature shows (above about 200 m).
/// # Errors
/// A value outside its limits, or a second set-up that is midway too.
/// # By hand
/// Reference case LV-05.
fn two_peg_formula<N: Number>([a1, b1, a2, b2, apart, beyond]: [N; 6]) -> TwoPegFound<N> {
    let rise = (a1 - b1).named("Δh", Unit::M);
    let apparent = (a2 - b2).named("Δh′", Unit::M);
    let (to_a, to_b) = (beyond.abs().named("D_A", Unit::M), (apart + beyond).abs().named("D_B", Unit::M));
    let per_metre = ((rise - apparent) / (to_b - to_a)).named("c", Unit::NONE);
    TwoPegFound {
        rise,
        error: (per_metre * apart).named("e", Unit::M),
        too_much_a: (per_metre * to_a).named("e_A", Unit::M),
        too_much_b: (per_metre * to_b).named("e_B", Unit::M),
    }
}

/// The second set-up must see the two pegs at unlike distances, or the error does not show.
fn lopsided(apart: f64, beyond: f64) -> std::result::Result<(), Refused> {
    if ((apart + beyond).abs() - beyond.abs()).abs() >= apart / 10.0 {
        return Ok(());
    }
    let why = "the second set-up stands midway too, where the error cancels; expected one sight longer than the other by a tenth of the distance or more".into();
    Err(Refused::NoAnswer { working: TWO_PEG.name, why })
}

/// Height difference from one set-up near each end.
///
/// # Source
/// Basak, Surveying and Levelling, ch. 5, pp. 156–158.
/// # Symbols
/// | a₁, b₁ | readings from near A | m | −5 to 5 (ours) |
/// | a₂, b₂ | readings from near B | m | −5 to 5 (ours) |
/// | H_A | level of A | m | −500 to 9000 (ours) |
/// # Gives
/// Fall from A to B, level of B, and the error of the sight over the distance as seen from near A.
/// # Not for
/// Air that changes between the two set-ups: read both within minutes.
/// # Errors
/// A value outside its limits.
/// # By hand
/// Reference cases LV-02 and LV-03.
fn reciprocal_formula<N: Number>([a1, b1, a2, b2, level_a]: [N; 5]) -> (N, N, N) {
    let from_a = (b1 - a1).named("Δ₁", Unit::M);
    let from_b = (b2 - a2).named("Δ₂", Unit::M);
    let fall = ((from_a + from_b) / 2.0).named("Δh", Unit::M);
    (fall, (level_a - fall).named("H_B", Unit::M), (from_a - fall).named("e", Unit::M))
}

/// Curvature and refraction together.
///
/// # Source
/// Basak, Surveying and Levelling, ch. 5: 0.0673 m for each square kilometre (refraction taken as a seventh of curvature).
/// # Symbols
/// | D | length of the sight | m | 0 to 10 000 (ours) |
/// # Gives
/// How much the staff reads too much, m. Grows with the square of the distance.
/// # Not for
/// Sights that graze hot ground, where refraction may even turn its sign.
/// # Errors
/// A value outside its limits.
/// # By hand
/// Reference case LV-06.
fn curvature_formula<N: Number>(distance: N) -> N {
    ((distance / 1000.0).squared() * 0.0673).named("C", Unit::M)
}

const STAFF: Limits = Limits::ours(-5.0, 5.0);

const fn staff(key: &'static str, symbol: &'static str, words: &'static str) -> Input {
    Input::new(key, symbol, words, Unit::M, STAFF)
}
const fn metres(key: &'static str, words: &'static str) -> Output {
    Output { key, words, unit: Unit::M }
}

/// Two-peg test.
pub static TWO_PEG: Working = Working {
    name: "level/two-peg",
    title: "Does the line of sight lie level when the bubble says so?",
    source: Source { work: "Basak, Surveying and Levelling", place: "ch. 5, p. 187" },
    not_for: "sights above about 200 m, where curvature shows",
    inputs: &[
        staff("mid_a", "a₁", "reading on A from midway"),
        staff("mid_b", "b₁", "reading on B from midway"),
        staff("end_a", "a₂", "reading on A from beyond A"),
        staff("end_b", "b₂", "reading on B from beyond A"),
        Input::new("apart", "AB", "distance from A to B", Unit::M, Limits::ours(5.0, 300.0)),
        Input::new(
            "beyond",
            "s",
            "second set-up beyond A; negative between the pegs",
            Unit::M,
            Limits::ours(-300.0, 300.0),
        ),
    ],
    outputs: &[
        metres("true_difference", "level of B above A"),
        metres("error", "error over the distance from A to B"),
        metres("too_much_a", "what staff A reads too much from the second set-up"),
        metres("too_much_b", "what staff B reads too much from the second set-up"),
    ],
    run: |g| {
        let one = |k| g.one(k);
        let (apart, beyond) = (one("apart")?, one("beyond")?);
        lopsided(apart.value(), beyond.value())?;
        let t = two_peg_formula([one("mid_a")?, one("mid_b")?, one("end_a")?, one("end_b")?, apart, beyond]);
        Ok([t.rise, t.error, t.too_much_a, t.too_much_b].map(Found::One).into())
    },
};

/// Reciprocal levelling.
pub static RECIPROCAL: Working = Working {
    name: "level/reciprocal",
    title: "How much does B lie below A, read from both ends?",
    source: Source { work: "Basak, Surveying and Levelling", place: "ch. 5, pp. 156–158" },
    not_for: "air that changes between the two set-ups",
    inputs: &[
        staff("near_a_a", "a₁", "reading on A from near A"),
        staff("near_a_b", "b₁", "reading on B from near A"),
        staff("near_b_a", "a₂", "reading on A from near B"),
        staff("near_b_b", "b₂", "reading on B from near B"),
        Input::new("level_a", "H_A", "level of A", Unit::M, Limits::ours(-500.0, 9000.0)).or(0.0),
    ],
    outputs: &[
        metres("fall", "fall from A to B"),
        metres("level_b", "level of B"),
        metres("error", "error over the distance, from near A"),
    ],
    run: |g| {
        let one = |k| g.one(k);
        let (fall, level, error) = reciprocal_formula([
            one("near_a_a")?,
            one("near_a_b")?,
            one("near_b_a")?,
            one("near_b_b")?,
            one("level_a")?,
        ]);
        Ok([fall, level, error].map(Found::One).into())
    },
};

/// Curvature and refraction.
pub static CURVATURE_REFRACTION: Working = Working {
    name: "level/curvature-refraction",
    title: "What does the round earth add to a staff reading?",
    source: Source { work: "Basak, Surveying and Levelling", place: "ch. 5" },
    not_for: "sights that graze hot ground",
    inputs: &[Input::new("distance", "D", "length of the sight", Unit::M, Limits::ours(0.0, 10_000.0))],
    outputs: &[metres("correction", "what the staff reads too much")],
    run: |g| Ok(vec![Found::Many(g.many("distance")?.into_iter().map(curvature_formula).collect())]),
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn corrected_readings_of_a_two_peg_test_give_the_true_difference_from_any_place() {
        // A line of sight that climbs 0.2 mm a metre, B 0.3 m above A, set up 4 m from A between the pegs.
        let sight = |h: f64, d: f64| Length::m(h + 0.0002 * d);
        let mid = Pair { a: sight(1.5, 20.0), b: sight(1.2, 20.0) };
        for (beyond, da, db) in [(10.0, 10.0, 50.0), (-4.0, 4.0, 36.0)] {
            let end = Pair { a: sight(1.4, da), b: sight(1.1, db) };
            let t = two_peg(mid, end, Length::m(40.0), Length::m(beyond)).unwrap();
            assert!((t.true_a - t.true_b - t.rise).to_m().abs() < 1e-12, "beyond {beyond}: {t:?}");
            assert!((t.true_a.to_m() - 1.4).abs() < 1e-12, "beyond {beyond}: {t:?}");
        }
    }

    #[test]
    fn a_staff_of_five_metres_is_read_and_a_longer_one_refused() {
        let p = |a| Pair { a: Length::m(a), b: Length::m(1.0) };
        assert!(reciprocal(p(5.0), p(1.0)).is_ok());
        assert!(reciprocal(p(5.001), p(1.0)).unwrap_err().to_string().contains("−5 m to 5 m"));
        let midway = two_peg(p(1.2), p(1.3), Length::m(40.0), Length::m(-20.0)).unwrap_err();
        assert!(midway.to_string().contains("midway too"));
        assert!(curvature_and_refraction(Length::m(10_000.5)).is_err());
    }
}
