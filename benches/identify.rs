//! Speed of the identify chapter: a unit of a thousand variants weighed by fifty looks, and what a further look would tell.

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use trainwright::identify::{Evidence, Origin, Standing, VariantFinding, add_measured, add_seen};
use trainwright::judge::{Limits, Reading, Rule};

const VARIANTS: usize = 1000;
const PARTS: usize = 25;

/// A number from 0 to 1 for each place, the same in every run.
fn scattered(place: usize) -> f64 {
    (place as f64 * 0.618_033_988_749_895).fract()
}

fn identify(c: &mut Criterion) {
    let prior = vec![1.0 / VARIANTS as f64; VARIANTS];
    let exchanged = vec![0.05; PARTS];
    let marks: Vec<Vec<f64>> =
        (0..PARTS).map(|look| (0..VARIANTS).map(|v| 0.01 + 0.98 * scattered(look * VARIANTS + v)).collect()).collect();
    let sizes: Vec<Vec<Limits>> = (0..PARTS)
        .map(|look| {
            let lower = |v: usize| 40.0 + (10.0 * scattered(look + 7 * v)).floor();
            (0..VARIANTS).map(|v| Limits { lower: lower(v), upper: lower(v) + 0.025 }).collect()
        })
        .collect();
    let mut rows = vec![0.0; PARTS * VARIANTS];
    let mut variants = vec![VariantFinding::NONE; VARIANTS];

    c.bench_function("a thousand variants by fifty looks", |b| {
        b.iter(|| {
            rows.fill(0.0);
            for (look, row) in rows.chunks_mut(VARIANTS).enumerate() {
                add_seen(black_box(&marks[look]), look % 3 > 0, row).unwrap();
                add_measured(black_box(&sizes[look]), Reading { value: 44.012, u: 0.0016 }, row).unwrap();
            }
            let evidence = Evidence { prior: &prior, exchanged: &exchanged, ln_likelihood: &rows, unexplained: 0 };
            evidence.weigh(&mut variants).unwrap().best
        });
    });

    let few =
        [Limits { lower: 61.0, upper: 63.0 }, Limits { lower: 61.0, upper: 63.0 }, Limits { lower: 77.0, upper: 79.0 }];
    let evidence = Evidence { prior: &[0.4, 0.38, 0.22], exchanged: &[0.1], ln_likelihood: &[0.0; 3], unexplained: 0 };
    let (mut variants, mut origins) = ([VariantFinding::NONE; 3], [Origin::NONE; 3]);
    evidence.weigh(&mut variants).unwrap();
    evidence.part(&variants, 0, &mut origins).unwrap();
    let standing = Standing { variants: &variants, origins: &origins, rule: Rule::conformance(0.95).unwrap() };
    c.bench_function("what a size would tell of three variants", |b| {
        b.iter(|| standing.size_worth(black_box(&few), 0.4, 3.0).unwrap().bits);
    });
}

criterion_group!(benches, identify);
criterion_main!(benches);
