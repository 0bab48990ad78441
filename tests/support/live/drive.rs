//! A truck with the invented eight-speed on a speed trace: what its shafts truly do, every 10 ms.
//!
//! Clean by construction: outside shifts, and outside the coast overrun that first and second have by design, the
//! input turns at exactly ratio times output. Everything invented; the traces may be the regulation's.

use super::random::Random;
use std::path::Path;

/// Gears of a wren, from its teeth.
pub const RATIOS: [f64; 8] = [
    854_760.0 / 201_019.0,
    644_160.0 / 201_019.0,
    5070.0 / 2209.0,
    65.0 / 37.0,
    65.0 / 47.0,
    1.0,
    29_255.0 / 34_034.0,
    3215.0 / 4277.0,
];
pub const REVERSE: f64 = -270.0 / 91.0;
pub const STEP_S: f64 = 0.01;

/// Full-throttle upshifts of the record of the demonstration, rpm of the output.
const UPSHIFT_OUTPUT_RPM: [f64; 7] = [700.0, 930.0, 1300.0, 1700.0, 2150.0, 2500.0, 2900.0];
const OUTPUT_RPM_PER_KM_H: f64 = 25.0;
const KM_H_PER_MPH: f64 = 1.609_344;
const IDLE_RPM: f64 = 680.0;

/// Speed of the road each second, mph.
pub type Trace = Vec<f64>;

/// A cycle of 40 CFR beside the project, or why it is not there.
pub fn cycle(name: &str) -> Result<Trace, String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../shared/data/{name}.csv"));
    let text = std::fs::read_to_string(&path).map_err(|error| format!("../shared/data/{name}.csv: {error}"))?;
    Ok(text.lines().skip(1).map(|line| line.split(',').nth(1).unwrap().parse().unwrap()).collect())
}

/// Town and road, hard and gentle, with stops: needs no file.
pub fn invented_trace(seconds: usize, random: &mut Random) -> Trace {
    let mut trace = vec![0.0; 3];
    let mut speed = 0.0_f64;
    while trace.len() < seconds {
        let stop = random.chance(0.2);
        let crawl = speed <= 0.0 && random.chance(0.3);
        let target = match () {
            () if stop => 0.0,
            () if crawl => random.between(3.0, 7.0),
            () => random.between(8.0, 75.0),
        };
        let rate = if random.chance(0.15) { random.between(4.0, 8.0) } else { random.between(0.6, 3.0) };
        while (speed - target).abs() > 1e-9 {
            speed += (target - speed).clamp(-rate, rate * (1.0 - speed / 110.0));
            trace.push(speed);
        }
        let hold = random.between(4.0, if stop { 15.0 } else { 60.0 });
        let sway = random.between(0.0, 1.2);
        for second in 0..hold as usize {
            speed = (target + sway * libm::sin(second as f64 * 0.3)).max(0.0) * f64::from(!stop);
            trace.push(speed);
        }
        if crawl {
            trace.extend([2.0, 1.0, 0.0, 0.0, 0.0, 0.0]);
            speed = 0.0;
        }
    }
    trace
}

/// What is true at one instant.
#[derive(Debug, Clone, Copy, Default)]
pub struct Truth {
    pub time_s: f64,
    pub input_rpm: f64,
    pub output_rpm: f64,
    pub engine_rpm: f64,
    pub engine_torque_nm: f64,
    pub pressure_kpa: f64,
    pub temp_c: f64,
    /// Forward from 1, reverse -1, neutral 0.
    pub commanded: i8,
    /// Place in [`RATIOS`], reverse after the last; none in neutral, a shift, coast overrun or at a standstill.
    pub in_gear: Option<u8>,
    pub lockup: bool,
}

#[derive(Debug, Clone, Copy)]
struct Shift {
    from: usize,

    inertia_at_s: f64,
    inertia_s: f64,
}

