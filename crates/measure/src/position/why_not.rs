//! Why has a point no place? From the reason to a message with names, rows and figures.

use groundhold_quantity::Point;

use super::misfit::{Group, MOST_TOGETHER, NoPlace, gap};
use super::naming::{ends, rows};
use super::observation::{Against, End, Observation};
use super::{PositionError, Survey};

pub(super) fn error(survey: &Survey, names: &[String], group: &Group, no: NoPlace) -> PositionError {
    let of = |i: usize| group.observations.iter().filter(|o| o.sought().any(|p| p == i)).collect::<Vec<_>>();
    match no {
        NoPlace::TooMany => {
            PositionError::TooManyTogether { point: names[0].clone(), count: group.points, most: MOST_TOGETHER }
        }
        NoPlace::TooFew(i) => {
            let its = of(i);
            PositionError::TooFew { point: names[i].clone(), count: its.len(), rows: rows(survey, &its) }
        }
        NoPlace::Loose(i) => PositionError::Loose { point: names[i].clone(), rows: rows(survey, &of(i)) },
        NoPlace::WrongSide(hint) => {
            let h = &survey.hints[hint];
            let (from, to) = (h.from.clone(), h.to.clone());
            PositionError::WrongSide { row: h.row, point: h.point.clone(), side: h.side, from, to }
        }
        NoPlace::Two(i, a, b) => PositionError::TwoPlaces {
            point: names[i].clone(),
            first: (a.x, a.y),
            second: (b.x, b.y),
            line: dividing_line(survey, &of(i), &names[i]),
        },
        NoPlace::DoNotMeet(i, j) => do_not_meet(survey, &names[0], &group.observations[i], &group.observations[j]),
    }
}

/// The end of a tie that is not `name`.
fn far_end(survey: &Survey, o: &Observation, name: &str) -> String {
    let (point, from) = ends(survey, o);
    if point == name { from } else { point }
}

fn dividing_line(survey: &Survey, observations: &[&Observation], name: &str) -> String {
    let mut pegs: Vec<String> = observations
        .iter()
        .map(|o| far_end(survey, o, name))
        .filter(|e| survey.pegs.iter().any(|p| p.id.trim() == e))
        .collect();
    pegs.dedup();
    match pegs.as_slice() {
        [a, b, ..] => format!("the line `{a}`–`{b}`"),
        _ => "a line between two pegs".into(),
    }
}

fn do_not_meet(survey: &Survey, point: &str, a: &Observation, b: &Observation) -> PositionError {
    let centre = |o: &Observation| match (o.point, o.against) {
        (End::Known(p), _) | (_, Against::Tie(End::Known(p))) => p,
        _ => Point::default(),
    };
    let apart = (centre(a) - centre(b)).length();
    PositionError::DoNotMeet {
        point: point.into(),
        first: far_end(survey, a, point),
        first_row: survey.readings[a.reading].row,
        first_read: a.read,
        second: far_end(survey, b, point),
        second_row: survey.readings[b.reading].row,
        second_read: b.read,
        apart,
        how: if a.read + b.read < apart { "together too short" } else { "too unlike" },
        by: gap(apart, a.read, b.read),
    }
}
