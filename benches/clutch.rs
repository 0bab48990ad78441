//! Speed of the clutch chapter: capacity of a column of rows, and the judged review of a gear's packs.

use criterion::{BatchSize, Criterion, Throughput, criterion_group, criterion_main};
use std::hint::black_box;
use trainwright::clutch::{Annulus, Head, Pack, Working};
use trainwright::judge::{Limits, Reading, Rule};

const ROWS: usize = 100_000;

fn pack() -> Pack {
    let piston = Annulus { inner_radius_mm: 56.0, outer_radius_mm: 78.0 };
    Pack {
        lining: Annulus { inner_radius_mm: 68.0, outer_radius_mm: 86.0 },
        piston,
        faces: 6,
        worn: false,
        return_spring_n: Limits { lower: 980.0, upper: 1200.0 },
        seal_drag_n: 0.0,
        head: Head { wetted: piston, free_surface_radius_mm: 52.0 },
        dam: Head::NONE,
    }
}

fn clutch(c: &mut Criterion) {
    let line = pack().capacity_line(790.0).unwrap();
    let rows: Vec<[f64; 3]> = (0..ROWS)
        .map(|row| {
            let share = row as f64 / ROWS as f64;
            [300.0 + 1500.0 * share, 5000.0 * share, 0.09 + 0.05 * share]
        })
        .collect();

    let mut group = c.benchmark_group("clutch");
    group.throughput(Throughput::Elements(ROWS as u64));
    group.bench_function("capacity of a column", |b| {
        b.iter_batched_ref(
            || vec![0.0; ROWS],
            |out| {
                for (out, &[pressure_kpa, speed_rpm, friction]) in out.iter_mut().zip(black_box(&rows)) {
                    *out = line.capacity_nm(pressure_kpa, speed_rpm, friction).unwrap_or(f64::NAN);
                }
            },
            BatchSize::LargeInput,
        );
    });
    group.throughput(Throughput::Elements(1));
    group.bench_function("one judged hold", |b| {
        let working = Working {
            pressure_kpa: Reading { value: 1470.0, u: 23.1 },
            friction: Reading { value: 0.112, u: 0.009 },
            geometry_u_rel: 0.02,
            drum_speed_rpm: 0.0,
            oil_density_kg_m3: 790.0,
        };
        let rule = Rule::stated_chances(0.95, 0.05).unwrap();
        let need_nm = Reading { value: 400.0, u: 0.0 };
        b.iter(|| black_box(pack()).hold(need_nm, black_box(working), rule).unwrap().judgment.chance);
    });
    group.finish();
}

criterion_group!(benches, clutch);
criterion_main!(benches);
