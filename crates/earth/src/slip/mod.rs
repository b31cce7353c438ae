//! Does the bank slip as a whole, through the ground and under the wall, and by which circle first?

mod bishop;
pub mod hand;
mod profile;
mod search;

pub use bishop::{BISHOP_CIRCLE, BISHOP_GIVEN_SLICES, FELLENIUS_GIVEN_SLICES};
pub use search::BISHOP_SEARCH;

use groundhold_quantity::{Length, Level, Point, Pressure};
use groundhold_working::{Refused, Result, Trace};

use crate::soil::Soil;
use profile::Profile;

/// Ground of one soil, below a line.
#[derive(Debug, Clone, PartialEq)]
pub struct Layer {
    /// What it is made of. For undrained clay hand in φ = 0 and the undrained strength as cohesion.
    pub soil: Soil,
    /// Its upper boundary, x rising, carried on level beyond its ends. Empty for the first layer, which begins at the
    /// ground.
    pub top: Vec<Point>,
}

/// Water in the ground.
#[derive(Debug, Clone, PartialEq)]
pub enum Pore {
    /// None.
    Dry,
    /// r_u: pore pressure as a share of the weight of soil above.
    Ratio(f64),
    /// A water table, x rising, carried on level beyond its ends. Pore pressure is hydrostatic below it. Where it is
    /// drawn above the ground, the ground is taken instead: water standing in front does not help.
    Table(Vec<Point>),
}

/// A load on the ground between two places of the section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GroundLoad {
    /// How much, per plan area.
    pub value: Pressure,
    /// From this x.
    pub from: Length,
    /// To this x; may be infinite.
    pub to: Length,
}

/// A crack at the upper end of the slip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crack {
    /// How deep.
    pub depth: Length,
    /// How high water stands in it.
    pub water: Length,
}

/// A vertical section through the bank, one metre thick. A point's x runs along the section, its y is the level.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// The ground line, x never falling; a wall's face is two points with the same x. It may rise to either side. It
    /// should reach two or three heights of the bank beyond toe and crest.
    pub ground: Vec<Point>,
    /// Layers from the top down; at least one.
    pub layers: Vec<Layer>,
    /// Water.
    pub pore: Pore,
    /// Loads on the ground.
    pub loads: Vec<GroundLoad>,
    /// Rock or other hard ground, below which no circle goes.
    pub hard: Option<Level>,
    /// A crack.
    pub crack: Option<Crack>,
}

/// What to look for.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Search {
    /// Circles must pass this place at it or below it: the tip of a post, the heel of a base. Slips that would cut above
    /// it, between the posts, are left out by choice; they are the wall's own checks.
    pub under: Option<Point>,
    /// Circles must reach this deep somewhere. Keeps skins of dry sand out, whose factor is tan φ / tan β anyway.
    pub least_depth: Length,
}

/// The circle that slips first.
#[derive(Debug, Clone, PartialEq)]
pub struct Slip {
    /// Factor of safety after Bishop: resisting over driving moment. Below the factor that the basis wants, the bank
    /// needs another shape or an engineer.
    pub factor: f64,
    /// Centre of the circle.
    pub centre: Point,
    /// Its radius.
    pub radius: Length,
    /// Where it comes out, low on the bank.
    pub exit: Point,
    /// Where it begins, high on the bank, at the foot of the crack if there is one.
    pub entry: Point,
    /// How many circles were tried.
    pub tried: usize,
    /// True where the worst circle runs to the end of the drawn section: a longer section may find a worse one.
    pub at_end_of_section: bool,
    /// How its factor was worked out.
    pub trace: Trace,
}

impl Section {
    /// A section of one soil, dry and unloaded.
    pub fn of(soil: Soil, ground: Vec<Point>) -> Section {
        Section {
            ground,
            layers: vec![Layer { soil, top: vec![] }],
            pore: Pore::Dry,
            loads: vec![],
            hard: None,
            crack: None,
        }
    }
    /// The circle with the least factor after Bishop, found by trying some ten thousand and closing in on the worst.
    /// The same section gives the same circle always, and its mirror image the mirrored one.
    ///
    /// # Errors
    /// [`Refused`] where the section cannot be read, or no circle can slip in it.
    pub fn critical(&self, search: &Search) -> Result<Slip> {
        let given = search::given(self, search);
        crate::rows::check(&BISHOP_SEARCH, &given)?;
        let no = |why: String| Refused::NoAnswer { working: BISHOP_SEARCH.name, why };
        let profile = Profile::of(self, crate::rows::radians).map_err(no)?;
        let found = search::worst(&profile, search).ok_or_else(|| no(search::NO_SLIP.into()))?;
        let mut of_circle = given[..given.len() - search::ONLY_SEARCH].to_vec();
        let (exit, entry) = (profile.outward(found.arc.exit), profile.outward(found.arc.entry));
        of_circle.extend([exit.x.into(), entry.x.into(), found.arc.radius.into()]);
        Ok(Slip {
            factor: found.factor,
            centre: profile.outward(found.arc.centre),
            radius: Length::m(found.arc.radius),
            exit,
            entry,
            tried: found.tried,
            at_end_of_section: found.at_end,
            trace: Trace::new(&BISHOP_CIRCLE, of_circle),
        })
    }
    /// The factor after Bishop of the circle of this radius that comes out at one x and begins at another; `None` where
    /// that circle leaves the ground, goes below the hard level, or nothing drives it.
    ///
    /// # Errors
    /// [`Refused`] where the section cannot be read.
    pub fn factor(&self, exit: Length, entry: Length, radius: Length) -> Result<Option<f64>> {
        let profile = Profile::of(self, crate::rows::radians)
            .map_err(|why| Refused::NoAnswer { working: BISHOP_CIRCLE.name, why })?;
        let arc = profile.arc(profile.inward(exit.to_m()), profile.inward(entry.to_m()), radius.to_m());
        Ok(arc.and_then(|a| bishop::factor(&profile, &a, &mut vec![])))
    }
}
