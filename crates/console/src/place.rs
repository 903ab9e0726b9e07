//! Where a character goes. Only here may a number be rough: what comes out is a column and a row, and nothing else.

use micromath::F32Ext;

/// A character's place on the picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Place {
    pub(crate) column: i16,
    pub(crate) row: i16,
}

/// On a circle, counter-clockwise from the right; the radius is in rows, and a column is half as wide as a row is high.
pub(crate) fn on_circle(centre: Place, radius: f64, degrees: f64) -> Place {
    let (radius, angle) = (radius as f32, (degrees as f32).to_radians());
    let whole = |length: f32| F32Ext::round(length) as i16;
    Place {
        column: centre.column.saturating_add(whole(2.0 * radius * F32Ext::cos(angle))),
        row: centre.row.saturating_sub(whole(radius * F32Ext::sin(angle))),
    }
}

/// The column of a value on a lane that begins at zero; what is beyond either end stands at it.
pub(crate) fn along(value: f64, full: f64, columns: usize) -> usize {
    let last = columns.saturating_sub(1);
    let share = (value as f32 / full as f32).clamp(0.0, 1.0);
    (F32Ext::round(share * last as f32) as usize).min(last)
}
