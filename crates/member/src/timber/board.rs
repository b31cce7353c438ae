//! Does a board between posts carry the soil, and how far does it bow?

use groundhold_quantity::{Force, Length, LineForce, Moment};
use groundhold_working::{Result, Trace};

use super::{
    Code, Duration, Effects, Grade, MemberCheck, Section, check_member, creep_factor,
    spans::{self, BOARD_BOW, Bowing, SPANS_EFFECTS, SpanFactors, Spanning, span_factors},
    stiffness,
};

/// The bay over this is how far a board may bow in the end, where nothing else is asked (common practice, no source).
pub const USUAL_BOW_LIMIT: f64 = 150.0;

/// A board over equal bays.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Board {
    /// Its section as it is loaded: for a board flat against posts breadth is its height, depth its thickness.
    pub section: Section,
    /// Centre to centre of posts.
    pub bay: Length,
    /// Bays that one board runs over.
    pub bays: usize,
    /// Load along the board that stays (soil): pressure times board height, not factored.
    pub permanent: LineForce,
    /// Load along the board that comes and goes, not factored.
    pub variable: LineForce,
    /// How long the variable load lasts.
    pub lasting: Duration,
    /// The bay over this is how far it may bow in the end; see [`USUAL_BOW_LIMIT`].
    pub bow_limit: f64,
}

/// Bow of a board.
#[derive(Debug, Clone, PartialEq)]
pub struct Bow {
    /// At first.
    pub first: Length,
    /// In the end, with creep.
    pub last: Length,
    /// Allowed.
    pub allowed: Length,
    /// Final over allowed.
    pub utilisation: f64,
    /// Its working.
    pub trace: Trace,
}

/// What a board does to itself and to its posts.
#[derive(Debug, Clone, PartialEq)]
pub struct BoardCheck {
    /// Moments and shears, not factored.
    pub effects: Effects,
    /// Greatest push on one post from this board, not factored: permanent, variable.
    pub reaction: (Force, Force),
    /// Working of the effects of the whole load.
    pub effects_trace: Trace,
    /// Bending and shear.
    pub strength: MemberCheck,
    /// Bow.
    pub bow: Bow,
}

impl BoardCheck {
    /// The worst of bending, shear and bow.
    pub fn utilisation(&self) -> f64 {
        self.strength.utilisation().max(self.bow.utilisation)
    }
}

/// Judges a board in bending, shear and bow.
///
/// # Errors
/// Where grade and rules do not belong together, or a value is out of range.
pub fn check_board(board: &Board, grade: &Grade, code: &Code) -> Result<BoardCheck> {
    let factors = span_factors(board.bays);
    let (permanent, trace) = effects_of(board, board.permanent, &factors)?;
    let (variable, _) = effects_of(board, board.variable, &factors)?;
    let effects = Effects::permanent(permanent.0, permanent.1).with_variable(variable.0, variable.1, board.lasting);
    let effects_trace = match board.variable == LineForce::ZERO {
        true => trace,
        false => effects_of(board, board.permanent + board.variable, &factors)?.1,
    };
    Ok(BoardCheck {
        effects,
        reaction: (permanent.2, variable.2),
        effects_trace,
        strength: check_member(grade, &board.section, code, &effects, Length::ZERO)?,
        bow: bow(board, grade, code, &factors)?,
    })
}

type Found = (Moment, Force, Force);

fn effects_of(board: &Board, load: LineForce, k: &SpanFactors) -> Result<(Found, Trace)> {
    let (i, trace) = Spanning { load: load.to_kn_per_m(), span: board.bay.to_m(), spans: board.bays as f64 }
        .traced(&SPANS_EFFECTS)?;
    let e = spans::spanning(&i, k.moment, k.shear, k.reaction);
    Ok(((Moment::knm(e.moment), Force::kn(e.shear), Force::kn(e.reaction)), trace))
}

fn bow(board: &Board, grade: &Grade, code: &Code, k: &SpanFactors) -> Result<Bow> {
    let (i, trace) = Bowing {
        permanent: board.permanent.to_kn_per_m(),
        variable: board.variable.to_kn_per_m(),
        span: board.bay.to_m(),
        spans: board.bays as f64,
        stiffness: stiffness(grade, &board.section, code).to_mpa(),
        inertia: board.section.inertia_mm4(),
        creep: creep_factor(code),
        limit: board.bow_limit,
    }
    .traced(&BOARD_BOW)?;
    let b = spans::bowing(&i, k.bow);
    Ok(Bow {
        first: Length::mm(b.first),
        last: Length::mm(b.last),
        allowed: Length::mm(b.allowed),
        utilisation: b.utilisation,
        trace,
    })
}
