//! The formulas of setting out, each as a working.

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

const GEOMETRY: Source = Source { work: "Euclid, Elements", place: "book I, proposition 47" };
const TAPE: Limits = Limits::ours(0.0, 1000.0);

/// Where two tapes from the ends of a base line meet: along the line and off it.
///
/// # Source
/// Pythagoras on two right triangles: Euclid, Elements, I.47.
/// # Symbols
/// | a, b | tapes from the two pegs | m | must meet | L | distance of the pegs | m | over 0 |
/// # Gives
/// Along and off, both in m; the point lies on either side of the line.
/// # Not for
/// Tapes that do not meet.
/// # Errors
/// `NoAnswer` when a + b < L or the tapes differ by more than L.
/// # By hand
/// L = 12, a = 6.443, b = 7.787: along 5.2031, off 3.80 (reference case LV-10).
pub fn ties<N: Number>(a: N, b: N, l: N) -> (N, N) {
    let along = ((a.squared() - b.squared() + l.squared()) / (l * 2.0)).named("x", Unit::M);
    let off = (a.squared() - along.squared()).max(N::constant(0.0)).sqrt().named("y", Unit::M);
    (along, off)
}

/// Working of [`ties`].
pub static TIES: Working = Working {
    name: "setout/ties",
    title: "Where do two tapes from the ends of a base line meet?",
    source: GEOMETRY,
    not_for: "tapes that cross at less than 30°: take another pair of pegs",
    inputs: &[
        Input::new("from_a", "a", "tape from the first peg", Unit::M, TAPE),
        Input::new("from_b", "b", "tape from the second peg", Unit::M, TAPE),
        Input::new("base", "L", "distance of the pegs", Unit::M, Limits::ours(0.001, 1000.0)),
    ],
    outputs: &[
        Output { key: "along", words: "along the base line", unit: Unit::M },
        Output { key: "off", words: "square off it", unit: Unit::M },
    ],
    run: |g| {
        let (a, b, l) = (g.one("from_a")?, g.one("from_b")?, g.one("base")?);
        if a.value() + b.value() < l.value() || (a.value() - b.value()).abs() > l.value() {
            return Err(g.no_answer("the tapes do not meet"));
        }
        let (x, y) = ties(a, b, l);
        Ok(vec![Found::One(x), Found::One(y)])
    },
};

/// Tapes to a point that lies along and off a base line.
///
/// # Source
/// Euclid, Elements, I.47.
/// # Symbols
/// | x | along | m | y | off | m | L | base line | m |
/// # Gives
/// The two tapes in m.
/// # Not for
/// None known.
/// # Errors
/// None.
/// # By hand
/// x = 3, y = 4, L = 6: 5 and 5 (reference case SE-01).
pub fn offset<N: Number>(x: N, y: N, l: N) -> (N, N) {
    let a = (x.squared() + y.squared()).sqrt().named("a", Unit::M);
    let b = ((l - x).squared() + y.squared()).sqrt().named("b", Unit::M);
    (a, b)
}

const COORDINATE: Limits = Limits::ours(-1000.0, 1000.0);

/// Working of [`offset`].
pub static OFFSET: Working = Working {
    name: "setout/offset",
    title: "How long are the tapes to a point that lies along and off a base line?",
    source: GEOMETRY,
    not_for: "none known",
    inputs: &[
        Input::new("along", "x", "along the base line", Unit::M, COORDINATE),
        Input::new("off", "y", "square off it", Unit::M, COORDINATE),
        Input::new("base", "L", "distance of the pegs", Unit::M, Limits::ours(0.001, 1000.0)),
    ],
    outputs: &[
        Output { key: "from_a", words: "tape from the first peg", unit: Unit::M },
        Output { key: "from_b", words: "tape from the second peg", unit: Unit::M },
    ],
    run: |g| {
        let (a, b) = offset(g.one("along")?, g.one("off")?, g.one("base")?);
        Ok(vec![Found::One(a), Found::One(b)])
    },
};

/// Diagonal of a rectangle.
///
/// # Source
/// Euclid, Elements, I.47.
/// # Symbols
/// | a, b | sides | m |
/// # Gives
/// The diagonal, m; both are equal when the corners are square.
/// # Not for
/// Corners that are not meant to be square.
/// # Errors
/// None.
/// # By hand
/// 6.0 by 4.5: 7.5 (reference case SE-02).
pub fn diagonal<N: Number>(a: N, b: N) -> N {
    (a.squared() + b.squared()).sqrt().named("d", Unit::M)
}

