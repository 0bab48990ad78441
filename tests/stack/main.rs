//! The stack chapter against its sources, the demonstration family, its properties and wrong inputs.

#[path = "../support/mod.rs"]
mod support;

mod random;
mod vectors;

use proptest::prelude::*;
use support::{Row, vectors};
use trainwright::Error;
use trainwright::clutch::Annulus;
use trainwright::fit::Spread;
use trainwright::judge::{Input, Limits, Reading, Rule, combine, judge};
use trainwright::record::{Family, Record};
use trainwright::stack::{
    AxialGrowth, ChainLink, ChoiceRule, PackHeights, Piece, PistonStroke, Selection, apply_fill, chain, mean_of_steps,
    room_from_fitted, what_to_measure,
};

fn chances() -> Rule {
    Rule::stated_chances(0.95, 0.05).unwrap()
}

#[test]
fn rules_print_their_words() {
    assert_eq!(ChoiceRule::NearestTarget.to_string(), "nearest target");
    assert_eq!(ChoiceRule::LeastRisk.to_string(), "least risk");
}

fn family(text: &str) -> Family {
    Family::from_toml("family.toml", text).unwrap()
}

const DEMO: &str = include_str!("../../python/trainwright/demo/family.toml");

#[test]
fn the_record_gives_shims_rings_and_growth() {
    let demo = family(DEMO);
    let shims = demo.shims().unwrap();
    assert_eq!((shims.pieces.len(), shims.target_mm, shims.window_mm), (9, 0.36, Limits { lower: 0.20, upper: 0.60 }));
    assert!(shims.pieces.iter().all(|piece| piece.in_stock && piece.thickness_mm.u == 0.012));
    let rings = demo.rings("B1").unwrap();
    assert_eq!((rings.pieces.len(), rings.target_mm), (6, 1.70)); // the middle of 1.40 to 2.00
    assert_eq!(demo.rings("C1").unwrap().pieces[0].thickness_mm, Reading { value: 1.80, u: 0.015 });
    assert_eq!(demo.elements_with_rings(), ["B1", "C1"]);
    let hot = demo.hot_play().unwrap();
    let soaked = Reading { value: 0.0, u: 0.0 };
    let growth = hot.growth.grown(Reading { value: hot.temp_c, u: 0.0 }, soaked).unwrap();
    assert!((growth.growth_mm.value - 0.249_55).abs() < 1e-9);
    assert_eq!(hot.window_mm.upper, f64::INFINITY); // the record states no window for the warm unit
    let stroke = demo.stroke("B1", Reading { value: 1.77, u: 0.024 }, None).unwrap();
    assert_eq!((stroke.land_mm.value, stroke.wave_mm.value, stroke.bend_mm.value), (3.6, 0.35, 0.10));
    assert_eq!(demo.stroke("B1", soaked, Some(soaked)).unwrap().bend_mm, soaked);
}

#[test]
fn what_the_record_lacks_is_named() {
    let demo = family(DEMO);
    let missing = |result: Result<(), Error>| result.map_err(|error| (error.kind(), error.parameter()));
    assert_eq!(missing(demo.rings("C2").map(|_| ())), Err(("MISSING", "element")));
    let soaked = Reading { value: 0.0, u: 0.0 };
    assert_eq!(missing(demo.stroke("C1", soaked, None).map(|_| ())), Err(("MISSING", "seal_land_mm")));
    let table = DEMO.find("[selective]").unwrap();
    let rest = DEMO.find("[fatigue]").unwrap();
    let without = family(&format!("{}{}", &DEMO[..table], &DEMO[rest..]));
    assert_eq!(missing(without.shims().map(|_| ())), Err(("MISSING", "selective")));
    assert!(without.elements_with_rings().is_empty() && without.hot_play().is_none());
}

#[test]
fn a_record_with_nothing_but_the_first_keys_is_accepted_as_it_was() {
    let hot = DEMO.find("[selective.ring.C1]").unwrap();
    let rest = DEMO.find("[fatigue]").unwrap();
    let text = format!("{}{}", &DEMO[..hot], &DEMO[rest..])
        .replace("wave_mm = [0.30, 0.40]\nbend_mm = [0.06, 0.14]\nseal_land_mm = [3.50, 3.70]\n", "");
    let first = family(&text);
    assert_eq!(first.rings("B1"), family(DEMO).rings("B1"));
    let long = text.replace(
        "ring_b1_mm = [2.40, 2.65, 2.90, 3.15, 3.40, 3.65]\nring_u_mm = 0.015\n",
        "[selective.ring.B1]\nthickness_mm = [2.40, 2.65, 2.90, 3.15, 3.40, 3.65]\nu_mm = 0.015\n",
    );
    assert_eq!(family(&long).rings("B1"), first.rings("B1"));
}
