//! Against which margins is a wall judged: one factor over everything, or factors on loads, soil and resistance?

use groundhold_quantity::{Angle, Pressure, math};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

use crate::soil::Soil;

/// How a basis keeps its margin.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Margin {
    /// Loads and soil as they are; resistance over effect must reach a global factor.
    GlobalFactors,
    /// Loads raised and soil lowered; design resistance must reach design effect.
    PartialFactors,
}

/// How the strength of timber and steel is taken on this basis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Strength {
    /// Unfactored load against an allowable stress.
    AllowableStress,
    /// Factored load against a design strength (characteristic value by k_mod over γ_M).
    DesignStrength,
}

/// Which global factors are wanted. All 1 where the margin lies in partial factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanted {
    /// Against sliding on the base.
    pub sliding: f64,
    /// Against overturning about the toe.
    pub overturning: f64,
    /// Of the ground under the base.
    pub bearing: f64,
    /// Of a post or pole in the ground.
    pub embedment: f64,
    /// Of the whole bank against a slip.
    pub slip: f64,
}

/// One set of factors, all used together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Combination {
    /// Short name: `DA1-2`.
    pub key: &'static str,
    /// In words.
    pub name: &'static str,
    /// On a permanent load that pushes (soil, water, a shed).
    pub permanent: f64,
    /// On a permanent load that holds (the wall's own weight).
    pub permanent_favourable: f64,
    /// On a load that comes and goes and pushes; one that holds is left out.
    pub variable: f64,
    /// Dividing tan φ′ and tan δ.
    pub tan_phi: f64,
    /// Dividing c′.
    pub cohesion: f64,
    /// Dividing c_u.
    pub undrained: f64,
    /// Dividing the bearing resistance.
    pub bearing: f64,
    /// Dividing the sliding resistance.
    pub sliding: f64,
    /// Dividing the earth resistance (passive pressure, post in the ground).
    pub earth_resistance: f64,
    /// Factor that resistance over effect must then still reach.
    pub wanted: Wanted,
}

/// A way of judging walls that a person or an authority chooses.
#[derive(Debug, PartialEq)]
pub struct Basis {
    /// As the job file spells it: `working-stress`, `en1997-da1`.
    pub key: &'static str,
    /// In words.
    pub name: &'static str,
    /// Who wrote it.
    pub source: Source,
    /// Where its margin lies.
    pub margin: Margin,
    /// How timber and steel are judged.
    pub strength: Strength,
    /// The sets of factors for ordinary use; each must be met.
    pub combinations: &'static [Combination],
    /// The sets for an accident: a blocked drain, a burst pipe. Each must be met.
    pub accidental: &'static [Combination],
    /// Where the accidental sets come from.
    pub accidental_source: Source,
}

const ONE: Wanted = Wanted { sliding: 1.0, overturning: 1.0, bearing: 1.0, embedment: 1.0, slip: 1.0 };

const UNFACTORED: Combination = Combination {
    key: "working",
    name: "loads and soil as they are",
    permanent: 1.0,
    permanent_favourable: 1.0,
    variable: 1.0,
    tan_phi: 1.0,
    cohesion: 1.0,
    undrained: 1.0,
    bearing: 1.0,
    sliding: 1.0,
    earth_resistance: 1.0,
    wanted: ONE,
};

/// EN 1997-1 Design Approach 1, combination 1: A1 + M1 + R1. The loads are raised.
pub const DA1_1: Combination = Combination {
    key: "DA1-1",
    name: "loads raised, soil as it is (A1 + M1 + R1)",
    permanent: 1.35,
    variable: 1.5,
    ..UNFACTORED
};

/// EN 1997-1 Design Approach 1, combination 2: A2 + M2 + R1. The soil is weakened.
pub const DA1_2: Combination = Combination {
    key: "DA1-2",
    name: "soil weakened, changing loads raised (A2 + M2 + R1)",
    variable: 1.3,
    tan_phi: 1.25,
    cohesion: 1.25,
    undrained: 1.4,
    ..UNFACTORED
};

/// EN 1997-1 Design Approach 2: A1 + M1 + R2. Loads raised and resistances lowered.
pub const DA2: Combination = Combination {
    key: "DA2",
    name: "loads raised, resistances lowered (A1 + M1 + R2)",
    bearing: 1.4,
    sliding: 1.1,
    earth_resistance: 1.4,
    ..DA1_1
};

