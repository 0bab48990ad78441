//! A unit in numbers, checked and reduced to what a sample needs.

use super::event::{GEAR_IN_NONE, NO_LIVE_ELEMENT};
use super::heat::LiveElement;
use super::sensor::SpeedSensor;
use super::speed::PlannedSensor;
use super::trend::Fading;
use super::{MAX_LIVE_ELEMENTS, MAX_LIVE_GEARS, MAX_LIVE_SUSPECTS};
use crate::error::{Error, Result};

/// An element that could be the one that slips in a gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveSuspect {
    /// Number of the element.
    pub element: u8,
    /// Slip of the element per slip at the input, signed: element slip = this · (n_in − i·n_out).
    pub slip_per_input_slip: f32,
}

impl LiveSuspect {
    /// Nothing, to fill a list with.
    pub const NONE: Self = Self { element: NO_LIVE_ELEMENT, slip_per_input_slip: 0.0 };
}

/// One gear: its ratio, and the elements that hold it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveGear {
    /// Number by which it is commanded: forward from 1, reverse from −1.
    pub number: i8,
    /// Input speed / output speed, negative for reverse.
    pub ratio: f32,
    /// The closed elements; a gear that slips does so in one of them.
    pub suspects: [LiveSuspect; MAX_LIVE_SUSPECTS],
    /// Number of suspects.
    pub suspect_count: u8,
}

impl LiveGear {
    /// Nothing, to fill a list with.
    pub const NONE: Self =
        Self { number: 0, ratio: 0.0, suspects: [LiveSuspect::NONE; MAX_LIVE_SUSPECTS], suspect_count: 0 };

    /// A gear without suspects.
    #[must_use]
    pub const fn new(number: i8, ratio: f32) -> Self {
        Self { number, ratio, ..Self::NONE }
    }
}

/// What counts as standing, as slip, as flare. There are no defaults: usual values are in [`crate::practice`].
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveLimits {
    /// Output speed below which the unit counts as standing and no ratio is formed, 1/min.
    pub standing_rpm: f32,
    /// Smallest slip at the input that is to be found, 1/min.
    pub slip_rpm: f32,
    /// Average time in gear to one false slip alarm, s: the setting of the sequential test.
    pub run_length_s: f32,
    /// Greatest difference in age of the two speeds, s: acceleration times this is no evidence.
    pub skew_s: f32,
    /// A window of the ratio closes at this relative standard uncertainty: its length follows gear, speed and sensors.
    pub ratio_u_rel: f32,
    /// Time after a shift before slip is judged, s.
    pub settle_s: f32,
    /// Time after a command by which the gear must be reached, s.
    pub follow_s: f32,
    /// Flare above which an event is raised, 1/min.
    pub flare_rpm: f32,
    /// Dip of the output during a shift above which an event is raised, over the output speed.
    pub dip_share: f32,
    /// Slip of the lock-up clutch below which it counts as locked, 1/min.
    pub lockup_slip_rpm: f32,
    /// Fluid temperature below which a shift counts as cold, °C.
    pub cold_c: f32,
    /// Fluid temperature above which an event is raised, °C.
    pub hot_c: f32,
    /// Driving time with the same temperature below `cold_c` after which its sensor counts as stuck, s.
    pub warm_up_s: f32,
}

/// A unit to watch: what [`LiveUnit::plan`] checks and reduces.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveUnit {
    /// Gears in any order; events name them by their place here. Gears with the same ratio (1 and 1 with engine braking)
    /// are one gear here.
    pub gears: [LiveGear; MAX_LIVE_GEARS],
    /// Number of gears.
    pub gear_count: u8,
    /// Elements by number, as the suspects name them.
    pub elements: [LiveElement; MAX_LIVE_ELEMENTS],
    /// Number of elements.
    pub element_count: u8,
    /// Sensor of the input speed.
    pub input: SpeedSensor,
    /// Sensor of the output speed.
    pub output: SpeedSensor,
    /// Sensor of the engine speed.
    pub engine: SpeedSensor,
    /// What counts as what.
    pub limits: LiveLimits,
    /// Nominal time between two samples, s.
    pub sample_s: f32,
}

