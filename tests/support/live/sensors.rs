//! What the sensors and the bus make of the truth: steps, ages, teeth, ticks, and what can be wrong with them.

use super::drive::{STEP_S, Truth};
use super::random::Random;
use trainwright::live::*;

pub const INPUT_TEETH: u32 = 40;
pub const OUTPUT_TEETH: u32 = 30;
pub const ENGINE_TEETH: u32 = 58;
/// Of the timer of the demonstration's speed counter.
const TICK_S: f64 = 0.5e-6;
/// As long as the stale value of the trace of the demonstration, nearly.
const AGE_LIMIT_S: f32 = 0.05;
const GREATEST_RPM: f32 = 7000.0;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Steps of 0.5 rpm every 10 ms, noise 0.9 and 0.7 rpm, each value with an age of its own: the trace of the
    /// demonstration.
    Noisy,
    /// Steps of 0.5 rpm every 20 ms and no noise at all to hide them.
    Bare,
    /// Steps of 0.125 rpm every 10 ms, both shafts in one message (J1939 SPN 191 and 161, from memory).
    Heavy,
    /// Teeth counted in 50 ms, as the speed counter of the demonstration does.
    Counted,
    /// Time stamps of teeth, 0.5 us.
    Edges,
}

pub const KINDS: [Kind; 5] = [Kind::Noisy, Kind::Bare, Kind::Heavy, Kind::Counted, Kind::Edges];

impl Kind {
    pub fn name(self) -> &'static str {
        match self {
            Kind::Noisy => "bus, 0.5 rpm, noisy",
            Kind::Bare => "bus, 0.5 rpm, 20 ms",
            Kind::Heavy => "bus, 0.125 rpm",
            Kind::Counted => "teeth counted",
            Kind::Edges => "edges timed",
        }
    }

    /// Step, noise of input, noise of output, period, and whether both shafts share a message.
    fn bus(self) -> Option<(f64, f64, f64, f64, bool)> {
        match self {
            Kind::Noisy => Some((0.5, 0.9, 0.7, 0.01, false)),
            Kind::Bare => Some((0.5, 0.0, 0.0, 0.02, false)),
            Kind::Heavy => Some((0.125, 0.3, 0.2, 0.01, true)),
            Kind::Counted | Kind::Edges => None,
        }
    }

    /// Input, output and engine as the monitor is told about them.
    pub fn configured(self) -> [SpeedSensor; 3] {
        let sensors = match self.bus() {
            Some((step_rpm, input_rpm, output_rpm, _, _)) => [input_rpm, output_rpm, 4.0]
                .map(|noise_rpm| SpeedSensor::bus(step_rpm as f32, noise_rpm as f32, AGE_LIMIT_S, GREATEST_RPM)),
            None => [INPUT_TEETH, OUTPUT_TEETH, ENGINE_TEETH].map(|teeth| match self {
                Kind::Edges => SpeedSensor::edges(teeth, TICK_S as f32, 0.0, AGE_LIMIT_S, GREATEST_RPM),
                _ => SpeedSensor::counted(teeth, 0.0, AGE_LIMIT_S, GREATEST_RPM),
            }),
        };
        sensors.map(Result::unwrap)
    }

    /// A sample is pushed every so many steps: for each new pair of values.
    pub fn every(self) -> u32 {
        match self {
            Kind::Noisy | Kind::Heavy | Kind::Edges => 1,
            Kind::Bare => 2,
            Kind::Counted => 5,
        }
    }

    /// Greatest difference of age of the two shafts.
    pub fn skew_s(self) -> f32 {
        match self {
            Kind::Noisy => 0.012,
            Kind::Bare => 0.022,
            Kind::Heavy | Kind::Counted | Kind::Edges => 0.0,
        }
    }
}

/// What is wrong from `at_s` on, for `lasts_s`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wrong {
    Nothing,
    /// One tooth of the input wheel is broken off.
    LostTooth,
    /// One tooth of the input wheel gives two edges.
    DoubleEdge,
    /// A share of all input edges is doubled, at random.
    Chatter(f64),
    /// The connectors of input and output are exchanged.
    Swapped,
    /// The input value stands still.
    InputStale,
    /// The output value stands still.
    OutputStale,
    /// Samples are late by a random time up to this; the time stamps tell it.
    Jitter(f64),
    /// Readings are not there.
    Dropout,
    /// The bus says "not available", "error", or a reserved value.
    Indicated(ReadingState),
    /// A share of the readings is not there, at random.
    Flicker(f64),
    /// The clock of the input sensor runs fast by this share.
    InputClock(f64),
    /// The clock of the time stamps runs fast by this share.
    Clock(f64),
    /// The input value does not go higher.
    Saturated(f64),
    /// The temperature stays.
    TempStuck,
    /// The input wheel has so many teeth.
    Teeth(u32),
    /// The output wheel has so many teeth.
    OutputTeeth(u32),
    /// Slip at the input, reached after a ramp (rpm, s), while the engine drives in a gear that clutch C1 holds.
    Slip(f64, f64),
}

