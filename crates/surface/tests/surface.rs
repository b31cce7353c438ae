//! Does triangulated ground keep to its points, lines and boundary, and say what is wrong with them?

use groundhold_quantity::{Length, Level, Point};
use groundhold_surface::{GroundPoint, Plane, Polygon, SurfaceError, Tin};

fn ground(points: &[(f64, f64, f64)]) -> Vec<GroundPoint> {
    let point = |(i, &(x, y, z)): (usize, &(f64, f64, f64))| GroundPoint {
        id: format!("P{}", i + 1),
        at: Point::m(x, y),
        level: Level::m(z),
    };
    points.iter().enumerate().map(point).collect()
}

const SQUARE: [(f64, f64, f64); 4] = [(0.0, 0.0, 0.0), (4.0, 0.0, 0.0), (4.0, 4.0, 0.0), (0.0, 4.0, 0.0)];

fn with(more: &[(f64, f64, f64)]) -> Vec<GroundPoint> {
    ground(&[&SQUARE[..], more].concat())
}

fn message(e: Result<Tin, SurfaceError>) -> String {
    e.expect_err("this input is refused").to_string()
}

#[test]
fn crossing_break_lines_are_both_named_with_the_place() {
    let points = with(&[(1.0, 1.0, 0.0), (3.0, 3.0, 0.0), (3.0, 1.0, 0.0), (1.0, 3.0, 0.0)]);
    let e = Tin::build(&points, &[vec![4, 5], vec![6, 7]], None).unwrap_err();
    let SurfaceError::BreakLinesCross { a, b, at } = e.clone() else { panic!("{e}") };
    let mut named = [a.0, a.1, b.0, b.1];
    named.sort();
    assert_eq!(named, ["P5", "P6", "P7", "P8"]);
    assert!((at - Point::m(2.0, 2.0)).length() < 1e-9);
    assert!(e.to_string().contains("cross at x 2.000 m, y 2.000 m"), "{e}");
}

#[test]
fn break_lines_that_meet_in_a_point_do_not_cross() {
    let points = with(&[(1.0, 1.0, 0.0), (3.0, 3.0, 0.0), (3.0, 1.0, 0.0), (2.0, 2.0, 1.0)]);
    // P8 lies on P5–P6 and is not listed in that line.
    let tin = Tin::build(&points, &[vec![4, 5], vec![6, 7]], None).unwrap();
    assert_eq!(tin.break_edges(), [(4, 7), (5, 7), (6, 7)]);
}

#[test]
fn a_break_line_that_leaves_the_boundary_is_named() {
    let points = with(&[(2.0, 2.0, 0.0), (6.0, 2.0, 0.0), (8.0, 9.0, 1.0)]);
    let e = message(Tin::build(&points, &[vec![4, 5]], Some(&[0, 1, 2, 3])));
    assert!(e.contains("x 4.000 m, y 2.000 m") && e.contains("P2–P3") && e.contains("P5–P6"), "{e}");
}

#[test]
fn what_lies_outside_a_concave_boundary_is_left_out() {
    let points = with(&[(2.0, 2.0, 1.0)]);
    let tin = Tin::build(&points, &[], Some(&[0, 1, 2, 4, 3])).unwrap();
    assert!((tin.area().to_m2() - 12.0).abs() < 1e-12);
    assert_eq!(tin.level_at(Point::m(2.0, 3.5)), None);
    assert!(tin.level_at(Point::m(2.0, 0.5)).is_some());
    assert_eq!(tin.outline().len(), 1);
    assert_eq!(tin.outline()[0].corners().len(), 5);
    // The same ground whichever way round it is walked.
    let back = Tin::build(&points, &[], Some(&[3, 4, 2, 1, 0, 3])).unwrap();
    assert_eq!(back.area(), tin.area());
}

