//! Level and fill: a fluid that grows with temperature into the free area of its sump.

use super::density::Fluid;
use super::mix::old_share;
use super::sump::{Sump, constant_area_level_mm};
use crate::card::{self, Card, symbol};
use crate::error::{Result, finite, positive, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, chance_inside, combine, judge};

pub(super) const LEVEL_AT: Card = Card {
    id: "fluid.level_at",
    purpose: "Level at a temperature",
    equation: "V(h) = (V_r + e) F(t)/F(t_r) − V_r",
    symbols: &[
        symbol("h", "level_mm above the overflow edge", "mm"),
        symbol("V_r", "dry_l: all fluid in sump, converter, cooler and passages, filled to the edge", "L"),
        symbol("e", "excess_ml at the reference temperature", "mL"),
        symbol("F", "fluid.volume_factor", "1"),
        symbol("t, t_r", "temp_c, check_reference_c", "°C"),
    ],
    range: "engine idling, all passages full; case and pan taken as rigid (their growth, 3 to 10 % of the fluid's, is left out)",
    source: &card::DEFINITION,
    locator: "all the growth goes into the sump's free area",
};

pub(super) const ADJUST_FILL: Card = Card {
    id: "fluid.adjust_fill",
    purpose: "Volume to add or drain now, with its uncertainty",
    equation: "a = V_r F(t)/F(t_r) − V_r − s V(h); u² = (V_r F′/F_r u_t)² + (s A u_h)² + (V u_s)²",
    symbols: &[
        symbol("a", "add_now_ml, negative to drain", "mL"),
        symbol("h, u_h", "level_mm", "mm"),
        symbol("t, u_t", "temp_c", "°C"),
        symbol("s, u_s", "area_scale: true free area over the table's", "1"),
    ],
    range: "as fluid.level_at",
    source: &card::GUM,
    locator: "clause 5.1.2, equation 10, uncorrelated inputs",
};

pub(super) const ENGINE_OFF_LEVEL_MM: Card = Card {
    id: "fluid.engine_off_level_mm",
    purpose: "Level with the engine stopped",
    equation: "V(h) = V(h_on) + V_back",
    symbols: &[
        symbol("V", "fluid.volume_to", "mL"),
        symbol("h", "level with the engine stopped", "mm"),
        symbol("h_on", "running_level_mm", "mm"),
        symbol("V_back", "drainback_off_l", "L"),
    ],
    range: "as fluid.volume_to; after all the drain-back has come",
    source: &card::DEFINITION,
    locator: "volumes add",
};

pub(super) const GEAR_DIPS_AT_C: Card = Card {
    id: "fluid.gear_dips_at_c",
    purpose: "Temperature above which a rotating part dips",
    equation: "F(t) = F(t_r) [V_r + V(h_dip)]/(V_r + e)",
    symbols: &[
        symbol("t", "the temperature", "°C"),
        symbol("t_r", "check_reference_c", "°C"),
        symbol("F", "fluid.volume_factor", "1"),
        symbol("V_r", "dry_l", "L"),
        symbol("V", "fluid.volume_to", "mL"),
        symbol("h_dip", "gear_dips_mm", "mm"),
        symbol("e", "excess_ml at the reference temperature", "mL"),
    ],
    range: "as fluid.level_at",
    source: &card::DEFINITION,
    locator: "fluid.level_at solved for t",
};

pub(super) const LOSS_TO_PICKUP_ML: Card = Card {
    id: "fluid.loss_to_pickup_ml",
    purpose: "Volume that may be lost until the pickup draws air",
    equation: "V(h) − V(h_pickup)",
    symbols: &[
        symbol("V", "fluid.volume_to", "mL"),
        symbol("h", "level_mm", "mm"),
        symbol("h_pickup", "pickup_uncovers_mm", "mm"),
    ],
    range: "level ground, no acceleration",
    source: &card::DEFINITION,
    locator: "difference of volumes",
};

pub(super) const POUR_VOLUMES: Card = Card {
    id: "fluid.pour_volumes",
    purpose: "Volumes to pour for a dry, a service and a cooler fill",
    equation: "V = V_r F(t)/F(t_r); old share after a service = 1 − service/dry",
    symbols: &[
        symbol("V", "dry_ml, service_ml, cooler_ml, in the can", "mL"),
        symbol("V_r", "dry_l, service_l, cooler_and_lines_l, at the reference temperature", "L"),
        symbol("F", "fluid.volume_factor", "1"),
        symbol("t", "can_c", "°C"),
        symbol("t_r", "check_reference_c", "°C"),
    ],
    range: "then set the level in the check window",
    source: &card::DEFINITION,
    locator: "definition of cubic expansion",
};

