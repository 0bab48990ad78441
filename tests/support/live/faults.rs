//! What happens to the monitor when a sensor fails: delay of the right answer and number of wrong ones, for many drives.

use super::drive::{Drive, invented_trace};
use super::random::Random;
use super::sensors::{KINDS, Kind, Sensors, Wrong};
use super::watch::{Run, Setting, run, unit};
use std::collections::BTreeMap;
use trainwright::live::{LiveEventKind, ReadingState};

/// One row of the table.
pub struct Fault {
    pub name: &'static str,
    pub wrong: Wrong,
    /// How long it lasts, s; infinite for one that stays.
    pub lasts_s: f64,
    /// What the monitor should say; nothing where it should keep silent.
    pub found_as: Option<LiveEventKind>,
    /// Whether sensors of this kind can have it.
    pub of: fn(Kind) -> bool,
}

fn any(_: Kind) -> bool {
    true
}

fn wheel(kind: Kind) -> bool {
    matches!(kind, Kind::Counted | Kind::Edges)
}

fn bus(kind: Kind) -> bool {
    !wheel(kind)
}

fn edges(kind: Kind) -> bool {
    kind == Kind::Edges
}

fn timed(kind: Kind) -> bool {
    kind != Kind::Counted
}

use LiveEventKind as Said;

pub const FAULTS: &[Fault] = &[
    Fault { name: "none", wrong: Wrong::Nothing, lasts_s: f64::INFINITY, found_as: None, of: any },
    Fault {
        name: "one input tooth of 40 lost",
        wrong: Wrong::LostTooth,
        lasts_s: f64::INFINITY,
        found_as: Some(Said::WrongTeeth),
        of: any,
    },
    Fault {
        name: "one input edge of 40 double",
        wrong: Wrong::DoubleEdge,
        lasts_s: f64::INFINITY,
        found_as: Some(Said::WrongTeeth),
        of: any,
    },
    Fault {
        name: "input edges double at random, 1 %",
        wrong: Wrong::Chatter(0.01),
        lasts_s: f64::INFINITY,
        found_as: Some(Said::WrongTeeth),
        of: wheel,
    },
    Fault {
        name: "input wheel of 39 teeth for 40",
        wrong: Wrong::Teeth(39),
        lasts_s: f64::INFINITY,
        found_as: Some(Said::WrongTeeth),
        of: any,
    },
    Fault {
        name: "output wheel of 29 teeth for 30",
        wrong: Wrong::OutputTeeth(29),
        lasts_s: f64::INFINITY,
        found_as: Some(Said::WrongTeeth),
        of: any,
    },
    Fault {
        name: "input and output exchanged",
        wrong: Wrong::Swapped,
        lasts_s: f64::INFINITY,
        found_as: Some(Said::Swapped),
        of: any,
    },
    Fault { name: "input value stands 80 ms", wrong: Wrong::InputStale, lasts_s: 0.08, found_as: None, of: bus },
    Fault { name: "output value stands 80 ms", wrong: Wrong::OutputStale, lasts_s: 0.08, found_as: None, of: bus },
    Fault {
        name: "input value stands",
        wrong: Wrong::InputStale,
        lasts_s: f64::INFINITY,
        found_as: Some(Said::Stale),
        of: bus,
    },
    Fault {
        name: "output value stands",
        wrong: Wrong::OutputStale,
        lasts_s: f64::INFINITY,
        found_as: Some(Said::Stale),
        of: bus,
    },
    Fault {
        name: "samples up to 4 ms late",
        wrong: Wrong::Jitter(0.004),
        lasts_s: f64::INFINITY,
        found_as: None,
        of: any,
    },
    Fault {
        name: "one reading in ten missing",
        wrong: Wrong::Flicker(0.1),
        lasts_s: f64::INFINITY,
        found_as: None,
        of: any,
    },
    Fault { name: "no readings for 5 s", wrong: Wrong::Dropout, lasts_s: 5.0, found_as: Some(Said::Lost), of: any },
    Fault {
        name: "input says \"not available\"",
        wrong: Wrong::Indicated(ReadingState::NotAvailable),
        lasts_s: f64::INFINITY,
        found_as: Some(Said::Lost),
        of: bus,
    },
    Fault {
        name: "input says \"error\"",
        wrong: Wrong::Indicated(ReadingState::SensorError),
        lasts_s: f64::INFINITY,
        found_as: Some(Said::Lost),
        of: bus,
    },
    Fault { name: "clock 500 ppm fast", wrong: Wrong::Clock(500e-6), lasts_s: f64::INFINITY, found_as: None, of: any },
    Fault {
        name: "input clock 100 ppm fast",
        wrong: Wrong::InputClock(100e-6),
        lasts_s: f64::INFINITY,
        found_as: None,
        of: edges,
    },
    Fault {
        name: "input clock 2 % fast",
        wrong: Wrong::InputClock(0.02),
        lasts_s: f64::INFINITY,
        found_as: Some(Said::WrongTeeth),
        of: timed,
    },
    Fault {
        name: "input stops at 1000 rpm",
        wrong: Wrong::Saturated(1000.0),
        lasts_s: f64::INFINITY,
        found_as: Some(Said::Stale),
        of: bus,
    },
    Fault {
        name: "cold fluid: temperature stands",
        wrong: Wrong::TempStuck,
        lasts_s: f64::INFINITY,
        found_as: Some(Said::TempStuck),
        of: any,
    },
    Fault {
        name: "C1 slips, 20 rpm at once",
        wrong: Wrong::Slip(20.0, 0.0),
        lasts_s: f64::INFINITY,
        found_as: Some(Said::Slip),
        of: any,
    },
    Fault {
        name: "C1 slips, 50 rpm after 20 s",
        wrong: Wrong::Slip(50.0, 20.0),
        lasts_s: f64::INFINITY,
        found_as: Some(Said::Slip),
        of: any,
    },
];

