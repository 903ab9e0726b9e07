//! A draft on the line: the requests that enter it, what a device does with them, and the sum by which both know that
//! they mean the same.

use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::id::EntryId;
use ocellus_card::name::Name;

use crate::code::Refusal;
use crate::crc32::Crc32;
use crate::message::*;

/// CRC-32 over everything entered, in the order of the parts and of the entries in them: a number, word or date as the number
/// of its part, its own, and the eight bytes of its value; a name as these two numbers, its length and its characters.
///
/// ```
/// use ocellus_card::{draft::Draft, entries};
/// use ocellus_link::entries::case_sum;
/// let mut draft = Draft::default();
/// assert_eq!(case_sum(&draft), 0);
/// draft.enter(entries::AXIAL_LENGTH, "23.45")?;
/// let once = case_sum(&draft);
/// draft.enter(entries::AXIAL_LENGTH, "23.46")?;
/// assert_ne!(case_sum(&draft), once);
/// # Ok::<(), ocellus_card::error::Error>(())
/// ```
pub fn case_sum(draft: &Draft) -> u32 {
    let mut sum = Crc32::new();
    for entry in draft.made() {
        sum.update(&[entry.part().0, entry.number()]);
        if let Some(value) = draft.number(entry) {
            sum.update(&value.to_le_bytes());
        }
        if let Some(name) = draft.name(entry) {
            sum.push(name.as_str().len() as u8);
            sum.update(name.as_str().as_bytes());
        }
    }
    sum.finish()
}

/// What of a draft a device can be sent: the entries of the parts that it has. A desk asks about these alone.
///
/// ```
/// use ocellus_card::{draft::Draft, entries, schema::HERE};
/// use ocellus_link::{entries::for_device, frame::{LARGEST_PAYLOAD, VERSION}, message::Welcome, schema::{CORE, SCHEMA}};
/// let (all, altitude) = (HERE, entries::ALTITUDE.id());
/// let welcome = |parts| Welcome {
///     version: VERSION, schema: SCHEMA, parts, core: CORE, largest_payload: LARGEST_PAYLOAD as u8, board: [0; 16],
/// };
/// let mut draft = Draft::default();
/// draft.enter(entries::AXIAL_LENGTH, "23.45")?;
/// draft.enter(altitude, "1609")?;
/// assert_eq!(for_device(&draft, &welcome(all)), draft);
/// let sent = for_device(&draft, &welcome(all & !(1 << altitude.part().0)));
/// assert!(sent.made().eq([entries::AXIAL_LENGTH.id()]));
/// # Ok::<(), ocellus_card::error::Error>(())
/// ```
pub fn for_device(draft: &Draft, device: &Welcome) -> Draft {
    let mut sent = draft.clone();
    draft.made().filter(|entry| !device.has(entry.part())).for_each(|entry| sent.clear(entry));
    sent
}

/// The requests that bring a draft to a device, in order. Each is to be sent once the one before is acknowledged.
///
/// ```
/// use ocellus_card::{draft::Draft, entries};
/// use ocellus_link::{entries::requests, message::Request};
/// let (mut draft, mut asked) = (Draft::default(), Vec::new());
/// draft.enter(entries::AXIAL_LENGTH, "23.45")?;
/// draft.enter(entries::LENS_MODEL, "Demo")?;
/// requests(&draft, &mut |request| asked.push(request));
/// assert!(matches!(asked[..], [Request::Begin(_), Request::Enter(_), Request::EnterName(_)]));
/// # Ok::<(), ocellus_card::error::Error>(())
/// ```
pub fn requests(draft: &Draft, ask: &mut dyn FnMut(Request)) {
    ask(Begin {}.into());
    const NONE: Enter = Enter { count: 0, parts: [0; ENTRIES], entries: [0; ENTRIES], values: [0.0; ENTRIES] };
    let mut enter = NONE;
    for (entry, number) in draft.made().filter_map(|entry| Some((entry, draft.number(entry)?))) {
        let place = usize::from(enter.count);
        if let (Some(part), Some(of), Some(value)) =
            (enter.parts.get_mut(place), enter.entries.get_mut(place), enter.values.get_mut(place))
        {
            (*part, *of, *value) = (entry.part().0, entry.number(), number);
            enter.count += 1;
        }
        if usize::from(enter.count) == ENTRIES {
            ask(core::mem::replace(&mut enter, NONE).into());
        }
    }
    if enter.count > 0 {
        ask(enter.into());
    }
    for (entry, name) in draft.made().filter_map(|entry| Some((entry, draft.name(entry)?))) {
        let (part, length) = (entry.part().0, name.as_str().len() as u8);
        ask(EnterName { part, entry: entry.number(), length, characters: filled(name.as_str()) }.into());
    }
}

/// Enters numbers, words and dates; all of them, or none where one is refused.
pub(crate) fn enter(draft: &mut Draft, enter: &Enter) -> Result<(), Problem> {
    if usize::from(enter.count) > ENTRIES {
        return Err(Refusal::TooMany.about(0, enter.count));
    }
    let entries = || enter.parts.iter().zip(&enter.entries).zip(&enter.values).take(usize::from(enter.count));
    for ((part, entry), _) in entries() {
        match EntryId::find(*part, *entry).map(EntryId::kind) {
            Some(Kind::Number(..) | Kind::Choice(_) | Kind::Date) => {}
            Some(Kind::Name) | None => return Err(Refusal::NotAnEntry.about(*part, *entry)),
        }
    }
    for ((part, entry), value) in entries() {
        if let Some(entry) = EntryId::find(*part, *entry) {
            draft.set(entry, *value);
        }
    }
    Ok(())
}

/// Enters a name, exactly as it was sent.
pub(crate) fn enter_name(draft: &mut Draft, enter: &EnterName) -> Result<(), Problem> {
    let refused = |refusal: Refusal| refusal.about(enter.part, enter.entry);
    let entry = EntryId::find(enter.part, enter.entry).ok_or(refused(Refusal::NotAnEntry))?;
    let text = enter.characters.get(..usize::from(enter.length)).and_then(|text| core::str::from_utf8(text).ok());
    let name = text.and_then(|text| Name::parse(text).ok().filter(|name| name.as_str() == text));
    draft.set_name(entry, name.ok_or(refused(Refusal::NotAName))?).map_err(|_| refused(Refusal::NotAnEntry))
}

/// Text filled up with zeros; what does not fit is cut off.
pub(crate) fn filled<const N: usize>(text: &str) -> [u8; N] {
    let mut bytes = [0; N];
    bytes.iter_mut().zip(text.bytes()).for_each(|(slot, byte)| *slot = byte);
    bytes
}

/// The text in bytes filled up with zeros; empty where it has a character that is not printable ASCII.
///
/// ```
/// assert_eq!(ocellus_link::entries::text(b"demo\0\0\0\0"), "demo");
/// assert_eq!(ocellus_link::entries::text(b"\x1b[31m"), "");
/// ```
pub fn text(bytes: &[u8]) -> &str {
    let used = bytes.split(|byte| *byte == 0).next().unwrap_or_default();
    let is_printable = used.iter().all(|byte| matches!(byte, b' '..=b'~'));
    if is_printable { core::str::from_utf8(used).unwrap_or_default() } else { "" }
}
