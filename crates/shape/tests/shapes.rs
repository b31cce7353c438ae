//! Do walls along curves, turning flights, benched batters and ways to and fro come out as by hand, in one valid mesh?

use groundhold_quantity::{Angle, Length, Level, Point, Slope, Units, Vector, math};
use groundhold_shape::build_flight::{FlightBuild, take_off};
use groundhold_shape::{
    Batter, Bench, Bend, Beside, End, EndFound, FlightWish, GroundKind, Landings, Limits, PadWish, RampLimits,
    RampWish, Shaped, Side, StepLimits, Top, WallPart, WallWish, Way, Wish, shape,
};
use groundhold_surface::{Plane, Polygon, Tin, cut_and_fill};
use proptest::prelude::*;

fn p(x: f64, y: f64) -> Point {
    Point::m(x, y)
}
fn m(v: f64) -> Length {
    Length::m(v)
}
fn z(v: f64) -> Level {
    Level::m(v)
}

/// Ground that rises to the north through level 100 m at y = 0, over 60 m × 60 m about the origin.
fn plane(rise: f64) -> Tin {
    let outline = Polygon::new(vec![p(-30.0, -30.0), p(30.0, -30.0), p(30.0, 30.0), p(-30.0, 30.0)]).expect("a square");
    Tin::from_plane(Plane::rising(p(0.0, 0.0), z(100.0), Vector::m(0.0, 1.0), Slope::ratio(rise)), &outline)
}
fn wish() -> Wish {
    Wish {
        pads: vec![],
        walls: vec![],
        flights: vec![],
        ramps: vec![],
        batter: Batter::default(),
        limits: Limits {
            steps: StepLimits {
                riser: (Length::mm(100.0), Length::mm(220.0)),
                going: (Length::mm(220.0), Length::mm(450.0)),
                two_r_plus_g: (Length::mm(550.0), Length::mm(700.0)),
                pitch_most: Angle::deg(42.0),
                source: "invented limits",
            },
            ramp: RampLimits { steepest: Slope::one_in(1.0), source: "invented limits" },
            guard: None,
        },
        units: Units::Metric,
    }
}
fn pad(id: &str, x: f64, y: f64, w: f64, d: f64, level: f64) -> PadWish {
    let corners = vec![p(x, y), p(x + w, y), p(x + w, y + d), p(x, y + d)];
    PadWish { id: id.into(), corners, level: z(level), ..PadWish::default() }
}
fn wall(id: &str, line: &[(f64, f64)]) -> WallWish {
    WallWish {
        id: id.into(),
        line: line.iter().map(|(x, y)| p(*x, *y)).collect(),
        start: End::At,
        end: End::At,
        thickness: m(0.1),
        top: Top::FollowGround { above: m(0.05) },
        ..WallWish::default()
    }
}
fn codes(s: &Shaped) -> Vec<&'static str> {
    s.findings.iter().map(|f| f.kind.code).collect()
}
fn says(s: &Shaped) -> String {
    s.findings.iter().map(|f| format!("{} {}\n", f.kind.code, f.says)).collect()
}
/// One valid mesh, and the volumes of the elements are those of the whole.
fn whole(s: &Shaped, ground: &Tin) {
    assert_eq!(s.flaws(ground), vec![]);
    let all = cut_and_fill(ground, &s.whole(ground));
    let parts = cut_and_fill(ground, &s.facets());
    let net = |v: groundhold_surface::CutFill| (v.cut - v.fill).to_m3();
    let by = (net(all) - net(parts)).abs();
    assert!(by < 1e-9 * (1.0 + parts.cut.to_m3() + parts.fill.to_m3()), "{by}");
}
fn near(a: f64, b: f64, by: f64) {
    assert!((a - b).abs() <= by, "{a} is not {b} within {by}");
}

