//! What does a screw, nail or bolt carry across its axis between two timbers, by the US National Design Specification?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use crate::given::given;

given! {
    /// A dowel in single shear between two timbers; in, psi, lb.
    NdsSheared {
        /// Diameter (root diameter where the thread lies in the shear plane).
        diameter,
        /// Thickness of the side member.
        side,
        /// Bearing length in the main member.
        main,
        /// Specific gravity of the side member.
        gravity_side,
        /// Specific gravity of the main member.
        gravity_main,
        /// Bending yield strength.
        steel,
        /// Greatest angle of the force to the grain of either member.
        angle,
        /// Load duration.
        cd,
        /// Wet service.
        cm,
    }
}

/// Reference values of the six yield modes, lb.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NdsModes<N> {
    /// Bearing strength of the main member, psi.
    pub bearing_main: N,
    /// I_m, I_s, II, III_m, III_s, IV.
    pub modes: [N; 6],
    /// The least.
    pub reference: N,
    /// Allowable force.
    pub allowable: N,
}

/// Dowel bearing strength, NDS 12.3.3: 16 600 G^1.84 below 1/4 in; else 11 200 G along and 6100 G^1.45/√D across the grain,
/// between them by Hankinson.
fn bearing<N: Number>(gravity: N, i: &NdsSheared<N>, symbol: &'static str) -> N {
    let n = N::constant;
    if i.diameter.value() < 0.25 {
        return (n(16_600.0) * gravity.powf(1.84)).named(symbol, Unit::PSI);
    }
    let along = n(11_200.0) * gravity;
    if i.angle.value() == 0.0 {
        return along.named(symbol, Unit::PSI);
    }
    let across = n(6100.0) * gravity.powf(1.45) / i.diameter.sqrt();
    (along * across / (along * i.angle.sin().squared() + across * i.angle.cos().squared())).named(symbol, Unit::PSI)
}

/// Reduction terms R_d for modes I, II and III to IV, NDS Table 12.3.1B.
fn reductions<N: Number>(i: &NdsSheared<N>) -> [N; 3] {
    let d = i.diameter;
    if d.value() < 0.25 {
        let kd = if d.value() <= 0.17 { N::constant(2.2) } else { d * 10.0 + 0.5 };
        let kd = kd.named("K_D", Unit::NONE);
        return [kd, kd, kd];
    }
    let quarter_turn = std::f64::consts::FRAC_PI_2;
    let k = (i.angle / quarter_turn * 0.25 + 1.0).named("K_θ", Unit::NONE);
    [k * 4.0, k * 3.6, k * 3.2]
}

