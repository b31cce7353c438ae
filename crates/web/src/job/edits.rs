//! Edits of the job's texts that a finger makes: a corner moved, a field set, an element added or taken away.

use groundhold_exchange::apply_adjust;
use groundhold_finding::Adjust;
use groundhold_quantity::{Length, Level, Point};
use toml_edit::{Array, DocumentMut, Item, Table, Value};

use super::{Files, JOB};

/// Why an edit could not be made, in words.
pub type EditError = String;

/// Kinds of elements that have an id.
const LISTS: &[&str] = &["pad", "wall", "steps", "ramp", "near"];

/// One field of one element set, in the job file's own words.
///
/// # Errors
/// What was expected; the texts are untouched.
pub fn set_field(files: &Files, element: &str, field: &str, value: &str) -> Result<Files, EditError> {
    let adjust = Adjust { element: element.into(), field: field.into(), value: value.into() };
    let (text, _) = apply_adjust(files.job(), &adjust).map_err(|p| p.says)?;
    Ok(files.with(JOB, &text))
}

/// What stands in a field, as it is spelled; `None` where it is left out.
pub fn field_text(files: &Files, element: &str, field: &str) -> Option<String> {
    let doc = document(files).ok()?;
    let section = if element == "outlet" { "drain" } else { element };
    let named = |t: &&Table| t.get("id").and_then(Item::as_str) == Some(section);
    let lists = LISTS.iter().filter_map(|l| doc.get(l).and_then(Item::as_array_of_tables));
    let mut at: Option<&dyn toml_edit::TableLike> = doc.get(section).and_then(Item::as_table_like);
    for list in lists {
        if let Some(table) = list.iter().find(named) {
            at = Some(table);
        }
    }
    let mut path = field.split('.').peekable();
    while let Some(key) = path.next() {
        let item = at?.get(key)?;
        if path.peek().is_none() {
            let value = item.as_value()?;
            return Some(value.as_str().map_or_else(|| value.to_string().trim().to_string(), String::from));
        }
        at = item.as_table_like();
    }
    None
}

/// Takes a field out, where it is there.
///
/// # Errors
/// Where the element is not there.
pub fn clear_field(files: &Files, element: &str, field: &str) -> Result<Files, EditError> {
    if field_text(files, element, field).is_none() {
        return Ok(files.clone());
    }
    let take = |table: &mut Table| {
        let mut path: Vec<&str> = field.split('.').collect();
        let last = path.pop().unwrap_or_default();
        let mut at: &mut dyn toml_edit::TableLike = table;
        for key in path {
            at = at.get_mut(key).and_then(Item::as_table_like_mut).ok_or(format!("{element} has no `{key}`"))?;
        }
        at.remove(last);
        Ok(())
    };
    let mut doc = document(files)?;
    if let Some(table) = doc.get_mut(element).and_then(Item::as_table_mut) {
        take(table)?;
        return Ok(files.with(JOB, &doc.to_string()));
    }
    edit(files, element, take)
}

/// One point of a list of points moved; blanks and comments stay.
///
/// # Errors
/// Where the element or the point is not there.
pub fn set_point(files: &Files, element: &str, field: &str, nth: usize, to: Point) -> Result<Files, EditError> {
    edit(files, element, |table| {
        let list = table.get_mut(field).and_then(Item::as_array_mut).ok_or(format!("{element} has no `{field}`"))?;
        let point = list
            .get_mut(nth)
            .and_then(Value::as_array_mut)
            .ok_or(format!("{element} has no point {} in `{field}`", nth + 1))?;
        put(point, to);
        Ok(())
    })
}

/// A point, or a list of points, set as a whole.
///
/// # Errors
/// Where the element is not there.
pub fn set_points(files: &Files, element: &str, field: &str, to: &[Point]) -> Result<Files, EditError> {
    edit(files, element, |table| {
        let single = table.get(field).and_then(Item::as_array).is_some_and(|a| a.get(0).is_some_and(Value::is_str));
        match (single, to) {
            (true, [p]) => match table.get_mut(field).and_then(Item::as_array_mut) {
                Some(array) => put(array, *p),
                None => return Err(format!("{element} has no `{field}`")),
            },
            _ => {
                let mut list = Array::new();
                to.iter().for_each(|p| list.push(pair(*p)));
                table.insert(field, toml_edit::value(list));
            }
        }
        Ok(())
    })
}

/// Takes an element away.
///
/// # Errors
/// Where it is not there.
pub fn remove_element(files: &Files, element: &str) -> Result<Files, EditError> {
    let mut doc = document(files)?;
    for list in LISTS {
        let Some(tables) = doc.get_mut(list).and_then(Item::as_array_of_tables_mut) else { continue };
        let at = tables.iter().position(|t| t.get("id").and_then(Item::as_str) == Some(element));
        if let Some(i) = at {
            tables.remove(i);
            return Ok(files.with(JOB, &doc.to_string()));
        }
    }
    Err(format!("there is no `{element}` in this job"))
}

/// Adds the text of an element, `[[wall]]` and what follows, before the diary.
///
/// # Errors
/// Where the job file cannot be read.
pub fn add_element(files: &Files, text: &str) -> Result<Files, EditError> {
    let job = files.job();
    // The diary is always at the end; an element goes before it.
    let end = job.find("\n[[record]]").map_or(job.len(), |i| i + 1);
    let (head, tail) = job.split_at(end);
    let gap = if head.ends_with("\n\n") || head.is_empty() { "" } else { "\n" };
    let next = if tail.is_empty() { "" } else { "\n" };
    let out = files.with(JOB, &format!("{head}{gap}{}\n{next}{tail}", text.trim_end()));
    document(&out).map(|_| out)
}

