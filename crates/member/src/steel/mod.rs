//! Does a steel post carry its moment and shear, new and after years of rust?
//!
//! Two bodies of rules: EN 1993-1-1 and ANSI/AISC 360 allowable strength. [`check_steel`] judges a profile of the
//! [`CATALOGUE`] or one of your own; [`corrosion`] says what rust takes by EN 1993-5.
//!
//! ```
//! use groundhold_member::steel::{Rules, Steel, check_steel, profile};
//! use groundhold_quantity::{Force, Length, Moment};
//!
//! let post = profile("HEB100")?;
//! let found = check_steel(&post.shape, Steel::S275, Rules::En1993, (Moment::knm(12.0), Force::kn(15.0)), Length::ZERO)?;
//! assert!((found.bending.capacity.to_knm() - 28.66).abs() < 0.05);
//! # Ok::<(), groundhold_working::Refused>(())
//! ```

mod aisc;
mod catalogue;
mod corrosion;
mod en1993;
mod member;
mod section;

pub use aisc::{AISC_BENDING, AISC_SHEAR, AiscBending, AiscBent, AiscShear, AiscSheared, aisc_bending, aisc_shear};
pub use catalogue::{CATALOGUE, Profile, profile, profile_names};
pub use corrosion::{CORROSION, Corroded, Corroding, Exposure, corrosion, loss_per_side};
pub use en1993::{EN3_BENDING, EN3_SHEAR, SteelBending, SteelBent, SteelShear, SteelSheared, en3_bending, en3_shear};
pub use member::{Rules, Steel, SteelCheck, check_steel};
pub use section::{
    ChannelSides, HollowSides, ISides, SECTION_CHANNEL, SECTION_HOLLOW, SECTION_I, Shape, SteelFigures,
    section_channel, section_hollow, section_i,
};
