//! Pegs, marks, diagonals and offset pegs: the set-out sheet as data.

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Angle, Length, Level, Point, Units, distance};
use groundhold_working::Trace;

use crate::posts::{PostMark, PostRow, rows as post_rows};
use crate::{
    BEYOND_THE_TAPE, DIAGONAL, NO_BASE_LINE, PEG_IN_THE_DIG, SQUARE_CHECK, TAPES_CROSS_FLAT, TIES, along_off,
    angle_between_ties,
};

/// A peg whose place is known.
#[derive(Debug, Clone, PartialEq)]
pub struct Peg {
    /// Its letter.
    pub id: String,
    /// Where it stands.
    pub at: Point,
    /// Its level, where it carries one.
    pub level: Option<Level>,
}

/// A point to set out.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// What is painted on its peg: `P1-a`.
    pub id: String,
    /// The element.
    pub element: String,
    /// What it marks: `corner of the pad`.
    pub what: String,
    /// Where.
    pub at: Point,
    /// Level wanted there.
    pub wanted: Option<Level>,
    /// Ground before anything is dug.
    pub ground: Option<Level>,
}

/// The corners of something with square corners, in order.
#[derive(Debug, Clone, PartialEq)]
pub struct Corner {
    /// The element.
    pub element: String,
    /// Marks of its corners in order.
    pub corners: Vec<(String, Point)>,
}

/// Everything to be set out, and from what.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Case {
    /// Known pegs; the first two are the base line.
    pub pegs: Vec<Peg>,
    /// Points.
    pub marks: Vec<Mark>,
    /// Posts.
    pub posts: Vec<PostMark>,
    /// Four-cornered elements whose diagonals are checked.
    pub corners: Vec<Corner>,
    /// Lines of walls, for offset pegs beyond their ends.
    pub lines: Vec<(String, Vec<Point>)>,
    /// Arcs of walls, pads and ramps.
    pub curves: Vec<crate::Arc>,
    /// Outlines inside which the ground is dug or filled.
    pub dug: Vec<Vec<Point>>,
    /// Staff reading on the datum that the staff column is made for.
    pub staff_on_datum: Length,
    /// How long the tape is.
    pub tape: Length,
    /// Units of its sentences.
    pub units: Units,
}

impl Case {
    /// The base line.
    pub fn base(&self) -> Option<(&Peg, &Peg)> {
        match &self.pegs[..] {
            [a, b, ..] if a.at != b.at => Some((a, b)),
            _ => None,
        }
    }
    /// What the staff reads on a level, with the instrument as high above the datum as `staff_on_datum` says.
    pub fn staff(&self, wanted: Level) -> Option<Length> {
        let datum = self.pegs.iter().find_map(|p| p.level)?;
        Some(datum + self.staff_on_datum - wanted)
    }
}

/// A tape from a peg.
#[derive(Debug, Clone, PartialEq)]
pub struct Tie {
    /// The peg.
    pub peg: String,
    /// What the tape reads, in plan.
    pub reads: Length,
}

/// One row of the set-out table.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The point.
    pub mark: Mark,
    /// Along and off the base line, off positive to the left.
    pub offset: Option<(Length, Length)>,
    /// The two tapes that cross best.
    pub ties: Option<(Tie, Tie)>,
    /// The angle at which they cross.
    pub crossing: Option<Angle>,
    /// A third distance that proves it.
    pub check: Option<Tie>,
    /// Dig down (positive) or fill up (negative) from the ground as it is.
    pub dig: Option<Length>,
    /// Staff reading on the wanted level.
    pub staff: Option<Length>,
    /// The working of the tapes.
    pub trace: Option<Trace>,
}

/// A pair of diagonals.
#[derive(Debug, Clone, PartialEq)]
pub struct Diagonal {
    /// The element.
    pub element: String,
    /// Between these marks.
    pub between: (String, String),
    /// Its length.
    pub length: Length,
    /// True where the other diagonal of the same element should read the same.
    pub equal: bool,
    /// Its working, for a rectangle.
    pub trace: Option<Trace>,
}

/// A right angle proved with a tape.
#[derive(Debug, Clone, PartialEq)]
pub struct SquareCheck {
    /// At this corner.
    pub corner: String,
    /// Along one side.
    pub a: Length,
    /// Along the other.
    pub b: Length,
    /// Across.
    pub across: Length,
    /// Its working.
    pub trace: Trace,
}

