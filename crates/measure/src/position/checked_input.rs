//! Are the readings complete and possible? From a survey to observations, or everything that is wrong with it.

use std::collections::{BTreeMap, BTreeSet};

use groundhold_quantity::{Length, Point, math};

use super::observation::{Against, End, Observation};
use super::start::Required;
use super::{Accuracy, Lie, Measured, PositionError, Reading, Side, Survey};

/// A survey that can be worked with.
pub(super) struct Checked {
    /// Points looked for, by name.
    pub names: Vec<String>,
    /// Sorted so that the order of the rows changes nothing.
    pub observations: Vec<Observation>,
    pub required: Vec<Required>,
}

struct Reader<'a> {
    survey: &'a Survey,
    pegs: BTreeMap<&'a str, Point>,
    sought: BTreeMap<&'a str, usize>,
    wrong: Vec<PositionError>,
}

/// Checks every peg, reading and side of a survey.
pub(super) fn check(survey: &Survey) -> Result<Checked, Vec<PositionError>> {
    let mut wrong = accuracy(&survey.accuracy);
    let pegs = pegs(survey, &mut wrong);
    let sought = sought(survey, &pegs);
    let names = sought.keys().map(|n| (*n).to_string()).collect();
    let mut reader = Reader { survey, pegs, sought, wrong };
    let mut observations = vec![];
    for (i, r) in survey.readings.iter().enumerate() {
        observations.extend(reader.observations(i, r));
    }
    let required = (0..survey.hints.len()).filter_map(|i| reader.required(i)).collect();
    if !reader.wrong.is_empty() {
        return Err(reader.wrong);
    }
    sort(survey, &mut observations);
    Ok(Checked { names, observations, required })
}

fn accuracy(a: &Accuracy) -> Vec<PositionError> {
    let rows: [(&str, f64, bool, &str); 3] = [
        ("the tape", a.tape.to_m(), (1e-5..=1.0).contains(&a.tape.to_m()), "0.01 mm to 1 m"),
        (
            "the tape for its length",
            a.tape_per_length.to_fraction(),
            (0.0..=0.1).contains(&a.tape_per_length.to_fraction()),
            "0 to 10 %",
        ),
        ("the right angle", a.square.to_deg(), (0.0..=20.0).contains(&a.square.to_deg()), "0 to 20 degrees"),
    ];
    rows.into_iter()
        .filter(|r| !r.2)
        .map(|(what, value, _, expected)| PositionError::NoAccuracy { what, value, expected })
        .collect()
}

fn pegs<'a>(survey: &'a Survey, wrong: &mut Vec<PositionError>) -> BTreeMap<&'a str, Point> {
    let mut pegs: BTreeMap<&str, Point> = BTreeMap::new();
    for p in &survey.pegs {
        let near_enough = p.at.x.abs() <= 1e6 && p.at.y.abs() <= 1e6;
        if !near_enough {
            wrong.push(PositionError::PegNowhere { peg: p.id.clone(), x: p.at.x, y: p.at.y });
        }
        match pegs.insert(p.id.trim(), p.at) {
            Some(before) if before != p.at => wrong.push(PositionError::PegTwice { peg: p.id.clone() }),
            _ => {}
        }
    }
    pegs
}

/// The points looked for: everything measured that is no peg, and the far ends of ties that start at a peg.
fn sought<'a>(survey: &'a Survey, pegs: &BTreeMap<&str, Point>) -> BTreeMap<&'a str, usize> {
    let mut names: BTreeSet<&str> = BTreeSet::new();
    for r in &survey.readings {
        let point = r.point.trim();
        match &r.measured {
            _ if !pegs.contains_key(point) => {
                names.insert(point);
            }
            Measured::Tie { to, .. } if !pegs.contains_key(to.trim()) => {
                names.insert(to.trim());
            }
            _ => {}
        }
    }
    names.into_iter().enumerate().map(|(i, n)| (n, i)).collect()
}

