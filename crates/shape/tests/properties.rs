//! What must hold for every job, wherever it lies and however it is turned?

use groundhold_quantity::{Angle, Length, Level, Point, Slope, Units, Vector, distance_to_segment, math};
use groundhold_shape::{
    Batter, End, EndFound, FlightWish, GroundKind, Limits, PadWish, RampLimits, RampWish, Shaped, Side, StepLimits,
    Top, WallWish, Wish, shape,
};
use groundhold_surface::{GroundPoint, Tin, clip_convex, cut_and_fill};
use proptest::prelude::*;

/// A job on a slope with humps, turned and moved.
#[derive(Debug, Clone)]
struct Site {
    rise: f64,
    cross: f64,
    /// Height of humps and hollows, metres, and which.
    rough: f64,
    which: u32,
    level: f64,
    apron: f64,
    wall_off: f64,
    batter: f64,
    going: Option<f64>,
}

/// Where the job lies: turned by an angle, then moved.
#[derive(Debug, Clone, Copy)]
struct Lie {
    turn: f64,
    dx: f64,
    dy: f64,
    up: f64,
}

const HERE: Lie = Lie { turn: 0.0, dx: 0.0, dy: 0.0, up: 0.0 };

impl Lie {
    fn at(self, x: f64, y: f64) -> Point {
        let (s, c) = (math::sin(self.turn), math::cos(self.turn));
        Point::m(x * c - y * s + self.dx, x * s + y * c + self.dy)
    }
    fn along(self, x: f64, y: f64) -> Vector {
        self.at(x, y) - self.at(0.0, 0.0)
    }
    fn level(self, z: f64) -> Level {
        Level::m(z + self.up)
    }
}

fn site() -> impl Strategy<Value = Site> {
    (
        0.08..0.3f64,
        -0.05..0.05f64,
        (0.0..0.06f64, any::<u32>()),
        -0.4..0.4f64,
        prop_oneof![Just(0.0), 0.1..0.8f64],
        prop_oneof![Just(0.0), 0.0..0.4f64, -0.2..0.0f64],
        0.4..1.0f64,
        prop_oneof![Just(None), (0.25..0.4f64).prop_map(Some)],
    )
        .prop_map(|(rise, cross, (rough, which), level, apron, wall_off, batter, going)| {
            // A wall may stand inside the apron, but not on the pad.
            let wall_off = f64::max(wall_off, -apron);
            Site { rise, cross, rough, which, level, apron, wall_off, batter, going }
        })
}

impl Site {
    fn hump(&self, k: i32) -> f64 {
        let mixed = (self.which ^ k as u32).wrapping_mul(2_654_435_761).rotate_left(13).wrapping_mul(2_246_822_519);
        self.rough * (f64::from(mixed >> 8) / f64::from(1u32 << 23) - 1.0)
    }
    fn ground(&self, lie: Lie) -> Tin {
        let points: Vec<GroundPoint> = (0..11)
            .flat_map(|i| (0..11).map(move |j| (i, j)))
            .map(|(i, j)| {
                // Off the square grid, so that no four points lie on a circle.
                let bend = f64::from((i * 7 + j * 13) % 11) * 0.03;
                let (x, y) = (-20.0 + 4.0 * f64::from(i) + bend, -20.0 + 4.0 * f64::from(j) - bend * 0.7);
                let z = 100.0 + self.rise * y + self.cross * x + self.hump(i * 11 + j);
                GroundPoint { id: format!("{i}-{j}"), at: lie.at(x, y), level: lie.level(z) }
            })
            .collect();
        Tin::build(&points, &[], None).expect("a grid of points")
    }
    fn wish(&self, lie: Lie) -> Wish {
        let at = |x, y| lie.at(x, y);
        let off = self.apron + self.wall_off;
        let (e, n) = (3.0 + off, 2.0 + off);
        let wall = |id: &str, line: Vec<Point>| WallWish {
            id: id.into(),
            line,
            start: End::Fade,
            end: End::Fade,
            retains: Side::Left,
            thickness: Length::m(0.15),
            top: Top::FollowGround { above: Length::m(0.05) },
            ..WallWish::default()
        };
        let mm = |a, b| (Length::mm(a), Length::mm(b));
        Wish {
            pads: vec![PadWish {
                id: "P1".into(),
                corners: vec![at(-3.0, -2.0), at(3.0, -2.0), at(3.0, 2.0), at(-3.0, 2.0)],
                level: lie.level(100.0 + self.level),
                fall: Some((Slope::percent(1.0), lie.along(0.0, -1.0))),
                apron: Length::m(self.apron),
                ..PadWish::default()
            }],
            walls: vec![
                wall("W1", vec![at(-e, 0.5), at(-e, n), at(e, n)]),
                wall("W2", vec![at(-e, -n), at(e, -n), at(e, -0.8)]),
            ],
            flights: vec![FlightWish {
                id: "S1".into(),
                bottom: at(0.4, -5.5),
                toward: "P1".into(),
                width: Length::m(0.9),
                going: self.going.map(Length::m),
                ..FlightWish::default()
            }],
            ramps: vec![RampWish {
                id: "R1".into(),
                path: vec![at(-9.0, -6.0), at(-9.0, -0.5), at(-3.0 - self.apron, -0.5)],
                toward: "P1".into(),
                width: Length::m(1.0),
                steepest: Slope::one_in(8.0),
                ..RampWish::default()
            }],
            batter: Batter { cut: Slope::ratio(self.batter), fill: Slope::ratio(0.5), bench: None },
            limits: Limits {
                steps: StepLimits {
                    riser: mm(100.0, 220.0),
                    going: mm(220.0, 450.0),
                    two_r_plus_g: mm(550.0, 700.0),
                    pitch_most: Angle::deg(42.0),
                    source: "invented limits",
                },
                ramp: RampLimits { steepest: Slope::one_in(8.0), source: "invented limits" },
                guard: None,
            },
            units: Units::Metric,
        }
    }
}

