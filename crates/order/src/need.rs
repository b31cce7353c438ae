//! What is needed: how much of which item, for which element, and why.

use groundhold_quantity::{Area, Density, Length, Mass, Share, Time, Volume};
use groundhold_working::Trace;

/// The head of the quote under which a line stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Head {
    /// Bought and built in.
    #[default]
    Materials,
    /// Hours of people.
    Labour,
    /// Machines and their transport.
    Machine,
    /// What is carted away and tipped.
    Disposal,
    /// Bringing it.
    Delivery,
    /// Set aside for what is not known yet.
    Provisional,
}

impl Head {
    /// Every head, in the order of the quote.
    pub const ALL: [Head; 6] =
        [Head::Materials, Head::Labour, Head::Machine, Head::Disposal, Head::Delivery, Head::Provisional];
    /// The word on paper.
    pub fn word(self) -> &'static str {
        match self {
            Head::Materials => "Materials",
            Head::Labour => "Labour",
            Head::Machine => "Machine",
            Head::Disposal => "Disposal",
            Head::Delivery => "Delivery",
            Head::Provisional => "Provisional sums",
        }
    }
}

/// How much is needed.
#[derive(Debug, Clone, PartialEq)]
pub enum Measured {
    /// So many.
    Count(f64),
    /// So long in all.
    Length(Length),
    /// An area.
    Area(Area),
    /// A volume, as it is bought (loose stone, wet concrete).
    Volume(Volume),
    /// A mass.
    Mass(Mass),
    /// Working time.
    Time(Time),
    /// Single pieces cut from stock lengths: mark and length of each.
    Pieces(Vec<(String, Length)>),
}

impl Measured {
    /// The figure in its SI base unit; for pieces their length in all.
    pub fn si(&self) -> f64 {
        match self {
            Measured::Count(n) => *n,
            Measured::Length(l) => l.to_m(),
            Measured::Area(a) => a.to_m2(),
            Measured::Volume(v) => v.to_m3(),
            Measured::Mass(m) => m.to_kg(),
            Measured::Time(t) => t.si(),
            Measured::Pieces(p) => p.iter().map(|(_, l)| l.to_m()).sum(),
        }
    }
    /// What kind of figure it is, in words.
    pub fn kind(&self) -> &'static str {
        match self {
            Measured::Count(_) => "a count",
            Measured::Length(_) => "a length",
            Measured::Area(_) => "an area",
            Measured::Volume(_) => "a volume",
            Measured::Mass(_) => "a mass",
            Measured::Time(_) => "a time",
            Measured::Pieces(_) => "pieces of a length",
        }
    }
}

/// So much of an item for an element, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Need {
    /// Under which head of the quote.
    pub head: Head,
    /// The item's name in the price list.
    pub item: String,
    /// The element by its spoken id: `W1`; empty for the whole job.
    pub element: String,
    /// What for, in words: "boards", "concrete around posts".
    pub what: String,
    /// How much, net.
    pub quantity: Measured,
    /// Allowance on top for offcuts, breakage and spillage. For [`Measured::Pieces`] the cutting list counts the
    /// offcuts, so this adds whole spare stock lengths and is usually nothing.
    pub waste: Share,
    /// Density as delivered, where a volume may have to be bought by mass.
    pub density: Option<Density>,
    /// The working behind the quantity.
    pub why: Option<Trace>,
}

impl Need {
    /// A material for an element, without waste.
    pub fn new(item: impl Into<String>, element: impl Into<String>, what: impl Into<String>, q: Measured) -> Need {
        Need {
            head: Head::Materials,
            item: item.into(),
            element: element.into(),
            what: what.into(),
            quantity: q,
            waste: Share::ZERO,
            density: None,
            why: None,
        }
    }
    /// The same under another head.
    pub fn under(mut self, head: Head) -> Need {
        self.head = head;
        self
    }
    /// The same with an allowance for waste.
    pub fn wasting(mut self, waste: Share) -> Need {
        self.waste = waste;
        self
    }
    /// The same with its density as delivered.
    pub fn dense(mut self, density: Density) -> Need {
        self.density = Some(density);
        self
    }
    /// The same with the working behind it.
    pub fn because(mut self, why: Trace) -> Need {
        self.why = Some(why);
        self
    }
}
