//! The numbers of a case as JSON: unrounded, each f64 written so that it reads back as the same 64 bits.

use ocellus_core::caution::{Caution, Severity};
use ocellus_core::constant::Constant;
use ocellus_core::draft::{Draft, with_text};
use ocellus_core::explain::Subject;
use ocellus_core::field::{Field, Kind};
use ocellus_core::item::{Item, Part};
use ocellus_core::lens::Method;
use ocellus_core::readback::{self, Identifiers};
use ocellus_core::sheet::Sheet;
use ocellus_core::sign_off::SignOff;
use ocellus_core::sink::Sink;
use ocellus_core::working::Step;
use serde::{Serialize, Serializer};
use serde_json::Value;
use std::io::{self, Write};

/// Prints the card of a case; the answer is whether anything was refused.
pub fn print_plan(sheet: &Sheet, identifiers: Option<&Identifiers>, out: &mut dyn Write) -> io::Result<bool> {
    let mut sink = Json::default();
    sheet.plan(&mut sink);
    let card = Card {
        case: Entries(sheet.draft()),
        defaults: sink.defaults(sheet.draft()),
        items: &sink.items,
        cautions: &sink.cautions,
        sign_off: &sink.sign_off,
        // a case file has no entry with more decimals than its field, so there always is one
        readback: readback::of_sheet(sheet, identifiers).ok().map(|code| code.as_str().to_owned()),
    };
    write(&card, out)?;
    Ok(sink.refused)
}

/// Prints how one number came about; the answer is whether there were steps, and none was refused.
pub fn print_explain(subject: Subject, sheet: &Sheet, out: &mut dyn Write) -> io::Result<bool> {
    let mut sink = Json::default();
    let any = sheet.explain(subject, &mut sink);
    let working = Working {
        subject: subject.key(),
        name: subject.name(),
        case: Entries(sheet.draft()),
        defaults: sink.defaults(sheet.draft()),
        items: &sink.items,
        steps: &sink.steps,
        cautions: &sink.cautions,
    };
    write(&working, out)?;
    Ok(any && !sink.refused)
}

fn write(document: &impl Serialize, out: &mut dyn Write) -> io::Result<()> {
    serde_json::to_writer_pretty(&mut *out, document)?;
    writeln!(out)
}

#[derive(Serialize)]
struct Card<'a> {
    case: Entries<'a>,
    defaults: Defaults,
    items: &'a [ItemLine],
    cautions: &'a [CautionLine],
    sign_off: &'a [SignOffLine],
    readback: Option<String>,
}

#[derive(Serialize)]
struct Working<'a> {
    subject: &'static str,
    name: &'static str,
    case: Entries<'a>,
    defaults: Defaults,
    items: &'a [ItemLine],
    steps: &'a [StepLine],
    cautions: &'a [CautionLine],
}

/// What was entered, in the order of the fields.
struct Entries<'a>(&'a Draft);

impl Serialize for Entries<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let entered = Field::ALL.iter().filter(|field| self.0.has(**field));
        serializer.collect_map(entered.map(|field| (field.key(), value(self.0, *field))))
    }
}

/// What was not entered, and stands at its usual value.
struct Defaults(Vec<Field>);

impl Serialize for Defaults {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|field| (field.key(), field.default())))
    }
}

fn value(draft: &Draft, field: Field) -> Value {
    match (field.kind(), draft.number(field)) {
        (Kind::Number(..), Some(number)) => Value::from(number),
        (_, Some(code)) => Value::from(with_text(field, code, str::to_owned)),
        (_, None) => Value::from(draft.name(field).map(|name| name.as_str())),
    }
}

#[derive(Serialize)]
struct ItemLine {
    id: String,
    name: &'static str,
    row: u8,
    value: f64,
    unit: &'static str,
    part: Option<&'static str>,
    source: &'static str,
    mark: &'static str,
}

#[derive(Serialize)]
struct CautionLine {
    code: &'static str,
    severity: String,
    field: Option<&'static str>,
    method: Option<&'static str>,
    text: &'static str,
    source: &'static str,
    mark: &'static str,
}

#[derive(Serialize)]
struct SignOffLine {
    id: &'static str,
    text: &'static str,
}

#[derive(Serialize)]
struct StepLine {
    topic: &'static str,
    symbol: &'static str,
    value: f64,
    unit: &'static str,
    meaning: &'static str,
    equation: &'static str,
    constants: Vec<ConstantLine>,
    source: &'static str,
    mark: &'static str,
}

#[derive(Serialize)]
struct ConstantLine {
    name: &'static str,
    digits: &'static str,
    unit: &'static str,
    source: &'static str,
    mark: &'static str,
}

impl From<&'static Constant> for ConstantLine {
    fn from(constant: &'static Constant) -> ConstantLine {
        ConstantLine {
            name: constant.name,
            digits: constant.digits,
            unit: constant.unit,
            source: constant.source.text(),
            mark: constant.mark.word(),
        }
    }
}

/// Keeps what is streamed, in the words of the document.
#[derive(Default)]
struct Json {
    part: Option<Part>,
    entries: Vec<Field>,
    items: Vec<ItemLine>,
    cautions: Vec<CautionLine>,
    sign_off: Vec<SignOffLine>,
    steps: Vec<StepLine>,
    refused: bool,
}

impl Json {
    fn defaults(&self, draft: &Draft) -> Defaults {
        Defaults(self.entries.iter().copied().filter(|field| !draft.has(*field)).collect())
    }
}

impl Sink for Json {
    fn part(&mut self, part: Part) {
        self.part = Some(part);
    }

    fn entry(&mut self, field: Field) {
        if !self.entries.contains(&field) {
            self.entries.push(field);
        }
    }

    fn item(&mut self, item: Item) {
        let key = item.what.key();
        self.items.push(ItemLine {
            id: item.method.map_or(key.to_owned(), |method| format!("{}_{key}", method.key())),
            name: item.what.name(),
            row: item.row,
            value: item.value,
            unit: item.what.unit(),
            part: self.part.map(Part::key),
            source: item.method.map_or(item.what.source(), Method::source).text(),
            mark: item.what.mark().word(),
        });
    }

    fn caution(&mut self, caution: Caution) {
        let code = caution.code;
        self.refused |= code.severity() == Severity::Refuse;
        self.cautions.push(CautionLine {
            code: code.word(),
            severity: code.severity().word().to_lowercase(),
            field: caution.field.map(Field::key),
            method: caution.method.map(|method| method.key()),
            text: code.text(),
            source: code.source().text(),
            mark: code.mark().word(),
        });
    }

    fn sign_off(&mut self, line: SignOff) {
        self.sign_off.push(SignOffLine { id: line.key(), text: line.text() });
    }

    fn step(&mut self, step: Step) {
        let index = usize::from(step.index);
        let (Some(line), Some(prose)) = (step.topic.lines().get(index), step.topic.prose().get(index)) else { return };
        self.steps.push(StepLine {
            topic: step.topic.key(),
            symbol: line.symbol,
            value: step.value,
            unit: line.unit(),
            meaning: prose.meaning,
            equation: prose.equation,
            constants: prose.constants.iter().map(|constant| ConstantLine::from(*constant)).collect(),
            source: line.source.text(),
            mark: line.mark.word(),
        });
    }
}
