//! The rhexis on the optic.

use super::{CENTRE, legend, picture, value};
use crate::page::Page;
use crate::picked::Picked;
use crate::place::{Place, on_circle};
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_card::{entries, items};
use ocellus_text::{Text, text};

/// Rows from the centre to the edge of the picture.
const EDGE: f64 = 9.5;

pub(super) fn draw(draft: &Draft, picked: &Picked, page: &mut Page) {
    let Some(diameter) = picked.get(items::RHEXIS_TRUE) else {
        return page.line(text!("Nothing to draw: a rhexis needs cut, and to lie on its optic optic and decentred."));
    };
    let (optic, off) = (draft.number(entries::OPTIC), draft.number(entries::DECENTRATION));
    let (radius, shift) = (diameter / 2.0, off.filter(|_| optic.is_some()).unwrap_or(0.0));
    // rows in a millimetre, so that the larger of the two fills the picture
    let rows = EDGE / f64::max(radius + shift, optic.unwrap_or(0.0) / 2.0);
    let centre = Place { column: on_circle(CENTRE, rows * shift, 0.0).column, ..CENTRE };
    picture(
        page,
        &|row| {
            if let Some(optic) = optic {
                row.circle(CENTRE, rows * optic / 2.0, b'o');
                row.put(CENTRE, b'+');
            }
            row.circle(centre, rows * radius, b'*');
        },
        &|row, page| match row {
            2 => value(Some(diameter), text!("*** rhexis "), items::RHEXIS_TRUE, page),
            3 => legend(page, text!("    if the cut is true")),
            5 => entry(optic, text!("ooo optic "), entries::OPTIC.id(), page),
            7 if optic.is_some() => entry(off, text!("    decentred by "), entries::DECENTRATION.id(), page),
            8 if optic.and(off).is_some() => legend(page, text!("    drawn to the right")),
            10 => value(picked.get(items::OVERLAP_WORST), text!("    least overlap "), items::OVERLAP_WORST, page),
            11 => value(picked.get(items::OVERLAP_BEST), text!("    most overlap "), items::OVERLAP_BEST, page),
            _ => {}
        },
    );
}

fn entry(value: Option<f64>, text: Text, of: EntryId, page: &mut Page) {
    if let Some(value) = value {
        legend(page, text);
        page.entry(of, value);
    }
}
