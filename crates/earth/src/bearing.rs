//! How much can the ground under a base carry?

use groundhold_quantity::{Length, LineForce, Pressure, math};
use groundhold_working::{Found, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Value, Working};

use crate::rows;
use crate::soil::Soil;

/// By whom N_γ is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Author {
    /// (N_q − 1) tan 1.4φ, 1963.
    Meyerhof,
    /// 1.5 (N_q − 1) tan φ, 1970.
    Hansen,
    /// 2 (N_q + 1) tan φ, 1973.
    Vesic,
    /// 2 (N_q − 1) tan φ for a rough base, EN 1997-1 Annex D.
    En1997,
}

/// N_q and N_c.
///
/// # Source
/// Prandtl (1921) and Reissner (1924); as in EN 1997-1:2004 Annex D.4.
/// # Symbols
/// | φ | effective friction angle | angle | 0°–50° (ours) |
/// # Gives
/// (N_q, N_c); with φ = 0: 1 and π + 2.
/// # Not for
/// Punching in loose soil.
/// # Errors
/// None.
/// # By hand
/// φ = 30°: 18.40 and 30.14 (table BC-T1 in `reference/bearing.toml`).
pub fn n_q_and_n_c<N: Number>(phi: N) -> (N, N) {
    let tan = phi.tan();
    let n_q =
        ((tan * std::f64::consts::PI).exp() * (N::degrees(45.0) + phi / 2.0).tan().squared()).named("N_q", Unit::NONE);
    let n_c = if phi.value() == 0.0 { N::constant(std::f64::consts::PI + 2.0) } else { (n_q - 1.0) / tan };
    (n_q, n_c.named("N_c", Unit::NONE))
}

/// N_γ after one of its authors; sources at [`Author`], as in Das, Principles of Foundation Engineering, chapter 3.
pub fn n_gamma<N: Number>(author: Author, phi: N, n_q: N) -> N {
    let n = match author {
        Author::Meyerhof => (n_q - 1.0) * (phi * 1.4).tan(),
        Author::Hansen => (n_q - 1.0) * phi.tan() * 1.5,
        Author::Vesic => (n_q + 1.0) * phi.tan() * 2.0,
        Author::En1997 => (n_q - 1.0) * phi.tan() * 2.0,
    };
    n.named("N_γ", Unit::NONE)
}

/// What a strip base stands in.
struct Strip<N> {
    /// Effective width B′ = B − 2e.
    width: N,
    /// Overburden at the underside, the smaller side.
    q: N,
    gamma: N,
    phi: N,
    c: N,
    vertical: N,
    horizontal: N,
}

/// Drained resistance of a strip base under an inclined load.
///
/// # Source
/// EN 1997-1:2004 Annex D.4 (formulas from memory), level base, strip (s = 1, m = 2).
/// # Symbols
/// | B′, q, γ, φ, c | effective width, overburden, weight and strength below | m, kPa, kN/m³, angle, kPa | |
/// | V, H | load on the base | kN/m | H < V + B′ c cot φ |
/// # Gives
/// (i_q, i_c, i_γ, R/B′, R): inclination factors, pressure at failure in kPa, force per metre run.
/// # Not for
/// Undrained clay, layers, a base near a slope in front.
/// # Errors
/// None here; callers refuse a load that slides.
/// # By hand
/// Reference case BC-06.
fn annex_d<N: Number>(s: &Strip<N>) -> (N, N, N, N, N) {
    let (n_q, n_c) = n_q_and_n_c(s.phi);
    let n_g = n_gamma(Author::En1997, s.phi, n_q);
    let one = N::constant(1.0);
    let tan = s.phi.tan();
    let held = if s.c.value() == 0.0 { s.vertical } else { s.vertical + s.width * s.c / tan };
    let share = one - s.horizontal / held;
    let i_q = share.squared().named("i_q", Unit::NONE);
    let i_g = share.cubed().named("i_γ", Unit::NONE);
    let i_c = (i_q - (one - i_q) / (n_c * tan)).named("i_c", Unit::NONE);
    let pressure = s.c * n_c * i_c + s.q * n_q * i_q + s.gamma * s.width * n_g * i_g * 0.5;
    let pressure = pressure.named("R/B'", Unit::KPA);
    (i_q, i_c, i_g, pressure, (pressure * s.width).named("R", Unit::KN_M))
}

const SLIDES: &str =
    "the horizontal load is as large as friction and cohesion under the base can hold; it slides before it sinks";

