//! The rhexis on the optic.

use super::place::{Place, on_circle};
use super::{CENTRE, Wanted, legend, picture};
use crate::page::Page;
use ocellus_core::draft::Draft;
use ocellus_core::field::Field;
use ocellus_core::item::What;

/// Rows from the centre to the edge of the picture.
const EDGE: f64 = 9.5;

pub(super) fn draw(draft: &Draft, picked: &Wanted, page: &mut Page) {
    let Some(diameter) = picked.get(What::RhexisTrue) else {
        return page.line("Nothing to draw: a rhexis needs cut, and to lie on its optic optic and decentred.");
    };
    let (optic, off) = (draft.number(Field::Optic), draft.number(Field::Decentration));
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
            2 => item(Some(diameter), "*** rhexis ", What::RhexisTrue, page),
            3 => legend(page, "    if the cut is true"),
            5 => entry(optic, "ooo optic ", Field::Optic, page),
            7 if optic.is_some() => entry(off, "    decentred by ", Field::Decentration, page),
            8 if optic.and(off).is_some() => legend(page, "    drawn to the right"),
            10 => item(picked.get(What::OverlapWorst), "    least overlap ", What::OverlapWorst, page),
            11 => item(picked.get(What::OverlapBest), "    most overlap ", What::OverlapBest, page),
            _ => {}
        },
    );
}

fn item(value: Option<f64>, text: &str, what: What, page: &mut Page) {
    if let Some(value) = value {
        legend(page, text);
        page.number(value, what.places(), what.signed(), what.unit());
    }
}

fn entry(value: Option<f64>, text: &str, field: Field, page: &mut Page) {
    if let Some(value) = value {
        legend(page, text);
        page.field(field, value);
    }
}
