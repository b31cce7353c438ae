//! How much harder does wet ground push while rain flows through it to the drain behind the wall?

use groundhold_quantity::{Length, LineForce, WATER, math};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use crate::rows;
use crate::soil::Soil;

/// Where the water of a soaked backfill goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Flow {
    /// Nowhere: it stands to the ground, and the wall holds it too.
    Stands,
    /// To a drain up the whole back face, over ground that is tight.
    ToBackDrain,
    /// Straight down to a drain under the whole backfill, or along a slope of drain stone: no pressure anywhere.
    Down,
}

impl Flow {
    /// As a working spells it.
    pub fn key(self) -> &'static str {
        match self {
            Flow::Stands => "stands",
            Flow::ToBackDrain => "back-drain",
            Flow::Down => "down",
        }
    }
    fn of(key: &str) -> Option<Flow> {
        [Flow::Stands, Flow::ToBackDrain, Flow::Down].into_iter().find(|f| f.key() == key)
    }
}

/// Terms of the series; the next would change the pressure by less than a part in ten thousand of γ_w H.
const TERMS: usize = 60;

/// Pressure head over height at a place behind a drain on the whole back face, steady rain on soaked level ground, tight
/// below. x and z over the height, z up from the base.
///
/// # Source
/// Laplace's equation with no pressure on drain and ground and no flow through the base, by a Fourier series: Gray, "A
/// contribution to the analysis of seepage effects in backfills", Géotechnique 8(4) (1958), from memory; the series is
/// worked out by ourselves.
/// # Symbols
/// | x, z | distance from the drain, height above the base, over H | – | 0 ≤ z ≤ 1 |
/// # Gives
/// u/(γ_w H) = (1 − z) − Σ (2/k²) cos(k z) e^(−k x) with k = (2n − 1) π/2: nothing at the drain, hydrostatic far away.
/// # Not for
/// Soil more pervious sideways than down; a base that drains.
/// # Errors
/// None here.
/// # By hand
/// x = 1, z = 0: 1 − (0.8106 · 0.2079 + 0.0901 · 0.0090 + …) = 0.8306.
pub fn head_behind_drain(x: f64, z: f64) -> f64 {
    let mut held = 0.0;
    for n in 0..TERMS {
        let k = (2 * n + 1) as f64 * std::f64::consts::FRAC_PI_2;
        let fade = math::exp(-k * x);
        if fade < 1e-12 {
            break;
        }
        held += 2.0 / (k * k) * math::cos(k * z) * fade;
    }
    (1.0 - z - held).max(0.0)
}

/// Water force square to a plane through the heel at ρ, over γ_w H².
fn on_plane(flow: Flow, plane: f64) -> f64 {
    let sin = math::sin(plane);
    match flow {
        Flow::Down => 0.0,
        Flow::Stands => 0.5 / sin,
        Flow::ToBackDrain => behind_drain(1.0 / math::tan(plane)) / sin,
    }
}

/// Σ 2/k³ over k = π/2, 3π/2, …: 14 ζ(3)/π³.
const CUBES: f64 = 0.542_754_514_440_835_2;

/// [`head_behind_drain`] summed over the height along a plane x = a z from the heel: each term of the series is integrated
/// as it stands, and the part without an exponential is a constant.
fn behind_drain(a: f64) -> f64 {
    let mut waves = 0.0;
    for n in 0..TERMS {
        let k = (2 * n + 1) as f64 * std::f64::consts::FRAC_PI_2;
        let fade = math::exp(-a * k);
        if fade < 1e-12 {
            break;
        }
        let sign = if n % 2 == 0 { 1.0 } else { -1.0 };
        waves += sign * 2.0 / (k * k * k) * fade;
    }
    (0.5 - (a * CUBES + waves) / (1.0 + a * a)).max(0.0)
}

