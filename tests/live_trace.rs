//! The trace of the demonstration against what was put into it.

use trainwright::live::*;

#[path = "support/live.rs"]
#[allow(dead_code)]
mod support;

use support::{run, trace, wren};

#[test]
fn print_events() {
    let named = wren();
    let (events, _, state) = run(&named.unit, &trace());
    let name = |place: i8| usize::try_from(place).ok().map_or("-", |place| &named.gears[place]);
    for event in &events {
        println!(
            "{:9.3} {:9.3} {:14} {:>2} {:>2} {:?} {:03b} {:.4} {:.4}",
            event.at_us as f64 * 1e-6,
            event.found_us as f64 * 1e-6,
            event.kind.name(),
            name(event.gear),
            name(event.other_gear),
            event.speed,
            event.suspects,
            event.value,
            event.u
        );
    }
    println!("{state:?}");
}

/// Job J6 of the demonstration: wren in fourth, 2140 in, 1176 out.
#[test]
fn slip_of_each_element_in_fourth() {
    let named = wren();
    let place = named.gears.iter().position(|gear| gear == "4").unwrap();
    let gear = named.unit.gears[place];
    let slip = 2140.0 - gear.ratio * 1176.0;
    assert!((slip - 74.1).abs() < 0.06, "{slip}");
    let of = |element: &str| {
        let number = named.elements.iter().position(|name| name == element).unwrap() as u8;
        let suspect = gear.suspects.iter().find(|suspect| suspect.element == number).unwrap();
        suspect.slip_per_input_slip * slip
    };
    // Answer of the job, to its last digit; the signs by the definition of the slip, first member less second.
    for (element, rpm) in [("B1", 97.9), ("C1", 152.2), ("C3", 315.7)] {
        assert!((of(element).abs() - rpm).abs() < 0.06, "{element}: {}", of(element));
    }
    assert!(of("C1") < 0.0, "{}", of("C1"));
}

/// The slip of the trace: C1, C2 or C3 in sixth, C1 turning 2.00617 times as fast as the input slips.
#[test]
fn slip_of_c1_in_sixth() {
    let named = wren();
    let place = named.gears.iter().position(|gear| gear == "6").unwrap();
    let gear = named.unit.gears[place];
    let names: Vec<&str> = gear.suspects[..usize::from(gear.suspect_count)]
        .iter()
        .map(|suspect| named.elements[usize::from(suspect.element)].as_str())
        .collect();
    assert_eq!(names, ["C1", "C2", "C3"]);
    assert!((gear.suspects[0].slip_per_input_slip.abs() - 2.00617).abs() < 5e-6);
    assert_eq!(named.gears, ["1", "2", "3", "4", "5", "6", "7", "8", "R"]);
}
