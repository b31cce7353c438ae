//! What must be lifted by hand, and how many loads does the vehicle carry?

use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Density, Length, Mass, Volume, trim};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working, check_range};

use crate::{findings::HEAVY_PIECE, packs::up};

/// Mass of a straight piece of one section.
///
/// # Source
/// Geometry. Densities are common practice, no source: treated pine 550–800 kg/m³, the upper end fresh from treatment;
/// hardwood 900–1100; reinforced concrete 2500.
/// # Symbols
/// | b, t | width and thickness | 5–1000 mm (ours) |
/// | l | length | 0–12 m (ours) |
/// | ρ | density as carried, wet | 100–9000 kg/m³ (ours) |
/// # Gives
/// Mass in kg.
/// # Not for
/// Round or hollow sections.
/// # Errors
/// None of its own; [`BOARD_MASS`] checks the limits.
/// # By hand
/// 200 × 100 mm, 2.4 m at 800 kg/m³: 0.02 · 2.4 · 800 = 38.4 kg.
fn mass_of<N: Number>(width: N, thickness: N, length: N, density: N) -> N {
    let volume = (width * thickness * length / 1e6).named("V", Unit::M3);
    (volume * density).named("m", Unit::KG)
}

/// `order/board-mass`: mass of a board or post.
pub static BOARD_MASS: Working = Working {
    name: "order/board-mass",
    title: "Mass of a board, post or panel of one section.",
    source: Source {
        work: "Geometry; densities are common practice, no source", place: "treated pine 550–800 kg/m³"
    },
    not_for: "Round or hollow sections.",
    inputs: &[
        Input::new("width", "b", "width", Unit::MM, Limits::ours(5.0, 1000.0)),
        Input::new("thickness", "t", "thickness", Unit::MM, Limits::ours(5.0, 1000.0)),
        Input::new("length", "l", "length", Unit::M, Limits::ours(0.0, 12.0)),
        Input::new("density", "ρ", "density as carried", Unit::KG_M3, Limits::ours(100.0, 9000.0)).or(800.0),
    ],
    outputs: &[Output { key: "mass", words: "mass", unit: Unit::KG }],
    run: |g| Ok(vec![Found::One(mass_of(g.one("width")?, g.one("thickness")?, g.one("length")?, g.one("density")?))]),
};

/// Mass of a straight piece, with its working.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] outside the limits of [`BOARD_MASS`].
pub fn piece_mass(width: Length, thickness: Length, length: Length, density: Density) -> Result<(Mass, Trace)> {
    let given = [width.to_mm(), thickness.to_mm(), length.to_m(), density.to_kg_per_m3()];
    BOARD_MASS.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(BOARD_MASS.name, row, v))?;
    let [b, t, l, r] = given;
    Ok((Mass::kg(mass_of(b, t, l, r)), Trace::new(&BOARD_MASS, given.iter().map(|v| (*v).into()).collect())))
}

/// Recommended weight limit of a lift.
///
/// # Source
/// From memory: Waters, Putz-Anderson and Garg, Applications Manual for the Revised NIOSH Lifting Equation, DHHS
/// (NIOSH) 94-110 (1994), section 1.3, metric multipliers.
/// # Symbols
/// | H | hands in front of the ankles | 25–63 cm (author) |
/// | V | hands above the floor | 0–175 cm (author) |
/// | D | travel of the lift | 25–175 cm (author) |
/// | A | twist | 0–135° (author) |
/// | F, C | frequency and grip multipliers, from the manual's tables | 0–1 |
/// # Gives
/// Mass in kg that nearly all healthy workers may lift in that way; 23 kg at best.
/// # Not for
/// One-handed lifts, kneeling, shovelling, carrying, slippery or sloping footing.
/// # Errors
/// None of its own; [`LIFT`] checks the limits.
/// # By hand
/// H 40, V 30, D 50 cm, no twist: 23 · 25/40 · (1 − 0.003·45) · (0.82 + 4.5/50) = 11.3 kg.
fn recommended<N: Number>(h: N, v: N, d: N, a: N, f: N, c: N) -> N {
    let hm = (N::constant(25.0) / h).named("HM", Unit::NONE);
    let vm = (N::constant(1.0) - (v - 75.0).abs() * 0.003).named("VM", Unit::NONE);
    let dm = (N::constant(4.5) / d + 0.82).named("DM", Unit::NONE);
    let am = (N::constant(1.0) - a * 0.0032).named("AM", Unit::NONE);
    (N::constant(LOAD_CONSTANT.to_kg()) * hm * vm * dm * am * f * c).named("RWL", Unit::KG)
}

