//! Is this still the text that was read? A short tag that changes with the content.

/// An entity tag over names and contents: FNV-1a with 128 bits (Fowler, Noll, Vo; RFC 9923), quoted as HTTP wants it.
/// It tells versions apart; it keeps no secret.
pub fn tag<'a>(parts: impl IntoIterator<Item = &'a [u8]>) -> String {
    let mut hash: u128 = 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d;
    for part in parts {
        // The length first, so that the border between two parts counts.
        for byte in (part.len() as u64).to_le_bytes().iter().chain(part) {
            hash = (hash ^ u128::from(*byte)).wrapping_mul(0x0000_0000_0100_0000_0000_0000_0000_013b);
        }
    }
    format!("\"{hash:032x}\"")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_letter_and_a_border_change_the_tag() {
        let of = |parts: &[&str]| tag(parts.iter().map(|p| p.as_bytes()));
        assert_eq!(of(&["ab", "c"]), of(&["ab", "c"]));
        assert_ne!(of(&["ab", "c"]), of(&["a", "bc"]));
        assert_ne!(of(&["ab"]), of(&["aB"]));
    }
}
