//! How do points, break lines and a boundary become triangles?
//!
//! The constrained Delaunay triangulation is by `spade`. Before it: places are merged and lines are cut at every point
//! that lies on them. After it: crossings are named, and what lies outside the boundary is taken away.

use std::collections::BTreeSet;

use groundhold_quantity::{nearest_on_segment, segments_cross};
use spade::{ConstrainedDelaunayTriangulation, Point2, Triangulation};

use super::{GroundPoint, SurfaceError, mesh};
use crate::grid::Grid;
use crate::places::Places;
use crate::{Polygon, PolygonError, SAME_PLACE, ring};

/// A side between two points, the smaller index first.
type Side = (usize, usize);

pub(super) struct Built {
    pub(super) points: Vec<GroundPoint>,
    pub(super) triangles: Vec<[usize; 3]>,
    pub(super) break_edges: Vec<Side>,
}

pub(super) fn build(
    points: &[GroundPoint],
    break_lines: &[Vec<usize>],
    boundary: Option<&[usize]>,
) -> Result<Built, SurfaceError> {
    let (kept, number) = merged(points)?;
    if kept.len() < 3 {
        return Err(SurfaceError::TooFewPoints { found: kept.len() });
    }
    let line = |name: String, line: &[usize]| numbered(name, line, &number);
    let mut stretches = BTreeSet::new();
    for (i, break_line) in break_lines.iter().enumerate() {
        let places = line(format!("break line {}", i + 1), break_line)?;
        stretches.extend(places.windows(2).map(|w| side(w[0], w[1])));
    }
    let around = boundary.map(|b| line("the boundary".into(), b)).transpose()?;
    let outline = around.as_deref().map(|b| enclosed(b, &kept)).transpose()?;
    let closed = around.iter().flat_map(|b| (0..b.len()).map(|i| side(b[i], b[(i + 1) % b.len()])));

    let grid = Grid::new(kept.iter().map(|p| [p.at]));
    let break_edges = cut_at_points(stretches, &kept, &grid);
    let walls = cut_at_points(closed.filter(|s| s.0 != s.1).collect(), &kept, &grid);
    let all: BTreeSet<Side> = break_edges.union(&walls).copied().collect();
    let mut triangles = triangulated(&kept, &all)?;
    if let Some(outline) = &outline {
        triangles = inside(triangles, &walls, outline, &kept);
    }
    triangles = without_hull_slivers(triangles, &kept);
    if triangles.is_empty() {
        return Err(if outline.is_some() { SurfaceError::NothingInside } else { SurfaceError::AllInLine });
    }
    Ok(Built { points: kept, triangles, break_edges: break_edges.into_iter().collect() })
}

fn side(a: usize, b: usize) -> Side {
    (a.min(b), a.max(b))
}

/// Each place once, and for each point given the number of its place.
fn merged(points: &[GroundPoint]) -> Result<(Vec<GroundPoint>, Vec<usize>), SurfaceError> {
    let mut places = Places::default();
    let mut kept: Vec<GroundPoint> = Vec::with_capacity(points.len());
    let mut number = Vec::with_capacity(points.len());
    for p in points {
        let ordinary = |v: f64| v.abs() <= 1e7;
        if ![p.at.x, p.at.y, p.level.to_m()].into_iter().all(ordinary) {
            return Err(SurfaceError::NotAPlace { id: p.id.clone(), at: p.at, level: p.level });
        }
        let (n, seen) = places.number(p.at);
        number.push(n);
        if !seen {
            kept.push(p.clone());
            continue;
        }
        let first = &kept[n];
        if (first.level - p.level).abs().to_m() > SAME_PLACE {
            return Err(SurfaceError::SamePlace {
                a: first.id.clone(),
                b: p.id.clone(),
                at: p.at,
                level_a: first.level,
                level_b: p.level,
            });
        }
    }
    Ok((kept, number))
}

/// The places along a line, none twice in succession.
fn numbered(line: String, indices: &[usize], number: &[usize]) -> Result<Vec<usize>, SurfaceError> {
    let place = |&index: &usize| {
        number.get(index).copied().ok_or(SurfaceError::UnknownPoint { line: line.clone(), index, points: number.len() })
    };
    let mut places = indices.iter().map(place).collect::<Result<Vec<_>, _>>()?;
    places.dedup();
    Ok(places)
}

/// The boundary as a polygon.
fn enclosed(boundary: &[usize], points: &[GroundPoint]) -> Result<Polygon, SurfaceError> {
    let id = |i: usize| points[boundary[i % boundary.len()]].id.clone();
    Polygon::new(boundary.iter().map(|&i| points[i].at).collect()).map_err(|e| match e {
        PolygonError::Crossing { edge_a, edge_b, at } => {
            SurfaceError::BoundaryCrosses { a: (id(edge_a), id(edge_a + 1)), b: (id(edge_b), id(edge_b + 1)), at }
        }
        other => SurfaceError::Boundary(other),
    })
}

