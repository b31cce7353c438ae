//! How does a wall of blocks look where it is cut across: pad, blocks, cap and the grid behind?

use groundhold_quantity::{Length, trim};

use super::BESIDE;
use super::body::Laid;
use crate::gravity::{self, Body};
use crate::{Cross, Layout, Note, SectionPart, Strip, Stuff, WallCase};

/// The wall at a chainage.
pub(crate) fn cross(case: &WallCase, laid: &Laid, layout: &Layout, chainage: Length) -> Option<Cross> {
    let bare = Laid { bare: true, ..*laid };
    let strip = layout.strip(chainage)?;
    let mut cross = gravity::cross(case, &bare, layout, chainage, &|s, b| notes(case, laid, s, b))?;
    let s = laid.spec;
    if s.pad > Length::ZERO {
        let x = (-s.depth - BESIDE, BESIDE);
        let level = (strip.base - s.pad, strip.base);
        cross.parts.insert(0, SectionPart::rectangle("pad", Stuff::Gravel, x, level));
        cross.lowest = strip.base - s.pad;
        cross.heel = cross.heel.min(x.0);
    }
    for k in laid.layers(strip) {
        let (x, level) = layer(laid, strip, k);
        cross.parts.push(SectionPart::line("grid", Stuff::Grid, (x.0, level), (x.1, level)));
    }
    Some(cross)
}

/// A layer of grid from its end to near the face, and its level.
fn layer(laid: &Laid, strip: &Strip, course: usize) -> ((Length, Length), groundhold_quantity::Level) {
    let face = -laid.spec.setback * course as f64;
    ((face - strip.width, face - Length::mm(30.0)), strip.base + laid.spec.height * course as f64)
}

fn notes(case: &WallCase, laid: &Laid, strip: &Strip, body: &Body) -> Vec<Note> {
    let (u, s) = (case.units, laid.spec);
    let note = |at, says: Vec<String>, lean, rank| Note { at, says, lean, rank, clear: 2.0 };
    let z = body.height() * 0.6;
    let mut all = vec![note(
        (Length::m(body.at(z).0), strip.base + Length::m(z)),
        vec![
            format!("blocks {}, {} deep", u.length(s.height), u.length(s.depth)),
            format!("each {} back, {} kN/m³", u.length(s.setback), trim(s.in_place().to_kn_per_m3(), 1)),
        ],
        (1.0, 0.0),
        60,
    )];
    if s.pad > Length::ZERO {
        let at = (BESIDE, strip.base - s.pad / 2.0);
        all.push(note(at, vec![format!("pad of rammed stone, {}", u.length(s.pad))], (1.0, 0.6), 56));
    }
    let layers = laid.layers(strip);
    if let Some(k) = layers.get(layers.len() / 2) {
        let (x, level) = layer(laid, strip, *k);
        let many = if layers.len() == 1 { "1 layer".into() } else { format!("{} layers", layers.len()) };
        let says = vec![format!("{many} of grid"), format!("{} from the face", u.length(strip.width))];
        all.push(note((x.0 * 0.6, level), says, (-1.0, -0.3), 58));
    }
    all
}