#[test]
fn a_wall_along_an_arc_holds_what_the_plane_gives_at_every_place() {
    // A half circle of radius 6 about the pad's middle, the pad round with radius 5.9; the ground rises 1:5.
    let ground = plane(0.2);
    let mut w = wish();
    let round = |r: f64| vec![p(-r, 0.0), p(r, 0.0)];
    let bend = |at, x: f64, y: f64| Bend { at, way: Way::Through(p(x, y)), round: m(0.0), ease: m(0.0) };
    w.pads.push(PadWish {
        id: "P1".into(),
        corners: round(5.9),
        bends: vec![bend(1, 0.0, -5.9), bend(0, 0.0, 5.9)],
        level: z(100.0),
        ..PadWish::default()
    });
    w.walls.push(WallWish { line: round(6.0), bends: vec![bend(1, 0.0, 6.0)], ..wall("W1", &[]) });
    let s = shape(&ground, &w);
    whole(&s, &ground);
    let w1 = &s.walls[0];
    near(w1.length.to_m(), std::f64::consts::PI * 6.0, 0.02);
    assert_eq!((w1.corners().len(), w1.curves.len()), (2, 1));
    for st in w1.stations.iter().filter(|st| st.at.y > 0.5) {
        // Behind: the slope 51 mm farther out than the line; in front: the pad.
        let far = 6.051 / 6.0;
        near(st.behind.to_m(), 100.0 + 0.2 * st.at.y * far, 0.002);
        near(st.front.to_m(), 100.0, 1e-9);
    }
    near(w1.retained_most().to_m(), 0.2 * 6.051, 0.002);
    near(s.pads[0].area.to_m2(), std::f64::consts::PI * 5.9 * 5.9, 0.1);
}

#[test]
fn walls_that_cross_are_refused_with_the_place_and_walls_that_meet_are_not() {
    let ground = plane(0.2);
    let mut w = wish();
    w.walls = vec![wall("W1", &[(-5.0, 0.0), (5.0, 0.0)]), wall("W2", &[(1.0, -3.0), (1.0, 3.0)])];
    let s = shape(&ground, &w);
    assert_eq!(s.walls.len(), 1);
    let f = s.findings.iter().find(|f| f.kind.code == "G-014").unwrap();
    assert!(f.says.contains("W2 crosses W1 at x 1.00 m, y 0.00 m"), "{}", f.says);
    w.walls[1].line = vec![p(1.0, -3.0), p(1.0, -0.06)];
    w.walls.push(wall("W3", &[(5.0, 0.0), (5.0, 4.0)]));
    let s = shape(&ground, &w);
    assert!(!codes(&s).contains(&"G-014"));
    let met: Vec<_> = s.meetings.iter().map(|k| (k.wall.as_str(), k.meets.as_str(), k.corner)).collect();
    assert_eq!(met, [("W1", "W3", true), ("W2", "W1", false)]);
}

#[test]
fn a_tier_behind_another_runs_in_its_distance_and_one_too_near_to_a_round_is_refused() {
    let ground = plane(0.2);
    let mut w = wish();
    w.walls = vec![wall("W1", &[(-5.0, 0.0), (0.0, 0.0), (0.0, 5.0)]), wall("W2", &[])];
    w.walls[0].bends = vec![Bend { at: 1, way: Way::Straight, round: m(2.0), ease: m(0.0) }];
    w.walls[1].beside = Some(Beside { wall: "W1".into(), by: m(1.5) });
    let s = shape(&ground, &w);
    let (a, b) = (&s.walls[0], &s.walls[1]);
    // Behind is left: the inside of the turn, by a quarter circle of 1.5 m shorter.
    near((a.length - b.length).to_m(), std::f64::consts::FRAC_PI_2 * 1.5, 0.01);
    near(b.curves[0].radius, 0.5, 1e-9);
    w.walls[1].beside = Some(Beside { wall: "W1".into(), by: m(2.1) });
    let s = shape(&ground, &w);
    assert_eq!(codes(&s).iter().filter(|c| **c == "G-013").count(), 1, "{}", says(&s));
    assert!(says(&s).contains("less than 2.000 m to that side fits"), "{}", says(&s));
    w.walls[0].beside = Some(Beside { wall: "W2".into(), by: m(1.0) });
    assert!(says(&shape(&ground, &w)).contains("in the end runs beside itself"));
}

