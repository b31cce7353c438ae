//! The habits of this house that a machine can check. Each complaint reads `file:line: rule: what to do`.

use std::fs;
use std::path::{Path, PathBuf};

use crate::run::{Outcome, root};

/// Which crates each crate may know: the arrows of ARCHITECTURE.md. Everything may know `quantity`.
const ARROWS: &[(&str, &[&str])] = &[
    ("quantity", &[]),
    ("working", &[]),
    ("finding", &["working"]),
    ("reference", &["working"]),
    ("surface", &[]),
    ("earth", &["working"]),
    ("member", &["working"]),
    ("measure", &["working", "finding", "surface"]),
    ("shape", &["working", "finding", "surface"]),
    ("hold", &["working", "finding", "surface", "earth", "member"]),
    ("drain", &["working", "finding", "surface"]),
    ("dig", &["working", "finding", "surface"]),
    ("order", &["working", "finding", "surface"]),
    ("setout", &["working", "finding", "surface"]),
    ("build", &["working", "finding", "surface"]),
    (
        "plan",
        &[
            "working", "finding", "surface", "earth", "member", "measure", "shape", "hold", "drain", "dig", "order",
            "setout", "build",
        ],
    ),
    ("exchange", &["*"]),
    ("draw", &["*"]),
    ("paper", &["*", "draw"]),
    ("server", &["exchange"]),
    ("cli", &["*", "exchange", "draw", "paper", "reference", "server"]),
    ("web", &["*", "exchange", "draw"]),
    ("web-paper", &["*", "exchange", "paper"]),
    ("web-tests", &["*", "exchange", "paper", "server", "web"]),
    ("cases", &["*", "exchange", "draw", "paper"]),
];

/// Module names that say nothing about what is inside.
const EMPTY_NAMES: &[&str] = &["utils", "util", "common", "helpers", "helper", "manager", "core", "types", "misc"];
/// Crates that must give the same answer everywhere: no clock, file, network, threads, hash maps, serialization.
const PURE: &[&str] = &[
    "quantity", "working", "finding", "surface", "earth", "member", "measure", "shape", "hold", "drain", "dig",
    "order", "setout", "build", "plan",
];
const IMPURE: &[(&str, &str)] = &[
    ("std::fs", "files are read by `exchange` and the faces"),
    ("std::net", "no network below the faces"),
    ("std::time", "today's date comes in as data"),
    ("std::thread", "no threads from `plan` down"),
    ("std::env", "no environment from `plan` down"),
    ("HashMap", "its order differs between runs: use BTreeMap or a Vec"),
    ("HashSet", "its order differs between runs: use BTreeSet or a Vec"),
    ("serde::", "the core's types are not the file format: mirror them in `exchange`"),
];
const UNFINISHED: &[&str] = &["todo!(", "unimplemented!(", "FIXME", "XXX"];
const LONG_FILE: usize = 700;

/// Checks the tree and lists what is not tidy.
pub fn chore(_: &[String]) -> Outcome {
    let complaints = complaints(&root())?;
    complaints.iter().for_each(|c| println!("{c}"));
    if complaints.is_empty() {
        println!("── tidy: nothing to say");
        Ok(())
    } else {
        Err(format!("{} things are not tidy", complaints.len()))
    }
}

fn complaints(root: &Path) -> Result<Vec<String>, String> {
    let mut said = vec![];
    let mut files = vec![];
    collect(&root.join("crates"), &mut files)?;
    collect(&root.join("xtask"), &mut files)?;
    files.sort();
    for path in files {
        let text = fs::read_to_string(&path).map_err(|e| format!("{}: {e}", path.display()))?;
        let shown = path.strip_prefix(root).unwrap_or(&path).display().to_string().replace('\\', "/");
        check_file(&shown, &text, &mut said);
    }
    for (name, _) in ARROWS {
        let manifest = root.join("crates").join(name).join("Cargo.toml");
        match fs::read_to_string(&manifest) {
            Ok(text) => check_arrows(name, &text, &mut said),
            Err(_) => said.push(format!("crates/{name}/Cargo.toml:1: arrows: listed in tidy but not there")),
        }
    }
    check_architecture(root, &mut said);
    Ok(said)
}

fn collect(dir: &Path, files: &mut Vec<PathBuf>) -> Outcome {
    for entry in fs::read_dir(dir).map_err(|e| format!("{}: {e}", dir.display()))?.flatten() {
        let path = entry.path();
        if path.is_dir() {
            collect(&path, files)?;
        } else if path.extension().is_some_and(|e| e == "rs") {
            files.push(path);
        }
    }
    Ok(())
}

