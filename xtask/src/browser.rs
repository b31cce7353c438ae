//! Does the page hold in a real browser? Gets Chromium and the accessibility rules, makes the page, runs its tests.

use crate::run::{Outcome, cargo, command, have, need, quietly, root, step};
use crate::web;

const PACKAGE: &str = "groundhold-web-tests";
/// The rules for WCAG, from npm.
const RULES: &str = "axe-core@4.11";

/// Makes the page and runs the browser tests; further words go to the tests. `--made` leaves the making out.
pub fn chore(args: &[String]) -> Outcome {
    let (made, rest): (Vec<&String>, Vec<&String>) = args.iter().partition(|a| *a == "--made");
    get_ready(!made.is_empty())?;
    let mut tests =
        cargo(&["test", "-p", PACKAGE, "--features", "browser", "--no-fail-fast", "--", "--test-threads=2"]);
    tests.args(rest);
    step("browser tests", &mut tests)
}

/// Frames, first interaction, engine in the page beside the native one.
pub fn bench(args: &[String]) -> Outcome {
    get_ready(args.iter().any(|a| a == "--made"))?;
    let build = ["build", "--quiet", "--release", "-p", PACKAGE, "--features", "browser", "--bins"];
    step("build", &mut cargo(&build))?;
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), Into::into);
    let of = |name: &str| target.join("release").join(name).to_string_lossy().into_owned();
    step("page speed", &mut command(&of("page-speed"), &[&of("keep-serving")]))
}

fn get_ready(made: bool) -> Outcome {
    if !["chromium", "chromium-browser", "google-chrome"].iter().any(|p| have(p, "--version")) {
        need("chromium", "--version", "chromium")?;
    }
    let tools = root().join("target/tools/npm");
    if !tools.join("node_modules/axe-core/axe.min.js").exists() {
        need("npm", "--version", "npm")?;
        let prefix = tools.to_string_lossy().into_owned();
        println!("   fetching {RULES} from npm, once");
        if !quietly(&mut command("npm", &["install", "--prefix", &prefix, "--no-audit", "--no-fund", RULES])) {
            return Err(format!("the npm package {RULES} cannot be fetched"));
        }
    }
    if made && web::dist().join("index.html").exists() { Ok(()) } else { web::chore(&[]) }
}
