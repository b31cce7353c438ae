//! What does the person want of the ground? Pads, walls, flights, ramps and batters as wished, before they meet it.

use groundhold_quantity::{Angle, Length, Level, Point, Slope, Units, Vector};

use crate::Bend;

/// Everything that is wished for. Where two elements of one kind overlap, the earlier one keeps the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Wish {
    /// Level or gently falling areas.
    pub pads: Vec<PadWish>,
    /// Walls.
    pub walls: Vec<WallWish>,
    /// Flights of steps.
    pub flights: Vec<FlightWish>,
    /// Ramps.
    pub ramps: Vec<RampWish>,
    /// Slopes of the ground where no wall stands.
    pub batter: Batter,
    /// What the region allows.
    pub limits: Limits,
    /// Units in which findings speak.
    pub units: Units,
}

/// A pad, a lawn or a bed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PadWish {
    /// Its spoken id, `P1`.
    pub id: String,
    /// Its corners in plan, either way round.
    pub corners: Vec<Point>,
    /// Where its outline is curved or its corners are rounded.
    pub bends: Vec<Bend>,
    /// Finished level at the centroid of the corners' outline.
    pub level: Level,
    /// Fall and the direction in which it goes down; level without.
    pub fall: Option<(Slope, Vector)>,
    /// Width of the strip round it in the same plane.
    pub apron: Length,
    /// Thickness of what is laid between the formation and the finished level.
    pub build_up: Length,
    /// Batters from its edge, where they differ from those of the whole job.
    pub batter: Option<Batter>,
}

/// A wall.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WallWish {
    /// Its spoken id, `W1`.
    pub id: String,
    /// Its centre line in plan, at the foot of its face.
    pub line: Vec<Point>,
    /// Where its line is curved or its corners are rounded.
    pub bends: Vec<Bend>,
    /// In place of a line of its own: that of another wall, moved.
    pub beside: Option<Beside>,
    /// What happens at the first point.
    pub start: End,
    /// What happens at the last point.
    pub end: End,
    /// On which side the higher ground lies, looking along the line.
    pub retains: Side,
    /// Distance between its back and its front face.
    pub thickness: Length,
    /// How far its face goes back for each unit that it rises; nothing for an upright one.
    pub lean: Slope,
    /// Stretches in which thickness and lean differ.
    pub parts: Vec<WallPart>,
    /// Where its top is wanted.
    pub top: Top,
}

/// The line of another wall, moved: an upper or a lower tier.
#[derive(Debug, Clone, PartialEq)]
pub struct Beside {
    /// The other wall's id.
    pub wall: String,
    /// How far behind it, towards the ground that it holds; negative in front of it.
    pub by: Length,
}

/// A stretch of a wall that is built otherwise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallPart {
    /// From this chainage, along its line as given.
    pub from: Length,
    /// To this one.
    pub to: Length,
    /// Distance between its faces there.
    pub thickness: Length,
    /// How far its face goes back there for each unit that it rises.
    pub lean: Slope,
}

/// How a wall ends.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum End {
    /// It goes on in the direction of its last segment, or stops before, until its top meets the ground.
    #[default]
    Fade,
    /// It ends at the given point.
    At,
    /// It turns square into the ground that it holds at the given point, and goes on for this long, or until its top
    /// meets the ground where no length is given.
    Return(Option<Length>),
    /// It stops at the face of a post or pier of this breadth, whose middle is the given point.
    Post(Length),
}

/// A side of a line, looking along it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Side {
    /// To the left.
    #[default]
    Left,
    /// To the right.
    Right,
}

/// Where the top of a wall is wanted.
#[derive(Debug, Clone, PartialEq)]
pub enum Top {
    /// This far above the ground behind it, all along.
    FollowGround {
        /// Upstand above the ground behind.
        above: Length,
    },
    /// At one level.
    LevelAt(Level),
    /// This far above the plane of a pad.
    Above {
        /// The pad's id.
        pad: String,
        /// Upstand above its plane.
        by: Length,
    },
    /// Straight from one level at the first point of its line to another at the last.
    Raked {
        /// At the first point.
        from: Level,
        /// At the last point.
        to: Level,
    },
    /// Level in stretches, each whole steps above the lowest, never lower than this far above the ground behind.
    Stepped {
        /// Least upstand above the ground behind.
        above: Length,
        /// Height of a step.
        by: Length,
        /// No step stands out of its neighbours for less than this along the wall.
        least: Length,
    },
    /// Straight between these levels, by chainage along its line as given. Two at one chainage are a step.
    Line(Vec<(Length, Level)>),
}

