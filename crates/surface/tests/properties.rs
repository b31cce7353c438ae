//! Do surfaces and volumes keep what geometry says they must, whatever the points?

use groundhold_quantity::{Length, Level, Point, Vector, math};
use groundhold_surface::{
    CutFill, Facet, GroundPoint, Plane, Polygon, SurfaceError, Tin, between, clip_convex, cut_and_fill,
    cut_and_fill_each, pieces_above, pieces_below, subtract_convex,
};
use proptest::prelude::*;

type Places = Vec<(f64, f64, f64)>;

fn ground(points: &[(f64, f64, f64)]) -> Vec<GroundPoint> {
    let point = |(i, &(x, y, z)): (usize, &(f64, f64, f64))| GroundPoint {
        id: format!("P{}", i + 1),
        at: Point::m(x, y),
        level: Level::m(z),
    };
    points.iter().enumerate().map(point).collect()
}

/// Ground over the square from (0, 0) to (20, 20), bumpy inside.
fn bumpy(inside: &[(f64, f64, f64)]) -> Tin {
    let corners = [(0.0, 0.0, 1.0), (20.0, 0.0, 2.0), (20.0, 20.0, 0.5), (0.0, 20.0, 1.5)];
    Tin::build(&ground(&[&corners[..], inside].concat()), &[], None)
        .expect("points apart and not in line make a surface")
}

fn inside() -> impl Strategy<Value = Places> {
    proptest::collection::vec((0.5..19.5f64, 0.5..19.5f64, -3.0..6.0f64), 1..40)
}

fn plane() -> impl Strategy<Value = Plane> {
    (-0.5..0.5f64, -0.5..0.5f64, -3.0..6.0f64).prop_map(|(a, b, c)| Plane { a, b, c })
}

/// A convex ring around a point, inside the square.
fn convex() -> impl Strategy<Value = Vec<Point>> {
    (3.0..17.0f64, 3.0..17.0f64, 0.2..2.9f64, 3..9usize, 0.0..6.0f64).prop_map(|(x, y, radius, n, turn)| {
        let at = |i: usize| turn + i as f64 * 2.0 * std::f64::consts::PI / n as f64;
        (0..n).map(|i| Point::m(x + radius * math::cos(at(i)), y + radius * math::sin(at(i)))).collect()
    })
}

fn area(ring: &[Point]) -> f64 {
    Facet { ring: ring.to_vec(), plane: Plane::level(Level::m(0.0)) }.area().to_m2()
}

fn near(a: f64, b: f64, scale: f64) -> bool {
    (a - b).abs() <= 1e-9 * (1.0 + scale)
}

fn parts(c: CutFill) -> [f64; 5] {
    [c.cut.to_m3(), c.fill.to_m3(), c.cut_area.to_m2(), c.fill_area.to_m2(), c.uncovered.to_m2()]
}

