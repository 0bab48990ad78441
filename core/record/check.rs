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

use std::borrow::ToOwned;
use std::collections::{BTreeMap, BTreeSet};
use std::format;
use std::string::String;
use std::vec::Vec;

use serde_json::{Map, Value};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::document::{Document, Path};
use super::problem::Problem;
use super::unit;

type Node<'t> = Spanned<DeValue<'t>>;

/// Names given and used in a file.
#[derive(Default)]
pub(super) struct Names {
    given: BTreeMap<String, BTreeSet<String>>,
    uses: Vec<Use>,
}

/// A place where names are used. `blank` is the problem that it would be.
struct Use {
    kinds: String,
    rule: Rule,
    blank: Problem,
}

enum Rule {
    Given(String),
    Complete(BTreeSet<String>),
}

impl Names {
    fn give(&mut self, kind: &str, name: &str) -> bool {
        self.given.entry(kind.to_owned()).or_default().insert(name.to_owned())
    }

    fn known(&self, kinds: &str) -> BTreeSet<&str> {
        kinds.split('|').filter_map(|kind| self.given.get(kind)).flatten().map(String::as_str).collect()
    }

    /// Problems of the names that nobody gives: this file, or for a kind of name that it does not give, the other files. A
    /// kind that none of them gives cannot be judged.
    pub(super) fn unresolved(&self, others: &[Self]) -> Vec<Problem> {
        self.uses
            .iter()
            .filter_map(|Use { kinds, rule, blank }| {
                let mut known = self.known(kinds);
                if known.is_empty() {
                    known = others.iter().flat_map(|other| other.known(kinds)).collect();
                }
                if known.is_empty() {
                    return None;
                }
                let what = kinds.replace('|', " or ");
                let (message, mend) = match rule {
                    Rule::Given(name) if known.contains(name.as_str()) => return None,
                    Rule::Given(name) => {
                        (format!("there is no {what} {name:?}"), suggestion(name, known.iter().copied()))
                    }
                    Rule::Complete(present) => {
                        let missing: Vec<_> = known.into_iter().filter(|name| !present.contains(*name)).collect();
                        if missing.is_empty() {
                            return None;
                        }
                        (format!("no value for {what} {}", missing.join(", ")), "give one value for each".into())
                    }
                };
                Some(Problem { message, mend, ..blank.clone() })
            })
            .collect()
    }
}

/// The nearest of the names, or all of them.
pub(super) fn suggestion<'n>(word: &str, names: impl Iterator<Item = &'n str> + Clone) -> String {
    nearest(word, names.clone()).unwrap_or_else(|| format!("known: {}", names.collect::<Vec<_>>().join(", ")))
}

/// The nearest of the names, where the message before it lists them all.
fn nearest_of_listed<'n>(word: &str, names: impl Iterator<Item = &'n str>) -> String {
    nearest(word, names).unwrap_or_else(|| "write one of these".into())
}

fn nearest<'n>(word: &str, names: impl Iterator<Item = &'n str>) -> Option<String> {
    let near = names
        .map(|name| (strsim::jaro_winkler(&word.to_lowercase(), &name.to_lowercase()), name))
        .filter(|(similarity, _)| *similarity > 0.8)
        .max_by(|a, b| a.0.total_cmp(&b.0));
    near.map(|(_, name)| format!("did you mean {name}?"))
}

/// Bounds of a number, inherited from the list or table around it.
#[derive(Clone, Copy, Default)]
struct Bounds {
    least: Option<f64>,
    above: Option<f64>,
    most: Option<f64>,
}

impl Bounds {
    fn narrowed(self, schema: &Value) -> Self {
        let number =
            |words: [&str; 2], outer: Option<f64>| words.iter().find_map(|word| schema.get(word)?.as_f64()).or(outer);
        let unsigned = match schema.get("format").and_then(Value::as_str) {
            Some("uint8") => Some(f64::from(u8::MAX)),
            Some("uint16") => Some(f64::from(u16::MAX)),
            Some("uint32") => Some(f64::from(u32::MAX)),
            _ => None,
        };
        Self {
            least: number(["minimum", "x-least"], self.least),
            above: number(["exclusiveMinimum", "x-above"], self.above),
            most: number(["maximum", "x-most"], self.most.or(unsigned)),
        }
    }

    fn holds(self, value: f64) -> bool {
        self.least.is_none_or(|least| value >= least)
            && self.above.is_none_or(|above| value > above)
            && self.most.is_none_or(|most| value <= most)
    }

    fn text(self) -> String {
        match (self.least, self.above, self.most) {
            (Some(least), _, Some(most)) => format!(" from {least} to {most}"),
            (Some(least), _, None) => format!(" of at least {least}"),
            (None, Some(above), Some(most)) => format!(" above {above}, at most {most}"),
            (None, Some(above), None) => format!(" above {above}"),
            (None, None, Some(most)) => format!(" of at most {most}"),
            (None, None, None) => String::new(),
        }
    }
}

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

/// What is wrong with a key that the table does not take: the key that was meant, the message, the mend.
fn unknown(name: &str, value: &Node<'_>, properties: &Map<String, Value>) -> (Option<String>, String, String) {
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

fn number(value: &DeValue<'_>) -> Option<f64> {
    match value {
        #[expect(clippy::cast_precision_loss, reason = "compared with bounds far below 2^53")]
        DeValue::Integer(integer) => i64::from_str_radix(integer.as_str(), integer.radix()).ok().map(|i| i as f64),
        DeValue::Float(float) => float.as_str().parse().ok(),
        _ => None,
    }
}

/// The alternatives of a schema, unless they are only the words of a choice.
fn branches(schema: &Value) -> Option<&Vec<Value>> {
    let branches = ["anyOf", "oneOf"].iter().find_map(|word| schema.get(word)?.as_array())?;
    options(schema).is_empty().then_some(branches)
}

/// The alternative that a value is meant for: its `kind`, else its type, else the most keys in common.
fn choose<'s>(branches: &'s [Value], value: &DeValue<'_>) -> Option<&'s Value> {
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
fn kind(branch: &Value) -> Option<&str> {
    branch.pointer("/properties/kind/const")?.as_str()
}

/// The words of a choice.
fn options(schema: &Value) -> Vec<&str> {
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
fn accepted(schema: &Value, outer: Bounds) -> String {
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
fn described(schema: &Value) -> String {
    schema.get("description").and_then(Value::as_str).unwrap_or_default().replace('\n', " ")
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
