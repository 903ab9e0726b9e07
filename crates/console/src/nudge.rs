//! What if one entry were a little different? Every number that would be printed differently, old and new; nothing is kept.
//!
//! There is room for a part of a card only, so both cards are planned once for each part.

use crate::case::case;
use crate::cautions::Codes;
use crate::entry::{self, is_unit, put, split_unit};
use crate::number;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::word::first_word;
use crate::wrong::{self, Refused};
use heapless::Vec;
use ocellus_card::case::Case;
use ocellus_card::caution::{Caution, Severity};
use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::id::{CautionId, EntryId};
use ocellus_card::item::{Form, Item};
use ocellus_card::sink::Sink;
use ocellus_core::decimal::{Sign, fixed, parse};
use ocellus_core::working::Steps;
use ocellus_text::text;

/// Numbers of one card kept at a time.
const ROOM: usize = 10;

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let (name, change) = first_word(rest);
    let Some((entry, new)) = wanted(draft, name, change, page) else { return Outcome::Refused };
    let nudge = Nudge { entry, old: draft.number(entry), new };
    if nudge.is_fit(draft, page) {
        nudge.tell(draft, page);
        page.line(text!("Nothing was changed; tables of labels, errors and shares are left out here."));
    }
    put(draft, entry, nudge.old);
    Outcome::Answered
}

/// The field and the value it would have: the old one and the change, in its own decimals.
// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
fn wanted(draft: &Draft, name: &str, change: &str, page: &mut Page) -> Option<(EntryId, f64)> {
    let Some(entry) = entry::named(name) else {
        page.line(text!("nudge WORD CHANGE, as in nudge al 0.1: WORD is that of an entry that is a number."));
        return None;
    };
    let Kind::Number(places, _) = entry.kind() else {
        page.text(entry.what());
        page.line(text!(": not a number, so it cannot be nudged."));
        return None;
    };
    let Some(old) = draft.number(entry).or(entry.default()) else {
        page.text(entry.what());
        page.line(text!(": not entered, so it cannot be nudged."));
        return None;
    };
    let (digits, unit) = split_unit(change);
    let by = parse(digits).ok().filter(|by| by.places <= places);
    let Some(by) = by.filter(|_| is_unit(entry, unit)) else {
        page.text(change);
        page.text(if change.is_empty() { text!("No change was typed") } else { text!(": not a change of this entry") });
        page.text(text!("; accepted: a number with at most "));
        page.count(usize::from(places));
        page.text(if places == 1 { text!(" decimal") } else { text!(" decimals") });
        page.text(if entry.unit().is_empty() { "" } else { ", in" });
        page.tied(entry.unit());
        page.end();
        return None;
    };
    // the sum as it would be typed, so that it has the same bits
    let sum = fixed(old + by.value, places, Sign::Minus).and_then(|text| parse(text.as_str()).ok());
    let new = sum.map_or(old, |sum| sum.value);
    if let Err(error) = entry.check(new) {
        let typed = fixed(new, places, Sign::Minus);
        wrong::tell(&Refused::Entry(error), name, entry, typed.as_ref().map_or("", |text| text.as_str()), page);
        return None;
    }
    Some((entry, new))
}

struct Nudge {
    entry: EntryId,
    old: Option<f64>,
    new: f64,
}

/// What was found so far.
struct Found {
    /// Numbers that are shown.
    lines: usize,
    /// Numbers that both cards have, and those of the new card.
    both: usize,
    new: usize,
    old_codes: Codes,
    new_codes: Codes,
}

impl Nudge {
    /// Whether both are cases; what would keep them from it is printed.
    // apart, as above
    #[inline(never)]
    fn is_fit(&self, draft: &mut Draft, page: &mut Page) -> bool {
        if case(draft, page).is_none() {
            return false;
        }
        page.text(self.entry.what());
        page.text(" ");
        page.value(draft, self.entry);
        page.text(" -> ");
        page.entry(self.entry, self.new);
        page.end();
        draft.set(self.entry, self.new);
        case(draft, page).is_some()
    }

    fn tell(&self, draft: &mut Draft, page: &mut Page) {
        let mut found = Found { lines: 0, both: 0, new: 0, old_codes: Codes::NONE, new_codes: Codes::NONE };
        for from in (0..).step_by(ROOM) {
            if !self.part(draft, from, &mut found, page) {
                break;
            }
        }
        if found.new > found.both {
            for from in (0..).step_by(ROOM) {
                if !self.appeared(draft, from, &mut found, page) {
                    break;
                }
            }
        }
        if found.lines == 0 {
            page.paragraph("  ", text!("No number would be printed differently."));
        }
        cautions("new ", &found.new_codes, &found.old_codes, page);
        cautions("gone ", &found.old_codes, &found.new_codes, page);
    }

    /// Some of the old card's numbers against the new card; the answer is whether there are more.
    // apart, as above
    #[inline(never)]
    fn part(&self, draft: &mut Draft, from: usize, found: &mut Found, page: &mut Page) -> bool {
        let mut old = Excerpt { from, items: 0, kept: Vec::new(), codes: Codes::NONE };
        self.plan(draft, self.old, &mut old);
        found.old_codes = old.codes;
        found.new = 0;
        self.plan(draft, Some(self.new), &mut Compared { kept: &mut old.kept, page, found });
        found.lines += old.kept.iter().flatten().count();
        old.kept.iter().flatten().for_each(|item| gone(item, true, page));
        old.items > from + ROOM
    }

