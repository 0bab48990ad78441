//! What a schema accepts, for the check and in words.

use std::format;
use std::string::String;
use std::vec::Vec;

use serde_json::Value;
use toml::de::DeValue;

use super::bounds::Bounds;

/// The alternatives of a schema, unless they are only the words of a choice.
pub(super) fn branches(schema: &Value) -> Option<&Vec<Value>> {
    let branches = ["anyOf", "oneOf"].iter().find_map(|word| schema.get(word)?.as_array())?;
    options(schema).is_empty().then_some(branches)
}

/// The alternative that a value is meant for: its `kind`, else its type, else the most keys in common.
pub(super) fn choose<'s>(branches: &'s [Value], value: &DeValue<'_>) -> Option<&'s Value> {
    let Some(table) = value.as_table() else {
        let wanted = match value {
            DeValue::String(_) => "string",
            DeValue::Array(_) => "array",
            DeValue::Integer(_) | DeValue::Float(_) => "number",
            _ => return None,
        };
        return branches.iter().find(|branch| branch.get("type").and_then(Value::as_str) == Some(wanted));
    };
    let given = table.get("kind").and_then(|kind| kind.get_ref().as_str());
    if given.is_some() && branches.iter().any(|branch| kind(branch).is_some()) {
        return branches.iter().find(|branch| kind(branch) == given);
    }
    let shared = |branch: &&Value| {
        let properties = branch.get("properties").and_then(Value::as_object);
        properties
            .map_or(0, |properties| table.keys().filter(|key| properties.contains_key(key.get_ref().as_ref())).count())
    };
    branches.iter().filter(|branch| shared(branch) > 0).max_by_key(shared)
}

/// The `kind` that an alternative is for.
pub(super) fn kind(branch: &Value) -> Option<&str> {
    branch.pointer("/properties/kind/const")?.as_str()
}

/// The words of a choice.
pub(super) fn options(schema: &Value) -> Vec<&str> {
    if let Some(words) = schema.get("enum").and_then(Value::as_array) {
        return words.iter().filter_map(Value::as_str).collect();
    }
    if let Some(word) = schema.get("const").and_then(Value::as_str) {
        return std::vec![word];
    }
    let branches = schema.get("oneOf").and_then(Value::as_array);
    branches
        .into_iter()
        .flatten()
        .flat_map(|branch| if branch.get("properties").is_none() { options(branch) } else { Vec::new() })
        .collect()
}

/// What a place takes, in words.
pub(super) fn accepted(schema: &Value, outer: Bounds) -> String {
    let options = options(schema);
    if !options.is_empty() {
        return format!("one of {}", options.join(", "));
    }
    if let Some(branches) = branches(schema) {
        let kinds: Vec<_> = branches.iter().filter_map(kind).collect();
        return if kinds.is_empty() {
            branches.iter().map(|branch| accepted(branch, outer)).collect::<Vec<_>>().join(", or ")
        } else {
            format!("a table whose kind is one of {}", kinds.join(", "))
        };
    }
    let bounds = outer.narrowed(schema);
    let count = |word: &str| schema.get(word).and_then(Value::as_u64);
    match schema.get("type").and_then(Value::as_str) {
        Some("object") => keys_of(schema),
        Some("array") => match (count("minItems"), count("maxItems")) {
            (Some(least), Some(most)) if least == most => format!("a list of {least} values"),
            (Some(least), _) => format!("a list of at least {least}"),
            _ => "a list".into(),
        },
        Some("string") if schema.get("x-number").is_some() => "a number as printed, in quotes".into(),
        Some("string") => "a text in quotes".into(),
        Some("boolean") => "true or false".into(),
        Some("integer") => format!("a whole number{}", bounds.text()),
        _ => format!("a number{}", bounds.text()),
    }
}

/// A table, with its keys where they are few.
fn keys_of(schema: &Value) -> String {
    match schema.get("properties").and_then(Value::as_object) {
        Some(properties) if properties.len() <= 8 => {
            format!("a table with {}", properties.keys().map(String::as_str).collect::<Vec<_>>().join(", "))
        }
        _ => "a table".into(),
    }
}

/// What the key means, from the schema.
pub(super) fn described(schema: &Value) -> String {
    schema.get("description").and_then(Value::as_str).unwrap_or_default().replace('\n', " ")
}
