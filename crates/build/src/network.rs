//! When can each activity start, when must it, and which chain sets the end? The critical path method.

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// An arc of the network: what must be finished first, and how long to wait after it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arc {
    /// Index of the activity that must be finished.
    pub of: usize,
    /// Days to wait after its finish, not negative.
    pub wait_days: f64,
}

/// One activity of a network.
#[derive(Debug, Clone, PartialEq)]
pub struct Activity {
    /// What it is called in messages.
    pub id: String,
    /// How long it takes, days, not negative.
    pub days: f64,
    /// What it needs.
    pub needs: Vec<Arc>,
}

/// Why there is no order of work.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NotAPlan {
    /// Activities wait for each other.
    #[error("the order of work goes in a circle: {}; one of these must not wait for the one before it", .ids.join(" waits for "))]
    Circle {
        /// Each waits for the next; the last is the first again.
        ids: Vec<String>,
    },
    /// An activity needs one that does not exist.
    #[error("{id} needs activity number {of}, and there are {count} (numbered from 0)")]
    NoSuchNeed {
        /// Whose need.
        id: String,
        /// What it names.
        of: usize,
        /// How many there are.
        count: usize,
    },
    /// A figure out of bounds.
    #[error("{of}: {what} is {found}, expected {expected}")]
    OutOfBounds {
        /// The element, activity or crew.
        of: String,
        /// Which figure.
        what: &'static str,
        /// What it is.
        found: String,
        /// What it may be.
        expected: &'static str,
    },
    /// Two elements share an id.
    #[error("{id} is the id of two elements; ids must differ")]
    Twice {
        /// The id.
        id: String,
    },
}

/// An order of work without circles.
#[derive(Debug, Clone, PartialEq)]
pub struct Network {
    activities: Vec<Activity>,
    /// Indices so that what is needed comes first.
    order: Vec<usize>,
}

/// What the two passes give, all in days from the start, by index of the activity.
#[derive(Debug, Clone, PartialEq)]
pub struct Times {
    /// Earliest start.
    pub start: Vec<f64>,
    /// Earliest finish.
    pub finish: Vec<f64>,
    /// Latest start that does not delay the end.
    pub late_start: Vec<f64>,
    /// How far the start may slip without delaying the end; never negative.
    pub float: Vec<f64>,
    /// From first start to last finish.
    pub length: f64,
}

/// A float smaller than this, in days, is none: three seconds of an eight-hour day, far above rounding.
pub(crate) const NO_FLOAT: f64 = 1e-4;

impl Network {
    /// From activities, checked and sorted.
    ///
    /// # Errors
    /// [`NotAPlan`]: a duration that is negative or no number, a need that does not exist, a circle (its members are named).
    pub fn new(activities: Vec<Activity>) -> Result<Network, NotAPlan> {
        let count = activities.len();
        for a in &activities {
            check_days(&a.id, "duration", a.days)?;
            for n in &a.needs {
                check_days(&a.id, "wait", n.wait_days)?;
                if n.of >= count {
                    return Err(NotAPlan::NoSuchNeed { id: a.id.clone(), of: n.of, count });
                }
            }
        }
        let order = sorted(&activities)?;
        Ok(Network { activities, order })
    }
    /// The activities, as given.
    pub fn activities(&self) -> &[Activity] {
        &self.activities
    }
    /// Indices of the activities so that what is needed comes first.
    pub fn order(&self) -> &[usize] {
        &self.order
    }
    /// Forward and backward pass.
    pub fn times(&self) -> Times {
        let days: Vec<f64> = self.activities.iter().map(|a| a.days).collect();
        let needs: Vec<Vec<(usize, f64)>> =
            self.activities.iter().map(|a| a.needs.iter().map(|n| (n.of, n.wait_days)).collect()).collect();
        let p = passes(&days, &needs, &self.order, |_| {});
        let float = p.start.iter().zip(&p.late_start).map(|(e, l)| Number::max(l - e, 0.0)).collect();
        let finish = p.start.iter().zip(&days).map(|(s, d)| s + d).collect();
        Times { start: p.start, finish, late_start: p.late_start, float, length: p.length }
    }
}

fn check_days(id: &str, what: &'static str, days: f64) -> Result<(), NotAPlan> {
    if days.is_finite() && 0.0 <= days {
        return Ok(());
    }
    let expected = "a number of days, 0 or more";
    Err(NotAPlan::OutOfBounds { of: id.into(), what, found: format!("{days}"), expected })
}

