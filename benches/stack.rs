//! Speed of the stack chapter: which shim to fit for each of a column of gaps, and one choice with its judgments.

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use std::hint::black_box;
use trainwright::judge::{Limits, Reading, Rule};
use trainwright::stack::{ChoiceRule, Piece, Selection};

const ROWS: usize = 10_000;

fn stack(c: &mut Criterion) {
    let shims: Vec<_> = (0..9)
        .map(|step| Reading { value: 1.10 + 0.15 * f64::from(step), u: 0.012 })
        .map(|thickness_mm| Piece { thickness_mm, in_stock: true })
        .collect();
    let end_play = Selection {
        room_mm: Reading { value: 2.153, u: 0.0297 },
        window_mm: Limits { lower: 0.20, upper: 0.60 },
        target_mm: 0.36,
        growth_mm: Reading { value: 0.25, u: 0.014 },
        hot_window_mm: Limits { lower: 0.30, upper: 0.80 },
        rule: Rule::stated_chances(0.95, 0.05).unwrap(),
        by: ChoiceRule::LeastRisk,
        hot_counts: true,
    };
    let mut group = c.benchmark_group("stack");
    group.throughput(Throughput::Elements(ROWS as u64));
    group.bench_function("pick for a column", |b| {
        b.iter(|| {
            let gaps = (0..ROWS).map(|row| 1.5 + row as f64 / ROWS as f64);
            let rooms = gaps.map(|value| Selection { room_mm: Reading { value, u: 0.0297 }, ..end_play });
            rooms
                .filter_map(|selection| selection.pick(black_box(&shims)).ok())
                .map(|picked| picked.chance)
                .sum::<f64>()
        });
    });
    group.throughput(Throughput::Elements(1));
    group.bench_function("one choice", |b| b.iter(|| end_play.choose(black_box(&shims)).unwrap()));
    group.finish();
}

criterion_group!(benches, stack);
criterion_main!(benches);
