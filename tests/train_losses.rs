//! Mesh losses against published torque ratios and the properties of a passive gear.

use proptest::prelude::*;
use std::fs;
use trainwright::record::{Family, NamedTrain, Record, TrainFile};
use trainwright::train::*;

fn demo(file: &str) -> String {
    let path = format!("{}/python/trainwright/demo/{file}", env!("CARGO_MANIFEST_DIR"));
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"))
}

fn published(file: &str) -> NamedTrain {
    TrainFile::from_toml(file, &demo(&format!("trains/{file}.toml"))).unwrap().train.named(None).unwrap()
}

fn gear(named: &NamedTrain, id: &str) -> State {
    let gear = named.gear(id).unwrap();
    named.train.solve(gear.closed | gear.one_way).unwrap()
}

fn drive(named: &NamedTrain, id: &str, sun_to_ring: f64) -> Losses {
    let losses = named.train.losses(&gear(named, id), MeshEfficiency::of_simple_set(sun_to_ring).unwrap(), Load::Drive);
    let losses = losses.unwrap();
    assert!(losses.converged && !losses.self_locking, "gear {id}: {losses:?}");
    losses
}

/// Printed torque ratios and efficiencies of a four-set eight-speed (encyclopedia table, read), for 0.98 and 0.97 from sun
/// to ring of each set (inferred from first gear: 1 + (85/23) · 0.98). Third and fifth gear are not among them: third is
/// printed 2.0820 and 2.0709, and no choice of the directions of power gives that pair; fifth is off by one in the last
/// digit (1.2720 printed, 1.27193 computed).
#[test]
fn four_set_eight_speed_prints_these_torque_ratios() {
    let train = published("four_set_eight_speed");
    for (id, torque_ratios, efficiencies) in [
        ("1", [4.6217, 4.5848], [0.9843, 0.9764]),
        ("2", [3.0603, 3.0253], [0.9776, 0.9664]),
        ("4", [1.6446, 1.6336], [0.9867, 0.9802]),
        ("7", [0.8347, 0.8324], [0.9947, 0.9920]),
        ("8", [0.6622, 0.6599], [0.9932, 0.9898]),
        ("R", [-3.1186, -3.0313], [0.9460, 0.9195]),
    ] {
        for ((sun_to_ring, torque_ratio), efficiency) in [0.98, 0.97].into_iter().zip(torque_ratios).zip(efficiencies) {
            let losses = drive(&train, id, sun_to_ring);
            assert!((losses.torque_ratio - torque_ratio).abs() <= 5.1e-5, "{id}: {losses:?}, printed {torque_ratio}");
            assert!((losses.efficiency - efficiency).abs() <= 5.1e-5, "{id}: {losses:?}, printed {efficiency}");
        }
    }
    for (id, computed) in [("3", [2.0785, 2.0659]), ("5", [1.2719, 1.2657])] {
        for (sun_to_ring, computed) in [0.98, 0.97].into_iter().zip(computed) {
            let losses = drive(&train, id, sun_to_ring);
            assert!(
                (losses.torque_ratio - computed).abs() <= 5.1e-5,
                "{id}: {losses:?}, an independent script: {computed}"
            );
        }
    }
}

