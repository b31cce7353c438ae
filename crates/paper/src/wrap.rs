//! Where does a text break? Words into lines no wider than the room there is.

use crate::leaf::Style;

/// The lines of a text; `\n` always breaks, a word wider than the room is broken inside.
pub(crate) fn lines(text: &str, room: f64, style: &Style) -> Vec<String> {
    text.split('\n').flat_map(|part| paragraph(part, room, style)).collect()
}

fn paragraph(text: &str, room: f64, style: &Style) -> Vec<String> {
    let mut all = vec![];
    let mut line = String::new();
    for word in text.split([' ', '\t']).filter(|w| !w.is_empty()) {
        let longer = if line.is_empty() { word.to_string() } else { format!("{line} {word}") };
        if style.width(&longer) <= room {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            all.push(std::mem::take(&mut line));
        }
        line = broken(word, room, style, &mut all);
    }
    if !line.is_empty() || all.is_empty() {
        all.push(line);
    }
    all
}

/// Puts all but the last piece of a word into `all` and gives the last.
fn broken(word: &str, room: f64, style: &Style, all: &mut Vec<String>) -> String {
    let mut piece = String::new();
    for c in word.chars() {
        piece.push(c);
        if style.width(&piece) > room && piece.chars().count() > 1 {
            piece.pop();
            all.push(std::mem::take(&mut piece));
            piece.push(c);
        }
    }
    piece
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_wider_than_the_room_and_no_letter_is_lost() {
        let text = "Holes 900 mm deep instead of 600 mm at averyveryverylongwordwithoutanyblank\nnext";
        for room in [8.0, 20.0, 60.0] {
            let l = lines(text, room, &Style::BODY);
            assert!(l.iter().all(|l| Style::BODY.width(l) <= room), "{l:?}");
            let letters = |t: &str| t.chars().filter(|c| !c.is_whitespace()).collect::<String>();
            assert_eq!(letters(&l.concat()), letters(text));
        }
    }
}
