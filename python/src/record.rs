//! `trainwright.record`: records in TOML.

use std::path::PathBuf;

use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyDict};
use trainwright::record::{self as core, Kind, Problems, Record, Weight};

use crate::clutch::{ElementPack, Pack};
use crate::converter::{Characteristic, EngineCurve};
use crate::error::{answer, raise, refuse};
use crate::fluid::{Fill, Fluid};
use crate::hydraulic::{CoolerLimits, Pump};
use crate::interchange::Joints;
use crate::judge::Reading;
use crate::road::{Combination, Driveline};
use crate::stack::{HotPlay, PieceList, PistonStroke};
use crate::tire::{Rolling, Tire};
use crate::tow::{Coupled, TowRatings};
use crate::train::Train;

/// One fault of a record, or a note about it.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.record")]
#[derive(Clone, PartialEq)]
pub struct Problem(core::Problem);

#[pymethods]
impl Problem {
    /// File, as it was named.
    #[getter]
    fn file(&self) -> &str {
        &self.0.file
    }

    /// Line, counted from 1.
    #[getter]
    fn line(&self) -> usize {
        self.0.line
    }

    /// Column in characters, counted from 1.
    #[getter]
    fn column(&self) -> usize {
        self.0.column
    }

    /// Full path of the key, `train.set[2].teeth.ring`; places in a list count from 0.
    #[getter]
    fn key(&self) -> &str {
        &self.0.key
    }

    /// Value as it stands in the file, shortened; empty where a key is missing.
    #[getter]
    fn value(&self) -> &str {
        &self.0.value
    }

    /// What is wrong, with the range or the names that are accepted.
    #[getter]
    fn message(&self) -> &str {
        &self.0.message
    }

    /// What would mend it; may be empty.
    #[getter]
    fn mend(&self) -> &str {
        &self.0.mend
    }

    /// Whether the record cannot be used; else it is a note.
    #[getter]
    fn is_error(&self) -> bool {
        self.0.weight == Weight::Error
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("<{}>", self.0.to_string().split_whitespace().collect::<Vec<_>>().join(" "))
    }
}

fn listed(problems: Problems) -> Vec<Problem> {
    problems.0.into_iter().map(Problem).collect()
}

/// All problems as one exception; `problems` lists them.
pub fn raise_all(py: Python<'_>, problems: Problems) -> PyErr {
    let error = refuse("TEXT", "record", problems.to_string());
    match listed(problems).into_pyobject(py).and_then(|list| error.value(py).setattr("problems", list)) {
        Ok(()) => error,
        Err(failure) => failure,
    }
}

/// The text of a file, and the name to show for it.
fn text_of(path: &PathBuf) -> PyResult<(String, String)> {
    let name = path.display().to_string();
    let bytes = std::fs::read(path).map_err(|error| refuse("TEXT", "path", format!("{name}: {error}")))?;
    match String::from_utf8(bytes) {
        Ok(text) => Ok((name, text)),
        Err(error) => {
            let at = error.utf8_error().valid_up_to();
            Err(refuse("TEXT", "path", format!("{name}: byte {at} is not UTF-8; save the file as UTF-8")))
        }
    }
}

/// Every fault and every note of these files. Names may be given in one file and used in another; names whose file is not
/// among them are taken on trust.
///
/// >>> check()
/// []
#[pyfunction]
#[pyo3(signature = (*paths))]
pub fn check(paths: Vec<PathBuf>) -> PyResult<Vec<Problem>> {
    let files: Vec<_> = paths.iter().map(text_of).collect::<PyResult<_>>()?;
    let files: Vec<_> = files.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    Ok(listed(core::check(&files)))
}

/// As `check`, for one text.
///
/// >>> [problem.mend for problem in check_text("[train]\ninput = 's'\noutput = 'c'\nsett = []")]
/// ['did you mean set?']
#[pyfunction]
#[pyo3(signature = (text, file = ""))]
pub fn check_text(text: &str, file: &str) -> Vec<Problem> {
    listed(core::check(&[(file, text)]))
}

