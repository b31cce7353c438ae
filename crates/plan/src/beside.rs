//! Does treated timber stand where food grows or children play?

use groundhold_finding::{Finding, Kind, Place, Remedy, Severity};
use groundhold_hold::Spec;

use crate::job::{Beside, Job, WallWish};

/// Treated timber beside food or play.
pub static TREATED_BESIDE: Kind = Kind {
    code: "N-024",
    name: "treated timber beside food or play",
    severity: Severity::Watch,
    why: "Preservatives go from the wood into soil, roots and hands: arsenic from older ones, copper from all of today's for \
          the ground.",
    source: "from memory: US EPA, cancellation of CCA for residential use from 2004; Directive 2003/2/EC on arsenic in treated \
             wood (not for play equipment or where skin often touches it)",
    when_wrong: "the timber is a naturally durable one without treatment; then leave the treatment out of its size",
};

/// Walls of treated timber with food or children beside them.
pub(crate) fn check(job: &Job) -> Vec<Finding> {
    job.walls.iter().filter_map(|w| Some(finding(w, w.beside?, &treatments(&w.spec)?))).collect()
}

/// The treatments of its timber; `None` where neither has one.
fn treatments(spec: &Spec) -> Option<String> {
    let all = spec.system().treatments();
    (!all.is_empty()).then(|| all.join(" and "))
}

fn finding(wall: &WallWish, beside: Beside, treatment: &str) -> Finding {
    let (what, lined) = match beside {
        Beside::FoodBed => (
            "food grows beside it",
            "A sheet of plastic or a course of stone between the boards and the soil in which food grows, roots kept 300 mm away.",
        ),
        Beside::PlayArea => (
            "children play beside it",
            "Capping and faces that hands reach of untreated durable timber, or sealed and sealed again; hands washed before eating.",
        ),
    };
    let says = format!("{} is of timber treated to {treatment}, and {what}.", wall.id);
    let written = "The preservative in writing from the merchant: none with arsenic or creosote here; offcuts and dust are \
                   collected, never burnt or dug in.";
    Finding::new(&TREATED_BESIDE, Place::of(&wall.id), says)
        .with_remedy(Remedy::theirs(written))
        .with_remedy(Remedy::theirs(lined))
}
