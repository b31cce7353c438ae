//! From the job's elements to the wishes that `shape` understands.

use groundhold_quantity::Level;
use groundhold_shape as shape;

use crate::job::{Job, PadLevel, PadWish, WallEnd, WallTop, WallWish};

/// The wishes of a job, with the level of every pad that is to be balanced.
pub(crate) fn wish(job: &Job, balanced: &dyn Fn(&PadWish) -> Level, limits: shape::Limits) -> shape::Wish {
    shape::Wish {
        pads: job.pads.iter().map(|p| pad(p, balanced)).collect(),
        walls: job.walls.iter().map(wall).collect(),
        flights: job
            .flights
            .iter()
            .map(|f| shape::FlightWish {
                id: f.id.clone(),
                bottom: f.from,
                toward: f.to.clone(),
                width: f.width,
                going: f.going,
            })
            .collect(),
        ramps: job
            .ramps
            .iter()
            .map(|r| shape::RampWish {
                id: r.id.clone(),
                path: r.path.clone(),
                toward: r.to.clone(),
                width: r.width,
                steepest: r.steepest,
            })
            .collect(),
        batter: shape::Batter { cut: job.batter.cut, fill: job.batter.fill },
        limits,
        units: job.about.units,
    }
}

fn pad(p: &PadWish, balanced: &dyn Fn(&PadWish) -> Level) -> shape::PadWish {
    let level = match p.level {
        PadLevel::At(l) => l,
        PadLevel::Balance | PadLevel::Cheapest => balanced(p),
    };
    shape::PadWish { id: p.id.clone(), corners: p.corners.clone(), level, fall: p.fall, apron: p.apron }
}

fn wall(w: &WallWish) -> shape::WallWish {
    let end = |e: WallEnd| match e {
        WallEnd::Fade => shape::End::Fade,
        WallEnd::At => shape::End::At,
    };
    let top = match &w.top {
        WallTop::FollowGround { above } => shape::Top::FollowGround { above: *above },
        WallTop::At(l) => shape::Top::LevelAt(*l),
        WallTop::AbovePad { pad, by } => shape::Top::Above { pad: pad.clone(), by: *by },
    };
    shape::WallWish {
        id: w.id.clone(),
        line: w.line.clone(),
        start: end(w.ends[0]),
        end: end(w.ends[1]),
        retains: if w.retains_left { shape::Side::Left } else { shape::Side::Right },
        thickness: w.spec.system().thickness(),
        top,
    }
}
