//! Which cut fills which fill, what goes to the heap and what to the gate, and how far is it carried?

use groundhold_quantity::{Length, Point, Volume};

use crate::transport::{NoTransport, transport};
use crate::{Earth, Field, Way};

/// Soil that is somewhere, or is wanted somewhere.
#[derive(Debug, Clone, PartialEq)]
pub struct Stock {
    /// The element, the heap, the gate.
    pub what: String,
    /// Which earth.
    pub earth: Earth,
    /// Where.
    pub at: Point,
    /// How much of it, counted in the bank.
    pub bank: Volume,
}

/// One carry.
#[derive(Debug, Clone, PartialEq)]
pub struct Carry {
    /// From where.
    pub from: String,
    /// To where.
    pub to: String,
    /// Which earth.
    pub earth: Earth,
    /// How much, bank.
    pub bank: Volume,
    /// The way; `None` where walls shut the two off from each other and it is lifted over.
    pub way: Option<Way>,
    /// Its length, or the straight distance where there is no way.
    pub length: Length,
}

/// All carries.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Carried {
    /// Each carry, the largest first.
    pub carries: Vec<Carry>,
    /// Sum of bank volume times length that counts as work, m³·m.
    pub work: f64,
    /// No way of carrying has less: the dual bound, m³·m.
    pub bound: f64,
}

impl Carried {
    /// Mean length of the ways, weighted by volume; `None` where nothing is carried.
    pub fn mean(&self) -> Option<Length> {
        let all: Volume = self.carries.iter().map(|c| c.bank).sum();
        let sum: f64 = self.carries.iter().map(|c| c.bank.to_m3() * c.length.to_m()).sum();
        (all > Volume::ZERO).then(|| Length::m(sum / all.to_m3()))
    }
}

/// Below this a carry is rounding.
const LEAST: Volume = Volume::m3(1e-9);
/// Where walls shut two places off from each other, soil is lifted over: so much work more than the straight way, m.
const LIFTED_OVER: f64 = 60.0;

/// Carries each earth from where it is to where it is wanted with the least work. What is wanted must be there, earth by
/// earth.
///
/// # Errors
/// [`NoTransport`] where the sums of an earth differ or a figure is none.
pub fn carry(there: &[Stock], wanted: &[Stock], field: &Field) -> Result<Carried, NoTransport> {
    let mut all = Carried::default();
    for earth in [Earth::Turf, Earth::Topsoil, Earth::Subsoil, Earth::Rock] {
        let sources: Vec<&Stock> = there.iter().filter(|s| s.earth == earth).collect();
        let sinks: Vec<&Stock> = wanted.iter().filter(|s| s.earth == earth).collect();
        let ways: Vec<Vec<Option<Way>>> =
            sources.iter().map(|s| sinks.iter().map(|d| field.way(s.at, d.at)).collect()).collect();
        let straight = |i: usize, j: usize| groundhold_quantity::distance(sources[i].at, sinks[j].at);
        let cost: Vec<Vec<f64>> = (0..sources.len())
            .map(|i| {
                let of = |j: usize| ways[i][j].as_ref().map_or(straight(i, j).to_m() + LIFTED_OVER, |w| w.works.to_m());
                (0..sinks.len()).map(of).collect()
            })
            .collect();
        let supply: Vec<f64> = sources.iter().map(|s| s.bank.to_m3()).collect();
        let demand: Vec<f64> = sinks.iter().map(|s| s.bank.to_m3()).collect();
        let found = transport(&supply, &demand, &cost)?;
        all.work += found.cost;
        all.bound += found.bound;
        for (i, row) in found.amounts.iter().enumerate() {
            for (j, v) in row.iter().enumerate().filter(|(_, v)| **v > LEAST.to_m3()) {
                let way = ways[i][j].clone();
                all.carries.push(Carry {
                    from: sources[i].what.clone(),
                    to: sinks[j].what.clone(),
                    earth,
                    bank: Volume::m3(*v),
                    length: way.as_ref().map_or(straight(i, j), |w| w.length),
                    way,
                });
            }
        }
    }
    all.carries.sort_by(|a, b| b.bank.to_m3().total_cmp(&a.bank.to_m3()));
    Ok(all)
}
