//! How much does a pipe carry, how deep does the water run in it, and how wide must it be?

use groundhold_quantity::{Flow, Length, Slope};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

/// Material of a pipe.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PipeMaterial {
    /// Corrugated plastic drain pipe, slotted.
    CorrugatedPlastic,
    /// Smooth plastic, drilled or slotted.
    SmoothPlastic,
    /// Clay drain tiles.
    Clay,
    /// Concrete.
    Concrete,
}

/// Manning's n of a material.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Roughness {
    /// Which.
    pub material: PipeMaterial,
    /// In words.
    pub words: &'static str,
    /// Manning's n.
    pub n: f64,
    /// Where it is from.
    pub source: Source,
}

/// Manning's n by material.
pub static ROUGHNESS: &[Roughness] = &[
    Roughness {
        material: PipeMaterial::CorrugatedPlastic,
        words: "slotted corrugated plastic",
        n: 0.015,
        source: Source {
            work: "USDA-NRCS, Engineering Field Handbook (NEH 650) ch. 14 (2001)",
            place: "corrugated plastic tubing of 3 to 8 in, from memory",
        },
    },
    Roughness {
        material: PipeMaterial::SmoothPlastic,
        words: "smooth plastic",
        n: 0.012,
        source: Source {
            work: "Manning's n of a pipe that is no longer new",
            place: "common practice, no source; new pipe 0.009 to 0.011",
        },
    },
    Roughness {
        material: PipeMaterial::Clay,
        words: "clay tile",
        n: 0.013,
        source: Source { work: "Chow, Open-Channel Hydraulics (1959)", place: "Table 5-6, from memory" },
    },
    Roughness {
        material: PipeMaterial::Concrete,
        words: "concrete",
        n: 0.013,
        source: Source { work: "Chow, Open-Channel Hydraulics (1959)", place: "Table 5-6, from memory" },
    },
];

impl PipeMaterial {
    /// Its row.
    pub fn roughness(self) -> &'static Roughness {
        let at = match self {
            PipeMaterial::CorrugatedPlastic => 0,
            PipeMaterial::SmoothPlastic => 1,
            PipeMaterial::Clay => 2,
            PipeMaterial::Concrete => 3,
        };
        &ROUGHNESS[at]
    }
}

const MANNING: &str = "Manning, Trans. Inst. Civ. Eng. Ireland 20 (1891); Chow, Open-Channel Hydraulics (1959)";
const D: Input = Input::new("diameter", "D", "inside diameter", Unit::M, Limits::ours(0.01, 5.0));
const S: Input = Input::new("slope", "S", "fall, rise over run", Unit::NONE, Limits::ours(1e-6, 10.0));
const ROUGH: Input = Input::new("n", "n", "Manning's n", Unit::NONE, Limits::ours(0.005, 0.2));
const Q: Input = Input::new("flow", "Q", "flow", Unit::L_S, Limits::ours(0.0, 1e6));

/// Flow in a full pipe under no pressure.
///
/// # Source
/// Manning (1891); Chow (1959), ch. 5.
/// # Symbols
/// D inside diameter (m), S fall (rise over run), n Manning's n.
/// # Gives
/// Velocity v = (D/4)^(2/3)·√S/n (m/s) and flow Q = v·πD²/4 (l/s).
/// # Not for
/// Pipes under pressure; pipes part full: use `pipe/part-full`.
/// # Errors
/// None of its own.
/// # By hand
/// D 0.1 m, S 0.01, n 0.012: 5.596 l/s (reference cases HY-T1-*).
pub(crate) fn full<N: Number>(diameter: N, slope: N, n: N) -> [N; 2] {
    let radius = (diameter / 4.0).named("R", Unit::M);
    let velocity = (radius.powf(2.0 / 3.0) * slope.sqrt() / n).named("v", Unit::M_S);
    let area = (diameter.squared() * (std::f64::consts::PI / 4.0)).named("A", Unit::M2);
    [velocity, (velocity * area * 1000.0).named("Q", Unit::L_S)]
}

