//! Which gives way first under a growing push, the soil or the post? And what of soil whose strength is factored?

use groundhold_quantity::{Angle, Force, Length, Moment, math};
use groundhold_working::{Result, Trace};

use super::{
    case::{Case, Ground, Method},
    judge::{post_yields, resistance},
};

/// What gives way first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GivesWay {
    /// A short post: the soil fails beside it.
    Soil,
    /// A long post: it yields before the soil has failed along it.
    Post,
}

/// Push that a post of this depth and strength takes.
#[derive(Debug, Clone, PartialEq)]
pub struct PostCapacity {
    /// The lesser of soil and post.
    pub force: Force,
    /// Which it is.
    pub by: GivesWay,
    /// Its working.
    pub trace: Trace,
}

/// Push that a post takes, short or long, after Broms (soil with cohesion and friction: Brinch Hansen's pressures).
///
/// # Errors
/// Where a value is out of range, or the method does not fit the case.
pub fn short_or_long(case: &Case, method: Method, depth: Length, yield_moment: Moment) -> Result<PostCapacity> {
    let soil = resistance(case, method, depth)?;
    let post = post_yields(case, yield_moment)?;
    Ok(if post.force < soil.force {
        PostCapacity { force: post.force, by: GivesWay::Post, trace: post.trace }
    } else {
        PostCapacity { force: soil.force, by: GivesWay::Soil, trace: soil.trace }
    })
}

/// Partial factors on the strength of the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GroundFactors {
    /// Divides tan φ'.
    pub tan_phi: f64,
    /// Divides c'.
    pub cohesion: f64,
    /// Divides c_u.
    pub undrained: f64,
    /// Divides the resistance of the earth in front.
    pub resistance: f64,
}

impl GroundFactors {
    /// EN 1997-1:2004, Table A.4 set M1 and A.13 set R1 or R3: strength and resistance as they are (DA1 combination 1).
    pub const M1_R1: GroundFactors = GroundFactors { tan_phi: 1.0, cohesion: 1.0, undrained: 1.0, resistance: 1.0 };
    /// EN 1997-1:2004, Table A.4 set M2 with R1 or R3 (DA1 combination 2, DA3).
    pub const M2_R1: GroundFactors = GroundFactors { tan_phi: 1.25, cohesion: 1.25, undrained: 1.4, resistance: 1.0 };
    /// EN 1997-1:2004, Table A.4 set M1 with Table A.13 set R2, earth resistance 1.4 (DA2).
    pub const M1_R2: GroundFactors = GroundFactors { tan_phi: 1.0, cohesion: 1.0, undrained: 1.0, resistance: 1.4 };
}

impl Case {
    /// The same post in ground whose strength is divided by these factors, asked for what then remains: `factor` becomes the
    /// one on the earth's resistance. Put in a push that is factored by the same design approach.
    pub fn factored(&self, by: &GroundFactors) -> Case {
        let less = |phi: Angle| Angle::rad(math::atan(math::tan(phi.to_rad()) / by.tan_phi));
        let ground = match self.ground {
            Ground::Sand { phi, unit_weight } => Ground::Sand { phi: less(phi), unit_weight },
            Ground::Clay { strength, unit_weight } => Ground::Clay { strength: strength / by.undrained, unit_weight },
            Ground::Mixed { phi, cohesion, unit_weight } => {
                Ground::Mixed { phi: less(phi), cohesion: cohesion / by.cohesion, unit_weight }
            }
        };
        Case { ground, factor: by.resistance, ..*self }
    }
}
