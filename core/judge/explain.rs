//! A judgment in words: what was judged, what the chance is, what the uncertainty comes from, and what would settle it.

use super::propagation::known;
use super::{Budget, Judgment, Limits, Rule, RuleKind, Settlement, Verdict, settle_by};
use crate::card::{Form, JsonNumber, Quoted, number, whole, write_all};
use crate::real::{abs, floor};
use core::fmt::{self, Write};

/// A judgment and its budget, ready to be put into words. Its `Display` is the text.
#[derive(Clone, Copy, Debug)]
pub struct Judged<'a> {
    /// The decision.
    pub judgment: &'a Judgment,
    /// Where the uncertainty of the judged reading comes from, where that is known.
    pub budget: Option<&'a Budget>,
    /// Names of the inputs of the budget, in their order; those without a name are numbered.
    pub inputs: &'a [&'a str],
    /// Sign of the unit of the judged reading, empty for a pure number.
    pub unit: &'a str,
}

/// A judgment in words.
///
/// * `judgment` — the decision; `budget` — of the same reading, or none; `inputs` — names of its inputs, in their order;
///   `unit` — sign of the reading's unit, empty for a pure number
/// * returns the [`Judged`]: print it as text, with [`Judged::write_html`] or [`Judged::write_json`]
///
/// ```
/// use trainwright::judge::{Limits, Reading, Rule, explain, judge};
/// let spare_nm = judge(Reading::new(37.6, 69.4)?, Limits::at_least(0.0)?, Rule::stated_chances(0.95, 0.05)?)?;
/// let text = explain(&spare_nm, None, &[], "N·m").to_string();
/// assert!(text.starts_with("Judged: 37.6 N·m, standard uncertainty 69.4 N·m, against at least 0 N·m."));
/// assert!(text.contains("NOT PROVEN"));
/// # Ok::<(), trainwright::Error>(())
/// ```
#[must_use]
pub const fn explain<'a>(
    judgment: &'a Judgment,
    budget: Option<&'a Budget>,
    inputs: &'a [&'a str],
    unit: &'a str,
) -> Judged<'a> {
    Judged { judgment, budget, inputs, unit }
}

/// What one input of the budget means for the judgment.
struct Contribution<'a> {
    name: Option<&'a str>,
    sensitivity: f64,
    brings: f64,
    share: f64,
    settlement: Option<Settlement>,
}

