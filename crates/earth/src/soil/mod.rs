//! What is this ground, how heavy, how strong, how tight to water, and who says so?

mod classes;
pub mod hazards;
mod presumptive;

pub use classes::CLASSES;
pub use presumptive::{
    LATERAL_LOADS, LATERAL_LOADS_SOURCE, LateralLoad, PRESUMPTIVE, PRESUMPTIVE_SOURCE, Presumptive, lateral_load,
    presumptive,
};

use groundhold_quantity::{Angle, Length, Pressure, UnitWeight, WATER, math};
use groundhold_working::Source;

/// Whether strength comes from grains rubbing (sand, gravel) or is shared with water held between fines (silt, clay).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Gravel and sand: drains as fast as it is loaded.
    Coarse,
    /// Silt and clay: undrained at first, drained in the end.
    Fine,
}

/// How the ground stiffens against a post pushed sideways.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Subgrade {
    /// n_h: the reaction grows with depth, k_h · b = n_h · z. Sand.
    WithDepth(UnitWeight),
    /// k_h · b, the same at every depth. Clay.
    Constant(Pressure),
}

/// How the ground behaves when it freezes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Frost {
    /// Hardly heaves.
    Low,
    /// Heaves somewhat.
    Medium,
    /// Heaves strongly and turns soft in the thaw.
    High,
}

/// Whether a post or a footing may stand in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bears {
    /// It may, with its own strength.
    Yes,
    /// It should not; why.
    No(&'static str),
}

/// A figure and who published it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure<T> {
    /// The figure.
    pub value: T,
    /// Its origin.
    pub source: Source,
}

/// A soil that a person can tell with hands and eyes, and figures on the cautious side for it.
#[derive(Debug, PartialEq)]
pub struct Class {
    /// As the job file spells it: `medium-sand`.
    pub key: &'static str,
    /// In words: `medium dense sand`.
    pub name: &'static str,
    /// How to tell it without a laboratory.
    pub by_hand: &'static str,
    /// Nearest group symbol of the Unified Soil Classification System (ASTM D2487), for tables that use it.
    pub uscs: &'static str,
    /// Grains or fines.
    pub kind: Kind,
    /// Moist unit weight.
    pub unit_weight: Figure<UnitWeight>,
    /// Saturated unit weight.
    pub unit_weight_saturated: Figure<UnitWeight>,
    /// Effective friction angle.
    pub phi: Figure<Angle>,
    /// Undrained shear strength; fines only.
    pub undrained: Option<Figure<Pressure>>,
    /// Order of magnitude of the permeability in metres a second.
    pub permeability_m_s: Figure<f64>,
    /// Stiffness against a post.
    pub subgrade: Figure<Subgrade>,
    /// Presumed allowable bearing pressure, low end.
    pub bearing: Option<Figure<Pressure>>,
    /// Behaviour in frost.
    pub frost: Figure<Frost>,
    /// Whether to bear on it.
    pub bears: Bears,
}

/// One soil of a job: a class as it stands, or figures somebody gave.
#[derive(Debug, Clone, PartialEq)]
pub struct Soil {
    /// What it is called: `firm clay`, `backfill`.
    pub name: String,
    /// The class it was taken from, if it was.
    pub class: Option<&'static Class>,
    /// Grains or fines.
    pub kind: Kind,
    /// Moist unit weight γ.
    pub unit_weight: UnitWeight,
    /// Saturated unit weight γ_sat.
    pub unit_weight_saturated: UnitWeight,
    /// Effective friction angle φ′.
    pub phi: Angle,
    /// Effective cohesion c′. Classes carry none: it is lost when a bank is dug, dries or freezes.
    pub cohesion: Pressure,
    /// Undrained shear strength c_u, where known.
    pub undrained: Option<Pressure>,
    /// Friction angle against timber.
    pub delta_timber: Angle,
    /// Friction angle against concrete.
    pub delta_concrete: Angle,
    /// Order of magnitude of the permeability in metres a second, where known.
    pub permeability_m_s: Option<f64>,
    /// Stiffness against a post, where known.
    pub subgrade: Option<Subgrade>,
    /// Behaviour in frost, where known.
    pub frost: Option<Frost>,
    /// Whether to bear on it.
    pub bears: Bears,
    /// Where its figures come from, in one line.
    pub source: String,
}

/// Friction against a wall when nothing else is known, as a share of φ′. EN 1997-1:2004 9.5.1(6) allows k = 2/3 for
/// precast concrete and steel sheeting; for timber the same is common practice, no source.
pub const WALL_FRICTION_SHARE: f64 = 2.0 / 3.0;

/// A soil whose figures cannot be.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("soil `{soil}`: {what} is {found}, expected {expected}")]
pub struct NotASoil {
    /// Which soil.
    pub soil: String,
    /// Which figure.
    pub what: &'static str,
    /// What it is.
    pub found: String,
    /// What it may be.
    pub expected: &'static str,
}

/// The class of this key.
pub fn class(key: &str) -> Option<&'static Class> {
    CLASSES.iter().find(|c| c.key == key)
}

