//! Hard parts of a family at the rating of a variant, and two variants part by part.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record as core;

use super::mesh::{Wheel, WheelThrust};
use super::pairs::Change;
use super::shaft::Shaft;
use super::spline::Spline;
use super::thrust::NeedleThrust;
use super::washer::ThrustWasher;
use crate::class::Field;
use crate::error::{answer, raise};
use crate::quantity::Number;
use crate::record::{Family, raise_all};

/// A shaft of a variant with the torque of its rating.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.hold")]
#[derive(Clone, PartialEq)]
pub struct RatedShaft(core::RatedShaft);

#[pymethods]
impl RatedShaft {
    /// The shaft.
    #[getter]
    fn shaft(&self) -> Shaft {
        self.0.shaft.into()
    }

    /// Torque that the record rates it for, N·m.
    #[getter]
    fn torque_nm(&self) -> f64 {
        self.0.torque_nm
    }

    /// Yield stress in shear, MPa.
    #[getter]
    fn shear_yield_mpa(&self) -> f64 {
        self.0.shear_yield_mpa
    }

    /// Relative standard uncertainty of its stress, where the record states one.
    #[getter]
    fn stress_u_rel(&self) -> Option<f64> {
        self.0.stress_u_rel
    }

    /// Its spline, where the record has one.
    #[getter]
    fn spline(&self) -> Option<Spline> {
        self.0.spline.map(Into::into)
    }

    fn __repr__(&self) -> String {
        format!("<{} at {} N·m>", self.shaft().source(), self.0.torque_nm)
    }
}

/// The shafts of a variant at their rating, by name.
///
/// >>> family = record.load(trainwright.__path__[0] + "/demo/family.toml")
/// >>> late = shafts(family, "heron")["output"]
/// >>> round(late.shaft.torsion(torque_nm=late.torque_nm).stress_mpa, 1)
/// 248.1
#[pyfunction]
pub fn shafts<'py>(py: Python<'py>, family: PyRef<'_, Family>, variant: &str) -> PyResult<Bound<'py, PyDict>> {
    let shafts = PyDict::new(py);
    let rating = family.core().rating(variant).map_err(raise)?;
    for (name, record) in &family.core().shaft {
        shafts.set_item(name, RatedShaft(record.rated(variant, rating).map_err(raise)?))?;
    }
    Ok(shafts)
}

/// The needle thrust bearing of a variant; `None` where the record has none.
#[pyfunction]
pub fn thrust_race(family: PyRef<'_, Family>, variant: &str) -> Option<NeedleThrust> {
    let races = family.core().thrust_race.as_ref()?;
    Some(races.get(variant)?.bearing().into())
}

/// The thrust washers of a variant, by name.
#[pyfunction]
pub fn thrust_washers<'py>(py: Python<'py>, family: PyRef<'_, Family>, variant: &str) -> PyResult<Bound<'py, PyDict>> {
    let washers = PyDict::new(py);
    for (name, record) in &family.core().thrust_washer {
        let washer: ThrustWasher = answer(record.washer(variant))?;
        washers.set_item(name, washer)?;
    }
    Ok(washers)
}

/// What a wheel (`"sun"`, `"sun_2"`, `"ring"`) of a set pushes along the axis in each gear at rating, by the name of the gear:
/// a `WheelThrust`, or `None` where statics cannot tell. Reverse takes the rating of reverse, where the record has one.
#[pyfunction]
#[pyo3(signature = (family, variant, *, set, wheel, input_speed_rpm))]
pub fn gear_thrusts<'py>(
    py: Python<'py>,
    family: PyRef<'_, Family>,
    variant: &str,
    set: String,
    wheel: Wheel,
    input_speed_rpm: Number,
) -> PyResult<Bound<'py, PyDict>> {
    use trainwright::hold::Wheel as Core;
    let wheel = match wheel.0 {
        Core::Sun => core::WheelName::Sun,
        Core::Sun2 => core::WheelName::Sun2,
        Core::Ring => core::WheelName::Ring,
    };
    let family = family.core();
    let train = family.train(variant).map_err(|problems| raise_all(py, problems))?;
    let rating = family.rating(variant).map_err(raise)?;
    let by = core::PushedBy { set, wheel, u_rel_push: None };
    let thrusts = PyDict::new(py);
    for gear in train.gear_thrusts(&by, rating, input_speed_rpm.value("input_speed_rpm")?).map_err(raise)? {
        thrusts.set_item(gear.gear, gear.thrust.ok().map(WheelThrust::from))?;
    }
    Ok(thrusts)
}

