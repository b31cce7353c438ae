//! Which files make up the page? Assets and modules laid together, with a version that changes when any of them does.

use std::fs;
use std::path::Path;

use crate::run::Outcome;

/// When a file is fetched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Before the page works.
    First,
    /// When it is first asked for.
    Later,
}

/// The service worker: it ends with the version, because a browser looks for a change in this file only.
const WORKER: &str = "sw.js";
/// Version and paths, for the worker.
const LIST: &str = "files.json";

/// Lays assets and modules together in a fresh folder.
///
/// # Errors
/// Which file could not be read or written.
pub fn assemble(assets: &Path, parts: &Path, packed: &[(String, Part)], dist: &Path) -> Outcome {
    let mut all = read_all(assets)?;
    all.extend(read_all(parts)?);
    all.sort();
    if !all.iter().any(|(name, _)| name == "index.html") {
        return Err(format!("{}: there is no index.html", assets.display()));
    }
    let version = version(&all);
    let names = |part: Part| {
        let of = all.iter().map(|(n, _)| n.as_str()).filter(|n| *n != WORKER && self::part(n, packed) == part);
        format!("[{}]", of.map(|n| format!("\"{n}\"")).collect::<Vec<_>>().join(", "))
    };
    let (first, later) = (names(Part::First), names(Part::Later));
    let list = format!("{{\"version\": \"{version}\", \"files\": {first}, \"later\": {later}}}\n");
    if let Some((_, worker)) = all.iter_mut().find(|(n, _)| n == WORKER) {
        worker.extend(format!("\n// Version {version}\n").bytes());
    }
    all.push((LIST.into(), list.into_bytes()));
    let fresh = dist.with_extension("part");
    let _ = fs::remove_dir_all(&fresh);
    for (name, bytes) in &all {
        let path = fresh.join(name);
        let failed = |e: std::io::Error| format!("{}: {e}", path.display());
        fs::create_dir_all(path.parent().unwrap_or(&fresh)).map_err(failed)?;
        fs::write(&path, bytes).map_err(failed)?;
    }
    let _ = fs::remove_dir_all(dist);
    fs::rename(&fresh, dist).map_err(|e| format!("{}: {e}", dist.display()))
}

/// When a file is fetched: with its module.
pub fn part(file: &str, packed: &[(String, Part)]) -> Part {
    let of = |name: &str| file == format!("{name}.js") || file == format!("{name}_bg.wasm");
    packed.iter().find(|(name, _)| of(name)).map_or(Part::First, |(_, part)| *part)
}

/// Paths of all files under a folder, with `/` between, in order.
///
/// # Errors
/// Which folder could not be read.
pub fn list(folder: &Path) -> Result<Vec<String>, String> {
    let mut found = vec![];
    for entry in fs::read_dir(folder).map_err(|e| format!("{}: {e}", folder.display()))?.flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        if entry.path().is_dir() {
            found.extend(list(&entry.path())?.into_iter().map(|inner| format!("{name}/{inner}")));
        } else {
            found.push(name);
        }
    }
    found.sort();
    Ok(found)
}

fn read_all(folder: &Path) -> Result<Vec<(String, Vec<u8>)>, String> {
    let read = |name: String| {
        let bytes = fs::read(folder.join(&name)).map_err(|e| format!("{name}: {e}"))?;
        Ok((name, bytes))
    };
    list(folder)?.into_iter().map(read).collect()
}

/// Sixteen hexadecimal digits over all names and contents (FNV-1a, 64 bits): enough to tell one build from another.
fn version(files: &[(String, Vec<u8>)]) -> String {
    let mut hash: u64 = 0xcbf2_9ce4_8422_2325;
    for (name, bytes) in files {
        for byte in name.bytes().chain([0]).chain(bytes.iter().copied()).chain([0]) {
            hash = (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3);
        }
    }
    format!("{hash:016x}")
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn file(name: &str, text: &str) -> (String, Vec<u8>) {
        (name.into(), text.as_bytes().to_vec())
    }

    #[test]
    fn the_version_changes_with_a_name_and_with_a_letter() {
        let one = version(&[file("a", "x"), file("b", "y")]);
        assert_eq!(one, version(&[file("a", "x"), file("b", "y")]));
        assert_ne!(one, version(&[file("a", "x"), file("c", "y")]));
        assert_ne!(one, version(&[file("a", "x"), file("b", "z")]));
    }

    #[test]
    fn the_list_has_every_file_but_the_worker_and_the_later_ones_apart_and_the_worker_ends_with_the_version() {
        let base = std::env::temp_dir().join(format!("groundhold-files-{}", std::process::id()));
        let (assets, parts, dist) = (base.join("assets"), base.join("parts"), base.join("dist"));
        fs::create_dir_all(assets.join("icons")).unwrap();
        fs::create_dir_all(&parts).unwrap();
        for (path, text) in [
            (assets.join("index.html"), "<p>"),
            (assets.join("icons/i.svg"), "<svg/>"),
            (assets.join("sw.js"), "1;"),
            (parts.join("p.js"), ""),
            (parts.join("p_bg.wasm"), ""),
        ] {
            fs::write(path, text).unwrap();
        }
        assemble(&assets, &parts, &[("p".into(), Part::Later)], &dist).unwrap();
        let list = fs::read_to_string(dist.join("files.json")).unwrap();
        let (head, rest) = list.split_at("{\"version\": \"0123456789abcdef\"".len());
        assert_eq!(rest, ", \"files\": [\"icons/i.svg\", \"index.html\"], \"later\": [\"p.js\", \"p_bg.wasm\"]}\n");
        let version = head.rsplit('"').nth(1).unwrap();
        let worker = fs::read_to_string(dist.join("sw.js")).unwrap();
        assert_eq!(worker, format!("1;\n// Version {version}\n"));
        fs::remove_dir_all(&base).unwrap();
    }
}
