//! Temperature of the plates from the energy of the shifts. Parts just driven are hot.

use super::plan::{above_zero, between};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};
use crate::real::single::{ceil, exp_m1, ln_1p};

pub(super) const STEP: Card = Card {
    id: "live.plate_after_c",
    purpose: "Mean temperature of the steel plates of an element after a step of time",
    equation: "ϑ' = ϑ_f + (ϑ − ϑ_f)·r + (E/C)·(1 + x/2)·r, r = 1/(1 + x + x²/2), x = Δt/τ",
    symbols: &[
        symbol("ϑ'", "result", "°C"),
        symbol("ϑ", "plate_c before", "°C"),
        symbol("ϑ_f", "fluid_c", "°C"),
        symbol("E", "energy_j that entered in the step, evenly", "J"),
        symbol("C", "heat_capacity_j_k", "J/K"),
        symbol("Δt", "span_s", "s"),
        symbol("τ", "cooling_s", "s"),
        symbol("r", "share of the excess that stays, for exp(−x)", "1"),
    ],
    range: "all heat enters the steel, and all plates are alike; the face of a plate is hotter for tenths of a second (clutch.plate_heat). Any step is stable; the excess is within x³/6 of the exponential",
    source: &card::HEAT_TRANSFER,
    locator: "lumped capacitance; its exponential by a quotient that never overshoots (derived)",
};

pub(super) const SHIFTS_TO_LIMIT: Card = Card {
    id: "live.shifts_to_limit",
    purpose: "Shifts of the same energy, at an even pace, until the plates reach their limit",
    equation: "n = ⌈ln(1 + (L − e)/(S − L))/(p/τ)⌉, S = (E/C)/(1 − exp(−p/τ)); none where S ≤ L",
    symbols: &[
        symbol("n", "result: further shifts, the last of which reaches the limit", "1"),
        symbol("e", "excess of the plates over the fluid now, plate_c − fluid_c", "K"),
        symbol("L", "excess at the limit, limit_c − fluid_c", "K"),
        symbol("S", "excess after a shift that the pace ends at", "K"),
        symbol("E", "energy_j of one shift", "J"),
        symbol("C", "heat_capacity_j_k", "J/K"),
        symbol("p", "pace_s from shift to shift", "s"),
        symbol("τ", "cooling_s", "s"),
    ],
    range: "each shift is short against the pace; the fluid keeps its temperature, which a hard drive does not leave alone. A computed limit is no rating",
    source: &card::HEAT_TRANSFER,
    locator: "lumped capacitance, geometric series of equal pulses (derived)",
};

/// What an element's plates take up and give away.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveElement {
    /// Heat capacity of its steel plates, J/K; 0: not known, then no temperature is formed.
    pub heat_capacity_j_k: f32,
    /// Time in which the plates' excess over the fluid falls to 1/e, s; above 0 where the heat capacity is known.
    pub cooling_s: f32,
    /// Temperature of the plates above which they are overheated, °C.
    pub limit_c: f32,
}

/// How many shifts the plates stand at a pace.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShiftsToLimit {
    /// Rise of the plates in one shift, K.
    pub rise_k: f32,
    /// Temperature after a shift that any number of them ends at, °C.
    pub settled_c: f32,
    /// Further shifts, the last of which reaches the limit; [`ShiftsToLimit::NEVER`] where the pace never reaches it.
    pub shifts: u32,
}

impl ShiftsToLimit {
    /// The pace leaves the plates time enough to cool.
    pub const NEVER: u32 = u32::MAX;
}

impl LiveElement {
    /// Nothing known.
    pub const UNKNOWN: Self = Self { heat_capacity_j_k: 0.0, cooling_s: 0.0, limit_c: 0.0 };

    /// An element from its pack.
    ///
    /// * `steel_mass_kg` — of all steel plates, above 0; `specific_heat_j_kg_k` — of their steel, above 0
    /// * `cooling_s` — above 0; infinite for plates that keep their heat; `limit_c` — −100 to 1000
    /// * returns the element; its heat capacity is mass times specific heat
    /// * errors: [`Error::NotPositive`], [`Error::OutOfRange`], [`Error::NotFinite`]
    ///
    /// Source: definition of the specific heat. Example: 2.4 kg at 500 J/(kg·K), 1200 J/K.
    pub fn of_plates(steel_mass_kg: f32, specific_heat_j_kg_k: f32, cooling_s: f32, limit_c: f32) -> Result<Self> {
        let heat_capacity_j_k =
            above_zero("steel_mass_kg", steel_mass_kg)? * above_zero("specific_heat_j_kg_k", specific_heat_j_kg_k)?;
        let element = Self { heat_capacity_j_k, cooling_s, limit_c };
        element.check()?;
        Ok(element)
    }

    pub(super) fn check(&self) -> Result<()> {
        if self.heat_capacity_j_k.to_bits() == 0 {
            return Ok(()); // unknown
        }
        above_zero("heat_capacity_j_k", self.heat_capacity_j_k)?;
        if self.cooling_s.to_bits() != f32::INFINITY.to_bits() {
            above_zero("cooling_s", self.cooling_s)?;
        }
        between("limit_c", self.limit_c, -100.0, 1000.0)?;
        Ok(())
    }

