//! The road side of a transmission: shaft speeds, shift points, speedometer, road load, grade, air.

mod air;
mod load;

pub use air::{Air, density_of_air, standard_air};
pub use load::{
    CoastDown, CoastDownLoad, Combination, GradeHeld, RoadLoad, grade_deg, grade_held, grade_pct, mean_grade_pct,
    road_load, rolling_coefficient_at,
};

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::hazard::Hazard;
use crate::judge::{Limits, Reading};
use crate::units::KM_PER_MILE;

/// What can hurt someone in the work of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::Towing, Hazard::RollAway, Hazard::WrongTire];

/// The cards of this chapter.
pub const CARDS: &[Card] = &[
    Card {
        id: "road.speeds_at_road",
        purpose: "Speeds from the road to the engine, and back",
        equation: "v = 0.00006·n_out·U/(i_A·i_V), n_in = i·n_out, n_engine = n_in + slip",
        symbols: &[
            symbol("v", "road_km_h", "km/h"),
            symbol("n_out, n_in, n_engine", "output_rpm, input_rpm, engine_rpm", "1/min"),
            symbol("U", "circumference_mm", "mm"),
            symbol("i_A, i_V", "axle_ratio, transfer_ratio", "1"),
            symbol("i, slip", "engaged.gear_ratio, engaged.slip_rpm", "1, 1/min"),
        ],
        range: "without wheel slip",
        source: &card::DEFINITION,
        locator: "speeds of a driveline",
    },
    Card {
        id: "road.shift_at_output_speed",
        purpose: "A shift point as road speed and output-shaft speed, before and after a change of tire or axle",
        equation: "v = 0.00006·n·U/(i_A·i_V) before and after; n kept, or v kept",
        symbols: &[symbol("v", "before_km_h, after_km_h", "km/h"), symbol("n", "before_rpm, after_rpm", "1/min")],
        range: "n is kept while the unit is not reprogrammed, v once it is",
        source: &card::DEFINITION,
        locator: "speeds of a driveline",
    },
    Card {
        id: "road.speedometer",
        purpose: "Speed shown at a true speed when the programmed driveline is not the fitted one",
        equation: "k = (U_f/i_f)/(U_p/i_p), v_shown = v/k",
        symbols: &[
            symbol("k", "true_over_shown", "1"),
            symbol("v", "true_km_h", "km/h"),
            symbol("U_f, i_f", "fitted circumference and ratios", "mm, 1"),
            symbol("U_p, i_p", "programmed circumference and ratios", "mm, 1"),
        ],
        range: "speed taken from the output shaft",
        source: &card::DEFINITION,
        locator: "speedometer",
    },
    Card {
        id: "road.limits_un_r39",
        purpose: "Speeds that a speedometer may show",
        equation: "0 ≤ V₁ − V₂ ≤ V₂/10 + 4 km/h",
        symbols: &[symbol("V₁", "shown speed, the limits", "km/h"), symbol("V₂", "true_km_h", "km/h")],
        range: "vehicles under UN R39; tested at 40, 80 and 120 km/h",
        source: &card::SPEEDOMETERS,
        locator: "paragraph 5.3",
    },
    Card {
        id: "road.limits_49_cfr_393_82",
        purpose: "Speeds that the speedometer of a commercial vehicle may show in the United States",
        equation: "|V₁ − V₂| ≤ 8 km/h at 80 km/h (5 mph at 50 mph)",
        symbols: &[symbol("V₁", "shown speed, the limits", "km/h"), symbol("V₂", "true_km_h", "km/h")],
        range: "true 80 km/h to 50 mph only",
        source: &card::COMMERCIAL_PARTS,
        locator: "393.82",
    },
    Card {
        id: "road.numbers_to_program",
        purpose: "Axle ratio, circumference or pulse count to program after a change of tire or axle",
        equation: "i_p' = i_p/k, U_p' = k·U_p, pulses per km = z·10⁶·i_f/U_f",
        symbols: &[
            symbol("k", "true over shown speed", "1"),
            symbol("i_p', U_p'", "axle_ratio, circumference_mm", "1, mm"),
            symbol("z", "pulses_per_rev", "1"),
        ],
        range: "program one of axle ratio and circumference, not both",
        source: &card::DEFINITION,
        locator: "speedometer",
    },
    load::ROAD_LOAD,
    load::GRADE_HELD,
    load::TRACTIVE_FORCE,
    load::COAST_DOWN,
    load::ROLLING_COEFFICIENT,
    load::GRADE,
    air::STANDARD_AIR,
    air::DENSITY_OF_AIR,
];

