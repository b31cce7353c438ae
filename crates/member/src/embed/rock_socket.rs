//! How much push does a post take whose foot stands in a hole drilled into rock?

use groundhold_working::{Found, Given, Limits, Number, Output, Result, Shown, Source, Unit, Working};

use super::limits;
use crate::{
    given::{gives, takes},
    root::first_reach,
};

takes! {
    /// A post in a rock socket of given length; kN, m, MPa.
    RockSocket {
        socket: "L", "length of the socket below the top of the rock", M, Limits::ours(0.0, 5.0);
        arm: "h", "height of the push above the ground in front", M, Limits::ours(0.0, 20.0);
        rock_depth: "z_r", "depth of the top of the rock below the ground in front", M, Limits::ours(0.0, 10.0);
        shattered: "z_s", "top of the rock that is not counted on", M, Limits::ours(0.0, 2.0), 0.1;
        width: "b", "diameter of the drilled hole", M, Limits::ours(0.03, 2.0);
        strength: "q_u", "unconfined compressive strength of the rock", MPA, Limits::ours(0.1, 300.0);
        share: "α_r", "share of the strength that jointed rock keeps: 1/3 unless a core says otherwise", NONE,
            Limits::author(0.333, 1.0), 1.0 / 3.0;
    }
}
takes! {
    /// A post under a push whose socket is wanted; kN, m, MPa.
    RockPush {
        force: "P", "horizontal push", KN, Limits::ours(0.0, 10_000.0);
        arm: "h", "height of the push above the ground in front", M, Limits::ours(0.0, 20.0);
        rock_depth: "z_r", "depth of the top of the rock below the ground in front", M, Limits::ours(0.0, 10.0);
        shattered: "z_s", "top of the rock that is not counted on", M, Limits::ours(0.0, 2.0), 0.1;
        width: "b", "diameter of the drilled hole", M, Limits::ours(0.03, 2.0);
        strength: "q_u", "unconfined compressive strength of the rock", MPA, Limits::ours(0.1, 300.0);
        share: "α_r", "share of the strength that jointed rock keeps: 1/3 unless a core says otherwise", NONE,
            Limits::author(0.333, 1.0), 1.0 / 3.0;
    }
}
gives! {
    /// What a socket resists: the rock fails, no margin inside.
    SocketUltimate {
        force: KN, "ultimate push";
        turning: M, "depth of the turning point below the top of the rock";
        shear: KN, "greatest shear in the post under that push, within the rock";
        moment: KNM, "greatest moment in the post under that push";
    }
}

/// Strength above which the pressures of weak rock are not raised further, MPa: the strongest rock among the tests.
const STRONGEST_MPA: f64 = 5.0;
/// Longest socket that is searched for, m.
const LONGEST_M: f64 = 5.0;

impl<N: Number> RockPush<N> {
    fn at(&self, socket: N) -> RockSocket<N> {
        RockSocket {
            socket,
            arm: self.arm,
            rock_depth: self.rock_depth,
            shattered: self.shattered,
            width: self.width,
            strength: self.strength,
            share: self.share,
        }
    }
}

/// Ultimate reaction along the socket below what is not counted on: α q_u b (1 + 1.4 x/b) to 3b, then 5.2 α q_u b.
struct Wall {
    /// At the top, kN/m.
    top: f64,
    width: f64,
}

impl Wall {
    fn of(i: &RockSocket<f64>) -> Wall {
        Wall { top: 1000.0 * i.share * i.strength.min(STRONGEST_MPA) * i.width, width: i.width }
    }
    /// Reaction from the top to x, kN, and its moment about the top, kNm.
    fn sums(&self, x: f64) -> (f64, f64) {
        let upper = x.min(3.0 * self.width);
        let grow = 1.4 / self.width;
        let (mut force, mut moment) =
            (upper + grow * upper * upper / 2.0, upper * upper / 2.0 + grow * upper * upper * upper / 3.0);
        if upper < x {
            force += 5.2 * (x - upper);
            moment += 5.2 * (x * x - upper * upper) / 2.0;
        }
        (force * self.top, moment * self.top)
    }
    /// Where the reaction has reached a push, m: the shear vanishes there.
    fn reached(&self, force: f64) -> f64 {
        let upper = self.sums(3.0 * self.width).0;
        if upper < force {
            return 3.0 * self.width + (force - upper) / (5.2 * self.top);
        }
        // top (x + 0.7 x²/b) = force.
        let half = self.width / 1.4;
        (half * half + 2.0 * half * force / self.top).sqrt() - half
    }
}

