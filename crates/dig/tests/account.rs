//! Is soil conserved, and do loads, heaps and findings follow from it?

use groundhold_dig::{
    DigCase, Earth, ElementKind, Import, Moved, OpenCut, Trench, UnsupportedTrigger, Vehicle, WallDug, balance, dig,
    factors, heap, loads, subsoil_over,
};
use groundhold_finding::Severity;
use groundhold_quantity::{Area, Length, Level, Mass, Slope, Volume};
use proptest::prelude::*;

fn moved(element: &str, cut: f64, fill: f64, areas: [f64; 2]) -> Moved {
    Moved {
        element: element.into(),
        kind: ElementKind::Pad,
        cut: Volume::m3(cut),
        fill: Volume::m3(fill),
        cut_area: Area::m2(areas[0]),
        fill_area: Area::m2(areas[1]),
        build_up: Length::ZERO,
        topsoil_back: Length::ZERO,
        rock: Volume::ZERO,
        turf_back: Area::ZERO,
    }
}

fn clay() -> DigCase {
    DigCase::new(factors("firm clay").expect("the table has clay"))
}

fn codes(case: &DigCase) -> Vec<&'static str> {
    dig(case).findings.iter().map(|f| f.kind.code).collect()
}

#[test]
fn the_garden_filled_to_its_top_is_short_of_all_its_fill_and_says_what_not_to_use() {
    let mut case = clay();
    case.moved = vec![moved("P1", 0.0, 12.6, [0.0, 42.0])];
    let dug = dig(&case);
    assert!((dug.subsoil.short.to_m3() - 12.6).abs() < 1e-12);
    let codes = codes(&case);
    for code in ["D-002", "D-003", "D-004"] {
        assert!(codes.contains(&code), "{code} is missing in {codes:?}");
    }
    case.import = Import::Topsoil;
    let stop = dig(&case).findings.into_iter().find(|f| f.kind.code == "D-003").unwrap();
    assert_eq!(stop.severity, Severity::Stop);
}

#[test]
fn two_balanced_tiers_in_clay_are_short_by_the_shrinkage_only() {
    let mut case = clay();
    case.moved = vec![moved("P1", 1.575, 1.575, [21.0, 21.0])];
    let dug = dig(&case);
    assert!((dug.subsoil.short.to_m3() - 0.1 * 1.575).abs() < 1e-12);
    assert_eq!(dug.subsoil.over, Volume::ZERO);
}

#[test]
fn a_pit_dug_by_hand_fills_the_barrows_and_days_that_people_count() {
    let mut case = DigCase::new(factors("loam").unwrap());
    case.moved = vec![moved("P1", 7.2, 0.0, [18.0, 0.0])];
    let dug = dig(&case);
    assert!((dug.subsoil.over_mass.to_t() - 11.52).abs() < 1e-9);
    assert_eq!(dug.barrows, 129);
    let digging = dug.tasks.iter().find(|t| t.what.starts_with("dig subsoil")).unwrap();
    assert!(digging.person_days.0 > 2.0 && digging.person_days.1 <= 3.6 + 1e-9);
}

#[test]
fn turf_and_topsoil_are_stripped_apart_and_what_is_spread_back_is_kept() {
    let mut case = clay();
    (case.turf, case.topsoil) = (Length::mm(50.0), Length::mm(150.0));
    let mut pad = moved("P1", 10.0, 0.0, [40.0, 0.0]);
    pad.topsoil_back = Length::mm(100.0);
    case.moved = vec![pad];
    let dug = dig(&case);
    assert!((dug.turf.dug.to_m3() - 2.0).abs() < 1e-12);
    assert!((dug.topsoil.dug.to_m3() - 6.0).abs() < 1e-12);
    assert!((dug.topsoil.placed.to_m3() - 4.0).abs() < 1e-12);
    assert!((dug.subsoil.dug.to_m3() - (10.0 + 0.1 * 40.0 - 8.0)).abs() < 1e-12);
    assert!(dug.keep.iter().any(|k| k.earth == Earth::Topsoil && k.heaped));
}

#[test]
fn a_drainage_zone_in_fill_saves_fill_and_one_in_the_ground_is_dug() {
    let mut case = clay();
    case.moved = vec![moved("P1", 0.0, 10.0, [0.0, 20.0])];
    let wall = |in_ground: f64, in_fill: f64| WallDug {
        wall: "W1".into(),
        zone_in_ground: Volume::m3(in_ground),
        zone_in_fill: Volume::m3(in_fill),
        cap: Volume::ZERO,
        stone: Volume::m3(in_ground + in_fill),
        working_room: Volume::ZERO,
    };
    case.walls = vec![wall(0.0, 2.0)];
    assert!((dig(&case).subsoil.placed.to_m3() - 8.0).abs() < 1e-12);
    case.walls = vec![wall(3.0, 0.0)];
    assert!((dig(&case).subsoil.dug.to_m3() - 3.0).abs() < 1e-12);
    assert!(dig(&case).bring.iter().any(|b| b.what == "drain stone" && b.element == "W1"));
}

