//! Coolers by effectiveness and number of transfer units.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::{abs, exp_m1, ln, ln_1p, powf};

pub(super) const EFFECTIVENESS: Card = Card {
    id: "tow.effectiveness",
    purpose: "Share of the greatest possible heat that a cooler passes",
    equation: "counterflow ε = (1 − e^(−N(1 − C)))/(1 − C·e^(−N(1 − C))), crossflow ε = 1 − e^(N^0.22·(e^(−C·N^0.78) − 1)/C), parallel ε = (1 − e^(−N(1 + C)))/(1 + C)",
    symbols: &[
        symbol("ε", "result", "1"),
        symbol("N", "transfer_units: UA over the lesser heat capacity rate", "1"),
        symbol("C", "capacity_ratio: lesser over greater heat capacity rate", "1"),
    ],
    range: "both fluids unmixed in crossflow, whose formula is an approximation: within 4 % of the exact series from N = 0.05 to 10",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 11, effectiveness relations",
};

pub(super) const COOLER_HEAT: Card = Card {
    id: "tow.cooler_heat",
    purpose: "Heat that a cooler takes from oil of a temperature",
    equation: "P = ε·C_min·(t_oil − t_air), N = UA/C_min, C = C_min/C_max",
    symbols: &[
        symbol("P", "power_kw", "kW"),
        symbol("ε", "effectiveness", "1"),
        symbol("C_min, C_max", "lesser and greater of cooler.oil_w_k and cooler.air_w_k", "W/K"),
        symbol("t_oil, t_air", "oil_c, air_c: where each enters", "°C"),
        symbol("N", "transfer_units", "1"),
        symbol("UA", "cooler.ua_w_k", "W/K"),
        symbol("C", "capacity_ratio", "1"),
    ],
    range: "UA at this flow of oil and air: it falls with both",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 11, effectiveness and number of transfer units",
};

pub(super) const COOLER_SIZE: Card = Card {
    id: "tow.cooler_size",
    purpose: "Size of a cooler that brings oil from one temperature to another",
    equation: "P = C_oil·(t_1 − t_2), ε = P/(C_min·(t_1 − t_air)), UA = N(ε)·C_min",
    symbols: &[
        symbol("P", "power_kw", "kW"),
        symbol("C_oil", "oil_w_k", "W/K"),
        symbol("t_1, t_2", "task.oil_in_c, task.oil_out_c", "°C"),
        symbol("ε", "effectiveness", "1"),
        symbol("C_min", "lesser of oil_w_k and air_w_k", "W/K"),
        symbol("t_air", "task.air_in_c", "°C"),
        symbol("UA", "ua_w_k", "W/K"),
        symbol("N", "transfer_units, tow.transfer_units", "1"),
    ],
    range: "as tow.effectiveness; in counterflow the same as the logarithmic mean difference gives",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 11, effectiveness and number of transfer units",
};

pub(super) const TRANSFER_UNITS: Card = Card {
    id: "tow.transfer_units",
    purpose: "Number of transfer units for an effectiveness",
    equation: "counterflow N = ln((1 − ε·C)/(1 − ε))/(1 − C), parallel N = −ln(1 − ε·(1 + C))/(1 + C); crossflow by bisection",
    symbols: &[symbol("N", "result", "1"), symbol("ε", "effectiveness", "1"), symbol("C", "capacity_ratio", "1")],
    range: "effectiveness below what an endless cooler has",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 11, relations of the number of transfer units",
};

/// How the two flows of a cooler pass each other.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Arrangement {
    /// Against each other.
    Counterflow,
    /// Across, neither mixed: fins on both sides.
    Crossflow,
    /// Side by side, the same way.
    Parallel,
}

/// Near enough to 1 for the limits of the formulas at equal heat capacity rates.
const NEARLY_EQUAL: f64 = 1e-9;

/// Most transfer units looked at: beyond, a cooler is endless.
const ENDLESS: f64 = 1e4;

