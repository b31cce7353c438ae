//! Does the rod between wall and deadman hold its pull, new and rusted?

use groundhold_quantity::{Force, Length, Pressure};
use groundhold_working::{Limits, Number, Result, Source, Unit, Working};

use crate::{
    Row,
    given::{gives, takes},
};

takes! {
    /// A round rod in tension; kN, mm, MPa.
    Rod {
        pull: "N", "pull", KN, Limits::ours(0.0, 1000.0);
        diameter: "d", "diameter; across the thread's root where it is threaded", MM, Limits::ours(4.0, 80.0);
        loss: "c", "loss by rust per face", MM, Limits::ours(0.0, 10.0), 0.0;
        yield_stress: "f_y", "yield strength", MPA, Limits::ours(150.0, 1000.0);
        share: "k", "share of yield that may be used: 0.6 allowable, 1.0 with factored pull", NONE, Limits::ours(0.4, 1.0), 0.6;
    }
}
gives! {
    /// A rod in tension.
    RodHolds {
        area: MM2, "area left";
        capacity: KN, "pull it holds";
        utilisation: NONE, "pull over capacity";
    }
}

/// Tension of a round rod.
///
/// # Source
/// EN 1993-1-1:2005, 6.2.3 (N = A f_y/γ_M0) with k = 1 and a factored pull; k = 0.6 is the allowable share of AISC's tension
/// yielding (1/1.67, ANSI/AISC 360-16 D2).
/// # Symbols
/// d, c loss per face, f_y, k.
/// # Gives
/// Area left, N, utilisation.
/// # Not for
/// Eyes, hooks and couplers, which are weaker than their rod; a rod bent by soil that settles on it (sleeve it).
/// # Errors
/// The working refuses a rod that rust has used up.
/// # By hand
/// d 16, S235, k 0.6: 201 mm², 28.4 kN (AN-04).
pub fn rod<N: Number>(i: &Rod<N>) -> RodHolds<N> {
    let n = N::constant;
    let left = (i.diameter - n(2.0) * i.loss).max(n(0.0)).named("d'", Unit::MM);
    let area = (n(std::f64::consts::PI) * left.squared() / 4.0).named("A", Unit::MM2);
    let capacity = (i.share * area * i.yield_stress / 1000.0).named("N_R", Unit::KN);
    RodHolds { area, capacity, utilisation: (i.pull / capacity).named("N/N_R", Unit::NONE) }
}

/// Judges a rod of this diameter with this loss per face.
///
/// # Errors
/// Where a value is out of range.
pub fn check_rod(
    diameter: Length,
    loss: Length,
    yield_stress: Pressure,
    share: f64,
    pull: Force,
) -> Result<Row<Force>> {
    let (i, trace) = Rod {
        pull: pull.to_kn(),
        diameter: diameter.to_mm(),
        loss: loss.to_mm(),
        yield_stress: yield_stress.to_mpa(),
        share,
    }
    .traced(&ROD)?;
    Ok(Row::new("rod", pull, Force::kn(rod(&i).capacity), trace))
}

/// Working of [`rod`].
pub static ROD: Working = Working {
    name: "anchor/rod",
    title: "Pull that a rod holds, new and rusted.",
    source: Source { work: "EN 1993-1-1:2005; ANSI/AISC 360-16", place: "6.2.3; D2" },
    not_for: "eyes, hooks, couplers; a rod bent by settling soil",
    inputs: Rod::INPUTS,
    outputs: RodHolds::OUTPUTS,
    run: |g| {
        let i = Rod::put(g)?;
        if i.diameter.value() <= 2.0 * i.loss.value() {
            return Err(g.no_answer("rust has used the rod up"));
        }
        rod(&i).found()
    },
};
