//! What would mend it? Every remedy is tried on a copy of the case and offered only where it passes.

use groundhold_finding::{Adjust, Remedy};
use groundhold_member::steel::{CATALOGUE, Profile, Shape};
use groundhold_member::timber::{Section, grade};
use groundhold_quantity::{Length, trim};

use super::checks;
use super::checks::LEAST_SEAT;
use super::{Made, SteelPost, SteelPostSpec};
use crate::posted::{DEPTH_STEP, HOLES, MOST_DEPTH, embedment};
use crate::{CheckKind, Layout, LoadCase, Post, PostChange, Spec, System, Verdict, WallCase, timber_text};

/// Thicknesses of boards and sleepers that merchants keep. Common practice, no source.
const THICKNESSES: [Length; 6] =
    [Length::mm(38.0), Length::mm(50.0), Length::mm(63.0), Length::mm(75.0), Length::mm(100.0), Length::mm(125.0)];
/// Lengths in which panels and sleepers are kept. Common practice, no source.
const LENGTHS: [Length; 7] = [
    Length::mm(3000.0),
    Length::mm(2400.0),
    Length::mm(2000.0),
    Length::mm(1800.0),
    Length::mm(1500.0),
    Length::mm(1200.0),
    Length::mm(1000.0),
];
/// The checks of this kind of wall for which a size is tried.
const KINDS: [CheckKind; 10] = [
    CheckKind::Embedment,
    CheckKind::PostBending,
    CheckKind::PostShear,
    CheckKind::PostDeflection,
    CheckKind::FlangeBending,
    CheckKind::Seat,
    CheckKind::BoardBending,
    CheckKind::BoardShear,
    CheckKind::BoardBow,
    CheckKind::PanelBending,
];

fn adjust(case: &WallCase, field: &str, value: String) -> Vec<Adjust> {
    vec![Adjust { element: case.id.clone(), field: format!("spec.{field}"), value }]
}

fn mm(l: Length) -> String {
    format!("{} mm", trim(l.to_mm(), 0))
}

/// True where the wall with other sizes fails none of these checks.
fn passes(case: &WallCase, spec: &SteelPostSpec, kinds: &[CheckKind]) -> bool {
    let mut case = case.clone();
    (case.spec, case.search_slip) = (Spec::SteelPosts(spec.clone()), false);
    let Ok(layout) = spec.lay_out(&case) else { return false };
    let checks = checks::judge(&case, spec, &layout, false).checks;
    // What cannot be checked is not passed.
    kinds.iter().all(|k| !checks.iter().any(|c| c.kind == *k && c.fails())) && !checks.is_empty()
}

/// What mends failing checks of these kinds without failing what holds now.
pub(crate) fn mend(case: &WallCase, spec: &SteelPostSpec, verdict: &Verdict, kinds: &[CheckKind]) -> Vec<Remedy> {
    let holds = |k: &CheckKind| !kinds.contains(k) && !verdict.checks.iter().any(|c| c.kind == *k && c.fails());
    let wanted: Vec<CheckKind> = kinds.iter().copied().chain(KINDS.into_iter().filter(holds)).collect();
    let tried = |s: &SteelPostSpec| passes(case, s, &wanted);
    let mut all = vec![];
    match kinds[0] {
        CheckKind::Embedment => all.extend(hole(case, spec, tried)),
        CheckKind::BoardBending | CheckKind::BoardBow => all.extend(thicker(case, spec, tried)),
        CheckKind::PanelBending => {}
        CheckKind::PostDeflection => {
            all.extend(steadier(case, spec, tried));
            all.extend(stronger(case, spec, tried));
        }
        _ => all.extend(stronger(case, spec, tried)),
    }
    all.extend(shorter(case, spec, tried));
    if kinds[0] == CheckKind::PanelBending {
        all.push(Remedy::theirs("Panels for which their maker states more, or with more steel near the pulled face."));
    }
    if all.is_empty() {
        all.push(Remedy::theirs(
            "A lower wall, two walls one above the other, or another kind of wall by an engineer.",
        ));
    }
    all
}

