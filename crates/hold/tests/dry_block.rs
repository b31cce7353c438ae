//! Do walls of blocks stacked dry keep what statics, hand calculations and common sense say of them?
#![allow(missing_docs, clippy::unwrap_used)]

mod walls;

use groundhold_earth::basis::{AASHTO_LRFD, EN1997_DA1, WORKING_STRESS};
use groundhold_hold::systems::dry_block::{DryBlockSpec, GridSpec, Grip};
use groundhold_hold::*;
use groundhold_quantity::{Angle, Length, LineForce, Mass, Pressure, Share, Slope, Units, Vector, math};
use proptest::prelude::*;
use walls::{mm, station};

fn case(stations: Vec<Station>, spec: DryBlockSpec) -> WallCase {
    WallCase { spec: Spec::DryBlock(spec), ..walls::case(stations, walls::spec()) }
}

/// A wall of one height on level ground, 6 m long.
fn straight(retained: f64, spec: DryBlockSpec) -> WallCase {
    let (b, f) = (100.0 + retained, 100.0);
    case(vec![station(0.0, b, f, b), station(6.0, b, f, b)], spec)
}

fn kn(v: f64) -> LineForce {
    LineForce::kn_per_m(v)
}

/// Grid that was tested with its blocks.
fn grid() -> GridSpec {
    GridSpec {
        laid: true,
        creep: 2.4,
        damage: 1.3,
        age: 1.15,
        grip: Grip { base: Some(kn(5.0)), angle: Some(Angle::deg(30.0)), most: Some(kn(14.0)) },
        ..DryBlockSpec::blank().grid
    }
}

fn with_grid() -> DryBlockSpec {
    DryBlockSpec { grid: grid(), ..DryBlockSpec::blank() }
}

/// Courses of 200 mm from the ground in front, without cap: nothing but what a hand calculation has.
fn plain(spec: DryBlockSpec) -> DryBlockSpec {
    DryBlockSpec { bury: Length::ZERO, cap: Length::ZERO, setback: Length::ZERO, ..spec }
}

fn worst(v: &Verdict, kind: CheckKind, state: LoadCase) -> f64 {
    v.checks.iter().filter(|c| c.kind == kind && c.case == state).map(|c| c.utilisation).fold(0.0, f64::max)
}

fn found(v: &Verdict, kind: CheckKind) -> &Check {
    let all = v.checks.iter().filter(|c| c.kind == kind && c.case == LoadCase::Drained);
    all.max_by(|a, b| a.utilisation.total_cmp(&b.utilisation)).unwrap()
}

#[test]
fn three_courses_without_grid_slide_turn_and_press_as_by_hand() {
    // Solid blocks of 0.2 · 0.4 · 0.3 m and 55.3 kg: 22.604 kN/m³, so 0.18 m² of wall weigh 4.0687 kN/m at 0.15 m.
    let solid = DryBlockSpec { mass: Mass::kg(55.3), hollow: Share::ZERO, ..plain(DryBlockSpec::blank()) };
    let (l, v) = hold(&straight(0.6, solid)).unwrap();
    assert_eq!(l.strips[0].courses, 3);
    let weight = 55.3 * 9.81 / 1000.0 / 0.024 * 0.18;
    // ½ · 18 · 0.36/3 = 1.08 kN/m at 0.2 m.
    let s = found(&v, CheckKind::Sliding);
    assert!((s.demand - 1.08).abs() < 1e-6);
    // A smooth underside rubs with two thirds of 30°.
    assert!((s.capacity - weight * math::tan(20f64.to_radians()) / 1.5).abs() < 1e-6, "{s:?}");
    let o = found(&v, CheckKind::Overturning);
    assert!((o.demand - 0.216).abs() < 1e-6 && (o.capacity - weight * 0.15 / 1.5).abs() < 1e-6);
    // The lower joint: two courses on tan 30°, against ½ · 18 · 0.16/3.
    let j = found(&v, CheckKind::JointSliding);
    assert!((j.demand - 0.48).abs() < 1e-6 && (j.capacity - weight * 2.0 / 3.0 * 0.57735 / 1.5).abs() < 1e-4);
    assert!(v.checks.iter().all(|c| !matches!(c.kind, CheckKind::GridStrength | CheckKind::GridPullout)));
}

