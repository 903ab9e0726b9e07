//! Numbers and codes as they are said, so that a sign or a letter is not lost by ear.

use ocellus_core::decimal::{Sign, fixed};

const UNITS: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
const TENS: [&str; 10] = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// Says a number below 100 in size: its sign always, the whole part as a number, the decimals one by one.
///
/// Hands out the words in order, and nothing when the number is larger or not finite.
///
/// ```
/// let mut words = Vec::new();
/// ocellus_card::words::number(-2.5, 2, &mut |word| words.push(word));
/// assert_eq!(words.join(" "), "minus two point five zero");
/// ```
pub fn number(value: f64, places: u8, say: &mut dyn FnMut(&'static str)) {
    let Some(text) = fixed(value, places, Sign::Always) else { return };
    let (sign, digits) = match text.as_str().as_bytes() {
        [b'-', rest @ ..] => ("minus", rest),
        [_, rest @ ..] => ("plus", rest),
        [] => return,
    };
    let mut parts = digits.splitn(2, |b| *b == b'.');
    let whole = parts.next().unwrap_or(&[]).iter().fold(0u64, |n, b| n * 10 + u64::from(b - b'0'));
    if whole >= 100 {
        return;
    }
    let whole = whole as usize;
    say(sign);
    match (UNITS.get(whole), TENS.get(whole / 10)) {
        (Some(word), _) => say(word),
        (None, Some(tens)) => {
            say(tens);
            if !whole.is_multiple_of(10) {
                say(digit(whole as u8 % 10));
            }
        }
        _ => {}
    }
    if let Some(decimals) = parts.next() {
        say("point");
        decimals.iter().for_each(|b| say(digit(b - b'0')));
    }
}

fn digit(n: u8) -> &'static str {
    UNITS.get(usize::from(n)).copied().unwrap_or("")
}

/// The word for a letter or digit of a read-back: the international spelling alphabet (ICAO), digits as they are.
///
/// ```
/// assert_eq!(ocellus_card::words::spelled(b'Q'), "Quebec");
/// assert_eq!(ocellus_card::words::spelled(b'7'), "seven");
/// ```
pub fn spelled(symbol: u8) -> &'static str {
    const LETTERS: [&str; 26] = [
        "Alfa", "Bravo", "Charlie", "Delta", "Echo", "Foxtrot", "Golf", "Hotel", "India", "Juliett", "Kilo", "Lima",
        "Mike", "November", "Oscar", "Papa", "Quebec", "Romeo", "Sierra", "Tango", "Uniform", "Victor", "Whiskey",
        "X-ray", "Yankee", "Zulu",
    ];
    match symbol {
        b'0'..=b'9' => digit(symbol - b'0'),
        b'A'..=b'Z' => LETTERS.get(usize::from(symbol - b'A')).copied().unwrap_or(""),
        _ => "",
    }
}
