//! How much does a soil swell when it is dug, shrink when it is compacted, and weigh?

use groundhold_quantity::{Density, Mass, Volume};
use groundhold_working::Source;

/// Conversion factors of a soil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Factors {
    /// What it is called here.
    pub name: &'static str,
    /// Loose volume from one of bank.
    pub bank_to_loose: f64,
    /// Range of it that is quoted in the trade: least and most.
    pub bank_to_loose_range: (f64, f64),
    /// Compacted volume from one of bank.
    pub bank_to_compacted: f64,
    /// Density in the bank, moist.
    pub density_bank: Density,
    /// Where the factors come from.
    pub source: Source,
}

impl Factors {
    /// Loose volume of this much bank.
    pub fn loose(&self, bank: Volume) -> Volume {
        bank * self.bank_to_loose
    }
    /// Compacted volume of this much bank.
    pub fn compacted(&self, bank: Volume) -> Volume {
        bank * self.bank_to_compacted
    }
    /// Bank volume that makes this much compacted.
    pub fn bank_of_compacted(&self, compacted: Volume) -> Volume {
        compacted / self.bank_to_compacted
    }
    /// Bank volume that makes this much loose.
    pub fn bank_of_loose(&self, loose: Volume) -> Volume {
        loose / self.bank_to_loose
    }
    /// Loose volume to order for this much compacted.
    pub fn loose_of_compacted(&self, compacted: Volume) -> Volume {
        self.loose(self.bank_of_compacted(compacted))
    }
    /// Mass of this much bank.
    pub fn mass(&self, bank: Volume) -> Mass {
        self.density_bank * bank
    }
    /// Density of the loose soil.
    pub fn density_loose(&self) -> Density {
        self.density_bank / self.bank_to_loose
    }
}

const FM: &str = "US Army FM 5-434, Earthmoving Operations (2000)";
const TABLE: Source = Source {
    work: FM,
    place: "Table 1-1 (sand seen in NAVEDTRA Table 10-1, the rest from memory; the reciprocals agree); densities and ranges: common practice, no source",
};
const TRADE: Source = Source { work: "common practice, no source", place: "" };

/// Sand or gravel.
const SAND: Factors = Factors {
    name: "sand or gravel",
    bank_to_loose: 1.11,
    bank_to_loose_range: (1.05, 1.15),
    bank_to_compacted: 0.95,
    density_bank: Density::kg_per_m3(1800.0),
    source: TABLE,
};
/// Loam, common earth.
const LOAM: Factors = Factors {
    name: "loam",
    bank_to_loose: 1.25,
    bank_to_loose_range: (1.20, 1.30),
    bank_to_compacted: 0.90,
    density_bank: Density::kg_per_m3(1600.0),
    source: TABLE,
};
/// Clay.
const CLAY: Factors = Factors {
    name: "clay",
    bank_to_loose: 1.43,
    bank_to_loose_range: (1.30, 1.43),
    bank_to_compacted: 0.90,
    density_bank: Density::kg_per_m3(1850.0),
    source: TABLE,
};
/// Rock, broken out.
pub(crate) const ROCK: Factors = Factors {
    name: "rock",
    bank_to_loose: 1.50,
    bank_to_loose_range: (1.50, 1.70),
    bank_to_compacted: 1.30,
    density_bank: Density::kg_per_m3(2500.0),
    source: TABLE,
};
/// Chalk.
const CHALK: Factors = Factors {
    name: "chalk",
    bank_to_loose: 1.40,
    bank_to_loose_range: (1.30, 1.50),
    bank_to_compacted: 0.90,
    density_bank: Density::kg_per_m3(1900.0),
    source: TRADE,
};

/// Topsoil: swells 1.2 to 1.4 and is spread, not rolled; 1.4 to 1.6 t/m³ moist in place.
pub const TOPSOIL: Factors = Factors {
    name: "topsoil",
    bank_to_loose: 1.30,
    bank_to_loose_range: (1.20, 1.40),
    bank_to_compacted: 0.90,
    density_bank: Density::kg_per_m3(1500.0),
    source: TRADE,
};
/// Turf, cut and stacked: lies with gaps; laid again it takes the room it had.
pub const TURF: Factors = Factors {
    name: "turf",
    bank_to_loose: 1.30,
    bank_to_loose_range: (1.20, 1.40),
    bank_to_compacted: 1.0,
    density_bank: Density::kg_per_m3(1100.0),
    source: TRADE,
};
/// Single-size drain stone, tipped: it hardly settles, so what is ordered is what is filled. 1.45 to 1.6 t/m³.
pub const STONE: Factors = Factors {
    name: "drain stone",
    bank_to_loose: 1.0,
    bank_to_loose_range: (1.0, 1.05),
    bank_to_compacted: 1.0,
    density_bank: Density::kg_per_m3(1550.0),
    source: TRADE,
};

/// Every row of the table.
pub static FACTORS: &[Factors] = &[SAND, LOAM, CLAY, ROCK, CHALK, TOPSOIL, TURF, STONE];

/// The row for a soil described in words (`firm silty clay`, `loose sand`): the last word that names a row decides,
/// as in a soil description, where the noun is the main part. `None` where no word is known.
pub fn factors(described: &str) -> Option<Factors> {
    let words = described.to_lowercase();
    let row = |w: &str| match w {
        "sand" | "gravel" | "sands" | "gravels" => Some(SAND),
        "loam" | "earth" | "silt" | "silts" | "made" | "fill" | "ground" => Some(LOAM),
        "clay" | "clays" => Some(CLAY),
        "rock" | "limestone" | "sandstone" | "shale" => Some(ROCK),
        "chalk" => Some(CHALK),
        "topsoil" | "peat" => Some(TOPSOIL),
        "turf" => Some(TURF),
        "stone" => Some(STONE),
        _ => None,
    };
    let main = words.split([',', ';', '(']).next().unwrap_or("");
    main.split(|c: char| !c.is_alphabetic()).filter_map(row).next_back()
}
