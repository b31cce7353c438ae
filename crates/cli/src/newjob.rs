//! A first job from a few questions: as little as a fall over a length.

use std::io::BufRead;
use std::path::PathBuf;

use clap::Args;
use groundhold_quantity::{Length, Quantity, Slope, parse};

use crate::{Ending, Refusal, files, record, say};

/// Answers given beforehand; what is missing is asked.
#[derive(Args)]
pub struct NewArgs {
    /// Folder to write the job into.
    folder: PathBuf,
    /// What the job is called.
    #[arg(long)]
    name: Option<String>,
    /// How much the ground falls: "600 mm", or a slope with --over: "14 deg".
    #[arg(long)]
    fall: Option<String>,
    /// Over which plan length: "7 m".
    #[arg(long)]
    over: Option<String>,
    /// How wide the piece of ground is: "6 m".
    #[arg(long)]
    width: Option<String>,
    /// How many level areas, one above the other.
    #[arg(long)]
    tiers: Option<u32>,
    /// Class of soil, told by hand.
    #[arg(long)]
    soil: Option<String>,
    /// Region pack.
    #[arg(long, default_value = "generic")]
    region: String,
    /// Units for people: metric or feet.
    #[arg(long, default_value = "metric")]
    units: String,
}

fn ask(question: &str, given: &Option<String>, usual: &str) -> Result<String, Refusal> {
    if let Some(g) = given {
        return Ok(g.clone());
    }
    say::text(&format!("{question} [{usual}] "))?;
    let mut line = String::new();
    std::io::stdin().lock().read_line(&mut line).map_err(|e| e.to_string())?;
    let answer = line.trim();
    Ok(if answer.is_empty() { usual.to_string() } else { answer.to_string() })
}

fn length(text: &str, what: &str) -> Result<Length, Refusal> {
    match parse::<Length>(text) {
        Ok(l) if l > Length::ZERO => Ok(l),
        Ok(_) => Err(format!("{what}: found `{text}`, expected more than nothing")),
        Err(e) => Err(format!("{what}: {e}")),
    }
}

/// Asks, and writes the job.
pub fn new_job(args: &NewArgs) -> Result<Ending, Refusal> {
    let file = args.folder.join("job.toml");
    if !record::is_free(&file) {
        return Err(format!("{} is there already and was not touched", file.display()));
    }
    let name = ask("What is the job called?", &args.name, "My slope")?;
    let over = length(&ask("Over which plan length does it fall?", &args.over, "7 m")?, "over")?;
    let fall_text =
        ask("How much does it fall there (a height, or a slope such as 1:8 or 14 deg)?", &args.fall, "600 mm")?;
    let fall = match parse::<Length>(&fall_text) {
        Ok(l) if l > Length::ZERO => l,
        _ => match parse::<Slope>(&fall_text) {
            Ok(s) if s.in_si() > 0.0 => over * s.to_ratio(),
            _ => {
                return Err(format!(
                    "fall: found `{fall_text}`, expected a height such as 600 mm or a slope such as 1:8"
                ));
            }
        },
    };
    let width = length(&ask("How wide is it?", &args.width, "6 m")?, "width")?;
    let tiers = match args.tiers {
        Some(n) => n,
        None => ask("How many level areas, one above the other?", &None, "2")?
            .parse()
            .map_err(|_| "tiers: expected a whole number".to_string())?,
    };
    if !(1..=12).contains(&tiers) {
        return Err(format!("tiers: found {tiers}, expected 1 to 12"));
    }
    let soil = ask(
        "Which soil, told by hand (silty-clay, firm-clay, silty-sand, medium-sand, gravel …)?",
        &args.soil,
        "silty-clay",
    )?;
    let text = job_text(&Answers {
        name,
        fall,
        over,
        width,
        tiers,
        soil,
        region: args.region.clone(),
        units: args.units.clone(),
    });
    // What was written must be read again without a problem before it touches the disk.
    files::parse(&file, &args.folder, &text)?;
    files::write(&file, text.as_bytes())?;
    say::line!("wrote {}; `groundhold plan {}` plans it", file.display(), args.folder.display());
    Ok(Ending::Fine)
}

struct Answers {
    name: String,
    fall: Length,
    over: Length,
    width: Length,
    tiers: u32,
    soil: String,
    region: String,
    units: String,
}

/// A plane slope with level areas of equal depth and a wall between each and the next.
fn job_text(a: &Answers) -> String {
    let quoted = |t: &str| format!("\"{}\"", t.replace('\\', "").replace('"', "'"));
    let m = |v: f64| format!("\"{v:.3} m\"");
    let point = |x: f64, y: f64| format!("[{}, {}]", m(x), m(y));
    let (w, depth) = (a.width.to_m(), a.over.to_m() / f64::from(a.tiers));
    let step = a.fall.to_m() / f64::from(a.tiers);
    let mut out = format!(
        "schema = 1\n\n[job]\nname   = {}\nregion = {}\nunits  = {}\n\n[measure]\n# Two numbers instead of a survey. North is uphill; the foot lies at level 100.\nslope = {{ fall = {}, over = {}, width = {} }}\n\n[ground]\nsoil    = {}\ntopsoil = \"150 mm\"\n",
        quoted(&a.name),
        quoted(&a.region),
        quoted(&a.units),
        m(a.fall.to_m()),
        m(a.over.to_m()),
        m(w),
        quoted(&a.soil)
    );
    for i in 0..a.tiers {
        let (lo, hi) = (depth * f64::from(i), depth * f64::from(i + 1));
        let level = 100.0 + step * (f64::from(i) + 0.5);
        out.push_str(&format!(
            "\n[[pad]]\nid      = \"P{}\"\ncorners = [{}, {}, {}, {}]\nlevel   = {}   # half-way up this strip: cut and fill balance\n",
            i + 1, point(0.0, lo), point(w, lo), point(w, hi), point(0.0, hi), m(level)
        ));
    }
    for i in 1..a.tiers {
        let y = depth * f64::from(i);
        out.push_str(&format!(
            "\n[[wall]]\nid      = \"W{i}\"\nsystem  = \"timber-post-and-board\"\nline    = [{}, {}]\nends    = [\"at\", \"at\"]\nretains = \"left\"\ntop     = {{ above = \"P{}\", by = \"0 mm\" }}\n\n[wall.spec]\npost    = \"125x125 UC4 C24\"\nboard   = \"200x50 UC4 C24\"\nspacing = \"1.2 m\"\n",
            point(0.0, y), point(w, y), i + 1
        ));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_job_written_from_answers_reads_without_a_problem() {
        let a = Answers {
            name: "Bank \"behind\" the shed".into(),
            fall: Length::m(0.6),
            over: Length::m(7.0),
            width: Length::m(6.0),
            tiers: 2,
            soil: "silty-clay".into(),
            region: "generic".into(),
            units: "metric".into(),
        };
        let text = job_text(&a);
        let read = groundhold_exchange::read_job("job.toml", &text, &|_| Err("none".into()));
        assert_eq!(read.problems, []);
        assert_eq!(read.job.map(|j| (j.pads.len(), j.walls.len())), Some((2, 1)));
    }
}
