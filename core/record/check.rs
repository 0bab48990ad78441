//! Walks a document along its schema and collects every fault.
//!
//! The schema is the one that the structs give. Besides the words of JSON Schema it carries our own, which editors pass over:
//!
//! | word | on | meaning |
//! |---|---|---|
//! | `x-gives` | text, list, table | the text, each text of the list, each free key of the table is a name of this kind |
//! | `x-joins` | text | likewise, where the file has no list of its members |
//! | `x-refers` | text, list, table | those names must be given somewhere (`a\|b`: as one kind or the other) |
//! | `x-values_refer` | table | each value must be a name of this kind |
//! | `x-or` | with `x-refers` | one more word that is accepted |
//! | `x-complete` | with `x-refers` | every name of the kind must be there |
//! | `x-order` | list | `rising`, or `not_falling` |
//! | `x-least`, `x-above`, `x-most` | list, table | bounds of every number in it |
//! | `x-same_length` | table | these lists must be equally long |
//! | `x-number` | text | must read as a number |

mod accepted;
mod bounds;
mod names;
mod unknown;

use std::borrow::ToOwned;
use std::collections::BTreeSet;
use std::format;
use std::string::String;
use std::vec::Vec;

use serde_json::{Map, Value};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use self::accepted::{accepted, branches, choose, described, kind, options};
use self::bounds::Bounds;
use self::names::{Rule, Use, nearest_of_listed};
use self::unknown::unknown;
use super::document::{Document, Path};
use super::problem::Problem;

pub(super) use self::names::{Names, suggestion};

type Node<'t> = Spanned<DeValue<'t>>;

/// The walk along one document.
pub(super) struct Walk<'w> {
    document: &'w Document<'w>,
    names: &'w mut Names,
    problems: Vec<Problem>,
}

impl<'w> Walk<'w> {
    /// Every fault of the document that its schema shows; names are judged later, when all files are read.
    pub(super) fn along(schema: &Value, document: &'w Document<'w>, names: &'w mut Names) -> Vec<Problem> {
        let mut walk = Self { document, names, problems: Vec::new() };
        walk.table(schema, document.root.get_ref(), &Path::default(), Bounds::default());
        walk.problems
    }

    fn report(&mut self, path: &Path, message: impl Into<String>, mend: impl Into<String>) {
        let mut problem = self.document.problem(path, message);
        problem.mend = mend.into();
        self.problems.push(problem);
    }

    fn value(&mut self, schema: &Value, value: &Node<'_>, path: &Path, outer: Bounds) {
        if let Some(branches) = branches(schema) {
            return match choose(branches, value.get_ref()) {
                Some(branch) => self.value(branch, value, path, outer),
                None => self.no_branch(schema, value, path, outer),
            };
        }
        let bounds = outer.narrowed(schema);
        let wanted =
            if options(schema).is_empty() { schema.get("type").and_then(Value::as_str) } else { Some("string") };
        match (wanted, value.get_ref()) {
            (Some("object"), DeValue::Table(table)) => self.table(schema, table, path, bounds),
            (Some("array"), DeValue::Array(items)) => self.list(schema, items, path, bounds),
            (Some("string"), DeValue::String(text)) => self.text(schema, text, path),
            (Some("boolean"), DeValue::Boolean(_)) => {}
            (Some("integer"), DeValue::Integer(_)) | (Some("number"), DeValue::Integer(_) | DeValue::Float(_)) => {
                let inside = number(value.get_ref()).is_some_and(|number| number.is_finite() && bounds.holds(number));
                if !inside {
                    self.report(path, format!("takes {}", accepted(schema, outer)), described(schema));
                }
            }
            (None, _) => {}
            (Some(_), given) => {
                let mend = match (wanted, given) {
                    (Some("string"), DeValue::Integer(_) | DeValue::Float(_)) => "put it in quotes".into(),
                    (_, DeValue::String(text)) if text.parse::<f64>().is_ok() => "take the quotes away".into(),
                    _ => described(schema),
                };
                self.report(path, format!("takes {}, not {}", accepted(schema, outer), said(given)), mend);
            }
        }
    }