    /// Whether a temperature can be formed.
    #[must_use]
    pub fn is_known(&self) -> bool {
        self.heat_capacity_j_k > 0.0
    }

    /// Mean temperature of the steel plates after a step of time.
    ///
    /// ϑ' = ϑ_f + (ϑ − ϑ_f)·r + (E/C)·(1 + x/2)·r, r = 1/(1 + x + x²/2), x = Δt/τ
    ///
    /// For every sample: no exponential, no check. An element that is [`UNKNOWN`](Self::UNKNOWN) gives NaN.
    ///
    /// * `plate_c` — ϑ before; `fluid_c` — ϑ_f; `energy_j` — E that entered in the step; `span_s` — Δt, 0 or more
    /// * returns ϑ', between the fluid and ϑ + E/C for any span
    ///
    /// Source: Incropera and others, Fundamentals of Heat and Mass Transfer, lumped capacitance (from memory), its exponential by
    /// a quotient (derived). Example: 20 kJ into 1200 J/K in no time, 16.67 K; then 30 s of cooling with τ = 60 s leave 10.26 K (the
    /// exponential 10.11).
    ///
    /// ```
    /// let pack = trainwright::live::LiveElement::of_plates(2.4, 500.0, 60.0, 200.0)?;
    /// let after_shift = pack.plate_after_c(80.0, 80.0, 20_000.0, 0.0);
    /// assert!((after_shift - 96.667).abs() < 0.001);
    /// assert!((pack.plate_after_c(after_shift, 80.0, 0.0, 30.0) - 90.256).abs() < 0.001);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    #[must_use]
    pub fn plate_after_c(&self, plate_c: f32, fluid_c: f32, energy_j: f32, span_s: f32) -> f32 {
        let x = span_s / self.cooling_s;
        let entered_k = energy_j / self.heat_capacity_j_k * (1.0 + 0.5 * x);
        fluid_c + (plate_c - fluid_c + entered_k) * self.share_that_stays(span_s)
    }

    /// Share of the excess over the fluid that stays after a step of time, r.
    pub(super) fn share_that_stays(&self, span_s: f32) -> f32 {
        let x = span_s / self.cooling_s;
        1.0 / (1.0 + x + 0.5 * x * x)
    }

    /// Shifts of the same energy, at an even pace, until the plates reach their limit.
    ///
    /// n = ⌈ln(1 + (L − e)/(S − L))/(p/τ)⌉, S = (E/C)/(1 − exp(−p/τ)); none where S ≤ L
    ///
    /// * `plate_c` — now, just after a shift; `fluid_c`; `energy_j` — E, 0 or more; `pace_s` — p, above 0
    /// * returns [`ShiftsToLimit`]; 0 shifts where the limit is reached already
    /// * errors: [`Error::Missing`] for an unknown element, [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`]
    ///
    /// Source: lumped capacitance, geometric series (derived). Example: 40 K per shift, every 10 s, τ = 60 s: from 80 °C to
    /// 200 °C in four shifts.
    ///
    /// ```
    /// let pack = trainwright::live::LiveElement::of_plates(2.4, 500.0, 60.0, 200.0)?;
    /// let found = pack.shifts_to_limit(80.0, 80.0, 48_000.0, 10.0)?;
    /// assert_eq!(found.shifts, 4);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn shifts_to_limit(&self, plate_c: f32, fluid_c: f32, energy_j: f32, pace_s: f32) -> Result<ShiftsToLimit> {
        if !self.is_known() {
            return Err(Error::Missing {
                name: "heat_capacity_j_k",
                why: "the rise of the plates needs their heat capacity: mass of the steel plates times its specific heat",
            });
        }
        self.check()?;
        let fluid = between("fluid_c", fluid_c, -273.0, 1000.0)?;
        let now = between("plate_c", plate_c, -273.0, 2000.0)? - fluid;
        let rise = between("energy_j", energy_j, 0.0, f32::MAX)? / self.heat_capacity_j_k;
        let pace = above_zero("pace_s", pace_s)? / self.cooling_s;
        let limit = self.limit_c - fluid;
        let falls = -exp_m1(-pace);
        let settled = if rise > 0.0 { rise / falls } else { 0.0 };
        let shifts = if now >= limit {
            0
        } else if falls <= 0.0 {
            up(ceil((limit - now) / rise))
        } else if settled <= limit {
            ShiftsToLimit::NEVER
        } else {
            up(ceil(ln_1p((limit - now) / (settled - limit)) / pace))
        };
        Ok(ShiftsToLimit { rise_k: rise, settled_c: fluid + settled, shifts })
    }
}

/// A whole number of shifts; one beyond all counting is never reached.
fn up(shifts: f32) -> u32 {
    if shifts < 4e9 { shifts as u32 } else { ShiftsToLimit::NEVER }
}