impl Reader<'_> {
    fn end(&mut self, row: usize, name: &str) -> Option<End> {
        let name = name.trim();
        if let Some(p) = self.pegs.get(name) {
            return Some(End::Known(*p));
        }
        if let Some(i) = self.sought.get(name) {
            return Some(End::Sought(*i));
        }
        self.unknown(row, name);
        None
    }

    fn peg(&mut self, row: usize, name: &str) -> Option<Point> {
        let found = self.pegs.get(name.trim()).copied();
        if found.is_none() {
            self.unknown(row, name);
        }
        found
    }

    fn unknown(&mut self, row: usize, name: &str) {
        let mut known: Vec<&str> = self.pegs.keys().copied().collect();
        let more = known.len().saturating_sub(12);
        known.truncate(12);
        let mut known = known.iter().map(|k| format!("`{k}`")).collect::<Vec<_>>().join(", ");
        if more > 0 {
            known += &format!(" and {more} more");
        }
        if known.is_empty() {
            known = "the pegs, of which there are none".into();
        }
        self.wrong.push(PositionError::UnknownEnd { row, name: name.chars().take(40).collect(), known });
    }

    fn within(&mut self, row: usize, what: &'static str, l: Length, least: f64, expected: &'static str) -> bool {
        let value = l.to_m();
        let fine = least <= value && value <= 500.0;
        if !fine {
            self.wrong.push(PositionError::OutOfRange { row, what, value, expected });
        }
        fine
    }

    fn observations(&mut self, i: usize, r: &Reading) -> Vec<Observation> {
        if let Some(s) = r.sigma
            && !self.within(r.row, "the standard deviation", s, 1e-5, "0.01 mm to 500 m")
        {
            return vec![];
        }
        match &r.measured {
            Measured::Tie { to, tape, lie } => self.tie(i, r, to, *tape, *lie).into_iter().collect(),
            Measured::Offset { from, to, along, off } => self.offset(i, r, (from, to), *along, *off),
        }
    }

    fn tie(&mut self, i: usize, r: &Reading, to: &str, tape: Length, lie: Lie) -> Option<Observation> {
        let fine = self.within(r.row, "the taped distance", tape, 0.01, "0.01 m to 500 m");
        if r.point.trim() == to.trim() {
            self.wrong.push(PositionError::ToItself { row: r.row, point: r.point.clone() });
            return None;
        }
        let (point, other) = (self.end(r.row, &r.point)?, self.end(r.row, to)?);
        let rise = match lie {
            Lie::Level => Length::ZERO,
            Lie::Sloping(rise) => rise.abs(),
            Lie::Ground => (self.level(r.row, &r.point)? - self.level(r.row, to)?).abs(),
        };
        if !fine {
            return None;
        }
        let (d, h) = (tape.to_m(), rise.to_m());
        let shorter = h < d;
        if !shorter {
            self.wrong.push(PositionError::TooSteep { row: r.row, tape: d, rise: h });
            return None;
        }
        // A steeper tape gives a less certain plan distance: dL = D/L · dD.
        let read = (d * d - h * h).sqrt();
        let sigma = r.sigma.map_or(self.taped(d), Length::to_m) * d / read;
        Some(Observation { point, against: Against::Tie(other), read, sigma, reading: i })
    }

    fn offset(&mut self, i: usize, r: &Reading, (a, b): (&str, &str), along: Length, off: Length) -> Vec<Observation> {
        let expected = "−500 m to 500 m";
        let fine = self.within(r.row, "the distance along", along, -500.0, expected)
            & self.within(r.row, "the offset", off, -500.0, expected);
        let (Some(point), Some(from), Some(to)) = (self.end(r.row, &r.point), self.peg(r.row, a), self.peg(r.row, b))
        else {
            return vec![];
        };
        let long_enough = (to - from).length() >= 0.1;
        if !long_enough {
            self.wrong.push(PositionError::NoBaseLine { row: r.row, from: a.into(), to: b.into() });
        }
        if !(fine && long_enough) {
            return vec![];
        }
        let (l, o) = (along.to_m(), off.to_m());
        let askew = o * math::tan(self.survey.accuracy.square.to_rad());
        let tape = |d: f64| r.sigma.map_or(self.taped(d), Length::to_m);
        let sigma_along = (tape(l) * tape(l) + askew * askew).sqrt();
        vec![
            Observation { point, against: Against::Along(from, to), read: l, sigma: sigma_along, reading: i },
            Observation { point, against: Against::Off(from, to), read: o, sigma: tape(o), reading: i },
        ]
    }

    /// Standard deviation of a taped distance, metres.
    fn taped(&self, d: f64) -> f64 {
        let a = &self.survey.accuracy;
        let (fixed, growing) = (a.tape.to_m(), a.tape_per_length.to_fraction() * d);
        (fixed * fixed + growing * growing).sqrt()
    }

    fn level(&mut self, row: usize, station: &str) -> Option<groundhold_quantity::Level> {
        let found = self.survey.levels.get(station.trim()).copied().filter(|l| l.is_finite());
        if found.is_none() {
            self.wrong.push(PositionError::NoLevel { row, station: station.into() });
        }
        found
    }

    fn required(&mut self, hint: usize) -> Option<Required> {
        let h = &self.survey.hints[hint];
        let end = self.end(h.row, &h.point);
        let (from, to) = (self.peg(h.row, &h.from)?, self.peg(h.row, &h.to)?);
        let Some(End::Sought(point)) = end else { return None };
        let long_enough = (to - from).length() >= 0.1;
        if !long_enough {
            let error = PositionError::NoBaseLine { row: h.row, from: h.from.clone(), to: h.to.clone() };
            self.wrong.push(error);
            return None;
        }
        let sign = match h.side {
            Side::Left => 1.0,
            Side::Right => -1.0,
        };
        Some(Required { point, from, to, sign, hint })
    }
}

/// By what was measured and not by where it stands in the file, so that the order of the rows changes no digit.
fn sort(survey: &Survey, observations: &mut [Observation]) {
    let names = |o: &Observation| {
        let r = &survey.readings[o.reading];
        match &r.measured {
            Measured::Tie { to, .. } => (r.point.as_str(), to.as_str(), ""),
            Measured::Offset { from, to, .. } => (r.point.as_str(), from.as_str(), to.as_str()),
        }
    };
    observations.sort_by(|a, b| {
        names(a)
            .cmp(&names(b))
            .then(a.part().cmp(&b.part()))
            .then(a.read.total_cmp(&b.read))
            .then(a.sigma.total_cmp(&b.sigma))
            .then(survey.readings[a.reading].row.cmp(&survey.readings[b.reading].row))
    });
}
