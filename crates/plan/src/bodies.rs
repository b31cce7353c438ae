//! How much ground does the body of a wall take the place of, and how much fill?

use groundhold_dig::BodyDug;
use groundhold_hold::{Cross, SectionPart};
use groundhold_quantity::{Length, Volume};
use groundhold_surface::Tin;

use crate::walls::WallPlan;

/// Width of the columns in which a section is counted, metres.
const COLUMN: f64 = 0.05;
/// Room dug behind the rear of the base to work in. Common practice, no source: 150 to 300 mm.
const ROOM: Length = Length::mm(200.0);

/// Walls whose body counts: those that stand on a base. Posts have their holes, and boards are too thin.
pub(crate) fn bodies(ground: &Tin, walls: &[WallPlan]) -> Vec<BodyDug> {
    walls.iter().filter(|w| w.layout.posts.is_empty()).map(|w| of_wall(ground, w)).collect()
}

#[derive(Default)]
struct Areas {
    dug: f64,
    put_back: f64,
    in_fill: f64,
}

fn of_wall(ground: &Tin, wall: &WallPlan) -> BodyDug {
    let mut sum = Areas::default();
    for strip in &wall.layout.strips {
        let Some(cross) = groundhold_hold::cross(&wall.case, &wall.layout, strip.middle()) else { continue };
        let area = section(ground, wall, &cross);
        let long = strip.length().to_m();
        sum.dug += area.dug * long;
        sum.put_back += area.put_back * long;
        sum.in_fill += area.in_fill * long;
    }
    BodyDug {
        wall: wall.id.clone(),
        dug: Volume::m3(sum.dug),
        put_back: Volume::m3(sum.put_back),
        in_fill: Volume::m3(sum.in_fill),
    }
}

/// One section, column by column from the room behind the base to its toe.
fn section(ground: &Tin, wall: &WallPlan, cross: &Cross) -> Areas {
    let corners = || cross.parts.iter().flat_map(|p| p.outline.iter().map(|c| c.0.to_m()));
    let (from, to) = corners().fold((0.0_f64, 0.0_f64), |(a, b), x| (a.min(x), b.max(x)));
    let thick = wall.case.spec.system().thickness().to_m();
    let from = from.min(-thick);
    let mut sum = Areas::default();
    let n = ((to - from) / COLUMN).ceil().clamp(1.0, 400.0) as usize;
    let wide = (to - from) / n as f64;
    for i in 0..n {
        let x = from + (i as f64 + 0.5) * wide;
        let existing = ground.level_at(cross.at + cross.facing * x).map(|l| l.to_m());
        let finished = if x > 0.0 { cross.front.to_m() } else { cross.behind.to_m() };
        let old = existing.unwrap_or(finished);
        let (bottom, top) = column(&cross.parts, x).unwrap_or((finished, finished));
        // Within the wall's own thickness nothing else counts the ground; beside it, the surroundings are cut already.
        let own = -thick < x && x <= 0.0;
        let high = if own { old } else { old.min(finished) };
        sum.dug += (high - bottom).max(0.0) * wide;
        if !own {
            sum.put_back += (high - top.min(finished).max(bottom)).max(0.0) * wide;
            sum.in_fill += (top.min(finished) - bottom.max(old)).max(0.0) * wide;
        }
    }
    // The room behind the rear of the base is dug and put back.
    let x = from - ROOM.to_m() / 2.0;
    let old = ground.level_at(cross.at + cross.facing * x).map_or(cross.behind.to_m(), |l| l.to_m());
    let room = (old.min(cross.front.to_m()) - cross.bottom.to_m()).max(0.0) * ROOM.to_m();
    sum.dug += room;
    sum.put_back += room;
    sum
}

/// Lowest and highest of the wall at a distance from its line.
fn column(parts: &[SectionPart], x: f64) -> Option<(f64, f64)> {
    let mut found: Option<(f64, f64)> = None;
    for part in parts.iter().filter(|p| p.outline.len() > 2) {
        for (i, a) in part.outline.iter().enumerate() {
            let b = &part.outline[(i + 1) % part.outline.len()];
            let (xa, xb) = (a.0.to_m(), b.0.to_m());
            if (xa <= x) == (xb <= x) {
                continue;
            }
            let y = a.1.to_m() + (b.1.to_m() - a.1.to_m()) * (x - xa) / (xb - xa);
            found = Some(found.map_or((y, y), |(low, high)| (low.min(y), high.max(y))));
        }
    }
    found
}
