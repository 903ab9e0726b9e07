//! Texts kept folded, against the texts themselves.

use std::fmt::Display;

use ocellus_text::fold::{Folded, fold};
use ocellus_text::pool::{self, Pool};
use ocellus_text::{Bytes, Text, text};

use crate::check::{Compared, Registry};
use crate::oracles;

/// Texts, each folded by the compiler beside itself.
macro_rules! folded {
    ($($text:literal)*) => { [$((text!($text), $text)),*] };
}

/// Every character that a text may have, words that fold well, none at all.
fn texts() -> [(Text, &'static str); 6] {
    folded! {
        ""
        "a"
        " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~"
        "the pressure at the eye, nothing flowing"
        "Not a medical device: teaching and independent arithmetic check only."
        "thththththeeeeer ingtion   and the the the"
    }
}

fn as_it_was(of: impl Fn(Text, &str) -> bool) -> Compared {
    for (folded, text) in texts() {
        if !of(folded, text) {
            return Err(format!("`{text}` is another").into());
        }
    }
    Ok(texts().len())
}

/// More bytes than any text above takes, and more than a table of them.
const MOST: usize = 200;
const ALL: usize = 2000;

/// What bytes unfold to that were folded as the program runs; the compiler does it for the others.
fn unfolded(of: fn(&'static [u8]) -> Text, bytes: &[u8]) -> String {
    of(Vec::leak(bytes.into())).to_string()
}

/// A table of texts that needs three of the places that are kept, read to the end and beyond.
fn pooled(
    add: fn(&mut Pool<3>, usize, &str),
    trim: fn(&Pool<3>) -> [u8; ALL],
    find: fn(&'static [u8], &'static [u16], usize) -> Text,
) -> Compared {
    let mut pool = Pool::EMPTY;
    let table: Vec<_> = texts().iter().map(|(_, text)| *text).cycle().take(2 * pool::STRIDE + 3).collect();
    table.iter().enumerate().for_each(|(place, text)| add(&mut pool, place, text));
    let (bytes, starts) = (Vec::leak(trim(&pool)[..pool.length].into()), Vec::leak(pool.starts.into()));
    for (place, text) in table.iter().copied().chain([""; pool::STRIDE]).enumerate() {
        let found = find(bytes, starts, place).to_string();
        if found != text {
            return Err(format!("`{found}` where `{text}` was put").into());
        }
    }
    Ok(table.len())
}

pub(super) fn register(registry: &mut Registry) {
    oracles! { registry;
        Text::bytes, Bytes::next, Text::len, Text::is_empty => "the text itself" => |bytes, next, len, is_empty|
            as_it_was(|folded, text| {
                let (mut left, mut unfolded) = (bytes(folded), Vec::new());
                while let Some(byte) = next(&mut left) {
                    unfolded.push(byte);
                }
                unfolded == text.as_bytes() && len(folded) == text.len() && is_empty(folded) == text.is_empty()
            });
        Text::pieces => "the text itself" => |pieces| as_it_was(|folded, text| {
            let mut whole = String::new();
            pieces(folded, &mut |piece| whole.push_str(piece));
            whole == text
        });
        Text::is, Text::is_but_for_capitals => "the text itself" => |is, is_but_for_capitals|
            as_it_was(|folded, text| {
                texts().into_iter().all(|(_, other)| {
                    is(folded, other) == (other == text)
                        && is_but_for_capitals(folded, &other.to_ascii_uppercase()) == other.eq_ignore_ascii_case(text)
                })
            });
        <Text as PartialEq>::eq, <Text as PartialEq<str>>::eq, <Text as PartialEq<&str>>::eq => "the text itself" =>
            |text_eq, str_eq, ref_eq| as_it_was(|folded, text| {
                texts().iter().all(|(other, plain)| {
                    [text_eq(&folded, other), str_eq(&folded, plain), ref_eq(&folded, plain)] == [text == *plain; 3]
                })
            });
        Text::fmt => "the text itself" => |_fmt| as_it_was(|folded, text| format!("{folded}") == text);
        Text::of, Folded::of, Folded::size, Folded::write => "the text itself" => |of, fold, size, write|
            as_it_was(|_, text| {
                let (folded, mut bytes) = (fold(text), [0; MOST]);
                let end = write(&folded, &mut bytes, 2);
                end == 2 + size(&folded) && unfolded(of, &bytes[2..end]) == text
            });
        fold::<MOST> => "the text itself" => |fold| as_it_was(|_, text| {
            unfolded(Text::of, &fold(text)[..Folded::of(text).size()]) == text
        });
        Pool::<3>::add, Pool::<3>::trim::<ALL>, pool::find => "the text itself" => |add, trim, find|
            pooled(add, trim, find);
    }
}
