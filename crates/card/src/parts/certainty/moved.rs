//! How one method's refraction moves with what was measured, and how far that scatters.

use super::limits::{SD_ACD, SD_AL, SD_K};
use super::table::cautions;
use super::table::entries::*;
use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::eye::choices::AlMethod;
use crate::parts::eye::table::entries::{ACD_SCATTER, AL_METHOD, AL_SCATTER, K_SCATTER};
use crate::parts::laser::after_laser;
use crate::parts::lens::table::entries::LENS_POWER;
use crate::parts::lens::table::items::REFRACTION;
use crate::parts::lens::{Answer, chain, mean_power};
use ocellus_core::lens::certainty::{Scatter, budget};
use ocellus_core::lens::label::tolerance;
use ocellus_core::lens::method::Method;
use ocellus_core::lens::slopes::{Chain, Gradient, Slopes, slopes};
use ocellus_core::quantity::LensPower;

/// How one method's refraction moves with each thing it rests on, and what an interval about it depends on.
#[derive(Clone, Copy)]
pub(super) struct Moved {
    pub(super) method: Method,
    pub(super) rx: f64,
    /// How far that is from the target, D.
    pub(super) off: f64,
    pub(super) slopes: Gradient,
    /// Lens position per unit of the method's own constant, mm.
    pub(super) constant: f64,
    pub(super) tolerance: f64,
    pub(super) in_doubt: bool,
}

impl Moved {
    #[inline(never)]
    pub(super) fn of(eye: &Eye, answer: &Answer) -> Option<Moved> {
        let (method, chain, chosen) = (answer.method, chain(answer.method, eye)?, chosen(eye, answer)?);
        let (rx, slopes) = at(eye, answer, &chain, chosen)?;
        let (slopes, tolerance) = (slopes.gradient(), tolerance(chosen));
        let (off, in_doubt) = (rx - eye.target().d(), answer.in_doubt());
        Some(Moved { method, rx, off, slopes, constant: chain.constant, tolerance, in_doubt })
    }
}

/// The refraction that a lens of this label leaves, and its slopes.
#[inline(never)]
fn at(eye: &Eye, answer: &Answer, chain: &Chain, label: LensPower) -> Option<(f64, Slopes)> {
    let mean = mean_power(eye, answer, label)?;
    let rx = answer.optics.refraction(mean, eye.vertex()).ok()?;
    Some((rx, slopes(&answer.optics.thin_eye()?, chain, mean, eye.vertex()).ok()?))
}

/// The lens chosen; before one is, the exact power.
fn chosen(eye: &Eye, answer: &Answer) -> Option<LensPower> {
    eye.get(LENS_POWER).or_else(|| LensPower::from_d(answer.power).ok())
}

/// What scatters how far: as entered, or as it usually does; a length by ultrasound has no usual scatter here. The label's
/// part is each lens's own.
pub(super) fn scatter(eye: &Eye) -> Option<Scatter> {
    let al = eye.get(AL_SCATTER);
    if al.is_none() && eye.get(AL_METHOD) != Some(AlMethod::Optical) {
        return None;
    }
    Some(Scatter {
        al: al.map_or(SD_AL.get(), |sd| sd.mm()),
        k: eye.get(K_SCATTER).map_or(SD_K.get(), |sd| sd.d()),
        acd: eye.get(ACD_SCATTER).map_or(SD_ACD.get(), |sd| sd.mm()),
        position: eye.get(POSITION_SD)?.mm(),
        label: 0.0,
        refraction: eye.get(REFRACTION_SD)?.d(),
    })
}

/// The slopes of one method's refraction, and its budget.
#[inline(never)]
pub(super) fn show(eye: &Eye, answer: &Answer, out: &mut Out) -> Option<()> {
    let (method, chain, lens) = (answer.method, chain(answer.method, eye)?, chosen(eye, answer)?);
    let (rx, slopes) = at(eye, answer, &chain, lens)?;
    out.of(REFRACTION, rx, method);
    slopes.show(out);
    if answer.in_doubt() {
        out.about_method(cautions::NO_INTERVAL, method);
    }
    if let Some(scatter) = scatter(eye).filter(|_| after_laser(eye).is_none()) {
        budget(&slopes.gradient(), &Scatter { label: tolerance(lens), ..scatter }).show(out);
    }
    Some(())
}
