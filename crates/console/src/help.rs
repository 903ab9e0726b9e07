//! Help, in parts that fit a small screen.

use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::verb::{VERBS, Verb};
use crate::{entry, show, wrong};
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_card::{of_section, sections};
use ocellus_text::Text;
use ocellus_text::text;

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let bare = match rest.as_bytes() {
        [b'[', .., b']'] => rest.get(1..rest.len() - 1).unwrap_or(rest),
        _ => rest,
    };
    let table = sections().find(|table| !table.is_empty() && table.eq_ignore_ascii_case(bare));
    match (VERBS.iter().find(|verb| verb.word.eq_ignore_ascii_case(rest)), entry::named(rest), table) {
        _ if rest.is_empty() => overview(page),
        _ if rest.eq_ignore_ascii_case("entries") => entries(page),
        (Some(verb), ..) => about(verb, page),
        (_, Some(entry), _) => of_entry(draft, entry, page),
        (.., Some(table)) => of_table(table, page),
        _ => {
            let mut nearest = Nearest::to(rest);
            VERBS.iter().for_each(|verb| nearest.offer(verb.word));
            EntryId::all().for_each(|entry| nearest.offer(entry.word()));
            nearest.tell(page, text!("no help for this word"));
            return Outcome::Refused;
        }
    }
    Outcome::Answered
}

const USAGE: usize = 25;

fn usage(word: &str, rest: &str, what: Text, page: &mut Page) {
    page.raw("  ");
    page.text(word);
    page.text(" ");
    page.text(rest);
    page.to(USAGE);
    page.hang();
    page.line(what);
}

fn overview(page: &mut Page) {
    page.line(text!("To enter: a word, a value, and the unit if you like."));
    usage("al", "23.46 mm", text!("axial length; al alone shows it"), page);
    usage("k1", "43.25 @ 95", text!("a power with its axis"), page);
    usage("eye", "left", text!("one of an entry's words"), page);
    page.line(text!("A case file can be pasted whole. # begins a comment."));
    page.line("To ask:");
    VERBS.iter().for_each(|verb| usage(verb.word, verb.usage, verb.what, page));
    page.line(text!("Ctrl-U deletes the line, Ctrl-C cancels it, arrow up brings the last one."));
}

fn entries(page: &mut Page) {
    page.line(text!("The words of every entry; help WORD shows what it takes."));
    for table in sections() {
        page.word(table);
        page.words(of_section(table).map(EntryId::word));
    }
}

fn of_table(table: &str, page: &mut Page) {
    for entry in of_section(table) {
        page.word(entry.word());
        page.text(entry.what());
        page.text(if entry.unit().is_empty() { "" } else { ", in" });
        page.tied(entry.unit());
        page.end();
    }
}

fn about(verb: &Verb, page: &mut Page) {
    page.text(verb.word);
    page.text(" ");
    page.text(verb.usage);
    page.text(": ");
    page.text(verb.what);
    page.text(". ");
    page.text(verb.more);
    match verb.list {
        Some(list) => list(page),
        None => page.end(),
    }
}

fn of_entry(draft: &Draft, entry: EntryId, page: &mut Page) {
    page.text(entry.word());
    page.text(": ");
    page.line(entry.what());
    page.raw("  accepted: ");
    page.hang();
    wrong::accepted(entry, page);
    wrong::why(entry, page);
    page.end();
    page.paragraph("  in a case file: ", entry.key());
    if let Some((mark, next)) = entry.goes_on() {
        page.raw("  may be followed by ");
        page.text(next.what());
        page.text(" after ");
        page.text(core::str::from_utf8(&[mark]).unwrap_or(""));
        page.end();
    }
    show::entry(draft, entry, page);
}
