//! Does water on plain slopes go where a person would say, and does the pipe take it away?

use groundhold_drain::{
    Bed, DRAIN_FILLS, DrainCase, Outlet, PipeWish, Rain, Station, WallLine, ZoneWish, catchments, drain, drain_fill,
    runoff, soil_grading,
};
use groundhold_quantity::{Angle, Area, Flow, Length, Level, Point, RainIntensity, Slope, Vector, math};
use groundhold_surface::{GroundPoint, Plane, Polygon, Tin};
use proptest::prelude::*;

/// A slope of 1:5 rising to the north over 20 × 20 m; level 100 at y = 0.
fn hill() -> Tin {
    let corners = [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)].map(|(x, y)| Point::m(x, y));
    let plane = Plane { a: 0.0, b: 0.2, c: 100.0 };
    Tin::from_plane(plane, &Polygon::new(corners.to_vec()).expect("a square is simple"))
}

/// A wall along y = 10 from x = 6 to 12 that holds the ground to the north, `retained` high in its middle part.
fn wall(base: f64) -> WallLine {
    let station = |x: f64| Station {
        chainage: Length::m(x - 6.0),
        at: Point::m(x, 10.0),
        behind: Level::m(102.0),
        front: Level::m(101.2),
        base: Level::m(base),
        facing: Vector::m(0.0, -1.0),
    };
    WallLine { id: "W1".into(), stations: [6.0, 8.0, 10.0, 12.0].map(station).to_vec() }
}

fn case(ground: &Tin) -> DrainCase<'_> {
    DrainCase {
        ground,
        walls: vec![wall(101.15)],
        wanted: true,
        rain: Some(Rain::steady(RainIntensity::mm_per_h(60.0), "invented")),
        runoff: *runoff("lawn heavy steep").expect("the table has lawn"),
        uphill: Some(Length::ZERO),
        groundwater: None,
        outlets: vec![Outlet { at: Point::m(14.0, 4.0), level: Level::m(100.8) }],
        soakaway: None,
        swales: vec![],
        weeps: None,
        footings: vec![],
        pipe: PipeWish::default(),
        bed: Bed::default(),
        zone: ZoneWish::default(),
        soil: soil_grading("firm silty clay").copied(),
        stone: *drain_fill("10-20").expect("the table has 10-20 mm"),
        units: groundhold_quantity::Units::Metric,
    }
}

fn codes(case: &DrainCase) -> Vec<&'static str> {
    drain(case).findings.iter().map(|f| f.kind.code).collect()
}

#[test]
fn on_a_plain_slope_the_strip_above_the_wall_drains_to_it() {
    let ground = hill();
    let found = catchments(&ground, &[wall(101.15)], Some(Length::m(5.0)));
    assert!((found[0].surveyed.to_m2() - 60.0).abs() < 1.0, "{found:?}");
    assert!((found[0].cut_edge.to_m() - 6.0).abs() < 0.3, "{found:?}");
    assert!((found[0].beyond.to_m2() - 5.0 * found[0].cut_edge.to_m()).abs() < 1e-9);
}

#[test]
fn a_wall_above_takes_the_water_of_the_wall_below() {
    let ground = hill();
    let mut upper = wall(101.15);
    upper.id = "W2".into();
    for s in &mut upper.stations {
        s.at.y = 15.0;
    }
    let found = catchments(&ground, &[wall(101.15), upper], None);
    assert!((found[0].surveyed.to_m2() - 30.0).abs() < 1.0, "{found:?}");
    assert!((found[1].surveyed.to_m2() - 30.0).abs() < 1.0, "{found:?}");
    assert!(found[0].cut_edge < Length::mm(200.0));
}

#[test]
fn a_wall_that_faces_uphill_gets_no_water_from_behind() {
    let ground = hill();
    let mut turned = wall(101.15);
    for s in &mut turned.stations {
        s.facing = Vector::m(0.0, 1.0);
    }
    assert_eq!(catchments(&ground, &[turned], None)[0].surveyed, Area::ZERO);
}

