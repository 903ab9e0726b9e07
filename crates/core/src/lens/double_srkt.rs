//! Double-K with SRK/T: for an eye after corneal laser.

use crate::constant::optics::INDEX_SRKT;
use crate::lens::convert::a_constant;
use crate::lens::double_k::{Double, corneas};
use crate::lens::srkt::working;
use crate::lens::view::{Eyes, Spec};
use crate::source::Source;

pub use crate::lens::srkt::Working;

/// The method.
pub static METHOD: Spec = Spec {
    key: "double_srkt",
    name: "DK SRK/T",
    source: Source::Aramberri2003,
    of: Eyes::AfterLaser,
    view: |eye, then| {
        let al = eye.axial_length()?;
        let (before, corneas) = corneas(eye)?;
        let own = working(al, &before, a_constant(eye)?);
        then(&Double { own: &own, corneas, index: INDEX_SRKT.get() });
        Ok(())
    },
};
