//! How deep and how fast does water run in an open channel, and does the lining stand it?

use groundhold_quantity::{Flow, Length, Pressure, Slope};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

const MANNING: &str = "Manning, Trans. Inst. Civ. Eng. Ireland 20 (1891); Chow, Open-Channel Hydraulics (1959)";
const HEC15: &str = "FHWA HEC-15, Design of Roadside Channels with Flexible Linings";
const B: Input = Input::new("bed", "b", "width of the bed; nothing for a vee", Unit::M, Limits::ours(0.0, 50.0));
const Z: Input = Input::new("side", "z", "run of the sides for one up", Unit::NONE, Limits::ours(0.0, 20.0));
const S: Input = Input::new("slope", "S", "fall, rise over run", Unit::NONE, Limits::ours(1e-5, 1.0));
const ROUGH: Input = Input::new("n", "n", "Manning's n", Unit::NONE, Limits::ours(0.005, 0.5));
const PASCAL: Unit = Unit("Pa");

/// Flow in a channel with a level bed and sloping sides, filled to a depth.
///
/// # Source
/// Manning (1891); Chow (1959), ch. 5 and 6.
/// # Symbols
/// b width of the bed (m), z run of the sides for one up, y depth (m), S fall, n Manning's n; g = 9.81 m/s².
/// # Gives
/// A = (b + zy)y (m²), P = b + 2y√(1+z²) (m), R = A/P (m), v = R^(2/3)·√S/n (m/s), Q = v·A (l/s), T = b + 2zy (m),
/// Fr = v/√(gA/T). Q grows with y and S, falls with n.
/// # Not for
/// Flow that backs up from below, or that speeds up over a drop.
/// # Errors
/// A channel with neither bed nor side slope holds nothing.
/// # By hand
/// Reference case HY-CH-1 (Chow, example 6-2).
pub(crate) fn trapezoid<N: Number>(bed: N, side: N, depth: N, slope: N, n: N) -> [N; 7] {
    let area = ((bed + side * depth) * depth).named("A", Unit::M2);
    let wetted = (bed + depth * 2.0 * (side.squared() + 1.0).sqrt()).named("P", Unit::M);
    let radius = (area / wetted).named("R", Unit::M);
    let velocity = (radius.powf(2.0 / 3.0) * slope.sqrt() / n).named("v", Unit::M_S);
    let flow = (velocity * area * 1000.0).named("Q", Unit::L_S);
    let top = (bed + side * depth * 2.0).named("T", Unit::M);
    let froude = (velocity / (area / top * 9.81).sqrt()).named("Fr", Unit::NONE);
    [area, wetted, radius, velocity, flow, top, froude]
}