/// Drained resistance of a strip base after EN 1997-1 Annex D.4, unfactored: hand in a design soil for a design value.
///
/// # Errors
/// A load that slides, a soil without friction, or a value outside the limits.
pub fn strip(
    soil: &Soil,
    effective_width: Length,
    overburden: Pressure,
    vertical: LineForce,
    horizontal: LineForce,
) -> Result<(LineForce, Trace)> {
    let given: Vec<Value> = vec![
        effective_width.to_m().into(),
        overburden.to_kpa().into(),
        soil.unit_weight.to_kn_per_m3().into(),
        soil.phi.to_deg().into(),
        soil.cohesion.to_kpa().into(),
        vertical.to_kn_per_m().into(),
        horizontal.to_kn_per_m().into(),
    ];
    rows::check(&EN1997_D4, &given)?;
    let s = Strip {
        width: effective_width.to_m(),
        q: overburden.to_kpa(),
        gamma: soil.unit_weight.to_kn_per_m3(),
        phi: rows::radians(soil.phi),
        c: soil.cohesion.to_kpa(),
        vertical: vertical.to_kn_per_m(),
        horizontal: horizontal.to_kn_per_m(),
    };
    if slides(&s) {
        return Err(Refused::NoAnswer { working: EN1997_D4.name, why: SLIDES.into() });
    }
    Ok((LineForce::kn_per_m(annex_d(&s).4), Trace::new(&EN1997_D4, given)))
}

fn slides<N: Number>(s: &Strip<N>) -> bool {
    let held = s.vertical.value() + s.width.value() * s.c.value() / math::tan(s.phi.value());
    s.horizontal.value() >= held
}

/// Strip base after EN 1997-1.
pub static EN1997_D4: Working = Working {
    name: "bearing/en1997-d4",
    title: "How much can drained ground carry under a strip base with an inclined load?",
    source: Source { work: "EN 1997-1:2004, Geotechnical design, general rules", place: "Annex D.4, from memory" },
    not_for: "undrained clay, layers, a base near a slope in front",
    inputs: &[
        WIDTH,
        OVERBURDEN,
        rows::GAMMA,
        Input { limits: Limits::ours(1.0, 50.0), ..rows::PHI },
        rows::COHESION,
        Input::new("v", "V", "vertical load", Unit::KN_M, Limits::ours(0.01, 1e5)),
        Input::new("h", "H", "horizontal load", Unit::KN_M, Limits::ours(0.0, 1e5)).or(0.0),
    ],
    outputs: &[
        Output { key: "iq", words: "inclination factor on overburden", unit: Unit::NONE },
        Output { key: "ic", words: "inclination factor on cohesion", unit: Unit::NONE },
        Output { key: "ig", words: "inclination factor on weight", unit: Unit::NONE },
        Output { key: "pressure", words: "pressure at failure over the effective width", unit: Unit::KPA },
        Output { key: "r", words: "resistance", unit: Unit::KN_M },
    ],
    run: |g| {
        let s = Strip {
            width: g.one("width")?,
            q: g.one("q")?,
            gamma: g.one("gamma")?,
            phi: g.one("phi")?,
            c: g.one("c")?,
            vertical: g.one("v")?,
            horizontal: g.one("h")?,
        };
        if slides(&s) {
            return Err(g.no_answer(SLIDES));
        }
        let (q, c, gamma, pressure, r) = annex_d(&s);
        Ok([q, c, gamma, pressure, r].map(Found::One).into())
    },
};

const WIDTH: Input = Input::new("width", "B'", "effective width, B − 2e", Unit::M, Limits::ours(0.01, 50.0));
const OVERBURDEN: Input =
    Input::new("q", "q", "overburden beside the underside, the smaller", Unit::KPA, Limits::ours(0.0, 1000.0)).or(0.0);
const DEPTH: Input = Input::new("depth", "D", "depth of the underside", Unit::M, Limits::ours(0.0, 20.0));

/// The bearing factors.
pub static FACTORS: Working = Working {
    name: "bearing/factors",
    title: "Which bearing capacity factors belong to a friction angle?",
    source: Source {
        work: "Prandtl, 1921; Reissner, 1924; N_γ: Meyerhof, 1963; Hansen, 1970; Vesic, 1973; EN 1997-1:2004 Annex D.4",
        place: "as in Das, Principles of Foundation Engineering, chapter 3",
    },
    not_for: "punching in loose soil",
    inputs: &[rows::PHI],
    outputs: &[
        Output { key: "nc", words: "N_c", unit: Unit::NONE },
        Output { key: "nq", words: "N_q", unit: Unit::NONE },
        Output { key: "ng_meyerhof", words: "N_γ after Meyerhof", unit: Unit::NONE },
        Output { key: "ng_hansen", words: "N_γ after Hansen", unit: Unit::NONE },
        Output { key: "ng_vesic", words: "N_γ after Vesic", unit: Unit::NONE },
        Output { key: "ng_en1997", words: "N_γ after EN 1997-1", unit: Unit::NONE },
    ],
    run: |g| {
        let phi = g.one("phi")?;
        let (q, c) = n_q_and_n_c(phi);
        let each = [Author::Meyerhof, Author::Hansen, Author::Vesic, Author::En1997].map(|a| n_gamma(a, phi, q));
        Ok([c, q].into_iter().chain(each).map(Found::One).collect())
    },
};

