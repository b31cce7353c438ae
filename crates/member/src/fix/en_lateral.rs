//! What does a screw or bolt carry across its axis between two timbers, by EN 1995-1-1?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::en_withdrawal::GAMMA_JOINT;
use crate::given::given;

given! {
    /// A fastener in single shear between two timbers; mm, kg/m³, MPa, Nmm, N.
    EnSheared {
        /// Diameter (for a screw its effective one, 1.1 times the root).
        diameter,
        /// Timber thickness on the head side.
        board,
        /// Penetration on the point side.
        post,
        /// Characteristic density on the head side.
        density,
        /// Characteristic density on the point side.
        density_post,
        /// Angle of the force to the grain on the head side.
        angle,
        /// Angle of the force to the grain on the point side.
        angle_post,
        /// Tensile strength of the wire.
        steel,
        /// 1 with a hole drilled before, 0 without.
        drilled,
        /// Characteristic withdrawal capacity, for the rope effect.
        withdrawal,
        /// Most of the rope effect as a share of the rest: 0 none, 0.25 bolts, 1 screws.
        rope,
        /// Modification factor.
        kmod,
        /// Partial factor for joints.
        gamma_m,
    }
}

/// Capacities of the six ways to fail, N.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnShearModes<N> {
    /// Yield moment, Nmm.
    pub yield_moment: N,
    /// Embedment strength on the head side, MPa.
    pub embedment: N,
    /// (a) to (f) of equation 8.6.
    pub modes: [N; 6],
    /// The least.
    pub characteristic: N,
    /// Design capacity.
    pub design: N,
}

/// Embedment strength: equations 8.15, 8.16 (screws and nails to 6 mm without and with drilling), 8.31, 8.32 otherwise.
fn embedment<N: Number>(i: &EnSheared<N>, density: N, angle: N, symbol: &'static str) -> N {
    let n = N::constant;
    if i.drilled.value() == 0.0 {
        return (n(0.082) * density * i.diameter.powf(-0.3)).named(symbol, Unit::MPA);
    }
    let along = n(0.082) * (n(1.0) - n(0.01) * i.diameter) * density;
    if i.diameter.value() <= 6.0 || angle.value() == 0.0 {
        return along.named(symbol, Unit::MPA);
    }
    let k90 = (n(1.35) + n(0.015) * i.diameter).named("k₉₀", Unit::NONE);
    (along / (k90 * angle.sin().squared() + angle.cos().squared())).named(symbol, Unit::MPA)
}

/// Single shear between two timbers, all six modes.
///
/// # Source
/// EN 1995-1-1:2004+A1:2008, 8.2.2 equation 8.6 (a) to (f); embedment 8.3.1.1, 8.5.1.1; M_y,Rk = 0.3 f_u d^2.6 (8.30).
/// From memory.
/// # Symbols
/// d, t₁ head side, t₂ point side, f_h embedment, β ratio of embedments, r = t₂/t₁, M_y yield moment, F_ax withdrawal.
/// # Gives
/// Capacity of one fastener, N.
/// # Not for
/// Steel plates; several fasteners in a row along the grain (8.34).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// d 12, t 50 and 100, ρ 350, f_u 400: 6809 N by (d) (TI-09).
pub fn en_sheared<N: Number>(i: &EnSheared<N>) -> EnShearModes<N> {
    let n = N::constant;
    let my = (n(0.3) * i.steel * i.diameter.powf(2.6)).named("M_y,Rk", Unit::NMM);
    let h1 = embedment(i, i.density, i.angle, "f_h,1,k");
    let h2 = embedment(i, i.density_post, i.angle_post, "f_h,2,k");
    let beta = (h2 / h1).named("β", Unit::NONE);
    let (d, t1, t2) = (i.diameter, i.board, i.post);
    let r = (t2 / t1).named("r", Unit::NONE);
    let a = (h1 * t1 * d).named("F_a", Unit::N);
    let b = (h2 * t2 * d).named("F_b", Unit::N);
    let inside = beta + n(2.0) * beta.squared() * (n(1.0) + r + r.squared()) + beta.cubed() * r.squared();
    let c = a / (n(1.0) + beta) * (inside.sqrt() - beta * (n(1.0) + r));
    let bent = |t: N| my / (h1 * d * t.squared());
    let dd = n(1.05) * a / (n(2.0) + beta)
        * ((n(2.0) * beta * (n(1.0) + beta) + n(4.0) * beta * (n(2.0) + beta) * bent(t1)).sqrt() - beta);
    let two = n(1.0) + n(2.0) * beta;
    let e = n(1.05) * h1 * t2 * d / two
        * ((n(2.0) * beta.squared() * (n(1.0) + beta) + n(4.0) * beta * two * bent(t2)).sqrt() - beta);
    let f = n(1.15) * (n(2.0) * beta / (n(1.0) + beta)).sqrt() * (n(2.0) * my * h1 * d).sqrt();
    let roped = |mode: N, symbol: &'static str| {
        let plain = mode.named(symbol, Unit::N);
        if i.rope.value() == 0.0 || i.withdrawal.value() == 0.0 {
            return plain;
        }
        (plain + (i.withdrawal / 4.0).min(i.rope * plain)).named(symbol, Unit::N)
    };
    let modes = [a, b, roped(c, "F_c"), roped(dd, "F_d"), roped(e, "F_e"), roped(f, "F_f")];
    let least = modes.into_iter().fold(a, |least, m| if m.value() < least.value() { m } else { least });
    let characteristic = least.named("F_v,Rk", Unit::N);
    let design = (i.kmod * characteristic / i.gamma_m).named("F_v,Rd", Unit::N);
    EnShearModes { yield_moment: my, embedment: h1, modes, characteristic, design }
}

