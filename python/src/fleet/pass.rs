//! The pass over a batch: segments of rows on all threads, then their runs joined in order.

use std::collections::HashMap;
use std::ops::Range;

use trainwright::duty::screen::{SCREEN_COLUMNS, ScreenAnswer, ScreenBlock, ScreenPlan, ScreenRow, ScreenTally};

use super::answer::Output;
use super::kernel::{Kernel, kernel};
use super::unit::Unit;
use crate::table::columns::{Column, Rows};
use crate::table::keys::{Key, KeyRef, Named, interleaved, sorted};

/// Most rows of a segment: Ctrl-C is looked at after some of them.
pub const SEGMENT: usize = 1 << 18;
/// Least rows of a segment that is not the last: enough to be worth a thread's while.
pub const LEAST_SEGMENT: usize = 1 << 14;
/// Rows of a piece that is copied, as it does not lie in memory as the core reads it: they stay in the cache.
const PIECE: usize = 4 * ScreenBlock::ROWS;

/// A batch of rows, borrowed.
pub type Batch<'a> = crate::table::Batch<'a, SCREEN_COLUMNS>;

fn row_of(batch: &Batch<'_>, row: usize) -> ScreenRow {
    let value = |column: &Option<Column<'_>>| column.as_ref().map_or(f64::NAN, |column| column.value(row));
    ScreenRow::of_values(batch.columns.each_ref().map(value))
}

/// The units, one for all or by truck.
#[derive(Clone, Debug)]
pub struct Units {
    /// Every unit.
    pub all: Vec<Unit>,
    /// Place of the unit of each truck; none where one is for all.
    pub by_truck: Option<HashMap<Key, usize>>,
}

impl Units {
    /// Place of the unit of a truck.
    pub fn place(&self, key: &Key) -> Option<usize> {
        self.by_truck.as_ref().map_or(Some(0), |by_truck| by_truck.get(key).copied())
    }
}

/// Answers of rows, side by side.
pub enum Answers {
    /// Numbers.
    Numbers(Vec<f64>),
    /// Masks of flags.
    Flags(Vec<u32>),
    /// Places.
    Places(Vec<i8>),
}

/// The answers of the rows of one segment, to be written.
pub enum Slots<'o> {
    /// Numbers.
    Numbers(&'o mut [f64]),
    /// Masks of flags.
    Flags(&'o mut [u32]),
    /// Places.
    Places(&'o mut [i8]),
}

impl Answers {
    /// Room for the answers of so many rows.
    pub fn of(output: &Output, rows: usize) -> Self {
        match output {
            Output::Flags => Self::Flags(vec![0; rows]),
            Output::Gear | Output::Weakest => Self::Places(vec![0; rows]),
            _ => Self::Numbers(vec![0.0; rows]),
        }
    }

    /// Splits off the slots of one segment after the other.
    pub fn segments(&mut self, rows: usize) -> Vec<Slots<'_>> {
        match self {
            Self::Numbers(all) => all.chunks_mut(rows).map(Slots::Numbers).collect(),
            Self::Flags(all) => all.chunks_mut(rows).map(Slots::Flags).collect(),
            Self::Places(all) => all.chunks_mut(rows).map(Slots::Places).collect(),
        }
    }

    /// Sets the answer of one row.
    pub fn set(&mut self, row: usize, value: f64) {
        match self {
            Self::Numbers(all) => all.get_mut(row).into_iter().for_each(|slot| *slot = value),
            Self::Flags(all) => all.get_mut(row).into_iter().for_each(|slot| *slot = value as u32),
            Self::Places(all) => all.get_mut(row).into_iter().for_each(|slot| *slot = value as i8),
        }
    }
}

/// What is asked of a pass.
pub struct Question {
    /// Units.
    pub units: Units,
    /// What to compute, of `Ask`.
    pub asked: u32,
    /// Answers of the rows.
    pub outputs: Vec<Output>,
}

/// One truck in one segment.
pub struct Local {
    /// Its sums, but for its first row.
    pub tally: ScreenTally,
    /// Its first row.
    pub first: ScreenRow,
    /// Number of that in the batch.
    pub first_row: usize,
    /// Its last row.
    pub last: ScreenRow,
    /// Place of its unit.
    pub unit: usize,
    rows: usize,
    last_row: usize,
}

/// The trucks of a segment in the order in which they appear.
pub struct Segment<'a> {
    /// Names and sums.
    pub trucks: Vec<(KeyRef<'a>, Box<Local>)>,
}

/// Why a segment cannot be passed over.
pub enum Stop {
    /// A row without the name of its truck.
    NoTruck(usize),
    /// A truck without a unit.
    NoUnit(Key),
}

/// Passes over the rows of a segment. `first_row` is the number of the batch's first row in the stream.
pub fn segment<'a>(
    question: &Question,
    batch: &'a Batch<'_>,
    rows: Range<usize>,
    first_row: u64,
    slots: &mut [Slots<'_>],
) -> Result<Segment<'a>, Stop> {
    let keys = batch.keys.as_ref().ok_or(Stop::NoTruck(rows.start))?;
    let mut pass = Pass {
        question,
        batch,
        start: rows.start,
        kernel: kernel(),
        block: Box::new(ScreenBlock::new()),
        in_place: batch.columns.each_ref().map(|column| column.as_ref().and_then(Column::in_place)),
        piece: Box::new([[f64::NAN; PIECE + 1]; SCREEN_COLUMNS]),
        trucks: Vec::new(),
    };
    let Named { names, runs } = keys.named(rows.clone());
    pass.add_trucks(names)?;
    if interleaved(&runs, pass.trucks.len(), rows.len()) {
        let (order, ends) = sorted(&runs, pass.trucks.len(), rows.len());
        let mut from = 0;
        for (place, &end) in ends.iter().enumerate() {
            pass.rows(place, Rows::These(&order), from..end, 0, slots);
            if let Some((_, local)) = pass.trucks.get_mut(place) {
                number_extremes(&mut local.tally, &order, first_row);
            }
            from = end;
        }
    } else {
        for &(place, start, end) in &runs {
            pass.rows(place, Rows::From(0), start..end, first_row, slots);
        }
    }
    Ok(Segment { trucks: pass.trucks })
}

