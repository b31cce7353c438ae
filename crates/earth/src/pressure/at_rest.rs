//! How hard does soil push on a wall that cannot move?

use groundhold_quantity::{Length, LineForce, WATER};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Value, Working};

use super::{Backfill, Spread, WaterLevel};
use crate::rows;

/// At-rest coefficient of soil that once carried more than today.
///
/// # Source
/// Jaky (1944), K₀ = 1 − sin φ; with overconsolidation Mayne and Kulhawy, J. Geotech. Eng. Div. ASCE 108(GT6) (1982):
/// K₀ = (1 − sin φ) OCR^sin φ.
/// # Symbols
/// | φ, OCR | friction angle, overconsolidation ratio | angle, – | OCR 1–30 (ours) |
/// # Gives
/// K₀; not above the passive coefficient K_p.
/// # Not for
/// Sloping ground; swelling clay.
/// # Errors
/// None here.
/// # By hand
/// φ = 30°, OCR = 2: 0.5 · 2^0.5 = 0.7071 (reference case EP-12).
pub fn k0<N: Number>(phi: N, ocr: N) -> N {
    let normal = (N::constant(1.0) - phi.sin()).named("K_0nc", Unit::NONE);
    if ocr.value() == 1.0 {
        return normal;
    }
    let k = (normal * (ocr.ln() * phi.sin()).exp()).named("K_0", Unit::NONE);
    k.min(super::rankine::kp(phi))
}

pub(crate) const OCR: Input =
    Input::new("ocr", "OCR", "overconsolidation ratio", Unit::NONE, Limits::ours(1.0, 30.0)).or(1.0);

/// At-rest coefficient.
pub static AT_REST: Working = Working {
    name: "earth-pressure/at-rest",
    title: "Which share of its weight does soil at rest push sideways?",
    source: Source {
        work: "Jaky, The coefficient of earth pressure at rest, J. Soc. Hungarian Architects and Engineers, 1944; Mayne and Kulhawy, J. Geotech. Eng. Div. ASCE 108(GT6), 1982",
        place: "K₀ = (1 − sin φ) OCR^sin φ",
    },
    not_for: "sloping ground, swelling clay",
    inputs: &[rows::PHI, OCR],
    outputs: &[Output { key: "k0", words: "at-rest coefficient", unit: Unit::NONE }],
    run: |g| Ok(vec![Found::One(k0(g.one("phi")?, g.one("ocr")?))]),
};

/// At-rest coefficient under sloping ground, along the slope.
///
/// # Source
/// EN 1997-1:2004, 9.5.2(4): K_0β = K₀ (1 + sin β), the pressure parallel to the ground (from memory).
/// # Symbols
/// | K₀, β | at-rest coefficient of level ground, slope rising away | –, angle | 0 ≤ β ≤ φ |
/// # Gives
/// K_0β; with β = 0 it is K₀.
/// # Not for
/// Ground that falls away, which is taken as level.
/// # Errors
/// None here; callers refuse β > φ.
/// # By hand
/// φ = 30°, β = 20°: 0.5 · 1.342 = 0.671 (reference case AR-02).
pub fn k0_slope<N: Number>(k0: N, slope: N) -> N {
    if slope.value() <= 0.0 {
        return k0;
    }
    (k0 * (slope.sin() + 1.0)).named("K_0β", Unit::NONE)
}

/// What a wall that cannot move feels.
#[derive(Debug, Clone, PartialEq)]
pub struct Resting {
    /// Coefficient along the ground's slope.
    pub coefficient: f64,
    /// Horizontal force per metre run.
    pub horizontal: LineForce,
    /// Its height above the base.
    pub arm: Length,
    /// Horizontal pressure of soil, load and water together.
    pub spread: Spread,
    /// How it was worked out.
    pub trace: Trace,
}

/// The push of a backfill on a wall that cannot move: soil, the load on all the ground, water. Its strips are not counted:
/// add [`super::surcharge::STRIP`] or [`super::heap`].
///
/// # Errors
/// Ground steeper than φ, or a value outside the working's limits.
pub fn at_rest(backfill: &Backfill, ocr: f64) -> Result<Resting> {
    let b = backfill;
    let water = match b.water {
        WaterLevel::Drained => Length::ZERO,
        WaterLevel::At(h) => h.max(Length::ZERO).min(b.height),
    };
    let given: Vec<Value> = vec![
        b.height.to_m().into(),
        b.soil.unit_weight.to_kn_per_m3().into(),
        b.soil.unit_weight_saturated.to_kn_per_m3().into(),
        b.soil.phi.to_deg().into(),
        ocr.into(),
        b.slope.to_angle().to_deg().into(),
        b.surcharge.to_kpa().into(),
        water.to_m().into(),
    ];
    rows::check(&AT_REST_WALL, &given)?;
    let (phi, slope) = (rows::radians(b.soil.phi), rows::radians(b.slope.to_angle()));
    if slope > phi + 1e-9 {
        return Err(super::rankine::steep(AT_REST_WALL.name, slope, phi));
    }
    let w = wall(&Rest {
        height: b.height.to_m(),
        gamma: b.soil.unit_weight.to_kn_per_m3(),
        gamma_sat: b.soil.unit_weight_saturated.to_kn_per_m3(),
        phi,
        ocr,
        slope,
        q: b.surcharge.to_kpa(),
        water: water.to_m(),
    });
    Ok(Resting {
        coefficient: w.k,
        horizontal: LineForce::kn_per_m(w.force),
        arm: Length::m(w.arm),
        spread: Spread::of(&w.depths, &w.pressures),
        trace: Trace::new(&AT_REST_WALL, given),
    })
}

