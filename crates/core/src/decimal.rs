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

/// A power of ten that is read or printed with; below 2^53, and so exact as f64 too.
fn pow10(places: u8) -> Option<u64> {
    (places <= MAX_PLACES).then(|| 10u64.pow(u32::from(places)))
}

/// A number read from text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parsed {
    /// The nearest f64.
    pub value: f64,
    /// How many decimals were written.
    pub places: u8,
}

/// Why a text is no number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// It is no plain decimal number.
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
    let size = whole as f64 / pow10(places).ok_or(Unreadable::TooLong)? as f64;
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
}

const CAPACITY: usize = 40;

impl Text {
    /// The text.
    pub fn as_str(&self) -> &str {
        self.bytes.get(usize::from(self.start)..).and_then(|b| core::str::from_utf8(b).ok()).unwrap_or("")
    }

    #[inline(never)]
    fn push_front(&mut self, byte: u8) {
        self.start = self.start.saturating_sub(1);
        if let Some(slot) = self.bytes.get_mut(usize::from(self.start)) {
            *slot = byte;
        }
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
    let mut digits = scaled(value, places)?;
    let negative = value < 0.0 && digits != 0;
    let mut text = Text { bytes: [b' '; CAPACITY], start: CAPACITY as u8 };
    let mut written = 0u8;
    while digits != 0 || written <= places {
        if written == places && places > 0 {
            text.push_front(b'.');
        }
        // a small machine divides the narrowest number that holds the digits, dozens of times faster than 128 bits
        let digit = match (u32::try_from(digits), u64::try_from(digits)) {
            (Ok(few), _) => {
                digits = u128::from(few / 10);
                few % 10
            }
            (_, Ok(more)) => {
                digits = u128::from(more / 10);
                (more % 10) as u32
            }
            _ => {
                let digit = (digits % 10) as u32;
                digits /= 10;
                digit
            }
        };
        text.push_front(b'0' + digit as u8);
        written += 1;
    }
    match (negative, sign) {
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

/// |value| * 10^places as a whole number, halves away from zero, from the exact value of the f64.
///
/// ```
/// assert_eq!(ocellus_core::decimal::scaled(-23.455, 2), Some(2345));
/// ```
pub fn scaled(value: f64, places: u8) -> Option<u128> {
    let scale = pow10(places).filter(|_| value.is_finite() && value.abs() < 1e15)?;
    // value = mantissa * 2^exponent exactly
    let bits = value.to_bits();
    let biased = ((bits >> 52) & 0x7ff) as i32;
    let fraction = bits & ((1 << 52) - 1);
    let (mantissa, exponent) = if biased == 0 { (fraction, -1074) } else { (fraction | (1 << 52), biased - 1075) };
    // at most 2^53 * 10^15 < 2^103, so nothing here overflows
    let product = u128::from(mantissa) * u128::from(scale);
    // a size below 10^15 has a negative exponent; beyond 127 bits nothing is left
    let shift = exponent.unsigned_abs();
    let half = product.checked_shr(shift.saturating_sub(1)).unwrap_or(0);
    Some((half >> 1) + (half & 1))
}
