//! The numbers of a case as JSON: unrounded, each f64 written so that it reads back as the same 64 bits.

use crate::text;
use ocellus_card::caution::{Caution, Severity};
use ocellus_card::draft::{Draft, with_text};
use ocellus_card::entry::Kind;
use ocellus_card::id::{EntryId, PartId, SignOffId};
use ocellus_card::item::Item;
use ocellus_card::readback::{self, Identifiers};
use ocellus_card::sink::Sink;
use ocellus_card::{Named, Subject, case::Case, workings};
use ocellus_core::constant::Constant;
use ocellus_core::lens::method::Method;
use ocellus_core::working::{Step, Steps};
use ocellus_text::Text;
use serde::{Serialize, Serializer};
use serde_json::Value;
use std::fmt::Display;
use std::io::{self, Write};

/// Prints the card of a case; the answer is whether anything was refused.
pub fn print_plan(case: &Case, identifiers: Option<&Identifiers>, out: &mut dyn Write) -> io::Result<bool> {
    let mut sink = Json::default();
    case.plan(&mut sink);
    let card = Card {
        case: Entries(case.draft()),
        defaults: sink.defaults(case.draft()),
        items: &sink.items,
        cautions: &sink.cautions,
        sign_off: &sink.sign_off,
        // a case file has no entry with more decimals than it takes, so there always is one
        readback: readback::of(case, identifiers).ok().map(|code| code.as_str().to_owned()),
    };
    write(&card, out)?;
    Ok(sink.refused)
}

/// Prints how one number came about; the answer is whether there were steps, and none was refused.
pub fn print_explain(subject: Subject, case: &Case, out: &mut dyn Write) -> io::Result<bool> {
    let mut sink = Json::default();
    let any = case.explain(subject, &mut sink);
    let working = Working {
        subject: subject.key(),
        name: subject.name(),
        case: Entries(case.draft()),
        defaults: sink.defaults(case.draft()),
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

/// As it is shown.
fn shown<S: Serializer>(text: &impl Display, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_str(text)
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
    #[serde(serialize_with = "shown")]
    subject: Named,
    #[serde(serialize_with = "shown")]
    name: Named,
    case: Entries<'a>,
    defaults: Defaults,
    items: &'a [ItemLine],
    steps: &'a [StepLine],
    cautions: &'a [CautionLine],
}

/// What was entered, in the order of the parts.
struct Entries<'a>(&'a Draft);

impl Serialize for Entries<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.made().map(|entry| (entry.key().to_string(), value(self.0, entry))))
    }
}

/// What was not entered, and stands at its usual value.
struct Defaults(Vec<EntryId>);

impl Serialize for Defaults {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|entry| (entry.key().to_string(), entry.default())))
    }
}

fn value(draft: &Draft, entry: EntryId) -> Value {
    match (entry.kind(), draft.number(entry)) {
        (Kind::Number(..), Some(number)) => Value::from(number),
        (_, Some(code)) => Value::from(with_text(entry, code, str::to_owned)),
        (_, None) => Value::from(draft.name(entry).map(|name| name.as_str())),
    }
}

#[derive(Serialize)]
struct ItemLine {
    id: String,
    #[serde(serialize_with = "shown")]
    name: Text,
    row: u8,
    value: f64,
    unit: &'static str,
    part: Option<String>,
    source: &'static str,
    mark: &'static str,
}

#[derive(Serialize)]
struct CautionLine {
    #[serde(serialize_with = "shown")]
    code: Text,
    severity: String,
    field: Option<String>,
    method: Option<&'static str>,
    #[serde(serialize_with = "shown")]
    text: Text,
    source: &'static str,
    mark: &'static str,
}

#[derive(Serialize)]
struct SignOffLine {
    #[serde(serialize_with = "shown")]
    id: Text,
    #[serde(serialize_with = "shown")]
    text: Text,
}

#[derive(Serialize)]
struct StepLine {
    heading: String,
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
    part: Option<PartId>,
    entries: Vec<EntryId>,
    items: Vec<ItemLine>,
    cautions: Vec<CautionLine>,
    sign_off: Vec<SignOffLine>,
    steps: Vec<StepLine>,
    refused: bool,
}

impl Json {
    fn defaults(&self, draft: &Draft) -> Defaults {
        Defaults(self.entries.iter().copied().filter(|entry| !draft.has(*entry)).collect())
    }
}

impl Steps for Json {
    fn step(&mut self, step: Step) {
        let prose = workings::prose(step.table).get(usize::from(step.index));
        let Some((line, prose)) = step.line().zip(prose) else { return };
        self.steps.push(StepLine {
            heading: step.table.heading.to_string(),
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

impl Sink for Json {
    fn part(&mut self, part: PartId) {
        self.part = Some(part);
    }

    fn entry(&mut self, entry: EntryId) {
        if !self.entries.contains(&entry) {
            self.entries.push(entry);
        }
    }

    fn item(&mut self, item: Item) {
        self.items.push(ItemLine {
            id: text::id(&item),
            name: item.what.name(),
            row: item.row,
            value: item.value,
            unit: item.what.unit(),
            part: self.part.map(|part| part.key().to_string()),
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
            field: caution.entry.map(|entry| entry.key().to_string()),
            method: caution.method.map(Method::key),
            text: code.text(),
            source: code.source().text(),
            mark: code.mark().word(),
        });
    }

    fn sign_off(&mut self, line: SignOffId) {
        self.sign_off.push(SignOffLine { id: line.key(), text: line.text() });
    }
}
