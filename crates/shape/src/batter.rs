//! How does the ground come from the edge of a pad or ramp to daylight where no wall holds it?
//!
//! From every side a plane rises (cut) and one falls (fill) at the wished slope; corners are closed by fans. Where two
//! cut batters overlap the lower one counts, where two filled ones overlap the higher, divided exactly along the line
//! where their planes meet. What then lies below (cut) or above (fill) the existing ground, and hangs together with the
//! edge it started from, is the batter.

use groundhold_quantity::{Length, Level, Point, Slope, Vector, math};
use groundhold_surface::{Facet, Plane, Tin, clip_convex, clip_half, pieces_above, pieces_below};

use crate::barrier::{Barrier, Light, MEETS, NOTHING, Of, take_away};
use crate::index::{FacetIndex, bounds};
use crate::memory::{self, Around, Laid, Memory};
use crate::mosaic::Mosaic;
use crate::outline::{anticlockwise, area};
use crate::reach::Platform;
use crate::{Batter, Bench, Ground, GroundKind};

/// Widest batter in plan, metres (ours).
pub(crate) const WIDEST: f64 = 6.0;
/// Planes of a fan for a quarter turn (ours).
const PER_QUARTER: f64 = 4.0;

/// Where a batter starts.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Seed {
    Side(Point, Point),
    Apex(Point),
}

/// A piece of a batter.
#[derive(Debug, Clone)]
pub(crate) struct Piece {
    ring: Vec<Point>,
    plane: Plane,
    /// Its platform.
    of: usize,
    seed: Seed,
}

/// Area in plan that both a cut and a filled batter want, m², by the element whose fill gives way.
pub(crate) type Clashes = Vec<(String, f64)>;

/// Lays the batters of all platforms on the free ground of the mosaic.
pub(crate) fn lay(
    ground: &Tin,
    platforms: &[Platform],
    barriers: &[Barrier],
    batter: &Batter,
    mosaic: &mut Mosaic,
    memory: &mut Memory,
) -> Clashes {
    memory.about(ground, batter);
    let (mut cut, mut fill): (Vec<Piece>, Vec<Piece>) = (vec![], vec![]);
    let mut clashes: Clashes = vec![];
    let reach: Vec<Box2> = platforms.iter().map(|p| reach(ground, p, batter)).collect();
    for group in memory::groups(&reach) {
        let around = memory::around(&group, platforms, &reach, barriers, mosaic);
        let laid = memory.recall(&around).unwrap_or_else(|| {
            let laid = together(ground, &around, batter);
            memory.keep(around, &laid);
            laid
        });
        let named = |p: Piece| Piece { of: group[p.of], ..p };
        cut.extend(laid.cut.into_iter().map(named));
        fill.extend(laid.fill.into_iter().map(named));
        clashes.extend(laid.clashes);
    }
    // In the order of the platforms, whatever groups they were laid in.
    cut.sort_by_key(|p| p.of);
    fill.sort_by_key(|p| p.of);
    for p in cut.into_iter().chain(fill) {
        let facet = Facet { ring: p.ring, plane: p.plane };
        mosaic.put(Ground { facet, of: platforms[p.of].of.clone(), kind: GroundKind::Batter });
    }
    clashes
}

/// How far the batters of a platform may reach.
fn reach(ground: &Tin, p: &Platform, batter: &Batter) -> Box2 {
    let own = p.batter.as_ref().unwrap_or(batter);
    let mut reached: Vec<Point> = p.ring.iter().map(|r| r.0).collect();
    for (slope, sign) in [(own.cut.to_ratio(), 1.0), (own.fill.to_ratio(), -1.0)] {
        if !(slope > 0.0 && slope.is_finite()) {
            continue;
        }
        let bands = Bands::new(slope.max(0.01) * sign, own.bench);
        for i in 0..p.ring.len() {
            for from in [From::side(p, i, bands.slope), From::corner(p, i, bands.slope)] {
                if let Some(b) = bands.up_to_ground(ground, &from) {
                    let (lo, hi) = from.reached(b.far() + ROOM);
                    reached.extend([lo, hi]);
                }
            }
        }
    }
    bounds(&reached)
}

