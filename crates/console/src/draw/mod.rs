//! Drawings of characters, at most 21 lines of 72: no number comes from here, see [`crate::place`].

mod dial;
mod rhexis;

use crate::case::case;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::picked::Picked;
use crate::place::{self, Place};
use ocellus_card::draft::Draft;
use ocellus_card::id::{ItemId, PartId};
use ocellus_card::items;
use ocellus_text::{Text, text};

/// Lines of a drawing, and columns of its picture.
const ROWS: i16 = 21;
const COLUMNS: usize = 41;

/// Where the words beside the picture begin.
const LEGEND: usize = 44;

/// The middle of the picture.
const CENTRE: Place = Place { column: 20, row: 10 };

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let Some((_, draw, part)) = DRAWINGS.iter().find(|(word, ..)| rest.eq_ignore_ascii_case(word)) else {
        page.line(text!("draw axis, draw turn, or draw rhexis."));
        return Outcome::Refused;
    };
    if let Some(case) = case(draft, page) {
        let mut found = [None; WANTED.len()];
        let mut picked = Picked::of(&WANTED, &mut found);
        case.plan(&mut picked);
        draw(draft, &picked, page);
        page.text(text!("Read its cautions first: plan "));
        page.text(part.key());
        page.line(".");
    }
    Outcome::Answered
}

type Draw = fn(&Draft, &Picked, &mut Page);

/// Each drawing: its word, and the part of the card that has its cautions.
const DRAWINGS: [(&str, Draw, PartId); 3] = [
    ("axis", dial::axis, items::MARK_AXIS.part()),
    ("turn", dial::turn, items::TURN_TO.part()),
    ("rhexis", rhexis::draw, items::RHEXIS_TRUE.part()),
];

/// The numbers of the card that are drawn.
const WANTED: [ItemId; 11] = [
    items::PLANNED_AXIS,
    items::SITE_DEGREES,
    items::MARK_AXIS,
    items::NOW_CYLINDER,
    items::TURN_TO,
    items::TURN_CLOCK,
    items::TURN_COUNTER,
    items::TURN_LEFT,
    items::RHEXIS_TRUE,
    items::OVERLAP_WORST,
    items::OVERLAP_BEST,
];

/// One line of the picture; what is put into another line is not on it.
struct Row {
    row: i16,
    characters: [u8; COLUMNS],
}

impl Row {
    fn put(&mut self, place: Place, character: u8) {
        let column = usize::try_from(place.column).ok();
        if let Some(slot) = column.filter(|_| place.row == self.row).and_then(|at| self.characters.get_mut(at)) {
            *slot = character;
        }
    }

    /// A word with its middle at a place.
    fn word(&mut self, place: Place, word: &str) {
        let start = place.column - (word.len() / 2) as i16;
        for (column, character) in (start..).zip(word.bytes()) {
            self.put(Place { column, ..place }, character);
        }
    }

    fn line(&mut self, from: Place, to: Place, character: u8) {
        let (right, down) = (to.column - from.column, to.row - from.row);
        let steps = right.abs().max(down.abs());
        let share = |length: i16, step: i16| (2 * length * step + steps).checked_div_euclid(2 * steps).unwrap_or(0);
        for step in 0..=steps {
            self.put(Place { column: from.column + share(right, step), row: from.row + share(down, step) }, character);
        }
    }

    fn circle(&mut self, centre: Place, radius: f64, character: u8) {
        for degrees in 0..120 {
            self.put(place::on_circle(centre, radius, f64::from(3 * degrees)), character);
        }
    }
}

/// Prints a picture line by line, with words beside it.
fn picture(page: &mut Page, paint: &dyn Fn(&mut Row), legend: &dyn Fn(i16, &mut Page)) {
    for row in 0..ROWS {
        let mut line = Row { row, characters: [b' '; COLUMNS] };
        paint(&mut line);
        page.raw(core::str::from_utf8(&line.characters).unwrap_or("").trim_ascii_end());
        legend(row, page);
        page.end();
    }
}

/// A piece of a legend: a sign, and its words.
fn legend(page: &mut Page, text: Text) {
    page.to(LEGEND);
    text.pieces(&mut |piece| page.raw(piece));
}

/// A number as the card prints it.
fn value(number: Option<f64>, text: Text, printed_as: ItemId, page: &mut Page) {
    if let Some(number) = number {
        legend(page, text);
        page.number(number, printed_as.places(), printed_as.signed(), printed_as.unit());
    }
}
