//! How much pull does a buried block or timber take, and how far behind the wall must it lie?

use groundhold_quantity::{Angle, Force, Length, Pressure, UnitWeight};
use groundhold_working::{Limits, Number, Refused, Result, Source, Unit, Working};

use crate::{
    Row,
    given::{gives, takes},
};

takes! {
    /// A block in sand; m, kN/m³.
    Buried {
        foot: "H", "depth of its underside below the ground", M, Limits::ours(0.1, 6.0);
        height: "h", "height of the block", M, Limits::ours(0.05, 3.0);
        length: "B", "length of the block along the wall", M, Limits::ours(0.05, 100.0);
        unit_weight: "γ", "unit weight of the soil, effective below water", KN_M3, Limits::ours(5.0, 25.0);
        phi: "φ", "friction angle", DEG, Limits::ours(15.0, 45.0);
        factor: "F", "wanted ratio of ultimate to pull", NONE, Limits::ours(1.0, 5.0), 2.0;
    }
}
takes! {
    /// A block in undrained clay; m, kPa.
    BuriedClay {
        foot: "H", "depth of its underside below the ground", M, Limits::ours(0.1, 6.0);
        height: "h", "height of the block", M, Limits::ours(0.05, 3.0);
        length: "B", "length of the block along the wall", M, Limits::ours(0.05, 100.0);
        strength: "c_u", "undrained shear strength", KPA, Limits::ours(5.0, 300.0);
        factor: "F", "wanted ratio of ultimate to pull", NONE, Limits::ours(1.0, 5.0), 2.0;
    }
}
gives! {
    /// A buried block.
    BuriedHolds {
        front: KN, "resistance of the strip in front of its length";
        ends: KN, "resistance at its ends";
        ultimate: KN, "ultimate pull";
        capacity: KN, "allowable pull";
    }
}
takes! {
    /// How far back a block must lie; m.
    Placed {
        wall: "H_w", "height of the wall down to where its soil turns", M, Limits::ours(0.1, 10.0);
        foot: "H", "depth of the block's underside below the ground", M, Limits::ours(0.1, 6.0);
        phi: "φ", "friction angle", DEG, Limits::ours(15.0, 45.0);
    }
}
gives! {
    /// How far back a block must lie.
    PlacedBack {
        wedge: M, "foot of the wall's slip wedge at the surface, behind the wall";
        fan: M, "front of the block's own wedge at the surface, before the block";
        back: M, "least distance of the block behind the wall";
    }
}

/// Ultimate and allowable pull of a block in sand.
///
/// # Source
/// NAVFAC DM 7.02 (1986), chapter 3, anchorage by deadmen: a block whose height is at least half of its depth counts as
/// reaching to the ground, ½γH²(K_p − K_a) per length; ends by Teng, Foundation Design (1962): ⅓ K₀ γ (√K_p + √K_a) H³ tan φ,
/// K₀ 0.4. From memory.
/// # Symbols
/// H depth of the underside, h height, B length, K of Rankine.
/// # Gives
/// Resistance in front and at the ends, ultimate and allowable.
/// # Not for
/// A block deeper than twice its height (the working refuses); one within the wall's slip wedge: see `anchor/place`.
/// # Errors
/// The working refuses a block too deep for its height.
/// # By hand
/// H 1, h 0.6, B 1, γ 18, φ 30°: ½·18·(3 − 1/3) = 24.0; ends ⅓·0.4·18·2.309·0.577 = 3.2; 27.2 kN (AN-01).
pub fn buried_sand<N: Number>(i: &Buried<N>) -> BuriedHolds<N> {
    let n = N::constant;
    let kp = (N::degrees(45.0) + i.phi / 2.0).tan().squared().named("K_p", Unit::NONE);
    let ka = (N::degrees(45.0) - i.phi / 2.0).tan().squared().named("K_a", Unit::NONE);
    let front = (n(0.5) * i.unit_weight * i.foot.squared() * (kp - ka) * i.length).named("P_f", Unit::KN);
    let ends =
        (n(0.4) / 3.0 * i.unit_weight * (kp.sqrt() + ka.sqrt()) * i.foot.cubed() * i.phi.tan()).named("P_e", Unit::KN);
    holds(front, ends, i.factor)
}

