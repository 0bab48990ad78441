//! Where an engine and a converter meet.

use super::characteristic::Characteristic;
use super::engine::EngineCurve;
use super::table::{Line, TABLE_POINTS};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, within};
use crate::units::rad_s;

pub(super) const OPERATING_POINTS: Card = Card {
    id: "converter.operating_points",
    purpose: "Engine speeds at which the engine gives just what the impeller takes, at a speed of the turbine",
    equation: "f·T(n) − T_acc = (n/K(ν))², ν = n_T/n",
    symbols: &[
        symbol("n", "engine_rpm", "1/min"),
        symbol("n_T", "turbine_rpm", "1/min"),
        symbol("ν", "speed_ratio", "1"),
        symbol("K", "k_rpm_per_sqrt_nm", "1/min per √(N·m)"),
        symbol("T", "converter.torque_at_nm", "N·m"),
        symbol("f", "torque_factor", "1"),
        symbol("T_acc", "accessory_nm", "N·m"),
    ],
    range: "steady speeds within the engine curve and the characteristic; stable where the surplus of the engine falls with speed",
    source: &card::CONVERTER_TEST,
    locator: "definition of K; between two points of either table the surplus is concave in n, so every root is found",
};

/// Most operating points of one turbine speed.
pub const MAX_OPERATING_POINTS: usize = 8;

/// What the engine gives today of its curve.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineToday {
    /// Torque over that of the curve, above 0 to 2: air, throttle, fuel. 1 where all are those of the curve.
    pub torque_factor: f64,
    /// Torque that accessories take besides those that the curve counts, N·m; negative where one that it counts is idle.
    pub accessory_nm: f64,
}

impl EngineToday {
    /// As the curve was measured.
    pub const AS_MEASURED: Self = Self { torque_factor: 1.0, accessory_nm: 0.0 };

    fn checked(self) -> Result<Self> {
        let Self { torque_factor, accessory_nm } = self;
        if within("torque_factor", torque_factor, 0.0, 2.0)? <= 0.0 {
            return Err(Error::NotPositive { name: "torque_factor", value: torque_factor });
        }
        within("accessory_nm", accessory_nm, -1e6, 1e6)?;
        Ok(self)
    }

    pub(super) fn net_nm(self, curve_nm: f64) -> f64 {
        self.torque_factor * curve_nm - self.accessory_nm
    }
}

/// A speed at which engine and converter are in balance.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OperatingPoint {
    /// Speed of engine and impeller, 1/min.
    pub engine_rpm: f64,
    /// Speed of the turbine, 1/min.
    pub turbine_rpm: f64,
    /// Turbine speed over impeller speed.
    pub speed_ratio: f64,
    /// Turbine torque over impeller torque.
    pub torque_ratio: f64,
    /// Capacity factor of the impeller side, 1/min per √(N·m).
    pub k_rpm_per_sqrt_nm: f64,
    /// Torque that the engine gives and the impeller takes, N·m.
    pub impeller_nm: f64,
    /// Torque at the turbine, N·m.
    pub turbine_nm: f64,
    /// Power into the impeller, kW.
    pub impeller_kw: f64,
    /// Power out of the turbine, kW.
    pub turbine_kw: f64,
    /// What the converter turns into heat, kW.
    pub heat_kw: f64,
    /// Power out over power in.
    pub efficiency: f64,
    /// The engine comes back to this speed by itself.
    pub stable: bool,
}

const NO_POINT: OperatingPoint = OperatingPoint {
    engine_rpm: 0.0,
    turbine_rpm: 0.0,
    speed_ratio: 0.0,
    torque_ratio: 0.0,
    k_rpm_per_sqrt_nm: 0.0,
    impeller_nm: 0.0,
    turbine_nm: 0.0,
    impeller_kw: 0.0,
    turbine_kw: 0.0,
    heat_kw: 0.0,
    efficiency: 0.0,
    stable: false,
};

/// Every operating point at a turbine speed, by rising engine speed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OperatingPoints {
    /// The points; only the first `count` are used.
    pub points: [OperatingPoint; MAX_OPERATING_POINTS],
    /// Number of points; 0 where engine and converter do not meet.
    pub count: u32,
    /// The engine gives more than the impeller takes at the lowest speed that both tables cover.
    pub surplus_at_first: bool,
    /// The engine gives more than the impeller takes at the highest speed that both tables cover.
    pub surplus_at_last: bool,
}

impl OperatingPoints {
    /// The points in use.
    #[must_use]
    pub fn in_use(&self) -> &[OperatingPoint] {
        self.points.get(..self.count as usize).unwrap_or(&[])
    }

    fn add(&mut self, point: OperatingPoint) -> Result<()> {
        let high = MAX_OPERATING_POINTS as u32;
        let place = self.points.get_mut(self.count as usize);
        *place.ok_or(Error::Count { name: "operating points", count: self.count + 1, low: 0, high })? = point;
        self.count += 1;
        Ok(())
    }
}

