//! What does a metre of masonry carry in bending and shear by EN 1996-1-1?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// Plain masonry in bending; kNm/m, mm, MPa.
    PlainFlexure {
        moment: "M_Ed", "design moment per metre", KNM, Limits::ours(0.0, 1000.0);
        thickness: "t", "thickness", MM, Limits::ours(50.0, 2000.0);
        flexural: "f_xk", "characteristic flexural strength in the direction of bending", MPA, Limits::ours(0.0, 2.0);
        pressed: "σ_d", "least design compression; 0 for masonry that spans sideways", MPA, Limits::ours(0.0, 5.0), 0.0;
        gamma: "γ_M", "partial factor of masonry", NONE, Limits::author(1.5, 3.0), 2.5;
    }
}
gives! {
    /// Plain masonry in bending.
    PlainFlexed {
        modulus: MM3, "section modulus per metre";
        capacity: KNM, "moment it carries per metre";
        utilisation: NONE, "moment over capacity";
    }
}
takes! {
    /// Shear along a joint; kN/m, mm, MPa.
    JointShear {
        shear: "V_Ed", "design shear per metre", KN, Limits::ours(0.0, 1000.0);
        pressed_width: "l_c", "part of the thickness that is pressed", MM, Limits::ours(0.0, 2000.0);
        initial: "f_vk0", "initial shear strength; 0 over a damp course", MPA, Limits::author(0.0, 0.4);
        pressed: "σ_d", "least design compression over the pressed part", MPA, Limits::ours(0.0, 5.0), 0.0;
        gamma: "γ_M", "partial factor of masonry", NONE, Limits::author(1.5, 3.0), 2.5;
    }
}
gives! {
    /// Shear along a joint.
    JointSheared {
        strength: MPA, "characteristic shear strength";
        capacity: KN, "shear it carries per metre";
        utilisation: NONE, "shear over capacity";
    }
}
takes! {
    /// A stem of filled hollow blocks with bars; kNm/m, kN/m, mm, MPa.
    FilledStem {
        moment: "M_Ed", "design moment per metre", KNM, Limits::ours(0.0, 1000.0);
        effective: "d", "depth from the pressed face to the bars", MM, Limits::ours(40.0, 1000.0);
        steel: "A_s", "steel per metre", MM2, Limits::ours(0.0, 10_000.0);
        strength: "f_k", "characteristic compressive strength of the masonry", MPA, Limits::ours(1.0, 20.0);
        yield_stress: "f_yk", "characteristic yield strength of the steel", MPA, Limits::author(200.0, 600.0);
        shear_strength: "f_vk", "characteristic shear strength", MPA, Limits::ours(0.05, 1.0), 0.2;
        gamma: "γ_M", "partial factor of masonry", NONE, Limits::author(1.5, 3.0), 2.5;
        gamma_s: "γ_S", "partial factor of steel", NONE, Limits::ours(1.0, 1.5), 1.15;
    }
}
gives! {
    /// A filled stem.
    FilledBent {
        lever: MM, "lever arm";
        capacity: KNM, "moment it carries per metre";
        shear: KN, "shear it carries per metre";
        utilisation: NONE, "moment over capacity";
    }
}

/// Bending of plain masonry.
///
/// # Source
/// EN 1996-1-1:2005, 6.3.1: M_Rd = (f_xk/γ_M + σ_d) Z, σ_d not over 0.2 f_d (keep to it).
/// # Symbols
/// t thickness, Z = t²/6 per metre, f_xk1 (a bed joint opens) or f_xk2 (spans sideways).
/// # Gives
/// Z and M_Rd per metre.
/// # Not for
/// A joint with a damp course; f_xk1 for a wall whose loss would be a danger (6.3.1(2): then count on weight alone, f_xk 0).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// t 215, f_xk1 0.10, γ_M 2.5, σ_d 0.02: (0.04 + 0.02)·7.70 = 0.462 kNm/m (MA-01).
pub fn en6_flexure<N: Number>(i: &PlainFlexure<N>) -> PlainFlexed<N> {
    let modulus = (i.thickness.squared() * 1000.0 / 6.0).named("Z", Unit::MM3);
    let capacity = ((i.flexural / i.gamma + i.pressed) * modulus / 1e6).named("M_Rd", Unit::KNM);
    PlainFlexed { modulus, capacity, utilisation: (i.moment / capacity).named("M_Ed/M_Rd", Unit::NONE) }
}

