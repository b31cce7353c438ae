//! From pieces, holes, zones and areas to what must be bought, cut, lifted and carried. Everything comes from the geometry.

use groundhold_dig::Dug;
use groundhold_drain::Drained;
use groundhold_finding::Finding;
use groundhold_hold::{Amount, Bulk, Layout, Role, Stuff};
use groundhold_order::{self as order, Head, Measured, Need};
use groundhold_quantity::{Area, Density, Length, Mass, Share, Units, Volume};
use groundhold_shape::{GroundKind, Shaped};

use crate::earthwork::{Moves, RAMP_BUILD_UP, TREAD_BUILD_UP, build_up};
use crate::job::Job;
use crate::walls::WallPlan;

/// Bagged concrete, as price lists call it here.
const CONCRETE: &str = "concrete bag 20 kg";
/// Mass of such a bag.
const BAG: Mass = Mass::kg(20.0);
/// Holes dug by hand or auger come out larger than drawn. Common practice, no source: 10 %.
const OVER_DIG: Share = Share::percent(10.0);
/// Crushed stone, rolled. Common practice, no source: 2.2 t/m³.
const ROLLED: Density = Density::t_per_m3(2.2);
/// Treated softwood as delivered, wet. Common practice, no source: 550 to 800 kg/m³.
const WET_TIMBER: Density = Density::kg_per_m3(700.0);
/// Steel, EN 10025 products: 7850 kg/m³.
const STEEL: Density = Density::kg_per_m3(7850.0);
/// Preservative on cut ends: 0.3 litres a square metre, two coats. Common practice, no source.
const PRESERVATIVE_M: Length = Length::mm(0.3);
/// Slabs are sold in sizes like this; mass of one decides who lifts it.
const SLAB: (Length, Length, Length) = (Length::mm(600.0), Length::mm(600.0), Length::mm(50.0));
/// Concrete slabs. Common practice, no source.
const SLAB_DENSITY: Density = Density::kg_per_m3(2300.0);

/// What the needs are made from.
pub(crate) struct Sources<'a> {
    pub job: &'a Job,
    pub shaped: &'a Shaped,
    pub walls: &'a [WallPlan],
    pub drained: &'a Drained,
    pub moves: &'a [Moves],
    pub dug: &'a Dug,
}

/// Everything that is bought and built in, and what is carted away.
pub(crate) fn materials(s: &Sources) -> Vec<Need> {
    let waste = s.job.order.waste;
    let mut needs: Vec<Need> = s.walls.iter().flat_map(|w| wall(w, s.job, &stone_item(s.job))).collect();
    needs.extend(drains(s, waste));
    needs.extend(surfaces(s, waste));
    needs.extend(steps(s));
    let loads = f64::from(s.dug.loads_away());
    if loads > 0.0 {
        let trace = s.dug.subsoil.loads.as_ref().map(|l| l.trace.clone());
        let need = Need::new("spoil away", "", "spoil left over", Measured::Count(loads)).under(Head::Disposal);
        needs.push(match trace {
            Some(t) => need.because(t),
            None => need,
        });
    }
    needs
}

/// `stone 10-20` for the fill `10-20 mm`.
fn stone_item(job: &Job) -> String {
    let fill = if job.drain.fill.is_empty() { "10-20" } else { &job.drain.fill };
    format!("stone {}", fill.trim_end_matches(" mm"))
}

fn wall(w: &WallPlan, job: &Job, stone: &str) -> Vec<Need> {
    let mut needs = vec![];
    let layout = &w.layout;
    for (material, role, pieces) in pieces_by_material(&w.id, layout) {
        let what = match role {
            Role::Post => "posts",
            Role::Board | Role::Capping => "boards",
            Role::Course => "timbers",
            Role::Tie => "ties and cross pieces",
        };
        needs.push(Need::new(material, &w.of, what, Measured::Pieces(pieces)));
    }
    for f in &layout.fixings {
        let count = f.count as f64;
        needs.push(Need::new(&f.item, &w.of, &f.what, Measured::Count(count)).wasting(Share::percent(10.0)));
    }
    needs.extend(concrete(w, job, false));
    let gravel: Volume = layout.holes.iter().filter(|h| !h.built).map(|h| h.gravel).sum();
    if gravel > Volume::ZERO {
        needs.push(
            Need::new(stone, &w.of, "stone under the posts", Measured::Volume(gravel))
                .dense(Density::kg_per_m3(1550.0)),
        );
    }
    needs.extend(layout.bulk.iter().map(|b| bulk(w, b)));
    let cut = layout.pieces.iter().filter(|p| !p.built && p.stuff == Stuff::Timber);
    let ends: Area = cut.map(|p| p.section.0 * p.section.1 * 2.0).sum();
    if ends > Area::ZERO {
        needs.push(Need::new("end-grain preservative", &w.of, "cut ends", Measured::Volume(ends * PRESERVATIVE_M)));
    }
    needs
}

