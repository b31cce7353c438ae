//! Planning a job and writing what comes of it.

use std::path::{Path, PathBuf};

use clap::Args;
use groundhold_plan::Plan;

use crate::files::{self, Opened};
use crate::{Ending, Refusal, record, say, summary};

/// A job and where to write.
#[derive(Args)]
pub struct OutArgs {
    /// Folder of the job, or its job file.
    #[arg(default_value = ".")]
    job: PathBuf,
    /// Folder to write into; `out` in the job's folder if left out.
    #[arg(long)]
    out: Option<PathBuf>,
    /// Date for the title block, if not today's.
    #[arg(long)]
    date: Option<String>,
}

impl OutArgs {
    fn open(&self) -> Result<(Opened, Plan, PathBuf), Refusal> {
        let opened = files::open(&self.job)?;
        let plan = files::planned(&opened.job)?;
        let out = self.out.clone().unwrap_or_else(|| opened.folder.join("out"));
        Ok((opened, plan, out))
    }
    fn date(&self) -> String {
        self.date.clone().unwrap_or_else(record::today)
    }
}

/// Plans and says on one screen what comes of it.
pub fn plan(path: &Path, json: bool, findings: bool, balance: bool, year: Option<u32>) -> Result<Ending, Refusal> {
    let mut opened = files::open(path)?;
    if let Some(year) = year {
        let (job, without) = groundhold_plan::in_year(&opened.job, year);
        opened.job = job;
        if !json {
            say::line!("The walls in year {year} of their service. A guide for inspection, not a promise.");
            for id in without {
                say::line!("{id} is built of what this tool does not age; it is judged as new.");
            }
        }
    }
    let plan = files::planned(&opened.job)?;
    if json {
        say::line!("{}", groundhold_exchange::plan_json(&plan));
    } else if findings {
        say::text(&summary::findings(&plan))?;
    } else {
        say::text(&summary::screen(&plan))?;
    }
    if balance {
        say::text(&summary::balance(&groundhold_plan::balance(&opened.job), opened.job.about.units))?;
    }
    Ok(summary::ending(&plan))
}

/// Writes every drawing as SVG.
pub fn draw(args: &OutArgs) -> Result<Ending, Refusal> {
    let (_, plan, out) = args.open()?;
    report(&out, &write_drawings(&plan, &out)?)?;
    Ok(summary::ending(&plan))
}

/// Writes the drawing set.
pub fn paper(args: &OutArgs) -> Result<Ending, Refusal> {
    let (_, plan, out) = args.open()?;
    report(&out, &write_paper(&plan, &out, &args.date())?)?;
    Ok(summary::ending(&plan))
}

/// Writes the order.
pub fn order(args: &OutArgs, json: bool) -> Result<Ending, Refusal> {
    let (_, plan, out) = args.open()?;
    if json {
        say::line!("{}", groundhold_exchange::plan_json(&plan));
        return Ok(summary::ending(&plan));
    }
    say::text(&summary::order(&plan))?;
    let mut names = write_tables(&plan, &out, |n| !n.starts_with("set-out") && n != "posts.csv")?;
    names.extend(write_spreadsheet(&plan, &out, &args.date())?);
    report(&out, &names)?;
    Ok(summary::ending(&plan))
}

/// Writes the set-out tables.
pub fn setout(args: &OutArgs, json: bool) -> Result<Ending, Refusal> {
    let (_, plan, out) = args.open()?;
    if json {
        say::line!("{}", groundhold_exchange::plan_json(&plan));
        return Ok(summary::ending(&plan));
    }
    say::text(&summary::setout(&plan))?;
    report(&out, &write_tables(&plan, &out, |n| n.starts_with("set-out") || n == "posts.csv")?)?;
    Ok(summary::ending(&plan))
}

pub(crate) fn report(out: &Path, names: &[String]) -> Result<(), Refusal> {
    say::line!("wrote {} into {}", names.join(", "), out.display());
    Ok(())
}

pub(crate) fn write_drawings(plan: &Plan, out: &Path) -> Result<Vec<String>, Refusal> {
    let mut names = vec![];
    for (name, scene) in groundhold_draw::drawings(plan) {
        let name = format!("{name}.svg");
        files::write(&out.join("drawings").join(&name), groundhold_draw::to_svg(&scene).as_bytes())?;
        names.push(format!("drawings/{name}"));
    }
    Ok(names)
}

pub(crate) fn write_paper(plan: &Plan, out: &Path, date: &str) -> Result<Vec<String>, Refusal> {
    let bytes = groundhold_paper::pdf_set(plan, date).map_err(|e| e.to_string())?;
    files::write(&out.join("plan-set.pdf"), &bytes)?;
    Ok(vec!["plan-set.pdf".into()])
}

pub(crate) fn write_tables(plan: &Plan, out: &Path, wanted: impl Fn(&str) -> bool) -> Result<Vec<String>, Refusal> {
    let mut names = vec![];
    for (name, text) in groundhold_exchange::tables_out(plan) {
        if wanted(&name) {
            files::write(&out.join(&name), text.as_bytes())?;
            names.push(name);
        }
    }
    Ok(names)
}

pub(crate) fn write_spreadsheet(plan: &Plan, out: &Path, date: &str) -> Result<Vec<String>, Refusal> {
    let bytes = groundhold_exchange::spreadsheet(plan, date).map_err(|e| e.to_string())?;
    files::write(&out.join("order.xlsx"), &bytes)?;
    Ok(vec!["order.xlsx".into()])
}
