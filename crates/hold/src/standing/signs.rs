//! Which sign on a wall speaks for which cause, and which speaks against it?

use groundhold_quantity::Length;
use groundhold_working::Source;

use super::{AboveIt, AsFound, BelowIt, Cause, CrackRuns, Made, Weeps};

/// Something that a person sees.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sign {
    /// The top stands out and the face is straight: it turned about its foot.
    LeansStraight,
    /// It bellies out below two thirds of its height.
    BulgesLow,
    /// It bellies out in its upper third.
    BulgesHigh,
    /// A crack along a course.
    CrackAlong,
    /// A crack down the joints like stairs.
    CrackStepped,
    /// A crack straight up.
    CrackUpright,
    /// No weep holes.
    NoWeeps,
    /// Weep holes are blocked.
    WeepsBlocked,
    /// Weep holes run.
    WeepsRun,
    /// Nothing keeps the soil out of the stone behind it.
    NoFilter,
    /// The face is wet or stained.
    FaceWet,
    /// The ground above is wet.
    WetAbove,
    /// Something heavy stands above.
    LoadAbove,
    /// A vehicle drives above.
    VehicleAbove,
    /// A fence stands on it.
    FenceAbove,
    /// A tree stands above.
    TreeAbove,
    /// Nothing stands above.
    NothingAbove,
    /// The foot was dug away.
    FootDug,
    /// A trench runs at the foot.
    TrenchAtFoot,
    /// Nothing was dug at the foot.
    FootWhole,
    /// A blade goes into the timber at the ground.
    TimberSoft,
    /// The timber is hard at the ground.
    TimberHard,
}

impl Sign {
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Sign::LeansStraight => "leans out with a straight face",
            Sign::BulgesLow => "bellies out at or below mid height",
            Sign::BulgesHigh => "bellies out near its top",
            Sign::CrackAlong => "crack along a course",
            Sign::CrackStepped => "stepped crack",
            Sign::CrackUpright => "upright crack",
            Sign::NoWeeps => "no weep holes",
            Sign::WeepsBlocked => "weep holes blocked",
            Sign::WeepsRun => "weep holes run",
            Sign::NoFilter => "no filter behind it",
            Sign::FaceWet => "face wet or stained",
            Sign::WetAbove => "wet ground above",
            Sign::LoadAbove => "load above",
            Sign::VehicleAbove => "vehicle above",
            Sign::FenceAbove => "fence on top",
            Sign::TreeAbove => "tree above",
            Sign::NothingAbove => "nothing stands above",
            Sign::FootDug => "foot dug away",
            Sign::TrenchAtFoot => "trench along the foot",
            Sign::FootWhole => "nothing dug at the foot",
            Sign::TimberSoft => "timber soft at the ground",
            Sign::TimberHard => "timber hard at the ground",
        }
    }
}

/// One line of the table: positive speaks for the cause, negative against it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SignRow {
    /// What is seen.
    pub sign: Sign,
    /// What it speaks of.
    pub cause: Cause,
    /// How strongly: 1 or 2, for or against.
    pub weight: i8,
}

const fn row(sign: Sign, cause: Cause, weight: i8) -> SignRow {
    SignRow { sign, cause, weight }
}

/// Where the table is from. That bowing, cracking and overturning come of water without weep holes or drains, of too little
/// strength, and of soil that settles or softens stands in the guide; the weights are common practice, no source.
pub const SIGN_SOURCE: Source = Source {
    work: "US Department of Housing and Urban Development, Residential Rehabilitation Inspection Guide, 2000; Brady and Kavanagh, Analysis of the stability of masonry-faced earth retaining walls, TRL Report 550, 2002",
    place: "guide: bulging, bowing and cracking of retaining walls; report: 3.1, factors affecting stability (water, ground, face; from memory); weights and the lines on loads, digging and rot: common practice, no source",
};

