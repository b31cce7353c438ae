//! What has been ticked off: a table among the job's files, so that it is undone, kept and handed on like everything else.

use groundhold_plan::Plan;
use groundhold_plan::job::{AsBuilt, BuiltPost, Entry, Event};

use crate::entry::Rows;
use crate::job::{Files, append};

const FILE: &str = "ticks.csv";
const COLUMNS: &[&str] = &["done", "at"];

/// Keys of what is done.
pub fn ticks(files: &Files) -> Vec<String> {
    let rows = Rows::read(files.text(FILE), COLUMNS);
    (0..rows.rows.len()).map(|i| rows.cell(i, "done").to_string()).collect()
}

/// The texts with a thing ticked off. A post that stands goes into the diary with its measures: it is held fixed from then on.
pub fn tick(files: &Files, plan: &Plan, key: &str, at: &str) -> Files {
    if let Some(entry) = post_stands(plan, key, at) {
        return append(files, &entry);
    }
    let mut rows = Rows::read(files.text(FILE), COLUMNS);
    let row = rows.add();
    rows.set(row, "done", key);
    rows.set(row, "at", at);
    files.with(FILE, &rows.text())
}

fn post_stands(plan: &Plan, key: &str, at: &str) -> Option<Entry> {
    let (wall, number) = key.strip_prefix("post ")?.rsplit_once(' ')?;
    let post = plan.wall(wall)?.layout.post(number.parse().ok()?)?;
    let built = BuiltPost {
        number: post.number,
        chainage: post.chainage,
        at: Some(post.face),
        depth: post.depth,
        diameter: post.hole_diameter,
        top: post.top,
        length: Some(post.length),
    };
    let says = format!("{wall} post {number}");
    let event = Event::Built(AsBuilt { says, element: wall.into(), posts: vec![built] });
    Some(Entry { at: at.into(), event, note: String::new() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::{Round, steps};

    const AT: &str = "2026-05-11T10:20:00";

    #[test]
    fn a_tick_is_remembered_and_a_post_that_stands_is_held_fixed() {
        let files = crate::job::demo();
        let plan = groundhold_plan::plan(&files.read().whole().unwrap()).unwrap();
        let peg = steps(&plan, Round::Pegs, &[])[1].key.clone();
        let after = tick(&files, &plan, &peg, AT);
        assert_eq!(ticks(&after), [peg]);
        let after = tick(&after, &plan, "post W2 3", AT);
        let job = after.read().whole().unwrap();
        assert_eq!(job.record.len(), 1);
        let again = groundhold_plan::plan(&job).unwrap();
        assert!(steps(&again, Round::Posts, &[]).iter().any(|s| s.key == "post W2 3" && s.done));
    }
}
