//! Does a pad with its walls, batters, steps and ramp come out of a plane slope as by hand?

use groundhold_finding::Severity;
use groundhold_quantity::{Angle, Length, Level, Point, Slope, Units, Vector};
use groundhold_shape::{
    Batter, End, EndFound, FlightWish, GroundKind, GuardTrigger, Limits, PadWish, RampLimits, RampWish, Shaped, Side,
    StepLimits, Top, WallWish, Wish, shape,
};
use groundhold_surface::{Plane, Polygon, Tin, clip_convex, cut_and_fill};

fn p(x: f64, y: f64) -> Point {
    Point::m(x, y)
}
fn m(v: f64) -> Length {
    Length::m(v)
}

/// Ground that rises 1:6 to the north through level 100 m at y = 0, over 40 m × 40 m about the origin.
fn slope() -> Tin {
    plane(1.0 / 6.0)
}
fn plane(rise: f64) -> Tin {
    let outline = Polygon::new(vec![p(-20.0, -20.0), p(20.0, -20.0), p(20.0, 20.0), p(-20.0, 20.0)]).expect("a square");
    Tin::from_plane(Plane::rising(p(0.0, 0.0), Level::m(100.0), Vector::m(0.0, 1.0), Slope::ratio(rise)), &outline)
}
fn limits() -> Limits {
    Limits {
        steps: StepLimits {
            riser: (Length::mm(100.0), Length::mm(220.0)),
            going: (Length::mm(220.0), Length::mm(450.0)),
            two_r_plus_g: (Length::mm(550.0), Length::mm(700.0)),
            pitch_most: Angle::deg(42.0),
            source: "invented limits",
        },
        ramp: RampLimits { steepest: Slope::one_in(8.0), source: "invented limits" },
        guard: Some(GuardTrigger { drop: m(0.7), source: "invented trigger" }),
    }
}
fn wish() -> Wish {
    Wish {
        pads: vec![],
        walls: vec![],
        flights: vec![],
        ramps: vec![],
        batter: Batter::default(),
        limits: limits(),
        units: Units::Metric,
    }
}
/// A level pad at 100 m, 6 m × 4 m about the origin, with an apron.
fn pad(apron: f64) -> PadWish {
    PadWish {
        id: "P1".into(),
        corners: vec![p(-3.0, -2.0), p(3.0, -2.0), p(3.0, 2.0), p(-3.0, 2.0)],
        level: Level::m(100.0),
        fall: None,
        apron: m(apron),
        ..PadWish::default()
    }
}
fn wall(id: &str, line: &[(f64, f64)], fades: bool) -> WallWish {
    let end = if fades { End::Fade } else { End::At };
    WallWish {
        id: id.into(),
        line: line.iter().map(|(x, y)| p(*x, *y)).collect(),
        start: end,
        end,
        retains: Side::Left,
        thickness: m(0.1),
        top: Top::FollowGround { above: m(0.05) },
        ..WallWish::default()
    }
}
/// The pad with a wall about its upper half and one about its lower half, on the edge of the apron, as the demo has them.
fn terrace() -> Wish {
    Wish {
        pads: vec![pad(0.5)],
        walls: vec![
            wall("W1", &[(-3.5, 1.0), (-3.5, 2.6), (3.5, 2.6), (3.5, 1.0)], true),
            wall("W2", &[(-3.5, -1.0), (-3.5, -2.5), (3.5, -2.5), (3.5, -1.0)], true),
        ],
        ..wish()
    }
}
fn codes(s: &Shaped) -> Vec<&'static str> {
    s.findings.iter().map(|f| f.kind.code).collect()
}
fn near(a: f64, b: f64, by: f64) {
    assert!((a - b).abs() <= by, "{a} is not {b} within {by}");
}
/// No two pieces overlap.
fn disjoint(s: &Shaped) {
    for (i, a) in s.grounds.iter().enumerate() {
        for b in &s.grounds[..i] {
            let both = clip_convex(&a.facet.ring, &b.facet.ring);
            let area = Polygon::new(both.clone()).map_or(0.0, |q| q.area().to_m2());
            assert!(area < 1e-6, "{} {:?} and {} {:?} share {area}: {both:?}", a.of, a.kind, b.of, b.kind);
        }
    }
}
fn area_of(s: &Shaped, of: &str, kind: GroundKind) -> f64 {
    s.grounds.iter().filter(|g| g.of == of && g.kind == kind).map(|g| g.facet.area().to_m2()).sum()
}

