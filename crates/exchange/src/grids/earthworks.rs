//! What is cut, filled, used, left over and carted away?

use groundhold_plan::Plan;
use groundhold_shape::GroundKind;

use crate::grid::{Cell, Grid};

fn kind(k: GroundKind) -> &'static str {
    match k {
        GroundKind::Pad => "pad",
        GroundKind::Ramp => "ramp",
        GroundKind::Tread => "steps",
        GroundKind::Batter => "batter",
    }
}

/// Three parts under one head: cut and fill between the surfaces, the account of the dig, and the sum of each earth.
/// Dug, used and over are bank volumes, placed and short compacted ones.
pub(crate) fn earthworks(plan: &Plan) -> Grid {
    let columns = [
        ("part", 0),
        ("element", 0),
        ("what", 0),
        ("earth", 0),
        ("cut_m3", 3),
        ("fill_m3", 3),
        ("dug_bank_m3", 3),
        ("placed_compacted_m3", 3),
        ("used_bank_m3", 3),
        ("over_bank_m3", 3),
        ("over_loose_m3", 3),
        ("short_compacted_m3", 3),
        ("over_kg", 0),
        ("loads", 0),
    ];
    let mut grid = Grid::new("earthworks", &columns);
    let mut add = |first: Vec<Cell>, gap: usize, figures: Vec<Cell>| {
        let mut row = first;
        row.extend(std::iter::repeat_n(Cell::Empty, gap));
        row.extend(figures);
        row.resize(columns.len(), Cell::Empty);
        grid.rows.push(row);
    };
    for m in &plan.moves {
        let first = vec!["surface".into(), (&m.element).into(), kind(m.kind).into(), Cell::Empty];
        add(first, 0, vec![m.volumes.cut.into(), m.volumes.fill.into()]);
    }
    for r in &plan.dug.rows {
        let first = vec!["account".into(), (&r.element).into(), r.what.into(), r.earth.words().into()];
        add(first, 2, vec![r.dug.into(), r.placed.into()]);
    }
    for s in plan.dug.streams() {
        let first = vec!["sum".into(), Cell::Empty, Cell::Empty, s.earth.words().into()];
        let loads = s.loads.as_ref().map(|l| l.count);
        let figures = vec![
            s.dug.into(),
            s.placed.into(),
            s.used.into(),
            s.over.into(),
            s.over_loose.into(),
            s.short.into(),
            s.over_mass.into(),
            loads.into(),
        ];
        add(first, 2, figures);
    }
    grid
}
