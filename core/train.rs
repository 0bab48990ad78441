//! Gear trains: exact ratios, member speeds, torque shares, losses, states and their diagnosis.
//!
//! A [`Train`] is a number of turning members, the planetary sets that gear them together and the elements (clutches,
//! brakes, one-way and dog clutches) that join two of them. Members, sets and elements are numbered in the order in which
//! they were added; their names live in the record. A set of closed elements is a bit mask, bit 0 for the first element.
//!
//! [`Train::solve`] answers one engagement exactly, in whole numbers: ratio, speeds, slip speeds and torque shares are
//! [`Fraction`]s. [`Train::resolve`] finds by sign which one-way clutches hold under a load.

mod assembly;
mod candidates;
mod diagnosis;
mod elimination;
mod fraction;
mod losses;
mod next;
mod one_way;
mod parts;
mod planets;
mod state;

pub use assembly::{Assembly, Finding, MAX_PLANETS};
pub use candidates::{PulseCount, RatioFit, TimedEdges, counted_ratio, fit_ratio, timed_ratio};
pub use diagnosis::{
    Commanded, Diagnosis, ElementFault, Failure, MAX_OBSERVATIONS, MAX_SUSPECTS, Observation, Response, Signature,
    Suspect, Symptom,
};
pub use fraction::Fraction;
pub use losses::{Losses, MeshEfficiency, PowerFlow};
pub use next::{NextGear, TriedGears};
pub use one_way::{Load, StateCounts, Swap};
pub use parts::{Blocks, Element, ElementKind, NO_MEMBER, PlanetarySet, Row, SetJoins, SetKind, SetTeeth};
pub use planets::PlanetSpeeds;
pub use state::{State, StateKind};

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};

/// The cards of this chapter.
pub const CARDS: &[Card] = &[
    Card {
        id: "train.solve",
        purpose: "Speeds and torques of a gear train with a set of closed elements",
        equation: "simple set: z_S ω_S + z_R ω_R − (z_S + z_R) ω_C = 0; double pinion: z_S ω_S − z_R ω_R + (z_R − z_S) ω_C = 0; \
            closed element: ω_first − ω_second = 0; torques: the same coefficients times one multiplier per equation",
        symbols: &[
            symbol("z_S, z_R", "teeth.sun, teeth.ring", "1"),
            symbol("ω", "speeds, per unit input speed", "1"),
            symbol("multiplier", "multipliers of the sets, shares of the elements, per unit input torque", "1"),
        ],
        range: "rigid members, no losses; exact in 64-bit fractions, refused beyond",
        source: &card::EPICYCLIC_TRAINS,
        locator: "basic speed equation and torque ratios of a planetary set",
    },
    Card {
        id: "train.resolve",
        purpose: "Which one-way clutches hold, and the state that follows",
        equation: "holding: share · sense > 0 and slip = 0; overrunning: share = 0 and slip · sense ≥ 0",
        symbols: &[
            symbol("share", "shares, times the sign of the input torque", "1"),
            symbol("slip", "slips, per unit input speed", "1"),
            symbol("sense", "+1 where reverse is blocked, −1 where forward is blocked", "1"),
        ],
        range: "input turning forward; of several combinations the one with the fewest clutches holding",
        source: &card::DEFINITION,
        locator: "unilateral constraint",
    },
    Card {
        id: "train.planet_speeds",
        purpose: "Speeds of the planets of a set, on their pins and in space",
        equation: "ω_P − ω_C = −(z_S/z_P)(ω_S − ω_C); inside a ring ω_P − ω_C = (z_R/z_P)(ω_R − ω_C)",
        symbols: &[
            symbol("z_P", "teeth.planet, teeth.planet_2", "1"),
            symbol("ω_P − ω_C", "planet_on_pin", "1"),
            symbol("ω_P", "planet", "1"),
        ],
        range: "tooth counts of the planets known",
        source: &card::DEFINITION,
        locator: "rolling at the pitch circles",
    },
    assembly::ASSEMBLY,
    losses::POWER_FLOW,
    losses::LOSSES,
    diagnosis::SYMPTOM,
    diagnosis::DIAGNOSE,
    next::SEEN_RATIO,
    next::NEXT_GEAR,
    candidates::COUNTED_RATIO,
    candidates::TIMED_RATIO,
    candidates::FIT_RATIO,
];

