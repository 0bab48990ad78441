//! The worked explanation of a result: its card with the values of its fields, in words that can be read out.

mod line;

use self::line::{Found, Line, find_field, pair_of, value};
use super::form::{Escaping, Form, JsonNumber, Quoted, write_all};
use super::pieces::{cut, pieces};
use super::words::{PAIRS, words};
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