/// What lies between the transmission output and the road.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Driveline {
    /// Axle ratio: output shaft (after the transfer case) over wheel.
    pub axle_ratio: f64,
    /// Transfer case ratio: transmission output over axle input; 1 without a transfer case and in its high range.
    pub transfer_ratio: f64,
    /// Rolling circumference of the driven tires, with its standard uncertainty.
    pub circumference_mm: Reading,
}

/// Speeds of one moment, from the road to the engine. Driving backward is a negative road speed with positive engine speed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftSpeeds {
    /// Road speed, without tire slip.
    pub road_km_h: f64,
    /// Wheel.
    pub wheel_rpm: f64,
    /// Transmission output shaft.
    pub output_rpm: f64,
    /// Transmission input (turbine) shaft.
    pub input_rpm: f64,
    /// Engine: input plus the slip of converter or lock-up clutch.
    pub engine_rpm: f64,
    /// Relative standard uncertainty, from the tire: of the shaft speeds when they follow from the road speed, of the road
    /// speed when it follows from a shaft speed.
    pub u_rel: f64,
}

/// A gear, and the slip between engine and input shaft.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Engaged {
    /// Gear ratio, input over output; negative in reverse.
    pub gear_ratio: f64,
    /// Engine speed less input speed; 0 with the lock-up clutch closed, negative on the overrun.
    pub slip_rpm: f64,
}

impl Driveline {
    /// A driveline; all three above 0.
    pub fn new(axle_ratio: f64, transfer_ratio: f64, circumference_mm: Reading) -> Result<Self> {
        Self { axle_ratio, transfer_ratio, circumference_mm }.checked()
    }

    fn checked(self) -> Result<Self> {
        positive("axle_ratio", self.axle_ratio)?;
        positive("transfer_ratio", self.transfer_ratio)?;
        positive("circumference_mm", self.circumference_mm.value)?;
        Reading::new(self.circumference_mm.value, self.circumference_mm.u)?;
        Ok(self)
    }

    /// Output-shaft turns per turn of the wheels.
    fn reduction(self) -> f64 {
        self.axle_ratio * self.transfer_ratio
    }

    /// Output-shaft speed of 1 km/h, 1/min.
    fn rpm_per_km_h(self) -> f64 {
        1e6 / 60.0 * self.reduction() / self.circumference_mm.value
    }

    fn u_rel(self) -> f64 {
        self.circumference_mm.u / self.circumference_mm.value
    }

    /// Road speed of an output-shaft speed.
    ///
    /// v = 0.00006·n·U/(i_A·i_V)
    ///
    /// * `output_rpm` — n, 1/min
    /// * returns v, km/h
    ///
    /// Source: definition; tractive calculations of any handbook. Example: 1750 rpm direct, axle 2.72, free circumference of a
    /// 29-inch tire: 55.51 mph.
    ///
    /// ```
    /// use trainwright::{judge::Reading, road::Driveline, units::km_h_to_mph};
    /// let line = Driveline::new(2.72, 1.0, Reading::exact(29.0 * 25.4 * core::f64::consts::PI)?)?;
    /// assert!((km_h_to_mph(line.road_km_h(1750.0)?) - 55.51).abs() < 0.005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn road_km_h(self, output_rpm: f64) -> Result<f64> {
        Ok(finite("output_rpm", output_rpm)? / self.checked()?.rpm_per_km_h())
    }

    /// Output-shaft speed of a road speed: [`Driveline::road_km_h`] solved for n, 1/min.
    pub fn output_rpm(self, road_km_h: f64) -> Result<f64> {
        Ok(finite("road_km_h", road_km_h)? * self.checked()?.rpm_per_km_h())
    }

    /// Every speed from the road to the engine, at a road speed.
    ///
    /// n_out = v·i_A·i_V/(0.00006·U), n_in = i·n_out, n_engine = n_in + slip
    ///
    /// * `engaged` — i and slip; `road_km_h` — v, km/h
    pub fn speeds_at_road(self, engaged: Engaged, road_km_h: f64) -> Result<ShaftSpeeds> {
        self.speeds(engaged.checked()?, self.output_rpm(road_km_h)?)
    }

    /// Every speed from the road to the engine, at an output-shaft speed.
    pub fn speeds_at_output(self, engaged: Engaged, output_rpm: f64) -> Result<ShaftSpeeds> {
        self.checked()?.speeds(engaged.checked()?, finite("output_rpm", output_rpm)?)
    }

    /// Every speed from the road to the engine, at an engine speed.
    pub fn speeds_at_engine(self, engaged: Engaged, engine_rpm: f64) -> Result<ShaftSpeeds> {
        let Engaged { gear_ratio, slip_rpm } = engaged.checked()?;
        self.checked()?.speeds(engaged, (finite("engine_rpm", engine_rpm)? - slip_rpm) / gear_ratio)
    }

    fn speeds(self, Engaged { gear_ratio, slip_rpm }: Engaged, output_rpm: f64) -> Result<ShaftSpeeds> {
        let input_rpm = output_rpm * gear_ratio;
        Ok(ShaftSpeeds {
            road_km_h: output_rpm / self.rpm_per_km_h(),
            wheel_rpm: output_rpm / self.reduction(),
            output_rpm,
            input_rpm,
            engine_rpm: finite("engine_rpm", input_rpm + slip_rpm)?,
            u_rel: self.u_rel(),
        })
    }
}

