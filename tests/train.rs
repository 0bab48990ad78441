//! The train chapter against its sources.

mod support;

use support::vectors;
use trainwright::Result;
use trainwright::train::{
    Blocks, Element, ElementKind, Fraction, Load, NO_MEMBER, PlanetarySet, SetJoins, SetKind, SetTeeth, State, Train,
};

/// Reads the train column of a vector file: see the top of `train_solve.csv`.
fn train(text: &str) -> Result<Train> {
    let mut parts = text.split(" / ").map(|part| part.split_whitespace().collect::<Vec<_>>());
    let numbers: Vec<u8> = parts.next().unwrap().iter().map(|cell| cell.parse().unwrap()).collect();
    let mut train = Train::new(numbers[0], numbers[1], numbers[2], numbers[3])?;
    let teeth = |cell: &str| if cell == "-" { 0 } else { cell.parse().unwrap() };
    let member = |cell: &str| if cell == "-" { NO_MEMBER } else { cell.parse().unwrap() };
    for part in parts {
        if let [kind, sun, sun_2, planet, planet_2, ring, "@", sun_at, sun_2_at, ring_at, carrier_at] = part[..] {
            train.add_set(PlanetarySet {
                kind: match kind {
                    "simple" => SetKind::Simple,
                    "double_pinion" => SetKind::DoublePinion,
                    "two_sun" => SetKind::TwoSun,
                    _ => SetKind::Stepped,
                },
                planets: 0,
                teeth: SetTeeth {
                    sun: teeth(sun),
                    sun_2: teeth(sun_2),
                    planet: teeth(planet),
                    planet_2: teeth(planet_2),
                    ring: teeth(ring),
                },
                joins: SetJoins {
                    sun: member(sun_at),
                    sun_2: member(sun_2_at),
                    ring: member(ring_at),
                    carrier: member(carrier_at),
                },
            })?;
        } else {
            train.add_element(Element {
                kind: match part[0] {
                    "clutch" => ElementKind::Clutch,
                    "brake" => ElementKind::Brake,
                    "one_way" => ElementKind::OneWay,
                    _ => ElementKind::Dog,
                },
                first: member(part[1]),
                second: member(part[2]),
                blocks: match part.get(3) {
                    Some(&"reverse") => Blocks::Reverse,
                    Some(&"forward") => Blocks::Forward,
                    _ => Blocks::Neither,
                },
            })?;
        }
    }
    Ok(train)
}

fn number(fraction: Fraction) -> f64 {
    fraction.value().unwrap_or(f64::INFINITY)
}

/// The output columns of `train_solve.csv` and `train_resolve.csv`.
fn outputs(state: &State) -> [f64; 37] {
    let head = [state.kind as u8, state.mobility, state.redundant].map(f64::from);
    let ratio = [state.ratio.num as f64, state.ratio.den as f64];
    let torques = [state.output_torque, state.case_torque].map(number);
    let mut all = head.into_iter().chain(ratio).chain(torques);
    let shares = state.shares[..8].iter().chain(&state.slips[..8]).chain(&state.speeds[..14]).copied().map(number);
    let mut all = all.by_ref().chain(shares);
    std::array::from_fn(|_| all.next().unwrap())
}

#[test]
fn solve_vectors() {
    vectors("train_solve", |row| {
        let state = train(row.text("train"))?.solve(row.count("closed"))?;
        let published = row.text("published");
        if !published.is_empty() {
            let digits = published.split('.').nth(1).map_or(0, str::len);
            let printed: f64 = published.parse().unwrap();
            let rounding = 0.5 * 10_f64.powi(-(digits as i32)) + 1e-12;
            assert!((number(state.ratio) - printed).abs() <= rounding, "{published}: {:?}", state.ratio);
        }
        Ok(outputs(&state))
    });
}

#[test]
fn resolve_vectors() {
    vectors("train_resolve", |row| {
        let load = match row.text("load") {
            "drive" => Load::Drive,
            "coast" => Load::Coast,
            _ => Load::None,
        };
        let state = train(row.text("train"))?.resolve(row.count("closed"), load)?;
        let mut all = [f64::from(state.closed)].into_iter().chain(outputs(&state));
        Ok::<[f64; 38], _>(std::array::from_fn(|_| all.next().unwrap()))
    });
}

#[test]
fn planet_speeds_vectors() {
    vectors("train_planet_speeds", |row| {
        let train = train(row.text("train"))?;
        let speeds = train.planet_speeds(&train.solve(row.count("closed"))?, row.count("set") as u8)?;
        Ok([speeds.planet_on_pin, speeds.planet, speeds.planet_2_on_pin, speeds.planet_2].map(number))
    });
}