/// Ultimate and allowable pull of a block in undrained clay.
///
/// # Source
/// NAVFAC DM 7.02 (1986), chapter 3, and Teng, Foundation Design (1962): passive 2c + γz before the block less active γz − 2c
/// (not below 0) behind it is nowhere less than 2c; 2 c_u H per length is counted (ours, careful), and c_u H² at the ends, half of
/// Teng's q_u H². From memory.
/// # Symbols
/// H depth of the underside, B length, c_u.
/// # Gives
/// Resistance in front and at the ends, ultimate and allowable.
/// # Not for
/// Clay that drains: judge it as sand with its friction too.
/// # Errors
/// The working refuses a block too deep for its height.
/// # By hand
/// H 1, B 1, c_u 25: 50 + 25 = 75 kN, with F 2 37.5 kN (AN-02).
pub fn buried_clay<N: Number>(i: &BuriedClay<N>) -> BuriedHolds<N> {
    let n = N::constant;
    let front = (n(2.0) * i.strength * i.foot * i.length).named("P_f", Unit::KN);
    let ends = (i.strength * i.foot.squared()).named("P_e", Unit::KN);
    holds(front, ends, i.factor)
}

fn holds<N: Number>(front: N, ends: N, factor: N) -> BuriedHolds<N> {
    let ultimate = (front + ends).named("A_u", Unit::KN);
    BuriedHolds { front, ends, ultimate, capacity: (ultimate / factor).named("A_a", Unit::KN) }
}

/// How far behind the wall a block must lie so that its wedge and the wall's do not meet.
///
/// # Source
/// NAVFAC DM 7.02 (1986), chapter 3, Figure 20: active wedge of the wall at 45° + φ/2 from its foot, passive wedge of the block at
/// 45° − φ/2 from its underside; the block stands clear where both meet the ground apart. From memory.
/// # Symbols
/// H_w, H, φ.
/// # Gives
/// Both reaches and their sum.
/// # Not for
/// Ground that rises behind the wall.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// H_w 1.2, H 0.6, φ 30°: 0.693 + 1.039 = 1.732 m (AN-03).
pub fn placed<N: Number>(i: &Placed<N>) -> PlacedBack<N> {
    let wedge = (i.wall * (N::degrees(45.0) - i.phi / 2.0).tan()).named("x_w", Unit::M);
    let fan = (i.foot * (N::degrees(45.0) + i.phi / 2.0).tan()).named("x_b", Unit::M);
    PlacedBack { wedge, fan, back: (wedge + fan).named("x", Unit::M) }
}

/// Soil around a deadman.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Soil {
    /// Friction only.
    Sand {
        /// Friction angle.
        phi: Angle,
        /// Unit weight, effective below water.
        unit_weight: UnitWeight,
    },
    /// Clay that has no time to drain.
    Clay {
        /// Undrained shear strength.
        strength: Pressure,
    },
}

/// A buried block, timber or plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Deadman {
    /// Depth of its underside below the ground.
    pub foot: Length,
    /// Its height.
    pub height: Length,
    /// Its length along the wall.
    pub length: Length,
    /// How far it lies behind the wall.
    pub back: Length,
    /// Wanted ratio of ultimate to pull.
    pub factor: f64,
}

/// A deadman judged.
#[derive(Debug, Clone, PartialEq)]
pub struct DeadmanCheck {
    /// Pull against what it holds.
    pub pull: Row<Force>,
    /// Distance needed behind the wall (demand) against where it lies (capacity).
    pub place: Row<Length>,
}

