//! What does timber carry at a notch and where it is pressed across the grain?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// A notched end by EN 1995-1-1; kN, mm, MPa.
    EnNotch {
        shear: "V_d", "design shear force", KN, Limits::ours(0.0, 1000.0);
        breadth: "b", "breadth", MM, Limits::ours(10.0, 1000.0);
        depth: "h", "depth of the whole section", MM, Limits::ours(20.0, 1000.0);
        left: "h_ef", "depth left at the notch, notch on the side of the support", MM, Limits::ours(10.0, 1000.0);
        off: "x", "from the support's force to the notch", MM, Limits::ours(0.0, 1000.0);
        slope: "i", "run of the notch over its depth; 0 for a square one", NONE, Limits::ours(0.0, 10.0), 0.0;
        strength: "f_v,k", "characteristic shear strength", MPA, Limits::ours(0.5, 20.0);
        kmod: "k_mod", "modification factor for duration and moisture", NONE, Limits::author(0.5, 1.1);
        gamma_m: "γ_M", "partial factor for the material", NONE, Limits::ours(1.0, 2.0), 1.3;
        kcr: "k_cr", "factor for cracks", NONE, Limits::ours(0.3, 1.0), 0.67;
    }
}
takes! {
    /// Bearing across the grain by EN 1995-1-1; kN, mm, MPa.
    EnBearing {
        force: "F_d", "design force", KN, Limits::ours(0.0, 1000.0);
        breadth: "b", "breadth of the contact", MM, Limits::ours(5.0, 1000.0);
        length: "l", "length of the contact along the grain", MM, Limits::ours(5.0, 1000.0);
        beyond: "Δl", "length of timber that counts beyond the contact, both sides together, at most 60 mm", MM, Limits::author(0.0, 60.0), 0.0;
        kc90: "k_c,90", "1 in general, 1.25 softwood on a sill, 1.5 softwood on supports apart", NONE, Limits::author(1.0, 1.75), 1.0;
        strength: "f_c,90,k", "characteristic strength across the grain", MPA, Limits::ours(0.5, 20.0);
        kmod: "k_mod", "modification factor for duration and moisture", NONE, Limits::author(0.5, 1.1);
        gamma_m: "γ_M", "partial factor for the material", NONE, Limits::ours(1.0, 2.0), 1.3;
    }
}
takes! {
    /// Bearing across the grain by the NDS; kN, mm, MPa.
    NdsBearing {
        force: "F", "force", KN, Limits::ours(0.0, 1000.0);
        breadth: "b", "breadth of the contact", MM, Limits::ours(5.0, 1000.0);
        length: "l_b", "length of the contact along the grain", MM, Limits::ours(5.0, 1000.0);
        strength: "F_c⊥", "reference value across the grain", MPA, Limits::ours(0.5, 20.0);
        cm: "C_M", "0.67 wet, else 1", NONE, Limits::author(0.67, 1.0), 1.0;
        ct: "C_t", "temperature: 1 up to 38 °C", NONE, Limits::author(0.5, 1.0), 1.0;
    }
}
takes! {
    /// A notched end by the NDS; kN, mm, MPa.
    NdsNotch {
        shear: "V", "shear force", KN, Limits::ours(0.0, 1000.0);
        breadth: "b", "breadth", MM, Limits::ours(10.0, 1000.0);
        depth: "d", "depth of the whole section", MM, Limits::ours(20.0, 1000.0);
        left: "d_n", "depth left at the notch", MM, Limits::ours(10.0, 1000.0);
        strength: "F_v'", "allowable shear stress, all factors on it", MPA, Limits::ours(0.2, 10.0);
    }
}
gives! {
    /// A detail.
    DetailHolds {
        factor: NONE, "factor on the strength: k_v, k_c,90, C_b or (d_n/d)²";
        strength: MPA, "design or allowable strength";
        capacity: KN, "force it carries";
        utilisation: NONE, "force over capacity";
    }
}

