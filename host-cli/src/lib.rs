//! The host program: reads files, prints cards, tables and workings. All arithmetic is in `ocellus_core`, and all of the card in
//! `ocellus_card`.

pub mod args;
pub mod batch;
pub mod card;
pub mod case_file;
pub mod catalogue;
pub mod device;
pub mod draw;
mod entries;
pub mod explain;
pub mod fields;
pub mod files;
pub mod group;
pub mod identify;
pub mod json;
mod nearest;
pub mod problem;
pub mod sweep;
pub mod text;
mod toml_file;