/// What a record states of the fill of a unit.
///
/// `dry_l` is every liter in sump, converter, cooler and passages with the level at the overflow edge, engine idling, at
/// the reference temperature. All of it grows with temperature, and all of the growth goes into the sump's free area.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    /// Free area of the sump.
    pub sump: Sump,
    /// Whole fill, filled to the edge at the reference temperature; cooler and lines included.
    pub dry_l: f64,
    /// Part that a drain takes.
    pub service_l: f64,
    /// Part that stands in cooler and lines.
    pub cooler_and_lines_l: f64,
    /// Part that runs back into the sump when the engine stops.
    pub drainback_off_l: f64,
    /// Least temperature of the level check.
    pub check_low_c: f64,
    /// Greatest temperature of the level check.
    pub check_high_c: f64,
    /// Temperature at which a right fill stands at the edge.
    pub check_reference_c: f64,
    /// Level below which the pickup draws air.
    pub pickup_uncovers_mm: f64,
    /// Level above which a rotating part dips.
    pub gear_dips_mm: f64,
}

/// Level at a temperature, with what it was computed from.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelAt {
    /// All the fluid at this temperature.
    pub total_ml: f64,
    /// Part of it above the overflow edge, negative below.
    pub above_edge_ml: f64,
    /// Level above the overflow edge.
    pub level_mm: f64,
    /// Level that a sump of constant area, that at the edge, would show: the usual shortcut, to see its error.
    pub constant_area_level_mm: f64,
    /// Left until the rotating part dips.
    pub gear_margin_mm: f64,
    /// Left until the pickup draws air.
    pub pickup_margin_mm: f64,
}

/// What was read at a level check, engine idling, vehicle level.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelCheck {
    /// Temperature of the fluid, °C.
    pub temp_c: Reading,
    /// Level above the overflow edge, mm; 0 when it just runs over. Off level ground take `tilt_shift_mm` away first.
    pub level_mm: Reading,
    /// True free area over that of the table: 1 with its standard uncertainty.
    pub area_scale: Reading,
}

/// What to add or drain, with what it was computed from.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adjustment {
    /// All the fluid there is now, at this temperature.
    pub present_ml: f64,
    /// All the fluid there should be now, at this temperature.
    pub right_ml: f64,
    /// Add this now, at this temperature, to be right; drain it where negative.
    pub add_now_ml: Reading,
    /// Too much (negative: too little) as it will be at the reference temperature, judged against what a level set to the
    /// edge anywhere in the check window would leave.
    pub excess_ml: Judgment,
    /// Where the uncertainty of the excess comes from: temperature, level, area, in this order.
    pub budget: Budget,
    /// Probability that the temperature lies in the check window.
    pub chance_in_window: f64,
}

/// Volumes to pour, at the temperature of the fluid in the can.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PourVolumes {
    /// Into an empty unit.
    pub dry_ml: f64,
    /// After a drain.
    pub service_ml: f64,
    /// More of it where cooler and lines were emptied too.
    pub cooler_ml: f64,
    /// Share of old fluid that a service leaves.
    pub old_share: f64,
}

impl Fill {
    /// Whether the record can be used: volumes above 0 and parts no larger than the whole, the reference inside the check
    /// window, pickup and rotating part inside the sump's table.
    pub fn check_fill(&self) -> Result<()> {
        self.sump.check_table()?;
        positive("dry_l", self.dry_l)?;
        within("service_l", self.service_l, 0.0, self.dry_l)?;
        within("cooler_and_lines_l", self.cooler_and_lines_l, 0.0, self.dry_l)?;
        within("drainback_off_l", self.drainback_off_l, 0.0, self.dry_l)?;
        Limits::between(self.check_low_c, self.check_high_c)?;
        within("check_reference_c", self.check_reference_c, self.check_low_c, self.check_high_c)?;
        self.sump.slab_at(self.gear_dips_mm)?;
        within("pickup_uncovers_mm", self.pickup_uncovers_mm, self.sump.span_mm().0, self.gear_dips_mm)?;
        Ok(())
    }

