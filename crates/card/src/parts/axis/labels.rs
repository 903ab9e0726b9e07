//! The cylinder each method needs, and what the labels on either side of it leave.

use super::limits::HAS_DIRECTION;
use super::placed::{Seen, seen};
use super::table::{cautions, items};
use crate::id::ItemId;
use crate::out::Out;
use crate::parts::cornea::table::entries::BACK_FROM;
use crate::parts::general::widened;
use crate::parts::lens::Lens;
use crate::parts::toric::{Label, cylinders};
use ocellus_core::astigmatism::expected::{self, Scatter};
use ocellus_core::astigmatism::on_dial;
use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::posterior::BackFrom;
use ocellus_core::astigmatism::power_vector::{PowerVector, Turn};
use ocellus_core::astigmatism::toric::{Asked, CylinderPlane, asked, at_lens_plane, direction, left, working};
use ocellus_core::constant::posterior::GOGGIN_UP_TO;
use ocellus_core::lens::method::Method;
use ocellus_core::quantity::{Axis, LensCylinder};

/// What is reported of a lens along directions other than the one it was meant for.
type Directions = [(ItemId, PowerVector<Cornea>); TURNS.len()];

/// What is reported of a label: placed as planned, and turned off it by so many degrees.
const TURNS: [(ItemId, Turn); 2] = [(items::RESIDUAL_OFF_5, Turn::BY_5), (items::RESIDUAL_OFF_10, Turn::BY_10)];

#[inline(never)]
pub(super) fn plan(lens: &Lens, label: &Label, vector: PowerVector<Cornea>, scatter: Scatter, out: &mut Out) {
    let eye = lens.eye;
    // without a steep meridian there is nothing to correct and nowhere to put a mark
    let Some(mark) = vector.strongest() else {
        return out.caution(cautions::TORIC_NOT_NEEDED);
    };
    out.meridian(items::MARK_AXIS, Some(mark));
    let (target, vertex) = (eye.target(), eye.vertex());
    let mut at_label = None;
    let mut most_at_lens = 0.0;
    let mut needs = [None; Method::MOST];
    for (Seen { method, thin, .. }, need) in seen(lens).zip(&mut needs) {
        let Ok(w) = working(&thin, vector.cylinder(), target, vertex) else { continue };
        out.of(items::NEEDED_CYLINDER, w.needed, method);
        out.of(items::CYLINDER_RATIO, w.ratio, method);
        *need = Some(w.needed);
        most_at_lens = f64::max(most_at_lens, w.needed);
        at_label = Some(widened(at_label, in_label_plane(label, w.needed, w.n)));
    }
    let Some((least, most)) = at_label else { return };
    if eye.get(BACK_FROM) == Some(BackFrom::Goggin2015) && most_at_lens > GOGGIN_UP_TO.get() {
        out.about(cautions::GOGGIN_BEYOND, BACK_FROM);
    }
    let (mut below, mut above, mut made) = (f64::NEG_INFINITY, f64::INFINITY, None);
    for cylinder in cylinders(eye).map(LensCylinder::d) {
        if cylinder <= least {
            below = f64::max(below, cylinder);
        }
        if cylinder >= most {
            above = f64::min(above, cylinder);
        }
        made = Some(widened(made, cylinder));
    }
    // the same for every label and every method
    let along = direction(mark);
    let turns = TURNS.map(|(what, turn)| (what, along.turned_by(turn)));
    for (row, cylinder) in cylinders(eye).filter(|c| (below..=above).contains(&c.d())).enumerate() {
        out.in_row(items::LABEL_CYLINDER, cylinder.d(), row);
        for (one, needed) in seen(lens).zip(&needs) {
            let mut tell = |what, value| out.of_in_row(what, value, one.method, row);
            let Ok(own) = at_lens_plane(cylinder, label.plane, &one.thin, target, vertex) else { continue };
            if label.plane == CylinderPlane::Cornea {
                tell(items::LENS_PLANE_CYLINDER, own);
            }
            if let Some(needed) = needed {
                tell(items::BEYOND, own - needed);
            }
            if let Ok(asked) = asked(&one.thin, one.lens(label, own, mark).mean, own) {
                one_label(one.thin.kc, vector, scatter, (asked, along, &turns), &mut tell);
            }
        }
    }
    if above.is_finite() {
        out.caution(cautions::OVER_CORRECTS);
    }
    let Some((weakest, strongest)) = made else { return };
    if most < weakest / 2.0 {
        out.caution(cautions::TORIC_NOT_NEEDED);
    }
    if least > strongest {
        out.caution(cautions::BEYOND_LABELS);
    }
}

/// A need in the label's own plane: a label at the cornea is compared with the cornea itself.
fn in_label_plane(label: &Label, at_lens: f64, at_cornea: f64) -> f64 {
    match label.plane {
        CylinderPlane::Lens => at_lens,
        CylinderPlane::Cornea => at_cornea,
    }
}

/// What one label leaves in one method's eye.
// apart, so that its room on the stack is free again for the next
#[inline(never)]
fn one_label(
    kc: f64,
    vector: PowerVector<Cornea>,
    scatter: Scatter,
    (asked, along, turns): (Asked, PowerVector<Cornea>, &Directions),
    tell: &mut dyn FnMut(ItemId, f64),
) {
    let wanted = asked.along(along);
    let aligned = left(kc, vector, wanted);
    let cylinder = aligned.cylinder();
    tell(items::RESIDUAL, cylinder);
    if let Some(axis) = plus_axis(aligned, cylinder) {
        tell(items::RESIDUAL_AXIS, on_dial(axis));
    }
    tell(items::EXPECTED, expected::mean(wanted, vector, scatter));
    for (what, turned) in turns {
        tell(*what, asked.along(*turned).minus(vector).cylinder());
    }
}

/// Axis of a plus cylinder still needed: across the meridian in which most power is missing.
///
/// Too small a cylinder has none.
fn plus_axis(left: PowerVector<Cornea>, cylinder: f64) -> Option<Axis> {
    if cylinder >= HAS_DIRECTION { left.plus_cylinder().axis } else { None }
}
