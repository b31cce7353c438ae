//! How much pull does a tie with a cross piece at its end take in the bank?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// What a cross piece and the tie before it are.
#[derive(Debug, Clone, Copy)]
pub struct CrossPiece<N> {
    /// Effective weight of the ground on its middle, kPa.
    pub pressed: N,
    /// Friction angle.
    pub phi: N,
    /// Height of the cross piece, m.
    pub height: N,
    /// Its length along the wall, no more than from tie to tie, m.
    pub length: N,
    /// Breadth of the tie, m.
    pub breadth: N,
    /// Length of the tie that lies beyond the wall's wedge, m.
    pub beyond: N,
    /// Friction angle of soil on timber.
    pub delta: N,
    /// Wanted ratio of ultimate to pull.
    pub factor: N,
}

/// Passive pressure on the cross piece less active pressure behind it, and friction on top and underside of the tie.
///
/// # Source
/// Rankine's pressures (1857) over the height of the piece itself: less than NAVFAC DM 7.02 (1986), chapter 3, counts for a
/// block that is at least half as high as it lies deep, and without the ends that Teng, Foundation Design (1962), adds; friction
/// of the tie from statics. Derived here, on the careful side.
/// # Symbols
/// | σ′ | effective weight of the ground on the middle of the piece | kPa | φ, δ | friction of the soil, and on timber | ° |
/// | h, l | height and length of the piece | m | b | breadth of the tie | m | L_b | tie beyond the wedge | m | F | wanted factor | – |
/// # Gives
/// (front, friction, ultimate, allowable), kN.
/// # Not for
/// A piece within the soil that slides with the wall: see `anchor/place`. Undrained clay: see `wall/cross-piece-clay`.
/// # Errors
/// None but the limits.
/// # By hand
/// σ′ 10.8 kPa, φ 30°, h 0.15, l 1.2: 2.667·10.8·0.18 = 5.18 kN; b 0.15, L_b 1, δ 20°: 2·0.15·10.8·0.364 = 1.18 kN; together 6.36,
/// with F 2 3.18 kN (case `STK-01`).
pub fn cross_piece<N: Number>(i: &CrossPiece<N>) -> (N, N, N, N) {
    let kp = (N::degrees(45.0) + i.phi / 2.0).tan().squared().named("K_p", Unit::NONE);
    let ka = (N::degrees(45.0) - i.phi / 2.0).tan().squared().named("K_a", Unit::NONE);
    let front = ((kp - ka) * i.pressed * i.height * i.length).named("P_f", Unit::KN);
    let rubs = (i.breadth * i.beyond * i.pressed * i.delta.tan() * 2.0).named("P_δ", Unit::KN);
    let ultimate = (front + rubs).named("P_u", Unit::KN);
    (front, rubs, ultimate, (ultimate / i.factor).named("P_a", Unit::KN))
}

