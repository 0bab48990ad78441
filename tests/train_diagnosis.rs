//! Failure signatures of the demonstration train, and back from complaints to elements.

use proptest::prelude::*;
use std::fs;
use trainwright::judge::Reading;
use trainwright::record::{Family, NamedTrain, Record};
use trainwright::train::*;

fn wren() -> NamedTrain {
    let path = format!("{}/python/trainwright/demo/family.toml", env!("CARGO_MANIFEST_DIR"));
    Family::from_toml("family.toml", &fs::read_to_string(path).unwrap()).unwrap().train("wren").unwrap()
}

fn commanded(named: &NamedTrain, id: &str) -> Commanded {
    let gear = named.gear(id).unwrap();
    Commanded { closed: gear.closed, one_way: gear.one_way }
}

fn gears(named: &NamedTrain) -> Vec<Commanded> {
    named.gears.iter().map(|gear| commanded(named, &gear.id)).collect()
}

fn fault(named: &NamedTrain, element: &str, failure: Failure) -> ElementFault {
    ElementFault { element: named.elements.iter().position(|name| name == element).unwrap() as u8, failure }
}

fn ids(named: &NamedTrain, mask: u32) -> Vec<&str> {
    named
        .gears
        .iter()
        .enumerate()
        .filter(|(place, _)| mask & (1 << place) != 0)
        .map(|(_, gear)| gear.id.as_str())
        .collect()
}

/// `dead/*` of the demonstration's expected answers.
#[test]
fn a_dead_element_loses_these_gears() {
    let named = wren();
    for (element, lost) in [
        ("B1", vec!["1", "1B", "2", "2B", "3", "4", "5", "R"]),
        ("B2", vec!["1B", "2B", "7", "8", "R"]),
        ("C1", vec!["2", "2B", "3", "4", "6", "8"]),
        ("C2", vec!["1", "1B", "3", "5", "6", "7"]),
        ("C3", vec!["4", "5", "6", "7", "8", "R"]),
        ("F1", vec!["1", "2"]),
    ] {
        let signature = named.train.signature(&gears(&named), fault(&named, element, Failure::Dead)).unwrap();
        assert_eq!(ids(&named, signature.lost()), lost, "{element}");
    }
    let b2 = named.train.signature(&gears(&named), fault(&named, "B2", Failure::Dead)).unwrap();
    assert_eq!(ids(&named, b2.no_braking), ["1B", "2B"], "they still drive, on F1");
    assert_eq!(ids(&named, b2.no_drive), ["7", "8", "R"]);
}

/// `stuck/*` of the demonstration's expected answers.
#[test]
fn a_stuck_element_shows_these_ratios() {
    let named = wren();
    let tie = "tie-up";
    for (element, shown) in [
        ("B1", ["4.2521", "3.2045", "2.2952", "1.7568", "1.3830", tie, tie, tie, "-2.9670"]),
        ("B2", ["4.2521", "3.2045", tie, tie, tie, tie, "0.8596", "0.7517", "-2.9670"]),
        ("C1", ["2.2952", "3.2045", "2.2952", "1.7568", tie, "1.0000", tie, "0.7517", tie]),
        ("C2", ["4.2521", "2.2952", "2.2952", tie, "1.3830", "1.0000", "0.8596", tie, tie]),
        ("C3", ["1.3830", "1.7568", tie, "1.7568", "1.3830", "1.0000", "0.8596", "0.7517", "-2.9670"]),
    ] {
        for (id, shown) in ["1", "2", "3", "4", "5", "6", "7", "8", "R"].into_iter().zip(shown) {
            let symptom = named.train.symptom(commanded(&named, id), fault(&named, element, Failure::Stuck)).unwrap();
            let text = symptom.ratio.value().map_or(tie.to_string(), |ratio| format!("{ratio:.4}"));
            assert_eq!(text, shown, "{element} stuck, gear {id}: {symptom:?}");
            if shown == tie {
                assert_eq!(
                    (symptom.drive, symptom.kind),
                    (Response::TiedUp, StateKind::TiedUp),
                    "{element}, gear {id}"
                );
            }
        }
    }
    let b2 = named.train.signature(&gears(&named), fault(&named, "B2", Failure::Stuck)).unwrap();
    assert_eq!(ids(&named, b2.brakes), ["1", "2"], "coasting in 1 and 2 becomes engine braking");
}

