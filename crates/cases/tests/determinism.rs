//! Does the same job give the same plan, and does the order of rows not matter?
#![allow(clippy::unwrap_used, missing_docs)]

use groundhold_cases::{DEMO, DEMO_TABLES, demo, job, planned};
use groundhold_plan::Plan;
use groundhold_quantity::Level;
use proptest::prelude::*;

#[test]
fn a_job_read_and_planned_twice_gives_the_same_plan_to_the_last_letter() {
    let twice = [0, 1].map(|_| format!("{:?}", planned(&job(DEMO, DEMO_TABLES))));
    assert!(twice[0] == twice[1], "two plans of one job differ");
    assert!(twice[0].len() > 10_000, "a plan of the demo has more to say than {} letters", twice[0].len());
}

/// Everything of a plan that has a level, with its name.
fn levels(p: &Plan) -> Vec<(String, Level)> {
    let mut all = vec![];
    for w in &p.walls {
        for q in &w.layout.posts {
            let name = format!("{} post {}", w.id, q.number);
            all.extend([
                (name.clone() + " top", q.top),
                (name.clone() + " front", q.front),
                (name + " bottom", q.bottom),
            ]);
        }
        all.extend(w.layout.boards.iter().map(|b| (format!("{} {}", w.id, b.mark), b.top)));
    }
    all.extend(p.shaped.pads.iter().map(|x| (x.id.clone(), x.plane.level_at(x.polygon.centroid()))));
    all.extend(p.shaped.flights.iter().map(|x| (x.id.clone(), x.foot_level)));
    all.extend(p.shaped.ramps.iter().map(|x| (x.id.clone(), x.foot_level)));
    all.extend(p.drained.pipes.iter().flat_map(|d| d.points.iter().map(|x| (d.wall.clone(), x.invert))));
    all
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 6, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn rows_of_the_position_book_in_another_order_change_nothing_that_matters(order in Just((0..62).collect::<Vec<usize>>()).prop_shuffle()) {
        let job = demo();
        prop_assert_eq!(job.measure.positions.len(), order.len());
        let mut mixed = job.clone();
        mixed.measure.positions = order.iter().map(|i| job.measure.positions[*i].clone()).collect();
        let (a, b) = (planned(&job), planned(&mixed));
        let (la, lb) = (levels(&a), levels(&b));
        prop_assert!(la.len() > 50 && la.len() == lb.len(), "{} levels and {}", la.len(), lb.len());
        for (x, y) in la.iter().zip(&lb) {
            prop_assert_eq!(&x.0, &y.0);
            prop_assert!((x.1 - y.1).to_m().abs() <= 1e-9, "{}: {} and {}", x.0, x.1.to_m(), y.1.to_m());
        }
        prop_assert_eq!(a.quote.total, b.quote.total);
        let codes = |p: &Plan| p.findings.iter().map(|f| (f.kind.code, f.place.clone())).collect::<Vec<_>>();
        prop_assert_eq!(codes(&a), codes(&b));
    }
}