struct Rest<N> {
    height: N,
    gamma: N,
    gamma_sat: N,
    phi: N,
    ocr: N,
    slope: N,
    q: N,
    water: N,
}

struct RestingWall<N> {
    k: N,
    force: N,
    arm: N,
    depths: Vec<N>,
    pressures: Vec<N>,
}

fn wall<N: Number>(r: &Rest<N>) -> RestingWall<N> {
    let k = k0_slope(k0(r.phi, r.ocr), r.slope);
    // The pressure is parallel to the ground; what pushes the wall is its horizontal part.
    let k_h = if r.slope.value() > 0.0 { (k * r.slope.cos()).named("K_h", Unit::NONE) } else { k };
    let wet = r.water.value() > 0.0;
    let dry = if wet { (r.height - r.water).named("z_w", Unit::M) } else { r.height };
    let top = (k_h * r.q).named("σ_0", Unit::KPA);
    let middle = (k_h * (r.q + r.gamma * dry)).named("σ_w", Unit::KPA);
    let (mut depths, mut pressures) = (vec![N::constant(0.0), dry], vec![top, middle]);
    let mut force = ((top + middle) * dry / 2.0).named("P_1", Unit::KN_M);
    let mut moment = force * (r.height - dry) + (top * 2.0 + middle) * dry.squared() / 6.0;
    if wet {
        let submerged = (r.gamma_sat - WATER.to_kn_per_m3()).named("γ'", Unit::KN_M3);
        let base = middle + (k_h * submerged + WATER.to_kn_per_m3()) * r.water;
        let base = base.named("σ_H", Unit::KPA);
        depths.push(r.height);
        pressures.push(base);
        force = (force + (middle + base) * r.water / 2.0).named("P_0", Unit::KN_M);
        moment = moment + (middle * 2.0 + base) * r.water.squared() / 6.0;
    }
    let arm = if force.value() > 0.0 { moment / force } else { N::constant(0.0) };
    RestingWall { k, force, arm: arm.named("a", Unit::M), depths, pressures }
}

/// At-rest push with its distribution.
pub static AT_REST_WALL: Working = Working {
    name: "earth-pressure/at-rest-wall",
    title: "How hard does soil push on a wall that cannot move, and how is it spread, with a slope, a load and water?",
    source: Source {
        work: "Jaky, 1944; Mayne and Kulhawy, J. Geotech. Eng. Div. ASCE 108(GT6), 1982; slope: EN 1997-1:2004",
        place: "K₀ = (1 − sin φ) OCR^sin φ; 9.5.2(4): K_0β = K₀ (1 + sin β), from memory",
    },
    not_for: "swelling clay, compaction (add it), loads on parts of the ground, ground falling away, which is taken as level",
    inputs: &[
        rows::HEIGHT,
        rows::GAMMA,
        rows::GAMMA_SAT,
        rows::PHI,
        OCR,
        rows::SLOPE,
        rows::SURCHARGE,
        Input::new("water", "h_w", "height of water above the base", Unit::M, Limits::ours(0.0, 30.0)).or(0.0),
    ],
    outputs: &[
        Output { key: "k", words: "coefficient along the slope", unit: Unit::NONE },
        Output { key: "p", words: "horizontal force", unit: Unit::KN_M },
        Output { key: "arm", words: "its height above the base", unit: Unit::M },
        Output { key: "depths", words: "depths", unit: Unit::M },
        Output { key: "sigma", words: "horizontal pressures there", unit: Unit::KPA },
    ],
    run: |g| {
        let r = Rest {
            height: g.one("height")?,
            gamma: g.one("gamma")?,
            gamma_sat: g.one("gamma_sat")?,
            phi: g.one("phi")?,
            ocr: g.one("ocr")?,
            slope: g.one("alpha")?,
            q: g.one("q")?,
            water: g.one("water")?,
        };
        if r.slope.value() > r.phi.value() + 1e-9 {
            return Err(super::rankine::steep("earth-pressure/at-rest-wall", r.slope.value(), r.phi.value()));
        }
        if r.water.value() > r.height.value() {
            return Err(g.no_answer("the water stands above the ground; put the rest in as a load"));
        }
        let w = wall(&r);
        Ok(vec![
            Found::One(w.k),
            Found::One(w.force),
            Found::One(w.arm),
            Found::Many(w.depths),
            Found::Many(w.pressures),
        ])
    },
};
