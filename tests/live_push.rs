//! The monitor sample by sample over short drives that are made by formula: `tests/vectors/live_push.csv` is run in every
//! language, and the events that come must be those that were put in.
//!
//! `WRITE_VECTORS=1 cargo test --test live_push` writes the file.

mod support;

use std::cell::RefCell;
use std::fmt::Write;
use std::fs;

use support::{Row, vectors};
use trainwright::live::*;

/// Time from sample to sample.
const SAMPLE_S: f64 = 0.02;
/// Ratios of the gears, and what is commanded for each.
const RATIOS: [f64; 4] = [2.0, 1.4, 1.0, -2.5];

/// What comes over the wire in one sample.
#[derive(Clone, Copy)]
enum Speed {
    Bus(f64),
    Counted(u32),
    Edges(u32, u32),
    NotAvailable,
}

struct Drive {
    name: &'static str,
    source: SpeedSource,
    seconds: f64,
    /// Input and output speed, and the commanded gear, after so many seconds.
    at: fn(f64) -> (f64, f64, i8),
    /// What the senders make of them; by default, what they are.
    sent: fn(f64, Speed, Speed) -> (Speed, Speed),
    /// The gear that is in effect without doubt, by its place.
    gear: fn(f64) -> Option<i8>,
    /// Slip that is no slip must not alarm.
    slips: bool,
    torque_nm: f64,
}

/// From 0 to 1 between two times.
fn ramp(t: f64, from: f64, to: f64) -> f64 {
    ((t - from) / (to - from)).clamp(0.0, 1.0)
}

fn as_it_is(_: f64, input: Speed, output: Speed) -> (Speed, Speed) {
    (input, output)
}

/// From 2.0 to 1.4, commanded at 1 s; the ratio moves from 1.20 to 1.60 s.
fn upshift(t: f64) -> (f64, f64, i8) {
    let output = 1000.0 + 60.0 * t;
    let ratio = 2.0 - 0.6 * ramp(t, 1.2, 1.6);
    (ratio * output, output, if t < 1.0 { 1 } else { 2 })
}

/// The same, the input running ahead by up to 90 1/min between 1.00 and 1.20 s.
fn flare(t: f64) -> (f64, f64, i8) {
    let (input, output, commanded) = upshift(t);
    let ahead = 90.0 * (std::f64::consts::PI * ramp(t, 1.0, 1.2)).sin();
    (input + ahead, output, commanded)
}

/// Top gear; from 2 s on the input slips, by 30 1/min more each second.
fn slip(t: f64) -> (f64, f64, i8) {
    let output = 1500.0 + 25.0 * t;
    (output + 30.0 * (t - 2.0).max(0.0), output, 3)
}

/// Reverse, drawing away.
fn reverse(t: f64) -> (f64, f64, i8) {
    let output = 200.0 + 50.0 * t;
    (2.5 * output, output, -1)
}

fn cruise(t: f64) -> (f64, f64, i8) {
    let output = 1200.0 + 40.0 * t;
    (1.4 * output, output, 2)
}

const DRIVES: [Drive; 8] = [
    Drive {
        name: "upshift",
        source: SpeedSource::Bus,
        seconds: 2.6,
        at: upshift,
        sent: as_it_is,
        gear: |t| if (0.3..1.2).contains(&t) { Some(0) } else { (t > 1.8).then_some(1) },
        slips: false,
        torque_nm: 200.0,
    },
    Drive {
        name: "flare",
        source: SpeedSource::Bus,
        seconds: 2.6,
        at: flare,
        sent: as_it_is,
        gear: |t| if (0.3..1.0).contains(&t) { Some(0) } else { (t > 1.8).then_some(1) },
        slips: false,
        torque_nm: 200.0,
    },
    Drive {
        name: "slip",
        source: SpeedSource::Bus,
        seconds: 4.0,
        at: slip,
        sent: as_it_is,
        gear: |t| (t > 0.3).then_some(2),
        slips: true,
        torque_nm: 150.0,
    },
    Drive {
        name: "stale",
        source: SpeedSource::Bus,
        seconds: 3.0,
        at: cruise,
        // The output stands still on the bus, shortly at 1.0 s, then from 1.5 to 2.3 s.
        sent: |t, input, output| match t {
            _ if (1.0..1.08).contains(&t) => (input, Speed::Bus(1240.0)),
            _ if (1.5..2.3).contains(&t) => (input, Speed::Bus(1260.0)),
            _ => (input, output),
        },
        gear: |t| (0.3..1.5).contains(&t).then_some(1),
        slips: false,
        torque_nm: 100.0,
    },
    Drive {
        name: "lost",
        source: SpeedSource::Bus,
        seconds: 3.0,
        at: cruise,
        sent: |t, input, output| if (1.0..1.8).contains(&t) { (Speed::NotAvailable, output) } else { (input, output) },
        gear: |t| (0.3..1.0).contains(&t).then_some(1),
        slips: false,
        torque_nm: 100.0,
    },
    Drive {
        name: "counted",
        source: SpeedSource::Counted,
        seconds: 3.0,
        at: cruise,
        sent: as_it_is,
        gear: |t| (t > 1.5).then_some(1),
        slips: false,
        torque_nm: 100.0,
    },
    Drive {
        name: "edges",
        source: SpeedSource::Edges,
        seconds: 3.0,
        at: cruise,
        sent: as_it_is,
        gear: |t| (t > 1.5).then_some(1),
        slips: false,
        torque_nm: 100.0,
    },
    Drive {
        name: "reverse",
        source: SpeedSource::Bus,
        seconds: 2.0,
        at: reverse,
        sent: as_it_is,
        gear: |t| (t > 0.5).then_some(3),
        slips: false,
        torque_nm: f64::NAN,
    },
];

