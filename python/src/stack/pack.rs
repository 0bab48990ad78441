//! Clearance of a clutch pack, travel of its piston, and what filling it takes.

use pyo3::prelude::*;
use trainwright::stack as core;

use crate::class::class;
use crate::clutch::Annulus;
use crate::error::answer;
use crate::judge::{Budget, Judgment, Reading, Rule};

/// Room for the ring or plate of a pack, mm, from the clearance read with another one in place.
/// Source: follows from the definitions (E = g + t; JCGM 100:2008, equation 10 for u).
///
/// >>> room = room_from_fitted(clearance_mm=Reading(value=2.27, u=0.011), fitted_mm=Reading(value=2.90, u=0.015))
/// >>> round(room.value, 2), round(room.u, 4)
/// (5.17, 0.0186)
#[pyfunction]
#[pyo3(signature = (*, clearance_mm, fitted_mm))]
pub fn room_from_fitted(clearance_mm: Reading, fitted_mm: Reading) -> PyResult<Reading> {
    answer(core::room_from_fitted(clearance_mm.0, fitted_mm.0))
}

class! {
    /// Depth of a drum and the heights of what stands in it, without the ring or plate to be chosen.
    ///
    /// >>> size = lambda value: Reading(value=value, u=0.007)
    /// >>> pack = PackHeights(drum_depth_mm=size(29.40), friction_plates=5, friction_mm=size(1.95), steel_plates=5,
    /// ...                    steel_mm=size(1.80), pressure_plate_mm=size(5.48))
    /// >>> room = pack.room_from_heights().room_mm
    /// >>> round(room.value, 2), round(room.u, 3)
    /// (5.17, 0.05)
    "trainwright.stack" PackHeights = core::PackHeights {
        /// From the piston at rest to the outer wall of the ring groove, mm.
        drum_depth_mm: Reading,
        /// Number of friction plates.
        friction_plates: u32,
        /// Thickness of one friction plate, mm, soaked and pressed together.
        friction_mm: Reading,
        /// Number of steel plates.
        steel_plates: u32,
        /// Thickness of one steel plate, mm.
        steel_mm: Reading,
        /// Thickness of the pressure plate, mm; 0 for none, or where it is the piece to be chosen.
        pressure_plate_mm: Reading = nothing(),
        /// Free height of the wave plate, mm; 0 for none.
        wave_plate_mm: Reading = nothing(),
    }
}

fn nothing() -> Reading {
    Reading(trainwright::judge::Reading { value: 0.0, u: 0.0 })
}

class! {
    /// Room for the ring or plate of a pack.
    "trainwright.stack" PackRoom = core::PackRoom, explained by ["stack.room_from_heights"] {
        /// Height of everything in the drum, mm.
        plates_mm: f64,
        /// What is left for the ring and the clearance, mm.
        room_mm: Reading,
        /// Where its uncertainty comes from: drum, frictions, steels, pressure plate, wave plate.
        budget: Budget,
    }
}

#[pymethods]
impl PackHeights {
    /// Room for the ring or plate of a pack. One measured plate stands for all of its kind, so its error counts once for each
    /// of them; where the plates were measured as a stack, give 1 and the stack.
    /// Source: follows from the definitions (heights along the axis; JCGM 100:2008, equation 10 for u).
    fn room_from_heights(&self) -> PyResult<PackRoom> {
        answer(self.0.room_from_heights())
    }
}

class! {
    /// What a piston travels, and how far its seal may.
    ///
    /// >>> stroke = PistonStroke(clearance_mm=Reading(value=1.77, u=0.024), wave_mm=Reading(value=0.35, u=0.03),
    /// ...                       bend_mm=Reading(value=0.10, u=0.03), land_mm=Reading(value=3.2, u=0.05))
    /// >>> travel = stroke.piston_travel(rule=judge.Rule.stated_chances(go=0.95, no_go=0.05))
    /// >>> round(travel.travel_mm.value, 2), round(travel.judgment.reading.value, 2), travel.judgment.verdict
    /// (2.22, 0.98, 'GO')
    "trainwright.stack" PistonStroke = core::PistonStroke {
        /// Clearance of the pack, mm.
        clearance_mm: Reading,
        /// What the wave plate gives way until it is flat, mm; 0 for none.
        wave_mm: Reading,
        /// What plates, ring and drum give way under pressure, mm.
        bend_mm: Reading,
        /// Travel at which the seal leaves its land, mm.
        land_mm: Reading,
    }
}

class! {
    /// Travel of a piston against its seal land.
    "trainwright.stack" PistonTravel = core::PistonTravel, explained by ["stack.piston_travel"], judged in "mm",
        inputs ["clearance", "wave plate", "bend", "land"] {
        /// What the piston travels, mm.
        travel_mm: Reading,
        /// The land to spare, land less travel, against 0, mm.
        judgment: Judgment,
        /// Where its uncertainty comes from: clearance, wave plate, bend, land.
        budget: Budget,
    }
}

#[pymethods]
impl PistonStroke {
    /// Whether the piston closes the pack before its seal leaves its land.
    /// Source: follows from the definitions (travel along the axis; JCGM 100:2008, equation 10 for u).
    #[pyo3(signature = (*, rule))]
    fn piston_travel(&self, rule: Rule) -> PyResult<PistonTravel> {
        answer(self.0.piston_travel(rule.0))
    }
}

class! {
    /// Oil and time to close a pack.
    "trainwright.stack" ApplyFill = core::ApplyFill, explained by ["stack.apply_fill"] {
        /// Area of the piston, mm².
        area_mm2: f64,
        /// Oil that the stroke takes, mL.
        volume_ml: Reading,
        /// Time that the flow needs for it, s.
        time_s: Reading,
    }
}

/// Oil that a piston takes to close its pack, and how long a flow needs for it. `flow_l_min` is what reaches this circuit, not
/// what the pump delivers.
/// Source: follows from the definitions (volume swept by the piston).
///
/// >>> piston = clutch.Annulus(inner_radius_mm=76, outer_radius_mm=104)
/// >>> fill = apply_fill(piston, travel_mm=Reading(value=2.22, u=0.049), flow_l_min=Reading(value=10, u=1))
/// >>> round(fill.volume_ml.value, 1), round(fill.time_s.value, 2)
/// (35.2, 0.21)
#[pyfunction]
#[pyo3(signature = (piston, *, travel_mm, flow_l_min))]
pub fn apply_fill(piston: Annulus, travel_mm: Reading, flow_l_min: Reading) -> PyResult<ApplyFill> {
    answer(core::apply_fill(piston.0, travel_mm.0, flow_l_min.0))
}