#[test]
fn ends_return_into_the_bank_and_stop_at_posts() {
    let ground = plane(0.2);
    let mut w = wish();
    w.pads.push(pad("P1", -4.0, -2.0, 8.0, 4.0, 100.0));
    w.walls.push(WallWish {
        start: End::Return(None),
        end: End::Return(Some(m(0.8))),
        ..wall("W1", &[(-4.1, 2.1), (4.1, 2.1)])
    });
    let s = shape(&ground, &w);
    whole(&s, &ground);
    let w1 = &s.walls[0];
    let (first, last) = (w1.line[0], w1.line[w1.line.len() - 1]);
    near(first.x, -4.1, 1e-9);
    assert!(first.y > 2.15 && matches!(w1.ends[0], EndFound::Faded { .. }), "{first:?} {:?}", w1.ends);
    assert!((last - p(4.1, 2.9)).length() < 1e-9 && w1.ends[1] == EndFound::Given);
    near(w1.given_from.to_m(), first.y - 2.1, 1e-9);
    w.walls[0].start = End::Post(m(0.3));
    w.walls[0].end = End::At;
    let s = shape(&ground, &w);
    near(s.walls[0].line[0].x, -3.95, 1e-9);
    assert_eq!(s.walls[0].ends[0], EndFound::AtPost);
}

#[test]
fn tops_rake_step_and_follow_a_line() {
    // Ground rises along the wall: 1:10 to the east.
    let outline = Polygon::new(vec![p(-30.0, -30.0), p(30.0, -30.0), p(30.0, 30.0), p(-30.0, 30.0)]).unwrap();
    let ground = Tin::from_plane(Plane { a: 0.1, b: 0.0, c: 100.0 }, &outline);
    let mut w = wish();
    w.walls.push(wall("W1", &[(0.0, 0.0), (10.0, 0.0)]));
    let tops = |top: Top| -> Vec<(f64, f64)> {
        let mut w = w.clone();
        w.walls[0].top = top;
        shape(&ground, &w).walls[0].stations.iter().map(|s| (s.chainage.to_m(), s.wanted_top.to_m())).collect()
    };
    for (c, top) in tops(Top::Raked { from: z(101.0), to: z(102.0) }) {
        near(top, 101.0 + c / 10.0, 1e-9);
    }
    let line = tops(Top::Line(vec![(m(0.0), z(101.0)), (m(4.0), z(101.0)), (m(4.0), z(101.5)), (m(10.0), z(101.5))]));
    for (c, top) in line {
        near(top, if c < 4.0 { 101.0 } else { 101.5 }, 1e-9);
    }
    let stepped = tops(Top::Stepped { above: m(0.05), by: m(0.2), least: m(0.5) });
    for (c, top) in &stepped {
        let above = top - (100.0 + 0.1 * c);
        assert!((0.05 - 1e-9..0.05 + 0.2 + 0.1 * 0.6).contains(&above), "{c} {above}");
        let steps = (top - 100.05) / 0.2;
        near(steps, steps.round(), 1e-9);
    }
    assert!(stepped.windows(2).filter(|s| s[1].1 > s[0].1 + 0.1).count() == 4, "{stepped:?}");
}

#[test]
fn a_leaning_wall_and_a_thicker_part_find_their_ground_farther_back() {
    let ground = plane(0.2);
    let mut w = wish();
    w.pads.push(pad("P1", -4.0, -2.0, 8.0, 4.0, 100.0));
    w.walls.push(wall("W1", &[(-4.0, 2.1), (4.0, 2.1)]));
    let upright = shape(&ground, &w).walls[0].clone();
    w.walls[0].lean = Slope::one_in(4.0);
    w.walls[0].parts = vec![WallPart { from: m(2.0), to: m(4.0), thickness: m(0.5), lean: Slope::LEVEL }];
    let s = shape(&ground, &w).walls[0].clone();
    let at = |w: &groundhold_shape::WallProfile, c: f64| *w.stations.iter().find(|s| s.chainage.to_m() > c).unwrap();
    let (a, b) = (at(&upright, 6.0), at(&s, 6.0));
    // The retained height H leans H/4 back, where the ground is H/4·0.2 higher.
    near((b.behind - a.behind).to_m(), 0.2 * a.retained.to_m() / 4.0, 1e-9);
    near((b.at - b.top_at()).length(), b.exposed().to_m() / 4.0, 1e-9);
    let thick = at(&s, 3.0);
    near((thick.behind - a.behind).to_m(), 0.2 * (0.25 - 0.05), 1e-9);
}

