//! Does a board or a post carry its load, and how far does it bow?
//!
//! Three bodies of rules, each with its own grades: EN 1995-1-1, the US National Design Specification, AS 1720.1.
//! [`check_member`] judges a section, [`check_board`] a board over bays with its bow.

mod as1720;
mod board;
mod code;
mod decay;
mod details;
mod en1995;
mod grade;
mod grades;
mod member;
mod nds;
mod rot;
mod section;
mod size;
mod spans;
mod upright;

pub use as1720::{
    AS_BENDING, AS_SHEAR, AS_STABILITY, AsBending, AsCapacity, AsShear, AsSlender, AsStability, as_bending, as_shear,
    as_stability, j2, k1, k4, rho,
};
pub use board::{Board, BoardCheck, Bow, USUAL_BOW_LIMIT, check_board};
pub use code::{Code, Duration, Effects, LoadFactors, MemberCheck, Use};
pub use decay::{DECAY, Decay, after_years, decay};
pub use details::{
    DetailHolds, EN_BEARING, EN_NOTCH, EnBearing, EnNotch, NDS_BEARING, NDS_NOTCH, NdsBearing, NdsNotch, ct,
    en_bearing, en_notch, nds_bearing, nds_notch,
};
pub use en1995::{EN_BENDING, EN_SHEAR, EnBending, EnShear, GAMMA_M, KCR, Stressed, en_bending, en_shear, kdef, kmod};
pub use grade::{Family, Grade, UnknownGrade, grade, grade_names};
pub use grades::{AS_1720, EN_338, NDS, NZ};
pub use member::{check_member, creep_factor, stiffness};
pub use nds::{
    NDS_BENDING, NDS_SHEAR, NdsBending, NdsFactors, NdsShear, cd, nds_bending, nds_creep, nds_factors, nds_shear,
};
pub use rot::{Ageing, Climate, Durability, InYear, ROT_IN_GROUND, Rotted, Rotting, in_year, rot, rot_of, used_up_in};
pub use section::{Rectangle, Round, SECTION_RECTANGLE, SECTION_ROUND, Section, SectionFigures, rectangle, round};
pub use size::{SIZE, Sizing, sizing};
pub use spans::{
    BOARD_BOW, BowFigures, Bowing, MOST_SPANS, SPANS_EFFECTS, SpanEffects, SpanFactors, Spanning, bowing, span_factors,
    spanning,
};
pub use upright::{Bend, POST_BEND, Upright, bend_of_post, upright};
