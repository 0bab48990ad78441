//! The monitor on a simulated drive: its configuration, its run, and what it said.

use super::drive::{Drive, STEP_S, Truth};
use super::sensors::{Kind, Sensors};
use std::sync::OnceLock;
use trainwright::live::*;
use trainwright::record::{Family, LiveWatch, NamedTrain, Record};

/// Smallest slip to be found and average time to a false alarm.
#[derive(Debug, Clone, Copy)]
pub struct Setting {
    pub slip_rpm: f32,
    pub run_length_s: f32,
}

/// The wren of the demonstration, with these sensors.
pub fn unit(kind: Kind, setting: Setting) -> LiveUnit {
    static TRAIN: OnceLock<NamedTrain> = OnceLock::new();
    let train = TRAIN.get_or_init(|| {
        let text = include_str!("../../../python/trainwright/demo/family.toml");
        Family::from_toml("family.toml", text).unwrap().train("wren").unwrap()
    });
    let limits = LiveLimits {
        standing_rpm: 50.0,
        slip_rpm: setting.slip_rpm,
        run_length_s: setting.run_length_s,
        skew_s: kind.skew_s(),
        ratio_u_rel: 0.001,
        settle_s: 0.3,
        follow_s: 2.0,
        flare_rpm: 75.0,
        dip_share: 0.02,
        lockup_slip_rpm: 50.0,
        cold_c: 40.0,
        hot_c: 120.0,
        warm_up_s: 600.0,
    };
    let [input, output, engine] = kind.configured();
    let sample_s = (STEP_S * f64::from(kind.every())) as f32;
    let named = train.live_unit(&LiveWatch { input, output, engine, limits, sample_s }).unwrap();
    assert_eq!(named.gears, ["1", "2", "3", "4", "5", "6", "7", "8", "R"]);
    named.unit
}

/// What says that something is wrong; the other kinds tell how the drive goes.
pub const ALARMS: [LiveEventKind; 11] = [
    LiveEventKind::Slip,
    LiveEventKind::OtherGear,
    LiveEventKind::Flare,
    LiveEventKind::TieUp,
    LiveEventKind::Stale,
    LiveEventKind::Lost,
    LiveEventKind::WrongTeeth,
    LiveEventKind::Swapped,
    LiveEventKind::TimeFault,
    LiveEventKind::Overheated,
    LiveEventKind::TempStuck,
];

/// A run over a drive.
#[derive(Default)]
pub struct Run {
    /// Alarms with the truth of their sample.
    pub alarms: Vec<(LiveEvent, Truth)>,
    pub samples: u64,
    /// Time in a gear and long enough after the shift for slip to be judged, s.
    pub judged_s: f64,
}

impl Run {
    pub fn count(&self, kind: LiveEventKind) -> usize {
        self.alarms.iter().filter(|(event, _)| event.kind == kind).count()
    }

    pub fn merge(&mut self, other: Run) {
        self.alarms.extend(other.alarms);
        self.samples += other.samples;
        self.judged_s += other.judged_s;
    }
}

pub fn run(plan: &LivePlan, kind: Kind, drive: Drive, mut sensors: Sensors) -> Run {
    let mut monitor = LiveMonitor::new(plan);
    let mut events = LiveEvents::NONE;
    let mut run = Run::default();
    let mut in_gear_s = 0.0;
    for truth in drive {
        let Some(sample) = sensors.read(&truth) else { continue };
        let period_s = STEP_S * f64::from(kind.every());
        monitor.push(plan, &sample, &mut events);
        let said = events.found().iter().filter(|event| ALARMS.contains(&event.kind));
        run.alarms.extend(said.map(|&event| (event, truth)));
        run.samples += 1;
        in_gear_s = if truth.in_gear.is_some() { in_gear_s + period_s } else { 0.0 };
        if in_gear_s > 0.3 {
            run.judged_s += period_s;
        }
    }
    run
}

/// Greatest count that a mean of `expected` exceeds less than once in a thousand times: Poisson.
pub fn poisson_bound(expected: f64) -> usize {
    let (mut term, mut sum, mut count) = (libm::exp(-expected), 0.0, 0);
    loop {
        sum += term;
        if sum >= 0.999 {
            return count;
        }
        count += 1;
        term *= expected / count as f64;
    }
}