/// EN 1997-1 Design Approach 3 for loads from the ground: A2 + M2 + R3.
pub const DA3: Combination = Combination { key: "DA3", name: "soil weakened (A2 + M2 + R3)", ..DA1_2 };

const ACCIDENT: Combination = Combination {
    key: "accidental",
    name: "an accident: loads as they are, soil slightly weakened",
    tan_phi: 1.1,
    cohesion: 1.1,
    undrained: 1.1,
    ..UNFACTORED
};

const EN1997: Source = Source {
    work: "EN 1997-1:2004, Geotechnical design, general rules; values before any national annex",
    place: "Annex A, Tables A.3, A.4 and A.13; partly from memory",
};
const EN1997_ACCIDENT: Source = Source {
    work: "from memory: EN 1997-1:2004 2.4.7.1(3), loads 1.0 in accidental situations; soil after DIN 1054:2010",
    place: "Table A 2.2, situation BS-A",
};

/// Global factors, as walls of this size are usually judged where no code says otherwise.
pub static WORKING_STRESS: Basis = Basis {
    key: "working-stress",
    name: "working stress with global factors",
    source: Source {
        work: "sliding and overturning 1.5: from memory, International Building Code 2018, 1807.2.3; embedment 1.5, slip 1.5 and bearing 3: common practice, no source",
        place: "IBC 1807.2.3",
    },
    margin: Margin::GlobalFactors,
    strength: Strength::AllowableStress,
    combinations: &[Combination {
        wanted: Wanted { sliding: 1.5, overturning: 1.5, bearing: 3.0, embedment: 1.5, slip: 1.5 },
        ..UNFACTORED
    }],
    accidental: &[Combination {
        key: "accidental",
        name: "an accident: loads and soil as they are, a lower factor",
        wanted: Wanted { sliding: 1.2, overturning: 1.2, bearing: 2.0, embedment: 1.2, slip: 1.2 },
        ..UNFACTORED
    }],
    accidental_source: Source { work: "common practice, no source", place: "1.1 to 1.25 are met; 1.2 taken" },
};

/// Eurocode 7, Design Approach 1: both combinations must be met.
pub static EN1997_DA1: Basis = Basis {
    key: "en1997-da1",
    name: "EN 1997-1, Design Approach 1",
    source: EN1997,
    margin: Margin::PartialFactors,
    strength: Strength::DesignStrength,
    combinations: &[DA1_1, DA1_2],
    accidental: &[ACCIDENT],
    accidental_source: EN1997_ACCIDENT,
};

/// Eurocode 7, Design Approach 2. A slip of the whole bank is judged on soil strength as in Approach 3 (2.4.7.3.4.4 note).
pub static EN1997_DA2: Basis = Basis {
    key: "en1997-da2",
    name: "EN 1997-1, Design Approach 2",
    source: EN1997,
    margin: Margin::PartialFactors,
    strength: Strength::DesignStrength,
    combinations: &[DA2],
    accidental: &[ACCIDENT],
    accidental_source: EN1997_ACCIDENT,
};

/// Eurocode 7, Design Approach 3, for loads that come from the ground.
pub static EN1997_DA3: Basis = Basis {
    key: "en1997-da3",
    name: "EN 1997-1, Design Approach 3",
    source: EN1997,
    margin: Margin::PartialFactors,
    strength: Strength::DesignStrength,
    combinations: &[DA3],
    accidental: &[ACCIDENT],
    accidental_source: EN1997_ACCIDENT,
};

