//! The two fonts of the sheets, and texts that fit them. How wide a letter is, `draw` knows: one table for drawings and sheets.

use groundhold_draw::{Weight, has_letter, text_width};

/// The ordinary font, as it is embedded.
pub(crate) const REGULAR: &[u8] = include_bytes!("../fonts/GroundholdSans-Regular.otf");
/// The bold font, as it is embedded.
pub(crate) const BOLD: &[u8] = include_bytes!("../fonts/GroundholdSans-Bold.otf");

/// Stands for a letter that the fonts lack.
pub(crate) const MISSING: char = '□';

/// The same text in letters that the fonts have; others become an empty box, so that nobody overlooks them.
pub(crate) fn in_our_letters(text: &str) -> String {
    text.chars()
        .map(|c| {
            if has_letter(c) {
                c
            } else if c.is_whitespace() {
                ' '
            } else {
                MISSING
            }
        })
        .collect()
}

/// The text cut with `…` to at most `most` millimetres.
pub(crate) fn cut_to(text: &str, most: f64, size: f64, weight: Weight) -> String {
    if text_width(text, size, weight) <= most {
        return text.into();
    }
    let mut kept = String::new();
    for c in text.chars() {
        kept.push(c);
        if text_width(&kept, size, weight) + size > most {
            kept.pop();
            break;
        }
    }
    format!("{}…", kept.trim_end())
}

#[cfg(test)]
mod tests {
    use super::*;
    use ttf_parser::Face;

    #[test]
    fn the_table_of_advances_is_that_of_the_embedded_fonts() {
        for (font, weight) in [(REGULAR, Weight::Regular), (BOLD, Weight::Bold)] {
            let face = Face::parse(font, 0).unwrap();
            let em = f64::from(face.units_per_em());
            let mut letters = 0;
            for c in (0x20..0xFFFF).filter_map(char::from_u32) {
                let advance = face.glyph_index(c).and_then(|g| face.glyph_hor_advance(g));
                assert_eq!(has_letter(c), advance.is_some(), "{c:?}");
                let Some(a) = advance else { continue };
                letters += 1;
                assert_eq!(text_width(&c.to_string(), 1.0, weight), f64::from(a) / em, "{c:?}");
            }
            assert!(letters > 800);
        }
    }

    #[test]
    fn every_sign_that_a_sheet_may_need_is_in_both_fonts() {
        let signs = "φγδαβθψστκλμρωηζπνΣΔ√²³⁴¹⁰⁵⁶·−×÷≤≥±≈≠°½¼¾⅛⅜⅝⅞→←↑↓ₐₚₒₖₙ₀₁₂₃₄₅₆₉₋₊₍₎ᵢℓ∞ø⌀€£…–—‘’“”′″é\u{202f}";
        assert_eq!(signs.chars().filter(|c| !has_letter(*c)).collect::<String>(), "");
    }

    #[test]
    fn all_figures_are_equally_wide_so_that_columns_stand_under_each_other() {
        for w in [Weight::Regular, Weight::Bold] {
            let wide = |c: char| text_width(&c.to_string(), 1.0, w);
            assert!(('0'..='9').all(|c| wide(c) == wide('0') && has_letter(c)));
        }
    }

    #[test]
    fn a_letter_that_no_font_has_is_shown_as_missing() {
        assert_eq!(in_our_letters("a\u{4e00}\tb"), "a□ b");
        assert!(text_width(&cut_to("a long name of a plot", 20.0, 3.0, Weight::Bold), 3.0, Weight::Bold) <= 20.0);
    }
}
