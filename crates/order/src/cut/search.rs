//! Is there a cheaper list? Numbers of bars, then single bars, are fixed until the bound says no.

use std::{cmp::Reverse, collections::BTreeMap};

use super::{
    Effort, MOST_LENGTHS,
    filling::fillings,
    greedy::{greedy, take},
    integers::{Column, Problem},
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
    /// Steps that are left.
    steps: u64,
    effort: Effort,
    /// What the inner search looks for costs at most this.
    aim: i64,
    /// Pieces that these bars do not hold for so much, all ways having been tried.
    hopeless: BTreeMap<(Vec<u16>, Vec<u32>), i64>,
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
    let mut bound = s.round_up(by_volume(p) / s.dearest);
    if bound < s.best_cost && p.weight.len() <= MOST_LENGTHS {
        bound = s.look(bound);
    }
    let mut columns = s.best?;
    columns.sort();
    let bound = bound.min(s.best_cost);
    let cheapest = bound / p.per_price == s.best_cost / p.per_price;
    Some(Found { columns, bound, cheapest, complete: bound == s.best_cost, nodes: s.nodes })
}

/// What the pieces cost, if every bar were full of them and all bars the cheapest for their length.
fn by_volume(p: &Problem) -> f64 {
    let all: f64 = p.weight.iter().zip(&p.demand).map(|(&w, &d)| w as f64 * f64::from(d)).sum();
    let dearest = f64::INFINITY;
    let rate = p.space.iter().zip(&p.cost).map(|(&s, &c)| c as f64 / s as f64).fold(dearest, f64::min);
    if all > 0.0 { all * rate } else { 0.0 }
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
            steps: effort.steps,
            effort,
            aim: 0,
            hopeless: BTreeMap::new(),
            cut_short: false,
            stop_at: 0,
        }
    }

    /// Looks for better lists; gives what none can cost less than, `bound` at least.
    fn look(&mut self, mut bound: i64) -> i64 {
        let (demand, supply) = (&self.p.demand, &self.p.supply);
        let window = Window::up_to(supply);
        let root = self.relax(demand, &window);
        bound = bound.max(self.round_up(root.bound));
        self.dive(demand, supply, &root);
        if bound >= self.best_cost || self.fill_bars(supply, FIRST_NODES) {
            return self.best_cost;
        }
        let mut parts = Parts::default();
        parts.push(bound, Part::Open(window, root));
        while let Some((least, part)) = parts.pop() {
            if least >= self.best_cost || self.is_spent() {
                return least;
            }
            match part {
                Part::Open(window, relaxed) => self.split(window, &relaxed, least, &mut parts),
                Part::Bars(bars, nodes) => {
                    if !self.fill_bars(&bars, nodes) {
                        parts.push(least, Part::Bars(bars, nodes * 4));
                    }
                }
            }
            bound = parts.least().unwrap_or(self.best_cost);
        }
        bound
    }

    fn relax(&mut self, left: &[u16], window: &Window) -> Relaxed {
        self.nodes += 1;
        relax(self.p, left, window, &mut self.pool, &mut self.steps)
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
        self.nodes >= self.effort.nodes || self.steps == 0
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
        let all = bars.iter().zip(&self.p.cost).map(|(&n, &c)| i64::from(n).saturating_mul(c));
        let all = all.fold(0, i64::saturating_add);
        self.aim = all.min(self.best_cost - self.p.step);
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
                self.aim = self.aim.min(self.best_cost - self.p.step);
            }
        }
    }

    fn stops(&mut self) -> bool {
        self.cut_short |= self.nodes >= self.stop_at || self.steps == 0;
        self.cut_short
    }

    /// Solves what is left after the bars in `chosen`, which cost `spent`; passes over lists that cost more than `aim`.
    fn descend(&mut self, left: &[u16], supply: &[u32], spent: i64, chosen: &mut Vec<Column>) {
        if left.iter().all(|&n| n == 0) {
            self.offer(chosen.clone());
            self.aim = self.aim.min(self.best_cost - self.p.step);
            return;
        }
        let key = (left.to_vec(), supply.to_vec());
        if self.hopeless.get(&key).is_some_and(|&budget| budget >= self.aim - spent) || self.stops() {
            return;
        }
        let relaxed = self.relax_up_to(left, supply);
        if spent.saturating_add(self.round_up(relaxed.bound)) <= self.aim {
            self.try_fillings(left, supply, spent, &relaxed, chosen);
        }
        if !self.cut_short {
            let budget = self.aim - spent;
            self.hopeless.entry(key).and_modify(|b| *b = budget.max(*b)).or_insert(budget);
        }
    }

    fn try_fillings(&mut self, left: &[u16], supply: &[u32], spent: i64, relaxed: &Relaxed, chosen: &mut Vec<Column>) {
        self.round(left, supply, relaxed, chosen);
        for (reduced, column) in self.fillings(left, supply, spent, relaxed) {
            if spent.saturating_add(self.round_up(relaxed.bound + reduced)) > self.aim {
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

    /// Ways of filling the next bar, the most promising first.
    fn fillings(&mut self, left: &[u16], supply: &[u32], spent: i64, relaxed: &Relaxed) -> Vec<(f64, Column)> {
        let room = (self.aim - spent) as f64 / self.dearest * (1.0 + 1e-9) + 1e-9 - relaxed.bound;
        let found = fillings(self.p, left, supply, relaxed, room, &mut self.steps);
        self.cut_short |= self.steps == 0;
        let often = |c: &Column| relaxed.used.iter().find(|(i, _)| self.pool[*i] == *c).map_or(0.0, |u| u.1);
        let mut ranked: Vec<(i64, f64, f64, Column)> =
            found.into_iter().map(|(d, c)| ((d * 1e7).round() as i64, often(&c), d, c)).collect();
        ranked.sort_by(|a, b| a.0.cmp(&b.0).then(b.1.total_cmp(&a.1)).then(b.3.counts.cmp(&a.3.counts)));
        ranked.into_iter().map(|(_, _, d, c)| (d, c)).collect()
    }
}
