//! What does a metre of masonry carry by TMS 402, allowable stress?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// Plain masonry; kNm/m, kN/m, mm, MPa.
    TmsPlain {
        moment: "M", "moment per metre, not factored", KNM, Limits::ours(0.0, 1000.0);
        axial: "P", "least compression per metre", KN, Limits::ours(0.0, 1000.0), 0.0;
        modulus: "S_n", "net section modulus per metre", MM3, Limits::ours(1e4, 1e9);
        area: "A_n", "net area per metre", MM2, Limits::ours(1e4, 3e6);
        tension: "F_t", "allowable flexural tension", MPA, Limits::ours(0.0, 2.0);
    }
}
gives! {
    /// Plain masonry.
    TmsFlexed {
        stress: MPA, "tension in the joint";
        capacity: KNM, "allowable moment per metre";
        utilisation: NONE, "moment over allowable";
    }
}
takes! {
    /// A stem with bars, cracked and elastic; any consistent width. kNm, mm, MPa.
    TmsStem {
        moment: "M", "moment on the width, not factored", KNM, Limits::ours(0.0, 1000.0);
        width: "b", "width that goes with one bar: its spacing, at most six thicknesses or 72 in", MM, Limits::ours(100.0, 2000.0);
        effective: "d", "depth from the pressed face to the bars", MM, Limits::ours(40.0, 1000.0);
        steel: "A_s", "steel on the width", MM2, Limits::ours(10.0, 10_000.0);
        ratio: "n", "modulus of steel over that of masonry", NONE, Limits::ours(5.0, 60.0);
        strength: "f_m'", "specified compressive strength of the masonry", MPA, Limits::author(8.0, 40.0), 13.79;
        steel_stress: "F_s", "allowable stress of the steel: 20 000 psi grade 40, 32 000 psi grade 60", MPA, Limits::author(137.0, 221.0), 220.6;
    }
}
gives! {
    /// A stem with bars.
    TmsCracked {
        share: NONE, "steel over width and depth, ρ";
        pressed: NONE, "depth of the pressed zone over d, k";
        lever: NONE, "lever arm over d, j";
        steel_stress: MPA, "stress of the steel";
        masonry_stress: MPA, "stress of the masonry";
        capacity: KNM, "allowable moment on the width";
        utilisation: NONE, "moment over allowable";
    }
}
takes! {
    /// Shear of a stem without links; kN, mm, MPa.
    TmsShear {
        shear: "V", "shear on the width, not factored", KN, Limits::ours(0.0, 1000.0);
        width: "b", "width", MM, Limits::ours(100.0, 2000.0);
        effective: "d", "depth from the pressed face to the bars", MM, Limits::ours(40.0, 1000.0);
        strength: "f_m'", "specified compressive strength of the masonry", MPA, Limits::author(8.0, 40.0), 13.79;
        slender: "M/Vd", "moment over shear and depth, at most 1", NONE, Limits::author(0.0, 1.0), 1.0;
    }
}
gives! {
    /// Shear of a stem.
    TmsSheared {
        stress: MPA, "allowable shear stress";
        capacity: KN, "allowable shear on the width";
        utilisation: NONE, "shear over allowable";
    }
}

/// Bending of plain masonry.
///
/// # Source
/// TMS 402-16, 8.2.4.2: −P/A_n + M/S_n not over the allowable flexural tension.
/// # Symbols
/// S_n, A_n net section, F_t of Table 8.2.4.2.
/// # Gives
/// Stress and the allowable moment per metre.
/// # Not for
/// Stack bond (its own row of the table).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// S_n 6e6 mm³, F_t 0.2275 MPa: 1.365 kNm/m (MA-05).
pub fn tms_plain<N: Number>(i: &TmsPlain<N>) -> TmsFlexed<N> {
    let squeeze = (i.axial * 1000.0 / i.area).named("f_a", Unit::MPA);
    let stress = (i.moment * 1e6 / i.modulus - squeeze).named("f_t", Unit::MPA);
    let capacity = ((i.tension + squeeze) * i.modulus / 1e6).named("M_a", Unit::KNM);
    TmsFlexed { stress, capacity, utilisation: (i.moment / capacity).named("M/M_a", Unit::NONE) }
}

