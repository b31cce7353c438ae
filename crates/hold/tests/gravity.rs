//! Do walls that stand by their weight keep what statics, hand calculations and common sense say of them?
#![allow(missing_docs, clippy::unwrap_used)]

mod walls;

use groundhold_earth::basis::{EN1997_DA1, WORKING_STRESS};
use groundhold_hold::systems::dry_stone::DryStoneSpec;
use groundhold_hold::systems::gabion::{GabionSpec, Stepped};
use groundhold_hold::systems::mass_wall::{Made, MassWallSpec};
use groundhold_hold::*;
use groundhold_quantity::{Length, Level, Pressure, Slope, UnitWeight, Units, Vector};
use proptest::prelude::*;
use walls::{mm, station};

fn case(stations: Vec<Station>, spec: Spec) -> WallCase {
    WallCase { spec, ..walls::case(stations, walls::spec()) }
}

/// A wall of one height on level ground, 6 m long.
fn straight(retained: f64, spec: Spec) -> WallCase {
    let (b, f) = (100.0 + retained, 100.0);
    case(vec![station(0.0, b, f, b), station(6.0, b, f, b)], spec)
}

/// A block wall that stands on the ground in front without a footing.
fn bare(width: f64) -> Spec {
    Spec::MassWall(MassWallSpec {
        made: Made::Block,
        top_width: mm(width),
        base_width: Some(mm(width)),
        footing: Length::ZERO,
        toe: Length::ZERO,
        heel: Length::ZERO,
        bury: Length::ZERO,
        ..MassWallSpec::blank()
    })
}

fn judged(case: &WallCase) -> (Layout, Verdict) {
    hold(case).unwrap()
}

/// Capacity over demand with the wanted factor taken out again.
fn factor(v: &Verdict, kind: CheckKind, state: LoadCase, wanted: f64) -> f64 {
    let of = |c: &&Check| c.kind == kind && c.case == state;
    let worst = v.checks.iter().filter(of).max_by(|a, b| a.utilisation.total_cmp(&b.utilisation)).unwrap();
    worst.capacity / worst.demand * wanted
}

#[test]
fn a_block_wall_that_only_stands_there_has_the_factors_of_question_three() {
    for (width, by_hand) in [(100.0, 0.13), (215.0, 0.60), (440.0, 2.5)] {
        let (_, v) = judged(&straight(0.9, bare(width)));
        let found = factor(&v, CheckKind::Overturning, LoadCase::Drained, 1.5);
        assert!((found - by_hand).abs() <= 0.05 * by_hand, "{width}: {found}");
        assert_eq!(v.findings.iter().any(|f| f.kind.code == "H-026"), width < 400.0, "{width}");
    }
    let (_, v) = judged(&straight(0.9, bare(440.0)));
    let push = v.pushes.iter().find(|p| p.governs && p.case == LoadCase::Drained).unwrap();
    assert!((push.horizontal.to_kn_per_m() - 2.43).abs() < 0.001);
    // 8.316 kN/m on tan 30°, against 2.43 kN/m.
    assert!((factor(&v, CheckKind::Sliding, LoadCase::Drained, 1.5) - 8.316 * 0.57735 / 2.43).abs() < 0.01);
}

#[test]
fn baskets_a_metre_high_and_wide_slide_and_turn_as_by_hand() {
    let spec =
        GabionSpec { top_width: mm(1000.0), base_width: Some(mm(1000.0)), bury: Length::ZERO, ..GabionSpec::blank() };
    let (l, v) = judged(&straight(1.0, Spec::Gabion(spec)));
    assert_eq!((l.strips.len(), l.strips[0].courses), (1, 2));
    // 26 · 0.7 = 18.2 kN/m at half a metre; push ½ · 18 · 1²/3 = 3 kN/m at a third of a metre.
    assert!((factor(&v, CheckKind::Sliding, LoadCase::Drained, 1.5) - 18.2 * 0.57735 / 3.0).abs() < 1e-3);
    assert!((factor(&v, CheckKind::Overturning, LoadCase::Drained, 1.5) - 9.1).abs() < 1e-3);
    // The joint at half height: 9.1 kN/m on tan 35° against ½ · 18 · 0.5²/3 = 0.75 kN/m.
    let joint = factor(&v, CheckKind::JointSliding, LoadCase::Drained, 1.5);
    assert!((joint - 9.1 * 0.70021 / 0.75).abs() < 1e-2, "{joint}");
    let e = v.worst(CheckKind::Eccentricity).unwrap();
    // x = (9.1 − 1)/18.2 = 0.445 m, so 55 mm from the middle; a sixth is 167 mm.
    assert!((e.demand - 55.0).abs() < 0.1 && (e.capacity - 166.67).abs() < 0.1, "{e:?}");
}