    /// A table whose `kind` is none of the alternatives, or a value of a type that none takes.
    fn no_branch(&mut self, schema: &Value, value: &Node<'_>, path: &Path, outer: Bounds) {
        let kinds: Vec<_> = branches(schema).into_iter().flatten().filter_map(kind).collect();
        let given = value.get_ref().as_table().and_then(|table| table.get("kind")?.get_ref().as_str());
        match given {
            Some(given) if !kinds.is_empty() => {
                let message = format!("takes one of {}", kinds.join(", "));
                self.report(&path.key("kind"), message, nearest_of_listed(given, kinds.into_iter()));
            }
            _ => self.report(path, format!("takes {}", accepted(schema, outer)), described(schema)),
        }
    }

    fn table(&mut self, schema: &Value, table: &DeTable<'_>, path: &Path, bounds: Bounds) {
        let none = Map::new();
        let properties = schema.get("properties").and_then(Value::as_object).unwrap_or(&none);
        let free = schema.get("additionalProperties").filter(|free| free.is_object());
        let mut meant = BTreeSet::new();
        let mut free_keys = BTreeSet::new();
        for (key, value) in table {
            let name = key.get_ref().as_ref();
            let here = path.key(name);
            if let Some(property) = properties.get(name) {
                self.value(property, value, &here, bounds);
            } else if let Some(free) = free {
                self.value(free, value, &here, bounds);
                self.name(schema, name, &here);
                if let Some(kind) = schema.get("x-values_refer") {
                    self.refer(kind, value.get_ref().as_str().unwrap_or_default(), &here);
                }
                free_keys.insert(name.to_owned());
            } else {
                let (known, message, mend) = unknown(name, value, properties);
                let mut problem = self.document.problem(&here, message);
                let place = self.document.problem_at(key.span(), "", String::new());
                (problem.line, problem.column, problem.mend) = (place.line, place.column, mend);
                self.problems.push(problem);
                meant.extend(known);
            }
        }
        for key in schema.get("required").and_then(Value::as_array).into_iter().flatten().filter_map(Value::as_str) {
            if !table.contains_key(key) && !meant.contains(key) {
                let property = properties.get(key).unwrap_or(&Value::Null);
                let message = format!("missing: takes {}", accepted(property, bounds));
                self.report(&path.key(key), message, described(property));
            }
        }
        for (key, property) in properties.iter().filter(|(key, _)| !table.contains_key(key.as_str())) {
            if let Some(default) = property.get("default").and_then(Value::as_str) {
                self.name(property, default, &path.key(key));
            }
        }
        if schema.get("x-complete").is_some() {
            let kinds = schema.get("x-refers").and_then(Value::as_str).unwrap_or_default().to_owned();
            let mut blank = self.document.problem(path, "");
            blank.value.clear();
            self.names.uses.push(Use { kinds, rule: Rule::Complete(free_keys), blank });
        }
        self.same_length(schema, table, path);
    }

    fn same_length(&mut self, schema: &Value, table: &DeTable<'_>, path: &Path) {
        let lists = schema.get("x-same_length").and_then(Value::as_array).into_iter().flatten();
        let mut lengths = lists.filter_map(Value::as_str).filter_map(|key| {
            let length = table.get(key)?.get_ref().as_array()?.len();
            Some((key, length))
        });
        let Some((first, length)) = lengths.next() else { return };
        for (key, other) in lengths.filter(|(_, other)| *other != length).collect::<Vec<_>>() {
            let message = format!("{other} values against {length} in {first}");
            self.report(&path.key(key), message, "each row needs a value in every list");
        }
    }

