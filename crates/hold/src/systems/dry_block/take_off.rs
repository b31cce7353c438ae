//! What does a wall of blocks take: blocks, caps, stone, grid, time?

use groundhold_quantity::{Area, Density, Length, Share, Volume, trim};

use super::body::Laid;
use super::said::courses;
use super::{DryBlockSpec, face};
use crate::{Amount, Bulk, Layout, Lift, WallCase, Work, WorkStep};

const OURS: &str = "our estimate from common practice, no source; put your own figure from the last job";

/// Grid of one layer in one strip.
struct Sheet {
    length: Length,
    along: Length,
    cuts: f64,
}

struct Amounts {
    count: face::Count,
    caps: usize,
    pad: Volume,
    cores: Volume,
    sheets: Vec<Sheet>,
}

fn amounts(case: &WallCase, laid: &Laid, layout: &Layout) -> Amounts {
    let spec = laid.spec;
    let blocks = face::blocks(case, spec, &layout.strips);
    let long: Length = blocks.iter().map(|b| b.chainage.1 - b.chainage.0).sum();
    let sheets = layout.strips.iter().flat_map(|s| {
        let one = move |_| {
            let cuts = (s.length() / spec.grid.roll - 1e-6).ceil().max(1.0);
            Sheet { length: s.width, along: s.length(), cuts }
        };
        laid.layers(s).into_iter().map(one)
    });
    Amounts {
        count: face::count(spec, &blocks),
        caps: face::caps(spec, &layout.strips).len(),
        pad: layout.strips.iter().map(|s| face::pad_width(spec) * spec.pad * s.length()).sum(),
        cores: spec.height * spec.depth * long * spec.hollow.to_fraction(),
        sheets: sheets.collect(),
    }
}

/// As a price list calls it: length, height and depth.
fn item(spec: &DryBlockSpec) -> String {
    let mm = |l: Length| trim(l.to_mm(), 0);
    format!("dry block {}x{}x{}", mm(spec.length), mm(spec.height), mm(spec.depth))
}

pub(crate) fn fill(case: &WallCase, laid: &Laid, layout: &mut Layout) {
    let spec = laid.spec;
    let a = amounts(case, laid, layout);
    let bulk =
        |item: String, amount, what: &str, density, waste| Bulk { item, amount, what: what.into(), density, waste };
    let count = |n: usize| Amount::Count(n as f64);
    layout.bulk =
        vec![bulk(item(spec), count(a.count.bought()), "blocks, halves split from them", None, Share::percent(3.0))];
    if a.caps > 0 {
        let mm = |l: Length| trim(l.to_mm(), 0);
        let cap = format!("cap block {}x{}x{}", mm(spec.length), mm(spec.cap), mm(spec.depth));
        layout.bulk.push(bulk(cap, count(a.caps), "cap", None, Share::percent(3.0)));
        // A bead on two lines, a cartridge for 3 m. Common practice, no source.
        let glue = Amount::Count((layout.length.to_m() / 3.0).ceil());
        layout.bulk.push(bulk("cap adhesive 310 ml".into(), glue, "cap", None, Share::ZERO));
    }
    let stone = Some(Density::t_per_m3(2.2));
    let pad = Amount::Volume(a.pad);
    layout.bulk.push(bulk("sub-base stone".into(), pad, "pad of the wall, rammed", stone, Share::percent(5.0)));
    if a.cores > Volume::ZERO {
        let loose = Some(Density::kg_per_m3(1550.0));
        let cores = Amount::Volume(a.cores);
        layout.bulk.push(bulk("stone 10-20".into(), cores, "cores of the blocks", loose, Share::percent(5.0)));
    }
    let net: Area = a.sheets.iter().map(|s| s.length * s.along).sum();
    if net > Area::ZERO {
        let bought: Area = a.sheets.iter().map(|s| s.length * spec.grid.roll * s.cuts).sum();
        let waste = Share::fraction((bought / net - 1.0).max(0.0));
        let name = format!("geogrid {} kN/m", trim(spec.grid.ultimate.to_kn_per_m(), 0));
        layout.bulk.push(bulk(name, Amount::Area(net), "layers of grid, cut across the roll", None, waste));
    }
    layout.lifts = vec![Lift { what: item(spec), mass: spec.mass, count: a.count.bought() as f64 }];
    layout.dig.depth += spec.pad;
    layout.dig.trench += a.pad;
    layout.works = works(case, spec, &a, net, layout.length);
    words(case, laid, &a, net, layout);
}

