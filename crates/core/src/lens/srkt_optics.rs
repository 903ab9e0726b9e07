//! The optics and the constant that SRK/T and T2 share.

use crate::constant::lens::*;
use crate::constant::optics::INDEX_SRKT;
use crate::lens::slopes::Chain;
use crate::optics::thin_eye::ThinEye;

/// `ACDconst = 0.62467 A - 68.747`, mm.
pub(super) fn acd_const(a: f64) -> f64 {
    ACD_CONST_SLOPE.get() * a + ACD_CONST_0.get()
}

/// `LOPT = AL + 0.65696 - 0.02029 AL` and `Kc = 333/r`: the optics of SRK/T and T2 around a lens position.
pub(super) fn optics(al: f64, r: f64, elp: f64) -> ThinEye {
    ThinEye::new(al + SRKT_RT_0.get() + SRKT_RT_1.get() * al, 1000.0 * (INDEX_SRKT.get() - 1.0) / r, elp)
}

/// What SRK/T and T2 share of the derivatives.
pub(super) fn chain(kc: f64, k: f64) -> Chain {
    Chain { al: 1.0 + SRKT_RT_1.get(), kc: kc / k, constant: ACD_CONST_SLOPE.get(), ..Chain::NONE }
}
