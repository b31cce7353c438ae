//! From the finished surface to what `dig` counts: cut and fill of each element, and the pad level that balances.

use groundhold_dig as dig;
use groundhold_quantity::{Area, Length, Level, Volume};
use groundhold_shape::{GroundKind, Shaped};
use groundhold_surface::{CutFill, Tin, cut_and_fill_each};

use crate::job::{Job, PadWish};

/// Cut and fill of one element, as it came from the surfaces.
#[derive(Debug, Clone, PartialEq)]
pub struct Moves {
    /// The element.
    pub element: String,
    /// What kind of ground it is.
    pub kind: GroundKind,
    /// Between existing and finished ground.
    pub volumes: CutFill,
}

/// Cut and fill of every element and kind, in the order in which they first appear.
pub(crate) fn moves(ground: &Tin, shaped: &Shaped) -> Vec<Moves> {
    let each = cut_and_fill_each(ground, &shaped.facets());
    let mut all: Vec<Moves> = vec![];
    for (piece, v) in shaped.grounds.iter().zip(each) {
        match all.iter_mut().find(|m| m.element == piece.of && m.kind == piece.kind) {
            Some(m) => {
                m.volumes.cut += v.cut;
                m.volumes.fill += v.fill;
                m.volumes.cut_area += v.cut_area;
                m.volumes.fill_area += v.fill_area;
                m.volumes.uncovered += v.uncovered;
            }
            None => all.push(Moves { element: piece.of.clone(), kind: piece.kind, volumes: v }),
        }
    }
    all
}

fn kind(k: GroundKind) -> dig::ElementKind {
    match k {
        GroundKind::Pad => dig::ElementKind::Pad,
        GroundKind::Ramp => dig::ElementKind::Ramp,
        GroundKind::Tread => dig::ElementKind::Steps,
        GroundKind::Batter => dig::ElementKind::Batter,
    }
}

/// Stone under treads and ramps where the job says nothing else. Common practice, no source.
pub const TREAD_BUILD_UP: Length = Length::mm(150.0);
/// Stone under a ramp. Common practice, no source.
pub const RAMP_BUILD_UP: Length = Length::mm(100.0);

/// Thickness of stone and paving under an element.
pub(crate) fn build_up(job: &Job, m: &Moves) -> Length {
    match m.kind {
        GroundKind::Pad => job.pads.iter().find(|p| p.id == m.element).map_or(Length::ZERO, |p| p.build_up),
        GroundKind::Tread => TREAD_BUILD_UP,
        GroundKind::Ramp => RAMP_BUILD_UP,
        GroundKind::Batter => Length::ZERO,
    }
}

/// What the elements move, for the account. Batters get their topsoil back.
pub(crate) fn moved(job: &Job, moves: &[Moves], rock: &[Volume]) -> Vec<dig::Moved> {
    moves
        .iter()
        .enumerate()
        .map(|(i, m)| dig::Moved {
            element: m.element.clone(),
            kind: kind(m.kind),
            cut: m.volumes.cut,
            fill: m.volumes.fill,
            cut_area: m.volumes.cut_area,
            fill_area: m.volumes.fill_area,
            build_up: build_up(job, m),
            topsoil_back: if m.kind == GroundKind::Batter { job.ground.topsoil } else { Length::ZERO },
            rock: rock.get(i).copied().unwrap_or(Volume::ZERO),
            turf_back: if m.kind == GroundKind::Batter { m.volumes.cut_area + m.volumes.fill_area } else { Area::ZERO },
        })
        .collect()
}

/// A case with what is the same at every pad level: thicknesses, soil, vehicle.
pub(crate) fn base_case(job: &Job, soil: dig::Factors) -> dig::DigCase {
    let mut case = dig::DigCase::new(soil);
    case.turf = job.ground.turf;
    case.topsoil = job.ground.topsoil;
    case.moisture = job.ground.moisture;
    case.units = job.about.units;
    case.vehicle = dig::Vehicle { payload: job.order.payload, volume: job.order.load_volume };
    case
}

/// How far above and below the ground under a pad its balance is looked for.
const LOOK: Length = Length::m(3.0);

/// The level at which the subsoil of a pad and its batters neither runs over nor short; the mean ground where there is none.
pub(crate) fn balanced_level(
    job: &Job,
    ground: &Tin,
    pad: &PadWish,
    soil: dig::Factors,
    shape_at: &dyn Fn(Level) -> Shaped,
) -> (Level, Option<dig::Balanced>) {
    let mean = mean_level(ground, pad);
    let over = |level: Level| -> Result<Volume, ()> {
        let moves = moves(ground, &shape_at(level));
        let mut case = base_case(job, soil);
        case.moved = moved(job, &moves, &[]);
        Ok(dig::subsoil_over(&case))
    };
    let (lowest, highest) = pad.between.unwrap_or((mean - LOOK, mean + LOOK));
    match dig::balance(over, lowest, highest) {
        Ok(b) => (b.level, Some(b)),
        Err(_) => (mean.max(lowest).min(highest), None),
    }
}

/// The level between a pad's limits at which soil that is carted away, fill that is brought and digging by hand cost least,
/// by the job's price list; the mean ground where no cost can be worked out. What has no price counts as one unit of money a
/// cubic metre, so that without prices the least soil is moved. Batters and walls are not priced here.
pub(crate) fn cheapest_level(
    job: &Job,
    ground: &Tin,
    pad: &PadWish,
    soil: dig::Factors,
    shape_at: &dyn Fn(Level) -> Shaped,
) -> Level {
    let mean = mean_level(ground, pad);
    let (lowest, highest) = pad.between.unwrap_or((mean - LOOK, mean + LOOK));
    let price =
        |item: &str, none: f64| job.order.prices.iter().find(|p| p.item == item).map_or(none, |p| p.price.amount());
    let load = price("spoil away", job.order.load_volume.to_m3());
    let hour = price("labour", 0.0);
    let cost = |level: Level| {
        let mut case = base_case(job, soil);
        case.moved = moved(job, &moves(ground, &shape_at(level)), &[]);
        let dug = dig::dig(&case);
        let loads: f64 = dug.streams().iter().filter_map(|s| s.loads.as_ref()).map(|l| l.exact).sum();
        let brought: f64 = dug
            .bring
            .iter()
            .filter(|b| b.what == "fill" || b.what == "topsoil")
            .map(|b| b.loose.to_m3() * price(&b.what, 1.0))
            .sum();
        let (few, many) = dug.person_days();
        let by_hand = 0.5 * (few + many) * job.order.hours_per_day.to_h() * hour;
        Some(loads * load + brought + by_hand)
    };
    dig::cheapest(cost, lowest, highest).map_or(mean, |(level, _, _)| level)
}

/// Mean of the ground at the corners and the middle of a pad.
pub(crate) fn mean_level(ground: &Tin, pad: &PadWish) -> Level {
    let levels: Vec<f64> = pad.corners.iter().filter_map(|c| ground.level_at(*c)).map(Level::to_m).collect();
    if levels.is_empty() {
        let (lo, hi) = crate::survey::range(ground);
        return lo + (hi - lo) / 2.0;
    }
    Level::m(levels.iter().sum::<f64>() / levels.len() as f64)
}

/// Everything the elements cut and fill together.
pub(crate) fn sum(moves: &[Moves]) -> (Volume, Volume, Area) {
    moves.iter().fold((Volume::ZERO, Volume::ZERO, Area::ZERO), |(c, f, a), m| {
        (c + m.volumes.cut, f + m.volumes.fill, a + m.volumes.cut_area + m.volumes.fill_area)
    })
}
