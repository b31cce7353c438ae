//! From a survey in plan to points: groups that hang together, their places, and what the readings say against them.

use super::checked_input::{Checked, check};
use super::misfit::{Group, settle};
use super::observation::{Against, Observation};
use super::told::{Told, between_pegs, no_check};
use super::why_not::error;
use super::{Located, PositionError, Survey};

/// Finds every point by least squares; points tied to each other are found together.
///
/// Pegs are held fixed. Standard deviations are those stated for the readings, stretched where the residuals are larger.
/// A reading whose normalised residual is above 3.29, and without which the rest fit, is named and set aside; where
/// several would do, all are named and kept. The order of the readings changes no digit of the result.
///
/// # Errors
/// All that is wrong with the survey, each with its rows and what was expected.
pub fn locate(survey: &Survey) -> Result<Located, Vec<PositionError>> {
    let checked = check(survey)?;
    let mut result = Located { points: vec![], readings: vec![], redundancy: 0, sigma0: None, findings: vec![] };
    let (mut wrong, mut misfit, mut unchecked) = (vec![], 0.0, vec![]);
    for (names, group) in groups(&checked) {
        match settle(&group) {
            Ok(settled) => {
                misfit += settled.fit.misfit;
                result.redundancy += settled.fit.redundancy;
                let told = Told { survey, names: &names, group: &group, settled: &settled };
                told.add_to(&mut result, &mut unchecked);
            }
            Err(no) => wrong.push(error(survey, &names, &group, no)),
        }
    }
    if !wrong.is_empty() {
        return Err(wrong);
    }
    for o in checked.observations.iter().filter(|o| o.sought().next().is_none()) {
        let v = o.residual(&[]) / o.sigma;
        misfit += v * v;
        result.redundancy += 1;
        between_pegs(survey, o, &mut result);
    }
    if !unchecked.is_empty() {
        result.findings.push(no_check(&unchecked));
    }
    result.points.sort_by(|a, b| a.id.cmp(&b.id));
    result.readings.sort_by(|a, b| {
        (a.row, &a.point, &a.from, a.part)
            .cmp(&(b.row, &b.point, &b.from, b.part))
            .then(a.read.to_m().total_cmp(&b.read.to_m()))
    });
    result.sigma0 = (result.redundancy > 0).then(|| (misfit / result.redundancy as f64).sqrt());
    Ok(result)
}

/// Points that are tied to each other, with their readings, renumbered from 0 in the order of their names.
fn groups(checked: &Checked) -> Vec<(Vec<String>, Group)> {
    let n = checked.names.len();
    let mut group: Vec<usize> = (0..n).collect();
    fn root(group: &mut [usize], mut i: usize) -> usize {
        while group[i] != i {
            group[i] = group[group[i]];
            i = group[i];
        }
        i
    }
    for o in &checked.observations {
        let ends: Vec<usize> = o.sought().collect();
        if let [a, b] = ends.as_slice() {
            let (a, b) = (root(&mut group, *a), root(&mut group, *b));
            group[a.max(b)] = a.min(b);
        }
    }
    let roots: Vec<usize> = (0..n).map(|i| root(&mut group, i)).collect();
    let (mut number, mut new): (Vec<usize>, Vec<usize>) = (vec![usize::MAX; n], vec![0; n]);
    let mut out: Vec<(Vec<String>, Group)> = vec![];
    for i in 0..n {
        if number[roots[i]] == usize::MAX {
            number[roots[i]] = out.len();
            out.push((vec![], Group { points: 0, observations: vec![], required: vec![] }));
        }
        let (names, g) = &mut out[number[roots[i]]];
        new[i] = names.len();
        names.push(checked.names[i].clone());
        g.points += 1;
    }
    for o in &checked.observations {
        let Some(i) = o.sought().next() else { continue };
        let against = match o.against {
            Against::Tie(e) => Against::Tie(e.renumbered(&new)),
            other => other,
        };
        let o = Observation { point: o.point.renumbered(&new), against, ..o.clone() };
        out[number[roots[i]]].1.observations.push(o);
    }
    for r in &checked.required {
        let mut r = *r;
        let home = number[roots[r.point]];
        r.point = new[r.point];
        out[home].1.required.push(r);
    }
    out
}
