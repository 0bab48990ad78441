//! Balance of a pressure regulator: spring, line pressure, boost, stepped lands, force of the flow.

use core::f64::consts::PI;

use super::pump::pressure;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::cos;

pub(super) const FLOW_FORCE: Card = Card {
    id: "hydraulic.flow_force_n",
    purpose: "Force with which the flow through a metering edge closes its valve",
    equation: "F = 2 C_d w x Δp cos θ",
    symbols: &[
        symbol("F", "result", "N"),
        symbol("C_d", "discharge", "1"),
        symbol("w, x", "width_mm, opening_mm", "mm"),
        symbol("Δp", "pressure_drop_kpa", "kPa"),
        symbol("θ", "jet_deg", "°"),
    ],
    range: "steady flow, sharp edge, opening large against the clearance (69° then); the jet leaves flatter at a small opening",
    source: &card::HYDRAULIC_CONTROL,
    locator: "steady-state flow forces on spool valves",
};

pub(super) const REGULATED: Card = Card {
    id: "hydraulic.regulated",
    purpose: "Pressure that a regulator valve holds",
    equation: "p = (F_s + p_b A_b)/(A − 2 C_d w x cos θ), F_s = F_0 + c x_s, A = π (D² − d²)/4",
    symbols: &[
        symbol("p", "pressure_kpa", "kPa"),
        symbol("F_s, F_0", "spring_n, preload_n", "N"),
        symbol("c, x_s", "rate_n_mm, stroke_mm", "N/mm, mm"),
        symbol("p_b", "boost_pressure_kpa", "kPa"),
        symbol("A, A_b", "balance_area_mm2, boost_area_mm2", "mm²"),
        symbol("D, d", "outer_diameter_mm, inner_diameter_mm", "mm"),
        symbol("C_d, w, x, θ", "metering, as hydraulic.flow_force_n", "1, mm, mm, °"),
    ],
    range: "steady, no friction; line pressure falls to nothing over the metering edge, so the flow force grows with it",
    source: &card::DEFINITION,
    locator: "equilibrium of the valve; the flow force as hydraulic.flow_force_n",
};

pub(super) const SPRING_FOR: Card = Card {
    id: "hydraulic.spring_for_n",
    purpose: "Spring force that gives a regulator valve its pressure",
    equation: "F_s = p (A − 2 C_d w x cos θ) − p_b A_b",
    symbols: &[
        symbol("F_s", "result: at the stroke where it regulates", "N"),
        symbol("p, p_b", "pressure_kpa, boost_pressure_kpa", "kPa"),
        symbol("A, A_b", "areas of balance and boost", "mm²"),
        symbol("C_d, w, x, θ", "metering, as hydraulic.flow_force_n", "1, mm, mm, °"),
    ],
    range: "as hydraulic.regulated",
    source: &card::DEFINITION,
    locator: "hydraulic.regulated solved for the spring",
};

/// Angle at which the jet leaves a sharp metering edge that is open far against its clearance.
///
/// Source: R. von Mises; Merritt, Hydraulic Control Systems (from memory).
pub const SHARP_EDGE_JET_DEG: f64 = 69.0;

/// A face of a valve on which pressure acts.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Land {
    /// Outer diameter, mm; 0 for no land.
    pub outer_diameter_mm: f64,
    /// Diameter of the step or stem that takes area away, mm; 0 for a full face.
    pub inner_diameter_mm: f64,
}

/// A metering edge.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Metering {
    /// Discharge coefficient of the edge, 0 to 1.
    pub discharge: f64,
    /// Length of the edge, mm: the circumference of the land where the port goes all round.
    pub width_mm: f64,
    /// Opening, mm; 0 for no flow force.
    pub opening_mm: f64,
    /// Angle of the jet to the axis, degrees; [`SHARP_EDGE_JET_DEG`] for a sharp edge.
    pub jet_deg: f64,
}

/// A pressure regulator valve.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Regulator {
    /// Spring force with the valve at its stop, N.
    pub preload_n: f64,
    /// Spring rate, N/mm.
    pub rate_n_mm: f64,
    /// Stroke from the stop to where it regulates, mm.
    pub stroke_mm: f64,
    /// Face on which line pressure acts against the spring.
    pub balance: Land,
    /// Face on which the boost pressure helps the spring.
    pub boost: Land,
    /// Edge over which it dumps.
    pub metering: Metering,
}

/// Balance of a regulator.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Regulated {
    /// Spring at the stroke, N.
    pub spring_n: f64,
    /// Boost on its land, N.
    pub boost_n: f64,
    /// Force of the flow, N; it helps the spring.
    pub flow_n: f64,
    /// Area of the balance face, mm².
    pub balance_area_mm2: f64,
    /// Area of the boost face, mm².
    pub boost_area_mm2: f64,
    /// Pressure that it holds, kPa.
    pub pressure_kpa: f64,
}

impl Land {
    fn area_mm2(self, outer_name: &'static str) -> Result<f64> {
        let outer = within(outer_name, self.outer_diameter_mm, 0.0, 500.0)?;
        let inner = within("inner_diameter_mm", self.inner_diameter_mm, 0.0, 500.0)?;
        if inner > outer {
            return Err(Error::Inconsistent {
                name: "inner_diameter_mm",
                why: "the step is smaller than the land; exchange the two or correct one",
            });
        }
        Ok(PI / 4.0 * (outer - inner) * (outer + inner))
    }
}

impl Metering {
    fn area_mm2(self) -> Result<f64> {
        let discharge = within("discharge", self.discharge, 0.0, 1.0)?;
        let width = within("width_mm", self.width_mm, 0.0, 1e4)?;
        let opening = within("opening_mm", self.opening_mm, 0.0, 100.0)?;
        let jet = within("jet_deg", self.jet_deg, 0.0, 90.0)? * (PI / 180.0);
        Ok(2.0 * discharge * width * opening * cos(jet))
    }