/// Deeper or wider holes.
fn hole(case: &WallCase, spec: &SteelPostSpec, tried: impl Fn(&SteelPostSpec) -> bool) -> Vec<Remedy> {
    let mut all = vec![];
    let step = Length::mm(50.0);
    if let Some(now) = spec.hole.depth {
        let n = ((MOST_DEPTH - now) / step).floor().max(0.0) as usize;
        let deep = |d: Length| {
            let mut s = spec.clone();
            s.hole.depth = Some(d);
            s
        };
        if let Some(d) = (1..=n).map(|i| now + step * i as f64).find(|d| tried(&deep(*d))) {
            let says =
                format!("Posts {} deep in the ground instead of {}.", case.units.length(d), case.units.length(now));
            all.push(Remedy::ours(says, adjust(case, "hole_depth", mm(d))));
        }
    }
    let wide = HOLES.iter().filter(|d| spec.hole.diameter < **d).find(|d| {
        let mut s = spec.clone();
        s.hole.diameter = **d;
        tried(&s)
    });
    if let Some(d) = wide {
        let (new, now) = (case.units.length(*d), case.units.length(spec.hole.diameter));
        all.push(Remedy::ours(
            format!("Holes of {new} diameter instead of {now}."),
            adjust(case, "hole_diameter", mm(*d)),
        ));
    }
    all
}

/// Deeper holes, alike for all posts, against a lean.
fn steadier(case: &WallCase, spec: &SteelPostSpec, tried: impl Fn(&SteelPostSpec) -> bool) -> Option<Remedy> {
    let depth = |n: u32| DEPTH_STEP * f64::from(n);
    let passes = |n: u32| {
        let mut s = spec.clone();
        s.hole.depth = Some(depth(n));
        tried(&s)
    };
    let (mut low, mut high) = (0, (MOST_DEPTH.si() / DEPTH_STEP.si()).round() as u32);
    if !passes(high) {
        return None;
    }
    // A deeper hole always leans less, so halving finds the least.
    while high - low > 1 {
        let middle = (low + high) / 2;
        if passes(middle) { high = middle } else { low = middle }
    }
    let says = format!("Posts {} deep in the ground, all alike.", case.units.length(depth(high)));
    Some(Remedy::ours(says, adjust(case, "hole_depth", mm(depth(high)))))
}

/// The depth at which all posts stand in the given states.
pub(crate) fn deeper(case: &WallCase, spec: &SteelPostSpec, layout: &Layout, states: &[LoadCase]) -> Option<Remedy> {
    let mut depth = Some(Length::ZERO);
    for post in layout.posts.iter().filter(|p| !p.built) {
        let least = embedment::least_depth(case, &spec.posted(), &layout.bays, post, states);
        depth = depth.zip(least).map(|(a, b)| a.max(b));
    }
    let d = depth.filter(|d| Length::ZERO < *d && *d <= MOST_DEPTH)?;
    let says =
        format!("Posts {} deep in the ground: they then stand with the drain blocked too.", case.units.length(d));
    Some(Remedy::ours(says, adjust(case, "hole_depth", mm(d))))
}

/// Heavier I sections of the same standard, lightest first.
fn heavier(spec: &SteelPostSpec) -> Vec<&'static Profile> {
    let area = |p: &Profile| p.shape.figures().map_or(0.0, |(f, _)| f.area);
    let now = area(spec.post.profile);
    let mut all: Vec<&'static Profile> = CATALOGUE
        .iter()
        .filter(|p| matches!(p.shape, Shape::I { .. }) && p.source.work == spec.post.profile.source.work)
        .filter(|p| now < area(p))
        .collect();
    all.sort_by(|a, b| area(a).total_cmp(&area(b)));
    all
}

/// The lightest heavier section with which it passes.
fn stronger(case: &WallCase, spec: &SteelPostSpec, tried: impl Fn(&SteelPostSpec) -> bool) -> Option<Remedy> {
    let found = heavier(spec).into_iter().find(|p| {
        let s = SteelPostSpec { post: SteelPost { profile: p, ..spec.post }, ..spec.clone() };
        tried(&s)
    })?;
    let post = SteelPost { profile: found, ..spec.post };
    let says = format!("Posts {} instead of {}.", post.text(), spec.post.text());
    Some(Remedy::ours(says, adjust(case, "post", post.text())))
}

