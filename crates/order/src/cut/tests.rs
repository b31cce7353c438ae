//! Is the cutting list right, by hand, by trying everything, and by what must always hold?

use proptest::prelude::*;

use super::*;

fn m(v: f64) -> Length {
    Length::m(v)
}

fn want(list: &[(f64, u32)]) -> Vec<Demand> {
    let of = |(i, (length, count)): (usize, &(f64, u32))| Demand {
        material: "board".into(),
        element: "W1".into(),
        mark: format!("{}", i + 1),
        length: m(*length),
        count: *count,
    };
    list.iter().enumerate().map(of).collect()
}

fn have(list: &[(f64, f64)]) -> Vec<Stock> {
    let of = |(length, price): &(f64, f64)| Stock {
        material: "board".into(),
        length: m(*length),
        price: Money::of(*price),
        supply: None,
    };
    list.iter().map(of).collect()
}

fn on_site(length: f64, n: u32) -> Stock {
    Stock { material: "board".into(), length: m(length), price: Money::ZERO, supply: Some(n) }
}

fn kerf(mm: f64) -> Saw {
    Saw { kerf: Length::mm(mm), trim: Length::ZERO }
}

fn list(want: &[Demand], have: &[Stock], saw: &Saw) -> CuttingPlan {
    cut("board", want, have, saw, DEFAULT_EFFORT).unwrap()
}

#[test]
fn fourteen_pieces_of_half_a_board_are_seven_boards_without_waste() {
    // Questions T2: a 600 mm wall in bays of 1.5 m, 14 pieces of 1.5 m.
    let plan = list(&want(&[(1.5, 14)]), &have(&[(3.0, 22.40)]), &kerf(0.0));
    assert_eq!((plan.bars.len(), plan.cost), (7, Money::of(156.80)));
    assert!(plan.proven && plan.least_waste);
    assert!(plan.waste.to_m().abs() < 1e-9);
    assert_eq!(plan.patterns().len(), 1);
    assert_eq!(plan.patterns()[0].count, 7);
}

#[test]
fn with_a_saw_cut_between_them_two_halves_no_longer_fit() {
    let plan = list(&want(&[(1.5, 14)]), &have(&[(3.0, 22.40)]), &kerf(4.0));
    assert_eq!(plan.bars.len(), 14);
    let plan = list(&want(&[(1.498, 14)]), &have(&[(3.0, 22.40)]), &kerf(4.0));
    assert_eq!(plan.bars.len(), 7, "1498 + 4 + 1498 is 3000");
    let plan = list(&want(&[(1.4982, 14)]), &have(&[(3.0, 22.40)]), &kerf(4.0));
    assert_eq!(plan.bars.len(), 14, "half a millimetre is not forgiven");
}

#[test]
fn a_trim_is_lost_on_every_bar() {
    let saw = Saw { kerf: Length::ZERO, trim: Length::mm(10.0) };
    assert_eq!(list(&want(&[(1.495, 4)]), &have(&[(3.0, 1.0)]), &saw).bars.len(), 2);
    assert_eq!(list(&want(&[(1.496, 4)]), &have(&[(3.0, 1.0)]), &saw).bars.len(), 4);
}

#[test]
fn the_cheaper_bar_wins_and_of_equal_price_the_shorter() {
    let plan = list(&want(&[(1.2, 2)]), &have(&[(2.4, 17.60), (3.0, 22.40)]), &kerf(0.0));
    assert_eq!((plan.bars.len(), plan.bars[0].stock), (1, m(2.4)));
    let plan = list(&want(&[(1.2, 2)]), &have(&[(2.4, 20.0), (3.0, 20.0)]), &kerf(0.0));
    assert_eq!(plan.bars[0].stock, m(2.4));
    let plan = list(&want(&[(1.2, 2)]), &have(&[(2.4, 20.0), (3.0, 19.99)]), &kerf(0.0));
    assert_eq!(plan.bars[0].stock, m(3.0));
}