#[test]
fn stepped_baskets_take_the_width_that_holds_and_no_course_is_wider_than_the_one_below() {
    for stepped in [Stepped::Back, Stepped::Front] {
        let spec = GabionSpec { stepped, ..GabionSpec::blank() };
        let c = straight(1.45, Spec::Gabion(spec.clone()));
        let (l, v) = judged(&c);
        assert!(l.strips[0].width > spec.top_width, "{stepped:?}");
        assert!(v.checks.iter().all(|c| !c.fails()), "{stepped:?}");
        let narrower = Spec::Gabion(GabionSpec { base_width: Some(l.strips[0].width - mm(500.0)), ..spec });
        assert!(judged(&straight(1.45, narrower)).1.checks.iter().any(Check::fails), "{stepped:?}");
        let baskets: f64 = l
            .bulk
            .iter()
            .filter(|b| b.item.starts_with("basket ") && b.what.contains("lids"))
            .map(|b| {
                let Amount::Count(n) = b.amount else { panic!("baskets are counted") };
                n
            })
            .sum();
        assert_eq!(baskets, 3.0 * l.strips[0].courses as f64);
    }
}

#[test]
fn a_base_steps_in_whole_courses_with_the_ground_and_the_top_never_lies_below_what_is_wanted() {
    let stations = (0..=6).map(|i| {
        let f = 100.0 + 0.3 * f64::from(i);
        station(2.0 * f64::from(i), f + 0.9, f, f + 0.95)
    });
    let c = case(stations.collect(), Spec::Gabion(GabionSpec::blank()));
    let (l, _) = judged(&c);
    assert!(l.strips.len() > 2);
    for s in &l.strips {
        assert!((s.front - s.base).to_mm() > 199.0, "{s:?}");
        let steps = (s.base - l.strips[0].base).to_m() / 0.5;
        assert!((steps - steps.round()).abs() < 1e-6, "{s:?}");
        let wanted = Line::new(&c.stations)
            .over(s.chainage.0, s.chainage.1)
            .iter()
            .map(|g| g.wanted_top)
            .reduce(Level::max)
            .unwrap();
        assert!(s.top >= wanted - mm(3.0), "{s:?}");
    }
}

#[test]
fn every_remedy_that_is_ours_mends_what_it_is_offered_for() {
    let weak = [
        Spec::Gabion(GabionSpec { base_width: Some(mm(500.0)), ..GabionSpec::blank() }),
        Spec::DryStone(DryStoneSpec { base_width: Some(mm(420.0)), ..DryStoneSpec::blank() }),
        Spec::MassWall(MassWallSpec {
            base_width: Some(mm(300.0)),
            toe: mm(50.0),
            heel: Length::ZERO,
            ..MassWallSpec::blank()
        }),
    ];
    let mut mended = 0;
    for spec in weak {
        let c = straight(1.4, spec);
        let (_, v) = judged(&c);
        let wanting: Vec<_> = v.findings.iter().filter(|f| ("H-025"..="H-031").contains(&f.kind.code)).collect();
        assert!(!wanting.is_empty(), "{:?}", c.spec);
        for f in wanting {
            assert!(!f.remedies.is_empty(), "{}", f.says);
            for r in f.remedies.iter().filter(|r| !r.change.is_empty()) {
                let mut c = c.clone();
                for a in &r.change {
                    c.spec.change(a.field.strip_prefix("spec.").unwrap(), &a.value).unwrap();
                }
                let again = judged(&c).1;
                assert!(again.findings.iter().all(|g| g.kind.code != f.kind.code), "{}: {}", f.says, r.says);
                mended += 1;
            }
        }
    }
    assert!(mended > 5, "{mended}");
}

