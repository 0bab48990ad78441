//! What the road takes: rolling, air and grade; and what grade a torque holds.

use super::Driveline;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::real::{atan, cos, hypot, sin, sqrt, tan};
use crate::units::{GRAVITY_M_S2, KM_PER_MILE, N_PER_LBF, mm_to_in};
use core::f64::consts::PI;

pub(super) const ROAD_LOAD: Card = Card {
    id: "road.road_load",
    purpose: "Tractive force and power that hold a steady speed on a grade",
    equation: "F = m·g·(f_r·cos θ + sin θ) + ½·ρ·c_d·A·v², θ = arctan(G/100)",
    symbols: &[
        symbol("F", "total_n", "N"),
        symbol("m, f_r, c_d·A", "combination.mass_kg, rolling_coefficient, drag_area_m2", "kg, 1, m²"),
        symbol("θ, G", "grade_deg, grade_pct", "°, %"),
        symbol("ρ", "air_density_kg_m3", "kg/m³"),
        symbol("v", "speed_km_h (in m/s)", "km/h"),
    ],
    range: "steady speed, still air, straight road",
    source: &card::ROAD_LOADS,
    locator: "road load equation",
};

pub(super) const GRADE_HELD: Card = Card {
    id: "road.grade_held",
    purpose: "Grade on which a tractive force holds a steady speed",
    equation: "θ = arcsin(s/√(1 + f_r²)) − arctan f_r, s = (F − ½·ρ·c_d·A·v²)/(m·g)",
    symbols: &[
        symbol("θ", "grade_deg", "°"),
        symbol("s", "left_over_weight", "1"),
        symbol("F", "force_n", "N"),
        symbol("f_r", "combination.rolling_coefficient", "1"),
    ],
    range: "what the force allows; not a rating, and tire grip is not looked at",
    source: &card::DEFINITION,
    locator: "road load solved for the grade",
};

pub(super) const TRACTIVE_FORCE: Card = Card {
    id: "road.tractive_force_n",
    purpose: "Force of the driven wheels from a torque at the transmission output, and back",
    equation: "F = T·i_A·i_V·η/r, r = U/(2·π)",
    symbols: &[
        symbol("F", "force_n", "N"),
        symbol("T", "output_torque_nm", "N·m"),
        symbol("i_A, i_V, U", "driveline", "1, 1, mm"),
        symbol("η", "efficiency", "1"),
    ],
    range: "tire grip is not looked at",
    source: &card::DEFINITION,
    locator: "tractive force",
};

pub(super) const COAST_DOWN: Card = Card {
    id: "road.coast_down_load",
    purpose: "Road load of a coast-down test",
    equation: "F = A + B·v + C·v²",
    symbols: &[
        symbol("F", "total_n", "N"),
        symbol("A, B, C", "a_n, b_n_per_km_h, c_n_per_km_h2", "N, N/(km/h), N/(km/h)²"),
        symbol("v", "speed_km_h", "km/h"),
    ],
    range: "the vehicle that was tested, on the level; not with a trailer behind it",
    source: &card::COAST_DOWNS,
    locator: "1066.210, road-load force",
};

pub(super) const ROLLING_COEFFICIENT: Card = Card {
    id: "road.rolling_coefficient_at",
    purpose: "Rolling coefficient of a car on a paved road by its speed",
    equation: "f_r = 0.01·(1 + V/147), V in ft/s",
    symbols: &[symbol("f_r", "result", "1"), symbol("V", "speed_km_h", "km/h")],
    range: "cars on hard pavement; truck tires roll easier",
    source: &card::HIGHWAYS,
    locator: "rolling resistance",
};

pub(super) const GRADE: Card = Card {
    id: "road.grade_pct",
    purpose: "Grade as percent, as angle, and as the mean of a climb",
    equation: "G = 100·tan θ, θ = arctan(G/100), G_mean = 100·h/√(s² − h²)",
    symbols: &[
        symbol("G", "grade_pct", "%"),
        symbol("θ", "grade_deg", "°"),
        symbol("h, s", "rise_m, distance_m along the road", "m"),
    ],
    range: "the mean says nothing about the steepest part",
    source: &card::DEFINITION,
    locator: "grade",
};

