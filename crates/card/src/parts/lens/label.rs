//! Labels: what a model comes in, what the power on a label means, and which one a rule points out.

use super::answers::{Answer, Lens};
use super::table::entries::*;
use super::table::{cautions, items};
use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::toric::Label;
use ocellus_core::astigmatism::toric::{CylinderPlane, ToricLens, at_lens_plane};
use ocellus_core::lens::label::{LabelRule, Labels};
use ocellus_core::quantity::{LensPower, Refraction};

/// The labels that the model comes in.
pub(super) fn labels(eye: &Eye) -> Option<Labels> {
    Some(Labels { step: eye.get(LENS_STEP)?, least: eye.get(LENS_LEAST), most: eye.get(LENS_MOST) })
}

/// The mean power of a lens of this label: a toric label that states its weak meridian lacks half its cylinder.
pub(crate) fn mean_power(eye: &Eye, answer: &Answer, label: LensPower) -> Option<LensPower> {
    mean_of(Label::of(eye), eye, answer, label)
}

fn mean_of(toric: Option<Label>, eye: &Eye, answer: &Answer, label: LensPower) -> Option<LensPower> {
    let chosen = toric.and_then(|toric| Some((toric, toric.chosen?)));
    let Some((toric, (cylinder, mark))) = chosen else { return Some(label) };
    // a method without a lens position can take a cylinder at the lens, but none from the cornea there
    let own = match (toric.plane, answer.optics.thin_eye()) {
        (_, Some(thin)) => at_lens_plane(cylinder, toric.plane, &thin, eye.target(), eye.vertex()).ok()?,
        (CylinderPlane::Lens, None) => cylinder.d(),
        (CylinderPlane::Cornea, None) => return None,
    };
    LensPower::from_d(ToricLens::labelled(label.d(), toric.power, own, mark).mean).ok()
}

/// What a lens of this label leaves, by one method.
pub(crate) fn refraction(eye: &Eye, answer: &Answer, label: LensPower) -> Option<f64> {
    left(Label::of(eye), eye, answer, label)
}

/// The same where the toric label is known.
pub(super) fn left(toric: Option<Label>, eye: &Eye, answer: &Answer, label: LensPower) -> Option<f64> {
    answer.optics.refraction(mean_of(toric, eye, answer, label)?, eye.vertex()).ok()
}

/// What a label leaves out of its lens's mean power, D.
pub(super) fn beyond(eye: &Eye, answer: &Answer) -> Option<f64> {
    let label = LensPower::from_d(answer.power).ok()?;
    Some(mean_power(eye, answer, label)?.d() - label.d())
}

/// The label that the rule points out by each method, where the user has one.
#[inline(never)]
pub(super) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    let (Some(rule), Some(labels)) = (eye.get(LABEL_RULE), labels(eye)) else { return };
    if Label::of(eye).is_some_and(|label| label.is_unsettled()) {
        return out.about(cautions::RULE_NEEDS_CYLINDER, LABEL_RULE);
    }
    for answer in lens.shown() {
        let aim = match rule {
            LabelRule::FirstMyopic => Refraction::from_d(0.0).unwrap_or(eye.target()),
            LabelRule::Nearest => eye.target(),
        };
        let exact = answer.optics.power(aim, eye.vertex()).map(|power| power - beyond(eye, answer).unwrap_or(0.0));
        let left = |label| refraction(eye, answer, label);
        match exact.ok().and_then(|exact| labels.by_rule(rule, eye.target(), exact, left)) {
            Some((label, rx)) => {
                out.of(items::RULE_POWER, label.d(), answer.method);
                out.of(items::RULE_REFRACTION, rx, answer.method);
            }
            None => out.about_method(cautions::RULE_NONE, answer.method),
        }
    }
    out.about(cautions::RULE_USED, LABEL_RULE);
}
