//! How one method's refraction moves with what was measured, and how far that scatters.

use super::limits::{SD_ACD, SD_AL, SD_K};
use super::table::entries::*;
use super::table::{cautions, items};
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
    pub(super) slopes: Gradient,
    pub(super) tolerance: f64,
    pub(super) in_doubt: bool,
}

impl Moved {
    /// Finds it, in its place, and shows what a wrong entry would leave by it.
    #[inline(never)]
    pub(super) fn find(moved: &mut Option<Moved>, eye: &Eye, answer: &Answer, out: &mut Out) -> Option<()> {
        let (method, chain, chosen) = (answer.method, chain(answer.method, eye)?, chosen(eye, answer)?);
        at(eye, answer, &chain, chosen, &mut |rx, slopes| {
            let (slopes, tolerance, in_doubt) = (slopes.gradient(), tolerance(chosen), answer.in_doubt());
            *moved = Some(Moved { method, rx, slopes, tolerance, in_doubt });
        })?;
        errors(moved.as_ref()?, chain.constant, out);
        Some(())
    }
}

/// What would be left if an entry were wrong, the lens chosen by it: plus is hyperopic.
fn errors(moved: &Moved, constant: f64, out: &mut Out) {
    let slopes = &moved.slopes;
    let mut left = |what, value: f64| out.of(what, value, moved.method);
    left(items::ERROR_AL, -0.1 * slopes.al);
    left(items::ERROR_K, -0.5 * slopes.k);
    // only Haigis asks for it
    if slopes.acd != 0.0 {
        left(items::ERROR_ACD, -0.1 * slopes.acd);
    }
    left(items::ERROR_POSITION, 0.5 * slopes.position);
    left(items::ERROR_CONSTANT, -0.1 * constant * slopes.position);
}

/// The refraction that a lens of this label leaves, and its slopes.
#[inline(never)]
fn at(eye: &Eye, answer: &Answer, chain: &Chain, label: LensPower, then: &mut dyn FnMut(f64, &Slopes)) -> Option<()> {
    let mean = mean_power(eye, answer, label)?;
    let rx = answer.optics.refraction(mean, eye.vertex()).ok()?;
    then(rx, &slopes(&answer.optics.thin_eye()?, chain, mean, eye.vertex()).ok()?);
    Some(())
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
    at(eye, answer, &chain, lens, &mut |rx, slopes| {
        out.of(REFRACTION, rx, method);
        slopes.show(out);
        if answer.in_doubt() {
            out.about_method(cautions::NO_INTERVAL, method);
        }
        if let Some(scatter) = scatter(eye).filter(|_| after_laser(eye).is_none()) {
            budget(&slopes.gradient(), &Scatter { label: tolerance(lens), ..scatter }).show(out);
        }
    })
}
