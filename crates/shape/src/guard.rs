//! Where does a step in the ground stand that nothing holds, and where may people fall?

use groundhold_finding::{Adjust, Finding, Kind, Place, Remedy};
use groundhold_quantity::{Length, Point, Slope, distance_to_segment, nearest_on_segment};

use crate::findings::{BATTER_NO_DAYLIGHT, DROP_WITHOUT_GUARD, STEP_UNHELD};
use crate::outline::outward;
use crate::profile::{Line, Scene};
use crate::reach::Platform;
use crate::{Batter, Flight, GroundKind, WallProfile, Wish};

/// A step lower than this is an edge, not a step (ours).
const STEP_LEAST: Length = Length::mm(50.0);
/// Levels on both sides of a border are taken this far off it, metres.
const OFF: f64 = 0.002;
/// Borders are looked at in steps of this, metres.
const EVERY: f64 = 0.5;

/// The worst place of one kind on one element.
struct Worst {
    kind: &'static Kind,
    of: String,
    step: Length,
    at: Point,
    falls: bool,
}

/// Steps at the borders of pads, ramps and batters that neither a wall nor a batter holds.
pub(crate) fn unheld_steps(scene: &Scene<'_>, walls: &[Line], platforms: &[Platform], wish: &Wish) -> Vec<Finding> {
    let mut worst: Vec<Worst> = vec![];
    for g in scene.grounds.iter().filter(|g| g.kind != GroundKind::Tread) {
        let ring = &g.facet.ring;
        for i in 0..ring.len() {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            let out = outward(a, b);
            for at in places(a, b) {
                let outside = at + out * OFF;
                let beyond = scene.ground_at(outside);
                if beyond.is_some_and(|o| o.kind == GroundKind::Tread || (o.of == g.of && o.kind == g.kind)) {
                    continue;
                }
                let Some(there) = scene.level(outside) else { continue };
                let rise = there - g.facet.plane.level_at(at);
                if rise.abs() < STEP_LEAST || at_wall(at, walls) {
                    continue;
                }
                let kind =
                    if g.kind == GroundKind::Batter && beyond.is_none() { &BATTER_NO_DAYLIGHT } else { &STEP_UNHELD };
                note(&mut worst, Worst { kind, of: g.of.clone(), step: rise.abs(), at, falls: rise < Length::ZERO });
            }
        }
    }
    worst
        .iter()
        .flat_map(|w| {
            let mut said = say(w, wish);
            if w.kind == &BATTER_NO_DAYLIGHT
                && let Some(first) = said.first_mut()
            {
                first.remedies.extend(daylight(w, scene, platforms, wish));
            }
            said
        })
        .collect()
}

/// Places along a border, away from its ends.
fn places(a: Point, b: Point) -> impl Iterator<Item = Point> {
    let long = (b - a).length();
    let n = if long < 0.01 { 0 } else { (long / EVERY).ceil().clamp(1.0, 1000.0) as usize };
    (0..n).map(move |k| a.towards(b, (k as f64 + 0.5) / n as f64))
}

fn at_wall(p: Point, walls: &[Line]) -> bool {
    walls.iter().any(|w| w.points.windows(2).any(|s| distance_to_segment(p, s[0], s[1]).to_m() <= w.half + 0.03))
}

fn note(worst: &mut Vec<Worst>, new: Worst) {
    match worst.iter_mut().find(|w| w.kind == new.kind && w.of == new.of) {
        Some(w) if w.step < new.step => *w = new,
        Some(_) => {}
        None => worst.push(new),
    }
}

/// Steeper than this no batter is proposed (ours: it stands in rock, not in soil).
const STEEPEST: f64 = 2.0;

