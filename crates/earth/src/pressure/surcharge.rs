//! How hard do loads on the ground behind push, when the wall can yield and when it cannot?

use groundhold_working::{Found, Given, Input, Limits, Number, Output, Result, Shown, Source, Unit, Working};

use super::rankine;
use crate::rows::{self, not_below_zero};

/// Depths below the ground at the wall between which a strip is felt: from its near edge down at φ, from its far edge
/// down at 45° + φ/2, both from the ground as it slopes. Units m and radians.
pub fn strip_reach<N: Number>(phi: N, slope: N, from: N, to: N) -> (N, N) {
    let shallow = not_below_zero(phi.tan() - slope.tan());
    let steep = (N::degrees(45.0) + phi / 2.0).tan() - slope.tan();
    (from * shallow, to * steep)
}

/// Pressure of a strip of load on a wall that can yield.
///
/// # Source
/// From memory: DIN 4085:2017, active pressure of strip loads, taken as a rectangle between the lines at φ and at
/// 45° + φ/2 with the force that a wedge at 45° + φ/2 gives.
/// # Symbols
/// | q, K_h | load, horizontal active coefficient | kPa, – | |
/// | φ, β | friction angle, slope of the ground | angle | β ≤ φ |
/// | a, b | near and far edge behind the wall | m | b > a ≥ 0 |
/// # Gives
/// Pressure over the depths of [`strip_reach`]. A strip that begins at the wall and has no end gives K_h q.
/// # Not for
/// A wall that cannot move: use [`strip_elastic`].
/// # Errors
/// None here.
/// # By hand
/// q = 10, φ = 30°, a = 1, b = 2 m: between 0.577 and 3.464 m, 10 · 0.3333 · 1.732/2.887 = 2.0 kPa (case SU-01).
pub fn strip_on_yielding_wall<N: Number>(q: N, k_h: N, phi: N, slope: N, from: N, to: N) -> N {
    let (top, bottom) = strip_reach(phi, slope, from, to);
    let (_, width) = strip_reach(phi, slope, N::constant(0.0), to - from);
    q * k_h * width / (bottom - top)
}

/// How many times more a strip pushes than [`strip_on_yielding_wall`] says, where its weight makes the wedge steeper or
/// flatter.
///
/// # Source
/// Coulomb's wedge (1776) with the strip wholly or partly on it: P(ρ) = (A cot ρ + Q) tan(ρ − φ), at the plane that makes
/// it largest, less the thrust without the strip. Worked out for level ground and a smooth wall by ourselves, compared
/// with the trial wedge in the tests; elsewhere taken over as a ratio.
/// # Symbols
/// | q, a, b, γ, φ, H | load, its edges, unit weight, friction angle, height | kPa, m, kN/m³, angle, m | |
/// | A, Q | wholly on the wedge: ½γH², q(b − a); partly: ½γH² + qH, −qa | kN/m | |
/// # Gives
/// A ratio of 1 or more; 1 where the rectangle already covers the worst wedge.
/// # Not for
/// Several heavy strips side by side, whose wedges help each other: use the trial wedge.
/// # Errors
/// None here.
/// # By hand
/// q = 60, a = 0, b = 0.3, γ = 18, φ = 32°, H = 1.2: ρ = 75.96°, (3.24 + 18) · 0.9645 − 3.98 = 16.5 against 9.98 kN/m:
/// 1.654 (case SU-03).
pub fn worst_wedge_ratio<N: Number>(load: N, from: N, to: N, gamma: N, phi: N, height: N) -> N {
    let one = N::constant(1.0);
    let (top, bottom) = strip_reach(phi, N::constant(0.0), from, to);
    if height.value() <= top.value() {
        return one;
    }
    let own = gamma * height.squared() * 0.5;
    let near = if from.value() > 0.0 { (height / from).atan() } else { N::degrees(90.0) };
    let far = (height / to).atan();
    let whole = (own, load * (to - from));
    let partly = (own + load * height, -(load * from));
    let on_whole = (far.value() > phi.value()).then(|| (whole, within(steepest(whole, phi), N::constant(0.0), far)));
    let on_part = (partly, within(steepest(partly, phi), far, near));
    let push = |((a, q), plane): &((N, N), N)| (*a / plane.tan() + *q) * (*plane - phi).tan();
    let worst = match on_whole {
        Some(w) if push(&w).value() >= push(&on_part).value() => w,
        _ => on_part,
    };
    let ((a, q), plane) = worst;
    let with = push(&((a.named("A", Unit::KN_M), q.named("Q", Unit::KN_M)), plane.named("ρ", Unit::DEG)));
    let more = with.named("P", Unit::KN_M) - own * rankine::ka(phi);
    let rectangle = load * (to - from) * (N::degrees(45.0) - phi / 2.0).tan();
    let felt = if bottom.value() > height.value() { rectangle * (height - top) / (bottom - top) } else { rectangle };
    let ratio = (more / felt).named("n", Unit::NONE);
    // Within rounding of 1 the rectangle is the wedge.
    if ratio.value() < 1.0 + 1e-9 { one } else { ratio }
}