#[test]
fn a_benched_batter_climbs_as_its_slopes_and_benches_do() {
    let ground = plane(1.0 / 3.0);
    let mut w = wish();
    w.pads.push(pad("P1", -4.0, -2.0, 8.0, 4.0, 100.0));
    w.batter = Batter {
        cut: Slope::ratio(1.0),
        fill: Slope::ratio(1.0),
        bench: Some(Bench { every: m(0.5), width: m(0.4), fall: Slope::ratio(0.05) }),
    };
    let s = shape(&ground, &w);
    whole(&s, &ground);
    // North of the pad: up 1:1 for 0.5 m, a bench of 0.4 m that rises 1:20 outwards, up again.
    for (out, rise) in [(0.25, 0.25), (0.5, 0.5), (0.7, 0.51), (0.9, 0.52), (1.0, 0.62)] {
        let q = p(0.1, 2.0 + out + 1e-6);
        let found = s.ground_at(q).filter(|g| g.kind == GroundKind::Batter).unwrap();
        near(found.facet.plane.level_at(q).to_m(), 100.0 + rise, 1e-5);
    }
}

#[test]
fn a_batter_that_never_reaches_daylight_is_told_the_slope_and_the_wall_that_do() {
    // The ground rises 1:1.5 and the batter 1:2 never catches it.
    let ground = plane(2.0 / 3.0);
    let mut w = wish();
    w.pads.push(pad("P1", -2.0, -1.0, 4.0, 2.0, 100.0));
    let s = shape(&ground, &w);
    let f = s.findings.iter().find(|f| f.kind.code == "G-004").unwrap();
    let steeper = f.remedies.iter().find_map(|r| r.change.first()).unwrap();
    assert_eq!((steeper.element.as_str(), steeper.field.starts_with("batter.")), ("shape", true));
    let slope = steeper.value.trim_end_matches(" %").parse::<f64>().unwrap() / 100.0;
    if steeper.field == "batter.cut" {
        w.batter.cut = Slope::ratio(slope);
    } else {
        w.batter.fill = Slope::ratio(slope);
    }
    w.walls.clear();
    let again = shape(&ground, &w);
    let left = |s: &Shaped| s.findings.iter().filter(|f| f.kind.code == "G-004").count();
    assert!(f.remedies.len() == 2 && slope > 0.5, "{:?}", f.remedies);
    // That side now reaches the ground; the same place is not named again.
    assert!(left(&again) <= left(&s) && !again.findings.iter().any(|g| g.says == f.says));
}

#[test]
fn a_flight_that_turns_has_equal_risers_and_ends_on_the_ground() {
    let ground = plane(0.25);
    let mut w = wish();
    w.pads.push(pad("P1", -4.0, 0.0, 8.0, 4.0, 101.2));
    w.batter.fill = Slope::ratio(1.0);
    w.flights.push(FlightWish {
        id: "S1".into(),
        bottom: p(-5.0, -2.0),
        toward: "P1".into(),
        width: m(1.0),
        turns: vec![p(1.0, -2.0)],
        ..FlightWish::default()
    });
    let s = shape(&ground, &w);
    whole(&s, &ground);
    let f = s.flights.first().unwrap_or_else(|| panic!("{}", says(&s)));
    assert_eq!((f.treads.len() + 1, f.nosings.len(), f.landings.len()), (f.risers, f.risers, 1));
    assert!(f.nosings.windows(2).all(|n| ((n[0].1 - n[1].1) - f.riser).abs() < Length::mm(0.001)));
    near(f.rise.to_m(), f.riser.to_m() * f.risers as f64, 1e-9);
    assert!(f.foot_outward == Vector::m(-1.0, 0.0) && f.outward == Vector::m(0.0, -1.0));
    near(f.foot_level.to_m(), ground.level_at(f.foot + f.foot_outward * 0.002).unwrap().to_m(), 1e-6);
    let landing = &f.treads[f.landings[0]];
    assert!(landing.ring.iter().any(|q| (*q - p(1.5, -2.5)).length() < 1e-9), "{:?}", landing.ring);
    // A dog-leg: two landings that touch are one, without a riser between.
    w.flights[0].turns = vec![p(1.0, -2.0), p(-0.1, -2.0)];
    w.flights[0].bottom = p(-0.1, 6.0);
    let s = shape(&ground, &w);
    let f = s.flights.first().unwrap_or_else(|| panic!("{}", says(&s)));
    let [a, b] = [0, 1].map(|k| f.treads[f.landings[k]].level);
    assert_eq!((f.landings.len(), a, f.treads.len()), (2, b, f.risers));
    // A way on that is no right angle is refused.
    w.flights[0].turns = vec![p(1.0, -2.0)];
    w.flights[0].bottom = p(1.5, -6.0);
    assert!(says(&shape(&ground, &w)).contains("flights turn by right angles"));
}