/// Bags for the holes of a wall that are still to be filled, or that are filled already.
fn concrete(w: &WallPlan, job: &Job, built: bool) -> Option<Need> {
    let holes = w.layout.holes.iter().filter(|h| h.built == built && h.concrete > Volume::ZERO);
    let holes: Vec<Volume> = holes.map(|h| h.concrete).collect();
    let per_bag = job.order.prices.iter().find(|p| p.item == CONCRETE).and_then(|p| match p.holds {
        Some(Measured::Volume(v)) => Some(v),
        _ => None,
    });
    let per_bag = per_bag.or_else(|| order::bag_yield(BAG).ok())?;
    let bags = if holes.is_empty() { None } else { order::concrete_bags(&holes, OVER_DIG, per_bag).ok() }?;
    Some(Need::new(CONCRETE, &w.of, "concrete round the posts", Measured::Count(bags.bags)).because(bags.trace))
}

/// What stands has used up: posts as they were cut, and concrete round them.
pub(crate) fn standing(s: &Sources) -> Vec<Need> {
    let mut needs = vec![];
    for w in s.walls {
        let posts = w.layout.pieces.iter().filter(|p| p.built);
        for (i, p) in posts.enumerate() {
            let mark = format!("{}-built-{}", w.id, i + 1);
            needs.push(Need::new(&p.material, &w.of, "posts", Measured::Pieces(vec![(mark, p.length)])));
        }
        needs.extend(concrete(w, s.job, true));
    }
    needs
}

fn bulk(w: &WallPlan, b: &Bulk) -> Need {
    let amount = match b.amount {
        Amount::Count(n) => Measured::Count(n),
        Amount::Length(l) => Measured::Length(l),
        Amount::Area(a) => Measured::Area(a),
        Amount::Volume(v) => Measured::Volume(v),
        Amount::Mass(m) => Measured::Mass(m),
    };
    let need = Need::new(&b.item, &w.of, &b.what, amount).wasting(b.waste);
    match b.density {
        Some(d) => need.dense(d),
        None => need,
    }
}

/// Said where the holes of all walls together take so much concrete that bags are not the way.
pub(crate) fn much_concrete(units: Units, walls: &[WallPlan]) -> Option<Finding> {
    let holes = walls.iter().flat_map(|w| w.layout.holes.iter());
    let volumes: Vec<Volume> = holes.filter(|h| !h.built && h.concrete > Volume::ZERO).map(|h| h.concrete).collect();
    let per_bag = order::bag_yield(BAG).ok()?;
    let bags = order::concrete_bags(&volumes, OVER_DIG, per_bag).ok()?;
    let mut finding = bags.finding?;
    finding.says = format!(
        "{} of concrete is {:.0} bags: ask the price of ready-mixed as well.",
        units.volume(bags.volume),
        bags.bags
    );
    Some(finding)
}

/// A material, what its pieces do, and each piece with its mark and length.
type OfMaterial = (String, Role, Vec<(String, Length)>);

/// Pieces that are not built yet, by material, with marks that name their wall.
fn pieces_by_material(wall: &str, layout: &Layout) -> Vec<OfMaterial> {
    let mut all: Vec<OfMaterial> = vec![];
    for p in layout.pieces.iter().filter(|p| !p.built) {
        let piece = (format!("{wall}-{}", p.mark), p.length);
        match all.iter_mut().find(|(m, ..)| *m == p.material) {
            Some((.., list)) => list.push(piece),
            None => all.push((p.material.clone(), p.role, vec![piece])),
        }
    }
    all
}

fn drains(s: &Sources, waste: Share) -> Vec<Need> {
    let stone = stone_item(s.job);
    let dense = Density::kg_per_m3(1550.0);
    let of = |wall: &str| s.walls.iter().find(|w| w.id == wall).map_or(wall.to_string(), |w| w.of.clone());
    let mut needs = vec![];
    for w in &s.drained.walls {
        let Some(zone) = &w.zone else { continue };
        let element = of(&w.wall);
        let volume = Measured::Volume(zone.stone);
        needs.push(Need::new(&stone, &element, "drainage zone", volume).wasting(waste).dense(dense));
        let fabric = Measured::Area(zone.fabric);
        needs.push(Need::new("geotextile", &element, "round the drainage zone", fabric).wasting(waste));
    }
    for p in &s.drained.pipes {
        let element = of(&p.wall);
        let item = format!("drain pipe {}", p.diameter.to_mm().round());
        needs.push(Need::new(item, &element, "drain pipe", Measured::Length(p.length)).wasting(waste));
        if p.trench.stone > Volume::ZERO {
            let volume = Measured::Volume(p.trench.stone);
            needs.push(Need::new(&stone, &element, "trench to the outlet", volume).wasting(waste).dense(dense));
        }
        if !p.receives.is_empty() {
            needs.push(Need::new("catch pit", &element, "where drains meet", Measured::Count(1.0)));
        }
    }
    if let Some(pit) = &s.drained.soakaway {
        if pit.wish.empty < Share::fraction(0.6) {
            let volume = Measured::Volume(pit.dug);
            needs.push(Need::new(&stone, "drain", "soakaway", volume).wasting(waste).dense(dense));
        }
        let (l, w, d) = (pit.length, pit.wish.width, pit.wish.depth);
        let round = Measured::Area(l * w * 2.0 + (l + w) * d * 2.0);
        needs.push(Need::new("geotextile", "drain", "round the soakaway", round).wasting(waste));
    }
    needs
}