/// The table.
pub static SIGNS: &[SignRow] = &[
    row(Sign::LeansStraight, Cause::Water, 1),
    row(Sign::LeansStraight, Cause::Load, 1),
    row(Sign::LeansStraight, Cause::ToeDug, 1),
    row(Sign::LeansStraight, Cause::TooSmall, 1),
    row(Sign::LeansStraight, Cause::Softened, 1),
    row(Sign::BulgesLow, Cause::Water, 2),
    row(Sign::BulgesLow, Cause::ToeDug, -1),
    row(Sign::BulgesLow, Cause::TooSmall, -1),
    row(Sign::BulgesHigh, Cause::Load, 2),
    row(Sign::BulgesHigh, Cause::ToeDug, -1),
    row(Sign::CrackAlong, Cause::Water, 1),
    row(Sign::CrackAlong, Cause::Load, 1),
    row(Sign::CrackStepped, Cause::Softened, 1),
    row(Sign::CrackStepped, Cause::ToeDug, 1),
    row(Sign::CrackUpright, Cause::Softened, 1),
    row(Sign::NoWeeps, Cause::Water, 1),
    row(Sign::WeepsBlocked, Cause::Water, 2),
    row(Sign::WeepsRun, Cause::Water, -2),
    row(Sign::NoFilter, Cause::Water, 1),
    row(Sign::FaceWet, Cause::Water, 2),
    row(Sign::WetAbove, Cause::Water, 1),
    row(Sign::WetAbove, Cause::Softened, 1),
    row(Sign::LoadAbove, Cause::Load, 2),
    row(Sign::VehicleAbove, Cause::Load, 2),
    row(Sign::FenceAbove, Cause::Load, 1),
    row(Sign::TreeAbove, Cause::Load, 1),
    row(Sign::NothingAbove, Cause::Load, -2),
    row(Sign::FootDug, Cause::ToeDug, 2),
    row(Sign::TrenchAtFoot, Cause::ToeDug, 2),
    row(Sign::TrenchAtFoot, Cause::Softened, 1),
    row(Sign::FootWhole, Cause::ToeDug, -2),
    row(Sign::TimberSoft, Cause::Rot, 2),
    row(Sign::TimberHard, Cause::Rot, -2),
];

/// Less than this out of line is how it was built. Common practice, no source.
const OUT_OF_LINE: Length = Length::mm(10.0);
/// A blade that goes in less than this meets sound timber. Common practice, no source.
const SOFT: Length = Length::mm(3.0);

/// The signs that a wall shows, each once.
pub fn signs_of(wall: &AsFound) -> Vec<Sign> {
    let mut all = vec![];
    let bulge = wall.seen.bulge.filter(|(size, _)| *size >= OUT_OF_LINE);
    if wall.seen.lean >= OUT_OF_LINE && bulge.is_none() {
        all.push(Sign::LeansStraight);
    }
    if let Some((_, at)) = bulge {
        all.push(if at <= wall.seen.height * (2.0 / 3.0) { Sign::BulgesLow } else { Sign::BulgesHigh });
    }
    all.extend(wall.seen.cracks.iter().map(|c| match c.runs {
        CrackRuns::Horizontal => Sign::CrackAlong,
        CrackRuns::Stepped => Sign::CrackStepped,
        CrackRuns::Vertical => Sign::CrackUpright,
    }));
    all.extend(wall.seen.weeps.map(|w| match w {
        Weeps::Absent => Sign::NoWeeps,
        Weeps::Blocked => Sign::WeepsBlocked,
        Weeps::Running => Sign::WeepsRun,
    }));
    if wall.seen.filter == Some(false) {
        all.push(Sign::NoFilter);
    }
    if wall.seen.wet_to.is_some_and(|w| w > Length::ZERO) {
        all.push(Sign::FaceWet);
    }
    all.extend(wall.seen.above.iter().map(|a| match a {
        AboveIt::Load => Sign::LoadAbove,
        AboveIt::Vehicle => Sign::VehicleAbove,
        AboveIt::Fence => Sign::FenceAbove,
        AboveIt::WetGround => Sign::WetAbove,
        AboveIt::Tree => Sign::TreeAbove,
    }));
    let bears = |a: &AboveIt| *a != AboveIt::WetGround;
    if !wall.seen.above.iter().any(bears) && wall.seen.load.is_none_or(|q| q.si() <= 0.0) {
        all.push(Sign::NothingAbove);
    }
    all.extend(wall.seen.beneath.iter().map(|b| match b {
        BelowIt::DugAway => Sign::FootDug,
        BelowIt::Trench => Sign::TrenchAtFoot,
    }));
    if wall.seen.beneath.is_empty() && wall.seen.dug.is_none_or(|d| d <= Length::ZERO) {
        all.push(Sign::FootWhole);
    }
    if let Some(soft) = wall.seen.posts.and_then(|p| p.soft).filter(|_| wall.seen.made == Made::TimberPosts) {
        all.push(if soft >= SOFT { Sign::TimberSoft } else { Sign::TimberHard });
    }
    let mut once: Vec<Sign> = vec![];
    all.into_iter().for_each(|s| {
        if !once.contains(&s) {
            once.push(s);
        }
    });
    once
}
