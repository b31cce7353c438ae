//! How does a wall of courses look from the front and cut across?

use groundhold_quantity::{Length, Level};

use super::{Body, Gravity};
use crate::{Cross, FacePiece, Layout, Line, Note, SectionPart, Span, Strip, WallCase};

/// What is seen from the front: every course of every strip, in units of a length where it has one, hidden below the
/// ground in front. `label` names a unit by its course and its number along the strip, counted from 1.
pub(crate) fn faces(
    wall: &dyn Gravity,
    strips: &[Strip],
    unit: Option<Length>,
    label: &dyn Fn(&Strip, usize, usize) -> String,
) -> Vec<FacePiece> {
    let (mut hidden, mut seen) = (vec![], vec![]);
    for s in strips {
        let n = unit.map_or(1.0, |u| (s.length() / u - 1e-3).ceil().max(1.0));
        for (row, c) in wall.body(s).courses.iter().enumerate() {
            let (low, high) = (s.base + Length::m(c.height.0), s.base + Length::m(c.height.1));
            for i in 0..n as usize {
                let from = unit.map_or(s.chainage.0, |u| s.chainage.0 + u * i as f64);
                let to = unit.map_or(s.chainage.1, |u| (s.chainage.0 + u * (i + 1) as f64).min(s.chainage.1));
                let piece = |level: (Level, Level)| FacePiece {
                    title: format!("{}, {}", c.group, s.on),
                    ..FacePiece::rectangle(s.on.clone(), c.stuff, (from, to), level)
                };
                if low < s.front {
                    hidden.push(FacePiece { hidden: true, ..piece((low, high.min(s.front))) });
                }
                if high > s.front {
                    seen.push(FacePiece { label: label(s, row + 1, i + 1), ..piece((low.max(s.front), high)) });
                }
            }
        }
    }
    hidden.extend(seen);
    hidden
}

/// The wall at a chainage, with words beside it.
pub(crate) fn cross(
    case: &WallCase,
    wall: &dyn Gravity,
    layout: &Layout,
    chainage: Length,
    notes: &dyn Fn(&Strip, &Body) -> Vec<Note>,
) -> Option<Cross> {
    let strip = layout.strip(chainage)?;
    let line = Line::new(&case.stations);
    let here = line.at(chainage);
    let body = wall.body(strip);
    let level = |z: f64| strip.base + Length::m(z);
    let parts = body.courses.iter().map(|c| SectionPart {
        group: c.group,
        outline: vec![
            (Length::m(c.back.1), level(c.height.1)),
            (Length::m(c.front.1), level(c.height.1)),
            (Length::m(c.front.0), level(c.height.0)),
            (Length::m(c.back.0), level(c.height.0)),
        ],
        stuff: c.stuff,
        end_grain: false,
        built: false,
    });
    let backs = body.courses.iter().flat_map(|c| [c.back.0, c.back.1]);
    let ground = (here.front - strip.base).to_m();
    let retained = here.retained();
    Some(Cross {
        place: format!("through {}", strip.on),
        element: String::new(),
        chainage,
        at: here.at,
        facing: line.facing(strip.middle()),
        top: strip.top,
        front: here.front,
        behind: here.behind,
        retained,
        bottom: strip.base,
        lowest: strip.base,
        toe: Length::m(body.at(ground.max(0.0)).0),
        back: -strip.back,
        heel: Length::m(backs.fold(0.0, f64::min)),
        parts: parts.collect(),
        notes: notes(strip, &body),
        spans: vec![Span {
            x: (Length::m(body.at(0.0).1), Length::m(body.at(0.0).0)),
            level: strip.base,
            word: "base",
        }],
        refused_at: None,
    })
}