/// The batters of platforms that may reach each other.
fn together(ground: &Tin, around: &Around, batter: &Batter) -> Laid {
    let platforms = &around.platforms;
    let mut all = around.barriers.clone();
    for (k, p) in platforms.iter().enumerate() {
        let sides = p.ring.len();
        all.extend((0..sides).map(|i| {
            let [(a, _), (b, _)] = p.side(i);
            Barrier { a, b, of: Of::Platform { platform: k, side: i, sides } }
        }));
    }
    let taken = Taken::new(&around.taken);
    let cut = kind(ground, platforms, &all, batter, true, &taken);
    let fill = kind(ground, platforms, &all, batter, false, &taken);
    let index = FacetIndex::new(cut.iter().map(|p| p.ring.as_slice()));
    let mut laid = Laid::default();
    for piece in fill {
        let (lo, hi) = bounds(&piece.ring);
        let mut rest = vec![piece.ring.clone()];
        for i in index.touching(lo, hi) {
            rest = take_away(rest, &cut[i].ring);
        }
        let lost = area(&piece.ring) - rest.iter().map(|r| area(r)).sum::<f64>();
        if lost > 1e-6 {
            let of = &platforms[piece.of].of;
            match laid.clashes.iter_mut().find(|(id, _)| id == of) {
                Some((_, sum)) => *sum += lost,
                None => laid.clashes.push((of.clone(), lost)),
            }
        }
        laid.fill.extend(rest.into_iter().map(|ring| Piece { ring, ..piece.clone() }));
    }
    laid.cut = cut;
    laid
}

/// Ground that is taken, with an index.
struct Taken<'a> {
    rings: &'a [Vec<Point>],
    index: FacetIndex,
}

impl<'a> Taken<'a> {
    fn new(rings: &'a [Vec<Point>]) -> Taken<'a> {
        Taken { rings, index: FacetIndex::new(rings.iter().map(Vec::as_slice)) }
    }
    /// The parts of a convex ring that nothing covers.
    fn free(&self, ring: &[Point]) -> Vec<Vec<Point>> {
        let (lo, hi) = bounds(ring);
        let mut pieces = vec![ring.to_vec()];
        for i in self.index.touching(lo, hi) {
            pieces = take_away(pieces, &self.rings[i]);
        }
        pieces
    }
}

/// All batters that are cut, or all that are filled.
fn kind(
    ground: &Tin,
    platforms: &[Platform],
    barriers: &[Barrier],
    batter: &Batter,
    cut: bool,
    taken: &Taken<'_>,
) -> Vec<Piece> {
    let mut laid: Vec<(Piece, Box2)> = vec![];
    let barriers: Vec<(Barrier, Box2)> = barriers.iter().map(|b| (*b, bounds(&[b.a, b.b]))).collect();
    let barriers = &barriers;
    for (k, p) in platforms.iter().enumerate() {
        let batter = p.batter.as_ref().unwrap_or(batter);
        let slope = if cut { batter.cut } else { batter.fill }.to_ratio();
        if !(slope > 0.0 && slope.is_finite()) {
            continue;
        }
        let slope = slope.max(0.01);
        let whole = Bands::new(if cut { slope } else { -slope }, batter.bench);
        let n = p.ring.len();
        for i in 0..n {
            if let Some(turns) = whole.up_to_ground(ground, &From::side(p, i, whole.slope)) {
                strips(p, i, &turns, &mut |ring, plane, light, seed| {
                    spread(ground, k, Some(i), ring, plane, light, seed, barriers, taken, cut, &mut laid);
                });
            }
            let turns = p.corner_lit[i].then(|| whole.up_to_ground(ground, &From::corner(p, i, whole.slope))).flatten();
            if let Some(turns) = turns {
                fan(p, i, &turns, &mut |ring, plane, light, seed| {
                    spread(ground, k, None, ring, plane, light, seed, barriers, taken, cut, &mut laid);
                });
            }
        }
    }
    hanging_together(laid.into_iter().map(|(p, _)| p).collect())
}

/// Least and greatest coordinates.
type Box2 = (Point, Point);

/// A batter is laid this much farther than to where it has certainly met the ground, metres.
const ROOM: f64 = 0.01;

/// Farther apart than touching.
fn apart_by_far((a, b): Box2, (lo, hi): Box2) -> bool {
    a.x > hi.x || b.x < lo.x || a.y > hi.y || b.y < lo.y
}

fn apart((a, b): Box2, (lo, hi): Box2) -> bool {
    a.x >= hi.x || b.x <= lo.x || a.y >= hi.y || b.y <= lo.y
}

type Emit<'a> = &'a mut dyn FnMut(Vec<Point>, Plane, Light, Seed);

/// A batter straight out of its edge: bands of slope and bench.
#[derive(Debug, Clone)]
struct Bands {
    /// Slope of the batter, falling negative.
    slope: f64,
    /// From and to out of the edge in metres, and true for a bench.
    bands: Vec<(f64, f64, bool)>,
    /// Rise of a bench per metre out.
    bench: f64,
}

impl Bands {
    fn new(slope: f64, bench: Option<Bench>) -> Bands {
        let whole = || Bands { slope, bands: vec![(0.0, WIDEST, false)], bench: 0.0 };
        let Some(b) = bench else { return whole() };
        let (every, width, fall) = (b.every.to_m(), b.width.to_m(), b.fall.to_ratio());
        if !(every >= 0.1 && (0.05..WIDEST).contains(&width) && (0.0..=0.2).contains(&fall)) {
            return whole();
        }
        let mut bands = vec![];
        let (mut out, mut flat) = (0.0, false);
        while out < WIDEST - 1e-9 {
            let to = (out + if flat { width } else { every / slope.abs() }).min(WIDEST);
            bands.push((out, to, flat));
            (out, flat) = (to, !flat);
        }
        Bands { slope, bands, bench: fall * slope.signum() }
    }
    /// Cut off where it has certainly met the ground: within reach no ground lies farther above the lowest place of the
    /// edge that it starts from (below the highest in fill). Nothing where it would not leave the edge at all.
    fn up_to_ground(&self, ground: &Tin, from: &From) -> Option<Bands> {
        // Twice: what lies beyond the reach that was found first need not be looked at.
        let first = self.within(WIDEST, ground, from)?;
        first.within(first.far() + ROOM, ground, from)
    }

