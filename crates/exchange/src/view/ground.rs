//! What will the ground be, what is cut and filled for it, and how does the water leave?

use groundhold_drain::PipeRun;
use groundhold_plan::Plan;
use groundhold_shape as shape;
use serde::Serialize;

use super::figure::{kg, level, m, m2, m3, number, xy};

#[derive(Serialize)]
pub(super) struct PadView<'a> {
    pad: &'a str,
    level_m: f64,
    area_m2: f64,
    fall_rise_over_run: f64,
    corners_m: Vec<[f64; 2]>,
}

impl PadView<'_> {
    pub fn of(p: &shape::Pad) -> PadView<'_> {
        PadView {
            pad: &p.id,
            level_m: level(p.plane.level_at(p.polygon.centroid())),
            area_m2: m2(p.area),
            fall_rise_over_run: number(p.plane.slope().to_ratio()),
            corners_m: p.polygon.corners().iter().copied().map(xy).collect(),
        }
    }
}

#[derive(Serialize)]
pub(super) struct FlightView<'a> {
    flight: &'a str,
    leads_to: &'a str,
    risers: usize,
    riser_m: f64,
    going_m: f64,
    two_risers_and_going_m: f64,
    rise_m: f64,
    run_m: f64,
    width_m: f64,
    foot_at_m: [f64; 2],
    foot_level_m: f64,
    top_at_m: [f64; 2],
    top_level_m: f64,
}

impl FlightView<'_> {
    pub fn of(f: &shape::Flight) -> FlightView<'_> {
        FlightView {
            flight: &f.id,
            leads_to: &f.toward,
            risers: f.risers,
            riser_m: m(f.riser),
            going_m: m(f.going),
            two_risers_and_going_m: m(f.two_r_plus_g),
            rise_m: m(f.rise),
            run_m: m(f.run),
            width_m: m(f.width),
            foot_at_m: xy(f.foot),
            foot_level_m: level(f.foot_level),
            top_at_m: xy(f.top),
            top_level_m: level(f.top_level),
        }
    }
}

#[derive(Serialize)]
pub(super) struct RampView<'a> {
    ramp: &'a str,
    leads_to: &'a str,
    length_m: f64,
    width_m: f64,
    rise_m: f64,
    run_m: f64,
    gradient_rise_over_run: f64,
    foot_level_m: f64,
    top_level_m: f64,
    path_m: Vec<[f64; 2]>,
}

impl RampView<'_> {
    pub fn of(r: &shape::Ramp) -> RampView<'_> {
        RampView {
            ramp: &r.id,
            leads_to: &r.toward,
            length_m: m(r.length),
            width_m: m(r.width),
            rise_m: m(r.rise),
            run_m: m(r.run),
            gradient_rise_over_run: number(r.gradient.to_ratio()),
            foot_level_m: level(r.foot_level),
            top_level_m: level(r.top_level),
            path_m: r.path.iter().copied().map(xy).collect(),
        }
    }
}

#[derive(Serialize)]
pub(super) struct PipeView<'a> {
    wall: &'a str,
    diameter_m: f64,
    length_m: f64,
    behind_wall_m: f64,
    least_fall_rise_over_run: f64,
    flow_l_per_s: Option<f64>,
    capacity_l_per_s: f64,
    utilisation: Option<f64>,
    inverts: Vec<InvertView>,
    outlet_level_m: Option<f64>,
    joins: Option<&'a str>,
}

#[derive(Serialize)]
struct InvertView {
    at_m: [f64; 2],
    invert_m: f64,
}

impl PipeView<'_> {
    pub fn of(p: &PipeRun) -> PipeView<'_> {
        let inverts = p.points.iter().map(|i| InvertView { at_m: xy(i.at), invert_m: level(i.invert) });
        PipeView {
            wall: &p.wall,
            diameter_m: m(p.diameter),
            length_m: m(p.length),
            behind_wall_m: m(p.behind_wall),
            least_fall_rise_over_run: number(p.fall.to_ratio()),
            flow_l_per_s: p.flow.map(|q| number(q.to_l_per_s())),
            capacity_l_per_s: number(p.capacity.to_l_per_s()),
            utilisation: p.utilisation.map(number),
            inverts: inverts.collect(),
            outlet_level_m: p.outlet.as_ref().map(|o| level(o.level)),
            joins: p.joins.as_deref(),
        }
    }
}

#[derive(Serialize)]
pub(super) struct EarthworksView<'a> {
    cut_and_fill: Vec<MovesView<'a>>,
    earths: Vec<EarthView>,
    loads_away: u32,
    brought: Vec<BroughtView<'a>>,
    carried: Vec<CarryView<'a>>,
    carried_m3_m: Option<f64>,
    carried_least_m3_m: Option<f64>,
    heaps: Vec<HeapView<'a>>,
}

#[derive(Serialize)]
struct CarryView<'a> {
    earth: &'static str,
    from: &'a str,
    to: &'a str,
    bank_m3: f64,
    way_m: f64,
}

#[derive(Serialize)]
struct HeapView<'a> {
    earth: &'a str,
    at_m: [f64; 2],
    radius_m: f64,
    height_m: f64,
    loose_m3: f64,
}

