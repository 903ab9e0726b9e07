//! The table of answers.

use std::fmt::Write as _;
use std::io::Write;

use csv::{Writer, WriterBuilder};
use ocellus_core::case::Case;
use ocellus_core::caution::{Caution, Code};
use ocellus_core::eye::checks;
use ocellus_core::field::Field;
use ocellus_core::lens::Method;
use ocellus_core::lens::answer::ordinary_answers;
use ocellus_core::quantity::{LensPower, Vertex};

use super::row::Wrong;

/// Said of every row: a table has no columns for what they ask, and always has the column of SRK II.
const OF_EVERY_ROW: &[Code] = &[Code::BiometryUndated, Code::AxesUnknown, Code::Superseded];

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
        for method in Method::ORDINARY {
            table.write_field(format!("{}_power_d", method.key()))?;
            table.write_field(format!("{}_refraction_d", method.key()))?;
        }
        table.write_record(["cautions", "error"])?;
        Ok(Answers { table, number: String::new(), cautions: String::new() })
    }

    /// Writes one row.
    pub(super) fn write(&mut self, id: &str, read: &Result<Case, Wrong>) -> csv::Result<()> {
        self.table.write_field(id)?;
        self.cautions.clear();
        match read {
            Ok(case) => self.numbers(case)?,
            Err(_) => Method::ORDINARY.iter().try_for_each(|_| self.pair(None, None))?,
        }
        self.table.write_field(&self.cautions)?;
        self.table.write_field(read.as_ref().err().map_or(String::new(), Wrong::to_string))?;
        self.table.write_record(None::<&[u8]>)
    }

    fn numbers(&mut self, case: &Case) -> csv::Result<()> {
        let cautions = &mut self.cautions;
        checks::check(case, &mut |caution| say(cautions, caution.method, caution.code));
        let answers = ordinary_answers(case, &mut |caution: Caution| say(cautions, caution.method, caution.code));
        let entered = |field: Field| case.draft().number(field).or(field.default());
        let lens = entered(Field::LensPower).and_then(|d| LensPower::from_d(d).ok());
        let vertex = entered(Field::Vertex).and_then(|mm| Vertex::from_mm(mm).ok());
        for (&method, answer) in Method::ORDINARY.iter().zip(answers) {
            let left = answer.zip(lens.zip(vertex)).map(|(a, (lens, vertex))| a.optics.refraction(lens, vertex));
            if let Some(Err(_)) = left {
                say(&mut self.cautions, Some(method), Code::NoSolution);
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

/// Adds a code, prefixed by the method it is about.
fn say(cautions: &mut String, method: Option<Method>, code: Code) {
    if OF_EVERY_ROW.contains(&code) {
        return;
    }
    if !cautions.is_empty() {
        cautions.push(' ');
    }
    if let Some(method) = method {
        cautions.push_str(method.key());
        cautions.push('_');
    }
    cautions.push_str(code.word());
}