/// What would let a batter reach the ground: the gentlest slope that meets it within its width, and the lowest wall at
/// its edge with which the wished slope does. Both are exact: along a section the ground is straight between its corners,
/// so the least of both lies at one of them.
fn daylight(w: &Worst, scene: &Scene<'_>, platforms: &[Platform], wish: &Wish) -> Vec<Remedy> {
    let edges = platforms.iter().filter(|p| p.of == w.of).flat_map(|p| {
        (0..p.ring.len()).map(move |i| {
            let [(a, za), (b, zb)] = p.side(i);
            let (q, t) = nearest_on_segment(w.at, a, b);
            (q, za + (zb - za) * t, p.batter)
        })
    });
    let far = |q: &(Point, groundhold_quantity::Level, Option<Batter>)| (w.at - q.0).length();
    let Some((edge, z, own)) = edges.min_by(|a, b| far(a).total_cmp(&far(b))) else { return vec![] };
    let out = (w.at - edge).unit();
    if out.length() < 0.5 {
        return vec![];
    }
    let cut = scene.existing.level_at(w.at).is_some_and(|g| g > z);
    let batter = own.unwrap_or(wish.batter);
    let slope = if cut { batter.cut } else { batter.fill }.to_ratio();
    // How far the ground lies above the edge (below it in fill), by distance out of the edge.
    let ground: Vec<(f64, f64)> = scene
        .existing
        .section(&[edge, edge + out * crate::batter::WIDEST])
        .iter()
        .filter_map(|s| Some((s.chainage.to_m(), (s.level? - z).to_m() * if cut { 1.0 } else { -1.0 })))
        .filter(|(x, _)| *x > 0.05)
        .collect();
    let least = |f: &dyn Fn(&(f64, f64)) -> f64| ground.iter().map(f).fold(f64::INFINITY, f64::min);
    let (steep, high) = (least(&|(x, h)| h / x), least(&|(x, h)| h - slope * x));
    let u = wish.units;
    let mut all = vec![];
    if slope < steep && steep <= STEEPEST {
        // Rounded up to the tenth of a per cent, so that it meets the ground.
        let percent = (steep * 1000.0 + 1e-6).ceil() / 10.0;
        let words = format!(
            "A batter of {} there meets the ground within {}; whether the soil stands so steep is to be asked.",
            u.slope(Slope::percent(percent)),
            u.run(Length::m(crate::batter::WIDEST))
        );
        all.push(if own.is_some() {
            Remedy::theirs(words)
        } else {
            let field = if cut { "batter.cut" } else { "batter.fill" };
            let change = Adjust { element: "shape".into(), field: field.into(), value: format!("{percent:.1} %") };
            Remedy::ours(words, vec![change])
        });
    }
    if high.is_finite() && high > 0.0 {
        let high = Length::mm((high * 1000.0).ceil());
        all.push(Remedy::theirs(format!(
            "A wall at the edge of {} that holds {} there lets the batter of {} reach the ground.",
            w.of,
            u.length(high),
            u.slope(Slope::ratio(slope))
        )));
    }
    all
}

fn say(w: &Worst, wish: &Wish) -> Vec<Finding> {
    let u = wish.units;
    let place = Place::on(&w.of, format!("at x {:.2} m, y {:.2} m", w.at.x, w.at.y));
    let says = if w.kind == &BATTER_NO_DAYLIGHT {
        format!(
            "The batter of {} does not meet the ground: {} are left, most at x {:.2} m, y {:.2} m.",
            w.of,
            u.length(w.step),
            w.at.x,
            w.at.y
        )
    } else {
        format!(
            "At the edge of {} the ground {} by {} and nothing holds it, most at x {:.2} m, y {:.2} m.",
            w.of,
            if w.falls { "falls" } else { "rises" },
            u.length(w.step),
            w.at.x,
            w.at.y
        )
    };
    let mut said = vec![Finding::new(w.kind, place.clone(), says)];
    if let Some(trigger) = wish.limits.guard.filter(|t| w.falls && w.step > t.drop && w.kind == &STEP_UNHELD) {
        said.push(drop(place, &format!("Beside {}", w.of), w.step, trigger.drop, trigger.source, wish));
    }
    said
}

fn drop(place: Place, where_: &str, found: Length, trigger: Length, source: &str, wish: &Wish) -> Finding {
    let u = wish.units;
    let says = format!(
        "{where_} the ground drops by {}, more than {} ({source}): check with the local rule whether a guard or rail is asked for.",
        u.length(found),
        u.length(trigger)
    );
    Finding::new(&DROP_WITHOUT_GUARD, place, says).with_utilisation(found / trigger)
}

/// Drops over walls and beside flights that are higher than the trigger.
pub(crate) fn drops(scene: &Scene<'_>, walls: &[WallProfile], flights: &[Flight], wish: &Wish) -> Vec<Finding> {
    let Some(trigger) = wish.limits.guard else { return vec![] };
    let mut said = vec![];
    for w in walls {
        let Some(s) = w.highest().filter(|s| s.retained > trigger.drop) else { continue };
        let place = Place::on(&w.id, format!("chainage {:.2} m", s.chainage.to_m()));
        said.push(drop(place, &format!("Over {}", w.id), s.retained, trigger.drop, trigger.source, wish));
    }
    for f in flights {
        let reach = f.width.to_m() / 2.0 + 0.05;
        let sides = [f.outward.left() * reach, f.outward.left() * -reach];
        let beside = f.treads.iter().flat_map(|t| {
            let n = t.ring.len() as f64;
            let sum = t.ring.iter().fold((0.0, 0.0), |s, p| (s.0 + p.x, s.1 + p.y));
            let middle = Point::m(sum.0 / n, sum.1 / n);
            sides.iter().filter_map(move |s| scene.level(middle + *s)).map(|z| t.level - z)
        });
        let Some(most) = beside.reduce(Length::max).filter(|d| *d > trigger.drop) else { continue };
        said.push(drop(
            Place::on(&f.id, "side of the treads"),
            &format!("Beside {}", f.id),
            most,
            trigger.drop,
            trigger.source,
            wish,
        ));
    }
    said
}
