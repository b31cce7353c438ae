//! What does a metre of reinforced concrete carry in bending and shear, and how wide are its cracks, by EN 1992-1-1?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// Bending of a strip one metre wide; kNm/m, mm, MPa.
    StripBending {
        moment: "M_Ed", "design moment per metre", KNM, Limits::ours(0.0, 10_000.0);
        effective: "d", "depth from the pressed face to the steel", MM, Limits::ours(40.0, 2000.0);
        steel: "A_s", "steel per metre", MM2, Limits::ours(0.0, 20_000.0);
        strength: "f_ck", "characteristic cylinder strength", MPA, Limits::author(12.0, 50.0);
        yield_stress: "f_yk", "characteristic yield strength of the steel", MPA, Limits::author(400.0, 600.0);
        alpha: "α_cc", "factor on the strength", NONE, Limits::author(0.8, 1.0), 0.85;
        gamma_c: "γ_C", "partial factor of concrete", NONE, Limits::ours(1.0, 2.0), 1.5;
        gamma_s: "γ_S", "partial factor of steel", NONE, Limits::ours(1.0, 1.5), 1.15;
    }
}
gives! {
    /// Bending of a strip.
    StripBent {
        lever: MM, "lever arm for the design moment";
        needed: MM2, "steel needed per metre for the moment";
        least: MM2, "least steel per metre";
        pressed: NONE, "depth of the pressed zone over d with the steel given";
        capacity: KNM, "moment the strip carries per metre";
        utilisation: NONE, "moment over capacity";
    }
}
takes! {
    /// Shear of a strip without links; kN/m, mm, MPa.
    StripShear {
        shear: "V_Ed", "design shear per metre", KN, Limits::ours(0.0, 10_000.0);
        effective: "d", "depth from the pressed face to the steel", MM, Limits::ours(40.0, 2000.0);
        steel: "A_s", "steel per metre", MM2, Limits::ours(0.0, 20_000.0);
        strength: "f_ck", "characteristic cylinder strength", MPA, Limits::author(12.0, 50.0);
        gamma_c: "γ_C", "partial factor of concrete", NONE, Limits::ours(1.0, 2.0), 1.5;
    }
}
gives! {
    /// Shear of a strip.
    StripSheared {
        stress: MPA, "shear stress that the strip carries";
        capacity: KN, "shear that the strip carries per metre";
        utilisation: NONE, "shear over capacity";
    }
}
takes! {
    /// Cracks in a strip; kNm/m, mm, MPa.
    StripCracks {
        moment: "M_qp", "moment per metre that stays, not factored", KNM, Limits::ours(0.0, 10_000.0);
        thickness: "h", "thickness", MM, Limits::ours(60.0, 2000.0);
        effective: "d", "depth from the pressed face to the steel", MM, Limits::ours(40.0, 2000.0);
        steel: "A_s", "steel per metre", MM2, Limits::ours(50.0, 20_000.0);
        bar: "φ", "bar diameter", MM, Limits::ours(5.0, 40.0);
        cover: "c", "cover to the bars", MM, Limits::ours(10.0, 100.0);
        strength: "f_ck", "characteristic cylinder strength", MPA, Limits::author(12.0, 50.0);
        ratio: "α_e", "modulus of steel over that of concrete, with creep", NONE, Limits::ours(5.0, 25.0), 15.0;
    }
}
gives! {
    /// Cracks in a strip.
    StripCracked {
        stress: MPA, "stress of the steel";
        spacing: MM, "greatest distance of cracks";
        width: MM, "width of cracks";
    }
}

/// Mean tensile strength, EN 1992-1-1 Table 3.1: 0.30 f_ck^(2/3) up to C50.
pub fn mean_tension<N: Number>(strength: N) -> N {
    (strength.powf(2.0 / 3.0) * 0.30).named("f_ctm", Unit::MPA)
}

