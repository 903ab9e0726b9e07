//! The table of answers.

use std::fmt::Write as _;
use std::io::Write;

use csv::{Writer, WriterBuilder};
use ocellus_card::case::Case;
use ocellus_card::caution::Caution;
use ocellus_card::cautions::{AXES_UNKNOWN, BIOMETRY_UNDATED, NO_SOLUTION, PREVIOUS_SURGERY, SUPERSEDED};
use ocellus_card::entries;
use ocellus_card::id::{CautionId, EntryId};
use ocellus_card::item::Item;
use ocellus_card::parts::eye::check;
use ocellus_card::parts::lens::Answers as Answered;
use ocellus_card::sink::Sink;
use ocellus_core::lens::method::Method;
use ocellus_core::lens::view::Eyes;
use ocellus_core::quantity::{LensPower, Vertex};
use ocellus_core::working::Steps;

use super::row::Fault;

/// Said of every row: a table has no columns for what they ask, and always has the column of SRK II.
const OF_EVERY_ROW: &[CautionId] = &[BIOMETRY_UNDATED, AXES_UNKNOWN, SUPERSEDED];

/// The methods that a table has columns for.
fn methods() -> impl Iterator<Item = Method> {
    Method::of(Eyes::Ordinary)
}

/// Writes the answers, row by row.
pub(super) struct Answers<W: Write> {
    table: Writer<W>,
    number: String,
    cautions: String,
}

impl<W: Write> Answers<W> {
    /// Writes the header.
    pub(super) fn start(output: W) -> csv::Result<Self> {
        let mut table = WriterBuilder::new().buffer_capacity(super::BUFFER).from_writer(output);
        table.write_field("id")?;
        for method in methods() {
            table.write_field(format!("{}_power_d", method.key()))?;
            table.write_field(format!("{}_refraction_d", method.key()))?;
        }
        table.write_record(["cautions", "error"])?;
        Ok(Answers { table, number: String::new(), cautions: String::new() })
    }

    /// Writes one row.
    pub(super) fn write(&mut self, id: &str, read: &Result<Case, Fault>) -> csv::Result<()> {
        self.table.write_field(id)?;
        self.cautions.clear();
        match read {
            Ok(case) => self.numbers(case)?,
            Err(_) => methods().try_for_each(|_| self.pair(None, None))?,
        }
        self.table.write_field(&self.cautions)?;
        self.table.write_field(read.as_ref().err().map_or(String::new(), Fault::to_string))?;
        self.table.write_record(None::<&[u8]>)
    }

    fn numbers(&mut self, case: &Case) -> csv::Result<()> {
        let answers = said(case, &mut Said(&mut self.cautions));
        let entered = |entry: EntryId| case.draft().number(entry).or(entry.default());
        let lens = entered(entries::LENS_POWER.id()).and_then(|d| LensPower::from_d(d).ok());
        let vertex = entered(entries::VERTEX.id()).and_then(|mm| Vertex::from_mm(mm).ok());
        for method in methods() {
            let answer = answers.as_ref().and_then(|answers| answers.all().find(|answer| answer.method == method));
            let left = answer.zip(lens.zip(vertex)).map(|(a, (lens, vertex))| a.optics.refraction(lens, vertex));
            if let Some(Err(_)) = left {
                Said(&mut self.cautions).say(Some(method), NO_SOLUTION);
            }
            self.pair(answer.map(|a| a.power), left.and_then(Result::ok))?;
        }
        Ok(())
    }

    /// Writes a power and a refraction, each with the fewest digits that are read back as the same 64 bits.
    fn pair(&mut self, power: Option<f64>, refraction: Option<f64>) -> csv::Result<()> {
        for value in [power, refraction] {
            self.number.clear();
            if let Some(value) = value {
                write!(self.number, "{value}").map_err(std::io::Error::other)?;
            }
            self.table.write_field(&self.number)?;
        }
        Ok(())
    }

    /// Writes what is still held back.
    pub(super) fn finish(mut self) -> csv::Result<()> {
        Ok(self.table.flush()?)
    }
}

/// What the methods of the columns say of an eye, and what is to be known of both.
fn said(case: &Case, cautions: &mut Said) -> Option<Answered> {
    case.known(|known| {
        let (eye, lens) = known.eye.zip(known.lens)?;
        check(eye, cautions);
        // those made for an eye after laser have no columns
        if methods().eq(lens.methods()) {
            lens.answers().report(eye, &mut |caution| cautions.caution(caution));
            Some(*lens.answers())
        } else {
            cautions.say(None, PREVIOUS_SURGERY);
            None
        }
    })
}

/// The cautions of a row.
struct Said<'a>(&'a mut String);

impl Said<'_> {
    /// Adds a code, prefixed by the method it is about.
    fn say(&mut self, method: Option<Method>, code: CautionId) {
        if OF_EVERY_ROW.contains(&code) {
            return;
        }
        if !self.0.is_empty() {
            self.0.push(' ');
        }
        if let Some(method) = method {
            self.0.push_str(method.key());
            self.0.push('_');
        }
        code.word().pieces(&mut |piece| self.0.push_str(piece));
    }
}

impl Steps for Said<'_> {}

impl Sink for Said<'_> {
    fn item(&mut self, _item: Item) {}

    fn caution(&mut self, caution: Caution) {
        self.say(caution.method, caution.code);
    }
}
