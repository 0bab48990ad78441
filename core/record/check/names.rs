//! Names that are given and used in a file, and the nearest to one that nobody gives.

use std::borrow::ToOwned;
use std::collections::{BTreeMap, BTreeSet};
use std::format;
use std::string::String;
use std::vec::Vec;

use super::super::problem::Problem;

/// Names given and used in a file.
#[derive(Default)]
pub(in crate::record) struct Names {
    given: BTreeMap<String, BTreeSet<String>>,
    pub(super) uses: Vec<Use>,
}

/// A place where names are used. `blank` is the problem that it would be.
pub(super) struct Use {
    pub(super) kinds: String,
    pub(super) rule: Rule,
    pub(super) blank: Problem,
}

pub(super) enum Rule {
    Given(String),
    Complete(BTreeSet<String>),
}

impl Names {
    pub(super) fn give(&mut self, kind: &str, name: &str) -> bool {
        self.given.entry(kind.to_owned()).or_default().insert(name.to_owned())
    }

    fn known(&self, kinds: &str) -> BTreeSet<&str> {
        kinds.split('|').filter_map(|kind| self.given.get(kind)).flatten().map(String::as_str).collect()
    }

    /// Problems of the names that nobody gives: this file, or for a kind of name that it does not give, the other files. A
    /// kind that none of them gives cannot be judged.
    pub(in crate::record) fn unresolved(&self, others: &[Self]) -> Vec<Problem> {
        self.uses
            .iter()
            .filter_map(|Use { kinds, rule, blank }| {
                let mut known = self.known(kinds);
                if known.is_empty() {
                    known = others.iter().flat_map(|other| other.known(kinds)).collect();
                }
                if known.is_empty() {
                    return None;
                }
                let what = kinds.replace('|', " or ");
                let (message, mend) = match rule {
                    Rule::Given(name) if known.contains(name.as_str()) => return None,
                    Rule::Given(name) => {
                        (format!("there is no {what} {name:?}"), suggestion(name, known.iter().copied()))
                    }
                    Rule::Complete(present) => {
                        let missing: Vec<_> = known.into_iter().filter(|name| !present.contains(*name)).collect();
                        if missing.is_empty() {
                            return None;
                        }
                        (format!("no value for {what} {}", missing.join(", ")), "give one value for each".into())
                    }
                };
                Some(Problem { message, mend, ..blank.clone() })
            })
            .collect()
    }
}

/// The nearest of the names, or all of them.
pub(in crate::record) fn suggestion<'n>(word: &str, names: impl Iterator<Item = &'n str> + Clone) -> String {
    nearest(word, names.clone()).unwrap_or_else(|| format!("known: {}", names.collect::<Vec<_>>().join(", ")))
}

/// The nearest of the names, where the message before it lists them all.
pub(super) fn nearest_of_listed<'n>(word: &str, names: impl Iterator<Item = &'n str>) -> String {
    nearest(word, names).unwrap_or_else(|| "write one of these".into())
}

fn nearest<'n>(word: &str, names: impl Iterator<Item = &'n str>) -> Option<String> {
    let near = names
        .map(|name| (strsim::jaro_winkler(&word.to_lowercase(), &name.to_lowercase()), name))
        .filter(|(similarity, _)| *similarity > 0.8)
        .max_by(|a, b| a.0.total_cmp(&b.0));
    near.map(|(_, name)| format!("did you mean {name}?"))
}