#[test]
fn a_ramp_that_is_too_steep_is_led_to_and_fro_and_then_keeps_its_slope() {
    let ground = plane(0.2);
    let mut w = wish();
    w.pads.push(pad("P1", -4.0, 0.0, 8.0, 4.0, 100.6));
    w.ramps.push(RampWish {
        id: "R1".into(),
        path: vec![p(0.0, -6.0), p(0.0, 0.0)],
        toward: "P1".into(),
        width: m(1.0),
        steepest: Slope::one_in(10.0),
        within: vec![p(-5.0, -14.0), p(5.0, -14.0), p(5.0, 0.0), p(-5.0, 0.0)],
        ..RampWish::default()
    });
    let s = shape(&ground, &w);
    let f = s.findings.iter().find(|f| f.kind.code == "G-020").unwrap();
    let change = f.remedies.iter().flat_map(|r| &r.change).find(|c| c.field == "path").unwrap();
    let numbers: Vec<f64> =
        change.value.split('"').skip(1).step_by(2).map(|t| t.trim_end_matches(" m").parse().unwrap()).collect();
    w.ramps[0].path = numbers.chunks(2).map(|c| p(c[0], c[1])).collect();
    assert!(w.ramps[0].path.iter().all(|q| q.x.abs() <= 5.0 && (-14.0..=0.0).contains(&q.y)));
    let s = shape(&ground, &w);
    whole(&s, &ground);
    assert!(!codes(&s).contains(&"G-020") && s.ramps.len() == 1, "{}", says(&s));
    near(s.ramps[0].gradient.to_ratio(), 0.1, 0.002);
    // Where the outline has no room, none is proposed.
    w.ramps[0].path = vec![p(0.0, -6.0), p(0.0, 0.0)];
    w.ramps[0].within = vec![p(-1.0, -4.0), p(1.0, -4.0), p(1.0, 0.0), p(-1.0, 0.0)];
    let s = shape(&ground, &w);
    assert!(!s.findings.iter().flat_map(|f| &f.remedies).flat_map(|r| &r.change).any(|c| c.field == "path"));
}

#[test]
fn overlapping_pads_are_told_the_shortest_way_apart_and_pads_under_walls_how_far_to_draw_in() {
    let ground = plane(0.1);
    let mut w = wish();
    w.pads = vec![pad("P1", 0.0, 0.0, 4.0, 4.0, 100.0), pad("P2", 3.5, 1.0, 4.0, 2.0, 100.0)];
    let s = shape(&ground, &w);
    let f = s.findings.iter().find(|f| f.kind.code == "G-003").unwrap();
    assert_eq!(f.remedies[0].says, "Move P2 500 mm to the east.");
    w.pads.truncate(1);
    w.walls.push(wall("W1", &[(-1.0, 3.4), (5.0, 3.4)]));
    let s = shape(&ground, &w);
    let f = s.findings.iter().find(|f| f.kind.code == "G-007").unwrap();
    assert!(f.remedies[0].says.contains("650 mm"), "{}", f.remedies[0].says);
    w.walls[0].line = vec![p(-1.0, 4.05), p(5.0, 4.05)];
    assert!(!codes(&shape(&ground, &w)).contains(&"G-007"));
}

#[test]
fn flights_of_timber_stone_and_concrete_take_what_their_measures_say() {
    let ground = plane(0.25);
    let mut w = wish();
    w.pads.push(pad("P1", -4.0, 0.0, 8.0, 4.0, 100.9));
    let (bottom, toward) = (p(0.0, -4.0), "P1".to_string());
    w.flights.push(FlightWish { id: "S1".into(), bottom, toward, width: m(1.2), ..FlightWish::default() });
    let s = shape(&ground, &w);
    let f = &s.flights[0];
    let treads = 1.2 * f.run.to_m();
    let mm = Length::mm;
    let t = take_off(f, FlightBuild::Timber { board: mm(50.0), pegs: 2, peg: mm(600.0), bed: mm(100.0) }).unwrap();
    assert_eq!((t.pieces, t.pegs.0), ((f.risers, m(1.2)), 2 * f.risers));
    near(t.bed.to_m3(), treads * 0.1, 1e-9);
    let c = take_off(f, FlightBuild::Concrete { waist: mm(120.0), bed: mm(150.0) }).unwrap();
    let (r, g) = (f.riser.to_m(), f.going.to_m());
    near(c.concrete.to_m3(), 1.2 * f.risers as f64 * (math::hypot(r, g) * 0.12 + r * g / 2.0), 1e-9);
    let b = take_off(f, FlightBuild::Stone { depth: m(g + 0.05), overlap: mm(50.0), bed: mm(100.0) }).unwrap();
    near(b.bed.to_m3(), 1.2 * (g + 0.05) * f.risers as f64 * 0.1, 1e-9);
    assert!(take_off(f, FlightBuild::Concrete { waist: mm(10.0), bed: mm(0.0) }).is_err());
}

