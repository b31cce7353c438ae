//! What does a post that is fixed on top of rock ask of its plate and dowels?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// A post on a base plate, held down on rock by grouted dowels; kN, m, mm, MPa.
    Dowels {
        force: "P", "horizontal push", KN, Limits::ours(0.0, 10_000.0);
        arm: "h", "height of the push above the plate", M, Limits::ours(0.0, 20.0);
        lever: "z", "from the dowels in tension to the front edge of the plate", M, Limits::ours(0.02, 3.0);
        pulled: "n_t", "dowels in tension", NONE, Limits::ours(1.0, 20.0);
        all: "n", "dowels in all", NONE, Limits::ours(1.0, 40.0);
        hole: "d_h", "diameter of the drilled hole", MM, Limits::ours(8.0, 200.0);
        bond: "τ", "ultimate bond of grout to rock", MPA, Limits::ours(0.01, 5.0);
        factor: "F", "wanted ratio of bond to pull", NONE, Limits::ours(1.0, 10.0), 3.0;
    }
}
gives! {
    /// What dowels and plate are asked to take. A demand, no approval.
    DowelDemand {
        moment: KNM, "moment at the plate";
        tension: KN, "pull on one dowel";
        shear: KN, "shear on one dowel";
        length: MM, "bonded length in sound rock";
    }
}

/// What a post fixed on top of the rock asks of its plate and dowels. An engineer designs the fixing.
///
/// # Source
/// Statics; bonded length from an even bond, π d τ L, as in Littlejohn & Bruce, Rock Anchors: State of the Art, Ground
/// Engineering, 1975-76; factor 3 on bond there for permanent anchors (from memory).
/// # Symbols
/// P, h, z lever, n_t dowels in tension, n all dowels, d_h hole, τ bond, F factor.
/// # Gives
/// Moment, pull and shear per dowel, and bonded length.
/// # Not for
/// Approval: steel, plate, edge distance, cracked rock and corrosion are for an engineer.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// P 2, h 1, z 0.2, 2 of 4 dowels, d_h 30, τ 0.5, F 3: T = 5 kN, L = 3·5000/(π·30·0.5) = 318 mm (RK-03).
pub fn dowels<N: Number>(i: &Dowels<N>) -> DowelDemand<N> {
    let n = N::constant;
    let moment = (i.force * i.arm).named("M", Unit::KNM);
    let tension = (moment / (i.lever * i.pulled)).named("T", Unit::KN);
    let shear = (i.force / i.all).named("V", Unit::KN);
    let length = (i.factor * tension * 1000.0 / (n(std::f64::consts::PI) * i.hole * i.bond)).named("L_b", Unit::MM);
    DowelDemand { moment, tension, shear, length }
}

/// Working of [`dowels`].
pub static ROCK_DOWELS: Working = Working {
    name: "embed/rock-dowels",
    title: "What a post fixed on top of rock asks of its plate and dowels (for an engineer).",
    source: Source {
        work: "statics; Littlejohn & Bruce, Rock Anchors: State of the Art, Ground Engineering, 1975-76",
        place: "even bond along the hole, factor 3; from memory",
    },
    not_for: "approval: steel, plate, edges, cracked rock and corrosion are for an engineer",
    inputs: Dowels::INPUTS,
    outputs: DowelDemand::OUTPUTS,
    run: |g| dowels(&Dowels::put(g)?).found(),
};
