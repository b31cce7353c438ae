//! What is a flight built of: timber boxes, stone steps or concrete, and how much of it?

use groundhold_quantity::{Area, Length, Volume};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working, check_range};

use crate::Flight;

/// How a flight is built.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FlightBuild {
    /// A board before each riser, held by pegs, with stone behind it.
    Timber {
        /// Thickness of the riser boards.
        board: Length,
        /// Pegs before each board.
        pegs: usize,
        /// Length of a peg in the ground.
        peg: Length,
        /// Thickness of stone under each tread.
        bed: Length,
    },
    /// Blocks laid dry or in mortar, each as high as a riser.
    Stone {
        /// Depth of a block from front to back.
        depth: Length,
        /// How far a block lies under the one above it.
        overlap: Length,
        /// Thickness of the bed under them.
        bed: Length,
    },
    /// Poured in place on stone: a waist along the pitch, with the steps on it.
    Concrete {
        /// Thickness of the waist, square to the pitch.
        waist: Length,
        /// Thickness of stone under the waist.
        bed: Length,
    },
}

/// What a flight takes.
#[derive(Debug, Clone, PartialEq)]
pub struct FlightTakeOff {
    /// Riser boards or blocks: how many, and how long each.
    pub pieces: (usize, Length),
    /// Height of a piece: that of a riser.
    pub piece_height: Length,
    /// Depth of a piece from front to back.
    pub piece_depth: Length,
    /// Pegs: how many, and how long each.
    pub pegs: (usize, Length),
    /// Surface of the treads, landings included.
    pub treads: Area,
    /// Concrete; nothing where none is poured.
    pub concrete: Volume,
    /// Boards against which it is poured: risers and both sides.
    pub formwork: Area,
    /// Stone under it, placed.
    pub bed: Volume,
    /// How the concrete was worked out, where there is any.
    pub trace: Option<Trace>,
}

/// What a flight takes when it is built so.
///
/// # Errors
/// A measure outside its limits.
pub fn take_off(f: &Flight, build: FlightBuild) -> Result<FlightTakeOff> {
    let treads: Area = f.treads.iter().map(|t| Area::m2(crate::outline::area(&t.ring))).sum();
    let plain = FlightTakeOff {
        pieces: (f.risers, f.width),
        piece_height: f.riser,
        piece_depth: Length::ZERO,
        pegs: (0, Length::ZERO),
        treads,
        concrete: Volume::ZERO,
        formwork: Area::ZERO,
        bed: Volume::ZERO,
        trace: None,
    };
    Ok(match build {
        FlightBuild::Timber { board, pegs, peg, bed } => {
            FlightTakeOff { piece_depth: board, pegs: (pegs * f.risers, peg), bed: treads * bed, ..plain }
        }
        FlightBuild::Stone { depth, overlap, bed } => {
            // A block shows a going and reaches under the next; landings deeper than a block are paved behind it.
            let under = f.width * depth * f.risers as f64;
            let covered = (depth - overlap).max(Length::ZERO);
            let rest = (treads - f.width * covered * f.risers.saturating_sub(1) as f64).max(Area::ZERO);
            FlightTakeOff { piece_depth: depth, bed: (under + rest) * bed, ..plain }
        }
        FlightBuild::Concrete { waist, bed } => {
            let given = [f.riser.to_mm(), f.going.to_mm(), f.risers as f64, f.width.to_m(), waist.to_mm()];
            for (row, v) in CONCRETE_FLIGHT.inputs.iter().zip(given) {
                check_range(CONCRETE_FLIGHT.name, row, v)?;
            }
            let c = concrete(given[0], given[1], given[2], given[3], given[4]);
            // Landings are slabs as thick as the waist.
            let landing: Area = f.landings.iter().map(|i| Area::m2(crate::outline::area(&f.treads[*i].ring))).sum();
            let more = (landing - f.width * f.going * f.landings.len() as f64).max(Area::ZERO);
            FlightTakeOff {
                pieces: (0, Length::ZERO),
                concrete: Volume::m3(c.volume) + more * waist,
                formwork: Area::m2(c.formwork),
                bed: Area::m2(c.soffit) * bed + more * bed,
                trace: Some(Trace::new(&CONCRETE_FLIGHT, given.map(Into::into).into())),
                ..plain
            }
        }
    })
}

struct Concrete<N> {
    volume: N,
    formwork: N,
    soffit: N,
}

/// Concrete of a flight: a waist along the pitch with a triangle for each step.
///
/// # Source
/// Elementary geometry: with n steps of riser R and going G, s = √(R² + G²), V = b·n·(s·w + R·G/2).
/// # Symbols
/// | R, G | riser and going | mm | n | steps | – | b | width | m | w | waist, square to the pitch | mm |
/// # Gives
/// Volume (m³), formwork of risers and both sides (m²), area under the waist (m²).
/// # Not for
/// Landings, footings and walls at the sides.
/// # Errors
/// A value outside its limits.
/// # By hand
/// R = 150, G = 200, n = 4, b = 1, w = 120: s = 250; V = 4·(0.25·0.12 + 0.15·0.2/2) = 0.18 m³ (reference case SH-T20).
fn concrete<N: Number>(riser: N, going: N, steps: N, width: N, waist: N) -> Concrete<N> {
    let k = 1e-3;
    let (r, g, w) = (riser * k, going * k, waist * k);
    let s = (r.squared() + g.squared()).sqrt().named("s", Unit::M);
    let side = (steps * (s * w + r * g / 2.0)).named("A", Unit::M2);
    let volume = (width * side).named("V", Unit::M3);
    let formwork = (width * steps * r + side * 2.0).named("A_f", Unit::M2);
    let soffit = (width * steps * s).named("A_s", Unit::M2);
    Concrete { volume, formwork, soffit }
}

/// Concrete of a flight.
pub static CONCRETE_FLIGHT: Working = Working {
    name: "steps/concrete",
    title: "How much concrete does a poured flight take?",
    source: Source {
        work: "elementary geometry: a slab along the pitch with a triangle for each step",
        place: "no book needed",
    },
    not_for: "landings, footings and walls at the sides",
    inputs: &[
        Input::new("riser", "R", "height of each riser", Unit::MM, Limits::ours(10.0, 1000.0)),
        Input::new("going", "G", "going of each tread", Unit::MM, Limits::ours(50.0, 5000.0)),
        Input::new("steps", "n", "number of steps", Unit::NONE, Limits::ours(1.0, 500.0)),
        Input::new("width", "b", "width", Unit::M, Limits::ours(0.1, 50.0)),
        Input::new("waist", "w", "thickness of the waist, square to the pitch", Unit::MM, Limits::ours(50.0, 1000.0)),
    ],
    outputs: &[
        Output { key: "volume", words: "concrete", unit: Unit::M3 },
        Output { key: "formwork", words: "formwork of risers and sides", unit: Unit::M2 },
        Output { key: "soffit", words: "area under the waist", unit: Unit::M2 },
    ],
    run: |g| {
        let c = concrete(g.one("riser")?, g.one("going")?, g.one("steps")?, g.one("width")?, g.one("waist")?);
        Ok([c.volume, c.formwork, c.soffit].map(Found::One).into())
    },
};
