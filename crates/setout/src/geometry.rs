//! Along and off a base line, and two tapes that meet: forwards and back.

use groundhold_quantity::{Angle, Length, Point, distance, math};

/// Distance along the line from `a` towards `b`, and square off it, positive to the left. `None` when the pegs coincide.
pub fn along_off(a: Point, b: Point, p: Point) -> Option<(Length, Length)> {
    let line = b - a;
    if line.length() == 0.0 {
        return None;
    }
    let unit = line.unit();
    Some((Length::m((p - a).dot(unit)), Length::m(unit.cross(p - a))))
}

/// The point at a distance along and off a base line.
pub fn point_from_offset(a: Point, b: Point, along: Length, off: Length) -> Point {
    let unit = (b - a).unit();
    a + unit * along.to_m() + unit.left() * off.to_m()
}

/// The two points at these distances from two pegs, left of the line from `a` to `b` first. `None` when the tapes do not meet.
pub fn points_from_ties(a: Point, b: Point, from_a: Length, from_b: Length) -> Option<(Point, Point)> {
    let (l, ra, rb) = (distance(a, b).to_m(), from_a.to_m(), from_b.to_m());
    if l == 0.0 {
        return None;
    }
    let along = (ra * ra - rb * rb + l * l) / (2.0 * l);
    let square = ra * ra - along * along;
    if square < 0.0 {
        return None;
    }
    let off = Length::m(square.sqrt());
    let along = Length::m(along);
    Some((point_from_offset(a, b, along, off), point_from_offset(a, b, along, -off)))
}

/// The angle at which two tapes cross at `p`, from 0° to 90°. 90° is best; below 30° a small error of a tape moves the mark far.
pub fn angle_between_ties(p: Point, a: Point, b: Point) -> Angle {
    let (u, v) = ((a - p).unit(), (b - p).unit());
    Angle::rad(math::atan2(u.cross(v).abs(), u.dot(v).abs()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn a_point() -> impl Strategy<Value = Point> {
        (-50.0..50.0f64, -50.0..50.0f64).prop_map(|(x, y)| Point::m(x, y))
    }

    proptest! {
        #[test]
        fn along_and_off_lead_back_to_the_point(a in a_point(), b in a_point(), p in a_point()) {
            prop_assume!(distance(a, b).to_m() > 0.5);
            let (along, off) = along_off(a, b, p).unwrap();
            prop_assert!(distance(point_from_offset(a, b, along, off), p).to_m() < 1e-9);
        }

        #[test]
        fn two_tapes_lead_back_to_the_point(a in a_point(), b in a_point(), p in a_point()) {
            prop_assume!(distance(a, b).to_m() > 0.5 && angle_between_ties(p, a, b).to_deg() > 5.0);
            let (left, right) = points_from_ties(a, b, distance(a, p), distance(b, p)).unwrap();
            let nearest = distance(left, p).min(distance(right, p));
            prop_assert!(nearest.to_m() < 1e-9, "{nearest:?}");
        }
    }

    #[test]
    fn tapes_too_short_to_meet_give_no_point() {
        let (a, b) = (Point::m(0.0, 0.0), Point::m(10.0, 0.0));
        assert_eq!(points_from_ties(a, b, Length::m(4.0), Length::m(5.9)), None);
        assert!(points_from_ties(a, b, Length::m(4.0), Length::m(6.0)).is_some());
    }
}
