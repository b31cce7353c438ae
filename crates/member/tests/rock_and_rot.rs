//! Do a socket in rock, a post as a beam and rotting timber behave as they must?

use groundhold_member::embed::{
    Case, Collar, GivesWay, Ground, GroundFactors, InRock, Method, OnRock, PostBeam, ROCK, Subgrade, beam_deflection,
    deflection, depths_by_method, factors_by_method, neighbour_of_left_out, on_rock, post_moment, push_taken,
    required_depth, resistance, rock, short_or_long, socket_needed, socket_resistance,
};
use groundhold_member::timber::{
    Ageing, Climate, Code, Durability, Effects, Section, grade, in_year, rot_of, used_up_in,
};
use groundhold_quantity::{Angle, Force, Length, Moment, Pressure, Slope, UnitWeight};
use proptest::prelude::*;

fn wall(ground: Ground) -> Case {
    Case {
        force: Force::kn(2.304),
        arm: Length::m(0.8 / 3.0),
        width: Length::mm(300.0),
        ground,
        presumptive: None,
        may_move: true,
        held_at_ground: false,
        neglected: Length::ZERO,
        front_fall: Slope::LEVEL,
        spacing: None,
        retained: None,
        factor: 1.5,
    }
}
fn sand() -> Ground {
    Ground::Sand { phi: Angle::deg(30.0), unit_weight: UnitWeight::kn_per_m3(18.0) }
}
fn met(depth: f64, strength: f64) -> InRock {
    InRock {
        depth: Length::m(depth),
        shattered: Length::m(0.1),
        hole: Length::mm(150.0),
        strength: Pressure::mpa(strength),
        share: 1.0 / 3.0,
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(48) })]

    #[test]
    fn the_socket_that_is_needed_is_enough_and_a_millimetre_less_is_not(
        strength in 0.3..40.0f64, depth in 0.0..1.0f64, factor in 1.0..3.0f64,
    ) {
        let case = Case { factor, ..wall(sand()) };
        let rock = met(depth, strength);
        let needed = socket_needed(&case, &rock).unwrap();
        let wanted = case.force * factor;
        prop_assert!(wanted * (1.0 - 1e-9) <= needed.force);
        let less = socket_resistance(&case, &rock, needed.socket - Length::mm(1.0)).unwrap();
        prop_assert!(less.force < wanted);
        // A rigid foot multiplies: the shear in the rock is at least the push.
        prop_assert!(needed.force <= needed.shear);
    }

    #[test]
    fn stronger_rock_nearer_the_ground_and_a_longer_socket_hold_more(
        strength in 0.3..4.0f64, depth in 0.0..1.0f64, socket in 0.15..1.5f64,
    ) {
        let case = wall(sand());
        let holds = |depth, strength, socket| {
            socket_resistance(&case, &met(depth, strength), Length::m(socket)).unwrap().force
        };
        let now = holds(depth, strength, socket);
        prop_assert!(now <= holds(depth, strength * 1.1, socket));
        prop_assert!(now <= holds(depth, strength, socket + 0.05));
        prop_assert!(holds(depth + 0.1, strength, socket) <= now);
        let step = holds(depth, strength, socket + 1e-7) - now;
        prop_assert!(step.abs() < Force::kn(1e-2), "{step:?}");
    }

    #[test]
    fn the_push_alone_is_the_push_of_the_resistance_and_factors_need_no_depth(depth in 0.3..2.0f64) {
        let case = wall(sand());
        let d = Length::m(depth);
        for m in [Method::BromsSand, Method::BrinchHansen] {
            prop_assert_eq!(push_taken(&case, m, d).unwrap(), resistance(&case, m, d).unwrap().force);
        }
        for (a, b) in factors_by_method(&case, d).iter().zip(depths_by_method(&case, Some(d))) {
            prop_assert!(a.depth.is_none());
            prop_assert_eq!(a.at.as_ref().unwrap(), b.at.as_ref().unwrap());
        }
    }

    #[test]
    fn a_post_that_is_strong_enough_is_short_and_one_that_is_not_is_long(yields in 0.2..10.0f64) {
        let case = wall(sand());
        let found = short_or_long(&case, Method::BromsSand, Length::m(1.0), Moment::knm(yields)).unwrap();
        let soil = resistance(&case, Method::BromsSand, Length::m(1.0)).unwrap().force;
        prop_assert!(found.force <= soil);
        let bent = post_moment(&Case { force: found.force, ..case }).unwrap().moment.to_knm();
        match found.by {
            GivesWay::Soil => prop_assert!(bent <= yields * (1.0 + 1e-9)),
            GivesWay::Post => prop_assert!((bent / yields - 1.0).abs() < 1e-6),
        }
    }

    #[test]
    fn a_post_as_a_beam_moves_at_least_as_far_as_a_rigid_one_and_a_collar_helps(
        depth in 0.5..1.5f64, modulus in 6000.0..14_000.0f64,
    ) {
        let case = wall(sand());
        let bare = PostBeam { modulus: Pressure::mpa(modulus), inertia_mm4: 42.2e6, collar: None };
        let d = Length::m(depth);
        let collared = PostBeam {
            collar: Some(Collar {
                diameter: Length::mm(300.0),
                from: Length::ZERO,
                to: d,
                strength: Pressure::mpa(20.0),
            }),
            ..bare
        };
        let ground = Subgrade::Grows(UnitWeight::kn_per_m3(6600.0));
        let top = |post: &PostBeam| beam_deflection(&case, d, ground, post, Length::m(1.0)).unwrap().top;
        let rigid = deflection(&case, d, ground, Length::m(1.0)).unwrap().top;
        prop_assert!(rigid <= top(&collared) && top(&collared) <= top(&bare));
    }

    #[test]
    fn timber_only_gets_worse_with_the_years_and_is_used_up_when_it_says(years in 0.0..25.0f64) {
        let ageing = posts(Durability::Heartwood(2), Climate::Temperate);
        let used = |y| in_year(&ageing, y).unwrap().check.utilisation();
        prop_assert!(used(years) <= used(years + 0.5));
        prop_assert!((used(years + 1e-6) - used(years)).abs() < 1e-4);
        let end = used_up_in(&ageing).unwrap().unwrap();
        prop_assert!((used(end) - 1.0).abs() < 1e-9, "{end}");
    }
}

