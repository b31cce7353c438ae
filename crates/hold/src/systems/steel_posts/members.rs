//! Which pieces, holes and lifts make up the wall?

use groundhold_quantity::{Length, Volume};

use super::SteelPostSpec;
use crate::posted::place::cover;
use crate::workings::hole;
use crate::{Bay, Board, Hole, Lift, Piece, Post, Role, Stuff, WallCase};

/// Every piece: posts and panels.
pub(crate) fn pieces(spec: &SteelPostSpec, posts: &[Post], boards: &[Board]) -> Vec<Piece> {
    let stuff = if spec.panel.is_concrete() { Stuff::Concrete } else { Stuff::Timber };
    let post = |p: &Post| {
        let of = spec.post_of(p, posts.len());
        let wide = of.profile.shape.width();
        Piece {
            mark: format!("P{}", p.number),
            role: Role::Post,
            section: (wide, of.profile.shape.depth()),
            length: p.length,
            material: of.material(),
            stuff: Stuff::Steel,
            chainage: (p.chainage - wide / 2.0, p.chainage + wide / 2.0),
            level: (p.bottom, p.top),
            bay: p.number,
            built: p.built,
        }
    };
    let panel = |b: &Board| {
        let middle = (b.chainage.0 + b.chainage.1) / 2.0;
        Piece {
            mark: b.mark.clone(),
            role: Role::Board,
            section: (spec.panel.height, spec.panel.thickness),
            length: b.length,
            material: spec.panel.material(),
            stuff,
            chainage: (middle - b.length / 2.0, middle + b.length / 2.0),
            level: (b.bottom, b.top),
            bay: b.from_post,
            built: false,
        }
    };
    posts.iter().map(post).chain(boards.iter().map(panel)).collect()
}

/// Posts are not solid, so the wall says their mass itself; like posts once.
pub(crate) fn lifts(case: &WallCase, spec: &SteelPostSpec, posts: &[Post]) -> Vec<Lift> {
    let mut all: Vec<Lift> = vec![];
    for p in posts.iter().filter(|p| !p.built) {
        let of = spec.post_of(p, posts.len());
        let what = format!("{} {}", of.material(), case.units.run(p.length));
        match all.iter_mut().find(|l| l.what == what) {
            Some(l) => l.count += 1.0,
            None => all.push(Lift { what, mass: of.mass(p.length), count: 1.0 }),
        }
    }
    all
}

/// Gravel under a post: as specified, or what room a refused hole leaves.
fn gravel_under(spec: &SteelPostSpec, post: &Post) -> Length {
    let room = post.refused_at.map_or(spec.hole.gravel_base, |r| r - post.depth);
    spec.hole.gravel_base.min(room).max(Length::ZERO)
}

/// One hole per post.
pub(crate) fn holes(spec: &SteelPostSpec, bays: &[Bay], posts: &[Post]) -> Vec<Hole> {
    let one = |post: &Post| {
        let of = spec.post_of(post, posts.len());
        let (gravel, deep) = (gravel_under(spec, post), of.profile.shape.depth());
        // The steel as a rectangle of its own area.
        let v = hole(
            post.hole_diameter.to_m(),
            post.depth.to_m(),
            gravel.to_m(),
            cover(bays, post).to_m(),
            (of.area() / deep).to_m(),
            deep.to_m(),
        );
        Hole {
            post: post.number,
            at: post.at,
            diameter: post.hole_diameter,
            depth: post.depth + gravel,
            bottom: post.bottom - gravel,
            concrete: Volume::m3(v.fill),
            rammed: Volume::ZERO,
            gravel: Volume::m3(v.gravel),
            spoil: Volume::m3(v.spoil),
            built: post.built,
        }
    };
    posts.iter().map(one).collect()
}