/// Neutral with C2 and C3 applied waits for one more element: a stuck B1 makes fifth of it.
#[test]
fn a_stuck_brake_makes_neutral_creep() {
    let named = wren();
    let neutral = Commanded { closed: named.mask(["C2", "C3"]).unwrap(), one_way: 0 };
    let creep = |element| named.train.symptom(neutral, fault(&named, element, Failure::Stuck)).unwrap();
    assert_eq!(creep("B1").drive, Response::Drives);
    assert_eq!(format!("{:.4}", creep("B1").ratio.value().unwrap()), "1.3830");
    assert_eq!(named.train.signature(&[neutral], fault(&named, "B1", Failure::Stuck)).unwrap().creeps, 1);
    assert_eq!(named.train.symptom(neutral, fault(&named, "C1", Failure::Dead)).unwrap().drive, Response::AsCommanded);
}

fn seen(named: &NamedTrain, id: &str, seen: Response) -> Observation {
    Observation { commanded: commanded(named, id), load: Load::Drive, seen, ratio: Reading { value: 0.0, u: 0.0 } }
}

#[test]
fn complaints_lead_back_to_the_element() {
    let named = wren();
    let no_drive = |ids: &[&str]| -> Vec<_> { ids.iter().map(|id| seen(&named, id, Response::NoDrive)).collect() };
    let right = |ids: &[&str]| -> Vec<_> { ids.iter().map(|id| seen(&named, id, Response::AsCommanded)).collect() };

    // Without C1 third falls back on F1 and drives with first's ratio.
    let third = Observation { ratio: Reading { value: 4.252, u: 0.001 }, ..seen(&named, "3", Response::OtherRatio) };
    let lost = [no_drive(&["2", "4", "6", "8"]), right(&["1", "5", "7", "R"]), vec![third]].concat();
    let first = named.train.diagnose(&lost).unwrap().ranked()[0];
    assert_eq!(first.fault, fault(&named, "C1", Failure::Dead));
    assert_eq!((first.rank, first.matched, first.missed, first.contradicted, first.agreed), (1, 5, 0, 0, 4));

    // Fifth without drive does not tell B1 and C2 apart (without C3 it would show first's ratio); the next gear to try does.
    let vague = named.train.diagnose(&no_drive(&["5"])).unwrap();
    let leading: Vec<_> =
        vague.ranked().iter().filter(|suspect| suspect.rank == 1).map(|suspect| suspect.fault).collect();
    assert_eq!(leading, ["B1", "C2"].map(|name| fault(&named, name, Failure::Dead)));
    let c3 = named.train.symptom(commanded(&named, "5"), fault(&named, "C3", Failure::Dead)).unwrap();
    assert_eq!(format!("{:.4}", c3.ratio.value().unwrap()), "4.2521");
    let tell = named.train.gears_that_tell_faults(&gears(&named), leading[0], leading[1]).unwrap();
    assert_eq!(
        ids(&named, tell),
        ["2", "2B", "3", "4", "5", "6", "7", "R"],
        "fifth tells by coasting: F1 catches at seventh"
    );

    // First shows fifth's ratio: only C3 stuck, and the measured ratio speaks against C1 stuck, which shows third's.
    let odd = Observation { ratio: Reading { value: 1.3832, u: 0.0002 }, ..seen(&named, "1", Response::OtherRatio) };
    let found = named.train.diagnose(&[odd]).unwrap();
    assert_eq!(found.ranked().len(), 1, "{:?}", found.ranked());
    assert_eq!(found.ranked()[0].fault, fault(&named, "C3", Failure::Stuck));
    let unmeasured = named.train.diagnose(&[seen(&named, "1", Response::OtherRatio)]).unwrap();
    assert_eq!(unmeasured.ranked().len(), 2);
}

fn rank_one(named: &NamedTrain, observations: &[Observation]) -> Vec<ElementFault> {
    let found = named.train.diagnose(observations).unwrap();
    found.ranked().iter().filter(|suspect| suspect.rank == 1).map(|suspect| suspect.fault).collect()
}

