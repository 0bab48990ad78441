//! Reading and writing size designations.

use super::table::rim_code;
use super::{LoadRange, SpeedSymbol, Tire, TireKind, TirePlies, TireService};
use crate::error::{Error, Result};
use crate::real::{floor, round_half_away};
use core::fmt;
use heapless::String as Letters; // cbindgen takes every `String` for the standard one

/// Reads a size designation with what follows it: 265/65R18 112T, LT235/85R16C, 35x12.50R17LT, 11R22.5, 185R14.
///
/// * `text` — the designation as marked or typed; stray spaces, small letters, the multiplication sign for x and the
///   middle dot for the decimal point are read
/// * returns the tire; what the text leaves out is 0 in it
/// * errors: [`Error::Text`] with the byte where reading stopped and what was expected there
///
/// A letter C after a size without letters means commercial; after an LT, ST or flotation size a letter B to N is the load
/// range.
///
/// Source: UN R30 and R54, definitions of the tire-size designation; 49 CFR 571.139; load range letters from memory of the
/// TRA Year Book.
///
/// ```
/// use trainwright::tire::{TireService, parse};
/// let tire = parse("LT275/70R18 125/122S")?;
/// assert_eq!((tire.service, tire.width_mm, tire.load_index_dual), (TireService::LightTruck, 275.0, 122));
/// assert_eq!(parse("245/55/18").unwrap_err().to_string(),
///     "tire designation: at character 7: expected R, D, B or - before the rim diameter");
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn parse(text: &str) -> Result<Tire> {
    read(Cursor { text, at: 0 }, false)
}

/// Reads what [`parse`] reads and also the shorthand 245/55/18, for which it assumes radial plies and says so in
/// [`Tire::plies_assumed`].
///
/// ```
/// let tire = trainwright::tire::parse_lenient("245/55/18")?;
/// assert!(tire.plies_assumed && tire.text() == "245/55R18");
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn parse_lenient(text: &str) -> Result<Tire> {
    read(Cursor { text, at: 0 }, true)
}

fn read(mut cursor: Cursor<'_>, lenient: bool) -> Result<Tire> {
    let service = cursor.service();
    let size = cursor.number("a section width or an overall diameter")?;
    let tire = if size.is_whole && cursor.word("/") {
        let width_mm = size.whole(100, 600, "a section width in mm (100 to 600) before the slash")?;
        let aspect_pct =
            cursor.number("an aspect ratio")?.whole(15, 100, "an aspect ratio in % (15 to 100) after the slash")?;
        Tire { width_mm, aspect_pct, ..Tire::bare(TireKind::Metric, service, 0.0) }
    } else if cursor.word("X") {
        let diameter_in = size.between(15.0, 60.0, "an overall diameter in inches (15 to 60) before the x")?;
        let width_in = cursor.number("a section width in inches")?.between(
            4.0,
            25.0,
            "a section width in inches (4 to 25) after the x",
        )?;
        Tire { diameter_in, width_in, ..Tire::bare(TireKind::Flotation, service, 0.0) }
    } else if size.is_whole && size.value >= 100.0 {
        let width_mm = size.whole(100, 600, "a section width in mm (100 to 600)")?;
        Tire { width_mm, ..Tire::bare(TireKind::NoAspect, service, 0.0) }
    } else {
        let width_in = size.between(3.0, 25.0, "a section width in inches (3 to 25) or in mm (100 to 600)")?;
        Tire { width_in, ..Tire::bare(TireKind::Inch, service, 0.0) }
    };
    let mut tire = cursor.plies(tire, lenient)?;
    let rim = cursor.number("a rim diameter")?;
    tire.rim_in = match rim_code(rim.value) {
        Ok(rim_in) => rim_in,
        Err(_) => return rim.start.refuse("a rim diameter: 8 to 30, or 14.5, 16.5, 17.5, 19.5, 20.5, 22.5 or 24.5"),
    };
    while !cursor.is_done() {
        tire = cursor.mark(tire)?;
    }
    tire.checked().or_else(|_| rim.start.refuse("a rim at least 2 inches below the overall diameter"))
}