/// A truck with its trailer, as far as the road feels it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Combination {
    /// Mass, load included.
    pub mass_kg: f64,
    /// Rolling resistance over weight; the mean by mass where truck and trailer differ.
    pub rolling_coefficient: f64,
    /// Drag coefficient times frontal area.
    pub drag_area_m2: f64,
}

impl Combination {
    fn checked(self) -> Result<Self> {
        positive("mass_kg", self.mass_kg)?;
        within("rolling_coefficient", self.rolling_coefficient, 0.0, 1.0)?;
        within("drag_area_m2", self.drag_area_m2, 0.0, 1000.0)?;
        Ok(self)
    }

    fn weight_n(self) -> f64 {
        self.mass_kg * GRAVITY_M_S2
    }

    fn aero_n(self, air_density_kg_m3: f64, speed_km_h: f64) -> Result<f64> {
        within("air_density_kg_m3", air_density_kg_m3, 0.0, 10.0)?;
        let speed_m_s = within("speed_km_h", speed_km_h, 0.0, 1000.0)? / 3.6;
        Ok(0.5 * air_density_kg_m3 * self.drag_area_m2 * speed_m_s * speed_m_s)
    }
}

/// Steady road load and what it is made of.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoadLoad {
    /// Angle of the grade.
    pub grade_deg: f64,
    /// Rolling resistance.
    pub rolling_n: f64,
    /// Air drag.
    pub aero_n: f64,
    /// Share of the weight along the grade; negative downhill.
    pub grade_n: f64,
    /// Sum: the tractive force that holds the speed.
    pub total_n: f64,
    /// Power at the wheels.
    pub power_kw: f64,
}

/// Tractive force and power that hold a steady speed on a grade.
///
/// F = m·g·(f_r·cos θ + sin θ) + ½·ρ·c_d·A·v², θ = arctan(G/100)
///
/// * `combination` — m, f_r, c_d·A; `air_density_kg_m3` — ρ, see [`super::standard_air`]; `speed_km_h` — v, 0 to 1000;
///   `grade_pct` — G, rise over horizontal run, %
/// * returns each part, the sum and the power at the wheels
///
/// The sine is exact. Textbooks put G/100 for it (small angles), which is 0.12 % too much at 5 % and 0.7 % at 12 %.
/// A capability computed from this is no towing rating: the vehicle maker's ratings stand.
///
/// Source: definition of the grade; SAE J1263 and any vehicle dynamics textbook for the sum. Example: 4500 kg on 5 % weigh
/// 2203.7 N along the road (2206.6 N by small angles).
///
/// ```
/// use trainwright::road::{Combination, road_load};
/// let truck = Combination { mass_kg: 4500.0, rolling_coefficient: 0.0, drag_area_m2: 0.0 };
/// assert!((road_load(truck, 1.2, 50.0, 5.0)?.grade_n - 2203.743).abs() < 0.001);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn road_load(
    combination: Combination,
    air_density_kg_m3: f64,
    speed_km_h: f64,
    grade_pct: f64,
) -> Result<RoadLoad> {
    let combination = combination.checked()?;
    let slope = atan(finite("grade_pct", grade_pct)? / 100.0);
    let rolling_n = combination.weight_n() * combination.rolling_coefficient * cos(slope);
    let aero_n = combination.aero_n(air_density_kg_m3, speed_km_h)?;
    let grade_n = combination.weight_n() * sin(slope);
    let total_n = rolling_n + aero_n + grade_n;
    Ok(RoadLoad {
        grade_deg: slope * 180.0 / PI,
        rolling_n,
        aero_n,
        grade_n,
        total_n,
        power_kw: total_n * speed_km_h / 3600.0,
    })
}

/// The grade that a tractive force holds, and what it is made of.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GradeHeld {
    /// Air drag.
    pub aero_n: f64,
    /// Force left over for rolling and grade.
    pub left_n: f64,
    /// The same over the weight.
    pub left_over_weight: f64,
    /// Angle of the grade; negative when the force does not hold the speed on the level.
    pub grade_deg: f64,
    /// The same as rise over horizontal run.
    pub grade_pct: f64,
}

