//! Where on the limbus: a site, in degrees from the front, as an anatomical word, or as a clock hour seen from a seat.

use crate::choice::{ClockSeen, Eye, Seat, SiteWord};
use crate::math::{floor, round, within_turn};
use crate::quantity::{ClockHour, Site};

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
    let eighth = round(from_temporal(site.deg(), eye) / 45.0) as usize % SiteWord::WORDS.len();
    SiteWord::WORDS.get(eighth).copied().unwrap_or("")
}

/// The site in the middle of an anatomical word's eighth of the limbus.
///
/// ```
/// use ocellus_core::{astigmatism::site::of_word, choice::{Eye, SiteWord}};
/// assert_eq!(of_word(SiteWord::Temporal, Eye::Right).unwrap().deg(), 180.0);
/// assert_eq!(of_word(SiteWord::Superotemporal, Eye::Left).unwrap().deg(), 45.0);
/// ```
pub fn of_word(word: SiteWord, eye: Eye) -> Option<Site> {
    site(from_temporal(45.0 * word.code(), eye))
}

/// The site at a clock hour, as whoever reads that clock sees the eye.
///
/// ```text
/// t = (90 - 30 h + s) mod 360          s the tilt of the view, see `tilt`
/// ```
///
/// ```
/// use ocellus_core::{astigmatism::site::of_clock, choice::{ClockSeen, Eye}, quantity::ClockHour};
/// let nine = ClockHour::new(9.0)?;
/// assert_eq!(of_clock(nine, ClockSeen::Facing, Eye::Right).unwrap().deg(), 180.0);
/// // from the patient's head the same eye is upside down
/// assert_eq!(of_clock(nine, ClockSeen::Superior, Eye::Right).unwrap().deg(), 0.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn of_clock(hour: ClockHour, seen: ClockSeen, eye: Eye) -> Option<Site> {
    site(90.0 - 30.0 * hour.get() + tilt(seen.seat(), eye))
}

/// The site across the eye from another.
///
/// ```
/// use ocellus_core::{astigmatism::site::opposite, quantity::Site};
/// assert_eq!(opposite(Site::from_deg(200.0)?).deg(), 20.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn opposite(of: Site) -> Site {
    site(of.deg() + 180.0).unwrap_or(of)
}

/// How far the eye is turned for who sits there, degrees: what is seen at an angle lies at that angle plus the tilt.
///
/// ```text
/// facing the patient 0      superior 180      temporal of a right eye -90, of a left eye +90
/// ```
///
/// ```
/// use ocellus_core::{astigmatism::site::tilt, choice::{Eye, Seat}};
/// // at the bottom, 270, a surgeon at the temple sees the temporal limbus
/// assert_eq!(270.0 + tilt(Some(Seat::Temporal), Eye::Right), 180.0);
/// assert_eq!(270.0 + tilt(Some(Seat::Temporal), Eye::Left), 360.0);
/// ```
pub fn tilt(seat: Option<Seat>, eye: Eye) -> f64 {
    match (seat, eye) {
        (None, _) => 0.0,
        (Some(Seat::Superior), _) => 180.0,
        (Some(Seat::Temporal), Eye::Right) => -90.0,
        (Some(Seat::Temporal), Eye::Left) => 90.0,
    }
}

impl ClockSeen {
    /// The seat from which that clock is read; none where one faces the patient.
    pub(crate) fn seat(self) -> Option<Seat> {
        match self {
            ClockSeen::Facing => None,
            ClockSeen::Superior => Some(Seat::Superior),
            ClockSeen::Temporal => Some(Seat::Temporal),
        }
    }
}

/// An angle as a site in [0, 360).
fn site(degrees: f64) -> Option<Site> {
    Site::from_deg(degrees - 360.0 * floor(degrees / 360.0)).ok()
}

/// An angle counted from the temporal side over the superior, in [0, 360), the same for both eyes; and back.
pub(crate) fn from_temporal(degrees: f64, eye: Eye) -> f64 {
    match eye {
        Eye::Left => within_turn(degrees, 360.0),
        Eye::Right => within_turn(540.0 - degrees, 360.0),
    }
}
