//! Run length of the sequential test of the live monitor: against tables, the exact chain, and runs.

#[path = "support/screen.rs"]
#[allow(dead_code)]
mod screen;
mod support;

use screen::Random;
use support::vectors;
use trainwright::live::{run_length, threshold_for};

#[test]
fn published_and_exact_values() {
    vectors("live_run_length", |row| {
        let number = |name| row.number(name) as f32;
        Ok([run_length(number("threshold"), number("reference"), number("shift"))?.into()])
    });
    vectors("live_threshold_for", |row| {
        Ok([threshold_for(row.number("run_length") as f32, row.number("reference") as f32)?.into()])
    });
}

fn normal_cdf(x: f64) -> f64 {
    0.5 * libm::erfc(-x / std::f64::consts::SQRT_2)
}

/// Average run length from the chain of Brook and Evans, Biometrika 59 (1972) (from memory): the sum falls into one of so many
/// states of equal width, the first of which is half as wide and holds zero.
fn chain(threshold: f64, reference: f64, shift: f64, states: usize) -> f64 {
    let width = 2.0 * threshold / (2.0 * states as f64 - 1.0);
    let at = |k: f64| normal_cdf(k * width + reference - shift);
    // (I − R)·L = 1, solved by elimination
    let mut rows: Vec<Vec<f64>> = (0..states)
        .map(|i| {
            let mut row: Vec<f64> = (0..states)
                .map(|j| {
                    let d = j as f64 - i as f64;
                    let reach = if j == 0 { at(0.5 - i as f64) } else { at(d + 0.5) - at(d - 0.5) };
                    f64::from(u8::from(i == j)) - reach
                })
                .collect();
            row.push(1.0);
            row
        })
        .collect();
    for k in 0..states {
        let pivot = rows[k].clone();
        for row in rows.iter_mut().skip(k + 1) {
            let factor = row[k] / pivot[k];
            row.iter_mut().zip(&pivot).skip(k).for_each(|(cell, above)| *cell -= factor * above);
        }
    }
    let mut lengths = vec![0.0; states];
    for k in (0..states).rev() {
        let rest: f64 = (k + 1..states).map(|j| rows[k][j] * lengths[j]).sum();
        lengths[k] = (rows[k][states] - rest) / rows[k][k];
    }
    lengths[0]
}

/// Of two chains, as their inventors do: the error of one falls with the square of the width of its states.
fn exact(threshold: f64, reference: f64, shift: f64) -> f64 {
    let [coarse, fine] =
        [60, 120].map(|states| (chain(threshold, reference, shift, states), 2.0 * states as f64 - 1.0));
    let [first, second] = [coarse.1 * coarse.1, fine.1 * fine.1];
    (second * fine.0 - first * coarse.0) / (second - first)
}

/// The chain itself, against the table of its inventors' kind: Montgomery's two-sided ARL, half of the one-sided one.
#[test]
fn the_chain_gives_the_tables() {
    for (threshold, two_sided) in [(4.0, 168.0), (5.0, 465.0)] {
        let found = exact(threshold, 0.5, 0.0) / 2.0;
        assert_eq!(found.round(), two_sided, "h = {threshold}: {found}");
    }
    assert_eq!(format!("{:.1}", exact(5.0, 0.5, 1.0)), "10.4");
}

/// The errors that the card states.
#[test]
fn the_approximation_is_as_good_as_its_card_says() {
    let worst = |references: &[f32], thresholds: &[f32], shift: &dyn Fn(f32) -> f32| {
        let mut worst: f64 = 0.0;
        for &k in references {
            for &h in thresholds {
                let exact = exact(h.into(), k.into(), shift(k).into());
                let error = (f64::from(run_length(h, k, shift(k)).unwrap()) / exact - 1.0).abs();
                worst = worst.max(error);
            }
        }
        worst
    };
    let high = [2.5, 3.0, 4.0, 6.0, 9.0];
    assert!(worst(&[0.1, 0.25, 0.5, 0.75, 1.0], &high, &|_| 0.0) < 0.004);
    assert!(worst(&[1.25], &high, &|_| 0.0) < 0.01);
    assert!(worst(&[0.1, 0.5, 1.0, 1.25], &[1.0, 1.5, 2.0], &|_| 0.0) < 0.095);
    for drift in [0.25, 0.5, 0.75] {
        assert!(worst(&[0.25, 0.5, 1.0], &[3.0, 5.0, 8.0], &|k| k + drift) < 0.02, "drift {drift}");
    }
    assert!(worst(&[0.25, 0.5, 1.0], &[3.0, 5.0, 8.0], &|k| k + 3.0) < 0.14);
}

/// Alarms as they come, with the threshold for one in 2000 values.
#[test]
fn alarms_come_as_often_as_was_asked() {
    let mut random = Random(5);
    for reference in [0.25_f32, 0.5, 1.0] {
        let threshold = f64::from(threshold_for(2000.0, reference).unwrap());
        let (runs, mut values) = (4000, 0_u64);
        for _ in 0..runs {
            let mut sum = 0.0_f64;
            while sum < threshold {
                // Box and Muller
                let z = (-2.0 * (1.0 - random.unit()).ln()).sqrt() * (std::f64::consts::TAU * random.unit()).cos();
                sum = (sum + z - f64::from(reference)).max(0.0);
                values += 1;
            }
        }
        let average = values as f64 / f64::from(runs);
        // One run varies by as much as the average.
        let u = 2000.0 / f64::from(runs).sqrt();
        assert!((average - 2000.0).abs() < 4.0 * u, "k = {reference}: {average}, u {u}");
    }
}

#[test]
fn threshold_and_run_length_are_inverse() {
    for reference in [0.01_f32, 0.1, 0.5, 1.0, 1.25] {
        for length in [100.0_f32, 1e3, 1e6, 1e9, 1e15] {
            let threshold = threshold_for(length, reference).unwrap();
            if (1.0..=1000.0).contains(&threshold) {
                let back = run_length(threshold, reference, 0.0).unwrap();
                approx::assert_relative_eq!(back, length, max_relative = 1e-4);
            } else {
                assert!(reference < 0.02, "{reference}, {length}: {threshold}");
            }
        }
    }
}
