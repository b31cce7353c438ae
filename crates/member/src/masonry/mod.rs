//! Does a masonry stem carry its moment and shear, plain or with bars in filled blocks?
//!
//! EN 1996-1-1 wants factored effects, TMS 402 allowable stress takes them as they are. [`check_plain_masonry`] and
//! [`check_reinforced_masonry`] judge a metre of wall.

mod en1996;
mod stem;
mod tms;
mod values;

pub use en1996::{
    EN6_FLEXURE, EN6_REINFORCED, EN6_SHEAR, FilledBent, FilledStem, JointShear, JointSheared, PlainFlexed,
    PlainFlexure, en6_flexure, en6_reinforced, en6_shear,
};
pub use stem::{MasonryCheck, PlainMasonry, ReinforcedMasonry, Rules, check_plain_masonry, check_reinforced_masonry};
pub use tms::{
    TMS_CRACKED, TMS_PLAIN, TMS_SHEAR, TmsCracked, TmsFlexed, TmsPlain, TmsShear, TmsSheared, TmsStem, tms_cracked,
    tms_plain, tms_shear,
};
pub use values::{
    BedJoint, FLEXURAL_EN, FLEXURAL_TMS, FlexuralEn, FlexuralTms, VALUES_EN_SOURCE, VALUES_TMS_SOURCE, flexural_en,
    flexural_tms,
};
