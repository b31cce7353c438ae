//! What happened on site: a find, something built, a remedy taken. Each is written down, then the job is planned anew.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

use clap::{Args, ValueEnum};
use groundhold_exchange::{append_entry, apply_adjust};
use groundhold_finding::Adjust;
use groundhold_plan::job::{AsBuilt, BuiltPost, Entry, Event, Find};
use groundhold_plan::{Plan, compare as difference_of};
use groundhold_quantity::{Length, Level, Point, Quantity, parse};

use crate::files::{self, Opened};
use crate::{Ending, Refusal, say, summary};

/// What can be found.
#[derive(Clone, Copy, ValueEnum)]
pub enum FindKind {
    /// Rock stops a post hole.
    Rock,
    /// A pipe that nobody knew of.
    Pipe,
    /// A cable that nobody knew of.
    Cable,
    /// Water.
    Water,
    /// A level that was read wrong.
    Level,
}

/// A find.
#[derive(Args)]
pub struct FoundArgs {
    /// What was found.
    kind: FindKind,
    /// Folder of the job.
    #[arg(long, default_value = ".")]
    job: PathBuf,
    /// The wall (rock, water).
    #[arg(long)]
    wall: Option<String>,
    /// The post's number (rock).
    #[arg(long)]
    post: Option<usize>,
    /// How deep below the ground there, with its unit.
    #[arg(long)]
    depth: Option<String>,
    /// Where, east and north: "3.2 m, 4.1 m" (pipe, cable). Twice or more for a line that was followed.
    #[arg(long)]
    at: Vec<String>,
    /// What it seems to be (pipe, cable).
    #[arg(long)]
    what: Option<String>,
    /// The point whose level was wrong (level).
    #[arg(long)]
    point: Option<String>,
    /// What its level really is (level).
    #[arg(long)]
    level: Option<String>,
    /// In your own words.
    #[arg(long, default_value = "")]
    note: String,
    /// When, if not now: 2026-05-11T10:20:00.
    #[arg(long)]
    when: Option<String>,
    /// Say what would change, but write nothing.
    #[arg(long)]
    try_only: bool,
}

/// What was built.
#[derive(Args)]
pub struct BuiltArgs {
    /// As people say it: `W2 posts 1-5`, or an element.
    what: String,
    /// Folder of the job.
    #[arg(long, default_value = ".")]
    job: PathBuf,
    /// Real depth of these holes, where it differs from the plan.
    #[arg(long)]
    depth: Option<String>,
    /// In your own words.
    #[arg(long, default_value = "")]
    note: String,
    /// When, if not now.
    #[arg(long)]
    when: Option<String>,
}

/// A field to set.
#[derive(Args)]
pub struct SetArgs {
    /// The element: W1.
    element: String,
    /// The field: spec.hole_depth.
    field: String,
    /// Its new value: "900 mm".
    value: String,
    /// Folder of the job.
    #[arg(long, default_value = ".")]
    job: PathBuf,
    /// Say what would change, but write nothing.
    #[arg(long)]
    try_only: bool,
}

fn needed<'a, T>(value: &'a Option<T>, option: &str) -> Result<&'a T, Refusal> {
    value.as_ref().ok_or_else(|| format!("this kind of find needs {option}"))
}

fn read<Q: Quantity>(text: &str, option: &str) -> Result<Q, Refusal> {
    parse::<Q>(text).map_err(|e| format!("{option}: {e}"))
}

fn point(text: &str) -> Result<Point, Refusal> {
    let (x, y) = text
        .split_once(',')
        .ok_or_else(|| format!("--at: found `{text}`, expected east and north: \"3.2 m, 4.1 m\""))?;
    Ok(Point::m(read::<Length>(x, "--at")?.to_m(), read::<Length>(y, "--at")?.to_m()))
}

