//! Every pack of a gear against the torque that the train puts on it.

use super::capacity::PressureNeeded;
use super::hold::Working;
use super::pack::Pack;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive};
use crate::judge::{Reading, Rule, Verdict};
use crate::real::abs;
use crate::train::{MAX_ELEMENTS, State, StateKind};

pub(super) const REVIEW: Card = Card {
    id: "clutch.review",
    purpose: "Capacity of each pack of a gear against the torque that the train puts on it",
    equation: "T_need = |k| T_turbine; margin = T/T_need",
    symbols: &[
        symbol("k", "share of the element, from train.solve", "1"),
        symbol("T_turbine", "turbine_torque_nm; not the engine's torque while the converter multiplies it", "N·m"),
        symbol("T", "capacity, clutch.capacity", "N·m"),
    ],
    range: "steady torque, no losses in the train, no inertia torque of a shift",
    source: &card::DEFINITION,
    locator: "equilibrium of the gear train",
};

/// A pack and its place in the train.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ElementPack {
    /// The pack.
    pub pack: Pack,
    /// Element of the train.
    pub element: u8,
    /// Member that its drum, and so its apply oil, turns with; the fixed member for a brake.
    pub turns_with: u8,
}

/// The working point of a gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Duty {
    /// Gauge pressure at the pistons, kPa.
    pub pressure_kpa: Reading,
    /// Friction coefficient: static to hold.
    pub friction: Reading,
    /// Relative standard uncertainty of capacity from the dimensions of pack and piston.
    pub geometry_u_rel: f64,
    /// Density of the hot oil, kg/m³.
    pub oil_density_kg_m3: f64,
    /// Turbine torque, N·m, above 0.
    pub turbine_torque_nm: Reading,
    /// Turbine speed, 1/min: 0 at stall, where no drum of the input turns and no oil head helps or harms.
    pub turbine_speed_rpm: f64,
    /// Decision rule.
    pub rule: Rule,
}

/// One pack in one gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ElementMargin {
    /// Element of the train.
    pub element: u8,
    /// The train determines the share. If not, everything below is 0 and NOT PROVEN: statics cannot tell what it carries.
    pub share_known: bool,
    /// Torque per unit of turbine torque, without sign.
    pub share: f64,
    /// Speed of its drum, 1/min.
    pub drum_speed_rpm: f64,
    /// Torque to hold, N·m.
    pub need_nm: f64,
    /// Capacity, N·m. Not a rating.
    pub capacity_nm: f64,
    /// Capacity over demand; infinite where the element carries nothing.
    pub margin: f64,
    /// Pressure at which it just holds.
    pub pressure_needed: PressureNeeded,
    /// Friction at which it just holds.
    pub friction_needed: f64,
    /// Chance that it holds.
    pub chance: f64,
    /// Verdict under the rule.
    pub verdict: Verdict,
}

const UNKNOWN: ElementMargin = ElementMargin {
    element: 0,
    share_known: false,
    share: 0.0,
    drum_speed_rpm: 0.0,
    need_nm: 0.0,
    capacity_nm: 0.0,
    margin: 0.0,
    pressure_needed: PressureNeeded { strong_spring_kpa: 0.0, weak_spring_kpa: 0.0 },
    friction_needed: 0.0,
    chance: 0.0,
    verdict: Verdict::NotProven,
};

/// Every pack of one gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GearReview {
    /// One entry for each closed element that has a pack; only the first `count` are used.
    pub margins: [ElementMargin; MAX_ELEMENTS],
    /// Number of entries.
    pub count: u32,
    /// Position of the entry with the least margin.
    pub governing: u32,
}

impl GearReview {
    /// The entries in use.
    #[must_use]
    pub fn elements(&self) -> &[ElementMargin] {
        self.margins.get(..self.count as usize).unwrap_or(&[])
    }

    /// The entry with the least margin.
    #[must_use]
    pub fn weakest(&self) -> ElementMargin {
        self.margins.get(self.governing as usize).copied().unwrap_or(UNKNOWN)
    }
}