impl Arrangement {
    /// Share of the greatest possible heat that a cooler passes.
    ///
    /// counterflow ε = (1 − e^(−N(1 − C)))/(1 − C·e^(−N(1 − C))), crossflow ε = 1 − e^(N^0.22·(e^(−C·N^0.78) − 1)/C), parallel
    /// ε = (1 − e^(−N(1 + C)))/(1 + C)
    ///
    /// * `transfer_units` — N = UA/C_min, 0 or more; `capacity_ratio` — C = C_min/C_max, 0 to 1; 0 where one side boils or
    ///   flows without end
    /// * returns ε, 0 to 1
    /// * errors: [`Error::OutOfRange`]
    ///
    /// Source: Incropera, chapter 11 (from memory). Example: N = 1 with equal rates in counterflow is ½.
    ///
    /// ```
    /// use trainwright::tow::Arrangement;
    /// assert!((Arrangement::Counterflow.effectiveness(1.0, 1.0)? - 0.5).abs() < 1e-12);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn effectiveness(self, transfer_units: f64, capacity_ratio: f64) -> Result<f64> {
        let n = within("transfer_units", transfer_units, 0.0, ENDLESS)?;
        let c = within("capacity_ratio", capacity_ratio, 0.0, 1.0)?;
        Ok(match self {
            Self::Counterflow if 1.0 - c < NEARLY_EQUAL => n / (1.0 + n),
            Self::Counterflow => {
                let gone = exp_m1(-n * (1.0 - c));
                -gone / (1.0 - c - c * gone)
            }
            Self::Parallel => -exp_m1(-n * (1.0 + c)) / (1.0 + c),
            Self::Crossflow if c < NEARLY_EQUAL || n <= 0.0 => -exp_m1(-n),
            Self::Crossflow => -exp_m1(powf(n, 0.22) * exp_m1(-c * powf(n, 0.78)) / c),
        })
    }

    /// Transfer units for an effectiveness.
    ///
    /// counterflow N = ln((1 − ε·C)/(1 − ε))/(1 − C), parallel N = −ln(1 − ε·(1 + C))/(1 + C); crossflow by bisection
    ///
    /// * `effectiveness` — ε, 0 to below what an endless cooler has; `capacity_ratio` — C, 0 to 1
    /// * errors: [`Error::OutOfRange`]; [`Error::NoAnswer`] where no cooler of this arrangement has this effectiveness
    ///
    /// Source: Incropera, chapter 11 (from memory).
    pub fn transfer_units(self, effectiveness: f64, capacity_ratio: f64) -> Result<f64> {
        let e = within("effectiveness", effectiveness, 0.0, 1.0)?;
        let c = within("capacity_ratio", capacity_ratio, 0.0, 1.0)?;
        let n = match self {
            Self::Counterflow if 1.0 - c < NEARLY_EQUAL => e / (1.0 - e),
            Self::Counterflow => ln((1.0 - e * c) / (1.0 - e)) / (1.0 - c),
            Self::Parallel => -ln_1p(-e * (1.0 + c)) / (1.0 + c),
            Self::Crossflow => self.bisected(e, c)?,
        };
        if n.is_finite() && n < ENDLESS {
            return Ok(n);
        }
        Err(Error::NoAnswer {
            name: "effectiveness",
            why: "no cooler of this arrangement passes so much, however large: more flow of air or oil would, or a higher limit",
        })
    }

    fn bisected(self, e: f64, c: f64) -> Result<f64> {
        let (mut low, mut high) = (0.0, ENDLESS);
        if self.effectiveness(high, c)? <= e {
            return Ok(f64::INFINITY);
        }
        for _ in 0..200 {
            let middle = 0.5 * (low + high);
            if self.effectiveness(middle, c)? < e {
                low = middle;
            } else {
                high = middle;
            }
        }
        Ok(0.5 * (low + high))
    }
}

/// A cooler at a flow of oil and air.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cooler {
    /// Heat that passes for each kelvin of mean difference: its size, at these flows.
    pub ua_w_k: f64,
    /// Heat that the oil carries for each kelvin, [`super::flow_heat_w_k`].
    pub oil_w_k: f64,
    /// Heat that the air (or coolant) carries for each kelvin.
    pub air_w_k: f64,
    /// How the two pass each other.
    pub arrangement: Arrangement,
}

/// What a cooler takes.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolerHeat {
    /// Transfer units.
    pub transfer_units: f64,
    /// Lesser over greater heat capacity rate.
    pub capacity_ratio: f64,
    /// Share of the greatest possible heat.
    pub effectiveness: f64,
    /// Heat for each kelvin between the two that enter: what a [`super::HeatNode`] takes.
    pub conductance_w_k: f64,
    /// Heat; negative where the air warms the oil.
    pub power_kw: f64,
    /// Oil that leaves.
    pub oil_out_c: f64,
    /// Air that leaves.
    pub air_out_c: f64,
}

