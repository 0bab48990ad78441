//! One truck in numbers: what its unit offers, its limits and rules.

use super::plan::{PlannedGear, PlannedHolding, ScreenPlan, UNPLANNED_GEAR};
use crate::clutch::CapacityLine;
use crate::error::{Error, Result, finite, positive, within};
use crate::real::{abs, powf};
use crate::train::{MAX_ELEMENTS, MAX_SETS};

/// Most gears of a [`ScreenUnit`].
pub const MAX_SCREEN_GEARS: usize = 16;
/// Most closed packs of a gear.
pub const MAX_SCREEN_HOLDING: usize = 6;
/// Most points of a converter's torque ratio.
pub const MAX_SCREEN_POINTS: usize = 32;

/// A closed pack in a gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenHolding {
    /// Element of the train.
    pub element: u8,
    /// Torque on it per unit of input torque, without sign, above 0.
    pub share: f64,
    /// Speed of the drum that holds its apply oil per unit of input speed; 0 for a brake.
    pub turns: f64,
    /// Constants of its capacity.
    pub line: CapacityLine,
    /// Static friction coefficient, above 0 to 1.
    pub friction: f64,
}

impl ScreenHolding {
    /// No pack.
    pub const NONE: Self = Self {
        element: 0,
        share: 0.0,
        turns: 0.0,
        line: CapacityLine { piston_area_mm2: 0.0, head_n_per_rpm2: 0.0, held_back_n: 0.0, arm_mm: 0.0 },
        friction: 0.0,
    };
}

/// A gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenGear {
    /// Number that a commanded gear is compared with: forward from 1, reverse from -1 down.
    pub number: i8,
    /// Input speed over output speed, negative in reverse.
    pub ratio: f64,
    /// Efficiency, 0.5 to 1, under drive and in coast.
    pub efficiency: f64,
    /// Closed packs whose torque the train determines.
    pub holding: [ScreenHolding; MAX_SCREEN_HOLDING],
    /// Number of them.
    pub holding_count: u32,
    /// Tooth contacts of the most loaded tooth of each set per turn of the input.
    pub contacts_per_turn: [f64; MAX_SETS],
    /// Torque on the sun of each set per unit of input torque, without sign.
    pub sun_share: [f64; MAX_SETS],
}

impl ScreenGear {
    /// No gear.
    pub const NONE: Self = Self {
        number: 0,
        ratio: 0.0,
        efficiency: 0.0,
        holding: [ScreenHolding::NONE; MAX_SCREEN_HOLDING],
        holding_count: 0,
        contacts_per_turn: [0.0; MAX_SETS],
        sun_share: [0.0; MAX_SETS],
    };
}

/// Where a row changes its meaning. No defaults: `practice` holds usual values to be taken by name.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenLimits {
    /// A ratio belongs to a gear that is no farther away than this share of it, above 0 to 0.2.
    pub ratio_tolerance: f64,
    /// Difference of engine and input speed up to which the converter counts as locked, 1/min.
    pub locked_slip_rpm: f64,
    /// Time between two rows above which what happened is unknown, s, above 0 to 600.
    pub gap_s: f64,
    /// Output speed below which the truck stands, 1/min, above 0.
    pub standing_rpm: f64,
    /// Input torque below which no margin is formed, N·m, above 0.
    pub torque_floor_nm: f64,
    /// Fluid temperature above which a row is hot, °C.
    pub hot_c: f64,
    /// Capacity over demand below which a row is counted as low.
    pub least_margin: f64,
    /// Road speed from which the satellite is compared, km/h, at least 5.
    pub gps_floor_km_h: f64,
}

/// How damage is counted; slope 0 where it is not.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenDamage {
    /// Slope of the line of torque against contacts, 1 to 16; 0 counts no damage.
    pub slope: f64,
    /// Contacts that the reference torque gives.
    pub reference_contacts: f64,
    /// Torque on the sun of each set that gives them, N·m; 0 for a set that is not counted.
    pub reference_nm: [f64; MAX_SETS],
}

