//! Which checks fail, what speaks against the wall beside them, and what would mend it?

use groundhold_earth::Method as Theory;
use groundhold_finding::{Finding, Kind, Place, Remedy};
use groundhold_quantity::Length;

use crate::posted::loads::{self, UNFACTORED};
use crate::posted::said::{
    drain_relied_on, fails_refused, fence, hole_refused, holes_close, methods_disagree, post_name,
};
use crate::posted::{fit, highest};
use crate::said::failing;
use crate::stand::Stand;
use crate::systems::steel_posts::{SteelPostSpec, panels, remedies};
use crate::{Check, CheckKind, Layout, Line, LoadCase, Post, Verdict, WallCase, findings, nearby, slip};

/// Retained height above which guides for steel posts with panels stop. Common practice, no source.
const GUIDE_LIMIT: Length = Length::m(1.5);
/// Least reach of a panel over a flange. Common practice, no source.
pub(crate) const LEAST_SEAT: Length = Length::mm(30.0);

/// What keeps the drain one.
const KEEP: &str = "Rodding points and an outlet that is seen, cleaned each autumn and after the first storm; panels laid dry \
                    on clean stone with fabric, so that water cannot stand.";

/// Which checks make which finding.
const ROWS: [(&[CheckKind], &Kind); 9] = [
    (&[CheckKind::Embedment], &findings::EMBEDMENT_SHALLOW),
    (&[CheckKind::PostBending, CheckKind::PostShear], &findings::STEEL_OVERSTRESSED),
    (&[CheckKind::PostDeflection], &findings::POST_MOVES),
    (&[CheckKind::FlangeBending], &findings::FLANGE_BENDS),
    (&[CheckKind::Seat], &findings::SEAT_NARROW),
    (&[CheckKind::BoardBending, CheckKind::BoardShear], &findings::BOARD_OVERSTRESSED),
    (&[CheckKind::BoardBow], &findings::BOARD_BOWS),
    (&[CheckKind::PanelBending, CheckKind::PanelShear], &findings::PANEL_OVERSTRESSED),
    (&[CheckKind::Slip], &findings::SLIP),
];

/// One finding per kind of failing check, with the worst place; one per refused hole; one where the drain is relied on.
pub(crate) fn findings(
    case: &WallCase,
    spec: &SteelPostSpec,
    layout: &Layout,
    verdict: &Verdict,
    mended: bool,
) -> Vec<Finding> {
    let mut all = vec![];
    let refused: Vec<&Post> = layout.posts.iter().filter(|p| fails_refused(p, verdict)).collect();
    for post in &refused {
        let mut f = hole_refused(case, post, verdict);
        f.remedies = if mended { remedies::refused(case, spec, post) } else { vec![] };
        all.push(f);
    }
    let elsewhere = |c: &Check| c.kind != CheckKind::Embedment || refused.iter().all(|p| c.on != post_name(p.number));
    for (kinds, kind) in ROWS {
        let Some(f) = failing(case, verdict, kinds, kind, elsewhere) else { continue };
        let remedies = match kinds[0] {
            _ if !mended => vec![],
            CheckKind::Slip => slip::remedies(),
            _ => remedies::mend(case, spec, verdict, kinds),
        };
        all.push(remedies.into_iter().fold(f, Finding::with_remedy));
    }
    let deeper = || mended.then(|| remedies::deeper(case, spec, layout, &loads::states(case))).flatten();
    all.extend(drain_relied_on(case, verdict, KEEP, deeper));
    all.extend(methods_disagree(case, layout, verdict));
    all
}

/// Everything that follows from the surroundings.
pub(crate) fn around(case: &WallCase, spec: &SteelPostSpec, layout: &Layout) -> Vec<Finding> {
    let more = |s: &Stand| {
        let slope = Line::new(&case.stations).at(s.chainage).slope_behind;
        let with =
            loads::active(case, &UNFACTORED, LoadCase::Drained, Theory::Rankine, s.retained, slope).ok().flatten()?;
        let added = with.permanent.horizontal + with.variable.horizontal;
        Some((added / with.soil.horizontal, with.trace))
    };
    let mut all = nearby::findings(case, "The posts stand", &Stand::all(layout), more);
    all.extend(highest(layout).and_then(|p| fence(case, p)));
    all.extend(holes_close(case, &spec.posted(), layout));
    all.extend(nearby::higher_than_guides(case, layout.retained, GUIDE_LIMIT, "steel posts with panels"));
    all
}

/// What the layout itself has against it.
pub(crate) fn of_layout(case: &WallCase, spec: &SteelPostSpec, layout: &Layout) -> Vec<Finding> {
    let mut all = fit::findings(case, &spec.posted(), layout);
    all.extend(seat_narrow(case, spec));
    all.extend(cut(case, spec, layout));
    let corners: Vec<String> = layout.posts.iter().filter(|p| p.corner).map(|p| p.number.to_string()).collect();
    if !corners.is_empty() {
        let says = format!(
            "At the corner the panels meet post {} from two directions; it is counted with the whole of both half bays along its web.",
            corners.join(", ")
        );
        let remedy = Remedy::theirs(
            "A fabricator's drawing of the post with channels or plates welded on, made before it is galvanised.",
        );
        all.push(Finding::new(&findings::CORNER_POST, Place::of(&case.id), says).with_remedy(remedy));
    }
    all
}

fn seat_narrow(case: &WallCase, spec: &SteelPostSpec) -> Option<Finding> {
    let seat = spec.seat(&spec.post).min(spec.seat(spec.at_end()));
    if LEAST_SEAT <= seat {
        return None;
    }
    let says = format!(
        "A panel reaches {} over the flange beside the web; {} is the least that a post set a little off allows.",
        case.units.length(seat.max(Length::ZERO)),
        case.units.length(LEAST_SEAT)
    );
    let finding = Finding::new(&findings::SEAT_NARROW, Place::of(&case.id), says);
    let finding = finding.with_utilisation(LEAST_SEAT / seat.max(Length::mm(1.0)));
    Some(remedies::wider_flange(case, spec).into_iter().fold(finding, Finding::with_remedy))
}

/// Cast panels that are not as long as they are sold.
fn cut(case: &WallCase, spec: &SteelPostSpec, layout: &Layout) -> Option<Finding> {
    if !spec.panel.is_concrete() {
        return None;
    }
    let short: Vec<_> = layout.bays.iter().filter(|b| panels::length(spec, b.chainage) < spec.panel.length).collect();
    let first = short.first()?;
    let (count, length) = (short.iter().map(|b| b.courses).sum::<usize>(), panels::length(spec, first.chainage));
    let others = if short.len() > 1 {
        format!(" {} other bay(s) are not whole either.", short.len() - 1)
    } else {
        String::new()
    };
    let says = format!(
        "Bay {} takes cast panels {} long, sold are {}: {count} panel(s) in all are not whole.{others}",
        first.number,
        case.units.length(length),
        case.units.length(spec.panel.length)
    );
    let shorter = Remedy::theirs(format!(
        "Panels ordered to their length; or the line shorter by {}, so that whole panels end it.",
        case.units.length(length + spec.post.web() + spec.clearance * 2.0)
    ));
    let place = Place::on(&case.id, format!("bay {}", first.number));
    Some(Finding::new(&findings::PANELS_CUT, place, says).with_remedy(shorter))
}
