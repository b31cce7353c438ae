//! What does the wall weigh, course by course, and where does its back run?

use groundhold_quantity::UnitWeight;

use crate::Stuff;

/// A layer of the body between two levels, with straight front and back.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Course {
    /// From and to above the underside of the base.
    pub height: (f64, f64),
    /// Front at its bottom and at its top.
    pub front: (f64, f64),
    /// Back at its bottom and at its top.
    pub back: (f64, f64),
    /// As built, with its voids.
    pub unit_weight: UnitWeight,
    /// Of what.
    pub stuff: Stuff,
    /// The group on the drawing: `footing`, `baskets, cut`.
    pub group: &'static str,
    /// True where the joint under it is checked for itself.
    pub joint_below: bool,
}

/// A wall in section.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Body {
    /// From the underside up, without gaps.
    pub courses: Vec<Course>,
}

/// A weight per metre run in kN, and the place of its line of action.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Mass {
    pub force: f64,
    pub x: f64,
}

impl Course {
    /// The part of it above a height; `None` where nothing is left.
    fn above(&self, z: f64) -> Option<Course> {
        let (low, high) = self.height;
        if high - z < 1e-9 {
            return None;
        }
        if z <= low {
            return Some(self.clone());
        }
        let t = (z - low) / (high - low);
        let mix = |(a, b): (f64, f64)| (a + (b - a) * t, b);
        Some(Course { height: (z, high), front: mix(self.front), back: mix(self.back), ..self.clone() })
    }
    /// Area and `x` of the centroid of a trapezium between a front and a back.
    fn trapezium(height: f64, front: (f64, f64), back: (f64, f64)) -> (f64, f64) {
        let (a, b) = (front.0 - back.0, front.1 - back.1);
        let area = height * (a + b) / 2.0;
        if area <= 0.0 {
            return (0.0, back.0);
        }
        // Two triangles: one on the bottom edge with the front's top, one on the top edge with the back's bottom.
        let lower = height * a / 2.0 * (front.0 + back.0 + front.1) / 3.0;
        let upper = height * b / 2.0 * (front.1 + back.1 + back.0) / 3.0;
        (area, (lower + upper) / area)
    }
}