    fn list(&mut self, schema: &Value, items: &[Node<'_>], path: &Path, bounds: Bounds) {
        let count = |word: &str| schema.get(word).and_then(Value::as_u64).and_then(|count| usize::try_from(count).ok());
        let (least, most) = (count("minItems").unwrap_or(0), count("maxItems").unwrap_or(usize::MAX));
        if !(least..=most).contains(&items.len()) {
            let message = format!("takes {}, not {}", accepted(schema, bounds), items.len());
            self.report(path, message, described(schema));
        }
        let mut seen = BTreeSet::new();
        for (index, item) in items.iter().enumerate() {
            let here = path.index(index);
            if let Some(each) = schema.get("items") {
                self.value(each, item, &here, bounds);
            }
            if let Some(text) = item.get_ref().as_str() {
                self.name(schema, text, &here);
                if schema.get("uniqueItems").is_some() && !seen.insert(text) {
                    self.report(&here, "named twice", "leave one out");
                }
            }
        }
        self.order(schema, items, path);
    }

    fn order(&mut self, schema: &Value, items: &[Node<'_>], path: &Path) {
        let Some(order) = schema.get("x-order").and_then(Value::as_str) else { return };
        let numbers: Vec<_> = items.iter().map(|item| number(item.get_ref())).collect();
        for (index, pair) in numbers.windows(2).enumerate() {
            let [Some(before), Some(after)] = pair else { continue };
            if after < before && items.len() == 2 {
                let message = format!("reversed: lower {before} is above upper {after}");
                self.report(path, message, "exchange them or correct one");
            } else if after < before || (order == "rising" && after <= before) {
                let message = format!("must rise from value to value: {after} follows {before}");
                self.report(&path.index(index + 1), message, described(schema));
            }
        }
    }

    fn text(&mut self, schema: &Value, text: &str, path: &Path) {
        let options = options(schema);
        if !options.is_empty() && !options.contains(&text) {
            let message = format!("takes {}", accepted(schema, Bounds::default()));
            return self.report(path, message, nearest_of_listed(text, options.iter().copied()));
        }
        let empty = text.is_empty() && schema.get("minLength").is_some();
        let not_a_number = schema.get("x-number").is_some() && !text.parse::<f64>().is_ok_and(f64::is_finite);
        if empty || not_a_number {
            self.report(path, format!("takes {}", accepted(schema, Bounds::default())), described(schema));
        }
        self.name(schema, text, path);
    }

    /// Notes that a name is given or used here, as the schema says.
    fn name(&mut self, schema: &Value, name: &str, path: &Path) {
        if let Some(kind) = schema.get("x-gives").and_then(Value::as_str) {
            let new = self.names.give(kind, name);
            if !new && format!("{path}").ends_with(".id") {
                self.report(path, format!("there is already a {kind} {name:?}"), "rename one of them");
            }
        }
        if let Some(kind) = schema.get("x-joins").and_then(Value::as_str) {
            if self.document.root.get_ref().get("train").is_some_and(|train| train.get_ref().get("members").is_some()) {
                self.refer(&Value::from(kind), name, path);
            } else {
                self.names.give(kind, name);
            }
        }
        if schema.get("x-or").and_then(Value::as_str) != Some(name)
            && let Some(kinds) = schema.get("x-refers")
        {
            self.refer(kinds, name, path);
        }
    }

    fn refer(&mut self, kinds: &Value, name: &str, path: &Path) {
        let kinds = kinds.as_str().unwrap_or_default().to_owned();
        let blank = self.document.problem(path, "");
        self.names.uses.push(Use { kinds, rule: Rule::Given(name.to_owned()), blank });
    }
}

fn number(value: &DeValue<'_>) -> Option<f64> {
    match value {
        #[expect(clippy::cast_precision_loss, reason = "compared with bounds far below 2^53")]
        DeValue::Integer(integer) => i64::from_str_radix(integer.as_str(), integer.radix()).ok().map(|i| i as f64),
        DeValue::Float(float) => float.as_str().parse().ok(),
        _ => None,
    }
}

fn said(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "a text",
        DeValue::Integer(_) => "a whole number",
        DeValue::Float(_) => "a decimal number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}
