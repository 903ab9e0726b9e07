//! Is this printout to be believed? Every check is a question worth a second look, never a refusal.

use super::choices::{AlMethod, ContactLens, EyeState, KKind, PreviousSurgery, Quality};
use super::known::Eye;
use super::limits::*;
use super::table::cautions;
use super::table::entries::*;
use crate::id::EntryId;
use crate::out::Out;
use crate::parts::identity::table::entries::SURGERY_DATE;
use ocellus_core::astigmatism::apart;
use ocellus_core::constant::optics::INDEX_1_3375;
use ocellus_core::quantity::{Axis, CornealPower, Cylinder};

/// Keratometric indices instruments use; the last is 4/3 as it is typed.
const USUAL_INDICES: [f64; 5] = [1.3375, 1.332, 1.3315, 4.0 / 3.0, 1.3333];

/// Tells every check that an eye does not pass.
///
/// The recheck limits of one eye and between eyes are those of Eye 2010;24:894-900 (partly memory); each caution names
/// its own source.
pub(super) fn check(eye: &Eye, out: &mut Out) {
    let outside = |value: f64, least: f64, most: f64| value < least || value > most;
    let mut when = |is: bool, code, entry: EntryId| {
        if is {
            out.about(code, entry);
        }
    };
    let al = eye.axial_length().map(|al| al.mm());
    let wtw = eye.get(WHITE_TO_WHITE).map(|wtw| wtw.mm());
    let scatters = (eye.get(AL_SCATTER), eye.get(K_SCATTER), eye.get(ACD_SCATTER));
    for (value, least, most, code, entry) in [
        (al, AL_SHORT.get(), AL_LONG.get(), cautions::AL_UNUSUAL, AXIAL_LENGTH.id()),
        (wtw, WTW_SMALL.get(), WTW_LARGE.get(), cautions::WTW_UNUSUAL, WHITE_TO_WHITE.id()),
        (scatters.0.map(|sd| sd.mm()), 0.0, AL_SCATTER_MOST.get(), cautions::AL_SCATTER, AL_SCATTER.id()),
        (scatters.1.map(|sd| sd.d()), 0.0, K_SCATTER_MOST.get(), cautions::K_SCATTER, K_SCATTER.id()),
        (scatters.2.map(|sd| sd.mm()), 0.0, ACD_SCATTER_MOST.get(), cautions::ACD_SCATTER, ACD_SCATTER.id()),
    ] {
        when(value.is_some_and(|value| outside(value, least, most)), code, entry);
    }
    when(!usual_index(eye), cautions::INDEX_UNUSUAL, INDEX.id());
    when(eye.get(QUALITY) == Some(Quality::Reduced), cautions::QUALITY_REDUCED, QUALITY.id());
    when(eye.get(CONTACT_LENS) == Some(ContactLens::Worn), cautions::CONTACT_LENS_WORN, CONTACT_LENS.id());
    when(eye.get(AL_METHOD) == Some(AlMethod::Contact), cautions::AL_CONTACT, AL_METHOD.id());
    when(eye.get(AL_METHOD) == Some(AlMethod::Immersion), cautions::AL_IMMERSION, AL_METHOD.id());
    let not_phakic = matches!(eye.state(), EyeState::Pseudophakic | EyeState::Aphakic);
    when(not_phakic, cautions::NOT_PHAKIC, EYE_STATE.id());
    // of both meridians, so of neither entry
    if outside(eye.cornea().k(), K_FLAT.get(), K_STEEP.get()) {
        out.caution(cautions::K_UNUSUAL);
    }
    if eye.cornea().astigmatism() > CYLINDER_LARGE.get() {
        out.caution(cautions::ASTIGMATISM_LARGE);
    }
    match (eye.entered().date(BIOMETRY_DATE), eye.entered().date(SURGERY_DATE)) {
        (Some(measured), Some(operated)) => {
            let days = f64::from(measured.days_until(operated));
            if days > BIOMETRY_DAYS.get() {
                out.about(cautions::BIOMETRY_OLD, BIOMETRY_DATE);
            }
        }
        _ => out.about(cautions::BIOMETRY_UNDATED, BIOMETRY_DATE),
    }
    axes(eye, out);
    fellow(eye, out);
    spectacles(eye, out);
}

/// The index of the printout.
fn index(eye: &Eye) -> f64 {
    eye.get(INDEX).map_or(INDEX_1_3375.get(), |index| index.get())
}

fn usual_index(eye: &Eye) -> bool {
    USUAL_INDICES.iter().any(|usual| (usual - index(eye)).abs() < 1e-9)
}

fn axes(eye: &Eye, out: &mut Out) {
    let cornea = eye.cornea();
    let code = match cornea.off_square() {
        None => cautions::AXES_UNKNOWN,
        Some(_) if cornea.astigmatism() == 0.0 => cautions::NO_ASTIGMATISM,
        Some(off) if off > SAME_AXIS.get() => cautions::AXES_SAME,
        Some(off) if off > OFF_SQUARE.get() => cautions::AXES_NOT_SQUARE,
        Some(_) => return crossed(eye, out),
    };
    out.about(code, K2_AXIS);
}

