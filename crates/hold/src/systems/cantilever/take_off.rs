//! What does a wall with a reinforced stem take: concrete, blocks, fill, bars, boards, time?

use groundhold_quantity::{Area, Density, Length, Mass, Share, Volume, trim};

use super::body::Laid;
use super::schedule::{self, BarLine};
use super::{BLOCK, COURSE, CantileverSpec, Made};
use crate::gravity::Gravity;
use crate::{Amount, Bulk, Layout, Lift, WallCase, Work, WorkStep};

const OURS: &str = "our estimate from common practice, no source; put your own figure from the last job";
/// Share of a hollow block that is filled. Common practice, no source.
const HOLLOW: f64 = 0.47;
/// Width of a key, as of the trench spade.
pub(crate) const KEY_WIDTH: Length = Length::mm(300.0);
/// Joint of a block all round.
const JOINT: Length = Length::mm(10.0);

struct Amounts {
    footing: Volume,
    blinding: Volume,
    wall: Volume,
    boards: Area,
    blocks: f64,
    mortar: Volume,
    grout: Volume,
    bars: Vec<BarLine>,
}

impl Amounts {
    fn steel(&self) -> Mass {
        self.bars.iter().map(BarLine::mass).sum()
    }
}

fn amounts(case: &WallCase, laid: &Laid, layout: &Layout) -> Amounts {
    let spec = laid.spec;
    let mut a = Amounts {
        footing: Volume::ZERO,
        blinding: Volume::ZERO,
        wall: Volume::ZERO,
        boards: Area::ZERO,
        blocks: 0.0,
        mortar: Volume::ZERO,
        grout: Volume::ZERO,
        bars: schedule::bars(case, laid, layout),
    };
    for s in &layout.strips {
        let body = laid.body(s);
        let long = s.length();
        let face = (s.top - s.foot) * long;
        a.footing += Volume::m3(body.area(|c| c.group == "footing") * long.to_m()) + KEY_WIDTH * spec.key * long;
        a.blinding += (spec.toe + s.width + Length::mm(200.0)) * spec.blinding * long;
        a.wall += Volume::m3(body.area(|c| c.group == "stem") * long.to_m());
        a.boards += spec.footing * long * 2.0;
        match spec.made {
            Made::Concrete => a.boards += face * 2.0,
            Made::Block => {
                a.blocks += (long / BLOCK - 1e-3).ceil().max(1.0) * s.courses as f64;
                a.grout += face * spec.stem * HOLLOW;
                // Bed and cross joints on the shells: a seventh of the wall's shells. Common practice, no source.
                a.mortar += face * spec.stem * (1.0 - HOLLOW) * 0.14;
            }
        }
    }
    a
}

/// As a price list calls it: length, height and thickness without joints.
fn item(spec: &CantileverSpec) -> String {
    let mm = |l: Length| trim(l.to_mm(), 0);
    format!("hollow block {}x{}x{}", mm(BLOCK - JOINT), mm(COURSE - JOINT), mm(spec.stem))
}

fn concrete_name(spec: &CantileverSpec) -> String {
    format!("ready-mixed concrete {} MPa", trim(spec.strength.to_mpa(), 0))
}

pub(crate) fn fill(case: &WallCase, laid: &Laid, layout: &mut Layout) {
    let spec = laid.spec;
    let a = amounts(case, laid, layout);
    layout.bulk = bulks(spec, &a, layout);
    if a.blocks > 0.0 {
        // Solid part of a hollow block at 2000 kg/m³. Common practice, no source.
        let room = ((BLOCK - JOINT) * (COURSE - JOINT) * spec.stem).to_m3();
        let mass = Mass::kg(room * (1.0 - HOLLOW) * 2000.0);
        layout.lifts.push(Lift { what: item(spec), mass, count: a.blocks });
    }
    let key: Volume = layout.strips.iter().map(|s| KEY_WIDTH * spec.key * s.length()).sum();
    layout.dig.trench += key + a.blinding;
    layout.dig.depth += spec.blinding.max(spec.key);
    layout.works = works(spec, &a);
    words(case, laid, &a, layout);
}

fn bulks(spec: &CantileverSpec, a: &Amounts, layout: &Layout) -> Vec<Bulk> {
    let bulk = |item: String, amount, what: &str, density, waste| Bulk {
        item,
        amount,
        what: what.into(),
        density,
        waste: Share::percent(waste),
    };
    let heavy = Some(Density::kg_per_m3(2400.0));
    let concrete = |v, what: &str| bulk(concrete_name(spec), Amount::Volume(v), what, heavy, 5.0);
    let mut all = vec![concrete(a.footing, "footing")];
    if a.blinding > Volume::ZERO {
        all.push(bulk("lean concrete".into(), Amount::Volume(a.blinding), "blinding", heavy, 10.0));
    }
    match spec.made {
        Made::Concrete => all.push(concrete(a.wall, "stem")),
        Made::Block => {
            all.push(bulk(item(spec), Amount::Count(a.blocks), "stem", None, 5.0));
            all.push(concrete(a.grout, "fill of the cells, fine gravel"));
            let mortar = Amount::Volume(a.mortar);
            all.push(bulk("mortar, designation M6".into(), mortar, "bed and cross joints", None, 10.0));
        }
    }
    all.push(bulk("formwork hire".into(), Amount::Area(a.boards), "boards of footing and stem", None, 0.0));
    let mut sizes: Vec<Length> = a.bars.iter().map(|b| b.bar).collect();
    sizes.sort_by(|x, y| x.to_m().total_cmp(&y.to_m()));
    sizes.dedup_by(|x, y| (*x - *y).abs() < Length::mm(0.1));
    for size in sizes {
        let mass: Mass = a.bars.iter().filter(|b| (b.bar - size).abs() < Length::mm(0.1)).map(BarLine::mass).sum();
        let name = format!("reinforcing bar {}", trim(size.to_mm(), 0));
        all.push(bulk(name, Amount::Mass(mass), "bars, cut and bent", None, 5.0));
    }
    all.push(bulk("tying wire".into(), Amount::Mass(a.steel() * 0.01), "tying, 1 % of the bars", None, 0.0));
    let weeps = layout.strips.iter().map(|s| (s.length() / spec.weeps).ceil()).sum::<f64>();
    all.push(bulk("weep pipe 75".into(), Amount::Length(spec.stem * weeps), "weep holes through the stem", None, 10.0));
    all
}

