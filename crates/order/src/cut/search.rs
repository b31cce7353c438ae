//! Is there a cheaper list? Bars are fixed one by one until the bound says no.

use std::{cmp::Reverse, collections::BTreeMap};

use super::{
    Effort,
    greedy::{greedy, take},
    integers::{Column, ENOUGH, Problem},
    relaxation::{Relaxed, Window, dearest, relax},
};

/// The best list and what is known about it.
#[derive(Debug, Clone)]
pub(super) struct Found {
    /// One column per bar, sorted.
    pub columns: Vec<Column>,
    /// No list costs less (price and length in one).
    pub bound: i64,
    /// No list has a lower price.
    pub cheapest: bool,
    /// No list has a lower price, nor the same with less stock.
    pub complete: bool,
    /// Linear programs solved.
    pub nodes: usize,
}

struct Search<'a> {
    p: &'a Problem,
    pool: Vec<Column>,
    dearest: f64,
    best: Option<Vec<Column>>,
    /// Cost of the best list; of no list, more than any can cost.
    best_cost: i64,
    nodes: usize,
    fillings: usize,
    effort: Effort,
    seen: BTreeMap<(Vec<u16>, Vec<u32>), i64>,
    /// True where the inner search stopped before its end.
    cut_short: bool,
    /// Nodes at which the inner search stops.
    stop_at: usize,
}

/// A part of the lists that is not settled yet.
enum Part {
    /// Those with so many bars of each kind, with their relaxation.
    Open(Window, Relaxed),
    /// Those with at most these bars; the inner search gets so many nodes.
    Bars(Vec<u32>, usize),
}

/// Nodes of the first look for a good list, with any bars.
const FIRST_NODES: usize = 40;
/// Nodes of the inner search for one set of bars at first; four times as many when it comes up again.
const INNER_NODES: usize = 15;

/// Parts by their bound, the last found first among equals.
#[derive(Default)]
struct Parts {
    waiting: BTreeMap<(i64, Reverse<usize>), Part>,
    number: usize,
}

impl Parts {
    fn push(&mut self, bound: i64, part: Part) {
        self.number += 1;
        self.waiting.insert((bound, Reverse(self.number)), part);
    }
    fn pop(&mut self) -> Option<(i64, Part)> {
        self.waiting.pop_first().map(|((bound, _), part)| (bound, part))
    }
    fn least(&self) -> Option<i64> {
        self.waiting.first_key_value().map(|(k, _)| k.0)
    }
}

/// The cheapest list that the effort finds, or `None` where the supply does not give all pieces.
///
/// The outer search is over how many bars of each kind, which alone decide the cost: the part with the least bound is
/// split where its relaxation has a fraction of a bar. Where it has whole numbers of bars, the inner search fills them.
pub(super) fn search(p: &Problem, effort: Effort) -> Option<Found> {
    let mut s = Search::new(p, effort);
    if let Some(columns) = greedy(p, &p.demand, &p.supply) {
        s.offer(columns);
    }
    let window = Window::up_to(&p.supply);
    let root = s.relax(&p.demand, &window);
    let mut bound = s.round_up(root.bound);
    s.dive(&p.demand, &p.supply, &root);
    let mut parts = Parts::default();
    if bound < s.best_cost && s.fill_bars(&p.supply, FIRST_NODES) {
        bound = s.best_cost;
    }
    parts.push(bound, Part::Open(window, root));
    while let Some((least, part)) = parts.pop() {
        bound = least;
        if least >= s.best_cost || s.is_spent() {
            break;
        }
        match part {
            Part::Open(window, relaxed) => s.split(window, &relaxed, least, &mut parts),
            Part::Bars(bars, nodes) => {
                if !s.fill_bars(&bars, nodes) {
                    parts.push(least, Part::Bars(bars, nodes * 4));
                }
            }
        }
        bound = parts.least().unwrap_or(s.best_cost);
    }
    let mut columns = s.best?;
    columns.sort();
    let bound = bound.min(s.best_cost);
    let cheapest = bound / p.per_price == s.best_cost / p.per_price;
    Some(Found { columns, bound, cheapest, complete: bound == s.best_cost, nodes: s.nodes })
}

