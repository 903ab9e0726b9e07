//! The whole way from entries to the card.

use ocellus_card::case::Case;
use ocellus_card::caution::Caution;
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_card::item::Item;
use ocellus_card::parts::eye::Eye;
use ocellus_card::parts::lens::{Answers, Lens};
use ocellus_card::sink::Sink;
use ocellus_card::{Subject, entries, items};
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::lens::method::Method;
use ocellus_core::lens::srkt;
use ocellus_core::lens::view::Eyes;
use ocellus_core::working::Steps;

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::given::{a_constant, keyed};
use crate::checks::view::{method, of_optics};
use crate::checks::{Shown, symbol};
use crate::values::Value;

/// An eye that nothing is said about; a check value's inputs go over it.
const USUAL: &[(&str, &str)] = &[
    ("eye", "right"),
    ("axial_length_mm", "23.50"),
    ("k1_d", "43.50"),
    ("k2_d", "43.50"),
    ("k_kind", "keratometric"),
    ("acd_mm", "3.20"),
    ("acd_from", "epithelium"),
    ("al_method", "optical"),
    ("eye_state", "phakic"),
    ("previous_surgery", "none"),
    ("target_d", "0.00"),
];

/// The draft that a value's inputs make: those that are called like an entry, and `k_d` for both meridians.
pub(super) fn draft(value: &Value) -> Result<Draft, Failed> {
    let mut draft = Draft::default();
    let usual = USUAL.iter().copied();
    let given = value.given.iter().map(|(key, text)| (key.as_str(), text.as_str()));
    for (key, text) in usual.chain(given) {
        let keys: &[&str] = if key == "k_d" { &["k1_d", "k2_d"] } else { &[key] };
        for entry in keys.iter().filter_map(|key| EntryId::of_key(key)) {
            // As a table of cases does it: a number may have more decimals than a case file may.
            match text.parse() {
                Ok(number) => draft.set(entry, number),
                Err(_) => draft.enter(entry, text)?,
            }
        }
    }
    Ok(draft)
}

/// A value's own inputs alone.
pub(super) fn entered(value: &Value) -> Result<Draft, Failed> {
    let mut draft = Draft::default();
    for (key, text) in &value.given {
        if let Some(entry) = EntryId::of_key(key) {
            draft.enter(entry, text)?;
        }
    }
    Ok(draft)
}

/// The draft of a value about one method: after laser where the method is one for such eyes; what a chosen lens leaves is
/// asked of the method itself.
fn draft_for(value: &Value, method: Method) -> Result<Draft, Failed> {
    let mut draft = draft(value)?;
    if Method::of(Eyes::AfterLaser).any(|after| after == method) {
        draft.enter(entries::PREVIOUS_SURGERY, value.text("laser").unwrap_or("myopic_laser"))?;
    }
    if draft.has(entries::K_AFTER) {
        draft.enter(entries::K_AFTER_FROM, "contact_lens")?;
    }
    if let Ok(set) = value.text("set") {
        draft.enter(entries::LONG_EYE, set)?;
    }
    draft.clear(entries::LENS_POWER);
    Ok(draft)
}

fn subject(key: &str) -> Result<Subject, Failed> {
    Ok(Subject::of_key(key).ok_or(format!("no subject `{key}`"))?)
}

/// What stands on a card.
#[derive(Default)]
pub(super) struct Card {
    pub(super) items: Vec<Item>,
    pub(super) cautions: Vec<Caution>,
}

impl Card {
    /// What the plan of a draft streams; [`Case::plan`] is handed on by those who file evidence for it.
    pub(super) fn of<'d>(plan: impl Fn(&Case<'d>, &mut dyn Sink), draft: &'d Draft) -> Result<Card, Failed> {
        let mut card = Card::default();
        plan(&Case::try_from(draft)?, &mut card);
        Ok(card)
    }
}

impl Steps for Card {}

impl Sink for Card {
    fn item(&mut self, item: Item) {
        self.items.push(item);
    }
    fn caution(&mut self, caution: Caution) {
        self.cautions.push(caution);
    }
}

/// The number that a value names by item, method and row; a row called `label 2.25` is that of this label cylinder.
fn named(value: &Value, card: &Card) -> Answer {
    let key = value.text("item")?;
    let row = match value.text("row") {
        Err(_) => None,
        Ok(row) => Some(match row.strip_prefix("label ") {
            None => row.parse()?,
            Some(cylinder) => {
                let cylinder: f64 = cylinder.parse()?;
                let label = |item: &&Item| item.what == items::LABEL_CYLINDER && item.value == cylinder;
                card.items.iter().find(label).ok_or("no such label on the card")?.row
            }
        }),
    };
    let method = value.text("method").ok().map(keyed).transpose()?;
    let wanted =
        |item: &&Item| item.what.key() == key && item.method == method && row.is_none_or(|row| item.row == row);
    let mut found = card.items.iter().filter(wanted);
    match (found.next(), found.next()) {
        (Some(item), None) => Ok(vec![item.value]),
        (None, _) => Err(format!("no {key} on the card").into()),
        (Some(_), Some(_)) => Err(format!("more than one {key} on the card; which row?").into()),
    }
}

/// The step that a subject shows under the first of these symbols that it has.
fn step<'d>(
    explain: impl Fn(&Case<'d>, Subject, &mut dyn Sink) -> bool,
    draft: &'d Draft,
    subject: Subject,
    symbols: &[&str],
) -> Answer {
    let case = Case::try_from(draft)?;
    symbol(symbols, |shown: &mut Shown| _ = explain(&case, subject, shown))
}

