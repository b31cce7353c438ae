//! From the job's elements to the wishes that `shape` understands.

use groundhold_quantity::Level;
use groundhold_shape as shape;

use crate::job::{Batter, Job, PadLevel, PadWish, WallEnd, WallTop, WallWish};

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
                turns: f.turns.clone(),
            })
            .collect(),
        ramps: job
            .ramps
            .iter()
            .map(|r| shape::RampWish {
                id: r.id.clone(),
                path: r.path.clone(),
                bends: r.bends.clone(),
                toward: r.to.clone(),
                width: r.width,
                steepest: r.steepest,
                crossfall: r.crossfall,
                landings: r.landings,
                build_up: crate::earthwork::RAMP_BUILD_UP,
                within: r.within.clone(),
            })
            .collect(),
        batter: batter(&job.batter),
        limits,
        units: job.about.units,
    }
}

fn batter(b: &Batter) -> shape::Batter {
    shape::Batter { cut: b.cut, fill: b.fill, bench: b.bench }
}

fn pad(p: &PadWish, balanced: &dyn Fn(&PadWish) -> Level) -> shape::PadWish {
    let level = match p.level {
        PadLevel::At(l) => l,
        PadLevel::Balance | PadLevel::Cheapest => balanced(p),
    };
    shape::PadWish {
        id: p.id.clone(),
        corners: p.corners.clone(),
        bends: p.bends.clone(),
        level,
        fall: p.fall,
        apron: p.apron,
        build_up: p.build_up,
        batter: p.batter.as_ref().map(batter),
    }
}

fn wall(w: &WallWish) -> shape::WallWish {
    let end = |e: WallEnd| match e {
        WallEnd::Fade => shape::End::Fade,
        WallEnd::At => shape::End::At,
        WallEnd::Return(leg) => shape::End::Return(leg),
        WallEnd::Post(breadth) => shape::End::Post(breadth),
    };
    let top = match &w.top {
        WallTop::FollowGround { above } => shape::Top::FollowGround { above: *above },
        WallTop::At(l) => shape::Top::LevelAt(*l),
        WallTop::AbovePad { pad, by } => shape::Top::Above { pad: pad.clone(), by: *by },
        WallTop::Raked { from, to } => shape::Top::Raked { from: *from, to: *to },
        WallTop::Stepped { above, by, least } => shape::Top::Stepped { above: *above, by: *by, least: *least },
        WallTop::Line(levels) => shape::Top::Line(levels.clone()),
    };
    shape::WallWish {
        id: w.id.clone(),
        line: w.line.clone(),
        bends: w.bends.clone(),
        beside: w.alongside.clone(),
        start: end(w.ends[0]),
        end: end(w.ends[1]),
        retains: if w.retains_left { shape::Side::Left } else { shape::Side::Right },
        thickness: w.spec.system().thickness(),
        lean: w.spec.system().lean(),
        parts: w
            .parts
            .iter()
            .map(|p| shape::WallPart {
                from: p.from,
                to: p.to,
                thickness: p.spec.system().thickness(),
                lean: p.spec.system().lean(),
            })
            .collect(),
        top,
    }
}