fn agree(a: CutFill, b: CutFill) -> bool {
    let scale = (a.cut + a.fill).to_m3() + a.cut_area.to_m2() + a.fill_area.to_m2();
    parts(a).iter().zip(parts(b)).all(|(&x, y)| near(x, y, scale))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn swapping_the_surfaces_swaps_cut_and_fill(a in inside(), b in inside()) {
        let (a, b) = (bumpy(&a), bumpy(&b));
        let over = &a.outline()[0];
        let (there, back) = (between(&a, &b, over), between(&b, &a, over));
        let mirrored = CutFill {
            cut: back.fill, fill: back.cut, cut_area: back.fill_area, fill_area: back.cut_area, uncovered: back.uncovered,
        };
        prop_assert!(agree(there, mirrored), "{there:?} {back:?}");
        prop_assert!(there.uncovered.to_m2() == 0.0);
    }

    #[test]
    fn net_volume_is_the_difference_of_the_volumes_above_any_level(a in inside(), b in inside()) {
        let (a, b) = (bumpy(&a), bumpy(&b));
        let over = &a.outline()[0];
        let net = |c: CutFill| (c.cut - c.fill).to_m3();
        let above = |t: &Tin| net(groundhold_surface::volume_above(t, Level::m(0.7), over));
        prop_assert!(near(net(between(&a, &b, over)), above(&a) - above(&b), 400.0));
    }

    #[test]
    fn volume_adds_up_when_a_facet_is_split(a in inside(), ring in convex(), hole in convex(), plane in plane()) {
        let tin = bumpy(&a);
        let whole = cut_and_fill(&tin, &[Facet { ring: ring.clone(), plane }]);
        let mut pieces = subtract_convex(&ring, &hole);
        let common = clip_convex(&ring, &hole);
        if !common.is_empty() {
            pieces.push(common);
        }
        let facets: Vec<Facet> = pieces.into_iter().map(|ring| Facet { ring, plane }).collect();
        prop_assert!(agree(whole, cut_and_fill(&tin, &facets)));
        prop_assert!(agree(whole, cut_and_fill_each(&tin, &facets).into_iter().sum()));
    }

    #[test]
    fn what_is_cut_out_and_what_is_left_add_up(ring in convex(), hole in convex()) {
        let pieces = subtract_convex(&ring, &hole);
        let left: f64 = pieces.iter().map(|p| area(p)).sum();
        prop_assert!(near(left + area(&clip_convex(&ring, &hole)), area(&ring), 10.0));
        for p in &pieces {
            prop_assert!(clip_convex(p, &hole).is_empty() || area(&clip_convex(p, &hole)) < 1e-9);
        }
    }

    #[test]
    fn pieces_below_and_above_make_up_the_facet_and_carry_its_volumes(a in inside(), ring in convex(), plane in plane()) {
        let tin = bumpy(&a);
        let facet = Facet { ring, plane };
        let (below, above) = (pieces_below(&tin, &facet), pieces_above(&tin, &facet));
        let sum = |f: &[Facet]| f.iter().map(|f| f.area().to_m2()).sum::<f64>();
        prop_assert!(near(sum(&below) + sum(&above), facet.area().to_m2(), 30.0));
        let (whole, cut, fill) = (cut_and_fill(&tin, &[facet]), cut_and_fill(&tin, &below), cut_and_fill(&tin, &above));
        prop_assert!(near(whole.cut.to_m3(), cut.cut.to_m3(), 30.0) && near(cut.fill.to_m3(), 0.0, 30.0));
        prop_assert!(near(whole.fill.to_m3(), fill.fill.to_m3(), 30.0) && near(fill.cut.to_m3(), 0.0, 30.0));
    }

    #[test]
    fn a_section_has_the_levels_of_the_surface_and_is_straight_between(a in inside(), line in proptest::collection::vec((-2.0..22.0f64, -2.0..22.0f64), 2..6)) {
        let tin = bumpy(&a);
        let line: Vec<Point> = line.iter().map(|&(x, y)| Point::m(x, y)).collect();
        let section = tin.section(&line);
        for p in &section {
            let found = tin.level_at(p.at);
            if let (Some(s), Some(t)) = (p.level, found) {
                prop_assert!((s - t).to_m().abs() < 1e-6, "{p:?} {found:?}");
            }
            prop_assert!(p.level.is_some() || found.is_none());
        }
        for w in section.windows(2) {
            prop_assert!(w[0].chainage < w[1].chainage);
            if let (Some(from), Some(to)) = (w[0].level, w[1].level) {
                let middle = tin.level_at(w[0].at.towards(w[1].at, 0.5));
                prop_assert!(middle.is_some_and(|m| ((m - from) - (to - m)).to_m().abs() < 1e-6), "{w:?} {middle:?}");
            }
        }
        let length: f64 = line.windows(2).map(|w| (w[1] - w[0]).length()).sum();
        prop_assert!((section[section.len() - 1].chainage.to_m() - length).abs() < 1e-9);
    }

    #[test]
    fn contour_points_lie_on_the_surface_and_lines_end_only_at_its_outline(a in inside(), interval in 0.1..1.5f64) {
        let tin = bumpy(&a);
        let outline = &tin.outline()[0];
        for c in tin.contours(Length::m(interval)) {
            prop_assert!(c.line.len() >= 2);
            for &p in &c.line {
                let level = tin.level_at(p).unwrap();
                prop_assert!((level - c.level).abs().to_m() < 1e-6, "{level:?} {:?}", c.level);
            }
            if !c.closed {
                for end in [c.line[0], c.line[c.line.len() - 1]] {
                    let (lo, hi) = outline.bounds();
                    let gap = (end.x - lo.x).min(hi.x - end.x).min(end.y - lo.y).min(hi.y - end.y);
                    prop_assert!(gap < 1e-9, "open end {gap} m inside the outline");
                }
            }
        }
    }

    #[test]
    fn turning_and_moving_the_job_leaves_the_volumes(a in inside(), ring in convex(), plane in plane(), turn in 0.0..6.2f64, east in -2000.0..2000.0f64, north in -2000.0..2000.0f64) {
        let (c, s) = (math::cos(turn), math::sin(turn));
        let moved = |p: Point| Point::m(c * p.x - s * p.y + east, s * p.x + c * p.y + north);
        let tin = bumpy(&a);
        let points: Vec<GroundPoint> = tin.points().iter().map(|p| GroundPoint { at: moved(p.at), ..p.clone() }).collect();
        // Which diagonal a four-sided gap takes is decided by rounding only where four points lie on one circle.
        let turned = Tin::build(&points, &[], None).unwrap();
        let grade = Vector::m(c * plane.a - s * plane.b, s * plane.a + c * plane.b);
        let (origin, length) = (moved(Point::m(0.0, 0.0)), grade.length());
        let tilted = Plane::rising(origin, Level::m(plane.c), grade, groundhold_quantity::Slope::ratio(length));
        let facet = Facet { ring: ring.iter().map(|&p| moved(p)).collect(), plane: tilted };
        let (before, after) = (cut_and_fill(&tin, &[Facet { ring, plane }]), cut_and_fill(&turned, &[facet]));
        prop_assert!(agree(before, after), "{before:?} {after:?}");
    }

    #[test]
    fn break_lines_that_do_not_cross_are_all_kept_and_crossing_ones_named(a in inside(), pairs in proptest::collection::vec((0..44usize, 0..44usize), 1..8)) {
        let corners = [(0.0, 0.0, 1.0), (20.0, 0.0, 2.0), (20.0, 20.0, 0.5), (0.0, 20.0, 1.5)];
        let points = ground(&[&corners[..], &a].concat());
        let n = points.len();
        let lines: Vec<Vec<usize>> = pairs.iter().map(|&(i, j)| vec![i % n, j % n]).collect();
        let at = |i: usize| points[i].at;
        let crosses = lines.iter().enumerate().any(|(k, l)| {
            lines[..k].iter().any(|m| groundhold_quantity::segments_cross(at(l[0]), at(l[1]), at(m[0]), at(m[1])).is_some())
        });
        match Tin::build(&points, &lines, Some(&[0, 1, 2, 3])) {
            Ok(tin) => {
                prop_assert!(!crosses);
                prop_assert!(near(tin.area().to_m2(), 400.0, 400.0));
                let wanted = lines.iter().filter(|l| l[0] != l[1]).map(|l| (l[0].min(l[1]), l[0].max(l[1])));
                let edges = tin.break_edges();
                for edge in wanted {
                    prop_assert!(edges.contains(&edge));
                }
                for (u, v) in edges {
                    prop_assert!(tin.triangles().iter().any(|t| t.contains(&u) && t.contains(&v)));
                }
            }
            Err(e) => {
                prop_assert!(crosses);
                let SurfaceError::BreakLinesCross { at, .. } = e else { panic!("{e}") };
                prop_assert!((-1e-9..=20.0 + 1e-9).contains(&at.x) && (-1e-9..=20.0 + 1e-9).contains(&at.y));
            }
        }
    }

    #[test]
    fn rows_of_points_in_line_but_for_rounding_stay_whole(columns in 2..9usize, rows in 2..9usize, turn in 0.0..6.2f64, east in -500.0..500.0f64) {
        let (c, s) = (math::cos(turn), math::sin(turn));
        let moved = |x: f64, y: f64| Point::m(c * x - s * y + east, s * x + c * y);
        let index = |i: usize, j: usize| j * columns + i;
        let points: Vec<GroundPoint> = (0..rows)
            .flat_map(|j| (0..columns).map(move |i| (i, j)))
            .map(|(i, j)| GroundPoint {
                id: format!("{i}/{j}"),
                at: moved(i as f64 * 0.7, j as f64 * 1.3),
                level: Level::m(((i * 7 + j * 3) % 5) as f64),
            })
            .collect();
        // Each row as one line from its first to its last point, over those between.
        let lines: Vec<Vec<usize>> = (0..rows).map(|j| vec![index(0, j), index(columns - 1, j)]).collect();
        let corners = [index(0, 0), index(columns - 1, 0), index(columns - 1, rows - 1), index(0, rows - 1)];
        for boundary in [None, Some(&corners[..])] {
            let tin = Tin::build(&points, &lines, boundary).unwrap();
            let area = (columns - 1) as f64 * 0.7 * (rows - 1) as f64 * 1.3;
            prop_assert!(near(tin.area().to_m2(), area, area));
            prop_assert_eq!(tin.break_edges().len(), rows * (columns - 1));
            prop_assert_eq!(tin.triangles().len(), 2 * (columns - 1) * (rows - 1));
            prop_assert_eq!(tin.outline()[0].corners().len(), 2 * (columns + rows) - 4);
            for j in 0..rows {
                let section = tin.section(&[points[index(0, j)].at, points[index(columns - 1, j)].at]);
                prop_assert!(section.iter().all(|p| p.level.is_some()));
                prop_assert_eq!(section.len(), columns);
            }
        }
    }

    #[test]
    fn contours_at_whole_levels_of_whole_numbers_run_nowhere_twice(levels in proptest::collection::vec(0..4i32, 49), turn in 0.0..6.2f64) {
        let (c, s) = (math::cos(turn), math::sin(turn));
        let at = |k: usize| {
            let (x, y) = ((k % 7) as f64, (k / 7) as f64);
            (c * x - s * y, s * x + c * y, f64::from(levels[k]))
        };
        let points: Vec<_> = (0..49).map(at).collect();
        let tin = Tin::build(&ground(&points), &[], None).unwrap();
        let mut seen: Vec<[[u64; 2]; 2]> = Vec::new();
        for contour in tin.contours(Length::m(1.0)) {
            let mut line = contour.line.clone();
            if contour.closed {
                line.push(line[0]);
            }
            for w in line.windows(2) {
                let bits = |p: Point| [p.x.to_bits(), p.y.to_bits()];
                let (a, b) = (bits(w[0]), bits(w[1]));
                prop_assert!(a != b);
                prop_assert!(!seen.contains(&[a.min(b), a.max(b)]), "{:?} is drawn twice", w);
                seen.push([a.min(b), a.max(b)]);
                let middle = tin.level_at(w[0].towards(w[1], 0.5)).unwrap();
                prop_assert!((middle - contour.level).abs().to_m() < 1e-9);
            }
        }
    }

    #[test]
    fn every_point_of_the_outline_square_is_in_a_triangle(a in inside(), x in 0.0..=20.0f64, y in 0.0..=20.0f64) {
        let tin = bumpy(&a);
        let p = Point::m(x, y);
        let (level, plane) = (tin.level_at(p).unwrap(), tin.plane_at(p).unwrap());
        prop_assert!((level - plane.level_at(p)).abs().to_m() < 1e-9);
        let slow = tin.facets().into_iter().find(|f| f.contains(p)).unwrap();
        prop_assert!((level - slow.plane.level_at(p)).abs().to_m() < 1e-3 * slow.plane.slope().to_ratio().max(1e-6));
    }
}

#[test]
fn a_polygon_with_a_part_outside_the_ground_reports_that_part() {
    let tin = bumpy(&[]);
    let over =
        Polygon::new(vec![Point::m(10.0, 5.0), Point::m(30.0, 5.0), Point::m(30.0, 6.0), Point::m(10.0, 6.0)]).unwrap();
    assert!(near(between(&tin, &tin, &over).uncovered.to_m2(), 10.0, 0.0));
}
