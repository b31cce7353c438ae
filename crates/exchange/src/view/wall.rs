//! Where does a wall stand, of which pieces is it made, and what did the checks say?

use groundhold_hold as hold;
use groundhold_plan::{Plan, WallPlan};
use groundhold_shape::Station;
use serde::Serialize;

use super::figure::{level, m, m3, number, xy};

#[derive(Serialize)]
pub(super) struct WallView<'a> {
    wall: &'a str,
    /// The wall of the job; another name where a ramp cuts it into runs.
    of: &'a str,
    length_m: f64,
    retained_most_m: f64,
    exposed_most_m: f64,
    total_most_m: f64,
    concrete_m3: f64,
    hole_spoil_bank_m3: f64,
    /// The highest among the governing checks; above 1 is too much.
    utilisation: f64,
    system: &'a str,
    made_of: &'a str,
    stations: Vec<StationView>,
    strips: Vec<StripView<'a>>,
    bulk: Vec<BulkView<'a>>,
    posts: Vec<PostView>,
    bays: Vec<BayView>,
    boards: Vec<BoardView<'a>>,
    fixings: Vec<FixingView<'a>>,
    checks: Vec<CheckView<'a>>,
    depths_by_method: Vec<MarginView<'a>>,
    slip_factor: Option<f64>,
}

impl WallView<'_> {
    pub fn of<'a>(plan: &'a Plan, w: &'a WallPlan) -> WallView<'a> {
        let l = &w.layout;
        let profile = plan.shaped.walls.iter().find(|p| p.id == w.id || p.id == w.of);
        WallView {
            wall: &w.id,
            of: &w.of,
            length_m: m(l.length),
            retained_most_m: m(l.retained),
            exposed_most_m: m(l.exposed),
            total_most_m: m(l.total),
            concrete_m3: m3(l.concrete()),
            hole_spoil_bank_m3: m3(l.hole_spoil()),
            utilisation: number(w.verdict.utilisation()),
            stations: profile.map_or(vec![], |p| p.stations.iter().map(StationView::of).collect()),
            system: w.case.spec.system().key(),
            made_of: &l.made_of,
            strips: l.strips.iter().map(StripView::of).collect(),
            bulk: l.bulk.iter().map(BulkView::of).collect(),
            posts: l.posts.iter().map(PostView::of).collect(),
            bays: l.bays.iter().map(BayView::of).collect(),
            boards: l.boards.iter().map(BoardView::of).collect(),
            fixings: l.fixings.iter().map(|f| FixingView { item: &f.item, count: f.count, joins: &f.what }).collect(),
            checks: w.verdict.checks.iter().map(CheckView::of).collect(),
            depths_by_method: w.verdict.margins.iter().map(MarginView::of).collect(),
            slip_factor: w.verdict.slip.map(|s| number(s.factor)),
        }
    }
}

/// The ground along the line as wished, before the wall is laid out in whole pieces.
#[derive(Serialize)]
struct StationView {
    chainage_m: f64,
    at_m: [f64; 2],
    front_m: f64,
    behind_m: f64,
    retained_m: f64,
    wanted_top_m: f64,
}

impl StationView {
    fn of(s: &Station) -> StationView {
        StationView {
            chainage_m: m(s.chainage),
            at_m: xy(s.at),
            front_m: level(s.front),
            behind_m: level(s.behind),
            retained_m: m(s.retained),
            wanted_top_m: level(s.wanted_top),
        }
    }
}

/// A stretch with one section.
#[derive(Serialize)]
struct StripView<'a> {
    strip: &'a str,
    chainage_m: [f64; 2],
    base_m: f64,
    foot_m: f64,
    top_m: f64,
    front_m: f64,
    behind_m: f64,
    retained_m: f64,
    width_m: f64,
    courses: usize,
}

impl StripView<'_> {
    fn of(s: &hold::Strip) -> StripView<'_> {
        StripView {
            strip: &s.on,
            chainage_m: [m(s.chainage.0), m(s.chainage.1)],
            base_m: level(s.base),
            foot_m: level(s.foot),
            top_m: level(s.top),
            front_m: level(s.front),
            behind_m: level(s.behind),
            retained_m: m(s.retained),
            width_m: m(s.width),
            courses: s.courses,
        }
    }
}

/// What is bought by measure; the unit is the SI unit of its kind.
#[derive(Serialize)]
struct BulkView<'a> {
    item: &'a str,
    what: &'a str,
    amount: f64,
    unit: &'static str,
}