/// Printed torque ratios of the double-pinion eight-speed (encyclopedia table, read). Its torque and efficiency columns do
/// not belong to the tooth counts of its ratio column: torque over efficiency is the ratio of a two-sun set 38/30/78, not
/// 34/30/74, in all nine gears. With those teeth and √0.98 (√0.97) in each mesh, the gears whose rear power passes the large
/// sun and the ring, and third, come out as printed; so a double-pinion set loses as three meshes, 0.98^1.5.
/// First and fifth are printed with 0.98² from the small sun to the ring, where three meshes give 0.98^1.5; second and
/// fourth moreover with the large sun's path counted as if its power ran with the small sun's.
#[test]
fn double_pinion_eight_speed_prints_these_torque_ratios() {
    let named = published("double_pinion_front_eight_speed");
    let mut train =
        Train::new(named.train.members(), named.train.input(), named.train.output(), named.train.fixed()).unwrap();
    for &set in named.train.sets() {
        let teeth = if set.kind == SetKind::TwoSun { SetTeeth { sun: 38, ring: 78, ..set.teeth } } else { set.teeth };
        train.add_set(PlanetarySet { teeth, ..set }).unwrap();
    }
    for &element in named.train.elements() {
        train.add_element(element).unwrap();
    }
    let sister = NamedTrain { train, ..named };
    for (id, torque_ratios, efficiencies) in [
        ("3", [1.8168, 1.7944], [0.9749, 0.9629]),
        ("7", [0.8081, 0.8041], [0.9905, 0.9856]),
        ("8", [0.6679, 0.6657], [0.9934, 0.9900]),
        ("R1", [-3.6546, -3.5728], [0.9554, 0.9340]),
        ("R2", [-2.0116, -1.9911], [0.9800, 0.9700]),
    ] {
        for ((sun_to_ring, torque_ratio), efficiency) in [0.98, 0.97].into_iter().zip(torque_ratios).zip(efficiencies) {
            let losses = drive(&sister, id, sun_to_ring);
            assert!((losses.torque_ratio - torque_ratio).abs() <= 5.1e-5, "{id}: {losses:?}, printed {torque_ratio}");
            assert!((losses.efficiency - efficiency).abs() <= 5.1e-5, "{id}: {losses:?}, printed {efficiency}");
        }
    }
    for (id, printed, computed) in
        [("1", 4.5366, 4.5827), ("2", 2.7199, 2.7229), ("4", 1.4079, 1.4084), ("5", 1.1991, 1.2016)]
    {
        let losses = drive(&sister, id, 0.98);
        assert!(
            (losses.torque_ratio - computed).abs() <= 5.1e-5,
            "{id}: {losses:?}, an independent script: {computed}"
        );
        assert!(losses.torque_ratio > printed, "{id}: the print counts one mesh more");
    }
}

/// Rolling power of the four-set eight-speed in reverse: 1.19 of the input power with 0.98 from sun to ring (independent
/// script), without losses 2/3 · (1.5 + 0.3033) = 1.2022 in the third set (published member speeds).
#[test]
fn reverse_of_the_four_set_eight_speed_circulates_power() {
    let train = published("four_set_eight_speed");
    let lossy = drive(&train, "R", 0.98).rolling_power;
    assert!(lossy.iter().any(|rolling| (rolling - 1.19).abs() < 0.005), "{lossy:?}");
    let flow = train.train.power_flow(&gear(&train, "R")).unwrap();
    let rolling = flow.rolling_power.iter().copied().fold(0.0, f64::max);
    assert!((rolling - 1.2022).abs() < 5e-5, "{flow:?}");
    assert!((flow.largest - 1.5275).abs() < 5e-5);
    let direct = train.train.power_flow(&gear(&train, "6")).unwrap();
    assert!(direct.rolling_power.iter().all(|power| power.abs() < 1e-12), "nothing rolls in direct drive");
}

/// A stepped set whose two suns turn almost alike: basic ratio 51·49/50² = 0.9996 (independent script).
#[test]
fn near_the_singular_basic_ratio_one_side_cannot_drive() {
    let (case, input, output, held) = (0, 1, 2, 3);
    let train = |carrier, sun| {
        let mut train = Train::new(4, input, output, case).unwrap();
        let teeth = SetTeeth { sun: 50, planet: 51, planet_2: 50, sun_2: 49, ring: 0 };
        let joins = SetJoins { sun, sun_2: held, carrier, ..SetJoins::NONE };
        train.add_set(PlanetarySet { kind: SetKind::Stepped, planets: 3, teeth, joins }).unwrap();
        train.add_element(Element::brake(held, case)).unwrap();
        train
    };
    let mesh = MeshEfficiency::of_simple_set(0.98).unwrap();
    let carrier_drives = train(input, output);
    let state = carrier_drives.solve(1).unwrap();
    assert_eq!(state.ratio, Fraction { num: 2500, den: 1 });
    let losses = carrier_drives.losses(&state, mesh, Load::Drive).unwrap();
    assert!((losses.efficiency - 0.01962).abs() < 5e-6, "{losses:?}");
    assert!(losses.converged && !losses.self_locking);

    let sun_drives = train(output, input);
    let state = sun_drives.solve(1).unwrap();
    let losses = sun_drives.losses(&state, mesh, Load::Drive).unwrap();
    assert!(losses.self_locking && losses.efficiency.abs() < 1e-15, "{losses:?}");
    let coasting = sun_drives.losses(&state, mesh, Load::Coast).unwrap();
    assert!((coasting.efficiency - 0.01962).abs() < 5e-6, "{coasting:?}");
}

