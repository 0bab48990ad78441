//! Which element slips: evidence over the gears, on the demonstration unit.

#[path = "support/live.rs"]
#[allow(dead_code)]
mod demo;
#[path = "support/screen.rs"]
#[allow(dead_code)]
mod screen;
mod support;

use demo::{limits, wren};
use proptest::prelude::*;
use screen::Random;
use support::{Row, vectors};
use trainwright::live::*;
use trainwright::record::NamedLiveUnit;

fn evidence(named: &NamedLiveUnit, slips: &[&str], holds: &[&str]) -> [GearEvidence; MAX_LIVE_GEARS] {
    let mut evidence = [GearEvidence::NONE; MAX_LIVE_GEARS];
    for (ids, seen) in [(slips, GearEvidence::SLIPS), (holds, GearEvidence::HOLDS)] {
        for id in ids {
            evidence[named.gears.iter().position(|gear| gear == id).unwrap()] = seen;
        }
    }
    evidence
}

fn weighed(named: &NamedLiveUnit, slips: &[&str], holds: &[&str]) -> LiveSuspects {
    named.unit.plan().unwrap().weigh_suspects(&evidence(named, slips, holds))
}

fn names<'a>(named: &'a NamedLiveUnit, found: &LiveSuspects) -> Vec<&'a str> {
    found.ranked().iter().map(|suspect| named.elements[usize::from(suspect.element)].as_str()).collect()
}

fn next<'a>(named: &'a NamedLiveUnit, found: &LiveSuspects) -> &'a str {
    usize::try_from(found.next_gear).map_or("none", |place| &named.gears[place])
}

/// The unit of a row: number : ratio : element / factor + ..., gear by gear.
fn unit(row: &Row) -> LiveUnit {
    let sensor = SpeedSensor::bus(0.5, 0.9, 0.1, 8000.0).unwrap();
    let mut unit = LiveUnit {
        gears: [LiveGear::NONE; MAX_LIVE_GEARS],
        gear_count: 0,
        elements: [LiveElement::UNKNOWN; MAX_LIVE_ELEMENTS],
        element_count: 0,
        input: sensor,
        output: sensor,
        engine: sensor,
        limits: limits(),
        sample_s: 0.01,
    };
    for (text, gear) in row.text("unit").split(' ').zip(&mut unit.gears) {
        let [number, ratio, suspects] = text.split(':').collect::<Vec<_>>()[..] else { panic!("{text}") };
        *gear = LiveGear::new(number.parse().unwrap(), ratio.parse().unwrap());
        for (text, suspect) in suspects.split('+').zip(&mut gear.suspects) {
            let (element, factor) = text.split_once('/').unwrap();
            let (element, slip_per_input_slip) = (element.parse().unwrap(), factor.parse().unwrap());
            *suspect = LiveSuspect { element, slip_per_input_slip };
            gear.suspect_count += 1;
            unit.element_count = unit.element_count.max(element + 1);
        }
        unit.gear_count += 1;
    }
    unit
}

#[test]
fn derived_values() {
    vectors("live_add_slip", |row| {
        let number = |name| row.number(name) as f32;
        let mut evidence = GearEvidence { forward: number("forward"), backward: number("backward") };
        evidence.add_slip(number("slip"), number("wanted"));
        Ok([evidence.forward, evidence.backward].map(f64::from))
    });
    vectors("live_weigh_suspects", |row| {
        let mut evidence = [GearEvidence::NONE; MAX_LIVE_GEARS];
        for text in row.text("seen").split(' ') {
            let [place, forward, backward] = text.split(':').collect::<Vec<_>>()[..] else { panic!("{text}") };
            evidence[place.parse::<usize>().unwrap()] =
                GearEvidence { forward: forward.parse().unwrap(), backward: backward.parse().unwrap() };
        }
        let found = unit(row).plan()?.weigh_suspects(&evidence);
        let [first, second, ..] = found.suspects;
        let odds = [first.ln_odds, second.ln_odds, found.sensors_ln_odds, found.next_bit].map(f64::from);
        let (count, next) = (f64::from(found.count), f64::from(found.next_gear));
        Ok([first.element.into(), odds[0], second.element.into(), odds[1], count, odds[2], next, odds[3]])
    });
}

/// Job J6 of the demonstration, and step 14 of its job: slip in fourth leaves B1, C1 and C3; 3 and 5 tell.
#[test]
fn job_j6() {
    let named = wren();
    let fourth = weighed(&named, &["4"], &[]);
    let mut leading = names(&named, &fourth)[..3].to_vec();
    leading.sort_unstable();
    assert_eq!(leading, ["B1", "C1", "C3"], "{fourth:?}");
    let [first, second, third, fourth_placed] = [0, 1, 2, 3].map(|k| fourth.ranked()[k].ln_odds);
    assert!(first - third < 0.01 && second - third < 0.01, "one gear does not tell them apart: {fourth:?}");
    assert!(third - fourth_placed > 4.0, "what is open in fourth is no suspect: {fourth:?}");
    assert!(["3", "5"].contains(&next(&named, &fourth)), "{}", next(&named, &fourth));

    for (slips, holds, element) in
        [(&["4", "3"][..], &["5"][..], "C1"), (&["4", "5"], &["3"], "C3"), (&["4", "3", "5"], &[], "B1")]
    {
        let found = weighed(&named, slips, holds);
        assert_eq!(names(&named, &found)[0], element, "slips in {slips:?}, holds in {holds:?}: {found:?}");
        assert!(found.ranked()[0].ln_odds > 0.5 && found.sensors_ln_odds < -1.0, "{found:?}");
    }
    // Fifth puts half of fourth's torque on B1: that it holds there speaks against B1, but not for certain. First would tell.
    let unsure = weighed(&named, &["4", "3"], &["5"]);
    assert_eq!(names(&named, &unsure)[1], "B1");
    assert!(unsure.ranked()[0].ln_odds < 1.0 && next(&named, &unsure) == "1", "{unsure:?}");
    let sure = weighed(&named, &["4", "3"], &["5", "1"]);
    assert!(names(&named, &sure)[0] == "C1" && sure.ranked()[0].ln_odds > 2.0, "{sure:?}");
}

