//! Drawings of characters, at most 21 lines of 72: no number comes from here, see [`place`].

mod dial;
pub(crate) mod place;
mod rhexis;

use self::place::Place;
use crate::case::case;
use crate::outcome::Outcome;
use crate::page::Page;
use ocellus_core::caution::Caution;
use ocellus_core::draft::Draft;
use ocellus_core::item::{Item, Part, What};
use ocellus_core::lens::Method;
use ocellus_core::plan::plan;
use ocellus_core::sink::Sink;

/// Lines of a drawing, and columns of its picture.
const ROWS: i16 = 21;
const COLUMNS: usize = 41;

/// Where the words beside the picture begin.
const LEGEND: usize = 44;

/// The middle of the picture.
const CENTRE: Place = Place { column: 20, row: 10 };

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let Some((_, draw, part)) = DRAWINGS.iter().find(|(word, ..)| rest.eq_ignore_ascii_case(word)) else {
        page.line("draw axis, draw turn, or draw rhexis.");
        return Outcome::Refused;
    };
    if let Some(case) = case(draft, page) {
        let mut picked = Picked([None; WANTED.len()], &WANTED);
        plan(&case, &mut picked);
        draw(draft, &picked, page);
        page.text("Not without its cautions: plan ");
        page.text(part.key());
        page.line(".");
    }
    Outcome::Told
}

type Wanted<'a> = Picked<'a, { WANTED.len() }>;
type Draw = fn(&Draft, &Wanted, &mut Page);

/// Each drawing: its word, and the part of the card that has its cautions.
const DRAWINGS: [(&str, Draw, Part); 3] =
    [("axis", dial::axis, Part::Axis), ("turn", dial::turn, Part::Turn), ("rhexis", rhexis::draw, Part::Rhexis)];

/// The numbers of the card that are drawn.
const WANTED: [What; 11] = [
    What::PlannedAxis,
    What::SiteDegrees,
    What::MarkAxis,
    What::NowCylinder,
    What::TurnTo,
    What::TurnClock,
    What::TurnCounter,
    What::TurnLeft,
    What::RhexisTrue,
    What::OverlapWorst,
    What::OverlapBest,
];

/// The first number of each kind that is wanted, and of which method.
pub(crate) struct Picked<'a, const N: usize>(pub(crate) [Option<(f64, Option<Method>)>; N], pub(crate) &'a [What; N]);

impl<const N: usize> Picked<'_, N> {
    fn found(&self, wanted: What) -> Option<(f64, Option<Method>)> {
        self.1.iter().zip(self.0).find(|(what, _)| **what == wanted).and_then(|(_, found)| found)
    }

    pub(crate) fn get(&self, wanted: What) -> Option<f64> {
        self.found(wanted).map(|(value, _)| value)
    }

    fn method(&self, wanted: What) -> Option<Method> {
        self.found(wanted).and_then(|(_, method)| method)
    }
}

impl<const N: usize> Sink for Picked<'_, N> {
    fn item(&mut self, item: Item) {
        if let Some((_, slot)) = self.1.iter().zip(&mut self.0).find(|(what, _)| **what == item.what) {
            slot.get_or_insert((item.value, item.method));
        }
    }

    fn caution(&mut self, _caution: Caution) {}
}

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
fn legend(page: &mut Page, text: &str) {
    page.to(LEGEND);
    page.raw(text);
}
