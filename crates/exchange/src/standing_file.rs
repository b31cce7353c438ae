//! Walls that stand already, as people write them into a job file: read, written, and a new one put in an old one's place.

use groundhold_finding::Adjust;
use groundhold_hold::standing::{AboveIt, BelowIt, CrackFound, CrackRuns, Made, PostsFound, Seen, Weeps};
use groundhold_plan::Plan;
use groundhold_plan::job::{OldWall, timber};
use groundhold_quantity::Length;

use crate::edit::apply_adjust;
use crate::job_text::{points, wall_text};
use crate::page::Node;
use crate::problem::Problem;
use crate::record_file::quoted;
use crate::spelled as say;

/// What stands above, by the word of the file.
const ABOVE: [(&str, AboveIt); 5] = [
    ("load", AboveIt::Load),
    ("vehicle", AboveIt::Vehicle),
    ("fence", AboveIt::Fence),
    ("wet ground", AboveIt::WetGround),
    ("tree", AboveIt::Tree),
];
/// What was done below.
const BENEATH: [(&str, BelowIt); 2] = [("dug away", BelowIt::DugAway), ("trench", BelowIt::Trench)];
const RUNS: [(&str, CrackRuns); 3] =
    [("horizontal", CrackRuns::Horizontal), ("stepped", CrackRuns::Stepped), ("vertical", CrackRuns::Vertical)];
const WEEPS: [(&str, Weeps); 3] = [("none", Weeps::Absent), ("blocked", Weeps::Blocked), ("running", Weeps::Running)];

fn meant<T: Copy>(words: &[(&str, T)], word: &str) -> Option<T> {
    words.iter().find(|(w, _)| *w == word).map(|(_, t)| *t)
}

