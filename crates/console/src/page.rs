//! Text on a screen of 80 columns, in a stream: a word waits until it is whole, and then goes where it fits.

use crate::keys::SUBSTITUTE;
use heapless::Vec;

/// The widest line: the last column stays free, since some terminals go on to the next line after it.
pub(crate) const WIDTH: usize = 79;

const SPACES: &str = "                                        ";

pub(crate) struct Page<'a> {
    out: &'a mut dyn FnMut(&str),
    /// Not yet written, since what comes next may belong to it.
    word: Vec<u8, 48>,
    column: usize,
    /// Where a line that does not fit goes on.
    indent: usize,
    /// Whether a space is due before the word.
    gap: bool,
}

impl<'a> Page<'a> {
    pub(crate) fn new(out: &'a mut dyn FnMut(&str)) -> Page<'a> {
        Page { out, word: Vec::new(), column: 0, indent: 0, gap: false }
    }

    /// Text, broken between words where a line is full.
    pub(crate) fn text(&mut self, text: &str) {
        text.bytes().for_each(|byte| self.byte(byte));
    }

    /// A character of a text.
    pub(crate) fn byte(&mut self, byte: u8) {
        match byte {
            b' ' => {
                self.flush();
                self.gap = true;
            }
            SUBSTITUTE => self.push(b'?'),
            byte => self.push(byte),
        }
    }

    /// A unit or the like: after a space at which no line is broken.
    pub(crate) fn tied(&mut self, unit: &str) {
        if !unit.is_empty() {
            self.push(b' ');
            self.text(unit);
        }
    }

    fn push(&mut self, byte: u8) {
        if self.word.push(byte).is_err() {
            self.flush();
            let _ = self.word.push(byte);
        }
    }

    fn flush(&mut self) {
        if self.word.is_empty() {
            return;
        }
        let started = self.column > self.indent;
        let gap = usize::from(self.gap && started);
        if started && self.column + gap + self.word.len() > WIDTH {
            (self.out)("\r\n");
            self.column = 0;
            self.spaces(self.indent);
        } else {
            self.spaces(gap);
        }
        (self.out)(core::str::from_utf8(&self.word).unwrap_or(""));
        self.column += self.word.len();
        self.word.clear();
        self.gap = false;
    }

    fn spaces(&mut self, mut count: usize) {
        self.column += count;
        while let Some(rest) = count.checked_sub(SPACES.len()) {
            (self.out)(SPACES);
            count = rest;
        }
        (self.out)(SPACES.get(..count).unwrap_or(""));
    }

    /// Text as it stands, its spaces too.
    pub(crate) fn raw(&mut self, text: &str) {
        self.flush();
        (self.out)(text);
        self.column += text.len();
        self.gap = false;
    }

    /// Goes to a column, or one further than what stands there.
    pub(crate) fn to(&mut self, column: usize) {
        self.flush();
        self.gap = false;
        self.spaces(column.saturating_sub(self.column).max(usize::from(self.column > 0)));
    }

    /// A line that does not fit goes on below here.
    pub(crate) fn hang(&mut self) {
        self.flush();
        self.indent = self.column;
    }

    /// Ends the line; an empty one where nothing stands on it.
    pub(crate) fn end(&mut self) {
        self.flush();
        (self.out)("\r\n");
        (self.column, self.indent, self.gap) = (0, 0, false);
    }

    pub(crate) fn line(&mut self, text: &str) {
        self.text(text);
        self.end();
    }

    /// A paragraph: its first line after `first`, the others below its text.
    pub(crate) fn paragraph(&mut self, first: &str, text: &str) {
        self.raw(first);
        self.hang();
        self.line(text);
    }

    /// The start of a line about one word; what follows stands below itself.
    pub(crate) fn word(&mut self, word: &str) {
        self.raw("  ");
        self.text(word);
        self.to(14);
        self.hang();
    }

    /// A text at the right end of a cell.
    pub(crate) fn cell(&mut self, width: usize, text: &str) {
        self.flush();
        self.spaces(width.saturating_sub(text.len()));
        self.raw(text);
    }

    /// A heading with a rule to the end of the line.
    pub(crate) fn heading(&mut self, text: &str, side: &str) {
        self.text(text);
        if !side.is_empty() {
            self.text(" (");
            self.text(side);
            self.text(")");
        }
        self.flush();
        (self.out)(" ");
        for _ in self.column + 1..WIDTH {
            (self.out)("-");
        }
        self.end();
    }
}
