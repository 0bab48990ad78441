//! What is no characteristic, and no engine.

use super::*;

#[test]
fn a_converter_that_gives_more_than_it_takes_is_refused() {
    let table =
        |ratios: &[f64], torques: &[f64]| Characteristic::from_table(ratios, torques, &[71.0; 5][..ratios.len()]);
    // The last row of the published table: 1.004 at 1.0.
    let published = table(&[0.0, 0.1, 0.2, 0.3, 1.0], &[2.23, 2.07, 1.97, 1.84, 1.004]);
    let refused = Error::OutOfRange { name: "efficiency", value: 1.004, low: 0.0, high: 1.0 };
    assert_eq!(published.unwrap_err(), refused);
    // Each point is possible, the line between them is not: 1.4 at 0.7 to 1 at 1 passes 1.0101 at 0.87.
    let between = table(&[0.0, 0.7, 1.0], &[2.2, 1.4, 1.0]).unwrap_err();
    assert!(matches!(between, Error::Inconsistent { name: "torque_ratio", .. }), "{between}");
    assert!(between.to_string().contains("give more points"));
    assert!(table(&[0.0, 0.7, 1.0], &[2.2, 1.4, 0.95]).is_err());
    assert!(table(&[0.0, 0.7, 0.8, 0.9, 1.0], &[2.2, 1.35, 1.2, 1.05, 1.0]).is_ok());
}

#[test]
fn impossible_tables_are_refused_with_what_is_wrong() {
    let kind = |ratios: &[f64], torques: &[f64], k: &[f64]| {
        let error = Characteristic::from_table(ratios, torques, k).unwrap_err();
        (error.kind(), error.parameter())
    };
    assert_eq!(kind(&[0.0], &[2.0], &[70.0]), ("COUNT", "points of the characteristic"));
    assert_eq!(kind(&[0.0; 33], &[2.0; 33], &[70.0; 33]), ("COUNT", "points of the characteristic"));
    assert_eq!(kind(&[0.0, 0.5], &[2.0], &[70.0, 80.0]), ("INCONSISTENT", "torque_ratio"));
    assert_eq!(kind(&[0.0, 0.5], &[2.0, 1.5], &[70.0]), ("INCONSISTENT", "k_rpm_per_sqrt_nm"));
    assert_eq!(kind(&[0.5, 0.5], &[2.0, 1.5], &[70.0, 80.0]), ("INCONSISTENT", "speed_ratio"));
    assert_eq!(kind(&[0.0, 1.1], &[2.0, 0.5], &[70.0, 80.0]), ("OUT_OF_RANGE", "speed_ratio"));
    assert_eq!(kind(&[0.0, 0.5], &[2.0, -0.1], &[70.0, 80.0]), ("OUT_OF_RANGE", "torque_ratio"));
    assert_eq!(kind(&[0.0, 0.5], &[2.0, 1.5], &[70.0, 0.0]), ("NOT_POSITIVE", "k_rpm_per_sqrt_nm"));
    assert_eq!(kind(&[0.0, f64::NAN], &[2.0, 1.5], &[70.0, 80.0]), ("NOT_FINITE", "speed_ratio"));

    let kind = |speeds: &[f64], torques: &[f64], max: f64| {
        let error = EngineCurve::from_table(speeds, torques, max).unwrap_err();
        (error.kind(), error.parameter())
    };
    assert_eq!(kind(&[1000.0], &[300.0], 5000.0), ("COUNT", "points of the engine curve"));
    assert_eq!(kind(&[2000.0, 1000.0], &[300.0, 400.0], 5000.0), ("INCONSISTENT", "speed_rpm"));
    assert_eq!(kind(&[1000.0, 2000.0], &[300.0, -1.0], 5000.0), ("OUT_OF_RANGE", "torque_nm"));
    assert_eq!(kind(&[1000.0, 2000.0], &[300.0], 5000.0), ("INCONSISTENT", "torque_nm"));
    assert_eq!(kind(&[1000.0, 2000.0], &[300.0, 400.0], 1500.0), ("INCONSISTENT", "max_rpm"));
    assert_eq!(kind(&[1000.0, f64::INFINITY], &[300.0, 400.0], 5000.0), ("NOT_FINITE", "speed_rpm"));
}

#[test]
fn a_struct_that_c_filled_with_junk_answers_with_an_error() {
    let mut junk = published();
    for points in [0, 1, 33, u32::MAX] {
        junk.points = points;
        assert_eq!(junk.check_characteristic().unwrap_err().kind(), "COUNT");
        // A look-up does not check the whole table: it must only not invent an answer.
        if points < 2 {
            assert!(junk.torque_ratio_at(0.1).is_err());
        }
    }
    let nothing = Characteristic { k_rpm_per_sqrt_nm: [f64::NAN; TABLE_POINTS], ..published() };
    assert_eq!(nothing.check_characteristic().unwrap_err().kind(), "NOT_FINITE");
}