impl<'a> Judged<'a> {
    fn contributions(self) -> impl Iterator<Item = Contribution<'a>> {
        self.budget.into_iter().flat_map(move |budget| {
            known(budget).zip(budget.share).map(move |(term, share)| Contribution {
                name: self.inputs.get(term.position as usize).copied(),
                sensitivity: term.sensitivity,
                brings: abs(term.contribution),
                share,
                settlement: settle_by(self.judgment, budget, term.position).ok(),
            })
        })
    }

    fn quantity(self, out: &mut dyn Write, form: Form, value: f64) -> fmt::Result {
        number(out, value)?;
        out.write_str(if self.unit.is_empty() { "" } else { " " })?;
        form.plain(out, self.unit)
    }

    fn limits(self, out: &mut dyn Write, form: Form, Limits { lower, upper }: Limits) -> fmt::Result {
        match (lower == f64::NEG_INFINITY, upper == f64::INFINITY) {
            (true, true) => out.write_str("no limits"),
            (false, true) => {
                out.write_str("at least ")?;
                self.quantity(out, form, lower)
            }
            (true, false) => {
                out.write_str("at most ")?;
                self.quantity(out, form, upper)
            }
            (false, false) => {
                number(out, lower)?;
                out.write_str(" to ")?;
                self.quantity(out, form, upper)
            }
        }
    }

    /// What is judged, and the verdict.
    fn verdict(self, out: &mut dyn Write, form: Form) -> fmt::Result {
        let judgment = self.judgment;
        out.write_str("Judged: ")?;
        self.quantity(out, form, judgment.reading.value)?;
        out.write_str(", standard uncertainty ")?;
        self.quantity(out, form, judgment.reading.u)?;
        out.write_str(", against ")?;
        self.limits(out, form, judgment.limits)?;
        out.write_str(". The chance that the true value lies there is ")?;
        percent(out, judgment.chance)?;
        write_all(out, &[": ", judgment.verdict.words(), ". The rule: "])?;
        rule(out, judgment.rule)?;
        out.write_char('.')
    }

    /// What would make it GO, or how far it stays so.
    fn turn(self, out: &mut dyn Write, form: Form) -> fmt::Result {
        let Judgment { reading, acceptance, value_to_go, u_to_decide, verdict, .. } = *self.judgment;
        if acceptance.lower == f64::NEG_INFINITY && acceptance.upper == f64::INFINITY {
            return out.write_str("Nothing is asked of it.");
        }
        if verdict == Verdict::Go {
            out.write_str("With this uncertainty it is GO for ")?;
            self.limits(out, form, acceptance)?;
            if u_to_decide == f64::INFINITY {
                return out.write_char('.');
            }
            out.write_str(", and this value stays GO up to a standard uncertainty of ")?;
            self.quantity(out, form, u_to_decide)?;
            return out.write_char('.');
        }
        if value_to_go == f64::INFINITY {
            out.write_str("With this uncertainty no value is GO: the limits lie too close together.")?;
        } else {
            out.write_str("With this uncertainty it is GO from ")?;
            self.quantity(out, form, value_to_go)?;
            out.write_str(", ")?;
            self.quantity(out, form, abs(value_to_go - reading.value))?;
            out.write_str(if value_to_go > reading.value { " more." } else { " less." })?;
        }
        if verdict == Verdict::NotProven {
            if u_to_decide > 0.0 {
                out.write_str(" As it is, the value is decided by a standard uncertainty of ")?;
                self.quantity(out, form, u_to_decide)?;
                out.write_str(" or less.")?;
            } else {
                out.write_str(" It lies on its limit: no measurement decides it.")?;
            }
        }
        Ok(())
    }

    /// What one input brings, and whether it would settle the case.
    fn input(self, out: &mut dyn Write, form: Form, place: u64, input: &Contribution<'_>) -> fmt::Result {
        match input.name {
            Some(name) => form.plain(out, name)?,
            None => {
                out.write_str("input ")?;
                whole(out, place)?;
            }
        }
        let u_now = input.settlement.map_or(0.0, |settlement| settlement.u_now);
        if input.brings <= 0.0 {
            return out.write_str(": taken as exact");
        }
        out.write_str(": sensitivity ")?;
        number(out, input.sensitivity)?;
        out.write_str(", its standard uncertainty ")?;
        number(out, u_now)?;
        out.write_str(" brings ")?;
        self.quantity(out, form, input.brings)?;
        out.write_str(", ")?;
        percent(out, input.share)?;
        out.write_str(" of the variance")?;
        match input.settlement {
            Some(settlement) if self.judgment.verdict == Verdict::NotProven && settlement.enough => {
                out.write_str("; known to ")?;
                number(out, settlement.u_needed)?;
                out.write_str(" it alone would decide")
            }
            Some(_) if self.judgment.verdict == Verdict::NotProven => out.write_str("; it alone cannot decide"),
            _ => Ok(()),
        }
    }

    /// Writes the judgment as text.
    pub fn write_text(self, out: &mut dyn Write) -> fmt::Result {
        self.verdict(out, Form::Text)?;
        out.write_char('\n')?;
        self.turn(out, Form::Text)?;
        for (place, input) in (1..).zip(self.contributions()) {
            out.write_str(if place == 1 { "\nThe uncertainty comes from\n  " } else { "\n  " })?;
            self.input(out, Form::Text, place, &input)?;
        }
        Ok(())
    }

    /// Writes the judgment as a piece of HTML.
    pub fn write_html(self, out: &mut dyn Write) -> fmt::Result {
        out.write_str("<div class=\"judged\"><p>")?;
        self.verdict(out, Form::Html)?;
        out.write_char(' ')?;
        self.turn(out, Form::Html)?;
        out.write_str("</p>")?;
        for (place, input) in (1..).zip(self.contributions()) {
            out.write_str(if place == 1 { "\n<p>The uncertainty comes from</p>\n<ul>\n<li>" } else { "</li>\n<li>" })?;
            self.input(out, Form::Html, place, &input)?;
        }
        out.write_str(if self.contributions().next().is_some() { "</li>\n</ul></div>" } else { "</div>" })
    }

    /// Writes the judgment as JSON. Numbers have all their digits; what is infinite or no number is null.
    pub fn write_json(self, out: &mut dyn Write) -> fmt::Result {
        let Judgment { reading, limits, chance, acceptance, value_to_go, u_to_decide, verdict, .. } = *self.judgment;
        let numbers = [
            ("value", reading.value),
            ("u", reading.u),
            ("lower", limits.lower),
            ("upper", limits.upper),
            ("chance", chance),
            ("go_from", acceptance.lower),
            ("go_to", acceptance.upper),
            ("value_to_go", value_to_go),
            ("u_to_decide", u_to_decide),
        ];
        write!(out, "{{\"unit\": {}, \"verdict\": {}", Quoted(self.unit), Quoted(verdict.words()))?;
        for (name, value) in numbers {
            write!(out, ", \"{name}\": {}", JsonNumber(value))?;
        }
        out.write_str(", \"inputs\": [")?;
        for (place, input) in (1_u32..).zip(self.contributions()) {
            out.write_str(if place > 1 { ", {\"name\": " } else { "{\"name\": " })?;
            match input.name {
                Some(name) => write!(out, "{}", Quoted(name))?,
                None => write!(out, "\"input {place}\"")?,
            }
            write!(
                out,
                ", \"sensitivity\": {}, \"contribution\": {}",
                JsonNumber(input.sensitivity),
                JsonNumber(input.brings)
            )?;
            write!(out, ", \"share\": {}", JsonNumber(input.share))?;
            if let Some(Settlement { enough, u_now, u_needed, .. }) = input.settlement {
                write!(
                    out,
                    ", \"u_now\": {}, \"enough\": {enough}, \"u_needed\": {}",
                    JsonNumber(u_now),
                    JsonNumber(u_needed)
                )?;
            }
            out.write_char('}')?;
        }
        out.write_str("]}")
    }
}

impl fmt::Display for Judged<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.write_text(f)
    }
}

/// A share in percent, to a tenth; never 0 or 100 for what is only near.
fn percent(out: &mut dyn Write, share: f64) -> fmt::Result {
    let tenths = floor(share * 1000.0 + 0.5);
    if tenths >= 1000.0 && share < 1.0 {
        out.write_str("over 99.9 %")
    } else if tenths <= 0.0 && share > 0.0 {
        out.write_str("under 0.1 %")
    } else {
        number(out, tenths / 10.0)?;
        out.write_str(" %")
    }
}

fn rule(out: &mut dyn Write, Rule { go, no_go, k, kind }: Rule) -> fmt::Result {
    match kind {
        RuleKind::SIMPLE_ACCEPTANCE => out.write_str("simple acceptance, the uncertainty is not counted"),
        RuleKind::EXPANDED_GUARD => {
            out.write_str("a guard of ")?;
            number(out, k)?;
            out.write_str(" standard uncertainties on either side of a limit")
        }
        _ => {
            out.write_str("GO from a chance of ")?;
            percent(out, go)?;
            out.write_str(", NO-GO to ")?;
            percent(out, no_go)
        }
    }
}