fn spelt<T: Copy + PartialEq>(words: &[(&'static str, T)], what: T) -> &'static str {
    words.iter().find(|(_, t)| *t == what).map_or("", |(w, _)| *w)
}

/// A list of words that each mean something.
fn list<T: Copy>(n: &Node, key: &str, words: &[(&str, T)]) -> Vec<T> {
    let names = n.names(key).unwrap_or_default();
    let known: Vec<&str> = words.iter().map(|(w, _)| *w).collect();
    let each = names.iter().filter_map(|name| {
        let found = meant(words, name);
        if found.is_none() {
            n.complain(key, format!("found `{name}`, expected some of {}", known.join(", ")));
        }
        found
    });
    each.collect()
}

pub(crate) fn read(n: &Node) -> Option<OldWall> {
    let made = n.text("made").and_then(|w| Made::ALL.into_iter().find(|m| m.words() == w));
    let (line, height) = (n.points("line", 2), n.quantity("height"));
    let posts = posts(n);
    let retains_left = n.text("retains").map(|r| r == "left");
    let (made, height) = (made?, height?);
    let bulge = n.table("bulge").and_then(|b| b.quantity("size").zip(b.quantity("at")));
    if bulge.is_some_and(|(_, at): (Length, Length)| at > height) {
        n.complain("bulge", "it bellies out above its own top; expected `at` no higher than `height`");
    }
    let cracks = n.tables("crack");
    let cracks = cracks
        .iter()
        .filter_map(|c| Some(CrackFound { runs: meant(&RUNS, &c.text("runs")?)?, width: c.quantity("width")? }));
    let seen = Seen {
        thickness: n.quantity("thickness"),
        below: n.quantity("below"),
        posts,
        age: n.number("age"),
        lean: n.quantity("lean").unwrap_or(Length::ZERO),
        bulge,
        cracks: cracks.collect(),
        weeps: n.text("weeps").and_then(|w| meant(&WEEPS, &w)),
        filter: n.flag("filter"),
        wet_to: n.quantity("wet"),
        above: list(n, "above", &ABOVE),
        load: n.quantity("load"),
        beneath: list(n, "beneath", &BENEATH),
        dug: n.quantity("dug"),
        ..Seen::bare(made, height)
    };
    if seen.made == Made::TimberPosts && seen.posts.is_none() && !n.has("post") {
        n.complain("post", "a wall of posts needs the `post`, for example \"100x100\", and its `spacing`");
        return None;
    }
    Some(OldWall {
        id: n.text("id")?,
        name: n.text("name").unwrap_or_default(),
        line: line?,
        retains_left: retains_left?,
        looked_at: n.text("looked_at").unwrap_or_default(),
        note: n.text("note").unwrap_or_default(),
        seen,
        replaced_by: n.text("replaced_by").unwrap_or_default(),
    })
}

fn posts(n: &Node) -> Option<PostsFound> {
    let (spacing, hole, soft) = (n.quantity("spacing"), n.quantity("hole"), n.quantity("soft"));
    let text = n.text("post")?;
    let Some((breadth, depth)) = timber::sizes(&text) else {
        n.complain("post", format!("found `{text}`, expected two sizes in mm, such as \"100x100\""));
        return None;
    };
    let Some(spacing) = spacing else {
        n.complain("spacing", "how far apart are the posts? expected a length, for example \"1.2 m\"");
        return None;
    };
    Some(PostsFound { breadth, depth, spacing, hole: hole.unwrap_or(breadth), soft })
}

/// The block of a job file.
pub(crate) fn text(w: &OldWall) -> String {
    let s = &w.seen;
    let mut out = String::from("\n[[standing]]\n");
    let mut line = |key: &str, value: Option<String>| {
        if let Some(v) = value {
            out.push_str(&format!("{key} = {v}\n"));
        }
    };
    let words = |t: &str| (!t.is_empty()).then(|| quoted(t));
    let names = |all: Vec<&str>| {
        let all: Vec<String> = all.iter().map(|t| quoted(t)).collect();
        (!all.is_empty()).then(|| format!("[{}]", all.join(", ")))
    };
    line("id", Some(quoted(&w.id)));
    line("name", words(&w.name));
    line("made", words(s.made.words()));
    line("line", Some(points(&w.line)));
    line("retains", words(if w.retains_left { "left" } else { "right" }));
    line("looked_at", words(&w.looked_at));
    line("height", Some(say::length(s.height)));
    line("thickness", s.thickness.map(say::length));
    line("below", s.below.map(say::length));
    if let Some(p) = &s.posts {
        line("post", words(&say::sizes(p.breadth, p.depth)));
        line("spacing", Some(say::length(p.spacing)));
        line("hole", Some(say::length(p.hole)));
        line("soft", p.soft.map(say::length));
    }
    line("age", s.age.map(say::number));
    line("lean", (s.lean != Length::ZERO).then(|| say::length(s.lean)));
    line("bulge", s.bulge.map(|(size, at)| format!("{{ size = {}, at = {} }}", say::length(size), say::length(at))));
    let crack =
        |c: &CrackFound| format!("{{ runs = {}, width = {} }}", quoted(spelt(&RUNS, c.runs)), say::length(c.width));
    let cracks: Vec<String> = s.cracks.iter().map(crack).collect();
    line("crack", (!cracks.is_empty()).then(|| format!("[{}]", cracks.join(", "))));
    line("weeps", s.weeps.and_then(|k| words(spelt(&WEEPS, k))));
    line("filter", s.filter.map(|f| f.to_string()));
    line("wet", s.wet_to.map(say::length));
    line("above", names(s.above.iter().map(|a| spelt(&ABOVE, *a)).collect()));
    line("load", s.load.map(say::pressure));
    line("beneath", names(s.beneath.iter().map(|b| spelt(&BENEATH, *b)).collect()));
    line("dug", s.dug.map(say::length));
    line("note", words(&w.note));
    line("replaced_by", words(&w.replaced_by));
    out
}

/// The text of a job file with the new wall that the plan has sized put in an old wall's place: the new wall at its end, and its id
/// in the old one's `replaced_by`. Everything else stays as it was written.
///
/// # Errors
/// What was expected; the text is untouched.
pub fn put_in_place(job_text: &str, plan: &Plan, old: &str) -> Result<String, Problem> {
    let wrong = |says: String| Problem::whole("job.toml", says);
    let Some(wall) = plan.old_walls.iter().find(|w| w.id == old) else {
        let known: Vec<&str> = plan.old_walls.iter().map(|w| w.id.as_str()).collect();
        return Err(wrong(format!("there is no standing wall `{old}`; there are {}", known.join(", "))));
    };
    let Some(new) = &wall.replacement else {
        return Err(wrong(format!("no new wall was sized for {old}: {}", wall.replaced)));
    };
    let change = Adjust { element: old.into(), field: "replaced_by".into(), value: new.id.clone() };
    let (mut text, _) = apply_adjust(job_text, &change)?;
    text.push_str(&wall_text(new));
    Ok(text)
}
