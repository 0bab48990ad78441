//! House rules that no compiler checks: imports, units in names, and a function in every language.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn text(path: impl AsRef<Path>) -> String {
    let path = root().join(path);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Chapters in the order of the table in `core/lib.rs`.
fn chapters() -> Vec<String> {
    let table = text("core/lib.rs");
    let rows = table.lines().filter_map(|line| line.strip_prefix("//! | [`"));
    rows.map(|row| row.split('`').next().unwrap().to_owned()).collect()
}

/// `core/<chapter>.rs` and the files below `core/<chapter>/`.
fn files_of(chapter: &str) -> Vec<PathBuf> {
    fn add(folder: &Path, files: &mut Vec<PathBuf>) {
        for path in fs::read_dir(folder).into_iter().flatten().map(|entry| entry.unwrap().path()) {
            if path.is_dir() {
                add(&path, files);
            } else if path.extension().is_some_and(|extension| extension == "rs") {
                files.push(path);
            }
        }
    }
    let mut files = vec![root().join(format!("core/{chapter}.rs"))];
    add(&root().join("core").join(chapter), &mut files);
    files.sort();
    files
}

/// Lines of code with file and line number, without comments.
fn code_of(chapter: &str) -> Vec<(String, String)> {
    let mut code = Vec::new();
    for file in files_of(chapter) {
        let name = file.strip_prefix(root()).unwrap().display().to_string();
        for (number, line) in (1..).zip(text(&file).lines()) {
            let line = line.split("//").next().unwrap();
            code.push((format!("{name}:{number}"), line.to_owned()));
        }
    }
    code
}

fn is_word(letter: char) -> bool {
    letter.is_ascii_alphanumeric() || letter == '_'
}

