//! How the numbers of a toric lens came about.

use super::placed::chosen_lens;
use super::scatter;
use crate::out::Out;
use crate::parts::cornea::table::entries::BACK_FROM;
use crate::parts::cornea::{centroid, cuts, incisions, planned, surfaces, with_back};
use crate::parts::eye::Eye;
use crate::parts::lens::table::items::LENS_POSITION;
use crate::parts::lens::{Answer, Lens};
use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::posterior::BackFrom;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::{cornea, expected, incision, off_axis, posterior, toric};
use ocellus_core::lens::method::Method;
use ocellus_core::quantity::Site;

#[inline(never)]
pub(crate) fn explain(subject: u8, lens: &Lens, out: &mut Out) -> bool {
    match subject {
        0 => explain_toric(lens, out),
        _ => explain_off_axis(out),
    }
}

fn explain_toric(lens: &Lens, out: &mut Out) -> bool {
    let eye = lens.eye;
    let Some(vector) = planned(eye) else { return false };
    front_and_back(eye, out);
    // SRK II has no lens position and so no part in this
    lens.answers().report(eye, &mut |caution| {
        if caution.method != Some(Method::Srk2) {
            out.pass(caution);
        }
    });
    let mut any = false;
    for answer in lens.answers().compared() {
        if needed(eye, answer, vector, out) {
            left(eye, answer, vector, out);
            any = true;
        }
    }
    any
}

/// The cornea: its back, each incision, and what they are together.
#[inline(never)]
fn front_and_back(eye: &Eye, out: &mut Out) {
    let (Some(from), Some(incisions)) = (eye.get(BACK_FROM), incisions(eye)) else { return };
    let Some(front) = cornea::measured(eye.cornea()) else { return };
    match from {
        BackFrom::Measured => surfaces(eye).inspect(|w| w.show(out)).is_some(),
        _ => posterior::working(front, from).inspect(|w| w.show(out)).is_some(),
    };
    for (site, flattening) in cuts(eye) {
        incision::working(site, flattening).show(out);
    }
    if let Some((size, across)) =
        centroid(eye).and_then(|(size, axis)| Some((size, Site::from_deg(axis.deg() + 90.0).ok()?)))
    {
        incision::working(across, size).show(out);
    }
    if let Some(with_back) = with_back(eye, front, from) {
        cornea::working(eye.cornea(), with_back, incisions).inspect(|w| w.show(out));
    }
}

/// The cylinder that one method needs at the lens.
#[inline(never)]
fn needed(eye: &Eye, answer: &Answer, vector: PowerVector<Cornea>, out: &mut Out) -> bool {
    let Some(thin) = answer.optics.thin_eye() else { return false };
    let Ok(w) = toric::working(&thin, vector.cylinder(), eye.target(), eye.vertex()) else { return false };
    out.of(LENS_POSITION, thin.elp, answer.method);
    w.show(out);
    true
}

/// What the lens chosen leaves by one method.
#[inline(never)]
fn left(eye: &Eye, answer: &Answer, vector: PowerVector<Cornea>, out: &mut Out) {
    let Some((thin, lens)) = chosen_lens(eye, answer) else { return };
    if let Ok(steps) = toric::residual_working(&thin, vector, lens) {
        steps.show(out);
    }
    if let (Some(scatter), Ok(wanted)) = (scatter::known(eye), toric::at_cornea(&thin, lens)) {
        expected::working(wanted, vector, scatter).show(out);
    }
}

/// What a lens that was right loses when it is turned: of no case.
fn explain_off_axis(out: &mut Out) -> bool {
    for apart in [1.0, 5.0, 10.0, 20.0, 30.0] {
        off_axis::loss(apart).show(out);
    }
    true
}