/// The load constant of the equation, 23 kg: the most that it recommends. From memory, NIOSH 94-110 (1994).
pub const LOAD_CONSTANT: Mass = Mass::kg(23.0);
const CM: Unit = Unit("cm");

/// `order/lift`: recommended weight limit of a lift.
pub static LIFT: Working = Working {
    name: "order/lift",
    title: "Recommended weight limit of a two-handed lift.",
    source: Source {
        work: "From memory: Waters, Putz-Anderson, Garg, Applications Manual for the Revised NIOSH Lifting Equation, \
               DHHS (NIOSH) 94-110, 1994",
        place: "section 1.3",
    },
    not_for: "One-handed lifts, kneeling, shovelling, carrying, slippery or sloping footing.",
    inputs: &[
        Input::new("reach", "H", "hands in front of the ankles", CM, Limits::author(25.0, 63.0)),
        Input::new("height", "V", "hands above the floor", CM, Limits::author(0.0, 175.0)),
        Input::new("travel", "D", "travel of the lift", CM, Limits::author(25.0, 175.0)),
        Input::new("twist", "A", "twist in degrees", Unit::NONE, Limits::author(0.0, 135.0)).or(0.0),
        Input::new("frequency", "F", "frequency multiplier", Unit::NONE, Limits::author(0.0, 1.0)).or(1.0),
        Input::new("grip", "C", "grip multiplier", Unit::NONE, Limits::author(0.9, 1.0)).or(1.0),
    ],
    outputs: &[Output { key: "limit", words: "recommended weight limit", unit: Unit::KG }],
    run: |g| {
        let (h, v, d) = (g.one("reach")?, g.one("height")?, g.one("travel")?);
        Ok(vec![Found::One(recommended(h, v, d, g.one("twist")?, g.one("frequency")?, g.one("grip")?))])
    },
};

/// What is lifted by how many.
#[derive(Debug, Clone, PartialEq)]
pub struct LiftLimits {
    /// Above this, two persons.
    pub one_person: Mass,
    /// Above this, mechanical help.
    pub two_persons: Mass,
    /// Where the limits are known from.
    pub source: String,
}

impl Default for LiftLimits {
    /// 25 kg and 50 kg.
    fn default() -> LiftLimits {
        LiftLimits {
            one_person: Mass::kg(25.0),
            two_persons: Mass::kg(50.0),
            source: "from memory: HSE INDG143, 25 kg close at waist height; two persons 50 kg: common practice".into(),
        }
    }
}

/// Something that is lifted.
#[derive(Debug, Clone, PartialEq)]
pub struct Lifted {
    /// What it is: "board 200×75, 3.0 m".
    pub what: String,
    /// The element it is for.
    pub element: String,
    /// Mass of one.
    pub mass: Mass,
    /// Its length, where it could be cut before it is carried.
    pub length: Option<Length>,
    /// How many.
    pub count: f64,
    /// The working of its mass.
    pub trace: Option<Trace>,
}

