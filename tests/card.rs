//! Every card is complete, and every work of the bibliography is used.

use proptest::prelude::*;
use std::collections::BTreeSet;
use trainwright::card::{self, BIBLIOGRAPHY, NamedValue, Value, explain};

#[test]
fn ids_are_unique_and_name_chapter_and_function() {
    let (mut seen, mut unknown) = (BTreeSet::new(), Vec::new());
    for card in card::all() {
        let (chapter, function) =
            card.id.split_once('.').unwrap_or_else(|| panic!("{}: not chapter.function", card.id));
        let core = format!("{}/core/{chapter}", env!("CARGO_MANIFEST_DIR"));
        assert!(std::path::Path::new(&format!("{core}.rs")).exists(), "{}: no chapter {chapter}", card.id);
        if !defines(&core, function) {
            unknown.push(card.id);
        }
        assert!(seen.insert(card.id), "{}: twice", card.id);
        assert_eq!(card::find(card.id), Some(card));
    }
    assert!(!seen.is_empty());
    assert!(unknown.is_empty(), "no such functions: {unknown:?}");
    assert_eq!(card::find("no.such_card"), None);
}

/// Whether `core/<chapter>.rs` or a file of its folder defines this function.
fn defines(core: &str, function: &str) -> bool {
    let (text, definition) = (sources(core), format!("fn {function}"));
    text.match_indices(&definition).any(|(at, _)| {
        let next = text[at + definition.len()..].chars().next();
        !next.is_some_and(|letter| letter.is_alphanumeric() || letter == '_')
    })
}

/// Everything in `core/<chapter>.rs` and the files of its folder.
fn sources(core: &str) -> String {
    fn below(folder: &std::path::Path) -> String {
        let entries = std::fs::read_dir(folder).into_iter().flatten().map(|entry| entry.unwrap().path());
        entries.map(|path| if path.is_dir() { below(&path) } else { std::fs::read_to_string(path).unwrap() }).collect()
    }
    std::fs::read_to_string(format!("{core}.rs")).unwrap() + &below(std::path::Path::new(core))
}

#[test]
fn no_field_is_empty() {
    let mut empty = Vec::new();
    for card in card::all() {
        let symbols = card.symbols.iter().flat_map(|symbol| [symbol.symbol, symbol.meaning, symbol.unit]);
        let texts = [card.purpose, card.equation, card.range, card.locator].into_iter().chain(symbols);
        if card.symbols.is_empty() || texts.into_iter().any(|text| text.trim().is_empty()) {
            empty.push(card.id);
        }
    }
    assert!(empty.is_empty(), "{empty:?}");
}

#[test]
fn symbols_stand_in_their_equation() {
    let mut foreign = Vec::new();
    for card in card::all() {
        for symbol in card.symbols.iter().flat_map(|symbol| symbol.symbol.split(", ")) {
            if !card.equation.contains(symbol) {
                foreign.push(format!("{}: {symbol}", card.id));
            }
        }
    }
    assert!(foreign.is_empty(), "{foreign:#?}");
}

#[test]
fn every_source_is_in_the_bibliography_and_every_work_is_used() {
    let works: BTreeSet<_> = BIBLIOGRAPHY.iter().map(|source| source.id).collect();
    assert_eq!(works.len(), BIBLIOGRAPHY.len(), "two works share an id");
    let cited: BTreeSet<_> = card::all().map(|card| card.source.id).collect();
    assert_eq!(cited.difference(&works).count(), 0, "cited, but not in the bibliography");
    let unused: Vec<_> = works.difference(&cited).collect();
    assert!(unused.is_empty(), "in the bibliography, but on no card: {unused:?}");
    assert!(BIBLIOGRAPHY.iter().all(|source| !source.work.trim().is_empty()));
}

#[test]
fn a_card_prints_everything_it_holds() {
    let card = card::find("fluid.volume_correction").unwrap();
    let text = card.to_string();
    for part in [card.id, card.purpose, card.equation, card.range, card.source.work, card.locator] {
        assert!(text.contains(part), "{part} is missing in\n{text}");
    }
    assert!(card.symbols.iter().all(|symbol| text.contains(symbol.meaning)));
}

// ---- the worked explanation