#[test]
fn water_behind_a_blocked_drain_lifts_the_base_and_is_never_better_than_none() {
    let (_, v) = judged(&straight(1.0, Spec::MassWall(MassWallSpec::blank())));
    for kind in [CheckKind::Sliding, CheckKind::Overturning, CheckKind::Bearing] {
        let of = |s: LoadCase| {
            v.checks
                .iter()
                .filter(|c| c.kind == kind && c.case == s)
                .map(|c| c.utilisation * if s == LoadCase::Drained { 1.2 / 1.5 } else { 1.0 })
                .fold(0.0, f64::max)
        };
        if kind != CheckKind::Bearing {
            assert!(of(LoadCase::DrainBlocked) > of(LoadCase::Drained), "{kind:?}");
        }
    }
    assert!(v.checks.iter().any(|c| c.traces.iter().any(|t| t.working.name == "walls/net-weight")));
    assert!(v.checks.iter().filter(|c| c.case == LoadCase::DrainBlocked).all(|c| !c.governs));
    // Without a drain, water is the rule.
    let mut c = straight(1.0, Spec::MassWall(MassWallSpec::blank()));
    c.water = Water::UNDRAINED;
    assert!(judged(&c).1.checks.iter().any(|c| c.case == LoadCase::DrainBlocked && c.governs));
}

#[test]
fn sizes_that_cannot_be_built_are_refused_with_what_was_expected() {
    let narrow = MassWallSpec { top_width: mm(400.0), base_width: Some(mm(300.0)), ..MassWallSpec::blank() };
    let said = hold(&straight(0.9, Spec::MassWall(narrow))).unwrap_err().to_string();
    assert!(
        said.contains("the width on the footing is 300 mm, expected at least the width at the top, 400 mm"),
        "{said}"
    );
    let thin = MassWallSpec { footing: mm(100.0), toe: mm(150.0), ..MassWallSpec::blank() };
    assert!(
        hold(&straight(0.9, Spec::MassWall(thin)))
            .unwrap_err()
            .to_string()
            .contains("at least as thick as it projects")
    );
}

/// A system by number, with its base as wide as given.
fn spec(which: usize, base: f64) -> Spec {
    let base = Some(Length::m(base));
    match which {
        0 => Spec::Gabion(GabionSpec { base_width: base, ..GabionSpec::blank() }),
        1 => Spec::DryStone(DryStoneSpec { base_width: base, ..DryStoneSpec::blank() }),
        _ => Spec::MassWall(MassWallSpec { base_width: base, ..MassWallSpec::blank() }),
    }
}

fn worst(v: &Verdict, kind: CheckKind, state: LoadCase) -> f64 {
    v.checks.iter().filter(|c| c.kind == kind && c.case == state).map(|c| c.utilisation).fold(0.0, f64::max)
}

