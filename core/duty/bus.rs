//! Raw values of a vehicle bus: what a number on the bus means before anybody computes with it.
//!
//! A bus of the J1939 kind keeps the top of every range for marks: error, not available. Scaled as if they were values they
//! turn into 8191 1/min or 1735 °C, and into the average of a fleet. Whoever computes decodes first, and counts what is no value.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive};
use crate::real::{abs, floor};

pub(super) const DECODE: Card = Card {
    id: "duty.decode",
    purpose: "What a raw value of a bus means: a physical value, or a mark that must not be computed with",
    equation: "x = raw·k + b; top byte of raw: up to FA a value, FB an indicator, FC and FD reserved, FE error, FF not available",
    symbols: &[
        symbol("raw", "raw, unsigned", "1"),
        symbol("x", "value, of the signal", "of the signal"),
        symbol("k", "resolution, per bit", "of the signal"),
        symbol("b", "offset", "of the signal"),
        symbol("top byte", "the byte itself, or the highest of two or four", "1"),
    ],
    range: "8, 16 and 32 bits. A plain bus (vehicle diagnostics) has no marks: every raw value is one",
    source: &card::BUS_SCALING,
    locator: "table of transmitted signal ranges",
};

pub(super) const CLASSIFY: Card = Card {
    id: "duty.classify",
    purpose: "Whether a value that somebody scaled already is one, or a mark scaled by mistake",
    equation: "raw = (x − b)/k, rounded; then as duty.decode",
    symbols: &[
        symbol("x", "value, of the signal", "of the signal"),
        symbol("k", "resolution, per bit", "of the signal"),
        symbol("b", "offset", "of the signal"),
        symbol("raw", "what the bus carried", "1"),
    ],
    range: "values that were scaled with the same resolution and offset. No number (NaN) counts as not available",
    source: &card::BUS_SCALING,
    locator: "table of transmitted signal ranges, read backward",
};

pub(super) const STEP_ERROR: Card = Card {
    id: "duty.step_error",
    purpose: "Greatest relative error that the steps of a signal put into a value",
    equation: "e = k/(2·|x|)",
    symbols: &[
        symbol("e", "result", "1"),
        symbol("k", "resolution, per bit", "of the signal"),
        symbol("x", "value, of the signal", "of the signal"),
    ],
    range: "a sender that rounds to the nearest step; one that cuts off errs by twice as much, always downward",
    source: &card::DEFINITION,
    locator: "half a step",
};

/// Which values of a bus are marks.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BusRules {
    /// Top byte FB and above marks an indicator, reserved, error or not available, as on a J1939 bus.
    Marked,
    /// Every raw value is a value, as in the parameters of on-board diagnostics.
    Plain,
}

/// A signal of a bus.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BusSignal {
    /// Which values are marks.
    pub rules: BusRules,
    /// Width: 8, 16 or 32.
    pub bits: u8,
    /// Physical value of one step.
    pub resolution: f64,
    /// Physical value of raw 0.
    pub offset: f64,
    /// Least physical value that can be true; −infinity where nobody says.
    pub lower: f64,
    /// Greatest physical value that can be true; infinity where nobody says.
    pub upper: f64,
}

/// What a raw value is.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BusMeaning {
    /// A physical value.
    Value,
    /// A number that cannot be true: outside the limits of the signal.
    OutOfRange,
    /// An indicator that the signal itself defines (such as Park where gears are sent).
    Indicator,
    /// Reserved: nothing that may be computed with.
    Reserved,
    /// The sender reports an error.
    Error,
    /// The sender does not have the value.
    NotAvailable,
}

/// A decoded raw value.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BusValue {
    /// What it is. Compute only with [`BusMeaning::Value`].
    pub meaning: BusMeaning,
    /// The scaled number, whatever it means; only for showing where it is no value.
    pub value: f64,
}

/// The bus that a number of a signal belongs to: the same number means other things on another bus.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BusNetwork {
    /// Suspect parameter number of a J1939 bus.
    J1939,
    /// Parameter of service 01 of on-board diagnostics.
    Obd,
}

const fn marked(bits: u8, resolution: f64, offset: f64) -> BusSignal {
    BusSignal { rules: BusRules::Marked, bits, resolution, offset, lower: f64::NEG_INFINITY, upper: f64::INFINITY }
}

const fn plain(bits: u8, resolution: f64, offset: f64) -> BusSignal {
    BusSignal { rules: BusRules::Plain, ..marked(bits, resolution, offset) }
}

/// A signal that a screening of duty uses, by its number.
///
/// * `network` — which bus the number belongs to
/// * `number` — J1939: 84 wheel-based speed (km/h), 127 transmission oil pressure (kPa), 161 input shaft, 190 engine and 191
///   output shaft speed (1/min), 177 transmission oil temperature (°C), 513 actual engine torque (%), 523 current gear, 526
///   actual gear ratio, 544 engine reference torque (N·m). Diagnostics: 0x0C engine speed (1/min), 0x0D vehicle speed (km/h)
/// * returns resolution, offset and width; the limits are open
/// * errors: [`Error::Missing`] for any other number: give a [`BusSignal`] of its own
///
/// Source: SAE J1939-71 and SAE J1979 (161, 177, 191, 127, 523, 0C and 0D read in public headers and tables, the others from
/// memory). The same numbers mean other things on an older J1587 bus (177 there is in °F).
pub fn bus_signal(network: BusNetwork, number: u32) -> Result<BusSignal> {
    Ok(match (network, number) {
        (BusNetwork::J1939, 84) => marked(16, 1.0 / 256.0, 0.0),
        (BusNetwork::J1939, 127) => marked(8, 16.0, 0.0),
        (BusNetwork::J1939, 161 | 190 | 191) => marked(16, 0.125, 0.0),
        (BusNetwork::J1939, 177) => marked(16, 1.0 / 32.0, -273.0),
        (BusNetwork::J1939, 513) => marked(8, 1.0, -125.0),
        (BusNetwork::J1939, 523) => marked(8, 1.0, -125.0),
        (BusNetwork::J1939, 526) => marked(16, 0.001, 0.0),
        (BusNetwork::J1939, 544) => marked(16, 1.0, 0.0),
        (BusNetwork::Obd, 0x0C) => plain(16, 0.25, 0.0),
        (BusNetwork::Obd, 0x0D) => plain(8, 1.0, 0.0),
        _ => {
            return Err(Error::Missing {
                name: "number",
                why: "no signal of this number is known here; give its width, resolution and offset",
            });
        }
    })
}

