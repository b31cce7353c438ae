//! How does the page behave in a real browser? A small driver of Chromium's own protocol, for the tests of this crate.
//!
//! Chromium is spoken to over two pipes (`--remote-debugging-pipe`), so that no port is open and no other program is needed.

mod chromium;
mod hand;
mod judge;
mod page;
mod served;

pub use chromium::Chromium;
pub use judge::judge;
pub use page::{DESK, PHONE, Page, Screen, element};
pub use served::{Served, dist, folder};

/// Done, or what went wrong.
pub type Outcome<T> = Result<T, String>;
