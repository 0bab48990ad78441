//! One symbol of an equation, and the values that its meaning names.

use core::fmt::{self, Write};

use super::{NamedValue, Value};
use crate::card::digits::number;
use crate::card::find;
use crate::card::form::{Form, write_all};
use crate::card::pieces::{is_path, last, leading_word, pieces, words_of};
use crate::card::words::{PAIRS, field_words, unit_of, words};

/// One symbol of the equation: its words, the unit of the card, and the values that its meaning names.
#[derive(Clone, Copy)]
pub(super) struct Line<'a> {
    pub(super) symbol: &'static str,
    pub(super) meaning: &'static str,
    pub(super) unit: &'static str,
    /// Of a field with two parts (value and u, lower and upper), the one that this symbol stands for.
    pub(super) part: Option<usize>,
    /// Whether the equation is solved for it.
    pub(super) is_result: bool,
    pub(super) values: &'a [NamedValue<'a>],
}

/// What a word of a meaning stands for among the values.
#[derive(Clone, Copy)]
pub(super) enum Found<'a> {
    One(NamedValue<'a>),
    /// A reading or a pair of limits.
    Pair(NamedValue<'a>, NamedValue<'a>),
}

impl<'a> Line<'a> {
    /// The values that the parts of the meaning name; else, for the symbol that the equation is solved for, the value named
    /// `result`.
    pub(super) fn fields(self) -> impl Iterator<Item = Found<'a>> {
        let (values, part) = (self.values, self.part);
        let named = pieces(self.meaning, ", ").filter_map(move |meaning| find_field(values, meaning));
        let none = named.clone().next().is_none();
        let result = values.iter().find(|entry| none && self.is_result && entry.name == "result");
        named.chain(result.map(|entry| Found::One(*entry))).map(move |found| match (found, part) {
            (Found::Pair(first, _), Some(0)) => Found::One(first),
            (Found::Pair(_, second), Some(_)) => Found::One(second),
            _ => found,
        })
    }

    /// The unit on the card, where it is one for the value and not a remark.
    fn plain_unit(self) -> &'static str {
        if self.unit.bytes().any(|letter| letter == b' ') || self.unit == "1" { "" } else { self.unit }
    }

    /// The unit that the equation wants, where it is another.
    fn remark(self) -> &'static str {
        if self.unit.ends_with(" in the equation") { self.unit } else { "" }
    }

    /// Whether a field should stand behind this symbol: its meaning begins with the name of one.
    fn is_field(self) -> bool {
        pieces(self.meaning, ", ").map(leading_word).any(|word| is_path(word) && find(word).is_none())
    }
}

impl Found<'_> {
    pub(super) fn holds(self, name: &str) -> bool {
        match self {
            Self::One(entry) => entry.name == name,
            Self::Pair(first, second) => first.name == name || second.name == name,
        }
    }
}

/// The field that a part of a meaning names: by its first word, else by the first word that is written like a field.
pub(super) fn find_field<'a>(values: &'a [NamedValue<'a>], meaning: &str) -> Option<Found<'a>> {
    let mut words = words_of(meaning).enumerate().filter(|(place, word)| *place == 0 || is_path(word));
    words.find_map(|(_, word)| find_word(values, word))
}

fn find_word<'a>(values: &'a [NamedValue<'a>], word: &str) -> Option<Found<'a>> {
    let named = |inner: &str| {
        let matches = |entry: &&NamedValue<'_>, outer_too: bool| {
            let Some(outer) = entry.name.strip_suffix(inner) else { return false };
            let Some(outer) = (if inner.is_empty() { Some(outer) } else { outer.strip_suffix('.') }) else {
                return false;
            };
            let Some(holder) = outer.strip_suffix(word) else { return false };
            holder.is_empty() || (outer_too && holder.ends_with('.'))
        };
        values.iter().find(|entry| matches(entry, false)).or_else(|| values.iter().find(|entry| matches(entry, true)))
    };
    let pair = PAIRS.iter().find_map(|(first, second)| Some(Found::Pair(*named(first)?, *named(second)?)));
    named("").map(|entry| Found::One(*entry)).or(pair)
}

/// The pair that a value begins; `Some(None)` for its second half, which is shown with the first.
pub(super) fn pair_of<'a>(
    values: &'a [NamedValue<'a>],
    entry: NamedValue<'a>,
    first: &str,
    second: &str,
) -> Option<Option<Found<'a>>> {
    let sibling = |from: &str, to: &str| {
        let outer = entry.name.strip_suffix(from)?.strip_suffix('.')?;
        values.iter().find(|other| {
            other.name.strip_suffix(to).and_then(|other| other.strip_suffix('.')).is_some_and(|other| other == outer)
        })
    };
    if sibling(second, first).is_some() {
        return Some(None);
    }
    sibling(first, second).map(|other| Some(Found::Pair(entry, *other)))
}

