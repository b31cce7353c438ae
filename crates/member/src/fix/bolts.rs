//! What does a bolt carry that goes through three timbers, and which bolt of a group carries most?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use super::en_withdrawal::GAMMA_JOINT;
use crate::given::{gives, takes};

takes! {
    /// A bolt through a middle timber and two side timbers; mm, kg/m³, MPa, N.
    EnDouble {
        diameter: "d", "diameter", MM, Limits::author(6.0, 30.0);
        side: "t₁", "thickness of each side timber", MM, Limits::ours(10.0, 300.0);
        middle: "t₂", "thickness of the middle timber", MM, Limits::ours(10.0, 400.0);
        density: "ρ_1,k", "density of the side timbers", KG_M3, Limits::ours(200.0, 900.0);
        density_middle: "ρ_2,k", "density of the middle timber", KG_M3, Limits::ours(200.0, 900.0);
        angle: "α₁", "force to grain in the side timbers", DEG, Limits::ours(0.0, 90.0), 0.0;
        angle_middle: "α₂", "force to grain in the middle timber", DEG, Limits::ours(0.0, 90.0), 0.0;
        steel: "f_u", "tensile strength of the bolt", MPA, Limits::ours(200.0, 1000.0), 400.0;
        kmod: "k_mod", "modification factor for duration and moisture", NONE, Limits::author(0.5, 1.1);
        gamma_m: "γ_M", "partial factor for joints", NONE, Limits::ours(1.0, 2.0), GAMMA_JOINT;
    }
}
gives! {
    /// A bolt in two shear planes.
    EnDoubleModes {
        side_crushed: N, "(g) side timbers crushed, per plane";
        middle_crushed: N, "(h) middle timber crushed, per plane";
        bent_once: N, "(j) bolt bent in the middle timber, per plane";
        bent_twice: N, "(k) bolt bent in all, per plane";
        characteristic: N, "characteristic capacity of the bolt, both planes";
        design: N, "design capacity of the bolt, both planes";
    }
}
takes! {
    /// A bolt through a middle and two side members; in, psi, lb.
    NdsDouble {
        diameter: "D", "diameter", INCH, Limits::author(0.25, 1.0);
        side: "l_s", "thickness of each side member", INCH, Limits::ours(0.5, 12.0);
        middle: "l_m", "thickness of the middle member", INCH, Limits::ours(0.5, 16.0);
        gravity_side: "G_s", "specific gravity of the side members", NONE, Limits::ours(0.3, 0.8);
        gravity_middle: "G_m", "specific gravity of the middle member", NONE, Limits::ours(0.3, 0.8);
        angle_side: "θ_s", "force to grain in the side members", DEG, Limits::ours(0.0, 90.0), 0.0;
        angle_middle: "θ_m", "force to grain in the middle member", DEG, Limits::ours(0.0, 90.0), 0.0;
        steel: "F_yb", "bending yield strength", PSI, Limits::ours(30_000.0, 130_000.0), 45_000.0;
        cd: "C_D", "load duration factor", NONE, Limits::ours(0.9, 2.0), 1.0;
        cm: "C_M", "wet service factor", NONE, Limits::ours(0.4, 1.0), 1.0;
    }
}
gives! {
    /// A bolt in two shear planes by the NDS.
    NdsDoubleModes {
        im: LB, "mode I, middle member";
        is: LB, "mode I, side members";
        iiis: LB, "mode III, side members";
        iv: LB, "mode IV";
        reference: LB, "reference value, the least";
        allowable: LB, "allowable force";
    }
}
takes! {
    /// Bolts in columns and rows under a force beside their middle; kN, mm.
    BoltGroup {
        force: "V", "force along the columns", KN, Limits::ours(0.0, 1000.0);
        off: "e", "from the middle of the group to the force", MM, Limits::ours(0.0, 5000.0), 0.0;
        columns: "m", "columns, across the force", NONE, Limits::ours(1.0, 10.0);
        rows: "n", "bolts in a column", NONE, Limits::ours(1.0, 10.0);
        across: "s_x", "distance of columns", MM, Limits::ours(0.0, 1000.0), 0.0;
        along: "s_y", "distance of bolts in a column", MM, Limits::ours(0.0, 1000.0), 0.0;
        diameter: "d", "diameter", MM, Limits::ours(4.0, 40.0);
    }
}
gives! {
    /// Bolts in a group.
    BoltShare {
        polar: MM2, "sum of the squares of the distances from the middle";
        most: KN, "force on the bolt that carries most";
        effective: NONE, "bolts of a column that count (force along the grain)";
    }
}

