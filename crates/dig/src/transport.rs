//! Who fills what with the least work? The transport problem, solved exactly, with a proof.

/// A solved transport problem.
#[derive(Debug, Clone, PartialEq)]
pub struct Transported {
    /// Amount from each source (row) to each sink (column).
    pub amounts: Vec<Vec<f64>>,
    /// Sum of amounts times costs.
    pub cost: f64,
    /// A cost below which no way of carrying can come: the value of the dual problem at the prices found. Equal to `cost`
    /// (to rounding) is the proof that nothing is cheaper.
    pub bound: f64,
}

/// Why it cannot be solved.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NoTransport {
    /// What is there and what is wanted differ.
    #[error("{there} is there and {wanted} is wanted; they must be equal (add a heap, a tip or a delivery)")]
    Unequal {
        /// Sum of the sources.
        there: f64,
        /// Sum of the sinks.
        wanted: f64,
    },
    /// A figure that is no amount or no cost.
    #[error("amounts must be ordinary numbers from 0 on, costs ordinary numbers, one for each pair")]
    Figures,
}

/// Amounts smaller than this share of all are nothing.
const NOTHING: f64 = 1e-12;

/// Carries `supply` to `demand` at the least cost, `cost[i][j]` for one from source i to sink j. The method is that of
/// successive shortest paths with potentials: each round finds the cheapest way (also back along what is carried already)
/// from a source with something left to a sink that wants more, and carries as much as fits. It ends after at most a few
/// rounds for each pair. The potentials are the prices of the dual problem, from which the bound follows (Ahuja, Magnanti
/// and Orlin, Network Flows (1993), ch. 9.7).
///
/// # Errors
/// [`NoTransport`].
///
/// ```
/// use groundhold_dig::transport;
/// let t = transport(&[20.0, 30.0], &[25.0, 25.0], &[vec![8.0, 6.0], vec![5.0, 4.0]]).unwrap();
/// assert_eq!(t.amounts, [vec![0.0, 20.0], vec![25.0, 5.0]]);
/// assert_eq!((t.cost, t.bound), (265.0, 265.0));
/// ```
pub fn transport(supply: &[f64], demand: &[f64], cost: &[Vec<f64>]) -> Result<Transported, NoTransport> {
    let amount = |v: &f64| v.is_finite() && *v >= 0.0;
    let square = cost.len() == supply.len() && cost.iter().all(|r| r.len() == demand.len());
    if !square || !supply.iter().chain(demand).all(amount) || !cost.iter().flatten().all(|c| c.is_finite()) {
        return Err(NoTransport::Figures);
    }
    let (there, wanted) = (supply.iter().sum::<f64>(), demand.iter().sum::<f64>());
    if (there - wanted).abs() > 1e-9 * there.max(wanted).max(1e-9) {
        return Err(NoTransport::Unequal { there, wanted });
    }
    let mut net = Net::new(supply, demand, cost, NOTHING * there.max(1.0));
    while net.carry_once() {}
    let amounts = net.flow;
    let paid = |i: usize, j: usize| amounts[i][j] * cost[i][j];
    let total = (0..supply.len()).map(|i| (0..demand.len()).map(|j| paid(i, j)).sum::<f64>()).sum();
    // Prices: v_j from the potentials, u_i as dear as every pair allows, so that u_i + v_j ≤ c_ij holds by construction.
    let v: Vec<f64> = net.sink_price;
    let u = cost.iter().map(|row| row.iter().zip(&v).map(|(c, v)| c - v).fold(f64::INFINITY, f64::min));
    let sources: f64 = u.zip(supply).map(|(u, s)| if *s > 0.0 { u * s } else { 0.0 }).sum();
    let bound = sources + v.iter().zip(demand).map(|(v, d)| v * d).sum::<f64>();
    Ok(Transported { amounts, cost: total, bound })
}

struct Net<'a> {
    cost: &'a [Vec<f64>],
    left: Vec<f64>,
    wanted: Vec<f64>,
    flow: Vec<Vec<f64>>,
    source_price: Vec<f64>,
    sink_price: Vec<f64>,
    nothing: f64,
}

/// Distances of one round: to sources and sinks, and from where each was reached.
struct Round {
    source: Vec<f64>,
    sink: Vec<f64>,
    /// Sink from which a source was reached, back along what is carried.
    back: Vec<Option<usize>>,
    /// Source from which a sink was reached.
    from: Vec<usize>,
}

