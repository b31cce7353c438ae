//! One field of a job set to a new value: the small piece of data that a remedy, a finger or a command is.

use groundhold_finding::Adjust;
use groundhold_hold::PostChange;
use groundhold_quantity::{Level, Quantity, Slope, parse};

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
            _ => return Err(unknown(id, field, "steepest, width")),
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
    match field.strip_prefix("spec.") {
        Some(key) if wall.spec.system().fields().iter().any(|f| f.key == key) => wall.spec.change(key, value),
        _ => {
            let sizes: Vec<String> = wall.spec.system().fields().iter().map(|f| format!("spec.{}", f.key)).collect();
            Err(unknown(&wall.id, field, &format!("{}, posts.extra, posts.hole_diameter", sizes.join(", "))))
        }
    }
}
