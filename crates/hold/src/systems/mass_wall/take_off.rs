//! What does a wall of masonry or mass concrete take: concrete, blocks or stone, mortar, boards, time?

use groundhold_quantity::{Area, Density, Length, Mass, Share, Volume, trim};

use super::{Made, MassWallSpec};
use crate::gravity::Gravity;
use crate::{Amount, Bulk, Layout, Lift, WallCase, Work, WorkStep};

/// Solid block, 440 x 215 x 100 mm, laid flat: with a joint of 10 mm it takes 450 x 225 x 110 mm. Common practice, no source.
const BLOCK: (f64, f64, f64) = (0.44, 0.215, 0.1);
const BLOCK_WITH_JOINT: f64 = 0.45 * 0.225 * 0.1125;
/// Mortar in a wall of solid blocks, and of random stone, as a share of the wall. Common practice, no source.
const MORTAR_BLOCK: f64 = 0.17;
const MORTAR_STONE: f64 = 0.3;
const OURS: &str = "our estimate from common practice, no source; put your own figure from the last job";

struct Amounts {
    footing: Volume,
    wall: Volume,
    faces: Area,
}

fn amounts(spec: &MassWallSpec, layout: &Layout) -> Amounts {
    let mut a = Amounts { footing: Volume::ZERO, wall: Volume::ZERO, faces: Area::ZERO };
    for s in &layout.strips {
        let body = spec.body(s);
        a.footing += Volume::m3(body.area(|c| c.group == "footing") * s.length().to_m());
        a.wall += Volume::m3(body.area(|c| c.group == "wall") * s.length().to_m());
        a.faces += (s.top - s.foot) * s.length() * 2.0;
    }
    a
}

pub(crate) fn fill(case: &WallCase, spec: &MassWallSpec, layout: &mut Layout) {
    let a = amounts(spec, layout);
    let bulk = |item: &str, amount, what: &str, waste| Bulk {
        item: item.into(),
        amount,
        what: what.into(),
        density: None,
        waste: Share::percent(waste),
    };
    let concrete = |v, what: &str| Bulk {
        density: Some(Density::kg_per_m3(2400.0)),
        ..bulk("ready-mixed concrete C20/25", Amount::Volume(v), what, 5.0)
    };
    layout.bulk = vec![concrete(a.footing, "footing")];
    let blocks = (a.wall.to_m3() / BLOCK_WITH_JOINT).ceil();
    match spec.made {
        Made::Concrete => {
            layout.bulk.push(concrete(a.wall, "wall"));
            layout.bulk.push(bulk("formwork hire", Amount::Area(a.faces), "both faces of the wall", 0.0));
        }
        Made::Block => {
            layout.bulk.push(bulk("dense block 440x215x100", Amount::Count(blocks), "wall, laid flat", 5.0));
            let mortar = Amount::Volume(a.wall * MORTAR_BLOCK);
            layout.bulk.push(bulk("mortar, designation M6", mortar, "bed and cross joints", 10.0));
        }
        Made::Stone => {
            let solid = spec.unit_weight().to_kn_per_m3() / 9.81 * (1.0 - MORTAR_STONE) * 1.1;
            let stone = Amount::Mass(Mass::t(a.wall.to_m3() * solid));
            layout.bulk.push(bulk("walling stone", stone, "wall in mortar", 10.0));
            let mortar = Amount::Volume(a.wall * MORTAR_STONE);
            layout.bulk.push(bulk("mortar, designation M6", mortar, "bedding and pointing", 10.0));
        }
    }
    let weeps = layout.strips.iter().map(|s| (s.length() / spec.weeps).ceil()).sum::<f64>();
    let wide = layout.strips.iter().map(|s| s.width).reduce(Length::max).unwrap_or_default();
    layout.bulk.push(bulk("weep pipe 75", Amount::Length(wide * weeps), "weep holes through the wall", 10.0));
    if spec.made == Made::Block {
        let density = spec.unit_weight().to_kn_per_m3() * 1000.0 / 9.81;
        let mass = Mass::kg(BLOCK.0 * BLOCK.1 * BLOCK.2 * density);
        layout.lifts.push(Lift { what: "dense block 440×215×100".into(), mass, count: blocks });
    }
    layout.works = works(spec, &a);
    let u = case.units;
    let all = u.volume(a.wall);
    layout.made_of = format!("{all} of {}", spec.made_words());
    layout.headline = format!("{all} of {} on a footing, {} wide at its foot", spec.made_words(), u.length(wide));
    layout.facts = vec![
        (
            "Wall".into(),
            format!("{all} of {}, {} kN/m³", spec.made_words(), trim(spec.unit_weight().to_kn_per_m3(), 1)),
        ),
        (
            "Widths".into(),
            format!("{} at the top, {} on the footing at most", u.length(spec.top_width), u.length(wide)),
        ),
        (
            "Footing".into(),
            format!(
                "{} of concrete, {} thick, {} beyond the face, {} beyond the back",
                u.volume(a.footing),
                u.length(spec.footing),
                u.length(spec.toe),
                u.length(spec.heel)
            ),
        ),
        (
            "Weep holes".into(),
            format!("{} pieces, {} apart, just above the ground in front", trim(weeps, 0), u.length(spec.weeps)),
        ),
    ];
}

fn works(spec: &MassWallSpec, a: &Amounts) -> Vec<Work> {
    let footing = Work {
        step: WorkStep::Base,
        name: "Concrete the footing".into(),
        amount: a.footing.to_m3(),
        unit: "m³",
        hours: [2.0, 3.0, 6.7],
        people_most: 3,
        source: "common practice, no source: two people 1 m³/h with a small mixer, 0.3 m³/h by hand",
        how: "In one pour between steps, struck level, its top left rough where the wall stands.".into(),
        checks: vec![
            "Bottom firm, clean, dry and stepped as drawn; what was found is written down.".into(),
            "Width and thickness measured; pegs show the top of the concrete.".into(),
            "Whoever has to see it (engineer, inspector) has seen it.".into(),
        ],
        sets_days: 0.0,
    };
    let (name, amount, unit, hours, how) = match spec.made {
        Made::Concrete => (
            "Set up boards, cast and strip the wall",
            a.wall.to_m3(),
            "m³",
            [6.0, 10.0, 16.0],
            "Lifts of half a metre, each worked into the one below while it is fresh; weep pipes set before casting.",
        ),
        Made::Block => (
            "Lay the blocks",
            a.wall.to_m3(),
            "m³",
            [7.0, 10.0, 14.0],
            "Blocks flat and bonded through the wall, joints full; a movement joint every 6 to 9 m (common practice, no source).",
        ),
        Made::Stone => (
            "Lay the stone in mortar",
            a.wall.to_m3(),
            "m³",
            [9.0, 14.0, 20.0],
            "Stones on their natural bed, length into the wall, no hollow left in the middle.",
        ),
    };
    let wall = Work {
        step: WorkStep::Courses,
        name: name.into(),
        amount,
        unit,
        hours,
        people_most: 3,
        source: OURS,
        how: how.into(),
        checks: vec!["The footing is two days old, swept and wetted; the face line is struck on it.".into()],
        sets_days: 7.0,
    };
    vec![footing, wall]
}