#[test]
fn a_small_case_solved_by_hand_where_longest_first_fails() {
    // Bars of 10: 6, 5, 5, 4, 4, 3, 3 sum to 30. By hand {6,4}, {5,5}, {4,3,3}: three full bars.
    // Longest first gives {6,4}, {5,5}, {4,3,3} too; with 5,4,3 doubled it does not: {7,3}, {5,5}, {4,4,2}.
    let plan = list(&want(&[(0.7, 1), (0.5, 2), (0.4, 2), (0.3, 1), (0.2, 1)]), &have(&[(1.0, 1.0)]), &kerf(0.0));
    assert_eq!((plan.bars.len(), plan.proven), (3, true));
    // 44, 24, 24, 22, 21, 17, 8, 8, 6, 6 into bars of 61 (sum 180, so at least 3): {44,17}, {24,22,8,6}, {24,21,8,6}.
    // Longest first puts 44+17, 24+24+8, 22+21+8+6, 6: four bars.
    let pieces = [(0.44, 1), (0.24, 2), (0.22, 1), (0.21, 1), (0.17, 1), (0.08, 2), (0.06, 2)];
    let plan = list(&want(&pieces), &have(&[(0.61, 1.0)]), &kerf(0.0));
    assert_eq!((plan.bars.len(), plan.proven), (3, true));
}

#[test]
fn bars_on_site_are_used_before_any_is_bought() {
    let mut stock = have(&[(3.0, 22.40)]);
    stock.push(on_site(2.4, 2));
    let plan = list(&want(&[(1.2, 6)]), &stock, &kerf(0.0));
    assert_eq!(plan.bars.iter().filter(|b| b.limited).count(), 2);
    assert_eq!(plan.cost, Money::of(22.40));
    assert!(plan.proven);
}

#[test]
fn a_supply_too_small_is_said_and_one_just_enough_is_cut() {
    let short = cut("board", &want(&[(1.2, 6)]), &[on_site(2.4, 2)], &kerf(0.0), DEFAULT_EFFORT);
    assert_eq!(short, Err(CutError::NotEnough { material: "board".into() }));
    let plan = list(&want(&[(1.2, 6)]), &[on_site(2.4, 3)], &kerf(0.0));
    assert_eq!((plan.bars.len(), plan.cost), (3, Money::ZERO));
}

#[test]
fn a_piece_longer_than_every_bar_is_named() {
    let said = cut("board", &want(&[(1.0, 1), (3.7, 1)]), &have(&[(3.6, 1.0)]), &kerf(3.0), DEFAULT_EFFORT);
    let said = said.unwrap_err().to_string();
    assert_eq!(said, "board: piece 2 (W1) is 3700 mm long; the longest bar gives 3600 mm");
    assert_eq!(list(&want(&[(3.6, 1)]), &have(&[(3.6, 1.0)]), &kerf(3.0)).bars.len(), 1);
}

#[test]
fn lengths_and_prices_that_cannot_be_are_refused() {
    for length in [0.0, -1.0, f64::NAN, f64::INFINITY, 100.1, 1e-9] {
        assert!(cut("board", &want(&[(length, 1)]), &have(&[(3.6, 1.0)]), &kerf(3.0), DEFAULT_EFFORT).is_err());
    }
    assert!(cut("board", &want(&[(1.0, 1)]), &have(&[(3.6, -1.0)]), &kerf(3.0), DEFAULT_EFFORT).is_err());
    assert!(cut("board", &want(&[(1.0, 1)]), &have(&[(3.6, 1.0)]), &kerf(-3.0), DEFAULT_EFFORT).is_err());
    assert!(cut("board", &want(&[(1.0, 1)]), &[], &kerf(3.0), DEFAULT_EFFORT).is_err());
    assert!(cut("board", &want(&[(1.0, 6000)]), &have(&[(3.6, 1.0)]), &kerf(3.0), DEFAULT_EFFORT).is_err());
    assert_eq!(list(&[], &[], &kerf(3.0)).bars.len(), 0);
}

