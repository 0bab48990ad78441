//! Bushings in a housing of another metal.

use pyo3::prelude::*;
use trainwright::fit as core;

use super::press::{Elastic, Pressed};
use super::warm::{WarmClearance, WarmPart, Warmth};
use crate::array::{Input, map_class};
use crate::class::class;
use crate::error::answer;
use crate::judge::{Budget, Limits, Reading, Rule};

class! {
    /// A metal: elastic constants and expansion.
    ///
    /// >>> aluminum = Metal(elastic=Elastic(young_mpa=practice.ALUMINUM_YOUNG_MPA, poisson=practice.ALUMINUM_POISSON),
    /// ...                  expansion_per_k=Reading.rectangular(22.5e-6, half_width=1.5e-6))
    /// >>> aluminum.elastic.young_mpa
    /// 71000.0
    "trainwright.fit" Metal = core::Metal {
        /// Elastic constants.
        elastic: Elastic,
        /// Linear expansion, 1/K.
        expansion_per_k: Reading,
    }
}

class! {
    /// A bushing pressed in a housing. Sizes at 20 °C.
    ///
    /// >>> metal = lambda young, poisson, alpha: Metal(elastic=Elastic(young_mpa=young, poisson=poisson),
    /// ...                                             expansion_per_k=Reading.exact(alpha))
    /// >>> bushing = PressedBushing(housing_bore_mm=Reading.exact(43.0125), outside_mm=Reading.exact(43.0775), wall_mm=1.5,
    /// ...     bore_mm=Reading.exact(40.035), housing_outside_mm=74, housing=metal(71e3, 0.33, 23e-6),
    /// ...     shell=metal(206e3, 0.29, 11.5e-6))
    /// >>> round(bushing.bushing_at(temp_c=120).interference_mm, 4), round(bushing.let_go_c().value, 1)
    /// (0.0156, 151.6)
    "trainwright.fit" PressedBushing = core::PressedBushing {
        /// Bore of the housing, mm.
        housing_bore_mm: Reading,
        /// Outside of the bushing before it is pressed in, mm.
        outside_mm: Reading,
        /// Wall of the bushing, mm.
        wall_mm: f64,
        /// Bore of the bushing in place, mm.
        bore_mm: Reading,
        /// Outside of the housing around it, mm; infinite for a thick body.
        housing_outside_mm: f64,
        /// Metal of the housing.
        housing: Metal,
        /// Metal of the bushing's shell.
        shell: Metal,
    }
}

class! {
    /// What a bushing holds by friction.
    "trainwright.fit" HeldBushing = core::HeldBushing, explained by ["fit.bushing_held"] {
        /// The seat at this temperature.
        pressed: Pressed,
        /// Axial force at which it moves, N.
        force_n: Reading,
        /// Torque at which it turns, N·m.
        torque_nm: Reading,
        /// Where the uncertainty of the torque comes from: housing bore, outside of the bushing, expansion of the housing, of
        /// the shell, friction.
        budget: Budget,
    }
}

class! {
    /// Running clearance in a pressed bushing.
    "trainwright.fit" RunningClearance = core::RunningClearance, explained by ["fit.running_clearance"] {
        /// The seat at 20 °C.
        pressed_20c: Pressed,
        /// The seat at temperature.
        pressed: Pressed,
        /// Clearance at 20 °C and at temperature, judged. The budget lists shaft, bore, housing bore, outside of the bushing,
        /// expansion of the shaft, of the housing, of the shell, temperature, and how much warmer the shaft is.
        clearance: WarmClearance,
        /// What the clearance would be if the bore grew as the housing does, mm: too much.
        as_housing_mm: f64,
        /// What it would be if the bore grew as the free shell does, mm: too little while the seat still presses.
        as_shell_mm: f64,
    }
}

#[pymethods]
impl PressedBushing {
    /// The seat at a temperature, °C; an interference of 0 or less means that the bushing has let go. Arrays give a dictionary
    /// of arrays. Source: Shigley, chapter 3, press and shrink fits, with the thermal change of the interference.
    #[pyo3(signature = (*, temp_c))]
    fn bushing_at<'py>(&self, py: Python<'py>, temp_c: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        map_class::<Pressed, _, 1, 6>(py, [("temp_c", temp_c)], |[t]| self.0.bushing_at(t))
    }

    /// Temperature, °C, at which the bushing has no interference left. Source: its interference set to 0.
    fn let_go_c(&self) -> PyResult<Reading> {
        answer(self.0.let_go_c())
    }

    /// Torque and axial force at which the bushing moves, at a temperature, °C, for a length of seat, mm.
    /// Source: Shigley, chapter 7, press fits.
    #[pyo3(signature = (*, temp_c, length_mm, friction))]
    fn bushing_held(&self, temp_c: f64, length_mm: f64, friction: Reading) -> PyResult<HeldBushing> {
        answer(self.0.bushing_held(temp_c, length_mm, friction.0))
    }

    /// Running clearance of a shaft at temperature, mm, judged against the clearance wanted.
    /// Source: free size of the bushing less the closure of its bore (Lamé).
    #[pyo3(signature = (*, shaft, warmth, wanted_mm, rule))]
    fn running_clearance(
        &self,
        shaft: WarmPart,
        warmth: Warmth,
        wanted_mm: Limits,
        rule: Rule,
    ) -> PyResult<RunningClearance> {
        answer(self.0.running_clearance(shaft.0, warmth.0, wanted_mm.0, rule.0))
    }
}