/// Each kind of piece alone on each kind of bar, and each kind of bar empty.
fn starters(p: &Problem) -> Vec<Column> {
    let mut pool: Vec<Column> =
        (0..p.space.len()).map(|stock| Column { stock, counts: vec![0; p.weight.len()] }).collect();
    for i in 0..p.weight.len() {
        for s in 0..p.space.len() {
            let n = (p.space[s] / p.weight[i]).min(i64::from(p.demand[i])) as u16;
            if n > 0 {
                let mut counts = vec![0; p.weight.len()];
                counts[i] = n;
                pool.push(Column { stock: s, counts });
            }
        }
    }
    pool
}

impl<'a> Search<'a> {
    fn new(p: &'a Problem, effort: Effort) -> Search<'a> {
        let pieces: i64 = p.demand.iter().map(|&d| i64::from(d)).sum();
        let dearest = dearest(p);
        Search {
            p,
            pool: starters(p),
            dearest,
            best: None,
            best_cost: (pieces + 1) * dearest as i64 + 1,
            nodes: 0,
            fillings: 0,
            effort,
            seen: BTreeMap::new(),
            cut_short: false,
            stop_at: 0,
        }
    }

    fn relax(&mut self, left: &[u16], window: &Window) -> Relaxed {
        self.nodes += 1;
        relax(self.p, left, window, &mut self.pool)
    }

    /// With no least number of bars.
    fn relax_up_to(&mut self, left: &[u16], most: &[u32]) -> Relaxed {
        self.relax(left, &Window::up_to(most))
    }

    /// A bound of the relaxation as a cost that lists can have: the next multiple of the step.
    fn round_up(&self, bound: f64) -> i64 {
        let cost = bound * self.dearest;
        let cost = cost - (1e-9 * cost.abs() + 1e-6);
        if cost.is_finite() { ((cost / self.p.step as f64).ceil() as i64).max(0) * self.p.step } else { i64::MAX }
    }

    fn offer(&mut self, columns: Vec<Column>) {
        let cost = columns.iter().map(|c| self.p.cost[c.stock]).sum();
        if cost < self.best_cost {
            self.best_cost = cost;
            self.best = Some(columns);
        }
    }

    fn is_spent(&self) -> bool {
        self.nodes >= self.effort.nodes || self.fillings >= self.effort.fillings
    }

    /// Splits a part where its relaxation has a fraction of a bar: of all kinds together first, then of one kind.
    fn split(&mut self, window: Window, relaxed: &Relaxed, least: i64, parts: &mut Parts) {
        let kinds = self.p.space.len();
        let mut bars = vec![0.0; kinds + 1];
        for (i, x) in &relaxed.used {
            bars[self.pool[*i].stock] += x;
            bars[kinds] += x;
        }
        let fraction = |s: usize| (bars[s] - bars[s].round()).abs();
        let widest = (0..kinds).max_by(|&a, &b| fraction(a).total_cmp(&fraction(b)).then(b.cmp(&a)));
        let at = if fraction(kinds) > 1e-6 { Some(kinds) } else { widest.filter(|&s| fraction(s) > 1e-6) };
        if let Some(s) = at {
            let (mut down, mut up) = (window.clone(), window);
            down.most[s] = bars[s].floor() as u32;
            up.least[s] = bars[s].ceil() as u32;
            self.push(down, least, parts);
            self.push(up, least, parts);
            return;
        }
        let whole: Vec<u32> = bars[..kinds].iter().map(|b| b.round() as u32).collect();
        self.dive(&self.p.demand, &whole, relaxed);
        if self.best_cost <= least {
            return;
        }
        // What is not settled by these bars has more of some kind, and not more of the kinds before it.
        for s in (0..kinds).filter(|&s| whole[s] < window.most[s]) {
            let mut more = window.clone();
            more.least[s] = more.least[s].max(whole[s] + 1);
            (0..s).for_each(|t| more.most[t] = whole[t]);
            if more.least.iter().zip(&more.most).all(|(a, b)| a <= b) {
                self.push(more, least, parts);
            }
        }
        parts.push(least, Part::Bars(whole, INNER_NODES));
    }

    /// Keeps a part, if there can be a better list in it.
    fn push(&mut self, window: Window, least: i64, parts: &mut Parts) {
        let relaxed = self.relax(&self.p.demand, &window);
        let cost = self.round_up(relaxed.bound).max(least);
        if cost < self.best_cost {
            parts.push(cost, Part::Open(window, relaxed));
        }
    }

    /// Looks for a better list with these bars at most, for so many nodes; true where all were looked at.
    fn fill_bars(&mut self, bars: &[u32], nodes: usize) -> bool {
        self.seen.clear();
        self.cut_short = false;
        self.stop_at = (self.nodes + nodes).min(self.effort.nodes);
        self.descend(&self.p.demand, bars, 0, &mut vec![]);
        !self.cut_short
    }

    /// Takes the whole part of the relaxation, solves the rest again, and so on to a list.
    fn dive(&mut self, left: &[u16], supply: &[u32], relaxed: &Relaxed) {
        let (mut left, mut supply, mut relaxed) = (left.to_vec(), supply.to_vec(), relaxed.clone());
        let (mut list, mut spent) = (vec![], 0);
        while left.iter().any(|&n| n > 0) {
            let mut used = relaxed.used.clone();
            used.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
            let mut taken = 0;
            for (k, (i, x)) in used.into_iter().enumerate() {
                let times = (x + 1e-6).floor() as usize;
                let times = if k == 0 { times.max(1) } else { times };
                taken += self.take_bars(i, times, &mut left, &mut supply, &mut list);
            }
            spent = list.iter().map(|c: &Column| self.p.cost[c.stock]).sum::<i64>().max(spent);
            if let Some(rest) = greedy(self.p, &left, &supply) {
                self.offer(list.iter().cloned().chain(rest).collect());
            }
            if taken == 0 || left.iter().all(|&n| n == 0) {
                return;
            }
            relaxed = self.relax_up_to(&left, &supply);
            if spent.saturating_add(self.round_up(relaxed.bound)) >= self.best_cost {
                return;
            }
        }
    }

    /// Takes a filling so often, as far as pieces and bars are left; gives how many bars.
    fn take_bars(&self, i: usize, times: usize, left: &mut [u16], supply: &mut [u32], list: &mut Vec<Column>) -> usize {
        let column = &self.pool[i];
        for n in 0..times {
            let counts: Vec<u16> = column.counts.iter().zip(left.iter()).map(|(c, l)| *c.min(l)).collect();
            if supply[column.stock] == 0 || counts.iter().all(|&c| c == 0) {
                return n;
            }
            left.iter_mut().zip(&counts).for_each(|(l, c)| *l -= c);
            take(&mut supply[column.stock], 1);
            list.push(Column { stock: column.stock, counts });
        }
        times
    }

    /// Takes the whole part of the relaxation, rounded up from six tenths, and writes the rest at once.
    fn round(&mut self, left: &[u16], supply: &[u32], relaxed: &Relaxed, chosen: &[Column]) {
        let mut used = relaxed.used.clone();
        used.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        for up in [1e-6, 0.4] {
            let (mut left, mut supply, mut list) = (left.to_vec(), supply.to_vec(), chosen.to_vec());
            for &(i, x) in &used {
                self.take_bars(i, (x + up).floor() as usize, &mut left, &mut supply, &mut list);
            }
            if let Some(rest) = greedy(self.p, &left, &supply) {
                list.extend(rest);
                self.offer(list);
            }
        }
    }

    fn stops(&mut self) -> bool {
        self.cut_short |= self.nodes >= self.stop_at || self.fillings >= self.effort.fillings;
        self.cut_short
    }

    /// Solves what is left after the bars in `chosen`, which cost `spent`.
    fn descend(&mut self, left: &[u16], supply: &[u32], spent: i64, chosen: &mut Vec<Column>) {
        if left.iter().all(|&n| n == 0) {
            self.offer(chosen.clone());
            return;
        }
        let key = (left.to_vec(), supply.to_vec());
        if self.seen.get(&key).is_some_and(|&before| before <= spent) || self.stops() {
            return;
        }
        self.seen.insert(key, spent);
        let relaxed = self.relax_up_to(left, supply);
        if spent.saturating_add(self.round_up(relaxed.bound)) >= self.best_cost {
            return;
        }
        self.round(left, supply, &relaxed, chosen);
        for (reduced, column) in self.fillings(left, supply, spent, &relaxed) {
            if spent.saturating_add(self.round_up(relaxed.bound + reduced)) >= self.best_cost {
                continue;
            }
            if self.stops() {
                return;
            }
            let rest: Vec<u16> = left.iter().zip(&column.counts).map(|(l, c)| l - c).collect();
            let mut bars = supply.to_vec();
            take(&mut bars[column.stock], 1);
            let cost = self.p.cost[column.stock];
            chosen.push(column);
            self.descend(&rest, &bars, spent + cost, chosen);
            chosen.pop();
        }
    }

    /// Every filling with the longest piece left whose reduced cost leaves room under the best list, best first.
    fn fillings(&mut self, left: &[u16], supply: &[u32], spent: i64, relaxed: &Relaxed) -> Vec<(f64, Column)> {
        let Some(longest) = left.iter().position(|&n| n > 0) else { return vec![] };
        let n = left.len();
        let mut density = vec![0.0; n + 1];
        for i in (0..n).rev() {
            let here = if left[i] > 0 { relaxed.value[i] / self.p.weight[i] as f64 } else { 0.0 };
            density[i] = if density[i + 1] > here { density[i + 1] } else { here };
        }
        let room = (self.best_cost - self.p.step - spent) as f64 / self.dearest * (1.0 + 1e-9) + 1e-9 - relaxed.bound;
        let mut found = vec![];
        for s in (0..self.p.space.len()).filter(|&s| supply[s] > 0 && self.p.weight[longest] <= self.p.space[s]) {
            let price = self.p.cost[s] as f64 / self.dearest + relaxed.rent[s];
            let mut fill = Filling {
                p: self.p,
                left,
                supply,
                stock: s,
                longest,
                value: &relaxed.value,
                density: &density,
                price,
                least: price - room,
                counts: vec![0; n],
                steps: self.effort.fillings.saturating_sub(self.fillings),
                found: &mut found,
            };
            let before = fill.steps;
            fill.fill(longest, self.p.space[s], 0.0);
            let after = fill.steps;
            self.fillings += before - after;
            self.cut_short |= after == 0;
        }
        let often = |c: &Column| relaxed.used.iter().find(|(i, _)| self.pool[*i] == *c).map_or(0.0, |u| u.1);
        let mut ranked: Vec<(i64, f64, f64, Column)> =
            found.into_iter().map(|(d, c)| ((d * 1e7).round() as i64, often(&c), d, c)).collect();
        ranked.sort_by(|a, b| a.0.cmp(&b.0).then(b.1.total_cmp(&a.1)).then(b.3.counts.cmp(&a.3.counts)));
        ranked.into_iter().map(|(_, _, d, c)| (d, c)).collect()
    }
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
    steps: usize,
    found: &'a mut Vec<(f64, Column)>,
}

impl Filling<'_> {
    fn fill(&mut self, item: usize, space: i64, worth: f64) {
        if self.steps == 0 {
            return;
        }
        self.steps -= 1;
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
