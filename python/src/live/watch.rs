//! Arrays of samples of many units, each with a monitor of its own, side by side.

use std::collections::{BTreeMap, HashMap};
use std::ops::Range;
use std::sync::Arc;

use pyo3::prelude::*;
use pyo3::types::PyDict;
use rayon::prelude::*;

use super::monitor::{Monitor, Watched};
use super::sample::{COLUMNS, COUNT, TIMES, WANTED, names, needed, of_input_and_output};
use super::tables;
use super::task::{Lane, Order, Task};
use super::unit::{Planned, Unit};
use crate::duty::BusSignal;
use crate::error::refuse;
use crate::table::arrays::Arrays;
use crate::table::arrow::{self, Source};
use crate::table::keys::{Key, KeyRef, Keys, Named, interleaved, sorted};
use crate::table::{Batch, pool};

/// What a sample may answer.
pub const OUTPUTS: [&str; 9] =
    ["gear", "phase", "ratio", "ratio_u", "slip_rpm", "slip_u_rpm", "converter_slip_rpm", "alarm", "used"];

/// Rows between two looks at Ctrl-C.
const PIECE: usize = 1 << 22;

/// Monitors of many units, fed with columns of samples; each unit has its own, and all run side by side.
///
/// The same samples give the same bits, whatever the pieces, the threads and the mixture of units.
#[pyclass(module = "trainwright.live")]
pub struct Watch {
    units: Vec<Arc<Planned>>,
    by_name: Option<HashMap<Key, usize>>,
    watched: Vec<Watched>,
    places: BTreeMap<Key, usize>,
    outputs: Vec<String>,
    bus: [Option<trainwright::duty::BusSignal>; COUNT],
    pool: Option<rayon::ThreadPool>,
    rows: u64,
    missing: u32,
}

#[pymethods]
impl Watch {
    /// `unit` is a `Unit` for all, or a dictionary of name to `Unit`. `outputs` is what every sample answers, of `OUTPUTS`;
    /// `bus` names columns of raw or scaled bus values by their `duty.BusSignal`; `threads` limits the threads.
    #[new]
    #[pyo3(signature = (unit, *, outputs = Vec::new(), bus = None, threads = None))]
    fn new(
        unit: &Bound<'_, PyAny>,
        outputs: Vec<String>,
        bus: Option<BTreeMap<String, BusSignal>>,
        threads: Option<usize>,
    ) -> PyResult<Self> {
        if let Some(unknown) = outputs.iter().find(|name| Lane::of(name).is_none()) {
            let known = OUTPUTS.join(", ");
            return Err(refuse("TEXT", "outputs", format!("outputs: there is no {unknown:?}; there are {known}")));
        }
        let (units, by_name) = units_of(unit)?;
        Ok(Self {
            units,
            by_name,
            watched: Vec::new(),
            places: BTreeMap::new(),
            outputs,
            bus: WANTED.signals(bus, |name| !name.starts_with("time"))?,
            pool: pool(threads)?,
            rows: 0,
            missing: 0,
        })
    }

