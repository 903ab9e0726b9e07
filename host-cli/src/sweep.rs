//! One entry from here to there: what follows from it, as a table and as curves. Nothing is computed here.

use crate::draw::plot::{Curve, Plot};
use crate::problem::Problem;
use crate::text;
use ocellus_core::caution::{Caution, Code, Severity};
use ocellus_core::decimal::{Sign, fixed, parse};
use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Kind};
use ocellus_core::item::{Item, Rows};
use ocellus_core::sheet::Sheet;
use ocellus_core::sink::Sink;
use std::io::{self, Write};

/// What is told where nothing else is asked for.
pub const USUAL: [&str; 4] = ["chamber_mmhg", "surge_trough_mmhg", "surge_recovered_ms", "surge_volume_ul"];

/// What was asked.
pub struct Sweep {
    field: Field,
    names: Vec<String>,
    rows: Vec<Row>,
    cautions: Vec<Code>,
}

struct Row {
    /// As it would be typed.
    value: f64,
    /// The first number of each name.
    items: Vec<Option<Item>>,
    refused: Vec<Code>,
}

/// The numbers of a card by the names that JSON has for them.
#[derive(Default)]
struct Card {
    items: Vec<Item>,
    cautions: Vec<Code>,
}

impl Sink for Card {
    fn item(&mut self, item: Item) {
        if Rows::with(item.what).is_none() {
            self.items.push(item);
        }
    }

    fn caution(&mut self, caution: Caution) {
        if !self.cautions.contains(&caution.code) {
            self.cautions.push(caution.code);
        }
    }
}

fn name(item: &Item) -> String {
    item.method.map_or(item.what.key().to_owned(), |method| format!("{}_{}", method.key(), item.what.key()))
}

impl Sweep {
    /// Plans a card for each of so many values of an entry.
    ///
    /// # Errors
    /// Where the entry is no number, an end is none that it takes, or a name is none of the card.
    pub fn of(draft: &Draft, word: &str, ends: [&str; 2], rows: u16, names: &[String]) -> Result<Sweep, Vec<Problem>> {
        let refused = |what: &str, wrong: String, accepted: &str| vec![Problem::of_file(what, wrong, accepted)];
        let found = Field::ALL.iter().copied().find(|field| field.key() == word || field.word() == word);
        let Some((field, Kind::Number(places, bounds))) = found.map(|field| (field, field.kind())) else {
            return Err(refused(word, "not an entry that is a number".to_owned(), "`ocellus fields` lists them"));
        };
        let end = |text: &str| {
            let value = parse(text).map_err(|code| code.text().to_owned()).map(|parsed| parsed.value);
            value
                .and_then(|value| field.check(value).map(|()| value).map_err(|error| error.code.text().to_owned()))
                .map_err(|wrong| {
                    let accepted = format!("{} to {} {}", bounds.min, bounds.max, bounds.unit);
                    refused(&format!("{word} {text}"), wrong, &accepted)
                })
        };
        let (from, to) = (end(ends[0])?, end(ends[1])?);
        let names = if names.is_empty() { USUAL.map(str::to_owned).to_vec() } else { names.to_vec() };
        let mut sweep = Sweep { field, names, rows: Vec::new(), cautions: Vec::new() };
        for row in 0..rows {
            let share = f64::from(row) / f64::from(rows - 1);
            let typed = fixed(from + (to - from) * share, places, Sign::Minus);
            let value = typed.and_then(|text| parse(text.as_str()).ok()).map_or(from, |parsed| parsed.value);
            sweep.plan(draft, value);
        }
        for (place, name) in sweep.names.iter().enumerate() {
            if sweep.rows.iter().all(|row| row.items[place].is_none()) {
                let accepted = "the id of a single number, as `ocellus plan --json` has it, for which nothing lacks";
                return Err(refused(name, "on none of these cards".to_owned(), accepted));
            }
        }
        Ok(sweep)
    }

    fn plan(&mut self, draft: &Draft, value: f64) {
        let mut draft = draft.clone();
        draft.set(self.field, value);
        let mut card = Card::default();
        if let Some(sheet) = Sheet::check(&draft, &mut |_| {}) {
            sheet.plan(&mut card);
        }
        let first = |wanted: &String| card.items.iter().find(|item| name(item) == *wanted).copied();
        let items = self.names.iter().map(first).collect();
        let severe = |code: &&Code| code.severity() != Severity::Note && **code != Code::Illustration;
        let refused = card.cautions.iter().filter(severe).copied().collect();
        self.cautions.extend(card.cautions.iter().filter(|code| **code == Code::Illustration));
        self.rows.push(Row { value, items, refused });
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
        self.rows.iter().find_map(of_row).map_or("", |unit| if unit == "1" { "" } else { unit })
    }

    /// Prints the table.
    pub fn print(&self, out: &mut dyn Write) -> io::Result<()> {
        let of = |value| text::number(value, self.places(), self.field.signed(), "");
        writeln!(
            out,
            "{} from {} to {} {}",
            self.field.what(),
            of(self.rows[0].value),
            of(self.rows[self.rows.len() - 1].value),
            self.field.unit()
        )?;
        self.head(out)?;
        for place in 0..self.names.len() {
            writeln!(out, "  {}  {}", letter(place), self.title(place))?;
        }
        write!(out, "\n{:>12}", self.field.unit())?;
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
            let everywhere = |code: &Code| self.rows.iter().all(|row| row.refused.contains(code));
            let refused: Vec<&str> =
                row.refused.iter().filter(|code| !everywhere(code)).map(|code| code.word()).collect();
            writeln!(out, "{}", if refused.is_empty() { String::new() } else { format!("  {}", refused.join(" ")) })?;
        }
        let mut told: Vec<Code> = self.rows.iter().flat_map(|row| row.refused.clone()).collect();
        told.sort_by_key(|code| code.word());
        told.dedup();
        if !told.is_empty() {
            writeln!(out)?;
        }
        for code in told {
            text::paragraph(out, &format!("  {}: ", code.word()), code.text())?;
        }
        text::paragraph(out, "", Code::NotADevice.text())
    }

    fn head(&self, out: &mut dyn Write) -> io::Result<()> {
        if self.cautions.is_empty() { Ok(()) } else { text::paragraph(out, "", Code::Illustration.text()) }
    }

    fn places(&self) -> u8 {
        match self.field.kind() {
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
        let mut notes = vec![Code::NotADevice.text().to_owned()];
        let illustration = !self.cautions.is_empty();
        if illustration {
            notes.insert(0, Code::Illustration.text().to_owned());
        }
        Plot {
            title: format!("{}what {} changes", if illustration { "ILLUSTRATION: " } else { "" }, self.field.what()),
            across: format!("{}, {}", self.field.what(), self.field.unit()),
            up: unit.to_owned(),
            square: false,
            curves: curves.collect(),
            notes,
        }
        .draw()
        .map_err(|error| vec![Problem::of_file("the drawing", error, "")])
    }
}

/// What a column is called.
fn letter(place: usize) -> char {
    char::from(b'A' + (place % 26) as u8)
}