/// The working of `trapezoid`.
pub static CHANNEL: Working = Working {
    name: "channel/trapezoid",
    title: "How much does an open channel carry at a depth?",
    source: Source { work: MANNING, place: "ch. 5 and 6" },
    not_for: "flow that backs up from below or speeds up over a drop",
    inputs: &[B, Z, Input::new("depth", "y", "depth of water", Unit::M, Limits::ours(1e-4, 20.0)), S, ROUGH],
    outputs: &[
        Output { key: "area", words: "wetted area", unit: Unit::M2 },
        Output { key: "wetted", words: "wetted perimeter", unit: Unit::M },
        Output { key: "radius", words: "hydraulic radius", unit: Unit::M },
        Output { key: "velocity", words: "velocity", unit: Unit::M_S },
        Output { key: "flow", words: "flow", unit: Unit::L_S },
        Output { key: "top", words: "width of the water", unit: Unit::M },
        Output { key: "froude", words: "Froude number", unit: Unit::NONE },
    ],
    run: |g| {
        let (bed, side) = (g.one("bed")?, g.one("side")?);
        if bed.value() + side.value() <= 0.0 {
            return Err(g.no_answer("a channel needs a bed or sloping sides"));
        }
        let found = trapezoid(bed, side, g.one("depth")?, g.one("slope")?, g.one("n")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// Depth at which a channel carries a flow evenly.
///
/// # Source
/// Manning (1891), solved for the depth by halving; Chow (1959), ch. 6.
/// # Symbols
/// Q flow (l/s), b width of the bed (m), z run of the sides for one up, S fall, n Manning's n.
/// # Gives
/// The normal depth y (m), then area to Froude number as in `channel/trapezoid`.
/// # Not for
/// Flow that backs up from below.
/// # Errors
/// A flow that needs more than 20 m of depth.
/// # By hand
/// Reference case HY-CH-1: 400 cfs, b 20 ft, z 2, S 0.0016, n 0.025: 3.36 ft.
pub(crate) fn normal_depth(flow: f64, bed: f64, side: f64, slope: f64, n: f64) -> Option<f64> {
    let carries = |y: f64| trapezoid(bed, side, y, slope, n)[4];
    let (mut low, mut high) = (1e-4, 20.0);
    if bed + side <= 0.0 || flow.is_nan() || carries(high) < flow {
        return None;
    }
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if carries(middle) < flow { low = middle } else { high = middle }
    }
    Some(high)
}

/// The working of `normal_depth`.
pub static CHANNEL_DEPTH: Working = Working {
    name: "channel/depth",
    title: "How deep does a flow run in an open channel?",
    source: Source { work: MANNING, place: "ch. 6, solved by halving" },
    not_for: "flow that backs up from below",
    inputs: &[Input::new("flow", "Q", "flow", Unit::L_S, Limits::ours(0.0, 1e6)), B, Z, S, ROUGH],
    outputs: &[
        Output { key: "depth", words: "normal depth", unit: Unit::M },
        Output { key: "velocity", words: "velocity", unit: Unit::M_S },
        Output { key: "top", words: "width of the water", unit: Unit::M },
        Output { key: "froude", words: "Froude number", unit: Unit::NONE },
    ],
    run: |g| {
        let (b, z, s, n) = (g.one("bed")?, g.one("side")?, g.one("slope")?, g.one("n")?);
        let found = normal_depth(g.one("flow")?.value(), b.value(), z.value(), s.value(), n.value());
        let y = found.ok_or_else(|| g.no_answer("no depth up to 20 m carries that flow"))?;
        g.sheet().remark(format!("Solved by halving until Q is met: y = {} m.", groundhold_quantity::trim(y, 4)));
        let y = g.sheet().put("y", y, Unit::M);
        let [_, _, _, velocity, _, top, froude] = trapezoid(b, z, y, s, n);
        Ok([y, velocity, top, froude].into_iter().map(Found::One).collect())
    },
};

/// Greatest shear of water on the bed of a channel.
///
/// # Source
/// FHWA HEC-15, 3rd ed. (2005), eq. 2.4: τ_d = γ·d·S.
/// # Symbols
/// d depth of water (m), S fall; γ = 9810 N/m³.
/// # Gives
/// τ_d in Pa.
/// # Not for
/// Bends, where it is up to twice as much.
/// # Errors
/// None of its own.
/// # By hand
/// 0.25 m at 0.01: 24.5 Pa (reference case HY-CH-3).
pub(crate) fn shear<N: Number>(depth: N, slope: N) -> N {
    (depth * slope * 9810.0).named("τ_d", PASCAL)
}

/// The working of `shear`.
pub static CHANNEL_SHEAR: Working = Working {
    name: "channel/shear",
    title: "How hard does water drag at the bed of a channel?",
    source: Source { work: HEC15, place: "3rd ed. (2005), eq. 2.4" },
    not_for: "bends, where it is up to twice as much",
    inputs: &[Input::new("depth", "d", "depth of water", Unit::M, Limits::ours(0.0, 20.0)), S],
    outputs: &[Output { key: "shear", words: "greatest shear on the bed", unit: PASCAL }],
    run: |g| Ok(vec![Found::One(shear(g.one("depth")?, g.one("slope")?))]),
};

/// A lining and what it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lining {
    /// What it is called.
    pub name: &'static str,
    /// Manning's n.
    pub n: f64,
    /// Shear that it stands.
    pub shear: Pressure,
    /// Velocity that it stands, m/s.
    pub velocity_m_per_s: f64,
    /// Where the figures are from.
    pub source: Source,
}

const fn lining(name: &'static str, n: f64, shear: f64, velocity: f64, place: &'static str) -> Lining {
    Lining { name, n, shear: Pressure::pa(shear), velocity_m_per_s: velocity, source: Source { work: HEC15, place } }
}

/// Linings of small channels, the weakest first.
pub static LININGS: &[Lining] = &[
    lining(
        "bare soil",
        0.020,
        1.8,
        0.6,
        "3rd ed. (2005), Table 2.3, cohesive soil at the low end; n and velocity from memory",
    ),
    lining(
        "grass, short",
        0.035,
        28.7,
        1.2,
        "1988 ed., Table 2, class D; n and velocity (easily eroded soil) from memory",
    ),
    lining(
        "grass, long",
        0.050,
        47.9,
        1.2,
        "1988 ed., Table 2, class C; n and velocity (easily eroded soil) from memory",
    ),
    lining("gravel 25 mm", 0.033, 19.0, 1.2, "3rd ed. (2005), Table 2.3, gravel mulch; n and velocity from memory"),
    lining("gravel 50 mm", 0.041, 38.0, 1.5, "3rd ed. (2005), Table 2.3, gravel mulch; n and velocity from memory"),
    lining("stone 150 mm", 0.069, 113.0, 3.0, "3rd ed. (2005), Table 2.3, riprap; n and velocity from memory"),
    lining("concrete", 0.013, 1000.0, 6.0, "rigid; n 0.013, limits ours"),
];

/// The lining whose name holds every word of `described`; of several the weakest. `None` where none does.
pub fn channel_lining(described: &str) -> Option<&'static Lining> {
    let lower = described.to_lowercase();
    let words: Vec<&str> = lower.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()).collect();
    let fits = |l: &&Lining| words.iter().all(|w| l.name.contains(w));
    if words.is_empty() { None } else { LININGS.iter().find(fits) }
}

