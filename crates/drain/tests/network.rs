//! Do pipes of several walls come together, do swales take the water before it reaches the wall, and does a soakaway hold it?

use groundhold_drain::{
    Bed, DrainCase, NodeKind, Outlet, PipeWish, Rain, SoakawayWish, Station, SwaleWish, WallLine, WeepWish, ZoneWish,
    blocked_share, drain, drain_fill, runoff, soil_grading,
};
use groundhold_quantity::{Flow, Length, Level, Point, RainIntensity, Share, Slope, Time, Vector};
use groundhold_surface::{Plane, Polygon, Tin};
use proptest::prelude::*;

/// A slope of 1:5 rising to the north over 30 × 30 m; level 100 at y = 0.
fn hill() -> Tin {
    let corners = [(0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (0.0, 30.0)].map(|(x, y)| Point::m(x, y));
    Tin::from_plane(Plane { a: 0.0, b: 0.2, c: 100.0 }, &Polygon::new(corners.to_vec()).expect("a square is simple"))
}

/// A wall from x = 8 to 20 at `y` that holds 0.8 m to the north.
fn wall(id: &str, y: f64) -> WallLine {
    let z = 100.0 + 0.2 * y;
    let station = |x: f64| Station {
        chainage: Length::m(x - 8.0),
        at: Point::m(x, y),
        behind: Level::m(z),
        front: Level::m(z - 0.8),
        base: Level::m(z - 0.85),
        facing: Vector::m(0.0, -1.0),
    };
    WallLine { id: id.into(), stations: [8.0, 12.0, 16.0, 20.0].map(station).to_vec() }
}

fn case(ground: &Tin) -> DrainCase<'_> {
    DrainCase {
        ground,
        walls: vec![wall("W1", 20.0), wall("W2", 12.0)],
        wanted: true,
        rain: Some(Rain::steady(RainIntensity::mm_per_h(60.0), "invented")),
        runoff: *runoff("lawn heavy steep").expect("the table has lawn"),
        uphill: Some(Length::ZERO),
        groundwater: None,
        outlets: vec![Outlet { at: Point::m(5.0, 3.0), level: Level::m(100.3) }],
        soakaway: None,
        swales: vec![],
        weeps: None,
        footings: vec![],
        units: groundhold_quantity::Units::Metric,
        pipe: PipeWish::default(),
        bed: Bed::default(),
        zone: ZoneWish::default(),
        soil: soil_grading("firm silty clay").copied(),
        stone: *drain_fill("10-20").expect("the table has 10-20 mm"),
    }
}

fn curve() -> Rain {
    let row = |min: f64, mm: f64| (Time::min_(min), RainIntensity::mm_per_h(mm));
    let rows = [(5.0, 85.0), (10.0, 61.0), (30.0, 33.0), (60.0, 20.0), (360.0, 5.3), (1440.0, 1.9)];
    Rain { curve: rows.map(|(d, i)| row(d, i)).to_vec(), ..Rain::steady(RainIntensity::mm_per_h(60.0), "invented") }
}

#[test]
fn the_upper_pipe_joins_the_lower_one_and_the_lower_carries_both() {
    let ground = hill();
    let out = drain(&case(&ground));
    let (upper, lower) = (out.pipe("W1").unwrap(), out.pipe("W2").unwrap());
    assert_eq!(upper.joins.as_deref(), Some("W2"));
    assert_eq!((lower.joins.as_deref(), &lower.receives), (None, &vec!["W1".to_string()]));
    let sum = out.walls.iter().map(|w| w.flow.unwrap().to_l_per_s()).sum::<f64>();
    assert!((lower.flow.unwrap().to_l_per_s() - sum).abs() < 1e-12);
    assert!(lower.diameter >= upper.diameter);
    let end = upper.points.last().unwrap();
    let shaft = lower.nodes.iter().find(|n| matches!(n.kind, NodeKind::Junction(_))).unwrap();
    assert!((end.at - shaft.at).length() < 1e-9 && end.invert >= shaft.invert);
    for r in upper.reaches.iter().chain(&lower.reaches) {
        assert!(r.filled.unwrap() <= 0.75 + 1e-9 && r.trace.sheet().is_ok());
    }
}

