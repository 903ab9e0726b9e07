//! A line that enters something: `al 23.46 mm`, `k1 43.25 @ 95`, or a line of a case file.

use crate::outcome::Outcome;
use crate::page::Page;
use crate::word::is_word;
use crate::wrong::{self, Refused};
use ocellus_card::draft::Draft;
use ocellus_card::entries;
use ocellus_card::entry::Kind;
use ocellus_card::error::{Error, Wrong};
use ocellus_card::id::EntryId;
use ocellus_card::name::Name;
use ocellus_core::decimal::parse;
use ocellus_text::text;

/// The entry with this word or key.
pub(crate) fn named(name: &str) -> Option<EntryId> {
    EntryId::all().find(|entry| entry.word().is_but_for_capitals(name) || entry.key().is_but_for_capitals(name))
}

/// Enters all of a line. Where something of it is refused, nothing of it is entered, nor what stood in its place before: a
/// card must not rest on a value that somebody meant to replace.
// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
pub(crate) fn enter(draft: &mut Draft, name: &str, first: EntryId, text: &str, page: &mut Page) -> Outcome {
    let held = draft.name(entries::ID).copied();
    let eye = draft.number(entries::SIDE);
    let (mut entry, mut rest, mut count) = (first, text, 0);
    loop {
        let further = entry.goes_on().and_then(|(mark, next)| Some((split_at(rest, mark)?, next)));
        let typed = further.map_or(rest, |((typed, _), _)| typed).trim_ascii();
        count += 1;
        if let Err(refused) = take(draft, entry, typed) {
            if count == 1 {
                wrong::tell(&refused, name, entry, typed, page);
            } else {
                wrong::tell(&refused, entry.word(), entry, typed, page);
            }
            let whole = count > 1 || further.is_some();
            let mut next = Some(first);
            while let Some(entry) = next {
                draft.clear(entry);
                next = entry.goes_on().filter(|_| whole).map(|(_, next)| next);
            }
            page.paragraph("    ", text!("not entered now, whatever stood there before"));
            return Outcome::Refused;
        }
        let Some(((_, after), next)) = further else { break };
        (entry, rest) = (next, after);
    }
    if let Some(held) = held.filter(|_| first == entries::ID) {
        another(draft, &held, page);
    }
    if first == entries::SIDE && eye.is_some_and(|eye| draft.number(entries::SIDE) != Some(eye)) {
        page.line(text!("the other eye: what else was entered stays. Is it this eye's? clear all forgets it."));
    }
    Outcome::Entered(first, count)
}

/// Another label begins another case: nothing of the one before must be left in it.
fn another(draft: &mut Draft, held: &Name, page: &mut Page) {
    let Some(label) = draft.name(entries::ID).copied().filter(|label| label != held) else { return };
    draft.clear_all();
    let _ = draft.set_name(entries::ID, label);
    page.text(text!("another case: what was entered of "));
    page.text(held.as_str());
    page.line(text!(" is forgotten."));
}

/// What stands before the first of a mark, and after it.
fn split_at(text: &str, mark: u8) -> Option<(&str, &str)> {
    let place = text.bytes().position(|byte| byte == mark)?;
    Some((text.get(..place)?, text.get(place + 1..)?))
}

/// Enters a number, or forgets it.
pub(crate) fn put(draft: &mut Draft, entry: EntryId, value: Option<f64>) {
    match value {
        Some(value) => draft.set(entry, value),
        None => draft.clear(entry),
    }
}

/// Enters one value; where it is wrong, what is left there is not to be used.
fn take<'a>(draft: &mut Draft, entry: EntryId, typed: &'a str) -> Result<(), Refused<'a>> {
    if typed.is_empty() {
        return Err(Refused::Nothing);
    }
    let (text, quoted) = unquoted(typed).ok_or(Refused::Quotes)?;
    match entry.kind() {
        Kind::Number(..) if quoted => Err(Refused::Quoted),
        Kind::Number(..) => number(draft, entry, text),
        Kind::Choice(words) => {
            let place = words.iter().position(|word| is_word(*word, text));
            draft.set(entry, place.ok_or(Refused::Entry(Error::of(Wrong::NotAWord, entry)))? as f64);
            Ok(())
        }
        Kind::Date | Kind::Name => draft.enter(entry, text).map_err(Refused::Entry),
    }
}

fn number<'a>(draft: &mut Draft, entry: EntryId, text: &'a str) -> Result<(), Refused<'a>> {
    let (digits, unit) = split_unit(text);
    if let Ok(parsed) = parse(digits)
        && !is_unit(entry, unit)
    {
        return Err(Refused::Unit(unit, parsed.value));
    }
    draft.enter(entry, digits).map_err(Refused::Entry)?;
    entry.check(draft.number(entry).unwrap_or(0.0)).map_err(Refused::Entry)
}

/// Whether a unit is this entry's; none at all is.
pub(crate) fn is_unit(entry: EntryId, unit: &str) -> bool {
    unit.is_empty() || unit.eq_ignore_ascii_case(entry.unit())
}

/// A number and the unit after it.
pub(crate) fn split_unit(text: &str) -> (&str, &str) {
    let end = text.bytes().position(|byte| !matches!(byte, b'0'..=b'9' | b'.' | b',' | b'+' | b'-'));
    let (digits, unit) = end.and_then(|end| text.split_at_checked(end)).unwrap_or((text, ""));
    // an exponent is not a unit: it is refused as what it is
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
