//! How many turves are cut, how many are laid again, and what is over?

use groundhold_quantity::{Area, Length};

/// Turves counted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turves {
    /// Area cut.
    pub cut: Area,
    /// Area laid again.
    pub laid: Area,
    /// Size of one.
    pub size: (Length, Length),
    /// Pieces cut.
    pub pieces_cut: u32,
    /// Pieces laid, with what breaks.
    pub pieces_laid: u32,
    /// Pieces over; negative: short, to be bought or sown.
    pub pieces_over: i64,
}

/// A turf cut by hand: 900 × 300 mm. Common practice, no source.
pub const TURF_PIECE: (Length, Length) = (Length::mm(900.0), Length::mm(300.0));
/// Of ten turves lifted one breaks or dries out. Common practice, no source: 5 to 10 %.
const BREAKS: f64 = 0.10;

/// Counts turves of the usual size.
pub fn turves(cut: Area, laid: Area) -> Turves {
    let one = TURF_PIECE.0 * TURF_PIECE.1;
    let count = |a: Area| (a / one - 1e-9).ceil().clamp(0.0, 1e9) as u32;
    let (pieces_cut, pieces_laid) = (count(cut), count(laid * (1.0 + BREAKS)));
    Turves {
        cut,
        laid,
        size: TURF_PIECE,
        pieces_cut,
        pieces_laid,
        pieces_over: i64::from(pieces_cut) - i64::from(pieces_laid),
    }
}