#[test]
fn a_pipe_that_cannot_reach_another_goes_to_the_outlet_by_itself() {
    let ground = hill();
    let mut c = case(&ground);
    c.outlets.push(Outlet { at: Point::m(7.0, 18.0), level: Level::m(102.0) });
    let out = drain(&c);
    assert_eq!(out.pipe("W1").unwrap().joins, None);
    assert_eq!(out.pipe("W1").unwrap().outlet.unwrap().at, Point::m(7.0, 18.0));
    c.outlets.clear();
    let out = drain(&c);
    assert!(out.pipes.iter().all(|p| p.joins.is_none() && p.nodes.last().unwrap().kind == NodeKind::End));
    assert_eq!(out.findings.iter().filter(|f| f.kind.code == "W-002").count(), 2);
}

#[test]
fn a_swale_takes_what_comes_from_above_and_falls_to_its_end() {
    let ground = hill();
    let mut c = case(&ground);
    let before = drain(&c).wall("W1").unwrap().catchment.area();
    c.swales = vec![SwaleWish::above("W1")];
    let out = drain(&c);
    let swale = &out.swales[0];
    for w in swale.points.windows(2) {
        let run = (w[1].chainage - w[0].chainage).to_m();
        assert!((w[0].invert - w[1].invert).to_m() >= 0.01 * run - 1e-9);
    }
    assert!(swale.points.iter().all(|p| p.ground - p.invert >= swale.depth_least - Length::mm(0.01)));
    assert!(swale.points.iter().all(|p| p.at.y >= 21.5 - 1e-6));
    let left = out.wall("W1").unwrap().catchment.area();
    assert!(left.to_m2() < 0.35 * before.to_m2(), "{left:?} of {before:?}");
    assert!(swale.catchment.area().to_m2() > 80.0, "{:?}", swale.catchment);
    assert!(swale.water.as_ref().unwrap().utilisation < 1.0 && swale.dug.to_m3() > 0.0);
    assert!(!out.findings.iter().any(|f| f.kind.code == "W-018"));
}

#[test]
fn a_swale_without_room_in_the_survey_is_refused_with_a_finding() {
    let ground = hill();
    let mut c = case(&ground);
    c.walls = vec![wall("W1", 29.5)];
    c.swales = vec![SwaleWish::above("W1")];
    let out = drain(&c);
    assert!(out.swales.is_empty() && out.findings.iter().any(|f| f.kind.code == "W-018"));
}

#[test]
fn bare_soil_on_a_steep_swale_is_washed_and_the_lining_named_stands() {
    let ground = hill();
    let mut c = case(&ground);
    c.rain = Some(Rain::steady(RainIntensity::mm_per_h(200.0), "invented"));
    let bare = groundhold_drain::LININGS[0];
    c.swales = vec![SwaleWish { lining: bare, fall: Slope::one_in(20.0), ..SwaleWish::above("W1") }];
    let out = drain(&c);
    let found = out.findings.iter().find(|f| f.kind.code == "W-019").unwrap();
    let named = found.remedies[0].says.trim_start_matches("Line it with ").trim_end_matches('.').to_string();
    c.swales[0].lining = *groundhold_drain::channel_lining(&named).unwrap();
    assert!(!drain(&c).findings.iter().any(|f| f.kind.code == "W-019"));
}

fn pit(level: f64) -> SoakawayWish {
    SoakawayWish {
        at: Point::m(5.0, 3.0),
        level: Level::m(level),
        length: None,
        width: Length::m(1.0),
        depth: Length::m(1.0),
        empty: Share::fraction(0.3),
        rate: Some(RainIntensity::mm_per_h(120.0)),
        source: "trial pit, invented".into(),
    }
}

