//! How is something said on standard output, where nobody need listen to the end?

use std::io::{ErrorKind, Write};

use crate::Refusal;

/// Says a text as it is. A listener who has gone away (`groundhold plan | head -3`) is no error: the rest is not said.
///
/// # Errors
/// Where standard output cannot be written for another reason, such as a full disk.
pub fn text(says: &str) -> Result<(), Refusal> {
    into(&mut std::io::stdout().lock(), says)
}

fn into(out: &mut impl Write, says: &str) -> Result<(), Refusal> {
    match out.write_all(says.as_bytes()).and_then(|()| out.flush()) {
        Err(e) if e.kind() != ErrorKind::BrokenPipe => Err(format!("standard output cannot be written: {e}")),
        _ => Ok(()),
    }
}

/// Says a line, and leaves the function with its refusal where that cannot be done.
macro_rules! line {
    ($($said:tt)*) => {
        $crate::say::text(&(format!($($said)*) + "\n"))?
    };
}
pub(crate) use line;

#[cfg(test)]
mod tests {
    use super::*;

    /// Fails in one way.
    struct Fails(ErrorKind);

    impl Write for Fails {
        fn write(&mut self, _: &[u8]) -> std::io::Result<usize> {
            Err(self.0.into())
        }
        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn a_listener_who_has_gone_is_no_error_and_a_full_disk_is_one() {
        assert_eq!(into(&mut Fails(ErrorKind::BrokenPipe), "x"), Ok(()));
        let full = into(&mut Fails(ErrorKind::StorageFull), "x").unwrap_err();
        assert!(full.contains("standard output cannot be written"), "{full}");
        let mut heard = vec![];
        assert_eq!(into(&mut heard, "x\n"), Ok(()));
        assert_eq!(heard, b"x\n");
    }
}
