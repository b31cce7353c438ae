//! What does rot take from timber over the years, and what is left of it in year 15?

use groundhold_quantity::Length;
use groundhold_working::{Limits, Number, Refused, Result, Source, Trace, Unit, Working};

use super::{Code, Effects, Grade, MemberCheck, Section, check_member, decay::after_years};
use crate::{
    given::{gives, takes},
    root::first_reach,
};

/// How durable the timber is against fungi.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Durability {
    /// Heartwood of durability class 1 to 4 in the ground (AS 5604, EN 350; class 5 counts as 4). No sapwood.
    Heartwood(u8),
    /// Sapwood, or a species that is not known, without treatment.
    Sapwood,
    /// Treated through the sapwood for this service life in its use class, in years, as its certificate says (EN 335 use
    /// class 4, hazard class H4 or H5, UC4A to UC4C in the ground).
    Treated {
        /// Service life that the treatment is certified for.
        life_years: f64,
    },
}

/// How well fungi live at the place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Climate {
    /// Dry or cold most of the year.
    Slow,
    /// Temperate.
    Temperate,
    /// Warm and moist.
    Warm,
    /// Hot and wet.
    Hot,
}

takes! {
    /// Rot in the ground.
    Rotting {
        wood: "k_wood", "wood: 0.23, 0.48, 0.76, 1.36 for heartwood of class 1 to 4, 5.44 sapwood of softwood", NONE,
            Limits::author(0.2, 6.0);
        climate: "k_clim", "climate: 0.5 slow, 1.5 temperate, 2.5 warm, 3.0 hot", NONE, Limits::author(0.5, 3.0);
        years: "t", "years of service", NONE, Limits::ours(0.0, 200.0);
    }
}
gives! {
    /// Rot in the ground.
    Rotted {
        rate: MM, "loss of every face in a year, once rot has begun";
        lag: NONE, "years before rot begins";
        loss: MM, "loss of every face";
    }
}

/// Depth of rot on every face of untreated timber in the ground.
///
/// # Source
/// Wang, Leicester & Nguyen, Decay in Ground Contact, Manual 3 of the project Design for Durability, Forest and Wood Products
/// Australia and CSIRO, 2008: r = k_wood k_climate, lag 5.5 r^−0.95, then an even rate. From memory. What little is lost during the
/// lag (their curve c t²) is left out.
/// # Symbols
/// k_wood durability of the wood, k_clim climate, t years.
/// # Gives
/// Rate, lag and loss, mm.
/// # Not for
/// Treated timber (its certificate); termites; timber whose core rots first; a promise of life. The ground line is the worst
/// place.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// Class 2, temperate: r 0.72 mm, lag 7.5 years, at 25 years 12.6 mm (DU-01).
pub fn rot<N: Number>(i: &Rotting<N>) -> Rotted<N> {
    let n = N::constant;
    let rate = (i.wood * i.climate).named("r", Unit::MM);
    let lag = (n(5.5) * rate.powf(-0.95)).named("t₀", Unit::NONE);
    let loss = (rate * (i.years - lag).max(n(0.0))).named("d", Unit::MM);
    Rotted { rate, lag, loss }
}

impl Durability {
    fn wood(self) -> f64 {
        match self {
            Durability::Heartwood(0 | 1) => 0.23,
            Durability::Heartwood(2) => 0.48,
            Durability::Heartwood(3) => 0.76,
            Durability::Heartwood(_) => 1.36,
            Durability::Sapwood => 5.44,
            // Behind the treatment lies timber of no durability (common practice, no source).
            Durability::Treated { .. } => 1.36,
        }
    }
}
impl Climate {
    const fn factor(self) -> f64 {
        match self {
            Climate::Slow => 0.5,
            Climate::Temperate => 1.5,
            Climate::Warm => 2.5,
            Climate::Hot => 3.0,
        }
    }
}

/// Rate in a year and years before it begins, in the ground, with their working. Treated timber keeps its section for the
/// life its certificate says and then rots as class 4 does (common practice, no source).
///
/// # Errors
/// Where a value is out of range.
pub fn rot_of(durability: Durability, climate: Climate) -> Result<(Length, f64, Trace)> {
    let (i, trace) =
        Rotting { wood: durability.wood(), climate: climate.factor(), years: 0.0 }.traced(&ROT_IN_GROUND)?;
    let r = rot(&i);
    let lag = match durability {
        Durability::Treated { life_years } => life_years,
        _ => r.lag,
    };
    Ok((Length::mm(r.rate), lag, trace))
}

/// A member in a year of its life.
#[derive(Debug, Clone, PartialEq)]
pub struct InYear {
    /// Years of service.
    pub years: f64,
    /// What is left of the section.
    pub section: Section,
    /// Bending and shear of what is left.
    pub check: MemberCheck,
    /// Working of the loss.
    pub loss: Trace,
}

/// A member in the ground and what it stands in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ageing<'a> {
    /// Grade.
    pub grade: &'a Grade,
    /// New section.
    pub section: Section,
    /// Rules.
    pub code: Code,
    /// Moments and shears, not factored.
    pub effects: Effects,
    /// Durability.
    pub durability: Durability,
    /// Climate.
    pub climate: Climate,
}

/// What is left of a member after years in the ground, and how much of it is used.
///
/// # Errors
/// Where a value is out of range, or nothing is left of the section.
pub fn in_year(ageing: &Ageing<'_>, years: f64) -> Result<InYear> {
    let (rate, lag, _) = rot_of(ageing.durability, ageing.climate)?;
    let (section, loss) = after_years(&ageing.section, rate, years, lag)?;
    let check = check_member(ageing.grade, &section, &ageing.code, &ageing.effects, Length::ZERO)?;
    Ok(InYear { years, section, check, loss })
}

/// The first year in which the member is used beyond what it carries; `None` where that is not within 200 years. A guide for
/// inspection, never a promise.
///
/// # Errors
/// As [`in_year`] for the new member.
pub fn used_up_in(ageing: &Ageing<'_>) -> Result<Option<f64>> {
    in_year(ageing, 0.0)?;
    // A section of which nothing is left, or too little for the formulas, is used up.
    let used = |years: f64| match in_year(ageing, years) {
        Ok(then) => (then.check.utilisation() - 1.0).min(10.0),
        Err(Refused::NoAnswer { .. } | Refused::OutOfRange { .. }) => 10.0,
        Err(_) => f64::NAN,
    };
    Ok(first_reach(0.0, 200.0, 5.0, used))
}

/// Working of [`rot`].
pub static ROT_IN_GROUND: Working = Working {
    name: "timber/rot-in-ground",
    title: "What rot takes from untreated timber in the ground over the years.",
    source: Source {
        work: "Wang, Leicester & Nguyen, Decay in Ground Contact, Manual 3 of Design for Durability, Forest and Wood Products \
               Australia and CSIRO, 2008",
        place: "rate, lag and factors of wood and climate; from memory",
    },
    not_for: "treated timber, termites, cores that rot first; a promise of life",
    inputs: Rotting::INPUTS,
    outputs: Rotted::OUTPUTS,
    run: |g| rot(&Rotting::put(g)?).found(),
};
