//! A lens by the refraction that an eye has: a second lens, an exchange, an eye without a lens. No axial length is needed.

use crate::constant::optics::N;
use crate::error::Error;
use crate::optics::vergence::{at_cornea, at_lens};
use crate::optics::vertex::{to_cornea, to_spectacles};
use crate::quantity::{LensPower, Refraction, Vertex};

working! {
    /// From a refraction to a lens, step by step.
    Working "The lens by the refraction today";
    k "K" "D" = "K = 1000 (1.3375 - 1)/r; after laser the K after, where an estimate was entered" [], "mean corneal power", Identity Two;
    elp "d" "mm" = "entered; or the method's, less the shift where the lens goes into the sulcus" [], "position of the lens", Holladay1993 Memory;
    rx_now "x" "D" = "entered" [], "refraction today, at the spectacles", Entered Entered;
    rx_wanted "x'" "D" = "entered" [], "refraction wanted, at the spectacles", Entered Entered;
    behind "e" "mm" = "the shift, where a lens in the bag is exchanged for one in the sulcus; else 0" [], "how far behind lies the lens that is taken out", Entered Entered;
    now "f(x)" "D" = "f(x) = 1000*1.336/(1000*1.336/(K + x/(1 - V x/1000)) - (d + e))" [N], "light there that today's refraction needs", Holladay1993 Memory;
    in_place "P0" "D" = "the power of the lens that is taken out; 0 where none is" [], "power there today", Entered Entered;
    needed "X" "D" = "X = f(x) + P0; where e is not 0, X = 1000*1.336/(1000*1.336/(f(x) + P0) + e)" [N], "light that must leave the new lens", Identity Two;
    wanted "f(x')" "D" = "the same as f(x) of the refraction wanted, at d" [], "light at the new lens that the refraction wanted needs", Holladay1993 Memory;
    power "P" "D" = "P = X - f(x')" [], "power of the lens", Holladay1993 Memory;
}

/// The cornea, where the lens goes, and what it replaces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Mean keratometric power at 1.3375, D.
    pub k: f64,
    /// Position of the lens behind the cornea, mm.
    pub elp: f64,
    /// Power of the lens that is taken out, D; 0 where none is.
    pub in_place: f64,
    /// How far behind the new lens the one taken out lay, mm; 0 where the new one takes its place.
    pub behind: f64,
}

impl Place {
    /// Light that today's refraction needs where the lens to be taken out lies, and that which must leave the new one, D.
    fn light(&self, now: Refraction, vertex: Vertex) -> Result<(f64, f64), Error> {
        let there = at_lens(self.k + to_cornea(now.d(), vertex)?, self.elp + self.behind)?;
        let leaving = there + self.in_place;
        if self.behind == 0.0 {
            return Ok((there, leaving));
        }
        let n = 1000.0 * N.get();
        let room = n / leaving + self.behind;
        if leaving > 0.0 && room > 0.0 { Ok((there, n / room)) } else { Err(Error::NoSolution) }
    }
}

/// The lens that takes an eye from one refraction to another.
///
/// ```text
/// f(x) = 1000 n/( 1000 n/(K + x/(1 - V x/1000)) - ELP )         P = f(Rx now) + P0 - f(Rx wanted)
/// where the lens taken out lay e behind the new one             P = 1000 n/(1000 n/(f(Rx now) + P0) + e) - f(Rx wanted)
/// ```
///
/// # Errors
/// As [`at_lens`] and [`to_cornea`].
///
/// Source: Holladay 1993 (memory).
///
/// ```
/// use ocellus_core::{lens::second::*, quantity::*};
/// let place = Place { k: 43.5, elp: 4.5, in_place: 0.0, behind: 0.0 };
/// let w = working(&place, Refraction::from_d(2.0)?, Refraction::from_d(0.0)?, Vertex::from_mm(12.0)?)?;
/// assert!((w.power - 2.84).abs() < 0.01);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(place: &Place, now: Refraction, wanted: Refraction, vertex: Vertex) -> Result<Working, Error> {
    let Place { k, elp, in_place, behind } = *place;
    let (rx_now, rx_wanted) = (now.d(), wanted.d());
    let (now, needed) = place.light(now, vertex)?;
    let wanted = at_lens(k + to_cornea(rx_wanted, vertex)?, elp)?;
    Ok(Working { k, elp, rx_now, rx_wanted, behind, now, in_place, needed, wanted, power: needed - wanted })
}

/// The refraction that such a lens leaves, D.
///
/// ```text
/// f(x') = X - P          X as there, x' by the inverse of f
/// ```
///
/// # Errors
/// As [`working()`].
///
/// ```
/// use ocellus_core::{lens::second::*, quantity::*};
/// let place = Place { k: 43.5, elp: 4.5, in_place: 0.0, behind: 0.0 };
/// let left = refraction(&place, Refraction::from_d(2.0)?, LensPower::from_d(3.0)?, Vertex::from_mm(12.0)?)?;
/// assert!(left < 0.0 && left > -0.25);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn refraction(place: &Place, now: Refraction, lens: LensPower, vertex: Vertex) -> Result<f64, Error> {
    let arriving = place.light(now, vertex)?.1 - lens.d();
    to_spectacles(at_cornea(arriving, place.elp)? - place.k, vertex)
}