fn numbers(values: &[(&'static str, f64)]) -> Vec<NamedValue<'static>> {
    values.iter().map(|&(name, value)| NamedValue { name, value: Value::Number(value) }).collect()
}

fn written(write: impl FnOnce(&mut String) -> std::fmt::Result) -> String {
    let mut text = String::new();
    write(&mut text).unwrap();
    text
}

#[test]
fn an_explanation_can_be_read_out() {
    let values = numbers(&[
        ("capacity.torque_nm", 821.232_1),
        ("capacity.friction", 0.112),
        ("capacity.faces", 8.0),
        ("capacity.net_force_n", 13_558.056),
        ("capacity.mean_radius_mm", 67.602),
        ("pressure_kpa.value", 1470.0),
        ("pressure_kpa.u", 23.094),
        ("capacity.piston_area_mm2", 10_093.9),
        ("capacity.head_force_n", 0.0),
        ("capacity.dam_force_n", 0.0),
        ("capacity.return_spring_n", 1280.0),
        ("capacity.lining_mean_mpa", 1.463_93),
        ("judgment.chance", 0.7),
    ]);
    let expected = "\
clutch.capacity: Torque that a pack can hold or transmit

  T = μ z F r_m, F = p A + F_head − F_dam − F_spring − F_seal, A = π (R_o² − R_i²)

  T         torque: 821.232 N·m
  μ         friction: static to hold, dynamic while slipping: 0.112
  z         faces: 8
  F         net force: 13558.1 N
  r_m       mean radius: 67.602 mm
  p         pressure: 1470 (u = 23.094) kPa
  A         piston area: 10093.9 mm²
  F_head    head force: 0 N
  F_dam     dam force: 0 N
  F_spring  return spring force: 1280 N
  F_seal    seal drag force: not given

Result: T = 821.232 N·m

Also known
  capacity lining mean: 1.46393 MPa

Valid for: flat plates, friction the same on all faces; the strongest return spring in limits. Not a rating
Source: R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th to 11th editions, chapter 16, frictional-contact axial clutches (from memory of the work)";
    assert_eq!(explain("clutch.capacity", &values).unwrap().to_string(), expected);
}

#[test]
fn a_pair_of_symbols_takes_the_two_parts_of_a_field() {
    let values = numbers(&[
        ("reading.value", 72.0),
        ("reading.u", 3.0),
        ("limits.lower", 25.0),
        ("limits.upper", f64::INFINITY),
    ]);
    let text = explain("judge.judge", &values).unwrap().to_string();
    for line in
        ["y    reading: 72", "u    uncertainty of reading: 3", "T_L  limits, lower: 25", "T_U  limits, upper: infinite"]
    {
        assert!(text.contains(line), "{line} is missing in\n{text}");
    }
    assert!(!text.contains("Also known"));
}

#[test]
fn an_unknown_card_is_refused() {
    assert_eq!(explain("clutch.nothing", &[]).map(|_| ()).map_err(|error| error.kind()), Err("MISSING"));
}

/// The first word of each part of a meaning, where it is written like the name of a field.
fn names(meaning: &str) -> Vec<&str> {
    meaning
        .split(", ")
        .map(|part| {
            part.split(|letter: char| !(letter.is_ascii_alphanumeric() || letter == '_' || letter == '.'))
                .next()
                .unwrap()
        })
        .map(|word| word.trim_end_matches('.'))
        .filter(|word| word.starts_with(char::is_lowercase) && word.contains(['_', '.']) && card::find(word).is_none())
        .collect()
}

#[test]
fn a_meaning_names_fields_that_exist_or_says_what_it_is() {
    let chapters: BTreeSet<_> = card::all().map(|card| card.id.split('.').next().unwrap()).collect();
    let source: String =
        chapters.iter().map(|chapter| sources(&format!("{}/core/{chapter}", env!("CARGO_MANIFEST_DIR")))).collect();
    let mut unknown = Vec::new();
    for card in card::all() {
        let exists = |field: &str| {
            source.match_indices(field).any(|(at, _)| {
                let before = source[..at].chars().next_back().unwrap_or(' ');
                let after = source[at + field.len()..].chars().next().unwrap_or(' ');
                !(before.is_alphanumeric() || before == '_') && after == ':'
            })
        };
        let named = card.symbols.iter().flat_map(|symbol| names(symbol.meaning)).flat_map(|name| name.split('.'));
        unknown.extend(
            named
                .filter(|field| !["value", "u", "lower", "upper"].contains(field) && !exists(field))
                .map(|field| format!("{}: {field}", card.id)),
        );
    }
    assert!(unknown.is_empty(), "no such field or parameter; name it right or say it in words: {unknown:#?}");
}

#[test]
fn every_card_explains_every_value_in_every_form() {
    for card in card::all() {
        let names: BTreeSet<_> = card.symbols.iter().flat_map(|symbol| names(symbol.meaning)).collect();
        let values: Vec<_> = (1..)
            .zip(&names)
            .map(|(place, &name)| NamedValue { name, value: Value::Number(1000.0 + f64::from(place) + 0.25) })
            .chain([
                NamedValue { name: "other_mm", value: Value::Number(77.25) },
                NamedValue { name: "word", value: Value::Word("<GO & \"more\">") },
            ])
            .collect();
        for values in [&[] as &[_], &values] {
            let explanation = explain(card.id, values).unwrap();
            let (text, html, json) = (
                explanation.to_string(),
                written(|out| explanation.write_html(out)),
                written(|out| explanation.write_json(out)),
            );
            let found: serde_json::Value =
                serde_json::from_str(&json).unwrap_or_else(|error| panic!("{}: {error}\n{json}", card.id));
            assert_eq!(
                (&found["card"], &found["equation"], &found["range"]),
                (&card.id.into(), &card.equation.into(), &card.range.into())
            );
            assert_balanced(&html);
            for NamedValue { name, value } in values {
                let shown = match value {
                    Value::Number(value) => value.to_string(),
                    Value::Word(word) => (*word).to_owned(),
                };
                assert!(text.contains(&shown), "{}: {name} = {shown} is not in\n{text}", card.id);
                assert!(html.contains(
                    &shown.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
                ));
            }
            assert!(!text.contains("not given") || values.len() <= 2 || names.is_empty(), "{text}");
        }
    }
}

/// Every tag is closed, in order.
fn assert_balanced(html: &str) {
    let mut open = Vec::new();
    for tag in html.split('<').skip(1).map(|rest| rest.split('>').next().unwrap()) {
        match tag.strip_prefix('/') {
            Some(closed) => assert_eq!(open.pop(), Some(closed), "{html}"),
            None => open.push(tag.split(' ').next().unwrap()),
        }
    }
    assert!(open.is_empty(), "{open:?} in {html}");
}

#[test]
fn indices_and_exponents_stand_below_and_above_the_line() {
    let html = written(|out| explain("clutch.energized", &[]).unwrap().write_html(out));
    assert!(
        html.contains(
            "T<sub>tight</sub>/T<sub>slack</sub> = e<sup>μ θ</sup>; self-energized M = F (e<sup>μ θ</sup> − 1) r"
        ),
        "{html}"
    );
}

#[test]
fn numbers_are_shown_with_six_digits() {
    let shown = |value| {
        let values = [NamedValue { name: "x", value: Value::Number(value) }];
        let text = explain("judge.judge", &values).unwrap().to_string();
        text.split("x: ").nth(1).unwrap().split('\n').next().unwrap().to_owned()
    };
    for (value, text) in [
        (0.0, "0"),
        (-0.0, "0"),
        (8.0, "8"),
        (-4.0, "−4"),
        (0.112, "0.112"),
        (1.0 / 3.0, "0.333333"),
        (-2.0 / 3.0, "−0.666667"),
        (999_999.6, "1000000"),
        (99_999.96, "100000"),
        (12_345.678, "12345.7"),
        (123_456.789, "123457"),
        (9.999_996, "10"),
        (9.999_994, "9.99999"),
        (0.000_123_456_7, "0.000123457"),
        (0.000_002_054_917_939_165_679, "2.05492 × 10^−6"),
        (1.0e-9, "1 × 10^−9"),
        (6.022_140_76e23, "6.02214 × 10^23"),
        (9_007_199_254_740_992.0, "9.0072 × 10^15"),
        (f64::MAX, "1.79769 × 10^308"),
        (5e-324, "4.94066 × 10^−324"),
        (f64::INFINITY, "infinite"),
        (f64::NEG_INFINITY, "−infinite"),
        (f64::NAN, "not a number"),
    ] {
        assert_eq!(shown(value), text, "{value:e}");
    }
}

proptest! {
    /// What is shown, read again, is the number to half of its sixth digit.
    #[test]
    fn a_number_read_back_is_the_same(value in prop::num::f64::NORMAL) {
        let values = [NamedValue { name: "x", value: Value::Number(value) }];
        let text = explain("judge.judge", &values).unwrap().to_string();
        let shown = text.split("x: ").nth(1).unwrap().split('\n').next().unwrap();
        let read: f64 = shown.replace('−', "-").replace(" × 10^", "e").parse().unwrap();
        prop_assert!((read - value).abs() <= 5.000_001e-6 * value.abs(), "{value:e} shown as {shown}");
    }
}

#[test]
fn a_field_is_found_wherever_a_meaning_names_it() {
    let values = numbers(&[("friction_needed", 0.0963), ("half_angle_deg", 5.5)]);
    let text = explain("hold.wedged", &values).unwrap().to_string();
    assert!(text.contains("tan φ is friction needed: 0.0963") && text.contains("half angle: 5.5 °"), "{text}");
    let values = numbers(&[("result", 1.0273)]);
    let text = explain("fluid.volume_factor", &values).unwrap().to_string();
    assert!(text.contains("\nResult: V/V₁₅ = 1.0273\n") && !text.contains("Also known"), "{text}");
}