fn area(ring: &[Point]) -> f64 {
    ring.windows(2).map(|w| (w[0] - ring[0]).cross(w[1] - ring[0])).sum::<f64>() / 2.0
}

/// Pieces do not overlap, are anticlockwise, and lie as their batter says.
fn holds(site: &Site, s: &Shaped, ground: &Tin) -> Result<(), TestCaseError> {
    for (i, a) in s.grounds.iter().enumerate() {
        prop_assert!(area(&a.facet.ring) > 0.0);
        for b in &s.grounds[..i] {
            let both = area(&clip_convex(&a.facet.ring, &b.facet.ring));
            prop_assert!(both < 1e-5, "{} {:?} and {} {:?} share {both} m²", a.of, a.kind, b.of, b.kind);
        }
    }
    for g in s.grounds.iter().filter(|g| g.kind == GroundKind::Batter) {
        let v = cut_and_fill(ground, std::slice::from_ref(&g.facet));
        prop_assert!(v.cut.to_m3() < 1e-7 || v.fill.to_m3() < 1e-7, "a batter is either cut or filled: {v:?}");
        let steep = g.facet.plane.slope().to_ratio();
        prop_assert!(steep < site.batter.max(0.5) * 1.03 + 1e-9, "{steep}");
    }
    for w in &s.walls {
        let open = |c: Length| w.openings.iter().any(|(a, b)| *a - Length::m(0.6) <= c && c <= *b + Length::m(0.6));
        let length: f64 = w.line.windows(2).map(|p| (p[1] - p[0]).length()).sum();
        prop_assert!((length - w.length.to_m()).abs() < 1e-9);
        prop_assert!(w.stations.windows(2).all(|p| p[0].chainage < p[1].chainage));
        let fades = w.ends.iter().all(|e| matches!(e, EndFound::Faded { .. }));
        for st in w.stations.iter().filter(|st| fades && !open(st.chainage)) {
            // Within the wall's own thickness of an end the back face may already look past it.
            let end = st.chainage.min(w.length - st.chainage) < Length::m(0.2);
            let least = if end { -0.02 } else { -1e-6 };
            prop_assert!(st.retained.to_m() > least, "{} at {:?} retains {:?}", w.id, st.chainage, st.retained);
        }
    }
    for f in &s.flights {
        prop_assert!((f.riser.to_m() * f.risers as f64 - f.rise.to_m()).abs() < 1e-9);
        let steps: Vec<f64> = f.nosings.windows(2).map(|p| (p[0].1 - p[1].1).to_m()).collect();
        prop_assert!(steps.iter().all(|d| (d - f.riser.to_m()).abs() < 1e-9));
        let foot = s.level_at(ground, f.foot + f.outward * 0.002);
        prop_assert!(foot.is_some_and(|z| (z - f.foot_level).to_m().abs() < 1e-3), "{foot:?} {:?}", f.foot_level);
    }
    Ok(())
}

