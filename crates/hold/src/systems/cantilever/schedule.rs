//! Which bars are cut and bent: mark, diameter, how many, how long, how they are bent?

use groundhold_member::concrete::{ACI_LAP, AciLap, EN2_LAP, En2Lap, aci_lap, en2_lap};
use groundhold_quantity::{Length, Mass};

use super::body::Laid;
use super::steel::{self, Bars, Part};
use super::{COURSE, Made, sections};
use crate::{Layout, Strip, WallCase};

/// One kind of bar.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct BarLine {
    /// Its mark: `S1`.
    pub mark: String,
    /// Where it goes and how it is bent.
    pub what: &'static str,
    pub bar: Length,
    pub length: Length,
    pub count: usize,
}

/// Bars along the wall. Common practice, no source: 10 mm every 250 mm, in blocks every second course.
const ALONG: Length = Length::mm(10.0);
const ALONG_EVERY: Length = Length::mm(250.0);
/// Bars are bought in this length; longer runs lap.
const STOCK: Length = Length::m(6.0);
/// Steel: 7850 kg/m³.
const STEEL: f64 = 7850.0;

impl BarLine {
    /// Of all of them.
    pub fn mass(&self) -> Mass {
        let area = std::f64::consts::FRAC_PI_4 * self.bar.to_m() * self.bar.to_m();
        Mass::kg(area * self.length.to_m() * self.count as f64 * STEEL)
    }
}

/// Lap of the stem's bars by the rules; 0.6 m where they refuse.
fn lap(case: &WallCase, laid: &Laid, bar: Length) -> Length {
    let s = laid.spec;
    let mm = if s.by_eurocode(case) {
        let given = En2Lap {
            bar: bar.to_mm(),
            stress: s.yield_stress.to_mpa() / 1.15,
            strength: s.strength.to_mpa(),
            position: 1.0,
            together: 1.5,
            gamma_c: 1.5,
        };
        given.traced(&EN2_LAP).map(|(i, _)| en2_lap(&i).lap)
    } else {
        let given = AciLap {
            bar: bar.to_mm(),
            yield_stress: s.yield_stress.to_mpa(),
            strength: s.strength.to_mpa(),
            top: 1.0,
            lap: 1.3,
        };
        given.traced(&ACI_LAP).map(|(i, _)| aci_lap(&i).lap)
    };
    up(Length::mm(mm.unwrap_or(600.0)))
}

/// To the next 50 mm, as bars are cut.
fn up(l: Length) -> Length {
    Length::mm((l.to_mm() / 50.0 - 1e-6).ceil() * 50.0)
}

fn many(length: Length, every: Length) -> usize {
    (length / every - 1e-6).ceil().max(1.0) as usize + 1
}

/// Every bar of the wall, alike ones together.
pub(crate) fn bars(case: &WallCase, laid: &Laid, layout: &Layout) -> Vec<BarLine> {
    let Some(steel) = laid.steel else { return vec![] };
    let mut all: Vec<BarLine> = vec![];
    for strip in &layout.strips {
        stem(case, laid, strip, steel.stem, &mut all);
        footing(case, laid, strip, (steel.toe, steel.heel), &mut all);
        along(laid, strip, &mut all);
    }
    for (i, b) in all.iter_mut().enumerate() {
        b.mark = format!("R{}", i + 1);
    }
    all
}

fn put(all: &mut Vec<BarLine>, what: &'static str, bar: Length, length: Length, count: usize) {
    let same = |b: &&mut BarLine| {
        b.what == what && (b.bar - bar).abs() < Length::mm(0.1) && (b.length - length).abs() < Length::mm(1.0)
    };
    match all.iter_mut().find(same) {
        Some(b) => b.count += count,
        None => all.push(BarLine { mark: String::new(), what, bar, length, count }),
    }
}

/// One bar from the footing to the top, or a starter and a bar that laps it where that would be unwieldy.
fn stem(case: &WallCase, laid: &Laid, strip: &Strip, bars: Bars, all: &mut Vec<BarLine>) {
    let (down, along) = sections::legs(case, laid, bars);
    let high = (strip.top - strip.foot - Length::mm(50.0)).max(Length::mm(100.0));
    let lap = lap(case, laid, bars.bar);
    let n = many(strip.length(), bars.every);
    let whole = laid.spec.made == Made::Concrete && high <= Length::m(1.5);
    if whole || high <= lap * 1.3 {
        put(all, "stem, L from the footing to the top", bars.bar, up(along + down + high), n);
    } else {
        put(all, "starter of the stem, L in the footing", bars.bar, up(along + down + lap), n);
        put(all, "stem, straight, laps the starter", bars.bar, up(high), n);
    }
}

fn footing(case: &WallCase, laid: &Laid, strip: &Strip, (toe, heel): (Bars, Bars), all: &mut Vec<BarLine>) {
    let wide = laid.spec.toe + strip.width;
    let cover = |part| steel::cover(laid.spec, case, part);
    let n = |b: Bars| many(strip.length(), b.every);
    put(all, "footing, across, below", toe.bar, wide - cover(Part::Toe) * 2.0, n(toe));
    put(all, "footing, across, above", heel.bar, wide - cover(Part::Heel) * 2.0, n(heel));
}

/// Along the wall, in stem and footing; a run longer than a stock bar laps by fifty diameters.
fn along(laid: &Laid, strip: &Strip, all: &mut Vec<BarLine>) {
    let high = strip.top - strip.foot;
    let rows = match laid.spec.made {
        Made::Concrete => many(high, ALONG_EVERY) * 2,
        Made::Block => many(high, COURSE * 2.0),
    };
    let in_footing = many(laid.spec.toe + strip.width, ALONG_EVERY) * 2;
    let run = strip.length();
    let pieces = (run / (STOCK - ALONG * 50.0) - 1e-6).ceil().max(1.0);
    let length = run / pieces + if pieces > 1.0 { ALONG * 50.0 } else { Length::ZERO };
    put(all, "along the stem", ALONG, up(length), rows * pieces as usize);
    put(all, "along the footing, above and below", ALONG, up(length), in_footing * pieces as usize);
}
