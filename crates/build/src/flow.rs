//! Who does what when the people are few? Activities in parallel only as far as the crew goes round.

use crate::{Activity, Arc, Network, NotAPlan};

/// A network in which the people are passed on from activity to activity.
#[derive(Debug, Clone, PartialEq)]
pub struct Levelled {
    /// The network with an arc more wherever somebody comes from another activity.
    pub network: Network,
    /// Activities in the order in which they are begun.
    pub begun: Vec<usize>,
    /// By activity: those whose people it waits for.
    pub people_from: Vec<Vec<usize>>,
}

/// Levels a network to `crew` people, of whom activity i keeps `people[i]` busy from its start to its finish.
///
/// A serial list schedule: of all activities whose needs are met, the one that can begin first is begun, of several the one
/// that must begin first by the latest starts of the network; ties by index. Whom it takes from where becomes arcs
/// (resource flow: C. Artigues, P. Michelon and S. Reusser, European Journal of Operational Research 149 (2003), 249–267,
/// from memory), so that the critical path of the result tells what sets the end with these people. A good order, not
/// proven the shortest: that problem is NP-hard.
///
/// # Errors
/// [`NotAPlan::OutOfBounds`] where an activity wants more people than there are, or `people` is not as long as the network.
pub fn level_people(network: &Network, people: &[u32], crew: u32) -> Result<Levelled, NotAPlan> {
    let activities = network.activities();
    if people.len() != activities.len() {
        return Err(NotAPlan::OutOfBounds {
            of: "the network".into(),
            what: "list of people",
            found: format!("{} long", people.len()),
            expected: "one number for each activity",
        });
    }
    if let Some(i) = (0..people.len()).find(|&i| people[i] > crew) {
        return Err(NotAPlan::OutOfBounds {
            of: activities[i].id.clone(),
            what: "number of people",
            found: format!("{} of a crew of {crew}", people[i]),
            expected: "no more than the crew",
        });
    }
    let late_start = network.times().late_start;
    let mut hands: Vec<Hand> = vec![Hand { free: 0.0, last: None }; crew as usize];
    let mut finish: Vec<Option<f64>> = vec![None; activities.len()];
    let mut levelled = activities.to_vec();
    let mut people_from = vec![vec![]; activities.len()];
    let mut begun = vec![];
    while let Some((start, i)) = next(activities, people, &finish, &hands, &late_start) {
        finish[i] = Some(start + activities[i].days);
        begun.push(i);
        for k in chosen(&mut hands, &activities[i], people[i] as usize) {
            if let Some(from) = hands[k].last.replace(i)
                && !people_from[i].contains(&from)
            {
                people_from[i].push(from);
                levelled[i].needs.push(Arc { of: from, wait_days: 0.0 });
            }
            hands[k].free = start + activities[i].days;
        }
    }
    Ok(Levelled { network: Network::new(levelled)?, begun, people_from })
}

#[derive(Clone, Copy)]
struct Hand {
    free: f64,
    last: Option<usize>,
}

/// The activity that can begin first, and when.
fn next(
    activities: &[Activity],
    people: &[u32],
    finish: &[Option<f64>],
    hands: &[Hand],
    late_start: &[f64],
) -> Option<(f64, usize)> {
    let mut free: Vec<f64> = hands.iter().map(|h| h.free).collect();
    free.sort_by(f64::total_cmp);
    let ready = |i: usize| {
        activities[i].needs.iter().try_fold(0.0, |t: f64, n| {
            let at = finish[n.of]? + n.wait_days;
            Some(if at > t { at } else { t })
        })
    };
    (0..activities.len())
        .filter(|&i| finish[i].is_none())
        .filter_map(|i| {
            let at = ready(i)?;
            let hand = (people[i] as usize).checked_sub(1).map_or(0.0, |k| free[k]);
            Some((if hand > at { hand } else { at }, i))
        })
        .min_by(|a, b| a.0.total_cmp(&b.0).then(late_start[a.1].total_cmp(&late_start[b.1])).then(a.1.cmp(&b.1)))
}

/// The hands that are free first; of those equally free, the ones that come from what the activity needs anyway.
fn chosen(hands: &mut [Hand], activity: &Activity, count: usize) -> Vec<usize> {
    let stays = |h: &Hand| h.last.is_some_and(|l| activity.needs.iter().any(|n| n.of == l));
    let mut by: Vec<usize> = (0..hands.len()).collect();
    by.sort_by(|&a, &b| {
        hands[a].free.total_cmp(&hands[b].free).then(stays(&hands[b]).cmp(&stays(&hands[a]))).then(a.cmp(&b))
    });
    by.truncate(count);
    by
}

#[cfg(test)]
mod tests {
    use super::*;

    fn free(days: &[f64]) -> Network {
        let one = |(i, d): (usize, &f64)| Activity { id: format!("{i}"), days: *d, needs: vec![] };
        Network::new(days.iter().enumerate().map(one).collect()).unwrap()
    }

    #[test]
    fn one_person_does_everything_one_after_the_other() {
        let l = level_people(&free(&[1.0, 2.0, 3.0]), &[1, 1, 1], 1).unwrap();
        assert_eq!(l.network.times().length, 6.0);
        assert!(l.network.times().float.iter().all(|f| *f == 0.0));
    }

    #[test]
    fn with_people_enough_levelling_changes_nothing() {
        let n = free(&[1.0, 2.0, 3.0]);
        let l = level_people(&n, &[1, 1, 1], 3).unwrap();
        assert_eq!(l.network, n);
    }

    #[test]
    fn an_activity_for_more_people_than_the_crew_is_refused_and_named() {
        let said = level_people(&free(&[1.0]), &[3], 2).unwrap_err().to_string();
        assert_eq!(said, "0: number of people is 3 of a crew of 2, expected no more than the crew");
    }
}
