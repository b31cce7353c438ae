//! Do pressures and slips behave as theory says they must, whatever the figures?

use groundhold_earth::pressure::annex_c::{State, coefficient};
use groundhold_earth::pressure::wedge::Broken;
use groundhold_earth::pressure::{coulomb, rankine};
use groundhold_earth::slip::{Crack, GroundLoad, Layer, Pore, Search, Section};
use groundhold_earth::soil::Soil;
use groundhold_earth::{Backfill, Method, Strip, WORKINGS, WaterLevel, external, influence};
use groundhold_quantity::{Angle, Length, LineForce, Point, Pressure, Slope, UnitWeight};
use groundhold_working::Value;
use proptest::prelude::*;

fn soil(gamma: f64, phi: f64, c: f64) -> Soil {
    let weights = (UnitWeight::kn_per_m3(gamma), UnitWeight::kn_per_m3(gamma + 2.0));
    let mut s = Soil::given("soil", weights.0, weights.1, Angle::deg(phi));
    s.cohesion = Pressure::kpa(c);
    s
}

/// A failure is seen in the run; files of seeds are not kept.
fn cases(n: u32) -> ProptestConfig {
    ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(n) }
}

fn backfill() -> impl Strategy<Value = Backfill> {
    let ground = (15.0..22.0f64, 22.0..42.0f64, 0.2..4.0f64, 0.0..0.9f64, 0.0..1.0f64);
    let extras = (0.0..20.0f64, 0.0..1.0f64, 0.0..30.0f64, 0.0..3.0f64, 0.1..5.0f64, any::<bool>());
    (ground, extras).prop_map(|((gamma, phi, height, slope, delta), (q, water, load, from, width, permanent))| {
        let mut b = Backfill::new(soil(gamma, phi, 0.0), Length::m(height));
        b.slope = Slope::from_angle(Angle::deg(slope * phi));
        b.wall_friction = Angle::deg(delta * phi);
        b.surcharge = Pressure::kpa(q);
        b.water = WaterLevel::At(Length::m(water * height));
        let (from, to) = (Length::m(from), Length::m(from + width));
        b.strips = vec![Strip { value: Pressure::kpa(load), from, to, permanent }];
        b
    })
}

fn near(a: f64, b: f64, share: f64) -> bool {
    (a - b).abs() <= share * a.abs().max(b.abs()).max(1e-9)
}

fn one(v: &Value) -> f64 {
    match v {
        Value::One(v) => *v,
        other => panic!("expected one number, found {other:?}"),
    }
}

/// A unit there and back may turn the last bit.
const SAME: f64 = 4.0 * f64::EPSILON;

