//! Speed of the interchange chapter: a family of 200 parts, 400 fits and 8 variants, every part in every direction.

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use trainwright::fit::Spread;
use trainwright::interchange::{AS_FOUND, Aim, Job};
use trainwright::interchange::{
    Answer, Crossing, Joint, JointKind, JointState, Joints, Machining, PartSet, Relation, Sides,
};
use trainwright::judge::{Limits, Rule};

const PARTS: u16 = 200;
const FITS: u16 = 400;
const VARIANTS: u8 = 8;

/// Numbers that look random and are the same on every machine.
fn shuffled(seed: &mut u32, below: u32) -> u32 {
    *seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
    (*seed >> 8) % below
}

fn family() -> (Vec<Joint>, Vec<Sides>, Vec<Machining>) {
    let (mut seed, mut joints, mut sizes, mut machining) = (1, vec![], vec![], vec![]);
    for joint in 0..FITS {
        let first = shuffled(&mut seed, PARTS.into()) as u16;
        let second = (first + 1 + shuffled(&mut seed, u32::from(PARTS) - 1) as u16) % PARTS;
        joints.push(Joint { kind: JointKind::Running, first, second, limit: 0.14 });
        let mut size_mm = 20.0 + f64::from(shuffled(&mut seed, 80));
        for _ in 0..VARIANTS {
            // Every tenth fit or so grows from one variant to the next.
            size_mm += if shuffled(&mut seed, 10) == 0 { 0.35 } else { 0.0 };
            sizes.push(Sides {
                first: Limits { lower: size_mm - 0.025, upper: size_mm },
                second: Limits { lower: size_mm + 0.040, upper: size_mm + 0.075 },
            });
        }
        if joint % 20 == 0 {
            let finish_mm = sizes[sizes.len() - usize::from(VARIANTS)].first;
            machining.push(Machining { joint, part: first, from: 0xfe, to_fit: 1, finish_mm, runout_limit_mm: 0.03 });
        }
    }
    (joints, sizes, machining)
}

fn interchange(c: &mut Criterion) {
    let (joints, sizes, machining) = family();
    let family = Joints {
        parts: PARTS,
        variants: VARIANTS,
        joints: &joints,
        sizes: &sizes,
        machining: &machining,
        fixed: PartSet::of(&[0]),
        alias: PartSet::EMPTY,
    }
    .checked()
    .unwrap();
    let mut answers = vec![Answer::BLANK; usize::from(PARTS) * 8 * 7];
    let mut crossings = vec![Crossing::BLANK; joints.len()];
    c.bench_function("interchange of 200 parts", |b| {
        b.iter(|| black_box(&family).matrix(&mut crossings, &mut answers).unwrap());
    });
    let count = |relation| answers.iter().filter(|answer| answer.relation == relation).count();
    let relations = [Relation::Singly, Relation::Machined, Relation::Set, Relation::Never, Relation::NotKnown];
    println!("{:?}", relations.map(count));

    let found = vec![0; usize::from(PARTS)];
    let mut wanted = vec![AS_FOUND; usize::from(PARTS)];
    wanted[7] = 1;
    let job = Job {
        unit: 0,
        found: &found,
        wanted: &wanted,
        measured: &[],
        rule: Rule::conformance(0.95).unwrap(),
        spread: Spread::RECTANGULAR,
        part_prices: &[],
        machining_prices: &[],
        aim: Aim::FEWEST,
    };
    let (mut parts, mut states) = (vec![AS_FOUND; usize::from(PARTS)], vec![JointState::BLANK; joints.len()]);
    c.bench_function("order among 200 parts", |b| {
        b.iter(|| black_box(&family).order(&job, &mut parts, &mut states).unwrap());
    });
}

criterion_group!(benches, interchange);
criterion_main!(benches);
