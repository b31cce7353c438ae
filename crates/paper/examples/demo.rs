//! The demo job's drawing set, written to the path given: `cargo run -p groundhold-paper --example demo -- out.pdf`.

fn main() -> Result<(), String> {
    let path = std::env::args().nth(1).ok_or("which file shall be written?")?;
    let open = |name: &str| match name {
        "levels.csv" => Ok(include_str!("../../../demo/levels.csv").to_string()),
        "positions.csv" => Ok(include_str!("../../../demo/positions.csv").to_string()),
        "prices.csv" => Ok(include_str!("../../../demo/prices.csv").to_string()),
        other => Err(format!("there is no table {other}")),
    };
    let read = groundhold_exchange::read_job("job.toml", include_str!("../../../demo/job.toml"), &open);
    let job = read.whole().map_err(|p| format!("{p:?}"))?;
    let plan = groundhold_plan::plan_priced(&job).map_err(|t| format!("{t:?}"))?;
    let bytes = groundhold_paper::pdf_set(&plan, "2026-11-25").map_err(|e| e.to_string())?;
    std::fs::write(&path, bytes).map_err(|e| format!("{path}: {e}"))
}