/// A checked unit, reduced. Constant: many monitors share one.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LivePlan {
    /// Ratios without sign, falling; what follows is in the same order, which is called the rank.
    pub(super) ratios: [f32; MAX_LIVE_GEARS],
    /// Slips of the elements that hold a gear per slip at the input, in the order of their numbers, in steps of `factor_step`.
    factors: [[i16; MAX_LIVE_SUSPECTS]; MAX_LIVE_GEARS],
    /// Those elements, bit 0 for the first of the unit.
    holders: [u8; MAX_LIVE_GEARS],
    pub(super) numbers: [i8; MAX_LIVE_GEARS],
    /// Place in the unit's list of each rank; [`GEAR_IN_NONE`] for none.
    pub(super) places: [i8; MAX_LIVE_GEARS],
    pub(super) elements: [LiveElement; MAX_LIVE_ELEMENTS],
    pub(super) input: PlannedSensor,
    pub(super) output: PlannedSensor,
    pub(super) engine: PlannedSensor,
    pub(super) limits: LiveLimits,
    factor_step: f32,
    pub(super) sample_s: f32,
    pub(super) fading: Fading,
    /// Standard deviation of a smoothed level over that of a sample.
    pub(super) level_share: f32,
    pub(super) gear_count: u8,
    pub(super) element_count: u8,
    /// Fills the struct up: equal plans are equal byte for byte, and a host can write one for a microcontroller.
    pub(super) spare: [u8; 2],
}

/// Steps of the greatest slip of an element per slip at the input.
const FACTOR_STEPS: f32 = 32_767.0;
/// Two gears are told apart from this relative difference of their ratios on.
const LEAST_STEP: f32 = 0.005;
/// Least and greatest ratio without sign.
const RATIOS: (f32, f32) = (0.05, 50.0);

impl LiveUnit {
    /// The plan of this unit.
    ///
    /// * returns the checked and reduced unit that every monitor of it shares
    /// * errors: [`Error::Count`] for too few or many gears, elements, suspects; [`Error::NotFinite`],
    ///   [`Error::NotPositive`], [`Error::OutOfRange`] for sensors and limits; [`Error::Inconsistent`] for two gears of one
    ///   ratio or number, for a suspect that the unit does not have
    pub fn plan(&self) -> Result<LivePlan> {
        let gears = listed("gears", &self.gears, self.gear_count, 1)?;
        let elements = listed("elements", &self.elements, self.element_count, 0)?;
        for element in elements {
            element.check()?;
        }
        let limits = self.limits.checked()?;
        let sample_s = between("sample_s", self.sample_s, 1e-4, 10.0)?;
        let fading = Fading::new(sample_s);
        let mut plan = LivePlan {
            ratios: [0.0; MAX_LIVE_GEARS],
            factors: [[0; MAX_LIVE_SUSPECTS]; MAX_LIVE_GEARS],
            holders: [0; MAX_LIVE_GEARS],
            numbers: [0; MAX_LIVE_GEARS],
            places: [GEAR_IN_NONE; MAX_LIVE_GEARS],
            elements: [LiveElement::UNKNOWN; MAX_LIVE_ELEMENTS],
            input: PlannedSensor::new(&self.input, sample_s)?,
            output: PlannedSensor::new(&self.output, sample_s)?,
            engine: PlannedSensor::new(&self.engine, sample_s)?,
            limits,
            factor_step: greatest_factor(gears) / FACTOR_STEPS,
            sample_s,
            fading,
            level_share: fading.level_share(),
            gear_count: self.gear_count,
            element_count: self.element_count,
            spare: [0; 2],
        };
        for (slot, element) in plan.elements.iter_mut().zip(elements) {
            *slot = *element;
        }
        for (place, gear) in (0_u8..).zip(gears) {
            gear.check(self.element_count)?;
            let rank = gears.iter().filter(|other| other.ratio.abs() > gear.ratio.abs()).count();
            let clash = |other: &LiveGear| {
                other.number == gear.number || (other.ratio.abs() / gear.ratio.abs() - 1.0).abs() < LEAST_STEP
            };
            if gears.iter().skip(usize::from(place) + 1).any(clash) {
                return Err(Error::Inconsistent {
                    name: "gears",
                    why: "two gears have the same number, or ratios that differ by less than 0.5 %; give one of them",
                });
            }
            plan.enter(rank, place, gear);
        }
        Ok(plan)
    }
}