/// The grade on which a tractive force holds a steady speed: [`road_load`] solved for the grade.
///
/// F − ½·ρ·c_d·A·v² = m·g·(f_r·cos θ + sin θ), so θ = arcsin(s/√(1 + f_r²)) − arctan f_r with s = (F − F_air)/(m·g)
///
/// * `combination`, `air_density_kg_m3`, `speed_km_h` — as there; `force_n` — F at the wheels, see
///   [`Driveline::tractive_force_n`]
/// * errors: [`Error::NoAnswer`] where the force exceeds what any grade asks for
///
/// What the engine can hold is not what the truck may pull: tire grip, brakes, cooling and the maker's ratings come first.
///
/// Source: derived from the road load.
pub fn grade_held(
    combination: Combination,
    air_density_kg_m3: f64,
    speed_km_h: f64,
    force_n: f64,
) -> Result<GradeHeld> {
    let combination = combination.checked()?;
    let aero_n = combination.aero_n(air_density_kg_m3, speed_km_h)?;
    let left_n = finite("force_n", force_n)? - aero_n;
    let left_over_weight = left_n / combination.weight_n();
    let sine = left_over_weight / hypot(1.0, combination.rolling_coefficient);
    if !(-1.0 < sine && sine < 1.0) {
        return Err(Error::NoAnswer {
            name: "grade",
            why: "the force exceeds the weight: it would lift the combination up a wall; check force, mass and units",
        });
    }
    let slope = atan(sine / sqrt(1.0 - sine * sine)) - atan(combination.rolling_coefficient);
    Ok(GradeHeld { aero_n, left_n, left_over_weight, grade_deg: slope * 180.0 / PI, grade_pct: 100.0 * tan(slope) })
}

impl Driveline {
    /// Force of the driven wheels on the road from a torque at the transmission output.
    ///
    /// F = T·i_A·i_V·η/r, r = U/(2π)
    ///
    /// * `output_torque_nm` — T, N·m; `efficiency` — η of axle and transfer case, above 0 to 1
    /// * returns F, N; no more than tire grip carries, which this does not know
    ///
    /// Source: definition. Example: 115 N·m through 10:1 at 0.4 m give 2875 N.
    ///
    /// ```
    /// use trainwright::{judge::Reading, road::Driveline};
    /// let line = Driveline::new(10.0, 1.0, Reading::exact(2.0 * core::f64::consts::PI * 400.0)?)?;
    /// assert!((line.tractive_force_n(115.0, 1.0)? - 2875.0).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn tractive_force_n(self, output_torque_nm: f64, efficiency: f64) -> Result<f64> {
        Ok(finite("output_torque_nm", output_torque_nm)? * self.force_per_torque(efficiency)?)
    }

    /// Torque at the transmission output that a tractive force takes: [`Driveline::tractive_force_n`] solved for T, N·m.
    pub fn output_torque_nm(self, force_n: f64, efficiency: f64) -> Result<f64> {
        Ok(finite("force_n", force_n)? / self.force_per_torque(efficiency)?)
    }

    fn force_per_torque(self, efficiency: f64) -> Result<f64> {
        let line = self.checked()?;
        positive("efficiency", within("efficiency", efficiency, 0.0, 1.0)?)?;
        Ok(line.reduction() * efficiency * 2.0 * PI * 1000.0 / line.circumference_mm.value)
    }
}

/// Road load of a coast-down test: F = A + B·v + C·v².
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoastDown {
    /// Constant part.
    pub a_n: f64,
    /// Part that grows with the speed, per km/h.
    pub b_n_per_km_h: f64,
    /// Part that grows with the square of the speed, per (km/h)².
    pub c_n_per_km_h2: f64,
}

/// Force of a coast-down equation at a speed, and what it is made of.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoastDownLoad {
    /// A.
    pub constant_n: f64,
    /// B·v.
    pub linear_n: f64,
    /// C·v².
    pub square_n: f64,
    /// Sum.
    pub total_n: f64,
    /// Power at the wheels.
    pub power_kw: f64,
}