impl Cooler {
    /// Heat that a cooler takes from oil of a temperature.
    ///
    /// P = ε·C_min·(t_oil − t_air), N = UA/C_min, C = C_min/C_max
    ///
    /// * `oil_c`, `air_c` — where each enters, −273.15 to 1000
    /// * returns [`CoolerHeat`]
    /// * errors: [`Error::NotPositive`] for a size or rate, [`Error::OutOfRange`]
    ///
    /// Source: Incropera, chapter 11 (from memory).
    pub fn cooler_heat(self, oil_c: f64, air_c: f64) -> Result<CoolerHeat> {
        let oil_w_k = positive("oil_w_k", self.oil_w_k)?;
        let air_w_k = positive("air_w_k", self.air_w_k)?;
        let oil_c = within("oil_c", oil_c, -273.15, 1000.0)?;
        let air_c = within("air_c", air_c, -273.15, 1000.0)?;
        let (least, most) = if oil_w_k < air_w_k { (oil_w_k, air_w_k) } else { (air_w_k, oil_w_k) };
        let transfer_units = positive("ua_w_k", self.ua_w_k)? / least;
        let capacity_ratio = least / most;
        let effectiveness = self.arrangement.effectiveness(transfer_units, capacity_ratio)?;
        let conductance_w_k = effectiveness * least;
        let watts = conductance_w_k * (oil_c - air_c);
        Ok(CoolerHeat {
            transfer_units,
            capacity_ratio,
            effectiveness,
            conductance_w_k,
            power_kw: watts / 1000.0,
            oil_out_c: oil_c - watts / oil_w_k,
            air_out_c: air_c + watts / air_w_k,
        })
    }
}

/// Temperatures that a cooler must bring about.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolerTask {
    /// Oil that enters.
    pub oil_in_c: f64,
    /// Oil that leaves.
    pub oil_out_c: f64,
    /// Air (or coolant) that enters.
    pub air_in_c: f64,
}

/// The size of a cooler.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolerSize {
    /// Heat that it takes.
    pub power_kw: f64,
    /// Air that leaves.
    pub air_out_c: f64,
    /// Share of the greatest possible heat.
    pub effectiveness: f64,
    /// Transfer units.
    pub transfer_units: f64,
    /// Its size.
    pub ua_w_k: f64,
    /// Logarithmic mean difference of a counterflow cooler of these four temperatures.
    pub log_mean_k: f64,
}

/// Size of a cooler that brings oil from one temperature to another.
///
/// P = C_oil·(t_1 − t_2), ε = P/(C_min·(t_1 − t_air)), UA = N(ε)·C_min
///
/// * `oil_w_k`, `air_w_k` — heat capacity rates, above 0; `task` — t_1 above t_2 above t_air
/// * returns [`CoolerSize`]
/// * errors: [`Error::Inconsistent`] where oil is not cooled, or below the air; [`Error::NoAnswer`] where no cooler does it
///
/// Source: Incropera, chapter 11 (from memory). Example: oil of 4989.46 W/K from 150 to 40 °C against 5694.32 W/K from 21 °C
/// takes 21 780 W/K in counterflow. A published solution has 21 642, from temperatures rounded to whole degrees.
///
/// ```
/// use trainwright::tow::{Arrangement, CoolerTask, cooler_size};
/// let task = CoolerTask { oil_in_c: 150.0, oil_out_c: 40.0, air_in_c: 21.0 };
/// let size = cooler_size(Arrangement::Counterflow, 4989.46, 5694.32, task)?;
/// assert!((size.effectiveness - 0.8527).abs() < 1e-4 && (size.ua_w_k - 21_642.0).abs() < 150.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn cooler_size(arrangement: Arrangement, oil_w_k: f64, air_w_k: f64, task: CoolerTask) -> Result<CoolerSize> {
    let CoolerTask { oil_in_c, oil_out_c, air_in_c } = task;
    let oil_w_k = positive("oil_w_k", oil_w_k)?;
    let air_w_k = positive("air_w_k", air_w_k)?;
    for (name, temp_c) in [("oil_in_c", oil_in_c), ("oil_out_c", oil_out_c), ("air_in_c", air_in_c)] {
        within(name, temp_c, -273.15, 1000.0)?;
    }
    if oil_out_c >= oil_in_c || oil_out_c <= air_in_c {
        return Err(Error::Inconsistent {
            name: "oil_out_c",
            why: "the oil leaves between the temperatures at which oil and air enter; correct one of the three",
        });
    }
    let (least, most) = if oil_w_k < air_w_k { (oil_w_k, air_w_k) } else { (air_w_k, oil_w_k) };
    let watts = oil_w_k * (oil_in_c - oil_out_c);
    let effectiveness = watts / (least * (oil_in_c - air_in_c));
    let air_out_c = air_in_c + watts / air_w_k;
    let impossible = Error::NoAnswer {
        name: "effectiveness",
        why: "the air would leave hotter than the oil enters: more air, or a smaller drop of the oil",
    };
    let transfer_units = match effectiveness < 1.0 {
        true => arrangement.transfer_units(effectiveness, least / most)?,
        false => return Err(impossible),
    };
    let (hot_k, cold_k) = (oil_in_c - air_out_c, oil_out_c - air_in_c);
    let ratio = hot_k / cold_k;
    let equal = abs(ratio - 1.0) < NEARLY_EQUAL;
    Ok(CoolerSize {
        power_kw: watts / 1000.0,
        air_out_c,
        effectiveness,
        transfer_units,
        ua_w_k: transfer_units * least,
        log_mean_k: if equal { cold_k } else { (hot_k - cold_k) / ln(ratio) },
    })
}
