//! What does a steel section carry in bending and shear by ANSI/AISC 360, allowable strength?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// Allowable bending by AISC 360; kNm, mm, MPa.
    AiscBending {
        moment: "M_a", "moment, not factored", KNM, Limits::ours(0.0, 10_000.0);
        plastic: "Z_x", "plastic section modulus", MM3, Limits::ours(100.0, 1e8);
        elastic: "S_x", "elastic section modulus", MM3, Limits::ours(100.0, 1e8);
        yield_stress: "F_y", "yield strength", MPA, Limits::ours(200.0, 450.0);
        flange: "λ", "half flange width over its thickness; 0 for a hollow section", NONE, Limits::ours(0.0, 30.0), 0.0;
        unheld: "L_b", "length not held sideways; 0 where it is held all along", MM, Limits::ours(0.0, 10_000.0), 0.0;
        minor: "I_y", "second moment of area, weaker axis", MM4, Limits::ours(0.0, 1e10), 0.0;
        area: "A", "cross-section", MM2, Limits::ours(0.0, 1e6), 0.0;
        torsion: "J", "torsion constant", MM4, Limits::ours(0.0, 1e10), 0.0;
        between: "h_o", "distance of the flanges' centres", MM, Limits::ours(0.0, 2000.0), 0.0;
        omega: "Ω_b", "factor for allowable strength", NONE, Limits::author(1.67, 1.67), 1.67;
    }
}
gives! {
    /// Allowable bending.
    AiscBent {
        nominal: KNM, "nominal strength";
        capacity: KNM, "allowable moment";
        utilisation: NONE, "moment over allowable";
    }
}
takes! {
    /// Allowable shear by AISC 360; kN, mm, MPa.
    AiscShear {
        shear: "V_a", "shear force, not factored", KN, Limits::ours(0.0, 10_000.0);
        area: "A_w", "area of the web: depth times web (both webs of a hollow section)", MM2, Limits::ours(10.0, 1e6);
        yield_stress: "F_y", "yield strength", MPA, Limits::ours(200.0, 450.0);
        omega: "Ω_v", "1.5 for webs of rolled I sections up to 2.24 √(E/F_y), else 1.67", NONE,
            Limits::author(1.5, 1.67), 1.67;
    }
}
gives! {
    /// Allowable shear.
    AiscSheared {
        capacity: KN, "allowable shear";
        utilisation: NONE, "shear over allowable";
    }
}

/// Modulus of elasticity, 29 000 ksi.
const E: f64 = 199_948.0;

/// Allowable bending about the stronger axis of an I section or channel, with tipping sideways; hollow sections held.
///
/// # Source
/// ANSI/AISC 360-16, F2 (yielding, lateral-torsional buckling, C_b = 1), F3 (flanges that are not compact), Ω 1.67. From
/// memory; r_ts² = I_y h_o/(2 S_x), as F2 allows for doubly symmetric I shapes.
/// # Symbols
/// Z_x, S_x moduli, λ half flange over thickness, L_b length not held, J torsion, h_o distance of the flanges.
/// # Gives
/// M_n, M_n/Ω, utilisation.
/// # Not for
/// Slender flanges or webs; a hollow section deeper than it is wide over long unheld lengths (F7).
/// # Errors
/// None in the formula; the working refuses a length not held without the figures for it.
/// # By hand
/// W6x9, 50 ksi, held, Z_x 6.23 in³: 6.23·50/12/1.67 = 15.5 kip ft = 21.1 kNm (ST-K-W6).
pub fn aisc_bending<N: Number>(i: &AiscBending<N>) -> AiscBent<N> {
    let n = N::constant;
    let mp = (i.plastic * i.yield_stress / 1e6).named("M_p", Unit::KNM);
    let mr = (n(0.7) * i.yield_stress * i.elastic / 1e6).named("0.7F_yS_x", Unit::KNM);
    let root = (n(E) / i.yield_stress).sqrt();
    let (compact, slender) = ((n(0.38) * root).named("λ_p", Unit::NONE), (root * 1.0).named("λ_r", Unit::NONE));
    let mut nominal = mp;
    if compact.value() < i.flange.value() {
        let share = (i.flange - compact) / (slender - compact);
        nominal = (mp - (mp - mr) * share).named("M_n,flange", Unit::KNM);
    }
    if 0.0 < i.unheld.value() {
        nominal = nominal.min(tipping(i, mp, mr));
    }
    let nominal = nominal.named("M_n", Unit::KNM);
    let capacity = (nominal / i.omega).named("M_n/Ω", Unit::KNM);
    AiscBent { nominal, capacity, utilisation: (i.moment / capacity).named("M_a/(M_n/Ω)", Unit::NONE) }
}

