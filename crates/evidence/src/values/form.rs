//! The form of a file, opened out: every value with all its fields.

use std::collections::{BTreeMap, BTreeSet};

use serde::Deserialize;
use toml::{Table, Value};

use super::rows::{self, Row};

/// A file as written.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    /// How the file was made; for the reader, not for the program.
    #[serde(rename = "made")]
    _made: Option<Table>,
    /// Long texts by name.
    #[serde(default)]
    texts: BTreeMap<String, String>,
    /// Fields of every value of the file.
    #[serde(default)]
    shared: Table,
    /// Values by themselves.
    #[serde(default)]
    value: Vec<Table>,
    /// Values in rows.
    #[serde(default)]
    table: Vec<Table>,
}

/// The fields of each value of a file.
///
/// # Errors
/// When the text is not TOML of this form; says in which record, where one can be named.
pub(super) fn opened(text: &str) -> Result<Vec<Table>, String> {
    let file: File = toml::from_str(text).map_err(|error| error.to_string())?;
    let mut all = Vec::new();
    let shared = over(&Table::new(), &file.shared).map_err(|why| format!("shared: {why}"))?;
    for value in &file.value {
        all.push(over(&shared, value).map_err(|why| format!("{}: {why}", name(value)))?);
    }
    for table in &file.table {
        all.extend(of_table(&shared, table).map_err(|why| format!("{}: {why}", name(table)))?);
    }
    let mut unused: BTreeSet<&str> = file.texts.keys().map(String::as_str).collect();
    for fields in &mut all {
        let id = name(fields);
        for key in ["source", "note"] {
            let Some(Value::String(text)) = fields.get_mut(key) else { continue };
            let Some(called) = text.strip_prefix('[').and_then(|rest| rest.strip_suffix(']')) else { continue };
            let (called, long) =
                file.texts.get_key_value(called).ok_or_else(|| format!("{id}: {key}: there is no text `{called}`"))?;
            unused.remove(called.as_str());
            *text = long.clone();
        }
    }
    match unused.first() {
        Some(text) => Err(format!("no value refers to the text `{text}`")),
        None => Ok(all),
    }
}

/// What a record is called in a message.
pub(super) fn name(fields: &Table) -> String {
    fields.get("id").and_then(Value::as_str).unwrap_or("a record without id").to_owned()
}

/// The values of a table: one a row, or one a row and result.
fn of_table(shared: &Table, table: &Table) -> Result<Vec<Table>, String> {
    let mut head = over(shared, table)?;
    let text = match head.remove("rows") {
        Some(Value::String(text)) => text,
        _ => return Err("a table needs `rows`, a text".into()),
    };
    let results = match head.remove("results") {
        Some(Value::Table(results)) => results,
        Some(_) => return Err("`results` is not a table".into()),
        None => Table::new(),
    };
    let (columns, rows) = rows::read(&text)?;
    if let Some(result) = results.keys().find(|result| !columns.contains(&result.as_str())) {
        return Err(format!("the result `{result}` has no column"));
    }
    if !results.is_empty() && columns.contains(&"expect") {
        return Err("a column `expect` beside results".into());
    }
    let mut all = Vec::new();
    for row in &rows {
        let of_row = of_row(&head, &results, row).map_err(|why| format!("row `{}`: {why}", row.id))?;
        if of_row.is_empty() {
            return Err(format!("row `{}` has no result", row.id));
        }
        all.extend(of_row);
    }
    Ok(all)
}

fn of_row(head: &Table, results: &Table, row: &Row<'_>) -> Result<Vec<Table>, String> {
    let (digits, fields): (Vec<_>, Vec<_>) = row.cells.iter().partition(|(name, _)| results.contains_key(*name));
    let mut all = strings(&fields);
    all.insert("given".into(), Value::Table(strings(&row.given)));
    let all = over(head, &all)?;
    if results.is_empty() {
        return Ok(vec![over(&all, &strings(&[("id", row.id)]))?]);
    }
    digits
        .into_iter()
        .map(|(result, digits)| {
            let id = if result.contains('*') { result.replace('*', row.id) } else { format!("{}-{result}", row.id) };
            let of_result = results
                .get(result)
                .and_then(Value::as_table)
                .ok_or_else(|| format!("the result `{result}` is not a table"))?;
            over(&over(&all, of_result)?, &strings(&[("id", &id), ("expect", digits)]))
        })
        .collect()
}

fn strings(named: &[(&str, &str)]) -> Table {
    named.iter().map(|&(name, text)| (name.to_owned(), Value::from(text))).collect()
}

/// What is said of a value generally, and more of it: an `id` goes on after a hyphen, `what` after a colon, inputs come
/// together, and anything else said later holds instead.
fn over(general: &Table, more: &Table) -> Result<Table, String> {
    let mut all = general.clone();
    for (key, value) in more {
        let value = match (key.as_str(), all.remove(key), value) {
            ("id", Some(Value::String(first)), Value::String(then)) => Value::String(format!("{first}-{then}")),
            ("what", Some(Value::String(first)), Value::String(then)) => Value::String(format!("{first}: {then}")),
            ("given", Some(Value::Table(mut first)), then) => {
                first.extend(inputs(then)?);
                Value::Table(first)
            }
            ("given", _, then) => Value::Table(inputs(then)?),
            (_, _, then) => then.clone(),
        };
        all.insert(key.clone(), value);
    }
    Ok(all)
}

/// Inputs: a table, or several to be read as one, because TOML keeps an inline table on one line.
fn inputs(given: &Value) -> Result<Table, String> {
    match given {
        Value::Table(inputs) => Ok(inputs.clone()),
        Value::Array(lines) => {
            let mut all = Table::new();
            for line in lines {
                for (key, value) in line.as_table().ok_or("a line of `given` is not a table")? {
                    if all.insert(key.clone(), value.clone()).is_some() {
                        return Err(format!("input `{key}` is given twice"));
                    }
                }
            }
            Ok(all)
        }
        _ => Err("`given` is not a table".into()),
    }
}
