//! A cursor over one file: reads a field by its row, and notes what is wrong with it instead of stopping.

use std::cell::RefCell;
use std::ops::Range;

use groundhold_quantity::{Length, Point, Quantity, parse};
use toml_edit::{Item, TableLike, Value};

use crate::fields::{self, Field, Holds};
use crate::problem::{Problem, nearest};

/// A file and what is wrong with it so far.
pub(crate) struct Page<'a> {
    file: &'a str,
    text: &'a str,
    problems: RefCell<Vec<Problem>>,
}

impl<'a> Page<'a> {
    pub fn new(file: &'a str, text: &'a str) -> Page<'a> {
        Page { file, text, problems: RefCell::default() }
    }
    pub fn say(&self, span: Option<Range<usize>>, says: impl Into<String>) {
        let problem = match span {
            Some(s) => Problem::at(self.file, self.text, s, says),
            None => Problem::whole(self.file, says),
        };
        self.add(problem);
    }
    pub fn add(&self, problem: Problem) {
        let mut all = self.problems.borrow_mut();
        if !all.contains(&problem) {
            all.push(problem);
        }
    }
    pub fn into_problems(self) -> Vec<Problem> {
        let mut all = self.problems.into_inner();
        // The job file first, then its tables.
        let key = |p: &Problem| (p.file != self.file, p.file.clone(), p.line, p.column);
        all.sort_by_cached_key(key);
        all
    }
    pub fn root<'t>(&'t self, table: &'t dyn TableLike) -> Node<'t> {
        let node = Node { page: self, kind: "", name: "the file".into(), table, span: None };
        node.check_keys();
        node
    }
}

/// One table of the file, known by its kind in the field table.
pub(crate) struct Node<'a> {
    page: &'a Page<'a>,
    kind: &'static str,
    /// How it is named in a message: `[[pad]] P1`.
    pub name: String,
    table: &'a dyn TableLike,
    span: Option<Range<usize>>,
}

fn is_a(item: &Item) -> &'static str {
    match item {
        Item::Value(Value::String(_)) => "a text",
        Item::Value(Value::Integer(_) | Value::Float(_)) => "a number without a unit",
        Item::Value(Value::Boolean(_)) => "true or false",
        Item::Value(Value::Datetime(_)) => "a date",
        Item::Value(Value::Array(_)) | Item::ArrayOfTables(_) => "a list",
        _ => "a table",
    }
}

