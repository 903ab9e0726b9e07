//! What can be asked: one table.

use crate::around::Around;
#[cfg(feature = "barometer")]
use crate::barometer;
#[cfg(feature = "convert")]
use crate::convert;
#[cfg(feature = "draw")]
use crate::draw;
#[cfg(feature = "exercise")]
use crate::exercise;
#[cfg(feature = "group")]
use crate::group;
#[cfg(feature = "nudge")]
use crate::nudge;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::session::Session;
#[cfg(feature = "strip")]
use crate::strip;
#[cfg(feature = "sweep")]
use crate::sweep;
use crate::{card, clear, explain, help, identify, readback, show};
use ocellus_card::draft::Draft;
use ocellus_text::Text;
use ocellus_text::text;

pub(crate) struct Verb {
    pub(crate) word: &'static str,
    /// What may follow the word.
    pub(crate) usage: &'static str,
    /// In a few words.
    pub(crate) what: Text,
    /// The rest that there is to know,
    pub(crate) more: Text,
    /// and the words to choose from, where there are any.
    pub(crate) list: Option<fn(&mut Page)>,
    pub(crate) run: Run,
}

/// What a verb works on.
#[derive(Clone, Copy)]
pub(crate) enum Run {
    OfCase(fn(&mut Draft, &str, &mut Page) -> Outcome),
    /// On what is kept beside the case, and on the machine.
    OfAll(fn(&mut Session, &mut Draft, &dyn Around, &str, &mut Page) -> Outcome),
}

pub(crate) const VERBS: &[Verb] = &[
    Verb {
        word: "show",
        usage: "",
        what: text!("every entry that was made, and what a case still needs"),
        more: Text::EMPTY,
        list: None,
        run: Run::OfCase(show::run),
    },
    Verb {
        word: "plan",
        usage: "[PART|short]",
        what: text!("the theatre card, or one part of it"),
        more: text!(
            "A part is printed with every caution of the card, but with its own notes only; short is what is needed at the table. Parts:"
        ),
        list: Some(card::names),
        run: Run::OfCase(card::run),
    },
    Verb {
        word: "explain",
        usage: "SUBJECT",
        what: text!("how a number came about, step by step"),
        more: text!("Each step: symbol, value, unit, how well its origin is known. Subjects:"),
        list: Some(explain::subjects),
        run: Run::OfCase(explain::run),
    },
    #[cfg(feature = "nudge")]
    Verb {
        word: "nudge",
        usage: "WORD CHANGE",
        what: text!("what would change; the entries stay as they are"),
        more: text!(
            "As in nudge al 0.1, or nudge target -0.25. Each number that would be printed differently: old, new, and the change, computed from the \
               unrounded numbers."
        ),
        list: None,
        run: Run::OfCase(nudge::run),
    },
    #[cfg(feature = "draw")]
    Verb {
        word: "draw",
        usage: "axis|turn|rhexis",
        what: text!("lens on a dial, as from the seat; rhexis"),
        more: text!("Characters are placed roughly; the numbers beside them are the card's."),
        list: None,
        run: Run::OfCase(draw::run),
    },
    #[cfg(feature = "convert")]
    Verb {
        word: "convert",
        usage: "500 mmHg kPa",
        what: text!("a pressure in another unit, or in all"),
        more: text!("Capitals do not matter. Units:"),
        list: Some(convert::units),
        run: Run::OfCase(convert::run),
    },
    #[cfg(feature = "sweep")]
    Verb {
        word: "sweep",
        usage: "WORD FROM TO",
        what: text!("one entry changed; chamber and surge: illustration"),
        more: text!("As in sweep nucleus 100 500. The entries stay as they are."),
        list: None,
        run: Run::OfCase(sweep::run),
    },
    #[cfg(feature = "strip")]
    Verb {
        word: "strip",
        usage: "[run]",
        what: text!("a chamber over time: an illustration"),
        more: text!(
            "Keys, one each: u and j move the bottle 5 cm up and down, i and k the most vacuum by 25 mmHg, o closes the tip, r opens it, q or Enter ends. \
               strip run closes and opens the tip by itself. By the set-up entered (plan surge), or an invented one."
        ),
        list: None,
        run: Run::OfAll(strip::run),
    },
    #[cfg(feature = "exercise")]
    Verb {
        word: "exercise",
        usage: "[TOPIC]",
        what: text!("a question with numbers at random"),
        more: text!("Topics:"),
        list: Some(exercise::questions),
        run: Run::OfAll(exercise::run),
    },
    #[cfg(feature = "exercise")]
    Verb {
        word: "answer",
        usage: "NUMBER",
        what: text!("checks it and shows the working"),
        more: text!("Right within 1 %, or 0.02 D."),
        list: None,
        run: Run::OfAll(exercise::answer),
    },
    #[cfg(feature = "barometer")]
    Verb {
        word: "barometer",
        usage: "[zero|take]",
        what: text!("the air as a sensor measures it, if there is one"),
        more: text!(
            "barometer zero: later readings are shown against this one, as a column on the sensor's tube; barometer take enters it as station."
        ),
        list: None,
        run: Run::OfAll(barometer::run),
    },
    Verb {
        word: "readback",
        usage: "",
        what: text!("the code that two people compare by voice"),
        more: text!(
            "The first four symbols differ where the entries differ; the last two alone where the programs do."
        ),
        list: None,
        run: Run::OfCase(readback::run),
    },
    Verb {
        word: "identify",
        usage: "",
        what: text!("the same, over two patient identifiers too"),
        more: text!("They are asked for, covered by that one code, kept nowhere and not brought back by arrow up."),
        list: None,
        run: Run::OfCase(identify::run),
    },
    #[cfg(feature = "group")]
    Verb {
        word: "group",
        usage: "[add|clear]",
        what: text!("what incisions did in many eyes: centroid, ellipses"),
        more: text!(
            "group add takes in the case's own change of keratometry (k1, k2 and ak1, ak2 with their axes); group shows them together; \
               group clear forgets them. As measured: left eyes are not mirrored."
        ),
        list: None,
        run: Run::OfAll(group::run),
    },
    Verb {
        word: "clear",
        usage: "WORD|all",
        what: text!("forgets one entry, or every one"),
        more: Text::EMPTY,
        list: None,
        run: Run::OfCase(clear::run),
    },
    Verb {
        word: "help",
        usage: "[WORD]",
        what: text!("this; help entries: every word; help al: one of them"),
        more: text!("WORD is an entry, a verb or a table of entries."),
        list: None,
        run: Run::OfCase(help::run),
    },
];
