//! One row: the rules of the pass in the order in which they hold.

use core::f64::consts::PI;

use super::block::Ask;
use super::columns::{
    BUS, COMMANDED, ENGINE, FLAG_BEYOND_SCALE, FLAG_DUPLICATE, FLAG_FIRST, FLAG_GAP, FLAG_HOT, FLAG_LITTLE_TORQUE,
    FLAG_LOW_MARGIN, FLAG_MISMATCH, FLAG_NO_GEAR, FLAG_NO_TORQUE, FLAG_OVER_INPUT, FLAG_OVER_OUTPUT, FLAG_REVERSED,
    FLAG_STALE, FLAG_STANDING, FLAG_UNKNOWN, FLAG_UNLOCKED, GEAR_NONE, GEAR_STANDING, GEAR_UNKNOWN, GPS, INPUT,
    LEAST_BUS_COLUMNS, NO_DURATION, NOT_USED, OUTPUT, PRESSURE, SCREEN_COLUMNS, SCREEN_RANGES, SPEED, ScreenRow, TEMP,
    TIME, TORQUE, is_good,
};
use super::plan::{PlannedGear, PlannedHolding, ScreenPlan};
use super::power::exp2;
use crate::real::abs;
use crate::train::{MAX_ELEMENTS, MAX_SETS};

/// What one row says. NaN is "not formed".
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenAnswer {
    /// Flags; their names are `SCREEN_FLAG_NAMES`.
    pub flags: u32,
    /// Place of the gear in effect among the gears of the unit; -1 none, -2 standing, -3 not to be told or not used.
    pub gear: i8,
    /// Element with the least margin; -1 where none was formed.
    pub weakest: i8,
    /// Time that the row stands for, s: since the row before it; 0 where that is unknown.
    pub duration_s: f64,
    /// Time of a gap, s: since the row before it, and nobody knows what happened.
    pub gap_s: f64,
    /// Torque at the input of the transmission, N·m.
    pub input_torque_nm: f64,
    /// Torque at its output, N·m, negative in reverse under drive.
    pub output_torque_nm: f64,
    /// Input torque over rated input torque, without sign.
    pub input_share: f64,
    /// Output torque over rated output torque, without sign.
    pub output_share: f64,
    /// The greater of the two.
    pub greatest_share: f64,
    /// Least of capacity over demand among the closed packs. Not a rating.
    pub least_margin: f64,
    /// Turns of the input at the rated torque that do the same damage.
    pub turns_at_rated: f64,
    /// Power that enters at the input, kW; negative in coast.
    pub input_kw: f64,
    /// Power lost in the converter, kW.
    pub converter_loss_kw: f64,
    /// Power lost in the gears, kW.
    pub gear_loss_kw: f64,
    /// Time at the reference temperature that ages the fluid the same, s.
    pub aged_s: f64,
    /// Speed by satellite over road speed.
    pub gps_over_speed: f64,
    /// Speed by satellite over that of the output shaft through axle and tire.
    pub gps_over_output: f64,
}

impl ScreenAnswer {
    /// Nothing formed.
    pub const NONE: Self = Self {
        flags: 0,
        gear: GEAR_UNKNOWN,
        weakest: -1,
        duration_s: 0.0,
        gap_s: 0.0,
        input_torque_nm: f64::NAN,
        output_torque_nm: f64::NAN,
        input_share: f64::NAN,
        output_share: f64::NAN,
        greatest_share: f64::NAN,
        least_margin: f64::NAN,
        turns_at_rated: 0.0,
        input_kw: f64::NAN,
        converter_loss_kw: f64::NAN,
        gear_loss_kw: f64::NAN,
        aged_s: 0.0,
        gps_over_speed: f64::NAN,
        gps_over_output: f64::NAN,
    };
}

/// Flags that only rows with a torque have.
const TORQUE_FLAGS: u32 = FLAG_UNLOCKED
    | FLAG_NO_TORQUE
    | FLAG_LITTLE_TORQUE
    | FLAG_OVER_INPUT
    | FLAG_OVER_OUTPUT
    | FLAG_LOW_MARGIN
    | FLAG_BEYOND_SCALE;

