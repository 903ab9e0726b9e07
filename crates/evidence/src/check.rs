//! Checks: a function of the project, what it is compared with, and the call itself.
//!
//! A check is registered by a macro that takes the function and hands it to the closure that calls it, so the name under
//! which the evidence is filed is the compiler's own for what was called, and cannot drift from it.

use std::collections::BTreeMap;
use std::fmt;

mod claim;

pub use claim::Claim;
pub(crate) use claim::fits;

use crate::compare;
use crate::functions::short;
use crate::values::Value;

/// Why a function gave no number: whatever error it returned, or a sentence.
pub struct Failed(String);

impl<E: fmt::Debug> From<E> for Failed {
    fn from(error: E) -> Self {
        Self(format!("{error:?}"))
    }
}

/// The numbers that a function gives for a check value, in the order of the printed ones.
pub type Answer = Result<Vec<f64>, Failed>;

/// How many comparisons with an outside oracle held; the first that did not ends the check.
pub type Compared = Result<usize, Failed>;

enum Body {
    Values { claim: Claim, compute: Box<dyn Fn(&Value) -> Answer> },
    Oracle { name: &'static str, compare: Box<dyn Fn() -> Compared> },
}

struct Check {
    functions: Vec<&'static str>,
    body: Body,
}

/// Every check there is.
#[derive(Default)]
pub struct Registry {
    checks: Vec<Check>,
}

/// The compiler's name of a function: `ocellus_core::fluids::column::of_column`.
#[must_use]
pub fn name_of<F>(_: &F) -> &'static str {
    std::any::type_name::<F>()
}

impl Registry {
    /// A check against check values; by [`crate::checks!`].
    pub fn values(
        &mut self,
        functions: &[&'static str],
        claim: impl Into<Claim>,
        compute: impl Fn(&Value) -> Answer + 'static,
    ) {
        let body = Body::Values { claim: claim.into(), compute: Box::new(compute) };
        self.checks.push(Check { functions: functions.into(), body });
    }

    /// A check against a program that is not ours; by [`crate::oracles!`].
    pub fn oracle(&mut self, functions: &[&'static str], name: &'static str, compare: impl Fn() -> Compared + 'static) {
        let body = Body::Oracle { name, compare: Box::new(compare) };
        self.checks.push(Check { functions: functions.into(), body });
    }

    /// Runs every check.
    #[must_use]
    pub fn run<'v>(&self, values: &'v [Value]) -> Outcome<'v> {
        let mut outcome = Outcome::default();
        let mut broken: Vec<&str> = Vec::new();
        let mut claimed: BTreeMap<&str, &Value> = BTreeMap::new();
        for Check { functions, body } in &self.checks {
            let called: Vec<_> = functions.iter().map(|name| short(name)).collect();
            let called = called.join(", ");
            let mut compared = 0;
            match body {
                Body::Values { claim, compute } => match claim.select(values) {
                    Err(why) => outcome.failures.push(format!("{called}: {why}")),
                    Ok(selected) => {
                        for value in selected {
                            claimed.insert(&value.id, value);
                            match verdict(value, compute(value)) {
                                Ok(()) => compared += usize::from(value.kind.is_evidence()),
                                Err(why) => {
                                    broken.push(&value.id);
                                    outcome.failures.push(format!("{}: {called}: {why}", value.id));
                                }
                            }
                        }
                    }
                },
                Body::Oracle { name, compare } => match compare() {
                    Ok(0) => outcome.failures.push(format!("{called}: compared nothing with {name}")),
                    Ok(count) => {
                        compared += count;
                        *outcome.oracles.entry(name).or_default() += count;
                    }
                    Err(Failed(why)) => outcome.failures.push(format!("{called}: against {name}: {why}")),
                },
            }
            for function in functions {
                *outcome.functions.entry(function).or_default() += compared;
            }
        }
        for value in values {
            if !claimed.contains_key(value.id.as_str()) {
                outcome.failures.push(format!("{}: a value that nobody checks ({})", value.id, value.what));
            }
        }
        outcome.holds = claimed.into_values().filter(|value| !broken.contains(&value.id.as_str())).collect();
        outcome
    }
}

/// What came of running the checks.
#[derive(Default)]
pub struct Outcome<'v> {
    /// The check values that hold for every function that claims them.
    pub holds: Vec<&'v Value>,
    /// One line for each thing that is not as it should be.
    pub failures: Vec<String>,
    /// How many comparisons speak for each function; regression values do not.
    pub functions: BTreeMap<&'static str, usize>,
    /// How many comparisons held with each oracle.
    pub oracles: BTreeMap<&'static str, usize>,
}

fn verdict(value: &Value, answer: Answer) -> Result<(), String> {
    let computed = answer.map_err(|Failed(why)| format!("gave no number: {why}"))?;
    if computed.len() != value.numbers.len() {
        return Err(format!("gave {} numbers for `{}`", computed.len(), value.expect));
    }
    for (computed, expected) in computed.iter().zip(&value.numbers) {
        let agrees = if expected.is_axis { compare::axis_agrees } else { compare::agrees };
        if !agrees(*computed, expected.value, expected.tolerance) {
            return Err(format!(
                "gave {computed} where {} {} is printed, within {:e} ({})",
                expected.value, value.unit, expected.tolerance, value.source
            ));
        }
    }
    Ok(())
}