/// Teeth of the two wheels, and ticks of the timer in a second.
const TEETH: [f64; 2] = [40.0, 30.0];
const TICKS_PER_S: f64 = 1e6;
const BUS_STEP_RPM: f64 = 0.5;

/// What a sensor makes of a shaft: turns so far and speed, now and one sample before.
fn sensed(source: SpeedSource, teeth: f64, turns: [f64; 2], rpm: f64) -> Speed {
    let [before, now] = turns.map(|turns| (turns * teeth).floor());
    let pulses = (now - before) as u32;
    match source {
        SpeedSource::Bus => Speed::Bus((rpm / BUS_STEP_RPM).round() * BUS_STEP_RPM),
        SpeedSource::Counted => Speed::Counted(pulses),
        // At so steady a speed the edges come at even times.
        SpeedSource::Edges => {
            Speed::Edges(pulses, (f64::from(pulses) * 60.0 / (teeth * rpm) * TICKS_PER_S).round() as u32)
        }
    }
}

fn cells(speed: Speed) -> String {
    match speed {
        Speed::Bus(rpm) => format!("{rpm},0,0"),
        Speed::Counted(pulses) => format!("{pulses},0,0"),
        Speed::Edges(pulses, ticks) => format!("{pulses},{ticks},0"),
        Speed::NotAvailable => format!("0,0,{}", ReadingState::NotAvailable as u8),
    }
}

fn file() -> String {
    let mut text = "\
# Drives by formula (tests/live_push.rs), one row for each sample; a new drive starts a new monitor. The unit: ratios 2.0, 1.4,
# 1.0, -2.5. A cell is filled in where the formula leaves no doubt: the gear while it is held, no alarm without slip. NaN is -1.
drive,sensor,time_us,input,input_ticks,input_state,output,output_ticks,output_state,engine_rpm,torque_nm,temp_c,commanded,\
lockup,=gear,=phase,=alarm,=used,=ratio,=ratio_u,=slip_rpm,=slip_u_rpm,=converter_slip_rpm,=events,=kind,=event_gear,\
=other_gear,=suspects,=at_us,=found_us,=value,=u,error,rel_tol,source
"
    .to_owned();
    for drive in &DRIVES {
        let mut turns = [[0.0; 2]; 2];
        for sample in 0..(drive.seconds / SAMPLE_S).round() as u64 {
            let t = sample as f64 * SAMPLE_S;
            let (input_rpm, output_rpm, commanded) = (drive.at)(t);
            let speeds = [input_rpm, output_rpm];
            for (turns, rpm) in turns.iter_mut().zip(speeds) {
                *turns = [turns[1], turns[1] + rpm / 60.0 * SAMPLE_S];
            }
            let [input, output] = [0, 1].map(|shaft| sensed(drive.source, TEETH[shaft], turns[shaft], speeds[shaft]));
            let (input, output) = (drive.sent)(t, input, output);
            let sensor = ["bus", "counted", "edges"][drive.source as usize];
            let gear = (drive.gear)(t).map_or(String::new(), |gear| gear.to_string());
            let alarm = if drive.slips && t > 2.0 { "" } else { "0" };
            writeln!(
                text,
                "{},{sensor},{},{},{},{},{},70,{commanded},1,{gear},,{alarm},,,,,,,,,,,,,,,,,0,by formula",
                drive.name,
                sample * (SAMPLE_S * 1e6) as u64,
                cells(input),
                cells(output),
                input_rpm.round() + 20.0,
                drive.torque_nm
            )
            .unwrap();
        }
    }
    text
}

