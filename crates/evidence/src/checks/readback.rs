//! The read-back, made again from its specification: the text by the standard library's formatting, the sums by the crc
//! crate from their parameters.

use crc::{Algorithm, CRC_10_ATM, Crc};
use ocellus_card::case::Case;
use ocellus_card::caution::{self, Caution};
use ocellus_core::decimal::{Sign, fixed};
use ocellus_card::draft::Draft;
use ocellus_card::error::Error;
use ocellus_card::entry::{Field, Kind};
use ocellus_card::item::{Item, What};
use ocellus_core::lens::method::Method;
use ocellus_card::name::Name;
use ocellus_core::plan;
use ocellus_card::readback::{self, Answers, Identifiers, ReadBack};
use ocellus_card::case::Case;
use ocellus_card::sink::Sink;

use crate::check::{Compared, Failed, Registry};
use crate::oracles;

const ENTRIES: Algorithm<u32> = Algorithm {
    width: 20,
    poly: 0x39599,
    init: 0xf_ffff,
    refin: false,
    refout: false,
    xorout: 0,
    check: 0,
    residue: 0,
};

/// Drafts that differ in one entry each, with entries of every kind, and patients with and without identifiers.
fn drafts() -> Result<Vec<(Draft, Option<Identifiers>)>, Failed> {
    let mut usual = Draft::default();
    for (field, text) in [
        (entries::SIDE.id(), "left"),
        (entries::SURGERY_DATE.id(), "2026-11-30"),
        (entries::AXIAL_LENGTH.id(), "23.45"),
        (entries::K1.id(), "43.25"),
        (entries::K2.id(), "44.00"),
        (entries::K_KIND.id(), "keratometric"),
        (entries::AL_METHOD.id(), "immersion"),
        (entries::EYE_STATE.id(), "phakic"),
        (entries::PREVIOUS_SURGERY.id(), "none"),
        (entries::TARGET.id(), "-0.25"),
        (entries::LENS_MODEL.id(), "Demo a1"),
        (entries::A_CONSTANT.id(), "118.9"),
    ] {
        usual.enter(field, text)?;
    }
    let patient = Identifiers(Name::parse("h 4711")?, Name::parse("1951-02-28")?);
    let mut drafts = vec![(usual.clone(), None), (usual.clone(), Some(patient))];
    for &field in Field::ALL {
        let numbers = match field.kind() {
            // as many decimals as the entry has
            Kind::Number(places, bounds) => [bounds.min, bounds.max]
                .iter()
                .map(|end| format!("{end:.*}", usize::from(places)).parse())
                .collect::<Result<_, _>>()?,
            Kind::Choice(words) => vec![0.0, words.len() as f64 - 1.0],
            Kind::Date => vec![19_991_231.0, 20_240_229.0],
            Kind::Name => vec![],
        };
        for number in numbers {
            let mut draft = usual.clone();
            draft.set(field, number);
            drafts.push((draft, Some(patient)));
        }
    }
    Ok(drafts)
}

/// A name in its 24 places.
fn placed(name: &Name) -> String {
    format!("{:24}", name.as_str().to_ascii_uppercase())
}

/// The canonical text of layout 4, from its specification.
fn specified(draft: &Draft, identifiers: Option<&Identifiers>) -> String {
    let entry = |field: EntryId| match (field.kind(), draft.number(field).or(field.default()), draft.name(field)) {
        (Kind::Number(places, _), Some(value), _) => {
            let digits = format!("{:.*}", usize::from(places), value.abs()).replace('.', "");
            format!("{}{digits:0>9}", if value < 0.0 { '-' } else { '+' })
        }
        (Kind::Number(..), None, _) => ".".repeat(10),
        (Kind::Choice(_), value, _) => value.map_or("..".into(), |value| format!("{value:02}")),
        (Kind::Date, value, _) => value.map_or(".".repeat(8), |value| format!("{value:08}")),
        (Kind::Name, _, name) => name.map_or(".".repeat(24), placed),
    };
    let entries: String = EntryId::all().filter(|field| **field != entries::ID.id()).map(|field| entry(*field)).collect();
    let patient = identifiers.map_or(".".repeat(48), |Identifiers(first, second)| placed(first) + &placed(second));
    format!("4{entries}{patient}")
}

/// The answers of a card as bytes, from their specification.
#[derive(Default)]
struct Bytes(Vec<u8>);

impl Bytes {
    fn place<T: PartialEq>(all: &[T], one: &T) -> u8 {
        all.iter().position(|other| other == one).map_or(0xee, |place| place as u8)
    }

