//! A short code that two people compare by voice: do both have the same entries, and do both programs say the same?
//!
//! # Specification, layout 4
//!
//! The code is four symbols, a hyphen, and two symbols, as in `K7QM-4T`. A symbol is a digit of Crockford's base 32:
//! `0123456789ABCDEFGHJKMNPQRSTVWXYZ`.
//!
//! **First part: the entries.** A text of fixed width is made of, in order:
//!
//! 1. the layout version, one character, `4`;
//! 2. every field but the case's label, in the order of [`Field::ALL`]:
//!    - a number: its sign `+` or `-`, then nine digits, the value times ten to the power of the field's decimals
//!      (`23.45` mm with two decimals is `+000002345`); zero is `+000000000`;
//!    - a word: two digits, its place among the field's words, from `00`;
//!    - a date: eight digits, `YYYYMMDD`;
//!    - a name: 24 characters, letters in capitals, filled up with spaces;
//!    - nothing entered: the field's default, where it has one; else as many `.` as the entry would take;
//! 3. two patient identifiers of 24 characters each, as names; or 48 `.` where none were entered. They are covered by the
//!    code and kept nowhere.
//!
//! Over the bytes of that text goes a CRC of 20 bits: polynomial `x^20 + x^17 + x^16 + x^15 + x^12 + x^10 + x^8 + x^7 +
//! x^4 + x^3 + 1` (`0x39599`, primitive), most significant bit first, register starting at all ones, nothing reflected,
//! nothing added at the end. Its 20 bits are the four symbols, most significant first.
//!
//! A CRC whose polynomial has a constant term misses no burst of errors shorter than its own 21 bits, so any change of
//! one or of two adjacent characters changes the code. Any other change leaves it as it was once in 1,048,576.
//!
//! **Second part: the answers.** In the order of the card: for every item its number in [`crate::item::What::ALL`], its
//! method (its place in [`crate::lens::Method::ALL`] plus 1, or 0), its row, one byte each, and its value as printed; for
//! every caution `0xFF`, its number in [`crate::caution::Code::ALL`], its method likewise. Over these bytes goes CRC-10/ATM
//! (polynomial `0x233`, register starting at zero, nothing reflected); its 10 bits are the two symbols.
//!
//! **Reading it.** First parts differ: the entries differ. Only the second parts differ: the programs differ. Both agree:
//! *same entries*, which is not the correct patient and not a correct printout.

use crate::case::Case;
use crate::caution::Caution;
use crate::decimal::{Sign, fixed, scaled};
use crate::draft::Draft;
use crate::error::{Code, Error};
use crate::field::{Field, Kind};
use crate::item::Item;
use crate::lens::Method;
use crate::name::{self, Name};
use crate::sheet::Sheet;
use crate::sink::Sink;

const LAYOUT: u8 = b'4';
const SYMBOLS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const NUMBER_DIGITS: u32 = 9;

/// Two things that identify the patient, say a hospital number and a date of birth. Covered by a code, kept nowhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Identifiers(pub Name, pub Name);

/// A read-back code.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ReadBack([u8; 7]);

impl ReadBack {
    /// The code, as in `K7QM-4T`.
    pub fn as_str(&self) -> &str {
        core::str::from_utf8(&self.0).unwrap_or("")
    }

    /// The words to say, one a symbol, with an empty word for the hyphen.
    ///
    /// ```
    /// # use ocellus_core::{case::Case, draft::Draft, field::Field, readback};
    /// # let mut draft = Draft::default();
    /// # for (field, text) in [
    /// #     (Field::Side, "right"), (Field::AxialLength, "23.50"), (Field::K1, "43.25"), (Field::K2, "44.00"),
    /// #     (Field::KKind, "keratometric"), (Field::AlMethod, "optical"), (Field::EyeState, "phakic"),
    /// #     (Field::PreviousSurgery, "none"), (Field::Target, "-0.25"), (Field::AConstant, "118.9"),
    /// # ] { draft.enter(field, text)?; }
    /// let code = readback::of(&Case::try_from(&draft)?, None)?;
    /// assert_eq!(code.words().filter(|word| !word.is_empty()).count(), 6);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn words(&self) -> impl Iterator<Item = &'static str> + '_ {
        self.0.iter().map(|symbol| crate::words::spelled(*symbol))
    }
}

