//! How much room does a heap take?

use groundhold_quantity::{Area, Length, Slope, Volume};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

/// A round heap.
#[derive(Debug, Clone, PartialEq)]
pub struct Heap {
    /// What lies in it.
    pub what: String,
    /// Loose volume.
    pub volume: Volume,
    /// Height.
    pub height: Length,
    /// Radius at the ground.
    pub radius: Length,
    /// Ground it covers.
    pub footprint: Area,
    /// Its working.
    pub trace: Trace,
}

/// Height, radius and footprint of a round heap: a cone, or a cone cut off level at the height allowed.
///
/// # Source
/// Geometry of the cone and its frustum.
/// # Symbols
/// V loose volume (m³), t rise over run of the sides, h_m height allowed (m).
/// # Gives
/// Height (m), radius at the ground (m), footprint (m²). Footprint grows with V and falls with t and h_m.
/// # Not for
/// Heaps against a fence, or in rows (a row takes more room).
/// # Errors
/// None of its own.
/// # By hand
/// Reference cases DIG-HEAP-1 (cone) and DIG-HEAP-2 (cut off).
pub(crate) fn heap_of<N: Number>(volume: N, side: N, height_most: N) -> [N; 3] {
    let pi = std::f64::consts::PI;
    let cone_height = (volume * side.squared() * (3.0 / pi)).powf(1.0 / 3.0).named("h_cone", Unit::M);
    let (height, radius) = if cone_height.value() <= height_most.value() {
        (cone_height, (cone_height / side).named("R", Unit::M))
    } else {
        let k = (height_most / side).named("k", Unit::M);
        let rest = volume * (3.0 / pi) / height_most;
        let root = (k.squared() * 9.0 - (k.squared() - rest) * 12.0).sqrt();
        (height_most, ((k * 3.0 + root) / 6.0).named("R", Unit::M))
    };
    [height, radius, (radius.squared() * pi).named("A", Unit::M2)]
}

/// The working of `heap_of`.
pub static HEAP: Working = Working {
    name: "dig/heap",
    title: "How much ground does a round heap of loose soil cover?",
    source: Source { work: "geometry of the cone and its frustum", place: "V = πh(R² + Rr + r²)/3, r = R − h/t" },
    not_for: "heaps against a fence or in rows, which take more room",
    inputs: &[
        Input::new("volume", "V", "loose volume", Unit::M3, Limits::ours(0.0, 1e5)),
        Input::new("side", "t", "rise over run of the sides", Unit::NONE, Limits::ours(0.1, 2.0)).or(1.0 / 1.5),
        Input::new("height_most", "h_m", "height allowed", Unit::M, Limits::ours(0.2, 10.0)).or(1.5),
    ],
    outputs: &[
        Output { key: "height", words: "height", unit: Unit::M },
        Output { key: "radius", words: "radius at the ground", unit: Unit::M },
        Output { key: "footprint", words: "ground covered", unit: Unit::M2 },
    ],
    run: |g| {
        let found = heap_of(g.one("volume")?, g.one("side")?, g.one("height_most")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// A heap of this much loose soil. Sides flatter than 1:10 or steeper than 2:1, and heights outside 0.2 to 10 m, are
/// taken at the nearest end of the working's limits.
pub fn heap(what: &str, volume: Volume, side: Slope, height_most: Length) -> Heap {
    let within = |v: f64, i: usize| v.clamp(HEAP.inputs[i].limits.least, HEAP.inputs[i].limits.most);
    let given = [volume.to_m3().max(0.0), within(side.to_ratio(), 1), within(height_most.to_m(), 2)];
    let [height, radius, area] = heap_of(given[0], given[1], given[2]);
    Heap {
        what: what.into(),
        volume,
        height: Length::m(height),
        radius: Length::m(radius),
        footprint: Area::m2(area),
        trace: Trace::new(&HEAP, given.map(Into::into).to_vec()),
    }
}

/// How far a heap keeps from a crest behind which the ground falls away by `depth`: as far as it is deep, at least
/// 0.6 m.
pub(crate) fn back_from_crest(depth: Length) -> Length {
    Length::m(Number::max(depth.to_m(), 0.6))
}
