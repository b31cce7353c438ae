//! A wall: trench, holes or base, posts, concrete, boards or courses, pipe and fabric, stone, fill, capping.

use groundhold_quantity::{Length, Units, Volume};

use super::draft::{Book, Draft, Kind};
use crate::rates::{self, barrow, together};
use crate::{DigBy, Laid, LaidStep, WallWorks};

/// Days after concreting before boards are hung. Common practice, 2 to 7 days; the least of it.
const BEFORE_BOARDS: f64 = 2.0;
/// Days after concreting before fill is compacted against the wall. Common practice, 2 to 7 days; the most of it.
const BEFORE_FILL: f64 = 7.0;

/// Tasks of a wall. `lower` is the id of the next lower wall, which must stand first.
pub(crate) fn build(book: &mut Book, w: &WallWorks, lower: Option<&str>) {
    if w.complete {
        return;
    }
    dig(book, w, lower);
    posts(book, w);
    laid(book, w, LaidStep::Base);
    laid(book, w, LaidStep::Courses);
    boards(book, w);
    drain(book, w);
    fill(book, w);
    finish(book, w);
}

/// Share of the posts that is still to be done.
fn open_share(w: &WallWorks) -> f64 {
    1.0 - w.built.to_fraction()
}

fn dig(book: &mut Book, w: &WallWorks, lower: Option<&str>) {
    let job = book.works;
    let begin = |book: &Book, draft: Draft| {
        let mut draft = book.site_ready(draft);
        // Dug from the top down before the walls go up from the bottom, so that no hole stands open under a moving barrow.
        for pad in &job.pads {
            draft = draft.after(book.exactly(&pad.id, Kind::Cut));
        }
        draft.after(lower.and_then(|l| book.up_to(l, Kind::Concrete)))
    };
    if w.trench > Volume::ZERO {
        let rate = match job.dig {
            DigBy::Machine => rates::DIG_MACHINE,
            DigBy::Hand => together("dig and wheel away", &[rates::dig_hand(job.ground), barrow(job.access.haul)]),
        };
        let draft = Draft::new(Kind::Trench, &w.id, format!("Dig working room of {}", w.id), w.trench.to_m3(), &rate)
            .how("In lengths that can be closed again the same week; never left upright over a weekend.");
        let draft = begin(book, draft);
        book.put(draft);
    }
    if w.water_found {
        let draft = Draft::new(Kind::Sump, &w.id, format!("Sump, drain and dig out soft bottom at {}", w.id), 1.0, &rates::SUMP)
            .how("Stop everything else there. Sump at least 300 × 300 × 250 mm; keep boots off the bottom; a lasting way out below the base; dig out what has gone soft.");
        let draft = begin(book, draft).after(book.exactly(&w.id, Kind::Trench)).after(book.exactly("", Kind::Outlet));
        book.put(draft);
    }
    let holes = w.holes as f64 * open_share(w);
    if holes > 0.0 {
        let rate = match job.dig {
            DigBy::Machine => rates::HOLE_AUGER,
            DigBy::Hand => rates::hole_hand(job.ground, w.hole_depth),
        };
        let how = format!(
            "To {} deep and {} wide at most; {} in all for {} holes. Cover each at once.",
            job.units.length(w.hole_depth),
            job.units.length(w.hole_diameter),
            job.units.volume(w.holes_volume),
            w.holes
        );
        let draft = Draft::new(Kind::Holes, &w.id, format!("Dig post holes of {}", w.id), holes, &rate).how(how);
        let draft = begin(book, draft).after(book.exactly(&w.id, Kind::Trench)).after(book.exactly(&w.id, Kind::Sump));
        book.put(draft);
    }
    if w.base_dug > Volume::ZERO {
        let rate = match job.dig {
            DigBy::Machine => rates::DIG_MACHINE,
            DigBy::Hand => together("dig and wheel away", &[rates::dig_hand(job.ground), barrow(job.access.haul)]),
        };
        let how = format!(
            "To {} mm below the ground in front at most, stepped as drawn; the last 100 mm by hand just before the base is laid.",
            w.base_depth.to_mm().round()
        );
        let dug = w.base_dug.to_m3();
        let draft = Draft::new(Kind::Footing, &w.id, format!("Dig the base of {}", w.id), dug, &rate).how(how);
        let draft = begin(book, draft).after(book.exactly(&w.id, Kind::Trench)).after(book.exactly(&w.id, Kind::Sump));
        book.put(draft);
    }
}

