//! Pump and cooler of a record, as the hydraulic chapter takes them.

use super::{Family, Fluids};
use crate::error::{Error, Result};
use crate::fluid::Fluid;
use crate::hydraulic::{CoolerLimits, Pump, oil_at};
use crate::judge::Reading;

/// Temperature at which a record states the leak of the pump, °C.
const LEAK_C: f64 = 90.0;

impl Family {
    /// The pump. Its leak is taken to have been measured in this fluid; what the record does not state as uncertain is taken as
    /// exact.
    pub fn pump(&self, fluid: &Fluid) -> Result<Pump> {
        let pump = self.pump.as_ref().ok_or(Error::Missing { name: "pump", why: "the record describes no pump" })?;
        Ok(Pump {
            displacement_cm3_rev: Reading::relative(pump.displacement_cm3_rev, pump.u_rel_displacement.unwrap_or(0.0))?,
            leak_l_min_mpa: Reading::relative(pump.leak_90c_l_min_mpa, pump.u_rel_leak.unwrap_or(0.0))?,
            leak_viscosity_mpa_s: oil_at(fluid, Reading::exact(LEAK_C)?)?.viscosity_mpa_s.value,
        })
    }
}

impl Fluids {
    /// Least return flow of the cooler by fluid temperature.
    pub fn cooler_limits(&self) -> Result<CoolerLimits> {
        let cooler = self.cooler.as_ref().ok_or(Error::Missing {
            name: "cooler",
            why: "the record states no least flow; give it in [cooler], by temperature",
        })?;
        CoolerLimits::from_flows(&cooler.temperature_c, &cooler.least_flow_l_min)
    }
}