/// Kahn's topological order (Communications of the ACM 5 (1962), p. 558), ties by index; a circle is named.
fn sorted(activities: &[Activity]) -> Result<Vec<usize>, NotAPlan> {
    let mut open: Vec<usize> = activities.iter().map(|a| a.needs.len()).collect();
    let mut follow = vec![vec![]; activities.len()];
    for (i, a) in activities.iter().enumerate() {
        a.needs.iter().for_each(|n| follow[n.of].push(i));
    }
    let mut ready: std::collections::BTreeSet<usize> = (0..open.len()).filter(|&i| open[i] == 0).collect();
    let mut order = Vec::with_capacity(open.len());
    while let Some(i) = ready.pop_first() {
        order.push(i);
        for &f in &follow[i] {
            open[f] -= 1;
            if open[f] == 0 {
                ready.insert(f);
            }
        }
    }
    if order.len() == activities.len() { Ok(order) } else { Err(circle(activities, &open)) }
}

/// Walks back along unmet needs until one is met twice.
fn circle(activities: &[Activity], open: &[usize]) -> NotAPlan {
    let mut at = open.iter().position(|&n| n > 0).unwrap_or(0);
    let mut seen: Vec<usize> = vec![];
    while !seen.contains(&at) {
        seen.push(at);
        at = activities[at].needs.iter().map(|n| n.of).find(|&n| open[n] > 0).unwrap_or(at);
    }
    let from = seen.iter().position(|&s| s == at).unwrap_or(0);
    let round = seen[from..].iter().chain([&at]);
    NotAPlan::Circle { ids: round.map(|&i| activities[i].id.clone()).collect() }
}

struct Passes<N> {
    start: Vec<N>,
    late_start: Vec<N>,
    length: N,
}

/// Forward and backward pass of the critical path method.
///
/// # Source
/// J. E. Kelley and M. R. Walker, "Critical-path planning and scheduling", Proc. Eastern Joint Computer Conference (1959),
/// 160–173; finish-to-start with a wait, as in any text on planning.
/// # Symbols
/// | d | duration | ≥ 0 | · | w | wait after a need | ≥ 0 |
/// # Gives
/// ES = max(EF of needs + w), EF = ES + d, T = max EF, LF = min(LS of followers − w) or T, LS = LF − d.
/// # Not for
/// Too few people: see [`crate::level_people`].
/// # Errors
/// None of its own; [`Network::new`] refuses circles.
/// # By hand
/// Reference case BU-01 (fourteen activities of a building, 44 weeks).
fn passes<N: Number>(days: &[N], needs: &[Vec<(usize, N)>], order: &[usize], note: impl Fn(usize)) -> Passes<N> {
    let zero = N::constant(0.0);
    let (mut start, mut finish) = (vec![zero; days.len()], vec![zero; days.len()]);
    for &i in order {
        note(i);
        let ready = needs[i].iter().map(|&(n, w)| if w.value() > 0.0 { finish[n] + w } else { finish[n] });
        start[i] = ready.reduce(|a, b| a.max(b)).unwrap_or(zero).named("ES", DAYS);
        finish[i] = (start[i] + days[i]).named("EF", DAYS);
    }
    let length = finish.iter().copied().reduce(|a, b| a.max(b)).unwrap_or(zero).named("T", DAYS);
    let mut late_finish = vec![length; days.len()];
    let mut late_start = vec![length; days.len()];
    for &i in order.iter().rev() {
        note(i);
        late_start[i] = (late_finish[i] - days[i]).named("LS", DAYS);
        for &(n, w) in &needs[i] {
            let by = if w.value() > 0.0 { late_start[i] - w } else { late_start[i] };
            late_finish[n] = late_finish[n].min(by);
        }
    }
    Passes { start, late_start, length }
}

const DAYS: Unit = Unit("days");

