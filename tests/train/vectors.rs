//! The vectors that the three languages share.

use super::*;

#[test]
fn building_vectors() {
    for name in ["train_new", "train_add_set", "train_add_element"] {
        vectors(name, |row| Ok([built(row.text("train"))?.last.into()]));
    }
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

fn load(row: &support::Row) -> Load {
    match row.text("load") {
        "drive" => Load::Drive,
        "coast" => Load::Coast,
        _ => Load::None,
    }
}

#[test]
fn resolve_vectors() {
    vectors("train_resolve", |row| {
        let state = train(row.text("train"))?.resolve(row.count("closed"), load(row))?;
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

#[test]
fn losses_vectors() {
    vectors("train_losses", |row| {
        let train = train(row.text("train"))?;
        let mesh = MeshEfficiency { external: row.number("external"), internal: row.number("internal") };
        let losses = train.losses(&train.solve(row.count("closed"))?, mesh, load(row))?;
        let flags = [losses.self_locking, losses.converged].map(f64::from);
        Ok([losses.efficiency, losses.torque_ratio, flags[0], flags[1]])
    });
}

#[test]
fn symptom_vectors() {
    vectors("train_symptom", |row| {
        let commanded = Commanded { closed: row.count("closed"), one_way: 0 };
        let failure = if row.count("failure") == 0 { Failure::Dead } else { Failure::Stuck };
        let symptom = train(row.text("train"))?
            .symptom(commanded, ElementFault { element: row.count("element") as u8, failure })?;
        let [drive, coast] = [symptom.drive, symptom.coast].map(|response| f64::from(response as u8));
        Ok([drive, coast, f64::from(symptom.kind as u8), symptom.ratio.num as f64, symptom.ratio.den as f64])
    });
}

#[test]
fn power_flow_vectors() {
    vectors("train_power_flow", |row| {
        let train = train(row.text("train"))?;
        let flow = train.power_flow(&train.solve(row.count("closed"))?)?;
        let [a, b, c, d, ..] = flow.rolling_power;
        Ok([a, b, c, d, flow.largest])
    });
}

/// Masks of the applied elements + of the one-way clutches that hold.
fn gears(row: &support::Row) -> Vec<Commanded> {
    let mask = |text: &str| text.parse().unwrap();
    let commanded = |text: &str| {
        let (closed, one_way) = text.split_once('+').unwrap();
        Commanded { closed: mask(closed), one_way: mask(one_way) }
    };
    row.text("gears").split(' ').map(commanded).collect()
}

#[test]
fn signature_vectors() {
    vectors("train_signature", |row| {
        let failure = if row.count("failure") == 0 { Failure::Dead } else { Failure::Stuck };
        let fault = ElementFault { element: row.count("element") as u8, failure };
        let found = train(row.text("train"))?.signature(&gears(row), fault)?;
        let Signature { no_drive, no_braking, other_ratio, creeps, brakes, tied_up, .. } = found;
        Ok([no_drive, no_braking, other_ratio, creeps, brakes, tied_up, found.lost()].map(f64::from))
    });
}

const RESPONSES: [Response; 5] =
    [Response::AsCommanded, Response::OtherRatio, Response::NoDrive, Response::Drives, Response::TiedUp];

/// The `seen` column: places in the list of gears, and what was seen there.
fn observations(row: &support::Row) -> Vec<(usize, Observation)> {
    let gears = gears(row);
    let seen = |text: &str| {
        let [place, response, value, u] = text.split(':').collect::<Vec<_>>()[..] else { panic!("{text}") };
        let place = place.parse().unwrap();
        let observation = Observation {
            commanded: gears[place],
            load: Load::Drive,
            seen: RESPONSES[response.parse::<usize>().unwrap()],
            ratio: Reading { value: value.parse().unwrap(), u: u.parse().unwrap() },
        };
        (place, observation)
    };
    row.text("seen").split_whitespace().map(seen).collect()
}

#[test]
fn diagnose_vectors() {
    vectors("train_diagnose", |row| {
        let observations: Vec<_> = observations(row).into_iter().map(|(_, seen)| seen).collect();
        let found = train(row.text("train"))?.diagnose(&observations)?;
        let Suspect { fault, rank, matched, missed, contradicted, agreed } = found.ranked()[0];
        let first = [fault.element, fault.failure as u8, rank, matched, missed, contradicted, agreed].map(f64::from);
        let [element, failure, rank, matched, missed, contradicted, agreed] = first;
        Ok([element, failure, rank, matched, missed, contradicted, agreed, f64::from(found.count)])
    });
}

#[test]
fn next_gear_vectors() {
    vectors("train_next_gear", |row| {
        let train = train(row.text("train"))?;
        let (places, observations): (Vec<_>, Vec<_>) = observations(row).into_iter().unzip();
        let diagnosis = train.diagnose(&observations)?;
        let suspects: Vec<_> =
            diagnosis.ranked().iter().filter(|suspect| suspect.rank == 1).map(|suspect| suspect.fault).collect();
        let tried = TriedGears { drive: places.iter().fold(0, |mask, place| mask | 1 << place), coast: 0 };
        let next = train.next_gear(&gears(row), tried, &suspects)?;
        let load = f64::from(next.load as u8);
        Ok([next.gear.into(), load, next.outcomes.into(), next.tie_ups.into(), next.information_bit])
    });
    vectors("train_seen_ratio", |row| {
        let commanded = Commanded { closed: row.count("closed"), one_way: 0 };
        let ratio = Reading { value: row.number("value"), u: row.number("u") };
        let seen = train(row.text("train"))?.seen_ratio(commanded, ratio)?.seen;
        Ok([f64::from(seen as u8)])
    });
}

#[test]
fn measured_ratio_vectors() {
    vectors("train_counted_ratio", |row| {
        let ratio = counted_ratio(PulseCount {
            input_pulses: row.count("input_pulses"),
            output_pulses: row.count("output_pulses"),
            input_teeth: row.count("input_teeth") as u16,
            output_teeth: row.count("output_teeth") as u16,
        })?;
        Ok([ratio.value, ratio.u])
    });
    vectors("train_timed_ratio", |row| {
        let ratio = timed_ratio(TimedEdges {
            input_s: row.number("input_s"),
            output_s: row.number("output_s"),
            tick_us: row.number("tick_us"),
            input_intervals: row.count("input_intervals"),
            output_intervals: row.count("output_intervals"),
            input_teeth: row.count("input_teeth") as u16,
            output_teeth: row.count("output_teeth") as u16,
        })?;
        Ok([ratio.value, ratio.u])
    });
    vectors("train_fit_ratio", |row| {
        let measured = Reading { value: row.number("value"), u: row.number("u") };
        let candidate = Fraction { num: row.number("num") as i64, den: row.number("den") as i64 };
        let fit = fit_ratio(measured, candidate, row.number("coverage"))?;
        Ok([fit.z, fit.chance, f64::from(fit.excluded)])
    });
}
