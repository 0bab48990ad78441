//! Samples from numbers, the same way one by one and by the million.

use trainwright::duty::screen::BadValue;
use trainwright::live::{
    GEAR_NOT_COMMANDED, LiveSample, ReadingState, SpeedReading, SpeedSensor as CoreSensor, SpeedSource,
};

use super::unit::Planned;
use crate::table::Wanted;

/// Number of columns.
pub const COUNT: usize = 16;
/// Names of the columns of a sample.
pub const COLUMNS: [&str; COUNT] = [
    "time_s",
    "time_us",
    "input_rpm",
    "input_pulses",
    "input_ticks",
    "output_rpm",
    "output_pulses",
    "output_ticks",
    "engine_rpm",
    "engine_pulses",
    "engine_ticks",
    "pressure_kpa",
    "temp_c",
    "engine_torque_nm",
    "gear",
    "lockup",
];
/// The columns, and the one of the unit.
pub const WANTED: Wanted<COUNT> = Wanted { columns: &COLUMNS, key: "unit" };

const TIME_S: u32 = 1;
const TIME_US: u32 = 1 << 1;
/// Either of the columns of time.
pub const TIMES: u32 = TIME_S | TIME_US;
/// Places of the first column of each speed.
const SPEEDS: [usize; 3] = [2, 5, 8];
/// Beyond it a `f64` no longer counts microseconds one by one.
const LAST_US: f64 = 9_007_199_254_740_992.0;

fn speed_columns(sensor: &CoreSensor, first: usize) -> u32 {
    match sensor.source {
        SpeedSource::Bus => 1 << first,
        SpeedSource::Counted => 1 << (first + 1),
        SpeedSource::Edges => 1 << (first + 1) | 1 << (first + 2),
    }
}

/// Which columns the sensors of a unit need, without time.
pub fn needed(unit: &Planned) -> u32 {
    let [input, output, engine] = SPEEDS;
    let of_engine = unit.unit.engine.map_or(0, |sensor| speed_columns(&sensor.0, engine));
    let others = COLUMNS.iter().skip(11).count() as u32;
    let others = ((1 << others) - 1) << 11;
    speed_columns(&unit.unit.input.0, input) | speed_columns(&unit.unit.output.0, output) | of_engine | others
}

/// The columns of the speeds without which nothing can be said.
pub fn of_input_and_output(unit: &Planned) -> [u32; 2] {
    let [input, output, _] = SPEEDS;
    [speed_columns(&unit.unit.input.0, input), speed_columns(&unit.unit.output.0, output)]
}

/// Names of the columns of a mask.
pub fn names(mask: u32) -> Vec<&'static str> {
    COLUMNS.iter().enumerate().filter(|(place, _)| mask >> place & 1 != 0).map(|(_, name)| *name).collect()
}

/// A NaN that says why there is no value.
fn state_of(nan: f64) -> ReadingState {
    match BadValue::of(1, nan) {
        Some(BadValue::NotAvailable) => ReadingState::NotAvailable,
        Some(BadValue::SensorError) => ReadingState::SensorError,
        Some(BadValue::Reserved) => ReadingState::Reserved,
        _ => ReadingState::Missing,
    }
}

fn not_a_value(state: ReadingState) -> SpeedReading {
    SpeedReading { state, ..SpeedReading::MISSING }
}

/// Whether a value is this whole number.
#[inline]
fn is_whole(value: f64, whole: f64) -> bool {
    (value + 0.0).to_bits() == whole.to_bits() // -0 is 0
}

/// A count, where the number is one.
#[inline]
fn count(value: f64) -> Result<u32, ReadingState> {
    let count = value as u32;
    if is_whole(value, count.into()) {
        Ok(count)
    } else if value.is_nan() {
        Err(state_of(value))
    } else {
        Err(ReadingState::SensorError)
    }
}

#[inline]
fn reading(source: SpeedSource, rpm: f64, pulses: f64, ticks: f64) -> SpeedReading {
    let counted = match source {
        SpeedSource::Bus if rpm.is_nan() => Err(state_of(rpm)),
        SpeedSource::Bus => Ok(SpeedReading::bus(rpm as f32)),
        SpeedSource::Counted => count(pulses).map(SpeedReading::counted),
        SpeedSource::Edges => count(pulses).and_then(|pulses| Ok(SpeedReading::edges(pulses, count(ticks)?))),
    };
    counted.unwrap_or_else(not_a_value)
}

/// Time in microseconds, where there is one: not negative, finite.
#[inline]
fn time_us(given: u32, time_s: f64, time_us: f64) -> Option<u64> {
    let time = if given & TIME_US != 0 { time_us } else { time_s * 1e6 };
    (0.0..LAST_US).contains(&time).then_some((time + 0.5) as u64)
}

/// The sample of a row of the columns; none without a time. `given` is the mask of the columns that there are.
#[inline]
pub fn sample(unit: &Planned, given: u32, row: &[f64; COUNT]) -> Option<LiveSample> {
    let &[
        at_s,
        at_us,
        input_rpm,
        input_pulses,
        input_ticks,
        output_rpm,
        output_pulses,
        output_ticks,
        engine_rpm,
        engine_pulses,
        engine_ticks,
        pressure_kpa,
        temp_c,
        engine_torque_nm,
        gear,
        lockup,
    ] = row;
    let time_us = time_us(given, at_s, at_us)?;
    let number = gear as i8;
    Some(LiveSample {
        time_us,
        input: reading(unit.unit.input.0.source, input_rpm, input_pulses, input_ticks),
        output: reading(unit.unit.output.0.source, output_rpm, output_pulses, output_ticks),
        engine: match &unit.unit.engine {
            Some(sensor) => reading(sensor.0.source, engine_rpm, engine_pulses, engine_ticks),
            None => SpeedReading::MISSING,
        },
        pressure_kpa: pressure_kpa as f32,
        temp_c: temp_c as f32,
        engine_torque_nm: engine_torque_nm as f32,
        commanded: if is_whole(gear, number.into()) { number } else { GEAR_NOT_COMMANDED },
        lockup: if is_whole(lockup, 1.0) {
            1
        } else if is_whole(lockup, 0.0) {
            0
        } else {
            -1
        },
    })
}
