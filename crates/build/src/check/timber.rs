//! Is the timber of a wall treated for where it stands?

use groundhold_finding::{Finding, Place, Remedy, Severity};

use super::cited;
use crate::findings::TIMBER_CLASS;
use crate::{Region, TimberFacts, TimberPart, WallFacts};

/// `asked`: an approval or an engineer is asked for this wall.
pub(super) fn wall(region: &Region, w: &WallFacts, asked: bool, said: &mut Vec<Finding>) {
    let Some(rule) = region.timber else { return };
    for t in &w.timbers {
        let (wanted, why) = match (t.part, rule.relied_on) {
            (TimberPart::Post, Some(class)) if asked => (class, " of a wall that is asked about"),
            (TimberPart::Post, _) => (rule.post, " in the ground"),
            (TimberPart::Board, _) => (rule.board, " with soil against them"),
        };
        let (has, needs) = (rule.rank(&t.treatment), rule.rank(wanted));
        if needs <= has && has.is_some() {
            continue;
        }
        said.push(finding(region, w, t, (wanted, why), has.is_some()));
    }
}

fn finding(region: &Region, w: &WallFacts, t: &TimberFacts, (wanted, why): (&str, &str), known: bool) -> Finding {
    let what = match t.part {
        TimberPart::Post => "posts",
        TimberPart::Board => "boards",
    };
    let source = region.timber.map_or(String::new(), |r| cited(r.source, r.status, region));
    let says = if known {
        format!("The {what} are treated to {}; {what}{why} are asked to have {wanted}. {source}", t.treatment)
    } else if t.treatment.is_empty() {
        format!("Nobody has written how the {what} are treated; {what}{why} are asked to have {wanted}. {source}")
    } else {
        format!(
            "`{}` is no class known for {}: whether it is as good as {wanted}, asked for {what}{why}, is not known. {source}",
            t.treatment, region.name
        )
    };
    // A class that is not known may be a better one.
    let weight = if known { Severity::Ask } else { Severity::Watch };
    let order = Remedy::theirs(format!(
        "Order the {what} treated to {wanted}, with the certificate, or of a durable heartwood."
    ));
    Finding::new(&TIMBER_CLASS, Place::on(&w.id, what), says).weighing(weight).with_remedy(order)
}
