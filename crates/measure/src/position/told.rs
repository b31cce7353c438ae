//! What is told about a placed group: points with traces, how each reading fits, and findings.

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Length, Point, trim};
use groundhold_working::Trace;

use super::adjust::Fit;
use super::formula::{OFFSET, READINGS, TIES, write_readings};
use super::misfit::{Group, Misfit, Settled, Verdict};
use super::naming::{ends, rows, words};
use super::observation::{Against, End, Observation};
use super::{Fitted, Located, LocatedPoint, Part, Survey};
use crate::least_squares::FITS;
use crate::{POINT_UNCHECKED, POINT_WEAK, READING_DOES_NOT_FIT, READINGS_DISAGREE};

/// A group that is placed, ready to be told.
pub(super) struct Told<'a> {
    pub survey: &'a Survey,
    pub names: &'a [String],
    pub group: &'a Group,
    pub settled: &'a Settled,
}

/// Above this a position counts as weak (ours).
const WEAK: Length = Length::mm(50.0);

impl Told<'_> {
    /// Adds its points, readings and findings, and the names of points that no spare reading checks.
    pub fn add_to(&self, result: &mut Located, unchecked: &mut Vec<String>) {
        let fit = &self.settled.fit;
        self.verdict(&mut result.findings);
        for (i, name) in self.names.iter().enumerate() {
            let point = self.point(i, name);
            // Judged by the stated accuracy: a misread tape has a finding of its own.
            let spread = point.sigma() / fit.stretch();
            if spread > WEAK {
                result.findings.push(weak(&point.id, spread));
            }
            let checked = self
                .settled
                .counted
                .iter()
                .zip(&fit.normalised)
                .any(|(k, w)| w.is_some() && self.group.observations[*k].sought().any(|p| p == i));
            if !checked {
                unchecked.push(name.clone());
            }
            result.points.push(point);
        }
        for (k, o) in self.group.observations.iter().enumerate() {
            result.readings.push(self.fitted(k, o));
        }
    }

    fn point(&self, i: usize, name: &str) -> LocatedPoint {
        let fit = &self.settled.fit;
        let (sx, sy) = fit.sigmas(i);
        LocatedPoint {
            id: name.into(),
            at: fit.at[i],
            sigma_x: Length::m(sx),
            sigma_y: Length::m(sy),
            redundancy: fit.redundancy,
            trace: self.trace(i, fit),
        }
    }

    /// The readings of one point, every other end held where it was found: their least squares is the same place.
    fn trace(&self, i: usize, fit: &Fit) -> Trace {
        let its: Vec<Observation> = self
            .settled
            .counted
            .iter()
            .map(|k| &self.group.observations[*k])
            .filter(|o| o.sought().any(|p| p == i))
            .map(|o| seen_from(o, i, &fit.at))
            .collect();
        let at = fit.at[i];
        match its.as_slice() {
            [
                Observation { against: Against::Along(a, b), read: along, .. },
                Observation { against: Against::Off(c, d), read: off, .. },
            ] if (a, b) == (c, d) => Trace::new(&OFFSET, [a.x, a.y, b.x, b.y, *along, *off].map(Into::into).to_vec()),
            all if all.iter().all(|o| o.part() == Part::Tie) => {
                let list = |f: &dyn Fn(&Observation) -> f64| all.iter().map(f).collect::<Vec<f64>>().into();
                let peg = |o: &Observation| match o.against {
                    Against::Tie(e) => e.at(&[]),
                    _ => Point::default(),
                };
                let given = vec![
                    list(&|o| peg(o).x),
                    list(&|o| peg(o).y),
                    list(&|o| o.read),
                    list(&|o| o.sigma),
                    at.x.into(),
                    at.y.into(),
                ];
                Trace::new(&TIES, given)
            }
            all => Trace::new(&READINGS, vec![write_readings(all).as_str().into(), at.x.into(), at.y.into()]),
        }
    }

    fn fitted(&self, k: usize, o: &Observation) -> Fitted {
        let (point, from) = ends(self.survey, o);
        let place = self.settled.counted.binary_search(&k).ok();
        Fitted {
            row: self.survey.readings[o.reading].row,
            point,
            from,
            part: o.part(),
            read: Length::m(o.read),
            residual: Length::m(o.residual(&self.settled.fit.at)),
            normalised: place.and_then(|p| self.settled.fit.normalised[p]),
            set_aside: place.is_none(),
        }
    }

    fn verdict(&self, findings: &mut Vec<Finding>) {
        match &self.settled.verdict {
            Verdict::Fits => {}
            Verdict::SetAside { which, rest } => {
                for m in which {
                    findings.push(self.set_aside(m, *rest));
                }
            }
            Verdict::Undecided { which } => findings.push(self.undecided(which)),
        }
    }

    fn set_aside(&self, m: &Misfit, rest: f64) -> Finding {
        let o = &self.group.observations[m.observation];
        let (point, _) = ends(self.survey, o);
        let says = format!(
            "The reading in {} does not fit: by the others it should be {:.3} m, {} mm {}. Without it the rest fit within {} mm. It is set aside; measure it again.",
            words(self.survey, o),
            o.read + m.by,
            trim(m.by.abs() * 1000.0, 0),
            if m.by > 0.0 { "more" } else { "less" },
            trim(rest * 1000.0, 1)
        );
        let place = Place::on(&point, format!("row {}", self.survey.readings[o.reading].row));
        Finding::new(&READING_DOES_NOT_FIT, place, says).with_utilisation(m.normalised.abs() / FITS)
    }

    fn undecided(&self, which: &[Misfit]) -> Finding {
        let one = |m: &Misfit| {
            let o = &self.group.observations[m.observation];
            format!(
                "{} (by the others {} mm {})",
                words(self.survey, o),
                trim(m.by.abs() * 1000.0, 0),
                if m.by > 0.0 { "more" } else { "less" }
            )
        };
        let says = format!(
            "One of these readings is wrong, and nothing says which: {}. Measure them again, or tie the point to one more peg.",
            which.iter().map(one).collect::<Vec<_>>().join("; ")
        );
        let its = which.iter().map(|m| &self.group.observations[m.observation]).collect::<Vec<_>>();
        let point = its.first().map_or_else(String::new, |o| ends(self.survey, o).0);
        let worst = which.iter().map(|m| m.normalised.abs()).fold(0.0, f64::max);
        let place = Place::on(&point, rows(self.survey, &its));
        Finding::new(&READINGS_DISAGREE, place, says).with_utilisation(worst / FITS)
    }
}

