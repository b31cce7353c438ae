//! What does a strip of reinforced concrete carry in bending and shear by ACI 318?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// Bending of a strip one metre wide; kNm/m, mm, MPa.
    AciBending {
        moment: "M_u", "factored moment per metre", KNM, Limits::ours(0.0, 10_000.0);
        thickness: "h", "thickness", MM, Limits::ours(60.0, 2000.0);
        effective: "d", "depth from the pressed face to the steel", MM, Limits::ours(40.0, 2000.0);
        steel: "A_s", "steel per metre", MM2, Limits::ours(0.0, 20_000.0);
        strength: "f_c'", "specified compressive strength", MPA, Limits::author(17.0, 70.0);
        yield_stress: "f_y", "specified yield strength of the steel", MPA, Limits::author(275.0, 550.0);
        phi: "φ_f", "strength reduction", NONE, Limits::author(0.65, 0.9), 0.9;
    }
}
gives! {
    /// Bending of a strip.
    AciBent {
        block: MM, "depth of the stress block";
        strain: NONE, "strain of the steel when the concrete fails";
        least: MM2, "least steel per metre";
        capacity: KNM, "moment the strip carries per metre";
        utilisation: NONE, "moment over capacity";
    }
}
takes! {
    /// Shear of a strip without links; kN/m, mm, MPa.
    AciShear {
        shear: "V_u", "factored shear per metre", KN, Limits::ours(0.0, 10_000.0);
        effective: "d", "depth from the pressed face to the steel", MM, Limits::ours(40.0, 2000.0);
        steel: "A_s", "steel per metre", MM2, Limits::ours(0.0, 20_000.0);
        strength: "f_c'", "specified compressive strength", MPA, Limits::author(17.0, 70.0);
        phi: "φ_v", "strength reduction", NONE, Limits::author(0.75, 0.75), 0.75;
    }
}
gives! {
    /// Shear of a strip.
    AciSheared {
        stress: MPA, "shear stress that the strip carries";
        capacity: KN, "shear that the strip carries per metre";
        utilisation: NONE, "shear over capacity";
    }
}

/// Bending with the rectangular stress block.
///
/// # Source
/// ACI 318-19, 22.2 and 22.3: a = A_s f_y/(0.85 f_c' b), φM_n = φ A_s f_y (d − a/2); least steel 0.0018 b h (7.6.1.1, 11.6.1, 24.4).
/// # Symbols
/// A_s, d, h, f_c', f_y, b = 1000 mm; β₁ of 22.2.2.4.3.
/// # Gives
/// a, strain of the steel, least steel, φM_n per metre.
/// # Not for
/// Steel on the pressed side; axial load.
/// # Errors
/// The working refuses steel so strong that it strains less than 0.005 (then φ falls).
/// # By hand
/// 12 in wide, 0.44 in², d 9.5 in, 60 ksi, 4000 psi: a 0.647 in, 18.17 kip ft (ST-02).
pub fn aci_bending<N: Number>(i: &AciBending<N>) -> AciBent<N> {
    let n = N::constant;
    let b = n(1000.0);
    let block = (i.steel * i.yield_stress / (n(0.85) * i.strength * b)).named("a", Unit::MM);
    // 0.85 to 4000 psi, 0.05 less per 1000 psi, not under 0.65.
    let beta = (n(0.85) - n(0.05) * (i.strength - 27.58) / 6.895).min(n(0.85)).max(n(0.65)).named("β₁", Unit::NONE);
    let strain = if i.steel.value() == 0.0 {
        n(1.0)
    } else {
        (n(0.003) * (i.effective * beta / block - 1.0)).named("ε_t", Unit::NONE)
    };
    let least = (n(0.0018) * b * i.thickness).named("A_s,min", Unit::MM2);
    let capacity = (i.phi * i.steel * i.yield_stress * (i.effective - block / 2.0) / 1e6).named("φM_n", Unit::KNM);
    AciBent { block, strain, least, capacity, utilisation: (i.moment / capacity).named("M_u/φM_n", Unit::NONE) }
}

/// Shear without links.
///
/// # Source
/// ACI 318-19, Table 22.5.5.1(c): V_c = 8 λ_s ρ^(1/3) √f_c' b d (psi), not over 5 √f_c' b d, λ_s = √(2/(1 + d/10 in)) ≤ 1;
/// in MPa 0.66 and 0.42. Foundations may take λ_s = 1 (13.2.6.2), which is not done here.
/// # Symbols
/// ρ = A_s/(b d), d, f_c', b = 1000 mm.
/// # Gives
/// φV_c per metre.
/// # Not for
/// Strips with links or axial load; lightweight concrete.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// d 200, A_s 565, 28 MPa: ρ^(1/3) 0.1414, 0.66·0.1414·5.292 = 0.494 MPa, 74.1 kN/m (CO-06).
pub fn aci_shear<N: Number>(i: &AciShear<N>) -> AciSheared<N> {
    let n = N::constant;
    let share = (i.steel / (n(1000.0) * i.effective)).named("ρ_w", Unit::NONE);
    let size = (n(2.0) / (n(1.0) + i.effective / 254.0)).sqrt().min(n(1.0)).named("λ_s", Unit::NONE);
    let held = n(0.66) * size * share.powf(1.0 / 3.0) * i.strength.sqrt();
    let stress = held.min(n(0.42) * i.strength.sqrt()).named("v_c", Unit::MPA);
    let capacity = (i.phi * stress * i.effective).named("φV_c", Unit::KN);
    AciSheared { stress, capacity, utilisation: (i.shear / capacity).named("V_u/φV_c", Unit::NONE) }
}

/// Working of [`aci_bending`].
pub static ACI_BENDING: Working = Working {
    name: "concrete/bending-aci318",
    title: "Bending of a metre of reinforced concrete by ACI 318.",
    source: Source { work: "ACI 318-19", place: "22.2, 22.3, 7.6.1.1, 24.4.3.2; from memory" },
    not_for: "steel on the pressed side; axial load",
    inputs: AciBending::INPUTS,
    outputs: AciBent::OUTPUTS,
    run: |g| {
        let bent = aci_bending(&AciBending::put(g)?);
        if bent.strain.value() < 0.005 {
            return Err(
                g.no_answer("too much steel: it strains less than 0.005 when the concrete fails (φ falls then)")
            );
        }
        bent.found()
    },
};

/// Working of [`aci_shear`].
pub static ACI_SHEAR: Working = Working {
    name: "concrete/shear-aci318",
    title: "Shear of a metre of reinforced concrete without links by ACI 318.",
    source: Source { work: "ACI 318-19", place: "Table 22.5.5.1(c), 22.5.5.1.3; from memory" },
    not_for: "links, axial load, lightweight concrete",
    inputs: AciShear::INPUTS,
    outputs: AciSheared::OUTPUTS,
    run: |g| aci_shear(&AciShear::put(g)?).found(),
};