#[test]
fn chapters_import_only_from_chapters_above_them() {
    let chapters = chapters();
    assert!(chapters.len() >= 12, "the table of core/lib.rs was not found: {chapters:?}");
    let mut faults = Vec::new();
    for (place, chapter) in chapters.iter().enumerate() {
        for (at, line) in code_of(chapter) {
            for used in line.split("crate::").skip(1) {
                let used: String = used.chars().take_while(|&letter| is_word(letter)).collect();
                let below = chapters.iter().skip(place + 1).any(|other| *other == used);
                let lists_every_card = chapter == "card" && line.contains("::CARDS");
                if below && !lists_every_card {
                    faults
                        .push(format!("{at}: {chapter} uses {used}, which comes after it in the table of core/lib.rs"));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// Suffixes of the table at the top of `core/units.rs`.
fn unit_suffixes() -> BTreeSet<String> {
    let table = text("core/units.rs");
    let rows = table.lines().filter(|line| line.starts_with("//! | `_"));
    let quoted = rows.flat_map(|row| row.split('`').skip(1).step_by(2));
    quoted.filter_map(|word| word.strip_prefix('_')).map(str::to_owned).collect()
}

#[test]
fn every_suffix_has_a_sign_to_be_read_out() {
    let source = text("core/units.rs");
    let list = source.split("const SIGNS").nth(1).unwrap().split("];").next().unwrap();
    let signs: BTreeSet<String> =
        list.split("(\"").skip(1).map(|entry| entry.split('"').next().unwrap().to_owned()).collect();
    let mut suffixes = unit_suffixes();
    suffixes.retain(|suffix| !suffix.starts_with("per_"));
    assert_eq!(signs, suffixes, "the table at the top of core/units.rs and SIGNS");
}

/// Public numbers that have no unit, or the unit of what they belong to.
const WITHOUT_UNIT: &str = include_str!("without_unit.txt");

#[test]
fn every_public_float_names_its_unit() {
    let suffixes = unit_suffixes();
    assert!(suffixes.contains("mm") && suffixes.contains("kg_m3"), "{suffixes:?}");
    let without: BTreeSet<&str> =
        WITHOUT_UNIT.lines().filter_map(|line| line.split('#').next()).map(str::trim).collect();
    let has_unit = |name: &str| {
        let parts: Vec<&str> = name.split('_').collect();
        let ends = (1..parts.len()).any(|start| suffixes.contains(&parts[start..].join("_")));
        ends || name.contains("_per_")
    };
    let mut used = BTreeSet::new();
    let mut faults = Vec::new();
    for chapter in chapters() {
        if chapter == "record" {
            continue; // its schema checks the units of its keys
        }
        for (at, line) in code_of(&chapter) {
            let mut declarations = Vec::new();
            if let Some(field) = line.trim_start().strip_prefix("pub ") {
                declarations.push(field.to_owned());
            }
            if line.contains("pub fn") || line.contains("pub const fn") {
                declarations.extend(line.split('(').skip(1).flat_map(|part| part.split(',')).map(str::to_owned));
            }
            for declaration in declarations {
                let Some((name, kind)) = declaration.split_once(':') else { continue };
                let (name, kind) = (name.trim(), kind.trim());
                let float =
                    ["f64", "[f64", "&[f64]", "f32", "[f32", "&[f32]"].iter().any(|float| kind.starts_with(float))
                        || kind.split(|letter| !is_word(letter)).next() == Some("Reading");
                if !float || !name.chars().all(is_word) || has_unit(name) {
                    continue;
                }
                if without.contains(name) {
                    used.insert(name.to_owned());
                } else {
                    faults.push(format!(
                        "{at}: {name} has no unit; end it in one of core/units.rs, or list it in tests/without_unit.txt"
                    ));
                }
            }
        }
    }
    faults.extend(
        without
            .iter()
            .filter(|name| !name.is_empty() && !used.contains(**name))
            .map(|name| format!("tests/without_unit.txt: nothing is called {name}")),
    );
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// Public functions and methods of a chapter: `function` or `Type::method`.
fn functions_of(chapter: &str) -> BTreeSet<String> {
    let code = code_of(chapter);
    let public: BTreeSet<&str> = code
        .iter()
        .filter_map(|(_, line)| line.strip_prefix("pub struct ").or(line.strip_prefix("pub enum ")))
        .map(|rest| rest.split(|letter| !is_word(letter)).next().unwrap())
        .collect();
    let mut functions = BTreeSet::new();
    let mut holder: Option<String> = None;
    let mut macro_body = false;
    for (_, line) in &code {
        if line.starts_with("macro_rules!") {
            macro_body = true;
        } else if line.starts_with('}') {
            (holder, macro_body) = (None, false);
        } else if line.starts_with("impl") {
            let after = line.trim_start_matches("impl").trim_start_matches(['<', '\'']).trim();
            let named = if line.starts_with("impl<") { line.split("> ").nth(1).unwrap_or(after) } else { after };
            holder = Some(named.split(|letter| !is_word(letter)).next().unwrap().to_owned());
        }
        let signature = line.trim_start();
        let Some(rest) = signature.strip_prefix("pub fn ").or(signature.strip_prefix("pub const fn ")) else {
            continue;
        };
        if macro_body {
            continue;
        }
        let name = rest.split(|letter| !is_word(letter)).next().unwrap();
        match &holder {
            None => functions.insert(name.to_owned()),
            Some(holder) if public.contains(holder.as_str()) => functions.insert(format!("{holder}::{name}")),
            Some(_) => false,
        };
    }
    functions
}

#[test]
fn every_function_is_in_every_language_or_says_why_not() {
    let header = text("ffi/include/trainwright.h");
    let declared: BTreeSet<&str> = header
        .split(|letter| !is_word(letter) && letter != '(')
        .filter_map(|word| word.split_once('('))
        .map(|(name, _)| name)
        .filter(|name| name.starts_with("tw_"))
        .collect();
    let chapters = chapters();
    let mut faults = Vec::new();
    let mut rows: BTreeMap<&str, BTreeSet<String>> = BTreeMap::new();
    let mut in_c: BTreeSet<&str> = BTreeSet::from(["tw_version", "tw_status_text"]);
    let table = text("tests/surface.csv");
    let mut lines = table.lines();
    assert_eq!(lines.next(), Some("chapter,core,c,python,reason"));
    for line in lines {
        let cells: Vec<&str> = line.splitn(5, ',').collect();
        let [chapter, core, c, python, reason] = cells[..] else { panic!("surface.csv: {line}: five columns") };
        if !rows.entry(chapter).or_default().insert(core.to_owned()) {
            faults.push(format!("surface.csv: {chapter},{core} twice"));
        }
        if (c == "-" || python == "-") && reason.is_empty() {
            faults.push(format!("surface.csv: {chapter},{core}: give the reason for -"));
        }
        if c != "-" && !declared.contains(c) {
            faults.push(format!("surface.csv: {chapter},{core}: the header has no {c}"));
        }
        in_c.insert(c);
    }
    for chapter in chapters.iter().filter(|chapter| !["error", "card", "record"].contains(&chapter.as_str())) {
        let functions = functions_of(chapter);
        let empty = BTreeSet::new();
        let listed = rows.get(chapter.as_str()).unwrap_or(&empty);
        faults.extend(functions.difference(listed).map(|function| format!("surface.csv lacks {chapter},{function}")));
        let source: String = code_of(chapter).into_iter().map(|(_, line)| line + "\n").collect();
        let exists = |name: &str| source.split(|letter| !is_word(letter)).any(|word| word == name);
        faults.extend(
            listed
                .iter()
                .filter(|core| !functions.contains(*core) && !exists(core.rsplit("::").next().unwrap()))
                .map(|core| format!("surface.csv: core has no {chapter},{core}")),
        );
    }
    faults.extend(declared.difference(&in_c).map(|function| format!("surface.csv lacks the C function {function}")));
    assert!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
}
