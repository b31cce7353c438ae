//! Does the whole job follow when water is led and ground is moved in other ways than the demo's?
#![allow(clippy::unwrap_used, missing_docs)]

use groundhold_cases::{demo, planned};
use groundhold_drain::{SoakawayWish, SwaleWish, WeepWish};
use groundhold_plan::job::{Job, NearKind, PadLevel};
use groundhold_plan::{Plan, check, plan};
use groundhold_quantity::{Length, Level, Point, RainIntensity, Share, Time, Volume};

fn with(change: impl FnOnce(&mut Job)) -> Plan {
    let mut job = demo();
    change(&mut job);
    let plan = planned(&job);
    assert_eq!(check(&plan), vec![]);
    plan
}

fn codes(plan: &Plan) -> Vec<&'static str> {
    plan.findings.iter().map(|f| f.kind.code).collect()
}

#[test]
fn a_swale_above_the_uphill_wall_takes_what_comes_from_above_and_is_dug() {
    let before = planned(&demo());
    let after = with(|j| j.drain.swales = vec![SwaleWish::above("W1")]);
    let flow = |p: &Plan| p.drained.wall("W1").unwrap().flow.unwrap();
    let swale = &after.drained.swales[0];
    // The wall's wings still catch what falls beside and below the swale.
    assert!(flow(&after) < flow(&before) * 0.6, "{:?} of {:?}", flow(&after), flow(&before));
    assert!(swale.flow.unwrap() + flow(&after) >= flow(&before));
    assert!(after.dug.rows.iter().any(|r| r.element == "swale above W1" && r.dug == swale.dug));
    assert!(after.dug.subsoil.dug > before.dug.subsoil.dug);
}

#[test]
fn weep_holes_take_load_off_a_wall_whose_drain_is_blocked() {
    let worst = |p: &Plan| {
        let w = p.wall("W1").unwrap();
        let blocked = w.verdict.checks.iter().filter(|c| c.case == groundhold_hold::LoadCase::DrainBlocked);
        blocked.map(|c| c.utilisation).fold(0.0, f64::max)
    };
    let before = worst(&planned(&demo()));
    let after = worst(&with(|j| j.drain.weeps = Some(WeepWish { above: Length::mm(50.0), ..WeepWish::default() })));
    assert!(after < before, "{after} of {before}");
}

#[test]
fn a_soakaway_in_place_of_the_outlet_is_sized_or_says_what_it_lacks() {
    let wish = SoakawayWish {
        at: Point::m(0.8, -0.6),
        level: Level::m(99.4),
        length: None,
        width: Length::m(0.8),
        depth: Length::m(0.8),
        empty: Share::fraction(0.3),
        rate: Some(RainIntensity::mm_per_h(60.0)),
        source: "a trial pit (invented)".into(),
    };
    let led = |j: &mut Job| {
        j.drain.outlet = None;
        j.drain.soakaway = Some(wish.clone());
    };
    let unsized_ = with(led);
    assert!(codes(&unsized_).contains(&"W-024") && unsized_.drained.soakaway.is_none());
    let sized = with(|j| {
        led(j);
        let row = |min: f64, mm: f64| (Time::min_(min), RainIntensity::mm_per_h(mm));
        j.drain.rain_curve = vec![row(5.0, 110.0), row(60.0, 30.0), row(1440.0, 2.0)];
    });
    let pit = sized.drained.soakaway.as_ref().unwrap();
    assert!(pit.asked <= pit.has);
    assert!(sized.drained.pipes.iter().any(|p| p.outlet.is_some_and(|o| o.at == pit.wish.at)));
    assert!(sized.take_off.lines.iter().any(|l| l.item == "geotextile"));
}

