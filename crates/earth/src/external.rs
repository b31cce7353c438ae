//! Does a wall that stands by its weight slide, overturn or press too hard on the ground?

use groundhold_quantity::{Length, LineForce, Moment, Pressure};
use groundhold_working::{Found, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Value, Working};

use crate::rows;

/// A weight per metre run, and where it acts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weight {
    /// Downward.
    pub force: LineForce,
    /// From the toe towards the heel.
    pub arm: Length,
}

/// A push per metre run, and where it acts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Push {
    /// Horizontal, towards the toe.
    pub force: LineForce,
    /// Above the underside of the base.
    pub height: Length,
}

/// What the wall stands on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Footing {
    /// Width of the base from toe to heel.
    pub width: Length,
    /// Coefficient of friction on the ground, tan δ_b.
    pub friction: f64,
    /// Adhesion on the base; nothing is usual.
    pub adhesion: Pressure,
    /// Resistance of the ground in front; nothing is usual, since it may be dug away.
    pub passive: LineForce,
}

/// How the wall stands, per metre run.
#[derive(Debug, Clone, PartialEq)]
pub struct Stability {
    /// Sum of weights.
    pub vertical: LineForce,
    /// Sum of pushes.
    pub horizontal: LineForce,
    /// Moment of the pushes about the toe.
    pub overturning: Moment,
    /// Moment of the weights about the toe.
    pub restoring: Moment,
    /// Restoring over overturning moment.
    pub factor_overturning: f64,
    /// Resisting over pushing force.
    pub factor_sliding: f64,
    /// From the middle of the base to the resultant, positive towards the toe.
    pub eccentricity: Length,
    /// True where the resultant lies in the middle third, so that the whole base presses.
    pub in_middle_third: bool,
    /// Pressure under the toe; `None` where the resultant leaves the base and the wall has turned over.
    pub pressure_toe: Option<Pressure>,
    /// Pressure under the heel.
    pub pressure_heel: Option<Pressure>,
    /// How it was worked out.
    pub trace: Trace,
}

impl Stability {
    /// Width that carries evenly when the load stands in its middle, B − 2|e| (Meyerhof, 1953): what bearing is judged on.
    /// Nothing where the wall has turned over.
    pub fn effective_width(&self, width: Length) -> Length {
        (width - self.eccentricity.abs() * 2.0).max(Length::ZERO)
    }
}

struct Sums<N> {
    vertical: N,
    horizontal: N,
    overturning: N,
    restoring: N,
    overturn: N,
    slide: N,
    e: N,
    toe: N,
    heel: N,
}

/// Sliding, overturning and base pressure of a wall by its weights and pushes.
///
/// # Source
/// Rigid-body equilibrium with a straight distribution of pressure (Navier), cut off at zero where the resultant leaves
/// the middle third; as in Das, Principles of Foundation Engineering, 7th ed. (2011), chapter 8.
/// # Symbols
/// | V_i, x_i | weights and their distances from the toe | kN/m, m | |
/// | H_j, y_j | pushes and their heights above the underside | kN/m, m | |
/// | B, μ, a, P_p | width, friction, adhesion, passive resistance | m, –, kPa, kN/m | |
/// # Gives
/// Sums, factors, eccentricity, pressures under toe and heel (infinite where the wall has turned over).
/// # Not for
/// Bearing of the ground (`bearing/…`), bending in the wall, slip of the whole bank.
/// # Errors
/// None here.
/// # By hand
/// Reference cases WALL-01, WALL-03, WALL-07.
fn sums<N: Number>(weights: &[(N, N)], pushes: &[(N, N)], width: N, mu: N, adhesion: N, passive: N) -> Sums<N> {
    let zero = N::constant(0.0);
    let add = |terms: Vec<N>| terms.into_iter().reduce(|a, b| a + b).unwrap_or(zero);
    let vertical = add(weights.iter().map(|w| w.0).collect()).named("V", Unit::KN_M);
    let restoring = add(weights.iter().map(|w| w.0 * w.1).collect()).named("M_r", Unit::KNM);
    let horizontal = add(pushes.iter().map(|p| p.0).collect()).named("H", Unit::KN_M);
    let overturning = add(pushes.iter().map(|p| p.0 * p.1).collect()).named("M_o", Unit::KNM);
    let overturn = (restoring / overturning).named("F_o", Unit::NONE);
    let slide = ((vertical * mu + adhesion * width + passive) / horizontal).named("F_s", Unit::NONE);
    let x = ((restoring - overturning) / vertical).named("x", Unit::M);
    let e = (width / 2.0 - x).named("e", Unit::M);
    let mean = vertical / width;
    let (toe, heel) = if x.value() <= 0.0 {
        (N::constant(f64::INFINITY), zero)
    } else if e.value() > width.value() / 6.0 {
        ((vertical * 2.0 / (x * 3.0)).named("p_toe", Unit::KPA), zero)
    } else if e.value() < -width.value() / 6.0 {
        (zero, (vertical * 2.0 / ((width - x) * 3.0)).named("p_heel", Unit::KPA))
    } else {
        let part = e * 6.0 / width;
        let one = N::constant(1.0);
        ((mean * (one + part)).named("p_toe", Unit::KPA), (mean * (one - part)).named("p_heel", Unit::KPA))
    };
    Sums { vertical, horizontal, overturning, restoring, overturn, slide, e, toe, heel }
}

