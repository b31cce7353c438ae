//! How hard does soil push back along a curved slip, found by trying logarithmic spirals?

use groundhold_quantity::{Angle, Slope, math};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use crate::rows;

/// What is pushed back, for a wall one metre high in soil of unit weight 1. In radians.
#[derive(Clone, Copy)]
struct Case {
    phi: f64,
    delta: f64,
    slope: f64,
}

/// What resists on a spiral.
#[derive(Clone, Copy, PartialEq)]
enum Part {
    /// Weight of the soil; the force acts at a third of the height.
    Weight,
    /// Load of 1 on the ground; the force acts at half the height, as for cohesion.
    Load,
    /// Cohesion of 1 on the slip.
    Cohesion,
}

/// A spiral through the heel: the slope of its start there, and the natural logarithm of the pole's distance.
type Spot = [f64; 2];

/// The coefficient of one part by one spiral.
///
/// The heel is the origin, x runs into the soil. The soil moves up and away from the wall about the pole, so the radius
/// grows by e^(ψ tan φ) from heel to ground and the resultant of friction on the slip runs through the pole. Moments about
/// the pole give the force.
fn coefficient(case: &Case, part: Part, [start, size]: Spot) -> Option<f64> {
    let (tan, r0) = (math::tan(case.phi), math::exp(size));
    let pole = (-r0 * math::sin(start + case.phi), r0 * math::cos(start + case.phi));
    let (turned, exit) = turn_to_ground(case, pole, r0, tan)?;
    let arm = if part == Part::Weight { 1.0 / 3.0 } else { 0.5 };
    let lever = pole.0 * math::sin(case.delta) + (pole.1 - arm) * math::cos(case.delta);
    if lever <= 1e-6 * r0 || exit.0 <= 0.0 {
        return None;
    }
    let moment = match part {
        Part::Weight => 2.0 * weight_moment(pole, r0, tan, turned, exit),
        // A load on the ground between wall and exit, about the pole.
        Part::Load => exit.0 * (0.5 * exit.0 - pole.0),
        Part::Cohesion => {
            let grown = math::exp(2.0 * turned * tan) - 1.0;
            if tan > 1e-9 { r0 * r0 * grown / (2.0 * tan) } else { r0 * r0 * turned }
        }
    };
    (moment > 0.0).then(|| moment / lever)
}

/// How far the spiral turns until it meets the ground, and where; from the heel.
fn turn_to_ground(case: &Case, pole: (f64, f64), r0: f64, tan: f64) -> Option<(f64, (f64, f64))> {
    let from = math::atan2(-pole.1, -pole.0);
    let rise = math::tan(case.slope);
    let at = |turned: f64| {
        let r = r0 * math::exp(turned * tan);
        (pole.0 + r * math::cos(from + turned), pole.1 + r * math::sin(from + turned))
    };
    let above = |turned: f64| {
        let p = at(turned);
        p.1 - 1.0 - p.0 * rise
    };
    // The nearer the pole, the further it must turn; steps grow so that a far pole is caught as well.
    let (mut lo, mut hi) = (0.0, 0.02 / r0.max(0.1));
    let (mut f_lo, mut f_hi) = (-1.0, above(hi));
    while f_hi < 0.0 {
        (lo, f_lo) = (hi, f_hi);
        hi *= 1.6;
        if hi > std::f64::consts::PI {
            return None;
        }
        f_hi = above(hi);
    }
    // False position; the end that stays is given half its weight (Illinois), so that both ends close in.
    for _ in 0..60 {
        let between = (lo * f_hi - hi * f_lo) / (f_hi - f_lo);
        let f = above(between);
        if f.abs() < 1e-13 || hi - lo < 1e-15 {
            return Some((between, at(between)));
        }
        if f < 0.0 {
            (lo, f_lo) = (between, f);
            f_hi *= 0.5;
        } else {
            (hi, f_hi) = (between, f);
            f_lo *= 0.5;
        }
    }
    Some((hi, at(hi)))
}