#[test]
fn pieces_are_cut_only_from_their_own_material() {
    let mut pieces = want(&[(1.2, 2)]);
    pieces.push(Demand { material: "post".into(), ..pieces[0].clone() });
    let mut stock = have(&[(2.4, 17.60)]);
    stock.push(Stock { material: "post".into(), length: m(1.8), price: Money::of(16.20), supply: None });
    let plans = cut_all(&pieces, &stock, &kerf(0.0), DEFAULT_EFFORT);
    let named: Vec<(String, usize)> =
        plans.into_iter().map(|p| p.unwrap()).map(|p| (p.material.clone(), p.bars.len())).collect();
    assert_eq!(named, [("board".to_string(), 1), ("post".to_string(), 2)]);
}

#[test]
fn marks_go_out_in_the_order_people_count() {
    let mut pieces = want(&[(1.2, 1), (1.2, 1), (1.2, 1)]);
    pieces[0].mark = "10".into();
    pieces[1].mark = "9".into();
    pieces[2].mark = "2".into();
    let plan = list(&pieces, &have(&[(3.6, 1.0)]), &kerf(0.0));
    let marks: Vec<&str> = plan.bars[0].pieces.iter().map(|p| p.mark.as_str()).collect();
    assert_eq!(marks, ["2", "9", "10"]);
}

#[test]
fn a_search_cut_short_still_gives_a_list_and_an_honest_bound() {
    // Odd prices, so that rounding up the bound does not close the gap.
    let pieces: Vec<(f64, u32)> = (0..12).map(|i| (0.413 + 0.137 * f64::from(i), 3 + i % 4)).collect();
    let stock = have(&[(2.4, 14.90), (3.0, 18.05), (3.6, 20.99), (4.2, 25.50)]);
    let none = Effort { nodes: 0, steps: 0 };
    let quick = cut("board", &want(&pieces), &stock, &kerf(4.0), none).unwrap();
    let long = cut("board", &want(&pieces), &stock, &kerf(4.0), Effort { nodes: 3_000, steps: 300_000_000 }).unwrap();
    assert!(quick.bound <= long.bound && long.bound <= long.cost && long.cost <= quick.cost);
    assert_eq!(quick.proven, quick.bound == quick.cost);
}

#[test]
fn very_many_lengths_are_cut_without_a_proof_and_in_bounded_time() {
    let pieces: Vec<(f64, u32)> = (0..700).map(|i| (0.3 + 0.0037 * f64::from(i), 1)).collect();
    let stock = have(&[(2.4, 17.60), (3.0, 22.40)]);
    for many in [40, MOST_LENGTHS, MOST_LENGTHS + 1, 700] {
        let plan = list(&want(&pieces[..many]), &stock, &kerf(3.0));
        assert_eq!(plan.bars.iter().map(|b| b.pieces.len()).sum::<usize>(), many);
        let metres: f64 = pieces[..many].iter().map(|p| p.0).sum();
        assert!(plan.bound.amount() >= 17.60 / 2.4 * metres * 0.99 && plan.bound <= plan.cost, "{many}");
    }
}

/// Least (price, stock length in mm) by trying every way to split the pieces into bars.
fn by_trying_everything(pieces: &[f64], stock: &[Stock], saw: &Saw) -> Option<(Money, i64)> {
    let n = pieces.len();
    let supply: Vec<u32> = stock.iter().map(|s| s.supply.unwrap_or(u32::MAX)).collect();
    type Known = std::collections::BTreeMap<(usize, Vec<u32>), Option<(Money, i64)>>;
    fn rest(
        set: usize,
        supply: &[u32],
        fits: &dyn Fn(usize, usize) -> bool,
        stock: &[Stock],
        known: &mut Known,
    ) -> Option<(Money, i64)> {
        if set == 0 {
            return Some((Money::ZERO, 0));
        }
        if let Some(found) = known.get(&(set, supply.to_vec())) {
            return *found;
        }
        let lowest = set & set.wrapping_neg();
        let mut best = None;
        let mut part = set;
        while part > 0 {
            if part & lowest != 0 {
                for (s, bar) in stock.iter().enumerate().filter(|(s, _)| supply[*s] > 0 && fits(part, *s)) {
                    let mut left = supply.to_vec();
                    if left[s] != u32::MAX {
                        left[s] -= 1;
                    }
                    let Some((cost, length)) = rest(set & !part, &left, fits, stock, known) else { continue };
                    let all = (cost + bar.price, length + bar.length.to_mm().round() as i64);
                    if best.is_none_or(|b| all < b) {
                        best = Some(all);
                    }
                }
            }
            part = (part - 1) & set;
        }
        known.insert((set, supply.to_vec()), best);
        best
    }
    let fits = |part: usize, s: usize| {
        let chosen = (0..n).filter(|i| part >> i & 1 == 1);
        let (count, sum) = chosen.fold((0.0, 0.0), |(c, l), i| (c + 1.0, l + pieces[i]));
        sum + (count - 1.0) * saw.kerf.to_m() <= (stock[s].length - saw.trim).to_m() + 1e-5
    };
    rest((1 << n) - 1, &supply, &fits, stock, &mut Known::new())
}

