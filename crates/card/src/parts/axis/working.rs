//! How the numbers of a toric lens came about.

use super::placed::chosen_lens;
use super::scatter;
use crate::item::Item;
use crate::parts::cornea::table::entries::BACK_FROM;
use crate::parts::cornea::{centroid, cuts, incisions, planned, surfaces, with_back};
use crate::parts::eye::Eye;
use crate::parts::lens::table::items::LENS_POSITION;
use crate::parts::lens::{Answer, Lens};
use crate::sink::Sink;
use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::posterior::BackFrom;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::{cornea, expected, incision, off_axis, posterior, toric};
use ocellus_core::lens::method::Method;
use ocellus_core::quantity::Site;

#[inline(never)]
pub(crate) fn explain(subject: u8, lens: &Lens, sink: &mut dyn Sink) -> bool {
    match subject {
        0 => explain_toric(lens, sink),
        _ => explain_off_axis(sink),
    }
}

fn explain_toric(lens: &Lens, sink: &mut dyn Sink) -> bool {
    let eye = lens.eye;
    let Some(vector) = planned(eye) else { return false };
    front_and_back(eye, sink);
    // SRK II has no lens position and so no part in this
    lens.answers().report(eye, &mut |caution| {
        if caution.method != Some(Method::Srk2) {
            sink.caution(caution);
        }
    });
    let mut any = false;
    for answer in lens.answers().compared() {
        if needed(eye, answer, vector, sink) {
            left(eye, answer, vector, sink);
            any = true;
        }
    }
    any
}

/// The cornea: its back, each incision, and what they are together.
#[inline(never)]
fn front_and_back(eye: &Eye, sink: &mut dyn Sink) {
    let (Some(from), Some(incisions)) = (eye.get(BACK_FROM), incisions(eye)) else { return };
    let Some(front) = cornea::measured(eye.cornea()) else { return };
    match from {
        BackFrom::Measured => surfaces(eye).inspect(|w| w.show(sink)).is_some(),
        _ => posterior::working(front, from).inspect(|w| w.show(sink)).is_some(),
    };
    for (site, flattening) in cuts(eye) {
        incision::working(site, flattening).show(sink);
    }
    if let Some((size, across)) =
        centroid(eye).and_then(|(size, axis)| Some((size, Site::from_deg(axis.deg() + 90.0).ok()?)))
    {
        incision::working(across, size).show(sink);
    }
    if let Some(with_back) = with_back(eye, front, from) {
        cornea::working(eye.cornea(), with_back, incisions).inspect(|w| w.show(sink));
    }
}

/// The cylinder that one method needs at the lens.
#[inline(never)]
fn needed(eye: &Eye, answer: &Answer, vector: PowerVector<Cornea>, sink: &mut dyn Sink) -> bool {
    let Some(thin) = answer.optics.thin_eye() else { return false };
    let Ok(w) = toric::working(&thin, vector.cylinder(), eye.target(), eye.vertex()) else { return false };
    sink.item(Item::of(LENS_POSITION, answer.method, thin.elp));
    w.show(sink);
    true
}

/// What the lens chosen leaves by one method.
#[inline(never)]
fn left(eye: &Eye, answer: &Answer, vector: PowerVector<Cornea>, sink: &mut dyn Sink) {
    let Some((thin, lens)) = chosen_lens(eye, answer) else { return };
    if let Ok(steps) = toric::residual_working(&thin, vector, lens) {
        steps.show(sink);
    }
    if let (Some(scatter), Ok(wanted)) = (scatter::known(eye), toric::at_cornea(&thin, lens)) {
        expected::working(wanted, vector, scatter).show(sink);
    }
}

/// What a lens that was right loses when it is turned: of no case.
fn explain_off_axis(sink: &mut dyn Sink) -> bool {
    for apart in [1.0, 5.0, 10.0, 20.0, 30.0] {
        off_axis::loss(apart).show(sink);
    }
    true
}