#[test]
fn a_soakaway_is_as_long_as_the_worst_rain_asks_and_100_mm_less_is_too_small() {
    let ground = hill();
    let mut c = case(&ground);
    (c.outlets, c.soakaway, c.rain) = (vec![], Some(pit(99.9)), Some(curve()));
    let out = drain(&c);
    let s = out.soakaway.clone().unwrap();
    assert!(s.asked <= s.has && s.trace.sheet().is_ok());
    assert!(!out.findings.iter().any(|f| ["W-021", "W-023", "W-002"].contains(&f.kind.code)), "{:?}", out.findings);
    if s.length > Length::m(1.0) {
        c.soakaway.as_mut().unwrap().length = Some(s.length - Length::mm(100.0));
        let said = drain(&c).findings;
        let small = said.iter().find(|f| f.kind.code == "W-021").unwrap();
        assert!(small.remedies[0].change[0].value.starts_with(&format!("{:.1}", s.length.to_m())));
    }
}

#[test]
fn a_soakaway_near_a_house_or_over_water_is_stopped_and_one_without_rates_is_not_sized() {
    let ground = hill();
    let mut c = case(&ground);
    (c.outlets, c.soakaway, c.rain) = (vec![], Some(pit(99.9)), Some(curve()));
    let near =
        |gap: f64| vec![("house".to_string(), vec![Point::m(5.0 + 0.5 + gap, 0.0), Point::m(5.0 + 0.5 + gap, 9.0)])];
    c.footings = near(4.99);
    assert!(drain(&c).findings.iter().any(|f| f.kind.code == "W-023"));
    c.footings = near(5.01);
    assert!(!drain(&c).findings.iter().any(|f| f.kind.code == "W-023"));
    c.groundwater = Some(Length::m(1.5));
    assert!(drain(&c).findings.iter().any(|f| f.kind.code == "W-023"));
    (c.groundwater, c.rain) = (None, Some(Rain::steady(RainIntensity::mm_per_h(60.0), "one only")));
    let out = drain(&c);
    assert!(out.soakaway.is_none() && out.findings.iter().any(|f| f.kind.code == "W-024"));
}

#[test]
fn weep_holes_lower_the_water_of_a_blocked_drain_and_never_above_the_ground() {
    let w = wall("W1", 20.0);
    let full = blocked_share(&w, None, Some(Flow::l_per_s(1.0)));
    assert_eq!(full, Share::fraction(1.0));
    let wish = WeepWish::default();
    let some = blocked_share(&w, Some(&wish), Some(Flow::l_per_s(1.0)));
    assert!(some.to_fraction() > 0.15 / 0.8 && some.to_fraction() < 0.3, "{some:?}");
    assert_eq!(blocked_share(&w, Some(&wish), Some(Flow::m3_per_s(5.0))), Share::fraction(1.0));
    assert_eq!(blocked_share(&w, Some(&wish), None), Share::fraction(1.0));
}

#[test]
fn the_rain_is_read_at_the_time_that_the_water_needs() {
    let ground = hill();
    let mut c = case(&ground);
    c.rain = Some(curve());
    let w = &drain(&c).walls[0];
    let arrives = w.arrival.as_ref().unwrap();
    assert!(arrives.way >= Length::m(9.0) && arrives.way <= Length::m(10.1), "{arrives:?}");
    let i = curve().at(arrives.time).to_mm_per_h();
    assert!((w.flow.unwrap().to_l_per_s() - 0.35 * i * w.catchment.area().to_m2() / 3600.0).abs() < 1e-9);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn inverts_fall_along_every_way_down_to_the_outlet(
        y1 in 14.0f64..26.0, gap in 3.0f64..10.0, x in 0.5f64..29.0, y in 0.5f64..6.0, out in 98.5f64..101.0,
    ) {
        let ground = hill();
        let mut c = case(&ground);
        c.walls = vec![wall("W1", y1), wall("W2", (y1 - gap).max(7.0))];
        c.outlets = vec![Outlet { at: Point::m(x, y), level: Level::m(out) }];
        let found = drain(&c);
        for p in &found.pipes {
            for w in p.points.windows(2) {
                prop_assert!(w[1].invert < w[0].invert, "{:?}", p.points);
            }
            prop_assert!(p.reaches.iter().all(|r| r.fall.to_ratio() >= 1.0 / 150.0 - 1e-9));
            if let Some(into) = &p.joins {
                let receiver = found.pipe(into).unwrap();
                prop_assert!(receiver.receives.contains(&p.wall));
                prop_assert!(receiver.points.iter().any(|q| (q.at - p.points.last().unwrap().at).length() < 1e-9));
            }
        }
    }
}
