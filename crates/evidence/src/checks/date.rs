//! Calendar dates against another library's calendar.

use chrono::{Datelike, NaiveDate};
use ocellus_card::date::Date;

use crate::check::{Compared, Failed, Registry};
use crate::oracles;

/// Every number that looks like a date of these years, so that days that do not exist are among them.
fn numbers() -> impl Iterator<Item = (i32, u32, u32)> {
    [1899, 1900, 1999, 2000, 2023, 2024, 2100, 2199, 2200]
        .into_iter()
        .flat_map(|year| (0..=13).flat_map(move |month| (0..=32).map(move |day| (year, month, day))))
}

fn theirs((year, month, day): (i32, u32, u32)) -> Option<NaiveDate> {
    NaiveDate::from_ymd_opt(year, month, day).filter(|date| (1900..=2199).contains(&date.year()))
}

fn same_days(accepts: impl Fn((i32, u32, u32)) -> Option<Date>) -> Compared {
    let mut count = 0;
    for parts in numbers() {
        let (ours, theirs) = (accepts(parts), theirs(parts));
        let ours = ours.map(Date::parts).map(|(year, month, day)| (year as i32, month, day));
        if ours != theirs.map(|date| (date.year(), date.month(), date.day())) {
            return Err(format!("{parts:?} is {ours:?}, not {theirs:?}").into());
        }
        count += 1;
    }
    Ok(count)
}

fn same_distances(days_until: fn(Date, Date) -> i32) -> Compared {
    let mut count = 0;
    let parse = |date: NaiveDate| Ok::<_, Failed>(Date::parse(&date.format("%Y-%m-%d").to_string())?);
    let days =
        || NaiveDate::from_ymd_opt(1900, 1, 1).into_iter().flat_map(|first| first.iter_days().step_by(997).take(109));
    for first in days() {
        for last in days() {
            let (ours, theirs) = (days_until(parse(first)?, parse(last)?), (last - first).num_days());
            if i64::from(ours) != theirs {
                return Err(format!("{first} to {last} is {ours} days, not {theirs}").into());
            }
            count += 1;
        }
    }
    Ok(count)
}

pub(super) fn register(registry: &mut Registry) {
    oracles! { registry;
        Date::from_number, Date::parts, Date::number => "chrono's calendar" => |from_number, parts, number|
            same_days(|(year, month, day)| {
                let written = f64::from(year) * 10_000.0 + f64::from(month) * 100.0 + f64::from(day);
                from_number(written).ok().filter(|date| number(*date) == written && parts(*date).2 == day)
            });
        Date::parse => "chrono's calendar" => |parse|
            same_days(|(year, month, day)| parse(&format!("{year:04}-{month:02}-{day:02}")).ok());
        Date::days_until => "chrono's calendar" => |days_until| same_distances(days_until);
    }
}
