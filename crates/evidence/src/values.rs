//! Check values: numbers printed elsewhere, kept with the digits as printed.
//!
//! A file of `values/` holds records of two forms. A `[[value]]` is one value with its fields:
//!
//! | field | |
//! |---|---|
//! | `id` | unique; its beginning says what it is about |
//! | `what` | what is computed |
//! | `given` | the inputs, as printed; a list of tables is read as one table |
//! | `expect`, `unit` | the answer, as printed, and its unit |
//! | `kind`, `mark` | what it is worth, and how sure its source is |
//! | `source` | where it was printed |
//! | `tolerance` | another than half the last printed place; then `note` says why |
//! | `note` | a remark |
//!
//! A `[[table]]` holds many: its fields are those of all its values, and `rows` has the rest. Cells stand between `|`, the
//! first line names the columns, and a blank cell says nothing. The first column is `id`. Columns left of `||` are
//! inputs. Columns right of it are fields, and then a row is a value; or results, and then a row is a case with a value for
//! each result. `results` declares them, each with its fields. The `id` of such a value is that of the row, a hyphen, and
//! the result's name; a `*` in the name stands for the row's `id`, and then the name alone is the `id`.
//!
//! `[shared]` has the fields of every value of the file. What is said of fewer values holds against what is said of more,
//! but an `id` goes on after a hyphen, `what` after a colon, and inputs come together. `[texts]` gives names to long texts:
//! a `source` or a `note` that is `[name]` is that text. `[made]` tells the reader how the file was made.
//!
//! ```
//! let values = ocellus_evidence::values::parse(r#"
//! [texts]
//! thibos = "Thibos, Wheeler, Horner, Optom Vis Sci 1997;74:367-375"
//!
//! [shared]
//! kind = "derived"
//! mark = "two"
//!
//! ## One value.
//! [[value]]
//! id = "average-srkt"
//! what = "SRK/T, lens for emmetropia"
//! given = { axial_length_mm = "23.5", k_d = "43.8", a_constant = "118.4" }
//! expect = "20.250"
//! unit = "D"
//! source = "Retzlaff, Sanders, Kraff 1990, computed"
//!
//! ## One case, a result a row.
//! [[table]]
//! id = "vertex-01"
//! what = "vertex"
//! given = { refraction_d = "+10.00", vertex_mm = "12" }
//! unit = "D"
//! rows = '''
//! id         | expect  | source      | what
//! cornea     | 11.3636 | F/(1 - d F) | spectacle plane to cornea
//! spectacles | 8.9286  | F/(1 + d F) | cornea to spectacle plane
//! '''
//!
//! ## Many cases, one a row.
//! [[table]]
//! id = "vector"
//! what = "power vector"
//! unit = "D"
//! source = "[thibos]"
//! results.m = { what = "M" }
//! results.j0 = { what = "J0" }
//! rows = '''
//! id | sphere_d | cylinder_d | axis_deg || m    | j0
//! 1  | +0.50    | -2.00      | 30       || -0.5 | 0.5
//! 2  | +2.00    | -0.50      | 90       || 1.75 | -0.25
//! '''
//! "#)?;
//! let ids: Vec<_> = values.iter().map(|value| value.id.as_str()).collect();
//! assert_eq!(ids[..3], ["average-srkt", "vertex-01-cornea", "vertex-01-spectacles"]);
//! assert_eq!(ids[3..], ["vector-1-m", "vector-1-j0", "vector-2-m", "vector-2-j0"]);
//! let j0 = &values[4];
//! assert_eq!(j0.what, "power vector: J0");
//! assert_eq!((j0.text("axis_deg")?, j0.expect.as_str()), ("30", "0.5"));
//! assert_eq!(j0.source, "Thibos, Wheeler, Horner, Optom Vis Sci 1997;74:367-375");
//! # Ok::<(), String>(())
//! ```

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use serde::Deserialize;

mod form;
mod kind;
mod number;
mod rows;

pub use kind::Kind;
pub use number::{Number, last_place, numbers};

/// A check value, with every field that its file says of it.
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

    fn of(fields: toml::Table) -> Result<Self, String> {
        let id = form::name(&fields);
        fields.try_into::<Self>().map_err(|error| format!("{id}: {}", error.message()))?.complete()
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

/// Reads the values of one file's text.
///
/// # Errors
/// When it is not of the expected form, or a value is not fit to check against.
pub fn parse(text: &str) -> Result<Vec<Value>, String> {
    form::opened(text)?.into_iter().map(Value::of).collect()
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
    let mut seen = BTreeSet::new();
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
mod tests;
