//! How far does a post bend and move in ground that yields like springs, with its concrete collar?

use groundhold_quantity::{Length, Moment, Pressure, Slope, math};
use groundhold_working::{Limits, Number, Result, Shown, Source, Trace, Unit, Working};

use super::{
    beam_on_soil::{At, Stretch, pushed},
    case::{Case, Subgrade},
    judge::no,
};
use crate::given::{gives, takes};

takes! {
    /// A post on springs; kN, m, kNm².
    Elastic {
        force: "P", "horizontal push", KN, Limits::ours(0.0, 10_000.0);
        arm: "h", "height of the push above the ground in front", M, Limits::ours(0.0, 20.0);
        height: "h_t", "height above ground at which the movement is wanted too", M, Limits::ours(0.0, 20.0), 0.0;
        depth: "D", "depth below the ground in front", M, Limits::ours(0.05, 30.0);
        neglected: "z₀", "layer in front that is not counted on", M, Limits::ours(0.0, 5.0), 0.0;
        even: "K₀", "stiffness of the ground per metre of post, the same at every depth: k b", KPA, Limits::ours(0.0, 1e7), 0.0;
        growth: "n_h", "growth of it with depth", KN_M3, Limits::ours(0.0, 1e6), 0.0;
        post: "EI", "bending stiffness of the post, kNm²", NONE, Limits::ours(0.01, 1e7);
        collar: "EI_c", "bending stiffness with its collar, kNm²; 0 for none", NONE, Limits::ours(0.0, 1e7), 0.0;
        collar_from: "z_1", "top of the collar below the ground in front", M, Limits::ours(0.0, 30.0), 0.0;
        collar_to: "z_2", "foot of the collar below the ground in front", M, Limits::ours(0.0, 30.0), 0.0;
    }
}
gives! {
    /// How a post moves on springs.
    ElasticMoved {
        ground: M, "movement at the ground";
        lean: NONE, "lean at the ground, rise over run";
        top: M, "movement at the height";
        moment: KNM, "greatest moment in the post";
        at: M, "its depth below the ground in front";
    }
}

/// Elements over the depth of a post: enough for five figures (see the tests of the elements).
const ELEMENTS: f64 = 48.0;

/// Depths at which stiffness or springs change, from the ground down.
fn breaks(i: &Elastic<f64>) -> [f64; 5] {
    let inside = |z: f64| z.clamp(0.0, i.depth);
    let mut at = [0.0, inside(i.neglected), inside(i.collar_from), inside(i.collar_to), i.depth];
    at.sort_by(f64::total_cmp);
    at
}

/// Stretches shorter than a millimetre are left out: they change nothing and spoil the arithmetic.
const SHORTEST_M: f64 = 0.001;

fn stretches(i: &Elastic<f64>) -> (Vec<Stretch>, usize, usize) {
    let mut all = Vec::with_capacity(64);
    let free = |length: f64| Stretch { length, stiffness: i.post, springs: (0.0, 0.0) };
    let (high, low) = (i.height.max(i.arm), i.height.min(i.arm));
    all.extend([high - low, low].into_iter().filter(|l| SHORTEST_M <= *l).map(free));
    let ground = all.len();
    let pushed_at = usize::from(SHORTEST_M <= i.height - i.arm);
    for pair in breaks(i).windows(2) {
        let whole = pair[1] - pair[0];
        if whole < SHORTEST_M {
            continue;
        }
        let parts = (ELEMENTS * whole / i.depth).ceil().max(1.0);
        let middle = (pair[0] + pair[1]) / 2.0;
        let collared = 0.0 < i.collar && i.collar_from <= middle && middle <= i.collar_to;
        let held = i.neglected <= middle;
        let spring = |z: f64| if held { i.even + i.growth * (z - i.neglected) } else { 0.0 };
        for k in 0..parts as usize {
            let (from, to) = (pair[0] + whole * k as f64 / parts, pair[0] + whole * (k + 1) as f64 / parts);
            all.push(Stretch {
                length: to - from,
                stiffness: if collared { i.collar.max(i.post) } else { i.post },
                springs: (spring(from), spring(to)),
            });
        }
    }
    (all, ground, pushed_at)
}

