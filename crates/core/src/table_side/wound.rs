//! The incision.

use crate::quantity::WoundLength;

/// Length of a tunnel over its width; square, or 1, held best.
///
/// 3.2 mm wide and 2.0 long leaked where 3.2 by 3.2 held (1994;20:626-629, read); others found 2.0 mm enough for 3.0 to
/// 3.5 (1996;22:721-725, read).
///
/// ```
/// use ocellus_core::{quantity::WoundLength, table_side::wound::squareness};
/// assert_eq!(squareness(WoundLength::from_mm(2.0)?, WoundLength::from_mm(3.2)?), 0.625);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn squareness(tunnel: WoundLength, width: WoundLength) -> f64 {
    tunnel.mm() / width.mm()
}
