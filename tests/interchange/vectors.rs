//! The vectors that the three languages share.

use super::support::{Row, vectors};
use super::*;

fn numbers(text: &str) -> Vec<f64> {
    text.split_whitespace().map(|word| word.parse().unwrap_or_else(|_| panic!("{word:?} is not a number"))).collect()
}

fn limits(numbers: &[f64]) -> Limits {
    Limits { lower: numbers[0], upper: numbers[1] }
}

fn sides(numbers: &[f64]) -> Sides {
    Sides { first: limits(numbers), second: limits(&numbers[2..]) }
}

const KINDS: [(&str, JointKind); 5] = [
    ("running", JointKind::Running),
    ("locating", JointKind::Locating),
    ("press", JointKind::Press),
    ("cover", JointKind::Cover),
    ("match", JointKind::Match),
];

fn kind(word: &str) -> JointKind {
    KINDS.iter().find(|(known, _)| *known == word).unwrap_or_else(|| panic!("{word}")).1
}

/// A family as the rows write it: joints as `kind first second limit sizes...`, a match with one number for each variant;
/// machining as `joint part from to_fit lower upper run-out`.
struct Written {
    parts: u16,
    variants: u8,
    fixed: PartSet,
    alias: PartSet,
    joints: Vec<Joint>,
    sizes: Vec<Sides>,
    machining: Vec<Machining>,
}

impl Written {
    fn of(row: &Row) -> Self {
        let set = |column| PartSet::of(&numbers(row.text(column)).iter().map(|part| *part as u16).collect::<Vec<_>>());
        let (mut joints, mut sizes) = (vec![], vec![]);
        for text in row.text("joints").split(';') {
            let (word, rest) = text.trim().split_once(' ').unwrap();
            let rest = numbers(rest);
            let of = Joint { kind: kind(word), first: rest[0] as u16, second: rest[1] as u16, limit: rest[2] };
            if of.kind == JointKind::Match {
                sizes.extend(rest[3..].iter().map(|value| sides(&[*value; 4])));
            } else {
                sizes.extend(rest[3..].chunks(4).map(sides));
            }
            joints.push(of);
        }
        let rules = row.text("machining").split(';').map(numbers).filter(|rule| !rule.is_empty());
        let machining = rules.map(|rule| Machining {
            joint: rule[0] as u16,
            part: rule[1] as u16,
            from: rule[2] as u32,
            to_fit: rule[3] as u32,
            finish_mm: limits(&rule[4..]),
            runout_limit_mm: rule[6],
        });
        Self {
            parts: row.count("parts") as u16,
            variants: row.count("variants") as u8,
            fixed: set("fixed"),
            alias: set("alias"),
            joints,
            sizes,
            machining: machining.collect(),
        }
    }

    fn joints(&self) -> Result<Joints<'_>, Error> {
        let Self { parts, variants, fixed, alias, .. } = *self;
        let (joints, sizes, machining) = (&self.joints, &self.sizes, &self.machining);
        Joints { parts, variants, joints, sizes, machining, fixed, alias }.checked()
    }

    fn crossed(&self, row: &Row) -> Result<(Joints<'_>, Vec<Crossing>), Error> {
        let joints = self.joints()?;
        let mut crossings = vec![Crossing::BLANK; self.joints.len()];
        joints.crossings(row.count("from") as u8, row.count("into") as u8, &mut crossings)?;
        Ok((joints, crossings))
    }
}

/// `-` for as found.
fn variants(text: &str) -> Vec<u8> {
    text.split_whitespace().map(|word| if word == "-" { AS_FOUND } else { word.parse().unwrap() }).collect()
}

#[test]
fn vectors_of_joints() {
    vectors("interchange_cover_share", |row| {
        let land_mm = Limits { lower: row.number("land_from_mm"), upper: row.number("land_to_mm") };
        let surface_mm = Limits { lower: row.number("surface_from_mm"), upper: row.number("surface_to_mm") };
        Ok([cover_share(land_mm, surface_mm)?])
    });
    vectors("interchange_meet", |row| {
        let joint = Joint { kind: kind(row.text("kind")), first: 0, second: 1, limit: row.number("limit") };
        let from = |column| sides(&numbers(row.text(column)));
        let Meeting { outcome, clearance_mm, wanted_mm, share } =
            joint.meet(from("first_from"), from("second_from"))?;
        let [one, two] = [clearance_mm, wanted_mm];
        Ok([f64::from(outcome as u8), one.lower, one.upper, two.lower, two.upper, share])
    });
}