/// Movement of an elastic post in ground that yields like springs; `None` where nothing holds it.
///
/// # Source
/// Beam on springs (Winkler), by finite elements: Bowles, Foundation Analysis and Design, 5th ed., 16-15. Springs: n_h z in sand
/// (Reese & Matlock 1956, Terzaghi 1955), k b in stiff clay (Davisson 1970). Checked against Hetényi's closed form for even
/// springs and Reese & Matlock's factors for springs that grow.
/// # Symbols
/// P at h, D depth, K₀ + n_h z springs per metre of post, EI post, EI_c with its collar between z₁ and z₂.
/// # Gives
/// Movement at the ground and at a height, lean, greatest moment and its depth.
/// # Not for
/// Pushes near the ultimate one; creep of soft clay; a collar that is cracked through (halve its stiffness).
/// # Errors
/// The working refuses a post that ends in the layer left out, and ground without stiffness.
/// # By hand
/// A long post in sand: T = (EI/n_h)^(1/5), y = 2.435 P T³/EI + 1.623 P h T²/EI (EP-MR1).
pub fn elastic_post(i: &Elastic<f64>) -> Option<ElasticMoved<f64>> {
    if i.depth <= i.neglected || (i.even == 0.0 && i.growth == 0.0) {
        return None;
    }
    let (stretches, ground, pushed_at) = stretches(i);
    let found = pushed(&stretches, pushed_at, i.force)?;
    let top_at = match () {
        () if i.height < SHORTEST_M => ground,
        () if SHORTEST_M <= i.arm - i.height => 1,
        () => 0,
    };
    let mut depth = 0.0;
    let mut most = (0.0, 0.0);
    for (k, at) in found.iter().enumerate().skip(ground) {
        if most.0 < at.moment {
            most = (at.moment, depth);
        }
        depth += stretches.get(k).map_or(0.0, |s| s.length);
    }
    let At { aside, slope, .. } = found[ground];
    Some(ElasticMoved { ground: aside, lean: -slope, top: found[top_at].aside, moment: most.0, at: most.1 })
}

/// A post and its collar, as a beam.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PostBeam {
    /// Modulus of elasticity of the post.
    pub modulus: Pressure,
    /// Its second moment of area, mm⁴.
    pub inertia_mm4: f64,
    /// Its concrete collar, if it has one.
    pub collar: Option<Collar>,
}

/// A concrete collar around a post.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Collar {
    /// Diameter.
    pub diameter: Length,
    /// Its top below the ground in front.
    pub from: Length,
    /// Its foot below the ground in front.
    pub to: Length,
    /// Cylinder strength of its concrete.
    pub strength: Pressure,
}

impl Collar {
    /// Its own bending stiffness, kNm²: E_cm = 22 (f_cm/10)^0.3 GPa (EN 1992-1-1, Table 3.1), half of the full round, since
    /// concrete without steel cracks (common practice, no source).
    pub fn stiffness(&self) -> f64 {
        let modulus_kpa = 22e6 * math::powf((self.strength.to_mpa() + 8.0) / 10.0, 0.3);
        let d = self.diameter.to_m();
        modulus_kpa * std::f64::consts::PI * d * d * d * d / 64.0 / 2.0
    }
}

/// How a post moves as a beam on springs.
#[derive(Debug, Clone, PartialEq)]
pub struct BeamMoved {
    /// At the ground in front.
    pub ground: Length,
    /// Its lean at the ground.
    pub lean: Slope,
    /// At the height asked for, the post bent.
    pub top: Length,
    /// Greatest moment in the post.
    pub moment: Moment,
    /// Its depth below the ground in front.
    pub moment_depth: Length,
    /// Its working.
    pub trace: Trace,
}

/// How far the post of a case moves at the ground and at a height above it, as an elastic beam with its collar.
///
/// # Errors
/// Where a value is out of range, or the post ends within the layer that is not counted on.
pub fn beam_deflection(
    case: &Case,
    depth: Length,
    subgrade: Subgrade,
    post: &PostBeam,
    height: Length,
) -> Result<BeamMoved> {
    let width = case.width.to_m();
    let (even, growth) = match subgrade {
        Subgrade::Grows(n) => (0.0, n.to_kn_per_m3()),
        Subgrade::Even(k) => (k.to_kn_per_m3() * width, 0.0),
    };
    let bare = post.modulus.to_kpa() * post.inertia_mm4 * 1e-12;
    let (collar, collar_from, collar_to) =
        post.collar.map_or((0.0, 0.0, 0.0), |c| (bare + c.stiffness(), c.from.to_m(), c.to.to_m()));
    let (i, trace) = Elastic {
        force: case.force.to_kn(),
        arm: case.arm.to_m(),
        height: height.to_m(),
        depth: depth.to_m(),
        neglected: case.neglected.to_m(),
        even,
        growth,
        post: bare,
        collar,
        collar_from,
        collar_to,
    }
    .traced(&ELASTIC_POST)?;
    let m = elastic_post(&i).ok_or_else(|| no(&ELASTIC_POST, LOOSE))?;
    Ok(BeamMoved {
        ground: Length::m(m.ground),
        lean: Slope::ratio(m.lean),
        top: Length::m(m.top),
        moment: Moment::knm(m.moment),
        moment_depth: Length::m(m.at),
        trace,
    })
}

