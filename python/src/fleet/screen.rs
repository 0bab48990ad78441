//! A partial result: rows in, totals out, to be merged and carried elsewhere.

use std::collections::BTreeMap;
use std::ops::Range;

use numpy::IntoPyArray;
use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyDict};
use rayon::prelude::*;
use trainwright::duty::screen::{Ask, SCREEN_COLUMN_NAMES, SCREEN_COLUMNS};

use super::answer::Output;
use super::pass::{Answers, Batch, LEAST_SEGMENT, Question, SEGMENT, Segment, Slots, Stop, Truck, Units, segment};
use super::unit::Unit;
use crate::duty::BusSignal;
use crate::error::refuse;
use crate::table::arrays::Arrays;
use crate::table::arrow::{self, Source};
use crate::table::keys::Key;
use crate::table::{Wanted, pool};

/// The columns of the rows, and the one of their truck.
const WANTED: Wanted<SCREEN_COLUMNS> = Wanted { columns: &SCREEN_COLUMN_NAMES, key: "truck" };

/// Names of the sums that may be chosen.
pub const AGGREGATES: [&str; 7] = ["time", "torque", "margin", "damage", "heat", "life", "gps"];
/// What each of them asks for.
const ASKED: [u32; 7] = [0, Ask::TORQUE, Ask::MARGIN, Ask::DAMAGE, Ask::HEAT, Ask::LIFE, Ask::GPS];

/// The sums of a fleet so far: a pass over rows that can be continued, merged with others and carried elsewhere.
///
/// The same rows give the same bits, whatever the pieces, the threads and the order of merging.
#[pyclass(module = "trainwright.fleet")]
pub struct Screen {
    pub(super) question: Question,
    pub(super) sums: u32,
    pub(super) by_time: bool,
    pub(super) trucks: BTreeMap<Key, Truck>,
    pub(super) rows: u64,
    pub(super) next_row: u64,
    pub(super) missing: u32,
    names: Vec<String>,
    bus: [Option<trainwright::duty::BusSignal>; SCREEN_COLUMNS],
    pool: Option<rayon::ThreadPool>,
}

/// Segments that are passed over between two looks at Ctrl-C, for each thread.
const SEGMENTS_PER_THREAD: usize = 4;

/// Rows of the segments of a batch: the same for every thread, where that is worth its while.
fn segment_rows(rows: usize, threads: usize) -> usize {
    let segments = rows.div_ceil(SEGMENT).next_multiple_of(threads.max(1));
    rows.div_ceil(segments.max(1)).max(LEAST_SEGMENT)
}

struct Task<'t> {
    batch: usize,
    rows: Range<usize>,
    slots: Vec<Slots<'t>>,
}

/// Answer of a row that only its predecessor in another segment completes.
struct Late {
    batch: usize,
    row: usize,
    values: Vec<f64>,
}

fn units_of(units: &Bound<'_, PyAny>) -> PyResult<Units> {
    if let Ok(unit) = units.extract::<Unit>() {
        return Ok(Units { all: vec![unit], by_truck: None });
    }
    let Ok(by_truck) = units.cast::<PyDict>() else {
        return Err(refuse(
            "TEXT",
            "units",
            "units: give a Unit for every truck, or a dictionary of truck to Unit".into(),
        ));
    };
    let mut all: Vec<Unit> = Vec::new();
    let mut places = std::collections::HashMap::new();
    for (truck, unit) in by_truck {
        let unit: Unit = unit.extract()?;
        let place = all.iter().position(|known| *known == unit).unwrap_or_else(|| {
            all.push(unit);
            all.len() - 1
        });
        places.insert(Key::of(&truck, "truck")?, place);
    }
    if all.is_empty() {
        return Err(refuse("MISSING", "units", "units: the dictionary is empty; give the Unit of each truck".into()));
    }
    Ok(Units { all, by_truck: Some(places) })
}

