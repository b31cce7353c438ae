//! How does a wall of steel posts with panels look from the front and cut across, and into which strips does it fall?

use groundhold_member::steel::Shape;
use groundhold_quantity::{Length, Level};

use super::{SteelPost, SteelPostSpec};
use crate::{
    Bay, Board, Cross, FacePiece, Hole, Layout, Line, Note, Piece, Post, Role, SectionPart, Span, Strip, Stuff,
    WallCase, timber_text,
};

const HOLE: &str = "post hole";
const POST: &str = "post and panels, cut";

/// One strip for each bay; the first and the last run to the ends of the line.
pub(crate) fn strips(case: &WallCase, spec: &SteelPostSpec, bays: &[Bay], posts: &[Post]) -> Vec<Strip> {
    let base = |b: &Bay| {
        let near = posts.iter().filter(|p| p.number == b.from_post || p.number == b.to_post);
        near.map(|p| p.bottom).reduce(Level::min).unwrap_or(b.bottom)
    };
    let line = Line::new(&case.stations);
    let mut all: Vec<Strip> = bays
        .iter()
        .map(|b| Strip {
            number: b.number,
            on: format!("bay {}", b.number),
            chainage: b.chainage,
            base: base(b),
            foot: b.bottom,
            top: b.top,
            front: b.front,
            behind: b.behind,
            retained: b.retained,
            courses: b.courses,
            width: spec.hole.diameter,
            back: spec.panel.thickness,
        })
        .collect();
    if let Some(s) = all.first_mut() {
        s.chainage.0 = line.start();
    }
    if let Some(s) = all.last_mut() {
        s.chainage.1 = line.end();
    }
    all
}

/// What is seen from the front: holes first, then panels, then the flanges of the posts before them.
pub(crate) fn faces(spec: &SteelPostSpec, posts: &[Post], pieces: &[Piece], holes: &[Hole]) -> Vec<FacePiece> {
    let mut all = vec![];
    for (p, h) in posts.iter().zip(holes) {
        let half = spec.post_of(p, posts.len()).profile.shape.width() / 2.0;
        let part = |stuff, half: Length, low, high| FacePiece {
            title: format!("hole of post {}", p.number),
            hidden: true,
            ..FacePiece::rectangle(
                format!("post {}", p.number),
                stuff,
                (p.chainage - half, p.chainage + half),
                (low, high),
            )
        };
        all.push(part(Stuff::Concrete, h.diameter / 2.0, p.bottom, p.front));
        if h.bottom < p.bottom {
            all.push(part(Stuff::Gravel, h.diameter / 2.0, h.bottom, p.bottom));
        }
        all.push(FacePiece { upright: true, ..part(Stuff::Steel, half, p.bottom, p.front) });
    }
    let half = spec.post.profile.shape.width() / 2.0;
    for piece in pieces.iter().filter(|p| p.role == Role::Board) {
        let mut face = FacePiece::rectangle(piece.mark.clone(), piece.stuff, piece.chainage, piece.level);
        face.label = piece.mark.clone();
        face.room = (piece.chainage.0 + half, piece.chainage.1 - half);
        all.push(face);
    }
    for (piece, p) in pieces.iter().filter(|p| p.role == Role::Post).zip(posts) {
        let level = (p.front.min(piece.level.1), piece.level.1);
        all.push(FacePiece {
            title: piece.mark.clone(),
            upright: true,
            built: piece.built,
            ..FacePiece::rectangle(format!("post {}", p.number), Stuff::Steel, piece.chainage, level)
        });
    }
    all
}

/// Soil side and open side of something, from the wall line.
type X = (Length, Length);

fn post_x(post: &SteelPost) -> X {
    let flange = post.flange().0;
    (flange - post.profile.shape.depth(), flange)
}