/// Runs over a trace.
pub struct Drive<'a> {
    trace: &'a [f64],
    /// Of the whole trace: a driver is not a metronome.
    scale: f64,
    random: Random,
    step: u64,
    gear: usize,
    shift: Option<Shift>,
    last_shift_s: f64,
    load: f64,
    overrun_rpm: f64,
    engine_slip_rpm: f64,
    lockup: bool,
    temp_c: f64,
    neutral: bool,
    reverse: bool,
    standing: bool,
}

impl<'a> Drive<'a> {
    pub fn new(trace: &'a [f64], seed: u64) -> Self {
        let mut random = Random::new(seed);
        Self {
            trace,
            scale: random.between(0.96, 1.04),
            temp_c: random.between(-5.0, 80.0),
            random,
            step: 0,
            gear: 0,
            shift: None,
            last_shift_s: 0.0,
            load: 0.0,
            overrun_rpm: 0.0,
            engine_slip_rpm: IDLE_RPM,
            lockup: false,
            neutral: false,
            reverse: false,
            standing: true,
        }
    }

    /// The same with cold fluid.
    pub fn cold(self) -> Self {
        Self { temp_c: -5.0, ..self }
    }

    /// Speed and its rate, mph and mph/s: a cubic through the seconds, so that the rate has no steps.
    fn road(&self, time_s: f64) -> (f64, f64) {
        let second = time_s as usize;
        let at = |place: usize| self.trace[place.min(self.trace.len() - 1)];
        let (p0, p1, p2, p3) = (at(second.saturating_sub(1)), at(second), at(second + 1), at(second + 2));
        let t = time_s - second as f64;
        let (m1, m2) = ((p2 - p0) / 2.0, (p3 - p1) / 2.0);
        let (a, b) = (2.0 * (p1 - p2) + m1 + m2, 3.0 * (p2 - p1) - 2.0 * m1 - m2);
        let speed = ((a * t + b) * t + m1) * t + p1;
        let rate = (3.0 * a * t + 2.0 * b) * t + m1;
        if speed > 0.0 { (speed * self.scale, rate * self.scale) } else { (0.0, 0.0) }
    }

    fn choose_gear(&mut self, time_s: f64, output_rpm: f64, coasting: bool) {
        if self.shift.is_some() || time_s - self.last_shift_s < 1.2 {
            return;
        }
        let up = UPSHIFT_OUTPUT_RPM.get(self.gear).map_or(f64::INFINITY, |rpm| rpm * (0.42 + 0.58 * self.load));
        let below = self.gear.checked_sub(1).and_then(|place| UPSHIFT_OUTPUT_RPM.get(place));
        let down = below.map_or(0.0, |rpm| rpm * (0.28 + 0.42 * self.load));
        let to = match () {
            () if output_rpm > up && !coasting => self.gear + 1,
            () if output_rpm < down => self.gear - 1,
            () => return,
        };
        let fill_s = self.random.between(0.12, 0.24);
        let torque_s = self.random.between(0.08, 0.2);
        self.shift = Some(Shift {
            from: self.gear,
            inertia_at_s: time_s + fill_s + torque_s,
            inertia_s: self.random.between(0.3, 0.5),
        });
        self.gear = to;
    }

    /// Share of the shift that the input has done, and whether it still goes on.
    fn shifted(&mut self, time_s: f64) -> f64 {
        let Some(shift) = self.shift else { return 1.0 };
        let done = ((time_s - shift.inertia_at_s) / shift.inertia_s).clamp(0.0, 1.0);
        if done >= 1.0 {
            self.shift = None;
            self.last_shift_s = time_s;
        }
        done * done * (3.0 - 2.0 * done)
    }

    fn stand(&mut self, time_s: f64, output_rpm: f64) {
        let standing = output_rpm < 1.0;
        if standing && !self.standing {
            (self.gear, self.shift) = (0, None);
            self.neutral = self.random.chance(0.15);
        }
        if !standing && self.standing {
            let (from, slow) = (time_s as usize, 8.0);
            let ahead = self.trace.iter().skip(from + 1).take_while(|&&mph| mph > 0.0);
            self.neutral = false;
            self.reverse = ahead.fold(0.0_f64, |most, &mph| most.max(mph)) < slow && self.random.chance(0.7);
        }
        self.standing = standing;
    }
}

