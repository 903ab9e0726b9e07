//! Is this printout to be believed? Every check is a question worth a second look, never a refusal.

use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::choice::{AlMethod, ContactLens, EyeState, PreviousSurgery, Quality};
use crate::constant::eye::*;
use crate::constant::optics::INDEX_1_3375;
use crate::field::Field;
use crate::math::within_turn;

/// Keratometric indices instruments use; the last is 4/3 as it is typed.
const USUAL_INDICES: [f64; 5] = [1.3375, 1.332, 1.3315, 4.0 / 3.0, 1.3333];

/// Reports every check that an eye does not pass.
///
/// The recheck limits of one eye and between eyes are those of Eye 2010;24:894-900 (partly memory); each caution names
/// its own source.
pub fn check(case: &Case, report: &mut dyn FnMut(Caution)) {
    let outside = |value: f64, least: f64, most: f64| value < least || value > most;
    let mut when = |is: bool, code, field| {
        if is {
            report(Caution::about(code, field));
        }
    };
    for (field, least, most, code) in [
        (Field::AxialLength, AL_SHORT.get(), AL_LONG.get(), Code::AlUnusual),
        (Field::WhiteToWhite, WTW_SMALL.get(), WTW_LARGE.get(), Code::WtwUnusual),
        (Field::AlScatter, 0.0, AL_SCATTER.get(), Code::AlScatter),
        (Field::KScatter, 0.0, K_SCATTER.get(), Code::KScatter),
        (Field::AcdScatter, 0.0, ACD_SCATTER.get(), Code::AcdScatter),
    ] {
        when(case.draft().number(field).is_some_and(|number| outside(number, least, most)), code, field);
    }
    when(!usual_index(case), Code::IndexUnusual, Field::Index);
    for (field, word, code) in [
        (Field::Quality, Quality::Reduced.code(), Code::QualityReduced),
        (Field::ContactLens, ContactLens::Worn.code(), Code::ContactLensWorn),
        (Field::AlMethod, AlMethod::Contact.code(), Code::AlContact),
        (Field::AlMethod, AlMethod::Immersion.code(), Code::AlImmersion),
        (Field::EyeState, EyeState::Pseudophakic.code(), Code::NotPhakic),
        (Field::EyeState, EyeState::Aphakic.code(), Code::NotPhakic),
    ] {
        when(case.draft().number(field) == Some(word), code, field);
    }
    // of both meridians, so of neither entry
    if outside(case.cornea.k(), K_FLAT.get(), K_STEEP.get()) {
        report(Caution::general(Code::KUnusual));
    }
    if case.cornea.astigmatism() > CYLINDER_LARGE.get() {
        report(Caution::general(Code::AstigmatismLarge));
    }
    match (case.date(Field::BiometryDate), case.date(Field::SurgeryDate)) {
        (Some(measured), Some(operated)) => {
            let days = f64::from(measured.days_until(operated));
            if days > BIOMETRY_DAYS.get() {
                report(Caution::about(Code::BiometryOld, Field::BiometryDate));
            }
        }
        _ => report(Caution::about(Code::BiometryUndated, Field::BiometryDate)),
    }
    axes(case, report);
    fellow(case, report);
    spectacles(case, report);
}

fn usual_index(case: &Case) -> bool {
    let index = case.draft().number(Field::Index).unwrap_or(INDEX_1_3375.get());
    USUAL_INDICES.iter().any(|usual| (usual - index).abs() < 1e-9)
}

fn axes(case: &Case, report: &mut dyn FnMut(Caution)) {
    let cornea = &case.cornea;
    let code = match cornea.off_square() {
        None => Code::AxesUnknown,
        Some(_) if cornea.astigmatism() == 0.0 => Code::NoAstigmatism,
        Some(off) if off > SAME_AXIS.get() => Code::AxesSame,
        Some(off) if off > OFF_SQUARE.get() => Code::AxesNotSquare,
        Some(_) => return crossed(case, report),
    };
    report(Caution::about(code, Field::K2Axis));
}