impl Default for Top {
    fn default() -> Top {
        Top::FollowGround { above: Length::ZERO }
    }
}

/// A flight of steps from the ground below up to a pad.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FlightWish {
    /// Its spoken id, `S1`.
    pub id: String,
    /// A point somewhere on the ground below; the flight finds its own foot.
    pub bottom: Point,
    /// The pad's id.
    pub toward: String,
    /// Clear width.
    pub width: Length,
    /// Going of each tread; chosen within the limits without.
    pub going: Option<Length>,
    /// Middles of the square landings on which it turns, from the pad down; none for a straight flight.
    pub turns: Vec<Point>,
}

/// A ramp or sloping path from the ground below up to a pad (or from above down to it).
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RampWish {
    /// Its spoken id, `R1`.
    pub id: String,
    /// Its centre line; the first point stands on the existing ground, the last on the pad's edge.
    pub path: Vec<Point>,
    /// Where its path is curved or its corners are rounded.
    pub bends: Vec<Bend>,
    /// The pad's id.
    pub toward: String,
    /// Width.
    pub width: Length,
    /// The steepest gradient wished for.
    pub steepest: Slope,
    /// Fall across it, and the side to which it goes down; level across without.
    pub crossfall: Option<(Slope, Side)>,
    /// Level landings on the way; none without.
    pub landings: Option<Landings>,
    /// Thickness of what is laid between the formation and the finished level.
    pub build_up: Length,
    /// Outline within which it may be led to and fro where it is too steep; anywhere without.
    pub within: Vec<Point>,
}

/// Level landings on a ramp.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Landings {
    /// One at least after each rise of this much.
    pub every: Length,
    /// Length of each.
    pub length: Length,
}

/// Slopes of batters, rise over run, both positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Batter {
    /// Where ground is cut away.
    pub cut: Slope,
    /// Where ground is filled.
    pub fill: Slope,
    /// Benches that break a high batter; none without.
    pub bench: Option<Bench>,
}

/// Level steps in a batter, on which water and stones are caught.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bench {
    /// Height of the batter between two benches.
    pub every: Length,
    /// Width of a bench.
    pub width: Length,
    /// Its fall away from the batter above it.
    pub fall: Slope,
}

impl Default for Batter {
    /// 1:2 both (common practice, no source).
    fn default() -> Batter {
        Batter { cut: Slope::ratio(0.5), fill: Slope::ratio(0.5), bench: None }
    }
}

/// What the region allows; comes in as data.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// For steps.
    pub steps: StepLimits,
    /// For ramps.
    pub ramp: RampLimits,
    /// From which drop a guard is asked for, where known.
    pub guard: Option<GuardTrigger>,
}

/// Limits for steps, each (least, most).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StepLimits {
    /// Height of a riser.
    pub riser: (Length, Length),
    /// Going of a tread.
    pub going: (Length, Length),
    /// Twice the riser and the going.
    pub two_r_plus_g: (Length, Length),
    /// Steepest pitch.
    pub pitch_most: Angle,
    /// Who says so.
    pub source: &'static str,
}

impl StepLimits {
    /// Comfortable steps outdoors.
    ///
    /// Riser 120–170 mm, going 300–450 mm, 2R+G 600–660 mm (check table GE-T1, from memory, common practice). The
    /// pitch follows from the steepest pair, 170 over 300.
    pub const OUTDOOR_COMFORT: StepLimits = StepLimits {
        riser: (Length::mm(120.0), Length::mm(170.0)),
        going: (Length::mm(300.0), Length::mm(450.0)),
        two_r_plus_g: (Length::mm(600.0), Length::mm(660.0)),
        pitch_most: Angle::deg(29.6),
        source: "comfort rule for steps outdoors, common practice, from memory",
    };
}

/// Limits for ramps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RampLimits {
    /// Steepest gradient that the region allows for a ramp of this use.
    pub steepest: Slope,
    /// Who says so.
    pub source: &'static str,
}

/// The drop from which a guard or rail is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GuardTrigger {
    /// The drop.
    pub drop: Length,
    /// Who says so.
    pub source: &'static str,
}