/// Working of [`diagonal`].
pub static DIAGONAL: Working = Working {
    name: "setout/diagonal",
    title: "How long is the diagonal that proves a rectangle square?",
    source: GEOMETRY,
    not_for: "corners that are not meant to be square",
    inputs: &[
        Input::new("side_a", "a", "one side", Unit::M, TAPE),
        Input::new("side_b", "b", "the other side", Unit::M, TAPE),
    ],
    outputs: &[Output { key: "diagonal", words: "diagonal", unit: Unit::M }],
    run: |g| Ok(vec![Found::One(diagonal(g.one("side_a")?, g.one("side_b")?))]),
};

/// How far the end of a side stands off square when the diagonal reads differently.
///
/// # Source
/// Cosine rule: Euclid, Elements, II.12 and II.13.
/// # Symbols
/// | a, b | sides | m | d | diagonal as taped | m |
/// # Gives
/// The angle between the sides; 90° is square.
/// # Not for
/// A diagonal that cannot close the triangle.
/// # Errors
/// `NoAnswer` when the three do not make a triangle.
/// # By hand
/// 3, 4, 5: 90° (reference case SE-03).
pub fn corner<N: Number>(a: N, b: N, d: N) -> N {
    ((a.squared() + b.squared() - d.squared()) / (a * b * 2.0)).acos().named("angle", Unit::DEG)
}

/// Working of [`corner`].
pub static SQUARE_CHECK: Working = Working {
    name: "setout/square-check",
    title: "What angle do two taped sides make, given the diagonal?",
    source: Source { work: "Euclid, Elements", place: "book II, propositions 12 and 13" },
    not_for: "sides shorter than a metre: the tape's error decides the angle",
    inputs: &[
        Input::new("side_a", "a", "one side", Unit::M, Limits::ours(0.001, 1000.0)),
        Input::new("side_b", "b", "the other side", Unit::M, Limits::ours(0.001, 1000.0)),
        Input::new("diagonal", "d", "diagonal as taped", Unit::M, TAPE),
    ],
    outputs: &[Output { key: "angle", words: "angle between the sides", unit: Unit::DEG }],
    run: |g| {
        let (a, b, d) = (g.one("side_a")?, g.one("side_b")?, g.one("diagonal")?);
        if d.value() > a.value() + b.value() || d.value() < (a.value() - b.value()).abs() {
            return Err(g.no_answer("these three lengths do not make a triangle"));
        }
        Ok(vec![Found::One(corner(a, b, d))])
    },
};

/// What the staff should read on a mark.
///
/// # Source
/// Height of collimation: any textbook of levelling, e.g. Basak, Surveying and Levelling, ch. 5.
/// # Symbols
/// | Z_d | level of the datum | m | r_d | staff on the datum | m | Z | wanted level | m |
/// # Gives
/// The reading in m; negative means the mark is above the line of sight.
/// # Not for
/// Sights over 60 m, where curvature and refraction begin to count.
/// # Errors
/// None.
/// # By hand
/// Datum 100.000 read 1.415, wanted 101.080: 0.335 (reference case SE-04).
pub fn staff_reading<N: Number>(datum: N, on_datum: N, wanted: N) -> N {
    let line = (datum + on_datum).named("H", Unit::M);
    (line - wanted).named("r", Unit::M)
}

/// Working of [`staff_reading`].
pub static STAFF_READING: Working = Working {
    name: "setout/staff-reading",
    title: "What should the staff read on a mark?",
    source: Source { work: "Basak, Surveying and Levelling", place: "ch. 5, height of collimation (from memory)" },
    not_for: "sights over 60 m",
    inputs: &[
        Input::new("datum", "Z_d", "level of the datum", Unit::M, Limits::ours(-1000.0, 10_000.0)),
        Input::new("on_datum", "r_d", "staff on the datum", Unit::M, Limits::ours(-5.0, 5.0)),
        Input::new("wanted", "Z", "wanted level", Unit::M, Limits::ours(-1000.0, 10_000.0)),
    ],
    outputs: &[Output { key: "reading", words: "staff reading", unit: Unit::M }],
    run: |g| Ok(vec![Found::One(staff_reading(g.one("datum")?, g.one("on_datum")?, g.one("wanted")?))]),
};

#[cfg(test)]
mod tests {
    #[test]
    fn the_published_cases_agree() {
        let said = groundhold_reference::complaints(include_str!("../../../reference/setout.toml"), crate::WORKINGS);
        assert!(said.is_empty(), "{said:#?}");
    }
}
