//! How long do the questions about one post take? Medians in microseconds; run in release.

use std::hint::black_box;
use std::time::Instant;

use groundhold_member::embed::{
    Case, Ground, Method, depths_by_method, factors_by_method, post_moment, post_yields, presumptive, push_taken,
    required_depth, resistance,
};
use groundhold_quantity::{Angle, Force, Length, Moment, Pressure, Slope, UnitWeight};

fn case(ground: Ground) -> Case {
    Case {
        force: Force::kn(2.304),
        arm: Length::m(0.8 / 3.0),
        width: Length::mm(300.0),
        ground,
        presumptive: presumptive("sand").map(|p| p.lateral),
        may_move: true,
        held_at_ground: false,
        neglected: Length::mm(100.0),
        front_fall: Slope::one_in(10.0),
        spacing: None,
        retained: Some(Length::mm(800.0)),
        factor: 1.5,
    }
}

fn say(what: &str, mut f: impl FnMut()) {
    let mut times: Vec<f64> = (0..21)
        .map(|_| {
            let begun = Instant::now();
            (0..200).for_each(|_| f());
            begun.elapsed().as_secs_f64() * 1e6 / 200.0
        })
        .collect();
    times.sort_by(f64::total_cmp);
    println!("{what:<44} {:8.3} µs", times[10]);
}

fn main() {
    let unit_weight = UnitWeight::kn_per_m3(18.0);
    let phi = Angle::deg(28.0);
    let grounds = [
        ("sand", Ground::Sand { phi, unit_weight }, Method::BromsSand),
        ("clay", Ground::Clay { strength: Pressure::kpa(40.0), unit_weight }, Method::BromsClay),
        ("mixed", Ground::Mixed { phi, cohesion: Pressure::kpa(3.0), unit_weight }, Method::BrinchHansen),
    ];
    let d = Length::mm(900.0);
    for (name, ground, method) in grounds {
        let case = case(ground);
        say(&format!("{name}: resistance"), || drop(black_box(resistance(black_box(&case), method, d))));
        say(&format!("{name}: push alone"), || drop(black_box(push_taken(black_box(&case), method, d))));
        say(&format!("{name}: required depth"), || drop(black_box(required_depth(black_box(&case), method))));
        say(&format!("{name}: moment"), || drop(black_box(post_moment(black_box(&case)))));
        say(&format!("{name}: yield"), || drop(black_box(post_yields(black_box(&case), Moment::knm(3.0)))));
        say(&format!("{name}: every method, depths"), || drop(black_box(depths_by_method(black_box(&case), Some(d)))));
        say(&format!("{name}: every method, factors"), || drop(black_box(factors_by_method(black_box(&case), d))));
    }
}
