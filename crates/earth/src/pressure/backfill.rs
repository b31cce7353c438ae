//! With which pressures does this backfill load a wall, ordinate by ordinate and in sum?

use groundhold_quantity::{Angle, Length, LineForce, Moment, Pressure, Slope};
use groundhold_working::{Refused, Result, Trace, Value};

use super::thrust::{self, Case, Theory};
use crate::rows;
use crate::soil::Soil;

/// By which theory the active pressure is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Method {
    /// Smooth vertical plane, thrust parallel to the ground. Wall friction is not counted.
    Rankine,
    /// Plane wedge against a rough vertical back, thrust turned down by δ.
    Coulomb,
}

/// How high water stands behind the wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WaterLevel {
    /// Nowhere: the drain works.
    Drained,
    /// To this height above the base of the pressure.
    At(Length),
}

/// A load on part of the ground behind, per metre run of wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strip {
    /// How much.
    pub value: Pressure,
    /// Near edge, measured back from the wall.
    pub from: Length,
    /// Far edge; may be infinite.
    pub to: Length,
    /// Always there, or coming and going.
    pub permanent: bool,
}

/// The ground behind a vertical wall, one soil, over the height on which it pushes.
#[derive(Debug, Clone, PartialEq)]
pub struct Backfill {
    /// What it is made of. For a design value, hand in [`crate::Combination::soil`] of it.
    pub soil: Soil,
    /// From the ground at the wall down to the base of the pressure.
    pub height: Length,
    /// Ground behind, positive where it rises away from the wall.
    pub slope: Slope,
    /// δ; counted by Coulomb only.
    pub wall_friction: Angle,
    /// Load on all the ground behind that comes and goes.
    pub surcharge: Pressure,
    /// Loads on parts of it.
    pub strips: Vec<Strip>,
    /// Water behind.
    pub water: WaterLevel,
    /// True to count the soil's cohesion; tension is then cut off. False is usual for ground that was dug and put back.
    pub counts_cohesion: bool,
}

/// The horizontal pressures at one depth. Two ordinates at the same depth mark a jump.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ordinate {
    /// Below the ground at the wall.
    pub depth: Length,
    /// From the weight of the soil.
    pub soil: Pressure,
    /// From loads on the ground.
    pub surcharge: Pressure,
    /// From water.
    pub water: Pressure,
}

/// A part of the thrust with its lever, so that each can carry its own factor.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Part {
    /// Horizontal force per metre run.
    pub horizontal: LineForce,
    /// Moment about the base per metre run.
    pub moment: Moment,
}

/// The active thrust per metre run of wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Active {
    /// By which theory.
    pub by: Method,
    /// Coefficient of the thrust in its own direction.
    pub coefficient: f64,
    /// The thrust of soil and loads below horizontal: the ground's slope by Rankine, δ by Coulomb.
    pub direction: Angle,
    /// Horizontal force, unfactored.
    pub horizontal: LineForce,
    /// Force down the back of the wall, unfactored.
    pub vertical: LineForce,
    /// Moment of the horizontal pressures about the base, per metre run, unfactored.
    pub moment: Moment,
    /// Where the horizontal force acts, above the base.
    pub arm: Length,
    /// From the soil's weight.
    pub soil: Part,
    /// From loads that stay.
    pub permanent: Part,
    /// From loads that come and go.
    pub variable: Part,
    /// From water.
    pub water: Part,
    /// Pressures from the ground down to the base, in order of depth.
    pub diagram: Vec<Ordinate>,
    /// How it was worked out.
    pub trace: Trace,
}

impl Backfill {
    /// Level ground, nothing on it, drained, without cohesion and wall friction.
    pub fn new(soil: Soil, height: Length) -> Backfill {
        Backfill {
            soil,
            height,
            slope: Slope::LEVEL,
            wall_friction: Angle::ZERO,
            surcharge: Pressure::ZERO,
            strips: vec![],
            water: WaterLevel::Drained,
            counts_cohesion: false,
        }
    }
    fn water_height(&self) -> Length {
        match self.water {
            WaterLevel::Drained => Length::ZERO,
            WaterLevel::At(h) => h.max(Length::ZERO).min(self.height),
        }
    }
    fn case(&self) -> Case<f64> {
        Case {
            height: self.height.to_m(),
            gamma: self.soil.unit_weight.to_kn_per_m3(),
            gamma_sat: self.soil.unit_weight_saturated.to_kn_per_m3(),
            phi: rows::radians(self.soil.phi),
            c: if self.counts_cohesion { self.soil.cohesion.to_kpa() } else { 0.0 },
            slope: rows::radians(self.slope.to_angle()),
            delta: rows::radians(self.wall_friction),
            q: self.surcharge.to_kpa(),
            water: self.water_height().to_m(),
            strips: self.strips.iter().filter(|s| s.value > Pressure::ZERO).map(thrust::strip).collect(),
        }
    }
    fn given(&self) -> Vec<Value> {
        let list = |f: fn(&Strip) -> f64| {
            if self.strips.is_empty() { Value::One(0.0) } else { Value::Many(self.strips.iter().map(f).collect()) }
        };
        let c = self.case();
        vec![
            c.height.into(),
            c.gamma.into(),
            c.gamma_sat.into(),
            self.soil.phi.to_deg().into(),
            c.c.into(),
            self.slope.to_angle().to_deg().into(),
            self.wall_friction.to_deg().into(),
            c.q.into(),
            c.water.into(),
            list(|s| s.value.to_kpa()),
            list(|s| s.from.to_m()),
            list(|s| s.to.to_m().min(thrust::FAR)),
            list(|s| if s.permanent { 1.0 } else { 0.0 }),
        ]
    }
}

