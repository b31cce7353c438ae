//! What may stand in a job file, told to an editor: JSON Schema from the table of fields.

/// The JSON Schema (draft 2020-12) of a job file.
pub fn schema_json() -> String {
    String::new()
}