/// Bending with the rectangular stress block.
///
/// # Source
/// EN 1992-1-1:2004, 3.1.7(3), 6.1, 9.2.1.1: z = d (0.5 + √(0.25 − K/2a)), not over 0.95 d, K = M/(b d² f_ck), a = α_cc/γ_C;
/// A_s,min = 0.26 f_ctm/f_yk b d, at least 0.0013 b d.
/// # Symbols
/// M moment, d, A_s, f_ck, f_yk, b = 1000 mm.
/// # Gives
/// Lever arm, steel needed and least, capacity of the steel given.
/// # Not for
/// Steel on the pressed side; strips with axial load.
/// # Errors
/// The working refuses a moment beyond x = 0.45 d (K 0.167): too thin.
/// # By hand
/// M 40, d 200, C30, 500: K 0.0333, z 190 mm, 484 mm², least 302 mm² (ST-03).
pub fn en2_bending<N: Number>(i: &StripBending<N>) -> StripBent<N> {
    let n = N::constant;
    let (b, d) = (n(1000.0), i.effective);
    let fcd = (i.alpha * i.strength / i.gamma_c).named("f_cd", Unit::MPA);
    let fyd = (i.yield_stress / i.gamma_s).named("f_yd", Unit::MPA);
    let k = (i.moment * 1e6 / (b * d.squared() * fcd)).named("K/a", Unit::NONE);
    let inside = (n(0.25) - k / 2.0).max(n(0.0));
    let lever = (d * (n(0.5) + inside.sqrt())).min(n(0.95) * d).named("z", Unit::MM);
    let needed = (i.moment * 1e6 / (fyd * lever)).named("A_s,req", Unit::MM2);
    let tension = mean_tension(i.strength);
    let least = (n(0.26) * tension / i.yield_stress * b * d).max(n(0.0013) * b * d).named("A_s,min", Unit::MM2);
    // Steel beyond a pressed zone of 0.45 d is not counted (5.5(4)).
    let most = n(0.8 * 0.45) * b * d * fcd;
    let force = (i.steel * fyd).min(most).named("F_s", Unit::N);
    let pressed = (force / (n(0.8) * b * fcd) / d).named("x/d", Unit::NONE);
    let arm = (d * (n(1.0) - n(0.4) * pressed)).min(n(0.95) * d).named("z_s", Unit::MM);
    let capacity = (force * arm / 1e6).named("M_Rd", Unit::KNM);
    let utilisation = (i.moment / capacity).named("M_Ed/M_Rd", Unit::NONE);
    StripBent { lever, needed, least, pressed, capacity, utilisation }
}

/// Shear without links.
///
/// # Source
/// EN 1992-1-1:2004, 6.2.2: v = max(0.18/γ_C k (100 ρ f_ck)^(1/3), 0.035 k^1.5 √f_ck), k = 1 + √(200/d) ≤ 2, ρ ≤ 0.02.
/// # Symbols
/// d, A_s, f_ck, b = 1000 mm.
/// # Gives
/// V_Rd,c per metre.
/// # Not for
/// Strips with links or axial load.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// d 200, A_s 565, C30: k 2, ρ 0.0028, 0.492 MPa against 0.542: 108 kN/m (CO-02).
pub fn en2_shear<N: Number>(i: &StripShear<N>) -> StripSheared<N> {
    let n = N::constant;
    let k = (n(1.0) + (n(200.0) / i.effective).sqrt()).min(n(2.0)).named("k", Unit::NONE);
    let share = (i.steel / (n(1000.0) * i.effective)).min(n(0.02)).named("ρ", Unit::NONE);
    let held = (n(0.18) / i.gamma_c * k * (n(100.0) * share * i.strength).powf(1.0 / 3.0)).named("v_Rd,c", Unit::MPA);
    let least = (n(0.035) * k.powf(1.5) * i.strength.sqrt()).named("v_min", Unit::MPA);
    let stress = held.max(least).named("v", Unit::MPA);
    let capacity = (stress * i.effective).named("V_Rd,c", Unit::KN);
    StripSheared { stress, capacity, utilisation: (i.shear / capacity).named("V_Ed/V_Rd,c", Unit::NONE) }
}