#[test]
fn soft_soil_is_all_left_over_and_all_fill_is_brought() {
    let mut case = clay();
    case.fit_for_fill = false;
    case.moved = vec![moved("P1", 5.0, 5.0, [10.0, 10.0])];
    let dug = dig(&case);
    assert_eq!((dug.subsoil.over.to_m3(), dug.subsoil.short.to_m3()), (5.0, 5.0));
    assert!(codes(&case).contains(&"D-010"));
}

#[test]
fn an_open_face_is_named_at_its_trigger_and_not_a_millimetre_below() {
    let mut case = clay();
    case.unsupported = Some(UnsupportedTrigger { most: Length::m(1.0), source: "invented rule, 2026".into() });
    let face = |mm: f64| vec![OpenCut { element: "W1".into(), on: "chainage 2.00 m".into(), depth: Length::mm(mm) }];
    case.open_cuts = face(1000.0);
    assert!(codes(&case).contains(&"D-005"));
    case.open_cuts = face(999.0);
    assert!(!codes(&case).contains(&"D-005"));
    case.unsupported = None;
    assert!(codes(&case).contains(&"D-006"));
    case.open_cuts = face(400.0);
    assert!(!codes(&case).contains(&"D-006"));
}

#[test]
fn a_heap_too_near_the_crest_and_too_large_for_its_room_is_named() {
    let mut case = clay();
    (case.topsoil, case.topsoil_back) = (Length::mm(200.0), Area::m2(50.0));
    case.moved = vec![moved("P1", 20.0, 0.0, [50.0, 0.0])];
    case.open_cuts = vec![OpenCut { element: "W1".into(), on: String::new(), depth: Length::mm(900.0) }];
    case.heap.from_crest = Some(Length::mm(899.0));
    case.heap.area = Some(Area::m2(2.0));
    let said = codes(&case);
    assert!(said.contains(&"D-007") && said.contains(&"D-008"), "{said:?}");
    case.heap.from_crest = Some(Length::mm(900.0));
    case.heap.area = Some(Area::m2(60.0));
    let said = codes(&case);
    assert!(!said.contains(&"D-007") && !said.contains(&"D-008"), "{said:?}");
}

#[test]
fn a_figure_that_cannot_be_counted_is_named_and_counts_as_nothing() {
    let mut case = clay();
    case.moved = vec![moved("P1", f64::NAN, 1.0, [4.0, -1.0])];
    case.holes = vec![("W1".into(), Volume::m3(-0.3))];
    let dug = dig(&case);
    assert_eq!(dug.findings.iter().filter(|f| f.kind.code == "D-012").count(), 3);
    assert!(dug.dug().is_finite());
    assert!(dug.findings.iter().any(|f| f.says.contains("NaN") && f.place.element == "P1"));
}

#[test]
fn a_vehicle_that_carries_nothing_gives_no_loads_and_no_panic() {
    let mut case = clay();
    case.vehicle = Vehicle { payload: Mass::ZERO, volume: Volume::ZERO };
    case.barrow = Volume::ZERO;
    case.moved = vec![moved("P1", 5.0, 0.0, [10.0, 0.0])];
    let dug = dig(&case);
    assert!(dug.subsoil.loads.is_none());
    assert!(dug.findings.iter().any(|f| f.says.contains("not known")));
}

#[test]
fn every_figure_that_carries_a_working_can_be_worked_again() {
    let mut case = clay();
    (case.turf, case.topsoil, case.topsoil_back) = (Length::mm(40.0), Length::mm(150.0), Area::m2(20.0));
    case.moved = vec![moved("P1", 12.0, 3.0, [30.0, 20.0])];
    let dug = dig(&case);
    let rows = dug.rows.iter().filter_map(|r| r.trace.as_ref());
    let loads = dug.streams().into_iter().filter_map(|s| s.loads.as_ref()).map(|l| &l.trace);
    let streams = dug.streams().into_iter().flat_map(|s| &s.traces);
    let said = dug.findings.iter().filter_map(|f| f.trace.as_ref());
    let mut count = 0;
    for trace in rows.chain(loads).chain(streams).chain(said).chain(&dug.traces) {
        assert!(!trace.sheet().unwrap().lines.is_empty(), "{:?}", trace.working);
        count += 1;
    }
    assert!(count >= 12, "{count}");
}