#[test]
fn walls_about_a_pad_retain_what_the_slope_says_and_fade_where_ground_and_pad_meet() {
    let s = shape(&slope(), &terrace());
    disjoint(&s);
    let w1 = &s.walls[0];
    // Behind W1 the ground at y = 2.6 + 0.05 + 0.001, in front the pad.
    near(w1.retained_most().to_m(), 2.651 / 6.0, 1e-9);
    // Its legs stand along the fall; they end at y = 0, where the ground is at the pad's level.
    for (k, x) in [(0, -3.5), (1, 3.5)] {
        let EndFound::Faded { at, .. } = w1.ends[k] else { panic!("{:?}", w1.ends[k]) };
        near(at.x, x, 1e-9);
        near(at.y, 0.0, 1e-4);
    }
    let w2 = &s.walls[1];
    near(w2.retained_most().to_m(), 2.551 / 6.0, 1e-9);
    for end in w2.ends {
        let EndFound::Faded { at, .. } = end else { panic!("{end:?}") };
        near(at.y, 0.0, 1e-4);
    }
    // 2·(2.6 − 0) + 7.0 and 2·2.5 + 7.0.
    near(w1.length.to_m(), 12.2, 1e-3);
    near(w2.length.to_m(), 12.0, 1e-3);
    assert!(s.walls.iter().all(|w| w.stations.iter().all(|s| s.retained.to_m() > -1e-6)));
    // Walls hold everything: no batter is left, and nothing is to be said.
    assert_eq!(s.grounds.iter().filter(|g| g.kind == GroundKind::Batter).count(), 0);
    assert_eq!(codes(&s), [] as [&str; 0], "{:#?}", s.findings);
}

#[test]
fn a_pad_between_walls_moves_the_wedges_of_the_hand_calculation() {
    let s = shape(&slope(), &terrace());
    let v = cut_and_fill(&slope(), &s.facets());
    // Cut: 7 m wide, from y = 0 to 2.6, wedge 1:6; fill: from y = 0 to −2.5.
    near(v.cut.to_m3(), 7.0 * 2.6 * 2.6 / 12.0, 1e-6);
    near(v.fill.to_m3(), 7.0 * 2.5 * 2.5 / 12.0, 1e-6);
    near(area_of(&s, "P1", GroundKind::Pad), 7.0 * 5.1, 1e-5);
}

#[test]
fn stations_stand_at_corners_and_no_more_than_a_quarter_metre_apart() {
    for w in shape(&slope(), &terrace()).walls {
        for c in w.corners() {
            assert!(w.stations.iter().any(|s| (s.chainage - c).to_m().abs() < 1e-6), "{c:?}");
        }
        for pair in w.stations.windows(2) {
            let step = (pair[1].chainage - pair[0].chainage).to_m();
            assert!(0.0 < step && step <= 0.25 + 1e-9, "{step}");
        }
        near(w.stations[w.stations.len() - 1].chainage.to_m(), w.length.to_m(), 1e-9);
    }
}

#[test]
fn the_slope_behind_the_upper_wall_is_that_of_the_ground_and_the_top_stands_above_it() {
    let s = shape(&slope(), &terrace());
    let high = s.walls[0].highest().unwrap();
    near(high.slope_behind.to_ratio(), 1.0 / 6.0, 1e-9);
    near(high.slope_front.to_ratio(), 0.0, 1e-9);
    near((high.wanted_top - high.behind).to_m(), 0.05, 1e-12);
    near(high.exposed().to_m(), high.retained.to_m() + 0.05, 1e-12);
    let low = s.walls[1].highest().unwrap();
    near(low.slope_behind.to_ratio(), 0.0, 1e-9);
    near(low.slope_front.to_ratio(), 1.0 / 6.0, 1e-9);
    // At a corner it faces half way between the two stretches, elsewhere square to its line.
    let middle = s.walls[0].stations.iter().find(|s| s.at.x.abs() < 0.2 && s.at.y > 2.0).unwrap();
    near((middle.facing - Vector::m(0.0, -1.0)).length(), 0.0, 1e-9);
    near(middle.slope_behind.to_ratio(), 1.0 / 6.0, 1e-9);
}

