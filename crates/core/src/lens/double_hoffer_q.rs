//! Double-K with Hoffer Q: for an eye after corneal laser.

use crate::constant::optics::INDEX_1_3375;
use crate::lens::convert::pacd_of;
use crate::lens::double_k::{Double, corneas};
use crate::lens::hoffer_q::working;
use crate::lens::view::{Eyes, Spec};
use crate::source::Source;

pub use crate::lens::hoffer_q::Working;

/// The method.
pub static METHOD: Spec = Spec {
    key: "double_hofferq",
    name: "DK Hoffer Q",
    source: Source::Aramberri2003,
    of: Eyes::AfterLaser,
    view: |eye, then| {
        let al = eye.axial_length()?;
        let (before, corneas) = corneas(eye)?;
        let own = working(al, &before, pacd_of(eye)?);
        then(&Double { own: &own, corneas, index: INDEX_1_3375.get() });
        Ok(())
    },
};
