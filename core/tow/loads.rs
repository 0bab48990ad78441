//! What a trailer does to the axles of its truck.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::judge::{Limits, Reading};
use crate::real::{hypot, sqrt};
use crate::units::GRAVITY_M_S2;

pub(super) const AXLE_LOADS: Card = Card {
    id: "tow.axle_loads",
    purpose: "Loads of the axles of a truck and of its trailer from the scale, the hitch load and the levers",
    equation: "F' = F − T·d/L + M/(g·L), R' = R + T·(1 + d/L) − M/(g·L), T = T₀ − M/(g·s), m_A = m − T",
    symbols: &[
        symbol("F, R", "weighed.front_kg, weighed.rear_kg", "kg"),
        symbol("T₀, m", "trailer.hitch_kg, trailer.mass_kg", "kg"),
        symbol("T", "hitch_kg", "kg"),
        symbol("d, L", "levers.overhang_mm, levers.wheelbase_mm", "mm"),
        symbol("M, s", "distribution.moment_nm, distribution.ball_to_axle_mm", "N·m, mm"),
        symbol("F', R', m_A", "front_kg, rear_kg, trailer_axles_kg", "kg"),
    ],
    range: "standing on the level; springs and tires give way without changing the levers; a king pin ahead of the rear axle has a negative overhang; side to side is not looked at",
    source: &card::DEFINITION,
    locator: "equilibrium of moments about the rear axle and about the trailer's axles",
};

pub(super) const BY_SHARE: Card = Card {
    id: "tow.by_share",
    purpose: "Hitch load of a trailer from its mass and the share that rests on the hitch",
    equation: "T = f·m, u² = (m·u_f)² + (f·u_m)²",
    symbols: &[
        symbol("T", "hitch_kg", "kg"),
        symbol("m, u_m", "mass_kg", "kg"),
        symbol("f, u_f", "hitch_share", "1"),
        symbol("u", "standard uncertainty of T", "kg"),
    ],
    range: "share 0 to 0.5; the share moves with the cargo, so a scale under the coupler goes before it",
    source: &card::DEFINITION,
    locator: "share of a mass",
};

pub(super) const SHARE_BAND: Card = Card {
    id: "tow.share_band_kg",
    purpose: "Hitch loads that a band of shares allows a trailer",
    equation: "f_low·m ≤ T ≤ f_high·m",
    symbols: &[
        symbol("T", "hitch load, the result", "kg"),
        symbol("m", "mass_kg", "kg"),
        symbol("f_low, f_high", "share", "1"),
    ],
    range: "the band is passed in: trade guidance stands in practice, the trailer maker's own goes before it; too little and the trailer sways, too much and the rear axle is overloaded",
    source: &card::PRACTICE,
    locator: "tongue and pin load",
};

pub(super) const RESTORING: Card = Card {
    id: "tow.restoring_moment_nm",
    purpose: "Moment of a weight-distributing hitch that gives the front axle back a part of what the hitch load lifted off it",
    equation: "M = g·q·T₀·d/(1 + d/s)",
    symbols: &[
        symbol("M", "result", "N·m"),
        symbol("q", "restored_share", "1"),
        symbol("T₀", "trailer.hitch_kg", "kg"),
        symbol("d", "levers.overhang_mm (in m)", "mm"),
        symbol("s", "ball_to_axle_mm", "mm"),
    ],
    range: "hitch behind the rear axle; which part is right says the maker of vehicle and hitch",
    source: &card::DEFINITION,
    locator: "tow.axle_loads solved for the moment",
};

/// A truck on the scale: loaded, with everybody in it, without its trailer.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxleWeights {
    /// Front axle, kg.
    pub front_kg: Reading,
    /// Rear axle, kg; the sum of both on a tandem.
    pub rear_kg: Reading,
}

/// A loaded trailer.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trailer {
    /// Mass, kg, weighed uncoupled: what its axles and its coupler or pin carry together.
    pub mass_kg: Reading,
    /// What rests on the hitch without a weight-distributing hitch, kg.
    pub hitch_kg: Reading,
}

