//! How do the wishes become one finished surface?
//!
//! Where a wall fades depends on the batters, and where batters end depends on the walls. So for each fading wall the
//! surface is laid with this wall led on as far as it may reach and the others as they stand so far; where its end is
//! found to move, walls near it are looked at again. At last the surface is laid with the walls as they are.

use std::cell::RefCell;

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Level, Point};
use groundhold_surface::Tin;

use crate::barrier::{Barrier, of_wall};
use crate::findings::BATTERS_CLASH;
use crate::index::FacetIndex;
use crate::memory::Memory;
use crate::mosaic::Mosaic;
use crate::profile::{Line, Scene};
use crate::reach::Platform;
use crate::wall::{Planned, crosses, crossing, ends_met, meetings, planned, profile};
use crate::{Flight, GroundKind, Pad, Ramp, Shaped, Wish, batter, flight, guard, pad, ramp};

/// Shapes the ground. Never panics: what cannot be shaped gives a finding at `stop` and is left out.
pub fn shape(ground: &Tin, wish: &Wish) -> Shaped {
    shape_again(ground, wish, &mut Memory::default())
}

/// The same, bit for bit, with what an earlier call remembered: batters whose surroundings are as they were are not laid
/// again.
pub fn shape_again(ground: &Tin, wish: &Wish, memory: &mut Memory) -> Shaped {
    let mut findings = vec![];
    let pads = pad::pads(ground, wish, &mut findings);
    let walls: Vec<Planned<'_>> = planned(wish, &pads, &mut findings);
    pad::under_walls(&pads, &walls, wish, &mut findings);
    let site = Site::new(ground, wish, &pads, memory);
    let found = ends_met(ground, &walls, |lines, near| site.laid(lines, Some(near), &mut vec![]));
    let lines: Vec<Line> = found.iter().map(|f| f.line.clone()).collect();
    let last = site.laid(&lines, None, &mut findings);
    drop(site);
    for (i, a) in lines.iter().enumerate() {
        for (k, b) in lines.iter().enumerate().take(i) {
            if let Some(at) = crossing(a, b) {
                let what = "It was led on there to meet the ground: give it an end.";
                findings.push(crosses(&walls[i].wish.id, &walls[k].wish.id, at, what));
            }
        }
    }
    let meetings = meetings(&walls, &lines);
    let scene = last.scene(ground);
    let mut profiles = vec![];
    for (w, f) in walls.iter().zip(found) {
        let f = w.settled(ground, &last, f);
        profiles.extend(profile(w, f, &scene, &last.ramps, wish, &mut findings));
    }
    findings.extend(guard::unheld_steps(&scene, &lines, &last.platforms, wish));
    findings.extend(guard::drops(&scene, &profiles, &last.flights, wish));
    Shaped {
        pads,
        grounds: last.mosaic.grounds,
        walls: profiles,
        meetings,
        flights: last.flights,
        ramps: last.ramps,
        findings,
        index: last.index,
    }
}

/// The surface with what stands on it.
pub(crate) struct Laid {
    mosaic: Mosaic,
    index: FacetIndex,
    flights: Vec<Flight>,
    pub ramps: Vec<Ramp>,
    platforms: Vec<Platform>,
}

impl Laid {
    pub fn scene<'a>(&'a self, existing: &'a Tin) -> Scene<'a> {
        Scene { existing, grounds: &self.mosaic.grounds, index: &self.index }
    }
}

/// A flight as it comes from where it leaves its pad, with what is to be said about it.
type FlightFrom = (Result<flight::Head, String>, Option<Flight>, Vec<Finding>);

/// What does not change while the ends of walls are looked for.
struct Site<'a> {
    ground: &'a Tin,
    wish: &'a Wish,
    pads: &'a [Pad],
    /// Ramps, with what is to be said about each: no wall moves them.
    ramps: Vec<(Option<ramp::Laid>, Vec<Finding>)>,
    /// Flights as they were found last: walls move only where they leave their pads.
    flights: RefCell<Vec<Option<FlightFrom>>>,
    memory: RefCell<&'a mut Memory>,
}

