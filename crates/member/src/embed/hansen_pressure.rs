//! With which pressure does soil with friction and cohesion resist a post at a depth? After Brinch Hansen.

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::limits;
use crate::given::given;

given! {
    /// Soil at a depth beside a post; kPa, kN/m³, m.
    HansenSoil {
        /// Depth below the top of the soil that is counted on.
        depth,
        /// Bearing width.
        width,
        /// Unit weight, effective below water.
        unit_weight,
        /// Friction angle; 0 for undrained clay.
        phi,
        /// Cohesion; the undrained strength where φ is 0.
        cohesion,
    }
}
/// Factors of the ultimate lateral pressure and the pressure itself at a depth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HansenFactors<N> {
    /// For overburden at the surface and at great depth.
    pub kq0: N,
    /// For overburden at great depth.
    pub kq_inf: N,
    /// For cohesion at the surface.
    pub kc0: N,
    /// For cohesion at great depth.
    pub kc_inf: N,
    /// For overburden at this depth.
    pub kq: N,
    /// For cohesion at this depth.
    pub kc: N,
    /// Ultimate pressure, kPa.
    pub pressure: N,
}

/// Below this friction angle (radians) the soil counts as having none; the formulas divide by its tangent.
const NO_FRICTION: f64 = 1e-6;

/// What depends on the friction angle alone.
#[derive(Clone, Copy)]
pub(super) struct Ends<N> {
    kq0: N,
    kq_inf: N,
    kc0: N,
    kc_inf: N,
    aq: N,
    ac: N,
}

impl<N: Number> Ends<N> {
    pub(super) fn of(phi: N) -> Ends<N> {
        let n = N::constant;
        let up = (N::degrees(45.0) + phi / 2.0).sin();
        let toward = |k0: N, k_inf: N| k0 / (k_inf - k0);
        if phi.value() < NO_FRICTION {
            let pi = std::f64::consts::PI;
            let kc0 = N::constant(1.0 + pi / 2.0).named("K_c⁰", Unit::NONE);
            let kc_inf = N::constant((2.0 + pi) * 1.58).named("K_c^∞", Unit::NONE);
            let zero = N::constant(0.0);
            let ac = (toward(kc0, kc_inf) * n(2.0) * up).named("α_c", Unit::NONE);
            return Ends { kq0: zero, kq_inf: zero, kc0, kc_inf, aq: zero, ac };
        }
        let (kq0, kq_inf, kc0, kc_inf) = limits_of(phi);
        let s = phi.sin();
        let aq = (toward(kq0, kq_inf) * (n(1.0) - s) * s / up).named("α_q", Unit::NONE);
        let ac = (toward(kc0, kc_inf) * n(2.0) * up).named("α_c", Unit::NONE);
        Ends { kq0, kq_inf, kc0, kc_inf, aq, ac }
    }
    /// For overburden and for cohesion: the factor at the surface, at great depth, and how fast it goes from one to the
    /// other with depth over width.
    pub(super) fn blends(&self) -> [(N, N, N); 2] {
        [(self.kq0, self.kq_inf, self.aq), (self.kc0, self.kc_inf, self.ac)]
    }
    /// K_q and K_c at a depth over width.
    pub(super) fn at(&self, ratio: N) -> (N, N) {
        let blend = |k0: N, k_inf: N, a: N| (k0 + k_inf * a * ratio) / (a * ratio + 1.0);
        let kq = if self.kq0.value() == 0.0 { self.kq0 } else { blend(self.kq0, self.kq_inf, self.aq) };
        (kq.named("K_q", Unit::NONE), blend(self.kc0, self.kc_inf, self.ac).named("K_c", Unit::NONE))
    }
}

