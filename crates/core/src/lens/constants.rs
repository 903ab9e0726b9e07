//! The constants that go with one another, by the published conversions.

use crate::constant::lens::*;
use crate::error::Error;
use crate::lens::convert;
use crate::quantity::AConstant;

working! {
    /// A family of constants, each converted from one A-constant.
    Family "The constants that go with one another";
    a "A" "1" = "entered; of others A = (SF + 65.60)/0.5663 with SF = 0.9704 pACD - 3.595, or A = (a0 + 72.434)/0.62467" [],
        "A-constant", Holladay2003 Two;
    sf "SF" "mm" = "SF = 0.5663 A - 65.60" [SF_SLOPE, SF_0], "surgeon factor", Holladay2003 Two;
    pacd "pACD" "mm" = "pACD = (SF + 3.595)/0.9704" [PACD_ADD, PACD_DIV], "personalised chamber depth", Holladay2003 Two;
    acd_const "ACDconst" "mm" = "ACDconst = 0.62467 A - 68.747; another conversion, about 0.02 mm from pACD" [ACD_CONST_SLOPE, ACD_CONST_0],
        "chamber depth constant of SRK/T", SrkT1990 Two;
    a0 "a0" "mm" = "a0 = 0.62467 A - 72.434, with a1 = 0.4 and a2 = 0.1: unoptimised" [ACD_CONST_SLOPE, HAIGIS_A0, HAIGIS_A1, HAIGIS_A2],
        "Haigis a0", Haigis2004 Two;
}

/// The constants that go with an A-constant: second best to the lens's own, for each method.
///
/// # Errors
/// Where one of them is outside its bounds.
///
/// ```
/// use ocellus_core::{lens::constants::family, quantity::AConstant};
/// let family = family(AConstant::new(118.5)?)?;
/// assert!((family.sf - 1.51).abs() < 0.005 && (family.pacd - 5.26).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn family(a: AConstant) -> Result<Family, Error> {
    let sf = convert::surgeon_factor(a)?;
    Ok(Family {
        a: a.get(),
        sf: sf.mm(),
        pacd: convert::pacd(sf)?.mm(),
        acd_const: convert::acd_constant(a),
        a0: convert::haigis(a)?.0.mm(),
    })
}
