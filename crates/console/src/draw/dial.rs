//! The eye as a dial, as the surgeon sees it from the seat: meridians, incisions, lens.

use super::{CENTRE, Row, legend, picture, value};
use crate::head::{eye, side};
use crate::page::Page;
use crate::picked::Picked;
use crate::place::on_circle;
use ocellus_card::draft::Draft;
use ocellus_card::{entries, items};
use ocellus_core::astigmatism::site;
use ocellus_core::astigmatism::site::{Seat, Side};
use ocellus_core::quantity::Site;
use ocellus_text::{Text, text};

/// Rows from the centre to the limbus, to the numbers around it, and to where the lens begins to be drawn.
const LIMBUS: f64 = 8.0;
const NUMBERS: f64 = 9.5;
const INNER: f64 = 4.0;

/// Every thirty degrees.
const MARKS: [&str; 12] = ["0", "30", "60", "90", "120", "150", "180", "210", "240", "270", "300", "330"];

/// An eye on the page: which, and from where it is seen.
struct View {
    eye: Side,
    seat: Option<Seat>,
}

impl View {
    fn of(draft: &Draft) -> View {
        let seat = match draft.number(entries::SEAT) {
            Some(code) if code == Seat::Superior.code() => Some(Seat::Superior),
            Some(code) if code == Seat::Temporal.code() => Some(Seat::Temporal),
            _ => None,
        };
        View { eye: eye(draft), seat }
    }

    /// Where on the page an angle of the eye is seen.
    fn seen(&self, degrees: f64) -> f64 {
        degrees - site::tilt(self.seat, self.eye)
    }

    /// The limbus, and the degrees around it.
    fn rim(&self, row: &mut Row) {
        row.circle(CENTRE, LIMBUS, b'.');
        for (mark, degrees) in MARKS.iter().zip((0u16..).step_by(30)) {
            row.word(on_circle(CENTRE, NUMBERS, self.seen(f64::from(degrees))), mark);
        }
    }

    /// A meridian from one distance to another, on both sides of the centre.
    fn meridian(&self, row: &mut Row, degrees: Option<f64>, (from, to): (f64, f64), character: u8) {
        let Some(degrees) = degrees else { return };
        for half in [0.0, 180.0] {
            let at = self.seen(degrees + half);
            row.line(on_circle(CENTRE, from, at), on_circle(CENTRE, to, at), character);
        }
    }

    fn word(&self, degrees: f64) -> &'static str {
        Site::from_deg(degrees).map_or("", |place| site::word(place, self.eye))
    }

    /// Who is looking, in the first lines of a legend; the answer is whether the line was one of them.
    fn legend(&self, row: i16, draft: &Draft, page: &mut Page) -> bool {
        match row {
            0 => {
                legend(page, Text::EMPTY);
                page.raw(side(draft));
                page.text(text!(" EYE, as it is seen"));
            }
            1 => legend(
                page,
                match self.seat {
                    None => text!("facing the patient upright"),
                    Some(Seat::Superior) => text!("by a surgeon at the head"),
                    Some(Seat::Temporal) => text!("by a surgeon at the temple"),
                },
            ),
            2 => {
                legend(page, text!("0 "));
                page.raw(self.word(0.0));
                page.raw(", 180 ");
                page.raw(self.word(180.0));
            }
            3 if self.seat.is_some() => legend(page, text!("the surgeon is at the bottom")),
            _ => return false,
        }
        true
    }
}

/// The axis of a toric lens before the operation.
pub(super) fn axis(draft: &Draft, picked: &Picked, page: &mut Page) {
    let view = View::of(draft);
    let steep = picked.get(items::PLANNED_AXIS);
    let chosen = draft.number(entries::LENS_AXIS);
    let lens = chosen.or(picked.get(items::MARK_AXIS));
    let site = draft.number(entries::INCISION_SITE).or(picked.get(items::SITE_DEGREES));
    let other = draft.number(entries::OTHER_SITE);
    let paired = site.filter(|_| draft.has(entries::PAIRED_FLATTENING));
    let pair = paired.and_then(|degrees| Some(site::opposite(Site::from_deg(degrees).ok()?).deg()));
    if steep.is_none() && site.is_none() {
        return page
            .line(text!("Nothing to draw: a dial needs site, and for the steep meridian k1axis, k2axis and sia."));
    }
    picture(
        page,
        &|row| {
            view.rim(row);
            view.meridian(row, steep, (0.0, INNER), b':');
            view.meridian(row, lens, (INNER, LIMBUS), b'=');
            row.put(CENTRE, b'+');
            for site in [site, pair, other].into_iter().flatten() {
                row.word(on_circle(CENTRE, LIMBUS, view.seen(site)), "###");
            }
        },
        &|row, page| match row {
            row if view.legend(row, draft, page) => {}
            5 if steep.is_some() => legend(page, text!("::: steep meridian after")),
            6 => value(steep, text!("    the incision "), items::PLANNED_AXIS, page),
            8 if lens.is_some() => legend(page, text!("=== mark on the lens,")),
            9 if chosen.is_some() => value(lens, text!("    as chosen "), items::MARK_AXIS, page),
            9 => value(lens, text!("    where it belongs "), items::MARK_AXIS, page),
            11 => value(site, text!("### incision "), items::PLANNED_AXIS, page),
            12 => {
                if let Some(site) = site {
                    legend(page, text!("    "));
                    page.raw(view.word(site));
                }
            }
            13 => value(pair, text!("### its pair "), items::PLANNED_AXIS, page),
            14 => value(other, text!("### another cut "), items::PLANNED_AXIS, page),
            _ => {}
        },
    );
}

/// A toric lens that sits wrong, and where it belongs.
pub(super) fn turn(draft: &Draft, picked: &Picked, page: &mut Page) {
    let view = View::of(draft);
    let (Some(from), Some(to)) = (draft.number(entries::MARK_FOUND), picked.get(items::TURN_TO)) else {
        return page
            .line(text!("Nothing to draw: a turn needs markfound, asph, acyl, aaxis, and the toric lens chosen."));
    };
    picture(
        page,
        &|row| {
            view.rim(row);
            view.meridian(row, Some(from), (INNER, LIMBUS), b'=');
            view.meridian(row, Some(to), (INNER, LIMBUS), b'*');
            row.put(CENTRE, b'+');
        },
        &|row, page| match row {
            row if view.legend(row, draft, page) => {}
            5 => value(Some(from), text!("=== FROM "), items::TURN_TO, page),
            6 => legend(page, text!("    where the mark lies now")),
            8 => value(Some(to), text!("*** TO "), items::TURN_TO, page),
            9 => {
                legend(page, text!("    by "));
                page.raw(picked.method(items::TURN_TO).map_or("", |method| method.name()));
            }
            11 => value(picked.get(items::TURN_CLOCK), text!("clockwise by "), items::TURN_CLOCK, page),
            12 => value(picked.get(items::TURN_COUNTER), text!("or counter-clockwise by "), items::TURN_COUNTER, page),
            14 => value(picked.get(items::NOW_CYLINDER), text!("cylinder now "), items::NOW_CYLINDER, page),
            15 => value(picked.get(items::TURN_LEFT), text!("after it     "), items::TURN_LEFT, page),
            _ => {}
        },
    );
}
