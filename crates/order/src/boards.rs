//! Which bars of an item are bought, once its pieces are cut?

use groundhold_finding::{Finding, Remedy};
use groundhold_quantity::{Density, Length, Mass, Money, Share, trim};

use crate::{
    Bar, CutError, CuttingPlan, Demand, Effort, Line, Measured, Need, Price, Saw, SoldBy, Stock, TakeOff,
    apportion::share_out,
    cut::cut,
    findings::{BOARD_LENGTH_UNKNOWN, CANNOT_BE_CUT, NOT_PROVEN},
    packs::{packs_of, round_up},
    stores::{Stores, length_key},
    take_off::{Group, by_element, plain_item, without_price},
};

/// Cuts the pieces of one item and writes a line for every stock length.
pub(crate) fn cut_item(mut group: Group, saw: &Saw, effort: Effort, stores: &mut Stores, out: &mut TakeOff) {
    let is_cut = |n: &&Need| matches!(n.quantity, Measured::Pieces(_));
    let (pieces, needs): (Vec<&Need>, Vec<&Need>) = group.needs.iter().partition(|n| is_cut(n));
    if !needs.is_empty() {
        plain_item(&Group { needs, rows: group.rows.clone(), ..group }, stores, out);
    }
    group.needs = pieces;
    let item = group.item;
    if stores.has_unsaid(item) {
        out.findings.push(length_unknown(&group));
    }
    let listed = cheapest_by_length(&group.rows);
    let mut stock: Vec<Stock> = listed
        .iter()
        .map(|(length, price, _)| Stock { material: item.into(), length: *length, price: *price, supply: None })
        .collect();
    let on_site = stores.bars(item).into_iter();
    stock.extend(on_site.map(|(length, n)| Stock {
        material: item.into(),
        length,
        price: Money::ZERO,
        supply: Some(n),
    }));
    let plan = match cut(item, &demands(&group), &stock, saw, effort) {
        Ok(plan) => plan,
        Err(e) => {
            out.findings.push(cannot_be_cut(&e, &group));
            out.lines.push(without_price(&group));
            return;
        }
    };
    if !plan.proven {
        out.findings.push(not_proven(&plan, &group));
    }
    plan.bars.iter().filter(|b| b.limited).for_each(|b| stores.use_bar(item, b.stock));
    out.lines.extend(lines(&group, &listed, &plan));
    out.cutting.push(plan);
}

fn demands(group: &Group) -> Vec<Demand> {
    let of = |n: &Need| match &n.quantity {
        Measured::Pieces(list) => list
            .iter()
            .map(|(mark, length)| Demand {
                material: group.item.into(),
                element: n.element.clone(),
                mark: mark.clone(),
                length: *length,
                count: 1,
            })
            .collect(),
        _ => vec![],
    };
    group.needs.iter().flat_map(|n| of(n)).collect()
}

/// The cheapest row of every stock length, longest first.
fn cheapest_by_length<'a>(rows: &[&'a Price]) -> Vec<(Length, Money, &'a Price)> {
    let mut all: Vec<(Length, Money, &Price)> =
        rows.iter().filter_map(|p| p.bar_price().map(|(l, m)| (l, m, *p))).collect();
    all.sort_by(|a, b| {
        let key = |x: &(Length, Money, &Price)| (-length_key(Some(x.0)), x.1, x.2.supplier.clone());
        key(a).cmp(&key(b)).then(a.2.pack.total_cmp(&b.2.pack))
    });
    all.dedup_by_key(|x| length_key(Some(x.0)));
    all
}

