//! What do the bars cost at least, if they could be bought in fractions? The linear program over all fillings.
//!
//! A small dense revised simplex with column generation. Whatever its rounding does, the bound stays a bound: it is
//! taken from the dual values after an exact search has found no filling worth more than its bar.

use super::{
    integers::{Column, ENOUGH, Problem},
    knapsack::worthwhile,
};

/// How many bars of each kind may be used; the last figures are for all kinds together.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Window {
    /// At least so many.
    pub least: Vec<u32>,
    /// At most so many; `ENOUGH` for no limit.
    pub most: Vec<u32>,
}

impl Window {
    /// At most so many of each kind.
    pub fn up_to(supply: &[u32]) -> Window {
        let most = supply.iter().copied().chain([ENOUGH]).collect();
        Window { least: vec![0; supply.len() + 1], most }
    }
}

/// The solved relaxation. Costs are in units of the dearest bar.
#[derive(Debug, Clone)]
pub(super) struct Relaxed {
    /// No list for what is left costs less; infinite where there is none.
    pub bound: f64,
    /// Value of one piece of each kind.
    pub value: Vec<f64>,
    /// What a bar of each kind must earn above its cost (below it, where at least so many must be used).
    pub rent: Vec<f64>,
    /// Fillings in use: number in the pool, how often.
    pub used: Vec<(usize, f64)>,
}

const EPS: f64 = 1e-9;
/// A piece is unserved when more than this part of it is.
const UNSERVED: f64 = 1e-6;
const MOST_PIVOTS: usize = 20_000;

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Variable {
    Unserved(usize),
    Surplus(usize),
    Slack(usize),
    Filling(usize),
}

/// Rows of the program: pieces of a kind, at least so many; bars of a kind, at most or at least so many.
struct Rows {
    items: Vec<usize>,
    /// Rows of the second sort.
    at_most: std::ops::Range<usize>,
    amount: Vec<f64>,
    /// Rows in which a bar of each kind counts.
    of_bar: Vec<Vec<usize>>,
}

struct Basis {
    rows: usize,
    inverse: Vec<f64>,
    amount: Vec<f64>,
    variable: Vec<Variable>,
    cost: Vec<f64>,
}

/// The dearest bar, in which the relaxation counts.
pub(super) fn dearest(p: &Problem) -> f64 {
    p.cost.iter().copied().max().unwrap_or(1).max(1) as f64
}

/// Solves the relaxation for what is left of the pieces; new fillings are added to the pool. `steps` counts down; where
/// it comes to zero, the bound is nothing.
pub(super) fn relax(p: &Problem, left: &[u16], window: &Window, pool: &mut Vec<Column>, steps: &mut u64) -> Relaxed {
    let dear = dearest(p);
    let cost: Vec<f64> = p.cost.iter().map(|&c| c as f64 / dear).collect();
    let pieces: f64 = left.iter().map(|&n| f64::from(n)).sum();
    let (mut found, unserved) = solve(p, left, window, pool, (&cost, pieces + 2.0), steps);
    if unserved > UNSERVED {
        // Is there no list at all? The least that must stay unserved, whatever it costs, says so.
        let (least, _) = solve(p, left, window, pool, (&vec![0.0; cost.len()], 1.0), steps);
        if least.bound > UNSERVED {
            found.bound = f64::INFINITY;
        }
    }
    found
}

/// The program with these costs of the bars and of a piece unserved; gives also how much stays unserved.
fn solve(
    p: &Problem,
    left: &[u16],
    window: &Window,
    pool: &mut Vec<Column>,
    (cost, unserved): (&[f64], f64),
    steps: &mut u64,
) -> (Relaxed, f64) {
    let rows = Rows::new(left, window);
    let mut basis = Basis::new(&rows, unserved);
    let proper = |c: &Column| window.most[c.stock] > 0 && c.counts.iter().zip(left).all(|(a, l)| a <= l);
    let mut open = Table::new(basis.rows);
    (0..pool.len()).rev().filter(|&i| proper(&pool[i])).for_each(|i| open.add(i, &rows, pool, cost));
    let (mut still, mut converged) = (0, false);
    for _ in 0..MOST_PIVOTS {
        *steps = steps.saturating_sub((basis.rows * (basis.rows + 16)) as u64);
        if *steps == 0 {
            break;
        }
        let dual = basis.dual();
        let cautious = still > 2 * basis.rows + 10;
        if let Some((v, at)) = open.entering(&rows, &dual, cautious) {
            let entries = at.map_or_else(|| rows.spare(v), |k| open.column(k).to_vec());
            let price = at.map_or(0.0, |k| open.cost[k]);
            still = if basis.enter(v, &entries, price) { 0 } else { still + 1 };
            continue;
        }
        let (value, rent) = rows.spread(p, &dual);
        let threshold: Vec<f64> = (0..cost.len())
            .map(|s| if window.most[s] > 0 { (cost[s] + rent[s]).max(0.0) + EPS } else { f64::INFINITY })
            .collect();
        let Some(mut fresh) = worthwhile(p, &value, left, &threshold, steps) else { break };
        fresh.retain(|c| !open.number.iter().any(|&i| pool[i] == *c));
        if fresh.is_empty() {
            converged = true;
            break;
        }
        for c in fresh {
            pool.push(c);
            open.add(pool.len() - 1, &rows, pool, cost);
        }
    }
    finish(p, &rows, &basis, left, converged)
}

