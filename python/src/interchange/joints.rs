//! How the parts of a family meet.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::interchange as core;
use trainwright::interchange::{Crossing, NO_MACHINING, Passage};
use trainwright::record::NamedJoints;

use super::answer::{Answer, Reason};
use super::joint::{Joint, Machining, Meeting};
use super::matched_set::MatchedSet;
use crate::class::Fields;
use crate::error::{answer, raise, refuse};

/// How the parts of a family meet: its joints by name, from a record (`family.joints()`) or given here.
///
/// `sizes` of every joint and `prices` go by the names of variants, parts and machining. `fixed` parts belong to the unit itself
/// and are never exchanged, such as its case; `alias` parts have other numbers and the same fit; `parts` may name more parts, of
/// which no joint is known.
///
/// >>> size = lambda lower, upper: Limits(lower=lower, upper=upper)
/// >>> journal = Joint(name="journal", kind="running", first="shaft", second="support", limit=0.14, sizes={
/// ...     "early": (size(43.975, 44.000), size(44.040, 44.075)),
/// ...     "late": (size(44.325, 44.350), size(44.390, 44.425)),
/// ... })
/// >>> joints = Joints(variants=["early", "late"], joints=[journal], prices={"shaft": 210, "support": 145})
/// >>> joints.answer("shaft", variant="early", into="late").alone
/// 'loose'
/// >>> joints.close_set("shaft", variant="late", into="early").parts
/// ['shaft', 'support']
#[pyclass(frozen, module = "trainwright.interchange")]
pub struct Joints(pub NamedJoints);

impl Joints {
    pub(super) fn part(&self, name: &str) -> PyResult<u16> {
        let known = &self.0.parts;
        self.0
            .part(name)
            .ok_or_else(|| refuse("MISSING", "part", format!("part = {name:?}: known are {}", known.join(", "))))
    }

    pub(super) fn variant(&self, parameter: &str, name: &str) -> PyResult<u8> {
        let known = &self.0.variants;
        self.0.variant(name).ok_or_else(|| {
            refuse("MISSING", parameter, format!("{parameter} = {name:?}: known are {}", known.join(", ")))
        })
    }

    pub(super) fn joint_named(&self, name: &str) -> PyResult<u16> {
        let known = &self.0.names;
        self.0
            .joint(name)
            .ok_or_else(|| refuse("MISSING", "joint", format!("joint = {name:?}: known are {}", known.join(", "))))
    }

    fn crossings(&self, from: u8, into: u8) -> PyResult<Vec<Crossing>> {
        let mut crossings = vec![Crossing::BLANK; self.0.joints.len()];
        self.0.joints().crossings(from, into, &mut crossings).map_err(raise)?;
        Ok(crossings)
    }

    pub(super) fn rule(&self, passage: Passage) -> Option<String> {
        if passage.machining == NO_MACHINING {
            return None;
        }
        self.0.rules.get(usize::from(passage.machining)).map(|rule| rule.id.clone())
    }

    fn named(&self, answer: core::Answer) -> Answer {
        Answer {
            part: name_of(&self.0.parts, answer.part),
            variant: name_of(&self.0.variants, answer.from.into()),
            into: name_of(&self.0.variants, answer.into.into()),
            answer,
        }
    }

    fn all(&self) -> PyResult<Vec<core::Answer>> {
        let joints = self.0.joints();
        let pairs = self.0.variants.len() * self.0.variants.len().saturating_sub(1);
        let mut answers = vec![core::Answer::BLANK; self.0.parts.len() * pairs];
        joints.matrix(&mut vec![Crossing::BLANK; self.0.joints.len()], &mut answers).map_err(raise)?;
        Ok(answers)
    }

    fn set_of(&self, crossings: &[Crossing], part: u16, from: u8, into: u8) -> PyResult<MatchedSet> {
        let NamedJoints { part_prices, machining_prices, joints, names, parts, variants, .. } = &self.0;
        let set = self.0.joints().close_set(crossings, part).map_err(raise)?;
        let price = self.0.joints().price(&set, crossings, part_prices, machining_prices).map_err(raise)?;
        let edge = set.edge(joints, crossings);
        Ok(MatchedSet {
            part: name_of(parts, part),
            variant: name_of(variants, from.into()),
            into: name_of(variants, into.into()),
            parts: set.parts.parts().map(|part| name_of(parts, part)).collect(),
            edge: edge.map(|(joint, passage)| (name_of(names, joint), self.rule(passage))).collect(),
            price,
        })
    }
}

pub(super) fn name_of(names: &[String], place: u16) -> String {
    names.get(usize::from(place)).cloned().unwrap_or_default()
}

