//! How a part goes into a unit of another variant, and why.

use pyo3::prelude::*;
use trainwright::interchange as core;

use super::joint::{JointOutcome, Meeting};
use crate::class::words;

words! {
    "relation" Relation = core::Relation {
        NotKnown = "not known",
        Singly = "singly",
        Machined = "after machining",
        Set = "only as a set",
        Never = "never",
        Fixed = "belongs to the unit",
    }
}

/// How a part of one variant goes into a unit of another.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.interchange")]
#[derive(Clone, PartialEq)]
pub struct Answer {
    pub(super) part: String,
    pub(super) variant: String,
    pub(super) into: String,
    pub(super) answer: core::Answer,
}

crate::class::explained!(Answer, ["interchange.answer"], , []);

#[pymethods]
impl Answer {
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

    /// The unit's variant.
    #[getter]
    fn into(&self) -> &str {
        &self.into
    }

    /// `"singly"`, `"after machining"`, `"only as a set"`, `"never"`, `"not known"` or `"belongs to the unit"`.
    #[getter]
    pub(super) fn relation(&self) -> Relation {
        Relation(self.answer.relation)
    }

    /// What comes of putting it in alone, as it is: `"holds"`, `"blocked"` (found at once), `"loose"` (goes together and runs
    /// loose: the expensive case), `"may bind"`, `"may be loose"`, `"uncovered"` or `"unequal"`.
    #[getter]
    pub(super) fn alone(&self) -> JointOutcome {
        JointOutcome(self.answer.alone)
    }

    /// Joints of the part in the record.
    #[getter]
    fn joints(&self) -> u16 {
        self.answer.joints
    }

    /// How many of them do not hold when it is put in alone.
    #[getter]
    fn broken(&self) -> u16 {
        self.answer.broken
    }

    /// Parts of the matched set; 0 where there is no such question.
    #[getter]
    fn size(&self) -> u16 {
        self.answer.size
    }

    /// Joints of the set that must be machined.
    #[getter]
    fn machined(&self) -> u16 {
        self.answer.machined
    }

    /// Joints of the set that nothing mends.
    #[getter]
    fn unmended(&self) -> u16 {
        self.answer.unmended
    }

    fn __repr__(&self) -> String {
        let Self { part, variant, into, .. } = self;
        format!("<{variant} {part} into {into}: {}>", self.relation().word())
    }
}

/// A joint of a part that is put in alone: what comes of it, and what mends it.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.interchange")]
#[derive(Clone, PartialEq)]
pub struct Reason {
    pub(super) joint: String,
    pub(super) neighbor: String,
    pub(super) meeting: core::Meeting,
    pub(super) machining: Option<String>,
}

#[pymethods]
impl Reason {
    /// The joint.
    #[getter]
    fn joint(&self) -> &str {
        &self.joint
    }

    /// The unit's part that it is with.
    #[getter]
    fn neighbor(&self) -> &str {
        &self.neighbor
    }

    /// What comes of it, with clearance or share.
    #[getter]
    fn meeting(&self) -> Meeting {
        self.meeting.into()
    }

    /// The machining that mends it, if there is one.
    #[getter]
    fn machining(&self) -> Option<&str> {
        self.machining.as_deref()
    }

    fn __repr__(&self) -> String {
        format!("<{}: {}>", self.joint, JointOutcome(self.meeting.outcome).word())
    }
}
