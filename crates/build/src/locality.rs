//! What do frost, earthquakes, rain and rot ask for at a place, and where is that found?

use groundhold_quantity::{Length, RainIntensity};

use crate::Status;

/// How deep the underside of a base goes where the ground heaves in frost.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FrostRule {
    /// At least this deep below the ground in front, where the rule gives a figure.
    pub depth: Option<Length>,
    /// True where the office keeps a frost line of its own, which may be deeper.
    pub local: bool,
    /// The rule in our words.
    pub says: &'static str,
    /// Title and place of the rule.
    pub source: &'static str,
    /// How far it is confirmed.
    pub status: Status,
}

/// A figure of the very place, which no pack can give: where it is looked up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LookUp {
    /// What is looked up, in our words.
    pub says: &'static str,
    /// The published map, table or service.
    pub source: &'static str,
    /// How far it is confirmed.
    pub status: Status,
}

/// Design rain of a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RainRule {
    /// A figure that the rule itself takes where nobody looks closer; `None` where it gives none.
    pub intensity: Option<RainIntensity>,
    /// Which rain, and where it is looked up.
    pub says: &'static str,
    /// Title and place of the rule or record.
    pub source: &'static str,
    /// How far it is confirmed.
    pub status: Status,
}

/// Classes of treated timber, and which is asked for where.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TimberRule {
    /// All classes of the scheme, mildest first.
    pub ladder: &'static [&'static str],
    /// Posts that stand in the ground.
    pub post: &'static str,
    /// Boards with soil against them.
    pub board: &'static str,
    /// Posts of walls for which an approval or an engineer is asked, where the scheme sets them apart.
    pub relied_on: Option<&'static str>,
    /// Title and place of the scheme.
    pub source: &'static str,
    /// How far it is confirmed.
    pub status: Status,
}

impl TimberRule {
    /// Where a treatment as ordered (`H4 C24`, `UC4B`) stands on the ladder, counted from 0; `None` where no word of it is
    /// a class of the scheme.
    pub fn rank(&self, treatment: &str) -> Option<usize> {
        let words = || treatment.split(|c: char| c.is_whitespace() || ",;/()".contains(c));
        words().filter_map(|w| self.ladder.iter().position(|c| c.eq_ignore_ascii_case(w))).max()
    }
}

/// Hazard classes H1 to H6 of Australia and New Zealand.
pub(crate) static HAZARD_CLASSES: &[&str] =
    &["H1", "H1.1", "H1.2", "H2F", "H2S", "H2", "H3", "H3A", "H3.1", "H3.2", "H4", "H5", "H6"];

/// Use classes of EN 335, as BS 8417 writes them.
pub(crate) static USE_CLASSES: &[&str] = &["UC1", "UC2", "UC3", "UC3C", "UC3U", "UC3.1", "UC3.2", "UC4", "UC5"];

/// Use categories of the United States.
pub(crate) static USE_CATEGORIES: &[&str] =
    &["UC1", "UC2", "UC3A", "UC3B", "UC4A", "UC4B", "UC4C", "UC5A", "UC5B", "UC5C"];

/// Use categories of Canada.
pub(crate) static USE_CATEGORIES_CANADA: &[&str] = &["UC1", "UC2", "UC3.1", "UC3.2", "UC4.1", "UC4.2", "UC5A"];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_treatment_is_found_among_the_words_of_an_order_and_a_class_of_another_scheme_is_not() {
        let rule = |ladder| TimberRule {
            ladder,
            post: "H4",
            board: "H4",
            relied_on: None,
            source: "",
            status: Status::FromMemory,
        };
        let h = rule(HAZARD_CLASSES);
        assert!(h.rank("h5 C24") > h.rank("H4") && h.rank("H4") > h.rank("H3.2"));
        assert_eq!(h.rank("UC4"), None);
        assert_eq!(rule(USE_CATEGORIES).rank("UC4"), None, "neither A nor B nor C");
        assert_eq!(h.rank(""), None);
    }
}
