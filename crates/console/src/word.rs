//! Words as they are typed.

use ocellus_card::Named;

/// Up to the first space or equals sign, and what follows it.
pub(crate) fn first_word(line: &str) -> (&str, &str) {
    let end = line.bytes().position(|byte| matches!(byte, b' ' | b'='));
    let (word, rest) = end.and_then(|end| line.split_at_checked(end)).unwrap_or((line, ""));
    (word, rest.trim_ascii())
}

/// Whether a known word was typed, capitals or not, with a space or an underscore.
pub(crate) fn is_word(known: impl Into<Named>, typed: &str) -> bool {
    let plain = |byte: u8| if byte == b' ' { b'_' } else { byte.to_ascii_lowercase() };
    known.into().bytes().map(plain).eq(typed.bytes().map(plain))
}
