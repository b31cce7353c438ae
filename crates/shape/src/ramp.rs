//! Which ground does a ramp take, and how steep is it?

use groundhold_finding::{Adjust, Finding, Place, Remedy};
use groundhold_quantity::{Length, Level, Point, Slope, Units, Vector, distance, segments_cross};
use groundhold_surface::Facet;

use crate::barrier::take_away;
use crate::findings::{RAMP_CANNOT_BE_SHAPED, RAMP_NOT_SELF_PROPELLED, RAMP_OVER_LIMIT, RAMP_TOO_STEEP};
use crate::gradient::{gradient, ramp_length};
use crate::outline::anticlockwise;
use crate::pad::convex_pieces;
use crate::reach::Platform;
use crate::ribbon::Ribbon;
use crate::switchback::switchback;
use crate::{Alignment, Course, Pad, Ramp, RampWish, Side, Wish};

/// How far a path may end short of its pad's apron, metres; it is led on straight (ours).
const SHORT_OF_PAD: f64 = 1.0;

/// A ramp with the ground it takes and its edge.
pub(crate) struct Laid {
    pub ramp: Ramp,
    pub facets: Vec<Facet>,
    pub edge: Vec<(Point, Level)>,
}

/// Shapes a ramp; `below` gives the ground at its foot.
pub(crate) fn ramp(
    w: &RampWish,
    pads: &[Pad],
    wish: &Wish,
    below: impl Fn(Point) -> Option<Level>,
    findings: &mut Vec<Finding>,
) -> Option<Laid> {
    match shaped(w, pads, &below) {
        Ok(laid) => {
            findings.extend(judged(w, wish, pads, &below, &laid.ramp));
            Some(laid)
        }
        Err(why) => {
            findings.push(Finding::new(&RAMP_CANNOT_BE_SHAPED, Place::of(&w.id), format!("{}: {why}.", w.id)));
            None
        }
    }
}

fn shaped(w: &RampWish, pads: &[Pad], below: &dyn Fn(Point) -> Option<Level>) -> Result<Laid, String> {
    let pad = pads.iter().find(|p| p.id == w.toward).ok_or(format!("there is no pad {} to lead to", w.toward))?;
    let width = w.width.to_m();
    if !(0.1..=50.0).contains(&width) {
        return Err(format!("its width is {width:.3} m, expected 0.1 m to 50 m"));
    }
    let line = Alignment { points: w.path.clone(), bends: w.bends.clone() }.course().map_err(|e| path_words(&e))?;
    let (course, threshold) = up_to_pad(&line, width / 2.0, pad)?;
    let path = &course.points;
    let foot_level = below(path[0]).ok_or("its foot lies outside the surveyed ground")?;
    let end = path[path.len() - 1];
    let top_level = pad.plane.level_at(end);
    let rise = top_level - foot_level;
    let strip = Ribbon::new(&course, width / 2.0, w.landings.map(|l| (l, rise)), across(w, pad, path)?)?;
    let run = strip.run();
    let g = gradient(rise.abs(), Length::m(run)).map_err(|e| e.to_string())?;
    let mut facets = strip.facets(foot_level, top_level);
    let mut rest = vec![threshold];
    for hole in convex_pieces(&pad.finished) {
        rest = take_away(rest, &hole);
    }
    facets.extend(rest.into_iter().map(|ring| Facet { ring, plane: pad.plane }));
    let edge = strip.edge(foot_level, top_level);
    let length = strip.path.windows(2).map(|p| distance(p[0], p[1])).sum();
    let landings = strip.landings();
    let ramp = Ramp {
        corner: course.corners(),
        curves: line.curves,
        landings,
        build_up: w.build_up,
        id: w.id.clone(),
        toward: w.toward.clone(),
        path: strip.path,
        width: w.width,
        foot_level,
        top_level,
        rise,
        run: Length::m(run),
        length,
        gradient: g.slope,
        trace: g.trace,
    };
    Ok(Laid { ramp, facets, edge })
}

/// What is wrong with a line, said of a path.
fn path_words(e: &crate::AlignmentError) -> String {
    e.to_string().replace("its line", "its path")
}

