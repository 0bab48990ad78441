//! The rows of one unit through its monitor, and what each sample answers.

use std::ops::Range;

use numpy::IntoPyArray;
use pyo3::prelude::*;
use trainwright::live as core;

use super::monitor::Watched;
use super::sample::{COUNT, TIMES, needed, sample};
use crate::table::Batch;
use crate::table::columns::Rows;

/// Rows that are read in one go.
const BLOCK: usize = 256;

/// Answers of samples, one after the other.
pub(super) enum Lane {
    Places(Vec<i8>, fn(&core::LiveState) -> i8),
    Numbers(Vec<f32>, fn(&core::LiveState) -> f32),
    Truths(Vec<bool>, fn(&core::LiveState) -> bool),
}

impl Lane {
    pub(super) fn of(output: &str) -> Option<Self> {
        Some(match output {
            "gear" => Self::Places(Vec::new(), |state| state.gear),
            "phase" => Self::Places(Vec::new(), |state| state.phase as i8),
            "ratio" => Self::Numbers(Vec::new(), |state| state.ratio),
            "ratio_u" => Self::Numbers(Vec::new(), |state| state.ratio_u),
            "slip_rpm" => Self::Numbers(Vec::new(), |state| state.slip_rpm),
            "slip_u_rpm" => Self::Numbers(Vec::new(), |state| state.slip_u_rpm),
            "converter_slip_rpm" => Self::Numbers(Vec::new(), |state| state.converter_slip_rpm),
            "alarm" => Self::Truths(Vec::new(), |state| state.alarm),
            "used" => Self::Truths(Vec::new(), |state| state.used),
            _ => return None,
        })
    }

    #[inline]
    fn push(&mut self, state: &core::LiveState) {
        match self {
            Self::Places(values, pick) => values.push(pick(state)),
            Self::Numbers(values, pick) => values.push(pick(state)),
            Self::Truths(values, pick) => values.push(pick(state)),
        }
    }

    /// Appends the answers of one piece of the data, which stand in the order of `order`, from row `start` on.
    pub(super) fn append(&mut self, rows: usize, parts: &[(&Self, &Order<'_>)], start: usize) {
        fn put<T: Copy>(to: &mut [T], rows: usize, from: &[T], order: &Order<'_>, start: usize) {
            let base = to.len() - rows;
            for (&value, row) in from.iter().zip(order.rows()) {
                to.get_mut(base + row - start).into_iter().for_each(|slot| *slot = value);
            }
        }
        match self {
            Self::Places(to, _) => to.resize(to.len() + rows, 0),
            Self::Numbers(to, _) => to.resize(to.len() + rows, f32::NAN),
            Self::Truths(to, _) => to.resize(to.len() + rows, false),
        }
        for (part, order) in parts {
            match (&mut *self, part) {
                (Self::Places(to, _), Self::Places(from, _)) => put(to, rows, from, order, start),
                (Self::Numbers(to, _), Self::Numbers(from, _)) => put(to, rows, from, order, start),
                (Self::Truths(to, _), Self::Truths(from, _)) => put(to, rows, from, order, start),
                _ => {}
            }
        }
    }

    pub(super) fn into_array(self, py: Python<'_>) -> Bound<'_, PyAny> {
        match self {
            Self::Places(values, _) => values.into_pyarray(py).into_any(),
            Self::Numbers(values, _) => values.into_pyarray(py).into_any(),
            Self::Truths(values, _) => values.into_pyarray(py).into_any(),
        }
    }
}

/// The rows of one unit, in their order.
pub(super) enum Order<'o> {
    Runs(Vec<Range<usize>>),
    These(&'o [u32]),
}

impl Order<'_> {
    fn rows(&self) -> Box<dyn Iterator<Item = usize> + '_> {
        match self {
            Self::Runs(runs) => Box::new(runs.iter().cloned().flatten()),
            Self::These(rows) => Box::new(rows.iter().map(|&row| row as usize)),
        }
    }
}

/// The rows of one unit and its monitor.
pub(super) struct Task<'t> {
    pub(super) watched: &'t mut Watched,
    pub(super) order: Order<'t>,
    pub(super) answers: Vec<Lane>,
}

impl Task<'_> {
    pub(super) fn run(&mut self, batch: &Batch<'_, COUNT>) {
        let given = batch.given();
        let mut block = Block::new(given & (needed(&self.watched.unit) | TIMES));
        let (watched, answers) = (&mut *self.watched, &mut self.answers);
        let mut pass = |rows: Rows<'_>, count: usize| {
            block.load(batch, rows, count);
            block.run(given, count, watched, answers);
        };
        match &self.order {
            Order::Runs(runs) => {
                for run in runs {
                    for start in run.clone().step_by(BLOCK) {
                        pass(Rows::From(start), BLOCK.min(run.end - start));
                    }
                }
            }
            Order::These(rows) => rows.chunks(BLOCK).for_each(|rows| pass(Rows::These(rows), rows.len())),
        }
    }
}

/// Values of some rows, column by column; columns that are not read stay NaN.
struct Block {
    columns: Box<[[f64; BLOCK]; COUNT]>,
    read: u32,
}

impl Block {
    fn new(read: u32) -> Self {
        Self { columns: Box::new([[f64::NAN; BLOCK]; COUNT]), read }
    }

    fn load(&mut self, batch: &Batch<'_, COUNT>, rows: Rows<'_>, count: usize) {
        for (place, (source, to)) in batch.columns.iter().zip(self.columns.iter_mut()).enumerate() {
            if let Some(source) = source.as_ref().filter(|_| self.read >> place & 1 != 0) {
                source.load(rows, to.get_mut(..count).unwrap_or_default());
            }
        }
    }

    fn run(&self, given: u32, count: usize, watched: &mut Watched, answers: &mut [Lane]) {
        let mut found = core::LiveEvents::NONE;
        for place in 0..count {
            let row = self.columns.each_ref().map(|column| column.get(place).copied().unwrap_or(f64::NAN));
            match sample(&watched.unit, given, &row) {
                Some(sample) => watched.push(&sample, &mut found),
                None => watched.no_time += 1,
            }
            for lane in &mut *answers {
                lane.push(&watched.state);
            }
        }
    }
}