/// The working of `full`.
pub static CAPACITY: Working = Working {
    name: "pipe/full",
    title: "How much does a pipe carry when it runs full without pressure?",
    source: Source { work: MANNING, place: "ch. 5" },
    not_for: "pipes under pressure",
    inputs: &[D, S, ROUGH],
    outputs: &[
        Output { key: "velocity", words: "velocity", unit: Unit::M_S },
        Output { key: "flow", words: "flow", unit: Unit::L_S },
    ],
    run: |g| {
        let [v, q] = full(g.one("diameter")?, g.one("slope")?, g.one("n")?);
        Ok(vec![Found::One(v), Found::One(q)])
    },
};

/// Flow in a pipe that is filled to a share of its diameter.
///
/// # Source
/// Manning (1891); Chow (1959), ch. 6 (circular section).
/// # Symbols
/// D inside diameter (m), S fall, n Manning's n, y depth over diameter; θ angle at the centre that the water surface
/// spans (rad).
/// # Gives
/// A = D²(θ − sin θ)/8 (m²), R = A/(θD/2) (m), v (m/s), Q (l/s). Q is greatest at y = 0.938, 7.6 % above full.
/// # Not for
/// Pipes under pressure.
/// # Errors
/// None of its own.
/// # By hand
/// Half full: A and Q are half of full, R and v the same.
pub(crate) fn part_full<N: Number>(diameter: N, slope: N, n: N, depth: N) -> [N; 4] {
    let theta = ((-(depth * 2.0) + 1.0).acos() * 2.0).named("θ", Unit::DEG);
    let area = (diameter.squared() / 8.0 * (theta - theta.sin())).named("A", Unit::M2);
    let radius = (area / (theta * diameter / 2.0)).named("R", Unit::M);
    let velocity = (radius.powf(2.0 / 3.0) * slope.sqrt() / n).named("v", Unit::M_S);
    [area, radius, velocity, (velocity * area * 1000.0).named("Q", Unit::L_S)]
}

