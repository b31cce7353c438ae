//! Do pressures, footings and settlements behave as theory says they must: continuous, adding up, never better with more load?

use groundhold_earth::basis::BASES;
use groundhold_earth::footing::{Base, Rule};
use groundhold_earth::pressure::at_rest::at_rest;
use groundhold_earth::pressure::compaction::compacted;
use groundhold_earth::pressure::creep::UnderToe;
use groundhold_earth::pressure::heap::Heap;
use groundhold_earth::pressure::passive::{Front, Passive};
use groundhold_earth::pressure::patch::Patch;
use groundhold_earth::pressure::seepage::{Flow, soaked};
use groundhold_earth::pressure::seismic::{Shaking, shaken};
use groundhold_earth::pressure::strata::{Stratum, active};
use groundhold_earth::pressure::wedge::Broken;
use groundhold_earth::pressure::wet_wedge::{Wet, WetWedge};
use groundhold_earth::pressure::{crack, surcharge};
use groundhold_earth::settlement;
use groundhold_earth::situation::SITUATIONS;
use groundhold_earth::sliding::Grip;
use groundhold_earth::soil::Soil;
use groundhold_earth::{Backfill, Method, Strip, WaterLevel, external};
use groundhold_quantity::{Angle, Force, Length, LineForce, Pressure, Slope, UnitWeight};
use groundhold_working::Value;
use proptest::prelude::*;

fn soil(gamma: f64, phi: f64, c: f64) -> Soil {
    let weights = (UnitWeight::kn_per_m3(gamma), UnitWeight::kn_per_m3(gamma + 2.0));
    let mut s = Soil::given("soil", weights.0, weights.1, Angle::deg(phi));
    s.cohesion = Pressure::kpa(c);
    s
}

fn cases(n: u32) -> ProptestConfig {
    ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(n) }
}

fn near(a: f64, b: f64, share: f64) -> bool {
    (a - b).abs() <= share * a.abs().max(b.abs()).max(1e-9)
}

/// The single figures of a trace's sheet; none where the working refuses, so that a comparison fails.
fn first(t: &groundhold_working::Trace) -> Vec<f64> {
    let one = |v: Value| if let Value::One(v) = v { Some(v) } else { None };
    t.sheet().map(|w| w.values.into_iter().filter_map(one).collect()).unwrap_or_default()
}

fn base(phi: f64, c: f64, width: f64, v: f64, h: f64) -> Base {
    Base {
        soil: soil(18.0, phi, c),
        width: Length::m(width),
        length: Length::m(4.0),
        depth: Length::m(0.5),
        overburden: Pressure::kpa(9.0),
        submerged: false,
        vertical: Force::kn(v),
        horizontal: Force::kn(h),
        ground_falls: Angle::ZERO,
        tilt: Angle::ZERO,
    }
}