/// The gear by its name, and what each suspect shows there under the load that was named.
fn next(named: &NamedTrain, tried: &[&str], suspects: &[ElementFault]) -> (String, NextGear, Vec<Response>) {
    let place = |id: &str| named.gears.iter().position(|gear| gear.id == id).unwrap();
    let drive = tried.iter().fold(0, |mask, id| mask | 1 << place(id));
    let found = named.train.next_gear(&gears(named), TriedGears { drive, coast: 0 }, suspects).unwrap();
    let gear = &named.gears[found.gear as usize].id;
    let shown = suspects.iter().map(|&suspect| {
        let symptom = named.train.symptom(commanded(named, gear), suspect).unwrap();
        if found.load == Load::Drive { symptom.drive } else { symptom.coast }
    });
    (gear.clone(), found, shown.collect())
}

/// Lost gears of step 13: B1 1 to 5 and R, C2 1, 3, 5, 6, 7. Of the two, second asks B1 alone.
#[test]
fn the_next_gear_tells_the_suspects_apart() {
    let named = wren();
    let suspects = rank_one(&named, &[seen(&named, "5", Response::NoDrive)]);
    let (gear, found, shown) = next(&named, &["5"], &suspects);
    assert_eq!((gear.as_str(), found.load, found.outcomes, found.tie_ups), ("2", Load::Drive, 2, 0));
    assert!((found.information_bit - 1.0).abs() < 1e-12);
    assert_eq!(shown, [Response::NoDrive, Response::AsCommanded], "B1 and C2");

    // Fourth without drive: B1 and C1 (without C3 it would drive, on F1). Second loses both, fifth B1 alone.
    let suspects = rank_one(&named, &[seen(&named, "4", Response::NoDrive)]);
    assert!(suspects.contains(&fault(&named, "B1", Failure::Dead)), "{suspects:?}");
    let (_, _, shown) = next(&named, &["4"], &suspects);
    assert_ne!(shown[0], shown[1]);
}

/// Followed from any gear that a fault spoils, what is named next leads to it, or to what no gear tells from it.
#[test]
fn following_the_next_gear_leads_to_the_fault() {
    let named = wren();
    let list = gears(&named);
    let mut most = 0;
    for element in 0..6 {
        for failure in [Failure::Dead, Failure::Stuck] {
            let truth = ElementFault { element, failure };
            let look = |place: usize, load: Load| {
                let symptom = named.train.symptom(list[place], truth).unwrap();
                let drive = load == Load::Drive;
                let value = if drive { symptom.ratio.value().unwrap_or(0.0) } else { 0.0 };
                let seen = if drive { symptom.drive } else { symptom.coast };
                Observation { commanded: list[place], load, seen, ratio: Reading { value, u: 0.0 } }
            };
            let Some(start) = (0..list.len()).find(|&place| look(place, Load::Drive).seen != Response::AsCommanded)
            else {
                continue;
            };
            let mut observations = vec![look(start, Load::Drive)];
            let mut tried = TriedGears { drive: 1 << start, coast: 0 };
            loop {
                let suspects = rank_one(&named, &observations);
                assert!(suspects.contains(&truth), "{truth:?} lost after {observations:?}");
                if suspects.len() == 1 {
                    break;
                }
                let Ok(next) = named.train.next_gear(&list, tried, &suspects) else {
                    let tell = suspects[1..]
                        .iter()
                        .filter(|&&other| named.train.gears_that_tell_faults(&list, suspects[0], other).unwrap() != 0);
                    assert_eq!(tell.count(), 0, "{truth:?}: a gear was left");
                    break;
                };
                *(if next.load == Load::Drive { &mut tried.drive } else { &mut tried.coast }) |= 1 << next.gear;
                observations.push(look(next.gear as usize, next.load));
            }
            most = most.max(observations.len());
        }
    }
    assert!(most <= 5, "{most} gears for one of the faults");
}

#[test]
fn gears_that_would_tie_up_come_last() {
    let named = wren();
    // First shows another ratio: C1 or C3 stuck. Gears that tie up with either: 5, 7, R and 3.
    let suspects = [fault(&named, "C1", Failure::Stuck), fault(&named, "C3", Failure::Stuck)];
    let (gear, found, _) = next(&named, &[], &suspects);
    assert_eq!((gear.as_str(), found.tie_ups, found.load), ("1", 0, Load::Drive));
    // With the harmless gears tried in drive and in coast, a gear that ties up is named, and how many tie it up.
    let harmless = |mask: u32, (place, id): (usize, &str)| match id {
        "3" | "5" | "7" | "R" => mask,
        _ => mask | 1 << place,
    };
    let mask = named.gears.iter().map(|gear| gear.id.as_str()).enumerate().fold(0, harmless);
    let tried = TriedGears { drive: mask, coast: mask };
    let found = named.train.next_gear(&gears(&named), tried, &suspects).unwrap();
    assert_eq!((named.gears[found.gear as usize].id.as_str(), found.tie_ups), ("3", 1));
}

