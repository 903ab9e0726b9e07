//! Risks that change the day.

pub mod table;

use crate::entry::Entry;
use crate::id::{CautionId, SignOffId};
use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::eye::table::entries::AXIAL_LENGTH;
use crate::parts::general::choices::YesNo;
use ocellus_core::constant::lens::GUIDANCE_LONG;
use table::entries::*;
use table::{cautions, sign_offs};

/// Each risk, in the order of the card, and what it means for the day.
const RISKS: [(Entry<YesNo>, CautionId); 9] = [
    (FLOPPY_IRIS, cautions::FLOPPY_IRIS),
    (PSEUDOEXFOLIATION, cautions::PSEUDOEXFOLIATION),
    (WEAK_ZONULE, cautions::WEAK_ZONULE),
    (POSTERIOR_POLAR, cautions::POSTERIOR_POLAR),
    (VITRECTOMISED, cautions::LONG_OR_VITRECTOMISED),
    (GUTTATA, cautions::GUTTATA),
    (SMALL_PUPIL, cautions::SMALL_PUPIL),
    (IODINE_ALLERGY, cautions::IODINE_ALLERGY),
    (ANTIBIOTIC_ALLERGY, cautions::ANTIBIOTIC_ALLERGY),
];

#[inline(never)]
pub(crate) fn plan(eye: &Eye, out: &mut Out) {
    let mut answered = false;
    for (risk, meaning) in RISKS {
        let Some(answer) = eye.get(risk) else { continue };
        answered = true;
        out.entry(risk.id());
        if answer == YesNo::Yes {
            out.about(meaning, risk);
        }
    }
    if !answered {
        out.caution(cautions::RISKS_UNANSWERED);
    }
    let long = eye.axial_length().is_some_and(|al| al.mm() > GUIDANCE_LONG.get());
    if long && eye.get(VITRECTOMISED) != Some(YesNo::Yes) {
        out.about(cautions::LONG_OR_VITRECTOMISED, AXIAL_LENGTH);
    }
}

pub(crate) fn signs(_eye: &Eye) -> &'static [SignOffId] {
    &[sign_offs::ALLERGIES]
}
