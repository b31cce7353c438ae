//! Small changes to a job file that keep everything else as the person wrote it, comments too.

use groundhold_finding::Adjust;
use groundhold_hold::PostChange;
use groundhold_plan::job::Entry;
use groundhold_plan::post_changes;
use groundhold_quantity::Length;
use toml_edit::{DocumentMut, Item, Table, TableLike, Value};

use crate::bought_file;
use crate::problem::Problem;
use crate::record_file::entry_text;
use crate::spelled;

/// Tables whose entries are known by an id.
const LISTS: &[&str] = &["pad", "wall", "steps", "ramp", "near", "standing"];
/// Tables that stand once.
const SECTIONS: &[&str] = &["job", "ground", "shape", "drain", "order", "measure"];

/// The text with one field set, and the change that takes it back.
///
/// # Errors
/// What was expected; the text is untouched.
pub fn apply_adjust(text: &str, adjust: &Adjust) -> Result<(String, Option<Adjust>), Problem> {
    let wrong = |says: String| Problem::whole("job.toml", says);
    let mut document: DocumentMut = text.parse().map_err(|e: toml_edit::TomlError| wrong(e.message().into()))?;
    let table = element(&mut document, &adjust.element).map_err(wrong)?;
    if (adjust.element.as_str(), adjust.field.as_str()) == ("order", "bought") {
        add_bought(table, &adjust.value).map_err(wrong)?;
        return Ok((document.to_string(), None));
    }
    if let Some(changes) = post_changes(&adjust.field, &adjust.value) {
        changes.map_err(wrong)?.iter().for_each(|c| add_change(table, c));
        return Ok((document.to_string(), None));
    }
    let mut path: Vec<&str> = adjust.field.split('.').collect();
    let Some(last) = path.pop().filter(|l| !l.is_empty()) else {
        return Err(wrong("the field is empty, expected a name such as spec.hole_depth".into()));
    };
    let mut at = table;
    for step in path {
        at = at
            .entry(step)
            .or_insert(Item::Table(Table::new()))
            .as_table_like_mut()
            .ok_or_else(|| wrong(format!("{} `{step}` is not a table", adjust.element)))?;
    }
    let before = at.get(last).and_then(Item::as_str).map(String::from);
    if last == "path" {
        // A line of points is a list, not a text.
        let list = adjust.value.parse::<Value>().ok().filter(Value::is_array);
        let list = list.ok_or_else(|| wrong(format!("found `{}`, expected a list of points", adjust.value)))?;
        at.insert(last, Item::Value(list));
        return Ok((document.to_string(), None));
    }
    set(at, last, &adjust.value);
    let inverse = before.map(|value| Adjust { element: adjust.element.clone(), field: adjust.field.clone(), value });
    Ok((document.to_string(), inverse))
}

/// Sets a text and keeps the blanks and the comment round it.
fn set(table: &mut dyn TableLike, key: &str, text: &str) {
    let mut value = Value::from(text);
    match table.get_mut(key) {
        Some(Item::Value(old)) => {
            *value.decor_mut() = old.decor().clone();
            *old = value;
        }
        _ => {
            table.insert(key, Item::Value(value));
        }
    }
}

fn element<'d>(document: &'d mut DocumentMut, id: &str) -> Result<&'d mut dyn TableLike, String> {
    if SECTIONS.contains(&id) {
        return document
            .entry(id)
            .or_insert(Item::Table(Table::new()))
            .as_table_like_mut()
            .ok_or_else(|| format!("`{id}` is not a table"));
    }
    let place = LISTS.iter().find_map(|list| {
        let tables = document.get(list)?.as_array_of_tables()?;
        let named = |t: &Table, wanted: &str| t.get("id").and_then(Item::as_str) == Some(wanted);
        let whole = tables.iter().position(|t| named(t, id));
        // A second run of a wall, `W2-2`, is changed with its wall.
        let run = || tables.iter().position(|t| named(t, id.rsplit_once('-').map_or("", |(w, _)| w)));
        whole.or_else(run).map(|i| (*list, i))
    });
    let Some((list, i)) = place else {
        return Err(format!("there is no `{id}` in this job; sections are {}", SECTIONS.join(", ")));
    };
    let table = document.get_mut(list).and_then(Item::as_array_of_tables_mut).and_then(|a| a.get_mut(i));
    table.map(|t| t as &mut dyn TableLike).ok_or_else(|| format!("`{id}` cannot be changed here"))
}