impl Method {
    /// In a word, for tables.
    pub fn name(self) -> &'static str {
        match self {
            Method::Rankine => "Rankine",
            Method::Coulomb => "Coulomb",
        }
    }
    /// The active thrust of this backfill.
    ///
    /// # Errors
    /// [`Refused`] where a figure lies outside the working's limits, or where the ground is steeper than the soil's
    /// friction angle: such ground has no active state and moves by itself.
    pub fn active(self, backfill: &Backfill) -> Result<Active> {
        let (theory, working) = match self {
            Method::Rankine => (Theory::Rankine, &thrust::THRUST_RANKINE),
            Method::Coulomb => (Theory::Coulomb, &thrust::THRUST_COULOMB),
        };
        let given = backfill.given();
        rows::check(working, &given)?;
        let case = backfill.case();
        let t = thrust::thrust(theory, &case).map_err(|why| Refused::NoAnswer { working: working.name, why })?;
        let part =
            |(force, moment): (f64, f64)| Part { horizontal: LineForce::kn_per_m(force), moment: Moment::knm(moment) };
        Ok(Active {
            by: self,
            coefficient: t.k,
            direction: Angle::rad(t.direction),
            horizontal: LineForce::kn_per_m(t.horizontal),
            vertical: LineForce::kn_per_m(t.vertical),
            moment: Moment::knm(t.moment),
            arm: Length::m(t.arm),
            soil: part(t.soil),
            permanent: part(t.permanent),
            variable: part(t.variable),
            water: part(t.water),
            diagram: t.diagram.iter().map(thrust::Pressures::ordinate).collect(),
            trace: Trace::new(working, given),
        })
    }
}

impl Part {
    /// Height of the force above the base; nothing where there is no force.
    pub fn arm(self) -> Length {
        if self.horizontal.si() > 0.0 {
            Length::m(self.moment.to_knm() / self.horizontal.to_kn_per_m())
        } else {
            Length::ZERO
        }
    }
}

impl Ordinate {
    /// All of it.
    pub fn total(self) -> Pressure {
        self.soil + self.surcharge + self.water
    }
}

impl Active {
    /// The thrust with factors on what stays (soil, water, permanent loads) and on what comes and goes.
    pub fn factored(&self, permanent: f64, variable: f64) -> Part {
        let add = |f: fn(&Part) -> f64| {
            permanent * (f(&self.soil) + f(&self.permanent) + f(&self.water)) + variable * f(&self.variable)
        };
        Part {
            horizontal: LineForce::kn_per_m(add(|p| p.horizontal.to_kn_per_m())),
            moment: Moment::knm(add(|p| p.moment.to_knm())),
        }
    }
    /// Horizontal pressure at a depth; at a jump, the larger. Outside the height, nothing.
    pub fn pressure_at(&self, depth: Length) -> Pressure {
        let mut most = Pressure::ZERO;
        for pair in self.diagram.windows(2) {
            let (a, b) = (pair[0], pair[1]);
            if a.depth <= depth && depth <= b.depth {
                let t = if b.depth > a.depth { (depth - a.depth) / (b.depth - a.depth) } else { 1.0 };
                most = most.max(a.total() + (b.total() - a.total()) * t);
            }
        }
        most
    }
    /// Horizontal force between two depths, unfactored: what one board or one panel carries per metre run.
    pub fn between(&self, from: Length, to: Length) -> LineForce {
        self.diagram
            .windows(2)
            .map(|pair| {
                let (a, b) = (pair[0], pair[1]);
                let (lo, hi) = (a.depth.max(from), b.depth.min(to));
                if hi <= lo || b.depth <= a.depth {
                    return LineForce::ZERO;
                }
                let at = |z: Length| a.total() + (b.total() - a.total()) * ((z - a.depth) / (b.depth - a.depth));
                (at(lo) + at(hi)) * 0.5 * (hi - lo)
            })
            .sum()
    }
}