/// A reading as one of point `i` alone, its other end held.
fn seen_from(o: &Observation, i: usize, at: &[Point]) -> Observation {
    let against = match o.against {
        Against::Tie(e) if o.point == End::Sought(i) => Against::Tie(End::Known(e.at(at))),
        Against::Tie(_) => Against::Tie(End::Known(o.point.at(at))),
        other => other,
    };
    Observation { point: End::Sought(0), against, ..o.clone() }
}

/// A tape or an offset between pegs that are all known: it checks them.
pub(super) fn between_pegs(survey: &Survey, o: &Observation, result: &mut Located) {
    let (point, from) = ends(survey, o);
    let v = o.residual(&[]);
    let normalised = v / o.sigma;
    let row = survey.readings[o.reading].row;
    if normalised.abs() > FITS {
        let says = format!(
            "The reading in {} does not fit the pegs: by their positions it should be {:.3} m, {} mm {}. The reading or a peg is wrong.",
            words(survey, o),
            o.read + v,
            trim(v.abs() * 1000.0, 0),
            if v > 0.0 { "more" } else { "less" }
        );
        let place = Place::on(&point, format!("row {row}"));
        result.findings.push(Finding::new(&READINGS_DISAGREE, place, says).with_utilisation(normalised.abs() / FITS));
    }
    result.readings.push(Fitted {
        row,
        point,
        from,
        part: o.part(),
        read: Length::m(o.read),
        residual: Length::m(v),
        normalised: Some(normalised),
        set_aside: false,
    });
}

fn weak(point: &str, spread: Length) -> Finding {
    let says = format!(
        "`{point}` is known to {} mm only (standard deviation); a tie from another direction would hold it.",
        trim(spread.to_mm(), 0)
    );
    Finding::new(&POINT_WEAK, Place::of(point), says).with_utilisation(spread / WEAK)
}

/// Points that no spare reading checks, in one finding.
pub(super) fn no_check(names: &[String]) -> Finding {
    let first = names.iter().take(8).map(|n| format!("`{n}`")).collect::<Vec<_>>().join(", ");
    let more = match names.len().saturating_sub(8) {
        0 => String::new(),
        n => format!(" and {n} more"),
    };
    let says = format!("No spare reading checks the position of {first}{more}; a misread tape there would not show.");
    Finding::new(&POINT_UNCHECKED, Place::job(), says)
}
