//! Limits: where on the way of one entry from one value to another a caution appears.

use chrono::{Days, NaiveDate};
use ocellus_card::case::Case;
use ocellus_card::id::EntryId;
use ocellus_card::{cautions, entries};
use ocellus_core::lens::eye::Measured;
use ocellus_core::lens::guidance::named;
use ocellus_core::lens::view::{Doubt, View};
use ocellus_core::lens::{srkt, t2};
use ocellus_core::quantity::AxialLength;

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::card::{self, Card};
use crate::checks::crossing;
use crate::checks::given::{a_constant, cornea, keyed};
use crate::values::Value;

fn entry(value: &Value, key: &str) -> Result<EntryId, Failed> {
    let name = value.text(key)?;
    Ok(EntryId::of_key(name).ok_or(format!("no entry `{name}`"))?)
}

/// Where the caution appears: the entry's value there; or with `less`, how far that is from a number or from an item of
/// the card; or with `read`, an item of the card.
fn limit(value: &Value) -> Answer {
    let (base, varied, code) = (card::draft(value)?, entry(value, "vary")?, value.text("caution")?);
    let at = |number| {
        let mut draft = base.clone();
        draft.set(varied, number);
        Card::of(Case::plan, &draft)
    };
    let shown = |card: &Card| card.cautions.iter().any(|caution| caution.code.word().is(code));
    let found = crossing(value.number("shown")?, value.number("hidden")?, |number| {
        Ok(if shown(&at(number)?) { 1.0 } else { -1.0 })
    })?;
    let item = |key: &str| {
        // of several methods the one that is the first to bring the caution
        let found =
            at(found[0])?.items.iter().filter(|item| item.what.key().is(key)).map(|item| item.value).reduce(f64::max);
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

/// The length at which something is against an answer.
fn doubted(value: &Value, is_doubted: impl Fn(AxialLength) -> bool) -> Answer {
    crossing(value.number("shown")?, value.number("hidden")?, |mm| {
        Ok(if is_doubted(AxialLength::from_mm(mm)?) { 1.0 } else { -1.0 })
    })
}

pub(super) fn register(registry: &mut Registry) {
    // a draft that varies lives shorter than the function handed on, so the card is asked for by name
    checks! { registry;
        Case::plan => ["limit-*", "!limit-days-*", "!limit-guidance-*"] => |_plan; value| limit(value);
        Case::plan => "limit-days-*" => |_plan; value| {
            let mut draft = card::draft(value)?;
            let operated = NaiveDate::parse_from_str(value.text("surgery_date")?, "%Y-%m-%d")?;
            let mut silent = 0.0;
            for days in 0..1000 {
                let measured = operated.checked_sub_days(Days::new(days)).ok_or("no such day")?;
                draft.enter(entries::BIOMETRY_DATE, &measured.format("%Y-%m-%d").to_string())?;
                if !Card::of(Case::plan, &draft)?.cautions.iter().any(|caution| caution.code == cautions::BIOMETRY_OLD) {
                    silent = days as f64;
                }
            }
            Ok(vec![silent])
        };
        named => "limit-guidance-*" => |named; value| {
            let method = keyed(value.text("method")?)?;
            crossing(value.number("named")?, value.number("not_named")?, |mm| {
                Ok(if named(method, AxialLength::from_mm(mm)?) { 1.0 } else { -1.0 })
            })
        };
        srkt::Working::doubts => ["limit-retina", "limit-lcor"] => |doubts; value| {
            let doubt = if value.id.ends_with("lcor") { Doubt::LcorTurned } else { Doubt::RetinaTurned };
            let (cornea, a) = (cornea(value)?, a_constant(value)?);
            doubted(value, |al| doubts(&srkt::working(al, &cornea, a), &Measured::NOTHING).contains(&Some(doubt)))
        };
        t2::Working::doubts => "limit-retina" => |doubts; value| {
            let (cornea, a) = (cornea(value)?, a_constant(value)?);
            doubted(value, |al| doubts(&t2::working(al, &cornea, a), &Measured::NOTHING).contains(&Some(Doubt::RetinaTurned)))
        };
    }
}
