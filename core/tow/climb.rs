//! Temperature along a road of grades: every piece with its gear, its loss and what that does to the sump.

use super::gearing::{Gearing, NO_GEAR};
use super::heat::{Running, UnitLoss, unit_loss};
use super::node::HeatNode;
use super::pull::{Pull, Rig};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::real::{atan, sin};

pub(super) const CLIMB: Card = Card {
    id: "tow.climb",
    purpose: "Temperature of the sump along a road of grades, and the time until a limit",
    equation: "for each piece τ = s/v, P of its gear, t ← t_∞ + (t − t_∞)·e^(−τ/τ_0)",
    symbols: &[
        symbol("τ", "time_s", "s"),
        symbol("s", "length_m: along the road", "m"),
        symbol("v", "speed_km_h, lowered until a gear holds", "km/h"),
        symbol("P", "loss_kw, tow.unit_loss", "kW"),
        symbol("t", "end_c", "°C"),
        symbol("t_∞, τ_0", "steady_c, time_constant_s, tow.warmed", "°C, s"),
    ],
    range: "steady speed in each piece, lock-up clutch closed, no shifts; cooling the same at every speed",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 5, lumped capacitance, piece by piece",
};

/// A piece of road.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoadPiece {
    /// Length along the road.
    pub length_m: f64,
    /// Grade, rise over horizontal run; negative downhill.
    pub grade_pct: f64,
    /// Speed asked for.
    pub speed_km_h: f64,
}

/// What a unit loses beside the efficiency of its gears, and the sump that takes it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatModel {
    /// Drag of open packs, bearings and oil, seen at the input; 0 where the efficiencies hold it.
    pub drag_nm: f64,
    /// Gauge pressure of the pump; 0 where the efficiencies hold it.
    pub pump_kpa: f64,
    /// Flow of the pump.
    pub pump_l_min: f64,
    /// Efficiency of the pump, above 0 to 1.
    pub pump_efficiency: f64,
    /// The sump.
    pub node: HeatNode,
    /// Temperature that must not be passed.
    pub limit_c: f64,
}

/// A piece of road as it was driven.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrivenPiece {
    /// Grade.
    pub grade_pct: f64,
    /// Speed that the gear held.
    pub speed_km_h: f64,
    /// Place of the gear.
    pub gear: u32,
    /// Engine speed.
    pub engine_rpm: f64,
    /// Torque at the input; negative downhill.
    pub input_nm: f64,
    /// Torque at the output.
    pub output_nm: f64,
    /// The same over their ratings, the greater of both.
    pub use_of_rating: f64,
    /// Heat.
    pub loss_kw: f64,
    /// Time on the piece.
    pub time_s: f64,
    /// Sump at its end.
    pub end_c: f64,
    /// Temperature that it goes to on this piece.
    pub steady_c: f64,
}

impl DrivenPiece {
    /// A piece that was not driven.
    pub const NONE: Self = Self {
        grade_pct: 0.0,
        speed_km_h: 0.0,
        gear: NO_GEAR,
        engine_rpm: 0.0,
        input_nm: 0.0,
        output_nm: 0.0,
        use_of_rating: 0.0,
        loss_kw: 0.0,
        time_s: 0.0,
        end_c: 0.0,
        steady_c: 0.0,
    };
}

/// A road of grades as it was driven.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Climb {
    /// Length.
    pub distance_m: f64,
    /// Sum of what the pieces rise.
    pub up_m: f64,
    /// Sum of what they fall.
    pub down_m: f64,
    /// Time.
    pub time_s: f64,
    /// Hottest sump.
    pub peak_c: f64,
    /// Piece at whose end (or, for the first, at whose start) it is hottest.
    pub peak_piece: u32,
    /// Sump at the end.
    pub end_c: f64,
    /// Time at which the limit is reached; infinite where it is not.
    pub limit_after_s: f64,
    /// Distance at which it is reached; infinite where it is not.
    pub limit_after_m: f64,
    /// Time above the limit.
    pub over_limit_s: f64,
    /// Heat made.
    pub heat_j: f64,
    /// Work at the wheels, uphill less downhill.
    pub wheel_work_j: f64,
    /// What of it lifted the combination; it comes back downhill.
    pub lift_work_j: f64,
    /// Greatest torque over its rating.
    pub use_of_rating: f64,
    /// Piece of it.
    pub use_piece: u32,
}