#[test]
fn water_in_a_valley_runs_along_its_bottom_to_the_wall() {
    let at = |id: &str, x: f64, y: f64, z: f64| GroundPoint { id: id.into(), at: Point::m(x, y), level: Level::m(z) };
    let points = [
        at("a", -5.0, 0.0, 11.0),
        at("b", 0.0, 0.0, 10.0),
        at("c", 5.0, 0.0, 11.0),
        at("d", 5.0, 10.0, 13.0),
        at("e", 0.0, 10.0, 12.0),
        at("f", -5.0, 10.0, 13.0),
    ];
    let ground = Tin::build(&points, &[vec![1, 4]], None).unwrap();
    let station = |x: f64| Station {
        chainage: Length::m(x + 0.5),
        at: Point::m(x, 1.0),
        behind: Level::m(10.4),
        front: Level::m(10.0),
        base: Level::m(9.9),
        facing: Vector::m(0.0, -1.0),
    };
    let dam = WallLine { id: "W1".into(), stations: vec![station(-0.5), station(0.5)] };
    let found = catchments(&ground, &[dam], None)[0].surveyed.to_m2();
    // Both sides fall at 1:5 across and along, so water runs at 45° to the bottom: on each side all with x ≤ y − 0.5 above
    // y = 1, ∫ min(5, y − 0.5) dy from 1 to 10 = 12.375 + 22.5.
    assert!((found - 2.0 * 34.875).abs() < 0.5, "{found}");
}

#[test]
fn the_flow_is_the_rational_one() {
    let ground = hill();
    let out = drain(&case(&ground));
    let w = &out.walls[0];
    let by_hand = 0.35 * 60.0 * w.catchment.area().to_m2() / 3600.0;
    assert!((w.flow.unwrap().to_l_per_s() - by_hand).abs() < 1e-12);
    assert!(w.flow_trace.as_ref().unwrap().sheet().is_ok());
}

#[test]
fn the_pipe_starts_at_the_base_falls_to_the_near_end_and_reaches_the_outlet() {
    let ground = hill();
    let out = drain(&case(&ground));
    let pipe = &out.pipes[0];
    assert_eq!(pipe.points[0].at, Point::m(6.0, 10.0));
    assert!((pipe.points[0].invert.to_m() - 101.15).abs() < 1e-9);
    assert!((pipe.points[1].invert.to_m() - 101.09).abs() < 1e-9);
    assert_eq!(pipe.points[2].invert, Level::m(100.8));
    assert!((pipe.fall.to_ratio() - 0.01).abs() < 1e-9);
    assert!(pipe.utilisation.unwrap() < 1.0);
    assert!(pipe.diameter == Length::mm(65.0), "{:?}", pipe.diameter);
    assert!(!out.findings.iter().any(|f| f.kind.code == "W-004"), "{:?}", out.findings);
    for t in &pipe.traces {
        t.sheet().unwrap();
    }
}

#[test]
fn an_outlet_too_high_says_by_how_much_and_the_level_it_names_mends_it() {
    let ground = hill();
    let mut c = case(&ground);
    c.outlets = vec![Outlet { at: Point::m(14.0, 4.0), level: Level::m(101.2) }];
    let out = drain(&c);
    let found = out.findings.iter().find(|f| f.kind.code == "W-004").unwrap();
    let wanted = &found.remedies[0].change[0];
    assert_eq!((wanted.element.as_str(), wanted.field.as_str()), ("drain", "outlet.level"));
    let level: Level = groundhold_quantity::parse(&wanted.value).unwrap();
    c.outlets = vec![Outlet { at: Point::m(14.0, 4.0), level }];
    assert!(!codes(&c).contains(&"W-004"), "{wanted:?}");
    c.outlets = vec![Outlet { at: Point::m(14.0, 4.0), level: level + Length::mm(11.0) }];
    assert!(codes(&c).contains(&"W-004"), "{wanted:?}");
}

#[test]
fn between_wished_and_least_fall_the_pipe_is_laid_flatter_and_says_so() {
    let ground = hill();
    let mut c = case(&ground);
    let leg = math::hypot(2.0, 6.0);
    let run = 6.0 + leg;
    c.outlets = vec![Outlet { at: Point::m(14.0, 4.0), level: Level::m(101.15 - run / 120.0) }];
    let out = drain(&c);
    let pipe = &out.pipes[0];
    assert!((pipe.fall.to_one_in() - 120.0).abs() < 0.01, "{}", pipe.fall.to_one_in());
    assert!(out.findings.iter().any(|f| f.kind.code == "W-003"));
    assert!(!out.findings.iter().any(|f| f.kind.code == "W-004"));
}