/// Where a truck carries its trailer.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Levers {
    /// Front axle to rear axle, mm; to the middle of a tandem.
    pub wheelbase_mm: f64,
    /// Ball or king pin behind the rear axle, mm; negative ahead of it.
    pub overhang_mm: f64,
}

/// A weight-distributing hitch: bars that bend truck and trailer against each other. [`Distribution::NONE`] without one.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Distribution {
    /// Moment of the bars on the truck, nose down, N·m; 0 or more.
    pub moment_nm: f64,
    /// Ball to the middle of the trailer's axles, mm.
    pub ball_to_axle_mm: f64,
}

/// What each axle carries with the trailer coupled.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CombinationLoads {
    /// What rests on the hitch, kg.
    pub hitch_kg: Reading,
    /// Change of the front axle by the trailer, kg; negative where it is lifted.
    pub front_change_kg: f64,
    /// Change of the rear axle, kg.
    pub rear_change_kg: f64,
    /// Front axle, kg.
    pub front_kg: Reading,
    /// Rear axle, kg.
    pub rear_kg: Reading,
    /// Both: what the truck weighs with the trailer on its hitch, kg.
    pub truck_kg: Reading,
    /// Axles of the trailer together, kg.
    pub trailer_axles_kg: Reading,
    /// Truck and trailer, kg.
    pub combination_kg: Reading,
}

impl Distribution {
    /// No weight-distributing hitch.
    pub const NONE: Self = Self { moment_nm: 0.0, ball_to_axle_mm: f64::INFINITY };
}

/// The loads of a combination by input: `constant` plus a coefficient for front scale, rear scale, hitch load and trailer mass.
#[derive(Clone, Copy, Debug)]
pub(super) struct Linear {
    pub(super) constant_kg: f64,
    pub(super) by: [f64; 4],
}

impl Linear {
    /// Value and standard uncertainty for these inputs.
    pub(super) fn of(self, inputs: [Reading; 4]) -> Reading {
        let [mut value, mut square] = [self.constant_kg, 0.0];
        for (c, input) in self.by.into_iter().zip(inputs) {
            value += c * input.value;
            square += (c * input.u) * (c * input.u);
        }
        Reading { value, u: sqrt(square) }
    }
}

/// Every load of a combination as a linear function of the four weighed inputs.
#[derive(Clone, Copy, Debug)]
pub(super) struct Statics {
    pub(super) hitch: Linear,
    pub(super) front: Linear,
    pub(super) rear: Linear,
    pub(super) truck: Linear,
    pub(super) trailer_axles: Linear,
    pub(super) combination: Linear,
}

impl Statics {
    pub(super) fn new(levers: Levers, distribution: Distribution) -> Result<Self> {
        let wheelbase_mm = positive("wheelbase_mm", levers.wheelbase_mm)?;
        let lever = within("overhang_mm", levers.overhang_mm, -wheelbase_mm, 2.0 * wheelbase_mm)? / wheelbase_mm;
        let Distribution { moment_nm, ball_to_axle_mm } = distribution;
        let moment_kg_mm = 1000.0 * within("moment_nm", moment_nm, 0.0, 1e6)? / GRAVITY_M_S2;
        if ball_to_axle_mm.is_nan() || ball_to_axle_mm <= 0.0 {
            return Err(Error::NotPositive { name: "ball_to_axle_mm", value: ball_to_axle_mm });
        }
        let [off_hitch, by_bars] = [moment_kg_mm / ball_to_axle_mm, moment_kg_mm / wheelbase_mm];
        let linear = |constant_kg, by| Linear { constant_kg, by };
        Ok(Self {
            hitch: linear(-off_hitch, [0.0, 0.0, 1.0, 0.0]),
            front: linear(off_hitch * lever + by_bars, [1.0, 0.0, -lever, 0.0]),
            rear: linear(-off_hitch * (1.0 + lever) - by_bars, [0.0, 1.0, 1.0 + lever, 0.0]),
            truck: linear(-off_hitch, [1.0, 1.0, 1.0, 0.0]),
            trailer_axles: linear(off_hitch, [0.0, 0.0, -1.0, 1.0]),
            combination: linear(0.0, [1.0, 1.0, 0.0, 1.0]),
        })
    }
}