impl Engaged {
    fn checked(self) -> Result<Self> {
        finite("slip_rpm", self.slip_rpm)?;
        if finite("gear_ratio", self.gear_ratio)? == 0.0 {
            return Err(Error::Missing {
                name: "gear_ratio",
                why: "0 is no gear; give input over output speed, negative in reverse",
            });
        }
        Ok(self)
    }
}

/// A shift point of the schedule before and after a change of tire or axle.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShiftPoint {
    /// Road speed of the shift before the change.
    pub before_km_h: f64,
    /// Output-shaft speed of the shift before the change.
    pub before_rpm: f64,
    /// Road speed of the shift after the change.
    pub after_km_h: f64,
    /// Output-shaft speed of the shift after the change.
    pub after_rpm: f64,
}

/// The shift point when the controller keeps its output-shaft speed, as it does while it is not reprogrammed.
///
/// v = 0.00006·n·U/(i_A·i_V), before and after
///
/// * `output_rpm` — n of the schedule, 1/min
///
/// Source: definition.
///
/// ```
/// use trainwright::{judge::Reading, road::{Driveline, shift_at_output_speed}};
/// let before = Driveline::new(3.54, 1.0, Reading::exact(2438.0)?)?;
/// let after = Driveline { axle_ratio: 4.27, ..before };
/// let shift = shift_at_output_speed(before, after, 1500.0)?;
/// assert!((shift.after_km_h / shift.before_km_h - 3.54 / 4.27).abs() < 1e-12);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn shift_at_output_speed(before: Driveline, after: Driveline, output_rpm: f64) -> Result<ShiftPoint> {
    Ok(ShiftPoint {
        before_km_h: before.road_km_h(output_rpm)?,
        before_rpm: output_rpm,
        after_km_h: after.road_km_h(output_rpm)?,
        after_rpm: output_rpm,
    })
}

/// The shift point when the schedule keeps its road speed, as it does once tire and axle are programmed.
///
/// n = v·i_A·i_V/(0.00006·U), before and after
///
/// * `road_km_h` — v of the schedule, true road speed, km/h
///
/// Source: definition.
pub fn shift_at_road_speed(before: Driveline, after: Driveline, road_km_h: f64) -> Result<ShiftPoint> {
    Ok(ShiftPoint {
        before_km_h: road_km_h,
        before_rpm: before.output_rpm(road_km_h)?,
        after_km_h: road_km_h,
        after_rpm: after.output_rpm(road_km_h)?,
    })
}

/// What the speedometer shows when the programmed driveline is not the fitted one.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Speedometer {
    /// True over shown speed: above 1 the speedometer reads low.
    pub true_over_shown: f64,
    /// True road speed.
    pub true_km_h: f64,
    /// Shown speed, with the uncertainty that comes from the fitted tire.
    pub shown_km_h: Reading,
}

/// Speed shown at a true road speed, for a unit that reads the output shaft and divides by what is programmed.
///
/// k = (U_f/(i_A·i_V)_f)/(U_p/(i_A·i_V)_p), v_shown = v/k
///
/// * `programmed` — p, what the controller believes; `fitted` — f, what is on the truck; `true_km_h` — v, km/h
/// * returns k, v and v_shown; judge the latter against [`limits_un_r39`] or [`limits_49_cfr_393_82`]
///
/// Source: definition. Example: 185/70R14 changed for 195/50R15 shows 1.067 of the true speed.
///
/// ```
/// use trainwright::{judge::Reading, road::{Driveline, speedometer}, tire};
/// let with = |size| Driveline::new(1.0, 1.0, Reading::exact(tire::parse(size)?.geometric_diameter_mm()?)?);
/// let meter = speedometer(with("185/70R14")?, with("195/50R15")?, 100.0)?;
/// assert!((meter.shown_km_h.value - 106.70139).abs() < 1e-4);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn speedometer(programmed: Driveline, fitted: Driveline, true_km_h: f64) -> Result<Speedometer> {
    let (programmed, fitted) = (programmed.checked()?, fitted.checked()?);
    let true_over_shown = programmed.rpm_per_km_h() / fitted.rpm_per_km_h();
    let shown = finite("true_km_h", true_km_h)? / true_over_shown;
    Ok(Speedometer { true_over_shown, true_km_h, shown_km_h: Reading::relative(shown, fitted.u_rel())? })
}