/// The lightest section whose flanges give a panel the least seat.
pub(crate) fn wider_flange(case: &WallCase, spec: &SteelPostSpec) -> Vec<Remedy> {
    let wide = |p: &&'static Profile| LEAST_SEAT <= spec.seat(&SteelPost { profile: p, ..spec.post });
    let Some(p) = heavier(spec).into_iter().find(wide) else {
        return vec![Remedy::theirs("Posts with wider flanges.")];
    };
    let post = SteelPost { profile: p, ..spec.post };
    let says = format!("Posts {} instead of {}.", post.text(), spec.post.text());
    vec![Remedy::ours(says, adjust(case, "post", post.text()))]
}

/// The next thickness of boards with which it passes.
fn thicker(case: &WallCase, spec: &SteelPostSpec, tried: impl Fn(&SteelPostSpec) -> bool) -> Option<Remedy> {
    let Made::Timber { grade: g, treatment } = &spec.panel.made else { return None };
    let thick = THICKNESSES.iter().filter(|t| spec.panel.thickness < **t).find(|t| {
        let Ok(g) = grade(g.name, &Section::rectangle(spec.panel.height, **t)) else { return false };
        let mut s = spec.clone();
        s.panel.thickness = **t;
        s.panel.made = Made::Timber { grade: g, treatment: treatment.clone() };
        tried(&s)
    })?;
    let (new, now) = (case.units.length(*thick), case.units.length(spec.panel.thickness));
    let value =
        format!("{} {} {}", timber_text::spelled(spec.panel.height, *thick), treatment, g.name).replace("  ", " ");
    Some(Remedy::ours(format!("Panels {new} thick instead of {now}."), adjust(case, "panel", value)))
}

/// The longest shorter panel, and with it closer posts, with which it passes.
fn shorter(case: &WallCase, spec: &SteelPostSpec, tried: impl Fn(&SteelPostSpec) -> bool) -> Option<Remedy> {
    let found = LENGTHS.iter().filter(|l| **l < spec.panel.length).find(|l| {
        let mut s = spec.clone();
        s.panel.length = **l;
        tried(&s)
    })?;
    let (new, now) = (case.units.length(*found), case.units.length(spec.panel.length));
    let says = format!("Panels {new} long instead of {now}, with posts as much closer.");
    Some(Remedy::ours(says, adjust(case, "panel_length", mm(*found))))
}

/// What can be done about one post whose hole was refused.
pub(crate) fn refused(case: &WallCase, spec: &SteelPostSpec, post: &Post) -> Vec<Remedy> {
    let states: Vec<LoadCase> = crate::posted::solved_states(case).collect();
    let wide = HOLES.iter().filter(|d| post.hole_diameter < **d).find(|d| {
        let mut c = case.clone();
        c.changes.push(PostChange::wider(post.chainage, **d));
        let Ok(l) = spec.lay_out(&c) else { return false };
        let same = l.post(post.number);
        same.is_some_and(|p| {
            embedment::utilisation_at(&c, &spec.posted(), &l.bays, p, states.iter().copied(), p.depth) <= 1.0
        })
    });
    let mut all = vec![];
    if let Some(d) = wide {
        let says = format!(
            "Post {}: a hole of {} diameter, {} deep as it is.",
            post.number,
            case.units.length(*d),
            case.units.length(post.depth)
        );
        let value = format!("{} at {:.3} m", mm(*d), post.chainage.to_m());
        let change = Adjust { element: case.id.clone(), field: "posts.hole_diameter".into(), value };
        all.push(Remedy::ours(says, vec![change]));
    }
    all.push(Remedy::theirs(format!(
        "Post {}: tied back, or socketed or dowelled into the rock, to an engineer's detail.",
        post.number
    )));
    all
}
