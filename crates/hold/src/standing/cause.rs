//! Which causes can bring a standing wall out of line?

/// A cause that can be asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// Water stands behind it: no drain, or a blocked one.
    Water,
    /// Something was put behind it that was not there when it was built.
    Load,
    /// The ground in front was dug away.
    ToeDug,
    /// The posts are too short, or the body is too thin.
    TooSmall,
    /// Rot has taken the section.
    Rot,
    /// The soil has softened.
    Softened,
}

impl Cause {
    /// All of them, in the order of the sheet.
    pub const ALL: [Cause; 6] =
        [Cause::Water, Cause::Load, Cause::ToeDug, Cause::TooSmall, Cause::Rot, Cause::Softened];
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Cause::Water => "water behind it, no drain",
            Cause::Load => "load added behind it",
            Cause::ToeDug => "ground in front dug away",
            Cause::TooSmall => "built too short or too thin",
            Cause::Rot => "rot at the ground",
            Cause::Softened => "soil softened",
        }
    }
}
