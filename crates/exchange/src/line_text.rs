//! How is a line of straights, arcs and curves written in a job file, and read again?
//!
//! An entry is a point, or a table that says how the way leads there: `{ to = […], through = […] }` an arc through a
//! place, `{ to = […], radius = "4 m", turn = "left" }` the shorter arc of a radius, `{ to = […], smooth = true }` a smooth
//! curve together with its neighbours; `round = "1.5 m"` rounds the corner and `ease = "0.5 m"` eases into the round.

use groundhold_plan::job::{Bend, Side, Way};
use groundhold_quantity::{Length, Point, parse};
use groundhold_shape::Alignment;
use serde_json::{Value as Json, json};
use toml_edit::{InlineTable, Value};

use crate::page::Node;
use crate::spelled as say;

/// What an entry of a line may hold beside `to`.
const KEYS: &[&str] = &["to", "through", "radius", "turn", "smooth", "round", "ease"];

/// A line, open or closed.
pub(crate) type Line = (Vec<Point>, Vec<Bend>);

impl Node<'_> {
    /// The line that stands under a key; nothing, with a complaint, where it has no course.
    pub fn line(&self, key: &str, closed: bool) -> Option<Line> {
        let item = self.raw(key)?;
        let expected = "expected a list of points such as [[\"3.0 m\", \"4.2 m\"], …], with tables such as \
                        { to = [\"6.0 m\", \"4.2 m\"], radius = \"4 m\", turn = \"left\" } where it bends";
        let Some(array) = item.as_array() else {
            self.complain(key, expected);
            return None;
        };
        let (mut points, mut bends) = (vec![], vec![]);
        let mut whole = true;
        for (at, v) in array.iter().enumerate() {
            let (point, bend) = match v.as_inline_table() {
                None => (self.point_from(key, Some(v), v.span()), None),
                Some(t) => {
                    let to = t.get("to");
                    let point = self.point_from(key, to, v.span());
                    match self.bend(key, t, v, at) {
                        Ok(bend) => (point, bend),
                        Err(()) => (None, None),
                    }
                }
            };
            whole &= point.is_some();
            points.extend(point);
            bends.extend(bend);
        }
        if !whole {
            return None;
        }
        let least = if closed && bends.is_empty() { 3 } else { 2 };
        if points.len() < least {
            self.complain(key, format!("found {} points, expected at least {least}", points.len()));
            return None;
        }
        if points.windows(2).any(|w| w[0] == w[1]) {
            self.complain(key, "two points in a row are the same");
            return None;
        }
        if !bends.is_empty() {
            let line = Alignment { points: points.clone(), bends: bends.clone() };
            if let Err(e) = if closed { line.closed() } else { line.course() } {
                self.complain(key, e);
                return None;
            }
        }
        Some((points, bends))
    }

    /// How the way leads to a corner; nothing for a plain one.
    fn bend(&self, key: &str, t: &InlineTable, v: &Value, at: usize) -> Result<Option<Bend>, ()> {
        let say = |says: String| {
            self.complain_at(key, v.span(), says);
        };
        if let Some((unknown, _)) = t.iter().find(|(k, _)| !KEYS.contains(k)) {
            say(format!("there is no `{unknown}` in a line; known are {}", KEYS.join(", ")));
            return Err(());
        }
        let length = |name: &str| -> Result<Option<Length>, ()> {
            let Some(v) = t.get(name) else { return Ok(None) };
            let read = v.as_str().map(parse::<Length>);
            match read {
                Some(Ok(l)) if (0.0..=10_000.0).contains(&l.to_m()) => Ok(Some(l)),
                Some(Err(e)) => {
                    say(format!("{name}: {e}"));
                    Err(())
                }
                _ => {
                    say(format!("{name}: expected a length with its unit from 0 m to 10 km, for example \"1.5 m\""));
                    Err(())
                }
            }
        };
        let (radius, round, ease) = (length("radius")?, length("round")?, length("ease")?);
        let turn = t.get("turn").and_then(Value::as_str);
        let smooth = t.get("smooth").is_some_and(|v| v.as_bool() == Some(true));
        let ways = [t.contains_key("through"), radius.is_some(), smooth];
        if ways.iter().filter(|w| **w).count() > 1 {
            say("an entry has one of through, radius and smooth".into());
            return Err(());
        }
        let way = if let Some(by) = t.get("through") {
            Way::Through(self.point_from(key, Some(by), v.span()).ok_or(())?)
        } else if let Some(radius) = radius {
            let side = match turn {
                Some("left") => Side::Left,
                Some("right") => Side::Right,
                _ => {
                    say("an arc by its radius needs turn = \"left\" or turn = \"right\"".into());
                    return Err(());
                }
            };
            Way::Radius(radius, side)
        } else if smooth {
            Way::Smooth
        } else {
            Way::Straight
        };
        let (round, ease) = (round.unwrap_or(Length::ZERO), ease.unwrap_or(Length::ZERO));
        let plain = way == Way::Straight && round == Length::ZERO && ease == Length::ZERO;
        Ok((!plain).then_some(Bend { at, way, round, ease }))
    }
}

/// A point as it stands in a job file.
pub(crate) fn point(p: Point) -> String {
    format!("[{}, {}]", say::metres(p.x), say::metres(p.y))
}

/// A line as it stands in a job file.
pub(crate) fn line(points: &[Point], bends: &[Bend]) -> String {
    let entry = |(i, p): (usize, &Point)| {
        let Some(b) = bends.iter().rev().find(|b| b.at == i) else { return point(*p) };
        let mut out = format!("{{ to = {}", point(*p));
        match b.way {
            Way::Straight => {}
            Way::Through(by) => out.push_str(&format!(", through = {}", point(by))),
            Way::Radius(r, side) => {
                let turn = if side == Side::Left { "left" } else { "right" };
                out.push_str(&format!(", radius = {}, turn = \"{turn}\"", say::length(r)));
            }
            Way::Smooth => out.push_str(", smooth = true"),
        }
        for (key, l) in [("round", b.round), ("ease", b.ease)] {
            if l > Length::ZERO {
                out.push_str(&format!(", {key} = {}", say::length(l)));
            }
        }
        out.push_str(" }");
        out
    };
    format!("[{}]", points.iter().enumerate().map(entry).collect::<Vec<_>>().join(", "))
}

/// The schema of a line: points, and tables where it bends.
pub(crate) fn schema(point: &Json, length: &Json) -> Json {
    let bend = json!({
        "type": "object",
        "properties": {
            "to": point, "through": point, "radius": length, "turn": { "enum": ["left", "right"] },
            "smooth": { "type": "boolean" }, "round": length, "ease": length,
        },
        "required": ["to"],
        "additionalProperties": false,
    });
    json!({ "type": "array", "items": { "anyOf": [point, bend] }, "minItems": 2 })
}
