//! Are the triggers of a region held against the facts as they should be?

use groundhold_finding::Severity;
use groundhold_quantity::{Length, Pressure, Slope};

use super::*;
use crate::*;

/// A plain wall: nothing near, nothing behind.
fn wall(retained_mm: f64) -> WallFacts {
    WallFacts {
        id: "W1".into(),
        retained: Length::mm(retained_mm),
        exposed: Length::mm(retained_mm + 50.0),
        total: Length::mm(2.0 * retained_mm + 50.0),
        boundary: Near::Nothing,
        building: Near::Nothing,
        street: Near::Nothing,
        easement: Near::Nothing,
        ..WallFacts::default()
    }
}

fn with(walls: Vec<WallFacts>) -> Facts {
    Facts { walls, enquiry: Enquiry::Replied { days_ago: 3 }, ..Facts::default() }
}

fn codes(code: &str, facts: &Facts) -> Vec<&'static str> {
    check_region(region(code).unwrap(), facts).iter().map(|f| f.kind.code).collect()
}

#[test]
fn new_zealand_asks_for_consent_above_one_and_a_half_metres_and_not_at_it() {
    assert_eq!(codes("nz", &with(vec![wall(1500.0)])), Vec::<&str>::new());
    assert_eq!(codes("nz", &with(vec![wall(1501.0)])), ["B-001"]);
}

#[test]
fn victoria_asks_from_one_metre_on_and_not_just_below() {
    assert_eq!(codes("au-vic", &with(vec![wall(1000.0)])), ["B-001"]);
    assert_eq!(codes("au-vic", &with(vec![wall(999.0)])), Vec::<&str>::new());
}

#[test]
fn the_american_four_feet_are_counted_from_the_underside_of_the_base() {
    let mut w = wall(600.0);
    w.total = Length::ft(4.0);
    assert_eq!(codes("us-model", &with(vec![w.clone()])), Vec::<&str>::new());
    w.total = Length::ft(4.0) + Length::inch(1.5);
    let facts = Facts { units: groundhold_quantity::Units::Feet, ..with(vec![w]) };
    let said = check_region(region("us-model").unwrap(), &facts);
    assert_eq!(said.len(), 1);
    assert!(said[0].says.contains("4 ft 1½ in"), "{}", said[0].says);
    assert!(said[0].remedies[0].says.starts_with("Build it 1½ in lower"), "{:?}", said[0].remedies);
}

#[test]
fn a_fact_that_nobody_told_is_asked_for_once_and_no_rule_is_taken_as_met() {
    let mut w = wall(500.0);
    (w.boundary, w.easement) = (Near::NotTold, Near::NotTold);
    let said = check_region(region("au-nsw").unwrap(), &with(vec![w]));
    assert_eq!(said.iter().map(|f| f.kind.code).collect::<Vec<_>>(), ["B-005"]);
    assert!(
        said[0].says.contains("the distance to the boundary, nor the distance to the nearest easement"),
        "{}",
        said[0].says
    );
}

#[test]
fn a_place_without_rules_says_so_and_names_what_is_not_known() {
    let mut facts = with(vec![wall(300.0)]);
    facts.edges = vec![EdgeFacts { element: "W1".into(), drop: Length::mm(350.0), ..EdgeFacts::default() }];
    let said = check_region(region("generic").unwrap(), &facts);
    assert_eq!(said.iter().map(|f| f.kind.code).collect::<Vec<_>>(), ["B-021", "B-004"]);
    assert!(said[1].says.contains("from which drop a guard"));
}

#[test]
fn a_second_wall_one_metre_behind_a_wall_of_nine_tenths_acts_with_it() {
    let beside = |d: f64| WallBeside {
        other: "the old block wall".into(),
        distance: Length::m(d),
        retained: Length::m(0.9),
        is_lower: true,
    };
    let mut w = wall(600.0);
    w.beside = vec![beside(1.0)];
    let said = check_region(region("generic").unwrap(), &with(vec![w.clone()]));
    let tiers = said.iter().find(|f| f.kind.code == "B-010").unwrap();
    assert_eq!(tiers.utilisation, Some(1.8));
    assert!(tiers.says.contains("1800 mm") && tiers.says.contains("one wall of 1500 mm"), "{}", tiers.says);
    w.beside = vec![beside(1.8)];
    assert!(!codes("generic", &with(vec![w])).contains(&"B-010"));
}