#[test]
fn stone_cap_and_fabric_of_an_even_wall_are_what_one_reckons_by_hand() {
    let ground = hill();
    let mut c = case(&ground);
    c.bed.under = Length::ZERO;
    c.pipe.fall = Slope::ratio(1e-4);
    c.pipe.fall_least = Slope::ratio(1e-4);
    c.outlets = vec![];
    c.pipe.diameter = Some(Length::mm(100.0));
    let out = drain(&c);
    let zone = out.walls[0].zone.as_ref().unwrap();
    // 300 mm wide (0.8 m retained), 6 m long, 102.00 − 0.15 − 101.15 = 0.70 m of stone, less half the pipe's fall of 0.6 mm.
    let stone = 0.3 * 6.0 * (0.70 + 0.0003) - std::f64::consts::PI * 0.05 * 0.05 * 6.0;
    assert!((zone.stone.to_m3() - stone).abs() < 1e-9, "{} {stone}", zone.stone.to_m3());
    assert!((zone.cap.to_m3() - 0.3 * 6.0 * 0.15).abs() < 1e-9);
    let fabric = 6.0 * (0.7003 + 0.6 + 0.3) + 3.0 * 0.3 * (0.7003 + 0.9);
    assert!((zone.fabric.to_m2() - fabric).abs() < 2e-3, "{} {fabric}", zone.fabric.to_m2());
    // Existing ground 0.15 m behind the face lies at 102.03, above the finished 102.00: all of it is dug.
    assert!((zone.in_ground.to_m3() - 0.3 * 6.0 * 0.8503).abs() < 1e-9);
    assert_eq!(zone.in_fill.to_m3(), 0.0);
}

#[test]
fn a_wall_under_600_mm_gets_a_200_mm_zone_and_at_600_a_300_mm_one() {
    let ground = hill();
    let mut c = case(&ground);
    for (retained, width) in [(0.599, 200.0), (0.6, 300.0)] {
        for s in &mut c.walls[0].stations {
            s.front = s.behind - Length::m(retained);
        }
        assert_eq!(drain(&c).walls[0].zone.as_ref().unwrap().width, Length::mm(width));
    }
}

#[test]
fn clay_needs_fabric_against_coarse_stone_and_coarse_sand_needs_less() {
    let ground = hill();
    let mut c = case(&ground);
    assert!(codes(&c).contains(&"W-006"));
    c.soil = soil_grading("gravel").copied();
    let m = drain(&c).walls[0].filter.clone().unwrap();
    assert!(m.keeps_back == (m.stone_d15 <= m.d15_most));
    c.soil = None;
    assert!(codes(&c).contains(&"W-014"));
}

#[test]
fn a_pipe_too_small_names_one_that_does() {
    let ground = hill();
    let mut c = case(&ground);
    c.rain = Some(Rain::steady(RainIntensity::mm_per_h(400.0), "invented"));
    c.uphill = Some(Length::m(40.0));
    c.pipe.diameter = Some(Length::mm(65.0));
    let out = drain(&c);
    let found = out.findings.iter().find(|f| f.kind.code == "W-005").unwrap();
    assert!(found.utilisation.unwrap() > 1.0);
    c.pipe.diameter = None;
    assert!(!codes(&c).contains(&"W-005"), "{}", found.says);
    c.uphill = Some(Length::m(400.0));
    assert!(codes(&c).contains(&"W-005"));
}

#[test]
fn what_is_missing_or_left_out_is_said() {
    let ground = hill();
    let mut c = case(&ground);
    (c.rain, c.outlets, c.uphill) = (None, vec![], None);
    c.groundwater = Some(Length::mm(400.0));
    let said = codes(&c);
    for code in ["W-001", "W-002", "W-009", "W-015"] {
        assert!(said.contains(&code), "{code} is missing in {said:?}");
    }
    c.wanted = false;
    let out = drain(&c);
    assert!(out.pipes.is_empty() && out.walls[0].zone.is_none());
    assert!(out.findings.iter().any(|f| f.kind.code == "W-008"));
    assert_eq!(out.walls[0].blocked_level(Length::m(3.0)), Some(Level::m(102.0)));
}

#[test]
fn a_wall_or_a_setting_that_is_not_understood_is_named_and_left_out() {
    let ground = hill();
    let mut c = case(&ground);
    c.walls[0].stations[2].base = Level::m(f64::NAN);
    let out = drain(&c);
    assert!(out.walls.is_empty());
    assert!(out.findings[0].says.contains("station 3"), "{:?}", out.findings);
    c.walls[0].stations.truncate(1);
    assert!(drain(&c).findings[0].says.contains("at least two stations"));
    let mut c = case(&ground);
    c.pipe.fall = Slope::ratio(-0.01);
    assert!(drain(&c).findings[0].says.contains("the fall wished for"));
}