/// ASCE 7 allowable stress as the International Building Code uses it: D + H + L unfactored, 1.5 against sliding and
/// overturning; 1.1 while the ground shakes.
pub static ASCE_ALLOWABLE: Basis = Basis {
    key: "asce-allowable",
    name: "ASCE 7 allowable stress with the International Building Code's factors",
    source: Source {
        work: "from memory: ASCE/SEI 7-16, Minimum Design Loads, 2.4.1, D + H + L; International Building Code 2018",
        place: "IBC 1807.2.3, sliding and overturning 1.5; bearing 3, embedment 1.5 and slip 1.5: common practice, no source",
    },
    margin: Margin::GlobalFactors,
    strength: Strength::AllowableStress,
    combinations: &[Combination {
        key: "D+H+L",
        name: "loads and soil as they are (D + H + L)",
        wanted: Wanted { sliding: 1.5, overturning: 1.5, bearing: 3.0, embedment: 1.5, slip: 1.5 },
        ..UNFACTORED
    }],
    accidental: &[Combination {
        key: "D+H+0.7E",
        name: "loads and soil as they are, shaking or an accident",
        wanted: Wanted { sliding: 1.1, overturning: 1.1, bearing: 2.0, embedment: 1.1, slip: 1.1 },
        ..UNFACTORED
    }],
    accidental_source: Source {
        work: "from memory: International Building Code 2018",
        place: "1807.2.3, sliding and overturning 1.1 with earthquake; bearing 2: common practice, no source",
    },
};

/// Load and resistance factors of AASHTO: earth pushing 1.5, live load 1.75, weights that hold 0.9 to 1.0; a resistance
/// factor stands here as its inverse, since resistances are divided.
pub static AASHTO_LRFD: Basis = Basis {
    key: "aashto-lrfd",
    name: "load and resistance factors after AASHTO",
    source: Source {
        work: "from memory: AASHTO LRFD Bridge Design Specifications, 8th ed., 2017",
        place: "Tables 3.4.1-1, 3.4.1-2 (EH 1.50, LS 1.75, DC 0.90) and 11.5.7-1 (bearing 0.55, sliding 0.80 on sand, passive 0.50; whole bank 0.75)",
    },
    margin: Margin::PartialFactors,
    strength: Strength::DesignStrength,
    combinations: &[Combination {
        key: "Strength-I",
        name: "loads raised, resistances lowered (Strength I)",
        permanent: 1.5,
        permanent_favourable: 0.9,
        variable: 1.75,
        bearing: 1.0 / 0.55,
        sliding: 1.0 / 0.8,
        earth_resistance: 1.0 / 0.5,
        wanted: Wanted { slip: 1.0 / 0.75, ..ONE },
        ..UNFACTORED
    }],
    accidental: &[Combination {
        key: "Extreme-I",
        name: "an accident or shaking: loads and resistances as they are (Extreme Event I)",
        bearing: 1.0 / 0.8,
        wanted: Wanted { slip: 1.0 / 0.9, ..ONE },
        ..UNFACTORED
    }],
    accidental_source: Source {
        work: "from memory: AASHTO LRFD Bridge Design Specifications, 8th ed., 2017",
        place: "11.5.8: resistance factors 1.0, bearing 0.8, whole bank 0.9",
    },
};

/// All bases. The first is taken when nobody chooses. A new one is a row like these and a name in this list.
pub static BASES: &[&Basis] = &[&WORKING_STRESS, &EN1997_DA1, &EN1997_DA2, &EN1997_DA3, &ASCE_ALLOWABLE, &AASHTO_LRFD];

/// The basis of this key.
pub fn basis(key: &str) -> Option<&'static Basis> {
    BASES.iter().copied().find(|b| b.key == key)
}

impl Combination {
    /// The soil with its design strength: tan φ′, tan δ, c′ and c_u divided by their factors. Weights stay.
    pub fn soil(&self, soil: &Soil) -> Soil {
        let lowered = |a: Angle| Angle::rad(math::atan(math::tan(crate::rows::radians(a)) / self.tan_phi));
        Soil {
            phi: lowered(soil.phi),
            delta_timber: lowered(soil.delta_timber),
            delta_concrete: lowered(soil.delta_concrete),
            cohesion: soil.cohesion / self.cohesion,
            undrained: soil.undrained.map(|cu| cu / self.undrained),
            ..soil.clone()
        }
    }
    /// How the design friction angle was found.
    pub fn soil_trace(&self, soil: &Soil) -> Trace {
        let given = [soil.phi.to_deg(), soil.cohesion.to_kpa(), self.tan_phi, self.cohesion];
        Trace::new(&DESIGN_STRENGTH, given.map(Into::into).to_vec())
    }
    /// Design value of a shear strength without friction.
    pub fn undrained(&self, cu: Pressure) -> Pressure {
        cu / self.undrained
    }
}

