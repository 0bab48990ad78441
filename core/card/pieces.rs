//! Pieces of texts. Those of the standard library can panic in their corners, and firmware must not.

use core::iter::from_fn;

/// The text before a separator and the one after it, where it occurs.
pub(super) fn cut<'a>(text: &'a str, separator: &str) -> (&'a str, Option<&'a str>) {
    let begins = |at: &usize| text.get(*at..).is_some_and(|rest| rest.starts_with(separator));
    let found = (0..text.len()).find(begins).and_then(|at| Some((text.get(..at)?, text.get(at + separator.len()..))));
    found.unwrap_or((text, None))
}

/// The pieces between separators.
pub(super) fn pieces<'a>(text: &'a str, separator: &'static str) -> impl Iterator<Item = &'a str> + Clone {
    let mut rest = Some(text);
    from_fn(move || {
        let (piece, after) = cut(rest?, separator);
        rest = after;
        Some(piece)
    })
}

/// A word that may be the name of a field: letters, digits, `_` and `.` up to anything else.
pub(super) fn leading_word(text: &str) -> &str {
    let part_of_it = |letter: &u8| letter.is_ascii_alphanumeric() || matches!(letter, b'_' | b'.');
    let length = text.bytes().take_while(part_of_it).count();
    let word = text.get(..length).unwrap_or_default();
    word.strip_suffix('.').unwrap_or(word)
}

/// The words of a text.
pub(super) fn words_of(text: &str) -> impl Iterator<Item = &str> {
    let mut rest = text;
    from_fn(move || {
        while !rest.is_empty() {
            let word = leading_word(rest);
            let letter = rest.chars().next().map_or(1, char::len_utf8);
            rest = rest.get(word.len().max(letter)..).unwrap_or_default();
            if !word.is_empty() {
                return Some(word);
            }
        }
        None
    })
}

/// Whether a word is written like the name of a field, or like a path of fields.
pub(super) fn is_path(word: &str) -> bool {
    let lower = word.bytes().next().is_some_and(|letter| letter.is_ascii_lowercase());
    lower && word.bytes().any(|letter| matches!(letter, b'_' | b'.'))
}

/// The last field of a path, and the path before it.
pub(super) fn last(path: &str) -> (Option<&str>, &str) {
    match path.bytes().rposition(|letter| letter == b'.') {
        Some(at) => (path.get(..at), path.get(at + 1..).unwrap_or_default()),
        None => (None, path),
    }
}
