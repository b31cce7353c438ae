//! Does the base of a wall reach below the frost?

use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::Length;

use super::cited;
use crate::findings::BASE_ABOVE_FROST_LINE;
use crate::{Facts, Region, WallFacts};

/// A tenth of a millimetre.
const FITS: Length = Length::mm(0.1);

/// What the wall has against it, and whether a frost line is asked for that nobody has told.
pub(super) fn wall(region: &Region, facts: &Facts, w: &WallFacts, said: &mut Vec<Finding>) -> bool {
    let Some(depth) = w.base_depth.filter(|_| w.heaves == Some(true)) else { return false };
    let units = region.units;
    let rule = region.frost;
    let (wanted, why) = match (facts.frost_line, rule) {
        (Some(line), _) => (line, "The frost line is the job's own.".to_string()),
        (None, Some(f)) => match f.depth {
            Some(d) => (d, format!("{} {}", f.says, cited(f.source, f.status, region))),
            None => return f.local,
        },
        (None, None) => return false,
    };
    let untold = facts.frost_line.is_none() && rule.is_some_and(|f| f.local);
    if wanted <= depth + FITS {
        return untold;
    }
    let on = if w.base_on.is_empty() { Place::of(&w.id) } else { Place::on(&w.id, w.base_on.as_str()) };
    let says = format!(
        "The base lies {} below the ground in front, in soil that heaves in frost; {} is asked for. {why}",
        units.length(depth),
        units.length(wanted)
    );
    let deeper = Remedy::theirs(format!(
        "Take the base {} deeper, to {}, or put clean stone that holds no water under it down to there.",
        units.length(wanted - depth),
        units.length(wanted)
    ));
    said.push(
        Finding::new(&BASE_ABOVE_FROST_LINE, on, says)
            .with_utilisation(wanted / depth.max(Length::mm(1.0)))
            .with_remedy(deeper),
    );
    untold
}
