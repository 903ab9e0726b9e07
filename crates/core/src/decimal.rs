//! Decimal text in and out, exact, without the standard formatter, which is large for a microcontroller and can panic.
//!
//! **In**: an optional sign, digits, at most one point with at least one digit after it, no exponent, at most 15
//! significant digits. The digits as a whole number are below 2^53 and the power of ten is at most 10^15, both exact, so
//! their quotient is the nearest f64 to the decimal value: the same bits as the standard library's parser.
//!
//! **Out**: with a fixed number of decimals, by one rule: the exact value of the f64, rounded to the nearest decimal,
//! halves away from zero. The standard formatter differs only on exact halves, which it takes to even.

/// The most decimals that are read or printed.
pub const MAX_PLACES: u8 = 15;

/// The most significant digits that are read.
pub const MAX_DIGITS: u8 = 15;

/// The powers of ten that are read and printed with; below 2^53, and so exact as f64 too.
#[expect(clippy::indexing_slicing, reason = "while it is compiled")]
static POWERS: [u64; MAX_PLACES as usize + 1] = {
    let mut powers = [1; MAX_PLACES as usize + 1];
    let mut places = 0;
    while places < powers.len() {
        powers[places] = 10u64.pow(places as u32);
        places += 1;
    }
    powers
};

/// A number read from text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parsed {
    /// The nearest f64.
    pub value: f64,
    /// How many decimals were written.
    pub places: u8,
}

/// Why a text is not a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// It is not a plain decimal number.
    NotANumber,
    /// A comma stands where the point belongs.
    CommaDecimal,
    /// It has more digits than are held exactly.
    TooLong,
}

/// Reads a decimal number.
///
/// # Errors
/// [`Unreadable::CommaDecimal`] when a comma stands where the point belongs, [`Unreadable::TooLong`] beyond 15 significant digits or
/// decimals, [`Unreadable::NotANumber`] for anything else, including exponents, `nan` and `inf`.
///
/// ```
/// use ocellus_core::decimal::{Parsed, Unreadable, parse};
/// assert_eq!(parse("-23.50"), Ok(Parsed { value: -23.5, places: 2 }));
/// assert_eq!(parse("23,5"), Err(Unreadable::CommaDecimal));
/// assert_eq!(parse("1e999"), Err(Unreadable::NotANumber));
/// ```
pub fn parse(text: &str) -> Result<Parsed, Unreadable> {
    let (negative, digits) = match text.as_bytes() {
        [b'-', rest @ ..] => (true, rest),
        [b'+', rest @ ..] => (false, rest),
        rest => (false, rest),
    };
    let (mut whole, mut significant) = (0u64, 0u8);
    let (mut seen, mut places) = (0u32, None::<u8>);
    for &byte in digits {
        match byte {
            b'0'..=b'9' => {
                if significant > 0 || byte != b'0' {
                    significant = significant.saturating_add(1);
                }
                if let Some(places) = &mut places {
                    *places = places.saturating_add(1);
                }
                if significant > MAX_DIGITS || places > Some(MAX_PLACES) {
                    return Err(if is_plain(digits) { Unreadable::TooLong } else { Unreadable::NotANumber });
                }
                whole = whole * 10 + u64::from(byte - b'0');
                seen += 1;
            }
            b'.' if places.is_none() && seen > 0 => places = Some(0),
            b',' if seen > 0 => return Err(Unreadable::CommaDecimal),
            _ => return Err(Unreadable::NotANumber),
        }
    }
    let places = match (seen, places) {
        (0, _) | (_, Some(0)) => return Err(Unreadable::NotANumber),
        (_, places) => places.unwrap_or(0),
    };
    let power = POWERS.get(usize::from(places)).ok_or(Unreadable::TooLong)?;
    let size = whole as f64 / *power as f64;
    Ok(Parsed { value: if negative { -size } else { size }, places })
}

fn is_plain(digits: &[u8]) -> bool {
    digits.iter().all(|b| b.is_ascii_digit() || *b == b'.')
}

/// A number written as decimal text, held in place.
#[derive(Clone, Copy, Debug)]
pub struct Text {
    bytes: [u8; CAPACITY],
    start: u8,
    end: u8,
}

/// A sign, a digit that rounding adds, 15 digits, a point, 15 decimals.
const CAPACITY: usize = 36;

impl Text {
    /// Nothing yet, with room in front of it.
    const EMPTY: Text = Text { bytes: [0; CAPACITY], start: 2, end: 2 };

    /// The text.
    pub fn as_str(&self) -> &str {
        let bytes = self.bytes.get(usize::from(self.start)..usize::from(self.end));
        bytes.and_then(|bytes| core::str::from_utf8(bytes).ok()).unwrap_or("")
    }

    #[inline(never)]
    fn push(&mut self, byte: u8) {
        if let Some(slot) = self.bytes.get_mut(usize::from(self.end)) {
            *slot = byte;
            self.end += 1;
        }
    }

    #[inline(never)]
    fn push_front(&mut self, byte: u8) {
        self.start = self.start.saturating_sub(1);
        if let Some(slot) = self.bytes.get_mut(usize::from(self.start)) {
            *slot = byte;
        }
    }