struct Shaft {
    teeth: u32,
    wheel_teeth: f64,
    noise_rpm: f64,
    rpm: f64,
    /// Of the wheel, in teeth.
    tooth: u32,
    phase: f64,
    edge_tick: Option<u64>,
    pulses: u32,
    bus_rpm: f64,
    next_s: f64,
    age_s: f64,
}

impl Shaft {
    fn new(teeth: u32, noise_rpm: f64, random: &mut Random) -> Self {
        Self {
            teeth,
            wheel_teeth: f64::from(teeth),
            noise_rpm,
            rpm: 0.0,
            tooth: 0,
            phase: random.share(),
            edge_tick: None,
            pulses: 0,
            bus_rpm: 0.0,
            next_s: 0.0,
            age_s: 0.0,
        }
    }
}

pub struct Sensors {
    kind: Kind,
    random: Random,
    shafts: [Shaft; 3],
    wrong: Wrong,
    from_s: f64,
    until_s: f64,
    torque_known: bool,
    held: Option<[SpeedReading; 2]>,
    held_temp_c: Option<f32>,
    last_us: u64,
    step: u32,
    pushed: bool,
}

impl Sensors {
    pub fn new(kind: Kind, seed: u64) -> Self {
        let mut random = Random::new(seed ^ 0xA5A5);
        let (input_rpm, output_rpm) = kind.bus().map_or((0.0, 0.0), |(_, input, output, _, _)| (input, output));
        let mut shafts = [
            Shaft::new(INPUT_TEETH, input_rpm, &mut random),
            Shaft::new(OUTPUT_TEETH, output_rpm, &mut random),
            Shaft::new(ENGINE_TEETH, 4.0, &mut random),
        ];
        if let Some((_, _, _, period_s, together)) = kind.bus() {
            let first_s = random.share() * period_s;
            for shaft in &mut shafts {
                shaft.next_s = if together { first_s } else { random.share() * period_s };
            }
        }
        let torque_known = random.chance(0.5);
        Self {
            kind,
            random,
            shafts,
            wrong: Wrong::Nothing,
            from_s: f64::INFINITY,
            until_s: f64::INFINITY,
            torque_known,
            held: None,
            held_temp_c: None,
            last_us: 0,
            step: 0,
            pushed: false,
        }
    }

    pub fn with_torque(mut self, known: bool) -> Self {
        self.torque_known = known;
        self
    }

    pub fn wrong(mut self, wrong: Wrong, from_s: f64, until_s: f64) -> Self {
        (self.wrong, self.from_s, self.until_s) = (wrong, from_s, until_s);
        self
    }

    /// The sample of this step, if one is pushed.
    pub fn read(&mut self, truth: &Truth) -> Option<LiveSample> {
        self.pushed = self.step.is_multiple_of(self.kind.every());
        self.step += 1;
        let sample = self.sample(truth);
        self.pushed.then_some(sample)
    }

    fn sample(&mut self, truth: &Truth) -> LiveSample {
        let wrong = if (self.from_s..self.until_s).contains(&truth.time_s) { self.wrong } else { Wrong::Nothing };
        let mut rpm = [truth.input_rpm, truth.output_rpm, truth.engine_rpm];
        if let Wrong::Slip(slip_rpm, ramp_s) = wrong
            && matches!(truth.commanded, 2 | 3 | 4 | 6 | 8)
            && truth.engine_torque_nm > 0.0
        {
            rpm[0] += slip_rpm * ((truth.time_s - self.from_s) / ramp_s.max(STEP_S)).min(1.0);
        }
        let mut readings = [0, 1, 2].map(|place| {
            let wrong = match (place, wrong) {
                (1, Wrong::OutputTeeth(teeth)) => Wrong::Teeth(teeth),
                (0, Wrong::OutputTeeth(_)) | (1.., _) => Wrong::Nothing,
                _ => wrong,
            };
            match self.kind.bus() {
                Some(bus) => self.bus(place, (rpm[place], truth.time_s), bus, wrong),
                None => self.wheel(place, rpm[place], truth.time_s, wrong),
            }
        });
        let [input, output, engine] = &mut readings;
        self.spoil(wrong, input, output);
        let temp_c = match (wrong, self.held_temp_c) {
            (Wrong::TempStuck, Some(held)) => held,
            _ => truth.temp_c.round() as f32,
        };
        self.held_temp_c = Some(temp_c);
        let mut time_s = truth.time_s;
        match wrong {
            Wrong::Jitter(most_s) => time_s += self.random.between(0.0, most_s),
            Wrong::Clock(share) => time_s += (time_s - self.from_s) * share,
            _ => {}
        }
        let time_us = (time_s * 1e6).round() as u64;
        self.last_us = time_us.max(self.last_us + 1);
        LiveSample {
            time_us: self.last_us,
            input: *input,
            output: *output,
            engine: *engine,
            pressure_kpa: ((truth.pressure_kpa / 8.0).round() * 8.0) as f32,
            temp_c,
            engine_torque_nm: if self.torque_known { truth.engine_torque_nm.round() as f32 } else { f32::NAN },
            commanded: truth.commanded,
            lockup: i8::from(truth.lockup),
        }
    }