/// Stretches of lines, cut at every point within a micrometre of them.
fn cut_at_points(stretches: BTreeSet<Side>, points: &[GroundPoint], grid: &Grid) -> BTreeSet<Side> {
    let mut cut = BTreeSet::new();
    for (a, b) in stretches {
        let (from, to) = (points[a].at, points[b].at);
        let mut on_it: Vec<(f64, usize)> = grid
            .touching(&[from, to])
            .into_iter()
            .filter(|&i| i != a && i != b)
            .map(|i| (nearest_on_segment(points[i].at, from, to), i))
            .filter(|((foot, _), i)| (points[*i].at - *foot).length() <= SAME_PLACE)
            .map(|((_, share), i)| (share, i))
            .collect();
        on_it.sort_by(|p, q| p.0.total_cmp(&q.0).then(p.1.cmp(&q.1)));
        let way: Vec<usize> = std::iter::once(a).chain(on_it.into_iter().map(|p| p.1)).chain([b]).collect();
        cut.extend(way.windows(2).map(|w| side(w[0], w[1])));
    }
    cut
}

/// Triangles over the convex hull that keep to every side given.
fn triangulated(points: &[GroundPoint], sides: &BTreeSet<Side>) -> Result<Vec<[usize; 3]>, SurfaceError> {
    // Numbers that `spade` refuses as too small to compare exactly are zero to any tape.
    let flushed = |v: f64| if v.abs() < 1e-30 { 0.0 } else { v };
    let vertices = points.iter().map(|p| Point2::new(flushed(p.at.x), flushed(p.at.y))).collect();
    let constraints = sides.iter().map(|&(a, b)| [a, b]).collect();
    let mut refused: Option<Side> = None;
    let mesh = ConstrainedDelaunayTriangulation::<Point2<f64>>::try_bulk_load_cdt(vertices, constraints, |[a, b]| {
        refused = refused.or(Some(side(a, b)));
    })
    // Coordinates are finite, within ±1e7 and not tiny by now.
    .map_err(|_| SurfaceError::AllInLine)?;
    if let Some(refused) = refused {
        return Err(crossing(refused, points, sides));
    }
    Ok(mesh.inner_faces().map(|f| f.vertices().map(|v| v.index())).collect())
}

/// Names the stretch that a refused one crosses.
fn crossing(refused: Side, points: &[GroundPoint], sides: &BTreeSet<Side>) -> SurfaceError {
    let ends = |s: Side| (points[s.0].at, points[s.1].at);
    let names = |s: Side| (points[s.0].id.clone(), points[s.1].id.clone());
    let (p, q) = ends(refused);
    let meeting = sides.iter().find_map(|&other| {
        let (r, s) = ends(other);
        segments_cross(p, q, r, s).map(|(t, _)| (other, p.towards(q, t)))
    });
    // Without a crossing in plain arithmetic it is a touch within rounding, at the end of the refused stretch itself.
    let (other, at) = meeting.unwrap_or((refused, p));
    SurfaceError::BreakLinesCross { a: names(other), b: names(refused), at }
}

/// The triangles inside the boundary: regions between its walls are kept or left as a whole, by their largest triangle.
fn inside(
    triangles: Vec<[usize; 3]>,
    walls: &BTreeSet<Side>,
    outline: &Polygon,
    points: &[GroundPoint],
) -> Vec<[usize; 3]> {
    let neighbours = mesh::neighbours(&triangles);
    let corners = |t: usize| triangles[t].map(|i| points[i].at);
    let mut region = vec![usize::MAX; triangles.len()];
    let mut keep = Vec::new();
    for start in 0..triangles.len() {
        if region[start] != usize::MAX {
            continue;
        }
        let (mut open, mut largest) = (vec![start], start);
        region[start] = keep.len();
        while let Some(t) = open.pop() {
            if ring::signed_area(&corners(t)) > ring::signed_area(&corners(largest)) {
                largest = t;
            }
            for k in 0..3 {
                let wall = walls.contains(&side(triangles[t][k], triangles[t][(k + 1) % 3]));
                let Some(next) = neighbours[t][k].filter(|&n| !wall && region[n] == usize::MAX) else { continue };
                region[next] = keep.len();
                open.push(next);
            }
        }
        keep.push(outline.contains(ring::centroid(&corners(largest))));
    }
    triangles.into_iter().zip(region).filter(|(_, r)| keep[*r]).map(|(t, _)| t).collect()
}

/// Takes away triangles thinner than a micrometre whose longest side is open: points in line along the hull that
/// rounding has put beside it.
fn without_hull_slivers(triangles: Vec<[usize; 3]>, points: &[GroundPoint]) -> Vec<[usize; 3]> {
    let neighbours = mesh::neighbours(&triangles);
    let mut gone = vec![false; triangles.len()];
    let mut open: Vec<usize> = (0..triangles.len()).collect();
    while let Some(t) = open.pop() {
        let corners = triangles[t].map(|i| points[i].at);
        let lengths = [0, 1, 2].map(|k| (corners[(k + 1) % 3] - corners[k]).length());
        let longest = (0..3).fold(0, |best, k| if lengths[k] > lengths[best] { k } else { best });
        let is_open = neighbours[t][longest].is_none_or(|n| gone[n]);
        let thin = 2.0 * ring::signed_area(&corners) <= SAME_PLACE * lengths[longest];
        if !gone[t] && is_open && thin {
            gone[t] = true;
            open.extend(neighbours[t].iter().flatten().filter(|&&n| !gone[n]));
        }
    }
    triangles.into_iter().zip(gone).filter(|(_, gone)| !gone).map(|(t, _)| t).collect()
}