    fn method(method: Option<Method>) -> u8 {
        method.map_or(0, |method| Self::place(Method::ALL, &method) + 1)
    }
}

impl Sink for Bytes {
    fn item(&mut self, item: Item) {
        let sign = if item.what.signed() { Sign::Always } else { Sign::Minus };
        let printed =
            fixed(item.value, item.what.places(), sign).map(|text| text.as_str().to_owned()).unwrap_or_default();
        self.0.extend([Self::place(What::ALL, &item.what), Self::method(item.method), item.row]);
        self.0.extend(printed.bytes());
    }
    fn caution(&mut self, caution: Caution) {
        self.0.extend([0xff, Self::place(caution::Code::ALL, &caution.code), Self::method(caution.method)]);
    }
}

fn symbols(value: u32, count: u32) -> String {
    let alphabet = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    (0..count).rev().map(|place| char::from(alphabet[(value >> (5 * place)) as usize % 32])).collect()
}

fn same_text(canonical: impl Fn(&Draft, Option<&Identifiers>, &mut dyn FnMut(u8)) -> Result<(), Error>) -> Compared {
    let drafts = drafts()?;
    for (draft, patient) in &drafts {
        let mut text = Vec::new();
        canonical(draft, patient.as_ref(), &mut |byte| text.push(byte))?;
        let (text, expected) = (String::from_utf8(text)?, specified(draft, patient.as_ref()));
        if text != expected {
            return Err(format!("the text is {text}, not {expected}").into());
        }
    }
    Ok(drafts.len())
}

fn same_sum(entries: impl Fn(&Draft, Option<&Identifiers>) -> Result<u32, Error>) -> Compared {
    let (drafts, crc) = (drafts()?, Crc::<u32>::new(&ENTRIES));
    for (draft, patient) in &drafts {
        let sum = crc.checksum(specified(draft, patient.as_ref()).as_bytes());
        if entries(draft, patient.as_ref())? != sum {
            return Err(format!("the sum is {}, not {sum}", entries(draft, patient.as_ref())?).into());
        }
    }
    Ok(drafts.len())
}

/// Both parts of the code, for every draft that is a case.
fn same_code(
    code: impl Fn(&Case, Option<&Identifiers>) -> Result<ReadBack, Error>,
    text: fn(&ReadBack) -> &str,
) -> Compared {
    let (first, second) = (Crc::<u32>::new(&ENTRIES), Crc::<u16>::new(&CRC_10_ATM));
    let mut count = 0;
    for (draft, patient) in drafts()? {
        let Ok(case) = Case::try_from(&draft) else { continue };
        let mut bytes = Bytes::default();
        plan::plan(&case, &mut bytes);
        let entries = symbols(first.checksum(specified(&draft, patient.as_ref()).as_bytes()), 4);
        let answers = symbols(u32::from(second.checksum(&bytes.0)), 2);
        let (code, expected) = (code(&case, patient.as_ref())?, format!("{entries}-{answers}"));
        if text(&code) != expected {
            return Err(format!("the code is {}, not {expected}", text(&code)).into());
        }
        count += 1;
    }
    Ok(count)
}

pub(super) fn register(registry: &mut Registry) {
    oracles! { registry;
        readback::canonical => "the read-back's specification, by the standard library" => |canonical|
            same_text(canonical);
        readback::entries => "the crc crate" => |entries| same_sum(entries);
        readback::of, ReadBack::as_str => "the crc crate" => |of, as_str| same_code(of, as_str);
        readback::of_sheet => "the crc crate" => |of_sheet|
            same_code(|case, patient| of_sheet(&Sheet::Eye(case.clone()), patient), ReadBack::as_str);
        Answers::item, Answers::caution, Answers::code => "the crc crate" => |item, caution, code| {
            /// Hands on what the answers cover.
            struct Handed<'a>(Answers, &'a dyn Fn(&mut Answers, Item), &'a dyn Fn(&mut Answers, Caution));
            impl Sink for Handed<'_> {
                fn item(&mut self, item: Item) {
                    self.1(&mut self.0, item);
                }
                fn caution(&mut self, caution: Caution) {
                    self.2(&mut self.0, caution);
                }
            }
            same_code(|case, patient| {
                let mut handed = Handed(Answers::default(), &item, &caution);
                plan::plan(case, &mut handed);
                code(&handed.0, case.draft(), patient)
            }, ReadBack::as_str)
        };
    }
}
