//! The cornea after the incision, and the toric lens on it.

use super::entries;
use crate::astigmatism::power_vector::PowerVector;
use crate::astigmatism::toric::{ToricLens, at_lens_plane, residual, working};
use crate::astigmatism::{cornea, toric};
use crate::case::{Case, Toric};
use crate::caution::{Caution, Code};
use crate::choice::CylinderPlane;
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::Method;
use crate::lens::ladder::range;
use crate::lens::predict::Answers;
use crate::lens::vergence::ThinEye;
use crate::quantity::{Axis, LensCylinder};
use crate::sink::Sink;

/// A chosen axis further than this from the best meridian is worth a question, deg.
const OFF_AXIS: f64 = 5.0;

/// One method's eye, and the power the lens is taken to have in it.
#[derive(Clone, Copy)]
struct Seen {
    method: Method,
    eye: ThinEye,
    power: f64,
}

/// The cornea after the incision: its vector, without a mean.
pub(crate) fn planned(case: &Case) -> Option<PowerVector> {
    let measured = cornea::measured(&case.biometry.cornea)?;
    let (site, flattening) = case.incision.effect?;
    Some(measured.plus(cornea::induced(site, flattening)))
}

pub(super) fn plan(case: &Case, answers: &Answers, sink: &mut dyn Sink) {
    sink.part(Part::Axis);
    entries(case, sink, &[Field::IncisionSite, Field::Flattening, Field::LensCylinder, Field::LensAxis]);
    let planned = planned(case);
    if let Some(vector) = planned {
        sink.item(Item::one(What::PlannedAstigmatism, vector.cylinder()));
        if let Some(axis) = vector.strongest() {
            sink.item(Item::one(What::PlannedAxis, axis.deg()));
        }
    }
    let Some(label) = &case.toric else { return };
    entries(case, sink, &[Field::LabelPower, Field::CylinderPlane]);
    let Some(vector) = planned else {
        let axes = case.biometry.cornea.steep_axis().is_some();
        let code = if axes { Code::ToricNeedsIncision } else { Code::ToricNeedsAxes };
        let field = if axes { Field::Flattening } else { Field::K1Axis };
        return sink.caution(Caution::about(code, field));
    };
    sink.caution(Caution::general(Code::PosteriorIgnored));
    if label.plane == CylinderPlane::Cornea {
        sink.caution(Caution::about(Code::CorneaPlaneLabel, Field::CylinderPlane));
    }
    if case.lens.power.is_none() {
        sink.caution(Caution::about(Code::ToricNeedsPower, Field::LensPower));
    }
    let seen = answers.iter().flatten().filter(|a| a.compared && !a.withheld).filter_map(|a| {
        let power = case.lens.power.map_or(a.power, |chosen| chosen.d());
        Some(Seen { method: a.method, eye: a.prediction.thin_eye()?, power })
    });
    labels(case, label, vector, seen.clone(), sink);
    chosen(case, label, vector, seen, sink);
}

