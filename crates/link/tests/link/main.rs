//! What must hold of a line, whole or damaged.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]

mod conversation;
mod damage;
mod line;
mod messages;
mod outside;
mod protocol;
mod schema;
mod streams;