/// C1 dead: third falls back on F1 and shows first's ratio.
#[test]
fn a_measured_ratio_says_what_was_seen() {
    let named = wren();
    let seen = |value, u| named.train.seen_ratio(commanded(&named, "3"), Reading { value, u }).unwrap();
    assert_eq!(seen(4.252, 0.001).seen, Response::OtherRatio);
    assert_eq!(seen(2.294, 0.001).seen, Response::AsCommanded);
    let first = named.train.diagnose(&[seen(4.252, 0.001)]).unwrap().ranked()[0];
    assert_eq!(first.fault, fault(&named, "C1", Failure::Dead));
    let neutral = Commanded { closed: named.mask(["C2", "C3"]).unwrap(), one_way: 0 };
    let none = named.train.seen_ratio(neutral, Reading { value: 1.0, u: 0.1 });
    assert_eq!(none.map_err(|e| e.kind()), Err("MISSING"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]
    /// What a fault does to every gear in drive and in coast leads back to it: nothing else explains it better.
    #[test]
    fn a_full_signature_leads_back_to_its_fault(element in 0_u8..6, stuck in any::<bool>()) {
        let named = wren();
        let failure = if stuck { Failure::Stuck } else { Failure::Dead };
        let fault = ElementFault { element, failure };
        let mut all = Vec::new();
        for commanded in gears(&named) {
            let symptom = named.train.symptom(commanded, fault).unwrap();
            for (load, seen) in [(Load::Drive, symptom.drive), (Load::Coast, symptom.coast)] {
                let value = if load == Load::Drive { symptom.ratio.value().unwrap_or(0.0) } else { 0.0 };
                all.push(Observation { commanded, load, seen, ratio: Reading { value, u: 0.0 } });
            }
        }
        let diagnosis = named.train.diagnose(&all).unwrap();
        let own = diagnosis.ranked().iter().find(|suspect| suspect.fault == fault).unwrap();
        prop_assert_eq!((own.rank, own.missed, own.contradicted), (1, 0, 0));
    }
}

#[test]
fn wrong_inputs_are_refused() {
    let named = wren();
    let first = commanded(&named, "1");
    let nobody = ElementFault { element: 6, failure: Failure::Dead };
    assert_eq!(named.train.symptom(first, nobody).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
    let b1 = fault(&named, "B1", Failure::Dead);
    assert_eq!(named.train.signature(&[first; 33], b1).map_err(|e| e.kind()), Err("COUNT"));
    assert_eq!(named.train.diagnose(&[]).map_err(|e| e.kind()), Err("COUNT"));
    let unloaded = Observation { load: Load::None, ..seen(&named, "1", Response::NoDrive) };
    assert_eq!(named.train.diagnose(&[unloaded]).map_err(|e| e.kind()), Err("INCONSISTENT"));
    let nan = Observation { ratio: Reading { value: f64::NAN, u: 0.0 }, ..seen(&named, "1", Response::NoDrive) };
    assert_eq!(named.train.diagnose(&[nan]).map_err(|e| e.kind()), Err("NOT_FINITE"));
    let next = |gears: &[Commanded], drive, coast, suspects: &[ElementFault]| {
        named.train.next_gear(gears, TriedGears { drive, coast }, suspects).map_err(|e| e.kind())
    };
    let c2 = fault(&named, "C2", Failure::Dead);
    assert_eq!(next(&[first], 0, 0, &[b1]), Err("COUNT"));
    assert_eq!(next(&[first], 0, 0, &[b1; MAX_SUSPECTS + 1]), Err("COUNT"));
    assert_eq!(next(&[first; 33], 0, 0, &[b1, c2]), Err("COUNT"));
    assert_eq!(next(&[first], 0, 0, &[b1, nobody]), Err("OUT_OF_RANGE"));
    assert_eq!(next(&[], 0, 0, &[b1, c2]), Err("NO_ANSWER"));
    assert_eq!(next(&[commanded(&named, "2")], 1, 1, &[b1, c2]), Err("NO_ANSWER"));
    let junk = Commanded { closed: u32::MAX, one_way: 0 };
    assert_eq!(named.train.symptom(junk, b1).map_err(|e| e.kind()), Err("INCONSISTENT"));
}