fn some_pieces() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec((3u32..30).prop_map(|d| f64::from(d) * 0.1), 1..=8)
}

fn some_stock() -> impl Strategy<Value = Vec<Stock>> {
    let price = prop_oneof![Just(8.0), 5.0..9.0];
    prop::collection::vec((prop_oneof![Just(3.0), Just(3.6), Just(4.2), Just(4.8)], price, 0u32..4), 1..4).prop_map(
        |rows| {
            let of = |(i, (length, per_m, supply)): (usize, (f64, f64, u32))| Stock {
                material: "board".into(),
                length: m(length),
                price: Money::of(per_m * length).to_cents(),
                supply: (i > 0 && supply > 0).then_some(supply),
            };
            rows.into_iter().enumerate().map(of).collect()
        },
    )
}

fn singly(pieces: &[f64]) -> Vec<Demand> {
    want(&pieces.iter().map(|l| (*l, 1)).collect::<Vec<_>>())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn eight_pieces_cost_what_trying_everything_finds(pieces in some_pieces(), stock in some_stock(), k in 0u32..6) {
        let saw = kerf(f64::from(k));
        let plan = cut("board", &singly(&pieces), &stock, &saw, Effort { nodes: 5_000, steps: 1_000_000_000 }).unwrap();
        prop_assert!(plan.proven && plan.least_waste);
        let used = plan.used.to_mm().round() as i64;
        prop_assert_eq!(Some((plan.cost, used)), by_trying_everything(&pieces, &stock, &saw));
    }

    #[test]
    fn every_piece_is_cut_once_and_no_bar_is_overrun(
        pieces in prop::collection::vec(0.3f64..3.5, 1..40), k in 0.0f64..6.0, t in 0.0f64..40.0,
    ) {
        let saw = Saw { kerf: Length::mm(k), trim: Length::mm(t) };
        let stock = have(&[(2.4, 17.60), (3.0, 22.40), (3.6, 27.20)]);
        let plan = list(&singly(&pieces), &stock, &saw);
        let mut marks: Vec<String> = plan.bars.iter().flat_map(|b| &b.pieces).map(|p| p.mark.clone()).collect();
        marks.sort_by(|a, b| natural(a, b));
        prop_assert_eq!(marks, (1..=pieces.len()).map(|i| i.to_string()).collect::<Vec<_>>());
        for b in &plan.bars {
            let cut: f64 = b.pieces.iter().map(|p| p.length.to_mm()).sum();
            let all = cut + (b.pieces.len() as f64 - 1.0) * k + t;
            prop_assert!(all <= b.stock.to_mm() + 0.2, "{} of {}", all, b.stock.to_mm());
            prop_assert!(b.pieces.iter().all(|p| pieces[p.mark.parse::<usize>().unwrap() - 1] == p.length.to_m()));
        }
        prop_assert!(plan.bound <= plan.cost);
        prop_assert_eq!(plan.bars.iter().map(|b| b.price).sum::<Money>(), plan.cost);
    }

    #[test]
    fn the_order_of_the_input_does_not_matter(pieces in some_pieces(), stock in some_stock(), turn in 0usize..8) {
        let mut demands = singly(&pieces);
        let a = cut("board", &demands, &stock, &kerf(3.0), DEFAULT_EFFORT).unwrap();
        let by = turn % demands.len();
        demands.rotate_left(by);
        let mut stock = stock;
        stock.reverse();
        prop_assert_eq!(a, cut("board", &demands, &stock, &kerf(3.0), DEFAULT_EFFORT).unwrap());
    }

    #[test]
    fn a_piece_more_never_costs_less(pieces in some_pieces(), stock in some_stock(), more in 3u32..30) {
        let effort = Effort { nodes: 5_000, steps: 1_000_000_000 };
        let saw = kerf(3.0);
        let a = cut("board", &singly(&pieces), &stock, &saw, effort).unwrap();
        let mut pieces = pieces;
        pieces.push(f64::from(more) * 0.1);
        let b = cut("board", &singly(&pieces), &stock, &saw, effort).unwrap();
        prop_assert!(a.cost <= b.cost && a.bound <= b.bound);
    }

    #[test]
    fn the_relaxation_agrees_with_a_general_solver_over_all_fillings(
        pieces in some_pieces(), stock in some_stock(), k in 0u32..6,
    ) {
        let mut demands = singly(&pieces);
        demands.sort_by_key(|d| -to_units(d.length));
        let (wanted, had): (Vec<&Demand>, Vec<&Stock>) = (demands.iter().collect(), stock.iter().collect());
        let p = Problem::new(&wanted, &had, &kerf(f64::from(k)));
        let any = relaxation::Window::up_to(&p.supply);
        let mut steps = u64::MAX;
        let ours = relaxation::relax(&p, &p.demand, &any, &mut vec![], &mut steps).bound * relaxation::dearest(&p);
        let theirs = solved_by_a_general_solver(&p);
        prop_assert!((ours - theirs).abs() <= 1e-6 * theirs, "{} against {}", ours, theirs);
    }
}