const BOTH: [Method; 2] = [Method::Rankine, Method::Coulomb];

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn the_sheet_gives_the_same_figures_as_the_fast_path(b in backfill(), c in 0.0..5.0f64, counts in any::<bool>()) {
        let mut b = b;
        b.soil.cohesion = Pressure::kpa(c);
        b.counts_cohesion = counts;
        for method in BOTH {
            let a = method.active(&b).unwrap();
            let sheet = a.trace.sheet().unwrap();
            let typed = [a.coefficient, a.horizontal.to_kn_per_m(), a.vertical.to_kn_per_m(), a.moment.to_knm(), a.arm.to_m()];
            for (found, typed) in sheet.values.iter().zip(typed) {
                prop_assert!(near(one(found), typed, SAME), "{} {}", one(found), typed);
            }
        }
    }

    #[test]
    fn parts_and_diagram_add_up_to_the_whole(b in backfill()) {
        for method in BOTH {
            let a = method.active(&b).unwrap();
            let sum = a.soil.horizontal + a.permanent.horizontal + a.variable.horizontal + a.water.horizontal;
            prop_assert!(near(sum.si(), a.horizontal.si(), 1e-9));
            prop_assert!(near(a.between(Length::ZERO, b.height).si(), a.horizontal.si(), 1e-9));
            let half = b.height * 0.37;
            let two = a.between(Length::ZERO, half) + a.between(half, b.height);
            prop_assert!(near(two.si(), a.horizontal.si(), 1e-9));
            prop_assert!(near(a.factored(1.0, 1.0).moment.si(), a.moment.si(), 1e-9));
            prop_assert!(a.diagram.windows(2).all(|w| w[0].depth <= w[1].depth));
            prop_assert!(Length::ZERO <= a.arm && a.arm <= b.height);
        }
    }

    #[test]
    fn more_friction_in_the_soil_pushes_less(b in backfill(), more in 0.1..6.0f64) {
        let mut stronger = b.clone();
        stronger.soil.phi = Angle::deg(b.soil.phi.to_deg() + more);
        stronger.strips.clear();
        let mut weaker = b;
        weaker.strips.clear();
        for method in BOTH {
            let (w, s) = (method.active(&weaker).unwrap(), method.active(&stronger).unwrap());
            prop_assert!(s.coefficient < w.coefficient);
            prop_assert!(s.horizontal <= w.horizontal);
        }
    }

    #[test]
    fn more_water_never_pushes_less(b in backfill(), more in 0.0..1.0f64) {
        let WaterLevel::At(now) = b.water else { unreachable!("the strategy gives a level") };
        let mut wetter = b.clone();
        wetter.water = WaterLevel::At(now + (b.height - now) * more);
        for method in BOTH {
            let (dry, wet) = (method.active(&b).unwrap(), method.active(&wetter).unwrap());
            prop_assert!(wet.horizontal.si() >= dry.horizontal.si() * (1.0 - 1e-12));
            prop_assert!(wet.moment.si() >= dry.moment.si() * (1.0 - 1e-12));
        }
    }

    #[test]
    fn more_load_never_pushes_less_and_cohesion_never_more(b in backfill(), q in 0.0..20.0f64, c in 0.1..10.0f64) {
        let mut loaded = b.clone();
        loaded.surcharge = b.surcharge + Pressure::kpa(q);
        let mut sticky = b.clone();
        sticky.soil.cohesion = Pressure::kpa(c);
        sticky.counts_cohesion = true;
        for method in BOTH {
            let plain = method.active(&b).unwrap().horizontal.si();
            prop_assert!(method.active(&loaded).unwrap().horizontal.si() >= plain);
            prop_assert!(method.active(&sticky).unwrap().horizontal.si() <= plain * (1.0 + 1e-9));
        }
    }

    #[test]
    fn coulomb_without_wall_friction_on_level_ground_is_rankine(phi in 5.0..45.0f64) {
        let (r, _) = rankine::active(Angle::deg(phi), Angle::ZERO).unwrap();
        let (c, _) = coulomb::active(Angle::deg(phi), Angle::ZERO, Angle::ZERO, Angle::ZERO).unwrap();
        prop_assert!(near(r, c, 1e-9));
    }

    #[test]
    fn coulomb_with_friction_along_the_slope_is_rankine_on_the_slope(phi in 15.0..45.0f64, part in 0.0..0.95f64) {
        let slope = Angle::deg(phi * part);
        let (r, _) = rankine::active(Angle::deg(phi), slope).unwrap();
        let (c, _) = coulomb::active(Angle::deg(phi), slope, Angle::ZERO, slope).unwrap();
        prop_assert!(near(r, c, 1e-6), "{} {}", r, c);
    }

    #[test]
    fn the_code_formula_with_friction_along_the_slope_is_rankine_on_the_slope(phi in 15.0..45.0f64, part in 0.0..0.95f64) {
        let (phi, slope) = (Angle::deg(phi), Angle::deg(phi * part));
        let cos = groundhold_quantity::math::cos(slope.to_rad());
        let (active, _) = coefficient(State::Active, phi, slope, Slope::from_angle(slope)).unwrap();
        prop_assert!(near(active, rankine::ka_slope(phi.to_rad(), slope.to_rad()) * cos, 1e-6));
        let falling = Slope::from_angle(-slope);
        let (passive, _) = coefficient(State::Passive, phi, slope, falling).unwrap();
        prop_assert!(near(passive, rankine::kp_slope(phi.to_rad(), slope.to_rad()) * cos, 1e-6));
    }

    #[test]
    fn resistance_of_the_code_formula_grows_with_friction_and_falls_with_ground_that_falls_away(
        phi in 20.0..44.0f64, delta in 0.0..0.6f64, fall in 0.05..0.8f64,
    ) {
        let k = |phi: f64, delta: f64, slope: f64| {
            coefficient(State::Passive, Angle::deg(phi), Angle::deg(delta), Slope::from_angle(Angle::deg(slope))).unwrap().0
        };
        let level = k(phi, phi * delta, 0.0);
        prop_assert!(level >= rankine::kp(phi.to_radians()) * (1.0 - 1e-9));
        prop_assert!(k(phi + 1.0, phi * delta, 0.0) > level);
        prop_assert!(k(phi, phi * (delta + 0.1), 0.0) > level);
        prop_assert!(k(phi, phi * delta, -phi * fall) < level);
    }

    #[test]
    fn the_trial_wedge_is_coulombs_on_plane_ground(
        phi in 22.0..42.0f64, delta in 0.0..0.9f64, lean in -8.0..15.0f64, slope in -0.5..0.8f64, height in 0.5..5.0f64,
    ) {
        let (phi, delta, lean, slope) = (Angle::deg(phi), Angle::deg(phi * delta), Angle::deg(lean), Angle::deg(phi * slope));
        let (k, _) = coulomb::active(phi, delta, lean, slope).unwrap();
        let expected = 0.5 * k * 18.0 * height * height;
        let rise = groundhold_quantity::math::tan(slope.to_rad()) * 7.0;
        let w = Broken {
            soil: soil(18.0, phi.to_deg(), 0.0),
            height: Length::m(height),
            ground: vec![(Length::ZERO, Length::ZERO), (Length::m(7.0), Length::m(rise))],
            wall_friction: delta,
            lean,
            strips: vec![],
            crack: Length::ZERO,
            counts_cohesion: false,
        };
        let found = w.active().unwrap();
        prop_assert!(near(found.thrust.to_kn_per_m(), expected, 0.0005), "{} {}", found.thrust.to_kn_per_m(), expected);
        prop_assert!(near(found.arm.to_m(), height / 3.0, 0.0005), "{} {}", found.arm.to_m(), height / 3.0);
        prop_assert!(near(one(&found.trace.sheet().unwrap().values[0]), found.thrust.to_kn_per_m(), 1e-12));
    }

    #[test]
    fn a_strip_without_an_end_that_begins_at_the_wall_is_a_load_on_all_the_ground(phi in 20.0..40.0f64, q in 1.0..20.0f64) {
        let mut everywhere = Backfill::new(soil(18.0, phi, 0.0), Length::m(1.5));
        let mut strip = everywhere.clone();
        everywhere.surcharge = Pressure::kpa(q);
        strip.strips =
            vec![Strip { value: Pressure::kpa(q), from: Length::ZERO, to: Length::m(f64::INFINITY), permanent: false }];
        let (a, b) = (Method::Rankine.active(&everywhere).unwrap(), Method::Rankine.active(&strip).unwrap());
        prop_assert!(near(a.horizontal.si(), b.horizontal.si(), 1e-9));
        prop_assert!(near(a.moment.si(), b.moment.si(), 1e-9));
    }

    #[test]
    fn a_strip_further_back_pushes_less(phi in 20.0..40.0f64, from in 0.0..3.0f64, back in 0.05..2.0f64) {
        let at = |from: f64| {
            let mut b = Backfill::new(soil(18.0, phi, 0.0), Length::m(2.0));
            let (from, to) = (Length::m(from), Length::m(from + 1.0));
            b.strips = vec![Strip { value: Pressure::kpa(10.0), from, to, permanent: true }];
            Method::Rankine.active(&b).unwrap().permanent
        };
        prop_assert!(at(from + back).moment <= at(from).moment);
    }

    #[test]
    fn a_strip_never_pushes_less_than_the_worst_wedge_says(
        phi in 22.0..40.0f64, q in 0.5..200.0f64, from in 0.0..1.5f64, width in 0.2..4.0f64, height in 0.4..2.5f64,
    ) {
        let s = soil(18.0, phi, 0.0);
        let strip =
            Strip { value: Pressure::kpa(q), from: Length::m(from), to: Length::m(from + width), permanent: true };
        let mut b = Backfill::new(s.clone(), Length::m(height));
        b.strips = vec![strip];
        let by_rectangle = Method::Rankine.active(&b).unwrap().horizontal.to_kn_per_m();
        let wedge = Broken {
            soil: s,
            height: Length::m(height),
            ground: vec![(Length::ZERO, Length::ZERO), (Length::m(9.0), Length::ZERO)],
            wall_friction: Angle::ZERO,
            lean: Angle::ZERO,
            strips: vec![strip],
            crack: Length::ZERO,
            counts_cohesion: false,
        };
        let by_wedge = wedge.active().unwrap().horizontal.to_kn_per_m();
        prop_assert!(by_rectangle >= by_wedge * 0.9999, "{} {}", by_rectangle, by_wedge);
    }

    #[test]
    fn a_wider_base_stands_better(width in 0.3..2.0f64, more in 0.01..1.0f64, push in 0.5..10.0f64) {
        let at = |b: f64| {
            let weight = external::Weight { force: LineForce::kn_per_m(20.0 * b), arm: Length::m(b / 2.0) };
            let push = external::Push { force: LineForce::kn_per_m(push), height: Length::m(0.4) };
            let footing = external::Footing {
                width: Length::m(b), friction: 0.5, adhesion: Pressure::ZERO, passive: LineForce::ZERO,
            };
            external::stability(&[weight], &[push], &footing).unwrap()
        };
        let (a, b) = (at(width), at(width + more));
        prop_assert!(b.factor_overturning > a.factor_overturning && b.factor_sliding > a.factor_sliding);
        if let (Some(toe), Some(heel)) = (a.pressure_toe, a.pressure_heel) {
            prop_assert!(toe >= heel || a.eccentricity < Length::ZERO);
            if a.in_middle_third {
                prop_assert!(near((toe + heel).to_kpa() / 2.0 * width, a.vertical.to_kn_per_m(), 1e-9));
            }
        }
    }
}

