//! A partial as bytes: little-endian, versioned, with a fingerprint of the units and the question.

use pyo3::PyResult;
use trainwright::duty::screen::{Ask, SCREEN_COLUMNS, ScreenExtreme, ScreenRow, ScreenTally};

use super::pass::{Run, Truck};
use super::screen::Screen;
use crate::error::refuse;
use crate::table::keys::Key;

const MARK: &[u8; 8] = b"TWSCREEN";
/// A change of the layout, of a rule or of a step is a new version.
const VERSION: u16 = 1;

/// FNV-1a of 64 bits.
fn hash(text: &str) -> u64 {
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

fn write_row(to: &mut Vec<u8>, row: &ScreenRow) {
    row.values().iter().for_each(|value| to.extend(value.to_bits().to_le_bytes()));
}

fn write_key(to: &mut Vec<u8>, key: &Key) {
    match key {
        Key::Number(number) => {
            to.push(0);
            to.extend(number.to_le_bytes());
        }
        Key::Text(text) => {
            to.push(1);
            to.extend((text.len() as u64).to_le_bytes());
            to.extend(text.as_bytes());
        }
    }
}

struct Reader<'a>(&'a [u8]);

impl<'a> Reader<'a> {
    fn take(&mut self, count: usize) -> Option<&'a [u8]> {
        let (taken, rest) = self.0.split_at_checked(count)?;
        self.0 = rest;
        Some(taken)
    }

    fn array<const N: usize>(&mut self) -> Option<[u8; N]> {
        self.take(N)?.try_into().ok()
    }

    fn u64(&mut self) -> Option<u64> {
        self.array().map(u64::from_le_bytes)
    }

    fn f64(&mut self) -> Option<f64> {
        self.u64().map(f64::from_bits)
    }

    fn byte(&mut self) -> Option<u8> {
        self.array().map(|[byte]| byte)
    }

    fn row(&mut self) -> Option<ScreenRow> {
        let mut values = [0.0; SCREEN_COLUMNS];
        for value in &mut values {
            *value = self.f64()?;
        }
        Some(ScreenRow::of_values(values))
    }

    fn key(&mut self) -> Option<Key> {
        match self.byte()? {
            0 => self.array().map(|bytes| Key::Number(i64::from_le_bytes(bytes))),
            1 => {
                let length = usize::try_from(self.u64()?).ok()?;
                String::from_utf8(self.take(length)?.to_vec()).ok().map(Key::Text)
            }
            _ => None,
        }
    }

    fn extreme(&mut self) -> Option<ScreenExtreme> {
        Some(ScreenExtreme {
            value: self.f64()?,
            time_s: self.f64()?,
            row: self.u64()?,
            gear: self.byte()?.cast_signed(),
            element: self.byte()?.cast_signed(),
        })
    }

    fn tally(&mut self) -> Option<ScreenTally> {
        let mut sums = [0; ScreenTally::SUMS];
        for _ in 0..self.u64()? {
            let place = usize::from(u16::from_le_bytes(self.array()?));
            *sums.get_mut(place)? = i128::from_le_bytes(self.array()?);
        }
        Some(ScreenTally::of_parts(sums, [self.extreme()?, self.extreme()?, self.extreme()?]))
    }

    fn runs(&mut self) -> Option<Vec<Run>> {
        let count = self.u64()?;
        let mut runs = Vec::new();
        for _ in 0..count {
            let (first, first_number) = (self.row()?, self.u64()?);
            let given = u32::try_from(self.u64()?).ok()?;
            runs.push(Run { first, first_number, given, last: self.row()? });
        }
        Some(runs)
    }
}

impl Screen {
    /// What must be the same for two partials to be merged.
    pub(super) fn fingerprint(&self) -> u64 {
        let units: Vec<_> = self.question.units.all.iter().map(|unit| (&unit.plan, &unit.gears)).collect();
        let by_truck = self.question.units.by_truck.as_ref();
        let mut by_truck: Vec<_> = by_truck.into_iter().flatten().collect();
        by_truck.sort();
        // Which answers of the rows were asked for besides is no matter of the sums.
        let asked = self.question.asked & !(Ask::ROWS | Ask::WEAKEST);
        hash(&format!("{units:?} {by_truck:?} {asked} {} {}", self.sums, self.by_time))
    }

    /// The partial as bytes.
    pub(super) fn written(&self) -> Vec<u8> {
        let mut to = MARK.to_vec();
        to.extend(VERSION.to_le_bytes());
        for word in [self.fingerprint(), self.rows, self.next_row, self.missing.into(), self.trucks.len() as u64] {
            to.extend(word.to_le_bytes());
        }
        for (key, truck) in &self.trucks {
            write_key(&mut to, key);
            to.extend(truck.open.map_or(u64::MAX, |open| open as u64).to_le_bytes());
            let (sums, extremes) = truck.tally.parts();
            to.extend((sums.iter().filter(|&&sum| sum != 0).count() as u64).to_le_bytes());
            for (place, sum) in (0_u16..).zip(sums).filter(|&(_, &sum)| sum != 0) {
                to.extend(place.to_le_bytes());
                to.extend(sum.to_le_bytes());
            }
            for extreme in extremes {
                to.extend(extreme.value.to_bits().to_le_bytes());
                to.extend(extreme.time_s.to_bits().to_le_bytes());
                to.extend(extreme.row.to_le_bytes());
                to.extend([extreme.gear.cast_unsigned(), extreme.element.cast_unsigned()]);
            }
            to.extend((truck.runs.len() as u64).to_le_bytes());
            for run in &truck.runs {
                write_row(&mut to, &run.first);
                to.extend(run.first_number.to_le_bytes());
                to.extend(u64::from(run.given).to_le_bytes());
                write_row(&mut to, &run.last);
            }
        }
        to
    }

    /// Takes over what `written` wrote.
    pub(super) fn read(&mut self, data: &[u8]) -> PyResult<()> {
        let not_one =
            || refuse("TEXT", "data", "data: these are not the bytes of a Screen, or some are missing".into());
        let mut reader = Reader(data);
        if reader.array().as_ref() != Some(MARK) {
            return Err(not_one());
        }
        let version = reader.array().map(u16::from_le_bytes);
        if version != Some(VERSION) {
            let message = "data: was written by another version of trainwright; pass over the rows again";
            return Err(refuse("INCONSISTENT", "data", message.into()));
        }
        if reader.u64() != Some(self.fingerprint()) {
            let message = "data: was made with other units or another question; give the same";
            return Err(refuse("INCONSISTENT", "data", message.into()));
        }
        self.read_trucks(&mut reader).filter(|()| reader.0.is_empty()).ok_or_else(not_one)
    }

    fn read_trucks(&mut self, reader: &mut Reader<'_>) -> Option<()> {
        self.rows = reader.u64()?;
        self.next_row = reader.u64()?;
        self.missing = u32::try_from(reader.u64()?).ok()?;
        for _ in 0..reader.u64()? {
            let key = reader.key()?;
            let open = usize::try_from(reader.u64()?).ok();
            let tally = reader.tally()?;
            let runs = reader.runs()?;
            let unit = self.question.units.place(&key)?;
            let open = open.filter(|&open| open < runs.len());
            self.trucks.insert(key, Truck { unit, tally, runs, open });
        }
        Some(())
    }
}
