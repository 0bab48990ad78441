//! Worked explanations: a card with the values of a result.

use std::fmt::{self, Write};

use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyList, PyString};
use trainwright::card as core;
use trainwright::judge::{self, Budget as CoreBudget, Judgment as CoreJudgment};

use crate::card::Card;
use crate::error::{raise, refuse};
use crate::judge::{Budget, Judgment};

/// The worked explanation of a result, in words that can be read out: purpose, equation, each symbol with its value and unit,
/// the result, what else it holds, range and source; for a judged result the verdict, what each input brings, and what would
/// settle it. `str()` is the text.
#[pyclass(frozen, module = "trainwright")]
pub struct Explanation {
    card: &'static core::Card,
    known: Vec<(String, Item)>,
    judged: Vec<Judged>,
    inputs: Vec<String>,
}

/// A number or a word.
enum Item {
    Number(f64),
    Word(String),
}

struct Judged {
    field: String,
    unit: String,
    judgment: CoreJudgment,
    budget: Option<CoreBudget>,
}

/// What a class knows of its explanation.
pub struct About {
    /// Ids of the formulas whose result it can be.
    pub cards: &'static [&'static str],
    /// Unit of its judgment, where the name of the field does not say it.
    pub unit: &'static str,
    /// Names of the inputs of its budget.
    pub inputs: &'static [&'static str],
}

/// What the caller of `explain` adds.
pub struct Given<'a, 'py> {
    pub card: Option<&'a str>,
    pub unit: Option<&'a str>,
    pub inputs: Option<Vec<String>>,
    pub more: Option<&'a Bound<'py, PyDict>>,
}

/// The explanation of a result of a class.
pub fn of_result(result: &Bound<'_, PyAny>, about: &About, given: Given<'_, '_>) -> PyResult<Explanation> {
    let Given { card, unit, inputs, more } = given;
    let id = match (card, about.cards) {
        (Some(card), _) => card,
        (None, [only]) => only,
        (None, several) => {
            let choices = several.iter().map(|id| format!("card={id:?}")).collect::<Vec<_>>().join(" or ");
            return Err(refuse(
                "MISSING",
                "card",
                format!("card: this can be the result of several formulas; give {choices}"),
            ));
        }
    };
    let mut explanation = Explanation::new(id)?;
    explanation.inputs = inputs.unwrap_or_else(|| about.inputs.iter().map(|&name| name.to_owned()).collect());
    explanation.take(result, more, unit.unwrap_or(about.unit))?;
    Ok(explanation)
}

/// The worked explanation of a result or of a formula.
///
/// `what` is a result that has `explain`, or the id of a card; `known` is then a result, or a mapping of fields to values.
/// More values by name: inputs that the result does not keep, and `result` for the symbol that the equation is solved for.
///
/// >>> print(trainwright.explain("clutch.mean_radius_worn_mm", inner_radius_mm=56.0, outer_radius_mm=78.0, result=67.0))
/// clutch.mean_radius_worn_mm: Friction radius of a worn-in lining
/// <BLANKLINE>
///   r_m = (r_o + r_i)/2
/// <BLANKLINE>
///   r_i  inner radius: 56 mm
///   r_o  outer radius: 78 mm
///   r_m  mean radius: 67 mm
/// <BLANKLINE>
/// Result: r_m = 67 mm
/// <BLANKLINE>
/// Valid for: uniform wear: pressure × radius the same over the lining
/// Source: R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th to 11th editions, chapter 16, uniform wear (from memory of the work)
#[pyfunction]
#[pyo3(signature = (what, known = None, /, **more))]
pub fn explain<'py>(
    what: &Bound<'py, PyAny>,
    known: Option<&Bound<'py, PyAny>>,
    more: Option<&Bound<'py, PyDict>>,
) -> PyResult<Bound<'py, Explanation>> {
    let py = what.py();
    if let Ok(id) = what.extract::<&str>() {
        let mut explanation = Explanation::new(id)?;
        let nothing = PyDict::new(py);
        explanation.take(known.unwrap_or(nothing.as_any()), more, "")?;
        return Bound::new(py, explanation);
    }
    let Some(method) = what.getattr_opt("explain")? else {
        let message = "what: give a result of a formula, or the id of a card and its values".to_owned();
        return Err(refuse("TEXT", "what", message));
    };
    Ok(method.call((), more)?.cast_into::<Explanation>()?)
}

