//! The worked explanation of a result: its card with the values of its fields, in words that can be read out.

use super::digits::number;
use super::form::{Escaping, Form, JsonNumber, Quoted, write_all};
use super::pieces::{cut, is_path, last, leading_word, pieces, words_of};
use super::words::{PAIRS, field_words, unit_of, words};
use super::{Card, find};
use crate::error::{Error, Result};
use core::fmt::{self, Write};

/// A value of a result, or of an input, under the name of its field: `capacity.torque_nm`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NamedValue<'a> {
    /// Fields from the outermost to the innermost, with points between them; they end in the unit.
    pub name: &'a str,
    /// What the field holds.
    pub value: Value<'a>,
}

/// A number, or a word such as a verdict.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Value<'a> {
    /// A number, in the unit of its name.
    Number(f64),
    /// A word or an exact fraction.
    Word(&'a str),
}

/// A card with values for its symbols. Its `Display` is the text.
#[derive(Clone, Copy, Debug)]
pub struct Explanation<'a> {
    /// The formula.
    pub card: &'static Card,
    /// What is known by name: fields of the result and inputs.
    pub values: &'a [NamedValue<'a>],
}

/// The worked explanation of a formula.
///
/// * `id` — of the card; `values` — fields of the result and inputs, by name. A symbol finds its value by the field that
///   its meaning names, also inside a nested struct: `torque_nm` is found in `capacity.torque_nm`. A value named `result`
///   goes to the symbol that the equation is solved for, where no field is named for it
/// * returns the [`Explanation`]: purpose, equation, each symbol in words with its value and unit, the result, what else
///   the result holds, range, source. Print it as text, with [`Explanation::write_html`] or [`Explanation::write_json`]
/// * errors: [`Error::Missing`] where no card has this id
///
/// ```
/// use trainwright::card::{NamedValue, Value, explain};
/// let value = |name, number| NamedValue { name, value: Value::Number(number) };
/// let values = [value("result", 67.0), value("inner_radius_mm", 56.0), value("outer_radius_mm", 78.0)];
/// let text = explain("clutch.mean_radius_worn_mm", &values)?.to_string();
/// assert!(text.contains("r_o  outer radius: 78 mm"));
/// assert!(text.contains("Result: r_m = 67 mm"));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn explain<'a>(id: &str, values: &'a [NamedValue<'a>]) -> Result<Explanation<'a>> {
    let card = find(id).ok_or(Error::Missing { name: "card", why: "no card has this id; card::all() lists them" })?;
    Ok(Explanation { card, values })
}

/// One symbol of the equation: its words, the unit of the card, and the values that its meaning names.
#[derive(Clone, Copy)]
struct Line<'a> {
    symbol: &'static str,
    meaning: &'static str,
    unit: &'static str,
    /// Of a field with two parts (value and u, lower and upper), the one that this symbol stands for.
    part: Option<usize>,
    /// Whether the equation is solved for it.
    is_result: bool,
    values: &'a [NamedValue<'a>],
}

/// What a word of a meaning stands for among the values.
#[derive(Clone, Copy)]
enum Found<'a> {
    One(NamedValue<'a>),
    /// A reading or a pair of limits.
    Pair(NamedValue<'a>, NamedValue<'a>),
}

