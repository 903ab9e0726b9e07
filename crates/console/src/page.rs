//! Text on a screen of 80 columns, in a stream: a word waits until it is whole, and then goes where it fits.

use crate::keys::SUBSTITUTE;
use heapless::Vec;
use ocellus_card::Named;
use ocellus_core::source::Source;
use ocellus_text::Text;

/// The widest line: the last column stays free, since some terminals go on to the next line after it.
pub(crate) const WIDTH: usize = 79;

/// Where numbers begin beside their names.
pub(crate) const VALUE: usize = 39;

const SPACES: &str = "                                        ";

/// What is printed otherwise where there is room: on a desk.
#[derive(Clone, Copy, Debug)]
pub struct Desk {
    /// Whether headings and the side stand out.
    pub bold: bool,
    /// The full text of a source; a device prints its number.
    pub source: fn(Source) -> &'static str,
    /// What stands below the side of an eye: room for the patient's name.
    pub patient: &'static str,
    /// What stands below the lines to tick: room for two signatures.
    pub signatures: &'static str,
    /// How two identifiers are asked for.
    pub identify: &'static str,
}

/// What can be put on a page.
pub(crate) trait Said: Copy {
    fn onto(self, page: &mut Page);
}

impl Said for &str {
    fn onto(self, page: &mut Page) {
        self.bytes().for_each(|byte| page.byte(byte));
    }
}

impl Said for Text {
    #[inline(never)]
    fn onto(self, page: &mut Page) {
        self.bytes().for_each(|byte| page.byte(byte));
    }
}

impl Said for Named {
    fn onto(self, page: &mut Page) {
        self.bytes().for_each(|byte| page.byte(byte));
    }
}

pub(crate) struct Page<'a> {
    out: &'a mut dyn FnMut(&str),
    pub(crate) desk: Option<&'a Desk>,
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
        Page { out, desk: None, word: Vec::new(), column: 0, indent: 0, gap: false }
    }

    /// Where lines end as a desk's do.
    pub(crate) fn on(desk: &'a Desk, out: &'a mut dyn FnMut(&str)) -> Page<'a> {
        Page { desk: Some(desk), ..Page::new(out) }
    }

    /// Text, broken between words where a line is full.
    pub(crate) fn text(&mut self, text: impl Said) {
        text.onto(self);
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
            self.line_end();
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

    fn line_end(&mut self) {
        (self.out)(if self.desk.is_some() { "\n" } else { "\r\n" });
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

    /// What follows stands out, or does no more; nothing where that is not wanted.
    pub(crate) fn bold(&mut self, is_bold: bool) {
        if self.desk.is_some_and(|desk| desk.bold) {
            self.flush();
            (self.out)(if is_bold { "\x1b[1m" } else { "\x1b[0m" });
        }
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
        self.line_end();
        (self.column, self.indent, self.gap) = (0, 0, false);
    }

    pub(crate) fn line(&mut self, text: impl Said) {
        self.text(text);
        self.end();
    }

    /// A paragraph: its first line after `first`, the others below its text.
    pub(crate) fn paragraph(&mut self, first: &str, text: impl Said) {
        self.raw(first);
        self.hang();
        self.line(text);
    }

    /// The start of a line with a number: its name, and the column where the number begins.
    pub(crate) fn name(&mut self, name: Text) {
        self.raw("  ");
        self.text(name);
        self.to(VALUE);
    }

    /// The start of a line about one word; what follows stands below itself.
    pub(crate) fn word(&mut self, word: impl Said) {
        self.raw("  ");
        self.text(word);
        self.to(14);
        self.hang();
    }

    /// What would be accepted follows.
    pub(crate) fn accepted(&mut self) {
        self.raw("    accepted: ");
        self.hang();
    }

    /// Words, each after a space, and the end of their line.
    pub(crate) fn words<W: Said>(&mut self, words: impl Iterator<Item = W>) {
        words.for_each(|word| {
            self.text(" ");
            self.text(word);
        });
        self.end();
    }

    /// A text at the right end of a cell.
    pub(crate) fn cell(&mut self, width: usize, text: &str) {
        self.flush();
        self.spaces(width.saturating_sub(text.len()));
        self.raw(text);
    }

    /// The same of a text that is folded.
    pub(crate) fn cell_of(&mut self, width: usize, text: Text) {
        self.cell_by(width, text.bytes());
    }

    /// The same of some characters.
    #[inline(never)]
    pub(crate) fn cell_by(&mut self, width: usize, characters: impl Iterator<Item = u8> + Clone) {
        self.flush();
        self.spaces(width.saturating_sub(characters.clone().count()));
        for character in characters {
            (self.out)(core::str::from_utf8(&[character]).unwrap_or(""));
            self.column += 1;
        }
        self.gap = false;
    }

    /// A heading with a rule to the end of the line.
    pub(crate) fn heading(&mut self, text: impl Said, side: &str) {
        self.bold(true);
        self.text(text);
        if !side.is_empty() {
            self.text(" (");
            self.text(side);
            self.text(")");
        }
        self.bold(false);
        self.flush();
        (self.out)(" ");
        for _ in self.column + 1..WIDTH {
            (self.out)("-");
        }
        self.end();
    }
}
