//! From which stock lengths are the pieces cut, so that the stock costs least, and is that proven?
//!
//! # Source
//! The lower bound: Gilmore and Gomory, *A Linear Programming Approach to the Cutting-Stock Problem*, Operations
//! Research 9 (1961) 849–859, with columns priced by the list form of Nemhauser and Ullmann, *Discrete Dynamic
//! Programming and Capital Allocation*, Management Science 15 (1969) 494–505 (all from memory). The search is standard
//! branch and bound: first over how many bars of each length, and of all together, then over how each bar is filled,
//! always with the longest piece that is left.
//!
//! # Saw cuts
//! n pieces on a bar need n − 1 cuts between them, and one more where an offcut is left (which comes out of the
//! offcut). So a bar of length L, trimmed by t, takes pieces with Σ(l + kerf) ≤ L − t + kerf.

mod filling;
mod greedy;
mod integers;
mod knapsack;
mod relaxation;
mod search;

use groundhold_quantity::{Length, Money};

use integers::Problem;
pub(crate) use integers::to_units;

/// The saw and the ends of the bars.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Saw {
    /// Width of a cut.
    pub kerf: Length,
    /// Taken off every bar to square its ends, both together, their cuts included.
    pub trim: Length,
}

/// A length that can be had.
#[derive(Debug, Clone, PartialEq)]
pub struct Stock {
    /// Section and grade; only pieces of the same material are cut from it.
    pub material: String,
    /// Its length.
    pub length: Length,
    /// Price of one.
    pub price: Money,
    /// How many there are; `None` for as many as wanted. Bars on hand have a supply and no price.
    pub supply: Option<u32>,
}

/// Pieces of one length that are wanted.
#[derive(Debug, Clone, PartialEq)]
pub struct Demand {
    /// Section and grade.
    pub material: String,
    /// The element it is for.
    pub element: String,
    /// Its mark on the drawing.
    pub mark: String,
    /// Its length.
    pub length: Length,
    /// How many.
    pub count: u32,
}

/// How long to look for a proof, in steps of the search; no clock, so every machine gives the same list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Effort {
    /// Linear programs solved at most.
    pub nodes: usize,
    /// Elementary steps at most, in them and between them: a few nanoseconds each.
    pub steps: u64,
}

/// Enough to prove the lists of garden jobs within the time of a drag.
pub const DEFAULT_EFFORT: Effort = Effort { nodes: 400, steps: 20_000_000 };

impl Default for Effort {
    fn default() -> Effort {
        DEFAULT_EFFORT
    }
}

/// One piece on a bar.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// The element it is for.
    pub element: String,
    /// Its mark.
    pub mark: String,
    /// Its length.
    pub length: Length,
}

/// One bar of stock and how it is cut, longest piece first.
#[derive(Debug, Clone, PartialEq)]
pub struct Bar {
    /// Length of the bar.
    pub stock: Length,
    /// Its price.
    pub price: Money,
    /// True where it comes out of a limited supply, as bars on hand do.
    pub limited: bool,
    /// The pieces, in the order of cutting.
    pub pieces: Vec<Piece>,
    /// What is left whole at the end, after trim and cuts. Not below 0.
    pub offcut: Length,
}

/// Bars that are cut alike.
#[derive(Debug, Clone, PartialEq)]
pub struct Bars {
    /// Length of the bars.
    pub stock: Length,
    /// Lengths of the pieces on each, longest first.
    pub lengths: Vec<Length>,
    /// How many bars.
    pub count: usize,
    /// What is left of each.
    pub offcut: Length,
}

/// The cutting list of one material.
#[derive(Debug, Clone, PartialEq)]
pub struct CuttingPlan {
    /// Section and grade.
    pub material: String,
    /// The saw it is made for.
    pub saw: Saw,
    /// The bars, longest stock first.
    pub bars: Vec<Bar>,
    /// What the bars cost.
    pub cost: Money,
    /// No list can cost less than this.
    pub bound: Money,
    /// True where the cost equals the bound: no cheaper list exists.
    pub proven: bool,
    /// True where, besides, no list of the same cost uses less stock (to the millimetre).
    pub least_waste: bool,
    /// Length of the bars.
    pub used: Length,
    /// Length of the bars less that of the pieces: offcuts, cuts and trim.
    pub waste: Length,
    /// Linear programs solved.
    pub nodes: usize,
}

