//! Every card is complete, and every work of the bibliography is used.

use std::collections::BTreeSet;
use trainwright::card::{self, BIBLIOGRAPHY};

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
    let folder = std::fs::read_dir(core).into_iter().flatten().map(|entry| entry.unwrap().path());
    let files = folder.chain([format!("{core}.rs").into()]);
    let definition = format!("fn {function}");
    files.map(|file| std::fs::read_to_string(file).unwrap()).any(|text| {
        text.match_indices(&definition).any(|(at, _)| {
            let next = text[at + definition.len()..].chars().next();
            !next.is_some_and(|letter| letter.is_alphanumeric() || letter == '_')
        })
    })
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
