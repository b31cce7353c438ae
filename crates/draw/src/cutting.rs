//! How is each bar cut: the pieces to one scale, the saw cuts, and what is left?

use groundhold_order::{Bar, CuttingPlan};
use groundhold_plan::Plan;
use groundhold_quantity::{Currency, Length, Units};

use crate::dimension::figure;
use crate::hatch;
use crate::pens::{
    BLACK, FIGURE, FINE, GREY, HAIR, MEDIUM, NAME, SMALL, THIN, TIMBER_WASH, area, group, line, oblong, stroke,
};
use crate::scene::{At, Item, Label, Pen, Scene, Weight};
use crate::type_metrics;
use crate::view::scale_for;

/// Height of a bar, and from one bar to the next.
const HIGH: f64 = 5.4;
const STEP: f64 = 7.6;
/// Room for the number of a bar.
const LEFT: f64 = 30.0;

/// Bars that are cut into the same lengths with the same marks stand once, with their number.
struct Row<'a> {
    bar: &'a Bar,
    first: usize,
    count: usize,
}

fn rows(c: &CuttingPlan) -> Vec<Row<'_>> {
    let mut rows: Vec<Row> = vec![];
    for (i, bar) in c.bars.iter().enumerate() {
        match rows.last_mut() {
            Some(r) if *r.bar == *bar => r.count += 1,
            _ => rows.push(Row { bar, first: i + 1, count: 1 }),
        }
    }
    rows
}

/// The cutting lists as bars to one scale, on as many sheets as they need; one empty sheet where nothing is cut.
pub(crate) fn cutting_bars(plan: &Plan, width: f64, height: f64) -> Vec<Scene> {
    let units = plan.job.about.units;
    let lists = &plan.take_off.cutting;
    let longest = lists.iter().flat_map(|c| &c.bars).map(|b| b.stock.to_m()).fold(0.0, f64::max);
    let empty = || Scene::new(width, height, "Cutting list");
    if longest <= 0.0 || width < LEFT + 40.0 || height < 40.0 {
        return vec![empty()];
    }
    let scale = scale_for(longest, 0.0, width - LEFT - 24.0, height);
    let k = 1000.0 / scale;
    let mut sheets = vec![];
    let mut scene = empty();
    let mut y = 5.0;
    let turn = |scene: &mut Scene, y: &mut f64, sheets: &mut Vec<Scene>| {
        let full = std::mem::replace(scene, empty());
        sheets.push(full);
        *y = 5.0;
    };
    for c in lists {
        let rows = rows(c);
        if y + 16.0 + STEP > height - 8.0 {
            turn(&mut scene, &mut y, &mut sheets);
        }
        scene.items.extend(head(c, y, units, &plan.job.about.currency, width));
        y += 10.5;
        for r in rows {
            if y + STEP > height - 8.0 {
                turn(&mut scene, &mut y, &mut sheets);
                let again = Label::new(At::mm(2.0, y), format!("{}, continued", c.material), NAME).bold();
                scene.push(again.into());
                y += 5.5;
            }
            scene.items.push(bar(c, &r, y, k, units));
            y += STEP;
        }
        y += 5.0;
    }
    sheets.push(scene);
    let n = sheets.len();
    for (i, s) in sheets.iter_mut().enumerate() {
        s.scale = format!("1:{}", scale.round());
        let kerf = lists.first().map_or(Length::ZERO, |c| c.saw.kerf);
        let mut words = format!(
            "Lengths in mm to scale 1:{}; saw cut {}; hatched: what is left over",
            scale.round(),
            units.length(kerf)
        );
        if n > 1 {
            words = format!("{words}; sheet {} of {n}", i + 1);
        }
        s.items.push(Label::new(At::mm(2.0, height - 2.0), words, SMALL).ink(GREY).into());
        if n > 1 {
            s.title = format!("Cutting list, sheet {} of {n}", i + 1);
        }
    }
    sheets
}

