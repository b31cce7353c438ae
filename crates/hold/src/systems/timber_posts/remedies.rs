//! What would mend it? Every remedy is tried on a copy of the case and offered only where it passes.

use groundhold_finding::{Adjust, Remedy};
use groundhold_member::timber::{Section, grade};
use groundhold_quantity::{Length, trim};
use groundhold_working::Refused;

use super::checks::{boards, strength};
use super::spec::bay_of;
use super::{Boards, MOST_DEPTH, TimberPostSpec, aside};
use crate::posted::place::refusal;
use crate::posted::{HOLES, embedment, highest, solved_states};
use crate::{Check, CheckKind, Layout, LoadCase, Post, PostChange, Spec, System, WallCase};

/// Board thicknesses that merchants keep. Common practice, no source.
pub const THICKNESSES: [Length; 5] =
    [Length::mm(38.0), Length::mm(50.0), Length::mm(63.0), Length::mm(75.0), Length::mm(100.0)];
/// Posts that merchants keep, breadth and depth in load direction. Common practice, no source.
pub const POSTS: [(Length, Length); 7] = [
    (Length::mm(75.0), Length::mm(100.0)),
    (Length::mm(100.0), Length::mm(100.0)),
    (Length::mm(75.0), Length::mm(150.0)),
    (Length::mm(100.0), Length::mm(150.0)),
    (Length::mm(150.0), Length::mm(150.0)),
    (Length::mm(100.0), Length::mm(200.0)),
    (Length::mm(150.0), Length::mm(200.0)),
];
/// No closer spacing than this is offered: holes would run into each other.
pub(crate) const CLOSEST: Length = Length::mm(450.0);

/// A changed copy of the case, laid out.
pub(crate) struct Trial {
    pub case: WallCase,
    pub spec: TimberPostSpec,
    pub layout: Layout,
}

pub(crate) fn trial(case: &WallCase, spec: TimberPostSpec, change: impl FnOnce(&mut WallCase)) -> Option<Trial> {
    let mut case = case.clone();
    case.spec = Spec::TimberPosts(spec.clone());
    change(&mut case);
    case.check().ok()?;
    let layout = spec.lay_out(&case).ok()?;
    Some(Trial { case, spec, layout })
}

impl Trial {
    fn stands(&self, states: &[LoadCase]) -> bool {
        let at = |p: &Post| {
            embedment::utilisation_at(
                &self.case,
                &self.spec.posted(),
                &self.layout.bays,
                p,
                states.iter().copied(),
                p.depth,
            )
        };
        highest(&self.layout).is_none_or(|p| at(p) <= 1.0) && self.layout.posts.iter().all(|p| at(p) <= 1.0)
    }
    /// No check of these kinds fails, neither of posts nor of boards.
    pub fn carries(&self, kinds: &[CheckKind]) -> bool {
        let passes = |found: Result<Vec<Check>, Refused>| {
            found.is_ok_and(|all| all.iter().all(|c| !kinds.contains(&c.kind) || !c.fails()))
        };
        let of_posts = [CheckKind::PostBending, CheckKind::PostShear, CheckKind::PostDeflection];
        if kinds == [CheckKind::PostDeflection] {
            return still(&self.case, &self.spec, &self.layout);
        }
        if kinds.iter().any(|k| of_posts.contains(k)) {
            let post = |p: &Post| passes(strength::of_post(&self.case, &self.spec, &self.layout, p));
            // The highest first: it usually settles the matter.
            highest(&self.layout).is_none_or(post) && self.layout.posts.iter().all(post)
        } else {
            passes(boards::checks(&self.case, &self.spec, &self.layout))
        }
    }
}

pub(crate) fn adjust(case: &WallCase, field: &str, value: String) -> Vec<Adjust> {
    vec![Adjust { element: case.id.clone(), field: field.into(), value }]
}

fn mm(l: Length) -> String {
    format!("{} mm", trim(l.to_mm(), 0))
}

