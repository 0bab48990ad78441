//! A key that its table does not take: the one that was meant, and its value in the unit of that key.

use std::borrow::ToOwned;
use std::format;
use std::string::String;
use std::vec::Vec;

use serde_json::{Map, Value};
use toml::de::DeValue;

use super::super::unit;
use super::names::suggestion;
use super::{Node, number};

/// What is wrong with a key that the table does not take: the key that was meant, the message, the mend.
pub(super) fn unknown(
    name: &str,
    value: &Node<'_>,
    properties: &Map<String, Value>,
) -> (Option<String>, String, String) {
    let (stem, given_unit) = unit::split(name);
    for key in properties.keys() {
        let (known_stem, Some(unit)) = unit::split(key) else { continue };
        if known_stem != stem {
            continue;
        }
        let meant = Some(key.clone());
        let Some(given_unit) = given_unit else {
            return (meant, "unknown key: the unit is missing".into(), format!("this key takes {}: {key}", unit.name));
        };
        let message = format!("this key takes {}, not {}", unit.name, given_unit.name);
        let mend = match converted(value.get_ref(), given_unit, unit) {
            Some(converted) => format!("write {key} = {converted}"),
            None => format!("write {key}"),
        };
        return (meant, message, mend);
    }
    let keys = properties.keys().map(String::as_str);
    let mend = suggestion(name, keys.clone());
    let meant = keys.into_iter().find(|key| mend == format!("did you mean {key}?")).map(ToOwned::to_owned);
    (meant, "unknown key".into(), mend)
}

fn converted(value: &DeValue<'_>, from: &unit::Unit, to: &unit::Unit) -> Option<String> {
    match value {
        DeValue::Array(items) => {
            let items: Option<Vec<_>> = items.iter().map(|item| converted(item.get_ref(), from, to)).collect();
            Some(format!("[{}]", items?.join(", ")))
        }
        _ => unit::convert(number(value)?, from, to),
    }
}