/// Moment about the pole of the soil between wall, ground and spiral, of unit weight 1: sectors seen from the pole.
fn weight_moment(pole: (f64, f64), r0: f64, tan: f64, turned: f64, exit: (f64, f64)) -> f64 {
    let from = math::atan2(-pole.1, -pole.0);
    let grown = |t: f64| math::exp(3.0 * t * tan) * (3.0 * tan * math::cos(from + t) + math::sin(from + t));
    let spiral = r0 * r0 * r0 / 3.0 * (grown(turned) - grown(0.0)) / (1.0 + 9.0 * tan * tan);
    let seen = |p: (f64, f64)| (p.0 - pole.0, p.1 - pole.1);
    let corners = [seen(exit), seen((0.0, 1.0)), seen((0.0, 0.0))];
    let straight: f64 = corners
        .windows(2)
        .map(|w| {
            let (p, q) = (w[0], w[1]);
            0.5 * (p.0 * q.1 - q.0 * p.1) * (p.0 + q.0) / 3.0
        })
        .sum();
    spiral + straight
}

/// The least coefficient of a part over all spirals: a grid, then steps to the best neighbour, halved.
fn least(case: &Case, part: Part) -> Option<f64> {
    let (flat, steep) = (-case.phi, (90f64.to_radians() - case.phi).min(1.2));
    let (near, far) = (-1.0, 9.0);
    const ACROSS: usize = 16;
    let mut best: Option<(f64, Spot)> = None;
    for i in 0..=ACROSS {
        for j in 0..=ACROSS {
            let share = |k: usize| k as f64 / ACROSS as f64;
            let spot = [flat + (steep - flat) * share(i), near + (far - near) * share(j)];
            if let Some(k) = coefficient(case, part, spot)
                && best.is_none_or(|b| k < b.0)
            {
                best = Some((k, spot));
            }
        }
    }
    let mut best = best?;
    let mut step = [(steep - flat) / ACROSS as f64, (far - near) / ACROSS as f64];
    for _ in 0..400 {
        if step[0] < 1e-5 {
            break;
        }
        let mut next = best;
        for n in 0..9 {
            let (i, j) = ((n / 3) as f64 - 1.0, (n % 3) as f64 - 1.0);
            let spot = [best.1[0] + i * step[0], (best.1[1] + j * step[1]).min(far)];
            if let Some(k) = coefficient(case, part, spot)
                && k < next.0
            {
                next = (k, spot);
            }
        }
        if next.0 < best.0 { best = next } else { step = step.map(|s| s / 2.0) }
    }
    Some(best.0)
}

/// The coefficients of the spiral that resists least.
#[derive(Debug, Clone, PartialEq)]
pub struct Spiral {
    /// K_γ: force of the soil's own weight ½ K_γ γ H², in the direction of δ.
    pub weight: f64,
    /// K_q: force of a load on the ground, K_q q H.
    pub load: f64,
    /// K_c: force of cohesion, K_c c H.
    pub cohesion: f64,
    /// How it was worked out.
    pub trace: Trace,
}

/// Passive coefficients by logarithmic spirals, vertical wall. Each part by its own worst spiral, which together is on the
/// cautious side.
///
/// # Errors
/// δ > φ, ground steeper than φ, or an angle outside the limits.
pub fn passive(phi: Angle, delta: Angle, slope: Slope) -> Result<Spiral> {
    let degrees = [phi, delta, slope.to_angle()].map(|a| a.to_deg().into());
    let given: Vec<_> = [1.0.into(), 20.0.into()].into_iter().chain(degrees).chain([0.0.into(), 0.0.into()]).collect();
    rows::check(&LOG_SPIRAL, &given)?;
    let [phi, delta, slope] = [phi, delta, slope.to_angle()].map(rows::radians);
    let k = coefficients(phi, delta, slope).map_err(|why| Refused::NoAnswer { working: LOG_SPIRAL.name, why })?;
    Ok(Spiral { weight: k[0], load: k[1], cohesion: k[2], trace: Trace::new(&LOG_SPIRAL, given) })
}

fn coefficients(phi: f64, delta: f64, slope: f64) -> std::result::Result<[f64; 3], String> {
    if delta > phi + 1e-9 {
        return Err("wall friction δ is larger than the soil's own friction angle φ; take δ = φ at most".into());
    }
    if slope.abs() > phi - 1e-6 {
        return Err("the ground is as steep as the soil's friction angle or steeper; it has no slip field there".into());
    }
    let case = Case { phi, delta, slope };
    let none = || String::from("no spiral from the heel reaches the ground with these angles");
    Ok([
        least(&case, Part::Weight).ok_or_else(none)?,
        least(&case, Part::Load).ok_or_else(none)?,
        least(&case, Part::Cohesion).ok_or_else(none)?,
    ])
}