impl LiveGear {
    fn check(&self, element_count: u8) -> Result<()> {
        between("ratio", self.ratio.abs(), RATIOS.0, RATIOS.1)?;
        if self.number == 0 || (self.number > 0) != (self.ratio > 0.0) || self.number == i8::MIN {
            return Err(Error::Inconsistent {
                name: "gear.number",
                why: "a forward gear has a number from 1 up and a positive ratio, a reverse gear from -1 down and a negative one",
            });
        }
        for suspect in listed("suspects", &self.suspects, self.suspect_count, 0)? {
            if suspect.element >= element_count {
                return Err(Error::Inconsistent {
                    name: "suspect.element",
                    why: "the unit has no element of this number; give the elements first",
                });
            }
            between("slip_per_input_slip", suspect.slip_per_input_slip, -1e3, 1e3)?;
        }
        Ok(())
    }
}

impl LiveLimits {
    fn checked(self) -> Result<Self> {
        above_zero("standing_rpm", self.standing_rpm)?;
        above_zero("slip_rpm", self.slip_rpm)?;
        between("run_length_s", self.run_length_s, 1.0, 1e9)?;
        between("skew_s", self.skew_s, 0.0, 10.0)?;
        between("ratio_u_rel", self.ratio_u_rel, 1e-6, 0.1)?;
        between("settle_s", self.settle_s, 0.0, 60.0)?;
        between("follow_s", self.follow_s, 0.1, 60.0)?;
        above_zero("flare_rpm", self.flare_rpm)?;
        between("dip_share", self.dip_share, 1e-6, 1.0)?;
        above_zero("lockup_slip_rpm", self.lockup_slip_rpm)?;
        between("cold_c", self.cold_c, -100.0, 300.0)?;
        between("hot_c", self.hot_c, -100.0, 300.0)?;
        between("warm_up_s", self.warm_up_s, 1.0, 3600.0)?;
        if self.cold_c > self.hot_c {
            let (lower, upper) = (wide(self.cold_c), wide(self.hot_c));
            return Err(Error::Reversed { name: "cold_c, hot_c", lower, upper });
        }
        Ok(self)
    }
}

impl LivePlan {
    fn enter(&mut self, rank: usize, place: u8, gear: &LiveGear) {
        let slots = (
            self.ratios.get_mut(rank),
            self.numbers.get_mut(rank),
            self.places.get_mut(rank),
            self.factors.get_mut(rank),
            self.holders.get_mut(rank),
        );
        let (Some(ratio), Some(number), Some(at), Some(factors), Some(holders)) = slots else { return };
        (*ratio, *number, *at) = (gear.ratio.abs(), gear.number, place as i8);
        let used = || gear.suspects.iter().take(gear.suspect_count.into());
        let by_number =
            (0..MAX_LIVE_ELEMENTS as u8).filter_map(|number| used().find(|suspect| suspect.element == number));
        for (suspect, factor) in by_number.zip(factors) {
            let steps = suspect.slip_per_input_slip / self.factor_step;
            *factor = (steps + 0.5_f32.copysign(steps)) as i16;
            *holders |= 1 << suspect.element;
        }
    }

    /// Ratio of a rank without sign; 0 for none.
    #[inline]
    pub(super) fn ratio(&self, rank: u8) -> f32 {
        self.ratios.get(usize::from(rank)).copied().unwrap_or(0.0)
    }

