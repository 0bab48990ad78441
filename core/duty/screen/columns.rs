//! What a row holds, what its values may be, and what can be said of a row.

/// Columns of a row. Bit n of a mask of columns is the n-th of [`SCREEN_COLUMN_NAMES`].
pub const SCREEN_COLUMNS: usize = 10;

/// Names of the columns, in the order of [`ScreenRow`].
pub const SCREEN_COLUMN_NAMES: [&str; SCREEN_COLUMNS] = [
    "time_s",
    "engine_rpm",
    "input_rpm",
    "output_rpm",
    "engine_torque_nm",
    "pressure_kpa",
    "temp_c",
    "speed_km_h",
    "gps_km_h",
    "gear",
];

pub(crate) const TIME: usize = 0;
pub(crate) const ENGINE: usize = 1;
pub(crate) const INPUT: usize = 2;
pub(crate) const OUTPUT: usize = 3;
pub(crate) const TORQUE: usize = 4;
pub(crate) const PRESSURE: usize = 5;
pub(crate) const TEMP: usize = 6;
pub(crate) const SPEED: usize = 7;
pub(crate) const GPS: usize = 8;
pub(crate) const COMMANDED: usize = 9;

/// The columns that come over the bus: only where they all stand still is a row stale.
pub(crate) const BUS: [usize; 7] = [ENGINE, INPUT, OUTPUT, TORQUE, PRESSURE, TEMP, SPEED];
/// Fewer bus columns than this and repetition proves nothing.
pub(crate) const LEAST_BUS_COLUMNS: u32 = 3;

/// Least and greatest value of each column: what a sensor of a road vehicle can mean at all, not what is good for it.
pub const SCREEN_RANGES: [(f64, f64); SCREEN_COLUMNS] = [
    (-4e9, 4e9),
    (0.0, 10_000.0),
    (0.0, 10_000.0),
    (0.0, 10_000.0),
    (-10_000.0, 10_000.0),
    (0.0, 10_000.0),
    (-60.0, 250.0),
    (0.0, 400.0),
    (0.0, 400.0),
    (-16.0, 16.0),
];

/// One sample of one truck. NaN is no value.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenRow {
    /// Time, s, from any beginning; -4e9 to 4e9.
    pub time_s: f64,
    /// Engine speed, 1/min, 0 to 10 000.
    pub engine_rpm: f64,
    /// Speed of the transmission input, 1/min, 0 to 10 000.
    pub input_rpm: f64,
    /// Speed of the transmission output, 1/min, without sign, 0 to 10 000.
    pub output_rpm: f64,
    /// Engine torque at the flywheel, N·m, negative in overrun; -10 000 to 10 000.
    pub engine_torque_nm: f64,
    /// Gauge pressure at the closed packs, kPa, 0 to 10 000.
    pub pressure_kpa: f64,
    /// Fluid temperature, °C, -60 to 250.
    pub temp_c: f64,
    /// Road speed as the vehicle computes it, km/h, 0 to 400.
    pub speed_km_h: f64,
    /// Road speed by satellite, km/h, 0 to 400.
    pub gps_km_h: f64,
    /// Number of the commanded gear: forward from 1, reverse from -1 down, 0 neutral or park.
    pub gear: f64,
}

impl ScreenRow {
    /// No value anywhere.
    pub const EMPTY: Self = Self::of_values([f64::NAN; SCREEN_COLUMNS]);

    /// The row with these values, in the order of [`SCREEN_COLUMN_NAMES`].
    #[inline]
    #[must_use]
    pub const fn of_values(values: [f64; SCREEN_COLUMNS]) -> Self {
        let [
            time_s,
            engine_rpm,
            input_rpm,
            output_rpm,
            engine_torque_nm,
            pressure_kpa,
            temp_c,
            speed_km_h,
            gps_km_h,
            gear,
        ] = values;
        Self {
            time_s,
            engine_rpm,
            input_rpm,
            output_rpm,
            engine_torque_nm,
            pressure_kpa,
            temp_c,
            speed_km_h,
            gps_km_h,
            gear,
        }
    }

    /// The values in the order of [`SCREEN_COLUMN_NAMES`].
    #[inline]
    #[must_use]
    pub const fn values(&self) -> [f64; SCREEN_COLUMNS] {
        [
            self.time_s,
            self.engine_rpm,
            self.input_rpm,
            self.output_rpm,
            self.engine_torque_nm,
            self.pressure_kpa,
            self.temp_c,
            self.speed_km_h,
            self.gps_km_h,
            self.gear,
        ]
    }
}

/// Why a value cannot be used.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BadValue {
    /// No value.
    Missing,
    /// The bus says that the signal is not available.
    NotAvailable,
    /// The bus reports an error of the sensor.
    SensorError,
    /// A bus value that the standard keeps for later use.
    Reserved,
    /// Below 0 where that cannot be.
    Negative,
    /// Infinite, or beyond what a road vehicle can show.
    OutOfRange,
}

/// Kinds of [`BadValue`].
pub const BAD_VALUE_KINDS: usize = 6;

/// The words for the kinds of bad value.
pub const BAD_VALUE_NAMES: [&str; BAD_VALUE_KINDS] =
    ["missing", "not_available", "error", "reserved", "negative", "out_of_range"];

const PLAIN_NAN: u64 = 0x7ff8_0000_0000_0000;
const PAYLOAD: u64 = 0x0007_ffff_ffff_ffff;

