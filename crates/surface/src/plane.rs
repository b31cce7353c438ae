//! What level does a plane have at a point, and how steep is it?

use groundhold_quantity::{Level, Point, Slope, Vector};

/// A plane of ground: level = c + a·x + b·y, all in metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plane {
    /// Rise towards the east, metres per metre.
    pub a: f64,
    /// Rise towards the north, metres per metre.
    pub b: f64,
    /// Level at the origin of the grid, metres.
    pub c: f64,
}

impl Plane {
    /// A level plane.
    pub fn level(level: Level) -> Plane {
        Plane { a: 0.0, b: 0.0, c: level.to_m() }
    }

    /// The plane through three points; `None` where they lie in one line in plan (sine of the angle below 1e-12).
    pub fn through(p: [(Point, Level); 3]) -> Option<Plane> {
        Patch::through(p).map(|patch| patch.plane())
    }

    /// The plane through `at` that rises at `slope` in the direction `uphill` (any length; zero gives a level plane).
    pub fn rising(at: Point, level: Level, uphill: Vector, slope: Slope) -> Plane {
        Plane::graded(at, level.to_m(), uphill.unit() * slope.to_ratio())
    }

    /// Its level above or below a point in plan.
    pub fn level_at(&self, p: Point) -> Level {
        Level::m(self.c + (self.a * p.x + self.b * p.y))
    }

    /// Its steepest slope, never negative.
    pub fn slope(&self) -> Slope {
        Slope::ratio(self.grade().length())
    }

    /// The direction of steepest fall, one metre long; zero for a level plane.
    pub fn downhill(&self) -> Vector {
        self.grade().unit() * -1.0
    }

    pub(crate) fn grade(&self) -> Vector {
        Vector::m(self.a, self.b)
    }

    fn graded(at: Point, level_m: f64, grade: Vector) -> Plane {
        Plane { a: grade.x, b: grade.y, c: level_m - (grade.x * at.x + grade.y * at.y) }
    }
}

/// A plane by its level at a point nearby, so that far from the origin of the grid no digits are lost.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Patch {
    pub(crate) at: Point,
    pub(crate) level_m: f64,
    pub(crate) grade: Vector,
}

impl Patch {
    pub(crate) fn through([(o, z), (p1, z1), (p2, z2)]: [(Point, Level); 3]) -> Option<Patch> {
        let (u, v) = (p1 - o, p2 - o);
        let det = u.cross(v);
        // Written so that an undefined number is refused too.
        let wide_enough = det * det > 1e-24 * u.dot(u) * v.dot(v);
        if !wide_enough {
            return None;
        }
        let (du, dv) = ((z1 - z).to_m(), (z2 - z).to_m());
        let grade = Vector::m((du * v.y - dv * u.y) / det, (dv * u.x - du * v.x) / det);
        Some(Patch { at: o, level_m: z.to_m(), grade })
    }

    /// Level in metres at a point.
    pub(crate) fn level_m(&self, p: Point) -> f64 {
        self.level_m + self.grade.dot(p - self.at)
    }

    /// The same, as seen from a new origin: for work in coordinates relative to `origin`.
    pub(crate) fn seen_from(&self, origin: Point) -> Patch {
        Patch { at: Point::default() + (self.at - origin), ..*self }
    }

    pub(crate) fn plane(&self) -> Plane {
        Plane::graded(self.at, self.level_m, self.grade)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plane_through_three_points_has_their_levels() {
        let p = [
            (Point::m(1.0, 2.0), Level::m(10.0)),
            (Point::m(4.0, 2.0), Level::m(10.6)),
            (Point::m(1.0, 7.0), Level::m(9.0)),
        ];
        let plane = Plane::through(p).unwrap();
        for (at, level) in p {
            assert!((plane.level_at(at) - level).to_m().abs() < 1e-12);
        }
        assert!((plane.a - 0.2).abs() < 1e-12);
        assert!((plane.b + 0.2).abs() < 1e-12);
    }

    #[test]
    fn three_points_in_one_line_have_no_plane() {
        let p = |x: f64, z| (Point::m(x, 2.0 * x), Level::m(z));
        assert_eq!(Plane::through([p(0.0, 1.0), p(1.0, 2.0), p(3.0, 9.0)]), None);
        assert_eq!(Plane::through([p(0.0, 1.0), p(f64::NAN, 2.0), p(3.0, 9.0)]), None);
    }

    #[test]
    fn a_rising_plane_rises_uphill_by_its_slope() {
        let at = Point::m(3.0, -2.0);
        let plane = Plane::rising(at, Level::m(5.0), Vector::m(3.0, 4.0), Slope::one_in(4.0));
        assert!((plane.level_at(at).to_m() - 5.0).abs() < 1e-12);
        assert!((plane.level_at(at + Vector::m(3.0, 4.0)).to_m() - 6.25).abs() < 1e-12);
        assert!((plane.slope().to_ratio() - 0.25).abs() < 1e-12);
        assert!((plane.downhill().x + 0.6).abs() < 1e-12);
        assert_eq!(Plane::level(Level::m(2.0)).downhill(), Vector::m(0.0, 0.0));
    }
}
