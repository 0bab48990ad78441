//! Runs the rows of `tests/vectors/<name>.csv`: see "Vectors" in DEVELOPERS.md.
#![allow(dead_code)]

pub mod trains;

use approx::relative_eq;
use std::collections::BTreeMap;
use std::path::PathBuf;
use std::{fmt::Write, fs};
use trainwright::Error;
use trainwright::fluid::Fluid;
use trainwright::judge::{Reading, Rule};

/// One row: cells by column name.
pub struct Row(BTreeMap<String, String>);

impl Row {
    pub fn text(&self, column: &str) -> &str {
        self.0.get(column).unwrap_or_else(|| panic!("no column {column}"))
    }

    pub fn number(&self, column: &str) -> f64 {
        self.parse(column)
    }

    pub fn count(&self, column: &str) -> u32 {
        self.parse(column)
    }

    /// Numbers written with spaces.
    pub fn numbers(&self, column: &str) -> Vec<f64> {
        self.text(column).split_whitespace().map(|cell| cell.parse().unwrap()).collect()
    }

    pub fn reading(&self, value: &str, u: &str) -> Reading {
        Reading { value: self.number(value), u: self.number(u) }
    }

    /// The rule with the chances `go` and `no_go`.
    pub fn rule(&self) -> Result<Rule, Error> {
        Rule::stated_chances(self.number("go"), self.number("no_go"))
    }

    pub fn fluid(&self) -> Fluid {
        Fluid {
            density_15c_kg_m3: self.number("density_15c_kg_m3"),
            expansion_per_k: self.number("expansion_per_k"),
            viscosity_40c_mm2_s: self.number("viscosity_40c_mm2_s"),
            viscosity_100c_mm2_s: self.number("viscosity_100c_mm2_s"),
        }
    }

    fn parse<T: std::str::FromStr>(&self, column: &str) -> T {
        let text = self.text(column);
        text.parse().unwrap_or_else(|_| panic!("{column} = {text:?} is not a number"))
    }
}

/// Calls `run` on every row of the file, checks what it gives against the expected outputs or the expected error,
/// and writes the bits of every output for `tests/python/test_parity.py` to compare.
///
/// `run` answers in the order of the output columns.
pub fn vectors<const N: usize>(name: &str, run: impl Fn(&Row) -> Result<[f64; N], Error>) {
    let path = format!("{}/tests/vectors/{name}.csv", env!("CARGO_MANIFEST_DIR"));
    let file = fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"));
    let mut lines = file.lines().enumerate().filter(|(_, line)| !line.starts_with('#') && !line.trim().is_empty());
    let columns: Vec<&str> = lines.next().expect("a header").1.split(',').collect();
    let outputs: Vec<&str> = columns.iter().filter_map(|column| column.strip_prefix('=')).collect();
    assert_eq!(columns.last(), Some(&"source"), "{name}: the last column is source");
    assert_eq!(outputs.len(), N, "{name}: output columns {outputs:?}");

    let mut bits = String::new();
    let mut rows = 0;
    for (number, line) in lines {
        let at = format!("{name}.csv line {}", number + 1);
        let cells: Vec<&str> = line.splitn(columns.len(), ',').collect();
        assert_eq!(cells.len(), columns.len(), "{at}: cells");
        let row = Row(columns.iter().map(ToString::to_string).zip(cells.iter().map(ToString::to_string)).collect());
        assert!(!row.text("source").trim().is_empty(), "{at}: give a source");
        let expected_error = row.0.get("error").map_or("", String::as_str);
        match run(&row) {
            Ok(answers) => {
                assert_eq!(expected_error, "", "{at}: must fail, gives {answers:?}");
                for (output, answer) in outputs.iter().zip(answers) {
                    check(&format!("{at}: {output}"), answer, &row, output);
                    writeln!(bits, "{rows} {output} {:016x}", answer.to_bits()).unwrap();
                }
            }
            Err(error) => {
                assert_eq!(expected_error, error.kind(), "{at}: {error}");
                writeln!(bits, "{rows} error {}", error.kind()).unwrap();
            }
        }
        rows += 1;
    }
    assert!(rows > 0, "{name}: no rows");

    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("../vectors/rust");
    fs::create_dir_all(&folder).unwrap();
    fs::write(folder.join(format!("{name}.bits")), bits).unwrap();
}

/// An empty cell expects nothing: the source does not give that output.
fn check(at: &str, answer: f64, row: &Row, output: &str) {
    let column = format!("={output}");
    if row.text(&column).is_empty() {
        return;
    }
    let (expected, rel_tol) = (row.number(&column), row.number("rel_tol"));
    assert!(
        relative_eq!(answer, expected, epsilon = 0.0, max_relative = rel_tol),
        "{at}: {answer}, expected {expected} within {rel_tol} of it"
    );
}
