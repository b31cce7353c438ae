//! Which points have both a position and a level, and how good are they?

use std::collections::BTreeMap;

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Length, Level, Point};

use crate::level_book::{Levelled, Role};
use crate::position::{LocatedPoint, Peg};
use crate::{POINT_WITHOUT_LEVEL, POINT_WITHOUT_POSITION};

/// A point of the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Surveyed {
    /// Its name.
    pub id: String,
    /// Its position.
    pub at: Point,
    /// Its level.
    pub level: Level,
    /// Standard deviation of its position, √(σx² + σy²); zero for a known peg.
    pub sigma_position: Length,
    /// Standard deviation of its level.
    pub sigma_level: Length,
}

/// Positions and levels put together.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Spots {
    /// Points with both, by name.
    pub points: Vec<Surveyed>,
    /// Points with a position only, by name.
    pub without_level: Vec<String>,
    /// Stations with a level only, by name.
    pub without_position: Vec<String>,
    /// What there is to say about the two lists.
    pub findings: Vec<Finding>,
}

/// Puts positions and levels of the same name together.
///
/// Pegs without a level and change points or benchmarks without a position are listed but are no finding: a survey has
/// them as a rule.
pub fn merge(pegs: &[Peg], located: &[LocatedPoint], levelled: &[Levelled]) -> Spots {
    let mut at: BTreeMap<&str, (Point, Length, bool)> = BTreeMap::new();
    for p in located {
        at.insert(p.id.trim(), (p.at, p.sigma(), false));
    }
    for p in pegs {
        at.insert(p.id.trim(), (p.at, Length::ZERO, true));
    }
    let levels: BTreeMap<&str, &Levelled> = levelled.iter().map(|l| (l.station.trim(), l)).collect();
    let mut spots = Spots::default();
    let (mut no_level, mut no_position) = (vec![], vec![]);
    for (id, (at, sigma_position, peg)) in &at {
        match levels.get(id) {
            Some(l) => spots.points.push(Surveyed {
                id: (*id).into(),
                at: *at,
                level: l.level,
                sigma_position: *sigma_position,
                sigma_level: l.sigma,
            }),
            None => {
                spots.without_level.push((*id).into());
                if !peg {
                    no_level.push(*id);
                }
            }
        }
    }
    for (id, l) in levels.iter().filter(|(id, _)| !at.contains_key(*id)) {
        spots.without_position.push((*id).into());
        if l.role == Role::Spot {
            no_position.push(*id);
        }
    }
    if !no_level.is_empty() {
        let says = format!("No level was read at {}; the ground model goes without.", list(&no_level));
        spots.findings.push(Finding::new(&POINT_WITHOUT_LEVEL, Place::job(), says));
    }
    if !no_position.is_empty() {
        let says =
            format!("No tie or offset gives the position of {}; the ground model goes without.", list(&no_position));
        spots.findings.push(Finding::new(&POINT_WITHOUT_POSITION, Place::job(), says));
    }
    spots
}

fn list(names: &[&str]) -> String {
    let first = names.iter().take(8).map(|n| format!("`{n}`")).collect::<Vec<_>>().join(", ");
    match names.len().saturating_sub(8) {
        0 => first,
        n => format!("{first} and {n} more"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn levelled(station: &str, level: f64, role: Role) -> Levelled {
        Levelled { station: station.into(), level: Level::m(level), sigma: Length::mm(3.0), role, rows: vec![1] }
    }

    #[test]
    fn a_peg_with_a_level_is_a_point_and_a_change_point_without_a_position_is_no_finding() {
        let pegs = [Peg { id: "A".into(), at: Point::m(0.0, 0.0) }, Peg { id: "B".into(), at: Point::m(9.0, 0.0) }];
        let levels = [levelled("A", 100.0, Role::Benchmark), levelled("CP1", 99.0, Role::ChangePoint)];
        let spots = merge(&pegs, &[], &levels);
        assert_eq!(spots.points.len(), 1);
        assert_eq!((spots.points[0].level, spots.points[0].sigma_position), (Level::m(100.0), Length::ZERO));
        assert_eq!((spots.without_level, spots.without_position), (vec!["B".into()], vec!["CP1".to_string()]));
        assert_eq!(spots.findings, []);
    }

    #[test]
    fn a_spot_level_without_a_position_is_a_finding_that_names_it() {
        let spots = merge(&[], &[], &[levelled("P7", 98.0, Role::Spot)]);
        assert_eq!(spots.findings[0].kind.code, "M-010");
        assert!(spots.findings[0].says.contains("`P7`"));
    }
}
