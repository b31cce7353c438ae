//! What does the person want of the ground? Pads, walls, flights, ramps and batters as wished, before they meet it.

use groundhold_quantity::{Angle, Length, Level, Point, Slope, Units, Vector};

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

/// A pad.
#[derive(Debug, Clone, PartialEq)]
pub struct PadWish {
    /// Its spoken id, `P1`.
    pub id: String,
    /// Its corners in plan, either way round.
    pub corners: Vec<Point>,
    /// Finished level at the centroid of the corners' outline.
    pub level: Level,
    /// Fall and the direction in which it goes down; level without.
    pub fall: Option<(Slope, Vector)>,
    /// Width of the strip round it in the same plane.
    pub apron: Length,
}

/// A wall.
#[derive(Debug, Clone, PartialEq)]
pub struct WallWish {
    /// Its spoken id, `W1`.
    pub id: String,
    /// Its centre line in plan.
    pub line: Vec<Point>,
    /// What happens at the first point.
    pub start: End,
    /// What happens at the last point.
    pub end: End,
    /// On which side the higher ground lies, looking along the line.
    pub retains: Side,
    /// Distance between its back and its front face.
    pub thickness: Length,
    /// Where its top is wanted.
    pub top: Top,
}

/// How a wall ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// It goes on in the direction of its last segment, or stops before, until its top meets the ground.
    Fade,
    /// It ends at the given point.
    At,
}

/// A side of a line, looking along it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// To the left.
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
}

/// A flight of steps from the ground below up to a pad.
#[derive(Debug, Clone, PartialEq)]
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
}

/// A ramp or sloping path from the ground below up to a pad (or from above down to it).
#[derive(Debug, Clone, PartialEq)]
pub struct RampWish {
    /// Its spoken id, `R1`.
    pub id: String,
    /// Its centre line; the first point stands on the existing ground, the last on the pad's edge.
    pub path: Vec<Point>,
    /// The pad's id.
    pub toward: String,
    /// Width.
    pub width: Length,
    /// The steepest gradient wished for.
    pub steepest: Slope,
}

/// Slopes of batters, rise over run, both positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Batter {
    /// Where ground is cut away.
    pub cut: Slope,
    /// Where ground is filled.
    pub fill: Slope,
}

impl Default for Batter {
    /// 1:2 both (common practice, no source).
    fn default() -> Batter {
        Batter { cut: Slope::ratio(0.5), fill: Slope::ratio(0.5) }
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
