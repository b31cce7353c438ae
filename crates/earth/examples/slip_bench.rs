//! How long do a slip search and the searched pressures take? Run with `--release`; prints the best of seven runs.

use std::time::Instant;

use groundhold_earth::Soil;
use groundhold_earth::pressure::log_spiral;
use groundhold_earth::pressure::seepage::{self, Flow};
use groundhold_earth::slip::{Crack, GroundLoad, Layer, Pore, Search, Section};
use groundhold_quantity::{Angle, Length, Point, Pressure, Slope, UnitWeight};

fn soil(gamma: f64, phi: f64, c: f64) -> Soil {
    let (moist, wet) = (UnitWeight::kn_per_m3(gamma), UnitWeight::kn_per_m3(gamma + 2.0));
    let mut s = Soil::given("soil", moist, wet, Angle::deg(phi));
    s.cohesion = Pressure::kpa(c);
    s
}

fn points(list: &[(f64, f64)]) -> Vec<Point> {
    list.iter().map(|(x, y)| Point::m(*x, *y)).collect()
}

/// A bank, plain.
fn plain() -> Section {
    Section::of(soil(18.0, 25.0, 5.0), points(&[(0.0, 0.0), (6.0, 0.0), (10.5, 3.0), (18.0, 3.4)]))
}

/// The same with two layers, a water table, a load and a crack.
fn full() -> Section {
    let mut s = plain();
    s.layers.push(Layer { soil: soil(19.0, 28.0, 7.0), top: points(&[(0.0, -0.8), (18.0, 0.4)]) });
    s.pore = Pore::Table(points(&[(0.0, -0.5), (6.0, -0.1), (18.0, 1.6)]));
    s.loads = vec![GroundLoad { value: Pressure::kpa(10.0), from: Length::m(11.5), to: Length::m(14.0) }];
    s.crack = Some(Crack { depth: Length::m(0.3), water: Length::m(0.2) });
    s
}

/// A low wall, circles under the tip of its posts.
fn wall() -> (Section, Search) {
    let ground = points(&[(-6.0, -0.9), (0.0, 0.0), (0.0, 1.0), (8.0, 2.2)]);
    let mut s = Section::of(soil(18.0, 32.0, 0.0), ground);
    s.pore = Pore::Table(points(&[(-6.0, -2.0), (8.0, -0.5)]));
    (s, Search { under: Some(Point::m(0.0, -0.9)), ..Search::default() })
}

/// The best of seven runs, in milliseconds.
fn best_of_seven(mut run: impl FnMut()) -> f64 {
    let timed = |run: &mut dyn FnMut()| {
        let from = Instant::now();
        run();
        from.elapsed().as_secs_f64() * 1e3
    };
    (0..7).map(|_| timed(&mut run)).fold(f64::INFINITY, f64::min)
}

fn main() {
    let (wall, under) = wall();
    for (name, section, search) in
        [("plain bank", plain(), Search::default()), ("full bank", full(), Search::default()), ("wall", wall, under)]
    {
        let mut found = None;
        let best = best_of_seven(|| found = section.critical(&search).ok());
        let Some(slip) = found else { continue };
        println!(
            "{name:<12} F = {:.9}  {:>6} circles  {:>8.3} ms  {:>7.2} ms per 10 000 circles",
            slip.factor,
            slip.tried,
            best,
            best * 1e4 / slip.tried as f64
        );
    }
    let sand = soil(18.0, 32.0, 0.0);
    let delta = Angle::deg(16.0);
    let spiral = best_of_seven(|| drop(log_spiral::passive(sand.phi, delta, Slope::LEVEL)));
    let drained = best_of_seven(|| drop(seepage::soaked(&sand, Length::m(1.5), delta, Flow::ToBackDrain)));
    println!("logarithmic spiral {spiral:.3} ms, flow to a back drain {drained:.3} ms");
}
