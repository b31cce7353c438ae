//! What is bought, how is it cut, and what does it cost?

use groundhold_order as order;
use groundhold_plan::Plan;
use serde::Serialize;

use super::figure::{kg, m, money, number};

#[derive(Serialize)]
pub(super) struct OrderView<'a> {
    complete: bool,
    mass_kg: f64,
    lines: Vec<LineView<'a>>,
    cutting: Vec<CuttingView<'a>>,
    left_over: Vec<LeftOverView<'a>>,
}

#[derive(Serialize)]
struct LineView<'a> {
    head: &'static str,
    item: &'a str,
    what: &'a str,
    stock_length_m: Option<f64>,
    unit: &'static str,
    net: f64,
    waste: f64,
    gross: f64,
    on_hand: f64,
    packs: f64,
    bought: f64,
    rate: Option<f64>,
    amount: Option<f64>,
    mass_kg: Option<f64>,
    supplier: &'a str,
}

impl LineView<'_> {
    fn of(l: &order::Line) -> LineView<'_> {
        LineView {
            head: l.head.word(),
            item: &l.item,
            what: &l.what,
            stock_length_m: l.stock_length.map(m),
            unit: l.unit.word(),
            net: number(l.net),
            waste: number(l.waste),
            gross: number(l.gross),
            on_hand: number(l.on_hand),
            packs: number(l.packs),
            bought: number(l.bought),
            rate: l.rate.map(money),
            amount: l.amount.map(money),
            mass_kg: l.mass.map(kg),
            supplier: &l.supplier,
        }
    }
}

#[derive(Serialize)]
struct CuttingView<'a> {
    material: &'a str,
    kerf_m: f64,
    cost: f64,
    /// No list can cost less than this.
    cost_bound: f64,
    proven_cheapest: bool,
    used_m: f64,
    waste_m: f64,
    bars: Vec<BarView<'a>>,
}

#[derive(Serialize)]
struct BarView<'a> {
    stock_m: f64,
    on_hand: bool,
    pieces: Vec<PieceView<'a>>,
    offcut_m: f64,
}

#[derive(Serialize)]
struct PieceView<'a> {
    element: &'a str,
    mark: &'a str,
    length_m: f64,
}

impl CuttingView<'_> {
    fn of(c: &order::CuttingPlan) -> CuttingView<'_> {
        CuttingView {
            material: &c.material,
            kerf_m: m(c.saw.kerf),
            cost: money(c.cost),
            cost_bound: money(c.bound),
            proven_cheapest: c.proven,
            used_m: m(c.used),
            waste_m: m(c.waste),
            bars: c.bars.iter().map(BarView::of).collect(),
        }
    }
}

impl BarView<'_> {
    fn of(b: &order::Bar) -> BarView<'_> {
        let pieces = b.pieces.iter().map(PieceView::of).collect();
        BarView { stock_m: m(b.stock), on_hand: b.limited, pieces, offcut_m: m(b.offcut) }
    }
}

impl PieceView<'_> {
    fn of(p: &order::Piece) -> PieceView<'_> {
        PieceView { element: &p.element, mark: &p.mark, length_m: m(p.length) }
    }
}

#[derive(Serialize)]
struct LeftOverView<'a> {
    item: &'a str,
    stock_length_m: Option<f64>,
    unit: Option<&'static str>,
    units: f64,
}

impl OrderView<'_> {
    pub fn of(plan: &Plan) -> OrderView<'_> {
        let t = &plan.take_off;
        let left = t.left_over.iter().map(|l| LeftOverView {
            item: &l.item,
            stock_length_m: l.stock_length.map(m),
            unit: l.unit.map(order::SoldBy::word),
            units: number(l.units),
        });
        OrderView {
            complete: t.is_complete(),
            mass_kg: kg(t.mass()),
            lines: t.lines.iter().map(LineView::of).collect(),
            cutting: t.cutting.iter().map(CuttingView::of).collect(),
            left_over: left.collect(),
        }
    }
}

#[derive(Serialize)]
pub(super) struct QuoteView<'a> {
    complete: bool,
    heads: Vec<SumView<'a>>,
    net: f64,
    overhead: f64,
    margin: f64,
    before_tax: f64,
    tax: f64,
    total: f64,
    elements: Vec<ElementView<'a>>,
    without_price: &'a [String],
}

#[derive(Serialize)]
struct SumView<'a> {
    head: &'a str,
    amount: f64,
}

#[derive(Serialize)]
struct ElementView<'a> {
    /// Empty for the whole job.
    element: &'a str,
    net: f64,
    total: f64,
}

impl ElementView<'_> {
    fn of(p: &order::Part) -> ElementView<'_> {
        ElementView { element: &p.element, net: money(p.net), total: money(p.total) }
    }
}

impl QuoteView<'_> {
    pub fn of(q: &order::Quote) -> QuoteView<'_> {
        QuoteView {
            complete: q.is_complete(),
            heads: q.heads.iter().map(|(h, sum)| SumView { head: h.word(), amount: money(*sum) }).collect(),
            net: money(q.net),
            overhead: money(q.overhead),
            margin: money(q.margin),
            before_tax: money(q.before_tax),
            tax: money(q.tax),
            total: money(q.total),
            elements: q.parts.iter().map(ElementView::of).collect(),
            without_price: &q.missing,
        }
    }
}