/// Adds an entry of the diary at the end.
pub fn append(files: &Files, entry: &groundhold_plan::job::Entry) -> Files {
    files.with(JOB, &groundhold_exchange::append_entry(files.job(), entry))
}

fn document(files: &Files) -> Result<DocumentMut, EditError> {
    files.job().parse().map_err(|e: toml_edit::TomlError| format!("the job file is not TOML: {}", e.message()))
}

fn edit(
    files: &Files,
    element: &str,
    change: impl FnOnce(&mut Table) -> Result<(), EditError>,
) -> Result<Files, EditError> {
    let mut doc = document(files)?;
    if element == "outlet" {
        return outlet(&mut doc, files, change);
    }
    for list in LISTS {
        let Some(tables) = doc.get_mut(list).and_then(Item::as_array_of_tables_mut) else { continue };
        let at = tables.iter().position(|t| t.get("id").and_then(Item::as_str) == Some(element));
        if let Some(table) = at.and_then(|i| tables.get_mut(i)) {
            change(table)?;
            return Ok(files.with(JOB, &doc.to_string()));
        }
    }
    Err(format!("there is no `{element}` in this job"))
}

/// The drain's outlet stands in a table of its own.
fn outlet(
    doc: &mut DocumentMut,
    files: &Files,
    change: impl FnOnce(&mut Table) -> Result<(), EditError>,
) -> Result<Files, EditError> {
    let place = doc.get_mut("drain").and_then(Item::as_table_like_mut).and_then(|d| d.get_mut("outlet"));
    let place = place.ok_or("the drain has no outlet")?;
    let inline = place.as_inline_table().cloned();
    match inline {
        Some(table) => {
            let mut long = table.into_table();
            change(&mut long)?;
            *place = toml_edit::value(long.into_inline_table());
        }
        None => change(place.as_table_mut().ok_or("the drain's outlet is not a table")?)?,
    }
    Ok(files.with(JOB, &doc.to_string()))
}

fn put(array: &mut Array, to: Point) {
    for (i, v) in [to.x, to.y].into_iter().enumerate() {
        let text = metres(Length::m(v));
        match array.get_mut(i) {
            Some(old) => {
                let mut new = Value::from(text);
                *new.decor_mut() = old.decor().clone();
                *old = new;
            }
            None => array.push(text),
        }
    }
}

fn pair(p: Point) -> Value {
    let mut a = Array::new();
    a.push(metres(Length::m(p.x)));
    a.push(metres(Length::m(p.y)));
    Value::Array(a)
}

/// A length as the job file spells it: `3.25 m`.
pub fn metres(l: Length) -> String {
    let text = format!("{:.3}", l.to_m());
    let text = text.strip_suffix('0').unwrap_or(&text);
    let text = text.strip_suffix('0').unwrap_or(text);
    format!("{} m", if text == "-0.0" { "0.0" } else { text })
}

/// A level as the job file spells it: `101.080 m`.
pub fn level_text(l: Level) -> String {
    format!("{:.3} m", l.to_m())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_corner_is_moved_and_every_comment_stays() {
        let before = super::super::demo();
        let after = set_point(&before, "W1", "line", 1, Point::m(2.25, 9.6)).unwrap();
        assert!(after.job().contains(r#"[["2.4 m", "6.6 m"], ["2.25 m", "9.6 m"], ["9.6 m", "9.4 m"]"#));
        assert_eq!(before.job().matches('#').count(), after.job().matches('#').count());
        let job = after.read().whole().unwrap();
        assert_eq!(job.walls[0].line[1], Point::m(2.25, 9.6));
        assert!(set_point(&before, "W1", "line", 9, Point::default()).is_err());
        assert!(set_point(&before, "W9", "line", 0, Point::default()).is_err());
    }

    #[test]
    fn single_points_and_the_outlet_are_moved_too() {
        let demo = super::super::demo();
        let tree = set_points(&demo, "N3", "at", &[Point::m(11.0, 9.0)]).unwrap();
        assert_eq!(tree.read().whole().unwrap().near[2].line, [Point::m(11.0, 9.0)]);
        let outlet = set_points(&demo, "outlet", "at", &[Point::m(0.5, 1.5)]).unwrap();
        assert_eq!(outlet.read().whole().unwrap().drain.outlet.unwrap().0, Point::m(0.5, 1.5));
    }

    #[test]
    fn an_element_is_taken_away_and_another_added_before_the_diary() {
        let demo = super::super::demo();
        let without = remove_element(&demo, "R1").unwrap();
        assert!(without.read().whole().unwrap().ramps.is_empty());
        let diary = demo.with(JOB, &format!("{}\n[[record]]\nat = 2026-05-11T10:20:00\nnote = \"x\"\n", demo.job()));
        let added =
            add_element(&diary, "[[near]]\nid = \"N9\"\nkind = \"tree\"\nat = [\"1 m\", \"1 m\"]\ntrunk = \"200 mm\"")
                .unwrap();
        let job = added.read().whole().unwrap();
        assert_eq!((job.near.len(), job.record.len()), (4, 1));
        assert!(add_element(&demo, "[[near").is_err());
    }

    #[test]
    fn a_length_is_spelled_without_needless_noughts() {
        assert_eq!(
            [metres(Length::m(3.0)), metres(Length::m(3.25)), metres(Length::m(-0.0004))],
            ["3.0 m", "3.25 m", "0.0 m"]
        );
    }
}
