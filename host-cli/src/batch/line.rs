//! A table line by line, and a line cell by cell.

use std::borrow::Cow;
use std::io::{self, BufRead, Read};

use csv::{ReaderBuilder, StringRecord};

/// No row of known columns is longer, in bytes.
const LONGEST: u64 = 1 << 16;

/// One line, without its end.
pub(super) struct Line<'a> {
    /// Its text; what is not UTF-8 is replaced by U+FFFD.
    pub(super) text: Cow<'a, str>,
    /// What kept it from being read as it stands.
    pub(super) damage: Option<&'static str>,
}

/// The lines of a table.
pub(super) struct Lines<R> {
    input: R,
    bytes: Vec<u8>,
    first: bool,
}

impl<R: BufRead> Lines<R> {
    pub(super) fn new(input: R) -> Self {
        Lines { input, bytes: Vec::new(), first: true }
    }

    /// The next line that is not blank.
    pub(super) fn next(&mut self) -> io::Result<Option<Line<'_>>> {
        let mut too_long;
        loop {
            self.bytes.clear();
            if (&mut self.input).take(LONGEST).read_until(b'\n', &mut self.bytes)? == 0 {
                return Ok(None);
            }
            too_long = self.bytes.len() as u64 == LONGEST && !self.bytes.ends_with(b"\n");
            if too_long {
                self.input.skip_until(b'\n')?;
            }
            if std::mem::take(&mut self.first) && self.bytes.starts_with(b"\xEF\xBB\xBF") {
                self.bytes.drain(..3);
            }
            let end = [b"\r\n".as_slice(), b"\n", b"\r"].into_iter().find(|end| self.bytes.ends_with(end));
            self.bytes.truncate(self.bytes.len() - end.map_or(0, <[u8]>::len));
            if !self.bytes.trim_ascii().is_empty() {
                break;
            }
        }
        let text = String::from_utf8_lossy(&self.bytes);
        let damage = match (&text, too_long) {
            (_, true) => Some("too_long"),
            (Cow::Owned(_), false) => Some("not_utf8"),
            (Cow::Borrowed(_), false) => None,
        };
        Ok(Some(Line { text, damage }))
    }
}

impl Line<'_> {
    /// Its cells. A quote that is not closed on the same line is damage, and then quotes are ignored.
    pub(super) fn cells(&self) -> (StringRecord, Option<&'static str>) {
        let quotes = self.text.bytes().filter(|b| *b == b'"').count();
        let mut cells = StringRecord::with_capacity(self.text.len(), 32);
        if quotes == 0 || quotes % 2 == 1 {
            self.text.split(',').for_each(|cell| cells.push_field(cell));
            return (cells, self.damage.or((quotes > 0).then_some("quotes")));
        }
        let mut reader = ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .buffer_capacity(self.text.len())
            .from_reader(self.text.as_bytes());
        let read = reader.read_record(&mut cells);
        (cells, self.damage.or(read.is_err().then_some("quotes")))
    }
}
