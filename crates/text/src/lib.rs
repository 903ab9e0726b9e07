//! Texts that people read, kept small: plain ASCII, folded into symbols that stand for pairs of characters and pairs of pairs,
//! each written in the fewer bits the more often it is used; unfolded a character at a time. They take two fifths of what they
//! did.
//!
//! [`text!`](crate::text!) folds a literal while it is compiled; tables fold theirs by [`pool::Pool`].

#![no_std]
#![allow(long_running_const_eval)]

mod code;
#[doc(hidden)]
pub mod fold;
#[doc(hidden)]
pub mod pool;
mod symbols;

use core::fmt;

use code::{DEEPEST, Meaning, meaning, read};
use symbols::SYMBOLS;

/// A text in its folded form.
///
/// ```
/// use ocellus_text::text;
/// let text = text!("the pressure at the eye");
/// assert_eq!(text.to_string(), "the pressure at the eye");
/// assert!(text == "the pressure at the eye" && text.len() == 23);
/// ```
#[derive(Clone, Copy)]
pub struct Text(&'static [u8]);

/// A text that needs no room of its own, folded while it is compiled.
#[macro_export]
macro_rules! text {
    ($($literal:expr),+ $(,)?) => {{
        const PLAIN: &str = concat!($($literal),+);
        const SIZE: usize = $crate::fold::Folded::of(PLAIN).size();
        static FOLDED: [u8; SIZE] = $crate::fold::fold(PLAIN);
        $crate::Text::of(&FOLDED)
    }};
}

impl Text {
    /// No character.
    pub const EMPTY: Text = Text(&[]);

    #[doc(hidden)]
    pub const fn of(folded: &'static [u8]) -> Text {
        Text(folded)
    }

    /// Its characters, one after another.
    pub fn bytes(self) -> Bytes {
        Bytes { text: self.0, at: 0, waiting: [0; DEEPEST], depth: 0 }
    }

    /// Whether it has no character.
    pub const fn is_empty(self) -> bool {
        self.0.is_empty()
    }

    /// How many characters it has.
    #[inline(never)]
    pub fn len(self) -> usize {
        self.bytes().count()
    }

    /// Hands it out in pieces.
    #[inline(never)]
    pub fn pieces(self, out: &mut dyn FnMut(&str)) {
        let mut bytes = self.bytes();
        let mut piece = [0; 16];
        loop {
            let mut length = 0;
            for (slot, byte) in piece.iter_mut().zip(&mut bytes) {
                *slot = byte;
                length += 1;
            }
            match piece.get(..length).and_then(|piece| core::str::from_utf8(piece).ok()) {
                Some(piece) if !piece.is_empty() => out(piece),
                _ => return,
            }
        }
    }

    /// Whether it is this text.
    #[inline(never)]
    pub fn is(self, text: &str) -> bool {
        self.bytes().eq(text.bytes())
    }

    /// Whether it is this text but for capitals.
    #[inline(never)]
    pub fn is_but_for_capitals(self, text: &str) -> bool {
        self.bytes().map(|byte| byte.to_ascii_lowercase()).eq(text.bytes().map(|byte| byte.to_ascii_lowercase()))
    }
}

impl PartialEq<str> for Text {
    fn eq(&self, text: &str) -> bool {
        self.is(text)
    }
}

impl PartialEq<&str> for Text {
    fn eq(&self, text: &&str) -> bool {
        self.is(text)
    }
}

impl PartialEq for Text {
    fn eq(&self, other: &Text) -> bool {
        self.bytes().eq(other.bytes())
    }
}

impl fmt::Display for Text {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut done = Ok(());
        self.pieces(&mut |piece| {
            if done.is_ok() {
                done = f.write_str(piece);
            }
        });
        done
    }
}

impl fmt::Debug for Text {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "\"{self}\"")
    }
}

/// The characters of a text.
#[derive(Clone)]
pub struct Bytes {
    text: &'static [u8],
    /// The bit where the next symbol begins.
    at: u16,
    waiting: [u16; DEEPEST],
    depth: usize,
}

impl Iterator for Bytes {
    type Item = u8;

    #[inline(never)]
    fn next(&mut self) -> Option<u8> {
        let mut symbol = match self.depth.checked_sub(1) {
            Some(top) => {
                self.depth = top;
                *self.waiting.get(top)?
            }
            None => {
                let (first, at) = read(self.text, self.at)?;
                self.at = at;
                first
            }
        };
        loop {
            match meaning(*SYMBOLS.get(usize::from(symbol))?) {
                Meaning::Character(character) => return Some(character),
                Meaning::Pair(first, second) => {
                    *self.waiting.get_mut(self.depth)? = second;
                    self.depth += 1;
                    symbol = first;
                }
            }
        }
    }
}