/// The weighed inputs, if they can be.
pub(super) fn weighed_inputs(weighed: AxleWeights, trailer: Trailer) -> Result<[Reading; 4]> {
    let reading = |name, given: Reading, least: f64, most: f64| -> Result<Reading> {
        within(name, given.value, least, most)?;
        Reading::new(given.value, given.u)
    };
    let front = reading("front_kg", weighed.front_kg, 1.0, 1e6)?;
    let rear = reading("rear_kg", weighed.rear_kg, 1.0, 1e6)?;
    let mass = reading("mass_kg", trailer.mass_kg, 0.0, 1e6)?;
    let hitch = reading("hitch_kg", trailer.hitch_kg, 0.0, mass.value)?;
    Ok([front, rear, hitch, mass])
}

impl Trailer {
    /// A trailer of which the share that rests on the hitch is known.
    ///
    /// T = f·m, u² = (m·u_f)² + (f·u_m)²
    ///
    /// * `mass_kg` — m, above 0; `hitch_share` — f, 0 to 0.5
    /// * returns [`Trailer`]
    /// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
    ///
    /// Source: definition. Example (trade guidance, read): 10 % of 5000 lb are 500 lb.
    ///
    /// ```
    /// use trainwright::{judge::Reading, tow::Trailer, units::{kg_to_lb, lb_to_kg}};
    /// let trailer = Trailer::by_share(Reading::exact(lb_to_kg(5000.0))?, Reading::exact(0.10)?)?;
    /// assert!((kg_to_lb(trailer.hitch_kg.value) - 500.0).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn by_share(mass_kg: Reading, hitch_share: Reading) -> Result<Self> {
        let mass = Reading::new(positive("mass_kg", mass_kg.value)?, mass_kg.u)?;
        let share = Reading::new(within("hitch_share", hitch_share.value, 0.0, 0.5)?, hitch_share.u)?;
        let u = hypot(mass.value * share.u, share.value * mass.u);
        Ok(Self { mass_kg: mass, hitch_kg: Reading::new(share.value * mass.value, u)? })
    }
}

/// Hitch loads that a band of shares allows a trailer.
///
/// f_low·m ≤ T ≤ f_high·m
///
/// * `mass_kg` — m, above 0; `share` — f_low and f_high, 0 to 0.5: the trailer maker's, or by name from
///   [`practice`](crate::practice)
/// * returns the limits, kg
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`], [`Error::Reversed`]
///
/// Source: common practice. Example (trade guidance, read): 10 to 15 % of 10 000 lb are 1000 to 1500 lb.
///
/// ```
/// use trainwright::{judge::Limits, tow::share_band_kg};
/// let band = share_band_kg(10_000.0, Limits::between(0.10, 0.15)?)?;
/// assert_eq!((band.lower, band.upper), (1000.0, 1500.0));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn share_band_kg(mass_kg: f64, share: Limits) -> Result<Limits> {
    let mass_kg = positive("mass_kg", mass_kg)?;
    let lower = within("share.lower", share.lower, 0.0, 0.5)?;
    let upper = within("share.upper", share.upper, 0.0, 0.5)?;
    Limits::between(lower * mass_kg, upper * mass_kg)
}

