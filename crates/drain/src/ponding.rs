//! Where does rain stand on the finished surface, and how deep?

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use groundhold_quantity::{Area, Length, Level, Point, Volume, segments_cross};

/// A wall or an upstand that water has to run over: its line with the level of its top at each point.
#[derive(Debug, Clone, PartialEq)]
pub struct Dam {
    /// Whose it is.
    pub id: String,
    /// Points and levels of its top, in order.
    pub top: Vec<(Point, Level)>,
}

/// A place where water stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Pool {
    /// Its deepest place.
    pub at: Point,
    /// Level to which it fills before it runs on.
    pub level: Level,
    /// Depth at its deepest place.
    pub depth: Length,
    /// Area under water.
    pub area: Area,
    /// Water in it.
    pub volume: Volume,
    /// Dams that it stands against.
    pub against: Vec<String>,
}

/// Most places that are looked at.
const PLACES: f64 = 6000.0;
/// Water shallower than this is what a lawn holds anyway.
const WET: f64 = 0.010;
/// Distance between places at least, m.
const STEP_LEAST: f64 = 0.20;

/// Every pool on a surface between two corners, the deepest first. `level` gives the finished level, `None` where nothing is
/// known: there water leaves, as it does over the edge. Levels are taken at places 200 mm apart (further on large grounds),
/// and water is let rise from the outside in, over the lowest way (priority flood: Barnes, Lehman and Mulla, Computers &
/// Geosciences 62 (2014) 117–127). Pools narrower than the step are not seen.
pub fn pools(low: Point, high: Point, level: &dyn Fn(Point) -> Option<Level>, dams: &[Dam]) -> Vec<Pool> {
    let (wide, tall) = (high.x - low.x, high.y - low.y);
    if !(wide > 0.0 && tall > 0.0 && (wide * tall).is_finite()) {
        return vec![];
    }
    let step = (wide * tall / PLACES).sqrt().max(STEP_LEAST);
    let columns = (wide / step).floor() as usize + 1;
    let rows = (tall / step).floor() as usize + 1;
    if columns * rows > 4 * PLACES as usize {
        return vec![];
    }
    let at = |i: usize| Point::m(low.x + (i % columns) as f64 * step, low.y + (i / columns) as f64 * step);
    let ground: Vec<Option<f64>> = (0..columns * rows).map(|i| level(at(i)).map(Level::to_m)).collect();
    let grid = Places { columns, rows, ground, raised: raised(columns, rows, &at, dams) };
    let water = grid.flood();
    grid.gather(&water, step, &at, dams)
}

/// A step from one place to the next east (0) or north (1) that a dam stands across: level of its top there, and which.
type Raised = std::collections::BTreeMap<(usize, usize), (f64, usize)>;

fn raised(columns: usize, rows: usize, at: &dyn Fn(usize) -> Point, dams: &[Dam]) -> Raised {
    let mut found = Raised::new();
    let origin = at(0);
    let step = if columns > 1 { at(1).x - origin.x } else { STEP_LEAST };
    let cell =
        |v: f64, from: f64, n: usize, more: f64| (((v - from) / step + more).floor().max(0.0) as usize).min(n - 1);
    for (k, dam) in dams.iter().enumerate() {
        for w in dam.top.windows(2) {
            let ((a, za), (b, zb)) = (w[0], w[1]);
            let (c0, c1) = (cell(a.x.min(b.x), origin.x, columns, -1.0), cell(a.x.max(b.x), origin.x, columns, 1.0));
            let (r0, r1) = (cell(a.y.min(b.y), origin.y, rows, -1.0), cell(a.y.max(b.y), origin.y, rows, 1.0));
            for r in r0..=r1 {
                for c in c0..=c1 {
                    let i = r * columns + c;
                    for (side, j, there) in [(0, i + 1, c + 1 < columns), (1, i + columns, r + 1 < rows)] {
                        if !there {
                            continue;
                        }
                        // A hair to the side, so that a wall through grid points is crossed on one side and only once.
                        let nudge = groundhold_quantity::Vector::m(1.7e-6, 2.3e-6);
                        if let Some((_, u)) = segments_cross(at(i) + nudge, at(j) + nudge, a, b) {
                            let top = za.to_m() + (zb - za).to_m() * u;
                            let entry = found.entry((i, side)).or_insert((top, k));
                            if top > entry.0 {
                                *entry = (top, k);
                            }
                        }
                    }
                }
            }
        }
    }
    found
}

struct Places {
    columns: usize,
    rows: usize,
    ground: Vec<Option<f64>>,
    raised: Raised,
}

/// A level that is ordered as numbers are.
#[derive(PartialEq)]
struct Ordered(f64);

impl Eq for Ordered {}
impl PartialOrd for Ordered {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Ordered {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.0.total_cmp(&other.0)
    }
}