#[test]
fn a_pad_without_walls_runs_out_in_batters_of_the_wished_slope() {
    let s = shape(&slope(), &Wish { pads: vec![pad(0.0)], ..wish() });
    disjoint(&s);
    assert_eq!(codes(&s), [] as [&str; 0], "{:#?}", s.findings);
    // Straight up from the middle of the upper edge: ground 100 + y/6 meets 100 + (y − 2)/2 at y = 3.
    for (x, y, level) in
        [(0.0, 2.5, 100.25), (0.0, 3.1, 100.0 + 3.1 / 6.0), (0.0, -2.4, 99.8), (0.0, -3.1, 100.0 - 3.1 / 6.0)]
    {
        near(s.level_at(&slope(), p(x, y)).unwrap().to_m(), level, 1e-9);
    }
    assert_eq!(s.ground_at(p(0.0, 2.5)).unwrap().kind, GroundKind::Batter);
    assert!(s.ground_at(p(0.0, 3.01)).is_none());
    // Mirror images: as much fill as cut, east as west.
    let v = cut_and_fill(&slope(), &s.facets());
    near(v.cut.to_m3(), v.fill.to_m3(), 1e-9);
    assert!(v.cut.to_m3() > 6.0 * 2.0 * 2.0 / 12.0);
    for g in s.grounds.iter().filter(|g| g.kind == GroundKind::Batter) {
        let steep = g.facet.plane.slope().to_ratio();
        assert!((0.5 - 1e-9..0.5 * 1.03).contains(&steep), "{steep}");
    }
}

#[test]
fn a_batter_never_passes_a_wall() {
    // A wall beside the pad, 1 m off its upper edge: the batter stops there, and beyond it the ground stays.
    let w = Wish { pads: vec![pad(0.0)], walls: vec![wall("W1", &[(-1.0, 2.7), (1.0, 2.7)], false)], ..wish() };
    let s = shape(&slope(), &w);
    disjoint(&s);
    for g in &s.grounds {
        let beyond = [p(-1.0, 2.7), p(1.0, 2.7), p(1.0, 9.0), p(-1.0, 9.0)];
        let both = clip_convex(&g.facet.ring, &beyond);
        let area = Polygon::new(both).map_or(0.0, |q| q.area().to_m2());
        assert!(area < 1e-5, "{} {:?}: {area}", g.of, g.kind);
    }
    // Before it the batter has risen by 0.35 at y = 2.7 − 0.05: (0.65 − 0.001)/2 above the pad.
    let mid = s.walls[0].stations.iter().find(|s| (s.chainage.to_m() - 1.0).abs() < 1e-6).unwrap();
    near(mid.front.to_m(), 100.0 + (0.65 - 0.001) / 2.0, 1e-9);
    near(mid.behind.to_m(), 100.0 + 2.751 / 6.0, 1e-9);
}

#[test]
fn straight_walls_fade_where_the_batter_comes_to_daylight() {
    let w = Wish {
        pads: vec![pad(0.5)],
        walls: vec![wall("W1", &[(-3.0, 2.6), (3.0, 2.6)], true), wall("W2", &[(-3.0, -2.6), (3.0, -2.6)], true)],
        ..wish()
    };
    let s = shape(&slope(), &w);
    disjoint(&s);
    assert_eq!(codes(&s), [] as [&str; 0], "{:#?}", s.findings);
    // Beyond the corner (3.5, 2.5) a fan rises about 1:2; along y = 2.549 in front of the wall it meets the ground
    // (100.4248) about 0.85 m from the corner.
    for (w, sign) in s.walls.iter().zip([1.0, -1.0]) {
        for (end, side) in w.ends.iter().zip([-1.0, 1.0]) {
            let EndFound::Faded { at, .. } = end else { panic!("{end:?}") };
            near(at.y, 2.6 * sign, 1e-9);
            let beyond = side * at.x - 3.5;
            assert!((0.78..0.90).contains(&beyond), "{beyond}");
        }
        assert!(w.stations.iter().all(|s| s.retained.to_m() > 0.0));
        // At its ends it holds no more than the natural fall across its thickness.
        near(w.stations[0].retained.to_m(), 0.102 / 6.0, 1e-5);
    }
}