proptest! {
    #![proptest_config(cases(48))]

    #[test]
    fn the_diagram_of_every_pressure_adds_up_to_its_force(
        phi in 20.0..40.0f64, h in 0.4..4.0f64, q in 0.0..20.0f64, water in 0.0..1.0f64, c in 0.0..12.0f64,
    ) {
        let height = Length::m(h);
        let mut b = Backfill::new(soil(18.0, phi, c), height);
        b.surcharge = Pressure::kpa(q);
        b.water = WaterLevel::At(height * water);
        let r = at_rest(&b, 1.0).unwrap();
        prop_assert!(near(r.spread.force().si(), r.horizontal.si(), 1e-9));
        prop_assert!(near(r.spread.arm_above(height).si(), r.arm.si(), 1e-9));
        prop_assert!(near(first(&r.trace)[1], r.horizontal.to_kn_per_m(), 1e-12), "sheet and fast path");
        let k = compacted(&b.soil, height, LineForce::kn_per_m(8.0)).unwrap();
        prop_assert!(near(k.spread.force().si(), k.horizontal.si(), 1e-9));
        let crack = crack::on_wall(&b.soil, height, b.surcharge, 0.7).unwrap();
        prop_assert!(near(crack.spread.force().si(), crack.horizontal.si(), 1e-9));
        let layer = |thick: f64| Stratum {
            soil: b.soil.clone(), thickness: Length::m(thick), wall_friction: Angle::deg(phi / 2.0), counts_cohesion: true,
        };
        let a = active(&[layer(0.3 * h), layer(0.7 * h)], Some(height * (1.0 - water)), b.surcharge).unwrap();
        prop_assert!(near(a.spread.force().si(), (a.soil + a.water).si(), 1e-9));
        let s = shaken(&b, Shaking { horizontal: 0.1, vertical: 0.0 }).unwrap();
        prop_assert!(near(s.spread.force().si(), s.horizontal.si(), 1e-9));
        let front = Front { soil: b.soil.clone(), depth: height, lost: height * 0.2, water: None, counts_cohesion: true };
        let p = front.resistance(3.0).unwrap();
        prop_assert!(near(p.spread.force().si(), p.force.si(), 1e-9));
        let toe = UnderToe { retained: height, embedded: Length::m(1.0), behind: height * (0.1 + 0.8 * water), front: Length::ZERO };
        let w = toe.creep(UnitWeight::kn_per_m3(20.0)).unwrap();
        prop_assert!(near(w.net.force().si(), w.force.si(), 1e-9));
        prop_assert!(w.weight_in_front < w.weight_behind);
    }

    #[test]
    fn two_layers_of_one_soil_are_one_layer(phi in 18.0..40.0f64, cut in 0.1..0.9f64, c in 0.0..8.0f64, water in 0.0..3.0f64) {
        let whole = Stratum { soil: soil(18.0, phi, c), thickness: Length::m(3.0), wall_friction: Angle::ZERO, counts_cohesion: true };
        let part = |share: f64| Stratum { thickness: Length::m(3.0 * share), ..whole.clone() };
        let water = Some(Length::m(water));
        let one = active(std::slice::from_ref(&whole), water, Pressure::kpa(5.0)).unwrap();
        let two = active(&[part(cut), part(1.0 - cut)], water, Pressure::kpa(5.0)).unwrap();
        prop_assert!(near(one.soil.si(), two.soil.si(), 1e-9) && near(one.arm.si(), two.arm.si(), 1e-9));
    }

    #[test]
    fn one_layer_is_the_thrust_of_the_backfill(phi in 22.0..40.0f64, h in 0.5..4.0f64, q in 0.0..15.0f64, delta in 0.0..0.9f64) {
        let mut b = Backfill::new(soil(18.0, phi, 0.0), Length::m(h));
        b.surcharge = Pressure::kpa(q);
        b.wall_friction = Angle::deg(delta * phi);
        b.water = WaterLevel::At(Length::m(h * 0.4));
        let t = Method::Coulomb.active(&b).unwrap();
        let layer = Stratum { soil: b.soil.clone(), thickness: b.height, wall_friction: b.wall_friction, counts_cohesion: false };
        let s = active(&[layer], Some(Length::m(h * 0.6)), b.surcharge).unwrap();
        prop_assert!(near(t.horizontal.si(), (s.soil + s.water).si(), 1e-9));
        prop_assert!(near(t.arm.si(), s.arm.si(), 1e-9));
    }

    #[test]
    fn a_wall_that_cannot_move_feels_more_than_one_that_can(phi in 20.0..40.0f64, h in 0.4..4.0f64, water in 0.0..1.0f64) {
        let mut b = Backfill::new(soil(18.0, phi, 0.0), Length::m(h));
        b.water = WaterLevel::At(b.height * water);
        let (rest, yields) = (at_rest(&b, 1.0).unwrap(), Method::Rankine.active(&b).unwrap());
        prop_assert!(rest.horizontal > yields.horizontal);
        prop_assert!(at_rest(&b, 4.0).unwrap().horizontal > rest.horizontal);
    }

    #[test]
    fn soaked_ground_pushes_between_a_drain_below_and_standing_water(phi in 22.0..40.0f64, h in 0.5..3.0f64) {
        let s = soil(18.0, phi, 0.0);
        let push = |flow| {
            let p = soaked(&s, Length::m(h), Angle::ZERO, flow).unwrap();
            (p.soil + p.water).si()
        };
        let (down, drain, stands) = (push(Flow::Down), push(Flow::ToBackDrain), push(Flow::Stands));
        prop_assert!(down < drain && drain < stands, "{down} {drain} {stands}");
        let mut b = Backfill::new(s.clone(), Length::m(h));
        b.water = WaterLevel::At(b.height);
        prop_assert!(near(stands, Method::Rankine.active(&b).unwrap().horizontal.si(), 1e-6));
    }

    #[test]
    fn the_passive_methods_keep_their_order_and_meet_on_a_smooth_wall(phi in 20.0..40.0f64, share in 0.05..0.66f64) {
        let k = |m: Passive, delta: f64| m.coefficient(Angle::deg(phi), Angle::deg(delta), Slope::LEVEL).unwrap().0;
        let smooth: Vec<f64> = Passive::ALL.into_iter().map(|m| k(m, 0.0)).collect();
        prop_assert!(smooth.iter().all(|v| near(*v, smooth[0], 3e-3)), "{smooth:?}");
        let d = share * phi;
        let (rankine, en, spiral, coulomb) =
            (k(Passive::Rankine, d), k(Passive::En1997, d), k(Passive::LogSpiral, d), k(Passive::Coulomb, d));
        prop_assert!(rankine < en && en < spiral * 1.005 && spiral < coulomb * 1.005, "{rankine} {en} {spiral} {coulomb}");
    }

    #[test]
    fn more_shaking_pushes_harder_and_ground_that_slides_is_refused(phi in 25.0..40.0f64, kh in 0.0..0.3f64, more in 0.01..0.1f64) {
        let mut b = Backfill::new(soil(18.0, phi, 0.0), Length::m(1.5));
        let push = |kh: f64, b: &Backfill| shaken(b, Shaking { horizontal: kh, vertical: 0.0 });
        let still = Method::Coulomb.active(&b).unwrap().horizontal;
        prop_assert!(near(push(0.0, &b).unwrap().horizontal.si(), still.si(), 1e-9));
        prop_assert!(push(kh + more, &b).unwrap().horizontal > push(kh, &b).unwrap().horizontal);
        b.slope = Slope::from_angle(Angle::deg(phi - 1.0));
        prop_assert!(push(0.2, &b).unwrap_err().to_string().contains("slides by itself"));
    }

    #[test]
    fn a_long_patch_is_a_strip_and_a_longer_patch_is_felt_more(
        q in 1.0..50.0f64, from in 0.0..2.0f64, wide in 0.2..3.0f64, along in 0.2..5.0f64, h in 0.5..3.0f64,
    ) {
        let patch = |along: f64| Patch {
            value: Pressure::kpa(q), from: Length::m(from), to: Length::m(from + wide), along: Length::m(along), wall_is_stiff: true,
        };
        let felt = |along: f64| patch(along).on_wall(Length::m(h)).unwrap().spread.force().to_kn_per_m();
        let (strip, ..) = surcharge::strip_elastic(q, h, from, from + wide);
        prop_assert!(near(felt(9_000.0), strip, 0.01) || from < 0.05, "{} {strip}", felt(9_000.0));
        prop_assert!(felt(along * 1.2) > felt(along));
        let heap = Heap {
            outline: vec![(Length::m(from), Length::m(q / 18.0)), (Length::m(from + wide), Length::m(q / 18.0))],
            unit_weight: UnitWeight::kn_per_m3(18.0), wall_is_stiff: true,
        };
        let even = heap.on_wall(Length::m(h)).unwrap().spread.force().to_kn_per_m();
        prop_assert!(near(even, felt(9_000.0), 1e-4), "{even}");
    }

    #[test]
    fn more_push_on_a_base_never_bears_more_and_the_sheet_agrees(
        phi in 22.0..40.0f64, c in 0.0..10.0f64, width in 0.4..2.0f64, h in 0.0..0.3f64, more in 0.005..0.1f64,
    ) {
        for rule in Rule::ALL {
            let load = |share: f64, width: f64| rule.drained(&base(phi, c, width, 200.0, 200.0 * share)).unwrap();
            let (a, b) = (load(h, width), load(h + more, width));
            prop_assert!(b.pressure < a.pressure, "{}", rule.name());
            prop_assert!(load(h, width * 1.1).load > a.load, "{}", rule.name());
            prop_assert!(near(*first(&a.trace).last().unwrap(), a.load.to_kn(), 1e-12), "{}", rule.name());
            // Continuous: a thousandth of the push changes little.
            let c = load(h + 1e-4, width);
            prop_assert!(near(c.load.si(), a.load.si(), 5e-3), "{}", rule.name());
        }
    }

    #[test]
    fn a_slope_in_front_never_helps_a_base(phi in 25.0..40.0f64, falls in 1.0..20.0f64, cu in 20.0..80.0f64) {
        for rule in [Rule::Vesic, Rule::Hansen] {
            let mut b = base(phi, 2.0, 1.0, 200.0, 30.0);
            b.soil.undrained = Some(Pressure::kpa(cu));
            let (level, fresh) = (rule.drained(&b).unwrap().load, rule.undrained(&b).unwrap().load);
            b.ground_falls = Angle::deg(falls);
            prop_assert!(rule.drained(&b).unwrap().load < level && rule.undrained(&b).unwrap().load < fresh);
        }
        let mut b = base(phi, 0.0, 1.0, 200.0, 30.0);
        b.ground_falls = Angle::deg(falls);
        prop_assert!(Rule::En1997.drained(&b).unwrap_err().to_string().contains("no factor for a slope"));
    }

    #[test]
    fn the_four_rules_are_near_each_other_under_a_plain_base(phi in 25.0..38.0f64, width in 0.5..2.0f64) {
        let mut b = base(phi, 0.0, width, 100.0, 0.0);
        b.depth = Length::ZERO;
        let loads: Vec<f64> = Rule::ALL.into_iter().map(|r| r.drained(&b).unwrap().load.to_kn()).collect();
        let (least, most) = loads.iter().fold((f64::INFINITY, 0.0_f64), |(a, z), v| (a.min(*v), z.max(*v)));
        prop_assert!(most < 1.8 * least, "{loads:?}");
    }

    #[test]
    fn more_push_slides_sooner_and_a_tilted_base_or_a_key_holds_more(h in 5.0..60.0f64, friction in 18.0..32.0f64, key in 0.1..0.9f64) {
        let grip = |h: f64, tilt: f64, key: f64| Grip {
            vertical: LineForce::kn_per_m(100.0), horizontal: LineForce::kn_per_m(h), width: Length::m(1.5),
            friction: Angle::deg(friction), adhesion: Pressure::ZERO, tilt: Angle::deg(tilt), passive: LineForce::kn_per_m(10.0),
            passive_share: 0.5, key: Length::m(key), ground: Angle::deg(friction + 5.0), key_at: 0.6,
        }.check().unwrap().factor;
        let plain = grip(h, 0.0, 0.0);
        prop_assert!(grip(h * 1.01, 0.0, 0.0) < plain && grip(h, 0.0, key) > plain);
        prop_assert!(grip(h, 2.0, 0.0) > plain);
        prop_assert!(near(grip(h, 1e-7, 0.0), plain, 1e-6), "continuous where the tilt begins");
    }

    #[test]
    fn more_load_sinks_more_and_stiffer_ground_less(q in 60.0..200.0f64, width in 0.5..3.0f64, e in 5_000.0..40_000.0f64) {
        let bed = |e: f64| [settlement::Bed { thickness: Length::m(15.0), stiffness: Pressure::kpa(e) }];
        let sinks = |q: f64, e: f64, years: f64| {
            let (q, before) = (Pressure::kpa(q), Pressure::kpa(9.0));
            settlement::on_sand(q, before, Length::m(width), Length::m(6.0), &bed(e), years).unwrap()
        };
        let (s, trace) = sinks(q, e, 1.0);
        prop_assert!(near(first(&trace)[0], s.to_m(), 1e-12));
        prop_assert!(sinks(q * 1.05, e, 1.0).0 > s && sinks(q, e * 1.1, 1.0).0 < s && sinks(q, e, 10.0).0 > s);
        let clay = |more: f64, most: f64| settlement::consolidation(0.3, 0.05, 0.9, 3.0, 60.0, more, most);
        prop_assert!(clay(q, 60.0) > clay(q, 90.0) && clay(q, 90.0) > clay(q, 500.0));
        prop_assert!(near(clay(30.0, 90.0 - 1e-9), clay(30.0, 90.0 + 1e-9), 1e-6), "continuous at the stress once carried");
    }

    #[test]
    fn clay_settles_ever_more_with_time_and_never_all(t in 0.001..3.0f64, more in 0.01..0.5f64) {
        let (a, b) = (settlement::degree(t), settlement::degree(t + more));
        prop_assert!(a < b && b < 1.0);
        prop_assert!(near(settlement::degree(settlement::time_factor_of(a)), a.min(0.999), 1e-9));
    }

    #[test]
    fn every_situation_is_at_least_as_hard_on_sand_as_every_day(phi in 26.0..40.0f64, h in 0.5..2.0f64, q in 0.0..8.0f64) {
        let mut b = Backfill::new(soil(18.0, phi, 0.0), Length::m(h));
        b.surcharge = Pressure::kpa(q);
        let every_day = Method::Rankine.active(&b).unwrap().horizontal;
        for s in SITUATIONS.iter().filter(|s| !s.shakes) {
            prop_assert!(Method::Rankine.active(&s.backfill(&b)).unwrap().horizontal >= every_day, "{}", s.key);
        }
    }
}