/// The resistance from the coefficients.
///
/// # Source
/// Terzaghi, Theoretical Soil Mechanics, Wiley, New York (1943), art. 40: moments about the pole of a logarithmic spiral
/// r = r₀ e^(ψ tan φ) from heel to ground; here the whole slip is one spiral and its worst pole is searched.
/// # Symbols
/// | H, γ, q, c | height, unit weight, load on the ground, cohesion | m, kN/m³, kPa, kPa | |
/// | K_γ, K_q, K_c | coefficients of the worst spirals | – | |
/// # Gives
/// P_p = ½ K_γ γ H² + K_q q H + K_c c H in the direction of δ, and its part square to the wall.
/// # Not for
/// Leaning walls; adhesion on the wall, which is left out; δ near φ, where one spiral is up to 7 % above exact plasticity
/// (known miss LS-KA-30-100).
/// # Errors
/// None here; the working refuses δ > φ and ground as steep as φ.
/// # By hand
/// φ = 30°, δ = 0: the spiral is nearly straight, K_γ = K_p = 3 (reference case LS-30-0).
pub fn resistance<N: Number>(height: N, gamma: N, q: N, c: N, k: [N; 3]) -> N {
    let [weight, load, cohesion] = k;
    (weight * gamma * height.squared() * 0.5 + load * q * height + cohesion * c * height).named("P_p", Unit::KN_M)
}

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let (h, gamma, phi) = (g.one("height")?, g.one("gamma")?, g.one("phi")?);
    let (delta, slope) = (g.one("delta")?, g.one("alpha")?);
    let k = coefficients(phi.value(), delta.value(), slope.value()).map_err(|why| g.no_answer(why))?;
    g.sheet().remark("least of the spirals through the heel, by moments about the pole; each part by its own spiral");
    let put = |symbol, v: f64| g.sheet().put(symbol, v, Unit::NONE);
    let k = [put("K_γ", k[0]), put("K_q", k[1]), put("K_c", k[2])];
    let p = resistance(h, gamma, g.one("q")?, g.one("c")?, k);
    let ph = (p * delta.cos()).named("P_ph", Unit::KN_M);
    Ok([k[0], k[1], k[2], p, ph].map(Found::One).into())
}

/// Passive resistance on a curved slip.
pub static LOG_SPIRAL: Working = Working {
    name: "earth-pressure/log-spiral",
    title: "How hard does soil push back on a rough wall along a curved slip?",
    source: Source {
        work: "Terzaghi, Theoretical Soil Mechanics, Wiley, New York, 1943",
        place: "art. 40, moments about the pole; the whole slip as one spiral and the search over poles are ours",
    },
    not_for: "leaning walls, adhesion on the wall, layers; wall friction near φ, where it is up to 7 % above exact plasticity",
    inputs: &[
        rows::HEIGHT,
        rows::GAMMA,
        Input { limits: Limits::ours(1.0, 45.0), ..rows::PHI },
        rows::DELTA,
        rows::SLOPE,
        rows::SURCHARGE,
        rows::COHESION,
    ],
    outputs: &[
        Output { key: "kp", words: "coefficient of weight, in the direction of δ", unit: Unit::NONE },
        Output { key: "kq", words: "coefficient of a load on the ground", unit: Unit::NONE },
        Output { key: "kc", words: "coefficient of cohesion", unit: Unit::NONE },
        Output { key: "pp", words: "passive force in the direction of δ", unit: Unit::KN_M },
        Output { key: "pph", words: "its part square to the wall", unit: Unit::KN_M },
    ],
    run,
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pressure::rankine;

    #[test]
    fn a_smooth_wall_and_level_ground_are_rankines() {
        for phi in [20.0, 30.0, 40.0] {
            let k = passive(Angle::deg(phi), Angle::ZERO, Slope::LEVEL).unwrap();
            let rankine = rankine::kp(f64::to_radians(phi));
            assert!((k.weight / rankine - 1.0).abs() < 2e-3, "{} {rankine}", k.weight);
            assert!((k.load / rankine - 1.0).abs() < 2e-3, "{} {rankine}", k.load);
            assert!((k.cohesion / (2.0 * rankine.sqrt()) - 1.0).abs() < 2e-3, "{}", k.cohesion);
        }
    }
}
