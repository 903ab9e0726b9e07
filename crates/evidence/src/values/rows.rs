//! The rows of a table: cells between `|`, the first line names the columns.

use std::collections::BTreeSet;

/// A row, less its blank cells.
#[derive(Debug, PartialEq)]
pub(super) struct Row<'t> {
    /// What stands under `id`.
    pub(super) id: &'t str,
    /// Name and text of each input, from the columns left of `||`.
    pub(super) given: Vec<(&'t str, &'t str)>,
    /// Name and text of each cell right of it.
    pub(super) cells: Vec<(&'t str, &'t str)>,
}

/// The names of the columns right of `||`, and the rows.
///
/// # Errors
/// When the first column is not `id`, two columns have one name, a row has no id, or not as many cells as the first line.
pub(super) fn read(text: &str) -> Result<(Vec<&str>, Vec<Row<'_>>), String> {
    let mut lines = text.lines().filter(|line| !line.trim().is_empty());
    let (left, right) = halves(lines.next().unwrap_or_default());
    if left.first() != Some(&"id") {
        return Err("the first column of `rows` is not `id`".into());
    }
    let mut seen = BTreeSet::new();
    if let Some(twice) = left.iter().chain(&right).find(|name| !seen.insert(**name)) {
        return Err(format!("two columns are called `{twice}`"));
    }
    let rows = lines.map(|line| row(line, &left, &right)).collect::<Result<_, _>>()?;
    Ok((right, rows))
}

fn row<'t>(line: &'t str, left: &[&'t str], right: &[&'t str]) -> Result<Row<'t>, String> {
    let (inputs, cells) = halves(line);
    let id = inputs.first().copied().unwrap_or_default();
    if (inputs.len(), cells.len()) != (left.len(), right.len()) {
        let (has, needs) = (inputs.len() + cells.len(), left.len() + right.len());
        return Err(format!(
            "row `{id}` has {has} cells, or `||` not where the first line has it, for {needs} columns"
        ));
    }
    if id.is_empty() {
        return Err(format!("a row without id: {}", line.trim()));
    }
    let mut given = named(left, &inputs);
    given.remove(0); // the id
    Ok(Row { id, given, cells: named(right, &cells) })
}

fn named<'t>(names: &[&'t str], cells: &[&'t str]) -> Vec<(&'t str, &'t str)> {
    names.iter().copied().zip(cells.iter().copied()).filter(|(_, cell)| !cell.is_empty()).collect()
}

/// The cells left and right of `||`; where there is none, only the id stands left.
fn halves(line: &str) -> (Vec<&str>, Vec<&str>) {
    let (left, right) = line.split_once("||").or_else(|| line.split_once('|')).unwrap_or((line, ""));
    (cells(left), cells(right))
}

fn cells(half: &str) -> Vec<&str> {
    half.split('|').map(str::trim).collect()
}
