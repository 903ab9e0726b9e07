//! What is known of a cornea before a laser and after it.

pub mod choices;
pub mod limits;
mod rules;
pub mod table;

pub(crate) use rules::RULES;

use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::eye::choices::PreviousSurgery;
use crate::parts::eye::table::entries::PREVIOUS_SURGERY;
use choices::KAfterFrom;
use limits::{K_AFTER_APART, K_AFTER_TODAY};
use ocellus_core::lens::double_k;
use ocellus_core::lens::eye::{Lack, Laser};
use ocellus_core::quantity::CornealPower;
use table::entries::*;
use table::{cautions, items};

/// What a laser changed on this cornea, where one did.
pub(crate) fn after_laser(eye: &Eye) -> Option<Laser> {
    match eye.previous_surgery() {
        PreviousSurgery::MyopicLaser => Some(Laser::Myopic),
        PreviousSurgery::HyperopicLaser => Some(Laser::Hyperopic),
        _ => None,
    }
}

/// The corneal power after a laser, as estimated or as its history says, and whether its history is where it is from; a
/// keratometer's is refused.
pub(crate) fn k_after(eye: &Eye) -> Result<(CornealPower, bool), Lack> {
    let from = eye.get(K_AFTER_FROM).ok_or(Lack::KAfter)?;
    let by_history = from == KAfterFrom::History;
    match (from, eye.get(K_AFTER)) {
        (KAfterFrom::Keratometer, _) => Err(Lack::RawKAfter),
        (_, Some(estimate)) => Ok((estimate, by_history)),
        (KAfterFrom::History, None) => Ok((k_from_history(eye).ok_or(Lack::KAfter)?, by_history)),
        (_, None) => Err(Lack::KAfter),
    }
}

/// The corneal power after a laser that the power before and the refractions say.
fn k_from_history(eye: &Eye) -> Option<CornealPower> {
    let (before, after) = (eye.get(REFRACTION_BEFORE)?, eye.get(REFRACTION_AFTER)?);
    double_k::from_history(eye.get(K_BEFORE)?, before, after, eye.vertex()).ok()
}

/// What is known of the cornea, and what of it does not fit: said with the lens.
#[inline(never)]
pub(crate) fn plan(eye: &Eye, out: &mut Out) {
    let Some(laser) = after_laser(eye) else { return };
    let known = [K_BEFORE.id(), REFRACTION_BEFORE.id(), REFRACTION_AFTER.id(), K_AFTER.id(), K_AFTER_FROM.id()];
    out.show(&known);
    let history = k_from_history(eye);
    if let Some(k) = history {
        out.item(items::K_HISTORY, k.d());
    }
    if eye.get(K_AFTER_FROM) == Some(KAfterFrom::BothSurfaces) {
        out.about(cautions::K_BOTH_SURFACES, K_AFTER);
    }
    // what it did to the cornea, by whatever is known of it
    let became = k_after(eye).ok().map(|(k, _)| k).or(history);
    let flatter = eye.get(K_BEFORE).zip(became).map(|(before, after)| before.d() - after.d());
    if flatter.is_some_and(|by| if laser == Laser::Myopic { by < 0.0 } else { by > 0.0 }) {
        out.about(cautions::LASER_KIND, PREVIOUS_SURGERY);
    }
    if became.is_some_and(|k| (k.d() - eye.cornea().k()).abs() > K_AFTER_TODAY.get()) {
        out.about(cautions::K_AFTER_TODAY, K_AFTER);
    }
    let apart = history.zip(eye.get(K_AFTER)).map(|(history, estimate)| (history.d() - estimate.d()).abs());
    if apart.is_some_and(|apart| apart > K_AFTER_APART.get()) {
        out.about(cautions::K_AFTER_DIFFERS, K_AFTER);
    }
}