impl CuttingPlan {
    /// Cost less bound: how much cheaper a list could be at most.
    pub fn gap(&self) -> Money {
        self.cost - self.bound
    }
    /// Bars that are cut alike, counted, in the order of `bars`.
    pub fn patterns(&self) -> Vec<Bars> {
        let mut found: Vec<Bars> = vec![];
        for bar in &self.bars {
            let lengths: Vec<Length> = bar.pieces.iter().map(|p| p.length).collect();
            let same = |b: &Bars| {
                to_units(b.stock) == to_units(bar.stock)
                    && b.lengths.len() == lengths.len()
                    && b.lengths.iter().zip(&lengths).all(|(a, c)| to_units(*a) == to_units(*c))
            };
            match found.iter_mut().find(|b| same(b)) {
                Some(b) => b.count += 1,
                None => found.push(Bars { stock: bar.stock, lengths, count: 1, offcut: bar.offcut }),
            }
        }
        found
    }
}

/// Why there is no cutting list.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CutError {
    /// A piece fits on no bar.
    #[error("{material}: piece {mark} ({element}) is {} mm long; the longest bar gives {} mm", length.to_mm().round(), longest.to_mm().round())]
    TooLong {
        /// Section and grade.
        material: String,
        /// The piece.
        mark: String,
        /// Its element.
        element: String,
        /// Its length.
        length: Length,
        /// What the longest bar gives after its trim; zero where there is none.
        longest: Length,
    },
    /// A length that is not above zero, or not a number, or beyond 100 m.
    #[error("{material}: {what} is {} m, expected more than 0 and at most 100 m", value.to_m())]
    BadLength {
        /// Section and grade.
        material: String,
        /// Which length.
        what: String,
        /// What it is.
        value: Length,
    },
    /// A stock length with a negative price.
    #[error("{material}: a stock length has the price {}, expected 0 or more", price.shown())]
    BadPrice {
        /// Section and grade.
        material: String,
        /// The price.
        price: Money,
    },
    /// The limited supply does not give all pieces, or no way was found within the effort.
    #[error("{material}: the bars that there are do not give all pieces; add a stock length without a limit")]
    NotEnough {
        /// Section and grade.
        material: String,
    },
    /// More pieces than a search by single bars can take.
    #[error("{material}: {pieces} pieces; a cutting list takes at most {MOST_PIECES}")]
    TooMany {
        /// Section and grade.
        material: String,
        /// How many.
        pieces: u64,
    },
}

/// More lengths than this are cut longest first, with the volume as bound.
const MOST_LENGTHS: usize = 300;
/// Most pieces of one material on one cutting list.
const MOST_PIECES: u64 = 5_000;

/// Cuts every material that is wanted, in the order of their names. Materials without an answer give an error each.
pub fn cut_all(demands: &[Demand], stock: &[Stock], saw: &Saw, effort: Effort) -> Vec<Result<CuttingPlan, CutError>> {
    let mut materials: Vec<&str> = demands.iter().map(|d| d.material.as_str()).collect();
    materials.sort_unstable();
    materials.dedup();
    materials.into_iter().map(|m| cut(m, demands, stock, saw, effort)).collect()
}

/// Cuts the pieces of one material from the stock of the same material at least cost and, at that cost, with least
/// waste. Demands and stock of other materials are passed over. The order of the input does not matter.
///
/// Lengths are held to a hundredth of a millimetre, and a bar may be overrun by a tenth of a millimetre.
///
/// # Errors
/// [`CutError`] names the piece that fits on no bar, or the length or price that cannot be.
///
/// ```
/// use groundhold_order::{cut, Demand, Effort, Saw, Stock};
/// use groundhold_quantity::{Length, Money};
/// let m = |v| Length::m(v);
/// let want = [Demand { material: "b".into(), element: "W1".into(), mark: "1".into(), length: m(1.5), count: 14 }];
/// let have = [Stock { material: "b".into(), length: m(3.0), price: Money::of(22.40), supply: None }];
/// let plan = cut("b", &want, &have, &Saw::default(), Effort::default()).unwrap();
/// assert_eq!((plan.bars.len(), plan.proven), (7, true));
/// ```
pub fn cut(
    material: &str,
    demands: &[Demand],
    stock: &[Stock],
    saw: &Saw,
    effort: Effort,
) -> Result<CuttingPlan, CutError> {
    let mut wanted: Vec<&Demand> = demands.iter().filter(|d| d.material == material && d.count > 0).collect();
    let mut had: Vec<&Stock> = stock.iter().filter(|s| s.material == material && s.supply != Some(0)).collect();
    check(material, &wanted, &had, saw)?;
    wanted.sort_by(|a, b| {
        to_units(b.length).cmp(&to_units(a.length)).then(a.element.cmp(&b.element)).then(natural(&a.mark, &b.mark))
    });
    had.sort_by(|a, b| {
        to_units(b.length).cmp(&to_units(a.length)).then(a.price.cmp(&b.price)).then(a.supply.cmp(&b.supply))
    });
    let problem = Problem::new(&wanted, &had, saw);
    let found = search::search(&problem, effort).ok_or_else(|| CutError::NotEnough { material: material.into() })?;
    Ok(written(material, &problem, &found, &wanted, &had, saw))
}

