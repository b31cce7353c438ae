//! What on the drawing can be taken hold of, and what does the job say when it has been moved?

use groundhold_plan::job::Job;
use groundhold_quantity::{Point, Vector, round_to};

use crate::job::{EditError, Files, set_point, set_points};

/// What is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Holds {
    /// One point of a list.
    Point(usize),
    /// The side that begins at this point of a ring; it moves square to itself.
    Side(usize),
    /// All points.
    Whole,
}

/// Something that can be taken hold of.
#[derive(Debug, Clone, PartialEq)]
pub struct Grip {
    /// The element.
    pub element: String,
    /// The field of the job file that holds its points.
    pub field: &'static str,
    /// Which part of it.
    pub holds: Holds,
    /// Where it lies.
    pub at: Point,
    /// What a reader who cannot see it is told: "W1 corner 2".
    pub words: String,
}

impl Grip {
    /// A name that stays the same while it moves.
    pub fn key(&self) -> String {
        format!("{} {} {:?}", self.element, self.field, self.holds)
    }
}

/// The grips of one element.
pub fn grips(job: &Job, element: &str) -> Vec<Grip> {
    let grip = |field, holds, at, words: String| Grip { element: element.into(), field, holds, at, words };
    let each = |points: &[Point], field, word: &str| -> Vec<Grip> {
        let one = |(i, p): (usize, &Point)| grip(field, Holds::Point(i), *p, format!("{element} {word} {}", i + 1));
        points.iter().enumerate().map(one).collect()
    };
    if let Some(w) = job.walls.iter().find(|w| w.id == element) {
        return each(&w.line, "line", "corner");
    }
    if let Some(p) = job.pads.iter().find(|p| p.id == element) {
        let n = p.corners.len();
        let mut all = each(&p.corners, "corners", "corner");
        all.extend((0..n).map(|i| {
            let at = p.corners[i].towards(p.corners[(i + 1) % n], 0.5);
            grip("corners", Holds::Side(i), at, format!("{element} side {}", i + 1))
        }));
        let sum = p.corners.iter().fold(Vector::m(0.0, 0.0), |s, c| s + (*c - Point::default()));
        if n > 0 {
            let at = Point::default() + sum * (1.0 / n as f64);
            all.push(grip("corners", Holds::Whole, at, format!("{element} as a whole")));
        }
        return all;
    }
    if let Some(f) = job.flights.iter().find(|f| f.id == element) {
        return vec![grip("from", Holds::Whole, f.from, format!("{element} foot"))];
    }
    if let Some(r) = job.ramps.iter().find(|r| r.id == element) {
        return each(&r.path, "path", "turn");
    }
    if let Some(n) = job.near.iter().find(|n| n.id == element) {
        return match &n.line[..] {
            [one] => vec![grip("at", Holds::Whole, *one, element.to_string())],
            many => each(many, "line", "point"),
        };
    }
    if let ("outlet", Some((at, _))) = (element, &job.drain.outlet) {
        return vec![grip("at", Holds::Whole, *at, "outlet".into())];
    }
    vec![]
}

/// The points a grip's field holds.
fn points(job: &Job, grip: &Grip) -> Vec<Point> {
    let id = grip.element.as_str();
    let wall = job.walls.iter().find(|w| w.id == id).map(|w| w.line.clone());
    let pad = job.pads.iter().find(|p| p.id == id).map(|p| p.corners.clone());
    wall.or(pad).unwrap_or_default()
}

/// The texts with a grip moved to a place; coordinates are rounded to `snap` metres where that is more than nothing.
///
/// # Errors
/// Where the element is no longer there.
pub fn moved(files: &Files, job: &Job, grip: &Grip, to: Point, snap: f64) -> Result<Files, EditError> {
    let step = if snap > 0.0 { snap } else { 0.001 };
    let round = |p: Point| Point::m(round_to(p.x, step), round_to(p.y, step));
    let to_there = to - grip.at;
    match grip.holds {
        Holds::Point(i) => set_point(files, &grip.element, grip.field, i, round(to)),
        Holds::Whole => {
            let now = points(job, grip);
            if now.is_empty() {
                return set_points(files, &grip.element, grip.field, &[round(to)]);
            }
            let by = Vector::m(round_to(to_there.x, step), round_to(to_there.y, step));
            let all: Vec<Point> = now.iter().map(|p| *p + by).collect();
            set_points(files, &grip.element, grip.field, &all)
        }
        Holds::Side(i) => {
            let all = points(job, grip);
            let n = all.len();
            if i >= n {
                return Err(format!("{} has no side {}", grip.element, i + 1));
            }
            let (a, b) = (all[i], all[(i + 1) % n]);
            let across = (b - a).unit().left();
            let by = across * round_to(to_there.dot(across), step);
            let files = set_point(files, &grip.element, grip.field, i, a + by)?;
            set_point(&files, &grip.element, grip.field, (i + 1) % n, b + by)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn demo() -> (Files, Job) {
        let files = crate::job::demo();
        let job = files.read().whole().unwrap();
        (files, job)
    }

    #[test]
    fn everything_in_the_demo_can_be_taken_hold_of_and_moved() {
        let (files, job) = demo();
        for id in job.ids().into_iter().chain(["outlet"]) {
            let all = grips(&job, id);
            assert!(!all.is_empty(), "{id}");
            for g in all {
                let to = g.at + Vector::m(0.31, -0.22);
                let after = moved(&files, &job, &g, to, 0.05).unwrap().read();
                assert_eq!(after.problems, [], "{}", g.words);
                let now = grips(&after.job.unwrap(), id).into_iter().find(|h| h.holds == g.holds).unwrap();
                assert!((now.at - g.at).length() > 0.15, "{} stays where it was", g.words);
            }
        }
    }

    #[test]
    fn a_side_moves_square_to_itself_and_keeps_its_length() {
        let (files, job) = demo();
        let side = grips(&job, "P1").into_iter().find(|g| g.holds == Holds::Side(1)).unwrap();
        let after = moved(&files, &job, &side, side.at + Vector::m(0.5, 3.0), 0.0).unwrap().read().whole().unwrap();
        let c = &after.pads[0].corners;
        assert_eq!((c[1], c[2]), (Point::m(9.5, 4.2), Point::m(9.5, 8.7)));
        assert_eq!((c[0], c[3]), (job.pads[0].corners[0], job.pads[0].corners[3]));
    }
}