impl Soil {
    /// The soil of a class, without cohesion.
    pub fn of(class: &'static Class) -> Soil {
        let share = |phi: Angle| Angle::rad(phi.to_rad() * WALL_FRICTION_SHARE);
        Soil {
            name: class.name.into(),
            class: Some(class),
            kind: class.kind,
            unit_weight: class.unit_weight.value,
            unit_weight_saturated: class.unit_weight_saturated.value,
            phi: class.phi.value,
            cohesion: Pressure::ZERO,
            undrained: class.undrained.map(|f| f.value),
            delta_timber: share(class.phi.value),
            delta_concrete: share(class.phi.value),
            permeability_m_s: Some(class.permeability_m_s.value),
            subgrade: Some(class.subgrade.value),
            frost: Some(class.frost.value),
            bears: class.bears,
            source: format!("class `{}`: {}; {}", class.key, class.phi.source.work, class.unit_weight.source.work),
        }
    }
    /// A drained soil of grains from given figures, without cohesion. What is not given is unknown, not assumed; wall
    /// friction is two thirds of φ′.
    pub fn given(name: &str, unit_weight: UnitWeight, unit_weight_saturated: UnitWeight, phi: Angle) -> Soil {
        let delta = Angle::rad(phi.to_rad() * WALL_FRICTION_SHARE);
        Soil {
            name: name.into(),
            class: None,
            kind: Kind::Coarse,
            unit_weight,
            unit_weight_saturated,
            phi,
            cohesion: Pressure::ZERO,
            undrained: None,
            delta_timber: delta,
            delta_concrete: delta,
            permeability_m_s: None,
            subgrade: None,
            frost: None,
            bears: Bears::Yes,
            source: "as given".into(),
        }
    }
    /// Weight under water, γ′ = γ_sat − γ_w.
    pub fn unit_weight_submerged(&self) -> UnitWeight {
        self.unit_weight_saturated - WATER
    }
    /// tan φ′.
    pub fn tan_phi(&self) -> f64 {
        math::tan(self.phi.to_rad())
    }
    /// Weight of this much of it above each square metre, moist.
    pub fn overburden(&self, depth: Length) -> Pressure {
        self.unit_weight * depth
    }
    /// Refuses figures that no soil has. Limits are ours: γ and γ_sat 8 to 26 kN/m³ with γ_sat ≥ γ and above water,
    /// φ′ 0° to 50°, c′ and c_u 0 to 500 kPa.
    ///
    /// # Errors
    /// [`NotASoil`] names the figure and what it may be.
    pub fn check(&self) -> Result<(), NotASoil> {
        let no = |what, found: String, expected| Err(NotASoil { soil: self.name.clone(), what, found, expected });
        let within = |v: f64, least: f64, most: f64| least <= v && v <= most;
        let (g, s) = (self.unit_weight.to_kn_per_m3(), self.unit_weight_saturated.to_kn_per_m3());
        if !within(g, 8.0, 26.0) {
            return no("the moist unit weight", format!("{g:.2} kN/m³"), "8 to 26 kN/m³");
        }
        if !within(s, 10.0, 26.0) || s < g {
            return no("the saturated unit weight", format!("{s:.2} kN/m³"), "10 to 26 kN/m³, not below the moist one");
        }
        if !within(self.phi.to_deg(), 0.0, 50.0) {
            return no("the friction angle", format!("{:.1}°", self.phi.to_deg()), "0° to 50°");
        }
        if !within(self.cohesion.to_kpa(), 0.0, 500.0) {
            return no("the cohesion", format!("{:.1} kPa", self.cohesion.to_kpa()), "0 to 500 kPa");
        }
        if let Some(cu) = self.undrained.filter(|cu| !within(cu.to_kpa(), 0.0, 500.0)) {
            return no("the undrained strength", format!("{:.1} kPa", cu.to_kpa()), "0 to 500 kPa");
        }
        for (what, delta) in
            [("the friction against timber", self.delta_timber), ("the friction against concrete", self.delta_concrete)]
        {
            if !within(delta.to_rad(), 0.0, self.phi.to_rad() + 1e-12) {
                return no(what, format!("{:.1}°", delta.to_deg()), "0° to the friction angle");
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_class_is_a_possible_soil_and_its_key_is_its_own() {
        for (i, c) in CLASSES.iter().enumerate() {
            assert_eq!(Soil::of(c).check(), Ok(()), "{}", c.key);
            assert!(CLASSES[i + 1..].iter().all(|d| d.key != c.key), "{}", c.key);
            assert_eq!(class(c.key).map(|c| c.name), Some(c.name));
            assert_eq!(c.kind == Kind::Fine, c.undrained.is_some(), "{}", c.key);
        }
    }

    #[test]
    fn denser_sand_is_heavier_and_stronger() {
        let order = ["loose-sand", "medium-sand", "dense-sand"].map(|k| Soil::of(class(k).unwrap()));
        for pair in order.windows(2) {
            assert!(pair[0].phi < pair[1].phi && pair[0].unit_weight < pair[1].unit_weight);
        }
    }

    #[test]
    fn a_friction_angle_of_fifty_is_taken_and_above_it_refused() {
        let at =
            |phi| Soil::given("x", UnitWeight::kn_per_m3(18.0), UnitWeight::kn_per_m3(20.0), Angle::deg(phi)).check();
        assert_eq!(at(50.0), Ok(()));
        let said = at(50.1).unwrap_err().to_string();
        assert_eq!(said, "soil `x`: the friction angle is 50.1°, expected 0° to 50°");
        assert!(at(f64::NAN).is_err());
    }

    #[test]
    fn topsoil_and_made_ground_are_not_to_bear() {
        for key in ["topsoil", "made-ground", "soft-clay"] {
            assert!(matches!(Soil::of(class(key).unwrap()).bears, Bears::No(_)), "{key}");
        }
    }
}