    /// Of some of the new card's numbers those that the old has not; the answer is whether there are more.
    // apart, as above
    #[inline(never)]
    fn appeared(&self, draft: &mut Draft, from: usize, found: &mut Found, page: &mut Page) -> bool {
        let mut new = Excerpt { from, items: 0, kept: Vec::new(), codes: Codes::NONE };
        self.plan(draft, Some(self.new), &mut new);
        self.plan(draft, self.old, &mut Known(&mut new.kept));
        found.lines += new.kept.iter().flatten().count();
        new.kept.iter().flatten().for_each(|item| gone(item, false, page));
        new.items > from + ROOM
    }

    // apart, as above
    #[inline(never)]
    fn plan(&self, draft: &mut Draft, value: Option<f64>, sink: &mut dyn Sink) {
        put(draft, self.entry, value);
        if let Some(case) = Case::check(draft, &mut |_| {}) {
            case.plan(sink);
        }
    }
}

/// Whether two numbers are the same thing on two cards.
fn same(a: &Item, b: &Item) -> bool {
    (a.what, a.method) == (b.what, b.method)
}

/// Keeps some of a card's numbers, counts all.
struct Excerpt {
    from: usize,
    items: usize,
    kept: Vec<Option<Item>, ROOM>,
    codes: Codes,
}

impl Steps for Excerpt {}

impl Sink for Excerpt {
    fn item(&mut self, item: Item) {
        if !item.what.is_aside() {
            if self.items >= self.from {
                // what has no room is kept the next time
                let _ = self.kept.push(Some(item));
            }
            self.items += 1;
        }
    }

    fn caution(&mut self, caution: Caution) {
        self.codes.put(caution.code);
    }
}

/// Takes out what both cards have, and prints what differs in it.
struct Compared<'a, 'p> {
    kept: &'a mut Vec<Option<Item>, ROOM>,
    page: &'a mut Page<'p>,
    found: &'a mut Found,
}

impl Steps for Compared<'_, '_> {}

impl Sink for Compared<'_, '_> {
    fn item(&mut self, new: Item) {
        if new.what.is_aside() {
            return;
        }
        self.found.new += 1;
        let Some(old) = take(self.kept, &new) else { return };
        self.found.both += 1;
        let (before, after) = (number::of(&old), number::of(&new));
        if before.as_ref().map(|text| text.as_str()) != after.as_ref().map(|text| text.as_str()) {
            self.found.lines += 1;
            change(&old, &new, self.page);
        }
    }

    fn caution(&mut self, caution: Caution) {
        self.found.new_codes.put(caution.code);
    }
}

/// Takes out the number that is the same thing.
fn take(kept: &mut Vec<Option<Item>, ROOM>, other: &Item) -> Option<Item> {
    kept.iter_mut().find(|item| item.as_ref().is_some_and(|item| same(item, other)))?.take()
}

/// Takes out what the other card has too.
struct Known<'a>(&'a mut Vec<Option<Item>, ROOM>);

impl Steps for Known<'_> {}

impl Sink for Known<'_> {
    fn item(&mut self, item: Item) {
        take(self.0, &item);
    }

    fn caution(&mut self, _caution: Caution) {}
}

/// Columns at which the numbers begin.
const NUMBERS: usize = 41;

fn name(item: &Item, page: &mut Page) {
    page.raw("  ");
    page.text(item.what.name());
    if let Some(method) = item.method {
        page.text(", ");
        page.text(method.name());
    }
    page.to(NUMBERS);
    page.hang();
}

fn change(old: &Item, new: &Item, page: &mut Page) {
    name(new, page);
    page.item(old);
    page.text(" -> ");
    page.item(new);
    if new.what.form() != Form::YesNo {
        let mut difference = new.value - old.value;
        // the short way round the dial
        if new.what.unit() == "deg" && !(-90.0..=90.0).contains(&difference) {
            difference -= if difference > 0.0 { 180.0 } else { -180.0 };
        }
        page.text("  (");
        // a digit more than the two numbers have, so that it is seen to be of what they were rounded from
        page.number(difference, new.what.places() + 1, true, new.what.unit());
        page.text(")");
    }
    page.end();
}

/// A number that one of the cards has not.
fn gone(item: &Item, is_old: bool, page: &mut Page) {
    name(item, page);
    if is_old {
        page.item(item);
        page.line(" -> none");
    } else {
        page.text("none -> ");
        page.item(item);
        page.end();
    }
}

/// The cautions that one of the cards has not.
fn cautions(which: &str, codes: &Codes, others: &Codes, page: &mut Page) {
    for code in CautionId::all() {
        if !codes.has(code) || others.has(code) || code.severity() == Severity::Note {
            continue;
        }
        page.raw("  ");
        page.raw(which);
        page.text(code.severity().word());
        page.to(15);
        page.hang();
        page.line(code.text());
    }
}
