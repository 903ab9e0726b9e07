//! Limits: where on the way of one entry from one value to another a caution appears.

use chrono::{Days, NaiveDate};
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_core::eye;
use ocellus_card::id::EntryId;
use ocellus_core::lens::method::Method;
use ocellus_core::plan;
use ocellus_core::quantity::AxialLength;

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::card::{self, Card};
use crate::checks::crossing;
use crate::values::Value;

fn entry(value: &Value, key: &str) -> Result<EntryId, Failed> {
    let name = value.text(key)?;
    Ok(EntryId::of_key(name).ok_or(format!("no entry `{name}`"))?)
}

/// Where the caution appears: the entry's value there; or with `less`, how far that is from a number or from an item of
/// the card; or with `read`, an item of the card.
fn limit(value: &Value, card: impl Fn(&Draft) -> Result<Card, Failed>) -> Answer {
    let (base, varied, code) = (card::draft(value)?, entry(value, "vary")?, value.text("caution")?);
    let at = |number| {
        let mut draft = base.clone();
        draft.set(varied, number);
        card(&draft)
    };
    let shown = |card: &Card| card.cautions.iter().any(|caution| caution.code.word() == code);
    let found = crossing(value.number("shown")?, value.number("hidden")?, |number| {
        Ok(if shown(&at(number)?) { 1.0 } else { -1.0 })
    })?;
    let item = |key: &str| {
        // of several methods the one that is the first to bring the caution
        let found =
            at(found[0])?.items.iter().filter(|item| item.what.key() == key).map(|item| item.value).reduce(f64::max);
        found.ok_or_else(|| Failed::from(format!("no item `{key}`")))
    };
    if let Ok(key) = value.text("read") {
        return Ok(vec![item(key)?]);
    }
    match value.text("less") {
        Ok(less) => Ok(vec![(found[0] - less.parse().or_else(|_| item(less))?).abs()]),
        Err(_) => Ok(found),
    }
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        plan::plan => ["limit-*", "!limit-days-*", "!limit-guidance-*"] => |plan; value| limit(value, |draft| {
            let mut card = Card::default();
            plan(&Case::try_from(draft)?, &mut card);
            Ok(card)
        });
        eye::checks::check => ["limit-al-*", "limit-k-*", "limit-acd-*", "limit-wtw-*"] => |check; value|
            limit(value, |draft| {
                let mut card = Card::default();
                check(&Case::try_from(draft)?, &mut |caution| card.cautions.push(caution));
                Ok(card)
            });
        eye::checks::check => "limit-days-*" => |check; value| {
            let mut draft = card::draft(value)?;
            let operated = NaiveDate::parse_from_str(value.text("surgery_date")?, "%Y-%m-%d")?;
            let mut silent = 0.0;
            for days in 0..1000 {
                let measured = operated.checked_sub_days(Days::new(days)).ok_or("no such day")?;
                draft.enter(entries::BIOMETRY_DATE, &measured.format("%Y-%m-%d").to_string())?;
                let (case, mut old) = (Case::try_from(&draft)?, false);
                check(&case, &mut |caution| old |= caution.code.word() == "biometry_old");
                if !old {
                    silent = days as f64;
                }
            }
            Ok(vec![silent])
        };
        Method::guided => "limit-guidance-*" => |guided; value| {
            let key = value.text("method")?;
            let method = Method::ALL.iter().copied().find(|m| m.key() == key).ok_or(format!("no method `{key}`"))?;
            crossing(value.number("named")?, value.number("not_named")?, |mm| {
                Ok(if guided(method, AxialLength::from_mm(mm)?) { 1.0 } else { -1.0 })
            })
        };
    }
}