#[test]
fn a_wall_that_the_ground_meets_early_is_cut_short_and_one_on_the_wrong_side_retains_nothing() {
    let long = Wish { pads: vec![pad(0.0)], walls: vec![wall("W1", &[(3.0, 2.0), (3.0, -1.5)], true)], ..wish() };
    // Retains left of a line that runs south: the east. The ground meets the pad at y = 0.
    let s = shape(&slope(), &long);
    let EndFound::Faded { at, chainage } = s.walls[0].ends[1] else { panic!() };
    near(at.y, 0.0, 1e-4);
    near(chainage.to_m(), 2.0, 1e-4);
    assert!(codes(&s).contains(&"G-012"));
    let mut other = long.clone();
    other.walls[0].retains = Side::Right;
    other.walls[0].line = vec![p(3.0, 2.0), p(3.0, 0.5)];
    other.walls[0].end = End::At;
    other.walls[0].start = End::At;
    let s = shape(&slope(), &other);
    let f = s.findings.iter().find(|f| f.kind.code == "G-010").unwrap();
    assert!(f.says.contains("is the other side meant"), "{}", f.says);
}

#[test]
fn a_flight_comes_down_to_the_ground_with_equal_risers() {
    let mut w = terrace();
    w.flights.push(FlightWish {
        id: "S1".into(),
        bottom: p(0.3, -4.0),
        toward: "P1".into(),
        width: m(0.9),
        going: None,
        ..FlightWish::default()
    });
    let s = shape(&slope(), &w);
    disjoint(&s);
    let f = &s.flights[0];
    // It starts at the face of W2.
    near(f.top.y, -2.55, 1e-9);
    near((f.riser * f.risers as f64).to_m(), f.rise.to_m(), 1e-12);
    near((f.top_level - f.rise).to_m(), slope().level_at(f.foot + f.outward * 0.002).unwrap().to_m(), 1e-3);
    near(f.run.to_m(), f.going.to_m() * (f.risers - 1) as f64, 1e-9);
    assert_eq!((f.treads.len(), f.nosings.len()), (f.risers - 1, f.risers));
    near((f.nosings[f.risers - 1].1 - f.foot_level).to_m(), f.riser.to_m(), 1e-9);
    near(f.two_r_plus_g.to_mm(), 630.0, 5.0);
    // The wall goes on behind the steps; before it stands the first tread, one riser below the pad.
    let behind = s.walls[1].stations.iter().find(|s| (s.at.x - f.top.x).abs() < 0.2 && s.at.y < -2.4).unwrap();
    near(behind.retained.to_m(), f.riser.to_m(), 1e-9);
    assert!(s.walls[1].openings.is_empty());
    assert_eq!(codes(&s), [] as [&str; 0], "{:#?}", s.findings);
}

#[test]
fn a_flight_on_ground_gentler_than_steps_is_split_with_landings() {
    // 14° of ground, the pad's edge at its level: case T12.
    let ground = plane(groundhold_quantity::math::tan(14f64.to_radians()));
    let mut w = wish();
    let edge = -2.0;
    let level = 100.0 + edge * groundhold_quantity::math::tan(14f64.to_radians());
    w.pads.push(PadWish { level: Level::m(level), ..pad(0.0) });
    w.batter = Batter { cut: Slope::ratio(1.0), fill: Slope::ratio(1.0), bench: None };
    w.limits.steps = StepLimits::OUTDOOR_COMFORT;
    let run = 2.0 / groundhold_quantity::math::tan(14f64.to_radians());
    w.flights.push(FlightWish {
        id: "S1".into(),
        bottom: p(0.0, edge - run),
        toward: "P1".into(),
        width: m(1.0),
        going: Some(Length::mm(330.0)),
        ..FlightWish::default()
    });
    let s = shape(&ground, &w);
    let f = &s.flights[0];
    near(f.rise.to_m(), 2.0, 1e-6);
    near(f.run.to_m(), run, 1e-9);
    assert_eq!((f.risers, f.landings.len()), (13, 2));
    near(f.riser.to_mm(), 153.846, 1e-3);
    assert!(codes(&s).contains(&"G-033"));
    assert!(s.findings.iter().all(|f| f.severity < Severity::Stop), "{:#?}", s.findings);
}