#[test]
fn nothing_slips_nothing_is_suspected() {
    let named = wren();
    for found in [weighed(&named, &[], &[]), weighed(&named, &[], &["1", "2", "3", "4", "5", "6", "7", "8"])] {
        assert_eq!((found.count, found.next_gear, found.next_bit), (0, -1, 0.0));
    }
}

/// Slip in every gear, or slip that no element can do, is a sensor.
#[test]
fn sensors_are_a_hypothesis_of_their_own() {
    let named = wren();
    let all = weighed(&named, &["1", "2", "3", "4", "5", "6", "7", "8"], &[]);
    assert!(all.sensors_ln_odds > 3.0, "{all:?}");
    let mut behind = [GearEvidence::NONE; MAX_LIVE_GEARS];
    for place in [2, 3] {
        behind[place] = GearEvidence { forward: GearEvidence::HOLDS.forward, backward: GearEvidence::SLIPS.forward };
    }
    let found = named.unit.plan().unwrap().weigh_suspects(&behind);
    assert!(found.sensors_ln_odds > 3.0, "{found:?}");
    let one = weighed(&named, &["4"], &[]);
    assert!(one.sensors_ln_odds < -2.0, "one gear alone speaks for an element: {one:?}");
}

/// Each element of the unit, slipping wherever it holds: tried gear after gear as the answer names them, it is found.
#[test]
fn following_the_next_gear_finds_the_element() {
    let named = wren();
    let plan = named.unit.plan().unwrap();
    for (number, element) in (0_u8..).zip(&named.elements) {
        let holds = |place: usize| {
            let gear = named.unit.gears[place];
            gear.suspects[..usize::from(gear.suspect_count)].iter().any(|suspect| suspect.element == number)
        };
        let gears = named.gears.len();
        let Some(start) = (0..gears).find(|&place| holds(place)) else {
            assert!(element == "F1", "{element} holds no gear of the unit");
            continue;
        };
        let mut evidence = [GearEvidence::NONE; MAX_LIVE_GEARS];
        let (mut place, mut tried) = (start, 0);
        let found = loop {
            evidence[place] = if holds(place) { GearEvidence::SLIPS } else { GearEvidence::HOLDS };
            tried += 1;
            let found = plan.weigh_suspects(&evidence);
            match usize::try_from(found.next_gear) {
                Ok(next) if tried < gears => place = next,
                _ => break found,
            }
        };
        let alike = |other: u8| {
            (0..gears).all(|place| {
                let gear = named.unit.gears[place];
                let has = |n| gear.suspects[..usize::from(gear.suspect_count)].iter().any(|s| s.element == n);
                has(number) == has(other)
            })
        };
        let first = found.ranked()[0].element;
        assert!(alike(first), "{element} from gear {}: {:?} after {tried}", named.gears[start], names(&named, &found));
        assert!(tried <= 6, "{element}: {tried} gears");
    }
}

/// Values one after the other: slip of two standard deviations is seen, none is seen, a glitch of a thousand is not.
#[test]
fn evidence_gathers_from_samples() {
    let mut random = Random(3);
    let mut normal = move || (0..12).map(|_| random.unit()).sum::<f64>() as f32 - 6.0;
    let (mut slipping, mut clean) = (GearEvidence::NONE, GearEvidence::NONE);
    for _ in 0..100 {
        slipping.add_slip(2.0 + normal(), 1.0);
        clean.add_slip(normal(), 1.0);
    }
    assert_eq!(slipping, GearEvidence::SLIPS);
    assert!(clean.forward < -2.4 && clean.backward < -2.4, "{clean:?}");
    let before = clean;
    clean.add_slip(1000.0, 1.0);
    assert!(clean.forward <= before.forward + 1.0);
    clean.add_slip(f32::NAN, 1.0);
    clean.add_slip(1.0, f32::INFINITY);
    assert!(clean.forward.is_finite() && clean.backward.is_finite());
}

static WREN: std::sync::OnceLock<NamedLiveUnit> = std::sync::OnceLock::new();

proptest! {
    /// Any evidence gives ordered suspects, each once, and a gear that exists or none.
    #[test]
    fn any_evidence_has_an_answer(values in prop::array::uniform24(-7.0_f32..7.0)) {
        let named = WREN.get_or_init(wren);
        let mut evidence = [GearEvidence::NONE; MAX_LIVE_GEARS];
        for (slot, pair) in evidence.iter_mut().zip(values.chunks(2)) {
            *slot = GearEvidence { forward: pair[0], backward: pair[1] };
        }
        let found = named.unit.plan().unwrap().weigh_suspects(&evidence);
        let ranked = found.ranked();
        prop_assert!(ranked.is_sorted_by(|a, b| a.ln_odds >= b.ln_odds), "{found:?}");
        prop_assert!(ranked.iter().all(|s| !s.ln_odds.is_nan() && usize::from(s.element) < named.elements.len()));
        prop_assert!((-1..named.unit.gear_count as i8).contains(&found.next_gear) && (0.0..=1.0).contains(&found.next_bit));
    }
}