fn sensor(source: SpeedSource, teeth: f64) -> SpeedSensor {
    match source {
        SpeedSource::Bus => SpeedSensor::bus(BUS_STEP_RPM as f32, 0.0, 0.05, 8000.0),
        SpeedSource::Counted => SpeedSensor::counted(teeth as u32, 0.0, 0.05, 8000.0),
        SpeedSource::Edges => SpeedSensor::edges(teeth as u32, 1.0 / TICKS_PER_S as f32, 0.0, 0.05, 8000.0),
    }
    .unwrap()
}

/// The unit, as every language makes it.
fn unit(source: SpeedSource) -> LiveUnit {
    let mut gears = [LiveGear::NONE; MAX_LIVE_GEARS];
    let suspects: [&[(u8, f32)]; 4] =
        [&[(0, -1.5), (1, 2.0)], &[(0, -2.0), (2, 3.0)], &[(1, 2.5), (2, -1.25)], &[(0, 1.0)]];
    for (place, (gear, suspects)) in gears.iter_mut().zip(suspects).enumerate() {
        *gear = LiveGear::new(if place < 3 { place as i8 + 1 } else { -1 }, RATIOS[place] as f32);
        for (slot, &(element, slip_per_input_slip)) in gear.suspects.iter_mut().zip(suspects) {
            *slot = LiveSuspect { element, slip_per_input_slip };
        }
        gear.suspect_count = suspects.len() as u8;
    }
    let mut elements = [LiveElement::UNKNOWN; MAX_LIVE_ELEMENTS];
    for element in elements.iter_mut().take(3) {
        *element = LiveElement { heat_capacity_j_k: 400.0, cooling_s: 20.0, limit_c: 250.0 };
    }
    let limits = LiveLimits {
        standing_rpm: 30.0,
        slip_rpm: 4.0,
        run_length_s: 360_000.0,
        skew_s: 0.0,
        ratio_u_rel: 1e-3,
        settle_s: 0.2,
        follow_s: 2.0,
        flare_rpm: 40.0,
        dip_share: 0.02,
        lockup_slip_rpm: 50.0,
        cold_c: 40.0,
        hot_c: 120.0,
        warm_up_s: 600.0,
    };
    let [input, output] = TEETH.map(|teeth| sensor(source, teeth));
    let engine = SpeedSensor::bus(1.0, 4.0, 0.1, 8000.0).unwrap();
    LiveUnit {
        gears,
        gear_count: 4,
        elements,
        element_count: 3,
        input,
        output,
        engine,
        limits,
        sample_s: SAMPLE_S as f32,
    }
}

fn source_of(row: &Row) -> SpeedSource {
    match row.text("sensor") {
        "bus" => SpeedSource::Bus,
        "counted" => SpeedSource::Counted,
        _ => SpeedSource::Edges,
    }
}

fn reading(row: &Row, shaft: &str) -> SpeedReading {
    let (value, ticks) = (row.number(shaft), row.count(&format!("{shaft}_ticks")));
    match (source_of(row), row.count(&format!("{shaft}_state"))) {
        (SpeedSource::Bus, 0) => SpeedReading::bus(value as f32),
        (SpeedSource::Counted, 0) => SpeedReading::counted(value as u32),
        (SpeedSource::Edges, 0) => SpeedReading::edges(value as u32, ticks),
        _ => SpeedReading { state: ReadingState::NotAvailable, ..SpeedReading::MISSING },
    }
}

fn sample(row: &Row) -> LiveSample {
    LiveSample {
        time_us: row.number("time_us") as u64,
        input: reading(row, "input"),
        output: reading(row, "output"),
        engine: SpeedReading::bus(row.number("engine_rpm") as f32),
        pressure_kpa: f32::NAN,
        temp_c: row.number("temp_c") as f32,
        engine_torque_nm: row.number("torque_nm") as f32,
        commanded: row.number("commanded") as i8,
        lockup: row.number("lockup") as i8,
    }
}

/// A drive with everything that came of it.
struct Driven {
    name: String,
    events: Vec<LiveEvent>,
    plan: LivePlan,
    monitor: LiveMonitor,
}

fn formed(value: f32) -> f64 {
    if value.is_nan() { -1.0 } else { value.into() }
}

/// Runs the file through the vectors, and hands out what came.
fn driven() -> Vec<Driven> {
    let drives: RefCell<Vec<Driven>> = RefCell::default();
    vectors("live_push", |row| {
        let mut drives = drives.borrow_mut();
        if drives.last().is_none_or(|drive| drive.name != row.text("drive")) {
            let plan = unit(source_of(row)).plan()?;
            let (name, monitor) = (row.text("drive").to_owned(), LiveMonitor::new(&plan));
            drives.push(Driven { name, events: Vec::new(), plan, monitor });
        }
        let drive = drives.last_mut().unwrap();
        let mut events = LiveEvents::NONE;
        let state = drive.monitor.push(&drive.plan, &sample(row), &mut events);
        let first = events.found().first().copied().unwrap_or(LiveEvent::NONE);
        drive.events.extend_from_slice(events.found());
        Ok([
            state.gear.into(),
            (state.phase as u8).into(),
            u8::from(state.alarm).into(),
            u8::from(state.used).into(),
            formed(state.ratio),
            formed(state.ratio_u),
            formed(state.slip_rpm),
            formed(state.slip_u_rpm),
            formed(state.converter_slip_rpm),
            events.count.into(),
            (first.kind as u8).into(),
            first.gear.into(),
            first.other_gear.into(),
            first.suspects.into(),
            first.at_us as f64,
            first.found_us as f64,
            formed(first.value),
            formed(first.u),
        ])
    });
    drives.into_inner()
}

