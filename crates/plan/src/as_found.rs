//! Walls that stand already: are they out of line, why, what is done first, and what would take their place?

use groundhold_earth::Soil;
use groundhold_finding::{Adjust, Finding, Kind, Place, Remedy, Severity};
use groundhold_hold::standing::{
    AboveIt, AsFound, BackAnalysis, Need, Verdict, Weeps, back_analysed, first_steps, keep_clear,
};
use groundhold_quantity::{Length, trim};
use groundhold_surface::Tin;

use crate::job::{Job, Near, NearKind, OldWall, StandingWall, WallWish};
use crate::replacement::replacement;

/// A wall leans, bellies out or is cracked.
pub static OUT_OF_LINE: Kind = Kind {
    code: "N-030",
    name: "existing wall out of line",
    severity: Severity::Ask,
    why: "A wall that has moved has used up what held it. Some come down slowly and many at once, after rain, on those below.",
    source: "common practice, no source; that dry walls topple brittly: Powrie et al., Deformation and failure modes of drystone \
             retaining walls, Géotechnique 52(6), 2002 (summary)",
    when_wrong: "it was built so, and marks on it have shown no movement over several winters",
};

/// By its weight or its posts an existing wall has little in hand.
pub static AT_ITS_LIMIT: Kind = Kind {
    code: "N-031",
    name: "existing wall with little in hand",
    severity: Severity::Ask,
    why: "A wall that stands with a small factor comes down with the first thing that is added: water, a wheel, a trench.",
    source: "Rankine 1857; rigid body; Broms 1964, Brinch Hansen 1961; a factor of 1.5 is common practice, no source",
    when_wrong: "the soil behind it is stronger than its class, or the body goes deeper than was measured",
};

/// A cause that fits what was seen.
pub static CAUSE_FITS: Kind = Kind {
    code: "N-032",
    name: "causes that fit an existing wall's state",
    severity: Severity::Watch,
    why: "A wall that is pushed back or rebuilt while its cause goes on will do the same again.",
    source: "back-analysis with the job's soil; signs: HUD Residential Rehabilitation Inspection Guide, 2000; TRL Report 550, 2002",
    when_wrong: "two causes work together, or the soil is not that of the job",
};

/// What must be measured before more can be said.
pub static NOT_MEASURED: Kind = Kind {
    code: "N-033",
    name: "existing wall not measured",
    severity: Severity::Watch,
    why: "Without its thickness or the depth of its posts nobody can say how it stands.",
    source: "common practice, no source",
    when_wrong: "the wall is taken down",
};

/// High, or with wheels above it.
pub static FOR_AN_ENGINEER: Kind = Kind {
    code: "N-034",
    name: "existing wall for an engineer",
    severity: Severity::Ask,
    why: "Above about 4 ft, or with a vehicle behind it, a wall that fails kills; most places ask for a permit and an engineer.",
    source: "common practice, no source: 4 ft (1.2 m) as in many local codes after the International Building Code (from memory)",
    when_wrong: "an engineer has looked at it and wrote so",
};

/// Ground behind raised or load noted: height above which an engineer is asked.
const HIGH: Length = Length::mm(1200.0);
/// Factor that is wanted of a wall that stands, drained. Common practice, no source.
const WANTED: f64 = 1.5;
/// Lean over height above which an engineer is asked rather than a mark watched. Common practice, no source.
const LEANS_MUCH: f64 = 0.02;
/// Less than this is how it was built. Common practice, no source.
const STRAIGHT: Length = Length::mm(10.0);

/// A wall that stands, with what came of it.
#[derive(Debug, Clone, PartialEq)]
pub struct OldWallPlan {
    /// Its id.
    pub id: String,
    /// What was seen, with the soil.
    pub found: AsFound,
    /// Causes solved and weighed.
    pub back: BackAnalysis,
    /// What is done first.
    pub first: Vec<String>,
    /// A new wall for its place, sized; and what there is to say of it.
    pub replacement: Option<WallWish>,
    /// In a sentence.
    pub replaced: String,
}

