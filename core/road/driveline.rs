//! What lies between the transmission output and the road, and the speeds of its shafts.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive};
use crate::judge::Reading;

pub(super) const SPEEDS_AT_ROAD: Card = Card {
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
};

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

    pub(super) fn checked(self) -> Result<Self> {
        positive("axle_ratio", self.axle_ratio)?;
        positive("transfer_ratio", self.transfer_ratio)?;
        positive("circumference_mm", self.circumference_mm.value)?;
        Reading::new(self.circumference_mm.value, self.circumference_mm.u)?;
        Ok(self)
    }

    /// Output-shaft turns per turn of the wheels.
    pub(super) fn reduction(self) -> f64 {
        self.axle_ratio * self.transfer_ratio
    }

    /// Output-shaft speed of 1 km/h, 1/min.
    pub(super) fn rpm_per_km_h(self) -> f64 {
        1e6 / 60.0 * self.reduction() / self.circumference_mm.value
    }

    pub(super) fn u_rel(self) -> f64 {
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