    /// Takes more rows: a mapping of column names to arrays, or any Arrow producer. `name` is whose samples they are, where
    /// there is no column `unit`. Gives what was asked of every sample, as arrays by name. Ctrl-C stops it between pieces;
    /// what was taken stays taken.
    #[pyo3(signature = (columns, *, name = None))]
    fn add<'py>(
        &mut self,
        py: Python<'py>,
        columns: &Bound<'py, PyAny>,
        name: Option<&Bound<'py, PyAny>>,
    ) -> PyResult<Bound<'py, PyDict>> {
        let name = name.map(|name| Key::of(name, WANTED.key)).transpose()?;
        let nameless = nameless();
        let mut answers = self.lanes();
        if let Some(mut source) = Source::of(columns)? {
            while let Some(batch) = py.detach(|| source.next())? {
                let names = arrow::names(&batch, WANTED.key);
                let mut batch = arrow::batch(&batch, WANTED, &names, name.as_ref(), &self.bus)?;
                batch.keys.get_or_insert(Keys::One(&nameless));
                self.pass(py, &batch, &mut answers)?;
            }
        } else {
            let arrays = Arrays::of(columns, WANTED, name)?;
            let mut batch = arrays.batch(&self.bus);
            batch.keys.get_or_insert(Keys::One(&nameless));
            self.pass(py, &batch, &mut answers)?;
        }
        let named = PyDict::new(py);
        for (name, lane) in self.outputs.iter().zip(answers) {
            named.set_item(name, lane.into_array(py))?;
        }
        Ok(named)
    }

    /// Names of the units, in the order of the tables.
    #[getter]
    fn units<'py>(&self, py: Python<'py>) -> PyResult<Vec<Py<PyAny>>> {
        self.places.keys().map(|key| key.object(py)).collect()
    }

    /// Rows taken.
    #[getter]
    fn rows(&self) -> u64 {
        self.rows
    }

    /// Columns that some data did not have though the sensors or the limits ask for them: what rests on them is not formed.
    #[getter]
    fn missing_columns(&self) -> Vec<&'static str> {
        names(self.missing)
    }

    /// The monitor of a unit as it stands now.
    #[pyo3(signature = (name = None))]
    fn monitor(&self, name: Option<&Bound<'_, PyAny>>) -> PyResult<Monitor> {
        let key = name.map_or(Ok(nameless()), |name| Key::of(name, WANTED.key))?;
        let found = self.places.get(&key).and_then(|&place| self.watched.get(place));
        found
            .map(|watched| Monitor(watched.clone()))
            .ok_or_else(|| refuse("MISSING", "name", format!("name: no samples of unit {key} have come")))
    }

    /// Every event, as columns.
    fn events<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        tables::events(py, &self.seen())
    }

    /// Every shift, as columns.
    fn shifts<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        tables::shifts(py, &self.seen())
    }

    /// The measured ratio of every gear that was seen, as columns.
    fn ratios<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        tables::ratios(py, &self.seen())
    }

    /// The suspects of every unit, most likely first, as columns.
    fn suspects<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        tables::suspects(py, &self.seen())
    }

    /// What was counted of every unit, as columns.
    fn counts<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        tables::counts(py, &self.seen())
    }

    fn __repr__(&self) -> String {
        format!("<Watch of {} samples of {} units>", self.rows, self.places.len())
    }
}

/// The name of a unit that has none.
fn nameless() -> Key {
    Key::Text(String::new())
}

type Units = (Vec<Arc<Planned>>, Option<HashMap<Key, usize>>);

fn units_of(unit: &Bound<'_, PyAny>) -> PyResult<Units> {
    if let Ok(unit) = unit.extract::<Unit>() {
        return Ok((vec![Arc::new(Planned::of(&unit)?)], None));
    }
    let Ok(by_name) = unit.cast::<PyDict>() else {
        return Err(refuse("TEXT", "unit", "unit: give a Unit for all, or a dictionary of name to Unit".into()));
    };
    let (mut units, mut places): (Vec<Arc<Planned>>, HashMap<Key, usize>) = (Vec::new(), HashMap::new());
    for (name, unit) in by_name {
        let unit: Unit = unit.extract()?;
        let place = match units.iter().position(|known| known.unit == unit) {
            Some(place) => place,
            None => {
                units.push(Arc::new(Planned::of(&unit)?));
                units.len() - 1
            }
        };
        places.insert(Key::of(&name, WANTED.key)?, place);
    }
    if units.is_empty() {
        return Err(refuse("MISSING", "unit", "unit: the dictionary is empty; give the Unit of each name".into()));
    }
    Ok((units, Some(places)))
}

impl Watch {
    fn lanes(&self) -> Vec<Lane> {
        self.outputs.iter().filter_map(|name| Lane::of(name)).collect()
    }

    fn seen(&self) -> Vec<(&Key, &Watched)> {
        self.places.iter().filter_map(|(key, &place)| Some((key, self.watched.get(place)?))).collect()
    }