/// The record in a file: a `Family`, `Fluids`, `Instruments`, `Fleet`, `Jobs`, or the `Train` of a train file.
#[pyfunction]
pub fn load(py: Python<'_>, path: PathBuf) -> PyResult<Py<PyAny>> {
    let (file, text) = text_of(&path)?;
    match core::kind_of(&text) {
        Some(Kind::Family) => Family::read(py, &file, text)?.into_py(py),
        Some(Kind::Fluids) => Fluids::read(py, &file, text)?.into_py(py),
        Some(Kind::Instruments) => Instruments::read(py, &file, text)?.into_py(py),
        Some(Kind::Fleet) => Fleet::read(py, &file, text)?.into_py(py),
        Some(Kind::Jobs) => Jobs::read(py, &file, text)?.into_py(py),
        Some(Kind::Train) => match core::NamedTrain::from_toml(&file, &text, None) {
            Ok(named) => Ok(Bound::new(py, Train::new(named, &text, None))?.into_any().unbind()),
            Err(problems) => Err(raise_all(py, problems)),
        },
        None => Err(raise_all(py, core::check(&[(&file, &text)]))),
    }
}

/// JSON Schema (draft 2020-12) of a kind of record: `"train"`, `"family"`, `"fluids"`, `"instruments"`, `"fleet"`, `"jobs"`.
#[pyfunction]
pub fn schema(kind: &str) -> PyResult<String> {
    let known = Kind::ALL.iter().find(|known| known.name() == kind);
    let names = Kind::ALL.map(Kind::name).join(", ");
    known
        .map(|kind| kind.json_schema())
        .ok_or_else(|| refuse("TEXT", "kind", format!("kind = {kind:?}: give one of {names}")))
}

/// A class that holds a record and the text that it was read from.
macro_rules! record {
    ($(#[doc = $doc:literal])+ $name:ident) => {
        $(#[doc = $doc])+
        #[pyclass(frozen, module = "trainwright.record")]
        pub struct $name {
            pub(crate) record: core::$name,
            text: String,
        }

        impl $name {
            fn read(py: Python<'_>, file: &str, text: String) -> PyResult<Self> {
                match core::$name::from_toml(file, &text) {
                    Ok(record) => Ok(Self { record, text }),
                    Err(problems) => Err(raise_all(py, problems)),
                }
            }

            fn into_py(self, py: Python<'_>) -> PyResult<Py<PyAny>> {
                Ok(Bound::new(py, self)?.into_any().unbind())
            }
        }

        #[pymethods]
        impl $name {
            /// The record in this text, or every fault of it in one error. `file` is the name that the faults show.
            #[staticmethod]
            #[pyo3(signature = (text, file = ""))]
            fn from_toml(py: Python<'_>, text: String, file: &str) -> PyResult<Self> {
                Self::read(py, file, text)
            }

            /// The record as TOML, without the comments of the text.
            fn to_toml(&self) -> String {
                self.record.to_toml()
            }

            /// Everything in the record, by the keys of the TOML; what is left out is None.
            fn as_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
                Ok(py.import("json")?.call_method1("loads", (self.record.to_json(),))?.cast_into()?)
            }

            fn __eq__(&self, other: &Self) -> bool {
                self.record == other.record
            }

            fn __reduce__(&self, py: Python<'_>) -> PyResult<(Py<PyAny>, (&str,))> {
                Ok((py.get_type::<Self>().getattr("from_toml")?.unbind(), (&self.text,)))
            }

            fn __repr__(&self) -> String {
                self.record.summary()
            }
        }
    };
}

/// A line for a person who looks at the object.
trait Summary {
    fn summary(&self) -> String;
}

fn names<'n>(names: impl IntoIterator<Item = &'n String>) -> String {
    names.into_iter().map(String::as_str).collect::<Vec<_>>().join(", ")
}

record! {
    /// A family of units that share a layout.
    Family
}

impl Summary for core::Family {
    fn summary(&self) -> String {
        format!(
            "<family: {}; variants {}>",
            self.meta.title.as_deref().unwrap_or("untitled"),
            names(&self.meta.variants)
        )
    }
}

#[pymethods]
impl Family {
    /// Variants in the order in which they were built.
    #[getter]
    fn variants(&self) -> Vec<String> {
        self.record.meta.variants.clone()
    }

    /// The gear train of a variant.
    fn train(&self, py: Python<'_>, variant: &str) -> PyResult<Train> {
        let named = self.record.train(variant).map_err(|problems| raise_all(py, problems))?;
        Ok(Train::new(named, &self.text, Some(variant)))
    }

