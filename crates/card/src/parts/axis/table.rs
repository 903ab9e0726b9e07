//! What goes in, what comes out, what to know first.

use super::choices::*;
use crate::id::PartId;
use crate::layout::{ByMethod, Led};
use crate::part::PartRows;
use crate::parts::toric::table::entries as toric;
use ocellus_core::astigmatism::toric::CylinderPlane;
use ocellus_core::astigmatism::{expected, off_axis, toric as formulas};
use ocellus_core::quantity::*;
use ocellus_text::Text;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(9);

pub(crate) const KEY: &str = "axis";
pub(crate) const HEADING: &str = "Toric lens";

entries! {
    ["toric"]
    MARKED "axis_marked" "marked" (Marked) "patient, when the axis was marked";
    ["certainty"]
    ASTIGMATISM_SD "astigmatism_sd_d" "cylsd" (ScatterPower 2) = 0.2 "SD, corneal astigmatism, component";
    INCISION_SD "incision_sd_d" "siasd" (ScatterPower 2) = 0.2 "SD, incision's effect, component";
    ALIGNMENT_SD "alignment_sd_deg" "alignsd" (AlignmentScatter 1) "SD of the lens's angle, by placing";
}

items! {
    ALIGNMENT_SD "alignment_sd_taken_deg" "deg" 1 plain "SD of the lens's angle, taken", Marking2011 Chosen;
    NEEDED_CYLINDER "needed_cylinder_d" "D" 2 signed "cylinder needed at lens", Identity Memory;
    CYLINDER_RATIO "cylinder_ratio" "1" 3 plain "lens over corneal cylinder", Identity Memory;
    LABEL_CYLINDER "label_cylinder_d" "D" 2 signed "label cylinder", Entered Entered;
    LENS_PLANE_CYLINDER "lens_plane_cylinder_d" "D" 2 signed "the same at the lens", Identity Memory;
    BEYOND "beyond_need_d" "D" 2 signed "over- or under-correction", Identity Two;
    RESIDUAL "residual_d" "D" 2 signed "left at cornea", Identity Memory;
    RESIDUAL_AXIS "residual_axis_deg" "deg" 0 plain "its plus-cylinder axis", Identity Memory;
    EXPECTED "expected_d" "D" 2 plain "expected, with scatter", Here Chosen;
    RESIDUAL_OFF_5 "residual_5_d" "D" 2 signed "left, turned 5 deg", OffAxis2001 Memory;
    RESIDUAL_OFF_10 "residual_10_d" "D" 2 signed "left, turned 10 deg", OffAxis2001 Memory;
    CHOSEN_RESIDUAL "chosen_residual_d" "D" 2 signed "left by lens chosen", Identity Memory;
    CHOSEN_RESIDUAL_AXIS "chosen_residual_axis_deg" "deg" 0 plain "its plus-cylinder axis", Identity Memory;
    CHOSEN_CORNEA_SPHERE "chosen_cornea_sphere_d" "D" 2 signed "sphere with it", Identity Memory;
    CHOSEN_EXPECTED "chosen_expected_d" "D" 2 plain "expected, with scatter", Here Chosen;
    CHOSEN_SPHERE "chosen_sphere_d" "D" 2 signed "in spectacles, sphere", Identity Memory;
    CHOSEN_CYLINDER "chosen_cylinder_d" "D" 2 signed "minus cylinder", Identity Memory;
    CHOSEN_AXIS "chosen_axis_deg" "deg" 0 plain "its axis", Identity Memory;
    SPHERE_EFFECT "cylinder_per_sphere_d" "D" 3 signed "cylinder per +1 D sphere", Identity Two;
    OFF_BY "off_by_deg" "deg" 0 signed "turned by", Here Chosen;
    OFF_RESIDUAL "off_residual_d" "D" 2 plain "cylinder left, at the cornea", OffAxis2001 Two;
    MARK_AXIS "mark_axis_deg" "deg" 0 plain "meridian for the mark on the lens", Identity Two;
}