/// K_q⁰, K_q^∞, K_c⁰, K_c^∞ of soil with friction.
fn limits_of<N: Number>(phi: N) -> (N, N, N, N) {
    let n = N::constant;
    let pi = std::f64::consts::PI;
    let (t, c) = (phi.tan(), phi.cos());
    let up = (N::degrees(45.0) + phi / 2.0).tan();
    let down = (N::degrees(45.0) - phi / 2.0).tan();
    let rise = (((n(pi / 2.0) + phi) * t).exp() * c * up).named("k₁", Unit::NONE);
    let fall = ((-((n(pi / 2.0) - phi) * t)).exp() * c * down).named("k₂", Unit::NONE);
    let kq0 = (rise - fall).named("K_q⁰", Unit::NONE);
    let kc0 = ((rise - 1.0) / t).named("K_c⁰", Unit::NONE);
    let nc = (((n(pi) * t).exp() * up.squared() - 1.0) / t).named("N_c", Unit::NONE);
    let kc_inf = (nc * (n(1.58) + n(4.09) * t.powf(4.0))).named("K_c^∞", Unit::NONE);
    let kq_inf = (kc_inf * (n(1.0) - phi.sin()) * t).named("K_q^∞", Unit::NONE);
    (kq0, kq_inf, kc0, kc_inf)
}

/// Ultimate lateral pressure of soil on a post at a depth.
///
/// # Source
/// Brinch Hansen, The Ultimate Resistance of Rigid Piles against Transversal Forces, Danish Geotechnical Institute,
/// Bulletin 12 (1961). Formulas from memory; they meet the published limits K_c⁰ = 2.57 and K_c^∞ = 8.14 at φ = 0.
/// # Symbols
/// γz overburden, c cohesion, z depth, b width, ζ = z/b, K factors between surface (⁰) and great depth (∞).
/// # Gives
/// e_u = γ z K_q + c K_c in kPa, and the factors.
/// # Not for
/// Ground with a slope (apply the reduction); layers: take the weakest.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// φ 30°, z/b = 1: K_q = 5.99, K_c = 16.86 (reference cases PO-T2).
pub fn hansen_pressure<N: Number>(i: &HansenSoil<N>) -> HansenFactors<N> {
    let ends = Ends::of(i.phi);
    let (kq, kc) = ends.at((i.depth / i.width).named("ζ", Unit::NONE));
    let pressure = (i.unit_weight * i.depth * kq + i.cohesion * kc).named("e_u", Unit::KPA);
    let Ends { kq0, kq_inf, kc0, kc_inf, .. } = ends;
    HansenFactors { kq0, kq_inf, kc0, kc_inf, kq, kc, pressure }
}

pub(super) const SOURCE: Source = Source {
    work: "Brinch Hansen, The Ultimate Resistance of Rigid Piles against Transversal Forces, Danish Geotechnical \
           Institute, Bulletin 12, 1961",
    place: "earth pressure coefficients K_q and K_c; from memory",
};
pub(super) const PHI: Input =
    Input::new("phi", "φ", "friction angle, 0 for undrained clay", Unit::DEG, Limits::ours(0.0, 45.0));
pub(super) const COHESION: Input =
    Input::new("cohesion", "c", "cohesion, or undrained strength where φ is 0", Unit::KPA, Limits::ours(0.0, 1000.0))
        .or(0.0);
const fn ratio(key: &'static str, words: &'static str) -> Output {
    Output { key, words, unit: Unit::NONE }
}

/// Working of [`hansen_pressure`].
pub static HANSEN_PRESSURE: Working = Working {
    name: "embed/brinch-hansen-pressure",
    title: "Ultimate lateral pressure of soil with friction and cohesion on a post (Brinch Hansen).",
    source: SOURCE,
    not_for: "ground with a slope",
    inputs: &[
        Input::new("depth", "z", "depth below the top of the soil counted on", Unit::M, Limits::ours(0.0, 30.0)),
        limits::WIDTH,
        limits::UNIT_WEIGHT,
        PHI,
        COHESION,
    ],
    outputs: &[
        ratio("kq0", "factor for overburden at the surface"),
        ratio("kq_inf", "factor for overburden at great depth"),
        ratio("kc0", "factor for cohesion at the surface"),
        ratio("kc_inf", "factor for cohesion at great depth"),
        ratio("kq", "factor for overburden at this depth"),
        ratio("kc", "factor for cohesion at this depth"),
        Output { key: "pressure", words: "ultimate lateral pressure", unit: Unit::KPA },
    ],
    run: |g| {
        let f = hansen_pressure(&HansenSoil::put(g)?);
        Ok([f.kq0, f.kq_inf, f.kc0, f.kc_inf, f.kq, f.kc, f.pressure].into_iter().map(Found::One).collect())
    },
};
