//! How wide is a text on paper?

use crate::advances::{EM, RUNS};
use crate::scene::{Align, At, Label, Weight};

/// Height of capitals and figures over the type size.
pub(crate) const CAP: f64 = 0.73;
/// Depth of descenders over the type size.
pub(crate) const DESCENT: f64 = 0.21;

/// Stands for a letter that the fonts lack.
const MISSING: char = '□';

/// The advance of a letter as a share of the em; `None` for a letter that the fonts lack.
fn advance(c: char, weight: Weight) -> Option<f64> {
    let code = c as u32;
    let run = RUNS.partition_point(|(first, _)| *first <= code).checked_sub(1)?;
    let (first, letters) = RUNS[run];
    let (regular, bold) = letters.get((code - first) as usize)?;
    Some(f64::from(if weight == Weight::Bold { *bold } else { *regular }) / EM)
}

/// True when the fonts of drawings and sheets have the letter.
pub fn has_letter(c: char) -> bool {
    advance(c, Weight::Regular).is_some()
}

/// Width of a text in millimetres at this size (the em in millimetres), before kerning. A letter that the fonts lack counts
/// as the box that is shown for it.
pub fn width(text: &str, size: f64, weight: Weight) -> f64 {
    let of = |c: char| advance(c, weight).or_else(|| advance(MISSING, weight)).unwrap_or(1.0);
    text.chars().map(of).sum::<f64>() * size
}

/// The corners of the box round a label as it is drawn, turned with it.
pub(crate) fn corners(l: &Label) -> [At; 4] {
    let w = width(&l.text, l.size, l.weight);
    let left = match l.align {
        Align::Start => 0.0,
        Align::Middle => -w / 2.0,
        Align::End => -w,
    };
    let (top, bottom) = (-CAP * l.size, DESCENT * l.size);
    let a = -l.turn.to_radians();
    let (s, c) = (groundhold_quantity::math::sin(a), groundhold_quantity::math::cos(a));
    let turned = |x: f64, y: f64| At::mm(l.at.x + x * c - y * s, l.at.y + x * s + y * c);
    [turned(left, top), turned(left + w, top), turned(left + w, bottom), turned(left, bottom)]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_longer_text_is_wider_and_bold_is_wider_still() {
        let r = |t| width(t, 2.5, Weight::Regular);
        assert!((r("1200") - 4.0 * r("0")).abs() < 1e-12);
        assert!(r("1200 mm") > r("1200") && width("1200", 2.5, Weight::Bold) > r("1200"));
        assert!(r("½") > r("1") && r("\u{4e00}") == r("□") && !has_letter('\u{4e00}'));
    }

    #[test]
    fn a_label_turned_by_ninety_degrees_runs_upwards() {
        let l = Label::new(At::mm(10.0, 50.0), "level", 2.5).turned(90.0);
        let c = corners(&l);
        assert!(c.iter().all(|p| 8.0 < p.x && p.x < 11.0 && p.y < 50.001), "{c:?}");
    }
}