impl<'a> Node<'a> {
    fn field(&self, key: &str) -> &'static Field {
        match fields::row(self.kind, key) {
            Some(f) => f,
            None => unreachable!("the field table has no row {}.{key}", self.kind),
        }
    }

    /// The item of a field, and a complaint when it must be there and is not.
    fn item(&self, f: &Field) -> Option<&'a Item> {
        let found = self.table.get(f.key).filter(|i| !i.is_none());
        if found.is_none() && f.must {
            let says = format!("{}: `{}` ({}) is missing, expected {}", self.name, f.key, f.words, wanted(f));
            self.page.say(self.span.clone(), says);
        }
        found
    }

    fn refuse(&self, f: &Field, item: &Item, found: &str) {
        let span = item.span().or(self.span.clone());
        self.page.say(span, format!("{}: {}: found {found}, expected {}", self.name, f.key, wanted(f)));
    }

    fn check_keys(&self) {
        for (key, item) in self.table.iter() {
            if fields::row(self.kind, key).is_some() {
                continue;
            }
            let near = nearest(key, fields::rows_of(self.kind).map(|f| f.key));
            let hint = match near {
                Some(k) => format!("did you mean `{k}`?"),
                None => {
                    let keys: Vec<&str> = fields::rows_of(self.kind).map(|f| f.key).collect();
                    format!("known here are {}", keys.join(", "))
                }
            };
            let span = self.table.key(key).and_then(toml_edit::Key::span).or(item.span());
            self.page.say(span, format!("{}: there is no `{key}`; {hint}", self.name));
        }
    }

    pub fn has(&self, key: &str) -> bool {
        self.table.get(key).is_some_and(|i| !i.is_none())
    }
    pub fn span_of(&self, key: &str) -> Option<Range<usize>> {
        self.table.get(key).and_then(Item::span).or(self.span.clone())
    }
    /// Complains about a field.
    pub fn complain(&self, key: &str, says: impl std::fmt::Display) {
        self.page.say(self.span_of(key), format!("{}: {key}: {says}", self.name));
    }
    /// Complains about a place within a field.
    pub fn complain_at(&self, key: &str, span: Option<Range<usize>>, says: impl std::fmt::Display) {
        self.page.say(span.or(self.span_of(key)), format!("{}: {key}: {says}", self.name));
    }
    pub fn raw(&self, key: &str) -> Option<&'a Item> {
        self.item(self.field(key))
    }

    pub fn text(&self, key: &str) -> Option<String> {
        let f = self.field(key);
        let item = self.item(f)?;
        let Some(text) = item.as_str() else {
            self.refuse(f, item, is_a(item));
            return None;
        };
        match f.holds {
            Holds::Id if text.is_empty() || text.len() > 40 || text.contains(char::is_whitespace) => {
                self.refuse(f, item, &format!("`{text}`"));
                None
            }
            Holds::OneOf(words) if !words.contains(&text) => {
                self.refuse(f, item, &format!("`{text}`"));
                None
            }
            _ => Some(text.to_string()),
        }
    }

    pub fn flag(&self, key: &str) -> Option<bool> {
        let f = self.field(key);
        let item = self.item(f)?;
        item.as_bool().or_else(|| {
            self.refuse(f, item, is_a(item));
            None
        })
    }

    pub fn number(&self, key: &str) -> Option<f64> {
        let f = self.field(key);
        let item = self.item(f)?;
        let value = item.as_float().or(item.as_integer().map(|i| i as f64));
        match value {
            Some(v) if f.holds == Holds::Whole && v.fract() != 0.0 => {
                self.refuse(f, item, &format!("{v}"));
                None
            }
            Some(v) => self.within(f, item, v).then_some(v),
            None => {
                let found = item.as_str().map_or(is_a(item).to_string(), |t| format!("the text `{t}`"));
                self.refuse(f, item, &found);
                None
            }
        }
    }

    fn within(&self, f: &Field, item: &Item, v: f64) -> bool {
        let fine = f.least <= v && v <= f.most;
        if !fine {
            let found = item.as_str().map_or(format!("{v}"), |t| format!("`{t}`"));
            let unit = if let Holds::Quantity(q) = f.holds { si_unit(q) } else { "" };
            let says = format!(
                "{}: {}: found {found}, expected {} from {} to {}{unit}",
                self.name, f.key, f.words, f.least, f.most
            );
            self.page.say(item.span().or(self.span.clone()), says);
        }
        fine
    }

    pub fn quantity<Q: Quantity>(&self, key: &str) -> Option<Q> {
        let f = self.field(key);
        let item = self.item(f)?;
        let Some(text) = item.as_str() else {
            self.refuse(f, item, &format!("{} ({})", is_a(item), item.to_string().trim()));
            return None;
        };
        match parse::<Q>(text) {
            Ok(q) => self.within(f, item, q.in_si()).then_some(q),
            Err(e) => {
                self.page.say(item.span().or(self.span.clone()), format!("{}: {}: {e}", self.name, f.key));
                None
            }
        }
    }

    pub fn point(&self, key: &str) -> Option<Point> {
        let item = self.item(self.field(key))?;
        self.point_from(key, item.as_value(), item.span())
    }

    /// A point out of a list of two lengths.
    pub fn point_from(&self, key: &str, value: Option<&Value>, span: Option<Range<usize>>) -> Option<Point> {
        let say =
            |says: String| self.page.say(span.clone().or(self.span.clone()), format!("{}: {key}: {says}", self.name));
        let Some(array) = value.and_then(Value::as_array).filter(|a| a.len() == 2) else {
            say("expected a point of two lengths, for example [\"3.0 m\", \"4.2 m\"]".into());
            return None;
        };
        let mut xy = [0.0; 2];
        for (slot, v) in xy.iter_mut().zip(array.iter()) {
            let Some(text) = v.as_str() else {
                say(format!("found {}, expected a length with its unit, for example \"3.0 m\"", v.to_string().trim()));
                return None;
            };
            match parse::<Length>(text) {
                Ok(l) if l.to_m().abs() <= 1e6 => *slot = l.to_m(),
                Ok(_) => {
                    say(format!("found `{text}`, expected a coordinate within 1000 km of the base line"));
                    return None;
                }
                Err(e) => {
                    say(e.to_string());
                    return None;
                }
            }
        }
        Some(Point::m(xy[0], xy[1]))
    }

    pub fn points(&self, key: &str, least: usize) -> Option<Vec<Point>> {
        let f = self.field(key);
        let item = self.item(f)?;
        let Some(array) = item.as_array() else {
            self.refuse(f, item, is_a(item));
            return None;
        };
        let points: Option<Vec<Point>> = array.iter().map(|v| self.point_from(key, Some(v), v.span())).collect();
        let points = points?;
        if points.len() < least {
            self.complain(key, format!("found {} points, expected at least {least}", points.len()));
            return None;
        }
        if points.windows(2).any(|w| w[0] == w[1]) {
            self.complain(key, "two points in a row are the same");
            return None;
        }
        Some(points)
    }

    pub fn names(&self, key: &str) -> Option<Vec<String>> {
        let f = self.field(key);
        let item = self.item(f)?;
        self.names_from(f, item.as_value(), item)
    }
    fn names_from(&self, f: &Field, value: Option<&Value>, item: &Item) -> Option<Vec<String>> {
        let list = value.and_then(Value::as_array).map(|a| a.iter().map(|v| v.as_str().map(String::from)).collect());
        match list {
            Some(Some(names)) => Some(names),
            _ => {
                self.refuse(f, item, "something else");
                None
            }
        }
    }
    pub fn name_lists(&self, key: &str) -> Option<Vec<Vec<String>>> {
        let f = self.field(key);
        let item = self.item(f)?;
        let Some(lists) = item.as_array() else {
            self.refuse(f, item, is_a(item));
            return None;
        };
        lists.iter().map(|v| self.names_from(f, Some(v), item)).collect()
    }

    /// A list of lengths, each within the field's limits.
    pub fn lengths(&self, key: &str) -> Option<Vec<Length>> {
        let f = self.field(key);
        let item = self.item(f)?;
        let list = item.as_array().map(|a| {
            let read = |v: &Value| v.as_str().and_then(|t| parse::<Length>(t).ok());
            a.iter().map(|v| read(v).filter(|l| f.least <= l.to_m() && l.to_m() <= f.most)).collect::<Option<Vec<_>>>()
        });
        match list.flatten().filter(|l| !l.is_empty()) {
            Some(lengths) => Some(lengths),
            None => {
                let (least, most) = (f.least, f.most);
                let says =
                    format!("expected a list of lengths from {least} m to {most} m, such as [\"2.4 m\", \"3.0 m\"]");
                self.complain(key, says);
                None
            }
        }
    }

    pub fn moment(&self, key: &str) -> Option<String> {
        let f = self.field(key);
        let item = self.item(f)?;
        if let Some(d) = item.as_datetime() {
            return Some(d.to_string());
        }
        self.refuse(f, item, is_a(item));
        None
    }

    pub fn table(&self, key: &str) -> Option<Node<'a>> {
        let Holds::Table(kind) = self.field(key).holds else { return None };
        self.table_of(key, kind)
    }

    /// A table whose kind is known from elsewhere: the sizes of a wall's system.
    pub fn table_of(&self, key: &str, kind: &'static str) -> Option<Node<'a>> {
        let f = self.field(key);
        let item = self.item(f)?;
        let Some(table) = item.as_table_like() else {
            self.refuse(f, item, is_a(item));
            return None;
        };
        let name = if self.kind.is_empty() { format!("[{key}]") } else { format!("{} {key}", self.name) };
        let node = Node { page: self.page, kind, name, table, span: item.span().or(self.span.clone()) };
        node.check_keys();
        Some(node)
    }

    pub fn tables(&self, key: &str) -> Vec<Node<'a>> {
        let f = self.field(key);
        let Some(item) = self.item(f) else { return vec![] };
        let Holds::Tables(kind) = f.holds else { return vec![] };
        let list: Vec<(&dyn TableLike, Option<Range<usize>>)> = match item {
            Item::ArrayOfTables(a) => a.iter().map(|t| (t as &dyn TableLike, t.span())).collect(),
            Item::Value(Value::Array(a)) if a.iter().all(Value::is_inline_table) => {
                a.iter().filter_map(|v| v.as_inline_table().map(|t| (t as &dyn TableLike, v.span()))).collect()
            }
            _ => {
                self.refuse(f, item, is_a(item));
                return vec![];
            }
        };
        list.into_iter()
            .enumerate()
            .map(|(i, (table, span))| {
                let id = table.get("id").and_then(Item::as_str).map_or(format!("number {}", i + 1), String::from);
                let name =
                    if self.kind.is_empty() { format!("[[{key}]] {id}") } else { format!("{} {key} {id}", self.name) };
                let node = Node { page: self.page, kind, name, table, span };
                node.check_keys();
                node
            })
            .collect()
    }
}

