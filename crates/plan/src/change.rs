//! One field of a job set to a new value: the small piece of data that a remedy, a finger or a command is.

use groundhold_finding::Adjust;
use groundhold_hold::systems::timber_posts::{Boards, CourseFit, ScrewSpec, TimberPostSpec};
use groundhold_hold::{PostChange, Spec};
use groundhold_quantity::{Length, Level, Point, Quantity, Slope, parse};

use crate::job::timber::{self, Timber};
use crate::job::{Job, PadLevel, WallWish};

/// The job with one field set. The value is spelled as in a job file.
///
/// # Errors
/// What was expected, in words; the job is untouched.
pub fn apply(job: &Job, adjust: &Adjust) -> Result<Job, String> {
    let mut job = job.clone();
    let (id, field, value) = (adjust.element.as_str(), adjust.field.as_str(), adjust.value.as_str());
    // A second run of a wall that a ramp passes through is changed with the wall.
    let wall_id = |w: &&mut WallWish| w.id == id || id.strip_prefix(w.id.as_str()).is_some_and(|r| r.starts_with('-'));
    if let Some(wall) = job.walls.iter_mut().find(wall_id) {
        wall_field(wall, field, value)?;
    } else if let Some(pad) = job.pads.iter_mut().find(|p| p.id == id) {
        match field {
            "level" if value == "balance" => pad.level = PadLevel::Balance,
            "level" => pad.level = PadLevel::At(read::<Level>(value)?),
            "apron" => pad.apron = read(value)?,
            "build_up" => pad.build_up = read(value)?,
            _ => return Err(unknown(id, field, "level, apron, build_up")),
        }
    } else if let Some(flight) = job.flights.iter_mut().find(|f| f.id == id) {
        match field {
            "going" => flight.going = Some(read(value)?),
            "width" => flight.width = read(value)?,
            _ => return Err(unknown(id, field, "going, width")),
        }
    } else if let Some(ramp) = job.ramps.iter_mut().find(|r| r.id == id) {
        match field {
            "steepest" => ramp.steepest = read::<Slope>(value)?,
            "width" => ramp.width = read(value)?,
            "path" => {
                ramp.path = points(value)?;
                ramp.bends.clear();
            }
            _ => return Err(unknown(id, field, "steepest, width, path")),
        }
    } else if id == "shape" {
        match field {
            "batter.cut" => job.batter.cut = read(value)?,
            "batter.fill" => job.batter.fill = read(value)?,
            _ => return Err(unknown(id, field, "batter.cut, batter.fill")),
        }
    } else if id == "drain" {
        match field {
            "outlet.level" => match &mut job.drain.outlet {
                Some((_, level)) => *level = read(value)?,
                None => return Err("the drain has no outlet to change".into()),
            },
            "uphill" => job.drain.uphill = read(value)?,
            "pipe" => job.drain.pipe = Some(read(value)?),
            _ => return Err(unknown(id, field, "outlet.level, uphill, pipe")),
        }
    } else {
        return Err(format!("there is no `{id}` in this job; it has {}", job.ids().join(", ")));
    }
    Ok(job)
}

fn read<Q: Quantity>(value: &str) -> Result<Q, String> {
    parse::<Q>(value).map_err(|e| e.to_string())
}

/// Points as a job file has them: `[["1.0 m", "2.0 m"], ["3.0 m", "2.0 m"]]`.
fn points(value: &str) -> Result<Vec<Point>, String> {
    let wrong = || format!("found `{value}`, expected points such as [[\"1.0 m\", \"2.0 m\"], [\"3.0 m\", \"2.0 m\"]]");
    let numbers: Vec<&str> = value.split('"').skip(1).step_by(2).collect();
    if numbers.len() < 4 || !numbers.len().is_multiple_of(2) {
        return Err(wrong());
    }
    let point = |xy: &[&str]| Ok(Point::m(read::<Length>(xy[0])?.to_m(), read::<Length>(xy[1])?.to_m()));
    numbers.chunks(2).map(point).collect()
}

fn unknown(id: &str, field: &str, known: &str) -> String {
    format!("{id} has no field `{field}` that can be set; there are {known}")
}

fn wall_field(wall: &mut WallWish, field: &str, value: &str) -> Result<(), String> {
    if field == "posts.extra" {
        for at in value.split(',') {
            let change = PostChange { chainage: read(at)?, hole_diameter: None, depth: None, extra: true };
            wall.changes.push(change);
        }
        return Ok(());
    }
    if field == "posts.hole_diameter" {
        let (diameter, at) =
            value.split_once(" at ").ok_or_else(|| format!("found `{value}`, expected such as 600 mm at 2.400 m"))?;
        let change =
            PostChange { chainage: read(at)?, hole_diameter: Some(read(diameter)?), depth: None, extra: false };
        wall.changes.push(change);
        return Ok(());
    }
    let Spec::TimberPosts(spec) = &mut wall.spec;
    spec_field(spec, field, value).map_err(|e| e.unwrap_or_else(|| unknown(&wall.id, field, SPEC_FIELDS)))
}

const SPEC_FIELDS: &str = "spec.hole_depth, spec.hole_diameter, spec.spacing, spec.board, spec.post, spec.boards, \
                           spec.screws, spec.bury, spec.fit, posts.extra, posts.hole_diameter";

/// `Err(None)` for a field that is not there.
fn spec_field(spec: &mut TimberPostSpec, field: &str, value: &str) -> Result<(), Option<String>> {
    let length = || read::<Length>(value).map_err(Some);
    match field {
        "spec.hole_depth" => spec.hole.depth = Some(length()?),
        "spec.hole_diameter" => spec.hole.diameter = length()?,
        "spec.spacing" => spec.spacing = length()?,
        "spec.bury" => spec.bury = length()?,
        "spec.board" => {
            let t = timber::read(value).map_err(Some)?;
            (spec.board.height, spec.board.thickness) = (t.first.max(t.second), t.first.min(t.second));
            keep_unsaid(&t, &mut spec.board.treatment, &mut spec.board.grade);
        }
        "spec.post" => {
            let t = timber::read(value).map_err(Some)?;
            (spec.post.breadth, spec.post.depth) = (t.first, t.second);
            keep_unsaid(&t, &mut spec.post.treatment, &mut spec.post.grade);
        }
        "spec.boards" => {
            spec.boards = match value {
                "behind" => Boards::Behind,
                "front" => Boards::InFront,
                _ => return Err(Some(format!("found `{value}`, expected behind or front"))),
            }
        }
        "spec.fit" => {
            spec.fit = match value {
                "from bury" => CourseFit::FromBury,
                "from top" => CourseFit::FromTop,
                _ => return Err(Some(format!("found `{value}`, expected from bury or from top"))),
            }
        }
        "spec.screws" => {
            let (d, l) = timber::sizes(value)
                .ok_or_else(|| Some(format!("found `{value}`, expected diameter x length in mm, such as 8x120")))?;
            spec.screws = ScrewSpec { diameter: d, length: l, ..spec.screws };
        }
        _ => return Err(None),
    }
    Ok(())
}

fn keep_unsaid(t: &Timber, treatment: &mut String, grade: &mut &'static groundhold_member::timber::Grade) {
    if !t.treatment.is_empty() {
        treatment.clone_from(&t.treatment);
    }
    if let Some(g) = t.grade {
        *grade = g;
    }
}