impl BusSignal {
    /// The signal, if it can be one.
    ///
    /// * `bits` — 8, 16 or 32; `resolution` above 0; `offset` finite; `lower` no higher than `upper`
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`], [`Error::Reversed`]
    pub fn checked(self) -> Result<Self> {
        if !matches!(self.bits, 8 | 16 | 32) {
            return Err(Error::OutOfRange { name: "bits", value: self.bits.into(), low: 8.0, high: 32.0 });
        }
        positive("resolution", self.resolution)?;
        finite("offset", self.offset)?;
        if self.lower <= self.upper {
            Ok(self)
        } else {
            Err(Error::Reversed { name: "lower, upper", lower: self.lower, upper: self.upper })
        }
    }

    /// What a raw value of the bus means: a physical value, or a mark that must not be computed with.
    ///
    /// x = raw·k + b; top byte of raw: up to FA a value, FB an indicator, FC and FD reserved, FE error, FF not available
    ///
    /// * `raw` — what the bus carried, unsigned, no wider than the signal
    /// * returns [`BusValue`]
    /// * errors: [`Error::OutOfRange`] for a raw value that the width cannot carry; as [`checked`](Self::checked)
    ///
    /// Source: SAE J1939-71, table of signal ranges (from memory). Example: output shaft speed, raw 12 000, is 1500 1/min; raw
    /// FFFF would scale to 8191.875 1/min and is not available.
    ///
    /// ```
    /// use trainwright::duty::{BusMeaning, BusNetwork, bus_signal};
    /// let output_speed = bus_signal(BusNetwork::J1939, 191)?;
    /// assert_eq!(output_speed.decode(12_000)?.value, 1500.0);
    /// assert_eq!(output_speed.decode(0xFFFF)?.meaning, BusMeaning::NotAvailable);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn decode(self, raw: u32) -> Result<BusValue> {
        let most = self.checked()?.most();
        if raw > most {
            return Err(Error::OutOfRange { name: "raw", value: raw.into(), low: 0.0, high: most.into() });
        }
        let value = f64::from(raw) * self.resolution + self.offset;
        Ok(BusValue { meaning: self.meaning(raw, value), value })
    }

    /// Whether a value that somebody scaled already is one, or a mark scaled by mistake.
    ///
    /// raw = (x − b)/k, rounded; then as [`decode`](Self::decode)
    ///
    /// * `value` — x as it stands in a table, scaled with this resolution and offset; NaN and infinite stand for no value
    /// * returns [`BusValue`] with the same value
    /// * errors: as [`checked`](Self::checked)
    ///
    /// Source: SAE J1939-71, table of signal ranges, read backward. Example: a column of output speeds that holds 8191.875 holds
    /// "not available".
    pub fn classify(self, value: f64) -> Result<BusValue> {
        let signal = self.checked()?;
        let raw = floor((value - signal.offset) / signal.resolution + 0.5);
        let meaning = if value.is_nan() {
            BusMeaning::NotAvailable
        } else if (0.0..=f64::from(signal.most())).contains(&raw) {
            signal.meaning(raw as u32, value)
        } else {
            BusMeaning::OutOfRange
        };
        Ok(BusValue { meaning, value })
    }

    /// Greatest relative error that the steps of the signal put into a value.
    ///
    /// e = k/(2·|x|)
    ///
    /// * `value` — x, not 0
    /// * returns a share; of a quotient of two signals the shares add
    /// * errors: [`Error::NotFinite`], [`Error::NotPositive`] for 0; as [`checked`](Self::checked)
    ///
    /// Source: half a step (derived). Example: vehicle speed in steps of 1 km/h errs by up to 2.5 % at 20 km/h.
    pub fn step_error(self, value: f64) -> Result<f64> {
        let step = self.checked()?.resolution;
        Ok(step / 2.0 / positive("value", abs(finite("value", value)?))?)
    }

    fn most(self) -> u32 {
        match self.bits {
            8 => 0xFF,
            16 => 0xFFFF,
            _ => u32::MAX,
        }
    }

    fn meaning(self, raw: u32, value: f64) -> BusMeaning {
        let top = match self.bits {
            8 => raw,
            16 => raw >> 8,
            _ => raw >> 24,
        };
        match (self.rules, marked_meaning(top)) {
            (BusRules::Marked, Some(mark)) => mark,
            _ if value < self.lower || value > self.upper => BusMeaning::OutOfRange,
            _ => BusMeaning::Value,
        }
    }
}

/// What the top byte of a value marks on a J1939 bus, if it is a mark.
pub(crate) const fn marked_meaning(top_byte: u32) -> Option<BusMeaning> {
    match top_byte {
        0xFB => Some(BusMeaning::Indicator),
        0xFC | 0xFD => Some(BusMeaning::Reserved),
        0xFE => Some(BusMeaning::Error),
        0xFF => Some(BusMeaning::NotAvailable),
        _ => None,
    }
}