fn lines(group: &Group, listed: &[(Length, Money, &Price)], plan: &CuttingPlan) -> Vec<Line> {
    let mut lengths: Vec<Length> = plan.bars.iter().map(|b| b.stock).collect();
    lengths.sort_by_key(|l| -length_key(Some(*l)));
    lengths.dedup_by_key(|l| length_key(Some(*l)));
    let bought: usize = plan.bars.iter().filter(|b| !b.limited).count();
    let share = group.needs.iter().map(|n| n.waste.to_fraction()).fold(0.0, f64::max);
    let spare = round_up(bought as f64 * share);
    let longest_bought = plan.bars.iter().find(|b| !b.limited).map(|b| length_key(Some(b.stock)));
    let of_length = |length: &Length| {
        let key = length_key(Some(*length));
        let bars: Vec<&Bar> = plan.bars.iter().filter(|b| length_key(Some(b.stock)) == key).collect();
        let row = listed.iter().find(|(l, _, _)| length_key(Some(*l)) == key);
        let spare = if Some(key) == longest_bought { spare } else { 0.0 };
        line(group, &bars, row, spare)
    };
    lengths.iter().map(of_length).collect()
}

fn line(group: &Group, bars: &[&Bar], row: Option<&(Length, Money, &Price)>, spare: f64) -> Line {
    let stock_length = bars.first().map(|b| b.stock);
    let on_hand = bars.iter().filter(|b| b.limited).count() as f64;
    let net = bars.len() as f64;
    let (pack, rate) = row.map_or((1.0, None), |(_, price, p)| (p.pack, Some(*price)));
    let packed = packs_of(net + spare, Share::ZERO, pack, on_hand).ok();
    let (packs, bought) = packed.as_ref().map_or((0.0, 0.0), |p| (p.packs, p.bought));
    let amount = rate.map_or(Money::ZERO, |r| (r * bought).to_cents());
    let paid: Vec<&&Bar> = bars.iter().filter(|b| bought == 0.0 || !b.limited).collect();
    let parts = paid.iter().flat_map(|b| &b.pieces).map(|p| (p.element.as_str(), p.length.to_m()));
    let (names, weights) = by_element(parts);
    let density = group.density();
    Line {
        head: group.head,
        item: group.item.into(),
        what: group.words(),
        stock_length,
        unit: SoldBy::Each,
        net,
        waste: spare,
        gross: net + spare,
        on_hand,
        packs,
        bought,
        rate,
        amount: packed.is_some().then_some(amount),
        mass: row.and_then(|(l, _, p)| bar_mass(p, *l, density)).map(|m| m * bought),
        supplier: row.map_or(String::new(), |(_, _, p)| p.supplier.clone()),
        elements: names.into_iter().zip(share_out(amount, &weights)).collect(),
        why: group.why(),
        trace: packed.map(|p| p.trace),
    }
}

/// Mass of one bar: as listed, or from section and density.
fn bar_mass(row: &Price, length: Length, density: Option<Density>) -> Option<Mass> {
    let listed = row.mass.map(|m| if row.unit == SoldBy::M { m * length.to_m() } else { m });
    let (width, thickness) = row.section.unzip();
    listed.or_else(|| Some(crate::piece_mass(width?, thickness?, length, row.density.or(density)?).ok()?.0))
}

fn length_unknown(group: &Group) -> Finding {
    let item = group.item;
    let says = format!("`{item}` lies on site, but in which lengths is not said; the cutting list goes without it.");
    Finding::new(&BOARD_LENGTH_UNKNOWN, group.place(), says).with_remedy(Remedy::theirs(
        "Measure them and write them down with their length, as `8 of board 200x50 H4 C24 at 4.8 m`.",
    ))
}

fn cannot_be_cut(error: &CutError, group: &Group) -> Finding {
    let f = Finding::new(&CANNOT_BE_CUT, group.place(), format!("{error}."));
    match error {
        CutError::TooLong { length, longest, .. } => {
            let says = format!("List a stock length of {} mm or more.", trim(length.to_mm().ceil(), 0));
            let f = f.with_remedy(Remedy::theirs(says));
            if *longest > Length::ZERO { f.with_utilisation(*length / *longest) } else { f }
        }
        _ => f,
    }
}

fn not_proven(plan: &CuttingPlan, group: &Group) -> Finding {
    let says = format!(
        "The cutting list of `{}` costs {}; a cheaper one, by at most {}, is not ruled out.",
        plan.material,
        plan.cost.shown(),
        plan.gap().shown()
    );
    Finding::new(&NOT_PROVEN, group.place(), says)
}