/// Ultimate push on a post whose foot stands in a socket drilled into rock; soil above the rock is not counted on.
///
/// # Source
/// Reese, Analysis of Laterally Loaded Piles in Weak Rock, J. Geotech. Geoenviron. Eng. 123 (1997): p = α_r q_u b
/// (1 + 1.4 x/b) for x up to 3b, 5.2 α_r q_u b below; α_r from 1/3 (sound cores) to 1 (no core recovered). From memory; also
/// in NCHRP Synthesis 360, Rock-Socketed Shafts (2006), chapter 4. That the post is rigid and turns about a point, with
/// these pressures before and behind it, is statics as in Brinch Hansen 1961. Strength is not counted above 5 MPa (ours).
/// # Symbols
/// x depth below the top of the counted rock, b hole, q_u strength, α_r share, e height of the push above it.
/// # Gives
/// P_u in kN with the shear and moment it puts into the post; no margin inside.
/// # Not for
/// Rock that dips or is cut away in front; the post's own shear and crushing against the grout, which usually decide in a
/// short socket: compare with the shear given. A hole that is not filled with concrete or grout.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// α q_u b = 250 kN/m, b 0.15, e 0.7, socket 0.4 below 0.1 m left out: P_u = 26.7 kN, shear in the post 130 kN (RK-01).
pub fn rock_socket(i: &RockSocket<f64>) -> SocketUltimate<f64> {
    let length = i.socket - i.shattered;
    if length <= 0.0 {
        return SocketUltimate { force: 0.0, turning: i.socket, shear: 0.0, moment: 0.0 };
    }
    let wall = Wall::of(i);
    let e = i.arm + i.rock_depth + i.shattered;
    let (whole, whole_moment) = wall.sums(length);
    let turned = |x: f64| {
        let (force, moment) = wall.sums(x);
        2.0 * (moment + e * force) - (whole_moment + e * whole)
    };
    let turning = first_reach(0.0, length, length, turned).unwrap_or(length);
    let below = whole - wall.sums(turning).0;
    let force = (whole - 2.0 * below).max(0.0);
    let f = wall.reached(force);
    let moment = force * (e + f) - (force * f - wall.sums(f).1);
    SocketUltimate { force, turning: turning + i.shattered, shear: below.max(force), moment }
}

/// Least socket for the wanted factor times the push; `None` where 5 m are not enough.
pub fn rock_socket_length(i: &RockPush<f64>, factor: f64) -> Option<f64> {
    first_reach(i.shattered, LONGEST_M, 0.3, |l| rock_socket(&i.at(l)).force - factor * i.force)
}

fn shown<'s>(g: &Given<'s>, i: &RockSocket<Shown<'s>>) -> SocketUltimate<Shown<'s>> {
    let s = g.sheet();
    let u = rock_socket(&i.values());
    let strength = i.strength.min(Shown::constant(STRONGEST_MPA)).named("q_u'", Unit::MPA);
    let _ = (Shown::constant(1000.0) * i.share * strength * i.width).named("p₀", Unit::KN_M);
    let _ = (i.arm + i.rock_depth + i.shattered).named("e", Unit::M);
    s.remark("The turning point is where the moments about the push of the reactions before and behind it balance:");
    let put = |symbol, value, unit| s.put(symbol, value, unit).named(symbol, unit);
    SocketUltimate {
        turning: put("x", u.turning, Unit::M),
        force: put("P_u", u.force, Unit::KN),
        shear: put("V", u.shear, Unit::KN),
        moment: put("M", u.moment, Unit::KNM),
    }
}

