//! Bytes in, text out: the line that is typed, and when to answer.

use crate::around::Around;
use crate::command;
use crate::identify::{Asked, Identify};
use crate::keys::{Key, Keys};
use crate::line::{Line, Room};
use crate::outcome::Outcome;
use crate::page::Page;
use crate::session::Session;
use crate::show;
use ocellus_card::cautions::NOT_A_DEVICE;
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_card::id::PartId;
use ocellus_text::text;

/// With more bytes waiting than this, nothing is echoed: the answer would be longer than what is still to come.
const PASTED: usize = 128;

/// One conversation, with the entries of one case.
///
/// The size of a draft and two lines: it is meant to be a static of a microcontroller.
pub struct Console {
    draft: Draft,
    session: Session,
    line: Line,
    /// The line before.
    earlier: Line,
    keys: Keys,
    identify: Identify,
    taken: Taken,
    /// The terminal shows by itself what is typed.
    silent: bool,
    /// Something of the line was not shown.
    hidden: bool,
    /// Something stands on the terminal's line.
    open: bool,
    /// A line was ended, and no prompt given since.
    due: bool,
}

/// What was entered since the last prompt.
struct Taken {
    entries: usize,
    /// Lines that made entries, and the first and number of entries of the last of them.
    lines: usize,
    first: EntryId,
    count: u8,
    refused: usize,
}

/// None; all zeros, so that a console needs no first value in a device's flash.
const NO_ENTRY: EntryId = EntryId::new(PartId(0), 0);

impl Taken {
    const NOTHING: Taken = Taken { entries: 0, lines: 0, first: NO_ENTRY, count: 0, refused: 0 };
}

impl Default for Console {
    fn default() -> Self {
        Console::new()
    }
}

impl Console {
    /// For a terminal that shows only what is sent to it.
    pub const fn new() -> Console {
        Console::with(false)
    }

    /// For a terminal that shows what is typed by itself.
    ///
    /// ```
    /// use ocellus_console::{Around, Console};
    /// struct Desk;
    /// impl Around for Desk {
    ///     fn millis(&self) -> u32 { 0 }
    /// }
    /// Console::without_echo().byte(b'a', 0, &Desk, &mut |_| panic!("nothing to say"));
    /// ```
    pub const fn without_echo() -> Console {
        Console::with(true)
    }

    const fn with(silent: bool) -> Console {
        Console {
            draft: Draft::EMPTY,
            session: Session::NEW,
            line: Line::new(),
            earlier: Line::new(),
            keys: Keys::new(),
            identify: Identify::new(),
            taken: Taken::NOTHING,
            silent,
            hidden: false,
            open: false,
            due: false,
        }
    }

    /// What was entered.
    pub fn draft(&self) -> &Draft {
        &self.draft
    }

    /// Says what this is, and asks for a line.
    pub fn greet(&mut self, out: &mut dyn FnMut(&str)) {
        let mut page = Page::new(out);
        page.line(concat!("ocellus ", env!("CARGO_PKG_VERSION"), ": the arithmetic of a cataract operation"));
        page.line(NOT_A_DEVICE.text());
        page.line(text!("Type help."));
        self.prompt(out);
    }

    /// Takes one byte of input; `waiting` more were received with it and not yet fed.
    ///
    /// While bytes wait, input is being pasted: there is no prompt and no confirmation, only errors, and at the end one
    /// line with the number of entries.
    pub fn byte(&mut self, byte: u8, waiting: usize, around: &dyn Around, out: &mut dyn FnMut(&str)) {
        self.session.stir(around.millis() ^ u32::from(byte));
        if self.session.is_running() {
            if !self.session.key(byte, &mut Page::new(out)) {
                self.end_chart(out);
            }
            return;
        }
        match self.keys.take(byte) {
            Key::Nothing => {}
            Key::Character(byte) => self.keep(byte, waiting, out),
            Key::Erase => self.erase(out),
            Key::Clear => self.clear(out),
            Key::Earlier => self.bring_earlier(waiting, out),
            Key::Abandon => {
                self.line.wipe();
                self.identify.forget();
                self.end(waiting, around, out);
            }
            Key::End => self.end(waiting, around, out),
            Key::EndGoesOn if waiting == 0 => self.settle(out),
            Key::EndGoesOn => {}
        }
        if waiting == 0 && self.hidden {
            self.prompt(out);
            self.show_line(out);
        }
    }

    /// Time passes and nothing comes: a strip chart that runs goes on.
    pub fn tick(&mut self, around: &dyn Around, out: &mut dyn FnMut(&str)) {
        if self.session.is_running() && !self.session.tick(around.millis(), &mut Page::new(out)) {
            self.end_chart(out);
        }
    }

    fn end_chart(&mut self, out: &mut dyn FnMut(&str)) {
        self.session.end();
        self.due = false;
        self.prompt(out);
    }