impl Rig {
    /// Temperature of the sump along a road of grades, and the time until a limit.
    ///
    /// For each piece τ = s/v, P of its gear, t ← t_∞ + (t − t_∞)·e^(−τ/τ_0)
    ///
    /// * `heat` — other losses, sump and limit; `start_c` — sump at the start; `pieces` — the road; `driven` — one for each piece,
    ///   filled in
    /// * returns [`Climb`]
    /// * errors: as [`Rig::pull_slowed`], [`unit_loss`] and [`HeatNode::warmed`]; [`Error::Count`] for no piece, or another number of
    ///   `driven`
    ///
    /// Inside a piece the temperature goes one way, so it is hottest at an end of one. Downhill the road turns the engine: what
    /// the brakes take does not pass the unit, what the engine takes does, with the same efficiency.
    ///
    /// Source: Incropera, lumped capacitance (from memory), piece by piece.
    pub fn climb(
        &self,
        heat: HeatModel,
        start_c: f64,
        pieces: &[RoadPiece],
        driven: &mut [DrivenPiece],
    ) -> Result<Climb> {
        if pieces.is_empty() || pieces.len() != driven.len() {
            let count = pieces.len().try_into().unwrap_or(u32::MAX);
            let high = driven.len().try_into().unwrap_or(u32::MAX);
            return Err(Error::Count { name: "pieces", count, low: 1, high });
        }
        let limit_c = finite("limit_c", heat.limit_c)?;
        let mut temp_c = within("start_c", start_c, -273.15, 1000.0)?;
        let mut climb = Climb {
            distance_m: 0.0,
            up_m: 0.0,
            down_m: 0.0,
            time_s: 0.0,
            peak_c: temp_c,
            peak_piece: 0,
            end_c: temp_c,
            limit_after_s: f64::INFINITY,
            limit_after_m: f64::INFINITY,
            over_limit_s: 0.0,
            heat_j: 0.0,
            wheel_work_j: 0.0,
            lift_work_j: 0.0,
            use_of_rating: 0.0,
            use_piece: 0,
        };
        for ((place, piece), row) in (0..).zip(pieces).zip(driven) {
            let length_m = positive("length_m", piece.length_m)?;
            positive("speed_km_h", piece.speed_km_h)?;
            let pulled = self.pull_slowed(piece.grade_pct, piece.speed_km_h)?;
            let loss = loss_of(&pulled, &self.gearing, heat)?;
            let time_s = length_m / (pulled.speed_km_h / 3.6);
            let warmed = heat.node.warmed(temp_c, loss.total_kw, time_s)?;
            let crossing_s = heat.node.crossing_s(temp_c, loss.total_kw, limit_c).min(time_s);
            let (over_s, reached_s) = match (temp_c >= limit_c, warmed.temp_c >= limit_c) {
                (false, false) => (0.0, f64::INFINITY),
                (false, true) => (time_s - crossing_s, crossing_s),
                (true, true) => (time_s, 0.0),
                (true, false) => (crossing_s, 0.0),
            };
            if reached_s.is_finite() && !climb.limit_after_s.is_finite() {
                climb.limit_after_s = climb.time_s + reached_s;
                climb.limit_after_m = climb.distance_m + length_m * reached_s / time_s;
            }
            let slope = atan(piece.grade_pct / 100.0);
            let rise_m = length_m * sin(slope);
            climb.distance_m += length_m;
            climb.up_m += rise_m.max(0.0);
            climb.down_m += (-rise_m).max(0.0);
            climb.time_s += time_s;
            climb.over_limit_s += over_s;
            climb.heat_j += loss.total_kw * 1000.0 * time_s;
            climb.wheel_work_j += pulled.load.total_n * length_m;
            climb.lift_work_j += pulled.load.grade_n * length_m;
            temp_c = warmed.temp_c;
            if temp_c > climb.peak_c {
                (climb.peak_c, climb.peak_piece) = (temp_c, place);
            }
            let gear = pulled.gears().get(pulled.chosen as usize).copied();
            let (engine_rpm, input_nm, use_of_input) =
                gear.map_or((0.0, 0.0, 0.0), |gear| (gear.engine_rpm, gear.input_nm, gear.use_of_input));
            let use_of_rating = use_of_input.max(pulled.use_of_output);
            if use_of_rating > climb.use_of_rating {
                (climb.use_of_rating, climb.use_piece) = (use_of_rating, place);
            }
            *row = DrivenPiece {
                grade_pct: piece.grade_pct,
                speed_km_h: pulled.speed_km_h,
                gear: pulled.chosen,
                engine_rpm,
                input_nm,
                output_nm: pulled.output_nm,
                use_of_rating,
                loss_kw: loss.total_kw,
                time_s,
                end_c: temp_c,
                steady_c: warmed.steady_c,
            };
        }
        climb.end_c = temp_c;
        Ok(climb)
    }

