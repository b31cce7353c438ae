//! How does a wall of posts and boards look from the front, and which strips does it consist of?

use groundhold_quantity::Length;

use super::{Boards, Fill, TimberPostSpec};
use crate::{Bay, Board, FacePiece, Hole, Piece, Post, Role, Strip, Stuff};

/// One strip for each bay.
pub(crate) fn strips(spec: &TimberPostSpec, bays: &[Bay], posts: &[Post]) -> Vec<Strip> {
    let base = |b: &Bay| {
        let near = posts.iter().filter(|p| p.number == b.from_post || p.number == b.to_post);
        near.map(|p| p.bottom).reduce(groundhold_quantity::Level::min).unwrap_or(b.bottom)
    };
    bays.iter()
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
            back: Length::ZERO,
        })
        .collect()
}

/// What is seen from the front: holes first, then what stands behind, then what stands before it.
pub(crate) fn faces(
    spec: &TimberPostSpec,
    posts: &[Post],
    boards: &[Board],
    pieces: &[Piece],
    holes: &[Hole],
) -> Vec<FacePiece> {
    let mut all: Vec<FacePiece> = posts.iter().zip(holes).flat_map(|(p, h)| hole(spec, p, h)).collect();
    let (upright, lying): (Vec<&Piece>, Vec<&Piece>) = pieces.iter().partition(|p| p.role == Role::Post);
    let upright = upright.into_iter().map(|p| post(spec, posts, p));
    let lying = lying.into_iter().map(|p| lying_piece(spec, posts, boards, p));
    match spec.boards {
        Boards::Behind => all.extend(lying.chain(upright)),
        Boards::InFront => all.extend(upright.chain(lying)),
    }
    all
}

fn hole(spec: &TimberPostSpec, post: &Post, hole: &Hole) -> Vec<FacePiece> {
    let (c, r) = (post.chainage, hole.diameter / 2.0);
    let fill = match spec.hole.fill {
        Fill::Concrete => Stuff::Concrete,
        Fill::Rammed => Stuff::Rammed,
    };
    let part = |stuff, half: Length, low, high| FacePiece {
        title: format!("hole of post {}", post.number),
        hidden: true,
        ..FacePiece::rectangle(format!("post {}", post.number), stuff, (c - half, c + half), (low, high))
    };
    let body = part(fill, r, post.bottom, post.front);
    let gravel = (hole.bottom < post.bottom).then(|| part(Stuff::Gravel, r, hole.bottom, post.bottom));
    let foot = part(Stuff::Timber, spec.post.breadth / 2.0, post.bottom, post.front);
    std::iter::once(body).chain(gravel).chain([FacePiece { upright: true, ..foot }]).collect()
}

fn post(spec: &TimberPostSpec, posts: &[Post], piece: &Piece) -> FacePiece {
    let half = spec.post.breadth / 2.0;
    let middle = (piece.chainage.0 + piece.chainage.1) / 2.0;
    let front = posts.iter().find(|p| p.number == piece.bay).map_or(piece.level.0, |p| p.front);
    let level = (front.min(piece.level.1), piece.level.1);
    FacePiece {
        title: piece.mark.clone(),
        upright: true,
        built: piece.built,
        ..FacePiece::rectangle(format!("post {}", piece.bay), Stuff::Timber, (middle - half, middle + half), level)
    }
}

fn lying_piece(spec: &TimberPostSpec, posts: &[Post], boards: &[Board], piece: &Piece) -> FacePiece {
    let mut face = FacePiece::rectangle(piece.mark.clone(), Stuff::Timber, piece.chainage, piece.level);
    face.built = piece.built;
    if let Some(board) = boards.iter().find(|b| b.mark == piece.mark) {
        // The mark stands in the first bay of the board, so that no post stands before it.
        let next = posts.iter().find(|p| p.number == board.from_post + 1).map_or(board.chainage.1, |p| p.chainage);
        let half = spec.post.breadth / 2.0;
        face.room = (board.chainage.0 + half, next.min(board.chainage.1) - half);
        face.label = board.mark.clone();
    }
    face
}