impl Iterator for Drive<'_> {
    type Item = Truth;

    fn next(&mut self) -> Option<Truth> {
        let time_s = self.step as f64 * STEP_S;
        if time_s >= (self.trace.len() - 1) as f64 {
            return None;
        }
        self.step += 1;
        let (mph, mph_per_s) = self.road(time_s);
        let km_h = mph * KM_H_PER_MPH;
        let output_rpm = km_h * OUTPUT_RPM_PER_KM_H;
        let (speed_m_s, rate_m_s2) = (km_h / 3.6, mph_per_s * KM_H_PER_MPH / 3.6);
        let pull_n = 2800.0 * rate_m_s2 + 220.0 * f64::from(u8::from(speed_m_s > 0.0)) + 0.6 * speed_m_s * speed_m_s;
        let output_nm = pull_n / 3.6 / (OUTPUT_RPM_PER_KM_H * std::f64::consts::TAU / 60.0);
        let coasting = output_nm < -15.0;

        self.stand(time_s, output_rpm);
        if !self.standing && !self.reverse {
            self.choose_gear(time_s, output_rpm, coasting);
        }
        let (shift, done) = (self.shift, self.shifted(time_s));
        let from = shift.map_or(self.gear, |shift| shift.from);
        let geared = RATIOS[from] + (RATIOS[self.gear] - RATIOS[from]) * done;
        let ratio = if self.reverse { -REVERSE } else { geared };
        let geared_rpm = ratio * output_rpm;
        let input_nm = (output_nm / ratio / 0.96).clamp(-80.0, 420.0);
        self.load += (input_nm.max(0.0) / 400.0 - self.load) * STEP_S / 0.6;

        // The one-way clutch of first and second lets the output run ahead: the input falls towards idle.
        let overruns = self.gear < 2 && !self.reverse && coasting && shift.is_none();
        let idle_rpm = IDLE_RPM - 30.0 + 6.0 * libm::sin(1.7 * time_s) + 3.0 * libm::sin(7.1 * time_s);
        let wanted_rpm = if overruns { geared_rpm.min(idle_rpm) } else { geared_rpm };
        let behind_rpm = (self.overrun_rpm + (geared_rpm - wanted_rpm - self.overrun_rpm) * STEP_S / 0.15).max(0.0);
        self.overrun_rpm = if behind_rpm < 0.05 && !overruns { 0.0 } else { behind_rpm.min(geared_rpm) };
        let mut input_rpm = geared_rpm - self.overrun_rpm;

        let locked = self.gear >= 3 && shift.is_none() && time_s - self.last_shift_s > 2.0;
        self.lockup = locked && input_rpm > if self.lockup { 1000.0 } else { 1150.0 };
        let slip_rpm = match () {
            () if self.lockup => 20.0,
            () if coasting => (-0.04 * input_rpm).max(IDLE_RPM - input_rpm),
            () => (50.0 + 1100.0 * self.load * (1.0 - input_rpm / 4000.0)).max(IDLE_RPM - input_rpm),
        };
        self.engine_slip_rpm += (slip_rpm - self.engine_slip_rpm) * STEP_S / 0.2;
        let engine_rpm = (input_rpm + self.engine_slip_rpm).max(IDLE_RPM * 0.9);
        if self.neutral {
            input_rpm = engine_rpm * 0.96;
        }
        self.temp_c += (88.0 + 12.0 * self.load - self.temp_c) * STEP_S / 420.0;
        let exact = !self.standing && shift.is_none() && self.overrun_rpm <= 0.0;
        let commanded = match () {
            () if self.neutral => 0,
            () if self.reverse => -1,
            () => self.gear as i8 + 1,
        };
        Some(Truth {
            time_s,
            input_rpm,
            output_rpm,
            engine_rpm,
            engine_torque_nm: input_nm,
            pressure_kpa: 450.0 + 1100.0 * self.load,
            temp_c: self.temp_c,
            commanded,
            in_gear: exact.then_some(if self.reverse { RATIOS.len() } else { self.gear } as u8),
            lockup: self.lockup,
        })
    }
}