#[pymethods]
impl Screen {
    /// `units` is a `Unit` for every truck or a dictionary of truck to `Unit`. `aggregates` chooses what is summed, of
    /// `AGGREGATES` (`None`: all; an empty list: nothing); `outputs` what every row answers; `bus` names columns of raw or
    /// scaled bus values by their `duty.BusSignal`. `order` says how the runs of a truck are put in order after a merge:
    /// `"row"` by their place in the stream, `"time"` by their first time. `threads` limits the threads.
    #[new]
    #[pyo3(signature = (units, *, aggregates = None, outputs = Vec::new(), bus = None, order = "row", threads = None))]
    fn new(
        units: &Bound<'_, PyAny>,
        aggregates: Option<Vec<String>>,
        outputs: Vec<String>,
        bus: Option<BTreeMap<String, BusSignal>>,
        order: &str,
        threads: Option<usize>,
    ) -> PyResult<Self> {
        let units = units_of(units)?;
        let mut sums = Ask::ALL;
        if let Some(aggregates) = aggregates {
            sums = if aggregates.is_empty() { 0 } else { Ask::SUMS };
            for name in aggregates {
                let known = AGGREGATES.into_iter().zip(ASKED).find(|(known, _)| *known == name);
                sums |= known.map(|(_, bit)| bit).ok_or_else(|| {
                    let known = AGGREGATES.join(", ");
                    refuse("TEXT", "aggregates", format!("aggregates: there is no {name:?}; there are {known}"))
                })?;
            }
        }
        let names = outputs;
        let outputs: Vec<Output> = names.iter().map(|name| Output::named(name, &units.all)).collect::<PyResult<_>>()?;
        let asked = outputs.iter().fold(sums, |asked, output| asked | output.needs());
        let by_time = match order {
            "row" => false,
            "time" => true,
            _ => return Err(refuse("TEXT", "order", format!("order = {order:?}: give \"row\" or \"time\""))),
        };
        let bus = WANTED.signals(bus, |name| name != "time_s")?;
        let pool = pool(threads)?;
        Ok(Self {
            question: Question { units, asked, outputs },
            sums,
            by_time,
            trucks: BTreeMap::new(),
            rows: 0,
            next_row: 0,
            missing: 0,
            names,
            bus,
            pool,
        })
    }

    /// Passes over more rows of the stream: a mapping of column names to NumPy arrays, or any Arrow producer (a table of
    /// Polars, pyarrow, DuckDB, pandas). `truck` names all rows where there is no such column; `first_row` is the number of
    /// the first row in the whole stream where it does not just go on. `progress(rows)` is called between pieces; what it
    /// raises stops the pass, as does Ctrl-C: pieces that are finished stay counted. Gives the answers of the rows asked for.
    #[pyo3(signature = (data, *, truck = None, first_row = None, progress = None))]
    fn add<'py>(
        &mut self,
        py: Python<'py>,
        data: &Bound<'py, PyAny>,
        truck: Option<&Bound<'py, PyAny>>,
        first_row: Option<u64>,
        progress: Option<&Bound<'py, PyAny>>,
    ) -> PyResult<Bound<'py, PyDict>> {
        let truck = truck.map(|truck| Key::of(truck, "truck")).transpose()?;
        if let Some(first_row) = first_row.filter(|&row| row != self.next_row) {
            self.next_row = first_row;
            self.trucks.values_mut().for_each(|truck| truck.open = None);
        }
        let mut answers: Vec<Vec<Answers>> = Vec::new();
        if let Some(mut source) = Source::of(data)? {
            let enough = SEGMENT * SEGMENTS_PER_THREAD * self.threads();
            let mut ended = false;
            while !ended {
                let mut held = Vec::new();
                let mut rows = 0;
                while rows < enough && !ended {
                    match py.detach(|| source.next())? {
                        Some(batch) => {
                            rows += batch.num_rows();
                            held.push(batch);
                        }
                        None => ended = true,
                    }
                }
                let names: Vec<_> = held.iter().map(|batch| arrow::names(batch, WANTED.key)).collect();
                let batches: Vec<Batch<'_>> = held
                    .iter()
                    .zip(&names)
                    .map(|(batch, names)| arrow::batch(batch, WANTED, names, truck.as_ref(), &self.bus))
                    .collect::<PyResult<_>>()?;
                answers.extend(self.pass(py, &batches, progress)?);
            }
        } else {
            let arrays = Arrays::of(data, WANTED, truck)?;
            let batch = [arrays.batch(&self.bus)];
            answers.extend(self.pass(py, &batch, progress)?);
        }
        self.answers(py, answers)
    }

    /// Adds a partial that was made with the same units and the same question. Any order of merging gives the same bits.
    fn merge(&mut self, other: &Self) -> PyResult<()> {
        if self.fingerprint() != other.fingerprint() {
            let message = "other: was made with other units or another question; make both with the same";
            return Err(refuse("INCONSISTENT", "other", message.into()));
        }
        for (key, truck) in &other.trucks {
            match self.trucks.get_mut(key) {
                Some(mine) => {
                    mine.tally.merge(&truck.tally);
                    mine.runs.extend_from_slice(&truck.runs);
                }
                None => {
                    self.trucks.insert(key.clone(), Truck { open: None, ..truck.clone() });
                }
            }
        }
        self.rows += other.rows;
        self.missing |= other.missing;
        Ok(())
    }

    /// The partial as bytes, to be carried to where it is merged. The units are not in it, only their fingerprint.
    fn to_bytes<'py>(&self, py: Python<'py>) -> Bound<'py, PyBytes> {
        PyBytes::new(py, &self.written())
    }

    /// The partial that `to_bytes` wrote, for the same units and the same question; it may be continued and merged.
    #[staticmethod]
    #[pyo3(signature = (units, data, *, aggregates = None, outputs = Vec::new(), bus = None, order = "row", threads = None))]
    fn from_bytes(
        units: &Bound<'_, PyAny>,
        data: &[u8],
        aggregates: Option<Vec<String>>,
        outputs: Vec<String>,
        bus: Option<BTreeMap<String, BusSignal>>,
        order: &str,
        threads: Option<usize>,
    ) -> PyResult<Self> {
        let mut screen = Self::new(units, aggregates, outputs, bus, order, threads)?;
        screen.read(data)?;
        Ok(screen)
    }

    /// Rows passed over.
    #[getter]
    fn rows(&self) -> u64 {
        self.rows
    }

    /// Columns that some batch did not have: what rests on them was not formed there.
    #[getter]
    fn missing_columns(&self) -> Vec<&'static str> {
        let places = SCREEN_COLUMN_NAMES.iter().enumerate();
        places.filter(|(place, _)| self.missing >> place & 1 != 0).map(|(_, name)| *name).collect()
    }

    /// The totals of every truck: a dictionary of arrays, one entry for each truck, sorted by truck.
    fn totals<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        super::totals::totals(py, self)
    }

    /// What could not be used: a dictionary of the columns truck, column, kind, rows.
    fn bad_values<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        super::totals::bad_values(py, self)
    }

    fn __repr__(&self) -> String {
        format!("<Screen of {} rows of {} trucks>", self.rows, self.trucks.len())
    }
}