/// Bending of a stem with bars, cracked and elastic.
///
/// # Source
/// TMS 402-16, 8.3: straight stresses, F_b = 0.45 f_m', F_s 32 000 psi (grade 60); layout as NCMA TEK 14-07.
/// # Symbols
/// ρ = A_s/(b d), k = √(2ρn + (ρn)²) − ρn, j = 1 − k/3.
/// # Gives
/// Stresses under the moment and the allowable moment, the less of steel and masonry.
/// # Not for
/// Axial load; bars at both faces.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// ρ 0.0043, n 21.5: k 0.3476, j 0.884, f_s 9729 psi, f_m 241 psi (ST-04).
pub fn tms_cracked<N: Number>(i: &TmsStem<N>) -> TmsCracked<N> {
    let n = N::constant;
    let share = (i.steel / (i.width * i.effective)).named("ρ", Unit::NONE);
    let rn = (share * i.ratio).named("ρn", Unit::NONE);
    let pressed = ((n(2.0) * rn + rn.squared()).sqrt() - rn).named("k", Unit::NONE);
    let lever = (n(1.0) - pressed / 3.0).named("j", Unit::NONE);
    let by_steel = (i.steel * lever * i.effective / 1e6).named("A_sjd", Unit::KNM);
    let by_masonry = (i.width * i.effective.squared() * lever * pressed / 2.0 / 1e6).named("bd²jk/2", Unit::KNM);
    let steel_stress = (i.moment / by_steel).named("f_s", Unit::MPA);
    let masonry_stress = (i.moment / by_masonry).named("f_b", Unit::MPA);
    let capacity = (i.steel_stress * by_steel).min(n(0.45) * i.strength * by_masonry).named("M_a", Unit::KNM);
    let utilisation = (i.moment / capacity).named("M/M_a", Unit::NONE);
    TmsCracked { share, pressed, lever, steel_stress, masonry_stress, capacity, utilisation }
}

/// Shear of a stem without links.
///
/// # Source
/// TMS 402-16, 8.3.5.1.3: F_vm = ½ (4 − 1.75 M/Vd) √f_m' (psi), not over 2 √f_m' (8.3.5.1.2). From memory.
/// # Symbols
/// f_m', M/Vd, b, d.
/// # Gives
/// Allowable stress and shear on the width; f_v = V/(b d).
/// # Not for
/// Special walls in earthquake country (a quarter there).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// f_m' 2000 psi, M/Vd 1: 1.125·44.72 = 50.3 psi (MA-06).
pub fn tms_shear<N: Number>(i: &TmsShear<N>) -> TmsSheared<N> {
    let n = N::constant;
    // √(psi) in MPa: √145.04/145.04 = 0.08303.
    let root = n(0.083_03) * i.strength.sqrt();
    let stress = (n(0.5) * (n(4.0) - n(1.75) * i.slender) * root).min(n(2.0) * root).named("F_v", Unit::MPA);
    let capacity = (stress * i.width * i.effective / 1000.0).named("V_a", Unit::KN);
    TmsSheared { stress, capacity, utilisation: (i.shear / capacity).named("V/V_a", Unit::NONE) }
}

const fn at(place: &'static str) -> Source {
    Source { work: "TMS 402-16 (ACI 530), Building Code Requirements for Masonry Structures", place }
}

/// Working of [`tms_plain`].
pub static TMS_PLAIN: Working = Working {
    name: "masonry/plain-tms402",
    title: "Bending of a metre of plain masonry by TMS 402, allowable stress.",
    source: at("8.2.4.2; from memory"),
    not_for: "stack bond",
    inputs: TmsPlain::INPUTS,
    outputs: TmsFlexed::OUTPUTS,
    run: |g| tms_plain(&TmsPlain::put(g)?).found(),
};

/// Working of [`tms_cracked`].
pub static TMS_CRACKED: Working = Working {
    name: "masonry/reinforced-tms402",
    title: "Bending of a masonry stem with bars by TMS 402, allowable stress.",
    source: at("8.3"),
    not_for: "axial load; bars at both faces",
    inputs: TmsStem::INPUTS,
    outputs: TmsCracked::OUTPUTS,
    run: |g| tms_cracked(&TmsStem::put(g)?).found(),
};

/// Working of [`tms_shear`].
pub static TMS_SHEAR: Working = Working {
    name: "masonry/shear-tms402",
    title: "Shear of a masonry stem with bars by TMS 402, allowable stress.",
    source: at("8.3.5.1; from memory"),
    not_for: "special walls in earthquake country",
    inputs: TmsShear::INPUTS,
    outputs: TmsSheared::OUTPUTS,
    run: |g| tms_shear(&TmsShear::put(g)?).found(),
};
