//! How a piece of text is written: as it is, or for HTML; numbers and strings of JSON.

use core::fmt::{self, Write};

/// How a piece of text is written: as it is, or for HTML.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Form {
    Text,
    Html,
}

impl Form {
    /// Text of an equation: in HTML with its indices below and its exponents above the line.
    pub(crate) fn equation(self, out: &mut dyn Write, text: &str) -> fmt::Result {
        if self == Self::Text {
            return out.write_str(text);
        }
        let mut letters = text.chars().peekable();
        let mut before = ' ';
        while let Some(letter) = letters.next() {
            let tag = match letter {
                '_' if before.is_alphanumeric() => "sub",
                '^' => "sup",
                _ => {
                    self.letter(out, letter)?;
                    before = letter;
                    continue;
                }
            };
            write_all(out, &["<", tag, ">"])?;
            let braces = letters.next_if_eq(&'{').is_some();
            while let Some(inner) = letters.next_if(|&inner| {
                if braces { inner != '}' } else { inner.is_alphabetic() || inner.is_ascii_digit() || inner == '−' }
            }) {
                self.letter(out, inner)?;
                before = inner;
            }
            if braces {
                letters.next();
            }
            write_all(out, &["</", tag, ">"])?;
        }
        Ok(())
    }

    /// Any other text.
    pub(crate) fn plain(self, out: &mut dyn Write, text: &str) -> fmt::Result {
        text.chars().try_for_each(|letter| self.letter(out, letter))
    }

    fn letter(self, out: &mut dyn Write, letter: char) -> fmt::Result {
        match letter {
            '&' if self == Self::Html => out.write_str("&amp;"),
            '<' if self == Self::Html => out.write_str("&lt;"),
            '>' if self == Self::Html => out.write_str("&gt;"),
            '"' if self == Self::Html => out.write_str("&quot;"),
            _ => out.write_char(letter),
        }
    }
}

pub(crate) fn write_all(out: &mut dyn Write, texts: &[&str]) -> fmt::Result {
    texts.iter().try_for_each(|text| out.write_str(text))
}

/// A JSON number; null where it is infinite or none.
pub(crate) struct JsonNumber(pub f64);

impl fmt::Display for JsonNumber {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0.is_finite() { write!(f, "{:?}", self.0) } else { f.write_str("null") }
    }
}

/// A JSON string.
pub(crate) struct Quoted<'a>(pub &'a str);

impl fmt::Display for Quoted<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_char('"')?;
        Escaping(f).write_str(self.0)?;
        f.write_char('"')
    }
}

/// Writes into a JSON string.
pub(super) struct Escaping<'a>(pub(super) &'a mut dyn Write);

impl Write for Escaping<'_> {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        text.chars().try_for_each(|letter| match letter {
            '"' => self.0.write_str("\\\""),
            '\\' => self.0.write_str("\\\\"),
            control if (control as u32) < 0x20 => write!(self.0, "\\u{:04x}", control as u32),
            other => self.0.write_char(other),
        })
    }
}
