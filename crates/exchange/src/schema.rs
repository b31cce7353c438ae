//! What may stand in a job file, told to an editor: JSON Schema (draft 2020-12) from the table of fields.

use groundhold_hold::SYSTEM_KEYS;
use serde_json::{Map, Value, json};

use crate::fields::{FIELDS, Field, Holds, rows_of};
use crate::page::{example, si_unit, wanted};

/// The JSON Schema of a job file: every table, every field with its words, bounds and an example.
pub fn schema_json() -> String {
    let mut tables: Vec<&str> = FIELDS.iter().map(|f| f.table).filter(|t| !t.is_empty()).collect();
    tables.dedup();
    let mut schema = table("");
    let defs: Map<String, Value> = tables.into_iter().map(|t| (name_of(t), Value::Object(table(t)))).collect();
    let head = [
        ("$schema", json!("https://json-schema.org/draft/2020-12/schema")),
        ("title", json!("Groundhold job")),
        ("description", json!("A slope, what is known of it and what is wished for. Every quantity carries its unit.")),
        ("$defs", Value::Object(defs)),
    ];
    schema.extend(head.map(|(key, value)| (key.to_string(), value)));
    format!("{:#}", Value::Object(schema))
}

/// The name of a table's definition: without blanks, so that a pointer to it needs no escape.
fn name_of(table: &str) -> String {
    table.replace(' ', "_")
}

fn table(kind: &str) -> Map<String, Value> {
    let properties: Map<String, Value> = rows_of(kind).map(|f| (f.key.to_string(), property(f))).collect();
    let required: Vec<&str> = rows_of(kind).filter(|f| f.must).map(|f| f.key).collect();
    let mut object = Map::new();
    object.insert("type".into(), json!("object"));
    object.insert("properties".into(), Value::Object(properties));
    object.insert("required".into(), json!(required));
    object.insert("additionalProperties".into(), json!(false));
    object
}

fn property(f: &Field) -> Value {
    let mut value = shape(f);
    let words = match f.holds {
        Holds::Quantity(q) if f.least.is_finite() => {
            let bounds = format!("{} to {}{}", f.least, f.most, si_unit(q));
            format!("{}: a {q} with its unit, from {bounds}; for example {}", f.words, example(q))
        }
        Holds::Table(_) | Holds::Tables(_) | Holds::Text | Holds::Flag | Holds::Sizes => f.words.to_string(),
        _ => format!("{}: {}", f.words, wanted(f)),
    };
    if let Value::Object(object) = &mut value {
        object.insert("description".into(), json!(words));
    }
    value
}

/// A text that ends with a unit. A slope may be a ratio and a share a bare number, so those end as they like.
fn quantity(q: &str) -> Value {
    match q {
        "slope" | "share" => json!({ "type": "string", "pattern": "[0-9]" }),
        _ => json!({ "type": "string", "pattern": "[0-9].*[^0-9.\\s]\\s*$|[a-zA-Z][23]\\s*$" }),
    }
}

fn point() -> Value {
    json!({ "type": "array", "items": quantity("length"), "minItems": 2, "maxItems": 2 })
}

fn shape(f: &Field) -> Value {
    let names = || json!({ "type": "array", "items": { "type": "string" } });
    match f.holds {
        Holds::Text => json!({ "type": "string" }),
        Holds::Id => json!({ "type": "string", "pattern": "^\\S{1,40}$" }),
        Holds::Number => bounded(f, "number"),
        Holds::Whole => bounded(f, "integer"),
        Holds::Flag => json!({ "type": "boolean" }),
        Holds::Quantity(q) => quantity(q),
        Holds::Point => point(),
        Holds::Points => json!({ "type": "array", "items": point(), "minItems": 2 }),
        Holds::Line => crate::line_text::schema(&point(), &quantity("length")),
        Holds::Names => names(),
        Holds::NameLists => json!({ "type": "array", "items": names() }),
        Holds::OneOf(words) => json!({ "enum": words }),
        Holds::Table(t) => json!({ "$ref": format!("#/$defs/{}", name_of(t)) }),
        Holds::Tables(t) => json!({ "type": "array", "items": { "$ref": format!("#/$defs/{}", name_of(t)) } }),
        Holds::Lengths => json!({ "type": "array", "items": quantity("length"), "minItems": 1 }),
        Holds::Sizes => {
            let each = SYSTEM_KEYS.iter().map(|key| json!({ "$ref": format!("#/$defs/{}", name_of(key)) }));
            json!({ "anyOf": each.collect::<Vec<_>>() })
        }
        // A date in TOML has no counterpart, and what a reader explains itself is said in words.
        Holds::Moment | Holds::Own(_) => json!({}),
    }
}

fn bounded(f: &Field, kind: &str) -> Value {
    let mut value = json!({ "type": kind });
    if let Value::Object(object) = &mut value {
        for (key, bound) in [("minimum", f.least), ("maximum", f.most)] {
            if bound.is_finite() {
                object.insert(key.into(), json!(bound));
            }
        }
    }
    value
}

#[cfg(test)]
mod tests {
    use super::*;

    fn schema() -> Value {
        serde_json::from_str(&schema_json()).unwrap()
    }

    #[test]
    fn every_field_stands_in_the_schema_and_every_reference_leads_somewhere() {
        let schema = schema();
        for f in FIELDS.iter() {
            let place = if f.table.is_empty() { String::new() } else { format!("/$defs/{}", name_of(f.table)) };
            let property = schema.pointer(&format!("{place}/properties/{}", f.key)).unwrap();
            assert!(property["description"].as_str().unwrap().contains(f.words), "{}.{}", f.table, f.key);
            let reference = property.get("$ref").or_else(|| property.pointer("/items/$ref"));
            if let Some(to) = reference.and_then(Value::as_str) {
                assert!(schema.pointer(to.trim_start_matches('#')).is_some(), "{to} leads nowhere");
            }
            let required = schema.pointer(&format!("{place}/required")).unwrap().as_array().unwrap();
            assert_eq!(required.iter().any(|r| r == f.key), f.must, "{}.{}", f.table, f.key);
        }
    }

    #[test]
    fn bounds_and_words_of_a_field_are_those_of_the_table() {
        let schema = schema();
        let apron = schema.pointer("/$defs/pad/properties/apron/description").unwrap().as_str().unwrap();
        assert!(apron.contains("from 0 to 10 m") && apron.contains("with its unit"), "{apron}");
        assert_eq!(schema.pointer("/properties/schema/maximum"), Some(&json!(1.0)));
        assert_eq!(schema.pointer("/$defs/wall/additionalProperties"), Some(&json!(false)));
        assert_eq!(schema.pointer("/$defs/job/properties/units/enum"), Some(&json!(["metric", "feet"])));
    }
}