impl Explanation {
    fn new(id: &str) -> PyResult<Self> {
        let card = core::explain(id, &[]).map_err(raise)?.card;
        Ok(Self { card, known: Vec::new(), judged: Vec::new(), inputs: Vec::new() })
    }

    /// Takes over the fields of a result or the items of a mapping, then the values by name.
    fn take(&mut self, from: &Bound<'_, PyAny>, more: Option<&Bound<'_, PyDict>>, unit: &str) -> PyResult<()> {
        let mut budgets = Vec::new();
        if let Ok(judgment) = from.cast::<Judgment>() {
            self.judged.push(Judged {
                field: String::new(),
                unit: unit.to_owned(),
                judgment: judgment.get().0,
                budget: None,
            });
        }
        self.fields("", from, unit, &mut budgets)?;
        if let Some(more) = more {
            self.fields("", more.as_any(), unit, &mut budgets)?;
        }
        for judged in &mut self.judged {
            judged.budget =
                budgets.iter().copied().find(|budget| judge::settle_by(&judged.judgment, budget, 0).is_ok());
        }
        Ok(())
    }

    fn fields(
        &mut self,
        path: &str,
        holder: &Bound<'_, PyAny>,
        unit: &str,
        budgets: &mut Vec<CoreBudget>,
    ) -> PyResult<()> {
        for (name, value) in fields_of(holder)? {
            if is_class(holder)? && is_results_by_name(&value)? {
                continue; // other cases beside the one that is explained; the result itself has them
            }
            let name = if path.is_empty() { name } else { format!("{path}.{name}") };
            if let Ok(judgment) = value.cast::<Judgment>() {
                let CoreJudgment { reading, chance, .. } = judgment.get().0;
                for (part, number) in [("reading.value", reading.value), ("reading.u", reading.u), ("chance", chance)] {
                    self.known.push((format!("{name}.{part}"), Item::Number(number)));
                }
                let unit = core::unit_sign(&name).unwrap_or(unit).to_owned();
                self.judged.push(Judged { field: name, unit, judgment: judgment.get().0, budget: None });
            } else if let Ok(budget) = value.cast::<Budget>() {
                budgets.push(budget.get().0);
            } else if value.cast::<PyDict>().is_ok() || is_class(&value)? {
                self.fields(&name, &value, unit, budgets)?;
            } else if let Some(item) = Item::of(&value)? {
                self.known.retain(|(other, _)| *other != name);
                self.known.push((name, item));
            }
        }
        Ok(())
    }

