//! The whole way from entries to the card.

use ocellus_core::bench::Bench;
use ocellus_card::case::Case;
use ocellus_card::caution::Caution;
use ocellus_card::draft::Draft;
use ocellus_core::explain::{self, Subject};
use ocellus_card::id::EntryId;
use ocellus_card::item::{Item, What};
use ocellus_core::lens::method::Method;
use ocellus_core::lens::answer;
use ocellus_core::lens::predict;
use ocellus_core::lens::prediction::{Optics, Prediction};
use ocellus_core::plan;
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::quantity::{LensPower, Refraction, Vertex};
use ocellus_card::case::Case;
use ocellus_card::sink::Sink;

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::symbol;
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
        for field in keys.iter().filter_map(|key| EntryId::of_key(key)) {
            // As a table of cases does it: a number may have more decimals than a case file may.
            match text.parse() {
                Ok(number) => draft.set(field, number),
                Err(_) => draft.enter(field, text)?,
            }
        }
    }
    Ok(draft)
}

/// A value's own inputs alone.
pub(super) fn entered(value: &Value) -> Result<Draft, Failed> {
    let mut draft = Draft::default();
    for (key, text) in &value.given {
        if let Some(field) = EntryId::of_key(key) {
            draft.enter(field, text)?;
        }
    }
    Ok(draft)
}

fn without_lens(value: &Value) -> Result<Draft, Failed> {
    let mut draft = draft(value)?;
    // What a chosen lens leaves is asked of the methods themselves.
    draft.clear(entries::LENS_POWER);
    Ok(draft)
}

fn method(value: &Value) -> Result<Method, Failed> {
    let key = value.text("method")?;
    Ok(Method::ALL.iter().copied().find(|method| method.key() == key).ok_or(format!("no method `{key}`"))?)
}

