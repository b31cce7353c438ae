//! What does water do that flows down behind a wall, under its toe and up in front?

use groundhold_quantity::{Length, LineForce, Pressure, UnitWeight, WATER};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use super::Spread;
use crate::rows;

/// A wall that water flows under. Depths from the ground at its own side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UnderToe {
    /// From the ground behind to the ground in front.
    pub retained: Length,
    /// From the ground in front to the toe.
    pub embedded: Length,
    /// Water behind, above the ground in front.
    pub behind: Length,
    /// Water in front, below the ground in front.
    pub front: Length,
}

/// What the flow does.
#[derive(Debug, Clone, PartialEq)]
pub struct Creep {
    /// Mean gradient along the wall, down behind and up in front.
    pub gradient: f64,
    /// Pressure of water at the toe.
    pub at_toe: Pressure,
    /// Net pressure of water on the wall from the level behind down, depths from there.
    pub net: Spread,
    /// Sum of it.
    pub force: LineForce,
    /// Weight of a soil under water in front, with the flow up through it.
    pub weight_in_front: UnitWeight,
    /// Weight of a soil under water behind, with the flow down through it.
    pub weight_behind: UnitWeight,
    /// How many times the gradient could grow until the ground in front boils.
    pub factor_boiling: f64,
    /// How it was worked out.
    pub trace: Trace,
}

struct Drawn<N> {
    gradient: N,
    toe: N,
    at_front: N,
    force: N,
    arm: N,
    up: N,
    down: N,
    boiling: N,
}

/// Water under a toe by the line of creep: head lost evenly along the wall.
///
/// # Source
/// USACE EM 1110-2-2502, Retaining and Flood Walls (1989), 3-19, line-of-creep method (place seen in its contents, formula
/// from memory); weights with seepage after Terzaghi, Theoretical Soil Mechanics (1943), critical gradient γ′/γ_w.
/// # Symbols
/// | h, j, d | water behind above, water in front below the ground in front, depth of the toe below it | m | j ≤ d |
/// | γ_sat, γ_w | soil, water | kN/m³ | |
/// # Gives
/// i = (h + j)/(h + 2d − j); water at the toe γ_w (d − j)(1 + i); γ′ − i γ_w in front, γ′ + i γ_w behind; the factor
/// against boiling (γ′/γ_w)/i.
/// # Not for
/// Ground of layers, where the tight layer takes the loss; a wide excavation's flow is less even than this.
/// # Errors
/// None here; the working refuses water in front below the toe.
/// # By hand
/// h = 2, j = 0, d = 2: i = 2/6 = 0.333, at the toe 9.81 · 2 · 1.333 = 26.16 kPa (reference case CR-01).
fn creep<N: Number>(behind: N, front: N, embedded: N, sat: N, water: N) -> Drawn<N> {
    let path = behind + embedded * 2.0 - front;
    let gradient = ((behind + front) / path).named("i", Unit::NONE);
    let one = N::constant(1.0);
    let below = embedded - front;
    let toe = (water * below * (one + gradient)).named("u_toe", Unit::KPA);
    // Net pressure: from nothing at the level behind, growing by (1 − i) down to the level in front, then falling to
    // nothing at the toe, where both sides meet.
    let drop = behind + front;
    let at_front = (water * drop * (one - gradient)).named("u_f", Unit::KPA);
    let force = (at_front * (drop + below) / 2.0).named("U", Unit::KN_M);
    let moment = at_front * drop / 2.0 * (below + drop / 3.0) + at_front * below / 2.0 * (below * (2.0 / 3.0));
    let arm = if force.value() > 0.0 { moment / force } else { N::constant(0.0) };
    let submerged = (sat - water).named("γ'", Unit::KN_M3);
    let up = (submerged - gradient * water).named("γ_f", Unit::KN_M3);
    let down = (submerged + gradient * water).named("γ_b", Unit::KN_M3);
    let boiling = (submerged / water / gradient).named("F_i", Unit::NONE);
    Drawn { gradient, toe, at_front, force, arm: arm.named("a", Unit::M), up, down, boiling }
}

