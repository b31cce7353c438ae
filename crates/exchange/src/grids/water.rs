//! Stretches and shafts of the drains, swales, where rain stands, and who carries which soil where.

use groundhold_plan::Plan;

use crate::grid::{Cell, Grid};

/// Nodes and stretches of every pipe, and the swales point by point.
pub(crate) fn drainage(plan: &Plan) -> Grid {
    let columns = [
        ("part", 0),
        ("of", 0),
        ("what", 0),
        ("along_m", 3),
        ("to_m", 3),
        ("east_m", 3),
        ("north_m", 3),
        ("ground_m", 3),
        ("invert_m", 3),
        ("diameter_m", 3),
        ("fall_ratio", 5),
        ("flow_l_per_s", 3),
        ("capacity_l_per_s", 3),
        ("filled_ratio", 3),
        ("velocity_m_per_s", 3),
    ];
    let mut grid = Grid::new("drainage", &columns);
    for p in &plan.drained.pipes {
        for n in &p.nodes {
            let mut row: Vec<Cell> = vec!["node".into(), (&p.wall).into(), n.kind.words().into(), n.chainage.into()];
            row.extend([
                Cell::Empty,
                n.at.x.into(),
                n.at.y.into(),
                n.ground.into(),
                n.invert.into(),
                p.diameter.into(),
            ]);
            row.resize(columns.len(), Cell::Empty);
            grid.rows.push(row);
        }
        for r in &p.reaches {
            let mut row: Vec<Cell> = vec!["reach".into(), (&p.wall).into(), Cell::Empty];
            row.extend([r.chainage.0.into(), r.chainage.1.into()]);
            row.extend(std::iter::repeat_n(Cell::Empty, 4));
            row.extend([p.diameter.into(), r.fall.to_ratio().into(), r.flow.map(|q| q.to_l_per_s()).into()]);
            row.extend([r.capacity.to_l_per_s().into(), r.filled.into(), r.velocity_m_per_s.into()]);
            grid.rows.push(row);
        }
    }
    for s in &plan.drained.swales {
        for q in &s.points {
            let mut row: Vec<Cell> = vec!["swale".into(), (&s.wish.above).into(), Cell::Empty, q.chainage.into()];
            row.extend([Cell::Empty, q.at.x.into(), q.at.y.into(), q.ground.into(), q.invert.into()]);
            row.resize(columns.len(), Cell::Empty);
            grid.rows.push(row);
        }
    }
    for q in &plan.pools {
        let mut row: Vec<Cell> = vec!["pool".into(), q.against.join(" ").into(), "rain stands here".into()];
        row.extend([Cell::Empty, Cell::Empty, q.at.x.into(), q.at.y.into()]);
        row.extend([(q.level - q.depth).into(), q.level.into()]);
        row.resize(columns.len(), Cell::Empty);
        grid.rows.push(row);
    }
    grid
}

/// Every carry, and every heap in its place.
pub(crate) fn carries(plan: &Plan) -> Grid {
    let columns = [
        ("part", 0),
        ("earth", 0),
        ("from", 0),
        ("to", 0),
        ("bank_m3", 3),
        ("loose_m3", 3),
        ("way_m", 2),
        ("climbs_m", 2),
        ("east_m", 3),
        ("north_m", 3),
        ("radius_m", 3),
        ("height_m", 3),
    ];
    let mut grid = Grid::new("carries", &columns);
    for c in plan.groundwork.carried.iter().flat_map(|c| &c.carries) {
        let loose = plan.dug.streams().into_iter().find(|s| s.earth == c.earth).map(|s| s.factors.loose(c.bank));
        let climbs = c.way.as_ref().map(|w| w.climbs);
        let mut row: Vec<Cell> = vec!["carry".into(), c.earth.words().into(), (&c.from).into(), (&c.to).into()];
        row.extend([c.bank.into(), loose.into(), c.length.into(), climbs.into()]);
        row.resize(columns.len(), Cell::Empty);
        grid.rows.push(row);
    }
    for h in &plan.groundwork.stockpiled.placed {
        let mut row: Vec<Cell> = vec!["heap".into(), (&h.what).into(), Cell::Empty, Cell::Empty, Cell::Empty];
        row.extend([h.volume.into(), Cell::Empty, Cell::Empty, h.at.x.into(), h.at.y.into()]);
        row.extend([h.radius.into(), h.height.into()]);
        grid.rows.push(row);
    }
    grid
}