#[test]
fn rock_that_was_probed_is_counted_by_itself_and_the_ground_is_all_kept() {
    let plain = planned(&demo());
    let rocky = with(|j| {
        j.ground.rock = vec![(Point::m(4.0, 8.0), Length::mm(500.0)), (Point::m(8.5, 8.5), Length::mm(600.0))]
    });
    assert!(rocky.dug.rock.dug > Volume::litre(100.0), "{:?}", rocky.dug.rock.dug);
    let sum = |p: &Plan| p.dug.dug().to_m3();
    assert!((sum(&rocky) - sum(&plain)).abs() < 1e-9 * sum(&plain));
    assert!(codes(&rocky).contains(&"D-014"));
}

#[test]
fn a_pad_at_its_cheapest_level_costs_no_more_than_at_its_limits() {
    let at = |level: PadLevel| {
        let mut job = demo();
        job.pads[0].level = level;
        job.pads[0].between = Some((Level::m(100.95), Level::m(101.25)));
        planned(&job)
    };
    let cheap = at(PadLevel::Cheapest);
    let level = cheap.shaped.pads[0].plane.level_at(Point::m(6.0, 6.0));
    assert!(level >= Level::m(100.949) && level <= Level::m(101.251), "{level:?}");
    let loads = |p: &Plan| p.dug.streams().iter().filter_map(|s| s.loads.as_ref()).map(|l| l.exact).sum::<f64>();
    assert!(loads(&cheap) <= loads(&at(PadLevel::At(Level::m(100.95)))) + 1e-9);
}

#[test]
fn soil_is_carried_to_the_street_with_a_proof_and_heaps_keep_off_roots_and_walls() {
    let plan = with(|j| {
        let mut street = j.near[0].clone();
        (street.id, street.kind) = ("N9".into(), NearKind::Street);
        street.line = vec![Point::m(-2.0, -1.8), Point::m(15.0, -1.8)];
        j.near.push(street);
    });
    let c = plan.groundwork.carried.as_ref().unwrap();
    assert!(plan.groundwork.gate.unwrap().1 && c.carries.iter().any(|x| x.to == "gate"));
    assert!((c.work - c.bound).abs() < 1e-6 * c.work);
    let tree = plan.job.near.iter().find(|n| matches!(n.kind, NearKind::Tree { .. })).unwrap();
    for h in &plan.groundwork.stockpiled.placed {
        let gap = groundhold_quantity::distance(h.at, tree.line[0]) - h.radius;
        assert!(gap >= Length::m(3.0) - Length::mm(1.0), "{h:?}");
        assert!(plan.shaped.ground_at(h.at).is_none(), "{h:?}");
    }
    assert!(
        !codes(&plan).contains(&"D-007")
            || plan.findings.iter().any(|f| f.kind.code == "D-007" && f.severity < groundhold_finding::Severity::Watch)
    );
}

#[test]
fn a_sieve_test_that_is_none_and_a_swale_above_no_wall_stop_the_plan_with_their_place() {
    let mut job = demo();
    job.ground.sieves = vec![(Length::mm(0.075), Share::percent(30.0)), (Length::mm(1.0), Share::percent(20.0))];
    job.drain.swales = vec![SwaleWish::above("W9")];
    let said: Vec<String> = plan(&job).unwrap_err().iter().map(|t| t.to_string()).collect();
    assert!(said.iter().any(|s| s.contains("sieve")) && said.iter().any(|s| s.contains("W9")), "{said:?}");
}

#[test]
fn a_sieve_test_takes_the_place_of_the_class_in_the_filter() {
    let plan = with(|j| {
        let row = |mm: f64, p: f64| (Length::mm(mm), Share::percent(p));
        j.ground.sieves = vec![row(0.05, 2.0), row(0.3, 15.0), row(1.0, 50.0), row(4.0, 85.0), row(4.75, 100.0)];
    });
    let f = plan.drained.wall("W1").unwrap().filter.as_ref().unwrap();
    assert_eq!(f.category, 4);
    assert!((f.d15_most.to_mm() - 16.0).abs() < 1e-9, "four times d85 of 4 mm");
}
