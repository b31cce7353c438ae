//! Which figures of a wall are worked out here, each as a working of its own?

mod board_load;
mod courses;
mod hole;
mod key;
mod net_weight;
mod post_bend;
mod post_shear;
mod push;
mod undrained_base;

pub use board_load::{BOARD_LOAD, board_load};
pub(crate) use courses::FITS;
pub use courses::{COURSES, CourseCount, courses};
pub use hole::{HOLE, HoleVolumes, hole};
pub use key::{KEY, key};
pub use net_weight::{NET_WEIGHT, net_weight};
pub use post_bend::{POST_BEND, post_bend};
pub use post_shear::{POST_SHEAR, post_shear};
pub use push::{PUSH, Push, push};
pub use undrained_base::{UNDRAINED_BASE, undrained_base};

use groundhold_working::Working;

/// All workings of this crate.
pub static WORKINGS: &[&Working] = &[
    &PUSH,
    &BOARD_LOAD,
    &COURSES,
    &HOLE,
    &POST_SHEAR,
    &POST_BEND,
    &NET_WEIGHT,
    &UNDRAINED_BASE,
    &KEY,
    &crate::standing::PUSH_AS_FOUND,
    &crate::standing::PUSH_IN_CLAY,
    &crate::standing::BY_WEIGHT,
    &crate::standing::SECTION_LEFT,
];
