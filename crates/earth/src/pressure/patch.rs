//! How hard does a load on a rectangle of the ground press on a wall: a parked vehicle, a pallet, a skip?

use groundhold_quantity::{Force, Length, Pressure};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use super::Spread;
use super::spread::{even, sum_of};
use crate::rows;

/// A kind of vehicle as a load: a pressure over the ground it may stand on, and one axle on two squares.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Vehicle {
    /// As the job file spells it.
    pub key: &'static str,
    /// In words.
    pub name: &'static str,
    /// Over all the ground it may stand on.
    pub everywhere: Pressure,
    /// One axle.
    pub axle: Force,
    /// Side of the square under each end of the axle.
    pub square: Length,
    /// Where the figures come from.
    pub source: Source,
}

const EN1991: Source = Source {
    work: "from memory: EN 1991-1-1:2002, Actions on structures, densities, self-weight, imposed loads for buildings",
    place: "6.3.3, Table 6.8 and Fig. 6.2; the upper end of each range",
};

/// Vehicles. An excavator or a lorry above 160 kN is no line of this table: ask for its axle loads.
pub static VEHICLES: &[Vehicle] = &[
    Vehicle {
        key: "car",
        name: "cars and light vans, up to 30 kN",
        everywhere: Pressure::kpa(2.5),
        axle: Force::kn(20.0),
        square: Length::mm(100.0),
        source: EN1991,
    },
    Vehicle {
        key: "van",
        name: "vehicles of 30 to 160 kN on two axles",
        everywhere: Pressure::kpa(5.0),
        axle: Force::kn(90.0),
        square: Length::mm(200.0),
        source: EN1991,
    },
];

impl Vehicle {
    /// One wheel of its axle, this far behind the wall, on its square.
    pub fn wheel(&self, from: Length) -> Patch {
        let area = self.square * self.square;
        Patch {
            value: Pressure::pa(0.5 * self.axle.to_n() / area.to_m2()),
            from,
            to: from + self.square,
            along: self.square,
            wall_is_stiff: true,
        }
    }
}

/// Horizontal stress under a corner of a loaded rectangle, in an elastic half-space that keeps its volume.
///
/// # Source
/// Holl, "Stress transmission in earths", Proc. Highway Research Board 20 (1940); as in Poulos and Davis, Elastic Solutions
/// for Soil and Rock Mechanics, Wiley, New York (1974), chapter 3 (formula from memory; checked in the tests against
/// Boussinesq's point load summed over the rectangle).
/// # Symbols
/// | p, l, b, z | load, side along the stress, side across it, depth | kPa, m | z > 0 |
/// # Gives
/// σ in kPa.
/// # Not for
/// Layers of very different stiffness.
/// # Errors
/// None here.
/// # By hand
/// p = 100, l = b = z = 1: R₁² = 2, R₃ = √3: 100/2π · (0.5236 − 0.2887) = 3.739 kPa.
pub fn under_corner<N: Number>(p: N, l: N, b: N, z: N) -> N {
    let r1 = l.squared() + z.squared();
    let r3 = (l.squared() + b.squared() + z.squared()).sqrt();
    p / (2.0 * std::f64::consts::PI) * ((l * b / (z * r3)).atan() - l * b * z / (r1 * r3))
}

/// Pressure on the wall straight in front of the middle of a rectangle, at a depth; the wall doubles the stress of the
/// ground by its mirror load.
pub fn in_front<N: Number>(q: N, from: N, to: N, along: N, z: N, doubling: N) -> N {
    if z.value() <= 0.0 {
        return N::constant(0.0);
    }
    let half = along / 2.0;
    let far = under_corner(q, to, half, z);
    let near = if from.value() > 0.0 { under_corner(q, from, half, z) } else { N::constant(0.0) };
    ((far - near) * 2.0 * doubling).named("σ", Unit::KPA)
}

const PIECES: usize = 100;

/// A rectangle of load behind a wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patch {
    /// How much.
    pub value: Pressure,
    /// Near edge, behind the wall.
    pub from: Length,
    /// Far edge.
    pub to: Length,
    /// Its length along the wall.
    pub along: Length,
    /// True for a wall that cannot yield, which feels twice the stress of the ground.
    pub wall_is_stiff: bool,
}

/// What the wall feels of a patch, in front of its middle, where it is worst.
#[derive(Debug, Clone, PartialEq)]
pub struct Felt {
    /// Pressures over the depth.
    pub spread: Spread,
    /// How they were worked out.
    pub trace: Trace,
}