    /// The pack of each clutch and brake in a variant: new linings, no seal drag.
    fn packs<'py>(&self, py: Python<'py>, variant: &str) -> PyResult<Bound<'py, PyDict>> {
        let packs = PyDict::new(py);
        for (element, record) in &self.record.clutch {
            let pack: Pack = answer(record.pack(variant))?;
            packs.set_item(element, ElementPack::new(pack, record.turns_with.clone()))?;
        }
        Ok(packs)
    }

    /// The pump. Its leak is taken to have been measured in this fluid.
    fn pump(&self, fluid: Fluid) -> PyResult<Pump> {
        answer(self.record.pump(&fluid.0))
    }

    /// How the parts of the family meet: its fits, covers, matches and machining, as `trainwright.interchange` takes them.
    fn joints(&self) -> PyResult<Joints> {
        self.record.joints().map(Joints).map_err(raise)
    }

    /// The flash image of a unit for firmware and scan tools, with what it is installed with from other records.
    ///
    /// With the instruments, the sizes of the evidence carry their uncertainty.
    #[pyo3(signature = (variant, *, driveline = None, fluid = None, fill = None, instruments = None))]
    fn flash_image<'py>(
        &self,
        py: Python<'py>,
        variant: &str,
        driveline: Option<Driveline>,
        fluid: Option<Fluid>,
        fill: Option<Fill>,
        instruments: Option<&Instruments>,
    ) -> PyResult<Bound<'py, PyBytes>> {
        let installed = core::Installed {
            driveline: driveline.map(Into::into),
            fluid: fluid.map(Into::into),
            fill: fill.map(Into::into),
            instruments: instruments.map(|instruments| &instruments.record),
        };
        let image = self.record.flash_image(variant, installed).map_err(|problems| raise_all(py, problems))?;
        Ok(PyBytes::new(py, &image))
    }

    /// The shims of the record, and the end play that they are chosen for.
    fn shims(&self) -> PyResult<PieceList> {
        answer(self.record.shims())
    }

    /// The elements whose rings or plates the record lists.
    #[getter]
    fn elements_with_rings(&self) -> Vec<&str> {
        self.record.elements_with_rings()
    }

    /// The rings or plates of an element, and the clearance that they are chosen for.
    fn rings(&self, element: &str) -> PyResult<PieceList> {
        answer(self.record.rings(element))
    }

    /// What warming up does to the end play; None where the record does not say.
    fn hot_play(&self) -> Option<HotPlay> {
        self.record.hot_play().map(HotPlay)
    }

    /// The stroke of an element's piston at a clearance. `bend_mm` is what plates, ring and drum give way under pressure; the
    /// record's unless given.
    #[pyo3(signature = (element, *, clearance_mm, bend_mm = None))]
    fn stroke(&self, element: &str, clearance_mm: Reading, bend_mm: Option<Reading>) -> PyResult<PistonStroke> {
        answer(self.record.stroke(element, clearance_mm.into(), bend_mm.map(Into::into)))
    }

    /// Static friction of lining against steel: a closed element that holds.
    #[getter]
    fn static_friction(&self) -> PyResult<Reading> {
        answer(self.friction().map(|friction| friction.r#static.reading()))
    }

    /// Dynamic friction of lining against steel: an element that slips.
    #[getter]
    fn dynamic_friction(&self) -> PyResult<Reading> {
        answer(self.friction().map(|friction| friction.dynamic.reading()))
    }
}

impl Family {
    /// The record.
    pub fn core(&self) -> &core::Family {
        &self.record
    }

    fn friction(&self) -> trainwright::Result<&core::Friction> {
        let missing = trainwright::Error::Missing { name: "friction", why: "the record has no [friction] table" };
        self.record.friction.as_ref().ok_or(missing)
    }
}

record! {
    /// Fluids with the fill and cooler of a family.
    Fluids
}

impl Summary for core::Fluids {
    fn summary(&self) -> String {
        format!("<fluids: {}>", names(self.fluid.keys()))
    }
}

#[pymethods]
impl Fluids {
    /// A fluid by its name in the record.
    fn fluid(&self, name: &str) -> PyResult<Fluid> {
        let record = self.record.fluid.get(name).ok_or_else(|| no_such("fluid", name, self.record.fluid.keys()))?;
        Ok(record.fluid().into())
    }

    /// Volumes and levels of the unit, and its sump.
    fn fill(&self) -> PyResult<Fill> {
        let missing = trainwright::Error::Missing { name: "fill", why: "the record has no [fill] table" };
        answer(self.record.fill.as_ref().ok_or(missing).and_then(|fill| fill.fill()))
    }

    /// Least return flow of the cooler by fluid temperature.
    fn cooler_limits(&self) -> PyResult<CoolerLimits> {
        answer(self.record.cooler_limits())
    }
}

record! {
    /// Shop instruments: range, resolution and standard uncertainty.
    Instruments
}

impl Summary for core::Instruments {
    fn summary(&self) -> String {
        format!("<instruments: {}>", names(self.instrument.keys()))
    }
}

#[pymethods]
impl Instruments {
    /// One reading of an instrument with its standard uncertainty, in the unit that it shows.
    fn reading(&self, instrument: &str, value: f64) -> PyResult<Reading> {
        match self.record.instrument.get(instrument) {
            Some(record) => answer(record.reading(value)),
            None => Err(no_such("instrument", instrument, self.record.instrument.keys())),
        }
    }
}

record! {
    /// Tires, engines, converters, road model and trucks.
    Fleet
}

impl Summary for core::Fleet {
    fn summary(&self) -> String {
        format!("<fleet: {}>", names(self.truck.iter().map(|truck| &truck.id)))
    }
}

#[pymethods]
impl Fleet {
    /// Names of the trucks.
    #[getter]
    fn trucks(&self) -> Vec<&str> {
        self.record.truck.iter().map(|truck| truck.id.as_str()).collect()
    }

    /// A tire by its name in the record.
    fn tire(&self, name: &str) -> PyResult<Tire> {
        let record = self.record.tire.get(name).ok_or_else(|| no_such("tire", name, self.record.tire.keys()))?;
        answer(record.tire())
    }

    /// Rolling circumference of a tire, by the record's share of its free circumference.
    fn rolling(&self, tire: &str) -> PyResult<Rolling> {
        answer(self.record.rolling(tire))
    }

    /// Torque against speed of an engine, by its name in the record.
    fn engine_curve(&self, name: &str) -> PyResult<EngineCurve> {
        let engines = &self.record.engine;
        let record = engines.get(name).ok_or_else(|| no_such("engine", name, engines.keys()))?;
        answer(record.curve())
    }

    /// Characteristic of a torque converter, by its name in the record.
    fn characteristic(&self, name: &str) -> PyResult<Characteristic> {
        let converters = &self.record.converter;
        let record = converters.get(name).ok_or_else(|| no_such("converter", name, converters.keys()))?;
        answer(record.characteristic())
    }

    /// Axle and tire that are fitted to a truck.
    fn fitted(&self, truck: &str) -> PyResult<Driveline> {
        answer(self.record.fitted(self.truck(truck)?))
    }

    /// Truck and trailer as the road feels them: mass, rolling coefficient (the mean by mass), drag area. `trailer_kg` goes
    /// before the record's; it must be given where the record has a range only.
    #[pyo3(signature = (truck, *, trailer_kg = None))]
    fn combination(&self, truck: &str, trailer_kg: Option<f64>) -> PyResult<Combination> {
        let truck = self.truck(truck)?;
        answer(match trailer_kg {
            Some(trailer_kg) => self.record.combination_with(truck, trailer_kg),
            None => self.record.combination(truck),
        })
    }

    /// Ratings of a truck, its hitch and its trailer; infinite where the record has none.
    fn tow_ratings(&self, truck: &str) -> PyResult<TowRatings> {
        answer(self.truck(truck)?.tow_ratings())
    }

    /// A truck with a trailer of this mass on its hitch, from the scale weights and levers of the record.
    #[pyo3(signature = (truck, *, trailer_kg))]
    fn coupled(&self, truck: &str, trailer_kg: f64) -> PyResult<Coupled> {
        answer(self.truck(truck)?.coupled(trailer_kg))
    }

    /// Axle and tire that the unit of a truck is programmed for.
    fn programmed(&self, truck: &str) -> PyResult<Driveline> {
        answer(self.record.programmed(self.truck(truck)?))
    }
}

impl Fleet {
    /// The record.
    pub fn core(&self) -> &core::Fleet {
        &self.record
    }

    /// A truck by its name.
    pub fn truck(&self, id: &str) -> PyResult<&core::TruckRecord> {
        let trucks = &self.record.truck;
        let found = trucks.iter().find(|truck| truck.id == id);
        found.ok_or_else(|| no_such("truck", id, trucks.iter().map(|truck| &truck.id)))
    }
}

record! {
    /// Jobs of a demonstration.
    Jobs
}

impl Summary for core::Jobs {
    fn summary(&self) -> String {
        format!("<jobs: {}>", names(self.job.iter().map(|job| &job.id)))
    }
}

fn no_such<'n>(what: &str, name: &str, known: impl IntoIterator<Item = &'n String>) -> PyErr {
    refuse("MISSING", what, format!("there is no {what} {name:?}; known: {}", names(known)))
}
