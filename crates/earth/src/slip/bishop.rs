//! What is the factor of safety of one circle, slice by slice?

use groundhold_quantity::Angle;
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Result, Shown, Source, Unit, Working};

use super::profile::{Arc, Profile, Slice};
use super::search;

/// Beyond this a slice's m_α is too small for the method; such circles are left out. Whitman and Bailey (1967) warn from
/// 0.2 down (from memory).
const LEAST_M_ALPHA: f64 = 0.2;

/// Passes until the factor stands still.
const PASSES: usize = 60;

/// One pass: the factor that follows from a factor put into m_α.
///
/// # Source
/// Bishop, "The use of the slip circle in the stability analysis of slopes", Géotechnique 5(1) (1955), simplified method.
/// # Symbols
/// | W, b, u, α, φ, c | of each slice: weight, width, pore pressure, slope of its base, strength there | kN/m, m, kPa, angle | |
/// | F₀ | factor put in | – | > 0 |
/// | P_c | driving force of water in a crack | kN/m | |
/// # Gives
/// F = Σ[(c b + (W − u b) tan φ)/(cos α + sin α tan φ/F₀)] / (Σ W sin α + P_c). Where F = F₀ it is the answer.
/// # Not for
/// Slips that are not round; a base so steep that m_α is under 0.2.
/// # Errors
/// None here; [`factor`] gives nothing where m_α is too small.
/// # By hand
/// Reference case SL-01 from given slices.
fn pass<N: Number>(slices: &[Slice<N>], f: N, crack: N) -> (N, N) {
    let mut sums: Option<(N, N)> = None;
    for s in slices {
        let m = (s.cos + s.sin * s.tan_phi / f).named("m_α", Unit::NONE);
        let r = ((s.c * s.width + (s.weight - s.pore * s.width) * s.tan_phi) / m).named("R", Unit::KN_M);
        let d = (s.weight * s.sin).named("T", Unit::KN_M);
        sums = Some(sums.map_or((r, d), |(a, b)| (a + r, b + d)));
    }
    let (r, d) = sums.unwrap_or((N::constant(0.0), N::constant(0.0)));
    let d = if crack.value() == 0.0 { d } else { d + crack };
    (r.named("ΣR", Unit::KN_M), d.named("ΣT", Unit::KN_M))
}

/// Factor of the slices; `None` where nothing drives, m_α is too small, or it does not settle.
fn settle(slices: &[Slice<f64>], crack: f64) -> Option<f64> {
    settle_to(slices, crack, 1e-7, f64::INFINITY)
}

/// The same, until the factor moves by less than this share of itself; `None` also where it is not below `below`.
///
/// The pass is repeated with Newton's step, so that three passes settle it. Whether the factor is below a given one takes
/// a single pass: ΣR(F)/F falls as F rises, so F < F₁ where a pass with F₁ gives less than F₁.
fn settle_to(slices: &[Slice<f64>], crack: f64, still: f64, below: f64) -> Option<f64> {
    let driving: f64 = slices.iter().map(|s| s.weight * s.sin).sum::<f64>() + crack;
    if driving <= 1e-9 {
        return None;
    }
    if below.is_finite() && pass_and_slope(slices, below).0 >= below * driving {
        return None;
    }
    let mut f = if below.is_finite() { below } else { ordinary(slices, driving) };
    for _ in 0..PASSES {
        let (resisting, slope) = pass_and_slope(slices, f);
        let (once, slope) = (resisting / driving, slope / driving);
        let newton = f + (once - f) / (1.0 - slope);
        let next = if slope < 0.9 && newton > 0.0 { newton } else { once };
        if !next.is_finite() || next <= 0.0 {
            return None;
        }
        let done = (next - f).abs() < still * f;
        f = next;
        if done {
            let steep = slices.iter().any(|s| s.cos + s.sin * s.tan_phi / f < LEAST_M_ALPHA);
            return (!steep).then_some(f);
        }
    }
    None
}

/// ΣR of one pass, and how it changes with the factor put in.
fn pass_and_slope(slices: &[Slice<f64>], f: f64) -> (f64, f64) {
    let (mut resisting, mut slope) = (0.0, 0.0);
    for s in slices {
        let a = s.sin * s.tan_phi;
        // f·m_α, so that one division serves both.
        let under = 1.0 / (s.cos * f + a);
        let r = (s.c * s.width + (s.weight - s.pore * s.width) * s.tan_phi) * under;
        resisting += r;
        slope += r * a * under;
    }
    (resisting * f, slope)
}