const SOURCE: Source = Source {
    work: "Reese, Analysis of Laterally Loaded Piles in Weak Rock, J. Geotech. Geoenviron. Eng. 123, 1997; NCHRP \
           Synthesis 360, Rock-Socketed Shafts for Highway Structure Foundations, 2006",
    place: "ultimate resistance of weak rock (chapter 4 of the synthesis); from memory; statics of a rigid post",
};
const NOT_FOR: &str = "rock that dips or is cut away in front; the post's own shear and crushing (compare the shear given); \
                       a hole that is not filled with concrete or grout";

/// Working of [`rock_socket`].
pub static ROCK_SOCKET: Working = Working {
    name: "embed/rock-socket-load",
    title: "Ultimate push on a post in a socket drilled into rock.",
    source: SOURCE,
    not_for: NOT_FOR,
    inputs: RockSocket::INPUTS,
    outputs: SocketUltimate::OUTPUTS,
    run: |g| shown(g, &RockSocket::put(g)?).found(),
};

/// Working of [`rock_socket_length`].
pub static ROCK_SOCKET_LENGTH: Working = Working {
    name: "embed/rock-socket-length",
    title: "Socket into rock that a post needs for a wanted factor.",
    source: SOURCE,
    not_for: NOT_FOR,
    inputs: &{
        let [a, b, c, d, e, f, h] = *rows();
        [a, b, c, d, e, f, h, limits::FACTOR]
    },
    outputs: &[
        Output { key: "socket", words: "length of the socket below the top of the rock", unit: Unit::M },
        limits::OUT_ULTIMATE,
        Output { key: "shear", words: "greatest shear in the post at the ultimate push", unit: Unit::KN },
        Output { key: "moment", words: "greatest moment in the post at the ultimate push", unit: Unit::KNM },
    ],
    run: length,
};

const fn rows() -> &'static [groundhold_working::Input; 7] {
    match RockPush::INPUTS.first_chunk() {
        Some(rows) => rows,
        None => panic!("seven rows stand above"),
    }
}

fn length<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let (i, factor) = (RockPush::put(g)?, g.one("factor")?);
    let root = rock_socket_length(&i.values(), factor.value())
        .ok_or_else(|| g.no_answer("even a socket of 5 m is not enough for this push"))?;
    g.sheet().remark("L is found by closing in on it; the ultimate push at that length:");
    let socket = g.sheet().put("L", root, Unit::M).named("L", Unit::M);
    let u = shown(g, &i.at(socket));
    let _ = (factor * i.force).named("P_F", Unit::KN);
    Ok([socket, u.force, u.shear, u.moment].into_iter().map(Found::One).collect())
}

/// Share of the strength that jointed rock keeps by its core recovery, RQD in per cent: 1 at 0, 1/3 at 100 (Reese 1997).
pub fn rock_share(rqd_percent: f64) -> f64 {
    1.0 - 2.0 / 3.0 * (rqd_percent / 100.0).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sums_of_the_wall_are_the_integral_of_its_pressure() {
        let wall = Wall { top: 250.0, width: 0.15 };
        let p = |x: f64| 250.0 * (1.0 + 1.4 * (x / 0.15).min(3.0));
        let n = 20_000;
        let h = 0.8 / f64::from(n);
        let (mut f, mut m) = (0.0, 0.0);
        for k in 0..n {
            let x = (f64::from(k) + 0.5) * h;
            f += p(x) * h;
            m += p(x) * x * h;
        }
        let (force, moment) = wall.sums(0.8);
        assert!((force / f - 1.0).abs() < 1e-6 && (moment / m - 1.0).abs() < 1e-6, "{force} {f} {moment} {m}");
        for push in [1.0, 100.0, 900.0] {
            assert!((wall.sums(wall.reached(push)).0 / push - 1.0).abs() < 1e-12);
        }
    }
}
