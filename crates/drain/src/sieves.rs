//! From a sieve test to the sizes that a filter is designed by.

use groundhold_quantity::{Length, Share, math};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Unit, Working};

use crate::Grading;
use crate::rain::log_share;

const NRCS: &str = "USDA-NRCS, National Engineering Handbook Part 633, ch. 26 (1994)";
/// Soils with larger grains are regraded on this sieve, mm.
const REGRADED_ON: f64 = 4.75;
/// Finer than this sieve is fines, mm.
const FINES: f64 = 0.075;

/// Rows of a sieve test: size of the opening and share by mass that passes, coarsest or finest first.
pub type Sieves = Vec<(Length, Share)>;

/// Share in per cent that passes a size, straight on a logarithmic scale of sizes; held beyond the ends. `rows` holds
/// (mm, per cent), finest first.
fn passing(rows: &[(f64, f64)], size: f64) -> f64 {
    let Some(i) = rows.iter().position(|r| r.0 >= size) else { return rows.last().map_or(0.0, |r| r.1) };
    if i == 0 {
        return rows[0].1;
    }
    let ((d0, p0), (d1, p1)) = (rows[i - 1], rows[i]);
    p0 + (p1 - p0) * log_share(size, d0, d1)
}

/// Size in mm that a share passes; `None` where the test does not reach it.
fn size(rows: &[(f64, f64)], share: f64) -> Option<f64> {
    let i = rows.iter().position(|r| r.1 >= share)?;
    let (d1, p1) = rows[i];
    if p1 == share {
        return Some(d1);
    }
    let (d0, p0) = *rows.get(i.checked_sub(1)?)?;
    Some(d0 * math::exp((share - p0) / (p1 - p0) * math::ln(d1 / d0)))
}

/// The part of a soil finer than 4.75 mm as a soil of its own: each share over that which passes 4.75 mm.
fn regraded(rows: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let whole = passing(rows, REGRADED_ON);
    if rows.last().is_none_or(|r| r.0 <= REGRADED_ON) || whole <= 0.0 {
        return rows.to_vec();
    }
    let mut kept: Vec<(f64, f64)> =
        rows.iter().filter(|r| r.0 < REGRADED_ON).map(|r| (r.0, r.1 * 100.0 / whole)).collect();
    kept.push((REGRADED_ON, 100.0));
    kept
}

/// The grading of a sieve test, regraded on 4.75 mm as the filter rules want it.
///
/// # Errors
/// A test that is not one: fewer than three rows, shares that fall as the sieves grow, or sizes that the finest and the
/// coarsest sieve do not reach.
pub fn grading_of(sieves: &[(Length, Share)]) -> std::result::Result<Grading, String> {
    let mut rows: Vec<(f64, f64)> = sieves.iter().map(|(d, p)| (d.to_mm(), p.to_percent())).collect();
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    if rows.len() < 3 {
        return Err(format!("a sieve test needs at least three rows; this one has {}", rows.len()));
    }
    if rows.iter().any(|r| !(1e-5..=500.0).contains(&r.0) || !(0.0..=100.0).contains(&r.1)) {
        return Err("a sieve is not between 0.00001 and 500 mm, or a share is not between 0 and 100 %".into());
    }
    if let Some(w) = rows.windows(2).find(|w| w[1].1 < w[0].1 || w[1].0 == w[0].0) {
        return Err(format!(
            "{} mm passes {} % and {} mm only {} %; more must pass a larger sieve",
            w[0].0, w[0].1, w[1].0, w[1].1
        ));
    }
    let graded = regraded(&rows);
    let at = |share: f64| {
        size(&graded, share).map(Length::mm).ok_or_else(|| {
            format!(
                "the finest sieve ({} mm) passes more than {share} %, or the coarsest less; test further",
                graded[0].0
            )
        })
    };
    Ok(Grading {
        name: "the soil of the sieve test",
        d15: at(15.0)?,
        d50: at(50.0)?,
        d85: at(85.0)?,
        fines: Share::percent(passing(&graded, FINES)),
        source: Source { work: "sieve test of the job", place: "straight between sieves on a logarithmic scale" },
    })
}

/// Share that passes a size after regrading on 4.75 mm.
///
/// # Source
/// USDA-NRCS, NEH Part 633 ch. 26 (1994), step 2: each percentage is multiplied by 100 over that which passes 4.75 mm.
/// # Symbols
/// p share finer than a size (%), p_475 share finer than 4.75 mm (%).
/// # Gives
/// p·100/p_475, %.
/// # Not for
/// Gap-graded and broadly graded soils whose gravel is wanted in the base; soils with nothing above 4.75 mm.
/// # Errors
/// None of its own.
/// # By hand
/// 20 % of 80 %: 25 % (reference case HY-RG).
pub(crate) fn regrade<N: Number>(share: N, on: N) -> N {
    (share * 100.0 / on).named("p_r", Unit::PERCENT)
}

