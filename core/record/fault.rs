//! A fault that a whole record shows, before it has a line.

use std::format;
use std::string::{String, ToString};

use super::document::{Document, Path};
use super::problem::{Problem, Weight};
use crate::error::Error;

/// A fault with the path of what causes it.
pub(super) struct Fault {
    path: Path,
    message: String,
    mend: String,
    weight: Weight,
}

impl Fault {
    pub(super) fn error(path: Path, message: impl Into<String>, mend: impl Into<String>) -> Self {
        Self { path, message: message.into(), mend: mend.into(), weight: Weight::Error }
    }

    /// What another chapter says against the values of a table.
    pub(super) fn refused(path: Path, error: Error) -> Self {
        Self::error(path, error.to_string(), "")
    }

    pub(super) fn note(path: Path, message: impl Into<String>, mend: impl Into<String>) -> Self {
        Self { weight: Weight::Note, ..Self::error(path, message, mend) }
    }

    pub(super) fn is_note(&self) -> bool {
        self.weight == Weight::Note
    }

    /// The problem with its place in the file.
    pub(super) fn placed(self, document: &Document<'_>) -> Problem {
        Problem { mend: self.mend, weight: self.weight, ..document.problem(&self.path, self.message) }
    }

    /// The problem of a record that was not read from a file.
    pub(super) fn unplaced(self) -> Problem {
        Problem {
            file: String::new(),
            line: 0,
            column: 0,
            key: format!("{}", self.path),
            value: String::new(),
            message: self.message,
            mend: self.mend,
            weight: self.weight,
        }
    }
}