    /// Level at a temperature.
    ///
    /// V(h) = (V_r + e) F(t)/F(t_r) − V_r
    ///
    /// * `fluid` — gives F; `excess_ml` — e, too much (negative: too little) at the reference temperature; 0 for a right
    ///   fill; `temp_c` — t, °C, −50 to 150
    /// * returns volumes, the level, the level by a constant area, and the margins to rotating part and pickup
    /// * errors: [`crate::Error::OutOfRange`] also where the fluid leaves the sump's table; those of [`Fill::check_fill`]
    ///
    /// Source: definition of cubic expansion; case and pan taken as rigid. Example: 10 L grow by 245 mL from 47 to 80 °C,
    /// and stand 2.45 mm higher over 1000 cm².
    ///
    /// ```
    /// use trainwright::fluid::{Fill, Fluid, Sump};
    /// let fill = Fill {
    ///     sump: Sump::from_table(&[-50.0, 50.0], &[1000.0, 1000.0])?,
    ///     dry_l: 10.0, service_l: 4.0, cooler_and_lines_l: 0.7, drainback_off_l: 1.5,
    ///     check_low_c: 42.0, check_high_c: 52.0, check_reference_c: 47.0,
    ///     pickup_uncovers_mm: -30.0, gear_dips_mm: 15.0,
    /// };
    /// let fluid = Fluid {
    ///     density_15c_kg_m3: 850.0, expansion_per_k: 7.6e-4, viscosity_40c_mm2_s: 30.0, viscosity_100c_mm2_s: 6.0,
    /// };
    /// let hot = fill.level_at(&fluid, 0.0, 80.0)?;
    /// assert!((hot.level_mm - 10_000.0 * 7.6e-4 * 33.0 / (1.0 + 7.6e-4 * 32.0) / 100.0).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn level_at(&self, fluid: &Fluid, excess_ml: f64, temp_c: f64) -> Result<LevelAt> {
        self.check_fill()?;
        finite("excess_ml", excess_ml)?;
        let total_ml = (self.whole_ml() + excess_ml) * self.growth_from_reference(fluid, temp_c)?;
        let above_edge_ml = total_ml - self.whole_ml();
        let level_mm = self.sump.level_for(above_edge_ml)?;
        Ok(LevelAt {
            total_ml,
            above_edge_ml,
            level_mm,
            constant_area_level_mm: constant_area_level_mm(above_edge_ml, self.sump.free_area_at(0.0)?)?,
            gear_margin_mm: self.gear_dips_mm - level_mm,
            pickup_margin_mm: level_mm - self.pickup_uncovers_mm,
        })
    }

    /// Volume to add or drain now, at the temperature of the check, with its uncertainty.
    ///
    /// a = V_r F(t)/F(t_r) − V_r − s V(h); u² = (V_r F′(t)/F(t_r) u_t)² + (s A(h) u_h)² + (V(h) u_s)²
    ///
    /// * `fluid` — gives F; `check` — t, h and s, each with its standard uncertainty; s between 0.5 and 2;
    ///   `rule` — of the decision
    /// * returns the volumes, a, the excess at the reference temperature as judged, and its budget
    /// * errors: as [`Fill::level_at`]
    ///
    /// Source: JCGM 100:2008, 5.1.2 equation 10, uncorrelated inputs (from memory). Example: in `tests/fluid/`, the
    /// demonstration's level set at 24 °C and at 82 °C.
    ///
    /// Caution: engine running, parking brake set, wheels chocked; hot fluid burns.
    pub fn adjust_fill(&self, fluid: &Fluid, check: LevelCheck, rule: Rule) -> Result<Adjustment> {
        self.check_fill()?;
        let temp_c = Reading::new(check.temp_c.value, check.temp_c.u)?;
        let level_mm = Reading::new(check.level_mm.value, check.level_mm.u)?;
        let scale = Reading::new(within("area_scale", check.area_scale.value, 0.5, 2.0)?, check.area_scale.u)?;

        let above_edge_ml = self.sump.volume_to(level_mm.value)?;
        let present_ml = self.whole_ml() + scale.value * above_edge_ml;
        let growth = self.growth_from_reference(fluid, temp_c.value)?;
        let right_ml = self.whole_ml() * growth;

        let per_k =
            self.whole_ml() * fluid.volume_factor_per_k(temp_c.value)? / fluid.volume_factor(self.check_reference_c)?;
        let per_mm = -0.1 * scale.value * self.sump.free_area_at(level_mm.value)?;
        let add_u = combine(&[
            Input::new(per_k, temp_c.u)?,
            Input::new(per_mm, level_mm.u)?,
            Input::new(-above_edge_ml, scale.u)?,
        ])?
        .u;
        let budget = combine(&[
            Input::new(-per_k * present_ml / right_ml / growth, temp_c.u)?,
            Input::new(-per_mm / growth, level_mm.u)?,
            Input::new(above_edge_ml / growth, scale.u)?,
        ])?;

        let excess_ml = Reading { value: present_ml / growth - self.whole_ml(), u: budget.u };
        let excess_if_set_at = |temp_c: f64| -> Result<f64> {
            Ok(self.whole_ml() * (1.0 / self.growth_from_reference(fluid, temp_c)? - 1.0))
        };
        let accepted = Limits::between(excess_if_set_at(self.check_high_c)?, excess_if_set_at(self.check_low_c)?)?;
        Ok(Adjustment {
            present_ml,
            right_ml,
            add_now_ml: Reading { value: right_ml - present_ml, u: add_u },
            excess_ml: judge(excess_ml, accepted, rule)?,
            budget,
            chance_in_window: chance_inside(temp_c, Limits::between(self.check_low_c, self.check_high_c)?)?,
        })
    }

    /// Level with the engine stopped, when the drain-back has come into the sump.
    ///
    /// * `running_level_mm` — level with the engine idling
    /// * returns mm above the overflow edge
    /// * errors: as [`Sump::level_for`]
    pub fn engine_off_level_mm(&self, running_level_mm: f64) -> Result<f64> {
        self.check_fill()?;
        self.sump.level_for(self.sump.volume_to(running_level_mm)? + 1000.0 * self.drainback_off_l)
    }

    /// Temperature above which a rotating part dips: [`Fill::level_at`] solved for t.
    ///
    /// * `excess_ml` — at the reference temperature, 0 for a right fill
    /// * returns °C, −50 to 150
    /// * errors: [`crate::Error::OutOfRange`] where it would dip only outside the fluid's range, or always
    pub fn gear_dips_at_c(&self, fluid: &Fluid, excess_ml: f64) -> Result<f64> {
        self.check_fill()?;
        let present_ml = positive("total volume", self.whole_ml() + finite("excess_ml", excess_ml)?)?;
        let dipping_ml = self.whole_ml() + self.sump.volume_to(self.gear_dips_mm)?;
        fluid.temp_for_volume_factor(dipping_ml / present_ml * fluid.volume_factor(self.check_reference_c)?)
    }

    /// Volume that may be lost, from this level, until the pickup draws air, mL at the temperature of the level.
    ///
    /// * `level_mm` — above the overflow edge; errors as [`Sump::volume_to`]
    pub fn loss_to_pickup_ml(&self, level_mm: f64) -> Result<f64> {
        self.check_fill()?;
        Ok(self.sump.volume_to(level_mm)? - self.sump.volume_to(self.pickup_uncovers_mm)?)
    }

    /// Volumes to pour for a dry, a service and a cooler fill, measured at the temperature of the fluid in the can.
    ///
    /// V = V_r F(t)/F(t_r)
    ///
    /// * `fluid` — gives F; `can_c` — t, °C, −50 to 150
    /// * returns the volumes, and the share of old fluid that a service leaves, 1 − service/dry
    /// * errors: as [`Fill::check_fill`] and [`Fluid::volume_factor`]
    pub fn pour_volumes(&self, fluid: &Fluid, can_c: f64) -> Result<PourVolumes> {
        self.check_fill()?;
        let growth = self.growth_from_reference(fluid, can_c)?;
        Ok(PourVolumes {
            dry_ml: self.whole_ml() * growth,
            service_ml: 1000.0 * self.service_l * growth,
            cooler_ml: 1000.0 * self.cooler_and_lines_l * growth,
            old_share: old_share(self.service_l / self.dry_l, 1)?,
        })
    }

    fn whole_ml(&self) -> f64 {
        1000.0 * self.dry_l
    }

    fn growth_from_reference(&self, fluid: &Fluid, temp_c: f64) -> Result<f64> {
        Ok(fluid.volume_factor(temp_c)? / fluid.volume_factor(self.check_reference_c)?)
    }
}
