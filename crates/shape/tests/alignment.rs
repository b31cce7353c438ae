//! Do lines with arcs, rounds and smooth curves run where they should, and does every refusal say what would fit?

use groundhold_quantity::{Length, Point, distance, distance_to_segment, math};
use groundhold_shape::{Alignment, AlignmentError, Bend, CHORD_ERROR, Course, Side, Way};
use proptest::prelude::*;

fn p(x: f64, y: f64) -> Point {
    Point::m(x, y)
}
fn bend(at: usize, way: Way) -> Bend {
    Bend { at, way, round: Length::ZERO, ease: Length::ZERO }
}
fn rounded(points: Vec<Point>, at: usize, round: f64, ease: f64) -> Alignment {
    let bend = Bend { round: Length::m(round), ease: Length::m(ease), ..bend(at, Way::Straight) };
    Alignment { points, bends: vec![bend] }
}
fn length(c: &Course) -> f64 {
    c.length().to_m()
}
fn area(ring: &[Point]) -> f64 {
    ring.windows(2).map(|w| (w[0] - ring[0]).cross(w[1] - ring[0])).sum::<f64>() / 2.0
}
/// Angles between neighbouring chords.
fn turns(c: &Course) -> Vec<f64> {
    c.points.windows(3).map(|w| math::atan2((w[1] - w[0]).cross(w[2] - w[1]), (w[1] - w[0]).dot(w[2] - w[1]))).collect()
}

#[test]
fn a_line_of_straights_is_its_points_and_all_of_them_are_corners() {
    let points = vec![p(0.0, 0.0), p(4.0, 0.0), p(4.0, 3.0)];
    let c = Alignment::from(points.clone()).course().unwrap();
    assert_eq!((c.points.clone(), c.corners(), c.curves.len()), (points, vec![true; 3], 0));
}

#[test]
fn a_half_circle_through_its_top_has_the_length_of_a_half_circle() {
    let a = Alignment { points: vec![p(-2.0, 0.0), p(2.0, 0.0)], bends: vec![bend(1, Way::Through(p(0.0, 2.0)))] };
    let c = a.course().unwrap();
    assert!(c.points.iter().all(|q| ((*q - p(0.0, 0.0)).length() - 2.0).abs() < 1e-12));
    // Chords are shorter than the arc by δ²/24 of it.
    assert!((length(&c) - std::f64::consts::PI * 2.0).abs() < 0.006, "{}", length(&c));
    assert_eq!(c.corners().iter().filter(|k| **k).count(), 2);
    let worst = c.points.windows(2).map(|w| 2.0 - (w[0].towards(w[1], 0.5) - p(0.0, 0.0)).length()).fold(0.0, f64::max);
    assert!(worst <= CHORD_ERROR.to_m() + 1e-12 && worst > 0.5 * CHORD_ERROR.to_m());
}

#[test]
fn an_arc_by_radius_turns_to_the_side_that_was_said_and_needs_half_its_chord() {
    let arc = |radius: f64, side| Alignment {
        points: vec![p(0.0, 0.0), p(6.0, 0.0)],
        bends: vec![bend(1, Way::Radius(Length::m(radius), side))],
    };
    let left = arc(5.0, Side::Left).course().unwrap();
    let right = arc(5.0, Side::Right).course().unwrap();
    // A way that turns left bulges to the right of its chord: the middle lies 5 − 4 = 1 m below.
    let lowest = left.points.iter().map(|q| q.y).fold(0.0, f64::min);
    let highest = right.points.iter().map(|q| q.y).fold(0.0, f64::max);
    assert!((lowest + 1.0).abs() < 0.003 && (highest - 1.0).abs() < 0.003, "{lowest} {highest}");
    assert!(arc(3.0, Side::Left).course().is_ok());
    let small = arc(2.999, Side::Left).course().unwrap_err();
    assert!(small.to_string().contains("at least 3.000 m"), "{small}");
}

#[test]
fn a_place_beyond_the_ends_gives_no_arc_and_one_between_them_gives_a_straight() {
    let by = |q| Alignment { points: vec![p(0.0, 0.0), p(6.0, 0.0)], bends: vec![bend(1, Way::Through(q))] }.course();
    assert_eq!(by(p(2.0, 0.0)).unwrap().points.len(), 2);
    assert!(matches!(by(p(8.0, 0.0)), Err(AlignmentError::NoArc { at: 2, .. })));
    assert!(matches!(by(p(0.0, 0.0)), Err(AlignmentError::NoArc { .. })));
}