impl ScreenAnswer {
    /// The answer without what was not asked for, of [`Ask`].
    #[must_use]
    pub fn only(&self, asked: u32) -> Self {
        let mut answer = *self;
        let asked = Ask::complete(asked);
        if asked & Ask::TORQUE == 0 {
            answer = Self {
                flags: answer.flags & !TORQUE_FLAGS,
                input_torque_nm: f64::NAN,
                output_torque_nm: f64::NAN,
                input_share: f64::NAN,
                output_share: f64::NAN,
                greatest_share: f64::NAN,
                ..answer
            };
        }
        if asked & Ask::MARGIN == 0 {
            answer = Self { flags: answer.flags & !FLAG_LOW_MARGIN, least_margin: f64::NAN, ..answer };
        }
        if asked & Ask::WEAKEST == 0 {
            answer.weakest = -1;
        }
        if asked & Ask::DAMAGE == 0 {
            answer.turns_at_rated = 0.0;
        }
        if asked & Ask::HEAT == 0 {
            answer = Self { input_kw: f64::NAN, converter_loss_kw: f64::NAN, gear_loss_kw: f64::NAN, ..answer };
        }
        if asked & Ask::LIFE == 0 {
            answer = Self { flags: answer.flags & !FLAG_HOT, aged_s: 0.0, ..answer };
        }
        if asked & Ask::GPS == 0 {
            answer = Self { gps_over_speed: f64::NAN, gps_over_output: f64::NAN, ..answer };
        }
        answer
    }
}

/// kW per N·m and 1/min.
const KW_PER_NM_RPM: f64 = PI / 30.0 * 1e-3;

#[inline(always)]
pub(super) fn bit(column: usize) -> u32 {
    1 << column
}

/// Whether the time between two rows is a regular duration, and that; 0 where it is not.
#[inline(always)]
pub(super) fn regular_duration(time_s: f64, before_s: f64, gap_limit_s: f64) -> (bool, f64) {
    let (low, high) = TIME_RANGE;
    let dt = time_s - before_s;
    // The later of two times is not below the range where the earlier is not, and the other way around.
    let regular = (dt > 0.0) & (dt <= gap_limit_s) & (before_s >= low) & (time_s <= high);
    (regular, if regular { dt } else { 0.0 })
}

/// Duration and gap: (flags, duration, gap).
#[inline(always)]
pub(super) fn durations(time_s: f64, before_s: f64, gap_limit_s: f64) -> (u32, f64, f64) {
    let (low, high) = TIME_RANGE;
    let good = (time_s >= low) & (time_s <= high);
    let good_before = (before_s >= low) & (before_s <= high);
    let dt = time_s - before_s;
    let flags = if dt > gap_limit_s { FLAG_GAP } else { 0 };
    let flags = if dt < 0.0 { FLAG_REVERSED } else { flags };
    let flags = if dt.to_bits() << 1 == 0 { FLAG_DUPLICATE } else { flags };
    let flags = if good_before { flags } else { FLAG_FIRST };
    let flags = if good { flags } else { bit(TIME) };
    let (_, duration_s) = regular_duration(time_s, before_s, gap_limit_s);
    (flags, duration_s, if flags == FLAG_GAP { dt } else { 0.0 })
}

const TIME_RANGE: (f64, f64) = {
    let [time, ..] = SCREEN_RANGES;
    time
};

/// Whether the ratio of the speeds is in a band.
#[inline(always)]
pub(super) fn in_band(low: f64, high: f64, ratio: f64) -> bool {
    (ratio >= low) & (ratio <= high)
}

/// Whether a gear of a direction (1 forward, -1 reverse) may be in effect where this gear is commanded; 0 for none known.
#[inline(always)]
pub(super) fn may_be(direction: f64, commanded: f64) -> bool {
    commanded * direction >= 0.0
}

/// Part of a converter's line of torque ratios: speed ratio from which it goes, torque ratio there, slope.
pub(super) type Section = (f64, f64, f64);

/// The section at a speed ratio, of the one before and the next.
#[inline(always)]
pub(super) fn reached(before: Section, speed_ratio: f64, next: Section) -> Section {
    let reached = speed_ratio >= next.0;
    let take = |before: f64, next: f64| if reached { next } else { before };
    (take(before.0, next.0), take(before.1, next.1), take(before.2, next.2))
}

/// Input torque while the converter is not locked, in a section of its line.
#[inline(always)]
pub(super) fn multiplied_nm(section: Section, engine_rpm: f64, input_rpm: f64, torque_nm: f64) -> f64 {
    let (speed_ratio, torque_ratio, slope) = section;
    let multiplied = torque_nm * (torque_ratio + (input_rpm / engine_rpm - speed_ratio) * slope);
    if (torque_nm > 0.0) & (engine_rpm > input_rpm) { multiplied } else { torque_nm }
}

