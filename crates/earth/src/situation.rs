//! In which situations must a wall stand: fresh clay, dry summer, blocked drain, wet winter, shaking, a machine behind it?

use groundhold_quantity::{Angle, Length, Pressure, Share, math};
use groundhold_working::Source;

use crate::pressure::{Backfill, WaterLevel};
use crate::soil::{Kind, Soil};

/// Which strength of the soil counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Drainage {
    /// Undrained strength for fines that have one; grains are drained at once.
    Undrained,
    /// Effective strength.
    Drained,
}

/// Whether it is ordinary use or an accident, so that the basis takes its own factors for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Persistence {
    /// It may last: the basis' ordinary combinations.
    Ordinary,
    /// It is an accident: the basis' accidental combinations.
    Accident,
}

/// A situation as data: what it changes against the drained wall of every day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Situation {
    /// As the job file spells it: `wet-winter`.
    pub key: &'static str,
    /// In words.
    pub name: &'static str,
    /// Which strength counts.
    pub drainage: Drainage,
    /// How the basis takes it.
    pub persistence: Persistence,
    /// Water behind, as a share of the height; the plan's own level counts where it stands higher.
    pub water: Share,
    /// Dividing tan φ′ of fines that have softened; 1 where nothing softens.
    pub softened: f64,
    /// Load on all the ground behind, at least.
    pub load: Pressure,
    /// True where the ground shakes: the horizontal share of gravity comes from the region.
    pub shakes: bool,
    /// True where variable loads are left out.
    pub without_variable: bool,
    /// Where the figures come from.
    pub source: Source,
}

const PRACTICE: Source = Source { work: "common practice, no source", place: "figures of ours, on the cautious side" };

const EVERY_DAY: Situation = Situation {
    key: "drained",
    name: "every day, the drain works",
    drainage: Drainage::Drained,
    persistence: Persistence::Ordinary,
    water: Share::fraction(0.0),
    softened: 1.0,
    load: Pressure::ZERO,
    shakes: false,
    without_variable: false,
    source: Source { work: "EN 1997-1:2004, Geotechnical design, general rules", place: "2.2(1), drained situations" },
};

/// All situations. The first is the wall of every day.
pub static SITUATIONS: &[Situation] = &[
    EVERY_DAY,
    Situation {
        key: "end-of-construction",
        name: "just built: clay has not drained yet",
        drainage: Drainage::Undrained,
        source: Source {
            work: "EN 1997-1:2004, Geotechnical design, general rules",
            place: "2.2(1), undrained situations",
        },
        ..EVERY_DAY
    },
    Situation {
        key: "drain-blocked",
        name: "the drain is blocked and water stands to the ground",
        persistence: Persistence::Accident,
        water: Share::fraction(1.0),
        source: Source {
            work: "EN 1997-1:2004, Geotechnical design, general rules",
            place: "2.4.6.1(6) and 9.6(3): water at the ground unless a drain is kept",
        },
        ..EVERY_DAY
    },
    Situation {
        key: "wet-winter",
        name: "a wet winter: water to a third, softened clay",
        water: Share::fraction(1.0 / 3.0),
        softened: 1.1,
        source: PRACTICE,
        ..EVERY_DAY
    },
    Situation {
        key: "earthquake",
        name: "an earthquake",
        persistence: Persistence::Accident,
        shakes: true,
        without_variable: true,
        source: Source {
            work: "from memory: EN 1998-5:2004, Foundations, retaining structures and geotechnical aspects",
            place: "7.3.2; variable loads with ψ₂ = 0 as for a garden",
        },
        ..EVERY_DAY
    },
    Situation {
        key: "machine-behind",
        name: "a small machine works behind the wall",
        load: Pressure::kpa(10.0),
        source: Source {
            work: "from memory: BS 8002:1994, Code of practice for earth retaining structures",
            place: "3.3.4.1, at least 10 kPa behind the wall",
        },
        ..EVERY_DAY
    },
];

/// The situation of this key.
pub fn situation(key: &str) -> Option<&'static Situation> {
    SITUATIONS.iter().find(|s| s.key == key)
}

