//! What changes between two plans of a job: levels, lengths, holes, spoil, order, price, findings.

use groundhold_order::Change;
use groundhold_quantity::{Length, Level, Money, Volume};

use crate::plan::Plan;

/// One post before and after.
#[derive(Debug, Clone, PartialEq)]
pub struct PostChanged {
    /// The wall.
    pub wall: String,
    /// Its chainage, by which the two are matched.
    pub chainage: Length,
    /// Its number, hole depth, hole diameter and cut length before; `None` where it is new.
    pub before: Option<PostFigures>,
    /// The same after; `None` where it is gone.
    pub after: Option<PostFigures>,
}

/// Figures of a post.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PostFigures {
    /// Its number.
    pub number: usize,
    /// Depth in the ground.
    pub depth: Length,
    /// Diameter of its hole.
    pub diameter: Length,
    /// Cut length.
    pub length: Length,
}

/// A quantity before and after.
#[derive(Debug, Clone, PartialEq)]
pub struct Amounts<T> {
    /// Of what.
    pub what: String,
    /// Before.
    pub before: T,
    /// After.
    pub after: T,
}

/// What is left over of an item before and after, in units of the price list.
#[derive(Debug, Clone, PartialEq)]
pub struct LeftOverChanged {
    /// The item.
    pub item: String,
    /// Length of the bars, where it is sold so.
    pub stock_length: Option<Length>,
    /// Before.
    pub before: f64,
    /// After.
    pub after: f64,
}

/// What changes.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Difference {
    /// Levels of pads, feet and tops.
    pub levels: Vec<Amounts<Level>>,
    /// Lengths and heights of walls, ramps and flights.
    pub lengths: Vec<Amounts<Length>>,
    /// Posts.
    pub posts: Vec<PostChanged>,
    /// Cut, fill, spoil, concrete, stone.
    pub volumes: Vec<Amounts<Volume>>,
    /// Lines of the order: still to buy, or left over.
    pub order: Vec<Change>,
    /// What lies on site and is not needed, by item and length, before and after.
    pub left_over: Vec<LeftOverChanged>,
    /// The total before and after.
    pub price: Option<Amounts<Money>>,
    /// Findings that came: code, place, sentence.
    pub findings_new: Vec<(String, String, String)>,
    /// Findings that went.
    pub findings_gone: Vec<(String, String, String)>,
}

impl Difference {
    /// True when nothing changes.
    pub fn is_empty(&self) -> bool {
        *self == Difference::default()
    }
}

/// Less than this is no change.
const SAME: Length = Length::mm(0.5);
const SAME_VOLUME: Volume = Volume::litre(0.5);

/// Lays two plans of a job side by side; only what differs.
pub fn compare(before: &Plan, after: &Plan) -> Difference {
    Difference {
        levels: levels(before, after),
        lengths: lengths(before, after),
        posts: posts(before, after),
        volumes: volumes(before, after),
        order: groundhold_order::compare(&before.quote, &after.quote),
        left_over: left_over(before, after),
        price: (before.quote.total != after.quote.total).then(|| Amounts {
            what: "total with tax".into(),
            before: before.quote.total,
            after: after.quote.total,
        }),
        findings_new: findings(after, before),
        findings_gone: findings(before, after),
    }
}

fn pairs<T: Copy>(a: Vec<(String, T)>, b: Vec<(String, T)>, differs: impl Fn(T, T) -> bool) -> Vec<Amounts<T>> {
    a.into_iter()
        .filter_map(|(what, before)| {
            let after = b.iter().find(|(w, _)| *w == what)?.1;
            differs(before, after).then_some(Amounts { what, before, after })
        })
        .collect()
}

fn levels(a: &Plan, b: &Plan) -> Vec<Amounts<Level>> {
    let of = |p: &Plan| -> Vec<(String, Level)> {
        let pads = p.shaped.pads.iter().map(|x| (format!("{} finished", x.id), x.plane.level_at(x.polygon.centroid())));
        let feet = p.shaped.flights.iter().map(|x| (format!("{} foot", x.id), x.foot_level));
        let ramps = p.shaped.ramps.iter().map(|x| (format!("{} foot", x.id), x.foot_level));
        let tops = p.walls.iter().filter_map(|w| {
            let top = w.layout.strips.iter().map(|s| s.top).reduce(Level::max)?;
            Some((format!("{} highest top", w.id), top))
        });
        pads.chain(feet).chain(ramps).chain(tops).collect()
    };
    pairs(of(a), of(b), |x, y| (x - y).abs() > SAME)
}

