//! Which new wall could take an old one's place, sized by the same engine as every other wall?

use groundhold_earth::{Basis, Soil};
use groundhold_finding::Severity;
use groundhold_hold as hold;
use groundhold_hold::systems::timber_posts::{
    BoardTimber, Boards, CourseFit, Fill, HoleSpec, PostTimber, ScrewSpec, TimberPostSpec,
};
use groundhold_quantity::{Length, Level, Point, Share, Slope, Vector};
use groundhold_surface::Tin;
use hold::Spec;

use crate::job::{Job, OldWall, WallEnd, WallTop, WallWish, timber};

/// Sizes that are tried, the lightest first: post, board, largest spacing in m. Common merchant sizes, no source.
const TRIED: [(&str, &str, f64); 5] = [
    ("100x100 UC4 C24", "200x50 UC4 C24", 1.2),
    ("125x125 UC4 C24", "200x50 UC4 C24", 1.2),
    ("150x150 UC4 C24", "200x50 UC4 C24", 1.0),
    ("150x150 UC4 C24", "200x75 UC4 C24", 0.9),
    ("200x200 UC4 C24", "200x75 UC4 C24", 0.9),
];
/// Depths of the holes that are tried with each, in m: first as it is solved for strength, then deeper, against movement.
const DEPTHS: [Option<f64>; 6] = [None, Some(0.8), Some(1.0), Some(1.2), Some(1.5), Some(1.8)];
/// Height up to which guides know walls of posts and boards. Common practice, no source.
const HIGHEST: Length = Length::m(1.0);
/// Where the ground beside an old wall is asked for, from its line.
const BESIDE: f64 = 0.5;

/// A new wall on the old one's line, the first of those tried that the engine has nothing against; and what to say of it.
pub(crate) fn replacement(
    job: &Job,
    old: &OldWall,
    ground: &Tin,
    soil: &Soil,
    basis: &'static Basis,
) -> (Option<WallWish>, String) {
    let units = job.about.units;
    let other = format!(
        "{} is taken down from the top in short lengths once its cause has ended, and an engineer designs what takes its place; \
         or the bank is laid back.",
        old.id
    );
    if old.seen.height > HIGHEST {
        return (None, other);
    }
    match best(job, old, ground, soil, basis) {
        Some(Sized { spec, layout, watched }) => {
            let wish = wish(job, old, spec);
            let deepest = layout.holes.iter().map(|h| h.depth).reduce(Length::max);
            let posts = deepest.map_or(String::new(), |d| {
                format!(" {} posts with holes down to {},", layout.posts.len(), units.length(d))
            });
            let watch = if watched.is_empty() { String::new() } else { format!(" It will need care: {watched}.") };
            let says = format!(
                "Once the cause has ended: a new wall {} ({}) on this line,{posts} drained, sized by the same \
                 checks as every wall here. Its text can be put into the job.{watch}",
                wish.id,
                wish.spec.system().key()
            );
            (Some(wish), says)
        }
        None => (None, other),
    }
}

/// A wall that was sized.
struct Sized {
    spec: Spec,
    layout: hold::Layout,
    /// What the engine watches in it, in the names of its findings; empty where every check is met.
    watched: String,
}

/// The first of those tried that meets every check; else the first whose top moves more than the mark
/// and that meets all others.
fn best(job: &Job, old: &OldWall, ground: &Tin, soil: &Soil, basis: &'static Basis) -> Option<Sized> {
    let own = job.walls.iter().map(|w| w.spec.clone());
    let tried = TRIED.iter().flat_map(|(post, board, spacing)| {
        DEPTHS.iter().filter_map(|depth| sizes(post, board, *spacing, depth.map(Length::m)))
    });
    let mut second = None;
    for spec in own.chain(tried) {
        let Some(case) = case(job, old, ground, soil, basis, spec.clone()) else { continue };
        let Ok((layout, verdict)) = hold::hold(&case) else { continue };
        // How far its top moves is said of the new wall like of any other, and is no reason to have none.
        let fails = verdict.checks.iter().any(|c| c.fails() && c.kind != hold::CheckKind::PostDeflection);
        if fails || verdict.findings.iter().any(|f| f.severity == Severity::Stop) {
            continue;
        }
        if verdict.utilisation() <= 1.0 {
            return Some(Sized { spec, layout, watched: String::new() });
        }
        if second.is_none() {
            let watch = verdict.findings.iter().filter(|f| f.severity == Severity::Watch);
            let mut names: Vec<&str> = watch.map(|f| f.kind.name).collect();
            names.dedup();
            second = Some(Sized { spec, layout, watched: names.join(", ") });
        }
    }
    second
}