fn words(case: &WallCase, laid: &Laid, a: &Amounts, layout: &mut Layout) {
    let (u, spec) = (case.units, laid.spec);
    let mm = |l: Length| trim(l.to_mm(), 0);
    let heel = layout.strips.iter().map(|s| s.width - spec.stem).reduce(Length::max).unwrap_or_default();
    let steel = laid.steel.map_or(String::new(), |s| format!("{} mm every {} mm", mm(s.stem.bar), mm(s.stem.every)));
    layout.made_of = format!("{} of {}", u.volume(a.wall), spec.words());
    layout.headline =
        format!("{} of {}, heel {}, bars {steel} in the stem", u.volume(a.wall), spec.words(), u.length(heel));
    let wide = spec.toe + spec.stem + heel;
    layout.facts = vec![
        ("Stem".into(), format!("{}, {} thick, bars {steel} at the soil side", spec.words(), u.length(spec.stem))),
        (
            "Footing".into(),
            format!(
                "{} of concrete, {} thick, {} wide at most: toe {}, heel {}{}",
                u.volume(a.footing),
                u.length(spec.footing),
                u.length(wide),
                u.length(spec.toe),
                u.length(heel),
                if spec.key > Length::ZERO { format!(", key {} deep", u.length(spec.key)) } else { String::new() }
            ),
        ),
    ];
    if let Some(s) = laid.steel {
        let across = format!(
            "{} mm every {} mm below, {} mm every {} mm above",
            mm(s.toe.bar),
            mm(s.toe.every),
            mm(s.heel.bar),
            mm(s.heel.every)
        );
        layout.facts.push(("Bars across the footing".into(), across));
    }
    if a.blocks > 0.0 {
        let blocks = format!("{} pieces, every cell filled: {}", trim(a.blocks, 0), u.volume(a.grout));
        layout.facts.push(("Blocks".into(), blocks));
    }
    for b in &a.bars {
        let line =
            format!("{} of {} mm, {} long: {} ({})", b.count, mm(b.bar), u.length(b.length), b.what, u.mass(b.mass()));
        layout.facts.push((format!("Bar {}", b.mark), line));
    }
    layout.facts.push(("Bars, all".into(), u.mass(a.steel())));
    layout.facts.push(("Boards".into(), u.area(a.boards)));
}

fn works(spec: &CantileverSpec, a: &Amounts) -> Vec<Work> {
    let work = |step, name: &str, amount: f64, unit, hours, how: &str| Work {
        step,
        name: name.into(),
        amount,
        unit,
        hours,
        people_most: 3,
        source: OURS,
        how: how.into(),
        checks: vec![],
        sets_days: 0.0,
    };
    let footing = Work {
        checks: vec![
            "Before the pour: bottom firm, clean and dry, blinding hard; width, thickness and key measured.".into(),
            "Before the pour: bars counted, their diameter, distance and laps as drawn, cover on spacers at every side.".into(),
            "Before the pour: starters at the soil side, upright, tied and held so that nothing moves them.".into(),
            "Whoever has to see the steel (engineer, inspector) has seen it; photographs with a tape are kept.".into(),
        ],
        ..work(
            WorkStep::Base,
            "Fix the bars and concrete the footing",
            a.footing.to_m3(),
            "m³",
            [3.0, 5.0, 8.0],
            "In one pour between steps, poked with a vibrator; its top left rough where the stem stands, kept wet for three days.",
        )
    };
    let steel = work(WorkStep::Base, "Cut, bend and tie bars", a.steel().to_kg(), "kg", [0.012, 0.02, 0.035], "");
    let stem = match spec.made {
        Made::Concrete => Work {
            checks: vec![
                "Before the pour: boards tight, braced and plumb, weep pipes in, nothing loose inside.".into(),
                "Before the pour: bars of the stem at the soil side, cover measured at both faces; seen by whoever has to.".into(),
            ],
            sets_days: 7.0,
            ..work(
                WorkStep::Courses,
                "Set up boards, cast and strip the stem",
                a.wall.to_m3(),
                "m³",
                [8.0, 13.0, 20.0],
                "Layers of half a metre, each worked into the one below while it is fresh; boards stay two days.",
            )
        },
        Made::Block => Work {
            checks: vec![
                "Starters stand in the middle of cells; the footing is two days old, swept and wetted.".into(),
                "Before the fill: cells clean to the bottom, bars tied to the starters; seen by whoever has to.".into(),
            ],
            sets_days: 7.0,
            ..work(
                WorkStep::Courses,
                "Lay the blocks, set the bars and fill the cells",
                a.blocks,
                "blocks",
                [0.12, 0.18, 0.28],
                "A bar along every second course; cells filled in lifts of 1.2 m at most, rodded; a movement joint every 6 to 9 m (common practice, no source).",
            )
        },
    };
    vec![footing, steel, stem]
}