impl<'a> Explanation<'a> {
    fn lines(self) -> impl Iterator<Item = Line<'a>> + Clone {
        let values = self.values;
        let solved_for = cut(self.card.equation, " = ").0;
        self.card.symbols.iter().flat_map(move |entry| {
            let (symbols, meanings) = (pieces(entry.symbol, ", ").count(), pieces(entry.meaning, ", ").count());
            let split = symbols > 1 && symbols == meanings;
            let halves =
                symbols == 2 && meanings == 1 && matches!(find_field(values, entry.meaning), Some(Found::Pair(..)));
            let parts = if split || halves { symbols } else { 1 };
            (0..parts).map(move |place| {
                let nth = |text: &'static str, apart: bool| {
                    if apart { pieces(text, ", ").nth(place).unwrap_or(text) } else { text }
                };
                let units = pieces(entry.unit, ", ").count();
                let symbol = nth(entry.symbol, parts > 1);
                Line {
                    symbol,
                    meaning: nth(entry.meaning, split),
                    unit: nth(entry.unit, parts > 1 && units == parts),
                    part: halves.then_some(place),
                    is_result: symbol == solved_for,
                    values,
                }
            })
        })
    }

    /// Values that no symbol names. Judgments and budgets have their own explanation.
    fn others(self) -> impl Iterator<Item = Found<'a>> {
        let named = move |name: &str| self.lines().any(|line| line.fields().any(|found| found.holds(name)));
        let apart = |name: &str| {
            name == "result" || pieces(name, ".").any(|part| matches!(part, "judgment" | "budget" | "rule"))
        };
        let rest = self.values.iter().copied().filter(move |entry| !named(entry.name) && !apart(entry.name));
        rest.filter_map(move |entry| {
            match PAIRS.iter().find_map(|(first, second)| pair_of(self.values, entry, first, second)) {
                Some(pair) => pair,
                None => Some(Found::One(entry)),
            }
        })
    }

    /// The symbol that the equation is solved for, where it has a value.
    fn result(self) -> Option<Line<'a>> {
        self.lines().find(|line| line.is_result && line.has_values())
    }

    /// What the equation is solved for with its value, as `T = 821.216 N·m`; nothing where that is not known.
    fn write_result(self, out: &mut dyn Write, form: Form, before: &str, after: &str) -> fmt::Result {
        if let Some(line) = self.result() {
            out.write_str(before)?;
            form.equation(out, line.symbol)?;
            out.write_str(" = ")?;
            line.values(out, form)?;
            return out.write_str(after);
        }
        // No symbol of its own: `V/V₁₅ = ...`.
        let Some(result) = self.values.iter().find(|entry| entry.name == "result") else { return Ok(()) };
        out.write_str(before)?;
        if let (solved_for, Some(_)) = cut(self.card.equation, " = ") {
            form.equation(out, solved_for)?;
            out.write_str(" = ")?;
        }
        value(out, form, result.value)?;
        out.write_str(after)
    }
}

impl<'a> Line<'a> {
    /// The values that the parts of the meaning name; else, for the symbol that the equation is solved for, the value named
    /// `result`.
    fn fields(self) -> impl Iterator<Item = Found<'a>> {
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
    fn holds(self, name: &str) -> bool {
        match self {
            Self::One(entry) => entry.name == name,
            Self::Pair(first, second) => first.name == name || second.name == name,
        }
    }
}

