//! What was asked about buried services, and what did the ground turn out to hold?

use groundhold_finding::{Finding, Kind, Place, Remedy};

use crate::findings::{GROUND_DIFFERS, SERVICES_NOT_ASKED, UNKNOWN_FOUND, WATER_IN_DIG};
use crate::{Enquiry, Facts, GroundFind, GroundFound, Region};

/// Days for which a reply is taken as good. Common practice, no source.
const REPLY_GOOD_DAYS: u32 = 28;

pub(super) fn enquiry(region: &Region, facts: &Facts, said: &mut Vec<Finding>) {
    let says = match facts.enquiry {
        Enquiry::NotTold => "Nobody has said whether the owners of buried services were asked".into(),
        Enquiry::Asked => "The owners of buried services were asked and have not replied".into(),
        Enquiry::Replied { days_ago } if REPLY_GOOD_DAYS < days_ago => {
            format!("The reply about buried services is {days_ago} days old, good for {REPLY_GOOD_DAYS}")
        }
        Enquiry::Replied { .. } => return,
    };
    let ask = Remedy::theirs(format!(
        "Ask {}, 2 to 10 working days ahead; private lines need a locator.",
        region.words.services
    ));
    said.push(
        Finding::new(&SERVICES_NOT_ASKED, Place::job(), format!("{says}: no digging until they are located."))
            .with_remedy(ask),
    );
}

pub(super) fn finds(region: &Region, facts: &Facts, said: &mut Vec<Finding>) {
    for f in facts.finds.iter().filter(|f| !f.settled) {
        said.push(find(region, f));
    }
}

fn find(region: &Region, f: &GroundFind) -> Finding {
    let depth = f.depth.map_or(String::new(), |d| format!(" {} down", region.units.length(d)));
    let (kind, says, todo) = answer(f.what);
    let finding = Finding::new(kind, Place::on(&f.element, f.on.as_str()), says.replacen("{}", &depth, 1));
    todo.iter().fold(finding, |x, t| x.with_remedy(Remedy::theirs(*t)))
}

/// Kind, sentence with the depth at `{}`, and what to do.
fn answer(what: GroundFound) -> (&'static Kind, &'static str, &'static [&'static str]) {
    match what {
        GroundFound::Water => (
            &WATER_IN_DIG,
            "Water stands in the dig{}: work stops there until it is led away for good.",
            &[
                "Sump of at least 300 × 300 × 250 mm at the low end, pump, and keep boots off the bottom.",
                "Find where it comes from; a lasting outlet must lie lower than the base of the wall.",
                "Dig out what has gone soft before concrete, and have the order of work made again.",
                "Tell the client in writing before going on; a spring or a wall above the local mark is for an engineer.",
            ],
        ),
        GroundFound::UnknownPipe => (
            &UNKNOWN_FOUND,
            "A pipe that nobody knows{}: it is in use until somebody has traced it.",
            &[
                "Do not cap or cut it; trace it, with dye where it is a drain, and ask its owner.",
                "Write down place, level, size and direction; keep it open.",
            ],
        ),
        GroundFound::Cable => (
            &UNKNOWN_FOUND,
            "A cable{}: it is live until its owner says otherwise.",
            &["Everybody away from it; nobody touches it; call its owner, or isolate where it is certain whose it is."],
        ),
        GroundFound::Void => (
            &UNKNOWN_FOUND,
            "A void or a slab over one{}: perhaps a well or a shaft.",
            &["Everybody away from it, fence it off, do not fill it; a specialist looks at it first."],
        ),
        GroundFound::Contaminated => (
            &UNKNOWN_FOUND,
            "Ground that looks or smells wrong{}: it is not moved until somebody has tested it.",
            &["Stop, cover it, wash; a test decides where it may go."],
        ),
        GroundFound::Rock => (
            &GROUND_DIFFERS,
            "Rock{}: the hole or the dig does not reach its depth.",
            &[
                "Have the wall checked with the depth it has: a wider hole, a post between, a lower wall there, or a fixing into rock by an engineer.",
                "Agree on rate and extra before going on.",
            ],
        ),
        GroundFound::OldFooting => (
            &GROUND_DIFFERS,
            "An old footing{}: somebody's load may stand on it.",
            &["Find out what stands on it before it is touched; no dig below its line of 45°."],
        ),
        GroundFound::Roots => (
            &GROUND_DIFFERS,
            "Thick roots{}: not cut above 25 mm without a tree expert.",
            &["Bridge or move the hole; cut clean, never tear."],
        ),
        GroundFound::SoftGround => (
            &GROUND_DIFFERS,
            "Soft, filled or peaty ground{}: it does not hold posts as reckoned.",
            &["Set the soil class of this place in the job and plan again; an engineer where it goes deep."],
        ),
    }
}