/// Figures that do not depend on where the job lies.
fn figures(s: &Shaped, ground: &Tin) -> Vec<f64> {
    let v = cut_and_fill(ground, &s.facets());
    let mut all = vec![v.cut.to_m3(), v.fill.to_m3()];
    for w in &s.walls {
        all.extend([w.length.to_m(), w.retained_most().to_m(), w.exposed_most().to_m()]);
    }
    for f in &s.flights {
        all.extend([f.risers as f64, f.riser.to_m(), f.going.to_m(), f.run.to_m()]);
    }
    for r in &s.ramps {
        all.extend([r.rise.to_m(), r.run.to_m(), r.length.to_m()]);
    }
    all
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 32, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_job_is_laid_without_overlap_and_turning_it_changes_nothing(
        site in site(),
        turn in -3.0..3.0f64,
        dx in -500.0..500.0f64,
        dy in -500.0..500.0f64,
        up in -50.0..50.0f64,
    ) {
        let ground = site.ground(HERE);
        let here = shape(&ground, &site.wish(HERE));
        holds(&site, &here, &ground)?;
        let lie = Lie { turn, dx, dy, up };
        let moved = site.ground(lie);
        let there = shape(&moved, &site.wish(lie));
        let (a, b) = (figures(&here, &ground), figures(&there, &moved));
        prop_assert_eq!(a.len(), b.len());
        for (x, y) in a.iter().zip(&b) {
            prop_assert!((x - y).abs() < 1e-4 * x.abs().max(1.0), "{:?}\n{:?}", a, b);
        }
        // Steps that nothing holds (G-004, G-006) are looked for at places and from 50 mm on; rounding may move one over.
        let sampled = ["G-004", "G-006"];
        let codes = |s: &Shaped| {
            s.findings.iter().map(|f| f.kind.code).filter(|c| !sampled.contains(c)).collect::<Vec<_>>()
        };
        prop_assert_eq!(codes(&here), codes(&there));
    }

    #[test]
    fn no_batter_lies_behind_a_wall_as_seen_from_the_pad(
        site in site(),
        x0 in -3.0..0.0f64,
        long in 1.0..4.0f64,
        off in 0.7..3.0f64,
        lean in -0.5..0.5f64,
    ) {
        let ground = site.ground(HERE);
        let mut wish = site.wish(HERE);
        wish.flights.clear();
        wish.ramps.clear();
        let out = 2.0 + site.apron + off;
        let (a, b) = (Point::m(x0, out), Point::m((x0 + long).min(3.0), out + lean));
        wish.walls = vec![WallWish { line: vec![a, b], start: End::At, end: End::At, ..wish.walls[0].clone() }];
        let s = shape(&ground, &wish);
        holds(&site, &s, &ground)?;
        // Straight out of the pad's upper side the wall shades what lies beyond it.
        for k in 0..20 {
            let t = (f64::from(k) + 0.5) / 20.0;
            let foot = a.towards(b, t);
            for beyond in [0.01, 0.5, 2.0] {
                let p = Point::m(foot.x, foot.y + beyond);
                let found = s.ground_at(p).filter(|_| distance_to_segment(p, a, b).to_m() > 1e-3);
                prop_assert!(found.is_none(), "{p:?} {found:?}");
            }
        }
    }

    #[test]
    fn a_higher_pad_never_lowers_the_downhill_wall(site in site(), up in 0.01..0.3f64) {
        let ground = site.ground(HERE);
        let mut wish = site.wish(HERE);
        wish.flights.clear();
        wish.ramps.clear();
        wish.walls.iter_mut().for_each(|w| { w.start = End::At; w.end = End::At; });
        let low = shape(&ground, &wish);
        wish.pads[0].level = wish.pads[0].level + Length::m(up);
        let high = shape(&ground, &wish);
        let most = |s: &Shaped, k: usize| s.walls[k].retained_most().to_m();
        prop_assert!(most(&high, 1) > most(&low, 1) - 1e-9);
        prop_assert!(most(&high, 0) < most(&low, 0) + 1e-9);
    }
}

#[test]
fn a_wall_led_on_past_a_ramp_in_a_hollow_pad_holds_ground_at_its_ends() {
    // Found by chance: gentle ground, a pad dug in, the wall's end led on past the ramp.
    let site = Site {
        rise: 0.08,
        cross: 0.0,
        rough: 0.0,
        which: 0,
        level: -0.32999355840296773,
        apron: 0.0,
        wall_off: 0.0,
        batter: 0.4,
        going: None,
    };
    let ground = site.ground(HERE);
    let s = shape(&ground, &site.wish(HERE));
    holds(&site, &s, &ground).unwrap();
}
