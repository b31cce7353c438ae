//! How much stone, fabric and soil cap stand behind a wall?

use groundhold_quantity::{Area, Length, Level, Volume};
use groundhold_surface::Tin;

use crate::linear::{along, integral};
use crate::{Bed, Station, WallLine, ZoneWish};

/// The drainage zone at one station.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ZonePoint {
    /// Along the wall.
    pub chainage: Length,
    /// Underside of the stone.
    pub bottom: Level,
    /// Top of the stone, under the soil cap; not above which `bottom` lies where there is none.
    pub stone_top: Level,
    /// Finished ground behind: top of the cap.
    pub ground: Level,
}

/// The drainage zone behind a wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Zone {
    /// Its width.
    pub width: Length,
    /// Length of wall with stone behind it.
    pub length: Length,
    /// Greatest height of the stone.
    pub height_most: Length,
    /// Stone, the pipe taken off.
    pub stone: Volume,
    /// Soil cap on the stone, compacted.
    pub cap: Volume,
    /// Part of stone and cap that lies in existing ground, and is dug.
    pub in_ground: Volume,
    /// Part of stone and cap above existing ground: fill that is not needed.
    pub in_fill: Volume,
    /// Fabric: back, top and underside of the stone, with laps.
    pub fabric: Area,
    /// The zone station by station, for drawing.
    pub profile: Vec<ZonePoint>,
}

/// Heights that differ by less meet: a micrometre, far above rounding and far below any staff.
const HAIR: Length = Length::mm(1e-3);

/// Width of the zone: as wished, or 300 mm, or 200 mm behind a wall that retains less than 600 mm (common practice,
/// no source; 300 mm in block-wall guides).
pub(crate) fn width_of(wall: &WallLine, wish: &ZoneWish) -> Length {
    let low = wall.retained_most() + HAIR < Length::mm(600.0);
    wish.width.unwrap_or(Length::mm(if low { 200.0 } else { 300.0 }))
}

/// Works the zone out, exactly for what is straight between stations. `invert` is the pipe's line as (chainage in m,
/// level in m);
/// `None` where there is no pipe.
pub(crate) fn zone(
    wall: &WallLine,
    wish: &ZoneWish,
    bed: &Bed,
    invert: Option<(&[(f64, f64)], Length)>,
    ground: &Tin,
) -> Zone {
    let width = width_of(wall, wish);
    let bottom = |s: &Station| match invert {
        Some((line, _)) => s.base.min(Level::m(along(line, s.chainage.to_m())) - bed.under),
        None => s.base,
    };
    let profile: Vec<ZonePoint> = wall
        .stations
        .iter()
        .map(|s| {
            let b = bottom(s);
            let stone_top = b.max(s.behind - wish.cap);
            ZonePoint { chainage: s.chainage, bottom: b, stone_top, ground: s.behind }
        })
        .collect();
    let existing: Vec<f64> = wall
        .stations
        .iter()
        .map(|s| ground.level_at(s.at - s.facing * (width.to_m() / 2.0)).unwrap_or(s.behind).to_m())
        .collect();
    let mut sums = Sums::default();
    for i in 1..profile.len() {
        sums.add(&profile[i - 1], &profile[i], [existing[i - 1], existing[i]], wish.cap.to_m());
    }
    let w = width.to_m();
    let radius = invert.map_or(0.0, |(_, d)| 0.5 * d.to_m());
    let pipe = std::f64::consts::PI * radius * radius * sums.length;
    let girth = 2.0 * w + wish.lap.to_m();
    let joints = joints(&profile, wish, girth);
    Zone {
        width,
        length: Length::m(sums.length),
        height_most: profile.iter().map(|p| p.stone_top - p.bottom).fold(Length::ZERO, Length::max),
        stone: Volume::m3((sums.stone * w - pipe).max(0.0)),
        cap: Volume::m3(sums.cap * w),
        in_ground: Volume::m3(sums.in_ground * w),
        in_fill: Volume::m3(sums.in_fill * w),
        fabric: Area::m2(sums.stone + girth * sums.length + joints),
        profile,
    }
}

/// Areas of the zone seen from behind, m², and the length with stone, m.
#[derive(Default)]
struct Sums {
    stone: f64,
    cap: f64,
    in_ground: f64,
    in_fill: f64,
    length: f64,
}

impl Sums {
    fn add(&mut self, a: &ZonePoint, b: &ZonePoint, existing: [f64; 2], cap: f64) {
        let run = (b.chainage - a.chainage).to_m();
        let bottom = (a.bottom.to_m(), b.bottom.to_m());
        let ground = (a.ground.to_m(), b.ground.to_m());
        let old = (existing[0], existing[1]);
        let capped = (ground.0 - cap, ground.1 - cap);
        self.stone += integral(run, [capped, bottom], |[top, low]| (top - low).max(0.0));
        self.cap += integral(run, [ground, capped, bottom], |[top, cap, low]| (top - cap.max(low)).max(0.0));
        self.in_ground += integral(run, [ground, old, bottom], |[top, old, low]| (top.min(old) - low).max(0.0));
        self.in_fill += integral(run, [ground, old, bottom], |[top, old, low]| (top - old.max(low)).max(0.0));
        self.length += positive_run(run, capped.0 - bottom.0, capped.1 - bottom.1);
    }
}

/// Length of the stretch over which a straight line from `a` to `b` is above zero.
fn positive_run(run: f64, a: f64, b: f64) -> f64 {
    match (a > 0.0, b > 0.0) {
        (true, true) => run,
        (false, false) => 0.0,
        (true, false) => run * a / (a - b),
        (false, true) => run * b / (b - a),
    }
}

/// Fabric in the laps between one width of the roll and the next, hung across the wall, m².
fn joints(profile: &[ZonePoint], wish: &ZoneWish, girth: f64) -> f64 {
    let (Some(first), Some(last)) = (profile.first(), profile.last()) else { return 0.0 };
    let step = (wish.roll - wish.lap).to_m();
    if step < 0.1 {
        return 0.0;
    }
    let heights: Vec<(f64, f64)> =
        profile.iter().map(|p| ((p.chainage - first.chainage).to_m(), (p.stone_top - p.bottom).to_m())).collect();
    let length = (last.chainage - first.chainage).to_m();
    let mut area = 0.0;
    let mut at = step;
    while at < length {
        let height = along(&heights, at);
        if height > 0.0 {
            area += (height + girth) * wish.lap.to_m();
        }
        at += step;
    }
    area
}
