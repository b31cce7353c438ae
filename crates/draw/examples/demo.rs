//! How do the drawings of the demo job look, or of another job file? Writes each as SVG into the folder given first.

use groundhold_draw::{drawings, picture, to_svg};

fn main() {
    let Some(folder) = std::env::args().nth(1) else {
        eprintln!("usage: demo FOLDER [JOB.toml]");
        std::process::exit(2);
    };
    let open = |name: &str| match name {
        "levels.csv" => Ok(include_str!("../../../demo/levels.csv").to_string()),
        "positions.csv" => Ok(include_str!("../../../demo/positions.csv").to_string()),
        "prices.csv" => Ok(include_str!("../../../demo/prices.csv").to_string()),
        other => Err(format!("the demo has no table {other}")),
    };
    let text = match std::env::args().nth(2) {
        None => include_str!("../../../demo/job.toml").to_string(),
        Some(path) => std::fs::read_to_string(&path).unwrap_or_else(|e| {
            eprintln!("{path}: {e}");
            std::process::exit(2);
        }),
    };
    let job = match groundhold_exchange::read_job("job.toml", &text, &open).whole() {
        Ok(job) => job,
        Err(problems) => {
            eprintln!("{problems:?}");
            std::process::exit(2);
        }
    };
    let plan = match groundhold_plan::plan(&job) {
        Ok(plan) => plan,
        Err(troubles) => {
            eprintln!("{troubles:?}");
            std::process::exit(2);
        }
    };
    let mut all = drawings(&plan);
    all.push(("picture".into(), picture(&plan)));
    for (name, scene) in all {
        let path = format!("{folder}/{name}.svg");
        if let Err(e) = std::fs::write(&path, to_svg(&scene)) {
            eprintln!("{path}: {e}");
            std::process::exit(2);
        }
        println!("{name}: {} {}", scene.scale, scene.title);
    }
}
