//! The right value in the wrong unit: what an out-of-range entry probably is.

use crate::error::{Code, Error};
use crate::field::Field;

/// An entry between these limits looks like something else.
struct Misread {
    field: Field,
    least: f64,
    most: f64,
    looks_like: &'static str,
}

const fn misread(field: Field, least: f64, most: f64, looks_like: &'static str) -> Misread {
    Misread { field, least, most, looks_like }
}

const MISREADS: &[Misread] = &[
    misread(Field::K1, 5.0, 14.0, "a corneal radius in mm: r1_mm"),
    misread(Field::K2, 5.0, 14.0, "a corneal radius in mm: r2_mm"),
    misread(Field::R1, 25.0, 65.0, "a corneal power in D: k1_d"),
    misread(Field::R2, 25.0, 65.0, "a corneal power in D: k2_d"),
    misread(Field::KBefore, 5.0, 14.0, "a corneal radius in mm; this entry is a power"),
    misread(Field::KAfter, 5.0, 14.0, "a corneal radius in mm; this entry is a power"),
    misread(Field::FellowK1, 5.0, 14.0, "a corneal radius in mm"),
    misread(Field::FellowK2, 5.0, 14.0, "a corneal radius in mm"),
    misread(Field::CornealThickness, 0.25, 1.0, "millimetres; this entry is in micrometres, as in 541"),
    misread(Field::AxialLength, 120.0, 400.0, "a length without its decimal point, as in 23.5"),
    misread(Field::AxialLength, 1.2, 4.0, "centimetres; this entry is in millimetres"),
    misread(Field::Acd, 100.0, 650.0, "a depth without its decimal point, as in 3.12"),
    misread(Field::Acd, 1000.0, 6500.0, "micrometres; this entry is in millimetres"),
    misread(Field::Acd, 10.0, 40.0, "an axial length or a corneal diameter"),
    misread(
        Field::LensCylinder,
        -20.0,
        -0.01,
        "a minus cylinder; that of a lens is entered plus, its mark the weak meridian",
    ),
    misread(Field::Flattening, -5.0, -0.01, "a sign; flattening is a size, and is entered without"),
    misread(Field::Centroid, -5.0, -0.01, "a sign; a centroid's size has none, its meridian is the one it steepens"),
    misread(Field::LensAxis, 180.1, 360.0, "a place on the limbus; as a meridian it is 180 less"),
    misread(Field::MarkFound, 180.1, 360.0, "a place on the limbus; as a meridian it is 180 less"),
    misread(Field::AfterAxis, 180.1, 360.0, "a place on the limbus; as a meridian it is 180 less"),
    misread(Field::Altitude, 9000.0, 30000.0, "feet; this entry is in metres"),
];

/// What an out-of-range value of this field looks like.
///
/// ```
/// use ocellus_core::{eye::misread::looks_like, field::Field};
/// assert_eq!(looks_like(Field::R1, 43.0), Some("a corneal power in D: k1_d"));
/// assert_eq!(looks_like(Field::R1, 7.8), None);
/// ```
pub fn looks_like(field: Field, value: f64) -> Option<&'static str> {
    let found = MISREADS.iter().find(|m| m.field == field && m.least <= value && value <= m.most);
    found.map(|m| m.looks_like)
}

/// The error with the more helpful code, where the value looks like another unit.
pub(crate) fn named(error: Error) -> Error {
    match (error.code, error.field, error.value) {
        (Code::OutOfRange, Some(field), Some(value)) if looks_like(field, value).is_some() => {
            Error { code: Code::WrongUnit, ..error }
        }
        _ => error,
    }
}