fn lengths(a: &Plan, b: &Plan) -> Vec<Amounts<Length>> {
    let of = |p: &Plan| -> Vec<(String, Length)> {
        let walls = p.walls.iter().flat_map(|w| {
            [(format!("{} length", w.id), w.layout.length), (format!("{} retained, most", w.id), w.layout.retained)]
        });
        let ramps = p.shaped.ramps.iter().map(|r| (format!("{} length", r.id), r.length));
        let flights = p.shaped.flights.iter().map(|f| (format!("{} riser", f.id), f.riser));
        walls.chain(ramps).chain(flights).collect()
    };
    pairs(of(a), of(b), |x, y| (x - y).abs() > SAME)
}

fn posts(a: &Plan, b: &Plan) -> Vec<PostChanged> {
    let of = |p: &Plan| -> Vec<(String, Length, PostFigures)> {
        let each = p.walls.iter().flat_map(|w| w.layout.posts.iter().map(move |q| (w, q)));
        each.map(|(w, q)| {
            let figures = PostFigures { number: q.number, depth: q.depth, diameter: q.hole_diameter, length: q.length };
            (w.id.clone(), q.chainage, figures)
        })
        .collect()
    };
    let near = |x: Length, y: Length| (x - y).abs() < Length::mm(20.0);
    let (before, mut after) = (of(a), of(b));
    let mut changed = vec![];
    for (wall, chainage, f) in before {
        match after.iter().position(|(w, c, _)| *w == wall && near(*c, chainage)) {
            Some(i) => {
                let (_, _, g) = after.remove(i);
                let same = (f.depth - g.depth).abs() < SAME
                    && (f.length - g.length).abs() < SAME
                    && (f.diameter - g.diameter).abs() < SAME;
                if !same {
                    changed.push(PostChanged { wall, chainage, before: Some(f), after: Some(g) });
                }
            }
            None => changed.push(PostChanged { wall, chainage, before: Some(f), after: None }),
        }
    }
    let new = after.into_iter().map(|(wall, chainage, g)| PostChanged { wall, chainage, before: None, after: Some(g) });
    changed.extend(new);
    changed
}

fn volumes(a: &Plan, b: &Plan) -> Vec<Amounts<Volume>> {
    let of = |p: &Plan| -> Vec<(String, Volume)> {
        let (cut, fill, _) = crate::earthwork::sum(&p.moves);
        let mut all = vec![
            ("cut".to_string(), cut),
            ("fill".to_string(), fill),
            ("subsoil left over, loose".to_string(), p.dug.subsoil.over_loose),
            ("subsoil short".to_string(), p.dug.subsoil.short),
        ];
        for w in &p.walls {
            all.push((format!("{} hole spoil", w.id), w.layout.hole_spoil()));
            all.push((format!("{} concrete", w.id), w.layout.concrete()));
        }
        all
    };
    pairs(of(a), of(b), |x, y| (x - y).abs() > SAME_VOLUME)
}

fn left_over(a: &Plan, b: &Plan) -> Vec<LeftOverChanged> {
    type Key = (String, Option<Length>);
    let of = |p: &Plan| -> Vec<(Key, f64)> {
        p.take_off.left_over.iter().map(|l| ((l.item.clone(), l.stock_length), l.units)).collect()
    };
    let (before, after) = (of(a), of(b));
    let find = |all: &[(Key, f64)], key: &Key| all.iter().find(|(k, _)| k == key).map_or(0.0, |(_, n)| *n);
    let mut changed = vec![];
    let only_after = after.iter().filter(|(k, _)| before.iter().all(|(b, _)| b != k));
    for (key, _) in before.iter().chain(only_after) {
        let (x, y) = (find(&before, key), find(&after, key));
        if (x - y).abs() > 1e-9 {
            let (item, stock_length) = key.clone();
            changed.push(LeftOverChanged { item, stock_length, before: x, after: y });
        }
    }
    changed
}

/// Findings of `a` that `b` does not have.
fn findings(a: &Plan, b: &Plan) -> Vec<(String, String, String)> {
    let there =
        |f: &groundhold_finding::Finding| b.findings.iter().any(|g| g.kind.code == f.kind.code && g.place == f.place);
    a.findings
        .iter()
        .filter(|f| !there(f))
        .map(|f| (f.kind.code.to_string(), f.place.to_string(), f.says.clone()))
        .collect()
}
