//! Joints and permitted machining, by name.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::interchange as core;
use trainwright::interchange::Sides;
use trainwright::record::{MachiningRecord, NamedJoints, Size};

use crate::class::{Fields, class, words};
use crate::error::{answer, raise, refuse};
use crate::judge::Limits;

words! {
    "kind" JointKind = core::JointKind {
        Running = "running",
        Locating = "locating",
        Press = "press",
        Cover = "cover",
        Match = "match",
    }
}

words! {
    "outcome" JointOutcome = core::JointOutcome {
        Holds = "holds",
        Blocked = "blocked",
        MayBind = "may bind",
        MayBeLoose = "may be loose",
        Loose = "loose",
        Uncovered = "uncovered",
        Unequal = "unequal",
    }
}

class! {
    /// What comes of a joint, with its reason.
    "trainwright.interchange" Meeting = core::Meeting, explained by ["interchange.meet"] {
        /// `"holds"`, `"blocked"`, `"may bind"`, `"may be loose"`, `"loose"`, `"uncovered"` or `"unequal"`.
        outcome: JointOutcome,
        /// Least and greatest clearance of a fit, mm, negative is interference; 0 and 0 of a cover or match.
        clearance_mm: Limits,
        /// Clearance that is right, mm; 0 and 0 of a cover or match.
        wanted_mm: Limits,
        /// Share of the land that is carried; of a match 1 where equal, else 0; 0 of a fit.
        share: f64,
    }
}

/// Share of a land that lies on its bearing surface: both from the same face, or both as diameters about the same axis, mm.
/// Source: follows from the definitions (overlap over the length of the land).
///
/// >>> round(cover_share(land_mm=Limits(lower=1.5, upper=22), surface_mm=Limits(lower=0, upper=15)), 3)
/// 0.659
#[pyfunction]
#[pyo3(signature = (*, land_mm, surface_mm))]
pub fn cover_share(land_mm: Limits, surface_mm: Limits) -> PyResult<f64> {
    answer(core::cover_share(land_mm.0, surface_mm.0))
}

/// What a joint is in one variant: sizes of its first and second part, mm, or the value of a match.
#[derive(Clone, PartialEq, FromPyObject, IntoPyObject)]
enum Made {
    Value(String),
    Sizes(Limits, Limits),
}

/// Two parts that meet: shaft and bore of a fit, land and surface of a cover, or the two of a match.
///
/// `limit` is the greatest diametral clearance of a fit, mm, or the least share of a cover; a match has none. `sizes` has for each
/// variant the size of the first and of the second part, mm, or the value of a match.
///
/// >>> pitch = Joint(name="pitch", kind="match", first="park_gear", second="park_pawl", sizes={"early": "24T", "late": "18T"})
/// >>> pitch.meet(first_of="late", second_of="early").outcome
/// 'unequal'
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.interchange")]
#[derive(Clone, PartialEq)]
pub struct Joint {
    name: String,
    kind: core::JointKind,
    first: String,
    second: String,
    limit: Option<f64>,
    sizes: Vec<(String, Made)>,
}

impl Joint {
    /// The joint at this place of a family.
    pub fn of(named: &NamedJoints, place: usize) -> Option<Self> {
        let joint = named.joints.get(place)?;
        let part = |part: u16| named.parts.get(usize::from(part)).cloned();
        let values = named.values.get(place)?;
        let made = named.variants.iter().enumerate().filter_map(|(variant, name)| {
            let sides = || named.sizes.get(place * named.variants.len() + variant);
            let made = match values.get(variant) {
                Some(value) => Made::Value(value.clone()),
                None => sides().map(|sides| Made::Sizes(sides.first.into(), sides.second.into()))?,
            };
            Some((name.clone(), made))
        });
        Some(Self {
            name: named.names.get(place)?.clone(),
            kind: joint.kind,
            first: part(joint.first)?,
            second: part(joint.second)?,
            limit: (joint.kind != core::JointKind::Match).then_some(joint.limit),
            sizes: made.collect(),
        })
    }