#[test]
fn of_two_walls_of_the_job_one_tells_about_the_two() {
    let side = |other: &str, is_lower: bool| WallBeside {
        other: other.into(),
        distance: Length::m(0.5),
        retained: Length::m(0.6),
        is_lower,
    };
    let (mut upper, mut lower) = (wall(600.0), wall(600.0));
    lower.id = "W2".into();
    upper.beside = vec![side("W2", true)];
    lower.beside = vec![side("W1", false)];
    let said = codes("au-sa", &with(vec![upper, lower]));
    assert_eq!(said.iter().filter(|c| **c == "B-010").count(), 1);
    assert_eq!(said.iter().filter(|c| **c == "B-001").count(), 1, "tiers of 1.2 m together");
}

#[test]
fn a_driveway_behind_a_low_wall_asks_for_an_engineer_and_takes_it_out_of_the_exemption() {
    let mut w = wall(700.0);
    (w.vehicles, w.surcharge) = (true, Pressure::kpa(5.0));
    let said = codes("nz", &with(vec![w]));
    assert!(said.contains(&"B-001") && said.contains(&"B-012") && said.contains(&"B-002"), "{said:?}");
}

#[test]
fn ground_behind_at_one_in_six_is_no_load_and_steeper_is() {
    let mut w = wall(400.0);
    w.slope_behind = Slope::one_in(6.0);
    assert!(!codes("nz", &with(vec![w.clone()])).contains(&"B-001"));
    w.slope_behind = Slope::one_in(5.9);
    assert!(codes("nz", &with(vec![w])).contains(&"B-001"));
}

#[test]
fn a_wall_nearer_to_the_boundary_than_it_is_high_is_said() {
    let mut w = wall(600.0);
    w.boundary = Near::At(Length::mm(1249.0));
    assert_eq!(codes("us-model", &with(vec![w.clone()])), ["B-001", "B-006"], "total 1250 mm is above 4 ft");
    w.boundary = Near::At(Length::mm(1250.0));
    assert!(!codes("us-model", &with(vec![w])).contains(&"B-006"));
}

#[test]
fn a_street_within_four_yards_is_asked_about_in_england_only_above_four_feet_six() {
    let mut w = wall(1400.0);
    w.street = Near::At(Length::m(3.0));
    assert_eq!(codes("uk-england", &with(vec![w.clone()])), ["B-008"]);
    w.street = Near::At(Length::m(3.7));
    assert_eq!(codes("uk-england", &with(vec![w.clone()])), Vec::<&str>::new());
    (w.street, w.exposed) = (Near::NotTold, Length::m(1.0));
    assert_eq!(codes("uk-england", &with(vec![w.clone()])), Vec::<&str>::new());
    w.exposed = Length::mm(1001.0);
    assert_eq!(codes("uk-england", &with(vec![w])), ["B-005"], "beside a highway the mark is 1 m");
}

#[test]
fn a_dig_below_the_neighbours_foundation_stops_and_needs_notice() {
    let mut e = ExcavationFacts { element: "P1".into(), depth: Length::m(0.9), ..ExcavationFacts::default() };
    let facts = |e: &ExcavationFacts| Facts { excavations: vec![e.clone()], ..with(vec![]) };
    assert_eq!(codes("uk-england", &facts(&e)), ["B-005"]);
    e.neighbour_building = Near::At(Length::m(2.0));
    e.below_its_foundation = Some(true);
    let said = check_region(region("uk-england").unwrap(), &facts(&e));
    assert_eq!(
        said.iter().map(|f| (f.kind.code, f.severity)).collect::<Vec<_>>(),
        [("B-007", Severity::Stop), ("B-003", Severity::Ask)]
    );
    e.below_its_foundation = Some(false);
    assert_eq!(codes("uk-england", &facts(&e)), Vec::<&str>::new());
    e.depth = Length::m(1.0);
    assert_eq!(codes("uk-england", &facts(&e)), ["B-019"]);
}

#[test]
fn half_a_metre_over_three_is_too_steep_for_a_wheelchair_and_the_lengths_that_serve_are_given() {
    let r = RampFacts { id: "R1".into(), slope: Slope::one_in(6.0), run: Length::m(3.0), wheelchair: Some(true) };
    let facts = |r: &RampFacts| Facts { ramps: vec![r.clone()], ..with(vec![]) };
    let lengths = |code: &str| -> Vec<String> {
        let said = check_region(region(code).unwrap(), &facts(&r));
        let ramp = said.iter().find(|f| f.kind.code == "B-017").unwrap();
        assert_eq!(ramp.severity, Severity::Stop);
        ramp.remedies.iter().map(|x| x.says.clone()).collect()
    };
    assert!(lengths("generic")[0].starts_with("6.00 m at 1:12"));
    let uk = lengths("uk-england");
    assert!(uk[0].starts_with("10.00 m at 1:20 for the rise of 500 mm."), "{uk:?}");
    assert!(uk[2].contains("6.00 m at 1:12") && uk[2].contains("3 runs with 2 landings"), "{uk:?}");
    assert!(lengths("au-nsw")[1].starts_with("7.00 m at 1:14"));
    let flat = RampFacts { slope: Slope::one_in(20.0), run: Length::m(10.0), ..r.clone() };
    assert!(!codes("uk-england", &facts(&flat)).contains(&"B-017"));
    let long = RampFacts { run: Length::m(10.1), ..flat };
    assert!(codes("uk-england", &facts(&long)).contains(&"B-017"));
    let barrow = RampFacts { wheelchair: Some(false), ..r.clone() };
    assert!(!codes("uk-england", &facts(&barrow)).contains(&"B-017"));
}