/// A peg that stands outside the dig, on a wall's line produced.
#[derive(Debug, Clone, PartialEq)]
pub struct OffsetPeg {
    /// Painted on it: `W1-end+1`.
    pub id: String,
    /// The wall.
    pub wall: String,
    /// Where.
    pub at: Point,
    /// Beyond the end by this much.
    pub beyond: Length,
}

/// The whole of it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SetOut {
    /// The base line: two pegs and their distance.
    pub base: Option<(String, String, Length)>,
    /// Known pegs.
    pub pegs: Vec<Peg>,
    /// Points, in the order in which they are set.
    pub rows: Vec<Row>,
    /// Posts.
    pub posts: Vec<PostRow>,
    /// Diagonals.
    pub diagonals: Vec<Diagonal>,
    /// Right angles.
    pub squares: Vec<SquareCheck>,
    /// Offset pegs.
    pub offset_pegs: Vec<OffsetPeg>,
    /// Arcs by offsets from their chords and tangents.
    pub curves: Vec<crate::CurveTable>,
    /// Staff reading on the datum that the staff columns are made for.
    pub staff_on_datum: Length,
    /// What it has against itself.
    pub findings: Vec<Finding>,
}

/// Tapes crossing flatter than this are warned of.
const FLAT: Angle = Angle::deg(30.0);
/// Offset pegs stand this far beyond the end of a wall.
const BEYOND: Length = Length::m(1.0);

/// Makes the tables.
pub fn set_out(case: &Case) -> SetOut {
    let rows: Vec<Row> = case.marks.iter().map(|m| row(case, m)).collect();
    let mut findings = vec![];
    if case.base().is_none() {
        findings.push(Finding::new(&NO_BASE_LINE, Place::job(), "There are no two known pegs to measure from."));
    }
    findings.extend(flat_tapes(&rows));
    findings.extend(long_tapes(case, &rows));
    findings.extend(pegs_in_the_dig(case));
    SetOut {
        base: case.base().map(|(a, b)| (a.id.clone(), b.id.clone(), distance(a.at, b.at))),
        pegs: case.pegs.clone(),
        posts: post_rows(case),
        diagonals: case.corners.iter().flat_map(diagonals).collect(),
        squares: case.corners.iter().flat_map(squares).collect(),
        offset_pegs: case.lines.iter().flat_map(|(wall, line)| offset_pegs(wall, line)).collect(),
        curves: crate::curve_tables(&case.curves),
        staff_on_datum: case.staff_on_datum,
        rows,
        findings,
    }
}

fn row(case: &Case, mark: &Mark) -> Row {
    let offset = case.base().and_then(|(a, b)| along_off(a.at, b.at, mark.at));
    let ties = best_ties(case, mark.at);
    let peg = |tie: &Tie| case.pegs.iter().find(|p| p.id == tie.peg).map(|p| p.at);
    let crossing = ties.as_ref().and_then(|(a, b)| Some(angle_between_ties(mark.at, peg(a)?, peg(b)?)));
    let trace = ties.as_ref().and_then(|(a, b)| {
        let base = distance(peg(a)?, peg(b)?).to_m();
        Some(Trace::new(&TIES, vec![a.reads.to_m().into(), b.reads.to_m().into(), base.into()]))
    });
    let used = |id: &str| ties.as_ref().is_some_and(|(a, b)| a.peg == id || b.peg == id);
    let check = case
        .pegs
        .iter()
        .filter(|p| !used(&p.id))
        .map(|p| Tie { peg: p.id.clone(), reads: distance(p.at, mark.at) })
        .min_by(|a, b| a.reads.to_m().total_cmp(&b.reads.to_m()));
    Row {
        offset,
        crossing,
        check,
        dig: mark.ground.zip(mark.wanted).map(|(g, w)| g - w),
        staff: mark.wanted.and_then(|w| case.staff(w)),
        trace,
        ties,
        mark: mark.clone(),
    }
}

