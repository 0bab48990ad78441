//! The clutch chapter against its sources, the demonstration family, its properties and wrong inputs.

#[path = "../support/mod.rs"]
mod support;

mod corrib;
mod random;
mod vectors;

use approx::assert_relative_eq;
use proptest::prelude::*;
use std::f64::consts::PI;
use support::trains::train;
use support::{Row, vectors};
use trainwright::Error;
use trainwright::clutch::{
    Annulus, Applied, Band, Duty, ElementPack, Head, HeldInput, LiningByRadius, Pack, ReturnSprings, Servo, Slip,
    SlipEnd, Steel, SteelPlates, Working, bulk_rise_k, disc_faces, governing, plate_faces, referred_inertia_kg_m2,
    review, surface_drop_mm,
};
use trainwright::judge::{Limits, Reading, Rule, Verdict, settle};
use trainwright::train::{Blocks, Element, PlanetarySet, SetJoins, SetKind, SetTeeth, State, Train};

#[test]
fn governing_element_of_every_gear() {
    for (at, variant) in ["teal", "wren", "heron"].into_iter().enumerate() {
        let packs = corrib::packs(variant);
        for (gear, closed, governs) in corrib::GEARS {
            let state = corrib::solve(variant, closed);
            let answer = review(&state, &packs, corrib::duty(variant, gear)).unwrap();
            assert_eq!(corrib::ELEMENTS[usize::from(answer.weakest().element)], governs[at], "{variant} {gear}");
            assert_eq!(answer.elements().len(), closed.iter().filter(|&&id| id != "F1").count());
            for row in answer.elements() {
                assert!(row.margin >= answer.weakest().margin);
                let turbine = corrib::duty(variant, gear).turbine_torque_nm.value;
                assert_eq!(row.need_nm, row.share * turbine);
            }
        }
    }
}

/// J3: two trucks, gauge 1470 kPa on a gauge of 2500 kPa of class 1.6.
#[test]
fn gauge_pressure_against_the_governing_gear() {
    let packs = corrib::packs("teal");
    for (engine_nm, margin, chance, verdict, friction, strong_kpa, weak_kpa) in [
        (660.0, 1.0480588075453565, 0.7061541554683566, Verdict::NotProven, 0.107, 1408.4, 1385.6),
        (840.0, 0.823474777357066, 0.005628182635219192, Verdict::NoGo, 0.136, 1757.9, 1735.1),
    ] {
        let forward = &corrib::GEARS[..10];
        let reviews: Vec<_> = forward
            .iter()
            .map(|&(gear, closed, _)| {
                let duty = Duty {
                    pressure_kpa: Reading::of_class(1470.0, 2500.0, 1.6).unwrap(),
                    turbine_torque_nm: Reading { value: engine_nm, u: 0.0 },
                    ..corrib::duty("teal", gear)
                };
                review(&corrib::solve("teal", closed), &packs, duty).unwrap().weakest()
            })
            .collect();
        let margins: Vec<f64> = reviews.iter().map(|row| row.margin).collect();
        let position = governing(&margins).unwrap() as usize;
        let weakest = reviews[position];
        assert_eq!((forward[position].0, corrib::ELEMENTS[usize::from(weakest.element)]), ("3", "C1"));
        assert_relative_eq!(weakest.margin, margin, max_relative = 1e-5);
        assert_relative_eq!(weakest.chance, chance, max_relative = 1e-5);
        assert_eq!(weakest.verdict, verdict);
        assert!((weakest.friction_needed - friction).abs() < 0.0005);
        assert!((weakest.pressure_needed.strong_spring_kpa - strong_kpa).abs() < 0.05);
        assert!((weakest.pressure_needed.weak_spring_kpa - weak_kpa).abs() < 0.05);
    }
}