#[test]
fn a_guard_is_asked_for_from_the_mark_on_unless_nobody_comes_there() {
    let at = |drop: Length, walked: Near| Facts {
        edges: vec![EdgeFacts { element: "W1".into(), on: String::new(), drop, walked, guarded: false }],
        ..with(vec![])
    };
    let near = Near::At(Length::m(0.5));
    assert_eq!(codes("us-model", &at(Length::inch(30.0), near)), ["B-009"]);
    assert_eq!(codes("us-model", &at(Length::inch(29.9), near)), Vec::<&str>::new());
    assert_eq!(codes("us-model", &at(Length::inch(30.0), Near::At(Length::m(1.0)))), Vec::<&str>::new());
    assert_eq!(codes("us-model", &at(Length::inch(30.0), Near::NotTold)), ["B-009"]);
    assert_eq!(codes("us-model", &at(Length::inch(30.0), Near::Nothing)), Vec::<&str>::new());
}

#[test]
fn a_handrail_and_a_landing_are_asked_for_at_their_marks() {
    let f = |risers: u32, rise: f64| Facts {
        flights: vec![FlightFacts { id: "S1".into(), risers, rise: Length::m(rise), ..FlightFacts::default() }],
        ..with(vec![])
    };
    assert_eq!(codes("us-model", &f(3, 0.5)), Vec::<&str>::new());
    assert_eq!(codes("us-model", &f(4, 0.6)), ["B-018"]);
    assert_eq!(codes("au-qld", &f(18, 0.99)), Vec::<&str>::new());
    assert_eq!(codes("au-qld", &f(19, 3.0)), ["B-018", "B-020"]);
}

#[test]
fn a_reply_about_services_is_good_for_four_weeks() {
    let asked = |enquiry: Enquiry| Facts { enquiry, ..Facts::default() };
    assert_eq!(codes("generic", &asked(Enquiry::Replied { days_ago: 28 })), Vec::<&str>::new());
    for e in [Enquiry::Replied { days_ago: 29 }, Enquiry::Asked, Enquiry::NotTold] {
        assert_eq!(codes("generic", &asked(e)), ["B-013"]);
    }
}

#[test]
fn water_and_unknown_pipes_stop_the_work_until_they_are_settled() {
    let find = |what: GroundFound, settled: bool| Facts {
        finds: vec![GroundFind {
            what,
            element: "W1".into(),
            on: "post 3".into(),
            depth: Some(Length::mm(450.0)),
            settled,
        }],
        ..with(vec![])
    };
    for (what, code, severity) in [
        (GroundFound::Water, "B-014", Severity::Stop),
        (GroundFound::UnknownPipe, "B-015", Severity::Stop),
        (GroundFound::Cable, "B-015", Severity::Stop),
        (GroundFound::Rock, "B-016", Severity::Watch),
    ] {
        let said = check_region(region("generic").unwrap(), &find(what, false));
        assert_eq!((said[0].kind.code, said[0].severity), (code, severity));
        assert!(said[0].says.contains("450 mm down") && !said[0].remedies.is_empty());
        assert!(codes("generic", &find(what, true)).is_empty());
    }
}

#[test]
fn nothing_that_is_said_is_called_safe() {
    let mut w = wall(2000.0);
    (w.vehicles, w.boundary) = (true, Near::At(Length::m(0.5)));
    for r in REGIONS {
        for f in check_region(r, &with(vec![w.clone()])) {
            let all = f.remedies.iter().map(|x| x.says.as_str()).chain([f.says.as_str(), f.kind.why]);
            for text in all {
                assert!(!text.to_lowercase().split(|c: char| !c.is_alphabetic()).any(|x| x == "safe"), "{text}");
            }
        }
    }
}

/// A wall for which all conditions of all triggers hold, and whose every measure is this.
fn pressed(measure: Length) -> WallFacts {
    let near = Near::At(Length::ZERO);
    WallFacts {
        id: "W1".into(),
        retained: measure,
        exposed: measure,
        total: measure,
        surcharge: Pressure::kpa(5.0),
        vehicles: true,
        holds_fill: true,
        boundary: near,
        building: near,
        street: near,
        easement: near,
        beside: vec![WallBeside {
            other: "W9".into(),
            distance: Length::ZERO,
            retained: Length::ZERO,
            is_lower: false,
        }],
        ..WallFacts::default()
    }
}

