//! Figures of the general-purpose numerics, for comparison with independent libraries: `cargo xtask crosscheck`.
//!
//! One JSON object a line: a triangulation with its volume and contours, a network of tapes, soil to be carried, a cutting list.

use groundhold_measure::position::{Accuracy, Lie, Measured, Peg, Reading, Survey, locate};
use groundhold_order::{DEFAULT_EFFORT, Demand, Saw, Stock, cut};
use groundhold_quantity::{Length, Level, Money, Point, distance};
use groundhold_surface::{GroundPoint, Tin, volume_above};

/// A plain generator (Numerical Recipes, 2nd ed., p. 284), so that both sides get the same points from the file.
struct Chance(u32);

impl Chance {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(self.0 >> 8) / f64::from(1 << 24)
    }
}

fn main() {
    for seed in 1..=4 {
        surface(seed, 40 * seed as usize);
        network(seed);
        carrying(seed, 2 + 3 * seed as usize, 1 + 4 * seed as usize);
    }
    cutting();
}

fn list(values: impl Iterator<Item = f64>) -> String {
    format!("[{}]", values.map(|v| format!("{v:.17e}")).collect::<Vec<_>>().join(","))
}

fn surface(seed: u32, count: usize) {
    let mut chance = Chance(seed);
    let points: Vec<GroundPoint> = (0..count)
        .map(|i| {
            let at = Point::m(20.0 * chance.next(), 15.0 * chance.next());
            GroundPoint { id: i.to_string(), at, level: Level::m(100.0 + 3.0 * chance.next()) }
        })
        .collect();
    let Ok(tin) = Tin::build(&points, &[], None) else { return };
    let outline = tin.outline();
    let Some(hull) = outline.first() else { return };
    let level = Level::m(101.3);
    let above = volume_above(&tin, level, hull);
    let interval = Length::m(0.5);
    let contours: f64 = tin
        .contours(interval)
        .iter()
        .map(|c| {
            let open: f64 = c.line.windows(2).map(|w| distance(w[0], w[1]).to_m()).sum();
            let ring = if c.closed { distance(c.line[0], c.line[c.line.len() - 1]).to_m() } else { 0.0 };
            open + ring
        })
        .sum();
    println!(
        "{{\"kind\":\"surface\",\"x\":{},\"y\":{},\"z\":{},\"triangles\":{},\"area\":{:.17e},\"level\":101.3,\"cut\":{:.17e},\"fill\":{:.17e},\"interval\":0.5,\"contours\":{contours:.17e}}}",
        list(points.iter().map(|p| p.at.x)),
        list(points.iter().map(|p| p.at.y)),
        list(points.iter().map(|p| p.level.to_m())),
        tin.triangles().len(),
        tin.area().to_m2(),
        above.cut.to_m3(),
        above.fill.to_m3(),
    );
}

fn network(seed: u32) {
    let mut chance = Chance(seed + 100);
    let pegs: Vec<Peg> = [(0.0, 0.0), (14.0, 0.0), (6.0, 12.0), (15.0, 11.0)]
        .iter()
        .zip("ABCD".chars())
        .map(|((x, y), c)| Peg { id: c.to_string(), at: Point::m(*x, *y) })
        .collect();
    let at = Point::m(3.0 + 8.0 * chance.next(), 2.0 + 7.0 * chance.next());
    let tapes: Vec<f64> = pegs.iter().map(|p| distance(p.at, at).to_m() + 0.004 * (chance.next() - 0.5)).collect();
    let readings = pegs.iter().zip(&tapes).enumerate().map(|(i, (p, t))| Reading {
        row: i + 1,
        point: "1".into(),
        measured: Measured::Tie { to: p.id.clone(), tape: Length::m(*t), lie: Lie::Level },
        sigma: Some(Length::mm(5.0)),
    });
    let survey =
        Survey { readings: readings.collect(), pegs: pegs.clone(), accuracy: Accuracy::default(), ..Survey::default() };
    let Ok(found) = locate(&survey) else { return };
    let Some(p) = found.points.first() else { return };
    println!(
        "{{\"kind\":\"network\",\"x\":{},\"y\":{},\"tape\":{},\"at\":[{:.17e},{:.17e}]}}",
        list(pegs.iter().map(|p| p.at.x)),
        list(pegs.iter().map(|p| p.at.y)),
        list(tapes.iter().copied()),
        p.at.x,
        p.at.y
    );
}

/// Soil from so many places to so many others.
fn carrying(seed: u32, sources: usize, sinks: usize) {
    let mut chance = Chance(seed + 100);
    let supply: Vec<f64> = (0..sources).map(|_| 20.0 * chance.next()).collect();
    let shares: Vec<f64> = (0..sinks).map(|_| 0.05 + chance.next()).collect();
    let (all, parts) = (supply.iter().sum::<f64>(), shares.iter().sum::<f64>());
    let demand: Vec<f64> = shares.iter().map(|s| all * s / parts).collect();
    let cost: Vec<Vec<f64>> = (0..sources).map(|_| (0..sinks).map(|_| 60.0 * chance.next()).collect()).collect();
    let Ok(t) = groundhold_dig::transport(&supply, &demand, &cost) else { return };
    println!(
        "{{\"kind\":\"carrying\",\"supply\":{},\"demand\":{},\"cost\":{},\"total\":{:.17e},\"bound\":{:.17e}}}",
        list(supply.iter().copied()),
        list(demand.iter().copied()),
        list(cost.iter().flatten().copied()),
        t.cost,
        t.bound
    );
}

/// The lists of `reference/cutting-stock.csv`.
fn cutting() {
    for row in include_str!("../../../reference/cutting-stock.csv").lines().skip(1) {
        let cells: Vec<&str> = row.split(',').collect();
        let [name, kerf, stock, pieces, ..] = &cells[..] else { continue };
        let number = |t: &str| t.parse::<f64>().unwrap_or(f64::NAN);
        let stocks: Vec<Stock> = stock
            .split(' ')
            .filter_map(|s| s.split_once(':'))
            .map(|(l, p)| Stock {
                material: "m".into(),
                length: Length::mm(number(l)),
                price: Money::of(number(p)),
                supply: None,
            })
            .collect();
        let demands: Vec<Demand> = pieces
            .split(' ')
            .filter_map(|s| s.split_once('x'))
            .map(|(l, n)| Demand {
                material: "m".into(),
                element: "W1".into(),
                mark: l.into(),
                length: Length::mm(number(l)),
                count: number(n) as u32,
            })
            .collect();
        let saw = Saw { kerf: Length::mm(number(kerf)), trim: Length::ZERO };
        let Ok(plan) = cut("m", &demands, &stocks, &saw, DEFAULT_EFFORT) else { continue };
        println!(
            "{{\"kind\":\"cutting\",\"name\":\"{name}\",\"kerf\":{kerf},\"stock\":\"{stock}\",\"pieces\":\"{pieces}\",\"cost\":{:.2},\"bound\":{:.4},\"proven\":{}}}",
            plan.cost.amount(),
            plan.bound.amount(),
            plan.proven
        );
    }
}
