//! Which steel sections can be bought, and what are their sides?

use groundhold_quantity::Length;
use groundhold_working::{Refused, Source};

use super::{Shape, section::SECTION_I};

/// A section by name.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Profile {
    /// As it is written in a job: `HEB100`, `W6x15`, `RHS 100x50x4`.
    pub name: &'static str,
    /// Its sides.
    pub shape: Shape,
    /// Where the sides come from.
    pub source: Source,
}

const EN: Source =
    Source { work: "EN 10365:2017", place: "dimensions of IPE, HE, UC, PFC; seen in part, rest from memory" };
const HOLLOW: Source = Source { work: "EN 10219-2:2006", place: "nominal sizes" };
const AISC: Source = Source { work: "AISC Shapes Database, v15", place: "d, b_f, t_w, t_f; roots 1/4 in; from memory" };
const AS: Source = Source { work: "AS/NZS 3679.1", place: "dimensions of UC and UB; from memory" };

const fn i(name: &'static str, [h, b, w, f, r]: [f64; 5], source: Source) -> Profile {
    let shape = Shape::I {
        depth: Length::mm(h),
        width: Length::mm(b),
        web: Length::mm(w),
        flange: Length::mm(f),
        root: Length::mm(r),
    };
    Profile { name, shape, source }
}
const fn inches(name: &'static str, [h, b, w, f]: [f64; 4]) -> Profile {
    i(name, [h * 25.4, b * 25.4, w * 25.4, f * 25.4, 6.35], AISC)
}
const fn channel(name: &'static str, [h, b, w, f, r]: [f64; 5]) -> Profile {
    let shape = Shape::Channel {
        depth: Length::mm(h),
        width: Length::mm(b),
        web: Length::mm(w),
        flange: Length::mm(f),
        root: Length::mm(r),
    };
    Profile { name, shape, source: EN }
}
const fn hollow(name: &'static str, [h, b, t]: [f64; 3]) -> Profile {
    let shape = Shape::Hollow { depth: Length::mm(h), width: Length::mm(b), wall: Length::mm(t) };
    Profile { name, shape, source: HOLLOW }
}

/// Sections for posts of low walls, by family from light to heavy.
pub static CATALOGUE: &[Profile] = &[
    i("IPE100", [100.0, 55.0, 4.1, 5.7, 7.0], EN),
    i("IPE120", [120.0, 64.0, 4.4, 6.3, 7.0], EN),
    i("IPE140", [140.0, 73.0, 4.7, 6.9, 7.0], EN),
    i("IPE160", [160.0, 82.0, 5.0, 7.4, 9.0], EN),
    i("IPE180", [180.0, 91.0, 5.3, 8.0, 9.0], EN),
    i("IPE200", [200.0, 100.0, 5.6, 8.5, 12.0], EN),
    i("HEA100", [96.0, 100.0, 5.0, 8.0, 12.0], EN),
    i("HEA120", [114.0, 120.0, 5.0, 8.0, 12.0], EN),
    i("HEA140", [133.0, 140.0, 5.5, 8.5, 12.0], EN),
    i("HEA160", [152.0, 160.0, 6.0, 9.0, 15.0], EN),
    i("HEB100", [100.0, 100.0, 6.0, 10.0, 12.0], EN),
    i("HEB120", [120.0, 120.0, 6.5, 11.0, 12.0], EN),
    i("HEB140", [140.0, 140.0, 7.0, 12.0, 12.0], EN),
    i("HEB160", [160.0, 160.0, 8.0, 13.0, 15.0], EN),
    i("UB 127x76x13", [127.0, 76.0, 4.0, 7.6, 7.6], EN),
    i("UC 152x152x23", [152.4, 152.2, 5.8, 6.8, 7.6], EN),
    i("100UC14.8", [97.0, 99.0, 5.0, 7.0, 10.0], AS),
    i("150UB14.0", [150.0, 75.0, 5.0, 7.0, 8.0], AS),
    i("150UC23.4", [152.0, 152.0, 6.1, 6.8, 8.9], AS),
    inches("W4x13", [4.16, 4.06, 0.280, 0.345]),
    inches("W6x9", [5.90, 3.94, 0.170, 0.215]),
    inches("W6x15", [5.99, 5.99, 0.230, 0.260]),
    inches("W6x20", [6.20, 6.02, 0.260, 0.365]),
    inches("W8x18", [8.14, 5.25, 0.230, 0.330]),
    inches("W8x24", [7.93, 6.50, 0.245, 0.400]),
    channel("PFC 100x50", [100.0, 50.0, 5.0, 8.5, 9.0]),
    channel("PFC 125x65", [125.0, 65.0, 5.5, 9.5, 12.0]),
    channel("PFC 150x75", [150.0, 75.0, 5.5, 10.0, 12.0]),
    hollow("RHS 60x60x4", [60.0, 60.0, 4.0]),
    hollow("RHS 80x80x4", [80.0, 80.0, 4.0]),
    hollow("RHS 80x80x5", [80.0, 80.0, 5.0]),
    hollow("RHS 100x50x4", [100.0, 50.0, 4.0]),
    hollow("RHS 100x100x5", [100.0, 100.0, 5.0]),
    hollow("RHS 120x80x5", [120.0, 80.0, 5.0]),
    hollow("RHS 120x120x6", [120.0, 120.0, 6.0]),
];

/// Names of all sections, in the order of the catalogue.
pub fn profile_names() -> Vec<&'static str> {
    CATALOGUE.iter().map(|p| p.name).collect()
}

/// A section by its name.
///
/// # Errors
/// Lists what is known.
pub fn profile(name: &str) -> Result<&'static Profile, Refused> {
    CATALOGUE.iter().find(|p| p.name.eq_ignore_ascii_case(name.trim())).ok_or_else(|| Refused::NoAnswer {
        working: SECTION_I.name,
        why: format!("there is no steel section `{}`; known are {}", name.trim(), profile_names().join(", ")),
    })
}