/// Capacity of each pack of a gear against the torque that the train puts on it.
///
/// T_need = |k| T_turbine; margin = T/T_need
///
/// * `state` — a gear, from [`crate::train::Train::solve`]; `packs` — packs of the train, closed or not; `duty` — pressure,
///   friction, turbine torque and speed, rule
/// * returns [`GearReview`]; an element without a pack (a one-way clutch) is not in it
/// * errors: [`Error::NoAnswer`] for a state that is no gear or whose shares are all undetermined; [`Error::Missing`] if
///   no closed element has a pack; and as [`Pack::hold`]
///
/// Source: equilibrium of the gear train.
pub fn review(state: &State, packs: &[ElementPack], duty: Duty) -> Result<GearReview> {
    if state.kind != StateKind::Gear {
        return Err(Error::NoAnswer { name: "state", why: "only a gear carries torque from input to output" });
    }
    let mut gear = GearReview { margins: [UNKNOWN; MAX_ELEMENTS], count: 0, governing: 0 };
    for entry in packs.iter().filter(|entry| state.closed.checked_shr(entry.element.into()).unwrap_or(0) & 1 != 0) {
        let Some(row) = gear.margins.get_mut(gear.count as usize) else {
            return Err(Error::Count { name: "packs", count: gear.count + 1, low: 1, high: MAX_ELEMENTS as u32 });
        };
        *row = entry.margin(state, duty)?;
        gear.count += 1;
    }
    if gear.count == 0 {
        return Err(Error::Missing { name: "packs", why: "no closed element of this gear has a pack" });
    }
    let known = (0..).zip(gear.elements()).filter(|(_, row)| row.share_known);
    let least = known.min_by(|(_, a), (_, b)| a.margin.total_cmp(&b.margin));
    gear.governing = least.map(|(position, _)| position).ok_or(Error::NoAnswer {
        name: "share",
        why: "the closed elements repeat one another, so statics cannot tell what each carries",
    })?;
    Ok(gear)
}

impl ElementPack {
    fn margin(&self, state: &State, duty: Duty) -> Result<ElementMargin> {
        let Some(share) = state.share(self.element).value().map(abs) else {
            return Ok(ElementMargin { element: self.element, ..UNKNOWN });
        };
        let turbine_speed = finite("turbine_speed_rpm", duty.turbine_speed_rpm)?;
        let drum_speed_rpm = match state.speed(self.turns_with).value() {
            Some(speed) => speed * turbine_speed,
            None => {
                return Err(Error::Missing {
                    name: "turns_with",
                    why: "the speed of the drum of this pack is not known in this gear; name a member of the train",
                });
            }
        };
        let working = Working {
            pressure_kpa: duty.pressure_kpa,
            friction: duty.friction,
            geometry_u_rel: duty.geometry_u_rel,
            drum_speed_rpm,
            oil_density_kg_m3: duty.oil_density_kg_m3,
        };
        let turbine = Reading::new(duty.turbine_torque_nm.value, duty.turbine_torque_nm.u)?;
        let need = Reading { value: share * positive("turbine_torque_nm", turbine.value)?, u: share * turbine.u };
        let idle = share <= 0.0;
        let hold = self.pack.hold(if idle { turbine } else { need }, working, duty.rule)?;
        Ok(ElementMargin {
            element: self.element,
            share_known: true,
            share,
            drum_speed_rpm,
            need_nm: need.value,
            capacity_nm: hold.capacity.torque_nm,
            margin: if idle { f64::INFINITY } else { hold.margin },
            pressure_needed: self.pack.pressure_needed(need.value, working.applied())?,
            friction_needed: if idle { 0.0 } else { hold.friction_needed },
            chance: if idle { 1.0 } else { hold.judgment.chance },
            verdict: if idle { Verdict::Go } else { hold.judgment.verdict },
        })
    }
}
