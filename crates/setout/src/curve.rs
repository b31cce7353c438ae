//! How is an arc set out with a string and a tape? By offsets from its chord, and from its tangent.

use groundhold_quantity::{Length, Point, Vector, math};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

const CURVES: Source = Source {
    work: "Euclid, Elements, I.47; as W. Schofield and M. Breach, Engineering Surveying, 6th edition, 2007",
    place: "chapter 10, setting out by offsets; from memory",
};
const RADIUS: Limits = Limits::ours(0.1, 10_000.0);
const ALONG: Limits = Limits::ours(0.0, 10_000.0);

/// Offset from a chord to its arc.
///
/// # Source
/// Two right triangles at the middle of the circle: y = √(R² − x²) − √(R² − (C/2)²). Euclid, Elements, I.47; Schofield
/// and Breach, Engineering Surveying, chapter 10 (from memory).
/// # Symbols
/// | R | radius | m | C | chord | m | x | from the middle of the chord | m, up to C/2 |
/// # Gives
/// y, square off the chord, m. At x = 0 it is the rise of the arc.
/// # Not for
/// Arcs of more than half a circle.
/// # Errors
/// A chord longer than 2·R, a place beyond its end.
/// # By hand
/// R = 5, C = 8, x = 0: 5 − 3 = 2 (reference case SE-20).
pub fn chord_offset<N: Number>(radius: N, chord: N, x: N) -> N {
    let far = (radius.squared() - x.squared()).max(N::constant(0.0)).sqrt().named("√(R² − x²)", Unit::M);
    let near =
        (radius.squared() - (chord / 2.0).squared()).max(N::constant(0.0)).sqrt().named("√(R² − (C/2)²)", Unit::M);
    (far - near).named("y", Unit::M)
}

/// Working of [`chord_offset`].
pub static CHORD_OFFSET: Working = Working {
    name: "setout/chord-offset",
    title: "How far off the chord does the arc lie?",
    source: CURVES,
    not_for: "arcs of more than half a circle: set them out in parts",
    inputs: &[
        Input::new("radius", "R", "radius of the arc", Unit::M, RADIUS),
        Input::new("chord", "C", "chord, from end to end", Unit::M, ALONG),
        Input::new("along", "x", "from the middle of the chord", Unit::M, ALONG),
    ],
    outputs: &[Output { key: "off", words: "square off the chord", unit: Unit::M }],
    run: |g| {
        let (r, c, x) = (g.one("radius")?, g.one("chord")?, g.one("along")?);
        if c.value() > 2.0 * r.value() || 2.0 * x.value() > c.value() {
            return Err(g.no_answer(
                "the place lies beyond the end of the chord, or the chord is longer than the circle is wide",
            ));
        }
        Ok(vec![Found::One(chord_offset(r, c, x))])
    },
};

/// Offset from the tangent at the start of an arc.
///
/// # Source
/// y = R − √(R² − x²). Euclid, Elements, I.47; Schofield and Breach, Engineering Surveying, chapter 10 (from memory).
/// # Symbols
/// | R | radius | m | x | along the tangent | m, up to R |
/// # Gives
/// y, square off the tangent, m.
/// # Not for
/// Places farther along than R.
/// # Errors
/// x over R.
/// # By hand
/// R = 5, x = 3: 5 − 4 = 1 (reference case SE-21).
pub fn tangent_offset<N: Number>(radius: N, x: N) -> N {
    (radius - (radius.squared() - x.squared()).max(N::constant(0.0)).sqrt()).named("y", Unit::M)
}

/// Working of [`tangent_offset`].
pub static TANGENT_OFFSET: Working = Working {
    name: "setout/tangent-offset",
    title: "How far off the tangent does the arc lie?",
    source: CURVES,
    not_for: "places farther along the tangent than the radius",
    inputs: &[
        Input::new("radius", "R", "radius of the arc", Unit::M, RADIUS),
        Input::new("along", "x", "along the tangent from the start of the arc", Unit::M, ALONG),
    ],
    outputs: &[Output { key: "off", words: "square off the tangent", unit: Unit::M }],
    run: |g| {
        let (r, x) = (g.one("radius")?, g.one("along")?);
        if x.value() > r.value() {
            return Err(g.no_answer("the place lies farther along the tangent than the radius"));
        }
        Ok(vec![Found::One(tangent_offset(r, x))])
    },
};

/// An arc to set out.
#[derive(Debug, Clone, PartialEq)]
pub struct Arc {
    /// The element it belongs to.
    pub element: String,
    /// Where it begins.
    pub start: Point,
    /// The middle of its circle.
    pub centre: Point,
    /// Radius.
    pub radius: Length,
    /// The angle that it turns, radians, to the left positive.
    pub turn: f64,
}