/// How a wall stands by its weights and pushes.
///
/// # Errors
/// [`Refused`] where there is no weight or no push, or a value outside the working's limits.
pub fn stability(weights: &[Weight], pushes: &[Push], footing: &Footing) -> Result<Stability> {
    let w: Vec<_> = weights.iter().map(|w| (w.force.to_kn_per_m(), w.arm.to_m())).collect();
    let p: Vec<_> = pushes.iter().map(|p| (p.force.to_kn_per_m(), p.height.to_m())).collect();
    let list = |v: &[(f64, f64)], f: fn(&(f64, f64)) -> f64| Value::Many(v.iter().map(f).collect());
    let f = footing;
    let given = vec![
        list(&w, |w| w.0),
        list(&w, |w| w.1),
        list(&p, |p| p.0),
        list(&p, |p| p.1),
        f.width.to_m().into(),
        f.friction.into(),
        f.adhesion.to_kpa().into(),
        f.passive.to_kn_per_m().into(),
    ];
    rows::check(&EXTERNAL, &given)?;
    let total = |v: &[(f64, f64)]| v.iter().map(|x| x.0).sum::<f64>();
    if total(&w) <= 0.0 || total(&p) <= 0.0 {
        return Err(Refused::NoAnswer { working: EXTERNAL.name, why: NOTHING.into() });
    }
    let s = sums(&w, &p, f.width.to_m(), f.friction, f.adhesion.to_kpa(), f.passive.to_kn_per_m());
    let pressure = |v: f64| s.toe.is_finite().then(|| Pressure::kpa(v));
    Ok(Stability {
        vertical: LineForce::kn_per_m(s.vertical),
        horizontal: LineForce::kn_per_m(s.horizontal),
        overturning: Moment::knm(s.overturning),
        restoring: Moment::knm(s.restoring),
        factor_overturning: s.overturn,
        factor_sliding: s.slide,
        eccentricity: Length::m(s.e),
        in_middle_third: s.e.abs() <= f.width.to_m() / 6.0,
        pressure_toe: pressure(s.toe),
        pressure_heel: pressure(s.heel),
        trace: Trace::new(&EXTERNAL, given),
    })
}

const NOTHING: &str = "a wall needs at least one weight and one push above zero to be judged";

/// A wall by its weights and pushes.
pub static EXTERNAL: Working = Working {
    name: "walls/external",
    title: "Does a wall that stands by its weight slide or overturn, and how hard does it press on the ground?",
    source: Source {
        work: "rigid-body equilibrium, as in Das, Principles of Foundation Engineering, 7th ed., 2011",
        place: "chapter 8; triangle of pressure outside the middle third",
    },
    not_for: "bearing of the ground, bending of the wall, slip of the whole bank",
    inputs: &[
        Input::new("weights", "V", "weights", Unit::KN_M, Limits::ours(0.0, 1e5)),
        Input::new("arms", "x", "their distances from the toe", Unit::M, Limits::ours(0.0, 100.0)),
        Input::new("pushes", "H", "pushes", Unit::KN_M, Limits::ours(0.0, 1e5)),
        Input::new("heights", "y", "their heights above the underside of the base", Unit::M, Limits::ours(-5.0, 100.0)),
        Input::new("width", "B", "width of the base", Unit::M, Limits::ours(0.01, 100.0)),
        Input::new("mu", "μ", "coefficient of friction under the base", Unit::NONE, Limits::ours(0.0, 1.5)),
        Input::new("adhesion", "a", "adhesion under the base", Unit::KPA, Limits::ours(0.0, 500.0)).or(0.0),
        Input::new("passive", "P_p", "resistance of the ground in front", Unit::KN_M, Limits::ours(0.0, 1e5)).or(0.0),
    ],
    outputs: &[
        Output { key: "v", words: "sum of weights", unit: Unit::KN_M },
        Output { key: "h", words: "sum of pushes", unit: Unit::KN_M },
        Output { key: "m_over", words: "overturning moment", unit: Unit::KNM },
        Output { key: "m_rest", words: "restoring moment", unit: Unit::KNM },
        Output { key: "fs_over", words: "factor against overturning", unit: Unit::NONE },
        Output { key: "fs_sliding", words: "factor against sliding", unit: Unit::NONE },
        Output { key: "e", words: "eccentricity towards the toe", unit: Unit::M },
        Output { key: "p_toe", words: "pressure under the toe", unit: Unit::KPA },
        Output { key: "p_heel", words: "pressure under the heel", unit: Unit::KPA },
    ],
    run: |g| {
        let (w, x) = (g.many("weights")?, g.many("arms")?);
        let (p, y) = (g.many("pushes")?, g.many("heights")?);
        if w.len() != x.len() || p.len() != y.len() {
            return Err(g.no_answer("every weight needs its arm, and every push its height"));
        }
        let total = |v: &[groundhold_working::Shown<'_>]| v.iter().map(|n| n.value()).sum::<f64>();
        if total(&w) <= 0.0 || total(&p) <= 0.0 {
            return Err(g.no_answer(NOTHING));
        }
        let weights: Vec<_> = w.into_iter().zip(x).collect();
        let pushes: Vec<_> = p.into_iter().zip(y).collect();
        let (adhesion, passive) = (g.one("adhesion")?, g.one("passive")?);
        let s = sums(&weights, &pushes, g.one("width")?, g.one("mu")?, adhesion, passive);
        let out = [s.vertical, s.horizontal, s.overturning, s.restoring, s.overturn, s.slide, s.e, s.toe, s.heel];
        Ok(out.map(Found::One).into())
    },
};