    /// A whole number, without zeros before it.
    fn whole(&mut self, mut number: u64) {
        for power in POWERS.iter().rev() {
            let mut digit = b'0';
            while number >= *power {
                number -= *power;
                digit += 1;
            }
            if digit > b'0' || self.end > self.start || *power == 1 {
                self.push(digit);
            }
        }
    }

    /// One more in the last digit.
    fn round_up(&mut self) {
        for byte in self.bytes.iter_mut().take(usize::from(self.end)).skip(usize::from(self.start)).rev() {
            match *byte {
                b'.' => {}
                b'9' => *byte = b'0',
                _ => {
                    *byte += 1;
                    return;
                }
            }
        }
        self.push_front(b'1');
    }
}

/// What is behind the point, in units of 2^-128.
struct Fraction([u32; 4]);

impl Fraction {
    /// Whole number and fraction of a size: exact, but for what is below 2^-128, on which no printed decimal depends.
    fn split(size: f64) -> (u64, Fraction) {
        // size = mantissa / 2^shift exactly
        let bits = size.to_bits();
        let (biased, fraction) = ((bits >> 52) as u32, bits & ((1 << 52) - 1));
        let (mantissa, shift) =
            if biased == 0 { (fraction, 1074) } else { (fraction | 1 << 52, 1075u32.saturating_sub(biased)) };
        let whole = mantissa.checked_shr(shift).unwrap_or(0);
        let rest = mantissa - whole.checked_shl(shift).unwrap_or(0);
        let (high, low) = match shift {
            0..=64 => (rest.checked_shl(64 - shift).unwrap_or(0), 0),
            65..=128 => (rest.checked_shr(shift - 64).unwrap_or(0), rest.checked_shl(128 - shift).unwrap_or(0)),
            _ => (0, 0),
        };
        (whole, Fraction([low as u32, (low >> 32) as u32, high as u32, (high >> 32) as u32]))
    }

    /// The next digit: what ten times as much has before the point. In halves, as a small machine multiplies.
    fn digit(&mut self) -> u8 {
        let mut carry = 0;
        for limb in &mut self.0 {
            let low = (*limb & 0xFFFF) * 10 + carry;
            let high = (*limb >> 16) * 10 + (low >> 16);
            *limb = high << 16 | low & 0xFFFF;
            carry = high >> 16;
        }
        carry as u8
    }

    fn is_half_or_more(&self) -> bool {
        matches!(self.0, [.., top] if top >> 31 == 1)
    }
}

impl core::fmt::Display for Text {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.pad(self.as_str())
    }
}

/// When a sign is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// Only a minus.
    Minus,
    /// Always, a plus for zero: powers and refractions, where a lost sign is a wrong lens.
    Always,
}

/// Writes a number with a fixed number of decimals.
///
/// Every finite f64 smaller in size than 10^15 is printed; what rounds to zero is printed without a minus.
/// `None` for NaN, for infinities, for larger numbers, and for more than [`MAX_PLACES`] decimals.
///
/// ```
/// use ocellus_core::decimal::{Sign, fixed};
/// assert_eq!(fixed(0.125, 2, Sign::Minus).unwrap().as_str(), "0.13");
/// assert_eq!(fixed(-0.004, 2, Sign::Always).unwrap().as_str(), "+0.00");
/// assert_eq!(fixed(21.5, 2, Sign::Always).unwrap().as_str(), "+21.50");
/// assert!(fixed(f64::NAN, 2, Sign::Minus).is_none());
/// ```
pub fn fixed(value: f64, places: u8, sign: Sign) -> Option<Text> {
    if places > MAX_PLACES || !value.is_finite() || value.abs() >= 1e15 {
        return None;
    }
    let (whole, mut fraction) = Fraction::split(value.abs());
    let mut text = Text::EMPTY;
    text.whole(whole);
    if places > 0 {
        text.push(b'.');
        (0..places).for_each(|_| text.push(b'0' + fraction.digit()));
    }
    if fraction.is_half_or_more() {
        text.round_up();
    }
    let is_zero = text.as_str().bytes().all(|byte| matches!(byte, b'0' | b'.'));
    match (value < 0.0 && !is_zero, sign) {
        (true, _) => text.push_front(b'-'),
        (false, Sign::Always) => text.push_front(b'+'),
        (false, Sign::Minus) => {}
    }
    Some(text)
}

/// The decimals with which a number is printed to so many significant digits, counted in it as it is printed with the
/// most decimals; at least one for zero.
///
/// ```
/// use ocellus_core::decimal::places_for;
/// assert_eq!((places_for(23.46, 8), places_for(0.000123, 3), places_for(123456789.0, 8)), (6, 6, 0));
/// ```
pub fn places_for(value: f64, significant: u8) -> u8 {
    let Some(text) = fixed(value, MAX_PLACES, Sign::Minus) else { return 0 };
    let (mut digits, mut zeros) = (0u8, 0u8);
    for byte in text.as_str().bytes().filter(u8::is_ascii_digit) {
        zeros += u8::from(zeros == digits && byte == b'0');
        digits += 1;
    }
    let whole = digits.saturating_sub(MAX_PLACES);
    if zeros == digits { 1 } else { significant.saturating_add(zeros).saturating_sub(whole).min(MAX_PLACES) }
}
