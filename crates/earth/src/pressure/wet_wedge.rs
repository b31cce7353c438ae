//! Which wedge pushes hardest behind broken ground when water stands in it and in its crack?

use groundhold_quantity::{Angle, Length, LineForce, WATER, math};
use groundhold_working::{
    Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Value, Working,
};

use super::thrust;
use super::wedge::{self, Broken, Case, Cut};
use crate::rows;

/// Water in the ground behind.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Wet {
    /// Level of still water above the heel, the same everywhere.
    pub level: Length,
    /// Water standing in the crack, from its foot.
    pub in_crack: Length,
}

/// The wedge that pushes hardest, with water.
#[derive(Debug, Clone, PartialEq)]
pub struct WetWedge {
    /// Thrust of the soil, effective, in its own direction.
    pub thrust: LineForce,
    /// Its horizontal part.
    pub horizontal: LineForce,
    /// Horizontal force of water on the wall.
    pub water: LineForce,
    /// Slip plane above horizontal.
    pub plane: Angle,
    /// How it was worked out.
    pub trace: Trace,
}

struct Waters<N> {
    /// Weight that soaking adds.
    weight: N,
    plane: N,
    wall: N,
    crack: N,
}

/// Effective thrust of one wedge with still water.
///
/// # Source
/// Coulomb (1776) with water forces, as in Terzaghi, Theoretical Soil Mechanics (1943), and USACE EM 1110-2-2502 (1989),
/// 3-13 (places from memory); triangle of forces worked out by ourselves.
/// # Symbols
/// | W, C | soaked weight with loads, cohesion times length of the plane | kN/m | |
/// | U, U_w, P_c | water square to the plane, square to the back, in the crack | kN/m | |
/// | ρ, φ, θ, ω | plane, friction, lean of the back, δ + θ | angle | ρ > φ |
/// # Gives
/// P = (W sin(ρ − φ) + U sin φ + P_c cos(ρ − φ) − C cos φ − U_w cos(ρ − φ − θ))/cos(ρ − φ − ω).
/// # Not for
/// Water that flows (`earth-pressure/soaked`).
/// # Errors
/// None here.
/// # By hand
/// Water to the ground, smooth upright wall: ½ K_a γ′ H² (reference case WW-01).
fn thrust_of<N: Number>(weight: N, cohesion: N, water: &Waters<N>, plane: N, phi: N, lean: N, direction: N) -> N {
    let slip = plane - phi;
    let drives = weight * slip.sin() + water.plane * phi.sin() + water.crack * slip.cos();
    let holds = cohesion * phi.cos() + water.wall * (slip - lean).cos();
    ((drives - holds) / (slip - direction).cos()).named("P'", Unit::KN_M)
}

/// Water of a cut: the part of the wedge below its level, forces on plane, back and crack.
fn waters(case: &Case, cut: &Cut, more: f64, level: f64, in_crack: f64) -> Waters<f64> {
    let w = WATER.to_kn_per_m3();
    let sin = math::sin(cut.plane);
    // Above the end of the plane only the crack holds water.
    let on_plane = level.min(cut.end);
    let soaked = 0.5 * on_plane * on_plane * (1.0 / math::tan(cut.plane) + math::tan(case.lean));
    Waters {
        weight: more * soaked,
        plane: w * on_plane * (level - 0.5 * on_plane) / sin,
        wall: 0.5 * w * level * level / math::cos(case.lean),
        crack: 0.5 * w * in_crack * in_crack,
    }
}

struct Hardest {
    cut: Cut,
    waters: Waters<f64>,
}

fn worst(case: &Case, more: f64, level: f64, in_crack: f64) -> Option<Hardest> {
    let direction = case.delta + case.lean;
    let push = |cut: &Cut| {
        let w = waters(case, cut, more, level, in_crack);
        thrust_of(cut.weight + w.weight, case.c * cut.length, &w, cut.plane, case.phi, case.lean, direction)
    };
    let cut = case.worst_by(push)?;
    Some(Hardest { waters: waters(case, &cut, more, level, in_crack), cut })
}

fn impossible(height: f64, crack: f64, level: f64, in_crack: f64) -> Option<&'static str> {
    if level > height - crack + 1e-12 {
        return Some(
            "the water should stand no higher than the foot of the crack or the top of the back; put the rest in the crack",
        );
    }
    (in_crack > crack + 1e-12).then_some("the water in the crack stands higher than the crack is deep")
}

