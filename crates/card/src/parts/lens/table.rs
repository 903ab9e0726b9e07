//! What goes in, what comes out, what to know first.

use super::choices::*;
use crate::id::PartId;
use crate::layout::{ByMethod, Led};
use crate::part::PartRows;
use crate::parts::general::choices::YesNo;
use ocellus_core::lens::label::LabelRule;
use ocellus_core::lens::long_eye::{self, LongEye};
use ocellus_core::lens::{constants, double_k};
use ocellus_core::optics::thin_eye::{PowerWorking, RefractionWorking};
use ocellus_core::quantity::*;
use ocellus_text::Text;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(6);

pub(crate) const KEY: &str = "lens";
pub(crate) const HEADING: &str = "Lens";

entries! {
    ["lens"]
    LENS_MODEL "lens_model" "model" (name) "lens model";
    A_CONSTANT "a_constant" "a" (AConstant 2) "A-constant";
    SURGEON_FACTOR "surgeon_factor" "sf" (SurgeonFactor 3) "surgeon factor";
    PACD "pacd_mm" "pacd" (Pacd 3) "pACD";
    HAIGIS_A0 "haigis_a0" "a0" (HaigisA0 3) "Haigis a0";
    HAIGIS_A1 "haigis_a1" "a1" (HaigisSlope 3) "Haigis a1";
    HAIGIS_A2 "haigis_a2" "a2" (HaigisSlope 3) "Haigis a2";
    CONSTANTS_FROM "constants_from" "constfrom" (ConstantsFrom) "where these constants come from";
    LONG_EYE "long_eye_adjustment" "longeye" (LongEye) "adjustment for a long eye";
    LABEL_RULE "label_rule" "rule" (LabelRule) "label to point out";
    LENS_POWER "iol_power_d" "iol" (LensPower 2) "lens power chosen, on its label", Spoken;
    LENS_STEP "lens_step_d" "step" (LabelStep 2) = 0.5 "step between label powers";
    LENS_LEAST "lens_least_d" "least" (LensPower 2) "weakest power of this model";
    LENS_MOST "lens_most_d" "most" (LensPower 2) "strongest power of this model";
    LENS_STYLE "lens_style" "style" (LensStyle) "how the lens is made";
    SHOW_SRK2 "show_srk2" "srk2" (YesNo) "show the superseded SRK II too";
    ["backup"]
    SULCUS_SHIFT "sulcus_shift_mm" "sulcus" (SulcusShift 2) = 0.75 "sulcus lies before the bag by";
}

items! {
    EXACT_POWER "power_d" "D" 2 signed "exact power for target", Identity Memory;
    LENS_POSITION "lens_position_mm" "mm" 2 plain "lens position", Identity Memory;
    REFRACTION "refraction_d" "D" 2 signed "refraction, lens chosen", Identity Memory;
    GUIDED "guided" "1" 0 plain "named by NICE NG77", Ng77 Memory, yes_no;
    COMPARED "compared" "1" 0 plain "counts in the spread", Here Chosen, yes_no;
    LADDER_POWER "ladder_power_d" "D" 2 signed "label power", Here Chosen;
    LADDER_REFRACTION "ladder_refraction_d" "D" 2 signed "refraction with this lens", Identity Memory;
    LADDER_SPREAD "ladder_spread_d" "D" 2 plain "spread between the methods compared", Here Chosen;
    POWER_SPREAD "power_spread_d" "D" 2 plain "spread of the powers compared", Here Chosen;
    ADJUSTED_LENGTH "adjusted_length_mm" "mm" 2 plain "axial length, adjusted", WangKoch Memory;
    ADJUSTED_STEP "adjustment_step_mm" "mm" 3 signed "step where that begins", Identity Two;
    FIRST_SET "first_2011_power_d" "D" 2 signed "power, first set of 2011", Wang2011 Memory;
    FIRST_STEP "first_2011_step_mm" "mm" 3 signed "step where it begins", Wang2011 Memory;
    SECOND_SET "second_2011_power_d" "D" 2 signed "power, second set of 2011", Wang2011 Memory;
    SECOND_STEP "second_2011_step_mm" "mm" 3 signed "step where it begins", Wang2011 Memory;
    SET_2018 "set_2018_power_d" "D" 2 signed "power, set of 2018", Wang2018 Memory;
    STEP_2018 "set_2018_step_mm" "mm" 3 signed "step where it begins", Wang2018 Memory;
    A_OF_FACTOR "a_of_surgeon_factor" "1" 2 plain "A-constant, by the surgeon factor", Holladay2003 Two;
    A_OF_PACD "a_of_pacd" "1" 2 plain "A-constant, by pACD", Holladay2003 Two;
    A_OF_A0 "a_of_haigis_a0" "1" 2 plain "A-constant, by Haigis a0", Haigis2004 Two;
    RULE_POWER "rule_power_d" "D" 2 signed "label by the rule", Here Chosen;
    RULE_REFRACTION "rule_refraction_d" "D" 2 signed "refraction with it", Identity Memory;
}

