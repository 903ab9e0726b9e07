//! Decimal text against the standard library, which reads and writes exactly but is not there on a device.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]

use ocellus_core::decimal::Unreadable;
use ocellus_core::decimal::{MAX_DIGITS, MAX_PLACES, Sign, fixed, parse};

/// Values of each of the larger kinds: about five seconds without optimisation.
const COUNT: u64 = 3_000_000;

/// Numbers that are the same on every run: Steele, Lea and Flood's SplitMix64.
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn below(&mut self, end: u64) -> u64 {
        self.next() % end
    }
}

/// Half away from zero, from the standard formatter: it rounds the exact value correctly, and takes only an exact half
/// to even.
fn expected(value: f64, places: u8, sign: Sign) -> String {
    let (size, width) = (value.abs(), usize::from(places));
    // a half is (n + 1/2)/10^places; as a binary fraction it is an odd number of 2^-(places+1), and each such is a half
    let is_half = size * (1u64 << (places + 1)) as f64 % 2.0 == 1.0;
    let text = if is_half {
        // one more decimal is exact, and is a 5
        let exact = format!("{size:.*}", width + 1).replace('.', "");
        let up = format!("{:0>1$}", exact.parse::<u128>().unwrap() / 10 + 1, width + 1);
        let (whole, decimals) = up.split_at(up.len() - width);
        if places == 0 { whole.to_owned() } else { format!("{whole}.{decimals}") }
    } else {
        format!("{size:.width$}")
    };
    let nothing = text.bytes().all(|b| b == b'0' || b == b'.');
    match (value < 0.0 && !nothing, sign) {
        (true, _) => format!("-{text}"),
        (false, Sign::Always) => format!("+{text}"),
        (false, Sign::Minus) => text,
    }
}

fn check(value: f64, places: u8, sign: Sign) {
    let text = fixed(value, places, sign);
    assert_eq!(text.as_ref().map(|t| t.as_str()), Some(expected(value, places, sign).as_str()), "{value:e} {places}");
}

/// Every digit of a number in text counts, and none is counted wrongly.
#[test]
fn parse_gives_the_bits_of_the_standard_parser() {
    let mut random = Random(1);
    let mut text = String::new();
    for _ in 0..COUNT {
        text.clear();
        text.push_str(["", "-", "+"][random.below(3) as usize]);
        (0..random.below(4)).for_each(|_| text.push('0'));
        let digits = 1 + random.below(u64::from(MAX_DIGITS));
        let point = random.below(digits + 1);
        for place in 0..digits {
            if place == point && !text.ends_with(['-', '+']) && !text.is_empty() {
                text.push('.');
            }
            text.push(char::from(b'0' + random.below(10) as u8));
        }
        let parsed = parse(&text).unwrap_or_else(|code| panic!("{text}: {code:?}"));
        assert_eq!(Ok(parsed.value.to_bits()), text.parse::<f64>().map(f64::to_bits), "{text}");
        assert_eq!(
            usize::from(parsed.places),
            text.split_once('.').map_or(0, |(_, decimals)| decimals.len()),
            "{text}"
        );
    }
}

/// Numbers of every size that is printed, from every pattern of bits.
#[test]
fn fixed_writes_any_number() {
    let mut random = Random(2);
    for _ in 0..COUNT {
        // 2^-80 to 2^49: beyond 15 decimals at one end, short of the largest that is printed at the other
        let exponent = 1023 - 80 + random.below(129);
        let value = f64::from_bits(random.below(2) << 63 | exponent << 52 | random.below(1 << 52));
        check(value, random.below(u64::from(MAX_PLACES) + 1) as u8, Sign::Minus);
    }
}

/// Numbers as the card has them: a few digits, typed or computed, and their nearest neighbours.
#[test]
fn fixed_writes_numbers_near_decimals() {
    let mut random = Random(3);
    for _ in 0..COUNT / 3 {
        let places = random.below(6) as u8;
        let near = (random.below(20_000_000) as f64 - 1e7) / 10u64.pow(u32::from(places) + 1) as f64;
        for value in [near.next_down(), near, near.next_up()] {
            check(value, places, Sign::Always);
        }
    }
}

