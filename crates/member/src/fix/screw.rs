//! Which screw is it?

use groundhold_quantity::{Length, Moment, Pressure};

/// A screw, by its sizes and what its maker declares.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Screw {
    /// Outer diameter of the thread.
    pub diameter: Length,
    /// Inner diameter of the thread.
    pub root: Length,
    /// From under the head (countersunk: from its top) to the tip.
    pub length: Length,
    /// Threaded length, tip included.
    pub thread: Length,
    /// Diameter of the head (or of its washer).
    pub head: Length,
    /// Tensile strength of its wire.
    pub steel: Pressure,
    /// Declared withdrawal strength with its density, where the maker declares one (asked for by EN 1995-1-1 where the
    /// diameter is outside 6 to 12 mm).
    pub declared_withdrawal: Option<Declared>,
    /// Declared head pull-through strength with its density; `None` leaves that check out, and says so.
    pub declared_head: Option<Declared>,
    /// Declared yield moment; `None` computes it from the wire.
    pub declared_yield: Option<Moment>,
}

/// A strength that a maker declares, and the timber density for which it is declared.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Declared {
    /// Characteristic strength.
    pub strength: Pressure,
    /// Associated density, kg/m³.
    pub density_kg_per_m3: f64,
}

impl Screw {
    /// A usual screw with countersunk head: thread over six tenths of its length, root 0.65 d, head 2 d, wire 600 MPa
    /// (common practice, no source; a maker's declaration goes before it).
    pub fn usual(diameter: Length, length: Length) -> Screw {
        Screw {
            diameter,
            root: 0.65 * diameter,
            length,
            thread: 0.6 * length,
            head: 2.0 * diameter,
            steel: Pressure::mpa(600.0),
            declared_withdrawal: None,
            declared_head: None,
            declared_yield: None,
        }
    }
    /// Length of thread that grips in the timber behind a board of this thickness.
    pub fn grip(&self, board: Length) -> Length {
        (self.length - board).min(self.thread).max(Length::ZERO)
    }
}
