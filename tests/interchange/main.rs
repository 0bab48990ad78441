//! Interchange: the demonstration's sets, and every answer against trying every set.

#[path = "../support/mod.rs"]
mod support;

mod orders;
mod random;
mod refused;
mod vectors;

use std::collections::BTreeSet;
use std::fs;

use approx::assert_abs_diff_eq;
use proptest::prelude::*;
use trainwright::Error;
use trainwright::fit::Spread;
use trainwright::interchange::*;
use trainwright::judge::{Limits, Reading, Rule, Verdict};
use trainwright::record::{Family, NamedJoints, Record};

fn demo() -> NamedJoints {
    let path = format!("{}/python/trainwright/demo/family.toml", env!("CARGO_MANIFEST_DIR"));
    Family::from_toml("family.toml", &fs::read_to_string(path).unwrap()).unwrap().joints().unwrap()
}

/// The parts of a set by name, and what is to be done at its edge: `machine:<rule>` or `NEVER:<joint>`.
fn told(named: &NamedJoints, part: &str, from: &str, into: &str) -> (Vec<String>, Vec<String>, MatchedSet) {
    let joints = named.joints();
    let mut crossings = vec![Crossing::BLANK; named.joints.len()];
    joints.crossings(named.variant(from).unwrap(), named.variant(into).unwrap(), &mut crossings).unwrap();
    let set = joints.close_set(&crossings, named.part(part).unwrap()).unwrap();
    let mut parts: Vec<_> = set.parts.parts().map(|part| named.parts[usize::from(part)].clone()).collect();
    parts.sort();
    let edge = set.edge(&named.joints, &crossings).map(|(joint, passage)| match passage.machining {
        NO_MACHINING => format!("NEVER:{}", named.names[usize::from(joint)]),
        rule => format!("machine:{}", named.rules[usize::from(rule)].id),
    });
    let edge = edge.collect();
    (parts, edge, set)
}

fn words(text: &str) -> Vec<String> {
    text.split_whitespace().map(str::to_owned).collect()
}

/// `fit/*`, `cover/*`, `close/*`, `smallest/*` and `J2/*` of the demonstration's expected answers.
#[test]
fn the_demonstration_gives_the_expected_sets() {
    let named = demo();
    let joints = named.joints();
    let table = fs::read_to_string(format!("{}/tests/interchange_demo.csv", env!("CARGO_MANIFEST_DIR"))).unwrap();
    let mut rows = 0;
    for line in table.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let [what, name, first, second, answer] = line.splitn(5, ',').collect::<Vec<_>>()[..] else { panic!("{line}") };
        let of = |name: &str| named.variant(name).unwrap();
        rows += 1;
        match what {
            "fit" => {
                let meeting = joints.meeting(named.joint(name).unwrap(), of(first), of(second)).unwrap();
                let [least, most, class] = answer.split(' ').collect::<Vec<_>>()[..] else { panic!("{line}") };
                assert_abs_diff_eq!(meeting.clearance_mm.lower, least.parse::<f64>().unwrap(), epsilon = 1e-9);
                assert_abs_diff_eq!(meeting.clearance_mm.upper, most.parse::<f64>().unwrap(), epsilon = 1e-9);
                assert_eq!(meeting.outcome.to_string(), class.replace("inside", "holds"), "{line}");
            }
            "cover" => {
                let meeting = joints.meeting(named.joint(name).unwrap(), of(second), of(first)).unwrap();
                assert_abs_diff_eq!(meeting.share, answer.parse::<f64>().unwrap(), epsilon = 1e-9);
            }
            "close" | "tokens" => {
                let [parts, notes, ..] = answer.split('|').collect::<Vec<_>>()[..] else { panic!("{line}") };
                let (set, edge, _) = told(&named, name, first, second);
                assert_eq!((set, edge), (words(parts), words(notes)), "{line}");
            }
            "smallest" => {
                let (set, _, closed) = told(&named, name, first, second);
                let smallest = if closed.unmended > 0 { words("never") } else { set };
                assert_eq!(smallest, words(answer), "{line}");
            }
            "alias" => {
                for part in words(answer) {
                    assert_eq!(answer_of(&named, &part, "teal", "heron").relation, Relation::Singly);
                }
            }
            _ => panic!("{line}"),
        }
    }
    assert_eq!(rows, 54 + 18 + 108 + 4 + 8 + 1);
}

fn answer_of(named: &NamedJoints, part: &str, from: &str, into: &str) -> Answer {
    let joints = named.joints();
    let (from, into) = (named.variant(from).unwrap(), named.variant(into).unwrap());
    let mut crossings = vec![Crossing::BLANK; named.joints.len()];
    joints.crossings(from, into, &mut crossings).unwrap();
    joints.answer(&crossings, named.part(part).unwrap(), from, into).unwrap()
}

#[test]
fn the_words_of_the_demonstration() {
    let named = demo();
    for (part, from, into, relation, alone) in [
        ("output_shaft", "heron", "wren", Relation::Singly, JointOutcome::Holds),
        ("output_shaft", "teal", "wren", Relation::Never, JointOutcome::Loose),
        ("output_shaft", "wren", "teal", Relation::Set, JointOutcome::Blocked),
        ("reaction_sleeve", "wren", "teal", Relation::Singly, JointOutcome::Holds),
        ("reaction_sleeve", "teal", "wren", Relation::Set, JointOutcome::Uncovered),
        ("park_gear", "heron", "wren", Relation::Set, JointOutcome::Unequal),
        ("sump_filter", "teal", "wren", Relation::Singly, JointOutcome::Holds),
        ("sump", "teal", "wren", Relation::NotKnown, JointOutcome::Holds),
        ("extension", "heron", "wren", Relation::NotKnown, JointOutcome::Holds),
        ("case", "teal", "wren", Relation::Fixed, JointOutcome::Blocked),
    ] {
        let answer = answer_of(&named, part, from, into);
        assert_eq!((answer.relation, answer.alone), (relation, alone), "{part} {from} {into}: {answer:?}");
    }
}

#[test]
fn the_whole_matrix_is_the_answers_one_by_one() {
    let named = demo();
    let joints = named.joints();
    let mut out = vec![Answer::BLANK; named.parts.len() * 6];
    let mut crossings = vec![Crossing::BLANK; named.joints.len()];
    joints.matrix(&mut crossings, &mut out).unwrap();
    for answer in &out {
        let name = |place: u8| named.variants[usize::from(place)].as_str();
        let part = &named.parts[usize::from(answer.part)];
        assert_eq!(*answer, answer_of(&named, part, name(answer.from), name(answer.into)));
    }
    let asked: BTreeSet<_> = out.iter().map(|answer| (answer.part, answer.from, answer.into)).collect();
    assert_eq!(asked.len(), out.len());
    assert!(matches!(joints.matrix(&mut crossings, &mut out[1..]), Err(Error::Count { name: "out", .. })));
}
