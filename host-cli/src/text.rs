//! Text on an 80-column screen.

use ocellus_card::draft::{Draft, with_text};
use ocellus_card::id::EntryId;
use ocellus_card::item::Item;
use ocellus_core::decimal::{Sign, fixed};
use std::fmt::Display;
use std::io::{self, Write};

/// The widest line.
pub const WIDTH: usize = 80;

/// Writes a paragraph, its first line after `first`, the others after as many spaces.
pub fn paragraph(out: &mut dyn Write, first: &str, text: impl Display) -> io::Result<()> {
    let rest = " ".repeat(first.chars().count());
    let options = textwrap::Options::new(WIDTH)
        .initial_indent(first)
        .subsequent_indent(&rest)
        .break_words(false)
        .word_splitter(textwrap::WordSplitter::NoHyphenation);
    for line in textwrap::wrap(&text.to_string(), options) {
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(())
}

/// Text from outside, safe to show: no control characters, and nothing that turns the direction of writing.
pub fn plain(text: &str) -> String {
    let is_mark =
        |c: char| matches!(c, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    text.chars().map(|c| if c.is_control() || is_mark(c) { char::REPLACEMENT_CHARACTER } else { c }).collect()
}

/// An entry's value with its unit, as it is printed everywhere; its default where nothing was entered.
pub fn value(draft: &Draft, entry: impl Into<EntryId>) -> String {
    let entry = entry.into();
    if let Some(name) = draft.name(entry) {
        return name.as_str().to_owned();
    }
    let Some(number) = draft.number(entry).or(entry.default()) else { return String::new() };
    let text = with_text(entry, number, str::to_owned).unwrap_or_default();
    with_unit(text.replace('_', " "), entry.unit())
}

/// A number with its unit, rounded once.
pub fn number(value: f64, places: u8, signed: bool, unit: &str) -> String {
    let sign = if signed { Sign::Always } else { Sign::Minus };
    let text = fixed(value, places, sign).map_or("not printable".to_owned(), |text| text.as_str().to_owned());
    with_unit(text, shown_unit(unit))
}

/// A unit as it is printed: a pure number has none.
pub fn shown_unit(unit: &str) -> &str {
    if unit == "1" { "" } else { unit }
}

/// A number of the card by the name that JSON has for it.
pub fn id(item: &Item) -> String {
    item.method.map_or(item.what.key().to_string(), |method| format!("{}_{}", method.key(), item.what.key()))
}

fn with_unit(text: String, unit: &str) -> String {
    if unit.is_empty() { text } else { format!("{text} {unit}") }
}

/// Both ways round to a meridian, the short one first.
pub fn both_ways(clockwise: f64, counter_clockwise: f64) -> String {
    let way = |degrees: f64, sense: &str| format!("{} {sense}", number(degrees, 0, false, "deg"));
    let (clock, counter) = (way(clockwise, "clockwise"), way(counter_clockwise, "counter-clockwise"));
    let (short, long) = if clockwise <= counter_clockwise { (clock, counter) } else { (counter, clock) };
    format!("the short way {short}, the long way {long}")
}
