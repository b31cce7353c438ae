//! What does the layout itself have against the wall, and do the screws reach?

use groundhold_finding::{Adjust, Finding, Place, Remedy};
use groundhold_quantity::Length;

use crate::posted;
use crate::systems::timber_posts::TimberPostSpec;
use crate::{Layout, WallCase, findings};

/// What the layout itself has against it.
pub(crate) fn findings(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Vec<Finding> {
    let mut all = posted::fit::findings(case, &spec.posted(), layout);
    all.extend(screw_short(case, spec));
    all
}

fn screw_short(case: &WallCase, spec: &TimberPostSpec) -> Option<Finding> {
    let needed = spec.board.thickness + spec.screws.diameter * 6.0;
    if needed <= spec.screws.length {
        return None;
    }
    let says = format!(
        "A screw of {} through a board of {} grips {} in the post, less than six diameters.",
        case.units.length(spec.screws.length),
        case.units.length(spec.board.thickness),
        case.units.length((spec.screws.length - spec.board.thickness).max(Length::ZERO))
    );
    let longer = Length::mm((needed.to_mm() / 25.0).ceil() * 25.0);
    let value = format!("{}x{}", spec.screws.diameter.to_mm(), longer.to_mm());
    let adjust = Adjust { element: case.id.clone(), field: "spec.screws".into(), value };
    let remedy = Remedy::ours(format!("Screws of {}.", case.units.length(longer)), vec![adjust]);
    let finding = Finding::new(&findings::SCREW_SHORT, Place::of(&case.id), says);
    Some(finding.with_utilisation(needed / spec.screws.length).with_remedy(remedy))
}
