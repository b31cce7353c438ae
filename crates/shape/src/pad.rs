//! Where does each pad lie, in which plane, and which ground does it take?

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Length, Level, Point};
use groundhold_surface::{Facet, Plane, Polygon, Tin, clip_convex, cut_and_fill};

use crate::barrier::{Barrier, NOTHING};
use crate::findings::{PAD_CANNOT_BE_SHAPED, PAD_OUTSIDE_SURVEY, PADS_OVERLAP};
use crate::mosaic::Mosaic;
use crate::outline::{area, mitred};
use crate::reach::{Platform, apron_pieces, strips_to_walls};
use crate::{GroundKind, Pad, PadWish, Wish};

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
    let polygon = Polygon::new(w.corners.clone()).map_err(|e| e.to_string())?;
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
    Ok(Pad { id: w.id.clone(), area: polygon.area(), polygon, finished, plane })
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
                findings.push(Finding::new(&PADS_OVERLAP, Place::of(&b.id), says));
            }
        }
    }
}

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
        let platform = Platform::new(&p.id, ring, p.polygon.corners(), walls);
        for ring in strips_to_walls(&platform, walls) {
            if area(&ring) > NOTHING {
                mosaic.lay(&ring, p.plane, &p.id, GroundKind::Pad);
            }
        }
        platforms.push(platform);
    }
    platforms
}
