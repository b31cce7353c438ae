//! Which situations must the walls of a job meet, and how hard does its ground shake?

use groundhold_hold::LoadCase;
use groundhold_plan::job::GroundWish;
use groundhold_quantity::Share;

use crate::page::Node;
use crate::record_file::quoted;
use crate::spelled as say;

/// The situations that a job asks to be met; a name that is none of them is a problem of the file, and so is an earthquake
/// of which nobody says how hard it shakes.
pub(crate) fn must_meet(n: &Node) -> Vec<LoadCase> {
    if !n.has("must_meet") {
        return vec![];
    }
    let names = n.names("must_meet").unwrap_or_default();
    let known = || LoadCase::ON_REQUEST.map(LoadCase::key).join(", ");
    let mut all = vec![];
    for name in names {
        match LoadCase::ON_REQUEST.into_iter().find(|s| s.key() == name) {
            Some(s) if all.contains(&s) => n.complain("must_meet", format!("`{name}` stands there twice")),
            Some(LoadCase::Earthquake) if !n.has("earthquake") => n.complain(
                "must_meet",
                "`earthquake` needs the table `earthquake` beside it, such as { horizontal = \"10 %\", source = \"the local code\" }",
            ),
            Some(s) => all.push(s),
            None => n.complain("must_meet", format!("`{name}` is no situation; expected some of {}", known())),
        }
    }
    all
}

pub(crate) fn shaking(n: &Node) -> Option<(Share, String)> {
    let e = n.table("earthquake")?;
    Some((e.quantity("horizontal")?, e.text("source")?))
}

pub(crate) fn lines(g: &GroundWish) -> Vec<(&'static str, String)> {
    let mut all = vec![];
    if !g.must_meet.is_empty() {
        let names: Vec<String> = g.must_meet.iter().map(|s| format!("\"{}\"", s.key())).collect();
        all.push(("must_meet", format!("[{}]", names.join(", "))));
    }
    all.extend(g.shaking.as_ref().map(|(share, source)| {
        ("earthquake", format!("{{ horizontal = {}, source = {} }}", say::share(*share), quoted(source)))
    }));
    all
}
