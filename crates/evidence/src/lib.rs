//! What shows that the project's numbers are right.
//!
//! - [`values`]: numbers printed by others, as printed, each with its kind and source (`values/*.toml`).
//! - [`compare`]: when a computed number agrees with a printed one.
//! - [`check`]: which function computes which values; a check calls the function it names.
//! - [`mod@checks`]: the checks themselves, a file a topic.
//! - [`constants`]: every constant, each of which some check must notice.
//! - [`functions`]: every public function; [`mod@coverage`]: that none is without evidence.
//! - [`report`]: what holds, by kind and by source.
//!
//! `cargo xtask evidence` prints the report; `cargo xtask perturb` moves each constant by a unit in its last printed
//! digit and demands that some check notices.

pub mod check;
pub mod checks;
pub mod compare;
pub mod constants;
pub mod coverage;
pub mod functions;
pub mod report;
pub mod values;