#[test]
fn vectors_of_sets() {
    let part = |row: &Row| row.count("part") as u16;
    vectors("interchange_close_set", |row| {
        let written = Written::of(row);
        let (joints, crossings) = written.crossed(row)?;
        let set = joints.close_set(&crossings, part(row))?;
        Ok([f64::from(set.size), set.machined.into(), set.unmended.into(), set.parts.words[0] as f64])
    });
    vectors("interchange_answer", |row| {
        let written = Written::of(row);
        let (joints, crossings) = written.crossed(row)?;
        let answer = joints.answer(&crossings, part(row), row.count("from") as u8, row.count("into") as u8)?;
        let Answer { relation, alone, joints, broken, size, .. } = answer;
        Ok([f64::from(relation as i32), f64::from(alone as u8), joints.into(), broken.into(), size.into()])
    });
    vectors("interchange_price", |row| {
        let written = Written::of(row);
        let (joints, crossings) = written.crossed(row)?;
        let set = joints.close_set(&crossings, part(row))?;
        let [parts, machining] = ["part_prices", "machining_prices"].map(|column| numbers(row.text(column)));
        let price = joints.price(&set, &crossings, &parts, &machining)?;
        Ok([price.total, price.unpriced.into()])
    });
    vectors("interchange_put_in", |row| {
        let written = Written::of(row);
        let of = variants(row.text("variants_of"));
        let passage = written.joints()?.put_in(&of, part(row), row.count("variant") as u8)?;
        Ok([f64::from(passage.outcome as u8), place(passage.machining, NO_MACHINING)])
    });
}

fn place(number: u16, none: u16) -> f64 {
    if number == none { -1.0 } else { number.into() }
}

#[test]
fn vectors_of_orders() {
    vectors("interchange_order", |row| {
        let written = Written::of(row);
        let joints = written.joints()?;
        let [found, wanted] = ["found", "wanted"].map(|column| variants(row.text(column)));
        let measured = row.text("measured").split(';').map(numbers).filter(|side| !side.is_empty());
        let measured = measured.map(|side| MeasuredSide {
            joint: side[0] as u16,
            part: side[1] as u16,
            size_mm: Reading { value: side[2], u: side[3] },
        });
        let measured: Vec<_> = measured.collect();
        let [part_prices, machining_prices] =
            ["part_prices", "machining_prices"].map(|column| numbers(row.text(column)));
        let job = Job {
            unit: row.count("unit") as u8,
            found: &found,
            wanted: &wanted,
            measured: &measured,
            rule: Rule::conformance(0.95)?,
            spread: Spread::RECTANGULAR,
            part_prices: &part_prices,
            machining_prices: &machining_prices,
            aim: Aim(row.count("aim") as i32),
        };
        let (mut parts, mut states) = (vec![AS_FOUND; found.len()], vec![JointState::BLANK; written.joints.len()]);
        let order = joints.order(&job, &mut parts, &mut states)?;
        let ordered = (0..).zip(&parts).filter(|(_, variant)| **variant != AS_FOUND);
        let ordered = ordered.fold(0.0, |code, (part, variant)| code + f64::from(variant + 1) * 4_f64.powi(part));
        let Order { possible, parts, machined, not_proven, stopped_at, price, cheapest, .. } = order;
        let JointState { chance, clearance_mm, .. } = states[0];
        let flags = [f64::from(u8::from(possible)), f64::from(u8::from(cheapest))];
        let counts = [parts, machined, not_proven].map(f64::from);
        Ok([
            flags[0],
            counts[0],
            counts[1],
            counts[2],
            place(stopped_at, NO_JOINT),
            price.total,
            price.unpriced.into(),
            flags[1],
            ordered,
            chance,
            clearance_mm.u,
        ])
    });
}
