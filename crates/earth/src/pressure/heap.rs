//! How hard does a heap of spoil press on a wall, whatever its outline?

use groundhold_quantity::{Length, UnitWeight};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use super::Spread;
use super::spread::{even, sum_of};
use crate::rows;

/// Pressure on a wall from a straight piece of load that changes evenly between two places.
///
/// # Source
/// Boussinesq's line load, σ = 2 p s² z / (π (s² + z²)²), Applications des potentiels, Paris (1885), integrated over the
/// piece by ourselves; for an even load it is the strip of Jarquio, J. Geotech. Eng. Div. ASCE 107(GT5) (1981).
/// # Symbols
/// | a, b, q_a, q_b | places behind the wall and the load there | m, kPa | 0 ≤ a < b |
/// | z, n | depth; 2 for a wall that cannot yield, 1 for the stress of the ground alone | m, – | z > 0 |
/// # Gives
/// σ in kPa.
/// # Not for
/// Loads of finite length along the wall (patch).
/// # Errors
/// None here.
/// # By hand
/// q = 40 from 1 to 3 m, z = 2, n = 2: (4·40/π)[½(0.9828 − 0.4615) − ½(0.4636 − 0.4)] = 11.65 kPa (reference case HE-01).
pub fn piece<N: Number>(a: N, b: N, qa: N, qb: N, z: N, doubling: N) -> N {
    let slope = (qb - qa) / (b - a);
    let at_wall = qa - slope * a;
    let far = |s: N| s.squared() + z.squared();
    let even = |s: N| ((s / z).atan() - s * z / far(s)) / 2.0;
    let rising = |s: N| z * (far(s).ln() + z.squared() / far(s)) / 2.0;
    let level = at_wall * (even(b) - even(a));
    let sum = if slope.value() == 0.0 { level } else { level + slope * (rising(b) - rising(a)) };
    sum * doubling * 2.0 / std::f64::consts::PI
}

/// A heap as its outline across the wall: places behind the wall and heights above the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Heap {
    /// Outline, places never falling.
    pub outline: Vec<(Length, Length)>,
    /// Weight of what is heaped.
    pub unit_weight: UnitWeight,
    /// True for a wall that cannot yield, which feels twice the stress of the ground.
    pub wall_is_stiff: bool,
}

/// What a wall feels of a heap.
#[derive(Debug, Clone, PartialEq)]
pub struct Felt {
    /// Pressures over the depth.
    pub spread: Spread,
    /// How they were worked out.
    pub trace: Trace,
}

const PIECES: usize = 100;

fn pressures(xs: &[f64], qs: &[f64], depths: &[f64], doubling: f64) -> Vec<f64> {
    let at = |z: &f64| {
        let steps = (0..xs.len() - 1).filter(|i| *z > 0.0 && xs[i + 1] > xs[*i]);
        steps.map(|i| piece(xs[i], xs[i + 1], qs[i], qs[i + 1], *z, doubling)).sum()
    };
    depths.iter().map(at).collect()
}

fn possible(xs: &[f64], qs: &[f64]) -> std::result::Result<(), String> {
    if xs.len() != qs.len() || xs.len() < 2 {
        return Err("the outline needs at least two points, with as many loads as places".into());
    }
    match xs.windows(2).find(|w| w[1] < w[0]) {
        Some(w) => Err(format!("the outline turns back at {} m; its places should never fall", w[1])),
        None => Ok(()),
    }
}

impl Heap {
    /// Pressures over the height of a wall.
    ///
    /// # Errors
    /// An outline that cannot be, or a value outside the working's limits.
    pub fn on_wall(&self, height: Length) -> Result<Felt> {
        let xs: Vec<f64> = self.outline.iter().map(|p| p.0.to_m()).collect();
        let qs: Vec<f64> = self.outline.iter().map(|p| (self.unit_weight * p.1).to_kpa()).collect();
        let doubling = if self.wall_is_stiff { 2.0 } else { 1.0 };
        let given = vec![height.to_m().into(), xs.clone().into(), qs.clone().into(), doubling.into()];
        rows::check(&HEAP, &given)?;
        possible(&xs, &qs).map_err(|why| Refused::NoAnswer { working: HEAP.name, why })?;
        let depths = even(height.to_m(), PIECES);
        let spread = Spread::of(&depths, &pressures(&xs, &qs, &depths, doubling));
        Ok(Felt { spread, trace: Trace::new(&HEAP, given) })
    }
}

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let h = g.one("height")?;
    let doubling = g.one("doubling")?;
    let list = |key: &str| -> Result<Vec<f64>> { Ok(g.many(key)?.iter().map(|v| v.value()).collect()) };
    let (xs, qs) = (list("xs")?, list("qs")?);
    possible(&xs, &qs).map_err(|why| g.no_answer(why))?;
    let depths = even(h.value(), PIECES);
    let p = pressures(&xs, &qs, &depths, doubling.value());
    let (force, arm) = sum_of(h.value(), &depths, &p);
    let sheet = g.sheet();
    sheet.remark(format!(
        "each straight piece of the outline by Boussinesq's line load, in {PIECES} steps over the height"
    ));
    let asked = |list: &[f64], unit| Found::Many(list.iter().map(|v| sheet.put("", *v, unit)).collect());
    Ok(vec![
        Found::One(sheet.put("P", force, Unit::KN_M)),
        Found::One(sheet.put("a", arm, Unit::M)),
        asked(&depths, Unit::M),
        asked(&p, Unit::KPA),
    ])
}

/// Load with an outline.
pub static HEAP: Working = Working {
    name: "surcharge/heap",
    title: "How hard does a heap or a bank of any outline press on the wall in front of it?",
    source: Source {
        work: "Boussinesq, Application des potentiels à l'étude de l'équilibre et du mouvement des solides élastiques, Paris, 1885",
        place: "line load, integrated over straight pieces by ourselves; doubled by the mirror load for a wall that cannot yield",
    },
    not_for: "loads of short length along the wall (patch); a heap that the wedge carries with it (trial wedge)",
    inputs: &[
        rows::HEIGHT,
        Input::new("xs", "x", "places behind the wall, never falling", Unit::M, Limits::ours(0.0, 1000.0)),
        Input::new("qs", "q", "load at those places", Unit::KPA, Limits::ours(0.0, 500.0)),
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
        Output { key: "p", words: "force", unit: Unit::KN_M },
        Output { key: "arm", words: "its height above the base", unit: Unit::M },
        Output { key: "depths", words: "depths", unit: Unit::M },
        Output { key: "sigma", words: "pressures there", unit: Unit::KPA },
    ],
    run,
};
