//! What holds, by kind and by source, and what does not.

use std::collections::BTreeMap;
use std::fmt;

use crate::check::Outcome;
use crate::coverage::Coverage;
use crate::values::{Kind, Value};

/// The outcome of every check, and what it covers.
pub struct Report<'v> {
    /// What came of the checks.
    pub outcome: Outcome<'v>,
    /// Which functions that leaves without evidence.
    pub coverage: Coverage,
}

impl Report<'_> {
    /// Whether everything holds and every function has evidence or a reason.
    #[must_use]
    pub fn is_good(&self) -> bool {
        self.outcome.failures.is_empty() && self.coverage.faults.is_empty() && self.coverage.without.is_empty()
    }

    fn count(&self, kind: Kind) -> usize {
        self.outcome.holds.iter().filter(|value| value.kind == kind).count()
    }
}

/// The source as the table has it: of a library its name, not each call that was made of it.
fn origin(value: &Value) -> &str {
    match value.kind {
        Kind::ReferenceLibrary => value.source.split(|c: char| !c.is_alphanumeric()).next().unwrap_or_default(),
        _ => &value.source,
    }
}

impl fmt::Display for Report<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { outcome, coverage } = self;
        for failure in outcome.failures.iter().chain(&coverage.faults) {
            writeln!(f, "FAILS {failure}")?;
        }
        for function in &coverage.without {
            writeln!(f, "WITHOUT EVIDENCE {function}")?;
        }
        writeln!(f, "check values that hold, by source")?;
        let mut sources: BTreeMap<(Kind, &str), usize> = BTreeMap::new();
        for value in &outcome.holds {
            *sources.entry((value.kind, origin(value))).or_default() += 1;
        }
        for ((kind, source), count) in &sources {
            writeln!(f, "{count:6}  {kind:17}  {source}")?;
        }
        writeln!(f, "check values that hold, by kind")?;
        for kind in Kind::ALL {
            writeln!(f, "{:6}  {kind}", self.count(kind))?;
        }
        writeln!(f, "comparisons with outside oracles")?;
        for (oracle, count) in &outcome.oracles {
            writeln!(f, "{count:6}  {oracle}")?;
        }
        writeln!(
            f,
            "functions: {} with evidence, {} excepted with a reason, {} without",
            coverage.with,
            coverage.excepted,
            coverage.without.len()
        )?;
        for kind in Kind::ALL {
            write!(f, "{kind} {}, ", self.count(kind))?;
        }
        write!(f, "functions without evidence {}", coverage.without.len())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::check::Registry;
    use crate::values;

    fn report(values: &[Value], answer: f64, without: Vec<String>) -> Report<'_> {
        let mut registry = Registry::default();
        registry.values(&["f"], "a-*", move |_| Ok(vec![answer]));
        let coverage = Coverage { without, with: 1, excepted: 0, faults: vec![] };
        Report { outcome: registry.run(values), coverage }
    }

    #[test]
    fn only_what_holds_is_counted_and_the_last_line_says_it() {
        let values = values::parse(
            "[[value]]\nid='a-1'\nwhat='w'\ngiven={}\nexpect='3.0'\nunit='D'\nkind='published'\nmark='read'\nsource='s'
             [[value]]\nid='a-2'\nwhat='w'\ngiven={}\nexpect='3.5'\nunit='D'\nkind='memory'\nmark='memory'\nsource='s'",
        )
        .unwrap();
        let text = report(&values, 3.0, vec!["lens::power".into()]).to_string();
        assert_eq!(
            text.lines().last(),
            Some(
                "published 1, reference-library 0, derived 0, common-practice 0, memory 0, regression 0, functions without evidence 1"
            )
        );
        assert!(text.contains("FAILS a-2: f: gave 3 where 3.5 D is printed"), "{text}");
    }

    #[test]
    fn a_failure_or_a_bare_function_is_not_good() {
        let values = values::parse(
            "[[value]]\nid='a-1'\nwhat='w'\ngiven={}\nexpect='3.0'\nunit='D'\nkind='published'\nmark='read'\nsource='s'",
        )
        .unwrap();
        assert!(report(&values, 3.0, vec![]).is_good());
        assert!(!report(&values, 3.1, vec![]).is_good());
        assert!(!report(&values, 3.0, vec!["lens::power".into()]).is_good());
    }
}