#[pymethods]
impl Joints {
    #[new]
    #[pyo3(signature = (*, variants, joints, parts = None, machining = None, fixed = None, alias = None, prices = None, price_unit = ""))]
    fn new(
        variants: Vec<String>,
        joints: Vec<PyRef<'_, Joint>>,
        parts: Option<Vec<String>>,
        machining: Option<Vec<PyRef<'_, Machining>>>,
        fixed: Option<Vec<String>>,
        alias: Option<Vec<String>>,
        prices: Option<Bound<'_, PyDict>>,
        price_unit: &str,
    ) -> PyResult<Self> {
        let mut named = NamedJoints::new(&variants);
        for name in parts.iter().flatten() {
            named.part_or_new(name);
        }
        joints.iter().try_for_each(|joint| joint.add_to(&mut named))?;
        for name in alias.iter().flatten() {
            let part = named.part_or_new(name);
            named.alias.insert(part);
        }
        for name in fixed.iter().flatten() {
            let part = named.part_or_new(name);
            named.fixed.insert(part);
        }
        machining.iter().flatten().try_for_each(|rule| named.add_machining(&rule.0)).map_err(raise)?;
        if let Some(prices) = prices {
            let prices: std::collections::HashMap<String, f64> = prices.extract()?;
            named.set_prices(price_unit, |name| prices.get(name).copied());
            let known = named.parts.iter().chain(named.rules.iter().map(|rule| &rule.id));
            let known: Vec<_> = known.map(String::as_str).collect();
            if let Some(name) = prices.keys().find(|name| !known.contains(&name.as_str())) {
                let message = format!("prices: there is no part or machining {name:?}; known: {}", known.join(", "));
                return Err(refuse("MISSING", "prices", message));
            }
        }
        named.joints().checked().map_err(raise)?;
        Ok(Self(named))
    }

    /// Every part, in the order in which the record first names it.
    #[getter]
    fn parts(&self) -> Vec<String> {
        self.0.parts.clone()
    }

    /// Variants in the order in which they were built.
    #[getter]
    fn variants(&self) -> Vec<String> {
        self.0.variants.clone()
    }

    /// The joints: fits, then covers, then matches.
    #[getter]
    fn joints(&self) -> Vec<Joint> {
        (0..self.0.joints.len()).filter_map(|place| Joint::of(&self.0, place)).collect()
    }

    /// The only machining permitted.
    #[getter]
    fn machining(&self) -> Vec<Machining> {
        self.0.rules.iter().cloned().map(Machining).collect()
    }

    /// Parts that belong to the unit itself and are never exchanged.
    #[getter]
    fn fixed(&self) -> Vec<String> {
        self.0.fixed.parts().map(|part| name_of(&self.0.parts, part)).collect()
    }

    /// Parts whose numbers differ and whose fit is the same: order any of them.
    #[getter]
    fn alias(&self) -> Vec<String> {
        self.0.alias.parts().map(|part| name_of(&self.0.parts, part)).collect()
    }