/// Input torque while the converter is not locked; NaN where the converter is not known.
fn unlocked_torque_nm(plan: &ScreenPlan, engine_rpm: f64, input_rpm: f64, torque_nm: f64) -> f64 {
    if plan.point_count == 0 {
        return f64::NAN;
    }
    let speed_ratio = input_rpm / engine_rpm;
    let points = plan.points_by_four().flatten();
    let section = points.fold(plan.first_section(), |section, point| reached(section, speed_ratio, point));
    multiplied_nm(section, engine_rpm, input_rpm, torque_nm)
}

/// Output torque.
#[inline(always)]
pub(super) fn output_torque_nm(gear: &PlannedGear, input_torque_nm: f64) -> f64 {
    input_torque_nm * if input_torque_nm >= 0.0 { gear.drive_factor } else { gear.coast_factor }
}

/// Input torque at which a pack just holds; below 0 where what it is pressed with does not even close it.
#[inline(always)]
pub(super) fn holds_nm(holding: &PlannedHolding, pressure_kpa: f64, input_rpm: f64) -> f64 {
    holding.per_kpa_nm * pressure_kpa + holding.per_rpm2_nm * (input_rpm * input_rpm) - holding.held_back_nm
}

impl PlannedGear {
    /// Input torque at which the first of the closed packs slips, and its element; the first of those that are not even closed.
    pub(super) fn weakest(&self, pressure_kpa: f64, input_rpm: f64) -> (f64, i8) {
        let closed = self.holding.iter().take(self.holding_count as usize);
        closed.fold((f64::INFINITY, -1), |(least_nm, element), holding| {
            let held_nm = closed_nm(holds_nm(holding, pressure_kpa, input_rpm));
            if held_nm < least_nm { (held_nm, holding.element.cast_signed()) } else { (least_nm, element) }
        })
    }
}

/// What a pack holds: nothing where it is not even closed.
#[inline(always)]
fn closed_nm(held_nm: f64) -> f64 {
    if held_nm < 0.0 { 0.0 } else { held_nm }
}

/// Capacity over demand.
#[inline(always)]
pub(super) fn margin(held_nm: f64, size_nm: f64) -> f64 {
    closed_nm(held_nm) / size_nm
}

/// Turns of the input at the rated torque that do the damage of a row: turns × severity.
#[inline(always)]
pub(super) fn turns(duration_s: f64, input_rpm: f64) -> f64 {
    duration_s * (1.0 / 60.0) * input_rpm
}

/// Power, kW.
#[inline(always)]
pub(super) fn power_kw(torque_nm: f64, speed_rpm: f64) -> f64 {
    torque_nm * speed_rpm * KW_PER_NM_RPM
}

/// Power lost in the converter, kW.
#[inline(always)]
pub(super) fn converter_loss_kw(engine_nm: f64, engine_rpm: f64, input_kw: f64) -> f64 {
    let loss = power_kw(engine_nm, engine_rpm) - input_kw;
    if loss < 0.0 { 0.0 } else { loss }
}

/// Power lost in the gears, kW.
#[inline(always)]
pub(super) fn gear_loss_kw(gear: &PlannedGear, input_torque_nm: f64, input_kw: f64) -> f64 {
    abs(input_kw) * if input_torque_nm >= 0.0 { gear.drive_loss } else { gear.coast_loss }
}

/// How much faster than at its reference temperature the fluid ages.
#[inline(always)]
pub(super) fn faster_aging(plan: &ScreenPlan, temp_c: f64) -> f64 {
    exp2((temp_c - plan.fluid.reference_c) * plan.per_halving_k)
}

/// Flags of the columns that are given and cannot be used.
pub(super) fn bad_columns(given: u32, values: &[f64; SCREEN_COLUMNS]) -> u32 {
    let columns = values.iter().zip(&SCREEN_RANGES).enumerate();
    columns.fold(0, |flags, (column, (&value, &(low, high)))| {
        let bad = given & bit(column) != 0 && !is_good(column, value, low, high);
        if bad { flags | bit(column) } else { flags }
    })
}

/// Whether every given bus value repeats the row before, bit by bit.
fn repeats(given: u32, values: &[f64; SCREEN_COLUMNS], before: &[f64; SCREEN_COLUMNS]) -> bool {
    let pairs = values.iter().zip(before).enumerate();
    let mut bus = pairs.filter(|(column, _)| BUS.contains(column) && given & bit(*column) != 0);
    given_bus_columns(given) >= LEAST_BUS_COLUMNS && bus.all(|(_, (now, then))| now.to_bits() == then.to_bits())
}

