//! A line that enters something: `al 23.46 mm`, `k1 43.25 @ 95`, or a line of a case file.

use crate::outcome::Outcome;
use crate::page::Page;
use crate::word::same_word;
use crate::wrong::{self, Wrong};
use ocellus_core::decimal::parse;
use ocellus_core::draft::Draft;
use ocellus_core::error::{Code, Error};
use ocellus_core::field::{Field, Kind};
use ocellus_core::name::Name;

/// Trade notation: a power goes on with its axis, a sphere with its cylinder.
const GOES_ON: &[(Field, u8, Field)] = &[
    (Field::K1, b'@', Field::K1Axis),
    (Field::K2, b'@', Field::K2Axis),
    (Field::AfterK1, b'@', Field::AfterK1Axis),
    (Field::AfterK2, b'@', Field::AfterK2Axis),
    (Field::AfterSphere, b'/', Field::AfterCylinder),
    (Field::AfterCylinder, b'@', Field::AfterAxis),
    (Field::Centroid, b'@', Field::CentroidAxis),
    (Field::BackR1, b'@', Field::BackR1Axis),
    (Field::BackR2, b'@', Field::BackR2Axis),
    (Field::OldSphere, b'/', Field::OldCylinder),
    (Field::OldCylinder, b'@', Field::OldAxis),
    (Field::LensCylinder, b'@', Field::LensAxis),
];

/// The field that is typed after this one in trade notation.
pub(crate) fn after(field: Field) -> Option<(u8, Field)> {
    GOES_ON.iter().find(|(first, ..)| *first == field).map(|(_, mark, next)| (*mark, *next))
}

/// The field with this word or key.
pub(crate) fn field(name: &str) -> Option<Field> {
    Field::ALL
        .iter()
        .copied()
        .find(|field| field.word().eq_ignore_ascii_case(name) || field.key().eq_ignore_ascii_case(name))
}

/// Enters all of a line. Where something of it is refused, nothing of it is entered, nor what stood in its place before: a
/// card must not rest on a value that somebody meant to replace.
// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
pub(crate) fn enter(draft: &mut Draft, name: &str, first: Field, text: &str, page: &mut Page) -> Outcome {
    let held = draft.name(Field::Id).copied();
    let eye = draft.number(Field::Side);
    let (mut field, mut name, mut rest, mut count) = (first, name, text, 0);
    loop {
        let further = after(field).and_then(|(mark, next)| Some((split_at(rest, mark)?, next)));
        let typed = further.map_or(rest, |((typed, _), _)| typed).trim_ascii();
        count += 1;
        if let Err(wrong) = take(draft, field, typed) {
            wrong::tell(&wrong, name, field, typed, page);
            let whole = count > 1 || further.is_some();
            let mut next = Some(first);
            while let Some(field) = next {
                draft.clear(field);
                next = after(field).filter(|_| whole).map(|(_, next)| next);
            }
            page.paragraph("    ", "not entered now, whatever stood there before");
            return Outcome::Refused;
        }
        let Some(((_, after), next)) = further else { break };
        (field, name, rest) = (next, next.word(), after);
    }
    if let (Field::Id, Some(held)) = (first, held) {
        another(draft, &held, page);
    }
    if first == Field::Side && eye.is_some_and(|eye| draft.number(Field::Side) != Some(eye)) {
        page.line("the other eye: what else was entered stays. Is it this eye's? clear all forgets it.");
    }
    Outcome::Entered(first, count)
}

/// Another label begins another case: nothing of the one before must be left in it.
fn another(draft: &mut Draft, held: &Name, page: &mut Page) {
    let Some(label) = draft.name(Field::Id).copied().filter(|label| label != held) else { return };
    Field::ALL.iter().for_each(|field| draft.clear(*field));
    let _ = draft.set_name(Field::Id, label);
    page.text("another case: what was entered of ");
    page.text(held.as_str());
    page.line(" is forgotten.");
}

/// What stands before the first of a mark, and after it.
fn split_at(text: &str, mark: u8) -> Option<(&str, &str)> {
    let place = text.bytes().position(|byte| byte == mark)?;
    Some((text.get(..place)?, text.get(place + 1..)?))
}

/// Enters a number, or forgets it.
pub(crate) fn put(draft: &mut Draft, field: Field, value: Option<f64>) {
    match value {
        Some(value) => draft.set(field, value),
        None => draft.clear(field),
    }
}

/// Enters one value; where it is wrong, what is left there is not to be used.
fn take<'a>(draft: &mut Draft, field: Field, typed: &'a str) -> Result<(), Wrong<'a>> {
    if typed.is_empty() {
        return Err(Wrong::Nothing);
    }
    let (text, quoted) = unquoted(typed).ok_or(Wrong::Quotes)?;
    match field.kind() {
        Kind::Number(..) if quoted => Err(Wrong::Quoted),
        Kind::Number(..) => number(draft, field, text),
        Kind::Choice(words) => {
            let place = words.iter().position(|word| same_word(word, text));
            let refused =
                || Wrong::Entry(Error { code: Code::NotAWord, field: Some(field), value: None, bounds: None });
            draft.set(field, place.ok_or_else(refused)? as f64);
            Ok(())
        }
        Kind::Date | Kind::Name => draft.enter(field, text).map_err(Wrong::Entry),
    }
}

fn number<'a>(draft: &mut Draft, field: Field, text: &'a str) -> Result<(), Wrong<'a>> {
    let (digits, unit) = split_unit(text);
    if let Ok(parsed) = parse(digits)
        && !is_unit(field, unit)
    {
        return Err(Wrong::Unit(unit, parsed.value));
    }
    draft.enter(field, digits).map_err(Wrong::Entry)?;
    field.check(draft.number(field).unwrap_or(0.0)).map_err(Wrong::Entry)
}

/// Whether a unit is this entry's; none at all is.
pub(crate) fn is_unit(field: Field, unit: &str) -> bool {
    unit.is_empty() || unit.eq_ignore_ascii_case(field.unit())
}

/// A number and the unit after it.
pub(crate) fn split_unit(text: &str) -> (&str, &str) {
    let end = text.bytes().position(|byte| !matches!(byte, b'0'..=b'9' | b'.' | b',' | b'+' | b'-'));
    let (digits, unit) = end.and_then(|end| text.split_at_checked(end)).unwrap_or((text, ""));
    // an exponent is no unit: let it be refused as what it is
    let exponent = matches!(unit.as_bytes(), [b'e' | b'E', b'0'..=b'9' | b'+' | b'-', ..]);
    if digits.is_empty() || exponent { (text, "") } else { (digits, unit.trim_ascii()) }
}

/// What stands in quotes, and whether it does; `None` when they do not match.
fn unquoted(text: &str) -> Option<(&str, bool)> {
    let quote = match text.as_bytes() {
        [quote @ (b'"' | b'\''), ..] => *quote,
        _ => return Some((text, false)),
    };
    let inner = text.get(1..text.len() - 1).filter(|_| text.as_bytes().last() == Some(&quote))?;
    let holds = |byte: u8| byte == quote || quote == b'"' && byte == b'\\';
    (!inner.bytes().any(holds)).then_some((inner, true))
}