fn head(c: &CuttingPlan, y: f64, units: Units, currency: &Currency, width: f64) -> Vec<Item> {
    let proof = if c.proven {
        "no cheaper list exists (proven)".to_string()
    } else {
        format!("at most {} {} above the cheapest possible list", currency.0, c.gap().shown())
    };
    let share = if c.used > Length::ZERO { c.waste / c.used * 100.0 } else { 0.0 };
    let words =
        format!("{} bars, {} in all, {share:.1} % left over and sawn away; {proof}", c.bars.len(), units.run(c.used));
    vec![
        Label::new(At::mm(2.0, y), c.material.clone(), NAME).bold().into(),
        Label::new(At::mm(2.0, y + 4.2), words, FIGURE).ink(GREY).into(),
        line(vec![At::mm(2.0, y + 5.6), At::mm(width - 2.0, y + 5.6)], Pen::new(HAIR, GREY)),
    ]
}

fn bar(c: &CuttingPlan, r: &Row, y: f64, k: f64, units: Units) -> Item {
    let b = r.bar;
    let right = LEFT + b.stock.to_m() * k;
    let mut items = vec![];
    let name = if r.count > 1 { format!("{}–{}", r.first, r.first + r.count - 1) } else { r.first.to_string() };
    items.push(Label::new(At::mm(2.0, y + 3.9), name, FIGURE).bold().into());
    let stock = if r.count > 1 { format!("{} × {}", r.count, figure(units, b.stock)) } else { figure(units, b.stock) };
    items.push(Label::new(At::mm(LEFT - 2.0, y + 3.9), stock, FIGURE).end().into());
    items.push(area(oblong(LEFT, y, right, y + HIGH), Some(Pen::new(FINE, BLACK)), None));
    let mut x = LEFT;
    for (i, p) in b.pieces.iter().enumerate() {
        if i > 0 {
            x += c.saw.kerf.to_m() * k;
        }
        let end = x + p.length.to_m() * k;
        items.push(piece(&p.mark, &figure(units, p.length), x, end, y));
        x = end;
    }
    let rest = oblong((x + c.saw.kerf.to_m() * k).min(right), y, right, y + HIGH);
    if right - x > 0.3 {
        items.extend(hatch::lines(std::slice::from_ref(&rest), 45.0, 1.3, &Pen::new(HAIR, GREY)));
        items.push(stroke(At::mm(x, y), At::mm(x, y + HIGH), Pen::new(THIN, BLACK)));
    }
    if b.offcut > Length::ZERO {
        items.push(
            Label::new(At::mm(right + 1.5, y + 3.9), format!("left {}", figure(units, b.offcut)), SMALL)
                .ink(GREY)
                .into(),
        );
    }
    group(format!("bar {}", r.first), format!("bar {} of {}", r.first, c.material), items)
}

/// A piece with its mark and its length: beside each other, above each other, or the mark alone.
fn piece(mark: &str, length: &str, x: f64, end: f64, y: f64) -> Item {
    let mut items = vec![area(oblong(x, y, end, y + HIGH), Some(Pen::new(MEDIUM, BLACK)), Some(TIMBER_WASH))];
    let wide = end - x - 1.2;
    let middle = (x + end) / 2.0;
    let w = |t: &str, s: f64, b: Weight| type_metrics::width(t, s, b);
    let gap = 2.0;
    let both = w(mark, FIGURE, Weight::Bold) + gap + w(length, FIGURE, Weight::Regular);
    if both <= wide {
        let left = middle - both / 2.0;
        items.push(Label::new(At::mm(left, y + 3.7), mark, FIGURE).bold().into());
        items.push(Label::new(At::mm(left + both, y + 3.7), length, FIGURE).end().into());
    } else {
        let size = |t: &str, b: Weight| (2.0_f64).min(2.0 * wide / w(t, 2.0, b).max(1e-9));
        let (m, l) = (size(mark, Weight::Bold), size(length, Weight::Regular));
        if m >= 1.2 {
            items.push(Label::new(At::mm(middle, y + 2.4), mark, m).middle().bold().into());
        }
        if l >= 1.2 {
            items.push(Label::new(At::mm(middle, y + 4.9), length, l).middle().into());
        }
    }
    group(mark, format!("{mark}, {length}"), items)
}
