//! What do the accepted methods say of the same post, side by side?

use groundhold_quantity::Length;
use groundhold_working::Result;

use super::{
    case::{AtDepth, Case, Ground, Kind, Method, MethodDepth},
    judge,
};

/// The methods that claim this case, the strict ones not first: rule of thumb, codes, then theories.
pub fn methods_for(case: &Case) -> Vec<Method> {
    let mut methods = vec![];
    if case.retained.is_some() {
        methods.push(Method::RuleOfThumb);
    }
    if case.presumptive.is_some() {
        methods.push(if case.held_at_ground { Method::IbcHeld } else { Method::IbcFree });
    }
    methods.push(match case.ground {
        Ground::Clay { .. } => Method::BromsClay,
        Ground::Sand { .. } | Ground::Mixed { .. } => Method::BromsSand,
    });
    methods.push(Method::BrinchHansen);
    methods
}

/// What every method that claims the case says: required depth, and its judgement of the depth `at` where one is given.
/// A method that cannot answer stands in its row with the reason in `note`.
pub fn depths_by_method(case: &Case, at: Option<Length>) -> Vec<MethodDepth> {
    methods_for(case).into_iter().map(|method| row(case, method, at)).collect()
}

/// What every method that claims the case says of the depth `at`, without solving for the depth it would ask for.
pub fn factors_by_method(case: &Case, at: Length) -> Vec<MethodDepth> {
    let row = |method| {
        let wanted = wanted(case, method);
        let mut row = MethodDepth { method, wanted, depth: None, trace: None, at: None, note: note(case, method) };
        match case.check_factor().and_then(|()| judged(case, method, at)) {
            Ok(found) => row.at = Some(found),
            Err(why) => row.note = format!("No factor at the given depth: {why}."),
        }
        row
    };
    methods_for(case).into_iter().map(row).collect()
}

/// The factor a method is asked for: the case's for ultimate methods, 1 for the others.
fn wanted(case: &Case, method: Method) -> f64 {
    if method.kind() == Kind::Ultimate { case.factor } else { 1.0 }
}

fn row(case: &Case, method: Method, at: Option<Length>) -> MethodDepth {
    let mut row = MethodDepth {
        method,
        wanted: wanted(case, method),
        depth: None,
        trace: None,
        at: None,
        note: note(case, method),
    };
    match case.check_factor().and_then(|()| judge::required_depth(case, method)) {
        Ok(r) => (row.depth, row.trace) = (Some(r.depth), Some(r.trace)),
        Err(why) => row.note = format!("No depth: {why}."),
    }
    match at.map(|depth| judged(case, method, depth)) {
        Some(Ok(found)) => row.at = Some(found),
        Some(Err(why)) if row.depth.is_some() => row.note = format!("No factor at the given depth: {why}."),
        _ => {}
    }
    row
}

/// What one method says of a depth, without solving for the depth it would ask for.
///
/// # Errors
/// As [`super::resistance`]; for the rule of thumb where the retained height is not given.
pub fn judged(case: &Case, method: Method, depth: Length) -> Result<AtDepth> {
    let (factor, trace) = if method == Method::RuleOfThumb {
        let r = judge::required_depth(case, method)?;
        (over(depth.to_m(), r.depth.to_m()), r.trace)
    } else {
        let r = judge::resistance(case, method, depth)?;
        (over(r.force.to_kn(), case.force.to_kn()), r.trace)
    };
    Ok(AtDepth { depth, factor, enough: meets(factor, wanted(case, method)), trace })
}

/// A factor meets the wanted one also where only the last digits of the machine's numbers are missing: a depth that was
/// solved for must pass its own check.
fn meets(factor: f64, wanted: f64) -> bool {
    wanted * (1.0 - 1e-12) <= factor
}

/// What there is over what is wanted; infinite where nothing is wanted.
fn over(have: f64, want: f64) -> f64 {
    if want == 0.0 { f64::INFINITY } else { have / want }
}

fn note(case: &Case, method: Method) -> String {
    let drained = matches!(case.ground, Ground::Mixed { .. });
    let note = match method {
        Method::RuleOfThumb => "Common practice, no source; it knows neither soil nor spacing nor load.",
        Method::IbcFree if case.may_move => {
            "Allowable push by presumptive values, doubled for a post that may move 12 mm at the ground; margin inside."
        }
        Method::IbcFree => "Allowable push by presumptive values; margin inside.",
        Method::IbcHeld => "Allowable push for a post held at the ground by a rigid slab; margin inside.",
        Method::BromsSand if drained => "Ultimate push; the cohesion is not counted.",
        Method::BromsSand => "Ultimate push; loose fill beside the post is not meant.",
        Method::BromsClay => "Ultimate push while the clay has not drained; look at the drained state too.",
        Method::BrinchHansen if drained => {
            "Ultimate push with friction and cohesion; cohesion near the surface may be lost."
        }
        Method::BrinchHansen => "Ultimate push over the whole depth, turning about a point near the foot.",
    };
    format!("{note}{}", what_is_counted(case, method))
}

/// What the figures of this row leave out or take off, beyond the method as published.
fn what_is_counted(case: &Case, method: Method) -> String {
    if method == Method::RuleOfThumb {
        return String::new();
    }
    let mut said = String::new();
    if 0.0 < case.neglected.to_m() {
        said += &format!(" The top {:.0} mm in front are not counted.", case.neglected.to_mm());
    }
    let Ok(left) = judge::reduction(case) else { return said };
    if left.front < 1.0 {
        said += &format!(" {:.0} % are left beside ground that falls away (our addition).", 100.0 * left.front);
    }
    if left.row < 1.0 {
        said += &format!(" {:.0} % are left in a row of close posts (our addition).", 100.0 * left.row);
    }
    said
}
