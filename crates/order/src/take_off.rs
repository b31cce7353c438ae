//! Which lines does the order have: item by item, rounded up to what is sold?

use std::collections::BTreeMap;

use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Density, Length, Mass, Money, Share, trim};
use groundhold_working::Trace;

use crate::{
    CuttingPlan, DEFAULT_EFFORT, Effort, Head, LeftOver, Measured, Need, OnHand, Price, Saw, SoldBy,
    apportion::share_out,
    boards, convert,
    findings::{PRICE_MISSING, UNIT_DIFFERS},
    packs::packs_of,
    stores::{Stores, length_key},
};

/// One line of the order.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Under which head of the quote.
    pub head: Head,
    /// The item.
    pub item: String,
    /// What it is for, in words.
    pub what: String,
    /// Length of the bars, where it is sold so.
    pub stock_length: Option<Length>,
    /// The unit of the figures below. Bars are counted as `Each`.
    pub unit: SoldBy,
    /// As taken off; for bars, those of the cutting list.
    pub net: f64,
    /// Allowance on top; for bars, spare ones.
    pub waste: f64,
    /// Both together.
    pub gross: f64,
    /// Of that from what is on site.
    pub on_hand: f64,
    /// Whole packs to buy.
    pub packs: f64,
    /// Units in them.
    pub bought: f64,
    /// Price of one unit; `None` where it is missing.
    pub rate: Option<Money>,
    /// Price of what is bought, to the cent; `None` where the price is missing.
    pub amount: Option<Money>,
    /// Mass of what is bought, where it is known.
    pub mass: Option<Mass>,
    /// Who sells it.
    pub supplier: String,
    /// The amount by element, adding up to it to the cent. Elements in the order of their names.
    pub elements: Vec<(String, Money)>,
    /// The workings behind the needs.
    pub why: Vec<Trace>,
    /// The working of the packs.
    pub trace: Option<Trace>,
}

/// An order with its cutting lists and what it has to say.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TakeOff {
    /// The lines, by head, item and stock length (longest first).
    pub lines: Vec<Line>,
    /// One cutting list per item that is cut.
    pub cutting: Vec<CuttingPlan>,
    /// Prices missing, pieces that cannot be cut, lists without a proof.
    pub findings: Vec<Finding>,
    /// What lies on site and is not needed.
    pub left_over: Vec<LeftOver>,
}

impl TakeOff {
    /// True where every line has an amount and every piece is cut.
    pub fn is_complete(&self) -> bool {
        self.lines.iter().all(|l| l.amount.is_some())
    }
    /// Sum of the lines that have an amount.
    pub fn sum(&self) -> Money {
        self.lines.iter().filter_map(|l| l.amount).sum()
    }
    /// Mass of everything bought whose mass is known.
    pub fn mass(&self) -> Mass {
        self.lines.iter().filter_map(|l| l.mass).sum()
    }
}

/// Takes off the needs against a price list. The order of either does not matter.
pub fn take_off(needs: &[Need], prices: &[Price], saw: &Saw) -> TakeOff {
    take_off_with(needs, prices, saw, &[], DEFAULT_EFFORT)
}

/// The same, using first what is on site, and looking for a proof of the cutting lists with so much effort.
pub fn take_off_with(needs: &[Need], prices: &[Price], saw: &Saw, on_hand: &[OnHand], effort: Effort) -> TakeOff {
    let mut groups: BTreeMap<(Head, &str), Vec<&Need>> = BTreeMap::new();
    for n in needs {
        groups.entry((n.head, n.item.as_str())).or_default().push(n);
    }
    let mut stores = Stores::new(on_hand);
    let mut out = TakeOff::default();
    for ((head, item), mut needs) in groups {
        needs.sort_by_key(|n| sort_key(n));
        let group = Group { head, item, needs, rows: prices.iter().filter(|p| p.item == item).collect() };
        let cut_up = group.needs.iter().any(|n| matches!(n.quantity, Measured::Pieces(_)));
        if group.rows.is_empty() {
            out.findings.push(price_missing(&group));
            out.lines.push(without_price(&group));
        } else if cut_up && group.rows.iter().any(|p| p.stock_length.is_some()) {
            boards::cut_item(group, saw, effort, &mut stores, &mut out);
        } else {
            plain_item(&group, &mut stores, &mut out);
        }
    }
    out.left_over = stores.rest(prices);
    out
}