/// A place on an arc, from its chord and from its tangent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CurveRow {
    /// Along the chord from its start.
    pub along_chord: Length,
    /// Square off the chord, towards the outside of the circle.
    pub off_chord: Length,
    /// Along the tangent at the start.
    pub along_tangent: Length,
    /// Square off the tangent, towards the middle of the circle.
    pub off_tangent: Length,
    /// In plan.
    pub at: Point,
}

/// Part of an arc, no more than a quarter of a circle, by offsets.
#[derive(Debug, Clone, PartialEq)]
pub struct CurveTable {
    /// The element it belongs to.
    pub element: String,
    /// Where the chord begins and ends.
    pub ends: [Point; 2],
    /// Radius.
    pub radius: Length,
    /// Length of the chord.
    pub chord: Length,
    /// Largest offset from the chord, at its middle.
    pub rise: Length,
    /// True where the circle's middle lies to the left, looking along the chord.
    pub left: bool,
    /// The middle of the circle: with a tape from there the arc can be swung.
    pub centre: Point,
    /// Places, the ends left out.
    pub rows: Vec<CurveRow>,
}

/// Places on a chord stand no farther apart than this (ours).
const EVERY: Length = Length::mm(500.0);

/// The tables of arcs, each in equal parts of a quarter circle or less.
pub fn curve_tables(arcs: &[Arc]) -> Vec<CurveTable> {
    arcs.iter().flat_map(parts).collect()
}

fn parts(arc: &Arc) -> Vec<CurveTable> {
    let (r, turn) = (arc.radius.to_m(), arc.turn);
    if !(r.is_finite() && r > 0.0 && turn.is_finite() && turn.abs() > 1e-6 && turn.abs() < 6.3) {
        return vec![];
    }
    let count = (turn.abs() / std::f64::consts::FRAC_PI_2 - 1e-9).ceil().max(1.0) as usize;
    let on = |angle: f64| {
        let v = arc.start - arc.centre;
        let (s, c) = (math::sin(angle), math::cos(angle));
        arc.centre + Vector::m(v.x * c - v.y * s, v.x * s + v.y * c)
    };
    let each = turn / count as f64;
    (0..count)
        .map(|k| {
            let ends = [on(each * k as f64), on(each * (k + 1) as f64)];
            let chord = (ends[1] - ends[0]).length();
            let along = (ends[1] - ends[0]).unit();
            let left = turn > 0.0;
            // Away from the middle of the circle.
            let out = along.left() * if left { -1.0 } else { 1.0 };
            let radial = (ends[0] - arc.centre).unit();
            let tangent = if left { radial.left() } else { radial.left() * -1.0 };
            let n = (chord / EVERY.to_m()).ceil().clamp(2.0, 200.0) as usize;
            let row = |i: usize| {
                let x = chord * i as f64 / n as f64;
                let off = chord_offset(r, chord, (x - chord / 2.0).abs());
                let at = ends[0] + along * x + out * off;
                let on_tangent = (at - ends[0]).dot(tangent);
                CurveRow {
                    along_chord: Length::m(x),
                    off_chord: Length::m(off),
                    along_tangent: Length::m(on_tangent),
                    off_tangent: Length::m(tangent_offset(r, on_tangent)),
                    at,
                }
            };
            CurveTable {
                element: arc.element.clone(),
                ends,
                radius: arc.radius,
                chord: Length::m(chord),
                rise: Length::m(chord_offset(r, chord, 0.0)),
                left,
                centre: arc.centre,
                rows: (1..n).map(row).collect(),
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn every_place_lies_on_the_circle_by_either_way(r in 0.5..40.0f64, turn in 0.1..6.2f64, left in any::<bool>(), a in 0.0..6.2f64) {
            let centre = Point::m(3.0, -2.0);
            let start = centre + Vector::m(math::cos(a), math::sin(a)) * r;
            let arc = Arc { element: "W1".into(), start, centre, radius: Length::m(r), turn: if left { turn } else { -turn } };
            let tables = curve_tables(&[arc]);
            let sum: f64 = tables.iter().map(|t| 2.0 * math::asin(t.chord.to_m() / 2.0 / r)).sum();
            prop_assert!((sum - turn).abs() < 1e-9);
            for t in &tables {
                let radial = (t.ends[0] - centre).unit();
                let tangent = if t.left { radial.left() } else { radial.left() * -1.0 };
                for row in &t.rows {
                    prop_assert!(((row.at - centre).length() - r).abs() < 1e-9 * r.max(1.0));
                    let by_tangent = t.ends[0] + tangent * row.along_tangent.to_m() - radial * row.off_tangent.to_m();
                    prop_assert!((by_tangent - row.at).length() < 1e-9 * r.max(1.0));
                    prop_assert!(row.off_chord <= t.rise + Length::mm(1e-6));
                }
            }
        }
    }
}