fn holds<N: Number>(factor: N, strength: N, capacity: N, asked: N) -> DetailHolds<N> {
    DetailHolds { factor, strength, capacity, utilisation: (asked / capacity).named("η", Unit::NONE) }
}

/// Shear at a notched end.
///
/// # Source
/// EN 1995-1-1:2004+A1, 6.5.2: τ = 1.5 V/(b_ef h_ef) ≤ k_v f_v,d, k_n 5 for solid timber.
/// # Symbols
/// α = h_ef/h, x, i, h.
/// # Gives
/// k_v and the shear force the notch carries.
/// # Not for
/// A notch on the far side of the support (k_v 1); glued timber (k_n 6.5).
/// # Errors
/// The working refuses a notch that leaves more than the section.
/// # By hand
/// h 150, h_ef 100, x 50, square: α 0.667, k_v = 5/(12.25·(0.471 + 0.267·1.027)) = 0.548 (DT-01).
pub fn en_notch<N: Number>(i: &EnNotch<N>) -> DetailHolds<N> {
    let n = N::constant;
    let a = (i.left / i.depth).named("α", Unit::NONE);
    let root = i.depth.sqrt();
    let taper = if i.slope.value() == 0.0 { n(1.0) } else { n(1.0) + n(1.1) * i.slope.powf(1.5) / root };
    let under = (a * (n(1.0) - a)).sqrt() + n(0.8) * i.off / i.depth * (n(1.0) / a - a.squared()).sqrt();
    let kv = if i.left.value() == i.depth.value() { n(1.0) } else { (n(5.0) * taper / (root * under)).min(n(1.0)) };
    let kv = kv.named("k_v", Unit::NONE);
    let strength = (kv * i.kmod * i.strength / i.gamma_m).named("k_v f_v,d", Unit::MPA);
    let capacity = (strength * i.kcr * i.breadth * i.left / 1500.0).named("V_R,d", Unit::KN);
    holds(kv, strength, capacity, i.shear)
}

/// Bearing across the grain.
///
/// # Source
/// EN 1995-1-1:2004+A1, 6.1.5: σ = F/A_ef ≤ k_c,90 f_c,90,d; 30 mm more at each side, not over a, l or l₁/2.
/// # Symbols
/// b, l contact, k_c,90.
/// # Gives
/// The force the contact carries.
/// # Not for
/// Contacts where the crush itself does harm.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// b 45, l 100, Δl 60, C24, k_mod 0.5: 2.5·0.5/1.3 = 0.962 MPa, 7200 mm²: 6.92 kN (DT-02).
pub fn en_bearing<N: Number>(i: &EnBearing<N>) -> DetailHolds<N> {
    let strength = (i.kc90 * i.kmod * i.strength / i.gamma_m).named("k_c,90 f_c,90,d", Unit::MPA);
    let area = (i.breadth * (i.length + i.beyond)).named("A_ef", Unit::MM2);
    let capacity = (strength * area / 1000.0).named("F_R,d", Unit::KN);
    holds(i.kc90, strength, capacity, i.force)
}

/// Bearing across the grain, allowable.
///
/// # Source
/// NDS 2018, 3.10.2 and 3.10.4: F_c⊥' = F_c⊥ C_M C_t C_b, C_b = (l_b + 0.375)/l_b (in) for contacts under 6 in.
/// # Symbols
/// b, l_b contact, C factors. Load duration does not count.
/// # Gives
/// C_b and the allowable force.
/// # Not for
/// Contacts within 3 in of an end (then C_b is 1: careful people leave it so).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// l_b 1.5 in: C_b 1.25 (NDS Table 3.10.4) (DT-03).
pub fn nds_bearing<N: Number>(i: &NdsBearing<N>) -> DetailHolds<N> {
    let n = N::constant;
    let cb = if i.length.value() < 152.4 { (i.length + 9.525) / i.length } else { n(1.0) };
    let cb = cb.named("C_b", Unit::NONE);
    let strength = (i.strength * i.cm * i.ct * cb).named("F_c⊥'", Unit::MPA);
    let capacity = (strength * i.breadth * i.length / 1000.0).named("F_a", Unit::KN);
    holds(cb, strength, capacity, i.force)
}

