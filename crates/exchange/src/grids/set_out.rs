//! Where are marks, pegs and posts, and by which tapes are they found and proved?

use groundhold_plan::Plan;
use groundhold_setout::Tie;

use crate::grid::{Cell, Grid};

/// Peg and reading of the two tapes that cross.
fn tapes(ties: Option<&(Tie, Tie)>) -> [Cell; 4] {
    match ties {
        Some((a, b)) => [(&a.peg).into(), a.reads.into(), (&b.peg).into(), b.reads.into()],
        None => [Cell::Empty, Cell::Empty, Cell::Empty, Cell::Empty],
    }
}

fn along_off<L: Into<Cell>>(offset: Option<(L, L)>) -> [Cell; 2] {
    offset.map_or([Cell::Empty, Cell::Empty], |(along, off)| [along.into(), off.into()])
}

/// Every mark: off is positive to the left of the base line, dig is positive downwards.
pub(crate) fn marks(plan: &Plan) -> Grid {
    let mut grid = Grid::new(
        "set-out",
        &[
            ("mark", 0),
            ("element", 0),
            ("what", 0),
            ("x_m", 3),
            ("y_m", 3),
            ("along_m", 3),
            ("off_m", 3),
            ("peg_1", 0),
            ("tape_1_m", 3),
            ("peg_2", 0),
            ("tape_2_m", 3),
            ("crossing_deg", 1),
            ("check_peg", 0),
            ("check_tape_m", 3),
            ("ground_m", 3),
            ("wanted_m", 3),
            ("dig_m", 3),
            ("staff_m", 3),
        ],
    );
    for r in &plan.setout.rows {
        let mut row: Vec<Cell> = vec![
            (&r.mark.id).into(),
            (&r.mark.element).into(),
            (&r.mark.what).into(),
            r.mark.at.x.into(),
            r.mark.at.y.into(),
        ];
        row.extend(along_off(r.offset));
        row.extend(tapes(r.ties.as_ref()));
        row.extend([
            r.crossing.map(|a| a.to_deg()).into(),
            r.check.as_ref().map(|t| &t.peg).into(),
            r.check.as_ref().map(|t| t.reads).into(),
            r.mark.ground.into(),
            r.mark.wanted.into(),
            r.dig.into(),
            r.staff.into(),
        ]);
        grid.rows.push(row);
    }
    grid
}

/// Known pegs and offset pegs. The staff reading on the datum is the one for which all staff columns are made.
pub(crate) fn pegs(plan: &Plan) -> Grid {
    let columns =
        [("peg", 0), ("kind", 0), ("wall", 0), ("x_m", 3), ("y_m", 3), ("level_m", 3), ("staff_m", 3), ("beyond_m", 3)];
    let mut grid = Grid::new("set-out-pegs", &columns);
    for p in &plan.setout.pegs {
        let staff = p.level.map(|_| plan.setout.staff_on_datum);
        grid.rows.push(vec![
            (&p.id).into(),
            "known".into(),
            Cell::Empty,
            p.at.x.into(),
            p.at.y.into(),
            p.level.into(),
            staff.into(),
            Cell::Empty,
        ]);
    }
    for p in &plan.setout.offset_pegs {
        grid.rows.push(vec![
            (&p.id).into(),
            "offset".into(),
            (&p.wall).into(),
            p.at.x.into(),
            p.at.y.into(),
            Cell::Empty,
            Cell::Empty,
            p.beyond.into(),
        ]);
    }
    grid
}

/// What proves the marks: the base line, diagonals, and right angles by three tapes.
pub(crate) fn checks(plan: &Plan) -> Grid {
    let columns =
        [("check", 0), ("element", 0), ("from", 0), ("to", 0), ("length_m", 3), ("side_a_m", 3), ("side_b_m", 3)];
    let mut grid = Grid::new("set-out-checks", &columns);
    if let Some((a, b, length)) = &plan.setout.base {
        let row = vec!["base line".into(), Cell::Empty, a.into(), b.into(), (*length).into(), Cell::Empty, Cell::Empty];
        grid.rows.push(row);
    }
    for d in &plan.setout.diagonals {
        let what = if d.equal { "diagonal, as long as the other" } else { "diagonal" };
        let (from, to) = (&d.between.0, &d.between.1);
        grid.rows.push(vec![
            what.into(),
            (&d.element).into(),
            from.into(),
            to.into(),
            d.length.into(),
            Cell::Empty,
            Cell::Empty,
        ]);
    }
    for s in &plan.setout.squares {
        grid.rows.push(vec![
            "right angle, across".into(),
            Cell::Empty,
            (&s.corner).into(),
            Cell::Empty,
            s.across.into(),
            s.a.into(),
            s.b.into(),
        ]);
    }
    grid
}

/// The table by which posts are set.
pub(crate) fn posts(plan: &Plan) -> Grid {
    let mut grid = Grid::new(
        "posts",
        &[
            ("wall", 0),
            ("post", 0),
            ("chainage_m", 3),
            ("x_m", 3),
            ("y_m", 3),
            ("along_m", 3),
            ("off_m", 3),
            ("peg_1", 0),
            ("tape_1_m", 3),
            ("peg_2", 0),
            ("tape_2_m", 3),
            ("spacing_m", 3),
            ("running_m", 3),
            ("string_m", 3),
            ("ground_m", 3),
            ("front_m", 3),
            ("hole_bottom_m", 3),
            ("hole_below_ground_m", 3),
            ("hole_below_front_m", 3),
            ("hole_diameter_m", 3),
            ("post_top_m", 3),
            ("post_length_m", 3),
            ("staff_bottom_m", 3),
            ("staff_top_m", 3),
            ("built", 0),
        ],
    );
    for r in &plan.setout.posts {
        let p = &r.post;
        let length = plan.wall(&p.wall).and_then(|w| w.layout.post(p.number)).map(|q| q.length);
        let mut row: Vec<Cell> =
            vec![(&p.wall).into(), p.number.into(), p.chainage.into(), p.at.x.into(), p.at.y.into()];
        row.extend(along_off(r.offset));
        row.extend(tapes(r.ties.as_ref()));
        row.extend([
            r.spacing.into(),
            r.running.into(),
            r.string.into(),
            p.ground.into(),
            p.front.into(),
            p.hole_bottom.into(),
            r.hole_below_ground.into(),
            r.hole_below_front.into(),
            p.hole_diameter.into(),
            p.top.into(),
            length.into(),
            r.staff_bottom.into(),
            r.staff_top.into(),
            p.built.into(),
        ]);
        grid.rows.push(row);
    }
    grid
}
