//! Which check values a check computes.

use crate::values::Value;

/// Which check values a check computes: ids, where `*` stands for anything and `#` for a
/// digit; less those that fit a pattern after `!`.
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
        let fits = |pattern: &str, value: &Value| fits(pattern.as_bytes(), value.id.as_bytes());
        let excluded: Vec<_> = self.0.iter().filter_map(|pattern| pattern.strip_prefix('!')).collect();
        if let Some(idle) = excluded.iter().find(|pattern| !values.iter().any(|value| fits(pattern, value))) {
            return Err(format!("there is no check value `{idle}` to take away"));
        }
        let mut selected = Vec::new();
        for pattern in self.0.iter().filter(|pattern| !pattern.starts_with('!')) {
            let before = selected.len();
            selected.extend(
                values
                    .iter()
                    .filter(|value| fits(pattern, value) && !excluded.iter().any(|excluded| fits(excluded, value))),
            );
            if selected.len() == before {
                return Err(format!("there is no check value `{pattern}`"));
            }
        }
        Ok(selected)
    }
}

fn fits(pattern: &[u8], id: &[u8]) -> bool {
    match (pattern, id) {
        ([], []) => true,
        ([b'*', rest @ ..], _) => fits(rest, id) || matches!(id, [_, later @ ..] if fits(pattern, later)),
        ([b'#', rest @ ..], [digit, later @ ..]) => digit.is_ascii_digit() && fits(rest, later),
        ([first, rest @ ..], [same, later @ ..]) => first == same && fits(rest, later),
        _ => false,
    }
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
        let fits = |pattern: &str, id: &str| fits(pattern.as_bytes(), id.as_bytes());
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
