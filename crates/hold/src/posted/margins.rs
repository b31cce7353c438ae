//! What do the methods say of a post's depth, side by side?

use groundhold_earth::Method as Theory;
use groundhold_earth::basis::Margin;
use groundhold_member::embed::{self, Method, MethodDepth};
use groundhold_quantity::Length;
use groundhold_working::Refused;

use super::Posted;
use super::embedment::{deciding, member_case};
use super::loads::{self, UNFACTORED};
use crate::{Bay, LoadCase, MethodMargin, Post, WallCase};

/// Embedment of one post by method, with loads and soil as they are: by the deciding methods, and by all of them side by
/// side where `every` is asked for.
///
/// # Errors
/// As the pressure theory refuses.
pub(crate) fn margins(
    case: &WallCase,
    wall: &Posted,
    bays: &[Bay],
    post: &Post,
    state: LoadCase,
    every: bool,
) -> Result<Vec<MethodMargin>, Refused> {
    let push = loads::on_post(case, &UNFACTORED, state, Theory::Rankine, post)?;
    let wanted = loads::combinations(case, state)[0].wanted.embedment;
    let deciding = deciding(case);
    let mut rows: Vec<MethodMargin> = vec![];
    for (i, method) in deciding.iter().enumerate() {
        let mut member = member_case(case, wall, bays, post, &UNFACTORED, &push, *method);
        member.factor = wanted;
        let found = if every && i == 0 {
            embed::depths_by_method(&member, Some(post.depth))
        } else {
            vec![alone(&member, *method, post.depth)]
        };
        for mut row in found {
            if case.basis.margin == Margin::PartialFactors && deciding.contains(&row.method) {
                factored_depth(case, wall, bays, post, state, &mut row)?;
            }
            if rows.iter().all(|r| r.method != row.method.words()) {
                rows.push(margin(post, state, row, deciding));
            }
        }
    }
    Ok(rows)
}

/// Puts the depth that the partial factors of the basis ask for into a row whose factor is found with nothing factored.
///
/// # Errors
/// As the pressure theory refuses.
fn factored_depth(
    case: &WallCase,
    wall: &Posted,
    bays: &[Bay],
    post: &Post,
    state: LoadCase,
    row: &mut MethodDepth,
) -> Result<(), Refused> {
    row.depth = None;
    for combination in loads::combinations(case, state) {
        let push = loads::on_post(case, combination, state, Theory::Rankine, post)?;
        let member = member_case(case, wall, bays, post, combination, &push, row.method);
        if let Ok(r) = embed::required_depth(&member, row.method)
            && row.depth.is_none_or(|d| d < r.depth)
        {
            (row.depth, row.trace) = (Some(r.depth), Some(r.trace));
        }
    }
    row.note = format!("Depth with the partial factors, factor with nothing factored. {}", row.note).trim_end().into();
    Ok(())
}

/// What one method says of a depth.
fn alone(member: &embed::Case, method: Method, depth: Length) -> MethodDepth {
    let required = embed::required_depth(member, method);
    let at = embed::resistance(member, method, depth).map(|r| {
        let factor = if member.force.si() > 0.0 { r.force / member.force } else { f64::INFINITY };
        embed::AtDepth { depth, factor, enough: member.factor <= factor, trace: r.trace }
    });
    let (found, note) = match required {
        Ok(r) => (Some((r.depth, r.trace)), String::new()),
        Err(why) => (None, format!("No depth: {why}.")),
    };
    let (depth, trace) = found.map_or((None, None), |(d, t)| (Some(d), Some(t)));
    MethodDepth { method, wanted: member.factor, depth, trace, at: at.ok(), note }
}

fn margin(post: &Post, state: LoadCase, row: MethodDepth, deciding: &[Method]) -> MethodMargin {
    MethodMargin {
        post: post.number,
        case: state,
        method: row.method.words(),
        depth: row.depth,
        factor: row.at.as_ref().map(|a| a.factor),
        wanted: row.wanted,
        governs: deciding.contains(&row.method),
        trace: row.at.map(|a| a.trace).or(row.trace),
        note: row.note,
    }
}
