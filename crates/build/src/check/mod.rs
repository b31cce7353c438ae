//! What must be asked, of whom, before this is built here? Facts held against a region's rules; the unknown is said.

mod around;
mod asked;
mod finds;
mod frost;
mod timber;
mod verdict;
mod ways;

use groundhold_finding::{Finding, Place};

use crate::findings::{REGION_SILENT, RULE_NOT_KNOWN};
use crate::{Facts, Region, WallFacts};

/// Holds facts against the rules of a region. Findings of one kind on one element are one finding with all its reasons.
pub fn check_region(region: &Region, facts: &Facts) -> Vec<Finding> {
    // Sentences speak in the units of the job, whatever those of the place are.
    let region = &Region { units: facts.units, ..*region };
    let mut said = vec![];
    silent(region, facts, &mut said);
    for w in &facts.walls {
        asked::wall(region, facts, w, &mut said);
        around::wall(region, facts, w, &mut said);
    }
    facts.pads.iter().for_each(|p| asked::pad(region, p, &mut said));
    facts.excavations.iter().for_each(|e| asked::excavation(region, e, &mut said));
    facts.edges.iter().for_each(|e| ways::edge(region, e, &mut said));
    facts.flights.iter().for_each(|f| ways::flight(region, f, &mut said));
    facts.ramps.iter().for_each(|r| ways::ramp(region, r, &mut said));
    finds::enquiry(region, facts, &mut said);
    finds::finds(region, facts, &mut said);
    said
}

/// What the region pack does not know and the job needs.
fn silent(region: &Region, facts: &Facts, said: &mut Vec<Finding>) {
    if region.triggers.is_empty() && !(facts.walls.is_empty() && facts.pads.is_empty() && facts.excavations.is_empty())
    {
        let says = format!(
            "No trigger for permits, engineers or notices is known for {}: ask {}.",
            region.name, region.words.office
        );
        said.push(Finding::new(&REGION_SILENT, Place::job(), says));
    }
    let any = |f: fn(&WallFacts) -> bool| facts.walls.iter().any(f);
    let wanted = [
        (region.guard.is_none() && !facts.edges.is_empty(), "from which drop a guard is asked for"),
        (region.handrail.is_none() && !facts.flights.is_empty(), "when steps need a handrail"),
        (region.steps.is_none() && !facts.flights.is_empty(), "limits of risers and goings"),
        (region.ramp.is_none() && !facts.ramps.is_empty(), "limits of ramps"),
        (
            region.frost.is_none() && facts.frost_line.is_none() && any(|w| w.heaves == Some(true)),
            "how deep a base goes for frost",
        ),
        (region.timber.is_none() && any(|w| !w.timbers.is_empty()), "which treatment timber in the ground needs"),
        (
            region.excavation.is_none() && !facts.excavations.is_empty(),
            "from which depth an excavation is supported or notified",
        ),
    ];
    let missing: Vec<&str> = wanted.iter().filter(|(m, _)| *m).map(|(_, w)| *w).collect();
    if !missing.is_empty() {
        let says = format!("Not known for {}: {}. Ask {}.", region.name, missing.join("; "), region.words.office);
        said.push(Finding::new(&RULE_NOT_KNOWN, Place::job(), says));
    }
}

/// `(Highways Act 1980, s. 167; read, 2026-11-25)`.
pub(crate) fn cited(source: &str, status: crate::Status, region: &Region) -> String {
    match status {
        crate::Status::CommonPractice => format!("({source})"),
        s => format!("({source}; {}, {})", s.words(), region.date_read),
    }
}

#[cfg(test)]
mod tests;
