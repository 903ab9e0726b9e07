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
    ANISOMETROPIA "anisometropia" Caution "Expected to differ from the fellow eye's refraction by more than 2 D: agree this with the patient.", NoSource CommonPractice;
    PREVIOUS_SURGERY "previous_surgery" Refuse "Previous corneal surgery: the ordinary methods do not hold, and no lens is computed.", Aramberri2003 Two;
    CORNEA_UNFIT "cornea_unfit" Refuse "Radial cuts, graft, keratoconus or an unknown history: no method here holds, and no lens is computed.", Here Chosen;
    TOTAL_K "total_k" Refuse "The keratometry is a total power: the ordinary methods expect keratometric power and would ask for a lens 1.1 to 1.7 D too strong, and leave the eye myopic.", Identity Two;
    SILICONE_OIL "silicone_oil" Refuse "Silicone oil: light and sound travel otherwise in it, and no lens is computed.", NoSource CommonPractice;
    AFTER_LASER "after_laser" Caution "After corneal laser the ordinary methods are refused. These were made for it; each rests on an estimate of the cornea, and they differ more than ordinary methods do.", Aramberri2003 Two;
    NOT_THIS_EYE "not_this_eye" Note "Not made for this eye: Haigis-L is for eyes after laser for short sight, Shammas-PL and double-K for any laser.", HaigisL2008 Read;
    NEEDS_K_BEFORE "needs_k_before" Note "No corneal power from before the laser, which this method takes the lens position from.", Aramberri2003 Two;
    NEEDS_K_AFTER "needs_k_after" Note "No estimate of the corneal power after the laser, with where it comes from (k_after_from; history takes the one that follows from the records).", Aramberri2003 Two;
    RAW_K_AFTER "raw_k_after" Refuse "What a keratometer reads after laser is not the power of the cornea: after -6 D of laser for short sight it is too steep, and the eye is left about 0.6 D hyperopic. Not taken as the power after.", Aramberri2003 Two;
    K_FROM_HISTORY "k_from_history" Caution "K after by its history alone: only as good as records often years old.", Ng77 Memory;
    NEEDS_LENGTH "needs_length" Note "No axial length for this method.", Here Chosen;
    NEEDS_CONSTANT "needs_constant" Note "No lens constant for this method.", Here Chosen;
    NEEDS_ACD "needs_acd" Note "No anterior chamber depth for this method.", Here Chosen;
    NEEDS_CCT "needs_cct" Note "The chamber depth starts at the back of the cornea: the corneal thickness is needed too.", Haigis2004 Two;
    NOT_MEASURED_PHAKIC "not_measured_phakic" Note "The chamber depth was not measured to a natural lens: this method does not hold.", Haigis2004 Memory;
    NO_SOLUTION "no_solution" Refuse "The equations have no answer for this eye.", Identity Two;
    NO_METHOD "no_method" Refuse "No method has all it needs: enter the lens's own constants.", Here Chosen;
    CONVERTED "converted" Caution "Constant converted from another of this lens: second best to the lens's own optimised one.", Holladay2003 Two;
    UNOPTIMISED "unoptimised" Caution "Unoptimised constants, typically about 1 D above the others: not counted in the spread.", Haigis2004 Two;
    RADICAND "radicand" Refuse "The corneal height has no real value (steep cornea, long eye): this answer must not be used.", HaigisCusp1993 Two;
    DEPARTS_FROM_T2 "departs_from_t2" Caution "Departs from T2 by more than 0.5 D, as it does for steep or very flat corneas and extreme lengths: not counted in the spread.", HaigisCusp1993 Two;
    CLAMPED "clamped" Caution "Axial length outside 18.5 to 31 mm: the chamber depth is that of the nearest end.", HofferQ1993 Memory;
    RETINA_TURNED "retina_turned" Caution "Axial length above 32.38 mm: its retinal thickness is negative.", SrkT1990 Two;
    LCOR_TURNED "lcor_turned" Caution "Axial length above 36.20 mm: its length correction falls again as the eye gets longer.", SrkT1990 Two;
    USUAL_SLOPES "usual_slopes" Caution "Only a0 was entered: the usual a1 0.4 and a2 0.1 go with it. Are they this lens's own?", Haigis2004 Two;
    SUPERSEDED "superseded" Note "A regression of 1988, superseded: shown because it was asked for.", SrkII1988 Memory;
    LONG_EYE "long_eye" Caution "Axial length above 25.0 mm: these methods tend to leave long eyes hyperopic, and no published adjustment of the length is applied.", Wang2011 Memory;
    LENGTH_ADJUSTED "length_adjusted" Caution "The axial length is adjusted by the published set that was asked for, and every number of this method rests on it. Its line makes a step where it begins, shown here: an eye a little shorter would get another lens.", WangKoch Memory;
    SETS_COMPARED "sets_compared" Note "The published adjustments are shown side by side; none of them is applied.", WangKoch Memory;
    VERY_SHORT "very_short" Caution "Axial length below 20.0 mm: hardly any such eye was in the series behind these methods. A child's eye also grows, and its target is another question.", Here Chosen;
    CONSTANTS_OF_MAKER "constants_of_maker" Caution "The constants are the maker's, not optimised on results: every prediction may be off to one side.", NoSource CommonPractice;
    SHORT_EYE "short_eye" Caution "Axial length below 22.0 mm: lens position matters most here, and methods differ most.", NoSource CommonPractice;
    AGREEMENT "agreement" Note "Agreement is not accuracy; all share the same AL and K.", Here Chosen;
    SPREAD_WIDE "spread_wide" Caution "The methods compared differ by more than 1 D of lens.", Here Chosen;
    NOTHING_TO_COMPARE "nothing_to_compare" Note "Fewer than two methods are fit to be compared: there is no spread.", Here Chosen;
    NO_LENS_CHOSEN "no_lens_chosen" Caution "No lens power was entered: choose one and enter it as on its label.", Here Chosen;
    MINUS_POWER "minus_power" Caution "The lens power is minus: say the word minus when reading it out.", WrongLens Read;
    OFF_LABEL "off_label" Caution "What was chosen is not one of the steps this model comes in.", Here Chosen;
    OUT_OF_RANGE "out_of_model_range" Caution "The power chosen is outside the range this model comes in.", Here Chosen;
    MODEL_FALLS_SHORT "model_falls_short" Caution "The power asked for lies outside what this model comes in.", Here Chosen;
    FAR_FROM_TARGET "far_from_target" Caution "A method fit to be compared puts the lens chosen more than 0.5 D from the agreed target: is it the lens and the target that were meant?", WrongLens Chosen;
    TARGET_UNUSUAL "target_unusual" Caution "The target is hyperopic or beyond -3 D: is its sign the one that was agreed?", WrongLens Chosen;
    LENS_MODEL_MISSING "lens_model_missing" Caution "No lens model: a constant belongs to one model and one kind of biometry.", WrongLens Read;
    NO_SUCH_LENS "no_such_lens" Caution "No lens of such a power is made: is every entry of this eye right?", Here Chosen;
    FIRST_LENS_BAG "first_lens_bag" Caution "The powers of the methods are for the bag. The lens by the refraction today goes into the sulcus: its power stands in its own part.", Identity Two;
    FIRST_LENS_HIDDEN "first_lens_hidden" Note "The eye keeps the lens that it has: what the methods for a first lens say is not shown.", Here Chosen;
    CONSTANTS_APART "constants_apart" Caution "Two constants entered for this lens mean A-constants more than 1 apart: is one of them mistyped, or another lens's?", Here Chosen;
    RULE_USED "rule_used" Note "The label pointed out follows from the rule that was asked for, by each method: first myopic is the weakest that leaves less than 0 D, whatever the target; nearest is nearest to the target. It is no choice.", Here Chosen;
    RULE_NEEDS_CYLINDER "rule_needs_cylinder" Refuse "A label that states the weak meridian cannot be pointed out before its cylinder is chosen.", Identity Two;
    RULE_NONE "rule_none" Note "No label of this model does what the rule asks.", Here Chosen;
    ONE_PIECE_SULCUS "one_piece_sulcus" Refuse "A one-piece lens does not belong in the sulcus, nor its haptics with the optic captured.", NoSource CommonPractice;
    BACKUP_STYLE_UNKNOWN "backup_style_unknown" Caution "How the lens for the sulcus is made was not entered: a one-piece lens does not belong in the sulcus.", NoSource CommonPractice;
    LABEL_NEEDS_CYLINDER "label_needs_cylinder" Caution "The label states the weak meridian: without a cylinder chosen, the label powers here are taken as means of both.", Identity Two;
    LABEL_WEAKER "label_weaker" Caution "The exact powers are means of both meridians; this label states the weaker one, half the cylinder less.", Identity Two;
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