cautions! {
    ANISOMETROPIA "anisometropia" Caution "Agree this with the patient: the eye is expected to differ from the fellow eye's refraction by more than 2 D.", NoSource CommonPractice;
    PREVIOUS_SURGERY "previous_surgery" Refuse "No lens is computed: after corneal surgery the ordinary methods do not hold.", Aramberri2003 Two;
    CORNEA_UNFIT "cornea_unfit" Refuse "No lens is computed: no method here holds after radial cuts or a graft, with keratoconus or with an unknown history.", Here Chosen;
    TOTAL_K "total_k" Refuse "Enter keratometric power: the keratometry is a total power. With it the ordinary methods would ask for a lens 1.1 to 1.7 D too strong, and leave the eye myopic.", Identity Two;
    SILICONE_OIL "silicone_oil" Refuse "No lens is computed: light and sound travel differently in silicone oil.", NoSource CommonPractice;
    AFTER_LASER "after_laser" Caution "Compare these methods, made for eyes after corneal laser (DK: Double-K): each rests on an estimate of the cornea, and they differ more than ordinary methods do. The ordinary ones are refused.", Aramberri2003 Two;
    NOT_THIS_EYE "not_this_eye" Note "Not made for this eye: Haigis-L is for eyes after laser for short sight, Shammas-PL and Double-K for any laser.", HaigisL2008 Read;
    NEEDS_K_BEFORE "needs_k_before" Note "Enter the corneal power from before the laser: this method takes the lens position from it.", Aramberri2003 Two;
    NEEDS_K_AFTER "needs_k_after" Note "Enter an estimate of the corneal power after the laser, with where it comes from (k_after_from; history takes the one that follows from the records): this method needs it.", Aramberri2003 Two;
    RAW_K_AFTER "raw_k_after" Refuse "Do not enter what a keratometer reads after laser: it is not the power of the cornea, and is not used. After -6 D of laser for short sight it is too steep, and the eye is left about 0.6 D hyperopic.", Aramberri2003 Two;
    K_FROM_HISTORY "k_from_history" Caution "Check the records, often years old: K after by its history alone is only as good as they are.", Ng77 Memory;
    NEEDS_LENGTH "needs_length" Note "Enter the axial length: this method needs it.", Here Chosen;
    NEEDS_CONSTANT "needs_constant" Note "Enter a lens constant: this method needs it.", Here Chosen;
    NEEDS_ACD "needs_acd" Note "Enter the anterior chamber depth: this method needs it.", Here Chosen;
    NEEDS_CCT "needs_cct" Note "Enter the corneal thickness too: the chamber depth starts at the back of the cornea.", Haigis2004 Two;
    NOT_MEASURED_PHAKIC "not_measured_phakic" Note "This method does not hold: the chamber depth was not measured to a natural lens.", Haigis2004 Memory;
    NO_SOLUTION "no_solution" Refuse "Check every entry of this eye: the equations have no answer for it.", Identity Two;
    NO_METHOD "no_method" Refuse "Enter the lens's own constants: no method has all it needs.", Here Chosen;
    CONVERTED "converted" Caution "Use the lens's own optimised constant if you have it: this one was converted from another, which is second best.", Holladay2003 Two;
    UNOPTIMISED "unoptimised" Caution "Do not compare this answer: its constants are unoptimised, and it is typically about 1 D above the others. Not counted in the spread.", Haigis2004 Two;
    RADICAND "radicand" Refuse "This answer must not be used: the corneal height has no real value (steep cornea, long eye).", HaigisCusp1993 Two;
    DEPARTS_FROM_T2 "departs_from_t2" Caution "Do not rely on this answer: it departs from T2 by more than 0.5 D, as it does for steep or very flat corneas and extreme lengths. Not counted in the spread.", HaigisCusp1993 Two;
    CLAMPED "clamped" Caution "Compare with other methods: the axial length is outside 18.5 to 31 mm, and the chamber depth is that of the nearest end.", HofferQ1993 Memory;
    RETINA_TURNED "retina_turned" Caution "Compare with other methods: above an axial length of 32.38 mm the retinal thickness is negative.", SrkT1990 Two;
    LCOR_TURNED "lcor_turned" Caution "Compare with other methods: above an axial length of 36.20 mm the length correction falls again as the eye gets longer.", SrkT1990 Two;
    USUAL_SLOPES "usual_slopes" Caution "Check a1 and a2: only a0 was entered, and the usual 0.4 and 0.1 go with it. Are they this lens's own?", Haigis2004 Two;
    SUPERSEDED "superseded" Note "For history only: a regression of 1988, superseded, shown because it was asked for.", SrkII1988 Memory;
    LONG_EYE "long_eye" Caution "Expect a hyperopic result: above an axial length of 25.0 mm these methods tend to leave one, and no published adjustment of the length is applied (long_eye_adjustment).", Wang2011 Memory;
    LENGTH_ADJUSTED "length_adjusted" Caution "Look at the step shown: the published set that was asked for makes it where its line begins, and an eye a little shorter would get another lens. Every number of this method rests on the adjusted axial length.", WangKoch Memory;
    SETS_COMPARED "sets_compared" Note "None of the published adjustments is applied: they are shown side by side.", WangKoch Memory;
    VERY_SHORT "very_short" Caution "Do not rely on one method: hardly any eye with an axial length below 20.0 mm was in the series behind these. A child's eye also grows, and its target is another question.", Here Chosen;
    CONSTANTS_OF_MAKER "constants_of_maker" Caution "Optimise the constants on your own results: these are the maker's, and every prediction may be off to one side.", NoSource CommonPractice;
    SHORT_EYE "short_eye" Caution "Compare the methods: below an axial length of 22.0 mm lens position matters most, and they differ most.", NoSource CommonPractice;
    AGREEMENT "agreement" Note "Do not take agreement for accuracy: all methods share the same AL and K.", Here Chosen;
    SPREAD_WIDE "spread_wide" Caution "Look for the reason: the methods compared differ by more than 1 D of lens.", Here Chosen;
    NOTHING_TO_COMPARE "nothing_to_compare" Note "There is no spread: fewer than two methods are fit to be compared.", Here Chosen;
    NO_LENS_CHOSEN "no_lens_chosen" Caution "Choose a lens power and enter it as on its label: none was entered.", Here Chosen;
    MINUS_POWER "minus_power" Caution "Say the word minus when reading it out: the lens power is minus.", WrongLens Read;
    OFF_LABEL "off_label" Caution "Check what was chosen: it is not one of the steps this model comes in.", Here Chosen;
    OUT_OF_RANGE "out_of_model_range" Caution "Check the power chosen: it is outside the range this model comes in.", Here Chosen;
    MODEL_FALLS_SHORT "model_falls_short" Caution "Look for another model: the power asked for lies outside what this one comes in.", Here Chosen;
    FAR_FROM_TARGET "far_from_target" Caution "Check the lens and the target: are they the ones that were meant? A method fit to be compared puts the lens chosen more than 0.5 D from the agreed target.", WrongLens Chosen;
    TARGET_UNUSUAL "target_unusual" Caution "Check the sign of the target: is it the one that was agreed? The target is hyperopic or beyond -3 D.", WrongLens Chosen;
    LENS_MODEL_MISSING "lens_model_missing" Caution "Enter the lens model: a constant belongs to one model and one kind of biometry.", WrongLens Read;
    NO_SUCH_LENS "no_such_lens" Caution "Check every entry of this eye: no lens of such a power is made.", Here Chosen;
    FIRST_LENS_BAG "first_lens_bag" Caution "Do not take these powers for the sulcus: those of the methods are for the bag. The lens by the refraction today goes into the sulcus: its power stands in its own part.", Identity Two;
    FIRST_LENS_HIDDEN "first_lens_hidden" Note "The eye keeps the lens that it has: what the methods for a first lens say is not shown.", Here Chosen;
    CONSTANTS_APART "constants_apart" Caution "Check the constants: is one of them mistyped, or another lens's? Two that were entered for this lens mean A-constants more than 1 apart.", Here Chosen;
    RULE_USED "rule_used" Note "Choose the label yourself: the one pointed out only follows from the rule that was asked for, by each method. First myopic is the weakest that leaves less than 0 D, whatever the target; nearest is nearest to the target.", Here Chosen;
    RULE_NEEDS_CYLINDER "rule_needs_cylinder" Refuse "Enter the cylinder chosen: before that, a label that states the weak meridian cannot be pointed out.", Identity Two;
    RULE_NONE "rule_none" Note "No label of this model does what the rule asks.", Here Chosen;
    ONE_PIECE_SULCUS "one_piece_sulcus" Refuse "Choose another lens for the sulcus: a one-piece lens does not belong there, nor its haptics with the optic captured.", NoSource CommonPractice;
    BACKUP_STYLE_UNKNOWN "backup_style_unknown" Caution "Enter how the lens for the sulcus is made: a one-piece lens does not belong there.", NoSource CommonPractice;
    LABEL_NEEDS_CYLINDER "label_needs_cylinder" Caution "Enter the cylinder chosen: the label states the weak meridian, and until then the label powers here are taken as means of both.", Identity Two;
    LABEL_WEAKER "label_weaker" Caution "Read the label as the weaker meridian: it states half the cylinder less than the exact powers, which are means of both.", Identity Two;
}

