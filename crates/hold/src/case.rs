//! What is known about one wall before it is designed: the ground along it, the soils, the loads, what is already built?

use groundhold_earth::{Basis, Soil};
use groundhold_quantity::{Length, Level, Point, Pressure, Share, Slope, Units, Vector};

use crate::{LoadCase, Spec};

/// The ground and the wanted top at one chainage of the wall line.
#[derive(Debug, Clone, PartialEq)]
pub struct Station {
    /// Along the wall line from its start.
    pub chainage: Length,
    /// On the wall line in plan. The wall line is the plane in which the faces of posts and boards touch.
    pub at: Point,
    /// Finished ground on the retained side, at the wall.
    pub behind: Level,
    /// Finished ground on the open side, at the wall.
    pub front: Level,
    /// Ground behind, positive where it rises away from the wall.
    pub slope_behind: Slope,
    /// Ground in front, positive where it falls away from the wall.
    pub slope_front: Slope,
    /// The least level the top of the wall should have.
    pub wanted_top: Level,
    /// Direction from the retained side to the open side, square to the line. Any length but zero.
    pub facing: Vector,
}

/// A load spread over the ground behind the wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Load {
    /// How much.
    pub value: Pressure,
    /// Near edge, measured back from the wall line.
    pub from: Length,
    /// Far edge; infinite when it has none.
    pub to: Length,
    /// Always there (a shed, a heap kept) or coming and going (people, a vehicle).
    pub permanent: bool,
    /// What it is, for the words of a finding: `tool shed`.
    pub what: String,
}

/// A fence or screen that stands on the wall's own posts.
#[derive(Debug, Clone, PartialEq)]
pub struct Fence {
    /// Above the top of the wall.
    pub height: Length,
    /// Wind pressure on a solid surface, from a wind code or the region.
    pub wind: Pressure,
    /// Share of the face that is solid.
    pub solidity: Share,
    /// Where the wind pressure comes from.
    pub source: String,
}

/// On which side a neighbour lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Behind, on the retained side: an upper wall, a house, a road.
    Behind,
    /// In front, on the open side: a lower wall, a cut, a trench.
    InFront,
}

/// What stands or is cut near the wall.
#[derive(Debug, Clone, PartialEq)]
pub enum NeighbourKind {
    /// A wall that retains this height of ground.
    Wall {
        /// Its retained height.
        retained: Length,
    },
    /// A cut or trench to this depth below the ground at its edge.
    Cut {
        /// Its depth.
        depth: Length,
    },
    /// A footing with its underside this far below the ground beside it, and its bearing pressure if known.
    Footing {
        /// Underside below ground.
        depth: Length,
        /// Pressure under it.
        pressure: Option<Pressure>,
    },
}

/// Something near enough to matter.
#[derive(Debug, Clone, PartialEq)]
pub struct Neighbour {
    /// Its id or its name: `W1`, `garage`.
    pub what: String,
    /// On which side.
    pub side: Side,
    /// Clear distance from this wall's line, at its nearest.
    pub distance: Length,
    /// The chainage where it is nearest.
    pub chainage: Length,
    /// What kind.
    pub kind: NeighbourKind,
}

/// Water behind the wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Water {
    /// A drain is planned behind the wall; without one the water case is an ordinary one and not an accident.
    pub drained: bool,
    /// How high water stands behind the wall when the drain is blocked, as a share of the retained height.
    pub blocked: Share,
}

impl Water {
    /// A drain is planned; blocked, the water stands to the ground behind.
    pub const DRAINED: Water = Water { drained: true, blocked: Share::fraction(1.0) };
    /// No drain is planned; the water stands to the ground behind.
    pub const UNDRAINED: Water = Water { drained: false, blocked: Share::fraction(1.0) };
}

/// A post that already stands in the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct FixedPost {
    /// Where it stands along the wall line.
    pub chainage: Length,
    /// Its underside below the ground in front.
    pub depth: Length,
    /// The hole it was set in.
    pub hole_diameter: Length,
    /// Where its top is, where that was written down.
    pub top: Option<Level>,
    /// Its cut length, where that was written down.
    pub length: Option<Length>,
}

/// A hole that cannot be dug deeper: rock, a pipe, an old footing.
#[derive(Debug, Clone, PartialEq)]
pub struct Refusal {
    /// Where along the wall line.
    pub chainage: Length,
    /// How far below the ground in front the tool went.
    pub depth: Length,
    /// What stopped it: `rock`.
    pub what: String,
}