/// The needs of one item under one head, and the rows of the price list that have it.
pub(crate) struct Group<'a> {
    pub head: Head,
    pub item: &'a str,
    pub needs: Vec<&'a Need>,
    pub rows: Vec<&'a Price>,
}

impl Group<'_> {
    /// The words of the needs, each once.
    pub(crate) fn words(&self) -> String {
        let mut said: Vec<&str> = self.needs.iter().map(|n| n.what.as_str()).filter(|w| !w.is_empty()).collect();
        said.sort_unstable();
        said.dedup();
        said.join("; ")
    }
    /// The element, where it is one; else the whole job.
    pub(crate) fn place(&self) -> Place {
        let first = self.needs.first().map_or("", |n| n.element.as_str());
        if self.needs.iter().all(|n| n.element == first) { Place::of(first) } else { Place::job() }
    }
    /// The workings behind the needs.
    pub(crate) fn why(&self) -> Vec<Trace> {
        self.needs.iter().filter_map(|n| n.why.clone()).collect()
    }
    /// The first density said.
    pub(crate) fn density(&self) -> Option<Density> {
        self.needs.iter().find_map(|n| n.density)
    }
    /// The allowance, where all needs have the same.
    fn common_waste(&self) -> Option<Share> {
        let first = self.needs.first()?.waste;
        self.needs.iter().all(|n| n.waste == first).then_some(first)
    }
}

fn sort_key(n: &Need) -> (String, String, u64, u64) {
    (n.element.clone(), n.what.clone(), n.quantity.si().to_bits(), n.waste.to_fraction().to_bits())
}

/// Elements of a group, in the order of their names, with the sum of their weights.
pub(crate) fn by_element<'a>(parts: impl Iterator<Item = (&'a str, f64)>) -> (Vec<String>, Vec<f64>) {
    let mut sums: BTreeMap<&str, f64> = BTreeMap::new();
    for (element, weight) in parts {
        *sums.entry(element).or_default() += weight;
    }
    sums.into_iter().map(|(e, w)| (e.to_string(), w)).unzip()
}

/// One priced way of buying a group.
struct Offer<'a> {
    row: &'a Price,
    line: Line,
}

pub(crate) fn plain_item(group: &Group, stores: &mut Stores, out: &mut TakeOff) {
    let (mut offers, mut refused): (Vec<Offer>, Vec<String>) = (vec![], vec![]);
    let rows = &group.rows;
    let counted = group.needs.iter().any(|n| matches!(n.quantity, Measured::Count(_)));
    let several_lengths = rows.windows(2).any(|w| length_key(w[0].stock_length) != length_key(w[1].stock_length));
    let unsaid = counted && several_lengths;
    if unsaid {
        refused.push("it is listed in several lengths; a count does not say which, give the pieces".into());
    }
    for row in rows.iter().filter(|_| !unsaid) {
        match offer(group, row, stores.units(group.item)) {
            Ok(line) => offers.push(Offer { row, line }),
            Err(why) => refused.push(why),
        }
    }
    offers.sort_by(|a, b| {
        let key = |o: &Offer| (o.line.amount, o.row.supplier.clone(), o.row.unit, o.row.note.clone());
        key(a).cmp(&key(b)).then(a.row.pack.total_cmp(&b.row.pack))
    });
    match offers.into_iter().next() {
        Some(o) => {
            stores.use_up(group.item, o.line.on_hand);
            out.lines.push(o.line);
        }
        None => {
            refused.sort();
            out.findings.push(unit_differs(group, &refused));
            out.lines.push(without_price(group));
        }
    }
}