/// Embedment of a bolt, equations 8.31 to 8.33 (softwood).
fn embedment<N: Number>(d: N, density: N, angle: N, symbol: &'static str) -> N {
    let n = N::constant;
    let along = n(0.082) * (n(1.0) - n(0.01) * d) * density;
    if angle.value() == 0.0 {
        return along.named(symbol, Unit::MPA);
    }
    let k90 = (n(1.35) + n(0.015) * d).named("k₉₀", Unit::NONE);
    (along / (k90 * angle.sin().squared() + angle.cos().squared())).named(symbol, Unit::MPA)
}

/// A bolt in two shear planes.
///
/// # Source
/// EN 1995-1-1:2004+A1:2008, 8.2.2 equation 8.7 (g) to (k); 8.5.1.1; M_y 0.3 f_u d^2.6 (8.30). From memory. Without the rope effect.
/// # Symbols
/// d, t₁ side, t₂ middle, f_h, β, M_y.
/// # Gives
/// Modes per shear plane, capacity of the bolt in both.
/// # Not for
/// Steel plates; several bolts in a row along the grain: see `fix/bolt-group`.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// Reference case BO-01.
pub fn en_double<N: Number>(i: &EnDouble<N>) -> EnDoubleModes<N> {
    let n = N::constant;
    let d = i.diameter;
    let my = (n(0.3) * i.steel * d.powf(2.6)).named("M_y,Rk", Unit::NMM);
    let h1 = embedment(d, i.density, i.angle, "f_h,1,k");
    let h2 = embedment(d, i.density_middle, i.angle_middle, "f_h,2,k");
    let beta = (h2 / h1).named("β", Unit::NONE);
    let side_crushed = (h1 * i.side * d).named("F_g", Unit::N);
    let middle_crushed = (n(0.5) * h2 * i.middle * d).named("F_h", Unit::N);
    let bend = my / (h1 * d * i.side.squared());
    let root = (n(2.0) * beta * (n(1.0) + beta) + n(4.0) * beta * (n(2.0) + beta) * bend).sqrt();
    let bent_once = (n(1.05) * side_crushed / (n(2.0) + beta) * (root - beta)).named("F_j", Unit::N);
    let bent_twice =
        (n(1.15) * (n(2.0) * beta / (n(1.0) + beta)).sqrt() * (n(2.0) * my * h1 * d).sqrt()).named("F_k", Unit::N);
    let least = side_crushed.min(middle_crushed).min(bent_once).min(bent_twice);
    let characteristic = (n(2.0) * least).named("F_v,Rk", Unit::N);
    let design = (i.kmod * characteristic / i.gamma_m).named("F_v,Rd", Unit::N);
    EnDoubleModes { side_crushed, middle_crushed, bent_once, bent_twice, characteristic, design }
}

/// Dowel bearing strength from a quarter of an inch, NDS 12.3.3 and 12.3.4.
fn bearing<N: Number>(gravity: N, d: N, angle: N, symbol: &'static str) -> N {
    let n = N::constant;
    let along = n(11_200.0) * gravity;
    if angle.value() == 0.0 {
        return along.named(symbol, Unit::PSI);
    }
    let across = n(6100.0) * gravity.powf(1.45) / d.sqrt();
    (along * across / (along * angle.sin().squared() + across * angle.cos().squared())).named(symbol, Unit::PSI)
}

/// A bolt in two shear planes.
///
/// # Source
/// NDS 2018, Table 12.3.1A, double shear; R_d 4, 3.2 times K_θ of Table 12.3.1B.
/// # Symbols
/// D, l_s, l_m, F_e bearing strengths, R_e, k₃.
/// # Gives
/// Reference value of one bolt and the allowable force, lb.
/// # Not for
/// Rows of bolts (C_g); close edges (C_Δ).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// Half inch, 1½ in sides and middle, G 0.50: mode I of the middle, 1050 lb (BO-02).
pub fn nds_double<N: Number>(i: &NdsDouble<N>) -> NdsDoubleModes<N> {
    let n = N::constant;
    let d = i.diameter;
    let fem = bearing(i.gravity_middle, d, i.angle_middle, "F_em");
    let fes = bearing(i.gravity_side, d, i.angle_side, "F_es");
    let most = if i.angle_side.value() < i.angle_middle.value() { i.angle_middle } else { i.angle_side };
    let turned = (n(1.0) + n(0.25) * most / std::f64::consts::FRAC_PI_2).named("K_θ", Unit::NONE);
    let re = (fem / fes).named("R_e", Unit::NONE);
    let bend = i.steel * d.squared() / (n(3.0) * fem * i.side.squared());
    let k3 = ((n(2.0) * (n(1.0) + re) / re + n(2.0) * (n(2.0) + re) * bend).sqrt() - 1.0).named("k₃", Unit::NONE);
    let im = (d * i.middle * fem / (n(4.0) * turned)).named("Z_Im", Unit::LB);
    let is = (n(2.0) * d * i.side * fes / (n(4.0) * turned)).named("Z_Is", Unit::LB);
    let iiis = (n(2.0) * k3 * d * i.side * fem / ((n(2.0) + re) * n(3.2) * turned)).named("Z_IIIs", Unit::LB);
    let iv = (n(2.0) * d.squared() / (n(3.2) * turned) * (n(2.0) * fem * i.steel / (n(3.0) * (n(1.0) + re))).sqrt())
        .named("Z_IV", Unit::LB);
    let reference = im.min(is).min(iiis).min(iv).named("Z", Unit::LB);
    NdsDoubleModes { im, is, iiis, iv, reference, allowable: (reference * i.cd * i.cm).named("Z'", Unit::LB) }
}