/// Spacings that whole stock boards divide into, below the present bay, widest first.
fn closer(spec: &TimberPostSpec) -> Vec<Length> {
    let bay = bay_of(spec);
    let of_stock = |s: &Length| (1..=12).map(|n| *s / f64::from(n)).collect::<Vec<_>>();
    let mut all: Vec<Length> = spec.stock.iter().flat_map(of_stock).collect();
    all.push(bay / 2.0);
    all.retain(|l| CLOSEST <= *l && *l < bay - Length::mm(1.0));
    all.sort_by(|a, b| b.si().total_cmp(&a.si()));
    all
}

/// The depth at which all posts stand in the given states.
pub(crate) fn deeper(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, states: &[LoadCase]) -> Option<Remedy> {
    let mut depth = Some(Length::ZERO);
    for post in layout.posts.iter().filter(|p| !p.built) {
        let least = embedment::least_depth(case, &spec.posted(), &layout.bays, post, states);
        depth = depth.zip(least).map(|(a, b)| a.max(b));
    }
    let d = depth.filter(|d| *d <= MOST_DEPTH)?;
    let mut s = spec.clone();
    s.hole.depth = Some(d);
    trial(case, s, |_| {}).filter(|t| t.stands(states))?;
    let depths = || layout.posts.iter().map(|p| p.depth);
    let (least, most) =
        (depths().reduce(Length::min).unwrap_or_default(), depths().reduce(Length::max).unwrap_or_default());
    let now = if most - least < Length::mm(1.0) {
        case.units.length(most)
    } else {
        format!("{} to {}", case.units.length(least), case.units.length(most))
    };
    let says = format!("Posts {} deep in the ground instead of {now}.", case.units.length(d));
    Some(Remedy::ours(says, adjust(case, "spec.hole_depth", mm(d))))
}

/// Deeper, wider or closer holes for posts that turn over, in the states in which they must pass.
pub(crate) fn embedment(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, states: &[LoadCase]) -> Vec<Remedy> {
    let mut all: Vec<Remedy> = deeper(case, spec, layout, states).into_iter().collect();
    let wider = HOLES.iter().filter(|d| spec.hole.diameter < **d).find(|d| {
        let mut s = spec.clone();
        s.hole.diameter = **d;
        trial(case, s, |_| {}).is_some_and(|t| t.stands(states))
    });
    if let Some(d) = wider {
        let says = format!(
            "Holes of {} diameter instead of {}.",
            case.units.length(*d),
            case.units.length(spec.hole.diameter)
        );
        all.push(Remedy::ours(says, adjust(case, "spec.hole_diameter", mm(*d))));
    }
    all.extend(spaced(case, spec, |t| t.stands(states)));
    if all.is_empty() {
        all.push(Remedy::theirs(
            "A lower wall, two walls one above the other, or another kind of wall by an engineer.",
        ));
    }
    all
}

/// The widest closer spacing at which a trial passes.
fn spaced(case: &WallCase, spec: &TimberPostSpec, passes: impl Fn(&Trial) -> bool) -> Option<Remedy> {
    let found = closer(spec).into_iter().find(|bay| {
        let mut s = spec.clone();
        s.spacing = *bay;
        trial(case, s, |_| {}).is_some_and(|t| passes(&t))
    })?;
    let says = format!("Posts at {} instead of {}.", case.units.length(found), case.units.length(bay_of(spec)));
    Some(Remedy::ours(says, adjust(case, "spec.spacing", mm(found))))
}

/// Thicker boards or closer posts for boards that break or bow.
pub(crate) fn board(case: &WallCase, spec: &TimberPostSpec, kinds: &[CheckKind]) -> Vec<Remedy> {
    let thicker = THICKNESSES.iter().filter(|t| spec.board.thickness < **t).find(|t| {
        let Ok(g) = grade(spec.board.grade.name, &Section::rectangle(spec.board.height, **t)) else { return false };
        let mut s = spec.clone();
        (s.board.thickness, s.board.grade) = (**t, g);
        trial(case, s, |_| {}).is_some_and(|t| t.carries(kinds))
    });
    let mut all = vec![];
    if let Some(t) = thicker {
        let says =
            format!("Boards {} thick instead of {}.", case.units.length(*t), case.units.length(spec.board.thickness));
        let value = format!("{}x{} {}", trim(spec.board.height.to_mm(), 0), trim(t.to_mm(), 0), spec.board.treatment);
        all.push(Remedy::ours(says, adjust(case, "spec.board", value)));
    }
    all.extend(spaced(case, spec, |t| t.carries(kinds)));
    all
}