/// Every standing wall, back-analysed.
pub(crate) fn old_walls(
    job: &Job,
    ground: &Tin,
    soil: &Soil,
    basis: &'static groundhold_earth::Basis,
) -> Vec<OldWallPlan> {
    let each = job.standing.iter().map(|old| {
        let found = AsFound { seen: old.seen.clone(), soil: soil.clone(), units: job.about.units };
        let back = back_analysed(&found);
        let first = first_steps(&found, &back);
        let (replacement, replaced) = replacement(job, old, ground, soil, basis);
        OldWallPlan { id: old.id.clone(), found, back, first, replacement, replaced }
    });
    each.collect()
}

/// Standing walls as things that are near: for what else looks at walls nearby.
pub(crate) fn as_near(job: &Job) -> Vec<Near> {
    let each = job.standing.iter().filter(|o| o.replaced_by.is_empty()).map(|o| Near {
        id: o.id.clone(),
        kind: NearKind::Footing("existing wall".into()),
        line: o.line.clone(),
        depth: o.seen.below,
        clear: None,
        source: o.note.clone(),
        age_days: None,
        level: None,
        holds: Some(StandingWall {
            retained: o.seen.height,
            drained: o.seen.weeps.map(|w| w == Weeps::Running),
            filter: o.seen.filter,
        }),
    });
    each.collect()
}

/// What there is to say about them.
pub(crate) fn check(job: &Job, walls: &[OldWallPlan]) -> Vec<Finding> {
    let mut all = vec![];
    for (old, wall) in job.standing.iter().zip(walls) {
        let out = out_of_line(old, wall);
        let moved = out.is_some();
        all.extend(out);
        if !old.replaced_by.is_empty() {
            continue;
        }
        all.extend(for_an_engineer(old, wall));
        all.extend(little_in_hand(wall));
        if moved {
            all.push(causes(wall));
        }
        all.extend(not_measured(wall));
    }
    all
}

fn out_of_line(old: &OldWall, wall: &OldWallPlan) -> Option<Finding> {
    let (seen, u) = (&wall.found.seen, wall.found.units);
    let mut said = vec![];
    if seen.lean.abs() >= STRAIGHT {
        let way = if seen.lean > Length::ZERO { "out" } else { "into the bank" };
        said.push(format!("leans {} {way} over {}", u.length(seen.lean.abs()), u.length(seen.height)));
    }
    if let Some((size, at)) = seen.bulge.filter(|(size, _)| *size >= STRAIGHT) {
        said.push(format!("bellies out {} at {} above the ground", u.length(size), u.length(at)));
    }
    if let Some(widest) = seen.cracks.iter().map(|c| c.width).reduce(Length::max) {
        said.push(format!("is cracked up to {}", u.length(widest)));
    }
    if said.is_empty() {
        return None;
    }
    let when = if old.looked_at.is_empty() { String::new() } else { format!(", found {}", old.looked_at) };
    let (least, most) = keep_clear(&wall.found);
    let says = format!(
        "{} ({}) {}{when}. Keep {} to {} clear of it until somebody competent has looked.",
        wall.id,
        seen.made.words(),
        said.join(", "),
        u.run(least),
        u.run(most)
    );
    let lean = seen.lean / seen.height;
    // Its own weight leaves the middle third once its middle has moved a sixth of its thickness.
    let third = seen.thickness.is_some_and(|b| seen.lean > b / 3.0);
    let severity = match () {
        _ if third => Severity::Stop,
        _ if lean >= LEANS_MUCH || seen.bulge.is_some() => Severity::Ask,
        _ => Severity::Watch,
    };
    let mut finding = Finding::new(&OUT_OF_LINE, Place::of(&wall.id), says).weighing(severity);
    for step in &wall.first {
        finding = finding.with_remedy(Remedy::theirs(step.clone()));
    }
    Some(finding.with_remedy(replace(wall)))
}

