//! How much is asked of a member in one respect, how much does it give, and by which working?

use groundhold_working::Trace;

/// One check of a member: demand against capacity.
#[derive(Debug, Clone, PartialEq)]
pub struct Row<Q> {
    /// In which respect: `bending`, `shear`, `pull-out`.
    pub what: &'static str,
    /// What is asked, factored as the rules want it.
    pub demand: Q,
    /// What the member gives by these rules.
    pub capacity: Q,
    /// Demand over capacity: 0 where nothing is asked, infinite where nothing is given.
    pub utilisation: f64,
    /// The working of the capacity.
    pub trace: Trace,
}

impl<Q: Copy + std::ops::Div<Output = f64> + Default + PartialOrd> Row<Q> {
    /// From demand and capacity.
    pub fn new(what: &'static str, demand: Q, capacity: Q, trace: Trace) -> Row<Q> {
        let nothing = Q::default();
        let utilisation = match () {
            () if demand <= nothing => 0.0,
            () if capacity <= nothing => f64::INFINITY,
            () => demand / capacity,
        };
        Row { what, demand, capacity, utilisation, trace }
    }
}

#[cfg(test)]
mod tests {
    use groundhold_quantity::Force;
    use groundhold_working::Value;

    use super::Row;

    #[test]
    fn nothing_asked_is_nothing_used_and_nothing_given_is_never_enough() {
        let trace = || groundhold_working::Trace::new(&crate::embed::RULE_OF_THUMB, vec![Value::One(1.0)]);
        let used = |asked, given| Row::new("shear", Force::kn(asked), Force::kn(given), trace()).utilisation;
        assert_eq!(used(0.0, 0.0), 0.0);
        assert_eq!(used(1.0, 0.0), f64::INFINITY);
        assert_eq!(used(1.0, 4.0), 0.25);
    }
}