    fn keep(&mut self, byte: u8, waiting: usize, out: &mut dyn FnMut(&str)) {
        // a line is shown whole or not at all: a piece of a number is another number
        self.hidden |= !self.silent && waiting > PASTED && self.line.text().is_empty();
        match self.line.push(byte) {
            Room::Kept => {
                self.show(byte, out);
            }
            Room::Full if !self.silent => out("\x07"),
            Room::Full | Room::Beyond => {}
        }
    }

    fn show(&mut self, byte: u8, out: &mut dyn FnMut(&str)) {
        if !self.silent && !self.hidden {
            let shown = if byte.is_ascii_graphic() || byte == b' ' { byte } else { b'?' };
            out(core::str::from_utf8(&[shown]).unwrap_or(""));
            self.open = true;
        }
    }

    fn show_line(&mut self, out: &mut dyn FnMut(&str)) {
        self.hidden = false;
        for place in 0..self.line.text().len() {
            if let Some(byte) = self.line.text().as_bytes().get(place).copied() {
                self.show(byte, out);
            }
        }
    }

    fn erase(&mut self, out: &mut dyn FnMut(&str)) {
        if self.line.pop() && !self.silent && !self.hidden {
            out("\x08 \x08");
        }
    }

    /// Takes back the whole line.
    fn clear(&mut self, out: &mut dyn FnMut(&str)) {
        if !self.silent && !self.hidden {
            (0..self.line.text().len()).for_each(|_| out("\x08 \x08"));
        }
        self.line.wipe();
        self.hidden = false;
    }

    fn bring_earlier(&mut self, waiting: usize, out: &mut dyn FnMut(&str)) {
        if !self.earlier.text().is_empty() && matches!(self.identify.asked, Asked::Nothing) {
            self.clear(out);
            for byte in self.earlier.text().bytes() {
                self.line.push(byte);
            }
            self.hidden = !self.silent && waiting > PASTED;
            if !self.hidden {
                self.show_line(out);
            }
        }
    }

    fn end(&mut self, waiting: usize, around: &dyn Around, out: &mut dyn FnMut(&str)) {
        self.break_line(out);
        (self.hidden, self.due) = (false, true);
        let mut page = Page::new(out);
        if self.line.is_too_long() {
            page.line(text!("That line is longer than 96 characters: nothing of it was used."));
            self.taken.refused += 1;
        } else {
            self.answer(around, &mut page);
        }
        self.line.wipe();
        if self.session.is_running() {
            // what is typed from here on are its keys
            return;
        }
        if waiting == 0 {
            self.settle(out);
        }
    }

    fn answer(&mut self, around: &dyn Around, page: &mut Page) {
        if !matches!(self.identify.asked, Asked::Nothing) {
            return self.identify.answer(&self.draft, self.line.text(), page);
        }
        match command::run(&mut self.draft, &mut self.session, around, self.line.text(), page) {
            Outcome::Nothing | Outcome::Answered => {}
            Outcome::Entered(first, count) => {
                (self.taken.first, self.taken.count) = (first, count);
                self.taken.entries += usize::from(count);
                self.taken.lines += 1;
            }
            Outcome::Refused => self.taken.refused += 1,
            Outcome::Identify => self.identify.asked = Asked::First,
        }
        if !self.line.text().is_empty() {
            core::mem::swap(&mut self.line, &mut self.earlier);
        }
    }

    /// Ends the line that stands on the terminal; one that echoes has ended it itself.
    fn break_line(&mut self, out: &mut dyn FnMut(&str)) {
        if self.open && !self.silent {
            out("\r\n");
        }
        self.open = false;
    }

    /// Says what was entered, and asks for the next line.
    fn settle(&mut self, out: &mut dyn FnMut(&str)) {
        if !core::mem::take(&mut self.due) {
            return;
        }
        let mut page = Page::new(out);
        match core::mem::replace(&mut self.taken, Taken::NOTHING) {
            Taken { lines: 1, first, count, refused: 0, .. } => {
                let mut next = Some(first);
                for _ in 0..count {
                    if let Some(entry) = next {
                        show::row(&self.draft, entry, &mut page);
                        next = entry.goes_on().map(|(_, next)| next);
                    }
                }
            }
            Taken { entries: 0, refused: 0 | 1, .. } => {}
            Taken { entries, refused, .. } => {
                page.count(entries);
                page.text(if entries == 1 { text!(" entry taken") } else { text!(" entries taken") });
                // another patient's may be among them
                let all = self.draft.made().count();
                if all > entries {
                    page.text(text!("; with those from before there are "));
                    page.count(all);
                }
                if refused > 0 {
                    page.text("; ");
                    page.count(refused);
                    page.text(if refused == 1 { " line" } else { " lines" });
                    page.text(text!(" refused: see above"));
                }
                page.line(".");
            }
        }
        self.prompt(out);
    }

    fn prompt(&mut self, out: &mut dyn FnMut(&str)) {
        self.break_line(out);
        out(self.identify.prompt());
        self.open = true;
    }
}
