//! How does a wall of posts and boards look where it is cut across beside a post?

use groundhold_quantity::{Length, Level, Units, trim};

use super::{Boards, Fill, TimberPostSpec};
use crate::{Bay, Board, Cross, Layout, Line, Note, Post, SectionPart, Span, Stuff, WallCase};

const HOLE: &str = "post hole";
const TIMBER: &str = "post and boards, cut";

/// What is cut: a post with the bay beside it, and the boards of that bay from below.
struct Cut<'a> {
    spec: &'a TimberPostSpec,
    post: &'a Post,
    bay: &'a Bay,
    boards: Vec<&'a Board>,
    gravel: Length,
    units: Units,
}

/// Soil side and open side of something, from the wall line.
type X = (Length, Length);

impl Cut<'_> {
    fn board_x(&self) -> X {
        let t = self.spec.board.thickness;
        match self.spec.boards {
            Boards::Behind => (-t, Length::ZERO),
            Boards::InFront => (Length::ZERO, t),
        }
    }
    fn post_x(&self) -> X {
        let d = self.spec.post.depth;
        match self.spec.boards {
            Boards::Behind => (Length::ZERO, d),
            Boards::InFront => (-d, Length::ZERO),
        }
    }
    fn hole_x(&self) -> X {
        let (a, b) = self.post_x();
        let (centre, r) = ((a + b) / 2.0, self.post.hole_diameter / 2.0);
        (centre - r, centre + r)
    }
    /// As on a drawing: millimetres without their unit, or feet and inches.
    fn figure(&self, l: Length) -> String {
        match self.units {
            Units::Metric => trim(l.to_mm(), 0),
            Units::Feet => self.units.length(l),
        }
    }
}

/// The wall at a chainage: the nearest post and, of the bays beside it that reach there, the one that holds more.
pub(crate) fn cross(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, chainage: Length) -> Option<Cross> {
    let away = |p: &Post| (p.chainage - chainage).abs().to_m();
    let post = layout.posts.iter().min_by(|a, b| away(a).total_cmp(&away(b)))?;
    let there = layout.bays.iter().filter(|b| b.chainage.0 <= chainage && chainage <= b.chainage.1);
    let bay = there.reduce(|a, b| if b.retained > a.retained { b } else { a })?;
    let middle = (bay.chainage.0 + bay.chainage.1) / 2.0;
    let in_bay = |b: &&Board| b.chainage.0 <= middle && middle <= b.chainage.1;
    let mut boards: Vec<&Board> = layout.boards.iter().filter(in_bay).collect();
    boards.sort_by(|a, b| a.bottom.to_m().total_cmp(&b.bottom.to_m()));
    let line = Line::new(&case.stations);
    let gravel = layout.holes.get(post.number - 1).map_or(Length::ZERO, |h| post.bottom - h.bottom);
    let cut = Cut { spec, post, bay, boards, gravel, units: case.units };
    let hole = cut.hole_x();
    Some(Cross {
        place: format!("beside post {}", post.number),
        element: format!("post {}", post.number),
        chainage: post.chainage,
        at: line.at(post.chainage + (middle - post.chainage) * 0.3).at,
        facing: line.facing(middle),
        top: post.top,
        front: post.front,
        behind: post.behind,
        retained: post.retained,
        bottom: post.bottom,
        lowest: post.bottom - gravel,
        toe: cut.post_x().1.max(cut.board_x().1),
        back: cut.board_x().0,
        heel: hole.0,
        parts: in_ground(&cut).into_iter().chain(timber(&cut)).collect(),
        notes: notes(&cut),
        spans: vec![Span { x: hole, level: post.bottom - gravel, word: "⌀" }],
        refused_at: post.refused_at,
    })
}

fn in_ground(cut: &Cut) -> Vec<SectionPart> {
    let p = cut.post;
    let fill = match cut.spec.hole.fill {
        Fill::Concrete => Stuff::Concrete,
        Fill::Rammed => Stuff::Rammed,
    };
    let mut parts = vec![SectionPart::rectangle(HOLE, fill, cut.hole_x(), (p.bottom, p.front))];
    if cut.gravel > Length::ZERO {
        parts.push(SectionPart::rectangle(HOLE, Stuff::Gravel, cut.hole_x(), (p.bottom - cut.gravel, p.bottom)));
    }
    parts
}

fn timber(cut: &Cut) -> Vec<SectionPart> {
    let (p, spec) = (cut.post, cut.spec);
    let post = SectionPart::rectangle(TIMBER, Stuff::Timber, cut.post_x(), (p.bottom, p.top));
    let mut parts = vec![SectionPart { built: p.built, ..post }];
    let (u, v) = cut.board_x();
    let lying = |x: X, level: (Level, Level)| SectionPart {
        end_grain: true,
        ..SectionPart::rectangle(TIMBER, Stuff::Timber, x, level)
    };
    // A screw goes from the boards into the post.
    let (start, reach) = match spec.boards {
        Boards::Behind => (u, u + spec.screws.length),
        Boards::InFront => (v, v - spec.screws.length),
    };
    for board in &cut.boards {
        parts.push(lying((u, v), (board.bottom, board.top)));
        let middle = board.bottom + (board.top - board.bottom) / 2.0;
        for y in [middle - Length::mm(40.0), middle + Length::mm(40.0)] {
            parts.push(SectionPart::line(TIMBER, Stuff::Steel, (start, y), (reach, y)));
        }
    }
    if let Some(cap) = &spec.capping {
        let (a, b) = cut.post_x();
        let centre = (u.min(a) + v.max(b)) / 2.0;
        let top = cut.bay.top.max(p.top);
        parts.push(lying((centre - cap.width / 2.0, centre + cap.width / 2.0), (top, top + cap.thickness)));
    }
    parts
}

fn notes(cut: &Cut) -> Vec<Note> {
    let (p, spec, units) = (cut.post, cut.spec, cut.units);
    let post = Note {
        at: (spec.post.depth * 0.8, p.front + (p.top - p.front) * 0.55),
        says: vec![
            format!("post {}×{}", cut.figure(spec.post.breadth), cut.figure(spec.post.depth)),
            format!("{} {}, {} long", spec.post.treatment, spec.post.grade.name, units.length(p.length)),
        ],
        lean: (1.0, 0.0),
        rank: 60,
        clear: 2.0,
    };
    let mut all = vec![post];
    if let Some(b) = cut.boards.get(cut.boards.len() / 2) {
        let size = format!("{}×{}", cut.figure(spec.board.height), cut.figure(spec.board.thickness));
        all.push(Note {
            at: (cut.board_x().0, b.bottom + (b.top - b.bottom) / 2.0),
            says: vec![
                format!("{} boards {size}", cut.boards.len()),
                format!("{} {}", spec.board.treatment, spec.board.grade.name),
            ],
            lean: (-1.0, -0.6),
            rank: 58,
            clear: 2.0,
        });
    }
    let fill = match spec.hole.fill {
        Fill::Concrete => "concrete",
        Fill::Rammed => "rammed stone or soil",
    };
    let edge = cut.hole_x().1 - Length::mm(40.0);
    let beside =
        |at: (Length, Level), says: String, rank, clear| Note { at, says: vec![says], lean: (1.0, 0.3), rank, clear };
    all.push(beside((edge, p.bottom + (p.front - p.bottom) / 2.0), fill.into(), 50, 1.5));
    if cut.gravel > Length::ZERO {
        let at = (edge - Length::mm(20.0), p.bottom - cut.gravel / 2.0);
        all.push(beside(at, format!("gravel {}", units.length(cut.gravel)), 48, 1.2));
    }
    all
}
