//! Edges, steps and ramps: guard, handrail, landing, wheelchair?

use groundhold_finding::{Finding, Place, Remedy, Severity};
use groundhold_quantity::{Length, Slope};

use super::cited;
use crate::findings::{FLIGHT_TOO_LONG, GUARD, HANDRAIL, RAMP_FOR_WHEELCHAIR};
use crate::{EdgeFacts, FlightFacts, Near, RampFacts, RampRow, Region};

/// A tenth of a millimetre.
const FITS: Length = Length::mm(0.1);

pub(super) fn edge(region: &Region, e: &EdgeFacts, said: &mut Vec<Finding>) {
    if !e.guarded {
        guard(region, Place::on(&e.element, e.on.as_str()), e.drop, e.walked, said);
    }
}

fn guard(region: &Region, place: Place, drop: Length, walked: Near, said: &mut Vec<Finding>) {
    let Some(g) = region.guard else { return };
    if drop + FITS < g.drop {
        return;
    }
    let condition = match (walked, g.walked_within) {
        (Near::Nothing, _) => return,
        (Near::At(d), Some(within)) if d > within => return,
        (Near::NotTold, Some(within)) => {
            format!(", where people come nearer than {} to it", region.units.length(within))
        }
        (Near::NotTold, None) => ", where people come near it".into(),
        (Near::At(_), _) => String::new(),
    };
    let high = g.height.map_or(String::new(), |h| format!(" of {} or more", region.units.length(h)));
    let says = format!(
        "The drop is {}; from {} on a guard{high} is asked for{condition}. {}",
        region.units.length(drop),
        region.units.length(g.drop),
        cited(g.source, g.status, region)
    );
    let plan_it = Remedy::theirs(
        "Plan a guard now, with its wind on the wall, or planting and distance that keep people away where the rule allows it.",
    );
    said.push(Finding::new(&GUARD, place, says).with_utilisation(drop / g.drop).with_remedy(plan_it));
}

pub(super) fn flight(region: &Region, f: &FlightFacts, said: &mut Vec<Finding>) {
    let place = || Place::of(&f.id);
    if f.side_drop > Length::ZERO {
        guard(region, Place::on(&f.id, "open side"), f.side_drop, Near::At(Length::ZERO), said);
    }
    if let Some(h) = region.handrail.filter(|_| !f.handrail) {
        let by_risers =
            h.risers_from.filter(|n| *n <= f.risers).map(|n| format!("{} risers, the mark is {n}", f.risers));
        let by_rise = h.rise_from.filter(|r| *r <= f.rise + FITS);
        let by_rise = by_rise
            .map(|r| format!("a rise of {}, the mark is {}", region.units.length(f.rise), region.units.length(r)));
        if let Some(why) = by_risers.or(by_rise) {
            let high = match h.height {
                (Some(l), Some(m)) => {
                    format!(", {} to {} above the nosings", region.units.length(l), region.units.length(m))
                }
                (Some(l), None) => format!(", {} or more above the nosings", region.units.length(l)),
                _ => String::new(),
            };
            let says = format!("A handrail is asked for{high}: {why}. {}", cited(h.source, h.status, region));
            said.push(
                Finding::new(&HANDRAIL, place(), says)
                    .with_remedy(Remedy::theirs("Plan the handrail and its posts with the steps.")),
            );
        }
    }
    if let Some((most, s)) = region.steps.and_then(|s| Some((s.risers_most?, s)))
        && most < f.risers
    {
        let says = format!("{} risers in one flight, at most {most}. {}", f.risers, cited(s.source, s.status, region));
        let flights = f.risers.div_ceil(most);
        let split = Remedy::theirs(format!("{flights} flights with landings between them."));
        said.push(
            Finding::new(&FLIGHT_TOO_LONG, place(), says)
                .with_utilisation(f64::from(f.risers) / f64::from(most))
                .with_remedy(split),
        );
    } else {
        said.extend(rise_of_flight(region, f));
    }
}

/// More rise of one flight than allowed.
fn rise_of_flight(region: &Region, f: &FlightFacts) -> Option<Finding> {
    let s = region.steps?;
    let most = s.rise_most?;
    let rise = if f.flight_rise > Length::ZERO { f.flight_rise } else { f.rise };
    if rise <= most + FITS {
        return None;
    }
    let units = region.units;
    let says = format!(
        "One flight rises {}, at most {}. {}",
        units.length(rise),
        units.length(most),
        cited(s.source, s.status, region)
    );
    let flights = (rise / most - 1e-9).ceil();
    Some(
        Finding::new(&FLIGHT_TOO_LONG, Place::of(&f.id), says)
            .with_utilisation(rise / most)
            .with_remedy(Remedy::theirs(format!("{flights} flights with landings between them."))),
    )
}

/// Where a region says nothing: 1:12, as several codes have it for 30 in (762 mm) of rise. From memory.
static ELSEWHERE: &[RampRow] = &[RampRow { slope: Slope::ratio(1.0 / 12.0), run_most: Length::m(9.144) }];

pub(super) fn ramp(region: &Region, r: &RampFacts, said: &mut Vec<Finding>) {
    if r.wheelchair == Some(false) || r.slope <= Slope::LEVEL {
        return;
    }
    let (rows, source) = match &region.ramp {
        Some(l) => (l.rows, cited(l.source, l.status, region)),
        None => (ELSEWHERE, "(1:12 in several codes, from memory; the rule of the place is not known)".into()),
    };
    let steep = Slope::ratio(r.slope.to_ratio() - 1e-6);
    if rows.iter().any(|row| steep <= row.slope && r.run <= row.run_most + FITS) {
        return;
    }
    let steepest = rows.iter().map(|row| row.slope).reduce(Slope::max).unwrap_or_default();
    let units = region.units;
    let rise = Length::m(r.run.to_m() * r.slope.to_ratio());
    let why = if steepest < steep {
        format!(
            "{}: too steep for somebody in a wheelchair, who needs {} or flatter",
            units.slope(r.slope),
            units.slope(steepest)
        )
    } else {
        format!(
            "{} for {} without a landing: too long for somebody in a wheelchair",
            units.slope(r.slope),
            units.run(r.run)
        )
    };
    let weight = match r.wheelchair {
        Some(true) => Severity::Stop,
        _ => Severity::Note,
    };
    let mut finding = Finding::new(&RAMP_FOR_WHEELCHAIR, Place::of(&r.id), format!("{why}. {source}"))
        .weighing(weight)
        .with_utilisation(r.slope / steepest);
    let landing = region.ramp.and_then(|l| l.landing);
    for row in rows {
        finding = finding.with_remedy(Remedy::theirs(longer(region, rise, row, landing)));
    }
    said.push(finding);
}

/// "6.00 m at 1:12, in 3 runs with 2 landings of 1200 mm."
fn longer(region: &Region, rise: Length, row: &RampRow, landing: Option<Length>) -> String {
    let length = Length::m(rise.to_m() / row.slope.to_ratio());
    let runs = ((length - FITS) / row.run_most).ceil().max(1.0);
    let landings = match (runs > 1.0, landing) {
        (false, _) => String::new(),
        (true, Some(l)) => format!(", in {runs} runs with {} landings of {}", runs - 1.0, region.units.length(l)),
        (true, None) => format!(", in {runs} runs with {} landings", runs - 1.0),
    };
    format!(
        "{} at {} for the rise of {}{landings}.",
        region.units.run(length),
        region.units.slope(row.slope),
        region.units.length(rise)
    )
}