/// A job with a curve of every kind, mirrored and turned.
fn all(lie: impl Fn(f64, f64) -> Point, flip: bool) -> (Tin, Wish) {
    let way = |x: f64, y: f64| lie(x, y) - lie(0.0, 0.0);
    let side = |left: bool| if left != flip { Side::Left } else { Side::Right };
    let outline =
        Polygon::new([(-30.0, -30.0), (30.0, -30.0), (30.0, 30.0), (-30.0, 30.0)].map(|(x, y)| lie(x, y)).to_vec());
    let ground = Tin::from_plane(
        Plane::rising(lie(0.0, 0.0), z(100.0), way(0.0, 1.0), Slope::ratio(0.2)),
        &outline.expect("a square"),
    );
    let mut w = wish();
    let mut terrace = pad("P1", 0.0, 0.0, 1.0, 1.0, 100.1);
    terrace.corners = vec![lie(-4.0, -2.0), lie(4.0, -2.0), lie(4.0, 2.0), lie(-4.0, 2.0)];
    terrace.fall = Some((Slope::one_in(80.0), way(0.0, -1.0)));
    terrace.apron = m(0.4);
    w.pads.push(terrace);
    let round = |at| Bend { at, way: Way::Straight, round: m(0.8), ease: m(0.0) };
    let mut upper = wall("W1", &[]);
    upper.line = vec![lie(-4.5, 0.8), lie(-4.5, 2.5), lie(4.5, 2.5), lie(4.5, 0.8)];
    upper.bends = vec![round(1), round(2)];
    (upper.start, upper.end, upper.retains) = (End::Fade, End::Fade, side(true));
    w.walls.push(upper);
    w.ramps.push(RampWish {
        id: "R1".into(),
        path: vec![lie(9.0, -7.0), lie(9.0, -0.6), lie(4.4, -0.6)],
        bends: vec![Bend { at: 1, way: Way::Straight, round: m(2.0), ease: m(0.0) }],
        toward: "P1".into(),
        width: m(1.0),
        steepest: Slope::one_in(6.0),
        crossfall: Some((Slope::one_in(40.0), side(true))),
        landings: Some(Landings { every: m(0.5), length: m(1.0) }),
        ..RampWish::default()
    });
    (ground, w)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_mirrored_or_turned_job_moves_the_same_ground(turn in -3.0..3.0f64, flip in any::<bool>(), dx in -90.0..90.0f64) {
        let (here_ground, here) = all(p, false);
        let here = shape(&here_ground, &here);
        whole(&here, &here_ground);
        let (s, c) = (math::sin(turn), math::cos(turn));
        let lie = |x: f64, y: f64| {
            let x = if flip { -x } else { x };
            p(x * c - y * s + dx, x * s + y * c)
        };
        let (ground, w) = all(lie, flip);
        let there = shape(&ground, &w);
        whole(&there, &ground);
        let (a, b) = (cut_and_fill(&here_ground, &here.facets()), cut_and_fill(&ground, &there.facets()));
        // Fans and triangles are cut from the other hand in a mirror; rounding and slivers remain.
        prop_assert!((a.cut - b.cut).to_m3().abs() < 1e-4, "{a:?} {b:?}");
        prop_assert!((a.fill - b.fill).to_m3().abs() < 1e-4, "{a:?} {b:?}");
        prop_assert_eq!(here.walls.len(), there.walls.len());
        prop_assert!((here.walls[0].length - there.walls[0].length).abs() < Length::mm(0.1));
        prop_assert!((here.walls[0].retained_most() - there.walls[0].retained_most()).abs() < Length::mm(0.1));
    }
}
