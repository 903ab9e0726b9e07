//! Help, in parts that fit a small screen.

use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::verb::{VERBS, Verb};
use crate::{card, entry, exercise, explain, show, wrong};
use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Section};
use ocellus_core::pressure::unit::Unit;

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let bare = match rest.as_bytes() {
        [b'[', .., b']'] => rest.get(1..rest.len() - 1).unwrap_or(rest),
        _ => rest,
    };
    let section = Section::tables().find(|section| section.word().eq_ignore_ascii_case(bare));
    match (VERBS.iter().find(|verb| verb.word.eq_ignore_ascii_case(rest)), entry::field(rest), section) {
        _ if rest.is_empty() => overview(page),
        _ if rest.eq_ignore_ascii_case("entries") => entries(page),
        (Some(verb), ..) => about(verb, page),
        (_, Some(field), _) => of_field(draft, field, page),
        (.., Some(section)) => of_section(section, page),
        _ => {
            let mut nearest = Nearest::to(rest);
            VERBS.iter().for_each(|verb| nearest.offer(verb.word));
            Field::ALL.iter().for_each(|field| nearest.offer(field.word()));
            nearest.tell(page, "nothing to tell of this word");
            return Outcome::Refused;
        }
    }
    Outcome::Told
}

const USAGE: usize = 25;

fn usage(word: &str, rest: &str, what: &str, page: &mut Page) {
    page.raw("  ");
    page.text(word);
    page.text(" ");
    page.text(rest);
    page.to(USAGE);
    page.hang();
    page.line(what);
}

fn overview(page: &mut Page) {
    page.line("To enter: a word, a value, and the unit if you like.");
    usage("al", "23.46 mm", "axial length; al alone shows it", page);
    usage("k1", "43.25 @ 95", "a power with its axis", page);
    usage("eye", "left", "one of an entry's words", page);
    page.line("A case file can be pasted whole. # begins a comment.");
    page.line("To ask:");
    VERBS.iter().for_each(|verb| usage(verb.word, verb.usage, verb.what, page));
    page.line("Ctrl-U takes the line back, Ctrl-C gives it up, arrow up brings the last one.");
}

fn entries(page: &mut Page) {
    page.line("The words of every entry; help WORD tells what it takes.");
    for &section in Section::ALL {
        page.word(section.word());
        for field in of(section) {
            page.text(field.word());
            page.text(" ");
        }
        page.end();
    }
}

fn of(section: Section) -> impl Iterator<Item = Field> {
    Field::ALL.iter().copied().filter(move |field| field.section() == section)
}

fn of_section(section: Section, page: &mut Page) {
    for field in of(section) {
        page.word(field.word());
        page.text(field.what());
        page.text(if field.unit().is_empty() { "" } else { ", in" });
        page.tied(field.unit());
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
    match verb.word {
        "plan" => card::parts(page),
        "explain" => explain::subjects(page),
        "exercise" => exercise::questions(page),
        "convert" => {
            for unit in Unit::ALL {
                page.text(" ");
                page.text(unit.word());
            }
            page.end();
        }
        _ => page.end(),
    }
}

fn of_field(draft: &Draft, field: Field, page: &mut Page) {
    page.text(field.word());
    page.text(": ");
    page.line(field.what());
    page.raw("  accepted: ");
    page.hang();
    wrong::accepted(field, page);
    wrong::why(field, page);
    page.end();
    page.paragraph("  in a case file: ", field.key());
    if let Some((mark, next)) = entry::after(field) {
        page.raw("  goes on with ");
        page.text(next.what());
        page.text(" after ");
        page.text(core::str::from_utf8(&[mark]).unwrap_or(""));
        page.end();
    }
    show::entry(draft, field, page);
}