/// A post that differs by decision, that the layout would not put there, or that is left out.
fn add_change(wall: &mut dyn TableLike, post: &PostChange) {
    let length = |l: Length| Value::from(spelled::length(l).trim_matches('"'));
    let mut change = toml_edit::InlineTable::new();
    change.insert("chainage", length(post.chainage));
    post.hole_diameter.map(|d| change.insert("hole_diameter", length(d)));
    post.depth.map(|d| change.insert("hole_depth", length(d)));
    for (key, _) in [("extra", post.extra), ("left_out", post.left_out)].iter().filter(|(_, is)| *is) {
        change.insert(*key, Value::from(true));
    }
    match wall.get_mut("change") {
        Some(Item::Value(Value::Array(a))) => a.push(change),
        Some(Item::ArrayOfTables(a)) => a.push(change.into_table()),
        _ => {
            let mut list = toml_edit::Array::new();
            list.push(change);
            wall.insert("change", Item::Value(Value::Array(list)));
        }
    }
}

/// One purchase more: at the end of the list, or in the table of an older job.
fn add_bought(order: &mut dyn TableLike, text: &str) -> Result<(), String> {
    let on_hand = bought_file::bought(text)?;
    let spelled = bought_file::spelled(&on_hand);
    match order.get_mut("bought") {
        Some(Item::Value(Value::Array(a))) => a.push(spelled),
        None => {
            let mut list = toml_edit::Array::new();
            list.push(spelled);
            order.insert("bought", Item::Value(Value::Array(list)));
        }
        Some(item) => {
            let table = item.as_table_like_mut().ok_or("`order.bought` is not a list")?;
            let key = spelled.split_once(" of ").map_or(spelled.as_str(), |(_, key)| key).to_string();
            let number = |i: &Item| i.as_float().or(i.as_integer().map(|n| n as f64));
            let there = table.get(&key).and_then(number).unwrap_or(0.0);
            table.insert(&key, toml_edit::value(there + on_hand.units));
        }
    }
    Ok(())
}

/// The text with an entry of the diary at its end.
pub fn append_entry(text: &str, entry: &Entry) -> String {
    let mut out = text.trim_end().to_string();
    out.push('\n');
    out.push_str(&entry_text(entry));
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    const JOB: &str =
        "schema = 1\n[[wall]]\nid = \"W1\"   # uphill\n[wall.spec]\nspacing = \"1.2 m\"   # two bays a board\n";

    fn adjust(field: &str, value: &str) -> Adjust {
        Adjust { element: "W1".into(), field: field.into(), value: value.into() }
    }

    #[test]
    fn a_field_is_set_its_comment_stays_and_the_inverse_takes_it_back() {
        let (text, back) = apply_adjust(JOB, &adjust("spec.spacing", "1.0 m")).unwrap();
        assert!(text.contains("spacing = \"1.0 m\"   # two bays a board"), "{text}");
        let (again, _) = apply_adjust(&text, &back.unwrap()).unwrap();
        assert_eq!(again, JOB);
    }

    #[test]
    fn a_field_that_was_not_there_is_added_in_its_table() {
        let (text, back) = apply_adjust(JOB, &adjust("spec.hole_depth", "900 mm")).unwrap();
        assert!(text.contains("hole_depth = \"900 mm\"") && back.is_none(), "{text}");
        assert!(apply_adjust(JOB, &Adjust { element: "W9".into(), ..adjust("x", "1") }).is_err());
    }
}
