//! Whose eye it is.

pub mod table;

use crate::entered::Entered;
use crate::id::SignOffId;
use crate::out::Out;
use table::{entries, sign_offs};

/// What a card begins with, with an eye or without.
#[inline(never)]
pub(crate) fn plan(_entered: &Entered, out: &mut Out) {
    out.tell(const { &[entries::ID.id(), entries::SIDE.id(), entries::SURGERY_DATE.id()] });
}

pub(crate) fn signs(_entered: &Entered) -> &'static [SignOffId] {
    &[sign_offs::PATIENT, sign_offs::SIDE, sign_offs::PRINTOUT]
}
