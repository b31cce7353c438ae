//! How long do all checks of a wall of twenty metres take, system by system, with the slip of its bank?
//!
//! `cargo xtask bench` runs it in release after the bench of the demo job. Times are medians; the machine's yardstick stands there.

use std::time::Instant;

use groundhold_hold::{Spec, hold};
use groundhold_plan::plan;
use groundhold_quantity::{Length, Point};

macro_rules! demo {
    ($key:literal) => {
        (
            $key,
            include_str!(concat!("../../../demo/walls/", $key, "/job.toml")),
            include_str!(concat!("../../../demo/walls/", $key, "/prices.csv")),
        )
    };
}

const DEMOS: &[(&str, &str, &str)] = &[
    demo!("gabion"),
    demo!("dry-stone"),
    demo!("mass-wall"),
    demo!("dry-block"),
    demo!("cantilever"),
    demo!("steel-post-and-panel"),
    demo!("stacked-timbers"),
];
/// Length of the walls.
const LONG: f64 = 20.0;

fn main() {
    for (key, text, prices) in DEMOS {
        time(key, text, prices, |_| {});
        if *key == "gabion" {
            // The system of the large demo, on the same ground.
            time("timber-post-and-board", text, prices, |spec| {
                let Some(mut timber) = Spec::of("timber-post-and-board") else { return };
                let sizes = [
                    ("post", "150x200 UC4 C24"),
                    ("board", "200x50 UC4 C24"),
                    ("spacing", "1.0 m"),
                    ("hole_depth", "2.4 m"),
                ];
                if sizes.iter().all(|(k, v)| timber.change(k, v).is_ok()) {
                    *spec = timber;
                }
            });
        }
    }
}

/// The demo of a system with its plot and its wall drawn out to [`LONG`].
fn time(key: &str, text: &str, prices: &str, change: impl FnOnce(&mut Spec)) {
    let open = |name: &str| if name == "prices.csv" { Ok(prices.to_string()) } else { Err("no such table".into()) };
    let Some(mut job) = groundhold_exchange::read_job("job.toml", text, &open).job else { return };
    let far = |p: &mut Point| {
        if p.x > 4.0 {
            p.x = LONG;
        }
    };
    if let Some(slope) = &mut job.measure.quick {
        slope.width = Length::m(LONG);
    }
    job.pads.iter_mut().for_each(|p| p.corners.iter_mut().for_each(far));
    let Some(wall) = job.walls.first_mut() else { return };
    wall.line.iter_mut().for_each(far);
    change(&mut wall.spec);
    let Ok(plan) = plan(&job) else {
        println!("{key:<24} could not be planned at {LONG} m");
        return;
    };
    let Some(case) = plan.walls.first().map(|w| w.case.clone()) else { return };
    let mut times: Vec<f64> = (0..15)
        .map(|_| {
            let begun = Instant::now();
            let _ = std::hint::black_box(hold(&case));
            begun.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    let (checks, stops) = plan
        .walls
        .first()
        .map_or((0, 0), |w| (w.verdict.checks.len(), w.verdict.checks.iter().filter(|c| c.fails()).count()));
    println!(
        "all checks of a wall of {:>5.1} m of {key:<24} {:8.2} ms  {checks} checks, {stops} of them failing",
        plan.walls.first().map_or(0.0, |w| w.layout.length.to_m()),
        times[times.len() / 2]
    );
}