impl<'a> Site<'a> {
    fn new(ground: &'a Tin, wish: &'a Wish, pads: &'a [Pad], memory: &'a mut Memory) -> Site<'a> {
        let flights = RefCell::new(vec![None; wish.flights.len()]);
        let mut site = Site { ground, wish, pads, ramps: vec![], flights, memory: RefCell::new(memory) };
        let ramp = |w: &crate::RampWish| {
            let mut findings = vec![];
            let r = ramp::ramp(w, pads, wish, |p| site.below(p, &w.toward), &mut findings);
            (r, findings)
        };
        site.ramps = wish.ramps.iter().map(ramp).collect();
        site
    }

    /// The ground below a way: of another pad, or as it is.
    fn below(&self, p: Point, toward: &str) -> Option<Level> {
        let holds = |q: &&Pad| {
            let (lo, hi) = q.bounds;
            lo.x <= p.x && p.x <= hi.x && lo.y <= p.y && p.y <= hi.y && q.id != toward && q.finished.contains(p)
        };
        let other = self.pads.iter().find(holds);
        other.map(|q| q.plane.level_at(p)).or_else(|| self.ground.level_at(p))
    }

    fn flight(&self, i: usize, walls: &[(Barrier, f64)], findings: &mut Vec<Finding>) -> Option<Flight> {
        let w = &self.wish.flights[i];
        let head = flight::leaves(w, self.pads, walls);
        let mut known = self.flights.borrow_mut();
        if known[i].as_ref().is_none_or(|(from, ..)| *from != head) {
            let mut said = vec![];
            let below = |p: Point| self.below(p, &w.toward);
            let found = flight::flight(w, self.pads, walls, self.wish, &below, &mut said);
            known[i] = Some((head, found, said));
        }
        let (_, found, said) = known[i].as_ref()?;
        findings.extend(said.iter().cloned());
        found.clone()
    }

    /// Lays treads, ramps, pads and batters, in this order; of the batters, where only a place is of interest, those that
    /// may reach it.
    fn laid(&self, walls: &[Line], near: Option<(Point, Point)>, findings: &mut Vec<Finding>) -> Laid {
        let (ground, wish, pads) = (self.ground, self.wish, self.pads);
        let barriers: Vec<Barrier> = walls.iter().flat_map(|w| of_wall(&w.points)).collect();
        let with_half: Vec<(Barrier, f64)> =
            walls.iter().flat_map(|w| of_wall(&w.points).map(|b| (b, w.half))).collect();
        let mut mosaic = Mosaic::default();
        let mut flights = vec![];
        for i in 0..wish.flights.len() {
            let Some(f) = self.flight(i, &with_half, findings) else { continue };
            for facet in flight::facets(&f) {
                mosaic.lay(&facet.ring, facet.plane, &f.id, GroundKind::Tread);
            }
            flights.push(f);
        }
        let mut platforms = vec![];
        let mut ramps = vec![];
        for (r, said) in &self.ramps {
            findings.extend(said.iter().cloned());
            let Some(r) = r else { continue };
            for facet in &r.facets {
                mosaic.lay(&facet.ring, facet.plane, &r.ramp.id, GroundKind::Ramp);
            }
            platforms.push(r.platform(&barriers));
            ramps.push(r.ramp.clone());
        }
        platforms.splice(0..0, pad::lay(pads, &barriers, &mut mosaic));
        if let Some((lo, hi)) = near {
            let reach = batter::WIDEST + 1.0;
            platforms.retain(|p| {
                let ring: Vec<Point> = p.ring.iter().map(|r| r.0).collect();
                let (a, b) = crate::index::bounds(&ring);
                a.x - reach < hi.x && lo.x < b.x + reach && a.y - reach < hi.y && lo.y < b.y + reach
            });
        }
        let mut stops = barriers;
        stops.extend(flights.iter().map(flight::foot_line));
        let clashes = batter::lay(ground, &platforms, &stops, &wish.batter, &mut mosaic, &mut self.memory.borrow_mut());
        for (of, area) in clashes {
            if area > 0.05 {
                let says =
                    format!("The filled batter of {of} and a batter that is cut want the same {area:.2} m² of ground.");
                findings.push(Finding::new(&BATTERS_CLASH, Place::of(&of), says));
            }
        }
        Laid { index: mosaic.index(), mosaic, flights, ramps, platforms }
    }
}
