//! Symbols as they are written by hand: `K_a` is a K with a lowered a.

use groundhold_draw::{Align, At, Item, text_width};

use crate::leaf::{Style, label};

/// Size of an index, as a share of the letter it stands at.
const INDEX: f64 = 0.72;
/// How far it is lowered, as a share of the em.
const LOWERED: f64 = 0.16;

/// The text in runs; true for an index.
fn runs(text: &str) -> Vec<(String, bool)> {
    let mut all: Vec<(String, bool)> = vec![(String::new(), false)];
    let letters: Vec<char> = text.chars().collect();
    let mut i = 0;
    while i < letters.len() {
        let c = letters[i];
        let begins = c == '_'
            && i > 0
            && letters[i - 1].is_alphanumeric()
            && letters.get(i + 1).is_some_and(|n| n.is_alphanumeric());
        if !begins {
            if let Some(last) = all.last_mut() {
                last.0.push(c);
            }
            i += 1;
            continue;
        }
        let mut index = String::new();
        i += 1;
        while let Some(n) = letters.get(i) {
            let goes_on = n.is_alphanumeric() && !is_superscript(*n)
                || (*n == ',' && letters.get(i + 1).is_some_and(|m| m.is_alphanumeric()));
            if !goes_on {
                break;
            }
            index.push(*n);
            i += 1;
        }
        all.extend([(index, true), (String::new(), false)]);
    }
    all.retain(|(t, _)| !t.is_empty());
    all
}

fn is_superscript(c: char) -> bool {
    matches!(c, '²' | '³' | '¹' | '⁰' | '⁴'..='⁹')
}

/// Width with the indices set small.
pub(crate) fn width(text: &str, style: &Style) -> f64 {
    let size = |index: bool| if index { style.size * INDEX } else { style.size };
    runs(text).iter().map(|(t, index)| text_width(t, size(*index), style.weight)).sum()
}

/// The labels, one for each run, beginning at a place on the base line.
pub(crate) fn labels(text: &str, at: At, style: &Style) -> Vec<Item> {
    let mut x = at.x;
    let mut items = vec![];
    for (run, index) in runs(text) {
        let (size, down) = if index { (style.size * INDEX, style.size * LOWERED) } else { (style.size, 0.0) };
        items.push(Item::Text(label(&run, At::mm(x, at.y + down), Align::Start, &style.sized(size))));
        x += text_width(&run, size, style.weight);
    }
    items
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_index_ends_where_the_formula_goes_on() {
        let said =
            |t: &str| runs(t).iter().map(|(s, i)| if *i { format!("[{s}]") } else { s.clone() }).collect::<String>();
        assert_eq!(said("K_a·γ² + σ_m,0,d/f_k²"), "K[a]·γ² + σ[m,0,d]/f[k]²");
        assert_eq!(said("_x a_ b"), "_x a_ b");
    }
}