    /// Adds the joint to a family, which must have the same variants.
    pub fn add_to(&self, named: &mut NamedJoints) -> PyResult<()> {
        if named.joint(&self.name).is_some() {
            let message = format!("there are two joints {:?}; rename one of them", self.name);
            return Err(refuse("INCONSISTENT", "joints", message));
        }
        let variants = named.variants.clone();
        let made = variants.iter().map(|variant| self.made(variant)).collect::<PyResult<Vec<_>>>()?;
        let parts = [self.first.as_str(), self.second.as_str()];
        if self.kind == core::JointKind::Match {
            let values = made.iter().map(|made| self.value(made)).collect::<PyResult<Vec<_>>>()?;
            named.add_match(&self.name, parts, values);
        } else {
            let sizes = made.iter().map(|made| self.sides(made)).collect::<PyResult<Vec<_>>>()?;
            let [first, second] = parts.map(|part| named.part_or_new(part));
            let limit = self.limit.unwrap_or_default();
            named.add(&self.name, core::Joint { kind: self.kind, first, second, limit }, sizes);
        }
        Ok(())
    }

    fn made(&self, variant: &str) -> PyResult<&Made> {
        let found = self.sizes.iter().find(|(name, _)| name == variant);
        found.map(|(_, made)| made).ok_or_else(|| {
            let known: Vec<_> = self.sizes.iter().map(|(name, _)| name.as_str()).collect();
            let message =
                format!("sizes: joint {:?} has none for variant {variant:?}, only for {}", self.name, known.join(", "));
            refuse("MISSING", "sizes", message)
        })
    }

    fn value(&self, made: &Made) -> PyResult<String> {
        match made {
            Made::Value(value) => Ok(value.clone()),
            Made::Sizes(..) => Err(self.wrong("a match has a text for each variant, the value that both parts show")),
        }
    }

    fn sides(&self, made: &Made) -> PyResult<Sides> {
        match made {
            Made::Sizes(first, second) => Ok(Sides { first: first.0, second: second.0 }),
            Made::Value(_) => {
                Err(self.wrong("a fit or cover has two Limits for each variant, of its first and second part"))
            }
        }
    }

    fn wrong(&self, why: &str) -> PyErr {
        refuse("INCONSISTENT", "sizes", format!("sizes of joint {:?}: {why}", self.name))
    }
}

#[pymethods]
impl Joint {
    #[new]
    #[pyo3(signature = (*, name, kind, first, second, sizes, limit = None))]
    fn new(
        name: String,
        kind: JointKind,
        first: String,
        second: String,
        sizes: Bound<'_, PyDict>,
        limit: Option<f64>,
    ) -> PyResult<Self> {
        if limit.is_none() != (kind.0 == core::JointKind::Match) {
            let why = if limit.is_none() {
                "limit is missing: a fit takes its greatest clearance in mm, a cover its least share"
            } else {
                "limit: a match has none; leave it out"
            };
            return Err(refuse(if limit.is_none() { "MISSING" } else { "INCONSISTENT" }, "limit", why.into()));
        }
        let sizes = sizes.iter().map(|(variant, made)| Ok((variant.extract()?, made.extract()?)));
        let joint = Self { name, kind: kind.0, first, second, limit, sizes: sizes.collect::<PyResult<_>>()? };
        let variants: Vec<String> = joint.sizes.iter().map(|(variant, _)| variant.clone()).collect();
        let mut alone = NamedJoints::new(&variants);
        joint.add_to(&mut alone)?;
        for (place, _) in variants.iter().enumerate() {
            alone.joints().meeting(0, place as u8, place as u8).map_err(raise)?;
        }
        Ok(joint)
    }

    /// Name of the joint.
    #[getter]
    fn name(&self) -> &str {
        &self.name
    }

    /// `"running"`, `"locating"`, `"press"`, `"cover"` or `"match"`.
    #[getter]
    fn kind(&self) -> JointKind {
        JointKind(self.kind)
    }

    /// Shaft of a fit, land of a cover, either part of a match.
    #[getter]
    fn first(&self) -> &str {
        &self.first
    }

    /// Bore of a fit, surface of a cover, the other part of a match.
    #[getter]
    fn second(&self) -> &str {
        &self.second
    }

