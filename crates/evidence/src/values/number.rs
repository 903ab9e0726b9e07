//! Printed numbers, and the tolerance their digits give them.

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

#[cfg(test)]
mod tests {
    use super::*;

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
}
