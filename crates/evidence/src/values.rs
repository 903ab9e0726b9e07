//! Check values: numbers printed elsewhere, kept with the digits as printed.

use std::collections::BTreeMap;
use std::fmt;
use std::path::Path;

use serde::Deserialize;

/// What a check value is worth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Printed by the people who did the work, or by a standard.
    Published,
    /// Computed by an independent, widely used library.
    ReferenceLibrary,
    /// Follows from an identity or an independent transcription of the formula.
    Derived,
    /// What everybody says and nobody sources.
    #[serde(alias = "common practice")]
    CommonPractice,
    /// Recalled, the source not at hand.
    Memory,
    /// What this program itself once printed: shows a change, proves nothing.
    Regression,
}

impl Kind {
    /// Every kind, in the order of the report.
    pub const ALL: [Self; 6] =
        [Self::Published, Self::ReferenceLibrary, Self::Derived, Self::CommonPractice, Self::Memory, Self::Regression];

    /// Whether a value of this kind speaks for a function: a program cannot vouch for itself.
    #[must_use]
    pub fn is_evidence(self) -> bool {
        self != Self::Regression
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Published => "published",
            Self::ReferenceLibrary => "reference-library",
            Self::Derived => "derived",
            Self::CommonPractice => "common-practice",
            Self::Memory => "memory",
            Self::Regression => "regression",
        })
    }
}

/// One number of an expected text, with the tolerance its printed digits give it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Number {
    /// The number.
    pub value: f64,
    /// Half a unit in the last printed place, unless the value states another tolerance.
    pub tolerance: f64,
    /// Printed as `x 90`: a meridian, where 0 and 180 are the same.
    pub is_axis: bool,
}

/// A check value as written in its file.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Value {
    /// Unique name; its beginning says what it is about.
    pub id: String,
    /// What is computed.
    pub what: String,
    /// The inputs, as printed.
    pub given: BTreeMap<String, String>,
    /// The answer, as printed; may hold several numbers.
    pub expect: String,
    /// Unit of the answer.
    pub unit: String,
    /// What the value is worth.
    pub kind: Kind,
    /// How sure the source is: read, two, memory, common practice.
    pub mark: String,
    /// Where it was printed.
    pub source: String,
    /// Another tolerance than half the last printed place: one for all numbers or one each.
    pub tolerance: Option<String>,
    /// A remark; says why, where a tolerance is given.
    pub note: Option<String>,
    /// The numbers of `expect`.
    #[serde(skip)]
    pub numbers: Vec<Number>,
}

impl Value {
    /// An input as text.
    ///
    /// # Errors
    /// When the value has no such input.
    pub fn text(&self, key: &str) -> Result<&str, String> {
        self.given.get(key).map(String::as_str).ok_or_else(|| {
            let keys: Vec<_> = self.given.keys().map(String::as_str).collect();
            format!("no input `{key}`; given are {}", keys.join(", "))
        })
    }

    /// An input as a number.
    ///
    /// # Errors
    /// When the value has no such input, or it is not a number.
    pub fn number(&self, key: &str) -> Result<f64, String> {
        let text = self.text(key)?;
        text.parse().map_err(|_| format!("input `{key}` is `{text}`, not a number"))
    }

    fn complete(mut self) -> Result<Self, String> {
        let refuse = |why: String| Err(format!("{}: {why}", self.id));
        if self.tolerance.is_some() && self.note.as_ref().is_none_or(|note| note.trim().is_empty()) {
            return refuse("a tolerance needs a note that says why".into());
        }
        let mut numbers = match numbers(&self.expect) {
            Ok(numbers) => numbers,
            Err(why) => return refuse(format!("expect: {why}")),
        };
        if let Some(text) = &self.tolerance {
            let given = match self::numbers(text) {
                Ok(given) => given,
                Err(why) => return refuse(format!("tolerance: {why}")),
            };
            if given.len() != 1 && given.len() != numbers.len() {
                return refuse(format!("{} tolerances for {} numbers", given.len(), numbers.len()));
            }
            for (number, tolerance) in numbers.iter_mut().zip(given.iter().cycle()) {
                number.tolerance = tolerance.value;
            }
        }
        for number in &numbers {
            // Finer than this, no f64 computation could agree except by luck.
            let finest = 2.0 * f64::EPSILON * number.value.abs();
            if number.tolerance.is_nan() || number.tolerance <= finest {
                return refuse(format!(
                    "a tolerance of {:e} on {} is finer than an f64 can hold; state one, with a note",
                    number.tolerance, number.value
                ));
            }
        }
        self.numbers = numbers;
        Ok(self)
    }
}

/// The numbers in a printed text such as `1.270/0.838`, `-2.00 +1.00 x 90` or `0.50 (0.235 to 1.064)`.
///
/// # Errors
/// When something in it is neither a number nor a separator.
pub fn numbers(text: &str) -> Result<Vec<Number>, String> {
    let mut found = Vec::new();
    let mut is_axis = false;
    for word in text.split([' ', '/', '(', ')', ',']).filter(|word| !word.is_empty()) {
        match word {
            "x" => is_axis = true,
            "to" => {}
            _ => {
                let value = word.parse::<f64>().ok().filter(|value| value.is_finite());
                let value = value.ok_or_else(|| format!("`{word}` in `{text}` is not a number"))?;
                found.push(Number { value, tolerance: last_place(word) / 2.0, is_axis });
                is_axis = false;
            }
        }
    }
    if found.is_empty() { Err(format!("no number in `{text}`")) } else { Ok(found) }
}