impl UnderToe {
    /// What the flow does, in ground of this saturated weight.
    ///
    /// # Errors
    /// Water in front below the toe, no difference of level, or a value outside the working's limits.
    pub fn creep(&self, saturated: UnitWeight) -> Result<Creep> {
        let given = [
            self.behind.to_m(),
            self.front.to_m(),
            self.embedded.to_m(),
            saturated.to_kn_per_m3(),
            WATER.to_kn_per_m3(),
        ];
        let values: Vec<_> = given.map(Into::into).into();
        rows::check(&LINE_OF_CREEP, &values)?;
        let no = |why: &str| Err(Refused::NoAnswer { working: LINE_OF_CREEP.name, why: why.into() });
        if let Some(why) = impossible(given[0], given[1], given[2]) {
            return no(why);
        }
        if self.behind > self.retained {
            return no("the water stands above the ground behind; put the rest in as a load");
        }
        let c = creep(given[0], given[1], given[2], given[3], given[4]);
        let drop = given[0] + given[1];
        let net = Spread::of(&[0.0, drop, given[0] + given[2]], &[0.0, c.at_front, 0.0]);
        Ok(Creep {
            gradient: c.gradient,
            at_toe: Pressure::kpa(c.toe),
            net,
            force: LineForce::kn_per_m(c.force),
            weight_in_front: UnitWeight::kn_per_m3(c.up),
            weight_behind: UnitWeight::kn_per_m3(c.down),
            factor_boiling: c.boiling,
            trace: Trace::new(&LINE_OF_CREEP, values),
        })
    }
}

fn impossible(behind: f64, front: f64, embedded: f64) -> Option<&'static str> {
    if front >= embedded {
        return Some("the water in front lies below the toe; no water flows under it there");
    }
    (behind + front <= 0.0).then_some("the water stands as high in front as behind; nothing flows")
}

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let (h, j, d) = (g.one("behind")?, g.one("front")?, g.one("embedded")?);
    if let Some(why) = impossible(h.value(), j.value(), d.value()) {
        return Err(g.no_answer(why));
    }
    let c = creep(h, j, d, g.one("gamma_sat")?, g.one("gamma_w")?);
    Ok([c.gradient, c.toe, c.at_front, c.force, c.arm, c.up, c.down, c.boiling].map(Found::One).into())
}

/// Flow under the toe.
pub static LINE_OF_CREEP: Working = Working {
    name: "water/line-of-creep",
    title: "What does water do that flows under the toe of a wall: pressures, lighter ground in front, boiling?",
    source: Source {
        work: "USACE EM 1110-2-2502, Retaining and Flood Walls, 1989; critical gradient: Terzaghi, Theoretical Soil Mechanics, 1943",
        place: "3-19, line-of-creep method, formula from memory",
    },
    not_for: "layers of different permeability, wells, water above the ground behind",
    inputs: &[
        Input::new("behind", "h", "water behind, above the ground in front", Unit::M, Limits::ours(0.0, 30.0)),
        Input::new("front", "j", "water in front, below the ground in front", Unit::M, Limits::ours(0.0, 30.0)).or(0.0),
        Input::new("embedded", "d", "depth of the toe below the ground in front", Unit::M, Limits::ours(0.05, 30.0)),
        rows::GAMMA_SAT,
        rows::GAMMA_WATER,
    ],
    outputs: &[
        Output { key: "gradient", words: "mean gradient along the wall", unit: Unit::NONE },
        Output { key: "toe", words: "pressure of water at the toe", unit: Unit::KPA },
        Output { key: "most", words: "largest net pressure, at the level in front", unit: Unit::KPA },
        Output { key: "force", words: "net force of water", unit: Unit::KN_M },
        Output { key: "arm", words: "its height above the toe", unit: Unit::M },
        Output { key: "gamma_front", words: "weight in front with the flow up", unit: Unit::KN_M3 },
        Output { key: "gamma_behind", words: "weight behind with the flow down", unit: Unit::KN_M3 },
        Output { key: "boiling", words: "factor against boiling", unit: Unit::NONE },
    ],
    run,
};
