//! From depths on a square grid to a volume: the borrow pit.

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Volume of a borrow pit from depths at the corners of equal rectangular cells: each depth counts as often as it is
/// a corner.
///
/// # Source
/// Four-point grid method of surveying texts; the check case is constructed (EW-06).
/// # Symbols
/// A cell area (m²), S_k sum of depths that are corners of k cells (m).
/// # Gives
/// V = A/4·(S_1 + 2S_2 + 4S_4), m³.
/// # Not for
/// Ground that bends inside a cell; grids with cells left out.
/// # Errors
/// Fewer than two rows or columns, or a count that does not fill the rows.
/// # By hand
/// Reference case EW-06: 527.5 m³.
pub(crate) fn grid<N: Number>(depths: &[N], columns: usize, cell: N) -> Option<[N; 4]> {
    if columns < 2 || depths.len() < 2 * columns || !depths.len().is_multiple_of(columns) {
        return None;
    }
    let rows = depths.len() / columns;
    let mut sums = [N::constant(0.0); 3];
    for (i, depth) in depths.iter().enumerate() {
        let at_end = |k: usize, n: usize| usize::from(k == 0 || k == n - 1);
        let edges = at_end(i / columns, rows) + at_end(i % columns, columns);
        let slot = 2 - edges;
        sums[slot] = sums[slot] + *depth;
    }
    let [one, two, four] =
        [sums[0].named("S_1", Unit::M), sums[1].named("S_2", Unit::M), sums[2].named("S_4", Unit::M)];
    Some([one, two, four, (cell / 4.0 * (one + two * 2.0 + four * 4.0)).named("V", Unit::M3)])
}

/// The working of `grid`.
pub static GRID: Working = Working {
    name: "earthwork/grid",
    title: "What volume was dug, from depths on a square grid?",
    source: Source { work: "four-point grid method of surveying texts", place: "common practice, no single source" },
    not_for: "ground that bends inside a cell; grids with cells left out",
    inputs: &[
        Input::new("depths", "d", "depths row by row", Unit::M, Limits::ours(-100.0, 100.0)),
        Input::new("columns", "n", "depths in a row", Unit::NONE, Limits::ours(2.0, 1000.0)),
        Input::new("cell", "A", "area of a cell", Unit::M2, Limits::ours(0.01, 1e6)),
    ],
    outputs: &[
        Output { key: "sum1", words: "sum of depths at one cell's corner", unit: Unit::M },
        Output { key: "sum2", words: "sum of depths shared by two cells", unit: Unit::M },
        Output { key: "sum4", words: "sum of depths shared by four cells", unit: Unit::M },
        Output { key: "volume", words: "volume", unit: Unit::M3 },
    ],
    run: |g| {
        let (depths, columns, cell) = (g.many("depths")?, g.one("columns")?.value(), g.one("cell")?);
        let whole = columns.fract() == 0.0;
        let found = if whole { grid(&depths, columns as usize, cell) } else { None };
        let found = found.ok_or_else(|| g.no_answer("expected at least two full rows of `columns` depths each"))?;
        Ok(found.into_iter().map(Found::One).collect())
    },
};