/// The plane on which (A cot ρ + Q) tan(ρ − φ) is largest: (Q (1 + f²) − A f) t² + 2 A f² t + A f = 0 with t = tan ρ and
/// f = tan φ; upright where it only grows, flat where it only falls.
fn steepest<N: Number>((a, q): (N, N), phi: N) -> N {
    let f = phi.tan();
    let lead = q * (f.squared() + 1.0) - a * f;
    if lead.value() >= 0.0 || f.value() == 0.0 {
        return if lead.value() >= 0.0 { N::degrees(90.0) } else { N::degrees(0.0) };
    }
    let af2 = a * f.squared();
    ((af2 + (af2.squared() - lead * a * f).sqrt()) / (-lead)).atan()
}

fn within<N: Number>(plane: N, least: N, most: N) -> N {
    if plane.value() > most.value() {
        most
    } else if plane.value() < least.value() {
        least
    } else {
        plane
    }
}

/// Force and depth of the pressure of a strip on a wall that cannot yield: elastic stress, doubled by the mirror load.
///
/// # Source
/// σ = (2q/π)(β − sin β cos 2α), integrated over the height: Jarquio, J. Geotech. Eng. Div. ASCE 107(GT5) (1981); as in
/// Das, Principles of Foundation Engineering, 7th ed. (2011), Ex. 7.7.
/// # Symbols
/// | q, H | load, height | kPa, m | |
/// | a, b | near and far edge behind the wall | m | 0 ≤ a < b |
/// # Gives
/// (P, z̄, θ₁, θ₂): force, its depth below the ground, angles of the edges at the wall's base.
/// # Not for
/// Walls that can yield: they feel about half.
/// # Errors
/// None here.
/// # By hand
/// q = 40, a = 1, b = 3, H = 6: 45.6 kN/m at 2.04 m (reference case EP-17).
pub fn strip_elastic<N: Number>(q: N, height: N, from: N, to: N) -> (N, N, N, N) {
    let t1 = (from / height).atan().named("θ_1", Unit::DEG);
    let t2 = (to / height).atan().named("θ_2", Unit::DEG);
    let opened = t2 - t1;
    let force = (q * 2.0 / std::f64::consts::PI * height * opened).named("P", Unit::KN_M);
    let near = (from.squared() * (N::degrees(90.0) - t1)).named("Q", Unit::M2);
    let far = (to.squared() * (N::degrees(90.0) - t2)).named("R", Unit::M2);
    let top = height.squared() * opened + far - near - (to - from) * height;
    (force, (top / (height * opened * 2.0)).named("z", Unit::M), t1, t2)
}

/// Pressure of a line load at depths n·H, its force and arm above the base.
///
/// # Source
/// Terzaghi, "Anchored bulkheads", Trans. ASCE 119 (1954); NAVFAC DM-7.02 (1986), chapter 3, Fig. 11.
/// # Symbols
/// | q, H, m | line load, height, distance over height | kN/m, m, – | |
/// # Gives
/// Pressures at the depths asked; (P, arm) by exact integration over 0 ≤ n ≤ 1.
/// # Not for
/// Walls that yield freely, where it is on the cautious side.
/// # Errors
/// None here.
/// # By hand
/// Reference case EP-18.
pub fn line_load<N: Number>(q: N, height: N, m: N, depths: &[N]) -> (Vec<N>, N, N) {
    let near = m.value() <= 0.4;
    let a2 = if near { N::constant(0.16) } else { m.squared() };
    let k = if near { N::constant(0.203) } else { m.squared() * (4.0 / std::f64::consts::PI) };
    let at = |n: &N| (q / height * k * *n / (a2 + n.squared()).squared()).named("σ", Unit::KPA);
    let pressures = depths.iter().map(at).collect();
    let one = N::constant(1.0);
    let force = (q * k / 2.0 * (one / a2 - one / (a2 + 1.0))).named("P", Unit::KN_M);
    let a = a2.sqrt();
    let first = (q * k * ((one / a).atan() / (a * 2.0) - one / ((a2 + 1.0) * 2.0))).named("S", Unit::KN_M);
    (pressures, force, (height * (one - first / force)).named("a", Unit::M))
}

