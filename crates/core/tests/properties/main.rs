//! What holds for any correct implementation, over whole ranges of eyes, lenses, levels and openings.
//!
//! Where a method does not have a property in some region, that region is left out by name, with the reason beside it.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]

mod astigmatism;
mod eye;
mod hard_eyes;
mod lens;
mod physics;
mod table_side;

/// Whether two numbers are as good as equal at their own size.
fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs()).max(1.0)
}
