//! How wide is a text on paper?

use crate::scene::{Align, At, Label, Weight};

/// Advance widths of the characters from space to tilde, in thousandths of the type size, as read from the DejaVu Sans
/// font (version 2.37), regular.
const REGULAR: [u16; 95] = [
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636, 636, 636,
    636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863,
    748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635,
    615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636,
    337, 636, 838,
];
/// The same, bold.
const BOLD: [u16; 95] = [
    348, 456, 521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415, 380, 365, 696, 696, 696, 696, 696, 696, 696,
    696, 696, 696, 400, 400, 838, 838, 838, 580, 1000, 774, 762, 734, 830, 683, 683, 821, 837, 372, 372, 775, 637, 995,
    837, 850, 733, 850, 770, 720, 682, 812, 774, 1103, 771, 724, 725, 457, 365, 457, 838, 500, 500, 675, 716, 593, 716,
    678, 435, 716, 712, 343, 343, 665, 343, 1042, 712, 687, 716, 716, 493, 595, 478, 712, 652, 924, 645, 652, 582, 712,
    365, 712, 838,
];
/// Any other character, wider than nearly all of them.
const OTHER: u16 = 840;
/// Height of capitals and figures over the type size.
pub(crate) const CAP: f64 = 0.73;
/// Depth of descenders over the type size.
pub(crate) const DESCENT: f64 = 0.21;

/// Width of a text in millimetres for a type size in millimetres; never less than what the font gives.
pub(crate) fn width(text: &str, size: f64, weight: Weight) -> f64 {
    let table = if weight == Weight::Bold { &BOLD } else { &REGULAR };
    let of = |c: char| {
        let known = (c as usize).checked_sub(32).and_then(|i| table.get(i));
        f64::from(*known.unwrap_or(&OTHER))
    };
    text.chars().map(of).sum::<f64>() / 1000.0 * size
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
        assert!((r("1200") - 4.0 * 0.636 * 2.5).abs() < 1e-12);
        assert!(r("1200 mm") > r("1200") && width("1200", 2.5, Weight::Bold) > r("1200"));
        assert!(r("½") > r("1"));
    }

    #[test]
    fn a_label_turned_by_ninety_degrees_runs_upwards() {
        let l = Label::new(At::mm(10.0, 50.0), "level", 2.5).turned(90.0);
        let c = corners(&l);
        assert!(c.iter().all(|p| 8.0 < p.x && p.x < 11.0 && p.y < 50.001), "{c:?}");
    }
}
