//! Screening: one pass over the telematics rows of a fleet, for the sums that say which trucks come first.
//!
//! A [`ScreenUnit`] is one truck in numbers; [`ScreenUnit::plan`] checks it. [`ScreenPlan::row`] answers one row and is the
//! text to read; [`ScreenBlock::screen`] does the same for many rows, with the same bits. A [`ScreenTally`] adds rows up
//! exactly. What happened between two rows is not known: a row stands for the time since the row before it, if that is
//! short; a gap is unknown, neither rest nor use.

mod block;
mod columns;
mod plan;
mod power;
mod row;
mod tally;
mod unit;

pub use block::{Ask, ScreenBlock, ScreenLane};
pub use columns::{
    BAD_VALUE_KINDS, BAD_VALUE_NAMES, BadValue, FLAG_BEYOND_SCALE, FLAG_DUPLICATE, FLAG_FIRST, FLAG_GAP, FLAG_HOT,
    FLAG_LITTLE_TORQUE, FLAG_LOW_MARGIN, FLAG_MISMATCH, FLAG_NO_GEAR, FLAG_NO_TORQUE, FLAG_OVER_INPUT,
    FLAG_OVER_OUTPUT, FLAG_REVERSED, FLAG_STALE, FLAG_STANDING, FLAG_UNKNOWN, FLAG_UNLOCKED, GEAR_NONE, GEAR_STANDING,
    GEAR_UNKNOWN, SCREEN_COLUMN_NAMES, SCREEN_COLUMNS, SCREEN_FLAG_NAMES, SCREEN_FLAGS, SCREEN_RANGES, ScreenRow,
};
pub use plan::{PlannedGear, PlannedHolding, ScreenPlan};
pub use power::screen_power;
pub use row::ScreenAnswer;
pub use tally::{ScreenExtreme, ScreenRatio, ScreenTally, ScreenTotals};
pub use unit::{
    MAX_SCREEN_GEARS, MAX_SCREEN_HOLDING, MAX_SCREEN_POINTS, ScreenConverter, ScreenDamage, ScreenFluid, ScreenGear,
    ScreenHolding, ScreenLimits, ScreenUnit,
};

use crate::card::{self, Card, symbol};

pub(super) const GEAR: Card = Card {
    id: "duty.gear_in_effect",
    purpose: "Gear in effect in a telematics row",
    equation: "r/(1 + ε) ≤ n_in/n_out ≤ r·(1 + ε), ended at √(r·r') where the bands of neighbors meet",
    symbols: &[
        symbol("n_in, n_out", "input_rpm, output_rpm", "1/min"),
        symbol("r, r'", "ratio of the gear and of the next one, without sign", "1"),
        symbol("ε", "ratio_tolerance", "1"),
    ],
    range: "output turning; without a commanded gear a forward gear goes before a reverse one",
    source: &card::DEFINITION,
    locator: "nearest ratio within a tolerance",
};

pub(super) const TORQUE: Card = Card {
    id: "duty.unlocked_torque_nm",
    purpose: "Input and output torque in a telematics row",
    equation: "T_in = T_e where |n_e − n_in| ≤ s, else TR(n_in/n_e)·T_e; T_out = T_in·r·η, in coast T_in·r/η",
    symbols: &[
        symbol("T_in, T_out", "input_torque_nm, output_torque_nm", "N·m"),
        symbol("T_e, n_e, n_in", "engine_torque_nm, engine_rpm, input_rpm", "N·m, 1/min, 1/min"),
        symbol("s", "locked_slip_rpm", "1/min"),
        symbol("TR", "torque_ratio of the converter, linear between its points; 1 in coast", "1"),
        symbol("r, η", "ratio and efficiency of the gear", "1"),
    ],
    range: "steady: inertia of engine and turbine is not counted; the engine torque is what the engine reports",
    source: &card::DEFINITION,
    locator: "equilibrium of converter and gear",
};