/// The cylinder each method needs, and the labels on either side of it.
fn labels(
    case: &Case,
    label: &Toric,
    vector: PowerVector,
    seen: impl Iterator<Item = Seen> + Clone,
    sink: &mut dyn Sink,
) {
    for Seen { method, eye, .. } in seen.clone() {
        if let Ok(w) = working(&eye, vector.cylinder(), case.target, case.vertex) {
            sink.item(Item::of(What::NeededCylinder, method, w.needed));
            sink.item(Item::of(What::CylinderRatio, method, w.ratio));
        }
    }
    let Some(mark) = vector.strongest() else { return };
    sink.item(Item::one(What::MarkAxis, mark.deg()));
    let at_lens = |cylinder: LensCylinder, eye: &ThinEye| {
        at_lens_plane(cylinder, label.plane, eye, case.target, case.vertex).ok()
    };
    // a label is worth showing when for some method it is the next above or below what is needed
    let wanted = |cylinder: LensCylinder| {
        seen.clone().any(|Seen { eye, .. }| {
            let Ok(w) = working(&eye, vector.cylinder(), case.target, case.vertex) else { return false };
            let Some(own) = at_lens(cylinder, &eye) else { return false };
            let between = |c: &LensCylinder| {
                at_lens(*c, &eye)
                    .is_some_and(|other| (own < other && other <= w.needed) || (w.needed <= other && other < own))
            };
            !label.cylinders.iter().flatten().any(between)
        })
    };
    for (row, cylinder) in label.cylinders.iter().flatten().filter(|c| wanted(**c)).enumerate() {
        sink.item(Item::one(What::LabelCylinder, cylinder.d()).in_row(row));
        for Seen { method, eye, power } in seen.clone() {
            let Some(own) = at_lens(*cylinder, &eye) else { continue };
            let lens = ToricLens::labelled(power, label.label_power, own, mark);
            if label.plane == CylinderPlane::Cornea {
                sink.item(Item::of(What::LensPlaneCylinder, method, own).in_row(row));
            }
            let turns = [(What::Residual, 0.0), (What::ResidualOff5, 5.0), (What::ResidualOff10, 10.0)];
            for (what, turn) in turns {
                let Ok(left) = residual(&eye, vector, lens.turned(turn)) else { continue };
                sink.item(Item::of(what, method, left.cylinder()).in_row(row));
                if let (0.0, Some(axis)) = (turn, plus_axis(left)) {
                    sink.item(Item::of(What::ResidualAxis, method, axis.deg()).in_row(row));
                }
            }
        }
    }
    useful(case, label, vector, seen, sink);
}

/// Axis of a plus cylinder still needed: across the meridian in which most power is missing.
fn plus_axis(left: PowerVector) -> Option<Axis> {
    left.minus_cylinder().transposed().axis
}

/// Whether the weakest label is worth having and the strongest is enough.
fn useful(
    case: &Case,
    label: &Toric,
    vector: PowerVector,
    seen: impl Iterator<Item = Seen> + Clone,
    sink: &mut dyn Sink,
) {
    let Some((least, most)) = range(label.cylinders.iter().flatten().map(|c| c.d())) else { return };
    let at_lens = |d: f64, eye: &ThinEye| {
        let cylinder = LensCylinder::from_d(d)?;
        at_lens_plane(cylinder, label.plane, eye, case.target, case.vertex)
    };
    let needed = |eye: &ThinEye| working(eye, vector.cylinder(), case.target, case.vertex).map(|w| w.needed);
    let every = |test: &dyn Fn(f64, &ThinEye) -> bool| {
        let mut eyes = seen.clone().map(|s| s.eye).peekable();
        eyes.peek().is_some() && eyes.all(|eye| needed(&eye).is_ok_and(|needed| test(needed, &eye)))
    };
    if every(&|needed, eye| at_lens(least, eye).is_ok_and(|weakest| needed < weakest / 2.0)) {
        sink.caution(Caution::general(Code::ToricNotNeeded));
    }
    if every(&|needed, eye| at_lens(most, eye).is_ok_and(|strongest| needed > strongest)) {
        sink.caution(Caution::general(Code::BeyondLabels));
    }
}

/// What the lens that was chosen leaves, as it will lie.
fn chosen(case: &Case, label: &Toric, vector: PowerVector, seen: impl Iterator<Item = Seen>, sink: &mut dyn Sink) {
    let Some((cylinder, mark)) = label.chosen else { return };
    for Seen { method, eye, power } in seen {
        let left = at_lens_plane(cylinder, label.plane, &eye, case.target, case.vertex)
            .and_then(|own| toric::residual(&eye, vector, ToricLens::labelled(power, label.label_power, own, mark)));
        let Ok(left) = left else { continue };
        sink.item(Item::of(What::ChosenResidual, method, left.cylinder()));
        if let Some(axis) = plus_axis(left) {
            sink.item(Item::of(What::ChosenResidualAxis, method, axis.deg()));
        }
    }
    if let Some(best) = vector.strongest() {
        let apart = (best.deg() - mark.deg()).abs();
        if apart.min(180.0 - apart) > OFF_AXIS {
            sink.caution(Caution::about(Code::OffAxisChosen, Field::LensAxis));
        }
    }
    if !label.cylinders.iter().flatten().any(|c| *c == cylinder) && label.cylinders.iter().any(Option::is_some) {
        sink.caution(Caution::about(Code::OffLabel, Field::LensCylinder));
    }
}
