//! The eye as a dial, from the front: meridians, incision, lens.

use super::place::on_circle;
use super::{CENTRE, Picked, Row, legend, picture};
use crate::head::side;
use crate::page::Page;
use ocellus_core::astigmatism::site;
use ocellus_core::draft::Draft;
use ocellus_core::field::Field;
use ocellus_core::item::What;
use ocellus_core::quantity::Site;

/// Rows from the centre to the limbus, to the numbers around it, and to where the lens begins to be drawn.
const LIMBUS: f64 = 8.0;
const NUMBERS: f64 = 9.5;
const INNER: f64 = 4.0;

/// Every thirty degrees.
const MARKS: [&str; 12] = ["0", "30", "60", "90", "120", "150", "180", "210", "240", "270", "300", "330"];

/// What is drawn, in degrees.
struct Dial {
    /// The steep meridian after the incision.
    steep: Option<f64>,
    /// The mark on the lens: as it was chosen, or where it should be.
    lens: Option<f64>,
    site: Option<f64>,
}

pub(super) fn draw(draft: &Draft, picked: &Picked, page: &mut Page) {
    let dial = Dial {
        steep: picked.get(What::PlannedAxis),
        lens: draft.number(Field::LensAxis).or(picked.get(What::MarkAxis)),
        site: draft.number(Field::IncisionSite),
    };
    if dial.steep.is_none() && dial.site.is_none() {
        return page.line("Nothing to draw: a dial needs site, and for the steep meridian k1axis, k2axis and sia.");
    }
    picture(page, &|row| dial.paint(row), &|row, page| dial.legend(row, draft, page));
}

impl Dial {
    fn paint(&self, row: &mut Row) {
        row.circle(CENTRE, LIMBUS, b'.');
        for (mark, degrees) in MARKS.iter().zip((0u16..).step_by(30)) {
            row.word(on_circle(CENTRE, NUMBERS, f64::from(degrees)), mark);
        }
        for half in [0.0, 180.0] {
            if let Some(steep) = self.steep {
                row.line(CENTRE, on_circle(CENTRE, INNER, steep + half), b':');
            }
            if let Some(lens) = self.lens {
                let (from, to) = (on_circle(CENTRE, INNER, lens + half), on_circle(CENTRE, LIMBUS, lens + half));
                row.line(from, to, b'=');
            }
        }
        row.put(CENTRE, b'+');
        if let Some(site) = self.site {
            row.word(on_circle(CENTRE, LIMBUS, site), "###");
        }
    }

    fn legend(&self, row: i16, draft: &Draft, page: &mut Page) {
        let (eye, side) = side(draft);
        let word = |degrees: f64| Site::from_deg(degrees).map_or("", |place| site::word(place, eye));
        match row {
            0 => {
                legend(page, side);
                page.raw(" EYE from the front,");
            }
            1 => legend(page, "of a patient upright"),
            2 => {
                legend(page, "0 ");
                page.raw(word(0.0));
                page.raw(", 180 ");
                page.raw(word(180.0));
            }
            5 if self.steep.is_some() => legend(page, "::: steep meridian after"),
            6 => value(self.steep, "    the incision ", What::PlannedAxis, page),
            8 if self.lens.is_some() => legend(page, "=== mark on the lens,"),
            9 => match draft.number(Field::LensAxis) {
                Some(_) => value(self.lens, "    as chosen ", What::MarkAxis, page),
                None => value(self.lens, "    where it belongs ", What::MarkAxis, page),
            },
            11 => value(self.site, "### incision ", What::PlannedAxis, page),
            12 => {
                if let Some(site) = self.site {
                    legend(page, "    ");
                    page.raw(word(site));
                }
            }
            _ => {}
        }
    }
}

/// An angle as the card prints it.
fn value(degrees: Option<f64>, text: &str, printed_as: What, page: &mut Page) {
    if let Some(degrees) = degrees {
        legend(page, text);
        page.number(degrees, printed_as.places(), printed_as.signed(), printed_as.unit());
    }
}