/// The two pegs from which the tapes cross nearest to a right angle, those within the tape's length first.
pub(crate) fn best_ties(case: &Case, at: Point) -> Option<(Tie, Tie)> {
    let mut best: Option<((bool, f64), (Tie, Tie))> = None;
    for (i, a) in case.pegs.iter().enumerate() {
        for b in &case.pegs[i + 1..] {
            let (la, lb) = (distance(a.at, at), distance(b.at, at));
            if la.to_mm() < 1.0 || lb.to_mm() < 1.0 {
                continue;
            }
            let reach = case.tape.to_m() <= 0.0 || la.max(lb) <= case.tape;
            let rank = (reach, angle_between_ties(at, a.at, b.at).to_rad());
            if best.as_ref().is_none_or(|(r, _)| *r < rank) {
                let tie = |p: &Peg, l| Tie { peg: p.id.clone(), reads: l };
                best = Some((rank, (tie(a, la), tie(b, lb))));
            }
        }
    }
    best.map(|(_, ties)| ties)
}

fn flat_tapes(rows: &[Row]) -> Vec<Finding> {
    let flat = rows.iter().filter_map(|r| Some((r, r.crossing.filter(|c| *c < FLAT)?)));
    flat.map(|(r, angle)| {
        let says = format!(
            "The tapes to {} cross at {:.0}°; use the offset from the base line, or drive a peg nearer to it.",
            r.mark.id,
            angle.to_deg()
        );
        let found = Finding::new(&TAPES_CROSS_FLAT, Place::on(&r.mark.element, r.mark.id.clone()), says);
        match &r.trace {
            Some(t) => found.with_trace(t.clone()),
            None => found,
        }
    })
    .collect()
}

fn long_tapes(case: &Case, rows: &[Row]) -> Vec<Finding> {
    if case.tape.to_m() <= 0.0 {
        return vec![];
    }
    let long = rows.iter().filter(|r| r.ties.as_ref().is_some_and(|(a, b)| a.reads.max(b.reads) > case.tape));
    long.map(|r| {
        let says = format!("{} lies farther from the pegs than the tape's {}.", r.mark.id, case.units.run(case.tape));
        Finding::new(&BEYOND_THE_TAPE, Place::on(&r.mark.element, r.mark.id.clone()), says)
    })
    .collect()
}

fn pegs_in_the_dig(case: &Case) -> Vec<Finding> {
    let inside = |p: &&Peg| case.dug.iter().any(|ring| contains(ring, p.at));
    let found = case.pegs.iter().filter(inside).map(|p| {
        let says = format!("Peg {} stands where the ground is dug or filled; carry it out of the way first.", p.id);
        Finding::new(&PEG_IN_THE_DIG, Place::on("", format!("peg {}", p.id)), says)
    });
    found.collect()
}

fn contains(ring: &[Point], p: Point) -> bool {
    let mut inside = false;
    for (i, a) in ring.iter().enumerate() {
        let b = ring[(i + 1) % ring.len()];
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x) {
            inside = !inside;
        }
    }
    inside
}

/// Both diagonals of a four-cornered element.
fn diagonals(corner: &Corner) -> Vec<Diagonal> {
    let [a, b, c, d] = &corner.corners[..] else { return vec![] };
    let (ac, bd) = (distance(a.1, c.1), distance(b.1, d.1));
    let equal = (ac - bd).abs() < Length::mm(1.0);
    let trace =
        equal.then(|| Trace::new(&DIAGONAL, vec![distance(a.1, b.1).to_m().into(), distance(b.1, c.1).to_m().into()]));
    let one = |p: &(String, Point), q: &(String, Point), length| Diagonal {
        element: corner.element.clone(),
        between: (p.0.clone(), q.0.clone()),
        length,
        equal,
        trace: trace.clone(),
    };
    vec![one(a, c, ac), one(b, d, bd)]
}

/// At each square corner, the largest 3-4-5 multiple that fits on the sides.
fn squares(corner: &Corner) -> Vec<SquareCheck> {
    let n = corner.corners.len();
    let mut found = vec![];
    for i in 0..n {
        let (before, at, after) = (&corner.corners[(i + n - 1) % n], &corner.corners[i], &corner.corners[(i + 1) % n]);
        let (u, v) = (before.1 - at.1, after.1 - at.1);
        let square = u.unit().dot(v.unit()).abs() < 1e-6;
        // Halves of 3-4-5 keep all three on marks of the tape.
        let steps = (u.length() / 3.0).min(v.length() / 4.0).max((u.length() / 4.0).min(v.length() / 3.0));
        let k = (steps * 2.0 + 1e-6).floor() / 2.0;
        if !square || k < 0.5 {
            continue;
        }
        let (a, b) = if v.length() >= u.length() { (3.0 * k, 4.0 * k) } else { (4.0 * k, 3.0 * k) };
        let trace = Trace::new(&SQUARE_CHECK, vec![a.into(), b.into(), (5.0 * k).into()]);
        let corner = at.0.clone();
        found.push(SquareCheck { corner, a: Length::m(a), b: Length::m(b), across: Length::m(5.0 * k), trace });
    }
    found
}