/// A number as written, and where it starts.
struct Number<'a> {
    start: Cursor<'a>,
    value: f64,
    is_whole: bool,
}

impl Number<'_> {
    fn whole(&self, low: u16, high: u16, expected: &'static str) -> Result<f64> {
        if !self.is_whole {
            return self.start.refuse(expected);
        }
        self.between(f64::from(low), f64::from(high), expected)
    }

    fn between(&self, low: f64, high: f64, expected: &'static str) -> Result<f64> {
        if (low..=high).contains(&self.value) { Ok(self.value) } else { self.start.refuse(expected) }
    }
}

/// A place in the text. It sees spelling variants as one: small letters as capitals, the multiplication sign as X, the
/// middle dot as a decimal point between digits and as a space elsewhere, the no-break space and the tab as a space.
#[derive(Clone, Copy)]
struct Cursor<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Cursor<'a> {
    fn rest(self) -> &'a str {
        self.text.get(self.at..).unwrap_or("")
    }

    fn peek(self) -> Option<char> {
        let mut chars = self.rest().chars();
        let seen = chars.next()?;
        let before = self.text.get(..self.at).and_then(|text| text.chars().next_back());
        let is_digit = |neighbor: Option<char>| neighbor.is_some_and(|c| c.is_ascii_digit());
        let between_digits = is_digit(before) && is_digit(chars.next());
        Some(match seen {
            '×' => 'X',
            '·' if between_digits => '.',
            '·' | '\u{a0}' | '\t' => ' ',
            other => other.to_ascii_uppercase(),
        })
    }

    fn take(&mut self) -> Option<char> {
        let seen = self.peek()?;
        self.at += self.rest().chars().next().map_or(0, char::len_utf8);
        Some(seen)
    }

    fn spaces(&mut self) {
        while self.peek() == Some(' ') {
            self.take();
        }
    }

    fn is_done(&mut self) -> bool {
        self.spaces();
        self.rest().is_empty()
    }

    /// Takes the word if it comes next, spaces before it included; otherwise stays.
    fn word(&mut self, word: &str) -> bool {
        let mut ahead = *self;
        ahead.spaces();
        let found = word.chars().all(|letter| ahead.take() == Some(letter));
        if found {
            *self = ahead;
        }
        found
    }

    fn any(&mut self, words: &[&str]) -> bool {
        words.iter().any(|word| self.word(word))
    }

    fn refuse<T>(self, expected: &'static str) -> Result<T> {
        Err(Error::Text { name: "tire designation", at: u32::try_from(self.at).unwrap_or(u32::MAX), expected })
    }

    fn digit(&mut self) -> Option<u32> {
        let digit = self.peek()?.to_digit(10)?;
        self.take();
        Some(digit)
    }

    fn number(&mut self, expected: &'static str) -> Result<Number<'a>> {
        self.spaces();
        let start = *self;
        let Some(mut units) = self.digit() else { return self.refuse(expected) };
        let mut scale = 1_u32;
        loop {
            let mut ahead = *self;
            let point = scale == 1 && ahead.peek() == Some('.');
            if point {
                ahead.take();
            }
            let Some(digit) = ahead.digit() else { break };
            units = units * 10 + digit;
            if point || scale > 1 {
                scale *= 10;
            }
            if units > 999_999 {
                return start.refuse(expected);
            }
            *self = ahead;
        }
        Ok(Number { start, value: f64::from(units) / f64::from(scale), is_whole: scale == 1 })
    }

    fn service(&mut self) -> TireService {
        let prefixes = [
            ("LT", TireService::LightTruck),
            ("ST", TireService::Trailer),
            ("P", TireService::Passenger),
            ("T", TireService::Temporary),
        ];
        prefixes.iter().find(|prefix| self.word(prefix.0)).map_or(TireService::Unstated, |prefix| prefix.1)
    }

    fn plies(&mut self, tire: Tire, lenient: bool) -> Result<Tire> {
        let before_r = [("Z", SpeedSymbol::Z), ("V", SpeedSymbol::V), ("H", SpeedSymbol::H), ("S", SpeedSymbol::S)];
        let speed_in_size =
            before_r.iter().find(|letter| self.word(letter.0)).map_or(SpeedSymbol::Unmarked, |letter| letter.1);
        if self.word("R") {
            Ok(Tire { speed_in_size, run_flat: self.word("F"), ..tire })
        } else if speed_in_size != SpeedSymbol::Unmarked {
            self.refuse("R after the speed letter")
        } else if self.any(&["D", "-"]) {
            Ok(Tire { plies: TirePlies::Diagonal, ..tire })
        } else if self.word("B") {
            Ok(Tire { plies: TirePlies::Belted, ..tire })
        } else if lenient && tire.kind == TireKind::Metric && self.word("/") {
            Ok(Tire { plies_assumed: true, ..tire })
        } else {
            self.spaces();
            self.refuse("R, D, B or - before the rim diameter")
        }
    }

    /// One of the marks that may follow the size.
    fn mark(&mut self, tire: Tire) -> Result<Tire> {
        if self.any(&["EXTRA LOAD", "REINFORCED", "REINF", "XL", "RF"]) {
            Ok(Tire { extra_load: true, ..tire })
        } else if self.any(&["M+S", "M&S", "M/S", "MS"]) {
            Ok(Tire { mud_snow: true, ..tire })
        } else if self.word("SL") {
            Ok(tire)
        } else if tire.service == TireService::Unstated && self.word("LT") {
            Ok(Tire { service: TireService::LightTruck, ..tire })
        } else if tire.service == TireService::Unstated && self.word("ST") {
            Ok(Tire { service: TireService::Trailer, ..tire })
        } else if self.any(&["LOAD RANGE", "LR", "/"]) {
            self.load_range(tire)
        } else if self.peek().is_some_and(|next| next.is_ascii_digit() || next == '(') {
            self.service_description(tire)
        } else if tire.service == TireService::Unstated && tire.kind != TireKind::Flotation && self.peek() == Some('C')
        {
            self.take();
            Ok(Tire { service: TireService::Commercial, ..tire })
        } else {
            self.load_range(tire)
        }
    }

    fn load_range(&mut self, tire: Tire) -> Result<Tire> {
        self.spaces();
        let start = *self;
        let letter = self.take().and_then(LoadRange::from_letter);
        let is_word = !self.peek().is_some_and(|next| next.is_ascii_alphabetic());
        match letter {
            Some(load_range) if is_word && tire.load_range == LoadRange::Unmarked => Ok(Tire { load_range, ..tire }),
            _ => start.refuse("a load index with speed symbol, a load range letter, C, LT, XL, M+S or the end"),
        }
    }

    fn service_description(&mut self, tire: Tire) -> Result<Tire> {
        let start = *self;
        let mut above_symbol = self.word("(");
        let load_index = self.load_index()?;
        if !above_symbol && self.word("PR") {
            return match LoadRange::from_ply_rating(load_index) {
                Some(load_range) if tire.load_range == LoadRange::Unmarked => Ok(Tire { load_range, ..tire }),
                _ => start.refuse("one ply rating: 4, 6, 8 ... 24"),
            };
        }
        if tire.load_index > 0 {
            return start.refuse("one load index with speed symbol");
        }
        let load_index_dual = if self.word("/") { self.load_index()? } else { 0 };
        above_symbol |= self.word("(");
        let speed_symbol = self.speed_symbol()?;
        if above_symbol && !self.word(")") {
            return self.refuse("a closing parenthesis");
        }
        Ok(Tire { load_index, load_index_dual, speed_symbol, above_symbol, ..tire })
    }

    fn load_index(&mut self) -> Result<u16> {
        let expected = "a load index (1 to 279)";
        let index = self.number(expected)?.whole(1, 279, expected)?;
        Ok(index as u16)
    }

    fn speed_symbol(&mut self) -> Result<SpeedSymbol> {
        self.spaces();
        let start = *self;
        let mut letters = Letters::<8>::new();
        for is_wanted in [char::is_ascii_alphabetic, char::is_ascii_digit] {
            if let Some(letter) = self.peek().filter(is_wanted)
                && letters.push(letter).is_ok()
            {
                self.take();
            }
        }
        SpeedSymbol::from_letters(&letters).or_else(|_| start.refuse("a speed symbol, such as H or A8"))
    }
}

