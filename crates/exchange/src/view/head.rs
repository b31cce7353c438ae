//! Which job is it, on which soil, by which rules, and what was measured?

use groundhold_plan::Plan;
use groundhold_quantity::Units;
use serde::Serialize;

use super::figure::{level, m, m2, number, xy};

#[derive(Serialize)]
pub(super) struct JobView<'a> {
    name: &'a str,
    place: &'a str,
    client: &'a str,
    region: &'a str,
    basis: &'a str,
    currency: &'a str,
    units: &'static str,
    invented_data: bool,
}

impl JobView<'_> {
    pub fn of(plan: &Plan) -> JobView<'_> {
        let a = &plan.job.about;
        JobView {
            name: &a.name,
            place: &a.place,
            client: &a.client,
            region: plan.region.code,
            basis: plan.basis.key,
            currency: &a.currency.0,
            units: if a.units == Units::Feet { "feet" } else { "metric" },
            invented_data: a.demo,
        }
    }
}

#[derive(Serialize)]
pub(super) struct SoilView<'a> {
    name: &'a str,
    unit_weight_kn_per_m3: f64,
    friction_deg: f64,
    cohesion_kpa: f64,
    undrained_kpa: Option<f64>,
    bank_to_loose: f64,
    bank_to_compacted: f64,
    source: &'a str,
}

impl SoilView<'_> {
    pub fn of(plan: &Plan) -> SoilView<'_> {
        let s = &plan.soil;
        SoilView {
            name: &s.name,
            unit_weight_kn_per_m3: number(s.unit_weight.to_kn_per_m3()),
            friction_deg: number(s.phi.to_deg()),
            cohesion_kpa: number(s.cohesion.to_kpa()),
            undrained_kpa: s.undrained.map(|u| number(u.to_kpa())),
            bank_to_loose: plan.factors.bank_to_loose,
            bank_to_compacted: plan.factors.bank_to_compacted,
            source: &s.source,
        }
    }
}

#[derive(Serialize)]
pub(super) struct SurveyView<'a> {
    /// True where the ground is a plane in two numbers.
    plane_in_two_numbers: bool,
    area_m2: f64,
    set_ups: Option<usize>,
    misclose_m: Option<f64>,
    misclose_allowed_m: Option<f64>,
    misclose_accepted: Option<bool>,
    points: Vec<PointView<'a>>,
}

#[derive(Serialize)]
struct PointView<'a> {
    point: &'a str,
    at_m: [f64; 2],
    level_m: f64,
}

impl SurveyView<'_> {
    pub fn of(plan: &Plan) -> SurveyView<'_> {
        let s = &plan.survey;
        let book = s.reduced.as_ref();
        let points = s.points.iter().map(|p| PointView { point: &p.id, at_m: xy(p.at), level_m: level(p.level) });
        SurveyView {
            plane_in_two_numbers: s.quick,
            area_m2: m2(s.ground.area()),
            set_ups: book.map(|b| b.set_ups),
            misclose_m: book.and_then(|b| b.misclose).map(m),
            misclose_allowed_m: book.and_then(|b| b.allowed).map(m),
            misclose_accepted: book.map(|b| b.accepted),
            points: points.collect(),
        }
    }
}