fn offset_pegs(wall: &str, line: &[Point]) -> Vec<OffsetPeg> {
    let mut pegs = vec![];
    for (i, w) in line.windows(2).enumerate() {
        let along = (w[1] - w[0]).unit() * BEYOND.to_m();
        for (end, at) in [("a", w[0] - along), ("b", w[1] + along)] {
            let id = format!("{wall}.{}{end}", i + 1);
            pegs.push(OffsetPeg { id, wall: wall.into(), at, beyond: BEYOND });
        }
    }
    pegs
}

#[cfg(test)]
mod tests {
    use super::*;

    fn case() -> Case {
        let peg = |id: &str, x, y, level| Peg { id: id.into(), at: Point::m(x, y), level };
        let mark = |id: &str, x, y| Mark {
            id: id.into(),
            element: "P1".into(),
            what: "corner of the pad".into(),
            at: Point::m(x, y),
            wanted: Some(Level::m(101.08)),
            ground: Some(Level::m(101.5)),
        };
        Case {
            pegs: vec![peg("A", 0.0, 0.0, Some(Level::m(100.0))), peg("B", 14.0, 0.0, None), peg("C", 6.0, 12.0, None)],
            marks: vec![mark("P1-a", 3.0, 4.2), mark("P1-b", 9.0, 4.2), mark("P1-c", 9.0, 8.7), mark("P1-d", 3.0, 8.7)],
            corners: vec![Corner {
                element: "P1".into(),
                corners: [(3.0, 4.2), (9.0, 4.2), (9.0, 8.7), (3.0, 8.7)]
                    .iter()
                    .zip("abcd".chars())
                    .map(|((x, y), c)| (format!("P1-{c}"), Point::m(*x, *y)))
                    .collect(),
            }],
            lines: vec![("W1".into(), vec![Point::m(2.4, 9.4), Point::m(9.6, 9.4)])],
            curves: vec![],
            dug: vec![],
            posts: vec![],
            staff_on_datum: Length::m(1.415),
            tape: Length::m(30.0),
            units: Units::Metric,
        }
    }

    #[test]
    fn a_pad_of_six_by_four_and_a_half_has_equal_diagonals_of_seven_and_a_half() {
        let out = set_out(&case());
        assert_eq!(out.diagonals.len(), 2);
        assert!(out.diagonals.iter().all(|d| d.equal && (d.length.to_m() - 7.5).abs() < 1e-12));
        assert_eq!(out.squares.len(), 4);
        assert!(out.squares.iter().all(|s| (s.across.to_m() - 7.5).abs() < 1e-12), "{:?}", out.squares);
    }

    #[test]
    fn the_staff_column_and_the_dig_are_right_by_hand() {
        let out = set_out(&case());
        let row = &out.rows[0];
        assert!((row.staff.unwrap().to_m() - 0.335).abs() < 1e-9);
        assert!((row.dig.unwrap().to_m() - 0.42).abs() < 1e-9);
        assert!((row.offset.unwrap().0.to_m() - 3.0).abs() < 1e-12);
        assert!(row.check.is_some());
    }

    #[test]
    fn tapes_that_cross_flat_and_a_peg_in_the_dig_are_found() {
        let mut c = case();
        c.pegs.pop();
        c.marks.push(Mark { at: Point::m(7.0, 0.4), ..c.marks[0].clone() });
        c.dug = vec![vec![Point::m(-1.0, -1.0), Point::m(1.0, -1.0), Point::m(1.0, 1.0), Point::m(-1.0, 1.0)]];
        let codes: Vec<&str> = set_out(&c).findings.iter().map(|f| f.kind.code).collect();
        assert_eq!(codes, ["S-001", "S-004"]);
        c.pegs.clear();
        assert!(set_out(&c).findings.iter().any(|f| f.kind.code == "S-003"));
    }
}
