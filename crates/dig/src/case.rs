//! What must be known to say what moves?

use groundhold_quantity::{Area, Length, Mass, Share, Slope, Units, Volume};

use crate::{BARROW, Ease, Excavated, Factors};

/// What kind of element moves the ground.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum ElementKind {
    /// A level area.
    Pad,
    /// A ramp or path.
    Ramp,
    /// A flight of steps.
    Steps,
    /// A bank where no wall stands.
    Batter,
    /// Anything else.
    Other,
}

/// What one element moves, between the existing and the finished surface.
#[derive(Debug, Clone, PartialEq)]
pub struct Moved {
    /// Its id.
    pub element: String,
    /// Its kind.
    pub kind: ElementKind,
    /// Existing ground above the finished surface, turf and topsoil included, bank.
    pub cut: Volume,
    /// Room between existing ground and the finished surface above it.
    pub fill: Volume,
    /// Plan area over which it cuts.
    pub cut_area: Area,
    /// Plan area over which it fills.
    pub fill_area: Area,
    /// Thickness of stone and paving under the finished surface.
    pub build_up: Length,
    /// Thickness of topsoil spread back on it, under the finished surface.
    pub topsoil_back: Length,
    /// Part of the cut that lies below the top of the rock, bank.
    pub rock: Volume,
    /// Plan area on which turf is laid again.
    pub turf_back: Area,
}

/// What a wall moves besides the ground in front of it: its drainage zone and the room needed to build it.
#[derive(Debug, Clone, PartialEq)]
pub struct WallDug {
    /// The wall's id.
    pub wall: String,
    /// Part of the drainage zone (stone and soil cap) that lies in existing ground and is dug, bank.
    pub zone_in_ground: Volume,
    /// Part of the drainage zone that lies where the finished surface stands above existing ground: fill not needed.
    pub zone_in_fill: Volume,
    /// Soil cap on the zone, put back from subsoil, compacted.
    pub cap: Volume,
    /// Stone of the zone, in place; brought in.
    pub stone: Volume,
    /// Room dug behind the wall to work in and put back with the same soil, bank.
    pub working_room: Volume,
}

/// What the body of a wall moves: it stands where ground was, or where fill would have gone.
#[derive(Debug, Clone, PartialEq)]
pub struct BodyDug {
    /// The wall's id.
    pub wall: String,
    /// Dug for the body and for the room behind and before it, beyond what its surroundings are cut anyway, bank.
    pub dug: Volume,
    /// Put back over and beside it, compacted.
    pub put_back: Volume,
    /// Part of the body that stands where its surroundings are filled: fill not needed.
    pub in_fill: Volume,
}

/// A trench for a pipe.
#[derive(Debug, Clone, PartialEq)]
pub struct Trench {
    /// What it is for: `outlet pipe of W1`.
    pub what: String,
    /// Greatest depth.
    pub deepest: Length,
    /// Dug, bank.
    pub dug: Volume,
    /// Put back with the soil dug, compacted.
    pub put_back: Volume,
    /// Stone brought for it, in place.
    pub stone: Volume,
}

/// What carries the soil away.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Vehicle {
    /// What it may carry.
    pub payload: Mass,
    /// What fits in it, loose.
    pub volume: Volume,
}

impl Default for Vehicle {
    /// A skip of 8 yd³ (6.1 m³) that a lorry takes away with 8 t: common practice, no source; to be replaced by the
    /// job's.
    fn default() -> Vehicle {
        Vehicle { payload: Mass::t(8.0), volume: Volume::m3(6.1) }
    }
}

/// What fill is brought in if the site has too little.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Import {
    /// Nobody has said.
    #[default]
    Unstated,
    /// Topsoil for everything.
    Topsoil,
    /// Soil offered free from another site.
    Free,
    /// Quarried or certified clean fill.
    Clean,
}

/// A face that is dug and stands open until it is held.
#[derive(Debug, Clone, PartialEq)]
pub struct OpenCut {
    /// The element.
    pub element: String,
    /// The place on it: `chainage 4.20 m`.
    pub on: String,
    /// Height of the face.
    pub depth: Length,
}

