//! What goes in, what comes out, what to know first.

use super::choices::*;
use crate::entry::{GoesOn, misread};
use crate::id::PartId;
use crate::part::PartRows;
use ocellus_core::quantity::*;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(3);

pub(crate) const KEY: &str = "eye";
pub(crate) const HEADING: &str = "Measurements";

entries! {
    ["biometry"]
    AXIAL_LENGTH "axial_length_mm" "al" (AxialLength 2) "axial length";
    K1 "k1_d" "k1" (CornealPower 2) "corneal power 1";
    K1_AXIS "k1_axis_deg" "k1axis" (Axis 0) "axis of meridian 1";
    K2 "k2_d" "k2" (CornealPower 2) "corneal power 2";
    K2_AXIS "k2_axis_deg" "k2axis" (Axis 0) "axis of meridian 2";
    R1 "r1_mm" "r1" (CornealRadius 2) "corneal radius 1";
    R2 "r2_mm" "r2" (CornealRadius 2) "corneal radius 2";
    INDEX "keratometric_index" "index" (KeratometricIndex 4) = 1.3375 "keratometric index";
    K_KIND "k_kind" "kkind" (KKind) "kind of keratometry";
    ACD "acd_mm" "acd" (ChamberDepth 2) "anterior chamber depth";
    ACD_FROM "acd_from" "acdfrom" (AcdFrom) "where the chamber depth starts";
    LENS_THICKNESS "lens_thickness_mm" "lt" (LensThickness 2) "thickness of the natural lens";
    WHITE_TO_WHITE "white_to_white_mm" "wtw" (WhiteToWhite 2) "corneal diameter, white to white";
    CORNEAL_THICKNESS "corneal_thickness_um" "cct" (CornealThickness 0) "central corneal thickness";
    AL_METHOD "al_method" "almethod" (AlMethod) "how the axial length was measured";
    EYE_STATE "eye_state" "state" (EyeState) "what was in the eye when measured";
    PREVIOUS_SURGERY "previous_surgery" "surgery" (PreviousSurgery) "previous corneal surgery";
    BIOMETRY_DATE "biometry_date" "biometry" (date) "date of the biometry";
    QUALITY "biometry_quality" "quality" (Quality) "quality of the biometry";
    CONTACT_LENS "contact_lens" "contacts" (ContactLens) "contact lenses before biometry";
    AL_SCATTER "axial_length_sd_mm" "alsd" (ScatterLength 3) "SD of repeated axial lengths";
    K_SCATTER "k_sd_d" "ksd" (ScatterPower 2) "SD of repeated corneal powers";
    ACD_SCATTER "acd_sd_mm" "acdsd" (ScatterLength 3) "SD of repeated chamber depths";
    ["spectacles"]
    OLD_SPHERE "old_sphere_d" "oldsphere" (Refraction 2) "sphere of the old spectacles";
    OLD_CYLINDER "old_cylinder_d" "oldcyl" (Cylinder 2) "cylinder of the old spectacles";
    OLD_AXIS "old_axis_deg" "oldaxis" (Axis 0) "axis of the old spectacles";
    ["fellow"]
    FELLOW_AXIAL_LENGTH "fellow_axial_length_mm" "fal" (AxialLength 2) "fellow eye, axial length";
    FELLOW_K1 "fellow_k1_d" "fk1" (CornealPower 2) "fellow eye, corneal power 1";
    FELLOW_K2 "fellow_k2_d" "fk2" (CornealPower 2) "fellow eye, corneal power 2";
    FELLOW_REFRACTION "fellow_refraction_d" "frx" (Refraction 2) "fellow eye, refraction today";
    FELLOW_STATE "fellow_state" "fstate" (EyeState) "fellow eye, what is in it";
}

items! {
    MEAN_RADIUS "mean_radius_mm" "mm" 3 plain "radius of the mean corneal power", Identity Two;
    MEAN_K "mean_k_d" "D" 2 plain "mean corneal power at 1.3375", Identity Two;
    FLAT_K "flat_k_d" "D" 2 plain "flat meridian at 1.3375", Identity Two;
    FLAT_AXIS "flat_axis_deg" "deg" 0 plain "its axis", Identity Two;
    STEEP_K "steep_k_d" "D" 2 plain "steep meridian at 1.3375", Identity Two;
    STEEP_AXIS "steep_axis_deg" "deg" 0 plain "its axis", Identity Two;
    ASTIGMATISM "corneal_astigmatism_d" "D" 2 plain "corneal astigmatism at 1.3375", Identity Two;
}