/// Thrust of one wedge with water on its plane and on the wall.
///
/// # Source
/// Coulomb's wedge (1776) with the water force U on the plane, as in Terzaghi, Theoretical Soil Mechanics (1943), and EM
/// 1110-2-2502 (1989), 3-13 (places from memory); triangle of forces worked out by ourselves.
/// # Symbols
/// | W, U, U_w | soaked weight, water force square to the plane, water force on the wall | kN/m | |
/// | ρ, φ, δ | plane above horizontal, friction in the soil, on the wall | angle | ρ > φ |
/// # Gives
/// Effective thrust P = (W sin(ρ − φ) + U sin φ − U_w cos(ρ − φ))/cos(ρ − φ − δ), in the direction of δ.
/// # Not for
/// Cohesion; sloping ground.
/// # Errors
/// None here.
/// # By hand
/// No water, ρ = 60°, φ = 30°, W = ½ · 20/tan 60°: 5.774 · 0.5/0.866 = 3.333 kN/m = ½ K_a γ.
fn thrust_of<N: Number>(weight: N, on_plane: N, on_wall: N, plane: N, phi: N, delta: N) -> N {
    let slip = plane - phi;
    let p = weight * slip.sin() + on_plane * phi.sin() - on_wall * slip.cos();
    (p / (slip - delta).cos()).named("P'", Unit::KN_M)
}

struct Case {
    height: f64,
    gamma_sat: f64,
    phi: f64,
    delta: f64,
    flow: Flow,
}

impl Case {
    fn weight(&self, plane: f64) -> f64 {
        0.5 * self.gamma_sat * self.height * self.height / math::tan(plane)
    }
    fn water_on_plane(&self, plane: f64) -> f64 {
        on_plane(self.flow, plane) * WATER.to_kn_per_m3() * self.height * self.height
    }
    fn water_on_wall(&self) -> f64 {
        if self.flow == Flow::Stands { 0.5 * WATER.to_kn_per_m3() * self.height * self.height } else { 0.0 }
    }
    fn thrust(&self, plane: f64) -> f64 {
        let (w, u, on_wall) = (self.weight(plane), self.water_on_plane(plane), self.water_on_wall());
        thrust_of(w, u, on_wall, plane, self.phi, self.delta)
    }
    /// The worst plane: every degree, then a golden section around the worst.
    fn worst(&self) -> f64 {
        let (least, most) = (self.phi.to_degrees() + 0.5, 89.0);
        let at = |deg: f64| self.thrust(deg.to_radians());
        let steps = (most - least).ceil() as usize;
        let mut best = least;
        for i in 0..=steps {
            let deg = least + (most - least) * i as f64 / steps as f64;
            if at(deg) > at(best) {
                best = deg;
            }
        }
        let (mut a, mut b) = ((best - 1.2).max(least), (best + 1.2).min(most));
        const GOLDEN: f64 = 0.618_033_988_749_894_8;
        for _ in 0..34 {
            let (x, y) = (b - GOLDEN * (b - a), a + GOLDEN * (b - a));
            if at(x) >= at(y) { b = y } else { a = x }
        }
        (0.5 * (a + b)).to_radians()
    }
}

/// The push of a soaked backfill while water flows to its drain.
#[derive(Debug, Clone, PartialEq)]
pub struct Soaked {
    /// Horizontal force of the soil per metre run, effective.
    pub soil: LineForce,
    /// Force of water on the wall itself.
    pub water: LineForce,
    /// Slip plane above horizontal, in degrees.
    pub plane_deg: f64,
    /// How it was worked out.
    pub trace: Trace,
}

/// The push of a backfill of level ground, soaked to the top by rain, on a vertical wall.
///
/// # Errors
/// δ > φ, or a value outside the working's limits.
pub fn soaked(soil: &Soil, height: Length, delta: groundhold_quantity::Angle, flow: Flow) -> Result<Soaked> {
    let given = vec![
        height.to_m().into(),
        soil.unit_weight_saturated.to_kn_per_m3().into(),
        soil.phi.to_deg().into(),
        delta.to_deg().into(),
        flow.key().into(),
    ];
    rows::check(&SOAKED, &given)?;
    let case = Case {
        height: height.to_m(),
        gamma_sat: soil.unit_weight_saturated.to_kn_per_m3(),
        phi: rows::radians(soil.phi),
        delta: rows::radians(delta),
        flow,
    };
    if case.delta > case.phi + 1e-9 {
        return Err(Refused::NoAnswer { working: SOAKED.name, why: ROUGH.into() });
    }
    let plane = case.worst();
    Ok(Soaked {
        soil: LineForce::kn_per_m(case.thrust(plane) * math::cos(case.delta)),
        water: LineForce::kn_per_m(case.water_on_wall()),
        plane_deg: plane.to_degrees(),
        trace: Trace::new(&SOAKED, given),
    })
}