/// One unit in the last printed place: 0.01 for `23.45`, 1 for `55`, 1e-11 for `0.353658941e-2`.
#[must_use]
pub fn last_place(printed: &str) -> f64 {
    let (digits, exponent) = printed.split_once(['e', 'E']).unwrap_or((printed, "0"));
    let places = digits.split_once('.').map_or(0, |(_, fraction)| fraction.len());
    let exponent: i64 = exponent.parse().unwrap_or(0);
    // Through text, so that the unit is the f64 nearest to the power of ten.
    format!("1e{}", exponent - places as i64).parse().unwrap_or(f64::NAN)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    /// How the file was made; for the reader, not for the program.
    #[serde(rename = "made")]
    _made: Option<toml::Table>,
    #[serde(default, rename = "value")]
    values: Vec<Value>,
}

/// Reads the values of one file's text.
///
/// # Errors
/// When it is not of the expected form, or a value is not fit to check against.
pub fn parse(text: &str) -> Result<Vec<Value>, String> {
    let file: File = toml::from_str(text).map_err(|error| error.to_string())?;
    file.values.into_iter().map(Value::complete).collect()
}

/// Reads every `*.toml` in a folder, in the order of their names.
///
/// # Errors
/// Names the file that cannot be used, or an id that two values share.
pub fn load(folder: &Path) -> Result<Vec<Value>, String> {
    let entries = folder.read_dir().map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut paths: Vec<_> = entries.flatten().map(|entry| entry.path()).collect();
    paths.retain(|path| path.extension().is_some_and(|extension| extension == "toml"));
    paths.sort();
    let mut all: Vec<Value> = Vec::new();
    for path in paths {
        let text = std::fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
        all.extend(parse(&text).map_err(|error| format!("{}: {error}", path.display()))?);
    }
    let mut seen = std::collections::BTreeSet::new();
    match all.iter().find(|value| !seen.insert(&value.id)) {
        Some(twice) => Err(format!("two check values are called `{}`", twice.id)),
        None => Ok(all),
    }
}

/// The check values that this crate carries, in `values/`.
///
/// # Errors
/// As [`load`].
pub fn all() -> Result<Vec<Value>, String> {
    load(&Path::new(env!("CARGO_MANIFEST_DIR")).join("values"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn value(rest: &str) -> Result<Vec<Value>, String> {
        parse(&format!("[[value]]\nid='a-1'\nwhat='w'\nunit='D'\nmark='read'\nsource='s'\n{rest}"))
    }

    #[test]
    fn each_number_keeps_its_own_printed_places() {
        let found = numbers("-2.00 +1.0 x 90").unwrap();
        assert_eq!(found.iter().map(|n| n.value).collect::<Vec<_>>(), [-2.0, 1.0, 90.0]);
        assert_eq!(found.iter().map(|n| n.tolerance).collect::<Vec<_>>(), [0.005, 0.05, 0.5]);
        assert_eq!(found.iter().map(|n| n.is_axis).collect::<Vec<_>>(), [false, false, true]);
        assert_eq!(numbers("1.270/0.838").unwrap().len(), 2);
        assert_eq!(numbers("0.50 (0.235 to 1.064)").unwrap()[2].value, 1.064);
    }

    #[test]
    fn the_last_place_counts_the_exponent() {
        assert_eq!(last_place("0.353658941e-2"), 1e-11);
        assert_eq!(last_place("0.123443146e2"), 1e-7);
        assert_eq!(last_place("55"), 1.0);
        assert_eq!(last_place("-8.9286"), 1e-4);
    }

    #[test]
    fn a_text_that_is_no_number_is_refused() {
        for text in ["", "about 55", "NaN", "inf", "1-2", "23.3 D"] {
            assert!(numbers(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_tolerance_needs_its_reason() {
        let body = "given={k='43.8'}\nexpect='20.25'\nkind='derived'\ntolerance='0.1'\n";
        assert!(value(body).unwrap_err().contains("says why"));
        let values = value(&format!("{body}note='a mean of ratios'\n")).unwrap();
        assert_eq!(values[0].numbers[0].tolerance, 0.1);
    }

    #[test]
    fn a_tolerance_finer_than_an_f64_is_refused() {
        let error = value("given={}\nexpect='20.249912345678901234'\nkind='derived'\n").unwrap_err();
        assert!(error.contains("finer than an f64"), "{error}");
    }

    #[test]
    fn an_unknown_kind_or_key_is_refused() {
        assert!(value("given={}\nexpect='1'\nkind='certain'\n").is_err());
        assert!(value("given={}\nexpect='1'\nkind='derived'\nexpects='2'\n").is_err());
    }

    #[test]
    fn the_values_carried_here_are_all_fit_to_check_against() {
        assert!(all().unwrap().len() > 100);
    }
}
