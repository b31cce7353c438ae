//! Are volumes of solids with a closed formula exact?

use groundhold_quantity::{Length, Level, Point, Slope, Vector, math};
use groundhold_surface::{CutFill, Facet, GroundPoint, Plane, Polygon, Tin, between, cut_and_fill, volume_above};

fn ground(points: &[(f64, f64, f64)]) -> Vec<GroundPoint> {
    let point = |(i, &(x, y, z)): (usize, &(f64, f64, f64))| GroundPoint {
        id: format!("P{}", i + 1),
        at: Point::m(x, y),
        level: Level::m(z),
    };
    points.iter().enumerate().map(point).collect()
}

fn rectangle(x: f64, y: f64, width: f64, depth: f64) -> Polygon {
    let corner = Point::m;
    Polygon::new(vec![corner(x, y), corner(x + width, y), corner(x + width, y + depth), corner(x, y + depth)])
        .expect("a rectangle is simple")
}

fn same(found: f64, wanted: f64) {
    assert!((found - wanted).abs() <= 1e-9 * wanted.abs().max(1e-3), "found {found}, wanted {wanted}");
}

fn parts(c: CutFill) -> [f64; 5] {
    [c.cut.to_m3(), c.fill.to_m3(), c.cut_area.to_m2(), c.fill_area.to_m2(), c.uncovered.to_m2()]
}

fn all_same(found: CutFill, wanted: [f64; 5]) {
    for (f, w) in parts(found).into_iter().zip(wanted) {
        same(f, w);
    }
}

#[test]
fn a_level_pad_in_an_even_slope_cuts_and_fills_a_wedge_each() {
    // 1 in 6 towards the north over 12 m; a pad 5 m wide and 6 m deep set at the level of its middle.
    let slope = Plane::rising(Point::m(0.0, 0.0), Level::m(100.0), Vector::m(0.0, 1.0), Slope::one_in(6.0));
    let tin = Tin::from_plane(slope, &rectangle(0.0, 0.0, 10.0, 12.0));
    let pad = Facet {
        ring: rectangle(2.0, 3.0, 5.0, 6.0).corners().to_vec(),
        plane: Plane::level(slope.level_at(Point::m(0.0, 6.0))),
    };
    // Each wedge: 3 m deep, 0.5 m high at its edge, 5 m wide.
    let wedge = 0.5 * 3.0 * 0.5 * 5.0;
    all_same(cut_and_fill(&tin, &[pad]), [wedge, wedge, 15.0, 15.0, 0.0]);
}

#[test]
fn a_pyramid_has_a_third_of_base_times_height() {
    let points = ground(&[(0.0, 0.0, 1.0), (4.0, 0.0, 1.0), (4.0, 4.0, 1.0), (0.0, 4.0, 1.0), (2.0, 2.0, 4.0)]);
    let tin = Tin::build(&points, &[], None).unwrap();
    all_same(volume_above(&tin, Level::m(1.0), &rectangle(0.0, 0.0, 4.0, 4.0)), [16.0, 0.0, 16.0, 0.0, 0.0]);
    // Above half its height remains an eighth.
    let top = volume_above(&tin, Level::m(2.5), &rectangle(0.0, 0.0, 4.0, 4.0));
    same(top.cut.to_m3(), 2.0);
    same(top.cut_area.to_m2(), 4.0);
    same(top.fill.to_m3(), 1.5 * 16.0 - (16.0 - 2.0));
}

#[test]
fn a_frustum_has_the_mean_of_base_top_and_geometric_mean_times_height() {
    let (base, top, height) = (6.0, 2.0, 1.5);
    let near = (base - top) / 2.0;
    let far = near + top;
    let points = ground(&[
        (0.0, 0.0, 0.0),
        (base, 0.0, 0.0),
        (base, base, 0.0),
        (0.0, base, 0.0),
        (near, near, height),
        (far, near, height),
        (far, far, height),
        (near, far, height),
    ]);
    let edges = vec![vec![4, 5, 6, 7, 4], vec![0, 4], vec![1, 5], vec![2, 6], vec![3, 7]];
    let tin = Tin::build(&points, &edges, None).unwrap();
    let wanted = height / 3.0 * (base * base + top * top + base * top);
    same(volume_above(&tin, Level::m(0.0), &rectangle(0.0, 0.0, base, base)).cut.to_m3(), wanted);
}

