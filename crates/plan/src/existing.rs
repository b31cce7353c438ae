//! What do walls that stand already miss behind them, and does the new ground ask more of them than they were built for?

use groundhold_earth::Soil;
use groundhold_finding::{Finding, Kind, Place, Remedy, Severity};
use groundhold_quantity::{Length, Point, UnitWeight, Vector, math, trim};
use groundhold_shape::Shaped;
use groundhold_surface::Tin;

use crate::job::{Job, Near, StandingWall};
use crate::near::along;

/// A wall that stands has no drain or no filter, or nobody has looked.
pub static WALL_UNDRAINED: Kind = Kind {
    code: "N-022",
    name: "existing wall without drain or filter",
    severity: Severity::Ask,
    why: "Water behind a wall without a drain pushes about as hard as the soil once more; stone without a filter fills with \
          soil and is no drain after some winters.",
    source: "water under the soil's own weight: EN 1997-1:2004 9.6 (from memory); figures by Rankine 1857 with the soil of the job",
    when_wrong: "the ground drains by itself: clean gravel down to below its foot",
};

/// Ground is raised near a wall that stands.
pub static WALL_TOPPED_UP: Kind = Kind {
    code: "N-023",
    name: "ground raised on an existing wall",
    severity: Severity::Ask,
    why: "A wall is built for the height it holds: its push grows with the square of that height, its moment with the cube.",
    source: "Rankine 1857: push over height squared; common practice, no source, for asking an engineer",
    when_wrong: "an engineer found that it was built to hold that much",
};

/// Ground this much higher than before counts as raised. Common practice, no source.
const RAISED: Length = Length::mm(50.0);
/// How far beside the wall's line the new ground is first looked at, and the step from there.
const LOOK: (f64, f64) = (0.15, 0.25);
/// Unit weight of water.
const WATER: UnitWeight = UnitWeight::kn_per_m3(9.81);

/// What there is to say about walls that stand already.
pub(crate) fn check(job: &Job, ground: &Tin, shaped: &Shaped, soil: &Soil) -> Vec<Finding> {
    let old = crate::as_found::as_near(job);
    let walls = job.near.iter().chain(&old).filter_map(|n| Some((n, n.holds?)));
    walls
        .flat_map(|(near, wall)| {
            let lacks = lacking(job, near, &wall, soil);
            lacks.into_iter().chain(topped_up(job, near, &wall, ground, shaped))
        })
        .collect()
}

fn lacking(job: &Job, near: &Near, wall: &StandingWall, soil: &Soil) -> Option<Finding> {
    let (missing, said): (bool, &str) = match (wall.drained, wall.filter) {
        (Some(true), Some(true)) => return None,
        (Some(false), Some(false)) => (true, "without a drain behind it and without a filter or fabric"),
        (Some(false), _) => (true, "without a drain behind it"),
        (Some(true), Some(false)) => (true, "with stone behind it and no filter or fabric round that"),
        (Some(true), None) => {
            (false, "drained; whether a filter or fabric keeps the soil out of the stone is not told")
        }
        (None, _) => (false, "whether it has a drain behind it is not told"),
    };
    let says = format!(
        "{} holds {}, {said}. With water to its top it is pushed {} times as hard as by the drained soil of this job.",
        near.id,
        job.about.units.length(wall.retained),
        trim(water_ratio(soil), 1)
    );
    let finding = Finding::new(&WALL_UNDRAINED, Place::of(&near.id), says);
    let rebuild = Remedy::theirs(
        "Have it dug out behind in short lengths and drained: clean stone in fabric, a pipe to an outlet below its foot; an \
         engineer above the local mark, and where a vehicle drives behind it.",
    );
    let look = Remedy::theirs(
        "A small hole behind it, dug by hand, shows stone, fabric and pipe, or soil to the back of the wall.",
    );
    Some(match missing {
        true => finding.with_remedy(rebuild),
        false => finding.weighing(Severity::Watch).with_remedy(look).with_remedy(rebuild),
    })
}

/// Push with water to the top over that of the drained soil: (K γ′ + γ_w) / (K γ), Rankine's K.
fn water_ratio(soil: &Soil) -> f64 {
    let k = groundhold_earth::pressure::rankine::ka(soil.phi.to_rad());
    let gamma = |g: UnitWeight| g.to_kn_per_m3();
    let water = gamma(WATER);
    (k * (gamma(soil.unit_weight_saturated) - water).max(0.0) + water) / (k * gamma(soil.unit_weight))
}

fn topped_up(job: &Job, near: &Near, wall: &StandingWall, ground: &Tin, shaped: &Shaped) -> Option<Finding> {
    let units = job.about.units;
    let reach = wall.retained.to_m();
    let mut most: Option<(Length, f64, String)> = None;
    let mut see = |q: Point, away: f64| {
        let Some(piece) = shaped.ground_at(q) else { return };
        let Some(before) = ground.level_at(q) else { return };
        let higher = piece.facet.plane.level_at(q) - before;
        if higher > RAISED && most.as_ref().is_none_or(|(m, _, _)| higher > *m) {
            most = Some((higher, away, piece.of.clone()));
        }
    };
    for p in along(&near.line) {
        for a in (0..16).map(|i| std::f64::consts::TAU * f64::from(i) / 16.0) {
            let way = Vector::m(math::cos(a), math::sin(a));
            let mut away = LOOK.0;
            while away <= reach {
                see(p + way * away, away);
                away += LOOK.1;
            }
        }
    }
    let (higher, away, element) = most?;
    let ratio = (wall.retained + higher) / wall.retained;
    let says = format!(
        "{element} raises the ground by {} within {} of {}, which holds {} already; were all of it on top, the push would be \
         {} and the moment {} times what it is.",
        units.length(higher),
        units.length(Length::m(away)),
        near.id,
        units.length(wall.retained),
        trim(ratio * ratio, 1),
        trim(ratio * ratio * ratio, 1)
    );
    let apart = Remedy::theirs(format!(
        "A wall of its own for the raised ground, {} or more behind {} (twice its height), or the ground kept as it is.",
        units.run(wall.retained * 2.0),
        near.id
    ));
    Some(Finding::new(&WALL_TOPPED_UP, Place::of(&near.id), says).with_utilisation(ratio).with_remedy(apart))
}
