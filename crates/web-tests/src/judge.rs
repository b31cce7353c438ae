//! Can everyone use what is on the screen? axe-core's rules for WCAG 2.2 AA, run in the page.

use std::path::Path;

use serde_json::Value;

use crate::{Outcome, Page};

/// The rules that count: levels A and AA of all versions up to 2.2.
const RULES: &str = "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']";

/// What the page as it is now does wrong, one line each.
///
/// # Errors
/// When the rules are not there or cannot be run.
pub fn judge(page: &mut Page) -> Outcome<Vec<String>> {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../target/tools/npm/node_modules/axe-core/axe.min.js");
    let rules = std::fs::read_to_string(&file)
        .map_err(|_| "axe-core is not there: `cargo xtask browser` fetches it from npm".to_string())?;
    if page.ask("typeof axe")? != "object" {
        page.ask(&format!("{rules}; 0"))?;
    }
    let found = page.ask(&format!(
        "axe.run(document, {{ runOnly: {RULES}, resultTypes: ['violations'] }})
            .then((r) => r.violations.map((v) => [v.id, v.help, v.nodes.map((n) => n.target.join(' ')).slice(0, 5).join(' | '), v.nodes[0]?.failureSummary]))"
    ))?;
    let word = |v: &Value| v.as_str().unwrap_or_default().to_string();
    let line =
        |v: &Value| format!("{}: {} at {} ({})", word(&v[0]), word(&v[1]), word(&v[2]), word(&v[3]).replace('\n', " "));
    Ok(found.as_array().map(|all| all.iter().map(line).collect()).unwrap_or_default())
}