impl<'a> Net<'a> {
    fn new(supply: &[f64], demand: &[f64], cost: &'a [Vec<f64>], nothing: f64) -> Net<'a> {
        // Costs below nothing are made good by the first prices.
        let least = |j: usize| cost.iter().map(|r| r[j]).fold(f64::INFINITY, f64::min);
        let sink_price = (0..demand.len()).map(|j| if cost.is_empty() { 0.0 } else { least(j) }).collect();
        Net {
            cost,
            left: supply.to_vec(),
            wanted: demand.to_vec(),
            flow: vec![vec![0.0; demand.len()]; supply.len()],
            source_price: vec![0.0; supply.len()],
            sink_price,
            nothing,
        }
    }

    /// Cost of a pair at the prices, never below nothing but for rounding.
    fn reduced(&self, i: usize, j: usize) -> f64 {
        (self.cost[i][j] + self.source_price[i] - self.sink_price[j]).max(0.0)
    }

    /// Shortest ways from every source that has something left (Dijkstra, without a heap: the nets are small).
    fn round(&self) -> Round {
        let (m, n) = (self.left.len(), self.wanted.len());
        let start = |i: usize| if self.left[i] > self.nothing { 0.0 } else { f64::INFINITY };
        let mut r = Round {
            source: (0..m).map(start).collect(),
            sink: vec![f64::INFINITY; n],
            back: vec![None; m],
            from: vec![0; n],
        };
        let (mut done_source, mut done_sink) = (vec![false; m], vec![false; n]);
        loop {
            let open_source = (0..m).filter(|i| !done_source[*i] && r.source[*i].is_finite());
            let near_source = open_source.min_by(|a, b| r.source[*a].total_cmp(&r.source[*b]));
            let open_sink = (0..n).filter(|j| !done_sink[*j] && r.sink[*j].is_finite());
            let near_sink = open_sink.min_by(|a, b| r.sink[*a].total_cmp(&r.sink[*b]));
            let source_first = match (near_source, near_sink) {
                (Some(i), Some(j)) => r.source[i] <= r.sink[j],
                (Some(_), None) => true,
                (None, Some(_)) => false,
                (None, None) => return r,
            };
            if let (true, Some(i)) = (source_first, near_source) {
                done_source[i] = true;
                for j in 0..n {
                    let d = r.source[i] + self.reduced(i, j);
                    if d < r.sink[j] {
                        (r.sink[j], r.from[j]) = (d, i);
                    }
                }
            } else if let Some(j) = near_sink {
                done_sink[j] = true;
                for i in (0..m).filter(|i| self.flow[*i][j] > self.nothing) {
                    if r.sink[j] < r.source[i] {
                        (r.source[i], r.back[i]) = (r.sink[j], Some(j));
                    }
                }
            }
        }
    }

    /// Carries along the cheapest way; false when nothing is left to carry.
    fn carry_once(&mut self) -> bool {
        let r = self.round();
        let open = (0..self.wanted.len()).filter(|j| self.wanted[*j] > self.nothing && r.sink[*j].is_finite());
        let Some(end) = open.min_by(|a, b| r.sink[*a].total_cmp(&r.sink[*b])) else { return false };
        let far = r.sink[end];
        for i in 0..self.left.len() {
            self.source_price[i] += r.source[i].min(far);
        }
        for j in 0..self.wanted.len() {
            self.sink_price[j] += r.sink[j].min(far);
        }
        let mut way = vec![];
        let mut j = end;
        let start = loop {
            let i = r.from[j];
            way.push((i, j));
            match r.back[i] {
                Some(k) => j = k,
                None => break i,
            }
        };
        let mut most = self.left[start].min(self.wanted[end]);
        for w in way.windows(2) {
            most = most.min(self.flow[w[0].0][w[1].1]);
        }
        for (k, (i, j)) in way.iter().enumerate() {
            self.flow[*i][*j] += most;
            if let Some((_, before)) = way.get(k + 1) {
                self.flow[*i][*before] -= most;
            }
        }
        self.left[start] -= most;
        self.wanted[end] -= most;
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_textbook_problem_has_its_known_answer() {
        // Three depots and four shops; 743 is the optimum that the stepping-stone method ends with.
        let cost = [vec![19.0, 30.0, 50.0, 10.0], vec![70.0, 30.0, 40.0, 60.0], vec![40.0, 8.0, 70.0, 20.0]];
        let t = transport(&[7.0, 9.0, 18.0], &[5.0, 8.0, 7.0, 14.0], &cost).unwrap();
        assert!((t.cost - 743.0).abs() < 1e-9 && (t.bound - 743.0).abs() < 1e-9, "{t:?}");
    }

    #[test]
    fn unequal_sums_and_figures_that_are_none_are_refused() {
        assert!(matches!(transport(&[1.0], &[2.0], &[vec![1.0]]), Err(NoTransport::Unequal { .. })));
        assert_eq!(transport(&[-1.0], &[-1.0], &[vec![1.0]]), Err(NoTransport::Figures));
        assert_eq!(transport(&[1.0], &[1.0], &[vec![f64::NAN]]), Err(NoTransport::Figures));
        assert_eq!(transport(&[], &[], &[]).unwrap().cost, 0.0);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn all_is_carried_and_the_bound_proves_it_cheapest(
            supply in proptest::collection::vec(0.0f64..10.0, 1..7),
            shares in proptest::collection::vec(0.01f64..1.0, 1..7),
            costs in proptest::collection::vec(0.0f64..50.0, 49),
        ) {
            let all: f64 = supply.iter().sum();
            let parts: f64 = shares.iter().sum();
            let demand: Vec<f64> = shares.iter().map(|s| all * s / parts).collect();
            let cost: Vec<Vec<f64>> = (0..supply.len()).map(|i| costs[i * 7..i * 7 + demand.len()].to_vec()).collect();
            let t = transport(&supply, &demand, &cost).unwrap();
            for (row, s) in t.amounts.iter().zip(&supply) {
                prop_assert!((row.iter().sum::<f64>() - s).abs() < 1e-9 && row.iter().all(|a| *a >= -1e-12));
            }
            for (j, d) in demand.iter().enumerate() {
                prop_assert!((t.amounts.iter().map(|r| r[j]).sum::<f64>() - d).abs() < 1e-9);
            }
            prop_assert!((t.cost - t.bound).abs() <= 1e-9 * t.cost.max(1.0), "{} and {}", t.cost, t.bound);
        }
    }
}
