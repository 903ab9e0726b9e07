//! What holds for any case, over whole ranges of its entries.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]
#![cfg(feature = "all")]

mod drafts;
mod exchange;
mod explain;
mod eye;
mod finite;
mod readback;
mod stream;
mod unused;