fn finish(p: &Problem, rows: &Rows, basis: &Basis, left: &[u16], converged: bool) -> (Relaxed, f64) {
    let dual = basis.dual();
    let (value, rent) = rows.spread(p, &dual);
    // Signs as the rows ask for; what rounding left on the wrong side is taken as nothing.
    let worth: f64 = rows.clean(&dual).iter().zip(&rows.amount).map(|(d, a)| d * a).sum();
    let pieces: f64 = left.iter().map(|&n| f64::from(n)).sum();
    let (mut used, mut unserved) = (vec![], 0.0);
    for (v, &x) in basis.variable.iter().zip(&basis.amount) {
        match v {
            Variable::Filling(i) if x > EPS => used.push((*i, x)),
            Variable::Unserved(_) => unserved += x,
            _ => {}
        }
    }
    // Each of at most `pieces` bars in use may be worth EPS more than it costs, and the rounding again.
    let bound = if converged { (worth - 2.0 * EPS * (pieces + 1.0)).max(0.0) } else { 0.0 };
    (Relaxed { bound, value, rent, used }, unserved)
}

impl Rows {
    fn new(left: &[u16], window: &Window) -> Rows {
        let items: Vec<usize> = (0..left.len()).filter(|&i| left[i] > 0).collect();
        let kinds = window.most.len() - 1;
        let at_most: Vec<usize> = (0..=kinds).filter(|&s| window.most[s] != ENOUGH).collect();
        let at_least: Vec<usize> = (0..=kinds).filter(|&s| window.least[s] > 0).collect();
        let amount = items.iter().map(|&i| f64::from(left[i]));
        let amount = amount.chain(at_most.iter().map(|&s| f64::from(window.most[s])));
        let amount = amount.chain(at_least.iter().map(|&s| f64::from(window.least[s]))).collect();
        let mut of_bar = vec![vec![]; kinds];
        for (r, &s) in at_most.iter().chain(&at_least).enumerate() {
            let counting = if s == kinds { 0..kinds } else { s..s + 1 };
            of_bar[counting].iter_mut().for_each(|rows: &mut Vec<usize>| rows.push(items.len() + r));
        }
        Rows { at_most: items.len()..items.len() + at_most.len(), items, amount, of_bar }
    }
    fn is_at_most(&self, row: usize) -> bool {
        self.at_most.contains(&row)
    }
    /// Dual values without what rounding left on the wrong side of zero.
    fn clean(&self, dual: &[f64]) -> Vec<f64> {
        let right = |(r, &d): (usize, &f64)| if self.is_at_most(r) == (d < 0.0) { d } else { 0.0 };
        dual.iter().enumerate().map(right).collect()
    }
    /// By kind of piece the value, by kind of bar the rent.
    fn spread(&self, p: &Problem, dual: &[f64]) -> (Vec<f64>, Vec<f64>) {
        let dual = self.clean(dual);
        let mut value = vec![0.0; p.weight.len()];
        self.items.iter().zip(&dual).for_each(|(&i, &d)| value[i] = d);
        let rent = self.of_bar.iter().map(|rows| -rows.iter().map(|&r| dual[r]).sum::<f64>()).collect();
        (value, rent)
    }
    /// The column of a variable that is not a filling.
    fn spare(&self, v: Variable) -> Vec<f64> {
        let mut column = vec![0.0; self.amount.len()];
        match v {
            Variable::Surplus(r) => column[r] = -1.0,
            Variable::Unserved(r) | Variable::Slack(r) => column[r] = 1.0,
            Variable::Filling(_) => {}
        }
        column
    }
}

/// The fillings in play, written out row by row.
struct Table {
    rows: usize,
    number: Vec<usize>,
    cost: Vec<f64>,
    entry: Vec<f64>,
    next: usize,
}

