//! The parts of a wall, cut: each drawn as what it is made of.

use groundhold_hold::{SectionPart, Stuff};

use super::Cut;
use crate::frame::Frame;
use crate::hatch;
use crate::pens::{
    BLACK, BUILT_WASH, EARTH_WASH, FINE, GREEN, GREY, HAIR, HIDDEN, MEDIUM, STONE_WASH, TIMBER_WASH, area, group, line,
    stroke,
};
use crate::scene::{At, Item, Pen};

/// Where the ground or the drain stone behind begins, metres from the wall line.
pub(crate) fn back(cut: &Cut) -> f64 {
    cut.cross.back.to_m()
}

/// Where no label may stand.
pub(crate) fn bodies(cut: &Cut) -> Vec<Frame> {
    let solid = cut.cross.parts.iter().filter(|p| p.outline.len() > 2);
    solid.filter_map(|p| Frame::around(&outline(cut, p))).collect()
}

fn outline(cut: &Cut, part: &SectionPart) -> Vec<At> {
    part.outline.iter().map(|(x, y)| cut.at(x.to_m(), y.to_m())).collect()
}

/// All parts, those of one group together.
pub(crate) fn parts(cut: &Cut) -> Vec<Item> {
    let element = format!("{} {}", cut.wall.id, cut.cross.element);
    let mut groups: Vec<(&str, Vec<Item>)> = vec![];
    for part in &cut.cross.parts {
        let ring = outline(cut, part);
        let items = one(&ring, part);
        match groups.last_mut().filter(|g| g.0 == part.group) {
            Some(g) => g.1.extend(items),
            None => groups.push((part.group, items)),
        }
    }
    groups.into_iter().map(|(title, items)| group(element.trim_end(), title, items)).collect()
}

fn one(ring: &[At], part: &SectionPart) -> Vec<Item> {
    if ring.len() == 2 {
        let pen = match part.stuff {
            Stuff::Grid => Pen::new(MEDIUM, GREEN).dashed(&[2.2, 0.8]),
            _ => Pen::new(FINE, BLACK),
        };
        return vec![line(ring.to_vec(), pen)];
    }
    let solid = |wash| area(ring.to_vec(), Some(Pen::new(MEDIUM, BLACK)), Some(wash));
    let mut items = vec![match part.stuff {
        Stuff::Timber => solid(if part.built { BUILT_WASH } else { TIMBER_WASH }),
        Stuff::Rammed => area(ring.to_vec(), Some(Pen::new(MEDIUM, BLACK).dashed(HIDDEN)), Some(EARTH_WASH)),
        _ => solid(STONE_WASH),
    }];
    items.extend(inside(ring, part));
    items
}

fn inside(ring: &[At], part: &SectionPart) -> Vec<Item> {
    match part.stuff {
        Stuff::Timber if part.end_grain => hatch::end_grain(ring, GREY),
        Stuff::Timber => upright_grain(ring),
        Stuff::Concrete => hatch::concrete(ring, 2.6),
        Stuff::Gravel => hatch::stones(ring, 1.8),
        Stuff::Basket => hatch::stones(ring, 3.2),
        Stuff::Stone => hatch::stones(ring, 4.4),
        Stuff::Rammed => hatch::ground(ring, 3.6, GREY),
        Stuff::Block => hatch::lines(&[ring.to_vec()], 45.0, 1.6, &Pen::new(HAIR, GREY)),
        Stuff::Steel => hatch::lines(&[ring.to_vec()], 45.0, 0.7, &Pen::new(HAIR, BLACK)),
        Stuff::Grid => vec![],
    }
}

/// The grain along a post.
fn upright_grain(ring: &[At]) -> Vec<Item> {
    let Some(f) = Frame::around(ring) else { return vec![] };
    let one = |k: f64| {
        let x = f.left + f.width() * k;
        stroke(At::mm(x, f.top + 0.5), At::mm(x, f.bottom - 0.5), Pen::new(0.08, GREY))
    };
    [0.3, 0.55, 0.8].map(one).into()
}