/// Drives for each row and kind of sensors, each with its own seed, and where the fault begins in them.
#[derive(Clone, Copy)]
pub struct Effort {
    pub seeds: u64,
    pub before_s: f64,
    pub after_s: f64,
}

pub const SETTING: Setting = Setting { slip_rpm: 10.0, run_length_s: 36_000.0 };

/// What the drives of one row and kind of sensors gave.
#[derive(Default)]
pub struct Outcome {
    /// Delays of the right answer, s, rising.
    pub delays_s: Vec<f64>,
    pub missed: u64,
    /// Alarms before the fault.
    pub before: usize,
    /// Other alarms after it, by kind.
    pub others: BTreeMap<&'static str, usize>,
}

pub fn outcome(fault: &Fault, kind: Kind, effort: Effort) -> Outcome {
    let plan = unit(kind, SETTING).plan().unwrap();
    let mut outcome = Outcome::default();
    for seed in 0..effort.seeds {
        let mut random = Random::new(seed + 1000);
        let warms_up = fault.wrong == Wrong::TempStuck;
        let seconds = effort.before_s + if warms_up { 5.0 } else { 1.0 } * effort.after_s;
        let trace = invented_trace(seconds as usize, &mut random);
        let drive = Drive::new(&trace[..seconds as usize], seed);
        let drive = if warms_up { drive.cold() } else { drive };
        let sensors = Sensors::new(kind, seed).wrong(fault.wrong, effort.before_s, effort.before_s + fault.lasts_s);
        outcome.take(fault, &run(&plan, kind, drive, sensors), effort);
    }
    outcome.delays_s.sort_by(f64::total_cmp);
    outcome
}

impl Outcome {
    fn take(&mut self, fault: &Fault, run: &Run, effort: Effort) {
        let mut delay_s = None;
        for (event, truth) in &run.alarms {
            let after_s = truth.time_s - effort.before_s;
            if after_s < 0.0 {
                self.before += 1;
            } else if Some(event.kind) == fault.found_as {
                delay_s = delay_s.or(Some(after_s));
            } else {
                *self.others.entry(event.kind.name()).or_default() += 1;
            }
        }
        match (fault.found_as, delay_s) {
            (Some(_), Some(delay_s)) => self.delays_s.push(delay_s),
            (Some(_), None) => self.missed += 1,
            (None, _) => {}
        }
    }

    /// A cell of the table.
    fn cell(&self, fault: &Fault) -> String {
        let mut said = Vec::new();
        let found = self.delays_s.len();
        if let (Some(median), Some(most)) = (self.delays_s.get(found / 2), self.delays_s.last()) {
            said.push(format!("{median:.2} s ({most:.2})"));
        }
        if self.missed > 0 {
            said.push(format!("missed {}", self.missed));
        }
        said.extend(self.others.iter().map(|(word, count)| format!("{word} {count}")));
        if self.before > 0 {
            said.push(format!("before it {}", self.before));
        }
        if said.is_empty() && fault.found_as.is_none() {
            return "silent".to_owned();
        }
        said.join(", ")
    }
}

/// One row for each fault, one column for each kind of sensors.
pub fn table(effort: Effort) -> String {
    let names: Vec<&str> = KINDS.into_iter().map(Kind::name).collect();
    let mut table =
        format!("| fault | should be found as | {} |\n|---|---|{}\n", names.join(" | "), "---|".repeat(KINDS.len()));
    for fault in FAULTS {
        let cell = |kind| if (fault.of)(kind) { outcome(fault, kind, effort).cell(fault) } else { "-".to_owned() };
        let cells: Vec<String> = KINDS.into_iter().map(cell).collect();
        let said = fault.found_as.map_or("nothing", LiveEventKind::name);
        table += &format!("| {} | {said} | {} |\n", fault.name, cells.join(" | "));
    }
    table
}
