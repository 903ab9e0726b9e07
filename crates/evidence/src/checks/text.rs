//! Texts kept folded, against the texts themselves.

use std::fmt::Display;

use ocellus_text::text;
use ocellus_text::{Bytes, Text};

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
        Text::fmt => "the text itself" => |_fmt| as_it_was(|folded, text| format!("{folded}") == text);
    }
}