/// Turns places in a list of rows into numbers of rows in the stream.
fn number_extremes(tally: &mut ScreenTally, order: &[u32], first_row: u64) {
    for extreme in [&mut tally.greatest_share, &mut tally.least_margin, &mut tally.hottest] {
        if !extreme.value.is_nan() {
            let row = usize::try_from(extreme.row).ok().and_then(|place| order.get(place));
            extreme.row = first_row + row.map_or(0, |&row| u64::from(row));
        }
    }
}

struct Pass<'q, 'a, 'b> {
    question: &'q Question,
    batch: &'a Batch<'b>,
    start: usize,
    kernel: Kernel,
    block: Box<ScreenBlock>,
    /// The columns that can be read where they lie.
    in_place: [Option<&'a [f64]>; SCREEN_COLUMNS],
    /// Copies of the others; the row before stands first.
    piece: Box<[[f64; PIECE + 1]; SCREEN_COLUMNS]>,
    trucks: Vec<(KeyRef<'a>, Box<Local>)>,
}

impl<'a> Pass<'_, 'a, '_> {
    /// Makes room for trucks, each with its first row.
    fn add_trucks(&mut self, names: Vec<(KeyRef<'a>, usize)>) -> Result<(), Stop> {
        for (name, first_row) in names {
            let key = name.key().ok_or(Stop::NoTruck(first_row))?;
            let unit = self.question.units.place(&key).ok_or(Stop::NoUnit(key))?;
            let (row, tally) = (ScreenRow::EMPTY, ScreenTally::EMPTY);
            let local = Local { tally, first: row, first_row, last: row, unit, rows: 0, last_row: first_row };
            self.trucks.push((name, Box::new(local)));
        }
        Ok(())
    }

    /// Passes over rows of one truck.
    fn rows(&mut self, place: usize, rows: Rows<'_>, range: Range<usize>, number: u64, slots: &mut [Slots<'_>]) {
        let Some((_, local)) = self.trucks.get_mut(place) else { return };
        let Some(unit) = self.question.units.all.get(local.unit) else { return };
        let mut done = range.start;
        if local.rows == 0 && done < range.end {
            local.first_row = rows.at(done);
            local.first = row_of(self.batch, local.first_row);
            (local.last, local.last_row) = (local.first, local.first_row);
            done += 1;
        }
        local.rows += range.len();
        while done < range.end {
            // The core reads the row before the first, too: in place, only where it lies there.
            let follows = matches!(rows, Rows::From(_)) && local.last_row + 1 == done;
            let borrowed = self.in_place.map(|values| values.filter(|_| follows));
            let copies = borrowed
                .iter()
                .zip(&self.batch.columns)
                .any(|(borrowed, column)| borrowed.is_none() && column.is_some());
            let most = match (self.question.outputs.is_empty(), copies) {
                (false, _) => ScreenBlock::ROWS,
                (true, true) => PIECE,
                (true, false) => usize::MAX,
            };
            let count = (range.end - done).min(most);
            let now = match rows {
                Rows::From(_) => Rows::From(done),
                Rows::These(order) => Rows::These(order.get(done..done + count).unwrap_or_default()),
            };
            let before = local.last.values();
            let mut columns: [&[f64]; SCREEN_COLUMNS] = [&[]; SCREEN_COLUMNS];
            let places = borrowed.iter().zip(&self.batch.columns).zip(self.piece.iter_mut().zip(before));
            for (to, ((borrowed, column), (piece, before))) in columns.iter_mut().zip(places) {
                *to = match (borrowed, column) {
                    (Some(values), _) => values.get(done - 1..done + count).unwrap_or_default(),
                    (None, None) => &[],
                    (None, Some(column)) => {
                        let piece = piece.get_mut(..=count).unwrap_or_default();
                        if let [first, others @ ..] = piece {
                            *first = before;
                            column.load(now, others);
                        }
                        piece
                    }
                };
            }
            let asked = self.question.asked;
            (self.kernel)(&mut self.block, &unit.plan, asked, &columns, number + done as u64, &mut local.tally);
            for (output, slots) in self.question.outputs.iter().zip(&mut *slots) {
                write(output, unit, (&self.block, self.batch), asked, (now, count, self.start), slots);
            }
            done += count;
            local.last_row = now.at(count - 1);
            local.last = row_of(self.batch, local.last_row);
        }
    }
}

/// Writes one answer of the rows of a block. `rows` are the rows, their number, and the first row of the slots.
fn write(
    output: &Output,
    unit: &Unit,
    (block, batch): (&ScreenBlock, &Batch<'_>),
    asked: u32,
    rows: (Rows<'_>, usize, usize),
    slots: &mut Slots<'_>,
) {
    match (slots, output) {
        (Slots::Flags(to), _) => put(to, rows, block.flags().iter().copied()),
        (Slots::Places(to), Output::Weakest) => put(to, rows, block.weakest().iter().map(|&place| place as i8)),
        (Slots::Places(to), _) => put(to, rows, block.gears().iter().map(|&place| place as i8)),
        (Slots::Numbers(to), Output::Lane(lane)) => put(to, rows, block.lane(*lane).iter().copied()),
        (Slots::Numbers(to), _) => {
            let (now, ..) = rows;
            let answers = (0..)
                .map(|row| output.number(unit, &row_of(batch, now.at(row)), &block.answer(&unit.plan, asked, row)));
            put(to, rows, answers);
        }
    }
}

fn put<T>(to: &mut [T], (rows, count, start): (Rows<'_>, usize, usize), values: impl Iterator<Item = T>) {
    match rows {
        Rows::From(first) => {
            let to = to.get_mut(first - start..first - start + count).unwrap_or_default();
            to.iter_mut().zip(values).for_each(|(to, value)| *to = value);
        }
        Rows::These(rows) => {
            for (&row, value) in rows.iter().zip(values).take(count) {
                if let Some(to) = to.get_mut(row as usize - start) {
                    *to = value;
                }
            }
        }
    }
}

/// A run of rows of one truck that no gap in the stream interrupts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// Its first row, not counted yet: only what comes before tells its duration.
    pub first: ScreenRow,
    /// Number of that in the stream.
    pub first_number: u64,
    /// Columns that its data has.
    pub given: u32,
    /// Its last row.
    pub last: ScreenRow,
}

/// One truck in a partial.
#[derive(Clone, Debug, PartialEq)]
pub struct Truck {
    /// Place of its unit.
    pub unit: usize,
    /// Its sums, but for the first row of each run.
    pub tally: ScreenTally,
    /// Its runs.
    pub runs: Vec<Run>,
    /// Place of the run that the stream goes on with.
    pub open: Option<usize>,
}

impl Truck {
    /// A truck without rows.
    pub fn new(unit: usize) -> Self {
        Self { unit, tally: ScreenTally::EMPTY, runs: Vec::new(), open: None }
    }

    /// Adds what a segment found; gives the answer of the segment's first row where its predecessor is known.
    pub fn join(&mut self, plan: &ScreenPlan, (given, asked): (u32, u32), local: &Local, number: u64) -> ScreenAnswer {
        self.tally.merge(&local.tally);
        let place = self.open;
        match place.and_then(|place| self.runs.get_mut(place)) {
            Some(run) => {
                let answer = plan.row(given, &local.first, Some(&run.last));
                self.tally.add_row((given, asked), &local.first, number, &answer);
                run.last = local.last;
                answer.only(asked)
            }
            None => {
                self.open = Some(self.runs.len());
                self.runs.push(Run { first: local.first, first_number: number, given, last: local.last });
                plan.row(given, &local.first, None).only(asked)
            }
        }
    }

    /// The runs in their order: by number of the first row, or by its time.
    pub fn ordered(&self, by_time: bool) -> Vec<Run> {
        let mut runs = self.runs.clone();
        let by_number = |run: &Run| (run.first_number, run.first.time_s.to_bits());
        if by_time {
            runs.sort_by(|a, b| {
                a.first.time_s.total_cmp(&b.first.time_s).then_with(|| by_number(a).cmp(&by_number(b)))
            });
        } else {
            runs.sort_by_key(by_number);
        }
        runs
    }

    /// The sums with the first row of every run.
    pub fn finished(&self, plan: &ScreenPlan, asked: u32, by_time: bool) -> ScreenTally {
        let mut tally = self.tally;
        let mut previous: Option<ScreenRow> = None;
        for run in self.ordered(by_time) {
            let answer = plan.row(run.given, &run.first, previous.as_ref());
            tally.add_row((run.given, asked), &run.first, run.first_number, &answer);
            previous = Some(run.last);
        }
        tally
    }
}