/// The read-back code of a case.
///
/// # Errors
/// [`Code::TooManyDecimals`] when an entry has more decimals than its field: two people could not have typed the same.
///
/// ```
/// use ocellus_core::{case::Case, draft::Draft, field::Field, readback};
/// let mut draft = Draft::default();
/// for (field, text) in [
///     (Field::Side, "right"), (Field::AxialLength, "23.50"), (Field::K1, "43.25"), (Field::K2, "44.00"),
///     (Field::KKind, "keratometric"), (Field::AlMethod, "optical"), (Field::EyeState, "phakic"),
///     (Field::PreviousSurgery, "none"), (Field::Target, "-0.25"), (Field::AConstant, "118.9"),
/// ] {
///     draft.enter(field, text)?;
/// }
/// let first = readback::of(&Case::try_from(&draft)?, None)?;
/// draft.enter(Field::AxialLength, "23.60")?;
/// let second = readback::of(&Case::try_from(&draft)?, None)?;
/// assert_ne!(first.as_str()[..4], second.as_str()[..4]);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn of(case: &Case, identifiers: Option<&Identifiers>) -> Result<ReadBack, Error> {
    let mut answers = Answers::default();
    crate::plan::plan(case, &mut answers);
    answers.code(case.draft(), identifiers)
}

/// The same of a case or of a set-up without an eye.
///
/// # Errors
/// As [`of`].
///
/// ```
/// use ocellus_core::{draft::Draft, field::Field, readback, sheet::Sheet};
/// let mut draft = Draft::default();
/// draft.enter(Field::Altitude, "1600")?;
/// let code = readback::of_sheet(&Sheet::check(&draft, &mut |_| {}).unwrap(), None)?;
/// assert_eq!(code.as_str().len(), 7);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn of_sheet(sheet: &Sheet, identifiers: Option<&Identifiers>) -> Result<ReadBack, Error> {
    let mut answers = Answers::default();
    sheet.plan(&mut answers);
    answers.code(sheet.draft(), identifiers)
}

/// The part of a code that covers the entries, as a number of 20 bits.
///
/// # Errors
/// As [`of`].
///
/// ```
/// use ocellus_core::{draft::Draft, readback};
/// assert!(readback::entries(&Draft::default(), None)? < 1 << 20);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn entries(draft: &Draft, identifiers: Option<&Identifiers>) -> Result<u32, Error> {
    let mut crc = Crc::entries();
    canonical(draft, identifiers, &mut |byte| crc.push(byte))?;
    Ok(crc.register)
}

/// Streams the canonical text of layout 4.
///
/// # Errors
/// As [`of`].
///
/// ```
/// use ocellus_core::{draft::Draft, field::Field, readback};
/// let (mut draft, mut text) = (Draft::default(), Vec::new());
/// draft.enter(Field::Side, "left")?;
/// readback::canonical(&draft, None, &mut |byte| text.push(byte))?;
/// assert!(text.starts_with(b"401........"));
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn canonical(draft: &Draft, identifiers: Option<&Identifiers>, push: &mut dyn FnMut(u8)) -> Result<(), Error> {
    push(LAYOUT);
    for &field in Field::ALL.iter().filter(|f| **f != Field::Id) {
        entry(draft, field, push)?;
    }
    match identifiers {
        Some(Identifiers(first, second)) => {
            [first, second].iter().for_each(|name| name.canonical().into_iter().for_each(&mut *push));
        }
        None => (0..2 * name::LENGTH).for_each(|_| push(b'.')),
    }
    Ok(())
}