/// A stretch of engine speeds over which torque is straight in n and K straight in ν: T = t + s·n, K = a + m/n.
#[derive(Clone, Copy)]
struct Stretch {
    t: f64,
    s: f64,
    a: f64,
    m: f64,
}

impl Stretch {
    fn over(engine: Line, capacity: Line, today: EngineToday, turbine_rpm: f64) -> Self {
        let s = today.torque_factor * engine.slope();
        Self {
            t: today.net_nm(engine.y0) - s * engine.x0,
            s,
            a: capacity.y0 - capacity.slope() * capacity.x0,
            m: capacity.slope() * turbine_rpm,
        }
    }

    fn k(self, n: f64) -> f64 {
        if self.m == 0.0 { self.a } else { self.a + self.m / n }
    }

    /// What the engine gives more than the impeller takes. Concave: n/K is convex and positive, so is its square.
    fn surplus(self, n: f64) -> f64 {
        let root = n / self.k(n);
        self.t + self.s * n - root * root
    }

    /// Its slope, which falls with n.
    fn slope(self, n: f64) -> f64 {
        let k = self.k(n);
        self.s - 2.0 * n / k * (2.0 * k - self.a) / (k * k)
    }
}

/// Where `below` turns from true to false, halved to the last bit.
fn turn(mut low: f64, mut high: f64, below: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if !(low < middle && middle < high) {
            break;
        }
        if below(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

/// Engine speeds that the engine curve and the characteristic both cover at a turbine speed.
fn covered(engine: &EngineCurve, converter: &Characteristic, turbine_rpm: f64) -> Result<(f64, f64)> {
    let (mut low, mut high) = engine.curve().span();
    let (first, last) = converter.capacity().span();
    if turbine_rpm > 0.0 {
        low = low.max(turbine_rpm / last);
        if first > 0.0 {
            high = high.min(turbine_rpm / first);
        }
    } else {
        within("speed_ratio", 0.0, first, last)?;
    }
    if low < high {
        return Ok((low, high));
    }
    Err(Error::NoAnswer {
        name: "turbine_rpm",
        why: "at this turbine speed the characteristic asks for engine speeds that the engine curve does not cover; give a curve and a characteristic that do",
    })
}

/// Every engine speed at which the engine gives just what the impeller takes.
///
/// f·T(n) − T_acc = (n/K(ν))², ν = n_T/n
///
/// * `engine` — T; `today` — f and T_acc; `converter` — K; `turbine_rpm` — n_T, 0 (stall) or more
/// * returns [`OperatingPoints`], none where the two do not meet within both tables; nothing is assumed of the slope of K, and
///   between two points of either table the surplus of the engine is concave in n, so no root is missed and none is guessed
/// * errors: those of [`EngineCurve::from_table`] and [`Characteristic::from_table`]; [`Error::OutOfRange`];
///   [`Error::NoAnswer`] where the tables have no engine speed in common; [`Error::Count`] for more than
///   [`MAX_OPERATING_POINTS`]
///
/// Source: definition of K (SAE J643, from memory). Example: 400 N·m at every speed and K = 71 at stall: 71·√400 = 1420 1/min.
///
/// ```
/// use trainwright::converter::{Characteristic, EngineCurve, EngineToday, operating_points};
/// let engine = EngineCurve::from_table(&[800.0, 3000.0], &[400.0, 400.0], 3600.0)?;
/// let converter = Characteristic::from_table(&[0.0, 0.9], &[2.0, 1.0], &[71.0, 100.0])?;
/// let found = operating_points(&engine, EngineToday::AS_MEASURED, &converter, 0.0)?;
/// assert_eq!(found.count, 1);
/// assert!((found.points[0].engine_rpm - 1420.0).abs() < 1e-9 && found.points[0].stable);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn operating_points(
    engine: &EngineCurve,
    today: EngineToday,
    converter: &Characteristic,
    turbine_rpm: f64,
) -> Result<OperatingPoints> {
    engine.check_engine_curve()?;
    converter.check_characteristic()?;
    let today = today.checked()?;
    let turbine_rpm = within("turbine_rpm", turbine_rpm, 0.0, 1e5)?;
    let (low, high) = covered(engine, converter, turbine_rpm)?;
    let point = |engine_rpm, stable| operating(engine, today, converter, [engine_rpm, turbine_rpm], stable);
    let mut found = OperatingPoints {
        points: [NO_POINT; MAX_OPERATING_POINTS],
        count: 0,
        surplus_at_first: false,
        surplus_at_last: false,
    };
    let (mut from, mut surplus) = (low, None);
    for _ in 0..2 * TABLE_POINTS {
        let to = next_corner(engine, converter, turbine_rpm, from).min(high);
        let stretch = stretch_over(engine, today, converter, [turbine_rpm, 0.5 * (from + to)])?;
        let last = to >= high;
        let begins = surplus.unwrap_or(stretch.surplus(from) >= 0.0);
        let ends = if last { stretch.surplus(to) > 0.0 } else { stretch.surplus(to) >= 0.0 };
        let is_short = |n: f64| stretch.surplus(n) < 0.0;
        if surplus.is_none() {
            found.surplus_at_first = begins;
        }
        match (begins, ends) {
            (true, false) => found.add(point(turn(from, to, |n| !is_short(n)), true)?)?,
            (false, true) => found.add(point(turn(from, to, is_short), false)?)?,
            (false, false) if stretch.slope(from) > 0.0 && stretch.slope(to) < 0.0 => {
                let top = turn(from, to, |n| stretch.slope(n) > 0.0);
                if stretch.surplus(top) > 0.0 {
                    found.add(point(turn(from, top, is_short), false)?)?;
                    found.add(point(turn(top, to, |n| !is_short(n)), true)?)?;
                }
            }
            _ => {}
        }
        found.surplus_at_last = ends;
        if last {
            break;
        }
        (from, surplus) = (to, Some(ends));
    }
    Ok(found)
}

/// The next engine speed above `from` at which the torque or K takes another line.
fn next_corner(engine: &EngineCurve, converter: &Characteristic, turbine_rpm: f64, from: f64) -> f64 {
    let speeds = engine.curve().lines().map(|line| line.x1);
    let ratios = converter.capacity().lines().map(|line| turbine_rpm / line.x0);
    speeds.chain(ratios).filter(|&corner| corner > from).fold(f64::INFINITY, f64::min)
}

fn stretch_over(
    engine: &EngineCurve,
    today: EngineToday,
    converter: &Characteristic,
    [turbine_rpm, middle_rpm]: [f64; 2],
) -> Result<Stretch> {
    let torque = engine.curve().line_at("speed_rpm", middle_rpm)?;
    let capacity = converter.capacity().line_at("speed_ratio", turbine_rpm / middle_rpm)?;
    Ok(Stretch::over(torque, capacity, today, turbine_rpm))
}

fn operating(
    engine: &EngineCurve,
    today: EngineToday,
    converter: &Characteristic,
    [engine_rpm, turbine_rpm]: [f64; 2],
    stable: bool,
) -> Result<OperatingPoint> {
    // Rounding may carry the ratio past the last one of the table by its last bit.
    let (first, last) = converter.capacity().span();
    let speed_ratio = (turbine_rpm / engine_rpm).max(first).min(last);
    let torque_ratio = converter.torque_ratio_at(speed_ratio)?;
    let impeller_nm = today.net_nm(engine.torque_at_nm(engine_rpm)?);
    let turbine_nm = torque_ratio * impeller_nm;
    let impeller_kw = impeller_nm * rad_s(engine_rpm) / 1000.0;
    let turbine_kw = turbine_nm * rad_s(turbine_rpm) / 1000.0;
    Ok(OperatingPoint {
        engine_rpm,
        turbine_rpm,
        speed_ratio,
        torque_ratio,
        k_rpm_per_sqrt_nm: converter.capacity_factor_at(speed_ratio)?,
        impeller_nm,
        turbine_nm,
        impeller_kw,
        turbine_kw,
        heat_kw: impeller_kw - turbine_kw,
        efficiency: speed_ratio * torque_ratio,
        stable,
    })
}

/// The one speed at which engine and converter settle.
///
/// f·T(n) − T_acc = (n/K(ν))², ν = n_T/n
///
/// * `engine` — T; `today` — f and T_acc; `converter` — K; `turbine_rpm` — n_T, 0 (stall) or more
/// * returns the stable [`OperatingPoint`]
/// * errors: [`Error::NoAnswer`] where there is none, with the side on which the engine leaves its curve, or more than one
///   (then [`operating_points`] lists them); and those of [`operating_points`]
///
/// Source: as [`operating_points`].
pub fn operating_point(
    engine: &EngineCurve,
    today: EngineToday,
    converter: &Characteristic,
    turbine_rpm: f64,
) -> Result<OperatingPoint> {
    let found = operating_points(engine, today, converter, turbine_rpm)?;
    let mut stable = found.in_use().iter().filter(|point| point.stable);
    let refused = |why| Err(Error::NoAnswer { name: "operating_point", why });
    match (stable.next(), stable.next()) {
        (Some(point), None) => Ok(*point),
        (Some(_), Some(_)) => refused(
            "engine and converter meet at more than one stable speed; list them with operating_points and choose",
        ),
        (None, _) if found.surplus_at_last => refused(
            "the engine gives more than the impeller takes up to the end of its curve or of the characteristic; give them up to a higher engine speed, or check K and its unit",
        ),
        (None, _) => refused(
            "the impeller takes more than the engine gives at every speed that both tables cover; give them down to a lower engine speed, or check K and its unit",
        ),
    }
}