sign_offs! {
    LENS_BOX "lens_box" "Lens box against this card: model, power with its sign, cylinder, expiry, read aloud";
}

pub(crate) const ROWS: PartRows = PartRows {
    without: &[(items::EXACT_POWER, text!("No lens is computed: the reason stands under REFUSED."))],
    first: &[cautions::LABEL_WEAKER],
    by_method: &[
        ByMethod {
            left_out: Some(&(
                items::COMPARED,
                &[cautions::RADICAND, cautions::UNOPTIMISED, cautions::DEPARTS_FROM_T2, cautions::SUPERSEDED],
            )),
            ..ByMethod::of(columns! {
                items::EXACT_POWER => "power for" "target";
                items::LENS_POSITION => "lens" "position";
                items::GUIDED => "named by" "NICE NG77";
                items::COMPARED => "counts in" "the spread";
                items::REFRACTION => "refraction," "lens chosen";
            })
        },
        ByMethod::of(columns! {
            items::ADJUSTED_LENGTH => "length," "adjusted";
            items::ADJUSTED_STEP => "step where" "it begins";
        }),
        ByMethod::of(columns! {
            items::FIRST_SET => "1st 2011" "power";
            items::FIRST_STEP => "its" "step";
            items::SECOND_SET => "2nd 2011" "power";
            items::SECOND_STEP => "its" "step";
            items::SET_2018 => "2018" "power";
            items::STEP_2018 => "its" "step";
        }),
        ByMethod::of(columns! {
            items::RULE_POWER => "label by" "the rule";
            items::RULE_REFRACTION => "refraction" "with it";
        }),
    ],
    led: &[Led {
        leader: items::LADDER_POWER,
        heading: text!("Refraction at the spectacles with each label power, D:"),
        of: text!("label"),
        cells: &[(items::LADDER_REFRACTION, Text::EMPTY), (items::LADDER_SPREAD, text!("spread"))],
        chosen: Some(entries::LENS_POWER.id()),
    }],
    short_entries: &[entries::LENS_MODEL.id(), entries::LENS_POWER.id()],
    short_items: &[items::EXACT_POWER, items::REFRACTION],
    tables: &[
        PowerWorking::table(),
        RefractionWorking::table(),
        long_eye::Working::table(),
        double_k::Working::table(),
        constants::Family::table(),
    ],
    prose: &[
        PowerWorking::prose(),
        RefractionWorking::prose(),
        long_eye::Working::prose(),
        double_k::Working::prose(),
        constants::Family::prose(),
    ],
    subjects: &[("constants", "Lens constants into each other")],
    ends: &[cautions::NOT_THIS_EYE],
    ..part_rows!()
};
