//! Reading a job from its folder and writing files without ever losing what was there.

use std::fs;
use std::path::{Path, PathBuf};

use groundhold_exchange::{Problem, read_job};
use groundhold_plan::job::Job;
use groundhold_plan::{Part, Trouble};

use crate::Refusal;

/// A job as it lies in its folder.
pub struct Opened {
    /// The folder.
    pub folder: PathBuf,
    /// The job file.
    pub file: PathBuf,
    /// Its text.
    pub text: String,
    /// What it says.
    pub job: Job,
}

/// Opens a job by its folder or its file.
///
/// # Errors
/// Everything that is wrong with its files, each with its place.
pub fn open(path: &Path) -> Result<Opened, Refusal> {
    let file = if path.is_dir() { path.join("job.toml") } else { path.to_path_buf() };
    let folder = file.parent().map(Path::to_path_buf).unwrap_or_default();
    let text = read_text(&file)?;
    let job = parse(&file, &folder, &text)?;
    Ok(Opened { folder, file, text, job })
}

/// Reads a text of a job in a folder.
///
/// # Errors
/// Everything that is wrong with it.
pub fn parse(file: &Path, folder: &Path, text: &str) -> Result<Job, Refusal> {
    let name = file.file_name().map_or("job.toml".into(), |n| n.to_string_lossy().into_owned());
    let table = |name: &str| -> Result<String, String> {
        let inside = Path::new(name);
        if inside.is_absolute() || inside.components().any(|c| matches!(c, std::path::Component::ParentDir)) {
            return Err("a table must lie in the job's own folder".into());
        }
        read_text(&folder.join(inside))
    };
    read_job(&name, text, &table).whole().map_err(|problems| list(&problems))
}

fn list(problems: &[Problem]) -> String {
    let shown: Vec<String> = problems.iter().map(ToString::to_string).collect();
    let count = if problems.len() == 1 { "1 problem".into() } else { format!("{} problems", problems.len()) };
    format!("{}\n\n{count}; nothing was written", shown.join("\n"))
}

fn read_text(file: &Path) -> Result<String, String> {
    let bytes = fs::read(file).map_err(|e| format!("{}: {}", file.display(), reason(&e)))?;
    String::from_utf8(bytes).map_err(|e| {
        let at = e.utf8_error().valid_up_to();
        format!("{}: this is not text: byte {} is not UTF-8; expected a plain text file", file.display(), at + 1)
    })
}

fn reason(e: &std::io::Error) -> String {
    match e.kind() {
        std::io::ErrorKind::NotFound => "there is no such file; `groundhold new` writes a first one".into(),
        std::io::ErrorKind::PermissionDenied => "it may not be read".into(),
        _ => e.to_string(),
    }
}

/// The plan of a job.
///
/// # Errors
/// What stops it, each with its place.
pub fn planned(job: &Job) -> Result<groundhold_plan::Plan, Refusal> {
    groundhold_plan::plan_priced(job).map_err(|troubles| {
        let shown: Vec<String> = troubles.iter().map(trouble).collect();
        format!("{}\n\nthere is no plan; nothing was written", shown.join("\n"))
    })
}

fn trouble(t: &Trouble) -> String {
    let place = match &t.of {
        Part::LevelBook => "level book".to_string(),
        Part::Positions => "positions".to_string(),
        Part::Survey => "survey".to_string(),
        Part::Element(id) => id.clone(),
        Part::Choice(field) => (*field).to_string(),
    };
    match t.row {
        Some(row) if !t.says.starts_with("row") => format!("{place}, row {row}: {}", t.says),
        _ => format!("{place}: {}", t.says),
    }
}

/// Writes a file so that a crash leaves either the old or the new one, never half of it.
///
/// # Errors
/// Why it could not be written.
pub fn write(path: &Path, bytes: &[u8]) -> Result<(), Refusal> {
    let failed = |e: std::io::Error| format!("{}: cannot be written: {e}", path.display());
    if let Some(parent) = path.parent() {
        fs::create_dir_all(parent).map_err(failed)?;
    }
    let mut part = path.as_os_str().to_owned();
    part.push(".part");
    let part = PathBuf::from(part);
    let done = fs::File::create(&part).and_then(|mut f| {
        use std::io::Write;
        f.write_all(bytes)?;
        f.sync_all()
    });
    done.map_err(failed)?;
    fs::rename(&part, path).map_err(failed)
}
