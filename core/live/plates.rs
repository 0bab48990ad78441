//! Heat of the plates from shift to shift.

use super::MAX_LIVE_ELEMENTS;
use super::plan::LivePlan;
use crate::real::single::whole_u16;

/// Excess of each element's plates over the fluid when the last shift ended, in parts of [`KELVIN`].
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Plates {
    excess: [u16; MAX_LIVE_ELEMENTS],
    /// That time, in 1024 µs.
    at: u32,
}

/// Parts of a kelvin: up to 2000 K, finer than any energy of a shift is known.
const KELVIN: f32 = 32.0;

impl Plates {
    pub(super) const NONE: Self = Self { excess: [0; MAX_LIVE_ELEMENTS], at: 0 };

    /// Cools all plates until now, then heats those of one element. Returns their temperature; NaN where it cannot be told.
    pub(super) fn take(&mut self, plan: &LivePlan, (element, energy_j): (u8, f32), fluid_c: f32, time_us: u64) -> f32 {
        let now = (time_us >> 10) as u32;
        let span_s = now.wrapping_sub(core::mem::replace(&mut self.at, now)) as f32 * 1.024e-3;
        let mut plate_c = f32::NAN;
        for (number, excess) in (0_u8..).zip(&mut self.excess) {
            let plates = plan.element(number);
            if !plates.is_known() {
                continue;
            }
            let mut excess_k = f32::from(*excess) / KELVIN * plates.share_that_stays(span_s);
            if number == element && energy_j >= 0.0 {
                excess_k += energy_j / plates.heat_capacity_j_k;
                plate_c = fluid_c + excess_k;
            }
            *excess = whole_u16(excess_k * KELVIN + 0.5);
        }
        plate_c
    }
}
