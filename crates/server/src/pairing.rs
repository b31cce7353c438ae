//! Who is let in from the local network? Who knows the code on the screen; a cookie remembers them.

use subtle::ConstantTimeEq;

/// Letters and digits that are not mistaken for one another: 32, five bits each.
const LETTERS: &[u8; 32] = b"ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
/// Letters in a code: 40 bits.
const LONG: usize = 8;
/// Wrong tries before a code is withdrawn.
const TRIES: u32 = 5;
/// Wrong tries altogether before nobody is let in any more.
const ALL_TRIES: u32 = 20;
/// Devices at most.
const DEVICES: usize = 16;

/// A session's secret, as it stands in the cookie.
type Token = [u8; 64];

/// The code of the moment and the devices that were let in.
pub struct Pairing {
    code: [u8; LONG],
    wrong: u32,
    wrong_in_all: u32,
    sessions: Vec<Token>,
}

/// How a try ended.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Try {
    /// Let in: the session's secret. The code is used up and there is a new one.
    In(String),
    /// Not the code.
    Wrong {
        /// The code was withdrawn for too many wrong tries, and there is a new one.
        withdrawn: bool,
    },
    /// Nobody is let in any more: too many wrong tries or too many devices.
    Closed,
}

impl Pairing {
    /// A first code.
    ///
    /// # Errors
    /// When the system gives no random numbers.
    pub fn begin() -> Result<Pairing, String> {
        Ok(Pairing { code: fresh_code()?, wrong: 0, wrong_in_all: 0, sessions: vec![] })
    }

    /// The code as it is shown: two groups of four.
    pub fn shown(&self) -> String {
        let text = String::from_utf8_lossy(&self.code);
        format!("{}-{}", &text[..LONG / 2], &text[LONG / 2..])
    }

    /// Tries a code as somebody typed it; case, blanks and strokes do not matter.
    ///
    /// # Errors
    /// When the system gives no random numbers.
    pub fn attempt(&mut self, typed: &str) -> Result<Try, String> {
        if self.wrong_in_all >= ALL_TRIES || self.sessions.len() >= DEVICES {
            return Ok(Try::Closed);
        }
        let typed: Vec<u8> = typed.bytes().filter(u8::is_ascii_alphanumeric).map(|b| b.to_ascii_uppercase()).collect();
        if bool::from(typed.as_slice().ct_eq(&self.code)) {
            let token = fresh_token()?;
            self.sessions.push(token);
            self.code = fresh_code()?;
            self.wrong = 0;
            return Ok(Try::In(String::from_utf8_lossy(&token).into_owned()));
        }
        self.wrong += 1;
        self.wrong_in_all += 1;
        let withdrawn = self.wrong >= TRIES;
        if withdrawn {
            self.code = fresh_code()?;
            self.wrong = 0;
        }
        Ok(Try::Wrong { withdrawn })
    }

    /// True for the secret of a device that was let in. Takes as long for any wrong one.
    pub fn knows(&self, token: &str) -> bool {
        let found =
            self.sessions.iter().fold(subtle::Choice::from(0), |found, s| found | s.as_slice().ct_eq(token.as_bytes()));
        bool::from(found)
    }
}

fn random<const N: usize>() -> Result<[u8; N], String> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).map_err(|e| format!("the system gives no random numbers: {e}"))?;
    Ok(bytes)
}

fn fresh_code() -> Result<[u8; LONG], String> {
    Ok(random::<LONG>()?.map(|b| LETTERS[usize::from(b % 32)]))
}

fn fresh_token() -> Result<Token, String> {
    Ok(random::<64>()?.map(|b| LETTERS[usize::from(b % 32)]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn a_code_lets_in_once_and_is_then_another() {
        let mut p = Pairing::begin().unwrap();
        let code = p.shown();
        let Try::In(token) = p.attempt(&code.to_lowercase().replace('-', " ")).unwrap() else { panic!("not let in") };
        assert!(p.knows(&token));
        assert!(!p.knows("") && !p.knows(&token[1..]));
        assert_ne!(p.shown(), code);
        assert_eq!(p.attempt(&code).unwrap(), Try::Wrong { withdrawn: false });
    }

    #[test]
    fn the_fifth_wrong_try_withdraws_the_code_and_the_twentieth_closes_the_door() {
        let mut p = Pairing::begin().unwrap();
        let first = p.shown();
        for n in 1..=TRIES {
            assert_eq!(p.attempt("AAAA").unwrap(), Try::Wrong { withdrawn: n == TRIES });
        }
        assert_ne!(p.shown(), first);
        for _ in TRIES..ALL_TRIES {
            assert!(matches!(p.attempt("").unwrap(), Try::Wrong { .. }));
        }
        let right = p.shown();
        assert_eq!(p.attempt(&right).unwrap(), Try::Closed, "even for the right code");
    }

    #[test]
    fn so_many_devices_and_no_more() {
        let mut p = Pairing::begin().unwrap();
        for _ in 0..DEVICES {
            let code = p.shown();
            assert!(matches!(p.attempt(&code).unwrap(), Try::In(_)));
        }
        let code = p.shown();
        assert_eq!(p.attempt(&code).unwrap(), Try::Closed);
    }
}