/// The head of C3 counts once the input turns; the balanced clutches and the brakes never feel it.
#[test]
fn only_the_drum_without_a_dam_gains_from_speed() {
    let (packs, state) = (corrib::packs("teal"), corrib::solve("teal", ["B1", "C1", "C3"]));
    let at = |turbine_speed_rpm| {
        review(&state, &packs, Duty { turbine_speed_rpm, ..corrib::duty("teal", "4") }).unwrap().elements().to_vec()
    };
    for (still, turning) in at(0.0).iter().zip(at(3000.0)) {
        if corrib::ELEMENTS[usize::from(still.element)] == "C3" {
            let head_n = (turning.capacity_nm - still.capacity_nm) / (0.112 * 6.0 * 77.350_649_350_649_35e-3);
            assert_relative_eq!(head_n, 688.1721440562852, max_relative = 1e-6);
        } else {
            assert_eq!(still.capacity_nm, turning.capacity_nm);
        }
    }
}

#[test]
fn a_review_refuses_what_it_cannot_answer() {
    let (packs, duty) = (corrib::packs("teal"), corrib::duty("teal", "3"));
    let third = corrib::solve("teal", ["B1", "C1", "C2"]);
    let tied_up = corrib::solve("teal", ["B1", "B2", "C2"]);
    assert!(review(&third, &packs, duty).is_ok());
    assert!(matches!(review(&third, &[], duty), Err(Error::Missing { name: "packs", .. })));
    assert!(matches!(review(&third, &packs[1..2], duty), Err(Error::Missing { name: "packs", .. })));
    assert!(review(&tied_up, &packs, duty).is_ok(), "gear 1B");
    let neutral = corrib::solve("teal", ["C1", "C1", "C1"].map(|_| "C1"));
    assert!(matches!(review(&neutral, &packs, duty), Err(Error::NoAnswer { name: "state", .. })));
    let nowhere = [ElementPack { turns_with: 200, ..packs[0] }];
    assert!(matches!(review(&third, &nowhere, duty), Err(Error::Missing { name: "turns_with", .. })));
    let crowd = vec![packs[0]; 17];
    assert!(matches!(review(&third, &crowd, duty), Err(Error::Count { name: "packs", .. })));
    for bad in [f64::NAN, f64::INFINITY, 0.0, -1.0] {
        let torque = Duty { turbine_torque_nm: Reading { value: bad, u: 0.0 }, ..duty };
        assert!(review(&third, &packs, torque).is_err(), "{bad}");
    }
    for bad in [f64::NAN, f64::INFINITY, -1.0] {
        assert!(review(&third, &packs, Duty { geometry_u_rel: bad, ..duty }).is_err());
        assert!(review(&third, &packs, Duty { oil_density_kg_m3: bad, ..duty }).is_err());
        assert!(review(&third, &packs, Duty { pressure_kpa: Reading { value: bad, u: 0.0 }, ..duty }).is_err());
        assert!(review(&third, &packs, Duty { friction: Reading { value: 0.1, u: bad }, ..duty }).is_err());
        let torque = Duty { turbine_torque_nm: Reading { value: 600.0, u: bad }, ..duty };
        assert!(review(&third, &packs, torque).is_err());
    }
    assert!(review(&third, &packs, Duty { turbine_speed_rpm: f64::NAN, ..duty }).is_err());
}

#[test]
fn friction_is_the_measurement_that_would_settle_j3() {
    let working = Working {
        pressure_kpa: Reading::of_class(1470.0, 2500.0, 1.6).unwrap(),
        friction: Reading { value: 0.112, u: 0.009 },
        geometry_u_rel: 0.02,
        drum_speed_rpm: 0.0,
        oil_density_kg_m3: 790.0,
    };
    let rule = Rule::stated_chances(0.95, 0.05).unwrap();
    let need = Reading::exact(783.5744680851095).unwrap();
    let hold = corrib::pack("C1", "teal").pack.hold(need, working, rule).unwrap();
    let next = settle(&hold.judgment, &hold.budget).unwrap();
    assert_eq!((next.input, next.enough), (1, true));
    let measured = Working { friction: Reading { value: 0.112, u: next.u_needed * 0.999 }, ..working };
    let settled = corrib::pack("C1", "teal").pack.hold(need, measured, rule).unwrap();
    assert_eq!(settled.judgment.verdict, Verdict::Go);
}

#[test]
fn governing_refuses_an_empty_list() {
    assert!(matches!(governing(&[]), Err(Error::Count { name: "margins", .. })));
}

#[test]
fn every_card_is_found_by_its_id() {
    for card in trainwright::clutch::CARDS {
        assert_eq!(trainwright::card::find(card.id), Some(card));
    }
}