/// Shear along a bed joint.
///
/// # Source
/// EN 1996-1-1:2005, 3.6.2 (f_vk = f_vk0 + 0.4 σ_d) and 6.2 (V_Rd = f_vd t l_c).
/// # Symbols
/// f_vk0 initial shear strength, σ_d compression, l_c pressed part of the thickness.
/// # Gives
/// f_vk and V_Rd per metre.
/// # Not for
/// Head joints without mortar (half of f_vk0).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// f_vk0 0.15, σ_d 0.05, l_c 215, γ_M 2.5: 0.17/2.5·215 = 14.6 kN/m (MA-02).
pub fn en6_shear<N: Number>(i: &JointShear<N>) -> JointSheared<N> {
    let strength = (i.initial + i.pressed * 0.4).named("f_vk", Unit::MPA);
    let capacity = (strength / i.gamma * i.pressed_width).named("V_Rd", Unit::KN);
    JointSheared { strength, capacity, utilisation: (i.shear / capacity).named("V_Ed/V_Rd", Unit::NONE) }
}

/// Bending and shear of a filled stem with bars.
///
/// # Source
/// EN 1996-1-1:2005, 6.6.2 (z = d (1 − 0.5 A_s f_yd/(b d f_d)) ≤ 0.95 d, M_Rd = A_s f_yd z, not over 0.4 f_d b d² for units of
/// group 1 other than light ones, 0.3 for others: 0.3 here) and 6.7.2 (V_Rd1 = f_vd b d).
/// # Symbols
/// d, A_s, f_k, f_yk, f_vk, b = 1000 mm.
/// # Gives
/// z, M_Rd, V_Rd1 per metre.
/// # Not for
/// Bars in joints; links; axial load.
/// # Errors
/// The working refuses more steel than the pressed face bears.
/// # By hand
/// d 150, A_s 393, f_k 5, 500, γ_M 2.5: F 170.9 kN, z 107.3 mm, 18.3 kNm, held to 0.3·2·22.5 = 13.5 kNm (MA-03).
pub fn en6_reinforced<N: Number>(i: &FilledStem<N>) -> FilledBent<N> {
    let n = N::constant;
    let (b, d) = (n(1000.0), i.effective);
    let fd = (i.strength / i.gamma).named("f_d", Unit::MPA);
    let force = (i.steel * i.yield_stress / i.gamma_s).named("F_s", Unit::N);
    let lever = (d * (n(1.0) - force / (b * d * fd) / 2.0)).min(n(0.95) * d).named("z", Unit::MM);
    let pressed = (n(0.3) * fd * b * d.squared() / 1e6).named("M_max", Unit::KNM);
    let capacity = (force * lever / 1e6).min(pressed).named("M_Rd", Unit::KNM);
    let shear = (i.shear_strength / i.gamma * d).named("V_Rd1", Unit::KN);
    FilledBent { lever, capacity, shear, utilisation: (i.moment / capacity).named("M_Ed/M_Rd", Unit::NONE) }
}

const fn at(place: &'static str) -> Source {
    Source { work: "EN 1996-1-1:2005", place }
}

/// Working of [`en6_flexure`].
pub static EN6_FLEXURE: Working = Working {
    name: "masonry/flexure-en1996",
    title: "Bending of a metre of plain masonry by EN 1996-1-1.",
    source: at("6.3.1"),
    not_for: "a joint with a damp course; walls whose loss would be a danger, where f_xk1 is not counted",
    inputs: PlainFlexure::INPUTS,
    outputs: PlainFlexed::OUTPUTS,
    run: |g| en6_flexure(&PlainFlexure::put(g)?).found(),
};

/// Working of [`en6_shear`].
pub static EN6_SHEAR: Working = Working {
    name: "masonry/shear-en1996",
    title: "Shear along a bed joint by EN 1996-1-1.",
    source: at("3.6.2, 6.2"),
    not_for: "head joints without mortar",
    inputs: JointShear::INPUTS,
    outputs: JointSheared::OUTPUTS,
    run: |g| en6_shear(&JointShear::put(g)?).found(),
};

/// Working of [`en6_reinforced`].
pub static EN6_REINFORCED: Working = Working {
    name: "masonry/reinforced-en1996",
    title: "Bending and shear of a metre of filled blocks with bars by EN 1996-1-1.",
    source: at("6.6.2, 6.7.2; from memory"),
    not_for: "bars in joints, links, axial load",
    inputs: FilledStem::INPUTS,
    outputs: FilledBent::OUTPUTS,
    run: |g| {
        let i = FilledStem::put(g)?;
        if let Some(why) = too_much_steel(&i.values()) {
            return Err(g.no_answer(why));
        }
        en6_reinforced(&i).found()
    },
};

/// Where the steel is stronger than the pressed face bears, so that its force never comes about.
pub(super) fn too_much_steel(i: &FilledStem<f64>) -> Option<&'static str> {
    let share = i.steel * i.yield_stress / i.gamma_s / (1000.0 * i.effective * i.strength / i.gamma);
    (0.8 < share).then_some("more steel than the pressed masonry bears: the block would fail before the bars")
}
