//! `tw_card_*`: the formula cards, as static texts.

use crate::pointer::{core, put, put_text, slice, terminated};
use crate::status::Status;
use ::core::ffi::c_char;
use heapless::Vec;
use trainwright::card::{self, Card, Symbol, Value};
use trainwright::{Error, Result};

/// A UTF-8 text without a terminating zero, static or inside a flash image: print it with `printf("%.*s", (int)text.length, text.start)`.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct Text {
    /// First byte, never null.
    pub start: *const core::ffi::c_char,
    /// Number of bytes.
    pub length: usize,
}

impl From<&str> for Text {
    fn from(text: &str) -> Self {
        Self { start: text.as_ptr().cast(), length: text.len() }
    }
}

/// One formula: what it computes and where it comes from.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct CardText {
    /// Chapter and function, `clutch.capacity`.
    pub id: Text,
    /// What it computes, in one line.
    pub purpose: Text,
    /// The equation, in the symbols of its source.
    pub equation: Text,
    /// Range of validity, and what lies outside it.
    pub range: Text,
    /// The work it comes from.
    pub source: Text,
    /// Equation, table or clause in that work.
    pub locator: Text,
    /// Number of symbols of the equation.
    pub symbols: usize,
}

/// One symbol of an equation.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct SymbolText {
    /// As written in the equation.
    pub symbol: Text,
    /// The field or parameter that carries it, or its meaning.
    pub meaning: Text,
    /// Unit, `1` for a pure number.
    pub unit: Text,
}

/// A value under the name of its field, for an explanation: `{"capacity.torque_nm", capacity.torque_nm}`.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct NamedValue {
    /// Fields from the outermost to the innermost with points between them, zero-terminated.
    pub name: *const c_char,
    /// What the field holds.
    pub value: f64,
}

/// Most values of one explanation.
pub const MAX_NAMED_VALUES: usize = 64;

/// Number of formula cards.
#[unsafe(no_mangle)]
pub extern "C" fn tw_card_count() -> usize {
    card::all().count()
}

/// The card at a position, from 0 to `tw_card_count()` - 1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_card_at(position: usize, out_card: *mut CardText) -> Status {
    unsafe { put(out_card, || core(at(position).map(CardText::from))) }
}

/// A symbol of the card at a position, from 0 to its number of symbols - 1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_card_symbol_at(position: usize, symbol: usize, out_symbol: *mut SymbolText) -> Status {
    unsafe {
        put(out_symbol, || {
            let symbols = core(at(position))?.symbols;
            core(symbols.get(symbol).map(SymbolText::from).ok_or(beyond("symbol", symbol, symbols.len())))
        })
    }
}

/// The worked explanation of a result in words that can be read out: the card with this id (zero-terminated, as
/// `clutch.capacity`), each symbol with the value of the field that its meaning names, and what else was given. A value named
/// `result` goes to the symbol that the equation is solved for. At most `TW_MAX_NAMED_VALUES`.
///
/// Writes UTF-8 with a terminating zero into `size` bytes, and its length without the zero; `TW_STATUS_COUNT` where it does
/// not fit. With a `size` of 0 only the length is written. `TW_STATUS_MISSING` where no card has this id.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_card_explain(
    id: *const c_char,
    values: *const NamedValue,
    count: usize,
    out_text: *mut c_char,
    size: usize,
    out_length: *mut usize,
) -> Status {
    unsafe {
        let named = named(values, count);
        let explanation =
            named.as_ref().map_err(|status| *status).and_then(|named| core(card::explain(terminated(id)?, named)));
        put_text(out_text, size, out_length, explanation, |explanation, out| explanation.write_text(out))
    }
}

unsafe fn named<'a>(
    values: *const NamedValue,
    count: usize,
) -> ::core::result::Result<Vec<card::NamedValue<'a>, MAX_NAMED_VALUES>, Status> {
    let mut named = Vec::new();
    for entry in unsafe { slice(values, count)? } {
        let entry = card::NamedValue { name: unsafe { terminated(entry.name)? }, value: Value::Number(entry.value) };
        named.push(entry).map_err(|_| Status::Count)?;
    }
    Ok(named)
}

fn at(position: usize) -> Result<&'static Card> {
    card::all().nth(position).ok_or(beyond("card", position, card::all().count()))
}

fn beyond(name: &'static str, position: usize, count: usize) -> Error {
    let number = |size: usize| u32::try_from(size).unwrap_or(u32::MAX);
    Error::Count { name, count: number(position), low: 0, high: number(count.saturating_sub(1)) }
}

impl From<&'static Card> for CardText {
    fn from(card: &'static Card) -> Self {
        let Card { id, purpose, equation, symbols, range, source, locator } = *card;
        Self {
            id: id.into(),
            purpose: purpose.into(),
            equation: equation.into(),
            range: range.into(),
            source: source.work.into(),
            locator: locator.into(),
            symbols: symbols.len(),
        }
    }
}

impl From<&'static Symbol> for SymbolText {
    fn from(symbol: &'static Symbol) -> Self {
        Self { symbol: symbol.symbol.into(), meaning: symbol.meaning.into(), unit: symbol.unit.into() }
    }
}