/// The wall at a chainage: the nearest post and, of the bays beside it that reach there, the one that holds more.
pub(crate) fn cross(case: &WallCase, spec: &SteelPostSpec, layout: &Layout, chainage: Length) -> Option<Cross> {
    let away = |p: &Post| (p.chainage - chainage).abs().to_m();
    let post = layout.posts.iter().min_by(|a, b| away(a).total_cmp(&away(b)))?;
    let beside = |b: &&Bay| b.from_post == post.number || b.to_post == post.number;
    let within = |b: &&Bay| b.chainage.0 <= chainage && chainage <= b.chainage.1;
    let most = |a: &'static str, bays: Vec<&Bay>| {
        (a, bays.into_iter().cloned().reduce(|a, b| if b.retained > a.retained { b } else { a }))
    };
    let (_, there) = most("here", layout.bays.iter().filter(within).collect());
    let bay = there.or_else(|| most("beside", layout.bays.iter().filter(beside).collect()).1)?;
    let middle = (bay.chainage.0 + bay.chainage.1) / 2.0;
    let mut panels: Vec<&Board> =
        layout.boards.iter().filter(|b| b.chainage.0 <= middle && middle <= b.chainage.1).collect();
    panels.sort_by(|a, b| a.bottom.to_m().total_cmp(&b.bottom.to_m()));
    let of = spec.post_of(post, layout.posts.len());
    let (a, b) = post_x(of);
    let (centre, r) = ((a + b) / 2.0, post.hole_diameter / 2.0);
    let hole = (centre - r, centre + r);
    let lowest = layout.holes.get(post.number - 1).map_or(post.bottom, |h| h.bottom);
    let line = Line::new(&case.stations);
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
        lowest,
        toe: b,
        back: -spec.panel.thickness,
        heel: hole.0,
        parts: parts(spec, of, post, &panels, hole, lowest),
        notes: notes(case, spec, of, post, &panels, hole, lowest),
        spans: vec![Span { x: hole, level: lowest, word: "⌀" }],
        refused_at: post.refused_at,
    })
}

fn parts(
    spec: &SteelPostSpec,
    of: &SteelPost,
    post: &Post,
    panels: &[&Board],
    hole: X,
    lowest: Level,
) -> Vec<SectionPart> {
    let mut all = vec![SectionPart::rectangle(HOLE, Stuff::Concrete, hole, (post.bottom, post.front))];
    if lowest < post.bottom {
        all.push(SectionPart::rectangle(HOLE, Stuff::Gravel, hole, (lowest, post.bottom)));
    }
    let (a, b) = post_x(of);
    let flange = of.flange().0;
    // The flanges cut, and between them the web seen behind the panels.
    let steel = |x: X| SectionPart {
        built: post.built,
        ..SectionPart::rectangle(POST, Stuff::Steel, x, (post.bottom, post.top))
    };
    all.extend([steel((a, a + flange)), steel((b - flange, b))]);
    for y in [post.bottom, post.top] {
        all.push(SectionPart::line(POST, Stuff::Steel, (a, y), (b, y)));
    }
    let stuff = if spec.panel.is_concrete() { Stuff::Concrete } else { Stuff::Timber };
    for panel in panels {
        let x = (-spec.panel.thickness, Length::ZERO);
        let part = SectionPart::rectangle(POST, stuff, x, (panel.bottom, panel.top));
        all.push(SectionPart { end_grain: stuff == Stuff::Timber, ..part });
    }
    all
}

fn notes(
    case: &WallCase,
    spec: &SteelPostSpec,
    of: &SteelPost,
    post: &Post,
    panels: &[&Board],
    hole: X,
    lowest: Level,
) -> Vec<Note> {
    let units = case.units;
    let kind = if matches!(of.profile.shape, Shape::Channel { .. }) { "channel" } else { "post" };
    let mut all = vec![Note {
        at: (of.flange().0, post.front + (post.top - post.front) * 0.55),
        says: vec![
            format!("{kind} {}", of.text()),
            format!("zinc {} µm, {} long", spec.zinc_um, units.length(post.length)),
        ],
        lean: (1.0, 0.0),
        rank: 60,
        clear: 2.0,
    }];
    if let Some(b) = panels.get(panels.len() / 2) {
        let size = timber_text::spelled(spec.panel.height, spec.panel.thickness).replace('x', "×");
        let kind = if spec.panel.is_concrete() { "cast panels" } else { "boards" };
        all.push(Note {
            at: (-spec.panel.thickness, b.bottom + (b.top - b.bottom) / 2.0),
            says: vec![
                format!("{} {kind} {size}", panels.len()),
                format!("{} long between the webs", units.length(b.length)),
            ],
            lean: (-1.0, -0.6),
            rank: 58,
            clear: 2.0,
        });
    }
    let edge = hole.1 - Length::mm(40.0);
    let beside =
        |at: (Length, Level), says: String, rank, clear| Note { at, says: vec![says], lean: (1.0, 0.3), rank, clear };
    all.push(beside((edge, post.bottom + (post.front - post.bottom) / 2.0), "concrete".into(), 50, 1.5));
    let gravel = post.bottom - lowest;
    if gravel > Length::ZERO {
        let at = (edge - Length::mm(20.0), lowest + gravel / 2.0);
        all.push(beside(at, format!("gravel {}", units.length(gravel)), 48, 1.2));
    }
    all
}