/// The change of one figure of a part.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.hold")]
#[derive(Clone, PartialEq)]
pub struct FigureChange(core::FigureChange);

#[pymethods]
impl FigureChange {
    /// What it is.
    #[getter]
    fn figure(&self) -> &str {
        &self.0.figure
    }

    /// Its unit; empty for a count or a share.
    #[getter]
    fn unit(&self) -> &str {
        self.0.unit
    }

    /// The change.
    #[getter]
    fn change(&self) -> Change {
        self.0.change.into()
    }

    /// What it means; may be empty.
    #[getter]
    fn why(&self) -> &str {
        self.0.why
    }

    /// Id of the formula behind the figures; empty for what the record states.
    #[getter]
    fn card(&self) -> &str {
        self.0.card
    }

    fn __repr__(&self) -> String {
        format!("<{}: {}>", self.0.figure, self.change().source())
    }
}

/// One part of two variants.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.hold")]
#[derive(Clone, PartialEq)]
pub struct PartComparison(core::PartComparison);

#[pymethods]
impl PartComparison {
    /// The part, set or element.
    #[getter]
    fn part(&self) -> &str {
        &self.0.part
    }

    /// What holds for both sides.
    #[getter]
    fn at(&self) -> &str {
        &self.0.at
    }

    /// The figures, alike or not.
    #[getter]
    fn changes(&self) -> Vec<FigureChange> {
        self.0.changes.iter().cloned().map(FigureChange).collect()
    }

    /// Parts whose sizes or counts change with it.
    #[getter]
    fn goes_with(&self) -> Vec<String> {
        self.0.goes_with.clone()
    }

    fn __repr__(&self) -> String {
        format!("<{}: {} figures>", self.0.part, self.0.changes.len())
    }
}

/// Two variants, part by part.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.hold")]
#[derive(Clone, PartialEq)]
pub struct Comparison(core::Comparison);

#[pymethods]
impl Comparison {
    /// Variant before.
    #[getter]
    fn before(&self) -> &str {
        &self.0.before
    }

    /// Variant after.
    #[getter]
    fn after(&self) -> &str {
        &self.0.after
    }

    /// Parts that differ.
    #[getter]
    fn parts(&self) -> Vec<PartComparison> {
        self.0.parts.iter().cloned().map(PartComparison).collect()
    }

    /// Parts of the record that are alike.
    #[getter]
    fn alike(&self) -> Vec<String> {
        self.0.alike.clone()
    }

    fn __repr__(&self) -> String {
        let parts: Vec<_> = self.0.parts.iter().map(|part| part.part.as_str()).collect();
        format!("<{} against {}: {}>", self.0.after, self.0.before, parts.join(", "))
    }
}

/// Two variants of a family part by part: what each change buys, and what it costs elsewhere. Nothing here is a rating.
///
/// >>> both = compare(record.load(trainwright.__path__[0] + "/demo/family.toml"), "teal", "heron")
/// >>> race = next(part for part in both.parts if part.part == "thrust_race")
/// >>> [(figure.figure, figure.change.effect) for figure in race.changes][:2]
/// [('static capacity', 'buys'), ('life', 'buys')]
#[pyfunction]
pub fn compare(py: Python<'_>, family: PyRef<'_, Family>, before: &str, after: &str) -> PyResult<Comparison> {
    family.core().compare(before, after).map(Comparison).map_err(|problems| raise_all(py, problems))
}
