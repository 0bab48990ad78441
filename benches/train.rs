//! Speed of the train chapter: one gear of a four-set train, and the state table of a ten-speed.

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use trainwright::train::{Element, Load, MeshEfficiency, PlanetarySet, SetJoins, SetKind, SetTeeth, Train};

/// A four-set ten-speed: four simple sets, nine turning members, two brakes and four clutches.
fn ten_speed() -> Train {
    let (input, output, case) = (0, 1, 2);
    let (link, first_carrier, first_ring, third_sun, third_ring, third_carrier, fourth_sun) = (3, 4, 5, 6, 7, 8, 9);
    let mut train = Train::new(10, input, output, case).unwrap();
    for (sun_teeth, ring_teeth, sun, ring, carrier) in [
        (45, 95, link, first_ring, first_carrier),
        (51, 89, link, third_sun, input),
        (73, 119, third_sun, third_ring, third_carrier),
        (23, 85, fourth_sun, first_carrier, output),
    ] {
        let set = PlanetarySet {
            kind: SetKind::Simple,
            planets: 0,
            teeth: SetTeeth { sun: sun_teeth, ring: ring_teeth, ..SetTeeth::NONE },
            joins: SetJoins { sun, ring, carrier, ..SetJoins::NONE },
        };
        train.add_set(set).unwrap();
    }
    for element in [
        Element::brake(first_ring, case),
        Element::brake(link, case),
        Element::clutch(third_sun, third_ring),
        Element::clutch(third_ring, fourth_sun),
        Element::clutch(input, fourth_sun),
        Element::clutch(third_carrier, first_carrier),
    ] {
        train.add_element(element).unwrap();
    }
    train
}

fn train(c: &mut Criterion) {
    let train = ten_speed();
    let sixth = 0b11_1001;
    c.bench_function("gear of a four-set train", |b| b.iter(|| black_box(&train).solve(black_box(sixth)).unwrap()));
    let mesh = MeshEfficiency::of_simple_set(0.98).unwrap();
    c.bench_function("state table of a ten-speed", |b| {
        b.iter(|| {
            let states = black_box(&train).engagements().map(|closed| train.solve(closed).unwrap());
            states
                .map(|state| black_box(train.losses(&state, mesh, Load::Drive)).map_or(0.0, |l| l.efficiency))
                .sum::<f64>()
        })
    });
}

criterion_group!(benches, train);
criterion_main!(benches);