#[test]
fn a_ramp_climbs_evenly_and_says_when_it_is_too_steep() {
    let mut w = terrace();
    // Along the contour at y = −0.6 (ground 99.9) to the east edge, where both walls have faded: 0.1 m over 6.5 m.
    w.ramps.push(RampWish {
        id: "R1".into(),
        path: vec![p(10.0, -0.6), p(3.5, -0.6)],
        toward: "P1".into(),
        width: m(1.0),
        steepest: Slope::one_in(12.0),
        ..RampWish::default()
    });
    let s = shape(&slope(), &w);
    disjoint(&s);
    let r = &s.ramps[0];
    near(r.rise.to_m(), 0.1, 1e-9);
    near(r.run.to_m(), 6.5, 1e-6);
    near(s.level_at(&slope(), p(6.75, -0.6)).unwrap().to_m(), 99.95, 1e-6);
    assert!(!codes(&s).contains(&"G-020"), "{:#?}", s.findings);
    w.ramps[0].path = vec![p(9.5, -6.5), p(9.5, -0.6), p(3.5, -0.6)];
    w.ramps[0].steepest = Slope::one_in(20.0);
    let s = shape(&slope(), &w);
    disjoint(&s);
    let r = &s.ramps[0];
    // 6.5 m down the slope: 1.0833 m over 11.9 − 1.0 m.
    near(r.rise.to_m(), 6.5 / 6.0, 1e-9);
    near(r.run.to_m(), 5.9 + 6.0 - 1.0, 1e-6);
    let f = s.findings.iter().find(|f| f.kind.code == "G-020").unwrap();
    assert!(f.says.contains("1:10.1"), "{}", f.says);
    assert!(f.remedies[0].says.contains("10.77 m longer"), "{}", f.remedies[0].says);
    assert!(codes(&s).contains(&"G-022"));
    assert!(!codes(&s).contains(&"G-021"));
}

#[test]
fn a_ramp_through_a_wall_leaves_an_opening_and_the_wall_goes_on_beyond() {
    let mut w = terrace();
    w.ramps.push(RampWish {
        id: "R1".into(),
        path: vec![p(0.0, -15.0), p(0.0, -2.5)],
        toward: "P1".into(),
        width: m(1.2),
        steepest: Slope::one_in(4.0),
        ..RampWish::default()
    });
    let s = shape(&slope(), &w);
    disjoint(&s);
    let w2 = &s.walls[1];
    near(w2.length.to_m(), 12.0, 1e-3);
    let [(a, b)] = w2.openings[..] else { panic!("{:?}", w2.openings) };
    near((b - a).to_m(), 1.2, 1e-6);
    near(((a + b) / 2.0).to_m(), 6.0, 1e-3);
}

#[test]
fn a_pad_outside_the_survey_is_a_stop_that_says_where() {
    let mut w = wish();
    w.pads.push(pad(0.5));
    w.pads[0].corners.iter_mut().for_each(|c| c.x += 18.0);
    let s = shape(&slope(), &w);
    let f = s.findings.iter().find(|f| f.kind.code == "G-001").unwrap();
    assert_eq!(f.severity, Severity::Stop);
    assert!(f.says.contains("x 21.50 m"), "{}", f.says);
    assert_eq!(s.pads.len(), 1);
    w.pads[0].corners.iter_mut().for_each(|c| c.x += 100.0);
    let s = shape(&slope(), &w);
    assert!(s.pads.is_empty() && s.grounds.is_empty());
    assert_eq!(codes(&s), ["G-001"]);
}