/// The plus cylinder of the old spectacles lies along the steep meridian, when both are large enough to have a direction.
fn crossed(case: &Case, report: &mut dyn FnMut(Caution)) {
    let cornea = &case.cornea;
    let Some((cylinder, axis)) = case.old_cylinder() else { return };
    let Some(steep) = cornea.steep_axis() else { return };
    let plus_axis = if cylinder.d() < 0.0 { axis.deg() + 90.0 } else { axis.deg() };
    let apart = within_turn((plus_axis - steep.deg()).abs(), 180.0);
    let large = cylinder.d().abs() >= AXES_COMPARED.get() && cornea.astigmatism() >= AXES_COMPARED.get();
    if large && apart.min(180.0 - apart) > AXES_CROSSED.get() {
        report(Caution::about(Code::AxesCrossed, Field::K1Axis));
    }
}

fn fellow(case: &Case, report: &mut dyn FnMut(Caution)) {
    let al_apart =
        case.fellow_axial_length().zip(case.axial_length).map(|(fellow, own)| (fellow.mm() - own.mm()).abs());
    match al_apart {
        Some(apart) if apart > AL_APART.get() => {
            report(Caution::about(Code::AlBetweenEyes, Field::FellowAxialLength));
        }
        Some(apart) if apart > AL_APART_OLDER.get() => {
            report(Caution::about(Code::AlBetweenEyesOlder, Field::FellowAxialLength));
        }
        _ => {}
    }
    let Some((k1, k2)) = case.fellow_k() else { return };
    if ((k1.d() + k2.d()) / 2.0 - mean_as_entered(case)).abs() > K_APART.get() {
        report(Caution::general(Code::KBetweenEyes));
    }
    let (flat, steep) = (k1.d().min(k2.d()), k1.d().max(k2.d()));
    let (own_flat, own_steep) = as_entered(case);
    let alike = |a: f64, b: f64| (a - b).abs() <= IDENTICAL_K.get() + 1e-9;
    if al_apart.is_some_and(|apart| apart <= IDENTICAL_AL.get() + 1e-9)
        && alike(flat, own_flat)
        && alike(steep, own_steep)
    {
        report(Caution::about(Code::FellowIdentical, Field::FellowAxialLength));
    }
}

/// Flat and steep power at the index of the printout, which is the fellow eye's too.
fn as_entered(case: &Case) -> (f64, f64) {
    let index = case.draft().number(Field::Index).unwrap_or(INDEX_1_3375.get());
    let scale = (index - 1.0) / (INDEX_1_3375.get() - 1.0);
    (case.cornea.flat_k() * scale, case.cornea.steep_k() * scale)
}

fn mean_as_entered(case: &Case) -> f64 {
    let (flat, steep) = as_entered(case);
    (flat + steep) / 2.0
}

/// Old spectacles against length and cornea, and the difference between eyes against theirs.
///
/// ```text
/// expected = -2.5 (AL - 23.43) - (K - 43.9)          D at the spectacles, roughly
/// ```
fn spectacles(case: &Case, report: &mut dyn FnMut(Caution)) {
    let Some(sphere) = case.old_sphere() else { return };
    if case.eye_state != EyeState::Phakic || predict_refused(case) {
        return;
    }
    let worn = sphere.d() + case.old_cylinder().map_or(0.0, |(c, _)| c.d() / 2.0);
    let Some(al) = case.axial_length.map(|al| al.mm()) else { return };
    let k = case.cornea.k();
    let expected = -D_PER_MM.get() * (al - USUAL_AL.get()) - (k - USUAL_K.get());
    if (worn - expected).abs() > SPECTACLES_OFF.get() {
        report(Caution::about(Code::SpectaclesDisagree, Field::OldSphere));
    }
    let fellow_phakic = matches!(case.fellow_state(), None | Some(EyeState::Phakic));
    if let (Some(al2), Some((k1, k2)), Some(refraction), true) =
        (case.fellow_axial_length(), case.fellow_k(), case.fellow_refraction(), fellow_phakic)
    {
        let difference = -D_PER_MM.get() * (al - al2.mm()) - (mean_as_entered(case) - (k1.d() + k2.d()) / 2.0);
        if (worn - refraction.d() - difference).abs() > FELLOW_OFF.get() {
            report(Caution::about(Code::FellowDisagrees, Field::FellowRefraction));
        }
    }
}

/// After corneal surgery, cornea and spectacles no longer belong together.
fn predict_refused(case: &Case) -> bool {
    case.previous_surgery != PreviousSurgery::None || crate::lens::predict::refusals(case).next().is_some()
}