/// No post's top moves too far. The highest is asked first: it usually settles the matter.
fn still(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> bool {
    let stays = |p: &Post| strength::movements(case, spec, layout, p).is_ok_and(|all| !all.iter().any(Check::fails));
    highest(layout).is_none_or(stays) && layout.posts.iter().all(stays)
}

/// Step in which deeper holes are tried against a lean.
const DEEPER: Length = Length::mm(50.0);

/// The least depth of all holes, in whole steps, at which no post leans or bends too far.
fn steadier(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Option<Remedy> {
    let free = || layout.posts.iter().filter(|p| !p.built).map(|p| p.depth);
    let (now, least) = (free().reduce(Length::max)?, free().reduce(Length::min)?);
    // Only the depths change, so the wall need not be laid out for each.
    let mut deeper = layout.clone();
    let mut passes = |depth: Length| {
        deeper.posts.iter_mut().filter(|p| !p.built).for_each(|p| p.depth = depth);
        still(case, spec, &deeper)
    };
    let depth = |n: u32| DEEPER * f64::from(n);
    let (mut low, mut high) = ((now.si() / DEEPER.si()).floor() as u32, (MOST_DEPTH.si() / DEEPER.si()).floor() as u32);
    if high <= low || !passes(depth(high)) {
        return None;
    }
    // A deeper hole always leans less, so halving finds the least.
    while high - low > 1 {
        let middle = (low + high) / 2;
        if passes(depth(middle)) { high = middle } else { low = middle }
    }
    let mut s = spec.clone();
    s.hole.depth = Some(depth(high));
    trial(case, s, |_| {}).filter(|t| still(&t.case, &t.spec, &t.layout))?;
    let says = format!(
        "Posts {} deep in the ground instead of {} to {}.",
        case.units.length(depth(high)),
        case.units.length(least),
        case.units.length(now)
    );
    Some(Remedy::ours(says, adjust(case, "spec.hole_depth", mm(depth(high)))))
}

/// Deeper holes, stronger posts or closer ones for posts that lean too far.
pub(crate) fn leaning(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, kinds: &[CheckKind]) -> Vec<Remedy> {
    steadier(case, spec, layout).into_iter().chain(post(case, spec, kinds)).collect()
}

/// Stronger posts or closer ones for posts that break.
pub(crate) fn post(case: &WallCase, spec: &TimberPostSpec, kinds: &[CheckKind]) -> Vec<Remedy> {
    let now = spec.post.breadth * spec.post.depth * spec.post.depth;
    let stronger = POSTS.iter().filter(|(b, d)| now < *b * *d * *d).find(|(b, d)| {
        let Ok(g) = grade(spec.post.grade.name, &Section::rectangle(*b, *d)) else { return false };
        let mut s = spec.clone();
        (s.post.breadth, s.post.depth, s.post.grade) = (*b, *d, g);
        trial(case, s, |_| {}).is_some_and(|t| t.carries(kinds))
    });
    let mut all = vec![];
    if let Some((b, d)) = stronger {
        let value = format!("{}x{} {}", trim(b.to_mm(), 0), trim(d.to_mm(), 0), spec.post.treatment);
        let says = format!(
            "Posts of {} across the wall line by {} in the direction of the push.",
            case.units.length(*b),
            case.units.length(*d)
        );
        all.push(Remedy::ours(says, adjust(case, "spec.post", value)));
    }
    all.extend(spaced(case, spec, |t| t.carries(kinds)));
    all
}

/// Boards moved behind the posts, or screws enough.
pub(crate) fn screws(case: &WallCase, spec: &TimberPostSpec) -> Vec<Remedy> {
    let mut s = spec.clone();
    s.boards = Boards::Behind;
    let behind = trial(case, s, |_| {}).is_some_and(|t| t.carries(&[CheckKind::Screws]));
    let says = "Boards behind the posts, where the soil presses them on.";
    behind.then(|| Remedy::ours(says, adjust(case, "spec.boards", "behind".into()))).into_iter().collect()
}

/// What can be done about one post whose hole was refused.
pub(crate) fn refused(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, post: &Post) -> Vec<Remedy> {
    let states: Vec<LoadCase> = solved_states(case).collect();
    let mut all = aside::remedies(case, spec, layout, post, &states);
    let what = refusal(case, post).map_or("rock", |r| r.what.as_str());
    let alone = |p: &Post| {
        embedment::utilisation_at(case, &spec.posted(), &layout.bays, p, states.iter().copied(), p.depth) <= 1.0
    };
    let wider = HOLES.iter().filter(|d| post.hole_diameter < **d).find(|d| {
        let mut p = post.clone();
        p.hole_diameter = **d;
        alone(&p)
    });
    if let Some(d) = wider {
        let says = format!(
            "Post {}: a hole of {} diameter, {} deep as it is.",
            post.number,
            case.units.length(*d),
            case.units.length(post.depth)
        );
        let value = format!("{} at {:.3} m", mm(*d), post.chainage.to_m());
        all.push(Remedy::ours(says, adjust(case, "posts.hole_diameter", value)));
    }
    all.extend(one_more(case, spec, layout, post, &states));
    if all.is_empty() {
        all.extend(wider_and_more(case, spec, layout, post, &states));
    }
    if all.is_empty() {
        all.extend(beside_it(case, spec, post, &states));
    }
    all.extend(lower(case, spec, layout, post, &states));
    all.push(Remedy::theirs(format!(
        "Post {}: tied back, or socketed or dowelled into the {what}, to an engineer's detail.",
        post.number
    )));
    all
}

/// A post more in a bay beside it, or in both.
fn one_more(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    post: &Post,
    states: &[LoadCase],
) -> Option<Remedy> {
    let middle = |b: &crate::Bay| (b.chainage.0 + b.chainage.1) / 2.0;
    let before = layout.bays.iter().find(|b| b.to_post == post.number).map(middle);
    let after = layout.bays.iter().find(|b| b.from_post == post.number).map(middle);
    let sides: Vec<Vec<Length>> =
        [before.into_iter().collect(), after.into_iter().collect(), before.into_iter().chain(after).collect()].into();
    sides.into_iter().filter(|s: &Vec<Length>| !s.is_empty()).find_map(|places| {
        let put = |c: &mut WallCase| {
            c.changes.extend(places.iter().copied().map(PostChange::more));
        };
        let t = trial(case, spec.clone(), put)?;
        let same = t.layout.posts.iter().find(|p| (p.chainage - post.chainage).abs() < Length::mm(1.0))?;
        let u = embedment::utilisation_at(
            &t.case,
            &t.spec.posted(),
            &t.layout.bays,
            same,
            states.iter().copied(),
            same.depth,
        );
        (u <= 1.0).then(|| {
            let at: Vec<String> = places.iter().map(|p| case.units.run(*p)).collect();
            let exact: Vec<String> = places.iter().map(|p| format!("{:.3} m", p.to_m())).collect();
            let n = if places.len() == 1 { "A post more" } else { "Two posts more" };
            let says =
                format!("{n}, at chainage {}: post {} then carries half as much.", at.join(" and "), post.number);
            Remedy::ours(says, adjust(case, "posts.extra", exact.join(", ")))
        })
    })
}

/// How far from the edge of a refused hole the middle of another is offered. Common practice, no source.
pub(crate) const ASIDE: Length = Length::mm(80.0);

/// Where nothing helps at that place: the widest closer spacing at which no post stands in the refused hole or at its
/// edge, and all posts stand.
fn beside_it(case: &WallCase, spec: &TimberPostSpec, post: &Post, states: &[LoadCase]) -> Option<Remedy> {
    let aside = post.hole_diameter / 2.0 + ASIDE;
    let clear = |p: &Post| p.built || aside <= (p.chainage - post.chainage).abs();
    let found = closer(spec).into_iter().find(|bay| {
        let mut s = spec.clone();
        s.spacing = *bay;
        trial(case, s, |_| {}).is_some_and(|t| t.layout.posts.iter().all(clear) && t.stands(states))
    })?;
    let says = format!(
        "Posts at {} instead of {}: none then stands within {} of post {}; probe with a bar before digging.",
        case.units.length(found),
        case.units.length(bay_of(spec)),
        case.units.length(aside),
        post.number
    );
    Some(Remedy::ours(says, adjust(case, "spec.spacing", mm(found))))
}

/// Where neither a wider hole nor posts more will do alone: both, the posts in the bays beside it or as near as holes can be.
fn wider_and_more(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    post: &Post,
    states: &[LoadCase],
) -> Option<Remedy> {
    let beside = |b: &crate::Bay| (b.to_post == post.number || b.from_post == post.number).then_some(b.chainage);
    let bays: Vec<(Length, Length)> = layout.bays.iter().filter_map(beside).collect();
    let middles: Vec<Length> = bays.iter().map(|(a, b)| (*a + *b) / 2.0).collect();
    let close =
        |(a, b): &(Length, Length)| if *b > post.chainage { post.chainage + CLOSEST } else { *a + (*b - *a - CLOSEST) };
    let nearer: Vec<Length> = bays.iter().map(close).collect();
    let widths = HOLES.iter().filter(|d| post.hole_diameter < **d);
    let tries = widths.flat_map(|d| [(*d, &middles), (*d, &nearer)]);
    let passes = |(d, places): &(Length, &Vec<Length>)| {
        let put = |c: &mut WallCase| {
            c.changes.push(PostChange::wider(post.chainage, *d));
            c.changes.extend(places.iter().copied().map(PostChange::more));
        };
        trial(case, spec.clone(), put).is_some_and(|t| {
            let same = t.layout.posts.iter().find(|p| (p.chainage - post.chainage).abs() < Length::mm(1.0));
            let at = |p: &Post| {
                embedment::utilisation_at(&t.case, &t.spec.posted(), &t.layout.bays, p, states.iter().copied(), p.depth)
            };
            same.is_some_and(|p| at(p) <= 1.0)
        })
    };
    let (d, places) = tries.into_iter().find(passes)?;
    let shown: Vec<String> = places.iter().map(|p| case.units.run(*p)).collect();
    let exact: Vec<String> = places.iter().map(|p| format!("{:.3} m", p.to_m())).collect();
    let says = format!(
        "Post {}: a hole of {} diameter, {} deep as it is, and posts more at chainage {}.",
        post.number,
        case.units.length(d),
        case.units.length(post.depth),
        shown.join(" and ")
    );
    let mut change = adjust(case, "posts.hole_diameter", format!("{} at {:.3} m", mm(d), post.chainage.to_m()));
    change.extend(adjust(case, "posts.extra", exact.join(", ")));
    Some(Remedy::ours(says, change))
}

/// The wall and the ground behind lower by whole courses there.
fn lower(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, post: &Post, states: &[LoadCase]) -> Option<Remedy> {
    (1..=3).find_map(|n| {
        let by = (spec.board.height + spec.board_gap) * f64::from(n);
        let mut p = post.clone();
        p.retained = (p.retained - by).max(Length::ZERO);
        p.exposed = (p.exposed - by).max(Length::ZERO);
        let u = embedment::utilisation_at(case, &spec.posted(), &layout.bays, &p, states.iter().copied(), p.depth);
        (u <= 1.0 && by < post.retained).then(|| {
            let courses = if n == 1 { "one course".to_string() } else { format!("{n} courses") };
            Remedy::theirs(format!(
                "The wall and the ground behind lower by {courses} ({}) at post {}.",
                case.units.length(by),
                post.number
            ))
        })
    })
}
