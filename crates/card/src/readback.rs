//! A short code that two people compare by voice: do both have the same entries, and do both programs say the same?
//!
//! # Specification, layout 5
//!
//! The code is four symbols, a hyphen, and two symbols, as in `K7QM-4T`. A symbol is a digit of Crockford's base 32:
//! `0123456789ABCDEFGHJKMNPQRSTVWXYZ`.
//!
//! **First part: the entries.** A text is made of, in order:
//!
//! 1. the layout version, one character, `5`;
//! 2. every entry that was made and is not its default, but the case's label; the parts of the card by their numbers, and the
//!    entries of a part by theirs. Each is two bytes, the number of its part and its own, and then
//!    - a number: its sign `+` or `-`, then nine digits, the value times ten to the power of the entry's decimals
//!      (`23.45` mm with two decimals is `+000002345`); zero is `+000000000`;
//!    - a word: two digits, its place among the entry's words, from `00`;
//!    - a date: eight digits, `YYYYMMDD`;
//!    - a name: 24 characters, letters in capitals, filled up with spaces;
//! 3. two patient identifiers of 24 characters each, as names; or 48 `.` where none were entered. They are covered by the
//!    code and kept nowhere.
//!
//! A default that is typed and one that is left out are the same entry, and a program without some part has the code of one
//! with it, as long as nothing was entered there.
//!
//! Over the bytes of that text goes a CRC of 20 bits: polynomial `x^20 + x^17 + x^16 + x^15 + x^12 + x^10 + x^8 + x^7 +
//! x^4 + x^3 + 1` (`0x39599`, primitive), most significant bit first, register starting at all ones, nothing reflected,
//! nothing added at the end. Its 20 bits are the four symbols, most significant first.
//!
//! A CRC whose polynomial has a constant term misses no burst of errors shorter than its own 21 bits, so any change of
//! one or of two adjacent characters changes the code. Any other change leaves it as it was once in 1,048,576.
//!
//! **Second part: the answers.** In the order of the card: for every number that comes out the number of its part, its own, its
//! method (the method's number plus 1, or 0), its row, one byte each, and its value as printed; for every refusal and
//! every caution `0xFF`, the number of its part, its own, its method likewise; notes are in neither part. Over these bytes
//! goes CRC-10/ATM (polynomial `0x233`, register starting at zero, nothing reflected); its 10 bits are the two symbols.
//!
//! **Reading it.** First parts differ: the entries differ. Only the second parts differ: the programs differ. Both agree:
//! *same entries*, which is not the correct patient and not a correct printout.

use crate::case::Case;
use crate::caution::{Caution, Severity};
use crate::crc::Crc;
use crate::draft::Draft;
use crate::entry::Kind;
use crate::error::{Error, Wrong};
use crate::id::EntryId;
use crate::item::Item;
use crate::name::{self, Name};
use crate::names::entries::ID;
use crate::sink::Sink;
use ocellus_core::decimal::{Sign, fixed, parse};
use ocellus_core::lens::method::Method;
use ocellus_core::working::Steps;

const LAYOUT: u8 = b'5';
const SYMBOLS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const NUMBER_DIGITS: usize = 9;

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
    /// use ocellus_card::{case::Case, draft::Draft, entries, readback};
    /// let mut draft = Draft::default();
    /// draft.enter(entries::ALTITUDE, "1600")?;
    /// let code = readback::of(&Case::try_from(&draft)?, None)?;
    /// assert_eq!(code.words().filter(|word| !word.is_empty()).count(), 6);
    /// # Ok::<(), ocellus_card::error::Error>(())
    /// ```
    pub fn words(&self) -> impl Iterator<Item = &'static str> + '_ {
        self.0.iter().map(|symbol| crate::words::spelled(*symbol))
    }
}

/// The read-back code of a case.
///
/// # Errors
/// [`Wrong::TooManyDecimals`] when an entry has more decimals than its kind: two people could not have typed the same.
///
/// ```
/// use ocellus_card::{case::Case, draft::Draft, entries, readback};
/// let mut draft = Draft::default();
/// draft.enter(entries::ALTITUDE, "1600")?;
/// let first = readback::of(&Case::try_from(&draft)?, None)?;
/// draft.enter(entries::ALTITUDE, "1601")?;
/// let second = readback::of(&Case::try_from(&draft)?, None)?;
/// assert_ne!(first.as_str()[..4], second.as_str()[..4]);
/// # Ok::<(), ocellus_card::error::Error>(())
/// ```
pub fn of(case: &Case, identifiers: Option<&Identifiers>) -> Result<ReadBack, Error> {
    let mut answers = Answers::default();
    case.plan(&mut answers);
    answers.code(case.draft(), identifiers)
}

/// The part of a code that covers the entries, as a number of 20 bits.
///
/// # Errors
/// As [`of`].
///
/// ```
/// use ocellus_card::{draft::Draft, readback};
/// assert!(readback::entries(&Draft::default(), None)? < 1 << 20);
/// # Ok::<(), ocellus_card::error::Error>(())
/// ```
pub fn entries(draft: &Draft, identifiers: Option<&Identifiers>) -> Result<u32, Error> {
    let mut crc = Crc::of_entries();
    canonical(draft, identifiers, &mut |byte| crc.push(byte))?;
    Ok(crc.value())
}

