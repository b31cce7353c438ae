//! Where are the marks, and by which tapes are they found and proved?

use groundhold_setout::{Row, SetOut, Tie};
use serde::Serialize;

use super::figure::{level, m, number, xy};

#[derive(Serialize)]
pub(super) struct SetOutView<'a> {
    base_line: Option<BaseView<'a>>,
    /// Staff reading on the datum for which all staff readings are made.
    staff_on_datum_m: f64,
    pegs: Vec<PegView<'a>>,
    marks: Vec<MarkView<'a>>,
    posts: Vec<PostRowView<'a>>,
    diagonals: Vec<DiagonalView<'a>>,
}

#[derive(Serialize)]
struct BaseView<'a> {
    from: &'a str,
    to: &'a str,
    length_m: f64,
}

#[derive(Serialize)]
struct PegView<'a> {
    peg: &'a str,
    at_m: [f64; 2],
    level_m: Option<f64>,
}

#[derive(Serialize)]
struct TapeView<'a> {
    peg: &'a str,
    reads_m: f64,
}

impl TapeView<'_> {
    fn of(t: &Tie) -> TapeView<'_> {
        TapeView { peg: &t.peg, reads_m: m(t.reads) }
    }
    fn both(ties: &Option<(Tie, Tie)>) -> Option<[TapeView<'_>; 2]> {
        ties.as_ref().map(|(a, b)| [TapeView::of(a), TapeView::of(b)])
    }
}

#[derive(Serialize)]
struct MarkView<'a> {
    mark: &'a str,
    element: &'a str,
    what: &'a str,
    at_m: [f64; 2],
    along_off_m: Option<[f64; 2]>,
    tapes: Option<[TapeView<'a>; 2]>,
    crossing_deg: Option<f64>,
    check: Option<TapeView<'a>>,
    ground_m: Option<f64>,
    wanted_m: Option<f64>,
    /// Down is positive.
    dig_m: Option<f64>,
    staff_m: Option<f64>,
}

impl MarkView<'_> {
    fn of(r: &Row) -> MarkView<'_> {
        MarkView {
            mark: &r.mark.id,
            element: &r.mark.element,
            what: &r.mark.what,
            at_m: xy(r.mark.at),
            along_off_m: r.offset.map(|(a, o)| [m(a), m(o)]),
            tapes: TapeView::both(&r.ties),
            crossing_deg: r.crossing.map(|a| number(a.to_deg())),
            check: r.check.as_ref().map(TapeView::of),
            ground_m: r.mark.ground.map(level),
            wanted_m: r.mark.wanted.map(level),
            dig_m: r.dig.map(m),
            staff_m: r.staff.map(m),
        }
    }
}

#[derive(Serialize)]
struct PostRowView<'a> {
    wall: &'a str,
    post: usize,
    at_m: [f64; 2],
    along_off_m: Option<[f64; 2]>,
    tapes: Option<[TapeView<'a>; 2]>,
    running_m: f64,
    string_m: f64,
    hole_bottom_m: f64,
    hole_below_ground_m: Option<f64>,
    hole_below_front_m: f64,
    staff_bottom_m: Option<f64>,
    staff_top_m: Option<f64>,
}

#[derive(Serialize)]
struct DiagonalView<'a> {
    element: &'a str,
    from: &'a str,
    to: &'a str,
    length_m: f64,
}

impl SetOutView<'_> {
    pub fn of(s: &SetOut) -> SetOutView<'_> {
        let posts = s.posts.iter().map(|r| PostRowView {
            wall: &r.post.wall,
            post: r.post.number,
            at_m: xy(r.post.at),
            along_off_m: r.offset.map(|(a, o)| [m(a), m(o)]),
            tapes: TapeView::both(&r.ties),
            running_m: m(r.running),
            string_m: level(r.string),
            hole_bottom_m: level(r.post.hole_bottom),
            hole_below_ground_m: r.hole_below_ground.map(m),
            hole_below_front_m: m(r.hole_below_front),
            staff_bottom_m: r.staff_bottom.map(m),
            staff_top_m: r.staff_top.map(m),
        });
        let diagonals = s.diagonals.iter().map(|d| DiagonalView {
            element: &d.element,
            from: &d.between.0,
            to: &d.between.1,
            length_m: m(d.length),
        });
        SetOutView {
            base_line: s.base.as_ref().map(|(a, b, l)| BaseView { from: a, to: b, length_m: m(*l) }),
            staff_on_datum_m: m(s.staff_on_datum),
            pegs: s.pegs.iter().map(|p| PegView { peg: &p.id, at_m: xy(p.at), level_m: p.level.map(level) }).collect(),
            marks: s.rows.iter().map(MarkView::of).collect(),
            posts: posts.collect(),
            diagonals: diagonals.collect(),
        }
    }
}
