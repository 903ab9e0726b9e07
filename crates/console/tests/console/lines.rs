//! The line that is typed: what takes it back, what is dropped, what is refused.

use crate::terminal::{Terminal, bits};
use ocellus_card::entries;
use ocellus_card::entry::Kind;
use ocellus_card::id::EntryId;
use ocellus_console::Console;
use proptest::prelude::*;

fn typed(keys: &[u8]) -> Terminal {
    let mut terminal = Terminal::new();
    terminal.greet();
    keys.iter().for_each(|byte| terminal.byte(*byte, 0));
    terminal
}

fn length(terminal: &Terminal) -> Option<f64> {
    terminal.draft().number(entries::AXIAL_LENGTH)
}

#[test]
fn every_line_end_ends_one_line() {
    for end in ["\r", "\n", "\r\n"] {
        let terminal = typed(format!("al 23.5{end}lt 4.5{end}").as_bytes());
        assert_eq!(length(&terminal), Some(23.5), "{end:?}");
        let prompts = terminal.screen.iter().filter(|line| line.starts_with("ocellus>")).count();
        assert_eq!(prompts, 3, "{end:?}: {:#?}", terminal.screen);
    }
}

#[test]
fn a_line_end_of_two_bytes_at_once_still_confirms() {
    let mut terminal = Terminal::new();
    assert!(terminal.paste(b"al 23.5\r\n").contains("al          23.50 mm"));
}

#[test]
fn keys_take_back() {
    assert_eq!(length(&typed(b"al 23.6\x08\x7f5.5\x085\r")), None, "5.5 with a point taken back is 55");
    assert_eq!(length(&typed(b"al 23.6\x085\r")), Some(23.5));
    assert_eq!(length(&typed(b"al 23.6\x7f5\r")), Some(23.5));
    assert_eq!(length(&typed(b"al 99\x15al 24\r")), Some(24.0));
    let abandoned = typed(b"al 24\x03");
    assert_eq!(length(&abandoned), None);
    assert_eq!(abandoned.screen.last().map(String::as_str), Some("ocellus> "));
    assert_eq!(length(&typed(b"al 24\x03\r")), None);
}

#[test]
fn the_line_before_comes_back() {
    for up in ["\x1b[A", "\x1bOA", "\x10"] {
        let terminal = typed(format!("al 23.4\r{up}\x7f7\r").as_bytes());
        assert_eq!(length(&terminal), Some(23.7), "{up:?}");
        assert_eq!(terminal.screen[terminal.screen.len() - 3], "ocellus> al 23.7");
    }
    // and takes the place of what was typed
    assert_eq!(length(&typed(b"al 23.4\rclear al\rxyz\x10\x15al 2\x10\r")), None);
    let replaced = typed(b"al 23.4\rlt 4\x1b[A");
    assert_eq!(replaced.screen.last().map(|line| line.trim_end()), Some("ocellus> al 23.4"));
    // nothing came before
    assert_eq!(typed(b"\x1b[A").screen.last().map(String::as_str), Some("ocellus> "));
}

#[test]
fn other_sequences_are_swallowed_whole() {
    for sequence in [
        "\x1b[B",
        "\x1b[C",
        "\x1b[D",
        "\x1b[1;5A",
        "\x1b[3~",
        "\x1b[200~",
        "\x1b[[A",
        "\x1bOP",
        "\x1bf",
        "\x1b(B",
        "\x1b[?25h",
        "\x1b]0;title\x07",
        "\x1b]0;title\x1b\\",
        "\x1bPq\x1b\\",
        "\x01",
        "\x0e",
        "\x1a",
        "\x00",
        "\x1b\x1b[B",
    ] {
        let terminal = typed(format!("al 2{sequence}3.5\r").as_bytes());
        assert_eq!(length(&terminal), Some(23.5), "{sequence:?}");
    }
    // a sequence that breaks off silences no line after it
    for broken in ["\x1b[", "\x1b]title", "\x1b", "\x1bO", "\x1b(", "\x1b[1;"] {
        assert_eq!(length(&typed(format!("{broken}\ral 23.5\r").as_bytes())), Some(23.5), "{broken:?}");
    }
}

/// A minus that is not ASCII must not be lost: the target would change its sign.
#[test]
fn what_is_not_ascii_is_refused_not_dropped() {
    for minus in ["\u{2212}", "\u{2013}", "\u{2010}"] {
        let terminal = typed(format!("target {minus}0.50\r").as_bytes());
        assert_eq!(terminal.draft().number(entries::TARGET), None);
    }
    assert_eq!(typed(b"target \x960.50\r").draft().number(entries::TARGET), None);
    assert!(typed("model M\u{fc}ller\r".as_bytes()).draft().name(entries::LENS_MODEL).is_none());
    assert_eq!(length(&typed("al 23.5 # \u{2212} in a comment\r".as_bytes())), Some(23.5));
}

#[test]
fn a_tab_is_a_space() {
    assert_eq!(length(&typed(b"al\t23.5\tmm\r")), Some(23.5));
}

