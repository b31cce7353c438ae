//! What list does a person write at once: longest first, on the bar that is filled for least?

use super::integers::{Column, ENOUGH, Problem};

/// Bars for what is left, or `None` where the supply runs out.
pub(super) fn greedy(p: &Problem, left: &[u16], supply: &[u32]) -> Option<Vec<Column>> {
    let (mut left, mut supply) = (left.to_vec(), supply.to_vec());
    let mut columns = vec![];
    while left.iter().any(|&n| n > 0) {
        let column = best_filling(p, &left, &supply)?;
        let most = column.counts.iter().zip(&left).filter(|(c, _)| **c > 0).map(|(c, l)| l / c).min().unwrap_or(1);
        let times = u32::from(most).min(supply[column.stock]);
        for (l, c) in left.iter_mut().zip(&column.counts) {
            *l -= c * times as u16;
        }
        take(&mut supply[column.stock], times);
        columns.extend(std::iter::repeat_n(column, times as usize));
    }
    Some(columns)
}

/// Takes so many bars out of a supply that may have no limit.
pub(super) fn take(supply: &mut u32, times: u32) {
    if *supply != ENOUGH {
        *supply -= times;
    }
}

/// The bar whose first-fit filling, beginning with the longest piece left, costs least for what it holds.
fn best_filling(p: &Problem, left: &[u16], supply: &[u32]) -> Option<Column> {
    let longest = left.iter().position(|&n| n > 0)?;
    let stocks = (0..p.space.len()).filter(|&s| supply[s] > 0 && p.weight[longest] <= p.space[s]);
    let filled = stocks.map(|s| {
        let mut space = p.space[s];
        let counts: Vec<u16> = (0..left.len())
            .map(|i| {
                let n = (space / p.weight[i]).min(i64::from(left[i]));
                space -= n * p.weight[i];
                n as u16
            })
            .collect();
        (p.cost[s] as f64 / (p.space[s] - space) as f64, Column { stock: s, counts })
    });
    filled.min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1))).map(|(_, c)| c)
}
