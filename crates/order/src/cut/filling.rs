//! In which ways can one bar be filled, so that the list may still become better than the best known?

use super::{
    integers::{Column, ENOUGH, Problem},
    relaxation::{Relaxed, dearest},
};

/// Every full filling with the longest piece left whose reduced cost is at most `room` (in dearest bars), with its
/// reduced cost. `steps` counts down; where it comes to zero, fillings are missing.
pub(super) fn fillings(
    p: &Problem,
    left: &[u16],
    supply: &[u32],
    relaxed: &Relaxed,
    room: f64,
    steps: &mut u64,
) -> Vec<(f64, Column)> {
    let Some(longest) = left.iter().position(|&n| n > 0) else { return vec![] };
    let n = left.len();
    let mut density = vec![0.0; n + 1];
    for i in (0..n).rev() {
        let here = if left[i] > 0 { relaxed.value[i] / p.weight[i] as f64 } else { 0.0 };
        density[i] = if density[i + 1] > here { density[i + 1] } else { here };
    }
    let mut found = vec![];
    for stock in (0..p.space.len()).filter(|&s| supply[s] > 0 && p.weight[longest] <= p.space[s]) {
        let price = p.cost[stock] as f64 / dearest(p) + relaxed.rent[stock];
        let mut fill = Filling {
            p,
            left,
            supply,
            stock,
            longest,
            value: &relaxed.value,
            density: &density,
            price,
            least: price - room,
            counts: vec![0; n],
            steps,
            found: &mut found,
        };
        fill.fill(longest, p.space[stock], 0.0);
    }
    found
}

/// All fillings of one bar, by depth-first counting.
struct Filling<'a> {
    p: &'a Problem,
    left: &'a [u16],
    supply: &'a [u32],
    stock: usize,
    longest: usize,
    value: &'a [f64],
    density: &'a [f64],
    price: f64,
    least: f64,
    counts: Vec<u16>,
    steps: &'a mut u64,
    found: &'a mut Vec<(f64, Column)>,
}

impl Filling<'_> {
    fn fill(&mut self, item: usize, space: i64, worth: f64) {
        if *self.steps == 0 {
            return;
        }
        *self.steps = self.steps.saturating_sub(8);
        if worth + self.density[item] * space as f64 <= self.least {
            return;
        }
        if item == self.left.len() {
            if self.is_full(space) && !self.has_cheaper_bar(space) {
                self.found.push((self.price - worth, Column { stock: self.stock, counts: self.counts.clone() }));
            }
            return;
        }
        let most = (space / self.p.weight[item]).min(i64::from(self.left[item])) as u16;
        for n in (u16::from(item == self.longest)..=most).rev() {
            self.counts[item] = n;
            self.fill(item + 1, space - i64::from(n) * self.p.weight[item], worth + f64::from(n) * self.value[item]);
        }
        self.counts[item] = 0;
    }

    /// True where nothing that is left would still fit: a bar that could take a piece more may as well take it.
    fn is_full(&self, space: i64) -> bool {
        (0..self.left.len()).all(|i| self.counts[i] == self.left[i] || self.p.weight[i] > space)
    }

    /// True where another bar without a limit holds the same pieces for less.
    fn has_cheaper_bar(&self, space: i64) -> bool {
        let (s, p) = (self.stock, self.p);
        let holds = p.space[s] - space;
        (0..p.space.len()).any(|o| {
            let cheaper = p.cost[o] < p.cost[s] || (p.cost[o] == p.cost[s] && o < s);
            o != s && self.supply[o] == ENOUGH && p.space[o] >= holds && cheaper
        })
    }
}