#[test]
fn every_drain_fill_is_coarser_the_later_its_share() {
    for g in DRAIN_FILLS {
        assert!(g.d15 < g.d50 && g.d50 < g.d85, "{}", g.name);
    }
}

#[test]
fn a_pipe_under_a_wall_a_buried_outlet_a_hanging_pipe_and_one_off_the_survey_are_named() {
    let ground = hill();
    let mut c = case(&ground);
    let mut lower = wall(100.0);
    lower.id = "W2".into();
    for s in &mut lower.stations {
        s.at = Point::m(s.at.x + 4.0, 6.0);
        (s.behind, s.front) = (Level::m(101.2), Level::m(100.6));
    }
    c.walls.push(lower);
    let said = drain(&c).findings;
    let under = said.iter().find(|f| f.kind.code == "W-010").unwrap();
    assert!(under.says.contains("W2") && under.place.element == "W1", "{under:?}");
    let mut c = case(&ground);
    let ground_there = Level::m(100.8);
    for (mm, buried) in [(151.0, true), (149.0, false)] {
        c.outlets = vec![Outlet { at: Point::m(14.0, 4.0), level: ground_there - Length::mm(mm) }];
        assert_eq!(codes(&c).contains(&"W-011"), buried, "{mm}");
    }
    assert!(!codes(&c).contains(&"W-012"));
    c.outlets = vec![Outlet { at: Point::m(14.0, 0.5), level: Level::m(100.9) }];
    assert!(codes(&c).contains(&"W-012"));
    c.outlets = vec![Outlet { at: Point::m(14.0, -3.0), level: Level::m(99.4) }];
    let out = drain(&c);
    assert!(out.findings.iter().any(|f| f.kind.code == "W-017"));
    assert!(out.pipes[0].trench.beyond_survey > Length::m(2.0));
}

#[test]
fn the_outlet_trench_holds_its_stone_and_the_soil_put_back() {
    let ground = hill();
    let mut c = case(&ground);
    // Straight down the slope from the wall's end: ground 102 − 0.2 d, pipe from 101.09 to 100.0 over 8 m.
    c.outlets = vec![Outlet { at: Point::m(12.0, 2.0), level: Level::m(100.0) }];
    c.pipe.diameter = Some(Length::mm(100.0));
    let t = drain(&c).pipes[0].trench.clone();
    let depth = |ground: f64, invert: f64| ground - invert + 0.05;
    let dug = 0.3 * 8.0 * 0.5 * (depth(102.0, 101.09) + depth(100.4, 100.0));
    assert!((t.dug.to_m3() - dug).abs() < 1e-9, "{} {dug}", t.dug.to_m3());
    let around = 0.3 * 8.0 * 0.25;
    assert!((t.stone.to_m3() - (around - std::f64::consts::PI * 0.0025 * 8.0)).abs() < 1e-9);
    assert!((t.put_back.to_m3() - (dug - around)).abs() < 1e-9);
    assert!((t.deepest.to_m() - 0.96).abs() < 1e-9);
}

#[test]
fn a_fill_wall_has_its_zone_partly_in_fill() {
    let ground = hill();
    let mut c = case(&ground);
    for s in &mut c.walls[0].stations {
        s.behind = Level::m(102.8);
        s.front = Level::m(102.0);
        s.base = Level::m(101.95);
    }
    let out = drain(&c);
    let zone = out.walls[0].zone.as_ref().unwrap();
    // Existing ground in the middle of the 300 mm zone lies at 102.03.
    assert!((zone.in_fill.to_m3() - 0.3 * 6.0 * 0.77).abs() < 1e-9, "{:?}", zone.in_fill);
    assert!(zone.in_ground.to_m3() > 0.3 * 6.0 * 0.08);
}

#[test]
fn a_large_survey_of_small_triangles_gives_nearly_the_same_catchment() {
    let n = 50;
    let points: Vec<GroundPoint> = (0..=n * n + 2 * n)
        .map(|k| {
            let (x, y) = (f64::from(k % (n + 1)) * 0.4, f64::from(k / (n + 1)) * 0.4);
            GroundPoint { id: k.to_string(), at: Point::m(x, y), level: Level::m(100.0 + 0.2 * y) }
        })
        .collect();
    let ground = Tin::build(&points, &[], None).unwrap();
    assert!(ground.triangles().len() > 4000);
    let found = catchments(&ground, &[wall(101.15)], None)[0];
    assert!((found.surveyed.to_m2() - 60.0).abs() < 3.0, "{found:?}");
}

