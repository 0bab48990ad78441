//! Duty: meshes, bus values, cycle counting, damage, life, rank and wheels against sources, properties and wrong inputs.

mod support;

use proptest::prelude::*;
use support::trains::train;
use support::{Row, vectors};
use trainwright::Result;
use trainwright::duty::{BusNetwork, BusRules, BusSignal, bus_signal, mesh_duty};
use trainwright::train::Fraction;

fn open_as_infinite(fraction: Fraction) -> f64 {
    fraction.value().unwrap_or(f64::INFINITY)
}

#[test]
fn meshes() {
    vectors("duty_mesh_duty", |row| {
        let train = train(row.text("train"))?;
        let duty = mesh_duty(&train, &train.solve(row.count("closed"))?, row.count("set") as u8)?;
        let wheels = [duty.sun, duty.sun_2, duty.ring].map(|wheel| [wheel.contacts, wheel.torque]);
        let [[s, t_s], [s_2, t_s_2], [r, t_r]] = wheels;
        Ok([s, t_s, s_2, t_s_2, r, t_r, duty.planet_contacts, duty.planet_2_contacts].map(open_as_infinite))
    });
    let unit = train("4 0 1 2 / simple:3 20 - 7 - 34 @ 0 - 3 1 / brake 3 2").unwrap();
    let no_such_set = mesh_duty(&unit, &unit.solve(1).unwrap(), 1).unwrap_err();
    assert_eq!(no_such_set.to_string(), "set = 1: outside 0 to 0; check the value and its unit"); // Python names sets
}

fn signal(row: &Row) -> Result<BusSignal> {
    match row.count("number") {
        0 => Ok(BusSignal {
            rules: [BusRules::Marked, BusRules::Plain][row.count("rules") as usize],
            bits: row.count("bits") as u8,
            resolution: row.number("resolution"),
            offset: row.number("offset"),
            lower: row.number("lower"),
            upper: row.number("upper"),
        }),
        number => bus_signal([BusNetwork::J1939, BusNetwork::Obd][row.count("network") as usize], number),
    }
}

#[test]
fn bus_values() {
    vectors("duty_decode", |row| {
        let decoded = signal(row)?.decode(row.count("raw"))?;
        Ok([f64::from(decoded.meaning as u8), decoded.value])
    });
    vectors("duty_classify", |row| {
        let found = signal(row)?.classify(row.number("value"))?;
        Ok([f64::from(found.meaning as u8), found.value])
    });
    vectors("duty_step_error", |row| Ok([signal(row)?.step_error(row.number("value"))?]));
    let output_speed = bus_signal(BusNetwork::J1939, 191).unwrap();
    let of_a_ratio = 2.0 * output_speed.step_error(1500.0).unwrap();
    assert!((of_a_ratio - 8.4e-5).abs() < 2e-6); // computed: half a step on each of two signals
}

proptest! {
    #[test]
    fn what_is_decoded_is_classified_the_same(raw in 0_u32..=0xFFFF, resolution in 1e-3_f64..20.0, offset in -300.0_f64..300.0) {
        for rules in [BusRules::Marked, BusRules::Plain] {
            let signal = BusSignal { rules, bits: 16, resolution, offset, lower: -1e3, upper: 1e5 };
            let decoded = signal.decode(raw).unwrap();
            prop_assert_eq!(signal.classify(decoded.value).unwrap(), decoded);
        }
    }
}