/// The line of a group by one row of the price list.
fn offer(group: &Group, row: &Price, on_hand: f64) -> Result<Line, String> {
    let units = group.needs.iter().map(|n| convert::units_of(n, row)).collect::<Result<Vec<f64>, String>>()?;
    let net: f64 = units.iter().sum();
    let waste: f64 = units.iter().zip(&group.needs).map(|(u, n)| u * n.waste.to_fraction()).sum();
    let share = group.common_waste().unwrap_or(if net > 0.0 { Share::fraction(waste / net) } else { Share::ZERO });
    let packed = packs_of(net, share, row.pack, on_hand).map_err(|e| e.to_string())?;
    let amount = (row.price * packed.bought).to_cents();
    let (names, weights) = by_element(group.needs.iter().zip(&units).map(|(n, u)| (n.element.as_str(), *u)));
    let density = row.density.or(group.density());
    Ok(Line {
        head: group.head,
        item: row.item.clone(),
        what: group.words(),
        stock_length: None,
        unit: row.unit,
        net,
        waste: packed.gross - net,
        gross: packed.gross,
        on_hand: on_hand.min(packed.gross),
        packs: packed.packs,
        bought: packed.bought,
        rate: Some(row.price),
        amount: Some(amount),
        mass: mass_of_units(row, density).map(|m| m * packed.bought),
        supplier: row.supplier.clone(),
        elements: names.into_iter().zip(share_out(amount, &weights)).collect(),
        why: group.why(),
        trace: Some(packed.trace),
    })
}

fn mass_of_units(row: &Price, density: Option<Density>) -> Option<Mass> {
    row.mass.or(match row.unit {
        SoldBy::Kg => Some(Mass::kg(1.0)),
        SoldBy::T => Some(Mass::t(1.0)),
        SoldBy::M3 => density.map(|d| Mass::kg(d.to_kg_per_m3())),
        SoldBy::Litre => density.map(|d| Mass::kg(d.to_kg_per_m3() / 1000.0)),
        _ => None,
    })
}

/// A line that waits for its price.
pub(crate) fn without_price(group: &Group) -> Line {
    let needs = &group.needs;
    let (names, _) = by_element(needs.iter().map(|n| (n.element.as_str(), 1.0)));
    let same = needs.windows(2).all(|w| w[0].quantity.kind() == w[1].quantity.kind());
    let figures = |n: &Need| convert::in_natural_unit(&n.quantity).1;
    let net: f64 = if same { needs.iter().map(|n| figures(n)).sum() } else { 0.0 };
    let waste: f64 = if same { needs.iter().map(|n| figures(n) * n.waste.to_fraction()).sum() } else { 0.0 };
    Line {
        head: group.head,
        item: group.item.into(),
        what: group.words(),
        stock_length: None,
        unit: needs.first().map_or(SoldBy::Each, |n| convert::in_natural_unit(&n.quantity).0),
        net,
        waste,
        gross: net + waste,
        on_hand: 0.0,
        packs: 0.0,
        bought: 0.0,
        rate: None,
        amount: None,
        mass: None,
        supplier: String::new(),
        elements: names.into_iter().map(|n| (n, Money::ZERO)).collect(),
        why: group.why(),
        trace: None,
    }
}

fn price_missing(group: &Group) -> Finding {
    let (line, item) = (without_price(group), group.item);
    let much = format!("{} {}", trim(line.gross, 2), line.unit.shown());
    let says = format!("`{item}` ({}; {much}) has no price: the quote is incomplete.", line.what);
    let row = format!("Add a row for `{item}` to the price list, sold by the {} for example.", line.unit.word());
    Finding::new(&PRICE_MISSING, group.place(), says).with_remedy(Remedy::theirs(row))
}

fn unit_differs(group: &Group, refused: &[String]) -> Finding {
    let item = group.item;
    let why = refused.first().cloned().unwrap_or_default();
    let says = format!("`{item}` cannot be bought as listed: {why}. The quote is incomplete.");
    let way_out = "Give the row of the price list a unit that fits, or what one unit holds, or a density.";
    Finding::new(&UNIT_DIFFERS, group.place(), says).with_remedy(Remedy::theirs(way_out))
}