/// The working of `part_full`.
pub static PART_FULL: Working = Working {
    name: "pipe/part-full",
    title: "How much does a pipe carry when it is filled to a share of its diameter?",
    source: Source { work: MANNING, place: "ch. 6, circular section" },
    not_for: "pipes under pressure",
    inputs: &[
        D,
        S,
        ROUGH,
        Input::new("depth", "y", "depth of water over diameter", Unit::NONE, Limits::author(1e-6, 1.0)),
    ],
    outputs: &[
        Output { key: "area", words: "wetted area", unit: Unit::M2 },
        Output { key: "radius", words: "hydraulic radius", unit: Unit::M },
        Output { key: "velocity", words: "velocity", unit: Unit::M_S },
        Output { key: "flow", words: "flow", unit: Unit::L_S },
    ],
    run: |g| {
        let found = part_full(g.one("diameter")?, g.one("slope")?, g.one("n")?, g.one("depth")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// Fall that a flow needs in a pipe filled to a share of its diameter.
///
/// # Source
/// Manning (1891), turned round.
/// # Symbols
/// Q flow (l/s), D inside diameter (m), n Manning's n, y depth over diameter.
/// # Gives
/// A (m²), R (m), S = (Q·n/(A·R^(2/3)))².
/// # Not for
/// Pipes under pressure.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case HY-01: 300 l/s half full in 1.5 m, n 0.02: S = 0.0001705.
pub(crate) fn slope_needed<N: Number>(flow: N, diameter: N, n: N, depth: N) -> [N; 3] {
    let theta = ((-(depth * 2.0) + 1.0).acos() * 2.0).named("θ", Unit::DEG);
    let area = (diameter.squared() / 8.0 * (theta - theta.sin())).named("A", Unit::M2);
    let radius = (area / (theta * diameter / 2.0)).named("R", Unit::M);
    let slope = (flow / 1000.0 * n / (area * radius.powf(2.0 / 3.0))).squared().named("S", Unit::NONE);
    [area, radius, slope]
}

/// The working of `slope_needed`.
pub static SLOPE_NEEDED: Working = Working {
    name: "pipe/slope",
    title: "Which fall does a flow need in a pipe filled to a share of its diameter?",
    source: Source { work: MANNING, place: "ch. 6, turned round" },
    not_for: "pipes under pressure",
    inputs: &[
        Q,
        D,
        ROUGH,
        Input::new("depth", "y", "depth of water over diameter", Unit::NONE, Limits::author(1e-6, 1.0)).or(1.0),
    ],
    outputs: &[
        Output { key: "area", words: "wetted area", unit: Unit::M2 },
        Output { key: "radius", words: "hydraulic radius", unit: Unit::M },
        Output { key: "slope", words: "fall, rise over run", unit: Unit::NONE },
    ],
    run: |g| {
        let found = slope_needed(g.one("flow")?, g.one("diameter")?, g.one("n")?, g.one("depth")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// Inside diameter at which a pipe just runs full.
///
/// # Source
/// Manning (1891), turned round.
/// # Symbols
/// Q flow (l/s), S fall, n Manning's n.
/// # Gives
/// D = (4^(5/3)·Q·n/(π·√S))^(3/8), m. Grows with Q and n, falls as S grows.
/// # Not for
/// Pipes under pressure; sediment: the next size up is cheap.
/// # Errors
/// None of its own.
/// # By hand
/// 5.596 l/s at 0.01 with n 0.012: 0.100 m (reference case HY-T1-back).
pub(crate) fn diameter<N: Number>(flow: N, slope: N, n: N) -> N {
    let four = groundhold_quantity::math::powf(4.0, 5.0 / 3.0);
    let inside = flow / 1000.0 * n * four / (slope.sqrt() * std::f64::consts::PI);
    inside.powf(3.0 / 8.0).named("D", Unit::M)
}

/// The working of `diameter`.
pub static DIAMETER: Working = Working {
    name: "pipe/diameter",
    title: "Which inside diameter just carries a flow at a fall?",
    source: Source { work: MANNING, place: "ch. 6, turned round" },
    not_for: "pipes under pressure",
    inputs: &[Q, S, ROUGH],
    outputs: &[Output { key: "diameter", words: "inside diameter", unit: Unit::M }],
    run: |g| Ok(vec![Found::One(diameter(g.one("flow")?, g.one("slope")?, g.one("n")?))]),
};

/// Flow of a full pipe and its working. A level or rising pipe carries nothing.
pub fn capacity(diameter: Length, fall: Slope, material: PipeMaterial) -> (Flow, Trace) {
    let given = [diameter.to_m(), fall.to_ratio(), material.roughness().n];
    let trace = Trace::new(&CAPACITY, given.map(Into::into).to_vec());
    let carries = given[0] > 0.0 && given[1] > 0.0;
    let [_, flow] = if carries { full(given[0], given[1], given[2]) } else { [0.0; 2] };
    (Flow::l_per_s(flow), trace)
}

/// Inside diameter that just carries the flow, and its working.
pub fn diameter_needed(flow: Flow, fall: Slope, material: PipeMaterial) -> (Length, Trace) {
    let given = [flow.to_l_per_s(), fall.to_ratio(), material.roughness().n];
    (Length::m(diameter(given[0], given[1], given[2])), Trace::new(&DIAMETER, given.map(Into::into).to_vec()))
}

/// Depth over diameter at which the pipe carries the flow, with the velocity there (m/s) and the working; `None`
/// where even a full pipe does not carry it. Found by halving between empty and full, where the flow rises with depth
/// up to 0.938.
pub fn depth_of_flow(flow: Flow, diameter: Length, fall: Slope, material: PipeMaterial) -> Option<(f64, f64, Trace)> {
    let (d, s, n, q) = (diameter.to_m(), fall.to_ratio(), material.roughness().n, flow.to_l_per_s());
    if !(d > 0.0 && s > 0.0 && q >= 0.0) || q > full(d, s, n)[1] {
        return None;
    }
    let (mut low, mut high) = (1e-6, FULLEST);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if part_full(d, s, n, middle)[3] < q { low = middle } else { high = middle }
    }
    let velocity = if q > 0.0 { part_full(d, s, n, high)[2] } else { 0.0 };
    Some((high, velocity, Trace::new(&PART_FULL, [d, s, n, high].map(Into::into).to_vec())))
}

/// Depth over diameter at which a part-full pipe carries most.
const FULLEST: f64 = 0.938;
