//! One entry from one value to another: what follows from it, as a table and as curves. Nothing is computed here.

use crate::draw::plot::{Curve, Plot};
use crate::problem::{Problem, accepted, wrong};
use crate::text::{self, id, shown_unit};
use ocellus_card::case::Case;
use ocellus_card::caution::{Caution, Severity};
use ocellus_card::cautions::{ILLUSTRATION, NOT_A_DEVICE};
use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::error::Error;
use ocellus_card::id::{CautionId, EntryId, ItemId};
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_core::decimal::{Sign, fixed, parse};
use ocellus_core::working::Steps;
use std::io::{self, Write};

/// What was asked.
pub struct Sweep {
    entry: EntryId,
    names: Vec<String>,
    rows: Vec<Row>,
}

struct Row {
    /// As it would be typed.
    value: f64,
    /// The first number of each name.
    items: Vec<Option<Item>>,
    cautions: Vec<CautionId>,
}

/// The numbers of a card that stand in no table of their own, and what is to be known of it.
#[derive(Default)]
struct Card {
    items: Vec<Item>,
    cautions: Vec<CautionId>,
}

impl Steps for Card {}

impl Sink for Card {
    fn item(&mut self, item: Item) {
        if item.what.led().is_none() {
            self.items.push(item);
        }
    }

    fn caution(&mut self, caution: Caution) {
        if !self.cautions.contains(&caution.code) && caution.code.severity() != Severity::Note {
            self.cautions.push(caution.code);
        }
    }
}

impl Sweep {
    /// Plans a card for each of so many values of an entry.
    ///
    /// # Errors
    /// Where the entry is not a number, does not take an end, or the card has no such name.
    pub fn of(draft: &Draft, word: &str, ends: [&str; 2], rows: u16, names: &[String]) -> Result<Sweep, Vec<Problem>> {
        let refused = |what: &str, wrong: String, accepted: &str| vec![Problem::of_file(what, wrong, accepted)];
        let found = EntryId::of_key(word).or(EntryId::of_word(word));
        let Some((entry, Kind::Number(places, _))) = found.map(|entry| (entry, entry.kind())) else {
            return Err(refused(word, "not an entry that is a number".to_owned(), "`ocellus fields` lists them"));
        };
        let end = |text: &str| {
            let value = parse(text).map_err(|wrong| Error::of(wrong.into(), entry)).map(|parsed| parsed.value);
            let checked = value.and_then(|value| entry.check(value).map(|()| value));
            checked.map_err(|error| refused(&format!("{word} {text}"), wrong(&error), &accepted(entry)))
        };
        let (from, to) = (end(ends[0])?, end(ends[1])?);
        let usual = || ItemId::swept().map(|(item, _)| item.key().to_string()).collect();
        let is_usual = names.is_empty();
        let names = if is_usual { usual() } else { names.to_vec() };
        let mut sweep = Sweep { entry, names, rows: Vec::new() };
        for row in 0..rows {
            let share = f64::from(row) / f64::from(rows - 1);
            let typed = fixed(from + (to - from) * share, places, Sign::Minus);
            let value = typed.and_then(|text| parse(text.as_str()).ok()).map_or(from, |parsed| parsed.value);
            sweep.plan(draft, value);
        }
        let given: Vec<bool> =
            (0..sweep.names.len()).map(|place| sweep.rows.iter().any(|row| row.items[place].is_some())).collect();
        match given.iter().position(|given| !given) {
            // of what is usually shown, as much as there is
            Some(_) if is_usual && given.contains(&true) => sweep.keep(&given),
            Some(place) => {
                let accepted =
                    "the id of a single number, as `ocellus plan --json` has it, for which nothing is missing";
                return Err(refused(&sweep.names[place], "on none of these cards".to_owned(), accepted));
            }
            None => {}
        }
        Ok(sweep)
    }

    /// Keeps only some of its columns.
    fn keep(&mut self, which: &[bool]) {
        fn kept<T>(all: &mut Vec<T>, which: &[bool]) {
            let mut which = which.iter();
            all.retain(|_| which.next() == Some(&true));
        }
        kept(&mut self.names, which);
        self.rows.iter_mut().for_each(|row| kept(&mut row.items, which));
    }

    fn plan(&mut self, draft: &Draft, value: f64) {
        let mut draft = draft.clone();
        draft.set(self.entry, value);
        let mut card = Card::default();
        if let Some(case) = Case::check(&draft, &mut |_| {}) {
            case.plan(&mut card);
        }
        let first = |wanted: &String| card.items.iter().find(|item| id(item) == *wanted).copied();
        let items = self.names.iter().map(first).collect();
        self.rows.push(Row { value, items, cautions: card.cautions });
    }

