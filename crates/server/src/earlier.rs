//! What was there before? Every save first copies the job's files into a numbered folder of `earlier/`.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::Path;

/// Folder of copies in a job's folder.
pub(crate) const EARLIER: &str = "earlier";
/// So many copies are kept; above that, every second one of the older half goes, so that the first always stays.
const MOST: usize = 400;

/// Copies texts into the next numbered folder, and gives its name.
///
/// # Errors
/// What the file system says; nothing was changed then but perhaps a folder begun.
pub(crate) fn keep(folder: &Path, files: &BTreeMap<String, String>) -> io::Result<String> {
    let all = folder.join(EARLIER);
    if fs::symlink_metadata(&all).is_ok_and(|m| !m.is_dir()) {
        return Err(io::Error::other(format!("`{EARLIER}` is not a folder")));
    }
    fs::create_dir_all(&all)?;
    let numbers = numbers(&all)?;
    let number = numbers.last().map_or(1, |n| n.saturating_add(1));
    let name = format!("{number:04}");
    let here = all.join(&name);
    for (file, text) in files {
        let to = here.join(file);
        fs::create_dir_all(to.parent().unwrap_or(&here))?;
        fs::write(&to, text)?;
        fs::File::open(&to)?.sync_all()?;
    }
    for gone in surplus(&numbers) {
        // Thinning out is a courtesy: a folder that cannot be removed stays.
        let _ = fs::remove_dir_all(all.join(format!("{gone:04}")));
    }
    Ok(format!("{EARLIER}/{name}"))
}

fn numbers(all: &Path) -> io::Result<Vec<u64>> {
    let mut numbers: Vec<u64> = fs::read_dir(all)?
        .flatten()
        .filter(|e| e.file_type().is_ok_and(|t| t.is_dir()))
        .filter_map(|e| e.file_name().to_str().and_then(|n| n.parse().ok()))
        .collect();
    numbers.sort_unstable();
    Ok(numbers)
}

/// Which copies go when there are too many: every second of the older half, never the first.
fn surplus(numbers: &[u64]) -> Vec<u64> {
    if numbers.len() < MOST {
        return vec![];
    }
    numbers[..numbers.len() / 2].iter().skip(1).step_by(2).copied().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thinning_out_begins_at_the_limit_and_keeps_the_first_and_all_recent_copies() {
        let few: Vec<u64> = (1..MOST as u64).collect();
        assert!(surplus(&few).is_empty());
        let many: Vec<u64> = (1..=MOST as u64).collect();
        let gone = surplus(&many);
        assert_eq!(gone.len(), MOST / 4);
        assert!(!gone.contains(&1) && gone.contains(&2) && gone.iter().all(|n| *n <= MOST as u64 / 2));
    }
}