/// Loads of the axles of a truck and of its trailer from the scale, the hitch load and the levers.
///
/// F' = F − T·d/L + M/(g·L), R' = R + T·(1 + d/L) − M/(g·L), T = T₀ − M/(g·s), m_A = m − T
///
/// * `weighed` — F and R, 1 kg or more; `trailer` — T₀ and m, T₀ from 0 to m
/// * `levers` — L, above 0; d, −L to 2·L, negative ahead of the rear axle
/// * `distribution` — M, 0 or more, and s; [`Distribution::NONE`] without one
/// * returns [`CombinationLoads`], each load with the uncertainty that the scales bring
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]; [`Error::NoAnswer`] where an axle would leave the road
///
/// Source: equilibrium of moments (derived). Example (computed independently): 1650 and 1250 kg, wheelbase 3900 mm, 450 kg
/// 1300 mm behind the rear axle: 1500 and 1850 kg.
///
/// ```
/// use trainwright::judge::Reading;
/// use trainwright::tow::{AxleWeights, Distribution, Levers, Trailer, axle_loads};
/// let weighed = AxleWeights { front_kg: Reading::exact(1650.0)?, rear_kg: Reading::exact(1250.0)? };
/// let trailer = Trailer { mass_kg: Reading::exact(4000.0)?, hitch_kg: Reading::exact(450.0)? };
/// let levers = Levers { wheelbase_mm: 3900.0, overhang_mm: 1300.0 };
/// let loads = axle_loads(weighed, trailer, levers, Distribution::NONE)?;
/// assert!((loads.front_kg.value - 1500.0).abs() < 1e-9 && (loads.rear_kg.value - 1850.0).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn axle_loads(
    weighed: AxleWeights,
    trailer: Trailer,
    levers: Levers,
    distribution: Distribution,
) -> Result<CombinationLoads> {
    let inputs = weighed_inputs(weighed, trailer)?;
    let statics = Statics::new(levers, distribution)?;
    let [front_kg, rear_kg] = [statics.front.of(inputs), statics.rear.of(inputs)];
    let [hitch_kg, trailer_axles_kg] = [statics.hitch.of(inputs), statics.trailer_axles.of(inputs)];
    if front_kg.value <= 0.0 || rear_kg.value <= 0.0 {
        return Err(Error::NoAnswer {
            name: "hitch_kg",
            why: "an axle of the truck would leave the road; check hitch load, overhang, wheelbase and the moment of the bars",
        });
    }
    if hitch_kg.value < 0.0 {
        return Err(Error::NoAnswer {
            name: "moment_nm",
            why: "the bars would lift the coupler off the ball; check the moment and the distance to the trailer's axles",
        });
    }
    Ok(CombinationLoads {
        hitch_kg,
        front_change_kg: front_kg.value - weighed.front_kg.value,
        rear_change_kg: rear_kg.value - weighed.rear_kg.value,
        front_kg,
        rear_kg,
        truck_kg: statics.truck.of(inputs),
        trailer_axles_kg,
        combination_kg: statics.combination.of(inputs),
    })
}

/// Moment of a weight-distributing hitch that gives the front axle back a part of what the hitch load lifted off it, N·m.
///
/// M = g·q·T₀·d/(1 + d/s)
///
/// * `hitch_kg` — T₀ without the bars, 0 or more; `levers` — d must be above 0; `ball_to_axle_mm` — s, above 0
/// * `restored_share` — q, 0 (nothing) to 1 (the front axle as without a trailer): the maker of vehicle or hitch says which
/// * errors: [`Error::OutOfRange`], [`Error::NotPositive`]; [`Error::NoAnswer`] for a hitch that is not behind the rear axle
///
/// Source: [`axle_loads`] solved for the moment (derived).
pub fn restoring_moment_nm(hitch_kg: f64, levers: Levers, ball_to_axle_mm: f64, restored_share: f64) -> Result<f64> {
    let hitch_kg = within("hitch_kg", hitch_kg, 0.0, 1e6)?;
    positive("wheelbase_mm", levers.wheelbase_mm)?;
    let overhang_mm = finite("overhang_mm", levers.overhang_mm)?;
    if overhang_mm <= 0.0 {
        return Err(Error::NoAnswer {
            name: "overhang_mm",
            why: "a hitch over or ahead of the rear axle lifts nothing off the front axle: there is nothing to give back",
        });
    }
    let share = within("restored_share", restored_share, 0.0, 1.0)?;
    let over = overhang_mm / positive("ball_to_axle_mm", ball_to_axle_mm)?;
    Ok(GRAVITY_M_S2 * share * hitch_kg * overhang_mm / 1000.0 / (1.0 + over))
}
