//! Decimal text and whole numbers against the standard library's own reader and writer.

use ocellus_core::choice;
use ocellus_core::decimal::{self, Sign};

use crate::check::{Compared, Registry};
use crate::oracles;

/// Texts of every length and number of decimals that can be read, with digits that do not repeat.
fn texts() -> impl Iterator<Item = String> {
    (1..=15_usize).flat_map(|length| {
        (0..=15_usize).flat_map(move |places| {
            (0..40_u64).map(move |seed| {
                let digits = (seed * 7 + length as u64 * 31 + places as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15);
                let digits = format!("{:0width$}", digits % 10_u64.pow(length as u32), width = places + 1);
                let (whole, fraction) = digits.split_at(digits.len() - places);
                let sign = ["", "-", "+"][seed as usize % 3];
                if places == 0 { format!("{sign}{whole}") } else { format!("{sign}{whole}.{fraction}") }
            })
        })
    })
}

fn read_as_std_does(parse: fn(&str) -> Result<decimal::Parsed, decimal::Unreadable>) -> Compared {
    let mut count = 0;
    for text in texts() {
        let parsed = parse(&text)?;
        if parsed.value.to_bits() != text.parse::<f64>()?.to_bits() {
            return Err(format!("{text} read as {}", parsed.value).into());
        }
        count += 1;
    }
    Ok(count)
}

/// What the standard library prints, except that it takes an exact half to even and the core takes it away from zero: a
/// step up from the half gives that answer.
fn printed_by_std(value: f64, places: usize) -> String {
    let size = value.abs();
    let exact = format!("{size:.80}");
    let tail = &exact[exact.find('.').map_or(0, |point| point + 1 + places)..];
    let is_half = tail.starts_with('5') && tail[1..].bytes().all(|digit| digit == b'0');
    let text = format!("{:.places$}", if is_half { size.next_up() } else { size });
    let is_zero = text.bytes().all(|byte| matches!(byte, b'0' | b'.'));
    if value < 0.0 && !is_zero { format!("-{text}") } else { text }
}

/// Halves of many places, and numbers of any size.
fn numbers() -> impl Iterator<Item = f64> {
    let halves = (-64..=64).map(|eighths| f64::from(eighths) / 8.0);
    let sizes = (0..400_u64).map(|seed| {
        let bits = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15);
        // any fraction and sign, sizes from 2^-40 to 2^40
        f64::from_bits((bits & 0x800f_ffff_ffff_ffff) | ((1023 - 40 + bits % 80) << 52))
    });
    halves.chain(sizes)
}

fn written_as_std_does(
    fixed: fn(f64, u8, Sign) -> Option<decimal::Text>,
    as_str: fn(&decimal::Text) -> &str,
) -> Compared {
    let mut count = 0;
    for value in numbers() {
        for places in [0, 1, 2, 3, 6] {
            let text = fixed(value, places, Sign::Minus).ok_or(format!("{value} not written"))?;
            let expected = printed_by_std(value, usize::from(places));
            let signed = fixed(value, places, Sign::Always).ok_or(format!("{value} not written"))?;
            let expected_signed = if expected.starts_with('-') { expected.clone() } else { format!("+{expected}") };
            if as_str(&text) != expected || as_str(&signed) != expected_signed {
                return Err(format!("{value:e} to {places} places written {text} and {signed}, not {expected}").into());
            }
            count += 1;
        }
    }
    Ok(count)
}

/// The standard library's exponent says where a number's first digit stands.
fn places_as_std_counts(places_for: fn(f64, u8) -> u8) -> Compared {
    let mut count = 0;
    for seed in 0..2000_u64 {
        let bits = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15);
        // from 2^-30 to 2^30
        let value = f64::from_bits((bits & 0x800f_ffff_ffff_ffff) | ((1023 - 30 + bits % 60) << 52));
        let text = format!("{value:e}");
        let exponent: i32 = text.split('e').nth(1).ok_or("no exponent")?.parse()?;
        for significant in [3_u8, 8] {
            let expected = (i32::from(significant) - 1 - exponent).clamp(0, 15);
            if i32::from(places_for(value, significant)) != expected {
                return Err(format!("{value:e} to {significant} digits: not {expected} decimals").into());
            }
            count += 1;
        }
    }
    Ok(count)
}

/// A word of a choice is kept as the number of its place.
fn whole_as_std_reads(place: fn(f64) -> usize) -> Compared {
    let mut count = 0;
    for text in (0..=u8::MAX).map(|number| number.to_string()) {
        if place(text.parse()?) != text.parse::<usize>()? {
            return Err(format!("{text} is another place").into());
        }
        count += 1;
    }
    Ok(count)
}

pub(super) fn register(registry: &mut Registry) {
    oracles! { registry;
        decimal::parse => "the standard library's reader of decimals" => |parse| read_as_std_does(parse);
        decimal::places_for => "the standard library's exponents" => |places_for| places_as_std_counts(places_for);
        decimal::fixed, decimal::Text::as_str => "the standard library's writer of decimals" => |fixed, as_str|
            written_as_std_does(fixed, as_str);
        choice::place => "the standard library's reader of whole numbers" => |place| whole_as_std_reads(place);
    }
}
