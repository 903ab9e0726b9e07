//! Text on an 80-column screen.

use ocellus_core::decimal::{Sign, fixed};
use ocellus_core::draft::{Draft, with_text};
use ocellus_core::field::Field;
use ocellus_core::words;
use std::io::{self, Write};

/// The widest line.
pub const WIDTH: usize = 80;

/// Writes a paragraph, its first line after `first`, the others after as many spaces.
pub fn paragraph(out: &mut dyn Write, first: &str, text: &str) -> io::Result<()> {
    let rest = " ".repeat(first.chars().count());
    let options = textwrap::Options::new(WIDTH)
        .initial_indent(first)
        .subsequent_indent(&rest)
        .break_words(false)
        .word_splitter(textwrap::WordSplitter::NoHyphenation);
    for line in textwrap::wrap(text, options) {
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(())
}

/// An entry's value with its unit, as it is printed everywhere; its default where nothing was entered.
pub fn value(draft: &Draft, field: Field) -> String {
    if let Some(name) = draft.name(field) {
        return name.as_str().to_owned();
    }
    let Some(number) = draft.number(field).or(field.default()) else { return String::new() };
    let text = with_text(field, number, str::to_owned).unwrap_or_default();
    with_unit(text.replace('_', " "), field.unit())
}

/// A number with its unit, rounded once.
pub fn number(value: f64, places: u8, signed: bool, unit: &str) -> String {
    let sign = if signed { Sign::Always } else { Sign::Minus };
    let text = fixed(value, places, sign).map_or("not printable".to_owned(), |text| text.as_str().to_owned());
    with_unit(text, if unit == "1" { "" } else { unit })
}

fn with_unit(text: String, unit: &str) -> String {
    if unit.is_empty() { text } else { format!("{text} {unit}") }
}

/// A power or target in words.
pub fn spoken(value: f64) -> String {
    let mut said = Vec::new();
    words::number(value, 2, &mut |word| said.push(word));
    said.push("dioptres");
    said.join(" ")
}

/// Both ways round to a meridian, the short one first.
pub fn both_ways(clockwise: f64, counter_clockwise: f64) -> String {
    let way = |degrees: f64, sense: &str| format!("{} {sense}", number(degrees, 0, false, "deg"));
    let (clock, counter) = (way(clockwise, "clockwise"), way(counter_clockwise, "counter-clockwise"));
    let (short, long) = if clockwise <= counter_clockwise { (clock, counter) } else { (counter, clock) };
    format!("the short way {short}, the long way {long}")
}