/// Shear at a notched end, allowable.
///
/// # Source
/// NDS 2018, 3.4.3.2(a): V' = (2/3 F_v' b d_n)(d_n/d)².
/// # Symbols
/// b, d, d_n, F_v'.
/// # Gives
/// The square and the allowable shear.
/// # Not for
/// Notches deeper than a quarter of the depth in sawn timber at the end (4.4.3).
/// # Errors
/// The working refuses a notch that leaves more than the section.
/// # By hand
/// b 38, d 184, d_n 138, F_v' 1.2: 2/3·1.2·38·138·0.5625 = 2.36 kN (DT-04).
pub fn nds_notch<N: Number>(i: &NdsNotch<N>) -> DetailHolds<N> {
    let n = N::constant;
    let share = (i.left / i.depth).squared().named("(d_n/d)²", Unit::NONE);
    let capacity = (n(2.0) / 3.0 * i.strength * i.breadth * i.left * share / 1000.0).named("V'", Unit::KN);
    holds(share, i.strength, capacity, i.shear)
}

/// Temperature factor for bending, shear and bearing of wet and dry timber, NDS 2018 Table 2.3.3: up to 100 °F, 125 °F, 150 °F.
/// `None` above.
pub fn ct(celsius: f64, wet: bool) -> Option<f64> {
    match celsius {
        t if t <= 37.8 => Some(1.0),
        t if t <= 51.7 => Some(if wet { 0.7 } else { 0.8 }),
        t if t <= 65.6 => Some(if wet { 0.5 } else { 0.7 }),
        _ => None,
    }
}

const EN: &str = "EN 1995-1-1:2004+A1:2008";
const NDS: &str = "National Design Specification for Wood Construction, 2018";
const MORE: &str = "the notch leaves more than the whole section";

/// Working of [`en_notch`].
pub static EN_NOTCH: Working = Working {
    name: "timber/notch-en1995",
    title: "Shear at a notched end by EN 1995-1-1.",
    source: Source { work: EN, place: "6.5.2, equations 6.60 to 6.63" },
    not_for: "a notch on the far side of the support; glued timber",
    inputs: EnNotch::INPUTS,
    outputs: DetailHolds::OUTPUTS,
    run: |g| {
        let i = EnNotch::put(g)?;
        if i.depth.value() < i.left.value() {
            return Err(g.no_answer(MORE));
        }
        en_notch(&i).found()
    },
};

/// Working of [`en_bearing`].
pub static EN_BEARING: Working = Working {
    name: "timber/bearing-en1995",
    title: "Bearing across the grain by EN 1995-1-1.",
    source: Source { work: EN, place: "6.1.5" },
    not_for: "contacts where the crush itself does harm",
    inputs: EnBearing::INPUTS,
    outputs: DetailHolds::OUTPUTS,
    run: |g| en_bearing(&EnBearing::put(g)?).found(),
};

/// Working of [`nds_bearing`].
pub static NDS_BEARING: Working = Working {
    name: "timber/bearing-nds",
    title: "Bearing across the grain by the NDS.",
    source: Source { work: NDS, place: "3.10.2, 3.10.4, Table 3.10.4" },
    not_for: "contacts within 3 in of an end",
    inputs: NdsBearing::INPUTS,
    outputs: DetailHolds::OUTPUTS,
    run: |g| nds_bearing(&NdsBearing::put(g)?).found(),
};

/// Working of [`nds_notch`].
pub static NDS_NOTCH: Working = Working {
    name: "timber/notch-nds",
    title: "Shear at a notched end by the NDS.",
    source: Source { work: NDS, place: "3.4.3.2(a)" },
    not_for: "notches deeper than a quarter of the depth",
    inputs: NdsNotch::INPUTS,
    outputs: DetailHolds::OUTPUTS,
    run: |g| {
        let i = NdsNotch::put(g)?;
        if i.depth.value() < i.left.value() {
            return Err(g.no_answer(MORE));
        }
        nds_notch(&i).found()
    },
};