impl ScreenDamage {
    /// No damage is counted.
    pub const NONE: Self = Self { slope: 0.0, reference_contacts: 0.0, reference_nm: [0.0; MAX_SETS] };
}

/// How fluid ages: its life is halved by every so many kelvins; `life_h` 0 where it is not counted.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenFluid {
    /// Life at the reference temperature, h, at least 1; 0 counts no aging.
    pub life_h: f64,
    /// Reference temperature, °C, 60 to 200.
    pub reference_c: f64,
    /// Warming that halves the life, K, 8 to 50.
    pub halving_k: f64,
}

impl ScreenFluid {
    /// No aging is counted.
    pub const NONE: Self = Self { life_h: 0.0, reference_c: 0.0, halving_k: 0.0 };
}

/// Torque ratio of a converter against speed ratio, linear between its points; no points where it is not known.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenConverter {
    /// Input over engine speed, rising from 0 or above.
    pub speed_ratio: [f64; MAX_SCREEN_POINTS],
    /// Input over engine torque.
    pub torque_ratio: [f64; MAX_SCREEN_POINTS],
    /// Number of points; 0 where the converter is not known.
    pub count: u32,
}

impl ScreenConverter {
    /// A converter that is not known.
    pub const NONE: Self =
        Self { speed_ratio: [0.0; MAX_SCREEN_POINTS], torque_ratio: [0.0; MAX_SCREEN_POINTS], count: 0 };

    /// The converter with these points.
    pub fn of_points(speed_ratio: &[f64], torque_ratio: &[f64]) -> Result<Self> {
        let count = speed_ratio.len();
        if !(2..=MAX_SCREEN_POINTS).contains(&count) || torque_ratio.len() != count {
            return Err(Error::Count {
                name: "speed_ratio, torque_ratio",
                count: count as u32,
                low: 2,
                high: MAX_SCREEN_POINTS as u32,
            });
        }
        let mut converter = Self { count: count as u32, ..Self::NONE };
        let places = converter.speed_ratio.iter_mut().zip(&mut converter.torque_ratio);
        for ((to_speed, to_torque), (&speed, &torque)) in places.zip(speed_ratio.iter().zip(torque_ratio)) {
            *to_speed = speed;
            *to_torque = torque;
        }
        Ok(converter)
    }
}

/// One truck: gears, ratings, limits, rules. [`ScreenUnit::plan`] checks it and reduces it for the rows.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenUnit {
    /// Gears; the number of those in use follows.
    pub gears: [ScreenGear; MAX_SCREEN_GEARS],
    /// Number of gears.
    pub gear_count: u32,
    /// Rated input (turbine) torque, N·m.
    pub rated_input_nm: f64,
    /// Rated output torque, N·m.
    pub rated_output_nm: f64,
    /// Limits.
    pub limits: ScreenLimits,
    /// Damage rule.
    pub damage: ScreenDamage,
    /// Aging rule of the fluid.
    pub fluid: ScreenFluid,
    /// Converter.
    pub converter: ScreenConverter,
    /// Output speed per road speed with the axle and tire that are fitted, (1/min)/(km/h); 0 where it is not known.
    pub output_rpm_per_km_h: f64,
}

/// Greatest power of (input torque over rated): beyond it, a row is not damage but a fault of the data.
const GREATEST_POWER: f64 = 65_536.0;

impl ScreenLimits {
    fn checked(self) -> Result<Self> {
        within("ratio_tolerance", positive("ratio_tolerance", self.ratio_tolerance)?, 0.0, 0.2)?;
        within("locked_slip_rpm", self.locked_slip_rpm, 0.0, 1000.0)?;
        within("gap_s", positive("gap_s", self.gap_s)?, 0.0, 600.0)?;
        within("standing_rpm", positive("standing_rpm", self.standing_rpm)?, 0.0, 1000.0)?;
        within("torque_floor_nm", positive("torque_floor_nm", self.torque_floor_nm)?, 0.0, 1e4)?;
        within("hot_c", self.hot_c, -60.0, 250.0)?;
        within("least_margin", self.least_margin, 0.0, 100.0)?;
        within("gps_floor_km_h", self.gps_floor_km_h, 5.0, 400.0)?;
        Ok(self)
    }
}

