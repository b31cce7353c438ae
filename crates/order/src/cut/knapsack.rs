//! Which filling of a bar is worth more than the bar costs, at the going value of the pieces?
//!
//! Lists of undominated fillings (none both shorter and worth more), grown piece by piece: Nemhauser and Ullmann (1969).
//! Fillings that cannot come to be worth more than any bar costs are dropped on the way.

use super::integers::{Column, Problem};

#[derive(Clone, Copy)]
struct State {
    weight: i64,
    value: f64,
    before: u32,
    item: u16,
}

/// The most valuable filling of every kind of bar that is worth more than its `threshold`, at most `left` of each
/// piece. Bars with an infinite threshold are not filled. `None` where the steps do not suffice.
pub(super) fn worthwhile(
    p: &Problem,
    value: &[f64],
    left: &[u16],
    threshold: &[f64],
    steps: &mut u64,
) -> Option<Vec<Column>> {
    let mut items: Vec<usize> = (0..value.len()).filter(|&i| value[i] > 0.0 && left[i] > 0).collect();
    let ratio = |i: usize| value[i] / p.weight[i] as f64;
    items.sort_by(|&a, &b| ratio(b).total_cmp(&ratio(a)).then(a.cmp(&b)));
    let bars: Vec<(i64, f64)> =
        p.space.iter().zip(threshold).filter(|(_, t)| t.is_finite()).map(|(s, t)| (*s, *t)).collect();
    let Some(most) = bars.iter().map(|b| b.0).max() else { return Some(vec![]) };
    let mut states = vec![State { weight: 0, value: 0.0, before: 0, item: 0 }];
    let mut front: Vec<u32> = vec![0];
    for &i in &items {
        let r = ratio(i);
        let hopeful = |w: i64, v: f64| bars.iter().any(|&(space, t)| w <= space && v + r * (space - w) as f64 > t);
        front.retain(|&k| hopeful(states[k as usize].weight, states[k as usize].value));
        let mut last = front.clone();
        for _ in 0..i64::from(left[i]).min(most / p.weight[i]) {
            let mut grown = vec![];
            for &k in &last {
                let (w, v) = (states[k as usize].weight + p.weight[i], states[k as usize].value + value[i]);
                if hopeful(w, v) {
                    grown.push(states.len() as u32);
                    states.push(State { weight: w, value: v, before: k, item: i as u16 });
                }
            }
            if grown.is_empty() {
                break;
            }
            *steps = steps.saturating_sub(4 * (front.len() + grown.len()) as u64);
            if *steps == 0 {
                return None;
            }
            front = merged(&states, &front, &grown);
            last = grown;
        }
    }
    let best = |s: usize| {
        let k = front.iter().rev().find(|&&k| states[k as usize].weight <= p.space[s])?;
        (states[*k as usize].value > threshold[s]).then(|| column(s, &states, *k, value.len()))
    };
    Some((0..p.space.len()).filter(|&s| threshold[s].is_finite()).filter_map(best).collect())
}

/// Two lists by growing weight become one, without what is dominated.
fn merged(states: &[State], a: &[u32], b: &[u32]) -> Vec<u32> {
    let mut out: Vec<u32> = Vec::with_capacity(a.len() + b.len());
    let (mut i, mut j, mut best) = (0, 0, f64::NEG_INFINITY);
    while i < a.len() || j < b.len() {
        let from_a = match (a.get(i), b.get(j)) {
            (Some(&x), Some(&y)) => {
                let (x, y) = (&states[x as usize], &states[y as usize]);
                x.weight < y.weight || (x.weight == y.weight && x.value >= y.value)
            }
            (Some(_), None) => true,
            _ => false,
        };
        let k = if from_a { a[i] } else { b[j] };
        if from_a {
            i += 1;
        } else {
            j += 1;
        }
        if states[k as usize].value > best {
            best = states[k as usize].value;
            out.push(k);
        }
    }
    out
}

fn column(stock: usize, states: &[State], mut k: u32, items: usize) -> Column {
    let mut counts = vec![0u16; items];
    while k != 0 {
        let s = states[k as usize];
        counts[s.item as usize] += 1;
        k = s.before;
    }
    Column { stock, counts }
}
