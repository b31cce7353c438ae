//! Which published figures does the engine give, and which not?

use groundhold_reference::{Compared, Outcome};
use serde::Serialize;

use super::figure::Figure;
use super::plan::SCHEMA;

#[derive(Serialize)]
pub(super) struct VerifiedView<'a> {
    schema: u32,
    view: &'static str,
    #[serde(flatten)]
    counts: Counts,
    topics: Vec<TopicView<'a>>,
}

/// `unexpected` counts cases that miss without a reason, cannot be run, or agree though they are listed as a known miss.
#[derive(Serialize)]
struct Counts {
    cases: usize,
    agree: usize,
    known_misses: usize,
    unexpected: usize,
}

impl Counts {
    fn of<'a>(outcomes: impl Iterator<Item = &'a Outcome>) -> Counts {
        let mut c = Counts { cases: 0, agree: 0, known_misses: 0, unexpected: 0 };
        for o in outcomes {
            c.cases += 1;
            c.agree += usize::from(o.agrees());
            c.known_misses += usize::from(!o.agrees() && o.miss.is_some());
            c.unexpected += usize::from(!o.is_fine());
        }
        c
    }
}

#[derive(Serialize)]
struct TopicView<'a> {
    topic: &'a str,
    #[serde(flatten)]
    counts: Counts,
    outcomes: Vec<OutcomeView<'a>>,
}

#[derive(Serialize)]
struct OutcomeView<'a> {
    case: &'a str,
    agrees: bool,
    as_expected: bool,
    refused: Option<&'a str>,
    known_miss: Option<&'a str>,
    figures: Vec<FigureView<'a>>,
}

#[derive(Serialize)]
struct FigureView<'a> {
    key: &'a str,
    published: Figure,
    found: Option<Figure>,
    agrees: bool,
}

impl FigureView<'_> {
    fn of(c: &Compared) -> FigureView<'_> {
        let found = c.found.as_ref().map(Figure::from);
        FigureView { key: &c.key, published: (&c.expected).into(), found, agrees: c.agrees }
    }
}

impl OutcomeView<'_> {
    fn of(o: &Outcome) -> OutcomeView<'_> {
        OutcomeView {
            case: &o.id,
            agrees: o.agrees(),
            as_expected: o.is_fine(),
            refused: o.refused.as_deref(),
            known_miss: o.miss.as_deref(),
            figures: o.compared.iter().map(FigureView::of).collect(),
        }
    }
}

impl VerifiedView<'_> {
    pub fn of(report: &[(String, Vec<Outcome>)]) -> VerifiedView<'_> {
        let topics = report.iter().map(|(topic, outcomes)| TopicView {
            topic,
            counts: Counts::of(outcomes.iter()),
            outcomes: outcomes.iter().map(OutcomeView::of).collect(),
        });
        VerifiedView {
            schema: SCHEMA,
            view: "verify",
            counts: Counts::of(report.iter().flat_map(|(_, outcomes)| outcomes)),
            topics: topics.collect(),
        }
    }
}
