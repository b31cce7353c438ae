//! How wide is a text? The two fonts of the sheets and the advance of their letters.

use std::sync::LazyLock;

use groundhold_draw::Weight;
use ttf_parser::Face;

/// The ordinary font, as it is embedded.
pub(crate) const REGULAR: &[u8] = include_bytes!("../fonts/GroundholdSans-Regular.otf");
/// The bold font, as it is embedded.
pub(crate) const BOLD: &[u8] = include_bytes!("../fonts/GroundholdSans-Bold.otf");

/// Advances of one font by character, as shares of the em. Sorted by character.
struct Advances(Vec<(char, f64)>);

static OF_REGULAR: LazyLock<Advances> = LazyLock::new(|| Advances::read(REGULAR));
static OF_BOLD: LazyLock<Advances> = LazyLock::new(|| Advances::read(BOLD));

impl Advances {
    fn read(font: &[u8]) -> Advances {
        let mut all = vec![];
        if let Ok(face) = Face::parse(font, 0) {
            let em = f64::from(face.units_per_em());
            for table in face.tables().cmap.iter().flat_map(|c| c.subtables).filter(|s| s.is_unicode()) {
                table.codepoints(|code| {
                    let Some(c) = char::from_u32(code) else { return };
                    let advance = table.glyph_index(code).and_then(|g| face.glyph_hor_advance(g));
                    all.extend(advance.map(|a| (c, f64::from(a) / em)));
                });
            }
        }
        all.sort_by_key(|(c, _)| *c);
        all.dedup_by_key(|(c, _)| *c);
        Advances(all)
    }
    fn of(&self, c: char) -> Option<f64> {
        self.0.binary_search_by_key(&c, |(k, _)| *k).ok().map(|i| self.0[i].1)
    }
}

fn advances(weight: Weight) -> &'static Advances {
    if weight == Weight::Bold { &OF_BOLD } else { &OF_REGULAR }
}

/// Width of a text in millimetres at this size (the em in millimetres), before kerning. A letter that the font lacks
/// counts half an em.
pub fn text_width(text: &str, size: f64, weight: Weight) -> f64 {
    let advances = advances(weight);
    text.chars().map(|c| advances.of(c).unwrap_or(0.5)).sum::<f64>() * size
}

/// True when both fonts have the letter.
pub fn has_letter(c: char) -> bool {
    OF_REGULAR.of(c).is_some() && OF_BOLD.of(c).is_some()
}

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

    #[test]
    fn every_sign_that_a_sheet_may_need_is_in_both_fonts() {
        let signs = "φγδαβθψστκλμρωηζπνΣΔ√²³⁴¹⁰⁵⁶·−×÷≤≥±≈≠°½¼¾⅛⅜⅝⅞→←↑↓ₐₚₒₖₙ₀₁₂₃₄₅₆₉₋₊₍₎ᵢℓ∞ø⌀€£…–—‘’“”′″é\u{202f}";
        assert_eq!(signs.chars().filter(|c| !has_letter(*c)).collect::<String>(), "");
    }

    #[test]
    fn all_figures_are_equally_wide_so_that_columns_stand_under_each_other() {
        for w in [Weight::Regular, Weight::Bold] {
            assert!(('0'..='9').all(|c| advances(w).of(c) == advances(w).of('0') && advances(w).of(c).is_some()));
        }
    }

    #[test]
    fn a_letter_that_no_font_has_is_shown_as_missing() {
        assert_eq!(in_our_letters("a\u{4e00}\tb"), "a□ b");
        assert!(text_width(&cut_to("a long name of a plot", 20.0, 3.0, Weight::Bold), 3.0, Weight::Bold) <= 20.0);
    }
}