/// A post that is not like the others by decision: a wider or deeper hole, a post more, or a post left out. A post that is
/// moved is one left out and one more beside it; changes are made in their order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PostChange {
    /// Where along the wall line; the nearest post within 0.30 m is meant, or a new one is put here.
    pub chainage: Length,
    /// Its hole's diameter, where it differs.
    pub hole_diameter: Option<Length>,
    /// Its embedment, where it differs.
    pub depth: Option<Length>,
    /// True to put a post here that the layout would not.
    pub extra: bool,
    /// True to leave out the post that the layout would put here. Ends, corners and posts that stand stay.
    pub left_out: bool,
}

impl PostChange {
    /// A post more.
    pub fn more(chainage: Length) -> PostChange {
        PostChange { chainage, extra: true, ..PostChange::default() }
    }
    /// A hole of another diameter.
    pub fn wider(chainage: Length, diameter: Length) -> PostChange {
        PostChange { chainage, hole_diameter: Some(diameter), ..PostChange::default() }
    }
    /// A post left out.
    pub fn without(chainage: Length) -> PostChange {
        PostChange { chainage, left_out: true, ..PostChange::default() }
    }
}

/// The ground in a section square through the wall, for the slip of the whole bank.
#[derive(Debug, Clone, PartialEq)]
pub struct Bank {
    /// Where along the wall line.
    pub chainage: Length,
    /// Finished ground: `x` is metres from the wall line, positive on the open side, rising along the list; `y` is the
    /// level. The wall's face is two points with the same `x`. It should reach three wall heights to either side.
    pub ground: Vec<Point>,
}

/// One wall and all that is known about it.
#[derive(Debug, Clone, PartialEq)]
pub struct WallCase {
    /// As people say it: `W1`.
    pub id: String,
    /// At least two, in order of chainage. The first is the wall's start and the last its end.
    pub stations: Vec<Station>,
    /// Chainages at which the line turns. Each needs a station there.
    pub corners: Vec<Length>,
    /// The wall system and its sizes.
    pub spec: Spec,
    /// The soil the wall holds back.
    pub retained_soil: Soil,
    /// The soil its posts stand in.
    pub founding_soil: Soil,
    /// Loads on the ground behind.
    pub loads: Vec<Load>,
    /// A fence on the posts.
    pub fence: Option<Fence>,
    /// What is near.
    pub neighbours: Vec<Neighbour>,
    /// The ground through its highest place, where it is known; else it is drawn from the stations' slopes.
    pub bank: Option<Bank>,
    /// Water.
    pub water: Water,
    /// Situations that must be met besides every day, wind and, without a drain, water; the others are shown beside.
    pub must_meet: Vec<LoadCase>,
    /// How hard the ground shakes sideways, as a steady share of gravity; `None` where nobody has said.
    pub shaking: Option<Share>,
    /// How margins are judged.
    pub basis: &'static Basis,
    /// False leaves the slip of the bank out, while a finger drags: its search costs more than all the rest.
    pub search_slip: bool,
    /// Posts that already stand.
    pub built: Vec<FixedPost>,
    /// Holes that were refused.
    pub refusals: Vec<Refusal>,
    /// Posts that differ by decision.
    pub changes: Vec<PostChange>,
    /// In which units its sentences speak.
    pub units: Units,
}

/// A wall that cannot be laid out, and what would be needed.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CaseError {
    /// Fewer than two stations.
    #[error("{wall}: the wall line has {found} station(s), expected at least 2")]
    TooFewStations {
        /// The wall.
        wall: String,
        /// How many there are.
        found: usize,
    },
    /// Chainages do not rise.
    #[error("{wall}: station {number} is at chainage {at}, expected more than {before}, the one before it")]
    ChainageNotRising {
        /// The wall.
        wall: String,
        /// Counted from 1.
        number: usize,
        /// Its chainage.
        at: String,
        /// The chainage before.
        before: String,
    },
    /// A corner without a station.
    #[error("{wall}: the corner at chainage {at} has no station, expected one there")]
    CornerWithoutStation {
        /// The wall.
        wall: String,
        /// Where.
        at: String,
    },
    /// A soil whose figures cannot be.
    #[error("{wall}: {why}")]
    Soil {
        /// The wall.
        wall: String,
        /// Which figure, and what it may be.
        why: String,
    },
    /// A value outside what can be built or computed.
    #[error("{wall}: {what} is {found}, expected {expected}")]
    Value {
        /// The wall.
        wall: String,
        /// Which value.
        what: String,
        /// What was given.
        found: String,
        /// What was expected.
        expected: String,
    },
}