/// Registers checks against check values:
///
/// ```text
/// checks! { registry;
///     air::pressure_at => "atm-#*" => |pressure_at; value| Ok(vec![pressure_at(value.number("height_m")?)]);
/// }
/// ```
///
/// The functions stand before the first arrow, the values they compute after it (a [`Claim`](crate::check::Claim)), and
/// the closure gets the functions under names of its own. Several stand together where one number needs them all.
#[macro_export]
macro_rules! checks {
    ($registry:expr; $($($function:expr),+ => $claim:expr => |$($f:ident),+; $value:ident| $body:expr;)+) => { $(
        $registry.values(&[$($crate::check::name_of(&$function)),+], $claim, |$value: &$crate::values::Value| {
            $(let $f = $function;)+
            $body
        });
    )+ };
}

/// Registers checks against an outside oracle; the closure compares, and says how often or what differs:
///
/// ```text
/// oracles! { registry;
///     decimal::parse => "the standard library" => |parse| read_as_std_does(parse);
/// }
/// ```
#[macro_export]
macro_rules! oracles {
    ($registry:expr; $($($function:expr),+ => $name:expr => |$($f:ident),+| $body:expr;)+) => { $(
        $registry.oracle(&[$($crate::check::name_of(&$function)),+], $name, || {
            $(let $f = $function;)+
            $body
        });
    )+ };
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::values;

    fn double(x: f64) -> f64 {
        2.0 * x
    }

    fn values() -> Vec<Value> {
        values::parse(
            "[[value]]\nid='two-1'\nwhat='w'\ngiven={x='1.5'}\nexpect='3.0'\nunit='D'\nkind='published'\nmark='read'\nsource='s'
             [[value]]\nid='two-2'\nwhat='w'\ngiven={x='-2'}\nexpect='-4'\nunit='D'\nkind='regression'\nmark='read'\nsource='s'
             [[value]]\nid='turn-1'\nwhat='w'\ngiven={x='89.9'}\nexpect='1.0 x 0'\nunit='deg'\nkind='derived'\nmark='two'\nsource='s'",
        )
        .unwrap()
    }

    fn ids<'v>(outcome: &Outcome<'v>) -> Vec<&'v str> {
        outcome.holds.iter().map(|value| value.id.as_str()).collect()
    }

    #[test]
    fn a_check_is_filed_under_the_name_of_what_it_calls() {
        assert_eq!(name_of(&double), "ocellus_evidence::check::tests::double");
        assert!(name_of(&compare::agrees).ends_with("compare::agrees"));
    }

    #[test]
    fn what_holds_is_counted_and_regression_speaks_for_nobody() {
        let mut registry = Registry::default();
        checks! { registry;
            double => "two-*" => |f; value| Ok(vec![f(value.number("x")?)]);
            double => ["turn-1"] => |f; value| Ok(vec![1.0, f(value.number("x")?)]);
        }
        let values = values();
        let outcome = registry.run(&values);
        assert_eq!(outcome.failures, Vec::<String>::new());
        assert_eq!(ids(&outcome), ["turn-1", "two-1", "two-2"]);
        assert_eq!(outcome.functions[name_of(&double)], 2);
    }

    #[test]
    fn a_wrong_number_too_few_and_none_all_fail() {
        let answers: [fn(&Value) -> Answer; 5] = [
            |value| Ok(vec![-2.0 * value.number("x")?]),
            |_| Ok(vec![f64::NAN]),
            |_| Ok(vec![]),
            |value| Ok(vec![value.number("y")?]),
            |_| Ok(vec![3.0, 3.0]),
        ];
        let values = values();
        for answer in answers {
            let mut registry = Registry::default();
            registry.values(&["f", "g"], "two-1", answer);
            let outcome = registry.run(&values);
            assert!(outcome.failures[0].starts_with("two-1: f, g: gave"), "{:?}", outcome.failures);
            assert!(outcome.holds.is_empty());
            assert_eq!(outcome.functions["g"], 0);
        }
    }

    #[test]
    fn a_value_that_one_of_its_checks_breaks_does_not_hold() {
        let mut registry = Registry::default();
        registry.values(&["right"], "two-1", |_| Ok(vec![3.0]));
        registry.values(&["wrong"], "two-1", |_| Ok(vec![3.2]));
        let values = values();
        assert!(registry.run(&values).holds.is_empty());
    }

    #[test]
    fn a_value_nobody_checks_and_a_claim_on_nothing_fail() {
        let mut registry = Registry::default();
        registry.values(&["f"], "three-*", |_| Ok(vec![3.0]));
        registry.values(&["f"], ["two-1", "two-9"], |_| Ok(vec![3.0]));
        let values = values();
        let failures = registry.run(&values).failures;
        assert_eq!(failures.len(), 5, "{failures:?}");
        assert!(failures[0].contains("no check value `three-*`"));
        assert!(failures[1].contains("no check value `two-9`"));
        assert!(failures[2].contains("nobody checks"));
    }

    #[test]
    fn an_oracle_must_have_been_asked() {
        let mut registry = Registry::default();
        oracles! { registry;
            double => "addition" => |f| if f(1.5) == 1.5 + 1.5 { Ok(10) } else { Err("no sum".into()) };
        }
        registry.oracle(&["idle"], "nothing", || Ok(0));
        registry.oracle(&["wrong"], "truth", || Err("2 is not 3".into()));
        let outcome = registry.run(&[]);
        assert_eq!(outcome.oracles["addition"], 10);
        assert_eq!(outcome.functions[name_of(&double)], 10);
        assert_eq!(outcome.failures.len(), 2);
    }
}
