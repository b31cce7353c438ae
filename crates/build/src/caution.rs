//! What hurts people at this work, where on this job does it bite, and with which figures?

use groundhold_quantity::{Length, Mass, Volume};

use crate::{DigBy, Works, sequence::Kind};

/// A caution: one per danger, never renumbered.
#[derive(Debug, PartialEq, Eq)]
pub struct Caution {
    /// Stable id: `services`.
    pub id: &'static str,
    /// A few words for the head of a box.
    pub title: &'static str,
    /// What to do.
    pub says: &'static str,
    /// What happens otherwise.
    pub why: &'static str,
    /// Where it is known from, with its mark.
    pub source: &'static str,
    /// Kinds of task at which it bites.
    pub(crate) applies_to: &'static [Kind],
}

/// A caution that bites on this job.
#[derive(Debug, Clone, PartialEq)]
pub struct Cautioned {
    /// The caution.
    pub caution: &'static Caution,
    /// The figures of this job: "Deepest open face 1.10 m, by P1."; may be empty.
    pub here: String,
    /// Ids of the tasks at which it bites, in their order.
    pub tasks: Vec<String>,
}

use Kind::{
    Backfill, Boards, Capping, Clean, Concrete, Cut, Fill, Guard, Holes, Outlet, Pave, Posts, Protect, Ramp, Services,
    Steps, Stone, Strip, Sump, Survey, Topsoil, Trench,
};

const DIGS: &[Kind] = &[Services, Strip, Cut, Trench, Holes, Outlet, Steps, Ramp, Sump];