    /// Place of the monitor of a unit, which is made when it is first heard of.
    fn place(&mut self, name: KeyRef<'_>, row: usize) -> PyResult<usize> {
        let key = name.key().ok_or_else(|| {
            let message = format!("unit: row {} has none; name its unit, or leave it out", self.rows + row as u64);
            refuse("MISSING", "unit", message)
        })?;
        if let Some(&place) = self.places.get(&key) {
            return Ok(place);
        }
        let unit = self.by_name.as_ref().map_or(Some(0), |by_name| by_name.get(&key).copied());
        let unit = unit
            .and_then(|place| self.units.get(place))
            .ok_or_else(|| refuse("MISSING", "unit", format!("unit: there is no Unit for {key}; add it")))?;
        self.watched.push(Watched::new(Arc::clone(unit)));
        self.places.insert(key, self.watched.len() - 1);
        Ok(self.watched.len() - 1)
    }

    /// Takes the rows of a batch.
    fn pass(&mut self, py: Python<'_>, batch: &Batch<'_, COUNT>, answers: &mut [Lane]) -> PyResult<()> {
        self.check(batch.given())?;
        let Some(keys) = &batch.keys else { return Ok(()) };
        for start in (0..batch.len).step_by(PIECE) {
            let rows = start..(start + PIECE).min(batch.len);
            let Named { names, runs } = py.detach(|| keys.named(rows.clone()));
            let places: Vec<usize> =
                names.into_iter().map(|(name, row)| self.place(name, row)).collect::<PyResult<_>>()?;
            py.detach(|| self.pass_piece(batch, rows.clone(), &runs, &places, answers));
            self.rows += rows.len() as u64;
            py.check_signals()?;
        }
        Ok(())
    }

    /// Refuses data without a time or without one of the two speeds, and notes what else is missing.
    fn check(&mut self, given: u32) -> PyResult<()> {
        if given & TIMES == 0 {
            let message = "time_s is missing: give the time of the samples as column time_s or time_us";
            return Err(refuse("MISSING", "time_s", message.into()));
        }
        for unit in &self.units {
            for speed in of_input_and_output(unit) {
                if given & speed != speed {
                    let missing = names(speed & !given).join(", ");
                    let known = COLUMNS.join(", ");
                    let message = format!("{missing} is missing: the sensors of the unit need it; columns are {known}");
                    return Err(refuse("MISSING", names(speed & !given).first().unwrap_or(&""), message));
                }
            }
            self.missing |= needed(unit) & !given;
        }
        Ok(())
    }

    fn pass_piece(
        &mut self,
        batch: &Batch<'_, COUNT>,
        rows: Range<usize>,
        runs: &[(usize, usize, usize)],
        places: &[usize],
        answers: &mut [Lane],
    ) {
        let mut orders: Vec<Order<'_>> = Vec::with_capacity(places.len());
        let sorted_rows;
        if interleaved(runs, places.len(), rows.len()) {
            let (order, ends) = sorted(runs, places.len(), rows.len());
            sorted_rows = order;
            let mut from = 0;
            for end in ends {
                orders.push(Order::These(sorted_rows.get(from..end).unwrap_or_default()));
                from = end;
            }
        } else {
            orders.extend(places.iter().map(|_| Order::Runs(Vec::new())));
            for &(place, start, end) in runs {
                if let Some(Order::Runs(runs)) = orders.get_mut(place) {
                    runs.push(start..end);
                }
            }
        }
        let mut free: Vec<Option<&mut Watched>> = self.watched.iter_mut().map(Some).collect();
        let lanes = || self.outputs.iter().filter_map(|name| Lane::of(name)).collect();
        let mut tasks: Vec<Task<'_>> = Vec::with_capacity(places.len());
        for (&place, order) in places.iter().zip(orders) {
            if let Some(watched) = free.get_mut(place).and_then(Option::take) {
                tasks.push(Task { watched, order, answers: lanes() });
            }
        }
        let mut work = || {
            tasks.par_iter_mut().for_each(|task| task.run(batch));
            answers.par_iter_mut().enumerate().for_each(|(output, answers)| {
                let parts: Vec<_> =
                    tasks.iter().filter_map(|task| Some((task.answers.get(output)?, &task.order))).collect();
                answers.append(rows.len(), &parts, rows.start);
            });
        };
        match &self.pool {
            Some(pool) => pool.install(work),
            None => work(),
        }
    }
}
