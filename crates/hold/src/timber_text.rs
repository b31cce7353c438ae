//! Timber as people write it: two sizes in millimetres, treatment, strength class: `125x125 UC4 C24`.

use groundhold_member::timber::{Grade, Section, grade};
use groundhold_quantity::Length;

/// Timber that was written down.
#[derive(Debug, Clone, PartialEq)]
pub struct Timber {
    /// The size named first.
    pub first: Length,
    /// The size named second.
    pub second: Length,
    /// Treatment or use class; empty where none stands.
    pub treatment: String,
    /// Strength class for this size; `None` where none stands.
    pub grade: Option<&'static Grade>,
}

/// Two sizes in millimetres, each from 5 to 1000.
pub fn sizes(text: &str) -> Option<(Length, Length)> {
    let (a, b) = text.split_once(['x', '×'])?;
    let read = |t: &str| t.trim().parse::<f64>().ok().filter(|v| (5.0..=1000.0).contains(v)).map(Length::mm);
    Some((read(a)?, read(b)?))
}

/// Two sizes in millimetres as they are written: `125x125`.
pub fn spelled(a: Length, b: Length) -> String {
    format!("{}x{}", short(a), short(b))
}

/// Millimetres with at most three decimals and without zeros at their end.
fn short(l: Length) -> String {
    let text = format!("{:.3}", l.to_mm());
    text.trim_end_matches('0').trim_end_matches('.').to_string()
}

/// Reads sizes, treatment and strength class. The class is what stands last and is known for this size.
///
/// # Errors
/// What was expected, in words.
pub fn read(text: &str) -> Result<Timber, String> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let Some((first, second)) = words.first().and_then(|w| sizes(w)) else {
        return Err(format!(
            "found `{text}`, expected two sizes in mm, treatment and strength class, such as \"125x125 UC4 C24\""
        ));
    };
    let section = Section::rectangle(first.max(second), first.min(second));
    for k in 1..words.len() {
        if let Ok(g) = grade(&words[k..].join(" "), &section) {
            return Ok(Timber { first, second, treatment: words[1..k].join(" "), grade: Some(g) });
        }
    }
    Ok(Timber { first, second, treatment: words[1..].join(" "), grade: None })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_treatment_and_class_are_told_apart() {
        let t = read("200x50 UC4 C24").unwrap();
        assert_eq!((t.first, t.second), (Length::mm(200.0), Length::mm(50.0)));
        assert_eq!((t.treatment.as_str(), t.grade.map(|g| g.name)), ("UC4", Some("C24")));
        assert_eq!(read("200x75 H4").unwrap().grade, None);
        assert!(read("thick").unwrap_err().contains("two sizes in mm"));
    }
}
