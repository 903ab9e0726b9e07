//! A toric lens in one method's eye.

use crate::parts::eye::Eye;
use crate::parts::lens::table::entries::LENS_POWER;
use crate::parts::lens::{Answer, Lens};
use crate::parts::toric::Label;
use ocellus_core::astigmatism::toric::{ToricLens, at_lens_plane};
use ocellus_core::lens::method::Method;
use ocellus_core::optics::thin_eye::ThinEye;
use ocellus_core::quantity::Axis;

/// One method's eye, and the power of the lens in it.
#[derive(Clone, Copy)]
pub(super) struct Seen {
    pub(super) method: Method,
    pub(super) thin: ThinEye,
    power: Power,
}

/// The power of a toric lens: as on the label chosen, or, before one is, the exact mean.
#[derive(Clone, Copy)]
enum Power {
    Label(f64),
    Mean(f64),
}

impl Seen {
    fn of(eye: &Eye, answer: &Answer) -> Option<Seen> {
        let power = eye.get(LENS_POWER).map_or(Power::Mean(answer.power), |chosen| Power::Label(chosen.d()));
        Some(Seen { method: answer.method, thin: answer.optics.thin_eye()?, power })
    }

    pub(super) fn lens(&self, label: &Label, cylinder: f64, mark: Axis) -> ToricLens {
        match self.power {
            Power::Label(power) => ToricLens::labelled(power, label.power, cylinder, mark),
            Power::Mean(mean) => ToricLens { mean, cylinder, mark },
        }
    }
}

/// The eyes of the methods compared.
pub(super) fn seen(lens: &Lens) -> impl Iterator<Item = Seen> {
    lens.compared().filter_map(|answer| Seen::of(lens.eye, answer))
}

/// The toric lens that was chosen, in one method's eye.
pub(crate) fn chosen_lens(eye: &Eye, answer: &Answer) -> Option<(ThinEye, ToricLens)> {
    let label = Label::of(eye)?;
    let (cylinder, mark) = label.chosen?;
    let one = Seen::of(eye, answer)?;
    let own = at_lens_plane(cylinder, label.plane, &one.thin, eye.target(), eye.vertex()).ok()?;
    Some((one.thin, one.lens(&label, own, mark)))
}