#[test]
fn described_soils_find_their_row_by_the_noun() {
    for (described, row) in [
        ("firm silty clay", "clay"),
        ("clayey sand", "sand or gravel"),
        ("loose sand", "sand or gravel"),
        ("dark topsoil", "topsoil"),
        ("made ground", "loam"),
        ("stiff clay, with gravel", "clay"),
    ] {
        assert_eq!(factors(described).map(|f| f.name), Some(row), "{described}");
    }
    assert_eq!(factors("blue jelly"), None);
}

#[test]
fn a_balance_level_is_found_where_there_is_one_and_refused_where_there_is_none() {
    let over = |level: Level| {
        let mut case = clay();
        let rise = level.to_m() - 100.0;
        let (cut, fill) = ((1.0 - rise).max(0.0), (1.0 + rise).max(0.0));
        case.moved = vec![moved("P1", 13.5 * cut * cut, 13.5 * fill * fill, [13.5 * cut, 13.5 * fill])];
        Ok::<_, String>(subsoil_over(&case))
    };
    let found = balance(over, Level::m(99.0), Level::m(101.0)).unwrap();
    assert!(found.over.abs() <= Volume::litre(1.0), "{found:?}");
    assert!(found.level < Level::m(100.0), "clay shrinks, so the pad lies a little lower: {found:?}");
    assert!(found.trials < 30, "{found:?}");
    let none = balance(over, Level::m(100.5), Level::m(101.0)).unwrap_err().to_string();
    assert!(none.contains("short at the lowest") && none.contains("100.5"), "{none}");
    assert!(balance(over, Level::m(f64::NAN), Level::m(101.0)).is_err());
}

