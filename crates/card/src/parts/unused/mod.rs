//! Entries that nothing on the card used: what two people compare must all stand on it.

pub mod table;