fn bank(slope: f64, phi: f64, c: f64) -> Section {
    let ground = [(0.0, 0.0), (6.0, 0.0), (6.0 + 3.0 * slope, 3.0), (18.0, 3.4)];
    Section::of(soil(18.0, phi, c), ground.map(|(x, y)| Point::m(x, y)).to_vec())
}

fn mirrored(s: &Section) -> Section {
    let turn = |points: &[Point]| points.iter().rev().map(|p| Point::m(-p.x, p.y)).collect::<Vec<_>>();
    Section {
        ground: turn(&s.ground),
        layers: s.layers.iter().map(|l| Layer { soil: l.soil.clone(), top: turn(&l.top) }).collect(),
        pore: match &s.pore {
            Pore::Table(t) => Pore::Table(turn(t)),
            other => other.clone(),
        },
        loads: s.loads.iter().map(|l| GroundLoad { from: -l.to, to: -l.from, ..*l }).collect(),
        ..s.clone()
    }
}

fn full(slope: f64, phi: f64, c: f64, q: f64) -> Section {
    let mut s = bank(slope, phi, c);
    s.layers.push(Layer { soil: soil(19.0, phi + 3.0, c + 2.0), top: vec![Point::m(0.0, -0.8), Point::m(18.0, 0.4)] });
    s.pore = Pore::Table(vec![Point::m(0.0, -0.5), Point::m(6.0, -0.1), Point::m(18.0, 1.6)]);
    let (from, to) = (Length::m(7.0 + 3.0 * slope), Length::m(14.0));
    s.loads = vec![GroundLoad { value: Pressure::kpa(q), from, to }];
    s.crack = Some(Crack { depth: Length::m(0.3), water: Length::m(0.2) });
    s
}

