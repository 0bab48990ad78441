//! A TOML text with the place of every key and value.

use std::borrow::ToOwned;
use std::fmt;
use std::format;
use std::ops::Range as Span;
use std::string::String;
use std::vec::Vec;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::problem::{Problem, Weight};

/// One step from a table or list to what it holds.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Step {
    Key(String),
    Index(usize),
}

/// Where a value sits: `train.set[2].teeth.ring`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Path(Vec<Step>);

impl Path {
    /// The path of a key below this one.
    pub(super) fn key(&self, key: &str) -> Self {
        self.step(Step::Key(key.to_owned()))
    }

    /// The path of a place in the list at this one.
    pub(super) fn index(&self, index: usize) -> Self {
        self.step(Step::Index(index))
    }

    fn step(&self, step: Step) -> Self {
        let mut steps = self.0.clone();
        steps.push(step);
        Self(steps)
    }
}

impl fmt::Display for Path {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (place, step) in self.0.iter().enumerate() {
            match step {
                Step::Index(index) => write!(f, "[{index}]")?,
                Step::Key(key) => {
                    let dot = if place > 0 { "." } else { "" };
                    let bare =
                        !key.is_empty() && key.chars().all(|c| c.is_ascii_alphanumeric() || c == '_' || c == '-');
                    if bare { write!(f, "{dot}{key}")? } else { write!(f, "{dot}{key:?}")? }
                }
            }
        }
        Ok(())
    }
}

/// The text, its file name and its parsed tables.
pub(super) struct Document<'t> {
    pub(super) file: &'t str,
    pub(super) text: &'t str,
    pub(super) root: Spanned<DeTable<'t>>,
    line_starts: Vec<usize>,
}

impl<'t> Document<'t> {
    /// Reads as much as can be read, and says what could not.
    pub(super) fn parse(file: &'t str, text: &'t str) -> (Self, Vec<Problem>) {
        let (root, faults) = DeTable::parse_recoverable(text);
        let line_starts = core::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1)).collect();
        let document = Self { file, text, root, line_starts };
        let problems = document.syntax(&faults);
        (document, problems)
    }

    /// What is not TOML: the first fault of each line, and no key that only seems to stand twice because a header before it
    /// is broken.
    fn syntax(&self, faults: &[toml::de::Error]) -> Vec<Problem> {
        let twice = |fault: &&toml::de::Error| fault.message().starts_with("duplicate key");
        let only_twice = faults.iter().all(|fault| twice(&fault));
        let mut problems: Vec<Problem> = Vec::new();
        for fault in faults.iter().filter(|fault| only_twice || !twice(fault)) {
            let span = fault.span().unwrap_or(0..0);
            let mut problem = self.problem_at(span.clone(), "", format!("this is not TOML: {}", fault.message()));
            if problems.iter().any(|other| other.line == problem.line) {
                continue;
            }
            problem.value = shortened(self.text.lines().nth(problem.line - 1).unwrap_or_default());
            if only_twice {
                problem.message = "this key stands twice in its table".into();
                problem.mend = "keep one of the two".into();
            }
            let digit = |at: Option<&u8>| at.is_some_and(u8::is_ascii_digit);
            let bytes = self.text.as_bytes();
            if bytes.get(span.start) == Some(&b',') && digit(bytes.get(span.start + 1)) {
                problem.mend = "write decimals with a point".into();
            }
            problems.push(problem);
        }
        problems
    }

    /// A problem with the value at this path, or with the nearest table around it.
    pub(super) fn problem(&self, path: &Path, message: impl Into<String>) -> Problem {
        let (span, value) = self.locate(path);
        let mut problem = self.problem_at(span, &format!("{path}"), message.into());
        if value.is_none_or(DeValue::is_table) {
            problem.value.clear();
        }
        problem
    }

    /// A problem with a piece of the text.
    pub(super) fn problem_at(&self, span: Span<usize>, key: &str, message: String) -> Problem {
        let line = self.line_starts.partition_point(|start| *start <= span.start);
        let line_start = line.checked_sub(1).and_then(|index| self.line_starts.get(index)).copied().unwrap_or(0);
        Problem {
            file: self.file.to_owned(),
            line,
            column: self.text.get(line_start..span.start).map_or(0, |line| line.chars().count()) + 1,
            key: key.to_owned(),
            value: shortened(self.text.get(span).unwrap_or_default()),
            message,
            mend: String::new(),
            weight: Weight::Error,
        }
    }

    /// The value at this path and where it stands; without a value, where the table stands that should hold it.
    fn locate(&self, path: &Path) -> (Span<usize>, Option<&DeValue<'t>>) {
        let mut span = 0..0;
        let mut table = Some(self.root.get_ref());
        let mut value = None;
        for step in &path.0 {
            let next = match step {
                Step::Key(key) => table.and_then(|table| table.get(key.as_str())),
                Step::Index(index) => value.and_then(|value: &DeValue<'t>| value.as_array()?.get(*index)),
            };
            let Some(found) = next else { return (span, None) };
            span = found.span();
            table = found.get_ref().as_table();
            value = Some(found.get_ref());
        }
        (span, value)
    }
}

/// The first line of a value, at most 48 characters.
fn shortened(value: &str) -> String {
    let line = value.lines().next().unwrap_or_default().trim();
    let mut short: String = line.chars().take(48).collect();
    if short.len() < value.trim().len() {
        short.push('…');
    }
    short
}