/// Streams the canonical text of layout 5.
///
/// # Errors
/// As [`of`].
///
/// ```
/// use ocellus_card::{draft::Draft, entries, readback};
/// let (mut draft, mut text) = (Draft::default(), Vec::new());
/// draft.enter(entries::SIDE, "left")?;
/// readback::canonical(&draft, None, &mut |byte| text.push(byte))?;
/// assert!(text.starts_with(b"5\x02\x0101........"));
/// # Ok::<(), ocellus_card::error::Error>(())
/// ```
pub fn canonical(draft: &Draft, identifiers: Option<&Identifiers>, push: &mut dyn FnMut(u8)) -> Result<(), Error> {
    push(LAYOUT);
    for entry in draft.made().filter(|entry| *entry != ID) {
        of_entry(draft, entry, push)?;
    }
    match identifiers {
        Some(Identifiers(first, second)) => {
            [first, second].iter().for_each(|name| name.canonical().into_iter().for_each(&mut *push));
        }
        None => (0..2 * name::LENGTH).for_each(|_| push(b'.')),
    }
    Ok(())
}

fn of_entry(draft: &Draft, entry: EntryId, push: &mut dyn FnMut(u8)) -> Result<(), Error> {
    let mut numbers = || [entry.part().0, entry.number()].into_iter().for_each(&mut *push);
    let (width, places) = match entry.kind() {
        Kind::Number(places, _) => (NUMBER_DIGITS, places),
        Kind::Choice(_) => (2, 0),
        Kind::Date => (8, 0),
        Kind::Name => {
            numbers();
            draft.name(entry).into_iter().flat_map(Name::canonical).for_each(push);
            return Ok(());
        }
    };
    let Some(value) = draft.number(entry).filter(|value| Some(*value) != entry.default()) else { return Ok(()) };
    numbers();
    let refused = || Error { value: Some(value), ..Error::of(Wrong::TooManyDecimals, entry) };
    let text = fixed(value, places, Sign::Always).ok_or_else(refused)?;
    // with more decimals it would be read as another number
    if parse(text.as_str()).map(|parsed| parsed.value) != Ok(value) {
        return Err(refused());
    }
    let digits = || text.as_str().bytes().filter(u8::is_ascii_digit);
    let zeros = width.checked_sub(digits().count()).ok_or_else(refused)?;
    if matches!(entry.kind(), Kind::Number(..)) {
        push(if text.as_str().starts_with('-') { b'-' } else { b'+' });
    }
    (0..zeros).for_each(|_| push(b'0'));
    digits().for_each(push);
    Ok(())
}

/// A sink that gathers the second part of a code; wrap another sink in it to print a card and its code in one pass.
#[derive(Debug, Default)]
pub struct Answers {
    crc: Option<Crc>,
}

impl Answers {
    fn push(&mut self, byte: u8) {
        self.crc.get_or_insert(Crc::of_answers()).push(byte);
    }

    fn push_method(&mut self, method: Option<Method>) {
        self.push(method.map_or(0, |m| m as u8 + 1));
    }

    /// The code, once everything has been streamed.
    ///
    /// # Errors
    /// As [`of`].
    pub fn code(&self, draft: &Draft, identifiers: Option<&Identifiers>) -> Result<ReadBack, Error> {
        let (entries, answers) = (entries(draft, identifiers)?, self.crc.map_or(0, |crc| crc.value()));
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

impl Steps for Answers {}

impl Sink for Answers {
    fn item(&mut self, item: Item) {
        self.push(item.what.part().0);
        self.push(item.what.number());
        self.push_method(item.method);
        self.push(item.row);
        let sign = if item.what.signed() { Sign::Always } else { Sign::Minus };
        if let Some(text) = fixed(item.value, item.what.places(), sign) {
            text.as_str().bytes().for_each(|byte| self.push(byte));
        }
    }

    fn caution(&mut self, caution: Caution) {
        // a note is not an answer: an entry left out means the same as its usual value typed
        if caution.code.severity() == Severity::Note {
            return;
        }
        self.push(0xFF);
        self.push(caution.code.part().0);
        self.push(caution.code.number());
        self.push_method(caution.method);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The check value of CRC-10/ATM in the published catalogue of parametrised CRC algorithms (memory).
    #[test]
    fn answers_are_crc_10_atm() {
        let mut answers = Answers::default();
        b"123456789".iter().for_each(|byte| answers.push(*byte));
        assert_eq!(answers.crc.unwrap().value(), 0x199);
    }

    /// x has the full order 2^20 - 1 = 3 * 5^2 * 11 * 31 * 41, so the polynomial is primitive.
    #[test]
    fn polynomial_of_the_entries_is_primitive() {
        let order_divides = |steps: u32| {
            let mut register = 1u32;
            for _ in 0..steps {
                let out = register >> 19 & 1;
                register = (register << 1 & 0xF_FFFF) ^ (out * 0x39599);
            }
            register == 1
        };
        let full = (1 << 20) - 1;
        assert!(order_divides(full));
        assert!([3, 5, 11, 31, 41].iter().all(|factor| !order_divides(full / factor)));
    }
}
