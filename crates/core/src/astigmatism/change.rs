//! What an operation changed, against what it was meant to change: three vectors, and the indices made of them.
//!
//! Alpins, J Cataract Refract Surg 1993;19:524-533 and 2001;27:31-49; J Refract Surg 2014;30:654-659 (memory, ratios read).

use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::PowerVector;
use crate::astigmatism::short_way;
use crate::math::{atan2_deg, cos_deg, sin_deg};

/// Astigmatisms, strongest along their steep meridian: wanted, made, and what is between them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// Target-induced, TIA: from the astigmatism before to the one wanted.
    pub target: PowerVector<Cornea>,
    /// Surgically induced, SIA: from the astigmatism before to the one that came.
    pub surgical: PowerVector<Cornea>,
    /// The difference, DV: what would still have to be made.
    pub difference: PowerVector<Cornea>,
}

/// The three vectors of a change.
///
/// ```text
/// TIA = target - before          SIA = after - before          DV = TIA - SIA
/// ```
///
/// ```
/// use ocellus_core::astigmatism::{change::change, plane::Cornea, power_vector::PowerVector};
/// use ocellus_core::quantity::Axis;
/// let upright = |d| Axis::from_deg(90.0).map(|a| PowerVector::strongest_along(Cornea, 0.0, d, a));
/// let change = change(upright(2.0)?, upright(0.5)?, upright(0.0)?);
/// assert!((change.surgical.cylinder() - 1.5).abs() < 1e-12 && (change.difference.cylinder() - 0.5).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn change(before: PowerVector<Cornea>, after: PowerVector<Cornea>, target: PowerVector<Cornea>) -> Change {
    let (target, surgical) = (target.minus(before), after.minus(before));
    Change { target, surgical, difference: target.minus(surgical) }
}

working! {
    /// The indices of a change, step by step.
    Indices "Change wanted and change made";
    target "|TIA|" "D" = "TIA = target - before, as vectors" [], "change wanted", Alpins2001 Memory;
    surgical "|SIA|" "D" = "SIA = after - before, as vectors" [], "change made", Alpins2001 Memory;
    difference "|DV|" "D" = "DV = TIA - SIA, as vectors" [], "change still missing", Alpins2001 Memory;
    magnitude_error "ME" "D" = "ME = |SIA| - |TIA|" [], "error of size", Alpins2001 Memory;
    angle_error "AE" "deg" = "AE = axis of SIA - axis of TIA, in (-90, 90], + counter-clockwise" [], "error of angle", Alpins2001 Memory;
    correction "CI" "1" = "CI = |SIA|/|TIA|" [], "correction index", Alpins2001 Read;
    success "IOS" "1" = "IOS = |DV|/|TIA|" [], "index of success", Alpins2001 Read;
    flattening "FE" "D" = "FE = |SIA| cos 2AE" [], "effect along the meridian meant", Alpins2001 Memory;
    torque "torque" "D" = "|SIA| sin 2AE" [], "effect oblique to it", Alpins2001 Memory;
}

impl Change {
    /// The indices; `None` where no change was wanted.
    ///
    /// The correction index is biased upward for a small target: even perfect corrections average above 1.
    ///
    /// ```
    /// use ocellus_core::astigmatism::{change::change, plane::Cornea, power_vector::PowerVector};
    /// use ocellus_core::quantity::Axis;
    /// let upright = |d| Axis::from_deg(90.0).map(|a| PowerVector::strongest_along(Cornea, 0.0, d, a));
    /// let indices = change(upright(2.0)?, upright(0.5)?, upright(0.0)?).indices().unwrap();
    /// assert!((indices.correction - 0.75).abs() < 1e-12 && (indices.magnitude_error + 0.5).abs() < 1e-12);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn indices(&self) -> Option<Indices> {
        let Change { target: t, surgical: s, difference } = self;
        t.strongest()?;
        let (target, surgical, difference) = (t.cylinder(), s.cylinder(), difference.cylinder());
        let angle_error = match s.strongest() {
            Some(_) => short_way(atan2_deg(t.j0 * s.j45 - t.j45 * s.j0, t.j0 * s.j0 + t.j45 * s.j45) / 2.0),
            None => 0.0,
        };
        let twice = 2.0 * angle_error;
        Some(Indices {
            target,
            surgical,
            difference,
            magnitude_error: surgical - target,
            angle_error,
            correction: surgical / target,
            success: difference / target,
            flattening: surgical * cos_deg(twice),
            torque: surgical * sin_deg(twice),
        })
    }
}
