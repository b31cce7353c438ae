//! What does a wall of baskets take: baskets, stone, wire, time?

use groundhold_quantity::{Density, Length, Mass, Share, Volume, trim};

use super::GabionSpec;
use crate::gravity::Gravity;
use crate::{Amount, Bulk, Layout, Lift, WallCase, Work, WorkStep};

/// Mass of woven mesh for each square metre of basket, with its edge wires. From memory: EN 10223-3, mesh 8 x 10 of 2.7 mm.
const MESH: f64 = 1.6;

/// Counts of baskets by their size across, length and height.
fn baskets(spec: &GabionSpec, layout: &Layout) -> Vec<((Length, Length), usize)> {
    let mut all: Vec<((Length, Length), usize)> = vec![];
    for s in &layout.strips {
        for course in spec.body(s).courses {
            let wide = Length::m(course.front.0 - course.back.0);
            let n = (s.length() / spec.basket - 1e-3).ceil().max(1.0) as usize;
            for i in 0..n {
                let long = (s.length() - spec.basket * i as f64).min(spec.basket);
                let same = |b: &&mut ((Length, Length), usize)| {
                    (b.0.0 - wide).abs() < Length::mm(1.0) && (b.0.1 - long).abs() < Length::mm(10.0)
                };
                match all.iter_mut().find(same) {
                    Some(b) => b.1 += 1,
                    None => all.push(((wide, long), 1)),
                }
            }
        }
    }
    all
}

/// Item of a basket as a price list calls it: `basket 2x1x0.5 m`.
fn item(spec: &GabionSpec, wide: Length, long: Length) -> String {
    // A rest is folded from a basket of the next half metre.
    let sold = Length::m((long.to_m() * 2.0 - 1e-3).ceil() / 2.0);
    let m = |l: Length| trim(l.to_m(), 2);
    format!("basket {}x{}x{} m", m(sold), m(wide), m(spec.course))
}

pub(crate) fn fill(case: &WallCase, spec: &GabionSpec, layout: &mut Layout) {
    let body: Volume = layout.strips.iter().map(|s| Volume::m3(spec.body(s).area(|_| true) * s.length().to_m())).sum();
    let bed: Volume = layout.strips.iter().map(|s| (s.width + Length::mm(200.0)) * spec.bed * s.length()).sum();
    let solid = spec.stone.to_kn_per_m3() * 1000.0 / 9.81;
    let loose = Density::kg_per_m3(solid * (1.0 - spec.voids.to_fraction()) * 0.93);
    let all = baskets(spec, layout);
    let count: usize = all.iter().map(|b| b.1).sum();
    let mut items: Vec<(String, f64)> = vec![];
    for ((wide, long), n) in &all {
        let name = item(spec, *wide, *long);
        match items.iter_mut().find(|(i, _)| *i == name) {
            Some((_, m)) => *m += *n as f64,
            None => items.push((name, *n as f64)),
        }
    }
    let bulk =
        |item: String, amount, what: &str, density, waste| Bulk { item, amount, what: what.into(), density, waste };
    layout.bulk = items
        .into_iter()
        .map(|(item, n)| bulk(item, Amount::Count(n), "baskets with lids", None, Share::ZERO))
        .collect();
    let stone = format!("basket stone {}", spec.filling);
    layout.bulk.push(bulk(stone, Amount::Volume(body), "filling of the baskets", Some(loose), Share::percent(7.0)));
    layout.bulk.push(bulk(
        "basket wire 2.2 mm".into(),
        Amount::Mass(Mass::kg(0.05 * mesh_mass(spec, &all))),
        "lacing and bracing, 5 % of the mesh",
        None,
        Share::ZERO,
    ));
    if bed > Volume::ZERO {
        let density = Some(Density::t_per_m3(2.2));
        layout.bulk.push(bulk(
            "sub-base stone".into(),
            Amount::Volume(bed),
            "bed of the baskets, rolled",
            density,
            Share::percent(5.0),
        ));
    }
    layout.lifts = lifts(spec, solid);
    layout.works = works(spec, body, bed, count);
    let widest = layout.strips.iter().map(|s| s.width).reduce(Length::max).unwrap_or_default();
    let most = layout.strips.iter().map(|s| s.courses).max().unwrap_or(0);
    let u = case.units;
    layout.made_of = format!("{count} baskets");
    layout.headline = format!("{count} baskets in up to {most} courses, base {} wide", u.length(widest));
    layout.facts = vec![
        ("Baskets".into(), format!("{count} pieces, {} high", u.length(spec.course))),
        ("Filling".into(), format!("{} of stone {}", u.volume(body), spec.filling)),
        (
            "Base".into(),
            format!("{} wide at most, {} below the ground in front", u.length(widest), u.length(layout.dig.depth)),
        ),
        ("Unit weight in place".into(), format!("{} kN/m³", trim(spec.in_place().to_kn_per_m3(), 1))),
    ];
}

/// All faces, lids and one partition of every basket.
fn mesh_mass(spec: &GabionSpec, all: &[((Length, Length), usize)]) -> f64 {
    let h = spec.course.to_m();
    let one = |w: f64, l: f64| (2.0 * (w * l + h * l) + 3.0 * w * h) * MESH;
    all.iter().map(|((w, l), n)| one(w.to_m(), l.to_m()) * *n as f64).sum()
}

/// The largest stone that is handled, a ball of the filling's upper size.
fn lifts(spec: &GabionSpec, solid: f64) -> Vec<Lift> {
    let size = spec.filling.split_once('-').and_then(|(_, b)| b.trim().parse::<f64>().ok()).unwrap_or(200.0) / 1000.0;
    let mass = Mass::kg(std::f64::consts::PI / 6.0 * size * size * size * solid);
    vec![Lift { what: format!("stone of {} mm", trim(size * 1000.0, 0)), mass, count: 1.0 }]
}

fn works(spec: &GabionSpec, body: Volume, bed: Volume, baskets: usize) -> Vec<Work> {
    const OURS: &str = "our estimate from common practice, no source; put your own figure from the last job";
    let checks = vec![
        "Bottom firm, level across and stepped as drawn; what was found is written down.".into(),
        "Bed rolled and level to 10 mm; line and corners pegged.".into(),
    ];
    vec![
        Work {
            step: WorkStep::Base,
            name: "Lay and roll the bed".into(),
            amount: bed.to_m3(),
            unit: "m³",
            hours: [2.0, 3.0, 4.5],
            people_most: 3,
            source: OURS,
            how: format!("{} of stone in one layer, rolled.", trim(spec.bed.to_mm(), 0) + " mm"),
            checks,
            sets_days: 0.0,
        },
        Work {
            step: WorkStep::Courses,
            name: "Fold, lace, fill and close the baskets".into(),
            amount: body.to_m3(),
            unit: "m³",
            hours: [2.5, 4.0, 6.0],
            people_most: 4,
            source: OURS,
            how: format!(
                "{baskets} baskets, laced to their neighbours before they are filled, the face packed by hand, bracing wires at each third of the height; joints staggered."
            ),
            checks: vec![],
            sets_days: 0.0,
        },
    ]
}