#[test]
fn the_same_point_twice_is_one_and_two_levels_in_one_place_are_refused() {
    let twice = with(&[(4.0, 4.0, 0.0)]);
    let tin = Tin::build(&twice, &[vec![0, 4]], None).unwrap();
    assert_eq!(tin.points().len(), 4);
    assert_eq!(tin.break_edges(), [(0, 2)]);
    let e = message(Tin::build(&with(&[(4.0, 4.0, 0.5)]), &[], None));
    assert!(e.contains("P3 and P5") && e.contains("0.000 m and 0.500 m"), "{e}");
}

#[test]
fn points_that_make_no_surface_are_refused_in_words() {
    let build = |p: &[(f64, f64, f64)]| Tin::build(&ground(p), &[], None);
    assert_eq!(build(&[]).unwrap_err(), SurfaceError::TooFewPoints { found: 0 });
    assert_eq!(build(&[(0.0, 0.0, 1.0); 5]).unwrap_err(), SurfaceError::TooFewPoints { found: 1 });
    assert_eq!(build(&[(0.0, 0.0, 1.0), (1.0, 1.0, 2.0), (3.0, 3.0, 1.0)]).unwrap_err(), SurfaceError::AllInLine);
    // In line but for rounding.
    let rounded: Vec<_> = (0..20).map(|i| (f64::from(i) * 0.1, f64::from(i) * 0.3, 0.0)).collect();
    assert_eq!(build(&rounded).unwrap_err(), SurfaceError::AllInLine);
    assert!(message(build(&[(0.0, f64::NAN, 1.0), (1.0, 0.0, 2.0), (3.0, 3.0, 1.0)])).contains("point P1"));
    assert!(message(build(&[(0.0, 0.0, 1.0), (1e9, 0.0, 2.0), (3.0, 3.0, 1.0)])).contains("point P2"));
    assert!(message(build(&[(0.0, 0.0, f64::INFINITY), (1.0, 0.0, 2.0), (3.0, 3.0, 1.0)])).contains("point P1"));
}

#[test]
fn lines_and_boundaries_that_make_no_sense_are_refused_in_words() {
    let points = ground(&SQUARE);
    let e = message(Tin::build(&points, &[vec![0, 1], vec![2, 9]], None));
    assert_eq!(e, "break line 2 names point number 9, but there are only 4 points (numbered from 0)");
    assert!(message(Tin::build(&points, &[], Some(&[0, 1, 7]))).starts_with("the boundary names point number 7"));
    let e = message(Tin::build(&points, &[], Some(&[0, 1, 3, 2])));
    assert!(e.contains("P2–P4 and P3–P1") && e.contains("x 2.000 m"), "{e}");
    assert!(message(Tin::build(&points, &[], Some(&[0, 1]))).contains("at least 3 different corners"));
    // A break line of one point, or of none, asks for nothing.
    assert!(Tin::build(&points, &[vec![], vec![2], vec![1, 1]], None).unwrap().break_edges().is_empty());
}

#[test]
fn levels_are_exact_at_points_and_none_outside() {
    let points = with(&[(1.3, 2.7, 5.0)]);
    let tin = Tin::build(&points, &[], None).unwrap();
    for p in &points {
        assert_eq!(tin.level_at(p.at), Some(p.level));
    }
    assert_eq!(tin.level_at(Point::m(4.00001, 2.0)), None);
    assert_eq!(tin.level_at(Point::m(4.0 + 1e-7, 2.0)), Some(Level::m(0.0)));
    assert_eq!(tin.level_at(Point::m(f64::NAN, 2.0)), None);
    assert_eq!(tin.plane_at(Point::m(-1.0, 0.0)), None);
}