/// Fall across towards the right, all along and at the end, where it goes over into that of the pad.
fn across(w: &RampWish, pad: &Pad, path: &[Point]) -> Result<Option<(f64, f64)>, String> {
    let Some((slope, side)) = w.crossfall else { return Ok(None) };
    if !(0.0..=0.2).contains(&slope.to_ratio()) {
        return Err(format!("its fall across is {:.3}, expected level to 1:5", slope.to_ratio()));
    }
    let all = if side == Side::Right { slope.to_ratio() } else { -slope.to_ratio() };
    let n = path.len();
    let left = (path[n - 1] - path[n - 2]).unit().left();
    let end = (pad.plane.level_at(path[n - 1] + left) - pad.plane.level_at(path[n - 1])).to_m();
    Ok(Some((all, end)))
}

/// The path up to where the first corner of the strip touches the pad's edge, and the level piece from there to where
/// its last corner is inside.
fn up_to_pad(line: &Course, half: f64, pad: &Pad) -> Result<(Course, Vec<Point>), String> {
    let path = &line.points;
    let ring = pad.finished.corners();
    if pad.finished.contains(path[0]) {
        return Err(format!("its foot already lies on {}", pad.id));
    }
    let meets = |a: Point, b: Point| {
        (0..ring.len())
            .filter_map(|i| segments_cross(a, b, ring[i], ring[(i + 1) % ring.len()]))
            .map(|(t, _)| t * (b - a).length())
            .reduce(f64::min)
    };
    for i in 0..path.len() - 1 {
        let (a, b) = (path[i], path[i + 1]);
        let u = (b - a).unit();
        let last = i + 2 == path.len();
        let end = if last { b + u * SHORT_OF_PAD } else { b };
        // A hair aside, so that a path through a corner of the pad meets one of its sides.
        let hair = u.left() * 1e-7;
        let Some(middle) = meets(a, end).or_else(|| meets(a + hair, end + hair)) else { continue };
        let sides = [half, -half].map(|h| u.left() * h);
        let found = sides.map(|s| meets(a + s, end + u * (2.0 * half) + s));
        let first = found.iter().flatten().fold(middle, |x, y| x.min(*y));
        let full = found.iter().flatten().fold(middle, |x, y| x.max(*y)).min(first + 2.0 * half);
        if first < 0.05 {
            return Err(format!("its last stretch has no length before it meets {}", pad.id));
        }
        let kept = line.up_to(i, a + u * first);
        let at = |s: f64, side: Vector| a + u * s + side;
        let threshold =
            anticlockwise(vec![at(first, sides[0]), at(first, sides[1]), at(full, sides[1]), at(full, sides[0])]);
        return Ok((kept, threshold));
    }
    Err(format!("its path does not reach {}; expected its last point on the pad's edge", pad.id))
}

impl Laid {
    /// Its edge as a platform; no batter starts at its top.
    pub fn platform(&self, walls: &[crate::barrier::Barrier]) -> Platform {
        let inner: Vec<Point> = self.edge.iter().map(|(p, _)| *p).collect();
        let mut p = Platform::new(&self.ramp.id, self.edge.clone(), &inner, walls);
        let top = self.edge.iter().position(|(p, _)| {
            let end = self.ramp.path[self.ramp.path.len() - 1];
            (distance(*p, end).to_m() - self.ramp.width.to_m() / 2.0).abs() < 1e-6
        });
        if let Some(i) = top {
            p.lit[i].clear();
        }
        p
    }
}