impl Situation {
    /// The soil as this situation finds it. Undrained fines get φ′ = 0 and their undrained strength as cohesion; softened
    /// fines lose cohesion and some friction. Grains stay as they are.
    pub fn soil(&self, soil: &Soil) -> Soil {
        if soil.kind == Kind::Coarse {
            return soil.clone();
        }
        match (self.drainage, soil.undrained) {
            (Drainage::Undrained, Some(cu)) => Soil {
                phi: Angle::ZERO,
                cohesion: cu,
                delta_timber: Angle::ZERO,
                delta_concrete: Angle::ZERO,
                ..soil.clone()
            },
            _ if self.softened > 1.0 => {
                let lowered = |a: Angle| Angle::rad(math::atan(math::tan(crate::rows::radians(a)) / self.softened));
                Soil {
                    phi: lowered(soil.phi),
                    cohesion: Pressure::ZERO,
                    delta_timber: lowered(soil.delta_timber),
                    delta_concrete: lowered(soil.delta_concrete),
                    ..soil.clone()
                }
            }
            _ => soil.clone(),
        }
    }
    /// The backfill as this situation finds it: soil, water and load. The higher of two waters and of two loads counts.
    /// Cohesion counts where the clay is undrained, else as the backfill says.
    pub fn backfill(&self, backfill: &Backfill) -> Backfill {
        let own = match backfill.water {
            WaterLevel::Drained => Length::ZERO,
            WaterLevel::At(h) => h,
        };
        let here = backfill.height * self.water.to_fraction();
        let water = if own.max(here) > Length::ZERO { WaterLevel::At(own.max(here)) } else { backfill.water };
        let soil = self.soil(&backfill.soil);
        let undrained = soil.phi == Angle::ZERO && backfill.soil.phi > Angle::ZERO;
        let (surcharge, strips) = if self.without_variable {
            (self.load, backfill.strips.iter().copied().filter(|s| s.permanent).collect())
        } else {
            (backfill.surcharge.max(self.load), backfill.strips.clone())
        };
        Backfill {
            wall_friction: if undrained { Angle::ZERO } else { backfill.wall_friction.min(soil.phi) },
            soil,
            water,
            surcharge,
            strips,
            counts_cohesion: backfill.counts_cohesion || undrained,
            ..backfill.clone()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pressure::Method;
    use crate::soil::class;

    fn clay() -> Backfill {
        let soil = Soil::of(class("firm-clay").unwrap());
        Backfill::new(soil, Length::m(1.5))
    }

    #[test]
    fn every_situation_has_its_own_key_and_a_source() {
        for (i, s) in SITUATIONS.iter().enumerate() {
            assert_eq!(situation(s.key).map(|s| s.name), Some(s.name));
            assert!(SITUATIONS[i + 1..].iter().all(|o| o.key != s.key) && !s.source.work.is_empty());
        }
        assert_eq!(situation("moonlight"), None);
    }

    #[test]
    fn a_blocked_drain_a_wet_winter_and_a_machine_push_harder_than_every_day() {
        let push = |key: &str| {
            let b = situation(key).unwrap().backfill(&clay());
            Method::Rankine.active(&b).unwrap().horizontal.si()
        };
        for key in ["drain-blocked", "wet-winter", "machine-behind"] {
            assert!(push(key) > push("drained") * 1.05, "{key}");
        }
        assert!(push("drain-blocked") > push("wet-winter"));
        assert_eq!(push("drained"), Method::Rankine.active(&clay()).unwrap().horizontal.si());
    }

    #[test]
    fn fresh_clay_stands_on_its_undrained_strength_and_sand_does_not_change() {
        let fresh = situation("end-of-construction").unwrap();
        let b = fresh.backfill(&clay());
        assert_eq!((b.soil.phi, b.counts_cohesion), (Angle::ZERO, true));
        assert_eq!(b.soil.cohesion, clay().soil.undrained.unwrap());
        let sand = Soil::of(class("medium-sand").unwrap());
        assert_eq!(fresh.soil(&sand), sand);
    }
}