/// The new wall: its sizes are in the plan; that it takes this one's place is a field of this one.
fn replace(wall: &OldWallPlan) -> Remedy {
    match &wall.replacement {
        Some(new) => {
            let change = Adjust { element: wall.id.clone(), field: "replaced_by".into(), value: new.id.clone() };
            Remedy { change: vec![change], ..Remedy::theirs(wall.replaced.clone()) }
        }
        None => Remedy::theirs(wall.replaced.clone()),
    }
}

fn for_an_engineer(old: &OldWall, wall: &OldWallPlan) -> Option<Finding> {
    let (seen, u) = (&wall.found.seen, wall.found.units);
    let vehicle = seen.above.contains(&AboveIt::Vehicle);
    if seen.height < HIGH && !vehicle {
        return None;
    }
    let mut why = vec![];
    if seen.height >= HIGH {
        why.push(format!("it holds {} (mark {})", u.length(seen.height), u.length(HIGH)));
    }
    if vehicle {
        why.push("a vehicle is a surcharge behind it".into());
    }
    let says = format!("{} is for an engineer: {}.", old.id, why.join(", and "));
    let ask = "Ask a licensed engineer and the permit office; send them this sheet, photos with a rod, and what was measured.";
    Some(
        Finding::new(&FOR_AN_ENGINEER, Place::of(&old.id), says)
            .with_utilisation(seen.height / HIGH)
            .with_remedy(Remedy::theirs(ask)),
    )
}

fn little_in_hand(wall: &OldWallPlan) -> Option<Finding> {
    let (dry, wet) = (wall.back.factor?, wall.back.factor_wet?);
    if dry >= WANTED && wet >= 1.0 {
        return None;
    }
    let says = format!(
        "{} has a factor of {} drained ({} is wanted) and {} with water to the ground behind, by the soil of this job.",
        wall.id,
        trim(dry, 2),
        trim(WANTED, 1),
        trim(wet, 2)
    );
    let mut finding = Finding::new(&AT_ITS_LIMIT, Place::of(&wall.id), says).with_utilisation(WANTED / dry.max(1e-9));
    finding.trace = wall.back.traces.first().cloned();
    if dry >= WANTED {
        finding.severity = Severity::Watch;
    }
    let drain = "Have the drainage behind it rebuilt in short lengths: clean stone in fabric, a pipe to an outlet below its foot; \
                 soil put back on top will not do.";
    Some(finding.with_remedy(Remedy::theirs(drain)).with_remedy(replace(wall)))
}

fn causes(wall: &OldWallPlan) -> Finding {
    let fits = |v: Verdict| -> Vec<String> {
        let of = wall.back.hypotheses.iter().filter(|h| h.verdict == v);
        of.map(|h| {
            let (needs, seen) = (h.needs.trim_end_matches('.'), h.seen.trim_end_matches('.'));
            format!("{} (needs: {needs}; seen or can be: {seen})", h.cause.words())
        })
        .collect()
    };
    let (fit, may) = (fits(Verdict::Fits), fits(Verdict::MayBe));
    let says = match (fit.is_empty(), may.is_empty()) {
        (false, _) => format!("{}: what fits is {}.", wall.id, fit.join("; ")),
        (true, false) => format!("{}: nothing fits for certain; what may be is {}.", wall.id, may.join("; ")),
        _ => format!("{}: no single cause fits; look for two together, or for other soil.", wall.id),
    };
    let mut finding = Finding::new(&CAUSE_FITS, Place::of(&wall.id), says);
    finding.trace = wall.back.hypotheses.iter().find_map(|h| h.traces.first().cloned());
    finding.with_remedy(Remedy::theirs("End the cause before anything is rebuilt."))
}

fn not_measured(wall: &OldWallPlan) -> Option<Finding> {
    let mut open: Vec<&str> = vec![];
    for h in &wall.back.hypotheses {
        if let Need::Measure(what) = h.need
            && !open.contains(&what)
        {
            open.push(what);
        }
    }
    if open.is_empty() {
        return None;
    }
    let says = format!("{}: measure {}.", wall.id, open.join(", and "));
    Some(Finding::new(&NOT_MEASURED, Place::of(&wall.id), says))
}
