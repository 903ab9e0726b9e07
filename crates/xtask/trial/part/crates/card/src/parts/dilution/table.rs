//! What goes in, what comes out, what to know first.

use super::steps::Working;
use crate::id::PartId;
use crate::part::{PartRows, Stands};
use ocellus_core::quantity::*;

/// The number of this part.
pub(crate) const PART: PartId = PartId(60);

pub(crate) const KEY: &str = "dilution";
pub(crate) const HEADING: &str = "Dilution";

entries! {
    ["drug"]
    DRUG "drug_mg" "drug" (DrugAmount 2) "drug in the bottle";
    DISSOLVED "dissolved_ml" "dissolved" (Volume 2) "volume that it is dissolved in";
    DILUTED_TO "diluted_to_mg_ml" "dilutedto" (Concentration 3) "concentration wanted";
    MIXTURE "mixture_ml" "mixture" (Volume 2) "volume of the mixture";
}

items! {
    IN_BOTTLE "in_bottle_mg_ml" "mg/mL" 2 plain "concentration in the bottle", Identity Two;
    DRAWN "drawn_ml" "mL" 3 plain "to draw from the bottle", Identity Two;
    ADDED "added_ml" "mL" 3 plain "to add to it", Identity Two;
}

cautions! {
    BOTTLE_WEAK "bottle_weak" Refuse "The bottle is weaker than what is wanted: no part of it makes that.", Identity Two;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    stands: Stands::Alone,
    short_items: &[items::DRAWN],
    tables: &[Working::table()],
    prose: &[Working::prose()],
    subjects: &[("dilution", "The dilution")],
    ..part_rows!()
};