/// Findings for everything above the limit of one person: one per thing and element, the heaviest first.
pub fn lifting(things: &[Lifted], limits: &LiftLimits) -> Vec<Finding> {
    let mut heavy: Vec<&Lifted> = things.iter().filter(|t| t.mass > limits.one_person && t.count > 0.0).collect();
    heavy.sort_by(|a, b| {
        b.mass.to_kg().total_cmp(&a.mass.to_kg()).then(a.element.cmp(&b.element)).then(a.what.cmp(&b.what))
    });
    heavy.into_iter().map(|t| heavy_piece(t, limits)).collect()
}

fn heavy_piece(t: &Lifted, limits: &LiftLimits) -> Finding {
    let kg = trim(t.mass.to_kg(), 0);
    let by_two = t.mass <= limits.two_persons;
    let who = if by_two { "two persons" } else { "a hoist, a sack truck or a machine" };
    let says = format!(
        "{}: {kg} kg each, {} of them; above {} kg it takes {who}.",
        t.what,
        trim(t.count, 0),
        trim((if by_two { limits.one_person } else { limits.two_persons }).to_kg(), 0)
    );
    let mut f = Finding::new(&HEAVY_PIECE, Place::of(&t.element), says).with_utilisation(t.mass / limits.one_person);
    f.trace = t.trace.clone();
    if let Some(length) = t.length {
        let most = (length * (limits.one_person / t.mass)).to_mm().floor();
        let limit = trim(limits.one_person.to_kg(), 0);
        let says = format!("Cut before carrying: {most:.0} mm of it is {limit} kg.");
        f = f.with_remedy(Remedy::theirs(says));
    }
    f.with_remedy(Remedy::theirs(format!("Plan the lift for {who}.")))
}

/// What a vehicle, a skip or a barrow carries.
#[derive(Debug, Clone, PartialEq)]
pub struct Vehicle {
    /// What it is.
    pub name: String,
    /// How heavy it may be laden.
    pub payload: Mass,
    /// How much fits in it.
    pub volume: Volume,
}

/// A barrow level full: 70 l and 120 kg. Common practice, no source.
pub fn barrow() -> Vehicle {
    Vehicle { name: "barrow".into(), payload: Mass::kg(120.0), volume: Volume::litre(70.0) }
}

/// How many loads.
#[derive(Debug, Clone, PartialEq)]
pub struct Loads {
    /// Loads by mass, as a fraction.
    pub by_mass: f64,
    /// Loads by volume, as a fraction.
    pub by_volume: f64,
    /// Whole loads.
    pub loads: f64,
    /// The working.
    pub trace: Trace,
}

/// Loads of a vehicle: what is reached first, its payload or its volume.
///
/// # Source
/// Common practice, no source: division by both, the larger counts.
/// # Symbols
/// | m | mass to carry | ≥ 0 |
/// | V | volume to carry, loose | ≥ 0 |
/// | P | payload | ≥ 1 kg |
/// | C | volume that fits | ≥ 0.001 m³ |
/// # Gives
/// Loads by mass and by volume as fractions, and whole loads.
/// # Not for
/// Pieces longer than the load bed.
/// # Errors
/// None of its own; [`LOADS`] checks the limits.
/// # By hand
/// 7.2 m³ in the bank is 9.0 m³ loose; in barrows of 70 l: 128.6, so 129.
fn count_loads<N: Number>(mass: N, volume: N, payload: N, space: N) -> (N, N, N) {
    let by_mass = (mass / payload).named("n_m", Unit::NONE);
    let by_volume = (volume / space).named("n_V", Unit::NONE);
    let whole = up(by_mass.max(by_volume).named("n₀", Unit::NONE)).named("n", Unit::NONE);
    (by_mass, by_volume, whole)
}

