//! The demo job, carried in the program: planned, and everything it makes written into a folder.

use std::path::Path;
use std::time::Instant;

use crate::{Ending, Refusal, files, jobs, record, say, summary};

/// The files of the demo job. Everything in them is invented and says so.
pub const FILES: &[(&str, &str)] = &[
    ("job.toml", include_str!("../../../demo/job.toml")),
    ("levels.csv", include_str!("../../../demo/levels.csv")),
    ("positions.csv", include_str!("../../../demo/positions.csv")),
    ("prices.csv", include_str!("../../../demo/prices.csv")),
];

/// Writes the demo job, plans it and writes all that comes of it.
pub fn demo(out: &Path, json: bool) -> Result<Ending, Refusal> {
    let begun = Instant::now();
    let job_folder = out.join("job");
    let mut kept = vec![];
    for (name, text) in FILES {
        let file = job_folder.join(name);
        match std::fs::read_to_string(&file) {
            Ok(there) if there != *text => kept.push(*name),
            Ok(_) => {}
            Err(_) => files::write(&file, text.as_bytes())?,
        }
    }
    let opened = files::open(&job_folder)?;
    let plan = files::planned(&opened.job)?;
    let date = record::today();
    let drawings = jobs::write_drawings(&plan, out)?;
    let picture = groundhold_draw::to_svg(&groundhold_draw::picture(&plan));
    files::write(&out.join("picture.svg"), picture.as_bytes())?;
    let mut names = jobs::write_paper(&plan, out, &date)?;
    names.extend(jobs::write_spreadsheet(&plan, out, &date)?);
    names.extend(jobs::write_tables(&plan, out, |_| true)?);
    files::write(&out.join("plan.json"), groundhold_exchange::plan_json(&plan).as_bytes())?;
    names.extend(["picture.svg".into(), "plan.json".into()]);
    if json {
        say::line!("{}", groundhold_exchange::plan_json(&plan));
        return Ok(Ending::Fine);
    }
    say::text(&summary::screen(&plan))?;
    if !kept.is_empty() {
        say::line!("your own {} in {} was kept and planned", kept.join(", "), job_folder.display());
    }
    say::line!("\n{} drawings, {}", drawings.len(), names.join(", "));
    say::line!("in {} ({:.1} s)", out.display(), begun.elapsed().as_secs_f64());
    Ok(Ending::Fine)
}