    /// Force with which the flow through the edge closes its valve, N.
    ///
    /// F = 2 C_d w x Δp cos θ
    ///
    /// * `pressure_drop_kpa` — Δp over the edge, 0 to 1e5
    /// * errors: [`Error::OutOfRange`], [`Error::NotFinite`]
    ///
    /// Source: Merritt, Hydraulic Control Systems (from memory). Example (by hand): C_d 0.61, 37.7 mm of edge 0.5 mm open at
    /// 1000 kPa: 8.24 N; Merritt's short form 0.43 w x Δp gives 8.11.
    ///
    /// ```
    /// use trainwright::hydraulic::{Metering, SHARP_EDGE_JET_DEG};
    /// let edge = Metering { discharge: 0.61, width_mm: 37.7, opening_mm: 0.5, jet_deg: SHARP_EDGE_JET_DEG };
    /// assert!((edge.flow_force_n(1000.0)? - 8.241).abs() < 0.001);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn flow_force_n(self, pressure_drop_kpa: f64) -> Result<f64> {
        Ok(self.area_mm2()? * pressure("pressure_drop_kpa", pressure_drop_kpa)? * 1e-3)
    }
}

impl Regulator {
    /// Area on which the line acts, less what the flow takes back; area of the boost.
    fn areas_mm2(self) -> Result<(f64, f64, f64)> {
        let balance = positive("balance.outer_diameter_mm", self.balance.area_mm2("balance.outer_diameter_mm")?)?;
        let left = balance - self.metering.area_mm2()?;
        if left <= 0.0 {
            return Err(Error::NoAnswer {
                name: "pressure_kpa",
                why: "the flow closes the valve harder than the pressure opens it; correct opening, edge or balance land",
            });
        }
        Ok((balance, left, self.boost.area_mm2("boost.outer_diameter_mm")?))
    }

    /// Pressure that the regulator holds.
    ///
    /// p = (F_0 + c x_s + p_b A_b)/(A − 2 C_d w x cos θ)
    ///
    /// * `boost_pressure_kpa` — p_b, 0 to 1e5
    /// * returns [`Regulated`]
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::Inconsistent`]; [`Error::NoAnswer`] where the flow
    ///   closes the valve harder than the pressure opens it
    ///
    /// Source: equilibrium. Example (by hand): 60 N and 8 N/mm at 1.5 mm on 12 mm: 636.62 kPa; 60 N and 400 kPa on a boost land
    /// of 9 mm: 755.52 kPa.
    ///
    /// ```
    /// use trainwright::hydraulic::{Land, Metering, Regulator};
    /// let none = Land { outer_diameter_mm: 0.0, inner_diameter_mm: 0.0 };
    /// let spring_only = Regulator {
    ///     preload_n: 60.0, rate_n_mm: 8.0, stroke_mm: 1.5, balance: Land { outer_diameter_mm: 12.0, ..none }, boost: none,
    ///     metering: Metering { discharge: 0.0, width_mm: 0.0, opening_mm: 0.0, jet_deg: 69.0 },
    /// };
    /// assert!((spring_only.regulated(0.0)?.pressure_kpa - 636.62).abs() < 0.005);
    /// let boosted = Regulator { rate_n_mm: 0.0, boost: Land { outer_diameter_mm: 9.0, ..none }, ..spring_only };
    /// assert!((boosted.regulated(400.0)?.pressure_kpa - 755.52).abs() < 0.005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn regulated(self, boost_pressure_kpa: f64) -> Result<Regulated> {
        let (balance_area_mm2, left_mm2, boost_area_mm2) = self.areas_mm2()?;
        let rate = within("rate_n_mm", self.rate_n_mm, 0.0, 1e5)?;
        let stroke = within("stroke_mm", self.stroke_mm, 0.0, 500.0)?;
        let spring_n = within("preload_n", self.preload_n, 0.0, 1e6)? + rate * stroke;
        let boost_n = pressure("boost_pressure_kpa", boost_pressure_kpa)? * 1e-3 * boost_area_mm2;
        let pressure_kpa = (spring_n + boost_n) * 1e3 / left_mm2;
        let flow_n = self.metering.area_mm2()? * pressure_kpa * 1e-3;
        Ok(Regulated { spring_n, boost_n, flow_n, balance_area_mm2, boost_area_mm2, pressure_kpa })
    }

    /// Spring force that gives the regulator its pressure, N, at the stroke where it regulates. The spring of the valve is not
    /// used.
    ///
    /// F_s = p (A − 2 C_d w x cos θ) − p_b A_b
    ///
    /// * `pressure_kpa` — p, above 0; `boost_pressure_kpa` — p_b, 0 or more
    /// * errors: as [`Regulator::regulated`]; [`Error::NoAnswer`] where the boost alone gives more
    ///
    /// Source: [`Regulator::regulated`] solved for the spring.
    pub fn spring_for_n(self, pressure_kpa: f64, boost_pressure_kpa: f64) -> Result<f64> {
        let (_, left_mm2, boost_mm2) = self.areas_mm2()?;
        let line = pressure("pressure_kpa", positive("pressure_kpa", pressure_kpa)?)?;
        let spring_n = (line * left_mm2 - pressure("boost_pressure_kpa", boost_pressure_kpa)? * boost_mm2) * 1e-3;
        if spring_n < 0.0 {
            return Err(Error::NoAnswer {
                name: "spring_n",
                why: "the boost alone gives more than this pressure; no spring makes it less",
            });
        }
        Ok(spring_n)
    }
}