#[test]
fn lips_in_the_joints_hold_beside_friction_and_a_pad_spreads_the_load() {
    let of = |spec: DryBlockSpec| hold(&straight(0.6, spec)).unwrap().1;
    let bare = of(plain(DryBlockSpec::blank()));
    let lip = of(DryBlockSpec { lip: kn(3.0), ..plain(DryBlockSpec::blank()) });
    let (a, b) = (found(&bare, CheckKind::JointSliding), found(&lip, CheckKind::JointSliding));
    assert!((b.capacity - a.capacity - 3.0 / 1.5).abs() < 1e-6, "{} {}", a.capacity, b.capacity);
    let thick = of(DryBlockSpec { pad: mm(300.0), ..plain(DryBlockSpec::blank()) });
    assert!(found(&thick, CheckKind::Bearing).capacity > found(&bare, CheckKind::Bearing).capacity * 1.5);
}

#[test]
fn layers_of_grid_are_pulled_as_by_hand() {
    // Five courses of 0.2 m, layers on the first, third; 1.0 m of sand at 18 kN/m³ and 30°.
    let spec = DryBlockSpec {
        grid: GridSpec { length: Some(mm(1800.0)), every: Some(2), ..grid() },
        ..plain(DryBlockSpec::blank())
    };
    let (l, v) = hold(&straight(1.0, spec)).unwrap();
    assert_eq!((l.strips[0].courses, l.strips[0].width), (5, mm(1800.0)));
    // Lowest: from the base to half way, 0.6 to 1.0 m below the ground: 18/3 · 0.8 · 0.4 = 1.92 kN/m.
    let strength = found(&v, CheckKind::GridStrength);
    assert!((strength.demand - 1.92).abs() < 1e-6, "{strength:?}");
    // 35/(2.4 · 1.3 · 1.15) = 9.755 kN/m, over 1.5.
    assert!((strength.capacity - 35.0 / (2.4 * 1.3 * 1.15) / 1.5).abs() < 1e-6);
    // The grip asks most there too: 5 kN/m and 0.8 m of blocks at 20.01 kN/m³ on tan 30°.
    let weight = (36.0 * 9.81 / 1000.0 / 0.024 + 15.0 * 0.35) * 0.3 * 0.8;
    let grip = found(&v, CheckKind::GridConnection);
    assert!((grip.capacity - (5.0 + weight * 0.57735) / 1.5).abs() < 1e-3, "{grip:?}");
    // On the fourth course: 0.2 m below the ground, 0.8 m above the base: wedge 0.8 · tan 30° = 0.462 m, 1.338 m behind it.
    let out = found(&v, CheckKind::GridPullout);
    let top = 1.8 - 0.8 * 0.57735;
    let long = 1.8 - 0.6 * 0.57735;
    assert!((out.capacity - top * 1000.0).abs() < 1.0 || (out.capacity - long * 1000.0).abs() < 1.0, "{out:?}");
}

#[test]
fn the_reinforced_block_slides_and_turns_as_one_body_by_hand() {
    // 1.0 m high, 2.0 m long: fill of 18 kN/m³ behind 0.3 m of blocks, the lowest course mixed with the fill it spans.
    let spec = DryBlockSpec {
        grid: GridSpec { length: Some(mm(2000.0)), every: Some(1), ..grid() },
        ..plain(DryBlockSpec::blank())
    };
    let (_, v) = hold(&straight(1.0, spec)).unwrap();
    let block = 36.0 * 9.81 / 1000.0 / 0.024 + 15.0 * 0.35;
    let lowest = 0.2 * 2.0 * 18.0;
    let above = 0.8 * (0.3 * block + 1.7 * 18.0);
    let s = found(&v, CheckKind::Sliding);
    assert!((s.demand - 3.0).abs() < 1e-6, "{s:?}");
    assert!((s.capacity - (lowest + above) * 0.57735 / 1.5).abs() < 1e-3, "{s:?}");
    let o = found(&v, CheckKind::Overturning);
    let restoring = lowest * 1.0 + 0.8 * (0.3 * block * 0.15 + 1.7 * 18.0 * 1.15);
    assert!((o.demand - 1.0).abs() < 1e-6 && (o.capacity - restoring / 1.5).abs() < 1e-3, "{o:?}");
    // On the lowest layer: 0.8 m of it, on tan 20°.
    let g = found(&v, CheckKind::GridSliding);
    let course = 0.2 * 2.0 * 18.0;
    let rest = 0.6 * (0.3 * block + 1.7 * 18.0);
    let by_hand = (course + rest) * math::tan(20f64.to_radians()) / 1.5;
    let share = 0.5 * 6.0 * 0.64 / by_hand;
    assert!(g.utilisation >= share - 1e-3, "{g:?} {share}");
}

