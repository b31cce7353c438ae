//! Does the cutting list cost what a general solver found? The cases are invented; their costs were found with
//! 20 000 linear programs of our own search, and again by a mixed-integer program over every full filling (HiGHS).

use groundhold_order::{DEFAULT_EFFORT, Demand, Saw, Stock, cut};
use groundhold_quantity::{Length, Money};

struct Case {
    id: String,
    saw: Saw,
    stock: Vec<Stock>,
    pieces: Vec<Demand>,
    cost: Money,
}

fn pairs(text: &str, between: char) -> Vec<(f64, f64)> {
    let number = |t: &str| t.parse::<f64>().unwrap_or_else(|e| panic!("`{t}`: {e}"));
    let pair = |t: &str| t.split_once(between).map(|(a, b)| (number(a), number(b)));
    text.split(' ').map(|t| pair(t).unwrap_or_else(|| panic!("`{t}` has no `{between}`"))).collect()
}

fn cases() -> Vec<Case> {
    let of = |row: &str| {
        let field: Vec<&str> = row.split(',').collect();
        let stock = pairs(field[2], ':').into_iter().map(|(mm, price)| Stock {
            material: "board".into(),
            length: Length::mm(mm),
            price: Money::of(price),
            supply: None,
        });
        let pieces = pairs(field[3], 'x').into_iter().map(|(mm, count)| Demand {
            material: "board".into(),
            element: "W1".into(),
            mark: format!("{mm}"),
            length: Length::mm(mm),
            count: count as u32,
        });
        let kerf = field[1].parse().unwrap_or_else(|e| panic!("{}: {e}", field[1]));
        let cost = field[4].parse().unwrap_or_else(|e| panic!("{}: {e}", field[4]));
        Case {
            id: field[0].into(),
            saw: Saw { kerf: Length::mm(kerf), trim: Length::ZERO },
            stock: stock.collect(),
            pieces: pieces.collect(),
            cost: Money::of(cost),
        }
    };
    include_str!("../../../reference/cutting-stock.csv").lines().skip(1).map(of).collect()
}

#[test]
fn the_usual_effort_proves_the_cost_that_a_general_solver_found() {
    let cases = cases();
    assert!(cases.len() >= 8);
    for c in cases {
        let plan = cut("board", &c.pieces, &c.stock, &c.saw, DEFAULT_EFFORT).unwrap();
        assert_eq!((plan.cost, plan.proven), (c.cost, true), "{}", c.id);
    }
}

#[test]
fn a_part_of_the_effort_never_claims_more_than_is_true() {
    for c in cases() {
        for nodes in [0, 1, 5, 25] {
            let effort = groundhold_order::Effort { nodes, steps: nodes as u64 * 20_000 };
            let plan = cut("board", &c.pieces, &c.stock, &c.saw, effort).unwrap();
            assert!(plan.bound <= c.cost && c.cost <= plan.cost, "{} with {nodes}", c.id);
            assert_eq!(plan.proven, plan.bound == plan.cost);
        }
    }
}
