//! Heat of the plates from shift to shift.

use super::MAX_LIVE_ELEMENTS;
use super::plan::LivePlan;

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
    #[inline(never)]
    pub(super) fn take(&mut self, plan: &LivePlan, (element, energy_j): (u8, f32), fluid_c: f32, time_us: u64) -> f32 {
        let now = (time_us >> 10) as u32;
        let span_s = now.wrapping_sub(core::mem::replace(&mut self.at, now)) as f32 * 1.024e-3;
        let mut plate_c = f32::NAN;
        for (number, (plates, excess)) in plan.elements.iter().zip(&mut self.excess).enumerate() {
            if !plates.is_known() {
                continue;
            }
            let mut excess_k = plates.plate_after_c(f32::from(*excess) / KELVIN, 0.0, 0.0, span_s);
            if number == usize::from(element) && energy_j >= 0.0 {
                excess_k += energy_j / plates.heat_capacity_j_k;
                plate_c = fluid_c + excess_k;
            }
            *excess = (excess_k * KELVIN + 0.5) as u16;
        }
        plate_c
    }
}