#[test]
fn no_more_layers_are_laid_than_needed_and_no_longer_ones() {
    let (l, v) = hold(&straight(1.4, with_grid())).unwrap();
    assert!(v.checks.iter().all(|c| !c.fails()), "{:?}", v.findings);
    let every = l.headline.rsplit("every ").next().unwrap();
    let n: u32 = if every == "course" { 1 } else { every.split(' ').next().unwrap().parse().unwrap() };
    let width = l.strips[0].width;
    let shorter = GridSpec { length: Some(width - mm(100.0)), every: Some(n), ..grid() };
    let least = (l.strips[0].top - l.strips[0].base) * 0.7;
    if width - mm(100.0) >= least {
        let spec = DryBlockSpec { grid: shorter, ..DryBlockSpec::blank() };
        assert!(hold(&straight(1.4, spec)).unwrap().1.checks.iter().any(Check::fails));
    }
    if n < 3 {
        let spec = DryBlockSpec { grid: GridSpec { every: Some(n + 1), ..grid() }, ..DryBlockSpec::blank() };
        assert!(hold(&straight(1.4, spec)).unwrap().1.checks.iter().any(Check::fails));
    }
    // A low end needs no grid at all.
    let low = hold(&straight(0.4, with_grid())).unwrap().0;
    assert_eq!(low.strips[0].width, mm(300.0));
    assert!(low.bulk.iter().all(|b| !b.item.starts_with("geogrid")));
}

#[test]
fn what_is_bought_is_what_lies_there() {
    let (l, _) = hold(&straight(1.0, DryBlockSpec::blank())).unwrap();
    // Six courses of 6 m in blocks of 0.4 m: 15 whole each, or 14 and two halves in every second one.
    assert!(l.facts[0].1.starts_with("87 whole, 6 halves, 0 cut to length; 90 to buy"), "{:?}", l.facts[0]);
    let Amount::Count(n) = l.bulk[0].amount else { panic!("blocks are counted") };
    assert!((n - 90.0).abs() < 1e-9);
    let seen: f64 = l
        .faces
        .iter()
        .filter(|f| f.title.starts_with("course"))
        .map(|f| (f.outline[1].0 - f.outline[0].0).to_m() * (f.outline[1].1 - f.outline[2].1).to_m())
        .sum();
    assert!((seen - 6.0 * 1.2).abs() < 1e-6, "the blocks in the drawing cover the face: {seen}");
}

#[test]
fn a_grid_without_a_test_is_said_and_one_with_it_is_not() {
    let untested = DryBlockSpec { grid: GridSpec { grip: Grip::default(), ..grid() }, ..DryBlockSpec::blank() };
    let has = |s: DryBlockSpec| hold(&straight(1.0, s)).unwrap().1.findings.iter().any(|f| f.kind.code == "H-089");
    assert!(has(untested) && !has(with_grid()) && !has(DryBlockSpec::blank()));
}

#[test]
fn every_remedy_that_is_ours_mends_what_it_is_offered_for() {
    let weak = DryBlockSpec {
        grid: GridSpec { ultimate: kn(12.0), length: Some(mm(1100.0)), every: Some(3), ..grid() },
        ..DryBlockSpec::blank()
    };
    let mut codes = vec![];
    for spec in [DryBlockSpec { pad: Length::ZERO, ..DryBlockSpec::blank() }, weak] {
        let c = straight(1.15, spec);
        let (_, v) = hold(&c).unwrap();
        for f in &v.findings {
            for r in f.remedies.iter().filter(|r| !r.change.is_empty()) {
                let mut c = c.clone();
                for a in &r.change {
                    c.spec.change(a.field.strip_prefix("spec.").unwrap(), &a.value).unwrap();
                }
                let again = hold(&c).unwrap().1;
                assert!(again.findings.iter().all(|g| g.kind.code != f.kind.code), "{}: {}", f.says, r.says);
                codes.push(f.kind.code);
            }
        }
    }
    assert!(codes.len() > 4 && codes.contains(&"H-086"), "{codes:?}");
}

#[test]
fn sizes_that_cannot_be_built_are_refused_with_what_was_expected() {
    let refused = |spec: DryBlockSpec| hold(&straight(1.0, spec)).unwrap_err().to_string();
    let light = refused(DryBlockSpec { mass: Mass::kg(10.0), ..DryBlockSpec::blank() });
    assert!(light.contains("the mass of a block") && light.contains("1200 to 2800"), "{light}");
    let far = refused(DryBlockSpec { grid: GridSpec { every: Some(4), ..grid() }, ..DryBlockSpec::blank() });
    assert!(far.contains("at most 3"), "{far}");
    let steps = refused(DryBlockSpec { setback: mm(160.0), ..DryBlockSpec::blank() });
    assert!(steps.contains("the setback"), "{steps}");
    let mut spec = Spec::DryBlock(DryBlockSpec::blank());
    assert!(spec.change("mass", "1 kg").unwrap_err().contains("2 to 3000 kg"));
    assert!(spec.change("grid_creep", "9").unwrap_err().contains("1 to 5"));
    assert!(spec.change("connection", "5 kN/m").is_ok() && spec.change("grid", "layers").is_ok());
}