/// Every gear of the demonstration family and of the published trains.
fn all_gears() -> Vec<(String, Train, State)> {
    let family = Family::from_toml("family.toml", &demo("family.toml")).unwrap();
    let mut trains: Vec<(String, NamedTrain)> =
        ["teal", "heron"].map(|variant| (variant.to_string(), family.train(variant).unwrap())).into();
    let folder = format!("{}/python/trainwright/demo/trains", env!("CARGO_MANIFEST_DIR"));
    for entry in fs::read_dir(folder).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap().replace(".toml", "");
        trains.push((name.clone(), published(&name)));
    }
    let mut gears = Vec::new();
    for (name, named) in trains {
        for gear in &named.gears {
            let state = named.train.solve(gear.closed | gear.one_way).unwrap();
            if state.kind == StateKind::Gear {
                gears.push((format!("{name} {}", gear.id), named.train, state));
            }
        }
    }
    assert!(gears.len() > 120, "{}", gears.len());
    gears
}

#[test]
fn a_lossless_mesh_gives_the_exact_ratio_and_power_balances() {
    for (name, train, state) in all_gears() {
        let ratio = state.ratio.value().unwrap();
        for load in [Load::Drive, Load::Coast] {
            let perfect = train.losses(&state, MeshEfficiency { external: 1.0, internal: 1.0 }, load);
            let perfect = match perfect {
                Ok(perfect) => perfect,
                Err(error) => {
                    assert_eq!(error.kind(), "NO_ANSWER", "{name}");
                    assert!(state.redundant > 0, "{name}: {error}");
                    println!("{name}: {error}");
                    continue;
                }
            };
            assert!((perfect.torque_ratio - ratio).abs() <= 1e-11 * ratio.abs(), "{name}: {perfect:?}");
            assert!((perfect.efficiency - 1.0).abs() <= 1e-11, "{name}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn power_in_is_power_out_and_loss(external in 0.96..1.0, internal in 0.96..1.0) {
        for (name, train, state) in all_gears() {
            for load in [Load::Drive, Load::Coast] {
                let Ok(losses) = train.losses(&state, MeshEfficiency { external, internal }, load) else { continue };
                prop_assert!(losses.converged, "{}", name);
                prop_assert!(losses.efficiency <= 1.0 + 1e-12, "{name}: {losses:?}");
                prop_assert!(losses.set_loss.iter().all(|&loss| loss >= -1e-12), "{name}: {losses:?}");
                if !losses.self_locking {
                    let sum = losses.efficiency + losses.set_loss.iter().sum::<f64>();
                    prop_assert!((sum - 1.0).abs() < 1e-10, "{name}: {losses:?}");
                }
            }
        }
    }
}

#[test]
fn wrong_inputs_are_refused() {
    let named = published("four_set_eight_speed");
    let (train, first) = (named.train, gear(&named, "1"));
    let kind = |external, internal, load| {
        train.losses(&first, MeshEfficiency { external, internal }, load).map(|_| ()).map_err(|error| error.kind())
    };
    assert_eq!(kind(f64::NAN, 0.99, Load::Drive), Err("NOT_FINITE"));
    assert_eq!(kind(0.99, 1.01, Load::Drive), Err("OUT_OF_RANGE"));
    assert_eq!(kind(0.0, 0.99, Load::Drive), Err("NOT_POSITIVE"));
    assert_eq!(kind(0.99, 0.99, Load::None), Err("INCONSISTENT"));
    let neutral = train.solve(0).unwrap();
    let mesh = MeshEfficiency { external: 0.99, internal: 0.99 };
    assert_eq!(train.losses(&neutral, mesh, Load::Drive).map_err(|e| e.kind()), Err("NO_ANSWER"));
    assert_eq!(train.power_flow(&neutral).map_err(|e| e.kind()), Err("NO_ANSWER"));
    assert_eq!(MeshEfficiency::of_simple_set(-0.1).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
}
/// Three sets that pass power round in a ring: with meshes as bad as 0.65 and 0.60 no direction of power balances. A search
/// over random trains found it; real gears settle within two rounds.
#[test]
fn a_gear_that_jams_is_reported() {
    let mut train = Train::new(7, 1, 2, 0).unwrap();
    let (held, link, carrier) = (4, 3, 5);
    let teeth = |sun, ring| SetTeeth { sun, ring, ..SetTeeth::NONE };
    let stepped = SetTeeth { sun: 45, sun_2: 46, planet: 15, planet_2: 27, ring: 0 };
    for (kind, teeth, sun, sun_2, ring, carrier) in [
        (SetKind::DoublePinion, teeth(61, 69), 1, NO_MEMBER, link, carrier),
        (SetKind::DoublePinion, teeth(62, 94), held, NO_MEMBER, 2, link),
        (SetKind::Stepped, stepped, 0, 2, NO_MEMBER, carrier),
    ] {
        train.add_set(PlanetarySet { kind, planets: 0, teeth, joins: SetJoins { sun, sun_2, ring, carrier } }).unwrap();
    }
    train.add_element(Element::brake(held, 0)).unwrap();
    let state = train.solve(1).unwrap();
    assert_eq!(state.ratio, Fraction { num: 119_393, den: 34_160 });
    let bad = train.losses(&state, MeshEfficiency { external: 0.65, internal: 0.6 }, Load::Drive).unwrap();
    assert!(!bad.converged && bad.efficiency.abs() < 1e-15, "{bad:?}");
    let good = train.losses(&state, MeshEfficiency { external: 0.99, internal: 0.99 }, Load::Drive).unwrap();
    assert!(good.converged && good.efficiency > 0.9, "{good:?}");
}

/// A random train with every free member held or not; some of them are gears.
fn any_train() -> impl Strategy<Value = Train> {
    let set = (0..4, 15_u16..65, 15_u16..65, 66_u16..106, 15_u16..45, 15_u16..45, prop::array::uniform4(0_u8..8));
    (prop::collection::vec(set, 1..4), any::<[bool; 8]>()).prop_map(|(sets, held)| {
        let mut train = Train::new(8, 1, 2, 0).unwrap();
        for (kind, sun, sun_2, ring, planet, planet_2, [a, b, c, d]) in sets {
            let joins = SetJoins { sun: a, sun_2: NO_MEMBER, ring: c, carrier: d };
            let (kind, teeth, joins) = match kind {
                0 => (SetKind::Simple, SetTeeth { sun, ring, ..SetTeeth::NONE }, joins),
                1 => (SetKind::DoublePinion, SetTeeth { sun, ring, ..SetTeeth::NONE }, joins),
                2 => (SetKind::TwoSun, SetTeeth { sun, sun_2, ring, ..SetTeeth::NONE }, SetJoins { sun_2: b, ..joins }),
                _ => {
                    let teeth = SetTeeth { sun, sun_2, planet, planet_2, ring: 0 };
                    (SetKind::Stepped, teeth, SetJoins { sun_2: b, ring: NO_MEMBER, ..joins })
                }
            };
            let _ = train.add_set(PlanetarySet { kind, planets: 0, teeth, joins });
        }
        for member in (3..8).filter(|&member| held[usize::from(member)]) {
            train.add_element(Element::brake(member, 0)).unwrap();
        }
        train
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]
    #[test]
    fn no_train_gives_more_than_it_gets(train in any_train(), external in 0.5..1.0, internal in 0.5..1.0) {
        let state = train.solve((1 << train.elements().len()) - 1).unwrap();
        if state.kind == StateKind::Gear {
            for load in [Load::Drive, Load::Coast] {
                let Ok(losses) = train.losses(&state, MeshEfficiency { external, internal }, load) else { continue };
                prop_assert!((0.0..=1.0 + 1e-9).contains(&losses.efficiency), "{losses:?}");
                if losses.converged {
                    prop_assert!(losses.set_loss.iter().all(|&loss| loss >= -1e-9), "{losses:?}");
                    let sum = losses.efficiency + losses.set_loss.iter().sum::<f64>();
                    prop_assert!(losses.self_locking || (sum - 1.0).abs() < 1e-8, "{losses:?}");
                }
            }
        }
    }
}