/// Cylinder of the old spectacles, and its axis.
fn old_cylinder(eye: &Eye) -> Option<(Cylinder, Axis)> {
    eye.get(OLD_CYLINDER).zip(eye.get(OLD_AXIS))
}

/// The plus cylinder of the old spectacles lies along the steep meridian, when both are large enough to have a direction.
fn crossed(eye: &Eye, out: &mut Out) {
    let cornea = eye.cornea();
    let Some((cylinder, axis)) = old_cylinder(eye) else { return };
    let Some(steep) = cornea.steep_axis() else { return };
    let plus_axis = if cylinder.d() < 0.0 { axis.deg() + 90.0 } else { axis.deg() };
    let large = cylinder.d().abs() >= AXES_COMPARED.get() && cornea.astigmatism() >= AXES_COMPARED.get();
    if large && apart(plus_axis, steep.deg()) > AXES_CROSSED.get() {
        out.about(cautions::AXES_CROSSED, K1_AXIS);
    }
}

/// Both corneal powers of the other eye.
fn fellow_k(eye: &Eye) -> Option<(CornealPower, CornealPower)> {
    eye.get(FELLOW_K1).zip(eye.get(FELLOW_K2))
}

fn fellow(eye: &Eye, out: &mut Out) {
    let lengths = eye.get(FELLOW_AXIAL_LENGTH).zip(eye.axial_length());
    let al_apart = lengths.map(|(fellow, own)| (fellow.mm() - own.mm()).abs());
    match al_apart {
        Some(apart) if apart > AL_APART.get() => {
            out.about(cautions::AL_BETWEEN_EYES, FELLOW_AXIAL_LENGTH);
        }
        Some(apart) if apart > AL_APART_OLDER.get() => {
            out.about(cautions::AL_BETWEEN_EYES_OLDER, FELLOW_AXIAL_LENGTH);
        }
        _ => {}
    }
    let Some((k1, k2)) = fellow_k(eye) else { return };
    if ((k1.d() + k2.d()) / 2.0 - mean_as_entered(eye)).abs() > K_APART.get() {
        out.caution(cautions::K_BETWEEN_EYES);
    }
    let (flat, steep) = (k1.d().min(k2.d()), k1.d().max(k2.d()));
    let (own_flat, own_steep) = as_entered(eye);
    let alike = |a: f64, b: f64| (a - b).abs() <= IDENTICAL_K.get() + 1e-9;
    if al_apart.is_some_and(|apart| apart <= IDENTICAL_AL.get() + 1e-9)
        && alike(flat, own_flat)
        && alike(steep, own_steep)
    {
        out.about(cautions::FELLOW_IDENTICAL, FELLOW_AXIAL_LENGTH);
    }
}

/// Flat and steep power at the index of the printout, which is the fellow eye's too.
fn as_entered(eye: &Eye) -> (f64, f64) {
    let scale = (index(eye) - 1.0) / (INDEX_1_3375.get() - 1.0);
    (eye.cornea().flat_k() * scale, eye.cornea().steep_k() * scale)
}

fn mean_as_entered(eye: &Eye) -> f64 {
    let (flat, steep) = as_entered(eye);
    (flat + steep) / 2.0
}

/// Old spectacles against length and cornea, and the difference between eyes against theirs.
///
/// ```text
/// expected = -2.5 (AL - 23.43) - (K - 43.9)          D at the spectacles, roughly
/// ```
fn spectacles(eye: &Eye, out: &mut Out) {
    let Some(sphere) = eye.get(OLD_SPHERE) else { return };
    // after corneal surgery, cornea and spectacles no longer belong together
    let as_born = eye.previous_surgery() == PreviousSurgery::None && eye.k_kind() == KKind::Keratometric;
    if eye.state() != EyeState::Phakic || !as_born {
        return;
    }
    let worn = sphere.d() + old_cylinder(eye).map_or(0.0, |(c, _)| c.d() / 2.0);
    let Some(al) = eye.axial_length().map(|al| al.mm()) else { return };
    let k = eye.cornea().k();
    let expected = -D_PER_MM.get() * (al - USUAL_AL.get()) - (k - USUAL_K.get());
    if (worn - expected).abs() > SPECTACLES_OFF.get() {
        out.about(cautions::SPECTACLES_DISAGREE, OLD_SPHERE);
    }
    let fellow_phakic = matches!(eye.get(FELLOW_STATE), None | Some(EyeState::Phakic));
    if let (Some(al2), Some((k1, k2)), Some(refraction), true) =
        (eye.get(FELLOW_AXIAL_LENGTH), fellow_k(eye), eye.get(FELLOW_REFRACTION), fellow_phakic)
    {
        let difference = -D_PER_MM.get() * (al - al2.mm()) - (mean_as_entered(eye) - (k1.d() + k2.d()) / 2.0);
        if (worn - refraction.d() - difference).abs() > FELLOW_OFF.get() {
            out.about(cautions::FELLOW_DISAGREES, FELLOW_REFRACTION);
        }
    }
}
