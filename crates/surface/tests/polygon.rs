//! Are outlines checked, measured, moved and cut into triangles rightly?

use groundhold_quantity::{Length, Point, math};
use groundhold_surface::{Polygon, PolygonError};
use proptest::prelude::*;

fn polygon(corners: &[(f64, f64)]) -> Result<Polygon, PolygonError> {
    Polygon::new(corners.iter().map(|&(x, y)| Point::m(x, y)).collect())
}

const L: [(f64, f64); 6] = [(0.0, 0.0), (6.0, 0.0), (6.0, 2.0), (2.0, 2.0), (2.0, 5.0), (0.0, 5.0)];

fn near(found: f64, wanted: f64) {
    assert!((found - wanted).abs() < 1e-9, "found {found}, wanted {wanted}");
}

#[test]
fn a_clockwise_outline_is_turned_and_starts_where_it_did() {
    let p = polygon(&[(0.0, 0.0), (0.0, 2.0), (3.0, 2.0), (3.0, 0.0), (0.0, 0.0)]).unwrap();
    assert_eq!(p.corners(), [(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (0.0, 2.0)].map(|(x, y)| Point::m(x, y)));
    near(p.area().to_m2(), 6.0);
    near(p.perimeter().to_m(), 10.0);
    assert_eq!(p.centroid(), Point::m(1.5, 1.0));
    assert_eq!(p.bounds(), (Point::m(0.0, 0.0), Point::m(3.0, 2.0)));
    assert!(p.is_convex());
}

#[test]
fn outlines_that_are_not_simple_are_refused_with_the_place() {
    let e = polygon(&[(0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)]).unwrap_err();
    assert_eq!(e, PolygonError::Crossing { edge_a: 0, edge_b: 2, at: Point::m(1.0, 1.0) });
    assert!(e.to_string().contains("sides 1 and 3"), "{e}");
    // Touching itself in a corner, and turning straight back.
    assert!(polygon(&[(0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (2.0, 0.0), (0.0, 2.0)]).is_err());
    assert!(polygon(&[(0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (4.0, -1.0)]).is_err());
    assert_eq!(polygon(&[(0.0, 0.0), (1.0, 0.0), (1.0, 0.0), (0.0, 0.0)]), Err(PolygonError::TooFew { found: 2 }));
    assert_eq!(polygon(&[(0.0, 0.0), (1.0, 1.0), (3.0, 3.0), (2.0, 2.0)]), Err(PolygonError::NoArea));
    assert_eq!(polygon(&[(0.0, 0.0), (1.0, f64::NAN), (3.0, 3.0)]), Err(PolygonError::NotFinite { corner: 1 }));
    // The sides keep the numbers of the corners as given, whatever is repeated.
    let e = polygon(&[(0.0, 0.0), (0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)]).unwrap_err();
    assert_eq!(e, PolygonError::Crossing { edge_a: 1, edge_b: 3, at: Point::m(1.0, 1.0) });
}

#[test]
fn a_concave_outline_holds_what_lies_inside_and_on_it() {
    let l = polygon(&L).unwrap();
    assert!(!l.is_convex());
    near(l.area().to_m2(), 18.0);
    for (x, y) in [(1.0, 1.0), (5.9, 1.9), (1.0, 4.9), (6.0, 1.0), (2.0, 3.0), (0.0, 0.0), (2.0, 2.0), (1.0, 2.0)] {
        assert!(l.contains(Point::m(x, y)), "{x} {y}");
    }
    for (x, y) in [(3.0, 3.0), (-0.001, 1.0), (6.001, 1.0), (7.0, 2.0), (-1.0, 2.0), (2.001, 2.001), (f64::NAN, 1.0)] {
        assert!(!l.contains(Point::m(x, y)), "{x} {y}");
    }
}

#[test]
fn a_rectangle_grows_and_shrinks_with_square_corners() {
    let p = polygon(&[(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)]).unwrap();
    near(p.grown(Length::m(0.5)).area().to_m2(), 5.0 * 4.0);
    near(p.grown(Length::m(-0.5)).area().to_m2(), 3.0 * 2.0);
    assert_eq!(p.shrunk(Length::m(1.5)), None);
    assert!(p.shrunk(Length::m(1.499)).is_some());
    assert!(p.grown(Length::m(-2.0)).area().to_m2() < 0.001);
    assert_eq!(p.grown(Length::ZERO), p);
    assert_eq!(p.grown(Length::m(f64::NAN)), p);
}

#[test]
fn an_outline_with_a_corner_in_its_side_grows_like_one_without() {
    let p = polygon(&[(0.0, 0.0), (1.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)]).unwrap();
    near(p.grown(Length::m(0.5)).area().to_m2(), 20.0);
}

#[test]
fn an_angle_grows_and_shrinks_and_a_notch_closes() {
    let l = polygon(&L).unwrap();
    // Perimeter 22; five right and one left turn: area + perimeter·d + 4·d².
    near(l.grown(Length::m(0.5)).area().to_m2(), 18.0 + 11.0 + 1.0);
    near(l.shrunk(Length::m(0.5)).unwrap().area().to_m2(), 18.0 - 11.0 + 1.0);
    // A notch 1 m wide and 2 m deep in a square of 5 m closes when the sides move by more than 0.5 m.
    let notched = [(0.0, 0.0), (5.0, 0.0), (5.0, 5.0), (3.0, 5.0), (3.0, 3.0), (2.0, 3.0), (2.0, 5.0), (0.0, 5.0)];
    let notched = polygon(&notched).unwrap();
    near(notched.grown(Length::m(0.4)).area().to_m2(), 5.8 * 5.8 - 0.2 * 2.0);
    near(notched.grown(Length::m(0.6)).area().to_m2(), 6.2 * 6.2);
    near(notched.grown(Length::m(0.5)).area().to_m2(), 36.0);
}

#[test]
fn a_yard_that_closes_in_is_filled() {
    let c = [
        (0.0, 0.0),
        (9.0, 0.0),
        (9.0, 9.0),
        (5.0, 9.0),
        (5.0, 8.0),
        (8.0, 8.0),
        (8.0, 1.0),
        (1.0, 1.0),
        (1.0, 8.0),
        (4.0, 8.0),
        (4.0, 9.0),
        (0.0, 9.0),
    ];
    let grown = polygon(&c).unwrap().grown(Length::m(0.75));
    near(grown.area().to_m2(), 10.5 * 10.5);
}

#[test]
fn a_sharp_corner_is_cut_off_at_three_times_the_distance() {
    // A corner of about 11.4°.
    let p = polygon(&[(0.0, -1.0), (0.0, 1.0), (-10.0, 0.0)]).unwrap();
    let grown = p.grown(Length::m(0.2));
    assert_eq!(grown.corners().len(), 4);
    near(grown.bounds().0.x, -10.6);
}

#[test]
fn a_side_that_vanishes_first_leaves_the_others_in_place() {
    // A square with one corner cut off by a short side: shrunk by 1 m the short side is gone.
    let p = polygon(&[(0.0, 0.0), (6.0, 0.0), (6.0, 5.8), (5.8, 6.0), (0.0, 6.0)]).unwrap();
    let small = p.shrunk(Length::m(1.0)).unwrap();
    assert_eq!(small.corners().len(), 4);
    near(small.area().to_m2(), 16.0);
}

/// Simple polygons of any shape that can be seen from their middle.
fn star() -> impl Strategy<Value = Polygon> {
    proptest::collection::vec(1.0..10.0f64, 3..12).prop_filter_map("simple", |radii| {
        let n = radii.len() as f64;
        let at = |(i, r): (usize, &f64)| {
            let turn = i as f64 / n * 2.0 * std::f64::consts::PI + 0.1;
            Point::m(r * math::cos(turn), r * math::sin(turn))
        };
        Polygon::new(radii.iter().enumerate().map(at).collect()).ok()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn triangles_add_up_to_the_polygon(p in star()) {
        let area = |t: &[Point; 3]| (t[1] - t[0]).cross(t[2] - t[0]) / 2.0;
        let triangles = p.triangles();
        prop_assert_eq!(triangles.len(), p.corners().len() - 2);
        prop_assert!(triangles.iter().all(|t| area(t) > 0.0));
        prop_assert!((triangles.iter().map(area).sum::<f64>() - p.area().to_m2()).abs() < 1e-9);
        for t in &triangles {
            let middle = t[0] + ((t[1] - t[0]) + (t[2] - t[0])) * (1.0 / 3.0);
            prop_assert!(p.contains(middle));
        }
    }

    #[test]
    fn a_grown_outline_holds_every_point_within_its_distance_of_the_old(p in star(), by in 0.01..3.0f64) {
        let grown = p.grown(Length::m(by));
        for (i, &a) in p.corners().iter().enumerate() {
            let b = p.corners()[(i + 1) % p.corners().len()];
            let out = (b - a).unit().left() * (-by * 0.999);
            for share in [0.0, 0.3, 0.5, 1.0] {
                let at = a.towards(b, share) + out;
                prop_assert!(grown.contains(at), "{at:?} beside side {i}");
            }
        }
        // Nothing lies further out than the longest mitre.
        for &c in grown.corners() {
            let sides = (0..p.corners().len()).map(|i| (p.corners()[i], p.corners()[(i + 1) % p.corners().len()]));
            let away = sides.map(|(a, b)| groundhold_quantity::distance_to_segment(c, a, b).to_m()).fold(f64::INFINITY, f64::min);
            prop_assert!(away <= 3.2 * by, "{c:?} is {away} m away");
        }
    }

    #[test]
    fn a_shrunk_outline_keeps_its_distance_from_the_old(p in star(), by in 0.01..1.0f64) {
        let Some(small) = p.shrunk(Length::m(by)) else { return Ok(()) };
        for &c in small.corners() {
            prop_assert!(p.contains(c));
            for (i, &a) in p.corners().iter().enumerate() {
                let b = p.corners()[(i + 1) % p.corners().len()];
                prop_assert!(groundhold_quantity::distance_to_segment(c, a, b).to_m() > by * 0.999_999);
            }
        }
    }
}
