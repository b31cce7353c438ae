//! The ground as it is and as it will be: contours, cut and fill, finished pieces, and what must be heeded.

use groundhold_plan::Plan;
use groundhold_plan::job::NearKind;
use groundhold_quantity::{Length, Point};
use groundhold_shape::GroundKind;
use groundhold_surface::{contours_of_facets, pieces_above, pieces_below};

use super::lettering::{Sort, Tag};
use super::{Drawing, pen};

/// Distance between contours: round, and neither crowded nor empty.
pub fn interval(plan: &Plan) -> Length {
    let levels: Vec<f64> = plan.survey.ground.points().iter().map(|p| p.level.to_m()).collect();
    let (lo, hi) = levels.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), v| (a.min(*v), b.max(*v)));
    let range = hi - lo;
    let steps = [0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0];
    let fits = steps.into_iter().find(|s| range.is_finite() && range / s <= 24.0);
    Length::m(fits.unwrap_or(200.0))
}

/// Existing contours; every fifth is a main one and has its level on it.
pub fn existing(plan: &Plan, d: &mut Drawing) {
    let every = interval(plan);
    let (mut plain, mut main): (Vec<Vec<Point>>, Vec<Vec<Point>>) = (vec![], vec![]);
    for c in plan.survey.ground.contours(every) {
        let mut line = c.line.clone();
        if c.closed {
            line.extend(c.line.first().copied());
        }
        let nth = (c.level.to_m() / every.to_m()).round() as i64;
        if nth % 5 == 0 {
            if let Some(p) = line.get(line.len() / 2) {
                let text = plan.job.about.units.level(c.level);
                d.tags.push(Tag::new(*p, text, Sort::Contour, ""));
            }
            main.push(line);
        } else {
            plain.push(line);
        }
    }
    let slices = |ls: &[Vec<Point>], class: &str| pen::lines(&ls.iter().map(Vec::as_slice).collect::<Vec<_>>(), class);
    let outline: Vec<_> = plan.survey.ground.outline();
    let rings: Vec<&[Point]> = outline.iter().map(groundhold_surface::Polygon::corners).collect();
    d.layer("survey", "", "", pen::areas(&rings, "survey"));
    let words = format!("Existing contours every {}", plan.job.about.units.length(every));
    d.layer("contours", "", words, format!("{}{}", slices(&plain, "contour"), slices(&main, "contour main")));
}

/// Finished pieces by element, cut and fill over them, contours of slopes.
pub fn finished(plan: &Plan, d: &mut Drawing) {
    let shaped = &plan.shaped;
    let rings = |kind: GroundKind, of: &str| -> Vec<&[Point]> {
        shaped.grounds.iter().filter(|g| g.kind == kind && g.of == of).map(|g| g.facet.ring.as_slice()).collect()
    };
    let mut owners: Vec<(&str, GroundKind)> = shaped.grounds.iter().map(|g| (g.of.as_str(), g.kind)).collect();
    owners.sort_unstable();
    owners.dedup();
    for (of, kind) in owners {
        let (class, word) = match kind {
            GroundKind::Pad => ("piece pad", "pad"),
            GroundKind::Ramp => ("piece ramp", "ramp"),
            GroundKind::Tread => ("piece tread", "steps"),
            GroundKind::Batter => ("piece batter", "bank"),
        };
        let title = if kind == GroundKind::Pad { "" } else { word };
        d.layer(format!("piece {of} {word}"), of, title, pen::areas(&rings(kind, of), class));
    }
    let (mut cut, mut fill) = (vec![], vec![]);
    for g in &shaped.grounds {
        cut.extend(pieces_below(&plan.survey.ground, &g.facet));
        fill.extend(pieces_above(&plan.survey.ground, &g.facet));
    }
    let ring = |fs: &[groundhold_surface::Facet], class: &str| {
        pen::areas(&fs.iter().map(|f| f.ring.as_slice()).collect::<Vec<_>>(), class)
    };
    d.layer("cut", "", "", ring(&cut, "cut"));
    d.layer("fill", "", "", ring(&fill, "fill"));
    let slopes: Vec<_> = shaped
        .grounds
        .iter()
        .filter(|g| matches!(g.kind, GroundKind::Ramp | GroundKind::Batter))
        .map(|g| g.facet.clone())
        .collect();
    let lines = contours_of_facets(&slopes, interval(plan));
    d.layer(
        "new contours",
        "",
        "",
        pen::lines(&lines.iter().map(|c| c.line.as_slice()).collect::<Vec<_>>(), "contour new"),
    );
    for pad in &shaped.pads {
        let units = plan.job.about.units;
        let level = units.level(pad.plane.level_at(pad.polygon.centroid()));
        let name = plan.job.pads.iter().find(|p| p.id == pad.id).map_or("", |p| p.name.as_str());
        let title = format!("Pad {} {name}, level {level}, {}", pad.id, units.area(pad.area));
        d.layer(format!("pad {}", pad.id), &pad.id, title, pen::area(pad.polygon.corners(), "pad-edge"));
        let middle = pad.polygon.centroid();
        d.tags.push(Tag::new(middle, format!("{} {name}", pad.id), Sort::Name, &pad.id).and(format!("▽ {level}")));
    }
}

/// Services, trees, boundaries and buildings, with the room they want.
pub fn heeded(plan: &Plan, d: &mut Drawing) {
    let units = plan.job.about.units;
    for near in plan.job.near.iter() {
        let Some(first) = near.line.first().copied() else { continue };
        let (class, word) = match &near.kind {
            NearKind::Service(what) => ("service", what.clone()),
            NearKind::Tree { .. } => ("tree", "tree".into()),
            NearKind::Boundary => ("boundary", "boundary".into()),
            NearKind::Footing(what) => ("footing", what.clone()),
            NearKind::Street => ("street", "street".into()),
            NearKind::Other(what) => ("other", what.clone()),
        };
        let mut svg = String::new();
        if let Some(clear) = near.clear {
            svg.push_str(&strip(&near.line, clear.to_m()));
        }
        if let NearKind::Tree { trunk } = &near.kind {
            svg.push_str(&pen::circle(first, trunk.to_m() * 12.0, "roots"));
            svg.push_str(&pen::circle(first, trunk.to_m() / 2.0, "trunk"));
        } else if near.line.len() > 1 {
            svg.push_str(&pen::line(&near.line, class));
            // Wide and unseen, for fingers.
            svg.push_str(&pen::line(&near.line, "reach"));
        } else {
            svg.push_str(&pen::circle(first, 0.15, class));
        }
        let depth = near.depth.map(|x| format!(", {} down", units.length(x))).unwrap_or_default();
        d.layer(format!("near {}", near.id), &near.id, format!("{} {word}{depth}", near.id), svg);
        let at = near.line.get(1).map_or(first, |second| first.towards(*second, 0.5));
        d.tags.push(Tag::new(at, format!("{} {word}{depth}", near.id), Sort::Heed, &near.id));
    }
}

/// A strip to both sides of a line.
fn strip(line: &[Point], half: f64) -> String {
    let rings: Vec<Vec<Point>> = line
        .windows(2)
        .filter(|w| (w[1] - w[0]).length() > 1e-9)
        .map(|w| {
            let n = (w[1] - w[0]).unit().left() * half;
            vec![w[0] + n, w[1] + n, w[1] - n, w[0] - n]
        })
        .collect();
    pen::areas(&rings.iter().map(Vec::as_slice).collect::<Vec<_>>(), "clear-strip")
}