#[test]
fn a_fan_of_triangles_has_a_third_of_its_base_times_height_like_a_cone() {
    let n = 48;
    let at = |i: i32| f64::from(i) * 2.0 * std::f64::consts::PI / f64::from(n);
    let mut points: Vec<(f64, f64, f64)> =
        (0..n).map(|i| (3.0 * math::cos(at(i)), 3.0 * math::sin(at(i)), 0.0)).collect();
    points.push((0.0, 0.0, 2.0));
    let tin = Tin::build(&ground(&points), &[], None).unwrap();
    let base = f64::from(n) / 2.0 * 9.0 * math::sin(at(1));
    same(tin.area().to_m2(), base);
    let whole = &tin.outline()[0];
    same(whole.area().to_m2(), base);
    same(volume_above(&tin, Level::m(0.0), whole).cut.to_m3(), base * 2.0 / 3.0);
    // Cut at mid height: a cone of half the size above, and what is missing outside it.
    same(volume_above(&tin, Level::m(1.0), whole).cut.to_m3(), base * 2.0 / 3.0 / 8.0);
}

#[test]
fn far_from_the_origin_a_prism_keeps_nine_digits() {
    let (east, north) = (457_000.0, 5_428_000.0);
    let moved = |x: f64, y: f64, z: f64| (x + east, y + north, z);
    let points =
        ground(&[moved(0.0, 0.0, 350.0), moved(30.0, 0.0, 353.0), moved(30.0, 20.0, 353.0), moved(0.0, 20.0, 350.0)]);
    let tin = Tin::build(&points, &[], None).unwrap();
    let over = rectangle(east, north, 30.0, 20.0);
    same(volume_above(&tin, Level::m(350.0), &over).cut.to_m3(), 30.0 * 3.0 / 2.0 * 20.0);
}

#[test]
fn ground_that_is_not_there_is_reported_and_not_counted() {
    let tin = Tin::from_plane(Plane::level(Level::m(3.0)), &rectangle(0.0, 0.0, 4.0, 4.0));
    let pad = Facet { ring: rectangle(3.0, 0.0, 2.0, 4.0).corners().to_vec(), plane: Plane::level(Level::m(2.0)) };
    all_same(cut_and_fill(&tin, &[pad]), [4.0, 0.0, 4.0, 0.0, 4.0]);
    let beside = Facet { ring: rectangle(30.0, 0.0, 2.0, 4.0).corners().to_vec(), plane: Plane::level(Level::m(2.0)) };
    all_same(cut_and_fill(&tin, &[beside]), [0.0, 0.0, 0.0, 0.0, 8.0]);
}

#[test]
fn where_surfaces_coincide_there_is_neither_cut_nor_fill() {
    let plane = Plane { a: 0.1, b: -0.3, c: 7.0 };
    let tin = Tin::from_plane(plane, &rectangle(0.0, 0.0, 4.0, 4.0));
    let facet = Facet { ring: rectangle(1.0, 1.0, 2.0, 2.0).corners().to_vec(), plane };
    all_same(cut_and_fill(&tin, std::slice::from_ref(&facet)), [0.0; 5]);
    assert!(groundhold_surface::pieces_above(&tin, &facet).is_empty());
    assert!(groundhold_surface::pieces_below(&tin, &facet).is_empty());
}

#[test]
fn two_triangulated_surfaces_over_a_concave_polygon_differ_by_depth_times_area() {
    let bumpy = |lift: f64| {
        let points = ground(&[
            (0.0, 0.0, 1.0 + lift),
            (5.0, 0.0, 1.3 + lift),
            (5.0, 5.0, 0.7 + lift),
            (0.0, 5.0, 1.9 + lift),
            (2.2, 3.1, 2.5 + lift),
        ]);
        Tin::build(&points, &[], None).unwrap()
    };
    let l = [(0.5, 0.5), (4.5, 0.5), (4.5, 2.0), (2.0, 2.0), (2.0, 4.5), (0.5, 4.5)];
    let over = Polygon::new(l.iter().map(|&(x, y)| Point::m(x, y)).collect()).unwrap();
    let area = 4.0 * 1.5 + 1.5 * 2.5;
    all_same(between(&bumpy(0.4), &bumpy(0.0), &over), [0.4 * area, 0.0, area, 0.0, 0.0]);
    all_same(between(&bumpy(0.0), &bumpy(0.0), &over), [0.0; 5]);
    assert_eq!(over.area(), groundhold_quantity::Area::m2(area));
    assert!(Length::m(16.0) == over.perimeter());
}