fn entry(draft: &Draft, field: Field, push: &mut dyn FnMut(u8)) -> Result<(), Error> {
    let (width, places) = match field.kind() {
        Kind::Number(places, _) => (NUMBER_DIGITS, places),
        Kind::Choice(_) => (2, 0),
        Kind::Date => (8, 0),
        Kind::Name => {
            match draft.name(field) {
                Some(name) => name.canonical().into_iter().for_each(push),
                None => (0..name::LENGTH).for_each(|_| push(b'.')),
            }
            return Ok(());
        }
    };
    let signed = matches!(field.kind(), Kind::Number(..));
    let Some(value) = draft.number(field).or(field.default()) else {
        (0..width + u32::from(signed)).for_each(|_| push(b'.'));
        return Ok(());
    };
    let refused = || Error { value: Some(value), ..Error::of(Code::TooManyDecimals, field) };
    let mut unit = 10u32.pow(width);
    let whole = scaled(value, places).and_then(|whole| u32::try_from(whole).ok());
    let mut whole = whole.filter(|whole| *whole < unit).ok_or_else(refused)?;
    if f64::from(whole) / f64::from(10u32.pow(u32::from(places))) != value.abs() {
        return Err(refused());
    }
    if signed {
        push(if value < 0.0 && whole != 0 { b'-' } else { b'+' });
    }
    while unit > 1 {
        unit /= 10;
        // `unit` is never 0 here; `max` tells the compiler so, and spares a device the panic for it
        push(b'0' + (whole / unit.max(1)) as u8);
        whole %= unit.max(1);
    }
    Ok(())
}

/// A sink that gathers the second part of a code; wrap another sink in it to print a card and its code in one pass.
#[derive(Debug, Default)]
pub struct Answers {
    crc: Option<Crc>,
}

impl Answers {
    fn push(&mut self, byte: u8) {
        self.crc.get_or_insert(Crc::answers()).push(byte);
    }

    fn push_method(&mut self, method: Option<Method>) {
        self.push(method.map_or(0, |m| m as u8 + 1));
    }

    /// The code, once everything has been streamed.
    ///
    /// # Errors
    /// As [`of`].
    pub fn code(&self, draft: &Draft, identifiers: Option<&Identifiers>) -> Result<ReadBack, Error> {
        let (entries, answers) = (entries(draft, identifiers)?, self.crc.map_or(0, |crc| crc.register));
        let symbol = |bits: u32| SYMBOLS.get(bits as usize & 31).copied().unwrap_or(b'0');
        Ok(ReadBack([
            symbol(entries >> 15),
            symbol(entries >> 10),
            symbol(entries >> 5),
            symbol(entries),
            b'-',
            symbol(answers >> 5),
            symbol(answers),
        ]))
    }
}

impl Sink for Answers {
    fn item(&mut self, item: Item) {
        self.push(item.what as u8);
        self.push_method(item.method);
        self.push(item.row);
        let sign = if item.what.signed() { Sign::Always } else { Sign::Minus };
        if let Some(text) = fixed(item.value, item.what.places(), sign) {
            text.as_str().bytes().for_each(|byte| self.push(byte));
        }
    }

    fn caution(&mut self, caution: Caution) {
        self.push(0xFF);
        self.push(caution.code as u8);
        self.push_method(caution.method);
    }
}

/// A CRC of at most 31 bits, most significant bit first, nothing reflected.
#[derive(Clone, Copy, Debug)]
struct Crc {
    width: u32,
    polynomial: u32,
    register: u32,
}

impl Crc {
    const fn entries() -> Crc {
        Crc { width: 20, polynomial: 0x39599, register: (1 << 20) - 1 }
    }

    const fn answers() -> Crc {
        Crc { width: 10, polynomial: 0x233, register: 0 }
    }

    fn push(&mut self, byte: u8) {
        for bit in (0..8).rev() {
            let out = (self.register >> (self.width - 1) ^ u32::from(byte >> bit)) & 1;
            self.register = (self.register << 1 & ((1 << self.width) - 1)) ^ (out * self.polynomial);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(mut crc: Crc, text: &[u8]) -> u32 {
        text.iter().for_each(|byte| crc.push(*byte));
        crc.register
    }

    /// The check value of CRC-10/ATM in the published catalogue of parametrised CRC algorithms (memory).
    #[test]
    fn answers_are_crc_10_atm() {
        assert_eq!(of(Crc::answers(), b"123456789"), 0x199);
    }

    /// x has the full order 2^20 - 1 = 3 * 5^2 * 11 * 31 * 41, so the polynomial is primitive.
    #[test]
    fn polynomial_of_the_entries_is_primitive() {
        let order_divides = |steps: u32| {
            let mut register = 1u32;
            for _ in 0..steps {
                let out = register >> 19 & 1;
                register = (register << 1 & 0xF_FFFF) ^ (out * Crc::entries().polynomial);
            }
            register == 1
        };
        let full = (1 << 20) - 1;
        assert!(order_divides(full));
        assert!([3, 5, 11, 31, 41].iter().all(|factor| !order_divides(full / factor)));
    }
}