/// What is laid in one step, as one task: its hours are those of all its parts, by the unit of the first.
fn laid(book: &mut Book, w: &WallWorks, step: LaidStep) {
    let parts: Vec<&Laid> = w.laid.iter().filter(|l| l.step == step && l.amount > 0.0).collect();
    let Some(first) = parts.first() else { return };
    let hours = |i: usize| parts.iter().map(|l| l.hours[i] * l.amount).sum::<f64>() / first.amount;
    let rate = rates::Rate {
        what: "lay",
        unit: first.unit,
        low: hours(0),
        likely: hours(1),
        high: hours(2),
        people_most: parts.iter().map(|l| l.people_most).min().unwrap_or(1),
        source: first.source,
    };
    let (kind, before) = match step {
        LaidStep::Base => (Kind::Base, Kind::Footing),
        LaidStep::Courses => (Kind::Courses, Kind::Base),
    };
    let names: Vec<&str> = parts.iter().map(|l| l.name.as_str()).collect();
    let how: Vec<&str> = parts.iter().map(|l| l.how.as_str()).filter(|h| !h.is_empty()).collect();
    let checks: Vec<String> = parts.iter().flat_map(|l| l.checks.clone()).collect();
    let title = format!("{} of {}", names.join("; "), w.id);
    let mut draft = Draft::new(kind, &w.id, title, first.amount, &rate).how(how.join(" "));
    if !checks.is_empty() {
        draft = draft.hold(if step == LaidStep::Base { "laying the base" } else { "laying the courses" }, checks);
    }
    let draft = book.site_ready(draft).after(book.up_to(&w.id, before));
    book.put(draft);
}

/// Days after the last thing laid before fill is compacted against it.
fn sets(w: &WallWorks) -> f64 {
    w.laid.iter().map(|l| l.sets_days).fold(0.0, f64::max)
}

fn posts(book: &mut Book, w: &WallWorks) {
    let (posts, concrete) = (w.posts as f64 * open_share(w), w.concrete.to_m3() * open_share(w));
    if posts > 0.0 {
        let draft = Draft::new(Kind::Posts, &w.id, format!("Set, line and brace posts of {}", w.id), posts, &rates::POST)
            .how("End posts first, string between them, the others to the string; leave the braces until the concrete has set.");
        let draft = book.site_ready(draft).after(book.up_to(&w.id, Kind::Holes));
        book.put(draft);
    }
    if concrete > 0.0 {
        let rate = together("wheel, mix and place concrete", &[rates::CONCRETE, barrow(book.works.access.haul)]);
        let draft = Draft::new(Kind::Concrete, &w.id, format!("Concrete the posts of {}", w.id), concrete, &rate)
            .how(format!(
                "{BEFORE_BOARDS} days before boards, {BEFORE_FILL} days before fill is compacted against it (common practice, 2 to 7 days)."
            ))
            .hold("concrete", before_concrete(book.works.units, w));
        let draft = book.site_ready(draft).after(book.up_to(&w.id, Kind::Posts));
        book.put(draft);
    }
}

fn before_concrete(units: Units, w: &WallWorks) -> Vec<String> {
    vec![
        format!(
            "Every hole measured: depth up to {} as in the post table, width {}.",
            units.length(w.hole_depth),
            units.length(w.hole_diameter)
        ),
        "Bottom firm, clean and dry; what was found is written down.".into(),
        "Posts within 10 mm of their place, top within 5 mm, lean as drawn.".into(),
        "Whoever has to see it (engineer, inspector) has seen it.".into(),
    ]
}

fn boards(book: &mut Book, w: &WallWorks) {
    if w.boards == 0 {
        return;
    }
    let draft =
        Draft::new(Kind::Boards, &w.id, format!("Cut and fix boards of {}", w.id), w.boards as f64, &rates::BOARD).how(
            cut_down(w) + "Lowest course first, level from end to end; every joint on a post; brush every cut end.",
        );
    let draft = book.site_ready(draft).after(book.up_to(&w.id, Kind::Posts));
    let draft = draft.after_wait(book.exactly(&w.id, Kind::Concrete), BEFORE_BOARDS);
    book.put(draft);
}

/// What is said first where posts stand higher than the wall will be.
fn cut_down(w: &WallWorks) -> String {
    match w.cut_down.is_empty() {
        true => String::new(),
        false => format!("Posts that stand too high are cut down first, to the string: {}. ", w.cut_down.join(", ")),
    }
}