fn check_file(shown: &str, text: &str, said: &mut Vec<String>) {
    let parts: Vec<&str> = shown.split('/').collect();
    let in_src = parts.contains(&"src");
    let stem = parts.last().map_or("", |f| f.trim_end_matches(".rs"));
    if in_src && !text.starts_with("//!") {
        said.push(format!("{shown}:1: first line: begin with `//!` and the question this file answers"));
    }
    if EMPTY_NAMES.contains(&stem) && shown != "crates/quantity/src/types.rs" {
        said.push(format!("{shown}:1: name: `{stem}` says nothing; name the idea inside"));
    }
    let tests_begin = text.lines().position(|l| l.trim() == "#[cfg(test)]").unwrap_or(usize::MAX);
    let code = text.lines().take(tests_begin).filter(|l| !l.trim().is_empty() && !l.trim().starts_with("//")).count();
    if code > LONG_FILE {
        said.push(format!("{shown}:1: length: {code} lines of code; split it into ideas"));
    }
    let pure = parts.first() == Some(&"crates") && parts.get(1).is_some_and(|c| PURE.contains(c)) && in_src;
    for (i, line) in text.lines().enumerate() {
        let bare = line.trim_start();
        let here = |rule: &str| format!("{shown}:{}: {rule}", i + 1);
        if line != line.trim_end() {
            said.push(here("blanks: remove the blanks at the end"));
        }
        if shown == "xtask/src/tidy.rs" || bare.starts_with("//") {
            continue;
        }
        if let Some(u) = UNFINISHED.iter().find(|u| line.contains(**u)) {
            said.push(here(&format!("unfinished: `{u}` may not stay")));
        }
        if pure
            && i < tests_begin
            && let Some((what, why)) = IMPURE.iter().find(|(w, _)| line.contains(w))
        {
            said.push(here(&format!("purity: `{what}`: {why}")));
        }
    }
}

fn check_arrows(name: &str, manifest: &str, said: &mut Vec<String>) {
    let Some((_, allowed)) = ARROWS.iter().find(|(n, _)| *n == name) else { return };
    let stages = ARROWS.iter().take_while(|(n, _)| *n != "exchange").map(|(n, _)| *n).collect::<Vec<_>>();
    let mut in_dependencies = false;
    for (i, line) in manifest.lines().enumerate() {
        if line.starts_with('[') {
            in_dependencies = line.trim() == "[dependencies]";
        }
        let Some(known) = line.strip_prefix("groundhold-").filter(|_| in_dependencies) else { continue };
        let known = known.split(['.', ' ', '=']).next().unwrap_or_default();
        let fine =
            known == "quantity" || allowed.contains(&known) || (allowed.contains(&"*") && stages.contains(&known));
        if !fine {
            said.push(format!("crates/{name}/Cargo.toml:{}: arrows: `{name}` may not know `{known}`", i + 1));
        }
    }
}

/// ARCHITECTURE.md names every crate and none that is not there.
fn check_architecture(root: &Path, said: &mut Vec<String>) {
    let Ok(page) = fs::read_to_string(root.join("ARCHITECTURE.md")) else {
        said.push("ARCHITECTURE.md:1: page: it is missing".into());
        return;
    };
    let Ok(entries) = fs::read_dir(root.join("crates")) else { return };
    for name in entries.flatten().map(|e| e.file_name().to_string_lossy().into_owned()) {
        if !ARROWS.iter().any(|(n, _)| *n == name) {
            said.push(format!("crates/{name}:1: arrows: a crate that tidy does not know"));
        }
        if !page.contains(&format!("`{name}`")) {
            said.push(format!("ARCHITECTURE.md:1: page: the crate `{name}` is not named"));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_without_its_question_and_with_a_clock_is_complained_of() {
        let mut said = vec![];
        check_file("crates/plan/src/x.rs", "use std::time::Instant;\n", &mut said);
        assert_eq!(said.len(), 2, "{said:?}");
        assert!(said[1].contains("purity"));
    }

    #[test]
    fn a_stage_that_knows_another_stage_is_complained_of() {
        let mut said = vec![];
        check_arrows("drain", "[dependencies]\ngroundhold-dig.workspace = true\n", &mut said);
        assert_eq!(said, ["crates/drain/Cargo.toml:2: arrows: `drain` may not know `dig`"]);
        said.clear();
        check_arrows("plan", "[dependencies]\ngroundhold-dig.workspace = true\n", &mut said);
        assert!(said.is_empty());
    }
}