fn words(case: &WallCase, laid: &Laid, a: &Amounts, net: Area, layout: &mut Layout) {
    let (u, spec) = (case.units, laid.spec);
    let most = layout.strips.iter().map(|s| s.courses).max().unwrap_or(0);
    let pieces = a.count.pieces();
    layout.made_of = format!("{pieces} blocks");
    layout.headline = if a.sheets.is_empty() {
        format!("{pieces} blocks in up to {most} courses, without grid")
    } else {
        let long = layout.strips.iter().map(|s| s.width).reduce(Length::max).unwrap_or_default();
        format!(
            "{pieces} blocks in up to {most} courses, grid {} long on every {}",
            u.length(long),
            courses(laid.every)
        )
    };
    layout.facts = vec![
        (
            "Blocks".into(),
            format!(
                "{} whole, {} halves, {} cut to length; {} to buy before breakage",
                a.count.whole,
                a.count.halves,
                a.count.cut,
                a.count.bought()
            ),
        ),
        (
            "Pad".into(),
            format!(
                "{} of rammed stone, {} thick, {} wide",
                u.volume(a.pad),
                u.length(spec.pad),
                u.length(face::pad_width(spec))
            ),
        ),
        ("Face".into(), format!("each course of {} steps back {}", u.length(spec.height), u.length(spec.setback))),
        ("Unit weight in place".into(), format!("{} kN/m³", trim(spec.in_place().to_kn_per_m3(), 1))),
    ];
    if !a.sheets.is_empty() {
        layout.facts.push(("Grid".into(), format!("{} in {} sheets", u.area(net), a.sheets.len())));
        layout.facts.push(("Grid, cut list".into(), cut_list(case, spec, &a.sheets)));
    }
}

/// `14 pieces of 1.2 m across a roll of 2 m`, longest first.
fn cut_list(case: &WallCase, spec: &DryBlockSpec, sheets: &[Sheet]) -> String {
    let mut all: Vec<(Length, f64)> = vec![];
    for s in sheets {
        match all.iter_mut().find(|l| (l.0 - s.length).abs() < Length::mm(1.0)) {
            Some(l) => l.1 += s.cuts,
            None => all.push((s.length, s.cuts)),
        }
    }
    all.sort_by(|a, b| b.0.to_m().total_cmp(&a.0.to_m()));
    let each: Vec<String> =
        all.iter().map(|(l, n)| format!("{} pieces of {}", trim(*n, 0), case.units.length(*l))).collect();
    format!("{}, off a roll {} wide", each.join(", "), case.units.length(spec.grid.roll))
}

fn works(case: &WallCase, spec: &DryBlockSpec, a: &Amounts, net: Area, length: Length) -> Vec<Work> {
    let work = |step, name: &str, amount: f64, unit, hours, how: String| Work {
        step,
        name: name.into(),
        amount,
        unit,
        hours,
        people_most: 3,
        source: OURS,
        how,
        checks: vec![],
        sets_days: 0.0,
    };
    let pad = Work {
        checks: vec![
            "Bottom firm, dry and stepped in whole courses as drawn; what was found is written down.".into(),
            "Pad rammed and level to 5 mm along and across; line and corners pegged.".into(),
        ],
        ..work(
            WorkStep::Base,
            "Lay and ram the pad, then the first course to line and level",
            a.pad.to_m3(),
            "m³",
            [2.5, 4.0, 6.0],
            format!("{} of stone in layers of 100 mm, begun at the lowest step.", case.units.length(spec.pad)),
        )
    };
    let first = work(WorkStep::Base, "Set the first course", length.to_m(), "m", [0.2, 0.35, 0.6], String::new());
    let courses = Work {
        checks: vec!["First course level along and across, its line true to the string, its cores filled.".into()],
        ..work(
            WorkStep::Courses,
            "Lay the blocks course by course",
            a.count.pieces() as f64,
            "blocks",
            [0.06, 0.1, 0.16],
            "Cores filled and swept before the next course, joints over the middle of the blocks below, drain stone and fill brought up with every course.".into(),
        )
    };
    let mut all = vec![pad, first, courses];
    if net > Area::ZERO {
        all.push(work(
            WorkStep::Courses,
            "Lay the grid, fill over it and ram",
            net.to_m2(),
            "m²",
            [0.1, 0.2, 0.35],
            "Strong direction away from the face, between the blocks to their front, pulled tight and pegged; fill in layers of 200 mm, only a hand roller within a metre of the face.".into(),
        ));
    }
    all
}