const OUTSIDE: [CheckKind; 4] =
    [CheckKind::Sliding, CheckKind::Overturning, CheckKind::Eccentricity, CheckKind::Bearing];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn more_load_behind_is_never_safer(which in 0usize..3, retained in 0.4f64..1.3, q in 0.0f64..10.0, da1: bool) {
        let mut c = straight(retained, spec(which, 0.8));
        if da1 { c.basis = &EN1997_DA1 }
        let bare = judged(&c).1;
        c.loads.push(Load { value: Pressure::kpa(q), from: Length::ZERO, to: Length::m(f64::INFINITY), permanent: true, what: "heap".into() });
        let loaded = judged(&c).1;
        for kind in OUTSIDE {
            prop_assert!(worst(&loaded, kind, LoadCase::Drained) >= worst(&bare, kind, LoadCase::Drained) - 1e-9, "{kind:?}");
        }
    }

    #[test]
    fn more_water_behind_a_blocked_drain_is_never_safer(which in 0usize..3, retained in 0.4f64..1.3, low in 0.1f64..0.5) {
        let mut c = straight(retained, spec(which, 1.0));
        let at = |c: &mut WallCase, share: f64| {
            c.water.blocked = groundhold_quantity::Share::fraction(share);
            judged(c).1
        };
        let (less, more) = (at(&mut c, low), at(&mut c, low * 2.0));
        for kind in [CheckKind::Sliding, CheckKind::Overturning, CheckKind::Eccentricity] {
            prop_assert!(worst(&more, kind, LoadCase::DrainBlocked) >= worst(&less, kind, LoadCase::DrainBlocked) - 1e-9);
        }
    }

    #[test]
    fn more_ground_behind_the_same_wall_is_never_safer(which in 0usize..3, retained in 0.3f64..1.0, more in 0.0f64..0.3) {
        let of = |behind: f64| {
            let stations = vec![station(0.0, 100.0 + behind, 100.0, 101.3), station(4.0, 100.0 + behind, 100.0, 101.3)];
            judged(&case(stations, spec(which, 0.8))).1
        };
        let (less, higher) = (of(retained), of(retained + more));
        // Not the eccentricity: a wall that is hardly pushed stands on its heel, and more push brings the resultant inwards.
        for kind in [CheckKind::Sliding, CheckKind::Overturning] {
            prop_assert!(worst(&higher, kind, LoadCase::Drained) >= worst(&less, kind, LoadCase::Drained) - 1e-9);
        }
    }

    #[test]
    fn a_heavier_stone_never_turns_over_sooner(retained in 0.4f64..1.4, weight in 20.0f64..26.0) {
        let of = |w: f64| {
            let s = GabionSpec { base_width: Some(mm(1000.0)), stone: UnitWeight::kn_per_m3(w), ..GabionSpec::blank() };
            judged(&straight(retained, Spec::Gabion(s))).1
        };
        let (light, heavy) = (of(weight), of(weight + 2.0));
        for kind in [CheckKind::Sliding, CheckKind::Overturning] {
            prop_assert!(worst(&heavy, kind, LoadCase::Drained) <= worst(&light, kind, LoadCase::Drained) + 1e-9);
        }
    }

    #[test]
    fn a_mirrored_wall_and_other_units_give_the_same_answer(which in 0usize..3, retained in 0.4f64..1.3, rise in 0.0f64..0.3) {
        let mut c = straight(retained, spec(which, 0.9));
        for s in &mut c.stations { s.slope_behind = Slope::ratio(rise) }
        let mut mirrored = c.clone();
        mirrored.units = Units::Feet;
        for s in &mut mirrored.stations {
            s.facing = Vector::m(0.0, 1.0);
            s.at.y = -s.at.y;
        }
        let (a, b) = (judged(&c).1, judged(&mirrored).1);
        for (x, y) in a.checks.iter().zip(&b.checks) {
            prop_assert_eq!((x.kind, x.demand.to_bits(), x.capacity.to_bits()), (y.kind, y.demand.to_bits(), y.capacity.to_bits()));
        }
    }

    #[test]
    fn a_hair_more_of_anything_changes_little(which in 1usize..3, retained in 0.5f64..1.2, base in 0.6f64..1.2) {
        let of = |r: f64, b: f64| judged(&straight(r, spec(which, b))).1;
        let here = of(retained, base);
        for near in [of(retained, base + 1e-4)] {
            for kind in [CheckKind::Sliding, CheckKind::Overturning, CheckKind::Bearing] {
                let (x, y) = (worst(&here, kind, LoadCase::Drained), worst(&near, kind, LoadCase::Drained));
                prop_assert!((x - y).abs() <= 0.02 * x.max(0.1), "{kind:?} {x} {y}");
            }
        }
    }

    #[test]
    fn where_no_width_is_given_one_is_found_that_holds_or_it_is_said(which in 0usize..3, retained in 0.3f64..1.8, rise in 0.0f64..0.25) {
        let spec = match which {
            0 => Spec::Gabion(GabionSpec::blank()),
            1 => Spec::DryStone(DryStoneSpec::blank()),
            _ => Spec::MassWall(MassWallSpec::blank()),
        };
        let mut c = straight(retained, spec);
        for s in &mut c.stations { s.slope_behind = Slope::ratio(rise) }
        let (l, v) = judged(&c);
        let fails = v.checks.iter().any(|c| c.fails() && c.kind != CheckKind::Slip);
        let said = v.findings.iter().any(|f| ("H-025"..="H-031").contains(&f.kind.code));
        prop_assert_eq!(fails, said);
        // Every traced figure can be opened again.
        for t in v.checks.iter().flat_map(|c| &c.traces) {
            prop_assert!(t.sheet().is_ok(), "{}", t.working.name);
        }
        // What is bought is what the section holds.
        let counted = l.bulk.iter().all(|b| match b.amount {
            Amount::Count(n) => n >= 0.0,
            Amount::Volume(v) => v.to_m3() >= 0.0,
            Amount::Mass(m) => m.to_kg() >= 0.0,
            Amount::Length(x) => x.to_m() >= 0.0,
            Amount::Area(a) => a.to_m2() >= 0.0,
        });
        prop_assert!(counted);
    }
}

#[test]
fn both_bases_judge_every_system() {
    for basis in [&WORKING_STRESS, &EN1997_DA1] {
        for which in 0..3 {
            let mut c = straight(0.9, spec(which, 0.9));
            c.basis = basis;
            let (_, v) = judged(&c);
            for kind in OUTSIDE {
                let of: Vec<&Check> =
                    v.checks.iter().filter(|c| c.kind == kind && c.case == LoadCase::Drained).collect();
                assert_eq!(of.len(), basis.combinations.len(), "{kind:?} {}", basis.key);
            }
        }
    }
}
