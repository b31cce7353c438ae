//! Any points, break lines and boundary as a triangulated ground: either refused in words, or whole.

use groundhold_quantity::{Length, Level, Point};
use groundhold_surface::{GroundPoint, Tin};

/// Bytes as they are used up; zeros when there are no more.
struct Bytes<'a>(std::slice::Iter<'a, u8>);

impl Bytes<'_> {
    fn byte(&mut self) -> u8 {
        self.0.next().copied().unwrap_or(0)
    }
    /// On a grid, so that points fall on lines and on each other, or anywhere.
    fn place(&mut self, fine: bool) -> f64 {
        let coarse = f64::from(self.byte() % 32) / 2.0;
        if fine { coarse + f64::from(self.byte()) * 1e-7 } else { coarse }
    }
}

pub fn run(data: &[u8]) {
    let mut b = Bytes(data.iter());
    let (count, how) = (usize::from(b.byte() % 48), b.byte());
    let fine = how & 1 == 1;
    let points: Vec<GroundPoint> = (0..count)
        .map(|i| GroundPoint {
            id: (i + 1).to_string(),
            at: Point::m(b.place(fine), b.place(fine)),
            level: Level::m(f64::from(b.byte()) / 32.0),
        })
        .collect();
    let lines: Vec<Vec<usize>> =
        (0..how >> 5).map(|_| (0..b.byte() % 8).map(|_| usize::from(b.byte())).collect()).collect();
    let ring: Vec<usize> = (0..b.byte() % 16).map(|_| usize::from(b.byte())).collect();
    let boundary = (how & 2 == 2).then_some(&ring[..]);
    match Tin::build(&points, &lines, boundary) {
        Err(e) => assert!(!e.to_string().is_empty()),
        Ok(tin) => whole(&tin),
    }
}

fn whole(tin: &Tin) {
    let facets = tin.facets();
    let area: f64 = facets.iter().map(|f| f.area().to_m2()).sum();
    assert!((area - tin.area().to_m2()).abs() <= 1e-9 * area.max(1.0));
    for f in &facets {
        assert!(f.area().to_m2() >= 0.0);
    }
    let outline: f64 = tin.outline().iter().map(|p| p.area().to_m2()).sum();
    assert!(outline >= area - 1e-6 * area.max(1.0), "an outline of {outline} m² holds {area} m² of triangles");
    for p in tin.points() {
        let _ = tin.level_at(p.at);
    }
    let _ = tin.section(&[Point::m(-1.0, -1.0), Point::m(17.0, 16.0)]);
    let _ = tin.contours(Length::m(0.5));
}
