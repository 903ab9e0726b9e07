//! Short names held in place: the lens model, the case's label.

use crate::error::Wrong;

/// The most characters a name may have.
pub const LENGTH: usize = 24;

/// One to 24 printable ASCII characters, without space at either end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Name {
    bytes: [u8; LENGTH],
    length: u8,
}

impl Name {
    /// From text; space around it is dropped.
    ///
    /// # Errors
    /// [`Wrong::NotAName`] when nothing is left, when it is longer than 24, or when a character is not printable ASCII.
    ///
    /// ```
    /// use ocellus_card::name::Name;
    /// assert_eq!(Name::parse(" Demo A ").unwrap().as_str(), "Demo A");
    /// assert!(Name::parse("a name of more than twenty-four").is_err());
    /// ```
    pub fn parse(text: &str) -> Result<Name, Wrong> {
        let text = text.trim_ascii();
        let printable = text.bytes().all(|b| (b' '..=b'~').contains(&b));
        let mut bytes = [b' '; LENGTH];
        match bytes.get_mut(..text.len()) {
            Some(slot) if printable && !text.is_empty() => slot.copy_from_slice(text.as_bytes()),
            _ => return Err(Wrong::NotAName),
        }
        Ok(Name { bytes, length: text.len() as u8 })
    }

    /// The name.
    pub fn as_str(&self) -> &str {
        self.bytes.get(..usize::from(self.length)).and_then(|b| core::str::from_utf8(b).ok()).unwrap_or("")
    }

    /// The name padded with spaces, its letters in capitals: what a read-back covers.
    pub(crate) fn canonical(&self) -> [u8; LENGTH] {
        self.bytes.map(|b| b.to_ascii_uppercase())
    }
}
