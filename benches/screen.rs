//! The pass over rows: one core, with the instructions of every x86-64 and with those of newer ones.

use std::hint::black_box;
use std::time::Duration;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use trainwright::duty::screen::{Ask, SCREEN_COLUMNS, ScreenBlock, ScreenPlan, ScreenTally};

#[path = "../tests/support/screen.rs"]
#[allow(dead_code)]
mod support;

const ROWS: usize = 1 << 20;
const ALL_COLUMNS: u32 = (1 << SCREEN_COLUMNS) - 1;

#[inline(always)]
fn pass(plan: &ScreenPlan, asked: u32, columns: &[&[f64]; SCREEN_COLUMNS], tally: &mut ScreenTally) {
    ScreenBlock::new().screen(plan, asked, (columns, 1, |_| ()), tally);
}

#[target_feature(enable = "avx2")]
fn pass_avx2(plan: &ScreenPlan, asked: u32, columns: &[&[f64]; SCREEN_COLUMNS], tally: &mut ScreenTally) {
    pass(plan, asked, columns, tally);
}

#[target_feature(enable = "avx512f,avx512dq,avx512vl,avx512bw,avx512cd")]
fn pass_avx512(plan: &ScreenPlan, asked: u32, columns: &[&[f64]; SCREEN_COLUMNS], tally: &mut ScreenTally) {
    pass(plan, asked, columns, tally);
}

fn screen(criterion: &mut Criterion) {
    let plan = support::unit().plan().unwrap();
    let rows = support::drive(ROWS, 1, 0.001);
    let columns: Vec<Vec<f64>> =
        (0..SCREEN_COLUMNS).map(|column| rows.iter().map(|row| row.values()[column]).collect()).collect();
    let mut group = criterion.benchmark_group("screen");
    group.throughput(Throughput::Elements(ROWS as u64));
    group.warm_up_time(Duration::from_millis(200)).measurement_time(Duration::from_secs(2)).sample_size(10);
    group.bench_function("scalar rows", |bencher| {
        bencher.iter(|| {
            let mut tally = ScreenTally::EMPTY;
            let mut before = None;
            for (number, row) in rows.iter().enumerate() {
                let answer = plan.row(ALL_COLUMNS, row, before);
                tally.add_row((ALL_COLUMNS, Ask::ALL), row, number as u64, &answer);
                before = Some(row);
            }
            black_box(tally)
        });
    });
    for (name, given, asked) in [
        ("every sum", ALL_COLUMNS, Ask::ALL),
        ("gears and seconds", 0b1101, Ask::SUMS),
        ("torque", 0b11111, Ask::TORQUE | Ask::SUMS),
        ("damage", 0b11111, Ask::DAMAGE | Ask::SUMS),
        ("margin", 0b111111, Ask::MARGIN | Ask::SUMS),
        ("times of two columns", 0b100_0001, Ask::SUMS),
    ] {
        let columns = core::array::from_fn(|column| match given >> column & 1 {
            0 => &[][..],
            _ => columns[column].as_slice(),
        });
        let mut run = |instructions: &str, pass: &dyn Fn(&mut ScreenTally)| {
            group.bench_function(format!("{name}, {instructions}"), |bencher| {
                bencher.iter(|| {
                    let mut tally = ScreenTally::EMPTY;
                    pass(&mut tally);
                    black_box(tally)
                });
            });
        };
        run("baseline", &|tally| pass(&plan, asked, &columns, tally));
        // SAFETY: the instructions were looked for.
        #[cfg(target_arch = "x86_64")]
        unsafe {
            if is_x86_feature_detected!("avx2") {
                run("AVX2", &|tally| pass_avx2(&plan, asked, &columns, tally));
            }
            if is_x86_feature_detected!("avx512dq") && is_x86_feature_detected!("avx512vl") {
                run("AVX-512", &|tally| pass_avx512(&plan, asked, &columns, tally));
            }
        }
    }
    group.finish();
}

criterion_group!(benches, screen);
criterion_main!(benches);