/// What stands on a card.
#[derive(Default)]
pub(super) struct Card {
    pub(super) items: Vec<Item>,
    pub(super) cautions: Vec<Caution>,
}

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
    let method = if value.given.contains_key("method") { Some(method(value)?) } else { None };
    let wanted =
        |item: &&Item| item.what.key() == key && item.method == method && row.is_none_or(|row| item.row == row);
    let mut found = card.items.iter().filter(wanted);
    match (found.next(), found.next()) {
        (Some(item), None) => Ok(vec![item.value]),
        (None, _) => Err(format!("no {key} on the card").into()),
        (Some(_), Some(_)) => Err(format!("more than one {key} on the card; which row?").into()),
    }
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        plan::plan => "card-*" => |plan; value| {
            let mut card = Card::default();
            plan(&Case::try_from(&draft(value)?)?, &mut card);
            named(value, &card)
        };
        // the same without an eye
        plan::plan_bench => "card-fluids-*" => |plan_bench; value| {
            let (draft, mut card) = (entered(value)?, Card::default());
            plan_bench(&Bench::check(&draft, &mut |_| {}).ok_or("no set-up")?, &mut card);
            named(value, &card)
        };
        Sheet::plan => "card-fluids-*" => |plan; value| {
            let (draft, mut card) = (entered(value)?, Card::default());
            plan(&Case::check(&draft, &mut |_| {}).ok_or("no set-up")?, &mut card);
            named(value, &card)
        };
        explain::explain_bench => ["card-fluids-surge-trough-mmhg-*", "card-fluids-vacuum-ceiling-cmh2o-*"] =>
            |explain_bench; value| {
                let draft = entered(value)?;
                let bench = Bench::check(&draft, &mut |_| {}).ok_or("no set-up")?;
                match value.text("item")? {
                    "surge_trough_mmhg" =>
                        symbol(&["P_trough"], |sink| _ = explain_bench(Subject::Surge, &bench, sink)),
                    _ => {
                        let found = symbol(&["V_max"], |sink| _ = explain_bench(Subject::Ceiling, &bench, sink))?;
                        Ok(found.iter().map(|mmhg| convert(*mmhg, Unit::MmHg, Unit::CmH2O)).collect())
                    }
                }
            };
        Sheet::explain => "card-fluids-surge-trough-mmhg-*" => |explain; value| {
            let draft = entered(value)?;
            let sheet = Case::check(&draft, &mut |_| {}).ok_or("no set-up")?;
            symbol(&["P_trough"], |sink| _ = explain(&sheet, Subject::Surge, sink))
        };
        plan::surge_setup => "card-fluids-surge-start-mmhg-*" => |surge_setup; value| {
            let draft = entered(value)?;
            let bench = Bench::check(&draft, &mut |_| {}).ok_or("no set-up")?;
            Ok(vec![surge_setup(&bench).and_then(|setup| setup.start()).ok_or("no surge")?.chamber])
        };
        explain::explain => ["srkt-##-elp", "t2-*-elp", "holladay1-##-elp", "hofferq-##-elp", "haigis-*-elp"] =>
            |explain; value| {
                let (method, draft) = (method(value)?, without_lens(value)?);
                let case = Case::try_from(&draft)?;
                symbol(&["ELP", "d"], |sink| _ = explain(Subject::Method(method), &case, sink))
            };
        explain::explain => ["srkt-##-p", "t2-*-p", "holladay1-##-p", "hofferq-##-p", "haigis-*-p"] => |explain; value| {
            let (method, draft) = (method(value)?, without_lens(value)?);
            let case = Case::try_from(&draft)?;
            symbol(&["P"], |sink| _ = explain(Subject::Method(method), &case, sink))
        };
        explain::explain => ["card-head", "card-ceiling", "card-rhexis", "card-planned"] => |explain; value| {
            let draft = draft(value)?;
            let case = Case::try_from(&draft)?;
            let (subject, shown) = match value.id.as_str() {
                "card-head" => (Subject::Head, "P"),
                "card-ceiling" => (Subject::Ceiling, "V_max"),
                "card-rhexis" => (Subject::Rhexis, "D"),
                _ => (Subject::Toric, "N'"),
            };
            symbol(&[shown], |sink| _ = explain(subject, &case, sink))
        };
        plan::plan => ["t2-*-p", "holladay1-##-p", "hofferq-##-p", "haigis-*-p"] => |plan; value| {
            let (mut card, method) = (Card::default(), method(value)?);
            plan(&Case::try_from(&without_lens(value)?)?, &mut card);
            let exact = |item: &&Item| item.what == items::EXACT_POWER && item.method == Some(method);
            Ok(vec![card.items.iter().find(exact).ok_or("not on the card")?.value])
        };
        answer::answers => ["srk2-*-p", "srkt-*-p", "t2-*-p", "holladay1-##-p", "hofferq-##-p", "haigis-*-p"] =>
            |answers; value| {
                let method = method(value)?;
                let answers = answers(&Case::try_from(&without_lens(value)?)?, &mut |_| {});
                Ok(vec![answers.iter().flatten().find(|answer| answer.method == method).ok_or("no answer")?.power])
            };
        predict::predict, Prediction::optics, Optics::power =>
            ["srk2-*-p", "srkt-*-p", "t2-*-p", "holladay1-##-p", "hofferq-##-p", "haigis-*-p"] =>
            |predict, optics, power; value| {
                let target = Refraction::from_d(value.number("target_d")?)?;
                let vertex = Vertex::from_mm(value.number("vertex_mm")?)?;
                Ok(vec![power(&optics(&predicted(predict, value)?), target, vertex)?])
            };
        predict::predict, Prediction::optics, Optics::refraction =>
            ["srk2-*-rx", "srkt-*-rx", "t2-*-rx", "holladay1-##-rx", "hofferq-##-rx", "haigis-*-rx"] =>
            |predict, optics, refraction; value| {
                let power = LensPower::from_d(value.number("iol_power_d")?)?;
                let vertex = Vertex::from_mm(value.number("vertex_mm")?)?;
                Ok(vec![refraction(&optics(&predicted(predict, value)?), power, vertex)?])
            };
        predict::predict, Prediction::optics, Optics::thin_eye =>
            ["srkt-*-elp", "t2-*-elp", "holladay1-##-elp", "hofferq-##-elp", "haigis-*-elp"] =>
            |predict, optics, thin_eye; value| Ok(vec![thin_eye(&optics(&predicted(predict, value)?)).ok_or("no lens position")?.elp]);
        predict::predict, Prediction::show =>
            ["srkt-*-elp", "t2-*-elp", "holladay1-##-elp", "hofferq-##-elp", "haigis-*-elp"] =>
            |predict, show; value| {
                let prediction = predicted(predict, value)?;
                symbol(&["ELP", "d"], |sink| show(&prediction, sink))
            };
        predict::predict, Prediction::show => "srk2-*-p0" => |predict, show; value| {
            let prediction = predicted(predict, value)?;
            symbol(&["P0"], |sink| show(&prediction, sink))
        };
    }
}

fn predicted(predict: fn(Method, &Case) -> Result<Prediction, Caution>, value: &Value) -> Result<Prediction, Failed> {
    Ok(predict(method(value)?, &Case::try_from(&without_lens(value)?)?)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_of_item_has_a_check_value() {
        let values = crate::values::all().unwrap();
        let named: Vec<_> = values.iter().filter_map(|value| value.text("item").ok()).collect();
        let missing: Vec<_> = ItemId::all().map(|what| what.key()).filter(|key| !named.contains(key)).collect();
        assert!(missing.is_empty(), "no check value for {missing:?}");
    }
}