/// Exact halves go away from zero, and their neighbours to their own side.
#[test]
fn fixed_takes_halves_away_from_zero() {
    let mut random = Random(4);
    for _ in 0..COUNT / 3 {
        let places = random.below(u64::from(MAX_PLACES) + 1) as u8;
        // odd, and below 10^15 after the division
        let bits = 1 + random.below(48);
        let odd = random.below(1 << bits) | 1;
        let half = odd as f64 / (1u64 << (places + 1)) as f64;
        for value in [half.next_down(), half, -half, half.next_up()] {
            check(value, places, Sign::Minus);
        }
    }
    for (value, places, text) in [
        (0.5, 0, "1"),
        (1.5, 0, "2"),
        (2.5, 0, "3"),
        (-0.5, 0, "-1"),
        (0.125, 2, "0.13"),
        (-0.375, 2, "-0.38"),
        (1.0 / 65536.0, 15, "0.000015258789063"),
    ] {
        assert_eq!(fixed(value, places, Sign::Minus).map(|t| t.to_string()), Some(text.to_owned()));
    }
}

#[test]
fn fixed_at_its_ends() {
    for sign in [Sign::Minus, Sign::Always] {
        for value in [0.0, -0.0, f64::MIN_POSITIVE, 5e-324, -5e-324, 1e15f64.next_down(), -1e15f64.next_down(), 1e-15] {
            (0..=MAX_PLACES).for_each(|places| check(value, places, sign));
        }
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e15, -1e15, f64::MAX] {
            assert!((0..=MAX_PLACES).all(|places| fixed(value, places, sign).is_none()), "{value}");
        }
        assert!(fixed(1.0, MAX_PLACES + 1, sign).is_none());
    }
    assert_eq!(fixed(-1e15f64.next_down(), MAX_PLACES, Sign::Minus).map(|t| t.as_str().len()), Some(1 + 15 + 1 + 15));
}

#[test]
fn parse_at_its_ends() {
    let refused = |code, texts: &[&str]| texts.iter().for_each(|text| assert_eq!(parse(text), Err(code), "{text:?}"));
    refused(
        Unreadable::NotANumber,
        &["", "-", "+", ".", "-.", "1.", ".5", "-.5", "1..2", "1.2.3", "--1", "+-1", "1-", "1+"],
    );
    refused(
        Unreadable::NotANumber,
        &["1e5", "1E5", "0x1", "nan", "NaN", "inf", "-inf", "infinity", " 1", "1 ", "1_0", "\u{661}"],
    );
    refused(Unreadable::NotANumber, &["1234567890123456e", "0.0000000000000001x", "\u{2212}1"]);
    refused(Unreadable::CommaDecimal, &["23,5", "-0,25", "1,234.5"]);
    refused(
        Unreadable::TooLong,
        &["1234567890123456", "0.1234567890123456", "123456789.1234567", "0.0000000000000001"],
    );
    for text in ["0", "-0", "+0.0", "00023.50", "999999999999999", "0.000000000000001", "0000000000000000000001"] {
        assert_eq!(parse(text).map(|p| p.value.to_bits()).ok(), text.parse::<f64>().map(f64::to_bits).ok(), "{text}");
    }
}

/// What is printed is read back as what was typed.
#[test]
fn typed_numbers_come_back_as_typed() {
    let mut random = Random(5);
    for _ in 0..COUNT / 5 {
        let places = 1 + random.below(4) as u8;
        let scale = 10u64.pow(u32::from(places));
        let whole = random.below(100_000 * scale);
        let text = format!("{}.{:0width$}", whole / scale, whole % scale, width = usize::from(places));
        let written = parse(&text).ok().and_then(|p| fixed(p.value, places, Sign::Minus));
        assert_eq!(written.map(|t| t.to_string()), Some(text));
    }
}
