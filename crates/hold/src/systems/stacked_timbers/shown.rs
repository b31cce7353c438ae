//! How does a wall of stacked timbers look from the front and cut across?

use groundhold_quantity::{Length, Level, trim};

use super::StackedTimberSpec;
use super::courses::Laid;
use crate::{Cross, FacePiece, Layout, Line, Note, SectionPart, Span, Strip, Stuff, WallCase, timber_text};

const TIMBERS: &str = "timbers, cut";
const BED: &str = "bed";
const TIES: &str = "ties and cross pieces";

/// What is seen from the front: timbers hidden below the ground first, then those above it, then the heads of the ties.
pub(crate) fn faces(spec: &StackedTimberSpec, strips: &[Strip], laid: &Laid) -> Vec<FacePiece> {
    let front = |strip: usize| strips.iter().find(|s| s.number == strip).map_or(Level::default(), |s| s.front);
    let h = spec.timber.height;
    let (mut hidden, mut seen) = (vec![], vec![]);
    let mut put = |mark: String, chainage: (Length, Length), bottom: Level, ground: Level, label: String| {
        let piece = |level| FacePiece::rectangle(mark.clone(), Stuff::Timber, chainage, level);
        let top = bottom + h;
        if bottom < ground {
            hidden.push(FacePiece { hidden: true, ..piece((bottom, top.min(ground))) });
        }
        if top > ground {
            seen.push(FacePiece { label, ..piece((bottom.max(ground), top)) });
        }
    };
    for t in &laid.timbers {
        let mark = mark(t.course, t.number);
        // A timber that runs over several strips is hidden where the lowest of them is.
        let reached = |s: &&Strip| s.chainage.0 < t.chainage.1 && t.chainage.0 < s.chainage.1;
        let ground = strips.iter().filter(reached).map(|s| s.front).reduce(Level::min).unwrap_or(front(t.strip));
        put(mark.clone(), t.chainage, t.bottom, ground, mark);
    }
    let half = spec.timber.thickness / 2.0;
    for (i, t) in laid.ties.iter().enumerate() {
        let at = (t.chainage - half, t.chainage + half);
        put(format!("T{}", i + 1), at, t.bottom, front(t.strip), String::new());
    }
    hidden.into_iter().chain(seen).collect()
}

/// The mark of a timber: `B2-1` is the first of course 2.
pub(crate) fn mark(course: usize, number: usize) -> String {
    format!("B{}-{number}", course + 1)
}

/// The wall at a chainage, through a tie of every row.
pub(crate) fn cross(case: &WallCase, spec: &StackedTimberSpec, layout: &Layout, chainage: Length) -> Option<Cross> {
    let strip = layout.strip(chainage)?;
    let line = Line::new(&case.stations);
    let here = line.at(chainage);
    let lowest = strip.base - spec.bed;
    let rows = spec.rows(strip.courses);
    let length = if rows.is_empty() { spec.timber.thickness } else { strip.width };
    let ground = ((here.front - strip.base) / spec.timber.height).floor().max(0.0);
    let thick = spec.timber.thickness;
    Some(Cross {
        place: format!("through {}", strip.on),
        element: String::new(),
        chainage,
        at: here.at,
        facing: line.facing(strip.middle()),
        top: strip.top,
        front: here.front,
        behind: here.behind,
        retained: here.retained(),
        bottom: strip.base,
        lowest,
        toe: -set_back(spec, ground as usize),
        back: -thick,
        heel: -thick - Length::mm(100.0),
        parts: parts(spec, strip, &rows),
        notes: notes(case, spec, strip, &rows),
        spans: vec![Span {
            x: (-length, Length::ZERO),
            level: lowest,
            word: if rows.is_empty() { "base" } else { "base and ties" },
        }],
        refused_at: None,
    })
}

/// How far a course stands back from the foot of the face.
fn set_back(spec: &StackedTimberSpec, course: usize) -> Length {
    spec.timber.height * (spec.batter.to_ratio() * course as f64)
}

fn parts(spec: &StackedTimberSpec, strip: &Strip, rows: &[usize]) -> Vec<SectionPart> {
    let (h, t) = (spec.timber.height, spec.timber.thickness);
    let mut all = vec![];
    if spec.bed > Length::ZERO {
        let x = (-t - Length::mm(100.0), Length::mm(100.0));
        all.push(SectionPart::rectangle(BED, Stuff::Gravel, x, (strip.base - spec.bed, strip.base)));
    }
    let level = |k: usize| (strip.base + h * k as f64, strip.base + h * (k + 1) as f64);
    let across = |group, x, y| SectionPart { end_grain: true, ..SectionPart::rectangle(group, Stuff::Timber, x, y) };
    for k in 0..strip.courses {
        let front = -set_back(spec, k);
        match rows.contains(&k) {
            true => {
                let end = -strip.width;
                all.push(SectionPart::rectangle(TIES, Stuff::Timber, (end + t, front), level(k)));
                all.push(across(TIES, (end, end + t), level(k)));
            }
            false => all.push(across(TIMBERS, (front - t, front), level(k))),
        }
    }
    // Screws from each course into the one below it.
    for k in 1..strip.courses {
        let x = -set_back(spec, k) - t / 2.0;
        let (_, top) = level(k);
        all.push(SectionPart::line(TIMBERS, Stuff::Steel, (x, top), (x, top - spec.screws.length)));
    }
    all
}

fn notes(case: &WallCase, spec: &StackedTimberSpec, strip: &Strip, rows: &[usize]) -> Vec<Note> {
    let (u, h, t) = (case.units, spec.timber.height, spec.timber.thickness);
    let size = timber_text::spelled(h, t).replace('x', "×");
    let quality = format!("{} {}", spec.timber.treatment, spec.timber.grade.name);
    let top = strip.courses.saturating_sub(1);
    let mut all = vec![Note {
        at: (-set_back(spec, top), strip.top - h / 2.0),
        says: vec![
            format!("{} courses of {size}", strip.courses),
            format!("{}, screws {}", quality.trim(), spec.screws.material().replace("screw ", "")),
        ],
        lean: (1.0, 0.0),
        rank: 60,
        clear: 2.0,
    }];
    if let Some(k) = rows.first() {
        let level = strip.base + h * (*k as f64 + 0.5);
        all.push(Note {
            at: (-strip.width + t / 2.0, level),
            says: vec![
                format!("cross piece {} long", u.length(spec.ties.cross)),
                format!("on ties {} long, {} apart at most", u.length(strip.width), u.length(spec.ties.spacing)),
            ],
            lean: (-1.0, -0.8),
            rank: 58,
            clear: 2.0,
        });
    }
    if spec.bed > Length::ZERO {
        let says = vec![format!("on {} of rolled stone", u.length(spec.bed))];
        let at = (Length::mm(60.0), strip.base - spec.bed / 2.0);
        all.push(Note { at, says, lean: (1.0, 0.6), rank: 50, clear: 1.5 });
    }
    if spec.batter.to_ratio() > 0.0 {
        let says = vec![format!("each course {} mm back", trim((h * spec.batter.to_ratio()).to_mm(), 0))];
        let at = (-set_back(spec, strip.courses / 2), strip.base + h * (strip.courses / 2) as f64);
        all.push(Note { at, says, lean: (1.0, 0.2), rank: 40, clear: 1.5 });
    }
    all
}