    /// What must be known before these numbers are read, where a card of them says so.
    fn firsts(&self) -> Vec<CautionId> {
        let is_told = |code: &CautionId| self.rows.iter().any(|row| row.cautions.contains(code));
        let mut firsts = Vec::new();
        for item in self.rows.iter().flat_map(|row| row.items.iter().flatten()) {
            for first in item.what.part().first().filter(|code| is_told(code)) {
                if !firsts.contains(first) {
                    firsts.push(*first);
                }
            }
        }
        firsts
    }

    /// What a column is, with its unit.
    fn title(&self, place: usize) -> String {
        let item = self.rows.iter().find_map(|row| row.items[place]);
        let what = item.map_or(String::new(), |item| {
            let method = item.method.map_or(String::new(), |method| format!("{}, ", method.name()));
            format!("{method}{}", item.what.name())
        });
        match self.unit(place) {
            "" => what,
            unit => format!("{what}, {unit}"),
        }
    }

    /// The unit of a column, where any row has it.
    fn unit(&self, place: usize) -> &'static str {
        let of_row = |row: &Row| row.items[place].map(|item| item.what.unit());
        self.rows.iter().find_map(of_row).map_or("", shown_unit)
    }

    /// Prints the table.
    pub fn print(&self, out: &mut dyn Write) -> io::Result<()> {
        let of = |value| text::number(value, self.places(), self.entry.signed(), "");
        writeln!(
            out,
            "{} from {} to {} {}",
            self.entry.what(),
            of(self.rows[0].value),
            of(self.rows[self.rows.len() - 1].value),
            self.entry.unit()
        )?;
        let firsts = self.firsts();
        firsts.iter().try_for_each(|code| text::paragraph(out, "", code.text()))?;
        for place in 0..self.names.len() {
            writeln!(out, "  {}  {}", letter(place), self.title(place))?;
        }
        write!(out, "\n{:>12}", self.entry.unit())?;
        for place in 0..self.names.len() {
            write!(out, "{:>11}", letter(place))?;
        }
        writeln!(out)?;
        for row in &self.rows {
            write!(out, "{:>12}", of(row.value))?;
            for item in &row.items {
                let cell = item.map_or("-".to_owned(), |item| {
                    text::number(item.value, item.what.places(), item.what.signed(), "")
                });
                write!(out, "{cell:>11}")?;
            }
            // what all rows say is said below
            let everywhere = |code: &CautionId| self.rows.iter().all(|row| row.cautions.contains(code));
            let own = row.cautions.iter().filter(|code| !firsts.contains(code) && !everywhere(code));
            let words: Vec<String> = own.map(|code| code.word().to_string()).collect();
            writeln!(out, "{}", if words.is_empty() { String::new() } else { format!("  {}", words.join(" ")) })?;
        }
        let all = self.rows.iter().flat_map(|row| &row.cautions).filter(|code| !firsts.contains(code));
        let mut told: Vec<(String, CautionId)> = all.map(|code| (code.word().to_string(), *code)).collect();
        told.sort();
        told.dedup();
        if !told.is_empty() {
            writeln!(out)?;
        }
        for (word, code) in told {
            text::paragraph(out, &format!("  {word}: "), code.text())?;
        }
        text::paragraph(out, "", NOT_A_DEVICE.text())
    }

    fn places(&self) -> u8 {
        match self.entry.kind() {
            Kind::Number(places, _) => places,
            _ => 0,
        }
    }

    /// The same as curves: those of the first name's unit.
    ///
    /// # Errors
    /// Where it cannot be drawn.
    pub fn draw(&self) -> Result<String, Vec<Problem>> {
        let unit = self.unit(0);
        let curve = |place: usize| {
            let points = self.rows.iter().filter_map(|row| Some((row.value, row.items[place]?.value)));
            (self.title(place), points.collect::<Vec<_>>())
        };
        let drawn: Vec<usize> = (0..self.names.len()).filter(|place| self.unit(*place) == unit).collect();
        let curves = drawn.iter().enumerate().map(|(order, place)| {
            let (name, points) = curve(*place);
            match order % 4 {
                0 => Curve::line(&name, points),
                1 => Curve::dashed(&name, points),
                2 => Curve::thin(&name, points),
                _ => Curve::dots(&name, points),
            }
        });
        let firsts = self.firsts();
        let illustration = if firsts.contains(&ILLUSTRATION) { "ILLUSTRATION: " } else { "" };
        Plot {
            title: format!("{illustration}what {} changes", self.entry.what()),
            across: format!("{}, {}", self.entry.what(), self.entry.unit()),
            up: unit.to_owned(),
            square: false,
            curves: curves.collect(),
            notes: firsts.iter().chain([&NOT_A_DEVICE]).map(|code| code.text().to_string()).collect(),
        }
        .draw()
        .map_err(|error| vec![Problem::of_file("the drawing", error, "")])
    }
}

/// What a column is called.
fn letter(place: usize) -> char {
    char::from(b'A' + (place % 26) as u8)
}