proptest! {
    #![proptest_config(cases(10))]

    #[test]
    fn the_mirror_image_of_a_bank_has_the_same_factor(
        slope in 0.8..2.5f64, phi in 10.0..35.0f64, c in 2.0..15.0f64, q in 0.0..20.0f64,
    ) {
        let s = full(slope, phi, c, q);
        let (a, b) = (s.critical(&Search::default()).unwrap(), mirrored(&s).critical(&Search::default()).unwrap());
        prop_assert_eq!(a.factor.to_bits(), b.factor.to_bits());
        prop_assert_eq!(a.centre.x, -b.centre.x);
        for slip in [&a, &b] {
            let sheet = slip.trace.sheet().unwrap();
            prop_assert_eq!(one(&sheet.values[0]).to_bits(), slip.factor.to_bits(), "sheet and fast path");
            prop_assert_eq!(one(&sheet.values[1]), slip.centre.x);
        }
    }

    #[test]
    fn no_circle_drawn_at_random_is_worse_than_the_one_found(
        slope in 0.6..2.5f64, phi in 0.0..35.0f64, c in 2.0..15.0f64,
        draws in proptest::collection::vec((0.0..6.5f64, 8.0..17.9f64, 1.0..3.0f64), 40),
    ) {
        let s = full(slope, phi, c, 5.0);
        let found = s.critical(&Search::default()).unwrap().factor;
        for (exit, entry, times) in draws {
            let chord = groundhold_quantity::math::hypot(entry - exit, 3.3);
            let (exit, entry) = (Length::m(exit), Length::m(entry));
            if let Some(f) = s.factor(exit, entry, Length::m(0.55 * times * chord)).unwrap() {
                prop_assert!(f >= found * 0.999, "{} under {}", f, found);
            }
        }
    }

    #[test]
    fn strength_helps_and_load_water_and_steepness_do_not(
        slope in 0.8..2.0f64, phi in 12.0..30.0f64, c in 3.0..12.0f64,
    ) {
        let f = |s: &Section| s.critical(&Search::default()).unwrap().factor;
        let plain = bank(slope, phi, c);
        let base = f(&plain);
        prop_assert!(f(&bank(slope, phi + 2.0, c)) > base);
        prop_assert!(f(&bank(slope, phi, c + 1.0)) > base);
        prop_assert!(f(&bank(slope + 0.4, phi, c)) > base);
        let mut loaded = plain.clone();
        let crest = Length::m(6.0 + 3.0 * slope);
        loaded.loads = vec![GroundLoad { value: Pressure::kpa(15.0), from: crest, to: Length::m(18.0) }];
        prop_assert!(f(&loaded) < base);
        let mut wet = plain;
        wet.pore = Pore::Ratio(0.2);
        prop_assert!(f(&wet) < base);
    }

    #[test]
    fn a_deeper_post_never_makes_the_slip_under_it_easier(
        phi in 20.0..34.0f64, c in 0.5..5.0f64, tip in 0.3..1.0f64, more in 0.1..0.8f64,
    ) {
        let ground = [(-4.0, -0.6), (0.0, 0.0), (0.0, 1.0), (6.0, 1.9)];
        let s = Section::of(soil(18.0, phi, c), ground.map(|(x, y)| Point::m(x, y)).to_vec());
        let under = |depth: f64| {
            let search = Search { under: Some(Point::m(0.0, -depth)), ..Search::default() };
            s.critical(&search).unwrap()
        };
        let (short, long) = (under(tip), under(tip + more));
        prop_assert!(long.factor >= short.factor * 0.998, "{} {}", short.factor, long.factor);
        for (slip, depth) in [(short, tip), (long, tip + more)] {
            let r = slip.radius.to_m();
            let low = slip.centre.y - (r * r - slip.centre.x * slip.centre.x).sqrt();
            prop_assert!(low <= -depth + 1e-5, "passes under the tip");
            prop_assert!(slip.exit.x < 0.0 && slip.entry.x > 0.0);
        }
    }

    #[test]
    fn dry_sand_slips_along_its_surface(slope in 1.6..2.6f64, phi in 30.0..38.0f64) {
        let ground = [(0.0, 0.0), (2.0, 0.0), (2.0 + 3.0 * slope, 3.0), (4.0 + 3.0 * slope, 3.0)];
        let s = Section::of(soil(18.0, phi, 0.0), ground.map(|(x, y)| Point::m(x, y)).to_vec());
        let f = s.critical(&Search::default()).unwrap().factor;
        let endless = groundhold_quantity::math::tan(phi.to_radians()) * slope;
        prop_assert!(endless * 0.99 <= f && f <= endless * 1.08, "{} {}", f, endless);
    }
}