/// Writes a find down and says what changes.
pub fn found(args: &FoundArgs, json: bool) -> Result<Ending, Refusal> {
    let opened = files::open(&args.job)?;
    let before = files::planned(&opened.job)?;
    let depth = || read::<Length>(needed(&args.depth, "--depth \"450 mm\"")?, "--depth");
    let find = match args.kind {
        FindKind::Rock => {
            let wall = needed(&args.wall, "--wall W1")?.clone();
            let post = *needed(&args.post, "--post 3")?;
            let layout = before.walls.iter().find(|w| w.id == wall || w.of == wall).map(|w| &w.layout);
            let Some(layout) = layout else { return Err(format!("there is no wall `{wall}` in this job")) };
            let Some(at) = layout.post(post) else {
                let has = match layout.posts.len() {
                    0 => "no posts".to_string(),
                    n => format!("posts 1 to {n}"),
                };
                return Err(format!("{wall} has {has}, found post {post}"));
            };
            Find::Rock { wall, post, chainage: Some(at.chainage), at: Some(at.face), depth: depth()? }
        }
        FindKind::Pipe | FindKind::Cable => {
            let word = if matches!(args.kind, FindKind::Pipe) { "unknown pipe" } else { "unknown cable" };
            if args.at.is_empty() {
                return Err("where was it found? --at \"3.2 m, 4.1 m\"".into());
            }
            let line = args.at.iter().map(|t| point(t)).collect::<Result<Vec<_>, _>>()?;
            Find::Service { what: args.what.clone().unwrap_or(word.into()), line, depth: depth()? }
        }
        FindKind::Water => Find::Water { element: needed(&args.wall, "--wall W1")?.clone(), depth: depth()? },
        FindKind::Level => Find::LevelError {
            point: needed(&args.point, "--point 14")?.clone(),
            level: read::<Level>(needed(&args.level, "--level \"100.95 m\"")?, "--level")?,
        },
    };
    let entry = Entry { at: moment(args.when.as_deref())?, event: Event::Find(find), note: args.note.clone() };
    let text = append_entry(&opened.text, &entry);
    replan(&opened, &before, &text, args.try_only, json)
}

/// Writes down what was built, with the measures of the plan unless others are given.
pub fn built(args: &BuiltArgs, json: bool) -> Result<Ending, Refusal> {
    let opened = files::open(&args.job)?;
    let before = files::planned(&opened.job)?;
    let (element, range) = said(&args.what)?;
    let mut posts = vec![];
    let stands = before.walls.iter().find(|w| w.id == element);
    if let (Some(0), Some(_)) = (stands.map(|w| w.layout.posts.len()), range) {
        return Err(format!("{element} has no posts; say `built {element}` for the whole of it"));
    }
    if let Some(wall) = stands.filter(|w| !w.layout.posts.is_empty()) {
        let all = 1..=wall.layout.posts.len();
        let (from, to) = range.unwrap_or((1, wall.layout.posts.len()));
        if from > to || !all.contains(&from) || !all.contains(&to) {
            return Err(format!("{element} has posts 1 to {}, found {from} to {to}", wall.layout.posts.len()));
        }
        let depth = args.depth.as_deref().map(|t| read::<Length>(t, "--depth")).transpose()?;
        posts.extend(wall.layout.posts[from - 1..to].iter().map(|p| BuiltPost {
            number: p.number,
            chainage: p.chainage,
            at: Some(p.face),
            depth: depth.unwrap_or(p.depth),
            diameter: p.hole_diameter,
            top: p.top,
            // A hole of another depth than planned: the post is cut to what stands in it.
            length: Some(depth.map_or(p.length, |d| p.length + (d - p.depth))),
        }));
    } else if stands.is_none() && !opened.job.ids().contains(&element.as_str()) {
        return Err(format!("there is no `{element}` in this job; it has {}", opened.job.ids().join(", ")));
    }
    let event = Event::Built(AsBuilt { says: args.what.clone(), element, posts });
    let entry = Entry { at: moment(args.when.as_deref())?, event, note: args.note.clone() };
    let text = append_entry(&opened.text, &entry);
    replan(&opened, &before, &text, false, json)
}

/// `W2 posts 1-5` → W2 and 1 to 5.
fn said(what: &str) -> Result<(String, Option<(usize, usize)>), Refusal> {
    let mut words = what.split_whitespace();
    let element = words.next().unwrap_or_default().to_string();
    let rest: Vec<&str> = words.collect();
    let expected = || format!("found `{what}`, expected an element, or posts of a wall such as \"W2 posts 1-5\"");
    match &rest[..] {
        [] if !element.is_empty() => Ok((element, None)),
        [word, range] if word.starts_with("post") => {
            let (a, b) = range.split_once(['-', '–']).unwrap_or((range, range));
            match (a.parse(), b.parse()) {
                (Ok(a), Ok(b)) => Ok((element, Some((a, b)))),
                _ => Err(expected()),
            }
        }
        _ => Err(expected()),
    }
}

