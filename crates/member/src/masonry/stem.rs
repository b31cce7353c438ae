//! Does a metre of masonry wall carry its moment and shear, by the rules that are asked for?

use groundhold_quantity::{Area, Force, Length, LineForce, Moment, Pressure};
use groundhold_working::{Refused, Result};

use super::{
    en1996::{
        EN6_FLEXURE, EN6_REINFORCED, EN6_SHEAR, FilledStem, JointShear, PlainFlexure, en6_flexure, en6_reinforced,
        en6_shear, too_much_steel,
    },
    tms::{TMS_CRACKED, TMS_PLAIN, TMS_SHEAR, TmsPlain, TmsShear, TmsStem, tms_cracked, tms_plain, tms_shear},
};
use crate::Row;

/// The rules by which masonry is judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Rules {
    /// EN 1996-1-1: factored effects.
    En1996 {
        /// Partial factor of masonry, 1.5 to 3 by class of units and execution.
        gamma_m: f64,
    },
    /// TMS 402, allowable stress: effects as they are.
    Tms402,
}

/// A metre of plain masonry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlainMasonry {
    /// Thickness, solid.
    pub thickness: Length,
    /// Flexural strength in the direction of bending: characteristic (EN), allowable (TMS). Zero counts on weight alone.
    pub flexural: Pressure,
    /// Initial shear strength (EN); for TMS the specified compressive strength, from which its shear follows.
    pub shear: Pressure,
}

/// A metre of filled hollow blocks with bars.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReinforcedMasonry {
    /// From the pressed face to the bars.
    pub effective: Length,
    /// Steel per metre.
    pub steel_per_m: Area,
    /// Compressive strength of the masonry: characteristic (EN), specified (TMS).
    pub strength: Pressure,
    /// Yield strength of the bars.
    pub yield_stress: Pressure,
    /// Modulus of steel over that of masonry (TMS: 29 000 000 psi over 900 f_m').
    pub modular_ratio: f64,
}

/// Masonry judged, per metre.
#[derive(Debug, Clone, PartialEq)]
pub struct MasonryCheck {
    /// Bending.
    pub bending: Row<Moment>,
    /// Shear.
    pub shear: Row<Force>,
}

impl MasonryCheck {
    /// The worst of both.
    pub fn utilisation(&self) -> f64 {
        self.bending.utilisation.max(self.shear.utilisation)
    }
}

/// Bending and shear of a metre of plain masonry under its least compression.
///
/// # Errors
/// Where a value is out of range.
pub fn check_plain_masonry(
    wall: &PlainMasonry,
    rules: Rules,
    (moment, shear): (Moment, Force),
    axial: LineForce,
) -> Result<MasonryCheck> {
    let (m, v, p) = (moment.to_knm(), shear.to_kn(), axial.to_kn_per_m());
    let thickness = wall.thickness.to_mm();
    match rules {
        Rules::En1996 { gamma_m } => {
            let pressed = p / thickness;
            let (b, bent) =
                PlainFlexure { moment: m, thickness, flexural: wall.flexural.to_mpa(), pressed, gamma: gamma_m }
                    .traced(&EN6_FLEXURE)?;
            let (s, sheared) = JointShear {
                shear: v,
                pressed_width: thickness,
                initial: wall.shear.to_mpa(),
                pressed,
                gamma: gamma_m,
            }
            .traced(&EN6_SHEAR)?;
            Ok(MasonryCheck {
                bending: Row::new("bending", moment, Moment::knm(en6_flexure(&b).capacity), bent),
                shear: Row::new("shear", shear, Force::kn(en6_shear(&s).capacity), sheared),
            })
        }
        Rules::Tms402 => {
            let (b, bent) = TmsPlain {
                moment: m,
                axial: p,
                modulus: thickness * thickness * 1000.0 / 6.0,
                area: thickness * 1000.0,
                tension: wall.flexural.to_mpa(),
            }
            .traced(&TMS_PLAIN)?;
            // Plain masonry: the shear of a stem without links over two thirds of the thickness (3V/2A).
            let (s, sheared) = TmsShear {
                shear: v,
                width: 1000.0,
                effective: thickness * 2.0 / 3.0,
                strength: wall.shear.to_mpa(),
                slender: 1.0,
            }
            .traced(&TMS_SHEAR)?;
            Ok(MasonryCheck {
                bending: Row::new("bending", moment, Moment::knm(tms_plain(&b).capacity), bent),
                shear: Row::new("shear", shear, Force::kn(tms_shear(&s).capacity), sheared),
            })
        }
    }
}

/// Bending and shear of a metre of filled blocks with bars.
///
/// # Errors
/// Where a value is out of range, or there is more steel than the pressed masonry bears.
pub fn check_reinforced_masonry(
    wall: &ReinforcedMasonry,
    rules: Rules,
    (moment, shear): (Moment, Force),
) -> Result<MasonryCheck> {
    let (effective, steel, strength) = (wall.effective.to_mm(), wall.steel_per_m.to_mm2(), wall.strength.to_mpa());
    match rules {
        Rules::En1996 { gamma_m } => {
            let (i, trace) = FilledStem {
                moment: moment.to_knm(),
                effective,
                steel,
                strength,
                yield_stress: wall.yield_stress.to_mpa(),
                shear_strength: 0.2,
                gamma: gamma_m,
                gamma_s: 1.15,
            }
            .traced(&EN6_REINFORCED)?;
            if let Some(why) = too_much_steel(&i) {
                return Err(Refused::NoAnswer { working: EN6_REINFORCED.name, why: why.into() });
            }
            let f = en6_reinforced(&i);
            Ok(MasonryCheck {
                bending: Row::new("bending", moment, Moment::knm(f.capacity), trace.clone()),
                shear: Row::new("shear", shear, Force::kn(f.shear), trace),
            })
        }
        Rules::Tms402 => {
            // Grade 60 bars 32 000 psi, weaker ones 20 000 psi.
            let steel_stress = if wall.yield_stress < Pressure::mpa(400.0) { 137.9 } else { 220.6 };
            let (i, bent) = TmsStem {
                moment: moment.to_knm(),
                width: 1000.0,
                effective,
                steel,
                ratio: wall.modular_ratio,
                strength,
                steel_stress,
            }
            .traced(&TMS_CRACKED)?;
            let (s, sheared) = TmsShear { shear: shear.to_kn(), width: 1000.0, effective, strength, slender: 1.0 }
                .traced(&TMS_SHEAR)?;
            Ok(MasonryCheck {
                bending: Row::new("bending", moment, Moment::knm(tms_cracked(&i).capacity), bent),
                shear: Row::new("shear", shear, Force::kn(tms_shear(&s).capacity), sheared),
            })
        }
    }
}
