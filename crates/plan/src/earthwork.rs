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
pub(crate) fn moved(job: &Job, moves: &[Moves]) -> Vec<dig::Moved> {
    moves
        .iter()
        .map(|m| dig::Moved {
            element: m.element.clone(),
            kind: kind(m.kind),
            cut: m.volumes.cut,
            fill: m.volumes.fill,
            cut_area: m.volumes.cut_area,
            fill_area: m.volumes.fill_area,
            build_up: build_up(job, m),
            topsoil_back: if m.kind == GroundKind::Batter { job.ground.topsoil } else { Length::ZERO },
        })
        .collect()
}

/// A case with what is the same at every pad level: thicknesses, soil, vehicle.
pub(crate) fn base_case(job: &Job, soil: dig::Factors) -> dig::DigCase {
    let mut case = dig::DigCase::new(soil);
    case.turf = job.ground.turf;
    case.topsoil = job.ground.topsoil;
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
        case.moved = moved(job, &moves);
        Ok(dig::subsoil_over(&case))
    };
    match dig::balance(over, mean - LOOK, mean + LOOK) {
        Ok(b) => (b.level, Some(b)),
        Err(_) => (mean, None),
    }
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