#[test]
fn every_trigger_of_every_region_fires_just_above_its_limit_and_not_at_it_or_says_that_it_bites_there() {
    use super::verdict::{Verdict, on_excavation, on_pad, on_wall};
    let step = Length::mm(1.0);
    for r in REGIONS {
        for t in r.triggers {
            let fires = |measure: Length| {
                let pad = PadFacts {
                    cut: measure,
                    fill: measure,
                    boundary: Near::At(Length::mm(1.0)),
                    ..PadFacts::default()
                };
                let dig = ExcavationFacts {
                    depth: measure,
                    neighbour_building: Near::At(Length::mm(1.0)),
                    below_its_foundation: Some(true),
                    ..ExcavationFacts::default()
                };
                let mut wall = pressed(measure);
                if t.measured == Measured::WallAndFence {
                    (wall.exposed, wall.fence) = (measure * 0.5, measure * 0.5);
                }
                [on_wall(t, &wall), on_pad(t, &pad), on_excavation(t, &dig)].contains(&Verdict::Fires)
            };
            assert!(fires(t.above + step), "{}: {}", r.code, t.says);
            assert_eq!(fires(t.above), t.at_least, "{}: {}", r.code, t.says);
            assert!(!fires(t.above - step), "{}: {}", r.code, t.says);
        }
    }
}

#[test]
fn a_post_below_the_class_of_the_place_is_said_and_one_at_it_is_not() {
    let of = |treatment: &str, retained: f64| {
        let timber = |part| TimberFacts { part, treatment: treatment.into() };
        let mut w = wall(retained);
        w.timbers = vec![timber(TimberPart::Post), timber(TimberPart::Board)];
        with(vec![w])
    };
    assert_eq!(codes("uk-england", &of("UC3", 600.0)), ["B-036", "B-036"]);
    assert_eq!(codes("uk-england", &of("UC4", 600.0)), Vec::<&str>::new());
    assert_eq!(codes("nz", &of("H4 SG8", 600.0)), ["B-036"], "boards may be H4, posts not");
    assert_eq!(codes("au-qld", &of("H4", 1000.0)), Vec::<&str>::new());
    assert_eq!(codes("au-qld", &of("H4", 1001.0)), ["B-036", "B-001"], "asked about: H5");
    assert_eq!(codes("au-qld", &of("H5", 1001.0)), ["B-001"]);
    let said = check_region(region("us-model").unwrap(), &of("UC4", 300.0));
    assert_eq!((said[0].kind.code, said[0].severity), ("B-036", Severity::Watch));
    assert!(said[0].says.contains("`UC4` is no class known for"), "{}", said[0].says);
    assert!(
        check_region(region("generic").unwrap(), &of("", 300.0)).iter().any(|f| f.says.contains("which treatment"))
    );
}

#[test]
fn a_base_above_the_frost_line_is_said_in_soil_that_heaves_and_only_there() {
    let of = |depth: f64, heaves: Option<bool>, line: Option<Length>| {
        let mut w = wall(500.0);
        (w.base_depth, w.heaves) = (Some(Length::mm(depth)), heaves);
        Facts { frost_line: line, ..with(vec![w]) }
    };
    assert_eq!(codes("uk-england", &of(449.0, Some(true), None)), ["B-037"]);
    assert_eq!(codes("uk-england", &of(450.0, Some(true), None)), Vec::<&str>::new());
    assert_eq!(codes("uk-england", &of(300.0, Some(false), None)), Vec::<&str>::new());
    assert_eq!(codes("uk-england", &of(300.0, None, None)), Vec::<&str>::new());
    assert_eq!(codes("us-model", &of(400.0, Some(true), None)), ["B-005"], "the frost line of the place is asked for");
    assert_eq!(codes("us-model", &of(400.0, Some(true), Some(Length::inch(42.0)))), ["B-037"]);
    assert_eq!(codes("us-model", &of(1100.0, Some(true), Some(Length::inch(42.0)))), Vec::<&str>::new());
    assert!(codes("au-nsw", &of(300.0, Some(true), None)).contains(&"B-004"), "not known is said");
}

#[test]
fn a_flight_that_rises_more_than_the_place_allows_needs_a_landing() {
    let f = |rise: Length| Facts {
        flights: vec![FlightFacts { id: "S1".into(), risers: 3, rise, ..FlightFacts::default() }],
        ..with(vec![])
    };
    assert_eq!(codes("ca", &f(Length::m(3.7))), Vec::<&str>::new());
    assert_eq!(codes("ca", &f(Length::m(3.71))), ["B-020"]);
}