const ROUGH: &str = "wall friction δ is larger than the soil's friction angle φ";

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let (h, sat, phi, delta) = (g.one("height")?, g.one("gamma_sat")?, g.one("phi")?, g.one("delta")?);
    let word = g.word("flow")?;
    let flow = Flow::of(word)
        .ok_or_else(|| g.no_answer(format!("found flow `{word}`, expected `stands`, `back-drain` or `down`")))?;
    if delta.value() > phi.value() + 1e-9 {
        return Err(g.no_answer(ROUGH));
    }
    let case = Case { height: h.value(), gamma_sat: sat.value(), phi: phi.value(), delta: delta.value(), flow };
    let plane = case.worst();
    let sheet = g.sheet();
    sheet.remark("worst of the planes through the heel; water on the plane from the flow to the drain");
    let (w, u) = (case.weight(plane), case.water_on_plane(plane));
    let rho = sheet.put("ρ", plane.to_degrees(), Unit::DEG);
    let on_plane = sheet.put("U", u, Unit::KN_M);
    let on_wall = sheet.put("U_w", case.water_on_wall(), Unit::KN_M);
    let p = thrust_of(sheet.put("W", w, Unit::KN_M), on_plane, on_wall, rho, phi, delta);
    let soil = (p * delta.cos()).named("P'_h", Unit::KN_M);
    let all = (soil + on_wall).named("P_h", Unit::KN_M);
    Ok([soil, on_wall, all, rho, on_plane].map(Found::One).into())
}

/// Push of soaked ground.
pub static SOAKED: Working = Working {
    name: "earth-pressure/soaked",
    title: "How hard does level ground push that rain has soaked to the top, by where its water can go?",
    source: Source {
        work: "Coulomb, 1776, with water on the plane; flow to a drain on the back: Gray, A contribution to the analysis of seepage effects in backfills, Géotechnique 8(4), 1958",
        place: "from memory; the Fourier series and the triangle of forces are worked out by ourselves",
    },
    not_for: "sloping ground, cohesion, soil far more pervious sideways than down",
    inputs: &[
        rows::HEIGHT,
        rows::GAMMA_SAT,
        Input { limits: Limits::ours(5.0, 50.0), ..rows::PHI },
        rows::DELTA,
        Input::new("flow", "", "`stands`, `back-drain` or `down`", Unit::NONE, Limits::ours(0.0, 0.0)),
    ],
    outputs: &[
        Output { key: "soil", words: "horizontal force of the soil", unit: Unit::KN_M },
        Output { key: "water", words: "force of water on the wall", unit: Unit::KN_M },
        Output { key: "all", words: "both", unit: Unit::KN_M },
        Output { key: "plane", words: "slip plane above horizontal", unit: Unit::DEG },
        Output { key: "on_plane", words: "water force on the slip plane", unit: Unit::KN_M },
    ],
    run,
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_drain_takes_all_pressure_at_its_face_and_none_far_away() {
        for z in [0.0, 0.3, 0.7, 1.0] {
            assert!(head_behind_drain(0.0, z).abs() < 0.01, "{z}");
            assert!((head_behind_drain(8.0, z) - (1.0 - z)).abs() < 1e-4);
        }
        assert!((head_behind_drain(1.0, 0.0) - 0.8306).abs() < 1e-3);
    }

    #[test]
    fn the_sum_along_a_plane_is_the_head_summed_in_steps() {
        for a in [0.2, 0.7, 1.5] {
            let n = 2000;
            let at = |i: usize| (i as f64 + 0.5) / n as f64;
            let sum: f64 = (0..n).map(|i| head_behind_drain(a * at(i), at(i))).sum::<f64>() / n as f64;
            assert!((sum - behind_drain(a)).abs() < 2e-4, "{a}: {sum} {}", behind_drain(a));
        }
        assert!(behind_drain(0.0).abs() < 1e-6);
    }

    #[test]
    fn between_drain_and_standing_water_the_head_obeys_laplace() {
        let (x, z, d) = (0.6, 0.4, 1e-3);
        let u = head_behind_drain;
        let sum = u(x + d, z) + u(x - d, z) + u(x, z + d) + u(x, z - d) - 4.0 * u(x, z);
        assert!(sum.abs() / (d * d) < 1e-3, "{}", sum / (d * d));
    }
}
