//! `tw_card_*`: the formula cards, as static texts.

use crate::pointer::{core, put};
use crate::status::Status;
use trainwright::card::{self, Card, Symbol};
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