#[test]
fn a_rounded_right_angle_takes_its_radius_of_both_straights_and_turns_without_a_corner() {
    let c = rounded(vec![p(0.0, 0.0), p(5.0, 0.0), p(5.0, 5.0)], 1, 2.0, 0.0).course().unwrap();
    assert!((length(&c) - (3.0 + std::f64::consts::PI + 3.0)).abs() < 0.005, "{}", length(&c));
    assert_eq!(c.corners().iter().filter(|k| **k).count(), 2);
    assert!((c.curves[0].start - p(3.0, 0.0)).length() < 1e-12 && (c.curves[0].end - p(5.0, 2.0)).length() < 1e-9);
    let sum: f64 = turns(&c).iter().sum();
    assert!((sum - std::f64::consts::FRAC_PI_2).abs() < 1e-9);
}

#[test]
fn a_round_that_does_not_fit_says_the_largest_that_does() {
    let corner = vec![p(0.0, 0.0), p(5.0, 0.0), p(5.0, 3.0)];
    for ease in [0.0, 1.0] {
        let Err(AlignmentError::RoundTooLarge { fits, .. }) = rounded(corner.clone(), 1, 4.0, ease).course() else {
            panic!()
        };
        assert!(rounded(corner.clone(), 1, fits, ease).course().is_ok());
        assert!(rounded(corner.clone(), 1, fits + 0.002, ease).course().is_err(), "{fits}");
    }
    let two = Alignment {
        points: vec![p(0.0, 0.0), p(2.0, 0.0), p(2.0, 2.0), p(4.0, 2.0)],
        bends: [1, 2].map(|at| Bend { round: Length::m(1.01), ..bend(at, Way::Straight) }).into(),
    };
    assert!(two.course().unwrap_err().to_string().contains("1.000 m fits"));
}

#[test]
fn transitions_join_straight_and_arc_without_a_jump_in_curvature_and_the_whole_turns_as_the_corner() {
    let (radius, ease) = (3.0, 1.5);
    let c = rounded(vec![p(0.0, 0.0), p(9.0, 0.0), p(9.0, 9.0)], 1, radius, ease).course().unwrap();
    let sum: f64 = turns(&c).iter().sum();
    assert!((sum - std::f64::consts::FRAC_PI_2).abs() < 1e-9, "{sum}");
    // Arc and transitions: R·(Δ − L/R) + 2·L.
    let bent: f64 = radius * (std::f64::consts::FRAC_PI_2 - ease / radius) + 2.0 * ease;
    let straight = c.points[1].x + 9.0 - c.points[c.points.len() - 2].y;
    assert!((length(&c) - bent - straight).abs() < 0.006);
    // Curvature by three points rises along the transition and never passes 1/R.
    let bends: Vec<f64> = c
        .points
        .windows(3)
        .map(|w| {
            let [a, b, d] = [w[0], w[1], w[2]];
            2.0 * (b - a).cross(d - a) / ((b - a).length() * (d - b).length() * (d - a).length())
        })
        .collect();
    assert!(bends.iter().all(|k| *k < 1.0 / radius + 1e-6), "{bends:?}");
    assert!(bends[0] < 0.6 / radius);
    // The arc's ends as they are written down lie on the course.
    let arc = c.curves[0];
    for end in [arc.start, arc.end] {
        assert!(c.points.iter().any(|q| (*q - end).length() < 1e-9));
        assert!(((end - arc.centre).length() - radius).abs() < 1e-9);
    }
    let long = rounded(vec![p(0.0, 0.0), p(9.0, 0.0), p(9.0, 9.0)], 1, 1.0, 2.0).course().unwrap_err();
    assert!(
        matches!(long, AlignmentError::EaseTooLong { most, .. } if (most - std::f64::consts::FRAC_PI_2).abs() < 1e-9)
    );
}

#[test]
fn a_smooth_curve_passes_its_places_and_leaves_a_straight_in_its_direction() {
    let a = Alignment {
        points: vec![p(0.0, 0.0), p(3.0, 0.0), p(6.0, 2.0), p(9.0, 1.0)],
        bends: vec![bend(2, Way::Smooth), bend(3, Way::Smooth)],
    };
    let c = a.course().unwrap();
    for q in &a.points {
        assert!(c.points.iter().any(|r| (*r - *q).length() < 1e-9));
    }
    assert_eq!(c.corners().iter().filter(|k| **k).count(), 2, "no corner where straight and curve meet");
    assert!(turns(&c).iter().all(|t| t.abs() < 0.25), "{:?}", turns(&c));
}

