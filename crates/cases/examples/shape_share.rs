//! How long do the stages of the job of thirty elements take when one point of a wall is dragged?
//!
//! Prints medians of planning it with a wall's point moved each time, and of `shape` and the survey alone.

use std::time::Instant;

use groundhold_quantity::{Length, Vector};

const FILES: &[(&str, &str)] = &[
    ("spots.csv", include_str!("../../../demo/jobs/terraces/spots.csv")),
    ("prices.csv", include_str!("../../../demo/jobs/terraces/prices.csv")),
];

fn main() {
    let open = |name: &str| {
        FILES.iter().find(|(n, _)| *n == name).map(|(_, t)| (*t).to_string()).ok_or_else(|| "no such table".to_string())
    };
    let text = include_str!("../../../demo/jobs/terraces/job.toml");
    let read = groundhold_exchange::read_job("job.toml", text, &open);
    read.problems.iter().for_each(|p| println!("{p}"));
    let Some(job) = read.job else { return };
    let mut times: Vec<[f64; 3]> = vec![];
    let mut memory = groundhold_shape::Memory::default();
    for k in 0..9 {
        let mut moved = job.clone();
        let by = f64::from(k) * 0.01;
        moved.walls[0].line[1] = moved.walls[0].line[1] + Vector::m(-by, by);
        let begun = Instant::now();
        let planned = groundhold_plan::plan(&moved);
        let whole = begun.elapsed().as_secs_f64() * 1e3;
        let Ok(plan) = planned else {
            println!("not planned: {:?}", planned.err());
            return;
        };
        let wish = groundhold_plan::wished(&plan);
        let begun = Instant::now();
        let shaped = groundhold_shape::shape(&plan.survey.ground, &wish);
        let alone = begun.elapsed().as_secs_f64() * 1e3;
        let begun = Instant::now();
        let again = groundhold_shape::shape_again(&plan.survey.ground, &wish, &mut memory);
        times.push([whole, alone, begun.elapsed().as_secs_f64() * 1e3]);
        assert!(again == shaped, "shape with a memory gives something else");
        std::hint::black_box(shaped.walls.iter().map(|w| w.length).sum::<Length>());
        if k == 0 {
            println!("{} pieces of finished ground, {} findings", shaped.grounds.len(), plan.findings.len());
            for f in &plan.findings {
                println!("  {} {}", f.kind.code, f.says);
            }
        }
    }
    for (k, what) in
        ["plan with one point of W1 moved", "shape alone", "shape with its memory of the drag"].iter().enumerate()
    {
        let mut t: Vec<f64> = times.iter().map(|t| t[k]).collect();
        t.sort_by(f64::total_cmp);
        println!("{what:<40} {:8.2} ms", t[t.len() / 2]);
    }
}