/// Single shear between two timbers, all six yield modes.
///
/// # Source
/// NDS 2018, 12.3.1, Tables 12.3.1A and 12.3.1B; dowel bearing 12.3.3.
/// # Symbols
/// D, l_s side thickness, l_m length in the main member, F_e bearing strengths, R_e and R_t their ratio and that of lengths.
/// # Gives
/// Reference value of one fastener and the allowable force, lb.
/// # Not for
/// Penetrations under 6 D (screws, nails) or 4 D (lag screws); end grain; rows of bolts (C_g).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 16d common nail, 1.5 in side member, G 0.5: mode IV, 141 lb (TI-06).
pub fn nds_sheared<N: Number>(i: &NdsSheared<N>) -> NdsModes<N> {
    let n = N::constant;
    let fem = bearing(i.gravity_main, i, "F_em");
    let fes = bearing(i.gravity_side, i, "F_es");
    let (d, ls, lm) = (i.diameter, i.side, i.main);
    let [r1, r2, r3] = reductions(i);
    let re = (fem / fes).named("R_e", Unit::NONE);
    let rt = (lm / ls).named("R_t", Unit::NONE);
    let root = re + n(2.0) * re.squared() * (n(1.0) + rt + rt.squared()) + rt.squared() * re.cubed();
    let k1 = ((root.sqrt() - re * (n(1.0) + rt)) / (n(1.0) + re)).named("k₁", Unit::NONE);
    let bent = |length: N| i.steel * d.squared() / (n(3.0) * fem * length.squared());
    let main_side = n(1.0) + n(2.0) * re;
    let k2 = ((n(2.0) * (n(1.0) + re) + n(2.0) * main_side * bent(lm)).sqrt() - 1.0).named("k₂", Unit::NONE);
    let k3 = ((n(2.0) * (n(1.0) + re) / re + n(2.0) * (n(2.0) + re) * bent(ls)).sqrt() - 1.0).named("k₃", Unit::NONE);
    let im = (d * lm * fem / r1).named("Z_Im", Unit::LB);
    let is = (d * ls * fes / r1).named("Z_Is", Unit::LB);
    let ii = (k1 * d * ls * fes / r2).named("Z_II", Unit::LB);
    let iiim = (k2 * d * lm * fem / (main_side * r3)).named("Z_IIIm", Unit::LB);
    let iiis = (k3 * d * ls * fem / ((n(2.0) + re) * r3)).named("Z_IIIs", Unit::LB);
    let iv = (d.squared() / r3 * (n(2.0) * fem * i.steel / (n(3.0) * (n(1.0) + re))).sqrt()).named("Z_IV", Unit::LB);
    let modes = [im, is, ii, iiim, iiis, iv];
    let least = modes.into_iter().fold(im, |least, m| if m.value() < least.value() { m } else { least });
    let reference = least.named("Z", Unit::LB);
    NdsModes { bearing_main: fem, modes, reference, allowable: (reference * i.cd * i.cm).named("Z'", Unit::LB) }
}

const fn input(key: &'static str, symbol: &'static str, words: &'static str, unit: Unit, range: (f64, f64)) -> Input {
    Input::new(key, symbol, words, unit, Limits::ours(range.0, range.1))
}
const fn out(key: &'static str, words: &'static str) -> Output {
    Output { key, words, unit: Unit::LB }
}

/// Working of [`nds_sheared`].
pub static NDS_SHEARED: Working = Working {
    name: "fix/lateral-nds",
    title: "Single shear of a screw, nail or bolt between two timbers by the NDS, all six modes.",
    source: Source {
        work: "National Design Specification for Wood Construction, 2018",
        place: "12.3.1, 12.3.3, Tables 12.3.1A and 12.3.1B",
    },
    not_for: "short penetrations, end grain, rows of bolts",
    inputs: &[
        input("diameter", "D", "diameter; root where the thread is sheared", Unit::INCH, (0.05, 1.0)),
        input("side", "l_s", "thickness of the side member", Unit::INCH, (0.1, 20.0)),
        input("main", "l_m", "bearing length in the main member", Unit::INCH, (0.1, 20.0)),
        input("gravity_side", "G_s", "specific gravity of the side member", Unit::NONE, (0.3, 0.8)),
        input("gravity_main", "G_m", "specific gravity of the main member", Unit::NONE, (0.3, 0.8)),
        input("steel", "F_yb", "bending yield strength", Unit::PSI, (30_000.0, 200_000.0)),
        input("angle", "θ", "greatest angle of the force to the grain", Unit::DEG, (0.0, 90.0)).or(0.0),
        input("cd", "C_D", "load duration factor", Unit::NONE, (0.9, 2.0)).or(1.0),
        input("cm", "C_M", "wet service factor", Unit::NONE, (0.2, 1.0)).or(1.0),
    ],
    outputs: &[
        Output { key: "bearing_main", words: "bearing strength of the main member", unit: Unit::PSI },
        out("im", "mode I, main member"),
        out("is", "mode I, side member"),
        out("ii", "mode II"),
        out("iiim", "mode III, main member"),
        out("iiis", "mode III, side member"),
        out("iv", "mode IV"),
        out("reference", "reference value, the least"),
        out("allowable", "allowable force"),
    ],
    run: |g| {
        let m = nds_sheared(&NdsSheared::put(g)?);
        let [im, is, ii, iiim, iiis, iv] = m.modes;
        let all = [m.bearing_main, im, is, ii, iiim, iiis, iv, m.reference, m.allowable];
        Ok(all.into_iter().map(Found::One).collect())
    },
};
