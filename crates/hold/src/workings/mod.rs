//! Which figures of a wall are worked out here, each as a working of its own?

mod board_load;
mod courses;
mod cross_piece;
mod flange;
mod hole;
mod key;
mod net_weight;
mod over_joint;
mod post_bend;
mod post_shear;
mod push;
mod tie;
mod tied_timber;
mod undrained_base;
mod zinc;

pub use board_load::{BOARD_LOAD, board_load};
pub(crate) use courses::FITS;
pub use courses::{COURSES, CourseCount, courses};
pub use cross_piece::{CROSS_PIECE, CROSS_PIECE_CLAY, CrossPiece, cross_piece, cross_piece_clay};
pub use flange::{FLANGE, flange};
pub use hole::{HOLE, HoleVolumes, hole};
pub use key::{KEY, key};
pub use net_weight::{NET_WEIGHT, net_weight};
pub use over_joint::{OVER_JOINT, over_joint};
pub use post_bend::{POST_BEND, post_bend};
pub use post_shear::{POST_SHEAR, post_shear};
pub use push::{PUSH, Push, push};
pub use tie::{TIE, tie};
pub use tied_timber::{TIED_TIMBER, tied_timber};
pub use undrained_base::{UNDRAINED_BASE, undrained_base};
pub use zinc::{ZINC_LIFE, zinc_life};

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
    &ZINC_LIFE,
    &FLANGE,
    &CROSS_PIECE,
    &CROSS_PIECE_CLAY,
    &TIED_TIMBER,
    &TIE,
    &OVER_JOINT,
    &KEY,
    &crate::standing::PUSH_AS_FOUND,
    &crate::standing::PUSH_IN_CLAY,
    &crate::standing::BY_WEIGHT,
    &crate::standing::SECTION_LEFT,
];