/// Design strength of a soil.
///
/// # Source
/// EN 1997-1:2004, 2.4.6.2 and Table A.4.
/// # Symbols
/// | φ_k, c_k | characteristic friction angle and cohesion | angle, kPa | 0–50°, 0–500 kPa (ours) |
/// | γ_φ, γ_c | partial factors | – | 1–2 (ours) |
/// # Gives
/// (φ_d, c_d). Falls as the factors rise; with factors of 1 nothing changes.
/// # Not for
/// Undrained strength: divide c_u by its own factor.
/// # Errors
/// A value outside its limits.
/// # By hand
/// tan 36°/1.25 = 0.5812, φ_d = 30.17° (reference case WALL-EC7-phi).
pub fn design_strength<N: Number>(phi: N, c: N, gamma_phi: N, gamma_c: N) -> (N, N) {
    ((phi.tan() / gamma_phi).atan().named("φ_d", Unit::DEG), (c / gamma_c).named("c_d", Unit::KPA))
}

/// Design strength of a soil on a basis of partial factors.
pub static DESIGN_STRENGTH: Working = Working {
    name: "basis/design-strength",
    title: "How strong is the soil with its partial factors?",
    source: Source { work: "EN 1997-1:2004, Geotechnical design, general rules", place: "2.4.6.2 and Table A.4" },
    not_for: "undrained strength, which has a factor of its own",
    inputs: &[
        Input::new("phi", "φ_k", "characteristic friction angle", Unit::DEG, Limits::ours(0.0, 50.0)),
        Input::new("c", "c_k", "characteristic cohesion", Unit::KPA, Limits::ours(0.0, 500.0)).or(0.0),
        Input::new("factor_phi", "γ_φ", "partial factor on tan φ", Unit::NONE, Limits::ours(1.0, 2.0)).or(1.25),
        Input::new("factor_c", "γ_c", "partial factor on cohesion", Unit::NONE, Limits::ours(1.0, 2.0)).or(1.25),
    ],
    outputs: &[
        Output { key: "phi_d", words: "design friction angle", unit: Unit::DEG },
        Output { key: "c_d", words: "design cohesion", unit: Unit::KPA },
    ],
    run: |g| {
        let (phi, c) = design_strength(g.one("phi")?, g.one("c")?, g.one("factor_phi")?, g.one("factor_c")?);
        Ok(vec![Found::One(phi), Found::One(c)])
    },
};

#[cfg(test)]
mod tests {
    use super::*;
    use groundhold_quantity::UnitWeight;

    fn soil() -> Soil {
        Soil::given("sand", UnitWeight::kn_per_m3(18.0), UnitWeight::kn_per_m3(20.0), Angle::deg(36.0))
    }

    #[test]
    fn the_typed_way_and_the_working_give_the_same_bits() {
        let typed = DA1_2.soil(&soil()).phi;
        let trace = DA1_2.soil_trace(&soil()).sheet().unwrap();
        let groundhold_working::Value::One(phi) = trace.values[0] else { panic!() };
        assert_eq!(typed.to_rad().to_degrees().to_bits(), phi.to_bits());
        assert!((phi - 30.167).abs() < 0.001);
    }

    #[test]
    fn every_basis_keeps_a_margin_somewhere_and_has_its_own_key() {
        for (i, b) in BASES.iter().enumerate() {
            assert_eq!(basis(b.key).map(|b| b.name), Some(b.name));
            assert!(BASES[i + 1..].iter().all(|o| o.key != b.key));
            for c in b.combinations {
                let partial = [c.permanent, c.tan_phi, c.earth_resistance].iter().any(|f| *f > 1.0);
                assert_eq!(b.margin == Margin::PartialFactors, partial, "{}", c.key);
                assert_eq!(b.margin == Margin::GlobalFactors, c.wanted.embedment > 1.0, "{}", c.key);
            }
        }
    }

    #[test]
    fn an_accident_asks_for_less_than_ordinary_use() {
        let (o, a) = (&WORKING_STRESS.combinations[0].wanted, &WORKING_STRESS.accidental[0].wanted);
        assert!(a.embedment < o.embedment && a.embedment > 1.0);
    }
}