impl ScreenDamage {
    fn checked(self) -> Result<Self> {
        if abs(self.slope) > 0.0 {
            within("slope", self.slope, 1.0, 16.0)?;
            within("reference_contacts", positive("reference_contacts", self.reference_contacts)?, 0.0, 1e15)?;
            self.reference_nm.into_iter().try_for_each(|nm| within("reference_nm", nm, 0.0, 1e9).map(|_| ()))?;
        }
        Ok(self)
    }
}

impl ScreenFluid {
    fn checked(self) -> Result<Self> {
        if abs(self.life_h) > 0.0 {
            within("life_h", self.life_h, 1.0, 1e7)?;
            within("reference_c", self.reference_c, 60.0, 200.0)?;
            within("halving_k", self.halving_k, 8.0, 50.0)?;
        }
        Ok(self)
    }
}

impl ScreenHolding {
    fn planned(self) -> Result<PlannedHolding> {
        if usize::from(self.element) >= MAX_ELEMENTS {
            let high = MAX_ELEMENTS as f64 - 1.0;
            return Err(Error::OutOfRange { name: "element", value: self.element.into(), low: 0.0, high });
        }
        let share = within("share", positive("share", self.share)?, 0.0, 1e3)?;
        let turns = within("turns", self.turns, -1e3, 1e3)?;
        let friction = within("friction", positive("friction", self.friction)?, 0.0, 1.0)?;
        let line = self.line;
        within("line.piston_area_mm2", line.piston_area_mm2, 0.0, 1e7)?;
        within("line.head_n_per_rpm2", line.head_n_per_rpm2, -1.0, 1.0)?;
        within("line.held_back_n", line.held_back_n, -1e7, 1e7)?;
        within("line.arm_mm", line.arm_mm, 0.0, 1e6)?;
        let per_n = friction * line.arm_mm * 1e-3 / share;
        Ok(PlannedHolding {
            element: self.element,
            share,
            per_kpa_nm: per_n * 1e-3 * line.piston_area_mm2,
            per_rpm2_nm: per_n * line.head_n_per_rpm2 * (turns * turns),
            held_back_nm: per_n * line.held_back_n,
        })
    }
}

impl ScreenGear {
    fn planned(&self, rated_input_nm: f64, damage: &ScreenDamage) -> Result<PlannedGear> {
        let ratio = within("ratio", self.ratio, -100.0, 100.0)?;
        let size = within("ratio without its sign", abs(ratio), 0.05, 100.0)?;
        let efficiency = within("efficiency", self.efficiency, 0.5, 1.0)?;
        if self.number == 0 || (self.number > 0) != (ratio > 0.0) || !(-16..=16).contains(&self.number) {
            return Err(Error::Inconsistent {
                name: "number",
                why: "a forward gear (ratio above 0) has a number from 1 to 16, a reverse gear one from -1 to -16",
            });
        }
        if self.holding_count as usize > MAX_SCREEN_HOLDING {
            let high = MAX_SCREEN_HOLDING as u32;
            return Err(Error::Count { name: "holding", count: self.holding_count, low: 0, high });
        }
        let mut planned = PlannedGear {
            number: self.number.into(),
            direction: if ratio > 0.0 { 1.0 } else { -1.0 },
            band_low: size,
            band_high: size,
            drive_factor: ratio * efficiency,
            coast_factor: ratio / efficiency,
            drive_loss: 1.0 - efficiency,
            coast_loss: 1.0 / efficiency - 1.0,
            holding_count: self.holding_count,
            ..UNPLANNED_GEAR
        };
        for (to, from) in planned.holding.iter_mut().zip(&self.holding).take(self.holding_count as usize) {
            *to = from.planned()?;
        }
        let sets = self.contacts_per_turn.iter().zip(&self.sun_share).zip(&damage.reference_nm);
        for (to, ((&contacts, &share), &reference_nm)) in planned.damage_per_turn.iter_mut().zip(sets) {
            within("contacts_per_turn", contacts, 0.0, 1e4)?;
            within("sun_share", share, 0.0, 1e3)?;
            if damage.slope > 0.0 && reference_nm > 0.0 {
                let over = powf(share * rated_input_nm / reference_nm, damage.slope);
                *to = finite("damage_per_turn", contacts / damage.reference_contacts * over)?;
            }
        }
        Ok(planned)
    }
}

