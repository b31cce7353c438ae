//! How far must bars lap?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// A lap by EN 1992-1-1; mm, MPa.
    En2Lap {
        bar: "φ", "bar diameter", MM, Limits::ours(5.0, 32.0);
        stress: "σ_sd", "design stress of the bar: f_yk/1.15 where it is used up", MPA, Limits::ours(0.0, 600.0);
        strength: "f_ck", "characteristic cylinder strength", MPA, Limits::author(12.0, 50.0);
        position: "η₁", "1 good bond, 0.7 otherwise", NONE, Limits::author(0.7, 1.0), 1.0;
        together: "α₆", "1.5 where more than half of the bars lap at one place", NONE, Limits::author(1.0, 1.5), 1.5;
        gamma_c: "γ_C", "partial factor of concrete", NONE, Limits::ours(1.0, 2.0), 1.5;
    }
}
takes! {
    /// A lap by ACI 318; mm, MPa.
    AciLap {
        bar: "d_b", "bar diameter, up to No. 6", MM, Limits::author(9.0, 19.5);
        yield_stress: "f_y", "specified yield strength of the steel", MPA, Limits::author(275.0, 550.0);
        strength: "f_c'", "specified compressive strength", MPA, Limits::author(17.0, 70.0);
        top: "ψ_t", "1.3 with over 300 mm of fresh concrete below, else 1", NONE, Limits::author(1.0, 1.3), 1.0;
        lap: "k", "1.3 class B, 1.0 class A", NONE, Limits::author(1.0, 1.3), 1.3;
    }
}
takes! {
    /// A standard hook by ACI 318; mm, MPa.
    AciHook {
        bar: "d_b", "bar diameter, up to No. 11", MM, Limits::author(9.0, 36.0);
        yield_stress: "f_y", "specified yield strength of the steel", MPA, Limits::author(275.0, 550.0);
        strength: "f_c'", "specified compressive strength", MPA, Limits::author(17.0, 70.0);
        close: "ψ_r", "1.6 where bars stand closer than six diameters, else 1", NONE, Limits::author(1.0, 1.6), 1.0;
        place: "ψ_o", "1.0 inside a column's core or with 6 d_b of side cover, else 1.25", NONE, Limits::author(1.0, 1.25), 1.25;
    }
}
gives! {
    /// A standard hook.
    AciHooked {
        length: MM, "depth from the section to the outside of the hook";
    }
}
gives! {
    /// A lap.
    Lapped {
        anchorage: MM, "length in which the bar takes its stress";
        lap: MM, "lap";
    }
}

/// Lap of ribbed bars.
///
/// # Source
/// EN 1992-1-1:2004, 8.4.2 (f_bd = 2.25 η₁ f_ctd), 8.4.3 (l = φ/4 σ/f_bd), 8.7.3 (l₀ = α₆ l, at least 0.3 α₆ l, 15 φ, 200 mm).
/// # Symbols
/// φ, σ_sd, f_ctd = 0.7·0.3 f_ck^(2/3)/γ_C, η₁, α₆.
/// # Gives
/// Anchorage and lap, all other α = 1.
/// # Not for
/// Bars over 32 mm; bundles.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 12 mm, 435 MPa, C30: f_bd 3.04 MPa, l 429 mm, lap 643 mm (CO-05).
pub fn en2_lap<N: Number>(i: &En2Lap<N>) -> Lapped<N> {
    let n = N::constant;
    let tension = (n(0.21) * i.strength.powf(2.0 / 3.0) / i.gamma_c).named("f_ctd", Unit::MPA);
    let bond = (n(2.25) * i.position * tension).named("f_bd", Unit::MPA);
    let anchorage = (i.bar / 4.0 * i.stress / bond).named("l_b,rqd", Unit::MM);
    let lap = (i.together * anchorage).max(n(15.0) * i.bar).max(n(200.0)).named("l₀", Unit::MM);
    Lapped { anchorage, lap }
}