pub(super) fn value(out: &mut dyn Write, form: Form, value: Value<'_>) -> fmt::Result {
    match value {
        Value::Number(value) => number(out, value),
        Value::Word(word) => form.plain(out, word),
    }
}

/// The sign of the unit in a field's name, else the given one.
fn unit(out: &mut dyn Write, name: &str, otherwise: &str) -> fmt::Result {
    match unit_of(name) {
        Some((_, per, sign)) => write_all(out, &[if per { " 1/" } else { " " }, sign]),
        None if otherwise.is_empty() => Ok(()),
        None => write_all(out, &[" ", otherwise]),
    }
}

/// A found value with its unit; a reading with its uncertainty, limits from one to the other.
fn found(out: &mut dyn Write, form: Form, found: Found<'_>, otherwise: &str) -> fmt::Result {
    match found {
        Found::One(entry) => {
            value(out, form, entry.value)?;
            unit(out, entry.name, if matches!(entry.value, Value::Word(_)) { "" } else { otherwise })
        }
        Found::Pair(first, second) => {
            value(out, form, first.value)?;
            let reading = first.name.ends_with("value");
            out.write_str(if reading { " (u = " } else { " to " })?;
            value(out, form, second.value)?;
            out.write_str(if reading { ")" } else { "" })?;
            unit(out, first.name, otherwise)
        }
    }
}

impl<'a> Line<'a> {
    /// The values of this symbol, `, ` between them.
    pub(super) fn values(self, out: &mut dyn Write, form: Form) -> fmt::Result {
        for (place, entry) in self.fields().enumerate() {
            out.write_str(if place > 0 { ", " } else { "" })?;
            found(out, form, entry, self.plain_unit())?;
        }
        Ok(())
    }

    pub(super) fn has_values(self) -> bool {
        self.fields().next().is_some()
    }

    /// Words and value, as in `torque: 821.216 N·m`.
    pub(super) fn sentence(self, out: &mut dyn Write, form: Form) -> fmt::Result {
        match (self.part, self.fields().next()) {
            (Some(_), Some(Found::One(entry))) => field_words(out, form, entry.name)?,
            _ => words(out, form, self.meaning)?,
        }
        if self.has_values() {
            out.write_str(": ")?;
            self.values(out, form)?;
        } else if self.is_field() && !self.values.is_empty() {
            out.write_str(": not given")?;
        }
        if !self.remark().is_empty() {
            write_all(out, &[" (", self.remark(), ")"])?;
        }
        Ok(())
    }
}

impl Found<'_> {
    /// Words and value of what no symbol names.
    pub(super) fn sentence(self, out: &mut dyn Write, form: Form) -> fmt::Result {
        let name = match self {
            Self::One(entry) => entry.name,
            Self::Pair(entry, _) => last(entry.name).0.unwrap_or(entry.name),
        };
        field_words(out, form, name)?;
        out.write_str(": ")?;
        found(out, form, self, "")
    }
}