/// Sets one field and says what changes.
pub fn set(args: &SetArgs, json: bool) -> Result<Ending, Refusal> {
    let opened = files::open(&args.job)?;
    let before = files::planned(&opened.job)?;
    let adjust = Adjust { element: args.element.clone(), field: args.field.clone(), value: args.value.clone() };
    let (text, _) = apply_adjust(&opened.text, &adjust).map_err(|p| p.to_string())?;
    replan(&opened, &before, &text, args.try_only, json)
}

/// Plans the new text, says what changes, and only then writes it.
fn replan(opened: &Opened, before: &Plan, text: &str, try_only: bool, json: bool) -> Result<Ending, Refusal> {
    let job = files::parse(&opened.file, &opened.folder, text)?;
    let after = files::planned(&job)?;
    let difference = difference_of(before, &after);
    // Written before anything is said: whoever stops listening to the answer does not lose the entry.
    if !try_only {
        files::write(&opened.file, text.as_bytes())?;
    }
    if json {
        say::line!("{}", groundhold_exchange::difference_json(&difference));
    } else {
        say::text(&summary::difference(&difference, &after))?;
        if try_only {
            say::line!("nothing was written");
        } else {
            say::line!("written to {}", opened.file.display());
        }
    }
    Ok(summary::ending(&after))
}

/// Compares two jobs.
pub fn compare(before: &Path, after: &Path, json: bool) -> Result<Ending, Refusal> {
    let (a, b) = (files::open(before)?, files::open(after)?);
    let (a, b) = (files::planned(&a.job)?, files::planned(&b.job)?);
    let difference = difference_of(&a, &b);
    if json {
        say::line!("{}", groundhold_exchange::difference_json(&difference));
    } else {
        say::text(&summary::difference(&difference, &b))?;
    }
    Ok(summary::ending(&b))
}

fn moment(given: Option<&str>) -> Result<String, Refusal> {
    match given {
        Some(t) if looks_like_a_moment(t) => Ok(t.to_string()),
        Some(t) => Err(format!("--when: found `{t}`, expected 2026-05-11T10:20:00")),
        None => Ok(now()),
    }
}

fn looks_like_a_moment(t: &str) -> bool {
    let shape: String = t.chars().map(|c| if c.is_ascii_digit() { '0' } else { c }).collect();
    shape == "0000-00-00T00:00:00"
}

/// The time of this machine's clock in universal time.
pub fn now() -> String {
    let seconds = SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |d| d.as_secs());
    let (y, m, d) = civil((seconds / 86_400) as i64);
    let s = seconds % 86_400;
    format!("{y:04}-{m:02}-{d:02}T{:02}:{:02}:{:02}", s / 3600, s / 60 % 60, s % 60)
}

/// Year, month and day of a day counted from 1970-01-01 (proleptic Gregorian; after Hinnant, chrono-compatible date algorithms).
fn civil(days: i64) -> (i64, i64, i64) {
    let z = days + 719_468;
    let era = z.div_euclid(146_097);
    let doe = z.rem_euclid(146_097);
    let yoe = (doe - doe / 1460 + doe / 36_524 - doe / 146_096) / 365;
    let doy = doe - (365 * yoe + yoe / 4 - yoe / 100);
    let mp = (5 * doy + 2) / 153;
    let (d, m) = (doy - (153 * mp + 2) / 5 + 1, if mp < 10 { mp + 3 } else { mp - 9 });
    (yoe + era * 400 + i64::from(m <= 2), m, d)
}

/// Today's date for a title block.
pub fn today() -> String {
    now().chars().take(10).collect()
}

/// True when the folder holds nothing that would be overwritten.
pub fn is_free(path: &Path) -> bool {
    fs::symlink_metadata(path).is_err()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_count_becomes_its_date() {
        assert_eq!(civil(0), (1970, 1, 1));
        assert_eq!(civil(19_782), (2024, 2, 29));
        assert_eq!(civil(20_782), (2026, 11, 25));
    }

    #[test]
    fn posts_are_said_in_three_ways() {
        assert_eq!(said("W2 posts 1-5"), Ok(("W2".into(), Some((1, 5)))));
        assert_eq!(said("W2 post 3"), Ok(("W2".into(), Some((3, 3)))));
        assert_eq!(said("S1"), Ok(("S1".into(), None)));
        assert!(said("W2 posts many").unwrap_err().contains("W2 posts 1-5"));
    }
}