/// A gravity wall of a given height and width: its stability, and what the ground carries over what stands on it.
fn gravity(height: f64, width: f64, phi: f64, water: f64) -> groundhold_working::Result<(external::Stability, f64)> {
    let mut b = Backfill::new(soil(18.0, phi, 0.0), Length::m(height));
    b.water = WaterLevel::At(b.height * water);
    let a = Method::Coulomb.active(&b)?;
    let push = external::Push { force: a.horizontal, height: a.arm };
    // The same weight whatever stands behind, so that only the push changes.
    let weight = external::Weight { force: LineForce::kn_per_m(60.0 * width), arm: Length::m(width / 2.0) };
    let (friction, adhesion, passive) = (0.5, Pressure::ZERO, LineForce::ZERO);
    let footing = external::Footing { width: Length::m(width), friction, adhesion, passive };
    let s = external::stability(&[weight], &[push], &footing)?;
    let (effective, v) = (s.effective_width(footing.width).to_m(), s.vertical.to_kn_per_m() * 4.0);
    if effective <= 0.02 || s.horizontal >= s.vertical {
        return Ok((s, 0.0));
    }
    let carried = Rule::En1997.drained(&base(phi, 2.0, effective, v, s.horizontal.to_kn_per_m() * 4.0))?;
    Ok((s, carried.load.to_kn() / v))
}