    /// Place in the unit's list of a rank.
    pub(super) fn place(&self, rank: u8) -> i8 {
        self.places.get(usize::from(rank)).copied().unwrap_or(GEAR_IN_NONE)
    }

    /// Rank of the gear with this number.
    #[inline]
    pub(super) fn rank_of_number(&self, number: i8) -> Option<u8> {
        let used = self.numbers.iter().take(self.gear_count.into());
        (0_u8..).zip(used).find(|&(_, &known)| known == number).map(|(rank, _)| rank)
    }

    /// Rank of a place in the unit's list.
    pub(super) fn rank_of_place(&self, place: u8) -> Option<u8> {
        (0_u8..).zip(&self.places).find(|&(_, &known)| u8::try_from(known) == Ok(place)).map(|(rank, _)| rank)
    }

    /// Slip of an element of a gear per slip at the input; NaN where the gear does not hold it.
    pub(super) fn factor(&self, rank: u8, element: u8) -> f32 {
        let holders = self.holders(rank);
        let own = 1_u8.checked_shl(element.into()).unwrap_or(0);
        let before = (holders & own.wrapping_sub(1)).count_ones() as usize;
        let factor = self.factors.get(usize::from(rank)).and_then(|factors| factors.get(before));
        factor.filter(|_| holders & own != 0).map_or(f32::NAN, |&steps| f32::from(steps) * self.factor_step)
    }

    /// An element by its number; an unknown one beyond the last.
    pub(super) fn element(&self, number: u8) -> &LiveElement {
        self.elements.get(usize::from(number)).unwrap_or(&LiveElement::UNKNOWN)
    }

    /// The elements that hold the gear of a rank, bit 0 for the first.
    pub(super) fn holders(&self, rank: u8) -> u8 {
        self.holders.get(usize::from(rank)).copied().unwrap_or(0)
    }
}

/// The greatest slip of an element per slip at the input.
fn greatest_factor(gears: &[LiveGear]) -> f32 {
    let used = gears.iter().flat_map(|gear| gear.suspects.iter().take(gear.suspect_count.into()));
    used.fold(0.0, |greatest, suspect| suspect.slip_per_input_slip.abs().max(greatest))
}

/// The used part of a list.
fn listed<'a, T>(name: &'static str, list: &'a [T], count: u8, low: u32) -> Result<&'a [T]> {
    let high = u32::try_from(list.len()).unwrap_or(u32::MAX);
    match list.get(..usize::from(count)) {
        Some(used) if u32::from(count) >= low => Ok(used),
        _ => Err(Error::Count { name, count: count.into(), low, high }),
    }
}

/// The value, if it is finite and above zero.
pub(super) fn above_zero(name: &'static str, value: f32) -> Result<f32> {
    if value > 0.0 && value <= f32::MAX {
        Ok(value)
    } else if value.is_finite() {
        Err(Error::NotPositive { name, value: wide(value) })
    } else {
        Err(Error::NotFinite { name, value: wide(value) })
    }
}

/// The value, if it lies in `low..=high`.
pub(super) fn between(name: &'static str, value: f32, low: f32, high: f32) -> Result<f32> {
    if (low..=high).contains(&value) {
        Ok(value)
    } else if value.is_finite() {
        Err(Error::OutOfRange { name, value: wide(value), low: wide(low), high: wide(high) })
    } else {
        Err(Error::NotFinite { name, value: wide(value) })
    }
}

/// The same number as an `f64`, by its bits: a conversion would link soft double arithmetic on a microcontroller. What is
/// too small for a normal number becomes 0.
pub(super) fn wide(value: f32) -> f64 {
    let bits = value.to_bits();
    let (sign, exponent, fraction) = (u64::from(bits >> 31), u64::from(bits >> 23 & 0xFF), u64::from(bits & 0x7F_FFFF));
    let exponent = match exponent {
        0 => return f64::from_bits(sign << 63),
        0xFF => 0x7FF,
        exponent => exponent + 1023 - 127,
    };
    f64::from_bits(sign << 63 | exponent << 52 | fraction << 29)
}