#[test]
fn weep_holes_stand_no_farther_apart_than_wished_and_add_up() {
    let w = groundhold_drain::weeps(Length::m(7.0), Length::m(1.5), Length::mm(75.0), Length::mm(500.0)).unwrap();
    assert_eq!(w.count, 5);
    assert!((w.spacing.to_m() - 1.4).abs() < 1e-12);
    assert!((w.flow.to_l_per_s() - 5.0 * 8.44067).abs() < 0.01);
    assert!(groundhold_drain::weeps(Length::m(7.0), Length::ZERO, Length::mm(75.0), Length::mm(500.0)).is_err());
}

#[test]
fn stones_and_soils_are_found_by_the_names_people_write() {
    assert_eq!(drain_fill("10/20 mm").map(|g| g.name), Some("10-20 mm"));
    assert_eq!(drain_fill("10–20").map(|g| g.name), Some("10-20 mm"));
    assert_eq!(soil_grading("firm silty clay").map(|g| g.name), Some("silty clay"));
    assert_eq!(soil_grading("dense sand").map(|g| g.name), Some("sand"));
    assert_eq!(soil_grading("rock"), None);
}

fn turned(p: Point, by: Angle) -> Point {
    let (s, c) = (math::sin(by.to_rad()), math::cos(by.to_rad()));
    Point::m(c * p.x - s * p.y, s * p.x + c * p.y)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn the_pipe_always_falls_and_lies_below_the_base_and_above_the_outlet(
        bases in proptest::collection::vec(100.4f64..101.4, 4), out in 98.0f64..102.0, x in 1.0f64..19.0, y in 0.5f64..9.0,
    ) {
        let ground = hill();
        let mut c = case(&ground);
        for (s, b) in c.walls[0].stations.iter_mut().zip(&bases) {
            s.base = Level::m(*b);
        }
        c.outlets = vec![Outlet { at: Point::m(x, y), level: Level::m(out) }];
        let drained = drain(&c);
        let pipe = &drained.pipes[0];
        for w in pipe.points.windows(2) {
            let fall = (w[0].invert - w[1].invert) / (w[1].chainage - w[0].chainage);
            prop_assert!(fall >= 1.0 / 150.0 - 1e-9, "{fall}");
        }
        let too_high = drained.findings.iter().any(|f| f.kind.code == "W-004");
        let last = pipe.points.last().unwrap();
        prop_assert!(too_high || last.invert >= Level::m(out) - Length::m(1e-9));
        for p in &pipe.points {
            if let Some(k) = c.walls[0].stations.iter().find(|s| Some(s.chainage) == p.wall_chainage) {
                prop_assert!(p.invert <= k.base + Length::m(1e-9));
            }
        }
    }

    #[test]
    fn turning_the_whole_job_changes_no_catchment(by in 0.0f64..360.0) {
        let by = Angle::deg(by);
        let corners = [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)].map(|(x, y)| turned(Point::m(x, y), by));
        let up = turned(Point::m(0.0, 1.0), by);
        let plane = Plane { a: 0.2 * up.x, b: 0.2 * up.y, c: 100.0 };
        let ground = Tin::from_plane(plane, &Polygon::new(corners.to_vec()).unwrap());
        let mut w = wall(101.15);
        for s in &mut w.stations {
            s.at = turned(s.at, by);
            s.facing = Vector::m(-up.x, -up.y);
        }
        let found = catchments(&ground, &[w], None)[0];
        prop_assert!((found.surveyed.to_m2() - 60.0).abs() < 1.0, "{found:?}");
        prop_assert!((found.cut_edge.to_m() - 6.0).abs() < 0.3, "{found:?}");
    }

    #[test]
    fn more_rain_is_never_less_flow_and_never_a_smaller_pipe(i in 1.0f64..200.0, more in 0.0f64..100.0) {
        let ground = hill();
        let mut c = case(&ground);
        let mut with = |i: f64| {
            c.rain = Some(Rain::steady(RainIntensity::mm_per_h(i), "invented"));
            let d = drain(&c);
            (d.walls[0].flow.unwrap_or(Flow::ZERO), d.pipes[0].diameter)
        };
        let (a, b) = (with(i), with(i + more));
        prop_assert!(a.0 <= b.0 && a.1 <= b.1);
    }
}