impl BadValue {
    /// What stands in a column for a bus value that is none: a NaN that remembers why.
    #[must_use]
    pub const fn in_a_column(self) -> f64 {
        f64::from_bits(match self {
            Self::NotAvailable => PLAIN_NAN | 1,
            Self::SensorError => PLAIN_NAN | 2,
            Self::Reserved => PLAIN_NAN | 3,
            Self::Missing | Self::Negative | Self::OutOfRange => PLAIN_NAN,
        })
    }

    /// Why a value of the column with this number cannot be used; `None` where it can, or where there is no such column.
    #[must_use]
    pub fn of(column: usize, value: f64) -> Option<Self> {
        let &(low, high) = SCREEN_RANGES.get(column)?;
        if value.is_nan() {
            return Some(match value.to_bits() & PAYLOAD {
                1 => Self::NotAvailable,
                2 => Self::SensorError,
                3 => Self::Reserved,
                _ => Self::Missing,
            });
        }
        if value < low && low >= 0.0 {
            return Some(Self::Negative);
        }
        (!is_good(column, value, low, high)).then_some(Self::OutOfRange)
    }
}

/// Whether a value is in the range of its column; a commanded gear is a whole number besides.
#[inline(always)]
pub(super) fn is_good(column: usize, value: f64, low: f64, high: f64) -> bool {
    // The bits of numbers from +0.0 on rise with them; those of negative numbers and NaN are greater. -0.0 + 0.0 is +0.0.
    let in_range =
        if low == 0.0 { (value + 0.0).to_bits() <= high.to_bits() } else { (value >= low) & (value <= high) };
    in_range & ((column != COMMANDED) | is_whole(value))
}

/// Whether a number below 2^51 is whole: adding 1.5 × 2^52 rounds it.
#[inline(always)]
fn is_whole(value: f64) -> bool {
    let rounded = (value + super::power::MAGIC) - super::power::MAGIC;
    (rounded >= value) & (rounded <= value)
}

/// Flags of a row. Bits 0 to 9 are the columns whose value is given and cannot be used.
pub const SCREEN_FLAGS: usize = 27;

/// Names of the flags, by bit.
pub const SCREEN_FLAG_NAMES: [&str; SCREEN_FLAGS] = [
    "bad_time_s",
    "bad_engine_rpm",
    "bad_input_rpm",
    "bad_output_rpm",
    "bad_engine_torque_nm",
    "bad_pressure_kpa",
    "bad_temp_c",
    "bad_speed_km_h",
    "bad_gps_km_h",
    "bad_gear",
    "first",
    "duplicate",
    "reversed",
    "gap",
    "stale",
    "standing",
    "unknown",
    "no_gear",
    "mismatch",
    "unlocked",
    "no_torque",
    "little_torque",
    "over_input",
    "over_output",
    "low_margin",
    "hot",
    "beyond_scale",
];

/// No row before it that has a time: the row has no duration.
pub const FLAG_FIRST: u32 = 1 << 10;
/// The same time as the row before: not used.
pub const FLAG_DUPLICATE: u32 = 1 << 11;
/// Earlier than the row before: not used.
pub const FLAG_REVERSED: u32 = 1 << 12;
/// Later than the row before by more than a gap: used, its duration is unknown.
pub const FLAG_GAP: u32 = 1 << 13;
/// Every bus value repeats the row before while the output turns: not used.
pub const FLAG_STALE: u32 = 1 << 14;
/// The output stands.
pub const FLAG_STANDING: u32 = 1 << 15;
/// Gear or standing cannot be told: a speed is missing.
pub const FLAG_UNKNOWN: u32 = 1 << 16;
/// The ratio belongs to no gear: between two gears, or slipping.
pub const FLAG_NO_GEAR: u32 = 1 << 17;
/// The gear in effect is not the commanded one.
pub const FLAG_MISMATCH: u32 = 1 << 18;
/// The converter is not locked.
pub const FLAG_UNLOCKED: u32 = 1 << 19;
/// The input torque cannot be formed.
pub const FLAG_NO_TORQUE: u32 = 1 << 20;
/// Too little input torque to form a margin.
pub const FLAG_LITTLE_TORQUE: u32 = 1 << 21;
/// More than the rated input torque.
pub const FLAG_OVER_INPUT: u32 = 1 << 22;
/// More than the rated output torque.
pub const FLAG_OVER_OUTPUT: u32 = 1 << 23;
/// The least margin is below the limit.
pub const FLAG_LOW_MARGIN: u32 = 1 << 24;
/// The fluid is hotter than the limit.
pub const FLAG_HOT: u32 = 1 << 25;
/// So far beyond the rated input torque that its damage is not counted.
pub const FLAG_BEYOND_SCALE: u32 = 1 << 26;

/// A row with one of these is not used.
pub(crate) const NOT_USED: u32 = 1 | FLAG_DUPLICATE | FLAG_REVERSED | FLAG_STALE;
/// A row with one of these has no regular duration.
pub(crate) const NO_DURATION: u32 = 1 | FLAG_FIRST | FLAG_DUPLICATE | FLAG_REVERSED | FLAG_GAP;

/// Place of a row in no gear's band: between gears or slipping.
pub const GEAR_NONE: i8 = -1;
/// Place of a row whose output stands.
pub const GEAR_STANDING: i8 = -2;
/// Place of a row whose gear cannot be told, or that is not used.
pub const GEAR_UNKNOWN: i8 = -3;
