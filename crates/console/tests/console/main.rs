//! The conversation, as a person has it.
#![cfg(feature = "all")]
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::unreachable,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod answers;
mod entries;
mod lines;
mod live;
mod sessions;
mod terminal;