pub(super) fn register(registry: &mut Registry) {
    plans(registry);
    steps_of(registry);
    answers(registry);
}

fn plans(registry: &mut Registry) {
    checks! { registry;
        Case::plan => "card-*" => |plan; value| named(value, &Card::of(plan, &draft(value)?)?);
        // the same without an eye
        Case::plan => "card-fluids-*" => |plan; value| {
            let draft = entered(value)?;
            if Case::try_from(&draft)?.has_eye() { Err("an eye".into()) } else { named(value, &Card::of(plan, &draft)?) }
        };
        Case::plan => ["t2-*-p", "holladay1-##-p", "hofferq-##-p", "haigis-*-p"] => |plan; value| {
            let method = method(value)?;
            let card = Card::of(plan, &draft_for(value, method)?)?;
            let exact = |item: &&Item| item.what == items::EXACT_POWER && item.method == Some(method);
            Ok(vec![card.items.iter().find(exact).ok_or("not on the card")?.value])
        };
    }
}

fn steps_of(registry: &mut Registry) {
    checks! { registry;
        Case::explain => "card-fluids-surge-trough-mmhg-*" => |explain; value|
            step(explain, &entered(value)?, subject("surge")?, &["P_trough"]);
        Case::explain => "card-fluids-vacuum-ceiling-cmh2o-*" => |explain; value| {
            let found = step(explain, &entered(value)?, subject("ceiling")?, &["V_max"])?;
            Ok(found.iter().map(|mmhg| convert(*mmhg, Unit::MmHg, Unit::CmH2O)).collect())
        };
        Case::explain => ["card-head", "card-ceiling", "card-rhexis", "card-planned"] => |explain; value| {
            let (key, symbol) = match value.id.as_str() {
                "card-head" => ("head", "P"),
                "card-ceiling" => ("ceiling", "V_max"),
                "card-rhexis" => ("rhexis", "D"),
                _ => ("toric", "N'"),
            };
            step(explain, &draft(value)?, subject(key)?, &[symbol])
        };
        Case::explain => ["srkt-##-elp", "t2-*-elp", "holladay1-##-elp", "hofferq-##-elp", "haigis-*-elp"] =>
            |explain; value| {
                let method = method(value)?;
                step(explain, &draft_for(value, method)?, Subject::Method(method), &["ELP", "d"])
            };
        Case::explain => [
            "srkt-##-p", "t2-*-p", "holladay1-##-p", "hofferq-##-p", "haigis-*-p",
            "double-*-p", "shammas-*-p", "haigisl-*-p",
        ] => |explain; value| {
            let method = method(value)?;
            step(explain, &draft_for(value, method)?, Subject::Method(method), &["P"])
        };
    }
}

fn answers(registry: &mut Registry) {
    checks! { registry;
        Lens::answers, Answers::all => [
            "srk2-*-p", "srkt-*-p", "t2-*-p", "holladay1-##-p", "hofferq-##-p", "haigis-*-p",
            "double-*-p", "shammas-*-p", "haigisl-*-p", "long-*-p",
            "srk2-*-rx", "srkt-*-rx", "t2-*-rx", "holladay1-##-rx", "hofferq-##-rx", "haigis-*-rx",
            "double-*-rx", "shammas-*-rx", "haigisl-*-rx",
            "srkt-*-elp", "t2-*-elp", "holladay1-##-elp", "hofferq-##-elp", "haigis-*-elp",
            "double-*-elp", "shammas-*-elp", "haigisl-*-elp", "long-*-elp",
        // a case lends what it knows for a moment only, so it is asked here by name
        ] => |_answers, _all; value| {
            let method = method(value)?;
            let draft = draft_for(value, method)?;
            Case::try_from(&draft)?.known(|known| {
                let answers = known.lens.ok_or("no eye")?.answers();
                let answer = answers.all().find(|answer| answer.method == method).ok_or("no answer")?;
                if value.id.ends_with("-p") { Ok(vec![answer.power]) } else { of_optics(value, &answer.optics) }
            })
        };
        // the eye that was entered is the eye of the value: a method makes the same lens of it
        Eye::of, Eye::axial_length, Eye::cornea, Eye::target, Eye::vertex => "srkt-##-p" =>
            |_of, _axial_length, _cornea, _target, _vertex; value| {
                let draft = draft_for(value, Method::Srkt)?;
                Case::try_from(&draft)?.known(|known| {
                    let eye = known.eye.ok_or("no eye")?;
                    let al = eye.axial_length().ok_or("no axial length")?;
                    let w = srkt::working(al, eye.cornea(), a_constant(value)?);
                    Ok(vec![w.thin_eye().power(eye.target(), eye.vertex())?.power])
                })
            };
    }
}

#[cfg(test)]
mod tests {
    use ocellus_card::id::ItemId;

    #[test]
    fn every_kind_of_item_has_a_check_value() {
        let values = crate::values::all().unwrap();
        let named: Vec<_> = values.iter().filter_map(|value| value.text("item").ok()).collect();
        let keys = ItemId::all().map(|item| item.key().to_string());
        let missing: Vec<_> = keys.filter(|key| !named.contains(&key.as_str())).collect();
        assert!(missing.is_empty(), "no check value for {missing:?}");
    }
}
