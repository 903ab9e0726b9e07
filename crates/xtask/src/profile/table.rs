//! A table of sums, most first.

use std::collections::BTreeMap;

/// What is less than this many thousandths of the whole takes a line together.
pub(crate) const SMALL: u64 = 5;

/// The sums with their share of the whole, and the total last.
pub(crate) fn text(unit: &str, what: &str, sums: &BTreeMap<String, u64>, least: u64) -> String {
    let total: u64 = sums.values().sum();
    let mut rows: Vec<_> = sums.iter().map(|(name, sum)| (name.as_str(), *sum)).collect();
    rows.sort_by_key(|(_, sum)| std::cmp::Reverse(*sum));
    let small = rows.split_off(rows.partition_point(|(_, sum)| sum * 1000 >= total * least));
    let together = format!("{} others, each below {} %", small.len(), least as f64 / 10.0);
    if !small.is_empty() {
        rows.push((&together, small.iter().map(|(_, sum)| sum).sum()));
    }
    rows.push(("total", total));
    let mut lines = vec![format!("{unit:>12}  per cent  {what}")];
    for (name, sum) in rows {
        lines.push(format!("{sum:>12}  {:>8.1}  {name}", sum as f64 * 100.0 / total.max(1) as f64));
    }
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sums() -> BTreeMap<String, u64> {
        [("a", 4), ("b", 901), ("c", 90), ("d", 5)].map(|(name, sum)| (name.into(), sum)).into()
    }

    #[test]
    fn most_first_the_small_together_and_the_total_last() {
        let expected = "\
instructions  per cent  function
         901      90.1  b
          90       9.0  c
           5       0.5  d
           4       0.4  1 others, each below 0.5 %
        1000     100.0  total";
        assert_eq!(text("instructions", "function", &sums(), SMALL), expected);
    }

    #[test]
    fn all_of_them() {
        let text = text("flash bytes", "module", &sums(), 0);
        assert_eq!(text.lines().nth(4), Some("           4       0.4  a"));
        assert_eq!(text.lines().count(), 6);
    }
}
