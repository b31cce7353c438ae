//! Does a metre of reinforced stem, toe or heel carry its moment and shear, by the rules that are asked for?

use groundhold_quantity::{Area, Force, Length, Moment, Pressure};
use groundhold_working::{Refused, Result};

use super::{
    aci318::{ACI_BENDING, ACI_SHEAR, AciBending, AciShear, aci_bending, aci_shear},
    en1992::{EN2_BENDING, EN2_SHEAR, StripBending, StripShear, en2_bending, en2_shear, too_thin},
};
use crate::Row;

/// The rules by which concrete is judged. Both want factored effects.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rules {
    /// EN 1992-1-1 with its recommended partial factors.
    En1992,
    /// ACI 318.
    Aci318,
}

/// A strip of concrete one metre wide with steel near one face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strip {
    /// Thickness.
    pub thickness: Length,
    /// From the pressed face to the middle of the steel.
    pub effective: Length,
    /// Steel per metre of wall.
    pub steel_per_m: Area,
    /// Cylinder strength.
    pub strength: Pressure,
    /// Yield strength of the steel.
    pub yield_stress: Pressure,
}

/// A strip judged.
#[derive(Debug, Clone, PartialEq)]
pub struct StripCheck {
    /// Bending, per metre.
    pub bending: Row<Moment>,
    /// Shear without links, per metre.
    pub shear: Row<Force>,
    /// Least steel per metre (demand) against what is there (capacity).
    pub least_steel: Row<Area>,
    /// Steel that the moment alone asks for per metre; `None` under rules that do not solve for it.
    pub needed: Option<Area>,
}

impl StripCheck {
    /// The worst of bending, shear and least steel.
    pub fn utilisation(&self) -> f64 {
        self.bending.utilisation.max(self.shear.utilisation).max(self.least_steel.utilisation)
    }
}

/// Bending, shear and least steel of a metre of concrete; `moment` and `shear` are factored and per metre.
///
/// # Errors
/// Where a value is out of range, or the strip is too thin for its moment.
pub fn check_strip(strip: &Strip, rules: Rules, (moment, shear): (Moment, Force)) -> Result<StripCheck> {
    if strip.thickness <= strip.effective {
        let why = "the steel lies outside the concrete: its depth must be less than the thickness".into();
        return Err(Refused::NoAnswer { working: EN2_BENDING.name, why });
    }
    match rules {
        Rules::En1992 => by_en(strip, moment, shear),
        Rules::Aci318 => by_aci(strip, moment, shear),
    }
}

fn by_en(s: &Strip, moment: Moment, shear: Force) -> Result<StripCheck> {
    let (i, bent) = StripBending {
        moment: moment.to_knm(),
        effective: s.effective.to_mm(),
        steel: s.steel_per_m.to_mm2(),
        strength: s.strength.to_mpa(),
        yield_stress: s.yield_stress.to_mpa(),
        alpha: 0.85,
        gamma_c: 1.5,
        gamma_s: 1.15,
    }
    .traced(&EN2_BENDING)?;
    if let Some(why) = too_thin(&i) {
        return Err(Refused::NoAnswer { working: EN2_BENDING.name, why: why.into() });
    }
    let b = en2_bending(&i);
    let (i, sheared) =
        StripShear { shear: shear.to_kn(), effective: i.effective, steel: i.steel, strength: i.strength, gamma_c: 1.5 }
            .traced(&EN2_SHEAR)?;
    Ok(StripCheck {
        bending: Row::new("bending", moment, Moment::knm(b.capacity), bent.clone()),
        shear: Row::new("shear", shear, Force::kn(en2_shear(&i).capacity), sheared),
        least_steel: Row::new("least steel", Area::mm2(b.least), s.steel_per_m, bent),
        needed: Some(Area::mm2(b.needed)),
    })
}

fn by_aci(s: &Strip, moment: Moment, shear: Force) -> Result<StripCheck> {
    let (i, bent) = AciBending {
        moment: moment.to_knm(),
        thickness: s.thickness.to_mm(),
        effective: s.effective.to_mm(),
        steel: s.steel_per_m.to_mm2(),
        strength: s.strength.to_mpa(),
        yield_stress: s.yield_stress.to_mpa(),
        phi: 0.9,
    }
    .traced(&ACI_BENDING)?;
    let b = aci_bending(&i);
    if b.strain < 0.005 {
        let why = "too much steel: it strains less than 0.005 when the concrete fails".into();
        return Err(Refused::NoAnswer { working: ACI_BENDING.name, why });
    }
    let (i, sheared) =
        AciShear { shear: shear.to_kn(), effective: i.effective, steel: i.steel, strength: i.strength, phi: 0.75 }
            .traced(&ACI_SHEAR)?;
    Ok(StripCheck {
        bending: Row::new("bending", moment, Moment::knm(b.capacity), bent.clone()),
        shear: Row::new("shear", shear, Force::kn(aci_shear(&i).capacity), sheared),
        least_steel: Row::new("least steel", Area::mm2(b.least), s.steel_per_m, bent),
        needed: None,
    })
}
