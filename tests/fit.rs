//! The fit chapter against its sources, the demonstration family, its properties and wrong inputs.

mod support;

use proptest::prelude::*;
use support::{Row, vectors};
use trainwright::fit::{FitClass, Spread, clearance, measured, toleranced};
use trainwright::judge::{Limits, Reading, Rule};

fn limits(row: &Row, part: &str) -> Limits {
    Limits { lower: row.number(&format!("{part}_lower_mm")), upper: row.number(&format!("{part}_upper_mm")) }
}

fn reading(row: &Row, part: &str) -> Reading {
    Reading { value: row.number(&format!("{part}_mm")), u: row.number(&format!("{part}_u_mm")) }
}

#[test]
fn clearances() {
    vectors("fit_clearance", |row| {
        let c = clearance(limits(row, "shaft"), limits(row, "bore"), row.number("limit_mm"))?;
        Ok([c.clearance_mm.lower, c.clearance_mm.upper, f64::from(c.fit_class as i32)])
    });
    vectors("fit_toleranced", |row| {
        let reading = toleranced(limits(row, "size"), Spread(row.text("spread").parse().unwrap()))?;
        Ok([reading.value, reading.u])
    });
    vectors("fit_measured", |row| {
        let rule = Rule::conformance(row.number("go"))?;
        let c = measured(reading(row, "shaft"), reading(row, "bore"), limits(row, "wanted"), rule)?;
        let verdict = f64::from(c.judgment.verdict as i32);
        Ok([c.clearance_mm.value, c.clearance_mm.u, c.chance_tight, c.chance_loose, c.judgment.chance, verdict])
    });
}

/// Sizes in whole micrometers, as drawings give them.
fn micrometers(range: std::ops::Range<i64>) -> impl Strategy<Value = i64> {
    range
}

proptest! {
    #[test]
    fn the_class_is_that_of_whole_micrometers(
        shaft in micrometers(20_000..30_000), shaft_width in 0..200_i64, gap in -400..400_i64, bore_width in 0..200_i64,
        limit in 0..300_i64,
    ) {
        let mm = |um: i64| um as f64 / 1000.0;
        let bore = shaft + gap;
        let shaft_mm = Limits { lower: mm(shaft), upper: mm(shaft + shaft_width) };
        let bore_mm = Limits { lower: mm(bore), upper: mm(bore + bore_width) };
        let fit = clearance(shaft_mm, bore_mm, mm(limit)).unwrap();
        let (least, greatest) = (bore - shaft - shaft_width, bore + bore_width - shaft);
        let class = if greatest < 0 { FitClass::Blocked }
            else if least < 0 { FitClass::MayBind }
            else if greatest <= limit { FitClass::Inside }
            else if least > limit { FitClass::Loose }
            else { FitClass::MayBeLoose };
        prop_assert_eq!(fit.fit_class, class);
        prop_assert!((fit.clearance_mm.lower - mm(least)).abs() < 1e-9);
        prop_assert!((fit.clearance_mm.upper - mm(greatest)).abs() < 1e-9);
    }

    #[test]
    fn clearance_is_bore_less_shaft_and_the_chances_add_up(
        shaft in 10.0..100.0_f64, gap in -0.2..0.3_f64, u in 0.0001..0.02_f64, v in 0.0..0.02_f64,
    ) {
        let (shaft_mm, bore_mm) = (Reading { value: shaft, u }, Reading { value: shaft + gap, u: v });
        let rule = Rule::conformance(0.95).unwrap();
        let fit = measured(shaft_mm, bore_mm, Limits { lower: 0.0, upper: 0.14 }, rule).unwrap();
        prop_assert_eq!(fit.clearance_mm.value, bore_mm.value - shaft_mm.value);
        prop_assert!((fit.clearance_mm.u - u.hypot(v)).abs() < 1e-15);
        prop_assert!((fit.chance_tight + fit.judgment.chance + fit.chance_loose - 1.0).abs() < 1e-12);
    }
}

#[test]
fn words_of_the_classes_and_spreads() {
    assert_eq!(FitClass::MayBeLoose.to_string(), "may be loose");
    assert_eq!(Spread::RECTANGULAR.to_string(), "rectangular");
    assert!(FitClass::Blocked < FitClass::Loose);
}
