//! One field of a job set to a new value: the small piece of data that a remedy, a finger or a command is.

use groundhold_finding::Adjust;
use groundhold_hold::PostChange;
use groundhold_quantity::{Length, Level, Point, Quantity, Slope, parse};

use crate::job::{Job, PadLevel, WallWish};

/// The job with its walls judged for a year of their life, and the walls whose system knows nothing of years.
pub fn in_year(job: &Job, years: u32) -> (Job, Vec<String>) {
    let (mut job, mut without) = (job.clone(), vec![]);
    for wall in &mut job.walls {
        let specs = std::iter::once(&mut wall.spec).chain(wall.parts.iter_mut().map(|p| &mut p.spec));
        let told: Vec<bool> = specs.map(|s| s.change("years", &years.to_string()).is_ok()).collect();
        if !told.contains(&true) {
            without.push(wall.id.clone());
        }
    }
    (job, without)
}

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
            "level" if value == "cheapest" => pad.level = PadLevel::Cheapest,
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
    } else if let Some(old) = job.standing.iter_mut().find(|o| o.id == id) {
        match field {
            "replaced_by" => old.replaced_by = value.into(),
            _ => return Err(unknown(id, field, "replaced_by")),
        }
    } else if id == "drain" {
        match field {
            "outlet.level" => match &mut job.drain.outlet {
                Some((_, level)) => *level = read(value)?,
                None => return Err("the drain has no outlet to change".into()),
            },
            "uphill" => job.drain.uphill = read(value)?,
            "pipe" => job.drain.pipe = Some(read(value)?),
            "soakaway.length" => match &mut job.drain.soakaway {
                Some(s) => s.length = Some(read(value)?),
                None => return Err("the drain has no soakaway to change".into()),
            },
            _ => return Err(unknown(id, field, "outlet.level, uphill, pipe, soakaway.length")),
        }
    } else if id == "order" && field == "bought" {
        return Err("a purchase is written into the job file, not tried".into());
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
    if let Some(changes) = post_changes(field, value) {
        wall.changes.extend(changes?);
        return Ok(());
    }
    match field.strip_prefix("spec.") {
        Some(key) if wall.spec.system().fields().iter().any(|f| f.key == key) => wall.spec.change(key, value),
        _ => {
            let sizes: Vec<String> = wall.spec.system().fields().iter().map(|f| format!("spec.{}", f.key)).collect();
            Err(unknown(&wall.id, field, &format!("{}, {POST_FIELDS}", sizes.join(", "))))
        }
    }
}

/// Fields of a wall that speak of single posts.
const POST_FIELDS: &str = "posts.extra, posts.left_out, posts.moved, posts.hole_diameter";

/// The changes of posts that a field of a wall spells; `None` for a field that is not about posts.
///
/// `posts.extra` takes chainages, `posts.left_out` too, `posts.hole_diameter` a diameter and a chainage, and `posts.moved` the
/// chainage of the post and those at which it stands instead: `2.400 m to 2.050 m, 2.750 m`.
pub fn post_changes(field: &str, value: &str) -> Option<Result<Vec<PostChange>, String>> {
    let each = |list: &str, change: fn(Length) -> PostChange| -> Result<Vec<PostChange>, String> {
        list.split(',').map(|at| read(at).map(change)).collect()
    };
    let parted = |by: &str, example: &str| {
        value.split_once(by).ok_or_else(|| format!("found `{value}`, expected such as {example}"))
    };
    Some(match field {
        "posts.extra" => each(value, PostChange::more),
        "posts.left_out" => each(value, PostChange::without),
        "posts.hole_diameter" => parted(" at ", "600 mm at 2.400 m")
            .and_then(|(diameter, at)| Ok(vec![PostChange::wider(read(at)?, read(diameter)?)])),
        "posts.moved" => parted(" to ", "2.400 m to 2.750 m").and_then(|(from, to)| {
            let mut changes = each(from, PostChange::without)?;
            changes.extend(each(to, PostChange::more)?);
            Ok(changes)
        }),
        _ => return None,
    })
}
