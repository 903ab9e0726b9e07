//! Which method guidance names for which length.

use crate::constant::lens::{GUIDANCE_LONG, GUIDANCE_SHORT};
use crate::lens::method::Method;
use crate::quantity::AxialLength;

/// Method; whether named below 22.00 mm, from there to 26.00, and above.
const NAMED: &[(Method, bool, bool, bool)] =
    &[(Method::Haigis, true, false, true), (Method::HofferQ, true, false, false), (Method::Srkt, false, true, true)];

/// Whether guidance names a method for an axial length.
///
/// Below 22.00 mm Haigis or Hoffer Q; 22.00 to 26.00 SRK/T; above 26.00 Haigis or SRK/T. Source: NICE NG77 (memory).
///
/// ```
/// use ocellus_core::{lens::{guidance::named, method::Method}, quantity::AxialLength};
/// assert!(named(Method::Haigis, AxialLength::from_mm(21.99)?));
/// assert!(!named(Method::Haigis, AxialLength::from_mm(22.0)?));
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn named(method: Method, al: AxialLength) -> bool {
    let found = NAMED.iter().find(|(named, ..)| *named == method);
    found.is_some_and(|(_, short, usual, long)| match al.mm() {
        al if al < GUIDANCE_SHORT.get() => *short,
        al if al > GUIDANCE_LONG.get() => *long,
        _ => *usual,
    })
}