/// The working of `regrade`.
pub static REGRADE: Working = Working {
    name: "filter/regrade",
    title: "Which share of the soil finer than 4.75 mm is finer than a size?",
    source: Source { work: NRCS, place: "step 2" },
    not_for: "gap-graded soils; soils with nothing above 4.75 mm",
    inputs: &[
        Input::new("passes", "p", "share finer than the size", Unit::PERCENT, Limits::author(0.0, 100.0)),
        Input::new("on", "p_475", "share finer than 4.75 mm", Unit::PERCENT, Limits::author(0.1, 100.0)),
    ],
    outputs: &[Output { key: "share", words: "share after regrading", unit: Unit::PERCENT }],
    run: |g| {
        let (p, on) = (g.one("passes")?, g.one("on")?);
        if p.value() > on.value() {
            return Err(g.no_answer("more passes the size than passes 4.75 mm; only smaller sizes are regraded"));
        }
        Ok(vec![Found::One(regrade(p, on))])
    },
};

/// The band of sizes within which a filter is ordered, from its largest and least D15.
///
/// # Source
/// USDA-NRCS, NEH Part 633 ch. 26 (1994), steps 6 to 9 and Table 26-6, from memory: the band is at most five wide at
/// D15, D10 = D15/1.2, D60 = 6·D10 at most on both sides, and D90 is limited so that it does not separate when tipped.
/// # Symbols
/// D_15max and D_15min largest and least D15 of the filter (mm).
/// # Gives
/// D15 from `least` to `most` (mm) narrowed to a ratio of five, D10 least, D60 most, D90 most: 20 mm for D10 under 0.5,
/// 25 to 1.0, 30 to 2.0, 40 to 5.0, 50 to 10, 60 above. 75 mm is the largest stone in any filter.
/// # Not for
/// A drain round a pipe with open joints, which also has to fit the openings.
/// # Errors
/// The least is above the most.
/// # By hand
/// Reference case HY-BAND.
pub(crate) fn band<N: Number>(most: N, least: N) -> [N; 5] {
    let least = least.max(most / 5.0).named("D_15least", Unit::MM);
    let d10 = (least / 1.2).named("D_10least", Unit::MM);
    let d60 = (most / 1.2 * 6.0).named("D_60most", Unit::MM);
    let row = match d10.value() {
        d if d < 0.5 => 20.0,
        d if d < 1.0 => 25.0,
        d if d < 2.0 => 30.0,
        d if d < 5.0 => 40.0,
        d if d <= 10.0 => 50.0,
        _ => 60.0,
    };
    [most, least, d10, d60, N::constant(row)]
}

/// The working of `band`.
pub static FILTER_BAND: Working = Working {
    name: "filter/band",
    title: "Between which sizes is a filter ordered, so that it works and does not separate?",
    source: Source { work: NRCS, place: "steps 6 to 9 and Table 26-6, from memory" },
    not_for: "filters against open joints, which also have to fit the openings",
    inputs: &[
        Input::new("most", "D_15max", "largest D15 that keeps the soil back", Unit::MM, Limits::ours(0.01, 100.0)),
        Input::new("least", "D_15min", "least D15 that drains it", Unit::MM, Limits::ours(0.01, 100.0)),
    ],
    outputs: &[
        Output { key: "d15_most", words: "D15 at most", unit: Unit::MM },
        Output { key: "d15_least", words: "D15 at least", unit: Unit::MM },
        Output { key: "d10_least", words: "D10 at least", unit: Unit::MM },
        Output { key: "d60_most", words: "D60 at most", unit: Unit::MM },
        Output { key: "d90_most", words: "D90 at most", unit: Unit::MM },
    ],
    run: |g| -> Result<_> {
        let (most, least) = (g.one("most")?, g.one("least")?);
        if least.value() > most.value() {
            return Err(g.no_answer("the least D15 is above the most: no single filter serves"));
        }
        Ok(band(most, least).into_iter().map(Found::One).collect())
    },
};

#[cfg(test)]
mod tests {
    use super::*;

    fn sieves(rows: &[(f64, f64)]) -> Sieves {
        rows.iter().map(|(d, p)| (Length::mm(*d), Share::percent(*p))).collect()
    }

    #[test]
    fn sizes_are_read_straight_on_a_logarithmic_scale() {
        let g = grading_of(&sieves(&[(0.075, 10.0), (0.3, 50.0), (1.2, 90.0), (4.75, 100.0)])).unwrap();
        assert!((g.d50.to_mm() - 0.3).abs() < 1e-9);
        assert!((g.fines.to_percent() - 10.0).abs() < 1e-9);
        // 85 % lies 35/40 of the way from 0.3 to 1.2 on the scale: 0.3·4^0.875.
        assert!((g.d85.to_mm() - 0.3 * math::powf(4.0, 0.875)).abs() < 1e-9);
    }

    #[test]
    fn a_gravelly_soil_is_judged_by_its_part_finer_than_4_75_mm() {
        let g = grading_of(&sieves(&[(0.02, 8.0), (0.075, 20.0), (1.0, 60.0), (4.75, 80.0), (20.0, 100.0)])).unwrap();
        assert!((g.fines.to_percent() - 25.0).abs() < 1e-9);
        assert!(g.d85 < Length::mm(4.75));
    }

    #[test]
    fn a_test_that_goes_back_or_stops_short_says_so() {
        let back = grading_of(&sieves(&[(0.075, 30.0), (0.3, 20.0), (1.2, 90.0)])).unwrap_err();
        assert!(back.contains("more must pass"), "{back}");
        let short = grading_of(&sieves(&[(0.075, 40.0), (0.3, 60.0), (1.2, 90.0)])).unwrap_err();
        assert!(short.contains("test further"), "{short}");
        assert!(grading_of(&[]).is_err());
    }
}
