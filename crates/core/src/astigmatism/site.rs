//! Where on the limbus: a site, in degrees from the front, as an anatomical word, or as a clock hour seen from a seat.

use crate::math::{floor, round, within_turn};
use crate::quantity::{ClockHour, Site};

crate::choices! {
    /// Which eye.
    Side {
        /// The patient's right eye.
        Right "right",
        /// The patient's left eye.
        Left "left",
    }
    /// An eighth of the limbus, counted from the temporal side over the superior.
    SiteWord {
        /// Towards the ear.
        Temporal "temporal",
        /// Between ear and brow.
        Superotemporal "superotemporal",
        /// Towards the brow.
        Superior "superior",
        /// Between brow and nose.
        Superonasal "superonasal",
        /// Towards the nose.
        Nasal "nasal",
        /// Between nose and cheek.
        Inferonasal "inferonasal",
        /// Towards the cheek.
        Inferior "inferior",
        /// Between cheek and ear.
        Inferotemporal "inferotemporal",
    }
    /// From where a clock hour was read.
    ClockSeen {
        /// Facing the upright patient.
        Facing "facing",
        /// From the patient's head.
        Superior "superior",
        /// From the patient's temple.
        Temporal "temporal",
    }
    /// Where the surgeon sits.
    Seat {
        /// At the patient's head.
        Superior "superior",
        /// At the patient's temple.
        Temporal "temporal",
    }
}

/// The anatomical word of a site, to the nearest eighth of the limbus.
///
/// Temporal is 180 for a right eye and 0 for a left one, as the eye is seen from the front.
///
/// ```
/// use ocellus_core::{astigmatism::site::{Side, word}, quantity::Site};
/// assert_eq!(word(Site::from_deg(180.0)?, Side::Right), "temporal");
/// assert_eq!(word(Site::from_deg(180.0)?, Side::Left), "nasal");
/// assert_eq!(word(Site::from_deg(135.0)?, Side::Right), "superotemporal");
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn word(site: Site, eye: Side) -> &'static str {
    let eighth = round(from_temporal(site.deg(), eye) / 45.0) as usize % SiteWord::WORDS.len();
    SiteWord::WORDS.get(eighth).copied().unwrap_or("")
}

/// The site in the middle of an anatomical word's eighth of the limbus.
///
/// ```
/// use ocellus_core::{astigmatism::site::{Side, SiteWord, of_word}};
/// assert_eq!(of_word(SiteWord::Temporal, Side::Right).unwrap().deg(), 180.0);
/// assert_eq!(of_word(SiteWord::Superotemporal, Side::Left).unwrap().deg(), 45.0);
/// ```
pub fn of_word(word: SiteWord, eye: Side) -> Option<Site> {
    site(from_temporal(45.0 * word.code(), eye))
}

/// The site at a clock hour, as whoever reads that clock sees the eye.
///
/// ```text
/// t = (90 - 30 h + s) mod 360          s the tilt of the view, see `tilt`
/// ```
///
/// ```
/// use ocellus_core::{astigmatism::site::{ClockSeen, Side, of_clock}, quantity::ClockHour};
/// let nine = ClockHour::new(9.0)?;
/// assert_eq!(of_clock(nine, ClockSeen::Facing, Side::Right).unwrap().deg(), 180.0);
/// // from the patient's head the same eye is upside down
/// assert_eq!(of_clock(nine, ClockSeen::Superior, Side::Right).unwrap().deg(), 0.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn of_clock(hour: ClockHour, seen: ClockSeen, eye: Side) -> Option<Site> {
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
/// use ocellus_core::astigmatism::site::{Seat, Side, tilt};
/// // at the bottom, 270, a surgeon at the temple sees the temporal limbus
/// assert_eq!(270.0 + tilt(Some(Seat::Temporal), Side::Right), 180.0);
/// assert_eq!(270.0 + tilt(Some(Seat::Temporal), Side::Left), 360.0);
/// ```
pub fn tilt(seat: Option<Seat>, eye: Side) -> f64 {
    match (seat, eye) {
        (None, _) => 0.0,
        (Some(Seat::Superior), _) => 180.0,
        (Some(Seat::Temporal), Side::Right) => -90.0,
        (Some(Seat::Temporal), Side::Left) => 90.0,
    }
}

impl ClockSeen {
    /// The seat from which that clock is read; none where one faces the patient.
    fn seat(self) -> Option<Seat> {
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
///
/// ```
/// use ocellus_core::astigmatism::site::{Side, from_temporal};
/// assert_eq!((from_temporal(180.0, Side::Right), from_temporal(180.0, Side::Left)), (0.0, 180.0));
/// ```
pub fn from_temporal(degrees: f64, eye: Side) -> f64 {
    match eye {
        Side::Left => within_turn(degrees, 360.0),
        Side::Right => within_turn(540.0 - degrees, 360.0),
    }
}