/// A first guess: the ordinary method.
fn ordinary(slices: &[Slice<f64>], driving: f64) -> f64 {
    let resisting: f64 = slices
        .iter()
        .map(|s| {
            let normal = s.weight * s.cos - s.pore * s.width / s.cos.max(0.05);
            s.c * s.width / s.cos.max(0.05) + normal.max(0.0) * s.tan_phi
        })
        .sum();
    resisting.max(1e-3 * driving) / driving
}

/// The factor of a circle; `None` where it is no possible slip. `room` is reused between calls.
pub(super) fn factor(profile: &Profile, arc: &Arc, room: &mut Vec<Slice<f64>>) -> Option<f64> {
    factor_below(profile, arc, Look::Fine, f64::INFINITY, room).map(|(f, _)| f)
}

/// Slices of a sketch, and how still its factor must stand: enough to tell which circles are worth a close look.
const SKETCH: (f64, f64) = (14.0, 1e-4);

/// How a search looks at a circle: finely, or by few slices, [`factor`] saying then what it really is.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Look {
    Sketch,
    Fine,
}

/// The factor of a circle, where it is below `below`, and its greatest depth below ground.
pub(super) fn factor_below(
    profile: &Profile,
    arc: &Arc,
    look: Look,
    below: f64,
    room: &mut Vec<Slice<f64>>,
) -> Option<(f64, f64)> {
    match look {
        Look::Sketch => {
            let deepest = profile.slices_of(arc, SKETCH.0, room)?;
            Some((settle_to(room, profile.crack_push(arc), SKETCH.1, below)?, deepest))
        }
        Look::Fine => {
            let deepest = profile.slices(arc, room)?;
            let crack = profile.crack_push(arc);
            let f = settle_to(room, crack, 1e-7, below)?;
            let (r, d) = pass(room, f, crack);
            Some((r / d, deepest))
        }
    }
}

fn run_circle<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let section = search::read(g)?;
    let profile = Profile::of(&section, Angle::to_rad).map_err(|why| g.no_answer(why))?;
    let (exit, entry) = (g.one("exit")?.value(), g.one("entry")?.value());
    let no =
        "this circle leaves the ground, goes below the hard level, is too steep for the method, or nothing drives it";
    let arc = profile
        .arc(profile.inward(exit), profile.inward(entry), g.one("radius")?.value())
        .ok_or_else(|| g.no_answer("no arc of this radius joins the two places"))?;
    let mut room = vec![];
    profile.slices(&arc, &mut room).ok_or_else(|| g.no_answer(no))?;
    let crack = profile.crack_push(&arc);
    let f = settle(&room, crack).ok_or_else(|| g.no_answer(no))?;
    let sheet = g.sheet();
    sheet.remark(format!("{} slices; the factor put in is the one that comes out, found by repeating", room.len()));
    let shown: Vec<Slice<Shown<'s>>> = room
        .iter()
        .map(|s| Slice {
            weight: sheet.put("W", s.weight, Unit::KN_M),
            width: sheet.put("b", s.width, Unit::M),
            pore: sheet.put("u", s.pore, Unit::KPA),
            sin: sheet.put("sin α", s.sin, Unit::NONE),
            cos: sheet.put("cos α", s.cos, Unit::NONE),
            tan_phi: sheet.put("tan φ", s.tan_phi, Unit::NONE),
            c: sheet.put("c", s.c, Unit::KPA),
        })
        .collect();
    let crack = sheet.put("P_c", crack, Unit::KN_M);
    let (r, d) = pass(&shown, sheet.put("F₀", f, Unit::NONE), crack);
    let centre = profile.outward(arc.centre);
    Ok(vec![
        Found::One((r / d).named("F", Unit::NONE)),
        Found::One(sheet.put("x_c", centre.x, Unit::M)),
        Found::One(sheet.put("y_c", centre.y, Unit::M)),
    ])
}

/// One circle through a section.
pub static BISHOP_CIRCLE: Working = Working {
    name: "slope/bishop-circle",
    title: "What is the factor of safety of this circle?",
    source: Source {
        work: "Bishop, The use of the slip circle in the stability analysis of slopes, Géotechnique 5(1), 1955",
        place: "simplified method",
    },
    not_for: "slips that are not round; bases steeper than the method allows",
    inputs: search::CIRCLE_INPUTS,
    outputs: &[
        Output { key: "factor", words: "factor of safety", unit: Unit::NONE },
        Output { key: "xc", words: "centre, along the section", unit: Unit::M },
        Output { key: "yc", words: "centre, level", unit: Unit::M },
    ],
    run: run_circle,
};

const WEIGHTS: Input = Input::new("weights", "W", "weights of the slices", Unit::KN_M, Limits::ours(0.0, 1e6));
const ALPHAS: Input =
    Input::new("alphas", "α", "slopes of their bases, negative where they hold", Unit::DEG, Limits::ours(-80.0, 80.0));
