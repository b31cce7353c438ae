//! How large is a sheet, and where may things stand on it?

/// A rectangle on paper in millimetres, `y` downwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frame {
    /// Left edge.
    pub left: f64,
    /// Upper edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Lower edge.
    pub bottom: f64,
}

impl Frame {
    /// From left to right.
    pub fn width(&self) -> f64 {
        self.right - self.left
    }
    /// From top to bottom.
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }
    /// True when the other lies inside, to a hundredth of a millimetre.
    pub fn holds(&self, o: &Frame) -> bool {
        let e = 0.01;
        self.left - e <= o.left && self.top - e <= o.top && o.right <= self.right + e && o.bottom <= self.bottom + e
    }
    /// True when both share more than a hundredth of a millimetre in both directions.
    pub fn overlaps(&self, o: &Frame) -> bool {
        let e = 0.01;
        self.left + e < o.right && o.left + e < self.right && self.top + e < o.bottom && o.top + e < self.bottom
    }
}

/// The sizes of ISO 216 that the set uses.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// 210 × 297 mm, upright: schedules and calculations.
    A4,
    /// 420 × 297 mm, lying: drawings.
    A3,
}

/// The left margin is wider, for the punch.
const LEFT: f64 = 20.0;
const MARGIN: f64 = 10.0;
/// Height of the title block at the foot.
pub(crate) const TITLE_BLOCK: f64 = 19.0;
/// Between the content and its border.
const INSIDE: f64 = 4.0;

impl Paper {
    /// Width and height in millimetres.
    pub fn size(self) -> (f64, f64) {
        match self {
            Paper::A4 => (210.0, 297.0),
            Paper::A3 => (420.0, 297.0),
        }
    }
    /// The border line, title block included.
    pub fn border(self) -> Frame {
        let (w, h) = self.size();
        Frame { left: LEFT, top: MARGIN, right: w - MARGIN, bottom: h - MARGIN }
    }
    /// Where content may stand.
    pub fn content(self) -> Frame {
        let b = self.border();
        Frame {
            left: b.left + INSIDE,
            top: b.top + INSIDE,
            right: b.right - INSIDE,
            bottom: b.bottom - TITLE_BLOCK - INSIDE,
        }
    }
}
