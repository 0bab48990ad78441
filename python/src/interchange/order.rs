//! What to order for a unit on the bench.

use std::collections::HashMap;

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::fit::Spread as CoreSpread;
use trainwright::interchange as core;
use trainwright::interchange::{AS_FOUND, Aim, Job, MeasuredSide, NO_JOINT, NO_MACHINING};

use super::joint::JointOutcome;
use super::joints::{Joints, name_of};
use super::matched_set::Price;
use crate::class::words;
use crate::error::{raise, refuse};
use crate::fit::Spread;
use crate::judge::{Reading, Rule, Verdict};

/// A joint of the unit as it would be put together.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.interchange")]
#[derive(Clone, PartialEq)]
pub struct JointState {
    joint: String,
    machining: Option<String>,
    state: core::JointState,
}

#[pymethods]
impl JointState {
    /// The joint.
    #[getter]
    fn joint(&self) -> &str {
        &self.joint
    }

    /// What comes of it as the parts are.
    #[getter]
    fn outcome(&self) -> JointOutcome {
        JointOutcome(self.state.outcome)
    }

    /// The machining that mends it, if it needs one.
    #[getter]
    fn machining(&self) -> Option<&str> {
        self.machining.as_deref()
    }

    /// Whether one of its sizes was measured; else it is known by its tolerances alone.
    #[getter]
    fn measured(&self) -> bool {
        self.state.measured
    }

    /// By tolerances, `"GO"` where it holds and `"NO-GO"` where it does not; by measured sizes, as judged.
    #[getter]
    fn verdict(&self) -> Verdict {
        Verdict(self.state.verdict)
    }

    /// Chance that the clearance is right; by tolerances 1 or 0.
    #[getter]
    fn chance(&self) -> f64 {
        self.state.chance
    }

    /// Clearance of a measured fit, mm; 0 with u 0 of others.
    #[getter]
    fn clearance_mm(&self) -> Reading {
        self.state.clearance_mm.into()
    }

    fn __repr__(&self) -> String {
        format!("<{}: {}>", self.joint, self.verdict().word())
    }
}

/// A part of some variant in a unit, after what machining is permitted.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.interchange")]
#[derive(Clone, PartialEq)]
pub struct Other {
    part: String,
    variant: String,
    outcome: core::JointOutcome,
    machining: Option<String>,
}

#[pymethods]
impl Other {
    /// The part.
    #[getter]
    fn part(&self) -> &str {
        &self.part
    }

    /// Its variant.
    #[getter]
    fn variant(&self) -> &str {
        &self.variant
    }

    /// What comes of it: the outcome of its worst joint that no machining mends.
    #[getter]
    fn outcome(&self) -> JointOutcome {
        JointOutcome(self.outcome)
    }

    /// The first machining that it needs, if any.
    #[getter]
    fn machining(&self) -> Option<&str> {
        self.machining.as_deref()
    }

    fn __repr__(&self) -> String {
        format!("<{} {}: {}>", self.variant, self.part, JointOutcome(self.outcome).word())
    }
}

/// An order for a unit on the bench, or why there is none.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.interchange")]
#[derive(Clone, PartialEq)]
pub struct Order {
    parts: Vec<(String, String)>,
    others: Vec<Other>,
    joints: Vec<JointState>,
    stopped_at: Option<String>,
    order: core::Order,
}

crate::class::explained!(Order, ["interchange.order"], , []);

#[pymethods]
impl Order {
    /// Whether the unit can be put together so that no joint is known to be wrong.
    #[getter]
    fn possible(&self) -> bool {
        self.order.possible
    }

