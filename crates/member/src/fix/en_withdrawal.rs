//! What holds a screw that is pulled along its axis, by EN 1995-1-1?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use crate::given::given;

given! {
    /// Screws pulled out of the timber that holds their points; mm, kg/m³.
    EnPulled {
        /// Outer thread diameter.
        diameter,
        /// Threaded length in the timber that holds the point.
        grip,
        /// Characteristic density.
        density,
        /// Angle between screw and grain.
        angle,
        /// Screws acting together.
        screws,
        /// Modification factor for duration and moisture.
        kmod,
        /// Partial factor for joints.
        gamma_m,
    }
}
given! {
    /// Screws whose withdrawal strength a maker declares; mm, kg/m³, MPa.
    EnDeclared {
        /// Outer thread diameter.
        diameter,
        /// Threaded length in the timber that holds the point.
        grip,
        /// Declared strength.
        strength,
        /// Density for which it is declared.
        declared_density,
        /// Characteristic density here.
        density,
        /// Angle between screw and grain.
        angle,
        /// Screws acting together.
        screws,
        /// Modification factor for duration and moisture.
        kmod,
        /// Partial factor for joints.
        gamma_m,
    }
}
given! {
    /// Heads pulled through the timber under them; mm, kg/m³, MPa.
    EnHead {
        /// Diameter of the head or washer.
        head,
        /// Declared pull-through strength.
        strength,
        /// Density for which it is declared.
        declared_density,
        /// Characteristic density here.
        density,
        /// Screws acting together.
        screws,
        /// Modification factor for duration and moisture.
        kmod,
        /// Partial factor for joints.
        gamma_m,
    }
}

/// Capacity of screws along their axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnAxial<N> {
    /// Characteristic strength that was used, MPa.
    pub strength: N,
    /// Characteristic capacity of all screws, N.
    pub characteristic: N,
    /// Design capacity of all screws, N.
    pub design: N,
}

/// Screws that act together: n^0.9, equation 8.41.
fn together<N: Number>(screws: N) -> N {
    screws.powf(0.9).named("n_ef", Unit::NONE)
}
fn across<N: Number>(angle: N) -> N {
    let n = N::constant;
    n(1.2) * angle.cos().squared() + angle.sin().squared()
}
fn axial<N: Number>(strength: N, characteristic: N, kmod: N, gamma_m: N) -> EnAxial<N> {
    let characteristic = characteristic.named("F_ax,Rk", Unit::N);
    EnAxial { strength, characteristic, design: (kmod * characteristic / gamma_m).named("F_ax,Rd", Unit::N) }
}

/// Withdrawal of screws 6 to 12 mm thick, root 0.6 to 0.75 of that.
///
/// # Source
/// EN 1995-1-1:2004+A1:2008, 8.7.2, equations 8.38, 8.39, 8.41 (from memory).
/// # Symbols
/// d thread diameter, l_ef grip, ρ_k density, α angle to the grain, n screws.
/// # Gives
/// f_ax,k = 0.52 d^−0.5 l_ef^−0.1 ρ_k^0.8; F_ax = n^0.9 f_ax d l_ef k_d/(1.2 cos²α + sin²α), k_d = min(d/8, 1); N.
/// # Not for
/// Screws in end grain (α below 30°); grips under 6 d; other screws: take what the maker declares.
/// # Errors
/// The working refuses grips under 6 d.
/// # By hand
/// d 8, l_ef 60, ρ 350: f_ax 13.24 MPa, F 6355 N (TI-08).
pub fn en_pulled<N: Number>(i: &EnPulled<N>) -> EnAxial<N> {
    let n = N::constant;
    let strength =
        (n(0.52) * i.diameter.powf(-0.5) * i.grip.powf(-0.1) * i.density.powf(0.8)).named("f_ax,k", Unit::MPA);
    let kd = (i.diameter / 8.0).min(N::constant(1.0)).named("k_d", Unit::NONE);
    let all = together(i.screws) * strength * i.diameter * i.grip * kd / across(i.angle);
    axial(strength, all, i.kmod, i.gamma_m)
}

/// Withdrawal of screws whose strength is declared.
///
/// # Source
/// EN 1995-1-1:2004+A1:2008, 8.7.2, equation 8.40a (from memory).
/// # Symbols
/// As [`en_pulled`]; ρ_a density of the declaration.
/// # Gives
/// F_ax = n^0.9 f_ax d l_ef (ρ_k/ρ_a)^0.8/(1.2 cos²α + sin²α), N.
/// # Not for
/// Values that are not declared to EN 14592.
/// # Errors
/// The working refuses grips under 6 d.
/// # By hand
/// f_ax 15 at 350, d 5, l 40, ρ 350: 15·5·40 = 3000 N.
pub fn en_declared<N: Number>(i: &EnDeclared<N>) -> EnAxial<N> {
    let denser = (i.density / i.declared_density).powf(0.8);
    let all = together(i.screws) * i.strength * i.diameter * i.grip / across(i.angle) * denser;
    axial(i.strength, all, i.kmod, i.gamma_m)
}

/// Heads pulled through.
///
/// # Source
/// EN 1995-1-1:2004+A1:2008, 8.7.2, equation 8.40b (from memory).
/// # Symbols
/// d_h head diameter, f_head declared strength, ρ_a its density.
/// # Gives
/// F = n^0.9 f_head d_h² (ρ_k/ρ_a)^0.8, N.
/// # Not for
/// Heads whose strength nobody declares.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// f_head 10 at 350, d_h 12, ρ 350: 1440 N.
pub fn en_head<N: Number>(i: &EnHead<N>) -> EnAxial<N> {
    let denser = (i.density / i.declared_density).powf(0.8);
    let all = together(i.screws) * i.strength * i.head.squared() * denser;
    axial(i.strength, all, i.kmod, i.gamma_m)
}