/// Buried services.
static SERVICES: Caution = Caution {
    id: "services",
    title: "Buried services",
    says: "Ask for the records of buried services 2 to 10 working days ahead, have them located and marked, and dig by hand within 0.5 to 1 m of them. Take every pipe and cable as live.",
    why: "Cables kill and gas burns. Records show public lines only, private ones are not on them, and depths are not kept: owners have met cables at 50 to 250 mm.",
    source: "common practice; the local enquiry service's own rules hold",
    applies_to: DIGS,
};
/// Open faces.
static OPEN_FACE: Caution = Caution {
    id: "open-face",
    title: "Open faces and trench edges",
    says: "Nobody goes below an upright face of more than 1.0 m, in loose or wet ground below none. Lay it back (1:1 in firm soil, flatter in loose), prop it, or work in short bays. Look at it each morning and after rain.",
    why: "A face falls without warning. A cubic metre of soil weighs as much as a car.",
    source: "1.0 m: our default; local rules start between any depth and 1.5 m (29 CFR 1926.652: 5 ft unless in stable rock)",
    applies_to: &[Cut, Trench, Holes, Boards, Stone, Outlet, Sump, Backfill],
};
/// Spoil and loads at the edge.
static SPOIL_BACK: Caution = Caution {
    id: "spoil-back",
    title: "Spoil and loads back from the edge",
    says: "Keep spoil, stone and timber at least 0.6 m from the edge of a dig, better 1 m, and machines 1 m or more, further where the face is deeper.",
    why: "Weight at the crest is what makes a face go.",
    source: "29 CFR 1926.651(j): 2 ft; machines: common practice",
    applies_to: &[Cut, Trench, Holes, Outlet, Stone, Fill],
};
/// Lifting.
static LIFTING: Caution = Caution {
    id: "lifting",
    title: "Lifting",
    says: "Two people above 25 kg, a machine or rollers above 50 kg. Less at arm's length, from the ground or on a slope.",
    why: "Backs and crushed fingers end more jobs than anything else.",
    source: "HSE guidance on manual handling, filter of 25 kg close to the waist, from memory; 50 kg common practice",
    applies_to: &[Posts, Concrete, Boards, Capping, Steps, Pave, Guard],
};
/// Treated timber.
static TREATED: Caution = Caution {
    id: "treated-timber",
    title: "Treated timber",
    says: "Gloves, and a mask when cutting; collect the dust; brush preservative on every cut end, and put the factory end in the ground. Never burn offcuts.",
    why: "The preservative is poison in dust, smoke and splinters; a bare cut end rots first.",
    source: "common practice; the treater's sheet holds",
    applies_to: &[Posts, Boards, Capping, Guard, Steps],
};
/// Silica.
static SILICA: Caution = Caution {
    id: "silica",
    title: "Stone and concrete dust",
    says: "Cut and grind wet or with extraction, with a fitted mask; no dry sweeping.",
    why: "Fine quartz dust scars the lung for good. Limits lie at 0.025 to 0.1 mg/m³ over 8 h, which cannot be seen.",
    source: "limits of several countries (USA 0.05 mg/m³, 29 CFR 1926.1153), in part from memory",
    applies_to: &[Pave, Steps, Concrete, Capping, Ramp],
};
/// Wet concrete.
static WET_CONCRETE: Caution = Caution {
    id: "wet-concrete",
    title: "Wet concrete burns",
    says: "Gloves, boots, glasses, long trousers; wash off at once, also under the gloves; never kneel in it.",
    why: "Wet cement is caustic: it burns deep before it hurts, and takes eyes.",
    source: "common practice; the maker's safety sheet holds",
    applies_to: &[Concrete],
};
/// Augers.
static AUGER: Caution = Caution {
    id: "auger",
    title: "Augers",
    says: "Two people on a hand-held auger, stop in reach, no loose clothes; none where a service may lie. Let it cut, and lift it to clear; when it binds, stop and turn it back by hand.",
    why: "When it meets a root or a stone the machine turns instead, and takes wrists with it.",
    source: "common practice, no source",
    applies_to: &[Holes],
};
/// Machines on a slope.
static MACHINE_SLOPE: Caution = Caution {
    id: "machine-on-slope",
    title: "Machines on a slope",
    says: "Work straight up and down, never across; bucket low and uphill; 1 m or more from every crest; nobody within its swing; belt on.",
    why: "Small machines tip over sooner than they look, and roll on the driver.",
    source: "common practice, no source; the maker's slope limit holds",
    applies_to: &[Strip, Cut, Trench, Holes, Fill, Outlet, Ramp],
};
/// Barrows on a slope.
static BARROW_SLOPE: Caution = Caution {
    id: "barrow-on-slope",
    title: "Barrows on a slope",
    says: "Boards as a run, no steeper than about 1:8, half loads, and nobody below.",
    why: "A full barrow weighs 100 kg or more and does not stop by itself.",
    source: "common practice, no source",
    applies_to: &[Strip, Cut, Trench, Stone, Fill, Backfill, Topsoil, Clean],
};
/// Roots.
static ROOTS: Caution = Caution {
    id: "roots",
    title: "Tree roots",
    says: "Fence off a circle of 12 times the trunk's diameter; inside it dig by hand only, heap nothing, drive nowhere, and cut no root thicker than 25 mm without a tree expert.",
    why: "A tree that has lost its roots dies, or falls on somebody, years later.",
    source: "BS 5837:2012, 4.6; AS 4970-2009 (12 × trunk diameter); 25 mm common practice",
    applies_to: &[Survey, Protect, Strip, Cut, Trench, Holes, Outlet, Fill],
};
/// Footings.
static FOOTINGS: Caution = Caution {
    id: "footings",
    title: "Footings near the dig",
    says: "Do not dig below a line that falls at 45° from the underside of a footing or the foot of a fence post. Look first with a trial pit. Where it must be, ask an engineer and dig in short bays.",
    why: "The soil below that line carries the footing.",
    source: "common practice, no source; in England and Wales see also the Party Wall etc. Act 1996, s 6",
    applies_to: &[Cut, Trench, Holes, Outlet, Steps],
};
/// Water.
static WATER: Caution = Caution {
    id: "water",
    title: "Water in the dig",
    says: "Stop when water comes. Keep off the soft bottom, make a sump of at least 300 × 300 × 250 mm, find where the water comes from and give it a lasting way out that lies below the base; dig out what has gone soft before concrete.",
    why: "Soft bottoms settle, wet faces fall, and a wall that holds water is pushed more than twice as hard.",
    source: "common practice, no source; the push by hydrostatics",
    applies_to: &[Cut, Trench, Holes, Concrete, Outlet, Sump],
};
/// Open holes.
static OPEN_HOLES: Caution = Caution {
    id: "open-holes",
    title: "Open holes and children",
    says: "Cover or fence every hole and face whenever nobody is beside it, nights above all. Boards over holes, fixed so that a child cannot lift them.",
    why: "A post hole is as deep as a child is tall.",
    source: "common practice, no source",
    applies_to: &[Cut, Trench, Holes, Posts, Outlet, Sump],
};
/// Compaction near the wall.
static PLATE: Caution = Caution {
    id: "plate-near-wall",
    title: "Compacting near the wall",
    says: "Within 1 m of the wall a hand-guided plate only, layers of 150 to 200 mm loose; no roller, no excavator, no heap. Not against green concrete: wait 2 to 7 days. Quick-setting mix is not at full strength either.",
    why: "The plate pushes the wall harder than the soil ever will.",
    source: "practice of block-wall manuals (NCMA), from memory; wait: common practice",
    applies_to: &[Backfill, Fill],
};