/// Force on the bolt of a group that carries most.
///
/// # Source
/// Statics of a rigid plate on equal springs; bolts that count, EN 1995-1-1:2004, 8.5.1.1(4), equation 8.34:
/// n_ef = n^0.9 (a₁/13d)^0.25, at most n.
/// # Symbols
/// V, e, m columns, n bolts in each, s_x, s_y.
/// # Gives
/// Σr², the greatest force, n_ef of a column along the grain.
/// # Not for
/// Slotted holes.
/// # Errors
/// The working refuses an offset force on one bolt, which turns.
/// # By hand
/// 2 × 2 at 100 mm, V 4, e 150: Σr² 20 000, 1 + 0.6·50/20 = 2.5 and 1.5: 2.915 kN (BO-03).
pub fn bolt_group<N: Number>(i: &BoltGroup<N>) -> BoltShare<N> {
    let n = N::constant;
    let count = i.columns * i.rows;
    // Σ of squares of an even row of k at distance s about its middle: s² k (k² − 1)/12.
    let even = |k: N, s: N| s.squared() * k * (k.squared() - 1.0) / 12.0;
    let polar = (i.rows * even(i.columns, i.across) + i.columns * even(i.rows, i.along)).named("Σr²", Unit::MM2);
    let plain = (i.force / count).named("V/mn", Unit::KN);
    let most = if i.off.value() == 0.0 {
        plain
    } else {
        let turn = i.force * i.off / polar;
        let (x, y) = (i.across * (i.columns - 1.0) / 2.0, i.along * (i.rows - 1.0) / 2.0);
        ((plain + turn * x).squared() + (turn * y).squared()).sqrt()
    };
    let effective = if i.rows.value() <= 1.0 || i.along.value() == 0.0 {
        i.rows
    } else {
        (i.rows.powf(0.9) * (i.along / (n(13.0) * i.diameter)).powf(0.25)).min(i.rows)
    };
    BoltShare { polar, most: most.named("F_max", Unit::KN), effective: effective.named("n_ef", Unit::NONE) }
}

/// Working of [`en_double`].
pub static EN_DOUBLE: Working = Working {
    name: "fix/bolt-double-en1995",
    title: "A bolt in two shear planes by EN 1995-1-1.",
    source: Source { work: "EN 1995-1-1:2004+A1:2008", place: "8.2.2 equation 8.7, 8.5.1.1; from memory" },
    not_for: "steel plates; rows of bolts (fix/bolt-group)",
    inputs: EnDouble::INPUTS,
    outputs: EnDoubleModes::OUTPUTS,
    run: |g| en_double(&EnDouble::put(g)?).found(),
};

/// Working of [`nds_double`].
pub static NDS_DOUBLE: Working = Working {
    name: "fix/bolt-double-nds",
    title: "A bolt in two shear planes by the NDS.",
    source: Source {
        work: "National Design Specification for Wood Construction, 2018",
        place: "12.3.1, 12.3.3, Tables 12.3.1A and 12.3.1B",
    },
    not_for: "rows of bolts (C_g); close edges (C_Δ)",
    inputs: NdsDouble::INPUTS,
    outputs: NdsDoubleModes::OUTPUTS,
    run: |g| nds_double(&NdsDouble::put(g)?).found(),
};

/// Working of [`bolt_group`].
pub static BOLT_GROUP: Working = Working {
    name: "fix/bolt-group",
    title: "Force on the bolt of a group that carries most.",
    source: Source { work: "statics; EN 1995-1-1:2004", place: "rigid plate on equal springs; equation 8.34" },
    not_for: "slotted holes",
    inputs: BoltGroup::INPUTS,
    outputs: BoltShare::OUTPUTS,
    run: |g| {
        let share = bolt_group(&BoltGroup::put(g)?);
        if !share.most.value().is_finite() {
            return Err(
                g.no_answer("one bolt, or bolts without distance, cannot hold a force beside their middle: they turn")
            );
        }
        share.found()
    },
};