impl BulkView<'_> {
    fn of(b: &hold::Bulk) -> BulkView<'_> {
        let (amount, unit) = match b.amount {
            hold::Amount::Count(n) => (number(n), ""),
            hold::Amount::Length(l) => (m(l), "m"),
            hold::Amount::Area(a) => (number(a.to_m2()), "m²"),
            hold::Amount::Volume(v) => (m3(v), "m³"),
            hold::Amount::Mass(x) => (number(x.to_kg()), "kg"),
        };
        BulkView { item: &b.item, what: &b.what, amount, unit }
    }
}

#[derive(Serialize)]
struct PostView {
    post: usize,
    chainage_m: f64,
    at_m: [f64; 2],
    top_m: f64,
    bottom_m: f64,
    front_m: f64,
    behind_m: f64,
    retained_m: f64,
    exposed_m: f64,
    depth_m: f64,
    length_m: f64,
    hole_diameter_m: f64,
    corner: bool,
    built: bool,
    extra: bool,
    refused_at_m: Option<f64>,
}

impl PostView {
    fn of(p: &hold::Post) -> PostView {
        PostView {
            post: p.number,
            chainage_m: m(p.chainage),
            at_m: xy(p.at),
            top_m: level(p.top),
            bottom_m: level(p.bottom),
            front_m: level(p.front),
            behind_m: level(p.behind),
            retained_m: m(p.retained),
            exposed_m: m(p.exposed),
            depth_m: m(p.depth),
            length_m: m(p.length),
            hole_diameter_m: m(p.hole_diameter),
            corner: p.corner,
            built: p.built,
            extra: p.extra,
            refused_at_m: p.refused_at.map(m),
        }
    }
}

#[derive(Serialize)]
struct BayView {
    bay: usize,
    from_post: usize,
    to_post: usize,
    chainage_m: [f64; 2],
    courses: usize,
    bottom_m: f64,
    top_m: f64,
    retained_m: f64,
}

impl BayView {
    fn of(b: &hold::Bay) -> BayView {
        BayView {
            bay: b.number,
            from_post: b.from_post,
            to_post: b.to_post,
            chainage_m: [m(b.chainage.0), m(b.chainage.1)],
            courses: b.courses,
            bottom_m: level(b.bottom),
            top_m: level(b.top),
            retained_m: m(b.retained),
        }
    }
}

#[derive(Serialize)]
struct BoardView<'a> {
    mark: &'a str,
    course: usize,
    from_post: usize,
    to_post: usize,
    chainage_m: [f64; 2],
    length_m: f64,
    thickness_m: f64,
    bottom_m: f64,
    top_m: f64,
}

impl BoardView<'_> {
    fn of(b: &hold::Board) -> BoardView<'_> {
        BoardView {
            mark: &b.mark,
            course: b.course,
            from_post: b.from_post,
            to_post: b.to_post,
            chainage_m: [m(b.chainage.0), m(b.chainage.1)],
            length_m: m(b.length),
            thickness_m: m(b.thickness),
            bottom_m: level(b.bottom),
            top_m: level(b.top),
        }
    }
}

#[derive(Serialize)]
struct FixingView<'a> {
    item: &'a str,
    count: usize,
    joins: &'a str,
}

#[derive(Serialize)]
struct CheckView<'a> {
    check: &'static str,
    on: &'a str,
    case: &'static str,
    method: &'static str,
    basis: &'static str,
    demand: f64,
    capacity: f64,
    unit: &'static str,
    utilisation: f64,
    governs: bool,
    /// Names of the workings behind it.
    workings: Vec<&'static str>,
}

impl CheckView<'_> {
    fn of(c: &hold::Check) -> CheckView<'_> {
        CheckView {
            check: c.kind.words(),
            on: &c.on,
            case: c.case.words(),
            method: c.method,
            basis: c.basis,
            demand: number(c.demand),
            capacity: number(c.capacity),
            unit: c.unit.0,
            utilisation: number(c.utilisation),
            governs: c.governs,
            workings: c.traces.iter().map(|t| t.working.name).collect(),
        }
    }
}

#[derive(Serialize)]
struct MarginView<'a> {
    post: usize,
    case: &'static str,
    method: &'static str,
    depth_m: Option<f64>,
    factor: Option<f64>,
    factor_wanted: f64,
    governs: bool,
    note: &'a str,
}

impl MarginView<'_> {
    fn of(x: &hold::MethodMargin) -> MarginView<'_> {
        MarginView {
            post: x.post,
            case: x.case.words(),
            method: x.method,
            depth_m: x.depth.map(m),
            factor: x.factor.map(number),
            factor_wanted: number(x.wanted),
            governs: x.governs,
            note: &x.note,
        }
    }
}
