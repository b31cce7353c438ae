//! What does each remedy cost? Found out beside the page, since every remedy is a plan of its own.

use groundhold_finding::Whose;
use groundhold_plan::plan_priced;
use groundhold_quantity::Money;

use crate::job::unpack;

/// What one remedy comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cost {
    /// Which finding, counted from 0 in the plan's order.
    pub finding: usize,
    /// Which of its remedies, counted from 0.
    pub remedy: usize,
    /// What it costs more, or saves.
    pub cost: Money,
    /// True when the finding is gone with it.
    pub proven: bool,
}

/// The costs of all remedies of a packed job, one a line; empty where it cannot be planned.
pub fn costs(pack: &str) -> String {
    let job = unpack(pack).ok().and_then(|f| f.read().whole().ok());
    let Some(plan) = job.and_then(|j| plan_priced(&j).ok()) else { return String::new() };
    let mut out = String::new();
    for (i, f) in plan.findings.iter().enumerate() {
        for (k, r) in f.remedies.iter().enumerate().filter(|(_, r)| r.whose == Whose::Ours) {
            if let Some(cost) = r.cost {
                out.push_str(&format!("{i} {k} {} {}\n", cost.amount(), u8::from(r.proven)));
            }
        }
    }
    out
}

/// The costs back from their lines; lines that are none are passed over.
pub fn read_costs(text: &str) -> Vec<Cost> {
    let one = |line: &str| {
        let mut words = line.split(' ');
        let finding = words.next()?.parse().ok()?;
        let remedy = words.next()?.parse().ok()?;
        let cost = Money::of(words.next()?.parse().ok()?);
        let proven = words.next()? == "1";
        Some(Cost { finding, remedy, cost, proven })
    };
    text.lines().filter_map(one).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{demo, pack};

    #[test]
    fn the_costs_that_come_back_are_those_of_the_priced_plan() {
        let files = demo();
        let plan = plan_priced(&files.read().whole().unwrap()).unwrap();
        let found = read_costs(&costs(&pack(&files)));
        let ours = plan.findings.iter().flat_map(|f| &f.remedies).filter(|r| r.cost.is_some()).count();
        assert_eq!(found.len(), ours);
        for c in found {
            let r = &plan.findings[c.finding].remedies[c.remedy];
            assert_eq!((r.cost, r.proven), (Some(c.cost), c.proven));
        }
        assert_eq!(costs("nothing"), "");
    }
}