    /// How far out it goes.
    fn far(&self) -> f64 {
        self.bands.last().map_or(0.0, |b| b.1)
    }

    fn within(&self, room: f64, ground: &Tin, from: &From) -> Option<Bands> {
        let (lo, hi) = from.reached(room);
        let sign = self.slope.signum();
        let high = |z: Level| z.to_m() * sign;
        let corners = ground.triangles_touching(lo, hi).into_iter().flat_map(|t| ground.triangles()[t]);
        let most = corners.map(|i| high(ground.points()[i].level)).fold(f64::NEG_INFINITY, f64::max);
        let above = most - from.edge.iter().map(|r| high(r.1)).fold(f64::INFINITY, f64::min);
        if above <= 0.0 {
            return None;
        }
        let (mut kept, mut risen) = (vec![], 0.0);
        for (near, far, flat) in &self.bands {
            let climbs = if *flat { self.bench.abs() } else { from.steep };
            let met = if climbs > 0.0 { near + (above - risen) / climbs + ROOM } else { *far };
            kept.push((*near, far.min(met), *flat));
            risen += climbs * (far - near);
            if risen > above {
                break;
            }
        }
        Some(Bands { bands: kept, ..*self })
    }

    /// Rise from the edge to a distance out of it, where the batter itself rises by `steep` per metre.
    fn rise(&self, out: f64, steep: f64) -> f64 {
        let part = |(from, to, flat): &(f64, f64, bool)| {
            (out.min(*to) - from).max(0.0) * if *flat { self.bench } else { steep }
        };
        self.bands.iter().map(part).sum()
    }
}

/// Where part of a batter starts: from a side, or from a corner like a fan.
struct From {
    edge: Vec<(Point, Level)>,
    /// Out of a side; in all directions from a corner.
    out: Option<Vector>,
    /// It climbs no less steeply than this straight out.
    steep: f64,
}

impl From {
    fn side(p: &Platform, i: usize, slope: f64) -> From {
        let steep = straight_out(slope, rise_along(p, i)).abs();
        From { edge: p.side(i).to_vec(), out: Some(p.out(i)), steep }
    }
    fn corner(p: &Platform, i: usize, slope: f64) -> From {
        let n = p.ring.len();
        let steep = |k: usize| straight_out(slope, rise_along(p, k % n)).abs();
        From { edge: vec![p.ring[i]], out: None, steep: steep(i).min(steep(i + n - 1)) }
    }
    /// What lies no farther out than this.
    fn reached(&self, far: f64) -> Box2 {
        let mut all: Vec<Point> = self.edge.iter().map(|e| e.0).collect();
        let edge = all.clone();
        match self.out {
            Some(out) => all.extend(edge.iter().map(|p| *p + out * far)),
            None => all.extend(edge.iter().flat_map(|p| [*p + Vector::m(far, far), *p - Vector::m(far, far)])),
        }
        bounds(&all)
    }
}

/// Slope straight out of a side whose steepest slope is `slope`, where the side itself rises by `along`.
fn straight_out(slope: f64, along: f64) -> f64 {
    let left = (slope * slope - along * along).max(0.04 * slope * slope).sqrt();
    if slope < 0.0 { -left } else { left }
}

/// Rise of a side, metres per metre.
fn rise_along(p: &Platform, i: usize) -> f64 {
    let [(a, za), (b, zb)] = p.side(i);
    (zb - za).to_m() / (b - a).length().max(1e-9)
}

fn strips(p: &Platform, i: usize, turns: &Bands, emit: Emit<'_>) {
    let [(a, za), (b, _)] = p.side(i);
    let (u, out, along) = ((b - a).unit(), p.out(i), rise_along(p, i));
    let steep = straight_out(turns.slope, along);
    for (near, far, flat) in &turns.bands {
        let uphill = u * along + out * if *flat { turns.bench } else { steep };
        let z = za + Length::m(turns.rise(*near, steep));
        let plane = Plane::rising(a + out * *near, z, uphill, Slope::ratio(uphill.length()));
        for (from, to) in &p.lit[i] {
            let (s, e) = (a + u * *from, a + u * *to);
            let ring = anticlockwise(vec![s + out * *near, e + out * *near, e + out * *far, s + out * *far]);
            emit(ring, plane, Light::Side { a: s, b: e, out }, Seed::Side(s, e));
        }
    }
}

fn fan(p: &Platform, i: usize, turns: &Bands, emit: Emit<'_>) {
    let n = p.ring.len();
    let before = (i + n - 1) % n;
    let (from, to) = (p.out(before), p.out(i));
    let angle = math::atan2(from.cross(to), from.dot(to));
    if angle < 1e-6 {
        return;
    }
    let (apex, z) = p.ring[i];
    let slope = turns.slope;
    let rise = (straight_out(slope, rise_along(p, before)), straight_out(slope, rise_along(p, i)));
    let count = (angle / (std::f64::consts::FRAC_PI_2 / PER_QUARTER) - 1e-6).ceil().max(1.0) as usize;
    let ray = |k: usize| {
        let t = k as f64 / count as f64;
        if k == 0 {
            return (from, rise.0);
        }
        if k == count {
            return (to, rise.1);
        }
        let (s, c) = (math::sin(angle * t), math::cos(angle * t));
        (Vector::m(from.x * c - from.y * s, from.x * s + from.y * c), rise.0 + (rise.1 - rise.0) * t)
    };
    for k in 0..count {
        let ((d0, r0), (d1, r1)) = (ray(k), ray(k + 1));
        let light = Light::Fan { apex, from: d0, to: d1 };
        let at = |d: Vector, r: f64, out: f64| (apex + d * out, z + Length::m(turns.rise(out, r)));
        for (near, far, _) in &turns.bands {
            let outer = [at(d0, r0, *far), at(d1, r1, *far)];
            let mut put = |three: [(Point, Level); 3]| {
                if let Some(plane) = Plane::through(three) {
                    emit(anticlockwise(three.map(|c| c.0).to_vec()), plane, light, Seed::Apex(apex));
                }
            };
            if *near == 0.0 {
                put([(apex, z), outer[0], outer[1]]);
            } else {
                // Four corners that need not lie in a plane: two triangles.
                let inner = [at(d0, r0, *near), at(d1, r1, *near)];
                put([inner[0], outer[0], outer[1]]);
                put([inner[0], outer[1], inner[1]]);
            }
        }
    }
}

/// Takes away what has met the ground, what barriers shade and what is taken, and merges the rest into what was laid
/// before. Where several planes lie below the ground the lowest of them is the lowest of all, so each is cut first.
#[allow(clippy::too_many_arguments)]
fn spread(
    ground: &Tin,
    of: usize,
    side: Option<usize>,
    ring: Vec<Point>,
    plane: Plane,
    light: Light,
    seed: Seed,
    barriers: &[(Barrier, Box2)],
    taken: &Taken<'_>,
    lower: bool,
    laid: &mut Vec<(Piece, Box2)>,
) {
    let own = |b: &Barrier| matches!(b.of, Of::Platform { platform, side: s, .. } if platform == of && Some(s) == side);
    let whole = Facet { ring, plane };
    let parts = if lower { pieces_below(ground, &whole) } else { pieces_above(ground, &whole) };
    for part in parts.into_iter().map(|f| f.ring).filter(|r| area(r) > NOTHING) {
        // Whatever shades a place lies between it and where the batter starts.
        let (mut lo, mut hi) = bounds(&part);
        let starts = match seed {
            Seed::Side(a, b) => [a, b],
            Seed::Apex(a) => [a, a],
        };
        for p in starts {
            (lo, hi) = (Point::m(lo.x.min(p.x), lo.y.min(p.y)), Point::m(hi.x.max(p.x), hi.y.max(p.y)));
        }
        let room = Vector::m(2.0 * MEETS, 2.0 * MEETS);
        let near = (lo - room, hi + room);
        let stops = barriers.iter().filter(|(b, at)| !apart_by_far(*at, near) && !own(b)).map(|(b, _)| *b);
        for lit in light.reaches(&part, stops) {
            for ring in taken.free(&lit) {
                merge(laid, Piece { ring, plane, of, seed }, lower);
            }
        }
    }
}

/// Adds a piece to pieces that do not overlap, so that they still do not: where both want the ground the lower plane (or
/// the higher) keeps it.
fn merge(laid: &mut Vec<(Piece, Box2)>, new: Piece, lower: bool) {
    let mut news = vec![new.ring.clone()];
    let at = bounds(&new.ring);
    let boxed = |ring: Vec<Point>, of: &Piece| {
        let at = bounds(&ring);
        (Piece { ring, ..of.clone() }, at)
    };
    if laid.iter().all(|(_, old)| apart(*old, at)) {
        laid.push((new, at));
        return;
    }
    let mut out = Vec::with_capacity(laid.len() + 4);
    for (old, old_at) in laid.drain(..) {
        if apart(old_at, at) {
            out.push((old, old_at));
            continue;
        }
        let mut olds = vec![old.ring.clone()];
        let mut left = vec![];
        for n in news {
            let both = clip_convex(&n, &old.ring);
            if area(&both) <= NOTHING {
                left.push(n);
                continue;
            }
            let over = |p: Point| {
                let d = (old.plane.level_at(p) - new.plane.level_at(p)).to_m();
                if lower { d - 1e-9 } else { -d - 1e-9 }
            };
            let wins = clip_half(&both, over);
            let loses = clip_half(&both, |p| -over(p));
            if area(&wins) > NOTHING {
                olds = take_away(olds, &wins);
            }
            if area(&loses) > NOTHING {
                left.extend(take_away(vec![n], &loses));
            } else {
                left.push(n);
            }
        }
        news = left;
        out.extend(olds.into_iter().map(|ring| boxed(ring, &old)));
    }
    out.extend(news.into_iter().map(|ring| boxed(ring, &new)));
    *laid = out;
}

/// Only the pieces that hang together with the side or corner from which one of them started.
fn hanging_together(pieces: Vec<Piece>) -> Vec<Piece> {
    let index = FacetIndex::new(pieces.iter().map(|p| p.ring.as_slice()));
    let facets: Vec<Facet> = pieces.iter().map(|p| Facet { ring: p.ring.clone(), plane: p.plane }).collect();
    let mut kept: Vec<bool> = pieces.iter().map(starts).collect();
    let mut open: Vec<usize> = (0..pieces.len()).filter(|i| kept[*i]).collect();
    // Neighbours both ways: a long side may lie along several short ones.
    let mut beside: Vec<Vec<usize>> = vec![vec![]; pieces.len()];
    for (i, p) in pieces.iter().enumerate() {
        for (a, b) in sides(&p.ring) {
            if (b - a).length() < 1e-5 {
                continue;
            }
            let just_out = a.towards(b, 0.5) + crate::outline::outward(a, b) * (3.0 * MEETS);
            for j in index.touching(just_out, just_out) {
                if j != i && facets[j].contains(just_out) {
                    beside[i].push(j);
                    beside[j].push(i);
                }
            }
        }
    }
    while let Some(i) = open.pop() {
        for j in &beside[i] {
            if !kept[*j] {
                kept[*j] = true;
                open.push(*j);
            }
        }
    }
    pieces.into_iter().zip(kept).filter(|(_, k)| *k).map(|(p, _)| p).collect()
}

fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    (0..ring.len()).map(|i| (ring[i], ring[(i + 1) % ring.len()]))
}

/// True where a piece touches the side or corner that it started from.
fn starts(p: &Piece) -> bool {
    const NEAR: f64 = 2e-5;
    match p.seed {
        Seed::Apex(apex) => p.ring.iter().any(|q| (*q - apex).length() < NEAR),
        Seed::Side(a, b) => {
            let out = crate::outline::outward(a, b);
            let on = |q: Point| (q - a).dot(out).abs() < NEAR;
            sides(&p.ring).any(|(q, r)| on(q) && on(r) && (r - q).length() > NEAR)
        }
    }
}