impl Patch {
    /// Pressures over the height of a wall.
    ///
    /// # Errors
    /// A value outside the working's limits, or edges the wrong way round.
    pub fn on_wall(&self, height: Length) -> Result<Felt> {
        let doubling = if self.wall_is_stiff { 2.0 } else { 1.0 };
        let (q, from, to) = (self.value.to_kpa(), self.from.to_m(), self.to.to_m());
        let given: Vec<_> =
            [q, height.to_m(), from, to, self.along.to_m(), doubling].into_iter().map(Into::into).collect();
        rows::check(&PATCH, &given)?;
        if to <= from {
            return Err(Refused::NoAnswer { working: PATCH.name, why: edges(from, to) });
        }
        let depths = even(height.to_m(), PIECES);
        let at = |z: &f64| in_front(q, from, to, self.along.to_m(), *z, doubling);
        let pressures: Vec<f64> = depths.iter().map(at).collect();
        Ok(Felt { spread: Spread::of(&depths, &pressures), trace: Trace::new(&PATCH, given) })
    }
}

fn edges(from: f64, to: f64) -> String {
    format!("the far edge `to` should lie behind the near edge `from`, found {to} m and {from} m")
}

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let (q, h, from, to) = (g.one("q")?, g.one("height")?, g.one("from")?, g.one("to")?);
    let (along, doubling) = (g.one("along")?, g.one("doubling")?);
    if to.value() <= from.value() {
        return Err(g.no_answer(edges(from.value(), to.value())));
    }
    let depths = even(h.value(), PIECES);
    let (vq, vf, vt, va, vd) = (q.value(), from.value(), to.value(), along.value(), doubling.value());
    let pressures: Vec<f64> = depths.iter().map(|z| in_front(vq, vf, vt, va, *z, vd)).collect();
    let (force, arm) = sum_of(h.value(), &depths, &pressures);
    let sheet = g.sheet();
    let middle = in_front(q, from, to, along, h / 2.0, doubling);
    sheet.remark(format!("σ in {PIECES} steps over the height; the line above is at half of it"));
    let asked = |list: &[f64], unit| Found::Many(list.iter().map(|v| sheet.put("", *v, unit)).collect());
    Ok(vec![
        Found::One(middle),
        Found::One(sheet.put("P", force, Unit::KN_M)),
        Found::One(sheet.put("a", arm, Unit::M)),
        asked(&depths, Unit::M),
        asked(&pressures, Unit::KPA),
    ])
}

/// Load on a rectangle.
pub static PATCH: Working = Working {
    name: "surcharge/patch",
    title: "How hard does a load on a rectangle of the ground press on the wall in front of it?",
    source: Source {
        work: "Holl, Stress transmission in earths, Proc. Highway Research Board 20, 1940; Poulos and Davis, Elastic Solutions for Soil and Rock Mechanics, 1974",
        place: "formula from memory, elastic half-space with constant volume; doubled by the mirror load for a wall that cannot yield",
    },
    not_for: "the wall beside the load, which feels less; heavy loads on a wall that is about to yield: use the trial wedge",
    inputs: &[
        Input::new("q", "q", "load on the ground", Unit::KPA, Limits::ours(0.0, 5000.0)),
        rows::HEIGHT,
        Input::new("from", "a", "near edge behind the wall", Unit::M, Limits::ours(0.0, 100.0)),
        Input::new("to", "b", "far edge behind the wall", Unit::M, Limits::ours(0.0, 1000.0)),
        Input::new("along", "L", "length along the wall", Unit::M, Limits::ours(0.01, 10_000.0)),
        Input::new(
            "doubling",
            "n",
            "2 for a wall that cannot yield, 1 for the stress of the ground alone",
            Unit::NONE,
            Limits::ours(1.0, 2.0),
        )
        .or(2.0),
    ],
    outputs: &[
        Output { key: "middle", words: "pressure at half the height", unit: Unit::KPA },
        Output { key: "p", words: "force per metre run in front of its middle", unit: Unit::KN_M },
        Output { key: "arm", words: "its height above the base", unit: Unit::M },
        Output { key: "depths", words: "depths", unit: Unit::M },
        Output { key: "sigma", words: "pressures there", unit: Unit::KPA },
    ],
    run,
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wheel_carries_half_its_axle_and_is_felt_less_from_further_off() {
        for v in VEHICLES {
            let wheel = v.wheel(Length::m(0.5));
            let carried = wheel.value * (v.square * v.square);
            assert!((carried / v.axle - 0.5).abs() < 1e-12, "{}", v.key);
            let felt = |from: f64| v.wheel(Length::m(from)).on_wall(Length::m(1.0)).unwrap().spread.force();
            assert!(felt(0.5) > felt(1.5), "{}", v.key);
        }
    }

    #[test]
    fn the_corner_formula_is_boussinesqs_point_load_summed_over_the_rectangle() {
        let (l, b, z) = (1.3, 0.8, 0.9);
        let n = 200;
        let mut sum = 0.0;
        for i in 0..n {
            for j in 0..n {
                let (x, y) = (l * (i as f64 + 0.5) / n as f64, b * (j as f64 + 0.5) / n as f64);
                let r2 = x * x + y * y + z * z;
                sum += 3.0 * x * x * z / (2.0 * std::f64::consts::PI * r2 * r2 * r2.sqrt());
            }
        }
        let summed = 100.0 * sum * l * b / (n * n) as f64;
        assert!((summed / under_corner(100.0, l, b, z) - 1.0).abs() < 1e-4, "{summed}");
    }
}