fn drain(book: &mut Book, w: &WallWorks) {
    let (pipe, fabric) =
        (rates::hours_of(w.pipe.to_m(), &rates::PIPE), rates::hours_of(w.fabric.to_m2(), &rates::FABRIC));
    let units = book.works.units;
    let something = w.pipe.to_m() > 0.0 || w.fabric.to_m2() > 0.0;
    if something {
        // One task of two quantities: the rate is that of the mix, per metre of wall.
        let run = if w.length.to_m() >= 0.1 { w.length.to_m() } else { 1.0 };
        let mixed = |p: groundhold_quantity::Time, f: groundhold_quantity::Time| (p + f).to_h() / run;
        let rate = rates::Rate {
            what: "lay pipe and fabric",
            unit: "m",
            low: mixed(pipe.0.low, fabric.0.low),
            likely: mixed(pipe.0.likely, fabric.0.likely),
            high: mixed(pipe.0.high, fabric.0.high),
            ..rates::PIPE
        };
        let draft =
            Draft::new(Kind::Pipe, &w.id, format!("Lay fabric and pipe behind {}", w.id), run, &rate).how(format!(
                "{} of pipe from the outlet upwards, {} of fabric with laps of {} and more.",
                units.run(w.pipe),
                units.area(w.fabric),
                units.length(Length::mm(300.0))
            ));
        let draft = book.site_ready(draft).after(book.up_to(&w.id, Kind::Boards)).after(book.exactly("", Kind::Outlet));
        book.put(draft);
    }
    if w.drain_stone > Volume::ZERO {
        let rate = together("barrow and place stone", &[rates::STONE]);
        let draft = Draft::new(
            Kind::Stone,
            &w.id,
            format!("Place drainage stone behind {}", w.id),
            w.drain_stone.to_m3(),
            &rate,
        )
        .how("With the boards, course by course; clean stone only, stop below the surface and fold the fabric over.")
        .hold("covering pipe and fabric", before_cover());
        let draft = book.site_ready(draft).after(book.up_to(&w.id, Kind::Pipe));
        let draft = draft.after_wait(book.exactly(&w.id, Kind::Concrete), BEFORE_BOARDS);
        book.put(draft);
    }
}

fn before_cover() -> Vec<String> {
    vec![
        "Pipe falls 1:100 or more all the way, checked with a level; no back-fall.".into(),
        "Outlet open, in sight, lower than the pipe; water poured in comes out.".into(),
        "Rodding points stand; fabric laps are 300 mm or more and nothing is torn.".into(),
        "Photographs with a tape in them; levels of the pipe's ends written down.".into(),
    ]
}

fn fill(book: &mut Book, w: &WallWorks) {
    if w.backfill <= Volume::ZERO {
        return;
    }
    let haul = barrow(book.works.access.haul);
    let rate = together("load, wheel, spread and compact", &[rates::LOAD, haul, rates::SPREAD, rates::COMPACT]);
    let layers = (w.retained.to_m() / 0.15).ceil().max(1.0);
    let draft = Draft::new(Kind::Backfill, &w.id, format!("Fill behind {} in layers", w.id), w.backfill.to_m3(), &rate)
        .how(format!(
            "About {layers} layers of 150 to 200 mm loose, a hand-guided plate only within 1 m of the wall; no topsoil, turf or rubble below the last 150 to 300 mm."
        ))
        .hold("filling behind", before_fill(w.boards > 0));
    let draft = book.site_ready(draft).after(book.up_to(&w.id, Kind::Stone));
    let draft = draft.after_wait(book.exactly(&w.id, Kind::Concrete), BEFORE_FILL);
    let draft = draft.after_wait(book.exactly(&w.id, Kind::Courses), sets(w));
    book.put(draft);
}

/// What is looked at before fill goes against a wall.
pub(crate) fn before_fill(boards: bool) -> Vec<String> {
    let face = if boards { "Boards tight, posts in line" } else { "Courses in line and to their batter" };
    vec![
        format!("Concrete is {BEFORE_FILL} days old, or as old as its maker or the engineer asks for."),
        "Pipe, outlet and stone have passed their own hold point; fabric is folded over the stone.".into(),
        format!("{face}; lean written down before anything pushes."),
    ]
}

fn finish(book: &mut Book, w: &WallWorks) {
    for (kind, length, rate, what) in [
        (Kind::Capping, w.capping, &rates::CAP, "capping on"),
        (Kind::Guard, w.guard, &rates::GUARD, "guard or fence on"),
    ] {
        if length.to_m() > 0.0 {
            let draft = Draft::new(kind, &w.id, format!("Fix {what} {}", w.id), length.to_m(), rate);
            let draft = book.site_ready(draft).after(book.up_to(&w.id, Kind::Capping));
            let draft = w.holds_fill_of.iter().fold(draft, |d, p| d.after(book.exactly(p, Kind::Fill)));
            book.put(draft);
        }
    }
}

/// The days that fill waits for the concrete of a wall.
pub(crate) fn fill_waits() -> f64 {
    BEFORE_FILL
}