impl Places {
    /// The four places beside one, with the dam between.
    fn beside(&self, i: usize) -> impl Iterator<Item = (usize, Option<(f64, usize)>)> + '_ {
        let (r, c) = (i / self.columns, i % self.columns);
        let east = (c + 1 < self.columns).then(|| (i + 1, self.raised.get(&(i, 0))));
        let north = (r + 1 < self.rows).then(|| (i + self.columns, self.raised.get(&(i, 1))));
        let west = (c > 0).then(|| (i - 1, self.raised.get(&(i - 1, 0))));
        let south = (r > 0).then(|| (i - self.columns, self.raised.get(&(i - self.columns, 1))));
        [east, north, west, south].into_iter().flatten().map(|(j, d)| (j, d.copied()))
    }
    fn at_edge(&self, i: usize) -> bool {
        let (r, c) = (i / self.columns, i % self.columns);
        r == 0 || c == 0 || r + 1 == self.rows || c + 1 == self.columns
    }
    /// The level to which water stands at each place; the ground's own where it is dry.
    fn flood(&self) -> Vec<f64> {
        let mut water = vec![f64::INFINITY; self.ground.len()];
        let mut open: BinaryHeap<Reverse<(Ordered, usize)>> = BinaryHeap::new();
        for (i, z) in self.ground.iter().enumerate() {
            let Some(z) = z else { continue };
            if self.at_edge(i) || self.beside(i).any(|(j, _)| self.ground[j].is_none()) {
                water[i] = *z;
                open.push(Reverse((Ordered(*z), i)));
            }
        }
        while let Some(Reverse((Ordered(level), i))) = open.pop() {
            if level > water[i] {
                continue;
            }
            for (j, dam) in self.beside(i) {
                let Some(z) = self.ground[j] else { continue };
                let over = dam.map_or(level, |(top, _)| level.max(top));
                let stands = z.max(over);
                if stands < water[j] {
                    water[j] = stands;
                    open.push(Reverse((Ordered(stands), j)));
                }
            }
        }
        water
    }
    fn gather(&self, water: &[f64], step: f64, at: &dyn Fn(usize) -> Point, dams: &[Dam]) -> Vec<Pool> {
        let depth = |i: usize| self.ground[i].map_or(0.0, |z| if water[i].is_finite() { water[i] - z } else { 0.0 });
        let mut seen = vec![false; water.len()];
        let mut found = vec![];
        for start in 0..water.len() {
            if seen[start] || depth(start) <= WET {
                continue;
            }
            let (mut stack, mut deepest, mut sum, mut count) = (vec![start], start, 0.0, 0.0);
            let mut against: Vec<usize> = vec![];
            seen[start] = true;
            while let Some(i) = stack.pop() {
                sum += depth(i);
                count += 1.0;
                if depth(i) > depth(deepest) {
                    deepest = i;
                }
                for (j, dam) in self.beside(i) {
                    if let Some((_, k)) = dam
                        && !against.contains(&k)
                    {
                        against.push(k);
                    }
                    if dam.is_none() && !seen[j] && depth(j) > WET {
                        seen[j] = true;
                        stack.push(j);
                    }
                }
            }
            against.sort_unstable();
            found.push(Pool {
                at: at(deepest),
                level: Level::m(water[deepest]),
                depth: Length::m(depth(deepest)),
                area: Area::m2(count * step * step),
                volume: Volume::m3(sum * step * step),
                against: against.into_iter().map(|k| dams[k].id.clone()).collect(),
            });
        }
        found.sort_by(|a, b| b.depth.to_m().total_cmp(&a.depth.to_m()));
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn over(z: impl Fn(Point) -> f64, dams: &[Dam]) -> Vec<Pool> {
        pools(Point::m(0.0, 0.0), Point::m(10.0, 10.0), &|p| Some(Level::m(z(p))), dams)
    }

    #[test]
    fn a_slope_holds_no_water_and_a_bowl_holds_what_its_rim_lets_it() {
        assert!(over(|p| 100.0 + 0.1 * p.y, &[]).is_empty());
        let bowl = |p: Point| 100.0 - (0.3 - 0.1 * (p - Point::m(5.0, 5.0)).length()).max(0.0);
        let found = over(bowl, &[]);
        assert_eq!(found.len(), 1);
        assert!((found[0].depth.to_m() - 0.3).abs() < 1e-9 && (found[0].level.to_m() - 100.0).abs() < 1e-9);
        // A cone 0.3 deep and 3 m in radius: π·9·0.3/3 = 2.827 m³.
        assert!((found[0].volume.to_m3() - 2.827).abs() < 0.1, "{found:?}");
    }

    #[test]
    fn a_wall_across_a_slope_dams_water_to_its_top_and_is_named() {
        let top = |x: f64, y: f64| (Point::m(x, y), Level::m(100.6));
        let line = vec![top(2.05, 7.0), top(2.05, 4.95), top(8.05, 4.95), top(8.05, 7.0)];
        let wall = Dam { id: "W1".into(), top: line.clone() };
        let found = over(|p| 100.0 + 0.1 * p.y, &[wall]);
        assert_eq!(found.len(), 1, "{found:?}");
        assert_eq!(found[0].against, ["W1"]);
        assert!((found[0].depth.to_m() - 0.1).abs() < 1e-9, "{found:?}");
        let one_wing = Dam { id: "W1".into(), top: line[1..].to_vec() };
        assert!(over(|p| 100.0 + 0.1 * p.y, &[one_wing]).is_empty());
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(32))]
        #[test]
        fn a_plane_never_holds_water(a in -0.3f64..0.3, b in -0.3f64..0.3) {
            prop_assert!(over(|p| 100.0 + a * p.x + b * p.y, &[]).is_empty());
        }
    }

    #[test]
    fn a_ground_without_extent_has_no_pools() {
        let p = Point::m(1.0, 1.0);
        assert!(pools(p, p, &|_| Some(Level::m(1.0)), &[]).is_empty());
        assert!(pools(p, Point::m(f64::NAN, 2.0), &|_| None, &[]).is_empty());
    }
}
