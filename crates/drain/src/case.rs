//! What must be known to drain the walls?

use groundhold_quantity::{Length, Level, Point, Slope, Units, Vector};
use groundhold_surface::Tin;

use crate::{Grading, PipeMaterial, Rain, Runoff, SoakawayWish, SwaleWish};

/// A place along a wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// Along the wall from its start.
    pub chainage: Length,
    /// In plan, on the wall's line.
    pub at: Point,
    /// Finished ground behind.
    pub behind: Level,
    /// Finished ground in front.
    pub front: Level,
    /// Underside of the lowest board.
    pub base: Level,
    /// Unit vector towards the front.
    pub facing: Vector,
}

/// A wall as the drain sees it: stations in order of chainage. Two at one chainage are a step.
#[derive(Debug, Clone, PartialEq)]
pub struct WallLine {
    /// The wall's id.
    pub id: String,
    /// Its stations, at least two.
    pub stations: Vec<Station>,
}

impl WallLine {
    /// Greatest height of ground behind over ground in front.
    pub fn retained_most(&self) -> Length {
        self.stations.iter().map(|s| s.behind - s.front).fold(Length::ZERO, Length::max)
    }
    /// From the first station to the last.
    pub fn length(&self) -> Length {
        match (self.stations.first(), self.stations.last()) {
            (Some(a), Some(b)) => b.chainage - a.chainage,
            _ => Length::ZERO,
        }
    }
}

/// Where the pipe ends in the open.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outlet {
    /// In plan.
    pub at: Point,
    /// Invert: inside bottom of the pipe's open end.
    pub level: Level,
}

/// What the pipe should be.
#[derive(Debug, Clone, PartialEq)]
pub struct PipeWish {
    /// Its material, which gives the roughness.
    pub material: PipeMaterial,
    /// Inside diameters to be had.
    pub catalogue: Vec<Length>,
    /// The diameter, where the job says it; otherwise the smallest that does.
    pub diameter: Option<Length>,
    /// Fall that is wished for.
    pub fall: Slope,
    /// Fall below which a pipe silts up and is not laid.
    pub fall_least: Slope,
    /// How far the invert stays below the underside of the lowest board, at least.
    pub below_base: Length,
}

impl Default for PipeWish {
    /// Slotted corrugated plastic, 65 to 160 mm, 1:100 wished and 1:150 at least, invert no higher than the lowest
    /// board's underside. Common practice, no source.
    fn default() -> PipeWish {
        PipeWish {
            material: PipeMaterial::CorrugatedPlastic,
            catalogue: [65.0, 80.0, 100.0, 110.0, 160.0].map(Length::mm).to_vec(),
            diameter: None,
            fall: Slope::one_in(100.0),
            fall_least: Slope::one_in(150.0),
            below_base: Length::ZERO,
        }
    }
}

/// Bed of the pipe, in the zone and in the trench to the outlet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bed {
    /// Stone under the pipe.
    pub under: Length,
    /// Stone over its crown, in the trench to the outlet.
    pub over: Length,
    /// Width of that trench.
    pub trench: Length,
}

impl Default for Bed {
    /// 50 mm under, 100 mm over, 300 mm wide: common practice, no source.
    fn default() -> Bed {
        Bed { under: Length::mm(50.0), over: Length::mm(100.0), trench: Length::mm(300.0) }
    }
}

/// The stone behind the wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ZoneWish {
    /// Width; `None`: 300 mm, or 200 mm behind a wall that retains less than 600 mm.
    pub width: Option<Length>,
    /// From the finished ground behind down to the stone: the soil cap.
    pub cap: Length,
    /// Overlap of the fabric.
    pub lap: Length,
    /// Width of a roll of fabric.
    pub roll: Length,
}

impl Default for ZoneWish {
    /// Cap of 150 mm, laps of 300 mm (12 in), rolls of 2 m. Common practice, no source.
    fn default() -> ZoneWish {
        ZoneWish { width: None, cap: Length::mm(150.0), lap: Length::mm(300.0), roll: Length::m(2.0) }
    }
}

/// Weep holes through a solid wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeepWish {
    /// Diameter of a hole.
    pub diameter: Length,
    /// Distance between holes.
    pub spacing: Length,
    /// Middle of the holes above the ground in front.
    pub above: Length,
}

impl Default for WeepWish {
    /// 75 mm every 1.5 m, 150 mm above the ground in front. Common practice, no source.
    fn default() -> WeepWish {
        WeepWish { diameter: Length::mm(75.0), spacing: Length::m(1.5), above: Length::mm(150.0) }
    }
}

/// Everything that decides where the water goes.
#[derive(Debug, Clone)]
pub struct DrainCase<'a> {
    /// Existing ground.
    pub ground: &'a Tin,
    /// The walls.
    pub walls: Vec<WallLine>,
    /// False where the drain is left out on purpose.
    pub wanted: bool,
    /// Design rain.
    pub rain: Option<Rain>,
    /// What the ground above the walls is covered with.
    pub runoff: Runoff,
    /// How far the ground goes on rising beyond the survey; `None` where nobody has looked.
    pub uphill: Option<Length>,
    /// Water seen in the ground, below the surface; `None` where none was seen.
    pub groundwater: Option<Length>,
    /// Outlets; each pipe goes to the one it reaches by the shortest way, or joins another pipe.
    pub outlets: Vec<Outlet>,
    /// A soakaway, which is an outlet too.
    pub soakaway: Option<SoakawayWish>,
    /// Swales above walls.
    pub swales: Vec<SwaleWish>,
    /// Weep holes through the walls, where they are wished for.
    pub weeps: Option<WeepWish>,
    /// Buildings and footings of others: what they are and where they stand.
    pub footings: Vec<(String, Vec<Point>)>,
    /// The pipe.
    pub pipe: PipeWish,
    /// Its bed.
    pub bed: Bed,
    /// The stone behind the walls.
    pub zone: ZoneWish,
    /// Grading of the soil behind the walls; `None` where it is not known.
    pub soil: Option<Grading>,
    /// Grading of the drain stone.
    pub stone: Grading,
    /// In which units its sentences speak.
    pub units: Units,
}
