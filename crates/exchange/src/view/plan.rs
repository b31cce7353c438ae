//! The whole plan as other programs read it.

use groundhold_plan::Plan;
use serde::Serialize;

use super::finding::FindingView;
use super::ground::{EarthworksView, FlightView, PadView, PipeView, PoolView, RampView, SoakawayView, SwaleView};
use super::head::{JobView, SoilView, SurveyView};
use super::ordered::{OrderView, QuoteView};
use super::set_out::SetOutView;
use super::wall::WallView;
use super::works::ProgrammeView;

/// Version of the names below.
pub(super) const SCHEMA: u32 = 1;

#[derive(Serialize)]
pub(super) struct PlanView<'a> {
    schema: u32,
    view: &'static str,
    note: &'static str,
    job: JobView<'a>,
    soil: SoilView<'a>,
    survey: SurveyView<'a>,
    pads: Vec<PadView<'a>>,
    flights: Vec<FlightView<'a>>,
    ramps: Vec<RampView<'a>>,
    walls: Vec<WallView<'a>>,
    pipes: Vec<PipeView<'a>>,
    swales: Vec<SwaleView<'a>>,
    soakaway: Option<SoakawayView>,
    pools: Vec<PoolView>,
    earthworks: EarthworksView<'a>,
    order: OrderView<'a>,
    quote: QuoteView<'a>,
    set_out: SetOutView<'a>,
    programme: ProgrammeView<'a>,
    findings: Vec<FindingView<'a>>,
}

impl PlanView<'_> {
    pub fn of(plan: &Plan) -> PlanView<'_> {
        PlanView {
            schema: SCHEMA,
            view: "plan",
            note: "Local rules and licensed practice decide; nothing here replaces them.",
            job: JobView::of(plan),
            soil: SoilView::of(plan),
            survey: SurveyView::of(plan),
            pads: plan.shaped.pads.iter().map(PadView::of).collect(),
            flights: plan.shaped.flights.iter().map(FlightView::of).collect(),
            ramps: plan.shaped.ramps.iter().map(RampView::of).collect(),
            walls: plan.walls.iter().map(|w| WallView::of(plan, w)).collect(),
            pipes: plan.drained.pipes.iter().map(PipeView::of).collect(),
            swales: plan.drained.swales.iter().map(SwaleView::of).collect(),
            soakaway: plan.drained.soakaway.as_ref().map(SoakawayView::of),
            pools: plan.pools.iter().map(PoolView::of).collect(),
            earthworks: EarthworksView::of(plan),
            order: OrderView::of(plan),
            quote: QuoteView::of(&plan.quote),
            set_out: SetOutView::of(&plan.setout),
            programme: ProgrammeView::of(&plan.programme),
            findings: plan.findings.iter().map(FindingView::of).collect(),
        }
    }
}