    /// The known prices, by part and machining.
    #[getter]
    fn prices<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let prices = PyDict::new(py);
        let parts = self.0.parts.iter().zip(&self.0.part_prices);
        let rules = self.0.rules.iter().map(|rule| &rule.id).zip(&self.0.machining_prices);
        for (name, price) in parts.chain(rules).filter(|(_, price)| !price.is_nan()) {
            prices.set_item(name, price)?;
        }
        Ok(prices)
    }

    /// What prices are counted in; empty without a price list.
    #[getter]
    fn price_unit(&self) -> &str {
        &self.0.price_unit
    }

    /// What comes of a joint with its first part of one variant and its second of another. Parts of one variant hold.
    #[pyo3(signature = (joint, *, first_of, second_of))]
    fn meeting(&self, joint: &str, first_of: &str, second_of: &str) -> PyResult<Meeting> {
        let (first_of, second_of) = (self.variant("first_of", first_of)?, self.variant("second_of", second_of)?);
        answer(self.0.joints().meeting(self.joint_named(joint)?, first_of, second_of))
    }

    /// What comes of a joint once a machining was done, with its first part of one variant and its second of another.
    #[pyo3(signature = (machining, *, first_of, second_of))]
    fn machined(&self, machining: &str, first_of: &str, second_of: &str) -> PyResult<Meeting> {
        let known: Vec<_> = self.0.rules.iter().map(|rule| rule.id.as_str()).collect();
        let place = known.iter().position(|rule| *rule == machining).ok_or_else(|| {
            refuse("MISSING", "machining", format!("machining = {machining:?}: known are {}", known.join(", ")))
        })?;
        let (first_of, second_of) = (self.variant("first_of", first_of)?, self.variant("second_of", second_of)?);
        answer(self.0.joints().machined(place as u16, first_of, second_of))
    }

    /// How a part of a variant goes into a unit of another. Source: follows from the definitions.
    #[pyo3(signature = (part, *, variant, into))]
    fn answer(&self, part: &str, variant: &str, into: &str) -> PyResult<Answer> {
        let (from, into) = (self.variant("variant", variant)?, self.variant("into", into)?);
        let found = self.0.joints().answer(&self.crossings(from, into)?, self.part(part)?, from, into);
        Ok(self.named(found.map_err(raise)?))
    }

    /// What comes of every joint of a part that is put in alone, as it is.
    #[pyo3(signature = (part, *, variant, into))]
    fn reasons(&self, part: &str, variant: &str, into: &str) -> PyResult<Vec<Reason>> {
        let (from, into) = (self.variant("variant", variant)?, self.variant("into", into)?);
        let part = self.part(part)?;
        let crossings = self.crossings(from, into)?;
        let mut reasons = vec![];
        for ((place, joint), crossing) in (0..).zip(&self.0.joints).zip(&crossings) {
            let (neighbor, passage, first_of, second_of) = if joint.first == part {
                (joint.second, crossing.first, from, into)
            } else if joint.second == part {
                (joint.first, crossing.second, into, from)
            } else {
                continue;
            };
            reasons.push(Reason {
                joint: name_of(&self.0.names, place),
                neighbor: name_of(&self.0.parts, neighbor),
                meeting: self.0.joints().meeting(place, first_of, second_of).map_err(raise)?,
                machining: self.rule(passage),
            });
        }
        Ok(reasons)
    }

    /// The answers for every part and every ordered pair of variants.
    fn matrix(&self) -> PyResult<Vec<Answer>> {
        Ok(self.all()?.into_iter().map(|answer| self.named(answer)).collect())
    }

    /// The answers of `matrix` as columns, for a data frame: `polars.DataFrame(joints.columns())`.
    fn columns<'py>(&self, py: Python<'py>) -> PyResult<Fields<'py>> {
        let answers = self.matrix()?;
        let fields = Fields::new(py);
        let words = |of: fn(&Answer) -> String| answers.iter().map(of).collect::<Vec<_>>();
        let counts = |of: fn(&core::Answer) -> u16| answers.iter().map(|answer| of(&answer.answer)).collect::<Vec<_>>();
        fields.set("part", words(|answer| answer.part.clone()))?;
        fields.set("variant", words(|answer| answer.variant.clone()))?;
        fields.set("into", words(|answer| answer.into.clone()))?;
        fields.set("relation", words(|answer| answer.relation().word().into()))?;
        fields.set("alone", words(|answer| answer.alone().word().into()))?;
        fields.set("joints", counts(|answer| answer.joints))?;
        fields.set("broken", counts(|answer| answer.broken))?;
        fields.set("size", counts(|answer| answer.size))?;
        fields.set("machined", counts(|answer| answer.machined))?;
        fields.set("unmended", counts(|answer| answer.unmended))?;
        Ok(fields)
    }

    /// The smallest set of parts of a variant that goes together with the rest of a unit of another: the closure of the joints
    /// that break, which every set that goes together contains. Source: follows from the definitions (least closed set).
    #[pyo3(signature = (part, *, variant, into))]
    fn close_set(&self, part: &str, variant: &str, into: &str) -> PyResult<MatchedSet> {
        let (from, into) = (self.variant("variant", variant)?, self.variant("into", into)?);
        self.set_of(&self.crossings(from, into)?, self.part(part)?, from, into)
    }

    fn __eq__(&self, other: &Self) -> bool {
        format!("{:?}", self.0) == format!("{:?}", other.0)
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Fields<'py>)> {
        let fields = Fields::new(py);
        fields.set("variants", self.variants())?;
        fields.set("joints", self.joints())?;
        fields.set("parts", self.parts())?;
        fields.set("machining", self.machining())?;
        fields.set("fixed", self.fixed())?;
        fields.set("alias", self.alias())?;
        fields.set("prices", self.prices(py)?)?;
        fields.set("price_unit", self.price_unit())?;
        Ok(((), fields))
    }

    fn __repr__(&self) -> String {
        let NamedJoints { parts, joints, variants, .. } = &self.0;
        format!("<{} parts in {} joints; variants {}>", parts.len(), joints.len(), variants.join(", "))
    }
}