/// Height of an open face from which a region's rule asks for support or a licensed person.
#[derive(Debug, Clone, PartialEq)]
pub struct UnsupportedTrigger {
    /// The height.
    pub most: Length,
    /// Who says so, with date.
    pub source: String,
}

/// Where soil may be heaped.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeapSpace {
    /// Area at hand; `None` where nobody has said.
    pub area: Option<Area>,
    /// Distance of the heap's toe from the nearest crest of a cut or wall; `None` where nobody has said.
    pub from_crest: Option<Length>,
    /// Height it may have.
    pub height_most: Length,
    /// Slope at which its sides stand, rise over run.
    pub side: Slope,
}

impl Default for HeapSpace {
    /// 1.5 m high with sides of 1 in 1.5: common practice, no source.
    fn default() -> HeapSpace {
        HeapSpace { area: None, from_crest: None, height_most: Length::m(1.5), side: Slope::one_in(1.5) }
    }
}

/// Everything that is dug, put back and brought on one job.
#[derive(Debug, Clone, PartialEq)]
pub struct DigCase {
    /// What each element moves.
    pub moved: Vec<Moved>,
    /// What the walls move besides.
    pub walls: Vec<WallDug>,
    /// What the bodies of walls move, where they are thick enough to count.
    pub bodies: Vec<BodyDug>,
    /// Spoil of post holes by wall, bank.
    pub holes: Vec<(String, Volume)>,
    /// Pipe trenches.
    pub trenches: Vec<Trench>,
    /// Thickness of turf.
    pub turf: Length,
    /// Thickness of topsoil under the turf.
    pub topsoil: Length,
    /// Area stripped beyond the elements themselves, for heaps and for working.
    pub stripped_besides: Area,
    /// Area of turf that is laid again.
    pub turf_back: Area,
    /// Area, beyond the elements, on which topsoil goes back as thick as it was.
    pub topsoil_back: Area,
    /// Bulking, compaction and density of the subsoil.
    pub soil: Factors,
    /// Moisture as found, mass of water over mass of dry soil; `None`: as the table of densities has it.
    pub moisture: Option<Share>,
    /// True when the subsoil may serve as fill (not soft, not organic).
    pub fit_for_fill: bool,
    /// True when the ground was filled or built on before.
    pub made_ground: bool,
    /// How hard it is to dig by hand.
    pub ease: Ease,
    /// How far a barrow is pushed.
    pub carry: Length,
    /// What a barrow holds.
    pub barrow: Volume,
    /// What takes the spoil away.
    pub vehicle: Vehicle,
    /// What is brought in where the site has too little.
    pub import: Import,
    /// Faces that stand open.
    pub open_cuts: Vec<OpenCut>,
    /// How the faces behind walls are dug.
    pub excavated: Vec<Excavated>,
    /// From which height a face is not left open; `None` where the region's rule is not known.
    pub unsupported: Option<UnsupportedTrigger>,
    /// Where soil may be heaped.
    pub heap: HeapSpace,
    /// In which units its sentences speak.
    pub units: Units,
}

impl DigCase {
    /// Nothing moved yet in this soil; the rest as is common.
    pub fn new(soil: Factors) -> DigCase {
        DigCase {
            moved: vec![],
            walls: vec![],
            bodies: vec![],
            holes: vec![],
            trenches: vec![],
            turf: Length::ZERO,
            topsoil: Length::ZERO,
            stripped_besides: Area::ZERO,
            turf_back: Area::ZERO,
            topsoil_back: Area::ZERO,
            soil,
            moisture: None,
            fit_for_fill: true,
            made_ground: false,
            ease: Ease::Firm,
            carry: Length::m(20.0),
            barrow: BARROW,
            vehicle: Vehicle::default(),
            import: Import::Unstated,
            open_cuts: vec![],
            excavated: vec![],
            unsupported: None,
            heap: HeapSpace::default(),
            units: Units::Metric,
        }
    }
}