    /// Greatest diametral clearance of a fit, mm; least share of a cover; `None` of a match.
    #[getter]
    fn limit(&self) -> Option<f64> {
        self.limit
    }

    /// By variant: sizes of the first and second part, mm, or the value of a match.
    #[getter]
    fn sizes<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let sizes = PyDict::new(py);
        self.sizes.iter().try_for_each(|(variant, made)| sizes.set_item(variant, made.clone()))?;
        Ok(sizes)
    }

    /// What comes of the joint with its first part of one variant and its second of another.
    /// Source: follows from the definitions (clearance as `trainwright.fit.clearance`).
    #[pyo3(signature = (*, first_of, second_of))]
    fn meet(&self, first_of: &str, second_of: &str) -> PyResult<Meeting> {
        let variants = [first_of.to_owned(), second_of.to_owned()];
        let mut alone = NamedJoints::new(&variants);
        self.add_to(&mut alone)?;
        answer(alone.joints().meeting(0, 0, 1))
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Fields<'py>)> {
        let fields = Fields::new(py);
        fields.set("name", self.name())?;
        fields.set("kind", self.kind())?;
        fields.set("first", self.first())?;
        fields.set("second", self.second())?;
        fields.set("sizes", self.sizes(py)?)?;
        fields.set("limit", self.limit)?;
        Ok(((), fields))
    }

    fn __repr__(&self) -> String {
        let Self { name, first, second, .. } = self;
        format!("<{} {name}: {first}, {second}>", self.kind().word())
    }
}

/// A permitted change of one part of a fit: the only kind of machining there is; what no rule permits is never done.
///
/// `part` of the variants `variants` is brought to `finish_mm` and then fits the mate of the variants `to_fit`.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.interchange")]
#[derive(Clone, PartialEq)]
pub struct Machining(pub MachiningRecord);

#[pymethods]
impl Machining {
    #[new]
    #[pyo3(signature = (*, name, joint, part, variants, to_fit, finish_mm, check, runout_limit_mm))]
    fn new(
        name: String,
        joint: String,
        part: String,
        variants: Vec<String>,
        to_fit: Vec<String>,
        finish_mm: Limits,
        check: String,
        runout_limit_mm: f64,
    ) -> Self {
        let finish_mm = Size([finish_mm.0.lower, finish_mm.0.upper]);
        Self(MachiningRecord { id: name, fit: joint, part, from: variants, to_fit, finish_mm, check, runout_limit_mm })
    }

    /// Name of the operation.
    #[getter]
    fn name(&self) -> &str {
        &self.0.id
    }

    /// The fit that it makes good.
    #[getter]
    fn joint(&self) -> &str {
        &self.0.fit
    }

    /// The part that is machined.
    #[getter]
    fn part(&self) -> &str {
        &self.0.part
    }

    /// Variants whose part may be machined.
    #[getter]
    fn variants(&self) -> Vec<String> {
        self.0.from.clone()
    }

    /// Variants whose mate it then fits.
    #[getter]
    fn to_fit(&self) -> Vec<String> {
        self.0.to_fit.clone()
    }

    /// Finished diameter, mm.
    #[getter]
    fn finish_mm(&self) -> Limits {
        self.0.finish_mm.limits().into()
    }

    /// What must be checked afterwards.
    #[getter]
    fn check(&self) -> &str {
        &self.0.check
    }

    /// Greatest run-out afterwards, mm.
    #[getter]
    fn runout_limit_mm(&self) -> f64 {
        self.0.runout_limit_mm
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Fields<'py>)> {
        let fields = Fields::new(py);
        fields.set("name", self.name())?;
        fields.set("joint", self.joint())?;
        fields.set("part", self.part())?;
        fields.set("variants", self.variants())?;
        fields.set("to_fit", self.to_fit())?;
        fields.set("finish_mm", self.finish_mm())?;
        fields.set("check", self.check())?;
        fields.set("runout_limit_mm", self.runout_limit_mm())?;
        Ok(((), fields))
    }

    fn __repr__(&self) -> String {
        format!("<{}: {} of {}>", self.0.id, self.0.part, self.0.from.join(", "))
    }
}
