//! How hard is one post pushed, and at what height above the ground in front?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// What one post must carry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Push<N> {
    /// Horizontal force, kN.
    pub force: N,
    /// Moment about the ground in front, kNm.
    pub moment: N,
    /// Height at which the force acts above the ground in front, m.
    pub arm: N,
}

/// Horizontal push on one post: its tributary width times every force per metre run.
///
/// # Source
/// Statics; each post takes the load of half a bay on either side: common practice, no source.
/// # Symbols
/// | F | forces per metre of wall | kN/m | a | their heights above the ground in front | m | γ | their factors | s | tributary width | m |
/// # Gives
/// P (kN), M (kNm) about the ground in front and the height e = M/P (m); e is nothing where P is nothing.
/// # Not for
/// Boards that span several bays without a joint: their inner posts take up to a quarter more.
/// # Errors
/// The lists must be of one length.
/// # By hand
/// 1.92 kN/m at 0.267 m over 1.2 m: P = 2.304 kN, M = 0.614 kNm, e = 0.267 m (case `WP-01`).
pub fn push<N: Number>(forces: &[N], arms: &[N], factors: &[N], width: N) -> Push<N> {
    let zero = N::constant(0.0);
    let (mut sum, mut turning) = (zero, zero);
    for ((f, a), g) in forces.iter().zip(arms).zip(factors) {
        let factored = (*g * *f).named("γ·F", Unit::KN_M);
        sum = sum + factored;
        turning = turning + factored * *a;
    }
    let force = (width * sum).named("P", Unit::KN);
    let moment = (width * turning).named("M", Unit::KNM);
    let arm = if force.value().abs() > 0.0 { (moment / force).named("e", Unit::M) } else { zero };
    Push { force, moment, arm }
}

/// See [`push`].
pub static PUSH: Working = Working {
    name: "wall/push-per-post",
    title: "How hard is one post pushed, and how high above the ground in front?",
    source: Source { work: "statics; tributary width by common practice, no source", place: "" },
    not_for: "boards without a joint over several bays: inner posts take up to a quarter more",
    inputs: &[
        Input::new("forces", "F", "forces per metre of wall", Unit::KN_M, Limits::ours(-1000.0, 1000.0)),
        Input::new("arms", "a", "their heights above the ground in front", Unit::M, Limits::ours(-10.0, 20.0)),
        Input::new("factors", "γ", "their factors", Unit::NONE, Limits::ours(0.0, 3.0)),
        Input::new("width", "s", "tributary width of the post", Unit::M, Limits::ours(0.0, 20.0)),
    ],
    outputs: &[
        Output { key: "force", words: "force on the post", unit: Unit::KN },
        Output { key: "moment", words: "moment about the ground in front", unit: Unit::KNM },
        Output { key: "arm", words: "height of the force above the ground in front", unit: Unit::M },
    ],
    run: |g| {
        let (f, a, k) = (g.many("forces")?, g.many("arms")?, g.many("factors")?);
        if f.len() != a.len() || f.len() != k.len() {
            let why = format!("{} forces, {} arms and {} factors: expected as many of each", f.len(), a.len(), k.len());
            return Err(g.no_answer(why));
        }
        let p = push(&f, &a, &k, g.one("width")?);
        Ok(vec![Found::One(p.force), Found::One(p.moment), Found::One(p.arm)])
    },
};
