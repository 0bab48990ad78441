//! A truck and rows for the tests of screening.

use trainwright::clutch::CapacityLine;
use trainwright::duty::screen::*;

pub const LIMITS: ScreenLimits = ScreenLimits {
    ratio_tolerance: 0.03,
    locked_slip_rpm: 50.0,
    gap_s: 10.0,
    standing_rpm: 30.0,
    torque_floor_nm: 20.0,
    hot_c: 120.0,
    least_margin: 1.2,
    gps_floor_km_h: 30.0,
};

/// Eight forward gears and reverse of the invented family, three packs in each.
pub fn unit() -> ScreenUnit {
    let mut unit = ScreenUnit::new(560.0, 2350.0, LIMITS);
    let ratios = [4.252, 3.204, 2.295, 1.757, 1.383, 1.0, 0.860, 0.752, -2.967];
    for (place, ratio) in ratios.into_iter().enumerate() {
        let mut gear = ScreenGear::NONE;
        gear.number = if ratio > 0.0 { place as i8 + 1 } else { -1 };
        gear.ratio = ratio;
        gear.efficiency = 0.95 + 0.005 * place as f64;
        for (k, holding) in gear.holding.iter_mut().take(3).enumerate() {
            let drum = k as f64 * 0.5;
            *holding = ScreenHolding {
                element: ((place + 2 * k) % 5) as u8,
                share: 0.4 + 0.3 * k as f64 + 0.05 * place as f64,
                turns: drum,
                line: CapacityLine {
                    piston_area_mm2: 9000.0 + 500.0 * k as f64,
                    head_n_per_rpm2: if k == 0 { 0.0 } else { 2e-5 },
                    held_back_n: 1200.0,
                    arm_mm: 900.0,
                },
                friction: 0.11,
            };
        }
        gear.holding_count = 3;
        for set in 0..4 {
            gear.contacts_per_turn[set] = 2.0 + set as f64 * 0.5;
            gear.sun_share[set] = 0.3 * set as f64 + 0.1;
        }
        unit.add_gear(gear).unwrap();
    }
    unit.damage.slope = 6.5;
    unit.damage.reference_contacts = 1e6;
    unit.damage.reference_nm[..4].copy_from_slice(&[1000.0, 1200.0, 1400.0, 1600.0]);
    unit.fluid = ScreenFluid { life_h: 2000.0, reference_c: 79.4, halving_k: 11.1 };
    unit.converter = ScreenConverter::of_points(
        &[0.0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.87, 0.93, 0.97],
        &[1.92, 1.72, 1.51, 1.28, 1.17, 1.06, 1.0, 1.0, 1.0],
    )
    .unwrap();
    unit.output_rpm_per_km_h = 25.0;
    unit
}

/// A small generator of pseudo-random numbers, the same on every machine.
pub struct Random(pub u64);

impl Random {
    pub fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    pub fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, n: u64) -> u64 {
        self.next() % n
    }
}

/// A drive of so many rows; `bad` is the share of rows in which something is wrong.
pub fn drive(count: usize, seed: u64, bad: f64) -> Vec<ScreenRow> {
    let mut random = Random(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1);
    let ratios = [4.252, 3.204, 2.295, 1.757, 1.383, 1.0, 0.860, 0.752, 2.967];
    let (mut time, mut place, mut left) = (1.7e9, 5, 0);
    let mut rows: Vec<ScreenRow> = Vec::with_capacity(count);
    for _ in 0..count {
        if left == 0 {
            place = random.below(11) as usize;
            left = random.below(30) + 1;
        }
        left -= 1;
        time += 1.0;
        let speed = 10.0 + 90.0 * random.unit();
        let output = if place == 10 { 0.0 } else { speed * 25.0 };
        let input = match place {
            0..=8 => output * ratios[place] * (1.0 + 0.01 * (random.unit() - 0.5)),
            9 => output * 1.9,
            _ => 700.0 * random.unit(),
        };
        let slips = random.unit() < 0.2;
        let engine = if slips { input * (1.0 + random.unit()) + 60.0 } else { input + 20.0 * random.unit() };
        let mut row = ScreenRow {
            time_s: time,
            engine_rpm: engine.min(9000.0),
            input_rpm: input,
            output_rpm: output,
            engine_torque_nm: 900.0 * random.unit() - 150.0,
            pressure_kpa: 300.0 + 1200.0 * random.unit(),
            temp_c: 60.0 + 70.0 * random.unit(),
            speed_km_h: output / 25.0,
            gps_km_h: output / 25.0 * (1.0 + 0.01 * random.unit()),
            gear: match place {
                0..=7 => place as f64 + 1.0,
                8 => -1.0,
                _ => 0.0,
            },
        };
        if random.unit() < bad {
            spoil(&mut row, rows.last(), &mut random, &mut time);
        }
        rows.push(row);
    }
    rows
}

fn spoil(row: &mut ScreenRow, last: Option<&ScreenRow>, random: &mut Random, time: &mut f64) {
    let mut values = row.values();
    let column = random.below(10) as usize;
    match random.below(12) {
        0 => values[column] = f64::NAN,
        1 => values[column] = f64::INFINITY,
        2 => values[column] = -5.5,
        3 => values[column] = BadValue::NotAvailable.in_a_column(),
        4 => values[column] = BadValue::SensorError.in_a_column(),
        5 => values[column] = BadValue::Reserved.in_a_column(),
        6 => values[column] = 1e30,
        7 => {
            *time += 1000.0 * random.unit();
            values[0] = *time;
        }
        8 => values[0] -= 1.0,
        9 => values[0] -= 3.5,
        10 => values[4] = 8000.0,
        _ => {
            if let Some(last) = last {
                let time = values[0];
                values = last.values();
                values[0] = time;
            }
        }
    }
    *row = ScreenRow::of_values(values);
}