/// Without and with grid, its length and its layers given.
fn fixed(which: usize) -> DryBlockSpec {
    match which {
        0 => DryBlockSpec::blank(),
        _ => DryBlockSpec {
            grid: GridSpec { length: Some(mm(1900.0)), every: Some(2), ..grid() },
            ..DryBlockSpec::blank()
        },
    }
}

const ALL: [CheckKind; 8] = [
    CheckKind::Sliding,
    CheckKind::Overturning,
    CheckKind::Bearing,
    CheckKind::JointSliding,
    CheckKind::GridStrength,
    CheckKind::GridPullout,
    CheckKind::GridConnection,
    CheckKind::GridSliding,
];

#[test]
fn a_situation_that_must_be_met_pulls_the_layers_too() {
    let mut c = straight(1.2, fixed(1));
    c.shaking = Some(Share::fraction(0.15));
    c.must_meet = vec![LoadCase::Earthquake, LoadCase::MachineBehind, LoadCase::WetWinter];
    let v = hold(&c).unwrap().1;
    let pull = |s: LoadCase| {
        let of = v.checks.iter().filter(|k| k.kind == CheckKind::GridStrength && k.case == s);
        of.map(|k| k.demand).fold(0.0, f64::max)
    };
    for state in [LoadCase::Earthquake, LoadCase::MachineBehind, LoadCase::WetWinter] {
        assert!(pull(state) > pull(LoadCase::Drained) * 1.02, "{state:?} {} {}", pull(state), pull(LoadCase::Drained));
    }
}

