//! What can be asked: one table.

use crate::around::Around;
use crate::kept::Kept;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::{
    barometer, card, clear, convert, draw, exercise, explain, group, help, identify, nudge, readback, show, strip,
    sweep,
};
use ocellus_core::draft::Draft;

pub(crate) struct Verb {
    pub(crate) word: &'static str,
    /// What may follow the word.
    pub(crate) usage: &'static str,
    /// In a few words.
    pub(crate) what: &'static str,
    /// The rest that there is to know.
    pub(crate) more: &'static str,
    pub(crate) run: Run,
}

/// What a verb works on.
#[derive(Clone, Copy)]
pub(crate) enum Run {
    OfCase(fn(&mut Draft, &str, &mut Page) -> Outcome),
    /// On what is kept beside the case, and on the machine.
    OfAll(fn(&mut Kept, &mut Draft, &dyn Around, &str, &mut Page) -> Outcome),
}

pub(crate) const VERBS: &[Verb] = &[
    Verb {
        word: "show",
        usage: "",
        what: "every entry that was made, and what a case still needs",
        more: "",
        run: Run::OfCase(show::run),
    },
    Verb {
        word: "plan",
        usage: "[PART]",
        what: "the theatre card, or one part of it",
        more: "A part is printed with every caution of the card, but with its own notes only. Parts:",
        run: Run::OfCase(card::run),
    },
    Verb {
        word: "explain",
        usage: "SUBJECT",
        what: "how a number came about, step by step",
        more: "Each step: symbol, value, unit, how well its origin is known. Subjects:",
        run: Run::OfCase(explain::run),
    },
    Verb {
        word: "nudge",
        usage: "WORD CHANGE",
        what: "what would change; the entries stay as they are",
        more: "As in nudge al 0.1, or nudge target -0.25. Each number that would be printed otherwise: old, new, and the change, reckoned from the \
               unrounded numbers.",
        run: Run::OfCase(nudge::run),
    },
    Verb {
        word: "draw",
        usage: "axis|turn|rhexis",
        what: "lens on a dial, as from the seat; rhexis",
        more: "Characters are placed roughly; the numbers beside them are the card's.",
        run: Run::OfCase(draw::run),
    },
    Verb {
        word: "convert",
        usage: "500 mmHg kPa",
        what: "a pressure in another unit, or in all",
        more: "Capitals do not matter. Units:",
        run: Run::OfCase(convert::run),
    },
    Verb {
        word: "sweep",
        usage: "WORD FROM TO",
        what: "one entry changed; chamber and surge: illustration",
        more: "As in sweep nucleus 100 500. The entries stay as they are.",
        run: Run::OfCase(sweep::run),
    },
    Verb {
        word: "strip",
        usage: "[run]",
        what: "a chamber that goes on: an illustration",
        more: "Keys, one each: u and j move the bottle 5 cm up and down, i and k the most vacuum by 25 mmHg, o closes the tip, r opens it, q or Enter ends. \
               strip run closes and opens the tip by itself. By the set-up entered (plan surge), or an invented one.",
        run: Run::OfAll(strip::run),
    },
    Verb {
        word: "exercise",
        usage: "[TOPIC]",
        what: "a question with numbers at random",
        more: "Topics:",
        run: Run::OfAll(exercise::run),
    },
    Verb {
        word: "answer",
        usage: "NUMBER",
        what: "judges it and shows the working",
        more: "Right within 1 %, or 0.02 D.",
        run: Run::OfAll(exercise::answer),
    },
    Verb {
        word: "barometer",
        usage: "[zero|take]",
        what: "the air as a sensor measures it, if there is one",
        more: "barometer zero: later readings are told against this one, as a column on the sensor's tube; barometer take enters it as station.",
        run: Run::OfAll(barometer::run),
    },
    Verb {
        word: "readback",
        usage: "",
        what: "the code that two people compare by voice",
        more: "The first four symbols differ where the entries differ; the last two alone where the programs do.",
        run: Run::OfCase(readback::run),
    },
    Verb {
        word: "identify",
        usage: "",
        what: "the same, over two patient identifiers too",
        more: "They are asked for, covered by that one code, kept nowhere and not brought back by arrow up.",
        run: Run::OfCase(identify::run),
    },
    Verb {
        word: "group",
        usage: "[add|clear]",
        what: "what incisions did in many eyes: centroid, ellipses",
        more: "group add takes in the case's own change of keratometry (k1, k2 and ak1, ak2 with their axes); group tells them together; \
               group clear forgets them. As measured: left eyes are not mirrored.",
        run: Run::OfAll(group::run),
    },
    Verb {
        word: "clear",
        usage: "WORD|all",
        what: "forgets one entry, or every one",
        more: "",
        run: Run::OfCase(clear::run),
    },
    Verb {
        word: "help",
        usage: "[WORD]",
        what: "this; help entries: every word; help al: one of them",
        more: "WORD is an entry, a verb or a table of entries.",
        run: Run::OfCase(help::run),
    },
];