#[test]
fn a_section_has_one_point_at_each_side_it_crosses() {
    // A roof: ridge along x = 2.
    let points = with(&[(2.0, 0.0, 1.0), (2.0, 4.0, 1.0)]);
    let tin = Tin::build(&points, &[vec![4, 5]], None).unwrap();
    let section = tin.section(&[Point::m(0.0, 0.0), Point::m(4.0, 0.0)]);
    let read: Vec<_> = section.iter().map(|p| (p.chainage.to_m(), p.level.map(Level::to_m))).collect();
    assert_eq!(read, [(0.0, Some(0.0)), (2.0, Some(1.0)), (4.0, Some(0.0))]);
}

#[test]
fn a_section_over_a_gap_in_the_ground_says_so_once() {
    // A U of ground, open to the north.
    let u = ground(&[
        (0.0, 0.0, 1.0),
        (6.0, 0.0, 1.0),
        (6.0, 4.0, 1.0),
        (4.0, 4.0, 1.0),
        (4.0, 1.0, 1.0),
        (2.0, 1.0, 1.0),
        (2.0, 4.0, 1.0),
        (0.0, 4.0, 1.0),
    ]);
    let tin = Tin::build(&u, &[], Some(&[0, 1, 2, 3, 4, 5, 6, 7])).unwrap();
    let section = tin.section(&[Point::m(-1.0, 3.0), Point::m(7.0, 3.0)]);
    let without: Vec<f64> = section.iter().filter(|p| p.level.is_none()).map(|p| p.chainage.to_m()).collect();
    assert_eq!(without, [0.0, 4.0, 8.0]);
    assert!(section.windows(2).all(|w| w[0].chainage < w[1].chainage));
    for shore in [1.0, 3.0, 5.0, 7.0] {
        assert!(section.iter().any(|p| (p.chainage.to_m() - shore).abs() < 1e-9 && p.level.is_some()), "{shore}");
    }
    // Along the outline there is ground all the way.
    let along = tin.section(&[Point::m(0.0, 0.0), Point::m(6.0, 0.0), Point::m(6.0, 4.0)]);
    assert!(along.iter().all(|p| p.level == Some(Level::m(1.0))));
    assert!(tin.section(&[]).is_empty());
    assert_eq!(tin.section(&[Point::m(1.0, 1.0)]).len(), 1);
    assert_eq!(tin.section(&[Point::m(1.0, 1.0), Point::m(1.0, 1.0)]).len(), 1);
}

#[test]
fn a_plane_over_a_concave_outline_has_its_area_and_its_levels() {
    let corners = [(0.0, 0.0), (2.0, 0.0), (4.0, 0.0), (4.0, 3.0), (2.0, 1.0), (0.0, 3.0)];
    let outline = Polygon::new(corners.iter().map(|&(x, y)| Point::m(x, y)).collect()).unwrap();
    let plane = Plane { a: 0.25, b: -0.5, c: 12.0 };
    let tin = Tin::from_plane(plane, &outline);
    assert_eq!(tin.triangles().len(), 4);
    assert!((tin.area() - outline.area()).abs().to_m2() < 1e-12);
    assert_eq!(tin.outline()[0].corners().len(), 6);
    let p = Point::m(1.7, 0.6);
    assert!((tin.level_at(p).unwrap() - plane.level_at(p)).abs() < Length::m(1e-12));
    assert_eq!(tin.level_at(Point::m(2.0, 2.0)), None);
}

#[test]
fn triangles_touching_a_rectangle_are_found_and_distant_ones_are_not() {
    let grid: Vec<_> = (0..20).flat_map(|i| (0..20).map(move |j| (f64::from(i), f64::from(j), 0.0))).collect();
    let tin = Tin::build(&ground(&grid), &[], None).unwrap();
    assert_eq!(tin.triangles().len(), 2 * 19 * 19);
    let near = tin.triangles_touching(Point::m(3.2, 3.2), Point::m(3.4, 3.4));
    assert!((1..60).contains(&near.len()), "{}", near.len());
    assert_eq!(tin.triangles_touching(Point::m(-9.0, -9.0), Point::m(99.0, 99.0)).len(), 722);
}