#[test]
fn a_quick_look_lays_out_and_checks_the_same_without_remedies() {
    let c = straight(1.6, with_grid());
    let ((l, v), (k, q)) = (hold(&c).unwrap(), hold_quick(&c).unwrap());
    assert_eq!((&l, walls::asked(&v).len()), (&k, q.checks.len()));
    let codes = |v: &Verdict| v.findings.iter().map(|f| f.kind.code).filter(|c| *c != "H-042").collect::<Vec<_>>();
    assert_eq!(codes(&v), codes(&q));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn more_ground_behind_the_same_wall_is_never_safer(which in 0usize..2, retained in 0.5f64..1.0, more in 0.0f64..0.3) {
        let of = |behind: f64| {
            let stations = vec![station(0.0, 100.0 + behind, 100.0, 101.3), station(4.0, 100.0 + behind, 100.0, 101.3)];
            hold_quick(&case(stations, fixed(which))).unwrap().1
        };
        let (less, higher) = (of(retained), of(retained + more));
        // Sliding of the reinforced body gains weight with its fill: only where nothing but blocks stand is it sure to fall.
        for kind in [CheckKind::Overturning, CheckKind::JointSliding, CheckKind::GridStrength] {
            prop_assert!(worst(&higher, kind, LoadCase::Drained) >= worst(&less, kind, LoadCase::Drained) - 1e-9, "{kind:?}");
        }
    }

    #[test]
    fn a_higher_wall_of_more_courses_is_never_safer(which in 0usize..2, courses in 3u32..6) {
        let of = |n: u32| {
            let spec = plain(fixed(which));
            hold_quick(&straight(0.2 * f64::from(n), spec)).unwrap().1
        };
        let (less, higher) = (of(courses), of(courses + 2));
        for kind in [CheckKind::Sliding, CheckKind::Overturning, CheckKind::GridStrength, CheckKind::GridSliding] {
            prop_assert!(worst(&higher, kind, LoadCase::Drained) >= worst(&less, kind, LoadCase::Drained) - 1e-9, "{kind:?}");
        }
    }

    #[test]
    fn more_water_behind_a_blocked_drain_is_never_safer(which in 0usize..2, retained in 0.5f64..1.2, low in 0.1f64..0.5) {
        let mut c = straight(retained, fixed(which));
        let at = |c: &mut WallCase, share: f64| {
            c.water.blocked = Share::fraction(share);
            hold_quick(c).unwrap().1
        };
        let (less, more) = (at(&mut c, low), at(&mut c, low * 2.0));
        for kind in ALL {
            if kind == CheckKind::Bearing { continue }
            prop_assert!(worst(&more, kind, LoadCase::DrainBlocked) >= worst(&less, kind, LoadCase::DrainBlocked) - 1e-9, "{kind:?}");
        }
    }

    #[test]
    fn more_load_behind_is_never_safer(which in 0usize..2, retained in 0.5f64..1.2, q in 0.0f64..8.0, basis in 0usize..3) {
        let mut c = straight(retained, fixed(which));
        c.basis = [&WORKING_STRESS, &EN1997_DA1, &AASHTO_LRFD][basis];
        let bare = hold_quick(&c).unwrap().1;
        c.loads.push(Load { value: Pressure::kpa(q), from: Length::ZERO, to: Length::m(f64::INFINITY), permanent: true, what: "heap".into() });
        let loaded = hold_quick(&c).unwrap().1;
        for kind in ALL {
            prop_assert!(worst(&loaded, kind, LoadCase::Drained) >= worst(&bare, kind, LoadCase::Drained) - 1e-9, "{kind:?}");
        }
    }

    #[test]
    fn a_longer_grid_is_never_pulled_out_sooner(retained in 0.6f64..1.4, long in 1.2f64..2.5) {
        let of = |l: f64| {
            let spec = DryBlockSpec { grid: GridSpec { length: Some(Length::m(l)), every: Some(2), ..grid() }, ..DryBlockSpec::blank() };
            hold_quick(&straight(retained, spec)).unwrap().1
        };
        let (short, long) = (of(long), of(long + 0.3));
        for kind in [CheckKind::GridPullout, CheckKind::GridSliding, CheckKind::Sliding, CheckKind::Overturning] {
            prop_assert!(worst(&long, kind, LoadCase::Drained) <= worst(&short, kind, LoadCase::Drained) + 1e-9, "{kind:?}");
        }
    }

    #[test]
    fn a_mirrored_wall_and_other_units_give_the_same_answer(which in 0usize..2, retained in 0.5f64..1.2, rise in 0.0f64..0.25) {
        let mut c = straight(retained, fixed(which));
        for s in &mut c.stations { s.slope_behind = Slope::ratio(rise) }
        let mut mirrored = c.clone();
        mirrored.units = Units::Feet;
        for s in &mut mirrored.stations {
            s.facing = Vector::m(0.0, 1.0);
            s.at.y = -s.at.y;
        }
        let (a, b) = (hold_quick(&c).unwrap().1, hold_quick(&mirrored).unwrap().1);
        prop_assert_eq!(a.checks.len(), b.checks.len());
        for (x, y) in a.checks.iter().zip(&b.checks) {
            prop_assert_eq!((x.kind, x.demand.to_bits(), x.capacity.to_bits()), (y.kind, y.demand.to_bits(), y.capacity.to_bits()));
        }
    }

    #[test]
    fn a_hair_more_ground_changes_little(which in 0usize..2, retained in 0.6f64..1.1) {
        let of = |behind: f64| {
            let stations = vec![station(0.0, 100.0 + behind, 100.0, 101.3), station(4.0, 100.0 + behind, 100.0, 101.3)];
            hold_quick(&case(stations, fixed(which))).unwrap().1
        };
        let (here, near) = (of(retained), of(retained + 1e-4));
        for kind in [CheckKind::Sliding, CheckKind::GridStrength, CheckKind::GridConnection, CheckKind::GridSliding] {
            let (x, y) = (worst(&here, kind, LoadCase::Drained), worst(&near, kind, LoadCase::Drained));
            prop_assert!((x - y).abs() <= 0.02 * x.max(0.1), "{kind:?} {x} {y}");
        }
    }

    #[test]
    fn layers_are_found_that_hold_or_it_is_said_and_every_figure_opens(retained in 0.3f64..1.9, rise in 0.0f64..0.3, basis in 0usize..3) {
        let mut c = straight(retained, with_grid());
        c.basis = [&WORKING_STRESS, &EN1997_DA1, &AASHTO_LRFD][basis];
        for s in &mut c.stations { s.slope_behind = Slope::ratio(rise) }
        let (_, v) = hold_quick(&c).unwrap();
        let fails = v.checks.iter().any(|c| c.fails() && c.kind != CheckKind::Slip);
        let said = v.findings.iter().any(|f| ("H-025"..="H-031").contains(&f.kind.code) || ("H-085"..="H-088").contains(&f.kind.code));
        prop_assert_eq!(fails, said);
        for t in v.checks.iter().flat_map(|c| &c.traces) {
            prop_assert!(t.sheet().is_ok(), "{}: {:?}", t.working.name, t.sheet().err());
        }
    }
}
