//! Bands on drums, and their servos.

use pyo3::prelude::*;
use trainwright::clutch as core;

use super::pack::Annulus;
use crate::class::class;
use crate::error::{answer, raise};

class! {
    /// A band around a drum.
    ///
    /// >>> band = Band(drum_radius_mm=75, width_mm=40, wrap_deg=330)
    /// >>> round(band.energized(servo_force_n=3000, friction=0.12).torque_nm, 1)
    /// 224.1
    /// >>> round(band.deenergized(servo_force_n=3000, friction=0.12).torque_nm, 1)
    /// 112.3
    "trainwright.clutch" Band = core::Band {
        /// Radius of the drum, mm.
        drum_radius_mm: f64,
        /// Width of the lining, mm.
        width_mm: f64,
        /// Angle of contact, degrees; of a double wrap the sum of both turns.
        wrap_deg: f64,
    }
}

class! {
    /// What a band does under a servo force.
    "trainwright.clutch" BandTorque = core::BandTorque, explained by ["clutch.energized"] {
        /// Tight over slack tension.
        tension_ratio: f64,
        /// Tension at the tight end, N.
        tight_n: f64,
        /// Tension at the slack end, N.
        slack_n: f64,
        /// Highest pressure on the lining, MPa.
        lining_peak_mpa: f64,
        /// Torque, N·m. Not a rating.
        torque_nm: f64,
        /// Change of torque per unit of friction, N·m.
        nm_per_friction: f64,
    }
}

#[pymethods]
impl Band {
    /// The servo at the slack end: the drum pulls the band toward its anchor and multiplies the force.
    /// Source: Shigley, chapter 16, band-type clutches and brakes.
    #[pyo3(signature = (*, servo_force_n, friction))]
    fn energized(&self, servo_force_n: f64, friction: f64) -> PyResult<BandTorque> {
        answer(self.0.energized(servo_force_n, friction))
    }

    /// The servo at the tight end: the drum pulls the band toward the servo.
    #[pyo3(signature = (*, servo_force_n, friction))]
    fn deenergized(&self, servo_force_n: f64, friction: f64) -> PyResult<BandTorque> {
        answer(self.0.deenergized(servo_force_n, friction))
    }
}

class! {
    /// The servo of a band.
    "trainwright.clutch" Servo = core::Servo {
        /// Face under apply pressure; inner radius 0 for a plain piston.
        piston: Annulus,
        /// Return-spring force with the band applied, N.
        return_spring_n: f64,
        /// Band force over piston force: the lever, 1 without one.
        lever_ratio: f64 = 1.0,
    }
}

#[pymethods]
impl Servo {
    /// Force at the end of the band, N.
    #[pyo3(signature = (*, pressure_kpa))]
    fn servo_force_n(&self, pressure_kpa: f64) -> PyResult<f64> {
        self.0.servo_force_n(pressure_kpa).map_err(raise)
    }
}
