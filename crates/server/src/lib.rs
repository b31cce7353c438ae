//! Who may read and write the job over a wire, and what do they get? The page, and the job's files as one text.
//!
//! The server plans nothing: the engine runs in the page. It stores, shares and serves. It listens on this machine only;
//! shared, it listens on one address of the local network as well, and lets in who knows the code on the screen.
//! `docs/web.md` lists what it answers.

mod answer;
mod earlier;
mod guard;
mod job_folder;
mod listen;
mod network;
mod pages;
mod pairing;
mod tag;

pub use answer::Site;
pub use guard::Door;
pub use job_folder::{Conflict, JobFolder, Kept, NotKept};
pub use listen::{Listener, MOST_BYTES, NoServer, run};
pub use network::{is_local, own_address};
pub use pages::Pages;
pub use pairing::{Pairing, Try};
