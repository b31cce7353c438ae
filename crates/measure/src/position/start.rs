//! Where does the search begin? Points are put down one after the other where two readings meet, with their mirror images.

use std::cmp::Reverse;

use groundhold_quantity::Point;

use super::observation::{Locus, Observation};

/// On which side of a line a point must lie.
#[derive(Debug, Clone, Copy)]
pub(super) struct Required {
    pub point: usize,
    pub from: Point,
    pub to: Point,
    /// +1 left, −1 right.
    pub sign: f64,
    /// Which hint of the survey said so.
    pub hint: usize,
}

impl Required {
    /// How far the point lies on the required side, metres; negative on the other.
    pub fn inside(&self, p: Point) -> f64 {
        (self.to - self.from).unit().cross(p - self.from) * self.sign
    }
}

/// Beginnings of the search are not more than this, fewer for many points.
fn most_starts(points: usize) -> usize {
    (128 / points.max(1)).clamp(8, 64)
}
/// Readings of one point that are crossed in pairs.
const CROSSED: usize = 12;
/// Candidates nearer to each other than this lead to the same place, metres.
const SAME: f64 = 0.02;

/// Beginnings for points 0 to `n`, the likeliest first; or the first point that cannot be put down.
pub(super) fn starts(n: usize, observations: &[Observation], required: &[Required]) -> Result<Vec<Vec<Point>>, usize> {
    let mut of_point: Vec<Vec<&Observation>> = vec![vec![]; n];
    for o in observations {
        o.sought().for_each(|i| of_point[i].push(o));
    }
    let mut search = Search { of_point, required, out: vec![], stuck: None };
    search.put_down(vec![None; n]);
    match (search.out.is_empty(), search.stuck) {
        (true, Some(point)) => Err(point),
        _ => Ok(search.out),
    }
}

struct Search<'a> {
    of_point: Vec<Vec<&'a Observation>>,
    required: &'a [Required],
    out: Vec<Vec<Point>>,
    stuck: Option<usize>,
}

impl Search<'_> {
    /// Puts down the point with the fewest places to choose from, and goes on from each of them.
    fn put_down(&mut self, placed: Vec<Option<Point>>) {
        if self.out.len() >= most_starts(placed.len()) {
            return;
        }
        let open: Vec<usize> = (0..placed.len()).filter(|i| placed[*i].is_none()).collect();
        if open.is_empty() {
            self.out.push(placed.into_iter().flatten().collect());
            return;
        }
        let most = if placed.len() == 1 { 6 } else { 2 };
        let next = open
            .iter()
            .map(|i| {
                let loci: Vec<(Locus, f64)> =
                    self.of_point[*i].iter().filter_map(|o| Some((o.locus(*i, &placed)?, o.sigma))).collect();
                (*i, loci.len(), candidates(*i, &loci, self.required, most))
            })
            .filter(|(_, _, c)| !c.is_empty())
            .min_by_key(|(i, loci, c)| (c.len(), Reverse(*loci), *i));
        let Some((i, _, candidates)) = next else {
            self.stuck = self.stuck.or(open.first().copied());
            return;
        };
        for p in candidates {
            let mut placed = placed.clone();
            placed[i] = Some(p);
            self.put_down(placed);
        }
    }
}

/// Places where two loci of a point meet, the one that fits the rest best first, with others that fit comparably.
fn candidates(i: usize, loci: &[(Locus, f64)], required: &[Required], most: usize) -> Vec<Point> {
    let mut all: Vec<(f64, Point)> = vec![];
    for (k, (a, _)) in loci.iter().take(CROSSED).enumerate() {
        for (b, _) in &loci[..k] {
            for p in a.meets(*b) {
                let misses: f64 = loci.iter().map(|(l, sigma)| l.misses(p) / sigma).sum();
                all.push((misses, p));
            }
        }
    }
    let on_its_side = |p: Point| required.iter().filter(|r| r.point == i).all(|r| r.inside(p) >= 0.0);
    if all.iter().any(|(_, p)| on_its_side(*p)) {
        all.retain(|(_, p)| on_its_side(*p));
    }
    all.sort_by(|(a, p), (b, q)| a.total_cmp(b).then(p.x.total_cmp(&q.x)).then(p.y.total_cmp(&q.y)));
    let Some((best, _)) = all.first().copied() else { return vec![] };
    let mut kept: Vec<Point> = vec![];
    for (misses, p) in all {
        let comparable = misses <= 3.0 * best + 10.0;
        if comparable && kept.len() < most && kept.iter().all(|k| (p - *k).length() > SAME) {
            kept.push(p);
        }
    }
    kept
}