fn posts(durability: Durability, climate: Climate) -> Ageing<'static> {
    let section = Section::rectangle(Length::mm(150.0), Length::mm(150.0));
    let grade = grade("C24", &section).expect("C24 stands in the table of EN 338 for every size");
    Ageing {
        grade,
        section,
        code: Code::in_the_ground(grade),
        effects: Effects::permanent(Moment::knm(1.5), Force::kn(3.0)),
        durability,
        climate,
    }
}

#[test]
fn a_hole_of_450_stopped_by_weak_rock_has_answers_where_clay_alone_has_none() {
    let clay = Ground::Clay { strength: Pressure::kpa(40.0), unit_weight: UnitWeight::kn_per_m3(18.0) };
    let case = wall(clay);
    // Broms leaves out 1.5 widths: 450 mm in a 300 mm hole holds nothing.
    assert_eq!(resistance(&case, Method::BromsClay, Length::mm(450.0)).unwrap().force, Force::ZERO);
    let weak = rock("weak").unwrap();
    let socket = socket_needed(&case, &met(0.45, weak.strength.to_mpa())).unwrap();
    assert!(Length::mm(100.0) < socket.socket && socket.socket < Length::mm(600.0), "{:?}", socket.socket);
    assert!(socket.trace.sheet().is_ok());
    let plate =
        OnRock { lever: Length::mm(200.0), pulled: 2, all: 4, hole: Length::mm(30.0), bond: weak.bond, factor: 3.0 };
    let demand = on_rock(&case, Length::mm(450.0), &plate).unwrap();
    assert!((demand.moment.to_knm() - 2.304 * (0.8 / 3.0 + 0.45)).abs() < 1e-9);
    let side = neighbour_of_left_out([Length::m(1.2); 3]).unwrap();
    assert!((side.times - 1.5).abs() < 1e-12 && (side.span.to_m() - 2.4).abs() < 1e-12);
    assert!(ROCK.windows(2).all(|w| w[0].strength < w[1].strength));
}

#[test]
fn factored_ground_asks_for_a_deeper_hole_and_unfactored_ground_for_the_same() {
    let depth = |by: &GroundFactors| required_depth(&wall(sand()).factored(by), Method::BromsSand).unwrap().depth;
    let plain = required_depth(&Case { factor: 1.0, ..wall(sand()) }, Method::BromsSand).unwrap().depth;
    assert!((depth(&GroundFactors::M1_R1) - plain).abs() < Length::mm(1e-6));
    assert!(plain < depth(&GroundFactors::M2_R1) && plain < depth(&GroundFactors::M1_R2));
}

#[test]
fn durable_timber_and_a_slow_climate_last_longer() {
    let lasts = |d, c| used_up_in(&posts(d, c)).unwrap().unwrap_or(200.0);
    let order = [1, 2, 3, 4].map(|class| lasts(Durability::Heartwood(class), Climate::Temperate));
    assert!(order.windows(2).all(|w| w[1] < w[0]), "{order:?}");
    assert!(lasts(Durability::Heartwood(3), Climate::Hot) < lasts(Durability::Heartwood(3), Climate::Slow));
    assert!(lasts(Durability::Sapwood, Climate::Temperate) < order[3]);
    let treated = lasts(Durability::Treated { life_years: 15.0 }, Climate::Temperate);
    assert!(15.0 < treated && treated < 40.0, "{treated}");
    let (rate, lag, trace) = rot_of(Durability::Heartwood(2), Climate::Temperate).unwrap();
    assert!((rate.to_mm() - 0.72).abs() < 1e-9 && (lag - 7.514).abs() < 0.01 && trace.sheet().is_ok());
}
