//! The few figures that are always in sight: price, spoil, highest wall, days, and how many findings of each weight.

use groundhold_finding::Severity;
use groundhold_plan::Plan;
use groundhold_quantity::{Length, Money};

/// One figure in sight.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// A name that stays.
    pub key: &'static str,
    /// In words.
    pub label: &'static str,
    /// As people read it.
    pub value: String,
    /// As a number, so that a change can be told.
    pub number: f64,
    /// What comes beside it, smaller.
    pub beside: String,
}

/// An amount with its currency.
pub fn money(plan: &Plan, m: Money) -> String {
    let currency = &plan.job.about.currency.0;
    if currency.is_empty() { m.shown() } else { format!("{} {currency}", m.shown()) }
}

/// An amount without its cents, for where there is little room; the order has them.
fn whole_money(m: Money) -> String {
    let shown = Money::of(groundhold_quantity::round_to(m.amount(), 1.0)).shown();
    shown.strip_suffix(".00").map_or(shown.clone(), String::from)
}

/// The figures of a plan.
pub fn figures(plan: &Plan) -> Vec<Figure> {
    let units = plan.job.about.units;
    let missing = plan.quote.missing.len();
    let currency = &plan.job.about.currency.0;
    let beside = if missing == 0 { format!("{currency} with tax") } else { format!("{missing} prices missing") };
    let over: groundhold_quantity::Volume = plan.dug.streams().iter().map(|s| s.over_loose).sum();
    let loads = plan.dug.loads_away();
    let held = plan.walls.iter().map(|w| w.layout.retained).fold(Length::ZERO, Length::max);
    let (_, likely, high) = plan.programme.length_days;
    vec![
        Figure {
            key: "price",
            label: "Price",
            value: whole_money(plan.quote.total),
            number: plan.quote.total.amount(),
            beside,
        },
        Figure {
            key: "spoil",
            label: "Spoil away",
            value: units.volume(over),
            number: over.to_m3(),
            beside: format!("{loads} load{}, loose", if loads == 1 { "" } else { "s" }),
        },
        Figure {
            key: "held",
            label: "Holds at most",
            value: units.length(held),
            number: held.to_m(),
            beside: format!("{} wall{}", plan.walls.len(), if plan.walls.len() == 1 { "" } else { "s" }),
        },
        Figure {
            key: "days",
            label: "Work",
            value: format!("{likely:.0} days"),
            number: likely,
            beside: format!("up to {high:.0}"),
        },
    ]
}

/// How many findings of each weight, the gravest first.
pub fn severities(plan: &Plan) -> [(Severity, usize); 4] {
    [Severity::Stop, Severity::Ask, Severity::Watch, Severity::Note]
        .map(|s| (s, plan.findings.iter().filter(|f| f.severity == s).count()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_findings_in_sight_are_all_findings() {
        let plan = groundhold_plan::plan(&crate::job::demo().read().whole().unwrap()).unwrap();
        assert_eq!(severities(&plan).iter().map(|s| s.1).sum::<usize>(), plan.findings.len());
        assert!(figures(&plan).iter().all(|f| f.number.is_finite() && !f.value.is_empty()));
    }
}
