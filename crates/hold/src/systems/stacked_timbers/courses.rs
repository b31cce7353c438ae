//! Of which timbers does each course consist, so that joints are staggered, and where do the ties lie?

use groundhold_quantity::{Length, Level};

use super::StackedTimberSpec;
use crate::{Strip, WallCase};

/// A rest shorter than this is shared with the timber before it. Common practice, no source.
const SHORT: Length = Length::mm(600.0);

/// One timber of the face.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Lying {
    /// Course counted from 0 at the lowest of the whole wall.
    pub course: usize,
    /// Counted from 1 within the course.
    pub number: usize,
    /// Number of the strip in which it starts.
    pub strip: usize,
    /// Where it starts and ends along the wall line.
    pub chainage: (Length, Length),
    /// Underside.
    pub bottom: Level,
}

/// One tie with its cross piece.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Tied {
    /// Course in which its head lies, counted from 0 at the lowest of the whole wall.
    pub course: usize,
    /// Number of its strip.
    pub strip: usize,
    /// Its middle along the wall line.
    pub chainage: Length,
    /// Wall that it holds.
    pub tributary: Length,
    /// Underside.
    pub bottom: Level,
    /// From the face to the back of the cross piece.
    pub length: Length,
    /// Length of its cross piece.
    pub cross: Length,
}

/// Everything that lies in the wall.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Laid {
    pub timbers: Vec<Lying>,
    pub ties: Vec<Tied>,
}

/// What a course is in a strip.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Part {
    /// Not there.
    Not,
    /// Runs on into the strips beside it.
    Plain,
    /// Holds the heads of the ties that lie on it.
    Bearing,
    /// Lies between the heads.
    Between,
}

/// The lowest course of a strip, counted from the lowest of the wall.
fn first(spec: &StackedTimberSpec, strips: &[Strip], strip: &Strip) -> usize {
    let lowest = strips.iter().map(|s| s.base).reduce(Level::min).unwrap_or_default();
    ((strip.base - lowest) / spec.timber.height).round().max(0.0) as usize
}

fn part(spec: &StackedTimberSpec, strips: &[Strip], strip: &Strip, course: usize) -> Part {
    let low = first(spec, strips, strip);
    let Some(local) = course.checked_sub(low).filter(|k| *k < strip.courses) else { return Part::Not };
    let rows = spec.rows(strip.courses);
    match () {
        () if rows.contains(&local) => Part::Between,
        () if rows.contains(&(local + 1)) => Part::Bearing,
        () => Part::Plain,
    }
}

/// A run divided into timbers; a course that starts short starts with half a timber.
fn divide(from: Length, to: Length, stock: Length, starts_short: bool) -> Vec<(Length, Length)> {
    let mut at = vec![from];
    let mut next = from + if starts_short { stock / 2.0 } else { stock };
    while to - next > Length::mm(1.0) {
        at.push(next);
        next += stock;
    }
    at.push(to);
    let n = at.len();
    if n > 2 && at[n - 1] - at[n - 2] < SHORT {
        // The rest and the timber before it are made alike.
        at[n - 2] = at[n - 3] + (at[n - 1] - at[n - 3]) / 2.0;
    }
    at.windows(2).map(|w| (w[0], w[1])).collect()
}

/// All timbers and ties of a wall whose strips have their widths.
pub(crate) fn laid(case: &WallCase, spec: &StackedTimberSpec, strips: &[Strip]) -> Laid {
    let lowest = strips.iter().map(|s| s.base).reduce(Level::min).unwrap_or_default();
    let last = strips.iter().map(|s| first(spec, strips, s) + s.courses).max().unwrap_or(0);
    let turns = |c: Length| case.corners.iter().any(|x| (*x - c).abs() < Length::mm(1.0));
    let mut all = Laid::default();
    for course in 0..last {
        let bottom = lowest + spec.timber.height * course as f64;
        let short = course % 2 == 1;
        let mut spans: Vec<(usize, Length, Length)> = vec![];
        let mut open: Option<(usize, Length, Length)> = None;
        for s in strips {
            let part = part(spec, strips, s, course);
            let joins = part == Part::Plain && !turns(s.chainage.0);
            if !joins && let Some((strip, a, b)) = open.take() {
                spans.extend(divide(a, b, spec.longest(), short).into_iter().map(|(a, b)| (strip, a, b)));
            }
            match part {
                Part::Not => {}
                Part::Plain => {
                    let (strip, from) = open.map_or((s.number, s.chainage.0), |o| (o.0, o.1));
                    open = Some((strip, from, s.chainage.1));
                }
                Part::Bearing => {
                    spans.extend(bearing(spec, s, short).into_iter().map(|(a, b)| (s.number, a, b)));
                }
                Part::Between => {
                    let heads = ties(spec, s, (course - 1) % 2 == 1);
                    let half = spec.timber.thickness / 2.0;
                    let mut from = s.chainage.0;
                    for (at, tributary) in &heads {
                        spans.push((s.number, from, *at - half));
                        from = *at + half;
                        all.ties.push(Tied {
                            course,
                            strip: s.number,
                            chainage: *at,
                            tributary: *tributary,
                            bottom,
                            length: s.width,
                            cross: spec.ties.cross,
                        });
                    }
                    spans.push((s.number, from, s.chainage.1));
                }
            }
        }
        if let Some((strip, a, b)) = open {
            spans.extend(divide(a, b, spec.longest(), short).into_iter().map(|(a, b)| (strip, a, b)));
        }
        // Between two heads that lie further apart than the stock is long, a timber is joined.
        let fits = |(strip, a, b): (usize, Length, Length)| {
            divide(a, b, spec.longest(), false).into_iter().map(move |(a, b)| (strip, a, b))
        };
        let spans = spans.into_iter().filter(|s| s.2 - s.1 > Length::mm(20.0)).flat_map(fits);
        for (number, (strip, a, b)) in spans.enumerate() {
            all.timbers.push(Lying { course, number: number + 1, strip, chainage: (a, b), bottom });
        }
    }
    all
}

/// The timbers of a course that holds the heads of ties: they end with their strip.
fn bearing(spec: &StackedTimberSpec, strip: &Strip, short: bool) -> Vec<(Length, Length)> {
    divide(strip.chainage.0, strip.chainage.1, spec.longest(), short)
}

/// Places of the ties that lie on such a course, with the length of wall that each holds.
pub(crate) fn ties(spec: &StackedTimberSpec, strip: &Strip, short: bool) -> Vec<(Length, Length)> {
    let of = |(a, b): (Length, Length)| {
        let n = spec.ties_in(b - a);
        let s = (b - a) / n as f64;
        (0..n).map(move |i| (a + s * (i as f64 + 0.5), s))
    };
    bearing(spec, strip, short).into_iter().flat_map(of).collect()
}

/// The longest stretch of wall that one tie of a row holds; the row is named by the course of its heads in the strip.
pub(crate) fn widest(spec: &StackedTimberSpec, strips: &[Strip], strip: &Strip, course: usize) -> Length {
    let below = first(spec, strips, strip) + course.saturating_sub(1);
    ties(spec, strip, below % 2 == 1).iter().map(|t| t.1).reduce(Length::max).unwrap_or_default()
}