fn any_case() -> impl Strategy<Value = DigCase> {
    let element = (0.0f64..50.0, 0.0f64..50.0, 0.0f64..80.0, 0.0f64..80.0, 0.0f64..0.3, 0.0f64..0.3);
    let soil = prop_oneof!["loose sand", "firm clay", "loam", "broken rock"];
    let wall = (0.0f64..5.0, 0.0f64..5.0, 0.0f64..2.0, 0.0f64..2.0);
    (proptest::collection::vec(element, 0..4), soil, wall, 0.0f64..0.1, 0.0f64..0.3, 0.0f64..3.0, any::<bool>())
        .prop_map(|(elements, soil, wall, turf, topsoil, trench, fit)| {
            let mut case = DigCase::new(factors(&soil).expect("the table has the soil"));
            for (i, e) in elements.iter().enumerate() {
                let mut m = moved(&format!("P{i}"), e.0, e.1, [e.2, e.3]);
                (m.build_up, m.topsoil_back) = (Length::m(e.4), Length::m(e.5));
                case.moved.push(m);
            }
            case.walls.push(WallDug {
                wall: "W1".into(),
                zone_in_ground: Volume::m3(wall.0),
                zone_in_fill: Volume::m3(wall.1),
                cap: Volume::m3(wall.2),
                stone: Volume::m3(wall.0 + wall.1),
                working_room: Volume::m3(wall.3),
            });
            case.trenches.push(Trench {
                what: "outlet pipe".into(),
                deepest: Length::mm(600.0),
                dug: Volume::m3(trench),
                put_back: Volume::m3(0.6 * trench),
                stone: Volume::m3(0.3 * trench),
            });
            case.holes.push(("W1".into(), Volume::m3(0.5)));
            (case.turf, case.topsoil, case.fit_for_fill) = (Length::m(turf), Length::m(topsoil), fit);
            case
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn every_bank_volume_dug_is_used_or_left_over_and_every_place_filled_or_short(case in any_case()) {
        let dug = dig(&case);
        for s in dug.streams() {
            let k = s.factors.bank_to_compacted;
            prop_assert!((s.dug - s.used - s.over).abs() <= Volume::m3(1e-9));
            prop_assert!((s.placed - s.used * k - s.short).abs() <= Volume::m3(1e-9));
            prop_assert!(s.over >= Volume::ZERO && s.short >= Volume::m3(-1e-12) && s.used >= Volume::m3(-1e-12));
        }
        let rows: Volume = dug.rows.iter().map(|r| r.dug).sum();
        prop_assert!((rows - dug.dug()).abs() <= Volume::m3(1e-9));
    }

    #[test]
    fn the_quick_sum_for_balancing_is_the_account(case in any_case()) {
        let mut case = case;
        case.fit_for_fill = true;
        let s = dig(&case).subsoil;
        let slow = s.over - s.factors.bank_of_compacted(s.short);
        prop_assert!((subsoil_over(&case) - slow).abs() <= Volume::m3(1e-9));
    }

    #[test]
    fn stripping_and_building_up_move_the_net_volume_by_their_thickness(
        cut in 0.0f64..50.0, fill in 0.0f64..50.0, a in 0.0f64..80.0, b in 0.0f64..80.0, s in 0.0f64..0.4, on in 0.0f64..0.4,
    ) {
        let mut case = clay();
        case.topsoil = Length::m(s);
        let mut m = moved("P1", cut, fill, [a, b]);
        m.build_up = Length::m(on);
        case.moved = vec![m];
        let net: f64 = dig(&case).rows.iter().filter(|r| r.earth == Earth::Subsoil)
            .map(|r| (r.dug - r.placed).to_m3()).sum();
        prop_assert!((net - (cut - fill + (on - s) * (a + b))).abs() < 1e-9);
    }

    #[test]
    fn factors_there_and_back_give_the_same_volume(v in 0.0f64..1000.0) {
        for f in groundhold_dig::FACTORS {
            let v = Volume::m3(v);
            prop_assert!((f.bank_of_compacted(f.compacted(v)) - v).abs() <= Volume::m3(1e-9));
            prop_assert!((f.bank_of_loose(f.loose(v)) - v).abs() <= Volume::m3(1e-9));
            let compacted = f.compacted(v);
            prop_assert!((f.loose_of_compacted(compacted) - f.loose(v)).abs() <= Volume::m3(1e-9));
        }
    }

    #[test]
    fn more_soil_is_never_fewer_loads_and_never_less_ground_under_the_heap(v in 0.0f64..200.0, more in 0.0f64..20.0) {
        let soil = factors("clay").unwrap();
        let n = |v: f64| loads(Volume::m3(v), &soil, Vehicle::default()).unwrap().count;
        prop_assert!(n(v + more) >= n(v));
        let a = |v: f64| heap("soil", Volume::m3(v), Slope::one_in(1.5), Length::m(1.5)).footprint;
        prop_assert!(a(v + more) >= a(v) - Area::m2(1e-9));
    }
}

#[test]
fn rock_is_dug_by_itself_never_used_as_fill_and_named() {
    let mut case = clay();
    let mut pad = moved("P1", 10.0, 4.0, [20.0, 8.0]);
    pad.rock = Volume::m3(3.0);
    case.moved = vec![pad];
    let dug = dig(&case);
    assert!((dug.rock.dug.to_m3() - 3.0).abs() < 1e-12 && (dug.rock.over.to_m3() - 3.0).abs() < 1e-12);
    assert!((dug.subsoil.dug.to_m3() - 7.0).abs() < 1e-12);
    assert_eq!(dug.streams().len(), 4);
    assert!(codes(&case).contains(&"D-014"));
    case.moved[0].rock = Volume::m3(30.0);
    assert!((dig(&case).rock.dug.to_m3() - 10.0).abs() < 1e-12, "no more rock than there is cut");
}

#[test]
fn turves_are_counted_cut_and_laid_and_the_rest_is_over() {
    let mut case = clay();
    case.turf = Length::mm(40.0);
    let mut pad = moved("P1", 5.0, 0.0, [27.0, 0.0]);
    pad.turf_back = Area::m2(5.4);
    case.moved = vec![pad];
    let dug = dig(&case);
    let t = dug.turves.unwrap();
    assert_eq!((t.pieces_cut, t.pieces_laid, t.pieces_over), (100, 22, 78));
    assert!((dug.turf.over.to_m3() - 0.04 * 21.6).abs() < 1e-12);
}

#[test]
fn wet_soil_weighs_more_and_may_take_more_loads_but_no_more_room() {
    let mut case = clay();
    case.moved = vec![moved("P1", 10.0, 0.0, [20.0, 0.0])];
    let dry = dig(&case);
    case.moisture = Some(groundhold_quantity::Share::percent(38.0));
    let wet = dig(&case);
    assert!((wet.subsoil.over_mass / dry.subsoil.over_mass - 1.38 / 1.20).abs() < 1e-12);
    assert_eq!(wet.subsoil.over_loose, dry.subsoil.over_loose);
}

#[test]
fn a_trench_is_named_at_the_limit_of_the_region_or_at_five_feet() {
    let mut case = clay();
    let trench = |m: f64| Trench {
        what: "outlet pipe of W1".into(),
        deepest: Length::m(m),
        dug: Volume::m3(1.0),
        put_back: Volume::m3(0.5),
        stone: Volume::m3(0.4),
    };
    case.trenches = vec![trench(1.53)];
    assert!(codes(&case).contains(&"D-016"));
    case.trenches = vec![trench(1.50)];
    assert!(!codes(&case).contains(&"D-016"));
    case.unsupported = Some(UnsupportedTrigger { most: Length::m(1.2), source: "invented rule, 2026".into() });
    assert!(codes(&case).contains(&"D-016"));
}
