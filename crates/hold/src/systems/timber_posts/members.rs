//! Which pieces, holes and fixings make up the wall?

use std::collections::BTreeMap;

use groundhold_quantity::{Length, Volume};

use super::boards::Stretch;
use super::{Fill, TimberPostSpec};
use crate::posted::place::cover;
use crate::workings::{HoleVolumes, hole};
use crate::{Bay, Board, Fixing, Hole, Piece, Post, Role, Stuff};

/// Every piece: posts, boards, capping.
pub(crate) fn pieces(
    spec: &TimberPostSpec,
    posts: &[Post],
    bays: &[Bay],
    boards: &[Board],
    cappings: &[Stretch],
) -> Vec<Piece> {
    let mut all: Vec<Piece> = posts.iter().map(|p| post_piece(spec, p)).collect();
    all.extend(boards.iter().map(|b| board_piece(spec, posts, b)));
    let Some(capping) = &spec.capping else { return all };
    for (i, s) in cappings.iter().enumerate() {
        let top = bays[s.first].top;
        all.push(Piece {
            mark: format!("C{}", i + 1),
            role: Role::Capping,
            section: (capping.width, capping.thickness),
            length: s.length,
            material: capping.material(),
            stuff: Stuff::Timber,
            chainage: (bays[s.first].chainage.0, bays[s.end - 1].chainage.1),
            level: (top, top + capping.thickness),
            bay: s.first + 1,
            built: false,
        });
    }
    all
}

fn post_piece(spec: &TimberPostSpec, post: &Post) -> Piece {
    let half = spec.post.breadth / 2.0;
    Piece {
        mark: format!("P{}", post.number),
        role: Role::Post,
        section: (spec.post.breadth, spec.post.depth),
        length: post.length,
        material: spec.post.material(),
        stuff: Stuff::Timber,
        chainage: (post.chainage - half, post.chainage + half),
        level: (post.bottom, post.top),
        bay: post.number,
        built: post.built,
    }
}

fn board_piece(spec: &TimberPostSpec, posts: &[Post], board: &Board) -> Piece {
    debug_assert!(board.to_post <= posts.len());
    Piece {
        mark: board.mark.clone(),
        role: Role::Board,
        section: (spec.board.height, spec.board.thickness),
        length: board.length,
        material: spec.board.material(),
        stuff: Stuff::Timber,
        chainage: board.chainage,
        level: (board.bottom, board.top),
        bay: board.from_post,
        built: false,
    }
}

/// Volumes of a post's hole.
pub(crate) fn hole_volumes(spec: &TimberPostSpec, bays: &[Bay], post: &Post) -> HoleVolumes<f64> {
    hole(
        post.hole_diameter.to_m(),
        post.depth.to_m(),
        gravel_under(spec, post).to_m(),
        cover(bays, post).to_m(),
        spec.post.breadth.to_m(),
        spec.post.depth.to_m(),
    )
}

/// Gravel under a post: as specified, or what room a refused hole leaves.
fn gravel_under(spec: &TimberPostSpec, post: &Post) -> Length {
    let room = post.refused_at.map_or(spec.hole.gravel_base, |r| r - post.depth);
    spec.hole.gravel_base.min(room).max(Length::ZERO)
}

/// One hole per post.
pub(crate) fn holes(spec: &TimberPostSpec, bays: &[Bay], posts: &[Post]) -> Vec<Hole> {
    posts
        .iter()
        .map(|post| {
            let v = hole_volumes(spec, bays, post);
            let gravel = gravel_under(spec, post);
            let fill = Volume::m3(v.fill);
            let (concrete, rammed) = match spec.hole.fill {
                Fill::Concrete => (fill, Volume::ZERO),
                Fill::Rammed => (Volume::ZERO, fill),
            };
            Hole {
                post: post.number,
                at: post.at,
                diameter: post.hole_diameter,
                depth: post.depth + gravel,
                bottom: post.bottom - gravel,
                concrete,
                rammed,
                gravel: Volume::m3(v.gravel),
                spoil: Volume::m3(v.spoil),
                built: post.built,
            }
        })
        .collect()
}

/// Screws: each board at each post it passes, and the capping at each post with as many.
pub(crate) fn fixings(spec: &TimberPostSpec, boards: &[Board], cappings: &[Stretch]) -> Vec<Fixing> {
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    let of_boards = boards.iter().map(|b| b.to_post - b.from_post + 1).sum::<usize>() * spec.screws.per_joint;
    let of_capping = cappings.iter().map(|s| s.end - s.first + 1).sum::<usize>() * spec.screws.per_joint;
    counts.insert("boards to posts", of_boards);
    counts.insert("capping to posts", of_capping);
    let item = spec.screws.material();
    let fixing = |(what, count): (&str, usize)| Fixing { item: item.clone(), count, what: what.into() };
    counts.into_iter().filter(|(_, n)| *n > 0).map(fixing).collect()
}