/// Pressure of a point load at depths n·H, straight in front of it. Source and limits as [`line_load`].
pub fn point_load<N: Number>(q: N, height: N, m: N, depths: &[N]) -> Vec<N> {
    let near = m.value() <= 0.4;
    let at = |n: &N| {
        let (k, a2) = if near {
            (n.squared() * 0.28, N::constant(0.16))
        } else {
            (m.squared() * n.squared() * 1.77, m.squared())
        };
        (q / height.squared() * k / (a2 + n.squared()).cubed()).named("σ", Unit::KPA)
    };
    depths.iter().map(at).collect()
}

const LOAD_FROM: Input = Input::new("from", "a", "near edge behind the wall", Unit::M, Limits::ours(0.0, 100.0));
const LOAD_TO: Input = Input::new("to", "b", "far edge behind the wall", Unit::M, Limits::ours(0.0, 10_000.0));
const LOAD: Input = Input::new("q", "q", "load on the ground", Unit::KPA, Limits::ours(0.0, 5000.0));
const DISTANCE: Input = Input::new("x", "x", "distance behind the wall", Unit::M, Limits::ours(0.01, 100.0));
const DEPTHS: Input =
    Input::new("n", "n", "depths asked, as shares of the height", Unit::NONE, Limits::author(0.0, 1.0)).or(0.5);

fn edges<'s>(g: &Given<'s>) -> Result<(Shown<'s>, Shown<'s>)> {
    let (from, to) = (g.one("from")?, g.one("to")?);
    if to.value() <= from.value() {
        return Err(g.no_answer(format!(
            "the far edge `to` should lie behind the near edge `from`, found {} m and {} m",
            to.value(),
            from.value()
        )));
    }
    Ok((from, to))
}

/// Uniform load on all the ground behind.
pub static UNIFORM: Working = Working {
    name: "surcharge/uniform",
    title: "How hard does a load on all the ground behind push?",
    source: Source { work: "Rankine, Phil. Trans. R. Soc. 147, 1857", place: "load taken as more depth of soil" },
    not_for: "loads with an edge (strip), rough walls, sloping ground",
    inputs: &[rows::HEIGHT, rows::PHI, LOAD],
    outputs: &[
        Output { key: "ka", words: "active coefficient", unit: Unit::NONE },
        Output { key: "p", words: "force", unit: Unit::KN_M },
        Output { key: "arm", words: "its height above the base", unit: Unit::M },
    ],
    run: |g| {
        let (h, ka, q) = (g.one("height")?, rankine::ka(g.one("phi")?), g.one("q")?);
        Ok([ka, (ka * q * h).named("P", Unit::KN_M), (h / 2.0).named("a", Unit::M)].map(Found::One).into())
    },
};

/// Strip of load, wall that yields.
pub static STRIP_YIELDING: Working = Working {
    name: "surcharge/strip-yielding",
    title: "How hard does a strip of load push on a wall that can yield, and between which depths?",
    source: Source {
        work: "from memory: DIN 4085:2017, Baugrund: Berechnung des Erddrucks",
        place: "active pressure of strip loads, as a rectangle",
    },
    not_for: "walls that cannot move",
    inputs: &[LOAD, rows::PHI, LOAD_FROM, LOAD_TO, rows::GAMMA, rows::HEIGHT],
    outputs: &[
        Output { key: "top", words: "depth where it begins", unit: Unit::M },
        Output { key: "bottom", words: "depth where it ends", unit: Unit::M },
        Output { key: "ratio", words: "times more, where its weight moves the wedge", unit: Unit::NONE },
        Output { key: "p", words: "pressure between", unit: Unit::KPA },
    ],
    run: |g| {
        let (from, to) = edges(g)?;
        let (q, phi) = (g.one("q")?, g.one("phi")?);
        let level = Shown::constant(0.0);
        let (top, bottom) = strip_reach(phi, level, from, to);
        let (top, bottom) = (top.named("z_1", Unit::M), bottom.named("z_2", Unit::M));
        let ratio = worst_wedge_ratio(q, from, to, g.one("gamma")?, phi, g.one("height")?);
        let p = (strip_on_yielding_wall(q, rankine::ka(phi), phi, level, from, to) * ratio).named("σ", Unit::KPA);
        Ok([top, bottom, ratio, p].map(Found::One).into())
    },
};

