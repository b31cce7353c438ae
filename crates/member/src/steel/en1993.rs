//! What does a steel section carry in bending and shear by EN 1993-1-1?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// Bending by EN 1993-1-1; kNm, mm, MPa.
    SteelBending {
        moment: "M_Ed", "design moment", KNM, Limits::ours(0.0, 10_000.0);
        modulus: "W_y", "section modulus: plastic in class 1 and 2, elastic in class 3", MM3, Limits::ours(100.0, 1e8);
        yield_stress: "f_y", "yield strength", MPA, Limits::ours(150.0, 700.0);
        unheld: "L", "length not held sideways; 0 where it is held all along", MM, Limits::ours(0.0, 10_000.0), 0.0;
        minor: "I_z", "second moment of area, weaker axis", MM4, Limits::ours(0.0, 1e10), 0.0;
        torsion: "I_t", "torsion constant", MM4, Limits::ours(0.0, 1e10), 0.0;
        warping: "I_w", "warping constant over 1000 mm²", MM4, Limits::ours(0.0, 1e12), 0.0;
        shape: "C₁", "factor for the shape of the moment; 1 is careful for a load at the shear centre", NONE,
            Limits::ours(1.0, 2.8), 1.0;
        curve: "α_LT", "imperfection: 0.21 rolled I with h/b up to 2, 0.34 above, 0.76 others", NONE,
            Limits::author(0.21, 0.76), 0.76;
        gamma: "γ_M1", "partial factor", NONE, Limits::ours(1.0, 1.5), 1.0;
    }
}
gives! {
    /// Bending resistance.
    SteelBent {
        slenderness: NONE, "slenderness for tipping sideways";
        chi: NONE, "reduction for tipping sideways";
        capacity: KNM, "design resistance";
        utilisation: NONE, "moment over resistance";
    }
}
takes! {
    /// Shear by EN 1993-1-1; kN, mm², MPa.
    SteelShear {
        shear: "V_Ed", "design shear force", KN, Limits::ours(0.0, 10_000.0);
        area: "A_v", "area that takes shear", MM2, Limits::ours(10.0, 1e6);
        yield_stress: "f_y", "yield strength", MPA, Limits::ours(150.0, 700.0);
        gamma: "γ_M0", "partial factor", NONE, Limits::ours(1.0, 1.5), 1.0;
    }
}
gives! {
    /// Shear resistance.
    SteelSheared {
        capacity: KN, "design resistance";
        utilisation: NONE, "shear over resistance";
    }
}

/// Modulus of elasticity and shear modulus of steel by EN 1993-1-1, 3.2.6, MPa.
const E: f64 = 210_000.0;
const G: f64 = 81_000.0;

/// Bending about the stronger axis, with tipping sideways.
///
/// # Source
/// EN 1993-1-1:2005, 6.2.5 (M_c,Rd = W f_y/γ_M) and 6.3.2.2 (general case of lateral torsional buckling); M_cr of a doubly
/// symmetric section loaded at its shear centre, e.g. SN003 (NCCI). From memory.
/// # Symbols
/// W section modulus, L length not held, I_z, I_t, I_w, C₁, α_LT.
/// # Gives
/// χ_LT, M_b,Rd, utilisation.
/// # Not for
/// Class 4 sections; a load that acts on the outer flange and can tip it; more than half the shear resistance used at the
/// same place (6.2.8).
/// # Errors
/// None in the formula; the working refuses a length not held without the figures for it.
/// # By hand
/// HEB100 held, S275: 104.2e3·275 = 28.66 kNm (ST-01).
pub fn en3_bending<N: Number>(i: &SteelBending<N>) -> SteelBent<N> {
    let n = N::constant;
    let whole = (i.modulus * i.yield_stress / 1e6).named("M_y", Unit::KNM);
    let (slenderness, chi) = if i.unheld.value() == 0.0 { (n(0.0), n(1.0)) } else { tipping(i, whole) };
    let capacity = (chi * whole / i.gamma).named("M_b,Rd", Unit::KNM);
    SteelBent { slenderness, chi, capacity, utilisation: (i.moment / capacity).named("M_Ed/M_b,Rd", Unit::NONE) }
}

fn tipping<N: Number>(i: &SteelBending<N>, whole: N) -> (N, N) {
    let n = N::constant;
    let pi = std::f64::consts::PI;
    let euler = (n(pi * pi * E) * i.minor / i.unheld.squared()).named("N_z", Unit::N);
    let inside = i.warping * 1000.0 / i.minor + n(G) * i.torsion / euler;
    let critical = (i.shape * euler * inside.sqrt() / 1e6).named("M_cr", Unit::KNM);
    let slender = (whole / critical).sqrt().named("λ_LT", Unit::NONE);
    let phi = (n(0.5) * (n(1.0) + i.curve * (slender - 0.2) + slender.squared())).named("Φ_LT", Unit::NONE);
    // Below a slenderness of 0.2 nothing tips (6.3.2.2(4)).
    let chi = if slender.value() <= 0.2 {
        n(1.0)
    } else {
        (n(1.0) / (phi + (phi.squared() - slender.squared()).sqrt())).min(n(1.0))
    };
    (slender, chi.named("χ_LT", Unit::NONE))
}

/// Shear.
///
/// # Source
/// EN 1993-1-1:2005, 6.2.6: V_pl,Rd = A_v f_y/(√3 γ_M0).
/// # Symbols
/// A_v shear area, f_y, γ_M0.
/// # Gives
/// V_pl,Rd and utilisation.
/// # Not for
/// Slender webs, h_w/t_w above 72 ε (EN 1993-1-5).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// HEB100, A_v 904 mm², S275: 904·275/√3 = 143.5 kN (ST-K-shear).
pub fn en3_shear<N: Number>(i: &SteelShear<N>) -> SteelSheared<N> {
    let n = N::constant;
    let capacity = (i.area * i.yield_stress / (n(3.0).sqrt() * i.gamma) / 1000.0).named("V_pl,Rd", Unit::KN);
    SteelSheared { capacity, utilisation: (i.shear / capacity).named("V_Ed/V_pl,Rd", Unit::NONE) }
}

/// Working of [`en3_bending`].
pub static EN3_BENDING: Working = Working {
    name: "steel/bending-en1993",
    title: "Bending of a steel post by EN 1993-1-1, with tipping sideways.",
    source: Source { work: "EN 1993-1-1:2005", place: "6.2.5, 6.3.2.2; from memory" },
    not_for: "class 4 sections; a load on the outer flange that tips it; high shear at the same place (6.2.8)",
    inputs: SteelBending::INPUTS,
    outputs: SteelBent::OUTPUTS,
    run: |g| {
        let i = SteelBending::put(g)?;
        if 0.0 < i.unheld.value() && (i.minor.value() == 0.0 || i.torsion.value() == 0.0) {
            return Err(g.no_answer("a length not held sideways wants `minor` and `torsion` (and `warping`)"));
        }
        en3_bending(&i).found()
    },
};

/// Working of [`en3_shear`].
pub static EN3_SHEAR: Working = Working {
    name: "steel/shear-en1993",
    title: "Shear of a steel post by EN 1993-1-1.",
    source: Source { work: "EN 1993-1-1:2005", place: "6.2.6" },
    not_for: "slender webs (EN 1993-1-5)",
    inputs: SteelShear::INPUTS,
    outputs: SteelSheared::OUTPUTS,
    run: |g| en3_shear(&SteelShear::put(g)?).found(),
};
