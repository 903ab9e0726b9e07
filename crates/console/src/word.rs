//! Words as they are typed.

/// Up to the first space or equals sign, and what follows it.
pub(crate) fn first_word(line: &str) -> (&str, &str) {
    let end = line.bytes().position(|byte| matches!(byte, b' ' | b'='));
    let (word, rest) = end.and_then(|end| line.split_at_checked(end)).unwrap_or((line, ""));
    (word, rest.trim_ascii())
}

/// Whether two words are the same, capitals or not, with a space or an underscore.
pub(crate) fn same_word(known: &str, typed: &str) -> bool {
    let plain = |byte: u8| if byte == b' ' { b'_' } else { byte.to_ascii_lowercase() };
    known.bytes().map(plain).eq(typed.bytes().map(plain))
}
