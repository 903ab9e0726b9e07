//! From the bottle to the mixture.

use ocellus_core::quantity::{Concentration, DrugAmount, Volume};

ocellus_core::working! {
    /// A dilution, step by step.
    Working "The dilution";
    drug "m" "mg" = "entered" [], "drug in the bottle", Entered Entered;
    dissolved "V_b" "mL" = "entered" [], "volume that it is dissolved in", Entered Entered;
    wanted "c" "mg/mL" = "entered" [], "concentration wanted", Entered Entered;
    mixture "V" "mL" = "entered" [], "volume of the mixture", Entered Entered;
    bottle "c_b" "mg/mL" = "c_b = m/V_b" [], "concentration in the bottle", Identity Two;
    drawn "V_d" "mL" = "V_d = c V/c_b" [], "to draw from the bottle", Identity Two;
    added "V_a" "mL" = "V_a = V - V_d" [], "to add to it", Identity Two;
}

/// What is drawn from a bottle for a weaker mixture.
pub(crate) fn working(drug: DrugAmount, dissolved: Volume, wanted: Concentration, mixture: Volume) -> Working {
    let (drug, dissolved, wanted, mixture) = (drug.mg(), dissolved.ml(), wanted.mg_ml(), mixture.ml());
    let bottle = drug / dissolved;
    let drawn = wanted * mixture / bottle;
    Working { drug, dissolved, wanted, mixture, bottle, drawn, added: mixture - drawn }
}
