//! Entries that some part read and none has shown: what two people compare must all stand on the card.

pub mod table;