proptest! {
    #![proptest_config(cases(48))]

    #[test]
    fn a_taller_wall_and_more_water_are_never_safer(
        h in 0.6..2.0f64, more in 0.01..0.5f64, width in 0.6..2.0f64, phi in 26.0..38.0f64, water in 0.0..0.8f64, rise in 0.01..0.2f64,
    ) {
        let (plain, carries) = gravity(h, width, phi, water).unwrap();
        for worse in [gravity(h + more, width, phi, water), gravity(h, width, phi, water + rise)] {
            let (worse, carried) = worse.unwrap();
            prop_assert!(worse.factor_sliding < plain.factor_sliding && worse.factor_overturning < plain.factor_overturning);
            prop_assert!(worse.eccentricity > plain.eccentricity && carried <= carries);
        }
        // Continuous: a tenth of a millimetre more height changes little.
        let (close, _) = gravity(h + 1e-4, width, phi, water).unwrap();
        prop_assert!(near(close.factor_sliding, plain.factor_sliding, 1e-3));
        prop_assert!(near(close.factor_overturning, plain.factor_overturning, 2e-3));
    }

    #[test]
    fn the_wet_wedge_is_rankine_on_level_ground_and_water_in_a_crack_pushes_harder(
        phi in 22.0..40.0f64, h in 0.5..4.0f64, water in 0.0..1.0f64, c in 0.0..5.0f64,
    ) {
        let mut b = Backfill::new(soil(18.0, phi, 0.0), Length::m(h));
        b.water = WaterLevel::At(b.height * water);
        let mut w = Broken {
            soil: b.soil.clone(), height: b.height, ground: vec![(Length::ZERO, Length::ZERO), (Length::m(5.0), Length::ZERO)],
            wall_friction: Angle::ZERO, lean: Angle::ZERO, strips: vec![], crack: Length::ZERO, counts_cohesion: false,
        };
        let wet = w.active_wet(Wet { level: b.height * water, in_crack: Length::ZERO }).unwrap();
        let r = Method::Rankine.active(&b).unwrap();
        prop_assert!(near(wet.horizontal.si(), r.soil.horizontal.si(), 1e-6), "{:?} {:?}", wet.horizontal, r.soil.horizontal);
        prop_assert!(near(wet.water.si(), r.water.horizontal.si(), 1e-9));
        prop_assert!(near(first(&wet.trace)[0], wet.thrust.to_kn_per_m(), 1e-9), "sheet and fast path");
        w.soil.cohesion = Pressure::kpa(c);
        w.counts_cohesion = true;
        w.crack = b.height * 0.2;
        let push = |crack: f64, level: f64| w.active_wet(Wet { level: w.height * level, in_crack: w.crack * crack }).unwrap();
        let all = |p: WetWedge| (p.horizontal + p.water).si();
        prop_assert!(push(1.0, 0.3).horizontal >= push(0.0, 0.3).horizontal);
        prop_assert!(all(push(0.5, 0.5)) >= all(push(0.5, 0.2)) * (1.0 - 1e-9));
        let dry = w.active().unwrap().horizontal;
        prop_assert!(near(push(0.0, 0.0).horizontal.si(), dry.si(), 1e-9));
        let over = w.active_wet(Wet { level: w.height, in_crack: Length::ZERO });
        prop_assert!(over.unwrap_err().to_string().contains("foot of the crack"));
    }

    #[test]
    fn the_wedge_spread_over_the_height_adds_up_to_its_thrust(phi in 25.0..40.0f64, h in 0.5..3.0f64, q in 0.0..30.0f64, rise in 0.0..0.4f64) {
        let w = Broken {
            soil: soil(18.0, phi, 0.0), height: Length::m(h),
            ground: vec![(Length::ZERO, Length::ZERO), (Length::m(1.0), Length::m(rise)), (Length::m(4.0), Length::m(rise))],
            wall_friction: Angle::deg(phi / 2.0), lean: Angle::ZERO,
            strips: vec![Strip { value: Pressure::kpa(q), from: Length::m(0.4), to: Length::m(1.2), permanent: false }],
            crack: Length::ZERO, counts_cohesion: false,
        };
        let (spread, whole) = (w.spread(12).unwrap(), w.active().unwrap());
        prop_assert!(near(spread.force().si(), whole.horizontal.si(), 1e-9));
        prop_assert!(spread.ordinates.iter().all(|o| o.1 >= Pressure::ZERO));
        // A load that begins behind the wall is felt only below where its wedge meets the wall, so its thrust may lie low.
        prop_assert!(spread.arm_above(w.height) > Length::ZERO && spread.arm_above(w.height) < w.height * 0.75);
        let bare = Broken { strips: vec![], ..w.clone() }.spread(12).unwrap();
        prop_assert!(bare.arm_above(w.height) > w.height * 0.25 && bare.arm_above(w.height) < w.height * 0.5);
    }

    #[test]
    fn feet_and_pounds_give_the_same_answer_as_metres_and_newtons(phi in 20.0..40.0f64, h in 2.0..10.0f64, q in 20.0..300.0f64) {
        let of = |height: Length, load: Pressure| {
            let mut b = Backfill::new(soil(18.0, phi, 0.0), height);
            b.surcharge = load;
            at_rest(&b, 1.5).unwrap().horizontal.si()
        };
        let metric = of(Length::m(h * 0.3048), Pressure::kpa(q * 0.04788025898));
        prop_assert!(near(of(Length::ft(h), Pressure::psf(q)), metric, 1e-9));
    }
}