fn sizes(post: &str, board: &str, spacing: f64, depth: Option<Length>) -> Option<Spec> {
    let (p, b) = (timber::read(post).ok()?, timber::read(board).ok()?);
    Some(Spec::TimberPosts(TimberPostSpec {
        ageing: hold::systems::timber_posts::Ageing::NEW,
        post: PostTimber { breadth: p.first, depth: p.second, grade: p.grade?, treatment: p.treatment },
        board: BoardTimber { thickness: b.second, height: b.first, grade: b.grade?, treatment: b.treatment },
        spacing: Length::m(spacing),
        boards: Boards::Behind,
        stock: [2.4, 3.0, 3.6, 4.8].map(Length::m).into(),
        bays_per_board: None,
        hole: HoleSpec { diameter: Length::mm(450.0), depth, fill: Fill::Concrete, gravel_base: Length::mm(100.0) },
        bury: Length::mm(50.0),
        fit: CourseFit::FromBury,
        board_gap: Length::ZERO,
        capping: None,
        screws: ScrewSpec { diameter: Length::mm(8.0), length: Length::mm(120.0), per_joint: 2 },
        neglect_top: Length::mm(150.0),
        lean: Slope::LEVEL,
        bow_limit: groundhold_member::timber::USUAL_BOW_LIMIT,
    }))
}

/// The id of the next wall.
fn free_id(job: &Job) -> String {
    let taken = job.ids();
    (1..=taken.len() + 1).map(|k| format!("W{k}")).find(|id| !taken.contains(&id.as_str())).unwrap_or_default()
}

fn wish(job: &Job, old: &OldWall, spec: Spec) -> WallWish {
    WallWish {
        id: free_id(job),
        name: format!("in place of {}", old.id),
        line: old.line.clone(),
        bends: vec![],
        alongside: None,
        ends: [WallEnd::At, WallEnd::At],
        retains_left: old.retains_left,
        top: WallTop::FollowGround { above: Length::mm(50.0) },
        spec,
        parts: vec![],
        fence: None,
        beside: None,
        changes: vec![],
    }
}

/// Towards the open side of a piece of the line.
pub(crate) fn open_side(a: Point, b: Point, retains_left: bool) -> Vector {
    let left = (b - a).unit().left();
    if retains_left { left * -1.0 } else { left }
}

fn case(
    job: &Job,
    old: &OldWall,
    ground: &Tin,
    soil: &Soil,
    basis: &'static Basis,
    spec: Spec,
) -> Option<hold::WallCase> {
    let mut stations = vec![];
    let mut chainage = Length::ZERO;
    for (i, at) in old.line.iter().enumerate() {
        let (a, b) = if i == 0 { (old.line[0], *old.line.get(1)?) } else { (old.line[i - 1], *at) };
        let facing = open_side(a, b, old.retains_left);
        if i > 0 {
            chainage += Length::m((*at - a).length());
        }
        let front = ground.level_at(*at + facing * BESIDE).or_else(|| ground.level_at(*at)).unwrap_or(Level::m(100.0));
        let behind = front + old.seen.height;
        stations.push(hold::Station {
            chainage,
            at: *at,
            behind,
            front,
            slope_behind: Slope::LEVEL,
            slope_front: Slope::LEVEL,
            wanted_top: behind + Length::mm(50.0),
            facing,
        });
    }
    let corners = stations.iter().skip(1).take(stations.len().saturating_sub(2)).map(|s| s.chainage).collect();
    let loads = old.seen.load.map(|value| hold::Load {
        value,
        from: Length::ZERO,
        to: Length::m(f64::INFINITY),
        permanent: true,
        what: "load above the old wall".into(),
    });
    Some(hold::WallCase {
        id: free_id(job),
        stations,
        corners,
        spec,
        retained_soil: soil.clone(),
        founding_soil: soil.clone(),
        loads: loads.into_iter().collect(),
        fence: None,
        neighbours: vec![],
        bank: None,
        water: hold::Water { drained: true, blocked: Share::fraction(1.0) },
        must_meet: job.ground.must_meet.clone(),
        shaking: job.ground.shaking.as_ref().map(|s| s.0),
        basis,
        search_slip: false,
        built: vec![],
        refusals: vec![],
        changes: vec![],
        units: job.about.units,
    })
}