    fn spoil(&mut self, wrong: Wrong, input: &mut SpeedReading, output: &mut SpeedReading) {
        let held = *self.held.get_or_insert([*input, *output]);
        let mut stays = [false; 2];
        match wrong {
            Wrong::InputStale => (*input, stays[0]) = (held[0], true),
            Wrong::OutputStale => (*output, stays[1]) = (held[1], true),
            Wrong::Swapped => std::mem::swap(input, output),
            Wrong::Dropout => (*input, *output) = (SpeedReading::MISSING, SpeedReading::MISSING),
            Wrong::Indicated(state) => input.state = state,
            Wrong::Flicker(share) => {
                for reading in [&mut *input, &mut *output] {
                    if self.random.chance(share) {
                        *reading = SpeedReading::MISSING;
                    }
                }
            }
            Wrong::Saturated(most_rpm) => input.rpm = input.rpm.min(most_rpm as f32),
            _ => {}
        }
        self.held = Some([if stays[0] { held[0] } else { *input }, if stays[1] { held[1] } else { *output }]);
    }

    fn bus(
        &mut self,
        place: usize,
        (rpm, time_s): (f64, f64),
        bus: (f64, f64, f64, f64, bool),
        wrong: Wrong,
    ) -> SpeedReading {
        let (step_rpm, _, _, period_s, _) = bus;
        let shaft = &mut self.shafts[place];
        if time_s >= shaft.next_s {
            let age_s = (time_s - shaft.next_s).min(STEP_S);
            let mut sent_rpm = rpm + (shaft.rpm - rpm) * age_s / STEP_S;
            match wrong {
                Wrong::InputClock(share) => sent_rpm *= 1.0 - share,
                Wrong::Teeth(teeth) => sent_rpm *= f64::from(teeth) / f64::from(shaft.teeth),
                Wrong::LostTooth => sent_rpm *= 1.0 - 1.0 / f64::from(INPUT_TEETH),
                Wrong::DoubleEdge => sent_rpm *= 1.0 + 1.0 / f64::from(INPUT_TEETH),
                Wrong::Chatter(share) => sent_rpm *= 1.0 + share,
                _ => {}
            }
            if rpm > 0.0 {
                sent_rpm += shaft.noise_rpm * self.random.normal();
            }
            shaft.bus_rpm = ((sent_rpm / step_rpm).round() * step_rpm).max(0.0);
            shaft.next_s += period_s;
        }
        shaft.rpm = rpm;
        SpeedReading::bus(shaft.bus_rpm as f32)
    }

    /// Teeth that pass in one step, and the time of the last of them.
    fn wheel(&mut self, place: usize, rpm: f64, time_s: f64, wrong: Wrong) -> SpeedReading {
        let shaft = &mut self.shafts[place];
        if let Wrong::Teeth(teeth) = wrong {
            shaft.wheel_teeth = f64::from(teeth);
        }
        let passing = (shaft.rpm + rpm) / 2.0 / 60.0 * shaft.wheel_teeth * STEP_S;
        shaft.rpm = rpm;
        let before = shaft.phase;
        let whole = (before + passing) as u32;
        shaft.phase = before + passing - f64::from(whole);
        // Places of the edges of this step, in teeth since its beginning: 1 - before, 2 - before, ...
        let (mut pulses, mut last) = (whole, f64::from(whole) - before);
        let around = shaft.tooth + whole;
        let turns = around / shaft.teeth;
        shaft.tooth = around - turns * shaft.teeth;
        match wrong {
            Wrong::LostTooth if turns > 0 => {
                pulses -= turns;
                last -= f64::from(u8::from(shaft.tooth == 0));
            }
            Wrong::DoubleEdge => pulses += turns,
            Wrong::Chatter(share) => pulses += (0..whole).filter(|_| self.random.chance(share)).count() as u32,
            _ => {}
        }
        if self.kind == Kind::Counted {
            let counted = shaft.pulses + pulses;
            shaft.pulses = if self.pushed { 0 } else { counted };
            return SpeedReading::counted(counted);
        }
        if pulses == 0 {
            return SpeedReading::edges(0, 0);
        }
        let mut at_s = time_s - STEP_S + last / passing * STEP_S;
        if let Wrong::InputClock(share) = wrong {
            at_s *= 1.0 + share;
        }
        let tick = (at_s / TICK_S + 1e6) as u64;
        match shaft.edge_tick.replace(tick) {
            Some(before) => SpeedReading::edges(pulses, (tick - before) as u32),
            None => SpeedReading::edges(0, 0),
        }
    }
}