impl CoastDown {
    /// Coefficients as United States test lists give them: lbf, lbf/mph, lbf/mph².
    ///
    /// ```
    /// let coefficients = trainwright::road::CoastDown::from_lbf_mph(46.31, 0.0865, 0.0148)?;
    /// assert!((coefficients.a_n - 205.997).abs() < 0.001);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn from_lbf_mph(a_lbf: f64, b_lbf_per_mph: f64, c_lbf_per_mph2: f64) -> Result<Self> {
        Ok(Self {
            a_n: finite("a_lbf", a_lbf)? * N_PER_LBF,
            b_n_per_km_h: finite("b_lbf_per_mph", b_lbf_per_mph)? * N_PER_LBF / KM_PER_MILE,
            c_n_per_km_h2: finite("c_lbf_per_mph2", c_lbf_per_mph2)? * N_PER_LBF / (KM_PER_MILE * KM_PER_MILE),
        })
    }

    /// Force and power of the coast-down equation at a speed on the level.
    ///
    /// F = A + B·v + C·v²
    ///
    /// * `speed_km_h` — v, 0 to 1000
    ///
    /// A list made for a solo truck does not hold for the truck with its trailer: frontal area and mass both change.
    ///
    /// Source: SAE J1263 and J2264; 40 CFR 1066.210. Example: 46.31 lbf, 0.0865 lbf/mph, 0.0148 lbf/mph² at 60 mph are
    /// 466.1 N.
    ///
    /// ```
    /// use trainwright::{road::CoastDown, units::mph_to_km_h};
    /// let load = CoastDown::from_lbf_mph(46.31, 0.0865, 0.0148)?.coast_down_load(mph_to_km_h(60.0))?;
    /// assert!((load.total_n - 466.08).abs() < 0.005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn coast_down_load(self, speed_km_h: f64) -> Result<CoastDownLoad> {
        let v = within("speed_km_h", speed_km_h, 0.0, 1000.0)?;
        let constant_n = finite("a_n", self.a_n)?;
        let linear_n = finite("b_n_per_km_h", self.b_n_per_km_h)? * v;
        let square_n = finite("c_n_per_km_h2", self.c_n_per_km_h2)? * v * v;
        let total_n = constant_n + linear_n + square_n;
        Ok(CoastDownLoad { constant_n, linear_n, square_n, total_n, power_kw: total_n * v / 3600.0 })
    }
}

/// Rolling coefficient of a car on a paved road by its speed.
///
/// f_r = 0.01·(1 + V/147)
///
/// * `speed_km_h` — V (in ft/s in the formula), 0 to 200
///
/// Source: F. L. Mannering and S. S. Washburn, Principles of Highway Engineering and Traffic Analysis, road load chapter
/// (from memory). Its metric form prints 44.73 m/s for 147 ft/s, which are 44.81 m/s. Example: 33.97 of 2000 lbf at 70 mph.
///
/// ```
/// let coefficient = trainwright::road::rolling_coefficient_at(70.0 * 1.609344)?;
/// assert!((2000.0 * coefficient - 33.97).abs() < 0.005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn rolling_coefficient_at(speed_km_h: f64) -> Result<f64> {
    let speed_ft_s = mm_to_in(within("speed_km_h", speed_km_h, 0.0, 200.0)? / 3.6 * 1000.0) / 12.0;
    Ok(0.01 * (1.0 + speed_ft_s / 147.0))
}

/// Grade in percent, rise over horizontal run, of an angle: 100·tan θ, −90° to 90° excluded.
pub fn grade_pct(grade_deg: f64) -> Result<f64> {
    Ok(100.0 * tan(within("grade_deg", grade_deg, -89.9, 89.9)? * PI / 180.0))
}

/// Angle of a grade in percent: arctan(G/100), degrees.
pub fn grade_deg(grade_pct: f64) -> Result<f64> {
    Ok(atan(finite("grade_pct", grade_pct)? / 100.0) * 180.0 / PI)
}

/// Mean grade, %, of a climb of `rise_m` over `distance_m` along the road.
///
/// G = 100·h/√(s² − h²)
///
/// The mean says nothing about the steepest part, which decides the torque.
///
/// Source: definition. Example: 3500 ft in 11 miles are 6.04 % (6.03 % over the distance itself).
///
/// ```
/// let grade = trainwright::road::mean_grade_pct(3500.0 * 0.3048, 11.0 * 1609.344)?;
/// assert!((grade - 6.037).abs() < 0.001);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn mean_grade_pct(rise_m: f64, distance_m: f64) -> Result<f64> {
    let s = positive("distance_m", distance_m)?;
    let h = finite("rise_m", rise_m)?;
    if !(-s < h && h < s) {
        return Err(Error::OutOfRange { name: "rise_m", value: h, low: -s, high: s });
    }
    Ok(100.0 * h / sqrt(s * s - h * h))
}