impl ScreenUnit {
    /// Nothing but limits: a unit to fill in.
    #[must_use]
    pub const fn new(rated_input_nm: f64, rated_output_nm: f64, limits: ScreenLimits) -> Self {
        Self {
            gears: [ScreenGear::NONE; MAX_SCREEN_GEARS],
            gear_count: 0,
            rated_input_nm,
            rated_output_nm,
            limits,
            damage: ScreenDamage::NONE,
            fluid: ScreenFluid::NONE,
            converter: ScreenConverter::NONE,
            output_rpm_per_km_h: 0.0,
        }
    }

    /// Adds a gear.
    pub fn add_gear(&mut self, gear: ScreenGear) -> Result<()> {
        let Some(place) = self.gears.get_mut(self.gear_count as usize) else {
            let high = MAX_SCREEN_GEARS as u32;
            return Err(Error::Count { name: "gears", count: self.gear_count + 1, low: 1, high });
        };
        *place = gear;
        self.gear_count += 1;
        Ok(())
    }

    /// Checks the unit and reduces it to the constants of a row.
    ///
    /// * returns the [`ScreenPlan`]
    /// * errors: for every number outside its range; [`Error::Inconsistent`] for a gear whose ratio another gear of its
    ///   direction has, or whose number has another sign than its ratio
    pub fn plan(&self) -> Result<ScreenPlan> {
        if !(1..=MAX_SCREEN_GEARS as u32).contains(&self.gear_count) {
            let high = MAX_SCREEN_GEARS as u32;
            return Err(Error::Count { name: "gears", count: self.gear_count, low: 1, high });
        }
        let limits = self.limits.checked()?;
        let damage = self.damage.checked()?;
        let fluid = self.fluid.checked()?;
        let rated_input_nm = within("rated_input_nm", self.rated_input_nm, 1.0, 1e5)?;
        let rated_output_nm = within("rated_output_nm", self.rated_output_nm, 1.0, 1e6)?;
        let mut plan = ScreenPlan {
            gears: [UNPLANNED_GEAR; MAX_SCREEN_GEARS],
            gear_count: self.gear_count,
            rated_input_nm,
            rated_output_nm,
            per_input_nm: 1.0 / rated_input_nm,
            per_output_nm: 1.0 / rated_output_nm,
            limits,
            slope: damage.slope,
            greatest_use: if damage.slope > 0.0 { powf(GREATEST_POWER, 1.0 / damage.slope) } else { f64::INFINITY },
            fluid,
            per_halving_k: if fluid.life_h > 0.0 { 1.0 / fluid.halving_k } else { 0.0 },
            point_speed: [f64::INFINITY; MAX_SCREEN_POINTS],
            point_torque: [0.0; MAX_SCREEN_POINTS],
            point_slope: [0.0; MAX_SCREEN_POINTS],
            point_count: 0,
            output_rpm_per_km_h: within("output_rpm_per_km_h", self.output_rpm_per_km_h, 0.0, 1e4)?,
        };
        for (to, from) in plan.gears.iter_mut().zip(&self.gears).take(self.gear_count as usize) {
            *to = from.planned(rated_input_nm, &damage)?;
        }
        plan.band_gears()?;
        plan.take_converter(&self.converter)?;
        Ok(plan)
    }
}
