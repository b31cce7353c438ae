//! Which stations does a book hold, at which level, and where does it contradict itself?

use std::collections::BTreeMap;

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Length, Level, trim};

use super::{Levelled, Reduced, ReducedRow, Role};
use crate::{BOOKED_LEVEL_DIFFERS, STATION_AT_TWO_LEVELS};

impl Reduced {
    /// Each station once, in the order of the book.
    pub fn points(&self) -> Vec<Levelled> {
        self.by_station().into_iter().map(|rows| self.levelled(&rows)).collect()
    }

    /// The rows of each station, in the order of the book.
    fn by_station(&self) -> Vec<Vec<&ReducedRow>> {
        let mut at: BTreeMap<&str, usize> = BTreeMap::new();
        let mut groups: Vec<Vec<&ReducedRow>> = vec![];
        for row in &self.rows {
            let i = *at.entry(&row.station).or_insert_with(|| {
                groups.push(vec![]);
                groups.len() - 1
            });
            groups[i].push(row);
        }
        groups
    }

    fn known(&self, station: &str) -> Option<Level> {
        self.benchmarks.iter().find(|b| b.station.trim() == station).map(|b| b.level)
    }

    fn levelled(&self, rows: &[&ReducedRow]) -> Levelled {
        let station = rows[0].station.clone();
        let base = rows[0].level;
        let weights = rows.iter().map(|r| 1.0 / (r.sigma.to_m() * r.sigma.to_m()).max(1e-12));
        let weighted: f64 = rows.iter().zip(weights.clone()).map(|(r, w)| (r.level - base).to_m() * w).sum();
        let mean = base + Length::m(weighted / weights.sum::<f64>());
        let best = rows.iter().map(|r| r.sigma).reduce(Length::min).unwrap_or_default();
        let (level, sigma, role) = match self.known(&station) {
            Some(known) => (known, Length::ZERO, Role::Benchmark),
            None if rows.iter().any(|r| r.turns) => (mean, best, Role::ChangePoint),
            None => (mean, best, Role::Spot),
        };
        Levelled { station, level, sigma, role, rows: rows.iter().map(|r| r.row).collect() }
    }
}

/// Stations that were read more than once and came out apart by more than three standard deviations of the difference.
pub(super) fn at_two_levels(reduced: &Reduced, reading: Length) -> Vec<Finding> {
    let closing = reduced.rows.last().filter(|_| reduced.misclose.is_some());
    let mut findings = vec![];
    for rows in reduced.by_station() {
        // The misclose itself is judged by its own rule.
        let judged: Vec<_> = rows.into_iter().filter(|r| closing.is_none_or(|c| !std::ptr::eq(*r, c))).collect();
        let Some((first, later)) = judged.split_first() else { continue };
        let worst = later
            .iter()
            .map(|r| {
                let between = first.set_up.abs_diff(r.set_up) as f64;
                let limit = reading * (3.0 * (2.0 * (1.0 + between)).sqrt());
                (*r, r.level - first.level, limit)
            })
            .filter(|(_, apart, limit)| apart.abs() > *limit)
            .max_by(|a, b| a.1.abs().to_m().total_cmp(&b.1.abs().to_m()));
        if let Some((row, apart, limit)) = worst {
            let says = format!(
                "`{}` is at {:.3} m by row {} and at {:.3} m by row {}: {} mm apart, where {} mm would be usual at most. Read it again, or give the two places two names.",
                first.station,
                first.level.to_m(),
                first.row,
                row.level.to_m(),
                row.row,
                trim(apart.abs().to_mm(), 0),
                trim(limit.to_mm(), 0)
            );
            let place = Place::on("level book", format!("rows {} and {}", first.row, row.row));
            findings.push(Finding::new(&STATION_AT_TWO_LEVELS, place, says).with_utilisation(apart.abs() / limit));
        }
    }
    findings
}

/// How exactly levels are written in a book: to the millimetre. Common practice, no source.
const WRITTEN: Length = Length::mm(1.0);

/// Compares levels that were written down in the book (row, level) with what its readings give, before and after the
/// misclose is distributed. A row that the book does not have is passed over.
pub fn compare_booked(reduced: &Reduced, booked: &[(usize, Level)]) -> Vec<Finding> {
    let mut findings = vec![];
    for (row, written) in booked {
        let Some(r) = reduced.rows.iter().find(|r| r.row == *row) else { continue };
        let apart = *written - r.level_raw;
        let agrees = apart.abs() <= WRITTEN || (*written - r.level).abs() <= WRITTEN;
        if agrees {
            continue;
        }
        let says = format!(
            "Row {row}: the level of `{}` is written as {:.3} m, but its readings give {:.3} m, {} mm {}.",
            r.station,
            written.to_m(),
            r.level_raw.to_m(),
            trim(apart.abs().to_mm(), 0),
            if apart.to_m() > 0.0 { "lower" } else { "higher" }
        );
        let place = Place::on("level book", format!("row {row}"));
        findings.push(Finding::new(&BOOKED_LEVEL_DIFFERS, place, says));
    }
    findings
}
