//! Which triangles share a side, and where is a mesh open?

/// Side `k` of a triangle runs from its corner `k` to the next.
type Neighbours = Vec<[Option<usize>; 3]>;

/// For each side of each triangle, the triangle on the other side.
pub(super) fn neighbours(triangles: &[[usize; 3]]) -> Neighbours {
    let mut sides: Vec<(usize, usize, usize, usize)> = Vec::with_capacity(triangles.len() * 3);
    for (t, corners) in triangles.iter().enumerate() {
        for k in 0..3 {
            let (u, v) = (corners[k], corners[(k + 1) % 3]);
            sides.push((u.min(v), u.max(v), t, k));
        }
    }
    sides.sort_unstable();
    let mut found = vec![[None; 3]; triangles.len()];
    for pair in sides.windows(2) {
        let ((a, b, t, k), (c, d, u, l)) = (pair[0], pair[1]);
        if (a, b) == (c, d) {
            found[t][k] = Some(u);
            found[u][l] = Some(t);
        }
    }
    found
}

/// The open sides of a mesh joined to rings of corners, anticlockwise around the ground.
pub(super) fn open_rings(triangles: &[[usize; 3]], neighbours: &Neighbours) -> Vec<Vec<usize>> {
    let mut done = vec![[false; 3]; triangles.len()];
    let mut rings = Vec::new();
    for t in 0..triangles.len() {
        for k in 0..3 {
            if neighbours[t][k].is_some() || done[t][k] {
                continue;
            }
            let mut ring = Vec::new();
            let (mut at, mut side) = (t, k);
            while !done[at][side] {
                done[at][side] = true;
                ring.push(triangles[at][side]);
                (at, side) = next_open(triangles, neighbours, at, side);
            }
            rings.push(ring);
        }
    }
    rings
}

/// The open side that begins where this one ends, found by turning around their common corner through the ground.
fn next_open(triangles: &[[usize; 3]], neighbours: &Neighbours, t: usize, k: usize) -> (usize, usize) {
    let corner = triangles[t][(k + 1) % 3];
    let (mut at, mut side) = (t, (k + 1) % 3);
    while let Some(next) = neighbours[at][side] {
        at = next;
        // The side of the next triangle that begins at the corner.
        side = triangles[at].iter().position(|&c| c == corner).unwrap_or(0);
    }
    (at, side)
}
