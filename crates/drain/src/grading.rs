//! How fine is the soil behind the wall, and how coarse the stone against it?

use groundhold_quantity::{Length, Share};
use groundhold_working::Source;

/// Grading of a soil or a stone by a few sizes: `d15` is the size that 15 % by mass is finer than.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grading {
    /// What it is called.
    pub name: &'static str,
    /// Size with 15 % finer.
    pub d15: Length,
    /// Size with 50 % finer.
    pub d50: Length,
    /// Size with 85 % finer.
    pub d85: Length,
    /// Share finer than 0.075 mm.
    pub fines: Share,
    /// Where it is from.
    pub source: Source,
}

const TYPICAL: Source = Source {
    work: "typical of the class, from memory",
    place: "for soils with gravel, of the part finer than 4.75 mm; a sieve test decides where it matters",
};
const SIEVES: Source = Source {
    work: "EN 13242, a fraction d/D named by its sieves",
    place: "straight line from 0 % at d to 85 % at D (the widest that the name allows): ours, limits from memory",
};

const fn soil(name: &'static str, d15: f64, d50: f64, d85: f64, fines: f64) -> Grading {
    Grading {
        name,
        d15: Length::mm(d15),
        d50: Length::mm(d50),
        d85: Length::mm(d85),
        fines: Share::percent(fines),
        source: TYPICAL,
    }
}

/// A single-size stone between two sieves.
const fn stone(name: &'static str, under: f64, over: f64) -> Grading {
    let span = over - under;
    Grading {
        name,
        d15: Length::mm(under + span * 15.0 / 85.0),
        d50: Length::mm(under + span * 50.0 / 85.0),
        d85: Length::mm(over),
        fines: Share::percent(0.0),
        source: SIEVES,
    }
}

/// Typical gradings of soils told by hand. Each is one soil of a wide class.
pub static SOIL_GRADINGS: &[Grading] = &[
    soil("clay", 0.0005, 0.003, 0.03, 92.0),
    soil("silty clay", 0.001, 0.010, 0.06, 88.0),
    soil("sandy clay", 0.001, 0.040, 0.30, 60.0),
    soil("silt", 0.004, 0.020, 0.055, 90.0),
    soil("sandy silt", 0.006, 0.060, 0.20, 58.0),
    soil("silty sand", 0.030, 0.15, 0.40, 25.0),
    soil("clayey sand", 0.004, 0.15, 0.45, 30.0),
    soil("fine sand", 0.090, 0.15, 0.25, 8.0),
    soil("sand", 0.15, 0.35, 0.80, 4.0),
    soil("coarse sand", 0.35, 0.80, 1.80, 2.0),
    soil("silty gravel", 0.030, 0.60, 3.0, 20.0),
    soil("gravel", 0.35, 1.20, 3.2, 4.0),
    soil("topsoil", 0.004, 0.050, 0.50, 55.0),
    soil("loam", 0.004, 0.045, 0.40, 58.0),
    soil("made ground", 0.010, 0.30, 2.0, 30.0),
];

/// Stones for the zone behind a wall.
pub static DRAIN_FILLS: &[Grading] = &[
    stone("4-10 mm", 4.0, 10.0),
    stone("10-20 mm", 10.0, 20.0),
    stone("20-40 mm", 20.0, 40.0),
    stone("20-50 mm", 20.0, 50.0),
    Grading {
        name: "concreting sand",
        d15: Length::mm(0.28),
        d50: Length::mm(0.70),
        d85: Length::mm(2.2),
        fines: Share::percent(2.0),
        source: Source { work: "ASTM C33 fine aggregate, middle of its band", place: "from memory" },
    },
];

/// The typical grading of a soil described in words (`firm silty clay`): the row whose words all stand in the
/// description, the one with most words first. `None` where no row does.
pub fn soil_grading(described: &str) -> Option<&'static Grading> {
    let words = words_of(described);
    let fits = |g: &&Grading| g.name.split(' ').all(|w| words.iter().any(|d| d == w));
    let mut found: Option<&'static Grading> = None;
    for g in SOIL_GRADINGS.iter().filter(fits) {
        let longer = |f: &Grading| g.name.split(' ').count() > f.name.split(' ').count();
        if found.is_none_or(longer) {
            found = Some(g);
        }
    }
    found
}

/// The drain fill of that name; `10-20`, `10/20 mm` and `10–20 mm` are the same.
pub fn drain_fill(named: &str) -> Option<&'static Grading> {
    let words = words_of(named);
    let same = |g: &&Grading| words_of(g.name) == words || words_of(g.name.trim_end_matches(" mm")) == words;
    DRAIN_FILLS.iter().find(same)
}

fn words_of(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    lower.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()).map(Into::into).collect()
}