#[derive(Serialize)]
struct MovesView<'a> {
    element: &'a str,
    cut_m3: f64,
    fill_m3: f64,
    cut_area_m2: f64,
    fill_area_m2: f64,
}

#[derive(Serialize)]
struct EarthView {
    earth: &'static str,
    dug_bank_m3: f64,
    placed_compacted_m3: f64,
    used_bank_m3: f64,
    over_bank_m3: f64,
    over_loose_m3: f64,
    over_kg: f64,
    short_compacted_m3: f64,
    loads_away: Option<u32>,
}

#[derive(Serialize)]
struct BroughtView<'a> {
    what: &'a str,
    element: &'a str,
    in_place_m3: f64,
    loose_m3: f64,
    mass_kg: f64,
}

impl EarthworksView<'_> {
    pub fn of(plan: &Plan) -> EarthworksView<'_> {
        let moves = plan.moves.iter().map(|x| MovesView {
            element: &x.element,
            cut_m3: m3(x.volumes.cut),
            fill_m3: m3(x.volumes.fill),
            cut_area_m2: m2(x.volumes.cut_area),
            fill_area_m2: m2(x.volumes.fill_area),
        });
        let earths = plan.dug.streams().into_iter().map(|s| EarthView {
            earth: s.earth.words(),
            dug_bank_m3: m3(s.dug),
            placed_compacted_m3: m3(s.placed),
            used_bank_m3: m3(s.used),
            over_bank_m3: m3(s.over),
            over_loose_m3: m3(s.over_loose),
            over_kg: kg(s.over_mass),
            short_compacted_m3: m3(s.short),
            loads_away: s.loads.as_ref().map(|l| l.count),
        });
        let brought = plan.dug.bring.iter().map(|b| BroughtView {
            what: &b.what,
            element: &b.element,
            in_place_m3: m3(b.in_place),
            loose_m3: m3(b.loose),
            mass_kg: kg(b.mass),
        });
        EarthworksView {
            cut_and_fill: moves.collect(),
            earths: earths.collect(),
            loads_away: plan.dug.loads_away(),
            brought: brought.collect(),
            carried: plan.groundwork.carried.iter().flat_map(|c| &c.carries).map(carry).collect(),
            carried_m3_m: plan.groundwork.carried.as_ref().map(|c| number(c.work)),
            carried_least_m3_m: plan.groundwork.carried.as_ref().map(|c| number(c.bound)),
            heaps: plan.groundwork.stockpiled.placed.iter().map(heap).collect(),
        }
    }
}

fn carry(c: &groundhold_dig::Carry) -> CarryView<'_> {
    CarryView { earth: c.earth.words(), from: &c.from, to: &c.to, bank_m3: m3(c.bank), way_m: m(c.length) }
}

fn heap(h: &groundhold_dig::PlacedHeap) -> HeapView<'_> {
    HeapView { earth: &h.what, at_m: xy(h.at), radius_m: m(h.radius), height_m: m(h.height), loose_m3: m3(h.volume) }
}

#[derive(Serialize)]
pub(super) struct SwaleView<'a> {
    above: &'a str,
    length_m: f64,
    depth_m: f64,
    width_m: f64,
    fall_rise_over_run: f64,
    lining: &'static str,
    flow_l_per_s: Option<f64>,
    dug_m3: f64,
    beds: Vec<InvertView>,
}

impl SwaleView<'_> {
    pub fn of(s: &groundhold_drain::Swale) -> SwaleView<'_> {
        SwaleView {
            above: &s.wish.above,
            length_m: m(s.length),
            depth_m: m(s.depth_least),
            width_m: m(s.width),
            fall_rise_over_run: number(s.wish.fall.to_ratio()),
            lining: s.wish.lining.name,
            flow_l_per_s: s.flow.map(|q| number(q.to_l_per_s())),
            dug_m3: m3(s.dug),
            beds: s.points.iter().map(|p| InvertView { at_m: xy(p.at), invert_m: level(p.invert) }).collect(),
        }
    }
}

#[derive(Serialize)]
pub(super) struct SoakawayView {
    at_m: [f64; 2],
    length_m: f64,
    width_m: f64,
    depth_m: f64,
    storage_m3: f64,
    asked_m3: f64,
    half_empty_h: f64,
}

impl SoakawayView {
    pub fn of(s: &groundhold_drain::Soakaway) -> SoakawayView {
        SoakawayView {
            at_m: xy(s.wish.at),
            length_m: m(s.length),
            width_m: m(s.wish.width),
            depth_m: m(s.wish.depth),
            storage_m3: m3(s.has),
            asked_m3: m3(s.asked),
            half_empty_h: number(s.half_empty.to_h()),
        }
    }
}

#[derive(Serialize)]
pub(super) struct PoolView {
    at_m: [f64; 2],
    level_m: f64,
    depth_m: f64,
    area_m2: f64,
    volume_m3: f64,
    against: Vec<String>,
}

impl PoolView {
    pub fn of(p: &groundhold_drain::Pool) -> PoolView {
        PoolView {
            at_m: xy(p.at),
            level_m: level(p.level),
            depth_m: m(p.depth),
            area_m2: m2(p.area),
            volume_m3: m3(p.volume),
            against: p.against.clone(),
        }
    }
}
