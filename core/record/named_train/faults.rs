//! Everything that stands against a train, solved gear by gear.

use std::format;
use std::string::{String, ToString};
use std::vec::Vec;

use super::{NamedGear, NamedTrain};
use crate::record::document::Path;
use crate::record::fault::Fault;
use crate::record::train::{GearRecord, TrainRecord};
use crate::train::{Blocks, Finding, Load, PlanetarySet, State, StateKind};

impl TrainRecord {
    /// Whether gears and elements name only what there is; where they do not, the check of names says so.
    fn names_are_known(&self) -> bool {
        let members = self.member_names();
        self.element.values().flat_map(|element| &element.joins).all(|member| members.contains(member))
            && self.gear.iter().all(|gear| {
                let mut names = gear.closed.iter().map(String::as_str).chain(gear.one_way.names());
                names.all(|name| self.element.contains_key(name))
            })
    }

    /// Everything that stands against the train in this variant, solved gear by gear.
    pub(in crate::record) fn faults(&self, variant: Option<&str>) -> Vec<Fault> {
        if !self.names_are_known() {
            return Vec::new();
        }
        let named = match self.build(variant) {
            Ok(named) => named,
            Err(faults) => return faults,
        };
        let here = Path::default().key("train");
        let sets = self.sets_of(variant).into_iter().zip(named.train.sets());
        let assembly = sets.filter_map(|((index, _), set)| cannot_assemble(set, &here.key("set").index(index)));
        let solved = named.gears.iter().zip(&self.gear).enumerate();
        let gears =
            solved.flat_map(|(index, (gear, record))| named.gear_faults(gear, record, &here.key("gear").index(index)));
        assembly.chain(gears).collect()
    }
}

impl NamedTrain {
    fn gear_faults(&self, gear: &NamedGear, record: &GearRecord, path: &Path) -> Vec<Fault> {
        if let Some(name) = self.names(gear.one_way & !self.train.one_way_mask()).next() {
            let message = format!("{name} is not a one-way clutch");
            return std::vec![Fault::error(path.key("one_way"), message, "list it in closed")];
        }
        let states = (self.train.solve(gear.closed | gear.one_way), self.train.resolve(gear.closed, Load::Drive));
        let (state, alone) = match states {
            (Ok(state), Ok(alone)) => (state, alone),
            (Err(error), _) | (_, Err(error)) => return std::vec![Fault::refused(path.clone(), error)],
        };
        let holding = self.names(alone.closed & !gear.closed).collect::<Vec<_>>().join(", ");
        if state.kind != StateKind::Gear {
            let mend = if alone.kind == StateKind::Gear {
                format!("{holding} holds a gear here under drive: name it in one_way")
            } else {
                "check closed, one_way and the joins of these elements".into()
            };
            return std::vec![Fault::error(
                path.key("closed"),
                format!("this is no gear: {}", meaning(state.kind)),
                mend
            )];
        }
        let mut faults: Vec<_> = self.cannot_hold(gear, &state, path).into_iter().collect();
        if faults.is_empty() && alone.ratio != state.ratio {
            let ratio = alone.ratio.value().unwrap_or(f64::NAN);
            let message = format!("left alone, {holding} holds instead under drive and the ratio is {ratio:.4}");
            faults.push(Fault::note(
                path.key("one_way"),
                message,
                "check blocks, or put a brake behind that one-way clutch",
            ));
        }
        faults.extend(disagreement(record, state.ratio.value().unwrap_or(f64::NAN), path));
        faults
    }

    /// A one-way clutch of the gear that drive torque pushes in its free sense, or that carries nothing.
    fn cannot_hold(&self, gear: &NamedGear, state: &State, path: &Path) -> Option<Fault> {
        let parts = self.elements.iter().zip(self.train.elements()).zip(&state.shares).enumerate();
        parts.filter(|(bit, _)| gear.one_way & !gear.closed & (1 << bit) != 0).find_map(
            |(_, ((name, element), share))| {
                let blocked = if element.blocks == Blocks::Reverse { 1 } else { -1 };
                let path = path.key("one_way");
                if share.is_known() && share.signum() == -blocked {
                    let message = format!("{name} cannot hold this gear: drive torque pushes it in its free sense");
                    return Some(Fault::error(path, message, "turn its blocks round, or close a brake instead"));
                }
                let idle = !share.is_known() || share.signum() == 0;
                idle.then(|| {
                    Fault::note(path, format!("{name} need not carry anything here"), "leave it out of one_way")
                })
            },
        )
    }
}

/// A note where the planets do not go in as written: profile shift or unequal spacing may still make it.
fn cannot_assemble(set: &PlanetarySet, path: &Path) -> Option<Fault> {
    let assembly = set.assembly().ok()?;
    let key = if assembly.coaxial == Finding::Fails { "teeth" } else { "planets" };
    (assembly.finding() == Finding::Fails).then(|| Fault::note(path.key(key), assembly.to_string(), ""))
}

/// A note where the printed ratio is not the computed one rounded.
fn disagreement(record: &GearRecord, computed: f64, path: &Path) -> Option<Fault> {
    let printed = record.published.as_deref()?;
    let value: f64 = printed.parse().ok()?;
    let decimals = printed.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let half_a_place = 0.5 / 10_f64.powi(i32::try_from(decimals).unwrap_or(0));
    let agrees = (value - computed).abs() <= half_a_place * (1.0 + 1e-9);
    let message = format!("the teeth give {computed:.*}", decimals + 2);
    (!agrees).then(|| Fault::note(path.key("published"), message, record.note.clone().unwrap_or_default()))
}

fn meaning(kind: StateKind) -> &'static str {
    match kind {
        StateKind::Gear => "a gear",
        StateKind::Neutral => "neutral, the input does not determine the output",
        StateKind::InputHeld => "the input cannot turn and the output is free",
        StateKind::OutputHeld => "the output cannot turn and the input is free",
        StateKind::TiedUp => "tied up, neither input nor output can turn",
    }
}
