//! What must hold between entries, so that they are a case: each part has its own rules, and the door asks for all of them.

use crate::entered::Entered;
use crate::error::Wrong;
use crate::id::EntryId;

/// Something that must hold.
#[derive(Clone, Copy)]
pub enum Rule {
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
}

/// The entry that an error about another comes from.
#[derive(Clone, Copy, Debug)]
pub struct Because {
    /// The error,
    pub wrong: Wrong,
    /// about this entry,
    pub entry: EntryId,
    /// comes from that one.
    pub because: EntryId,
}
