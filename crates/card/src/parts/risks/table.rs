//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::PartRows;
use crate::parts::general::choices::YesNo;

/// The number of this part.
pub(crate) const PART: PartId = PartId(23);

pub(crate) const KEY: &str = "risks";
pub(crate) const HEADING: &str = "Risks that change the day";

entries! {
    ["risks"]
    FLOPPY_IRIS "floppy_iris_drug" "floppy" (YesNo) "drug that makes the iris floppy";
    PSEUDOEXFOLIATION "pseudoexfoliation" "pxf" (YesNo) "pseudoexfoliation";
    WEAK_ZONULE "weak_zonule" "zonule" (YesNo) "weak zonule";
    POSTERIOR_POLAR "posterior_polar" "polar" (YesNo) "posterior polar cataract";
    VITRECTOMISED "vitrectomised" "vitrectomy" (YesNo) "vitreous removed";
    GUTTATA "guttata" "guttata" (YesNo) "corneal guttata";
    SMALL_PUPIL "small_pupil" "pupil" (YesNo) "small pupil";
    IODINE_ALLERGY "iodine_allergy" "iodine" (YesNo) "allergy to iodine";
    ANTIBIOTIC_ALLERGY "antibiotic_allergy" "antibiotic" (YesNo) "allergy to the antibiotic";
}

items! {}

cautions! {
    RISKS_UNANSWERED "risks_unanswered" Note "Ask about floppy iris, pseudoexfoliation, zonule, posterior polar cataract, vitrectomy, guttata, pupil and allergies: no risk was entered.", Here Chosen;
    FLOPPY_IRIS "floppy_iris" Caution "Plan for a small, unstable pupil: floppy iris.", NoSource CommonPractice;
    PSEUDOEXFOLIATION "pseudoexfoliation" Caution "Expect a small pupil and a weak zonule: pseudoexfoliation.", NoSource CommonPractice;
    WEAK_ZONULE "weak_zonule" Caution "Have support for the capsule ready: weak zonule.", NoSource CommonPractice;
    POSTERIOR_POLAR "posterior_polar" Caution "NO HYDRODISSECTION: posterior polar cataract.", NoSource CommonPractice;
    LONG_OR_VITRECTOMISED "retropulsion" Caution "Lower the bottle before entering, and lift the iris to break the block: in a long or vitrectomised eye the column can push the lens-iris diaphragm back.", Retropulsion2017 Read;
    GUTTATA "guttata" Caution "Spare the endothelium: guttata.", NoSource CommonPractice;
    SMALL_PUPIL "small_pupil" Caution "Have a way to widen the pupil ready: it is small.", NoSource CommonPractice;
    IODINE_ALLERGY "iodine_allergy" Caution "ALLERGY TO IODINE.", NoSource CommonPractice;
    ANTIBIOTIC_ALLERGY "antibiotic_allergy" Caution "ALLERGY TO THE ANTIBIOTIC.", NoSource CommonPractice;
}

sign_offs! {
    ALLERGIES "allergies" "Allergies and medicines asked about";
}

pub(crate) const ROWS: PartRows = part_rows!();