/// Water in a channel.
#[derive(Debug, Clone, PartialEq)]
pub struct Channelled {
    /// Depth of water.
    pub depth: Length,
    /// Width of the water.
    pub top: Length,
    /// Velocity, m/s.
    pub velocity_m_per_s: f64,
    /// Shear on the bed.
    pub shear: Pressure,
    /// The larger of shear and velocity over what the lining stands.
    pub utilisation: f64,
    /// Workings: depth, shear.
    pub traces: Vec<Trace>,
}

/// How a flow runs in a channel; `None` where no depth carries it.
pub fn channelled(flow: Flow, bed: Length, side: f64, fall: Slope, lining: &Lining) -> Option<Channelled> {
    let (q, b, s) = (flow.to_l_per_s(), bed.to_m(), fall.to_ratio());
    let y = normal_depth(q, b, side, s, lining.n)?;
    let [_, _, _, velocity, _, top, _] = trapezoid(b, side, y, s, lining.n);
    let drag = shear(y, s);
    Some(Channelled {
        depth: Length::m(y),
        top: Length::m(top),
        velocity_m_per_s: velocity,
        shear: Pressure::pa(drag),
        utilisation: Number::max(drag / lining.shear.to_pa(), velocity / lining.velocity_m_per_s),
        traces: vec![
            Trace::new(&CHANNEL_DEPTH, [q, b, side, s, lining.n].map(Into::into).to_vec()),
            Trace::new(&CHANNEL_SHEAR, vec![y.into(), s.into()]),
        ],
    })
}

/// Ground taken by a channel of this depth in all, m² of section.
pub(crate) fn section_area(bed: f64, side: f64, depth: f64) -> f64 {
    (bed + side * depth) * depth
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn the_depth_found_carries_the_flow_and_a_millimetre_less_does_not(
            q in 0.2f64..300.0, b in 0.0f64..2.0, z in 0.5f64..4.0, s in 0.002f64..0.1, n in 0.012f64..0.08,
        ) {
            let y = normal_depth(q, b, z, s, n).unwrap();
            prop_assert!((trapezoid(b, z, y, s, n)[4] - q).abs() <= 1e-6 * q.max(1.0));
            prop_assert!(y < 0.002 || trapezoid(b, z, y - 0.001, s, n)[4] < q);
        }
    }

    #[test]
    fn a_lining_is_found_by_its_words_and_an_unknown_one_is_not() {
        assert_eq!(channel_lining("grass").unwrap().name, "grass, short");
        assert_eq!(channel_lining("Gravel 50").unwrap().name, "gravel 50 mm");
        assert!(channel_lining("moss").is_none() && channel_lining("").is_none());
    }

    #[test]
    fn a_steeper_channel_drags_harder_and_may_ask_for_a_stronger_lining() {
        let at = |s: f64| channelled(Flow::l_per_s(20.0), Length::m(0.3), 2.0, Slope::ratio(s), &LININGS[1]).unwrap();
        assert!(at(0.02).shear < at(0.1).shear && at(0.02).depth > at(0.1).depth);
        assert!(
            at(0.01).utilisation < 1.0 && at(0.3).utilisation > 1.0,
            "{} {}",
            at(0.01).utilisation,
            at(0.3).utilisation
        );
    }
}