/// `order/loads`: loads of a vehicle or barrow.
pub static LOADS: Working = Working {
    name: "order/loads",
    title: "Loads of a vehicle or barrow, by mass and by volume.",
    source: Source { work: "Common practice, no source", place: "the larger of loads by mass and by volume" },
    not_for: "Pieces longer than the load bed.",
    inputs: &[
        Input::new("mass", "m", "mass to carry", Unit::KG, Limits::ours(0.0, 1e9)).or(0.0),
        Input::new("volume", "V", "volume to carry, loose", Unit::M3, Limits::ours(0.0, 1e6)).or(0.0),
        Input::new("payload", "P", "payload", Unit::KG, Limits::ours(1.0, 1e6)),
        Input::new("space", "C", "volume that fits", Unit::M3, Limits::ours(0.001, 1e4)),
    ],
    outputs: &[
        Output { key: "by_mass", words: "loads by mass", unit: Unit::NONE },
        Output { key: "by_volume", words: "loads by volume", unit: Unit::NONE },
        Output { key: "loads", words: "whole loads", unit: Unit::NONE },
    ],
    run: |g| {
        let (a, b, c) = count_loads(g.one("mass")?, g.one("volume")?, g.one("payload")?, g.one("space")?);
        Ok(vec![Found::One(a), Found::One(b), Found::One(c)])
    },
};

/// Loads of `vehicle` for a mass and a loose volume.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] outside the limits of [`LOADS`].
pub fn loads(mass: Mass, volume: Volume, vehicle: &Vehicle) -> Result<Loads> {
    let given = [mass.to_kg(), volume.to_m3(), vehicle.payload.to_kg(), vehicle.volume.to_m3()];
    LOADS.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(LOADS.name, row, v))?;
    let (by_mass, by_volume, whole) = count_loads(given[0], given[1], given[2], given[3]);
    let trace = Trace::new(&LOADS, given.iter().map(|v| (*v).into()).collect());
    Ok(Loads { by_mass, by_volume, loads: whole, trace })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn board(length: f64) -> Lifted {
        let l = Length::m(length);
        let (mass, trace) = piece_mass(Length::mm(200.0), Length::mm(100.0), l, Density::kg_per_m3(800.0)).unwrap();
        Lifted { what: "board".into(), element: "W1".into(), mass, length: Some(l), count: 3.0, trace: Some(trace) }
    }

    #[test]
    fn a_board_over_25_kg_takes_two_and_one_over_50_kg_a_machine() {
        let of = |l: f64| lifting(&[board(l)], &LiftLimits::default());
        assert!(of(1.5625).is_empty(), "25 kg exactly is still one person's");
        let two = of(2.4);
        assert!(two[0].says.contains("38 kg") && two[0].says.contains("two persons"), "{}", two[0].says);
        assert!(two[0].remedies[0].says.contains("1562 mm"), "{}", two[0].remedies[0].says);
        assert!(of(3.6)[0].says.contains("machine"));
    }

    #[test]
    fn a_barrow_counts_by_volume_for_soil_and_by_mass_for_stone() {
        let soil = loads(Mass::t(11.5), Volume::m3(9.0), &Vehicle { payload: Mass::kg(150.0), ..barrow() }).unwrap();
        assert_eq!(soil.loads, 129.0);
        let stone = loads(Mass::t(1.6), Volume::m3(0.7), &barrow()).unwrap();
        assert_eq!(stone.loads, 14.0);
        assert!(loads(Mass::kg(-1.0), Volume::ZERO, &barrow()).is_err());
    }

    #[test]
    fn the_ideal_lift_is_23_kg() {
        assert!((recommended(25.0, 75.0, 25.0, 0.0, 1.0, 1.0) - 23.0).abs() < 1e-12);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn more_to_carry_is_never_fewer_loads(m in 0.0f64..1e5, v in 0.0f64..50.0, more in 0.0f64..1e4) {
            let van = Vehicle { name: "van".into(), payload: Mass::t(2.5), volume: Volume::m3(2.0) };
            let a = loads(Mass::kg(m), Volume::m3(v), &van).unwrap().loads;
            let b = loads(Mass::kg(m + more), Volume::m3(v), &van).unwrap().loads;
            prop_assert!(a <= b);
            prop_assert!(a * 2500.0 >= m - 1e-3 && a * 2.0 >= v - 1e-6);
        }
    }
}