const LENGTHS: Input = Input::new("lengths", "l", "lengths of their bases", Unit::M, Limits::ours(0.0, 1000.0));
const PHI: Input = crate::rows::PHI;
const C: Input = crate::rows::COHESION;

type Lists<'s> = (Vec<Shown<'s>>, Vec<Shown<'s>>, Vec<Shown<'s>>);

fn lists<'s>(g: &Given<'s>) -> Result<Lists<'s>> {
    let (w, a, l) = (g.many("weights")?, g.many("alphas")?, g.many("lengths")?);
    if w.is_empty() || w.len() != a.len() || w.len() != l.len() {
        return Err(
            g.no_answer("`weights`, `alphas` and `lengths` should have the same number of values, one per slice")
        );
    }
    Ok((w, a, l))
}

fn sum<'s>(terms: impl Iterator<Item = Shown<'s>>) -> Shown<'s> {
    terms.reduce(|a, b| a + b).unwrap_or(Shown::constant(0.0))
}

/// The ordinary method from slices somebody measured.
pub static FELLENIUS_GIVEN_SLICES: Working = Working {
    name: "slope/fellenius",
    title: "What is the factor of safety of these slices by the ordinary method?",
    source: Source {
        work: "Fellenius, Calculation of the stability of earth dams, Trans. 2nd Congress on Large Dams 4, 1936",
        place: "F = Σ(c l + W cos α tan φ)/Σ W sin α",
    },
    not_for: "water in the slope; on the low side for deep circles",
    inputs: &[WEIGHTS, ALPHAS, LENGTHS, C, PHI],
    outputs: &[
        Output { key: "factor", words: "factor of safety", unit: Unit::NONE },
        Output { key: "sum_length", words: "length of the slip", unit: Unit::M },
        Output { key: "sum_driving", words: "sum of W sin α", unit: Unit::KN_M },
        Output { key: "sum_normal", words: "sum of W cos α", unit: Unit::KN_M },
    ],
    run: |g| {
        let (w, a, l) = lists(g)?;
        let (c, phi) = (g.one("c")?, g.one("phi")?);
        let length = sum(l.into_iter()).named("Σl", Unit::M);
        let driving = sum(w.iter().zip(&a).map(|(w, a)| *w * a.sin())).named("ΣW sin α", Unit::KN_M);
        let normal = sum(w.iter().zip(&a).map(|(w, a)| *w * a.cos())).named("ΣW cos α", Unit::KN_M);
        if driving.value() <= 0.0 {
            return Err(g.no_answer("nothing drives these slices downhill"));
        }
        let f = ((c * length + normal * phi.tan()) / driving).named("F", Unit::NONE);
        Ok([f, length, driving, normal].map(Found::One).into())
    },
};

/// Bishop's method from slices somebody measured.
pub static BISHOP_GIVEN_SLICES: Working = Working {
    name: "slope/bishop-given-slices",
    title: "What is the factor of safety of these slices after Bishop?",
    source: Source {
        work: "Bishop, The use of the slip circle in the stability analysis of slopes, Géotechnique 5(1), 1955",
        place: "simplified method",
    },
    not_for: "water in the slope",
    inputs: &[WEIGHTS, ALPHAS, LENGTHS, C, PHI],
    outputs: &[Output { key: "factor", words: "factor of safety", unit: Unit::NONE }],
    run: |g| {
        let (w, a, l) = lists(g)?;
        let (c, phi) = (g.one("c")?, g.one("phi")?);
        let tan_phi = phi.tan().named("tan φ", Unit::NONE);
        let zero = Shown::constant(0.0);
        let shown: Vec<_> = (0..w.len())
            .map(|i| {
                let cos = a[i].cos();
                let (weight, width) = (w[i], l[i] * cos);
                Slice { weight, width, pore: zero, sin: a[i].sin(), cos, tan_phi, c }
            })
            .collect();
        let plain: Vec<_> = shown
            .iter()
            .map(|s| Slice {
                weight: s.weight.value(),
                width: s.width.value(),
                pore: 0.0,
                sin: s.sin.value(),
                cos: s.cos.value(),
                tan_phi: s.tan_phi.value(),
                c: s.c.value(),
            })
            .collect();
        let f = settle(&plain, 0.0)
            .ok_or_else(|| g.no_answer("nothing drives these slices, or one is too steep for the method"))?;
        let (r, d) = pass(&shown, g.sheet().put("F₀", f, Unit::NONE), zero);
        Ok(vec![Found::One((r / d).named("F", Unit::NONE))])
    },
};