/// Width and distance of cracks.
///
/// # Source
/// EN 1992-1-1:2004, 7.3.4: s = 3.4 c + 0.17 φ/ρ (ribbed bars in bending), w = s (ε_sm − ε_cm), k_t 0.4; cracked elastic section
/// with α_e.
/// # Symbols
/// M, h, d, A_s, φ, c, f_ck, α_e; h_c,ef the zone around the bars.
/// # Gives
/// Stress of the steel, distance and width of cracks.
/// # Not for
/// Cracks by shrinkage against a rigid base; bars further apart than 5(c + φ/2).
/// # Errors
/// None in the formula; the working refuses d ≥ h.
/// # By hand
/// Reference case CO-04.
pub fn en2_cracks<N: Number>(i: &StripCracks<N>) -> StripCracked<N> {
    let n = N::constant;
    let (b, d) = (n(1000.0), i.effective);
    let stiff = (i.ratio * i.steel / b).named("α_eA_s/b", Unit::MM);
    let x = ((stiff.squared() + n(2.0) * stiff * d).sqrt() - stiff).named("x", Unit::MM);
    let stress = (i.moment * 1e6 / (i.steel * (d - x / 3.0))).named("σ_s", Unit::MPA);
    let zone =
        (n(2.5) * (i.thickness - d)).min((i.thickness - x) / 3.0).min(i.thickness / 2.0).named("h_c,ef", Unit::MM);
    let share = (i.steel / (b * zone)).named("ρ_p,eff", Unit::NONE);
    let spacing = (n(3.4) * i.cover + n(0.17) * i.bar / share).named("s_r,max", Unit::MM);
    let held = n(0.4) * mean_tension(i.strength) / share * (n(1.0) + i.ratio * share);
    let strain = ((stress - held) / 200_000.0).max(n(0.6) * stress / 200_000.0).named("ε_sm − ε_cm", Unit::NONE);
    StripCracked { stress, spacing, width: (spacing * strain).named("w_k", Unit::MM) }
}

const fn at(place: &'static str) -> Source {
    Source { work: "EN 1992-1-1:2004", place }
}

/// Working of [`en2_bending`].
pub static EN2_BENDING: Working = Working {
    name: "concrete/bending-en1992",
    title: "Steel and bending of a metre of reinforced concrete by EN 1992-1-1.",
    source: at("3.1.7(3), 6.1, 9.2.1.1"),
    not_for: "steel on the pressed side; axial load",
    inputs: StripBending::INPUTS,
    outputs: StripBent::OUTPUTS,
    run: |g| {
        let i = StripBending::put(g)?;
        if let Some(why) = too_thin(&i.values()) {
            return Err(g.no_answer(why));
        }
        en2_bending(&i).found()
    },
};

/// Where moment or steel press the concrete too deep: x over 0.45 d, EN 1992-1-1 5.5(4).
pub(super) fn too_thin(i: &StripBending<f64>) -> Option<&'static str> {
    let fcd = i.alpha * i.strength / i.gamma_c;
    let k = i.moment * 1e6 / (1000.0 * i.effective * i.effective * fcd);
    // x = 0.45 d: K = 0.8·0.45·(1 − 0.18) = 0.2952 of f_cd.
    (0.2952 < k).then_some("the strip is too thin for this moment: the pressed zone would be deeper than 0.45 d")
}

/// Working of [`en2_shear`].
pub static EN2_SHEAR: Working = Working {
    name: "concrete/shear-en1992",
    title: "Shear of a metre of reinforced concrete without links by EN 1992-1-1.",
    source: at("6.2.2"),
    not_for: "links, axial load",
    inputs: StripShear::INPUTS,
    outputs: StripSheared::OUTPUTS,
    run: |g| en2_shear(&StripShear::put(g)?).found(),
};

/// Working of [`en2_cracks`].
pub static EN2_CRACKS: Working = Working {
    name: "concrete/cracks-en1992",
    title: "Width and distance of cracks in a metre of reinforced concrete by EN 1992-1-1.",
    source: at("7.3.4; from memory"),
    not_for: "shrinkage held by a rigid base; bars far apart",
    inputs: StripCracks::INPUTS,
    outputs: StripCracked::OUTPUTS,
    run: |g| {
        let i = StripCracks::put(g)?;
        if i.thickness.value() <= i.effective.value() {
            return Err(g.no_answer("the steel lies outside the concrete: d must be less than h"));
        }
        en2_cracks(&i).found()
    },
};
