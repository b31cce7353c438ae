//! The demo job, as it lies in the repository: everything in it is invented and says so.

use super::Files;

/// The demo job's texts.
pub fn demo() -> Files {
    Files::of(&[
        ("job.toml", include_str!("../../../../demo/job.toml")),
        ("levels.csv", include_str!("../../../../demo/levels.csv")),
        ("positions.csv", include_str!("../../../../demo/positions.csv")),
        ("prices.csv", include_str!("../../../../demo/prices.csv")),
    ])
}