/// Number of bus columns that are given.
pub(super) fn given_bus_columns(given: u32) -> u32 {
    (given & BUS_MASK).count_ones()
}

const BUS_MASK: u32 = 0b1111_1110;

impl ScreenPlan {
    /// One row of one truck.
    ///
    /// The rules, each for what the ones before have left: 1. time and duration; 2. stale values; 3. standing, gear in
    /// effect or none; 4. locked or not, and the input torque; 5. output torque and shares of the ratings; 6. margins;
    /// 7. damage; 8. losses; 9. aging; 10. speed by satellite. The cards have the formulas.
    ///
    /// * `given` — mask of the columns that the data has; one that it has not is no bad value
    /// * `row` — the row; `previous` — the row of the same truck before it, good or bad
    /// * returns [`ScreenAnswer`]; what cannot be formed is NaN, and its flags say why
    pub fn row(&self, given: u32, row: &ScreenRow, previous: Option<&ScreenRow>) -> ScreenAnswer {
        let mut answer = ScreenAnswer::NONE;
        let values = row.values();
        let bad = bad_columns(given, &values);
        let before_s = previous.map_or(f64::NAN, |previous| previous.time_s);
        let (timing, duration_s, gap_s) = durations(row.time_s, before_s, self.limits.gap_s);
        answer.flags = bad | timing;
        answer.duration_s = duration_s;
        answer.gap_s = gap_s;
        let good = |column: usize| given & bit(column) != 0 && bad & bit(column) == 0;
        let moves = good(OUTPUT) && row.output_rpm >= self.limits.standing_rpm;
        let repeated = previous.is_some_and(|previous| repeats(given, &values, &previous.values()));
        if timing & NO_DURATION == 0 && moves && repeated {
            answer.flags |= FLAG_STALE;
        }
        if answer.flags & NOT_USED == 0 {
            self.gear_of(row, good, &mut answer);
            self.torque_of(row, good, &mut answer);
            self.rest_of(row, good, &mut answer);
        }
        answer
    }

    fn gear_of(&self, row: &ScreenRow, good: impl Fn(usize) -> bool, answer: &mut ScreenAnswer) {
        if good(OUTPUT) && row.output_rpm < self.limits.standing_rpm {
            answer.gear = GEAR_STANDING;
            answer.flags |= FLAG_STANDING;
        } else if good(OUTPUT) && good(INPUT) {
            let direction = if good(COMMANDED) { row.gear } else { 0.0 };
            answer.gear = self.gear_in_effect(row.input_rpm, row.output_rpm, direction);
            match self.gear_at(answer.gear) {
                None => answer.flags |= FLAG_NO_GEAR,
                Some(gear) if good(COMMANDED) && abs(row.gear - gear.number) > 0.0 => {
                    answer.flags |= FLAG_MISMATCH;
                }
                Some(_) => {}
            }
        } else {
            answer.flags |= FLAG_UNKNOWN;
        }
    }

    /// Place of the gear in effect; a forward gear goes before a reverse one.
    fn gear_in_effect(&self, input_rpm: f64, output_rpm: f64, direction: f64) -> i8 {
        let mut place = GEAR_NONE;
        for wanted in [-1.0, 1.0] {
            for (at, gear) in (0_i8..).zip(self.gears.iter().take(self.gear_count as usize)) {
                let is = in_band(gear.band_low, gear.band_high, input_rpm / output_rpm);
                if gear.direction * wanted > 0.0 && is && may_be(gear.direction, direction) {
                    place = at;
                }
            }
        }
        place
    }