    /// The core's explanation, handed on.
    fn with<T>(&self, write: impl FnOnce(core::Explanation<'_>) -> T) -> T {
        let values: Vec<_> =
            self.known.iter().map(|(name, value)| core::NamedValue { name, value: value.plain() }).collect();
        write(core::Explanation { card: self.card, values: &values })
    }

    /// The core's judgments in words, handed on one after the other.
    fn each_judged(&self, mut write: impl FnMut(usize, judge::Judged<'_>) -> fmt::Result) -> fmt::Result {
        let inputs: Vec<&str> = self.inputs.iter().map(String::as_str).collect();
        self.judged.iter().enumerate().try_for_each(|(place, Judged { judgment, budget, unit, .. })| {
            write(place, judge::explain(judgment, budget.as_ref(), &inputs, unit))
        })
    }

    fn text(&self) -> std::result::Result<String, fmt::Error> {
        let mut text = String::new();
        self.with(|explanation| explanation.write_text(&mut text))?;
        self.each_judged(|place, judged| {
            text.write_str("\n\n")?;
            if let (Some(Judged { field, .. }), true) = (self.judged.get(place), self.judged.len() > 1) {
                write!(text, "{field}: ")?;
            }
            judged.write_text(&mut text)
        })?;
        Ok(text)
    }

    fn html(&self) -> std::result::Result<String, fmt::Error> {
        let mut html = String::new();
        self.with(|explanation| explanation.write_html(&mut html))?;
        let end = "</article>";
        html.truncate(html.len() - end.len());
        self.each_judged(|_, judged| judged.write_html(&mut html))?;
        Ok(html + end)
    }

    fn json(&self) -> std::result::Result<String, fmt::Error> {
        let mut json = String::new();
        self.with(|explanation| explanation.write_json(&mut json))?;
        json.pop();
        json.write_str(", \"judged\": [")?;
        self.each_judged(|place, judged| {
            json.write_str(if place > 0 { ", " } else { "" })?;
            judged.write_json(&mut json)
        })?;
        json.write_str("]}")?;
        Ok(json)
    }
}

/// Whether a value is of one of the classes of this library.
fn is_class(value: &Bound<'_, PyAny>) -> PyResult<bool> {
    Ok(value.get_type().module()?.to_str()?.starts_with("trainwright"))
}

/// Whether a value is a dictionary of results, such as that of every gear.
fn is_results_by_name(value: &Bound<'_, PyAny>) -> PyResult<bool> {
    let Ok(items) = value.cast::<PyDict>() else { return Ok(false) };
    items.values().iter().next().map_or(Ok(false), |first| is_class(&first))
}

/// The items of a mapping, or the fields of a class.
fn fields_of<'py>(holder: &Bound<'py, PyAny>) -> PyResult<Vec<(String, Bound<'py, PyAny>)>> {
    if let Ok(items) = holder.cast::<PyDict>() {
        return items.iter().map(|(name, value)| Ok((name.extract()?, value))).collect();
    }
    if !is_class(holder)? {
        return Err(refuse("TEXT", "known", "known: give a result, or a mapping of fields to values".to_owned()));
    }
    // In the order of the struct, where the class knows it.
    let names = match holder.getattr_opt("as_dict")? {
        Some(as_dict) => as_dict.call0()?.cast_into::<PyDict>()?.keys(),
        None => holder.dir()?,
    };
    let mut fields = Vec::new();
    for name in names {
        let name = name.extract::<String>()?;
        if let Some(value) = holder
            .getattr_opt(&*name)?
            .filter(|value| !name.starts_with('_') && name != "CARDS" && !value.is_callable())
        {
            fields.push((name, value));
        }
    }
    Ok(fields)
}

impl Item {
    /// What of a value can be shown; nothing for what is not there.
    fn of(value: &Bound<'_, PyAny>) -> PyResult<Option<Self>> {
        Ok(if value.is_none() {
            None
        } else if let Ok(truth) = value.cast::<PyBool>() {
            Some(Self::Word(if truth.is_true() { "yes" } else { "no" }.to_owned()))
        } else if value.cast::<PyFloat>().is_ok() || value.cast::<PyInt>().is_ok() {
            Some(Self::Number(value.extract()?))
        } else if value.cast::<PyList>().is_ok() {
            // A few names are said; a long list explains nothing, and the result itself has it.
            let names = value.extract::<Vec<String>>().ok().filter(|names| (1..=16).contains(&names.len()));
            names.map(|names| Self::Word(names.join(", ")))
        } else {
            Some(Self::Word(value.str()?.to_string()))
        })
    }

    fn plain(&self) -> core::Value<'_> {
        match self {
            Self::Number(value) => core::Value::Number(*value),
            Self::Word(word) => core::Value::Word(word),
        }
    }
}

fn written(text: std::result::Result<String, fmt::Error>) -> PyResult<String> {
    text.map_err(|_| refuse("TEXT", "explanation", "the explanation cannot be written".to_owned()))
}

#[pymethods]
impl Explanation {
    /// The formula.
    #[getter]
    fn card(&self) -> Card {
        Card(self.card)
    }

    /// What is known, by the names of fields; those of nested results have points between them.
    #[getter]
    fn values<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let values = PyDict::new(py);
        for (name, value) in &self.known {
            match value {
                Item::Number(number) => values.set_item(name, number)?,
                Item::Word(word) => values.set_item(name, word)?,
            }
        }
        Ok(values)
    }

    fn __str__(&self) -> PyResult<String> {
        written(self.text())
    }

    fn __repr__(&self) -> String {
        format!("<explanation of {}>", self.card.id)
    }

    fn _repr_html_(&self) -> PyResult<String> {
        written(self.html())
    }

    /// A piece of HTML: an `article` with a heading of level 4.
    fn as_html(&self) -> PyResult<String> {
        written(self.html())
    }

    /// JSON text. Numbers have all their digits; what is infinite or no number is null.
    fn as_json(&self) -> PyResult<String> {
        written(self.json())
    }

    /// The same as a dictionary.
    fn as_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let json = written(self.json())?;
        Ok(py.import("json")?.call_method1("loads", (PyString::new(py, &json),))?.cast_into()?)
    }
}
