//! A hole is stopped by rock: what are the ways out, in figures?

use groundhold_quantity::{Force, Length, Moment, Pressure};
use groundhold_working::{Result, Trace};

use super::{
    case::Case,
    judge::no,
    left_out::{LEFT_OUT_POST, LeftOut, left_out},
    rock_dowels::{Dowels, ROCK_DOWELS, dowels},
    rock_socket::{ROCK_SOCKET, ROCK_SOCKET_LENGTH, RockPush, RockSocket, rock_socket, rock_socket_length},
};

/// Rock met in a hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InRock {
    /// Its top below the ground in front.
    pub depth: Length,
    /// Top of it that is not counted on.
    pub shattered: Length,
    /// Diameter of the hole drilled into it.
    pub hole: Length,
    /// Unconfined compressive strength; see [`super::ROCK`] where nobody has tested it.
    pub strength: Pressure,
    /// Share of it that the jointed mass keeps: 1/3 unless a core says otherwise; see [`super::rock_share`].
    pub share: f64,
}

/// What a socket does.
#[derive(Debug, Clone, PartialEq)]
pub struct SocketAnswer {
    /// Length below the top of the rock.
    pub socket: Length,
    /// Ultimate push; the rock fails.
    pub force: Force,
    /// Greatest shear in the post under that push: usually more than the push itself, and what decides in a short socket.
    pub shear: Force,
    /// Greatest moment in the post under that push.
    pub moment: Moment,
    /// Its working.
    pub trace: Trace,
}

impl InRock {
    fn push(&self, case: &Case) -> RockPush<f64> {
        RockPush {
            force: case.force.to_kn(),
            arm: case.arm.to_m(),
            rock_depth: self.depth.to_m(),
            shattered: self.shattered.to_m(),
            width: self.hole.to_m(),
            strength: self.strength.to_mpa(),
            share: self.share,
        }
    }
}

/// What a post takes whose foot stands this far in the rock; the soil above is not counted on.
///
/// # Errors
/// Where a value is out of range.
pub fn socket_resistance(case: &Case, rock: &InRock, socket: Length) -> Result<SocketAnswer> {
    let p = rock.push(case);
    let (i, trace) = RockSocket {
        socket: socket.to_m(),
        arm: p.arm,
        rock_depth: p.rock_depth,
        shattered: p.shattered,
        width: p.width,
        strength: p.strength,
        share: p.share,
    }
    .traced(&ROCK_SOCKET)?;
    let u = rock_socket(&i);
    Ok(SocketAnswer {
        socket,
        force: Force::kn(u.force),
        shear: Force::kn(u.shear),
        moment: Moment::knm(u.moment),
        trace,
    })
}

/// The socket that this post needs for the factor of its case.
///
/// # Errors
/// Where a value is out of range, or 5 m are not enough.
pub fn socket_needed(case: &Case, rock: &InRock) -> Result<SocketAnswer> {
    let (i, trace) = rock.push(case).traced_with(&ROCK_SOCKET_LENGTH, &[("factor", case.factor)])?;
    let length = rock_socket_length(&i, case.factor)
        .ok_or_else(|| no(&ROCK_SOCKET_LENGTH, "even a socket of 5 m is not enough for this push"))?;
    Ok(SocketAnswer { trace, ..socket_resistance(case, rock, Length::m(length))? })
}

/// Plate and dowels under a post on top of the rock.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnRock {
    /// From the dowels in tension to the front edge of the plate.
    pub lever: Length,
    /// Dowels in tension.
    pub pulled: usize,
    /// Dowels in all.
    pub all: usize,
    /// Diameter of the drilled holes.
    pub hole: Length,
    /// Ultimate bond of grout to rock; see [`super::ROCK`].
    pub bond: Pressure,
    /// Wanted ratio of bond to pull; 3 is usual.
    pub factor: f64,
}

/// What plate and dowels are asked to take; for an engineer, who designs them.
#[derive(Debug, Clone, PartialEq)]
pub struct OnRockDemand {
    /// At the plate.
    pub moment: Moment,
    /// Pull on one dowel.
    pub tension: Force,
    /// Shear on one dowel.
    pub shear: Force,
    /// Bonded length in sound rock.
    pub length: Length,
    /// Its working.
    pub trace: Trace,
}

/// What a post fixed on top of the rock, at `rock_depth` below the ground in front, asks of plate and dowels.
///
/// # Errors
/// Where a value is out of range.
pub fn on_rock(case: &Case, rock_depth: Length, plate: &OnRock) -> Result<OnRockDemand> {
    let (i, trace) = Dowels {
        force: case.force.to_kn(),
        arm: (case.arm + rock_depth).to_m(),
        lever: plate.lever.to_m(),
        pulled: plate.pulled as f64,
        all: plate.all as f64,
        hole: plate.hole.to_mm(),
        bond: plate.bond.to_mpa(),
        factor: plate.factor,
    }
    .traced(&ROCK_DOWELS)?;
    let d = dowels(&i);
    Ok(OnRockDemand {
        moment: Moment::knm(d.moment),
        tension: Force::kn(d.tension),
        shear: Force::kn(d.shear),
        length: Length::mm(d.length),
        trace,
    })
}

/// What one neighbour carries when the next post is left out.
#[derive(Debug, Clone, PartialEq)]
pub struct Neighbour {
    /// Width of wall that it carries then.
    pub carried: Length,
    /// How many times its planned push.
    pub times: f64,
    /// Span of the boards over the gap.
    pub span: Length,
    /// Its working.
    pub trace: Trace,
}

/// What a neighbour carries when the next post is left out: `bays` are the bay beyond the neighbour, the one between it
/// and the post left out, and the one behind that post. Judge it again as a [`Case`] with `times` its push.
///
/// # Errors
/// Where a bay is out of range.
pub fn neighbour_of_left_out(bays: [Length; 3]) -> Result<Neighbour> {
    let [before, left, right] = bays.map(Length::to_m);
    let (i, trace) = LeftOut { before, left, right }.traced(&LEFT_OUT_POST)?;
    let d = left_out(&i);
    Ok(Neighbour { carried: Length::m(d.carried), times: d.times, span: Length::m(d.span), trace })
}