/// So many fillings are looked at before the best of them is taken.
const BLOCK: usize = 48;

impl Table {
    fn new(rows: usize) -> Table {
        Table { rows, number: vec![], cost: vec![], entry: vec![], next: 0 }
    }
    fn add(&mut self, number: usize, rows: &Rows, pool: &[Column], cost: &[f64]) {
        let c = &pool[number];
        let start = self.entry.len();
        self.entry.resize(start + self.rows, 0.0);
        rows.items.iter().enumerate().for_each(|(r, &i)| self.entry[start + r] = f64::from(c.counts[i]));
        rows.of_bar[c.stock].iter().for_each(|&r| self.entry[start + r] = 1.0);
        self.number.push(number);
        self.cost.push(cost[c.stock]);
    }
    fn column(&self, k: usize) -> &[f64] {
        &self.entry[k * self.rows..(k + 1) * self.rows]
    }
    /// A variable that lowers the cost, and its place in the table if it is a filling: the best of the next block that
    /// has one, or the very first where `first` (against cycling).
    fn entering(&mut self, rows: &Rows, dual: &[f64], first: bool) -> Option<(Variable, Option<usize>)> {
        let mut best = (-EPS, None);
        for (r, &d) in dual.iter().enumerate() {
            let (v, reduced) = if rows.is_at_most(r) { (Variable::Slack(r), -d) } else { (Variable::Surplus(r), d) };
            if reduced < best.0 {
                best = (reduced, Some((v, None)));
                if first {
                    return best.1;
                }
            }
        }
        let n = self.number.len();
        let start = if first { 0 } else { self.next };
        for seen in 0..n {
            let k = (start + seen) % n;
            let worth: f64 = self.column(k).iter().zip(dual).map(|(a, d)| a * d).sum();
            let reduced = self.cost[k] - worth;
            if reduced < best.0 {
                best = (reduced, Some((Variable::Filling(self.number[k]), Some(k))));
                if first {
                    break;
                }
            }
            if seen % BLOCK == BLOCK - 1 && best.1.is_some() {
                self.next = (k + 1) % n;
                break;
            }
        }
        best.1
    }
}

impl Basis {
    /// Nothing is served, at a cost above any list's; no bar is used.
    fn new(rows: &Rows, unserved: f64) -> Basis {
        let m = rows.amount.len();
        let mut inverse = vec![0.0; m * m];
        (0..m).for_each(|r| inverse[r * m + r] = 1.0);
        let start = |r| if rows.is_at_most(r) { (Variable::Slack(r), 0.0) } else { (Variable::Unserved(r), unserved) };
        let (variable, cost) = (0..m).map(start).unzip();
        Basis { rows: m, inverse, amount: rows.amount.clone(), variable, cost }
    }
    fn dual(&self) -> Vec<f64> {
        let mut dual = vec![0.0; self.rows];
        for (row, &c) in self.cost.iter().enumerate().filter(|(_, c)| **c != 0.0) {
            let line = &self.inverse[row * self.rows..(row + 1) * self.rows];
            dual.iter_mut().zip(line).for_each(|(d, x)| *d += c * x);
        }
        dual
    }
    /// Brings a variable in; true where the cost fell by it.
    fn enter(&mut self, v: Variable, column: &[f64], cost: f64) -> bool {
        let m = self.rows;
        let line = |r: usize| self.inverse[r * m..(r + 1) * m].iter();
        let rate: Vec<f64> = (0..m).map(|r| line(r).zip(column).map(|(x, a)| x * a).sum()).collect();
        let ratio = |r: usize| self.amount[r] / rate[r];
        let rising = (0..m).filter(|&r| rate[r] > EPS);
        let Some(out) = rising.min_by(|&a, &b| {
            let (x, y) = (ratio(a), ratio(b));
            if (x - y).abs() <= EPS { self.variable[a].cmp(&self.variable[b]) } else { x.total_cmp(&y) }
        }) else {
            return false;
        };
        let step = ratio(out).max(0.0);
        let pivot = rate[out];
        (0..m).for_each(|k| self.inverse[out * m + k] /= pivot);
        for r in (0..m).filter(|&r| r != out && rate[r] != 0.0) {
            for k in 0..m {
                self.inverse[r * m + k] -= rate[r] * self.inverse[out * m + k];
            }
            self.amount[r] = (self.amount[r] - rate[r] * step).max(0.0);
        }
        self.amount[out] = step;
        self.variable[out] = v;
        self.cost[out] = cost;
        step > EPS
    }
}
