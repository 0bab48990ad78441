//! Temperature of the plates from the energy of the shifts. Parts just driven are hot.

use super::plan::{above_zero, at_least_zero, between};
use crate::error::Result;

/// What an element's plates take up and give away.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveElement {
    /// Heat capacity of its steel plates, J/K; 0: not known, then no temperature is formed.
    pub heat_capacity_j_k: f32,
    /// Time in which the plates' excess over the fluid falls to 1/e, s; above 0 where the heat capacity is known.
    pub cooling_s: f32,
    /// Temperature of the plates above which they are overheated, °C.
    pub limit_c: f32,
}

impl LiveElement {
    /// Nothing known.
    pub const UNKNOWN: Self = Self { heat_capacity_j_k: 0.0, cooling_s: 0.0, limit_c: 0.0 };
}

impl LiveElement {
    pub(super) fn check(&self) -> Result<()> {
        at_least_zero("heat_capacity_j_k", self.heat_capacity_j_k)?;
        if self.heat_capacity_j_k > 0.0 {
            above_zero("cooling_s", self.cooling_s)?;
            between("limit_c", self.limit_c, -100.0, 2000.0)?;
        }
        Ok(())
    }
}
