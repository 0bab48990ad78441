//! One-way clutches, park lock, tooth bending and line contact against their sources, their properties and wrong inputs.

#[path = "../support/mod.rs"]
mod support;

mod random;
mod vectors;

use approx::assert_relative_eq;
use proptest::prelude::*;
use std::f64::consts::PI;
use support::trains::train;
use support::{Row, vectors};
use trainwright::Error;
use trainwright::hold::{
    ContactBody, LineContact, LinePressure, OneWayDuty, OneWayHold, OneWayRole, ParkGear, ParkStress, Parked, Pawl,
    Ratchet, SpurTooth, ToothFinish, ToothStrength, Wedge, compare_park_gears, form_factor, grip_nm, locks,
    one_way_duty, park_load, roll_limits_49_cfr_571_114, take_up, velocity_factor,
};
use trainwright::judge::{Judgment, Limits, Reading, Rule, Verdict};
use trainwright::record::{Family, Record};
use trainwright::road::Driveline;
use trainwright::train::{Fraction, Load, StateKind};

#[test]
fn fewer_coarser_involute_teeth_on_the_same_circle_are_stronger() {
    // 20 and 16 teeth of 14 mm width on a pitch circle of 80 mm, with the table's form factors: 4 · 0.322 against 5 · 0.296.
    let tooth = |teeth: u32| SpurTooth { teeth, module_mm: 80.0 / f64::from(teeth), face_mm: 14.0 };
    let [many, few] = [20, 16].map(|teeth| tooth(teeth).tooth_bending(1000.0, 1.0).unwrap());
    assert_relative_eq!(few.bending_mpa / many.bending_mpa, 0.870_27, max_relative = 1e-5);
    assert_relative_eq!(few.shear_mpa / many.shear_mpa, 0.8, max_relative = 1e-12);
}

#[test]
fn every_gear_of_the_demonstration_has_its_one_way_duty() {
    let family = Family::from_toml("family.toml", include_str!("../../python/trainwright/demo/family.toml")).unwrap();
    for variant in ["teal", "wren", "heron"] {
        let unit = family.train(variant).unwrap();
        let f1 = unit.elements.iter().position(|name| name == "F1").unwrap() as u8;
        let duties: Vec<_> = unit
            .gears
            .iter()
            .map(|gear| (gear.id.as_str(), one_way_duty(&unit.train, f1, gear.closed, Load::Drive).unwrap()))
            .collect();
        let with = |role| duties.iter().filter(|(_, duty)| duty.role == role).map(|(id, _)| *id).collect::<Vec<_>>();
        assert_eq!(with(OneWayRole::Holds), ["1", "2"]);
        assert_eq!(with(OneWayRole::CouldHold), ["1B", "2B"]);
        assert_eq!(with(OneWayRole::Overruns), ["3", "4", "5", "6"]);
        assert_eq!(with(OneWayRole::CannotHold), ["7", "8", "R"]);
        for (id, duty) in &duties {
            let backwards = match duty.role {
                OneWayRole::Holds => StateKind::Neutral,
                OneWayRole::Overruns => StateKind::TiedUp,
                _ => StateKind::Gear,
            };
            assert_eq!(duty.backwards, backwards, "{variant} {id}");
        }
    }
}

#[test]
fn an_element_that_is_not_there_has_no_duty() {
    let family = Family::from_toml("family.toml", include_str!("../../python/trainwright/demo/family.toml")).unwrap();
    let unit = family.train("teal").unwrap().train;
    let f1 = unit.one_way_mask().trailing_zeros() as u8;
    for (element, closed) in [(9, 0b101), (u8::MAX, 0b101), (f1, 1 << 12)] {
        let refused = one_way_duty(&unit, element, closed, Load::Drive).unwrap_err();
        assert!(matches!(refused, Error::Inconsistent { .. }), "{refused}");
    }
}