cautions! {
    AL_UNUSUAL "al_unusual" Caution "Measure the axial length again: it is below 21.30 or above 26.60 mm.", Recheck2010 Memory;
    K_UNUSUAL "k_unusual" Caution "Measure the corneal power again: its mean is below 41 or above 47 D.", Recheck2010 Memory;
    ASTIGMATISM_LARGE "astigmatism_large" Caution "Measure again, and look at the whole cornea: its astigmatism is above 2.5 D.", Recheck2010 Memory;
    WTW_UNUSUAL "wtw_unusual" Caution "Measure white to white again: it is below 10.75 or above 13.0 mm.", Recheck2010 Memory;
    AL_BETWEEN_EYES "al_between_eyes" Caution "Measure both axial lengths again: the two eyes differ by more than 0.7 mm.", Recheck2010 Memory;
    AL_BETWEEN_EYES_OLDER "al_between_eyes_older" Note "Look at both axial lengths again: the two eyes differ by more than 0.3 mm, the limit of an older rule.", Recheck2010 Memory;
    K_BETWEEN_EYES "k_between_eyes" Caution "Measure both corneal powers again: the means of the two eyes differ by more than 0.9 D.", Recheck2010 Memory;
    AL_SCATTER "al_scatter" Caution "Measure the axial length again: repeated lengths scatter by more than 0.05 mm.", Recheck2010 Memory;
    K_SCATTER "k_scatter" Caution "Measure the corneal power again: repeated powers scatter by more than 0.5 D.", Recheck2010 Memory;
    ACD_SCATTER "acd_scatter" Caution "Measure the chamber depth again: repeated depths scatter by more than 0.07 mm.", Recheck2010 Memory;
    FELLOW_IDENTICAL "fellow_identical" Caution "Check the printout: is it the other eye's, or another patient's? The two eyes are nearly identical.", WrongLens Chosen;
    AXES_NOT_SQUARE "axes_not_square" Caution "Check both corneal axes: they are more than 5 deg off a right angle. A digit may be wrong, or the cornea irregular.", Here Chosen;
    AXES_SAME "axes_same" Caution "Check both corneal axes: they are nearly the same meridian. One of them was probably typed twice.", Here Chosen;
    AXES_CROSSED "axes_crossed" Caution "Check both corneal axes: they may be crossed. Old spectacles and cornea point across each other.", Here Chosen;
    AXES_UNKNOWN "axes_unknown" Note "Enter the corneal axes if you have them: without them nothing is said about the direction of astigmatism.", Here Chosen;
    NO_ASTIGMATISM "no_astigmatism" Note "Both meridians are equal: there is no astigmatism and so no axis.", Identity Two;
    INDEX_UNUSUAL "index_unusual" Caution "Read the keratometric index off the printout again: it is not 1.3375, 1.332, 1.3315 or 4/3.", NoSource CommonPractice;
    SPECTACLES_DISAGREE "spectacles_disagree" Caution "Check whose printout this is: the old spectacles are more than 4 D from what axial length and cornea suggest. A cataract can shift them by several dioptres, a wrong printout by more.", Here Chosen;
    FELLOW_DISAGREES "fellow_disagrees" Caution "Check the printouts of both eyes: the difference in spectacles is more than 2.5 D from what the difference in length and cornea suggests (about 2.5 D per mm).", NoSource CommonPractice;
    BIOMETRY_OLD "biometry_old" Caution "Measure again: the biometry is more than 180 days older than the operation.", NoSource CommonPractice;
    BIOMETRY_UNDATED "biometry_undated" Note "Enter both dates: biometry or operation has none, and its age is not checked.", Here Chosen;
    QUALITY_REDUCED "quality_reduced" Caution "Repeat the measurement, or measure by another method: the biometer doubted it.", NoSource CommonPractice;
    CONTACT_LENS_WORN "contact_lens_worn" Caution "Measure again once contact lenses were left out as long as local rules ask: the cornea may still be moulded.", NoSource CommonPractice;
    AL_CONTACT "al_contact" Caution "Use constants made for contact ultrasound: those for optical biometry do not fit. The probe can also flatten the eye.", NoSource CommonPractice;
    AL_IMMERSION "al_immersion" Note "Use constants made for immersion ultrasound: the axial length was measured by it.", NoSource CommonPractice;
    NOT_PHAKIC "not_phakic" Caution "Check chamber depth and axial length: the eye held no natural lens when measured, and depth and sound or light path are not those the methods expect.", Here Chosen;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    goes_on: &[
        GoesOn { first: entries::K1.id(), mark: b'@', next: entries::K1_AXIS.id() },
        GoesOn { first: entries::K2.id(), mark: b'@', next: entries::K2_AXIS.id() },
        GoesOn { first: entries::OLD_SPHERE.id(), mark: b'/', next: entries::OLD_CYLINDER.id() },
        GoesOn { first: entries::OLD_CYLINDER.id(), mark: b'@', next: entries::OLD_AXIS.id() },
    ],
    misreads: &[
        misread(entries::K1.id(), 5.0, 14.0, text!("a corneal radius in mm: r1_mm")),
        misread(entries::K2.id(), 5.0, 14.0, text!("a corneal radius in mm: r2_mm")),
        misread(entries::R1.id(), 25.0, 65.0, text!("a corneal power in D: k1_d")),
        misread(entries::R2.id(), 25.0, 65.0, text!("a corneal power in D: k2_d")),
        misread(entries::FELLOW_K1.id(), 5.0, 14.0, text!("a corneal radius in mm")),
        misread(entries::FELLOW_K2.id(), 5.0, 14.0, text!("a corneal radius in mm")),
        misread(
            entries::CORNEAL_THICKNESS.id(),
            0.25,
            1.0,
            text!("millimetres; this entry is in micrometres, as in 541"),
        ),
        misread(entries::AXIAL_LENGTH.id(), 120.0, 400.0, text!("a length without its decimal point, as in 23.5")),
        misread(entries::AXIAL_LENGTH.id(), 1.2, 4.0, text!("centimetres; this entry is in millimetres")),
        misread(entries::ACD.id(), 100.0, 650.0, text!("a depth without its decimal point, as in 3.12")),
        misread(entries::ACD.id(), 1000.0, 6500.0, text!("micrometres; this entry is in millimetres")),
        misread(entries::ACD.id(), 10.0, 40.0, text!("an axial length or a corneal diameter")),
    ],
    ..part_rows!()
};
