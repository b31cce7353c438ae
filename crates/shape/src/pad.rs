//! Where does each pad lie, in which plane, and which ground does it take?

use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Length, Level, Point, Vector, distance_to_segment};
use groundhold_surface::{Facet, Plane, Polygon, Tin, clip_convex, cut_and_fill};

use crate::barrier::{Barrier, NOTHING};
use crate::findings::{PAD_CANNOT_BE_SHAPED, PAD_OUTSIDE_SURVEY, PAD_UNDER_WALL, PADS_OVERLAP};
use crate::mosaic::Mosaic;
use crate::outline::{area, mitred};
use crate::reach::{Platform, apron_pieces, strips_to_walls};
use crate::wall::Planned;
use crate::{Alignment, GroundKind, Pad, PadWish, Wish};

/// The pads that can be shaped, in the order of the wish.
pub(crate) fn pads(ground: &Tin, wish: &Wish, findings: &mut Vec<Finding>) -> Vec<Pad> {
    let mut pads: Vec<Pad> = vec![];
    for w in &wish.pads {
        match pad(w) {
            Ok(p) => {
                if covered(ground, wish, &p, findings) {
                    pads.push(p);
                }
            }
            Err(why) => {
                findings.push(Finding::new(&PAD_CANNOT_BE_SHAPED, Place::of(&w.id), format!("{}: {why}.", w.id)));
            }
        }
    }
    overlaps(wish, &pads, findings);
    pads
}

fn pad(w: &PadWish) -> Result<Pad, String> {
    let (corners, curves) = if w.bends.is_empty() {
        (w.corners.clone(), vec![])
    } else {
        let outline = Alignment { points: w.corners.clone(), bends: w.bends.clone() };
        let course = outline.closed().map_err(|e| e.to_string().replace("its line", "its outline"))?;
        (course.points, course.curves)
    };
    let polygon = Polygon::new(corners).map_err(|e| e.to_string())?;
    let round = polygon.perimeter().to_m();
    if !(0.0..=20_000.0).contains(&round) {
        return Err(format!("its outline is {round:.0} m long, expected no more than 20 000 m"));
    }
    if !w.level.is_finite() {
        return Err("its level is not an ordinary number".into());
    }
    let apron = w.apron.to_m();
    if !(0.0..=100.0).contains(&apron) {
        return Err(format!("its apron is {apron:.3} m, expected 0 m to 100 m"));
    }
    let plane = match w.fall {
        None => Plane::level(w.level),
        Some((slope, down)) => {
            let points = down.length() > 0.0 && down.length().is_finite();
            if !((0.0..=1.0).contains(&slope.to_ratio()) && points) {
                return Err("its fall needs a slope from level to 1:1 and a direction".into());
            }
            Plane::rising(polygon.centroid(), w.level, down * -1.0, slope)
        }
    };
    let finished = if apron > 0.0 {
        Polygon::new(mitred(polygon.corners(), apron))
            .ok()
            .filter(|f| f.corners().len() == polygon.corners().len())
            .ok_or("its apron is wider than its outline has room for")?
    } else {
        polygon.clone()
    };
    let build_up = w.build_up;
    if !(0.0..=5.0).contains(&build_up.to_m()) {
        return Err(format!("its build-up is {:.3} m thick, expected 0 m to 5 m", build_up.to_m()));
    }
    let (area, batter, bounds) = (polygon.area(), w.batter, finished.bounds());
    let corners = w.corners.clone();
    Ok(Pad { id: w.id.clone(), area, polygon, finished, plane, curves, corners, build_up, batter, bounds })
}

/// Convex pieces of a polygon.
pub(crate) fn convex_pieces(p: &Polygon) -> Vec<Vec<Point>> {
    if p.is_convex() { vec![p.corners().to_vec()] } else { p.triangles().iter().map(|t| t.to_vec()).collect() }
}

/// Says where a pad leaves the survey; false where nothing of it lies inside.
fn covered(ground: &Tin, wish: &Wish, pad: &Pad, findings: &mut Vec<Finding>) -> bool {
    let facets: Vec<Facet> =
        convex_pieces(&pad.finished).into_iter().map(|ring| Facet { ring, plane: pad.plane }).collect();
    let missing = cut_and_fill(ground, &facets).uncovered;
    let whole = pad.finished.area();
    if missing.to_m2() <= 1e-6 * whole.to_m2().max(1.0) {
        return true;
    }
    let out = pad.finished.corners().iter().find(|p| ground.level_at(**p).is_none());
    let at = out.map_or("along an edge".into(), |p| format!("at its corner x {:.2} m, y {:.2} m", p.x, p.y));
    let says = format!(
        "{} with its apron reaches beyond the surveyed ground by {}, first {at}; expected all of it inside.",
        pad.id,
        wish.units.area(missing)
    );
    findings.push(Finding::new(&PAD_OUTSIDE_SURVEY, Place::on(&pad.id, at), says));
    missing.to_m2() < 0.999 * whole.to_m2()
}

