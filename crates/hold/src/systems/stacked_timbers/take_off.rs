//! What does a wall of stacked timbers take: timbers, ties, screws, stone, time?

use groundhold_quantity::{Density, Length, Share, Volume, trim};

use super::StackedTimberSpec;
use super::courses::Laid;
use super::shown::mark;
use crate::{Amount, Bulk, Fixing, Layout, Piece, Role, Stuff, WallCase, Work, WorkStep};

const OURS: &str = "our estimate from common practice, no source; put your own figure from the last job";

fn piece(spec: &StackedTimberSpec, mark: String, role: Role, length: Length) -> Piece {
    Piece {
        mark,
        role,
        section: (spec.timber.height, spec.timber.thickness),
        length,
        material: spec.timber.material(),
        stuff: Stuff::Timber,
        chainage: (Length::ZERO, length),
        level: Default::default(),
        bay: 1,
        built: false,
    }
}

/// Timbers, ties and cross pieces.
fn pieces(spec: &StackedTimberSpec, laid: &Laid) -> Vec<Piece> {
    let (h, t) = (spec.timber.height, spec.timber.thickness);
    let face = laid.timbers.iter().map(|x| Piece {
        chainage: x.chainage,
        level: (x.bottom, x.bottom + h),
        bay: x.strip,
        ..piece(spec, mark(x.course, x.number), Role::Course, x.chainage.1 - x.chainage.0)
    });
    let back = laid.ties.iter().enumerate().flat_map(|(i, x)| {
        let half = t / 2.0;
        // The cross piece lies behind the end of the tie.
        let tie = Piece {
            chainage: (x.chainage - half, x.chainage + half),
            level: (x.bottom, x.bottom + h),
            bay: x.strip,
            ..piece(spec, format!("T{}", i + 1), Role::Tie, x.length - t)
        };
        let c = x.cross / 2.0;
        let cross = Piece {
            chainage: (x.chainage - c, x.chainage + c),
            level: (x.bottom, x.bottom + h),
            bay: x.strip,
            ..piece(spec, format!("X{}", i + 1), Role::Tie, x.cross)
        };
        [tie, cross]
    });
    face.chain(back).collect()
}

pub(crate) fn fill(case: &WallCase, spec: &StackedTimberSpec, laid: &Laid, layout: &mut Layout) {
    let u = case.units;
    layout.pieces = pieces(spec, laid);
    let run: Length = laid.timbers.iter().map(|t| t.chainage.1 - t.chainage.0).sum();
    // The lowest course lies on the bed and has nothing below it to be screwed to.
    let screwed = laid.timbers.iter().filter(|t| t.course > 0);
    let courses: usize =
        screwed.map(|t| ((t.chainage.1 - t.chainage.0) / spec.screws.spacing).ceil().max(2.0) as usize).sum();
    let ties = laid.ties.len();
    let item = spec.screws.material();
    layout.fixings = vec![Fixing { item: item.clone(), count: courses, what: "course to course".into() }];
    if ties > 0 {
        let count = ties * 2 * spec.ties.screws as usize;
        layout.fixings.push(Fixing { item, count, what: "heads of ties and cross pieces".into() });
    }
    let wide = spec.timber.thickness + Length::mm(200.0);
    let bed: Volume = layout.strips.iter().map(|s| wide * spec.bed * s.length()).sum();
    if bed > Volume::ZERO {
        layout.bulk.push(Bulk {
            item: "sub-base stone".into(),
            amount: Amount::Volume(bed),
            what: "bed of the lowest course, rolled".into(),
            density: Some(Density::t_per_m3(2.2)),
            waste: Share::percent(5.0),
        });
    }
    layout.works = works(spec, bed, run, ties);
    let timbers = laid.timbers.len();
    layout.made_of = format!("{timbers} timbers, {ties} ties");
    let most = layout.strips.iter().map(|s| s.courses).max().unwrap_or(0);
    let long = layout.strips.iter().map(|s| s.width).reduce(Length::max).unwrap_or_default();
    layout.headline = match ties {
        0 => format!("{timbers} timbers in up to {most} courses, without ties"),
        _ => format!("{timbers} timbers in up to {most} courses, {ties} ties up to {} long", u.length(long)),
    };
    layout.facts = vec![
        ("Timbers".into(), format!("{timbers} pieces, {}", spec.timber.material())),
        (
            "Screws".into(),
            layout.fixings.iter().map(|f| f.count).sum::<usize>().to_string() + " " + &spec.screws.material(),
        ),
    ];
    if ties > 0 {
        let says = format!("{ties} pieces up to {} with cross pieces of {}", u.length(long), u.length(spec.ties.cross));
        layout.facts.insert(1, ("Ties".into(), says));
    }
}

fn works(spec: &StackedTimberSpec, bed: Volume, run: Length, ties: usize) -> Vec<Work> {
    let base = Work {
        step: WorkStep::Base,
        name: "Lay and roll the bed".into(),
        amount: bed.to_m3().max(0.01),
        unit: "m³",
        hours: [2.0, 3.0, 4.5],
        people_most: 3,
        source: OURS,
        how: format!(
            "{} mm of stone, rolled and level; the lowest course laid on it to a string.",
            trim(spec.bed.to_mm(), 0)
        ),
        checks: vec![
            "Bottom firm, level across and stepped as drawn; what was found is written down.".into(),
            "Bed rolled and level to 10 mm; line and corners pegged.".into(),
        ],
        sets_days: 0.0,
    };
    let ties = match ties {
        0 => String::new(),
        n => format!(
            " {n} ties laid with their heads in the face and dug into the bank or laid on compacted fill, each with its cross piece; fill compacted over every row before the next."
        ),
    };
    let courses = Work {
        step: WorkStep::Courses,
        name: "Lay, set back and screw the timbers".into(),
        amount: run.to_m(),
        unit: "m",
        hours: [0.15, 0.25, 0.45],
        people_most: 3,
        source: OURS,
        how: format!("Joints staggered by half a timber, every cut end brushed, holes drilled before screwing.{ties}"),
        checks: vec![],
        sets_days: 0.0,
    };
    vec![base, courses]
}
