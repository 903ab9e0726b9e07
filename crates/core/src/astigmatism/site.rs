//! Where on the limbus: a site, said with its anatomical word.

use crate::choice::Eye;
use crate::math::{round, within_turn};
use crate::quantity::Site;

/// The anatomical word of a site, to the nearest eighth of the limbus.
///
/// Temporal is 180 for a right eye and 0 for a left one, as the eye is seen from the front.
///
/// ```
/// use ocellus_core::{astigmatism::site::word, choice::Eye, quantity::Site};
/// assert_eq!(word(Site::from_deg(180.0)?, Eye::Right), "temporal");
/// assert_eq!(word(Site::from_deg(180.0)?, Eye::Left), "nasal");
/// assert_eq!(word(Site::from_deg(135.0)?, Eye::Right), "superotemporal");
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn word(site: Site, eye: Eye) -> &'static str {
    const LEFT: [&str; 8] =
        ["temporal", "superotemporal", "superior", "superonasal", "nasal", "inferonasal", "inferior", "inferotemporal"];
    let eighth = round(from_temporal(site, eye) / 45.0) as usize % LEFT.len();
    LEFT.get(eighth).copied().unwrap_or("")
}

/// A site counted from the temporal side over the superior, in [0, 360), the same for both eyes.
pub(crate) fn from_temporal(site: Site, eye: Eye) -> f64 {
    match eye {
        Eye::Left => within_turn(site.deg(), 360.0),
        Eye::Right => within_turn(540.0 - site.deg(), 360.0),
    }
}