    fn torque_of(&self, row: &ScreenRow, good: impl Fn(usize) -> bool, answer: &mut ScreenAnswer) {
        let speeds = good(ENGINE) && good(INPUT);
        let unlocked = speeds && abs(row.engine_rpm - row.input_rpm) > self.limits.locked_slip_rpm;
        if unlocked {
            answer.flags |= FLAG_UNLOCKED;
        }
        let torque_nm = match speeds && good(TORQUE) {
            false => f64::NAN,
            true if unlocked => unlocked_torque_nm(self, row.engine_rpm, row.input_rpm, row.engine_torque_nm),
            true => row.engine_torque_nm,
        };
        if torque_nm.is_nan() {
            answer.flags |= FLAG_NO_TORQUE;
            return;
        }
        let size_nm = abs(torque_nm);
        answer.input_torque_nm = torque_nm;
        answer.input_share = self.input_share(size_nm);
        answer.greatest_share = answer.input_share;
        answer.input_kw = power_kw(torque_nm, row.input_rpm);
        answer.converter_loss_kw = converter_loss_kw(row.engine_torque_nm, row.engine_rpm, answer.input_kw);
        answer.flags |= if size_nm < self.limits.torque_floor_nm { FLAG_LITTLE_TORQUE } else { 0 };
        answer.flags |= if size_nm > self.rated_input_nm { FLAG_OVER_INPUT } else { 0 };
        answer.flags |= if answer.input_share > self.greatest_use { FLAG_BEYOND_SCALE } else { 0 };
        if let Some(gear) = self.gear_at(answer.gear) {
            self.in_gear(row, gear, good(PRESSURE), answer);
        }
    }

    fn in_gear(&self, row: &ScreenRow, gear: &PlannedGear, pressure: bool, answer: &mut ScreenAnswer) {
        let size_nm = abs(answer.input_torque_nm);
        answer.output_torque_nm = output_torque_nm(gear, answer.input_torque_nm);
        answer.output_share = self.output_share(abs(answer.output_torque_nm));
        answer.greatest_share =
            if answer.output_share > answer.input_share { answer.output_share } else { answer.input_share };
        answer.flags |= if abs(answer.output_torque_nm) > self.rated_output_nm { FLAG_OVER_OUTPUT } else { 0 };
        answer.gear_loss_kw = gear_loss_kw(gear, answer.input_torque_nm, answer.input_kw);
        if pressure && gear.holding_count > 0 && answer.flags & FLAG_LITTLE_TORQUE == 0 {
            let (least_nm, weakest) = gear.weakest(row.pressure_kpa, row.input_rpm);
            answer.weakest = weakest;
            answer.least_margin = margin(least_nm, size_nm);
            answer.flags |= if answer.least_margin < self.limits.least_margin { FLAG_LOW_MARGIN } else { 0 };
        }
        if self.slope > 0.0 && answer.flags & FLAG_BEYOND_SCALE == 0 {
            answer.turns_at_rated = turns(answer.duration_s, row.input_rpm) * self.severity(answer.input_share);
        }
    }

    fn rest_of(&self, row: &ScreenRow, good: impl Fn(usize) -> bool, answer: &mut ScreenAnswer) {
        if good(TEMP) {
            answer.flags |= if row.temp_c > self.limits.hot_c { FLAG_HOT } else { 0 };
            if self.fluid.life_h > 0.0 {
                answer.aged_s = answer.duration_s * faster_aging(self, row.temp_c);
            }
        }
        let floor_km_h = self.limits.gps_floor_km_h;
        if good(GPS) && good(SPEED) && row.speed_km_h >= floor_km_h {
            answer.gps_over_speed = row.gps_km_h / row.speed_km_h;
        }
        let per_km_h = self.output_rpm_per_km_h;
        if good(GPS) && good(OUTPUT) && per_km_h > 0.0 && row.output_rpm >= floor_km_h * per_km_h {
            answer.gps_over_output = row.gps_km_h * per_km_h / row.output_rpm;
        }
    }

    /// Margin and demand of every element in a row that was answered; NaN where not formed.
    pub fn elements(&self, row: &ScreenRow, answer: &ScreenAnswer) -> ([f64; MAX_ELEMENTS], [f64; MAX_ELEMENTS]) {
        let (mut margins, mut demands_nm) = ([f64::NAN; MAX_ELEMENTS], [f64::NAN; MAX_ELEMENTS]);
        let size_nm = abs(answer.input_torque_nm);
        if let Some(gear) = self.gear_at(answer.gear) {
            for holding in gear.holding.iter().take(gear.holding_count as usize) {
                let place = usize::from(holding.element);
                if let Some(demand_nm) = demands_nm.get_mut(place) {
                    *demand_nm = holding.share * size_nm;
                }
                if let Some(to) = margins.get_mut(place).filter(|_| !answer.least_margin.is_nan()) {
                    *to = margin(holds_nm(holding, row.pressure_kpa, row.input_rpm), size_nm);
                }
            }
        }
        (margins, demands_nm)
    }

    /// Damage of every set in a row that was answered.
    pub fn damages(&self, answer: &ScreenAnswer) -> [f64; MAX_SETS] {
        self.damage_per_turn(answer.gear).map(|per_turn| per_turn * answer.turns_at_rated)
    }
}
