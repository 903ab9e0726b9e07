//! A draft on the line: the requests that enter it, what a device does with them, and the sum by which both know that
//! they mean the same.

use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Kind};
use ocellus_core::name::Name;

use crate::code::Refusal;
use crate::frame;
use crate::message::*;
use crate::number::Numbered;

/// CRC-32 over everything entered, in the order of the fields: a number, word or date as its field's number and the eight
/// bytes of its value; a name as its field's number, its length and its characters.
///
/// ```
/// use ocellus_core::{draft::Draft, field::Field};
/// use ocellus_link::entries::case_sum;
/// let mut draft = Draft::default();
/// assert_eq!(case_sum(&draft), 0);
/// draft.enter(Field::AxialLength, "23.45")?;
/// let once = case_sum(&draft);
/// draft.enter(Field::AxialLength, "23.46")?;
/// assert_ne!(case_sum(&draft), once);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn case_sum(draft: &Draft) -> u32 {
    let mut sum = frame::sum();
    for &field in Field::ALL {
        if let Some(value) = draft.number(field) {
            sum.update(&[field.number()]);
            sum.update(&value.to_le_bytes());
        }
        if let Some(name) = draft.name(field) {
            sum.update(&[field.number(), name.as_str().len() as u8]);
            sum.update(name.as_str().as_bytes());
        }
    }
    sum.finalize()
}

/// The requests that bring a draft to a device, in order. Each is to be sent once the one before is acknowledged.
///
/// ```
/// use ocellus_core::{draft::Draft, field::Field};
/// use ocellus_link::{entries::requests, message::Request};
/// let (mut draft, mut asked) = (Draft::default(), Vec::new());
/// draft.enter(Field::AxialLength, "23.45")?;
/// draft.enter(Field::LensModel, "Demo")?;
/// requests(&draft, &mut |request| asked.push(request));
/// assert!(matches!(asked[..], [Request::Begin(_), Request::Enter(_), Request::EnterName(_)]));
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn requests(draft: &Draft, ask: &mut dyn FnMut(Request)) {
    ask(Begin {}.into());
    const NONE: Enter = Enter { count: 0, fields: [0; ENTRIES], values: [0.0; ENTRIES] };
    let mut enter = NONE;
    for &field in Field::ALL {
        let Some(number) = draft.number(field) else { continue };
        let place = usize::from(enter.count);
        if let (Some(slot), Some(value)) = (enter.fields.get_mut(place), enter.values.get_mut(place)) {
            (*slot, *value) = (field.number(), number);
            enter.count += 1;
        }
        if usize::from(enter.count) == ENTRIES {
            ask(core::mem::replace(&mut enter, NONE).into());
        }
    }
    if enter.count > 0 {
        ask(enter.into());
    }
    for &field in Field::ALL {
        let Some(name) = draft.name(field) else { continue };
        let (field, length) = (field.number(), name.as_str().len() as u8);
        ask(EnterName { field, length, characters: filled(name.as_str()) }.into());
    }
}

/// Enters numbers, words and dates; all of them, or none where one is refused.
pub(crate) fn enter(draft: &mut Draft, enter: &Enter) -> Result<(), Problem> {
    if usize::from(enter.count) > ENTRIES {
        return Err(Refusal::TooMany.about(enter.count));
    }
    let entries = || enter.fields.iter().zip(&enter.values).take(usize::from(enter.count));
    for (number, _) in entries() {
        match Field::from_number(*number).map(Field::kind) {
            Some(Kind::Number(..) | Kind::Choice(_) | Kind::Date) => {}
            Some(Kind::Name) | None => return Err(Refusal::NotAnEntry.about(*number)),
        }
    }
    for (number, value) in entries() {
        if let Some(field) = Field::from_number(*number) {
            draft.set(field, *value);
        }
    }
    Ok(())
}

/// Enters a name, exactly as it was sent.
pub(crate) fn enter_name(draft: &mut Draft, enter: &EnterName) -> Result<(), Problem> {
    let field = Field::from_number(enter.field).ok_or(Refusal::NotAnEntry.about(enter.field))?;
    let text = enter.characters.get(..usize::from(enter.length)).and_then(|text| core::str::from_utf8(text).ok());
    let name = text.and_then(|text| Name::parse(text).ok().filter(|name| name.as_str() == text));
    draft
        .set_name(field, name.ok_or(Refusal::NotAName.about(enter.field))?)
        .map_err(|_| Refusal::NotAnEntry.about(enter.field))
}

/// Text filled up with zeros; what does not fit is cut off.
pub(crate) fn filled<const N: usize>(text: &str) -> [u8; N] {
    let mut bytes = [0; N];
    bytes.iter_mut().zip(text.bytes()).for_each(|(slot, byte)| *slot = byte);
    bytes
}

/// The text in bytes filled up with zeros; empty where they are not ASCII.
///
/// ```
/// assert_eq!(ocellus_link::entries::text(b"demo\0\0\0\0"), "demo");
/// ```
pub fn text(bytes: &[u8]) -> &str {
    let used = bytes.split(|byte| *byte == 0).next().unwrap_or_default();
    if used.is_ascii() { core::str::from_utf8(used).unwrap_or_default() } else { "" }
}
