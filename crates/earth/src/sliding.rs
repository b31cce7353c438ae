//! Does a wall slide on its base, with a key under it and ground in front that may be lost?

use groundhold_quantity::{Angle, Length, LineForce, Pressure};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use crate::rows;

/// What holds a wall against sliding, per metre run.
#[derive(Debug, Clone, PartialEq)]
pub struct Grip {
    /// Sum of weights.
    pub vertical: LineForce,
    /// Sum of pushes.
    pub horizontal: LineForce,
    /// Width of the base.
    pub width: Length,
    /// Friction angle under the base.
    pub friction: Angle,
    /// Adhesion under the base.
    pub adhesion: Pressure,
    /// Tilt of the underside, positive where it leans against the push.
    pub tilt: Angle,
    /// Resistance of the ground in front, from [`crate::pressure::passive::Front`], to the foot of the key if there is one.
    pub passive: LineForce,
    /// Share of it that is counted.
    pub passive_share: f64,
    /// Depth of a key under the base. The ground between key and toe then shears through itself.
    pub key: Length,
    /// Friction angle of the ground, for the part of the base in front of a key.
    pub ground: Angle,
    /// From the toe to the key, over the width of the base.
    pub key_at: f64,
}

/// How it stands against sliding.
#[derive(Debug, Clone, PartialEq)]
pub struct Slide {
    /// What can be held.
    pub resistance: LineForce,
    /// Resistance over push along the base.
    pub factor: f64,
    /// How it was worked out.
    pub trace: Trace,
}

struct Case<N> {
    vertical: N,
    horizontal: N,
    width: N,
    friction: N,
    adhesion: N,
    tilt: N,
    passive: N,
    share: N,
    key: N,
    ground: N,
    key_at: N,
}

/// Resistance and push along the base.
///
/// # Source
/// Rigid-body equilibrium; as in Das, Principles of Foundation Engineering, 7th ed. (2011), 8.6. With a key the part of the
/// base in front of it slides on soil, not on concrete: EM 1110-2-2502 (1989), 4-15 (place from memory). Tilted base:
/// EN 1997-1:2004, 6.5.3, forces turned into the plane of the base.
/// # Symbols
/// | V, H, B | weights, pushes, width | kN/m, m | V, H > 0 |
/// | δ, a, η | friction angle and adhesion under the base, tilt | angle, kPa | |
/// | P_p, s | resistance in front, share counted | kN/m, – | 0–1 |
/// | φ, x_k | friction angle of the ground, place of the key over B | angle, – | |
/// # Gives
/// (resistance, push along the base, factor).
/// # Not for
/// Seepage under the base, whose uplift is to be taken off V first.
/// # Errors
/// None here.
/// # By hand
/// V = 470.43, δ = 13.333°, B = 4, a = 26.667, H = 158.75: (111.5 + 106.7)/158.75 = 1.374 (reference case WALL-02-grip).
fn grip<N: Number>(s: &Case<N>) -> (N, N, N) {
    let level = s.tilt.value() == 0.0;
    let (normal, push) = if level {
        (s.vertical, s.horizontal)
    } else {
        let normal = (s.vertical * s.tilt.cos() + s.horizontal * s.tilt.sin()).named("N", Unit::KN_M);
        let push = (s.horizontal * s.tilt.cos() - s.vertical * s.tilt.sin()).named("T", Unit::KN_M);
        (normal, push)
    };
    let on_concrete = s.friction.tan();
    let friction = if s.key.value() > 0.0 {
        let mixed = s.key_at * s.ground.tan() + (N::constant(1.0) - s.key_at) * on_concrete;
        (normal * mixed).named("R_f", Unit::KN_M)
    } else {
        (normal * on_concrete).named("R_f", Unit::KN_M)
    };
    let held = friction + s.adhesion * s.width + s.passive * s.share;
    let held = held.named("R", Unit::KN_M);
    (held, push, (held / push).named("F_s", Unit::NONE))
}

