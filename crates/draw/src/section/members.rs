//! Post, boards, hole and what fills it, cut.

use groundhold_hold::systems::timber_posts::{Boards, Fill};

use super::Cut;
use crate::frame::Frame;
use crate::hatch;
use crate::pens::{
    BLACK, BUILT_WASH, EARTH_WASH, FINE, GREY, HIDDEN, MEDIUM, STONE_WASH, TIMBER_WASH, area, group, line, stroke,
};
use crate::scene::{Item, Pen};

/// Boards from their soil side to the other, metres from the wall line (in which posts and boards touch).
pub(crate) fn board_x(cut: &Cut) -> (f64, f64) {
    let t = cut.spec.board.thickness.to_m();
    match cut.spec.boards {
        Boards::Behind => (-t, 0.0),
        Boards::InFront => (0.0, t),
    }
}

/// The post from its soil side to the other.
fn post_x(cut: &Cut) -> (f64, f64) {
    let d = cut.spec.post.depth.to_m();
    match cut.spec.boards {
        Boards::Behind => (0.0, d),
        Boards::InFront => (-d, 0.0),
    }
}

/// The soil side of the hole.
pub(crate) fn hole_back(cut: &Cut) -> f64 {
    let (a, b) = post_x(cut);
    (a + b) / 2.0 - cut.post.hole_diameter.to_m() / 2.0
}

/// Where no label may stand: post and boards above the ground, the hole below it.
pub(crate) fn bodies(cut: &Cut) -> Vec<Frame> {
    let (a, b) = post_x(cut);
    let (u, v) = board_x(cut);
    let p = cut.post;
    let bottom = cut.boards.first().map_or(p.front, |b| b.bottom).min(p.front);
    let timber = cut.rect(a.min(u), b.max(v), bottom.to_m(), p.top.to_m());
    let r = p.hole_diameter.to_m() / 2.0;
    let centre = (a + b) / 2.0;
    let hole = cut.rect(centre - r, centre + r, p.bottom.to_m() - cut.spec.hole.gravel_base.to_m(), p.front.to_m());
    [timber, hole].iter().filter_map(|c| Frame::around(c)).collect()
}

pub(crate) fn hole(cut: &Cut) -> Vec<Item> {
    let p = cut.post;
    let (a, b) = post_x(cut);
    let centre = (a + b) / 2.0;
    let r = p.hole_diameter.to_m() / 2.0;
    let (bottom, front) = (p.bottom.to_m(), p.front.to_m());
    let gravel = cut.spec.hole.gravel_base.to_m();
    let mut items = vec![];
    let body = cut.rect(centre - r, centre + r, bottom, front);
    match cut.spec.hole.fill {
        Fill::Concrete => {
            items.push(area(body.clone(), Some(Pen::new(MEDIUM, BLACK)), Some(STONE_WASH)));
            items.extend(hatch::concrete(&body, 2.6));
        }
        Fill::Rammed => {
            items.push(area(body.clone(), Some(Pen::new(MEDIUM, BLACK).dashed(HIDDEN)), Some(EARTH_WASH)));
            items.extend(hatch::ground(&body, 3.6, GREY));
        }
    }
    if gravel > 0.0 {
        let bed = cut.rect(centre - r, centre + r, bottom - gravel, bottom);
        items.push(area(bed.clone(), Some(Pen::new(MEDIUM, BLACK)), Some(STONE_WASH)));
        items.extend(hatch::stones(&bed, 1.8));
    }
    vec![group(format!("{} post {}", cut.wall.id, p.number), "post hole", items)]
}

pub(crate) fn timber(cut: &Cut) -> Vec<Item> {
    let p = cut.post;
    let (a, b) = post_x(cut);
    let post = cut.rect(a, b, p.bottom.to_m(), p.top.to_m());
    let wash = if p.built { BUILT_WASH } else { TIMBER_WASH };
    let mut items = vec![area(post, Some(Pen::new(MEDIUM, BLACK)), Some(wash))];
    // The grain along the post.
    for k in [0.3, 0.55, 0.8] {
        let x = a + (b - a) * k;
        let (top, bottom) = (p.top.to_m() - 0.01, p.bottom.to_m() + 0.01);
        items.push(stroke(cut.at(x, top), cut.at(x, bottom), Pen::new(0.08, GREY)));
    }
    let (u, v) = board_x(cut);
    for board in &cut.boards {
        let ring = cut.rect(u, v, board.bottom.to_m(), board.top.to_m());
        items.push(area(ring.clone(), Some(Pen::new(MEDIUM, BLACK)), Some(TIMBER_WASH)));
        items.extend(hatch::end_grain(&ring, GREY));
        // A screw from the boards into the post.
        let mid = (board.bottom.to_m() + board.top.to_m()) / 2.0;
        let (start, reach) =
            if v <= 0.0 { (u, u + cut.spec.screws.length.to_m()) } else { (v, v - cut.spec.screws.length.to_m()) };
        for y in [mid - 0.04, mid + 0.04] {
            items.push(line(vec![cut.at(start, y), cut.at(reach, y)], Pen::new(FINE, BLACK)));
        }
    }
    if let Some(cap) = &cut.spec.capping {
        let (w, t) = (cap.width.to_m(), cap.thickness.to_m());
        let centre = (u.min(a) + v.max(b)) / 2.0;
        let top = cut.bay.top.to_m().max(p.top.to_m());
        let ring = cut.rect(centre - w / 2.0, centre + w / 2.0, top, top + t);
        items.push(area(ring.clone(), Some(Pen::new(MEDIUM, BLACK)), Some(TIMBER_WASH)));
        items.extend(hatch::end_grain(&ring, GREY));
    }
    vec![group(format!("{} post {}", cut.wall.id, p.number), "post and boards, cut", items)]
}