/// Judges a deadman under a pull, behind a wall of this height down to where its soil turns.
///
/// # Errors
/// Where a value is out of range, or the block lies deeper than twice its height.
pub fn check_deadman(deadman: &Deadman, soil: &Soil, wall: Length, pull: Force) -> Result<DeadmanCheck> {
    let (foot, height, length) = (deadman.foot.to_m(), deadman.height.to_m(), deadman.length.to_m());
    if let Some(why) = too_deep(foot, height) {
        return Err(Refused::NoAnswer { working: BLOCK_SAND.name, why: why.into() });
    }
    let factor = deadman.factor;
    let (held, trace, phi) = match *soil {
        Soil::Sand { phi, unit_weight } => {
            let unit_weight = unit_weight.to_kn_per_m3();
            let (i, t) = Buried { foot, height, length, unit_weight, phi: phi.to_deg(), factor }.traced(&BLOCK_SAND)?;
            (buried_sand(&i), t, phi.to_deg())
        }
        Soil::Clay { strength } => {
            let strength = strength.to_kpa();
            let (i, t) = BuriedClay { foot, height, length, strength, factor }.traced(&BLOCK_CLAY)?;
            // Its place is judged by the least friction of the row: wedges of 45° in clay are shorter.
            (buried_clay(&i), t, PHI_OF_CLAY)
        }
    };
    let (p, place) = Placed { wall: wall.to_m(), foot, phi }.traced(&PLACE)?;
    Ok(DeadmanCheck {
        pull: Row::new("deadman", pull, Force::kn(held.capacity), trace),
        place: Row::new("distance behind the wall", Length::m(placed(&p).back), deadman.back, place),
    })
}

/// Friction by which the place of a block in clay is judged; it drains in the end.
const PHI_OF_CLAY: f64 = 20.0;

fn too_deep(foot: f64, height: f64) -> Option<&'static str> {
    match () {
        () if foot < height => Some("the block stands out of the ground: its underside is less deep than it is high"),
        () if 2.0 * height < foot => {
            Some("the block lies deeper than twice its height: these formulas do not hold for it")
        }
        () => None,
    }
}

const NAVFAC: &str = "NAVFAC DM 7.02, Foundations and Earth Structures, 1986; Teng, Foundation Design, 1962";

/// Working of [`buried_sand`].
pub static BLOCK_SAND: Working = Working {
    name: "anchor/deadman-sand",
    title: "Pull that a buried block takes in sand.",
    source: Source { work: NAVFAC, place: "chapter 3, deadman anchorage; ends by Teng; from memory" },
    not_for: "a block deeper than twice its height; one within the wall's slip wedge (anchor/place)",
    inputs: Buried::INPUTS,
    outputs: BuriedHolds::OUTPUTS,
    run: |g| {
        let i = Buried::put(g)?;
        match too_deep(i.foot.value(), i.height.value()) {
            Some(why) => Err(g.no_answer(why)),
            None => buried_sand(&i).found(),
        }
    },
};

/// Working of [`buried_clay`].
pub static BLOCK_CLAY: Working = Working {
    name: "anchor/deadman-clay",
    title: "Pull that a buried block takes in undrained clay.",
    source: Source { work: NAVFAC, place: "chapter 3, deadman anchorage in cohesive soil; from memory, lowered" },
    not_for: "clay that drains: judge it with its friction too",
    inputs: BuriedClay::INPUTS,
    outputs: BuriedHolds::OUTPUTS,
    run: |g| {
        let i = BuriedClay::put(g)?;
        match too_deep(i.foot.value(), i.height.value()) {
            Some(why) => Err(g.no_answer(why)),
            None => buried_clay(&i).found(),
        }
    },
};

/// Working of [`placed`].
pub static PLACE: Working = Working {
    name: "anchor/place",
    title: "How far behind the wall a deadman must lie.",
    source: Source { work: NAVFAC, place: "chapter 3, wedges of wall and anchor; from memory" },
    not_for: "ground that rises behind the wall",
    inputs: Placed::INPUTS,
    outputs: PlacedBack::OUTPUTS,
    run: |g| placed(&Placed::put(g)?).found(),
};
