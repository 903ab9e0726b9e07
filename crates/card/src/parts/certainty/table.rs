//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::layout::{Below, ByMethod};
use crate::part::PartRows;
use ocellus_core::lens::{certainty, slopes};
use ocellus_core::quantity::*;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(20);

pub(crate) const KEY: &str = "certainty";
pub(crate) const HEADING: &str = "How sure";

entries! {
    ["certainty"]
    POSITION_SD "lens_position_sd_mm" "elpsd" (ScatterLength 2) = 0.25 "SD of the lens position";
    REFRACTION_SD "refraction_sd_d" "rxsd" (ScatterPower 2) = 0.3 "SD of a refraction after surgery";
}

items! {
    LABEL_TOLERANCE "label_tolerance_d" "D" 2 plain "label may be off by", Iso11979 Read;
    ERROR_AL "error_al_d" "D" 2 signed "AL typed 0.1 mm too long", Identity Two;
    ERROR_K "error_k_d" "D" 2 signed "K typed 0.5 D too steep", Identity Two;
    ERROR_ACD "error_acd_d" "D" 2 signed "ACD typed 0.1 mm too deep", Identity Two;
    ERROR_POSITION "error_position_d" "D" 2 signed "lens 0.5 mm too far back", Identity Two;
    ERROR_CONSTANT "error_constant_d" "D" 2 signed "own constant 0.1 too high", Identity Two;
    SD_AL "sd_al_mm" "mm" 4 plain "usual SD of the axial length", Repeat2025 Read;
    SD_K "sd_k_d" "D" 2 plain "usual SD of the corneal power", Repeat2025 Read;
    SD_ACD "sd_acd_mm" "mm" 4 plain "usual SD of the chamber depth", Repeat2025 Read;
    SHARE_AL "share_al" "%" 1 plain "share of the axial length", Norrby2008 Two;
    SHARE_K "share_k" "%" 1 plain "share of K", Norrby2008 Two;
    SHARE_ACD "share_acd" "%" 1 plain "share of the chamber depth", Norrby2008 Two;
    SHARE_POSITION "share_position" "%" 1 plain "share of lens position", Norrby2008 Two;
    SHARE_LABEL "share_label" "%" 1 plain "share of the label", Norrby2008 Two;
    SHARE_REFRACTION "share_refraction" "%" 1 plain "share of refraction after", Norrby2008 Two;
    TOTAL_SD "total_sd_d" "D" 2 plain "SD of all together", Norrby2008 Two;
    LOW_50 "low_50_d" "D" 2 signed "half of eyes from", Identity Two;
    HIGH_50 "high_50_d" "D" 2 signed "to", Identity Two;
    LOW_95 "low_95_d" "D" 2 signed "95 of 100 eyes from", Identity Two;
    HIGH_95 "high_95_d" "D" 2 signed "to", Identity Two;
    CHANCE_05 "chance_05" "%" 0 plain "chance, 0.5 D of target", Identity Two;
    CHANCE_10 "chance_10" "%" 0 plain "chance, 1.0 D of target", Identity Two;
}

cautions! {
    SD_USUAL "sd_usual" Note "Enter your own SDs if you have them: where none was entered, those of one optical biometer in 266 eyes are used (axial length 0.0177 mm, K 0.18 D, chamber depth 0.0247 mm).", Repeat2025 Read;
    SD_MEMORY "sd_memory" Note "Enter your own SDs of lens position and of a refraction after surgery if you have them: the usual ones (0.2 to 0.3 mm, 0.3 D) are recalled without a source.", NoSource CommonPractice;
    INTERVAL_IF "interval_if" Note "Interval and chance hold only if these SDs are right, nothing is biased, and the errors are independent; the pupil is left out. An interval is about the prediction, a chance about the target.", Norrby2008 Two;
    NO_INTERVAL "no_interval" Note "No interval and no chance are given: they hold only for the method's own constants, optimised on results (constants_from), and for an answer without a caution of its own.", Here Chosen;
    SD_NEEDED "sd_needed" Note "Enter the SD of this axial length (axial_length_sd_mm): without it no shares, interval or chance are given, since the usual scatter is that of an optical biometer.", Repeat2025 Read;
    NO_BUDGET "no_budget" Note "After laser no shares, interval or chance are given: the estimate of the cornea outweighs all that is known of scatter.", Here Chosen;
    REPEAT_AL "repeat_al" Note "Repeat the axial length first: of the measurements it adds most.", Identity Two;
    REPEAT_K "repeat_k" Note "Repeat the corneal power first: of the measurements it adds most.", Identity Two;
    REPEAT_ACD "repeat_acd" Note "Repeat the chamber depth first: of the measurements it adds most.", Identity Two;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    by_method: &[
        ByMethod {
            below: Below::Says(text!("+ leaves the eye hyperopic, - myopic.")),
            ..ByMethod::of(columns! {
                items::ERROR_AL => "AL 0.1 mm" "too long";
                items::ERROR_K => "K 0.5 D" "too steep";
                items::ERROR_ACD => "ACD 0.1" "too deep";
                items::ERROR_POSITION => "lens 0.5" "far back";
                items::ERROR_CONSTANT => "constant" "0.1 high";
            })
        },
        ByMethod::of(columns! {
            items::SHARE_AL => "axial" "length";
            items::SHARE_K => "K" "";
            items::SHARE_ACD => "chamber" "depth";
            items::SHARE_POSITION => "lens" "position";
            items::SHARE_LABEL => "label" "";
            items::SHARE_REFRACTION => "refr." "after";
        }),
        ByMethod::of(columns! {
            items::TOTAL_SD => "SD of" "all";
            items::LOW_50 => "half of" "from";
            items::HIGH_50 => "eyes" "to";
            items::LOW_95 => "95 in" "from";
            items::HIGH_95 => "100" "to";
            items::CHANCE_05 => "within" "0.5 D";
            items::CHANCE_10 => "within" "1.0 D";
        }),
    ],
    tables: &[slopes::Slopes::table(), certainty::Budget::table()],
    prose: &[slopes::Slopes::prose(), certainty::Budget::prose()],
    subjects: &[("certainty", "How sure")],
    aside: &[
        items::ERROR_AL,
        items::ERROR_K,
        items::ERROR_ACD,
        items::ERROR_POSITION,
        items::ERROR_CONSTANT,
        items::SD_AL,
        items::SD_K,
        items::SD_ACD,
        items::SHARE_AL,
        items::SHARE_K,
        items::SHARE_ACD,
        items::SHARE_POSITION,
        items::SHARE_LABEL,
        items::SHARE_REFRACTION,
        items::TOTAL_SD,
        items::LOW_50,
        items::HIGH_50,
        items::LOW_95,
        items::HIGH_95,
        items::CHANCE_05,
        items::CHANCE_10,
    ],
    ..part_rows!()
};