    /// The variant to order of each part, in the order of the record.
    #[getter]
    fn parts<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let parts = PyDict::new(py);
        self.parts.iter().try_for_each(|(part, variant)| parts.set_item(part, variant))?;
        Ok(parts)
    }

    /// What comes of other variants of the ordered parts in the unit as it would be. Those that hold may be ordered as well; the
    /// others are the do-not list.
    #[getter]
    fn others(&self) -> Vec<Other> {
        self.others.clone()
    }

    /// Every joint as it would be.
    #[getter]
    fn joints(&self) -> Vec<JointState> {
        self.joints.clone()
    }

    /// The machining that each of these joints needs, by joint.
    #[getter]
    fn machining<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let needed = PyDict::new(py);
        for state in &self.joints {
            if let Some(rule) = &state.machining {
                needed.set_item(&state.joint, rule)?;
            }
        }
        Ok(needed)
    }

    /// Joints that are neither proven right nor wrong: measure better.
    #[getter]
    fn not_proven(&self) -> Vec<&str> {
        let open = |state: &&JointState| state.state.verdict == trainwright::judge::Verdict::NotProven;
        self.joints.iter().filter(open).map(|state| state.joint.as_str()).collect()
    }

    /// The first joint that nothing mends, where there is no order.
    #[getter]
    fn stopped_at(&self) -> Option<&str> {
        self.stopped_at.as_deref()
    }

    /// What the parts and the machining cost.
    #[getter]
    fn price(&self) -> Price {
        self.order.price.into()
    }

    /// Whether no other order can be cheaper; only looked for where the cheapest was asked for.
    #[getter]
    fn cheapest(&self) -> bool {
        self.order.cheapest
    }

    /// Partial orders that were looked at.
    #[getter]
    fn steps(&self) -> u32 {
        self.order.steps
    }

    fn __repr__(&self) -> String {
        let parts: Vec<_> = self.parts.iter().map(|(part, variant)| format!("{variant} {part}")).collect();
        match &self.stopped_at {
            Some(joint) => format!("<no order: nothing mends {joint}>"),
            None if parts.is_empty() => "<nothing to order>".into(),
            None => format!("<order {}>", parts.join(", ")),
        }
    }
}

impl Joints {
    fn other(&self, variants: &[u8], part: u16, variant: u8) -> PyResult<Other> {
        let passage = self.0.joints().put_in(variants, part, variant).map_err(raise)?;
        Ok(Other {
            part: name_of(&self.0.parts, part),
            variant: name_of(&self.0.variants, variant.into()),
            outcome: passage.outcome,
            machining: self.rule(passage),
        })
    }

    /// The variant of every part: as given by name, the rest alike.
    fn filled(&self, parameter: &str, given: Option<HashMap<String, String>>, rest: u8) -> PyResult<Vec<u8>> {
        let mut variants = vec![rest; self.0.parts.len()];
        for (part, variant) in given.iter().flatten() {
            let place = usize::from(self.part(part)?);
            if let Some(known) = variants.get_mut(place) {
                *known = self.variant(parameter, variant)?;
            }
        }
        Ok(variants)
    }
}

words! {
    "aim" AimWord = Aim { FEWEST = "fewest", CHEAPEST = "cheapest" }
}