const LOOSE: &str =
    "nothing holds the post: it ends within the layer that is not counted on, or the ground has no stiffness";

/// Working of [`elastic_post`].
pub static ELASTIC_POST: Working = Working {
    name: "embed/elastic-post",
    title: "Movement and moment of a post as a beam in springy ground, with its collar.",
    source: Source {
        work: "Bowles, Foundation Analysis and Design, 5th ed.; Hetényi, Beams on Elastic Foundation, 1946; Reese & Matlock, \
               Non-dimensional Solutions for Laterally Loaded Piles, 1956",
        place: "16-15, finite elements on springs; checked against the closed forms of the others",
    },
    not_for: "pushes near the ultimate one; creep of soft clay",
    inputs: Elastic::INPUTS,
    outputs: ElasticMoved::OUTPUTS,
    run: |g| {
        let i = Elastic::put(g)?;
        let m = elastic_post(&i.values()).ok_or_else(|| g.no_answer(LOOSE))?;
        let s = g.sheet();
        if 0.0 < i.growth.value() {
            let fifth: Shown<'_> = (i.post / i.growth).powf(0.2);
            let _ = fifth.named("T", Unit::M);
        }
        s.remark(
            "The post is cut into 48 beam elements on springs; the push is balanced by them (displacement method):",
        );
        let put = |symbol, value, unit| s.put(symbol, value, unit).named(symbol, unit);
        ElasticMoved {
            ground: put("y_g", m.ground, Unit::M),
            lean: put("θ", m.lean, Unit::NONE),
            top: put("y_t", m.top, Unit::M),
            moment: put("M", m.moment, Unit::KNM),
            at: put("z_M", m.at, Unit::M),
        }
        .found()
    },
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::embed::deflection::{Rigid, sand_moved};

    fn post() -> Elastic<f64> {
        Elastic {
            force: 2.0,
            arm: 0.3,
            height: 1.0,
            depth: 0.8,
            neglected: 0.1,
            even: 0.0,
            growth: 6600.0,
            post: 1e7,
            collar: 0.0,
            collar_from: 0.0,
            collar_to: 0.0,
        }
    }

    #[test]
    fn a_very_stiff_post_moves_as_broms_rigid_one() {
        let i = post();
        let rigid =
            Rigid { force: 2.0, arm: 0.3, depth: 0.8, width: 0.3, stiffness: 6600.0, neglected: 0.1, height: 1.0 };
        let (m, r) = (elastic_post(&i).unwrap(), sand_moved(&rigid));
        for (a, b) in [(m.ground, r.ground), (m.lean, r.lean), (m.top, r.top)] {
            assert!((a / b - 1.0).abs() < 1e-3, "{a} {b}");
        }
    }

    #[test]
    fn a_collar_never_lets_the_post_move_more_and_the_push_may_stand_above_or_below_the_height() {
        let bare = Elastic { post: 40.0, ..post() };
        let collared = Elastic { collar: 2000.0, collar_to: 0.8, ..bare };
        assert!(elastic_post(&collared).unwrap().top < elastic_post(&bare).unwrap().top);
        let at = |height| elastic_post(&Elastic { height, ..bare }).unwrap().top;
        // Movement grows with the height and has no step where height meets arm.
        assert!(at(0.1) < at(0.2) && at(0.29) < at(0.31) && (at(0.3005) - at(0.2995)).abs() < 1e-3);
        assert!((at(0.0) - elastic_post(&bare).unwrap().ground).abs() < 1e-12);
        assert!((at(0.0011) - at(0.0009)).abs() < 1e-4);
    }
}