#[test]
fn a_base_whose_load_slides_is_refused_and_the_last_that_holds_is_not() {
    let at = |h: f64| Rule::En1997.drained(&base(30.0, 0.0, 1.0, 100.0, h));
    assert!(at(99.9).is_ok());
    assert!(at(100.0).unwrap_err().to_string().contains("slides before it sinks"));
    let mut b = base(30.0, 0.0, 1.0, 100.0, 50.0);
    assert!(Rule::Vesic.undrained(&b).unwrap_err().to_string().contains("no undrained strength"));
    b.length = Length::m(0.5);
    assert!(Rule::Vesic.drained(&b).unwrap_err().to_string().contains("larger than the length"));
}

#[test]
fn every_basis_has_a_source_and_asks_for_less_in_an_accident() {
    for b in BASES {
        assert!(!b.source.work.is_empty() && !b.accidental_source.work.is_empty(), "{}", b.key);
        let (o, a) = (&b.combinations[b.combinations.len() - 1], &b.accidental[0]);
        assert!(a.permanent <= o.permanent && a.variable <= o.variable && a.wanted.slip <= o.wanted.slip, "{}", b.key);
    }
    assert!(BASES.len() >= 6);
}

#[test]
fn water_that_cannot_flow_under_a_toe_is_refused_in_words() {
    let toe =
        UnderToe { retained: Length::m(1.0), embedded: Length::m(0.5), behind: Length::m(0.5), front: Length::m(0.5) };
    let sat = UnitWeight::kn_per_m3(20.0);
    assert!(toe.creep(sat).unwrap_err().to_string().contains("below the toe"));
    let still = UnderToe { behind: Length::ZERO, front: Length::ZERO, ..toe };
    assert!(still.creep(sat).unwrap_err().to_string().contains("nothing flows"));
    let high = UnderToe { behind: Length::m(1.1), front: Length::ZERO, ..toe };
    assert!(high.creep(sat).unwrap_err().to_string().contains("above the ground behind"));
}
