//! Level and fill: what to add, drain or pour.

use pyo3::prelude::*;
use pyo3::types::PyFloat;
use trainwright::fluid as core;

use super::density::Fluid;
use super::sump::Sump;
use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};
use crate::error::answer;
use crate::judge::{Budget, Judgment, Reading, Rule};
use crate::quantity::Number;

class! {
    /// What a record states of the fill of a unit. All of `dry_l` grows with temperature, into the sump's free area.
    "trainwright.fluid" Fill = core::Fill, checked by usable {
        /// Free area of the sump.
        sump: Sump,
        /// Whole fill, filled to the edge at the reference temperature; cooler and lines included.
        dry_l: f64,
        /// Part that a drain takes.
        service_l: f64,
        /// Part that stands in cooler and lines.
        cooler_and_lines_l: f64,
        /// Part that runs back into the sump when the engine stops.
        drainback_off_l: f64,
        /// Least temperature of the level check.
        check_low_c: f64,
        /// Greatest temperature of the level check.
        check_high_c: f64,
        /// Temperature at which a right fill stands at the edge.
        check_reference_c: f64,
        /// Level below which the pickup draws air.
        pickup_uncovers_mm: f64,
        /// Level above which a rotating part dips.
        gear_dips_mm: f64,
    }
}

fn usable(fill: core::Fill) -> trainwright::Result<core::Fill> {
    fill.check_fill().map(|()| fill)
}

#[pymethods]
impl Fill {
    /// Level at a temperature; `excess_ml` at the reference temperature is 0 for a right fill. Arrays give a dictionary of
    /// arrays.
    /// Source: follows from the definitions (all the growth goes into the sump's free area).
    #[pyo3(signature = (fluid, *, temp_c, excess_ml = None))]
    fn level_at<'py>(
        &self,
        py: Python<'py>,
        fluid: Fluid,
        temp_c: Input<'py>,
        excess_ml: Option<Input<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("excess_ml", excess_or_none(py, excess_ml)?), ("temp_c", temp_c)];
        map_class::<LevelAt, _, 2, 6>(py, columns, |[excess_ml, temp_c]| self.0.level_at(&fluid.0, excess_ml, temp_c))
    }

    /// Volume to add or drain now, with its uncertainty, and the fill judged against the check window. Hot fluid burns.
    /// Source: JCGM 100:2008, clause 5.1.2, equation 10, uncorrelated inputs.
    #[pyo3(signature = (fluid, check, rule))]
    fn adjust_fill(&self, fluid: Fluid, check: LevelCheck, rule: Rule) -> PyResult<Adjustment> {
        answer(self.0.adjust_fill(&fluid.0, check.0, rule.0))
    }

    /// Level with the engine stopped, when the drain-back has come into the sump.
    /// Source: follows from the definitions (volumes add).
    #[pyo3(signature = (*, running_level_mm, out = None))]
    fn engine_off_level_mm<'py>(
        &self,
        py: Python<'py>,
        running_level_mm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("running_level_mm", running_level_mm)], out, |[level]| self.0.engine_off_level_mm(level))
    }

    /// Temperature above which a rotating part dips.
    /// Source: follows from the definitions (fluid.level_at solved for t).
    #[pyo3(signature = (fluid, *, excess_ml = None, out = None))]
    fn gear_dips_at_c<'py>(
        &self,
        py: Python<'py>,
        fluid: Fluid,
        excess_ml: Option<Input<'py>>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("excess_ml", excess_or_none(py, excess_ml)?)], out, |[excess]| {
            self.0.gear_dips_at_c(&fluid.0, excess)
        })
    }

    /// Volume that may be lost, from this level, until the pickup draws air.
    /// Source: follows from the definitions (difference of volumes).
    #[pyo3(signature = (*, level_mm, out = None))]
    fn loss_to_pickup_ml<'py>(
        &self,
        py: Python<'py>,
        level_mm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("level_mm", level_mm)], out, |[level]| self.0.loss_to_pickup_ml(level))
    }

    /// Volumes to pour for a dry, a service and a cooler fill, at the temperature of the fluid in the can.
    /// Source: follows from the definitions (definition of cubic expansion).
    #[pyo3(signature = (fluid, *, can_c))]
    fn pour_volumes(&self, fluid: Fluid, can_c: Number) -> PyResult<PourVolumes> {
        answer(self.0.pour_volumes(&fluid.0, can_c.value("can_c")?))
    }
}

/// The excess that was given, or that of a right fill.
fn excess_or_none<'py>(py: Python<'py>, excess_ml: Option<Input<'py>>) -> PyResult<Input<'py>> {
    match excess_ml {
        Some(excess_ml) => Ok(excess_ml),
        None => PyFloat::new(py, 0.0).extract(),
    }
}

class! {
    /// Level at a temperature, with what it was computed from.
    "trainwright.fluid" LevelAt = core::LevelAt, explained by ["fluid.level_at"] {
        /// All the fluid at this temperature.
        total_ml: f64,
        /// Part of it above the overflow edge, negative below.
        above_edge_ml: f64,
        /// Level above the overflow edge.
        level_mm: f64,
        /// Level that a sump of constant area would show: the usual shortcut, to see its error.
        constant_area_level_mm: f64,
        /// Left until the rotating part dips.
        gear_margin_mm: f64,
        /// Left until the pickup draws air.
        pickup_margin_mm: f64,
    }
}

columns! {
    LevelAt[6]: total_ml, above_edge_ml, level_mm, constant_area_level_mm, gear_margin_mm, pickup_margin_mm
}

class! {
    /// What was read at a level check, engine idling, vehicle level.
    "trainwright.fluid" LevelCheck = core::LevelCheck {
        /// Temperature of the fluid, °C.
        temp_c: Reading,
        /// Level above the overflow edge, mm; 0 when it just runs over.
        level_mm: Reading,
        /// True free area over that of the table: 1 with its standard uncertainty.
        area_scale: Reading,
    }
}

class! {
    /// What to add or drain, with what it was computed from.
    "trainwright.fluid" Adjustment = core::Adjustment, explained by ["fluid.adjust_fill"],
        inputs ["temperature", "level", "area"] {
        /// All the fluid there is now, at this temperature.
        present_ml: f64,
        /// All the fluid there should be now, at this temperature.
        right_ml: f64,
        /// Add this now, at this temperature, to be right; drain it where negative.
        add_now_ml: Reading,
        /// Too much (negative: too little) at the reference temperature, judged against what the check window would leave.
        excess_ml: Judgment,
        /// Where the uncertainty of the excess comes from: temperature, level, area, in this order.
        budget: Budget,
        /// Probability that the temperature lies in the check window.
        chance_in_window: f64,
    }
}

class! {
    /// Volumes to pour, at the temperature of the fluid in the can.
    "trainwright.fluid" PourVolumes = core::PourVolumes, explained by ["fluid.pour_volumes"] {
        /// Into an empty unit.
        dry_ml: f64,
        /// After a drain.
        service_ml: f64,
        /// More of it where cooler and lines were emptied too.
        cooler_ml: f64,
        /// Share of old fluid that a service leaves.
        old_share: f64,
    }
}