    /// Largest speed on a long grade at which a gear holds and the sump stays at its limit or below.
    ///
    /// v = v₀ − k·step, the first with t_∞ ≤ t_lim
    ///
    /// * `heat` — as [`Rig::climb`]; `grade_pct`, `speed_km_h` — the grade and v₀, above 0
    /// * returns [`CoolPull`]
    /// * errors: as [`Rig::pull_slowed`] and [`unit_loss`]; [`Error::NoAnswer`] where the sump passes its limit at any speed
    ///
    /// Less speed is less loss only within a gear, so every step is looked at.
    ///
    /// Source: steady state of [`HeatNode::warmed`].
    pub fn cool_speed(&self, heat: HeatModel, grade_pct: f64, speed_km_h: f64) -> Result<CoolPull> {
        let limit_c = finite("limit_c", heat.limit_c)?;
        let step_km_h = self.rule.checked()?.speed_step_km_h;
        let mut speed_km_h = positive("speed_km_h", speed_km_h)?;
        within("speed_step_km_h", step_km_h, speed_km_h / 1000.0, f64::MAX)?;
        let mut steps = 0;
        while speed_km_h > 0.0 {
            let pull = self.pull(grade_pct, speed_km_h)?;
            if pull.chosen != NO_GEAR {
                let loss_kw = loss_of(&pull, &self.gearing, heat)?.total_kw;
                let steady_c = heat.node.warmed(limit_c, loss_kw, 0.0)?.steady_c;
                if steady_c <= limit_c {
                    return Ok(CoolPull { pull, loss_kw, steady_c, steps });
                }
            }
            steps += 1;
            speed_km_h -= step_km_h;
        }
        Err(Error::NoAnswer {
            name: "speed_km_h",
            why: "no locked gear keeps the sump below its limit on this grade: a larger cooler, less load, or stops to cool",
        })
    }
}

/// What a unit loses in the gear that a pull chose.
fn loss_of(pulled: &Pull, gearing: &Gearing, heat: HeatModel) -> Result<UnitLoss> {
    let chosen = pulled.chosen_gear().ok_or(Error::NoAnswer { name: "gear", why: "no gear holds" })?;
    unit_loss(Running {
        input_nm: chosen.input_nm,
        input_rpm: chosen.engine_rpm,
        efficiency: gearing.gear(pulled.chosen).efficiency,
        drag_nm: heat.drag_nm,
        pump_kpa: heat.pump_kpa,
        pump_l_min: heat.pump_l_min,
        pump_efficiency: heat.pump_efficiency,
        converter_kw: 0.0,
    })
}

pub(super) const COOL_SPEED: Card = Card {
    id: "tow.cool_speed",
    purpose: "Largest speed on a long grade at which the sump stays at its limit",
    equation: "v = v₀ − k·step, the first with t_∞ ≤ t_lim",
    symbols: &[
        symbol("v", "pull.speed_km_h", "km/h"),
        symbol("v₀", "speed_km_h that was asked for", "km/h"),
        symbol("step", "rule.speed_step_km_h", "km/h"),
        symbol("t_∞", "steady_c", "°C"),
        symbol("t_lim", "heat.limit_c", "°C"),
    ],
    range: "a grade so long that the sump comes to its steady temperature; cooling the same at every speed",
    source: &card::DEFINITION,
    locator: "steady state of tow.warmed, searched by steps",
};

/// A pull at which the sump comes to rest below its limit.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolPull {
    /// The pull.
    pub pull: Pull,
    /// Heat in its gear.
    pub loss_kw: f64,
    /// Temperature that the sump goes to.
    pub steady_c: f64,
    /// Steps by which the speed was lowered.
    pub steps: u32,
}