fn tipping<N: Number>(i: &AiscBending<N>, mp: N, mr: N) -> N {
    let n = N::constant;
    let pi = std::f64::consts::PI;
    let ry = (i.minor / i.area).sqrt().named("r_y", Unit::MM);
    let lp = (n(1.76) * ry * (n(E) / i.yield_stress).sqrt()).named("L_p", Unit::MM);
    if i.unheld.value() <= lp.value() {
        return mp;
    }
    let rts = (i.minor * i.between / (n(2.0) * i.elastic)).sqrt().named("r_ts", Unit::MM);
    let twist = (i.torsion / (i.elastic * i.between)).named("J/S_xh_o", Unit::NONE);
    let soft = n(0.7) * i.yield_stress / E;
    let lr = (n(1.95) * rts / soft * (twist + (twist.squared() + n(6.76) * soft.squared()).sqrt()).sqrt())
        .named("L_r", Unit::MM);
    if i.unheld.value() <= lr.value() {
        return (mp - (mp - mr) * ((i.unheld - lp) / (lr - lp))).named("M_n,LTB", Unit::KNM);
    }
    let ratio = (i.unheld / rts).squared();
    let stress = n(pi * pi * E) / ratio * (n(1.0) + n(0.078) * twist * ratio).sqrt();
    (stress * i.elastic / 1e6).named("M_n,LTB", Unit::KNM)
}

/// Allowable shear.
///
/// # Source
/// ANSI/AISC 360-16, G2.1: V_n = 0.6 F_y A_w C_v with C_v = 1 for stocky webs. From memory.
/// # Symbols
/// A_w web area, F_y, Ω_v.
/// # Gives
/// V_n/Ω and utilisation.
/// # Not for
/// Slender webs.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// W6x9: A_w = 5.90·0.170 = 1.003 in², 0.6·50·1.003/1.5 = 20.1 kip = 89.2 kN (ST-K-W6v).
pub fn aisc_shear<N: Number>(i: &AiscShear<N>) -> AiscSheared<N> {
    let n = N::constant;
    let capacity = (n(0.6) * i.yield_stress * i.area / i.omega / 1000.0).named("V_n/Ω", Unit::KN);
    AiscSheared { capacity, utilisation: (i.shear / capacity).named("V_a/(V_n/Ω)", Unit::NONE) }
}

/// Working of [`aisc_bending`].
pub static AISC_BENDING: Working = Working {
    name: "steel/bending-aisc",
    title: "Allowable bending of a steel post by ANSI/AISC 360.",
    source: Source { work: "ANSI/AISC 360-16", place: "F2, F3, allowable strength; from memory" },
    not_for: "slender flanges or webs; deep hollow sections over long unheld lengths (F7)",
    inputs: AiscBending::INPUTS,
    outputs: AiscBent::OUTPUTS,
    run: |g| {
        let i = AiscBending::put(g)?;
        let wanted = [i.minor, i.area, i.torsion, i.between];
        if 0.0 < i.unheld.value() && wanted.iter().any(|v| v.value() == 0.0) {
            return Err(g.no_answer("a length not held sideways wants `minor`, `area`, `torsion` and `between`"));
        }
        if (E / i.yield_stress.value()).sqrt() < i.flange.value() {
            return Err(g.no_answer("the flanges are slender: another formula holds for them (F3, case b)"));
        }
        aisc_bending(&i).found()
    },
};

/// Working of [`aisc_shear`].
pub static AISC_SHEAR: Working = Working {
    name: "steel/shear-aisc",
    title: "Allowable shear of a steel post by ANSI/AISC 360.",
    source: Source { work: "ANSI/AISC 360-16", place: "G2.1; from memory" },
    not_for: "slender webs",
    inputs: AiscShear::INPUTS,
    outputs: AiscSheared::OUTPUTS,
    run: |g| aisc_shear(&AiscShear::put(g)?).found(),
};