impl Broken {
    /// The wedge that pushes hardest with still water in the ground and in the crack.
    ///
    /// # Errors
    /// As [`Broken::active`]; water above the foot of the crack or above the crack.
    pub fn active_wet(&self, wet: Wet) -> Result<WetWedge> {
        let v = self.values();
        let (level, in_crack) = (wet.level.to_m(), wet.in_crack.to_m());
        let mut given = self.given(&v);
        let sat = self.soil.unit_weight_saturated.to_kn_per_m3();
        given.extend([sat.into(), level.into(), in_crack.into()].into_iter().collect::<Vec<Value>>());
        rows::check(&WET_WEDGE, &given)?;
        let no = |why: String| Refused::NoAnswer { working: WET_WEDGE.name, why };
        if let Some(why) = impossible(v.height, v.crack, level, in_crack) {
            return Err(no(why.into()));
        }
        let case = wedge::read(&v).map_err(no)?;
        let found = worst(&case, sat - case.gamma, level, in_crack).ok_or_else(|| no(wedge::NO_WEDGE.into()))?;
        let (cut, w) = (&found.cut, &found.waters);
        let direction = case.delta + case.lean;
        let p = thrust_of(cut.weight + w.weight, case.c * cut.length, w, cut.plane, case.phi, case.lean, direction);
        let thrust = LineForce::kn_per_m(p.max(0.0));
        Ok(WetWedge {
            thrust,
            horizontal: thrust * math::cos(direction),
            water: LineForce::kn_per_m(w.wall * math::cos(case.lean)),
            plane: Angle::rad(cut.plane),
            trace: Trace::new(&WET_WEDGE, given),
        })
    }
}

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let list = |key: &str| -> Result<Vec<f64>> { Ok(g.many(key)?.iter().map(|v| v.value()).collect()) };
    let (phi, c, delta, lean) = (g.one("phi")?, g.one("c")?, g.one("delta")?, g.one("theta")?);
    let v = wedge::Values {
        height: g.one("height")?.value(),
        gamma: g.one("gamma")?.value(),
        phi: phi.value(),
        c: c.value(),
        delta: delta.value(),
        lean: lean.value(),
        crack: g.one("crack")?.value(),
        xs: list("xs")?,
        ys: list("ys")?,
        q: list("strip_q")?,
        from: list("strip_from")?,
        to: list("strip_to")?,
    };
    let (sat, level, in_crack) = (g.one("gamma_sat")?.value(), g.one("water")?.value(), g.one("crack_water")?.value());
    if let Some(why) = impossible(v.height, v.crack, level, in_crack) {
        return Err(g.no_answer(why));
    }
    let case = wedge::read(&v).map_err(|why| g.no_answer(why))?;
    let found = worst(&case, sat - case.gamma, level, in_crack).ok_or_else(|| g.no_answer(wedge::NO_WEDGE))?;
    let (cut, w) = (&found.cut, &found.waters);
    let sheet = g.sheet();
    sheet.remark("worst of the planes through the heel, tried every quarter of a degree and then closer");
    let plane = sheet.put("ρ", cut.plane.to_degrees(), Unit::DEG);
    let put = |symbol, v: f64| sheet.put(symbol, v, Unit::KN_M);
    let shown = Waters {
        weight: put("W_w", w.weight),
        plane: put("U", w.plane),
        wall: put("U_w", w.wall),
        crack: put("P_c", w.crack),
    };
    let weight = (put("W_0", cut.weight) + shown.weight).named("W", Unit::KN_M);
    let length = sheet.put("L", cut.length, Unit::M);
    let p = rows::not_below_zero(thrust_of(weight, c * length, &shown, plane, phi, lean, delta + lean));
    let soil = (p * (delta + lean).cos()).named("P'_h", Unit::KN_M);
    let water = (shown.wall * lean.cos()).named("U_h", Unit::KN_M);
    let all = (soil + water).named("P_h", Unit::KN_M);
    let reach = sheet.put("r", cut.reach, Unit::M);
    Ok([p, soil, water, all, plane, reach].map(Found::One).into())
}

/// The trial wedge with still water.
pub static WET_WEDGE: Working = Working {
    name: "earth-pressure/wet-wedge",
    title: "Which wedge pushes hardest where the ground behind is broken or loaded, with water in it and in its crack?",
    source: Source {
        work: "Coulomb, 1776, by trial as Culmann, Die graphische Statik, Zürich, 1866; water: Terzaghi, Theoretical Soil Mechanics, 1943",
        place: "USACE EM 1110-2-2502, 1989, 3-13, from memory; triangle of forces worked out by ourselves",
    },
    not_for: "water that flows, layers, curved slips",
    inputs: &[
        rows::HEIGHT,
        rows::GAMMA,
        rows::PHI,
        rows::COHESION,
        rows::DELTA,
        rows::THETA,
        Input::new("crack", "z_c", "depth of an open crack", Unit::M, Limits::ours(0.0, 20.0)).or(0.0),
        Input::new(
            "xs",
            "x",
            "ground: distances behind the top of the back face, first 0",
            Unit::M,
            Limits::ours(0.0, 1000.0),
        ),
        Input::new(
            "ys",
            "y",
            "ground: rises above the top of the back face, first 0",
            Unit::M,
            Limits::ours(-100.0, 1000.0),
        ),
        Input::new("strip_q", "q_s", "loads on strips of the ground", Unit::KPA, Limits::ours(0.0, 5000.0)).or(0.0),
        Input::new("strip_from", "a", "their near edges", Unit::M, Limits::ours(0.0, thrust::FAR)).or(0.0),
        Input::new("strip_to", "b", "their far edges", Unit::M, Limits::ours(0.0, thrust::FAR)).or(0.0),
        rows::GAMMA_SAT,
        Input::new("water", "h_w", "level of still water above the heel", Unit::M, Limits::ours(0.0, 30.0)).or(0.0),
        Input::new("crack_water", "h_c", "height of water in the crack", Unit::M, Limits::ours(0.0, 20.0)).or(0.0),
    ],
    outputs: &[
        Output { key: "p", words: "force of the soil, effective", unit: Unit::KN_M },
        Output { key: "soil", words: "its horizontal part", unit: Unit::KN_M },
        Output { key: "water", words: "horizontal force of water on the wall", unit: Unit::KN_M },
        Output { key: "all", words: "both", unit: Unit::KN_M },
        Output { key: "plane", words: "slip plane above horizontal", unit: Unit::DEG },
        Output { key: "reach", words: "where it meets the ground, behind the top", unit: Unit::M },
    ],
    run,
};
