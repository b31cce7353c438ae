//! What changes between two plans?

use groundhold_order as order;
use groundhold_plan::Difference;
use groundhold_quantity::{Length, Money};
use serde::Serialize;

use super::figure::{level, m, m3, money, number};
use super::plan::SCHEMA;

#[derive(Serialize)]
pub(super) struct DifferenceView<'a> {
    schema: u32,
    view: &'static str,
    changes_nothing: bool,
    levels: Vec<MetresView<'a>>,
    lengths: Vec<MetresView<'a>>,
    posts: Vec<PostView<'a>>,
    volumes: Vec<VolumeView<'a>>,
    order: Vec<LineView<'a>>,
    left_over: Vec<LeftOverView<'a>>,
    price: Option<PriceView>,
    findings_new: Vec<FindingView<'a>>,
    findings_gone: Vec<FindingView<'a>>,
}

#[derive(Serialize)]
struct MetresView<'a> {
    what: &'a str,
    before_m: f64,
    after_m: f64,
}

#[derive(Serialize)]
struct VolumeView<'a> {
    what: &'a str,
    before_m3: f64,
    after_m3: f64,
}

#[derive(Serialize)]
struct PostView<'a> {
    wall: &'a str,
    chainage_m: f64,
    /// `null` for a new post.
    before: Option<PostFigures>,
    /// `null` for a post that is gone.
    after: Option<PostFigures>,
}

#[derive(Serialize)]
struct PostFigures {
    post: usize,
    depth_m: f64,
    diameter_m: f64,
    length_m: f64,
}

#[derive(Serialize)]
struct LineView<'a> {
    head: Option<&'static str>,
    item: &'a str,
    stock_length_m: Option<f64>,
    before: Option<SideView>,
    after: Option<SideView>,
    amount_more: f64,
}

#[derive(Serialize)]
struct SideView {
    quantity: f64,
    unit: &'static str,
    amount: Option<f64>,
}

impl SideView {
    fn of(s: order::Side) -> SideView {
        SideView { quantity: number(s.quantity), unit: s.unit.word(), amount: s.amount.map(money) }
    }
}

#[derive(Serialize)]
struct LeftOverView<'a> {
    item: &'a str,
    stock_length_m: Option<f64>,
    before: f64,
    after: f64,
}

#[derive(Serialize)]
struct PriceView {
    before: f64,
    after: f64,
    more: f64,
}

impl PriceView {
    fn of(before: Money, after: Money) -> PriceView {
        PriceView { before: money(before), after: money(after), more: money(after - before) }
    }
}

#[derive(Serialize)]
struct FindingView<'a> {
    code: &'a str,
    place: &'a str,
    says: &'a str,
}

fn findings(list: &[(String, String, String)]) -> Vec<FindingView<'_>> {
    list.iter().map(|(code, place, says)| FindingView { code, place, says }).collect()
}

impl DifferenceView<'_> {
    pub fn of(d: &Difference) -> DifferenceView<'_> {
        let figures = |number: usize, depth: Length, diameter: Length, length: Length| PostFigures {
            post: number,
            depth_m: m(depth),
            diameter_m: m(diameter),
            length_m: m(length),
        };
        let posts = d.posts.iter().map(|p| PostView {
            wall: &p.wall,
            chainage_m: m(p.chainage),
            before: p.before.map(|f| figures(f.number, f.depth, f.diameter, f.length)),
            after: p.after.map(|f| figures(f.number, f.depth, f.diameter, f.length)),
        });
        let levels =
            d.levels.iter().map(|a| MetresView { what: &a.what, before_m: level(a.before), after_m: level(a.after) });
        let lengths =
            d.lengths.iter().map(|a| MetresView { what: &a.what, before_m: m(a.before), after_m: m(a.after) });
        let volumes =
            d.volumes.iter().map(|a| VolumeView { what: &a.what, before_m3: m3(a.before), after_m3: m3(a.after) });
        let lines = d.order.iter().map(|c| LineView {
            head: c.head.map(order::Head::word),
            item: &c.item,
            stock_length_m: c.stock_length.map(m),
            before: c.before.map(SideView::of),
            after: c.after.map(SideView::of),
            amount_more: money(c.difference),
        });
        let left = d.left_over.iter().map(|l| LeftOverView {
            item: &l.item,
            stock_length_m: l.stock_length.map(m),
            before: number(l.before),
            after: number(l.after),
        });
        DifferenceView {
            schema: SCHEMA,
            view: "difference",
            changes_nothing: d.is_empty(),
            levels: levels.collect(),
            lengths: lengths.collect(),
            posts: posts.collect(),
            volumes: volumes.collect(),
            order: lines.collect(),
            left_over: left.collect(),
            price: d.price.as_ref().map(|a| PriceView::of(a.before, a.after)),
            findings_new: findings(&d.findings_new),
            findings_gone: findings(&d.findings_gone),
        }
    }
}
