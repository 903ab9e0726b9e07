//! Which check values a check computes.

use crate::values::Value;

/// Which check values a check computes: those whose ids fit a pattern, less those that fit one after `!`.
pub struct Claim(Vec<&'static str>);

impl From<&'static str> for Claim {
    fn from(pattern: &'static str) -> Self {
        Self(vec![pattern])
    }
}

impl<const N: usize> From<[&'static str; N]> for Claim {
    fn from(patterns: [&'static str; N]) -> Self {
        Self(patterns.into())
    }
}

impl Claim {
    /// The values that it is about.
    ///
    /// # Errors
    /// When a pattern is of none.
    pub(super) fn select<'v>(&self, values: &'v [Value]) -> Result<Vec<&'v Value>, String> {
        let excluded: Vec<_> = self.0.iter().filter_map(|pattern| pattern.strip_prefix('!')).collect();
        if let Some(idle) = excluded.iter().find(|pattern| !values.iter().any(|value| fits(pattern, &value.id))) {
            return Err(format!("there is no check value `{idle}` to take away"));
        }
        let mut selected = Vec::new();
        for pattern in self.0.iter().filter(|pattern| !pattern.starts_with('!')) {
            let before = selected.len();
            selected.extend(values.iter().filter(|value| {
                fits(pattern, &value.id) && !excluded.iter().any(|excluded| fits(excluded, &value.id))
            }));
            if selected.len() == before {
                return Err(format!("there is no check value `{pattern}`"));
            }
        }
        Ok(selected)
    }
}

/// Whether a name is of a pattern, in which `*` stands for anything and `#` for a digit.
pub(crate) fn fits(pattern: &str, name: &str) -> bool {
    fn at(pattern: &[u8], name: &[u8]) -> bool {
        match (pattern, name) {
            ([], []) => true,
            ([b'*', rest @ ..], _) => at(rest, name) || matches!(name, [_, later @ ..] if at(pattern, later)),
            ([b'#', rest @ ..], [digit, later @ ..]) => digit.is_ascii_digit() && at(rest, later),
            ([first, rest @ ..], [same, later @ ..]) => first == same && at(rest, later),
            _ => false,
        }
    }
    at(pattern.as_bytes(), name.as_bytes())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn value(id: &str) -> Value {
        let fields = "what='w'\ngiven={}\nexpect='1'\nunit='D'\nkind='derived'\nmark='two'\nsource='s'";
        crate::values::parse(&format!("[[value]]\nid='{id}'\n{fields}")).unwrap().remove(0)
    }

    #[test]
    fn a_star_stands_for_anything_and_a_hash_for_a_digit() {
        assert!(fits("srkt-##-p", "srkt-01-p") && fits("srkt-*-p", "srkt-radicand-p") && fits("head-*", "head-"));
        assert!(!fits("srkt-##-p", "srkt-xx-p") && !fits("srkt-*-p", "srkt-p") && !fits("head-*", "overhead-1"));
        assert!(fits("rho", "rho") && !fits("rho", "rho-20") && !fits("rho-20", "rho"));
    }

    #[test]
    fn a_pattern_after_a_bang_takes_away() {
        let values: Vec<_> = ["two-1", "two-2", "turn-1"].map(value).into();
        let ids =
            |claim: Claim| claim.select(&values).map(|found| found.iter().map(|v| v.id.clone()).collect::<Vec<_>>());
        assert_eq!(ids(["two-*", "!*-2"].into()).unwrap(), ["two-1"]);
        assert!(ids(["two-*", "!two-*"].into()).is_err());
        assert!(ids(["two-*", "!three-*"].into()).is_err());
    }
}