/// See [`cross_piece`].
pub static CROSS_PIECE: Working = Working {
    name: "wall/cross-piece",
    title: "How much pull does a tie with a cross piece take in the bank?",
    source: Source {
        work: "Rankine, On the Stability of Loose Earth, Phil. Trans. R. Soc. 147, 1857; NAVFAC DM 7.02, 1986",
        place: "pressures over the piece itself, derived here; chapter 3 for what is left out; from memory",
    },
    not_for: "a piece within the soil that slides with the wall (anchor/place); undrained clay",
    inputs: &[
        Input::new(
            "pressed",
            "σ'",
            "effective weight of the ground on the middle of the piece",
            Unit::KPA,
            Limits::ours(0.0, 500.0),
        ),
        Input::new("phi", "φ", "friction angle", Unit::DEG, Limits::ours(5.0, 50.0)),
        Input::new("height", "h", "height of the piece", Unit::M, Limits::ours(0.02, 1.0)),
        Input::new(
            "length",
            "l",
            "its length along the wall, no more than from tie to tie",
            Unit::M,
            Limits::ours(0.02, 6.0),
        ),
        Input::new("breadth", "b", "breadth of the tie", Unit::M, Limits::ours(0.0, 1.0)),
        Input::new("beyond", "L_b", "length of the tie beyond the wall's wedge", Unit::M, Limits::ours(0.0, 20.0))
            .or(0.0),
        Input::new("delta", "δ", "friction angle of soil on timber", Unit::DEG, Limits::ours(0.0, 45.0)).or(0.0),
        Input::new("factor", "F", "wanted ratio of ultimate to pull", Unit::NONE, Limits::ours(1.0, 5.0)).or(2.0),
    ],
    outputs: &[
        Output { key: "front", words: "resistance before the piece", unit: Unit::KN },
        Output { key: "rubs", words: "friction of the tie", unit: Unit::KN },
        Output { key: "ultimate", words: "ultimate pull", unit: Unit::KN },
        Output { key: "allowable", words: "allowable pull", unit: Unit::KN },
    ],
    run: |g| {
        let (front, rubs, ultimate, allowable) = cross_piece(&CrossPiece {
            pressed: g.one("pressed")?,
            phi: g.one("phi")?,
            height: g.one("height")?,
            length: g.one("length")?,
            breadth: g.one("breadth")?,
            beyond: g.one("beyond")?,
            delta: g.one("delta")?,
            factor: g.one("factor")?,
        });
        Ok([front, rubs, ultimate, allowable].map(Found::One).into())
    },
};

/// A cross piece in clay that has no time to drain: twice its strength over the piece itself.
///
/// # Source
/// Passive 2c + γz before the piece less active γz − 2c (not below 0) behind it is nowhere less than 2c: NAVFAC DM 7.02 (1986),
/// chapter 3, from memory; over the height of the piece only, on the careful side.
/// # Symbols
/// | c_u | undrained strength | kPa | h, l | height and length of the piece | m | F | wanted factor | – |
/// # Gives
/// (ultimate, allowable), kN.
/// # Not for
/// Clay that drains, which is judged by its friction too.
/// # Errors
/// None but the limits.
/// # By hand
/// c_u 25, h 0.15, l 1.2: 9 kN, with F 2 4.5 kN (case `STK-02`).
pub fn cross_piece_clay<N: Number>(strength: N, height: N, length: N, factor: N) -> (N, N) {
    let ultimate = (strength * height * length * 2.0).named("P_u", Unit::KN);
    (ultimate, (ultimate / factor).named("P_a", Unit::KN))
}

/// See [`cross_piece_clay`].
pub static CROSS_PIECE_CLAY: Working = Working {
    name: "wall/cross-piece-clay",
    title: "How much pull does a cross piece take in undrained clay?",
    source: Source {
        work: "NAVFAC DM 7.02, 1986",
        place: "chapter 3, anchorage in cohesive soil; from memory, lowered",
    },
    not_for: "clay that drains: judge it with its friction too",
    inputs: &[
        Input::new("strength", "c_u", "undrained strength", Unit::KPA, Limits::ours(1.0, 500.0)),
        Input::new("height", "h", "height of the piece", Unit::M, Limits::ours(0.02, 1.0)),
        Input::new("length", "l", "its length along the wall", Unit::M, Limits::ours(0.02, 6.0)),
        Input::new("factor", "F", "wanted ratio of ultimate to pull", Unit::NONE, Limits::ours(1.0, 5.0)).or(2.0),
    ],
    outputs: &[
        Output { key: "ultimate", words: "ultimate pull", unit: Unit::KN },
        Output { key: "allowable", words: "allowable pull", unit: Unit::KN },
    ],
    run: |g| {
        let (u, a) = cross_piece_clay(g.one("strength")?, g.one("height")?, g.one("length")?, g.one("factor")?);
        Ok([u, a].map(Found::One).into())
    },
};