/// Every caution, in the order in which a sheet lists them.
pub static CAUTIONS: &[&Caution] = &[
    &SERVICES,
    &OPEN_FACE,
    &SPOIL_BACK,
    &OPEN_HOLES,
    &WATER,
    &FOOTINGS,
    &ROOTS,
    &LIFTING,
    &AUGER,
    &MACHINE_SLOPE,
    &BARROW_SLOPE,
    &TREATED,
    &WET_CONCRETE,
    &SILICA,
    &PLATE,
];

/// The cautions that these works call for, with their figures.
pub(crate) fn called_for(works: &Works) -> Vec<(&'static Caution, String)> {
    CAUTIONS.iter().filter_map(|c| here(c, works).map(|h| (*c, h))).collect()
}

/// The figures of this job; `None` where the caution is not called for.
fn here(c: &Caution, w: &Works) -> Option<String> {
    let run = |l: Length| w.units.run(l);
    let concrete: Volume = w.walls.iter().map(|x| x.concrete).sum();
    let deepest_hole = w.walls.iter().map(|x| x.hole_depth).fold(Length::ZERO, Length::max);
    let holes: usize = w.walls.iter().map(|x| x.holes).sum();
    Some(match c.id {
        "services" => match (w.services_near, w.service_clearance) {
            (true, Some(d)) => format!("The nearest known service lies {} from the nearest dig.", run(d)),
            (true, None) => "A service is known or likely on the plot; its distance from the dig is not known.".into(),
            (false, _) => "None is known on this plot. That is not the same as none.".into(),
        },
        "open-face" | "spoil-back" if w.deepest_open_cut > Length::ZERO => {
            format!("Deepest open face {}.", run(w.deepest_open_cut))
        }
        "open-holes" if holes > 0 || w.deepest_open_cut > Length::ZERO => {
            let who = if w.public_near { " Children or the public come here." } else { "" };
            format!("{holes} holes, the deepest {}.{who}", run(deepest_hole))
        }
        "water" => match w.walls.iter().find(|x| x.water_found) {
            Some(x) => format!("Water was met at {}.", x.id),
            None => String::new(),
        },
        "footings" if w.footing_near => String::new(),
        "roots" => {
            let t = w.tree.as_ref()?;
            let zone = t.trunk * 12.0;
            let side = if t.distance < zone { "inside" } else { "outside" };
            format!("{}: root zone {}, nearest dig {} away, {side} it.", t.id, run(zone), run(t.distance))
        }
        "lifting" if w.heaviest_piece > Mass::kg(16.0) => {
            format!("Heaviest piece: {}, {}.", w.heaviest_what, w.units.mass(w.heaviest_piece))
        }
        "auger" if holes > 0 => String::new(),
        "machine-on-slope" if w.dig == DigBy::Machine => slope(w),
        "barrow-on-slope" if w.ground_slope.abs().to_ratio() > 1.0 / 12.0 => slope(w),
        "treated-timber" if w.treated_timber => String::new(),
        "wet-concrete" if concrete > Volume::ZERO => format!("{} of it.", w.units.volume(concrete)),
        "silica" if w.cuts_stone => String::new(),
        "plate-near-wall" if !w.walls.is_empty() => String::new(),
        _ => return None,
    })
}

fn slope(w: &Works) -> String {
    let s = w.ground_slope.abs();
    if s.to_ratio() < 1e-3 { String::new() } else { format!("The ground slopes at 1:{:.1}.", s.to_one_in()) }
}