#[test]
fn a_line_too_long_is_refused_whole() {
    let long = format!("al 23.5{}", "0".repeat(90));
    let terminal = typed(format!("{long}\r").as_bytes());
    assert_eq!(length(&terminal), None);
    assert_eq!(terminal.bells, 1);
    assert!(terminal.text().contains("longer than 96 characters: nothing of it was used"));
    // as much as fits is fine, and so is what was taken back
    let full = format!("{:<96}", "al 23.5");
    assert_eq!(length(&typed(format!("{full}\r").as_bytes())), Some(23.5));
    assert_eq!(length(&typed(format!("{full}xy\x7f\x7f\r").as_bytes())), Some(23.5));
    // a comment may have any length
    let comment = typed(format!("al 23.5 # {}\r", "long ".repeat(100)).as_bytes());
    assert_eq!((length(&comment), comment.bells), (Some(23.5), 0));
    let quoted = typed(format!("model \"#{}\r", "x".repeat(100)).as_bytes());
    assert_eq!(quoted.bells, 1, "a # in quotes begins no comment");
}

#[test]
fn a_terminal_that_echoes_is_not_echoed_to() {
    let mut terminal = Terminal::at(Console::without_echo());
    b"al 23.5".iter().for_each(|byte| terminal.byte(*byte, 0));
    assert_eq!(terminal.bytes, 0);
    terminal.byte(b'\n', 0);
    assert_eq!(terminal.text(), "  al          23.50 mm                  axial length\nocellus>\n");
}

fn anything() -> impl Strategy<Value = Vec<u8>> {
    let piece = prop_oneof![
        prop::collection::vec(any::<u8>(), 0..12),
        prop::sample::select(vec![
            "al 23.46",
            "k1 43.25 @ 95",
            "plan",
            "plan lens",
            "show",
            "nudge al 0.1",
            "clear all",
            "identify",
            "readback",
            "explain srkt",
            "draw axis",
            "draw rhexis",
            "help",
            "convert 500 mmHg",
            "eye left",
            "[lens]",
            "\x1b[A",
            "\x1b",
            "# ",
            "\"",
            "=",
            "@",
            "/",
            " ",
            "state phakic",
            "kkind keratometric",
            "almethod optical",
            "surgery none",
            "target -0.5",
            "a 118.9",
            "k2 44 @ 5",
            "\x03",
            "\x15",
            "\x7f",
        ])
        .prop_map(|text| text.as_bytes().to_vec()),
        Just(b"\r".to_vec()),
    ];
    prop::collection::vec(piece, 0..60).prop_map(|pieces| pieces.concat())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    /// Nothing that is typed or pasted stops the conversation, and no answer is wider than the screen.
    #[test]
    fn any_bytes_are_survived(bytes in anything(), paste in any::<bool>()) {
        let mut terminal = Terminal::new();
        terminal.greet();
        if paste {
            terminal.paste(&bytes);
        } else {
            bytes.iter().for_each(|byte| terminal.byte(*byte, 0));
        }
        terminal.byte(0x03, 0);
        let answer = terminal.line("help");
        prop_assert!(answer.contains("To ask:"), "{answer}");
        prop_assert!(answer.lines().all(|line| line.len() <= 80));
        // what was entered lies in its range
        for entry in EntryId::all() {
            if let (Some(value), Kind::Number(_, bounds)) = (terminal.draft().number(entry), entry.kind()) {
                prop_assert!(bounds.check(value).is_ok());
            }
        }
    }

    /// Typing anything and as many backspaces changes nothing.
    #[test]
    fn backspace_takes_back(before in "[ -~]{0,40}", junk in prop::collection::vec(prop_oneof![b' '..=b'~', 0x80..=0xffu8], 0..200)) {
        let mut keys = before.clone().into_bytes();
        keys.extend(&junk);
        keys.extend(std::iter::repeat_n(0x7f, junk.len()));
        keys.push(b'\r');
        let mut plain = before.into_bytes();
        plain.push(b'\r');
        let (with, without) = (typed(&keys), typed(&plain));
        prop_assert_eq!(bits(with.draft()), bits(without.draft()));
        // characters wiped out leave spaces behind
        prop_assert_eq!(with.text(), without.text());
    }
}

/// A million bytes of noise.
#[test]
fn noise_leaves_the_conversation_whole() {
    let mut terminal = Terminal::new();
    terminal.line("al 23.46");
    let mut state = 0x2545_f491_4f6c_dd1d_u64;
    for place in 0..1_000_000u32 {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        terminal.byte((state >> 32) as u8, if place % 1000 < 500 { 200 } else { 0 });
        if place % 4096 == 0 {
            terminal.screen.drain(..terminal.screen.len() - 1);
        }
    }
    terminal.byte(0x03, 0);
    assert!(terminal.line("help").contains("To ask:"));
    assert_eq!(length(&terminal), Some(23.46));
}

/// A paste that ends within a line, whose echo was dropped, shows that line once the paste is over.
#[test]
fn a_line_that_was_not_shown_is_shown_when_it_waits() {
    let mut terminal = Terminal::new();
    terminal.greet();
    let mut paste = b"lt 4.5\n".to_vec();
    paste.extend(b"al 23.4");
    for (place, byte) in paste.iter().enumerate() {
        // hundreds waiting until the last
        terminal.byte(*byte, if place + 1 == paste.len() { 0 } else { 200 });
    }
    assert_eq!(terminal.screen.last().map(String::as_str), Some("ocellus> al 23.4"), "{:#?}", terminal.screen);
    assert!(terminal.line("").contains("2 entries taken."));
    assert_eq!(length(&terminal), Some(23.4));
}
