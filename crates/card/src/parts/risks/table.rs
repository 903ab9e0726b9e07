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
    RISKS_UNANSWERED "risks_unanswered" Note "No risk was asked about in this case: floppy iris, pseudoexfoliation, zonule, posterior polar, vitrectomy, guttata, pupil, allergies.", Here Chosen;
    FLOPPY_IRIS "floppy_iris" Caution "Floppy iris: plan for a small, unstable pupil.", NoSource CommonPractice;
    PSEUDOEXFOLIATION "pseudoexfoliation" Caution "Pseudoexfoliation: expect a small pupil and a weak zonule.", NoSource CommonPractice;
    WEAK_ZONULE "weak_zonule" Caution "Weak zonule: have support for the capsule ready.", NoSource CommonPractice;
    POSTERIOR_POLAR "posterior_polar" Caution "Posterior polar cataract: NO HYDRODISSECTION.", NoSource CommonPractice;
    LONG_OR_VITRECTOMISED "retropulsion" Caution "Long or vitrectomised eye: the column can push the lens-iris diaphragm back; lower the bottle before entering, lift the iris to break the block.", Retropulsion2017 Read;
    GUTTATA "guttata" Caution "Guttata: spare the endothelium.", NoSource CommonPractice;
    SMALL_PUPIL "small_pupil" Caution "Small pupil: have a way to widen it ready.", NoSource CommonPractice;
    IODINE_ALLERGY "iodine_allergy" Caution "ALLERGY TO IODINE.", NoSource CommonPractice;
    ANTIBIOTIC_ALLERGY "antibiotic_allergy" Caution "ALLERGY TO THE ANTIBIOTIC.", NoSource CommonPractice;
}

sign_offs! {
    ALLERGIES "allergies" "Allergies and medicines asked about";
}

pub(crate) const ROWS: PartRows = part_rows!();
