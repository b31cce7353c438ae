//! What do I buy, how is it cut, and what does it cost?

use groundhold_order::{Head, Line};
use groundhold_plan::Plan;
use groundhold_quantity::{Length, Money, Share, Units, trim};

use crate::earthwork_schedule::whole;
use crate::flow::Flow;
use crate::leaf::Leaf;
use crate::paper_size::Paper;
use crate::table::{Table, figures, sentences, words};

pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let mut flow = Flow::new(Paper::A4, "Order", "Order list");
    flow.title("Order list");
    let mass = plan.take_off.mass();
    flow.paragraph(&format!(
        "What is still to buy, in whole packs, before tax, in {}. Mass of everything whose mass is known: {}.",
        currency(plan),
        plan.job.about.units.mass(mass)
    ));
    flow.table(&order(plan));
    left_over(&mut flow, plan);
    let mut all = flow.finish();
    all.extend(patterns(plan));
    all.extend(quote(plan));
    all
}

fn currency(plan: &Plan) -> &str {
    let c = plan.job.about.currency.0.as_str();
    if c.is_empty() { "the job's currency" } else { c }
}

fn amount(m: Option<Money>) -> String {
    m.map_or("price missing".into(), Money::shown)
}

/// An item as it is asked for: with its length where it is sold so.
pub(crate) fn item(name: &str, length: Option<Length>, u: Units) -> String {
    match length {
        Some(l) => format!("{name}, {} long", u.run(l)),
        None => name.to_string(),
    }
}

/// What a line is for. Labour is for all tasks, which stand in the order of work.
fn what(head: Head, words: &str) -> String {
    let tasks = words.split("; ").count();
    if head == Head::Labour && tasks > 3 { format!("{tasks} tasks: see the order of work") } else { words.to_string() }
}

fn order(plan: &Plan) -> Table {
    let u = plan.job.about.units;
    let mut t = Table::new(vec![
        sentences("Item"),
        sentences("What for"),
        figures("Net"),
        figures("Waste"),
        figures("On site"),
        figures("To buy"),
        words("Unit"),
        figures("Rate"),
        figures("Amount"),
        sentences("From"),
    ]);
    for head in Head::ALL {
        let lines: Vec<&Line> = plan.take_off.lines.iter().filter(|l| l.head == head).collect();
        if lines.is_empty() {
            continue;
        }
        t.group(capital(head.word()));
        for l in &lines {
            let figure = |v: f64| if v == 0.0 { "–".into() } else { trim(v, 2) };
            t.row([
                item(&l.item, l.stock_length, u),
                what(l.head, &l.what),
                figure(l.net),
                figure(l.waste),
                figure(l.on_hand),
                trim(l.bought, 2),
                l.unit.shown().into(),
                l.rate.map_or("–".into(), Money::shown),
                amount(l.amount),
                l.supplier.clone(),
            ]);
        }
        let sum: Money = lines.iter().filter_map(|l| l.amount).sum();
        t.sum([
            String::new(),
            format!("{} in all", capital(head.word())),
            String::new(),
            String::new(),
            String::new(),
            String::new(),
            String::new(),
            String::new(),
            sum.shown(),
            String::new(),
        ]);
    }
    t
}

pub(crate) fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map(|c| c.to_uppercase().collect::<String>() + letters.as_str()).unwrap_or_default()
}

fn left_over(flow: &mut Flow, plan: &Plan) {
    if plan.take_off.left_over.is_empty() {
        return;
    }
    flow.heading("On site and not needed");
    let u = plan.job.about.units;
    let mut t = Table::new(vec![sentences("Item"), figures("Units"), words("Unit")]);
    for l in &plan.take_off.left_over {
        t.row([item(&l.item, l.stock_length, u), trim(l.units, 2), l.unit.map_or("", |s| s.shown()).into()]);
    }
    flow.table(&t);
}