/// Strip base with Vesic's N_γ and Hansen's depth factors.
pub static VESIC_STRIP: Working = Working {
    name: "bearing/vesic-strip",
    title: "How much can the ground carry under a strip base, eccentric and inclined load counted?",
    source: Source {
        work: "Vesic, Analysis of ultimate loads of shallow foundations, J. Soil Mech. Found. Div. ASCE 99(SM1), 1973; depth: Hansen, 1970; inclination: Meyerhof, 1963",
        place: "as in Das, Principles of Foundation Engineering, 5th ed., Ex. 3.4 and 7th ed., Ex. 8.1",
    },
    not_for: "φ = 0; depth over width above 1",
    inputs: &[
        WIDTH,
        DEPTH,
        Input::new(
            "depth_width",
            "B_d",
            "width in the depth factor: B in one edition, B′ in another",
            Unit::M,
            Limits::ours(0.01, 50.0),
        ),
        rows::GAMMA,
        Input { limits: Limits::ours(1.0, 50.0), ..rows::PHI },
        rows::COHESION,
        Input::new("psi", "ψ", "load from vertical", Unit::DEG, Limits::ours(0.0, 50.0)).or(0.0),
    ],
    outputs: &[
        Output { key: "fqd", words: "depth factor on overburden", unit: Unit::NONE },
        Output { key: "fcd", words: "depth factor on cohesion", unit: Unit::NONE },
        Output { key: "fci", words: "inclination factor on cohesion and overburden", unit: Unit::NONE },
        Output { key: "fgi", words: "inclination factor on weight", unit: Unit::NONE },
        Output { key: "qu", words: "pressure at failure", unit: Unit::KPA },
        Output { key: "r", words: "load at failure", unit: Unit::KN_M },
    ],
    run: |g| {
        let (b, d, gamma) = (g.one("width")?, g.one("depth")?, g.one("gamma")?);
        let (phi, c, psi) = (g.one("phi")?, g.one("c")?, g.one("psi")?);
        let one = groundhold_working::Shown::constant(1.0);
        let (n_q, n_c) = n_q_and_n_c(phi);
        let n_g = n_gamma(Author::Vesic, phi, n_q);
        let ratio = d / g.one("depth_width")?;
        let fqd = (phi.tan() * 2.0 * (one - phi.sin()).squared() * ratio + 1.0).named("F_qd", Unit::NONE);
        let fcd = (fqd - (one - fqd) / (n_c * phi.tan())).named("F_cd", Unit::NONE);
        let fci = (one - psi / groundhold_working::Shown::degrees(90.0)).squared().named("F_ci", Unit::NONE);
        let fgi = rows::not_below_zero(one - psi / phi).squared().named("F_γi", Unit::NONE);
        let q = (gamma * d).named("q", Unit::KPA);
        let qu = (c * n_c * fcd * fci + q * n_q * fqd * fci + gamma * b * n_g * fgi * 0.5).named("q_u", Unit::KPA);
        Ok([fqd, fcd, fci, fgi, qu, (qu * b).named("Q", Unit::KN_M)].map(Found::One).into())
    },
};