impl Body {
    /// Height above the underside.
    pub fn height(&self) -> f64 {
        self.courses.last().map_or(0.0, |c| c.height.1)
    }
    /// Front and back just above a height.
    pub fn at(&self, z: f64) -> (f64, f64) {
        let course = self.courses.iter().find(|c| z < c.height.1 - 1e-9).or(self.courses.last());
        let Some(c) = course else { return (0.0, 0.0) };
        let t = ((z - c.height.0) / (c.height.1 - c.height.0).max(1e-9)).clamp(0.0, 1.0);
        (c.front.0 + (c.front.1 - c.front.0) * t, c.back.0 + (c.back.1 - c.back.0) * t)
    }
    /// Its own weight above a height.
    pub fn weights(&self, z: f64) -> Vec<Mass> {
        let parts = self.courses.iter().filter_map(|c| c.above(z));
        parts
            .map(|c| {
                let (area, x) = Course::trapezium(c.height.1 - c.height.0, c.front, c.back);
                Mass { force: area * c.unit_weight.to_kn_per_m3(), x }
            })
            .filter(|m| m.force > 0.0)
            .collect()
    }
    /// Its own weight above a height, each part with the height of its centroid above that height.
    pub fn heights(&self, z: f64) -> Vec<(f64, f64)> {
        let parts = self.courses.iter().filter_map(|c| c.above(z));
        parts
            .map(|c| {
                let (h, a, b) = (c.height.1 - c.height.0, c.front.0 - c.back.0, c.front.1 - c.back.1);
                let middle = if a + b > 0.0 { h / 3.0 * (a + 2.0 * b) / (a + b) } else { 0.0 };
                (h * (a + b) / 2.0 * c.unit_weight.to_kn_per_m3(), c.height.0 - z + middle)
            })
            .collect()
    }
    /// Soil that stands on it between its back and an upright plane, from a height up to the ground behind at `ground`
    /// above the underside: area and place of each part. Ground above the back's top rises with `rise` per metre.
    pub fn soil_on_back(&self, z: f64, plane: f64, ground: f64, rise: f64) -> Vec<(f64, f64)> {
        let mut parts = vec![];
        for c in self.courses.iter().filter_map(|c| c.above(z)) {
            let Some(top) = (c.height.0 < ground).then_some(c.height.1.min(ground)) else { continue };
            let t = (top - c.height.0) / (c.height.1 - c.height.0);
            let back = (c.back.0, c.back.0 + (c.back.1 - c.back.0) * t);
            let front = (back.0.max(plane), back.1.max(plane));
            let part = Course::trapezium(top - c.height.0, front, (plane, plane));
            if part.0 > 1e-9 {
                parts.push(part);
            }
        }
        let crest = self.at(ground.min(self.height() - 1e-6)).1;
        if rise > 0.0 && crest > plane {
            let long = crest - plane;
            parts.push((long * long * rise / 2.0, plane + long / 3.0));
        }
        parts
    }
    /// Heights of the joints that are checked for themselves.
    pub fn joints(&self) -> Vec<f64> {
        self.courses.iter().filter(|c| c.joint_below && c.height.0 > 1e-6).map(|c| c.height.0).collect()
    }
    /// What all of it takes up, m² of section.
    pub fn area(&self, group: impl Fn(&Course) -> bool) -> f64 {
        let parts = self.courses.iter().filter(|c| group(c));
        parts.map(|c| Course::trapezium(c.height.1 - c.height.0, c.front, c.back).0).sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn course(height: (f64, f64), front: (f64, f64), back: (f64, f64)) -> Course {
        let unit_weight = UnitWeight::kn_per_m3(20.0);
        Course { height, front, back, unit_weight, stuff: Stuff::Stone, group: "wall", joint_below: true }
    }

    #[test]
    fn a_wall_upright_in_front_and_leaning_behind_has_its_weight_where_two_figures_by_hand_have_it() {
        // 1.2 m high, 0.3 m at the top, 0.7 m at the foot: 0.36 m² at 0.15 m and a triangle of 0.24 m² at 0.4333 m.
        let body = Body { courses: vec![course((0.0, 1.2), (0.0, 0.0), (-0.7, -0.3))] };
        let w = body.weights(0.0);
        assert!((w[0].force - 12.0).abs() < 1e-9);
        assert!((w[0].x + (0.36 * 0.15 + 0.24 * 1.3 / 3.0) / 0.6).abs() < 1e-9, "{w:?}");
        // Behind it, up to the plane through its heel, soil of the same triangle turned over.
        let soil = body.soil_on_back(0.0, -0.7, 1.2, 0.0);
        assert!((soil[0].0 - 0.24).abs() < 1e-9 && (soil[0].1 + 0.7 - 0.4 / 3.0).abs() < 1e-9, "{soil:?}");
    }

    #[test]
    fn what_lies_above_a_joint_and_below_it_is_the_whole() {
        let body = Body {
            courses: vec![course((0.0, 0.5), (0.0, 0.0), (-1.0, -1.0)), course((0.5, 1.3), (0.0, -0.1), (-0.8, -0.5))],
        };
        let sum = |z: f64| body.weights(z).iter().map(|m| m.force).sum::<f64>();
        let by_hand = 20.0 * (0.5 + 0.8 * (0.8 + 0.4) / 2.0);
        assert!((sum(0.0) - by_hand).abs() < 1e-9 && (sum(0.5) - 20.0 * 0.48).abs() < 1e-9);
        assert!(sum(0.2) < sum(0.1) && sum(1.3) == 0.0);
        assert_eq!(body.joints(), vec![0.5]);
    }
}