fn patterns(plan: &Plan) -> Vec<Leaf> {
    let lists = &plan.take_off.cutting;
    if lists.is_empty() {
        return vec![];
    }
    let u = plan.job.about.units;
    let mut flow = Flow::new(Paper::A4, "Order", "Cutting list");
    flow.title("Cutting list");
    for c in lists {
        flow.heading(&c.material);
        let proof = match (c.proven, c.least_waste) {
            (true, true) => "No list costs less, and none of the same cost uses less stock.".to_string(),
            (true, false) => "No list costs less.".to_string(),
            _ => format!("A list could be cheaper by {} at most.", c.gap().shown()),
        };
        flow.paragraph(&format!(
            "{} bars, {} of stock, {} waste ({} %), saw cut {}, {} {}. {proof}",
            c.bars.len(),
            u.run(c.used),
            u.run(c.waste),
            trim(100.0 * (c.waste / c.used), 1),
            u.length(c.saw.kerf),
            c.cost.shown(),
            plan.job.about.currency.0,
        ));
        let mut t = Table::new(vec![
            figures("Bar"),
            figures("Stock"),
            sentences("Pieces in the order of cutting: mark, length"),
            figures("Left"),
        ]);
        for (i, b) in c.bars.iter().enumerate() {
            let pieces: Vec<String> = b.pieces.iter().map(|p| piece(p, u)).collect();
            t.row([format!("{}", i + 1), u.length(b.stock), pieces.join("  +  "), u.length(b.offcut)]);
        }
        flow.table(&t);
    }
    flow.finish()
}

/// Mark and length, not to be parted; with the element where the mark does not say it.
fn piece(p: &groundhold_order::Piece, u: Units) -> String {
    let element = if p.mark.starts_with(&p.element) { "" } else { p.element.as_str() };
    format!("{element} {} {}", p.mark, u.length(p.length)).trim().replace(' ', "\u{a0}")
}

fn quote(plan: &Plan) -> Vec<Leaf> {
    let q = &plan.quote;
    let u = plan.job.about.units;
    let mut flow = Flow::new(Paper::A4, "Order", "Quote");
    flow.title("Quote");
    flow.paragraph(&format!("For {}. All amounts in {}.", plan.job.about.client, currency(plan)));
    let mut t = Table::new(vec![
        sentences("Item"),
        sentences("What for"),
        figures("Quantity"),
        words("Unit"),
        figures("Rate"),
        figures("Amount"),
    ]);
    for (head, sum) in &q.heads {
        t.group(capital(head.word()));
        for l in q.lines.iter().filter(|l| l.head == *head) {
            t.row([
                item(&l.item, l.stock_length, u),
                what(l.head, &l.what),
                trim(l.quantity, 2),
                l.unit.shown().into(),
                l.rate.map_or("–".into(), Money::shown),
                amount(l.amount),
            ]);
        }
        let word = format!("{} in all", capital(head.word()));
        t.sum([String::new(), word, String::new(), String::new(), String::new(), sum.shown()]);
    }
    flow.table(&t);
    flow.heading("Sum");
    let percent = |s: Share| format!("{} %", trim(s.to_percent(), 2));
    let mut t = Table::new(vec![sentences(""), figures(""), figures("")]);
    t.row(["Net".into(), String::new(), q.net.shown()]);
    if q.terms.overhead > Share::ZERO {
        t.row(["Overhead".into(), percent(q.terms.overhead), q.overhead.shown()]);
    }
    t.row(["Margin".into(), percent(q.terms.margin), q.margin.shown()]);
    t.sum(["Before tax".into(), String::new(), q.before_tax.shown()]);
    t.row(["Tax".into(), percent(q.terms.tax), q.tax.shown()]);
    t.sum([format!("To pay, {}", currency(plan)), String::new(), q.total.shown()]);
    flow.table(&t);
    if !q.is_complete() {
        flow.paragraph(&format!("Incomplete: no price for {}.", q.missing.join(", ")));
    }
    let mut t = Table::new(vec![sentences("Element"), figures("Net"), figures("In all")]);
    for p in &q.parts {
        t.row([whole(&p.element), p.net.shown(), p.total.shown()]);
    }
    flow.titled("By element", "Net, and in all with margin and tax.", &t);
    flow.finish()
}
