//! The read-back, made again from its specification: the text by the standard library's formatting, the sums by the crc
//! crate from their parameters.

use crc::{Algorithm, CRC_10_ATM, Crc};
use ocellus_card::case::Case;
use ocellus_card::caution::{Caution, Severity};
use ocellus_card::draft::Draft;
use ocellus_card::entries;
use ocellus_card::entry::Kind;
use ocellus_card::error::Error;
use ocellus_card::id::EntryId;
use ocellus_card::item::Item;
use ocellus_card::name::Name;
use ocellus_card::readback::{self, Answers, Identifiers, ReadBack};
use ocellus_card::sink::Sink;
use ocellus_core::decimal::{Sign, fixed};
use ocellus_core::lens::method::Method;
use ocellus_core::working::Steps;

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

/// Drafts that differ in one entry each from the case of an eye, and from nothing, where those of fluids are set-ups: entries of
/// every kind, patients with and without identifiers.
fn drafts() -> Result<Vec<(Draft, Option<Identifiers>)>, Failed> {
    let (mut usual, nothing) = (Draft::default(), Draft::default());
    for (entry, text) in [
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
        usual.enter(entry, text)?;
    }
    let patient = Identifiers(Name::parse("h 4711")?, Name::parse("1951-02-28")?);
    let mut drafts = vec![(usual.clone(), None), (usual.clone(), Some(patient))];
    for (entry, base) in EntryId::all().flat_map(|entry| [(entry, &usual), (entry, &nothing)]) {
        let numbers = match entry.kind() {
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
            let mut draft = base.clone();
            draft.set(entry, number);
            drafts.push((draft, Some(patient)));
        }
    }
    Ok(drafts)
}

/// A name in its 24 places.
fn placed(name: &Name) -> String {
    format!("{:24}", name.as_str().to_ascii_uppercase())
}

/// The canonical text of layout 5, from its specification.
fn specified(draft: &Draft, identifiers: Option<&Identifiers>) -> Vec<u8> {
    let of_entry = |entry: EntryId| -> Option<String> {
        let value = || draft.number(entry).filter(|value| Some(*value) != entry.default());
        Some(match entry.kind() {
            Kind::Number(places, _) => {
                let digits = format!("{:.*}", usize::from(places), value()?.abs()).replace('.', "");
                format!("{}{digits:0>9}", if value()? < 0.0 { '-' } else { '+' })
            }
            Kind::Choice(_) => format!("{:02}", value()?),
            Kind::Date => format!("{:08}", value()?),
            Kind::Name => placed(draft.name(entry)?),
        })
    };
    let mut entries: Vec<_> = EntryId::all().filter(|entry| *entry != entries::ID).collect();
    entries.sort_by_key(|entry| (entry.part().0, entry.number()));
    let mut text = b"5".to_vec();
    for entry in entries {
        if let Some(value) = of_entry(entry) {
            text.extend([entry.part().0, entry.number()]);
            text.extend(value.bytes());
        }
    }
    let patient = identifiers.map_or(".".repeat(48), |Identifiers(first, second)| placed(first) + &placed(second));
    text.extend(patient.bytes());
    text
}

/// The answers of a card as bytes, from their specification: numbers, refusals and cautions, and no notes.
#[derive(Default)]
struct Covered(Vec<u8>);

fn numbered(method: Option<Method>) -> u8 {
    let place = |method| Method::ALL.iter().position(|other| *other == method).map_or(0xee, |place| place as u8 + 1);
    method.map_or(0, place)
}

impl Steps for Covered {}

impl Sink for Covered {
    fn item(&mut self, item: Item) {
        let sign = if item.what.signed() { Sign::Always } else { Sign::Minus };
        let printed =
            fixed(item.value, item.what.places(), sign).map(|text| text.as_str().to_owned()).unwrap_or_default();
        self.0.extend([item.what.part().0, item.what.number(), numbered(item.method), item.row]);
        self.0.extend(printed.bytes());
    }
    fn caution(&mut self, caution: Caution) {
        if caution.code.severity() != Severity::Note {
            self.0.extend([0xff, caution.code.part().0, caution.code.number(), numbered(caution.method)]);
        }
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
        let expected = specified(draft, patient.as_ref());
        if text != expected {
            let [text, expected] = [&text, &expected].map(|bytes| String::from_utf8_lossy(bytes));
            return Err(format!("the text is {text:?}, not {expected:?}").into());
        }
    }
    Ok(drafts.len())
}

fn same_sum(entries: impl Fn(&Draft, Option<&Identifiers>) -> Result<u32, Error>) -> Compared {
    let (drafts, crc) = (drafts()?, Crc::<u32>::new(&ENTRIES));
    for (draft, patient) in &drafts {
        let sum = crc.checksum(&specified(draft, patient.as_ref()));
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
        let mut bytes = Covered::default();
        case.plan(&mut bytes);
        let entries = symbols(first.checksum(&specified(&draft, patient.as_ref())), 4);
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
        Answers::item, Answers::caution, Answers::code => "the crc crate" => |item, caution, code| {
            /// Hands on what the answers cover.
            struct Handed<'a>(Answers, &'a dyn Fn(&mut Answers, Item), &'a dyn Fn(&mut Answers, Caution));
            impl Steps for Handed<'_> {}
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
                case.plan(&mut handed);
                code(&handed.0, case.draft(), patient)
            }, ReadBack::as_str)
        };
    }
}