/// Lap of uncoated bars up to No. 6 with the usual cover and spacing.
///
/// # Source
/// ACI 318-19, Table 25.4.2.3 (l_d = f_y ψ_t/(25 √f_c') d_b in psi, 2.1 in MPa), 25.5.2.1 (class B 1.3 l_d, at least 12 in).
/// # Symbols
/// d_b, f_y, f_c', ψ_t.
/// # Gives
/// Development length and lap.
/// # Not for
/// Epoxy coated bars, lightweight concrete, bars closer than two diameters.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// No. 5, 60 ksi, 4000 psi: 60 000/(25·63.2)·0.625 = 23.7 in, lap 30.8 in (CO-07).
pub fn aci_lap<N: Number>(i: &AciLap<N>) -> Lapped<N> {
    let n = N::constant;
    // 25 √(psi) over psi is 25·√145.04/145.04 in MPa.
    let anchorage =
        (i.yield_stress * i.top * i.bar / (n(2.0758) * i.strength.sqrt())).max(n(300.0)).named("l_d", Unit::MM);
    Lapped { anchorage, lap: (i.lap * anchorage).max(n(300.0)).named("l_st", Unit::MM) }
}

/// Development of a bar with a standard hook.
///
/// # Source
/// ACI 318-19, 25.4.3.1: l_dh = f_y ψ_r ψ_o ψ_c/(55 √f_c') d_b^1.5 (psi, in; 23 in MPa, mm), at least 8 d_b and 6 in; ψ_c =
/// f_c'/15 000 + 0.6 under 6000 psi, else 1.
/// # Symbols
/// d_b, f_y, f_c', ψ_r, ψ_o.
/// # Gives
/// l_dh.
/// # Not for
/// Coated bars, lightweight concrete.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// No. 4, 60 ksi, 4000 psi, ψ_r 1, ψ_o 1.25: ψ_c 0.867, 60 000·1.25·0.867/(55·63.25)·0.3536 = 6.61 in = 168 mm (CO-10).
pub fn aci_hook<N: Number>(i: &AciHook<N>) -> AciHooked<N> {
    let n = N::constant;
    let mix = (i.strength / 103.42 + 0.6).min(n(1.0)).named("ψ_c", Unit::NONE);
    // 55 √(psi) with d_b^1.5 in inches is 23.02 √(MPa) with millimetres.
    let free = i.yield_stress * i.close * i.place * mix / (n(23.02) * i.strength.sqrt()) * i.bar.powf(1.5);
    AciHooked { length: free.max(n(8.0) * i.bar).max(n(152.4)).named("l_dh", Unit::MM) }
}

/// Working of [`aci_hook`].
pub static ACI_HOOK: Working = Working {
    name: "concrete/hook-aci318",
    title: "Development length of a bar with a standard hook by ACI 318.",
    source: Source { work: "ACI 318-19", place: "25.4.3.1, 25.4.3.2; from memory" },
    not_for: "coated bars, lightweight concrete",
    inputs: AciHook::INPUTS,
    outputs: AciHooked::OUTPUTS,
    run: |g| aci_hook(&AciHook::put(g)?).found(),
};

/// Working of [`en2_lap`].
pub static EN2_LAP: Working = Working {
    name: "concrete/lap-en1992",
    title: "Anchorage and lap of a bar by EN 1992-1-1.",
    source: Source { work: "EN 1992-1-1:2004", place: "8.4.2, 8.4.3, 8.7.3" },
    not_for: "bars over 32 mm, bundles",
    inputs: En2Lap::INPUTS,
    outputs: Lapped::OUTPUTS,
    run: |g| en2_lap(&En2Lap::put(g)?).found(),
};

/// Working of [`aci_lap`].
pub static ACI_LAP: Working = Working {
    name: "concrete/lap-aci318",
    title: "Development length and lap of a bar by ACI 318.",
    source: Source { work: "ACI 318-19", place: "Table 25.4.2.3, 25.5.2.1; from memory" },
    not_for: "coated bars, lightweight concrete, bars closer than two diameters",
    inputs: AciLap::INPUTS,
    outputs: Lapped::OUTPUTS,
    run: |g| aci_lap(&AciLap::put(g)?).found(),
};
