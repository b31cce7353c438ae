//! Does the job of thirty elements, with every way of shaping in it, hold together?

use groundhold_cases::{job, planned};
use groundhold_plan::check;
use groundhold_plan::job::Job;

const TABLES: groundhold_cases::Tables<'static> = &[
    ("spots.csv", include_str!("../../../demo/jobs/terraces/spots.csv")),
    ("prices.csv", include_str!("../../../demo/jobs/terraces/prices.csv")),
];

fn terraces() -> Job {
    job(include_str!("../../../demo/jobs/terraces/job.toml"), TABLES)
}

#[test]
fn thirty_elements_are_planned_and_nothing_is_violated() {
    let job = terraces();
    assert_eq!(job.pads.len() + job.walls.len() + job.flights.len() + job.ramps.len() + job.near.len(), 30);
    let plan = planned(&job);
    assert_eq!(check(&plan), vec![]);
    // Every element was shaped, none left out.
    let shaped = &plan.shaped;
    assert_eq!((shaped.pads.len(), shaped.walls.len(), shaped.flights.len(), shaped.ramps.len()), (6, 10, 5, 3));
    for f in plan.findings.iter().filter(|f| f.kind.code.starts_with('G')) {
        println!("{} {}", f.kind.code, f.says);
    }
}

#[test]
fn the_job_written_and_read_again_is_the_same() {
    let job = terraces();
    let text = groundhold_exchange::job_text(&job);
    let tables = groundhold_exchange::job_tables(&job);
    let tables: Vec<(&str, &str)> = tables.iter().map(|(n, t)| (n.as_str(), t.as_str())).collect();
    let again = groundhold_cases::job(&text, &tables);
    assert_eq!(job.walls, again.walls);
    assert_eq!(job.ramps, again.ramps);
    assert_eq!(job.flights, again.flights);
    for (a, b) in job.pads.iter().zip(&again.pads) {
        assert_eq!((&a.corners, &a.bends, &a.batter, a.level), (&b.corners, &b.bends, &b.batter, b.level));
    }
}