#[test]
fn ground_steeper_than_the_soil_is_refused_in_words() {
    let mut b = Backfill::new(soil(18.0, 30.0, 0.0), Length::m(1.0));
    b.slope = Slope::from_angle(Angle::deg(30.0));
    assert!(Method::Rankine.active(&b).is_ok(), "as steep as the friction angle is the last that stands");
    b.slope = Slope::from_angle(Angle::deg(30.1));
    for method in BOTH {
        let said = method.active(&b).unwrap_err().to_string();
        assert!(said.contains("30.1°, steeper than the soil's friction angle of 30.0°"), "{said}");
    }
}

#[test]
fn what_cannot_be_a_load_a_friction_or_a_section_is_refused_in_words() {
    let mut b = Backfill::new(soil(18.0, 30.0, 0.0), Length::m(1.0));
    b.strips = vec![Strip { value: Pressure::kpa(5.0), from: Length::m(2.0), to: Length::m(1.0), permanent: true }];
    assert!(Method::Rankine.active(&b).unwrap_err().to_string().contains("should end further from the wall"));
    b.strips.clear();
    b.wall_friction = Angle::deg(31.0);
    assert!(Method::Coulomb.active(&b).unwrap_err().to_string().contains("take δ = φ at most"));
    b.height = Length::m(f64::NAN);
    assert!(Method::Rankine.active(&b).unwrap_err().to_string().contains("height"));
    let mut s = bank(1.5, 30.0, 1.0);
    s.ground.swap(1, 2);
    assert!(s.critical(&Search::default()).unwrap_err().to_string().contains("turns back"));
    let level = Section::of(soil(18.0, 30.0, 1.0), vec![Point::m(0.0, 0.0), Point::m(10.0, 0.0)]);
    assert!(level.critical(&Search::default()).unwrap_err().to_string().contains("no circle slips"));
}