/// Partial factor for joints, EN 1995-1-1 Table 2.3.
pub const GAMMA_JOINT: f64 = 1.3;

const WORK: &str = "EN 1995-1-1:2004+A1:2008";
const DENSITY: Input =
    Input::new("density", "ρ_k", "characteristic density of the timber", Unit::KG_M3, Limits::ours(200.0, 900.0));
const DECLARED: Input = Input::new(
    "declared_density",
    "ρ_a",
    "density for which the strength is declared",
    Unit::KG_M3,
    Limits::ours(200.0, 900.0),
);
const ANGLE: Input =
    Input::new("angle", "α", "angle between screw and grain", Unit::DEG, Limits::author(30.0, 90.0)).or(90.0);
const SCREWS: Input = Input::new("screws", "n", "screws acting together", Unit::NONE, Limits::ours(1.0, 100.0)).or(1.0);
const KMOD: Input =
    Input::new("kmod", "k_mod", "modification factor for duration and moisture", Unit::NONE, Limits::author(0.5, 1.1));
const GAMMA: Input =
    Input::new("gamma_m", "γ_M", "partial factor for joints", Unit::NONE, Limits::ours(1.0, 2.0)).or(GAMMA_JOINT);
const GRIP: Input = Input::new(
    "grip",
    "l_ef",
    "threaded length in the timber that holds the point",
    Unit::MM,
    Limits::ours(1.0, 1000.0),
);
const STRENGTH: Input =
    Input::new("strength", "f_ax", "declared characteristic strength", Unit::MPA, Limits::ours(1.0, 100.0));
const OUTPUTS: &[Output] = &[
    Output { key: "strength", words: "characteristic strength", unit: Unit::MPA },
    Output { key: "characteristic", words: "characteristic capacity of all screws", unit: Unit::N },
    Output { key: "design", words: "design capacity of all screws", unit: Unit::N },
];

fn found(a: EnAxial<groundhold_working::Shown<'_>>) -> Vec<Found<'_>> {
    [a.strength, a.characteristic, a.design].into_iter().map(Found::One).collect()
}

/// Refusal text for a grip under 6 d; `None` where it is enough.
pub(super) fn too_short(grip_mm: f64, diameter_mm: f64) -> Option<String> {
    (grip_mm < 6.0 * diameter_mm).then(|| {
        format!(
            "the thread grips {grip_mm:.0} mm; EN 1995-1-1 8.7.2 wants at least 6 diameters, {:.0} mm",
            6.0 * diameter_mm
        )
    })
}

/// Working of [`en_pulled`].
pub static EN_PULLED: Working = Working {
    name: "fix/withdrawal-en1995",
    title: "Withdrawal of screws by EN 1995-1-1.",
    source: Source { work: WORK, place: "8.7.2, equations 8.38, 8.39, 8.41; from memory" },
    not_for: "screws outside 6 to 12 mm (fix/withdrawal-declared-en1995), end grain, grips under 6 diameters",
    inputs: &[
        Input::new("diameter", "d", "outer thread diameter", Unit::MM, Limits::author(6.0, 12.0)),
        GRIP,
        DENSITY,
        ANGLE,
        SCREWS,
        KMOD,
        GAMMA,
    ],
    outputs: OUTPUTS,
    run: |g| {
        let i = EnPulled::put(g)?;
        match too_short(i.grip.value(), i.diameter.value()) {
            Some(why) => Err(g.no_answer(why)),
            None => Ok(found(en_pulled(&i))),
        }
    },
};

/// Working of [`en_declared`].
pub static EN_DECLARED: Working = Working {
    name: "fix/withdrawal-declared-en1995",
    title: "Withdrawal of screws whose strength the maker declares, by EN 1995-1-1.",
    source: Source { work: WORK, place: "8.7.2, equation 8.40a; from memory" },
    not_for: "strengths that are not declared to EN 14592; grips under 6 diameters",
    inputs: &[
        Input::new("diameter", "d", "outer thread diameter", Unit::MM, Limits::ours(2.0, 20.0)),
        GRIP,
        STRENGTH,
        DECLARED,
        DENSITY,
        ANGLE,
        SCREWS,
        KMOD,
        GAMMA,
    ],
    outputs: OUTPUTS,
    run: |g| {
        let i = EnDeclared::put(g)?;
        match too_short(i.grip.value(), i.diameter.value()) {
            Some(why) => Err(g.no_answer(why)),
            None => Ok(found(en_declared(&i))),
        }
    },
};

/// Working of [`en_head`].
pub static EN_HEAD: Working = Working {
    name: "fix/pull-through-en1995",
    title: "Screw heads pulled through the timber under them, by EN 1995-1-1.",
    source: Source { work: WORK, place: "8.7.2, equation 8.40b; from memory" },
    not_for: "heads whose strength nobody declares",
    inputs: &[
        Input::new("head", "d_h", "diameter of the head or washer", Unit::MM, Limits::ours(3.0, 80.0)),
        STRENGTH,
        DECLARED,
        DENSITY,
        SCREWS,
        KMOD,
        GAMMA,
    ],
    outputs: OUTPUTS,
    run: |g| Ok(found(en_head(&EnHead::put(g)?))),
};
