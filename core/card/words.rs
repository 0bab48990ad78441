//! Names of fields in words, and the unit that ends them.

use super::find;
use super::form::{Form, write_all};
use super::pieces::{is_path, last, leading_word, pieces};
use crate::units;
use core::fmt::{self, Write};

/// The fields that come in pairs: a reading, limits.
pub(super) const PAIRS: [(&str, &str); 2] = [("value", "u"), ("lower", "upper")];

/// The unit that ends a field's name: the length of the ending and the sign, `1/` before it where the name says `per`.
pub(super) fn unit_of(name: &str) -> Option<(usize, bool, &'static str)> {
    let pairs = PAIRS.iter().flat_map(|(first, second)| [first, second]);
    let bare = pairs
        .fold(name, |name, part| name.strip_suffix(part).and_then(|outer| outer.strip_suffix('.')).unwrap_or(name));
    let last = last(bare).1;
    let ending = |sign: &(&str, &'static str)| {
        let head = last.strip_suffix(sign.0)?;
        let head = head.strip_suffix('_')?;
        let per = head.strip_suffix("_per");
        Some((last.len() - per.unwrap_or(head).len(), per.is_some(), sign.1))
    };
    units::SIGNS.iter().filter_map(ending).max_by_key(|&(length, ..)| length)
}

/// Sign of the unit that ends a field's name, `N·m` of `torque_nm`; none where the name has no unit or is one over a unit.
#[must_use]
pub fn unit_sign(field: &str) -> Option<&'static str> {
    unit_of(field).filter(|(_, per, _)| !per).map(|(.., sign)| sign)
}

/// A meaning in words: names of fields lose their unit and their underscores.
pub(super) fn words(out: &mut dyn Write, form: Form, text: &str) -> fmt::Result {
    let mut rest = text;
    while !rest.is_empty() {
        let name = leading_word(rest);
        if name.bytes().next().is_some_and(|letter| letter.is_ascii_lowercase()) {
            field_words(out, form, name)?;
            rest = rest.get(name.len()..).unwrap_or_default();
            continue;
        }
        let mut letters = rest.char_indices();
        letters.next();
        let next = letters.next().map_or(rest.len(), |(at, _)| at);
        let skipped = if name.is_empty() { next } else { name.len() };
        form.plain(out, rest.get(..skipped).unwrap_or_default())?;
        rest = rest.get(skipped..).unwrap_or_default();
    }
    Ok(())
}

/// What a quantity is called where the name of its field leaves that to the unit (`need_nm`, `tooth_n`): by the sign of the
/// unit, with the words after which nothing is added.
const NOUNS: [(&str, &str, &[&str]); 8] = [
    ("N·m", "torque", &["torque"]),
    ("N", "force", &["force", "load", "capacity", "dynamic", "static"]),
    ("kPa", "pressure", &["pressure"]),
    ("°C", "temperature", &["temperature", "temp"]),
    ("1/min", "speed", &["speed"]),
    ("km/h", "speed", &["speed"]),
    ("°", "angle", &["angle", "backlash", "wrap", "tilt"]),
    ("kg", "mass", &["mass"]),
];

/// The name of a field in words: `capacity.torque_nm` is "capacity torque", `pressure_kpa.u` "uncertainty of pressure",
/// `tooth_n` "tooth force". The id of a card stays as it is.
pub(super) fn field_words(out: &mut dyn Write, form: Form, name: &str) -> fmt::Result {
    // `c_w` is a symbol, not a field.
    let symbol = name.len() <= 3 && name.as_bytes().get(1) == Some(&b'_');
    if symbol || find(name).is_some() || !is_path(name) {
        return form.plain(out, name);
    }
    let parts =
        [(".value", "", ""), (".u", "uncertainty of ", ""), (".lower", "", ", lower"), (".upper", "", ", upper")];
    let part = parts.iter().find_map(|(part, before, after)| Some((name.strip_suffix(part)?, *before, *after)));
    let (name, before, after) = part.unwrap_or((name, "", ""));
    let relative = name.strip_suffix("_u_rel");
    write_all(out, &[before, if relative.is_some() { "relative uncertainty of " } else { "" }])?;
    let name = relative.unwrap_or(name);
    let (ending, per, sign) = if is_path(name) { unit_of(name).unwrap_or_default() } else { (0, false, "") };
    let bare = name.get(..name.len().saturating_sub(ending)).unwrap_or(name);
    let words = pieces(bare, ".").flat_map(|field| pieces(field, "_")).filter(|word| !word.is_empty());
    for (place, word) in words.clone().enumerate() {
        out.write_str(if place > 0 { " " } else { "" })?;
        let degrees =
            |scale: char| word.strip_suffix(scale).filter(|number| number.bytes().all(|digit| digit.is_ascii_digit()));
        match (word, degrees('c'), degrees('f')) {
            (_, Some(number), _) if !number.is_empty() => write_all(out, &["at ", number, " °C"])?,
            (_, _, Some(number)) if !number.is_empty() => write_all(out, &["at ", number, " °F"])?,
            ("temp", ..) => out.write_str("temperature")?,
            _ => form.plain(out, word)?,
        }
    }
    let noun =
        NOUNS.iter().find(|(unit, _, said)| *unit == sign && !per && !words.clone().any(|word| said.contains(&word)));
    write_all(out, &[if noun.is_some() { " " } else { "" }, noun.map_or("", |(_, noun, _)| noun)])?;
    write_all(out, &[if per { " per " } else { "" }, if per { sign } else { "" }, after])
}