fn judged(w: &RampWish, wish: &Wish, pads: &[Pad], below: &dyn Fn(Point) -> Option<Level>, r: &Ramp) -> Vec<Finding> {
    let u = wish.units;
    let mut said = vec![];
    let to_and_fro = || {
        let pad = pads.iter().find(|p| p.id == w.toward)?;
        let s = switchback(w, pad, below)?;
        let mm = |v: f64| format!("\"{:.3} m\"", v);
        let path: Vec<String> = s.path.iter().map(|p| format!("[{}, {}]", mm(p.x), mm(p.y))).collect();
        let words = format!(
            "To and fro in {} leg{}: {} long in all, at {}.",
            s.legs,
            if s.legs == 1 { "" } else { "s" },
            u.run(Length::m(s.length)),
            u.slope(s.slope)
        );
        let value = format!("[{}]", path.join(", "));
        Some(Remedy::ours(words, vec![Adjust { element: r.id.clone(), field: "path".into(), value }]))
    };
    let mut too_steep = |kind: &'static groundhold_finding::Kind, most: Slope, whose: String| {
        if r.gradient.to_ratio() <= most.to_ratio() + 1e-9 {
            return;
        }
        let says = format!(
            "{} climbs {} over {}: {}, where {whose} is {}.",
            r.id,
            u.length(r.rise.abs()),
            u.run(r.run),
            u.slope(r.gradient),
            u.slope(most)
        );
        let mut f =
            Finding::new(kind, Place::of(&r.id), says).with_utilisation(r.gradient / most).with_trace(r.trace.clone());
        if let Ok(needed) = ramp_length(r.rise.abs(), most) {
            f = f.with_remedy(Remedy::theirs(format!(
                "Lead its path {} longer: {} at {} needs {}, level turns not counted.",
                u.run(needed.run - r.run),
                u.length(r.rise.abs()),
                u.slope(most),
                u.run(needed.run)
            )));
        }
        if kind == &RAMP_TOO_STEEP
            && let Some(remedy) = to_and_fro()
        {
            f = f.with_remedy(remedy);
        }
        let sign = if r.rise.to_m() < 0.0 { -1.0 } else { 1.0 };
        let level = r.foot_level + r.run * (most.to_ratio() * sign);
        let by = level - r.top_level;
        f = f.with_remedy(Remedy::ours(
            format!("{} {} {}.", r.toward, u.length(by.abs()), if by.to_m() < 0.0 { "lower" } else { "higher" }),
            vec![Adjust {
                element: r.toward.clone(),
                field: "level".into(),
                value: format!("{:.3} m", pad_level(wish, &r.toward, by)),
            }],
        ));
        said.push(f);
    };
    too_steep(&RAMP_TOO_STEEP, w.steepest, "the steepest wished for".to_string());
    let limit = wish.limits.ramp;
    too_steep(&RAMP_OVER_LIMIT, limit.steepest, format!("the limit ({})", limit.source));
    if r.gradient.to_ratio() > 1.0 / 12.0 + 1e-9 {
        let says = format!(
            "{} is {}; steeper than 1:12 it cannot be climbed in a self-propelled wheelchair.",
            r.id,
            u.slope(r.gradient)
        );
        let finding = Finding::new(&RAMP_NOT_SELF_PROPELLED, Place::of(&r.id), says)
            .with_utilisation(r.gradient.to_ratio() * 12.0)
            .with_trace(r.trace.clone());
        said.push(gentler(u, r.rise.abs()).into_iter().fold(finding, Finding::with_remedy));
    }
    said
}

/// One unit of rise in so many of run: steepest for a wheelchair by 2010 ADA 405.2; as AS 1428.1 has it; not a ramp but
/// a path by 2010 ADA 403.3. From memory.
const GENTLE: [f64; 3] = [12.0, 14.0, 20.0];

/// How long the ramp would be at gradients that somebody in a wheelchair can use.
fn gentler(u: Units, rise: Length) -> Vec<Remedy> {
    let lengths = GENTLE.iter().filter_map(|n| Some((n, ramp_length(rise, Slope::one_in(*n)).ok()?)));
    let words = |(n, l): (&f64, crate::gradient::Gradient)| {
        format!(
            "{} at {} for the rise of {}, level landings not counted.",
            u.run(l.run),
            u.slope(Slope::one_in(*n)),
            u.length(rise)
        )
    };
    lengths.map(|l| Remedy::theirs(words(l))).collect()
}

/// The wished level of a pad moved by `by`, metres.
pub(crate) fn pad_level(wish: &Wish, pad: &str, by: Length) -> f64 {
    wish.pads.iter().find(|p| p.id == pad).map_or(0.0, |p| (p.level + by).to_m())
}
