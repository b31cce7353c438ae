//! Does a concrete stem, toe or heel carry its moment and shear, and with how much steel and cover?
//!
//! Two bodies of rules, EN 1992-1-1 and ACI 318. A strip one metre wide is judged by [`check_strip`]; mass and lean concrete
//! without steel by [`check_plain`]. Cover by exposure: [`least_cover`].
//!
//! ```
//! use groundhold_member::concrete::{Rules, Strip, check_strip};
//! use groundhold_quantity::{Area, Force, Length, Moment, Pressure};
//!
//! let stem = Strip {
//!     thickness: Length::mm(250.0),
//!     effective: Length::mm(200.0),
//!     steel_per_m: Area::mm2(565.0), // 12 mm bars at 200 mm
//!     strength: Pressure::mpa(30.0),
//!     yield_stress: Pressure::mpa(500.0),
//! };
//! let found = check_strip(&stem, Rules::En1992, (Moment::knm(40.0), Force::kn(35.0)))?;
//! assert!(found.bending.utilisation < 1.0 && found.shear.utilisation < 1.0);
//! # Ok::<(), groundhold_working::Refused>(())
//! ```

mod aci318;
mod cover;
mod en1992;
mod lap;
mod plain;
mod strip;

pub use aci318::{ACI_BENDING, ACI_SHEAR, AciBending, AciBent, AciShear, AciSheared, aci_bending, aci_shear};
pub use cover::{CastAgainst, Exposure, least_cover};
pub use en1992::{
    EN2_BENDING, EN2_CRACKS, EN2_SHEAR, StripBending, StripBent, StripCracked, StripCracks, StripShear, StripSheared,
    en2_bending, en2_cracks, en2_shear, mean_tension,
};
pub use lap::{ACI_HOOK, ACI_LAP, AciHook, AciHooked, AciLap, EN2_LAP, En2Lap, Lapped, aci_hook, aci_lap, en2_lap};
pub use plain::{PLAIN_ACI, PLAIN_EN2, Plain, PlainBent, PlainEn, PlainUs, check_plain, plain_aci, plain_en2};
pub use strip::{Rules, Strip, StripCheck, check_strip};
