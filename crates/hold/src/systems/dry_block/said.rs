//! What is said of a wall of blocks beside its checks, and which of its sizes may be changed to mend it?

use groundhold_finding::{Adjust, Finding, Place, Remedy};
use groundhold_quantity::{Length, Level, trim};

use super::body::Laid;
use crate::gravity::Way;
use crate::{Layout, Line, Strip, WallCase, findings};

/// Tops that miss by less are as wanted. Common practice, no source.
const MISSES: Length = Length::mm(20.0);

/// Sizes that may be changed, each with values to try, the least change first.
pub(crate) fn ways(laid: &Laid, layout: &Layout) -> Vec<Way> {
    let s = laid.spec;
    let mm = |l: Length| trim(l.to_mm(), 0);
    let mut all = vec![];
    if s.grid.laid {
        let long = layout.strips.iter().map(|s| s.width).reduce(Length::max).unwrap_or(s.depth);
        all.push(Way::lengths("grid_length", long, Length::mm(100.0), Length::m(6.0), |l| {
            format!("Grid {} m long from the face instead of {} m.", trim(l.to_m(), 1), trim(long.to_m(), 1))
        }));
        let closer = (1..laid.every).rev().map(|n| {
            let says = format!("A layer of grid on every {}, instead of every {}.", courses(n), courses(laid.every));
            (n.to_string(), says)
        });
        all.push(Way { key: "grid_every", tries: closer.collect() });
        let stronger = [55.0, 80.0, 110.0, 150.0].into_iter().filter(|t| *t > s.grid.ultimate.to_kn_per_m());
        all.push(Way {
            key: "grid_ultimate",
            tries: stronger
                .map(|t| {
                    let says = format!(
                        "Grid of {} kN/m ultimate strength instead of {} kN/m.",
                        trim(t, 0),
                        trim(s.grid.ultimate.to_kn_per_m(), 0)
                    );
                    (format!("{} kN/m", trim(t, 0)), says)
                })
                .collect(),
        });
    } else {
        let says = "Layers of grid in the fill, their length and number solved.".to_string();
        all.push(Way { key: "grid", tries: vec![("layers".into(), says)] });
    }
    all.push(Way::lengths("pad", s.pad, Length::mm(50.0), Length::mm(450.0), |d| {
        format!("A pad of rammed stone {} mm thick instead of {} mm.", mm(d), mm(s.pad))
    }));
    all.push(Way::lengths("bury", s.bury, Length::mm(50.0), Length::mm(800.0), |d| {
        format!("The lowest block {} mm below the ground in front.", mm(d))
    }));
    all
}

pub(crate) fn courses(n: usize) -> String {
    if n == 1 { "course".into() } else { format!("{n} courses") }
}

/// Grid that was never tested with its blocks; whole courses that miss the wanted top.
pub(crate) fn findings(case: &WallCase, laid: &Laid, layout: &Layout) -> Vec<Finding> {
    let grip = &laid.spec.grid.grip;
    let mut all = vec![];
    if layout.strips.iter().any(|s| laid.reinforced(s)) && grip.base.is_none() && grip.angle.is_none() {
        let says = format!(
            "No test of this block with this grid is put in: their grip is taken as the weight above on an angle of {}°, and nothing beside.",
            trim(super::layers::GRIP_ANGLE.to_deg(), 0)
        );
        let remedy = Remedy::theirs(
            "Ask the block's supplier for the connection test with this grid and put in `connection`, `connection_angle` and `connection_most`.",
        );
        all.push(Finding::new(&findings::GRID_UNTESTED, Place::of(&case.id), says).with_remedy(remedy));
    }
    all.extend(top_misses(case, laid, layout));
    all
}

/// By how much a strip comes out above the highest top that is wanted in it.
fn over(case: &WallCase, strip: &Strip) -> Length {
    let places = Line::new(&case.stations).over(strip.chainage.0, strip.chainage.1);
    strip.top - places.iter().map(|g| g.wanted_top).reduce(Level::max).unwrap_or(strip.top)
}

/// The least by which all strips come out too high is what a deeper base takes away.
fn top_misses(case: &WallCase, laid: &Laid, layout: &Layout) -> Option<Finding> {
    let strip = layout.strips.iter().reduce(|a, b| if over(case, b) < over(case, a) { b } else { a })?;
    let miss = over(case, strip);
    if miss < MISSES {
        return None;
    }
    let s = laid.spec;
    let says = format!(
        "{} courses of {} come out {} above the wanted top everywhere, the buried part among them.",
        strip.courses,
        case.units.length(s.height),
        case.units.length(miss)
    );
    let deeper = s.bury + miss;
    let change = Adjust {
        element: case.id.clone(),
        field: "spec.bury".into(),
        value: format!("{} mm", trim(deeper.to_mm(), 1)),
    };
    let remedy = Remedy::ours(
        format!(
            "The lowest block {} below the ground in front: the top then meets its level.",
            case.units.length(deeper)
        ),
        vec![change],
    );
    let place = Place::on(&case.id, strip.on.clone());
    Some(Finding::new(&findings::TOP_MISSES, place, says).with_remedy(remedy))
}