/// Room for the longest designation.
pub type TireText = Letters<47>;

impl Tire {
    /// The designation in its canonical spelling; [`parse`] reads it back to the same tire.
    ///
    /// ```
    /// let tire = trainwright::tire::parse("lt 235 / 85 r 16 c 120/116 q")?;
    /// assert_eq!(tire.text(), "LT235/85R16C 120/116Q");
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    #[must_use]
    pub fn text(&self) -> TireText {
        let mut out = Writer(TireText::new());
        let by_width = matches!(self.kind, TireKind::Metric | TireKind::NoAspect);
        match self.service {
            TireService::Passenger => out.put("P"),
            TireService::Temporary => out.put("T"),
            TireService::LightTruck if by_width => out.put("LT"),
            TireService::Trailer if by_width => out.put("ST"),
            _ => {}
        }
        match self.kind {
            TireKind::Metric => {
                out.number(self.width_mm, 0);
                out.put("/");
                out.number(self.aspect_pct, 0);
            }
            TireKind::NoAspect => out.number(self.width_mm, 0),
            TireKind::Flotation => {
                out.number(self.diameter_in, 0);
                out.put("x");
                out.number(self.width_in, 2);
            }
            TireKind::Inch => out.number(self.width_in, if floor(self.rim_in) < self.rim_in { 0 } else { 2 }),
        }
        out.put(self.speed_in_size.letters());
        out.put(match (self.plies, self.run_flat) {
            (TirePlies::Radial, false) => "R",
            (TirePlies::Radial, true) => "RF",
            (TirePlies::Diagonal, _) if self.kind == TireKind::Inch => "-",
            (TirePlies::Diagonal, _) => "D",
            (TirePlies::Belted, _) => "B",
        });
        out.number(self.rim_in, 0);
        match self.service {
            TireService::Commercial => out.put("C"),
            TireService::LightTruck if !by_width => out.put("LT"),
            TireService::Trailer if !by_width => out.put("ST"),
            _ => {}
        }
        if self.load_range != LoadRange::Unmarked {
            let is_attached = by_width && matches!(self.service, TireService::LightTruck | TireService::Trailer);
            out.put(if is_attached { "" } else { " LR" });
            out.put(self.load_range.letter());
        }
        if self.load_index != 0 {
            out.put(if self.above_symbol { " (" } else { " " });
            out.number(f64::from(self.load_index), 0);
            if self.load_index_dual != 0 {
                out.put("/");
                out.number(f64::from(self.load_index_dual), 0);
            }
            out.put(self.speed_symbol.letters());
            out.put(if self.above_symbol { ")" } else { "" });
        }
        out.put(if self.extra_load { " XL" } else { "" });
        out.put(if self.mud_snow { " M+S" } else { "" });
        out.0
    }
}

impl fmt::Display for Tire {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text())
    }
}

/// Writes without the formatting machinery, which would cost firmware several kilobytes. What does not fit is left out.
struct Writer(TireText);

impl Writer {
    fn put(&mut self, text: &str) {
        let _ = self.0.push_str(text);
    }

    /// A number below 10000 with the decimals it needs, up to three, and at least `least_decimals`.
    fn number(&mut self, value: f64, least_decimals: usize) {
        let mut rest = round_half_away(value * 1000.0) as u32;
        let mut digits = [0; 7];
        for digit in &mut digits {
            *digit = rest % 10;
            rest /= 10;
        }
        let (decimals, whole) = digits.split_at(3);
        let wanted = decimals.iter().position(|digit| *digit > 0).map_or(0, |zeros| 3 - zeros).max(least_decimals);
        whole.iter().rev().skip_while(|digit| **digit == 0).for_each(|digit| self.digit(*digit));
        self.put(if wanted > 0 { "." } else { "" });
        decimals.iter().rev().take(wanted).for_each(|digit| self.digit(*digit));
    }

    fn digit(&mut self, digit: u32) {
        let _ = self.0.push(char::from_digit(digit, 10).unwrap_or('0'));
    }
}