#[test]
fn a_closed_line_of_four_rounds_has_the_area_of_the_square_less_its_corners() {
    let a = Alignment {
        points: vec![p(0.0, 0.0), p(4.0, 0.0), p(4.0, 4.0), p(0.0, 4.0)],
        bends: (0..4).map(|at| Bend { round: Length::m(1.0), ..bend(at, Way::Straight) }).collect(),
    };
    let c = a.closed().unwrap();
    let wanted = 16.0 - (4.0 - std::f64::consts::PI);
    assert!((area(&c.points) - wanted).abs() < 0.02, "{} {wanted}", area(&c.points));
    assert_eq!((c.curves.len(), c.corners().iter().filter(|k| **k).count()), (4, 0));
    assert!((c.points[0] - c.points[c.points.len() - 1]).length() > 0.01);
}

#[test]
fn a_circle_out_of_two_arcs_is_closed_and_its_offset_is_a_circle() {
    let a = Alignment {
        points: vec![p(-2.0, 0.0), p(2.0, 0.0)],
        bends: vec![bend(1, Way::Through(p(0.0, -2.0))), bend(0, Way::Through(p(0.0, 2.0)))],
    };
    let c = a.closed().unwrap();
    assert!((area(&c.points) - std::f64::consts::PI * 4.0).abs() < 0.03);
    let out = c.beside(Length::m(-0.5)).unwrap();
    assert!(out.points.iter().all(|q| ((*q - p(0.0, 0.0)).length() - 2.5).abs() < 1e-9));
    assert!((out.curves[0].radius - 2.5).abs() < 1e-12);
    let Err(AlignmentError::OffsetTooWide { most, .. }) = c.beside(Length::m(2.01)) else { panic!() };
    assert!((most - 2.0).abs() < 1e-6, "{most}");
}

fn any_line() -> impl Strategy<Value = Alignment> {
    let way = prop_oneof![
        Just(Way::Straight),
        (1.0..20.0f64, any::<bool>())
            .prop_map(|(r, l)| Way::Radius(Length::m(r), if l { Side::Left } else { Side::Right })),
        (-9.0..9.0f64, -9.0..9.0f64).prop_map(|(x, y)| Way::Through(p(x, y))),
        Just(Way::Smooth),
    ];
    let part = (-9.0..9.0f64, -9.0..9.0f64, way, 0.0..2.0f64, 0.0..1.0f64);
    proptest::collection::vec(part, 2..7).prop_map(|parts| Alignment {
        points: parts.iter().map(|q| p(q.0, q.1)).collect(),
        bends: parts
            .iter()
            .enumerate()
            .map(|(at, q)| Bend { at, way: q.2, round: Length::m((q.3 - 1.0).max(0.0)), ease: Length::m(q.4 - 0.5) })
            .collect(),
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_line_has_a_course_or_says_why_not_and_the_course_is_within_its_error_of_its_arcs(a in any_line()) {
        for course in [a.course(), a.closed()].into_iter().flatten() {
            prop_assert!(course.points.windows(2).all(|w| (w[1] - w[0]).length() > 1e-7));
            prop_assert_eq!(course.corners().len(), course.points.len());
            for c in &course.curves {
                for k in 0..=20 {
                    let t = c.turn * f64::from(k) / 20.0;
                    let (s, co) = (math::sin(t), math::cos(t));
                    let v = c.start - c.centre;
                    let q = c.centre + groundhold_quantity::Vector::m(v.x * co - v.y * s, v.x * s + v.y * co);
                    let mut ring = course.points.clone();
                    ring.push(ring[0]);
                    let off = ring.windows(2).map(|w| distance_to_segment(q, w[0], w[1])).reduce(Length::min).unwrap();
                    prop_assert!(off <= CHORD_ERROR + Length::mm(0.01), "{off:?} {c:?}");
                }
                prop_assert!((distance(c.end, c.centre).to_m() - c.radius).abs() < 1e-6 * c.radius.max(1.0));
            }
        }
    }

    #[test]
    fn a_line_beside_another_comes_back_when_it_is_moved_back(a in any_line(), by in -0.4..0.4f64) {
        let Ok(course) = a.course() else { return Ok(()) };
        let Ok(beside) = course.beside(Length::m(by)) else { return Ok(()) };
        let back = beside.beside(Length::m(-by)).unwrap();
        for (q, r) in course.points.iter().zip(&back.points) {
            prop_assert!((*q - *r).length() < 1e-9);
        }
    }
}