impl Grip {
    /// How the wall stands against sliding.
    ///
    /// # Errors
    /// No push along the base, or a value outside the working's limits.
    pub fn check(&self) -> Result<Slide> {
        let given = [
            self.vertical.to_kn_per_m(),
            self.horizontal.to_kn_per_m(),
            self.width.to_m(),
            self.friction.to_deg(),
            self.adhesion.to_kpa(),
            self.tilt.to_deg(),
            self.passive.to_kn_per_m(),
            self.passive_share,
            self.key.to_m(),
            self.ground.to_deg(),
            self.key_at,
        ];
        let values: Vec<_> = given.map(Into::into).into();
        rows::check(&SLIDING, &values)?;
        let case = Case {
            vertical: given[0],
            horizontal: given[1],
            width: given[2],
            friction: given[3].to_radians(),
            adhesion: given[4],
            tilt: given[5].to_radians(),
            passive: given[6],
            share: given[7],
            key: given[8],
            ground: given[9].to_radians(),
            key_at: given[10],
        };
        let (held, push, factor) = grip(&case);
        if push <= 0.0 {
            return Err(Refused::NoAnswer { working: SLIDING.name, why: NOTHING.into() });
        }
        Ok(Slide { resistance: LineForce::kn_per_m(held), factor, trace: Trace::new(&SLIDING, values) })
    }
}

const NOTHING: &str = "nothing pushes along the base; it cannot slide towards the front";

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let case = Case {
        vertical: g.one("v")?,
        horizontal: g.one("h")?,
        width: g.one("width")?,
        friction: g.one("friction")?,
        adhesion: g.one("adhesion")?,
        tilt: g.one("tilt")?,
        passive: g.one("passive")?,
        share: g.one("share")?,
        key: g.one("key")?,
        ground: g.one("phi")?,
        key_at: g.one("key_at")?,
    };
    let (held, push, factor) = grip(&case);
    if push.value() <= 0.0 {
        return Err(g.no_answer(NOTHING));
    }
    Ok([held, push, factor].map(Found::One).into())
}

/// Sliding with a key, a tilt and ground in front.
pub static SLIDING: Working = Working {
    name: "walls/sliding",
    title: "Does a wall slide on its base, with a key, a tilt and ground in front that may be lost?",
    source: Source {
        work: "rigid-body equilibrium, as in Das, Principles of Foundation Engineering, 7th ed., 2011, 8.6; tilt: EN 1997-1:2004, 6.5.3",
        place: "key: EM 1110-2-2502, 1989, 4-15, from memory",
    },
    not_for: "uplift under the base: take it off the weights first",
    inputs: &[
        Input::new("v", "V", "sum of weights", Unit::KN_M, Limits::ours(0.001, 1e5)),
        Input::new("h", "H", "sum of pushes", Unit::KN_M, Limits::ours(0.001, 1e5)),
        Input::new("width", "B", "width of the base", Unit::M, Limits::ours(0.01, 100.0)),
        Input::new("friction", "δ", "friction angle under the base", Unit::DEG, Limits::ours(0.0, 50.0)),
        Input::new("adhesion", "a", "adhesion under the base", Unit::KPA, Limits::ours(0.0, 500.0)).or(0.0),
        Input::new("tilt", "η", "tilt of the underside against the push", Unit::DEG, Limits::ours(0.0, 30.0)).or(0.0),
        Input::new("passive", "P_p", "resistance of the ground in front", Unit::KN_M, Limits::ours(0.0, 1e5)).or(0.0),
        Input::new("share", "s", "share of it that is counted", Unit::NONE, Limits::ours(0.0, 1.0)).or(1.0),
        Input::new("key", "D_k", "depth of a key under the base", Unit::M, Limits::ours(0.0, 5.0)).or(0.0),
        Input::new("phi", "φ", "friction angle of the ground, in front of a key", Unit::DEG, Limits::ours(0.0, 50.0))
            .or(0.0),
        Input::new("key_at", "x_k", "from toe to key, over the width", Unit::NONE, Limits::ours(0.0, 1.0)).or(0.0),
    ],
    outputs: &[
        Output { key: "resistance", words: "what can be held", unit: Unit::KN_M },
        Output { key: "push", words: "push along the base", unit: Unit::KN_M },
        Output { key: "factor", words: "resistance over push", unit: Unit::NONE },
    ],
    run,
};
