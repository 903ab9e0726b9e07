//! Numbers as they are said, heard by another program.

use ocellus_card::words;
use text2num::{Language, replace_numbers_in_text};

use crate::check::{Compared, Registry};
use crate::oracles;

fn heard_as_said(say: fn(f64, u8, &mut dyn FnMut(&'static str))) -> Compared {
    let english = Language::english();
    let mut count = 0;
    for hundredths in -9999..=9999_i32 {
        let (mut spoken, value) = (Vec::new(), f64::from(hundredths) / 100.0);
        say(value, 2, &mut |word| spoken.push(word));
        let (sign, number) = spoken.split_first().ok_or(format!("{value} is not said"))?;
        let heard = replace_numbers_in_text(&number.join(" "), &english, 0.0);
        let expected = ["plus", "minus"][usize::from(hundredths < 0)];
        if *sign != expected || heard != format!("{:.2}", value.abs()) {
            return Err(format!("{value:.2} is said {sign} {}, heard {heard}", number.join(" ")).into());
        }
        count += 1;
    }
    Ok(count)
}

pub(super) fn register(registry: &mut Registry) {
    oracles! { registry;
        words::number => "text2num, listening" => |number| heard_as_said(number);
    }
}
