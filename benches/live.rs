//! The live monitor: samples per second on one core, over the trace of the demonstration and over a rougher stream.

use std::hint::black_box;
use std::time::Duration;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use trainwright::live::{GEAR_NOT_COMMANDED, LiveEvents, LiveMonitor, LivePlan, LiveSample, SpeedReading};

#[path = "../tests/support/live.rs"]
#[allow(dead_code)]
mod support;

fn pass(plan: &LivePlan, samples: &[LiveSample]) -> u32 {
    let mut monitor = LiveMonitor::new(plan);
    let mut events = LiveEvents::NONE;
    let mut found = 0;
    for sample in samples {
        black_box(monitor.push(plan, sample, &mut events));
        found += events.count;
    }
    found
}

fn live(criterion: &mut Criterion) {
    let plan = support::wren().unit.plan().unwrap();
    let trace = support::trace();
    let uncommanded: Vec<LiveSample> =
        trace.iter().map(|sample| LiveSample { commanded: GEAR_NOT_COMMANDED, ..*sample }).collect();
    // Every third speed missing, so that the gear is looked for again and again.
    let mut torn = trace.clone();
    for sample in torn.iter_mut().step_by(3) {
        sample.output = SpeedReading::MISSING;
    }
    let mut group = criterion.benchmark_group("live");
    group.throughput(Throughput::Elements(trace.len() as u64));
    group.warm_up_time(Duration::from_millis(200)).measurement_time(Duration::from_secs(2)).sample_size(20);
    for (name, samples) in [("trace", &trace), ("without a command", &uncommanded), ("torn", &torn)] {
        group.bench_function(name, |bencher| bencher.iter(|| pass(&plan, samples)));
    }
    group.finish();
}

criterion_group!(benches, live);
criterion_main!(benches);