/// Rectangular base after Meyerhof.
pub static MEYERHOF: Working = Working {
    name: "bearing/meyerhof",
    title: "How much can the ground carry under a rectangular base?",
    source: Source {
        work: "Meyerhof, Some recent research on the bearing capacity of foundations, Canadian Geotechnical J. 1(1), 1963",
        place: "as in Das, Principles of Geotechnical Engineering, Ex. 16.4; depth factor on the effective width",
    },
    not_for: "φ under 10°, inclined load",
    inputs: &[
        WIDTH,
        Input::new("length", "L'", "effective length", Unit::M, Limits::ours(0.01, 1000.0)),
        DEPTH,
        rows::GAMMA,
        Input { limits: Limits::author(10.0, 50.0), ..rows::PHI },
        rows::COHESION,
    ],
    outputs: &[
        Output { key: "lambda_s", words: "shape factor", unit: Unit::NONE },
        Output { key: "lambda_d", words: "depth factor", unit: Unit::NONE },
        Output { key: "qu", words: "pressure at failure", unit: Unit::KPA },
        Output { key: "load", words: "load at failure", unit: Unit::KN },
    ],
    run: |g| {
        let (b, l, d, gamma) = (g.one("width")?, g.one("length")?, g.one("depth")?, g.one("gamma")?);
        let (phi, c) = (g.one("phi")?, g.one("c")?);
        let (n_q, n_c) = n_q_and_n_c(phi);
        let n_g = n_gamma(Author::Meyerhof, phi, n_q);
        let kp = crate::pressure::rankine::kp(phi);
        let (shape, deep) = (kp * b / l, kp.sqrt() * d / b);
        let s = (shape * 0.1 + 1.0).named("λ_s", Unit::NONE);
        let dd = (deep * 0.1 + 1.0).named("λ_d", Unit::NONE);
        let cohesive = c * n_c * (shape * 0.2 + 1.0) * (deep * 0.2 + 1.0);
        let qu = (cohesive + gamma * d * n_q * s * dd + gamma * b * n_g * s * dd * 0.5).named("q_u", Unit::KPA);
        Ok([s, dd, qu, (qu * b * l).named("Q", Unit::KN)].map(Found::One).into())
    },
};

/// φ, N_c, N_q, N_γ after Terzaghi, general shear: Das, Principles of Foundation Engineering, Table 3.1. Rows 20° and 35°
/// seen in print, the others from memory.
const TERZAGHI: &[(f64, f64, f64, f64)] = &[
    (0.0, 5.7, 1.0, 0.0),
    (5.0, 7.34, 1.64, 0.14),
    (10.0, 9.61, 2.69, 0.56),
    (15.0, 12.86, 4.45, 1.52),
    (20.0, 17.69, 7.44, 3.64),
    (25.0, 25.13, 12.72, 8.34),
    (30.0, 37.16, 22.46, 19.13),
    (35.0, 57.75, 41.44, 45.41),
    (40.0, 95.66, 81.27, 115.31),
];

fn terzaghi(phi_deg: f64) -> Option<(f64, f64, f64)> {
    TERZAGHI.windows(2).find(|w| w[0].0 <= phi_deg && phi_deg <= w[1].0).map(|w| {
        let t = (phi_deg - w[0].0) / (w[1].0 - w[0].0);
        let between = |a: f64, b: f64| a + (b - a) * t;
        (between(w[0].1, w[1].1), between(w[0].2, w[1].2), between(w[0].3, w[1].3))
    })
}

/// Square base after Terzaghi.
pub static TERZAGHI_SQUARE: Working = Working {
    name: "bearing/terzaghi-square",
    title: "How much can the ground carry under a square pad, and how much with a factor?",
    source: Source {
        work: "Terzaghi, Theoretical Soil Mechanics, 1943: q_u = 1.3 c N_c + q N_q + 0.4 γ B N_γ",
        place: "factors from Das, Principles of Foundation Engineering, Table 3.1, straight between its rows",
    },
    not_for: "inclined or eccentric load",
    inputs: &[
        Input::new("width", "B", "side of the pad", Unit::M, Limits::ours(0.01, 50.0)),
        DEPTH,
        rows::GAMMA,
        Input { limits: Limits::author(0.0, 40.0), ..rows::PHI },
        rows::COHESION,
        Input::new("factor", "F", "factor wanted", Unit::NONE, Limits::ours(1.0, 10.0)).or(3.0),
    ],
    outputs: &[
        Output { key: "qu", words: "pressure at failure", unit: Unit::KPA },
        Output { key: "qall", words: "pressure with the factor", unit: Unit::KPA },
        Output { key: "load", words: "load with the factor", unit: Unit::KN },
    ],
    run: |g| {
        let (b, d, gamma) = (g.one("width")?, g.one("depth")?, g.one("gamma")?);
        let (phi, c) = (g.one("phi")?, g.one("c")?);
        let (n_c, n_q, n_g) = terzaghi(phi.value().to_degrees().clamp(0.0, 40.0))
            .ok_or_else(|| g.no_answer("the friction angle is not in the table"))?;
        let put = |symbol, v| g.sheet().put(symbol, v, Unit::NONE);
        let (n_c, n_q, n_g) = (put("N_c", n_c), put("N_q", n_q), put("N_γ", n_g));
        let qu = (c * n_c * 1.3 + gamma * d * n_q + gamma * b * n_g * 0.4).named("q_u", Unit::KPA);
        let allowed = (qu / g.one("factor")?).named("q_all", Unit::KPA);
        Ok([qu, allowed, (allowed * b.squared()).named("Q_all", Unit::KN)].map(Found::One).into())
    },
};
