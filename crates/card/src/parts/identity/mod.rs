//! Whose eye it is.

pub mod table;

use crate::entered::Entered;
use crate::id::SignOffId;
use crate::parts::general::tell;
use crate::sink::Sink;
use table::{entries, sign_offs};

/// What a card begins with, with an eye or without.
#[inline(never)]
pub(crate) fn plan(entered: &Entered, sink: &mut dyn Sink) {
    tell(entered, sink, &[entries::ID.id(), entries::SIDE.id(), entries::SURGERY_DATE.id()]);
}

pub(crate) fn signs(_entered: &Entered) -> &'static [SignOffId] {
    &[sign_offs::PATIENT, sign_offs::SIDE]
}