fn check(material: &str, wanted: &[&Demand], had: &[&Stock], saw: &Saw) -> Result<(), CutError> {
    let bad = |what: &str, value: Length| CutError::BadLength { material: material.into(), what: what.into(), value };
    let fine = |l: Length| l > Length::ZERO && l <= Length::m(100.0);
    for (l, what) in [(saw.kerf, "the saw cut"), (saw.trim, "the trim")] {
        if !(l == Length::ZERO || fine(l)) {
            return Err(bad(what, l));
        }
    }
    if let Some(s) = had.iter().find(|s| !fine(s.length)) {
        return Err(bad("a stock length", s.length));
    }
    if let Some(s) = had.iter().find(|s| s.price < Money::ZERO) {
        return Err(CutError::BadPrice { material: material.into(), price: s.price });
    }
    let pieces: u64 = wanted.iter().map(|d| u64::from(d.count)).sum();
    if pieces > MOST_PIECES {
        return Err(CutError::TooMany { material: material.into(), pieces });
    }
    let longest = had.iter().fold(Length::ZERO, |most, s| most.max(s.length - saw.trim));
    for d in wanted {
        if !fine(d.length) || to_units(d.length) == 0 {
            return Err(bad(&format!("piece {} ({})", d.mark, d.element), d.length));
        }
        if to_units(d.length) > to_units(longest) {
            let (mark, element) = (d.mark.clone(), d.element.clone());
            return Err(CutError::TooLong { material: material.into(), mark, element, length: d.length, longest });
        }
    }
    Ok(())
}

/// Marks in the order people count: `2` before `10`.
pub(crate) fn natural(a: &str, b: &str) -> std::cmp::Ordering {
    let key = |t: &str| {
        let head = t.trim_end_matches(|c: char| c.is_ascii_digit());
        (head.to_string(), t[head.len()..].parse::<u64>().unwrap_or(0), t.to_string())
    };
    key(a).cmp(&key(b))
}

fn written(
    material: &str,
    problem: &Problem,
    found: &search::Found,
    wanted: &[&Demand],
    had: &[&Stock],
    saw: &Saw,
) -> CuttingPlan {
    let mut waiting: Vec<Vec<Piece>> = vec![vec![]; problem.weight.len()];
    for d in wanted {
        let at = problem.item_of(d.length, saw);
        let piece = Piece { element: d.element.clone(), mark: d.mark.clone(), length: d.length };
        waiting[at].extend(std::iter::repeat_n(piece, d.count as usize));
    }
    waiting.iter_mut().for_each(|w| w.reverse());
    let mut bars = vec![];
    for column in &found.columns {
        let stock = had[column.stock];
        let mut pieces = vec![];
        for (item, &n) in column.counts.iter().enumerate() {
            pieces.extend((0..n).filter_map(|_| waiting[item].pop()));
        }
        if pieces.is_empty() {
            continue;
        }
        let cut: Length = pieces.iter().map(|p| p.length).sum();
        let over = stock.length - saw.trim - cut - saw.kerf * pieces.len() as f64;
        bars.push(Bar {
            stock: stock.length,
            price: stock.price,
            limited: stock.supply.is_some(),
            pieces,
            offcut: over.max(Length::ZERO),
        });
    }
    let cost: Money = bars.iter().map(|b| b.price).sum();
    let used: Length = bars.iter().map(|b| b.stock).sum();
    let cut: Length = bars.iter().flat_map(|b| &b.pieces).map(|p| p.length).sum();
    let bound = if found.cheapest { cost } else { problem.money(found.bound).min(cost) };
    CuttingPlan {
        material: material.into(),
        saw: *saw,
        bars,
        cost,
        bound,
        proven: bound == cost,
        least_waste: found.complete,
        used,
        waste: used - cut,
        nodes: found.nodes,
    }
}

#[cfg(test)]
mod tests;