/// The linear program over every filling, all written out.
fn solved_by_a_general_solver(p: &Problem) -> f64 {
    use microlp::{ComparisonOp, OptimizationDirection, Problem as Program, Variable};
    fn grow(p: &Problem, s: usize, i: usize, space: i64, counts: &mut Vec<u16>, all: &mut Vec<integers::Column>) {
        if i == p.weight.len() {
            if counts.iter().any(|&c| c > 0) {
                all.push(integers::Column { stock: s, counts: counts.clone() });
            }
            return;
        }
        for n in 0..=(space / p.weight[i]).min(i64::from(p.demand[i])) {
            counts[i] = n as u16;
            grow(p, s, i + 1, space - n * p.weight[i], counts, all);
        }
        counts[i] = 0;
    }
    let mut all = vec![];
    (0..p.space.len()).for_each(|s| grow(p, s, 0, p.space[s], &mut vec![0; p.weight.len()], &mut all));
    let mut program = Program::new(OptimizationDirection::Minimize);
    let x: Vec<Variable> = all.iter().map(|c| program.add_var(p.cost[c.stock] as f64, (0.0, f64::INFINITY))).collect();
    for i in 0..p.weight.len() {
        let row: Vec<(Variable, f64)> =
            x.iter().zip(&all).filter(|(_, c)| c.counts[i] > 0).map(|(v, c)| (*v, f64::from(c.counts[i]))).collect();
        program.add_constraint(&row, ComparisonOp::Ge, f64::from(p.demand[i]));
    }
    for s in (0..p.space.len()).filter(|&s| p.supply[s] != integers::ENOUGH) {
        let row: Vec<(Variable, f64)> =
            x.iter().zip(&all).filter(|(_, c)| c.stock == s).map(|(v, _)| (*v, 1.0)).collect();
        program.add_constraint(&row, ComparisonOp::Le, f64::from(p.supply[s]));
    }
    program.solve().unwrap().into_solution().unwrap().objective()
}