/// Strip of load, wall that cannot yield.
pub static STRIP: Working = Working {
    name: "surcharge/strip",
    title: "How hard does a strip of load push on a wall that cannot yield?",
    source: Source {
        work: "Jarquio, Total lateral surcharge pressure due to strip load, J. Geotech. Eng. Div. ASCE 107(GT5), 1981",
        place: "as in Das, Principles of Foundation Engineering, 7th ed., 2011, Ex. 7.7",
    },
    not_for: "walls that can yield: they feel about half",
    inputs: &[LOAD, rows::HEIGHT, LOAD_FROM, LOAD_TO],
    outputs: &[
        Output { key: "p", words: "force", unit: Unit::KN_M },
        Output { key: "z", words: "its depth below the ground", unit: Unit::M },
        Output { key: "arm", words: "its height above the base", unit: Unit::M },
        Output { key: "theta1", words: "angle of the near edge at the base", unit: Unit::DEG },
        Output { key: "theta2", words: "angle of the far edge at the base", unit: Unit::DEG },
    ],
    run: |g| {
        let (from, to) = edges(g)?;
        let h = g.one("height")?;
        let (p, z, t1, t2) = strip_elastic(g.one("q")?, h, from, to);
        Ok([p, z, (h - z).named("a", Unit::M), t1, t2].map(Found::One).into())
    },
};

/// Line load.
pub static LINE: Working = Working {
    name: "surcharge/line",
    title: "How hard does a line load behind the wall push?",
    source: Source {
        work: "Terzaghi, Anchored bulkheads, Trans. ASCE 119, 1954",
        place: "NAVFAC DM-7.02, 1986, chapter 3, Fig. 11; the form up to m = 0.4 from memory",
    },
    not_for: "none known; on the cautious side for walls that yield freely",
    inputs: &[
        Input::new("q", "q", "load per metre of line", Unit::KN_M, Limits::ours(0.0, 5000.0)),
        rows::HEIGHT,
        DISTANCE,
        DEPTHS,
    ],
    outputs: &[
        Output { key: "sigma", words: "pressure at the depths asked", unit: Unit::KPA },
        Output { key: "p", words: "force", unit: Unit::KN_M },
        Output { key: "arm", words: "its height above the base", unit: Unit::M },
    ],
    run: |g| {
        let h = g.one("height")?;
        let m = (g.one("x")? / h).named("m", Unit::NONE);
        let (sigma, p, arm) = line_load(g.one("q")?, h, m, &g.many("n")?);
        Ok(vec![Found::Many(sigma), Found::One(p), Found::One(arm)])
    },
};

/// Point load.
pub static POINT: Working = Working {
    name: "surcharge/point",
    title: "How hard does a point load behind the wall press straight in front of it?",
    source: Source {
        work: "Terzaghi, Anchored bulkheads, Trans. ASCE 119, 1954",
        place: "NAVFAC DM-7.02, 1986, chapter 3, Fig. 11, from memory",
    },
    not_for: "pressure beside the load: multiply by cos²(1.1 θ)",
    inputs: &[Input::new("q", "Q", "load", Unit::KN, Limits::ours(0.0, 5000.0)), rows::HEIGHT, DISTANCE, DEPTHS],
    outputs: &[Output { key: "sigma", words: "pressure at the depths asked", unit: Unit::KPA }],
    run: |g| {
        let h = g.one("height")?;
        let m = (g.one("x")? / h).named("m", Unit::NONE);
        Ok(vec![Found::Many(point_load(g.one("q")?, h, m, &g.many("n")?))])
    },
};

/// What a blocked drain adds.
pub static BLOCKED_DRAIN: Working = Working {
    name: "earth-pressure/blocked-drain",
    title: "How hard does the backfill push when the drain works, and when water stands to the top?",
    source: Source {
        work: "effective stress after Terzaghi with hydrostatic water; Rankine, 1857",
        place: "common to textbooks",
    },
    not_for: "water that stands part way (`earth-pressure/thrust-rankine`), rough walls",
    inputs: &[rows::HEIGHT, rows::GAMMA, rows::GAMMA_SAT, rows::PHI, rows::GAMMA_WATER],
    outputs: &[
        Output { key: "drained", words: "force with the drain working", unit: Unit::KN_M },
        Output { key: "flooded", words: "force with water to the top", unit: Unit::KN_M },
        Output { key: "ratio", words: "how many times more", unit: Unit::NONE },
    ],
    run: |g| {
        let (h, gamma, sat) = (g.one("height")?, g.one("gamma")?, g.one("gamma_sat")?);
        let (k, w) = (rankine::ka(g.one("phi")?), g.one("gamma_w")?);
        if sat.value() <= w.value() {
            return Err(g.no_answer("the saturated unit weight should be more than that of water"));
        }
        let drained = rankine::triangle(k, gamma, h, "P_drained");
        let flooded = (k * (sat - w) * h.squared() * 0.5 + w * h.squared() * 0.5).named("P_flooded", Unit::KN_M);
        Ok([drained, flooded, (flooded / drained).named("ratio", Unit::NONE)].map(Found::One).into())
    },
};