#[pymethods]
impl Joints {
    /// The fewest parts, or the cheapest, that make every joint of a unit on the bench hold.
    ///
    /// `unit` is the unit's variant; `wanted` and `found` give the variant of parts that shall be, or were found to be, another;
    /// `measured` gives sizes of the parts as found, mm, by joint and part, and then needs the `rule` by which they are judged and
    /// the `spread` that parts not measured are taken to have in their tolerance. `aim` is `"fewest"` or `"cheapest"`.
    /// Source: follows from the definitions (branch and bound over all choices).
    ///
    /// >>> size = lambda lower, upper: Limits(lower=lower, upper=upper)
    /// >>> journal = Joint(name="journal", kind="running", first="shaft", second="support", limit=0.14, sizes={
    /// ...     "early": (size(43.975, 44.000), size(44.040, 44.075)),
    /// ...     "late": (size(44.325, 44.350), size(44.390, 44.425)),
    /// ... })
    /// >>> joints = Joints(variants=["early", "late"], joints=[journal])
    /// >>> order = joints.order(unit="late", found={"shaft": "early"}, aim="fewest")
    /// >>> order.parts, order.others
    /// ({'shaft': 'late'}, [<early shaft: loose>])
    #[pyo3(signature = (*, unit, aim, wanted = None, found = None, measured = None, rule = None, spread = None))]
    fn order(
        &self,
        unit: &str,
        aim: AimWord,
        wanted: Option<HashMap<String, String>>,
        found: Option<HashMap<String, String>>,
        measured: Option<Vec<(String, String, Reading)>>,
        rule: Option<Rule>,
        spread: Option<Spread>,
    ) -> PyResult<Order> {
        let unit = self.variant("unit", unit)?;
        let named = &self.0;
        let count = named.parts.len();
        let (found, wanted) = (self.filled("found", found, unit)?, self.filled("wanted", wanted, AS_FOUND)?);
        let measured = measured.iter().flatten().map(|(joint, part, size_mm)| {
            Ok(MeasuredSide { joint: self.joint_named(joint)?, part: self.part(part)?, size_mm: (*size_mm).into() })
        });
        let measured = measured.collect::<PyResult<Vec<_>>>()?;
        let (rule, spread) = match (rule, spread) {
            (Some(rule), Some(spread)) => (rule.0, spread.0),
            // Nothing is judged by it.
            _ if measured.is_empty() => (trainwright::judge::Rule::simple_acceptance(), CoreSpread::RECTANGULAR),
            (None, _) => {
                return Err(refuse(
                    "MISSING",
                    "rule",
                    "rule is missing: measured sizes are judged; name the rule".into(),
                ));
            }
            _ => {
                let message = "spread is missing: say how parts that are not measured lie in their tolerance, \"rectangular\" or \
                               \"normal 3 sigma\"";
                return Err(refuse("MISSING", "spread", message.into()));
            }
        };
        let job = Job {
            unit,
            found: &found,
            wanted: &wanted,
            measured: &measured,
            rule,
            spread,
            part_prices: &named.part_prices,
            machining_prices: &named.machining_prices,
            aim: aim.0,
        };
        let (mut parts, mut states) = (vec![AS_FOUND; count], vec![core::JointState::BLANK; named.joints.len()]);
        let order = named.joints().order(&job, &mut parts, &mut states).map_err(raise)?;
        let built: Vec<_> =
            parts.iter().zip(&found).map(|(new, found)| if *new == AS_FOUND { *found } else { *new }).collect();
        let mut others = vec![];
        for (part, &variant) in (0..).zip(&parts).filter(|(_, variant)| **variant != AS_FOUND) {
            for other in (0..named.variants.len() as u8).filter(|other| *other != variant) {
                others.push(self.other(&built, part, other)?);
            }
        }
        let joints = (0..).zip(states).map(|(joint, state)| JointState {
            joint: name_of(&named.names, joint),
            machining: (state.machining != NO_MACHINING)
                .then(|| named.rules.get(usize::from(state.machining)).map(|rule| rule.id.clone()))
                .flatten(),
            state,
        });
        let ordered = named.parts.iter().zip(&parts).filter(|(_, variant)| **variant != AS_FOUND);
        Ok(Order {
            parts: ordered.map(|(part, variant)| (part.clone(), name_of(&named.variants, (*variant).into()))).collect(),
            others,
            joints: joints.collect(),
            stopped_at: (order.stopped_at != NO_JOINT).then(|| name_of(&named.names, order.stopped_at)),
            order,
        })
    }

    /// What comes of a part of some variant in a unit in which these parts were found to be of another variant, by tolerance.
    #[pyo3(signature = (part, *, variant, unit, found = None))]
    fn put_in(&self, part: &str, variant: &str, unit: &str, found: Option<HashMap<String, String>>) -> PyResult<Other> {
        let variants = self.filled("found", found, self.variant("unit", unit)?)?;
        self.other(&variants, self.part(part)?, self.variant("variant", variant)?)
    }
}
