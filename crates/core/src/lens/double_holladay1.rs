//! Double-K with Holladay 1: for an eye after corneal laser.

use crate::constant::optics::{INDEX_HOLLADAY_OVER, INDEX_HOLLADAY_UNDER};
use crate::lens::convert::surgeon_factor_of;
use crate::lens::double_k::{Double, corneas};
use crate::lens::holladay1::working;
use crate::lens::view::{Eyes, Spec};
use crate::source::Source;

pub use crate::lens::holladay1::Working;

/// The method.
pub static METHOD: Spec = Spec {
    key: "double_holladay1",
    name: "DK Holladay 1",
    source: Source::Aramberri2003,
    of: Eyes::AfterLaser,
    view: |eye, then| {
        let al = eye.axial_length()?;
        let (before, corneas) = corneas(eye)?;
        let own = working(al, &before, surgeon_factor_of(eye)?);
        then(&Double { own: &own, corneas, index: INDEX_HOLLADAY_OVER.get() / INDEX_HOLLADAY_UNDER.get() });
        Ok(())
    },
};
