//! What is wrong with a record, where, and what would mend it.

use std::fmt;
use std::string::String;
use std::vec::Vec;

/// How much a problem matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// The record cannot be used.
    Error,
    /// The record can be used; a person should look at this.
    Note,
}

/// One fault of a record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// File, as it was named by the caller; may be empty.
    pub file: String,
    /// Line, counted from 1; 0 for a record that was not read from a text.
    pub line: usize,
    /// Column in characters, counted from 1.
    pub column: usize,
    /// Full path of the key, `train.set[2].teeth.ring`; places in a list count from 0. Empty for a fault of the whole file.
    pub key: String,
    /// Value as it stands in the file, shortened; empty where a key is missing. Of a text that is no TOML, the line.
    pub value: String,
    /// What is wrong, with the range or the names that are accepted.
    pub message: String,
    /// What would mend it; may be empty.
    pub mend: String,
    /// Error or note.
    pub weight: Weight,
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.line, self.file.is_empty()) {
            (0, _) => {}
            (line, true) => write!(f, "line {line}, column {}  ", self.column)?,
            (line, false) => write!(f, "{}:{line}:{}  ", self.file, self.column)?,
        }
        if self.weight == Weight::Note {
            write!(f, "(note)  ")?;
        }
        match (self.key.is_empty(), self.value.is_empty()) {
            (false, false) => write!(f, "{} = {}", self.key, self.value)?,
            _ => write!(f, "{}{}", self.key, self.value)?,
        }
        write!(f, "\n    {}", self.message)?;
        if !self.mend.is_empty() {
            write!(f, "\n    {}", self.mend)?;
        }
        Ok(())
    }
}

/// Every fault found, sorted by file and line.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Problems(pub Vec<Problem>);

impl Problems {
    /// The faults that make the record unusable.
    pub fn errors(&self) -> impl Iterator<Item = &Problem> {
        self.0.iter().filter(|problem| problem.weight == Weight::Error)
    }

    /// The remarks that leave it usable.
    pub fn notes(&self) -> impl Iterator<Item = &Problem> {
        self.0.iter().filter(|problem| problem.weight == Weight::Note)
    }

    pub(super) fn sort(&mut self) {
        self.0.sort_by(|a, b| (&a.file, a.line, a.column, &a.message).cmp(&(&b.file, b.line, b.column, &b.message)));
        self.0.dedup();
    }
}

impl fmt::Display for Problems {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, problem) in self.0.iter().enumerate() {
            if index > 0 {
                writeln!(f)?;
            }
            write!(f, "{problem}")?;
        }
        Ok(())
    }
}

impl core::error::Error for Problems {}
