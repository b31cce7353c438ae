//! Which pipe of the catalogue carries the flow?

use groundhold_finding::{Adjust, Finding, Place, Remedy};
use groundhold_quantity::{Flow, Length, Slope, Units, trim};
use groundhold_working::Trace;

use crate::findings::PIPE_TOO_SMALL;
use crate::manning::{full, part_full};
use crate::{DrainCase, WallLine, capacity, depth_of_flow, diameter_needed};

/// A pipe is filled to three quarters at most. Common practice, no source.
const FILLED_MOST: f64 = 0.75;

/// A pipe chosen and what it does.
pub(crate) struct Sized {
    pub diameter: Length,
    pub capacity: Flow,
    pub utilisation: Option<f64>,
    pub filled: Option<f64>,
    pub velocity: Option<f64>,
    pub traces: Vec<Trace>,
}

/// What a pipe carries filled to three quarters, over what it carries full: 0.912, whatever its size.
fn three_quarters() -> f64 {
    part_full(1.0, 1.0, 1.0, FILLED_MOST)[3] / full(1.0, 1.0, 1.0)[1]
}

/// The pipe wished for, or the smallest of the catalogue that carries the flow filled to three quarters and is no
/// narrower than `least` (that of a pipe that joins it); the usual 100 mm where no flow is known.
pub(crate) fn size(
    case: &DrainCase,
    wall: &WallLine,
    flow: Option<Flow>,
    fall: Slope,
    least: Length,
    said: &mut Vec<Finding>,
) -> Sized {
    let material = case.pipe.material;
    let usable = |d: &Length| d.is_finite() && *d > Length::ZERO;
    let wide = |d: &Length| *d >= least;
    let mut catalogue: Vec<Length> = case.pipe.catalogue.iter().copied().filter(usable).collect();
    catalogue.sort_by(|a, b| a.to_m().total_cmp(&b.to_m()));
    let carries = |d: Length| capacity(d, fall, material).0 * three_quarters();
    let usual = Length::mm(100.0);
    let largest = catalogue.last().copied().unwrap_or(usual);
    let smallest_that_does = match flow {
        Some(q) => catalogue.iter().copied().filter(wide).find(|d| q <= carries(*d)),
        None => catalogue.iter().copied().filter(wide).find(|d| *d >= usual),
    };
    let diameter = case.pipe.diameter.filter(usable).or(smallest_that_does).unwrap_or(largest);
    let (full_flow, trace) = capacity(diameter, fall, material);
    let mut sized = Sized {
        diameter,
        capacity: full_flow,
        utilisation: None,
        filled: None,
        velocity: None,
        traces: vec![trace.clone()],
    };
    let Some(q) = flow else { return sized };
    let utilisation = q / carries(diameter);
    sized.utilisation = utilisation.is_finite().then_some(utilisation);
    if let Some((filled, velocity, depth)) = depth_of_flow(q, diameter, fall, material) {
        (sized.filled, sized.velocity) = (Some(filled), Some(velocity));
        sized.traces.push(depth);
    }
    if utilisation > 1.0 {
        let (needed, by) = diameter_needed(q / three_quarters(), fall, material);
        let says = format!(
            "The {} pipe at a fall of 1:{} carries {} l/s filled to three quarters, and {} l/s arrive; {} inside would do.",
            case.units.length(diameter),
            trim(fall.to_one_in(), 0),
            trim(carries(diameter).to_l_per_s(), 2),
            trim(q.to_l_per_s(), 2),
            case.units.length(needed)
        );
        let mut found =
            Finding::new(&PIPE_TOO_SMALL, Place::of(&wall.id), says).with_utilisation(utilisation).with_trace(by);
        if let Some(d) = catalogue.iter().find(|d| q <= carries(**d)) {
            let change = Adjust { element: "drain".into(), field: "pipe".into(), value: Units::Metric.length(*d) };
            found = found.with_remedy(Remedy::ours(format!("A pipe of {}.", case.units.length(*d)), vec![change]));
        }
        said.push(
            found.with_remedy(Remedy::theirs(
                "A swale or dish drain above the wall that takes the surface water past it.",
            )),
        );
    }
    sized
}