impl Screen {
    fn threads(&self) -> usize {
        self.pool.as_ref().map_or_else(rayon::current_num_threads, rayon::ThreadPool::current_num_threads)
    }

    fn on_threads<T: Send>(&self, work: impl FnOnce() -> T + Send) -> T {
        match &self.pool {
            Some(pool) => pool.install(work),
            None => work(),
        }
    }

    /// Passes over batches in their order.
    fn pass(
        &mut self,
        py: Python<'_>,
        batches: &[Batch<'_>],
        progress: Option<&Bound<'_, PyAny>>,
    ) -> PyResult<Vec<Vec<Answers>>> {
        let outputs = &self.question.outputs;
        let mut answers: Vec<Vec<Answers>> =
            batches.iter().map(|batch| outputs.iter().map(|output| Answers::of(output, batch.len)).collect()).collect();
        let mut tasks: Vec<Task<'_>> = Vec::new();
        for (place, (batch, answers)) in batches.iter().zip(&mut answers).enumerate() {
            if batch.keys.is_none() {
                let message =
                    "truck is missing: give a column of that name, or the argument truck for data of one truck";
                return Err(refuse("MISSING", "truck", message.into()));
            }
            if batch.given() & 1 == 0 {
                return Err(refuse(
                    "MISSING",
                    "time_s",
                    "time_s is missing: give the column of the times of the rows, s".into(),
                ));
            }
            let rows = segment_rows(batch.len, self.threads());
            let mut slots: Vec<_> = answers.iter_mut().map(|answers| answers.segments(rows).into_iter()).collect();
            for start in (0..batch.len).step_by(rows) {
                let slots = slots.iter_mut().filter_map(Iterator::next).collect();
                tasks.push(Task { batch: place, rows: start..(start + rows).min(batch.len), slots });
            }
        }
        let firsts: Vec<u64> = batches
            .iter()
            .scan(self.next_row, |next, batch| {
                let first = *next;
                *next += batch.len as u64;
                Some(first)
            })
            .collect();
        let mut late = Vec::new();
        let group = SEGMENTS_PER_THREAD * self.threads();
        let mut tasks = tasks.into_iter().peekable();
        while tasks.peek().is_some() {
            let now: Vec<Task<'_>> = tasks.by_ref().take(group).collect();
            py.detach(|| self.pass_group(batches, &firsts, now, &mut late))?;
            py.check_signals()?;
            if let Some(progress) = progress {
                progress.call1((self.rows,))?;
            }
        }
        for Late { batch, row, values } in late {
            for (answers, value) in answers.get_mut(batch).into_iter().flatten().zip(values) {
                answers.set(row, value);
            }
        }
        Ok(answers)
    }

    /// Passes over some segments at once, and joins their runs in order.
    fn pass_group(
        &mut self,
        batches: &[Batch<'_>],
        firsts: &[u64],
        tasks: Vec<Task<'_>>,
        late: &mut Vec<Late>,
    ) -> PyResult<()> {
        type Found<'a> = (usize, Range<usize>, Result<Segment<'a>, Stop>);
        let question = &self.question;
        let found: Vec<Found<'_>> = self.on_threads(|| {
            let work = |task: Task<'_>| {
                let Task { batch: place, rows, mut slots } = task;
                let (batch, &first) = batches.get(place).zip(firsts.get(place))?;
                Some((place, rows.clone(), segment(question, batch, rows, first, &mut slots)))
            };
            tasks.into_par_iter().with_max_len(1).filter_map(work).collect()
        });
        for (place, rows, found) in found {
            let Some((batch, &first)) = batches.get(place).zip(firsts.get(place)) else { continue };
            self.join(place, (batch, first), rows, found, late)?;
        }
        Ok(())
    }

    fn join(
        &mut self,
        place: usize,
        (batch, first): (&Batch<'_>, u64),
        rows: Range<usize>,
        found: Result<Segment<'_>, Stop>,
        late: &mut Vec<Late>,
    ) -> PyResult<()> {
        let segment = found.map_err(|stop| match stop {
            Stop::NoTruck(row) => refuse(
                "MISSING",
                "truck",
                format!("truck: row {} has none; name its truck, or leave it out", first + row as u64),
            ),
            Stop::NoUnit(key) => refuse("MISSING", "units", format!("units: there is no Unit for truck {key}; add it")),
        })?;
        let given = batch.given();
        for (name, local) in &segment.trucks {
            let (Some(key), Some(unit)) = (name.key(), self.question.units.all.get(local.unit)) else { continue };
            let truck = self.trucks.entry(key).or_insert_with(|| Truck::new(local.unit));
            let number = first + local.first_row as u64;
            let answer = truck.join(&unit.plan, (given, self.question.asked), local, number);
            if !self.question.outputs.is_empty() {
                let values = self.question.outputs.iter().map(|output| output.number(unit, &local.first, &answer));
                late.push(Late { batch: place, row: local.first_row, values: values.collect() });
            }
        }
        self.rows += rows.len() as u64;
        self.next_row = first + rows.end as u64;
        self.missing |= !given & ((1 << SCREEN_COLUMNS) - 1);
        Ok(())
    }

    /// The answers as arrays by name.
    fn answers<'py>(&self, py: Python<'py>, batches: Vec<Vec<Answers>>) -> PyResult<Bound<'py, PyDict>> {
        let mut whole: Vec<Answers> = self.question.outputs.iter().map(|output| Answers::of(output, 0)).collect();
        for answers in batches {
            for (all, more) in whole.iter_mut().zip(answers) {
                match (all, more) {
                    (Answers::Numbers(all), Answers::Numbers(more)) => append(all, more),
                    (Answers::Flags(all), Answers::Flags(more)) => append(all, more),
                    (Answers::Places(all), Answers::Places(more)) => append(all, more),
                    _ => {}
                }
            }
        }
        let named = PyDict::new(py);
        for (name, answers) in self.names.iter().zip(whole) {
            match answers {
                Answers::Numbers(all) => named.set_item(name, all.into_pyarray(py))?,
                Answers::Flags(all) => named.set_item(name, all.into_pyarray(py))?,
                Answers::Places(all) => named.set_item(name, all.into_pyarray(py))?,
            }
        }
        Ok(named)
    }
}

/// Appends without a copy where there was nothing.
fn append<T>(all: &mut Vec<T>, mut more: Vec<T>) {
    if all.is_empty() {
        *all = more;
    } else {
        all.append(&mut more);
    }
}
