//! Does the page hold in a real browser? Gets Chromium and the accessibility rules, makes the page, runs its tests.

use crate::run::{Outcome, cargo, command, have, need_bare, quietly, root, step};
use crate::web::{self, For};

const PACKAGE: &str = "groundhold-web-tests";
/// Its tests; the other tests of the workspace are not run with them.
const TESTS: &[&str] = &["drawing", "engine", "keeping", "main_job", "site"];
/// The rules for WCAG, from npm.
const RULES: &str = "axe-core@4.11";

/// Makes the page and runs the browser tests; further words go to the tests. `--made` leaves the making out, `--shipped`
/// takes the page that people get.
pub fn chore(args: &[String]) -> Outcome {
    let (own, rest): (Vec<&String>, Vec<&String>) = args.iter().partition(|a| *a == "--made" || *a == "--shipped");
    let has = |word: &str| own.iter().any(|a| *a == word);
    let for_whom = if has("--shipped") { For::People } else { For::Tests };
    get_ready(for_whom, has("--made"))?;
    // With the whole workspace in sight every dependency is the one that the other tests were built with.
    let feature = format!("{PACKAGE}/browser");
    let mut tests = cargo(&["test", "--workspace", "--features", &feature, "--no-fail-fast"]);
    TESTS.iter().for_each(|t| _ = tests.args(["--test", t]));
    tests.args(["--", "--test-threads=2"]);
    tests.args(rest).env("GROUNDHOLD_PAGE", for_whom.folder());
    step("browser tests", &mut tests)
}

/// Frames, first interaction, engine in the page beside the native one.
pub fn bench(args: &[String]) -> Outcome {
    get_ready(For::People, args.iter().any(|a| a == "--made"))?;
    let build = ["build", "--quiet", "--release", "-p", PACKAGE, "--features", "browser", "--bins"];
    step("build", &mut cargo(&build))?;
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), Into::into);
    let of = |name: &str| target.join("release").join(name).to_string_lossy().into_owned();
    step("page speed", &mut command(&of("page-speed"), &[&of("keep-serving")]))
}

fn get_ready(for_whom: For, made: bool) -> Outcome {
    if !["chromium", "chromium-browser", "google-chrome"].iter().any(|p| have(p, "--version")) {
        need_bare("chromium", "--version", "chromium")
            .map_err(|e| format!("the page cannot be tested without Chromium: {e}"))?;
    }
    let tools = root().join("target/tools/npm");
    if !tools.join("node_modules/axe-core/axe.min.js").exists() {
        need_bare("npm", "--version", "npm")?;
        let prefix = tools.to_string_lossy().into_owned();
        println!("   fetching {RULES} from npm, once");
        if !quietly(&mut command("npm", &["install", "--prefix", &prefix, "--no-audit", "--no-fund", RULES])) {
            return Err(format!("the npm package {RULES} cannot be fetched"));
        }
    }
    if made && for_whom.folder().join("index.html").exists() { Ok(()) } else { web::make(for_whom) }
}