fn overlaps(wish: &Wish, pads: &[Pad], findings: &mut Vec<Finding>) {
    for (j, b) in pads.iter().enumerate() {
        for a in &pads[..j] {
            let mut shared = 0.0;
            let mut apart = Length::ZERO;
            for p in convex_pieces(&a.polygon) {
                for q in convex_pieces(&b.polygon) {
                    let both = clip_convex(&p, &q);
                    shared += area(&both);
                    for c in &both {
                        apart = apart.max((a.plane.level_at(*c) - b.plane.level_at(*c)).abs());
                    }
                }
            }
            if shared > 1e-3 {
                let says = format!(
                    "{} and {} both want {:.2} m² of ground, at levels up to {} apart; {} keeps it.",
                    a.id,
                    b.id,
                    shared,
                    wish.units.length(apart),
                    a.id
                );
                let mut found = Finding::new(&PADS_OVERLAP, Place::of(&b.id), says);
                if let Some(v) = apart_by(a.polygon.corners(), b.polygon.corners()) {
                    let u = wish.units;
                    let way = [(v.x, "east", "west"), (v.y, "north", "south")];
                    let words: Vec<String> = way
                        .iter()
                        .filter(|(d, ..)| d.abs() >= 0.0005)
                        .map(|(d, to, back)| {
                            // Rounded away to the millimetre, so that they come apart.
                            let by = Length::mm((d.abs() * 1000.0 - 1e-6).ceil());
                            format!("{} to the {}", u.length(by), if *d > 0.0 { to } else { back })
                        })
                        .collect();
                    found = found.with_remedy(Remedy::theirs(format!("Move {} {}.", b.id, words.join(" and "))));
                }
                findings.push(found);
            }
        }
    }
}

/// The shortest way for the second of two convex outlines out of the first; nothing where one is not convex.
///
/// The outlines are apart once some side of either has the other wholly outside (separating axis theorem): the shortest
/// way out is square to the side for which it is shortest.
fn apart_by(a: &[Point], b: &[Point]) -> Option<Vector> {
    let convex = |ring: &[Point]| Polygon::new(ring.to_vec()).is_ok_and(|p| p.is_convex());
    if !(convex(a) && convex(b)) {
        return None;
    }
    let most = |ring: &[Point], v: Vector| ring.iter().map(|p| (*p - a[0]).dot(v)).fold(f64::NEG_INFINITY, f64::max);
    let least = |ring: &[Point], v: Vector| -most(ring, v * -1.0);
    let outs = |ring: &[Point]| -> Vec<Vector> {
        (0..ring.len()).map(|i| crate::outline::outward(ring[i], ring[(i + 1) % ring.len()])).collect()
    };
    let of_a = outs(a).into_iter();
    let of_b = outs(b).into_iter().map(|v| v * -1.0);
    of_a.chain(of_b).map(|v| v * (most(a, v) - least(b, v))).min_by(|x, y| x.length().total_cmp(&y.length()))
}

/// Says where a wall stands on a pad, so that the pad would be cut from under it.
pub(crate) fn under_walls(pads: &[Pad], walls: &[Planned<'_>], wish: &Wish, findings: &mut Vec<Finding>) {
    for p in pads {
        let ring = p.polygon.corners();
        let (lo, hi) = p.polygon.bounds();
        for w in walls {
            let line = w.given();
            let (a, b) = crate::index::bounds(&line.points);
            if a.x > hi.x || b.x < lo.x || a.y > hi.y || b.y < lo.y {
                continue;
            }
            let depth = |q: Point| {
                let side = |i: usize| distance_to_segment(q, ring[i], ring[(i + 1) % ring.len()]);
                (0..ring.len()).map(side).reduce(Length::min).unwrap_or(Length::ZERO)
            };
            let places = line.points.windows(2).flat_map(|s| {
                let n = ((s[1] - s[0]).length() / LOOK).ceil().clamp(1.0, 2000.0) as usize;
                (0..=n).map(move |k| s[0].towards(s[1], k as f64 / n as f64))
            });
            let inside = places.filter(|q| p.polygon.contains(*q)).map(|q| (depth(q), q));
            let Some((deep, at)) = inside.reduce(|x, y| if y.0 > x.0 { y } else { x }) else { continue };
            if deep <= Length::m(line.half + 0.01) {
                continue;
            }
            let back = deep + Length::m(line.half);
            let u = wish.units;
            let says = format!(
                "{} reaches under {}: the wall stands up to {} inside its outline, at x {:.2} m, y {:.2} m.",
                p.id,
                w.wish.id,
                u.length(deep),
                at.x,
                at.y
            );
            let remedy =
                format!("Draw the side of {} there in by {}, to the face of {}.", p.id, u.length(back), w.wish.id);
            let place = Place::on(&p.id, format!("at x {:.2} m, y {:.2} m", at.x, at.y));
            findings.push(Finding::new(&PAD_UNDER_WALL, place, says).with_remedy(Remedy::theirs(remedy)));
        }
    }
}

/// How far apart a wall's line is looked at, metres.
const LOOK: f64 = 0.1;

/// Lays the pads, their aprons and the strips up to the walls along them; gives their edges.
pub(crate) fn lay(pads: &[Pad], walls: &[Barrier], mosaic: &mut Mosaic) -> Vec<Platform> {
    for p in pads {
        for ring in convex_pieces(&p.polygon) {
            mosaic.lay(&ring, p.plane, &p.id, GroundKind::Pad);
        }
    }
    for p in pads {
        let (inner, outer) = (p.polygon.corners(), p.finished.corners());
        for i in 0..inner.len() {
            let k = (i + 1) % inner.len();
            for ring in apron_pieces(&[inner[i], inner[k], outer[k], outer[i]], walls) {
                mosaic.lay(&ring, p.plane, &p.id, GroundKind::Pad);
            }
        }
    }
    let mut platforms = vec![];
    for p in pads {
        let ring: Vec<(Point, Level)> = p.finished.corners().iter().map(|c| (*c, p.plane.level_at(*c))).collect();
        let mut platform = Platform::new(&p.id, ring, p.polygon.corners(), walls);
        platform.batter = p.batter;
        for ring in strips_to_walls(&platform, walls) {
            if area(&ring) > NOTHING {
                mosaic.lay(&ring, p.plane, &p.id, GroundKind::Pad);
            }
        }
        platforms.push(platform);
    }
    platforms
}