pub(super) const MARGIN: Card = Card {
    id: "duty.holds_nm",
    purpose: "Least margin among the closed packs in a telematics row",
    equation: "S = min over packs of T_cap/(|k|·|T_in|), T_cap by clutch.capacity at the row's pressure and drum speed",
    symbols: &[
        symbol("S", "least_margin", "1"),
        symbol("k", "share of the pack", "1"),
        symbol("T_in", "input_torque_nm", "N·m"),
    ],
    range: "|T_in| at least torque_floor_nm: below it a ratio of two small numbers says nothing. Not a rating",
    source: &card::DEFINITION,
    locator: "clutch.review row by row",
};

pub(super) const DAMAGE: Card = Card {
    id: "duty.damages",
    purpose: "Damage of a set by the rows of a truck",
    equation: "D = (c/N)·(k·T_r/T_ref)^m·Σ (Δt/60)·n_in·(|T_in|/T_r)^m",
    symbols: &[
        symbol("D", "damage", "1"),
        symbol("c", "contacts_per_turn of the set", "1"),
        symbol("N, T_ref", "reference_contacts, reference_nm", "1, N·m"),
        symbol("k", "sun_share of the set", "1"),
        symbol("T_r, T_in", "rated_input_nm, input_torque_nm", "N·m"),
        symbol("m", "slope", "1"),
        symbol("Δt, n_in", "duration_s, input_rpm", "s, 1/min"),
        symbol("Σ", "turns_at_rated, one sum for each gear", "1"),
    ],
    range: "drive and coast alike; it ranks trucks and sets, and promises no life",
    source: &card::DEFINITION,
    locator: "linear damage sum (Palmgren, Miner), one torque for each row",
};

pub(super) const LOSSES: Card = Card {
    id: "duty.converter_loss_kw",
    purpose: "Power lost in converter and gears in a telematics row",
    equation: "P_c = T_e·ω_e − T_in·ω_in, 0 at least; P_g = T_in·ω_in·(1 − η), in coast |T_in|·ω_in·(1/η − 1)",
    symbols: &[
        symbol("P_c, P_g", "converter_loss_kw, gear_loss_kw", "kW"),
        symbol("T_e, T_in", "engine_torque_nm, input_torque_nm", "N·m"),
        symbol("ω_e, ω_in", "engine_rpm, input_rpm times 2·π/60", "rad/s"),
        symbol("η", "efficiency of the gear", "1"),
    ],
    range: "pump and open packs only as far as the efficiency of the gear has them",
    source: &card::DEFINITION,
    locator: "power balance",
};

pub(super) const AGING: Card = Card {
    id: "duty.faster_aging",
    purpose: "Life of the fluid used by the rows of a truck",
    equation: "used = Σ Δt·2^((t − t_0)/h)/(3600·L)",
    symbols: &[
        symbol("used", "life_used", "1"),
        symbol("Δt, t", "duration_s, temp_c", "s, °C"),
        symbol("t_0, h, L", "reference_c, halving_k, life_h", "°C, K, h"),
    ],
    range: "for ranking: the rule of halving has no published uncertainty",
    source: &card::PRACTICE,
    locator: "life halved for every so many kelvins",
};

pub(super) const SATELLITE: Card = Card {
    id: "duty.satellite",
    purpose: "Speed by satellite against road speed and against the output shaft: a wrong tire or axle",
    equation: "q = v_gps/v, q' = v_gps·κ/n_out; mean and standard deviation over the rows",
    symbols: &[
        symbol("q, q'", "gps_over_speed, gps_over_output", "1"),
        symbol("v_gps, v", "gps_km_h, speed_km_h", "km/h"),
        symbol("n_out, κ", "output_rpm, output_rpm_per_km_h", "1/min, (1/min)/(km/h)"),
    ],
    range: "rows at or above gps_floor_km_h",
    source: &card::DEFINITION,
    locator: "ratio of speeds",
};
