//! Which pieces of a contour make one line?

use std::collections::{BTreeMap, BTreeSet};

use groundhold_quantity::Point;

/// What a piece of contour hangs on: a side of two corners, or a place.
type Key = (usize, usize);

/// One straight piece of a contour, directed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    /// What its start and end hang on; a piece goes on with the piece that starts where it ends.
    pub(super) link: [Key; 2],
    /// Where they are: two ends with the same node are in the same place.
    pub(super) node: [Key; 2],
    /// The places.
    pub(super) at: [Point; 2],
}

/// Joins pieces of one level to lines, open ones first, and tells which are closed. No stretch is drawn twice: a ridge
/// exactly at the level, along which both sides give a piece, is drawn once.
pub(super) fn joined(pieces: &[Piece]) -> Vec<(Vec<Point>, bool)> {
    let mut drawn = BTreeSet::new();
    let mut lines = Vec::new();
    for (chain, closed) in chains(pieces) {
        // Pieces that lie in one corner have no length.
        let chain: Vec<&Piece> = chain.into_iter().map(|i| &pieces[i]).filter(|p| p.node[0] != p.node[1]).collect();
        let once = |p: &&Piece| drawn.insert((p.node[0].min(p.node[1]), p.node[0].max(p.node[1])));
        let fresh: Vec<bool> = chain.iter().map(once).collect();
        lines.extend(runs(&chain, &fresh, closed));
    }
    lines
}

/// Indices of pieces that follow each other, and whether the last joins the first.
fn chains(pieces: &[Piece]) -> Vec<(Vec<usize>, bool)> {
    let mut starting: BTreeMap<Key, Vec<usize>> = BTreeMap::new();
    let mut surplus: BTreeMap<Key, i32> = BTreeMap::new();
    for (i, p) in pieces.iter().enumerate().rev() {
        starting.entry(p.link[0]).or_default().push(i);
        *surplus.entry(p.link[0]).or_default() += 1;
        *surplus.entry(p.link[1]).or_default() -= 1;
    }
    let ends = surplus.iter().filter(|(_, s)| **s > 0).flat_map(|(&k, &s)| std::iter::repeat_n(k, s as usize));
    let firsts: Vec<Key> = ends.chain(starting.keys().copied()).collect();
    let mut chains = Vec::new();
    for first in firsts {
        loop {
            let mut chain = Vec::new();
            let mut at = first;
            while let Some(i) = starting.get_mut(&at).and_then(Vec::pop) {
                chain.push(i);
                at = pieces[i].link[1];
                if at == first {
                    break;
                }
            }
            if chain.is_empty() {
                break;
            }
            chains.push((chain, at == first));
        }
    }
    chains
}

/// The points of each run of pieces not drawn before. A whole closed chain stays closed.
fn runs(chain: &[&Piece], fresh: &[bool], closed: bool) -> Vec<(Vec<Point>, bool)> {
    let n = chain.len();
    if n == 0 {
        return vec![];
    }
    if fresh.iter().all(|f| *f) {
        let mut line: Vec<Point> = chain.iter().map(|p| p.at[0]).collect();
        if !closed {
            line.push(chain[n - 1].at[1]);
        }
        return vec![(line, closed)];
    }
    // In a closed chain a run may go on over the seam, so it is read from the first piece after a break.
    let first = if closed { fresh.iter().position(|f| !f).unwrap_or(0) } else { 0 };
    let mut lines: Vec<(Vec<Point>, bool)> = Vec::new();
    let mut going_on = false;
    for i in (0..n).map(|k| (first + k) % n) {
        if fresh[i] {
            match lines.last_mut().filter(|_| going_on) {
                Some((line, _)) => line.push(chain[i].at[1]),
                None => lines.push((chain[i].at.to_vec(), false)),
            }
        }
        going_on = fresh[i];
    }
    lines
}
