//! Do the screws hold boards that stand in front of the posts?

use groundhold_member::fix::{Joint, Rules, Screw, hang};
use groundhold_quantity::{Density, Force};
use groundhold_working::{Refused, Unit};

use crate::posted::loads;
use crate::systems::timber_posts::TimberPostSpec;
use crate::timber_rules as timber;
use crate::{Bay, Check, CheckKind, LoadCase, WallCase};

/// Density of softwood where the grade's table gives none: the least of EN 338, C14.
const LEAST_DENSITY: Density = Density::kg_per_m3(290.0);

/// The screws of one board at the post that it pushes hardest. `reaction` is permanent and variable, not factored.
///
/// # Errors
/// Where the screw does not grip, or a value is out of range.
pub(crate) fn check(
    case: &WallCase,
    spec: &TimberPostSpec,
    bay: &Bay,
    state: LoadCase,
    reaction: (Force, Force),
) -> Result<Check, Refused> {
    let code = timber::code(case, state, spec.post.grade);
    let rules = Rules::of(spec.post.grade, &code).unwrap_or(Rules::En1995 { service_class: 3, density: LEAST_DENSITY });
    let joint =
        Joint { screw: Screw::usual(spec.screws.diameter, spec.screws.length), board: spec.board.thickness, rules };
    let pull = (reaction.0, reaction.1, timber::lasting(case, state));
    let found = hang(&joint, spec.screws.per_joint, pull, code.loads())?;
    Ok(Check {
        kind: CheckKind::Screws,
        on: format!("bay {}", bay.number),
        case: state,
        method: match rules {
            Rules::En1995 { .. } => "EN 1995-1-1 8.7.2, withdrawal",
            Rules::Nds { .. } => "NDS, withdrawal",
        },
        basis: case.basis.key,
        demand: found.demand.to_kn(),
        capacity: found.carries.force.to_kn(),
        unit: Unit::KN,
        utilisation: found.utilisation,
        traces: vec![found.carries.trace],
        governs: loads::governs(case, state),
    })
}
