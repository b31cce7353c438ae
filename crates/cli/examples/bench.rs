//! Speeds: the yardstick (sorting a million random numbers), `plan` of the demo job, and how cost grows with points.
//!
//! `cargo xtask bench` runs it in release. Times are medians; machines differ, so each stands as a ratio too.

use std::time::Instant;

use groundhold_quantity::{Level, Point};
use groundhold_surface::{GroundPoint, Tin};

const FILES: &[(&str, &str)] = &[
    ("levels.csv", include_str!("../../../demo/levels.csv")),
    ("positions.csv", include_str!("../../../demo/positions.csv")),
    ("prices.csv", include_str!("../../../demo/prices.csv")),
];

struct Chance(u64);

impl Chance {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }
}

fn median(runs: usize, mut f: impl FnMut()) -> f64 {
    let mut times: Vec<f64> = (0..runs)
        .map(|_| {
            let begun = Instant::now();
            f();
            begun.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[runs / 2]
}

fn yardstick() -> f64 {
    let mut chance = Chance(7);
    let numbers: Vec<f64> = (0..1_000_000).map(|_| chance.next()).collect();
    median(5, || {
        let mut n = numbers.clone();
        n.sort_by(f64::total_cmp);
        std::hint::black_box(n);
    })
}

/// A corner of a wall under a finger: each frame moves it by a millimetre more and plans again.
fn dragged(job: &groundhold_plan::job::Job, say: &impl Fn(&str, f64)) {
    let mut job = job.clone();
    let Ok(mut before) = groundhold_plan::plan_quick(&job) else { return };
    let frame = median(41, || {
        let Some(corner) = job.walls.first_mut().and_then(|w| w.line.first_mut()) else { return };
        corner.x += 0.001;
        if let Ok(after) = groundhold_plan::replan_quick(&before, &job) {
            before = after;
        }
    });
    say("plan it again while a wall's corner is dragged", frame);
}

fn main() {
    let before = yardstick();
    println!("yardstick: sorting a million random numbers       {before:9.2} ms");
    let open = |name: &str| {
        FILES.iter().find(|(n, _)| *n == name).map(|(_, t)| (*t).to_string()).ok_or_else(|| "no such table".to_string())
    };
    let text = include_str!("../../../demo/job.toml");
    let say = |what: &str, ms: f64| println!("{what:<49} {ms:9.2} ms  {:6.3} of the yardstick", ms / before);
    say(
        "read the demo job",
        median(21, || {
            std::hint::black_box(groundhold_exchange::read_job("job.toml", text, &open));
        }),
    );
    let Some(job) = groundhold_exchange::read_job("job.toml", text, &open).job else { return };
    say(
        "plan the demo job",
        median(21, || {
            let _ = std::hint::black_box(groundhold_plan::plan(&job));
        }),
    );
    // `bench plan` is for a profiler: it ends here.
    if std::env::args().any(|a| a == "plan") {
        for _ in 0..100 {
            let _ = std::hint::black_box(groundhold_plan::plan(&job));
        }
        return;
    }
    say(
        "plan it and price every remedy",
        median(5, || {
            let _ = std::hint::black_box(groundhold_plan::plan_priced(&job));
        }),
    );
    dragged(&job, &say);
    if let Ok(plan) = groundhold_plan::plan(&job) {
        say(
            "all drawings as SVG",
            median(5, || {
                for (_, scene) in groundhold_draw::drawings(&plan) {
                    std::hint::black_box(groundhold_draw::to_svg(&scene));
                }
            }),
        );
        say(
            "the PDF set",
            median(3, || {
                let _ = std::hint::black_box(groundhold_paper::pdf_set(&plan, "2026-01-01"));
            }),
        );
    }
    for n in [1_000, 10_000, 100_000] {
        let mut chance = Chance(n as u64);
        let points: Vec<GroundPoint> = (0..n)
            .map(|i| GroundPoint {
                id: i.to_string(),
                at: Point::m(1000.0 * chance.next(), 1000.0 * chance.next()),
                level: Level::m(chance.next()),
            })
            .collect();
        let ms = median(3, || {
            let _ = std::hint::black_box(Tin::build(&points, &[], None));
        });
        let each = ms * 1e6 / (n as f64 * (n as f64).log2());
        println!("triangulate {n:>7} points                         {ms:9.2} ms  {each:6.1} ns per n log n");
    }
    println!("yardstick again                                   {:9.2} ms", yardstick());
}
