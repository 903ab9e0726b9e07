//! What must hold between entries, so that they are a case: each part has its own rules, and the door asks for all of them.

use crate::entered::Entered;
use crate::error::Wrong;
use crate::id::EntryId;
use ocellus_text::Text;

/// Something that must hold.
#[derive(Clone, Copy)]
pub(crate) enum Rule {
    /// Without it there is no case of an eye.
    Needed(EntryId),
    /// Where one of the first was entered, each of the second must be.
    Together(&'static [EntryId], &'static [EntryId]),
    /// Only one of the two can be.
    OneOf(EntryId, EntryId),
    /// The first must not exceed the second; said of the third.
    Ordered(EntryId, EntryId, EntryId),
    /// Anything else: reports what is wrong, and with which entry.
    Check(fn(&Entered, &mut dyn FnMut(Wrong, EntryId))),
    /// Where this is wrong with the first, it comes from the second.
    Because(Wrong, EntryId, EntryId),
    /// Where this is wrong with an entry, what would be accepted; each `{}` stands for one of these entries.
    Accepts(Wrong, EntryId, Text, &'static [EntryId]),
}

impl Rule {
    /// Asks whether it holds; reports where it does not.
    pub(crate) fn ask(&self, entered: &Entered, refuse: &mut dyn FnMut(Wrong, EntryId)) {
        match *self {
            Rule::Needed(entry) => {
                if !entered.has(entry) {
                    refuse(Wrong::Missing, entry);
                }
            }
            Rule::Together(some, all) => {
                if some.iter().any(|entry| entered.has(*entry)) {
                    all.iter()
                        .filter(|entry| !entered.has(**entry))
                        .for_each(|entry| refuse(Wrong::Incomplete, *entry));
                }
            }
            Rule::OneOf(first, second) => {
                if entered.has(first) && entered.has(second) {
                    refuse(Wrong::Twice, second);
                }
            }
            Rule::Ordered(least, most, of) => {
                if entered.valid(least).zip(entered.valid(most)).is_some_and(|(least, most)| least > most) {
                    refuse(Wrong::Disagree, of);
                }
            }
            Rule::Check(check) => check(entered, refuse),
            Rule::Because(..) | Rule::Accepts(..) => {}
        }
    }

    /// The entry that an error about another comes from: what says the same, or what needs it.
    pub(crate) fn because(&self, wrong: Wrong, of: EntryId, is_made: &dyn Fn(EntryId) -> bool) -> Option<EntryId> {
        match *self {
            Rule::Because(is, entry, because) if is == wrong && entry == of => Some(because),
            Rule::OneOf(first, second) if wrong == Wrong::Twice && second == of => Some(first),
            Rule::Together(some, all) if wrong == Wrong::Incomplete && all.contains(&of) => {
                some.iter().copied().find(|entry| *entry != of && is_made(*entry))
            }
            _ => None,
        }
    }

    /// What would be accepted in the place of what is wrong, where this rule says so.
    pub(crate) fn accepts(&self, wrong: Wrong, of: EntryId) -> Option<(Text, &'static [EntryId])> {
        match *self {
            Rule::Accepts(is, entry, text, entries) if is == wrong && entry == of => Some((text, entries)),
            _ => None,
        }
    }
}