/// Stone under pads and ramps.
fn surfaces(s: &Sources, waste: Share) -> Vec<Need> {
    let mut needs = vec![];
    for m in s.moves.iter().filter(|m| matches!(m.kind, GroundKind::Pad | GroundKind::Ramp)) {
        let area = m.volumes.cut_area + m.volumes.fill_area;
        let thick = if m.kind == GroundKind::Ramp { RAMP_BUILD_UP } else { build_up(s.job, m) };
        let volume = area * thick;
        if volume > Volume::ZERO {
            let what =
                if m.kind == GroundKind::Ramp { "surface of the ramp, rolled" } else { "bed of the pad, rolled" };
            needs.push(
                Need::new("sub-base stone", &m.element, what, Measured::Volume(volume)).wasting(waste).dense(ROLLED),
            );
        }
    }
    needs
}

/// Risers where no wall of the job has a material that suits.
const RISER: &str = "concrete kerb 150x50";

/// Risers, slabs and their bed.
fn steps(s: &Sources) -> Vec<Need> {
    let mut needs = vec![];
    let board = s.job.walls.iter().find_map(|w| w.spec.system().riser());
    for f in &s.shaped.flights {
        let risers = (1..f.risers).map(|i| (format!("{}-r{i}", f.id), f.width));
        match &board {
            Some(board) => {
                needs.push(Need::new(board, &f.id, "riser boards", Measured::Pieces(risers.collect())));
            }
            None if s.job.walls.is_empty() => {}
            None => {
                let length = f.width * f.risers.saturating_sub(1) as f64;
                needs.push(Need::new(RISER, &f.id, "risers", Measured::Length(length)).wasting(s.job.order.waste));
            }
        }
        let tread = f.width * f.going * (f.risers.saturating_sub(1)) as f64;
        if tread > Area::ZERO {
            let slabs = Measured::Area(tread);
            needs.push(Need::new("paving slab 50 mm", &f.id, "treads", slabs).wasting(s.job.order.waste));
            let bed = Measured::Volume(tread * (TREAD_BUILD_UP - SLAB.2));
            needs.push(Need::new("sub-base stone", &f.id, "bed of the treads, rolled", bed).dense(ROLLED));
        }
    }
    needs
}

/// Density of a piece cut from stock. A steel post is not solid: its system says its mass itself, as something lifted.
fn density_of(stuff: Stuff) -> Density {
    match stuff {
        Stuff::Timber | Stuff::Grid => WET_TIMBER,
        Stuff::Steel => STEEL,
        Stuff::Concrete | Stuff::Stone | Stuff::Block | Stuff::Basket | Stuff::Gravel | Stuff::Rammed => SLAB_DENSITY,
    }
}

/// What a person must lift.
pub(crate) fn lifted(units: Units, walls: &[WallPlan], shaped: &Shaped) -> Vec<order::Lifted> {
    let mut things: Vec<order::Lifted> = vec![];
    for w in walls {
        for p in w.layout.pieces.iter().filter(|p| !p.built && p.stuff != Stuff::Steel) {
            let density = density_of(p.stuff);
            let Ok((mass, trace)) = order::piece_mass(p.section.0, p.section.1, p.length, density) else { continue };
            let what = format!("{} {}", p.material, units.run(p.length));
            match things.iter_mut().find(|t| t.what == what && t.element == w.of) {
                Some(t) => t.count += 1.0,
                None => things.push(order::Lifted {
                    what,
                    element: w.of.clone(),
                    mass,
                    length: Some(p.length),
                    count: 1.0,
                    trace: Some(trace),
                }),
            }
        }
        things.extend(w.layout.lifts.iter().map(|l| order::Lifted {
            what: l.what.clone(),
            element: w.of.clone(),
            mass: l.mass,
            length: None,
            count: l.count,
            trace: None,
        }));
    }
    for f in shaped.flights.iter().filter(|f| f.risers > 1) {
        if let Ok((mass, trace)) = order::piece_mass(SLAB.0, SLAB.2, SLAB.1, SLAB_DENSITY) {
            let tread = (f.width * f.going * (f.risers - 1) as f64) / (SLAB.0 * SLAB.1);
            things.push(order::Lifted {
                what: "paving slab 600×600×50".into(),
                element: f.id.clone(),
                mass,
                length: None,
                count: tread.ceil(),
                trace: Some(trace),
            });
        }
    }
    things
}

/// Loads of everything bought whose mass is known, and the working.
pub(crate) fn deliveries(job: &Job, take_off: &order::TakeOff) -> Option<Need> {
    let vehicle = groundhold_dig::Vehicle { payload: job.order.payload, volume: job.order.load_volume };
    let loads = (take_off.mass() / vehicle.payload).ceil();
    (loads.is_finite() && loads >= 1.0)
        .then(|| Need::new("delivery", "", "materials brought", Measured::Count(loads)).under(Head::Delivery))
}
