//! Trains of the vector files.

use trainwright::Result;
use trainwright::train::*;

/// What the train column of a vector file says, part by part: see the top of `train_solve.csv`.
pub struct Built {
    pub train: Train,
    pub last: u8,
}

pub fn built(text: &str) -> Result<Built> {
    let mut parts = text.split(" / ").map(|part| part.split_whitespace().collect::<Vec<_>>());
    let [members, input, output, fixed] = parts.next().unwrap()[..] else { panic!("{text}") };
    let member = |cell: &str| if cell == "-" { NO_MEMBER } else { cell.parse().unwrap() };
    let teeth = |cell: &str| if cell == "-" { 0 } else { cell.parse().unwrap() };
    let train = Train::new(member(members), member(input), member(output), member(fixed))?;
    let mut built = Built { train, last: train.members() };
    for part in parts {
        let (kind, planets) = part[0].split_once(':').unwrap_or((part[0], "0"));
        built.last = match part[..] {
            [_, sun, sun_2, planet, planet_2, ring, "@", sun_at, sun_2_at, ring_at, carrier_at] => {
                built.train.add_set(PlanetarySet {
                    kind: match kind {
                        "simple" => SetKind::Simple,
                        "double_pinion" => SetKind::DoublePinion,
                        "two_sun" => SetKind::TwoSun,
                        "stepped" => SetKind::Stepped,
                        other => panic!("{other}"),
                    },
                    planets: planets.parse().unwrap(),
                    teeth: SetTeeth {
                        sun: teeth(sun),
                        sun_2: teeth(sun_2),
                        planet: teeth(planet),
                        planet_2: teeth(planet_2),
                        ring: teeth(ring),
                    },
                    joins: SetJoins {
                        sun: member(sun_at),
                        sun_2: member(sun_2_at),
                        ring: member(ring_at),
                        carrier: member(carrier_at),
                    },
                })?
            }
            [_, first, second, ref blocks @ ..] => built.train.add_element(Element {
                kind: match kind {
                    "clutch" => ElementKind::Clutch,
                    "brake" => ElementKind::Brake,
                    "one_way" => ElementKind::OneWay,
                    "dog" => ElementKind::Dog,
                    other => panic!("{other}"),
                },
                first: member(first),
                second: member(second),
                blocks: match blocks {
                    ["reverse"] => Blocks::Reverse,
                    ["forward"] => Blocks::Forward,
                    _ => Blocks::Neither,
                },
            })?,
            _ => panic!("{part:?}"),
        };
    }
    Ok(built)
}

pub fn train(text: &str) -> Result<Train> {
    built(text).map(|built| built.train)
}
