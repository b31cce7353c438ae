//! The diary in a job file: entries read, and an entry written at the end.

use groundhold_plan::job::{AsBuilt, BuiltPost, Entry, Event, Find};

use crate::page::Node;

/// One entry; `None` after a complaint.
pub(crate) fn entry(n: &Node) -> Option<Entry> {
    let at = n.moment("at")?;
    let note = n.text("note").unwrap_or_default();
    let event = match (n.table("find"), n.table("built")) {
        (Some(_), Some(_)) => {
            n.complain("find", "an entry has a find or something built, not both; write two entries");
            return None;
        }
        (Some(f), None) => Event::Find(find(&f)?),
        (None, Some(b)) => Event::Built(built(&b)?),
        (None, None) => Event::Note,
    };
    Some(Entry { at, event, note })
}

fn find(n: &Node) -> Option<Find> {
    let kind = n.text("kind")?;
    Some(match kind.as_str() {
        "rock" => Find::Rock {
            wall: needed(n, "wall", n.text("wall"))?,
            post: needed(n, "post", n.number("post"))? as usize,
            chainage: n.quantity("chainage"),
            at: n.has("at").then(|| n.point("at")).flatten(),
            depth: needed(n, "depth", n.quantity("depth"))?,
        },
        "pipe" | "cable" => {
            let line = match (n.has("line"), n.has("at")) {
                (true, _) => n.points("line", 2)?,
                (false, true) => vec![n.point("at")?],
                _ => {
                    n.complain("kind", "where was it found? expected `at` a point, or a `line` where it was followed");
                    return None;
                }
            };
            let what = n.text("what").unwrap_or(format!("unknown {kind}"));
            Find::Service { what, line, depth: needed(n, "depth", n.quantity("depth"))? }
        }
        "water" => Find::Water {
            element: needed(n, "element", n.text("element").or_else(|| n.text("wall")))?,
            depth: needed(n, "depth", n.quantity("depth"))?,
        },
        _ => Find::LevelError {
            point: needed(n, "point", n.text("point"))?,
            level: needed(n, "level", n.quantity("level"))?,
        },
    })
}

fn needed<T>(n: &Node, key: &str, value: Option<T>) -> Option<T> {
    if value.is_none() && !n.has(key) {
        n.complain("kind", format!("this kind of find needs `{key}`"));
    }
    value
}

fn built(n: &Node) -> Option<AsBuilt> {
    let element = n.text("element")?;
    let says = n.text("says").unwrap_or_else(|| element.clone());
    let list = n.tables("posts");
    let posts = list.iter().filter_map(|p| {
        Some(BuiltPost {
            number: p.number("number")? as usize,
            chainage: p.quantity("chainage")?,
            at: p.has("at").then(|| p.point("at")).flatten(),
            depth: p.quantity("depth")?,
            diameter: p.quantity("diameter")?,
            top: p.quantity("top")?,
            length: p.quantity("length"),
        })
    });
    Some(AsBuilt { says, element, posts: posts.collect() })
}

/// An entry as it stands in a job file, to be put at its end.
pub fn entry_text(entry: &Entry) -> String {
    let m = |v: f64| format!("\"{v:.3} m\"");
    let point = |p: &groundhold_quantity::Point| format!("[{}, {}]", m(p.x), m(p.y));
    let mut out = format!("\n[[record]]\nat   = {}\n", entry.at);
    match &entry.event {
        Event::Note => {}
        Event::Find(f) => {
            let body = match f {
                Find::Rock { wall, post, chainage, at, depth } => {
                    let along = chainage.map_or(String::new(), |c| format!("chainage = {}, ", m(c.to_m())));
                    let at = at.map_or(String::new(), |p| format!("at = {}, ", point(&p)));
                    format!(
                        "kind = \"rock\", wall = {}, post = {post}, {along}{at}depth = {}",
                        quoted(wall),
                        m(depth.to_m())
                    )
                }
                Find::Service { what, line, depth } => {
                    let place = match &line[..] {
                        [p] => format!("at = {}", point(p)),
                        ps => format!("line = [{}]", ps.iter().map(point).collect::<Vec<_>>().join(", ")),
                    };
                    let kind = if what.contains("cable") { "cable" } else { "pipe" };
                    format!("kind = \"{kind}\", what = {}, {place}, depth = {}", quoted(what), m(depth.to_m()))
                }
                Find::Water { element, depth } => {
                    format!("kind = \"water\", element = {}, depth = {}", quoted(element), m(depth.to_m()))
                }
                Find::LevelError { point, level } => {
                    format!("kind = \"level\", point = {}, level = {}", quoted(point), m(level.to_m()))
                }
            };
            out.push_str(&format!("find = {{ {body} }}\n"));
        }
        Event::Built(b) => {
            let posts: Vec<String> = b
                .posts
                .iter()
                .map(|p| {
                    format!(
                        "  {{ number = {}, chainage = {}, {}depth = {}, diameter = {}, top = {}{} }},\n",
                        p.number,
                        m(p.chainage.to_m()),
                        p.at.map_or(String::new(), |at| format!("at = {}, ", point(&at))),
                        m(p.depth.to_m()),
                        m(p.diameter.to_m()),
                        m(p.top.to_m()),
                        p.length.map_or(String::new(), |l| format!(", length = {}", m(l.to_m())))
                    )
                })
                .collect();
            let (element, says) = (quoted(&b.element), quoted(&b.says));
            out.push_str(&format!("built.element = {element}\nbuilt.says = {says}\n"));
            if !posts.is_empty() {
                out.push_str(&format!("built.posts = [\n{}]\n", posts.concat()));
            }
        }
    }
    if !entry.note.is_empty() {
        out.push_str(&format!("note = {}\n", quoted(&entry.note)));
    }
    out
}

/// A text in quotes as TOML wants it.
pub(crate) fn quoted(text: &str) -> String {
    toml_edit::Value::from(text).to_string().trim().to_string()
}