/// Speeds that a speedometer may show at a true speed under UN Regulation 39: 0 ≤ V₁ − V₂ ≤ V₂/10 + 4 km/h.
///
/// * `true_km_h` — V₂, km/h, 0 or more
/// * returns the limits of the shown speed V₁; it must never read low
///
/// Source: UN R39, paragraph 5.3 (from memory). Example: at true 70 km/h, 70 to 81 km/h.
///
/// ```
/// let limits = trainwright::road::limits_un_r39(70.0)?;
/// assert_eq!((limits.lower, limits.upper), (70.0, 81.0));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn limits_un_r39(true_km_h: f64) -> Result<Limits> {
    let true_km_h = within("true_km_h", true_km_h, 0.0, f64::MAX)?;
    Limits::between(true_km_h, true_km_h + true_km_h / 10.0 + 4.0)
}

/// Speeds that the speedometer of a commercial vehicle may show under 49 CFR 393.82: within 8 km/h at 80 km/h (5 mph at
/// 50 mph). The rule says nothing about other speeds, so they are refused.
///
/// ```
/// let limits = trainwright::road::limits_49_cfr_393_82(80.0)?;
/// assert_eq!((limits.lower, limits.upper), (72.0, 88.0));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn limits_49_cfr_393_82(true_km_h: f64) -> Result<Limits> {
    let true_km_h = within("true_km_h", true_km_h, 80.0, 50.0 * KM_PER_MILE)?;
    Limits::between(true_km_h - 8.0, true_km_h + 8.0)
}

/// What to program, or to fit, so that the speedometer and the schedule are right again.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NumbersToProgram {
    /// Axle ratio to program where only that can be set.
    pub axle_ratio: f64,
    /// Rolling circumference to program where only that can be set, mm.
    pub circumference_mm: f64,
    /// The same as revolutions per kilometer.
    pub rev_per_km: f64,
    /// The same as revolutions per mile.
    pub rev_per_mile: f64,
    /// Sensor pulses per kilometer of the fitted driveline.
    pub pulses_per_km: f64,
    /// Sensor pulses per mile of the fitted driveline.
    pub pulses_per_mile: f64,
    /// Axle ratio to fit with the fitted tires, so that what is programmed is right unchanged.
    pub axle_ratio_to_fit: f64,
    /// Relative standard uncertainty of each, from the fitted tire.
    pub u_rel: f64,
}

/// The number to program after a change of tire, axle or transfer case.
///
/// i_p' = i_f·U_p/U_f, U_p' = U_f·i_p/i_f, pulses per km = z·i_f/U_f (ratios with the transfer ratio)
///
/// * `programmed` — what the controller believes; `fitted` — what is on the truck
/// * `pulses_per_rev` — z, pulses of the output-shaft sensor per turn
///
/// Source: definition.
pub fn numbers_to_program(programmed: Driveline, fitted: Driveline, pulses_per_rev: f64) -> Result<NumbersToProgram> {
    let (programmed, fitted) = (programmed.checked()?, fitted.checked()?);
    positive("pulses_per_rev", pulses_per_rev)?;
    let true_over_shown = programmed.rpm_per_km_h() / fitted.rpm_per_km_h();
    let circumference_mm = programmed.circumference_mm.value * true_over_shown;
    let rev_per_km = 1e6 / circumference_mm;
    let pulses_per_km = pulses_per_rev * 1e6 * fitted.reduction() / fitted.circumference_mm.value;
    Ok(NumbersToProgram {
        axle_ratio: programmed.axle_ratio / true_over_shown,
        circumference_mm,
        rev_per_km,
        rev_per_mile: rev_per_km * KM_PER_MILE,
        pulses_per_km,
        pulses_per_mile: pulses_per_km * KM_PER_MILE,
        axle_ratio_to_fit: fitted.axle_ratio * true_over_shown,
        u_rel: fitted.u_rel(),
    })
}