/// The field that a part of a meaning names: by its first word, else by the first word that is written like a field.
fn find_field<'a>(values: &'a [NamedValue<'a>], meaning: &str) -> Option<Found<'a>> {
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
fn pair_of<'a>(
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

fn value(out: &mut dyn Write, form: Form, value: Value<'_>) -> fmt::Result {
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
    fn values(self, out: &mut dyn Write, form: Form) -> fmt::Result {
        for (place, entry) in self.fields().enumerate() {
            out.write_str(if place > 0 { ", " } else { "" })?;
            found(out, form, entry, self.plain_unit())?;
        }
        Ok(())
    }

    fn has_values(self) -> bool {
        self.fields().next().is_some()
    }

    /// Words and value, as in `torque: 821.216 N·m`.
    fn sentence(self, out: &mut dyn Write, form: Form) -> fmt::Result {
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
    fn sentence(self, out: &mut dyn Write, form: Form) -> fmt::Result {
        let name = match self {
            Self::One(entry) => entry.name,
            Self::Pair(entry, _) => last(entry.name).0.unwrap_or(entry.name),
        };
        field_words(out, form, name)?;
        out.write_str(": ")?;
        found(out, form, self, "")
    }
}

impl Explanation<'_> {
    /// Writes the explanation as text.
    pub fn write_text(self, out: &mut dyn Write) -> fmt::Result {
        let Card { id, purpose, equation, range, source, locator, .. } = *self.card;
        write_all(out, &[id, ": ", purpose, "\n\n  ", equation, "\n\n"])?;
        let widest = self.lines().map(|line| line.symbol.chars().count()).max().unwrap_or(0);
        for line in self.lines() {
            write_all(out, &["  ", line.symbol])?;
            (line.symbol.chars().count()..widest + 2).try_for_each(|_| out.write_char(' '))?;
            line.sentence(out, Form::Text)?;
            out.write_char('\n')?;
        }
        self.write_result(out, Form::Text, "\nResult: ", "\n")?;
        for (place, entry) in self.others().enumerate() {
            out.write_str(if place == 0 { "\nAlso known\n  " } else { "  " })?;
            entry.sentence(out, Form::Text)?;
            out.write_char('\n')?;
        }
        write_all(
            out,
            &["\nValid for: ", range, "\nSource: ", source.work, ", ", locator, " (", source.known.words(), ")"],
        )
    }

    /// Writes the explanation as a piece of HTML: an `article` with headings of level 4, in classes of its own.
    pub fn write_html(self, out: &mut dyn Write) -> fmt::Result {
        let Card { id, purpose, equation, range, source, locator, .. } = *self.card;
        let form = Form::Html;
        write_all(out, &["<article class=\"explanation\"><h4>"])?;
        form.plain(out, purpose)?;
        write_all(out, &[" <code>", id, "</code></h4>\n<p class=\"equation\">"])?;
        form.equation(out, equation)?;
        out.write_str("</p>\n<dl class=\"symbols\">\n")?;
        for line in self.lines() {
            out.write_str("<div><dt>")?;
            form.equation(out, line.symbol)?;
            out.write_str("</dt><dd>")?;
            line.sentence(out, form)?;
            out.write_str("</dd></div>\n")?;
        }
        out.write_str("</dl>\n")?;
        self.write_result(out, form, "<p class=\"result\">Result: ", "</p>\n")?;
        let mut any = false;
        for entry in self.others() {
            out.write_str(if any { "; " } else { "<p class=\"others\">Also known: " })?;
            entry.sentence(out, form)?;
            any = true;
        }
        out.write_str(if any { ".</p>\n" } else { "" })?;
        out.write_str("<p class=\"note\">Valid for: ")?;
        form.plain(out, range)?;
        out.write_str(". Source: ")?;
        form.plain(out, source.work)?;
        out.write_str(", ")?;
        form.plain(out, locator)?;
        write_all(out, &[" (", source.known.words(), ").</p></article>"])
    }

    /// Writes the explanation as JSON. Numbers have all their digits; what is infinite or no number is null.
    pub fn write_json(self, out: &mut dyn Write) -> fmt::Result {
        let Card { id, purpose, equation, range, source, locator, .. } = *self.card;
        write!(out, "{{\"card\": {}, \"purpose\": {}, ", Quoted(id), Quoted(purpose))?;
        write!(out, "\"equation\": {}, \"symbols\": [", Quoted(equation))?;
        for (place, line) in self.lines().enumerate() {
            let separator = if place > 0 { ", " } else { "" };
            write!(out, "{separator}{{\"symbol\": {}, \"meaning\": \"", Quoted(line.symbol))?;
            words(&mut Escaping(out), Form::Text, line.meaning)?;
            write!(out, "\", \"unit\": {}, \"values\": {{", Quoted(line.unit))?;
            write_fields(out, line.fields())?;
            out.write_str("}}")?;
        }
        out.write_str("], \"result\": {")?;
        let bare = self.values.iter().find(|entry| entry.name == "result").filter(|_| self.result().is_none());
        let fields = self.result().into_iter().flat_map(Line::fields);
        write_fields(out, fields.chain(bare.map(|entry| Found::One(*entry))))?;
        out.write_str("}, \"others\": {")?;
        write_fields(out, self.others())?;
        write!(out, "}}, \"range\": {}, \"source\": {{\"work\": {}, ", Quoted(range), Quoted(source.work))?;
        write!(out, "\"locator\": {}, \"known\": {}}}}}", Quoted(locator), Quoted(source.known.words()))
    }
}

impl fmt::Display for Explanation<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.write_text(f)
    }
}

/// Values by the names of their fields, as the inside of a JSON object.
fn write_fields<'a>(out: &mut dyn Write, fields: impl Iterator<Item = Found<'a>>) -> fmt::Result {
    let entries = fields.flat_map(|found| match found {
        Found::One(entry) => [Some(entry), None],
        Found::Pair(first, second) => [Some(first), Some(second)],
    });
    for (place, entry) in entries.flatten().enumerate() {
        write!(out, "{}{}: ", if place > 0 { ", " } else { "" }, Quoted(entry.name))?;
        match entry.value {
            Value::Number(value) => write!(out, "{}", JsonNumber(value))?,
            Value::Word(word) => write!(out, "{}", Quoted(word))?,
        }
    }
    Ok(())
}
