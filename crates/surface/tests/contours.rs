//! Do contours keep to their level, without breaks and without doubles?

use groundhold_quantity::{Length, Level, Point};
use groundhold_surface::{Contour, Facet, GroundPoint, Plane, Tin, contours_of_facets};

fn tin(points: &[(f64, f64, f64)], break_lines: &[Vec<usize>]) -> Tin {
    let point = |(i, &(x, y, z)): (usize, &(f64, f64, f64))| GroundPoint {
        id: format!("P{}", i + 1),
        at: Point::m(x, y),
        level: Level::m(z),
    };
    let points: Vec<_> = points.iter().enumerate().map(point).collect();
    Tin::build(&points, break_lines, None).expect("the points of these tests make a surface")
}

fn length(c: &Contour) -> f64 {
    let open: f64 = c.line.windows(2).map(|w| (w[1] - w[0]).length()).sum();
    open + if c.closed { (c.line[0] - c.line[c.line.len() - 1]).length() } else { 0.0 }
}

fn at(contours: &[Contour], level: f64) -> Vec<&Contour> {
    contours.iter().filter(|c| (c.level - Level::m(level)).abs().to_m() < 1e-9).collect()
}

/// A square of side 4 at level 0 with a peak of 2 m in its middle.
fn pyramid() -> Tin {
    tin(&[(0.0, 0.0, 0.0), (4.0, 0.0, 0.0), (4.0, 4.0, 0.0), (0.0, 4.0, 0.0), (2.0, 2.0, 2.0)], &[])
}

#[test]
fn contours_of_a_pyramid_are_closed_squares_with_the_peak_on_their_left() {
    let found = pyramid().contours(Length::m(0.5));
    let levels: Vec<f64> = found.iter().map(|c| c.level.to_m()).collect();
    assert_eq!(levels, [0.5, 1.0, 1.5], "neither the foot nor the very peak is a line");
    for c in &found {
        assert!(c.closed);
        assert_eq!(c.line.len(), 4);
        assert!((length(c) - 4.0 * 4.0 * (1.0 - c.level.to_m() / 2.0)).abs() < 1e-12);
        let (a, b) = (c.line[0], c.line[1]);
        assert!((b - a).cross(Point::m(2.0, 2.0) - a) > 0.0);
    }
}

#[test]
fn a_ridge_exactly_at_a_level_is_drawn_once() {
    let roof = tin(
        &[(0.0, 0.0, 0.0), (4.0, 0.0, 0.0), (4.0, 4.0, 0.0), (0.0, 4.0, 0.0), (1.0, 2.0, 1.0), (3.0, 2.0, 1.0)],
        &[vec![4, 5]],
    );
    let contours = roof.contours(Length::m(1.0));
    let ridge = at(&contours, 1.0);
    assert_eq!(ridge.len(), 1);
    assert!(!ridge[0].closed);
    assert!((length(ridge[0]) - 2.0).abs() < 1e-12);
}

#[test]
fn a_contour_through_points_of_a_grid_neither_breaks_nor_doubles() {
    // An even slope over a grid: the level 3 runs exactly through a row of points.
    let grid: Vec<_> = (0..7).flat_map(|i| (0..7).map(move |j| (f64::from(i), f64::from(j), f64::from(j)))).collect();
    let contours = tin(&grid, &[]).contours(Length::m(1.0));
    for level in 1..=6 {
        let line = at(&contours, f64::from(level));
        assert_eq!(line.len(), 1, "level {level}");
        assert!((length(line[0]) - 6.0).abs() < 1e-12);
    }
    assert!(at(&contours, 0.0).is_empty(), "the lowest edge has nothing below it");
}

#[test]
fn a_flat_top_exactly_at_a_level_is_drawn_around_and_a_flat_floor_is_not() {
    let top = [(0.0, 0.0), (6.0, 0.0), (6.0, 6.0), (0.0, 6.0), (2.0, 2.0), (4.0, 2.0), (4.0, 4.0), (2.0, 4.0)];
    let shaped = |outer: f64| {
        let points: Vec<_> =
            top.iter().enumerate().map(|(i, &(x, y))| (x, y, if i < 4 { outer } else { 1.0 })).collect();
        tin(&points, &[vec![4, 5, 6, 7, 4]]).contours(Length::m(1.0))
    };
    let hill = shaped(0.0);
    assert_eq!(at(&hill, 1.0).len(), 1);
    assert!(at(&hill, 1.0)[0].closed);
    assert!((length(at(&hill, 1.0)[0]) - 8.0).abs() < 1e-12);
    assert!(at(&shaped(2.0), 1.0).is_empty());
}

#[test]
fn intervals_without_sense_give_no_contours() {
    for interval in [0.0, -1.0, f64::NAN, 1e-9, 1e-300] {
        assert!(pyramid().contours(Length::m(interval)).is_empty());
    }
    assert!(pyramid().contours(Length::m(f64::INFINITY)).is_empty());
    assert!(contours_of_facets(&[], Length::m(1.0)).is_empty());
}

#[test]
fn contours_of_the_triangles_as_facets_are_those_of_the_surface() {
    let points: Vec<_> = (0..6)
        .flat_map(|i| (0..6).map(move |j| (f64::from(i), f64::from(j), f64::from((i * 5 + j * 7 + i * j) % 11) * 0.31)))
        .collect();
    let ground = tin(&points, &[]);
    let (whole, parts) = (ground.contours(Length::m(0.25)), contours_of_facets(&ground.facets(), Length::m(0.25)));
    let sum = |cs: &[Contour]| cs.iter().map(length).sum::<f64>();
    assert!((sum(&whole) - sum(&parts)).abs() < 1e-6 * sum(&whole));
    let closed = |cs: &[Contour]| cs.iter().filter(|c| c.closed).count();
    assert_eq!((whole.len(), closed(&whole)), (parts.len(), closed(&parts)));
}

#[test]
fn a_contour_of_facets_ends_at_a_step_and_goes_on_over_a_common_side() {
    let square = |x: f64| vec![Point::m(x, 0.0), Point::m(x + 1.0, 0.0), Point::m(x + 1.0, 1.0), Point::m(x, 1.0)];
    let rising = |c: f64| Plane { a: 0.0, b: 1.0, c };
    let facets = [
        Facet { ring: square(0.0), plane: rising(0.0) },
        Facet { ring: square(1.0), plane: rising(0.0) },
        Facet { ring: square(2.0), plane: rising(0.2) },
    ];
    let contours = contours_of_facets(&facets, Length::m(0.5));
    let mut lengths: Vec<f64> = at(&contours, 0.5).iter().map(|c| length(c)).collect();
    lengths.sort_by(f64::total_cmp);
    assert_eq!(lengths.len(), 2);
    assert!((lengths[0] - 1.0).abs() < 1e-12 && (lengths[1] - 2.0).abs() < 1e-12, "{lengths:?}");
}