#[test]
fn nothing_to_hold_pushes_nothing() {
    let a = Method::Rankine.active(&Backfill::new(soil(18.0, 30.0, 0.0), Length::ZERO)).unwrap();
    assert_eq!((a.horizontal.si(), a.arm.si(), a.diagram.len()), (0.0, 0.0, 0));
}

#[test]
fn a_wall_a_metre_behind_a_wall_of_nine_hundred_acts_with_it() {
    let at =
        |s: f64| influence::upper_wall(Length::m(0.9), Length::m(0.6), Length::m(s), &soil(18.0, 30.0, 0.0)).unwrap();
    assert!(at(1.0).act_together && !at(1.8).act_together);
    assert!((at(1.0).load.value.to_kpa() - 10.8).abs() < 1e-9);
}

#[test]
fn every_working_has_its_own_name_and_a_source() {
    for (i, w) in WORKINGS.iter().enumerate() {
        assert!(WORKINGS[i + 1..].iter().all(|o| o.name != w.name), "{}", w.name);
        assert!(!w.source.work.is_empty() && !w.not_for.is_empty() && w.title.ends_with('?'), "{}", w.name);
    }
}

/// Any values within the rows' limits, lists of any length: each working answers or refuses.
fn some(w: &'static groundhold_working::Working) -> BoxedStrategy<Vec<Value>> {
    let row = |i: &groundhold_working::Input| {
        let (lo, hi) = (i.limits.least.max(-1e3), i.limits.most.min(1e3));
        prop_oneof![
            (lo..=hi).prop_map(Value::One),
            proptest::collection::vec(lo..=hi, 0..5).prop_map(Value::Many),
            Just(i.default.map_or(Value::One(lo), Value::One)),
            Just(Value::One(hi)),
        ]
    };
    w.inputs.iter().map(row).collect::<Vec<_>>().boxed()
}

proptest! {
    #![proptest_config(cases(24))]

    #[test]
    fn no_working_panics_on_values_within_its_limits(
        all in WORKINGS.iter().map(|w| some(w)).collect::<Vec<_>>(),
    ) {
        for (w, given) in WORKINGS.iter().zip(all) {
            let _ = w.work_in_order(given);
        }
    }
}

#[test]
fn a_trace_of_cohesion_changes_the_thrust_on_a_slope_by_a_trace() {
    let mut b = Backfill::new(soil(15.0, 22.0, 0.0), Length::m(2.8));
    b.slope = Slope::ratio(0.29);
    b.counts_cohesion = true;
    let without = Method::Rankine.active(&b).unwrap().horizontal.si();
    b.soil.cohesion = Pressure::kpa(1e-4);
    let with = Method::Rankine.active(&b).unwrap().horizontal.si();
    assert!(with < without && with > without * 0.999, "{without} {with}");
}

#[test]
fn soil_without_friction_carries_a_strip_like_a_liquid() {
    let mut b = Backfill::new(soil(18.0, 0.0, 0.0), Length::m(2.0));
    let strip = |from: f64, to: f64| Strip {
        value: Pressure::kpa(10.0),
        from: Length::m(from),
        to: Length::m(to),
        permanent: true,
    };
    b.strips = vec![strip(0.5, 1.5)];
    let near_the_wall = Method::Rankine.active(&b).unwrap();
    assert!((near_the_wall.soil.horizontal.to_kn_per_m() - 36.0).abs() < 1e-9);
    assert!(near_the_wall.permanent.horizontal.to_kn_per_m() >= 10.0 - 1e-9);
    assert!(near_the_wall.horizontal.is_finite() && near_the_wall.moment.is_finite());
}
