//! What is wanted of the operation.

pub mod choices;
pub mod table;

use crate::rule::Rule;
use table::entries;

pub(crate) const RULES: &[Rule] = &[Rule::Needed(entries::TARGET.id())];