const fn input(key: &'static str, symbol: &'static str, words: &'static str, unit: Unit, most: f64) -> Input {
    Input::new(key, symbol, words, unit, Limits::ours(0.0, most))
}
const fn out(key: &'static str, words: &'static str) -> Output {
    Output { key, words, unit: Unit::N }
}

/// Working of [`en_sheared`].
pub static EN_SHEARED: Working = Working {
    name: "fix/lateral-en1995",
    title: "Single shear of a screw or bolt between two timbers by EN 1995-1-1, all six modes.",
    source: Source { work: "EN 1995-1-1:2004+A1:2008", place: "8.2.2 equation 8.6, 8.3.1.1, 8.5.1.1; from memory" },
    not_for: "steel plates; several fasteners in a row along the grain",
    inputs: &[
        Input::new("diameter", "d", "diameter; for a screw 1.1 times its root", Unit::MM, Limits::ours(2.0, 30.0)),
        Input::new("board", "t₁", "timber thickness on the head side", Unit::MM, Limits::ours(5.0, 500.0)),
        Input::new("post", "t₂", "penetration on the point side", Unit::MM, Limits::ours(5.0, 500.0)),
        Input::new("density", "ρ_1,k", "density on the head side", Unit::KG_M3, Limits::ours(200.0, 900.0)),
        Input::new("density_post", "ρ_2,k", "density on the point side", Unit::KG_M3, Limits::ours(200.0, 900.0)),
        input("angle", "α₁", "force to grain on the head side", Unit::DEG, 90.0).or(0.0),
        input("angle_post", "α₂", "force to grain on the point side", Unit::DEG, 90.0).or(0.0),
        Input::new("steel", "f_u", "tensile strength of the wire", Unit::MPA, Limits::ours(200.0, 1500.0)),
        input("drilled", "drilled", "1 with a drilled hole, 0 without", Unit::NONE, 1.0).or(1.0),
        input("withdrawal", "F_ax", "characteristic withdrawal capacity", Unit::N, 1e6).or(0.0),
        input("rope", "r_max", "most of the rope effect: 0 none, 0.25 bolts, 1 screws", Unit::NONE, 1.0).or(0.0),
        Input::new(
            "kmod",
            "k_mod",
            "modification factor for duration and moisture",
            Unit::NONE,
            Limits::author(0.5, 1.1),
        ),
        Input::new("gamma_m", "γ_M", "partial factor for joints", Unit::NONE, Limits::ours(1.0, 2.0)).or(GAMMA_JOINT),
    ],
    outputs: &[
        Output { key: "yield_moment", words: "yield moment", unit: Unit::NMM },
        Output { key: "embedment", words: "embedment strength on the head side", unit: Unit::MPA },
        out("a", "head side crushed"),
        out("b", "point side crushed"),
        out("c", "both crushed, fastener turned"),
        out("d", "fastener bent in the point side"),
        out("e", "fastener bent in the head side"),
        out("f", "fastener bent in both"),
        out("characteristic", "characteristic capacity"),
        out("design", "design capacity"),
    ],
    run: |g| {
        let m = en_sheared(&EnSheared::put(g)?);
        let [a, b, c, d, e, f] = m.modes;
        let all = [m.yield_moment, m.embedment, a, b, c, d, e, f, m.characteristic, m.design];
        Ok(all.into_iter().map(Found::One).collect())
    },
};
