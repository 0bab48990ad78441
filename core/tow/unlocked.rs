//! A gear with the lock-up clutch open: what the converter makes of it, and what it turns into heat.

use super::pull::Rig;
use crate::card::{self, Card, symbol};
use crate::converter::Characteristic;
use crate::error::{Error, Result, within};
use crate::real::sqrt;
use crate::road::road_load;
use crate::units::rad_s;

pub(super) const UNLOCKED_PULL: Card = Card {
    id: "tow.unlocked_pull",
    purpose: "A gear on a grade with the lock-up clutch open: speed and torque of the engine, and the heat of the converter",
    equation: "T_t = μ(ν)·(n/K(ν))², ν = n_t/n, P = T_e·ω_e·(1 − ν·μ)",
    symbols: &[
        symbol("T_t", "turbine_nm", "N·m"),
        symbol("μ, ν", "torque_ratio, speed_ratio", "1"),
        symbol("n", "engine_rpm", "1/min"),
        symbol("K", "capacity factor of the impeller side, converter.capacity_factor_at", "1/min per √(N·m)"),
        symbol("n_t", "turbine_rpm", "1/min"),
        symbol("P", "converter_kw", "kW"),
        symbol("T_e", "engine_nm, at the angular speed ω_e", "N·m"),
    ],
    range: "steady speed; from the first to the last point of the characteristic. Minutes, not hours: it all becomes heat",
    source: &card::CONVERTER_TEST,
    locator: "definitions; match of turbine load and impeller torque",
};

/// One gear on a grade with the lock-up clutch open.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnlockedPull {
    /// Speed of turbine and input shaft.
    pub turbine_rpm: f64,
    /// Torque there.
    pub turbine_nm: f64,
    /// Turbine speed over engine speed.
    pub speed_ratio: f64,
    /// Turbine torque over engine torque.
    pub torque_ratio: f64,
    /// Engine speed.
    pub engine_rpm: f64,
    /// Engine torque that the converter takes there.
    pub engine_nm: f64,
    /// Full-throttle torque of the engine at that speed; 0 where its table does not say.
    pub full_nm: f64,
    /// Share of full torque in hand; negative where the engine is too weak, 0 where its table does not say.
    pub reserve: f64,
    /// The engine can give that torque at that speed.
    pub holds: bool,
    /// Torque at the turbine over the rating of the input: the converter multiplies, so this may pass 1 below full throttle.
    pub use_of_input: f64,
    /// Heat of the converter.
    pub converter_kw: f64,
}

/// Bisections of a bracket: more than the bits of a number.
const BISECTIONS: u32 = 60;

impl Rig {
    /// A gear on a grade with the lock-up clutch open.
    ///
    /// T_t = μ(ν)·(n/K(ν))², ν = n_t/n, P = T_e·ω_e·(1 − ν·μ)
    ///
    /// * `converter` — μ and K; `gear` — place of the gear, forward or reverse (driven backward); `grade_pct`, `speed_km_h` — as
    ///   [`Rig::pull`]
    /// * returns [`UnlockedPull`], at the highest speed ratio that carries the load
    /// * errors: as [`Rig::pull`]; [`Error::NoAnswer`] on the overrun, and where the load is lighter than the last point of the
    ///   characteristic carries: there the converter hardly slips
    ///
    /// Source: SAE J643, definitions (from memory); match derived.
    pub fn unlocked_pull(
        &self,
        converter: &Characteristic,
        gear: u32,
        grade_pct: f64,
        speed_km_h: f64,
    ) -> Result<UnlockedPull> {
        let Self { haul, ref gearing, ref engine, .. } = *self;
        gearing.checked()?;
        engine.check_engine_curve()?;
        converter.check_characteristic()?;
        within("gear", f64::from(gear), 0.0, f64::from(gearing.count) - 1.0)?;
        let offered = gearing.gear(gear);
        let ratio = crate::real::abs(offered.ratio);
        let load = road_load(haul.combination, haul.air_density_kg_m3, speed_km_h, grade_pct)?;
        let output_nm = haul.driveline.output_torque_nm(load.total_n, haul.axle_efficiency)?;
        let turbine_rpm = haul.driveline.output_rpm(speed_km_h)? * ratio;
        let turbine_nm = output_nm / (ratio * offered.efficiency);
        let (speed_ratio, engine_rpm) = matched(converter, turbine_rpm, turbine_nm)?;
        let torque_ratio = converter.torque_ratio_at(speed_ratio)?;
        let root = engine_rpm / converter.capacity_factor_at(speed_ratio)?;
        let engine_nm = root * root;
        let full_nm = engine.torque_at_nm(engine_rpm).ok().filter(|&full| full > 0.0);
        Ok(UnlockedPull {
            turbine_rpm,
            turbine_nm,
            speed_ratio,
            torque_ratio,
            engine_rpm,
            engine_nm,
            full_nm: full_nm.unwrap_or(0.0),
            reserve: full_nm.map_or(0.0, |full| 1.0 - engine_nm / full),
            holds: full_nm.is_some_and(|full| engine_nm <= full),
            use_of_input: turbine_nm / gearing.rated_nm(offered.ratio),
            converter_kw: engine_nm * rad_s(engine_rpm) * (1.0 - speed_ratio * torque_ratio) / 1000.0,
        })
    }
}

/// Speed ratio and engine speed at which the converter carries this torque at this turbine speed.
fn matched(converter: &Characteristic, turbine_rpm: f64, turbine_nm: f64) -> Result<(f64, f64)> {
    if turbine_nm <= 0.0 {
        return Err(Error::NoAnswer {
            name: "turbine_nm",
            why: "the road pushes: on the overrun the characteristic says nothing of what the converter carries",
        });
    }
    // Torque that the turbine gives at a speed ratio, less what the load takes.
    let surplus = |ratio: f64| {
        let torque_ratio = converter.torque_ratio_at(ratio)?;
        let root = turbine_rpm / (ratio * converter.capacity_factor_at(ratio)?);
        Ok::<f64, Error>(torque_ratio * root * root - turbine_nm)
    };
    let points = converter.points as usize;
    if turbine_rpm <= 0.0 {
        let torque_ratio = converter.torque_ratio_at(0.0)?;
        return Ok((0.0, converter.capacity_factor_at(0.0)? * sqrt(turbine_nm / torque_ratio)));
    }
    let ratios = converter.speed_ratio.iter().copied().take(points);
    let mut above = None;
    let mut bracket = None;
    for ratio in ratios {
        // At stall with a turning turbine the engine would turn without end.
        let carries = ratio <= 0.0 || surplus(ratio)? >= 0.0;
        match above {
            Some(low) if !carries => {
                bracket = Some((low, ratio));
                above = None;
            }
            _ if carries => above = Some(ratio),
            _ => {}
        }
    }
    if above.is_some() {
        return Err(Error::NoAnswer {
            name: "speed_ratio",
            why: "the load is lighter than what the last point of the characteristic carries: the converter hardly slips",
        });
    }
    let Some((mut low, mut high)) = bracket else {
        return Err(Error::NoAnswer {
            name: "speed_ratio",
            why: "the converter carries this load nowhere on its characteristic; give one that begins at stall",
        });
    };
    for _ in 0..BISECTIONS {
        let middle = 0.5 * (low + high);
        if surplus(middle)? >= 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    let ratio = 0.5 * (low + high);
    if ratio <= 0.0 {
        return Err(Error::NoAnswer { name: "speed_ratio", why: "the engine would turn without end at this load" });
    }
    Ok((ratio, turbine_rpm / ratio))
}