#[test]
fn high_batters_and_drops_are_said() {
    let mut w = wish();
    // 5 m below the ground at its upper edge: at 1:2 on 1:6 it needs 15 m.
    w.pads.push(PadWish { level: Level::m(95.3), ..pad(0.0) });
    let s = shape(&slope(), &w);
    disjoint(&s);
    assert!(codes(&s).contains(&"G-004"), "{:?}", codes(&s));
    let mut w = terrace();
    w.limits.guard = Some(GuardTrigger { drop: m(0.4), source: "invented trigger" });
    let s = shape(&slope(), &w);
    let at: Vec<&str> =
        s.findings.iter().filter(|f| f.kind.code == "G-040").map(|f| f.place.element.as_str()).collect();
    assert_eq!(at, ["W1", "W2"]);
}

#[test]
fn nonsense_gives_findings_and_no_panic() {
    let mut w = terrace();
    w.pads[0].corners[0] = p(f64::NAN, 0.0);
    w.pads.push(PadWish {
        id: "P2".into(),
        corners: vec![p(0.0, 0.0), p(2.0, 2.0), p(2.0, 0.0), p(0.0, 2.0)],
        ..pad(0.0)
    });
    w.pads.push(PadWish { id: "P3".into(), apron: m(-1.0), ..pad(0.0) });
    w.walls.push(WallWish { thickness: m(0.0), ..wall("W3", &[(0.0, 0.0), (1.0, 0.0)], true) });
    w.walls.push(wall("W4", &[(0.0, 0.0)], true));
    w.walls.push(wall("W5", &[(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.5, -1.0)], true));
    w.walls.push(WallWish {
        top: Top::Above { pad: "P9".into(), by: m(0.0) },
        ..wall("W6", &[(0.0, 0.0), (1.0, 0.0)], true)
    });
    w.walls.push(wall("W7", &[(100.0, 0.0), (101.0, 0.0)], false));
    w.flights.push(FlightWish {
        id: "S1".into(),
        bottom: p(0.0, -5.0),
        toward: "P9".into(),
        width: m(1.0),
        going: None,
        ..FlightWish::default()
    });
    w.ramps.push(RampWish {
        id: "R1".into(),
        path: vec![p(0.0, 0.0)],
        toward: "P1".into(),
        width: m(1.0),
        steepest: Slope::one_in(8.0),
        ..RampWish::default()
    });
    w.batter = Batter { cut: Slope::ratio(0.0), fill: Slope::ratio(f64::NAN), bench: None };
    let s = shape(&slope(), &w);
    let stops: Vec<String> =
        s.findings.iter().filter(|f| f.severity == Severity::Stop).map(|f| f.place.element.clone()).collect();
    for id in ["P1", "P2", "P3", "W3", "W4", "W6", "W7", "S1", "R1"] {
        assert!(stops.contains(&id.to_string()), "{id}: {stops:?}");
    }
}

#[test]
fn numbers_beyond_any_site_are_refused_and_not_walked_along() {
    let far = [1e5, 1e9, 1e200, 1e308];
    for x in far {
        let mut w = terrace();
        w.pads[0].corners[0] = p(-x, -x);
        w.walls[0].line[0] = p(-x, x);
        w.ramps.push(RampWish {
            id: "R1".into(),
            path: vec![p(x, -x), p(3.5, 0.0)],
            toward: "P1".into(),
            width: m(1.0),
            steepest: Slope::one_in(8.0),
            ..RampWish::default()
        });
        w.flights.push(FlightWish {
            id: "S1".into(),
            bottom: p(0.0, -x),
            toward: "P1".into(),
            width: m(1.0),
            going: None,
            ..FlightWish::default()
        });
        let s = shape(&slope(), &w);
        let stops: Vec<&str> =
            s.findings.iter().filter(|f| f.severity == Severity::Stop).map(|f| f.place.element.as_str()).collect();
        for id in ["P1", "W1", "R1"] {
            assert!(stops.contains(&id), "{x}: {id} {stops:?}");
        }
        w.pads[0] = pad(0.5);
        w.walls.truncate(0);
        shape(&slope(), &w);
    }
}