/// What a field wants, in words.
pub(crate) fn wanted(f: &Field) -> String {
    match f.holds {
        Holds::Text => "a text in quotes".into(),
        Holds::Id => "a short name without blanks, such as \"P1\"".into(),
        Holds::Number => "a number".into(),
        Holds::Whole => "a whole number".into(),
        Holds::Flag => "true or false".into(),
        Holds::Quantity(q) => format!("a {q} with its unit in quotes, for example {}", example(q)),
        Holds::Point => "a point of two lengths, for example [\"3.0 m\", \"4.2 m\"]".into(),
        Holds::Points => "a list of points, for example [[\"3.0 m\", \"4.2 m\"], …]".into(),
        Holds::Line => "a list of points, for example [[\"3.0 m\", \"4.2 m\"], …], with tables where it bends, for example { to = [\"6.0 m\", \"4.2 m\"], through = [\"4.5 m\", \"4.8 m\"] }, { to = …, radius = \"4 m\", turn = \"left\" }, { to = …, smooth = true } or { to = …, round = \"1.5 m\", ease = \"0.5 m\" }".into(),
        Holds::Names => "a list of names in quotes".into(),
        Holds::NameLists => "a list of lists of names in quotes".into(),
        Holds::OneOf(words) => format!("one of {}", words.join(", ")),
        Holds::Moment => "a date and time, for example 2026-05-11T10:20:00".into(),
        Holds::Table(_) => "a table".into(),
        Holds::Tables(_) => "a list of tables".into(),
        Holds::Sizes => "a table of the sizes of the wall's system".into(),
        Holds::Lengths => "a list of lengths, for example [\"2.4 m\", \"3.0 m\"]".into(),
        Holds::Own(words) => words.into(),
    }
}

pub(crate) fn example(quantity: &str) -> &'static str {
    match quantity {
        "level" => "\"100.250 m\"",
        "slope" => "\"1:40\", \"2 %\" or \"14 deg\"",
        "share" => "\"5 %\"",
        "pressure" => "\"2.5 kPa\"",
        "rain intensity" => "\"60 mm/h\"",
        "mass" => "\"2.5 t\"",
        "volume" => "\"2.0 m3\"",
        "time" => "\"8 h\"",
        "unit weight" => "\"18 kN/m3\"",
        "angle" => "\"30 deg\"",
        "density" => "\"1900 kg/m3\"",
        _ => "\"1.2 m\", \"450 mm\" or \"4 ft 6 in\"",
    }
}

pub(crate) fn si_unit(quantity: &str) -> &'static str {
    match quantity {
        "length" | "level" => " m",
        "slope" => " (rise over run)",
        "pressure" => " Pa",
        "rain intensity" => " m/s",
        "mass" => " kg",
        "volume" => " m³",
        "time" => " s",
        "unit weight" => " N/m³",
        "angle" => " rad",
        "density" => " kg/m³",
        _ => "",
    }
}
