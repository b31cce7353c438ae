//! What does concrete without steel carry: a mass wall's foot, a thrown-in lean footing?

use groundhold_quantity::{Length, LineForce, Moment, Pressure};
use groundhold_working::{Limits, Number, Result, Source, Unit, Working};

use super::Rules;
use crate::{
    Row,
    given::{gives, takes},
};

takes! {
    /// A metre of plain concrete by EN 1992-1-1; kNm/m, kN/m, mm, MPa.
    PlainEn {
        moment: "M_Ed", "design moment per metre", KNM, Limits::ours(0.0, 10_000.0);
        axial: "N_Ed", "least design compression per metre", KN, Limits::ours(0.0, 10_000.0), 0.0;
        thickness: "h", "thickness, of sound concrete", MM, Limits::ours(50.0, 3000.0);
        strength: "f_ck", "characteristic cylinder strength", MPA, Limits::ours(8.0, 50.0);
        alpha: "α_ct,pl", "factor on the tensile strength of plain concrete", NONE, Limits::author(0.8, 0.8), 0.8;
        gamma_c: "γ_C", "partial factor of concrete", NONE, Limits::ours(1.0, 2.0), 1.5;
    }
}
takes! {
    /// A metre of plain concrete by ACI 318; kNm/m, kN/m, mm, MPa.
    PlainUs {
        moment: "M_u", "factored moment per metre", KNM, Limits::ours(0.0, 10_000.0);
        axial: "P_u", "least factored compression per metre", KN, Limits::ours(0.0, 10_000.0), 0.0;
        thickness: "h", "thickness; 50 mm less where cast against soil", MM, Limits::ours(50.0, 3000.0);
        strength: "f_c'", "specified compressive strength", MPA, Limits::author(17.0, 70.0);
        phi: "φ_p", "strength reduction of plain concrete", NONE, Limits::author(0.6, 0.6), 0.6;
    }
}
gives! {
    /// Plain concrete in bending.
    PlainBent {
        tension: MPA, "design tensile strength";
        capacity: KNM, "moment per metre at which it cracks";
        utilisation: NONE, "moment over capacity";
    }
}

fn bent<N: Number>(tension: N, (moment, axial, thickness): (N, N, N)) -> PlainBent<N> {
    let squeeze = (axial / thickness).named("σ_N", Unit::MPA);
    let modulus = (thickness.squared() * 1000.0 / 6.0).named("W", Unit::MM3);
    let capacity = ((tension + squeeze) * modulus / 1e6).named("M_R", Unit::KNM);
    PlainBent { tension, capacity, utilisation: (moment / capacity).named("M/M_R", Unit::NONE) }
}

/// Moment at which plain concrete cracks.
///
/// # Source
/// EN 1992-1-1:2004, 12.3.1 (f_ctd,pl = α_ct,pl 0.7 f_ctm/γ_C, α 0.8), elastic section with the compression upon it.
/// # Symbols
/// h, N, f_ck; W = b h²/6.
/// # Gives
/// Design tensile strength and M_R per metre.
/// # Not for
/// A part whose failure is not noticed in time; concrete weaker than C12 is outside the standard (lean mixes: our reach).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// h 400, C16: f_ctm 1.905, f_ctd,pl 0.711 MPa, M_R 18.97 kNm/m (CO-08).
pub fn plain_en2<N: Number>(i: &PlainEn<N>) -> PlainBent<N> {
    let tension = (i.alpha * 0.7 * super::mean_tension(i.strength) / i.gamma_c).named("f_ctd,pl", Unit::MPA);
    bent(tension, (i.moment, i.axial, i.thickness))
}

/// Moment at which plain concrete cracks.
///
/// # Source
/// ACI 318-19, 14.5.2.1: φ 5 √f_c' S_m (psi; 0.42 in MPa), φ 0.6 (21.2.1); 14.5.1.7: two inches less against soil.
/// # Symbols
/// h, P, f_c'.
/// # Gives
/// φ times the flexural tension, and M per metre.
/// # Not for
/// Piers and parts in earthquake country (14.1.4).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// h 300, 20.7 MPa: 0.6·0.4152·4.55 = 1.133 MPa, M 17.0 kNm/m (CO-09).
pub fn plain_aci<N: Number>(i: &PlainUs<N>) -> PlainBent<N> {
    // 5 √(psi) is 5/√145.04 = 0.4152 √(MPa).
    let tension = (i.phi * 0.4152 * i.strength.sqrt()).named("φf_r", Unit::MPA);
    bent(tension, (i.moment, i.axial, i.thickness))
}

/// A metre of wall or footing without steel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plain {
    /// Thickness of sound concrete.
    pub thickness: Length,
    /// Cylinder strength.
    pub strength: Pressure,
}

/// Bending of a metre of plain concrete under its least compression.
///
/// # Errors
/// Where a value is out of range.
pub fn check_plain(plain: &Plain, rules: Rules, moment: Moment, axial: LineForce) -> Result<Row<Moment>> {
    let (m, n) = (moment.to_knm(), axial.to_kn_per_m());
    let (thickness, strength) = (plain.thickness.to_mm(), plain.strength.to_mpa());
    let (bent, trace) = match rules {
        Rules::En1992 => {
            let (i, t) =
                PlainEn { moment: m, axial: n, thickness, strength, alpha: 0.8, gamma_c: 1.5 }.traced(&PLAIN_EN2)?;
            (plain_en2(&i), t)
        }
        Rules::Aci318 => {
            let (i, t) = PlainUs { moment: m, axial: n, thickness, strength, phi: 0.6 }.traced(&PLAIN_ACI)?;
            (plain_aci(&i), t)
        }
    };
    Ok(Row::new("bending without steel", moment, Moment::knm(bent.capacity), trace))
}

/// Working of [`plain_en2`].
pub static PLAIN_EN2: Working = Working {
    name: "concrete/plain-en1992",
    title: "Moment at which concrete without steel cracks, by EN 1992-1-1.",
    source: Source { work: "EN 1992-1-1:2004", place: "12.3.1, 12.6.1; α_ct,pl 0.8" },
    not_for: "parts whose failure is not noticed in time; mixes under C12 are outside the standard",
    inputs: PlainEn::INPUTS,
    outputs: PlainBent::OUTPUTS,
    run: |g| plain_en2(&PlainEn::put(g)?).found(),
};

/// Working of [`plain_aci`].
pub static PLAIN_ACI: Working = Working {
    name: "concrete/plain-aci318",
    title: "Moment at which concrete without steel cracks, by ACI 318.",
    source: Source { work: "ACI 318-19", place: "14.5.2.1, 21.2.1, 14.5.1.7; from memory" },
    not_for: "earthquake country (14.1.4)",
    inputs: PlainUs::INPUTS,
    outputs: PlainBent::OUTPUTS,
    run: |g| plain_aci(&PlainUs::put(g)?).found(),
};