#[test]
fn every_drive_shows_what_was_put_in() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/vectors/live_push.csv");
    if std::env::var_os("WRITE_VECTORS").is_some() {
        fs::write(path, file()).unwrap();
    }
    assert!(
        fs::read_to_string(path).unwrap_or_default() == file(),
        "{path} is not what the formulas give: WRITE_VECTORS=1"
    );
    for drive in driven() {
        shows(&drive);
    }
}

/// Seconds of an event.
fn seconds(us: u64) -> f64 {
    us as f64 * 1e-6
}

fn shows(drive: &Driven) {
    use LiveEventKind::*;
    let name = drive.name.as_str();
    for event in &drive.events {
        println!("{name} {event:?}");
    }
    let of = |kind: LiveEventKind| drive.events.iter().filter(move |event| event.kind == kind).collect::<Vec<_>>();
    let expected: &[LiveEventKind] = match name {
        "upshift" => &[GearReached, ShiftBegan, ShiftDone, GearReached],
        "flare" => &[GearReached, ShiftBegan, ShiftDone, Flare, GearReached],
        "slip" => &[GearReached, Slip],
        "stale" => &[GearReached, Stale, Back],
        "lost" => &[GearReached, Lost, Back],
        _ => &[GearReached],
    };
    let essential = |kind: &LiveEventKind| !matches!(kind, SlipReached | LockupOn | LockupOff);
    let mut kinds: Vec<_> = drive.events.iter().map(|event| event.kind).filter(essential).collect();
    if matches!(name, "stale" | "lost") {
        // After a second without one of the speeds the gear is looked for again, or was never given up.
        let mut seen = 0;
        kinds.retain(|kind| {
            *kind != GearReached || {
                seen += 1;
                seen == 1
            }
        });
    }
    assert_eq!(kinds, expected, "{name}");
    match name {
        "upshift" | "flare" => {
            let (began, done) = (of(ShiftBegan)[0], of(ShiftDone)[0]);
            assert_eq!((began.gear, began.other_gear, done.gear, done.other_gear), (1, 0, 1, 0));
            assert!((seconds(began.at_us) - 1.0).abs() <= SAMPLE_S, "{began:?}");
            assert!((seconds(done.at_us) - 1.6).abs() <= 2.0 * SAMPLE_S, "{done:?}");
            assert!((done.value - 0.4).abs() <= 0.05, "{done:?}");
            let shift = drive.monitor.last_shift(&drive.plan);
            assert!((seconds(shift.half_us) - 1.4).abs() <= SAMPLE_S, "{shift:?}");
            // T·s·Δt: the new gear slips from 0.6·n_out down to nothing, evenly, in 0.4 s at 1084 1/min.
            let energy_j = 200.0 * 0.5 * 0.6 * 1084.0 * 0.4 * std::f64::consts::PI / 30.0;
            assert!((f64::from(shift.energy_j) / energy_j - 1.0).abs() < 0.1, "{} {energy_j}", shift.energy_j);
        }
        "slip" => {
            let slip = of(Slip)[0];
            assert_eq!((slip.gear, slip.suspects), (2, 0b110));
            let (found, onset) = (seconds(slip.found_us), seconds(slip.at_us));
            assert!(found > 2.0 && found < 2.8 && (onset - 2.0).abs() < 0.4, "{slip:?}");
            let reached = of(SlipReached);
            assert!(reached.iter().any(|event| event.value >= 20.0), "60 1/min at the end: {reached:?}");
        }
        "stale" => assert_eq!((of(Stale)[0].speed, drive.monitor.counts().stale > 30), (LiveSpeed::Output, true)),
        "lost" => assert_eq!((of(Lost)[0].speed, drive.monitor.counts().not_available), (LiveSpeed::Input, 40)),
        _ => {}
    }
    if name == "flare" {
        let flare = of(Flare)[0];
        assert!((flare.value - 90.0).abs() < 10.0 && (seconds(flare.at_us) - 1.1).abs() <= 2.0 * SAMPLE_S, "{flare:?}");
    }
}