/// `build/critical-path`: earliest starts, floats and length of a network.
pub static CRITICAL_PATH: Working = Working {
    name: "build/critical-path",
    title: "Earliest start and float of each activity, and the length of the critical path.",
    source: Source {
        work: "J. E. Kelley and M. R. Walker, Critical-path planning and scheduling, Proc. Eastern Joint Computer Conference (1959)",
        place: "pp. 160-173; from memory",
    },
    not_for: "Too few people for what could go on at once: the programme levels that.",
    inputs: &[
        Input::new("days", "d", "durations, one for each activity", DAYS, Limits::ours(0.0, 1e5)),
        Input::new(
            "from",
            "i",
            "arcs: number of the activity that comes first, from 1",
            Unit::NONE,
            Limits::ours(1.0, 1e4),
        ),
        Input::new("to", "j", "arcs: number of the activity that follows, from 1", Unit::NONE, Limits::ours(1.0, 1e4)),
        Input::new("wait", "w", "waits, one for each arc or one for all", DAYS, Limits::ours(0.0, 1e4)).or(0.0),
    ],
    outputs: &[
        Output { key: "length", words: "length of the critical path", unit: DAYS },
        Output { key: "start", words: "earliest starts", unit: DAYS },
        Output { key: "float", words: "floats", unit: DAYS },
    ],
    run: |g| {
        let days = g.many("days")?;
        let (from, to, wait) = (g.many("from")?, g.many("to")?, g.many("wait")?);
        if from.len() != to.len() || !(wait.len() == 1 || wait.len() == from.len()) {
            return Err(g.no_answer("`from` and `to` must be equally long, and `wait` one number or as long"));
        }
        let zero = Number::constant(0.0);
        let mut needs = vec![vec![]; days.len()];
        let mut activities: Vec<Activity> = (1..)
            .zip(&days)
            .map(|(i, d)| Activity { id: format!("activity {i}"), days: d.value(), needs: vec![] })
            .collect();
        for (k, (i, j)) in from.iter().zip(&to).enumerate() {
            let (i, j) = (whole(i.value()), whole(j.value()));
            let (Some(i), Some(j)) = (i.filter(|&i| i < days.len()), j.filter(|&j| j < days.len())) else {
                return Err(g.no_answer(format!("arc {} names an activity that is not there", k + 1)));
            };
            let w = if wait.len() == 1 { wait[0] } else { wait[k] };
            activities[j].needs.push(Arc { of: i, wait_days: w.value() });
            needs[j].push((i, if w.value() > 0.0 { w } else { zero }));
        }
        let network = Network::new(activities).map_err(|e| g.no_answer(e.to_string()))?;
        let p = passes(&days, &needs, network.order(), |i| g.sheet().remark(format!("Activity {}:", i + 1)));
        let float = p.start.iter().zip(&p.late_start).map(|(e, l)| *l - *e).collect();
        Ok(vec![Found::One(p.length), Found::Many(p.start), Found::Many(float)])
    },
};

/// A number from 1 on as an index from 0 on.
fn whole(v: f64) -> Option<usize> {
    (v.fract() == 0.0 && (1.0..1e9).contains(&v)).then(|| v as usize - 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn activity(id: &str, days: f64, needs: &[usize]) -> Activity {
        let needs = needs.iter().map(|&of| Arc { of, wait_days: 0.0 }).collect();
        Activity { id: id.into(), days, needs }
    }

    #[test]
    fn a_circle_is_refused_and_its_members_are_named() {
        let round = vec![activity("a", 1.0, &[]), activity("b", 1.0, &[0, 2]), activity("c", 1.0, &[1])];
        let said = Network::new(round).unwrap_err();
        assert_eq!(said, NotAPlan::Circle { ids: vec!["b".into(), "c".into(), "b".into()] });
        assert!(said.to_string().contains("b waits for c waits for b"));
        let own = Network::new(vec![activity("a", 1.0, &[0])]).unwrap_err();
        assert_eq!(own, NotAPlan::Circle { ids: vec!["a".into(), "a".into()] });
    }

    #[test]
    fn a_need_that_does_not_exist_and_a_negative_duration_are_refused() {
        assert!(matches!(Network::new(vec![activity("a", 1.0, &[1])]), Err(NotAPlan::NoSuchNeed { of: 1, .. })));
        assert!(Network::new(vec![activity("a", 0.0, &[])]).is_ok());
        for days in [-0.001, f64::NAN, f64::INFINITY] {
            let said = Network::new(vec![activity("a", days, &[])]).unwrap_err().to_string();
            assert!(said.contains("a: duration is"), "{said}");
        }
    }

    #[test]
    fn a_wait_after_a_need_delays_what_follows_and_nothing_else() {
        let mut post = activity("boards", 1.0, &[0]);
        post.needs[0].wait_days = 2.0;
        let n = Network::new(vec![activity("concrete", 1.0, &[]), post, activity("tidy", 1.0, &[0])]).unwrap();
        let t = n.times();
        assert_eq!((t.start, t.length), (vec![0.0, 3.0, 1.0], 4.0));
        assert_eq!(t.float, [0.0, 0.0, 2.0]);
    }

    #[test]
    fn an_empty_network_takes_no_time() {
        assert_eq!(Network::new(vec![]).unwrap().times().length, 0.0);
    }
}