cautions! {
    TORIC_NEEDS_AXES "toric_needs_axes" Refuse "Enter both corneal axes: a toric lens needs them.", Identity Two;
    TORIC_NEEDS_INCISION "toric_needs_incision" Refuse "Enter the incision's site and the surgeon's own flattening, or the surgeon's own centroid: a toric lens needs them. 0.00 is an answer, an empty entry is not.", NoSource CommonPractice;
    TORIC_NEEDS_POWER "toric_needs_power" Note "Enter the lens power once it is chosen: until then what a label cylinder leaves is computed for the exact power.", Here Chosen;
    CORNEA_PLANE_LABEL "cornea_plane_label" Caution "Compare with the maker's own conversion, which may differ: the label cylinder at the cornea is taken to the lens at each method's own lens position.", Here Chosen;
    TORIC_AFTER_LASER "toric_after_laser" Caution "Look at a map of the cornea first: after laser the measured cylinder and its axis need not be those at the middle of the pupil, and the back of the cornea weighs more.", NoSource CommonPractice;
    POSTERIOR_IGNORED "posterior_ignored" Caution "Allow for the back of the cornea (posterior_from): it is not included. On average the corneal cylinder came out 0.5 to 0.6 D too large with the rule, 0.2 to 0.3 D too small against it.", PosteriorCornea2013 Read;
    GOGGIN_BEYOND "goggin_beyond" Caution "Do not rely on this correction here: it was published for lens cylinders up to 2 D, and a method compared needs more.", Goggin2015 Read;
    RESIDUAL_LARGE "residual_large" Caution "Check the toric lens chosen: by a method compared it leaves more than 0.5 D of cylinder. Below that, sight was not degraded in most.", SmallCylinder2014 Read;
    RESIDUAL_NOMINAL "residual_nominal" Note "Do not promise what is left: it is nominal, at the cornea, as the plus cylinder still needed. Expected is its mean size with the scatter shown.", Marking2011 Read;
    MARKED_UNKNOWN "marked_unknown" Note "Enter how the axis was marked (axis_marked): the turn of the eye lying down (+1.43 +/- 3.41 deg) is not in what is expected.", LyingDown2015 Read;
    MARKED_LYING "marked_lying" Caution "Mark the axis with the patient upright: lying down, eyes turn by +1.43 +/- 3.41 deg, some by far more. That turn is in what is expected; a mark made upright takes it out.", LyingDown2015 Read;
    AXIS_ACROSS "axis_across" Caution "Check the meridian chosen: it lies more than 45 deg from the best, where the lens adds to the astigmatism. Was the flat meridian entered for the steep one, or were the axes of K exchanged?", Identity Two;
    OVER_CORRECTS "over_corrects" Note "The surgeon chooses which to leave: a label cylinder beyond what is needed turns the axis of what is left by 90 deg, from with the rule to against it, or the other way.", Identity Two;
    TORIC_NOT_NEEDED "toric_not_needed" Note "Compare with a lens without cylinder: the weakest label cylinder leaves more than none would.", Identity Two;
    BEYOND_LABELS "beyond_labels" Caution "Compare with another model: more cylinder is needed than this one's strongest.", Identity Two;
    OFF_AXIS_CHOSEN "off_axis_chosen" Caution "Check the axis chosen: it is more than 5 deg from the meridian that leaves least.", Here Chosen;
}

sign_offs! {
    MARKS "marks" "Axis marks were made with the patient upright";
}

pub(crate) const ROWS: PartRows = PartRows {
    first: &[cautions::POSTERIOR_IGNORED],
    by_method: &[
        ByMethod::of(columns! {
            items::NEEDED_CYLINDER => "cylinder" "at the lens";
            items::CYLINDER_RATIO => "over the" "cornea's";
        }),
        ByMethod {
            leader: Some((items::LABEL_CYLINDER, toric::LENS_CYLINDER.id())),
            ..ByMethod::of(columns! {
                items::RESIDUAL => "left at" "cornea";
                items::RESIDUAL_AXIS => "its plus" "axis";
                items::EXPECTED => "expected" "in all";
                items::RESIDUAL_OFF_5 => "turned" "5 deg";
                items::RESIDUAL_OFF_10 => "turned" "10 deg";
                items::BEYOND => "beyond" "the need";
                items::LENS_PLANE_CYLINDER => "label at" "the lens"
                    if toric::CYLINDER_PLANE.id() => CylinderPlane::Cornea;
            })
        },
        ByMethod {
            title: Some(&(text!("lens chosen, cylinder"), toric::LENS_CYLINDER.id())),
            ..ByMethod::of(columns! {
                items::CHOSEN_RESIDUAL => "left by" "lens chosen";
                items::CHOSEN_RESIDUAL_AXIS => "its plus-" "cyl. axis";
                items::CHOSEN_CORNEA_SPHERE => "sphere" "beside it";
                items::CHOSEN_EXPECTED => "expected" "in all";
            })
        },
        ByMethod::of(columns! {
            items::CHOSEN_SPHERE => "spectacles," "sphere";
            items::CHOSEN_CYLINDER => "minus" "cylinder";
            items::CHOSEN_AXIS => "its" "axis";
        }),
        ByMethod::of(columns! { items::SPHERE_EFFECT => "cylinder per" "+1 D sphere"; }),
    ],
    led: &[Led {
        leader: items::OFF_BY,
        heading: text!("Cylinder left at the cornea, D, turned from the meridian chosen (+ is counter-clockwise):"),
        of: text!("turned"),
        cells: &[(items::OFF_RESIDUAL, Text::EMPTY)],
        chosen: None,
    }],
    short_items: &[items::MARK_AXIS, items::CHOSEN_RESIDUAL],
    tables: &[
        formulas::Working::table(),
        formulas::Residual::table(),
        expected::Working::table(),
        off_axis::Loss::table(),
    ],
    prose: &[
        formulas::Working::prose(),
        formulas::Residual::prose(),
        expected::Working::prose(),
        off_axis::Loss::prose(),
    ],
    subjects: &[("toric", "Toric lens"), ("off_axis", "A lens off its axis")],
    aside: &[
        items::LABEL_CYLINDER,
        items::LENS_PLANE_CYLINDER,
        items::BEYOND,
        items::RESIDUAL,
        items::RESIDUAL_AXIS,
        items::EXPECTED,
        items::RESIDUAL_OFF_5,
        items::RESIDUAL_OFF_10,
    ],
    ..part_rows!()
};
