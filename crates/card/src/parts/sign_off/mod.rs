//! Lines to tick before the first cut: each part has its own, printed together at the end.

pub mod table;