/// Most members of a train, the fixed one included.
pub const MAX_MEMBERS: usize = 24;
/// Most planetary sets of a train.
pub const MAX_SETS: usize = 8;
/// Most rows of a train: one for each set, two for a two-sun set.
pub const MAX_ROWS: usize = 10;
/// Most elements of a train.
pub const MAX_ELEMENTS: usize = 16;

/// A gear train: what turns, what gears it together, what can be closed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Train {
    members: u8,
    input: u8,
    output: u8,
    fixed: u8,
    set_count: u8,
    row_count: u8,
    element_count: u8,
    sets: [PlanetarySet; MAX_SETS],
    rows: [Row; MAX_ROWS],
    elements: [Element; MAX_ELEMENTS],
}

impl Train {
    /// A train of `members` members without sets; `input`, `output` and `fixed` (the case) are three of them.
    pub fn new(members: u8, input: u8, output: u8, fixed: u8) -> Result<Self> {
        if !(3..=MAX_MEMBERS).contains(&usize::from(members)) {
            return Err(Error::Count { name: "members", count: members.into(), low: 3, high: MAX_MEMBERS as u32 });
        }
        for (name, member) in [("input", input), ("output", output), ("fixed", fixed)] {
            member_of(name, member, members)?;
        }
        if input == output || input == fixed || output == fixed {
            return Err(Error::Inconsistent {
                name: "input, output, fixed",
                why: "two of them are the same member; give three different members",
            });
        }
        Ok(Self {
            members,
            input,
            output,
            fixed,
            set_count: 0,
            row_count: 0,
            element_count: 0,
            sets: [PlanetarySet::NONE; MAX_SETS],
            rows: [Row::NONE; MAX_ROWS],
            elements: [Element::NONE; MAX_ELEMENTS],
        })
    }

    /// Adds a planetary set after checking teeth and joins; returns its number.
    pub fn add_set(&mut self, set: PlanetarySet) -> Result<u8> {
        let rows = set.rows(self.members)?;
        let (index, first) = (self.set_count, usize::from(self.row_count));
        let slot = self.sets.get_mut(usize::from(index));
        let room = self.rows.get_mut(first..first + rows.len());
        let (Some(slot), Some(room)) = (slot, room) else {
            return Err(Error::Count {
                name: "sets (a two-sun set counts as two of 10 rows)",
                count: u32::from(index) + 1,
                low: 1,
                high: MAX_SETS as u32,
            });
        };
        *slot = set;
        for (row, new) in room.iter_mut().zip(rows) {
            *row = Row { set: index, ..new };
            self.row_count += 1;
        }
        self.set_count += 1;
        Ok(index)
    }

    /// Adds a clutch, brake, one-way or dog clutch after checking what it joins; returns its number.
    pub fn add_element(&mut self, element: Element) -> Result<u8> {
        element.check(self.members, self.fixed)?;
        let index = self.element_count;
        let Some(slot) = self.elements.get_mut(usize::from(index)) else {
            return Err(Error::Count {
                name: "elements",
                count: u32::from(index) + 1,
                low: 0,
                high: MAX_ELEMENTS as u32,
            });
        };
        *slot = element;
        self.element_count += 1;
        Ok(index)
    }

    /// Number of members, the fixed one included.
    #[must_use]
    pub fn members(&self) -> u8 {
        self.members
    }

    /// The member that the engine or turbine drives.
    #[must_use]
    pub fn input(&self) -> u8 {
        self.input
    }

    /// The member that drives the vehicle.
    #[must_use]
    pub fn output(&self) -> u8 {
        self.output
    }

    /// The member that never turns: the case.
    #[must_use]
    pub fn fixed(&self) -> u8 {
        self.fixed
    }

    /// The planetary sets.
    #[must_use]
    pub fn sets(&self) -> &[PlanetarySet] {
        self.sets.get(..usize::from(self.set_count)).unwrap_or_default()
    }

    /// The speed equations of the sets.
    #[must_use]
    pub fn rows(&self) -> &[Row] {
        self.rows.get(..usize::from(self.row_count)).unwrap_or_default()
    }

    /// The elements.
    #[must_use]
    pub fn elements(&self) -> &[Element] {
        self.elements.get(..usize::from(self.element_count)).unwrap_or_default()
    }
}

/// The member, if the train has it.
fn member_of(name: &'static str, member: u8, members: u8) -> Result<u8> {
    if member < members {
        Ok(member)
    } else {
        Err(Error::OutOfRange { name, value: member.into(), low: 0.0, high: f64::from(members) - 1.0 })
    }
}
