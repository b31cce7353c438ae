//! How does a wall with a reinforced stem look where it is cut across: footing, key, stem and their bars?

use groundhold_quantity::{Length, Level, trim};

use super::body::Laid;
use super::steel::{self, Part};
use super::take_off::KEY_WIDTH;
use crate::gravity::{self, Body};
use crate::{Cross, Layout, Note, SectionPart, Strip, Stuff, WallCase};

/// The wall at a chainage.
pub(crate) fn cross(case: &WallCase, laid: &Laid, layout: &Layout, chainage: Length) -> Option<Cross> {
    let strip = layout.strip(chainage)?;
    let mut cross = gravity::cross(case, laid, layout, chainage, &|s, b| notes(case, laid, s, b))?;
    let s = laid.spec;
    if s.blinding > Length::ZERO {
        let over = Length::mm(100.0);
        let level = (strip.base - s.blinding, strip.base);
        let x = (-strip.width - over, s.toe + over);
        cross.parts.insert(0, SectionPart::rectangle("blinding", Stuff::Gravel, x, level));
        cross.lowest = strip.base - s.blinding;
    }
    if s.key > Length::ZERO {
        let back = -s.stem;
        let part = SectionPart::rectangle(
            "footing",
            Stuff::Concrete,
            (back, back + KEY_WIDTH),
            (strip.base - s.key, strip.base),
        );
        cross.parts.insert(1.min(cross.parts.len()), part);
        cross.lowest = cross.lowest.min(strip.base - s.key);
    }
    cross.parts.extend(bars(case, laid, strip));
    Some(cross)
}

/// The bars that are seen in the section: of the stem with its leg under toe and stem, and across the footing above.
fn bars(case: &WallCase, laid: &Laid, strip: &Strip) -> Vec<SectionPart> {
    let Some(found) = laid.steel else { return vec![] };
    let s = laid.spec;
    let of_stem = s.cover.unwrap_or(steel::cover(s, case, Part::Stem)) + found.stem.bar / 2.0;
    let below = strip.base + steel::cover(s, case, Part::Toe) + found.toe.bar / 2.0;
    let above = strip.foot - steel::cover(s, case, Part::Heel) - found.heel.bar / 2.0;
    let side = steel::cover(s, case, Part::Heel);
    let line = |a: (Length, Level), b: (Length, Level)| SectionPart::line("bars", Stuff::Steel, a, b);
    let (foot, top) = (-s.stem + of_stem, -s.top_thickness() + of_stem);
    vec![
        line((foot, below), (top, strip.top - Length::mm(50.0))),
        line((-strip.width + side, below), (s.toe - side, below)),
        line((-strip.width + side, above), (s.toe - side, above)),
    ]
}

fn notes(case: &WallCase, laid: &Laid, strip: &Strip, body: &Body) -> Vec<Note> {
    let (u, s) = (case.units, laid.spec);
    let mm = |l: Length| trim(l.to_mm(), 0);
    let note = |at, says: Vec<String>, lean, rank| Note { at, says, lean, rank, clear: 2.0 };
    let z = s.footing.to_m() + (body.height() - s.footing.to_m()) * 0.55;
    let mut all = vec![
        note(
            (Length::m(body.at(z).0), strip.base + Length::m(z)),
            vec![s.words().into(), format!("{} thick", u.length(s.stem))],
            (1.0, 0.0),
            60,
        ),
        note(
            (s.toe * 0.6, strip.base + s.footing / 2.0),
            vec![format!("footing {} thick", u.length(s.footing))],
            (1.0, 0.6),
            56,
        ),
    ];
    if let Some(b) = laid.steel {
        let at = (-s.stem, strip.base + Length::m(body.height() * 0.45));
        let says = vec![format!("bars {} mm every {} mm", mm(b.stem.bar), mm(b.stem.every)), "at the soil side".into()];
        all.push(note(at, says, (-1.0, -0.4), 58));
        let at = (-strip.width * 0.75, strip.foot - Length::mm(60.0));
        let says = vec![format!("{} mm every {} mm above", mm(b.heel.bar), mm(b.heel.every))];
        all.push(note(at, says, (-1.0, 0.5), 54));
    }
    all
}
