//! Which checks of ties, timbers and screws fail, what does the layout have against the wall, and what would mend it?

use groundhold_finding::{Adjust, Finding, Kind, Place, Remedy};
use groundhold_quantity::Length;
use groundhold_working::Trace;

use crate::posted::said::drain_relied_on;
use crate::said::failing;
use crate::systems::stacked_timbers::{StackedTimberSpec, remedies};
use crate::workings::{COURSES, courses};
use crate::{CheckKind, Layout, Line, Strip, Verdict, WallCase, findings};

/// Which checks make which finding.
const ROWS: [(&[CheckKind], &Kind); 6] = [
    (&[CheckKind::DeadmanPull], &findings::TIE_PULLS),
    (&[CheckKind::DeadmanPlace], &findings::TIE_SHORT),
    (
        &[CheckKind::TieTension, CheckKind::TieFixing, CheckKind::CrossBending, CheckKind::CrossShear],
        &findings::TIE_TEARS,
    ),
    (&[CheckKind::CourseShear, CheckKind::CourseOpening], &findings::COURSES_PART),
    (&[CheckKind::TimberBending, CheckKind::TimberShear], &findings::COURSE_OVERSTRESSED),
    (&[CheckKind::TimberBow], &findings::COURSE_BOWS),
];

/// What keeps the drain one.
const KEEP: &str = "Rodding points and an outlet that is seen, cleaned each autumn and after the first storm; clean stone and \
                    fabric behind the timbers, holes drilled through the lowest course.";
/// An overshoot that nobody sees.
const UNSEEN: Length = Length::mm(20.0);

/// One finding per kind of failing check, with the worst place; what the layout has against it; the drain relied on.
pub(crate) fn findings(
    case: &WallCase,
    spec: &StackedTimberSpec,
    layout: &Layout,
    verdict: &Verdict,
    mended: bool,
) -> Vec<Finding> {
    let mut all = vec![];
    for (kinds, kind) in ROWS {
        let Some(f) = failing(case, verdict, kinds, kind, |_| true) else { continue };
        let remedies = if mended { remedies::mend(case, spec, layout, kinds) } else { vec![] };
        all.push(remedies.into_iter().fold(f, Finding::with_remedy));
    }
    all.extend(drain_relied_on(case, verdict, KEEP, || None));
    all.extend(top_misses(case, spec, layout));
    all.extend(screws_short(case, spec));
    all
}

/// Whole courses that do not meet the wanted top, said of the highest strip.
fn top_misses(case: &WallCase, spec: &StackedTimberSpec, layout: &Layout) -> Option<Finding> {
    let highest = layout.strips.iter().reduce(|a, b| if b.exposed() > a.exposed() { b } else { a })?;
    let asked = wanted(case, highest);
    if highest.exposed() - asked < UNSEEN {
        return None;
    }
    let buried = highest.front - highest.base;
    let values = [asked, buried, spec.timber.height, Length::ZERO].map(Length::to_m);
    let count = courses(values[0], values[1], values[2], values[3]);
    let length = |m: f64| case.units.length(Length::m(m));
    let says = format!(
        "{} is wanted above the ground in front; {} whole courses give {}, {} give {}.",
        length(values[0]),
        count.up,
        length(count.exposed_up),
        count.down,
        length(count.exposed_down)
    );
    let bury = Length::m(count.bury_exact);
    let deeper = format!(
        "The lowest course buried by {}: {} courses then stand {} high.",
        length(count.bury_exact),
        count.up,
        length(values[0])
    );
    let field =
        Adjust { element: case.id.clone(), field: "spec.bury".into(), value: format!("{} mm", bury.to_mm().round()) };
    let place = Place::on(&case.id, highest.on.clone());
    let finding = Finding::new(&findings::TOP_MISSES, place, says);
    let finding = finding.with_trace(Trace::new(&COURSES, values.map(Into::into).to_vec()));
    Some(finding.with_remedy(Remedy::ours(deeper, vec![field])))
}

/// The wanted top of a strip, above its lowest front ground.
fn wanted(case: &WallCase, strip: &Strip) -> Length {
    let over = Line::new(&case.stations).over(strip.chainage.0, strip.chainage.1);
    over.iter().map(|g| g.wanted_top - strip.front).reduce(Length::max).unwrap_or_default()
}

fn screws_short(case: &WallCase, spec: &StackedTimberSpec) -> Option<Finding> {
    let needed = spec.timber.height + spec.screws.diameter * 6.0;
    if needed <= spec.screws.length {
        return None;
    }
    let says = format!(
        "A screw of {} through a course of {} reaches {} into the one below, less than six diameters.",
        case.units.length(spec.screws.length),
        case.units.length(spec.timber.height),
        case.units.length((spec.screws.length - spec.timber.height).max(Length::ZERO))
    );
    let longer = Length::mm((needed.to_mm() / 20.0).ceil() * 20.0);
    let value = format!("{}x{}", spec.screws.diameter.to_mm(), longer.to_mm());
    let adjust = Adjust { element: case.id.clone(), field: "spec.screws".into(), value };
    let remedy = Remedy::ours(format!("Screws of {}.", case.units.length(longer)), vec![adjust]);
    let finding = Finding::new(&findings::RODS_SHORT, Place::of(&case.id), says);
    Some(finding.with_utilisation(needed / spec.screws.length).with_remedy(remedy))
}
